/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "finding-words.h"

#include "measuring.h"
#include "printed-unit.h"

/* --- in words ------------------------------------------------------------ */

#define NAMED_MOST 3 /* places named; more are only counted */

/* Those outside, the worst first. */
static GPtrArray *
outside_of (const FpRule *rule, GArray *measured, const FpMeasured *worst)
{
  GPtrArray *outside = g_ptr_array_new ();

  g_ptr_array_add (outside, (gpointer) worst);
  for (guint i = 0; i < measured->len; i++)
    {
      const FpMeasured *one = &g_array_index (measured, FpMeasured, i);

      if (one != worst && fp_rule_excess (rule, one->value) > 0)
        g_ptr_array_add (outside, (gpointer) one);
    }
  return outside;
}

/* "Rail, Gospel side; Rail, Epistle side; and 2 more": each named once. */
static char *
places_named (const FpMeasuring *of, const GPtrArray *outside)
{
  g_autoptr (GPtrArray) named = g_ptr_array_new ();
  g_autoptr (GHashTable) known = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < outside->len; i++)
    {
      const FpMeasured *one = g_ptr_array_index (outside, i);
      g_autofree char *name = one->detail ? g_strdup (one->detail) : fp_measuring_name (of, one->owner);

      if (!name || g_hash_table_contains (known, name))
        continue;
      g_ptr_array_add (named, name);
      g_hash_table_add (known, g_steal_pointer (&name));
    }
  for (guint i = 0; i < MIN (named->len, NAMED_MOST); i++)
    g_string_append_printf (out, "%s%s", i ? "; " : "", (const char *) g_ptr_array_index (named, i));
  if (named->len > NAMED_MOST)
    g_string_append_printf (out, "; and %u more", named->len - NAMED_MOST);
  return g_string_free (out, named->len == 0);
}

char *
fp_finding_where (const FpMeasuring *of, const FpRule *rule, GArray *measured, const FpMeasured *worst)
{
  g_autoptr (GPtrArray) outside = outside_of (rule, measured, worst);

  return worst->row > 0 ? fp_measuring_rows (of, outside) : places_named (of, outside);
}

/* A share is told as one, before its words: "89.7 % (280 of 312 places)" for what is asked as 90 %. */
char *
fp_finding_value_words (const FpFinding *finding, const FpMeasure *measure, const FpMeasured *worst, FpUnits units)
{
  g_autofree char *value = NULL;

  if (worst->text && measure->type != FP_MEASURE_SHARE)
    return g_strdup (worst->text);
  value = finding->found == FP_FOUND_SHORT ? fp_printed_outside (measure, finding->rule, worst->value, units)
                                           : fp_printed_value (measure, worst->value, units);
  return worst->text ? g_strdup_printf ("%s (%s)", value, worst->text) : g_steal_pointer (&value);
}

/* The title of the case that was found. */
const char *
fp_finding_title (const FpRule *rule, double value)
{
  switch (fp_rule_side (rule, value))
    {
    case FP_SIDE_BELOW:
      return rule->below ? rule->below : rule->title;
    case FP_SIDE_ABOVE:
      return rule->above ? rule->above : rule->title;
    case FP_SIDE_NONE:
      return rule->title;
    }
  return rule->title;
}
