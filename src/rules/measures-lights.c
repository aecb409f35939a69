/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Candles: how many are lit at each celebration, how far apart, and how far from what can burn. */
#include "measure-evidence.h"

#include "footpace/order.h"

#include <math.h>

/* Candlesticks stand "beside" the altar up to here (design judgement). */
#define BESIDE 1500.0

/* --- how many ------------------------------------------------------------ */

static gboolean
near_altar (const FpMeasuring *of, int candles, int altar)
{
  const FpPlaced *a = fp_measuring_placed (of, altar), *c = fp_measuring_placed (of, candles);
  FpBox about = a->plan;

  about.x0 -= BESIDE;
  about.y0 -= BESIDE;
  about.x1 += BESIDE;
  about.y1 += BESIDE;
  return fp_box_overlaps (&about, &c->plan);
}

/* Candlesticks on the altar, or (@beside) about it too, and for the bishop the seventh; NAN without an altar. */
static double
candles (const FpMeasuring *of, gboolean beside, gboolean of_bishop, int *owner)
{
  /* Branched lights do not count, nor does the Sanctus candle (Catholic Encyclopedia I, 1907, Altar Candlesticks). */
  static const FpRole counted[] = { FP_ROLE_CANDLES, FP_ROLE_SEVENTH_CANDLE };
  int altar;
  double n = 0;

  fp_measuring_celebrated (of, &altar);
  *owner = altar;
  if (altar < 0)
    return NAN;
  for (guint r = 0; r < (of_bishop ? 2 : 1); r++)
    for (int i = fp_measuring_next (of, counted[r], -1); i >= 0; i = fp_measuring_next (of, counted[r], i))
      if (fp_measuring_stands_on (of, i, altar) || (beside && near_altar (of, i, altar)))
        {
          n += fp_placed_param (fp_measuring_placed (of, i), "count", 1);
          *owner = i;
        }
  return n;
}

/* The most that may be lit at each. */
static double
most_lit (FpCelebration one)
{
  switch (one)
    {
    case FP_CELEBRATION_LOW:
      return 2;
    case FP_CELEBRATION_SUNG:
    case FP_CELEBRATION_SOLEMN:
    case FP_CELEBRATION_REQUIEM:
    case FP_CELEBRATION_PASSIONTIDE:
    case FP_CELEBRATION_WEEKDAY:
    case FP_CELEBRATION_SUNDAY:
      return 6;
    case FP_CELEBRATION_PONTIFICAL:
    case FP_CELEBRATION_BISHOP:
      return 7;
    case FP_CELEBRATION_GOOD_FRIDAY:
      return 0;
    case FP_CELEBRATION_BENEDICTION:
      return FP_COUNT_MAX; /* twelve at least, and no more than stand there */
    }
  return 0;
}

/* --- as it is set ---------------------------------------------------------- */

/* The setting for that celebration; NULL where the church is shown set for another. */
static FpSetting *
setting_for (const FpMeasuring *of, FpCelebration one)
{
  const FpSetting *shown = fp_scene_setting (of->scene);

  if (shown == NULL)
    return fp_setting_new (of->scene, one);
  return fp_setting_celebration (shown) == one ? fp_setting_ref ((FpSetting *) shown) : NULL;
}

static gboolean
is_decided (const FpSetting *setting)
{
  guint n;
  const FpSetThing *thing = fp_setting_things (setting, &n);

  for (guint i = 0; i < n; i++)
    if (thing[i].about && g_strcmp0 (thing[i].lighting.why, FP_SETTING_DECIDED) == 0)
      return TRUE;
  return FALSE;
}

/* How many burn as the setting has it; FALSE where there is no altar. */
static gboolean
take_set (const FpMeasuring *of, GArray *out, const FpSetting *setting)
{
  const guint lit = fp_setting_lit (setting, NULL, NULL, NULL);
  int altar;
  FpMeasured *measured;

  fp_measuring_celebrated (of, &altar);
  if (altar < 0)
    return FALSE;
  measured = fp_measured_add_at (out, lit, altar, fp_placed_middle (fp_measuring_placed (of, altar), 0));
  measured->detail = g_strdup_printf ("as it is set for %s", fp_celebration_label (fp_setting_celebration (setting)));
  return TRUE;
}

static void
take_as_set (const FpMeasuring *of, GArray *out, FpCelebration one)
{
  g_autoptr (FpSetting) setting = setting_for (of, one);

  if (setting != NULL)
    take_set (of, out, setting);
}

void
fp_take_candles_requiem (const FpMeasuring *of, GArray *out)
{
  take_as_set (of, out, FP_CELEBRATION_REQUIEM);
}

void
fp_take_candles_benediction (const FpMeasuring *of, GArray *out)
{
  take_as_set (of, out, FP_CELEBRATION_BENEDICTION);
}

/* --- as many as stand ------------------------------------------------------ */

