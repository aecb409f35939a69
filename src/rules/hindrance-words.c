/* SPDX-License-Identifier: GPL-3.0-or-later */
/* hindrance-words.c - what stands in the way of a remedy, as it is said wherever that is */
#include "remedy-private.h"

#include <math.h>

static char *
wanted_words (const FpHindrance *why, double value, FpUnits units)
{
  const FpParam *param = why->change.param;

  if (param == NULL)
    return fp_length_format_unit (round (fabs (value)), units);
  if (param->type == FP_PARAM_COUNT)
    return fp_number_format_rounded (value > why->limit ? ceil (value) : floor (value), 0);
  return fp_remedy_value_words (param, param->type == FP_PARAM_LENGTH ? round (value) : value, units);
}

/* By how much it would have to change is what makes it another design, be that more or less of it. */
static char *
reach_words (const FpHindrance *why, const FpScene *scene, FpUnits units)
{
  const FpParam *param = why->change.param;
  const FpItem *item = fp_remedy_item (scene, why->change.item);
  const char *name = fp_remedy_item_name (scene, why->change.item);
  g_autofree char *wanted = wanted_words (why, why->wanted, units), *limit = NULL, *what = NULL;
  double by;

  if (param == NULL || item == NULL)
    {
      limit = wanted_words (why, why->limit, units);
      return g_strdup_printf ("%s would have to be moved about %s %s; farther than %s is another design.", name, wanted,
                              fp_remedy_way_words (why->change.by), limit);
    }
  what = fp_remedy_label_words (param);
  by = fabs (why->limit - fp_item_param (item, param->id));
  limit = param->type == FP_PARAM_COUNT ? fp_number_format_rounded (by, 0) : fp_length_format_unit (round (by), units);
  return g_strdup_printf ("%s: %s would have to change by more than %s, to about %s: that is another design.", name, what, limit,
                          wanted);
}

static char *
beyond_words (const FpHindrance *why, const FpScene *scene, FpUnits units)
{
  const char *name = fp_remedy_item_name (scene, why->change.item);
  g_autofree char *what = why->change.param != NULL ? fp_remedy_label_words (why->change.param) : NULL;
  const gboolean most = why->wanted > why->limit;
  g_autofree char *wanted = wanted_words (why, why->wanted, units), *limit = wanted_words (why, why->limit, units);
  g_autofree char *has = what != NULL ? g_strdup_printf ("%s: %s would have to be about %s", name, what, wanted)
                                      : g_strdup_printf ("%s would have to be moved about %s %s", name, wanted,
                                                         fp_remedy_way_words (why->change.by));

  switch (why->how)
    {
    case FP_HINDRANCE_RULES:
      return g_strdup_printf ("%s; the rules leave %s at %s.", has, limit, most ? "most" : "least");
    case FP_HINDRANCE_RANGE:
      return g_strdup_printf ("%s; it can be %s at %s.", has, limit, most ? "most" : "least");
    case FP_HINDRANCE_REACH:
      return reach_words (why, scene, units);
    default:
      return NULL;
    }
}

/* Where more than one alternative is asked: which. */
static char *
where_words (const FpHindrance *why, const FpFindings *findings)
{
  const FpProject *project = fp_scene_project (fp_findings_scene (findings));

  if (why->other == 0)
    return g_strdup ("");
  return g_strdup_printf (" in “%s”, of which this is the survey too",
                          fp_alternative_name (fp_project_alternative (project, why->other - 1)));
}

static char *
places_words (const FpHindrance *why, const FpFindings *findings, FpUnits units)
{
  GString *text = g_string_new (NULL);

  fp_remedy_add_change (text, &why->change, fp_findings_scene (findings), TRUE, units);
  g_string_append_printf (text, " would settle it, but take away %u %s.", why->lost, why->lost == 1 ? "place" : "places");
  return g_string_free (text, FALSE);
}

/* What is asked of whoever owns such a thing. */
static const char *
who_may (const FpItem *item)
{
  if (fp_item_kind (item)->role == FP_ROLE_ALTAR)
    return "to alter or replace an old altar needs the consent of the Ordinary and of those who protect monuments";
  return "choose another that is so, or have it altered";
}

