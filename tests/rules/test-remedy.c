/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The change that is offered settles the finding, is small, and is not offered where there is none. */
#include "taking.h"

#include "footpace/remedy.h"

#include <math.h>
#include <string.h>

static FpProject *
church_with_gate (double gate, FpUnits units)
{
  FpProject *project = taking_church (FP_BOOKS_BOTH, FP_FACING_EAST, FP_CELEBRATION_LOW);

  taking_add (&project, "rail", "rail", NULL, 0, 405, "gate", gate);
  taking_altar_group (&project, 2);
  taking_units (&project, units);
  return project;
}

static gboolean
remedy_for (FpProject *project, const char *rule, FpRemedy *out)
{
  g_autoptr (FpFindings) findings = taking_findings (project, FALSE);

  return fp_remedy_find (findings, taking_finding (findings, rule), NULL, out, NULL);
}

/* ADA Standards (2010), 404.2.3: 32 in clear, which is 812.8 mm (from memory); A117.1-2017, 403.5.1: 36 in. */
static void
test_gate (void)
{
  const struct { FpUnits units; const char *rule; double value; } cases[] = {
    { FP_UNITS_METRIC, "access:gate-access", 815.0 },
    { FP_UNITS_IMPERIAL, "access:gate-access", 32.0 * 25.4 },
    { FP_UNITS_METRIC, "access:gate-route", 915.0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (FpProject) project = church_with_gate (700, cases[i].units);
      FpRemedy remedy;

      g_assert_true (remedy_for (project, cases[i].rule, &remedy));
      g_assert_cmpstr (remedy.change[0].item, ==, "rail");
      g_assert_cmpstr (remedy.change[0].param->id, ==, "gate");
      g_assert_cmpfloat_with_epsilon (remedy.change[0].value, cases[i].value, 1e-6);
    }
}

/* The gate is moved before the altar, by no more than it must be; the rail's own measures have no part in it. */
static void
test_move (void)
{
  g_autoptr (FpProject) project = taking_church (FP_BOOKS_BOTH, FP_FACING_EAST, FP_CELEBRATION_LOW);
  FpRemedy remedy;

  taking_add (&project, "rail", "rail", NULL, 340, 405, NULL, 0);
  g_assert_true (remedy_for (project, "rail:gate-middle", &remedy));
  g_assert_cmpstr (remedy.change[0].item, ==, "rail");
  g_assert_null (remedy.change[0].param);
  /* Within 50 mm is taken as the middle (design judgement). */
  g_assert_cmpfloat (remedy.change[0].by.x, ==, -290.0);
  g_assert_cmpfloat (remedy.change[0].by.y, ==, 0.0);
}

/* A limit of one figure is found though the first steps go over it: rows at 900 mm, as UFC 4-730-02 (2004)
 * prints 36 in. */
static void
test_one_figure (void)
{
  g_autoptr (FpProject) project = church_with_gate (1200, FP_UNITS_METRIC);
  FpRemedy remedy;

  taking_survey (&project, "pews", "pews", 0, -2000, "spacing", 870);
  assert_short (project, "seating-and-ways-out:row-spacing");
  g_assert_true (remedy_for (project, "seating-and-ways-out:row-spacing", &remedy));
  g_assert_cmpstr (remedy.change[0].item, ==, "pews");
  g_assert_cmpstr (remedy.change[0].param->id, ==, "spacing");
  church_param (&project, "pews", "spacing", remedy.change[0].value);
  assert_within (project, "seating-and-ways-out:row-spacing");
}

/* What nobody has looked at yet, what is not short, and what was given up have no remedy. */
static void
test_none (void)
{
  g_autoptr (FpProject) project = church_with_gate (700, FP_UNITS_METRIC);
  g_autoptr (GCancellable) cancelled = g_cancellable_new ();
  g_autoptr (FpFindings) findings = NULL;
  FpRemedy remedy;

  taking_survey (&project, "pews", "pews", 0, -2000, NULL, 0);
  findings = taking_findings (project, FALSE);
  g_assert_false (fp_remedy_find (findings, taking_finding (findings, "sight:mensa-seen"), NULL, &remedy, NULL));
  g_assert_false (fp_remedy_find (findings, taking_finding (findings, "rail:rail-height"), NULL, &remedy, NULL));
  g_cancellable_cancel (cancelled);
  g_assert_false (fp_remedy_find (findings, taking_finding (findings, "access:gate-access"), cancelled,
                                  &remedy, NULL));
}

/* A gate that is taken away is no wider; a flame is not made safe by lifting it over what can burn. */
static void
test_no_way_round (void)
{
  g_autoptr (FpProject) project = church_with_gate (700, FP_UNITS_METRIC);
  FpRemedy remedy;

  taking_add (&project, "reredos", "reredos", NULL, 0, 8560, NULL, 0);
  assert_short (project, "flame:flame-four-feet");
  if (remedy_for (project, "flame:flame-four-feet", &remedy))
    g_assert_null (remedy.change[0].param);
  g_assert_true (remedy_for (project, "access:gate-access", &remedy));
  g_assert_cmpfloat (remedy.change[0].value, >, 0.0);
}

/* A reredos that is moved out through the wall is far from every flame; that is not meant, however far it goes. */
static void
test_stays_in_church (void)
{
  g_autoptr (FpProject) project = church_with_gate (700, FP_UNITS_METRIC);
  FpRemedy remedy;

  taking_add (&project, "reredos", "reredos", NULL, 0, 8560, NULL, 0);
  taking_wall (&project, "east", -6000, 10000, 6000, 10000);
  assert_short (project, "flame:flame-four-feet");
  if (remedy_for (project, "flame:flame-four-feet", &remedy))
    {
      g_autoptr (FpScene) now = fp_scene_new (project, 0), then = NULL;
      g_autoptr (FpProject) next = fp_remedy_make (&remedy, now, NULL);

      then = fp_scene_new (next, 0);
      for (guint i = 0; i < remedy.n_changes; i++)
        g_assert_cmpfloat (church_placed (then, remedy.change[i].item)->plan.y1, <, 10000);
    }
}

/* --- the people below the altar -------------------------------------------- */

/* A footpace of @count steps of @riser on a sanctuary at 300, and rows of which the last stands at 90 (rows - 1). */
static FpProject *
church_with_rows (double count, double riser, double rows)
{
  FpProject *project = taking_church (FP_BOOKS_BOTH, FP_FACING_EAST, FP_CELEBRATION_LOW);

  taking_altar_group (&project, 2);
  taking_survey (&project, "pews", "pews", 0, -2000, "rows", rows);
  church_param (&project, "pews", "rise", 90);
  church_param (&project, "steps", "count", count);
  church_param (&project, "steps", "riser", riser);
  return project;
}

/* By the steps of the altar, of risers that are allowed: International Building Code 2015, 1011.5.2: 4 to 7 in. */
static void
test_steps_for_people (void)
{
  static const struct { double count, riser, rows; } cases[] = { { 3, 165, 10 }, { 3, 125, 9 }, { 3, 150, 12 }, { 3, 150, 20 } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (FpProject) project = church_with_rows (cases[i].count, cases[i].riser, cases[i].rows);
      FpRemedy remedy;

      assert_short (project, "levels:people-below");
      g_assert_true (remedy_for (project, "levels:people-below", &remedy));
      g_assert_cmpstr (remedy.change[0].item, ==, "steps");
      g_assert_nonnull (remedy.change[0].param);
      for (guint k = 0; k < remedy.n_changes; k++)
        church_param (&project, remedy.change[k].item, remedy.change[k].param->id, remedy.change[k].value);
      assert_within (project, "levels:people-below");
      assert_within (project, "levels:places-below");
      assert_within (project, "step-and-fall:riser-code");
    }
}

/* What all rules leave: 4 to 7 in, whatever customary figures say; nothing where nothing is asked. */
static void
test_limits (void)
{
  g_autoptr (FpProject) project = church_with_rows (3, 150, 3);
  g_autoptr (FpFindings) findings = taking_findings (project, FALSE);
  const FpRisers risers = fp_findings_risers (findings);
  const FpLimits customary = fp_findings_limits (findings, "riser", FP_WEIGHT_CUSTOMARY);
  const FpLimits margin = fp_findings_limits (findings, "margin-below", FP_WEIGHT_REQUIRED);
  const FpLimits unlimited = fp_findings_limits (findings, "altar-freestanding", FP_WEIGHT_REQUIRED);

  g_assert_cmpfloat_with_epsilon (risers.low, 4 * 25.4, 1e-9);
  g_assert_cmpfloat_with_epsilon (risers.high, 7 * 25.4, 1e-9);
  /* Schulte's 5.4 in, and 6 in of the second author. */
  g_assert_cmpfloat_with_epsilon (customary.low, 5.4 * 25.4, 1e-9);
  g_assert_cmpfloat_with_epsilon (customary.high, 6 * 25.4, 1e-9);
  g_assert_cmpfloat (margin.low, ==, 1);
  g_assert_true (isinf (margin.high) && isinf (unlimited.low) && isinf (unlimited.high));
}

/* Whatever is offered for whatever is short: once it is made, the rulebooks say so. */
static void
test_every_offer_settles (void)
{
  g_autoptr (FpProject) project = church_with_gate (700, FP_UNITS_METRIC);
  g_autoptr (FpFindings) findings = NULL;
  const FpFinding *finding;
  guint n, offered = 0;

  taking_survey (&project, "pews", "pews", 0, -2000, "spacing", 740);
  taking_add (&project, "credence", "credence", NULL, -4000, 6000, "depth", 250);
  church_param (&project, "altar", "height", 920);
  church_param (&project, "altar", "overhang", 60);
  church_param (&project, "steps", "count", 2);
  church_param (&project, "steps", "ends", 700);
  findings = taking_findings (project, FALSE);
  finding = fp_findings_get (findings, &n);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *rule = g_strdup_printf ("%s:%s", fp_rulebook_id (finding[i].book), finding[i].rule->id);
      g_autoptr (FpProject) next = NULL;
      FpRemedy remedy;

      if (finding[i].found != FP_FOUND_SHORT || !fp_remedy_find (findings, &finding[i], NULL, &remedy, NULL))
        continue;
      next = fp_remedy_make (&remedy, fp_findings_scene (findings), NULL);
      g_assert_nonnull (next);
      g_test_message ("%s: %s", rule, remedy.change[0].param != NULL ? remedy.change[0].param->label : "moved");
      assert_within (next, rule);
      offered++;
    }
  g_assert_cmpuint (offered, >=, 6);
}

