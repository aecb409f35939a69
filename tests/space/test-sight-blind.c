/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Parts of the floor from which something is not seen: by hand where that is one wedge, and against rays. */
#include "church.h"
#include "footpace/contour.h"
#include "footpace/sight.h"

#include <math.h>

#define NEAR 3.0 /* mm: of corners where straight edges meet */

static FpSight *
sight_of (FpProject *project)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene);

  return fp_sight_new (people, NULL);
}

/* The nave lies before the altar, whose Host is looked at past nothing so far. */
static FpProject *
altar_and_nave (double y0)
{
  FpProject *project = church_new (FP_FACING_PEOPLE);
  const ChurchThing altar = { "altar", "altar", NULL, { 0, 5000, 0 }, NULL, 0, { { NULL, 0 } } };

  church_floor (&project, "nave", (FpBox) { -6000, y0, 6000, 0 }, 0, 0, 0, 0);
  church_add (&project, &altar);
  return project;
}

static void
add_wall (FpProject **project, const char *id, FpPoint a, FpPoint b, double height)
{
  const FpPoint run[] = { a, b };
  const ChurchThing wall = {
    "wall", id, NULL, { 0, 0, 0 }, run, 2, { { "thickness", 20 }, { "height", height }, { NULL, 0 } },
  };

  church_survey (project, &wall);
}

static const FpBlindFloor *
floor_of (const FpSight *sight, FpMoment moment, FpFocus focus, guint i)
{
  const GArray *blind = fp_sight_blind (sight, moment, focus, NULL);

  g_assert_nonnull (blind);
  g_assert_cmpuint (i, <, blind->len);
  return &g_array_index (blind, FpBlindFloor, i);
}

static FpBox3
box_of_points (const FpSight *sight, FpFocus focus)
{
  FpVec3 point[FP_SIGHT_RAYS];
  FpBox3 box = FP_BOX3_EMPTY;

  g_assert_cmpuint (fp_sight_points (fp_people_scene (fp_sight_people (sight)), focus, point), ==, FP_SIGHT_RAYS);
  for (guint i = 0; i < FP_SIGHT_RAYS; i++)
    fp_box3_add_point (&box, point[i]);
  return box;
}

static void
has_corner (const FpBlindFloor *floor, double x, double y)
{
  double least = G_MAXDOUBLE;

  for (guint i = 0; i < floor->rings->len; i++)
    {
      const FpRing *ring = &g_array_index (floor->rings, FpRing, i);
      for (guint k = 0; k < ring->n; k++)
        least = MIN (least, hypot (ring->pt[k].x - x, ring->pt[k].y - y));
    }
  g_assert_cmpfloat (least, <, NEAR);
}

/* --- by hand ---------------------------------------------------------------------- */

static void
test_nothing_in_the_way (void)
{
  g_autoptr (FpProject) project = altar_and_nave (-12000);
  g_autoptr (FpSight) sight = sight_of (project);

  g_assert_cmpuint (floor_of (sight, FP_MOMENT_ELEVATION, FP_FOCUS_HOST, 0)->rings->len, ==, 0);
  g_assert_cmpfloat (fp_blind_area (fp_sight_blind (sight, FP_MOMENT_ELEVATION, FP_FOCUS_HOST, NULL), FALSE), ==, 0);
  g_assert_null (fp_sight_blind (sight, FP_MOMENT_GOSPEL, FP_FOCUS_AMBO, NULL)); /* there is none */
}

/* A slab across: from each end of it the border runs on the line from the point of the Host that is nearest to that side,
 * which is where all of it has gone behind the slab. */
static void
test_wedge (void)
{
  g_autoptr (FpProject) project = altar_and_nave (-12000);
  add_wall (&project, "pier", (FpPoint) { -500, -2000 }, (FpPoint) { 700, -2000 }, 6000);
  g_autoptr (FpSight) sight = sight_of (project);
  const FpBlindFloor *floor = floor_of (sight, FP_MOMENT_ELEVATION, FP_FOCUS_HOST, 0);
  const FpBox3 host = box_of_points (sight, FP_FOCUS_HOST);
  /* At the far face of the slab the shadow begins. */
  const double grown = (-1980 + 12000) / (host.lo.y - -1980);
  const double left = -500 + (-500 - host.lo.x) * grown, right = 700 + (700 - host.hi.x) * grown;

  g_assert_cmpfloat (host.hi.y - host.lo.y, <, 1e-9);
  g_assert_cmpuint (floor->rings->len, ==, 1);
  has_corner (floor, -500, -2000);
  has_corner (floor, 700, -2000);
  has_corner (floor, left, -12000);
  has_corner (floor, right, -12000);
  g_assert_cmpfloat_with_epsilon (floor->area / 1e6, (1.2 + (right - left) / 1000) / 2 * 10, 0.02);
}

