/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy-make.c - a remedy, made */
#include "remedy-private.h"

#include "footpace/setting-out.h"

FpProject *
fp_change_make (const FpChange *change, const FpScene *scene, GError **error)
{
  return change->param != NULL ? fp_set_out_param (scene, change->item, change->param->id, change->value, error)
                               : fp_set_out_move (scene, change->item, change->by, error);
}

FpProject *
fp_remedy_make (const FpRemedy *remedy, const FpScene *scene, GError **error)
{
  g_autoptr (FpProject) project = fp_change_make (&remedy->change[0], scene, error);

  for (guint i = 1; project != NULL && i < remedy->n_changes; i++)
    {
      g_autoptr (FpScene) then = fp_scene_new (project, fp_scene_alternative (scene));
      g_autoptr (FpProject) before = g_steal_pointer (&project);

      project = fp_change_make (&remedy->change[i], then, error);
    }
  return g_steal_pointer (&project);
}

FpScene *
fp_remedy_set (const FpScene *whole, const FpScene *like)
{
  const FpSetting *setting = fp_scene_setting (like);

  return setting != NULL ? fp_scene_new_set (whole, fp_setting_celebration (setting)) : fp_scene_ref (whole);
}

gboolean
fp_remedy_changes_survey (const FpRemedy *remedy, const FpScene *scene)
{
  for (guint i = 0; i < remedy->n_changes; i++)
    {
      const int at = fp_scene_find (scene, remedy->change[i].item);

      if (remedy->change[i].param != NULL && at >= 0 && fp_scene_placed (scene, NULL)[at].in_survey)
        return TRUE;
    }
  return FALSE;
}
