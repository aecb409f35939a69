/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The findings that are short, a line each, for a sheet. */
#include "footpace/review.h"

static char *
line_of (const FpFinding *finding)
{
  return g_strdup_printf ("%s: %s. Measured %s; asked %s.", fp_weight_label (finding->rule->weight),
                          finding->rule->title, finding->measured, finding->limit);
}

char **
fp_report_lines (const FpFindings *findings)
{
  GPtrArray *lines = g_ptr_array_new ();
  guint n;
  const FpFinding *finding = fp_findings_get (findings, &n);

  for (guint i = 0; i < n && finding[i].found == FP_FOUND_SHORT; i++)
    {
      char *line = line_of (&finding[i]);

      *line = g_ascii_toupper (*line);
      g_ptr_array_add (lines, line);
    }
  g_ptr_array_add (lines, NULL);
  return (char **) g_ptr_array_free (lines, FALSE);
}