/* A wall lower than a standing eye hides from those who sit, as far behind it as the line from the topmost point of the
 * Host over its top comes down to their eyes. */
static void
test_over_a_low_wall (void)
{
  g_autoptr (FpProject) project = altar_and_nave (-12000);
  const ChurchThing pews = { "pews", "pews", NULL, { 0, -11000, 0 }, NULL, 0, { { "rows", 1 }, { "length", 920 }, { NULL, 0 } } };
  church_survey (&project, &pews);
  add_wall (&project, "parapet", (FpPoint) { -6000, -3000 }, (FpPoint) { 6000, -3000 }, 1400);
  g_autoptr (FpSight) sight = sight_of (project);
  const FpBox3 host = box_of_points (sight, FP_FOCUS_HOST);
  const double sitting = fp_people_eye (fp_sight_people (sight), 0, FP_POSTURE_SITTING).z;
  const double behind = (1400 - sitting) * (host.lo.y + 3000) / (host.hi.z - 1400);
  const FpBlindFloor *floor = floor_of (sight, FP_MOMENT_OFFERTORY, FP_FOCUS_HOST, 0);

  g_assert_cmpfloat (behind, >, 500);
  g_assert_cmpuint (floor->rings->len, ==, 1);
  has_corner (floor, -6000, -3000);
  has_corner (floor, 6000, -3000);
  has_corner (floor, -6000, -3000 - behind);
  has_corner (floor, 6000, -3000 - behind);
  g_assert_cmpfloat_with_epsilon (floor->area / 1e6, 12 * behind / 1000, 0.05);
  /* Who stands sees over it. */
  g_assert_cmpuint (floor_of (sight, FP_MOMENT_GOSPEL, FP_FOCUS_HOST, 0)->rings->len, ==, 0);
}

/* The arm of an L-shaped room: what lies beyond the line from the Host past the inner corner. */
static void
test_l_shaped_room (void)
{
  FpProject *bare = church_new (FP_FACING_PEOPLE);
  static const FpPoint outline[] = {
    { -4000, 0 }, { 4000, 0 }, { 4000, -6000 }, { 12000, -6000 }, { 12000, -10000 }, { -4000, -10000 },
  };
  static const FpPoint inner[] = { { 4000, 0 }, { 4000, -6000 }, { 12000, -6000 } };
  const ChurchThing altar = { "altar", "altar", NULL, { 0, 2000, 0 }, NULL, 0, { { NULL, 0 } } };
  const ChurchThing nave = { "floor", "nave", NULL, { 0, 0, 0 }, outline, 6, { { NULL, 0 } } };
  const ChurchThing wall = { "wall", "wall", NULL, { 0, 0, 0 }, inner, 3, { { "thickness", 20 }, { NULL, 0 } } };
  church_survey (&bare, &nave);
  church_survey (&bare, &wall);
  church_add (&bare, &altar);
  g_autoptr (FpProject) project = bare;
  g_autoptr (FpSight) sight = sight_of (project);
  const FpBox3 host = box_of_points (sight, FP_FOCUS_HOST);
  const FpBlindFloor *floor = floor_of (sight, FP_MOMENT_COLLECT, FP_FOCUS_HOST, 0);
  /* The point farthest from the corner's side is seen past it the longest. */
  const double slope = (4000 - host.lo.x) / (host.lo.y + 6000);
  const double at_foot = 4000 + slope * 4000;

  g_assert_cmpuint (floor->rings->len, ==, 1);
  has_corner (floor, 4000, -6000);
  has_corner (floor, 12000, -6000);
  has_corner (floor, at_foot, -10000);
  has_corner (floor, 12000, -10000);
  g_assert_cmpfloat_with_epsilon (floor->area / 1e6, 8 * 4 - (at_foot - 4000) / 1000 * 4 / 2, 0.02);
}

