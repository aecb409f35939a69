/* SPDX-License-Identifier: GPL-3.0-or-later */
/* linen-plan.h - from which bolt the cloths of an alternative are cut, and how: told, as a table, and drawn
 *
 * Millimetres.  The reader is whoever cuts and sews.
 */
#pragma once

#include "footpace/linen.h"
#include "footpace/sheet.h"

G_BEGIN_DECLS

typedef struct
{
  double      bolt;      /* width between the selvedges */
  FpShrinkage shrinkage; /* as tried on a piece of that cloth */
} FpLinenSpec;

typedef struct _FpLinenPlan FpLinenPlan;

/**
 * fp_linen_plan_new:
 * @error: %FP_ERROR_RANGE for a bolt or a shrinkage that is none, a cloth that is wider than the bolt either way, told by
 *   its name, and where there is nothing to be cut
 *
 * The cloths of the books that the brief names.  The scene is held.
 */
FpLinenPlan        *fp_linen_plan_new    (const FpScene *scene, const FpLinenSpec *spec, GError **error);
void                fp_linen_plan_free   (FpLinenPlan *self);
const GArray       *fp_linen_plan_cloths (const FpLinenPlan *self); /* (element-type FpCloth) */
const FpBoltLayout *fp_linen_plan_layout (const FpLinenPlan *self);

/* In words, in the units of the brief; with the cautions. */
char      *fp_linen_plan_text  (const FpLinenPlan *self);
/* RFC 4180, a line for each piece: mm, a decimal point. */
char      *fp_linen_plan_csv   (const FpLinenPlan *self);

/**
 * fp_linen_plan_sheet:
 * @scale: (out) (optional)
 *
 * The bolt with all pieces on it, and the sizes of each.
 *
 * Returns: (transfer full): NULL with %FP_ERROR_RANGE when it does not fit
 */
FpDrawing *fp_linen_plan_sheet (const FpLinenPlan *self, const FpSheetSpec *spec, double *scale, GError **error);

/* The sheet by what the project's works say of bolt and shrinkage; %FP_ERROR_RANGE, too, where they say nothing. */
FpDrawing *fp_linen_sheet_of (const FpScene *scene, const FpSheetSpec *spec, double *scale, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpLinenPlan, fp_linen_plan_free)

G_END_DECLS
