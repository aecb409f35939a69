/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The report that is read: worst first, what was not checked and why, the rules looked at, cautions. */
#include "footpace/review.h"

#include "capacities-private.h"
#include "report-private.h"
#include "words.h"

#include <string.h>

#define STATE   9 /* columns for "within" and its like */

/* --- sections ------------------------------------------------------------ */

static void
put_head (GString *out, const FpFindings *findings)
{
  const FpScene *scene = fp_findings_scene (findings);
  const FpProject *project = fp_scene_project (scene);
  const FpBrief *brief = fp_project_brief (project);
  const FpNorms *norms = fp_project_norms (project);
  const char *form[] = { [FP_BOOKS_OLDER] = "older form", [FP_BOOKS_NEWER] = "newer form",
                         [FP_BOOKS_BOTH] = "older and newer form" };
  g_autofree char *followed
    = g_strdup_printf ("%s; the celebrant faces %s", form[brief->books],
                       fp_project_facing (project, fp_scene_alternative (scene)) == FP_FACING_EAST ? "liturgical east"
                                                                                                   : "the people");
  g_autofree char *where
    = *brief->place ? g_strdup_printf ("%s, %s", brief->title, brief->place) : g_strdup (brief->title);

  g_string_append (out, "Findings\n========\n");
  fp_words_put (out, 0, "Project", 14, where);
  fp_words_put (out, 0, "Alternative", 14,
       fp_alternative_name (fp_project_alternative (project, fp_scene_alternative (scene))));
  if (fp_scene_setting (scene) != NULL)
    fp_words_put (out, 0, "As set for", 14, fp_celebration_label (fp_setting_celebration (fp_scene_setting (scene))));
  fp_words_put (out, 0, "Books", 14, followed);
  fp_words_put (out, 0, "Jurisdiction", 14,
       norms->jurisdiction == FP_JURISDICTION_UNSAID ? "not said: rules of every country are held; see Norms"
                                                     : fp_jurisdiction_label (norms->jurisdiction));
}

static void
put_norms (GString *out, const FpFindings *findings)
{
  g_autoptr (GArray) norms = fp_report_norms (findings);

  for (guint i = 0; i < norms->len; i++)
    {
      const FpReportNorm *one = &g_array_index (norms, FpReportNorm, i);

      fp_words_put (out, 0, one->label, 14, one->text);
    }
}

/* Measured, asked, where, advice, source, caution of one rule that is short. */
static void
put_finding (GString *out, guint number, const FpFinding *finding, const char *settled, const char *hindered)
{
  g_autofree char *label = g_strdup_printf ("%u.", number);
  g_autofree char *measured = g_strdup_printf ("%s; asked: %s", finding->measured, finding->limit);
  g_autofree char *source = g_strdup_printf ("%s [%s: %s]", finding->rule->source, fp_rulebook_id (finding->book),
                                             finding->rule->id);

  g_string_append_c (out, '\n');
  fp_words_put (out, 0, label, 4, finding->title);
  fp_words_put (out, 4, "Measured", 10, measured);
  fp_words_put (out, 4, "Where", 10, finding->detail);
  fp_words_put (out, 4, "Advice", 10, finding->rule->advice);
  fp_words_put (out, 4, "Remedy", 10, settled);
  fp_words_put (out, 4, "Hindrance", 10, hindered);
  fp_words_put (out, 4, "Source", 10, source);
  fp_words_put (out, 4, "Norms", 10, finding->otherwise);
  fp_words_put (out, 4, "Others", 10, finding->disagree);
  fp_words_put (out, 4, "Caution", 10, finding->rule->caution);
}

static void
put_short (GString *out, const FpFindings *findings, const FpRemedies *remedies)
{
  guint n, number = 0;
  const FpFinding *finding = fp_findings_get (findings, &n);
  int weight = -1;

  for (guint i = 0; i < n && finding[i].found == FP_FOUND_SHORT; i++)
    {
      if ((int) finding[i].rule->weight != weight)
        {
          FpWeight now = finding[i].rule->weight;
          g_autofree char *text
            = g_strdup_printf ("%s: %u", fp_weight_label (now), fp_findings_short (findings, now));

          *text = g_ascii_toupper (*text);
          fp_words_heading (out, text);
          weight = (int) now;
        }
      const char *words = NULL;
      const FpRemedy *remedy = remedies != NULL ? fp_remedies_get (remedies, i, &words) : NULL;
      put_finding (out, ++number, &finding[i], remedy != NULL ? words : NULL, remedy == NULL ? words : NULL);
    }
}

