/* SPDX-License-Identifier: GPL-3.0-or-later */
/* setting-spot.c - where a new thing of the sanctuary belongs
 *
 * What no book says is design judgement: the strides of the search, the gaps
 * between neighbours, and what counts as room enough.
 */
#include "setting-spot.h"
#include "standing.h"

#include <math.h>
#include <string.h>

#define BESIDE_ALTAR  600.0  /* between the altar's end and what stands beside it          */
#define OFF_THE_WALL  50.0
#define NEAR_THE_PEOPLE 1000.0 /* so much farther from them an ambo goes for the sake of sight, mm: design judgement */
/* Micklethwaite, Modern Parish Churches (1874), section XIII: a rail stands a foot back from the edge of its step. */
#define RAIL_SET_BACK 305.0

/* --- drafts --------------------------------------------------------------- */

static FpForm
form_of (const FpDraft *self)
{
  const FpScene *scene = self->room->scene;
  FpForm form = { .param = self->param, .corner = self->corner, .n_corners = self->n_corners,
                  .core = FP_AWAITED_ALTAR,
                  .facing = fp_project_facing (fp_scene_project (scene), fp_scene_alternative (scene)) };

  if ((self->kind->flags & FP_KIND_HUNG) != 0 && self->on >= 0)
    fp_form_hang_over (&form, &self->room->placed[self->on].extent);
  return form;
}

void
fp_draft_measure (FpDraft *self)
{
  const FpForm form = form_of (self);
  FpExtent extent = { FP_BOX_EMPTY, FP_BOX_EMPTY, 0, 0 };

  if (self->n_corners > 0 || (self->kind->flags & (FP_KIND_OUTLINE | FP_KIND_RUN)) == 0)
    self->kind->extent (&form, &extent);
  self->plan = extent.plan;
}

void
fp_draft_solids (const FpDraft *self, FpSolids *out)
{
  const FpForm form = form_of (self);

  self->kind->solids (&form, out);
}

