/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Handrails and edges of steps, doors that open, ways past somebody, back from the rail, and of a bier.  Each limit is tried
 * just inside, on it and just outside. */
#include "taking.h"

#include <math.h>

#define INCH 25.4

/* Under nobody's law, so that all rules hold. */
static FpProject *
church (void)
{
  g_autoptr (FpProject) project = taking_church (FP_BOOKS_BOTH, FP_FACING_EAST, FP_CELEBRATION_SOLEMN);
  const FpNorms norms = { .jurisdiction = FP_JURISDICTION_UNSAID };

  return fp_project_with_norms (project, &norms, NULL);
}

static const FpMeasured *
only (GArray *values)
{
  g_assert_cmpuint (values->len, ==, 1);
  return &g_array_index (values, FpMeasured, 0);
}

static void
assert_found (const FpProject *project, const char *rule, FpFound found)
{
  g_autoptr (FpFindings) findings = taking_findings (project, TRUE);

  g_assert_cmpstr (fp_found_id (taking_finding (findings, rule)->found), ==, fp_found_id (found));
}

/* --- handrails ---------------------------------------------------------------------- */

/* Three metres wide. */
static FpProject *
flight (double risers)
{
  FpProject *project = church ();

  church_param (&project, "way-up", "width", 3000);
  church_param (&project, "way-up", "count", risers);
  church_param (&project, "way-up", "tread", 300);
  return project;
}

static void
handrail (FpProject **project, const char *id, double x)
{
  g_autoptr (FpScene) scene = fp_scene_new (*project, 0);
  const FpPlaced *steps = church_placed (scene, "way-up");
  const FpPoint foot = fp_place_point (&steps->place, (FpPoint) { x, 0 });

  taking_add (project, "handrail", id, NULL, foot.x, foot.y, "length", 600);
}

static void
test_handrail_sides (void)
{
  g_autoptr (FpProject) project = flight (3);

  assert_measure (project, "flight-handrails", 0);
  g_assert_cmpuint (taking_count (project, "short-flight-handrails"), ==, 0);
  assert_short (project, "step-and-fall:handrail-sides");
  handrail (&project, "left", -1500);
  assert_measure (project, "flight-handrails", 1);
  assert_short (project, "step-and-fall:handrail-sides");
  handrail (&project, "middle", 0); /* it is of neither side */
  assert_measure (project, "flight-handrails", 1);
  handrail (&project, "right", 1500);
  assert_measure (project, "flight-handrails", 2);
  assert_within (project, "step-and-fall:handrail-sides");
}

/* What ends before the last riser, stands aslant or apart is none of the flight's. */
static void
test_handrail_apart (void)
{
  g_autoptr (FpProject) project = flight (3);

  handrail (&project, "left", -1500);
  church_param (&project, "left", "extend", 0);
  church_param (&project, "left", "length", 541); /* the last riser lies at 600 */
  assert_measure (project, "flight-handrails", 1);
  church_param (&project, "left", "length", 539);
  assert_measure (project, "flight-handrails", 0);
  handrail (&project, "apart", 1701);
  assert_measure (project, "flight-handrails", 0);
  handrail (&project, "near", 1699);
  assert_measure (project, "flight-handrails", 1);
}

