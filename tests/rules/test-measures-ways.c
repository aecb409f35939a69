/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ways and places in small churches, whose measures follow from where things were put. */
#include "taking.h"

#include <math.h>

/* A nave 12 x 20 m, a sanctuary 12 x 10 m that rises by two steps of 3 m, an altar at y = 8000 on three steps; walls about both,
 * with a west door of 2 m and a door of 900 to the sanctuary on the Epistle side at y = 5000. */
static FpProject *
walled (void)
{
  const FpPoint corner[] = { { -6000, -20000 }, { -6000, 10000 }, { 6000, 10000 }, { 6000, -20000 } };
  const ChurchThing walls = { "wall", "walls", NULL, { 0, 0, 0 }, corner, 4, { { "closed", 1 } } };
  const ChurchThing west = { "opening", "west", "walls", { 0, 0, 0 }, NULL, 0,
                             { { "side", 4 }, { "along", 6000 }, { "width", 2000 }, { "sill", 0 }, { "head", 2500 } } };
  const ChurchThing sacristy = { "opening", "sacristy", "walls", { 0, 0, 0 }, NULL, 0,
                                 { { "side", 3 }, { "along", 5000 }, { "width", 900 }, { "sill", 300 }, { "head", 2500 } } };
  FpProject *project = taking_church (FP_BOOKS_BOTH, FP_FACING_EAST, FP_CELEBRATION_SOLEMN);

  church_survey (&project, &walls);
  church_survey (&project, &west);
  church_survey (&project, &sacristy);
  return project;
}

static const FpMeasured *
only (GArray *values)
{
  g_assert_cmpuint (values->len, ==, 1);
  return &g_array_index (values, FpMeasured, 0);
}

/* Ways are found with sight. */
static void
assert_found (const FpProject *project, const char *rule, FpFound found)
{
  g_autoptr (FpFindings) findings = taking_findings (project, TRUE);

  g_assert_cmpstr (fp_found_id (taking_finding (findings, rule)->found), ==, fp_found_id (found));
}

/* Exact to the tolerance that the way tells, and never too small. */
static void
assert_way (const FpProject *project, const char *measure, double width)
{
  g_autoptr (GArray) values = taking_values (project, measure);
  const FpMeasured *one = only (values);

  g_assert_nonnull (one->way);
  g_assert_cmpfloat (one->value, ==, one->way->width);
  g_assert_cmpfloat (one->value, >=, width - 0.01);
  g_assert_cmpfloat (one->value, <=, width + one->way->tolerance + 0.01);
}

static void
block (FpProject **project, const char *id, double x, double y, double width)
{
  taking_survey (project, "pier", id, x, y, "shape", 1);
  church_param (project, id, "width", width);
}

/* --- ways ------------------------------------------------------------------------ */

static void
test_sacristy (void)
{
  g_autoptr (FpProject) project = walled ();

  g_assert_cmpfloat (taking_value (project, "way-from-sacristy"), >, 900);
  assert_found (project, "room:sacristy-way", FP_FOUND_WITHIN);
  /* Two square piers of 800, 700 apart, and walls that shut the rest of the way along. */
  taking_wall (&project, "before", 3000, 10000, 3000, 5350);
  taking_wall (&project, "after", 3000, 4650, 3000, 0);
  assert_way (project, "way-from-sacristy", 700);
  assert_found (project, "room:sacristy-way", FP_FOUND_SHORT);
}

static void
test_nave (void)
{
  g_autoptr (FpProject) project = walled ();

  g_assert_cmpfloat (taking_value (project, "way-through-nave"), >, 2000);
  taking_wall (&project, "left", -6000, -10000, -475, -10000);
  taking_wall (&project, "right", 475, -10000, 6000, -10000);
  assert_way (project, "way-through-nave", 950);
  assert_way (project, "way-of-procession", 950);
  assert_way (project, "way-on-wheels", 950);
  assert_found (project, "room:bier-way", FP_FOUND_SHORT);
  assert_found (project, "room:procession-abreast", FP_FOUND_SHORT);
  assert_found (project, "room:wheels-way", FP_FOUND_WITHIN);
  {
    g_autoptr (FpFindings) findings = taking_findings (project, TRUE);
    const FpFinding *finding = taking_finding (findings, "room:bier-way");

    g_assert_nonnull (finding->way);
    g_assert_cmpuint (finding->way->n_route, >=, 2);
    g_assert_cmpfloat_with_epsilon (finding->at.x, 0, 1);
    g_assert_nonnull (g_strrstr (finding->detail, "narrowest between"));
  }
}

