/* SPDX-License-Identifier: GPL-3.0-or-later */
/* contour-rings.c - rings that were found, made straight and sorted */
#include "contour-private.h"

#include <math.h>

/* From the straight, mm: ten times as much as crossings are off. */
#define STRAIGHT 2.0
/* In steps of the grid: how long a cut across a corner may be, and how far off the corner. */
#define CUT 1.5
/* How near to the corner it is asked whether that is one, in shares of the way. */
#define NEAR_CORNER 0.9

static FpPoint
corner (const GArray *ring, guint i)
{
  return g_array_index (ring, FpPoint, i % ring->len);
}

/* --- straight ----------------------------------------------------------------------- */

/* The corner farthest from the chord @from-@to of those between, where it is farther than that; 0: none. */
static guint
farthest (const GArray *ring, guint from, guint to)
{
  const FpPoint a = corner (ring, from), b = corner (ring, to);
  double most = STRAIGHT;
  guint found = 0;

  for (guint i = from + 1; i < to; i++)
    {
      const double d = fp_segment_distance (a, b, corner (ring, i));
      if (d > most)
        {
          most = d;
          found = i;
        }
    }
  return found;
}

/* D. H. Douglas and T. K. Peucker, "Algorithms for the reduction of the number of points required to represent a digitized
 * line or its caricature", The Canadian Cartographer 10:2 (1973) (from memory), without recursion. */
static void
keep_turns (const GArray *ring, guint first, guint last, gboolean *keep)
{
  g_autoptr (GArray) open = g_array_new (FALSE, FALSE, sizeof (guint));
  guint from = first;

  g_array_append_val (open, last);
  while (open->len > 0)
    {
      const guint to = g_array_index (open, guint, open->len - 1), at = farthest (ring, from, to);
      if (at != 0)
        {
          keep[at % ring->len] = TRUE;
          g_array_append_val (open, at);
          continue;
        }
      from = to;
      g_array_set_size (open, open->len - 1);
    }
}

static guint
opposite (const GArray *ring, guint from)
{
  const FpPoint a = corner (ring, from);
  guint found = from + 1;
  double most = 0;

  for (guint i = from + 1; i < from + ring->len; i++)
    {
      const FpPoint p = corner (ring, i);
      if (hypot (p.x - a.x, p.y - a.y) > most)
        {
          most = hypot (p.x - a.x, p.y - a.y);
          found = i;
        }
    }
  return found;
}

/* What is farthest from anywhere is a corner, if there are any; what is farthest from that, another. */
static void
leave_out_straights (GArray *ring)
{
  const guint first = opposite (ring, 0) % ring->len, half = opposite (ring, first);
  g_autofree gboolean *keep = g_new0 (gboolean, ring->len);
  guint n = 0;

  keep[first] = keep[half % ring->len] = TRUE;
  keep_turns (ring, first, half, keep);
  keep_turns (ring, half, first + ring->len, keep);
  for (guint i = 0; i < ring->len; i++)
    if (keep[i])
      g_array_index (ring, FpPoint, n++) = corner (ring, i);
  g_array_set_size (ring, n);
}

/* --- corners ---------------------------------------------------------------------------- */

static double
length (FpPoint a, FpPoint b)
{
  return hypot (b.x - a.x, b.y - a.y);
}

/* Where a-b and d-c meet, both going on beyond b and c; FALSE where they do not. */
static gboolean
meet (FpPoint a, FpPoint b, FpPoint c, FpPoint d, FpPoint *at)
{
  const FpPoint u = { b.x - a.x, b.y - a.y }, v = { c.x - d.x, c.y - d.y }, w = { d.x - a.x, d.y - a.y };
  const double across = u.x * v.y - u.y * v.x;
  const double s = (w.x * v.y - w.y * v.x) / across, t = (w.x * u.y - w.y * u.x) / across;

  *at = (FpPoint) { a.x + s * u.x, a.y + s * u.y };
  return isfinite (s) && isfinite (t) && s > 1 && t > 1;
}

