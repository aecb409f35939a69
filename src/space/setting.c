/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/scene.h"
#include "setting-table.h"

#include <string.h>

/* Candlesticks stand "beside" the altar up to here, mm (design judgement). */
#define BESIDE 1500.0

struct _FpSetting
{
  gatomicrefcount      ref_count;
  const FpProject     *project; /* owned reference: the items are its         */
  FpCelebration        one;
  const FpAlternative *alternative;
  FpColour             colour;
  FpReason             colouring;
  GArray              *things;  /* (element-type FpSetThing)                  */
  GArray              *placed;  /* (element-type int) of each, its index in the whole scene */
};

static const FpReason decided = { FP_SETTING_DECIDED, "" };

static FpSetThing *
thing_at (const FpSetting *self, guint i)
{
  return &g_array_index (self->things, FpSetThing, i);
}

/* --- where it is ------------------------------------------------------------ */

static gboolean
stands_on (const FpPlaced *placed, int thing, int on)
{
  for (int at = thing; at >= 0 && on >= 0; at = placed[at].support)
    if (at == on)
      return TRUE;
  return FALSE;
}

static gboolean
is_on_an_altar (const FpPlaced *placed, int thing)
{
  for (int at = placed[thing].support; at >= 0; at = placed[at].support)
    if (fp_item_kind (placed[at].item)->role == FP_ROLE_ALTAR)
      return TRUE;
  return FALSE;
}

static gboolean
is_beside (const FpPlaced *placed, int thing, int altar)
{
  FpBox about = placed[altar].plan;

  about.x0 -= BESIDE;
  about.y0 -= BESIDE;
  about.x1 += BESIDE;
  about.y1 += BESIDE;
  return fp_box_overlaps (&about, &placed[thing].plan) && !is_on_an_altar (placed, thing);
}

/* --- what stands, and is veiled ---------------------------------------------- */

/* What the table says, and then the alternative. */
static void
decide (const FpSetting *self, FpSetThing *thing, gboolean on_altar)
{
  const FpRole role = fp_item_kind (thing->item)->role;
  const FpSetRule *standing = fp_set_rule_standing (role, on_altar, self->one);
  const FpSetRule *veiling = fp_set_rule_veiling (role, on_altar, self->one);
  const FpSettingChange said = fp_alternative_setting (self->alternative, self->one, fp_item_id (thing->item));

  thing->stands = standing == NULL || standing->stands == FP_SAID_YES;
  thing->veiled = veiling != NULL && veiling->veiled == FP_SAID_YES;
  if (standing != NULL)
    thing->standing = standing->reason;
  if (veiling != NULL)
    thing->veiling = veiling->reason;
  if (said.stands != FP_UNSAID)
    {
      thing->stands = said.stands == FP_SAID_YES;
      thing->standing = decided;
    }
  if (said.veiled != FP_UNSAID)
    {
      thing->veiled = said.veiled == FP_SAID_YES;
      thing->veiling = decided;
    }
}

static void
gather (FpSetting *self, const FpPlaced *placed, guint n)
{
  for (guint i = 0; i < n; i++)
    if (!placed[i].ghost && (fp_item_kind (placed[i].item)->flags & FP_KIND_SURVEY) == 0)
      {
        FpSetThing thing = { .item = placed[i].item };
        const int at = (int) i;

        decide (self, &thing, is_on_an_altar (placed, at));
        g_array_append_val (self->things, thing);
        g_array_append_val (self->placed, at);
      }
}

/* What stands on something that does not stand goes with it. */
static void
follow_supports (FpSetting *self, const FpPlaced *placed)
{
  static const FpReason carried = { "what it stands on does not stand then", "" };
  gboolean more;

  do
    {
      more = FALSE;
      for (guint i = 0; i < self->things->len; i++)
        {
          FpSetThing *thing = thing_at (self, i);
          const int support = placed[g_array_index (self->placed, int, i)].support;
          const FpSetThing *on = support >= 0 ? fp_setting_find (self, fp_item_id (placed[support].item)) : NULL;

          if (!thing->stands || on == NULL || on->stands)
            continue;
          thing->stands = FALSE;
          thing->standing = carried;
          more = TRUE;
        }
    }
  while (more);
}

/* --- what burns ---------------------------------------------------------------- */

