/* SPDX-License-Identifier: GPL-3.0-or-later */
/* typed-travel.h - how far something that is dragged is to go, typed
 *
 * A number means so far in the direction in which the hand has moved it in
 * that view: what the hand began, the number makes exact.  On the plan there
 * are two such directions; the greater comes first.  No toolkit.
 */
#pragma once

#include "footpace/drawing.h"

G_BEGIN_DECLS

typedef struct
{
  FpUnits units;
  guint   ways;     /* what the view shows; 1: across (x), 2: along (y)       */
  guint   way;      /* which of them is being typed: 1 or 2                   */
  double  sign[2];  /* of the hand's direction: towards x, y or away          */
  double  far[2];   /* how far in that direction, mm                          */
} FpTypedTravel;

/* Whether typing may begin with it: a digit, a sign, a bracket. */
gboolean fp_typed_travel_begins (gunichar letter);

/**
 * fp_typed_travel_init:
 * @by: how far the hand has moved it
 * @caught: 1: x was caught, 2: y
 *
 * On the plan, what the hand has strayed sideways (less than a fifth of its way)
 * is dropped, unless something has caught it there.
 */
void        fp_typed_travel_init  (FpTypedTravel *self, FpViewId view, FpVec3 by, guint caught, FpUnits units);

FpVec3      fp_typed_travel_by    (const FpTypedTravel *self);
/* "To the Epistle side": the direction that is being typed. */
const char *fp_typed_travel_words (const FpTypedTravel *self);
/* The same, and how far it goes the other way with it, where it does: "To the Epistle side, and 240 mm west"; owned by the
 * caller. */
char       *fp_typed_travel_title (const FpTypedTravel *self);
/* What has been typed of it, or how far the hand had come; owned by the caller. */
char       *fp_typed_travel_text  (const FpTypedTravel *self);
/* FALSE with an error: nothing has changed. */
gboolean    fp_typed_travel_read  (FpTypedTravel *self, const char *text, GError **error);
/* Goes on to the other direction; FALSE where the view has none. */
gboolean    fp_typed_travel_other (FpTypedTravel *self);

G_END_DECLS
