/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where nothing settles a finding it is said what stands in the way; and two changes together do what one cannot.
 * The rules are made for the purpose; the sizes are of the kinds: a riser of 152 mm, of 250 at most, a tread of 305. */
#include "own-rules.h"

#include "footpace/remedy.h"

#include <math.h>
#include <string.h>

static FpFindings *
held (const FpProject *project, const OwnRule *rule, guint n)
{
  return own_held (project, rule, n, FALSE);
}

static FpProject *
church (void)
{
  return taking_church (FP_BOOKS_OLDER, FP_FACING_EAST, FP_CELEBRATION_LOW);
}

/* The first rule is short, and nothing settles it. */
static FpHindrance
hindered (const FpProject *project, const OwnRule *rule, guint n, const char *says)
{
  g_autoptr (FpFindings) findings = held (project, rule, n);
  g_autofree char *words = NULL;
  FpRemedy remedy;
  FpHindrance why;

  if (fp_remedy_find (findings, taking_finding (findings, "own:a"), NULL, &remedy, &why))
    {
      words = fp_remedy_words (&remedy, findings);
      g_error ("%s", words);
    }
  words = fp_hindrance_words (&why, findings);
  g_assert_cmpstr (words, ==, says);
  return why;
}

/* --- what stands in the way ------------------------------------------------------ */

static void
test_range (void)
{
  const OwnRule rule[] = { { "a", "measure=\"riser\" test=\"at-least\" low=\"262\" unit=\"mm\"", "required" } };
  g_autoptr (FpProject) project = church ();
  const FpHindrance why = hindered (project, rule, 1, "Footpace and steps: Riser would have to be about 262 mm; it can be 250 mm "
                                                      "at most.");

  g_assert_cmpint (why.how, ==, FP_HINDRANCE_RANGE);
  g_assert_cmpfloat_with_epsilon (why.wanted, 262, 1e-6);
  g_assert_cmpfloat (why.limit, ==, 250);
}

static void
test_rules (void)
{
  const OwnRule rule[] = { { "a", "measure=\"two-risers-and-tread\" test=\"at-least\" low=\"900\" unit=\"mm\"", "required" },
                           { "b", "measure=\"tread\" test=\"at-most\" high=\"305\" unit=\"mm\"", "required" },
                           { "c", "measure=\"riser\" test=\"at-most\" high=\"240\" unit=\"mm\"", "recommended" } };
  g_autoptr (FpProject) project = church ();
  /* 2 x 297.5 + 305 = 900; a tread that is wider is forbidden, and does not do alone. */
  const FpHindrance why = hindered (project, rule, 3, "Footpace and steps: Riser would have to be about 298 mm; the rules leave "
                                                      "240 mm at most.");

  g_assert_cmpint (why.how, ==, FP_HINDRANCE_RULES);
  g_assert_cmpfloat_with_epsilon (why.wanted, 297.5, 1e-6);
}

static void
test_reach (void)
{
  const OwnRule rule[] = { { "a", "measure=\"footpace-celebrant\" test=\"at-least\" low=\"2000\" unit=\"mm\"", "required" } };
  g_autoptr (FpProject) project = church ();
  const FpHindrance why = hindered (project, rule, 1, "Footpace and steps: Footpace in front of the altar would have to change "
                                                      "by more than 533 mm, to about 2\u202f000 mm: that is another design.");

  g_assert_cmpint (why.how, ==, FP_HINDRANCE_REACH);
}

static void
test_worse (void)
{
  const OwnRule rule[] = { { "a", "measure=\"mensa-height\" test=\"at-least\" low=\"1010\" unit=\"mm\"", "recommended" },
                           { "b", "measure=\"mensa-height\" test=\"at-most\" high=\"1000\" unit=\"mm\"", "recommended" } };
  g_autoptr (FpProject) project = church ();

  church_param (&project, "altar", "height", 980);
  g_assert_cmpint (hindered (project, rule, 2, "Altar: Height of the mensa from 980 mm to 1\u202f010 mm would settle it, but make "
                                               "short: “Of b” (recommended).").how, ==, FP_HINDRANCE_WORSE);
}

