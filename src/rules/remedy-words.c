/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy-words.c - a remedy, and what stands in the way of one, as they are said wherever that is */
#include "remedy-private.h"

#include <math.h>
#include <string.h>

#define TELLING 0.5 /* mm: less is no other level */

/* --- figures ------------------------------------------------------------------ */

static char *
value_words (const FpParam *param, double value, FpUnits units)
{
  g_autofree char *number = NULL;

  switch (param->type)
    {
    case FP_PARAM_LENGTH:
      return fp_length_format_unit (value, units);
    case FP_PARAM_LEVEL:
      return fp_level_format (value, units);
    case FP_PARAM_CHOICE:
      return g_strdup (param->choices[(guint) value].label);
    case FP_PARAM_SHARE:
      number = fp_number_format_rounded (value * 100.0, 2);
      return g_strdup_printf ("%s %%", number);
    case FP_PARAM_ANGLE:
      number = fp_number_format_rounded (value, 2);
      return g_strdup_printf ("%s°", number);
    case FP_PARAM_COUNT:
      return fp_number_format_rounded (value, 0);
    }
  return g_strdup ("");
}

static const char *
way_words (FpVec3 by)
{
  if (by.y != 0.0)
    return by.y > 0.0 ? "east" : "west";
  return by.x > 0.0 ? "to the Epistle side" : "to the Gospel side";
}

static char *
move_words (FpVec3 by, FpUnits units)
{
  g_autofree char *length = fp_length_format_unit (fabs (by.y != 0.0 ? by.y : by.x), units);

  return g_strdup_printf ("%s %s", length, way_words (by));
}

/* "Steps" of "Steps, the footpace included": as it is said in a sentence. */
static char *
label_words (const FpParam *param)
{
  return g_strchomp (g_strndup (param->label, strcspn (param->label, ",;(")));
}

static char *
change_beside (const FpChange *change, FpUnits units)
{
  g_autofree char *value = change->param != NULL ? value_words (change->param, change->value, units) : NULL;
  g_autofree char *label = change->param != NULL ? label_words (change->param) : NULL;

  return value != NULL ? g_strdup_printf ("%s: %s", label, value) : move_words (change->by, units);
}

char *
fp_remedy_beside (const FpRemedy *remedy, FpUnits units)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < remedy->n_changes; i++)
    {
      g_autofree char *one = change_beside (&remedy->change[i], units);

      g_string_append_printf (text, "%s%s", i > 0 ? "\n" : "", one);
    }
  return g_string_free (text, FALSE);
}

/* --- one change ------------------------------------------------------------------ */

static const FpItem *
item_of (const FpScene *scene, const char *id)
{
  const int i = fp_scene_find (scene, id);

  return i >= 0 ? fp_scene_placed (scene, NULL)[i].item : NULL;
}

static const char *
name_of (const FpScene *scene, const char *id)
{
  const FpItem *item = item_of (scene, id);

  return item != NULL ? fp_item_name (item) : id;
}

static void
add_change (GString *text, const FpChange *change, const FpScene *scene, gboolean named, FpUnits units)
{
  const FpItem *item = item_of (scene, change->item);
  g_autofree char *to = NULL, *from = NULL, *label = NULL;

  if (named)
    g_string_append_printf (text, "%s: ", name_of (scene, change->item));
  if (change->param == NULL)
    {
      to = move_words (change->by, units);
      g_string_append_printf (text, "moved %s", to);
      return;
    }
  to = value_words (change->param, change->value, units);
  from = item != NULL ? value_words (change->param, fp_item_param (item, change->param->id), units) : g_strdup ("?");
  label = label_words (change->param);
  g_string_append_printf (text, "%s from %s to %s", label, from, to);
}

/* --- what follows ---------------------------------------------------------------- */

static void
add_flight (GString *text, const FpItem *steps, FpUnits units)
{
  const FpKind *kind = fp_item_kind (steps);
  const double count = fp_kind_param_index (kind, "count") >= 0 ? fp_item_param (steps, "count") : 0.0;
  g_autofree char *riser = NULL;

  if (kind->role != FP_ROLE_FOOTPACE || count < 1.0)
    return;
  riser = fp_length_format_unit (fp_item_param (steps, "riser"), units);
  g_string_append_printf (text, "; %.0f %s of %s", count, count > 1.0 ? "steps" : "step", riser);
}

static void
add_levels (GString *text, const FpScene *now, const FpScene *then, FpUnits units)
{
  g_autoptr (FpPeople) people_now = fp_people_new (now), people_then = fp_people_new (then);
  const FpLevels a = fp_levels (people_now), b = fp_levels (people_then);
  const double by = b.footpace - a.footpace;
  g_autofree char *length = NULL, *level = NULL;

  if (!a.has_altar || !b.has_altar || fabs (by) < TELLING)
    return;
  length = fp_length_format_unit (fabs (by), units);
  level = fp_level_format (b.footpace, units);
  g_string_append_printf (text, "; the floor of the altar %s %s, at %s", length, by > 0.0 ? "higher" : "lower", level);
}

static void
add_worse (GString *text, const FpRemedy *remedy, const FpFindings *findings)
{
  guint n;
  const FpFinding *finding = fp_findings_get (findings, &n);

  for (guint i = 0; i < remedy->n_worse; i++)
    {
      const FpFinding *worse = &finding[remedy->worse[i]];

      g_string_append_printf (text, "%s“%s” (%s)%s", i == 0 ? "; then also: " : ", ", worse->rule->title,
                              fp_weight_label (worse->rule->weight),
                              worse->found == FP_FOUND_SHORT ? ", farther outside than now" : "");
    }
}

