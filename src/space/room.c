/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "room.h"

#include <math.h>

/* Design judgement, in mm where nothing else is said. */
#define TOUCHING 100.0      /* mm2: what overlaps less only touches           */
#define ONE_LEVEL 30.0      /* mm: floors that differ less are one to stand on */
#define GRID 100.0
#define HALL_WIDTH 8000.0   /* of a church of which nothing is measured yet   */
#define HALL_LENGTH 12000.0
#define CHANCEL_LENGTH 6000.0

static void
plan_corners (const FpBox *plan, const FpPlace *place, double gap, FpPoint corner[4])
{
  corner[0] = fp_place_point (place, (FpPoint) { plan->x0 - gap, plan->y0 - gap });
  corner[1] = fp_place_point (place, (FpPoint) { plan->x1 + gap, plan->y0 - gap });
  corner[2] = fp_place_point (place, (FpPoint) { plan->x1 + gap, plan->y1 + gap });
  corner[3] = fp_place_point (place, (FpPoint) { plan->x0 - gap, plan->y1 + gap });
}

/* --- what there is -------------------------------------------------------- */

static gboolean
is_ministers_floor (const FpRoom *self, const FpFloor *floor)
{
  return floor->use == FP_FLOOR_MINISTERS
         && fp_item_kind (self->placed[floor->owner].item)->role == FP_ROLE_FLOOR;
}

static gboolean
is_peoples_floor (const FpRoom *self, const FpFloor *floor)
{
  (void) self;
  return floor->use == FP_FLOOR_PEOPLE;
}

static void
measure_floors (FpRoom *self)
{
  guint n;
  const FpFloor *floor = fp_scene_floors (self->scene, &n);

  self->sanctuary = self->nave = FP_BOX_EMPTY;
  for (guint i = 0; i < n; i++)
    {
      const FpBox box = fp_outline_box (floor[i].outline, floor[i].n_outline);
      if (is_ministers_floor (self, &floor[i]))
        fp_box_add_box (&self->sanctuary, &box);
      else if (is_peoples_floor (self, &floor[i]))
        fp_box_add_box (&self->nave, &box);
    }
  self->has_sanctuary = !fp_box_is_empty (&self->sanctuary);
  self->has_nave = !fp_box_is_empty (&self->nave);
}

/* An unmeasured part of the church is taken to adjoin the measured one. */
static void
guess_floors (FpRoom *self)
{
  if (!self->has_nave && !self->has_sanctuary)
    self->nave = (FpBox) { -HALL_WIDTH / 2, -HALL_LENGTH, HALL_WIDTH / 2, 0 };
  else if (!self->has_nave)
    self->nave = (FpBox) { self->sanctuary.x0, self->sanctuary.y0 - HALL_LENGTH, self->sanctuary.x1,
                           self->sanctuary.y0 };
  if (self->has_sanctuary)
    return;
  self->sanctuary = self->nave;
  if (self->has_nave)
    self->sanctuary.y0 = MAX (self->nave.y0, self->nave.y1 - CHANCEL_LENGTH); /* the east end of one hall */
  else
    {
      self->sanctuary.y0 = 0;
      self->sanctuary.y1 = CHANCEL_LENGTH;
    }
}

static int
find_footpace (const FpRoom *self)
{
  if (self->altar >= 0)
    for (int i = self->placed[self->altar].support; i >= 0; i = self->placed[i].support)
      if (fp_placed_has_role (&self->placed[i], FP_ROLE_FOOTPACE))
        return i;
  return fp_scene_role (self->scene, FP_ROLE_FOOTPACE);
}

/* Much is asked of them, by every stride of a search. */
typedef struct
{
  const FpSolid *solid;
  FpBox3         box;
} Bound;

typedef struct
{
  FpPoint  corner[4]; /* church coordinates                                  */
  FpBox    box;
  gboolean is_door;
} Way;

