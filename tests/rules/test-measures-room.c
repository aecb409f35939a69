/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What runs into what: solids against GEOS (geos.osgeo.org) and closed forms, things in small churches. */
#include "solid-overlap.h"
#include "taking.h"

#include <math.h>
#include <string.h>

/* --- two solids ----------------------------------------------------------- */

static void
near_to (double found, double expected)
{
  g_assert_cmpfloat_with_epsilon (found, expected, 1e-6);
}

static double
overlap_of_two (const FpSolids *two)
{
  FpVec3 at, way;

  g_assert_cmpuint (fp_solids_count (two), ==, 2);
  return fp_solid_overlap (fp_solids_get (two, 0), fp_solids_get (two, 1), 0.1, &at, &way);
}

static double
boxes (const double b[6])
{
  g_autoptr (FpSolids) two = fp_solids_new ();

  fp_solids_add_box (two, FP_PART_BODY, 0, 0, 0, 1000, 600, 800);
  fp_solids_add_box (two, FP_PART_BODY, b[0], b[1], b[2], b[3], b[4], b[5]);
  return overlap_of_two (two);
}

/* The least way out of a box of 1000 x 600 x 800. */
static void
test_boxes (void)
{
  static const struct { double b[6], overlap; } cases[] = {
    { { 990, 100, 100, 2000, 300, 300 }, 10 },   /* along x */
    { { 200, 560, 100, 300, 900, 300 }, 40 },    /* along y */
    { { 200, 200, 770, 300, 300, 2000 }, 30 },   /* upward */
    { { 1000, 100, 100, 2000, 300, 300 }, 0 },   /* touching */
    { { 200, 200, 800, 300, 300, 900 }, 0 },     /* standing on it */
    { { 2000, 0, 0, 3000, 600, 800 }, 0 },
    { { 400, 290, 300, 410, 310, 500 }, 310 },   /* inside: out at the nearer face */
    { { -10, 300, 300, 1010, 303, 500 }, 300 },  /* a thin board right through */
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    near_to (boxes (cases[i].b), cases[i].overlap);
}

/* A square of 100 turned by 45 degrees reaches its half diagonal, 70.71, to each side. */
static void
test_turned (void)
{
  g_autoptr (FpSolids) square = fp_solids_new (), two = fp_solids_new ();
  const FpPlace turned = { 1060, 300, 45 };

  fp_solids_add_box (square, FP_PART_BODY, -50, -50, 0, 50, 50, 100);
  fp_solids_add_box (two, FP_PART_BODY, 0, 0, 0, 1000, 600, 800);
  fp_solids_append_placed (two, square, &turned, 0, 1);
  near_to (overlap_of_two (two), 50 * sqrt (2) - 60);
}

/* Their boxes share a corner; the bodies do not. */
static void
test_round (void)
{
  for (guint near = 0; near < 2; near++)
    {
      g_autoptr (FpSolids) two = fp_solids_new ();
      const double away = near ? 100 : 160, angle = G_PI / FP_OVERLAP_SIDES;

      fp_solids_add_round (two, FP_PART_STICK, 0, 0, 0, 500, 100, 100);
      fp_solids_add_round (two, FP_PART_STICK, away, away, 400, 900, 100, 0);
      if (near) /* 200 less 141.42, and as little less again as sixteen sides lie within a circle */
        {
          g_assert_cmpfloat (overlap_of_two (two), <=, 200 - 100 * sqrt (2));
          g_assert_cmpfloat (overlap_of_two (two), >=, 200 * cos (angle) - 100 * sqrt (2));
        }
      else
        g_assert_cmpfloat (overlap_of_two (two), ==, 0);
    }
}

/* A cone is met where it is wide, and passed where it is narrow. */
static void
test_cone (void)
{
  for (guint high = 0; high < 2; high++)
    {
      g_autoptr (FpSolids) two = fp_solids_new ();
      const double z = high ? 800 : 0;

      fp_solids_add_round (two, FP_PART_STICK, 0, 0, 0, 1000, 200, 0);
      fp_solids_add_box (two, FP_PART_BODY, 100, -50, z, 200, 50, z + 150);
      g_assert_cmpint (overlap_of_two (two) > 0, ==, !high);
    }
}

/* Over an arch there is room under the curve, and none beside it. */
static void
test_under_a_slope (void)
{
  const FpPoint over[] = { { 0, 0 }, { 1000, 0 }, { 1000, 300 }, { 0, 300 } };

  for (guint high = 0; high < 2; high++)
    {
      g_autoptr (FpSolids) two = fp_solids_new ();
      const double x = high ? 900 : 0;

      fp_solids_add_arching (two, FP_PART_WALL, over, 4, 1000, 1, 0, 3000); /* its foot rises from 1000 to 2000 */
      fp_solids_add_box (two, FP_PART_CROSS, x, 100, 0, x + 100, 200, 1500);
      g_assert_cmpint (overlap_of_two (two) > 0, ==, !high);
    }
}

/* --- against GEOS ---------------------------------------------------------- */

#define CORNERS_MAX 12

/* Corners about a middle at random distances: simple, and seldom convex. */
static guint
random_star (GRand *rand, gboolean convex, FpPoint *pt)
{
  const guint n = (guint) g_rand_int_range (rand, 3, CORNERS_MAX + 1);
  const double x = g_rand_double_range (rand, -300, 300), y = g_rand_double_range (rand, -300, 300);

  for (guint i = 0; i < n; i++)
    {
      const double angle = 2 * G_PI * i / n, r = convex ? 200 : g_rand_double_range (rand, 30, 350);
      pt[i] = (FpPoint) { x + r * cos (angle), y + r * sin (angle) };
    }
  return n;
}

static void
test_geos (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);
  guint met = 0, apart = 0;

  for (guint i = 0; i < 600; i++)
    {
      g_autoptr (FpSolids) two = fp_solids_new ();
      FpPoint a[CORNERS_MAX], b[CORNERS_MAX];
      const guint na = random_star (rand, i % 4 == 0, a), nb = random_star (rand, i % 2 == 0, b);
      const double common = fp_outlines_common_area (a, na, b, nb);
      double overlap;

      fp_solids_add_prism (two, FP_PART_BODY, a, na, 0, 5000);
      fp_solids_add_prism (two, FP_PART_BODY, b, nb, 0, 5000);
      overlap = overlap_of_two (two);
      if (overlap > 0)
        {
          met++;
          g_assert_cmpfloat (common, >, 0);
        }
      else
        {
          apart++;
          /* Slivers of triangles, each less than 0.1 mm deep, may be left out. */
          g_assert_cmpfloat (common, <, 0.1 * 2000);
        }
    }
  g_assert_cmpuint (met, >, 150);
  g_assert_cmpuint (apart, >, 60);
}

