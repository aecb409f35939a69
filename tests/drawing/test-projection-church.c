/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Whole churches in plan, elevation and section: lengths and areas that follow from their parameters. */
#include "church.h"
#include "parish.h"

#include "footpace/drawing.h"

#include <math.h>

static int
owner_of (const FpScene *scene, const char *id, gboolean ghost)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    if (placed[i].ghost == ghost && g_str_equal (fp_item_id (placed[i].item), id))
      return (int) i;
  g_error ("no %s", id);
  return -1;
}

static double
length_of (const FpProjection *projection, int owner, FpPen pen)
{
  guint n;
  const FpProjectedLine *line = fp_projection_lines (projection, &n);
  double sum = 0;

  for (guint i = 0; i < n; i++)
    if ((int) line[i].owner == owner && (line[i].pen == pen || pen == FP_N_PENS))
      sum += hypot (line[i].b.x - line[i].a.x, line[i].b.y - line[i].a.y);
  return sum;
}

static double
area_of (const FpProjection *projection, int owner)
{
  guint n;
  const FpProjectedCut *cut = fp_projection_cuts (projection, &n);
  double sum = 0;

  for (guint i = 0; i < n; i++)
    if ((int) cut[i].owner == owner)
      sum += fp_outline_area (cut[i].outline, cut[i].n);
  return sum;
}

/* A ring of walls 600 thick round 10 000 × 20 500, with doors of 1800 and 1000; the window's sill
 * lies above the cut of 1.1 m. */
static void
test_plan (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) plan = fp_projection_new (scene, FP_VIEW_PLAN);
  const int walls = owner_of (scene, "walls", FALSE);
  const double ring = 11200.0 * 21700.0 - 10000.0 * 20500.0;

  g_assert_cmpfloat_with_epsilon (area_of (plan, walls), ring - 600.0 * (1800 + 1000), 10);
  /* Without, within, and the four jambs. */
  g_assert_cmpfloat_with_epsilon (length_of (plan, walls, FP_PEN_CUT),
                                  2 * (11200 + 21700) + 2 * (10000 + 20500) - 2 * (1800 + 1000) + 4 * 600, 1);
  /* The heads of both doors hang above the cut; their inner edges lie over the edges of the floors. */
  g_assert_cmpfloat_with_epsilon (length_of (plan, walls, FP_PEN_HIDDEN), 1800 + 1000, 1);
  g_assert_cmpfloat (length_of (plan, owner_of (scene, "pews-gospel", FALSE), FP_N_PENS), >, 9 * 4 * 3000);
  /* A pier is cut: a circle. */
  g_assert_cmpfloat_with_epsilon (length_of (plan, owner_of (scene, "pier", FALSE), FP_PEN_CUT), 600 * G_PI, 5);
}

static void
test_elevation (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) elevation = fp_projection_new (scene, FP_VIEW_ELEVATION);
  const int walls = owner_of (scene, "walls", FALSE);

  /* Both side walls are cut; the pews lie behind the viewer. */
  g_assert_cmpfloat_with_epsilon (area_of (elevation, walls), 2 * 600 * 8000, 1);
  g_assert_cmpfloat (length_of (elevation, owner_of (scene, "pews-gospel", FALSE), FP_N_PENS), ==, 0);
  g_assert_cmpfloat (length_of (elevation, owner_of (scene, "pier", FALSE), FP_N_PENS), ==, 0);
  g_assert_cmpfloat (length_of (elevation, owner_of (scene, "altar", FALSE), FP_N_PENS), >, 2400);
  /* The nave floor is cut before the steps, the sanctuary's is not. */
  g_assert_cmpfloat_with_epsilon (area_of (elevation, owner_of (scene, "nave", FALSE)), 10000 * 200, 1);
  g_assert_cmpfloat (area_of (elevation, owner_of (scene, "sanctuary", FALSE)), ==, 0);
}

/* In a sanctuary that is deep the ambo stands far before the steps of the altar, and yet is seen; not what stands in a loft
 * at the other end. */
