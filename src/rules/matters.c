/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "matters.h"

#include "printed-unit.h"

#include <math.h>
#include <string.h>

static FpFinding *
finding_at (GArray *list, guint i)
{
  return &g_array_index (list, FpFinding, i);
}

static gboolean
is_held (const FpFinding *finding)
{
  return finding->found == FP_FOUND_SHORT || finding->found == FP_FOUND_WITHIN;
}

/* --- what a rule leaves ------------------------------------------------------------- */

static double
lowest (const FpRule *rule)
{
  const gboolean has = rule->test == FP_TEST_AT_LEAST || rule->test == FP_TEST_BETWEEN || rule->test == FP_TEST_EQUALS;

  return has ? rule->low * fp_printed_unit_find (rule->unit)->size : -INFINITY;
}

static double
highest (const FpRule *rule)
{
  const double size = fp_printed_unit_find (rule->unit)->size;

  if (rule->test == FP_TEST_EQUALS)
    return rule->low * size;
  return rule->test == FP_TEST_AT_MOST || rule->test == FP_TEST_BETWEEN ? rule->high * size : INFINITY;
}

/* Whether no value is as both have it; of different measures that cannot be told, and one is taken to stand for both. */
static gboolean
exclude_each_other (const FpRule *a, const FpRule *b)
{
  return strcmp (a->measure, b->measure) != 0 || lowest (a) > highest (b) || lowest (b) > highest (a);
}

/* By how much it is short, as measured: rules of one matter are not all in one unit. */
static double
short_by (const FpFinding *finding)
{
  return fp_rule_excess (finding->rule, finding->value) * fp_printed_unit_find (finding->rule->unit)->size;
}

static gboolean
is_told_first (const FpFinding *a, const FpFinding *b)
{
  if (a->rule->weight != b->rule->weight)
    return a->rule->weight < b->rule->weight;
  return short_by (a) < short_by (b);
}

/* --- one matter ----------------------------------------------------------------------- */

/* As any other that is not held: nothing is said of where and how much. */
static void
set_apart (FpFinding *finding, const char *why)
{
  finding->found = FP_FOUND_APART;
  finding->title = finding->rule->title;
  finding->value = NAN;
  finding->times = 0;
  finding->owner = -1;
  finding->has_at = FALSE;
  g_free (finding->measured);
  finding->measured = g_strdup ("");
  g_free (finding->detail);
  finding->detail = g_strdup (why);
}

static GPtrArray *
of_matter (GArray *list, const char *matter)
{
  GPtrArray *found = g_ptr_array_new ();

  for (guint i = 0; i < list->len; i++)
    {
      FpFinding *one = finding_at (list, i);

      if (is_held (one) && g_strcmp0 (one->rule->matter, matter) == 0)
        g_ptr_array_add (found, one);
    }
  return found;
}

static void
tell_others (FpFinding *one, const GPtrArray *all)
{
  GString *others = g_string_new (NULL);

  for (guint i = 0; i < all->len; i++)
    {
      const FpFinding *other = all->pdata[i];

      if (other != one)
        g_string_append_printf (others, "%s%s (%s)", others->len > 0 ? "; " : "", other->limit, other->rule->source);
    }
  if (others->len > 0)
    one->disagree = g_strdup_printf ("Printed sources disagree; others have: %s", others->str);
  g_string_free (others, TRUE);
}

/* Another that is met, and leaves no value for both. */
static gboolean
is_met_otherwise (const FpFinding *one, const GPtrArray *all)
{
  for (guint i = 0; i < all->len; i++)
    {
      const FpFinding *other = all->pdata[i];

      if (other->found == FP_FOUND_WITHIN && exclude_each_other (one->rule, other->rule))
        return TRUE;
    }
  return FALSE;
}

static void
settle (const GPtrArray *all)
{
  const FpFinding *first = NULL;

  for (guint i = 0; i < all->len; i++)
    {
      FpFinding *one = all->pdata[i];

      tell_others (one, all);
      if (one->found == FP_FOUND_SHORT && is_met_otherwise (one, all))
        set_apart (one, "printed sources disagree, and it is as another has it");
      else if (one->found == FP_FOUND_SHORT && (first == NULL || is_told_first (one, first)))
        first = one;
    }
  for (guint i = 0; i < all->len; i++)
    {
      FpFinding *one = all->pdata[i];

      if (one->found == FP_FOUND_SHORT && one != first)
        set_apart (one, "printed sources disagree, and it is short of another already");
    }
}

void
fp_matters_settle (GArray *list, const FpNorms *norms)
{
  g_autoptr (GHashTable) done = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < list->len; i++)
    {
      const char *matter = finding_at (list, i)->rule->matter;

      if (matter && !fp_norms_choice (norms, matter) && g_hash_table_add (done, (gpointer) matter))
        {
          g_autoptr (GPtrArray) all = of_matter (list, matter);

          settle (all);
        }
    }
}
