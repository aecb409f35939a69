/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is seen from the pew, against rays through the same solids, and against the formulas of perspective. */
#include "footpace/drawing.h"
#include "footpace/store.h"

#include "church.h"
#include "pew-private.h"
#include "random-sanctuary.h"

#include <cairo.h>
#include <math.h>
#include <string.h>

#define DOTS 640.0  /* of a picture, across */
#define FAR  200000.0
#define TIE  0.5    /* mm: what lies in one plane may be painted as either's */

static FpPeople *
people_of_sample (const char *name, guint alternative)
{
  const char *folder = g_getenv ("FOOTPACE_SAMPLES");
  g_autofree char *file = g_strconcat (name, ".footpace", NULL);
  g_autofree char *path = g_build_filename (folder != NULL ? folder : "samples", file, NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) project = fp_store_load (path, &error);
  g_assert_no_error (error);
  g_autoptr (FpScene) scene = fp_scene_new (project, alternative);

  return fp_people_new (scene);
}

static FpPeople *
people_of_random (guint32 seed)
{
  g_autoptr (FpScene) scene = random_sanctuary_new (seed, FP_UNITS_METRIC);
  return fp_people_new (scene);
}

static guint
n_places (const FpPeople *people)
{
  guint n;
  fp_people_places (people, &n);
  return n;
}

/* --- hiding ------------------------------------------------------------------ */

typedef struct
{
  const FpSolids *solids;
  guint           skip; /* owner */
  FpVec3          eye;
} Rays;

/* Where the first solid is met; G_MAXDOUBLE where none is. */
static double
first_hit (const Rays *rays, FpVec3 to, guint only_owner, gboolean only, guint *owner)
{
  guint n;
  const FpSolid *s = fp_solids_peek (rays->solids, &n);
  double least = G_MAXDOUBLE, t;

  for (guint i = 0; i < n; i++)
    if (s[i].owner != rays->skip && (!only || s[i].owner == only_owner) && fp_solid_ray (&s[i], rays->eye, to, &t)
        && t * FAR < least)
      {
        least = t * FAR;
        if (owner != NULL)
          *owner = s[i].owner;
      }
  return least;
}

static guint
painted_at (const FpPewView *view, FpPoint at)
{
  const FpPewFace *face = fp_pew_view_face_at (view, at);
  return face != NULL ? face->owner : G_MAXUINT;
}

/* Whether the ray agrees with what is painted there, or with what is painted one dot aside. */
static gboolean
agrees (const FpPewView *view, const Rays *rays, FpPoint at)
{
  const FpBox box = fp_pew_view_box (view);
  const double dot = (box.x1 - box.x0) / DOTS;
  guint owner = G_MAXUINT;
  const FpVec3 to = fp_pew_view_unpoint (view, at, FAR);
  const double hit = first_hit (rays, to, 0, FALSE, &owner);

  for (int k = 0; k < 9; k++)
    {
      static const int order[9] = { 4, 0, 1, 2, 3, 5, 6, 7, 8 };
      const FpPoint near = { at.x + (order[k] % 3 - 1) * dot, at.y + (order[k] / 3 - 1) * dot };
      const guint painted = painted_at (view, near);
      if (painted == owner || (painted != G_MAXUINT && first_hit (rays, to, painted, TRUE, NULL) < hit + TIE))
        return TRUE;
    }
  return FALSE;
}

static void
check_view (const FpPeople *people, FpPewSpec spec, GRand *rand, guint dots)
{
  g_autoptr (FpPewView) view = fp_pew_view_new (people, &spec);
  g_autoptr (FpSolids) solids = fp_sight_obstacles (people, spec.moment);
  const FpBox box = fp_pew_view_box (view);
  const Rays rays = { solids, FP_SIGHT_PERSON + spec.place, fp_pew_view_eye (view) };

  for (guint i = 0; i < dots; i++)
    {
      const FpPoint at = { g_rand_double_range (rand, box.x0, box.x1), g_rand_double_range (rand, box.y0, box.y1) };
      if (agrees (view, &rays, at))
        continue;
      g_autofree char *name = fp_people_name (people, spec.place);
      guint owner = G_MAXUINT;
      first_hit (&rays, fp_pew_view_unpoint (view, at, FAR), 0, FALSE, &owner);
      g_test_message ("%s, moment %d, at %g, %g: painted %x, met %x", name, (int) spec.moment, at.x, at.y,
                      painted_at (view, at), owner);
      g_test_fail ();
    }
}