static void
gather_bounds (FpRoom *self)
{
  guint n;
  const FpSolid *s = fp_scene_solids (self->scene, &n);

  self->bounds = g_array_new (FALSE, FALSE, sizeof (Bound));
  for (guint i = 0; i < n; i++)
    if ((s[i].part == FP_PART_WALL || s[i].part == FP_PART_PIER || s[i].part == FP_PART_PANEL)
        && !self->placed[s[i].owner].ghost)
      {
        const Bound bound = { &s[i], fp_solid_box (&s[i]) };
        g_array_append_val (self->bounds, bound);
      }
}

static void
gather_ways (FpRoom *self)
{
  self->ways = g_array_new (FALSE, FALSE, sizeof (Way));
  for (guint i = 0; i < self->n_placed; i++)
    {
      const FpPlace *place = &self->placed[i].place;
      FpBox3 free;
      Way way;
      if (!fp_scene_doorway (self->scene, i, &free))
        continue;
      way.is_door = fp_doorway_is_door (&free);
      plan_corners (&(FpBox) { free.lo.x, free.lo.y, free.hi.x, free.hi.y }, place, 0, way.corner);
      way.box = fp_outline_box (way.corner, 4);
      g_array_append_val (self->ways, way);
    }
}

void
fp_room_clear (FpRoom *self)
{
  g_clear_pointer (&self->bounds, g_array_unref);
  g_clear_pointer (&self->ways, g_array_unref);
}

void
fp_room_init (FpRoom *self, const FpScene *scene)
{
  self->scene = scene;
  self->placed = fp_scene_placed (scene, &self->n_placed);
  self->altar = fp_scene_celebrated_altar (scene);
  self->footpace = find_footpace (self);
  measure_floors (self);
  guess_floors (self);
  gather_bounds (self);
  gather_ways (self);
}

/* --- how far it is -------------------------------------------------------- */

static gboolean
lies_beside (const FpBox3 *box, FpVec3 a, FpVec3 b)
{
  return a.z >= box->hi.z || a.z <= box->lo.z || MAX (a.x, b.x) < box->lo.x || MIN (a.x, b.x) > box->hi.x
         || MAX (a.y, b.y) < box->lo.y || MIN (a.y, b.y) > box->hi.y;
}

/* Level. */
static double
reach_at_level (const FpRoom *self, FpVec3 from, FpVec3 to, double most)
{
  double reach = most, t;

  for (guint i = 0; i < self->bounds->len; i++)
    {
      const Bound *bound = &g_array_index (self->bounds, Bound, i);
      if (!lies_beside (&bound->box, from, to) && fp_solid_ray (bound->solid, from, to, &t))
        reach = MIN (reach, t * most);
    }
  return reach;
}

double
fp_room_reach (const FpRoom *self, FpPoint from, FpPoint way, double most)
{
  /* At three heights: over a dwarf wall, and under a window, there is still a wall. */
  static const double heights[] = { 300, 1000, 1800 };
  const double floor = fp_scene_floor_at (self->scene, from, NULL);
  double reach = most;

  for (guint i = 0; i < G_N_ELEMENTS (heights); i++)
    {
      const FpVec3 a = { from.x, from.y, floor + heights[i] };
      const FpVec3 b = { from.x + most * way.x, from.y + most * way.y, a.z };
      reach = MIN (reach, reach_at_level (self, a, b, most));
    }
  return reach;
}

/* Widens lo..hi by where a line across the church (or along it) crosses the sides of an outline. */
static void
add_crossings (const FpPoint *pt, guint n, gboolean across, double line, double *lo, double *hi)
{
  for (guint i = 0; i < n; i++)
    {
      const FpPoint a = pt[i], b = pt[(i + 1) % n];
      const double ua = across ? a.y : a.x, ub = across ? b.y : b.x;
      const double va = across ? a.x : a.y, vb = across ? b.x : b.y;
      double v;
      if ((ua > line) == (ub > line))
        continue;
      v = va + (line - ua) / (ub - ua) * (vb - va);
      *lo = MIN (*lo, v);
      *hi = MAX (*hi, v);
    }
}

typedef gboolean (*FloorTest) (const FpRoom *self, const FpFloor *floor);

