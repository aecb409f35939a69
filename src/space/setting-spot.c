/* SPDX-License-Identifier: GPL-3.0-or-later */
/* setting-spot.c - where a new thing of the sanctuary belongs
 *
 * What no book says is design judgement: the strides of the search, the gaps
 * between neighbours, and what counts as room enough.
 */
#include "setting-spot.h"

#include <math.h>
#include <string.h>

#define STRIDE        50.0
#define NEIGHBOUR_GAP 200.0
#define BESIDE_ALTAR  600.0  /* between the altar's end and what stands beside it          */
#define USELESS_SLOT  1000.0 /* narrower than this, the way behind a reredos serves nobody */
#define ROOM_BEFORE   900.0  /* before a seat                                              */
#define OFF_THE_WALL  50.0
/* Micklethwaite, Modern Parish Churches (1874), section XIII: a rail stands a foot back from the edge of its step. */
#define RAIL_SET_BACK 305.0

/* --- drafts --------------------------------------------------------------- */

void
fp_draft_measure (FpDraft *self)
{
  const FpBrief *brief = fp_project_brief (fp_scene_project (self->room->scene));
  const FpForm form = { .param = self->param, .corner = self->corner, .n_corners = self->n_corners,
                        .core = { -1200, -450, 1200, 450 }, .facing = brief->facing };
  FpExtent extent = { FP_BOX_EMPTY, FP_BOX_EMPTY, 0, 0 };

  if (self->n_corners > 0 || (self->kind->flags & (FP_KIND_OUTLINE | FP_KIND_RUN)) == 0)
    self->kind->extent (&form, &extent);
  self->plan = extent.plan;
}

void
fp_draft_init (FpDraft *self, const FpRoom *room, const FpKind *kind)
{
  *self = (FpDraft) { .room = room, .kind = kind, .on = -1 };
  fp_kind_defaults (kind, self->param);
  fp_draft_measure (self);
}

double
fp_draft_get (const FpDraft *self, const char *param)
{
  const int i = fp_kind_param_index (self->kind, param);

  return i >= 0 ? self->param[i] : 0;
}

void
fp_draft_set (FpDraft *self, const char *param, double value)
{
  const int i = fp_kind_param_index (self->kind, param);

  if (i < 0)
    return;
  if (self->kind->params[i].type == FP_PARAM_COUNT || self->kind->params[i].type == FP_PARAM_CHOICE)
    value = floor (value);
  self->param[i] = CLAMP (value, self->kind->params[i].min, self->kind->params[i].max);
  fp_draft_measure (self);
}

static double
width_of (const FpBox *plan)
{
  return plan->x1 - plan->x0;
}

static const FpPlaced *
altar_of (const FpDraft *self)
{
  return self->room->altar >= 0 ? &self->room->placed[self->room->altar] : NULL;
}

