/* SPDX-License-Identifier: GPL-3.0-or-later */
/* annotation.h - dimensions, levels and lettering of one view, set out before anything is drawn */
#pragma once

#include "falls.h"
#include "level-marks.h"
#include "labels.h"
#include "memory.h"
#include "section-line.h"
#include "set-marks.h"
#include "tiers.h"
#include "drawing-private.h"

G_BEGIN_DECLS

/* What the view's surroundings allow. */
typedef struct
{
  FpBox    outline;            /* view coordinates: what dimensions stay out of; empty: all that is shown */
  FpBox    seen;               /* paper mm: nothing outside is drawn; empty: everything is              */
  guint    tiers[FP_N_SIDES];  /* most tiers on a side                                                  */
  FpSide   levels_on;          /* left or right first                                                   */
  gboolean levels_only_there;  /* and nowhere else                                                      */
  gboolean steady;             /* nothing may jump while the scale changes a little                     */
  FpViewMemory *memory;        /* (nullable): where names and dimensions stood, and stand now            */
  gboolean anew;               /* wherever they stood                                                    */
  GArray  *drawn;              /* (nullable), borrowed: FpProjectedLine: what is drawn, of the same view set out at this scale */
  GArray  *shown;              /* (nullable): FpShown; see fp_wanted_gather(); what is placed is added  */
  gboolean names_outside;      /* left and right of the view too                                        */
  const char *const *chosen;   /* (nullable), borrowed: ids, ended by NULL; see fp_wanted_gather()       */
  gboolean has_title_at;
  gboolean has_no_title;
  gboolean terse;              /* the title does not say where a section is cut                         */
  FpPoint  title_at;           /* left end of the base line; otherwise above the view                   */
} FpSurroundings;

/* A view that stands alone. */
extern const FpSurroundings FP_SURROUNDINGS_ALONE;
/* The same with less room for dimensions, where a larger scale is worth more. */
extern const FpSurroundings FP_SURROUNDINGS_LEAN;
extern const FpSurroundings FP_SURROUNDINGS_LEANEST;

typedef struct
{
  FpViewId       view;
  FpViewLayout   layout;
  FpSurroundings around;
  FpTierSides    sides;
  gboolean      *shows;    /* for each placed thing, whether the view shows it */
  GArray        *drawn;    /* FpProjectedLine: what is drawn at the scale at which all was set out */
  GArray        *wanted;   /* FpWanted    */
  GArray        *levels;   /* FpLevelMark */
  GArray        *labels;   /* FpLabel     */
  GArray        *falls;    /* FpFall      */
  GArray        *set;      /* FpSetMark   */
  FpCover        *room;
  char          *title, *scale;
  FpPoint        title_at;
  FpMargins      margins;
  guint          left_out;
  guint          nameless; /* things that found no room for their name */
  GPtrArray     *untold;   /* utf8: what must be told and is not (must.h); on a board, nor on it so far */
} FpAnnotation;

FpAnnotation *fp_annotation_new  (FpProjection *projection, const FpViewLayout *layout, const FpSurroundings *around);
void          fp_annotation_free (FpAnnotation *self);

/* All but outline and title grows about (0, 0), with the lettering as it is; all is moved (annotation-move.c). */
void          fp_annotation_grow (FpAnnotation *self, double times);
void          fp_annotation_move (FpAnnotation *self, FpPoint by);

/* @number: of the last dimension in the drawing; counted on */
void          fp_annotation_draw (const FpAnnotation *self, FpDrawing *drawing, guint *number);

/* Beside the title, @gap mm after its scale: the middle of the line. */
FpPoint       fp_annotation_after_title (const FpAnnotation *self, double gap);

/* The highest number of a dimension that a drawing has. */
guint         fp_drawing_last_dimension (const FpDrawing *drawing);

/* Lines, cut faces and axes of a view (view.c). */
void          fp_view_draw_lines (FpDrawing *drawing, FpProjection *projection, const FpAnnotation *annotation);

/* Where a clip ends the view before the church ends: continuous narrow lines with zigzags (ISO 128-2, from memory). */
void          fp_view_draw_breaks (FpDrawing *drawing, FpProjection *projection, const FpViewLayout *layout);

/* The lines without their zigzags, which stand out to both sides by FP_BREAK_HALF mm; returns how many. */
#define FP_BREAK_HALF 2.4
guint         fp_view_breaks (FpProjection *projection, const FpViewLayout *layout, FpSegment out[4]);

/* Clips a segment to a box; FALSE when nothing is left. An empty box clips nothing. */
gboolean      fp_clip_segment (FpPoint *a, FpPoint *b, const FpBox *box);

char         *fp_view_title (FpViewId view, const FpCut cuts[FP_N_VIEWS]); /* "ELEVATION, FACING EAST", "SECTION A–A" */

/* mm, with the scale, and the north point beside that of a plan. */
double        fp_view_title_width (FpViewId view, const FpCut cuts[FP_N_VIEWS], double scale);

/* "1:50", "1:33", "1:12.5" */
char         *fp_scale_text (double scale);

/* The scale; of a section that stands @alone also where it is cut; the caller's. */
char         *fp_view_scale_words (const FpViewLayout *layout, FpViewId view, gboolean alone);

/* What a view shows, within its clip; paper mm. */
FpBox         fp_view_outline (FpProjection *projection, const FpViewLayout *layout);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpAnnotation, fp_annotation_free)

G_END_DECLS
