/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-names.c - what is named on the plan, and what that takes nothing from */
#include "reading.h"

#include "church.h"

static void
add_all (FpProject **project)
{
  church_floor (project, "floor", (FpBox) { -5000, -8000, 5000, 6500 }, 0, 1, 0, 0);
  church_survey (project, &(ChurchThing) { .kind = "pews", .id = "pews", .place = { 0, -3500, 0 }, .param = { { "rows", 4 }, { "length", 6000 } } });
  church_add (project, &(ChurchThing) { .kind = "footpace", .id = "footpace" });
  church_add (project, &(ChurchThing) { .kind = "altar", .id = "altar", .on = "footpace", .place = { 0, 4200, 0 } });
}

static FpDrawing *
plan_of (const FpProject *project, double scale, gboolean no_seat_names)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpProjection) projection = fp_projection_new (scene, FP_VIEW_PLAN);
  FpDrawing *drawing = fp_drawing_new (700, 900);
  const FpViewLayout layout = { .origin = { 350, 450 }, .scale = scale, .clip = FP_BOX_EMPTY, .dimensions = TRUE, .levels = TRUE, .labels = TRUE,
                                .no_seat_names = no_seat_names };

  fp_drawing_add_view (drawing, projection, &layout);
  return drawing;
}

static const FpMark *
name_in (const FpDrawing *drawing, const char *text)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_TEXT && g_str_equal (mark[i].text, text))
      return &mark[i];
  return NULL;
}

/* Their names stand beside them: over what is under them they would be read as the name of that. */
static void
test_overhead (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  g_autoptr (FpDrawing) drawing = NULL;
  const FpMark *canopy;

  add_all (&project);
  church_add (&project, &(ChurchThing) { .kind = "canopy", .id = "canopy", .place = { 0, 4200, 0 }, .param = { { "form", 1 }, { "width", 3000 }, { "depth", 1800 } } });
  church_add (&project, &(ChurchThing) { .kind = "sanctuary-lamp", .id = "lamp", .name = "Lamp", .place = { -3500, 2000, 0 } });
  drawing = plan_of (project, 50, FALSE);
  canopy = name_in (drawing, "Canopy");
  g_assert_nonnull (canopy);
  g_assert_true (canopy->at.x < 350 - 1500 / 50.0 || canopy->at.x > 350 + 1500 / 50.0 || canopy->at.y < 450 + 3300 / 50.0
                 || canopy->at.y > 450 + 5100 / 50.0);
  g_assert_nonnull (name_in (drawing, "Lamp"));
}

/* Where the scale has room for them. */
static void
test_small_things (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  g_autoptr (FpDrawing) large = NULL, small = NULL;

  add_all (&project);
  church_add (&project, &(ChurchThing) { .kind = "hand-bell", .id = "bell", .name = "Bell", .on = "footpace", .place = { 1400, -400, 0 } });
  church_add (&project, &(ChurchThing) { .kind = "missal-stand", .id = "stand", .on = "altar", .place = { 600, 0, 0 } });
  large = plan_of (project, 25, FALSE);
  small = plan_of (project, 100, FALSE);
  g_assert_nonnull (name_in (large, "Bell"));
  g_assert_nonnull (name_in (large, "Missal stand"));
  g_assert_null (name_in (small, "Bell"));
  g_assert_null (name_in (small, "Missal stand"));
}

/* A cloth is not told from the mensa on a plan, so neither name nor dimensions know of it. */
static void
test_cloths (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  g_autoptr (FpDrawing) bare = NULL, covered = NULL;
  guint n_bare, n_covered;

  add_all (&project);
  bare = plan_of (project, 50, FALSE);
  church_add (&project, &(ChurchThing) { .kind = "altar-cloths", .id = "cloths", .on = "altar" });
  covered = plan_of (project, 50, FALSE);
  g_assert_nonnull (name_in (bare, "Altar"));
  g_assert_nonnull (name_in (covered, "Altar"));
  g_assert_cmpfloat (name_in (covered, "Altar")->at.x, ==, name_in (bare, "Altar")->at.x);
  g_assert_cmpfloat (name_in (covered, "Altar")->at.y, ==, name_in (bare, "Altar")->at.y);
  fp_drawing_marks (bare, &n_bare);
  fp_drawing_marks (covered, &n_covered);
  g_assert_cmpuint (n_covered, ==, n_bare);
}

/* What is drawn over the seats takes the names of the seats alone. */
static void
test_over_seats (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  g_autoptr (FpDrawing) all = NULL, some = NULL;

  add_all (&project);
  all = plan_of (project, 50, FALSE);
  some = plan_of (project, 50, TRUE);
  g_assert_true (reading_has_part (all, "Pews"));
  g_assert_false (reading_has_part (some, "Pews"));
  g_assert_nonnull (name_in (some, "Altar"));
}

/* A ramp tells how steep it is, as a floor does. */
static void
test_ramp (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  g_autoptr (FpDrawing) before = NULL, after = NULL;

  add_all (&project);
  before = plan_of (project, 50, FALSE);
  church_add (&project, &(ChurchThing) { .kind = "ramp", .id = "ramp", .place = { -4000, -7000, 0 }, .param = { { "slope", 1.0 / 14 } } });
  after = plan_of (project, 50, FALSE);
  g_assert_false (reading_has_text (before, "1:14"));
  g_assert_true (reading_has_text (after, "1:14"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/names/overhead", test_overhead);
  g_test_add_func ("/names/small-things", test_small_things);
  g_test_add_func ("/names/cloths", test_cloths);
  g_test_add_func ("/names/over-seats", test_over_seats);
  g_test_add_func ("/names/ramp", test_ramp);
  return g_test_run ();
}
