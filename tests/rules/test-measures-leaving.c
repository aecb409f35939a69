/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ways out: their number, width and distance, just inside, on and just outside of what the printed tables want.
 *
 * The tables are read from memory (International Building Code 2018; Approved Document B, volume 2, 2019), the worked numbers
 * follow from them by arithmetic and are written out. */
#include "taking.h"

#include "footpace/capacity.h"

#include <math.h>
#include <string.h>

#define INCH 25.4

/* A nave of 12 by 20 m in walls, and a sanctuary of 12 by 10 m beyond y = 0.  Side 1 of the walls is the Gospel side, 2 the
 * east, 3 the Epistle side and 4 the west wall. */
static FpProject *
church (void)
{
  static const FpPoint corners[] = { { -6000, -20000 }, { -6000, 10000 }, { 6000, 10000 }, { 6000, -20000 } };
  FpProject *project = taking_church (FP_BOOKS_BOTH, FP_FACING_EAST, FP_CELEBRATION_LOW | FP_CELEBRATION_SUNDAY);
  const ChurchThing walls = { "wall", "walls", NULL, { 0, 0, 0 }, corners, 4, { { "closed", 1 }, { "thickness", 400 }, { NULL, 0 } }, NULL };

  church_survey (&project, &walls);
  return project;
}

static void
take_law (FpProject **project, FpJurisdiction law)
{
  const FpNorms norms = { .jurisdiction = law };
  FpProject *next = fp_project_with_norms (*project, &norms, NULL);

  fp_project_unref (*project);
  *project = next;
}

/* By the rules of one book, so that nobody looks at anything for it. */
static FpFound
found (const FpProject *project, const char *rule)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (FpSight) sight = fp_sight_new (people, NULL);
  g_autoptr (GPtrArray) all = fp_rulebooks_built_in (), one = g_ptr_array_new ();
  const FpMeasuring of = { scene, people, fp_levels (people), sight };
  g_autofree char *name = g_strconcat ("seating-and-ways-out:", rule, NULL);

  for (guint i = 0; i < all->len; i++)
    if (strcmp (fp_rulebook_id (all->pdata[i]), "seating-and-ways-out") == 0)
      g_ptr_array_add (one, all->pdata[i]);
  g_autoptr (FpFindings) findings = fp_findings_new (&of, one);
  return taking_finding (findings, name)->found;
}

#define assert_is(project, rule, what) g_assert_cmpstr (fp_found_id (found (project, rule)), ==, what)

static void
add_door (FpProject **project, const char *id, double side, double along, double width)
{
  const ChurchThing door = { "opening", id, "walls", { 0, 0, 0 }, NULL, 0,
                             { { "side", side }, { "along", along }, { "width", width }, { NULL, 0 } }, NULL };

  church_survey (project, &door);
}

/* One straight bench for so many people by the printed rule, in @rows rows. */
static void
add_bench (FpProject **project, guint people, guint rows)
{
  const ChurchThing pews = { "pews", "pews", NULL, { 0, -2000, 0 }, NULL, 0,
                             { { "length", people / rows * 18 * INCH }, { "rows", rows }, { NULL, 0 } }, NULL };

  g_assert_cmpuint (people % rows, ==, 0);
  church_survey (project, &pews);
}

/* Places for wheelchairs, one person each: so that any number is reached. */
static void
add_places (FpProject **project, const char *id, guint n)
{
  taking_survey (project, "wheelchair-places", id, 0, -1500, "count", n);
}

static FpLeaving
leaving_of (const FpProject *project)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene);

  return fp_leaving (people);
}

/* --- what is a way out ------------------------------------------------------------------------ */

/* The west door and one of the nave's side are; that of the sacristy, which opens on the sanctuary, a window, and an arch are
 * not. */
