/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pens.c - line widths, line types and colours
 *
 * Widths: ISO 128-2:2020, series 0.13 0.18 0.25 0.35 0.5 0.7 mm; group narrow
 * 0.18, wide 0.35, extra wide 0.7, symbols 0.25 (ISO 128-23:1999, from memory).
 * Line types 01 continuous, 02 dashed, 04 long-dashed dotted, with dashes of
 * 12, 24 and 0.5 widths and gaps of 3 (ISO 128-2, from memory).
 *
 * Standing is told twice over.  By colour: proposed work red, removed yellow
 * (Continental practice for alterations, no source).  And without: proposed
 * lines are twice as heavy; removed lines are in short dashes with crosses on
 * them.
 */
#include "drawing-private.h"

#define NARROW 0.18
#define WIDE 0.35
#define EXTRA_WIDE 0.7
#define SYMBOL 0.25

double
fp_pen_width (FpPen pen)
{
  switch (pen)
    {
    case FP_PEN_CUT: return EXTRA_WIDE;
    case FP_PEN_OUTLINE: return WIDE;
    case FP_PEN_EDGE: return NARROW;
    case FP_PEN_HIDDEN: return NARROW;
    case FP_PEN_AXIS: return NARROW;
    case FP_PEN_HATCH: return NARROW;
    case FP_PEN_DIMENSION: return NARROW;
    case FP_PEN_LETTER: return SYMBOL;
    case FP_PEN_FRAME: return EXTRA_WIDE;
    case FP_PEN_GUIDE: return NARROW;
    case FP_N_PENS: break;
    }
  return NARROW;
}

/* The lines by which a thing itself is drawn; dimensions, axes and frames have no standing. */
static gboolean
shows_a_thing (FpPen pen)
{
  return pen == FP_PEN_CUT || pen == FP_PEN_OUTLINE || pen == FP_PEN_EDGE;
}

double
fp_pen_stroke (FpPen pen, FpStanding standing)
{
  /* Twice as heavy, the least ratio at which two widths are told apart (ISO 128-2, from memory). */
  if (standing == FP_STANDING_PROPOSED && pen == FP_PEN_OUTLINE)
    return 0.7;
  if (standing == FP_STANDING_PROPOSED && pen == FP_PEN_EDGE)
    return 0.35;
  /* Nothing that is taken away is heavier than what stays. */
  if (standing == FP_STANDING_REMOVED && pen == FP_PEN_CUT)
    return WIDE;
  return fp_pen_width (pen);
}

gboolean
fp_pen_crosses (FpPen pen, FpStanding standing)
{
  return standing == FP_STANDING_REMOVED && (pen == FP_PEN_CUT || pen == FP_PEN_OUTLINE);
}

static guint
set_dashes (double dashes[6], double width, const double *widths, guint n)
{
  for (guint i = 0; i < n; i++)
    dashes[i] = widths[i] * width;
  return n;
}

guint
fp_pen_dashes (FpPen pen, FpStanding standing, double dashes[6])
{
  static const double dashed[] = { 12, 3 }, dash_dot[] = { 24, 3, 0.5, 3 }, short_dashes[] = { 6, 3 };
  static const double dots[] = { 1, 3 }; /* half as long they would vanish on most printers */
  const double width = fp_pen_stroke (pen, standing);

  if (pen == FP_PEN_HIDDEN)
    return set_dashes (dashes, width, dashed, 2);
  if (pen == FP_PEN_AXIS)
    return set_dashes (dashes, width, dash_dot, 4);
  if (pen == FP_PEN_GUIDE)
    return set_dashes (dashes, width, dots, 2);
  if (standing == FP_STANDING_REMOVED && shows_a_thing (pen))
    return set_dashes (dashes, width, short_dashes, 2);
  return 0;
}

/* 0xRRGGBB */
static FpInk
ink (guint rgb)
{
  return (FpInk) { (rgb >> 16) / 255.0, (rgb >> 8 & 0xff) / 255.0, (rgb & 0xff) / 255.0 };
}

static FpInk
ink_of_standing (FpStanding standing, gboolean dark)
{
  switch (standing)
    {
    case FP_STANDING_EXISTING: break;
    case FP_STANDING_PROPOSED: return ink (dark ? 0xff8274 : 0xb0201c);
    case FP_STANDING_REMOVED: return ink (dark ? 0xe2b53c : 0x8f6a00);
    }
  return ink (dark ? 0xeceae4 : 0x1d1f24);
}

FpInk
fp_pen_ink (FpPen pen, FpStanding standing, FpSurfaceLook look)
{
  const gboolean dark = look == FP_SURFACE_DARK;

  switch (pen)
    {
    case FP_PEN_CUT:
    case FP_PEN_OUTLINE:
    case FP_PEN_EDGE:
    case FP_PEN_HIDDEN:
      return ink_of_standing (standing, dark);
    case FP_PEN_HATCH:
      if (standing != FP_STANDING_EXISTING)
        return ink_of_standing (standing, dark);
      return ink (dark ? 0x7d828c : 0x74767f);
    case FP_PEN_AXIS:
      return ink (dark ? 0x9aa0ab : 0x5a5d66);
    case FP_PEN_GUIDE:
      return ink (dark ? 0x8f959f : 0x6f727b);
    case FP_PEN_DIMENSION:
    case FP_PEN_LETTER:
      return ink (dark ? 0xc9ccd2 : 0x34363d);
    case FP_PEN_FRAME:
    case FP_N_PENS:
      break;
    }
  return ink_of_standing (FP_STANDING_EXISTING, dark);
}

static FpInk
tint (FpStanding standing, gboolean dark)
{
  switch (standing)
    {
    case FP_STANDING_EXISTING: break;
    case FP_STANDING_PROPOSED: return ink (dark ? 0x47302f : 0xfbeae6);
    case FP_STANDING_REMOVED: return ink (dark ? 0x3d3725 : 0xfaf3da);
    }
  return ink (dark ? 0x2f3136 : 0xf5f1e6);
}

static FpInk
cut_fill (FpStanding standing, gboolean dark)
{
  switch (standing)
    {
    case FP_STANDING_EXISTING: break;
    case FP_STANDING_PROPOSED: return ink (dark ? 0x5e3533 : 0xf3cfc9);
    case FP_STANDING_REMOVED: return ink (dark ? 0x4d4423 : 0xf5e7b2);
    }
  return ink (dark ? 0x43464e : 0xd6d6dc);
}

FpInk
fp_fill_ink (FpFill fill, FpStanding standing, FpSurfaceLook look)
{
  const gboolean dark = look == FP_SURFACE_DARK;

  switch (fill)
    {
    case FP_FILL_NONE:
    case FP_FILL_PAPER: break;
    case FP_FILL_CUT: return cut_fill (standing, dark);
    case FP_FILL_TINT: return tint (standing, dark);
    case FP_FILL_INK: return ink_of_standing (standing, dark);
    }
  /* On paper that is printed, "paper" is the white of the sheet. */
  return ink (dark ? 0x212327 : 0xffffff);
}
