/* SPDX-License-Identifier: GPL-3.0-or-later */
/* setting-survey.c - where a new part of the building goes
 *
 * A newly measured part gets a shape that can be pulled into the right one:
 * the first floor is a nave, the second a sanctuary before it, the first walls
 * stand round both.  Sizes are design judgement.
 */
#include "setting-pews.h"

#include <math.h>

#define SANCTUARY_LENGTH 6000.0
#define SANCTUARY_RISE   300.0
#define BESIDE_OPENING   200.0 /* of wall left between two openings */
#define WHEELCHAIR_BEFORE 600.0 /* from the front edge of the nave */
#define SAME_LENGTH        0.5
#define RISER            150.0 /* towards which the risers between two levels are divided */

static FpPoint
middle_of (const FpBox *box)
{
  return (FpPoint) { (box->x0 + box->x1) / 2, (box->y0 + box->y1) / 2 };
}

/* Counter-clockwise from the south-west corner, about the middle of the box. */
static void
draw_rectangle (FpDraft *self, const FpBox *box)
{
  const FpPoint m = middle_of (box);
  const double hx = (box->x1 - box->x0) / 2, hy = (box->y1 - box->y0) / 2;
  const FpPoint corner[4] = { { -hx, -hy }, { hx, -hy }, { hx, hy }, { -hx, hy } };

  for (guint i = 0; i < 4; i++)
    self->corner[i] = corner[i];
  self->n_corners = 4;
  self->place = (FpPlace) { m.x, m.y, 0 };
  fp_draft_measure (self);
}

/* Of so many mm in the middle of the nave, or as much of it as there is. */
static FpBox
middle_of_nave (const FpRoom *room, double width, double length)
{
  const FpPoint m = middle_of (&room->nave);
  const double hx = MIN (width, room->nave.x1 - room->nave.x0) / 2;
  const double hy = MIN (length, room->nave.y1 - room->nave.y0) / 2;

  return (FpBox) { m.x - hx, m.y - hy, m.x + hx, m.y + hy };
}

static void
spot_free_in_nave (FpDraft *self, FpPoint wish, double gap)
{
  self->place = fp_room_nearest_free (self->room, &self->plan, (FpPlace) { wish.x, wish.y, 0 }, &self->room->nave, gap,
                                      FP_ROOM_ON_ANY_LEVEL);
}

/* Among the others and in front, beside the middle aisle, where there is room; never in the aisle if that can be helped. */
static void
spot_wheelchair (FpDraft *self)
{
  const FpBox *nave = &self->room->nave;

  spot_free_in_nave (self, (FpPoint) { middle_of (nave).x - (nave->x1 - nave->x0) / 6, nave->y1 - WHEELCHAIR_BEFORE }, 0);
}

/* Where the nave is full, rather with fewer of them, down to @least, than among the seats. */
static gboolean
spot_free_with_fewer (FpDraft *self, FpPoint wish, const char *param, double least)
{
  spot_free_in_nave (self, wish, 0);
  while (!fp_room_is_free (self->room, &self->plan, &self->place, 0, -1, FP_ROOM_ON_ANY_LEVEL))
    {
      if (fp_draft_get (self, param) <= least)
        return FALSE;
      fp_draft_set (self, param, fp_draft_get (self, param) - 1);
      spot_free_in_nave (self, wish, 0);
    }
  return TRUE;
}

/* Near the entrance, on the Gospel side (Roman Ritual and St Charles Borromeo, from memory). */
static void
spot_font (FpDraft *self)
{
  const FpBox *nave = &self->room->nave;
  const double from_door = 2000; /* design judgement */

  spot_free_with_fewer (self, (FpPoint) { nave->x0 + (nave->x1 - nave->x0) / 5, nave->y0 + from_door }, "steps", 0);
}

static void
spot_chairs (FpDraft *self)
{
  const FpPoint wish = middle_of (&self->room->nave);

  if (!spot_free_with_fewer (self, wish, "rows", 1))
    spot_free_with_fewer (self, wish, "seats", 1);
}

static int
steps_to_sanctuary (const FpRoom *room)
{
  return fp_scene_role (room->scene, FP_ROLE_STEPS);
}

/* Up to the edge of the sanctuary, by as much as that is higher; from the Gospel side on, where nothing is in its way. */
static void
spot_ramp (FpDraft *self)
{
  const FpRoom *room = self->room;
  const FpBox *nave = &room->nave;
  const double rise = fp_scene_floor_at (room->scene, middle_of (&room->sanctuary), NULL) - fp_scene_floor_at (room->scene, middle_of (nave), NULL);
  const double stride = 100;

  if (rise > 0)
    fp_draft_set (self, "rise", rise);
  self->place = (FpPlace) { nave->x0 - self->plan.x0 + stride, nave->y1 - self->plan.y1, 0 };
  for (double x = self->place.x; x + self->plan.x1 <= nave->x1; x += stride)
    {
      const FpPlace place = { x, self->place.y, 0 };
      if (fp_room_is_free (room, &self->plan, &place, 0, -1, FP_ROOM_ON_ANY_LEVEL))
        {
          self->place = place;
          return;
        }
    }
}