static void
test_no_say (void)
{
  const OwnRule rule[] = { { "a", "measure=\"crucifixes\" test=\"at-least\" low=\"1\"", "required" } };
  g_autoptr (FpProject) project = church ();

  g_assert_cmpint (hindered (project, rule, 1, "No change of one or two sizes or places settles it: something has to be added, "
                                               "taken away or decided.").how, ==, FP_HINDRANCE_NO_SAY);
}

static void
test_many (void)
{
  const OwnRule rule[] = { { "a", "measure=\"candles-newer\" test=\"at-least\" low=\"2\"", "required" } };
  g_autoptr (FpProject) project = church ();

  for (guint i = 0; i < 90; i++)
    {
      g_autofree char *id = g_strdup_printf ("throne-%u", i);

      taking_add (&project, "throne", id, NULL, -5500 + 120.0 * i, 1000, NULL, 0);
    }
  g_assert_cmpint (hindered (project, rule, 1, "Nothing was found that settles it; there is more that could be changed than was tried.")
                     .how, ==, FP_HINDRANCE_MANY);
}

static void
test_sight (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpFindings) findings = NULL;
  FpRemedy remedy;
  FpHindrance why;

  taking_survey (&project, "pews", "pews", 0, -2000, NULL, 0);
  findings = taking_findings (project, FALSE);
  g_assert_cmpint (taking_finding (findings, "sight:mensa-seen")->found, ==, FP_FOUND_WAITING);
  g_assert_false (fp_remedy_find (findings, taking_finding (findings, "sight:mensa-seen"), NULL, &remedy, &why));
  g_assert_cmpint (why.how, ==, FP_HINDRANCE_SIGHT);
}

static void
test_cancelled (void)
{
  const OwnRule rule[] = { { "a", "measure=\"riser\" test=\"at-least\" low=\"160\" unit=\"mm\"", "required" } };
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpFindings) findings = held (project, rule, 1);
  g_autoptr (GCancellable) cancel = g_cancellable_new ();
  FpRemedy remedy;
  FpHindrance why;

  g_cancellable_cancel (cancel);
  g_assert_false (fp_remedy_find (findings, taking_finding (findings, "own:a"), cancel, &remedy, &why));
  g_assert_cmpint (why.how, ==, FP_HINDRANCE_CANCELLED);
}

/* --- two changes -------------------------------------------------------------------- */

static FpRemedy
remedy_of (const FpProject *project, const OwnRule *rule, guint n, const char *says)
{
  g_autoptr (FpFindings) findings = held (project, rule, n);
  g_autofree char *words = NULL;
  FpRemedy remedy;

  g_assert_true (fp_remedy_find (findings, taking_finding (findings, "own:a"), NULL, &remedy, NULL));
  words = fp_remedy_words (&remedy, findings);
  g_assert_cmpstr (words, ==, says);
  return remedy;
}

/* The second mends what the first makes short: 2 x 170 + 305 = 645, which is over 640 by 5. */
static void
test_mended (void)
{
  const OwnRule rule[] = { { "a", "measure=\"riser\" test=\"at-least\" low=\"170\" unit=\"mm\"", "required" },
                           { "b", "measure=\"two-risers-and-tread\" test=\"at-most\" high=\"640\" unit=\"mm\"", "required" } };
  g_autoptr (FpProject) project = church ();
  const FpRemedy remedy = remedy_of (project, rule, 2, "Footpace and steps: Riser from 152 mm to 170 mm, and Tread from 305 mm to "
                                                       "300 mm; 3 steps of 170 mm; the floor of the altar 54 mm higher, at +0.810");

  g_assert_cmpuint (remedy.n_changes, ==, 2);
  g_assert_cmpuint (remedy.n_worse, ==, 0);
}

