/* SPDX-License-Identifier: GPL-3.0-or-later */
/* small-drawing.h - a view without dimensions, to put several side by side at one scale */
#pragma once

#include "footpace/drawing.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/* World mm of a view that hold the sanctuary, with a little room round it: the wall behind it, the head room above. */
FpBox      fp_small_frame   (const FpScene *scene, FpViewId view);
/* @width, @height: of the paper, mm; @frame fills it and lies in its middle. */
FpDrawing *fp_small_drawing (FpProjection *projection, const FpBox *frame, double width, double height);

/* All alternatives of a project, small, and what is said of the people's level: made on any thread. */
typedef struct
{
  guint        n;
  FpDrawing  **elevation, **plan;  /* plan may be NULL: not asked for */
  char       **levels;             /* "people below\nby 480 mm" */
} FpOverview;

FpOverview *fp_overview_new  (const FpProject *project, gboolean plans, GCancellable *cancel); /* NULL: cancelled */
void        fp_overview_free (FpOverview *self);

G_END_DECLS