/* Candlesticks that another celebration of the brief needs stay unlit at this one, unless it was decided how many burn. */
static void
take_lit (const FpMeasuring *of, GArray *out, FpCelebration one, gboolean beside)
{
  guint asked = fp_project_brief (fp_scene_project (of->scene))->celebrations;
  g_autoptr (FpSetting) setting = setting_for (of, one);
  int owner;
  double stand = candles (of, beside, one == FP_CELEBRATION_PONTIFICAL || one == FP_CELEBRATION_BISHOP, &owner), lit = stand;

  if (isnan (stand)
      || (setting != NULL && (fp_scene_setting (of->scene) != NULL || is_decided (setting)) && take_set (of, out, setting)))
    return;
  for (int c = 0; c < FP_N_CELEBRATIONS; c++)
    if ((asked & (1u << c)) && most_lit ((FpCelebration) (1u << c)) > most_lit (one))
      lit = MIN (stand, most_lit (one));

  {
    FpMeasured *measured = fp_measured_add_at (out, lit, owner, fp_placed_middle (fp_measuring_placed (of, owner), 0));

    if (lit < stand)
      measured->detail = g_strdup_printf ("%u stand there for other celebrations", (guint) stand);
  }
}

void
fp_take_candles_low (const FpMeasuring *of, GArray *out)
{
  take_lit (of, out, FP_CELEBRATION_LOW, FALSE);
}

void
fp_take_candles_sung (const FpMeasuring *of, GArray *out)
{
  take_lit (of, out, FP_CELEBRATION_SUNG, FALSE);
}

void
fp_take_candles_solemn (const FpMeasuring *of, GArray *out)
{
  take_lit (of, out, FP_CELEBRATION_SOLEMN, FALSE);
}

void
fp_take_candles_pontifical (const FpMeasuring *of, GArray *out)
{
  take_lit (of, out, FP_CELEBRATION_PONTIFICAL, FALSE);
}

void
fp_take_candles_newer (const FpMeasuring *of, GArray *out)
{
  take_lit (of, out, FP_CELEBRATION_SUNDAY, TRUE);
}

void
fp_take_candles_bishop (const FpMeasuring *of, GArray *out)
{
  take_lit (of, out, FP_CELEBRATION_BISHOP, TRUE);
}

/* Every flame on the altar or about it that counts. */
void
fp_show_candles (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  g_autoptr (GArray) list = fp_scene_lights (of->scene);
  int altar;

  (void) one;
  fp_measuring_celebrated (of, &altar);
  for (guint i = 0; altar >= 0 && i < list->len; i++)
    {
      const FpLight *light = &g_array_index (list, FpLight, i);
      const FpRole role = fp_placed_role (fp_measuring_placed (of, (int) light->owner));

      if ((role == FP_ROLE_CANDLES || role == FP_ROLE_SEVENTH_CANDLE || role == FP_ROLE_BRANCHED_LIGHTS)
          && (fp_measuring_stands_on (of, (int) light->owner, altar) || near_altar (of, (int) light->owner, altar)))
        fp_evidence_add_each (out, light->at);
    }
  fp_evidence_add_thing (out, of, altar);
}

/* --- where the flames are ------------------------------------------------ */

void
fp_take_candle_spacing (const FpMeasuring *of, GArray *out)
{
  g_autoptr (GArray) list = fp_scene_lights (of->scene);
  double least = -1;
  const FpLight *closest = NULL, *other = NULL;

  for (guint i = 0; i < list->len; i++)
    for (guint j = i + 1; j < list->len; j++)
      {
        const FpLight *a = &g_array_index (list, FpLight, i), *b = &g_array_index (list, FpLight, j);
        double apart = hypot (a->at.x - b->at.x, a->at.y - b->at.y);

        if (least < 0 || apart < least)
          {
            least = apart;
            closest = a;
            other = b;
          }
      }
  if (closest)
    fp_measured_span (fp_measured_add_at (out, least, (int) closest->owner, closest->at), closest->at,
                      (FpVec3) { other->at.x, other->at.y, closest->at.z });
}

void
fp_take_flame_clear (const FpMeasuring *of, GArray *out)
{
  g_autoptr (GArray) list = fp_scene_lights (of->scene);
  const FpLight *flame = NULL;
  double least = G_MAXDOUBLE, by;
  FpPoint near = { 0, 0 }, nearest_at = { 0, 0 };
  int thing = -1;

  for (guint i = 0; i < list->len; i++)
    {
      const FpLight *light = &g_array_index (list, FpLight, i);
      const int nearest = light->lit ? fp_flame_nearest (of->scene, light->at, &by, &near) : -1;

      if (nearest < 0 || by >= least)
        continue;
      least = by;
      flame = light;
      nearest_at = near;
      thing = nearest;
    }
  if (flame != NULL)
    {
      FpMeasured *measured = fp_measured_add_at (out, least, (int) flame->owner, flame->at);

      measured->detail = g_strdup_printf ("from a flame to: %s", fp_item_name (fp_measuring_placed (of, thing)->item));
      fp_measured_span (measured, flame->at, (FpVec3) { nearest_at.x, nearest_at.y, flame->at.z });
    }
}

void
fp_take_lamps (const FpMeasuring *of, GArray *out)
{
  double lamps = 0;
  int last = -1;

  for (int i = fp_measuring_next (of, FP_ROLE_SANCTUARY_LAMP, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_SANCTUARY_LAMP, i))
    {
      lamps += fp_placed_param (fp_measuring_placed (of, i), "count", 1);
      last = i;
    }
  if (last >= 0)
    fp_measured_add_at (out, lamps, last, fp_placed_middle (fp_measuring_placed (of, last), 0));
}
