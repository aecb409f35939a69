/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The board: three projections that share their axes at every scale (ISO 5456-2, first angle; from memory). */
#include "footpace/drawing.h"
#include "footpace/setting-out.h"

#include "church.h"
#include "crossings.h"
#include "parish.h"
#include "random-sanctuary.h"

#include <math.h>
#include <string.h>

static const double SCALES[] = { 5, 17, 33.3, 50, 81.7, 100, 155, 300, 340, 1000 };

static void
make_projections (const FpScene *scene, FpProjection *projection[FP_N_VIEWS])
{
  for (int v = 0; v < FP_N_VIEWS; v++)
    projection[v] = fp_projection_new (scene, (FpViewId) v);
}

static void
free_projections (FpProjection *projection[FP_N_VIEWS])
{
  for (int v = 0; v < FP_N_VIEWS; v++)
    fp_projection_unref (projection[v]);
}

static FpPoint
on_paper (const FpBoardLayout *layout, FpViewId view, FpVec3 p)
{
  return fp_view_to_paper (&layout->view[view], fp_view_point (view, p));
}

/* A point drawn in the three views: x over x, z beside z, and y round the mitre line. */
static void
test_axes_are_shared (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (GRand) r = g_rand_new_with_seed (7);

  for (guint s = 0; s < G_N_ELEMENTS (SCALES); s++)
    for (guint i = 0; i < 50; i++)
      {
        const FpPoint pan = { g_rand_double_range (r, -500, 500), g_rand_double_range (r, -500, 500) };
        const FpVec3 p = { g_rand_double_range (r, -9e3, 9e3), g_rand_double_range (r, -14e3, 7e3),
                           g_rand_double_range (r, -300, 8e3) };
        FpBoardLayout layout;
        fp_board_layout (scene, NULL, SCALES[s], pan, FP_UNITS_METRIC, &layout);
        const FpPoint plan = on_paper (&layout, FP_VIEW_PLAN, p), section = on_paper (&layout, FP_VIEW_SECTION, p);
        const FpPoint elevation = on_paper (&layout, FP_VIEW_ELEVATION, p);
        /* Carried from the plan to the right and from the section down, it meets on the mitre line at 45 degrees. */
        const FpPoint a = layout.mitre_a, b = layout.mitre_b;
        const FpPoint meets = { section.x, plan.y };
        g_assert_cmpfloat_with_epsilon (plan.x, elevation.x, 1e-9);
        g_assert_cmpfloat_with_epsilon (section.y, elevation.y, 1e-9);
        g_assert_cmpfloat_with_epsilon (b.x - a.x, a.y - b.y, 1e-9);
        g_assert_cmpfloat_with_epsilon (meets.x - a.x, a.y - meets.y, 1e-9);
        g_assert_cmpfloat_with_epsilon (fp_view_from_paper (&layout.view[FP_VIEW_PLAN], plan).x, p.x, 1e-6);
      }
}

/* First angle: the plan under the elevation, the view from the left on its right; and none over another. */
static void
test_first_angle (void)
{
  for (guint32 seed = 0; seed < 12; seed++)
    {
      g_autoptr (FpScene) scene = seed == 0 ? parish_scene_new () : random_sanctuary_new (seed, FP_UNITS_METRIC);
      FpProjection *projection[FP_N_VIEWS];
      make_projections (scene, projection);
      for (guint s = 0; s < G_N_ELEMENTS (SCALES); s++)
        {
          FpBoardLayout l;
          FpPoint lo[FP_N_VIEWS], hi[FP_N_VIEWS];
          fp_board_layout (scene, NULL, SCALES[s], (FpPoint) { 10, 20 }, FP_UNITS_METRIC, &l);
          for (int v = 0; v < FP_N_VIEWS; v++)
            {
              const FpBox box = fp_projection_box (projection[v]);
              lo[v] = fp_view_to_paper (&l.view[v], (FpPoint) { box.x0, box.y0 });
              hi[v] = fp_view_to_paper (&l.view[v], (FpPoint) { box.x1, box.y1 });
            }
          g_assert_cmpfloat (hi[FP_VIEW_PLAN].y, <, lo[FP_VIEW_ELEVATION].y);
          g_assert_cmpfloat (hi[FP_VIEW_PLAN].y, <, lo[FP_VIEW_SECTION].y);
          g_assert_cmpfloat (hi[FP_VIEW_ELEVATION].x, <, lo[FP_VIEW_SECTION].x);
          for (int v = 0; v < FP_N_VIEWS; v++)
            {
              g_assert_cmpfloat (lo[v].x, >=, l.frame[v].x0);
              g_assert_cmpfloat (lo[v].y, >=, l.frame[v].y0);
              g_assert_cmpfloat (hi[v].x, <=, l.frame[v].x1);
              g_assert_cmpfloat (hi[v].y, <=, l.frame[v].y1);
            }
        }
      free_projections (projection);
    }
}