gboolean
fp_draft_set_well (FpDraft *self, const char *param, double value)
{
  const FpForm form = form_of (self);
  g_autofree char *amiss = NULL;

  fp_draft_set (self, param, value);
  amiss = self->kind->amiss != NULL ? self->kind->amiss (&form) : NULL;
  return fp_draft_get (self, param) == value && amiss == NULL;
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

const FpPlaced *
fp_draft_altar (const FpDraft *self)
{
  return self->room->altar >= 0 ? &self->room->placed[self->room->altar] : NULL;
}

/* Altar and rail belong under the arch of a chancel, and a rail across its steps. */
guint
fp_draft_flags (const FpDraft *self)
{
  switch (self->kind->role)
    {
    case FP_ROLE_RAIL:
    case FP_ROLE_SCREEN: return FP_ROOM_UNDER_ARCHES | FP_ROOM_ON_ANY_LEVEL;
    case FP_ROLE_ALTAR:
    case FP_ROLE_FOOTPACE: return FP_ROOM_UNDER_ARCHES;
    default: return 0;
    }
}

gboolean
fp_draft_is_free (const FpDraft *self, const FpPlace *place, double gap)
{
  return fp_room_is_free (self->room, &self->plan, place, gap, self->on, fp_draft_flags (self));
}

gboolean
fp_kind_may_stand_on (const FpKind *kind, FpRole role)
{
  for (guint i = 0; kind->stands_on != NULL && kind->stands_on[i] != FP_ROLE_NONE; i++)
    if (kind->stands_on[i] == role)
      return TRUE;
  return FALSE;
}

/* Where there is no such place as it should have: any in the sanctuary where nothing is in its way. */
static void
settle_for_any (FpDraft *self)
{
  self->place = fp_room_nearest_free (self->room, &self->plan, self->place, &self->room->sanctuary, 0,
                                      fp_draft_flags (self));
}

/* --- along the walls of the sanctuary -------------------------------------- */

enum { EPISTLE = 1, GOSPEL = -1 };

/* How far it is from the axis, for a thing whose middle is at y, to the nearest wall or edge over its length. */
static double
limit_of_side (const FpDraft *self, int side, double y)
{
  const double half = width_of (&self->plan) / 2 - 1;
  double limit = G_MAXDOUBLE;

  for (int end = -1; end <= 1; end++)
    {
      double x0, x1;
      fp_room_across (self->room, y + end * half, &x0, &x1);
      limit = MIN (limit, side == EPISTLE ? x1 : -x0);
    }
  return limit;
}

/* Turned so that its front faces into the sanctuary: its own -y towards the axis.
 * What belongs elsewhere has a clearance that counts there, not from a wall. */
static FpPlace
against_wall (const FpDraft *self, int side, double y)
{
  const gboolean at_wall = self->kind->spot == FP_SPOT_EPISTLE_WALL || self->kind->spot == FP_SPOT_GOSPEL_WALL;
  const double clearance = at_wall ? self->kind->clearance : OFF_THE_WALL;

  return (FpPlace) { side * (limit_of_side (self, side, y) - clearance - self->plan.y1), y, side * -90 };
}

static double
epistle_start (const FpDraft *self, double y0, double y1)
{
  const FpPlaced *altar = fp_draft_altar (self);

  if (altar == NULL)
    return (y0 + y1) / 2;
  /* The credence is at hand beside the altar; seats are before it. */
  if (self->kind->role == FP_ROLE_CREDENCE)
    return altar->place.y;
  return altar->plan.y0 - width_of (&self->plan) / 2 - FP_NEIGHBOUR_GAP;
}

/* Slides along the wall from the start, to and fro, until nothing is in the way. */
static gboolean
slide_along_wall (FpDraft *self, int side, double start, double y0, double y1, double gap)
{
  const double half = width_of (&self->plan) / 2;

  for (int k = 0; k * FP_STRIDE <= y1 - y0; k++)
    for (int way = -1; way <= 1; way += 2)
      {
        const double y = start + way * k * FP_STRIDE;
        FpPlace place;
        if (y - half < y0 || y + half > y1)
          continue;
        place = against_wall (self, side, y);
        if (fabs (place.x) + self->plan.y0 > 0 && fp_draft_is_free (self, &place, gap))
          {
            self->place = place;
            return TRUE;
          }
      }
  return FALSE;
}

static gboolean
try_wall (FpDraft *self, int side, double gap)
{
  const double half = width_of (&self->plan) / 2;
  double y0, y1, start;

  fp_room_along (self->room, &y0, &y1);
  start = CLAMP (epistle_start (self, y0, y1), MIN (y0 + half, y1), MAX (y1 - half, y0));
  self->place = against_wall (self, side, start);
  return slide_along_wall (self, side, start, y0, y1, gap);
}

/* With fewer of them, down to @least, rather than elsewhere: two seats on their side instead of three, a throne on fewer steps. */
static gboolean
try_fewer (FpDraft *self, int side, const char *param, double least)
{
  const double usual = fp_draft_get (self, param);

  for (double fewer = usual - 1; fewer >= least; fewer--)
    {
      fp_draft_set (self, param, fewer);
      if (try_wall (self, side, 0))
        return TRUE;
    }
  if (usual > 0)
    fp_draft_set (self, param, usual);
  return FALSE;
}

void
fp_spot_epistle_wall (FpDraft *self)
{
  self->on = -1;
  if (try_wall (self, EPISTLE, FP_NEIGHBOUR_GAP) || try_wall (self, EPISTLE, 0) || try_fewer (self, EPISTLE, "seats", 2)
      || try_wall (self, GOSPEL, 0))
    return;
  try_wall (self, EPISTLE, 0);
  settle_for_any (self);
}

void
fp_spot_gospel_wall (FpDraft *self)
{
  self->on = -1;
  if (try_wall (self, GOSPEL, FP_NEIGHBOUR_GAP) || try_wall (self, GOSPEL, 0) || try_wall (self, EPISTLE, 0)
      || try_fewer (self, GOSPEL, "steps", 0) || try_fewer (self, GOSPEL, "stalls", 1))
    return;
  try_wall (self, GOSPEL, 0);
  settle_for_any (self);
}

/* --- the Gospel side, near the people ------------------------------------- */

/* The people are looked up once for all places that are tried. */
typedef struct
{
  const FpPersonPlace *seat;
  guint n;
  guint fewest;          /* seats from which the best place so far hides the altar; G_MAXUINT: there is none yet */
} Watchers;

static guint
count_hidden (const FpDraft *self, const Watchers *people, const FpPlace *place)
{
  const FpPlaced *altar = fp_draft_altar (self);
  const FpBox box = { place->x + self->plan.x0, place->y + self->plan.y0, place->x + self->plan.x1, place->y + self->plan.y1 };

  return altar != NULL ? fp_seats_behind (people->seat, people->n, altar, &box) : 0;
}

/* Of the free places at that distance from the people, the nearest to the altar's side from which it hides the altar
 * from the fewest, where those are fewer than at any place before. */
static void
try_gospel_row (FpDraft *self, Watchers *people, double y, double gap)
{
  const FpPlaced *altar = fp_draft_altar (self);
  const double half = width_of (&self->plan) / 2;
  const double beside = (altar != NULL ? width_of (&altar->extent.plan) / 2 : 900) + BESIDE_ALTAR + half;
  double x0, x1, out, in;

  fp_room_across (self->room, y, &x0, &x1);
  out = MAX (-x0 - self->kind->clearance - half, half);
  in = half + FP_NEIGHBOUR_GAP;
  for (int k = 0; k * FP_STRIDE <= out; k++)
    for (int way = -1; way <= 1; way += 2)
      {
        const double x = MIN (beside, out) + way * k * FP_STRIDE;
        const FpPlace place = { -x, y, 0 };
        guint hidden;

        if (x < in || x > out || !fp_draft_is_free (self, &place, gap))
          continue;
        hidden = count_hidden (self, people, &place);
        if (hidden >= people->fewest)
          continue;
        people->fewest = hidden;
        self->place = place;
        if (hidden == 0)
          return;
      }
}

/* As near to the people as may be; farther only where it then hides the altar from nobody, and not as far as that. */
static gboolean
try_gospel_rows (FpDraft *self, Watchers *people, double first, double y1, double gap)
{
  double found = G_MAXDOUBLE;

  for (double y = first; y + self->plan.y1 <= y1 && y <= found + NEAR_THE_PEOPLE; y += FP_STRIDE)
    {
      try_gospel_row (self, people, y, gap);
      if (people->fewest == 0)
        return TRUE;
      if (people->fewest < G_MAXUINT)
        found = MIN (found, y);
    }
  return people->fewest < G_MAXUINT;
}

/* Before the altar: its stair on whichever side there is room, or lower, rather than farther from the people. */
static gboolean
try_pulpits (FpDraft *self, Watchers *people, double first)
{
  const FpPlaced *altar = fp_draft_altar (self);
  const double usual = fp_draft_get (self, "floor"), least = 300, by = 300;

  if (self->kind->role != FP_ROLE_PULPIT || altar == NULL)
    return FALSE;
  for (double floor = usual; floor >= least; floor -= by)
    for (int stair = 0; stair < 3; stair++)
      {
        fp_draft_set (self, "floor", floor);
        fp_draft_set (self, "stair", stair);
        people->fewest = G_MAXUINT;
        if (try_gospel_rows (self, people, first, altar->plan.y0, 0))
          return TRUE;
      }
  people->fewest = G_MAXUINT;
  fp_draft_set (self, "floor", usual);
  fp_draft_set (self, "stair", 0);
  return FALSE;
}

void
fp_spot_gospel_front (FpDraft *self)
{
  g_autoptr (FpPeople) people = fp_people_new (self->room->scene);
  Watchers watchers = { .fewest = G_MAXUINT };
  double y0, y1, first;

  watchers.seat = fp_people_places (people, &watchers.n);
  fp_room_along (self->room, &y0, &y1);
  self->on = -1;
  first = y0 + self->kind->clearance - self->plan.y0;
  if (try_pulpits (self, &watchers, first) || try_gospel_rows (self, &watchers, first, y1, FP_NEIGHBOUR_GAP)
      || try_gospel_rows (self, &watchers, first, y1, 0))
    return;
  self->place = (FpPlace) { self->room->sanctuary.x0 / 2, first, 0 };
  settle_for_any (self);
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
  for (double y = self->place.y; y < (y0 + y1) / 2; y += FP_STRIDE)
    if (fp_draft_is_free (self, &(FpPlace) { 0, y, 0 }, 0))
      {
        self->place.y = y;
        fit_rail (self, y);
        return;
      }
}
