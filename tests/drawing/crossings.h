/* SPDX-License-Identifier: GPL-3.0-or-later */
/* crossings.h - proves on the marks themselves that dimensions and texts keep out of each other's way
 *
 * Written without the code that sets them out, from what the marks say.
 */
#pragma once

#include "footpace/drawing.h"

G_BEGIN_DECLS

/* Fails the test, naming the marks, when a dimension line, extension line, figure, level or label of
 * @view (-1: of any) crosses that of another. */
void crossings_assert_none (const FpDrawing *drawing, int view, const char *what);

/* Fails when a name on the plan lies over a line of what is drawn. */
void crossings_assert_names_clear (const FpDrawing *drawing, const char *what);

/* Fails when a figure lies over a line of what is drawn and no patch of paper between them. */
void crossings_assert_figures_clear (const FpDrawing *drawing, const char *what);

/* The rectangle of a text from its base line to the top of its capitals. */
FpBox crossings_text_box (const FpMark *mark);

/* One dimension, as its marks tell it. */
typedef struct
{
  guint       number;
  int         view;
  const char *item, *param, *text;
  FpPoint     a, b;       /* the middles of its two strokes                   */
  gboolean    upright, oblique;
  double      lo, hi;     /* between its strokes, paper mm                    */
  double      at;         /* of the dimension line, across                    */
} ReadDimension;

/* (element-type ReadDimension): those with two oblique strokes; levels have none. */
GArray *crossings_read_dimensions (const FpDrawing *drawing);

G_END_DECLS