static void
add_help (GString *text, const FpHindrance *why, const FpFindings *findings, FpUnits units)
{
  if (why->help.item == NULL)
    {
      g_string_append (text, " Nothing that may be changed does a part of it.");
      return;
    }
  g_string_append (text, " Of what may be changed this does most: ");
  fp_remedy_add_change (text, &why->help, fp_findings_scene (findings), TRUE, units);
  g_string_append_printf (text, ", which makes up %.0f %% of what is short.", MAX (1.0, floor (why->part * 100.0)));
}

/* What another would have to be, and what else could be done. */
static char *
stands_words (const FpHindrance *why, const FpFindings *findings, FpUnits units)
{
  const FpScene *scene = fp_findings_scene (findings);
  const FpItem *item = fp_remedy_item (scene, why->change.item);
  const char *name = fp_remedy_item_name (scene, why->change.item);
  const FpParam *param = why->change.param;
  GString *text = g_string_new (NULL);

  if (param == NULL || item == NULL)
    g_string_append_printf (text, "%s stands there already, and neither a place for it nor another size of it settles it.", name);
  else
    {
      g_autofree char *label = fp_remedy_label_words (param);
      g_autofree char *has = fp_remedy_value_words (param, fp_item_param (item, param->id), units);
      g_autofree char *wanted = fp_remedy_value_words (param, why->change.value, units);

      g_string_append_printf (text, "%s stands there already, and no place for it settles it: %s would have to be %s instead of %s; %s.",
                              name, label, wanted, has, who_may (item));
    }
  add_help (text, why, findings, units);
  return g_string_free (text, FALSE);
}

static char *
worse_words (const FpHindrance *why, const FpFindings *findings, FpUnits units)
{
  guint n;
  const FpFinding *worse = &fp_findings_get (findings, &n)[why->worse];
  GString *text = g_string_new (NULL);

  fp_remedy_add_change (text, &why->change, fp_findings_scene (findings), TRUE, units);
  if (why->other > 0)
    {
      g_autofree char *where = where_words (why, findings);

      g_string_append_printf (text, " would settle it, but “%s” (%s) becomes worse%s.", worse->rule->title,
                              fp_weight_label (worse->rule->weight), where);
    }
  else if (why->gone)
    g_string_append_printf (text, " would settle it, but leave nothing of which “%s” (%s) could be measured.", worse->rule->title,
                            fp_weight_label (worse->rule->weight));
  else
    g_string_append_printf (text, " would settle it, but %s “%s” (%s).",
                            worse->found == FP_FOUND_SHORT ? "make worse what is short already:" : "make short:",
                            worse->rule->title, fp_weight_label (worse->rule->weight));
  return g_string_free (text, FALSE);
}

char *
fp_hindrance_words (const FpHindrance *why, const FpFindings *findings)
{
  const FpScene *scene = fp_findings_scene (findings);
  const FpUnits units = fp_project_brief (fp_scene_project (scene))->units;

  switch (why->how)
    {
    case FP_HINDRANCE_NONE:
    case FP_HINDRANCE_CANCELLED:
      return NULL;
    case FP_HINDRANCE_WORSE:
      return worse_words (why, findings, units);
    case FP_HINDRANCE_PLACES:
      return places_words (why, findings, units);
    case FP_HINDRANCE_RULES:
    case FP_HINDRANCE_RANGE:
    case FP_HINDRANCE_REACH:
      return beyond_words (why, scene, units);
    case FP_HINDRANCE_STANDS:
      return stands_words (why, findings, units);
    case FP_HINDRANCE_NO_SAY:
      return g_strdup ("No change of one or two sizes or places settles it: something has to be added, taken away or decided.");
    case FP_HINDRANCE_SIGHT:
      return g_strdup ("What people see has not been looked at yet.");
    case FP_HINDRANCE_MANY:
      return g_strdup ("Nothing was found that settles it; there is more that could be changed than was tried.");
    }
  return NULL;
}
