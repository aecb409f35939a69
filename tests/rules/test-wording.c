/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a finding says: in whose units, of how many of what, of which case, and where. */
#include "taking.h"

#include "measuring.h"
#include "printed-unit.h"

#include <stdio.h>
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

static void
assert_says (const FpProject *project, const char *rule, const char *title, const char *measured, const char *limit,
             const char *where)
{
  g_autoptr (FpFindings) findings = taking_findings (project, FALSE);
  const FpFinding *finding = taking_finding (findings, rule);

  if (title)
    g_assert_cmpstr (finding->title, ==, title);
  if (measured)
    g_assert_cmpstr (finding->measured, ==, measured);
  if (limit)
    g_assert_cmpstr (finding->limit, ==, limit);
  if (where)
    g_assert_cmpstr (finding->detail, ==, where);
}

/* --- whose units ----------------------------------------------------------- */

/* IBC 2015, 1011.5.2: 7 in, 102 to 178 mm; ASCE 7-22, as reported: 100 lb/sq ft, 4.79 kN/m2. */
static void
test_metric_first (void)
{
  g_autoptr (FpProject) project = church ();

  assert_says (project, "step-and-fall:riser-code", NULL, "152 mm", "from 102 mm to 178 mm (4 to 7 in)", NULL);
  assert_says (project, "step-and-fall:tread-code", NULL, NULL, "at least 279 mm (11 in)", NULL);
  assert_says (project, "step-and-fall:riser-schulte", NULL, NULL, "from 137 mm to 168 mm (printed: about 6 in)",
               NULL);
  assert_says (project, "step-and-fall:even-risers", NULL, NULL, "at most 9.5 mm (printed: 3/8 in)", NULL);
  assert_says (project, "older-form:high-altar-length", NULL, NULL, "at least 2\u202f700 mm (9 Baden feet)", NULL);
  assert_says (project, "older-form:altar-height", NULL, NULL, "from 970 mm to 1\u202f000 mm", NULL);
  assert_says (project, "floor-and-weight:altar-weight", NULL, NULL, "at most 4.79 kN/m² (100 lb/sq ft)", NULL);
  taking_add (&project, "credence", "credence", NULL, 3000, 8000, NULL, 0);
  assert_says (project, "either-form:credence-size", NULL, NULL, "at least 0.23 m² (360 sq in)", NULL);
}

static void
test_inches_first (void)
{
  g_autoptr (FpProject) project = church ();

  taking_units (&project, FP_UNITS_IMPERIAL);
  assert_says (project, "step-and-fall:tread-code", NULL, NULL, "at least 11\"", NULL);
  assert_says (project, "step-and-fall:riser-code", NULL, NULL, "from 4\" to 7\"", NULL);
  assert_says (project, "older-form:altar-height", NULL, NULL, "from 3' 2 3/16\" to 3' 3 3/8\" (97 to 100 cm)", NULL);
  assert_says (project, "older-form:high-altar-length", NULL, NULL, "at least 8' 10 5/16\" (9 Baden feet)", NULL);
  assert_says (project, "floor-and-weight:altar-weight", NULL, NULL, "at most 100 lb/sq ft", NULL);
  taking_add (&project, "credence", "credence", NULL, 3000, 8000, NULL, 0);
  assert_says (project, "either-form:credence-size", NULL, "360 sq in", "at least 360 sq in", NULL);
}

/* The pound of force is 0.45359237 kg × 9.80665 m/s2, so 4448.22 N are 1000 lb. */
static void
test_weight (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpFindings) metric = taking_findings (project, FALSE), inches = NULL;
  const FpFinding *finding = taking_finding (metric, "floor-and-weight:altar-weight");
  double kn = 0, m2 = 0, thousands = 0, lb = 0, sqft = 0;

  g_assert_true (g_str_has_suffix (finding->measured, " kN/m²"));
  g_assert_cmpint (sscanf (finding->detail, "Altar: about %lf kN with what stands on it, on %lf m²", &kn, &m2), ==, 2);
  taking_units (&project, FP_UNITS_IMPERIAL);
  inches = taking_findings (project, FALSE);
  finding = taking_finding (inches, "floor-and-weight:altar-weight");
  g_assert_true (g_str_has_suffix (finding->measured, " lb/sq ft"));
  /* Thousands stand apart by a narrow space. */
  g_assert_cmpint (sscanf (finding->detail, "Altar: about %lf\u202f%lf lb with what stands on it, on %lf sq ft", &thousands, &lb, &sqft),
                   ==, 3);
  lb += thousands * 1000;
  g_assert_cmpfloat_with_epsilon (lb / 1000 * 4.44822, kn, 0.06);
  g_assert_cmpfloat_with_epsilon (sqft * 0.09290304, m2, 0.02);
}

