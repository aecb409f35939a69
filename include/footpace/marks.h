/* SPDX-License-Identifier: GPL-3.0-or-later */
/* marks.h - a drawing is a list of marks
 *
 * Marks are in millimetres of paper, y upward from the lower edge.  Each has
 * the role of its pen (ISO 128), the standing of what it shows (existing,
 * proposed, removed), the id of that thing, and for a dimension the parameter
 * that it shows.  One list is painted by cairo, written as SVG, and asked
 * what lies under the pointer.
 *
 * A drawing is built, then read; it is not thread-safe while it is built.
 */
#pragma once

#include "footpace/lettering.h"
#include "footpace/pens.h"
#include "footpace/pew-view.h"
#include "footpace/stretch.h"

G_BEGIN_DECLS

typedef enum { FP_MARK_LINE, FP_MARK_AREA, FP_MARK_CIRCLE, FP_MARK_TEXT, FP_MARK_PICTURE } FpMarkType;

typedef enum { FP_ALIGN_LEFT, FP_ALIGN_MIDDLE, FP_ALIGN_RIGHT } FpAlign;

typedef struct
{
  FpMarkType  type;
  FpPen       pen;
  FpStanding  standing;
  const char *item;       /* interned; NULL: belongs to the sheet            */
  const char *param;      /* interned; the parameter that a dimension shows  */
  guint       dimension;  /* marks of one dimension or level share a number from 1; 0: none */
  int         view;       /* FpViewId, -1: the sheet                         */
  /* LINE: open or closed run; AREA: closed outline, filled, with a border when `pen` is not FP_PEN_HATCH */
  guint       first, n;   /* into the drawing's points                       */
  gboolean    closed;
  FpFill      fill;
  double      hatch;      /* degrees; 0: none                                */
  /* CIRCLE, TEXT */
  FpPoint     at;
  double      radius;
  double      height;     /* of capitals, mm                                 */
  double      turn;       /* degrees counter-clockwise                       */
  FpAlign     align;
  const char *text;       /* owned by the drawing                            */
  /* PICTURE: its lower left and upper right corners are two of the points    */
  const FpPewView *picture; /* owned by the drawing                          */
} FpMark;

typedef struct _FpDrawing FpDrawing;

FpDrawing     *fp_drawing_new   (double width, double height); /* of the paper, mm */
FpDrawing     *fp_drawing_ref   (FpDrawing *self);
void           fp_drawing_unref (FpDrawing *self);
double         fp_drawing_width  (const FpDrawing *self);
double         fp_drawing_height (const FpDrawing *self);
const FpMark  *fp_drawing_marks  (const FpDrawing *self, guint *n); /* @n: (out) (optional) */
const FpPoint *fp_drawing_points (const FpDrawing *self);

/* The ink in which it is painted on paper and written; colour if nobody says.  An inset follows what it is set in. */
void        fp_drawing_set_ink (FpDrawing *self, FpInkChoice ink);
FpInkChoice fp_drawing_ink     (const FpDrawing *self);

/* What following marks belong to. */
void fp_drawing_set_item (FpDrawing *self, const char *item, FpStanding standing, int view);
void fp_drawing_set_dimension (FpDrawing *self, guint dimension, const char *param);
/* What the dimension of that number measures. */
void fp_drawing_set_stretch  (FpDrawing *self, guint dimension, const FpStretch *measured);
const FpStretch *fp_drawing_stretch (const FpDrawing *self, guint dimension); /* NULL: not known */

void fp_drawing_line   (FpDrawing *self, FpPen pen, FpPoint a, FpPoint b);
void fp_drawing_run    (FpDrawing *self, FpPen pen, const FpPoint *pt, guint n, gboolean closed);
void fp_drawing_area   (FpDrawing *self, FpPen pen, FpFill fill, double hatch, const FpPoint *pt, guint n);
void fp_drawing_circle (FpDrawing *self, FpPen pen, FpFill fill, FpPoint at, double radius);
/* @at is on the base line at the aligned end; turn in degrees. */
void fp_drawing_text   (FpDrawing *self, FpPoint at, double height, double turn, FpAlign align, const char *text);

/* What is seen from a place fills the frame, with a border about it; a reference is held. */
void fp_drawing_picture (FpDrawing *self, const FpPewView *picture, const FpBox *frame);

/* The uppermost mark of a thing or dimension within @tolerance mm of @at; -1. */
int fp_drawing_pick (const FpDrawing *self, FpPoint at, double tolerance);

/**
 * fp_drawing_set_inset:
 * @of: a drawing, of which a reference is held
 * @at: where its lower left corner comes to lie, paper mm
 * @clip: paper mm: what lies outside is not painted
 *
 * Another drawing's marks, true to scale, painted under this one's own.  For
 * surfaces that are painted; SVG is written of the whole sheet instead.
 */
void fp_drawing_set_inset (FpDrawing *self, FpDrawing *of, FpPoint at, const FpBox *clip);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpDrawing, fp_drawing_unref)

G_END_DECLS
