/* SPDX-License-Identifier: GPL-3.0-or-later */
/* card-words.c - a thing of the card in words: what is done with it, where it stands, where it is kept */
#include "card-private.h"

#include <math.h>
#include <string.h>

/* This near to the axis it stands in the middle, mm (design judgement). */
#define MIDDLE 60.0

static const FpPlaced *
altar_of (const FpScene *scene)
{
  const int altar = fp_scene_celebrated_altar (scene);

  return altar >= 0 ? &fp_scene_placed (scene, NULL)[altar] : NULL;
}

/* Where it lies from the axis of the altar. */
static const char *
side_words (const FpScene *scene, const FpPlaced *thing, gboolean several)
{
  const FpPlaced *altar = altar_of (scene);
  FpPoint at;

  if (altar == NULL)
    return NULL;
  at = fp_place_unpoint (&altar->place, (FpPoint) { (thing->plan.x0 + thing->plan.x1) / 2, (thing->plan.y0 + thing->plan.y1) / 2 });
  if (fabs (at.x) > MIDDLE)
    return at.x > 0 ? "Epistle side" : "Gospel side";
  return several ? "on both sides" : "in the middle";
}

/* "the gradine", or what it was called; of the altar there is no doubt. */
static char *
named (const FpItem *item)
{
  const FpKind *kind = fp_item_kind (item);
  const char *name = kind->role == FP_ROLE_ALTAR ? kind->label : fp_item_name (item);

  if (kind->role == FP_ROLE_FOOTPACE)
    return g_strdup ("the altar steps");
  if (fp_item_has_name (item) && kind->role != FP_ROLE_ALTAR)
    return g_strdup_printf ("“%s”", name);
  return g_strdup_printf ("the %c%s", g_ascii_tolower (name[0]), name + 1);
}

/* A lamp hangs on chains or from a bracket, but where it has a stand. */
static gboolean
hangs (const FpPlaced *thing)
{
  const FpKind *kind = fp_item_kind (thing->item);
  const int mount = fp_kind_param_index (kind, "mount");

  return mount >= 0 && strcmp (kind->params[mount].choices[(guint) thing->form.param[mount]].id, "stand") != 0;
}

static void
add_where (const FpCard *self, int placed, guint lights, GString *out)
{
  const FpPlaced *all = fp_scene_placed (self->set, NULL), *thing = &all[placed];
  /* The cards lie on both sides and in the middle, as was said. */
  const char *side = fp_item_kind (thing->item)->role == FP_ROLE_ALTAR_CARDS ? NULL : side_words (self->set, thing, lights > 1);

  if ((fp_item_kind (thing->item)->flags & FP_KIND_HUNG) != 0)
    return; /* where else */
  if (thing->support >= 0)
    {
      g_autofree char *on = named (all[thing->support].item);

      g_string_append_printf (out, " On %s%s%s.", on, side != NULL ? ", " : "", side != NULL ? side : "");
    }
  else if (side != NULL)
    g_string_append_printf (out, " %s, %s.", hangs (thing) ? "Hung" : "On the floor", side);
}

static void
add_lights (const FpSetThing *thing, GString *out)
{
  if (thing->lights == 0 || !thing->stands)
    return;
  if (thing->lit == 0)
    g_string_append (out, ": none is lit");
  else if (thing->lit == thing->lights)
    g_string_append_printf (out, thing->lights == 1 ? ": lit" : thing->lights == 2 ? ": both lit" : ": all %u lit", thing->lights);
  else
    g_string_append_printf (out, ": %u of %u lit", thing->lit, thing->lights);
}