static void
count_lights (FpSetting *self, const FpScene *whole)
{
  g_autoptr (GArray) lights = fp_scene_lights (whole);

  for (guint k = 0; k < lights->len; k++)
    for (guint i = 0; i < self->things->len; i++)
      if (g_array_index (self->placed, int, i) == (int) g_array_index (lights, FpLight, k).owner)
        thing_at (self, i)->lights++;
}

/* One candlestick by itself among others on the altar is the seventh, and stands there for the bishop. */
static void
take_seventh_away (FpSetting *self, const FpScene *whole)
{
  static const FpReason seventh = { "the seventh candlestick stands only for the bishop of the place",
                                    "Catholic Encyclopedia I (1907), Altar Candles, p. 348" };
  const FpPlaced *placed = fp_scene_placed (whole, NULL);
  const int altar = fp_scene_celebrated_altar (whole);
  FpSetThing *alone = NULL;
  guint others = 0;

  for (guint i = 0; i < self->things->len; i++)
    {
      FpSetThing *thing = thing_at (self, i);

      if (!thing->stands || fp_item_kind (thing->item)->role != FP_ROLE_CANDLES
          || !stands_on (placed, g_array_index (self->placed, int, i), altar))
        continue;
      if (thing->lights == 1 && alone == NULL)
        alone = thing;
      else
        others += thing->lights;
    }
  if (alone == NULL || others < 2 || others % 2 == 1 || alone->standing.why != NULL
      || self->one == FP_CELEBRATION_PONTIFICAL || self->one == FP_CELEBRATION_BISHOP)
    return;
  alone->stands = FALSE;
  alone->standing = seventh;
}

/* Branched lights count only before the Blessed Sacrament exposed (of Mass: Catholic Encyclopedia I, 1907, Altar
 * Candlesticks). */
static gboolean
is_candle (const FpSetting *self, const FpSetThing *thing)
{
  const FpRole role = fp_item_kind (thing->item)->role;

  return role == FP_ROLE_CANDLES || role == FP_ROLE_SEVENTH_CANDLE
         || (role == FP_ROLE_BRANCHED_LIGHTS && self->one == FP_CELEBRATION_BENEDICTION);
}

static void
find_candles (FpSetting *self, const FpScene *whole, gboolean beside)
{
  const FpPlaced *placed = fp_scene_placed (whole, NULL);
  const int altar = fp_scene_celebrated_altar (whole);

  for (guint i = 0; altar >= 0 && i < self->things->len; i++)
    {
      FpSetThing *thing = thing_at (self, i);
      const int at = g_array_index (self->placed, int, i);

      thing->about = thing->stands && thing->lights > 0 && is_candle (self, thing)
                     && (stands_on (placed, at, altar) || (beside && is_beside (placed, at, altar)));
    }
}

/* An odd number wants one in the middle. */
static gboolean
serves (const FpSetThing *thing, guint wanted)
{
  return thing->lights >= wanted && (wanted % 2 == 0 || thing->lights % 2 == 1);
}

/* The next group to light: the smallest that has as many as are wanted, else the largest.  NULL: none is left. */
static FpSetThing *
next_group (const FpSetting *self, guint wanted)
{
  FpSetThing *best = NULL;

  for (guint i = 0; i < self->things->len; i++)
    {
      FpSetThing *thing = thing_at (self, i);

      if (!thing->about || thing->lit > 0)
        continue;
      if (best == NULL || (serves (thing, wanted) && (!serves (best, wanted) || thing->lights < best->lights))
          || (!serves (thing, wanted) && !serves (best, wanted) && thing->lights > best->lights))
        best = thing;
    }
  return best;
}

/* Lamps, and what is lit by itself. */
static void
light_others (FpSetting *self, const FpPlaced *placed)
{
  for (guint i = 0; i < self->things->len; i++)
    {
      FpSetThing *thing = thing_at (self, i);
      const FpSetRule *rule = fp_set_rule_burning (fp_item_kind (thing->item)->role,
                                                   is_on_an_altar (placed, g_array_index (self->placed, int, i)), self->one);

      if (rule == NULL || !thing->stands || thing->about)
        continue;
      thing->lit = rule->burns == FP_SAID_YES ? thing->lights : 0;
      thing->lighting = rule->reason;
    }
}