static void
test_which (void)
{
  g_autoptr (FpProject) project = church ();
  FpLeaving leaving;

  add_door (&project, "west", 4, 6000, 1800);
  add_door (&project, "porch", 1, 8000, 900);
  add_door (&project, "sacristy", 3, 4000, 900);
  church_param (&project, "sacristy", "sill", 300);
  church_param (&project, "sacristy", "head", 2500);
  add_door (&project, "arch", 3, 20000, 3200);
  add_door (&project, "window", 3, 15000, 1000);
  church_param (&project, "window", "sill", 1200);
  church_param (&project, "window", "head", 3000);
  leaving = leaving_of (project);
  g_assert_cmpuint (leaving.ways, ==, 2);
  g_assert_cmpfloat_with_epsilon (leaving.clear, 2700, 1e-6);
  g_assert_cmpfloat_with_epsilon (leaving.widest, 1800, 1e-6);
  /* Middle of the west door (0, -20000), of the other (-6000, -12000). */
  g_assert_cmpfloat_with_epsilon (leaving.apart, hypot (6000, 8000), 1e-6);
  /* Corners of the nave's floor. */
  g_assert_cmpfloat_with_epsilon (leaving.diagonal, hypot (12000, 20000), 1e-6);
}

/* A door to a room that is drawn is none, until that room is gone. */
static void
test_to_another_room (void)
{
  g_autoptr (FpProject) project = church (), with = fp_project_ref (project);

  add_door (&project, "west", 4, 6000, 1800);
  g_assert_cmpuint (leaving_of (project).ways, ==, 1);
  fp_project_unref (with);
  with = fp_project_ref (project);
  church_floor (&with, "porch", (FpBox) { -3000, -24000, 3000, -20400 }, 0, 0, 0, 0);
  g_assert_cmpuint (leaving_of (with).ways, ==, 0);
}

/* By the printed rule, not as drawn: 700 mm seats hold fewer, the code counts every 18 in. */
static void
test_load (void)
{
  g_autoptr (FpProject) project = church ();

  add_bench (&project, 60, 6);
  church_param (&project, "pews", "seat-width", 700);
  add_places (&project, "places", 3);
  taking_survey (&project, "rail", "rail", 0, -800, NULL, 0);
  g_assert_cmpuint (leaving_of (project).load, ==, 63);
}

/* --- United States ------------------------------------------------------------------------------ */

static void
test_tables_us (void)
{
  static const struct { guint load, ways; } table[] = { { 1, 1 }, { 49, 1 }, { 50, 2 }, { 500, 2 }, { 501, 3 }, { 1000, 3 }, { 1001, 4 } };

  for (guint i = 0; i < G_N_ELEMENTS (table); i++)
    g_assert_cmpuint (fp_us_ways_wanted (table[i].load), ==, table[i].ways);
  /* 300 people: 300 x 0.2 in = 60 in; with sprinklers 300 x 0.15 in = 45 in. */
  g_assert_cmpfloat_with_epsilon (fp_us_width_wanted (300, FALSE), 60 * INCH, 1e-6);
  g_assert_cmpfloat_with_epsilon (fp_us_width_wanted (300, TRUE), 45 * INCH, 1e-6);
  g_assert_cmpfloat (fp_us_main_wanted (300, FALSE), ==, 0);
  g_assert_cmpfloat_with_epsilon (fp_us_main_wanted (301, FALSE), 301 * 0.1 * INCH, 1e-6);
  g_assert_cmpfloat_with_epsilon (fp_us_apart_wanted (36000, FALSE), 18000, 1e-6);
  g_assert_cmpfloat_with_epsilon (fp_us_apart_wanted (36000, TRUE), 12000, 1e-6);
}

/* 49 people leave by one door, 50 by two. */
static void
test_number_us (void)
{
  g_autoptr (FpProject) project = church (), more = NULL;

  add_door (&project, "west", 4, 6000, 1800);
  add_bench (&project, 48, 6);
  more = fp_project_ref (project);
  add_places (&project, "places", 1);
  assert_is (project, "ways-out-us", "within");
  add_places (&more, "places", 2);
  assert_measure (more, "ways-out-lacking-us", 1);
  assert_is (more, "ways-out-us", "short");
  add_door (&more, "side", 1, 8000, 900);
  assert_is (more, "ways-out-us", "within");
}

