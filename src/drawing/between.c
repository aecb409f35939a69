/* SPDX-License-Identifier: GPL-3.0-or-later */
/* between.c - measures between things: what lies between rail and steps, behind the altar, from wall to wall */
#include "wanted.h"

#include <math.h>

#define IN_PLAN      (1u << FP_VIEW_PLAN)
#define IN_ELEVATION (1u << FP_VIEW_ELEVATION)
#define IN_SECTION   (1u << FP_VIEW_SECTION)

/* Height above the floor at which walls are measured: above rails and seats, below most sills. */
#define REACH_HEIGHT 1100.0

/* How far a wall is looked for. */
#define REACH 60000.0

typedef struct
{
  const FpScene  *scene;
  const FpPlaced *placed;
  guint           n_placed;
  const FpSolid  *solids;
  guint           n_solids;
  const FpPlaced *altar, *footpace, *rail; /* NULL: there is none */
  GArray         *out;
} Search;

static const FpPlaced *
of_role (const Search *s, FpRole role)
{
  const int i = fp_scene_role (s->scene, role);

  return i < 0 ? NULL : &s->placed[i];
}

static const FpPlaced *
celebrated_altar (const Search *s)
{
  const int i = fp_scene_celebrated_altar (s->scene);

  return i < 0 ? NULL : &s->placed[i];
}

/* The footpace on which that altar stands; of a sanctuary without an altar, any. */
static const FpPlaced *
footpace_of (const Search *s, const FpPlaced *altar)
{
  if (altar == NULL)
    return of_role (s, FP_ROLE_FOOTPACE);
  const FpPlaced *support = altar->support < 0 ? NULL : &s->placed[altar->support];

  return support != NULL && fp_item_kind (support->item)->role == FP_ROLE_FOOTPACE ? support : NULL;
}

static void
add (const Search *s, const FpPlaced *of, FpVec3 a, FpVec3 b, guint views, guint rank)
{
  const FpBetween one = { { -1, a, b, views, 1, rank }, g_intern_string (fp_item_id (of->item)) };

  if (fp_vec3_length (fp_vec3_sub (b, a)) >= 1)
    g_array_append_val (s->out, one);
}

/* --- looking for the nearest face ------------------------------------------- */

static gboolean
stands_on_altar (const Search *s, guint owner)
{
  for (int i = (int) owner; i >= 0; i = s->placed[i].support)
    if (&s->placed[i] == s->altar)
      return TRUE;
  return FALSE;
}

static gboolean
is_building (const FpSolid *solid)
{
  return solid->part == FP_PART_WALL || solid->part == FP_PART_PIER;
}

/* Distance from @from along @way (of length 1) to the first solid; NAN where nothing is met. */
static double
reach (const Search *s, FpVec3 from, FpVec3 way, gboolean building_only)
{
  const FpVec3 to = fp_vec3_add (from, fp_vec3_scale (way, REACH));
  double nearest = NAN;

  for (guint i = 0; i < s->n_solids; i++)
    {
      const FpSolid *solid = &s->solids[i];
      double t;
      if (s->placed[solid->owner].ghost || (building_only && !is_building (solid))
          || stands_on_altar (s, solid->owner) || !fp_solid_ray (solid, from, to, &t))
        continue;
      if (!(nearest <= t * REACH))
        nearest = t * REACH;
    }
  return nearest;
}

/* --- along the axis ------------------------------------------------------------ */

/* The face of the rail towards the altar; returns do not count. */
static double
rail_face (const FpPlaced *rail)
{
  const int top = fp_kind_param_index (fp_item_kind (rail->item), "top");
  const FpVec3 local = { 0, top < 0 ? 0 : rail->form.param[top] / 2, 0 };

  return fp_placed_point (rail, local).y;
}

static void
add_before_altar (const Search *s)
{
  const FpPlaced *altar = s->altar, *steps = s->footpace, *rail = s->rail;

  if (rail != NULL && (steps != NULL || altar != NULL))
    {
      const FpPlaced *to = steps != NULL ? steps : altar;
      const double x = to->plan.x0, y = rail_face (rail);
      if (to->plan.y0 > y)
        add (s, rail, (FpVec3) { x, y, rail->level }, (FpVec3) { x, to->plan.y0, rail->level },
             IN_PLAN | IN_SECTION, 0);
    }
  if (altar != NULL && steps != NULL && altar->plan.y0 > steps->plan.y0)
    add (s, altar, (FpVec3) { altar->plan.x0, altar->plan.y0, steps->level },
         (FpVec3) { altar->plan.x0, steps->plan.y0, steps->level }, IN_PLAN | IN_SECTION, 2);
}