/* "chalice, veiled; cruets; basin and towel; finger bowl; communion paten": of those that stand there. */
static char *
vessels_words (const FpCard *self, const FpSetThing *thing)
{
  const FpKind *kind = fp_item_kind (thing->item);
  const double *param = fp_item_params (thing->item);
  const FpSetting *setting = fp_scene_setting (self->set);
  const FpCelebration one = fp_setting_celebration (setting);
  const FpColour colour = fp_setting_colour (setting, NULL);
  GString *out = g_string_new (": ");

  /* At low Mass the celebrant carries it in; at solemn Mass it waits under the humeral veil (from memory). */
  if (param[fp_kind_param_index (kind, "chalice")] > 0 && one != FP_CELEBRATION_LOW)
    g_string_append_printf (out, "chalice under %s veil%s%s; ",
                            (one & (FP_CELEBRATION_SOLEMN | FP_CELEBRATION_PONTIFICAL)) != 0 ? "the humeral" : "its",
                            colour != FP_COLOUR_UNSAID ? ", " : "", fp_colour_id (colour));
  g_string_append (out, "cruets of wine and water; basin, towel and finger bowl");
  if (param[fp_kind_param_index (kind, "paten")] > 0)
    g_string_append (out, "; communion paten");
  return g_string_free (out, FALSE);
}

static gboolean
is_newer (const FpCard *self)
{
  return (fp_setting_celebration (fp_scene_setting (self->set)) & FP_CELEBRATIONS_NEWER) != 0;
}

/* What its name does not say, and who sets it must know; the caller's. */
static char *
of_what (const FpCard *self, const FpSetThing *thing)
{
  const FpColour colour = fp_setting_colour_of (fp_scene_setting (self->set), fp_item_kind (thing->item)->role);

  switch (fp_item_kind (thing->item)->role)
    {
    case FP_ROLE_ALTAR_CLOTHS: return g_strdup_printf (": %sof linen, the top one last, down to the footpace at both ends; the dust cover taken off",
                                                       is_newer (self) ? "" : "over the cere cloth (m) ");
    case FP_ROLE_ALTAR_CARDS: return g_strdup (": three, the largest in the middle, one at each end");
    case FP_ROLE_MISSAL_STAND: return g_strdup (", with the Missal, marked");
    case FP_ROLE_FRONTAL:
    case FP_ROLE_TABERNACLE_VEIL:
      return colour == FP_COLOUR_UNSAID ? g_strdup (": of the colour of the day") : g_strdup_printf (": %s", fp_colour_id (colour));
    case FP_ROLE_VESSELS: return vessels_words (self, thing);
    case FP_ROLE_CREDENCE: return g_strdup (": covered with a white cloth");
    case FP_ROLE_SEDILIA: return g_strdup (": prepared for the ministers");
    default: return g_strdup ("");
    }
}

/* Furniture and what hangs stay where they are; the rest has its place in a press. */
static gboolean
is_carried (const FpSetThing *thing)
{
  const FpKind *kind = fp_item_kind (thing->item);

  return fp_card_is_of_altar (kind->role) && kind->role != FP_ROLE_SANCTUARY_LAMP;
}

char *
fp_card_row_text (const FpCard *self, const FpSetThing *thing, int placed)
{
  const FpProject *project = fp_scene_project (self->set);
  const FpAlternative *alternative = fp_project_alternative (project, fp_scene_alternative (self->set));
  const char *kept = fp_alternative_kept (alternative, fp_item_id (thing->item));
  const FpColour colour = fp_setting_colour (fp_scene_setting (self->set), NULL);
  g_autofree char *what = of_what (self, thing);
  GString *out = g_string_new (fp_item_name (thing->item));

  add_lights (thing, out);
  if (thing->veiled && thing->stands)
    g_string_append_printf (out, "%s veiled%s%s", thing->lights > 0 ? ";" : ":", colour != FP_COLOUR_UNSAID ? " in " : "",
                            fp_colour_id (colour));
  if (thing->stands)
    g_string_append (out, what);
  g_string_append_c (out, '.');
  if (placed >= 0)
    add_where (self, placed, thing->lights, out);
  if (kept[0] == '\0' && is_carried (thing))
    g_string_append_printf (out, " %s: " FP_CARD_BLANK, thing->stands ? "Kept" : "Put it here");
  else if (kept[0] != '\0')
    g_string_append_printf (out, " %s: %s.", thing->stands ? "Kept" : "Put it here", kept);
  return g_string_free (out, FALSE);
}
