/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Measures of seats and floors, places for wheelchairs, flights, cloths, canopy, and what stands where it does not belong. */
#include "taking.h"

#include <math.h>

static FpProject *
church (void)
{
  return taking_church (FP_BOOKS_OLDER, FP_FACING_EAST, FP_CELEBRATION_LOW);
}

/* Rows of so many seats each, at 457.2 mm; 300 mm more than they need, so that no rounding takes one away. */
static FpProject *
with_rows (guint rows, guint seats)
{
  FpProject *project = church ();

  taking_survey (&project, "pews", "pews", 0, -4000, "length", seats * 457.2 + 300);
  church_param (&project, "pews", "seat-width", 457.2);
  church_param (&project, "pews", "rows", rows);
  return project;
}

/* 2010 ADA Standards, 221.2.1.1, its boundaries: 4 and 25 seats 1, 26 2, 51 and 150 4, 151 5, 301 and 500 6, 501 7. */
static void
test_wheelchairs (void)
{
  static const struct { guint rows, seats, wanted; } cases[] = {
    { 1, 4, 1 },   { 1, 25, 1 },   { 1, 26, 2 },   { 2, 25, 2 },   { 3, 17, 4 },  { 6, 25, 4 },
    { 1, 43, 2 },  { 10, 15, 4 },  { 10, 30, 5 },  { 7, 43, 6 },   { 20, 25, 6 }, { 21, 24, 7 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (FpProject) project = with_rows (cases[i].rows, cases[i].seats);

      g_test_message ("%u rows of %u", cases[i].rows, cases[i].seats);
      assert_measure (project, "wheelchair-lacking", cases[i].wanted);
    }
}

/* A rule of a parish's own that asks for none lacking, and not for none. */
static void
test_wheelchairs_in_words (void)
{
  static const FpNormChange change = { "access", "wheelchair-places", FALSE, NAN, 0, "We want them all." };
  const FpNorms norms = { .change = &change, .n_changes = 1 };
  g_autoptr (FpProject) plain = with_rows (10, 30), project = fp_project_with_norms (plain, &norms, NULL);
  g_autoptr (FpFindings) findings = fp_findings_of (project, 0, NULL, NULL);
  guint n, i = 0;
  const FpFinding *finding = fp_findings_get (findings, &n);

  while (i < n && !g_str_equal (finding[i].rule->id, "wheelchair-places"))
    i++;
  g_assert_cmpuint (i, <, n);
  g_assert_cmpstr (finding[i].limit, ==, "none lacking");
  g_assert_cmpstr (finding[i].measured, ==, "5 lacking: 0 of 5 for 300 seats");
}

static void
test_wheelchair_sizes (void)
{
  g_autoptr (FpProject) project = with_rows (1, 4);

  taking_survey (&project, "wheelchair-places", "one", 4000, -4000, "width", 914.4);
  taking_survey (&project, "wheelchair-places", "two", -4000, -4000, "width-beside", 800);
  church_param (&project, "two", "count", 2);
  assert_measure (project, "wheelchair-width", 914.4);
  assert_measure (project, "wheelchair-beside", 800);
  assert_measure (project, "wheelchair-lacking", 0);
  assert_within (project, "access:wheelchair-width");
  assert_short (project, "access:wheelchair-beside"); /* 33 in are 838.2 mm */
}

/* 2010 ADA Standards, 221.3 and 802.3, from memory: a seat beside each.  A chair of 508 whose middle lies 1200 from that of the
 * place is within what counts as beside it, one at 1201 is not. */
static void
test_wheelchair_companions (void)
{
  static const struct { double x; guint alone; } cases[] = { { 1199, 0 }, { 1200, 0 }, { 1201, 1 } };
  g_autoptr (FpProject) none = with_rows (1, 4);

  g_assert_cmpuint (taking_count (none, "wheelchair-alone"), ==, 0);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (FpProject) project = with_rows (1, 4);

      taking_survey (&project, "wheelchair-places", "place", -3000, -5000, NULL, 0);
      taking_survey (&project, "chairs", "chair", -3000 + cases[i].x, -5720, "seats", 1);
      church_param (&project, "chair", "rows", 1);
      assert_measure (project, "wheelchair-alone", cases[i].alone);
      if (cases[i].alone > 0)
        assert_short (project, "access:wheelchair-companion");
      else
        assert_within (project, "access:wheelchair-companion");
    }
}

