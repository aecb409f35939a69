/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Findings: which rules speak, in what order and in whose units. */
#include "taking.h"

#include <math.h>
#include <string.h>

static FpProject *
church (void)
{
  FpProject *project = taking_church (FP_BOOKS_OLDER, FP_FACING_EAST, FP_CELEBRATION_LOW);

  taking_survey (&project, "pews", "pews", 0, -2000, NULL, 0);
  taking_add (&project, "rail", "rail", NULL, 0, 405, NULL, 0);
  taking_altar_group (&project, 2);
  return project;
}

static guint
count_rules (void)
{
  g_autoptr (GPtrArray) books = fp_rulebooks_built_in ();
  guint all = 0, n;

  for (guint b = 0; b < books->len; b++)
    {
      fp_rulebook_rules (g_ptr_array_index (books, b), &n);
      all += n;
    }
  return all;
}

/* --- order --------------------------------------------------------------- */

static void
test_order (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpFindings) findings = NULL;
  const FpFinding *finding;
  guint n, counted[FP_N_WEIGHTS] = { 0 };
  gboolean past = FALSE;

  church_param (&project, "nave", "level", 800); /* required: above the altar */
  church_param (&project, "altar", "height", 800); /* recommended */
  church_param (&project, "steps", "count", 2);  /* customary */
  findings = taking_findings (project, FALSE);
  finding = fp_findings_get (findings, &n);
  g_assert_cmpuint (n, ==, count_rules ());

  for (guint i = 0; i < n; i++)
    {
      g_assert_nonnull (finding[i].measured);
      g_assert_nonnull (finding[i].limit);
      if (finding[i].found != FP_FOUND_SHORT)
        {
          past = TRUE;
          continue;
        }
      g_assert_false (past);
      g_assert_cmpuint (finding[i].times, >, 0);
      counted[finding[i].rule->weight]++;
      if (i > 0)
        g_assert_cmpint (finding[i - 1].rule->weight, <=, finding[i].rule->weight);
    }
  for (int w = 0; w < FP_N_WEIGHTS; w++)
    {
      g_assert_cmpuint (counted[w], >, 0);
      g_assert_cmpuint (fp_findings_short (findings, (FpWeight) w), ==, counted[w]);
    }
}

/* --- waiting and apart --------------------------------------------------- */

static void
test_waiting (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpFindings) early = taking_findings (project, FALSE);
  g_autoptr (FpFindings) late = taking_findings (project, TRUE);
  guint n;
  const FpFinding *finding = fp_findings_get (early, &n);

  for (guint i = 0; i < n; i++)
    {
      gboolean sight = fp_measure_find (finding[i].rule->measure)->needs_sight;

      if (finding[i].found == FP_FOUND_WAITING)
        g_assert_true (sight);
      else if (finding[i].found != FP_FOUND_APART)
        g_assert_false (sight);
    }
  g_assert_cmpstr (fp_found_id (taking_finding (early, "sight:mensa-seen")->found), ==, "waiting");
  finding = fp_findings_get (late, &n);
  for (guint i = 0; i < n; i++)
    g_assert_cmpint (finding[i].found, !=, FP_FOUND_WAITING);
  g_assert_true (g_str_has_suffix (taking_finding (late, "sight:mensa-seen")->measured,
                                   " of 80 places see half of it or more, sitting)"));
}

static void
test_apart (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpFindings) findings = taking_findings (project, FALSE);
  const FpFinding *finding = taking_finding (findings, "newer-form:ambo-there");

  g_assert_cmpstr (fp_found_id (finding->found), ==, "apart");
  g_assert_cmpstr (finding->detail, ==, "for the newer form");
  g_assert_true (isnan (finding->value));
  finding = taking_finding (findings, "older-form:candles-solemn");
  g_assert_cmpstr (finding->detail, ==, "the brief does not ask for solemn Mass");

  {
    g_autoptr (FpScene) scene = fp_scene_new (project, 0);
    const double back = fp_scene_placed (scene, NULL)[fp_scene_find (scene, "altar")].plan.y1;

    taking_wall (&project, "east", -5000, back, 5000, back);
  }
  {
    g_autoptr (FpFindings) walled = taking_findings (project, FALSE);

    finding = taking_finding (walled, "either-form:altar-walk-round");
    g_assert_cmpstr (finding->detail, ==, "for a freestanding altar");
  }

  taking_brief (&project, FP_BOOKS_BOTH, FP_FACING_EAST, FP_CELEBRATION_LOW | FP_CELEBRATION_SOLEMN);
  g_assert_cmpstr (fp_found_id (taking_found (project, "newer-form:ambo-there")), ==, "short");
  g_assert_cmpstr (fp_found_id (taking_found (project, "older-form:sedilia-seats")), ==, "short");
}