static void
assert_on_paper (FpPoint p, double width, double height)
{
  g_assert_cmpfloat (p.x, >=, 0);
  g_assert_cmpfloat (p.y, >=, 0);
  g_assert_cmpfloat (p.x, <=, width);
  g_assert_cmpfloat (p.y, <=, height);
}

/* The sanctuary (altar, steps, rail, ministers' floors) is seen in all three; the whole church likewise. */
static void
test_fit (void)
{
  static const double sizes[][2] = { { 330, 230 }, { 250, 180 }, { 600, 340 }, { 280, 400 } };

  for (guint32 seed = 0; seed < 10; seed++)
    {
      g_autoptr (FpScene) scene = seed == 0 ? parish_scene_new () : random_sanctuary_new (seed, FP_UNITS_METRIC);
      for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
        for (int whole = 0; whole < 2; whole++)
          {
            const FpBox3 box = whole ? fp_scene_box (scene) : fp_scene_sanctuary (scene);
            const double w = sizes[i][0], h = sizes[i][1];
            double scale;
            FpPoint pan;
            FpBoardLayout l;
            fp_board_fit (scene, NULL, whole, w, h, &scale, &pan);
            fp_board_layout (scene, NULL, scale, pan, FP_UNITS_METRIC, &l);
            assert_on_paper (on_paper (&l, FP_VIEW_PLAN, box.lo), w, h);
            assert_on_paper (on_paper (&l, FP_VIEW_PLAN, box.hi), w, h);
            assert_on_paper (on_paper (&l, FP_VIEW_SECTION, box.lo), w, h);
            assert_on_paper (on_paper (&l, FP_VIEW_SECTION, box.hi), w, h);
            assert_on_paper (on_paper (&l, FP_VIEW_ELEVATION, (FpVec3) { box.lo.x, 0, box.lo.z }), w, h);
            assert_on_paper (on_paper (&l, FP_VIEW_ELEVATION, (FpVec3) { box.hi.x, 0, box.hi.z }), w, h);
          }
    }
}

static FpDrawing *
draw_board (const FpScene *scene, double scale, FpPoint pan, double w, double h)
{
  FpProjection *projection[FP_N_VIEWS];
  FpBoardLayout layout;
  FpDrawing *drawing;

  make_projections (scene, projection);
  fp_board_layout (scene, NULL, scale, pan, FP_UNITS_METRIC, &layout);
  drawing = fp_board_draw (projection, &layout, w, h);
  free_projections (projection);
  return drawing;
}

static FpDrawing *
draw_across (const FpScene *scene, const FpCut *cut, double scale, FpBoardLayout *layout)
{
  FpProjection *projection[FP_N_VIEWS];
  FpDrawing *drawing;

  make_projections (scene, projection);
  fp_projection_unref (projection[FP_VIEW_ELEVATION]);
  projection[FP_VIEW_ELEVATION] = fp_projection_new_cut (scene, FP_VIEW_ELEVATION, cut, 0);
  fp_board_layout (scene, cut, scale, (FpPoint) { 150, 250 }, FP_UNITS_METRIC, layout);
  drawing = fp_board_draw (projection, layout, 500, 400);
  free_projections (projection);
  return drawing;
}

static gboolean
says (const FpDrawing *drawing, const char *text)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_TEXT && g_str_equal (mark[i].text, text))
      return TRUE;
  return FALSE;
}

static const FpMark *
title (const FpDrawing *drawing, const char *text)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_TEXT && g_str_equal (mark[i].text, text))
      return &mark[i];
  g_error ("%s is not there", text);
}

