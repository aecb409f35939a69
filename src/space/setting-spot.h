/* SPDX-License-Identifier: GPL-3.0-or-later */
/* setting-spot.h - where a new thing belongs
 *
 * Private to src/space.  A spot is worked out for a draft: the thing's kind
 * and parameters, which a rule may fit to what is there (a rail to the
 * opening, a gradine to its mensa).
 */
#pragma once

#include "room.h"

#include "footpace/people.h"

G_BEGIN_DECLS

typedef struct
{
  const FpRoom *room;
  const FpKind *kind;
  const char   *name;    /* static; NULL: the kind's label                   */
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
void   fp_draft_measure (FpDraft *self); /* the plan, after corners were set, or what it stands on */
/* Likewise; FALSE where the kind would then find it amiss. */
gboolean fp_draft_set_well (FpDraft *self, const char *param, double value);
void   fp_draft_solids  (const FpDraft *self, FpSolids *out); /* in its own coordinates */

/* Design judgement, mm: the strides of a search, and what is kept between neighbours. */
#define FP_STRIDE        50.0
#define FP_NEIGHBOUR_GAP 200.0

const FpPlaced *fp_draft_altar (const FpDraft *self); /* of celebration; NULL   */
guint    fp_draft_flags   (const FpDraft *self);      /* FpRoomFlags            */
gboolean fp_draft_is_free (const FpDraft *self, const FpPlace *place, double gap);

/* Of a footpace on which nothing stands yet (as in standing.c). */
#define FP_AWAITED_ALTAR { -1200, -450, 1200, 450 }

gboolean fp_kind_may_stand_on (const FpKind *kind, FpRole role);

/* On the axis, where an altar goes (a footpace goes there before its altar). */
void     fp_spot_axis_altar   (FpDraft *self);
void     fp_spot_behind_altar (FpDraft *self);
/* By how much the altar is too near in front of what was put behind it; @meets (out): by how much they overlap. */
double   fp_draft_lacks_behind (const FpDraft *self, double *meets);
void     fp_spot_above_altar  (FpDraft *self); /* or on the axis, where there is none */
void     fp_spot_before_altar (FpDraft *self); /* likewise, before its steps */
void     fp_spot_epistle_wall (FpDraft *self);
void     fp_spot_gospel_wall  (FpDraft *self);
void     fp_spot_gospel_front (FpDraft *self);
void     fp_spot_opening      (FpDraft *self);

/* Of these places, the seats from which a thing would stand before the altar, seen from above. @box: of its plan, in church
 * coordinates */
guint    fp_seats_behind (const FpPersonPlace *seat, guint n, const FpPlaced *altar, const FpBox *box);

/* The altar of celebration with what carries it: its footpace where it has one; -1. */
int      fp_room_altar_group (const FpRoom *self);
/* Whether that can come towards the people with the room before its steps that it must have. */
gboolean fp_room_may_come_forward (const FpRoom *self, double by);

/* Of the things of that office that bear, those on the altar first, then the highest; -1. */
int      fp_room_best_support (const FpRoom *self, FpRole role);

/* What is set on a table by the room that is there (room-on-table.c). */
gboolean fp_draft_belongs_on_table (const FpDraft *self);
gboolean fp_draft_is_free_on_table (const FpDraft *self);
/* FALSE where there is nothing on which it could stand; where there is no room, it is put where it belongs. */
gboolean fp_spot_on_table          (FpDraft *self);

/* FALSE with %FP_ERROR_REFERENCE when there is nothing on which it can stand. */
/* Whether what stands there goes up on a gradine that comes to lie under it. */
gboolean fp_draft_lifts (const FpDraft *self, const FpPlaced *other);
/* Whether it goes before a gradine that comes to lie where it stands. */
gboolean fp_draft_pushes (const FpDraft *self, const FpPlaced *other);
gboolean fp_spot_on_support   (FpDraft *self, GError **error);
/* Parts of the building and pews; FALSE likewise (an opening without a wall). */
gboolean fp_spot_nave         (FpDraft *self, GError **error);

G_END_DECLS