static gboolean
is_free (const FpDraft *self, const FpPlace *place, double gap)
{
  return fp_room_is_free (self->room, &self->plan, place, gap, self->on);
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

gboolean
fp_kind_may_stand_on (const FpKind *kind, FpRole role)
{
  for (guint i = 0; kind->stands_on != NULL && kind->stands_on[i] != FP_ROLE_NONE; i++)
    if (kind->stands_on[i] == role)
      return TRUE;
  return FALSE;
}

/* With room behind it; in a shallow sanctuary no nearer to the people than its middle. */
void
fp_spot_axis_altar (FpDraft *self)
{
  const int footpace = fp_kind_may_stand_on (self->kind, FP_ROLE_FOOTPACE) ? empty_footpace (self->room) : -1;
  double y0, y1, y;

  if (footpace >= 0)
    {
      self->on = footpace;
      self->place = self->room->placed[footpace].place;
      return;
    }
  fp_room_along (self->room, &y0, &y1);
  y = MAX (y1 - self->kind->clearance - self->plan.y1, (y0 + y1) / 2);
  self->place = (FpPlace) { 0, y, 0 };
  while (y > y0 && !is_free (self, &self->place, NEIGHBOUR_GAP))
    {
      y -= STRIDE;
      if (is_free (self, &(FpPlace) { 0, y, 0 }, NEIGHBOUR_GAP))
        self->place.y = y;
    }
}

/* --- behind the altar ----------------------------------------------------- */

static double
wall_behind (const FpDraft *self, const FpPlaced *altar)
{
  double y0, y1, wall;

  fp_room_along (self->room, &y0, &y1);
  wall = y1;
  for (int side = -1; side <= 1; side++)
    {
      const FpPoint from = { side * width_of (&self->plan) / 2, altar->place.y };
      wall = MIN (wall, from.y + fp_room_reach (self->room, from, (FpPoint) { 0, 1 }, MAX (y1 - from.y, 0.0)));
    }
  return wall;
}

/* The rearmost of the altar and its steps. */
static double
back_of (const FpDraft *self, const FpPlaced *altar)
{
  const FpRoom *room = self->room;

  if (room->footpace >= 0 && fp_room_stands_on (room, room->altar, room->footpace))
    return MAX (altar->plan.y1, room->placed[room->footpace].plan.y1);
  return altar->plan.y1;
}

void
fp_spot_behind_altar (FpDraft *self)
{
  const FpPlaced *altar = altar_of (self);
  double wall, back;

  if (altar == NULL)
    {
      fp_spot_axis_altar (self);
      return;
    }
  wall = wall_behind (self, altar);
  back = back_of (self, altar) + (fp_altar_is_free (altar) ? self->kind->clearance : 0) + self->plan.y1 - self->plan.y0;
  /* Against the wall and never in it: where it then meets the altar, the finding on overlaps says that the altar
   * must come forward. */
  if (wall - back < USELESS_SLOT)
    back = wall;
  self->place = (FpPlace) { altar->place.x, back - self->plan.y1, 0 };
  self->on = fp_room_footpace_under (self->room, &self->plan, &self->place);
  /* A seat needs room before it; where that is not to be had behind the altar, it goes to the side. */
  if (self->kind->role == FP_ROLE_CHAIR
      && (self->place.y + self->plan.y0 - back_of (self, altar) < ROOM_BEFORE || back > wall + 1
          || !is_free (self, &self->place, 0)))
    fp_spot_epistle_wall (self);
}

/* --- along the wall on the Epistle side ----------------------------------- */

/* Where the back comes for a thing whose middle is at y: before the nearest wall or edge over its length. */
static double
epistle_limit (const FpDraft *self, double y)
{
  const double half = width_of (&self->plan) / 2 - 1;
  double limit = G_MAXDOUBLE;

  for (int side = -1; side <= 1; side++)
    {
      double x0, x1;
      fp_room_across (self->room, y + side * half, &x0, &x1);
      limit = MIN (limit, x1);
    }
  return limit;
}

/* Turned so that its front faces into the sanctuary: its own -y towards the Gospel side.
 * What belongs elsewhere has a clearance that counts there, not from a wall. */
static FpPlace
against_epistle_wall (const FpDraft *self, double y)
{
  const double clearance = self->kind->spot == FP_SPOT_EPISTLE_WALL ? self->kind->clearance : OFF_THE_WALL;

  return (FpPlace) { epistle_limit (self, y) - clearance - self->plan.y1, y, -90 };
}

static double
epistle_start (const FpDraft *self, double y0, double y1)
{
  const FpPlaced *altar = altar_of (self);

  if (altar == NULL)
    return (y0 + y1) / 2;
  /* The credence is at hand beside the altar; seats are before it. */
  if (self->kind->role == FP_ROLE_CREDENCE)
    return altar->place.y;
  return altar->plan.y0 - width_of (&self->plan) / 2 - NEIGHBOUR_GAP;
}

/* Slides along the wall from the start, to and fro, until nothing is in the way. */
static gboolean
slide_along_wall (FpDraft *self, double start, double y0, double y1, double gap)
{
  const double half = width_of (&self->plan) / 2;

  for (int k = 0; k * STRIDE <= y1 - y0; k++)
    for (int way = -1; way <= 1; way += 2)
      {
        const double y = start + way * k * STRIDE;
        FpPlace place;
        if (y - half < y0 || y + half > y1)
          continue;
        place = against_epistle_wall (self, y);
        if (place.x + self->plan.y0 > 0 && fp_room_is_free (self->room, &self->plan, &place, gap, -1))
          {
            self->place = place;
            return TRUE;
          }
      }
  return FALSE;
}

void
fp_spot_epistle_wall (FpDraft *self)
{
  const double half = width_of (&self->plan) / 2;
  double y0, y1, start;

  fp_room_along (self->room, &y0, &y1);
  self->on = -1;
  start = CLAMP (epistle_start (self, y0, y1), MIN (y0 + half, y1), MAX (y1 - half, y0));
  if (slide_along_wall (self, start, y0, y1, NEIGHBOUR_GAP) || slide_along_wall (self, start, y0, y1, 0))
    return;
  self->place = against_epistle_wall (self, start);
}

/* --- the Gospel side, near the people ------------------------------------- */

static gboolean
try_gospel_row (FpDraft *self, double y, double gap)
{
  const FpPlaced *altar = altar_of (self);
  const double half = width_of (&self->plan) / 2;
  const double beside = (altar != NULL ? width_of (&altar->extent.plan) / 2 : 900) + BESIDE_ALTAR + half;
  double x0, x1, out, in;

  fp_room_across (self->room, y, &x0, &x1);
  out = MAX (-x0 - self->kind->clearance - half, half);
  in = half + NEIGHBOUR_GAP;
  for (int k = 0; k * STRIDE <= out; k++)
    for (int way = -1; way <= 1; way += 2)
      {
        const double x = MIN (beside, out) + way * k * STRIDE;
        const FpPlace place = { -x, y, 0 };
        if (x >= in && x <= out && is_free (self, &place, gap))
          {
            self->place = place;
            return TRUE;
          }
      }
  return FALSE;
}

void
fp_spot_gospel_front (FpDraft *self)
{
  double y0, y1, first;

  fp_room_along (self->room, &y0, &y1);
  self->on = -1;
  first = y0 + self->kind->clearance - self->plan.y0;
  for (double y = first; y + self->plan.y1 <= y1; y += STRIDE)
    if (try_gospel_row (self, y, NEIGHBOUR_GAP))
      return;
  for (double y = first; y + self->plan.y1 <= y1; y += STRIDE)
    if (try_gospel_row (self, y, 0))
      return;
  self->place = (FpPlace) { self->room->sanctuary.x0 / 2, first, 0 };
}

/* --- across the opening to the sanctuary ---------------------------------- */

/* As long as the opening is wide, about the axis; the gate no wider than leaves a piece on either side. */
static void
fit_rail (FpDraft *self, double y)
{
  double x0, x1, length;

  fp_room_across (self->room, y, &x0, &x1);
  length = 2 * MIN (-x0, x1);
  if (length < 1)
    return;
  fp_draft_set (self, "length", floor (length));
  length = fp_draft_get (self, "length");
  if (fp_draft_get (self, "gate") > length - 600)
    fp_draft_set (self, "gate", length >= 1200 ? length - 600 : 0);
}

void
fp_spot_opening (FpDraft *self)
{
  const double top = fp_draft_get (self, "top");
  const double back = self->kind->clearance > 0 ? self->kind->clearance : RAIL_SET_BACK;
  double y0, y1;

  fp_room_along (self->room, &y0, &y1);
  self->place = (FpPlace) { 0, y0 + back + top / 2, 0 };
  fit_rail (self, self->place.y);
  for (double y = self->place.y; y < (y0 + y1) / 2; y += STRIDE)
    if (is_free (self, &(FpPlace) { 0, y, 0 }, 0))
      {
        self->place.y = y;
        fit_rail (self, y);
        return;
      }
}
