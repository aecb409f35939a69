/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a remedy does besides: what else it settles, what it takes away, what is lost to sight, and what it does to others.
 * The rules are made for the purpose; the sizes are of the kinds: a riser of 152 mm, three steps, a tread of 305. */
#include "own-rules.h"

#include "footpace/remedy.h"

#include <math.h>
#include <string.h>

static FpProject *
church (void)
{
  return taking_church (FP_BOOKS_OLDER, FP_FACING_EAST, FP_CELEBRATION_LOW);
}

static FpProject *
church_with_gate (double gate)
{
  FpProject *project = church ();

  taking_add (&project, "rail", "rail", NULL, 0, 405, "gate", gate);
  return project;
}

static guint
index_of (const FpFindings *findings, const char *id)
{
  guint n;
  const FpFinding *finding = fp_findings_get (findings, &n);

  for (guint i = 0; i < n; i++)
    if (g_str_equal (finding[i].rule->id, id))
      return i;
  g_error ("no rule %s", id);
}

static gboolean
settles (const FpRemedy *remedy, guint finding)
{
  for (guint i = 0; i < remedy->n_settles; i++)
    if (remedy->settles[i] == finding)
      return TRUE;
  return FALSE;
}

/* --- more of the same change --------------------------------------------------------- */

/* The widths of the norms for a gate: 32 in, 36 in (A117.1-2017, 403.5.1, from memory), and two abreast. */
static const OwnRule three_widths[] = {
  { "a", "measure=\"gate-clear\" test=\"at-least\" low=\"815\" unit=\"mm\"", "required" },
  { "b", "measure=\"gate-clear\" test=\"at-least\" low=\"915\" unit=\"mm\"", "required" },
  { "c", "measure=\"gate-clear\" test=\"at-least\" low=\"1000\" unit=\"mm\"", "customary" },
};

static void
test_further (void)
{
  g_autoptr (FpProject) project = church_with_gate (700);
  g_autoptr (FpFindings) findings = own_held (project, three_widths, 3, FALSE);
  const FpFinding *a = taking_finding (findings, "own:a");
  g_autofree char *words = NULL;
  FpRemedy remedy, further;

  g_assert_true (fp_remedy_find (findings, a, NULL, &remedy, NULL));
  g_assert_cmpfloat (remedy.change[0].value, ==, 815);
  g_assert_cmpuint (remedy.n_settles, ==, 0);
  /* Of those that are required, and of all. */
  g_assert_true (fp_remedy_further (findings, a, &remedy, FP_WEIGHT_REQUIRED, NULL, &further));
  g_assert_cmpfloat (further.change[0].value, ==, 915);
  g_assert_true (fp_remedy_is_little_more (&further, &remedy));
  g_assert_true (fp_remedy_further (findings, a, &remedy, FP_WEIGHT_CUSTOMARY, NULL, &further));
  g_assert_cmpfloat (further.change[0].value, ==, 1000);
  g_assert_cmpuint (further.n_settles, ==, 2);
  g_assert_true (settles (&further, index_of (findings, "b")) && settles (&further, index_of (findings, "c")));
  g_assert_false (fp_remedy_is_little_more (&further, &remedy));
  words = fp_remedy_further_words (&further, findings);
  g_assert_cmpstr (words, ==, "or to 1\u202f000 mm, which also settles “Of b” and “Of c”");
  /* The last of them is settled with all others, and there is nothing farther. */
  g_assert_true (fp_remedy_find (findings, taking_finding (findings, "own:c"), NULL, &remedy, NULL));
  g_assert_cmpuint (remedy.n_settles, ==, 2);
  g_assert_false (fp_remedy_further (findings, taking_finding (findings, "own:c"), &remedy, FP_WEIGHT_CUSTOMARY, NULL, &further));
}

/* Not farther than what would be worse. */
static void
test_no_further (void)
{
  const OwnRule rule[] = { three_widths[0], three_widths[2],
                           { "d", "measure=\"gate-clear\" test=\"at-most\" high=\"900\" unit=\"mm\"", "customary" } };
  g_autoptr (FpProject) project = church_with_gate (700);
  g_autoptr (FpFindings) findings = own_held (project, rule, 3, FALSE);
  FpRemedy remedy, further;

  g_assert_true (fp_remedy_find (findings, taking_finding (findings, "own:a"), NULL, &remedy, NULL));
  g_assert_false (fp_remedy_further (findings, taking_finding (findings, "own:a"), &remedy, FP_WEIGHT_CUSTOMARY, NULL, &further));
}

