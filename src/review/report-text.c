/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The report that is read: worst first, then what was held, what was not checked and why, books, cautions. */
#include "footpace/review.h"

#include <string.h>

#define COLUMNS 100

/* --- setting text -------------------------------------------------------- */

/* Appends words, wrapped; lines after the first begin with @indent blanks.  @column: where the line stands now. */
static void
wrap (GString *out, const char *text, guint indent, guint column)
{
  g_auto (GStrv) words = g_strsplit_set (text, " \n\t", -1);
  gboolean first = TRUE;

  for (guint i = 0; words[i]; i++)
    {
      guint length = (guint) g_utf8_strlen (words[i], -1);

      if (length == 0)
        continue;
      if (!first && column + 1 + length > COLUMNS)
        {
          g_string_append_printf (out, "\n%*s", (int) indent, "");
          column = indent;
        }
      else if (!first)
        {
          g_string_append_c (out, ' ');
          column++;
        }
      g_string_append (out, words[i]);
      column += length;
      first = FALSE;
    }
  g_string_append_c (out, '\n');
}

/* "  Label      text, wrapped under itself" */
static void
put (GString *out, guint indent, const char *label, guint width, const char *text)
{
  guint labelled = (guint) g_utf8_strlen (label, -1);

  if (!text || *text == '\0')
    return;
  g_string_append_printf (out, "%*s%s%*s", (int) indent, "", label,
                          (int) (width > labelled ? width - labelled : 1), "");
  wrap (out, text, indent + width, indent + MAX (width, labelled + 1));
}

static void
heading (GString *out, const char *text)
{
  g_string_append_printf (out, "\n%s\n", text);
  for (glong i = g_utf8_strlen (text, -1); i > 0; i--)
    g_string_append_c (out, '-');
  g_string_append_c (out, '\n');
}

/* --- sections ------------------------------------------------------------ */

static void
put_head (GString *out, const FpFindings *findings)
{
  const FpScene *scene = fp_findings_scene (findings);
  const FpProject *project = fp_scene_project (scene);
  const FpBrief *brief = fp_project_brief (project);
  const char *form[] = { [FP_BOOKS_OLDER] = "older form", [FP_BOOKS_NEWER] = "newer form",
                         [FP_BOOKS_BOTH] = "older and newer form" };
  g_autofree char *followed
    = g_strdup_printf ("%s; the celebrant faces %s", form[brief->books],
                       brief->facing == FP_FACING_EAST ? "liturgical east" : "the people");
  g_autofree char *where
    = *brief->place ? g_strdup_printf ("%s, %s", brief->title, brief->place) : g_strdup (brief->title);

  g_string_append (out, "Findings\n========\n");
  put (out, 0, "Project", 14, where);
  put (out, 0, "Alternative", 14,
       fp_alternative_name (fp_project_alternative (project, fp_scene_alternative (scene))));
  put (out, 0, "Books", 14, followed);
}

/* Measured, asked, where, advice, source, caution of one rule that is short. */
static void
put_finding (GString *out, guint number, const FpFinding *finding)
{
  g_autofree char *label = g_strdup_printf ("%u.", number);
  g_autofree char *measured = g_strdup_printf ("%s; asked: %s", finding->measured, finding->limit);
  g_autofree char *source = g_strdup_printf ("%s [%s: %s]", finding->rule->source, fp_rulebook_id (finding->book),
                                             finding->rule->id);

  g_string_append_c (out, '\n');
  put (out, 0, label, 4, finding->rule->title);
  put (out, 4, "Measured", 10, measured);
  put (out, 4, "Where", 10, finding->detail);
  put (out, 4, "Advice", 10, finding->rule->advice);
  put (out, 4, "Source", 10, source);
  put (out, 4, "Caution", 10, finding->rule->caution);
}

static void
put_short (GString *out, const FpFindings *findings)
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
          heading (out, text);
          weight = (int) now;
        }
      put_finding (out, ++number, &finding[i]);
    }
}

static void
put_within (GString *out, const FpFindings *findings)
{
  guint n, listed = 0;
  const FpFinding *finding = fp_findings_get (findings, &n);

  for (guint i = 0; i < n; i++)
    if (finding[i].found == FP_FOUND_WITHIN)
      {
        const FpMeasure *measure = fp_measure_find (finding[i].rule->measure);
        g_autofree char *line = g_strdup_printf ("%s: %s (%s; %s) [%s: %s]", measure->label, finding[i].measured,
                                                 finding[i].limit, fp_weight_label (finding[i].rule->weight),
                                                 fp_rulebook_id (finding[i].book), finding[i].rule->id);

        if (listed++ == 0)
          heading (out, "Within the printed figures");
        put (out, 0, "-", 2, line);
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
      return "sight is still being computed";
    case FP_FOUND_NOTHING:
      return finding->detail ? finding->detail : "there is nothing to measure";
    case FP_FOUND_APART:
      return finding->detail;
    }
  return NULL;
}