static void
add_behind_altar (const Search *s)
{
  const FpPlaced *altar = s->altar;
  const double half = altar == NULL ? 0 : altar->extent.height / 2;
  FpVec3 from;
  double room;

  if (altar == NULL)
    return;
  from = (FpVec3) { (altar->plan.x0 + altar->plan.x1) / 2, altar->plan.y1 + 0.5, altar->level + half };
  room = reach (s, from, (FpVec3) { 0, 1, 0 }, FALSE) + 0.5;
  if (isnan (room) || room < 10)
    return;
  from.y = altar->plan.y1;
  from.x = altar->plan.x0;
  add (s, altar, from, (FpVec3) { from.x, from.y + room, from.z }, IN_PLAN | IN_SECTION, 1);
}

/* --- from wall to wall --------------------------------------------------------- */

static void
add_width (const Search *s, const FpPlaced *about, FpPoint at, double level)
{
  const FpVec3 from = { at.x, at.y, level + REACH_HEIGHT };
  const double left = reach (s, from, (FpVec3) { -1, 0, 0 }, TRUE);
  const double right = reach (s, from, (FpVec3) { 1, 0, 0 }, TRUE);

  if (!isnan (left) && !isnan (right))
    add (s, about, (FpVec3) { at.x - left, at.y, level }, (FpVec3) { at.x + right, at.y, level },
         IN_PLAN | IN_ELEVATION, 1);
}

static void
add_depth (const Search *s, const FpPlaced *rail, FpPoint at, double level)
{
  const FpVec3 from = { at.x, at.y, level + REACH_HEIGHT };
  const double depth = reach (s, from, (FpVec3) { 0, 1, 0 }, TRUE);

  if (!isnan (depth))
    add (s, rail, (FpVec3) { at.x, at.y, level }, (FpVec3) { at.x, at.y + depth, level }, IN_PLAN | IN_SECTION, 2);
}

static void
add_sanctuary (const Search *s)
{
  const FpPlaced *about = s->footpace != NULL ? s->footpace : s->altar;

  if (about == NULL)
    return;
  add_width (s, about, (FpPoint) { (about->plan.x0 + about->plan.x1) / 2, about->plan.y0 - 100 }, about->level);
  if (s->rail != NULL)
    add_depth (s, s->rail, (FpPoint) { (about->plan.x0 + about->plan.x1) / 2, rail_face (s->rail) }, s->rail->level);
}

/* --- heights --------------------------------------------------------------------- */

/* The furnishing about the altar that reaches highest. */
static const FpPlaced *
highest_furnishing (const Search *s)
{
  const FpPlaced *highest = NULL;

  for (guint i = 0; i < s->n_placed; i++)
    {
      const FpPlaced *p = &s->placed[i];
      if (p->ghost || (fp_item_kind (p->item)->flags & FP_KIND_SURVEY))
        continue;
      if (highest == NULL || p->level + p->extent.height > highest->level + highest->extent.height)
        highest = p;
    }
  return highest;
}

static void
add_heights (const Search *s)
{
  const FpPlaced *steps = s->footpace, *altar = s->altar, *high = highest_furnishing (s);
  const double foot = steps != NULL ? steps->level : altar != NULL ? altar->level : 0;

  if (altar == NULL)
    return;
  if (steps != NULL)
    add (s, altar, (FpVec3) { altar->plan.x0, altar->plan.y0, foot },
         (FpVec3) { altar->plan.x0, altar->plan.y0, altar->level + altar->extent.top }, IN_ELEVATION | IN_SECTION, 3);
  if (high != NULL && high != altar)
    add (s, high, (FpVec3) { high->plan.x0, high->plan.y1, foot },
         (FpVec3) { high->plan.x0, high->plan.y1, high->level + high->extent.height }, IN_ELEVATION | IN_SECTION, 1);
}

GArray *
fp_between_things (const FpScene *scene)
{
  Search s = { .scene = scene };

  s.placed = fp_scene_placed (scene, &s.n_placed);
  s.solids = fp_scene_solids (scene, &s.n_solids);
  s.altar = celebrated_altar (&s);
  s.footpace = footpace_of (&s, s.altar);
  s.rail = of_role (&s, FP_ROLE_RAIL);
  s.out = g_array_new (FALSE, FALSE, sizeof (FpBetween));
  add_before_altar (&s);
  add_behind_altar (&s);
  add_sanctuary (&s);
  add_heights (&s);
  return s.out;
}