/* A way is as wide as its narrowest place: here the gate of a rail from wall to wall, 760 mm, of 1200 that are asked. */
static void
test_way (void)
{
  const FpPoint corner[] = { { -6000, -20000 }, { -6000, 10000 }, { 6000, 10000 }, { 6000, -20000 } };
  const ChurchThing walls = { "wall", "walls", NULL, { 0, 0, 0 }, corner, 4, { { "closed", 1 } } };
  const ChurchThing west = { "opening", "west", "walls", { 0, 0, 0 }, NULL, 0,
                             { { "side", 4 }, { "along", 6000 }, { "width", 2000 }, { "sill", 0 }, { "head", 2500 } } };
  g_autoptr (FpProject) project = church_with_gate (760, FP_UNITS_METRIC);
  g_autoptr (FpFindings) findings = NULL;
  FpRemedy remedy;

  church_survey (&project, &walls);
  church_survey (&project, &west);
  church_param (&project, "rail", "length", 12000);
  findings = taking_findings (project, TRUE);
  g_assert_cmpint (taking_finding (findings, "room:procession-abreast")->found, ==, FP_FOUND_SHORT);
  g_assert_true (fp_remedy_find (findings, taking_finding (findings, "room:procession-abreast"), NULL, &remedy, NULL));
  g_assert_cmpuint (remedy.n_changes, ==, 1);
  g_assert_cmpuint (remedy.n_worse, ==, 0);
  g_assert_cmpstr (remedy.change[0].item, ==, "rail");
  g_assert_cmpstr (remedy.change[0].param->id, ==, "gate");
  g_assert_cmpfloat (remedy.change[0].value, ==, 1200);
}

