/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-walls-shown.c - a wall at which a view ends keeps its thickness and its hatch */
#include "footpace/drawing.h"

#include "church.h"

#define HAIR  1e-6
#define THICK 600.0

/* A nave from @west_g to @west_e (inner faces), a chancel of 9 m, and a rail that stands out into the nave. */
static FpScene *
church_with_rail (double west_g, double west_e)
{
  const FpPoint corner[] = { { west_g, -12000 }, { west_g, 0 },     { -4500, 0 },    { -4500, 8000 },
                             { 4500, 8000 },     { 4500, 0 },       { west_e, 0 },   { west_e, -12000 } };
  FpProject *project = church_new (FP_FACING_EAST);
  FpScene *scene;

  church_floor (&project, "nave", (FpBox) { west_g, -12000, west_e, 0 }, 0, 0, 0, 0);
  church_floor (&project, "chancel", (FpBox) { -4500, 0, 4500, 8000 }, 300, 1, 0, 0);
  church_survey (&project, &(ChurchThing) { .kind = "wall", .id = "walls", .corner = corner, .n_corners = 8,
        .param = { { "closed", 1 }, { "height", 8000 }, { "thickness", THICK } } });
  church_add (&project, &(ChurchThing) { .kind = "footpace", .id = "footpace" });
  church_add (&project, &(ChurchThing) { .kind = "altar", .id = "altar", .on = "footpace", .place = { 0, 6500, 0 } });
  church_add (&project, &(ChurchThing) { .kind = "rail", .id = "rail", .place = { 0, -700, 0 },
        .param = { { "length", 8000 } } });
  scene = fp_scene_new (project, 0);
  fp_project_unref (project);
  return scene;
}

/* All that is hatched as cut of the walls, mm of the church across the view from the axis. */
static FpBox
hatched (const FpDrawing *drawing, double scale, double *axis)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  const FpPoint *pt = fp_drawing_points (drawing);
  FpBox box = FP_BOX_EMPTY;

  *axis = 0;
  for (guint i = 0; i < n; i++)
    {
      if (mark[i].type == FP_MARK_LINE && mark[i].pen == FP_PEN_AXIS)
        *axis = pt[mark[i].first].x;
      if (mark[i].type != FP_MARK_AREA || mark[i].fill != FP_FILL_CUT || mark[i].hatch == 0
          || g_strcmp0 (mark[i].item, "walls") != 0)
        continue;
      const FpBox one = fp_outline_box (pt + mark[i].first, mark[i].n);
      fp_box_add_box (&box, &one);
    }
  g_assert_cmpfloat (*axis, >, 0);
  return (FpBox) { (box.x0 - *axis) * scale, box.y0, (box.x1 - *axis) * scale, box.y1 };
}

static void
check (const FpScene *scene, FpSheetKind kind, FpPaper paper, double gospel, double epistle)
{
  const FpSheetSpec spec = { .kind = kind, .paper = paper, .landscape = TRUE };
  g_autoptr (GError) error = NULL;
  double scale, axis;
  g_autoptr (FpDrawing) drawing = fp_sheet_new (scene, &spec, &scale, &error);
  FpBox box;

  g_assert_no_error (error);
  box = hatched (drawing, scale, &axis);
  g_test_message ("%s on %s at 1:%g: %g to %g", fp_sheet_id (kind), fp_paper_id (paper), scale, box.x0, box.x1);
  g_assert_cmpfloat_with_epsilon (box.x0, gospel - THICK, HAIR * scale);
  g_assert_cmpfloat_with_epsilon (box.x1, epistle + THICK, HAIR * scale);
}

/* The inner faces lie exactly as far from the ministers' floor as a view may show of the nave. */
static void
test_at_the_edge (void)
{
  g_autoptr (FpScene) scene = church_with_rail (-6000, 6000);

  for (int paper = FP_PAPER_A4; paper <= FP_PAPER_A2; paper++)
    {
      check (scene, FP_SHEET_ELEVATION, (FpPaper) paper, -6000, 6000);
      check (scene, FP_SHEET_PLAN, (FpPaper) paper, -6000, 6000);
    }
}

/* One wall within, the other a little beyond. */
static void
test_uneven (void)
{
  g_autoptr (FpScene) scene = church_with_rail (-5700, 6400);

  for (int paper = FP_PAPER_A4; paper <= FP_PAPER_A2; paper++)
    {
      check (scene, FP_SHEET_ELEVATION, (FpPaper) paper, -5700, 6400);
      check (scene, FP_SHEET_PLAN, (FpPaper) paper, -5700, 6400);
    }
}

/* Walls that stand far off are shown where the paper has room for them at the same scale. */
static void
test_room_to_spare (void)
{
  g_autoptr (FpScene) scene = church_with_rail (-7500, 8000);

  check (scene, FP_SHEET_ELEVATION, FP_PAPER_A2, -7500, 8000);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/walls-shown/at-the-edge", test_at_the_edge);
  g_test_add_func ("/walls-shown/uneven", test_uneven);
  g_test_add_func ("/walls-shown/room-to-spare", test_room_to_spare);
  return g_test_run ();
}