static void
widen (FpProject **project, const char *door, double mm)
{
  church_param (project, door, "width", mm);
}

/* 240 people: 48 in, 1219.2 mm, in all; 24 in, 609.6 mm, when the widest is lost. */
static void
test_width_us (void)
{
  g_autoptr (FpProject) project = church ();

  add_bench (&project, 240, 12);
  add_door (&project, "west", 4, 6000, 700);
  add_door (&project, "side", 1, 8000, 519.2);
  assert_measure (project, "ways-out-width-us", 0);
  assert_is (project, "ways-out-width-us", "within");
  widen (&project, "side", 518);
  assert_measure (project, "ways-out-width-us", 1.2);
  assert_is (project, "ways-out-width-us", "short");
  widen (&project, "side", 521);
  assert_measure (project, "ways-out-width-us", 0);

  /* Of the narrower alone. */
  assert_measure (project, "ways-out-loss-us", 609.6 - 521);
  assert_is (project, "ways-out-loss-us", "short");
  widen (&project, "side", 608);
  assert_measure (project, "ways-out-loss-us", 1.6);
  assert_is (project, "ways-out-loss-us", "short");
  widen (&project, "side", 609.6);
  assert_is (project, "ways-out-loss-us", "within");
  widen (&project, "side", 611);
  assert_is (project, "ways-out-loss-us", "within");
}

/* 360 people with sprinklers: 54 in, 1371.6 mm, in all, and half of it 685.8 mm. */
static void
test_sprinklers_us (void)
{
  g_autoptr (FpProject) project = church ();
  FpReckoning reckoning = fp_reckoning_usual;
  FpProject *wet;

  reckoning.sprinklers = TRUE;
  wet = fp_project_with_reckoning (project, &reckoning, NULL);
  fp_project_unref (project);
  project = wet;
  add_bench (&project, 360, 18);
  add_door (&project, "west", 4, 6000, 685.8);
  add_door (&project, "side", 1, 8000, 685.8);
  assert_measure (project, "ways-out-width-us", 0);
  assert_measure (project, "ways-out-loss-us", 0);
  assert_measure (project, "ways-out-main-us", 0);
  widen (&project, "side", 684);
  assert_measure (project, "ways-out-width-us", 1.8);
  assert_measure (project, "ways-out-loss-us", 1.8);
  assert_is (project, "ways-out-width-us", "short");
}

/* 300 people leave by any; of 312 half, 31.2 in or 792.48 mm, by the main door. */
static void
test_main_us (void)
{
  g_autoptr (FpProject) project = church ();

  add_door (&project, "west", 4, 6000, 790);
  add_door (&project, "side", 1, 8000, 780);
  add_bench (&project, 300, 15);
  g_assert_cmpuint (taking_count (project, "ways-out-main-us"), ==, 0);
  add_places (&project, "places", 12);
  assert_measure (project, "ways-out-main-us", 2.48);
  assert_is (project, "ways-out-main-us", "short");
  widen (&project, "west", 792.48);
  assert_is (project, "ways-out-main-us", "within");
  widen (&project, "west", 800);
  assert_is (project, "ways-out-main-us", "within");
}

/* The nave's floor is 12 by 20 m: its diagonal 23 324 mm, half of it 11 662, a third 7775.  From the west door the one in the
 * Gospel side wall at y lies sqrt (6000^2 + (y + 20000)^2) away: 11 662 mm where y + 20000 = 10 000. */