static void
add_consequences (GString *text, const FpRemedy *remedy, const FpScene *scene, FpUnits units)
{
  g_autoptr (FpProject) project = fp_remedy_make (remedy, scene, NULL);
  g_autoptr (FpScene) then = project != NULL ? fp_scene_new (project, fp_scene_alternative (scene)) : NULL;
  gboolean flight = FALSE;

  for (guint i = 0; i < remedy->n_changes; i++)
    {
      const FpItem *item = then != NULL ? item_of (then, remedy->change[i].item) : NULL;

      if (item != NULL && remedy->change[i].param != NULL && !flight
          && (g_str_equal (remedy->change[i].param->id, "riser") || g_str_equal (remedy->change[i].param->id, "count")))
        {
          add_flight (text, item, units);
          flight = TRUE;
        }
    }
  if (then != NULL)
    add_levels (text, scene, then, units);
  if (fp_remedy_changes_survey (remedy, scene))
    g_string_append (text, "; this changes the survey, for every alternative");
}

char *
fp_remedy_words (const FpRemedy *remedy, const FpFindings *findings)
{
  const FpScene *scene = fp_findings_scene (findings);
  const FpUnits units = fp_project_brief (fp_scene_project (scene))->units;
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < remedy->n_changes; i++)
    {
      const gboolean same = i > 0 && remedy->change[i].item == remedy->change[i - 1].item;

      g_string_append (text, i == 0 ? "" : same ? ", and " : "; and ");
      add_change (text, &remedy->change[i], scene, !same, units);
    }
  add_consequences (text, remedy, scene, units);
  add_worse (text, remedy, findings);
  return g_string_free (text, FALSE);
}

char *
fp_remedy_label (const FpFinding *finding)
{
  return g_strdup_printf ("Settle: %s", finding->rule->title);
}

/* --- what stands in the way --------------------------------------------------------- */

static char *
wanted_words (const FpHindrance *why, double value, FpUnits units)
{
  const FpParam *param = why->change.param;

  if (param == NULL)
    return fp_length_format_unit (round (fabs (value)), units);
  if (param->type == FP_PARAM_COUNT)
    return fp_number_format_rounded (value > why->limit ? ceil (value) : floor (value), 0);
  return value_words (param, param->type == FP_PARAM_LENGTH ? round (value) : value, units);
}

/* By how much it would have to change is what makes it another design, be that more or less of it. */
static char *
reach_words (const FpHindrance *why, const FpScene *scene, FpUnits units)
{
  const FpParam *param = why->change.param;
  const FpItem *item = item_of (scene, why->change.item);
  const char *name = name_of (scene, why->change.item);
  g_autofree char *wanted = wanted_words (why, why->wanted, units), *limit = NULL, *what = NULL;
  double by;

  if (param == NULL || item == NULL)
    {
      limit = wanted_words (why, why->limit, units);
      return g_strdup_printf ("%s would have to be moved about %s %s; farther than %s is another design.", name, wanted,
                              way_words (why->change.by), limit);
    }
  what = label_words (param);
  by = fabs (why->limit - fp_item_param (item, param->id));
  limit = param->type == FP_PARAM_COUNT ? fp_number_format_rounded (by, 0) : fp_length_format_unit (round (by), units);
  return g_strdup_printf ("%s: %s would have to change by more than %s, to about %s: that is another design.", name, what, limit,
                          wanted);
}

static char *
beyond_words (const FpHindrance *why, const FpScene *scene, FpUnits units)
{
  const char *name = name_of (scene, why->change.item);
  g_autofree char *what = why->change.param != NULL ? label_words (why->change.param) : NULL;
  const gboolean most = why->wanted > why->limit;
  g_autofree char *wanted = wanted_words (why, why->wanted, units), *limit = wanted_words (why, why->limit, units);
  g_autofree char *has = what != NULL ? g_strdup_printf ("%s: %s would have to be about %s", name, what, wanted)
                                      : g_strdup_printf ("%s would have to be moved about %s %s", name, wanted,
                                                         way_words (why->change.by));

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

static char *
worse_words (const FpHindrance *why, const FpFindings *findings, FpUnits units)
{
  guint n;
  const FpFinding *worse = &fp_findings_get (findings, &n)[why->worse];
  GString *text = g_string_new (NULL);

  add_change (text, &why->change, fp_findings_scene (findings), TRUE, units);
  if (why->gone)
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
    case FP_HINDRANCE_RULES:
    case FP_HINDRANCE_RANGE:
    case FP_HINDRANCE_REACH:
      return beyond_words (why, scene, units);
    case FP_HINDRANCE_STANDS:
      return g_strdup_printf ("%s stands there already, and no place for it settles it: choose another.",
                              name_of (scene, why->change.item));
    case FP_HINDRANCE_NO_SAY:
      return g_strdup ("No change of one or two sizes or places settles it: something has to be added, taken away or decided.");
    case FP_HINDRANCE_SIGHT:
      return g_strdup ("What people see has not been looked at yet.");
    case FP_HINDRANCE_MANY:
      return g_strdup ("Nothing was found that settles it; there is more that could be changed than was tried.");
    }
  return NULL;
}