static void
test_random_hiding (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (1512);

  for (guint32 seed = 1; seed <= 20; seed++)
    {
      g_autoptr (FpPeople) people = people_of_random (seed);
      for (guint k = 0; k < 3; k++)
        check_view (people, (FpPewSpec) { .place = (guint) g_rand_int_range (rand, 0, (gint32) n_places (people)),
                                          .moment = (FpMoment) (seed % FP_N_MOMENTS),
                                          .field = g_rand_double_range (rand, 30, 100) }, rand, 150);
    }
}

static void
test_sample_hiding (gconstpointer sample)
{
  g_autoptr (FpPeople) people = people_of_sample (sample, 0);
  g_autoptr (GRand) rand = g_rand_new_with_seed (77);

  for (guint k = 0; k < 12; k++)
    check_view (people, (FpPewSpec) { .place = (guint) g_rand_int_range (rand, 0, (gint32) n_places (people)),
                                      .moment = (FpMoment) (k % FP_N_MOMENTS) }, rand, 120);
}

/* --- pieces that reach into each other --------------------------------------------- */

static void
own_last (FpSolids *solids)
{
  /* The list is the only owner, and hands out what it holds. */
  FpSolid *last = (FpSolid *) fp_solids_get (solids, fp_solids_count (solids) - 1);
  last->owner = fp_solids_count (solids) - 1;
}

/* Stars that wind and slope, stumps, ellipsoids and pieces of arch, all within each other's way. */
static FpSolids *
heap_of_solids (GRand *r)
{
  FpSolids *solids = fp_solids_new ();

  for (guint i = 0; i < 24; i++)
    {
      const double x = g_rand_double_range (r, -1500, 1500), y = g_rand_double_range (r, 1200, 4500);
      const double z = g_rand_double_range (r, -1000, 600), a = g_rand_double_range (r, -0.4, 0.4);
      const guint n = 5 + (guint) g_rand_int_range (r, 0, 5);
      FpPoint pt[10];
      for (guint k = 0; k < n; k++)
        {
          const double far = g_rand_double_range (r, 150, 700);
          pt[k] = (FpPoint) { x + far * cos (2 * G_PI * k / n), y + far * sin (2 * G_PI * k / n) };
        }
      if (i % 4 == 0)
        fp_solids_add_round (solids, FP_PART_BODY, x, y, z, z + g_rand_double_range (r, 200, 900),
                             g_rand_double_range (r, 100, 400), g_rand_double_range (r, 0, 400));
      else if (i % 4 == 1)
        fp_solids_add_ellipsoid (solids, FP_PART_BODY, (FpVec3) { x, y, z }, g_rand_double_range (r, 100, 400),
                                 g_rand_double_range (r, 100, 400), g_rand_double_range (r, 100, 400),
                                 g_rand_double_range (r, 0, 180));
      else if (i % 4 == 2)
        fp_solids_add_arching (solids, FP_PART_BODY, pt, n, z - a * x, a, 0, z + 900);
      else
        fp_solids_add_sloping (solids, FP_PART_BODY, pt, n, z, z + 900 - a * x, a, -a);
      own_last (solids);
    }
  return solids;
}

static gboolean
facet_has (const FpConvex *piece, const FpFacet *facet, FpPoint at)
{
  FpPoint pt[128];

  for (guint k = 0; k < facet->count; k++)
    pt[k] = fp_pew_project (piece->vertex[piece->loop[facet->first + k]]);
  return fp_outline_contains (pt, facet->count, at);
}

static gboolean
ellipse_has (const FpConvex *piece, FpPoint at)
{
  FpPoint c, a, b;

  fp_convex_ellipse (piece, &c, &a, &b);
  const double x = at.x - c.x, y = at.y - c.y, det = a.x * b.y - a.y * b.x;
  return hypot ((x * b.y - y * b.x) / det, (a.x * y - a.y * x) / det) < 1;
}

