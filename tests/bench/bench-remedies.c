/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What it takes to look for a remedy of everything that is short, against one full check of the same church.
 *
 * usage: bench-remedies PROJECT...
 *
 * Only the ratio says anything on another machine: processor time of all threads, of every alternative of the projects that
 * are named. The longest of them is told too, since that is what somebody waits for who chooses a finding.
 */
#include "timing.h"

#include "footpace/remedy.h"
#include "footpace/store.h"

#define REPEATS 5
/* Full checks that all remedies of an alternative may cost, and those of one finding on the average (design judgement). */
#define AIM_ALL 150.0
#define AIM_ONE 6.0

static double
check_of (const FpProject *project, guint alternative)
{
  double took[REPEATS];

  for (guint i = 0; i < REPEATS; i++)
    {
      const double begun = timing_cpu ();
      g_autoptr (FpFindings) findings = fp_findings_of (project, alternative, NULL, NULL);

      took[i] = timing_cpu () - begun;
    }
  return timing_least (took, REPEATS);
}

/* TRUE where the aim is met. */
static gboolean
measure (const FpProject *project, guint alternative, const char *file)
{
  const double check = check_of (project, alternative);
  g_autoptr (FpFindings) findings = fp_findings_of (project, alternative, NULL, NULL);
  const FpFinding *finding, *longest = NULL;
  double all = 0, most = 0;
  guint n, count = 0;

  finding = fp_findings_get (findings, &n);
  for (guint i = 0; i < n && finding[i].found == FP_FOUND_SHORT; i++, count++)
    {
      const double begun = timing_cpu ();
      FpRemedy remedy;
      double took;

      fp_remedy_find (findings, &finding[i], NULL, &remedy, NULL);
      took = timing_cpu () - begun;
      all += took;
      longest = took > most ? &finding[i] : longest;
      most = MAX (most, took);
    }
  if (count == 0)
    return TRUE;
  g_print ("%s, %s: a full check %.0f ms, remedies of %u findings %.0f ms: as %.0f checks, each as %.1f; the longest %s, as %.1f; "
           "aim: at most %.0f, and %.1f%s\n",
           file, fp_alternative_name (fp_project_alternative (project, alternative)), check, count, all, all / check,
           all / check / count, longest->rule->id, most / check, AIM_ALL, AIM_ONE,
           all / check <= AIM_ALL && all / check / count <= AIM_ONE ? "" : " MISSED");
  return all / check <= AIM_ALL && all / check / count <= AIM_ONE;
}

int
main (int argc, char **argv)
{
  gboolean met = TRUE;

  for (int i = 1; i < argc; i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (FpProject) project = fp_store_load (argv[i], &error);

      g_assert_no_error (error);
      for (guint a = 0; a < fp_project_n_alternatives (project); a++)
        met &= measure (project, a, argv[i]);
    }
  return met ? 0 : 1;
}