/* Walls that run off above are not interrupted by a title: it stands in the room beside them. */
static void
test_titles_beside_walls (void)
{
  static const char *const titles[] = { "ELEVATION, FACING EAST", "SECTION ON THE AXIS" };
  g_autoptr (FpScene) scene = parish_scene_new ();

  for (guint scale = 50; scale <= 70; scale += 5)
    {
      g_autoptr (FpDrawing) drawing = draw_board (scene, scale, (FpPoint) { 120, 110 }, 420, 200);
      const FpPoint *pt = fp_drawing_points (drawing);
      guint n, walls = 0;
      const FpMark *mark = fp_drawing_marks (drawing, &n);

      for (guint t = 0; t < G_N_ELEMENTS (titles); t++)
        {
          const FpMark *title_mark = title (drawing, titles[t]);
          const FpBox box = crossings_text_box (title_mark);

          for (guint i = 0; i < n; i++)
            if (mark[i].type == FP_MARK_AREA && mark[i].fill == FP_FILL_CUT && g_strcmp0 (mark[i].item, "walls") == 0)
              {
                const FpBox wall = fp_outline_box (pt + mark[i].first, mark[i].n);

                walls += wall.y1 >= box.y0 ? 1 : 0;
                g_assert_false (fp_box_overlaps (&wall, &box));
              }
        }
      g_assert_cmpuint (walls, >=, 3);
    }
}

/* A plan that runs off above, with no room on its left: its title stands on its right, not over the walls nor in the church. */
static void
test_title_beside_plan (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  const FpBox3 all = fp_scene_box (scene);

  for (guint scale = 100; scale <= 140; scale += 10)
    for (double x = 40; x <= 80; x += 20)
      {
        const FpPoint pan = { x, 260 };
        g_autoptr (FpDrawing) drawing = draw_board (scene, scale, pan, 420, 200);
        const FpBox box = crossings_text_box (title (drawing, "PLAN"));
        const FpPoint *pt = fp_drawing_points (drawing);
        guint n, walls = 0;
        const FpMark *mark = fp_drawing_marks (drawing, &n);

        g_assert_cmpfloat (x + all.lo.x / scale, <, box.x0); /* there is no room on its left */
        for (guint i = 0; i < n; i++)
          if (mark[i].type == FP_MARK_AREA && mark[i].fill == FP_FILL_CUT && mark[i].view == FP_VIEW_PLAN)
            {
              const FpPoint *outline = pt + mark[i].first;

              walls++;
              g_assert_false (fp_outline_contains (outline, mark[i].n, (FpPoint) { box.x0, box.y0 }));
              for (guint k = 0, j = mark[i].n - 1; k < mark[i].n; j = k++)
                g_assert_false (fp_box_is_crossed (&box, outline[j], outline[k]));
            }
        g_assert_cmpuint (walls, >, 0);
      }
}

/* The section across has the place of the elevation: levels are shared with the section, x with the plan, or mirrored
 * where it faces west; the section stands clear of it, and no text or line of one crosses another. */
static void
test_across (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();

  for (guint i = 0; i < 8; i++)
    {
      const FpCut cut = { TRUE, -6000.0 + 3500.0 * (i / 2), i % 2 == 1 };
      g_autofree char *what = g_strdup_printf ("board cut across at %g%s", cut.at, cut.turned ? ", turned" : "");
      FpBoardLayout l;
      g_autoptr (FpDrawing) drawing = draw_across (scene, &cut, 100, &l);
      const FpPoint in_plan = fp_view_to_paper (&l.view[FP_VIEW_PLAN], (FpPoint) { 1000, cut.at });
      const FpPoint there = fp_view_to_paper (&l.view[FP_VIEW_ELEVATION],
                                              fp_layout_point (&l.view[FP_VIEW_ELEVATION], FP_VIEW_ELEVATION, (FpVec3) { 1000, 0, 0 }));

      g_assert_cmpfloat_with_epsilon (there.x - 150, (in_plan.x - 150) * (cut.turned ? -1 : 1), 1e-9);
      g_assert_cmpfloat (l.view[FP_VIEW_ELEVATION].origin.y, ==, l.view[FP_VIEW_SECTION].origin.y);
      g_assert_true (says (drawing, cut.turned ? "SECTION B–B, FACING WEST" : "SECTION B–B, FACING EAST"));
      g_assert_false (says (drawing, "ELEVATION, FACING EAST"));
      g_assert_true (says (drawing, "B"));
      g_assert_false (says (drawing, "A")); /* the section on the axis has no letter */
      crossings_assert_none (drawing, -1, what);
      crossings_assert_names_clear (drawing, what);
    }
}