/* What is bought whole and stands there gets no other size; what is proposed does, and so does what is built on the spot. */
static void
test_stands_there (void)
{
  for (guint existing = 0; existing < 2; existing++)
    {
      g_autoptr (FpProject) project = taking_church (FP_BOOKS_BOTH, FP_FACING_EAST, FP_CELEBRATION_LOW);
      g_autoptr (FpFindings) findings = NULL;
      g_autofree char *words = NULL;
      FpRemedy remedy;
      FpHindrance why;

      if (existing)
        taking_survey (&project, "rail", "rail", 0, 405, "gate", 700);
      else
        taking_add (&project, "rail", "rail", NULL, 0, 405, "gate", 700);
      g_assert_true (remedy_for (project, "access:gate-access", &remedy));
      if (existing)
        taking_survey (&project, "credence", "table", 4000, 7000, "length", 400);
      else
        taking_add (&project, "credence", "table", NULL, 4000, 7000, "length", 400);
      assert_short (project, "either-form:credence-size");
      findings = taking_findings (project, FALSE);
      g_assert_cmpint (fp_remedy_find (findings, taking_finding (findings, "either-form:credence-size"), NULL, &remedy, &why), ==, !existing);
      if (!existing)
        continue;
      g_assert_cmpint (why.how, ==, FP_HINDRANCE_STANDS);
      words = fp_hindrance_words (&why, findings);
      /* What another would have to be: of 400 mm by 305 the least change is of its depth. */
      g_assert_cmpstr (words, ==, "Credence stands there already, and no place for it settles it: Depth would have to be 585 mm instead "
                                  "of 305 mm; choose another that is so, or have it altered. Nothing that may be changed does a part of "
                                  "it.");
      g_assert_cmpstr (why.change.param->id, ==, "depth");
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/remedy/gate", test_gate);
  g_test_add_func ("/remedy/move", test_move);
  g_test_add_func ("/remedy/one-figure", test_one_figure);
  g_test_add_func ("/remedy/none", test_none);
  g_test_add_func ("/remedy/no-way-round", test_no_way_round);
  g_test_add_func ("/remedy/stays-in-church", test_stays_in_church);
  g_test_add_func ("/remedy/steps-for-people", test_steps_for_people);
  g_test_add_func ("/remedy/limits", test_limits);
  g_test_add_func ("/remedy/way", test_way);
  g_test_add_func ("/remedy/stands-there", test_stands_there);
  g_test_add_func ("/remedy/settles", test_every_offer_settles);
  return g_test_run ();
}