/* International Building Code, 1029.12.1, from memory; by arithmetic: 14 seats 12 in, 15 12.3, 20 13.8, 46 21.6, and 22 at most. */
static void
test_long_rows (void)
{
  static const struct { guint seats; double inches; } cases[] = { { 14, 12 }, { 15, 12.3 }, { 20, 13.8 }, { 46, 21.6 }, { 60, 22 } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (FpProject) project = with_rows (2, cases[i].seats);

      church_param (&project, "pews", "spacing", 550 + 12 * 25.4);
      church_param (&project, "pews", "depth", 550);
      assert_measure (project, "row-clear-lacking", (cases[i].inches - 12) * 25.4);
    }
}

/* A nave of 12 × 20 m and a sanctuary 10 m deep; ten rows 900 mm apart and 4 m long, eight seats in each. */
static void
test_grounds (void)
{
  g_autoptr (FpProject) project = church ();

  taking_survey (&project, "pews", "pews", 0, -4000, NULL, 0);
  church_param (&project, "pews", "seat-width", 500);
  assert_measure (project, "sanctuary-of-nave", 0.5);
  assert_measure (project, "pew-area", 0.9e3 * 4e3 / 8);
  assert_measure (project, "nave-to-pews", 240e6 / (10 * 0.9e3 * 4e3));
  assert_within (project, "seating-and-ways-out:pew-area"); /* 0.45 m2, where 4.8 sq ft of Wuerttemberg are 0.394 */
  church_param (&project, "pews", "seat-width", 400);
  assert_short (project, "seating-and-ways-out:pew-area");
}

/* Straight ahead of the altar nobody turns; turned to the side everybody does. */
static void
test_turned (void)
{
  const ChurchThing aside = { "pews", "pews", NULL, { 0, -8000, 90 }, NULL, 0, { { "length", 2000 }, { NULL, 0 } } };
  g_autoptr (FpProject) project = church (), beside = church ();

  taking_survey (&project, "pews", "pews", 0, -8000, "length", 2000);
  assert_measure (project, "places-turned", 0);
  church_survey (&beside, &aside);
  assert_measure (beside, "places-turned", 1);
}

/* tan 45° is 1: from an eye as far below the top of the cross as it is before it one looks up by 45°. */
static void
test_look_up (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (GArray) values = NULL;
  g_autoptr (FpScene) scene = NULL;
  g_autoptr (FpPeople) people = NULL;
  const FpPlaced *cross;
  FpVec3 eye;
  double up;

  taking_add (&project, "crucifix", "cross", "altar", 0, 0, NULL, 0);
  taking_survey (&project, "pews", "pews", 0, -4000, "length", 500);
  church_param (&project, "pews", "rows", 1);
  scene = fp_scene_new (project, 0);
  people = fp_people_new (scene);
  cross = church_placed (scene, "cross");
  eye = fp_people_plain_eye (people, 0, FP_POSTURE_SITTING);
  up = cross->level + cross->extent.height - eye.z;
  values = taking_values (project, "look-up");
  g_assert_cmpuint (values->len, ==, 1);
  g_assert_cmpfloat_with_epsilon (tan (g_array_index (values, FpMeasured, 0).value * G_PI / 180),
                                  up / hypot (cross->place.x - eye.x, cross->place.y - eye.y), 1e-2);
}

static void
test_flights (void)
{
  g_autoptr (FpProject) project = church ();

  assert_measure (project, "floor-flight", 2);
  assert_measure (project, "short-flight-tread", 300);
  assert_short (project, "step-and-fall:floor-flight-short");
  church_param (&project, "way-up", "count", 4);
  assert_within (project, "step-and-fall:floor-flight-short");
  g_assert_cmpuint (taking_count (project, "short-flight-tread"), ==, 0);
}

/* Three steps of 152 mm that pass in front only: 456 mm to fall at the ends of a freestanding altar. */
static void
test_fall (void)
{
  g_autoptr (FpProject) project = church ();

  church_param (&project, "steps", "sides", 0);
  assert_measure (project, "footpace-fall", 3 * 152);
  assert_within (project, "step-and-fall:footpace-guard");
  church_param (&project, "steps", "count", 6);
  assert_short (project, "step-and-fall:footpace-guard"); /* 912 mm, where 30 in are 762 */
  church_param (&project, "steps", "behind", 900);
  church_param (&project, "steps", "sides", 2);
  g_assert_cmpuint (taking_count (project, "footpace-fall"), ==, 0);
}

/* A. J. Schulte, "Altar-Cloths", Catholic Encyclopedia I (1907): three, and down to the footpace. */
static void
test_cloths (void)
{
  g_autoptr (FpProject) project = church ();

  church_param (&project, "altar", "height", 990);
  taking_add (&project, "altar-cloths", "cloths", "altar", 0, 0, "clear", 60);
  assert_measure (project, "cloths", 3);
  assert_measure (project, "cloth-clear", 60);
  assert_measure (project, "cloth-drop", 930);
  g_assert_cmpint (taking_found (project, "older-form:cloth-near-footpace"), ==, FP_FOUND_WITHIN); /* Dearmer: a few inches */
  church_param (&project, "cloths", "layers", 2);
  assert_short (project, "older-form:cloths-three");
}