static void
test_nothing_crosses (void)
{
  for (guint32 seed = 0; seed < 10; seed++)
    {
      g_autoptr (FpScene) scene = seed == 0 ? parish_scene_new () : random_sanctuary_new (seed + 100, FP_UNITS_METRIC);
      for (guint s = 0; s < G_N_ELEMENTS (SCALES); s++)
        {
          g_autoptr (FpDrawing) drawing = draw_board (scene, SCALES[s], (FpPoint) { 150, 150 }, 400, 300);
          g_autofree char *what = g_strdup_printf ("board of sanctuary %u, 1:%g", seed, SCALES[s]);
          crossings_assert_none (drawing, -1, what);
          crossings_assert_names_clear (drawing, what);
        }
    }
}

/* Whoever sees a dimension line sees its figure. */
static void
test_figures_are_seen (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  guint figures = 0;

  for (double pan = -200; pan <= 200; pan += 50)
    {
      g_autoptr (FpDrawing) drawing = draw_board (scene, 60, (FpPoint) { 150 + pan, 150 - pan / 2 }, 300, 200);
      guint n;
      const FpMark *mark = fp_drawing_marks (drawing, &n);
      for (guint i = 0; i < n; i++)
        if (mark[i].type == FP_MARK_TEXT && mark[i].dimension > 0 && !g_str_has_prefix (mark[i].text, "+")
            && !g_str_has_prefix (mark[i].text, "−") && !g_str_has_prefix (mark[i].text, "±"))
          {
            assert_on_paper (mark[i].at, 300, 200);
            figures++;
          }
    }
  g_assert_cmpuint (figures, >, 50);
}

/* --- titles ---------------------------------------------------------------------------- */

/* A church as one begins it: walls, two floors, a step between them, an altar on its footpace, and nothing else. */
static FpScene *
begun_church (double nave, double sanctuary, double depth)
{
  const FpPoint corner[] = { { -nave, -18000 }, { -nave, 0 }, { -sanctuary, 0 }, { -sanctuary, depth },
                             { sanctuary, depth }, { sanctuary, 0 }, { nave, 0 }, { nave, -18000 } };
  FpProject *project = church_new (FP_FACING_PEOPLE);
  FpScene *scene;

  church_survey (&project, &(ChurchThing) { .kind = "wall", .id = "walls", .corner = corner, .n_corners = 8,
        .param = { { "closed", 1 } } });
  church_floor (&project, "nave", (FpBox) { -nave, -18000, nave, 0 }, 0, 0, 0, 0);
  church_floor (&project, "sanctuary", (FpBox) { -sanctuary, 0, sanctuary, depth }, 150, 1, 0, 0);
  church_survey (&project, &(ChurchThing) { .kind = "steps", .id = "steps", .place = { 0, 0, 0 },
        .param = { { "count", 1 } } });
  church_add (&project, &(ChurchThing) { .kind = "footpace", .id = "footpace" });
  church_add (&project, &(ChurchThing) { .kind = "altar", .id = "altar", .on = "footpace",
        .place = { 0, depth * 0.6, 0 } });
  scene = fp_scene_new (project, 0);
  fp_project_unref (project);
  return scene;
}

static guint
assert_titles_on_paper (const FpDrawing *drawing, double width, double height, const char *what)
{
  static const char *const titles[] = { "PLAN", "ELEVATION, FACING EAST", "SECTION ON THE AXIS" };
  guint n, found = 0;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    for (guint t = 0; t < G_N_ELEMENTS (titles); t++)
      if (mark[i].type == FP_MARK_TEXT && g_str_equal (mark[i].text, titles[t]))
        {
          /* The scale stands beside each: it is the next text. */
          const FpBox title = crossings_text_box (&mark[i]), scale = crossings_text_box (&mark[i + 1]);
          if (title.x0 < 0 || title.y0 < 0 || scale.x1 > width || title.y1 > height)
            g_error ("%s: \"%s\" is cut off by the edge", what, titles[t]);
          found++;
        }
  return found;
}

