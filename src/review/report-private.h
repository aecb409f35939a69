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

/* What the finding's rule is held to by the parish instead of what is printed; NULL: as printed, or not held for another reason. */
const FpNormChange *fp_report_norm (const FpFindings *findings, const FpFinding *finding);

/* A line of what the parish holds otherwise than the books print it. */
typedef struct
{
  const char *label;   /* in a column; "Norms": of what is amiss with them     */
  const char *heading; /* where it stands alone; NULL: the text needs none     */
  char       *text;    /* one line: what, and why                              */
} FpReportNorm;

/* (element-type FpReportNorm), owned by the caller. */
GArray *fp_report_norms (const FpFindings *findings);

/* "No finding against the 12 rules listed.": what the report comes to; owned by the caller. */
char *fp_report_closing (const FpFindings *findings);

/* What goes with every report, however clean. */
const char *const *fp_report_cautions (guint *n);

G_END_DECLS
