/* SPDX-License-Identifier: GPL-3.0-or-later */
/* report-private.h - what the forms of the report share */
#pragma once

#include "footpace/rules.h"

G_BEGIN_DECLS

/* Each book of the findings once, by id; (element-type FpRulebook), owned by the caller, the books are not. */
GPtrArray *fp_report_books (const FpFindings *findings);

/* How many rules were found so; of one book, or (NULL) of all. */
typedef struct { guint of[FP_FOUND_APART + 1], all, held; } FpReportStates;
FpReportStates fp_report_states (const FpFindings *findings, const FpRulebook *book);

/* "No finding against the 12 rules listed.": what the report comes to; owned by the caller. */
char *fp_report_closing (const FpFindings *findings);

/* What goes with every report, however clean. */
const char *const *fp_report_cautions (guint *n);

G_END_DECLS