/* The first in the order that has the point. */
static guint
owner_in_order (const GArray *seen, const GArray *facets, FpPoint at)
{
  for (guint i = 0; i < seen->len; i++)
    {
      const FpPewSeen *one = &g_array_index (seen, FpPewSeen, i);
      if (one->piece->round && ellipse_has (one->piece, at))
        return one->piece->owner;
      for (guint k = 0; k < one->n; k++)
        if (facet_has (one->piece, &one->piece->facet[g_array_index (facets, guint, one->first + k)], at))
          return one->piece->owner;
    }
  return G_MAXUINT;
}

/* As told by rays, but at some borders: ellipsoids into which others reach are facetted. */
static void
check_heap (const FpSolids *solids, GRand *r, guint *agreed, guint *differed)
{
  const FpPewCamera camera = { { 0, 0, 0 }, { 0, 1 }, { -0.7, -0.5, 0.7, 0.5 } };
  const Rays rays = { solids, G_MAXUINT, { 0, 0, 0 } };
  g_autoptr (FpPewPool) pool = fp_pew_pool_new ();
  g_autoptr (GPtrArray) pieces = g_ptr_array_new ();
  g_autoptr (GArray) seen = g_array_new (FALSE, FALSE, sizeof (FpPewSeen));
  g_autoptr (GArray) facets = g_array_new (FALSE, FALSE, sizeof (guint));

  fp_pew_pieces (pool, &camera, solids, G_MAXUINT, pieces);
  fp_pew_order (pool, camera.picture, pieces, seen, facets);
  for (guint i = 0; i < 200; i++)
    {
      const FpPoint at = { g_rand_double_range (r, -0.7, 0.7), g_rand_double_range (r, -0.5, 0.5) };
      guint owner = G_MAXUINT;
      first_hit (&rays, (FpVec3) { at.x * FAR, FAR, at.y * FAR }, 0, FALSE, &owner);
      if (owner_in_order (seen, facets, at) == owner)
        (*agreed)++;
      else
        (*differed)++;
    }
}

static void
test_meeting (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (1720);
  guint agreed = 0, differed = 0;

  for (guint round = 0; round < 60; round++)
    {
      g_autoptr (FpSolids) solids = heap_of_solids (rand);
      check_heap (solids, rand, &agreed, &differed);
    }
  g_test_message ("%u points agree, %u differ", agreed, differed);
  g_assert_cmpuint (agreed + differed, ==, 12000);
  g_assert_cmpuint (differed, <, 60);
}

/* What a person is told to see is the altar, not the back of his own head, nor who sits behind him. */
static void
test_nobody_behind (void)
{
  g_autoptr (FpPeople) people = people_of_sample ("parish", 0);
  g_autoptr (FpPewView) view = fp_pew_view_new (people, &(FpPewSpec) { .place = 30 });
  guint n;
  const FpPewFace *face = fp_pew_view_faces (view, &n);

  g_assert_cmpuint (n, >, 100);
  for (guint i = 0; i < n; i++)
    g_assert_cmpuint (face[i].owner, !=, FP_SIGHT_PERSON + 30);
}

/* --- perspective ---------------------------------------------------------------- */

/* x = d X / Y with the picture plane at d = 1: by the angle under which a point is seen to the side of the middle of the
 * mensa, and by that over the horizon. */