static gboolean
floor_stretch (const FpRoom *self, FloorTest counts, gboolean across, double line, double *lo, double *hi)
{
  guint n;
  const FpFloor *floor = fp_scene_floors (self->scene, &n);

  *lo = G_MAXDOUBLE;
  *hi = -G_MAXDOUBLE;
  for (guint i = 0; i < n; i++)
    if (counts (self, &floor[i]))
      add_crossings (floor[i].outline, floor[i].n_outline, across, line, lo, hi);
  return *hi > *lo;
}

/* From the axis to where the floor ends or a wall stands, to either side. */
static void
reach_across (const FpRoom *self, double y, double *x0, double *x1)
{
  const FpPoint axis = { 0, y };

  *x0 = MIN (*x0, 0.0);
  *x1 = MAX (*x1, 0.0);
  *x0 = -fp_room_reach (self, axis, (FpPoint) { -1, 0 }, -*x0);
  *x1 = fp_room_reach (self, axis, (FpPoint) { 1, 0 }, *x1);
}

void
fp_room_across (const FpRoom *self, double y, double *x0, double *x1)
{
  if (!floor_stretch (self, is_ministers_floor, TRUE, y, x0, x1))
    {
      *x0 = self->sanctuary.x0;
      *x1 = self->sanctuary.x1;
    }
  reach_across (self, y, x0, x1);
}

void
fp_room_along (const FpRoom *self, double *y0, double *y1)
{
  double middle;

  if (!floor_stretch (self, is_ministers_floor, FALSE, 0, y0, y1))
    {
      *y0 = self->sanctuary.y0;
      *y1 = self->sanctuary.y1;
    }
  middle = (*y0 + *y1) / 2;
  *y1 = middle + fp_room_reach (self, (FpPoint) { 0, middle }, (FpPoint) { 0, 1 }, *y1 - middle);
}

void
fp_room_nave_across (const FpRoom *self, double y, double *x0, double *x1)
{
  if (!floor_stretch (self, is_peoples_floor, TRUE, y, x0, x1))
    {
      *x0 = self->nave.x0;
      *x1 = self->nave.x1;
    }
  reach_across (self, y, x0, x1);
}

void
fp_room_nave_along (const FpRoom *self, double *y0, double *y1)
{
  double middle;

  if (!floor_stretch (self, is_peoples_floor, FALSE, 0, y0, y1))
    {
      *y0 = self->nave.y0;
      *y1 = self->nave.y1;
    }
  middle = (*y0 + *y1) / 2;
  *y0 = middle - fp_room_reach (self, (FpPoint) { 0, middle }, (FpPoint) { 0, -1 }, middle - *y0);
  *y1 = middle + fp_room_reach (self, (FpPoint) { 0, middle }, (FpPoint) { 0, 1 }, *y1 - middle);
}

/* --- what is taken -------------------------------------------------------- */

static gboolean
outlines_overlap (const FpPoint *a, guint na, const FpPoint *b, guint nb)
{
  const FpBox p = fp_outline_box (a, na), q = fp_outline_box (b, nb);

  return fp_box_overlaps (&p, &q) && fp_outlines_common_area (a, na, b, nb) > TOUCHING;
}

static gboolean
overlaps_box (const FpPoint corner[4], const FpBox *plan, const FpPlace *place)
{
  FpPoint other[4];

  if (fp_box_is_empty (plan))
    return FALSE;
  plan_corners (plan, place, 0, other);
  return outlines_overlap (corner, 4, other, 4);
}

static gboolean
blocks_way (const FpRoom *self, const FpPoint corner[4], guint flags)
{
  const FpBox box = fp_outline_box (corner, 4);

  for (guint i = 0; i < self->ways->len; i++)
    {
      const Way *way = &g_array_index (self->ways, Way, i);
      if ((way->is_door || (flags & FP_ROOM_UNDER_ARCHES) == 0) && fp_box_overlaps (&box, &way->box)
          && fp_outlines_common_area (corner, 4, way->corner, 4) > TOUCHING)
        return TRUE;
    }
  return FALSE;
}

/* With the way behind an altar that stands free. */
static gboolean
overlaps_altar (const FpPoint corner[4], const FpPlaced *altar)
{
  FpBox box = altar->extent.plan;

  if (fp_altar_is_free (altar))
    box.y1 += fp_item_kind (altar->item)->clearance;
  return overlaps_box (corner, &box, &altar->place);
}

