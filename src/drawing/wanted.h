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

/* Where the figure stands on its dimension line. */
typedef enum { FP_FIGURE_WITHIN, FP_FIGURE_AFTER, FP_FIGURE_BEFORE } FpFigure;

typedef struct
{
  FpPoint     a, b;       /* what it measures between, paper mm             */
  gboolean    upright;    /* measured along v (up the paper)                */
  double      lo, hi;     /* paper mm along the measured direction          */
  double      length;     /* world mm                                       */
  guint       rank;       /* 0 first                                        */
  const char *item;       /* interned; what a click on it edits             */
  const char *param;      /* interned; NULL: it follows from others         */
  char        text[64];
  double      width;      /* of the text, paper mm                          */

  /* Where it was put: */
  gboolean    placed;
  FpSide      side;
  guint       tier;       /* 0 nearest to the outline                       */
  FpFigure    figure;
  gboolean    short_extension; /* begins at the outline of the view, not at the feature */
} FpWanted;

/* Height of the figures, mm: ISO 3098 (capitals of at least 2.5 for reproduction). */
#define FP_FIGURE_HEIGHT 2.5

/**
 * fp_wanted_gather:
 * @shows: (array): for each placed thing, whether the view shows it
 * @clip: view coordinates; measures that do not lie in it are not wanted; empty: all are
 * @own_only: the view is one of three on a board: each measure in the one view that its kind wants it
 *   in; otherwise all that read true in this view, those of other views after its own
 * @rank_max: measures of a greater rank are not wanted
 *
 * Returns: (transfer full): (element-type FpWanted), by rank; equal measures once
 */
GArray *fp_wanted_gather (const FpScene *scene, const FpViewLayout *layout, FpViewId view, const gboolean *shows,
                          const FpBox *clip, gboolean own_only, guint rank_max);

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
