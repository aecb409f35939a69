/* SPDX-License-Identifier: GPL-3.0-or-later */
/* One step of a drag of all furnishings of a great church against one of a single thing: what the hand waits for.
 *
 * A step is the edit and the scene that comes of it, as while something is
 * dragged.  The aim is a ratio: at most three times the single drag.
 */
#include "samples.h"

#include "footpace/arrange.h"
#include "footpace/setting-out.h"
#include "footpace/store.h"

#include <stdlib.h>

#define STEPS   40
#define WARM_UP 4
#define AIM     3.0

typedef FpProject *(*Move) (const FpScene *scene, const char *const *ids, FpVec3 by, GError **error);

static FpProject *
move_single (const FpScene *scene, const char *const *ids, FpVec3 by, GError **error)
{
  return fp_set_out_move (scene, ids[0], by, error);
}

static int
by_time (const void *a, const void *b)
{
  const gint64 p = *(const gint64 *) a, q = *(const gint64 *) b;

  return (p > q) - (p < q);
}

/* ms, the middle of all. */
static double
time_steps (const FpScene *scene, Move move, const char *const *ids)
{
  gint64 took[STEPS];

  for (guint i = 0; i < WARM_UP + STEPS; i++)
    {
      const gint64 begun = g_get_monotonic_time ();
      g_autoptr (GError) error = NULL;
      g_autoptr (FpProject) next = move (scene, ids, (FpVec3) { i % 2 == 0 ? 10 : 20, 10, 0 }, &error);
      g_autoptr (FpScene) then = NULL;

      g_assert_no_error (error);
      then = fp_scene_new (next, fp_scene_alternative (scene));
      if (i >= WARM_UP)
        took[i - WARM_UP] = g_get_monotonic_time () - begun;
    }
  qsort (took, STEPS, sizeof *took, by_time);
  return (double) took[STEPS / 2] / 1e3;
}

static GPtrArray *
furnishings (const FpScene *scene)
{
  GPtrArray *ids = g_ptr_array_new ();
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    if (!placed[i].ghost && (fp_item_kind (placed[i].item)->flags & FP_KIND_SURVEY) == 0)
      g_ptr_array_add (ids, (gpointer) fp_item_id (placed[i].item));
  g_ptr_array_add (ids, NULL);
  return ids;
}

int
main (void)
{
  g_autofree char *path = fp_sample_path ("cathedral.footpace");
  g_autoptr (FpProject) project = fp_store_load (path, NULL);
  g_autoptr (FpScene) scene = fp_scene_new (project, fp_project_n_alternatives (project) - 1);
  g_autoptr (GPtrArray) ids = furnishings (scene);
  const char *const single[] = {
    fp_item_id (fp_scene_placed (scene, NULL)[fp_scene_celebrated_altar (scene)].item), NULL
  };
  const double one = time_steps (scene, move_single, single);
  const double all = time_steps (scene, fp_arrange_move, (const char *const *) ids->pdata);

  g_print ("one thing: %.2f ms a step\nall %u furnishings: %.2f ms a step, %.1f times as long; aim: at most %.0f times%s\n",
           one, ids->len - 1, all, all / one, AIM, all / one <= AIM ? "" : " MISSED");
  return all / one <= AIM ? 0 : 1;
}
