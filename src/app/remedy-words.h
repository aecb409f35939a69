/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy-words.h - the change that settles a finding, as it is said; knows no toolkit */
#pragma once

#include "footpace/remedy.h"

G_BEGIN_DECLS

/* "Communion rail, gate, clear: 815 mm", "Communion rail: 290 mm to the Gospel side"; owned by the caller. */
char *fp_remedy_words (const FpRemedy *remedy, const FpScene *scene);
/* The same as a step of the history: "Settle: The gate in the rail is too narrow"; owned by the caller. */
char *fp_remedy_label (const FpFinding *finding);

/* "C 60 mm for the first row: Footpace and steps, 6 steps of 163 mm, the floor of the altar at +0.978 m; 2 of 22 rows have it
 * then", or why it cannot be reached; NULL where there is no such row. */
char *fp_first_row_words (const FpFirstRow *first, const FpScene *scene);
/* As the change is called that makes it so. */
char *fp_first_row_label (const FpFirstRow *first, const FpScene *scene);

G_END_DECLS
