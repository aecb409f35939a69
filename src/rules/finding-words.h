/* SPDX-License-Identifier: GPL-3.0-or-later */
/* finding-words.h - what a finding says: its title, its value, and where
 *
 * Private to src/rules.
 */
#pragma once

#include "footpace/rules.h"

G_BEGIN_DECLS

/* The title of the case that was found. */
const char *fp_finding_title (const FpRule *rule, double value);
/* Owned by the caller. */
char *fp_finding_value_words (const FpFinding *finding, const FpMeasure *measure, const FpMeasured *worst, FpUnits units);
/* Where it is short, the worst first; owned by the caller; NULL: everywhere.  @measured: (element-type FpMeasured) */
char *fp_finding_where (const FpMeasuring *of, const FpRule *rule, GArray *measured, const FpMeasured *worst);

G_END_DECLS
