/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What every place sees, on the board and in the bar below it. */
#include "board-view-private.h"
#include "sight-bar.h"
#include "waiting.h"
#include "widget-help.h"

#include <string.h>

static gboolean
is_complete (FpDocument *d)
{
  return fp_document_sighted (d) != NULL && !fp_document_is_checking (d);
}

static FpBoardView *
show_board (FpDocument *d)
{
  GtkWidget *board = fp_board_view_new ();

  fp_board_view_set_document (FP_BOARD_VIEW (board), d);
  gtk_window_set_default_size (GTK_WINDOW (help_show (board)), 900, 700);
  WAIT_FOR (is_complete (d) && fp_board_view_is_current (FP_BOARD_VIEW (board)));
  return FP_BOARD_VIEW (board);
}

static void
close_board (FpBoardView *board)
{
  gtk_window_destroy (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (board))));
}

static const FpSightDraft *
draft_of (FpBoardView *board, FpFocus focus)
{
  const FpSightDraft *draft = fp_board_view_sight (board);

  return draft != NULL && draft->look.focus == focus ? draft : NULL;
}

static guint
count_circles (const FpDrawing *drawing, double radius)
{
  guint n, circles = 0;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    circles += mark[i].type == FP_MARK_CIRCLE && mark[i].pen == FP_PEN_EDGE && mark[i].radius == radius;
  return circles;
}

/* --- the board ------------------------------------------------------------------- */

static void
test_board (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  FpBoardView *board = show_board (d);
  FpSightLook look = { FP_MOMENT_ELEVATION, FP_FOCUS_HOST, -1, FALSE };

  g_assert_null (fp_board_view_sight (board));
  fp_board_view_set_sight (board, &look);
  WAIT_FOR (draft_of (board, FP_FOCUS_HOST) != NULL);
  const FpSightDraft *draft = draft_of (board, FP_FOCUS_HOST);
  const FpMeasuring *of = fp_findings_measuring (draft->of);
  g_autofree char *sentence = fp_sight_sentence (of, look.moment, look.focus);
  g_assert_cmpstr (draft->sentence, ==, sentence);
  g_assert_null (draft->place_words);
  g_assert_null (draft->part[FP_VIEW_SECTION].drawing);
  guint places = 0, n;
  fp_people_places (of->people, &n);
  for (guint i = 0; i < n; i++)
    places += fp_sight_how (of->sight, i, look.moment, look.focus) != FP_SIGHT_NOBODY;
  g_assert_cmpuint (count_circles (draft->part[FP_VIEW_PLAN].drawing, fp_sight_mark_radius (draft->scale)), ==, places);

  /* One of them: his line in the section, too. */
  look.place = (int) g_array_index (draft->worst, guint, 0);
  fp_board_view_set_sight (board, &look);
  WAIT_FOR (fp_board_view_sight (board)->look.place == look.place);
  draft = fp_board_view_sight (board);
  g_assert_nonnull (draft->place_words);
  g_assert_nonnull (draft->part[FP_VIEW_SECTION].drawing);

  fp_board_view_set_sight (board, NULL);
  g_assert_null (fp_board_view_sight (board));
  close_board (board);
}

/* It follows the project: under another alternative something else is seen. */
static void
test_follows (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  FpBoardView *board = show_board (d);
  const FpSightLook look = { FP_MOMENT_ELEVATION, FP_FOCUS_HOST, 5, FALSE };

  fp_board_view_set_sight (board, &look);
  WAIT_FOR (draft_of (board, FP_FOCUS_HOST) != NULL);
  g_autofree char *before = g_strdup (fp_board_view_sight (board)->sentence);
  fp_document_set_alternative (d, 0);
  WAIT_FOR (strcmp (fp_board_view_sight (board)->sentence, before) != 0);
  g_assert_true (fp_findings_scene (fp_board_view_sight (board)->of) == fp_document_scene (d));
  close_board (board);
}

/* --- what stands in the way ------------------------------------------------------------ */

/* Fails where there is not just one. */
static const FpMark *
one_text (const FpDrawing *drawing)
{
  const FpMark *text = NULL;
  guint n, texts = 0;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_TEXT)
      {
        text = &mark[i];
        texts++;
      }
  g_assert_cmpuint (texts, ==, 1);
  return text;
}

/* A little smaller than the letters, so that what only touches them does not count. */
static FpBox
box_on_board (FpBoardView *board, FpViewId view, const FpOverPart *part, double scale, const FpMark *text)
{
  const FpViewLayout *layout = &board->layout.view[view];
  const FpPoint corner = fp_view_to_paper (layout, part->corner);
  const double grown = scale / layout->scale, x = corner.x + text->at.x * grown, y = corner.y + text->at.y * grown;

  g_assert_cmpint (text->align, ==, FP_ALIGN_LEFT);
  return (FpBox) { x + 0.1, y + 0.1, x + fp_lettering_width (text->text, text->height) * grown - 0.1,
                   y + text->height * grown - 0.1 };
}