/* At the Epistle end of the steps, by their measures. */
static void
spot_handrail (FpDraft *self)
{
  const int at = steps_to_sanctuary (self->room);
  const FpPlaced *steps = at >= 0 ? &self->room->placed[at] : NULL;
  FpPoint foot;

  if (steps == NULL)
    {
      spot_free_in_nave (self, middle_of (&self->room->nave), 0);
      return;
    }
  fp_draft_set (self, "rise", steps->extent.height);
  fp_draft_set (self, "length", steps->extent.plan.y1 - steps->extent.plan.y0);
  foot = fp_place_point (&steps->place, (FpPoint) { steps->extent.plan.x1 - self->plan.x1, steps->extent.plan.y0 });
  self->place = (FpPlace) { foot.x, foot.y, steps->place.turn };
}

static double
nave_level (const FpRoom *room)
{
  return fp_scene_floor_at (room->scene, middle_of (&room->nave), NULL);
}

static void
spot_floor (FpDraft *self)
{
  const FpRoom *room = self->room;
  FpBox box;

  if (!room->has_nave)
    draw_rectangle (self, &room->nave);
  else if (!room->has_sanctuary)
    {
      fp_draft_set (self, "use", 1);
      fp_draft_set (self, "level", nave_level (room) + SANCTUARY_RISE);
      box = (FpBox) { room->nave.x0, room->nave.y1, room->nave.x1, room->nave.y1 + SANCTUARY_LENGTH };
      draw_rectangle (self, &box);
    }
  else
    {
      box = middle_of_nave (room, 4000, 3000);
      fp_draft_set (self, "level", nave_level (room) + RISER);
      draw_rectangle (self, &box);
    }
}

static gboolean
has_walls (const FpRoom *room)
{
  return fp_scene_role (room->scene, FP_ROLE_WALL) >= 0;
}

/* Clockwise round all floors, so that the church lies to the right of the run. */
static void
wall_round (FpDraft *self)
{
  FpBox box = self->room->nave;
  FpPoint swap;

  if (self->room->has_sanctuary)
    fp_box_add_box (&box, &self->room->sanctuary);
  draw_rectangle (self, &box);
  swap = self->corner[1];
  self->corner[1] = self->corner[3];
  self->corner[3] = swap;
  fp_draft_set (self, "closed", 1);
}

static void
spot_wall (FpDraft *self)
{
  const FpPoint m = middle_of (&self->room->nave);

  if (!has_walls (self->room))
    {
      wall_round (self);
      return;
    }
  self->corner[0] = (FpPoint) { -1500, 0 };
  self->corner[1] = (FpPoint) { 1500, 0 };
  self->n_corners = 2;
  fp_draft_measure (self);
  self->place = (FpPlace) { m.x, m.y, 0 };
}

/* Across the west end; its front towards the altar. */
static void
spot_gallery (FpDraft *self)
{
  const FpBox *nave = &self->room->nave;
  const FpBox box = { nave->x0, nave->y0, nave->x1, nave->y0 + MIN (3000, (nave->y1 - nave->y0) / 2) };

  fp_draft_set (self, "front-side", 3);
  draw_rectangle (self, &box);
}

static void
spot_standing_room (FpDraft *self)
{
  const FpBox box = middle_of_nave (self->room, 3000, 2000);
  const FpPoint m = middle_of (&box);

  draw_rectangle (self, &box);
  spot_free_in_nave (self, m, 0);
}

/* From the nave up to the edge of the sanctuary, as wide as that is, the rise divided evenly. */
static void
spot_steps (FpDraft *self)
{
  const FpRoom *room = self->room;
  const double edge = room->sanctuary.y0;
  const double rise = fp_scene_floor_at (room->scene, (FpPoint) { 0, edge + 1 }, NULL)
                      - fp_scene_floor_at (room->scene, (FpPoint) { 0, edge - 1 }, NULL);
  double x0, x1;

  if (!room->has_sanctuary || rise < 50)
    {
      spot_free_in_nave (self, (FpPoint) { 0, middle_of (&room->nave).y }, 0);
      return;
    }
  fp_room_across (room, edge + 1, &x0, &x1);
  if (MIN (-x0, x1) > 0)
    fp_draft_set (self, "width", 2 * MIN (-x0, x1));
  fp_draft_set (self, "count", MAX (round (rise / RISER), 1));
  fp_draft_set (self, "riser", rise / fp_draft_get (self, "count"));
  self->place = (FpPlace) { 0, edge - (fp_draft_get (self, "count") - 1) * fp_draft_get (self, "tread"), 0 };
}

/* --- openings ------------------------------------------------------------- */

