/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is missing at a celebration that the brief asks for, as the church is set for it: only of things that are drawn. */
#include "measuring.h"

#define OLDER_MASS (FP_CELEBRATION_LOW | FP_CELEBRATION_SUNG | FP_CELEBRATION_SOLEMN | FP_CELEBRATION_PONTIFICAL \
                    | FP_CELEBRATION_REQUIEM | FP_CELEBRATION_PASSIONTIDE)

typedef gboolean (*IsFine) (const FpSetThing *thing);

static gboolean
stands (const FpSetThing *thing)
{
  return thing->stands;
}

static gboolean
burns (const FpSetThing *thing)
{
  return thing->stands && thing->lit > 0;
}

static gboolean
is_missing (const FpSetting *setting, FpRole role, IsFine is_fine)
{
  guint n;
  const FpSetThing *thing = fp_setting_things (setting, &n);

  for (guint i = 0; i < n; i++)
    if (fp_item_kind (thing[i].item)->role == role && is_fine (&thing[i]))
      return FALSE;
  return TRUE;
}

/* Of the setting that is shown, or of each that is asked for. */
static guint
celebrations_looked_at (const FpMeasuring *of, guint among)
{
  const FpSetting *shown = fp_scene_setting (of->scene);
  const guint asked = fp_project_brief (fp_scene_project (of->scene))->celebrations;

  return among & (shown != NULL ? (guint) fp_setting_celebration (shown) : asked);
}

static FpSetting *
setting_for (const FpMeasuring *of, FpCelebration one)
{
  const FpSetting *shown = fp_scene_setting (of->scene);

  return shown != NULL ? fp_setting_ref ((FpSetting *) shown) : fp_setting_new (of->scene, one);
}

static gboolean
is_drawn (const FpMeasuring *of, FpRole role)
{
  const FpSetting *shown = fp_scene_setting (of->scene);
  guint n;
  const FpSetThing *thing;

  if (shown == NULL)
    return fp_scene_role (of->scene, role) >= 0;
  thing = fp_setting_things (shown, &n);
  for (guint i = 0; i < n; i++)
    if (fp_item_kind (thing[i].item)->role == role)
      return TRUE;
  return FALSE;
}

static void
take_missing (const FpMeasuring *of, GArray *out, guint among, FpRole role, IsFine is_fine)
{
  const guint looked_at = celebrations_looked_at (of, among);
  g_autoptr (GString) names = g_string_new ("");
  FpMeasured *measured;
  guint missing = 0;
  int thing;

  if (looked_at == 0 || !is_drawn (of, role))
    return;
  for (guint i = 0; i < FP_N_CELEBRATIONS; i++)
    if ((looked_at & 1u << i) != 0)
      {
        g_autoptr (FpSetting) setting = setting_for (of, (FpCelebration) (1u << i));

        if (!is_missing (setting, role, is_fine))
          continue;
        g_string_append_printf (names, "%s%s", missing > 0 ? ", " : "as it is set for ",
                                fp_celebration_label ((FpCelebration) (1u << i)));
        missing++;
      }
  thing = fp_scene_role (of->scene, role);
  measured = thing >= 0 ? fp_measured_add_at (out, missing, thing, fp_placed_middle (fp_measuring_placed (of, thing), 0))
                        : fp_measured_add (out, missing);
  if (missing > 0)
    measured->detail = g_string_free (g_steal_pointer (&names), FALSE);
}

void
fp_take_cross_away_older (const FpMeasuring *of, GArray *out)
{
  take_missing (of, out, OLDER_MASS, FP_ROLE_CRUCIFIX, stands);
}

void
fp_take_cross_away_newer (const FpMeasuring *of, GArray *out)
{
  take_missing (of, out, FP_CELEBRATIONS_NEWER, FP_ROLE_CRUCIFIX, stands);
}

void
fp_take_cards_away (const FpMeasuring *of, GArray *out)
{
  take_missing (of, out, OLDER_MASS, FP_ROLE_ALTAR_CARDS, stands);
}

void
fp_take_lamp_out (const FpMeasuring *of, GArray *out)
{
  take_missing (of, out, ~(guint) FP_CELEBRATION_GOOD_FRIDAY, FP_ROLE_SANCTUARY_LAMP, burns);
}