/* No line of the board's drawing runs through the box, and no lettering begins in it. */
static void
assert_blank (const FpDrawing *drawing, const FpBox *box)
{
  const FpPoint *pt = fp_drawing_points (drawing);
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_LINE || mark[i].type == FP_MARK_AREA)
      for (guint k = 0; k + 1 < mark[i].n; k++)
        g_assert_false (fp_box_is_crossed (box, pt[mark[i].first + k], pt[mark[i].first + k + 1]));
    else if (mark[i].type == FP_MARK_TEXT)
      g_assert_false (mark[i].at.x > box->x0 && mark[i].at.x < box->x1 && mark[i].at.y > box->y0 && mark[i].at.y < box->y1);
}

static guint
count_named (FpBoardView *board)
{
  guint named = 0;

  for (int v = 0; v < FP_N_VIEWS; v++)
    {
      double scale;
      const FpOverPart *part = fp_board_view_stop (board, (FpViewId) v, &scale);
      FpBox box;

      if (part->drawing == NULL)
        continue;
      const FpMark *text = one_text (part->drawing);
      g_assert_cmpstr (text->text, ==, fp_board_view_sight (board)->stop_words);
      box = box_on_board (board, (FpViewId) v, part, scale, text);
      assert_blank (board->drawing, &box);
      named++;
    }
  return named;
}

/* It is named where the board has nothing, at any scale; and where it has no room, not at all. */
static void
test_stop (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  FpBoardView *board = show_board (d);
  FpSightLook look = { FP_MOMENT_ELEVATION, FP_FOCUS_HOST, -1, FALSE };
  g_autoptr (GArray) worst = NULL;
  double scale;
  guint named = 0;

  fp_board_view_frame (board, TRUE);
  fp_board_view_set_sight (board, &look);
  WAIT_FOR (draft_of (board, FP_FOCUS_HOST) != NULL);
  worst = g_array_ref (draft_of (board, FP_FOCUS_HOST)->worst);
  for (guint i = 0; i < worst->len; i++)
    {
      look.place = (int) g_array_index (worst, guint, i);
      fp_board_view_set_sight (board, &look);
      WAIT_FOR (fp_board_view_sight (board)->look.place == look.place && fp_board_view_lies_still (board)
                && fp_board_view_stop (board, FP_VIEW_PLAN, &scale) != NULL);
      g_assert_nonnull (fp_board_view_sight (board)->stop_words);
      named += count_named (board);
    }
  g_assert_cmpuint (named, >=, worst->len);

  /* Nearer, where there is other room. */
  fp_board_view_zoom (board, 2);
  WAIT_FOR (fp_board_view_lies_still (board) && fp_board_view_stop (board, FP_VIEW_PLAN, &scale) != NULL);
  count_named (board);
  close_board (board);
}

/* --- blind areas ---------------------------------------------------------------------- */

static gboolean
has_blind (const FpDrawing *drawing)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_AREA && mark[i].pen == FP_PEN_BLIND && mark[i].view == FP_VIEW_PLAN)
      return TRUE;
  return FALSE;
}

/* They come when all is at rest, are gone as soon as the church is another, and come again for that one. */
static void
test_blind (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  FpBoardView *board = show_board (d);
  FpSightLook look = { FP_MOMENT_ELEVATION, FP_FOCUS_HOST, -1, TRUE };

  fp_board_view_set_sight (board, &look);
  WAIT_FOR (fp_board_view_blind (board) != NULL);
  const FpBlindDraft *blind = fp_board_view_blind (board);
  g_assert_cmpint (blind->focus, ==, FP_FOCUS_HOST);
  g_assert_true (has_blind (blind->part.drawing));

  fp_document_set_alternative (d, 0);
  WAIT_FOR (fp_findings_scene (fp_board_view_sight (board)->of) == fp_document_scene (d));
  g_assert_true (fp_board_view_blind (board) == NULL
                 || fp_findings_scene (fp_board_view_blind (board)->of) == fp_document_scene (d));
  WAIT_FOR (fp_board_view_blind (board) != NULL);
  g_assert_true (fp_findings_scene (fp_board_view_blind (board)->of) == fp_document_scene (d));

  /* Looked at something else, and then without them. */
  look.focus = FP_FOCUS_MENSA;
  look.moment = FP_MOMENT_OFFERTORY;
  fp_board_view_set_sight (board, &look);
  WAIT_FOR (fp_board_view_blind (board) != NULL && fp_board_view_blind (board)->focus == FP_FOCUS_MENSA);
  look.blind = FALSE;
  fp_board_view_set_sight (board, &look);
  g_assert_null (fp_board_view_blind (board));
  close_board (board);
}

/* --- the view from the pew ------------------------------------------------------------- */

static gboolean
told_of (FpBoardView *board, const char *words)
{
  const char *told;

  return fp_board_view_pew (board, &told) != NULL && told != NULL && strstr (told, words) != NULL;
}

/* It lies in the empty quarter, follows what is clicked and what Sight chooses, finds its seat again after an edit, and is
 * not in the way of the mitre line. */