/* A share is told as one, with as many decimals as tell it from what is asked. */
static void
test_shares (void)
{
  g_autoptr (FpProject) project = church ();

  taking_seats (&project, 81); /* there are 80 */
  assert_says (project, "seating-and-ways-out:seats-wanted", NULL, "99 % (80 seats, 81 wanted)", NULL, NULL);
  taking_survey (&project, "pews", "more", -3000, -20000, "rows", 30);
  {
    g_autoptr (FpFindings) findings = taking_findings (project, FALSE);
    guint seats = 0;
    const FpFinding *finding = taking_finding (findings, "seating-and-ways-out:seats-wanted");

    g_assert_cmpint (sscanf (finding->measured, "%*s %% (%u of", &seats), ==, 1);
    taking_seats (&project, seats + 1);
  }
  {
    g_autoptr (FpFindings) findings = taking_findings (project, FALSE);

    g_assert_true (g_str_has_prefix (taking_finding (findings, "seating-and-ways-out:seats-wanted")->measured, "99.7 % ("));
  }
  church_param (&project, "nave", "fall", 0.0505);
  assert_says (project, "access:floor-level", NULL, "5.1 % (1:19.8)", "not steeper than 1:20 (5 %)", "Floor");
}

/* --- how many of what ------------------------------------------------------ */

static void
test_counts (void)
{
  static const struct { const char *measure; double value; const char *says; } rows[] = {
    { "hidden-by-ambo", 9, "9 places" }, { "hidden-by-ambo", 1, "1 place" }, { "hidden-by-ambo", 0, "none" },
    { "altar-steps", 1, "1 step" },      { "altar-steps", 3, "3 steps" },    { "credences", 2, "2 credences" },
    { "candles-low", 1, "1 candle" },    { "altars", 2, "2 altars" },        { "gates", 1, "1 gate" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *text = fp_printed_value (fp_measure_find (rows[i].measure), rows[i].value, FP_UNITS_METRIC);

      g_assert_cmpstr (text, ==, rows[i].says);
    }
}

static void
test_counts_asked (void)
{
  g_autoptr (FpProject) project
    = taking_church (FP_BOOKS_BOTH, FP_FACING_EAST, FP_CELEBRATION_SUNG | FP_CELEBRATION_SUNDAY);

  assert_says (project, "newer-form:ambo-before-altar", NULL, NULL, "none", NULL);
  assert_says (project, "older-form:steps-three", NULL, "3 steps", "at least 3 steps", NULL);
  assert_says (project, "older-form:steps-odd", NULL, NULL, "an odd number of steps", NULL);
  assert_says (project, "older-form:candles-sung", NULL, "none", "from 4 to 6 candles", NULL);
  assert_says (project, "newer-form:candles-number", NULL, "none", "2, 4 or 6 candles", NULL);
  assert_says (project, "newer-form:altar-one", NULL, "1 altar", "at most 1 altar", NULL);
  assert_says (project, "older-form:candles-low", NULL, NULL, "2 candles", NULL);
  assert_says (project, "rail:gate-there", NULL, NULL, "at least 1 gate", NULL);
}

static void
test_measures_have_words (void)
{
  guint n;
  const FpMeasure *measure = fp_measures (&n);

  for (guint i = 0; i < n; i++)
    {
      g_test_message ("%s", measure[i].id);
      g_assert_cmpint (measure[i].type == FP_MEASURE_COUNT && !measure[i].unit, ==, measure[i].many != NULL);
      g_assert_cmpint (measure[i].one != NULL, ==, measure[i].many != NULL);
      g_assert_true (g_ascii_islower (measure[i].absent[0]));
      g_assert_false (g_str_has_suffix (measure[i].absent, "."));
    }
}

static void
test_places_of (void)
{
  static const struct { guint some, all; const char *says; } rows[] = {
    { 0, 80, "0 of 80 places see it" }, { 1, 80, "1 of 80 places sees it" },
    { 2, 80, "2 of 80 places see it" }, { 1, 1, "1 of 1 place sees it" },
  };
  g_autofree char *bare = fp_places_of (3, 80, "", "");

  g_assert_cmpstr (bare, ==, "3 of 80 places");
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *text = fp_places_of (rows[i].some, rows[i].all, "sees it", "see it");

      g_assert_cmpstr (text, ==, rows[i].says);
    }
}

/* --- which case ------------------------------------------------------------ */

