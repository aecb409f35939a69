/* SPDX-License-Identifier: GPL-3.0-or-later */
/* shown-findings.h - which findings are shown, in which order, in which words; knows no toolkit */
#pragma once

#include "footpace/rules.h"

G_BEGIN_DECLS

typedef struct
{
  FpFindings      *of;       /* owned; what the finding belongs to           */
  const FpFinding *finding;
  gboolean         stale;    /* of sight, from an earlier scene              */
} FpShown;

/* (element-type FpShown), owned by the caller. @sighted: (nullable): the newest with sight. */
GArray *fp_shown_new (FpFindings *newest, FpFindings *sighted);
char   *fp_shown_key (const FpShown *shown); /* tells a rule from every other; owned by the caller */

/* "2 required, 1 recommended", or that there is none. */
char   *fp_shown_summary (const GArray *shown);
/* "No finding against the other 47 rules listed." */
char   *fp_shown_rest    (FpFindings *newest, const GArray *shown);
/* "1 rulebook is left out: see Norms"; NULL: nothing is amiss with the norms. */
char   *fp_shown_amiss   (const FpFindings *newest);
/* "160 mm; asked: about 6 in (152 mm)" */
char   *fp_shown_measure (const FpFinding *finding);
/* All of it in one breath, for a screen reader. */
char   *fp_shown_speech  (const FpShown *shown);

G_END_DECLS
