/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The measuring tape, and what its ends come to rest on. */
#include "samples.h"
#include "tape.h"

#include "footpace/setting-out.h"
#include "footpace/store.h"

#include <math.h>

static FpPointed
on_plan (double x, double y)
{
  return fp_pointed_free (FP_VIEW_PLAN, FALSE, (FpPoint) { x, y });
}

static FpTape
ready (void)
{
  const FpPointed start = on_plan (0.0, 0.0);
  FpTape tape = { .state = FP_TAPE_AWAY };

  fp_tape_take (&tape, &start);
  g_assert_cmpint (tape.state, ==, FP_TAPE_READY);
  return tape;
}

/* 3, 4, 5. */
static void
test_drag (void)
{
  const FpPointed a = on_plan (100.0, 200.0), b = on_plan (-200.0, 600.0), c = on_plan (0.0, 0.0);
  FpTape tape = ready ();
  FpTapeMeasure m;
  g_autofree char *words = NULL;

  g_assert_false (fp_tape_measure (&tape, &m));
  fp_tape_press (&tape, &a);
  fp_tape_motion (&tape, &b);
  fp_tape_release (&tape, FALSE);
  g_assert_cmpint (tape.state, ==, FP_TAPE_LAID);
  fp_tape_motion (&tape, &c); /* it stays as it lies */
  g_assert_true (fp_tape_measure (&tape, &m));
  g_assert_cmpfloat (m.length, ==, 500.0);
  g_assert_cmpfloat (m.part.x, ==, 300.0);
  g_assert_cmpfloat (m.part.y, ==, 400.0);
  g_assert_cmpuint (m.known, ==, FP_KNOWN_X | FP_KNOWN_Y);
  g_assert_cmpfloat (m.true_length, ==, 0.0);
  words = fp_tape_words (&tape, FP_UNITS_METRIC);
  g_assert_cmpstr (words, ==, "500 mm\nacross 300 mm · along 400 mm");
}

static void
test_two_clicks (void)
{
  const FpPointed a = on_plan (0.0, 0.0), b = on_plan (0.0, 700.0);
  FpTape tape = ready ();
  FpTapeMeasure m;

  fp_tape_press (&tape, &a);
  fp_tape_release (&tape, TRUE);
  g_assert_cmpint (tape.state, ==, FP_TAPE_STRETCHED);
  fp_tape_motion (&tape, &b);
  fp_tape_press (&tape, &b);
  fp_tape_release (&tape, TRUE);
  g_assert_cmpint (tape.state, ==, FP_TAPE_LAID);
  fp_tape_measure (&tape, &m);
  g_assert_cmpfloat (m.length, ==, 700.0);
  /* Another is begun where the next press is. */
  fp_tape_press (&tape, &b);
  g_assert_cmpint (tape.state, ==, FP_TAPE_STRETCHED);
  fp_tape_measure (&tape, &m);
  g_assert_cmpfloat (m.length, ==, 0.0);
}

static void
test_escape (void)
{
  const FpPointed a = on_plan (0.0, 0.0);
  FpTape tape = ready ();

  fp_tape_press (&tape, &a);
  g_assert_true (fp_tape_escape (&tape));
  g_assert_cmpint (tape.state, ==, FP_TAPE_READY);
  fp_tape_release (&tape, FALSE); /* the button that is still held */
  g_assert_cmpint (tape.state, ==, FP_TAPE_READY);
  g_assert_true (fp_tape_escape (&tape));
  g_assert_cmpint (tape.state, ==, FP_TAPE_AWAY);
  g_assert_false (fp_tape_escape (&tape));
  fp_tape_press (&tape, &a);
  g_assert_cmpint (tape.state, ==, FP_TAPE_AWAY);
}

static void
test_keys (void)
{
  FpTape tape = ready ();
  FpTapeMeasure m;

  fp_tape_shift (&tape, (FpPoint) { 50.0, 0.0 });
  fp_tape_enter (&tape);
  fp_tape_shift (&tape, (FpPoint) { 0.0, 1000.0 });
  fp_tape_shift (&tape, (FpPoint) { 0.0, -10.0 });
  fp_tape_enter (&tape);
  g_assert_cmpint (tape.state, ==, FP_TAPE_LAID);
  fp_tape_measure (&tape, &m);
  g_assert_cmpfloat (m.length, ==, 990.0);
  g_assert_cmpfloat (tape.a.at.x, ==, 50.0);
  /* The laid end can still be moved, and Enter begins the next there. */
  fp_tape_shift (&tape, (FpPoint) { 0.0, 10.0 });
  fp_tape_measure (&tape, &m);
  g_assert_cmpfloat (m.length, ==, 1000.0);
  fp_tape_enter (&tape);
  g_assert_cmpfloat (tape.a.at.y, ==, 1000.0);
}

