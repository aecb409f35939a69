/* SPDX-License-Identifier: GPL-3.0-or-later */
/* laying-private.h - the parts of the sheets of the laying
 *
 * Private to src/review.
 */
#pragma once

#include "footpace/laying.h"
#include "footpace/stonework.h"

G_BEGIN_DECLS

/* Paper mm; letters after ISO 3098. */
#define FP_LAYING_LETTERS 2.5
#define FP_LAYING_SMALL   1.8
#define FP_LAYING_LINE    4.2

typedef struct
{
  const FpPlaced *placed;
  FpStonework    *stonework;
  guint           marked;   /* slabs of things before it: its first has the mark after them */
} FpLaid;

typedef enum { FP_PANEL_PLAN, FP_PANEL_FRONT, FP_PANEL_SECTION } FpPanelType;

/* One drawing of a thing: what is laid at one level, its front, or a section. */
typedef struct
{
  FpPanelType   type;
  const FpLaid *laid;
  guint         first, n;       /* of its slabs                                 */
  guint         under, n_under; /* those beneath, of a plan; n_under 0: none    */
  FpBox         box;            /* mm, in its own coordinates: x and y, x and z, y and z */
  double        scale;          /* 0: that of the sheet                         */
  char         *title;
} FpPanel;

/* What a course is called: "risers of step 1". */
char  *fp_laying_lift_name (const FpCourse *course);
/* "S12" */
char  *fp_laying_mark      (const FpLaid *laid, const FpSlab *slab);

/* (element-type FpPanel): in the order in which it is laid, then front and section; added to @out. */
void   fp_laying_add_panels (const FpScene *scene, const FpLaid *laid, FpUnits units, GArray *out);

/* Paper mm that it takes, title and dimensions with it. */
void   fp_panel_size (const FpPanel *self, double scale, double *width, double *height);
/* @at: its upper left corner. */
void   fp_panel_draw (const FpPanel *self, FpDrawing *drawing, FpPoint at, double scale, const FpWorks *works, FpUnits units);

/* What is cut through: the slabs of the lowest steps, where they are, within @box (y and z). */
void   fp_laying_section (const FpPanel *self, FpDrawing *drawing, FpPoint origin, double scale, const FpWorks *works, FpUnits units);

G_END_DECLS
