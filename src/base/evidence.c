/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/evidence.h"

struct _FpEvidence
{
  GArray *pieces; /* of FpEvidencePiece */
  GArray *points; /* of FpVec3          */
  char   *figure; /* (nullable)         */
};

FpEvidence *
fp_evidence_new (void)
{
  FpEvidence *self = g_new0 (FpEvidence, 1);

  self->pieces = g_array_new (FALSE, FALSE, sizeof (FpEvidencePiece));
  self->points = g_array_new (FALSE, FALSE, sizeof (FpVec3));
  return self;
}

FpEvidence *
fp_evidence_copy (const FpEvidence *self)
{
  FpEvidence *copy = self != NULL ? fp_evidence_new () : NULL;

  if (copy == NULL)
    return NULL;
  copy->figure = g_strdup (self->figure);
  if (self->pieces->len > 0)
    g_array_append_vals (copy->pieces, self->pieces->data, self->pieces->len);
  if (self->points->len > 0)
    g_array_append_vals (copy->points, self->points->data, self->points->len);
  return copy;
}

void
fp_evidence_free (FpEvidence *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->pieces);
  g_array_unref (self->points);
  g_free (self->figure);
  g_free (self);
}

static void
add (FpEvidence *self, FpEvidenceSort sort, const FpVec3 *pt, guint n, double times)
{
  const FpEvidencePiece piece = { sort, self->points->len, n, times };

  g_array_append_vals (self->points, pt, n);
  g_array_append_val (self->pieces, piece);
}

void
fp_evidence_add_length (FpEvidence *self, FpVec3 a, FpVec3 b, double times)
{
  add (self, FP_EVIDENCE_LENGTH, (FpVec3[]) { a, b }, 2, times);
}

void
fp_evidence_add_line (FpEvidence *self, FpVec3 a, FpVec3 b)
{
  add (self, FP_EVIDENCE_LINE, (FpVec3[]) { a, b }, 2, 0);
}

void
fp_evidence_add_run (FpEvidence *self, const FpVec3 *pt, guint n)
{
  if (n >= 2)
    add (self, FP_EVIDENCE_LINE, pt, n, 0);
}

void
fp_evidence_add_outline (FpEvidence *self, const FpVec3 *pt, guint n)
{
  if (n >= 3)
    add (self, FP_EVIDENCE_OUTLINE, pt, n, 0);
}

void
fp_evidence_add_body (FpEvidence *self, const FpVec3 *pt, guint n)
{
  if (n >= 2)
    add (self, FP_EVIDENCE_BODY, pt, n, 0);
}

void
fp_evidence_add_each (FpEvidence *self, FpVec3 at)
{
  add (self, FP_EVIDENCE_EACH, &at, 1, 0);
}

void
fp_evidence_set_figure (FpEvidence *self, const char *figure)
{
  g_free (self->figure);
  self->figure = g_strdup (figure);
}

const char *
fp_evidence_figure (const FpEvidence *self)
{
  return self->figure;
}

const FpEvidencePiece *
fp_evidence_pieces (const FpEvidence *self, guint *n)
{
  *n = self->pieces->len;
  return (const FpEvidencePiece *) (gpointer) self->pieces->data;
}

const FpVec3 *
fp_evidence_points (const FpEvidence *self)
{
  return (const FpVec3 *) (gpointer) self->points->data;
}

double
fp_evidence_length (const FpEvidence *self)
{
  const FpVec3 *pt = fp_evidence_points (self);
  guint n;
  const FpEvidencePiece *piece = fp_evidence_pieces (self, &n);
  double length = 0;

  for (guint i = 0; i < n; i++)
    if (piece[i].sort == FP_EVIDENCE_LENGTH && piece[i].times != 0)
      length += piece[i].times * fp_vec3_length (fp_vec3_sub (pt[piece[i].first + 1], pt[piece[i].first]));
  return length;
}

gboolean
fp_evidence_is_empty (const FpEvidence *self)
{
  return self->pieces->len == 0;
}
