/* SPDX-License-Identifier: GPL-3.0-or-later */
/* comparison-arrange.h - what of a comparison stands on which page, and how large
 *
 * The largest scales of ISO 5455 at which it fits, each page at its own; of
 * arrangements that are as large, the one with fewer pages.  But what can be
 * read well is not spread over two pages to become larger still.
 * Paper mm; scales as 50 for 1:50.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  FP_ARRANGED_ABOVE,   /* drawings above their table, on one page       */
  FP_ARRANGED_BESIDE,  /* drawings beside their table, on one page      */
  FP_ARRANGED_APART,   /* all drawings on one page, the table on another */
  FP_ARRANGED_BY_VIEW, /* elevations above the table, plans on another page */
  FP_N_ARRANGEMENTS
} FpArrangementId;

typedef struct
{
  double width, height;           /* that the content of a page may have    */
  guint  columns;                 /* on a page, from 1                      */
  double table;                   /* height of the table with its notes     */
  double wide;                    /* world mm: elevation or plan, whichever is wider */
  double elevation, plan;         /* world mm: how high they are drawn      */
} FpArrangementRoom;

typedef struct
{
  FpArrangementId id;
  double          elevation, plan; /* scales                                */
} FpArrangement;

/* Room for the names of rows and of views, and for the narrowest column. */
#define FP_COMPARISON_LABEL  50.0
#define FP_COMPARISON_ASIDE  18.0
#define FP_COMPARISON_LEAST  58.0
#define FP_COMPARISON_MOST  180.0

/* Above every column; about a drawing; between drawings and a table beside them. */
#define FP_COMPARISON_HEAD  14.4
#define FP_COMPARISON_GAP    4.0
#define FP_COMPARISON_APART  8.0

/* How wide the table is where it stands beside the drawings. */
double   fp_arrangement_table_width (guint columns);

guint    fp_arrangement_pages (FpArrangementId id);

/* By its smallest drawings, then by the number of pages, then by the other drawings. */
gboolean fp_arrangement_is_better (const FpArrangement *a, const FpArrangement *b);

/* @scale: 0: the largest that fits. Returns whether it fits at all. */
gboolean fp_arrangement_find (const FpArrangementRoom *room, double scale, FpArrangement *out);

G_END_DECLS