/* Of what hangs, or stands on columns, only what reaches down to where people are. */
static gboolean
meets_low_part (const FpRoom *self, const FpPoint corner[4], const FpBox *box, const FpPlaced *other)
{
  guint n;
  const FpSolid *solid = fp_scene_solids (self->scene, &n);
  const double overhead = 2000; /* mm, design judgement */

  for (guint i = other->first_solid; i < other->first_solid + other->n_solids; i++)
    {
      const FpBox3 own = fp_solid_box (&solid[i]);
      const FpPoint pt[4] = { { own.lo.x, own.lo.y }, { own.hi.x, own.lo.y }, { own.hi.x, own.hi.y }, { own.lo.x, own.hi.y } };

      if (own.lo.z < other->floor + overhead && fp_box_overlaps (box, &(FpBox) { own.lo.x, own.lo.y, own.hi.x, own.hi.y })
          && outlines_overlap (corner, 4, pt, 4))
        return TRUE;
    }
  return FALSE;
}

static gboolean
is_in_the_way (const FpRoom *self, const FpPoint corner[4], const FpBox *box, const FpPlaced *other)
{
  const guint flags = fp_item_kind (other->item)->flags;

  if ((flags & FP_KIND_HUNG) != 0)
    return FALSE;
  if ((flags & FP_KIND_CUT) != 0 && (flags & FP_KIND_SURVEY) == 0)
    return meets_low_part (self, corner, box, other);
  switch (fp_item_kind (other->item)->role)
    {
    case FP_ROLE_FLOOR:
    case FP_ROLE_GALLERY:
    case FP_ROLE_STANDING_ROOM:
    case FP_ROLE_WALL:    /* by its solids                */
    case FP_ROLE_OPENING: /* by the ways through openings */
      return FALSE;
    case FP_ROLE_ALTAR:
      return overlaps_altar (corner, other);
    default:
      return fp_box_overlaps (box, &other->plan) && overlaps_box (corner, &other->extent.plan, &other->place);
    }
}

static gboolean
runs_into_wall (const FpRoom *self, const FpPoint corner[4])
{
  const FpBox box = fp_outline_box (corner, 4);

  for (guint i = 0; i < self->bounds->len; i++)
    {
      const Bound *bound = &g_array_index (self->bounds, Bound, i);
      const FpBox plan = { bound->box.lo.x, bound->box.lo.y, bound->box.hi.x, bound->box.hi.y };
      const FpSolid *s = bound->solid;
      if (s->part == FP_PART_WALL && s->shape == FP_SOLID_PRISM && fp_box_overlaps (&box, &plan)
          && fp_outlines_common_area (corner, 4, s->outline, s->n_outline) > TOUCHING)
        return TRUE;
    }
  return FALSE;
}

/* Not across the edge of a step between two floors, nor over the end of one. */
static gboolean
stands_level (const FpRoom *self, const FpBox *plan, const FpPlace *place)
{
  FpPoint corner[4];
  gboolean found;
  const double level = fp_scene_floor_at (self->scene, (FpPoint) { place->x, place->y }, &found);

  if (!found)
    return TRUE;
  plan_corners (plan, place, -1, corner);
  for (guint i = 0; i < 4; i++)
    if (fabs (fp_scene_floor_at (self->scene, corner[i], &found) - level) > ONE_LEVEL || !found)
      return FALSE;
  return TRUE;
}

gboolean
fp_room_stands_on (const FpRoom *self, int thing, int support)
{
  for (int i = thing; i >= 0; i = self->placed[i].support)
    if (i == support)
      return TRUE;
  return FALSE;
}

static gboolean
is_on_peoples_floor (const FpRoom *self, FpPoint p)
{
  guint n;
  const FpFloor *floor = fp_scene_floors (self->scene, &n);

  for (guint i = 0; i < n; i++)
    if (is_peoples_floor (self, &floor[i]) && fp_outline_contains (floor[i].outline, floor[i].n_outline, p))
      return TRUE;
  return FALSE;
}

