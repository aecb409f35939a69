/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The findings that need no sight, against the scene of which they are found: both are made anew with each step of a drag.
 * Of the parish sample, and of a church of 1,200 seats.  Beside it, what all rules take there when sight is known; the ways
 * that people walk are most of that.
 *
 * The aims are ratios: at most three times the scene.
 */
#include "parish.h"
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

static FpFindings *
find_once (const FpProject *project, GPtrArray *books, gint64 *scene_us, gint64 *findings_us)
{
  const gint64 begun = g_get_monotonic_time ();
  g_autoptr (FpScene) scene = fp_scene_new (project, fp_project_n_alternatives (project) - 1);
  const gint64 between = g_get_monotonic_time ();
  g_autoptr (FpPeople) people = fp_people_new (scene);
  const FpMeasuring of = { scene, people, fp_levels (people), NULL };
  FpFindings *findings = fp_findings_new (&of, books);

  *scene_us = between - begun;
  *findings_us = g_get_monotonic_time () - between;
  return findings;
}

/* By turns, so that whatever else the machine does slows both alike. */
static gboolean
time_drag (const char *what, const FpProject *project)
{
  g_autoptr (GPtrArray) books = fp_rulebooks_built_in ();
  gint64 scenes[TIMES], found[TIMES], unused;
  double scene, findings;

  for (guint i = 0; i < WARM_UP; i++)
    fp_findings_unref (find_once (project, books, &unused, &unused));
  for (guint i = 0; i < TIMES; i++)
    fp_findings_unref (find_once (project, books, &scenes[i], &found[i]));
  scene = middle (scenes);
  findings = middle (found);
  g_print ("%s: the scene %.2f ms, its findings without sight %.2f ms, %.1f times as long; aim: at most %.0f times%s\n", what,
           scene, findings, findings / scene, AIM, findings / scene <= AIM ? "" : " MISSED");
  return findings / scene <= AIM;
}

static double
time_findings (const FpMeasuring *of, GPtrArray *books)
{
  const gint64 begun = g_get_monotonic_time ();

  fp_findings_unref (fp_findings_new (of, books));
  return (double) (g_get_monotonic_time () - begun) / 1e3;
}

/* What is seen is found when it is first asked for, and known after that. */
static void
time_all (const char *what, const FpProject *project)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, fp_project_n_alternatives (project) - 1);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (FpSight) sight = fp_sight_new (people, NULL);
  const FpMeasuring of = { scene, people, fp_levels (people), sight };
  g_autoptr (GPtrArray) books = fp_rulebooks_built_in ();
  const double first = time_findings (&of, books), again = time_findings (&of, books);

  g_print ("%s: every rule %.1f ms, %.1f ms when sight is known, %.2f of it\n", what, first, again, again / first);
}

int
main (void)
{
  g_autofree char *path = fp_sample_path ("parish.footpace");
  g_autoptr (FpProject) parish = fp_store_load (path, NULL);
  g_autoptr (FpProject) great = cathedral_new (25);
  gboolean met;

  if (parish == NULL)
    g_error ("%s cannot be read", path);
  met = time_drag ("parish sample", parish);
  met &= time_drag ("1200 seats", great);
  time_all ("parish sample", parish);
  time_all ("1200 seats", great);
  return met ? 0 : 1;
}
