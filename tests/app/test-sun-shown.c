/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sun at a Mass, on the board and in the bar below it. */
#include "board-view.h"
#include "sun-bar.h"
#include "sun-choice.h"
#include "waiting.h"
#include "widget-help.h"

#include <stdio.h>
#include <string.h>

/* Palm Sunday of 2026, when the morning sun comes in on the Epistle side of the sample parish. */
static const FpSunLook morning = { .mass = 1, .day = FP_N_SUN_DAYS, .year = 2026, .month = 3, .date = 29 };

static FpBoardView *
show_board (FpDocument *d)
{
  GtkWidget *board = fp_board_view_new ();

  fp_board_view_set_document (FP_BOARD_VIEW (board), d);
  gtk_window_set_default_size (GTK_WINDOW (help_show (board)), 900, 700);
  WAIT_FOR (fp_board_view_is_current (FP_BOARD_VIEW (board)));
  return FP_BOARD_VIEW (board);
}

static void
close_board (FpBoardView *board)
{
  gtk_window_destroy (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (board))));
}

static guint
count_dots (const FpDrawing *drawing)
{
  guint n, dots = 0;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    dots += mark[i].type == FP_MARK_CIRCLE && mark[i].fill == FP_FILL_INK;
  return dots;
}

static guint
count_hatches (const FpDrawing *drawing)
{
  guint n, areas = 0;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    areas += mark[i].type == FP_MARK_AREA && mark[i].pen == FP_PEN_HATCH;
  return areas;
}

/* By the study itself, apart from the board. */
static FpSunStudy *
study_of (FpDocument *d, const FpSunLook *look)
{
  const FpBrief *brief = fp_project_brief (fp_document_project (d));
  g_autoptr (FpPeople) people = fp_people_new (fp_document_scene (d));
  g_autoptr (GDateTime) time = fp_sun_look_time (look, brief, NULL);

  g_assert_nonnull (time);
  return fp_sun_study_new (people, time, brief->site.latitude, brief->site.longitude);
}

static guint
count_dazzled (FpDocument *d, const FpSunStudy *study)
{
  g_autoptr (FpPeople) people = fp_people_new (fp_document_scene (d));
  guint n, dazzled = 0;

  fp_people_places (people, &n);
  for (guint i = 0; i < n; i++)
    dazzled += fp_sun_study_place (study, i) >= 0;
  return dazzled;
}

static guint
count_seats (const char *runs)
{
  g_auto (GStrv) run = g_strsplit (runs, ", ", -1);
  guint seats = 0;

  for (guint i = 0; run[i] != NULL; i++)
    {
      guint first = 0, last = 0;
      const int read = sscanf (run[i], "%u–%u", &first, &last);
      seats += read == 2 ? last - first + 1 : 1;
    }
  return seats;
}

static void
check_windows (const GPtrArray *windows, guint dazzled)
{
  guint places = 0;

  for (guint i = 0; i < windows->len; i++)
    {
      g_auto (GStrv) line = g_strsplit (g_ptr_array_index (windows, i), "\n", -1);
      const char *colon = strrchr (line[0], ':');
      const guint told = (guint) g_ascii_strtoull (colon + 1, NULL, 10);
      guint seats = 0;
      g_assert_true (g_str_has_prefix (line[0], "Through "));
      for (guint k = 1; line[k] != NULL; k++)
        {
          const char *seat = strstr (line[k], ", seat");
          if (seat == NULL)
            g_error ("no seat in “%s”", line[k]);
          seats += count_seats (seat + 2 + strcspn (seat + 2, " ") + 1);
        }
      g_assert_cmpuint (seats, ==, told);
      places += told;
    }
  g_assert_cmpuint (places, ==, dazzled);
}

/* --- the board ------------------------------------------------------------------- */