static void
test_formula (void)
{
  g_autoptr (FpPeople) people = people_of_sample ("parish", 0);
  g_autoptr (GRand) rand = g_rand_new_with_seed (3);
  FpVec3 target[FP_SIGHT_RAYS], middle = { 0, 0, 0 };

  g_assert_cmpuint (fp_sight_points (fp_people_scene (people), FP_FOCUS_MENSA, target), ==, FP_SIGHT_RAYS);
  for (guint i = 0; i < FP_SIGHT_RAYS; i++)
    middle = fp_vec3_add (middle, fp_vec3_scale (target[i], 1.0 / FP_SIGHT_RAYS));
  for (guint place = 0; place < n_places (people); place += 29)
    {
      g_autoptr (FpPewView) view = fp_pew_view_new (people, &(FpPewSpec) { .place = place });
      const FpVec3 eye = fp_people_eye (people, place, FP_POSTURE_SITTING);
      const double ahead = atan2 (middle.y - eye.y, middle.x - eye.x);
      for (guint i = 0; i < 20; i++)
        {
          const double side = g_rand_double_range (rand, -1, 1), d = g_rand_double_range (rand, 100, 30000);
          const double z = g_rand_double_range (rand, -2000, 9000);
          const FpVec3 p = { eye.x + d * cos (ahead - side), eye.y + d * sin (ahead - side), eye.z + z };
          FpPoint at;
          g_assert_true (fp_pew_view_point (view, p, &at));
          g_assert_cmpfloat_with_epsilon (at.x, tan (side), 1e-9);
          g_assert_cmpfloat_with_epsilon (at.y, z / (d * cos (side)), 1e-9);
          const FpVec3 back = fp_pew_view_unpoint (view, at, d * cos (side));
          g_assert_cmpfloat (fp_vec3_length (fp_vec3_sub (back, p)), <, 1e-6);
        }
      g_assert_false (fp_pew_view_point (view, (FpVec3) { eye.x - cos (ahead), eye.y - sin (ahead), 0 },
                                         &(FpPoint) { 0, 0 }));
    }
}

/* --- ellipsoids ------------------------------------------------------------------- */

/* Of very many points on an ellipsoid none falls outside the ellipse, and on every side some fall on its line. */
static void
test_ellipse (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (11);
  g_autoptr (FpPewPool) pool = fp_pew_pool_new ();

  for (guint round = 0; round < 30; round++)
    {
      const double turn = g_rand_double_range (rand, 0, G_PI), a = g_rand_double_range (rand, 50, 400);
      const double b = g_rand_double_range (rand, 50, 400), c = g_rand_double_range (rand, 50, 400);
      const FpVec3 axis[3] = { { a * cos (turn), a * sin (turn), 0 }, { -b * sin (turn), b * cos (turn), 0 }, { 0, 0, c } };
      const FpVec3 centre = { g_rand_double_range (rand, -1500, 1500), g_rand_double_range (rand, 500, 3000),
                              g_rand_double_range (rand, -900, 900) };
      FpConvex *piece = fp_convex_ellipsoid (pool, &(FpConvex) { 0 }, centre, axis);
      double most[16] = { 0 };
      FpPoint at, u, v;
      fp_convex_ellipse (piece, &at, &u, &v);
      for (guint i = 0; i <= 400; i++)
        for (guint k = 0; k < 800; k++)
          {
            const double lat = G_PI * (i / 400.0 - 0.5), lon = 2 * G_PI * k / 800;
            FpVec3 p = fp_vec3_add (centre, fp_vec3_scale (axis[0], cos (lat) * cos (lon)));
            p = fp_vec3_add (p, fp_vec3_scale (axis[1], cos (lat) * sin (lon)));
            p = fp_vec3_add (p, fp_vec3_scale (axis[2], sin (lat)));
            const double x = p.x / p.y - at.x, y = p.z / p.y - at.y, det = u.x * v.y - u.y * v.x;
            const double s = (x * v.y - y * v.x) / det, t = (u.x * y - u.y * x) / det, r = hypot (s, t);
            const guint side = (guint) ((atan2 (t, s) + G_PI) / (2 * G_PI) * 16) % 16;
            most[side] = MAX (most[side], r);
          }
      for (guint side = 0; side < 16; side++)
        {
          g_assert_cmpfloat (most[side], <, 1 + 1e-9);
          g_assert_cmpfloat (most[side], >, 1 - 1e-3);
        }
    }
}

/* --- pieces ---------------------------------------------------------------------- */

static double
volume_of (const FpConvex *piece)
{
  double volume = 0;

  for (guint i = 0; i < piece->n_facets; i++)
    {
      const FpFacet *f = &piece->facet[i];
      const FpVec3 a = piece->vertex[piece->loop[f->first]];
      for (guint k = 1; k + 1 < f->count; k++)
        volume += fp_vec3_dot (a, fp_vec3_cross (piece->vertex[piece->loop[f->first + k]],
                                                 piece->vertex[piece->loop[f->first + k + 1]])) / 6;
    }
  return volume;
}

