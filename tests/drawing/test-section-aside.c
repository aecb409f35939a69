/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-section-aside.c - a section that is cut off the axis tells of what it shows, and leaves the plan its title */
#include "footpace/drawing.h"

#include "church.h"
#include "crossings.h"
#include "reading.h"

#include <math.h>

#define AT 3000.0

/* Long and narrow, with a gallery in the west; seats for the ministers stand where it is cut, the altar's steps do not. */
static FpScene *
narrow_church (void)
{
  const FpPoint corner[] = { { -4200, -24000 }, { -4200, 9000 }, { 4200, 9000 }, { 4200, -24000 } };
  const FpPoint gallery[] = { { -4200, -24000 }, { 4200, -24000 }, { 4200, -18000 }, { -4200, -18000 } };
  FpProject *project = church_new (FP_FACING_EAST);
  FpScene *scene;

  church_floor (&project, "nave", (FpBox) { -4200, -24000, 4200, 0 }, 0, 0, 0, 0);
  church_floor (&project, "sanctuary", (FpBox) { -4200, 0, 4200, 9000 }, 150, 1, 0, 0);
  church_survey (&project, &(ChurchThing) { .kind = "wall", .id = "walls", .corner = corner, .n_corners = 4,
        .param = { { "closed", 1 }, { "height", 5000 } } });
  church_survey (&project, &(ChurchThing) { .kind = "gallery", .id = "gallery", .corner = gallery, .n_corners = 4,
        .param = { { "level", 3500 }, { "front-side", 3 } } });
  church_add (&project, &(ChurchThing) { .kind = "footpace", .id = "footpace" });
  church_add (&project, &(ChurchThing) { .kind = "altar", .id = "altar", .on = "footpace", .place = { 0, 7000, 0 } });
  church_add (&project, &(ChurchThing) { .kind = "reredos", .id = "reredos", .place = { 0, 8700, 0 } });
  church_add (&project, &(ChurchThing) { .kind = "rail", .id = "rail", .place = { 0, 400, 0 },
        .param = { { "length", 8000 } } });
  church_add (&project, &(ChurchThing) { .kind = "sedilia", .id = "sedilia", .place = { AT, 4000, -90 } });
  scene = fp_scene_new (project, 0);
  fp_project_unref (project);
  return scene;
}

static FpDrawing *
section_new (const FpScene *scene, double at)
{
  const FpSheetSpec spec = { .kind = FP_SHEET_SECTION, .paper = FP_PAPER_A3, .landscape = TRUE,
                             .cut[FP_VIEW_SECTION] = { TRUE, at, FALSE } };
  g_autoptr (GError) error = NULL;
  FpDrawing *drawing = fp_sheet_new (scene, &spec, NULL, &error);

  g_assert_no_error (error);
  return drawing;
}

/* Whether a measure begins or ends at y, or z, of the church. */
static gboolean
measures_from_y (const FpDrawing *drawing, double y)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    {
      const FpStretch *s = mark[i].dimension > 0 ? fp_drawing_stretch (drawing, mark[i].dimension) : NULL;
      if (s != NULL && s->sort == FP_STRETCH_APART && (ABS (s->a.y - y) < 1 || ABS (s->b.y - y) < 1))
        return TRUE;
    }
  return FALSE;
}

/* Through the steps the room before them is measured; beside them there is nothing to measure it to. */
static void
test_measures (void)
{
  g_autoptr (FpScene) scene = narrow_church ();
  g_autoptr (FpDrawing) through = section_new (scene, 100), aside = section_new (scene, AT);
  const double foot = church_placed (scene, "footpace")->plan.y0;

  g_assert_true (measures_from_y (through, foot));
  g_assert_false (measures_from_y (aside, foot));
}

/* The gallery stands far to the west of what the sheet shows. */
static void
test_levels (void)
{
  g_autoptr (FpScene) scene = narrow_church ();
  g_autoptr (FpDrawing) aside = section_new (scene, AT);

  g_assert_true (reading_has_text (aside, "+0.150"));
  g_assert_false (reading_has_text (aside, "+3.500"));
}

