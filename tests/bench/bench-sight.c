/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How long it takes to know who sees what, against Embree on the same rays in packets of eight.
 *
 * Prints the least and the middle of several runs, in processor time of all
 * threads together, so that other work on the machine counts for little; and
 * a hash of all answers: a fast wrong answer shows.
 */
#include "footpace/sight.h"
#include "footpace/store.h"
#include "parish.h"

#ifdef FP_WITH_EMBREE
#include "embree-scene.h"
#endif

#include <stdlib.h>
#include <time.h>

#define RUNS 9

static double
now (void)
{
  return (double) clock () * 1e3 / CLOCKS_PER_SEC; /* ms */
}

static int
by_time (const void *a, const void *b)
{
  const double p = *(const double *) a, q = *(const double *) b;
  return (p > q) - (p < q);
}

static void
print_times (const char *what, double *took, guint n)
{
  qsort (took, n, sizeof *took, by_time);
  g_print ("  %-34s least %8.2f ms, middle %8.2f ms\n", what, took[0], took[n / 2]);
}

/* FNV-1a over the points seen, place by place. */
static guint32
hash_of (const FpSight *sight, guint *rays)
{
  guint32 hash = 2166136261u;
  guint n;
  fp_people_places (fp_sight_people (sight), &n);
  for (int moment = 0; moment < FP_N_MOMENTS; moment++)
    for (int focus = 0; focus < FP_N_FOCUSES; focus++)
      for (guint place = 0; place < n; place++)
        {
          double share = fp_sight_share (sight, place, (FpMoment) moment, (FpFocus) focus);
          *rays += share >= 0 ? FP_SIGHT_RAYS : 0;
          hash = (hash ^ (guint32) (share * FP_SIGHT_RAYS + 128)) * 16777619u;
        }
  return hash;
}

#ifdef FP_WITH_EMBREE

/* Embree's own time for the rays of one moment: making its index of the solids, and asking it in packets of rays from
 * one eye to one target. */
static double
embree_moment (const FpPeople *people, FpMoment moment, guint *blocked)
{
  g_autoptr (FpSolids) solids = fp_sight_obstacles (people, moment);
  const double start = now ();
  g_autoptr (EmbreeScene) embree = embree_scene_new (solids);
  guint n;
  FpPosture posture;

  fp_people_places (people, &n);
  for (int focus = 0; focus < FP_N_FOCUSES; focus++)
    {
      FpVec3 point[FP_SIGHT_RAYS];
      const guint points = fp_sight_points (fp_people_scene (people), (FpFocus) focus, point);
      for (guint i = 0; i < n; i++)
        for (guint k = 0; k < points && fp_people_looks (people, i, moment, &posture); k += EMBREE_PACKET)
          *blocked += embree_scene_blocked_of (embree, fp_people_eye (people, i, posture), point + k,
                                               MIN (EMBREE_PACKET, points - k), FP_SIGHT_PERSON + i, G_MAXUINT);
    }
  return now () - start;
}

static double
embree_once (const FpPeople *people)
{
  double took = 0;
  guint blocked = 0;

  for (int moment = 0; moment < FP_N_MOMENTS; moment++)
    took += embree_moment (people, (FpMoment) moment, &blocked);
  return took;
}

#endif

static void
measure (const char *name, FpProject *project)
{
  double scene_took[RUNS], people_took[RUNS], sight_took[RUNS];
  guint32 hash = 0;
  guint rays = 0, n = 0;
  g_autoptr (FpPeople) people = NULL;

  for (guint run = 0; run < RUNS; run++)
    {
      double start = now ();
      g_autoptr (FpScene) scene = fp_scene_new (project, 0);
      scene_took[run] = now () - start;

      g_clear_pointer (&people, fp_people_unref);
      start = now ();
      people = fp_people_new (scene);
      people_took[run] = now () - start;

      start = now ();
      g_autoptr (FpSight) sight = fp_sight_new (people, NULL);
      rays = 0;
      hash = hash_of (sight, &rays); /* asks for all there is */
      sight_took[run] = now () - start;
    }
  fp_scene_placed (fp_people_scene (people), &n);
  g_print ("%s: %u seats, %u things, %u rays, answers %08x\n", name, fp_people_seats (people), n, rays, hash);
  print_times ("scene", scene_took, RUNS);
  print_times ("people", people_took, RUNS);
  print_times ("sight, all moments", sight_took, RUNS);
#ifdef FP_WITH_EMBREE
  double embree_took[3];
  for (guint run = 0; run < G_N_ELEMENTS (embree_took); run++)
    embree_took[run] = embree_once (people);
  print_times ("Embree, packets of eight", embree_took, G_N_ELEMENTS (embree_took));
  g_print ("  sight takes %.2f of Embree's time\n", sight_took[0] / embree_took[0]);
#endif
}

/* The samples, where they are to be had. */
static void
measure_sample (const char *name)
{
  const char *folder = g_getenv ("FOOTPACE_SAMPLES");
  g_autofree char *path = folder != NULL ? g_build_filename (folder, name, NULL) : NULL;
  g_autoptr (FpProject) project = path != NULL ? fp_store_load (path, NULL) : NULL;
  if (project != NULL)
    measure (name, project);
}

int
main (void)
{
  g_autoptr (FpProject) parish = parish_new (13), cathedral = cathedral_new (25);
  measure ("parish", parish);
  measure ("cathedral", cathedral);
  measure_sample ("parish.footpace");
  measure_sample ("cathedral.footpace");
  return 0;
}