/* Moved out by what was found, along some way, two convex bodies lie apart; by less, along none. */
static void
test_way_out (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (11);
  guint tried = 0;

  while (tried < 20)
    {
      FpPoint a[CORNERS_MAX], b[CORNERS_MAX];
      const guint na = random_star (rand, TRUE, a), nb = random_star (rand, TRUE, b);
      g_autoptr (FpSolids) two = fp_solids_new ();
      double overlap, least = G_MAXDOUBLE;

      fp_solids_add_prism (two, FP_PART_BODY, a, na, 0, 5000);
      fp_solids_add_prism (two, FP_PART_BODY, b, nb, 0, 5000);
      overlap = overlap_of_two (two);
      if (!(overlap > 20))
        continue;
      tried++;
      for (guint way = 0; way < 180; way++)
        {
          const double angle = way * G_PI / 90, by = overlap * 1.001;
          FpPoint moved[CORNERS_MAX];
          for (guint share = 0; share < 2; share++)
            {
              for (guint i = 0; i < nb; i++)
                moved[i] = (FpPoint) { b[i].x + by * (share ? 0.98 : 1) * cos (angle),
                                       b[i].y + by * (share ? 0.98 : 1) * sin (angle) };
              const double common = fp_outlines_common_area (a, na, moved, nb);
              if (share)
                g_assert_cmpfloat (common, >, 0);
              else
                least = MIN (least, common);
            }
        }
      /* Ways are tried two degrees apart: a way that is one degree off is longer by 0.02 %. */
      g_assert_cmpfloat (least, <, 1e-6);
    }
}

