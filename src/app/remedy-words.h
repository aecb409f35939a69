/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy-words.h - the change that settles a finding, as it is said; knows no toolkit */
#pragma once

#include "footpace/remedy.h"

G_BEGIN_DECLS

/* "Communion rail, gate, clear: 815 mm", "Communion rail: 290 mm to the Gospel side"; owned by the caller. */
char *fp_remedy_words (const FpRemedy *remedy, const FpScene *scene);
/* The same as a step of the history: "Settle: The gate in the rail is too narrow"; owned by the caller. */
char *fp_remedy_label (const FpFinding *finding);

G_END_DECLS
