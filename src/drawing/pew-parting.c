/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pew-parting.c - an outline parted into convex ones
 *
 * Ears are cut off one by one, and each is joined to a part found before
 * where that stays convex: a curved bench becomes its straight pieces.
 */
#include "pew-private.h"

#include <string.h>

#define END G_MAXUINT16

static double
turn (FpPoint a, FpPoint b, FpPoint c)
{
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/* --- parts, as they grow ---------------------------------------------------- */

typedef struct
{
  const FpPoint *pt;
  GPtrArray     *parts; /* (element-type GArray of guint16) */
} Parting;

static guint16
corner_of (const GArray *part, guint i)
{
  return g_array_index (part, guint16, i % part->len);
}

/* Where @part has the side from @a to @b; -1. */
static int
find_side (const GArray *part, guint16 a, guint16 b)
{
  for (guint i = 0; i < part->len; i++)
    if (corner_of (part, i) == a && corner_of (part, i + 1) == b)
      return (int) i;
  return -1;
}

/* Whether @c may be put between the corners @i and @i + 1, so that neither of them nor @c turns inward. */
static gboolean
stays_convex (const Parting *self, const GArray *part, guint i, guint16 c)
{
  const FpPoint *pt = self->pt;
  const FpPoint before = pt[corner_of (part, i + part->len - 1)], a = pt[corner_of (part, i)];
  const FpPoint b = pt[corner_of (part, i + 1)], after = pt[corner_of (part, i + 2)];

  return turn (before, a, pt[c]) >= 0 && turn (pt[c], b, after) >= 0;
}

/* Newest first: an ear most often lies beside the last. */
static void
add_triangle (Parting *self, const guint16 corner[3])
{
  GArray *part;

  for (guint p = self->parts->len; p-- > 0;)
    for (guint k = 0; k < 3; k++)
      {
        const guint16 a = corner[k], b = corner[(k + 1) % 3], c = corner[(k + 2) % 3];
        const int side = find_side (part = g_ptr_array_index (self->parts, p), b, a);
        if (side < 0 || !stays_convex (self, part, (guint) side, c))
          continue;
        g_array_insert_val (part, (guint) side + 1, c);
        return;
      }
  part = g_array_sized_new (FALSE, FALSE, sizeof (guint16), 8);
  g_array_append_vals (part, corner, 3);
  g_ptr_array_add (self->parts, part);
}

/* --- ears --------------------------------------------------------------------- */

static gboolean
is_within (FpPoint a, FpPoint b, FpPoint c, FpPoint p)
{
  return turn (a, b, p) >= 0 && turn (b, c, p) >= 0 && turn (c, a, p) >= 0;
}

static gboolean
is_same (FpPoint a, FpPoint b)
{
  return a.x == b.x && a.y == b.y;
}

/* Only a corner that turns inward can lie in an ear. */
static gboolean
is_ear (const FpPoint *pt, const guint16 *left, guint n, guint i)
{
  const FpPoint a = pt[left[(i + n - 1) % n]], b = pt[left[i]], c = pt[left[(i + 1) % n]];

  if (turn (a, b, c) <= 0)
    return FALSE;
  for (guint k = (i + 2) % n; k != (i + n - 1) % n; k = (k + 1) % n)
    {
      const FpPoint p = pt[left[k]];
      if (turn (pt[left[(k + n - 1) % n]], p, pt[left[(k + 1) % n]]) < 0 && is_within (a, b, c, p) && !is_same (p, a)
          && !is_same (p, c))
        return FALSE;
    }
  return TRUE;
}

/* The next ear from @from on; where rounding leaves none, the first corner that turns nowhere or outward. */
static guint
find_ear (const FpPoint *pt, const guint16 *left, guint n, guint from)
{
  for (guint k = 0; k < n; k++)
    if (is_ear (pt, left, n, (from + k) % n))
      return (from + k) % n;
  for (guint k = 0; k < n; k++)
    if (turn (pt[left[(k + n - 1) % n]], pt[left[k]], pt[left[(k + 1) % n]]) >= 0)
      return k;
  return 0;
}

static void
clip_ears (Parting *self, guint16 *left, guint n)
{
  guint at = 0;

  while (n >= 3)
    {
      const guint i = find_ear (self->pt, left, n, at % n);
      const guint16 corner[3] = { left[(i + n - 1) % n], left[i], left[(i + 1) % n] };
      if (turn (self->pt[corner[0]], self->pt[corner[1]], self->pt[corner[2]]) > 0)
        add_triangle (self, corner);
      memmove (left + i, left + i + 1, sizeof *left * (n - 1 - i));
      n--;
      at = i + n - 1; /* the neighbour before, which may have become an ear of the same strip */
    }
}

void
fp_outline_part (const FpPoint *pt, guint n, GArray *parts)
{
  const guint16 end = END;
  g_autofree guint16 *left = g_new (guint16, n);
  g_autoptr (GPtrArray) grown = g_ptr_array_new_with_free_func ((GDestroyNotify) g_array_unref);
  Parting self = { pt, grown };

  for (guint i = 0; i < n; i++)
    left[i] = (guint16) i;
  if (fp_outline_is_convex (pt, n))
    {
      g_array_append_vals (parts, left, n);
      g_array_append_val (parts, end);
      return;
    }
  clip_ears (&self, left, n);
  for (guint i = 0; i < grown->len; i++)
    {
      const GArray *part = g_ptr_array_index (grown, i);
      g_array_append_vals (parts, part->data, part->len);
      g_array_append_val (parts, end);
    }
}