static void
test_deep_sanctuary (void)
{
  const FpPoint corner[] = { { -5000, -14000 }, { -5000, 9000 }, { 5000, 9000 }, { 5000, -14000 } };
  FpProject *project = church_new (FP_FACING_EAST);
  g_autoptr (FpScene) scene = NULL;
  g_autoptr (FpProjection) elevation = NULL;

  church_floor (&project, "nave", (FpBox) { -5000, -14000, 5000, 0 }, 0, 0, 0, 0);
  church_floor (&project, "sanctuary", (FpBox) { -5000, 0, 5000, 9000 }, 300, 1, 0, 0);
  church_floor (&project, "singers", (FpBox) { -5000, -14000, 5000, -12000 }, 300, 1, 0, 0);
  church_survey (&project, &(ChurchThing) { .kind = "wall", .id = "walls", .corner = corner, .n_corners = 4,
        .param = { { "closed", 1 } } });
  church_add (&project, &(ChurchThing) { .kind = "footpace", .id = "footpace", .place = { 0, 8000, 0 } });
  church_add (&project, &(ChurchThing) { .kind = "altar", .id = "altar", .on = "footpace", .place = { 0, 7500, 0 } });
  church_add (&project, &(ChurchThing) { .kind = "ambo", .id = "ambo", .place = { -3400, 900, 0 } });
  church_add (&project, &(ChurchThing) { .kind = "ambo", .id = "lectern", .place = { 0, -13000, 0 } });
  scene = fp_scene_new (project, 0);
  fp_project_unref (project);
  elevation = fp_projection_new (scene, FP_VIEW_ELEVATION);
  g_assert_cmpfloat (church_placed (scene, "ambo")->plan.y0, <, church_placed (scene, "footpace")->plan.y0 - 3000);
  g_assert_cmpfloat (length_of (elevation, owner_of (scene, "ambo", FALSE), FP_N_PENS), >, 1000);
  g_assert_cmpfloat (length_of (elevation, owner_of (scene, "lectern", FALSE), FP_N_PENS), ==, 0);
}

/* What stands in the very place of its like adds nothing: it takes no longer than to draw one.  What it is made of, or its
 * standing, tells another. */
static void
test_coincident (void)
{
  FpProject *project = church_new (FP_FACING_EAST);
  g_autoptr (FpScene) scene = NULL;
  g_autoptr (FpProjection) plan = NULL, elevation = NULL;
  g_autoptr (GTimer) timer = NULL;

  church_floor (&project, "sanctuary", (FpBox) { -5000, 0, 5000, 9000 }, 300, 1, 0, 0);
  for (guint i = 0; i < 800; i++)
    {
      g_autofree char *id = g_strdup_printf ("altar-%u", i);
      church_add (&project, &(ChurchThing) { .kind = "altar", .id = id, .place = { 0, 6000, 0 } });
    }
  church_add (&project, &(ChurchThing) { .kind = "altar", .id = "longer", .place = { 0, 6000, 0 }, .param = { { "length", 3600 } } });
  scene = fp_scene_new (project, 0);
  fp_project_unref (project);
  timer = g_timer_new ();
  plan = fp_projection_new (scene, FP_VIEW_PLAN);
  elevation = fp_projection_new (scene, FP_VIEW_ELEVATION);
  g_test_message ("%.3f s", g_timer_elapsed (timer, NULL));
  /* One by one they take many seconds of this. */
  g_assert_cmpfloat (g_timer_elapsed (timer, NULL), <, 1.0);
  g_assert_cmpfloat (length_of (plan, owner_of (scene, "altar-0", FALSE), FP_N_PENS), >, 2000);
  g_assert_cmpfloat (length_of (plan, owner_of (scene, "altar-799", FALSE), FP_N_PENS), ==, 0);
  g_assert_cmpfloat (length_of (plan, owner_of (scene, "longer", FALSE), FP_N_PENS), >, 2000);
}