static void
test_board (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  FpBoardView *board = show_board (d);
  g_autoptr (FpSunStudy) study = study_of (d, &morning);
  g_autofree char *sentence = fp_sun_study_sentence (study);
  const guint dazzled = count_dazzled (d, study);

  g_assert_null (fp_board_view_sun (board));
  g_assert_cmpuint (dazzled, >, 0);
  fp_board_view_set_sun (board, &morning);
  WAIT_FOR (fp_board_view_sun (board) != NULL);
  const FpSunDraft *draft = fp_board_view_sun (board);
  g_assert_cmpstr (draft->sentence, ==, sentence);
  g_assert_true (g_str_has_prefix (sentence, "Sunday 2026-03-29, 08:00 (UTC+01:00)."));
  /* And two in the key, of the people and of ministers. */
  g_assert_cmpuint (count_dots (draft->part[FP_VIEW_PLAN].drawing), ==, dazzled + 2);
  g_assert_cmpuint (count_hatches (draft->part[FP_VIEW_PLAN].drawing), >, 0);
  g_assert_cmpuint (draft->windows->len, >, 0);
  /* As many as there are places, window by window and row by row. */
  check_windows (draft->windows, dazzled);
  /* The section has the shafts, and nobody. */
  g_assert_cmpuint (count_dots (draft->part[FP_VIEW_SECTION].drawing), ==, 0);
  guint marks;
  fp_drawing_marks (draft->part[FP_VIEW_SECTION].drawing, &marks);
  g_assert_cmpuint (marks, >, 0);
  fp_board_view_set_sun (board, NULL);
  g_assert_null (fp_board_view_sun (board));
  close_board (board);
}

/* Sunday by Sunday, one after another: 2026 begins on a Thursday, so its first Sunday is 4 January, and there are 52. */
static void
test_year (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  g_autoptr (FpPeople) people = fp_people_new (fp_document_scene (d));
  GDate named;
  g_autofree char *text = fp_sun_year_text (people, 1, 2026, NULL, &named), *expected = NULL;
  FpSunLook look = morning;
  guint dazzled = 0, most = 0;
  GDate day, worst;

  g_date_clear (&worst, 1);
  g_date_set_dmy (&day, 4, G_DATE_JANUARY, 2026);
  for (guint i = 0; i < 52; i++, g_date_add_days (&day, 7))
    {
      g_autoptr (FpSunStudy) study = NULL;
      look.month = g_date_get_month (&day);
      look.date = g_date_get_day (&day);
      study = study_of (d, &look);
      const guint n = count_dazzled (d, study);
      dazzled += n > 0;
      if (n > most)
        worst = day;
      most = MAX (most, n);
    }
  g_assert_cmpuint (most, >, 0);
  expected = g_strdup_printf ("Sunday 08:00: in somebody's eyes on %u of 52 days of 2026, in most on 2026-%02d-%02d (%u)", dazzled,
                              (int) g_date_get_month (&worst), (int) g_date_get_day (&worst), most);
  g_assert_cmpstr (text, ==, expected);
  g_assert_cmpint (g_date_compare (&named, &worst), ==, 0);
  g_assert_null (fp_sun_year_text (people, 3, 2026, NULL, NULL)); /* there are three */
}

/* It follows an edit: without the window nobody has the sun in his eyes through it. */
static void
test_follows (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  FpBoardView *board = show_board (d);
  FpSunLook look = morning;

  look.month = 9;
  look.date = 20;
  fp_board_view_set_sun (board, &look);
  WAIT_FOR (fp_board_view_sun (board) != NULL);
  g_assert_nonnull (strstr (g_ptr_array_index (fp_board_view_sun (board)->windows, 0), "East window, Epistle side"));
  g_assert_true (fp_document_edit (d, fp_project_without_item (fp_document_project (d), 0, "east-window-e", NULL), "Bricked up",
                                   NULL));
  WAIT_FOR (fp_board_view_sun (board)->scene == fp_document_scene (d));
  for (guint i = 0; i < fp_board_view_sun (board)->windows->len; i++)
    g_assert_null (strstr (g_ptr_array_index (fp_board_view_sun (board)->windows, i), "East window, Epistle side"));
  close_board (board);
}

