/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sheet.h - pages with frame, title block and scale (ISO 5457, ISO 7200)
 *
 * Paper mm, y upward from the lower left corner.
 */
#pragma once

#include "footpace/evidence.h"
#include "footpace/room-to-move.h"
#include "footpace/view.h"

G_BEGIN_DECLS

typedef struct
{
  FpSheetKind  kind;
  FpPaper      paper;
  double       width, height; /* mm: of a sheet of another size; 0: of `paper` */
  const char  *paper_name;   /* of that other size: "2A0"                    */
  const char  *joined_from;  /* of the pages on which it is printed in pieces: "A3"; NULL: in one */
  gboolean     landscape;
  double       scale;        /* 0: the largest of ISO 5455 that fits         */
  gboolean     whole;        /* the whole church; otherwise the sanctuary    */
  FpCut        cut[FP_N_VIEWS]; /* where sections are cut, across under FP_VIEW_ELEVATION; plans show those that are placed */
  FpHidden     hidden;       /* what is left out                             */
  FpInkChoice  ink;
  const char  *date;         /* ISO 8601 date of issue; NULL: left empty     */
  const char  *number;       /* identification number; NULL: from the title  */
  /* Findings for the pastor, set beside or below the drawing; NULL-terminated; may be NULL.  The lines of one are parted
   * by '\n', its heading first, the measured value next; the rest is left out where there is no room. */
  const char *const *findings;
  /* Ways that are drawn on a plan, as those of the findings that it lists; NULL-terminated; may be NULL. */
  const FpWay *const *ways;
  const FpEvidence *measured; /* likewise what was measured, on any view; may be NULL */
  guint        page, pages;  /* sheet number and number of sheets; 0: one of one */
} FpSheetSpec;

/**
 * fp_sheet_new:
 * @scale: (out) (optional): the scale that it was drawn to
 *
 * Returns: (transfer full): the page; %FP_ERROR_RANGE when it does not fit the paper at spec->scale, saying which would
 */
FpDrawing *fp_sheet_new (const FpScene *scene, const FpSheetSpec *spec, double *scale, GError **error);

/**
 * fp_sheet_pages:
 *
 * As fp_sheet_new(), and where not all findings find room beside the drawing, as many further sheets of findings as
 * they take.
 *
 * Returns: (transfer full) (element-type FpDrawing): the pages, the drawing first
 */
GPtrArray *fp_sheet_pages (const FpScene *scene, const FpSheetSpec *spec, double *scale, GError **error);

/* The scales of ISO 5455 (from memory), the largest first, carried on so that every church fits some paper. */
const double *fp_sheet_scales (guint *n);

/* ISO 5455: 1, 2 or 5 times a power of ten. */
gboolean fp_scale_is_standard (double scale);

/* Frame, title block, scale bar and cautions alone: for sheets composed elsewhere (compare).
 * @content: (out): the room left, paper mm. */
FpDrawing *fp_sheet_blank (const FpScene *scene, const FpSheetSpec *spec, const char *title, double scale, FpBox *content);

/* The same of one alternative, whose name it bears. @code: two letters or more, for its number: "levels" */
FpDrawing *fp_sheet_blank_of (const FpScene *scene, const FpSheetSpec *spec, const char *title, const char *code,
                              double scale, FpBox *content);

/* The picture alone, so wide, for a page of pictures. */
FpDrawing *fp_pew_drawing_new (const FpPeople *people, const FpPewSpec *view, double width);

/* One view from the pew with its caption, as large as the sheet allows. */
FpDrawing *fp_pew_sheet_new (const FpSight *sight, const FpPewSpec *view, const FpSheetSpec *spec);

/* Views from in front, the middle, the back, the side, and so on, a strip for each of the alternatives.
 * Returns: (transfer full) (element-type FpDrawing): as many pages as that takes */
GPtrArray *fp_pew_strip_sheets (FpSight *const *sight, guint n, const FpSheetSpec *spec);

/* A ruler, its length in words under it: 100 mm, or 4 in; from @at to the right. Returns its length, mm. */
double fp_drawing_add_ruler (FpDrawing *self, FpPoint at, FpUnits units);
/* The same from @at upward, its words on its left; where @room mm are too little for it, half as long, or none. */
double fp_drawing_add_ruler_upright (FpDrawing *self, FpPoint at, double room, FpUnits units);

G_END_DECLS