/* Why a rule was not held; NULL when it was. */
static const char *
why_not (const FpFinding *finding)
{
  switch (finding->found)
    {
    case FP_FOUND_SHORT:
    case FP_FOUND_WITHIN:
      return NULL;
    case FP_FOUND_WAITING:
      return "sight and ways are still being computed";
    case FP_FOUND_NOTHING:
      return finding->detail ? finding->detail : "there is nothing to measure";
    case FP_FOUND_APART:
      return finding->detail;
    }
  return NULL;
}

/* The measures of all rules that @why kept from being held, each once; those are marked @done. */
static char *
measures_kept (const FpFinding *finding, guint n, const char *why, gboolean *done, guint *rules)
{
  g_autoptr (GPtrArray) named = g_ptr_array_new ();

  *rules = 0;
  for (guint i = 0; i < n; i++)
    if (g_strcmp0 (why_not (&finding[i]), why) == 0)
      {
        const char *label = fp_measure_find (finding[i].rule->measure)->label;

        if (!g_ptr_array_find_with_equal_func (named, label, g_str_equal, NULL))
          g_ptr_array_add (named, (gpointer) label);
        done[i] = TRUE;
        ++*rules;
      }
  g_ptr_array_add (named, NULL);
  return g_strjoinv ("; ", (char **) named->pdata);
}

/* One entry for each reason, with what it kept from being held. */
static void
put_not_checked (GString *out, const FpFindings *findings)
{
  guint n, reasons = 0;
  const FpFinding *finding = fp_findings_get (findings, &n);
  g_autofree gboolean *done = g_new0 (gboolean, n + 1);

  for (guint i = 0; i < n; i++)
    {
      const char *why = why_not (&finding[i]);
      g_autofree char *measures = NULL, *line = NULL;
      guint rules;

      if (!why || done[i])
        continue;
      measures = measures_kept (finding, n, why, done, &rules);
      line = g_strdup_printf ("%s (%u rule%s): %s", why, rules, rules == 1 ? "" : "s", measures);
      *line = g_ascii_toupper (*line);
      if (reasons++ == 0)
        fp_words_heading (out, "Not checked");
      fp_words_put (out, 0, "-", 2, line);
    }
}

/* What the parish holds otherwise than it is printed, also where nothing was found short. */
static void
put_otherwise (GString *out, const FpFindings *findings)
{
  guint n, told = 0;
  const FpFinding *finding = fp_findings_get (findings, &n);

  for (guint i = 0; i < n; i++)
    if (finding[i].otherwise && finding[i].found != FP_FOUND_SHORT)
      {
        g_autofree char *line = g_strdup_printf ("%s: %s. %s [%s: %s]", fp_measure_find (finding[i].rule->measure)->label,
                                                 finding[i].limit, finding[i].otherwise, fp_rulebook_id (finding[i].book),
                                                 finding[i].rule->id);

        if (told++ == 0)
          fp_words_heading (out, "Held otherwise than printed");
        fp_words_put (out, 0, "-", 2, line);
      }
}

/* --- the rules looked at --------------------------------------------------- */

/* "13 rules: 4 short, 8 within, 1 nothing" */
static char *
states_named (const FpReportStates *states)
{
  GString *text = g_string_new (NULL);

  g_string_append_printf (text, "%u rule%s:", states->all, states->all == 1 ? "" : "s");
  for (guint f = 0; f < G_N_ELEMENTS (states->of); f++)
    if (states->of[f] > 0)
      g_string_append_printf (text, " %u %s,", states->of[f], fp_found_id ((FpFound) f));
  g_string_truncate (text, text->len - 1);
  return g_string_free (text, FALSE);
}

static char *
rule_line (const FpFinding *finding)
{
  const FpMeasure *measure = fp_measure_find (finding->rule->measure);
  const char *why = why_not (finding);

  if (why)
    return g_strdup_printf ("%s: %s [%s: %s]", measure->label, why, fp_rulebook_id (finding->book), finding->rule->id);
  return g_strdup_printf ("%s: %s; asked: %s; %s [%s: %s]", measure->label, finding->measured, finding->limit,
                          fp_weight_label (finding->rule->weight), fp_rulebook_id (finding->book), finding->rule->id);
}

