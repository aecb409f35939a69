/* SPDX-License-Identifier: GPL-3.0-or-later */
/* between.c - measures between things: what lies between rail and steps, behind the altar, from wall to wall */
#include "between-private.h"

#include <math.h>

#define IN_PLAN      (1u << FP_VIEW_PLAN)
#define IN_ELEVATION (1u << FP_VIEW_ELEVATION)
#define IN_SECTION   (1u << FP_VIEW_SECTION)

/* How far a wall is looked for. */
#define REACH 60000.0

typedef FpBetweenSearch Search;

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
add_sliding (const Search *s, const FpPlaced *of, FpVec3 a, FpVec3 b, guint views, guint rank, double from, double to,
             const char *must)
{
  const FpBetween one = { .spec = { -1, a, b, views, 1, rank }, .item = g_intern_string (fp_item_id (of->item)),
                          .must = must, .slide = { from, to } };

  if (fp_vec3_length (fp_vec3_sub (b, a)) >= 1)
    g_array_append_val (s->out, one);
}

/* What typing over those changes that were added since there were @before. */
static void
note (const Search *s, guint before, FpStretchSort sort, const FpPlaced *of, const FpPlaced *other)
{
  for (guint i = before; i < s->out->len; i++)
    {
      FpBetween *one = &g_array_index (s->out, FpBetween, i);

      one->sort = sort;
      one->of = of != NULL ? g_intern_string (fp_item_id (of->item)) : NULL;
      one->other = other != NULL ? g_intern_string (fp_item_id (other->item)) : NULL;
    }
}

static void
add (const Search *s, const FpPlaced *of, FpVec3 a, FpVec3 b, guint views, guint rank, const char *must)
{
  add_sliding (s, of, a, b, views, rank, 0, 0, must);
}

/* --- looking for the nearest face ------------------------------------------- */

static gboolean
is_building (const FpSolid *solid)
{
  return solid->part == FP_PART_WALL || solid->part == FP_PART_PIER;
}

/* Distance from @from along @way (of length 1) to the solid, where that is less than @nearest. */
static double
reach_to (const FpSolid *solid, FpVec3 from, FpVec3 way, double nearest)
{
  const FpVec3 to = fp_vec3_add (from, fp_vec3_scale (way, REACH));
  double t;

  if (!fp_solid_ray (solid, from, to, &t))
    return nearest;
  return nearest <= t * REACH ? nearest : t * REACH;
}

/* A solid with the box in which it lies: most rays pass beside most boxes. */
typedef struct { const FpSolid *solid; FpBox3 box; } Boxed;

static void
add_boxed (GArray *to, const FpSolid *solid)
{
  const Boxed one = { solid, fp_solid_box (solid) };

  g_array_append_val (to, one);
}

static gboolean
passes_beside (const FpBox3 *box, FpVec3 from, FpVec3 way)
{
  return from.z > box->hi.z || from.z < box->lo.z || (way.x == 0 && (from.x < box->lo.x || from.x > box->hi.x))
         || (way.y == 0 && (from.y < box->lo.y || from.y > box->hi.y));
}

double
fp_between_reach (const FpBetweenSearch *s, FpVec3 from, FpVec3 way)
{
  double nearest = NAN;

  for (guint i = 0; i < s->building->len; i++)
    {
      const Boxed *one = &g_array_index (s->building, Boxed, i);
      if (!passes_beside (&one->box, from, way))
        nearest = reach_to (one->solid, from, way, nearest);
    }
  return nearest;
}

static void
gather_building (Search *s)
{
  s->building = g_array_new (FALSE, FALSE, sizeof (Boxed));
  for (guint i = 0; i < s->n_solids; i++)
    if (is_building (&s->solids[i]) && !s->placed[s->solids[i].owner].ghost)
      add_boxed (s->building, &s->solids[i]);
}

/* --- along the axis ------------------------------------------------------------ */

double
fp_between_rail_face (const FpPlaced *rail, gboolean towards_altar)
{
  const int top = fp_kind_param_index (fp_item_kind (rail->item), "top");
  const double half = top < 0 ? 0 : rail->form.param[top] / 2;

  return fp_placed_point (rail, (FpVec3) { 0, towards_altar ? half : -half, 0 }).y;
}

static void
add_before_altar (const Search *s)
{
  const FpPlaced *altar = s->altar, *steps = s->footpace, *rail = s->rail;
  guint before = s->out->len;

  if (rail != NULL && (steps != NULL || altar != NULL))
    {
      const FpPlaced *to = steps != NULL ? steps : altar;
      const double x = to->plan.x0, y = fp_between_rail_face (rail, TRUE);
      if (to->plan.y0 > y)
        add_sliding (s, rail, (FpVec3) { x, y, rail->level }, (FpVec3) { x, to->plan.y0, rail->level },
                     IN_PLAN | IN_SECTION, 0, MAX (rail->plan.x0, to->plan.x0), MIN (rail->plan.x1, to->plan.x1),
                     steps != NULL ? "rail to the lowest step" : "rail to the altar");
      note (s, before, FP_STRETCH_APART, rail, to);
    }
  before = s->out->len;
  if (altar != NULL && steps != NULL && altar->plan.y0 > steps->plan.y0)
    add_sliding (s, altar, (FpVec3) { altar->plan.x0, altar->plan.y0, steps->level },
                 (FpVec3) { altar->plan.x0, steps->plan.y0, steps->level }, IN_PLAN | IN_SECTION, 2, altar->plan.x0,
                 altar->plan.x1, NULL);
  note (s, before, FP_STRETCH_FRONT, steps, NULL);
}

