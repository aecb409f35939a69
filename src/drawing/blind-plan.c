/* SPDX-License-Identifier: GPL-3.0-or-later */
/* blind-plan.c - parts of the floor from which something is not seen, hatched on the plan */
#include "footpace/sight-drawing.h"

#include <math.h>

/* Degrees; galleries lie over other floors, so their hatch crosses that of those. */
#define FLOOR_HATCH   60.0
#define GALLERY_HATCH 120.0
#define SMALLEST      0.4 /* mm2 of paper: less is a blot */
#define SAMPLE        6.0 /* mm of paper: width of the key's */
#define SQUARE_FOOT   (FP_MM_PER_FOOT * FP_MM_PER_FOOT)

static GArray *
ring_on_paper (const FpRing *ring, const FpViewLayout *plan)
{
  GArray *out = g_array_sized_new (FALSE, FALSE, sizeof (FpPoint), ring->n);

  for (guint i = 0; i < ring->n; i++)
    {
      const FpPoint p = fp_view_to_paper (plan, ring->pt[i]);
      g_array_append_val (out, p);
    }
  return out;
}

static const FpPoint *
points_of (const GArray *points)
{
  return (const FpPoint *) (gconstpointer) points->data;
}

/* To and fro along a slit, so that one outline has the hole, too, by the even-odd rule. */
static void
add_hole (GArray *area, const GArray *hole)
{
  const FpPoint first = g_array_index (area, FpPoint, 0), hole_first = g_array_index (hole, FpPoint, 0);

  g_array_append_vals (area, hole->data, hole->len);
  g_array_append_val (area, hole_first);
  g_array_append_val (area, first);
}

/* @i: (inout): past the area and its holes */
static void
draw_area (FpDrawing *self, const GArray *rings, guint *i, double hatch, const FpViewLayout *plan)
{
  g_autoptr (GArray) area = ring_on_paper (&g_array_index (rings, FpRing, *i), plan);
  const gboolean drawn = fabs (fp_outline_area (points_of (area), area->len)) >= SMALLEST;
  const FpPoint first = g_array_index (area, FpPoint, 0);

  if (drawn)
    fp_drawing_run (self, FP_PEN_BLIND, points_of (area), area->len, TRUE);
  g_array_append_val (area, first);
  for (++*i; *i < rings->len && g_array_index (rings, FpRing, *i).hole; ++*i)
    {
      g_autoptr (GArray) hole = ring_on_paper (&g_array_index (rings, FpRing, *i), plan);
      if (drawn)
        fp_drawing_run (self, FP_PEN_BLIND, points_of (hole), hole->len, TRUE);
      add_hole (area, hole);
    }
  if (drawn)
    fp_drawing_area (self, FP_PEN_BLIND, FP_FILL_NONE, hatch, points_of (area), area->len);
}

void
fp_drawing_add_blind (FpDrawing *self, const GArray *blind, const FpViewLayout *plan)
{
  fp_drawing_set_item (self, NULL, FP_STANDING_EXISTING, FP_VIEW_PLAN);
  for (guint f = 0; blind != NULL && f < blind->len; f++)
    {
      const FpBlindFloor *floor = &g_array_index (blind, FpBlindFloor, f);
      for (guint i = 0; i < floor->rings->len;)
        draw_area (self, floor->rings, &i, floor->gallery ? GALLERY_HATCH : FLOOR_HATCH, plan);
    }
}

/* --- the key ------------------------------------------------------------------------ */

static void
draw_sample (FpDrawing *drawing, const FpBox *box, double hatch)
{
  const FpPoint corner[4] = { { box->x0, box->y0 }, { box->x1, box->y0 }, { box->x1, box->y1 }, { box->x0, box->y1 } };

  fp_drawing_area (drawing, FP_PEN_BLIND, FP_FILL_PAPER, hatch, corner, 4);
  fp_drawing_run (drawing, FP_PEN_BLIND, corner, 4, TRUE);
}

/* "blind area: 34.2 m²" */
static char *
words_of (const GArray *blind, gboolean gallery, FpUnits units)
{
  const double area = fp_blind_area (blind, gallery), unit = units == FP_UNITS_METRIC ? 1e6 : SQUARE_FOOT;
  g_autofree char *number = fp_number_format_rounded (area / unit, 1);

  return g_strdup_printf ("%s: %s %s", gallery ? "blind area on the gallery" : "blind area", number,
                          units == FP_UNITS_METRIC ? "m²" : "sq ft");
}

static void
draw_line (FpDrawing *self, const GArray *blind, gboolean gallery, FpUnits units, double x, double y)
{
  const FpBox sample = { x, y - 0.85 * FP_SIGHT_KEY_STEP, x + SAMPLE, y - 0.15 * FP_SIGHT_KEY_STEP };
  const FpPoint at = { x + FP_SIGHT_KEY_WORDS, y - (FP_SIGHT_KEY_STEP + FP_SIGHT_KEY_LETTERS) / 2 };
  g_autofree char *words = words_of (blind, gallery, units);

  draw_sample (self, &sample, gallery ? GALLERY_HATCH : FLOOR_HATCH);
  fp_drawing_text (self, at, FP_SIGHT_KEY_LETTERS, 0, FP_ALIGN_LEFT, words);
}

double
fp_drawing_add_blind_key (FpDrawing *self, const GArray *blind, FpUnits units, const FpBox *box)
{
  double y = box->y1;

  for (int gallery = FALSE; gallery <= TRUE; gallery++)
    {
      if (!(fp_blind_area (blind, gallery) > 0))
        continue;
      if (self != NULL)
        draw_line (self, blind, gallery, units, box->x0, y);
      y -= FP_SIGHT_KEY_STEP;
    }
  return box->y1 - y;
}
