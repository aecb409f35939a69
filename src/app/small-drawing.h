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

/* What the last overview was drawn of, from which the next takes over what looks the same; for one thread at a time. */
typedef struct _FpOverviewMemory FpOverviewMemory;

FpOverviewMemory *fp_overview_memory_new  (void);
void              fp_overview_memory_free (FpOverviewMemory *self); /* NULL: nothing */

/* @memory may be NULL.  Returns NULL when cancelled. */
FpOverview *fp_overview_new  (const FpProject *project, gboolean plans, FpOverviewMemory *memory, GCancellable *cancel);
void        fp_overview_free (FpOverview *self);

G_END_DECLS