/* Within 30 in of either side: of 3 m the middle 3000 - 2 * 762 = 1476 are beyond reach. */
static void
test_handrail_reach (void)
{
  g_autoptr (FpProject) project = flight (3);

  assert_measure (project, "flight-beyond-reach", 3000);
  handrail (&project, "left", -1500);
  assert_measure (project, "flight-beyond-reach", 3000 - 30 * INCH);
  handrail (&project, "right", 1500);
  assert_measure (project, "flight-beyond-reach", 3000 - 60 * INCH);
  assert_short (project, "step-and-fall:handrail-reach");
  {
    g_autoptr (GArray) values = taking_values (project, "flight-beyond-reach");
    const FpMeasured *one = only (values);

    g_assert_true (one->has_span);
    g_assert_cmpfloat_with_epsilon (hypot (one->span[1].x - one->span[0].x, one->span[1].y - one->span[0].y), one->value, 1e-6);
  }
  /* Five feet between the sides' handrails are all in reach; an inch more is not. */
  church_param (&project, "way-up", "width", 60 * INCH);
  church_param (&project, "left", "extend", 305);
  {
    g_autoptr (FpProject) narrow = flight (3);

    church_param (&narrow, "way-up", "width", 60 * INCH);
    handrail (&narrow, "left", -30 * INCH);
    handrail (&narrow, "right", 30 * INCH);
    assert_measure (narrow, "flight-beyond-reach", 0);
    assert_within (narrow, "step-and-fall:handrail-reach");
  }
  {
    g_autoptr (FpProject) wider = flight (3);

    church_param (&wider, "way-up", "width", 61 * INCH);
    handrail (&wider, "left", -30.5 * INCH);
    handrail (&wider, "right", 30.5 * INCH);
    assert_measure (wider, "flight-beyond-reach", INCH);
    assert_short (wider, "step-and-fall:handrail-reach");
  }
}

static void
test_handrail_channel (void)
{
  static const struct { double apart; FpFound found; } rows[]
    = { { 1999, FP_FOUND_WITHIN }, { 2000, FP_FOUND_WITHIN }, { 2001, FP_FOUND_SHORT } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (FpProject) project = flight (2);

      g_assert_cmpuint (taking_count (project, "flight-channel"), ==, 0);
      handrail (&project, "left", -rows[i].apart / 2);
      g_assert_cmpuint (taking_count (project, "flight-channel"), ==, 0);
      handrail (&project, "right", rows[i].apart / 2);
      assert_measure (project, "flight-channel", rows[i].apart);
      assert_found (project, "step-and-fall:handrail-channel-uk", rows[i].found);
    }
}

static void
test_short_flight (void)
{
  g_autoptr (FpProject) project = flight (2);

  g_assert_cmpuint (taking_count (project, "flight-handrails"), ==, 0);
  assert_measure (project, "short-flight-handrails", 0);
  assert_short (project, "step-and-fall:handrail-short-flight");
  handrail (&project, "middle", 0);
  assert_measure (project, "short-flight-handrails", 1);
  assert_within (project, "step-and-fall:handrail-short-flight");
}

/* --- edges ---------------------------------------------------------------------------- */

static void
assert_edge (const char *thing, const char *param, const char *rule, double limit, double step)
{
  for (int side = -1; side <= 1; side++)
    {
      g_autoptr (FpProject) project = church ();

      church_param (&project, thing, "edge", 2);
      church_param (&project, thing, param, limit + side * step);
      g_assert_cmpstr (fp_found_id (taking_found (project, rule)), ==, side < 0 ? "short" : "within");
    }
}

static void
test_edges (void)
{
  g_autoptr (FpProject) project = church ();

  /* Until somebody says how they are, nothing is found. */
  g_assert_cmpuint (taking_count (project, "flight-edge-tread"), ==, 0);
  g_assert_cmpstr (fp_found_id (taking_found (project, "step-and-fall:edge-tread-uk")), ==, "nothing");
  church_param (&project, "way-up", "edge", 1);
  assert_measure (project, "flight-edge-tread", 0);
  assert_short (project, "step-and-fall:edge-tread-us");
  g_assert_cmpuint (taking_count (project, "flight-edge-contrast"), ==, 0); /* there is nothing to stand out */
  church_param (&project, "way-up", "edge", 2);
  assert_measure (project, "flight-edge-tread", 55);
  assert_measure (project, "flight-edge-riser", 55);
  assert_measure (project, "flight-edge-contrast", 0.3);
  assert_edge ("way-up", "edge-tread", "step-and-fall:edge-tread-uk", 55, 1);
  assert_edge ("way-up", "edge-riser", "step-and-fall:edge-riser-uk", 55, 1);
  assert_edge ("way-up", "edge-contrast", "step-and-fall:edge-contrast-uk", 0.3, 0.01);
  assert_edge ("way-up", "edge-tread", "step-and-fall:edge-tread-us", 2 * INCH, 1);
  assert_edge ("steps", "edge-tread", "step-and-fall:altar-edge", 2 * INCH, 1);
  assert_edge ("steps", "edge-contrast", "step-and-fall:altar-edge-contrast", 0.3, 0.01);
}

