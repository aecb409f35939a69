/* SPDX-License-Identifier: GPL-3.0-or-later */
/* comparison.c - the alternatives in columns: every cell from the same scenes, levels and sights as the findings */
#include "comparison-private.h"

FpComparison *
fp_comparison_begin (FpFindings *const *findings, guint n)
{
  FpComparison *self = g_new0 (FpComparison, 1);

  self->columns = n;
  self->findings = g_new (FpFindings *, MAX (n, 1u));
  self->head = g_new0 (char *, n + 1);
  for (guint c = 0; c < n; c++)
    {
      const FpScene *scene = fp_findings_scene (findings[c]);
      self->findings[c] = fp_findings_ref (findings[c]);
      self->head[c] = g_strdup (fp_alternative_name (
        fp_project_alternative (fp_scene_project (scene), fp_scene_alternative (scene))));
    }
  return self;
}

guint
fp_comparison_add_row (FpComparison *self, gboolean heading, const char *format, ...)
{
  const guint row = self->rows++, columns = MAX (self->columns, 1u);
  va_list args;

  self->label = g_renew (char *, self->label, self->rows);
  self->heading = g_renew (gboolean, self->heading, self->rows);
  self->cell = g_renew (FpComparisonCell, self->cell, self->rows * columns);
  va_start (args, format);
  self->label[row] = g_strdup_vprintf (format, args);
  va_end (args);
  self->heading[row] = heading;
  for (guint c = 0; c < columns; c++)
    self->cell[row * columns + c] = (FpComparisonCell) { NULL, FALSE, FALSE, FP_WEIGHT_REQUIRED };
  return row;
}

FpComparisonCell *
fp_comparison_cell_of (const FpComparison *self, guint row, guint column)
{
  return &self->cell[row * self->columns + column];
}

FpComparison *
fp_comparison_new (FpFindings *const *findings, guint n)
{
  const FpProject *project = n > 0 ? fp_scene_project (fp_findings_scene (findings[0])) : NULL;
  FpComparison *self = fp_comparison_begin (findings, n);

  self->seen = FP_COMPARISON_SEEN;
  for (guint r = 0; r < fp_comparison_n_row_kinds (project); r++)
    {
      fp_comparison_add_row (self, FALSE, "%s", fp_comparison_row_label (r));
      for (guint c = 0; c < n; c++)
        fp_comparison_row_fill (r, findings[c], fp_comparison_cell_of (self, r, c));
    }
  return self;
}

void
fp_comparison_free (FpComparison *self)
{
  if (self == NULL)
    return;
  for (guint i = 0; i < self->columns * self->rows; i++)
    g_free (self->cell[i].text);
  for (guint c = 0; c < self->columns; c++)
    fp_findings_unref (self->findings[c]);
  for (guint r = 0; r < self->rows; r++)
    g_free (self->label[r]);
  g_strfreev (self->head);
  g_free (self->findings);
  g_free (self->label);
  g_free (self->heading);
  g_free (self->cell);
  g_free (self);
}

guint
fp_comparison_columns (const FpComparison *self)
{
  return self->columns;
}

guint
fp_comparison_rows (const FpComparison *self)
{
  return self->rows;
}

const char *
fp_comparison_head (const FpComparison *self, guint column)
{
  return self->head[column];
}

const char *
fp_comparison_label (const FpComparison *self, guint row)
{
  return self->label[row];
}

const char *
fp_comparison_cell (const FpComparison *self, guint row, guint column)
{
  return fp_comparison_cell_of (self, row, column)->text;
}

gboolean
fp_comparison_short (const FpComparison *self, guint row, guint column)
{
  return fp_comparison_cell_of (self, row, column)->is_short;
}

FpWeight
fp_comparison_weight (const FpComparison *self, guint row, guint column)
{
  return fp_comparison_cell_of (self, row, column)->weight;
}

gboolean
fp_comparison_best (const FpComparison *self, guint row, guint column)
{
  return fp_comparison_cell_of (self, row, column)->is_best;
}

gboolean
fp_comparison_is_heading (const FpComparison *self, guint row)
{
  return self->heading[row];
}