/* A piece that is cut again and again loses nothing. */
static void
test_cutting (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (5);
  g_autoptr (FpPewPool) pool = fp_pew_pool_new ();
  FpVec3 low[7], high[7];

  for (guint i = 0; i < 7; i++)
    {
      low[i] = (FpVec3) { 900 * cos (i * G_PI / 3.5), 3000 + 900 * sin (i * G_PI / 3.5), -200 };
      high[i] = (FpVec3) { 500 * cos (i * G_PI / 3.5), 3000 + 500 * sin (i * G_PI / 3.5), 1400 };
    }
  for (guint round = 0; round < 40; round++)
    {
      g_autoptr (GPtrArray) parts = g_ptr_array_new ();
      FpConvex *whole = fp_convex_between (pool, &(FpConvex) { 0 }, low, high, 7, NULL);
      double volume = 0;
      g_ptr_array_add (parts, whole);
      for (guint k = 0; k < 4; k++)
        {
          FpVec3 n = { g_rand_double_range (rand, -1, 1), g_rand_double_range (rand, -1, 1),
                       g_rand_double_range (rand, -1, 1) };
          n = fp_vec3_scale (n, 1 / fp_vec3_length (n));
          const double d = fp_vec3_dot (n, (FpVec3) { 0, 3000, 500 }) + g_rand_double_range (rand, -300, 300);
          for (guint i = parts->len; i-- > 0;)
            {
              const FpConvex *was = parts->pdata[i];
              FpConvex *within = fp_convex_cut (pool, was, n, d, TRUE);
              FpConvex *beyond = fp_convex_cut (pool, was, fp_vec3_scale (n, -1), -d, TRUE);
              g_ptr_array_remove_index (parts, i);
              if (within != NULL)
                g_ptr_array_add (parts, within);
              if (beyond != NULL)
                g_ptr_array_add (parts, beyond);
            }
        }
      for (guint i = 0; i < parts->len; i++)
        volume += volume_of (parts->pdata[i]);
      g_assert_cmpuint (parts->len, >, 3);
      g_assert_cmpfloat_with_epsilon (volume / volume_of (whole), 1, 1e-6);
    }
}

/* An outline that winds falls into convex parts that cover it once. */
static void
test_parting (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (9);

  for (guint round = 0; round < 200; round++)
    {
      g_autoptr (GArray) parts = g_array_new (FALSE, FALSE, sizeof (guint16));
      const guint n = (guint) g_rand_int_range (rand, 4, 40);
      FpPoint pt[40], part[40];
      double area = 0;
      guint k = 0;
      for (guint i = 0; i < n; i++)
        {
          const double r = g_rand_double_range (rand, 300, 3000), a = 2 * G_PI * i / n;
          pt[i] = (FpPoint) { r * cos (a), r * sin (a) };
        }
      fp_outline_part (pt, n, parts);
      for (guint i = 0; i < parts->len; i++)
        {
          const guint16 corner = g_array_index (parts, guint16, i);
          if (corner != G_MAXUINT16)
            {
              part[k++] = pt[corner];
              continue;
            }
          g_assert_true (fp_outline_is_convex (part, k));
          g_assert_cmpfloat (fp_outline_area (part, k), >, 0);
          area += fp_outline_area (part, k);
          k = 0;
        }
      g_assert_cmpfloat_with_epsilon (area / fp_outline_area (pt, n), 1, 1e-9);
    }
}

/* --- how much is seen --------------------------------------------------------------- */

/* How many steps of this size the points reach from the first one, that included. */
static double
fields_along (const FpVec3 *p, FpVec3 step)
{
  double most = 0;

  for (guint i = 0; i < FP_SIGHT_RAYS; i++)
    most = MAX (most, fp_vec3_dot (fp_vec3_sub (p[i], p[0]), step) / fp_vec3_dot (step, step));
  return most + 1;
}

