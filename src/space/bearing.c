/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/bearing.h"

#include <math.h>

#define FOOT_SLACK  1.0 /* mm: what stands so little higher stands on the floor too     */
#define MANY_FEET   60u /* balusters do not overlap: their areas are added up           */
#define ROUND_SIDES 48u

#define N_PER_KN    1000.0
#define MM2_PER_M2  1e6

/* --- on how much floor ------------------------------------------------------------ */

static void
add_round (GArray *feet, const FpSolid *solid, double rx, double ry)
{
  FpPoint pt[ROUND_SIDES];

  for (guint i = 0; i < ROUND_SIDES; i++)
    {
      const double angle = 2 * G_PI * i / ROUND_SIDES;
      pt[i] = (FpPoint) { solid->cx + rx * cos (angle), solid->cy + ry * sin (angle) };
    }
  fp_rings_add (feet, pt, ROUND_SIDES, FALSE);
}

static void
add_foot (GArray *feet, const FpSolid *solid, double lowest)
{
  if (fp_solid_box (solid).lo.z > lowest + FOOT_SLACK)
    return;
  if (solid->shape == FP_SOLID_PRISM)
    fp_rings_add (feet, solid->outline, solid->n_outline, FALSE);
  else if (solid->shape != FP_SOLID_ELLIPSOID) /* which touches in a point */
    add_round (feet, solid, solid->r0, solid->r0);
}

static GArray *
feet_of (const FpPlaced *placed)
{
  GArray *feet = fp_rings_new ();
  g_autoptr (FpSolids) solids = fp_solids_new ();
  const FpSolid *s;
  double lowest = INFINITY;
  guint n;

  fp_item_kind (placed->item)->solids (&placed->form, solids);
  s = fp_solids_peek (solids, &n);
  for (guint i = 0; i < n; i++)
    lowest = MIN (lowest, fp_solid_box (&s[i]).lo.z);
  for (guint i = 0; i < n; i++)
    add_foot (feet, &s[i], lowest);
  return feet;
}

/* What a foot covers that none before it does. */
static double
own_area (const GArray *feet, guint which)
{
  const FpRing *foot = &g_array_index (feet, FpRing, which);
  g_autoptr (GArray) before = fp_rings_new ();
  g_autoptr (GArray) left = NULL;
  double area = 0;

  for (guint i = 0; i < which; i++)
    {
      const FpRing *other = &g_array_index (feet, FpRing, i);
      fp_rings_add (before, other->pt, other->n, FALSE);
    }
  left = fp_outlines_common_less (foot->pt, foot->n, foot->pt, foot->n, before);
  for (guint i = 0; i < left->len; i++)
    {
      const FpRing *ring = &g_array_index (left, FpRing, i);
      area += (ring->hole ? -1 : 1) * fabs (fp_outline_area (ring->pt, ring->n));
    }
  return area;
}

static double
area_of (const FpPlaced *placed)
{
  g_autoptr (GArray) feet = feet_of (placed);
  double area = 0;

  for (guint i = 0; i < feet->len; i++)
    {
      const FpRing *foot = &g_array_index (feet, FpRing, i);
      area += feet->len > MANY_FEET ? fabs (fp_outline_area (foot->pt, foot->n)) : own_area (feet, i);
    }
  return area;
}

/* --- how much bears on it ----------------------------------------------------------- */

static gboolean
stands_upon (const FpPlaced *placed, guint which, guint below)
{
  for (int i = (int) which; i >= 0; i = placed[i].support)
    if ((guint) i == below)
      return TRUE;
  return FALSE;
}

static gboolean
bears_on_floor (const FpPlaced *placed, guint which)
{
  const int support = placed[which].support;

  return !placed[which].ghost && (support < 0 || fp_item_kind (placed[support].item)->role == FP_ROLE_FOOTPACE);
}

/* @mass: of everything that stands on it. */
static FpBearing
weigh (const FpPlaced *placed, guint n, guint which, const double *mass)
{
  FpBearing b = { .placed = &placed[which], .own = isnan (mass[which]) ? 0 : mass[which] };

  for (guint i = 0; i < n; i++)
    {
      if (placed[i].ghost || !stands_upon (placed, i, which))
        continue;
      if (isnan (mass[i]))
        b.unweighed++;
      else
        b.all += mass[i];
    }
  b.area = area_of (b.placed);
  b.pressure = b.area > 0 ? b.all * FP_GRAVITY / N_PER_KN / (b.area / MM2_PER_M2) : 0;
  return b;
}

FpBearing
fp_scene_bearing (const FpScene *scene, guint which)
{
  const FpWorks *works = fp_project_works (fp_scene_project (scene));
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);
  g_autofree double *mass = g_new0 (double, n);

  for (guint i = 0; i < n; i++)
    if (!placed[i].ghost && stands_upon (placed, i, which))
      mass[i] = fp_made_mass (&placed[i], works);
  return weigh (placed, n, which, mass);
}

static int
hardest_first (gconstpointer a, gconstpointer b)
{
  const double p = ((const FpBearing *) a)->pressure, q = ((const FpBearing *) b)->pressure;

  return p > q ? -1 : p < q ? 1 : 0;
}

GArray *
fp_scene_bearings (const FpScene *scene)
{
  GArray *bearings = g_array_new (FALSE, FALSE, sizeof (FpBearing));
  const FpWorks *works = fp_project_works (fp_scene_project (scene));
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);
  g_autofree double *mass = g_new (double, n);

  for (guint i = 0; i < n; i++)
    mass[i] = placed[i].ghost ? NAN : fp_made_mass (&placed[i], works);
  for (guint i = 0; i < n; i++)
    {
      FpBearing b;

      if (!bears_on_floor (placed, i))
        continue;
      b = weigh (placed, n, i, mass);
      if (b.all > 0)
        g_array_append_val (bearings, b);
    }
  g_array_sort (bearings, hardest_first);
  return bearings;
}