/* Whether the side from @i on cuts off a corner, and where that is: the sides before and behind it are longer, and what is
 * asked close to where they meet says that it belongs to them. */
static gboolean
is_cut_corner (const GArray *ring, guint i, const FpField *field, double step, FpPoint *at)
{
  const FpPoint a = corner (ring, i + ring->len - 1), b = corner (ring, i), c = corner (ring, i + 1), d = corner (ring, i + 2);

  if (ring->len < 4 || length (b, c) > CUT * step || length (a, b) < length (b, c) || length (c, d) < length (b, c)
      || !meet (a, b, c, d, at) || length (b, *at) > CUT * step || length (c, *at) > CUT * step)
    return FALSE;
  const FpPoint middle = { (b.x + c.x) / 2, (b.y + c.y) / 2 };
  const FpPoint near_it = { middle.x + NEAR_CORNER * (at->x - middle.x), middle.y + NEAR_CORNER * (at->y - middle.y) };
  const gboolean outward = fp_orient (b, c, *at) < 0; /* what holds lies left of b-c */
  return field->holds (near_it, field->data) == outward;
}

static void
put_corners_back (GArray *ring, const FpField *field, double step)
{
  for (guint i = 0; i < ring->len && ring->len >= 4;)
    {
      FpPoint at;
      if (!is_cut_corner (ring, i, field, step, &at))
        {
          i++;
          continue;
        }
      g_array_index (ring, FpPoint, i) = at;
      g_array_remove_index (ring, (i + 1) % ring->len);
    }
}

void
fp_contour_straighten (GArray *ring, const FpField *field, double step)
{
  if (ring->len < 4)
    return;
  leave_out_straights (ring);
  put_corners_back (ring, field, step);
  if (ring->len >= 4)
    leave_out_straights (ring);
}

/* --- sorted --------------------------------------------------------------------------------- */

/* The smallest outer ring round the point; -1. */
static int
ring_about (const GArray *rings, FpPoint at)
{
  double least = G_MAXDOUBLE;
  int found = -1;

  for (guint i = 0; i < rings->len; i++)
    {
      const FpRing *ring = &g_array_index (rings, FpRing, i);
      const double area = fp_outline_area (ring->pt, ring->n);
      if (!ring->hole && area < least && fp_outline_contains (ring->pt, ring->n, at))
        {
          least = area;
          found = (int) i;
        }
    }
  return found;
}

GArray *
fp_contour_sort (const GArray *rings)
{
  GArray *sorted = fp_rings_new ();
  g_autofree int *about = g_new (int, MAX (rings->len, 1u));

  for (guint i = 0; i < rings->len; i++)
    about[i] = g_array_index (rings, FpRing, i).hole ? ring_about (rings, g_array_index (rings, FpRing, i).pt[0]) : -1;
  for (guint i = 0; i < rings->len; i++)
    {
      const FpRing *outer = &g_array_index (rings, FpRing, i);
      if (outer->hole)
        continue;
      fp_rings_add (sorted, outer->pt, outer->n, FALSE);
      for (guint h = 0; h < rings->len; h++)
        if (about[h] == (int) i)
          fp_rings_add (sorted, g_array_index (rings, FpRing, h).pt, g_array_index (rings, FpRing, h).n, TRUE);
    }
  return sorted;
}

double
fp_rings_area (const GArray *rings)
{
  double area = 0;

  for (guint i = 0; i < rings->len; i++)
    {
      const FpRing *ring = &g_array_index (rings, FpRing, i);
      area += (ring->hole ? -1 : 1) * fabs (fp_outline_area (ring->pt, ring->n));
    }
  return area;
}

gboolean
fp_rings_contain (const GArray *rings, FpPoint at)
{
  gboolean within = FALSE;

  for (guint i = 0; i < rings->len; i++)
    if (fp_outline_contains (g_array_index (rings, FpRing, i).pt, g_array_index (rings, FpRing, i).n, at))
      within = !within;
  return within;
}
