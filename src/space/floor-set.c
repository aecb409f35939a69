/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "floor-set.h"

/* A rail set out exactly along the edge of the sanctuary stands on the sanctuary, whatever the last bit says. */
#define EDGE 0.01 /* mm */

static void
clear_floor (gpointer data)
{
  g_free (((FpFloor *) data)->outline);
}

void
fp_floor_set_init (FpFloorSet *self)
{
  self->floor = g_array_new (FALSE, FALSE, sizeof (FpFloor));
  g_array_set_clear_func (self->floor, clear_floor);
  self->box = g_array_new (FALSE, FALSE, sizeof (FpBox));
}

void
fp_floor_set_clear (FpFloorSet *self)
{
  g_clear_pointer (&self->floor, g_array_unref);
  g_clear_pointer (&self->box, g_array_unref);
}

static FpFloor
surface_as_placed (const FpSurface *surface, const FpPlace *place, double level, guint owner)
{
  FpPlace turned = { 0, 0, place->turn };
  FpPoint slope = fp_place_point (&turned, (FpPoint) { surface->gx, surface->gy });
  FpFloor floor = {
    .owner = owner, .use = surface->use, .n_outline = surface->n_outline, .gx = slope.x, .gy = slope.y,
    .z = level + surface->z - slope.x * place->x - slope.y * place->y,
  };
  floor.outline = g_new (FpPoint, surface->n_outline);
  for (guint i = 0; i < surface->n_outline; i++)
    floor.outline[i] = fp_place_point (place, surface->outline[i]);
  return floor;
}

void
fp_floor_set_add (FpFloorSet *self, const FpKind *kind, const FpForm *form, const FpPlace *place,
                  double level, guint owner)
{
  if (kind->surfaces == NULL)
    return;
  g_autoptr (GArray) surfaces = fp_surfaces_new ();
  kind->surfaces (form, surfaces);
  for (guint i = 0; i < surfaces->len; i++)
    {
      const FpSurface *surface = &g_array_index (surfaces, FpSurface, i);
      if (surface->use == FP_FLOOR_NONE || surface->n_outline < 3)
        continue;
      FpFloor floor = surface_as_placed (surface, place, level, owner);
      FpBox box = fp_outline_box (floor.outline, floor.n_outline);
      g_array_append_val (self->floor, floor);
      g_array_append_val (self->box, box);
    }
}

double
fp_floor_level (const FpFloor *floor, FpPoint at)
{
  return floor->z + floor->gx * at.x + floor->gy * at.y;
}

static gboolean
covers (const FpFloor *floor, const FpBox *box, FpPoint at)
{
  if (at.x < box->x0 - EDGE || at.x > box->x1 + EDGE || at.y < box->y0 - EDGE || at.y > box->y1 + EDGE)
    return FALSE;
  if (fp_outline_contains (floor->outline, floor->n_outline, at))
    return TRUE;
  for (guint i = 0; i < floor->n_outline; i++)
    if (fp_segment_distance (floor->outline[i], floor->outline[(i + 1) % floor->n_outline], at) <= EDGE)
      return TRUE;
  return FALSE;
}

double
fp_floor_set_at (const FpFloorSet *self, FpPoint at, gboolean *found)
{
  double highest = -G_MAXDOUBLE;
  gboolean any = FALSE;

  for (guint i = 0; i < self->floor->len; i++)
    {
      const FpFloor *floor = &g_array_index (self->floor, FpFloor, i);
      double level = fp_floor_level (floor, at);
      if (level > highest && covers (floor, &g_array_index (self->box, FpBox, i), at))
        {
          highest = level;
          any = TRUE;
        }
    }
  if (found != NULL)
    *found = any;
  return any ? highest : 0;
}

gboolean
fp_floor_set_is_level (const FpFloorSet *self, const FpBox *box, double level)
{
  for (guint i = 0; i < self->floor->len; i++)
    {
      const FpFloor *floor = &g_array_index (self->floor, FpFloor, i);
      const FpBox *own = &g_array_index (self->box, FpBox, i);
      gboolean apart = own->x0 > box->x1 || own->x1 < box->x0 || own->y0 > box->y1 || own->y1 < box->y0;
      if (!apart && (floor->gx != 0 || floor->gy != 0 || floor->z != level))
        return FALSE;
    }
  return TRUE;
}