static void
test_titles (void)
{
  g_autoptr (FpProject) project = church ();

  church_param (&project, "steps", "riser", 190);
  assert_says (project, "step-and-fall:riser-code", "The altar's steps are too high to walk safely", NULL, NULL, NULL);
  church_param (&project, "steps", "riser", 90);
  assert_says (project, "step-and-fall:riser-code", "The altar's steps are too low to walk safely", NULL, NULL, NULL);
  church_param (&project, "altar", "height", 1100);
  assert_says (project, "older-form:altar-height", "The altar is too high to stand at", NULL, NULL, NULL);
  church_param (&project, "altar", "height", 900);
  assert_says (project, "older-form:altar-height", "The altar is too low to stand at", NULL, NULL, NULL);
  church_param (&project, "altar", "height", 990);
  assert_says (project, "older-form:altar-height", "The altar is not of a height to stand at", NULL, NULL, NULL);
  church_param (&project, "sticks", "count", 4);
  assert_says (project, "older-form:candles-low", "More than two candles for low Mass", "4 candles", NULL, NULL);
  church_param (&project, "sticks", "count", 1);
  assert_says (project, "older-form:candles-low", "Fewer than two candles for low Mass", "1 candle", NULL, NULL);
}

/* A narrow gate is one thing, none is another. */
static void
test_gate (void)
{
  g_autoptr (FpProject) project = church ();

  church_param (&project, "rail", "gate", 700);
  assert_says (project, "access:gate-access", "The gate in the rail is too narrow", "700 mm",
               "at least 813 mm (32 in)", "Communion rail");
  assert_within (project, "rail:gate-there");
  church_param (&project, "rail", "gate", 0);
  assert_says (project, "rail:gate-there", "There is no gate in the rail", "none", "at least 1 gate",
               "Communion rail");
  assert_short (project, "rail:gate-there");
  g_assert_cmpstr (fp_found_id (taking_found (project, "access:gate-access")), ==, "nothing");
}

static gboolean
may_meet (const FpRule *a, const FpRule *b)
{
  return (a->books & b->books) && (a->facing < 0 || b->facing < 0 || a->facing == b->facing)
         && (a->freestanding < 0 || b->freestanding < 0 || a->freestanding == b->freestanding);
}

static gboolean
ask_the_same (const FpRule *a, const FpRule *b)
{
  return strcmp (a->measure, b->measure) == 0 && a->test == b->test && a->low == b->low && a->high == b->high
         && strcmp (a->unit, b->unit) == 0 && a->test != FP_TEST_ONE_OF;
}

static GPtrArray *
all_rules (GPtrArray *books)
{
  GPtrArray *rules = g_ptr_array_new ();

  for (guint b = 0; b < books->len; b++)
    {
      guint n;
      const FpRule *rule = fp_rulebook_rules (g_ptr_array_index (books, b), &n);

      for (guint i = 0; i < n; i++)
        g_ptr_array_add (rules, (gpointer) &rule[i]);
    }
  return rules;
}

/* One thing is found once: no two rules that may both hold are called alike; whichever form is followed, the same is
 * asked once, but that a crucifix is required by one form and advised for the other. */
static void
test_one_finding_a_thing (void)
{
  g_autoptr (GPtrArray) books = fp_rulebooks_built_in ();
  g_autoptr (GPtrArray) rules = all_rules (books);

  for (guint i = 0; i < rules->len; i++)
    for (guint j = 0; j < i; j++)
      {
        const FpRule *a = g_ptr_array_index (rules, i), *b = g_ptr_array_index (rules, j);

        g_test_message ("%s, %s", a->id, b->id);
        g_assert_cmpstr (a->title, !=, b->title);
        if (may_meet (a, b))
          g_assert_false (ask_the_same (a, b));
        else if (ask_the_same (a, b) && strcmp (a->measure, "altar-freestanding") != 0)
          g_assert_cmpstr (a->measure, ==, "crucifixes");
      }
}

/* A rule with two sides has a title for each; no title tells of two cases. */
static void
test_two_sides (void)
{
  g_autoptr (GPtrArray) books = fp_rulebooks_built_in ();
  g_autoptr (GPtrArray) rules = all_rules (books);

  for (guint i = 0; i < rules->len; i++)
    {
      const FpRule *rule = g_ptr_array_index (rules, i);
      const gboolean yes = fp_measure_find (rule->measure)->type == FP_MEASURE_YES;
      const gboolean two = rule->test == FP_TEST_BETWEEN || (rule->test == FP_TEST_EQUALS && !yes);
      const char *titles[] = { rule->title, rule->below, rule->above };

      g_test_message ("%s", rule->id);
      g_assert_cmpint (rule->below != NULL, ==, two);
      g_assert_cmpint (rule->above != NULL, ==, two);
      for (guint t = 0; t < G_N_ELEMENTS (titles); t++)
        if (titles[t])
          {
            g_assert_null (strstr (titles[t], " or too "));
            g_assert_null (strstr (titles[t], ", or "));
            g_assert_null (strstr (titles[t], "er or "));
          }
    }
}

