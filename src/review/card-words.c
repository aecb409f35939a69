/* SPDX-License-Identifier: GPL-3.0-or-later */
/* card-words.c - a thing of the card in words: what is done with it, where it stands, where it is kept */
#include "card-private.h"

#include <math.h>

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

  if (fp_item_has_name (item) && kind->role != FP_ROLE_ALTAR)
    return g_strdup_printf ("“%s”", name);
  return g_strdup_printf ("the %c%s", g_ascii_tolower (name[0]), name + 1);
}

static void
add_where (const FpCard *self, int placed, guint lights, GString *out)
{
  const FpPlaced *all = fp_scene_placed (self->set, NULL), *thing = &all[placed];
  const char *side = side_words (self->set, thing, lights > 1);

  if ((fp_item_kind (thing->item)->flags & FP_KIND_HUNG) != 0)
    return; /* where else */
  if (thing->support >= 0)
    {
      g_autofree char *on = named (all[thing->support].item);

      g_string_append_printf (out, " On %s%s%s.", on, side != NULL ? ", " : "", side != NULL ? side : "");
    }
  else if (side != NULL)
    g_string_append_printf (out, " On the floor, %s.", side);
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

/* What its name does not say, and who sets it must know. */
static const char *
of_what (const FpItem *item)
{
  switch (fp_item_kind (item)->role)
    {
    case FP_ROLE_ALTAR_CLOTHS: return ": of linen, the top one down to the footpace at both ends";
    case FP_ROLE_ALTAR_CARDS: return ": three, the largest in the middle, one at each end";
    case FP_ROLE_MISSAL_STAND: return ", with the Missal";
    default: return "";
    }
}

char *
fp_card_row_text (const FpCard *self, const FpSetThing *thing, int placed)
{
  const FpProject *project = fp_scene_project (self->set);
  const FpAlternative *alternative = fp_project_alternative (project, fp_scene_alternative (self->set));
  const char *kept = fp_alternative_kept (alternative, fp_item_id (thing->item));
  const FpColour colour = fp_setting_colour (fp_scene_setting (self->set), NULL);
  GString *out = g_string_new (fp_item_name (thing->item));

  add_lights (thing, out);
  if (thing->veiled && thing->stands)
    g_string_append_printf (out, "%s veiled%s%s", thing->lights > 0 ? ";" : ":", colour != FP_COLOUR_UNSAID ? " in " : "",
                            fp_colour_id (colour));
  g_string_append (out, of_what (thing->item));
  g_string_append_c (out, '.');
  if (placed >= 0)
    add_where (self, placed, thing->lights, out);
  if (kept[0] != '\0')
    g_string_append_printf (out, " %s: %s.", thing->stands ? "Kept" : "Put it here", kept);
  return g_string_free (out, FALSE);
}
