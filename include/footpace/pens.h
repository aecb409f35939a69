/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pens.h - what lines and fills look like: ISO 128
 *
 * Widths and dashes in millimetres of paper; colours from 0 to 1.  Every surface asks here, so that all agree.
 */
#pragma once

#include "footpace/page.h"
#include "footpace/project.h"

G_BEGIN_DECLS

typedef enum
{
  FP_PEN_CUT,       /* outlines of cut parts: extra wide                     */
  FP_PEN_OUTLINE,   /* silhouettes, visible edges: wide                      */
  FP_PEN_EDGE,      /* edges within a thing: narrow                          */
  FP_PEN_HIDDEN,    /* dashed narrow: hidden, or above the cut               */
  FP_PEN_AXIS,      /* long dash, dot                                        */
  FP_PEN_HATCH,
  FP_PEN_DIMENSION, /* dimension and extension lines, leaders, levels        */
  FP_PEN_LETTER,
  FP_PEN_FRAME,     /* frame of the sheet: 0.7                               */
  FP_PEN_GUIDE,     /* projector lines, mitre line: fine dots                */
  FP_PEN_SIGHT,     /* lines of sight                                        */
  FP_PEN_BLIND,     /* outline and hatch of floor from which something is not seen */
  FP_N_PENS
} FpPen;

typedef enum
{
  FP_FILL_NONE,
  FP_FILL_PAPER,
  FP_FILL_CUT,
  FP_FILL_TINT,
  FP_FILL_INK,
  FP_FILL_PEOPLE,   /* hidden by other people                                */
  FP_FILL_THINGS,   /* hidden by building, furnishings or ministers          */
  FP_N_FILLS
} FpFill;

/* Line width in mm, dash pattern (mm, returns its length 0..6) and colour of a pen. */
double fp_pen_width (FpPen pen);
guint  fp_pen_dashes (FpPen pen, FpStanding standing, double dashes[6]);
/* Line width in mm as drawn: proposed work is twice as heavy (ISO 128), so that it is told without colour.
 * (Removed work is told by short dashes with crosses, which the surfaces add.) */
double fp_pen_stroke (FpPen pen, FpStanding standing);
typedef struct { double r, g, b; } FpInk;

typedef enum
{
  FP_SURFACE_PAPER,     /* in the ink that the drawing was given             */
  FP_SURFACE_DARK,      /* light lines on a dark ground, for the screen      */
  FP_SURFACE_GREY,
  FP_SURFACE_SAFE,
  FP_SURFACE_SAFE_DARK,
  FP_N_SURFACE_LOOKS
} FpSurfaceLook;
FpSurfaceLook fp_surface_look (FpInkChoice ink, gboolean dark); /* grey has no dark ground: colour then */
FpInk  fp_pen_ink (FpPen pen, FpStanding standing, FpSurfaceLook look);
FpInk  fp_fill_ink (FpFill fill, FpStanding standing, FpSurfaceLook look);

G_END_DECLS