/* The same that the rules measure. */
static void
add_behind_altar (const Search *s)
{
  const FpPlaced *altar = s->altar;
  const guint before = s->out->len;
  FpBox box;
  double room;

  if (altar == NULL || altar->place.turn != 0)
    return;
  room = fp_scene_room_behind_altar (s->scene, fp_scene_celebrated_altar (s->scene), &box);
  if (room < 10)
    return;
  box.x0 += altar->place.x;
  box.x1 += altar->place.x;
  add_sliding (s, altar, (FpVec3) { box.x0, altar->plan.y1, altar->level },
               (FpVec3) { box.x0, altar->plan.y1 + room, altar->level }, IN_PLAN | IN_SECTION, 1, box.x0, box.x1, NULL);
  note (s, before, FP_STRETCH_APART, altar, NULL);
}

/* --- from wall to wall --------------------------------------------------------- */

/* Faces that lie oblique to the ray, or end here, have no one distance. */
#define SAMPLES 24u
#define ASIDE   40.0
#define EQUAL   1.0

/* What one ray tells, at @across on the plan. */
typedef struct { double across, lo, hi; gboolean square; } Sample;

/* From @at both ways along x, or from @at along y: where the building begins; not square where a face is oblique. */
static Sample
take_sample (const Search *s, FpPoint at, double height, gboolean along_x)
{
  Sample sample = { along_x ? at.y : at.x, NAN, NAN, FALSE };
  double lo[2], hi[2];

  for (guint i = 0; i < 2; i++)
    {
      const double aside = i == 0 ? -ASIDE : ASIDE;
      const FpVec3 from = { at.x + (along_x ? 0 : aside), at.y + (along_x ? aside : 0), height };
      lo[i] = along_x ? fp_between_reach (s, from, (FpVec3) { -1, 0, 0 }) : 0;
      hi[i] = fp_between_reach (s, from, along_x ? (FpVec3) { 1, 0, 0 } : (FpVec3) { 0, 1, 0 });
    }
  sample.lo = (along_x ? at.x : at.y) - lo[0];
  sample.hi = (along_x ? at.x : at.y) + hi[0];
  sample.square = fabs (lo[1] - lo[0]) < EQUAL && fabs (hi[1] - hi[0]) < EQUAL;
  return sample;
}

static gboolean
is_same (const Sample *a, const Sample *b)
{
  return a->square && b->square && fabs (a->lo - b->lo) < EQUAL && fabs (a->hi - b->hi) < EQUAL;
}

/* The longest run of samples that agree; FALSE where no two do. */
static gboolean
longest_run (const Sample *sample, guint n, guint *first, guint *last)
{
  guint most = 0;

  for (guint i = 0; i < n; i++)
    {
      guint j = i;
      while (j + 1 < n && is_same (&sample[i], &sample[j + 1]))
        j++;
      if (j - i > most)
        {
          most = j - i;
          *first = i;
          *last = j;
        }
    }
  return most > 0;
}

/* The width of the sanctuary, where its walls lie square to it the longest. */
static void
add_width (const Search *s, const FpPlaced *about, const FpBox *within, double level)
{
  const double x = (about->plan.x0 + about->plan.x1) / 2;
  Sample sample[SAMPLES];
  guint first = 0, last = 0;

  for (guint i = 0; i < SAMPLES; i++)
    sample[i] = take_sample (s, (FpPoint) { x, within->y0 + (within->y1 - within->y0) * (i + 0.5) / SAMPLES },
                             level + FP_REACH_HEIGHT, TRUE);
  if (longest_run (sample, SAMPLES, &first, &last))
    {
      const Sample *at = &sample[first];
      add_sliding (s, about, (FpVec3) { at->lo, at->across, level }, (FpVec3) { at->hi, at->across, level },
                   IN_PLAN | IN_ELEVATION, 1, at->across, sample[last].across, "width of the sanctuary");
    }
}

gboolean
fp_between_face_ahead (const FpBetweenSearch *s, double from, double to, double y, double z, FpBox *face)
{
  Sample sample[SAMPLES];
  guint first = 0, last = 0;

  for (guint i = 0; i < SAMPLES; i++)
    sample[i] = take_sample (s, (FpPoint) { from + (to - from) * (i + 0.5) / SAMPLES, y }, z, FALSE);
  if (!longest_run (sample, SAMPLES, &first, &last))
    return FALSE;
  *face = (FpBox) { sample[first].across, sample[first].hi, sample[last].across, sample[first].hi };
  return TRUE;
}