/* Neither does it alone: the riser goes as far as 240, the tread to 455; 2 x 240 + 455 = 935. */
static void
test_shared (void)
{
  const OwnRule rule[] = { { "a", "measure=\"two-risers-and-tread\" test=\"at-least\" low=\"900\" unit=\"mm\"", "required" },
                           { "b", "measure=\"riser\" test=\"at-most\" high=\"240\" unit=\"mm\"", "recommended" } };
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpFindings) findings = held (project, rule, 2), after = NULL;
  g_autoptr (FpProject) next = NULL;
  FpRemedy remedy;

  g_assert_true (fp_remedy_find (findings, taking_finding (findings, "own:a"), NULL, &remedy, NULL));
  g_assert_cmpuint (remedy.n_changes, ==, 2);
  next = fp_remedy_make (&remedy, fp_findings_scene (findings), NULL);
  after = held (next, rule, 2);
  g_assert_cmpint (taking_finding (after, "own:a")->found, ==, FP_FOUND_WITHIN);
  g_assert_cmpint (taking_finding (after, "own:b")->found, ==, FP_FOUND_WITHIN);
  /* No more of either than it takes. */
  g_assert_cmpfloat (taking_finding (after, "own:a")->value, <, 915);
}

/* What weighs less does not forbid it, and is told. */
static void
test_lesser (void)
{
  const OwnRule rule[] = { { "a", "measure=\"mensa-height\" test=\"at-least\" low=\"1010\" unit=\"mm\"", "required" },
                           { "b", "measure=\"mensa-height\" test=\"at-most\" high=\"1000\" unit=\"mm\"", "customary" } };
  g_autoptr (FpProject) project = church ();

  church_param (&project, "altar", "height", 980);
  g_assert_cmpuint (remedy_of (project, rule, 2, "Altar: Height of the mensa from 980 mm to 1\u202f010 mm; then also: “Of b” "
                                                 "(customary)").n_worse, ==, 1);
}

/* --- the steps of the altar ------------------------------------------------------------ */

/* International Building Code 2015, 1011.5.2: risers of 4 to 7 in, which are 101.6 to 177.8 mm; and steps that are not even. */
static void
test_steps (void)
{
  const OwnRule rule[] = { { "a", "measure=\"margin-below\" test=\"at-least\" low=\"1\" unit=\"mm\"", "required" },
                           { "b", "measure=\"riser\" test=\"between\" low=\"4\" high=\"7\" unit=\"in\"", "recommended" },
                           { "c", "measure=\"altar-steps\" test=\"odd\"", "customary" } };
  static const struct { double riser, rows; const char *param; double value; } cases[] = {
    /* The sanctuary lies at 300; ten rows reach 9 x 90 = 810: 300 + 3 x 165 is 15 too low, 3 x 170 as high, 3 x 175 below. */
    { 165, 10, "riser", 175 },
    /* Twelve reach 990, for which three risers would be 230 each: 300 + 5 x 150 is the first that is higher. */
    { 150, 12, "count", 5 },
    /* Twenty reach 1710: (1710 - 300) / 150 = 9.4, and the next odd number. */
    { 150, 20, "count", 11 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (FpProject) project = church ();
      g_autoptr (FpFindings) findings = NULL;
      FpRemedy remedy;

      taking_survey (&project, "pews", "pews", 0, -2000, "rows", cases[i].rows);
      church_param (&project, "pews", "rise", 90);
      church_param (&project, "steps", "riser", cases[i].riser);
      findings = held (project, rule, G_N_ELEMENTS (rule));
      g_assert_true (fp_remedy_find (findings, taking_finding (findings, "own:a"), NULL, &remedy, NULL));
      g_assert_cmpuint (remedy.n_changes, ==, 1);
      g_assert_cmpstr (remedy.change[0].item, ==, "steps");
      g_assert_cmpstr (remedy.change[0].param->id, ==, cases[i].param);
      g_assert_cmpfloat (remedy.change[0].value, ==, cases[i].value);
      g_assert_cmpuint (remedy.n_worse, ==, 0);
    }
}

/* --- what is worse ------------------------------------------------------------------- */

static guint
worse_by (const OwnRule *rule, double before, double after)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpFindings) a = NULL, b = NULL;
  g_autoptr (GArray) worse = NULL;

  church_param (&project, "altar", "height", before);
  a = held (project, rule, 1);
  church_param (&project, "altar", "height", after);
  b = held (project, rule, 1);
  worse = fp_findings_made_worse (a, b, NULL);
  return worse->len;
}