/* A. J. Schulte, "Altar-Canopy", Catholic Encyclopedia I (1907): it covers altar and footpace. */
static void
test_canopy (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  const FpPlaced *altar = church_placed (scene, "altar");
  const double width = altar->plan.x1 - altar->plan.x0 + 2 * 305;

  taking_add (&project, "canopy", "canopy", NULL, 0, 8000, "width", width);
  church_param (&project, "canopy", "depth", 6000);
  assert_measure (project, "canopy-short", 0);
  church_param (&project, "canopy", "width", width - 200);
  assert_measure (project, "canopy-short", 100);
  assert_short (project, "older-form:canopy-covers");
}

static void
test_ornaments (void)
{
  g_autoptr (FpProject) project = church ();

  taking_add (&project, "credence", "credence", NULL, 3000, 8000, NULL, 0);
  assert_measure (project, "ornaments-on-credence", 0);
  taking_add (&project, "flowers", "flowers", "credence", 0, 0, NULL, 0);
  assert_measure (project, "ornaments-on-credence", 1);
  assert_measure (project, "flowers-on-altar", 0);
  taking_add (&project, "flowers", "more", "altar", 0, 0, NULL, 0);
  assert_measure (project, "flowers-on-altar", 1);
}

/* A. J. Schulte, "Altar-Lamp", Catholic Encyclopedia I (1907): if more than one, an uneven number. */
static void
test_lamps (void)
{
  g_autoptr (FpProject) project = church ();

  taking_add (&project, "sanctuary-lamp", "lamp", NULL, -1000, 3000, NULL, 0);
  assert_within (project, "older-form:lamps-odd");
  taking_add (&project, "sanctuary-lamp", "other", NULL, 1000, 3000, NULL, 0);
  assert_measure (project, "lamps", 2);
  assert_short (project, "older-form:lamps-odd");
  church_param (&project, "lamp", "count", 3);
  assert_measure (project, "lamps", 4);
  assert_short (project, "older-form:lamps-odd");
}

/* H. Huebsch, Bauwerke (1838), p. 20: side altars not under 7 Baden feet; Schulte: on a step at least. */
static void
test_side_altars (void)
{
  g_autoptr (FpProject) project = church ();

  g_assert_cmpuint (taking_count (project, "side-altar-length"), ==, 0);
  taking_add (&project, "altar", "lady-altar", NULL, -4500, 6000, "length", 2100);
  assert_measure (project, "side-altar-length", 2100);
  assert_measure (project, "side-altar-steps", 0);
  assert_within (project, "older-form:side-altar-length");
  assert_short (project, "older-form:side-altar-steps");
  church_param (&project, "lady-altar", "length", 2090);
  assert_short (project, "older-form:side-altar-length");
}

static void
test_epistle_side (void)
{
  g_autoptr (FpProject) project = church (), other = church ();

  taking_add (&project, "hand-bell", "bell", "steps", 1200, 0, NULL, 0);
  assert_measure (project, "bell-epistle", 1);
  taking_add (&other, "hand-bell", "bell", "steps", -1200, 0, NULL, 0);
  assert_measure (other, "bell-epistle", 0);
  assert_short (other, "older-form:bell-side");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/more/wheelchairs", test_wheelchairs);
  g_test_add_func ("/more/wheelchairs-in-words", test_wheelchairs_in_words);
  g_test_add_func ("/more/wheelchair-sizes", test_wheelchair_sizes);
  g_test_add_func ("/more/wheelchair-companions", test_wheelchair_companions);
  g_test_add_func ("/more/long-rows", test_long_rows);
  g_test_add_func ("/more/grounds", test_grounds);
  g_test_add_func ("/more/turned", test_turned);
  g_test_add_func ("/more/look-up", test_look_up);
  g_test_add_func ("/more/flights", test_flights);
  g_test_add_func ("/more/fall", test_fall);
  g_test_add_func ("/more/cloths", test_cloths);
  g_test_add_func ("/more/canopy", test_canopy);
  g_test_add_func ("/more/ornaments", test_ornaments);
  g_test_add_func ("/more/lamps", test_lamps);
  g_test_add_func ("/more/side-altars", test_side_altars);
  g_test_add_func ("/more/epistle-side", test_epistle_side);
  return g_test_run ();
}