/* --- things ----------------------------------------------------------------- */

static FpProject *
church (void)
{
  return taking_church (FP_BOOKS_BOTH, FP_FACING_EAST, FP_CELEBRATION_LOW);
}

#define RULE "room:things-apart"

/* A church in order: things touch, and stand on each other. */
static void
test_in_order (void)
{
  g_autoptr (FpProject) project = church ();

  taking_altar_group (&project, 6);
  taking_add (&project, "rail", "rail", NULL, 0, 405, NULL, 0);
  taking_wall (&project, "gospel-wall", -6000, 0, -6000, 10000);
  taking_add (&project, "credence", "credence", NULL, -6000 + 381, 9000, NULL, 0); /* 762 long: touching the wall */
  taking_survey (&project, "pews", "pews", 0, -2000, NULL, 0);
  assert_measure (project, "overlap", 0);
  assert_within (project, RULE);
}

/* The lowest step begins at 8000 - 375 - 1067 - 2 x 305 = 5948, 152 high. */
static void
test_into_steps (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpFindings) findings = NULL;
  const FpFinding *finding;

  /* An ambo without a platform is 700 deep. */
  taking_add (&project, "ambo", "ambo", NULL, 0, 5948 - 350 + 60, "step", 0);
  assert_measure (project, "overlap", 60);
  findings = taking_findings (project, FALSE);
  finding = taking_finding (findings, RULE);
  g_assert_cmpstr (fp_found_id (finding->found), ==, "short");
  g_assert_cmpstr (finding->measured, ==, "60 mm");
  g_assert_cmpstr (finding->detail, ==, "“Footpace and steps” and “Ambo”");
  g_assert_cmpint (finding->owner, ==, fp_scene_find (fp_findings_scene (findings), "ambo"));
  g_assert_true (finding->has_at);
  near_to (finding->at.y, 5948 + 30);
  g_assert_cmpint (finding->rule->weight, ==, FP_WEIGHT_RECOMMENDED);

  /* 4 mm are passed over. */
  taking_add (&project, "ambo", "ambo", NULL, 0, 5948 - 350 + 4, "step", 0);
  assert_measure (project, "overlap", 4);
  assert_within (project, RULE);
  taking_add (&project, "ambo", "ambo", NULL, 0, 5948 - 350 - 1, "step", 0);
  assert_measure (project, "overlap", 0);
}

/* Walls and piers; but not a pier in a wall, which is how the church is. */
static void
test_into_building (void)
{
  g_autoptr (FpProject) project = church ();

  taking_wall (&project, "epistle-wall", 6000, 10000, 6000, 0);
  taking_survey (&project, "pier", "pier", 6100, 5000, NULL, 0);
  assert_measure (project, "overlap", 0);
  taking_add (&project, "credence", "credence", NULL, 6000 - 381 + 25, 2000, NULL, 0);
  assert_measure (project, "overlap", 25);
  taking_add (&project, "credence", "credence", NULL, 3000, 2000, NULL, 0);
  taking_survey (&project, "pews", "pews", 0, -2000, NULL, 0);
  taking_survey (&project, "pier", "among-pews", 2000 + 290, -5000, NULL, 0); /* round, 600: 10 into their ends */
  g_assert_cmpfloat (taking_value (project, "overlap"), >, 9);
  g_assert_cmpfloat (taking_value (project, "overlap"), <=, 10);
  assert_short (project, RULE);
}

/* Six rows about the origin, turned by @turn degrees; the first reaches 6200 / 2 / 8000 = 22.2 degrees to each side. */
static void
add_sector (FpProject **project, const char *id, double turn)
{
  const double angle = turn * G_PI / 180;
  const ChurchThing block = {
    "pews", id, NULL, { 8000 * sin (angle), -8000 * cos (angle), turn }, NULL, 0,
    { { "rows", 6 }, { "radius", 8000 }, { "length", 6200 }, { "spacing", 1000 }, { NULL, 0 } },
  };

  church_survey (project, &block);
}

