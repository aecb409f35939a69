/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sheet-parts.h - what stands on a sheet beside its views; paper mm */
#pragma once

#include "footpace/sheet.h"

G_BEGIN_DECLS

/* @north: as in FpBrief; radius of the circle in mm */
void   fp_draw_north_point (FpDrawing *drawing, FpPoint middle, double radius, double north);

/* A bar of numbered divisions with the words that belong to it: @at is the lower left corner of the bar.
 * Returns: how wide it came out; never wider than @most */
double fp_draw_scale_bar (FpDrawing *drawing, FpPoint at, double most, double scale, FpUnits units);
#define FP_SCALE_BAR_HEIGHT 10.5 /* with its figures and words, from the foot of the words */

/* First angle (ISO 5456-2, from memory), @height mm high; returns its width. */
double fp_draw_projection_symbol (FpDrawing *drawing, FpPoint middle, double height);

/* Lines of text from the top left corner down, each @spacing apart; returns how many were set. */
guint  fp_draw_lines (FpDrawing *drawing, FpPoint top_left, double height, double spacing, GPtrArray *lines,
                      guint most);

/* Samples of existing, proposed and removed work, where the scene has more than existing: @at is the left
 * end of the base line. Returns: whether anything was drawn */
gboolean fp_draw_legend (FpDrawing *drawing, FpPoint at, double most, const FpScene *scene, FpHidden hidden);

/* PRELIMINARY, NOT FOR CONSTRUCTION, and who must confirm what; from the top of @box down, never beyond it.
 * Returns: the height that it took */
double fp_draw_cautions (FpDrawing *drawing, const FpBox *box, FpUnits units);

/* What must be told and found no room (must.h), from the top of @box down, on a patch of paper.
 * @drawing: (nullable): %NULL only to measure. Returns: the height that it takes; 0 when there is nothing to tell */
double fp_draw_untold (FpDrawing *drawing, const FpBox *box, const GPtrArray *untold);

/* How fully a finding is told: with all that its lines say; each of them in one line; its heading and measure alone. */
typedef enum { FP_TOLD_FULLY, FP_TOLD_SHORTENED, FP_TOLD_IN_BRIEF } FpTold;

typedef struct
{
  const char *const *findings;  /* NULL-terminated; the lines of one are parted by '\n', its heading first       */
  guint              first;     /* the ones before stand on sheets before                                         */
  FpTold             told;
  guint              next;      /* number of the sheet on which the rest stands; 0: it stands in the report alone */
} FpFindingsList;

/* The findings, in columns, never beyond @box: what does not fit is counted in the last line.
 * @drawing: (nullable): %NULL only to count. Returns: how many fit */
guint  fp_draw_findings (FpDrawing *drawing, const FpBox *box, const FpFindingsList *list);

/* The fullest way in which all of them fit, or the briefest. */
FpTold fp_findings_told (const FpBox *box, const char *const *findings);

/* The title block, its lower right corner at @corner; see title-block.c. */
#define FP_TITLE_BLOCK_HEIGHT 40.0
#define FP_TITLE_BLOCK_WIDTH  180.0 /* at most: ISO 7200, from memory */

typedef struct
{
  const char *owner, *title, *supplementary, *creator, *document_type, *number, *date, *sheet, *scale, *paper;
  const char *left_out; /* "Not shown: …", under the supplementary title; NULL: everything is shown */
} FpTitleBlock;

void   fp_draw_title_block (FpDrawing *drawing, FpPoint corner, double width, const FpTitleBlock *fields);

/* fp_sheet_pages() with its further sheets upright on that paper; NULL: on the paper of the first. */
GPtrArray *fp_sheet_pages_further_on (const FpScene *scene, const FpSheetSpec *spec, const FpPaper *paper, double *scale,
                                      GError **error);

G_END_DECLS
