/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "must.h"

#include <math.h>
#include <string.h>

#define ANY_AXIS 9u

typedef struct
{
  FpRole      role;
  const char *param; /* NULL: it follows from others */
  guint       axis;
  const char *words;
} Must;

static const Must MUSTS[] = {
  { FP_ROLE_ALTAR, "length", ANY_AXIS, "mensa length" },
  { FP_ROLE_ALTAR, "depth", ANY_AXIS, "mensa depth" },
  { FP_ROLE_ALTAR, "height", ANY_AXIS, "altar height" },
  { FP_ROLE_FOOTPACE, "riser", ANY_AXIS, "each riser of the altar steps" },
  { FP_ROLE_FOOTPACE, "tread", ANY_AXIS, "each tread of the altar steps" },
  { FP_ROLE_FOOTPACE, "front", ANY_AXIS, "footpace before the altar" },
  { FP_ROLE_FOOTPACE, NULL, 0, "width of the altar steps" },
  { FP_ROLE_STEPS, "width", ANY_AXIS, "width of the steps between floors" },
  { FP_ROLE_STEPS, "riser", ANY_AXIS, "each riser of the steps between floors" },
  { FP_ROLE_STEPS, "tread", ANY_AXIS, "each tread of the steps between floors" },
  { FP_ROLE_RAIL, "length", ANY_AXIS, "rail length" },
  { FP_ROLE_RAIL, "height", ANY_AXIS, "rail height" },
  { FP_ROLE_RAIL, "gate", ANY_AXIS, "gate of the rail" },
  { FP_ROLE_OPENING, "width", 0, "width of the arch" },
};

static gboolean
is_celebrated (const FpScene *scene, const FpPlaced *altar)
{
  const int i = fp_scene_celebrated_altar (scene);

  return i >= 0 && &fp_scene_placed (scene, NULL)[i] == altar;
}

/* That altar stands on it. */
static gboolean
bears_celebrated (const FpScene *scene, const FpPlaced *footpace)
{
  const FpPlaced *placed = fp_scene_placed (scene, NULL);
  const int i = fp_scene_celebrated_altar (scene);

  return i >= 0 && placed[i].support >= 0 && &placed[placed[i].support] == footpace;
}

/* What parts nave and sanctuary: it reaches down to the floor, on the axis, and more than a door passes through it. */
static gboolean
is_arch (const FpPlaced *opening)
{
  const int sill = fp_kind_param_index (fp_item_kind (opening->item), "sill");
  const double least = 2500; /* mm, design judgement */

  return sill >= 0 && opening->form.param[sill] == 0 && opening->plan.x0 < 0 && opening->plan.x1 > 0
         && opening->plan.x1 - opening->plan.x0 >= least;
}

static gboolean
is_of_sanctuary (const FpScene *scene, const FpPlaced *of)
{
  switch ((int) fp_item_kind (of->item)->role)
    {
    case FP_ROLE_ALTAR: return is_celebrated (scene, of);
    case FP_ROLE_FOOTPACE: return bears_celebrated (scene, of);
    case FP_ROLE_OPENING: return is_arch (of);
    default: return TRUE;
    }
}

const char *
fp_must_be_told (const FpScene *scene, const FpPlaced *of, int param, guint axis)
{
  const FpKind *kind = fp_item_kind (of->item);
  const char *id = param < 0 ? NULL : kind->params[param].id;

  for (guint i = 0; i < G_N_ELEMENTS (MUSTS); i++)
    if (MUSTS[i].role == kind->role && g_strcmp0 (MUSTS[i].param, id) == 0
        && (MUSTS[i].axis == ANY_AXIS || MUSTS[i].axis == axis))
      return is_of_sanctuary (scene, of) ? MUSTS[i].words : NULL;
  return NULL;
}

char *
fp_untold_words (const GPtrArray *untold)
{
  GString *text;

  if (untold->len == 0)
    return NULL;
  text = g_string_new ("Not dimensioned here: ");
  for (guint i = 0; i < untold->len; i++)
    g_string_append_printf (text, "%s%s", i == 0 ? "" : ", ", (const char *) g_ptr_array_index (untold, i));
  g_string_append_c (text, '.');
  return g_string_free (text, FALSE);
}