/* --- doors ---------------------------------------------------------------------------- */

/* A nave 12 by 20 m with a door of 1 m in its south wall at y = -5000, and one of 1 m in the west wall, hung where it is said. */
static FpProject *
hung (double leaves, double opens)
{
  const FpPoint corner[] = { { -6000, -20000 }, { -6000, 10000 }, { 6000, 10000 }, { 6000, -20000 } };
  const ChurchThing walls = { "wall", "walls", NULL, { 0, 0, 0 }, corner, 4, { { "closed", 1 }, { "thickness", 400 } } };
  const ChurchThing door = { "opening", "door", "walls", { 0, 0, 0 }, NULL, 0,
                             { { "side", 3 }, { "along", 15000 }, { "width", 1000 }, { "sill", 0 }, { "head", 2500 },
                               { "leaves", leaves }, { "opens", opens } } };
  FpProject *project = church ();

  church_survey (&project, &walls);
  church_survey (&project, &door);
  return project;
}

/* Its hinge, and a point so far along the shut leaf and the way it opens. */
static FpPoint
before_door (const FpProject *project, double along, double away)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);

  return fp_place_point (&church_placed (scene, "door")->place, (FpPoint) { -500 + along, -away });
}

static void
test_door_thing (void)
{
  static const struct { double leaves, opens, struck; } rows[] = {
    { 2, 0, 300 },  /* one, hung beside the pier: 300 of its 1000 are struck             */
    { 3, 0, 0 },    /* hung on the other side it is just clear: hypot (900, 700) > 1000  */
    { 2, 1, 0 },    /* outwards                                                          */
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (FpProject) project = hung (rows[i].leaves, rows[i].opens);
      const FpPoint at = before_door (project, 50, 750); /* its face is 700 from the wall, straight before the hinge */

      assert_measure (project, "door-swing", 0);
      taking_survey (&project, "pier", "pier", at.x, at.y, "shape", 1);
      church_param (&project, "pier", "width", 100);
      assert_measure (project, "door-swing", rows[i].struck);
      assert_found (project, "room:door-opens", rows[i].struck > 5 ? FP_FOUND_SHORT : FP_FOUND_WITHIN);
    }
}

static void
test_door_limit (void)
{
  static const struct { double away; FpFound found; } rows[]
    = { { 995.5, FP_FOUND_WITHIN }, { 995, FP_FOUND_WITHIN }, { 994.5, FP_FOUND_SHORT } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (FpProject) project = hung (2, 0);
      const FpPoint at = before_door (project, 50, rows[i].away + 50);

      taking_survey (&project, "pier", "pier", at.x, at.y, "shape", 1);
      church_param (&project, "pier", "width", 100);
      assert_found (project, "room:door-opens", rows[i].found);
    }
}

static void
test_door_step (void)
{
  g_autoptr (FpProject) project = hung (2, 0);

  /* A floor that rises by a step of 100 begins 600 from the wall. */
  church_floor (&project, "raised", (FpBox) { 3000, -6000, 5400, -4000 }, 100, 0, 0, 0);
  assert_measure (project, "door-swing", 400);
  {
    g_autoptr (GArray) values = taking_values (project, "door-swing");

    g_assert_nonnull (g_strrstr (only (values)->detail, "a step"));
    g_assert_true (only (values)->has_span);
  }
  church_param (&project, "raised", "level", -100); /* under the nave's floor: nothing is seen of it */
  church_param (&project, "raised", "level", 10);
  assert_measure (project, "door-swing", 0);
}

/* Two doors in a corner of 1 m each, whose hinges lie 1200 apart both ways: the sector of the one reaches to 1697 - 1000 from the
 * hinge of the other. */
