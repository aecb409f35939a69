/* SPDX-License-Identifier: GPL-3.0-or-later */
/* projection-strips.c - convex pieces side by side made one, before the costlier union
 *
 * The wall over an arch is a row of strips, a few dozen to each opening.  Two
 * convex pieces that share a whole side lie on opposite sides of it, so what
 * is within either is within the two joined there: no intersections need to
 * be sought.  Where the joined piece would not be convex, both are left as
 * they are.
 */
#include "projection-private.h"

#include <math.h>
#include <string.h>

static gboolean
is_near (FpPoint a, FpPoint b)
{
  return fabs (a.x - b.x) <= FP_CUT_GRID && fabs (a.y - b.y) <= FP_CUT_GRID;
}

/* Finds the side of @a that @b runs along the other way. */
static gboolean
find_shared (const FpCutPiece *a, const FpCutPiece *b, guint *in_a, guint *in_b)
{
  for (guint i = 0; i < a->n; i++)
    for (guint k = 0; k < b->n; k++)
      if (is_near (a->pt[i], b->pt[(k + 1) % b->n]) && is_near (a->pt[(i + 1) % a->n], b->pt[k]))
        {
          *in_a = i;
          *in_b = k;
          return TRUE;
        }
  return FALSE;
}

/* Without corners on a straight line between their neighbours. */
static guint
drop_straight (FpPoint *pt, guint n)
{
  guint i = 0;

  while (i < n && n > 3)
    if (fp_segment_distance (pt[(i + n - 1) % n], pt[(i + 1) % n], pt[i]) > FP_CUT_GRID)
      i++;
    else
      {
        memmove (pt + i, pt + i + 1, (n - i - 1) * sizeof *pt);
        n--;
      }
  return n;
}

/* From the end of the shared side once round @a, then round @b. */
static FpPoint *
join_at (const FpCutPiece *a, guint in_a, const FpCutPiece *b, guint in_b, guint *n)
{
  FpPoint *pt = g_new (FpPoint, a->n + b->n - 2);

  *n = 0;
  for (guint i = 1; i < a->n; i++)
    pt[(*n)++] = a->pt[(in_a + i) % a->n];
  for (guint k = 1; k < b->n; k++)
    pt[(*n)++] = b->pt[(in_b + k) % b->n];
  *n = drop_straight (pt, *n);
  return pt;
}

static gboolean
is_convex (const FpCutPiece *piece)
{
  return fp_outline_is_convex (piece->pt, piece->n);
}

/* Takes @b into @a. */
static gboolean
join_two (FpCutPiece *a, FpCutPiece *b)
{
  g_autofree FpPoint *pt = NULL;
  guint in_a, in_b, n;

  if (a->owner != b->owner || a->fabric != b->fabric || !find_shared (a, b, &in_a, &in_b)
      || (fp_outline_area (a->pt, a->n) > 0) != (fp_outline_area (b->pt, b->n) > 0))
    return FALSE;
  pt = join_at (a, in_a, b, in_b, &n);
  if (!fp_outline_is_convex (pt, n))
    return FALSE;
  g_free (a->pt);
  g_clear_pointer (&b->pt, g_free);
  a->pt = g_steal_pointer (&pt);
  a->n = n;
  a->depth = MAX (a->depth, b->depth);
  return TRUE;
}

void
fp_cut_strips_join (GArray *pieces)
{
  FpCutPiece *piece = (FpCutPiece *) (gpointer) pieces->data;
  guint kept = 0;

  for (guint i = 1; i < pieces->len; i++)
    if (!is_convex (&piece[kept]) || !is_convex (&piece[i]) || !join_two (&piece[kept], &piece[i]))
      {
        const FpCutPiece next = piece[i];
        piece[i].pt = NULL;
        piece[++kept] = next;
      }
  if (pieces->len > 0)
    g_array_set_size (pieces, kept + 1);
}
