/* SPDX-License-Identifier: GPL-3.0-or-later */
/* bolt-private.h - what the files of the bolt share */
#pragma once

#include "footpace/bolt.h"

G_BEGIN_DECLS

#define FP_BOLT_HAIR     1e-6 /* mm                                            */
#define FP_BOLT_SEARCHED 8u   /* pieces of which all layouts are searched      */

/* --- what is laid so far ------------------------------------------------------ */

typedef struct { double x, y; } FpSkylineStep; /* from x on to the next, or to the selvedge */

typedef struct
{
  FpSkylineStep step[FP_BOLT_PIECES_MAX + 1];
  guint         n;
  double        width;
} FpSkyline;

void   fp_skyline_begin        (FpSkyline *self, double width);
void   fp_skyline_copy         (FpSkyline *self, const FpSkyline *other);
/* From @x to @x + @across it is @y now. */
void   fp_skyline_raise        (FpSkyline *self, double x, double across, double y);
/* Into step @i nothing more goes: it is as high as the lower of those beside it now. */
void   fp_skyline_fill         (FpSkyline *self, guint i);
double fp_skyline_end_of       (const FpSkyline *self, guint i);
double fp_skyline_highest_over (const FpSkyline *self, double x, double across);
guint  fp_skyline_lowest_step  (const FpSkyline *self);
double fp_skyline_highest      (const FpSkyline *self);

/* --- what is to be laid, and the best of what was found ------------------------- */

typedef struct
{
  const FpBoltPiece *piece;
  guint              n;
  double             width;
  FpBoltPlace       *best;  /* n places */
  double             length;
  /* Told of each complete layout that is shorter than `length`; returns what has to be shorter still.  NULL: the best is kept. */
  double           (*found) (gpointer data, const FpBoltPlace *place, double length);
  gpointer           data;
} FpBoltTask;

FpBoltPlace fp_bolt_laid            (const FpBoltPiece *piece, gboolean turned);
gboolean    fp_bolt_goes_into       (const FpBoltPlace *place, double room);
double      fp_bolt_area_of         (const FpBoltPiece *piece); /* the less of both ways */
void        fp_bolt_keep_if_shorter (FpBoltTask *self, double length, const FpBoltPlace *place);

/* The longest first, and then with two that change places. */
void        fp_bolt_try_orders (FpBoltTask *self);
/* Of %FP_BOLT_SEARCHED at most; given up after so many steps.  TRUE where all ways were searched. */
gboolean    fp_bolt_search_all (FpBoltTask *self, guint steps);
/* The largest as short as they go, and the others into the gaps between them.
 * Returns: what the largest take, where all ways of them were searched, and so no layout of all takes less; otherwise 0 */
double      fp_bolt_fill_gaps  (FpBoltTask *self);

G_END_DECLS