static void
test_pew (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  FpBoardView *board = show_board (d);
  const FpPersonPlace *place;
  FpBox box;
  guint n;

  g_assert_null (fp_board_view_pew (board, NULL));
  fp_board_view_frame (board, TRUE);
  fp_board_view_set_pew (board, TRUE);
  WAIT_FOR (fp_board_view_pew_room (board, &box) && told_of (board, "Seen"));
  g_assert_cmpfloat_with_epsilon ((box.x1 - box.x0) / (box.y1 - box.y0), FP_PEW_ASPECT, 0.03);
  g_assert_cmpfloat (box.x1, <=, gtk_widget_get_width (GTK_WIDGET (board)));
  g_assert_cmpfloat (box.y1, <=, gtk_widget_get_height (GTK_WIDGET (board)));

  /* Another seat is clicked, the last of those that are in every alternative; far from all nothing is. */
  g_autoptr (FpPeople) people = fp_people_new (fp_document_scene (d));
  place = fp_people_places (people, &n);
  while (n > 1 && place[n - 1].at_rail)
    n--;
  fp_board_view_set_pew_at (board, (FpPoint) { place[n - 1].at.x, place[n - 1].at.y });
  g_assert_cmpuint (fp_board_view_pew (board, NULL)->place, ==, n - 1);
  fp_board_view_set_pew_at (board, (FpPoint) { 0, 90000 });
  g_assert_cmpuint (fp_board_view_pew (board, NULL)->place, ==, n - 1);
  g_autofree char *name = fp_people_name (people, n - 1);
  WAIT_FOR (told_of (board, name));

  /* The same seat in another alternative. */
  fp_document_set_alternative (d, 0);
  WAIT_FOR (fp_scene_alternative (fp_document_scene (d)) == 0 && fp_board_view_is_current (board) && told_of (board, name));

  /* With Sight it looks at what that looks at, from the place that is chosen there; its key is left clear. */
  const FpSightLook look = { FP_MOMENT_ELEVATION, FP_FOCUS_HOST, 5, FALSE };
  fp_board_view_set_sight (board, &look);
  WAIT_FOR (draft_of (board, FP_FOCUS_HOST) != NULL && told_of (board, "Elevation of the Host"));
  g_assert_cmpuint (fp_board_view_pew (board, NULL)->place, ==, 5);

  /* One view alone leaves no quarter. */
  fp_board_view_show_only (board, FP_VIEW_PLAN);
  WAIT_FOR (!fp_board_view_pew_room (board, &box));
  fp_board_view_set_pew (board, FALSE);
  g_assert_null (fp_board_view_pew (board, NULL));
  close_board (board);
}

/* --- the bar ------------------------------------------------------------------------ */

static void
note_look (FpSightBar *bar, gpointer data)
{
  *(FpSightLook *) data = fp_sight_bar_look (bar);
}

static void
test_bar (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  FpBoardView *board = show_board (d);
  GtkWidget *bar = g_object_new (FP_TYPE_SIGHT_BAR, NULL), *top = help_show (bar);
  FpSightLook look = fp_sight_bar_look (FP_SIGHT_BAR (bar));

  g_assert_cmpint (look.focus, ==, FP_FOCUS_HOST);
  g_assert_cmpint (look.moment, ==, FP_MOMENT_ELEVATION);
  g_signal_connect (bar, "look", G_CALLBACK (note_look), &look);
  /* What is looked at brings its moment; that may be another one then. */
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (top, "focus")), FP_FOCUS_AMBO);
  g_assert_cmpint (look.focus, ==, FP_FOCUS_AMBO);
  g_assert_cmpint (look.moment, ==, FP_MOMENT_READINGS);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (top, "moment")), FP_MOMENT_GOSPEL);
  g_assert_cmpint (look.moment, ==, FP_MOMENT_GOSPEL);
  g_assert_cmpint (look.focus, ==, FP_FOCUS_AMBO);

  g_assert_true (look.blind);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (help_find_called (top, "blind")), FALSE);
  g_assert_false (look.blind);

  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (top, "focus")), FP_FOCUS_MENSA);
  fp_board_view_set_sight (board, &look);
  WAIT_FOR (draft_of (board, FP_FOCUS_MENSA) != NULL);
  const FpSightDraft *draft = draft_of (board, FP_FOCUS_MENSA);
  fp_sight_bar_tell (FP_SIGHT_BAR (bar), draft);
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (help_find_called (top, "sentence"))), ==, draft->sentence);
  g_assert_cmpuint (draft->worst->len, >, 0);
  GtkListBox *list = GTK_LIST_BOX (help_find_called (top, "least_list"));
  g_signal_emit_by_name (list, "row-activated", gtk_list_box_get_row_at_index (list, 0));
  g_assert_cmpint (look.place, ==, (int) g_array_index (draft->worst, guint, 0));
  fp_board_view_set_sight (board, NULL);
  gtk_window_destroy (GTK_WINDOW (top));
  close_board (board);
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sight-shown/board", test_board);
  g_test_add_func ("/sight-shown/follows", test_follows);
  g_test_add_func ("/sight-shown/stop", test_stop);
  g_test_add_func ("/sight-shown/blind", test_blind);
  g_test_add_func ("/sight-shown/pew", test_pew);
  g_test_add_func ("/sight-shown/bar", test_bar);
  return g_test_run ();
}