static void
test_apart_us (void)
{
  g_autoptr (FpProject) project = church ();
  const double half = hypot (12000, 20000) / 2;
  FpReckoning reckoning = fp_reckoning_usual;
  FpProject *wet;

  add_bench (&project, 120, 10);
  add_door (&project, "west", 4, 6000, 1800);
  add_door (&project, "side", 1, 10000, 1200);
  assert_measure (project, "ways-out-apart-us", 0);
  assert_is (project, "ways-out-apart-us", "within");
  church_param (&project, "side", "along", 10100);
  assert_is (project, "ways-out-apart-us", "within");
  church_param (&project, "side", "along", 9900);
  assert_measure (project, "ways-out-apart-us", half - hypot (6000, 9900));
  assert_is (project, "ways-out-apart-us", "short");

  reckoning.sprinklers = TRUE;
  wet = fp_project_with_reckoning (project, &reckoning, NULL);
  fp_project_unref (project);
  project = wet;
  assert_is (project, "ways-out-apart-us", "within");
}

/* Of each door: 32 in, 812.8 mm; printed whole millimetres may lie 0.4 away. */
static void
test_clear (void)
{
  g_autoptr (FpProject) project = church ();

  add_bench (&project, 48, 6);
  add_door (&project, "west", 4, 6000, 812.8);
  assert_is (project, "way-out-clear-us", "within");
  widen (&project, "west", 815);
  assert_is (project, "way-out-clear-us", "within");
  widen (&project, "west", 811);
  assert_is (project, "way-out-clear-us", "short");
  take_law (&project, FP_JURISDICTION_UK);
  assert_is (project, "way-out-clear-uk", "within");
  widen (&project, "west", 750);
  assert_is (project, "way-out-clear-uk", "within");
  widen (&project, "west", 748);
  assert_is (project, "way-out-clear-uk", "short");
}

/* --- United Kingdom ----------------------------------------------------------------------------- */

static guint
hold (guint n, const double *clear)
{
  g_autoptr (GArray) ways = g_array_new (FALSE, FALSE, sizeof (FpWayOut));

  for (guint i = 0; i < n; i++)
    {
      const FpWayOut way = { .opening = i, .clear = clear[i] };
      g_array_append_val (ways, way);
    }
  return fp_uk_ways_hold (ways);
}

/* The worked example of the document (from memory): three ways of 850 mm hold 3 x 110 = 330 people, not the 510 that would
 * leave by a single one of 2550 mm. */
