/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sunlight on paper: hatched with its holes on the plan, and a shaft up to the window in both views; by hand. */
#include "footpace/lettering.h"
#include "footpace/sun-marks.h"

#include <math.h>

#define LAYOUT ((FpViewLayout) { .origin = { 100, 50 }, .scale = 100, .clip = FP_BOX_EMPTY })

/* Light of 2000 by 1000 on the floor with shade of 400 by 400 in it; the window, as wide, 3000 farther east, 3000 to 4000 up. */
static FpVec3 light[] = { { -1000, 0, 0 }, { 1000, 0, 0 }, { 1000, 1000, 0 }, { -1000, 1000, 0 } };
static FpVec3 window[] = { { -1000, 4000, 4000 }, { 1000, 4000, 4000 }, { 1000, 4000, 3000 }, { -1000, 4000, 3000 } };
static FpVec3 shade[] = { { -200, 300, 0 }, { -200, 700, 0 }, { 200, 700, 0 }, { 200, 300, 0 } };
static FpVec3 over[] = { { -200, 4000, 3700 }, { -200, 4000, 3300 }, { 200, 4000, 3300 }, { 200, 4000, 3700 } };

static GArray *
patches_new (void)
{
  GArray *patches = g_array_new (FALSE, FALSE, sizeof (FpSunPatch));
  const FpSunPatch patch[] = { { 3, FALSE, light, window, 4 }, { 3, TRUE, shade, over, 4 } };

  g_array_append_vals (patches, patch, 2);
  return patches;
}

static const FpMark *
only_mark (const FpDrawing *drawing, FpMarkType type, FpPen pen, guint *count)
{
  const FpMark *found = NULL;
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  *count = 0;
  for (guint i = 0; i < n; i++)
    if (mark[i].type == type && mark[i].pen == pen)
      {
        found = &mark[i];
        ++*count;
      }
  return found;
}

static double
area_of (const FpDrawing *drawing, const FpMark *mark)
{
  return fabs (fp_outline_area (fp_drawing_points (drawing) + mark->first, mark->n));
}

static FpBox
box_of (const FpDrawing *drawing, const FpMark *mark)
{
  return fp_outline_box (fp_drawing_points (drawing) + mark->first, mark->n);
}

/* 20 by 10 mm of paper less 4 by 4: the hole runs the other way, so that slits take its area away. */
static void
test_floor (void)
{
  g_autoptr (FpDrawing) drawing = fp_drawing_new (200, 200);
  g_autoptr (GArray) patches = patches_new ();
  guint n;

  fp_drawing_add_sun_floor (drawing, patches, &LAYOUT);
  const FpMark *mark = only_mark (drawing, FP_MARK_AREA, FP_PEN_HATCH, &n);
  g_assert_cmpuint (n, ==, 1);
  g_assert_cmpfloat (mark->hatch, >, 0);
  g_assert_cmpint (mark->view, ==, FP_VIEW_PLAN);
  g_assert_cmpfloat_with_epsilon (area_of (drawing, mark), 200 - 16, 1e-9);
}

/* On the plan from y = 0 to the window at 4000; its outline is that of both ends together. */
static void
test_shaft_on_plan (void)
{
  g_autoptr (FpDrawing) drawing = fp_drawing_new (200, 200);
  g_autoptr (GArray) patches = patches_new ();
  guint n;

  fp_drawing_add_sun_shafts (drawing, patches, FP_VIEW_PLAN, &LAYOUT);
  const FpMark *shaft = only_mark (drawing, FP_MARK_LINE, FP_PEN_GUIDE, &n);
  const FpBox box = box_of (drawing, shaft);
  g_assert_cmpuint (n, ==, 1);
  g_assert_true (shaft->closed);
  g_assert_cmpfloat_with_epsilon (box.x0, 90, 1e-9);
  g_assert_cmpfloat_with_epsilon (box.x1, 110, 1e-9);
  g_assert_cmpfloat_with_epsilon (box.y0, 50, 1e-9);
  g_assert_cmpfloat_with_epsilon (box.y1, 90, 1e-9);
  only_mark (drawing, FP_MARK_LINE, FP_PEN_EDGE, &n);
  g_assert_cmpuint (n, ==, 2); /* the light, and the shade in it */
}

/* In section a parallelogram: 10 mm on the floor, 10 mm up the window, whose foot is 30 mm up and 30 from the light. East is
 * on the left.  Its area by its corners (0, 0), (-10, 0), (-40, 30), (-40, 40): 350. */
