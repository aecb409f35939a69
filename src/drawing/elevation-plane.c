/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/projection.h"

/* The elevation is cut this far before the foremost thing of the sanctuary. */
#define BEFORE 100.0
/* An ambo this far before the rail still belongs to the elevation; a font at the door does not. */
#define FORE_SANCTUARY 3000.0
/* Steps this near before the rail are seen from their foot. */
#define STEPS_NEAR 600.0

static gboolean
has_role (const FpPlaced *placed, FpRole role)
{
  return !placed->ghost && fp_item_kind (placed->item)->role == role;
}

static double
front_of (const FpPlaced *placed, guint n, FpRole role)
{
  double front = G_MAXDOUBLE;

  for (guint i = 0; i < n; i++)
    if (has_role (&placed[i], role))
      front = MIN (front, placed[i].plan.y0);
  return front;
}

/* Front of the rail, or of the lowest step of the altar, or of the altar; G_MAXDOUBLE where there is none. */
static double
front_of_sanctuary (const FpPlaced *placed, guint n)
{
  const double rail = front_of (placed, n, FP_ROLE_RAIL);

  if (rail < G_MAXDOUBLE)
    return rail;
  return MIN (front_of (placed, n, FP_ROLE_FOOTPACE), front_of (placed, n, FP_ROLE_ALTAR));
}

/* On a floor of the ministers that reaches as far east: however deep the sanctuary is, what stands in it belongs to the
 * elevation.  A loft for the singers at the west end does not reach so far. */
static gboolean
stands_in_sanctuary (const FpScene *scene, const FpPlaced *placed, double sanctuary)
{
  const FpPoint middle = { (placed->plan.x0 + placed->plan.x1) / 2, (placed->plan.y0 + placed->plan.y1) / 2 };
  guint n;
  const FpFloor *floor = fp_scene_floors (scene, &n);

  for (guint i = 0; i < n; i++)
    if (floor[i].use == FP_FLOOR_MINISTERS && fp_outline_contains (floor[i].outline, floor[i].n_outline, middle)
        && fp_outline_box (floor[i].outline, floor[i].n_outline).y1 > sanctuary)
      return TRUE;
  return FALSE;
}

static gboolean
belongs_to_elevation (const FpScene *scene, const FpPlaced *placed, double sanctuary)
{
  return !placed->ghost && (fp_item_kind (placed->item)->flags & FP_KIND_SURVEY) == 0
         && (placed->plan.y0 > sanctuary - FORE_SANCTUARY || stands_in_sanctuary (scene, placed, sanctuary));
}

double
fp_elevation_plane (const FpScene *scene)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);
  const double sanctuary = front_of_sanctuary (placed, n);
  double front = sanctuary;

  if (sanctuary == G_MAXDOUBLE)
    return -G_MAXDOUBLE;
  for (guint i = 0; i < n; i++)
    if (belongs_to_elevation (scene, &placed[i], sanctuary))
      front = MIN (front, placed[i].plan.y0);
  for (guint i = 0; i < n; i++)
    if (has_role (&placed[i], FP_ROLE_STEPS) && placed[i].plan.y0 < front && placed[i].plan.y1 > front - STEPS_NEAR)
      front = placed[i].plan.y0;
  return front - BEFORE;
}
