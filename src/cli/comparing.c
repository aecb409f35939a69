/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "comparing.h"

#include "cli.h"

static void
unref_findings (gpointer findings)
{
  fp_findings_unref (findings);
}

GPtrArray *
fp_comparing_findings (const FpProject *project)
{
  GPtrArray *all = g_ptr_array_new_with_free_func (unref_findings);

  for (guint i = 0; i < fp_project_n_alternatives (project); i++)
    g_ptr_array_add (all, fp_findings_of (project, i, NULL, NULL));
  return all;
}

FpComparison *
fp_comparing_new (GPtrArray *findings)
{
  return fp_comparison_new ((FpFindings *const *) findings->pdata, findings->len);
}

int
fp_comparing_exit (GPtrArray *findings)
{
  for (guint i = 0; i < findings->len; i++)
    if (fp_findings_short (g_ptr_array_index (findings, i), FP_WEIGHT_REQUIRED) > 0)
      return FP_EXIT_SHORT;
  return FP_EXIT_CLEAR;
}