/* The rectangle of which fp_sight_points() are the middles of 64 equal fields, in blocks of four by two. */
static void
find_rectangle (const FpVec3 *p, FpVec3 *origin, FpVec3 *u, FpVec3 *v)
{
  const FpVec3 du = fp_vec3_sub (p[1], p[0]), dv = fp_vec3_sub (p[4], p[0]);

  *u = fp_vec3_scale (du, fields_along (p, du));
  *v = fp_vec3_scale (dv, fields_along (p, dv));
  *origin = fp_vec3_sub (p[0], fp_vec3_scale (fp_vec3_add (du, dv), 0.5));
}

/* The share of the rectangle on which its own thing is painted, by counting dots. */
static double
share_in_picture (const FpPewView *view, const FpVec3 *points, guint owner)
{
  FpVec3 origin, u, v;
  guint seen = 0;
  const guint n = 48;

  find_rectangle (points, &origin, &u, &v);
  for (guint i = 0; i < n * n; i++)
    {
      FpVec3 p = fp_vec3_add (origin, fp_vec3_scale (u, (i % n + 0.5) / n));
      FpPoint at;
      p = fp_vec3_add (p, fp_vec3_scale (v, ((guint) (i / n) + 0.5) / n));
      if (!fp_pew_view_point (view, p, &at))
        continue;
      const FpPewFace *face = fp_pew_view_face_at (view, at);
      seen += face != NULL && face->owner == owner && face->part != FP_PART_TRUNK && face->part != FP_PART_HEAD;
    }
  return (double) seen / (n * n);
}

static void
test_share (gconstpointer sample)
{
  g_autoptr (FpPeople) people = people_of_sample (sample, 0);
  g_autoptr (FpSight) sight = fp_sight_new (people, NULL);
  const FpScene *scene = fp_people_scene (people);
  const int owner = fp_scene_role (scene, FP_ROLE_TABERNACLE);
  FpVec3 points[FP_SIGHT_RAYS];
  double sum = 0;
  guint n = 0, partly = 0;

  g_assert_cmpint (owner, >=, 0);
  g_assert_cmpuint (fp_sight_points (scene, FP_FOCUS_TABERNACLE, points), >, 0);
  for (guint place = 0; place < n_places (people); place += 7)
    {
      const double share = fp_sight_share (sight, place, FP_MOMENT_BEFORE, FP_FOCUS_TABERNACLE);
      g_autoptr (FpPewView) view = NULL;
      if (share < 0)
        continue;
      view = fp_pew_view_new (people, &(FpPewSpec) { .place = place, .focus = FP_FOCUS_TABERNACLE });
      const double picture = share_in_picture (view, points, (guint) owner);
      if (fabs (picture - share) > 0.12)
        g_test_message ("place %u: %g in the picture, %g by rays", place, picture, share);
      g_assert_cmpfloat (fabs (picture - share), <, 0.12); /* a row of eight of the 64 points lies at the border of what is hidden */
      sum += picture - share;
      partly += share > 0 && share < 1;
      n++;
    }
  g_test_message ("%u places, of which %u see it in part; mean difference %g", n, partly, sum / n);
  g_assert_cmpuint (n, >, 10);
  g_assert_cmpfloat (fabs (sum / n), <, 0.02);
}

/* --- paint ------------------------------------------------------------------------- */

