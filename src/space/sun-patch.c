/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sun-patch.c - where the sun shines on the floors
 *
 * The opening, in the middle of its wall, thrown on the plane of a floor by
 * the parallel rays of the sun; of that what lies on the floor, less the
 * shadows of all solids: jambs, sills and piers among them.  Only the pews are
 * passed over: cut up by their rows the light could not be read, and it is on
 * them all the same.
 */
#include "sunlight-private.h"

#include "sun-shadow.h"

#include <math.h>

#define ARCH_SIDES 24

static void
clear_patch (gpointer patch)
{
  g_free (((FpSunPatch *) patch)->floor);
  g_free (((FpSunPatch *) patch)->window);
}

/* --- thrown on the plane -------------------------------------------------------- */

static void
add_corner (const FpSunPlane *plane, const FpSunWindow *window, double x, double z, GArray *out)
{
  const FpPoint at = fp_place_point (&window->place, (FpPoint) { x, window->thickness / 2 });
  const FpPoint p = fp_sun_plane_under (plane, (FpVec3) { at.x, at.y, window->level + z });

  g_array_append_val (out, p);
}

/* (element-type FpPoint) */
static GArray *
throw_window (const FpSunPlane *plane, const FpSunWindow *window)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpPoint));

  add_corner (plane, window, -window->half, window->sill, out);
  add_corner (plane, window, window->half, window->sill, out);
  if (!window->arched)
    {
      add_corner (plane, window, window->half, window->head, out);
      add_corner (plane, window, -window->half, window->head, out);
      return out;
    }
  for (guint i = 0; i <= ARCH_SIDES; i++)
    {
      const double turn = G_PI * i / ARCH_SIDES;
      add_corner (plane, window, window->half * cos (turn), window->head + window->half * sin (turn), out);
    }
  return out;
}

static GArray *
shadows_within (const FpSunlight *self, const FpSunPlane *plane, const FpBox *within)
{
  GArray *shadows = fp_rings_new ();
  guint n;
  const FpPlaced *placed = fp_scene_placed (fp_people_scene (self->people), NULL);
  const FpSolid *solid = fp_solids_peek (self->solids, &n);

  for (guint i = 0; i < n; i++)
    if (fp_kind_sort (fp_item_kind (placed[solid[i].owner].item)) != FP_SORT_SEATS)
      fp_sun_plane_shadow (plane, &solid[i], within, shadows);
  return shadows;
}

/* --- patches ---------------------------------------------------------------------- */

/* On the ray through a point of the floor, in the middle of the wall. */
static FpVec3
point_in_window (const FpSunlight *self, const FpSunWindow *window, FpVec3 from)
{
  const FpPoint at = fp_place_unpoint (&window->place, (FpPoint) { from.x, from.y });
  const FpPlace turn = { 0, 0, window->place.turn };
  const FpPoint way = fp_place_unpoint (&turn, (FpPoint) { self->towards.x, self->towards.y });

  return fp_vec3_add (from, fp_vec3_scale (self->towards, (window->thickness / 2 - at.y) / way.y));
}

static FpSunPatch
patch_of (const FpSunlight *self, const FpSunWindow *window, const FpSunPlane *plane, const FpRing *ring)
{
  FpSunPatch patch = {
    .opening = window->index, .hole = ring->hole, .n = ring->n,
    .floor = g_new (FpVec3, ring->n), .window = g_new (FpVec3, ring->n),
  };

  for (guint i = 0; i < ring->n; i++)
    {
      const FpPoint p = ring->pt[i];
      patch.floor[i] = (FpVec3) { p.x, p.y, fp_sun_plane_at (plane, p.x, p.y) };
      patch.window[i] = point_in_window (self, window, patch.floor[i]);
    }
  return patch;
}

/* Well within: the middle of the largest triangle of corners evenly far apart whose middle lies within. */
static FpPoint
point_within (const FpRing *ring)
{
  FpPoint best = ring->pt[0];
  double most = 0;

  for (guint step = 1; step <= ring->n / 2; step++)
    for (guint i = 0; i < ring->n; i++)
      {
        const FpPoint corner[3] = { ring->pt[i], ring->pt[(i + step) % ring->n], ring->pt[(i + 2 * step) % ring->n] };
        const FpPoint middle = { (corner[0].x + corner[1].x + corner[2].x) / 3, (corner[0].y + corner[1].y + corner[2].y) / 3 };
        const double area = fabs (fp_outline_area (corner, 3));
        if (area > most && fp_outline_contains (ring->pt, ring->n, middle))
          {
            most = area;
            best = middle;
          }
      }
  return best;
}

/* Whether it is the sky that is seen from there through that opening, and not the next room. */
static gboolean
is_lit (const FpSunlight *self, const FpSunWindow *window, const FpSunPlane *plane, const FpRing *ring)
{
  const FpPoint p = point_within (ring);

  return fp_sunlight_sees_sky (self, window, (FpVec3) { p.x, p.y, fp_sun_plane_at (plane, p.x, p.y) });
}

/* An area with its holes, or none of it. */
static void
add_rings (const FpSunlight *self, const FpSunWindow *window, const FpSunPlane *plane, const GArray *rings, GArray *out)
{
  gboolean lit = FALSE;

  for (guint i = 0; i < rings->len; i++)
    {
      const FpRing *ring = &g_array_index (rings, FpRing, i);
      if (!ring->hole)
        lit = is_lit (self, window, plane, ring);
      if (!lit)
        continue;
      const FpSunPatch patch = patch_of (self, window, plane, ring);
      g_array_append_val (out, patch);
    }
}

static void
add_patches (const FpSunlight *self, const FpSunWindow *window, const FpFloor *floor, GArray *out)
{
  const FpSunPlane plane = { floor->z, floor->gx, floor->gy, self->towards };
  const FpVec3 d = self->towards;
  g_autoptr (GArray) beam = NULL, shadows = NULL, rings = NULL;
  FpBox box, all;

  /* A window whose middle is below the floor lights nothing there; nor does the sun from under a slope. */
  if (d.z <= floor->gx * d.x + floor->gy * d.y
      || window->level + window->head <= fp_sun_plane_at (&plane, window->place.x, window->place.y))
    return;
  beam = throw_window (&plane, window);
  box = fp_outline_box ((const FpPoint *) beam->data, beam->len);
  all = fp_outline_box (floor->outline, floor->n_outline);
  if (!fp_box_overlaps (&box, &all))
    return;
  shadows = shadows_within (self, &plane, &box);
  rings = fp_outlines_common_less ((const FpPoint *) beam->data, beam->len, floor->outline, floor->n_outline, shadows);
  add_rings (self, window, &plane, rings, out);
}

/* It comes in where the sun is on the other side of the wall than the floors are: where it does not, the wall's own shadow
 * covers all of it. */
GArray *
fp_sunlight_patches (const FpSunlight *self)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpSunPatch));
  guint n;
  const FpFloor *floor = fp_scene_floors (fp_people_scene (self->people), &n);

  g_array_set_clear_func (out, clear_patch);
  if (!(self->towards.z > 0))
    return out;
  for (guint w = 0; w < self->windows->len; w++)
    for (guint f = 0; f < n; f++)
      add_patches (self, &g_array_index (self->windows, FpSunWindow, w), &floor[f], out);
  return out;
}
