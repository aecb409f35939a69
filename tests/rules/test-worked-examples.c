/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Published figures carried through a whole church: project, scene, measure, rule, finding. */
#include "taking.h"

#define INCH 25.4
#define WUERTTEMBERG_FOOT 286.49 /* mm, as the rulebooks have it */

/* A. J. Schulte, "Altar Steps", Catholic Encyclopedia I (1907): risers 6 in, treads 12 in, footpace 42 in before the
 * altar and 12 in beyond its ends, the footpace counted. */
static FpProject *
schulte (double count)
{
  FpProject *project = taking_church (FP_BOOKS_OLDER, FP_FACING_EAST, FP_CELEBRATION_LOW);

  church_param (&project, "steps", "count", count);
  church_param (&project, "steps", "riser", 6 * INCH);
  church_param (&project, "steps", "tread", 12 * INCH);
  church_param (&project, "steps", "front", 42 * INCH);
  church_param (&project, "steps", "ends", 12 * INCH);
  return project;
}

static const FpPlaced *
steps_of (const FpScene *scene)
{
  return church_placed (scene, "steps");
}

/* Derived from Schulte's figures: three steps rise 18 in = 457.2, and the altar's face is
 * 42 + 12 + 12 = 66 in = 1676.4 from the lowest riser.  Ends: 12 + 12 + 12 = 36 in = 914.4 beyond each end, overall
 * width 2400 + 2 × 914.4.  Five steps: 30 in = 762 and 42 + 4 × 12 = 90 in = 2286. */
static void
test_schulte (void)
{
  static const struct { double count, rise, run, beyond; } rows[]
    = { { 3, 457.2, 1676.4, 914.4 }, { 5, 762, 2286, 1524 } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (FpProject) project = schulte (rows[i].count);
      g_autoptr (FpScene) scene = fp_scene_new (project, 0);
      const FpPlaced *altar = church_placed (scene, "altar"), *steps = steps_of (scene);

      g_assert_cmpfloat_with_epsilon (altar->level - steps->level, rows[i].rise, 1e-6);
      g_assert_cmpfloat_with_epsilon (altar->plan.y0 - steps->plan.y0, rows[i].run, 1e-6);
      g_assert_cmpfloat_with_epsilon (altar->plan.x0 - steps->plan.x0, rows[i].beyond, 1e-6);
      g_assert_cmpfloat_with_epsilon (steps->plan.x1 - steps->plan.x0, 2400 + 2 * rows[i].beyond, 1e-6);
      assert_within (project, "step-and-fall:riser-code");
      assert_within (project, "step-and-fall:riser-schulte");
      assert_within (project, "step-and-fall:riser-burnett");
      assert_within (project, "step-and-fall:tread-schulte");
      assert_within (project, "older-form:footpace-schulte");
      assert_within (project, "older-form:steps-odd");
      assert_within (project, "older-form:steps-three");
      assert_within (project, "step-and-fall:footpace-ends-schulte");
    }
}

/* The same, with the edge of the floor at Württemberg's 15 ft (Regierungsblatt 1889, § 40): 4297.4
 * before the lowest step, 4297.4 + 1676.4 = 5973.8 from the altar's face. */
static void
test_wuerttemberg (void)
{
  g_autoptr (FpProject) project = schulte (3);
  double face = 15 * WUERTTEMBERG_FOOT + 66 * INCH;
  FpPlace place = { 0, face + 375, 0 };
  const ChurchThing altar = { "altar", "altar", "steps", place, NULL, 0, { { NULL, 0 } } };

  g_assert_cmpfloat_with_epsilon (face, 5973.8, 0.1);
  church_add (&project, &altar);
  g_assert_cmpfloat_with_epsilon (taking_value (project, "step-to-sanctuary-edge"), 4297.35, 1e-6);
  assert_within (project, "step-and-fall:floor-before-steps");

  {
    const ChurchThing nearer = { "altar", "altar", "steps", { 0, place.y - 1, 0 }, NULL, 0, { { NULL, 0 } } };

    church_add (&project, &nearer);
    assert_short (project, "step-and-fall:floor-before-steps");
  }
}

