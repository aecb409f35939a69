/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How sight grows with the number of places, what two processors gain, what an
 * edit costs when only what it can change is looked at again, and how much
 * memory it takes.
 */
#define _GNU_SOURCE /* sched_setaffinity */

#include "footpace/sight.h"
#include "parish.h"
#include "timing.h"

#include <malloc.h>
#include <math.h>
#ifdef __linux__
#include <sched.h>
#include <stdlib.h>
#endif

#define GROWTH_AIM 1.1 /* places to the power of */
#define TWO_AIM    1.8
#define RUNS       5
#define EDITS      21

static void
ask_all (const FpSight *sight)
{
  for (int focus = 0; focus < FP_N_FOCUSES; focus++)
    fp_sight_share (sight, 0, FP_MOMENT_OFFERTORY, (FpFocus) focus);
}

static FpPeople *
people_of (const FpProject *project)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);

  return fp_people_new (scene);
}

/* --- growth ------------------------------------------------------------------ */

typedef struct { double places, ms, bytes; } Size;

static Size
measure_size (FpProject *project, guint runs)
{
  g_autoptr (FpPeople) people = people_of (project);
  double took[RUNS], bytes = 0;
  guint n;

  for (guint run = 0; run < runs; run++)
    {
      const double held = (double) mallinfo2 ().uordblks, start = timing_cpu ();
      g_autoptr (FpSight) sight = fp_sight_new (people, NULL);
      ask_all (sight);
      took[run] = timing_cpu () - start;
      bytes = (double) mallinfo2 ().uordblks - held;
    }
  fp_people_places (people, &n);
  return (Size) { n, timing_least (took, runs), bytes };
}

static void
measure_growth (void)
{
  static const struct { guint blocks, rows, runs; } HALLS[] = { { 4, 25, 5 }, { 12, 83, 3 }, { 16, 104, 1 } }; /* a project has room for 20 000 people */
  Size last = { 0, 0, 0 };

  g_print ("one moment, all targets\n");
  for (guint i = 0; i < G_N_ELEMENTS (HALLS); i++)
    {
      g_autoptr (FpProject) project = hall_new (HALLS[i].blocks, HALLS[i].rows);
      const Size size = measure_size (project, HALLS[i].runs);
      g_print ("  %6.0f places: %9.2f ms, %7.1f MB held", size.places, size.ms, size.bytes / 1e6);
      if (i > 0)
        {
          const double power = log (size.ms / last.ms) / log (size.places / last.places);
          g_print (", places to the power of %.3f (aim %.1f)%s", power, GROWTH_AIM, power <= GROWTH_AIM ? "" : " MISSED");
        }
      g_print ("\n");
      last = size;
    }
}

/* --- two processors ------------------------------------------------------------ */

#ifdef __linux__

/* Every thread of this process, the workers as well. */
static void
run_on (guint processors)
{
  g_autoptr (GDir) tasks = g_dir_open ("/proc/self/task", 0, NULL);
  const char *name;
  cpu_set_t set;

  CPU_ZERO (&set);
  for (guint i = 0; i < processors; i++)
    CPU_SET (i, &set);
  while (tasks != NULL && (name = g_dir_read_name (tasks)) != NULL)
    sched_setaffinity (atoi (name), sizeof set, &set);
}

static double
wall_on (const FpPeople *people, guint processors)
{
  double took[RUNS];

  run_on (processors);
  for (guint run = 0; run < RUNS; run++)
    {
      const double start = timing_wall ();
      g_autoptr (FpSight) sight = fp_sight_new (people, NULL);
      ask_all (sight);
      took[run] = timing_wall () - start;
    }
  return timing_least (took, RUNS);
}

static void
measure_two (void)
{
  g_autoptr (FpProject) project = hall_new (12, 83);
  g_autoptr (FpPeople) people = people_of (project);

  if (g_get_num_processors () < 2)
    return;
  const double one = wall_on (people, 1), two = wall_on (people, 2), gain = one / two;
  run_on (g_get_num_processors ());
  g_print ("two processors, %.2f ms for %.2f ms on one: %.2f times (aim %.1f, of a machine that does nothing else)%s\n", two, one,
           gain, TWO_AIM, gain >= TWO_AIM ? "" : " MISSED");
}

#endif

/* --- while one drags ------------------------------------------------------------ */

/* A thing is moved to and fro; what the first look costs is not counted. */
static double
measure_edits (const char *id, gboolean again)
{
  g_autoptr (FpProject) project = cathedral_new (25);
  g_autoptr (FpSight) last = NULL;
  double took[EDITS];

  for (guint i = 0; i <= EDITS; i++)
    {
      parish_move (&project, id, i % 2 ? 40 : -40, 0);
      g_autoptr (FpPeople) people = people_of (project);
      const double start = timing_cpu ();
      g_autoptr (FpSight) sight = fp_sight_again (people, again ? last : NULL, NULL);
      ask_all (sight);
      if (i > 0)
        took[i - 1] = timing_cpu () - start;
      g_clear_pointer (&last, fp_sight_unref);
      last = g_steal_pointer (&sight);
    }
  return timing_middle (took, EDITS);
}

static void
measure_drags (void)
{
  static const char *const MOVED[] = { "credence", "pier-1", "ambo", "altar" };

  g_print ("a thing is moved, 1200 seats, one moment, all targets\n");
  for (guint i = 0; i < G_N_ELEMENTS (MOVED); i++)
    {
      const double anew = measure_edits (MOVED[i], FALSE), again = measure_edits (MOVED[i], TRUE);
      g_print ("  %-10s from nothing %7.2f ms, again %7.2f ms: %.2f of it\n", MOVED[i], anew, again, again / anew);
    }
}

int
main (void)
{
  measure_growth ();
#ifdef __linux__
  measure_two ();
#endif
  measure_drags ();
  return 0;
}