static void
test_door_doors (void)
{
  g_autoptr (FpProject) project = hung (2, 0);
  const ChurchThing other = { "opening", "other", "walls", { 0, 0, 0 }, NULL, 0,
                              { { "side", 4 }, { "along", 700 }, { "width", 1000 }, { "sill", 0 }, { "head", 2500 },
                                { "leaves", 3 }, { "opens", 0 } } };

  church_param (&project, "door", "along", 29300);
  church_survey (&project, &other);
  {
    g_autoptr (GArray) both = taking_values (project, "door-swing");

    g_assert_cmpuint (both->len, ==, 2);
    for (guint i = 0; i < 2; i++)
      {
        const FpMeasured *one = &g_array_index (both, FpMeasured, i);
        g_assert_cmpfloat_with_epsilon (one->value, 2000 - hypot (1200, 1200), 1); /* a sector is drawn by its sides */
        g_assert_cmpfloat_with_epsilon (hypot (one->span[1].x - one->span[0].x, one->span[1].y - one->span[0].y), one->value, 1e-6);
      }
    assert_found (project, "room:door-opens", FP_FOUND_SHORT);
  }
  church_param (&project, "other", "opens", 1);
  {
    g_autoptr (GArray) both = taking_values (project, "door-swing");

    for (guint i = 0; i < 2; i++)
      g_assert_cmpfloat (g_array_index (both, FpMeasured, i).value, ==, 0);
  }
  church_param (&project, "other", "leaves", 4); /* each of its two is told */
  g_assert_cmpuint (taking_count (project, "door-swing"), ==, 3);
}

static void
test_door_unsaid (void)
{
  g_autoptr (FpProject) project = hung (0, 0);

  g_assert_cmpuint (taking_count (project, "door-swing"), ==, 0);
  church_param (&project, "door", "leaves", 1);
  g_assert_cmpuint (taking_count (project, "door-swing"), ==, 0);
}

/* --- past somebody ---------------------------------------------------------------------- */

/* Behind a body of 457 that stands 20 before the altar. */
static void
test_past_celebrant (void)
{
  static const struct { double front; FpFound found; } rows[]
    = { { 1067, FP_FOUND_WITHIN }, { 477 + 402, FP_FOUND_WITHIN }, { 477 + 398, FP_FOUND_SHORT } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (FpProject) project = church ();
      g_autoptr (GArray) values = NULL;

      church_param (&project, "steps", "front", rows[i].front);
      church_param (&project, "steps", "ends", 900);
      values = taking_values (project, "past-celebrant");
      if (rows[i].found == FP_FOUND_WITHIN)
        {
          g_assert_cmpfloat (only (values)->value, >=, rows[i].front - 477 - 0.01);
          g_assert_cmpfloat (only (values)->value, <=, rows[i].front - 477 + only (values)->way->tolerance + 1);
          g_assert_cmpuint (only (values)->way->n_outline, >, 8);
          g_assert_nonnull (g_strrstr (only (values)->detail, "who stands there"));
        }
      assert_found (project, "room:past-celebrant", rows[i].found);
    }
}

/* On the lowest step of 320, with a wall so far before its edge. */
static void
test_past_on_step (void)
{
  static const struct { double free; FpFound found; } rows[]
    = { { 605, FP_FOUND_WITHIN }, { 595, FP_FOUND_SHORT } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (FpProject) project = church ();
      double back;

      church_param (&project, "steps", "count", 2);
      church_param (&project, "steps", "tread", 320);
      {
        g_autoptr (FpScene) scene = fp_scene_new (project, 0);

        /* He stands in the middle of the tread, and is 457 deep. */
        back = church_placed (scene, "steps")->plan.y0 + 160 - 457 / 2.0;
      }
      g_assert_cmpfloat (taking_value (project, "past-on-step"), >, 900);
      taking_wall (&project, "before", -6000, back - rows[i].free - 600, 6000, back - rows[i].free - 600);
      {
        g_autoptr (FpScene) scene = fp_scene_new (project, 0);
        const double gap = back - church_placed (scene, "before")->plan.y1;

        g_assert_cmpfloat (taking_value (project, "past-on-step"), >=, gap - 0.01);
        g_assert_cmpfloat (taking_value (project, "past-on-step"), <=, gap + 3);
        assert_found (project, "room:past-on-step", gap >= 600 ? FP_FOUND_WITHIN : FP_FOUND_SHORT);
      }
    }
}