static void
test_seats_are_cut (void)
{
  g_autoptr (FpScene) scene = narrow_church ();
  g_autoptr (FpDrawing) aside = section_new (scene, AT);
  guint n, hatched = 0;
  const FpMark *mark = fp_drawing_marks (aside, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_AREA && mark[i].fill == FP_FILL_CUT && mark[i].hatch != 0
        && g_strcmp0 (mark[i].item, "sedilia") == 0)
      hatched++;
  g_assert_cmpuint (hatched, >, 0);
}

/* --- the board ---------------------------------------------------------------------- */

static FpDrawing *
board_new (const FpScene *scene, double at, double width, double height)
{
  const FpCut cut = { TRUE, at, FALSE };
  FpProjection *projection[FP_N_VIEWS];
  FpBoardLayout layout;
  FpDrawing *drawing;
  FpPoint pan;
  double scale;

  for (FpViewId v = FP_VIEW_PLAN; v < FP_N_VIEWS; v++)
    projection[v] = fp_projection_new_cut (scene, v, v == FP_VIEW_SECTION ? &cut : NULL, 0);
  fp_board_fit (scene, NULL, TRUE, width, height, &scale, &pan);
  fp_board_layout (scene, NULL, scale, pan, FP_UNITS_METRIC, &layout);
  drawing = fp_board_draw (projection, &layout, width, height);
  for (guint v = 0; v < FP_N_VIEWS; v++)
    fp_projection_unref (projection[v]);
  return drawing;
}

/* Both letters of the cutting line are whole, and the plan is called what it is, with its north point. */
static void
test_board (void)
{
  static const double cuts[] = { -3000, -1000, 1000, AT, 4000 };
  g_autoptr (FpScene) scene = narrow_church ();

  for (guint c = 0; c < G_N_ELEMENTS (cuts); c++)
    {
      g_autoptr (FpDrawing) board = board_new (scene, cuts[c], 300, 200);
      guint n, letters = 0;
      const FpMark *mark = fp_drawing_marks (board, &n);

      g_test_message ("cut at %g", cuts[c]);
      g_assert_true (reading_has_text (board, "PLAN"));
      g_assert_true (reading_has_text (board, "N"));
      crossings_assert_none (board, -1, "board with a section aside");
      for (guint i = 0; i < n; i++)
        if (mark[i].type == FP_MARK_TEXT && g_str_equal (mark[i].text, "A"))
          {
            const FpBox box = crossings_text_box (&mark[i]);
            g_assert_cmpfloat (box.y0, >=, 0);
            letters++;
          }
      g_assert_cmpuint (letters, ==, 2);
    }
}

/* --- an apse ------------------------------------------------------------------------ */

#define APSE 4500.0 /* its radius, about (0, APSE) */
#define SIDES 13u   /* one of them lies square to the axis */

/* Of a half circle; the altar stands in it. */
static FpScene *
apse_church (void)
{
  FpPoint corner[SIDES + 3] = { { -APSE, -12000 } };
  FpProject *project = church_new (FP_FACING_EAST);
  FpScene *scene;

  for (guint i = 0; i <= SIDES; i++)
    corner[i + 1] = (FpPoint) { -APSE * cos (G_PI * i / SIDES), APSE + APSE * sin (G_PI * i / SIDES) };
  corner[SIDES + 2] = (FpPoint) { APSE, -12000 };
  church_survey (&project, &(ChurchThing) { .kind = "wall", .id = "walls", .corner = corner, .n_corners = SIDES + 3,
        .param = { { "closed", 1 }, { "height", 6000 } } });
  church_add (&project, &(ChurchThing) { .kind = "footpace", .id = "footpace" });
  church_add (&project, &(ChurchThing) { .kind = "altar", .id = "altar", .on = "footpace", .place = { 0, 6500, 0 } });
  church_add (&project, &(ChurchThing) { .kind = "rail", .id = "rail", .place = { 0, 400, 0 },
        .param = { { "length", 8000 } } });
  scene = fp_scene_new (project, 0);
  fp_project_unref (project);
  return scene;
}

static FpDrawing *
apse_sheet (const FpScene *scene, FpSheetKind kind, FpViewId view, double at, gboolean turned)
{
  FpSheetSpec spec = { .kind = kind, .paper = FP_PAPER_A3, .landscape = TRUE };
  g_autoptr (GError) error = NULL;
  FpDrawing *drawing;

  spec.cut[view] = (FpCut) { TRUE, at, turned };
  drawing = fp_sheet_new (scene, &spec, NULL, &error);

  g_assert_no_error (error);
  return drawing;
}