/* Whatever the size of the paper and wherever it lies, a title is whole and touches nothing, or is not there. */
static void
test_titles (void)
{
  static const double sizes[][2] = { { 330, 230 }, { 260, 150 }, { 180, 190 }, { 420, 140 }, { 150, 110 } };
  static const double churches[][3] = { { 4000, 3000, 6000 }, { 5000, 2200, 4500 }, { 9000, 6000, 9000 } };

  for (guint c = 0; c < G_N_ELEMENTS (churches); c++)
    {
      g_autoptr (FpScene) scene = begun_church (churches[c][0], churches[c][1], churches[c][2]);
      for (guint i = 0; i < G_N_ELEMENTS (sizes); i++)
        for (int way = 0; way < 4; way++)
          {
            const double w = sizes[i][0], h = sizes[i][1];
            g_autofree char *what = g_strdup_printf ("begun church %u on %g x %g, way %d", c, w, h, way);
            double scale;
            FpPoint pan;
            fp_board_fit (scene, NULL, way % 2 == 1, w, h, &scale, &pan);
            if (way >= 2)
              pan = (FpPoint) { pan.x - w / 3, pan.y + h / 4 };
            g_autoptr (FpDrawing) drawing = draw_board (scene, scale, pan, w, h);
            const guint found = assert_titles_on_paper (drawing, w, h, what);
            crossings_assert_none (drawing, -1, what);
            if (way < 2 && w >= 180)
              g_assert_cmpuint (found, ==, 3);
          }
    }
}

/* Where the name of each thing stands; 1e9 where it has none. */
static FpPoint
name_of (const FpDrawing *drawing, const char *item)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_TEXT && mark[i].view == FP_VIEW_PLAN && mark[i].dimension == 0
        && g_strcmp0 (mark[i].item, item) == 0)
      return mark[i].at;
  return (FpPoint) { 1e9, 1e9 };
}

/* One looks through the cloths on the plan: the altar is drawn under them, and keeps its name. */
static void
test_name_under_cloths (void)
{
  g_autoptr (FpScene) bare = parish_scene_new (), covered = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) project = fp_set_out_new (bare, fp_kind_find ("altar-cloths"), NULL, &error);

  g_assert_no_error (error);
  covered = fp_scene_new (project, 0);
  for (guint s = 20; s <= 50; s += 30)
    {
      g_autoptr (FpDrawing) before = draw_board (bare, s, (FpPoint) { 200, 200 }, 420, 420);
      g_autoptr (FpDrawing) after = draw_board (covered, s, (FpPoint) { 200, 200 }, 420, 420);

      g_assert_cmpfloat (name_of (before, "altar").x, <, 1e9);
      g_assert_cmpfloat (name_of (after, "altar").x, <, 1e9);
      g_assert_cmpfloat (name_of (after, "altar-cloths").x, ==, 1e9);
    }
}

static FpDrawing *
draw_remembered (const FpScene *scene, double scale, FpBoardMemory *memory)
{
  FpProjection *projection[FP_N_VIEWS];
  FpBoardLayout layout;
  FpDrawing *drawing;

  make_projections (scene, projection);
  fp_board_layout (scene, NULL, scale, (FpPoint) { 200, 200 }, FP_UNITS_METRIC, &layout);
  layout.memory = memory;
  drawing = fp_board_draw (projection, &layout, 420, 420);
  free_projections (projection);
  return drawing;
}

/* How many names went elsewhere or away between two drawings. */
static guint
count_moved (const FpScene *scene, const FpDrawing *before, const FpDrawing *after)
{
  guint n, moved = 0;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    {
      const FpPoint was = name_of (before, fp_item_id (placed[i].item)), is = name_of (after, fp_item_id (placed[i].item));
      moved += was.x < 1e9 && hypot (was.x - is.x, was.y - is.y) > 0.01 ? 1 : 0;
    }
  return moved;
}

/* Over a measure that is changed step by step. */
static guint
count_jumps (const char *item, const char *param, double scale, FpBoardMemory *memory)
{
  FpScene *scene = parish_scene_new ();
  FpDrawing *before = draw_remembered (scene, scale, memory);
  guint moved = 0;

  for (double value = 760; value <= 1000; value += 60)
    {
      g_autoptr (FpProject) next = fp_set_out_param (scene, item, param, value, NULL);
      FpDrawing *after;
      g_assert_nonnull (next);
      fp_scene_unref (scene);
      scene = fp_scene_new (next, 0);
      after = draw_remembered (scene, scale, memory);
      moved += count_moved (scene, before, after);
      crossings_assert_none (after, -1, "with memory");
      crossings_assert_names_clear (after, "with memory");
      fp_drawing_unref (before);
      before = after;
    }
  fp_drawing_unref (before);
  fp_scene_unref (scene);
  return moved;
}