/* The boxes of two curved blocks overlap; the pews do not, until one is lengthened into the other. */
static void
test_curved_pews (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);

  add_sector (&project, "one", 20);
  add_sector (&project, "next", 65);
  {
    g_autoptr (FpScene) scene = fp_scene_new (project, 0);
    const FpPlaced *placed = fp_scene_placed (scene, NULL);
    g_assert_true (fp_box_overlaps (&placed[0].plan, &placed[1].plan));
  }
  assert_measure (project, "overlap", 0);
  /* 23.6 degrees: past the edge of the other by 0.8, 113 mm of the first row's front. */
  church_param (&project, "one", "length", 6600);
  g_assert_cmpfloat (taking_value (project, "overlap"), >, 20);
  g_assert_cmpfloat (taking_value (project, "overlap"), <, 120);
}

/* What was removed, and what is told to stand on another. */
static void
test_left_out (void)
{
  g_autoptr (FpProject) project = church ();

  taking_survey (&project, "chair", "old-chair", 0, 6500, NULL, 0);
  g_assert_cmpfloat (taking_value (project, "overlap"), >, 100);
  church_fate (&project, "old-chair", FP_FATE_REMOVED, NULL, NULL);
  assert_measure (project, "overlap", 0);

  /* A rail on the steps between the floors. */
  taking_add (&project, "rail", "rail", NULL, 0, -150, NULL, 0);
  assert_measure (project, "overlap", 0);
}

static void
test_several (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpFindings) findings = NULL;

  taking_add (&project, "credence", "credence", NULL, -4000, 3000, NULL, 0);
  taking_add (&project, "credence", "credence-2", NULL, -4000, 3000, NULL, 0);
  taking_add (&project, "chair", "chair", NULL, 4000, 3000, NULL, 0);
  taking_add (&project, "sedilia", "sedilia", NULL, 4000, 3000, NULL, 0);
  g_assert_cmpuint (taking_count (project, "overlap"), ==, 2);
  findings = taking_findings (project, FALSE);
  g_assert_cmpuint (taking_finding (findings, RULE)->times, ==, 2);
  g_assert_cmpstr (taking_finding (findings, RULE)->detail, ==,
                   "“Celebrant's chair” and “Sedilia”; “Credence, Gospel side” and “Credence, Gospel side”");
}

/* --- doors ------------------------------------------------------------------- */

#define DOORS "room:doors-clear"

/* In the Epistle wall of the sanctuary, whose face is at x = 6000 and whose floor is at 300: a door 1000 wide about
 * y = 5000.  The way is 900 deep on this side. */
static FpProject *
church_with_door (void)
{
  const ChurchThing door = { "opening", "door", "epistle-wall", { 0, 0, 0 }, NULL, 0,
                             { { "along", 5000 }, { "width", 1000 }, { "sill", 300 }, { "head", 2400 } } };
  FpProject *project = church ();

  taking_wall (&project, "epistle-wall", 6000, 10000, 6000, 0);
  church_survey (&project, &door);
  return project;
}

