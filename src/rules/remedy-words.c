/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy-words.c - a remedy, as it is said wherever that is */
#include "remedy-private.h"

#include <math.h>
#include <string.h>

#define TELLING 0.5 /* mm: less is no other level */

/* --- figures ------------------------------------------------------------------ */

char *
fp_remedy_value_words (const FpParam *param, double value, FpUnits units)
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

const char *
fp_remedy_way_words (FpVec3 by)
{
  if (by.y != 0.0)
    return by.y > 0.0 ? "east" : "west";
  return by.x > 0.0 ? "to the Epistle side" : "to the Gospel side";
}

static char *
move_words (FpVec3 by, FpUnits units)
{
  g_autofree char *length = fp_length_format_unit (fabs (by.y != 0.0 ? by.y : by.x), units);

  return g_strdup_printf ("%s %s", length, fp_remedy_way_words (by));
}

/* "Steps" of "Steps, the footpace included": as it is said in a sentence. */
char *
fp_remedy_label_words (const FpParam *param)
{
  return g_strchomp (g_strndup (param->label, strcspn (param->label, ",;(")));
}

static char *
change_beside (const FpChange *change, FpUnits units)
{
  g_autofree char *value = change->param != NULL ? fp_remedy_value_words (change->param, change->value, units) : NULL;
  g_autofree char *label = change->param != NULL ? fp_remedy_label_words (change->param) : NULL;

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

const FpItem *
fp_remedy_item (const FpScene *scene, const char *id)
{
  const int i = fp_scene_find (scene, id);

  return i >= 0 ? fp_scene_placed (scene, NULL)[i].item : NULL;
}

const char *
fp_remedy_item_name (const FpScene *scene, const char *id)
{
  const FpItem *item = fp_remedy_item (scene, id);

  return item != NULL ? fp_item_name (item) : id;
}

void
fp_remedy_add_change (GString *text, const FpChange *change, const FpScene *scene, gboolean named, FpUnits units)
{
  const FpItem *item = fp_remedy_item (scene, change->item);
  g_autofree char *to = NULL, *from = NULL, *label = NULL;

  if (named)
    g_string_append_printf (text, "%s: ", fp_remedy_item_name (scene, change->item));
  if (change->param == NULL)
    {
      to = move_words (change->by, units);
      g_string_append_printf (text, "moved %s", to);
      return;
    }
  to = fp_remedy_value_words (change->param, change->value, units);
  from = item != NULL ? fp_remedy_value_words (change->param, fp_item_param (item, change->param->id), units) : g_strdup ("?");
  label = fp_remedy_label_words (change->param);
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
      const FpItem *item = then != NULL ? fp_remedy_item (then, remedy->change[i].item) : NULL;

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
    g_string_append (text, fp_project_n_alternatives (fp_scene_project (scene)) > 1
                             ? "; this changes the survey, for every alternative, and makes none of the others worse"
                             : "; this changes the survey");
}

/* "“A”, “B”" of findings. */
static void
add_titles (GString *text, const guint *index, guint n_index, const FpFindings *findings)
{
  guint n;
  const FpFinding *finding = fp_findings_get (findings, &n);

  for (guint i = 0; i < n_index; i++)
    g_string_append_printf (text, "%s“%s”", i == 0 ? "" : i + 1 < n_index ? ", " : " and ", finding[index[i]].title);
}

static void
add_settles (GString *text, const FpRemedy *remedy, const FpFindings *findings)
{
  if (remedy->n_settles == 0)
    return;
  g_string_append (text, "; also settles ");
  add_titles (text, remedy->settles, remedy->n_settles, findings);
}

static guint
places_looked_from (const FpFindings *findings, const FpFinding *finding)
{
  const FpSight *sight = fp_findings_measuring (findings)->sight;
  FpFocus focus;

  return sight != NULL && fp_measure_focus (finding->rule->measure, &focus)
           ? fp_sight_church (sight, fp_moment_of_focus (focus), focus).places : 0;
}

/* "2 of 312 places see less", "on average 1.2 % less is seen". */
static char *
dim_words (const FpFinding *finding, double lost, const FpFindings *findings)
{
  const FpMeasure *measure = fp_measure_find (finding->rule->measure);
  const guint all = places_looked_from (findings, finding), places = (guint) round (lost * all);
  g_autofree char *number = fp_number_format_rounded (MAX (lost * 100.0, 0.1), 1);
  g_autofree char *share = g_strdup_printf (lost < 0.001 ? "less than %s" : "%s", number);

  if (fp_measure_is_over_heads (measure))
    return g_strdup_printf ("the least C-value is less by %s %% of what is asked", share);
  if (all == 0)
    return g_strdup ("less is seen");
  if (g_str_equal (measure->id, "mensa-mean"))
    return g_strdup_printf ("on average %s %% less is seen", share);
  return g_strdup_printf ("%u of %u places %s less", places, all, places == 1 ? "sees" : "see");
}

/* As many places of several rules are told once. */
static void
add_dims (GString *text, const FpRemedy *remedy, const FpFindings *findings)
{
  g_autoptr (GPtrArray) words = g_ptr_array_new_with_free_func (g_free);
  guint n, told = 0;
  const FpFinding *finding = fp_findings_get (findings, &n);

  for (guint i = 0; i < remedy->n_dims; i++)
    g_ptr_array_add (words, dim_words (&finding[remedy->dims[i].finding], remedy->dims[i].lost, findings));
  for (guint i = 0; i < words->len; i++)
    {
      guint like[FP_REMEDY_DIMS], n_like = 0;

      for (guint k = 0; k < words->len; k++)
        if (g_str_equal (words->pdata[k], words->pdata[i]))
          like[n_like++] = k;
      if (like[0] < i)
        continue;
      for (guint k = 0; k < n_like; k++)
        like[k] = remedy->dims[like[k]].finding;
      g_string_append_printf (text, "%s%s (", told++ == 0 ? "; then " : ", ", (const char *) words->pdata[i]);
      add_titles (text, like, n_like, findings);
      g_string_append (text, ")");
    }
}

/* What is lost, though it makes nothing short that was not. */
static void
add_losses (GString *text, const FpRemedy *remedy, const FpFindings *findings)
{
  if (remedy->places_lost > 0)
    g_string_append_printf (text, "; loses %u %s", remedy->places_lost, remedy->places_lost == 1 ? "place" : "places");
  add_dims (text, remedy, findings);
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
      fp_remedy_add_change (text, &remedy->change[i], scene, !same, units);
    }
  add_consequences (text, remedy, scene, units);
  add_settles (text, remedy, findings);
  add_losses (text, remedy, findings);
  add_worse (text, remedy, findings);
  return g_string_free (text, FALSE);
}

char *
fp_remedy_further_words (const FpRemedy *further, const FpFindings *findings)
{
  const FpUnits units = fp_project_brief (fp_scene_project (fp_findings_scene (findings)))->units;
  g_autofree char *to = fp_remedy_value_words (further->change[0].param, further->change[0].value, units);
  GString *text = g_string_new (NULL);

  g_string_append_printf (text, "or to %s, which also settles ", to);
  add_titles (text, further->settles, further->n_settles, findings);
  return g_string_free (text, FALSE);
}

char *
fp_remedy_label (const FpFinding *finding)
{
  return g_strdup_printf ("Settle: %s", finding->rule->title);
}