static void
add_depth (const Search *s, const FpPlaced *rail, const FpBox *within)
{
  const double y = fp_between_rail_face (rail, TRUE);
  FpBox face;

  if (fp_between_face_ahead (s, within->x0, within->x1, y, rail->level + FP_REACH_HEIGHT, &face))
    add_sliding (s, rail, (FpVec3) { face.x0, y, rail->level }, (FpVec3) { face.x0, face.y0, rail->level },
                 IN_PLAN | IN_SECTION, 2, face.x0, face.x1, NULL);
}

static void
add_sanctuary (const Search *s)
{
  const FpPlaced *about = s->footpace != NULL ? s->footpace : s->altar;
  guint before = s->out->len;
  const FpBox3 sanctuary = fp_scene_sanctuary (s->scene);
  const FpBox within = { sanctuary.lo.x, sanctuary.lo.y, sanctuary.hi.x, sanctuary.hi.y };

  if (about == NULL)
    return;
  add_width (s, about, &within, about->level);
  fp_between_see_width (s, before, about);
  note (s, before, FP_STRETCH_WALLS, NULL, NULL);
  before = s->out->len;
  if (s->rail == NULL)
    return;
  add_depth (s, s->rail, &within);
  fp_between_see_depth (s, before);
  note (s, before, FP_STRETCH_APART, s->rail, NULL);
}

/* --- the whole building ---------------------------------------------------------- */

/* How far a corner lies out: the farthest counts, and of equals the one nearest to where the dimension will stand. */
static gboolean
lies_farther (double out, double aside, double best_out, double best_aside)
{
  return out > best_out + EQUAL || (out > best_out - EQUAL && aside > best_aside);
}

/* The outermost corner of the walls; @way: 1 or -1 along the axis. */
static FpVec3
outermost (const Search *s, gboolean along_x, double way)
{
  FpVec3 best = { 0, 0, 0 };
  double best_out = -G_MAXDOUBLE, best_aside = -G_MAXDOUBLE;

  for (guint i = 0; i < s->building->len; i++)
    {
      const FpSolid *solid = g_array_index (s->building, Boxed, i).solid;
      for (guint k = 0; k < solid->n_outline; k++)
        {
          const FpPoint p = solid->outline[k];
          const double out = way * (along_x ? p.x : p.y), aside = -(along_x ? p.y : p.x);
          if (!lies_farther (out, aside, best_out, best_aside))
            continue;
          best_out = out;
          best_aside = aside;
          best = (FpVec3) { p.x, p.y, solid->z0 };
        }
    }
  return best;
}

static void
add_overall (const Search *s)
{
  const FpPlaced *wall = of_role (s, FP_ROLE_WALL);

  for (int along_x = 0; along_x < 2 && wall != NULL; along_x++)
    {
      const FpBetween one = {
        .spec = { -1, outermost (s, along_x, -1), outermost (s, along_x, 1), IN_PLAN | (along_x ? IN_ELEVATION : IN_SECTION),
                  1, 0 },
        .item = g_intern_string (fp_item_id (wall->item)), .overall = TRUE, .sort = FP_STRETCH_WALLS,
      };
      g_array_append_val (s->out, one);
    }
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
  guint before = s->out->len;

  if (altar == NULL)
    return;
  if (steps != NULL)
    add (s, altar, (FpVec3) { altar->plan.x0, altar->plan.y0, foot },
         (FpVec3) { altar->plan.x0, altar->plan.y0, altar->level + altar->extent.top }, IN_ELEVATION | IN_SECTION, 3,
         NULL);
  note (s, before, FP_STRETCH_TOP, altar, NULL);
  before = s->out->len;
  if (high != NULL && high != altar)
    add (s, high, (FpVec3) { high->plan.x0, high->plan.y1, foot },
         (FpVec3) { high->plan.x0, high->plan.y1, high->level + high->extent.height }, IN_ELEVATION | IN_SECTION, 1,
         "height over all");
  note (s, before, FP_STRETCH_TOP, high, NULL);
}

GArray *
fp_between_things (const FpScene *scene, const FpCut cuts[FP_N_VIEWS])
{
  Search s = { .scene = scene, .cuts = cuts };

  s.placed = fp_scene_placed (scene, &s.n_placed);
  s.solids = fp_scene_solids (scene, &s.n_solids);
  s.altar = celebrated_altar (&s);
  s.footpace = footpace_of (&s, s.altar);
  s.rail = of_role (&s, FP_ROLE_RAIL);
  s.out = g_array_new (FALSE, FALSE, sizeof (FpBetween));
  gather_building (&s);
  add_before_altar (&s);
  add_behind_altar (&s);
  add_sanctuary (&s);
  add_heights (&s);
  add_overall (&s);
  fp_between_add_whereabouts (&s);
  g_array_unref (s.building);
  return s.out;
}