static guint
count_names (const FpScene *scene, const FpDrawing *drawing)
{
  guint n, names = 0;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    names += !placed[i].ghost && name_of (drawing, fp_item_id (placed[i].item)).x < 1e9 ? 1 : 0;
  return names;
}

/* There and back along x, by more than its neighbours are away.  How often a name was missing that a board without a memory
 * tells. */
static guint
count_missing (const char *item, double by, double scale)
{
  FpBoardMemory *memory = fp_board_memory_new ();
  FpScene *scene = parish_scene_new ();
  guint missing = 0;

  for (guint i = 0; i < 3; i++)
    {
      const FpVec3 way = { i % 2 ? -by : by, i % 2 ? by / 2 : -by / 2, 0 };
      g_autoptr (FpProject) next = fp_set_out_move (scene, item, way, NULL);
      FpDrawing *with = draw_remembered (scene, scale, memory), *without = draw_remembered (scene, scale, NULL);
      const guint names = count_names (scene, with), all = count_names (scene, without);

      g_test_message ("%s by %g at 1:%g, %u: %u, %u", item, by, scale, i, names, all);
      missing += names < all ? all - names : 0;
      crossings_assert_none (with, -1, "there and back");
      fp_drawing_unref (with);
      fp_drawing_unref (without);
      fp_scene_unref (scene);
      scene = fp_scene_new (next, 0);
    }
  fp_scene_unref (scene);
  fp_board_memory_free (memory);
  return missing;
}

/* What was done before costs no name. */
static void
test_names_come_back (void)
{
  static const struct { const char *item; double by, scale; } cases[] = {
    { "credence", -2400, 55 }, { "sedilia", -2400, 80 }, { "chair", -1200, 80 }, { "chair", 1200, 80 }, { "ambo", 1200, 110 },
  };
  guint missing = 0;

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    missing += count_missing (cases[i].item, cases[i].by, cases[i].scale);
  g_assert_cmpuint (missing, ==, 0);
}

/* What is remembered stays while it fits. */
static void
test_names_stay (void)
{
  static const double scales[] = { 55, 70, 100 };
  static const char *const params[][2] = { { "rail", "height" }, { "altar", "height" }, { "rail", "gate" } };
  guint with = 0, without = 0;

  for (guint s = 0; s < G_N_ELEMENTS (scales); s++)
    for (guint p = 0; p < G_N_ELEMENTS (params); p++)
      {
        FpBoardMemory *memory = fp_board_memory_new ();
        with += count_jumps (params[p][0], params[p][1], scales[s], memory);
        without += count_jumps (params[p][0], params[p][1], scales[s], NULL);
        fp_board_memory_free (memory);
      }
  g_test_message ("with %u, without %u", with, without);
  g_assert_cmpuint (3 * with, <, without);
}

/* On the screen more is drawn than is seen: there a title stands in what is seen. */
static void
test_titles_are_seen (void)
{
  const double margin = 60, w = 330, h = 230;
  g_autoptr (FpScene) wide = begun_church (12000, 4000, 6000);
  FpProjection *projection[FP_N_VIEWS];
  FpBoardLayout layout;
  double scale;
  FpPoint pan;

  make_projections (wide, projection);
  fp_board_fit (wide, NULL, FALSE, w, h, &scale, &pan);
  fp_board_layout (wide, NULL, scale, (FpPoint) { pan.x + margin, pan.y + margin }, FP_UNITS_METRIC, &layout);
  layout.seen = (FpBox) { margin, margin, margin + w, margin + h };
  g_autoptr (FpDrawing) drawing = fp_board_draw (projection, &layout, w + 2 * margin, h + 2 * margin);
  guint n, found = 0;
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_TEXT && (g_str_equal (mark[i].text, "PLAN") || g_str_has_prefix (mark[i].text, "ELEVATION")
                                         || g_str_has_prefix (mark[i].text, "SECTION ON")))
      {
        const FpBox box = crossings_text_box (&mark[i]);
        g_assert_cmpfloat (box.x0, >=, margin);
        g_assert_cmpfloat (box.x1, <=, margin + w);
        g_assert_cmpfloat (box.y0, >=, margin);
        g_assert_cmpfloat (box.y1, <=, margin + h);
        found++;
      }
  g_assert_cmpuint (found, ==, 3);
  free_projections (projection);
}