/* One gate is not widened three times. */
static void
test_settled_at_once (void)
{
  g_autoptr (FpProject) project = church_with_gate (700);
  g_autoptr (FpFindings) findings = own_held (project, three_widths, 3, FALSE);
  g_autoptr (FpSettling) all = fp_settle_all (findings, FP_WEIGHT_CUSTOMARY, NULL);

  g_assert_cmpuint (all->n_settled, ==, 3);
  g_assert_cmpstr (g_array_index (all->list, FpSettled, 0).words, ==,
                   "Communion rail: Gate from 700 mm to 1\u202f000 mm; also settles “Of b” and “Of c”");
  for (guint i = 1; i < 3; i++)
    g_assert_cmpstr (g_array_index (all->list, FpSettled, i).words, ==, "Settled by what settled another.");
}

/* --- what vanishes ------------------------------------------------------------------- */

/* One step has no tread: that is no worse, unless it was short. */
static void
test_vanished (void)
{
  const OwnRule rule[] = { { "a", "measure=\"altar-steps\" test=\"at-most\" high=\"1\"", "required" },
                           { "b", "measure=\"tread\" test=\"at-least\" low=\"280\" unit=\"mm\"", "required" } };
  g_autoptr (FpProject) project = church (), next = NULL;
  g_autoptr (FpFindings) findings = own_held (project, rule, 2, FALSE), after = NULL;
  FpRemedy remedy;

  g_assert_true (fp_remedy_find (findings, taking_finding (findings, "own:a"), NULL, &remedy, NULL));
  g_assert_cmpstr (remedy.change[0].param->id, ==, "count");
  g_assert_cmpuint (remedy.n_worse, ==, 0);
  next = fp_remedy_make (&remedy, fp_findings_scene (findings), NULL);
  after = own_held (next, rule, 2, FALSE);
  g_assert_cmpint (taking_finding (after, "own:b")->found, ==, FP_FOUND_NOTHING);
  {
    /* Nobody said by what. */
    g_autoptr (GArray) worse = fp_findings_made_worse (findings, after, NULL);

    g_assert_cmpuint (worse->len, ==, 1);
  }
}

/* A gate that is closed has no width, but there was to be one. */
static void
test_taken_away (void)
{
  g_autoptr (FpProject) project = church_with_gate (1100), closed = NULL;
  g_autoptr (FpFindings) before = own_held (project, three_widths, 1, FALSE), after = NULL;
  const FpKind *kind = fp_kind_find ("rail");
  const FpRemedy by = { .change = { { .item = g_intern_string ("rail"), .param = &kind->params[fp_kind_param_index (kind, "gate")] } },
                        .n_changes = 1 };
  g_autoptr (GArray) worse = NULL;

  closed = fp_remedy_make (&by, fp_findings_scene (before), NULL);
  after = own_held (closed, three_widths, 1, FALSE);
  g_assert_cmpint (taking_finding (before, "own:a")->found, ==, FP_FOUND_WITHIN);
  g_assert_cmpint (taking_finding (after, "own:a")->found, ==, FP_FOUND_NOTHING);
  worse = fp_findings_made_worse (before, after, &by);
  g_assert_cmpuint (worse->len, ==, 1);
}

/* What has vanished is not told as settled. */
static void
test_vanished_is_not_settled (void)
{
  const OwnRule rule[] = { { "a", "measure=\"altar-steps\" test=\"at-most\" high=\"1\"", "required" },
                           { "b", "measure=\"tread\" test=\"at-least\" low=\"700\" unit=\"mm\"", "customary" } };
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpFindings) findings = own_held (project, rule, 2, FALSE);
  g_autoptr (FpSettling) all = fp_settle_all (findings, FP_WEIGHT_CUSTOMARY, NULL);

  g_assert_cmpuint (all->list->len, ==, 2);
  g_assert_true (g_array_index (all->list, FpSettled, 0).settled);
  g_assert_false (g_array_index (all->list, FpSettled, 1).settled);
  g_assert_cmpuint (all->n_settled, ==, 1);
}

