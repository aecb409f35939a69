/* SPDX-License-Identifier: GPL-3.0-or-later */
/* setting-altar.c - where an altar goes on the axis, and what goes behind it
 *
 * An altar that stands free is walked round: the clearance of its kind is
 * kept behind it.  Its footpace is set out for it before it is there.
 */
#include "setting-spot.h"

#include <math.h>

#define USELESS_SLOT 1000.0 /* narrower than this, the way behind a reredos serves nobody (design judgement) */
#define ROOM_BEFORE  900.0  /* before a seat (design judgement)                                               */
/* US Department of Defense, UFC 4-730-02 (2004), ch. 3, 2g: 36 in between the altar's steps and the rail. */
#define BEFORE_STEPS 914.4

/* How near to the east a line across the axis comes, @half to either side of @from. */
static double
wall_east_of (const FpRoom *room, FpPoint from, double half)
{
  double y0, y1, wall;

  fp_room_along (room, &y0, &y1);
  wall = y1;
  for (int side = -1; side <= 1; side++)
    {
      const FpPoint at = { from.x + side * half, from.y };
      wall = MIN (wall, at.y + fp_room_reach (room, at, (FpPoint) { 0, 1 }, MAX (y1 - at.y, 0.0)));
    }
  return wall;
}

/* --- on the axis ---------------------------------------------------------- */

static int
empty_footpace (const FpRoom *room)
{
  for (guint i = 0; i < room->n_placed; i++)
    {
      gboolean taken = FALSE;
      if (!fp_placed_has_role (&room->placed[i], FP_ROLE_FOOTPACE))
        continue;
      for (guint k = 0; k < room->n_placed && !taken; k++)
        taken = !room->placed[k].ghost && room->placed[k].support == (int) i;
      if (!taken)
        return (int) i;
    }
  return -1;
}

/* The altar as it is, or as a footpace awaits it. */
static FpBox
altar_box (const FpDraft *self)
{
  return self->kind->role == FP_ROLE_FOOTPACE ? (FpBox) FP_AWAITED_ALTAR : self->plan;
}

static double
way_round (const FpDraft *self)
{
  return self->kind->role == FP_ROLE_FOOTPACE ? fp_kind_find ("altar")->clearance : self->kind->clearance;
}

/* What has to be free about it: the thing itself, and the way behind the altar. */
static FpBox
box_with_way (const FpDraft *self)
{
  FpBox box = self->plan;

  box.y1 = MAX (box.y1, altar_box (self).y1 + way_round (self));
  return box;
}

static gboolean
is_free_with_way (const FpDraft *self, double y)
{
  const FpBox box = box_with_way (self);

  return fp_room_is_free (self->room, &box, &(FpPlace) { 0, y, 0 }, 0, -1, fp_draft_flags (self))
         && fp_draft_is_free (self, &(FpPlace) { 0, y, 0 }, FP_NEIGHBOUR_GAP);
}

/* The way behind it and, before it, its steps on the floor of the sanctuary; where there is no room for both, the
 * steps keep to the floor and the way is what is left.  No nearer to the people than the middle. */
static double
wish_on_axis (const FpDraft *self, double y0, double y1)
{
  const FpBox altar = altar_box (self);
  const double wall = wall_east_of (self->room, (FpPoint) { 0, (y0 + y1) / 2 }, (altar.x1 - altar.x0) / 2);
  double y = MAX (wall - way_round (self) - altar.y1, (y0 + y1) / 2);

  y = MIN (y, wall - self->plan.y1);
  return MIN (MAX (y, y0 - self->plan.y0), MAX (wall - self->plan.y1, (y0 + y1) / 2));
}

/* From @wish forward, as far as the middle of the sanctuary with the way round, or beyond it without. */
static double
search_on_axis (const FpDraft *self, double wish, double y0, double y1)
{
  for (double y = wish; y >= MIN (wish, (y0 + y1) / 2); y -= FP_STRIDE)
    if (is_free_with_way (self, y))
      return y;
  for (double y = wish; y > y0; y -= FP_STRIDE)
    if (fp_draft_is_free (self, &(FpPlace) { 0, y, 0 }, FP_NEIGHBOUR_GAP))
      return y;
  return wish;
}

/* On a footpace that lies too near to the wall for walking round the altar: forward, and the footpace with it, as far
 * as nothing is in the way. */
