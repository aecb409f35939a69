/* SPDX-License-Identifier: GPL-3.0-or-later */
/* setting-spot.h - where a new thing belongs
 *
 * Private to src/space.  A spot is worked out for a draft: the thing's kind
 * and parameters, which a rule may fit to what is there (a rail to the
 * opening, a gradine to its mensa).
 */
#pragma once

#include "room.h"

G_BEGIN_DECLS

typedef struct
{
  const FpRoom *room;
  const FpKind *kind;
  double        param[FP_PARAM_MAX];
  FpPoint       corner[8];
  guint         n_corners;
  FpBox         plan;    /* of the kind with these parameters                */
  int           on;      /* index of its support; -1: the floor              */
  FpPlace       place;   /* in church coordinates                            */
} FpDraft;

void   fp_draft_init    (FpDraft *self, const FpRoom *room, const FpKind *kind);
double fp_draft_get     (const FpDraft *self, const char *param); /* 0 where the kind has none */
/* Brought into the parameter's range; nothing where the kind has none.  The plan follows. */
void   fp_draft_set     (FpDraft *self, const char *param, double value);
void   fp_draft_measure (FpDraft *self); /* the plan, after corners were set */

gboolean fp_kind_may_stand_on (const FpKind *kind, FpRole role);

/* On the axis, where an altar goes (a footpace goes there before its altar). */
void     fp_spot_axis_altar   (FpDraft *self);
void     fp_spot_behind_altar (FpDraft *self);
void     fp_spot_epistle_wall (FpDraft *self);
void     fp_spot_gospel_front (FpDraft *self);
void     fp_spot_opening      (FpDraft *self);
/* FALSE with %FP_ERROR_REFERENCE when there is nothing on which it can stand. */
gboolean fp_spot_on_support   (FpDraft *self, GError **error);
/* Parts of the building and pews; FALSE likewise (an opening without a wall). */
gboolean fp_spot_nave         (FpDraft *self, GError **error);

G_END_DECLS