static double
side_length (const FpPlaced *wall, guint side)
{
  const guint n = wall->form.n_corners;
  const FpPoint a = wall->form.corner[side], b = wall->form.corner[(side + 1) % n];

  return hypot (b.x - a.x, b.y - a.y);
}

static guint
n_sides (const FpPlaced *wall)
{
  return fp_item_param (wall->item, "closed") != 0 ? wall->form.n_corners : wall->form.n_corners - 1;
}

/* Of all that the survey holds: one that this alternative fills up is still there in the others. */
static const FpItem *
opening_in (const FpDraft *self, const FpPlaced *wall, guint side, guint i)
{
  const FpItem *item = fp_project_survey (fp_scene_project (self->room->scene), i);

  return fp_item_is_in_side (item, fp_item_id (wall->item), side + 1) ? item : NULL;
}

/* A stretch of a side without openings, mm from the first corner. */
typedef struct { double from, to; } Stretch;

static Stretch
free_from (const FpDraft *self, const FpPlaced *wall, guint side, double from)
{
  const guint n = fp_project_n_survey (fp_scene_project (self->room->scene));
  Stretch free = { from, side_length (wall, side) };

  for (guint i = 0; i < n; i++)
    {
      const FpItem *other = opening_in (self, wall, side, i);
      const double middle = other != NULL ? fp_item_param (other, "along") : 0;
      const double half = other != NULL ? fp_item_param (other, "width") / 2 + BESIDE_OPENING : 0;

      if (other != NULL && middle + half > from)
        free.to = MIN (free.to, MAX (middle - half, from));
    }
  return free;
}

static Stretch
longest_free (const FpDraft *self, const FpPlaced *wall, guint side)
{
  const guint n = fp_project_n_survey (fp_scene_project (self->room->scene));
  Stretch best = free_from (self, wall, side, 0);

  for (guint i = 0; i < n; i++)
    {
      const FpItem *other = opening_in (self, wall, side, i);
      Stretch after;

      if (other == NULL)
        continue;
      after = free_from (self, wall, side,
                         fp_item_param (other, "along") + fp_item_param (other, "width") / 2 + BESIDE_OPENING);
      if (after.to - after.from > best.to - best.from + SAME_LENGTH)
        best = after;
    }
  return best;
}

/* In the middle of the longest stretch of wall that has no opening: the second comes into the side across from the
 * first, and further ones between them and the corners. */
static gboolean
spot_opening_in_wall (FpDraft *self, GError **error)
{
  double longest = fp_draft_get (self, "width") - 2 * SAME_LENGTH;

  self->on = -1;
  for (guint i = 0; i < self->room->n_placed; i++)
    {
      const FpPlaced *wall = &self->room->placed[i];
      for (guint side = 0; fp_placed_has_role (wall, FP_ROLE_WALL) && side < n_sides (wall); side++)
        {
          const Stretch free = longest_free (self, wall, side);
          if (free.to - free.from <= longest + SAME_LENGTH)
            continue;
          longest = free.to - free.from;
          self->on = (int) i;
          fp_draft_set (self, "side", side + 1);
          fp_draft_set (self, "along", (free.from + free.to) / 2);
        }
    }
  if (self->on >= 0)
    return TRUE;
  g_set_error_literal (error, FP_ERROR, FP_ERROR_REFERENCE, has_walls (self->room)
                       ? "No wall has room for another opening" : "There is no wall yet in which an opening could be");
  return FALSE;
}

gboolean
fp_spot_nave (FpDraft *self, GError **error)
{
  const FpBox *nave = &self->room->nave;

  if ((self->kind->flags & FP_KIND_IN_WALL) != 0)
    return spot_opening_in_wall (self, error);
  switch (self->kind->role)
    {
    case FP_ROLE_FLOOR: spot_floor (self); break;
    case FP_ROLE_WALL: spot_wall (self); break;
    case FP_ROLE_GALLERY: spot_gallery (self); break;
    case FP_ROLE_STEPS: spot_steps (self); break;
    case FP_ROLE_PEWS: fp_spot_pews (self); break;
    case FP_ROLE_WHEELCHAIR: spot_wheelchair (self); break;
    case FP_ROLE_FONT: spot_font (self); break;
    case FP_ROLE_CHAIRS: spot_chairs (self); break;
    case FP_ROLE_RAMP: spot_ramp (self); break;
    case FP_ROLE_HANDRAIL: spot_handrail (self); break;
    case FP_ROLE_PIER:
      spot_free_in_nave (self, (FpPoint) { nave->x1 - (nave->x1 - nave->x0) / 5, middle_of (nave).y }, 0);
      break;
    default:
      if ((self->kind->flags & (FP_KIND_OUTLINE | FP_KIND_RUN)) != 0)
        spot_standing_room (self);
      else
        spot_free_in_nave (self, middle_of (nave), 0);
      break;
    }
  return TRUE;
}