/* Spanish ceremonial manual (about 1900–1925), n. 279: the least altar is 1800 × 600 and 970 to 1000 high. The 3 ft 3 in
 * of P. Dearmer, The Parson's Handbook, 2nd ed. (1899), p. 57, lies within,
 * UFC's 33 in does not. */
static void
test_spanish_altar (void)
{
  static const struct { double height; gboolean within; } rows[]
    = { { 970, TRUE }, { 1000, TRUE }, { 39 * INCH, TRUE }, { 825, FALSE }, { 33 * INCH, FALSE }, { 969, FALSE } };
  g_autoptr (FpProject) project = taking_church (FP_BOOKS_OLDER, FP_FACING_EAST, FP_CELEBRATION_LOW);

  church_param (&project, "altar", "length", 1800);
  church_param (&project, "altar", "depth", 600);
  assert_within (project, "older-form:altar-length");
  assert_within (project, "older-form:altar-depth");
  assert_short (project, "older-form:high-altar-length");
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      church_param (&project, "altar", "height", rows[i].height);
      g_assert_cmpstr (fp_found_id (taking_found (project, "older-form:altar-height")), ==,
                       rows[i].within ? "within" : "short");
    }
  church_param (&project, "altar", "length", 1799);
  church_param (&project, "altar", "depth", 599);
  assert_short (project, "older-form:altar-length");
  assert_short (project, "older-form:altar-depth");
}

/* H. Hübsch, Bauwerke (1838), p. 20, in Baden feet of 300 mm: a high altar of 9 ft in a choir of 17 ft is 0.529 of it. */
static void
test_huebsch (void)
{
  g_autoptr (FpProject) project = taking_church (FP_BOOKS_OLDER, FP_FACING_EAST, FP_CELEBRATION_LOW);

  church_param (&project, "altar", "length", 2700);
  taking_wall (&project, "gospel-wall", -2550, 0, -2550, 10000);
  taking_wall (&project, "epistle-wall", 2550, 10000, 2550, 0);
  g_assert_cmpfloat_with_epsilon (taking_value (project, "mensa-share-of-sanctuary"), 0.529, 0.0005);
  assert_within (project, "older-form:altar-for-sanctuary");
  assert_within (project, "older-form:high-altar-length");
}

/* 10 pews on each side of 10 ft 6 in, 18 in a person: 140, by the IBC's bench rule (section 1004) as worked at
 * thebuildingcodeforum.com, thread 33384. */
static void
test_bench_count (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);

  church_floor (&project, "nave", (FpBox) { -6000, -20000, 6000, 0 }, 0, 0, 0, 0);
  for (int side = -1; side <= 1; side += 2)
    {
      const ChurchThing pews = { "pews", side < 0 ? "gospel" : "epistle", NULL, { side * 2500, -2000, 0 }, NULL, 0,
                                 { { "length", 126 * INCH }, { "seat-width", 18 * INCH }, { "rows", 10 },
                                   { NULL, 0 } } };

      church_survey (&project, &pews);
    }
  taking_seats (&project, 140);
  g_assert_cmpfloat (taking_value (project, "seats-share"), ==, 1);
  assert_within (project, "seating-and-ways-out:seats-wanted");
  assert_within (project, "seating-and-ways-out:seat-width");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/worked/schulte", test_schulte);
  g_test_add_func ("/worked/wuerttemberg", test_wuerttemberg);
  g_test_add_func ("/worked/spanish-altar", test_spanish_altar);
  g_test_add_func ("/worked/huebsch", test_huebsch);
  g_test_add_func ("/worked/bench-count", test_bench_count);
  return g_test_run ();
}