static void
test_definition (void)
{
  const OwnRule rule[] = { { "a", "measure=\"mensa-height\" test=\"at-most\" high=\"1000\" unit=\"mm\"", "customary" } };

  g_assert_cmpuint (worse_by (rule, 990, 1010), ==, 1); /* it becomes short    */
  g_assert_cmpuint (worse_by (rule, 1010, 1020), ==, 1); /* farther outside     */
  g_assert_cmpuint (worse_by (rule, 1010, 1010), ==, 0);
  g_assert_cmpuint (worse_by (rule, 1020, 1010), ==, 0); /* short, but less     */
  g_assert_cmpuint (worse_by (rule, 980, 1000), ==, 0);  /* nearer to the limit */
}

/* --- all of them ----------------------------------------------------------------------- */

static void
test_all (void)
{
  const OwnRule rule[] = { { "a", "measure=\"riser\" test=\"at-least\" low=\"160\" unit=\"mm\"", "required" },
                           { "b", "measure=\"two-risers-and-tread\" test=\"at-least\" low=\"622\" unit=\"mm\"", "required" },
                           { "c", "measure=\"crucifixes\" test=\"at-least\" low=\"1\"", "required" },
                           { "d", "measure=\"mensa-length\" test=\"at-least\" low=\"3000\" unit=\"mm\"", "customary" } };
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpFindings) findings = held (project, rule, 4), after = NULL;
  g_autoptr (FpSettling) all = fp_settle_all (findings, FP_WEIGHT_REQUIRED, NULL);
  g_autofree char *words = fp_settling_words (all);

  g_assert_cmpuint (all->list->len, ==, 3);
  g_assert_cmpstr (words, ==, "2 of 3 findings are settled.");
  /* 2 x 160 + 305 = 625. */
  g_assert_cmpstr (g_array_index (all->list, FpSettled, 1).words, ==, "Settled by what settled another.");
  g_assert_false (g_array_index (all->list, FpSettled, 2).settled);
  after = held (all->project, rule, 4);
  g_assert_cmpint (taking_finding (after, "own:a")->found, ==, FP_FOUND_WITHIN);
  g_assert_cmpint (taking_finding (after, "own:b")->found, ==, FP_FOUND_WITHIN);
  g_assert_cmpint (taking_finding (after, "own:d")->found, ==, FP_FOUND_SHORT);
}

static void
test_all_none (void)
{
  g_autoptr (FpProject) project = church ();
  const OwnRule rule[] = { { "a", "measure=\"riser\" test=\"at-least\" low=\"100\" unit=\"mm\"", "required" } };
  g_autoptr (FpFindings) findings = held (project, rule, 1);
  g_autoptr (FpSettling) all = fp_settle_all (findings, FP_WEIGHT_CUSTOMARY, NULL);

  g_assert_null (all->project);
  g_assert_cmpuint (all->list->len, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/hindrance/range", test_range);
  g_test_add_func ("/hindrance/rules", test_rules);
  g_test_add_func ("/hindrance/reach", test_reach);
  g_test_add_func ("/hindrance/worse", test_worse);
  g_test_add_func ("/hindrance/no-say", test_no_say);
  g_test_add_func ("/hindrance/many", test_many);
  g_test_add_func ("/hindrance/sight", test_sight);
  g_test_add_func ("/hindrance/cancelled", test_cancelled);
  g_test_add_func ("/pairs/mended", test_mended);
  g_test_add_func ("/pairs/shared", test_shared);
  g_test_add_func ("/pairs/lesser", test_lesser);
  g_test_add_func ("/pairs/steps", test_steps);
  g_test_add_func ("/worse/definition", test_definition);
  g_test_add_func ("/settle-all/all", test_all);
  g_test_add_func ("/settle-all/none", test_all_none);
  return g_test_run ();
}
