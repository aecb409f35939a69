/* SPDX-License-Identifier: GPL-3.0-or-later */
/* setting-support.c - on what a new thing stands, and where on it */
#include "setting-spot.h"
#include "standing.h"

#include <math.h>
#include <string.h>

#define STRIDE            25.0
#define FROM_EDGE         40.0  /* of the table, to what stands along it (design judgement)            */
#define BESIDE_TABERNACLE 100.0 /* between it and a candlestick: the veil hangs there (design judgement) */

static double
width_of (const FpBox *plan)
{
  return plan->x1 - plan->x0;
}

static double
top_of (const FpPlaced *placed)
{
  return placed->level + placed->extent.top;
}

int
fp_room_best_support (const FpRoom *room, FpRole role)
{
  int best = -1;
  gboolean best_on_altar = FALSE;

  for (guint i = 0; i < room->n_placed; i++)
    {
      const FpPlaced *placed = &room->placed[i];
      const gboolean on_altar = room->altar >= 0 && fp_room_stands_on (room, (int) i, room->altar);
      if (!fp_placed_has_role (placed, role) || (role != FP_ROLE_TABERNACLE && fp_box_is_empty (&placed->extent.bearing)))
        continue;
      if (best < 0 || (on_altar && !best_on_altar)
          || (on_altar == best_on_altar && top_of (placed) > top_of (&room->placed[best])))
        {
          best = (int) i;
          best_on_altar = on_altar;
        }
    }
  return best;
}

static const char *
label_of_role (FpRole role)
{
  guint n;
  const FpKind *const *kind = fp_kinds (&n);

  for (guint i = 0; i < n; i++)
    if (kind[i]->role == role)
      return kind[i]->label;
  return "support";
}

static gboolean
find_support (FpDraft *self, GError **error)
{
  const FpRole *role = self->kind->stands_on;

  for (guint i = 0; role != NULL && role[i] != FP_ROLE_NONE && role[i] != FP_ROLE_FLOOR; i++)
    {
      self->on = fp_room_best_support (self->room, role[i]);
      if (self->on >= 0)
        return TRUE;
    }
  if (role == NULL || role[0] == FP_ROLE_NONE || fp_kind_may_stand_on (self->kind, FP_ROLE_FLOOR))
    return TRUE;
  {
    g_autofree char *thing = g_utf8_strdown (self->kind->label, -1);
    g_autofree char *support = g_utf8_strdown (label_of_role (role[0]), -1);
    /* "a card", "an altar card", "altar cards" */
    const char *article = g_str_has_suffix (thing, "s") ? "" : strchr ("aeiou", thing[0]) != NULL ? "an " : "a ";
    g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "There is no %s yet on which %s%s could stand", support, article, thing);
  }
  return FALSE;
}

/* Where it comes when its place on the bearing is (0, dy). */
static FpPlace
place_on_bearing (const FpDraft *self, double dy)
{
  const FpPlaced *support = &self->room->placed[self->on];
  const FpPlace given = { 0, dy, 0 };
  const FpPlace inner = fp_place_on_bearing (&support->extent.bearing, self->kind->anchor, &self->plan, &given);

  return fp_place_compose (&support->place, &inner);
}

gboolean
fp_draft_lifts (const FpDraft *self, const FpPlaced *other)
{
  return self->kind->role == FP_ROLE_GRADINE && !other->ghost && !other->in_survey && other->support == self->on
         && fp_kind_may_stand_on (fp_item_kind (other->item), FP_ROLE_GRADINE);
}

gboolean
fp_draft_pushes (const FpDraft *self, const FpPlaced *other)
{
  return self->kind->role == FP_ROLE_GRADINE && !other->in_survey && other->support == self->on
         && fp_placed_has_role (other, FP_ROLE_ALTAR_CARDS);
}

/* Candlesticks stand about what is on the axis, not in its way. */
static gboolean
collides (const FpDraft *self, const FpPlace *place)
{
  for (guint i = 0; i < self->room->n_placed; i++)
    {
      const FpPlaced *other = &self->room->placed[i];
      if (!other->ghost && other->support == self->on && fp_item_kind (other->item)->role != FP_ROLE_CANDLES
          && (fp_item_kind (other->item)->flags & FP_KIND_HUNG) == 0
          && !fp_draft_lifts (self, other) && !fp_draft_pushes (self, other) && fp_room_overlaps (&self->plan, place, other))
        return TRUE;
    }
  return FALSE;
}

static double
spare_on (const FpDraft *self)
{
  const FpBox *bearing = &self->room->placed[self->on].extent.bearing;

  return MAX (bearing->y1 - bearing->y0 - (self->plan.y1 - self->plan.y0), 0.0);
}

static gboolean
stands_along_an_edge (const FpDraft *self)
{
  return self->kind->anchor == FP_ANCHOR_CENTRE && fp_placed_has_role (&self->room->placed[self->on], FP_ROLE_ALTAR);
}

/* Straight on the table a thing leaves the middle to the vessels: it stands along the edge away from the celebrant. */
static double
along_the_edge (const FpDraft *self)
{
  const double reach = MAX (spare_on (self) / 2 - FROM_EDGE, 0.0);

  if (!stands_along_an_edge (self))
    return 0;
  return self->room->placed[self->on].form.facing == FP_FACING_EAST ? reach : -reach;
}