/* --- where ----------------------------------------------------------------- */

static void
test_where (void)
{
  g_autoptr (FpProject) project = church ();

  /* A level floor: every row behind the first looks between heads. */
  assert_says (project, "sight:sight-over-heads", NULL, NULL, NULL, "Pews: rows 2 to 10");
  church_param (&project, "altar", "length", 1700);
  assert_says (project, "older-form:altar-length", NULL, NULL, NULL, "Altar");
  taking_survey (&project, "pews", "more", -3000, -15000, "spacing", 700);
  assert_says (project, "seating-and-ways-out:row-spacing-least", NULL, "700 mm", NULL, "Pews, Gospel side");
  church_param (&project, "pews", "spacing", 720);
  assert_says (project, "seating-and-ways-out:row-spacing-least", NULL, "700 mm", NULL, "Pews, Gospel side; Pews");
}

/* A floor that rises away from the altar (1:10 over 20 m: 2 m) names itself. */
static void
test_where_above (void)
{
  g_autoptr (FpProject) project = church ();

  church_floor (&project, "nave", (FpBox) { -6000, -20000, 6000, 0 }, 0, 0, 0.1, 0);
  assert_says (project, "levels:people-below", "The people do not stand below the altar", NULL, NULL, NULL);
  {
    g_autoptr (FpFindings) findings = taking_findings (project, FALSE);
    const FpFinding *finding = taking_finding (findings, "levels:people-below");

    g_assert_cmpint (finding->found, ==, FP_FOUND_SHORT);
    g_assert_true (g_str_has_prefix (finding->detail, "Floor, at its highest +"));
  }
  assert_says (project, "levels:area-below", NULL, NULL, "none", "Floor");
}

static void
test_where_on_the_altar (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  const double back = fp_scene_placed (scene, NULL)[fp_scene_find (scene, "altar")].plan.y1;

  taking_wall (&project, "east", -5000, back, 5000, back);
  assert_says (project, "older-form:altar-free", "The high altar touches the wall", "against the wall",
               "apart from the wall", "Altar");
  taking_add (&project, "tabernacle", "tabernacle", "altar", 0, -300, NULL, 0);
  assert_says (project, "older-form:altar-depth", NULL, NULL, NULL, "Altar, in front of “Tabernacle”");
}

/* The mean of all is no place; that which sees least is. */
static void
test_where_least (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpFindings) findings = taking_findings (project, TRUE);
  const FpFinding *finding = taking_finding (findings, "sight:mensa-mean");

  g_assert_true (g_str_has_suffix (finding->measured, " % (mean of 80 places, sitting)"));
  g_assert_true (g_str_has_prefix (finding->detail, "least from Pews: row "));
}

/* Whatever is short in any weight says of what thing, and in no coordinates. */
static void
test_where_is_a_name (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpFindings) findings = NULL;
  guint n, shorts = 0;
  const FpFinding *finding;

  taking_brief (&project, FP_BOOKS_BOTH, FP_FACING_EAST, ~0u & 0x7f);
  church_param (&project, "steps", "riser", 190);
  church_param (&project, "steps", "tread", 200);
  church_param (&project, "altar", "length", 1000);
  church_param (&project, "rail", "height", 900);
  findings = taking_findings (project, TRUE);
  finding = fp_findings_get (findings, &n);
  for (guint i = 0; i < n; i++)
    if (finding[i].found == FP_FOUND_SHORT)
      {
        shorts++;
        g_test_message ("%s: %s", finding[i].title, finding[i].detail);
        if (finding[i].owner >= 0)
          g_assert_nonnull (finding[i].detail);
        g_assert_false (g_regex_match_simple ("\\(-?[0-9]+, ", finding[i].detail ? finding[i].detail : "", 0, 0));
      }
  g_assert_cmpuint (shorts, >, 10);
}