/* An empty project has nothing to measure, and nothing is short but what is wanted and not there. */
static void
test_empty (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  g_autoptr (FpFindings) findings = taking_findings (project, TRUE);
  guint n;
  const FpFinding *finding = fp_findings_get (findings, &n);

  for (guint i = 0; i < n; i++)
    if (finding[i].found == FP_FOUND_WITHIN || finding[i].found == FP_FOUND_SHORT)
      g_assert_cmpstr (finding[i].rule->measure, ==, "altars");
  g_assert_cmpstr (finding[0].title, ==, "There is no altar");
  g_assert_cmpuint (fp_findings_short (findings, FP_WEIGHT_REQUIRED), ==, 0);
}

/* --- words --------------------------------------------------------------- */

static void
test_words (void)
{
  g_autoptr (FpProject) project = church ();

  church_param (&project, "steps", "riser", 190);
  {
    g_autoptr (FpFindings) findings = taking_findings (project, FALSE);
    const FpFinding *finding = taking_finding (findings, "step-and-fall:riser-code");

    g_assert_cmpstr (finding->measured, ==, "190 mm");
    g_assert_cmpstr (finding->limit, ==, "from 102 mm to 178 mm (4 to 7 in)");
    finding = taking_finding (findings, "step-and-fall:riser-schulte");
    g_assert_cmpstr (finding->limit, ==, "from 137 mm to 168 mm (printed: about 6 in)");
    finding = taking_finding (findings, "older-form:altar-height");
    g_assert_cmpstr (finding->limit, ==, "from 970 mm to 1\u202f000 mm");
    finding = taking_finding (findings, "older-form:steps-odd");
    g_assert_cmpstr (finding->measured, ==, "3 steps");
    g_assert_cmpstr (finding->limit, ==, "an odd number of steps");
    g_assert_true (finding->has_at);
    finding = taking_finding (findings, "older-form:crucifix-middle");
    g_assert_cmpstr (finding->limit, ==, "in the middle");
  }
  taking_units (&project, FP_UNITS_IMPERIAL);
  {
    g_autoptr (FpFindings) findings = taking_findings (project, FALSE);
    const FpFinding *finding = taking_finding (findings, "step-and-fall:riser-code");
    g_autofree char *shown = fp_length_format_unit (190, FP_UNITS_IMPERIAL);

    g_assert_cmpstr (finding->measured, ==, shown);
    g_assert_cmpstr (finding->limit, ==, "from 4\" to 7\"");
    finding = taking_finding (findings, "older-form:altar-height");
    g_assert_true (g_str_has_suffix (finding->limit, " (97 to 100 cm)"));
  }
}

static void
assert_measured (const FpProject *project, const char *rule, const char *found, const char *measured)
{
  g_autoptr (FpFindings) findings = taking_findings (project, FALSE);
  const FpFinding *finding = taking_finding (findings, rule);

  g_assert_cmpstr (fp_found_id (finding->found), ==, found);
  g_assert_cmpstr (finding->measured, ==, measured);
}

/* A shortfall is never rounded away: 3600 of 11000 is 32.7 %, and a third is asked for. */
static void
test_hidden_shortfall (void)
{
  g_autoptr (FpProject) project = church ();

  taking_wall (&project, "gospel-wall", -5500, 0, -5500, 10000);
  taking_wall (&project, "epistle-wall", 5500, 10000, 5500, 0);
  church_param (&project, "altar", "length", 3600);
  assert_measured (project, "older-form:altar-for-sanctuary", "short", "32.7 %");
  church_param (&project, "altar", "length", 3666.3);
  assert_measured (project, "older-form:altar-for-sanctuary", "short", "33.33 %"); /* a third would be "33.3 %", too */
  church_param (&project, "altar", "length", 3700);
  assert_measured (project, "older-form:altar-for-sanctuary", "within", "34 %");
  church_param (&project, "altar", "length", 3300);
  assert_measured (project, "older-form:altar-for-sanctuary", "short", "30 %");

  church_param (&project, "altar", "height", 969.8);
  assert_measured (project, "older-form:altar-height", "short", "969.8 mm"); /* from 97 cm */
  church_param (&project, "altar", "height", 969.4);
  assert_measured (project, "older-form:altar-height", "short", "969 mm");
  church_param (&project, "altar", "height", 1000.04);
  assert_measured (project, "older-form:altar-height", "short", "1000.04 mm"); /* to 100 cm */
  taking_units (&project, FP_UNITS_IMPERIAL);
  assert_measured (project, "older-form:altar-height", "short", "3' 3 3/8\" (1000.04 mm)");
}

