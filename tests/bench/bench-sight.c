/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How long it takes to know who sees what, against Embree on the same rays in packets of eight.
 *
 * One moment: every place to every target, bodies and index included; then all
 * moments of a celebration.  In processor time of all threads together, so that
 * other work on the machine counts for little; and a hash of all answers: a
 * fast wrong answer shows.
 */
#include "footpace/sight.h"
#include "footpace/store.h"
#include "parish.h"
#include "timing.h"

#ifdef FP_WITH_EMBREE
#include "embree-scene.h"
#endif

#define RUNS 9
#define AIM 3.0 /* times as many rays a second as Embree */

/* Moments asked about: from first, up to but without end. */
typedef struct { FpMoment first, end; } Moments;

static const Moments ONE = { FP_MOMENT_OFFERTORY, FP_MOMENT_INCENSING }, ALL = { FP_MOMENT_BEFORE, FP_N_MOMENTS };

typedef struct { guint32 hash; guint rays; } Answers;

/* FNV-1a over the points seen, place by place. */
static Answers
ask (const FpSight *sight, Moments moments)
{
  Answers all = { 2166136261u, 0 };
  guint n;

  fp_people_places (fp_sight_people (sight), &n);
  for (int moment = (int) moments.first; moment < (int) moments.end; moment++)
    for (int focus = 0; focus < FP_N_FOCUSES; focus++)
      for (guint place = 0; place < n; place++)
        {
          double share = fp_sight_share (sight, place, (FpMoment) moment, (FpFocus) focus);
          all.rays += share >= 0 ? FP_SIGHT_RAYS : 0;
          all.hash = (all.hash ^ (guint32) (share * FP_SIGHT_RAYS + 128)) * 16777619u;
        }
  return all;
}

#ifdef FP_WITH_EMBREE

/* Embree's own time for the rays of one moment: making its index of the solids, and asking it in packets of rays from
 * one eye to one target. */
static double
embree_moment (const FpPeople *people, FpMoment moment, guint *blocked)
{
  g_autoptr (FpSolids) solids = fp_sight_obstacles (people, moment);
  const double start = timing_cpu ();
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
  return timing_cpu () - start;
}

static void
against_embree (const FpPeople *people, Moments moments, double ours)
{
  double took[3];
  guint blocked = 0;

  for (guint run = 0; run < G_N_ELEMENTS (took); run++)
    {
      took[run] = 0;
      for (int moment = (int) moments.first; moment < (int) moments.end; moment++)
        took[run] += embree_moment (people, (FpMoment) moment, &blocked);
    }
  timing_print ("  Embree, packets of eight", took, G_N_ELEMENTS (took));
  const double times = timing_least (took, G_N_ELEMENTS (took)) / ours;
  g_print ("    %.2f times as many rays a second as Embree (aim %.0f)%s\n", times, AIM, times >= AIM ? "" : " MISSED");
}

#endif

static void
measure_moments (const char *what, const FpPeople *people, Moments moments)
{
  double took[RUNS];
  Answers answers = { 0 };

  for (guint run = 0; run < RUNS; run++)
    {
      const double start = timing_cpu ();
      g_autoptr (FpSight) sight = fp_sight_new (people, NULL);
      answers = ask (sight, moments);
      took[run] = timing_cpu () - start;
    }
  g_print ("  %s: %u rays, answers %08x\n", what, answers.rays, answers.hash);
  timing_print ("  sight", took, RUNS);
#ifdef FP_WITH_EMBREE
  against_embree (people, moments, took[0]);
#endif
}

static void
measure (const char *name, FpProject *project)
{
  double scene_took[RUNS], people_took[RUNS];
  guint n = 0;
  g_autoptr (FpPeople) people = NULL;

  for (guint run = 0; run < RUNS; run++)
    {
      double start = timing_cpu ();
      g_autoptr (FpScene) scene = fp_scene_new (project, 0);
      scene_took[run] = timing_cpu () - start;

      g_clear_pointer (&people, fp_people_unref);
      start = timing_cpu ();
      people = fp_people_new (scene);
      people_took[run] = timing_cpu () - start;
    }
  fp_scene_placed (fp_people_scene (people), &n);
  g_print ("%s: %u seats, %u things\n", name, fp_people_seats (people), n);
  timing_print ("scene", scene_took, RUNS);
  timing_print ("people", people_took, RUNS);
  measure_moments ("one moment", people, ONE);
  measure_moments ("all moments", people, ALL);
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