/* A step across the nave is no way on wheels, nor is a door with a high sill. */
static void
test_wheels (void)
{
  g_autoptr (FpProject) project = walled ();

  /* Two metres of it are the door. */
  assert_way (project, "way-on-wheels", 2000);
  church_floor (&project, "band", (FpBox) { -6000, -11000, 6000, -10000 }, 12, 0, 0, 0);
  assert_way (project, "way-on-wheels", 2000);
  church_param (&project, "band", "level", 20);
  g_assert_cmpfloat (taking_value (project, "way-on-wheels"), ==, 0);
  assert_found (project, "room:wheels-way", FP_FOUND_SHORT);
  church_param (&project, "band", "level", 0);
  church_param (&project, "west", "sill", 100);
  g_assert_cmpfloat (taking_value (project, "way-on-wheels"), ==, 0);
}

/* Between the lowest step and a wall across the nave that stands 1400 before it. */
static void
test_turning (void)
{
  g_autoptr (FpProject) project = walled ();

  g_assert_cmpfloat (taking_value (project, "turning-circle"), >, 3000);
  assert_found (project, "room:wheels-turn", FP_FOUND_WITHIN);
  church_param (&project, "way-up", "width", 12000);
  taking_wall (&project, "front", -6000, -300 - 1400 - 600, 6000, -300 - 1400 - 600);
  g_assert_cmpfloat_with_epsilon (taking_value (project, "turning-circle"), 1400, 1);
  assert_found (project, "room:wheels-turn", FP_FOUND_SHORT);
}

static void
test_sides (void)
{
  g_autoptr (FpProject) project = walled ();

  taking_add (&project, "credence", "credence", NULL, 5000, 8000, NULL, 0);
  g_assert_cmpfloat (taking_value (project, "way-from-credence"), >, 600);
  assert_found (project, "room:credence-side", FP_FOUND_WITHIN);
  /* On the other side there is a way behind the altar, until that is shut. */
  taking_add (&project, "credence", "other", NULL, -5000, 8000, NULL, 0);
  g_assert_cmpuint (taking_count (project, "way-from-credence"), ==, 2);
  taking_wall (&project, "behind", 0, 10000, 0, 8000);
  assert_found (project, "room:credence-side", FP_FOUND_SHORT);
}

/* --- places ----------------------------------------------------------------------- */

static void
test_genuflecting (void)
{
  g_autoptr (FpProject) project = walled ();
  double whole;

  g_assert_cmpuint (taking_count (project, "genuflect-footpace"), ==, 0);
  {
    g_autoptr (FpScene) scene = fp_scene_new (project, 0);
    const FpPlaced *steps = church_placed (scene, "steps");

    whole = steps->plan.y0; /* from the edge of the sanctuary, which lies at y = 0 */
    g_assert_cmpfloat_with_epsilon (taking_value (project, "genuflect-floor"), MIN (whole, 5000), 1e-3);
    /* A block that stands 700 before the altar, and one 800 before the lowest step. */
    block (&project, "on-it", 0, church_placed (scene, "altar")->plan.y0 - 700 - 50, 100);
    block (&project, "before-it", 250, whole - 800 - 50, 100);
  }
  g_assert_cmpfloat_with_epsilon (taking_value (project, "genuflect-footpace"), 700, 1e-3);
  g_assert_cmpfloat_with_epsilon (taking_value (project, "genuflect-floor"), 800, 1e-3);
  assert_found (project, "room:footpace-free", FP_FOUND_SHORT);
  assert_found (project, "room:floor-genuflect", FP_FOUND_SHORT);
}

static void
test_in_line (void)
{
  g_autoptr (FpProject) project = walled ();

  assert_measure (project, "ministers-in-line", 3);
  assert_found (project, "room:three-in-line", FP_FOUND_WITHIN);
  g_assert_cmpfloat (taking_value (project, "behind-ministers"), >, 600);
  church_param (&project, "steps", "tread", 270);
  assert_measure (project, "ministers-in-line", 1);
  assert_found (project, "room:three-in-line", FP_FOUND_SHORT);
  church_param (&project, "steps", "count", 1);
  assert_measure (project, "ministers-in-line", 2); /* and the floor, but nothing below it */
}

static void
test_rail (void)
{
  g_autoptr (FpProject) project = walled ();

  g_assert_cmpuint (taking_count (project, "behind-communicants"), ==, 0);
  taking_add (&project, "rail", "rail", NULL, 0, -2000, "length", 4000);
  taking_wall (&project, "row", -6000, -4000, 6000, -4000);
  {
    g_autoptr (FpScene) scene = fp_scene_new (project, 0);
    g_autoptr (GArray) values = taking_values (project, "behind-communicants");
    const FpPlaced *rail = church_placed (scene, "rail"), *row = church_placed (scene, "row");

    g_assert_cmpuint (values->len, >, 2);
    for (guint i = 0; i < values->len; i++)
      g_assert_cmpfloat_with_epsilon (g_array_index (values, FpMeasured, i).value, rail->plan.y0 - row->plan.y1, 0.01);
  }
}

