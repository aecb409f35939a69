/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pens.c - line widths, line types and colours
 *
 * Widths: ISO 128-2:2020, series 0.13 0.18 0.25 0.35 0.5 0.7 mm; group narrow
 * 0.18, wide 0.35, extra wide 0.7, symbols 0.25 (ISO 128-23:1999, from memory).
 * Line types 01 continuous, 02 dashed, 04 long-dashed dotted, with dashes of
 * 12, 24 and 0.5 widths and gaps of 3 (ISO 128-2, from memory).
 *
 * Standing is told twice over.  By colour: proposed work red, removed yellow
 * (Continental practice for alterations, no source), or blue and orange.  And without: proposed
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
    case FP_PEN_SIGHT: return WIDE;
    case FP_PEN_BLIND: return SYMBOL;
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

/* One ink in all its parts: lines and cut faces by standing, and what has none. */
typedef struct
{
  guint    line[3];              /* existing, proposed, removed            */
  guint    hatch[3], cut[3], tint[3];
  guint    axis, guide, letter, paper;
  guint    people, things;         /* what hides something from somebody   */
} Palette;

/* The blue and the orange are Okabe and Ito's, "Color universal design" (2008), from memory: on white the
 * vermilion is darkened, until it has the contrast of text (WCAG 2.1, 1.4.3). */
static const Palette palettes[FP_N_SURFACE_LOOKS] = {
  [FP_SURFACE_PAPER] = { { 0x1d1f24, 0xb0201c, 0x8f6a00 }, { 0x74767f, 0xb0201c, 0x8f6a00 },
                         { 0xd6d6dc, 0xf3cfc9, 0xf5e7b2 }, { 0xf5f1e6, 0xfbeae6, 0xfaf3da },
                         0x5a5d66, 0x6f727b, 0x34363d, 0xffffff, 0x5fa8d8, 0xc2500a },
  [FP_SURFACE_DARK] = { { 0xeceae4, 0xff8274, 0xe2b53c }, { 0x7d828c, 0xff8274, 0xe2b53c },
                        { 0x43464e, 0x5e3533, 0x4d4423 }, { 0x2f3136, 0x47302f, 0x3d3725 },
                        0x9aa0ab, 0x8f959f, 0xc9ccd2, 0x212327, 0x56a8de, 0xf0913c },
  [FP_SURFACE_GREY] = { { 0x303030, 0x000000, 0x6a6a6a }, { 0x6a6a6a, 0x303030, 0x6a6a6a },
                        { 0xdcdcdc, 0xb4b4b4, 0xf4f4f4 }, { 0xf2f2f2, 0xe6e6e6, 0xfafafa },
                        0x505050, 0x6a6a6a, 0x202020, 0xffffff, 0xb0b0b0, 0x606060 },
  [FP_SURFACE_SAFE] = { { 0x1d1f24, 0x0062a8, 0xb04a00 }, { 0x74767f, 0x0062a8, 0xb04a00 },
                        { 0xd6d6d6, 0xbcd9ef, 0xffe0b8 }, { 0xf4f2ec, 0xe4f0f9, 0xfff2e0 },
                        0x5a5d66, 0x6f727b, 0x34363d, 0xffffff, 0x5fa8d8, 0xc2500a },
  [FP_SURFACE_SAFE_DARK] = { { 0xeceae4, 0x6cc0f2, 0xf0a92c }, { 0x7d828c, 0x6cc0f2, 0xf0a92c },
                             { 0x43464e, 0x27465c, 0x56401c }, { 0x2f3136, 0x243845, 0x41351f },
                             0x9aa0ab, 0x8f959f, 0xc9ccd2, 0x212327, 0x6cc0f2, 0xf0a92c },
};

static const Palette *
palette_of (FpSurfaceLook look)
{
  return &palettes[MIN ((guint) look, FP_N_SURFACE_LOOKS - 1)];
}

FpSurfaceLook
fp_surface_look (FpInkChoice choice, gboolean dark)
{
  if (choice == FP_INK_SAFE)
    return dark ? FP_SURFACE_SAFE_DARK : FP_SURFACE_SAFE;
  return dark ? FP_SURFACE_DARK : choice == FP_INK_GREY ? FP_SURFACE_GREY : FP_SURFACE_PAPER;
}

FpInk
fp_pen_ink (FpPen pen, FpStanding standing, FpSurfaceLook look)
{
  const Palette *p = palette_of (look);

  switch (pen)
    {
    case FP_PEN_CUT:
    case FP_PEN_OUTLINE:
    case FP_PEN_EDGE:
    case FP_PEN_HIDDEN: return ink (p->line[standing]);
    case FP_PEN_HATCH: return ink (p->hatch[standing]);
    case FP_PEN_AXIS: return ink (p->axis);
    case FP_PEN_GUIDE: return ink (p->guide);
    case FP_PEN_SIGHT:
    case FP_PEN_BLIND: return ink (p->things);
    case FP_PEN_DIMENSION:
    case FP_PEN_LETTER: return ink (p->letter);
    case FP_PEN_FRAME:
    case FP_N_PENS: break;
    }
  return ink (p->line[FP_STANDING_EXISTING]);
}

FpInk
fp_fill_ink (FpFill fill, FpStanding standing, FpSurfaceLook look)
{
  const Palette *p = palette_of (look);

  switch (fill)
    {
    case FP_FILL_NONE:
    case FP_FILL_PAPER:
    case FP_N_FILLS: break;
    case FP_FILL_CUT: return ink (p->cut[standing]);
    case FP_FILL_TINT: return ink (p->tint[standing]);
    case FP_FILL_INK: return ink (p->line[standing]);
    case FP_FILL_PEOPLE: return ink (p->people);
    case FP_FILL_THINGS: return ink (p->things);
    }
  /* On paper that is printed, "paper" is the white of the sheet. */
  return ink (p->paper);
}
