/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Norms: books that are not followed, another law, a choice where sources disagree, limits of the parish's own, and books
 * that the project brings. */
#include "taking.h"

#include <math.h>
#include <string.h>

static void
say (FpProject **project, const FpNorms *norms)
{
  g_autoptr (GError) error = NULL;
  FpProject *next = fp_project_with_norms (*project, norms, &error);

  g_assert_no_error (error);
  fp_project_unref (*project);
  *project = next;
}

static FpProject *
church (void)
{
  return taking_church (FP_BOOKS_OLDER, FP_FACING_EAST, FP_CELEBRATION_LOW);
}

static const FpFinding *
finding_in (const FpFindings *findings, const char *book, const char *rule)
{
  guint n;
  const FpFinding *all = fp_findings_get (findings, &n);

  for (guint i = 0; i < n; i++)
    if (strcmp (fp_rulebook_id (all[i].book), book) == 0 && strcmp (all[i].rule->id, rule) == 0)
      return &all[i];
  return NULL;
}

static FpFindings *
findings_of (const FpProject *project)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  const FpMeasuring of = { scene, people, fp_levels (people), NULL };

  return fp_findings_new (&of, NULL);
}

/* IBC 2015, 1011.5.2: risers 4 to 7 in: a riser of 150 mm is within.  A parish that wants 120 mm finds it short, and why. */
static void
test_limit (void)
{
  g_autoptr (FpProject) project = church ();
  FpNormChange change = { "step-and-fall", "riser-code", FALSE, NAN, 4.7, "Our elders ask for it." };
  const FpNorms norms = { .change = &change, .n_changes = 1 };
  g_autoptr (FpFindings) before = findings_of (project), after = NULL;
  const FpFinding *one = finding_in (before, "step-and-fall", "riser-code");

  g_assert_cmpint (one->found, ==, FP_FOUND_WITHIN);
  g_assert_null (one->otherwise);
  say (&project, &norms);
  after = findings_of (project);
  one = finding_in (after, "step-and-fall", "riser-code");
  g_assert_cmpint (one->found, ==, FP_FOUND_SHORT);
  g_assert_cmpfloat (one->rule->high, ==, 4.7);
  g_assert_cmpfloat (one->rule->low, ==, 4);
  g_assert_nonnull (strstr (one->limit, "4.7 in"));
  g_assert_nonnull (strstr (one->otherwise, "7 in"));
  g_assert_nonnull (strstr (one->otherwise, "Our elders ask for it."));
  g_assert_cmpuint (fp_findings_amiss (after)->len, ==, 0);
}

/* A limit that the test does not take, or that leaves nothing, is told and the rule is held as printed. */
static void
test_limit_amiss (void)
{
  static const FpNormChange changes[] = {
    { "step-and-fall", "tread-code", FALSE, NAN, 20, "Why not" },
    { "step-and-fall", "riser-code", FALSE, 8, NAN, "Why not" },
    { "step-and-fall", "no-such-rule", TRUE, NAN, NAN, "Why not" },
    { "newer-form", "tabernacle-apart", FALSE, 7, NAN, "Neither yes nor no" },
  };
  g_autoptr (FpProject) project = church ();
  const FpNorms norms = { .change = changes, .n_changes = G_N_ELEMENTS (changes) };
  g_autoptr (FpFindings) findings = NULL;

  say (&project, &norms);
  findings = findings_of (project);
  g_assert_cmpuint (fp_findings_amiss (findings)->len, ==, 4);
  g_assert_cmpfloat (finding_in (findings, "newer-form", "tabernacle-apart")->rule->low, <=, 1);
  g_assert_cmpfloat (finding_in (findings, "step-and-fall", "tread-code")->rule->low, ==, 11);
  g_assert_cmpfloat (finding_in (findings, "step-and-fall", "riser-code")->rule->low, ==, 4);
  g_assert_null (finding_in (findings, "step-and-fall", "riser-code")->otherwise);
}

