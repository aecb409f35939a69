/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sight-targets.c - the points looked at
 *
 * A fixed pattern of equal fields, a point in the middle of each: the same
 * scene always gives the same shares.
 */
#include "sight-private.h"

#include <math.h>

/* Fields along the longer side of a single target: 8 x 8, or 16 x 4 where that side is the longer by far. */
#define LONG_SIDE 8
#define LONGER_SIDE 16
#define FAR_LONGER 2.0
G_STATIC_ASSERT (FP_SIGHT_RAYS % LONG_SIDE == 0 && FP_SIGHT_RAYS % LONGER_SIDE == 0);

static FpTarget
target_as_placed (const FpPlaced *placed, const FpTarget *own)
{
  const FpPlace turn = { 0, 0, placed->place.turn };
  FpPoint u = fp_place_point (&turn, (FpPoint) { own->u.x, own->u.y });
  FpPoint v = fp_place_point (&turn, (FpPoint) { own->v.x, own->v.y });
  return (FpTarget) {
    own->focus, own->shape, fp_placed_point (placed, own->origin), { u.x, u.y, own->u.z }, { v.x, v.y, own->v.z },
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
  return focus == FP_FOCUS_MENSA || focus == FP_FOCUS_HOST || focus == FP_FOCUS_CHALICE;
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

/* From the square -1..1 to the disc within it, so that equal areas stay equal: P. Shirley and K. Chiu, "A Low Distortion
 * Map Between Disk and Square", Journal of Graphics Tools 2:3 (1997) (from memory). */
static void
square_to_disc (double *a, double *b)
{
  const gboolean wide = fabs (*a) > fabs (*b);
  const double r = wide ? *a : *b;
  double angle;

  if (!(fabs (r) > 0))
    return;
  angle = wide ? G_PI / 4 * (*b / *a) : G_PI / 2 - G_PI / 4 * (*a / *b);
  *a = r * cos (angle);
  *b = r * sin (angle);
}

/* Of a parallelogram's shares 0..1 those within the shape, equal areas staying equal. */
static void
into_shape (FpTargetShape shape, double *s, double *t)
{
  switch (shape)
    {
    case FP_TARGET_ROUND:
      *s = 2 * *s - 1;
      *t = 2 * *t - 1;
      square_to_disc (s, t);
      *s = (*s + 1) / 2;
      *t = (*t + 1) / 2;
      break;
    case FP_TARGET_GABLE:
      *t = 1 - sqrt (1 - *t);
      *s = *s * (1 - *t) + *t / 2;
      break;
    case FP_TARGET_PANEL:
    default:
      break;
    }
}

static FpVec3
point_on (const FpTarget *target, double s, double t)
{
  into_shape (target->shape, &s, &t);
  return fp_vec3_add (target->origin, fp_vec3_add (fp_vec3_scale (target->u, s), fp_vec3_scale (target->v, t)));
}

/* Fields in blocks of eight neighbours that follow each other: as the rays to them are asked. */
static void
spread_fields (const FpTarget *target, guint rows, FpVec3 *points)
{
  const guint columns = FP_SIGHT_RAYS / rows, high = 2, wide = 4;

  for (guint row = 0; row < rows; row += high)
    for (guint column = 0; column < columns; column += wide)
      for (guint i = 0; i < high * wide; i++)
        *points++ = point_on (target, (column + i % wide + 0.5) / columns, (row + i / wide + 0.5) / rows);
}

static double
target_area (const FpTarget *target)
{
  static const double share[] = { [FP_TARGET_PANEL] = 1, [FP_TARGET_ROUND] = G_PI / 4, [FP_TARGET_GABLE] = 0.5 };

  return share[target->shape] * fp_vec3_length (fp_vec3_cross (target->u, target->v));
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

static guint
rows_of_fields (const FpTarget *only)
{
  const double u = fp_vec3_length (only->u), v = fp_vec3_length (only->v);
  const guint along = MAX (u, v) > FAR_LONGER * MIN (u, v) ? LONGER_SIDE : LONG_SIDE;

  return u >= v ? FP_SIGHT_RAYS / along : along;
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
      spread_fields (only, rows_of_fields (only), points);
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
