/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "remedy-words.h"

#include "things.h"
#include "typing.h"

#include <math.h>

static char *
value_words (const FpRemedy *remedy, FpUnits units)
{
  g_autofree char *value = NULL;
  const char *unit;

  if (remedy->param->type == FP_PARAM_CHOICE)
    return g_strdup (remedy->param->choices[(int) remedy->value].label);
  value = fp_typing_show (remedy->param, remedy->value, units);
  unit = fp_typing_unit (remedy->param, units);
  return *unit != '\0' ? g_strdup_printf ("%s %s", value, unit) : g_steal_pointer (&value);
}

char *
fp_remedy_words (const FpRemedy *remedy, const FpScene *scene)
{
  FpUnits units = fp_project_brief (fp_scene_project (scene))->units;
  int i = fp_scene_find (scene, remedy->item);
  const char *name = i >= 0 ? fp_item_name (fp_scene_placed (scene, NULL)[i].item) : remedy->item;
  g_autofree char *what = NULL;

  if (remedy->param == NULL)
    {
      what = fp_travel_words (remedy->by, units);
      return g_strdup_printf ("%s: %s", name, what);
    }
  what = value_words (remedy, units);
  return g_strdup_printf ("%s, %s: %s", name, remedy->param->label, what);
}

char *
fp_remedy_label (const FpFinding *finding)
{
  return g_strdup_printf ("Settle: %s", finding->rule->title);
}

/* --- the first row ---------------------------------------------------------------- */

static FpUnits
units_of (const FpScene *scene)
{
  return fp_project_brief (fp_scene_project (scene))->units;
}

char *
fp_first_row_label (const FpFirstRow *first, const FpScene *scene)
{
  g_autofree char *wanted = fp_length_format_unit (first->wanted, units_of (scene));

  return g_strdup_printf ("C %s for the first row", wanted);
}

static char *
by_steps_words (const FpFirstRow *first, const FpScene *scene)
{
  const FpUnits units = units_of (scene);
  const int i = fp_scene_find (scene, first->remedy.item);
  const char *name = i >= 0 ? fp_item_name (fp_scene_placed (scene, NULL)[i].item) : first->remedy.item;
  g_autofree char *riser = fp_length_format_unit (first->flight.riser, units), *level = fp_level_format (first->level, units);

  return g_strdup_printf ("%s, %u step%s of %s, the floor of the altar at %s; %u of %u rows %s it then", name,
                          first->flight.steps, first->flight.steps == 1 ? "" : "s", riser, level, first->reach, first->rows,
                          first->reach == 1 ? "has" : "have");
}

static char *
why_not_words (const FpFirstRow *first, const FpScene *scene)
{
  const FpUnits units = units_of (scene);
  g_autofree char *c = fp_length_format_unit (round (first->c), units), *level = fp_level_format (first->level, units);

  switch (first->how)
    {
    case FP_FIRST_ROW_HAS_IT:
      return g_strdup_printf ("it has %s as things stand; those behind gain less from a higher altar", c);
    case FP_FIRST_ROW_NO_STEPS:
      return g_strdup ("the altar stands on no steps of its own that could be more");
    case FP_FIRST_ROW_NO_RISER:
      return g_strdup ("the rules leave no riser by which it could be raised");
    case FP_FIRST_ROW_TOO_HIGH:
      return g_strdup_printf ("the floor of the altar would be at %s, which takes %u steps: more than there can be", level,
                              first->flight.steps);
    case FP_FIRST_ROW_NO_ROOM:
      return g_strdup_printf ("the floor of the altar would be at %s, on %u steps, which reach into the walls", level,
                              first->flight.steps);
    case FP_FIRST_ROW_BY_STEPS:
    case FP_FIRST_ROW_NONE:
      break;
    }
  return NULL;
}

char *
fp_first_row_words (const FpFirstRow *first, const FpScene *scene)
{
  g_autofree char *label = fp_first_row_label (first, scene);
  g_autofree char *what = first->how == FP_FIRST_ROW_BY_STEPS ? by_steps_words (first, scene) : why_not_words (first, scene);

  return what != NULL ? g_strdup_printf ("%s: %s", label, what) : NULL;
}