/* --- places ---------------------------------------------------------------------------- */

static FpProject *
church_with_pews (double rows)
{
  FpProject *project = church ();

  taking_survey (&project, "pews", "pews", 0, -2000, "rows", rows);
  return project;
}

static guint
places (const FpProject *project)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  guint n;

  fp_people_places (people, &n);
  return n;
}

/* A row fewer does it, and so do rows that stand nearer to the altar: nobody is sent away. */
static void
test_keeps_places (void)
{
  g_autoptr (FpProject) project = church_with_pews (14), next = NULL;
  const double farthest = taking_value (project, "farthest-place");
  g_autofree char *held = g_strdup_printf ("measure=\"farthest-place\" test=\"at-most\" high=\"%.3f\" unit=\"m\"", farthest / 1e3 - 0.4);
  const OwnRule rule[] = { { "a", held, "customary" } };
  g_autoptr (FpFindings) findings = own_held (project, rule, 1, FALSE);
  FpRemedy remedy;

  g_assert_true (fp_remedy_find (findings, taking_finding (findings, "own:a"), NULL, &remedy, NULL));
  g_assert_cmpuint (remedy.places_lost, ==, 0);
  next = fp_remedy_make (&remedy, fp_findings_scene (findings), NULL);
  g_assert_cmpuint (places (next), ==, places (project));
}

/* Rows of one seat fewer are told to lose them; of four, which are more than a quarter of the places, it is not offered. */
static void
test_loses_places (void)
{
  g_autoptr (FpProject) project = church_with_pews (4), next = NULL;
  double seats;

  church_param (&project, "pews", "length", 6400); /* of 14 seats of 457 mm */
  seats = taking_value (project, "row-seats");
  g_assert_cmpfloat (seats, ==, 14);

  for (guint many = 0; many < 2; many++)
    {
      g_autofree char *held = g_strdup_printf ("measure=\"row-seats\" test=\"at-most\" high=\"%g\"", many ? seats - 4 : seats - 1);
      const OwnRule rule[] = { { "a", held, "required" } };
      g_autoptr (FpFindings) findings = own_held (project, rule, 1, FALSE);
      g_autofree char *words = NULL, *lost = NULL;
      FpRemedy remedy;
      FpHindrance why;

      g_assert_true (fp_remedy_find (findings, taking_finding (findings, "own:a"), NULL, &remedy, &why) == !many);
      words = many ? fp_hindrance_words (&why, findings) : fp_remedy_words (&remedy, findings);
      g_test_message ("%s", words);
      if (many)
        {
          g_assert_cmpint (why.how, ==, FP_HINDRANCE_PLACES);
          g_assert_nonnull (strstr (words, " would settle it, but take away "));
          continue;
        }
      next = fp_remedy_make (&remedy, fp_findings_scene (findings), NULL);
      g_assert_cmpuint (remedy.places_lost, ==, places (project) - places (next));
      g_assert_cmpuint (remedy.places_lost, >, 0);
      lost = g_strdup_printf ("; loses %u places", remedy.places_lost);
      g_assert_nonnull (strstr (words, lost));
    }
}

/* --- sight ------------------------------------------------------------------------------ */

/* A riser that is a little lower is a little less to look up to; where much is lost, that is worse. */
static void
test_dims (void)
{
  const OwnRule rule[] = { { "a", "measure=\"riser\" test=\"at-most\" high=\"150\" unit=\"mm\"", "required" },
                           { "b", "measure=\"mensa-mean\" test=\"at-least\" low=\"99.9\" unit=\"%\"", "required" } };
  static const struct { double riser; gboolean little; } cases[] = { { 153, TRUE }, { 250, FALSE } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (FpProject) project = church_with_pews (8);
      g_autoptr (FpFindings) before = NULL, after = NULL;
      g_autoptr (GArray) worse = NULL;
      double lost;

      church_param (&project, "steps", "riser", cases[i].riser);
      before = own_held (project, rule, 2, TRUE);
      church_param (&project, "steps", "riser", 149);
      after = own_held (project, rule, 2, TRUE);
      worse = fp_findings_made_worse (before, after, NULL);
      lost = fp_findings_sight_lost (before, after, index_of (before, "b"));
      g_test_message ("lost %g of %g", lost, taking_finding (before, "own:b")->value);
      g_assert_cmpfloat (lost, >, 0.0);
      g_assert_cmpfloat_with_epsilon (lost, taking_finding (before, "own:b")->value - taking_finding (after, "own:b")->value, 1e-12);
      g_assert_true ((lost < FP_REMEDY_SIGHT_LOST) == cases[i].little);
      g_assert_cmpuint (worse->len, ==, cases[i].little ? 0 : 1);
    }
}

