/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet-parts.h"

#include <math.h>

#define SMALL 1.8 /* the least height of ISO 3098-1 */
#define PLAIN 2.5

/* --- north --------------------------------------------------------------------- */

void
fp_draw_north_point (FpDrawing *drawing, FpPoint middle, double radius, double north)
{
  /* Liturgical east is up the paper. */
  const FpPlace place = { middle.x, middle.y, north };
  const FpPoint tip = fp_place_point (&place, (FpPoint) { 0, radius });
  const FpPoint west = fp_place_point (&place, (FpPoint) { -radius * 0.42, -radius * 0.9 });
  const FpPoint notch = fp_place_point (&place, (FpPoint) { 0, -radius * 0.5 });
  const FpPoint east = fp_place_point (&place, (FpPoint) { radius * 0.42, -radius * 0.9 });
  const FpPoint letter = fp_place_point (&place, (FpPoint) { 0, radius + 2.0 });
  const FpPoint dark[3] = { tip, notch, east }, light[3] = { tip, west, notch };

  fp_drawing_circle (drawing, FP_PEN_DIMENSION, FP_FILL_NONE, middle, radius);
  fp_drawing_area (drawing, FP_PEN_DIMENSION, FP_FILL_INK, 0, dark, 3);
  fp_drawing_area (drawing, FP_PEN_DIMENSION, FP_FILL_PAPER, 0, light, 3);
  fp_drawing_text (drawing, (FpPoint) { letter.x, letter.y - PLAIN / 2 }, PLAIN, 0, FP_ALIGN_MIDDLE, "N");
}

/* --- scale bar -------------------------------------------------------------------- */

/* The longest of 1, 2, 5 times a power of ten of @unit for which ten parts are at most @most mm of paper. */
static double
division (double unit, double scale, double most)
{
  static const double steps[] = { 5, 2, 1 };

  for (double power = 1e6; power >= 1e-4; power /= 10)
    for (guint i = 0; i < G_N_ELEMENTS (steps); i++)
      if (steps[i] * power * unit * 5 / scale <= most)
        return steps[i] * power * unit;
  return 1e-4 * unit;
}

static void
draw_part (FpDrawing *drawing, FpPoint at, double width, double height, gboolean dark)
{
  const FpPoint pt[4] = { at, { at.x + width, at.y }, { at.x + width, at.y + height }, { at.x, at.y + height } };

  fp_drawing_area (drawing, FP_PEN_EDGE, dark ? FP_FILL_INK : FP_FILL_PAPER, 0, pt, 4);
}

/* Feet have no tenths: parts of less than a foot are told in inches. */
static char *
figure_text (double mm, FpUnits units, gboolean inches, gboolean last)
{
  const double unit = units == FP_UNITS_METRIC ? 1000 : inches ? FP_MM_PER_INCH : FP_MM_PER_FOOT;
  const char *name = !last ? "" : units == FP_UNITS_METRIC ? " m" : inches ? " in" : " ft";

  g_autofree char *number = fp_number_format_rounded (mm / unit, 4);

  return g_strconcat (number, name, NULL);
}

double
fp_draw_scale_bar (FpDrawing *drawing, FpPoint at, double most, double scale, FpUnits units)
{
  const double height = 1.8, foot = at.y + 3.6;
  const gboolean inches = units == FP_UNITS_IMPERIAL && FP_MM_PER_FOOT * 5 / scale > most;
  const double unit = units == FP_UNITS_METRIC ? 1000 : inches ? FP_MM_PER_INCH : FP_MM_PER_FOOT;
  /* The figure of the last division stands out half its width and its unit. */
  const double part = division (unit, scale, most - 9), width = part / scale;

  for (guint i = 0; i < 5; i++)
    draw_part (drawing, (FpPoint) { at.x + 1.5 + i * width, foot }, width, height, i % 2 == 0);
  for (guint i = 0; i <= 5; i++)
    {
      g_autofree char *text = figure_text (i * part, units, inches, FALSE);
      g_autofree char *last = figure_text (i * part, units, inches, TRUE);
      const FpPoint p = { at.x + 1.5 + i * width, foot + height + 1.1 };
      const double half = fp_lettering_width (text, PLAIN) / 2;
      /* Figures are centred on their divisions; the unit follows the last. */
      fp_drawing_text (drawing, (FpPoint) { p.x - half, p.y }, PLAIN, 0, FP_ALIGN_LEFT, i == 5 ? last : text);
    }
  fp_drawing_text (drawing, (FpPoint) { at.x + 1.5, at.y + 0.6 }, SMALL, 0, FP_ALIGN_LEFT,
                   "Do not scale; check the bar.");
  return 1.5 + 5 * width + 9;
}

/* --- projection symbol ---------------------------------------------------------------- */

double
fp_draw_projection_symbol (FpDrawing *drawing, FpPoint middle, double height)
{
  /* A truncated cone that lies on its side, and on the right how it looks from its small end. */
  const double large = height / 2, small = large / 2, length = height, gap = height * 0.7;
  const double width = length + gap + height;
  const double x0 = middle.x - width / 2, eye = x0 + length + gap + large;
  const FpPoint cone[4] = { { x0, middle.y - small }, { x0 + length, middle.y - large },
                            { x0 + length, middle.y + large }, { x0, middle.y + small } };

  fp_drawing_run (drawing, FP_PEN_OUTLINE, cone, 4, TRUE);
  fp_drawing_circle (drawing, FP_PEN_OUTLINE, FP_FILL_NONE, (FpPoint) { eye, middle.y }, large);
  fp_drawing_circle (drawing, FP_PEN_OUTLINE, FP_FILL_NONE, (FpPoint) { eye, middle.y }, small);
  fp_drawing_line (drawing, FP_PEN_AXIS, (FpPoint) { x0 - 1.5, middle.y }, (FpPoint) { eye + large + 1.5, middle.y });
  fp_drawing_line (drawing, FP_PEN_AXIS, (FpPoint) { eye, middle.y - large - 1.5 },
                   (FpPoint) { eye, middle.y + large + 1.5 });
  return width + 3;
}

/* --- legend -------------------------------------------------------------------------------- */

gboolean
fp_draw_legend (FpDrawing *drawing, FpPoint at, double most, const FpScene *scene, FpHidden hidden)
{
  static const char *const names[] = { "existing", "proposed", "removed" };
  gboolean has[3] = { fp_shows (hidden, FP_SHOW_EXISTING), FALSE, FALSE };
  const double sample = 6, gap = 1.2, between = 3.5;
  double x = at.x;
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    has[placed[i].standing] |= fp_shows_thing (hidden, fp_item_kind (placed[i].item), placed[i].standing);
  if (!has[FP_STANDING_PROPOSED] && !has[FP_STANDING_REMOVED])
    return FALSE;
  for (FpStanding s = FP_STANDING_EXISTING; s <= FP_STANDING_REMOVED; s++)
    {
      const double width = sample + gap + fp_lettering_width (names[s], PLAIN);
      if (!has[s] || x + width > at.x + most)
        continue;
      fp_drawing_set_item (drawing, NULL, s, -1);
      fp_drawing_line (drawing, FP_PEN_OUTLINE, (FpPoint) { x, at.y + 1.2 }, (FpPoint) { x + sample, at.y + 1.2 });
      fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, -1);
      fp_drawing_text (drawing, (FpPoint) { x + sample + gap, at.y }, PLAIN, 0, FP_ALIGN_LEFT, names[s]);
      x += width + between;
    }
  return TRUE;
}