/* One entry for each reason, with the rules that it kept from being held. */
static void
put_not_checked (GString *out, const FpFindings *findings)
{
  guint n, reasons = 0;
  const FpFinding *finding = fp_findings_get (findings, &n);
  g_autofree gboolean *done = g_new0 (gboolean, n + 1);

  for (guint i = 0; i < n; i++)
    {
      const char *why = why_not (&finding[i]);
      g_autoptr (GString) line = NULL;

      if (!why || done[i])
        continue;
      line = g_string_new (why);
      for (guint j = i; j < n; j++)
        if (g_strcmp0 (why_not (&finding[j]), why) == 0)
          {
            g_string_append_printf (line, "%s%s [%s: %s]", j == i ? ": " : "; ",
                                    fp_measure_find (finding[j].rule->measure)->label,
                                    fp_rulebook_id (finding[j].book), finding[j].rule->id);
            done[j] = TRUE;
          }
      *line->str = g_ascii_toupper (*line->str);
      if (reasons++ == 0)
        heading (out, "Not checked");
      put (out, 0, "-", 2, line->str);
    }
}

static void
put_books (GString *out, const FpFindings *findings)
{
  guint n;
  const FpFinding *finding = fp_findings_get (findings, &n);
  g_autoptr (GPtrArray) named = g_ptr_array_new ();

  heading (out, "Books");
  for (guint i = 0; i < n; i++)
    if (!g_ptr_array_find (named, finding[i].book, NULL))
      {
        const FpRulebook *book = finding[i].book;
        g_autofree char *line = NULL;
        guint rules;

        fp_rulebook_rules (book, &rules);
        line = g_strdup_printf ("%s [%s], %u rule%s. Edition: %s", fp_rulebook_title (book), fp_rulebook_id (book),
                                rules, rules == 1 ? "" : "s", fp_rulebook_edition (book));
        g_ptr_array_add (named, (gpointer) book);
        put (out, 0, "-", 2, line);
      }
}

static void
put_cautions (GString *out, const FpFindings *findings)
{
  static const char *const always[] = {
    "These findings approve nothing. They tell what lies inside or outside figures printed in the books named, many of "
    "which are authors' advice and not law.",
    "Structure, fire, access, ways out and safety on steps are for local code, a licensed architect or engineer, and "
    "the fire authority. Verify every dimension on site.",
    "What may be built, moved or removed is for the pastor, the bishop and those who protect monuments to decide.",
  };
  guint n;
  const FpFinding *finding = fp_findings_get (findings, &n);
  g_autoptr (GHashTable) said = g_hash_table_new (g_str_hash, g_str_equal);

  heading (out, "Cautions");
  for (guint i = 0; i < G_N_ELEMENTS (always); i++)
    put (out, 0, "-", 2, always[i]);
  for (guint i = 0; i < n; i++)
    if (finding[i].rule->caution && !why_not (&finding[i])
        && g_hash_table_add (said, (gpointer) finding[i].rule->caution))
      put (out, 0, "-", 2, finding[i].rule->caution);
}

static void
put_closing (GString *out, const FpFindings *findings)
{
  guint n, held = 0, shorts = 0;
  const FpFinding *finding = fp_findings_get (findings, &n);
  g_autofree char *text = NULL;

  for (guint i = 0; i < n; i++)
    {
      shorts += finding[i].found == FP_FOUND_SHORT;
      held += !why_not (&finding[i]);
    }
  if (shorts == 0)
    text = g_strdup_printf ("No finding against the %u rule%s listed.", held, held == 1 ? "" : "s");
  else
    text = g_strdup_printf ("%u of the %u rule%s held %s found short: %u required, %u recommended, %u customary.",
                            shorts, held, held == 1 ? "" : "s", shorts == 1 ? "was" : "were",
                            fp_findings_short (findings, FP_WEIGHT_REQUIRED),
                            fp_findings_short (findings, FP_WEIGHT_RECOMMENDED),
                            fp_findings_short (findings, FP_WEIGHT_CUSTOMARY));
  g_string_append_c (out, '\n');
  wrap (out, text, 0, 0);
}

char *
fp_report_text (const FpFindings *findings)
{
  GString *out = g_string_new (NULL);

  put_head (out, findings);
  put_short (out, findings);
  put_within (out, findings);
  put_not_checked (out, findings);
  put_books (out, findings);
  put_cautions (out, findings);
  put_closing (out, findings);
  return g_string_free (out, FALSE);
}
