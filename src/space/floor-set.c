/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "floor-set.h"

#include <math.h>

/* A rail set out exactly along the edge of the sanctuary stands on the sanctuary, whatever the last bit says. */
#define EDGE 0.01 /* mm */

/* --- outlines of many sides ------------------------------------------------ */

/* Sides by the strips of the plan into which they reach, from front to back: of two thousand sides few matter at one
 * point. */
typedef struct
{
  guint  n;
  double y0, height; /* of the first strip; of one                     */
  guint *first;      /* of each strip, and of the end: index into side */
  guint *side;
} Strips;

#define STRIPS_MAX 64

static guint
strip_at (const Strips *self, double y)
{
  const double at = floor ((y - self->y0) / self->height);

  return at > 0 ? MIN ((guint) MIN (at, STRIPS_MAX), self->n - 1) : 0;
}

static void
strips_of_side (const Strips *self, const FpFloor *floor, guint i, guint *from, guint *to)
{
  const double a = floor->outline[i].y, b = floor->outline[(i + 1) % floor->n_outline].y;

  *from = strip_at (self, MIN (a, b) - EDGE);
  *to = strip_at (self, MAX (a, b) + EDGE);
}

static Strips
strips_new (const FpFloor *floor, const FpBox *box)
{
  Strips self = { .n = CLAMP (floor->n_outline / 8, 1, STRIPS_MAX), .y0 = box->y0 };
  guint from, to;

  self.height = MAX ((box->y1 - box->y0) / self.n, EDGE);
  self.first = g_new0 (guint, self.n + 1);
  for (guint i = 0; i < floor->n_outline; i++)
    for (strips_of_side (&self, floor, i, &from, &to); from <= to; from++)
      self.first[from + 1]++;
  for (guint k = 0; k < self.n; k++)
    self.first[k + 1] += self.first[k];
  self.side = g_new (guint, self.first[self.n]);
  /* Filled from the back, so that each strip's first is left where it belongs. */
  for (guint k = self.n; k > 0; k--)
    self.first[k] = self.first[k - 1];
  for (guint i = 0; i < floor->n_outline; i++)
    for (strips_of_side (&self, floor, i, &from, &to); from <= to; from++)
      self.side[self.first[from + 1]++] = i;
  return self;
}

/* Within the outline, or within a hair of its edge. */
static gboolean
strips_cover (const Strips *self, const FpFloor *floor, FpPoint at)
{
  const guint k = strip_at (self, at.y);
  gboolean inside = FALSE;

  for (guint i = self->first[k]; i < self->first[k + 1]; i++)
    {
      const guint side = self->side[i];
      const FpPoint a = floor->outline[side], b = floor->outline[(side + 1) % floor->n_outline];
      const gboolean apart = MIN (a.x, b.x) > at.x + EDGE || MAX (a.x, b.x) < at.x - EDGE;
      if (!apart && fp_segment_distance (a, b, at) <= EDGE)
        return TRUE;
      /* As fp_outline_contains() does. */
      if ((a.y > at.y) != (b.y > at.y) && (fp_orient (a, b, at) > 0) == (b.y > a.y))
        inside = !inside;
    }
  return inside;
}

/* --- the set ---------------------------------------------------------------- */

static void
clear_floor (gpointer data)
{
  g_free (((FpFloor *) data)->outline);
}

static void
clear_strips (gpointer data)
{
  Strips *strips = data;

  g_free (strips->first);
  g_free (strips->side);
}

void
fp_floor_set_init (FpFloorSet *self)
{
  self->floor = g_array_new (FALSE, FALSE, sizeof (FpFloor));
  g_array_set_clear_func (self->floor, clear_floor);
  self->box = g_array_new (FALSE, FALSE, sizeof (FpBox));
  self->strips = g_array_new (FALSE, FALSE, sizeof (Strips));
  g_array_set_clear_func (self->strips, clear_strips);
}

void
fp_floor_set_clear (FpFloorSet *self)
{
  g_clear_pointer (&self->floor, g_array_unref);
  g_clear_pointer (&self->box, g_array_unref);
  g_clear_pointer (&self->strips, g_array_unref);
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
      Strips strips = strips_new (&floor, &box);
      g_array_append_val (self->box, box);
      g_array_append_val (self->strips, strips);
    }
}

double
fp_floor_level (const FpFloor *floor, FpPoint at)
{
  return floor->z + floor->gx * at.x + floor->gy * at.y;
}

static gboolean
covers (const FpFloorSet *self, guint i, FpPoint at)
{
  const FpBox *box = &g_array_index (self->box, FpBox, i);

  if (at.x < box->x0 - EDGE || at.x > box->x1 + EDGE || at.y < box->y0 - EDGE || at.y > box->y1 + EDGE)
    return FALSE;
  return strips_cover (&g_array_index (self->strips, Strips, i), &g_array_index (self->floor, FpFloor, i), at);
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
      if (floor->use != FP_FLOOR_WAY && level > highest && covers (self, i, at))
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
      if (!apart && floor->use != FP_FLOOR_WAY && (floor->gx != 0 || floor->gy != 0 || floor->z != level))
        return FALSE;
    }
  return TRUE;
}
