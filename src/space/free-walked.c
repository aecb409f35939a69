/* SPDX-License-Identifier: GPL-3.0-or-later */
/* free-walked.c - what people walk on, and what stands in their way */
#include "free-floor-private.h"

#include <math.h>

/* The platform of an ambo or a throne is its own; what leads over these is everybody's way. */
static gboolean
leads_on (FpRole role)
{
  return role == FP_ROLE_FOOTPACE || role == FP_ROLE_STEPS || role == FP_ROLE_RAMP || role == FP_ROLE_FLOOR;
}

gboolean
fp_solid_is_walked (const FpScene *scene, const FpSolid *solid)
{
  const FpPlaced *owner = &fp_scene_placed (scene, NULL)[solid->owner];

  return !owner->ghost && solid->shape == FP_SOLID_PRISM && leads_on (fp_item_kind (owner->item)->role)
         && (solid->part == FP_PART_STEP || solid->part == FP_PART_FOOTPACE || solid->part == FP_PART_FLOOR);
}

/* What stands on an altar or a credence reaches no farther than that. */
static gboolean
stands_on_furniture (const FpScene *scene, const FpPlaced *thing)
{
  const FpPlaced *placed = fp_scene_placed (scene, NULL);

  return thing->support >= 0 && !leads_on (fp_item_kind (placed[thing->support].item)->role)
         && fp_item_kind (placed[thing->support].item)->role != FP_ROLE_GALLERY;
}

gboolean
fp_solid_is_in_the_way (const FpScene *scene, const FpSolid *solid)
{
  const FpPlaced *owner = &fp_scene_placed (scene, NULL)[solid->owner];

  switch (solid->part)
    {
    case FP_PART_FLOOR:
    case FP_PART_CLOTH:
    case FP_PART_GATE:
    case FP_PART_HEAD:
    case FP_PART_TRUNK:
      return FALSE;
    default:
      return !owner->ghost && !fp_solid_is_walked (scene, solid) && !stands_on_furniture (scene, owner);
    }
}

/* Ramps and the like are among the steps, by their solids. */
static void
add_floors (const FpScene *scene, GArray *out)
{
  guint n;
  const FpFloor *floor = fp_scene_floors (scene, &n);

  for (guint i = 0; i < n; i++)
    {
      const FpRole role = fp_item_kind (fp_scene_placed (scene, NULL)[floor[i].owner].item)->role;
      const FpWalked walked = { floor[i].outline, floor[i].n_outline, floor[i].z, floor[i].gx, floor[i].gy, floor[i].use,
                                (int) floor[i].owner, FALSE };
      if (leads_on (role) && floor[i].use != FP_FLOOR_GALLERY && floor[i].use != FP_FLOOR_NONE && floor[i].use != FP_FLOOR_WAY)
        g_array_append_val (out, walked);
    }
}

/* The footpace itself is among the floors. */
static void
add_steps (const FpScene *scene, GArray *out)
{
  guint n;
  const FpSolid *solid = fp_scene_solids (scene, &n);

  for (guint i = 0; i < n; i++)
    if (solid[i].part == FP_PART_STEP && fp_solid_is_walked (scene, &solid[i]))
      {
        const FpWalked walked = { solid[i].outline, solid[i].n_outline, solid[i].z1, solid[i].gx, solid[i].gy, FP_FLOOR_NONE,
                                  (int) solid[i].owner, TRUE };
        g_array_append_val (out, walked);
      }
}

static double
middle_height (const FpWalked *self)
{
  const FpPoint at = fp_outline_centroid (self->outline, self->n_outline);

  return self->z + self->gx * at.x + self->gy * at.y;
}

static int
by_height (gconstpointer a, gconstpointer b)
{
  const FpWalked *x = a, *y = b;
  const double hx = round (middle_height (x)), hy = round (middle_height (y));

  if (hx != hy)
    return hx > hy ? -1 : 1;
  if (x->is_step != y->is_step)
    return x->is_step ? 1 : -1;
  return x->owner - y->owner;
}

GArray *
fp_walked_new (const FpScene *scene)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpWalked));

  add_floors (scene, out);
  add_steps (scene, out);
  g_array_sort (out, by_height);
  return out;
}

/* --- outlines ---------------------------------------------------------------- */

/* As much within the round as without, and never farther from it than FP_FREE_SAGITTA. */
static FpPoint *
round_plan (double cx, double cy, double rx, double ry, double turn, guint *n)
{
  const double r = MAX (MAX (rx, ry), FP_FREE_SAGITTA * 2), half = acos (1 - FP_FREE_SAGITTA / r), grown = 2 / (1 + cos (half));
  FpPoint *pt;

  *n = (guint) CLAMP (ceil (G_PI / half), 8, 720);
  pt = g_new (FpPoint, *n);
  for (guint i = 0; i < *n; i++)
    {
      const double a = 2 * G_PI * i / *n, x = rx * grown * cos (a), y = ry * grown * sin (a);
      pt[i] = (FpPoint) { cx + x * cos (turn) - y * sin (turn), cy + x * sin (turn) + y * cos (turn) };
    }
  return pt;
}

FpPoint *
fp_solid_plan (const FpSolid *solid, guint *n)
{
  const double r = MAX (solid->r0, solid->r1);

  switch (solid->shape)
    {
    case FP_SOLID_ROUND:
      return round_plan (solid->cx, solid->cy, r, r, 0, n);
    case FP_SOLID_ELLIPSOID:
      return round_plan (solid->cx, solid->cy, solid->rx, solid->ry, solid->turn * G_PI / 180, n);
    case FP_SOLID_PRISM:
    default:
      *n = solid->n_outline;
      return g_memdup2 (solid->outline, solid->n_outline * sizeof *solid->outline);
    }
}