static void
light (FpSetting *self, const FpLightRule *rule)
{
  guint wanted = rule->usual;
  FpSetThing *group;

  for (guint i = 0; i < self->things->len; i++)
    if (thing_at (self, i)->about)
      thing_at (self, i)->lighting = rule->reason;
  while (wanted > 0 && (group = next_group (self, wanted)) != NULL)
    {
      group->lit = MIN (group->lights, wanted);
      wanted -= group->lit;
    }
  for (guint i = 0; i < self->things->len; i++)
    {
      FpSetThing *thing = thing_at (self, i);
      const FpSettingChange said = fp_alternative_setting (self->alternative, self->one, fp_item_id (thing->item));

      if (said.lit == FP_LIT_UNSAID)
        continue;
      thing->lit = thing->stands ? MIN ((guint) said.lit, thing->lights) : 0;
      thing->lighting = decided;
    }
}

/* --- life ----------------------------------------------------------------------- */

FpSetting *
fp_setting_new (const FpScene *whole, FpCelebration one)
{
  FpSetting *self = g_new0 (FpSetting, 1);
  const FpLightRule *rule = fp_light_rule (one);
  guint n;
  const FpPlaced *placed = fp_scene_placed (whole, &n);

  g_atomic_ref_count_init (&self->ref_count);
  self->project = fp_project_ref (fp_scene_project (whole));
  self->alternative = fp_project_alternative (self->project, fp_scene_alternative (whole));
  self->one = one;
  self->things = g_array_new (FALSE, FALSE, sizeof (FpSetThing));
  self->placed = g_array_new (FALSE, FALSE, sizeof (int));
  self->colour = fp_set_colour (one, &self->colouring);
  if (fp_alternative_colour (self->alternative, one) != FP_COLOUR_UNSAID)
    {
      self->colour = fp_alternative_colour (self->alternative, one);
      self->colouring = decided;
    }
  gather (self, placed, n);
  follow_supports (self, placed);
  count_lights (self, whole);
  take_seventh_away (self, whole);
  find_candles (self, whole, rule->beside);
  light_others (self, placed);
  light (self, rule);
  return self;
}

FpSetting *
fp_setting_of (const FpProject *project, guint alternative, FpCelebration one)
{
  g_autoptr (FpScene) whole = fp_scene_new (project, alternative);

  return fp_setting_new (whole, one);
}

FpSetting *
fp_setting_ref (FpSetting *self)
{
  g_atomic_ref_count_inc (&self->ref_count);
  return self;
}

void
fp_setting_unref (FpSetting *self)
{
  if (self == NULL || !g_atomic_ref_count_dec (&self->ref_count))
    return;
  g_array_unref (self->things);
  g_array_unref (self->placed);
  fp_project_unref (self->project);
  g_free (self);
}

/* --- asking ----------------------------------------------------------------------- */

FpCelebration
fp_setting_celebration (const FpSetting *self)
{
  return self->one;
}

FpColour
fp_setting_colour (const FpSetting *self, FpReason *reason)
{
  if (reason != NULL)
    *reason = self->colouring;
  return self->colour;
}

static gboolean
has_tabernacle (const FpSetting *self)
{
  guint n;
  const FpSetThing *thing = fp_setting_things (self, &n);

  for (guint i = 0; i < n; i++)
    if (fp_item_kind (thing[i].item)->role == FP_ROLE_TABERNACLE && thing[i].stands)
      return TRUE;
  return FALSE;
}

FpColour
fp_setting_colour_of (const FpSetting *self, FpRole role)
{
  if (self->colour == FP_COLOUR_BLACK
      && (role == FP_ROLE_TABERNACLE_VEIL || (role == FP_ROLE_FRONTAL && has_tabernacle (self))))
    return FP_COLOUR_VIOLET;
  return self->colour;
}

const FpSetThing *
fp_setting_things (const FpSetting *self, guint *n)
{
  *n = self->things->len;
  return (const FpSetThing *) (gpointer) self->things->data;
}

const FpSetThing *
fp_setting_find (const FpSetting *self, const char *id)
{
  for (guint i = 0; i < self->things->len; i++)
    if (strcmp (fp_item_id (thing_at (self, i)->item), id) == 0)
      return thing_at (self, i);
  return NULL;
}

guint
fp_setting_lit (const FpSetting *self, guint *least, guint *most, FpReason *reason)
{
  const FpLightRule *rule = fp_light_rule (self->one);
  guint lit = 0;

  for (guint i = 0; i < self->things->len; i++)
    if (thing_at (self, i)->about)
      lit += thing_at (self, i)->lit;
  if (least != NULL)
    *least = rule->least;
  if (most != NULL)
    *most = rule->most;
  if (reason != NULL)
    *reason = rule->reason;
  return lit;
}
