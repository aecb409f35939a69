/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The board on a (virtual) screen, with a project on it. */
#include "board-view-private.h"
#include "waiting.h"
#include "widget-help.h"

#include "footpace/retype.h"
#include "footpace/setting-out.h"

#include <math.h>
#include <string.h>

static void
test_board_is_told (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);

  fp_board_view_set_document (FP_BOARD_VIEW (board), d);
  gtk_test_accessible_assert_role (board, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_test_accessible_assert_property (board, GTK_ACCESSIBLE_PROPERTY_LABEL, "Board");
  g_assert_true (gtk_test_accessible_has_property (GTK_ACCESSIBLE (board), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION));
  g_assert_true (gtk_widget_get_focusable (board));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_board_frames (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);
  double sanctuary, whole, x, y;

  g_assert_cmpfloat (fp_board_view_scale (b), ==, 0.0);
  fp_board_view_set_document (b, d);
  WAIT_FOR (fp_board_view_scale (b) > 0.0);
  sanctuary = fp_board_view_scale (b);
  /* The altar is in view in all three. */
  for (guint v = 0; v < FP_N_VIEWS; v++)
    {
      FpVec3 at = { help_altar (d)->place.x, help_altar (d)->place.y, help_altar (d)->level };

      g_assert_true (fp_board_view_locate (b, (FpViewId) v, at, &x, &y));
      g_assert_cmpfloat (x, >, 0.0);
      g_assert_cmpfloat (x, <, gtk_widget_get_width (board));
      g_assert_cmpfloat (y, >, 0.0);
      g_assert_cmpfloat (y, <, gtk_widget_get_height (board));
    }
  fp_board_view_frame (b, TRUE);
  whole = fp_board_view_scale (b);
  /* In a window so small that the titles alone decide, both are framed at one scale. */
  g_assert_cmpfloat (whole, >=, sanctuary);
  fp_board_view_frame (b, FALSE);
  g_assert_cmpfloat (fp_board_view_scale (b), ==, sanctuary);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* What is looked at stays where it is when the church grows, until someone frames it again. */
static void
test_board_does_not_rescale (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);
  const FpScene *scene;
  double before;
  gint64 first;

  fp_board_view_set_document (b, d);
  WAIT_FOR (fp_board_view_scale (b) > 0.0);
  gtk_window_set_default_size (GTK_WINDOW (window), 1200, 900);
  WAIT_FOR (gtk_widget_get_width (board) > 1000);
  before = fp_board_view_scale (b);
  g_assert_true (fp_document_edit (d, fp_set_out_param (fp_document_scene (d), "walls", "height", 12000.0, NULL), "Higher", NULL));
  scene = fp_document_scene (d);
  WAIT_FOR (fp_board_view_has_projections (b) && fp_projection_scene (b->projection[FP_VIEW_ELEVATION]) == scene);
  /* As when a field opens over the board. */
  first = gdk_frame_clock_get_frame_counter (gtk_widget_get_frame_clock (board));
  gtk_widget_queue_allocate (board);
  WAIT_FOR ((gtk_widget_queue_draw (board),
             gdk_frame_clock_get_frame_counter (gtk_widget_get_frame_clock (board)) > first + 3));
  g_assert_cmpfloat (fp_board_view_scale (b), ==, before);
  fp_board_view_frame (b, TRUE);
  g_assert_cmpfloat (fp_board_view_scale (b), >, before);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* First angle: plan and elevation share x, elevation and section share z, at every zoom (ISO 5456-2). */
static void
test_board_views_share_axes (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);
  const FpVec3 at = { 700.0, 1200.0, 450.0 };

  fp_board_view_set_document (b, d);
  WAIT_FOR (fp_board_view_scale (b) > 0.0);
  for (guint i = 0; i < 4; i++)
    {
      double x[FP_N_VIEWS], y[FP_N_VIEWS];

      for (guint v = 0; v < FP_N_VIEWS; v++)
        fp_board_view_locate (b, (FpViewId) v, at, &x[v], &y[v]);
      g_assert_cmpfloat_with_epsilon (x[FP_VIEW_PLAN], x[FP_VIEW_ELEVATION], 1e-6);
      g_assert_cmpfloat_with_epsilon (y[FP_VIEW_ELEVATION], y[FP_VIEW_SECTION], 1e-6);
      g_assert_cmpfloat (y[FP_VIEW_PLAN], >, y[FP_VIEW_ELEVATION]);
      g_assert_cmpfloat (x[FP_VIEW_SECTION], >, x[FP_VIEW_ELEVATION]);
      fp_board_view_zoom (b, 1.7);
    }
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_board_zooms (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);
  double scale;

  fp_board_view_set_document (b, d);
  WAIT_FOR (fp_board_view_scale (b) > 0.0);
  scale = fp_board_view_scale (b);
  fp_board_view_zoom (b, 2.0);
  g_assert_cmpfloat_with_epsilon (fp_board_view_scale (b), scale / 2.0, 1e-9);
  /* As near and as far as it goes, drawn each time: the page stays as large as the widget. */
  for (guint i = 0; i < 40; i++)
    {
      gint64 frame = gdk_frame_clock_get_frame_counter (gtk_widget_get_frame_clock (board));

      fp_board_view_zoom (b, i < 20 ? 1.5 : 1.0 / 1.8);
      WAIT_FOR (gdk_frame_clock_get_frame_counter (gtk_widget_get_frame_clock (board)) > frame);
    }
  g_assert_cmpfloat (fp_board_view_scale (b), >=, 1.0);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* One view has the whole surface, and the three come back as they lay. */
static void
test_board_shows_one_view (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);
  double scale, x, y, was_x, was_y;
  FpVec3 at;

  fp_board_view_show_only (b, FP_VIEW_PLAN); /* nothing is there to be shown yet */
  g_assert_cmpint (fp_board_view_only (b), ==, -1);
  fp_board_view_set_document (b, d);
  WAIT_FOR (fp_board_view_scale (b) > 0.0);
  at = (FpVec3) { help_altar (d)->place.x, help_altar (d)->place.y, help_altar (d)->level };
  fp_board_view_zoom (b, 1.3);
  scale = fp_board_view_scale (b);
  fp_board_view_locate (b, FP_VIEW_PLAN, at, &was_x, &was_y);
  for (guint v = 0; v < FP_N_VIEWS; v++)
    {
      fp_board_view_show_only (b, (int) v);
      g_assert_cmpint (fp_board_view_only (b), ==, (int) v);
      for (guint w = 0; w < FP_N_VIEWS; w++)
        {
          fp_board_view_locate (b, (FpViewId) w, at, &x, &y);
          g_assert_cmpint (x > 0.0 && x < gtk_widget_get_width (board) && y > 0.0 && y < gtk_widget_get_height (board),
                           ==, v == w);
        }
    }
  fp_board_view_show_only (b, -1);
  g_assert_cmpfloat (fp_board_view_scale (b), ==, scale);
  fp_board_view_locate (b, FP_VIEW_PLAN, at, &x, &y);
  g_assert_cmpfloat_with_epsilon (x, was_x, 1e-6);
  g_assert_cmpfloat_with_epsilon (y, was_y, 1e-6);
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_board_nudges (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpPlace was = help_altar (d)->place;

  fp_board_view_set_document (FP_BOARD_VIEW (board), d);
  fp_board_view_nudge (FP_BOARD_VIEW (board), 10.0, 0.0); /* nothing is chosen: nothing moves */
  g_assert_cmpuint (fp_document_depth (d), ==, 0);
  fp_document_choose (d, help_altar_id (d));
  for (guint i = 0; i < 3; i++)
    fp_board_view_nudge (FP_BOARD_VIEW (board), 10.0, -100.0);
  g_assert_cmpfloat_with_epsilon (help_altar (d)->place.x, was.x + 30.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (help_altar (d)->place.y, was.y - 300.0, 1e-9);
  g_assert_cmpuint (fp_document_depth (d), ==, 1);
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_board_removes (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  const char *id = help_altar_id (d);

  fp_board_view_set_document (FP_BOARD_VIEW (board), d);
  fp_document_choose (d, id);
  fp_board_view_remove_chosen (FP_BOARD_VIEW (board));
  g_assert_cmpint (fp_scene_find (fp_document_scene (d), id), ==, -1);
  fp_document_undo (d);
  g_assert_cmpint (fp_scene_find (fp_document_scene (d), id), >=, 0);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Where a finding is, in the far nave: the board shows it. */
static void
test_board_shows_a_mark (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);
  const FpVec3 far_west = { -3000.0, -22000.0, 0.0 };
  double x, y;

  fp_board_view_set_document (b, d);
  WAIT_FOR (fp_board_view_scale (b) > 0.0);
  fp_board_view_mark (b, &far_west);
  fp_board_view_show_marked (b);
  g_assert_true (fp_board_view_locate (b, FP_VIEW_PLAN, far_west, &x, &y));
  g_assert_cmpfloat (y, >, 0.0);
  g_assert_cmpfloat (y, <, gtk_widget_get_height (board));
  fp_board_view_mark (b, NULL);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* The way of a finding is drawn with its mark, and goes with it. */
static void
test_board_shows_a_way (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);
  const FpVec3 at = { 0.0, 365.0, 300.0 }, elsewhere = { 0.0, 0.0, 0.0 };
  FpPoint route[] = { { 0.0, -5000.0 }, { 0.0, 3000.0 } };
  const FpWay way = { .width = 760.0, .narrows = TRUE, .narrow = { { -380.0, 365.0 }, { 380.0, 365.0 } }, .owner = { -1, -1 },
                      .route = route, .n_route = 2 };

  fp_board_view_set_document (b, d);
  WAIT_FOR (fp_board_view_scale (b) > 0.0);
  fp_board_view_mark (b, &at);
  g_assert_null (fp_board_view_marked_way (b));
  fp_board_view_mark_way (b, &way);
  g_assert_nonnull (fp_board_view_marked_way (b));
  g_assert_true (fp_board_view_marked_way (b)->route != route); /* a copy */
  {
    const double before = fp_board_view_scale (b);

    fp_board_view_frame (b, TRUE); /* at another scale it is drawn anew */
    WAIT_FOR (fp_board_view_scale (b) != before);
  }
  fp_board_view_mark (b, &at);
  g_assert_nonnull (fp_board_view_marked_way (b));
  fp_board_view_mark (b, &elsewhere);
  g_assert_null (fp_board_view_marked_way (b));
  fp_board_view_mark_way (b, &way);
  fp_board_view_mark (b, NULL);
  g_assert_null (fp_board_view_marked_way (b));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
show_length (FpBoardView *board, FpVec3 a, FpVec3 b)
{
  g_autoptr (FpEvidence) evidence = fp_evidence_new ();

  fp_evidence_add_length (evidence, a, b, 1.0);
  fp_board_view_mark (board, &a);
  fp_board_view_mark_evidence (board, evidence);
  fp_board_view_show_marked (board);
}

/* What was measured is at least 12 mm long on the board, and on it. */
static void
assert_is_read (FpBoardView *board, FpViewId view, FpVec3 a, FpVec3 b)
{
  const double least = 12.0 * 96.0 / 25.4;
  double x[2], y[2];

  g_assert_true (fp_board_view_locate (board, view, a, &x[0], &y[0]));
  g_assert_true (fp_board_view_locate (board, view, b, &x[1], &y[1]));
  g_assert_cmpfloat (hypot (x[1] - x[0], y[1] - y[0]), >=, least);
  for (guint i = 0; i < 2; i++)
    {
      g_assert_cmpfloat (x[i], >, 0.0);
      g_assert_cmpfloat (x[i], <, gtk_widget_get_width (GTK_WIDGET (board)));
      g_assert_cmpfloat (y[i], >, 0.0);
      g_assert_cmpfloat (y[i], <, gtk_widget_get_height (GTK_WIDGET (board)));
    }
}

/* What is read stays where it is; what is too small is brought near, and what is out of view into it; what comes next finds
 * the board as it lay before. */
static void
test_board_brings_what_was_measured (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);
  const FpVec3 far_west = { -3000.0, -22000.0, 0.0 };
  const FpVec3 wide[2] = { { -1500.0, 4000.0, 1000.0 }, { 1500.0, 4000.0, 1000.0 } };
  const FpVec3 flame[2] = { { 900.0, 4000.0, 1400.0 }, { 900.0, 4000.0, 1520.0 } };
  const FpVec3 tread[2] = { { 0.0, 3000.0, 160.0 }, { 0.0, 3300.0, 160.0 } };
  const FpVec3 door[2] = { { -950.0, -22000.0, 0.0 }, { 950.0, -22000.0, 0.0 } };
  double first, near;

  fp_board_view_set_document (b, d);
  WAIT_FOR (fp_board_view_scale (b) > 0.0 && b->layout.seen.x1 > 0.0);
  first = fp_board_view_scale (b);
  show_length (b, wide[0], wide[1]);
  g_assert_cmpfloat (fp_board_view_scale (b), ==, first);
  show_length (b, flame[0], flame[1]);
  near = fp_board_view_scale (b);
  g_assert_cmpfloat (near, <, first);
  assert_is_read (b, FP_VIEW_ELEVATION, flame[0], flame[1]);
  show_length (b, tread[0], tread[1]);
  g_assert_cmpfloat (fp_board_view_scale (b), >, near);
  assert_is_read (b, FP_VIEW_PLAN, tread[0], tread[1]);
  show_length (b, wide[0], wide[1]);
  assert_is_read (b, FP_VIEW_PLAN, wide[0], wide[1]);

  fp_board_view_mark (b, &far_west);
  fp_board_view_show_marked (b);
  g_assert_cmpfloat (fp_board_view_scale (b), >, first);
  show_length (b, wide[0], wide[1]);
  g_assert_cmpfloat (fp_board_view_scale (b), ==, first);
  show_length (b, door[0], door[1]); /* far off, but large enough */
  g_assert_cmpfloat (fp_board_view_scale (b), ==, first);
  assert_is_read (b, FP_VIEW_PLAN, door[0], door[1]);
  fp_board_view_zoom (b, 0.5);
  show_length (b, wide[0], wide[1]); /* zoomed by hand since: it is not taken back */
  assert_is_read (b, FP_VIEW_PLAN, wide[0], wide[1]);
  g_assert_cmpfloat (fp_board_view_scale (b), !=, first);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* What was measured is drawn with its mark likewise, and instead of the ring. */
static void
test_board_shows_what_was_measured (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);
  const FpVec3 at = { 0.0, 365.0, 300.0 }, elsewhere = { 0.0, 0.0, 0.0 };
  g_autoptr (FpEvidence) evidence = fp_evidence_new (), none = fp_evidence_new ();

  fp_evidence_add_length (evidence, (FpVec3) { -380.0, 365.0, 300.0 }, (FpVec3) { 380.0, 365.0, 300.0 }, 1.0);
  fp_board_view_set_document (b, d);
  WAIT_FOR (fp_board_view_scale (b) > 0.0);
  fp_board_view_mark (b, &at);
  fp_board_view_mark_evidence (b, none);
  g_assert_null (fp_board_view_marked_evidence (b));
  fp_board_view_mark_evidence (b, evidence);
  g_assert_true (fp_board_view_marked_evidence (b) != evidence); /* a copy */
  {
    const double before = fp_board_view_scale (b);

    fp_board_view_frame (b, TRUE); /* at another scale it is drawn anew */
    WAIT_FOR (fp_board_view_scale (b) != before);
  }
  fp_board_view_mark (b, &at);
  g_assert_cmpfloat (fp_evidence_length (fp_board_view_marked_evidence (b)), ==, 760.0);
  fp_board_view_mark (b, &elsewhere);
  g_assert_null (fp_board_view_marked_evidence (b));
  fp_board_view_mark_evidence (b, evidence);
  fp_board_view_mark (b, NULL);
  g_assert_null (fp_board_view_marked_evidence (b));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* What is left out is no more drawn, and comes back; the section is cut where it is told. */
static void
test_board_shows_less (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);
  const FpCut cut = { TRUE, 900, TRUE };

  fp_board_view_set_hidden (b, 1u << FP_SHOW_SEATS);
  fp_board_view_set_document (b, d);
  WAIT_FOR (fp_board_view_lies_still (b));
  g_assert_cmpuint (fp_board_view_hidden (b), ==, 1u << FP_SHOW_SEATS);
  fp_board_view_set_hidden (b, 0);
  WAIT_FOR (fp_board_view_lies_still (b));
  fp_board_view_set_cut (b, FP_VIEW_SECTION, &cut);
  g_assert_true (fp_board_view_cut (b, FP_VIEW_SECTION).placed);
  g_assert_cmpfloat (fp_board_view_cut (b, FP_VIEW_SECTION).at, ==, 900);
  g_assert_false (fp_board_view_cut (b, FP_VIEW_SECTION).turned); /* it stands in first-angle arrangement */
  for (guint ground = FP_GROUND_OF_SYSTEM; ground <= FP_GROUND_DARK; ground++)
    fp_board_view_set_look (b, (FpGround) ground, FP_INK_SAFE);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Two of the three receptors are left: what red and green do together, and blue. */
static double
least_difference (FpInk a, FpInk b)
{
  return hypot (0.35 * (a.r - b.r) + 0.65 * (a.g - b.g), a.b - b.b);
}

/* What is chosen is told from all work, also by who sees no difference of red and green. */
static void
test_board_tells_the_chosen_by_colour (void)
{
  FpBoardView *b = g_object_ref_sink (FP_BOARD_VIEW (fp_board_view_new ()));

  for (guint ground = FP_GROUND_WHITE; ground <= FP_GROUND_DARK; ground++)
    for (guint ink = 0; ink < FP_N_INKS; ink++)
      for (guint s = FP_STANDING_PROPOSED; s <= FP_STANDING_REMOVED; s++)
        {
          fp_board_view_set_look (b, (FpGround) ground, (FpInkChoice) ink);
          g_assert_cmpfloat (least_difference (fp_board_view_accent (b),
                                               fp_pen_ink (FP_PEN_OUTLINE, (FpStanding) s,
                                                           fp_surface_look ((FpInkChoice) ink, ground == FP_GROUND_DARK))),
                             >, 0.25);
        }
  g_object_unref (b);
}

/* What is not shown is passed over by Tab, and left out by Ctrl+A. */
static void
test_board_chooses_what_is_shown (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);
  const FpHidden hidden = 1u << FP_SHOW_ALTAR | 1u << FP_SHOW_BUILDING;
  guint n_all, n_shown = 0, n_passed = 0;

  fp_board_view_set_document (b, d);
  WAIT_FOR (fp_board_view_scale (b) > 0.0);
  fp_board_view_choose_all (b);
  n_all = fp_document_n_chosen (d);
  g_assert_true (fp_document_is_chosen (d, help_altar_id (d)));
  fp_board_view_set_hidden (b, hidden);
  fp_board_view_choose_all (b);
  n_shown = fp_document_n_chosen (d);
  g_assert_cmpuint (n_shown, >, 0);
  g_assert_cmpuint (n_shown, <, n_all);
  g_assert_false (fp_document_is_chosen (d, help_altar_id (d)));
  fp_document_choose (d, NULL);
  while (fp_board_view_choose_next (b, FALSE))
    {
      const FpPlaced *placed = fp_document_chosen_placed (d);

      g_assert_true (fp_shows_thing (hidden, fp_item_kind (placed->item), placed->standing));
      n_passed++;
    }
  g_assert_cmpuint (n_passed, >=, n_shown);
  while (fp_board_view_choose_next (b, TRUE))
    n_passed--;
  g_assert_cmpuint (n_passed, ==, 1);
  gtk_window_destroy (GTK_WINDOW (window));
}

static gboolean
is_on_screen (FpBoardView *b, FpViewId view, FpVec3 at)
{
  double x, y;

  return fp_board_view_locate (b, view, at, &x, &y) && x > 0 && y > 0 && x < gtk_widget_get_width (GTK_WIDGET (b))
         && y < gtk_widget_get_height (GTK_WIDGET (b));
}

static gboolean
would_fit (FpBoardView *b, const FpPlaced *placed)
{
  const double size = MAX (MAX (placed->plan.x1 - placed->plan.x0, placed->plan.y1 - placed->plan.y0),
                           placed->extent.height);

  return size / b->scale * PX_PER_MM < MIN (gtk_widget_get_width (GTK_WIDGET (b)), gtk_widget_get_height (GTK_WIDGET (b)));
}

/* What Tab chooses is brought into view where it is off the screen, and nothing moves where it is not. */
static void
test_board_reveals (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);
  FpPoint away;
  guint n_fit = 0, panned = 0;

  fp_board_view_set_document (b, d);
  WAIT_FOR (fp_board_view_scale (b) > 0.0);
  fp_board_view_zoom (b, 4.0);
  fp_board_view_pan_by (b, (FpPoint) { 900.0, 700.0 });
  away = b->pan;
  while (fp_board_view_choose_next (b, FALSE))
    {
      const FpPlaced *placed = fp_document_chosen_placed (d);
      const FpVec3 middle = { (placed->plan.x0 + placed->plan.x1) / 2.0, (placed->plan.y0 + placed->plan.y1) / 2.0,
                              placed->level + placed->extent.height / 2.0 };
      const FpPoint before = b->pan;

      g_assert_true (!would_fit (b, placed) || is_on_screen (b, FP_VIEW_PLAN, middle) || is_on_screen (b, FP_VIEW_ELEVATION, middle)
                     || is_on_screen (b, FP_VIEW_SECTION, middle));
      n_fit += would_fit (b, placed) ? 1 : 0;
      fp_board_view_reveal (b, placed);
      g_assert_cmpfloat (b->pan.x, ==, before.x);
      g_assert_cmpfloat (b->pan.y, ==, before.y);
      panned += before.x != away.x ? 1 : 0;
    }
  g_assert_cmpuint (n_fit, >, 5);
  g_assert_cmpuint (panned, >, 0);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* The line is taken hold of on the plan, where nothing that moves lies under it, and moved; given up, it is put back. */
static void
test_board_drags_the_section (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);
  const FpCut cut = { TRUE, 900, FALSE };
  const FpToolPress press = { FALSE };
  const FpToolManner manner = { FALSE };
  FpToolHit hit = { .view = -1 };
  FpToolAnswer answer;
  double x = 0, y = 0, low, high;

  fp_board_view_set_document (b, d);
  fp_board_view_set_cut (b, FP_VIEW_SECTION, &cut);
  WAIT_FOR (fp_board_view_is_current (b) && fp_board_view_scale (b) > 0.0);
  fp_board_view_ensure (b);
  for (double at = -6000; at < 6000 && !fp_board_view_is_section (hit.item); at += 100)
    {
      fp_board_view_locate (b, FP_VIEW_PLAN, (FpVec3) { 900, at, 0 }, &x, &y);
      hit = fp_board_view_hit (b, x, y);
    }
  g_assert_true (fp_board_view_is_section (hit.item));
  for (guint keep = 0; keep < 2; keep++)
    {
      const FpPoint from = { 50, 50 }, to = { 50 + 500 / hit.scale, 50 };

      answer = fp_board_tool_press (&b->tool, from, &hit, press);
      fp_board_view_obey (b, &answer);
      answer = fp_board_tool_motion (&b->tool, to, manner);
      fp_board_view_obey (b, &answer);
      answer = fp_board_tool_motion (&b->tool, to, manner);
      fp_board_view_obey (b, &answer);
      g_assert_cmpfloat_with_epsilon (fp_board_view_cut (b, FP_VIEW_SECTION).at, 1400, 1e-6);
      answer = keep ? fp_board_tool_release (&b->tool, to) : fp_board_tool_cancel (&b->tool);
      fp_board_view_obey (b, &answer);
      g_assert_cmpfloat_with_epsilon (fp_board_view_cut (b, FP_VIEW_SECTION).at, keep ? 1400 : 900, 1e-6);
      fp_board_tool_init (&b->tool, b->tool.threshold);
    }
  /* Dragged out of the church it stays at its end, where it can be taken hold of again. */
  g_assert_true (fp_board_view_cut_range (b, FP_VIEW_SECTION, &low, &high));
  answer = fp_board_tool_press (&b->tool, (FpPoint) { 50, 50 }, &hit, press);
  fp_board_view_obey (b, &answer);
  for (guint i = 0; i < 2; i++)
    {
      answer = fp_board_tool_motion (&b->tool, (FpPoint) { 50 + 1e6 / hit.scale, 50 }, manner);
      fp_board_view_obey (b, &answer);
    }
  g_assert_cmpfloat (fp_board_view_cut (b, FP_VIEW_SECTION).at, ==, high);
  answer = fp_board_tool_cancel (&b->tool);
  fp_board_view_obey (b, &answer);
  fp_board_tool_init (&b->tool, b->tool.threshold);
  g_assert_null (fp_document_undo_label (d)); /* nothing of the project has changed */
  g_assert_null (fp_document_chosen (d));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Paper that was panned a little, and lies still, has its titles where they are seen. */
static void
test_board_settles (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);
  double x, y, x_then, y_then;

  fp_board_view_set_document (b, d);
  WAIT_FOR (fp_board_view_scale (b) > 0.0);
  fp_board_view_ensure (b);
  fp_board_view_pan_by (b, (FpPoint) { -9.3, 11.7 });
  g_assert_cmpfloat (b->laid_pan.x, !=, b->pan.x);
  fp_board_view_locate (b, FP_VIEW_PLAN, (FpVec3) { 0, 0, 0 }, &x, &y);
  WAIT_FOR (b->laid_pan.x == b->pan.x && b->laid_pan.y == b->pan.y);
  fp_board_view_locate (b, FP_VIEW_PLAN, (FpVec3) { 0, 0, 0 }, &x_then, &y_then);
  g_assert_cmpfloat_with_epsilon (x, x_then, 0.51); /* before, it lay on whole pixels */
  g_assert_cmpfloat_with_epsilon (y, y_then, 0.51);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Nobody pulls what is not shown. */
static void
test_board_hides_handles (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);
  const FpScene *scene;
  const FpPlaced *altar;
  FpPoint on;

  fp_board_view_set_document (b, d);
  WAIT_FOR (fp_board_view_is_current (b) && fp_board_view_scale (b) > 0.0);
  scene = fp_document_scene (d);
  altar = &fp_scene_placed (scene, NULL)[fp_scene_celebrated_altar (scene)];
  fp_document_choose (d, fp_item_id (altar->item));
  on = fp_board_view_on_widget (b, FP_VIEW_PLAN, (FpVec3) { altar->plan.x1, (altar->plan.y0 + altar->plan.y1) / 2, 0 });
  g_assert_true (fp_board_view_has_handles (b));
  g_assert_cmpuint (fp_board_view_handle_at (b, on.x, on.y), >, 0);
  g_assert_true (fp_board_view_next_handle (b, FALSE));
  fp_board_view_set_hidden (b, 1u << FP_SHOW_ALTAR);
  g_assert_false (fp_board_view_has_handles (b));
  g_assert_cmpuint (fp_board_view_handle_at (b, on.x, on.y), ==, 0);
  g_assert_false (fp_board_view_next_handle (b, FALSE));
  fp_board_view_nudge_handle (b, 10, 0); /* of what was in hand: none is */
  g_assert_null (fp_document_undo_label (d));
  fp_board_view_set_hidden (b, 0);
  g_assert_true (fp_board_view_has_handles (b));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Takes hold at a hit, goes so far over the paper, lets go. */
static void
drag_by (FpBoardView *b, const FpToolHit *hit, double x, double y)
{
  const FpPoint from = { 50, 50 }, to = { 50 + x, 50 + y };
  const FpToolManner fine = { .fine = TRUE };
  FpToolAnswer answer = fp_board_tool_press (&b->tool, from, hit, (FpToolPress) { FALSE });

  fp_board_view_obey (b, &answer);
  for (guint i = 0; i < 2; i++)
    {
      answer = fp_board_tool_motion (&b->tool, to, fine);
      fp_board_view_obey (b, &answer);
    }
  answer = fp_board_tool_release (&b->tool, to);
  fp_board_view_obey (b, &answer);
}

/* In the place of the elevation: its line is dragged along the church, and facing west what is moved to the right goes to
 * the Gospel side. */
static void
test_board_cuts_across (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);
  FpCut cut = { TRUE, 0, TRUE };
  FpToolHit hit = { .view = -1 };
  const FpPlaced *altar;
  double x, y, before;

  fp_board_view_set_document (b, d);
  WAIT_FOR (fp_board_view_is_current (b) && fp_board_view_scale (b) > 0.0);
  altar = &fp_scene_placed (fp_document_scene (d), NULL)[fp_scene_celebrated_altar (fp_document_scene (d))];
  cut.at = altar->plan.y1 + 5.0;
  fp_board_view_set_cut (b, FP_VIEW_ELEVATION, &cut);
  WAIT_FOR (fp_board_view_lies_still (b));
  fp_board_view_ensure (b);
  for (double at = -8000; at < 8000 && !fp_board_view_is_section (hit.item); at += 100)
    {
      fp_board_view_locate (b, FP_VIEW_PLAN, (FpVec3) { at, cut.at, 0 }, &x, &y);
      hit = fp_board_view_hit (b, x, y);
    }
  g_assert_true (fp_board_view_is_section (hit.item));
  drag_by (b, &hit, 12, -400 / hit.scale);
  g_assert_cmpfloat_with_epsilon (fp_board_view_cut (b, FP_VIEW_ELEVATION).at, cut.at - 400, 1e-6);
  g_assert_true (fp_board_view_cut (b, FP_VIEW_ELEVATION).turned);
  WAIT_FOR (fp_board_view_lies_still (b));

  altar = &fp_scene_placed (fp_document_scene (d), NULL)[fp_scene_celebrated_altar (fp_document_scene (d))];
  before = altar->place.x;
  fp_board_view_locate (b, FP_VIEW_ELEVATION, (FpVec3) { altar->plan.x1 - 40, 0, altar->level + altar->extent.height - 30 }, &x, &y);
  hit = fp_board_view_hit (b, x, y);
  g_assert_cmpstr (hit.item, ==, fp_item_id (altar->item));
  g_assert_cmpint (hit.view, ==, FP_VIEW_ELEVATION);
  drag_by (b, &hit, 300 / hit.scale, 0);
  altar = &fp_scene_placed (fp_document_scene (d), NULL)[fp_scene_celebrated_altar (fp_document_scene (d))];
  g_assert_cmpfloat_with_epsilon (altar->place.x, before - 300, 1e-6);

  cut.placed = FALSE;
  fp_board_view_set_cut (b, FP_VIEW_ELEVATION, &cut);
  g_assert_false (fp_board_view_cut (b, FP_VIEW_ELEVATION).turned);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* The new credence stands over the old one, whose broken lines run across it: wherever it is clicked, the new is meant. */
static void
test_board_hits_the_new (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);
  const FpPlaced *credence;
  double x, y;

  fp_document_set_alternative (d, 1);
  gtk_window_set_default_size (GTK_WINDOW (window), 1000, 900);
  fp_board_view_set_document (b, d);
  WAIT_FOR (fp_board_view_scale (b) > 0.0 && gtk_widget_get_width (board) > 900);
  credence = fp_document_placed (d, "credence");
  g_assert_nonnull (credence);
  for (guint i = 1; i < 10; i++)
    {
      const FpPoint at = { credence->plan.x0 + (credence->plan.x1 - credence->plan.x0) / 2.0,
                           credence->plan.y0 + (credence->plan.y1 - credence->plan.y0) * i / 10.0 };

      g_assert_true (fp_board_view_locate (b, FP_VIEW_PLAN, (FpVec3) { at.x, at.y, 0.0 }, &x, &y));
      g_assert_cmpstr (fp_board_view_hit (b, x, y).item, ==, "credence");
    }
  gtk_window_destroy (GTK_WINDOW (window));
}

/* What is drawn beside the middle of a side of the wall of the parish, within the ring of its number. */
static guint32
pixel_at_side (FpBoardView *b, FpDocument *d, cairo_surface_t *surface, guint side)
{
  const FpPlaced *wall = fp_document_placed (d, "walls");
  const FpPoint *corner = wall->form.corner, p = corner[side - 1], q = corner[side % wall->form.n_corners];
  const FpPoint at = fp_place_point (&wall->place, (FpPoint) { (p.x + q.x) / 2.0, (p.y + q.y) / 2.0 });
  const int stride = cairo_image_surface_get_stride (surface);
  double x, y;
  guint32 pixel;

  g_assert_true (fp_board_view_locate (b, FP_VIEW_PLAN, (FpVec3) { at.x, at.y, 0.0 }, &x, &y));
  g_assert_cmpint ((int) x - 6, >, 0);
  cairo_surface_flush (surface);
  memcpy (&pixel, cairo_image_surface_get_data (surface) + (gsize) y * (gsize) stride + ((gsize) x - 6) * 4, sizeof pixel);
  return pixel;
}

/* Which side of the wall is meant by its number is seen while an opening is chosen, and at no other time. */
static void
test_board_numbers_sides (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);
  cairo_surface_t *surface;
  cairo_t *cr;

  gtk_window_set_default_size (GTK_WINDOW (window), 1000, 900);
  fp_board_view_set_document (b, d);
  WAIT_FOR (fp_board_view_scale (b) > 0.0 && gtk_widget_get_width (board) > 900);
  fp_board_view_frame (b, TRUE);
  g_assert_false (fp_board_view_has_sides (b));
  fp_document_choose (d, "walls");
  g_assert_false (fp_board_view_has_sides (b));
  fp_document_choose (d, "window-g1"); /* in side 1 */
  g_assert_true (fp_board_view_has_sides (b));
  fp_board_view_show_only (b, FP_VIEW_SECTION);
  g_assert_false (fp_board_view_has_sides (b));
  fp_board_view_show_only (b, -1);
  surface = cairo_image_surface_create (CAIRO_FORMAT_ARGB32, gtk_widget_get_width (board), gtk_widget_get_height (board));
  cr = cairo_create (surface);
  fp_board_view_draw_sides (b, cr);
  cairo_destroy (cr);
  g_assert_cmphex (pixel_at_side (b, d, surface, 7), ==, 0xffffffff);
  g_assert_cmphex (pixel_at_side (b, d, surface, 1) >> 24, ==, 0xff);
  g_assert_cmphex (pixel_at_side (b, d, surface, 1), !=, 0xffffffff);
  cairo_surface_destroy (surface);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* The first measure of the drawing that says how far the thing is from where it is set out, across the church; NULL. */
static const FpStretch *
find_whereabouts (FpBoardView *b, const char *item)
{
  guint n;
  const FpMark *mark;

  fp_board_view_ensure (b);
  mark = fp_drawing_marks (b->drawing, &n);
  for (guint i = 0; i < n; i++)
    {
      const FpStretch *s = mark[i].dimension != 0 ? fp_drawing_stretch (b->drawing, mark[i].dimension) : NULL;

      if (s != NULL && s->sort == FP_STRETCH_PLACE && strcmp (s->item, item) == 0 && s->other == NULL && s->a.y == s->b.y)
        return s;
    }
  return NULL;
}

/* Told of what is chosen at a scale at which it is told of nothing else; typed over it moves the thing, which is undone in
 * one step. */
static void
test_board_tells_where_the_chosen_stands (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);
  g_autoptr (GError) error = NULL;
  const FpStretch *s;
  double x;

  fp_board_view_set_document (b, d);
  WAIT_FOR (fp_board_view_is_current (b) && fp_board_view_scale (b) > 0.0);
  g_assert_cmpfloat (fp_board_view_scale (b), >, 60.0);
  g_assert_null (find_whereabouts (b, "chair-1974"));
  fp_document_choose (d, "chair-1974");
  s = find_whereabouts (b, "chair-1974");
  g_assert_nonnull (s);
  x = fp_document_placed (d, "chair-1974")->place.x;
  g_assert_cmpfloat_with_epsilon (fp_stretch_value (s), fabs (x), 1e-6);
  g_assert_true (fp_document_edit (d, fp_retype (fp_document_base_scene (d), s, fabs (x) - 250.0, fp_document_chosen_all (d),
                                                 &error), "Chair", NULL));
  g_assert_no_error (error);
  g_assert_cmpfloat_with_epsilon (fp_document_placed (d, "chair-1974")->place.x, x < 0.0 ? x + 250.0 : x - 250.0, 1e-6);
  fp_document_undo (d);
  g_assert_cmpfloat_with_epsilon (fp_document_placed (d, "chair-1974")->place.x, x, 1e-6);
  fp_document_choose (d, NULL);
  g_assert_null (find_whereabouts (b, "chair-1974"));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* A dimension is pressed, and before the button is let go what was typed elsewhere has been drawn: not yet, or with its
 * dimensions numbered otherwise, or without that one. */
static void
test_board_draws_while_pressed (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);
  const FpStretch *s;
  guint dimension = 1;

  fp_board_view_set_document (b, d);
  WAIT_FOR (fp_board_view_is_current (b) && fp_board_view_scale (b) > 0.0);
  fp_document_choose (d, "chair-1974");
  s = find_whereabouts (b, "chair-1974");
  g_assert_nonnull (s);
  while (fp_drawing_stretch (b->drawing, dimension) != s)
    dimension++;
  fp_board_view_hold_measure (b, dimension);
  fp_board_view_forget_drawing (b);
  fp_board_view_type_measure (b);
  g_assert_nonnull (b->typing);
  fp_board_view_drop_typing (b);
  /* Of a thing that is not chosen it is not told. */
  fp_document_choose (d, NULL);
  g_assert_null (find_whereabouts (b, "chair-1974"));
  fp_board_view_type_measure (b);
  g_assert_null (b->typing);
  fp_board_view_hold_measure (b, 0);
  fp_document_choose (d, "chair-1974");
  fp_board_view_type_measure (b);
  g_assert_null (b->typing);
  gtk_window_destroy (GTK_WINDOW (window));
}

static GtkWidget *
field_of (FpBoardView *b)
{
  return b->typing != NULL ? help_find (b->typing, GTK_TYPE_ENTRY) : NULL;
}

static char *
title_of_field (FpBoardView *b)
{
  return g_strdup (gtk_label_get_text (GTK_LABEL (help_find_styled (b->typing, "heading"))));
}

static void
press_tab_in (GtkWidget *entry)
{
  g_autoptr (GListModel) all = gtk_widget_observe_controllers (entry);
  gboolean done = FALSE;

  for (guint i = 0; !done && i < g_list_model_get_n_items (all); i++)
    {
      g_autoptr (GtkEventController) one = g_list_model_get_item (all, i);

      if (GTK_IS_EVENT_CONTROLLER_KEY (one) && gtk_event_controller_get_propagation_phase (one) == GTK_PHASE_CAPTURE)
        g_signal_emit_by_name (one, "key-pressed", GDK_KEY_Tab, 0, 0, &done);
    }
  g_assert_true (done);
}

/* All that the board tells of the chosen thing can be typed over by keyboard, and comes round again. */
static void
test_board_walks_figures (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);
  g_autoptr (GHashTable) told = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autofree char *first = NULL, *second = NULL, *before = NULL;
  char *title;

  fp_board_view_set_document (b, d);
  WAIT_FOR (fp_board_view_is_current (b) && fp_board_view_scale (b) > 0.0);
  g_assert_false (fp_board_view_next_figure (b)); /* nothing is chosen */
  fp_document_choose (d, help_altar_id (d));
  g_assert_true (fp_board_view_next_figure (b));
  first = title_of_field (b);
  for (title = g_strdup (first); g_hash_table_add (told, title); title = title_of_field (b))
    {
      g_assert_cmpstr (gtk_editable_get_text (GTK_EDITABLE (field_of (b))), !=, "");
      if (strstr (title, "Depth of the mensa") != NULL)
        gtk_editable_set_text (GTK_EDITABLE (field_of (b)), "812");
      before = (g_free (before), g_strdup (title));
      press_tab_in (field_of (b));
      WAIT_FOR (field_of (b) != NULL && (second = (g_free (second), title_of_field (b)), strcmp (second, before) != 0));
      g_assert_cmpuint (g_hash_table_size (told), <, 40);
    }
  g_assert_cmpuint (g_hash_table_size (told), >=, 2);
  /* Going on entered what was typed. */
  g_assert_cmpfloat_with_epsilon (fp_item_param (help_altar (d)->item, "depth"), 812.0, 1e-6);
  fp_board_view_drop_typing (b);
  gtk_window_destroy (GTK_WINDOW (window));
}

