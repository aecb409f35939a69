/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-catch.c - what the thing under the hand comes to rest on */
#include "board-view-private.h"

#include <math.h>

/* As far as a hand is off that means to hit. */
#define REACH_PX 5.0

static guint
catch (FpVec3 *by, guint ways, double scale, gpointer data)
{
  FpBoardView *self = data;

  self->catch_x.sort = self->catch_y.sort = FP_CATCH_NONE;
  ways &= self->catch_ways;
  if (self->catches == NULL || ways == 0)
    return 0;
  fp_catches_find (self->catches, by, ways, REACH_PX / PX_PER_MM * scale, &self->catch_x, &self->catch_y);
  return (self->catch_x.sort != FP_CATCH_NONE ? 1 : 0) | (self->catch_y.sort != FP_CATCH_NONE ? 2 : 0);
}

/* An opening goes along its wall only: the other way it can come to nothing, and so be caught by nothing. */
static guint
ways_of (const FpPlaced *placed)
{
  const double turn = fmod (fabs (placed->place.turn), 180.0);

  if ((fp_item_kind (placed->item)->flags & FP_KIND_IN_WALL) == 0)
    return 3;
  return turn < 0.01 || turn > 179.99 ? 1 : fabs (turn - 90.0) < 0.01 ? 2 : 0;
}

void
fp_board_view_begin_catching (FpBoardView *self, const char *const *moving)
{
  fp_board_view_end_catching (self);
  self->catches = fp_catches_new (fp_document_base_scene (self->document), moving, self->how.hidden);
  self->catch_ways = 3;
  for (; *moving != NULL; moving++)
    self->catch_ways &= ways_of (fp_document_placed (self->document, *moving));
  fp_board_tool_catch_by (&self->tool, catch, self);
}

void
fp_board_view_end_catching (FpBoardView *self)
{
  fp_board_tool_catch_by (&self->tool, NULL, NULL);
  self->catch_x = self->catch_y = (FpCatch) { .sort = FP_CATCH_NONE };
  g_clear_pointer (&self->catches, fp_catches_free);
}
