/* SPDX-License-Identifier: GPL-3.0-or-later */
/* found-remedy.h - what would settle a finding, looked for in the background */
#pragma once

#include "latest.h"

#include "footpace/remedy.h"

G_BEGIN_DECLS

typedef struct
{
  FpFindings      *of;      /* owned */
  const FpFinding *finding;
  gboolean         found, goes_further;
  FpRemedy         remedy, further;
  char            *words, *further_words; /* owned; of the remedy, or what stands in the way; NULL: it was cancelled */
  guint            n_first;
  FpFirstRow       first[FP_FIRST_ROW_CS]; /* where rows see over heads       */
} FpFoundRemedy;

/* What is asked: @finding is one of @of.  Freed by the other. */
gpointer fp_remedy_request_new  (const FpFindings *of, const FpFinding *finding);
void     fp_remedy_request_free (gpointer request);

/* Of FpLatestWork: posts a FpFoundRemedy. */
void     fp_found_remedy_run    (FpLatestJob *job, gpointer request, gpointer owner);
void     fp_found_remedy_free   (gpointer found);

G_END_DECLS
