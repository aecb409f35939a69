/* SPDX-License-Identifier: GPL-3.0-or-later */
/* hatch.c - hatch lines, and the crosses along removed work */
#include "drawing-private.h"

#include <math.h>

#define CROSS_ARM 0.8      /* mm: half a stroke of a cross, along each axis    */
#define CROSS_EVERY 14.0   /* mm                                               */
#define CROSS_SHORTEST 4.0 /* mm: a shorter line carries none                  */
#define LINES_MAX 20000.0  /* of one hatch: a church at 1:1 would have no end  */

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  const double d = *(const double *) a - *(const double *) b;

  return (d > 0) - (d < 0);
}

/* Where the level line at @v (in turned coordinates) crosses the outline. */
static void
crossings (const FpPoint *turned, guint n, double v, GArray *out)
{
  g_array_set_size (out, 0);
  for (guint i = 0; i < n; i++)
    {
      const FpPoint a = turned[i], b = turned[(i + 1) % n];
      if ((a.y > v) != (b.y > v))
        {
          const double at = a.x + (b.x - a.x) * (v - a.y) / (b.y - a.y);
          g_array_append_val (out, at);
        }
    }
  g_array_sort (out, compare_doubles);
}

void
fp_hatch_lines (const FpPoint *pt, guint n, double degrees, GArray *out)
{
  const FpPlace turn = { 0, 0, degrees };
  g_autofree FpPoint *turned = g_new (FpPoint, MAX (n, 1));
  g_autoptr (GArray) at = g_array_new (FALSE, FALSE, sizeof (double));
  FpBox box = FP_BOX_EMPTY;
  double first, last;

  for (guint i = 0; i < n; i++)
    {
      turned[i] = fp_place_unpoint (&turn, pt[i]);
      fp_box_add_point (&box, turned[i]);
    }
  if (n < 3 || !((box.y1 - box.y0) / FP_HATCH_GAP <= LINES_MAX))
    return;
  first = ceil (box.y0 / FP_HATCH_GAP);
  last = floor (box.y1 / FP_HATCH_GAP);
  for (double k = first; k <= last; k++)
    {
      const double v = k * FP_HATCH_GAP;
      crossings (turned, n, v, at);
      for (guint i = 0; i + 1 < at->len; i += 2)
        {
          const FpSegment s = { fp_place_point (&turn, (FpPoint) { g_array_index (at, double, i), v }),
                                fp_place_point (&turn, (FpPoint) { g_array_index (at, double, i + 1), v }) };
          if (g_array_index (at, double, i + 1) - g_array_index (at, double, i) > 1e-6)
            g_array_append_val (out, s);
        }
    }
}

void
fp_cross_lines (FpPoint a, FpPoint b, GArray *out)
{
  const double length = hypot (b.x - a.x, b.y - a.y);
  const double count = MIN (MAX (1, round (length / CROSS_EVERY)), LINES_MAX);

  if (!(length >= CROSS_SHORTEST))
    return;
  for (double i = 0; i < count; i++)
    {
      const double t = (i + 0.5) / count;
      const FpPoint m = { a.x + t * (b.x - a.x), a.y + t * (b.y - a.y) };
      /* Along and across the line by equal parts: a cross at 45 degrees to it. */
      const double ux = CROSS_ARM * (b.x - a.x) / length, uy = CROSS_ARM * (b.y - a.y) / length;
      const FpSegment one = { { m.x - ux + uy, m.y - uy - ux }, { m.x + ux - uy, m.y + uy + ux } };
      const FpSegment two = { { m.x - ux - uy, m.y - uy + ux }, { m.x + ux + uy, m.y + uy - ux } };
      g_array_append_val (out, one);
      g_array_append_val (out, two);
    }
}
