/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a change makes of the church is drawn where it would stand, as proposed, and nothing else is. */
#include "church.h"

#include "footpace/change-marks.h"
#include "footpace/setting-out.h"

#define LAYOUT ((FpViewLayout) { .origin = { 100, 100 }, .scale = 100, .clip = FP_BOX_EMPTY })

static FpProject *
church (void)
{
  FpProject *project = church_new (FP_FACING_EAST);
  const ChurchThing thing[] = {
    { "footpace", "steps", NULL, { 0, 8000, 0 }, NULL, 0, { { NULL, 0 } }, NULL },
    { "altar", "altar", "steps", { 0, 8000, 0 }, NULL, 0, { { NULL, 0 } }, NULL },
    { "credence", "credence", NULL, { 4000, 6000, 0 }, NULL, 0, { { NULL, 0 } }, NULL },
  };

  church_floor (&project, "floor", (FpBox) { -6000, -2000, 6000, 10000 }, 0, 1, 0, 0);
  for (guint i = 0; i < G_N_ELEMENTS (thing); i++)
    church_add (&project, &thing[i]);
  return project;
}

static gboolean
has (const GArray *changed, const FpScene *scene, const char *id)
{
  for (guint i = 0; i < changed->len; i++)
    if (g_array_index (changed, guint, i) == (guint) fp_scene_find (scene, id))
      return TRUE;
  return FALSE;
}

/* The altar rises with its steps; the credence stays. */
static void
test_changed (void)
{
  g_autoptr (FpProject) before = church (), after = NULL;
  g_autoptr (FpScene) now = fp_scene_new (before, 0), then = NULL;
  g_autoptr (GArray) changed = NULL, same = fp_changed_things (now, now);

  after = fp_set_out_param (now, "steps", "riser", 170, NULL);
  then = fp_scene_new (after, 0);
  changed = fp_changed_things (now, then);
  g_assert_true (has (changed, then, "steps"));
  g_assert_true (has (changed, then, "altar"));
  g_assert_false (has (changed, then, "credence"));
  g_assert_cmpuint (changed->len, ==, 2);
  g_assert_cmpuint (same->len, ==, 0);
}

/* 500 mm west: 5 mm lower on paper at 1:100, each line on a strip of paper, as proposed. */
static void
test_drawn (void)
{
  g_autoptr (FpProject) before = church (), after = NULL;
  g_autoptr (FpScene) now = fp_scene_new (before, 0), then = NULL;
  g_autoptr (FpProjection) plan = NULL;
  g_autoptr (FpDrawing) drawing = fp_drawing_new (200, 300);
  g_autoptr (GArray) changed = NULL;
  const FpViewLayout layout = LAYOUT;
  const FpPoint *point;
  FpBox box = FP_BOX_EMPTY, plan_box;
  guint n, strips = 0, lines = 0;
  const FpMark *mark;

  after = fp_set_out_move (now, "credence", (FpVec3) { 0, -500, 0 }, NULL);
  then = fp_scene_new (after, 0);
  plan = fp_projection_new (then, FP_VIEW_PLAN);
  changed = fp_changed_things (now, then);
  fp_drawing_add_change (drawing, plan, changed, &layout);
  mark = fp_drawing_marks (drawing, &n);
  point = fp_drawing_points (drawing);
  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_AREA)
      strips++;
    else
      {
        lines++;
        g_assert_cmpint (mark[i].standing, ==, FP_STANDING_PROPOSED);
        g_assert_cmpstr (mark[i].item, ==, "credence");
        for (guint k = 0; k < mark[i].n; k++)
          fp_box_add_point (&box, point[mark[i].first + k]);
      }
  g_assert_cmpuint (lines, >=, 4);
  g_assert_cmpuint (strips, ==, lines);
  plan_box = church_placed (then, "credence")->plan;
  g_assert_cmpfloat_with_epsilon (box.y0, 100 + plan_box.y0 / 100, 1e-6);
  g_assert_cmpfloat_with_epsilon (box.x1, 100 + plan_box.x1 / 100, 1e-6);
  g_assert_cmpfloat_with_epsilon (plan_box.y0, church_placed (now, "credence")->plan.y0 - 500, 1e-6);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/change-marks/changed", test_changed);
  g_test_add_func ("/change-marks/drawn", test_drawn);
  return g_test_run ();
}