static void
put_rules_of (GString *out, const FpFindings *findings, const FpRulebook *book)
{
  guint n;
  const FpFinding *finding = fp_findings_get (findings, &n);

  for (guint i = 0; i < n; i++)
    if (finding[i].book == book)
      {
        g_autofree char *line = rule_line (&finding[i]);

        fp_words_put (out, 2, fp_found_id (finding[i].found), STATE, line);
      }
}

/* What the words for the states mean, of those that occur. */
static void
put_legend (GString *out, const FpFindings *findings)
{
  static const char *const means[] = {
    [FP_FOUND_SHORT] = "outside the printed figure: a finding",
    [FP_FOUND_WITHIN] = "measured, and no finding",
    [FP_FOUND_WAITING] = "not checked yet: sight and ways are still being computed",
    [FP_FOUND_NOTHING] = "not checked: there is nothing to measure",
    [FP_FOUND_APART] = "not checked: for another form, celebration, law or kind of altar, or not followed",
  };
  const FpReportStates states = fp_report_states (findings, NULL);

  for (guint f = 0; f < G_N_ELEMENTS (means); f++)
    if (states.of[f] > 0)
      fp_words_put (out, 0, fp_found_id ((FpFound) f), STATE, means[f]);
}

static void
put_looked_at (GString *out, const FpFindings *findings, gboolean every)
{
  g_autoptr (GPtrArray) books = fp_report_books (findings);

  fp_words_heading (out, "Rules looked at");
  put_legend (out, findings);
  for (guint b = 0; b < books->len; b++)
    {
      const FpRulebook *book = g_ptr_array_index (books, b);
      const FpReportStates states = fp_report_states (findings, book);
      g_autofree char *named = states_named (&states);
      g_autofree char *line = g_strdup_printf ("%s [%s], %s. Edition: %s", fp_rulebook_title (book),
                                               fp_rulebook_id (book), named, fp_rulebook_edition (book));

      if (every || b == 0)
        g_string_append_c (out, '\n');
      fp_words_put (out, 0, "-", 2, line);
      if (every)
        put_rules_of (out, findings, book);
    }
}

static void
put_cautions (GString *out, const FpFindings *findings)
{
  guint n, n_always;
  const FpFinding *finding = fp_findings_get (findings, &n);
  const char *const *always = fp_report_cautions (&n_always);
  g_autoptr (GHashTable) said = g_hash_table_new (g_str_hash, g_str_equal);

  fp_words_heading (out, "Cautions");
  for (guint i = 0; i < n_always; i++)
    fp_words_put (out, 0, "-", 2, always[i]);
  for (guint i = 0; i < n; i++)
    if (finding[i].rule->caution && !why_not (&finding[i])
        && g_hash_table_add (said, (gpointer) finding[i].rule->caution))
      fp_words_put (out, 0, "-", 2, finding[i].rule->caution);
}

static void
put_capacity (GString *out, const FpFindings *findings)
{
  const FpMeasuring *of = fp_findings_measuring (findings);
  g_autoptr (FpCapacities) all = fp_capacities_new (of->people, of->sight);

  fp_words_heading (out, "Capacity");
  fp_capacities_put_sums (out, all);
}

static void
put_closing (GString *out, const FpFindings *findings)
{
  g_autofree char *text = fp_report_closing (findings);

  g_string_append_c (out, '\n');
  fp_words_wrap (out, text, 0, 0);
}

char *
fp_report_text (const FpFindings *findings, gboolean every)
{
  return fp_report_text_remedied (findings, every, NULL);
}

char *
fp_report_text_remedied (const FpFindings *findings, gboolean every, const FpRemedies *remedies)
{
  GString *out = g_string_new (NULL);
  guint n;
  const FpFinding *finding = fp_findings_get (findings, &n);
  /* "No finding against the rules listed" needs the list. */
  const gboolean list = every || n == 0 || finding[0].found != FP_FOUND_SHORT;

  put_head (out, findings);
  put_norms (out, findings);
  put_short (out, findings, remedies);
  if (!list)
    put_not_checked (out, findings);
  put_otherwise (out, findings);
  put_looked_at (out, findings, list);
  put_capacity (out, findings);
  put_cautions (out, findings);
  put_closing (out, findings);
  return g_string_free (out, FALSE);
}
