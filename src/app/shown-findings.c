/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shown-findings.h"

#include <string.h>

static void
shown_clear (gpointer data)
{
  FpShown *shown = data;

  g_clear_pointer (&shown->of, fp_findings_unref);
}

static void
add (GArray *out, FpFindings *of, const FpFinding *finding, gboolean stale)
{
  FpShown shown = { fp_findings_ref (of), finding, stale };

  g_array_append_val (out, shown);
}

/* By id: rules that the parish holds otherwise are made anew for all findings. */
static gboolean
is_of_one_rule (const FpFinding *x, const FpFinding *y)
{
  return strcmp (x->rule->id, y->rule->id) == 0 && strcmp (fp_rulebook_id (x->book), fp_rulebook_id (y->book)) == 0;
}

/* Where it stands among those that were held: book by book, and in each as it is printed. */
static guint
printed_at (FpFindings *newest, const FpFinding *finding)
{
  GPtrArray *books = fp_findings_books (newest);
  guint before = 0;

  for (guint b = 0; b < books->len; b++)
    {
      const FpRulebook *book = g_ptr_array_index (books, b);
      const gboolean own = strcmp (fp_rulebook_id (book), fp_rulebook_id (finding->book)) == 0;
      guint n;
      const FpRule *rule = fp_rulebook_rules (book, &n);

      for (guint r = 0; own && r < n; r++)
        if (strcmp (rule[r].id, finding->rule->id) == 0)
          return before + r;
      before += n;
    }
  return before;
}

/* As findings themselves lie (fp_findings_get()), those of before among them. */
static int
by_weight_then_books (gconstpointer a, gconstpointer b, gpointer newest)
{
  const FpFinding *x = ((const FpShown *) a)->finding, *y = ((const FpShown *) b)->finding;
  guint at, other;

  if (x->rule->weight != y->rule->weight)
    return x->rule->weight < y->rule->weight ? -1 : 1;
  at = printed_at (newest, x);
  other = printed_at (newest, y);
  return at < other ? -1 : at > other;
}

static const FpFinding *
find_rule (FpFindings *findings, const FpFinding *of)
{
  guint n;
  const FpFinding *finding = fp_findings_get (findings, &n);

  for (guint i = 0; i < n; i++)
    if (is_of_one_rule (&finding[i], of))
      return &finding[i];
  return NULL;
}

GArray *
fp_shown_new (FpFindings *newest, FpFindings *sighted)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpShown));
  guint n = 0;
  const FpFinding *finding = newest != NULL ? fp_findings_get (newest, &n) : NULL;

  g_array_set_clear_func (out, shown_clear);
  for (guint i = 0; i < n; i++)
    {
      const FpFinding *before = NULL;

      if (finding[i].found == FP_FOUND_SHORT)
        add (out, newest, &finding[i], FALSE);
      else if (finding[i].found == FP_FOUND_WAITING && sighted != NULL)
        before = find_rule (sighted, &finding[i]);
      if (before != NULL && before->found == FP_FOUND_SHORT)
        add (out, sighted, before, TRUE);
    }
  g_array_sort_with_data (out, by_weight_then_books, newest);
  return out;
}

char *
fp_shown_key (const FpShown *shown)
{
  return g_strdup_printf ("%s/%s", fp_rulebook_id (shown->finding->book), shown->finding->rule->id);
}

char *
fp_shown_summary (const GArray *shown)
{
  guint count[FP_N_WEIGHTS] = { 0 };
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < shown->len; i++)
    count[g_array_index (shown, FpShown, i).finding->rule->weight]++;
  for (guint w = 0; w < FP_N_WEIGHTS; w++)
    if (count[w] > 0)
      g_string_append_printf (text, "%s%u %s", text->len > 0 ? ", " : "", count[w], fp_weight_label ((FpWeight) w));
  return g_string_free (text, FALSE);
}

char *
fp_shown_rest (FpFindings *newest, const GArray *shown)
{
  guint n, waiting = 0, judged = 0;
  const FpFinding *finding = fp_findings_get (newest, &n);

  for (guint i = 0; i < n; i++)
    {
      waiting += finding[i].found == FP_FOUND_WAITING;
      judged += finding[i].found == FP_FOUND_WITHIN;
    }
  if (waiting > 0)
    return g_strdup_printf ("Rules of sight and of ways are being computed: %u.", waiting);
  return g_strdup_printf ("No finding against %s%u %s listed.", shown->len > 0 ? "the other " : "the ", judged,
                          judged == 1 ? "rule" : "rules");
}

char *
fp_shown_amiss (const FpFindings *newest)
{
  g_autoptr (GPtrArray) left_out = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GPtrArray) books = fp_rulebooks_for (fp_scene_project (fp_findings_scene (newest)), left_out);
  const guint all = fp_findings_amiss (newest)->len, others = all > left_out->len ? all - left_out->len : 0;

  (void) books;
  if (left_out->len > 0)
    return g_strdup_printf ("%u rulebook%s left out: see Norms", left_out->len, left_out->len == 1 ? " is" : "s are");
  if (others > 0)
    return g_strdup_printf ("%u thing%s amiss in the norms: see Norms", others, others == 1 ? " is" : "s are");
  return NULL;
}

char *
fp_shown_measure (const FpFinding *finding)
{
  GString *text = g_string_new (finding->measured);

  if (finding->limit != NULL && *finding->limit != '\0')
    g_string_append_printf (text, "; asked: %s", finding->limit);
  if (finding->times > 1)
    g_string_append_printf (text, " (found %u times)", finding->times);
  return g_string_free (text, FALSE);
}

char *
fp_shown_speech (const FpShown *shown)
{
  const FpFinding *f = shown->finding;
  g_autofree char *measure = fp_shown_measure (f);
  GString *text = g_string_new (NULL);

  g_string_append_printf (text, "%s: %s. %s.", fp_weight_label (f->rule->weight), f->title, measure);
  if (f->detail != NULL)
    g_string_append_printf (text, " %s.", f->detail);
  g_string_append_printf (text, " %s.", f->rule->source);
  if (shown->stale)
    g_string_append (text, " Being computed anew.");
  return g_string_free (text, FALSE);
}
