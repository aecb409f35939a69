/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The three views made again after one step of a drag, against those made from nothing: what the hand waits for.
 *
 * Each step moves one thing by a centimetre.  The aim is a ratio, since only
 * that says anything on another machine.  With the altar goes all that stands
 * on it, which is half of what there is to draw.
 */
#include "parish.h"

#include "footpace/projection.h"
#include "footpace/setting-out.h"

#include <stdlib.h>
#include <time.h>

#define STEPS   30
#define WARM_UP 3

static int
by_time (const void *a, const void *b)
{
  const gint64 p = *(const gint64 *) a, q = *(const gint64 *) b;

  return (p > q) - (p < q);
}

/* ms, the middle of all. */
static double
middle_of (gint64 *took)
{
  qsort (took, STEPS, sizeof *took, by_time);
  return (double) took[STEPS / 2] / 1e3;
}

static FpScene *
step (const FpScene *scene, const char *id, guint i)
{
  const FpVec3 by = { i % 4 < 2 ? 10 : -10, i % 2 == 0 ? 10 : -10, 0 };
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) next = fp_set_out_move (scene, id, by, &error);

  g_assert_no_error (error);
  return fp_scene_new (next, 0);
}

/* µs of work, whatever else the machine does meanwhile. */
static gint64
worked (void)
{
  struct timespec now;

  clock_gettime (CLOCK_THREAD_CPUTIME_ID, &now);
  return now.tv_sec * G_USEC_PER_SEC + now.tv_nsec / 1000;
}

/* @last is replaced. */
static gint64
time_views (const FpScene *scene, FpProjection **last, gboolean again)
{
  const gint64 begun = worked ();

  for (FpViewId v = 0; v < FP_N_VIEWS; v++)
    {
      FpProjection *next = fp_projection_again (again ? last[v] : NULL, scene, v, NULL, 0, NULL);
      fp_projection_unref (last[v]);
      last[v] = next;
    }
  return worked () - begun;
}

/* TRUE where the aim is met. */
static gboolean
measure (const char *church, FpProject *project, const char *id, double aim)
{
  FpScene *scene = fp_scene_new (project, 0);
  FpProjection *anew[FP_N_VIEWS] = { NULL }, *again[FP_N_VIEWS] = { NULL };
  gint64 took_anew[STEPS], took_again[STEPS];
  double ratio;

  for (guint i = 0; i < WARM_UP + STEPS; i++)
    {
      FpScene *next = step (scene, id, i);
      const gint64 a = time_views (next, anew, FALSE), b = time_views (next, again, TRUE);
      fp_scene_unref (scene);
      scene = next;
      took_anew[i < WARM_UP ? 0 : i - WARM_UP] = a;
      took_again[i < WARM_UP ? 0 : i - WARM_UP] = b;
    }
  for (FpViewId v = 0; v < FP_N_VIEWS; v++)
    {
      fp_projection_unref (anew[v]);
      fp_projection_unref (again[v]);
    }
  fp_scene_unref (scene);
  ratio = middle_of (took_again) / middle_of (took_anew);
  g_print ("%s, %s dragged: from nothing %.2f ms, again %.2f ms: %.2f of it; aim: at most %.2f%s\n", church, id,
           middle_of (took_anew), middle_of (took_again), ratio, aim, ratio <= aim ? "" : " MISSED");
  return ratio <= aim;
}

int
main (void)
{
  static const struct { const char *id; double aim; } dragged[] = {
    { "altar", 0.75 }, { "ambo", 0.25 }, { "chair", 0.25 }, { "credence", 0.25 },
  };
  g_autoptr (FpProject) parish = parish_new (13), great = cathedral_new (25);
  gboolean met = TRUE;

  for (guint i = 0; i < G_N_ELEMENTS (dragged); i++)
    {
      met &= measure ("312 seats", parish, dragged[i].id, dragged[i].aim);
      met &= measure ("1200 seats", great, dragged[i].id, dragged[i].aim);
    }
  return met ? 0 : 1;
}
