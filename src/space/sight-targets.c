/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sight-targets.c - the points looked at
 *
 * A fixed pattern of equal fields, a point in the middle of each: the same
 * scene always gives the same shares.
 */
#include "sight-private.h"

#include <math.h>

#define LONG_SIDE 6 /* fields along the longer side of a single target: 6 x 4 = FP_SIGHT_RAYS */
G_STATIC_ASSERT (FP_SIGHT_RAYS % LONG_SIDE == 0);

static FpTarget
target_as_placed (const FpPlaced *placed, const FpTarget *own)
{
  const FpPlace turn = { 0, 0, placed->place.turn };
  FpPoint u = fp_place_point (&turn, (FpPoint) { own->u.x, own->u.y });
  FpPoint v = fp_place_point (&turn, (FpPoint) { own->v.x, own->v.y });
  return (FpTarget) {
    own->focus, fp_placed_point (placed, own->origin), { u.x, u.y, own->u.z }, { v.x, v.y, own->v.z },
  };
}

void
fp_sight_add_targets (const FpPlaced *placed, FpFocus focus, GArray *out)
{
  const FpKind *kind = fp_item_kind (placed->item);
  if (placed->ghost || kind->targets == NULL)
    return;
  g_autoptr (GArray) own = g_array_new (FALSE, FALSE, sizeof (FpTarget));
  kind->targets (&placed->form, own);
  for (guint i = 0; i < own->len; i++)
    if (g_array_index (own, FpTarget, i).focus == focus)
      {
        FpTarget target = target_as_placed (placed, &g_array_index (own, FpTarget, i));
        g_array_append_val (out, target);
      }
}

/* Altars are many in some churches: the one at which Mass is celebrated is looked at. */
static gboolean
belongs_to_altar (FpFocus focus)
{
  return focus == FP_FOCUS_MENSA || focus == FP_FOCUS_HOST;
}

int
fp_sight_target (const FpScene *scene, FpFocus focus)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);
  if (belongs_to_altar (focus))
    return fp_scene_celebrated_altar (scene);

  g_autoptr (GArray) found = g_array_new (FALSE, FALSE, sizeof (FpTarget));
  for (guint i = 0; i < n; i++)
    {
      fp_sight_add_targets (&placed[i], focus, found);
      if (found->len > 0)
        return (int) i;
    }
  return -1;
}

static FpVec3
point_on (const FpTarget *target, double s, double t)
{
  return fp_vec3_add (target->origin, fp_vec3_add (fp_vec3_scale (target->u, s), fp_vec3_scale (target->v, t)));
}

static double
target_area (const FpTarget *target)
{
  return fp_vec3_length (fp_vec3_cross (target->u, target->v));
}

/* @n points in rows along u; rows are as deep as their points are many, so every point stands for the same area. */
static void
spread (const FpTarget *target, guint n, guint rows, FpVec3 *points)
{
  guint done = 0;
  for (guint row = 0; row < rows; row++)
    {
      guint until = (row + 1) * n / rows, count = until - done;
      double t = (done + until) / (2.0 * n);
      for (guint i = 0; i < count; i++)
        *points++ = point_on (target, (i + 0.5) / count, t);
      done = until;
    }
}

static guint
rows_for (const FpTarget *target, guint n)
{
  double u = fp_vec3_length (target->u), v = fp_vec3_length (target->v);
  double rows = u > 0 ? round (sqrt (n * v / u)) : n;
  return (guint) CLAMP (rows, 1, n);
}

/* Points in proportion to area, the remainder to the largest fractions; at least one each. */
static void
share_out (const GArray *targets, guint *count)
{
  double total = 0;
  guint given = 0;
  g_autofree double *want = g_new (double, targets->len);

  for (guint i = 0; i < targets->len; i++)
    total += target_area (&g_array_index (targets, FpTarget, i));
  for (guint i = 0; i < targets->len; i++)
    {
      double area = target_area (&g_array_index (targets, FpTarget, i));
      want[i] = total > 0 ? FP_SIGHT_RAYS * area / total : (double) FP_SIGHT_RAYS / targets->len;
      count[i] = MAX (1, (guint) want[i]);
      given += count[i];
    }
  while (given != FP_SIGHT_RAYS)
    {
      guint best = 0;
      gboolean more = given < FP_SIGHT_RAYS;
      for (guint i = 1; i < targets->len; i++)
        if (more ? want[i] - count[i] > want[best] - count[best]
                 : count[i] > 1 && (count[best] == 1 || want[i] - count[i] < want[best] - count[best]))
          best = i;
      count[best] = more ? count[best] + 1 : count[best] - 1;
      given = more ? given + 1 : given - 1;
    }
}

guint
fp_sight_points (const FpScene *scene, FpFocus focus, FpVec3 *points)
{
  int at = fp_sight_target (scene, focus);
  if (at < 0)
    return 0;
  g_autoptr (GArray) targets = g_array_new (FALSE, FALSE, sizeof (FpTarget));
  fp_sight_add_targets (&fp_scene_placed (scene, NULL)[at], focus, targets);
  if (targets->len == 0)
    return 0;
  if (targets->len == 1)
    {
      const FpTarget *only = &g_array_index (targets, FpTarget, 0);
      gboolean u_longer = fp_vec3_length (only->u) >= fp_vec3_length (only->v);
      spread (only, FP_SIGHT_RAYS, u_longer ? FP_SIGHT_RAYS / LONG_SIDE : LONG_SIDE, points);
      return FP_SIGHT_RAYS;
    }
  g_array_set_size (targets, MIN (targets->len, FP_SIGHT_RAYS));
  guint count[FP_SIGHT_RAYS];
  share_out (targets, count);
  for (guint i = 0; i < targets->len; i++)
    {
      const FpTarget *target = &g_array_index (targets, FpTarget, i);
      spread (target, count[i], rows_for (target, count[i]), points);
      points += count[i];
    }
  return FP_SIGHT_RAYS;
}