/* Whether a measure of that length has both ends there across the church, or along it; NAN: wherever. */
static gboolean
measures (const FpDrawing *drawing, FpStretchSort sort, gboolean along_x, double length, double at)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    {
      const FpStretch *s = mark[i].dimension > 0 ? fp_drawing_stretch (drawing, mark[i].dimension) : NULL;

      if (s != NULL && s->sort == sort
          && fabs (fabs (along_x ? s->b.x - s->a.x : s->b.y - s->a.y) - length) < 1
          && (isnan (at) || fabs ((along_x ? s->a.y : s->a.x) - at) < 1))
        return TRUE;
    }
  return FALSE;
}

/* Half the width of the polygon at y, beyond the middle of the apse. */
static double
half_width (double y)
{
  double best = 0;

  for (guint i = 0; i < SIDES / 2; i++)
    {
      const double a = G_PI * i / SIDES, b = G_PI * (i + 1) / SIDES;
      const double ya = APSE + APSE * sin (a), yb = APSE + APSE * sin (b);

      if (y >= ya && y <= yb)
        best = APSE * (cos (a) + (cos (b) - cos (a)) * (y - ya) / (yb - ya));
    }
  return best;
}

/* Between the faces that are cut; the wider part behind the viewer is not there.  Seen from the other side it is. */
static void
test_width_in_apse (void)
{
  const double at = APSE + 1800, width = 2 * half_width (at);
  g_autoptr (FpScene) scene = apse_church ();
  g_autoptr (FpDrawing) east = apse_sheet (scene, FP_SHEET_CROSS, FP_VIEW_ELEVATION, at, FALSE);
  g_autoptr (FpDrawing) west = apse_sheet (scene, FP_SHEET_CROSS, FP_VIEW_ELEVATION, at, TRUE);
  g_autoptr (FpDrawing) nave = apse_sheet (scene, FP_SHEET_CROSS, FP_VIEW_ELEVATION, -3000, FALSE);

  g_assert_true (measures (east, FP_STRETCH_WALLS, TRUE, width, at));
  g_assert_false (measures (east, FP_STRETCH_WALLS, TRUE, 2 * APSE, NAN));
  /* Here the narrower room that is cut hides where the wider one ends. */
  g_assert_true (measures (west, FP_STRETCH_WALLS, TRUE, width, at));
  g_assert_false (measures (west, FP_STRETCH_WALLS, TRUE, 2 * APSE, NAN));
  g_assert_true (measures (nave, FP_STRETCH_WALLS, TRUE, 2 * APSE, NAN));
}

/* Likewise along the church, from the rail to the wall that is cut, which lies there where the room is as wide. */
static void
test_depth_in_apse (void)
{
  const double y = APSE + 3000, at = half_width (y), most = APSE + APSE * cos (G_PI / SIDES / 2);
  g_autoptr (FpScene) scene = apse_church ();
  g_autoptr (FpDrawing) axis = apse_sheet (scene, FP_SHEET_SECTION, FP_VIEW_SECTION, 0, FALSE);
  g_autoptr (FpDrawing) aside = apse_sheet (scene, FP_SHEET_SECTION, FP_VIEW_SECTION, at, FALSE);
  const double face = church_placed (scene, "rail")->plan.y1;

  g_assert_true (measures (axis, FP_STRETCH_APART, FALSE, most - face, NAN));
  g_assert_true (measures (aside, FP_STRETCH_APART, FALSE, y - face, at));
  g_assert_false (measures (aside, FP_STRETCH_APART, FALSE, most - face, NAN));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/section-aside/measures", test_measures);
  g_test_add_func ("/section-aside/levels", test_levels);
  g_test_add_func ("/section-aside/seats-are-cut", test_seats_are_cut);
  g_test_add_func ("/section-aside/board", test_board);
  g_test_add_func ("/section-aside/width-in-apse", test_width_in_apse);
  g_test_add_func ("/section-aside/depth-in-apse", test_depth_in_apse);
  return g_test_run ();
}