/* From the edge towards the middle and beyond, until nothing is in the way. */
static void
slide_from_edge (FpDraft *self)
{
  const double edge = along_the_edge (self), step = edge < 0 ? STRIDE : -STRIDE;

  self->place = place_on_bearing (self, edge);
  for (double dy = edge; fabs (dy) <= fabs (edge); dy += step)
    {
      const FpPlace place = place_on_bearing (self, dy);
      if (!collides (self, &place))
        {
          self->place = place;
          return;
        }
    }
}

/* From where its anchor puts it, forward and back as far as the bearing reaches, until nothing is in the way. */
static void
slide_on_bearing (FpDraft *self)
{
  const double spare = spare_on (self);
  const double forward = self->kind->anchor == FP_ANCHOR_BACK ? spare : spare / 2;
  const double back = self->kind->anchor == FP_ANCHOR_BACK ? 0 : spare / 2;

  self->place = place_on_bearing (self, 0);
  for (double way = 0; way <= forward; way += STRIDE)
    for (int sign = 1; sign >= -1; sign -= 2)
      {
        const FpPlace place = place_on_bearing (self, sign * way);
        if ((sign < 0 ? forward : back) >= way && !collides (self, &place))
          {
            self->place = place;
            return;
          }
      }
}

/* --- what is fitted to its support ---------------------------------------- */

static int
on_same_altar (const FpDraft *self, FpRole role)
{
  const FpRoom *room = self->room;

  for (guint i = 0; i < room->n_placed; i++)
    if (fp_placed_has_role (&room->placed[i], role)
        && (room->placed[i].support == self->on
            || (room->altar >= 0 && fp_room_stands_on (room, (int) i, room->altar)
                && fp_room_stands_on (room, self->on, room->altar))))
      return (int) i;
  return -1;
}

/* Pairs about the cross, apart by the tabernacle if there is one, and no longer than what carries them. */
static void
fit_candlesticks (FpDraft *self)
{
  const FpBox *bearing = &self->room->placed[self->on].extent.bearing;
  const int tabernacle = on_same_altar (self, FP_ROLE_TABERNACLE), crucifix = on_same_altar (self, FP_ROLE_CRUCIFIX);
  const double length = bearing->x1 - bearing->x0;
  double pairs;

  if (tabernacle >= 0)
    fp_draft_set (self, "gap", MAX (fp_draft_get (self, "gap"),
                                    width_of (&self->room->placed[tabernacle].extent.plan) + 2 * BESIDE_TABERNACLE));
  pairs = floor (fp_draft_get (self, "count") / 2);
  if (pairs > 1 && width_of (&self->plan) > length)
    {
      const double foot = width_of (&self->plan) - fp_draft_get (self, "gap")
                          - 2 * (pairs - 1) * fp_draft_get (self, "spacing");
      fp_draft_set (self, "spacing", floor ((length - foot - fp_draft_get (self, "gap")) / (2 * (pairs - 1))));
    }
  while (width_of (&self->plan) > length && fp_draft_get (self, "count") > 2)
    fp_draft_set (self, "count", fp_draft_get (self, "count") - 2);
  if (crucifix >= 0 && self->room->placed[crucifix].support == self->on)
    self->place = self->room->placed[crucifix].place;
  else
    self->place = place_on_bearing (self, along_the_edge (self));
}

/* Over what carries it, whose size it takes. */
static gboolean
hang (FpDraft *self)
{
  self->place = self->room->placed[self->on].place;
  fp_draft_measure (self);
  if (self->kind->role == FP_ROLE_TABERNACLE_VEIL)
    {
      /* Nothing but a dome goes under a tent. */
      const int top = fp_kind_param_index (fp_item_kind (self->room->placed[self->on].item), "top");
      const FpChoice *shape = top >= 0 ? fp_item_kind (self->room->placed[self->on].item)->params[top].choices : NULL;
      if (shape != NULL && !g_str_equal (shape[(guint) fp_item_params (self->room->placed[self->on].item)[top]].id, "domed"))
        fp_draft_set (self, "shape", 1);
    }
  return TRUE;
}

gboolean
fp_spot_on_support (FpDraft *self, GError **error)
{
  if (fp_draft_belongs_on_table (self) && fp_spot_on_table (self))
    return TRUE;
  if (!find_support (self, error))
    return FALSE;
  if (self->on < 0)
    {
      fp_spot_axis_altar (self);
      return TRUE;
    }
  if ((self->kind->flags & FP_KIND_HUNG) != 0)
    return hang (self);
  if (self->kind->role == FP_ROLE_CANDLES)
    {
      fit_candlesticks (self);
      return TRUE;
    }
  if (self->kind->role == FP_ROLE_GRADINE)
    fp_draft_set (self, "length", width_of (&self->room->placed[self->on].extent.bearing));
  if (stands_along_an_edge (self))
    slide_from_edge (self);
  else
    slide_on_bearing (self);
  return TRUE;
}
