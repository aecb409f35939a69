/* SPDX-License-Identifier: GPL-3.0-or-later */
/* lanes.h - eight numbers at once
 *
 * Vectors as GCC and Clang have them; what a machine cannot do at once they
 * take apart, so the answers are the same everywhere.  No vector is passed to
 * a function or kept in memory: arrays are read with fp_lanes_load(), which
 * asks for no alignment.
 *
 * Private to src/space.
 */
#pragma once

#include <glib.h>
#include <string.h>

G_BEGIN_DECLS

#define FP_LANES 8

typedef double FpWide      __attribute__ ((vector_size (FP_LANES * sizeof (double))));
typedef gint64 FpWideTruth __attribute__ ((vector_size (FP_LANES * sizeof (gint64)))); /* -1 where true, 0 */
typedef float  FpSlim      __attribute__ ((vector_size (FP_LANES * sizeof (float))));
typedef gint32 FpSlimTruth __attribute__ ((vector_size (FP_LANES * sizeof (gint32))));

#define fp_lanes_load(into, from)  memcpy (&(into), (from), sizeof (into))
#define fp_lanes_store(to, vector) memcpy ((to), &(vector), sizeof (vector))

/* Of @a where it is true, elsewhere of @b; both FpWide. */
#define fp_wide_pick(truth, a, b) ((FpWide) (((FpWideTruth) (a) & (truth)) | ((FpWideTruth) (b) & ~(truth))))

/* Before a function with lanes: it is compiled for wider machines as well, and the best is taken when the program starts.
 * All give the same bits, since nothing is fused. */
#if defined (__x86_64__) && defined (__GNUC__) && !defined (__clang__) && defined (__gnu_linux__)
#define FP_LANES_WIDEST __attribute__ ((target_clones ("avx512f", "avx2", "default")))
#else
#define FP_LANES_WIDEST
#endif

G_END_DECLS
