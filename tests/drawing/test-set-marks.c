/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-set-marks.c - what a drawing shows of a church that is set for a celebration
 *
 * What is veiled in Passiontide, and its colour: src/space/setting-table.c.  The order of lighting: order.h.
 */
#include "reading.h"

#include "church.h"

#include <math.h>

static FpScene *
scene_new (void)
{
  FpProject *project = church_new (FP_FACING_EAST);
  FpScene *scene;

  church_floor (&project, "floor", (FpBox) { -5000, -4000, 5000, 6500 }, 0, 1, 0, 0);
  church_add (&project, &(ChurchThing) { .kind = "footpace", .id = "footpace" });
  church_add (&project, &(ChurchThing) { .kind = "altar", .id = "altar", .on = "footpace", .place = { 0, 4200, 0 } });
  church_add (&project, &(ChurchThing) { .kind = "gradine", .id = "gradine", .on = "altar" });
  church_add (&project, &(ChurchThing) { .kind = "frontal", .id = "frontal", .on = "altar" });
  church_add (&project, &(ChurchThing) { .kind = "crucifix", .id = "crucifix", .on = "gradine" });
  church_add (&project, &(ChurchThing) { .kind = "candlesticks", .id = "candlesticks", .on = "gradine" });
  church_add (&project, &(ChurchThing) { .kind = "statue", .id = "statue", .place = { 2500, 4000, 0 } });
  scene = fp_scene_new (project, 0);
  fp_project_unref (project);
  return scene;
}

static FpDrawing *
drawing_new (const FpScene *scene, FpViewId view, double scale, gboolean labels)
{
  g_autoptr (FpProjection) projection = fp_projection_new (scene, view);
  FpDrawing *drawing = fp_drawing_new (400, 400);
  const FpViewLayout layout = { .origin = { 200, 100 }, .scale = scale, .clip = FP_BOX_EMPTY, .dimensions = labels, .levels = labels,
                                .labels = labels };

  fp_drawing_add_view (drawing, projection, &layout);
  return drawing;
}

/* The hatches in which a thing lies that is not cut: 0 to 2 of them. */
static guint
hatches (const FpDrawing *drawing, const char *item, double turn[2])
{
  guint n, found = 0;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_AREA && mark[i].fill == FP_FILL_NONE && mark[i].pen == FP_PEN_HATCH
        && g_strcmp0 (mark[i].item, item) == 0 && found < 2)
      turn[found++] = mark[i].hatch;
  return found;
}

static FpPoint
middle_of (const FpDrawing *drawing, const char *text)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_TEXT && g_str_equal (mark[i].text, text) && mark[i].height < 2)
      return mark[i].at;
  g_error ("\"%s\" is not lettered", text);
}

/* --- tests ------------------------------------------------------------------ */

static void
test_veils (void)
{
  g_autoptr (FpScene) whole = scene_new ();
  g_autoptr (FpScene) set = fp_scene_new_set (whole, FP_CELEBRATION_PASSIONTIDE);
  double turn[2];

  for (FpViewId view = FP_VIEW_PLAN; view < FP_N_VIEWS; view++)
    {
      g_autoptr (FpDrawing) drawing = drawing_new (set, view, 50, TRUE), plain = drawing_new (whole, view, 50, TRUE);

      g_assert_cmpuint (hatches (drawing, "crucifix", turn), ==, 1);
      g_assert_cmpfloat (turn[0], ==, 45); /* violet, after Petra Sancta */
      g_assert_cmpuint (hatches (drawing, "statue", turn), ==, 1);
      g_assert_cmpuint (hatches (drawing, "candlesticks", turn), ==, 0);
      g_assert_cmpuint (hatches (plain, "crucifix", turn), ==, 0);
      g_assert_true (reading_has_text (drawing, "veiled, violet") == (view != FP_VIEW_PLAN));
      g_assert_false (reading_has_part (plain, "veiled"));
    }
}

