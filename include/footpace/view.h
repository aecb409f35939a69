/* SPDX-License-Identifier: GPL-3.0-or-later */
/* view.h - a projection on paper, to scale, with its dimensions and names */
#pragma once

#include "footpace/marks.h"
#include "footpace/projection.h"

G_BEGIN_DECLS

/* How a view lies on the paper: paper = origin + view / scale. */
typedef struct
{
  FpPoint  origin;      /* where view coordinates (0, 0) lie on the paper    */
  double   scale;       /* 50 for 1:50                                       */
  FpBox    clip;        /* view coordinates: what lies outside is not drawn; empty: all of it */
  gboolean dimensions, levels, labels; /* labels: title and names                     */
  gboolean no_seat_names; /* where something else is to be drawn over seats and places of the people */
  FpUnits  units;
  /* Where sections are cut: a plan shows the cutting lines of those that are placed. */
  FpCut    section[FP_N_VIEWS];
  FpHidden hidden;
} FpViewLayout;

/* A point of the church as that view shows it, turned or not; view coordinates. */
FpPoint fp_layout_point (const FpViewLayout *layout, FpViewId view, FpVec3 p);

static inline FpPoint
fp_view_to_paper (const FpViewLayout *layout, FpPoint v)
{
  return (FpPoint) { layout->origin.x + v.x / layout->scale, layout->origin.y + v.y / layout->scale };
}

static inline FpPoint
fp_view_from_paper (const FpViewLayout *layout, FpPoint p)
{
  return (FpPoint) { (p.x - layout->origin.x) * layout->scale, (p.y - layout->origin.y) * layout->scale };
}

/**
 * fp_drawing_add_view:
 *
 * The view with its dimensions and lettering, which never cross each other:
 * what finds no room is left out, least rank first.
 *
 * Returns: how many dimensions found no room
 */
guint fp_drawing_add_view (FpDrawing *self, FpProjection *projection, const FpViewLayout *layout);

/* Room in paper mm that dimensions and titles need around a view: left, below, right, above. */
typedef struct { double left, below, right, above; } FpMargins;
FpMargins fp_view_margins (FpProjection *projection, const FpViewLayout *layout);

/* What of a view is drawn where there is little room: the sanctuary without the upper parts of high walls; view coordinates. */
FpBox fp_view_sanctuary (const FpScene *scene, FpViewId view);
/* The same where there is less: the view may end within a wall. */
FpBox fp_view_sanctuary_close (const FpScene *scene, FpViewId view);

G_END_DECLS
