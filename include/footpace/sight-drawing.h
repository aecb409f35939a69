/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sight-drawing.h - what is seen, drawn: places on the plan, lines of sight, a graph by row
 *
 * A place is a small circle.  It is filled from below as far as what is looked
 * at is hidden from there, in the ink of what hides it: other people, or
 * things; a bar across tells things from people without ink.  A full circle
 * with a cross sees nothing.
 */
#pragma once

#include "footpace/marks.h"
#include "footpace/sight.h"
#include "footpace/view.h"

G_BEGIN_DECLS

/* What is looked at, when, and what is shown of it. */
typedef struct
{
  FpMoment moment;
  FpFocus  focus;
  int      place;     /* whose line of sight; -1: nobody's */
  gboolean blind;     /* floor from which nothing of it is seen is shown, too */
} FpSightLook;

/* Every place where somebody is at that moment; @plan: how a plan lies in the drawing. */
void fp_drawing_add_sight (FpDrawing *self, const FpSight *sight, FpMoment moment, FpFocus focus,
                           const FpViewLayout *plan);

/* How large a circle is, paper mm. */
double fp_sight_mark_radius (double scale);

/* The place whose circle is nearest to a point of the plan, and not farther than @tolerance church mm; -1. */
int fp_sight_place_at (const FpSight *sight, FpMoment moment, FpPoint at, double tolerance);

/**
 * fp_drawing_add_sight_line:
 *
 * From the eye of a place to the middle of what is looked at: whole as far as it is seen, dotted from where something
 * stands in the way, at a cross.
 * @named: what stands there is named beside it where the drawing has nothing else; otherwise that is left to who knows what
 *   the drawing is laid over: fp_sight_stop_room()
 */
void fp_drawing_add_sight_line (FpDrawing *self, const FpSight *sight, guint place, FpMoment moment, FpFocus focus,
                                FpViewId view, const FpViewLayout *layout, gboolean named);

/* A drawing where it is laid down: its lower left corner, paper mm, and how many times as large it is there. */
typedef struct { const FpDrawing *drawing; FpPoint corner; double grown; } FpLaid;

/**
 * fp_sight_stop_room:
 * @laid: @n drawings that lie one over the other
 * @within: paper mm: the words stay in it
 * @stop: where something stands in the way
 * @at: (inout): lower left corner of the words; on entry where they stood, and stay if they can; NAN: nowhere
 *
 * Room near it for naming what stands in the way, where none of the drawings has anything.
 *
 * Returns: FALSE where there is none
 */
gboolean fp_sight_stop_room (const FpLaid *laid, guint n, const FpBox *within, FpPoint stop, const char *words, FpPoint *at);
/* Names it there, with a leader where that is not at hand. */
void     fp_drawing_add_sight_stop (FpDrawing *self, FpPoint stop, FpPoint at, const char *words);

/**
 * fp_drawing_add_blind:
 * @blind: (nullable) (element-type FpBlindFloor): as fp_sight_blind() gives it
 *
 * Outlined and hatched in the ink of things that hide, galleries the other way; before the places, which lie on it.
 */
void fp_drawing_add_blind (FpDrawing *self, const GArray *blind, const FpViewLayout *plan);

/* Paper mm, of the key: a line, how far in its words begin, and how high they are. */
#define FP_SIGHT_KEY_STEP    5.5
#define FP_SIGHT_KEY_WORDS   8.5
#define FP_SIGHT_KEY_LETTERS 2.5

/* What those areas mean and how large they are, below the key of the circles; nothing where there are none.
 * @self: (nullable): %NULL only to measure.  Returns: the height that it takes */
double fp_drawing_add_blind_key (FpDrawing *self, const GArray *blind, FpUnits units, const FpBox *box);

/* What the circles mean, in a column from the top of @box down.  @self: (nullable): %NULL only to measure.
 * Returns: the height that it takes */
double fp_drawing_add_sight_key (FpDrawing *self, const FpBox *box);

/**
 * fp_drawing_add_sight_rows:
 *
 * For each block of seats a bar a row, as long as the mean share that its places see, the places that see nothing told
 * by number; from the top of @box down, and in columns beside each other, as many blocks as find room.
 *
 * Returns: how many blocks were left out
 */
guint fp_drawing_add_sight_rows (FpDrawing *self, const FpSight *sight, FpMoment moment, FpFocus focus, const FpBox *box);

G_END_DECLS