/* No veil without its thing's body: as far across as the arms of the cross, and not on the base of the statue. */
static void
test_drape (void)
{
  g_autoptr (FpScene) whole = scene_new ();
  g_autoptr (FpScene) set = fp_scene_new_set (whole, FP_CELEBRATION_PASSIONTIDE);
  g_autoptr (FpDrawing) drawing = drawing_new (set, FP_VIEW_ELEVATION, 50, FALSE);
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  const FpPoint *pt = fp_drawing_points (drawing);

  for (guint i = 0; i < n; i++)
    {
      FpBox box = FP_BOX_EMPTY;

      if (mark[i].type != FP_MARK_AREA || mark[i].fill != FP_FILL_NONE || mark[i].pen != FP_PEN_HATCH)
        continue;
      for (guint k = 0; k < mark[i].n; k++)
        fp_box_add_point (&box, pt[mark[i].first + k]);
      if (g_str_equal (mark[i].item, "crucifix"))
        g_assert_cmpfloat_with_epsilon ((box.x1 - box.x0) * 50, 450, 1e-6);
      else
        g_assert_cmpfloat ((box.y0 - 100) * 50, >, 500);
    }
}

/* The first is the innermost on the Epistle side; the last the outermost on the other. */
static void
test_numbers (void)
{
  g_autoptr (FpScene) whole = scene_new ();
  g_autoptr (FpScene) set = fp_scene_new_set (whole, FP_CELEBRATION_SUNG);
  g_autoptr (FpDrawing) drawing = drawing_new (set, FP_VIEW_ELEVATION, 25, TRUE);
  g_autoptr (FpDrawing) plain = drawing_new (whole, FP_VIEW_ELEVATION, 25, TRUE);
  g_autoptr (GArray) lights = fp_scene_lights (set);

  g_assert_cmpuint (lights->len, ==, 6);
  for (guint i = 0; i < lights->len; i++)
    {
      const FpLight *light = &g_array_index (lights, FpLight, i);
      gboolean found = FALSE;

      for (guint number = 1; number <= 6; number++)
        {
          g_autofree char *text = g_strdup_printf ("%u", number);
          const FpPoint at = middle_of (drawing, text);

          found |= fabs (at.x - (200 + light->at.x / 25)) < 0.1 && at.y > 100 + light->at.z / 25;
        }
      g_assert_true (found);
    }
  g_assert_cmpfloat (middle_of (drawing, "1").x, >, 200);
  g_assert_cmpfloat (middle_of (drawing, "1").x, <, middle_of (drawing, "3").x);
  g_assert_cmpfloat (middle_of (drawing, "6").x, <, middle_of (drawing, "4").x);
  g_assert_cmpfloat (middle_of (drawing, "4").x, <, 200);
  g_assert_true (reading_has_part (drawing, "candles numbered as one server lights them"));
  g_assert_false (reading_has_part (plain, "candles numbered"));
}

/* Told in words, so that it is told without ink; where no rule has one it is that of the day. */
static void
test_frontal (void)
{
  static const struct { FpCelebration one; const char *text; } rows[] = {
    { FP_CELEBRATION_PASSIONTIDE, "violet" }, { FP_CELEBRATION_REQUIEM, "black" }, { FP_CELEBRATION_SUNG, "colour of the day" },
  };
  g_autoptr (FpScene) whole = scene_new ();

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (FpScene) set = fp_scene_new_set (whole, rows[i].one);
      g_autoptr (FpDrawing) drawing = drawing_new (set, FP_VIEW_ELEVATION, 50, TRUE);

      g_assert_cmpfloat_with_epsilon (middle_of (drawing, rows[i].text).x, 200, 1e-6);
    }
}

/* Where lettering is left out, or the scale has no room for it, the veils stay. */
static void
test_without_words (void)
{
  g_autoptr (FpScene) whole = scene_new ();
  g_autoptr (FpScene) set = fp_scene_new_set (whole, FP_CELEBRATION_PASSIONTIDE);
  g_autoptr (FpDrawing) mute = drawing_new (set, FP_VIEW_ELEVATION, 50, FALSE), small = drawing_new (set, FP_VIEW_ELEVATION, 200, TRUE);
  double turn[2];

  g_assert_cmpuint (hatches (mute, "crucifix", turn), ==, 1);
  g_assert_cmpuint (hatches (small, "crucifix", turn), ==, 1);
  g_assert_false (reading_has_part (mute, "veiled"));
  g_assert_false (reading_has_part (small, "veiled"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/set-marks/veils", test_veils);
  g_test_add_func ("/set-marks/drape", test_drape);
  g_test_add_func ("/set-marks/numbers", test_numbers);
  g_test_add_func ("/set-marks/frontal", test_frontal);
  g_test_add_func ("/set-marks/without-words", test_without_words);
  return g_test_run ();
}
