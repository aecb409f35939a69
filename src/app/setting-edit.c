/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "setting-edit.h"

typedef enum { STANDS, VEILED, LIT } Field;

static void
say (FpSettingChange *change, Field field, gboolean said, guint value)
{
  const FpSaid yes_or_no = !said ? FP_UNSAID : value != 0 ? FP_SAID_YES : FP_SAID_NO;

  if (field == STANDS)
    change->stands = yes_or_no;
  else if (field == VEILED)
    change->veiled = yes_or_no;
  else
    change->lit = said ? (int) value : FP_LIT_UNSAID;
}

/* What would be if nobody had said anything of it. */
static guint
rule_of (const FpProject *unsaid, guint alternative, FpCelebration one, const char *id, Field field)
{
  g_autoptr (FpSetting) setting = fp_setting_of (unsaid, alternative, one);
  const FpSetThing *thing = fp_setting_find (setting, id);

  if (thing == NULL)
    return 0;
  return field == STANDS ? (guint) thing->stands : field == VEILED ? (guint) thing->veiled : thing->lit;
}

static FpProject *
edit (const FpProject *project, guint alternative, FpCelebration one, const char *id, Field field, guint value, GError **error)
{
  FpSettingChange change = fp_alternative_setting (fp_project_alternative (project, alternative), one, id);
  g_autoptr (FpProject) unsaid = NULL;

  say (&change, field, FALSE, 0);
  unsaid = fp_project_with_setting (project, alternative, one, id, &change, error);
  if (unsaid == NULL)
    return NULL;
  if (rule_of (unsaid, alternative, one, id, field) == value)
    return g_steal_pointer (&unsaid);
  say (&change, field, TRUE, value);
  return fp_project_with_setting (project, alternative, one, id, &change, error);
}

FpProject *
fp_setting_edit_stands (const FpProject *project, guint alternative, FpCelebration one, const char *id, gboolean stands,
                        GError **error)
{
  return edit (project, alternative, one, id, STANDS, stands != 0, error);
}

FpProject *
fp_setting_edit_veiled (const FpProject *project, guint alternative, FpCelebration one, const char *id, gboolean veiled,
                        GError **error)
{
  return edit (project, alternative, one, id, VEILED, veiled != 0, error);
}

FpProject *
fp_setting_edit_lit (const FpProject *project, guint alternative, FpCelebration one, const char *id, guint lit, GError **error)
{
  return edit (project, alternative, one, id, LIT, lit, error);
}
