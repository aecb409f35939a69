/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The findings that are short, for a sheet, and what all forms of the report share. */
#include "footpace/review.h"

#include "report-private.h"

#include <string.h>

/* --- what is shared -------------------------------------------------------- */

static int
by_id (gconstpointer a, gconstpointer b)
{
  return strcmp (fp_rulebook_id (*(FpRulebook *const *) a), fp_rulebook_id (*(FpRulebook *const *) b));
}

GPtrArray *
fp_report_books (const FpFindings *findings)
{
  guint n;
  const FpFinding *finding = fp_findings_get (findings, &n);
  GPtrArray *books = g_ptr_array_new ();

  for (guint i = 0; i < n; i++)
    if (!g_ptr_array_find (books, finding[i].book, NULL))
      g_ptr_array_add (books, (gpointer) finding[i].book);
  g_ptr_array_sort (books, by_id);
  return books;
}

FpReportStates
fp_report_states (const FpFindings *findings, const FpRulebook *book)
{
  FpReportStates states = { 0 };
  guint n;
  const FpFinding *finding = fp_findings_get (findings, &n);

  for (guint i = 0; i < n; i++)
    if (!book || finding[i].book == book)
      states.of[finding[i].found]++;
  states.held = states.of[FP_FOUND_SHORT] + states.of[FP_FOUND_WITHIN];
  states.all = states.held + states.of[FP_FOUND_WAITING] + states.of[FP_FOUND_NOTHING] + states.of[FP_FOUND_APART];
  return states;
}

char *
fp_report_closing (const FpFindings *findings)
{
  const FpReportStates states = fp_report_states (findings, NULL);
  const guint shorts = states.of[FP_FOUND_SHORT], unchecked = states.all - states.held;
  const char *rules = states.held == 1 ? "rule" : "rules";
  g_autofree char *others = g_strdup_printf (" %u other%s not checked.", unchecked, unchecked == 1 ? " was" : "s were");

  if (shorts == 0)
    return g_strdup_printf ("No finding against the %u %s listed.%s", states.held, rules,
                            unchecked > 0 ? others : "");
  return g_strdup_printf ("%u of the %u %s held %s found short: %u required, %u recommended, %u customary.%s", shorts,
                          states.held, rules, shorts == 1 ? "was" : "were",
                          fp_findings_short (findings, FP_WEIGHT_REQUIRED),
                          fp_findings_short (findings, FP_WEIGHT_RECOMMENDED),
                          fp_findings_short (findings, FP_WEIGHT_CUSTOMARY), unchecked > 0 ? others : "");
}

const char *const *
fp_report_cautions (guint *n)
{
  static const char *const cautions[] = {
    "These findings approve nothing. They tell what lies inside or outside figures printed in the books named, many of "
    "which are authors' advice and not law.",
    "Structure, fire, access, ways out and safety on steps are for local code, a licensed architect or engineer, and "
    "the fire authority. Verify every dimension on site.",
    "What may be built, moved or removed is for the pastor, the bishop and those who protect monuments to decide.",
  };

  *n = G_N_ELEMENTS (cautions);
  return cautions;
}

/* --- lines ----------------------------------------------------------------- */

/* A printed source ends with a full stop or without. */
static void
append_sentence (GString *out, const char *label, const char *text)
{
  const gsize length = text == NULL ? 0 : strlen (text);

  if (length == 0)
    return;
  g_string_append_printf (out, "\n%s%s%s", label, text, strchr (".?!", text[length - 1]) != NULL ? "" : ".");
}

static char *
line_of (const FpFinding *finding)
{
  GString *out = g_string_new (NULL);
  g_autofree char *measured = g_strdup_printf ("%s; asked: %s", finding->measured, finding->limit);

  g_string_append_printf (out, "%s: %s", fp_weight_label (finding->rule->weight), finding->title);
  append_sentence (out, "Measured: ", measured);
  append_sentence (out, "Where: ", finding->detail);
  append_sentence (out, "Norms: ", finding->otherwise);
  append_sentence (out, "Source: ", finding->rule->source);
  append_sentence (out, "Caution: ", finding->rule->caution);
  return g_string_free (out, FALSE);
}

/* What a sheet says of the norms stands after the findings: who reads it sees no head of a report. */
static void
add_norms (GPtrArray *lines, const FpFindings *findings)
{
  g_autoptr (GArray) norms = fp_report_norms (findings);

  if (norms->len > 0 && lines->len == 0)
    g_ptr_array_add (lines, g_strdup ("No finding against the rules listed."));
  for (guint i = 0; i < norms->len; i++)
    {
      const FpReportNorm *one = &g_array_index (norms, FpReportNorm, i);

      g_ptr_array_add (lines, one->heading == NULL ? g_strdup (one->text) : g_strdup_printf ("%s: %s", one->heading, one->text));
    }
}

char **
fp_report_lines (const FpFindings *findings)
{
  GPtrArray *lines = g_ptr_array_new ();
  guint n;
  const FpFinding *finding = fp_findings_get (findings, &n);

  for (guint i = 0; i < n && finding[i].found == FP_FOUND_SHORT; i++)
    {
      char *line = line_of (&finding[i]);

      *line = g_ascii_toupper (*line);
      g_ptr_array_add (lines, line);
    }
  add_norms (lines, findings);
  g_ptr_array_add (lines, NULL);
  return (char **) g_ptr_array_free (lines, FALSE);
}