/* --- swings --------------------------------------------------------------------------- */

/* Leaves of 600 that turn about (-600, 2000) and (600, 2000). */
static void
test_gate (void)
{
  g_autoptr (FpProject) project = walled ();

  taking_add (&project, "rail", "rail", NULL, 0, 2000, "length", 4000);
  church_param (&project, "rail", "gate", 1200);
  assert_measure (project, "gate-swing", 0);
  block (&project, "clear", -100, 2650, 100); /* its corner lies 450 and 600 from the hinge: 750 */
  assert_measure (project, "gate-swing", 0);
  block (&project, "struck", -550, 2450, 100); /* straight before the hinge, 400 from it */
  assert_measure (project, "gate-swing", 200);
  assert_found (project, "room:gate-opens", FP_FOUND_SHORT);
}

/* Its door is 0.62 of its width of 480. */
static void
test_tabernacle (void)
{
  g_autoptr (FpProject) project = walled ();

  taking_add (&project, "tabernacle", "tabernacle", "altar", 0, 0, "width", 480);
  assert_measure (project, "tabernacle-swing", 0);
  assert_found (project, "room:tabernacle-opens", FP_FOUND_WITHIN);
  taking_add (&project, "flowers", "vase", "altar", 0, -380, "count", 1);
  {
    g_autoptr (FpScene) scene = fp_scene_new (project, 0);
    const double before = church_placed (scene, "tabernacle")->plan.y0 - church_placed (scene, "vase")->plan.y1;

    g_assert_cmpfloat (before, <, 480 * 0.62); /* it stands in the way of the door */
  }
  g_assert_cmpfloat (taking_value (project, "tabernacle-swing"), >, 5);
  assert_found (project, "room:tabernacle-opens", FP_FOUND_SHORT);
}

/* --- nothing there ---------------------------------------------------------------------- */

static void
test_nothing (void)
{
  static const char *const measures[] = {
    "way-from-sacristy", "way-round-altar", "way-from-credence", "way-from-sedilia", "way-through-nave", "way-of-procession",
    "way-on-wheels", "turning-circle", "genuflect-footpace", "genuflect-floor", "ministers-in-line", "behind-ministers",
    "behind-communicants", "gate-swing", "tabernacle-swing",
  };
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);

  for (guint i = 0; i < G_N_ELEMENTS (measures); i++)
    g_assert_cmpuint (taking_count (project, measures[i]), ==, 0);
}

/* Round an altar that stands free: 700 are left between its end and a wall, and more behind it. */
static void
test_round (void)
{
  g_autoptr (FpProject) project = walled ();

  church_param (&project, "altar", "setting", 1);
  g_assert_cmpuint (taking_count (project, "way-round-altar"), ==, 0); /* it stands against the wall */
  church_param (&project, "altar", "setting", 0);
  church_param (&project, "steps", "behind", 1000);
  church_param (&project, "steps", "sides", 2);
  {
    g_autoptr (FpScene) scene = fp_scene_new (project, 0);
    const double end = church_placed (scene, "altar")->plan.x1;

    g_assert_cmpfloat (taking_value (project, "way-round-altar"), >, 900);
    taking_wall (&project, "beside", end + 700, 10000, end + 700, 6000);
  }
  assert_way (project, "way-round-altar", 700);
  assert_found (project, "room:altar-round", FP_FOUND_SHORT);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/measures/ways/sacristy", test_sacristy);
  g_test_add_func ("/measures/ways/nave", test_nave);
  g_test_add_func ("/measures/ways/wheels", test_wheels);
  g_test_add_func ("/measures/ways/turning", test_turning);
  g_test_add_func ("/measures/ways/sides", test_sides);
  g_test_add_func ("/measures/ways/round", test_round);
  g_test_add_func ("/measures/places/genuflecting", test_genuflecting);
  g_test_add_func ("/measures/places/in-line", test_in_line);
  g_test_add_func ("/measures/places/rail", test_rail);
  g_test_add_func ("/measures/swings/gate", test_gate);
  g_test_add_func ("/measures/swings/tabernacle", test_tabernacle);
  g_test_add_func ("/measures/ways/nothing", test_nothing);
  return g_test_run ();
}