static void
test_aside_and_without (void)
{
  static const FpNormChange aside = { "step-and-fall", "riser-code", TRUE, NAN, NAN, "An old altar, kept as it is." };
  static const char *const without[] = { "rail" };
  g_autoptr (FpProject) project = church ();
  const FpNorms norms = { .change = &aside, .n_changes = 1, .without = without, .n_without = 1 };
  g_autoptr (FpFindings) findings = NULL;
  guint n;
  const FpFinding *all;

  say (&project, &norms);
  findings = findings_of (project);
  all = fp_findings_get (findings, &n);
  for (guint i = 0; i < n; i++)
    if (strcmp (fp_rulebook_id (all[i].book), "rail") == 0)
      {
        g_assert_cmpint (all[i].found, ==, FP_FOUND_APART);
        g_assert_cmpstr (all[i].detail, ==, "the parish does not follow this book");
      }
  g_assert_cmpint (finding_in (findings, "step-and-fall", "riser-code")->found, ==, FP_FOUND_APART);
  g_assert_nonnull (strstr (finding_in (findings, "step-and-fall", "riser-code")->detail, "An old altar, kept as it is."));
}

/* --- books of the project's own ------------------------------------------------------- */

#define BOOK(id, rules) "<rulebook xmlns='urn:footpace:rulebook:1' id='" id "' title='Diocese' edition='1'>" rules "</rulebook>"
#define TEXTS "<title>T</title><source>Diocese</source></rule>"

static void
test_own (void)
{
  static const FpNormBook own[] = {
    { "good.xml", BOOK ("diocese", "<rule id='r' measure='riser' test='at-most' high='100' unit='mm' weight='recommended'>" TEXTS) },
    { "broken.xml", "<rulebook\n<" },
    { "taken.xml", BOOK ("rail", "<rule id='r' measure='riser' test='at-most' high='100' unit='mm' weight='recommended'>" TEXTS) },
    { "half.xml", BOOK ("half", "<rule id='r' measure='riser' test='at-most' high='100' unit='mm' weight='recommended'>" TEXTS
                                "\n<rule id='s' measure='no-such' test='odd' weight='recommended'>" TEXTS) },
  };
  g_autoptr (FpProject) project = church ();
  const FpNorms norms = { .own = own, .n_own = G_N_ELEMENTS (own) };
  g_autoptr (FpFindings) findings = NULL, again = NULL;
  const GPtrArray *amiss;

  say (&project, &norms);
  findings = findings_of (project);
  amiss = fp_findings_amiss (findings);
  g_assert_cmpint (finding_in (findings, "diocese", "r")->found, ==, FP_FOUND_SHORT);
  g_assert_null (finding_in (findings, "half", "r")); /* never half used */
  g_assert_cmpuint (amiss->len, ==, 3);
  g_assert_nonnull (strstr (amiss->pdata[0], "broken.xml:2"));
  g_assert_nonnull (strstr (amiss->pdata[1], "give this one an id of its own"));
  g_assert_nonnull (strstr (amiss->pdata[2], "half.xml:2"));
  again = findings_of (project); /* which are read once */
  g_assert_cmpuint (fp_findings_amiss (again)->len, ==, 3);
}

/* What ends as a question is not ended again. */
static void
test_own_meant (void)
{
  static const FpNormBook own
    = { "near.xml", BOOK ("near", "<rule id='r' measure='risr' test='at-most' high='100' unit='mm' weight='recommended'>" TEXTS) };
  g_autoptr (FpProject) project = church ();
  const FpNorms norms = { .own = &own, .n_own = 1 };
  g_autoptr (FpFindings) findings = NULL;

  say (&project, &norms);
  findings = findings_of (project);
  g_assert_cmpuint (fp_findings_amiss (findings)->len, ==, 1);
  g_assert_true (g_str_has_suffix (fp_findings_amiss (findings)->pdata[0], "is “riser” meant?"));
}

