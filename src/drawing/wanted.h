/* SPDX-License-Identifier: GPL-3.0-or-later */
/* wanted.h - the measures that a view should show
 *
 * Gathered from the kinds of the things that the view shows, and from the
 * scene: what lies between things.  Where each is put is tiers.h's matter.
 */
#pragma once

#include "footpace/drawing.h"

G_BEGIN_DECLS

typedef enum { FP_SIDE_BELOW, FP_SIDE_ABOVE, FP_SIDE_LEFT, FP_SIDE_RIGHT, FP_N_SIDES } FpSide;

/* Where its extension lines begin. */
typedef enum
{
  FP_EXTENSION_FULL,    /* at what is measured                              */
  FP_EXTENSION_OUTLINE, /* at the outline of the view                       */
  FP_EXTENSION_TIER,    /* just before the dimension line                   */
} FpExtension;

/* Where the figure stands on its dimension line. */
typedef enum { FP_FIGURE_WITHIN, FP_FIGURE_AFTER, FP_FIGURE_BEFORE } FpFigure;

typedef struct
{
  FpPoint     a, b;       /* what it measures between, paper mm             */
  gboolean    upright;    /* measured along v (up the paper)                */
  double      lo, hi;     /* paper mm along the measured direction          */
  double      length;     /* world mm                                       */
  guint       rank;       /* 0 first                                        */
  guint       axis;       /* of the church: 0 x, 1 y, 2 z                   */
  double      from, to;   /* along that axis, world mm, from <= to          */
  const char *item;       /* interned; what a click on it edits             */
  const char *param;      /* interned; NULL: it follows from others         */
  char        text[64];
  double      width;      /* of the text, paper mm                          */

  /* Where it was put: */
  gboolean    placed;
  FpSide      side;
  guint       tier;       /* 0 nearest to the outline                       */
  FpFigure    figure;
  FpExtension extension;
} FpWanted;

/* Height of the figures, mm: ISO 3098 (capitals of at least 2.5 for reproduction). */
#define FP_FIGURE_HEIGHT 2.5

/* Measures that other views of one board show already; (element-type FpShown). */
typedef struct
{
  guint       axis;       /* of the church: 0 x, 1 y, 2 z                   */
  double      lo, hi;     /* world mm                                       */
  const char *item, *param;
} FpShown;

/**
 * fp_wanted_gather:
 * @shows: (array): for each placed thing, whether the view shows it
 * @outline: paper mm; what does not lie beside it, or in the clip of the layout, is not wanted
 * @rank_max: measures of a greater rank are not wanted
 * @shown: (nullable): what other views of the board show is not wanted again, and all that reads true
 *   here is wanted alike; %NULL for a view alone, where what its kind wants in another view comes after the rest
 *
 * Returns: (transfer full): (element-type FpWanted), by rank; equal measures once
 */
GArray *fp_wanted_gather (const FpScene *scene, const FpViewLayout *layout, FpViewId view, const gboolean *shows,
                          const FpBox *outline, guint rank_max, const GArray *shown);

/* Adds those that were placed. */
void    fp_wanted_note   (const GArray *wanted, GArray *shown);

/* A measure between things, for which no kind can speak. */
typedef struct
{
  FpDimSpec   spec;       /* church coordinates                             */
  const char *item;       /* interned                                       */
} FpBetween;

/* (element-type FpBetween): rail to lowest step, altar to lowest riser, room behind the altar,
 * heights over the floor, width and depth of the sanctuary. */
GArray *fp_between_things (const FpScene *scene);

G_END_DECLS
