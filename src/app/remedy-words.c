/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "remedy-words.h"

#include "things.h"
#include "typing.h"

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
