/* SPDX-License-Identifier: GPL-3.0-or-later */
/* bolt.h - pieces laid out on a bolt of cloth, so that as little of its length as can be is cut
 *
 * Millimetres.  x runs across the bolt, from selvedge to selvedge (the weft);
 * y along it (the warp).  Pieces do not overlap; they are rectangles, and their
 * sides run with the threads.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define FP_BOLT_PIECES_MAX 400u

/* A piece as it is cut.  Cloth shrinks otherwise along the warp than along the weft, so that a piece laid the other way has
 * other measures; where it may lie one way only, those of the other way are 0. */
typedef struct
{
  double across, along;               /* as it is meant: above 0, or 0: not that way */
  double turned_across, turned_along; /* a quarter turn                              */
} FpBoltPiece;

typedef struct
{
  double   x, y;      /* of its lower left corner */
  double   across, along;
  gboolean turned;
} FpBoltPlace;

typedef struct
{
  FpBoltPlace *place;   /* one for each piece, in the order of the pieces */
  double       length;  /* of the bolt that is used                       */
  double       bound;   /* no layout can take less; from the areas and the longest piece */
  gboolean     least;   /* proven that none takes less than this one      */
} FpBoltLayout;

/**
 * fp_bolt_lay_out:
 * @width: of the bolt between its selvedges
 * @error: %FP_ERROR_RANGE for a measure that is none, too many pieces, or a piece that is wider than the bolt whichever
 *   way it lies: told by its number, from 1
 *
 * The same pieces get the same layout each time.  A few pieces get the shortest that there is (by search over all of
 * them), many the best of some hundreds that are tried.
 *
 * Returns: (transfer full): fp_bolt_layout_free()
 */
FpBoltLayout *fp_bolt_lay_out (const FpBoltPiece *piece, guint n, double width, GError **error);

void          fp_bolt_layout_free (FpBoltLayout *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpBoltLayout, fp_bolt_layout_free)

G_END_DECLS