static gboolean
take_anything (gpointer data, const char *text, GError **error)
{
  (void) data, (void) text, (void) error;
  return TRUE;
}

static gboolean
is_sum (GtkWidget *widget, gconstpointer text)
{
  return GTK_IS_LABEL (widget) && strcmp (gtk_label_get_text (GTK_LABEL (widget)), text) == 0 && gtk_widget_get_visible (widget);
}

/* What a sum comes to stands under it while it is typed; a plain length says it itself. */
static void
test_board_tells_sums (void)
{
  static const GdkRectangle at = { 40, 40, 10, 10 };
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  g_autofree char *length = fp_length_format_unit (1234.0, fp_project_brief (fp_document_project (d))->units);
  g_autofree char *sum = g_strconcat ("= ", length, NULL);
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);

  fp_board_view_set_document (b, d);
  WAIT_FOR (fp_board_view_is_current (b) && fp_board_view_scale (b) > 0.0);
  fp_board_view_open_field (b, &(FpBoardField) { .title = "Length", .label = "Length", .text = "1", .unit = "mm",
                                                 .is_length = TRUE, .enter = take_anything }, &at);
  gtk_editable_set_text (GTK_EDITABLE (help_find (b->typing, GTK_TYPE_ENTRY)), "1200 + 34");
  g_assert_nonnull (help_find_that (b->typing, is_sum, sum));
  gtk_editable_set_text (GTK_EDITABLE (help_find (b->typing, GTK_TYPE_ENTRY)), "1200 +");
  g_assert_null (help_find_that (b->typing, is_sum, sum));
  gtk_editable_set_text (GTK_EDITABLE (help_find (b->typing, GTK_TYPE_ENTRY)), "1234");
  g_assert_null (help_find_that (b->typing, is_sum, sum));
  fp_board_view_drop_typing (b);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* What is typed over may be drawn far out of sight, where the line of a long dimension was pressed: the field is in sight. */