static void
test_dims_are_told (void)
{
  const OwnRule rule[] = { { "a", "measure=\"riser\" test=\"at-most\" high=\"150\" unit=\"mm\"", "required" },
                           { "b", "measure=\"mensa-mean\" test=\"at-least\" low=\"99.9\" unit=\"%\"", "required" } };
  g_autoptr (FpProject) project = church_with_pews (8);
  g_autoptr (FpFindings) findings = own_held (project, rule, 2, TRUE);
  g_autofree char *words = NULL;
  FpRemedy remedy;

  g_assert_true (fp_remedy_find (findings, taking_finding (findings, "own:a"), NULL, &remedy, NULL));
  words = fp_remedy_words (&remedy, findings);
  g_test_message ("%s", words);
  g_assert_cmpstr (remedy.change[0].param->id, ==, "riser");
  g_assert_cmpuint (remedy.n_dims, ==, 1);
  g_assert_nonnull (strstr (words, "; then on average "));
  g_assert_nonnull (strstr (words, " less is seen (“Of b”)"));
}

/* --- other alternatives ------------------------------------------------------------------ */

/* The rows were measured, and stand in both; in the second, where the celebrant faces the people, another rule holds them. */
static void
test_others (void)
{
  const OwnRule rule[] = { { "a", "measure=\"row-spacing\" test=\"at-least\" low=\"900\" unit=\"mm\"", "required" },
                           { "b", "measure=\"row-spacing\" test=\"at-most\" high=\"880\" unit=\"mm\" facing=\"people\"", "customary" } };
  const FpFacing people = FP_FACING_PEOPLE;

  for (guint others = 0; others < 2; others++)
    {
      g_autoptr (FpProject) project = church (), one = NULL, two = NULL;
      g_autoptr (FpFindings) findings = NULL;
      g_autofree char *words = NULL;
      FpRemedy remedy;
      FpHindrance why;

      taking_survey (&project, "pews", "pews", 0, -2000, "spacing", 870);
      one = fp_project_with_new_alternative (project, 0, "other", "The other", NULL);
      two = fp_project_with_alternative_facing (one, 1, &people, NULL);
      findings = own_held (others ? two : one, rule, 2, FALSE);
      g_assert_true (fp_remedy_find (findings, taking_finding (findings, "own:a"), NULL, &remedy, &why) == !others);
      words = others ? fp_hindrance_words (&why, findings) : fp_remedy_words (&remedy, findings);
      if (others)
        g_assert_cmpuint (why.other, ==, 2);
      g_assert_cmpstr (words, ==, others ? "Pews: Spacing of rows from 870 mm to 900 mm would settle it, but “Of b” (customary) becomes "
                                           "worse in “The other”, of which this is the survey too."
                                         : "Pews: Spacing of rows from 870 mm to 900 mm; this changes the survey, for every "
                                           "alternative, and makes none of the others worse");
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/besides/further", test_further);
  g_test_add_func ("/besides/no-further", test_no_further);
  g_test_add_func ("/besides/settled-at-once", test_settled_at_once);
  g_test_add_func ("/besides/vanished", test_vanished);
  g_test_add_func ("/besides/taken-away", test_taken_away);
  g_test_add_func ("/besides/vanished-is-not-settled", test_vanished_is_not_settled);
  g_test_add_func ("/besides/keeps-places", test_keeps_places);
  g_test_add_func ("/besides/loses-places", test_loses_places);
  g_test_add_func ("/besides/dims", test_dims);
  g_test_add_func ("/besides/dims-are-told", test_dims_are_told);
  g_test_add_func ("/besides/others", test_others);
  return g_test_run ();
}