/* --- back from the rail -------------------------------------------------------------------- */

static void
test_to_pews (void)
{
  static const struct { double width; FpFound found; } rows[]
    = { { 805, FP_FOUND_WITHIN }, { 800, FP_FOUND_WITHIN }, { 795, FP_FOUND_SHORT } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (FpProject) project = church ();
      const double open = rows[i].width;

      taking_add (&project, "rail", "rail", NULL, 0, -500, "length", 4000);
      taking_survey (&project, "pews", "pews", 0, -6000, "rows", 4);
      g_assert_cmpfloat (taking_value (project, "way-to-pews"), >, 900);
      /* A wall across the nave before the pews, open in one place. */
      taking_wall (&project, "left", -6000, -3500, -3000, -3500);
      taking_wall (&project, "right", -3000 + open, -3500, 6000, -3500);
      {
        const double value = taking_value (project, "way-to-pews");

        g_assert_cmpfloat (value, >=, open - 0.01);
        g_assert_cmpfloat (value, <=, open + 2);
      }
      assert_found (project, "room:rail-to-pews", rows[i].found);
    }
}

/* --- a bier ---------------------------------------------------------------------------------- */

/* In by a door in the side of the nave, into a passage so wide between a wall and what stands in the nave. */
static FpProject *
passage (double width)
{
  const FpPoint corner[] = { { -6000, -20000 }, { -6000, 10000 }, { 6000, 10000 }, { 6000, -20000 } };
  const ChurchThing walls = { "wall", "walls", NULL, { 0, 0, 0 }, corner, 4, { { "closed", 1 }, { "thickness", 400 } } };
  const ChurchThing door = { "opening", "door", "walls", { 0, 0, 0 }, NULL, 0,
                             { { "side", 3 }, { "along", 20000 }, { "width", 1300 }, { "sill", 0 }, { "head", 2500 } } };
  FpProject *project = church ();

  church_survey (&project, &walls);
  church_survey (&project, &door);
  if (width > 0)
    taking_wall (&project, "along", 6000 - width, -20000, 6000 - width, -4000);
  return project;
}

static void
test_bier (void)
{
  g_autoptr (FpProject) open = passage (0), wide = passage (1600), narrow = passage (1000);
  const double in_wide = taking_value (wide, "bier-turning"), in_narrow = taking_value (narrow, "bier-turning");

  g_assert_cmpfloat (taking_value (open, "bier-turning"), >=, 1200);
  g_assert_cmpfloat (in_wide, <, 1200);
  g_assert_cmpfloat (in_wide, >, 800);
  g_assert_cmpfloat (in_narrow, <, 800);
  assert_found (open, "room:bier-turns", FP_FOUND_WITHIN);
  assert_found (wide, "room:bier-turns", FP_FOUND_WITHIN);
  assert_found (narrow, "room:bier-turns", FP_FOUND_SHORT);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/measures/handrail/sides", test_handrail_sides);
  g_test_add_func ("/measures/handrail/apart", test_handrail_apart);
  g_test_add_func ("/measures/handrail/reach", test_handrail_reach);
  g_test_add_func ("/measures/handrail/channel", test_handrail_channel);
  g_test_add_func ("/measures/handrail/short-flight", test_short_flight);
  g_test_add_func ("/measures/edges", test_edges);
  g_test_add_func ("/measures/door/thing", test_door_thing);
  g_test_add_func ("/measures/door/limit", test_door_limit);
  g_test_add_func ("/measures/door/step", test_door_step);
  g_test_add_func ("/measures/door/doors", test_door_doors);
  g_test_add_func ("/measures/door/unsaid", test_door_unsaid);
  g_test_add_func ("/measures/past/celebrant", test_past_celebrant);
  g_test_add_func ("/measures/past/on-step", test_past_on_step);
  g_test_add_func ("/measures/to-pews", test_to_pews);
  g_test_add_func ("/measures/bier", test_bier);
  return g_test_run ();
}
