/* SPDX-License-Identifier: GPL-3.0-or-later */
/* linen-plan.h - from which bolt the cloths of an alternative are cut, and how: told, as a table, and drawn
 *
 * Millimetres.  The reader is whoever cuts and sews, and has nothing else.
 */
#pragma once

#include "footpace/linen.h"
#include "footpace/sheet.h"

G_BEGIN_DECLS

typedef struct
{
  double      bolt;      /* width between the selvedges, %FP_BOLT_LEAST to %FP_BOLT_MOST */
  FpShrinkage shrinkage; /* as tried on a piece of that cloth */
  gboolean    join;      /* what is wider than the bolt is cut in widths that are joined, selvedge to selvedge */
} FpLinenSpec;

typedef struct _FpLinenPlan FpLinenPlan;

/**
 * fp_linen_plan_new:
 * @error: %FP_ERROR_RANGE for a bolt or a shrinkage that is none, and where there is nothing to be cut, or nothing that
 *   goes on the bolt
 *
 * The cloths of the books that the brief names.  What is wider than the bolt either way, and is not joined, is left out of
 * it, and told.  The scene is held.
 */
FpLinenPlan        *fp_linen_plan_new    (const FpScene *scene, const FpLinenSpec *spec, GError **error);
void                fp_linen_plan_free   (FpLinenPlan *self);
const GArray       *fp_linen_plan_cloths (const FpLinenPlan *self); /* (element-type FpCloth): all of linen */
const FpBoltLayout *fp_linen_plan_layout (const FpLinenPlan *self);
guint               fp_linen_plan_too_wide (const FpLinenPlan *self); /* how many cloths are wider than the bolt  */

/* So much is bought: what is cut, and some to square the end, up to the next 100 mm, or quarter of a yard. */
double              fp_linen_plan_to_buy (const FpLinenPlan *self);

/* In words, in the units of the brief; with the cautions. */
char      *fp_linen_plan_text  (const FpLinenPlan *self);
/* RFC 4180, a line for each piece: mm, a decimal point.  What is of silk, or wider than the bolt, has no place. */
char      *fp_linen_plan_csv   (const FpLinenPlan *self);

/**
 * fp_linen_plan_sheets:
 * @scale: (out) (optional)
 *
 * The bolt with all pieces on it, as large as the paper allows, the sizes of each, and how they are made: as many sheets as
 * that takes.
 *
 * Returns: (transfer full) (element-type FpDrawing): NULL with %FP_ERROR_RANGE when it does not fit
 */
GPtrArray *fp_linen_plan_sheets (const FpLinenPlan *self, const FpSheetSpec *spec, double *scale, GError **error);

/* Those by what the project's works say of bolt and shrinkage; %FP_ERROR_RANGE, too, where they say nothing. */
GPtrArray *fp_linen_sheets_of (const FpScene *scene, const FpSheetSpec *spec, double *scale, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpLinenPlan, fp_linen_plan_free)

G_END_DECLS
