/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Whatever a drafter takes over from what it drew last, it draws the scene that it is given. */
#include "drafter.h"

#include "samples.h"
#include "waiting.h"

#include "footpace/setting-out.h"
#include "footpace/store.h"

#include <string.h>

#define STEPS 6

typedef struct
{
  const FpScene *scene; /* that is waited for */
  FpDraftHow     how;
  guint          times;
} Expected;

static void
assert_same (const FpProjection *a, const FpProjection *b)
{
  guint n, m;
  const FpProjectedLine *p = fp_projection_lines (a, &n), *q = fp_projection_lines (b, &m);

  g_assert_cmpuint (n, ==, m);
  g_assert_true (memcmp (p, q, n * sizeof *p) == 0);
}

static void
receive (FpProjection *const *projection, gpointer data)
{
  Expected *expected = data;

  for (FpViewId v = 0; v < FP_N_VIEWS; v++)
    {
      g_autoptr (FpProjection) anew = fp_projection_new_cut (expected->scene, v, &expected->how.cut[v],
                                                             expected->how.hidden);
      g_assert_true (fp_projection_scene (projection[v]) == expected->scene);
      assert_same (projection[v], anew);
    }
  expected->times++;
}

static FpScene *
moved (const FpScene *scene, guint step)
{
  g_autoptr (GError) error = NULL;
  const FpVec3 by = { 10, step % 2 == 0 ? 20 : -10, 0 };
  g_autoptr (FpProject) next = fp_set_out_move (scene, step % 2 == 0 ? "credence" : "altar", by, &error);

  g_assert_no_error (error);
  return fp_scene_new (next, fp_scene_alternative (scene));
}

static void
test_draws_each (void)
{
  g_autofree char *path = fp_sample_path ("parish.footpace");
  g_autoptr (FpProject) project = fp_store_load (path, NULL);
  g_autoptr (FpScene) scene = fp_scene_new (project, fp_project_n_alternatives (project) - 1);
  Expected expected = { NULL, { 0 }, 0 };
  g_autoptr (FpDrafter) drafter = fp_drafter_new (receive, &expected);

  for (guint i = 0; i < STEPS; i++)
    {
      FpScene *next = moved (scene, i);
      fp_scene_unref (scene);
      expected.scene = scene = next;
      expected.how.hidden = i < STEPS / 2 ? 0 : 1u << FP_SHOW_SEATS;
      expected.how.cut[FP_VIEW_SECTION] = (FpCut) { i + 1 == STEPS, 500, FALSE };
      fp_drafter_draft (drafter, scene, &expected.how);
      WAIT_FOR (expected.times == i + 1);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drafter/each", test_draws_each);
  return g_test_run ();
}