/* Two blocks of pews close beside the axis: the name of each stands on its own side of it. */
static void
test_names_keep_their_side (void)
{
  const FpPoint corner[] = { { -4000, -16000 }, { -4000, 6000 }, { 4000, 6000 }, { 4000, -16000 } };
  FpProject *project = church_new (FP_FACING_PEOPLE);
  static const char *const ids[] = { "pews-gospel", "pews-epistle" };
  guint found = 0;

  church_survey (&project, &(ChurchThing) { .kind = "wall", .id = "walls", .corner = corner, .n_corners = 4,
                                            .param = { { "closed", 1 } } });
  for (guint i = 0; i < 2; i++)
    church_survey (&project, &(ChurchThing) { .kind = "pews", .id = ids[i], .place = { i == 0 ? -1400 : 1400, -3000, 0 },
                                              .param = { { "rows", 5 }, { "length", 1500 } } });
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  for (double scale = 40; scale < 320; scale *= 1.17)
    {
      const double axis = 200;
      g_autoptr (FpDrawing) drawing = draw_board (scene, scale, (FpPoint) { axis, 300 }, 400, 500);
      guint n;
      const FpMark *mark = fp_drawing_marks (drawing, &n);
      for (guint i = 0; i < n; i++)
        for (guint k = 0; k < 2; k++)
          if (mark[i].type == FP_MARK_TEXT && mark[i].view == FP_VIEW_PLAN && mark[i].dimension == 0
              && g_strcmp0 (mark[i].item, ids[k]) == 0)
            {
              const FpBox box = crossings_text_box (&mark[i]);
              g_assert_true (k == 0 ? box.x1 <= axis + 0.01 : box.x0 >= axis - 0.01);
              found++;
            }
    }
  g_assert_cmpuint (found, >, 0);
  fp_project_unref (project);
}

/* On a board each measure stands in one of the three views. */
static void
test_once (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpDrawing) drawing = draw_board (scene, 60, (FpPoint) { 200, 200 }, 700, 500);
  g_autoptr (GArray) found = crossings_read_dimensions (drawing);
  guint in_view[FP_N_VIEWS] = { 0 };

  for (guint i = 0; i < found->len; i++)
    {
      const ReadDimension *p = &g_array_index (found, ReadDimension, i);
      in_view[p->view]++;
      for (guint j = 0; j < i; j++)
        {
          const ReadDimension *q = &g_array_index (found, ReadDimension, j);
          g_assert_cmpuint (p->number, !=, q->number);
          g_assert_false (p->param != NULL && p->param == q->param && p->item == q->item);
        }
    }
  for (int v = 0; v < FP_N_VIEWS; v++)
    g_assert_cmpuint (in_view[v], >, 0);
}

/* Where dimensions stand does not depend on where the sheet was moved to. */
static void
test_pan_moves_all_alike (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpDrawing) here = draw_board (scene, 80, (FpPoint) { 150, 150 }, 400, 300);
  g_autoptr (FpDrawing) there = draw_board (scene, 80, (FpPoint) { 150 + 32, 150 - 16 }, 400, 300);
  g_autoptr (GArray) a = crossings_read_dimensions (here), b = crossings_read_dimensions (there);
  guint found = 0;

  for (guint i = 0; i < a->len; i++)
    for (guint j = 0; j < b->len; j++)
      {
        const ReadDimension *p = &g_array_index (a, ReadDimension, i), *q = &g_array_index (b, ReadDimension, j);
        if (p->view != q->view || p->item != q->item || p->param != q->param || !g_str_equal (p->text, q->text))
          continue;
        g_assert_cmpfloat_with_epsilon (q->a.x - p->a.x, 32, 1e-6);
        g_assert_cmpfloat_with_epsilon (q->a.y - p->a.y, -16, 1e-6);
        g_assert_cmpfloat_with_epsilon (q->b.x - p->b.x, 32, 1e-6);
        found++;
      }
  /* Of a few the figure is seen in one of them alone. */
  g_assert_cmpuint (found, >=, MAX (a->len, b->len) - 4);
}

static gboolean
has_mark_of (const FpDrawing *drawing, const char *item, int view)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].view == view && g_strcmp0 (mark[i].item, item) == 0)
      return TRUE;
  return FALSE;
}