static void
test_section (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) section = fp_projection_new (scene, FP_VIEW_SECTION);
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);
  const FpPlaced *altar = &placed[owner_of (scene, "altar", FALSE)];

  /* Mensa and chest, by their own boxes: less than the mensa's depth times the height, more than its half. */
  g_assert_cmpfloat (area_of (section, owner_of (scene, "altar", FALSE)), <, 750 * altar->extent.height);
  g_assert_cmpfloat (area_of (section, owner_of (scene, "altar", FALSE)), >, 375 * altar->extent.height);
  /* East wall whole, west wall above its door of 2100. */
  g_assert_cmpfloat_with_epsilon (area_of (section, owner_of (scene, "walls", FALSE)), 600 * 8000 + 600 * 5900, 1);
  /* East on the left. */
  g_assert_cmpfloat (fp_projection_box (section).x0, <, -7000);
  g_assert_cmpfloat (fp_projection_box (section).x1, >, 14000);
  /* The crucifix is on the axis but not shown as cut. */
  g_assert_cmpfloat (area_of (section, owner_of (scene, "crucifix", FALSE)), ==, 0);
  g_assert_cmpfloat (length_of (section, owner_of (scene, "crucifix", FALSE), FP_N_PENS), >, 1000);
}

/* --- cut elsewhere ---------------------------------------------------------- */

static FpProjection *
cut_at (const FpScene *scene, FpViewId view, double at, gboolean turned)
{
  const FpCut cut = { TRUE, at, turned };

  return fp_projection_new_cut (scene, view, &cut, 0);
}

/* Before the pews, across the nave: what is cut is the same whichever way one faces; what is seen is not. */
static void
test_section_across (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) east = cut_at (scene, FP_VIEW_ELEVATION, -2000, FALSE);
  g_autoptr (FpProjection) west = cut_at (scene, FP_VIEW_ELEVATION, -2000, TRUE);
  const int altar = owner_of (scene, "altar", FALSE), pews = owner_of (scene, "pews-gospel", FALSE);
  FpProjection *const both[] = { east, west };

  for (guint i = 0; i < 2; i++)
    {
      g_assert_cmpfloat_with_epsilon (area_of (both[i], owner_of (scene, "walls", FALSE)), 2 * 600 * 8000, 1);
      g_assert_cmpfloat_with_epsilon (area_of (both[i], owner_of (scene, "nave", FALSE)), 10000 * 200, 1);
      g_assert_cmpfloat (area_of (both[i], owner_of (scene, "sanctuary", FALSE)), ==, 0);
    }
  g_assert_cmpfloat (length_of (east, altar, FP_N_PENS), >, 2400);
  g_assert_cmpfloat (length_of (west, altar, FP_N_PENS), ==, 0);
  g_assert_cmpfloat (length_of (east, pews, FP_N_PENS), ==, 0);
  g_assert_cmpfloat (length_of (west, pews, FP_N_PENS), >, 3660);
  /* The Gospel side is on the left as one faces east, and on the right as one faces west. */
  g_assert_cmpint (fp_projection_pick (west, (FpPoint) { 2600, 300 }), ==, pews);
}

/* Through the Gospel side's wall, which has no opening: 20 500 within, and 600 at either end. */
static void
test_section_along (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) from_gospel = cut_at (scene, FP_VIEW_SECTION, -5300, FALSE);
  g_autoptr (FpProjection) from_epistle = cut_at (scene, FP_VIEW_SECTION, -5300, TRUE);
  g_autoptr (FpProjection) pews = cut_at (scene, FP_VIEW_SECTION, -2600, FALSE);
  g_autoptr (FpProjection) axis = fp_projection_new (scene, FP_VIEW_SECTION);
  g_autoptr (FpProjection) told = cut_at (scene, FP_VIEW_SECTION, 0, FALSE);
  const int walls = owner_of (scene, "walls", FALSE), altar = owner_of (scene, "altar", FALSE);
  const FpBox one = fp_projection_box (from_gospel), other = fp_projection_box (from_epistle);
  guint n, m;

  g_assert_cmpfloat_with_epsilon (area_of (from_gospel, walls), 21700.0 * 8000, 10);
  g_assert_cmpfloat_with_epsilon (area_of (from_epistle, walls), 21700.0 * 8000, 10);
  g_assert_cmpfloat_with_epsilon (one.x0, -7100, 1e-6); /* east on the left … */
  g_assert_cmpfloat_with_epsilon (other.x1, 7100, 1e-6); /* … and on the right */
  /* The altar reaches 1350 at most from the axis: it is seen beyond the plane, and not cut. */
  g_assert_cmpfloat (area_of (pews, altar), ==, 0);
  g_assert_cmpfloat (length_of (pews, altar, FP_N_PENS), >, 500);
  /* Told to be on the axis it is what it is when nobody says. */
  fp_projection_lines (axis, &n);
  fp_projection_lines (told, &m);
  g_assert_cmpuint (n, ==, m);
}