/* Where the brief tells no place nothing is drawn, and it is said why. */
static void
test_no_place (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  FpBoardView *board = show_board (d);
  GtkWidget *bar = g_object_new (FP_TYPE_SUN_BAR, NULL), *top = help_show (bar);

  fp_sun_bar_set_brief (FP_SUN_BAR (bar), fp_project_brief (fp_document_project (d)));
  fp_board_view_set_sun (board, &morning);
  WAIT_FOR (fp_board_view_sun (board) != NULL);
  g_assert_null (fp_board_view_sun (board)->part[FP_VIEW_PLAN].drawing);
  fp_sun_bar_tell (FP_SUN_BAR (bar), fp_board_view_sun (board));
  g_assert_true (g_str_has_prefix (gtk_label_get_text (GTK_LABEL (help_find_called (top, "sentence"))), "The brief does not"));
  g_assert_true (gtk_widget_get_visible (help_find_called (top, "brief")));
  g_assert_false (gtk_widget_get_visible (help_find_called (top, "windows")));
  gtk_window_destroy (GTK_WINDOW (top));
  close_board (board);
}

/* Where nothing stands yet there is nothing to be lit, and nobody. */
static void
test_nothing_yet (void)
{
  const FpBrief brief = { .title = "Nothing yet", .ministers = 1, .percentile = 50, .site = { TRUE, 52, 0, "+00:00" } };
  g_autoptr (FpProject) project = fp_project_new (&brief);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  const FpViewLayout view[FP_N_VIEWS] = { { .scale = 100, .clip = FP_BOX_EMPTY }, { .scale = 100, .clip = FP_BOX_EMPTY },
                                          { .scale = 100, .clip = FP_BOX_EMPTY } };
  const FpSunLook noon = { .mass = 0, .minute = 720, .day = FP_SUN_JUNE };
  g_autoptr (FpSunDraft) draft = fp_sun_draft_new (scene, &noon, view);

  for (int v = 0; v < FP_N_VIEWS; v++)
    g_assert_null (draft->part[v].drawing);
  g_assert_nonnull (strstr (draft->sentence, "In nobody's eyes"));
  g_assert_cmpuint (draft->windows->len, ==, 0);
}

/* --- the bar ------------------------------------------------------------------------ */

static void
note_look (FpSunBar *bar, gpointer data)
{
  *(FpSunLook *) data = fp_sun_bar_look (bar);
}

static void
check_fields_have_names (GtkWidget *top)
{
  static const char *const fields[] = { "mass", "clock", "day", "date" };

  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    g_assert_true (gtk_test_accessible_has_property (GTK_ACCESSIBLE (help_find_called (top, fields[i])),
                                                     GTK_ACCESSIBLE_PROPERTY_LABEL));
}

static void
test_bar (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *bar = g_object_new (FP_TYPE_SUN_BAR, NULL), *top = help_show (bar), *clock, *date;
  FpSunLook look = { 0 };

  fp_sun_bar_set_brief (FP_SUN_BAR (bar), fp_project_brief (fp_document_project (d)));
  g_signal_connect (bar, "look", G_CALLBACK (note_look), &look);
  check_fields_have_names (top);
  clock = help_find_called (top, "clock");
  date = help_find_called (top, "date");
  g_assert_false (gtk_widget_get_visible (clock));
  g_assert_false (gtk_widget_get_visible (date));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (top, "mass")), 2);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (top, "day")), FP_SUN_DECEMBER);
  g_assert_cmpuint (look.mass, ==, 2);
  g_assert_cmpint (look.day, ==, FP_SUN_DECEMBER);
  /* After the Masses of the brief comes another time. */
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (top, "mass")), 3);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (top, "day")), FP_N_SUN_DAYS);
  g_assert_true (gtk_widget_get_visible (clock));
  g_assert_true (gtk_widget_get_visible (date));
  gtk_editable_set_text (GTK_EDITABLE (clock), "7:45");
  gtk_editable_set_text (GTK_EDITABLE (date), "2027-01-06");
  g_assert_cmpuint (look.minute, ==, 7 * 60 + 45);
  g_assert_cmpint (look.year, ==, 2027);
  /* What is no day is marked, and the last one stays. */
  gtk_editable_set_text (GTK_EDITABLE (date), "2027-02-30");
  g_assert_true (gtk_widget_has_css_class (date, "error"));
  g_assert_cmpuint (look.date, ==, 6);
  gtk_editable_set_text (GTK_EDITABLE (date), "2027-02-28");
  g_assert_false (gtk_widget_has_css_class (date, "error"));
  g_assert_cmpuint (look.date, ==, 28);
  gtk_window_destroy (GTK_WINDOW (top));
}