/* Of rules for one law, those of another are set apart; where it is not said, all are held. */
static void
test_law (void)
{
  static const FpNormBook own = {
    "laws.xml", BOOK ("laws",
                      "<rule id='us' measure='riser' test='at-most' high='7' unit='in' weight='recommended' jurisdictions='us'>" TEXTS
                      "<rule id='uk' measure='riser' test='at-most' high='170' unit='mm' weight='recommended' jurisdictions='uk eu'>" TEXTS)
  };
  static const struct { FpJurisdiction law; gboolean us, uk; } cases[] = {
    { FP_JURISDICTION_UNSAID, TRUE, TRUE }, { FP_JURISDICTION_US, TRUE, FALSE },  { FP_JURISDICTION_UK, FALSE, TRUE },
    { FP_JURISDICTION_EU, FALSE, TRUE },    { FP_JURISDICTION_OTHER, FALSE, FALSE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (FpProject) project = church ();
      const FpNorms norms = { .jurisdiction = cases[i].law, .own = &own, .n_own = 1 };
      g_autoptr (FpFindings) findings = NULL;

      say (&project, &norms);
      findings = findings_of (project);
      g_assert_cmpint (finding_in (findings, "laws", "us")->found != FP_FOUND_APART, ==, cases[i].us);
      g_assert_cmpint (finding_in (findings, "laws", "uk")->found != FP_FOUND_APART, ==, cases[i].uk);
    }
}

/* Two authors of one matter: both are shown, and each tells of the other, until the parish goes by one. */
static void
test_matter (void)
{
  static const FpNormBook own = {
    "matter.xml", BOOK ("authors",
                        "<rule id='one' measure='riser' test='at-most' high='160' unit='mm' weight='customary' matter='height'>" TEXTS
                        "<rule id='other' measure='riser' test='at-most' high='140' unit='mm' weight='customary' matter='height'>" TEXTS)
  };
  static const FpNormChoice choice = { "height", "authors", "one" };
  g_autoptr (FpProject) project = church ();
  FpNorms norms = { .own = &own, .n_own = 1 };
  g_autoptr (FpFindings) both = NULL, chosen = NULL;

  say (&project, &norms);
  both = findings_of (project);
  g_assert_nonnull (strstr (finding_in (both, "authors", "one")->disagree, "140 mm"));
  g_assert_nonnull (strstr (finding_in (both, "authors", "other")->disagree, "160 mm"));
  g_assert_cmpint (finding_in (both, "authors", "one")->found, ==, FP_FOUND_WITHIN);
  g_assert_cmpint (finding_in (both, "authors", "other")->found, ==, FP_FOUND_SHORT); /* 130 mm would be as both have it */
  norms.choice = &choice;
  norms.n_choices = 1;
  say (&project, &norms);
  chosen = findings_of (project);
  g_assert_cmpint (finding_in (chosen, "authors", "one")->found, ==, FP_FOUND_WITHIN);
  g_assert_null (finding_in (chosen, "authors", "one")->disagree);
  g_assert_cmpint (finding_in (chosen, "authors", "other")->found, ==, FP_FOUND_APART);
}

/* Authors that leave no value for both: met as one has it, nothing is short; met as none has it, one is told. */
static void
test_matter_excluded (void)
{
  static const struct { const char *one, *other; gboolean one_short, other_short; } cases[] = {
    { "low='145' high='155'", "low='0' high='100'", FALSE, FALSE },
    { "low='160' high='170'", "low='0' high='100'", TRUE, FALSE },
    { "low='200' high='210'", "low='0' high='140'", FALSE, TRUE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *xml = g_strdup_printf (
        BOOK ("authors", "<rule id='one' measure='riser' test='between' %s unit='mm' weight='customary' matter='height'>" TEXTS
                         "<rule id='other' measure='riser' test='between' %s unit='mm' weight='customary' matter='height'>" TEXTS),
        cases[i].one, cases[i].other);
      const FpNormBook own = { "matter.xml", xml };
      const FpNorms norms = { .own = &own, .n_own = 1 };
      g_autoptr (FpProject) project = church ();
      g_autoptr (FpFindings) findings = NULL;

      say (&project, &norms);
      findings = findings_of (project);
      g_assert_cmpint (finding_in (findings, "authors", "one")->found == FP_FOUND_SHORT, ==, cases[i].one_short);
      g_assert_cmpint (finding_in (findings, "authors", "other")->found == FP_FOUND_SHORT, ==, cases[i].other_short);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/norms/limit", test_limit);
  g_test_add_func ("/norms/limit-amiss", test_limit_amiss);
  g_test_add_func ("/norms/aside-and-without", test_aside_and_without);
  g_test_add_func ("/norms/own", test_own);
  g_test_add_func ("/norms/own-meant", test_own_meant);
  g_test_add_func ("/norms/law", test_law);
  g_test_add_func ("/norms/matter", test_matter);
  g_test_add_func ("/norms/matter-excluded", test_matter_excluded);
  return g_test_run ();
}