/* The nave runs off the edges until one zooms out; lines that cannot be seen are not drawn at all. */
static void
test_zoomed_out (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  double scale;
  FpPoint pan;

  fp_board_fit (scene, NULL, TRUE, 330, 230, &scale, &pan);
  g_autoptr (FpDrawing) whole = draw_board (scene, scale, pan, 330, 230);
  g_assert_true (has_mark_of (whole, "pews-gospel", FP_VIEW_PLAN));
  g_assert_true (has_mark_of (whole, "pews-epistle", FP_VIEW_SECTION));

  fp_board_fit (scene, NULL, FALSE, 330, 230, &scale, &pan);
  g_autoptr (FpDrawing) close = draw_board (scene, scale / 3, pan, 330, 230);
  guint n;
  const FpMark *mark = fp_drawing_marks (close, &n);
  const FpPoint *pt = fp_drawing_points (close);
  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_LINE && (mark[i].pen == FP_PEN_OUTLINE || mark[i].pen == FP_PEN_EDGE)
        && mark[i].dimension == 0)
      assert_on_paper (pt[mark[i].first], 330 + 1e-6, 230 + 1e-6);
}

/* All texts but the scale, in their order. */
static char *
texts_of (const FpDrawing *drawing)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_TEXT && !g_str_has_prefix (mark[i].text, "1:"))
      g_string_append_printf (out, "%s\n", mark[i].text);
  return g_string_free (out, FALSE);
}

/* Names and figures do not flicker: over an octave they change at most four times. */
static void
test_steady (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autofree char *before = NULL;
  guint changes = 0;

  for (double scale = 50; scale < 100; scale *= 1.01)
    {
      g_autoptr (FpDrawing) drawing = draw_board (scene, scale, (FpPoint) { 400, 400 }, 900, 700);
      g_autofree char *now = texts_of (drawing);
      g_assert_true (says (drawing, "2400")); /* of the altar */
      g_assert_true (says (drawing, "Altar"));
      changes += before != NULL && strcmp (before, now) != 0 ? 1 : 0;
      g_free (before);
      before = g_steal_pointer (&now);
    }
  g_assert_cmpuint (changes, <=, 4);
}

/* A click on a figure finds the parameter that it shows. */
static void
test_pick_dimension (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpDrawing) drawing = draw_board (scene, 60, (FpPoint) { 200, 200 }, 700, 500);
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  gboolean any = FALSE;

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_TEXT && mark[i].dimension > 0 && g_strcmp0 (mark[i].item, "altar") == 0
        && g_strcmp0 (mark[i].param, "length") == 0)
      {
        const FpBox box = crossings_text_box (&mark[i]);
        const int found = fp_drawing_pick (drawing, (FpPoint) { (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 }, 0.5);
        g_assert_cmpint (found, >=, 0);
        g_assert_cmpuint (mark[found].dimension, ==, mark[i].dimension);
        g_assert_cmpstr (mark[found].param, ==, "length");
        any = TRUE;
      }
  g_assert_true (any);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/board/axes-are-shared", test_axes_are_shared);
  g_test_add_func ("/board/name-under-cloths", test_name_under_cloths);
  g_test_add_func ("/board/first-angle", test_first_angle);
  g_test_add_func ("/board/fit", test_fit);
  g_test_add_func ("/board/across", test_across);
  g_test_add_func ("/board/nothing-crosses", test_nothing_crosses);
  g_test_add_func ("/board/figures-are-seen", test_figures_are_seen);
  g_test_add_func ("/board/titles", test_titles);
  g_test_add_func ("/board/titles-are-seen", test_titles_are_seen);
  g_test_add_func ("/board/names-stay", test_names_stay);
  g_test_add_func ("/board/names-come-back", test_names_come_back);
  g_test_add_func ("/board/names-keep-their-side", test_names_keep_their_side);
  g_test_add_func ("/board/once", test_once);
  g_test_add_func ("/board/pan-moves-all-alike", test_pan_moves_all_alike);
  g_test_add_func ("/board/zoomed-out", test_zoomed_out);
  g_test_add_func ("/board/steady", test_steady);
  g_test_add_func ("/board/pick-dimension", test_pick_dimension);
  g_test_add_func ("/board/titles-beside-walls", test_titles_beside_walls);
  g_test_add_func ("/board/title-beside-plan", test_title_beside_plan);
  return g_test_run ();
}