/* The worst day of the year is looked at when it is pressed, at the same Mass. */
static void
test_worst_day (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  GtkWidget *bar = g_object_new (FP_TYPE_SUN_BAR, NULL), *top = help_show (bar), *year;
  const FpViewLayout none[FP_N_VIEWS] = { { .scale = 0 }, { .scale = 0 }, { .scale = 0 } };
  const FpSunLook asked = { .mass = 1, .day = FP_SUN_JUNE };
  g_autoptr (FpSunDraft) draft = fp_sun_draft_new (fp_document_scene (d), &asked, none);
  FpSunLook look = { 0 };
  gboolean handled = FALSE;

  g_assert_true (g_date_valid (&draft->worst));
  fp_sun_bar_set_brief (FP_SUN_BAR (bar), fp_project_brief (fp_document_project (d)));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (top, "mass")), 1);
  fp_sun_bar_tell (FP_SUN_BAR (bar), draft);
  year = help_find_called (top, "year");
  g_assert_cmpstr (gtk_label_get_text (GTK_LABEL (year)), ==, draft->year);
  g_signal_connect (bar, "look", G_CALLBACK (note_look), &look);
  g_signal_emit_by_name (year, "activate-link", "day", &handled);
  g_assert_true (handled);
  g_assert_cmpuint (look.mass, ==, 1);
  g_assert_cmpint (look.day, ==, FP_N_SUN_DAYS);
  g_assert_cmpint (look.year, ==, g_date_get_year (&draft->worst));
  g_assert_cmpuint (look.month, ==, (guint) g_date_get_month (&draft->worst));
  g_assert_cmpuint (look.date, ==, g_date_get_day (&draft->worst));
  gtk_window_destroy (GTK_WINDOW (top));
}

/* A Mass on one day of the year asks for no day. */
static void
test_yearly_mass (void)
{
  GtkWidget *choice = g_object_new (FP_TYPE_SUN_CHOICE, NULL), *top = help_show (choice);
  FpBrief brief = { .site = { TRUE, 52, 0, "+00:00" }, .n_masses = 2 };
  FpSunLook look = { 0 };
  g_autoptr (GDateTime) time = NULL;

  brief.mass[0] = (FpMassTime) { .weekday = 7, .minute = 600 };
  brief.mass[1] = (FpMassTime) { .month = 12, .day = 25 };
  fp_sun_choice_set_brief (FP_SUN_CHOICE (choice), &brief);
  g_assert_true (gtk_widget_get_visible (help_find_called (top, "day")));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (top, "mass")), 1);
  g_assert_false (gtk_widget_get_visible (help_find_called (top, "day")));
  look = fp_sun_choice_look (FP_SUN_CHOICE (choice));
  time = fp_sun_look_time (&look, &brief, NULL);
  g_assert_cmpint (g_date_time_get_month (time), ==, 12);
  g_assert_cmpint (g_date_time_get_day_of_month (time), ==, 25);
  gtk_window_destroy (GTK_WINDOW (top));
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sun-shown/board", test_board);
  g_test_add_func ("/sun-shown/year", test_year);
  g_test_add_func ("/sun-shown/follows", test_follows);
  g_test_add_func ("/sun-shown/no-place", test_no_place);
  g_test_add_func ("/sun-shown/nothing-yet", test_nothing_yet);
  g_test_add_func ("/sun-shown/bar", test_bar);
  g_test_add_func ("/sun-shown/worst-day", test_worst_day);
  g_test_add_func ("/sun-shown/yearly-mass", test_yearly_mass);
  return g_test_run ();
}