/* --- when nobody waits any longer ------------------------------------------- */

static void
test_cancelled (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (GCancellable) cancel = g_cancellable_new ();
  g_autoptr (FpProjection) told = fp_projection_again (NULL, scene, FP_VIEW_PLAN, NULL, 0, cancel);
  g_autoptr (FpProjection) cut_short = NULL;
  guint n;

  fp_projection_lines (told, &n);
  g_assert_cmpuint (n, >, 100);
  g_cancellable_cancel (cancel);
  cut_short = fp_projection_again (NULL, scene, FP_VIEW_PLAN, NULL, 0, cancel);
  fp_projection_lines (cut_short, &n);
  g_assert_cmpuint (n, ==, 0);
}

/* --- what is left out --------------------------------------------------------- */

static FpProjection *
without (const FpScene *scene, FpViewId view, FpShow show)
{
  return fp_projection_new_cut (scene, view, NULL, 1u << show);
}

/* It is neither drawn nor picked, and hides nothing: of the altar behind the rail more is seen. */
static void
test_left_out (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) all = fp_projection_new (scene, FP_VIEW_ELEVATION);
  g_autoptr (FpProjection) no_rail = without (scene, FP_VIEW_ELEVATION, FP_SHOW_FURNITURE);
  g_autoptr (FpProjection) no_seats = without (scene, FP_VIEW_PLAN, FP_SHOW_SEATS);
  g_autoptr (FpProjection) none_removed = without (scene, FP_VIEW_PLAN, FP_SHOW_REMOVED);
  g_autoptr (FpProjection) no_building = without (scene, FP_VIEW_PLAN, FP_SHOW_BUILDING);
  const int rail = owner_of (scene, "rail", FALSE), footpace = owner_of (scene, "footpace", FALSE);
  const int pews = owner_of (scene, "pews-epistle", FALSE);
  guint n;

  g_assert_cmpfloat (length_of (all, rail, FP_N_PENS), >, 8000);
  g_assert_cmpfloat (length_of (no_rail, rail, FP_N_PENS), ==, 0);
  g_assert_cmpfloat (length_of (no_rail, footpace, FP_N_PENS), >, length_of (all, footpace, FP_N_PENS) + 500);
  g_assert_cmpfloat (length_of (no_seats, pews, FP_N_PENS), ==, 0);
  g_assert_cmpint (fp_projection_pick (no_seats, (FpPoint) { 2600, -6000 }), !=, pews);
  g_assert_cmpfloat (length_of (none_removed, owner_of (scene, "old-altar", TRUE), FP_N_PENS), ==, 0);
  g_assert_cmpfloat (length_of (none_removed, owner_of (scene, "altar", FALSE), FP_N_PENS), >, 0);
  fp_projection_cuts (no_building, &n);
  g_assert_cmpuint (n, ==, 0);
}

/* Footpace: three steps of 305 round a top; the area of its cut follows from its parameters. */
static void
test_footpace_cut (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) section = fp_projection_new (scene, FP_VIEW_SECTION);
  const double riser = 152, tread = 305, top = 750 + 1067;

  g_assert_cmpfloat_with_epsilon (area_of (section, owner_of (scene, "footpace", FALSE)),
                                  riser * (top + (top + tread) + (top + 2 * tread)), 2);
}