/* 2, 3, 6: the true length is 7. */
static void
test_true_length (void)
{
  FpPointed a = on_plan (0.0, 0.0), b = on_plan (200.0, 300.0);
  FpTape tape = ready ();
  g_autofree char *words = NULL;

  a.known = b.known = 7;
  b.space.z = 600.0;
  fp_tape_press (&tape, &a);
  fp_tape_motion (&tape, &b);
  words = fp_tape_words (&tape, FP_UNITS_METRIC);
  g_assert_cmpstr (words, ==, "360.6 mm\nacross 200 mm · along 300 mm · height 600 mm\ntrue length 700 mm");
}

/* From plan to elevation only what lies across is known from both: 1200; and from elevation to section the height. */
static void
test_two_views (void)
{
  static const struct { FpViewId from, to; guint known; const char *words; } way[] = {
    { FP_VIEW_PLAN, FP_VIEW_ELEVATION, FP_KNOWN_X, "across 1\u202f200 mm" },
    { FP_VIEW_ELEVATION, FP_VIEW_SECTION, FP_KNOWN_Z, "height 250 mm" },
    { FP_VIEW_SECTION, FP_VIEW_PLAN, FP_KNOWN_Y, "along 1\u202f150 mm" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (way); i++)
    {
      const FpPointed a = fp_pointed_free (way[i].from, FALSE, (FpPoint) { 300.0, 150.0 });
      const FpPointed b = fp_pointed_free (way[i].to, FALSE, (FpPoint) { 1500.0, way[i].to == FP_VIEW_PLAN ? 850.0 : 400.0 });
      g_autofree char *words = NULL;
      FpTape tape = ready ();
      FpTapeMeasure m;

      fp_tape_press (&tape, &a);
      fp_tape_motion (&tape, &b);
      fp_tape_release (&tape, FALSE);
      g_assert_true (fp_tape_measure (&tape, &m));
      g_assert_cmpuint (m.known, ==, way[i].known);
      g_assert_cmpfloat (m.true_length, ==, 0.0);
      words = fp_tape_words (&tape, FP_UNITS_METRIC);
      g_assert_cmpstr (words, ==, way[i].words);
    }
}

/* A point that is given in plan and then in elevation is known in space; from another such one it is 7 by 2, 3, 6. */
static void
test_given_twice (void)
{
  const FpPointed origin = fp_pointed_free (FP_VIEW_PLAN, FALSE, (FpPoint) { 100.0, 100.0 });
  const FpPointed end = fp_pointed_free (FP_VIEW_PLAN, FALSE, (FpPoint) { 300.0, 400.0 });
  const FpPointed high = fp_pointed_free (FP_VIEW_ELEVATION, FALSE, (FpPoint) { 999.0, 600.0 });
  FpTape tape = ready ();
  g_autofree char *words = NULL;

  fp_tape_motion (&tape, &origin);
  fp_tape_carry (&tape, FALSE);
  g_assert_cmpint (tape.b.view, ==, FP_VIEW_ELEVATION);
  g_assert_cmpuint (tape.b.known, ==, FP_KNOWN_X | FP_KNOWN_Y); /* its height is not given yet */
  fp_tape_shift (&tape, (FpPoint) { 0.0, 0.0 });
  fp_tape_enter (&tape);
  g_assert_cmpuint (tape.a.known, ==, 7);
  fp_tape_motion (&tape, &end);
  fp_tape_carry (&tape, FALSE);
  fp_tape_motion (&tape, &high); /* what was given on the plan holds */
  g_assert_cmpfloat (tape.b.at.x, ==, 300.0);
  g_assert_cmpfloat (tape.b.space.y, ==, 400.0);
  fp_tape_enter (&tape);
  words = fp_tape_words (&tape, FP_UNITS_METRIC);
  g_assert_cmpstr (words, ==, "632.5 mm\nacross 200 mm · along 300 mm · height 600 mm\ntrue length 700 mm");
  /* The next begins free of it. */
  fp_tape_press (&tape, &high);
  g_assert_cmpfloat (tape.a.at.x, ==, 999.0);
}

/* Facing west, a point 1500 to the left is as far to the Epistle side; turned, it stays where it is. */
static void
test_turned (void)
{
  const FpPointed a = fp_pointed_free (FP_VIEW_ELEVATION, TRUE, (FpPoint) { -1500.0, 400.0 });
  FpTape tape = ready ();
  FpPoint at;

  g_assert_cmpfloat (a.space.x, ==, 1500.0);
  fp_tape_press (&tape, &a);
  fp_tape_turn (&tape, FALSE);
  g_assert_cmpfloat (tape.a.at.x, ==, 1500.0);
  g_assert_cmpfloat (tape.a.space.x, ==, 1500.0);
  g_assert_true (fp_pointed_in (&a, FP_VIEW_ELEVATION, FALSE, &at));
  g_assert_cmpfloat (at.x, ==, 1500.0);
  g_assert_false (fp_pointed_in (&a, FP_VIEW_PLAN, FALSE, &at));
}

/* --- what its ends rest on ------------------------------------------------------ */

typedef struct { FpProject *project; FpScene *scene; FpProjection *projection[FP_N_VIEWS]; FpCatches *catches; } Church;

/* @project is taken. */
static void
look_at (Church *c, FpProject *project)
{
  const char *const nothing[] = { NULL };

  c->project = project;
  c->scene = fp_scene_new (c->project, 2); /* the high altar */
  c->catches = fp_catches_new (c->scene, nothing, 0);
  for (guint v = 0; v < FP_N_VIEWS; v++)
    c->projection[v] = fp_projection_new (c->scene, (FpViewId) v);
}

static void
set_up (Church *c, gconstpointer data)
{
  g_autofree char *path = fp_sample_path ("parish.footpace");

  (void) data;
  look_at (c, fp_store_load (path, NULL));
}

static void
tear_down (Church *c, gconstpointer data)
{
  (void) data;
  for (guint v = 0; v < FP_N_VIEWS; v++)
    fp_projection_unref (c->projection[v]);
  fp_catches_free (c->catches);
  fp_scene_unref (c->scene);
  fp_project_unref (c->project);
}

static const FpPlaced *
altar_of (Church *c)
{
  return &fp_scene_placed (c->scene, NULL)[fp_scene_celebrated_altar (c->scene)];
}

/* The front corner of the mensa: in plan and elevation alike it is known in space. */
static void
test_corner (Church *c, gconstpointer data)
{
  const FpPlaced *altar = altar_of (c);
  const FpVec3 corner = { altar->plan.x1, altar->plan.y0, altar->level + altar->extent.height };

  (void) data;
  for (guint v = 0; v < 2; v++)
    {
      const FpPoint p = fp_view_point ((FpViewId) v, corner);
      const FpPointed spot = fp_pointed_find (c->projection[v], c->catches, (FpPoint) { p.x + 12.0, p.y + 9.0 }, 25.0);
      g_autofree char *tells = fp_pointed_tells (&spot, c->scene);

      g_assert_cmpint (spot.sort, ==, FP_POINTED_CORNER);
      g_assert_cmpstr (tells, ==, "corner of High altar");
      g_assert_cmpuint (spot.known, ==, 7);
      g_assert_cmpfloat_with_epsilon (spot.space.x, corner.x, 1e-6);
      g_assert_cmpfloat_with_epsilon (spot.space.y, corner.y, 1e-6);
      g_assert_cmpfloat_with_epsilon (spot.space.z, corner.z, 1e-6);
    }
}

/* In the section across that faces west, the corner that is nearer to the east end. */
static void
test_corner_facing_west (Church *c, gconstpointer data)
{
  const FpPlaced *altar = altar_of (c);
  const FpVec3 corner = { altar->plan.x1, altar->plan.y1, altar->level + altar->extent.height };
  const FpCut cut = { TRUE, altar->plan.y1 + 1.0, TRUE };
  FpProjection *projection = fp_projection_new_cut (c->scene, FP_VIEW_ELEVATION, &cut, 0);
  const FpPointed spot = fp_pointed_find (projection, NULL, (FpPoint) { -corner.x + 12.0, corner.z + 9.0 }, 25.0);

  (void) data;
  g_assert_cmpint (spot.sort, ==, FP_POINTED_CORNER);
  g_assert_cmpfloat_with_epsilon (spot.space.x, corner.x, 1e-6);
  g_assert_cmpfloat_with_epsilon (spot.space.y, corner.y, 1e-6);
  fp_projection_unref (projection);
}

static void
test_edge_and_axis (Church *c, gconstpointer data)
{
  const FpPlaced *altar = altar_of (c);
  const double top = altar->level + altar->extent.height;
  FpPointed spot = fp_pointed_find (c->projection[FP_VIEW_PLAN], c->catches, (FpPoint) { 400.0, altar->plan.y0 - 5.0 }, 12.0);

  (void) data;
  g_assert_cmpint (spot.sort, ==, FP_POINTED_EDGE);
  g_assert_cmpfloat_with_epsilon (spot.at.y, altar->plan.y0, 1e-6);
  g_assert_cmpfloat (spot.at.x, ==, 400.0);
  g_assert_cmpuint (spot.known, ==, FP_KNOWN_X | FP_KNOWN_Y);
  spot = fp_pointed_find (c->projection[FP_VIEW_ELEVATION], c->catches, (FpPoint) { 400.0, top + 4.0 }, 12.0);
  g_assert_cmpint (spot.sort, ==, FP_POINTED_EDGE);
  g_assert_cmpfloat_with_epsilon (spot.at.y, top, 1e-6);
  g_assert_cmpuint (spot.known, ==, FP_KNOWN_X | FP_KNOWN_Z);
  /* High over the altar there is nothing but the axis. */
  spot = fp_pointed_find (c->projection[FP_VIEW_ELEVATION], c->catches, (FpPoint) { 4.0, 5200.0 }, 12.0);
  g_assert_cmpint (spot.sort, ==, FP_POINTED_AXIS);
  g_assert_cmpfloat (spot.at.x, ==, 0.0);
}

/* On an upright edge near the axis one stays, however near it is: of the crucifix and what holds it. */
static void
test_upright_edges (Church *c, gconstpointer data)
{
  guint n, edges = 0;
  const FpProjectedLine *line = fp_projection_lines (c->projection[FP_VIEW_ELEVATION], &n);

  (void) data;
  for (guint i = 0; i < n; i++)
    {
      const FpPoint middle = { line[i].a.x, (line[i].a.y + line[i].b.y) / 2 };
      FpPointed spot;

      if (fabs (line[i].a.x - line[i].b.x) > 1e-9 || fabs (line[i].a.x) < 1 || fabs (line[i].a.x) > 60
          || line[i].pen == FP_PEN_HATCH)
        continue;
      spot = fp_pointed_find (c->projection[FP_VIEW_ELEVATION], c->catches, (FpPoint) { middle.x + 0.2, middle.y }, 60.0);
      if (spot.sort == FP_POINTED_CORNER)
        continue;
      g_assert_cmpint (spot.sort, ==, FP_POINTED_EDGE);
      g_assert_cmpfloat (fabs (spot.at.x), >, 0.5);
      edges++;
    }
  g_assert_cmpuint (edges, >, 0);
}

static FpPointed
front_corner (Church *c, FpViewId view)
{
  const FpPlaced *altar = altar_of (c);
  const FpPoint p = fp_view_point (view, (FpVec3) { altar->plan.x1, altar->plan.y0, altar->level + altar->extent.height });
  const FpPointed spot = fp_pointed_find (c->projection[view], c->catches, p, 25.0);

  g_assert_cmpint (spot.sort, ==, FP_POINTED_CORNER);
  return spot;
}

/* @next is taken. */
static void
look_at_next (Church *c, FpProject *next)
{
  g_assert_nonnull (next);
  tear_down (c, NULL);
  look_at (c, next);
}

/* What the tape lies on is moved: it lies on it still, in every view that shows the corner. */
static void
test_follows (Church *c, gconstpointer data)
{
  const char *id = fp_item_id (altar_of (c)->item);
  FpPointed spot[] = { front_corner (c, FP_VIEW_PLAN), front_corner (c, FP_VIEW_ELEVATION) };
  g_autoptr (FpScene) was = (FpScene *) fp_scene_ref (c->scene);

  (void) data;
  look_at_next (c, fp_set_out_move (c->scene, id, (FpVec3) { 140.0, -260.0, 0.0 }, NULL));
  for (guint v = 0; v < G_N_ELEMENTS (spot); v++)
    {
      const FpVec3 before = spot[v].space;

      fp_pointed_follow (&spot[v], was, c->projection[v], c->catches);
      g_assert_cmpint (spot[v].sort, ==, FP_POINTED_CORNER);
      g_assert_cmpuint (spot[v].known, ==, 7);
      g_assert_cmpfloat_with_epsilon (spot[v].space.x, before.x + 140.0, 1e-6);
      g_assert_cmpfloat_with_epsilon (spot[v].space.y, before.y - 260.0, 1e-6);
    }
}

/* What is gone, or longer than it was, has no corner there any more: the point stays and says so. */
static void
test_left_behind (Church *c, gconstpointer data)
{
  const char *id = fp_item_id (altar_of (c)->item);
  const FpPointed at = front_corner (c, FP_VIEW_PLAN);
  FpPointed spot = at;
  g_autoptr (FpScene) was = (FpScene *) fp_scene_ref (c->scene);
  g_autofree char *tells = NULL;

  (void) data;
  look_at_next (c, fp_set_out_param (c->scene, id, "length", 3000.0, NULL));
  fp_pointed_follow (&spot, was, c->projection[FP_VIEW_PLAN], c->catches);
  g_assert_cmpint (spot.sort, ==, FP_POINTED_FREE);
  g_assert_cmpfloat (spot.at.x, ==, at.at.x);
  g_assert_cmpfloat (spot.at.y, ==, at.at.y);
  tells = fp_pointed_tells (&spot, c->scene);
  g_assert_cmpstr (tells, ==, "");
}

/* Wherever one points, the end comes to rest within reach, in some places on an edge or a corner, and what is known of it
 * is what the view shows. */
static void
test_random (Church *c, gconstpointer data)
{
  guint edges[FP_N_VIEWS] = { 0 }, corners = 0;

  (void) data;
  for (guint i = 0; i < 1500; i++)
    {
      const FpViewId view = (FpViewId) g_test_rand_int_range (0, FP_N_VIEWS);
      const FpPoint at = { g_test_rand_double_range (-8000, 8000), g_test_rand_double_range (-3000, 9000) };
      const FpPointed spot = fp_pointed_find (c->projection[view], c->catches, at, 60.0);
      const FpPoint p = fp_view_point (view, spot.space);

      edges[view] += spot.sort == FP_POINTED_EDGE ? 1 : 0;
      corners += spot.sort == FP_POINTED_CORNER ? 1 : 0;
      g_assert_cmpfloat (fabs (spot.at.x - at.x), <=, 60.0 + 1e-6);
      g_assert_cmpfloat (fabs (spot.at.y - at.y), <=, 60.0 + 1e-6);
      g_assert_cmpfloat_with_epsilon (p.x, spot.at.x, 0.51);
      g_assert_cmpfloat_with_epsilon (p.y, spot.at.y, 0.51);
    }
  g_assert_cmpuint (corners, >, 0);
  for (guint v = 0; v < FP_N_VIEWS; v++)
    g_assert_cmpuint (edges[v], >, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tape/drag", test_drag);
  g_test_add_func ("/tape/two-clicks", test_two_clicks);
  g_test_add_func ("/tape/escape", test_escape);
  g_test_add_func ("/tape/keys", test_keys);
  g_test_add_func ("/tape/true-length", test_true_length);
  g_test_add_func ("/tape/two-views", test_two_views);
  g_test_add_func ("/tape/given-twice", test_given_twice);
  g_test_add_func ("/tape/turned", test_turned);
#define ADD(name, function) g_test_add ("/pointed/" name, Church, NULL, set_up, function, tear_down)
  ADD ("corner-facing-west", test_corner_facing_west);
  ADD ("corner", test_corner);
  ADD ("follows", test_follows);
  ADD ("left-behind", test_left_behind);
  ADD ("edge-and-axis", test_edge_and_axis);
  ADD ("upright-edges", test_upright_edges);
  ADD ("random", test_random);
  return g_test_run ();
}