/* Far from every border a dot has the ink of the face that is uppermost there. */
static void
test_painted (void)
{
  g_autoptr (FpPeople) people = people_of_sample ("chapel", 0);
  g_autoptr (FpPewView) view = fp_pew_view_new (people, &(FpPewSpec) { .place = 20 });
  const FpBox box = fp_pew_view_box (view);
  const int wide = 640, high = 480;
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, wide, high);
  cairo_t *cr = cairo_create (image);
  guint alike = 0, differ = 0;

  fp_pew_view_paint (view, cr, (FpBox) { 0, 0, wide, high }, 0.5, FP_SURFACE_PAPER);
  cairo_destroy (cr);
  cairo_surface_flush (image);
  for (int i = 0; i < wide * high; i += 97)
    {
      const double scale = (box.x1 - box.x0) / wide;
      const FpPoint at = { box.x0 + (i % wide + 0.5) * scale, box.y1 - (i / wide + 0.5) * scale };
      const FpPewFace *face = fp_pew_view_face_at (view, at);
      guint32 dot;
      memcpy (&dot, cairo_image_surface_get_data (image) + i / wide * cairo_image_surface_get_stride (image)
                      + i % wide * 4, 4);
      if (face != NULL && face->type == FP_PEW_ELLIPSE)
        continue;
      const FpInk ink = face == NULL ? fp_pew_ground_ink (FP_SURFACE_PAPER)
                                     : fp_pew_ink (face->standing, face->tone, FP_SURFACE_PAPER);
      if (fabs (ink.r * 255 - (dot >> 16 & 255)) < 1.5 && fabs (ink.g * 255 - (dot >> 8 & 255)) < 1.5
          && fabs (ink.b * 255 - (dot & 255)) < 1.5)
        alike++;
      else
        differ++;
    }
  cairo_surface_destroy (image);
  g_test_message ("%u dots alike, %u on lines", alike, differ);
  g_assert_cmpuint (alike, >, 8 * differ);
}

/* --- paper --------------------------------------------------------------------------- */

static guint
count (const char *text, const char *what)
{
  guint n = 0;
  for (const char *at = strstr (text, what); at != NULL; at = strstr (at + 1, what))
    n++;
  return n;
}

/* What is written is what is painted: as many faces, and each line once. */
static void
test_svg (void)
{
  g_autoptr (FpPeople) people = people_of_sample ("chapel", 0);
  g_autoptr (FpPewView) view = fp_pew_view_new (people, &(FpPewSpec) { .place = 40 });
  g_autofree char *svg = fp_pew_view_to_svg (view, (FpBox) { 10, 20, 170, 140 }, 0.13, FP_SURFACE_GREY, 3);
  guint n, round = 0, flat = 0, lines = 0;
  const FpPewFace *face = fp_pew_view_faces (view, &n);

  for (guint i = 0; i < n; i++)
    {
      round += face[i].type == FP_PEW_ELLIPSE;
      flat += face[i].type == FP_PEW_POLYGON;
      lines += face[i].n_lines;
    }
  g_assert_cmpuint (count (svg, "<ellipse "), ==, round);
  g_assert_cmpuint (count (svg, "Z\" fill="), ==, flat);
  g_assert_cmpuint (count (svg, "M"), ==, flat + lines);
  g_assert_cmpuint (count (svg, "<image"), ==, 0);
  g_assert_cmpuint (count (svg, "id=\"frame-3\""), ==, 1);
  g_assert_cmpuint (count (svg, "nan"), ==, 0);
  g_assert_cmpuint (round, >, 5);
}

/* Which alternative it is, and how many see the mensa from there: counted here place by place. */
static void
assert_head_tells (const FpDrawing *page, const FpSight *sight)
{
  const FpPeople *people = fp_sight_people (sight);
  const FpScene *scene = fp_people_scene (people);
  const char *name = fp_alternative_name (fp_project_alternative (fp_scene_project (scene), fp_scene_alternative (scene)));
  guint n_places, n, half = 0, none = 0, all = 0, found = 0;
  const FpPersonPlace *place = fp_people_places (people, &n_places);

  for (guint i = 0; i < n_places; i++)
    {
      const double share = fp_sight_share (sight, i, FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA);

      if (place[i].gallery || place[i].at_rail || share < 0)
        continue;
      all++;
      half += share >= 0.5;
      none += share == 0;
    }
  g_autofree char *head = g_strdup_printf ("%s: half or more of the mensa is seen from %u of %u places, nothing of it from %u",
                                           name, half, all, none);
  const FpMark *mark = fp_drawing_marks (page, &n);
  for (guint i = 0; i < n; i++)
    found += mark[i].type == FP_MARK_TEXT && strcmp (mark[i].text, head) == 0;
  g_assert_cmpuint (found, ==, 1);
}

