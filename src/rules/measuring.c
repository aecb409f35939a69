/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "measuring.h"

#include <math.h>

FpMeasured *
fp_measured_add (GArray *out, double value)
{
  FpMeasured measured = { .value = value, .owner = -1 };

  g_array_append_val (out, measured);
  return &g_array_index (out, FpMeasured, out->len - 1);
}

FpMeasured *
fp_measured_add_at (GArray *out, double value, int owner, FpVec3 at)
{
  FpMeasured *measured = fp_measured_add (out, value);

  measured->owner = owner;
  measured->at = at;
  measured->has_at = TRUE;
  return measured;
}

void
fp_measured_span (FpMeasured *measured, FpVec3 a, FpVec3 b)
{
  measured->span[0] = a;
  measured->span[1] = b;
  measured->has_span = TRUE;
}

void
fp_measured_add_nothing (GArray *out, const char *why)
{
  fp_measured_add (out, NAN)->detail = g_strdup (why);
}

const FpPlaced *
fp_measuring_placed (const FpMeasuring *of, int index)
{
  guint n = 0;
  const FpPlaced *placed = fp_scene_placed (of->scene, &n);

  return index >= 0 && (guint) index < n ? &placed[index] : NULL;
}

FpRole
fp_placed_role (const FpPlaced *placed)
{
  return fp_item_kind (placed->item)->role;
}

const FpPlaced *
fp_measuring_role (const FpMeasuring *of, FpRole role, int *index)
{
  int found = fp_scene_role (of->scene, role);

  if (index)
    *index = found;
  return fp_measuring_placed (of, found);
}

int
fp_measuring_next (const FpMeasuring *of, FpRole role, int after)
{
  guint n = 0;
  const FpPlaced *placed = fp_scene_placed (of->scene, &n);

  for (guint i = (guint) (after + 1); i < n; i++)
    if (!placed[i].ghost && fp_placed_role (&placed[i]) == role)
      return (int) i;
  return -1;
}

gboolean
fp_measuring_count (const FpMeasuring *of, FpRole role, GArray *out)
{
  g_autoptr (GString) names = g_string_new (NULL);
  double n = 0;
  int last = -1;

  for (int i = fp_measuring_next (of, role, -1); i >= 0; i = fp_measuring_next (of, role, i))
    {
      g_autofree char *name = fp_measuring_name (of, i);

      g_string_append_printf (names, "%s%s", n > 0 ? "; " : "", name);
      n++;
      last = i;
    }
  if (last >= 0)
    fp_measured_add_at (out, n, last, fp_placed_middle (fp_measuring_placed (of, last), 0))->detail
      = g_strdup (names->str);
  return last >= 0;
}

double
fp_placed_param (const FpPlaced *placed, const char *id, double otherwise)
{
  int i = fp_kind_param_index (fp_item_kind (placed->item), id);

  return i < 0 ? otherwise : fp_item_params (placed->item)[i];
}

FpVec3
fp_placed_middle (const FpPlaced *placed, double above)
{
  return (FpVec3) { (placed->plan.x0 + placed->plan.x1) / 2, (placed->plan.y0 + placed->plan.y1) / 2,
                    placed->level + above };
}

FpPoint
fp_placed_local (const FpPlaced *placed, FpPoint world)
{
  return fp_place_unpoint (&placed->place, world);
}

FpBox
fp_placed_box_in (const FpPlaced *thing, const FpPlaced *frame)
{
  const FpBox *own = &thing->extent.plan;
  const FpPoint corner[] = { { own->x0, own->y0 }, { own->x1, own->y0 }, { own->x1, own->y1 }, { own->x0, own->y1 } };
  FpBox box = FP_BOX_EMPTY;

  for (guint i = 0; i < G_N_ELEMENTS (corner); i++)
    fp_box_add_point (&box, fp_placed_local (frame, fp_place_point (&thing->place, corner[i])));
  return box;
}

gboolean
fp_measuring_stands_on (const FpMeasuring *of, int thing, int base)
{
  const FpPlaced *placed = fp_measuring_placed (of, thing);

  /* A project has no circles of support; the count is for a scene that is not whole. */
  for (int steps = 0; placed && steps < FP_ITEMS_MAX; steps++)
    {
      if (placed->support == base && base >= 0)
        return TRUE;
      placed = fp_measuring_placed (of, placed->support);
    }
  return FALSE;
}

const FpPlaced *
fp_measuring_celebrated (const FpMeasuring *of, int *index)
{
  int found = fp_scene_celebrated_altar (of->scene);

  if (index)
    *index = found;
  return fp_measuring_placed (of, found);
}

int
fp_measuring_footpace (const FpMeasuring *of, const FpPlaced *altar)
{
  const FpPlaced *support = altar ? fp_measuring_placed (of, altar->support) : NULL;

  return support && fp_placed_role (support) == FP_ROLE_FOOTPACE ? altar->support : -1;
}

const FpPersonPlace *
fp_measuring_place (const FpMeasuring *of, guint i)
{
  guint n = 0;
  const FpPersonPlace *place = fp_people_places (of->people, &n);

  return &place[i];
}

gboolean
fp_measuring_in_church (const FpMeasuring *of, guint i)
{
  const FpPersonPlace *place = fp_measuring_place (of, i);

  return !place->gallery && !place->at_rail;
}