static void
test_board_types_in_sight (void)
{
  static const GdkRectangle far_off[] = { { -9000, 40, 30, 12 }, { 40, 90000, 30, 12 }, { 9000, -9000, 30, 12 }, { -8, 8, 16, 8 } };
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);

  fp_board_view_set_document (b, d);
  WAIT_FOR (fp_board_view_is_current (b) && fp_board_view_scale (b) > 0.0);
  for (guint i = 0; i < G_N_ELEMENTS (far_off); i++)
    {
      const GdkRectangle whole = { 0, 0, gtk_widget_get_width (board), gtk_widget_get_height (board) };
      GdkRectangle at, seen;

      fp_board_view_open_field (b, &(FpBoardField) { .title = "Length", .label = "Length", .text = "1", .unit = "mm",
                                                     .enter = take_anything }, &far_off[i]);
      g_assert_true (gtk_popover_get_pointing_to (GTK_POPOVER (b->typing), &at));
      g_assert_true (gdk_rectangle_intersect (&at, &whole, &seen));
      g_assert_true (gdk_rectangle_equal (&at, &seen));
      g_assert_true (gtk_widget_get_mapped (b->typing));
      fp_board_view_drop_typing (b);
    }
  gtk_window_destroy (GTK_WINDOW (window));
}