/* A strip for each alternative on one page where there is room; every picture lies on the paper, and none on another. */
static void
test_strips (void)
{
  FpSight *sight[3];
  const FpSheetSpec spec = { .paper = FP_PAPER_A3, .landscape = TRUE };
  FpBox frame[64];
  guint n, pictures = 0;

  for (guint i = 0; i < 3; i++)
    {
      g_autoptr (FpPeople) people = people_of_sample ("parish", i);
      sight[i] = fp_sight_new (people, NULL);
    }
  g_autoptr (GPtrArray) pages = fp_pew_strip_sheets (sight, 3, &spec);
  g_assert_cmpuint (pages->len, ==, 1);
  const FpDrawing *page = pages->pdata[0];
  const FpMark *mark = fp_drawing_marks (page, &n);
  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_PICTURE)
      {
        const FpPoint *pt = fp_drawing_points (page) + mark[i].first;
        const FpBox box = { pt[0].x, pt[0].y, pt[1].x, pt[1].y };
        g_assert_true (box.x0 > 20 && box.x1 < fp_drawing_width (page) - 10 && box.y0 > 50
                       && box.y1 < fp_drawing_height (page) - 10);
        for (guint k = 0; k < pictures; k++)
          g_assert_false (fp_box_overlaps (&box, &frame[k]));
        frame[pictures++] = box;
      }
  g_assert_cmpuint (pictures, ==, 15);
  for (guint i = 0; i < 3; i++)
    assert_head_tells (page, sight[i]);
  for (guint i = 0; i < 3; i++)
    fp_sight_unref (sight[i]);
}

/* In front is nearer than in the middle, and that than at the back; the side is farther aside. */
static void
test_places (void)
{
  g_autoptr (FpPeople) people = people_of_sample ("cathedral", 0);
  const FpPersonPlace *place = fp_people_places (people, NULL);
  FpPewSpec spec[FP_N_PEW_TYPICAL] = { 0 };
  guint found;

  for (guint i = 0; i <= FP_PEW_SIDE; i++)
    g_assert_true (fp_pew_typical_spec (people, (FpPewTypical) i, &spec[i]));
  g_assert_cmpfloat (place[spec[FP_PEW_FRONT].place].at.y, >, place[spec[FP_PEW_MIDDLE].place].at.y);
  g_assert_cmpfloat (place[spec[FP_PEW_MIDDLE].place].at.y, >, place[spec[FP_PEW_BACK].place].at.y);
  g_assert_cmpfloat (fabs (place[spec[FP_PEW_SIDE].place].at.x), >, fabs (place[spec[FP_PEW_MIDDLE].place].at.x));
  for (guint i = 0; i < n_places (people); i += 37)
    {
      const char *id = fp_item_id (fp_scene_placed (fp_people_scene (people), NULL)[place[i].owner].item);
      g_assert_true (fp_pew_place_find (people, id, place[i].row, place[i].number, &found));
      g_assert_cmpuint (found, ==, i);
    }
  g_assert_false (fp_pew_place_find (people, "nothing", 1, 1, &found));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pew-view/formula", test_formula);
  g_test_add_func ("/pew-view/ellipse", test_ellipse);
  g_test_add_func ("/pew-view/cutting", test_cutting);
  g_test_add_func ("/pew-view/parting", test_parting);
  g_test_add_func ("/pew-view/nobody-behind", test_nobody_behind);
  g_test_add_func ("/pew-view/painted", test_painted);
  g_test_add_func ("/pew-view/svg", test_svg);
  g_test_add_func ("/pew-view/strips", test_strips);
  g_test_add_func ("/pew-view/places", test_places);
  g_test_add_func ("/pew-view/hiding/meeting", test_meeting);
  g_test_add_func ("/pew-view/hiding/random", test_random_hiding);
  g_test_add_data_func ("/pew-view/hiding/chapel", "chapel", test_sample_hiding);
  g_test_add_data_func ("/pew-view/hiding/parish", "parish", test_sample_hiding);
  g_test_add_data_func ("/pew-view/hiding/fan", "fan", test_sample_hiding);
  g_test_add_data_func ("/pew-view/hiding/cathedral", "cathedral", test_sample_hiding);
  g_test_add_data_func ("/pew-view/share/chapel", "chapel", test_share);
  g_test_add_data_func ("/pew-view/share/parish", "parish", test_share);
  return g_test_run ();
}