/* Without anybody: neither who sits in front nor the celebrant is in the way. */
static void
test_people_do_not_hide (void)
{
  g_autoptr (FpProject) project = altar_and_nave (-12000);
  const ChurchThing pews = { "pews", "pews", NULL, { 0, -8000, 0 }, NULL, 0, { { "rows", 8 }, { NULL, 0 } } };
  church_survey (&project, &pews);
  g_autoptr (FpSight) sight = sight_of (project);

  g_assert_cmpfloat (fp_sight_church (sight, FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA).mean, <, 1);
  g_assert_cmpuint (floor_of (sight, FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA, 0)->rings->len, ==, 0);
}

/* --- against rays --------------------------------------------------------------------- */

static FpProject *
church_with_aisles (void)
{
  static const FpPoint gallery[] = { { -6000, -20000 }, { 6000, -20000 }, { 6000, -15000 }, { -6000, -15000 } };
  FpProject *project = altar_and_nave (-20000);
  const ChurchThing loft = { "gallery", "gallery", NULL, { 0, 0, 0 }, gallery, 4, { { NULL, 0 } } };

  for (int i = 0; i < 6; i++)
    {
      g_autofree char *id = g_strdup_printf ("pier-%d", i);
      const FpPlace at = { i % 2 == 0 ? -3400 : 3400, -3500.0 - 4700 * (i / 2), 10 * i };
      const ChurchThing pier = {
        "pier", id, NULL, at, NULL, 0, { { "shape", i % 3 }, { "width", 900 }, { NULL, 0 } },
      };
      church_survey (&project, &pier);
    }
  add_wall (&project, "confessional", (FpPoint) { 4200, -7000 }, (FpPoint) { 5600, -6100 }, 2600);
  church_survey (&project, &loft);
  return project;
}

static guint
points_seen (const FpSight *sight, const FpRayIndex *index, FpFocus focus, FpVec3 eye)
{
  FpVec3 point[FP_SIGHT_RAYS];
  guint seen = 0;

  fp_sight_points (fp_people_scene (fp_sight_people (sight)), focus, point);
  for (guint i = 0; i < FP_SIGHT_RAYS; i++)
    {
      const FpVec3 way = fp_vec3_sub (point[i], eye);
      const FpVec3 end = fp_vec3_add (eye, fp_vec3_scale (way, 1 - 2 / fp_vec3_length (way)));
      seen += fp_ray_index_blocked (index, eye, end, G_MAXUINT) < 0;
    }
  return seen;
}

static FpSolids *
fixed_solids (const FpScene *scene)
{
  FpSolids *out = fp_solids_new ();
  const FpPlace here = { 0, 0, 0 };
  guint n;
  const FpSolid *solid = fp_scene_solids (scene, &n);

  for (guint i = 0; i < n; i++)
    if (solid[i].shape == FP_SOLID_PRISM)
      {
        fp_solids_add_sloping (out, solid[i].part, solid[i].outline, solid[i].n_outline, solid[i].z0, solid[i].z1, solid[i].gx,
                               solid[i].gy);
      }
    else
      {
        g_autoptr (FpSolids) one = fp_solids_new ();
        if (solid[i].shape == FP_SOLID_ROUND)
          fp_solids_add_round (one, solid[i].part, solid[i].cx, solid[i].cy, solid[i].z0, solid[i].z1, solid[i].r0, solid[i].r1);
        else
          fp_solids_add_ellipsoid (one, solid[i].part, (FpVec3) { solid[i].cx, solid[i].cy, solid[i].cz }, solid[i].rx,
                                   solid[i].ry, solid[i].rz, solid[i].turn);
        fp_solids_append_placed (out, one, &here, 0, 0);
      }
  return out;
}

typedef struct { guint blind, seen, close; } Tally;

