/* SPDX-License-Identifier: GPL-3.0-or-later */
/* evidence.h - what was measured, as lines and outlines in space, so that every view can draw it
 *
 * Millimetres, church coordinates.  It belongs to one thread.
 */
#pragma once

#include "footpace/geom.h"

G_BEGIN_DECLS

typedef enum
{
  FP_EVIDENCE_LENGTH,  /* between two points, which are told apart, with its figure */
  FP_EVIDENCE_LINE,    /* a line by which it was measured: of sight, an axis, a level; a run of points */
  FP_EVIDENCE_OUTLINE, /* closed: an area                                           */
  FP_EVIDENCE_BODY,    /* a thing, by the corners of the room that it takes: its silhouette is drawn */
  FP_EVIDENCE_EACH,    /* one point of those that were counted                      */
} FpEvidenceSort;

typedef struct
{
  FpEvidenceSort sort;
  guint          first, n; /* into the points                                       */
  double         times;    /* of a length: how often it counts in the value; less than 0: it is taken off; 0: it is beside it */
} FpEvidencePiece;

typedef struct _FpEvidence FpEvidence;

FpEvidence *fp_evidence_new  (void);
FpEvidence *fp_evidence_copy (const FpEvidence *self); /* of NULL: NULL */
void        fp_evidence_free (FpEvidence *self);

/* Of no length nothing is drawn, but it counts. */
void fp_evidence_add_length  (FpEvidence *self, FpVec3 a, FpVec3 b, double times);
void fp_evidence_add_line    (FpEvidence *self, FpVec3 a, FpVec3 b);
void fp_evidence_add_run     (FpEvidence *self, const FpVec3 *pt, guint n);
void fp_evidence_add_outline (FpEvidence *self, const FpVec3 *pt, guint n);
void fp_evidence_add_body    (FpEvidence *self, const FpVec3 *pt, guint n);
void fp_evidence_add_each    (FpEvidence *self, FpVec3 at);

/* What was measured in words: "2.10 m²"; drawn beside the first piece, or on the only length. @figure: (nullable) */
void        fp_evidence_set_figure (FpEvidence *self, const char *figure);
const char *fp_evidence_figure     (const FpEvidence *self);

const FpEvidencePiece *fp_evidence_pieces (const FpEvidence *self, guint *n);
const FpVec3          *fp_evidence_points (const FpEvidence *self);

/* Its lengths together, each as often as it counts: of a length that was measured, its value. */
double   fp_evidence_length   (const FpEvidence *self);
gboolean fp_evidence_is_empty (const FpEvidence *self);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpEvidence, fp_evidence_free)

G_END_DECLS
