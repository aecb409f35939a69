/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "norms-held.h"

#include "footpace/limit-range.h"

#include <math.h>
#include <string.h>

/* --- set apart ------------------------------------------------------------------------ */

static char *
jurisdictions_named (guint bits)
{
  GString *names = g_string_new (NULL);

  for (guint i = 0; i < FP_N_JURISDICTIONS; i++)
    if (bits & (1u << i))
      g_string_append_printf (names, "%s%s", names->len ? " or " : "", fp_jurisdiction_label ((FpJurisdiction) i));
  return g_string_free (names, FALSE);
}

static char *
of_other_law (const FpNorms *norms, const FpRule *rule)
{
  g_autofree char *names = NULL;

  if (rule->jurisdictions == 0 || norms->jurisdiction == FP_JURISDICTION_UNSAID
      || rule->jurisdictions & (1u << norms->jurisdiction))
    return NULL;
  names = jurisdictions_named (rule->jurisdictions);
  return g_strdup_printf ("printed for: %s", names);
}

char *
fp_norms_set_apart (const FpNorms *norms, const FpRulebook *book, const FpRule *rule)
{
  const FpNormChange *change = fp_norms_change (norms, fp_rulebook_id (book), rule->id);
  const FpNormChoice *choice = rule->matter ? fp_norms_choice (norms, rule->matter) : NULL;

  if (!fp_norms_follow (norms, fp_rulebook_id (book)))
    return g_strdup ("the parish does not follow this book");
  if (change && change->aside)
    return g_strdup_printf ("the parish sets it aside: %s", change->reason);
  if (choice && (strcmp (choice->book, fp_rulebook_id (book)) != 0 || strcmp (choice->rule, rule->id) != 0))
    return g_strdup ("printed sources disagree, and the parish goes by another");
  return of_other_law (norms, rule);
}

/* --- held otherwise --------------------------------------------------------------------- */

static gboolean
takes_low (FpTest test)
{
  return test == FP_TEST_AT_LEAST || test == FP_TEST_BETWEEN || test == FP_TEST_EQUALS;
}

static gboolean
takes_high (FpTest test)
{
  return test == FP_TEST_AT_MOST || test == FP_TEST_BETWEEN;
}

static char *
limit_amiss (const FpNormChange *change, const FpRule *rule)
{
  const FpMeasure *measure = fp_measure_find (rule->measure);
  char *why = fp_limit_amiss (measure, rule->unit, change->low);

  return why ? why : fp_limit_amiss (measure, rule->unit, change->high);
}

static gboolean
limits_fit (const FpNormChange *change, const FpRule *rule, const FpRule *changed, char **amiss)
{
  g_autofree char *why = NULL;

  if ((!isnan (change->low) && !takes_low (rule->test)) || (!isnan (change->high) && !takes_high (rule->test)))
    {
      *amiss = g_strdup_printf ("The norms give the rule “%s” a limit that its test “%s” does not take: it is held as printed.",
                                rule->id, fp_test_id (rule->test));
      return FALSE;
    }
  if ((why = limit_amiss (change, rule)) != NULL)
    {
      *amiss = g_strdup_printf ("%s: the rule “%s” is held as printed.", why, rule->id);
      return FALSE;
    }
  if (rule->test == FP_TEST_BETWEEN && changed->low > changed->high)
    {
      *amiss = g_strdup_printf ("The norms leave nothing between the limits of the rule “%s”: it is held as printed.", rule->id);
      return FALSE;
    }
  return TRUE;
}

gboolean
fp_norms_changed_rule (const FpNormChange *change, const FpRule *rule, FpRule *changed, char **amiss)
{
  *amiss = NULL;
  if (!change || change->aside)
    return FALSE;
  *changed = *rule;
  if (!isnan (change->low))
    changed->low = change->low;
  if (!isnan (change->high))
    changed->high = change->high;
  changed->printed = NULL; /* the words of the source are of another limit */
  return limits_fit (change, rule, changed, amiss);
}

/* --- of no book ---------------------------------------------------------------------------- */

static gboolean
is_in (GPtrArray *books, const char *book, const char *rule)
{
  for (guint b = 0; b < books->len; b++)
    {
      guint n;
      const FpRule *rules = fp_rulebook_rules (books->pdata[b], &n);

      if (strcmp (fp_rulebook_id (books->pdata[b]), book) != 0)
        continue;
      for (guint i = 0; i < n; i++)
        if (strcmp (rules[i].id, rule) == 0)
          return TRUE;
    }
  return FALSE;
}

void
fp_norms_unknown (const FpNorms *norms, GPtrArray *books, GPtrArray *amiss)
{
  for (guint i = 0; i < norms->n_changes; i++)
    if (!is_in (books, norms->change[i].book, norms->change[i].rule))
      g_ptr_array_add (amiss, g_strdup_printf ("The norms hold the rule “%s” of “%s” otherwise, and no book has it.",
                                               norms->change[i].rule, norms->change[i].book));
  for (guint i = 0; i < norms->n_choices; i++)
    if (!is_in (books, norms->choice[i].book, norms->choice[i].rule))
      g_ptr_array_add (amiss, g_strdup_printf ("On “%s” the norms go by the rule “%s” of “%s”, and no book has it.",
                                               norms->choice[i].matter, norms->choice[i].rule, norms->choice[i].book));
}