/* What is taken away lies over the drawing whole, and takes nothing from it. */
static void
test_ghosts (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) elevation = fp_projection_new (scene, FP_VIEW_ELEVATION);
  g_autoptr (FpProjection) plan = fp_projection_new (scene, FP_VIEW_PLAN);
  const int old = owner_of (scene, "old-altar", TRUE);
  guint n, in_front = 0;
  const FpProjectedLine *line = fp_projection_lines (elevation, &n);

  /* The mensa's outline, though the rail stands before it; where lines coincide what stands has them. */
  g_assert_cmpfloat (length_of (elevation, old, FP_N_PENS), >, 2 * 2400);
  /* The credence was only moved along y: in elevation it covers what it was, in plan it does not. */
  g_assert_cmpfloat (length_of (elevation, owner_of (scene, "old-credence", TRUE), FP_N_PENS), ==, 0);
  g_assert_cmpfloat_with_epsilon (length_of (plan, owner_of (scene, "old-credence", TRUE), FP_N_PENS), 2 * (762 + 305),
                                  1e-3);
  /* The altar is farther than the old one, yet is not hidden by it. */
  for (guint i = 0; i < n; i++)
    if ((int) line[i].owner == owner_of (scene, "altar", FALSE)
        && MIN (line[i].a.y, line[i].b.y) < 150 + 990 && fabs (line[i].a.x) < 1200)
      in_front++;
  g_assert_cmpuint (in_front, >, 0);
  g_assert_cmpfloat (area_of (elevation, old), ==, 0);
}

/* No line is drawn over another: level and upright ones, which nearly all are. */
static void
check_no_doubles (FpProjection *projection)
{
  guint n;
  const FpProjectedLine *line = fp_projection_lines (projection, &n);

  for (guint i = 0; i < n; i++)
    for (guint k = i + 1; k < n; k++)
      {
        const FpProjectedLine *a = &line[i], *b = &line[k];
        const gboolean level = a->a.y == a->b.y && b->a.y == b->b.y && fabs (a->a.y - b->a.y) < 1e-3;
        if (!level)
          continue;
        const double from = MAX (MIN (a->a.x, a->b.x), MIN (b->a.x, b->b.x));
        const double to = MIN (MAX (a->a.x, a->b.x), MAX (b->a.x, b->b.x));
        g_assert_cmpfloat (to - from, <, 1e-3);
      }
}

static void
test_no_doubles (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();

  for (guint view = 0; view < FP_N_VIEWS; view++)
    {
      g_autoptr (FpProjection) projection = fp_projection_new (scene, (FpViewId) view);
      check_no_doubles (projection);
    }
}

static void
test_order (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) plan = fp_projection_new (scene, FP_VIEW_PLAN);
  guint n;
  const FpProjectedLine *line = fp_projection_lines (plan, &n);

  for (guint i = 1; i < n; i++)
    g_assert_true (line[i].owner > line[i - 1].owner
                   || (line[i].owner == line[i - 1].owner && line[i].pen >= line[i - 1].pen));
}

static void
test_pick (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) plan = fp_projection_new (scene, FP_VIEW_PLAN);
  g_autoptr (FpProjection) elevation = fp_projection_new (scene, FP_VIEW_ELEVATION);
  const FpPoint mensa = { 800, 4000 }, front = { 800, 150 + 456 + 700 }, gone = { 300, 1700 };

  g_assert_cmpint (fp_projection_pick (plan, mensa), ==, owner_of (scene, "altar", FALSE));
  g_assert_cmpint (fp_projection_pick (elevation, front), ==, owner_of (scene, "altar", FALSE));
  g_assert_cmpint (fp_projection_pick (plan, gone), ==, owner_of (scene, "old-altar", TRUE));
  g_assert_cmpint (fp_projection_pick (plan, (FpPoint) { -4000, -1500 }), ==, owner_of (scene, "nave", FALSE));
  g_assert_cmpint (fp_projection_pick (plan, (FpPoint) { 90000, 0 }), ==, -1);
}