static void
come_forward_on (FpDraft *self, int footpace)
{
  const FpRoom *room = self->room;
  const FpPlaced *base = &room->placed[footpace];
  const FpBox *core = &base->form.core, *steps = &base->extent.plan;
  /* It will lie round the altar as it now lies round its core. */
  FpBox box = { self->plan.x0 + steps->x0 - core->x0, self->plan.y0 + steps->y0 - core->y0,
                self->plan.x1 + steps->x1 - core->x1, self->plan.y1 + steps->y1 - core->y1 };
  const FpPoint from = { base->place.x, base->place.y };
  double y0, y1, wish, y = from.y;

  fp_room_along (room, &y0, &y1);
  wish = wall_east_of (room, from, (self->plan.x1 - self->plan.x0) / 2) - self->plan.y1 - self->kind->clearance;
  wish = MAX (wish, y0 - box.y0);
  if (base->place.turn != 0 || !(wish < from.y))
    return;
  for (double next = MAX (from.y - FP_STRIDE, wish); next < y; next = MAX (next - FP_STRIDE, wish))
    {
      const FpPlace place = { from.x, next, 0 };
      if (!fp_room_is_free (room, &box, &place, 0, footpace, fp_draft_flags (self)))
        break;
      y = next;
    }
  self->place.y = y;
}

void
fp_spot_axis_altar (FpDraft *self)
{
  const int footpace = fp_kind_may_stand_on (self->kind, FP_ROLE_FOOTPACE) ? empty_footpace (self->room) : -1;
  double y0, y1;

  if (footpace >= 0)
    {
      self->on = footpace;
      self->place = self->room->placed[footpace].place;
      if (self->kind->role == FP_ROLE_ALTAR)
        come_forward_on (self, footpace);
      return;
    }
  fp_room_along (self->room, &y0, &y1);
  self->place = (FpPlace) { 0, search_on_axis (self, wish_on_axis (self, y0, y1), y0, y1), 0 };
}

/* --- behind the altar ----------------------------------------------------- */

/* The rearmost of the altar and its steps. */
static double
back_of (const FpDraft *self, const FpPlaced *altar)
{
  const FpRoom *room = self->room;

  if (room->footpace >= 0 && fp_room_stands_on (room, room->altar, room->footpace))
    return MAX (altar->plan.y1, room->placed[room->footpace].plan.y1);
  return altar->plan.y1;
}

static double
way_behind (const FpPlaced *altar)
{
  return fp_altar_is_free (altar) ? fp_item_kind (altar->item)->clearance : 0;
}

/* Where the front of what stands behind it may come at the least. */
static double
clear_of (const FpDraft *self, const FpPlaced *altar)
{
  const double own = fp_altar_is_free (altar) ? self->kind->clearance : 0;

  return MAX (back_of (self, altar) + own, altar->plan.y1 + way_behind (altar));
}

void
fp_spot_behind_altar (FpDraft *self)
{
  const FpPlaced *altar = fp_draft_altar (self);
  double wall, back;

  if (altar == NULL)
    {
      fp_spot_axis_altar (self);
      return;
    }
  wall = wall_east_of (self->room, (FpPoint) { altar->place.x, altar->place.y }, (self->plan.x1 - self->plan.x0) / 2);
  back = clear_of (self, altar) + self->plan.y1 - self->plan.y0;
  /* Against the wall and never in it: where it then meets the altar, that comes forward, or there is a finding. */
  if (wall - back < USELESS_SLOT)
    back = wall;
  self->place = (FpPlace) { altar->place.x, back - self->plan.y1, 0 };
  self->on = fp_room_footpace_under (self->room, &self->plan, &self->place);
  /* A seat needs room before it; where that is not to be had behind the altar, it goes to the side. */
  if (self->kind->role == FP_ROLE_CHAIR
      && (self->place.y + self->plan.y0 - back_of (self, altar) < ROOM_BEFORE || back > wall + 1
          || !fp_draft_is_free (self, &self->place, 0)))
    fp_spot_epistle_wall (self);
}

double
fp_draft_lacks_behind (const FpDraft *self, double *meets)
{
  const FpPlaced *altar = fp_draft_altar (self);
  const double front = self->place.y + self->plan.y0;

  *meets = 0;
  if (altar == NULL || altar->place.turn != 0)
    return 0;
  *meets = MAX (altar->plan.y1 - front, 0);
  return MAX (altar->plan.y1 + way_behind (altar) - front, 0);
}

/* --- over it, and before it ------------------------------------------------- */

/* The altar with its steps, as far as they go; FALSE where there is none. */
static gboolean
plan_of_group (const FpRoom *room, FpBox *plan)
{
  const int group = fp_room_altar_group (room);

  if (group >= 0)
    *plan = room->placed[group].plan;
  return group >= 0;
}

/* Over all furnishings that stand there. */
static double
top_within (const FpRoom *room, const FpBox *plan)
{
  guint n;
  const FpSolid *solid = fp_scene_solids (room->scene, &n);
  double top = -G_MAXDOUBLE;

  for (guint i = 0; i < n; i++)
    {
      const FpPlaced *owner = &room->placed[solid[i].owner];
      const FpBox3 box = fp_solid_box (&solid[i]);
      if (!owner->ghost && (fp_item_kind (owner->item)->flags & FP_KIND_SURVEY) == 0
          && fp_box_overlaps (plan, &(FpBox) { box.lo.x, box.lo.y, box.hi.x, box.hi.y }))
        top = MAX (top, box.hi.z);
    }
  return top;
}

