/* SPDX-License-Identifier: GPL-3.0-or-later */
/* comparison.c - the alternatives in columns: every cell from the same scenes, levels and sights as the findings */
#include "comparison-private.h"

FpComparison *
fp_comparison_new (FpFindings *const *findings, guint n)
{
  FpComparison *self = g_new0 (FpComparison, 1);

  self->columns = n;
  self->rows = fp_comparison_n_row_kinds ();
  self->findings = g_new (FpFindings *, MAX (n, 1u));
  self->head = g_new0 (char *, n + 1);
  self->label = g_new (const char *, self->rows);
  self->cell = g_new0 (FpComparisonCell, MAX (n, 1u) * self->rows);
  for (guint c = 0; c < n; c++)
    {
      const FpScene *scene = fp_findings_scene (findings[c]);
      self->findings[c] = fp_findings_ref (findings[c]);
      self->head[c] = g_strdup (fp_alternative_name (
        fp_project_alternative (fp_scene_project (scene), fp_scene_alternative (scene))));
    }
  for (guint r = 0; r < self->rows; r++)
    {
      self->label[r] = fp_comparison_row_label (r);
      for (guint c = 0; c < n; c++)
        fp_comparison_row_fill (r, findings[c], &self->cell[r * n + c]);
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
  g_strfreev (self->head);
  g_free (self->findings);
  g_free (self->label);
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
  return self->cell[row * self->columns + column].text;
}

gboolean
fp_comparison_short (const FpComparison *self, guint row, guint column)
{
  return self->cell[row * self->columns + column].is_short;
}