static gboolean
stands_among_people (const FpRoom *self, const FpBox *plan, const FpPlace *place)
{
  FpPoint corner[4];

  plan_corners (plan, place, -1, corner);
  for (guint i = 0; self->has_nave && i < 4; i++)
    if (!is_on_peoples_floor (self, corner[i]))
      return FALSE;
  return TRUE;
}

gboolean
fp_room_is_free (const FpRoom *self, const FpBox *plan, const FpPlace *place, double gap, int on, guint flags)
{
  FpPoint corner[4], bare[4];
  FpBox box;

  if ((flags & FP_ROOM_AMONG_PEOPLE) != 0 && !stands_among_people (self, plan, place))
    return FALSE;
  plan_corners (plan, place, gap, corner);
  plan_corners (plan, place, 0, bare);
  box = fp_outline_box (corner, 4);
  for (guint i = 0; i < self->n_placed; i++)
    if (!self->placed[i].ghost && (int) i != on && is_in_the_way (self, corner, &box, &self->placed[i]))
      return FALSE;
  return !blocks_way (self, corner, flags) && !runs_into_wall (self, bare)
         && (on >= 0 || (flags & FP_ROOM_ON_ANY_LEVEL) != 0 || stands_level (self, plan, place));
}

gboolean
fp_room_is_clear (const FpRoom *self, const FpBox *box, int except, guint flags)
{
  const FpPlace as_is = { 0, 0, 0 };
  FpPoint corner[4];

  plan_corners (box, &as_is, 0, corner);
  for (guint i = 0; i < self->n_placed; i++)
    if (!self->placed[i].ghost && (except < 0 || !fp_room_stands_on (self, (int) i, except))
        && is_in_the_way (self, corner, box, &self->placed[i]))
      return FALSE;
  return !blocks_way (self, corner, flags) && !runs_into_wall (self, corner);
}

gboolean
fp_room_overlaps (const FpBox *plan, const FpPlace *place, const FpPlaced *other)
{
  FpPoint corner[4];

  plan_corners (plan, place, 0, corner);
  return overlaps_box (corner, &other->extent.plan, &other->place);
}

static gboolean
lies_within (const FpBox *plan, const FpPlace *place, const FpBox *bounds)
{
  FpPoint corner[4];
  FpBox box;

  plan_corners (plan, place, 0, corner);
  box = fp_outline_box (corner, 4);
  return box.x0 >= bounds->x0 && box.y0 >= bounds->y0 && box.x1 <= bounds->x1 && box.y1 <= bounds->y1;
}

FpPlace
fp_room_nearest_free (const FpRoom *self, const FpBox *plan, FpPlace wish, const FpBox *bounds, double gap, guint flags)
{
  const double far = MAX (bounds->x1 - bounds->x0, bounds->y1 - bounds->y0);
  /* A wide hall is searched in longer strides. */
  const double stride = MAX (GRID, far / 60);

  for (int ring = 0; ring * stride <= far; ring++)
    for (int i = -ring; i <= ring; i++)
      for (int k = -ring; k <= ring; k += (i == -ring || i == ring || ring == 0) ? 1 : 2 * ring)
        {
          const FpPlace place = { wish.x + i * stride, wish.y + k * stride, wish.turn };
          if (lies_within (plan, &place, bounds) && fp_room_is_free (self, plan, &place, gap, -1, flags))
            return place;
        }
  return wish;
}

int
fp_room_footpace_under (const FpRoom *self, const FpBox *plan, const FpPlace *place)
{
  const FpPlace as_is = { 0, 0, 0 };
  const FpPlaced *footpace;
  FpPoint corner[4];
  FpBox box;

  if (self->footpace < 0)
    return -1;
  footpace = &self->placed[self->footpace];
  plan_corners (plan, place, 0, corner);
  for (guint i = 0; i < 4; i++)
    corner[i] = fp_place_unpoint (&footpace->place, corner[i]);
  box = fp_outline_box (corner, 4);
  return lies_within (&box, &as_is, &footpace->extent.bearing) ? self->footpace : -1;
}

static double
tidy (double v)
{
  return round (v * 1e6) / 1e6;
}

FpPlace
fp_place_tidy (const FpPlace *place)
{
  return (FpPlace) { tidy (place->x), tidy (place->y), tidy (place->turn) };
}