static void
test_door (void)
{
  g_autoptr (FpProject) none = church (), project = church_with_door ();
  g_autoptr (FpFindings) findings = NULL;
  const FpFinding *finding;

  g_assert_cmpuint (taking_count (none, "in-doorway"), ==, 0); /* there is no door */
  assert_measure (project, "in-doorway", 0);
  assert_within (project, DOORS);
  /* A credence is 762 long and 305 deep: beside the door, 40 before its jamb, and out of its way by 1 mm. */
  taking_add (&project, "credence", "credence", NULL, 6000 - 381, 5500 + 152.5 + 1, NULL, 0);
  assert_measure (project, "in-doorway", 0);
  taking_add (&project, "credence", "credence", NULL, 6000 - 381, 5500 + 152.5 - 40, NULL, 0);
  assert_measure (project, "in-doorway", 40);
  assert_short (project, DOORS);
  findings = taking_findings (project, FALSE);
  finding = taking_finding (findings, DOORS);
  g_assert_cmpstr (finding->measured, ==, "40 mm");
  g_assert_cmpstr (finding->detail, ==, "“Credence” and “Opening”");
  g_assert_cmpint (finding->owner, ==, fp_scene_find (fp_findings_scene (findings), "credence"));
  near_to (finding->at.y, 5500 - 20);
  /* Straight before it, 70 inside the depth of the way. */
  taking_add (&project, "credence", "credence", NULL, 6000 - 900 - 381 + 70, 5000, NULL, 0);
  assert_measure (project, "in-doorway", 70);
  taking_add (&project, "credence", "credence", NULL, 6000 - 900 - 381 - 1, 5000, NULL, 0);
  assert_measure (project, "in-doorway", 0);
  /* On the far side of the wall, which is 600 thick. */
  taking_add (&project, "credence", "credence", NULL, 6600 + 381, 5000, NULL, 0);
  g_assert_cmpfloat (taking_value (project, "in-doorway"), >, 400);
}

/* Steps are walked on, a gate opens, a wide arch is no door, a door walled up is none. */
static void
test_door_let_pass (void)
{
  g_autoptr (FpProject) project = church_with_door ();
  const ChurchThing rail = { "rail", "rail", NULL, { 5700, 5000, 90 }, NULL, 0, { { "length", 3000 } } };

  church_add (&project, &rail); /* its gate is before the door */
  assert_measure (project, "in-doorway", 0);
  church_param (&project, "rail", "gate", 0);
  g_assert_cmpfloat (taking_value (project, "in-doorway"), >, 50);
  church_param (&project, "door", "width", 3400);
  g_assert_cmpuint (taking_count (project, "in-doorway"), ==, 0);
  church_param (&project, "door", "width", 1000);
  assert_short (project, DOORS);
  church_fate (&project, "door", FP_FATE_REMOVED, NULL, NULL);
  g_assert_cmpuint (taking_count (project, "in-doorway"), ==, 0);
}

/* Blocks of four rows, 900 apart, each set 1000 behind the last of its side: every one runs into the next three, whose
 * rows come to lie 100, 200 and 300 off its own, and into none farther off.  Of 48 and 47 that are 3 n - 6 pairs a side. */
static void
test_many (void)
{
  g_autoptr (FpProject) project = church ();

  taking_altar_group (&project, 6);
  taking_wall (&project, "gospel-wall", -6000, -20000, -6000, 10000);
  for (guint i = 0; i < 95; i++)
    {
      g_autofree char *id = g_strdup_printf ("pews-%u", i);
      taking_survey (&project, "pews", id, (i % 2 ? 1 : -1) * 3000, -2000 - 500.0 * i, "rows", 4);
    }
  g_assert_cmpuint (taking_count (project, "overlap"), ==, 3 * 48 - 6 + 3 * 47 - 6);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/overlap/boxes", test_boxes);
  g_test_add_func ("/overlap/turned", test_turned);
  g_test_add_func ("/overlap/round", test_round);
  g_test_add_func ("/overlap/cone", test_cone);
  g_test_add_func ("/overlap/under-a-slope", test_under_a_slope);
  g_test_add_func ("/overlap/geos", test_geos);
  g_test_add_func ("/overlap/way-out", test_way_out);
  g_test_add_func ("/room/in-order", test_in_order);
  g_test_add_func ("/room/into-steps", test_into_steps);
  g_test_add_func ("/room/into-building", test_into_building);
  g_test_add_func ("/room/curved-pews", test_curved_pews);
  g_test_add_func ("/room/left-out", test_left_out);
  g_test_add_func ("/room/several", test_several);
  g_test_add_func ("/room/door", test_door);
  g_test_add_func ("/room/door-let-pass", test_door_let_pass);
  g_test_add_func ("/room/many", test_many);
  return g_test_run ();
}