/* Two blocks that are too close: the worse is shown, and that there is another. */
static void
test_several (void)
{
  g_autoptr (FpProject) project = church ();

  church_param (&project, "pews", "spacing", 700);
  taking_survey (&project, "pews", "more", -3000, -15000, "spacing", 650);
  {
    g_autoptr (FpFindings) findings = taking_findings (project, FALSE);
    const FpFinding *finding = taking_finding (findings, "seating-and-ways-out:row-spacing-least");

    g_assert_cmpuint (finding->times, ==, 2);
    g_assert_cmpfloat (finding->value, ==, 650);
    g_assert_cmpstr (finding->detail, ==, "Pews, Gospel side; Pews");
    g_assert_cmpint (finding->owner, ==, fp_scene_find (fp_findings_scene (findings), "more"));
  }
}

/* --- a parish's own book ------------------------------------------------- */

static void
test_own_book (void)
{
  static const char xml[]
    = "<rulebook xmlns='urn:footpace:rulebook:1' id='own' title='Own' edition='1'>"
      "<rule id='r' measure='mensa-length' test='at-least' low='3' unit='m' weight='required'>"
      "<title>Short</title><source>Own</source></rule></rulebook>";
  g_autoptr (FpProject) project = church ();
  g_autoptr (GPtrArray) books = fp_rulebooks_built_in ();
  g_autoptr (FpFindings) findings = NULL;
  guint n, before = count_rules ();

  g_ptr_array_add (books, fp_rulebook_parse (xml, strlen (xml), "own", NULL));
  findings = fp_findings_of (project, 0, books, NULL);
  g_assert_cmpuint (fp_findings_short (findings, FP_WEIGHT_REQUIRED), ==, 1);
  g_assert_cmpstr (fp_findings_get (findings, &n)->rule->id, ==, "r");
  g_assert_cmpuint (n, ==, before + 1);
}

static void
test_cancelled (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (GCancellable) cancel = g_cancellable_new ();

  g_cancellable_cancel (cancel);
  g_assert_null (fp_findings_of (project, 0, NULL, cancel));
}

/* --- threads ------------------------------------------------------------- */

typedef struct { const FpProject *project; guint shorts; } Work;

static gpointer
work (gpointer data)
{
  Work *self = data;

  for (int i = 0; i < 5; i++)
    {
      g_autoptr (FpFindings) findings = taking_findings (self->project, FALSE);

      self->shorts = fp_findings_short (findings, FP_WEIGHT_RECOMMENDED);
    }
  return NULL;
}

/* Any thread may take findings of one project. */
static void
test_threads (void)
{
  g_autoptr (FpProject) project = church (), same = church ();
  Work share[4], alone = { same, 0 };
  GThread *thread[4];

  work (&alone);
  g_assert_cmpuint (alone.shorts, >, 0);
  for (guint i = 0; i < G_N_ELEMENTS (thread); i++)
    {
      share[i] = (Work) { project, 0 };
      thread[i] = g_thread_new ("findings", work, &share[i]);
    }
  for (guint i = 0; i < G_N_ELEMENTS (thread); i++)
    g_thread_join (thread[i]);
  for (guint i = 0; i < G_N_ELEMENTS (thread); i++)
    g_assert_cmpuint (share[i].shorts, ==, alone.shorts);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/findings/order", test_order);
  g_test_add_func ("/findings/waiting", test_waiting);
  g_test_add_func ("/findings/apart", test_apart);
  g_test_add_func ("/findings/empty", test_empty);
  g_test_add_func ("/findings/words", test_words);
  g_test_add_func ("/findings/hidden-shortfall", test_hidden_shortfall);
  g_test_add_func ("/findings/several", test_several);
  g_test_add_func ("/findings/own-book", test_own_book);
  g_test_add_func ("/findings/cancelled", test_cancelled);
  g_test_add_func ("/findings/threads", test_threads);
  return g_test_run ();
}
