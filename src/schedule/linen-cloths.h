/* SPDX-License-Identifier: GPL-3.0-or-later */
/* linen-cloths.h - what the files of the cloths share */
#pragma once

#include "footpace/linen.h"

G_BEGIN_DECLS

/* The raw edge within a hem: design judgement. */
#define FP_TURNED_IN 8.0

/* Appended, unless it has no size or number. */
void fp_cloths_add (GArray *cloths, const FpCloth *cloth);

/* What one Mass at @altar needs of small linens, or as many as @works say; @depth: of the mensa that is free. */
void fp_cloths_add_small (GArray *cloths, const FpPlaced *altar, double depth, const FpWorks *works);
/* Chalice veils and burses, of silk. */
void fp_cloths_add_small_silk (GArray *cloths, const FpPlaced *altar, const FpWorks *works);

G_END_DECLS