static int
compare_lines (gconstpointer a, gconstpointer b)
{
  return strcmp (*(const char *const *) a, *(const char *const *) b);
}

/* All that is lettered, and where, sorted: owned by the caller. */
static char *
lettering_of (FpBoardView *b)
{
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);
  const FpMark *mark;
  guint n;

  fp_board_view_ensure (b);
  mark = fp_drawing_marks (b->drawing, &n);
  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_TEXT)
      g_ptr_array_add (lines, g_strdup_printf ("%s %.2f %.2f %.0f", mark[i].text, mark[i].at.x, mark[i].at.y, mark[i].turn));
  g_ptr_array_sort (lines, compare_lines);
  g_ptr_array_add (lines, NULL);
  return g_strjoinv ("\n", (char **) lines->pdata);
}

/* Whatever was drawn meanwhile, the same project looks the same. */
static void
test_board_undoes_lettering (void)
{
  static const char *const moved[] = { "altar", "ambo", "credence", NULL };
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);
  g_autofree char *before = NULL;
  guint n = 0, other = 0;

  gtk_window_set_default_size (GTK_WINDOW (window), 1200, 900);
  fp_board_view_set_document (b, d);
  WAIT_FOR (fp_board_view_is_current (b) && fp_board_view_scale (b) > 0.0 && gtk_widget_get_width (board) > 1000);
  before = lettering_of (b);
  for (guint i = 0; moved[i] != NULL; i++)
    for (guint k = 1; fp_document_placed (d, moved[i]) != NULL && k < 8; k++)
      {
        const FpVec3 by = { 180.0 * k * (k % 2 == 0 ? 1.0 : -1.0), -90.0 * k, 0.0 };
        g_autofree char *after = NULL, *undone = NULL, *redone = NULL;

        if (!fp_document_edit (d, fp_set_out_move (fp_document_scene (d), moved[i], by, NULL), "Moved", NULL))
          continue;
        WAIT_FOR (fp_board_view_lies_still (b));
        after = lettering_of (b);
        g_assert_true (fp_document_undo (d));
        WAIT_FOR (fp_board_view_lies_still (b));
        undone = lettering_of (b);
        g_assert_cmpstr (undone, ==, before);
        g_assert_true (fp_document_redo (d));
        WAIT_FOR (fp_board_view_lies_still (b));
        redone = lettering_of (b);
        g_assert_cmpstr (redone, ==, after);
        g_assert_true (fp_document_undo (d));
        WAIT_FOR (fp_board_view_lies_still (b));
        g_free (lettering_of (b));
        other += strcmp (after, before) != 0;
        n++;
      }
  g_assert_cmpuint (n, >, 10);
  g_assert_cmpuint (other, >, 5);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* What is set elsewhere and back again by hand looks as it did, as if it had been undone. */