static void
test_shaft_in_section (void)
{
  g_autoptr (FpDrawing) drawing = fp_drawing_new (200, 200);
  g_autoptr (GArray) patches = patches_new ();
  guint n;

  fp_drawing_add_sun_shafts (drawing, patches, FP_VIEW_SECTION, &LAYOUT);
  const FpMark *shaft = only_mark (drawing, FP_MARK_LINE, FP_PEN_EDGE, &n);
  g_assert_cmpuint (n, ==, 1);
  g_assert_cmpuint (shaft->n, ==, 4);
  g_assert_cmpfloat_with_epsilon (box_of (drawing, shaft).x0, 60, 1e-9);
  g_assert_cmpfloat_with_epsilon (box_of (drawing, shaft).x1, 100, 1e-9);
  g_assert_cmpfloat_with_epsilon (box_of (drawing, shaft).y1, 90, 1e-9);
  g_assert_cmpfloat_with_epsilon (area_of (drawing, shaft), 350, 1e-9);
}

/* The arrow flies from the sun, in the south-east, to the north point. */
static void
test_sun_point (void)
{
  g_autoptr (FpDrawing) drawing = fp_drawing_new (200, 200);
  const double reach = fp_drawing_add_sun_point (drawing, (FpPoint) { 100, 100 }, 4, 90, (FpVec3) { 0.6, 0.8, 0 });
  guint n;
  const FpMark *sun = only_mark (drawing, FP_MARK_CIRCLE, FP_PEN_OUTLINE, &n);

  g_assert_cmpuint (n, ==, 1);
  g_assert_cmpfloat_with_epsilon ((sun->at.x - 100) / (sun->at.y - 100), 0.75, 1e-9);
  g_assert_cmpfloat_with_epsilon (hypot (sun->at.x - 100, sun->at.y - 100) + sun->radius, reach, 1e-9);

  g_autoptr (FpDrawing) overhead = fp_drawing_new (200, 200);
  fp_drawing_add_sun_point (overhead, (FpPoint) { 100, 100 }, 4, 90, (FpVec3) { 0, 0, 1 });
  g_assert_null (only_mark (overhead, FP_MARK_CIRCLE, FP_PEN_OUTLINE, &n));
}

/* At 1:100 (x, y) = (500, -1000) lies 5 mm right and 10 mm below the origin. A minister's dot has a ring about it. */
static void
test_eyes (void)
{
  g_autoptr (FpDrawing) drawing = fp_drawing_new (200, 200);
  guint n;

  fp_drawing_add_sun_eye (drawing, (FpVec3) { 500, -1000, 1600 }, FALSE, &LAYOUT);
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  g_assert_cmpuint (n, ==, 1);
  g_assert_cmpint (mark->fill, ==, FP_FILL_INK);
  g_assert_cmpfloat_with_epsilon (mark->at.x, LAYOUT.origin.x + 5, 1e-9);
  g_assert_cmpfloat_with_epsilon (mark->at.y, LAYOUT.origin.y - 10, 1e-9);
  fp_drawing_add_sun_eye (drawing, (FpVec3) { 0, 0, 0 }, TRUE, &LAYOUT);
  mark = fp_drawing_marks (drawing, &n);
  g_assert_cmpuint (n, ==, 3);
  g_assert_cmpint (mark[2].fill, ==, FP_FILL_NONE);
  g_assert_cmpfloat (mark[2].radius, >, mark[1].radius);
}

/* Words stand in the box, from its top down, none over another. */
static void
test_key (void)
{
  g_autoptr (FpDrawing) drawing = fp_drawing_new (200, 200);
  const FpBox box = { 20, 0, 90, 150 };
  double last = box.y1;
  guint n, words = 0;

  fp_drawing_add_sun_key (drawing, &box);
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_TEXT)
      {
        g_assert_cmpfloat (mark[i].at.y + mark[i].height, <, last);
        g_assert_cmpfloat (mark[i].at.x, >, box.x0);
        g_assert_cmpfloat (mark[i].at.x + fp_lettering_width (mark[i].text, mark[i].height), <, box.x1);
        last = mark[i].at.y;
        words++;
      }
  g_assert_cmpuint (words, ==, 4);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sun-marks/floor", test_floor);
  g_test_add_func ("/sun-marks/shaft-on-plan", test_shaft_on_plan);
  g_test_add_func ("/sun-marks/shaft-in-section", test_shaft_in_section);
  g_test_add_func ("/sun-marks/sun-point", test_sun_point);
  g_test_add_func ("/sun-marks/eyes", test_eyes);
  g_test_add_func ("/sun-marks/key", test_key);
  return g_test_run ();
}
