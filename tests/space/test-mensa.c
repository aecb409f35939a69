/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-mensa.c - cloths cover what of a mensa is free: the depth that a gradine leaves, the outline of a tabernacle
 *
 * Expected values follow from geometry alone; an altar of 2700 by 900.
 */
#include "footpace/mensa.h"

#include <string.h>

#define assert_near(a, b) g_assert_cmpfloat_with_epsilon (a, b, 1e-9)

static const FpBox mensa = { -1350, -450, 1350, 450 };

static FpMensaFree
free_of (FpRole role, FpBox plan)
{
  FpMensaFast fast = { 0 };
  FpMensaFree out;

  g_assert_true (fp_mensa_holds_fast (role));
  fp_mensa_fast_add (&fast, role, &plan);
  fp_mensa_free_of (&mensa, &fast, &out);
  return out;
}

static void
test_plain (void)
{
  FpMensaFree out;

  fp_mensa_free_of (&mensa, &(FpMensaFast) { 0 }, &out);
  g_assert_cmpint (memcmp (&out.free, &mensa, sizeof mensa), ==, 0);
  g_assert_true (fp_box_is_empty (&out.notch) && !out.stops);
  g_assert_false (fp_mensa_holds_fast (FP_ROLE_CANDLES));
}

static void
test_gradine (void)
{
  FpMensaFree out = free_of (FP_ROLE_GRADINE, (FpBox) { -1100, 250, 1100, 450 });

  assert_near (out.free.y0, -450);
  assert_near (out.free.y1, 250);
  assert_near (out.free.x1 - out.free.x0, 2700);
  g_assert_true (fp_box_is_empty (&out.notch) && out.stops);
  assert_near (out.beside, 250);
  /* At the other edge they lie behind it; a short one they go round. */
  out = free_of (FP_ROLE_GRADINE, (FpBox) { -1350, -450, 1350, -250 });
  assert_near (out.free.y0, -250);
  assert_near (out.free.y1, 450);
  out = free_of (FP_ROLE_GRADINE, (FpBox) { -700, 250, 700, 450 });
  g_assert_false (out.stops);
  assert_near (out.notch.x1 - out.notch.x0, 1400 + 2 * FP_MENSA_EASE);
  /* It leaves nothing. */
  out = free_of (FP_ROLE_GRADINE, mensa);
  g_assert_cmpint (memcmp (&out.free, &mensa, sizeof mensa), ==, 0);
}

static void
test_tabernacle (void)
{
  FpMensaFree out = free_of (FP_ROLE_TABERNACLE, (FpBox) { -225, -50, 225, 400 });

  g_assert_cmpint (memcmp (&out.free, &mensa, sizeof mensa), ==, 0);
  assert_near (out.notch.x0, -225 - FP_MENSA_EASE);
  assert_near (out.notch.x1, 225 + FP_MENSA_EASE);
  assert_near (out.notch.y0, -50 - FP_MENSA_EASE);
  assert_near (out.notch.y1, 450); /* open to the back */
  /* As wide as the mensa it is as a gradine. */
  out = free_of (FP_ROLE_TABERNACLE, (FpBox) { -1100, 50, 1100, 450 });
  g_assert_true (out.stops);
  assert_near (out.free.y1, 50);
}

/* --- in a scene ---------------------------------------------------------------------- */

static FpProject * /* takes @project */
add (FpProject *project, const char *kind_id, const char *on, FpPlace place)
{
  g_autoptr (GError) error = NULL;
  double param[FP_PARAM_MAX];
  const FpKind *kind = fp_kind_find (kind_id);
  FpItemInit init = { .id = kind_id, .kind = kind, .on = on, .place = place, .param = param };
  g_autoptr (FpItem) item = NULL;
  FpProject *next;

  fp_kind_defaults (kind, param);
  item = fp_item_new (&init, &error);
  g_assert_no_error (error);
  next = fp_project_with_item (project, 0, item, &error);
  g_assert_no_error (error);
  fp_project_unref (project);
  return next;
}

static void
assert_agree (const FpProject *project)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  const FpPlaced *placed = fp_scene_placed (scene, NULL);
  const int altar = fp_scene_find (scene, "altar"), cloths = fp_scene_find (scene, "altar-cloths");
  const FpForm *form = &placed[cloths].form;
  FpMensaFree out;

  fp_mensa_free (scene, (guint) altar, &out);
  assert_near (form->core.x0, out.free.x0);
  assert_near (form->core.y0, out.free.y0);
  assert_near (form->core.x1, out.free.x1);
  assert_near (form->core.y1, out.free.y1);
  g_assert_cmpint (form->notch.x1 > form->notch.x0, ==, !fp_box_is_empty (&out.notch));
  if (!fp_box_is_empty (&out.notch))
    {
      assert_near (form->notch.x0, out.notch.x0);
      assert_near (form->notch.y0, out.notch.y0);
      assert_near (form->notch.y1, out.notch.y1);
    }
}

/* Cloths on the board keep off what stands there, however the altar is turned; without it they cover the whole. */
static void
test_scene (void)
{
  const FpBrief brief = { .title = "", .place = "", .client = "", .author = "", .note = "", .ministers = 1, .percentile = 50 };

  for (guint i = 0; i < 3; i++)
    {
      static const char *const stands[] = { NULL, "gradine", "tabernacle" };
      g_autoptr (FpProject) project = fp_project_new (&brief);

      project = add (project, "altar", NULL, (FpPlace) { 400, 4000, 30 });
      project = add (project, "altar-cloths", "altar", (FpPlace) { 0, 0, 0 });
      if (stands[i] != NULL)
        project = add (project, stands[i], "altar", (FpPlace) { 20, -10, 0 });
      assert_agree (project);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/mensa/plain", test_plain);
  g_test_add_func ("/mensa/gradine", test_gradine);
  g_test_add_func ("/mensa/tabernacle", test_tabernacle);
  g_test_add_func ("/mensa/scene", test_scene);
  return g_test_run ();
}