static void
test_board_letters_alike (void)
{
  static const char *const moved[] = { "altar", "ambo", "credence", NULL };
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);
  g_autofree char *before = NULL;
  guint n = 0, other = 0;

  gtk_window_set_default_size (GTK_WINDOW (window), 1200, 900);
  fp_board_view_set_document (b, d);
  WAIT_FOR (fp_board_view_is_current (b) && fp_board_view_scale (b) > 0.0 && gtk_widget_get_width (board) > 1000);
  before = lettering_of (b);
  for (guint i = 0; moved[i] != NULL; i++)
    for (double by = -1200.0; by <= 1200.0; by += 600.0)
      {
        const FpVec3 there = { by, 0.0, 0.0 }, here = { -by, 0.0, 0.0 };
        g_autofree char *after = NULL, *back = NULL;

        if (by == 0.0 || !fp_document_edit (d, fp_set_out_move (fp_document_scene (d), moved[i], there, NULL), "Moved", NULL))
          continue;
        WAIT_FOR (fp_board_view_lies_still (b));
        after = lettering_of (b);
        g_assert_true (fp_document_edit (d, fp_set_out_move (fp_document_scene (d), moved[i], here, NULL), "Moved", NULL));
        WAIT_FOR (fp_board_view_lies_still (b));
        back = lettering_of (b);
        g_assert_cmpstr (back, ==, before);
        other += strcmp (after, before) != 0;
        n++;
      }
  g_assert_cmpuint (n, >, 6);
  g_assert_cmpuint (other, >, 3);
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
test_board_without_document (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  GtkWidget *board = fp_board_view_new (), *window = help_show (board);
  FpBoardView *b = FP_BOARD_VIEW (board);
  double x, y;

  fp_board_view_frame (b, TRUE);
  fp_board_view_zoom (b, 2.0);
  fp_board_view_nudge (b, 1.0, 1.0);
  fp_board_view_remove_chosen (b);
  g_assert_false (fp_board_view_cancel (b));
  g_assert_false (fp_board_view_locate (b, FP_VIEW_PLAN, (FpVec3) { 0, 0, 0 }, &x, &y));
  /* And taken away again while its drawing is still being made. */
  fp_board_view_set_document (b, d);
  fp_board_view_set_document (b, NULL);
  g_assert_cmpfloat (fp_board_view_scale (b), ==, 0.0);
  gtk_window_destroy (GTK_WINDOW (window));
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/board/told", test_board_is_told);
  g_test_add_func ("/board/figures", test_board_walks_figures);
  g_test_add_func ("/board/frames", test_board_frames);
  g_test_add_func ("/board/axes", test_board_views_share_axes);
  g_test_add_func ("/board/does-not-rescale", test_board_does_not_rescale);
  g_test_add_func ("/board/zooms", test_board_zooms);
  g_test_add_func ("/board/one-view", test_board_shows_one_view);
  g_test_add_func ("/board/nudges", test_board_nudges);
  g_test_add_func ("/board/removes", test_board_removes);
  g_test_add_func ("/board/mark", test_board_shows_a_mark);
  g_test_add_func ("/board/brings", test_board_brings_what_was_measured);
  g_test_add_func ("/board/way", test_board_shows_a_way);
  g_test_add_func ("/board/what-was-measured", test_board_shows_what_was_measured);
  g_test_add_func ("/board/shows-less", test_board_shows_less);
  g_test_add_func ("/board/chooses-what-is-shown", test_board_chooses_what_is_shown);
  g_test_add_func ("/board/reveals", test_board_reveals);
  g_test_add_func ("/board/settles", test_board_settles);
  g_test_add_func ("/board/drags-the-section", test_board_drags_the_section);
  g_test_add_func ("/board/cuts-across", test_board_cuts_across);
  g_test_add_func ("/board/hides-handles", test_board_hides_handles);
  g_test_add_func ("/board/hits-the-new", test_board_hits_the_new);
  g_test_add_func ("/board/numbers-sides", test_board_numbers_sides);
  g_test_add_func ("/board/tells-where-the-chosen-stands", test_board_tells_where_the_chosen_stands);
  g_test_add_func ("/board/drawn-while-pressed", test_board_draws_while_pressed);
  g_test_add_func ("/board/types-in-sight", test_board_types_in_sight);
  g_test_add_func ("/board/tells-the-chosen-by-colour", test_board_tells_the_chosen_by_colour);
  g_test_add_func ("/board/tells-sums", test_board_tells_sums);
  g_test_add_func ("/board/undoes-lettering", test_board_undoes_lettering);
  g_test_add_func ("/board/letters-alike", test_board_letters_alike);
  g_test_add_func ("/board/no-document", test_board_without_document);
  return g_test_run ();
}