static void
test_empty (void)
{
  FpProject *project = church_new (FP_FACING_EAST);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);

  for (guint view = 0; view < FP_N_VIEWS; view++)
    {
      g_autoptr (FpProjection) projection = fp_projection_new (scene, (FpViewId) view);
      const FpBox box = fp_projection_box (projection);
      guint n;
      fp_projection_lines (projection, &n);
      g_assert_cmpuint (n, ==, 0);
      g_assert_true (fp_box_is_empty (&box));
      g_assert_cmpint (fp_projection_pick (projection, (FpPoint) { 0, 0 }), ==, -1);
    }
  fp_project_unref (project);
}

static gboolean
same_line (const FpProjectedLine *a, const FpProjectedLine *b, gboolean turned)
{
  const FpPoint p = turned ? a->b : a->a, q = turned ? a->a : a->b;

  return a->owner == b->owner && a->pen == b->pen && hypot (p.x - b->a.x, p.y - b->a.y) < 1e-6
         && hypot (q.x - b->b.x, q.y - b->b.y) < 1e-6;
}

static gpointer
project_again (gpointer data)
{
  return fp_projection_new (data, FP_VIEW_PLAN);
}

/* The same lines, in the same order, whichever thread makes them. */
static void
test_threads (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) here = fp_projection_new (scene, FP_VIEW_PLAN);
  GThread *thread[4];
  guint n, m;
  const FpProjectedLine *line = fp_projection_lines (here, &n);

  for (guint i = 0; i < 4; i++)
    thread[i] = g_thread_new ("projection", project_again, scene);
  for (guint i = 0; i < 4; i++)
    {
      g_autoptr (FpProjection) there = g_thread_join (thread[i]);
      const FpProjectedLine *other = fp_projection_lines (there, &m);
      g_assert_cmpuint (m, ==, n);
      for (guint k = 0; k < n; k++)
        g_assert_true (same_line (&line[k], &other[k], FALSE));
    }
}

/* A nave of 1,200 seats: what is seen stays the same however much is hidden, and the gallery hangs dashed above it. */
static void
test_great (void)
{
  g_autoptr (FpScene) scene = great_scene_new (33);
  g_autoptr (FpProjection) plan = fp_projection_new (scene, FP_VIEW_PLAN);
  const gint64 before = g_get_monotonic_time ();

  for (guint view = 0; view < FP_N_VIEWS; view++)
    fp_projection_unref (fp_projection_new (scene, (FpViewId) view));
  g_test_message ("three projections of 1,200 seats: %.1f ms", (double) (g_get_monotonic_time () - before) / 1000.0);
  g_assert_cmpfloat (length_of (plan, owner_of (scene, "loft", FALSE), FP_N_PENS), ==, 0);
  g_assert_cmpfloat (length_of (plan, owner_of (scene, "gallery", FALSE), FP_PEN_HIDDEN), >, 23000);
  g_assert_cmpfloat (length_of (plan, owner_of (scene, "gallery", FALSE), FP_PEN_OUTLINE), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/projection/plan", test_plan);
  g_test_add_func ("/projection/elevation", test_elevation);
  g_test_add_func ("/projection/coincident", test_coincident);
  g_test_add_func ("/projection/deep-sanctuary", test_deep_sanctuary);
  g_test_add_func ("/projection/section", test_section);
  g_test_add_func ("/projection/cancelled", test_cancelled);
  g_test_add_func ("/projection/footpace-cut", test_footpace_cut);
  g_test_add_func ("/projection/ghosts", test_ghosts);
  g_test_add_func ("/projection/no-doubles", test_no_doubles);
  g_test_add_func ("/projection/order", test_order);
  g_test_add_func ("/projection/pick", test_pick);
  g_test_add_func ("/projection/empty", test_empty);
  g_test_add_func ("/projection/threads", test_threads);
  g_test_add_func ("/projection/great", test_great);
  g_test_add_func ("/projection/section-across", test_section_across);
  g_test_add_func ("/projection/section-along", test_section_along);
  g_test_add_func ("/projection/left-out", test_left_out);
  return g_test_run ();
}