/* Why nothing was measured is said of every rule of which that is so. */
static void
test_reasons (void)
{
  g_autoptr (FpProject) project = taking_church (FP_BOOKS_BOTH, FP_FACING_EAST, FP_CELEBRATION_LOW);
  g_autoptr (FpFindings) findings = taking_findings (project, TRUE);
  guint n, none = 0;
  const FpFinding *finding = fp_findings_get (findings, &n);

  for (guint i = 0; i < n; i++)
    if (finding[i].found == FP_FOUND_NOTHING || finding[i].found == FP_FOUND_APART)
      {
        none++;
        g_assert_nonnull (finding[i].detail);
      }
  g_assert_cmpuint (none, >, 20);
  assert_says (project, "rail:rail-height", NULL, "", NULL, "there is no rail before the altar");
  assert_says (project, "newer-form:candles-bishop", NULL, "", NULL,
               "the brief does not ask for Mass of the diocesan bishop");
}

/* --- cautions -------------------------------------------------------------- */

static gboolean
names_any (const char *text, const char *const *words)
{
  for (guint i = 0; words[i]; i++)
    if (text && strstr (text, words[i]))
      return TRUE;
  return FALSE;
}

/* Where the matter, or the advice, can hurt someone, the rule says who decides. */
static void
test_cautions (void)
{
  static const char *const hurt[] = { "riser", "tread", "steps", "footpace", "gate", "flame", "candle-", "candles-", "pressure",
                                      "rail-setback", "rail-height", "row-spacing", "row-clear", "row-seats",
                                      "floor-fall", "seats-share", "seat-width", NULL };
  static const char *const risky[] = { "Raise the altar", "Raise the sanctuary", "Raise the ambo", "Lengthen the altar",
                                       "eepen the altar", "step", "riser", "tread", NULL };
  static const char *const who[] = { "local code", "Local code", "local fire code", "licensed", "Ordinary", "bishop",
                                     "governed", NULL };
  g_autoptr (GPtrArray) books = fp_rulebooks_built_in ();
  g_autoptr (GPtrArray) rules = all_rules (books);

  for (guint i = 0; i < rules->len; i++)
    {
      const FpRule *rule = g_ptr_array_index (rules, i);

      g_test_message ("%s: %s", rule->id, rule->advice);
      if (names_any (rule->measure, hurt) || names_any (rule->advice, risky))
        g_assert_true (names_any (rule->caution, who));
    }
}

/* A year of printing (not a clause, "1011.5.2", nor a length, "1800 mm"), or an edition. */
#define YEAR_OR_EDITION "(?<![\\d.,])(1[5-9]|20)\\d\\d(?!\\d|[.,]\\d|.(mm|cm|m|in|ft)\\b)|\\d(st|nd|rd|th) ed\\."

/* A source says of when its book is, or why it does not: undated, from memory, Footpace's own, the parish's own, or that there is none. */
static void
test_sources (void)
{
  static const char *const none[] = { "ommon practice, no source", "Footpace's own", "The parish's own", "undated", "not shown", "from memory", NULL };
  g_autoptr (GPtrArray) books = fp_rulebooks_built_in ();
  g_autoptr (GPtrArray) rules = all_rules (books);

  for (guint i = 0; i < rules->len; i++)
    {
      const FpRule *rule = g_ptr_array_index (rules, i);

      g_test_message ("%s: %s", rule->id, rule->source);
      g_assert_true (g_regex_match_simple (YEAR_OR_EDITION, rule->source, 0, 0) || names_any (rule->source, none));
      /* A book that has editions is cited by its edition. */
      if (strstr (rule->source, "GIRM"))
        g_assert_nonnull (strstr (rule->source, "GIRM (3rd ed.) "));
      g_assert_null (strstr (rule->source, "…"));
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/wording/metric-first", test_metric_first);
  g_test_add_func ("/wording/inches-first", test_inches_first);
  g_test_add_func ("/wording/weight", test_weight);
  g_test_add_func ("/wording/shares", test_shares);
  g_test_add_func ("/wording/counts", test_counts);
  g_test_add_func ("/wording/counts-asked", test_counts_asked);
  g_test_add_func ("/wording/measures", test_measures_have_words);
  g_test_add_func ("/wording/places-of", test_places_of);
  g_test_add_func ("/wording/titles", test_titles);
  g_test_add_func ("/wording/gate", test_gate);
  g_test_add_func ("/wording/one-finding-a-thing", test_one_finding_a_thing);
  g_test_add_func ("/wording/two-sides", test_two_sides);
  g_test_add_func ("/wording/where", test_where);
  g_test_add_func ("/wording/where-above", test_where_above);
  g_test_add_func ("/wording/where-on-the-altar", test_where_on_the_altar);
  g_test_add_func ("/wording/where-least", test_where_least);
  g_test_add_func ("/wording/where-is-a-name", test_where_is_a_name);
  g_test_add_func ("/wording/reasons", test_reasons);
  g_test_add_func ("/wording/cautions", test_cautions);
  g_test_add_func ("/wording/sources", test_sources);
  return g_test_run ();
}
