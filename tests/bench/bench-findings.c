/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The findings of the parish sample that need no sight, against the scene of which they are found: both are made anew with
 * each step of a drag.
 *
 * The aim is a ratio: at most three times the scene.
 */
#include "samples.h"

#include "footpace/rules.h"
#include "footpace/store.h"

#include <stdlib.h>

#define TIMES   60
#define WARM_UP 5
#define AIM     3.0

static int
by_time (const void *a, const void *b)
{
  const gint64 p = *(const gint64 *) a, q = *(const gint64 *) b;

  return (p > q) - (p < q);
}

static double
middle (gint64 *took)
{
  qsort (took, TIMES, sizeof *took, by_time);
  return (double) took[TIMES / 2] / 1e3;
}

/* By turns, so that whatever else the machine does slows both alike. */
static void
time_both (const FpProject *project, double *scene_ms, double *findings_ms)
{
  g_autoptr (GPtrArray) books = fp_rulebooks_built_in ();
  gint64 scenes[TIMES], found[TIMES];

  for (guint i = 0; i < WARM_UP + TIMES; i++)
    {
      const gint64 begun = g_get_monotonic_time ();
      g_autoptr (FpScene) scene = fp_scene_new (project, fp_project_n_alternatives (project) - 1);
      const gint64 between = g_get_monotonic_time ();
      g_autoptr (FpPeople) people = fp_people_new (scene);
      const FpMeasuring of = { scene, people, fp_levels (people), NULL };
      g_autoptr (FpFindings) findings = fp_findings_new (&of, books);

      if (i >= WARM_UP)
        {
          scenes[i - WARM_UP] = between - begun;
          found[i - WARM_UP] = g_get_monotonic_time () - between;
        }
    }
  *scene_ms = middle (scenes);
  *findings_ms = middle (found);
}

int
main (void)
{
  g_autofree char *path = fp_sample_path ("parish.footpace");
  g_autoptr (FpProject) project = fp_store_load (path, NULL);
  double scene, findings;

  if (project == NULL)
    g_error ("%s cannot be read", path);
  time_both (project, &scene, &findings);
  g_print ("the scene: %.2f ms\nits findings without sight: %.2f ms, %.1f times as long; aim: at most %.0f times%s\n", scene,
           findings, findings / scene, AIM, findings / scene <= AIM ? "" : " MISSED");
  return findings / scene <= AIM ? 0 : 1;
}
