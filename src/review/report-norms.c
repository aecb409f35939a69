/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a parish holds otherwise than the books print it: which it does not follow, and which rules it sets aside or holds to
 * limits of its own.  Who reads a report must know it before the findings, since a rule that is set aside finds nothing. */
#include "footpace/review.h"

#include "report-private.h"

#include <string.h>

#define NAMED_MOST 6 /* rules of one reason that are named; more are counted */

static const FpNorms *
norms_of (const FpFindings *findings)
{
  return fp_project_norms (fp_scene_project (fp_findings_scene (findings)));
}

const FpNormChange *
fp_report_norm (const FpFindings *findings, const FpFinding *finding)
{
  const FpNorms *norms = norms_of (findings);
  const char *book = fp_rulebook_id (finding->book);
  const FpNormChange *change = fp_norms_change (norms, book, finding->rule->id);

  if (change == NULL || !fp_norms_follow (norms, book))
    return NULL;
  if (change->aside)
    return finding->found == FP_FOUND_APART ? change : NULL;
  return finding->otherwise != NULL && finding->found != FP_FOUND_APART ? change : NULL;
}

/* --- rules, by their reason ---------------------------------------------------------- */

static char *
named (const GPtrArray *labels, guint rules)
{
  GString *text = g_string_new (NULL);

  g_string_append_printf (text, "%u rule%s: ", rules, rules == 1 ? "" : "s");
  for (guint i = 0; i < MIN (labels->len, NAMED_MOST); i++)
    g_string_append_printf (text, "%s%s", i > 0 ? "; " : "", (const char *) labels->pdata[i]);
  if (labels->len > NAMED_MOST)
    g_string_append_printf (text, "; and %u more", labels->len - NAMED_MOST);
  return g_string_free (text, FALSE);
}

/* All that have the reason of the @first; they are marked @done. */
static char *
of_reason (const FpFindings *findings, guint first, gboolean *done)
{
  guint n, rules = 0;
  const FpFinding *finding = fp_findings_get (findings, &n);
  const FpNormChange *like = fp_report_norm (findings, &finding[first]);
  g_autoptr (GPtrArray) labels = g_ptr_array_new ();
  g_autofree char *names = NULL;

  for (guint i = first; i < n; i++)
    {
      const FpNormChange *change = fp_report_norm (findings, &finding[i]);
      const char *label = fp_measure_find (finding[i].rule->measure)->label;

      if (change == NULL || change->aside != like->aside || strcmp (change->reason, like->reason) != 0)
        continue;
      if (!g_ptr_array_find_with_equal_func (labels, label, g_str_equal, NULL))
        g_ptr_array_add (labels, (gpointer) label);
      done[i] = TRUE;
      rules++;
    }
  names = named (labels, rules);
  return g_strdup_printf ("%s (%s)", names, like->reason);
}

static void
add (GArray *out, const char *label, const char *heading, char *text)
{
  const FpReportNorm one = { label, heading, text };

  g_strdelimit (text, "\n", ' '); /* faults of a book are a line each */
  g_array_append_val (out, one);
}

static void
add_changes (GArray *out, const FpFindings *findings, gboolean aside)
{
  guint n;
  const FpFinding *finding = fp_findings_get (findings, &n);
  g_autofree gboolean *done = g_new0 (gboolean, n + 1);

  for (guint i = 0; i < n; i++)
    {
      const FpNormChange *change = done[i] ? NULL : fp_report_norm (findings, &finding[i]);

      if (change != NULL && change->aside == aside)
        add (out, aside ? "Set aside" : "Otherwise", aside ? "Set aside by the parish" : "Held otherwise than printed",
             of_reason (findings, i, done));
    }
}

/* --- all of it ------------------------------------------------------------------------- */

static void
add_not_followed (GArray *out, const FpFindings *findings)
{
  g_autoptr (GPtrArray) books = fp_report_books (findings);

  for (guint i = 0; i < books->len; i++)
    {
      const FpRulebook *book = books->pdata[i];
      guint n;

      fp_rulebook_rules (book, &n);
      if (!fp_norms_follow (norms_of (findings), fp_rulebook_id (book)))
        add (out, "Not followed", "Not followed by the parish",
             g_strdup_printf ("%s [%s], %u rule%s", fp_rulebook_title (book), fp_rulebook_id (book), n, n == 1 ? "" : "s"));
    }
}

static void
clear (gpointer data)
{
  g_free (((FpReportNorm *) data)->text);
}

GArray *
fp_report_norms (const FpFindings *findings)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpReportNorm));
  const GPtrArray *amiss = fp_findings_amiss (findings);

  g_array_set_clear_func (out, clear);
  add_not_followed (out, findings);
  add_changes (out, findings, TRUE);
  add_changes (out, findings, FALSE);
  for (guint i = 0; i < amiss->len; i++)
    add (out, "Norms", NULL, g_strdup (amiss->pdata[i]));
  return out;
}