/* Rays tell; where neighbours 75 mm off see otherwise, the border runs, or something narrower than is looked for. */
static void
compare_floor (const FpSight *sight, FpFocus focus, const FpBlindFloor *found, double standing, GRand *rand, Tally *tally)
{
  static const FpPoint AROUND[] = { { 0, 0 }, { 75, 0 }, { -75, 0 }, { 0, 75 }, { 0, -75 } };
  const FpScene *scene = fp_people_scene (fp_sight_people (sight));
  const FpFloor *floor = &fp_scene_floors (scene, NULL)[found->floor];
  const FpBox box = fp_outline_box (floor->outline, floor->n_outline);
  g_autoptr (FpSolids) solids = fixed_solids (scene);
  g_autoptr (FpRayIndex) index = fp_ray_index_new (solids);

  for (guint i = 0; i < 1500; i++)
    {
      const FpPoint at = { g_rand_double_range (rand, box.x0, box.x1), g_rand_double_range (rand, box.y0, box.y1) };
      guint blind = 0, inside = 0;
      for (guint k = 0; k < G_N_ELEMENTS (AROUND); k++)
        {
          const FpVec3 eye = { at.x + AROUND[k].x, at.y + AROUND[k].y, floor->z + standing };
          blind += points_seen (sight, index, focus, eye) == 0;
          inside += fp_ray_index_blocked (index, eye, (FpVec3) { eye.x, eye.y, eye.z + 1 }, G_MAXUINT) >= 0;
        }
      if ((blind != 0 && blind != G_N_ELEMENTS (AROUND)) || inside > 0)
        {
          tally->close++;
          continue;
        }
      g_assert_cmpint (fp_rings_contain (found->rings, at), ==, blind != 0);
      tally->blind += blind != 0;
      tally->seen += blind == 0;
    }
}

static void
test_against_rays (void)
{
  g_autoptr (FpProject) project = church_with_aisles ();
  g_autoptr (FpSight) sight = sight_of (project);
  g_autoptr (GRand) rand = g_rand_new_with_seed (1965);
  static const FpFocus focus[] = { FP_FOCUS_HOST, FP_FOCUS_MENSA };
  const double standing = fp_body (&(FpPerson) { .percentile = 50 }, FP_POSTURE_STANDING, 0, 0).eye;
  Tally tally = { 0, 0, 0 };

  for (guint f = 0; f < G_N_ELEMENTS (focus); f++)
    {
      const GArray *blind = fp_sight_blind (sight, FP_MOMENT_GOSPEL, focus[f], NULL);
      g_assert_cmpuint (blind->len, ==, 2);
      g_assert_true (g_array_index (blind, FpBlindFloor, 1).gallery);
      for (guint i = 0; i < blind->len; i++)
        compare_floor (sight, focus[f], &g_array_index (blind, FpBlindFloor, i), standing, rand, &tally);
    }
  g_test_message ("%u blind, %u seen, %u close", tally.blind, tally.seen, tally.close);
  g_assert_cmpuint (tally.blind, >, 300);
  g_assert_cmpuint (tally.seen, >, 3000);
  g_assert_cmpuint (tally.close, <, 1200);
}

/* --- asked twice, and given up ----------------------------------------------------------- */

static void
test_asked_again (void)
{
  g_autoptr (FpProject) project = church_with_aisles ();
  g_autoptr (FpSight) sight = sight_of (project);
  g_autoptr (GCancellable) cancel = g_cancellable_new ();
  const GArray *blind;

  g_cancellable_cancel (cancel);
  g_assert_null (fp_sight_blind (sight, FP_MOMENT_GOSPEL, FP_FOCUS_HOST, cancel));
  blind = fp_sight_blind (sight, FP_MOMENT_GOSPEL, FP_FOCUS_HOST, NULL);
  g_assert_nonnull (blind);
  g_assert_true (blind == fp_sight_blind (sight, FP_MOMENT_GOSPEL, FP_FOCUS_HOST, cancel));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sight-blind/nothing-in-the-way", test_nothing_in_the_way);
  g_test_add_func ("/sight-blind/wedge", test_wedge);
  g_test_add_func ("/sight-blind/over-a-low-wall", test_over_a_low_wall);
  g_test_add_func ("/sight-blind/l-shaped-room", test_l_shaped_room);
  g_test_add_func ("/sight-blind/people-do-not-hide", test_people_do_not_hide);
  g_test_add_func ("/sight-blind/against-rays", test_against_rays);
  g_test_add_func ("/sight-blind/asked-again", test_asked_again);
  return g_test_run ();
}
