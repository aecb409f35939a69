/* SPDX-License-Identifier: GPL-3.0-or-later */
/* wanted.h - the measures that a view should show
 *
 * Gathered from the kinds of the things that the view shows, and from the
 * scene: what lies between things.  Where each is put is tiers.h's matter.
 */
#pragma once

#include "footpace/view.h"

G_BEGIN_DECLS

typedef enum { FP_SIDE_BELOW, FP_SIDE_ABOVE, FP_SIDE_LEFT, FP_SIDE_RIGHT, FP_N_SIDES } FpSide;

/* Where the figure stands on its dimension line. */
typedef enum { FP_FIGURE_WITHIN, FP_FIGURE_AFTER, FP_FIGURE_BEFORE } FpFigure;

typedef enum
{
  FP_PLACED_NOT,
  FP_PLACED_BESIDE, /* in a tier beside the view                            */
  FP_PLACED_NEAR,   /* within the view, near what it measures               */
} FpPlacing;

typedef struct
{
  FpPoint     a, b;       /* what it measures between, paper mm             */
  gboolean    upright;    /* measured along v (up the paper)                */
  gboolean    oblique;    /* measured along neither h nor v                 */
  gboolean    overall;    /* of the whole building: beside the view or not at all */
  FpBox       own;        /* paper mm along the measured direction (x) and to its left (y), from a: where the
                             thing lies; empty where nothing lies about it  */
  double      slide[2];   /* paper mm to its left, from a, through which the same is measured; equal: nowhere else */
  double      lo, hi;     /* paper mm along the measured direction          */
  double      length;     /* world mm                                       */
  guint       rank;       /* 0 first                                        */
  guint       axis;       /* of the church: 0 x, 1 y, 2 z, 3 none of them   */
  double      from, to;   /* along that axis, world mm, from <= to          */
  const char *item;       /* interned; what a click on it edits             */
  const char *param;      /* interned; NULL: it follows from others         */
  const char *must;       /* static; what it is called where it must be told (must.h); NULL: it may be left out */
  gboolean    of_rows;    /* of the seats themselves: it may stand among them */
  gboolean    is_whereabouts; /* from where its thing is set out: extension lines begin where `span` ends */
  double      span[2][2]; /* paper mm to its left, from a: what is measured goes so far at a and at b */
  gboolean    is_chosen;  /* likewise: its thing is chosen, and it is told wherever it can be */
  gboolean    insists;    /* no other view of the board can tell it better  */
  gboolean    is_tiny;    /* too short on paper to be dimensioned: it is told in words alone */
  FpStretch  measured;   /* what typing over it changes                    */
  char        text[64];
  double      width;      /* of the text, paper mm                          */

  /* Where it was put: */
  FpPlacing   placed;
  FpFigure    figure;
  FpSide      side;       /* FP_PLACED_BESIDE                               */
  guint       tier;       /* likewise: 0 nearest to the outline             */
  double      base;       /* FP_PLACED_NEAR: what is measured is taken so far to the left of a-b, paper mm */
  double      offset;     /* likewise: of the dimension line from there; 0: it lies between what it measures */
  double      border[2][2]; /* likewise: how far the extension line of each end begins beyond it, since its thing goes on
                               beside it; to the right and to the left       */
  double      grown;      /* how many times larger than it was set out; 0: once */
  gboolean    has_ground; /* its figure interrupts the axis                 */
} FpWanted;

/* Direction of the measure as its figure is read (from below or from the right), of length 1. */
FpPoint fp_wanted_along (const FpWanted *self);

/* Height of the figures, mm: ISO 3098 (capitals of at least 2.5 for reproduction). */
#define FP_FIGURE_HEIGHT 2.5

/* Measures that other views of one board show already; (element-type FpShown). */
typedef struct
{
  guint       axis;       /* of the church: 0 x, 1 y, 2 z                   */
  double      lo, hi;     /* world mm                                       */
  const char *item, *param;
  gboolean    is_whereabouts;
} FpShown;

/**
 * fp_wanted_gather:
 * @shows: (array): for each placed thing, whether the view shows it
 * @outline: paper mm; what does not lie beside it, or in the clip of the layout, is not wanted
 * @rank_max: measures of a greater rank are not wanted
 * @shown: (nullable): what other views of the board show is not wanted again, and all that reads true
 *   here is wanted alike; %NULL for a view alone, where what its kind wants in another view comes after the rest
 * @chosen: (nullable): ids, ended by %NULL, of things whose whereabouts are wanted whatever their rank
 *
 * Returns: (transfer full): (element-type FpWanted), what must be told first, then by rank; equal measures once
 */
GArray *fp_wanted_gather (const FpScene *scene, const FpViewLayout *layout, FpViewId view, const gboolean *shows,
                          const FpBox *outline, guint rank_max, const GArray *shown, const char *const *chosen);

/* Adds those that were placed. */
void    fp_wanted_note   (const GArray *wanted, GArray *shown);

/* Not placed yet, and long enough to be. */
gboolean fp_wanted_is_open (const FpWanted *self);

/* Of those that must be told, what was not placed: "mensa length 2700".  (element-type utf8); what stands in it
 * already is not added again. @shown: (nullable): what stands there is told elsewhere */
void    fp_wanted_untold (const GArray *wanted, const GArray *shown, GPtrArray *untold);

/* A measure between things, for which no kind can speak. */
typedef struct
{
  FpDimSpec   spec;       /* church coordinates                             */
  const char *item;       /* interned                                       */
  const char *must;       /* static; see FpWanted                           */
  FpStretchSort sort;
  const char *of, *other; /* interned; of what typing over it changes       */
  gboolean    overall;    /* of the whole building: along x or y from one to the other, which may lie across from each
                             other                                          */
  double      slide[2];   /* the same is measured from here to there across the plan (x of a measure along y, y of
                             one along x); equal: only at its own place     */
  guint       not_in;     /* 1 << FpViewId: views that do not show between what it lies */
  gboolean    is_whereabouts; /* how far its item is from where it is set out; in the views of its spec alone */
  double      span[2][2]; /* likewise: across the plan, how far what is measured goes at a and at b */
} FpBetween;

/* (element-type FpBetween): the whole building, rail to lowest step, altar to lowest riser, room behind the altar,
 * heights over the floor, width and depth of the sanctuary, and where a section does not show these those of the room
 * that it cuts; from where what stands on the floor is set out.  @cuts: where the views are cut */
GArray *fp_between_things (const FpScene *scene, const FpCut cuts[FP_N_VIEWS]);

G_END_DECLS