/* Its columns stand clear of the steps, on the floor; where there is no room for them, it hangs. */
static gboolean
has_room_for_columns (const FpDraft *self)
{
  const double side = fp_draft_get (self, "column");
  const FpBox foot = { -side / 2, -side / 2, side / 2, side / 2 }, *plan = &self->plan;

  for (guint i = 0; i < 4; i++)
    {
      const FpPlace place = { self->place.x + (i % 2 == 0 ? plan->x0 + side / 2 : plan->x1 - side / 2),
                              self->place.y + (i < 2 ? plan->y0 + side / 2 : plan->y1 - side / 2), 0 };
      if (!fp_room_is_free (self->room, &foot, &place, 0, -1, FP_ROOM_UNDER_ARCHES | FP_ROOM_ON_ANY_LEVEL))
        return FALSE;
    }
  return TRUE;
}

static void
cover (FpDraft *self, const FpBox *plan, double more)
{
  fp_draft_set (self, "width", plan->x1 - plan->x0 + 2 * more);
  fp_draft_set (self, "depth", plan->y1 - plan->y0 + 2 * more);
}

/* Over the altar and its footpace, with all that stands there. */
void
fp_spot_above_altar (FpDraft *self)
{
  const double air = 100; /* over the highest, and beside the steps: design judgement */
  const double more = fp_draft_get (self, "column") + air;
  double top, floor;
  FpBox plan;

  if (!plan_of_group (self->room, &plan))
    {
      fp_spot_axis_altar (self);
      return;
    }
  self->on = -1;
  self->place = (FpPlace) { (plan.x0 + plan.x1) / 2, (plan.y0 + plan.y1) / 2, 0 };
  cover (self, &plan, more);
  if (!has_room_for_columns (self))
    {
      cover (self, &plan, 0);
      fp_draft_set (self, "form", 1);
    }
  floor = fp_scene_floor_at (self->room->scene, (FpPoint) { self->place.x, self->place.y }, NULL);
  top = top_within (self->room, &plan) + air - floor;
  fp_draft_set (self, "height", MAX (fp_draft_get (self, "height"), top));
}

/* The lamp hangs before the Blessed Sacrament, wherever that is kept. */
static const FpPlaced *
tabernacle_aside (const FpDraft *self)
{
  const FpRoom *room = self->room;
  const int tabernacle = fp_scene_role (room->scene, FP_ROLE_TABERNACLE);

  if (self->kind->role != FP_ROLE_SANCTUARY_LAMP || tabernacle < 0
      || (room->altar >= 0 && fp_room_stands_on (room, tabernacle, room->altar)))
    return NULL;
  return &room->placed[tabernacle];
}

/* As near to the lowest step as nothing is in the way, and what comes in a pair at its two ends. */
void
fp_spot_before_altar (FpDraft *self)
{
  const FpPlaced *aside = tabernacle_aside (self);
  double y0, y1;
  FpBox plan;

  fp_room_along (self->room, &y0, &y1);
  self->on = -1;
  if (aside != NULL)
    plan = aside->plan;
  else if (!plan_of_group (self->room, &plan))
    plan = (FpBox) { -1000, (y0 + y1) / 2, 1000, y1 };
  fp_draft_set (self, "gap", plan.x1 - plan.x0);
  self->place = (FpPlace) { (plan.x0 + plan.x1) / 2, plan.y0 - self->kind->clearance - self->plan.y1, 0 };
  /* What hangs is in nobody's way. */
  for (double y = self->place.y; (self->kind->flags & FP_KIND_CUT) == 0 && y + self->plan.y0 >= y0; y -= FP_STRIDE)
    {
      const FpPlace place = { self->place.x, y, 0 };
      if (fp_draft_is_free (self, &place, 0))
        {
          self->place = place;
          return;
        }
    }
  if ((self->kind->flags & FP_KIND_CUT) == 0)
    self->place = fp_room_nearest_free (self->room, &self->plan, self->place, &self->room->sanctuary, 0, fp_draft_flags (self));
}

/* --- an altar comes forward ------------------------------------------------- */

int
fp_room_altar_group (const FpRoom *self)
{
  if (self->altar >= 0 && self->footpace >= 0 && fp_room_stands_on (self, self->altar, self->footpace))
    return self->footpace;
  return self->altar;
}

gboolean
fp_room_may_come_forward (const FpRoom *self, double by)
{
  const int group = fp_room_altar_group (self);
  const FpBox *plan = group >= 0 ? &self->placed[group].plan : NULL;
  double y0, y1;

  if (plan == NULL)
    return FALSE;
  fp_room_along (self, &y0, &y1);
  {
    /* What it comes to stand on, and the way before that. */
    const FpBox box = { plan->x0, plan->y0 - by - BEFORE_STEPS, plan->x1, plan->y0 };
    return box.y0 >= y0 && fp_room_is_clear (self, &box, group, FP_ROOM_UNDER_ARCHES);
  }
}