static void
test_tables_uk (void)
{
  static const struct { double clear; guint people; } table[] = {
    { 749, 0 }, { 750, 60 }, { 849, 60 }, { 850, 110 }, { 1049, 110 }, { 1050, 220 }, { 1100, 220 }, { 1105, 221 }, { 2550, 510 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (table); i++)
    g_assert_cmpuint (fp_uk_way_holds (table[i].clear), ==, table[i].people);
  g_assert_cmpuint (3 * fp_uk_way_holds (850), ==, 330);
  /* The widest is left out; a single one is not. */
  g_assert_cmpuint (hold (4, (const double[]) { 850, 850, 850, 850 }), ==, 330);
  g_assert_cmpuint (hold (2, (const double[]) { 1800, 850 }), ==, 110);
  g_assert_cmpuint (hold (1, (const double[]) { 1050 }), ==, 220);
  g_assert_cmpuint (hold (0, NULL), ==, 0);
  g_assert_cmpuint (fp_uk_ways_wanted (60), ==, 1);
  g_assert_cmpuint (fp_uk_ways_wanted (61), ==, 2);
  g_assert_cmpuint (fp_uk_ways_wanted (600), ==, 2);
  g_assert_cmpuint (fp_uk_ways_wanted (601), ==, 3);
}

/* 110 people leave by 850 mm when the west door is lost; 111 do not, nor do 110 by 848 mm. */
static void
test_hold_uk (void)
{
  g_autoptr (FpProject) project = church (), one_more = NULL;

  take_law (&project, FP_JURISDICTION_UK);
  add_door (&project, "west", 4, 6000, 1800);
  add_door (&project, "side", 1, 8000, 850);
  add_bench (&project, 108, 9);
  one_more = fp_project_ref (project);
  add_places (&project, "places", 2);
  assert_measure (project, "ways-out-hold-uk", 0);
  assert_is (project, "ways-out-hold-uk", "within");
  assert_is (project, "ways-out-uk", "within");
  widen (&project, "side", 848);
  assert_measure (project, "ways-out-hold-uk", 50);
  assert_is (project, "ways-out-hold-uk", "short");
  add_places (&one_more, "places", 3);
  assert_measure (one_more, "ways-out-hold-uk", 1);
  assert_is (one_more, "ways-out-hold-uk", "short");
}

static void
test_number_uk (void)
{
  g_autoptr (FpProject) project = church ();

  take_law (&project, FP_JURISDICTION_UK);
  add_door (&project, "west", 4, 6000, 1800);
  add_bench (&project, 60, 6);
  assert_is (project, "ways-out-uk", "within");
  add_places (&project, "places", 1);
  assert_measure (project, "ways-out-lacking-uk", 1);
  assert_is (project, "ways-out-uk", "short");
}

/* --- what is not measured ------------------------------------------------------------------------- */

/* Where no door is drawn the survey is not done, and where nobody has a place nobody leaves. */
/* A single way is wide enough for 380, and two are asked for so many as 108: it is told with what is held. */
static void
test_hold_by_too_few_uk (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpFindings) findings = NULL;
  guint n, i = 0;
  const FpFinding *finding;

  take_law (&project, FP_JURISDICTION_UK);
  add_door (&project, "west", 4, 6000, 1900);
  add_bench (&project, 108, 9);
  findings = fp_findings_of (project, 0, NULL, NULL);
  finding = fp_findings_get (findings, &n);
  while (i < n && !g_str_equal (finding[i].rule->measure, "ways-out-hold-uk"))
    i++;
  g_assert_cmpuint (i, <, n);
  g_assert_cmpstr (finding[i].measured, ==, "380 of 108 people, by fewer ways out than are asked");
  assert_is (project, "ways-out-uk", "short");
}

static void
test_nothing (void)
{
  static const char *const measures[] = { "ways-out-lacking-us", "ways-out-width-us", "ways-out-loss-us", "ways-out-main-us",
                                          "ways-out-apart-us", "ways-out-lacking-uk", "ways-out-hold-uk" };
  g_autoptr (FpProject) doorless = church (), empty = church ();

  add_bench (&doorless, 240, 12);
  add_door (&empty, "west", 4, 6000, 1800);
  for (guint i = 0; i < G_N_ELEMENTS (measures); i++)
    {
      g_assert_cmpuint (taking_count (doorless, measures[i]), ==, 0);
      g_assert_cmpuint (taking_count (empty, measures[i]), ==, 0);
    }
  g_assert_cmpuint (taking_count (empty, "way-out-clear"), ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/leaving/which", test_which);
  g_test_add_func ("/leaving/to-another-room", test_to_another_room);
  g_test_add_func ("/leaving/load", test_load);
  g_test_add_func ("/leaving/us/tables", test_tables_us);
  g_test_add_func ("/leaving/us/number", test_number_us);
  g_test_add_func ("/leaving/us/width", test_width_us);
  g_test_add_func ("/leaving/us/sprinklers", test_sprinklers_us);
  g_test_add_func ("/leaving/us/main", test_main_us);
  g_test_add_func ("/leaving/us/apart", test_apart_us);
  g_test_add_func ("/leaving/clear", test_clear);
  g_test_add_func ("/leaving/uk/tables", test_tables_uk);
  g_test_add_func ("/leaving/uk/hold", test_hold_uk);
  g_test_add_func ("/leaving/uk/hold-by-too-few", test_hold_by_too_few_uk);
  g_test_add_func ("/leaving/uk/number", test_number_uk);
  g_test_add_func ("/leaving/nothing", test_nothing);
  return g_test_run ();
}
