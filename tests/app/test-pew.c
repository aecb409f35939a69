/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The view from the pew in its window: it follows place and project, and can be saved. */
#include "compat-4-8.h"
#include "pew-maker.h"
#include "pew-strip.h"
#include "pew-window.h"
#include "waiting.h"
#include "widget-help.h"

#include "footpace/setting-out.h"

#include <glib/gstdio.h>
#include <string.h>

static FpPewWindow *
open_pew (FpDocument *d)
{
  GtkWidget *window = fp_pew_window_new (NULL, d, FP_INK_COLOUR);

  gtk_window_present (GTK_WINDOW (window));
  WAIT_FOR (strstr (fp_pew_window_told (FP_PEW_WINDOW (window)), "Seen:") != NULL);
  return FP_PEW_WINDOW (window);
}

static const char *
told (FpPewWindow *window)
{
  return fp_pew_window_told (window);
}

/* A row and a seat that are typed, a block that is chosen, a click on the plan: each is told as it is called. */
static void
test_places (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  FpPewWindow *window = open_pew (d);
  GtkWidget *top = GTK_WIDGET (window);
  g_autoptr (FpPeople) people = fp_people_new (fp_document_scene (d));
  guint there;

  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (top, "block")), 2);
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (help_find_called (top, "row")), 6);
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (help_find_called (top, "seat")), 3);
  WAIT_FOR (g_str_has_prefix (told (window), "Rear pews, Gospel side: row 6, seat 3, sitting"));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (help_find_called (top, "moment")), FP_MOMENT_ELEVATION);
  WAIT_FOR (g_str_has_prefix (told (window), "Rear pews, Gospel side: row 6, seat 3, kneeling"));
  g_assert_true (fp_pew_place_find (people, "pews-front-e", 5, 2, &there));
  const FpVec3 at = fp_people_places (people, NULL)[there].at;
  fp_pew_window_choose_at (window, (FpPoint) { at.x + 150, at.y - 100 });
  WAIT_FOR (g_str_has_prefix (told (window), "Front pews, Epistle side: row 5, seat 2, kneeling"));
  g_assert_cmpuint (fp_pew_window_place (window), ==, there);
  g_assert_cmpfloat (gtk_spin_button_get_value (GTK_SPIN_BUTTON (help_find_called (top, "row"))), ==, 5);
  /* In the sanctuary nobody sits: it stays. */
  fp_pew_window_choose_at (window, (FpPoint) { 0, 4000 });
  g_assert_cmpuint (fp_pew_window_place (window), ==, there);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* What is seen is told anew when the altar is raised, and when another alternative is shown. */
static void
test_follows (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  FpPewWindow *window = open_pew (d);
  g_autofree char *before = g_strdup (told (window));
  const guint place = fp_pew_window_place (window), alternative = fp_document_alternative (d);

  fp_document_set_alternative (d, 0);
  WAIT_FOR (strcmp (told (window), before) != 0);
  g_assert_cmpuint (fp_pew_window_place (window), ==, place);
  fp_document_set_alternative (d, alternative);
  WAIT_FOR (strcmp (told (window), before) == 0);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Taken away under the eye, a block gives way to whoever is nearest; the last one to words. */
static void
test_without_pews (void)
{
  static const char *const pews[] = { "pews-rear-g", "pews-front-g", "pews-front-e", "pews-rear-e" };
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  FpPewWindow *window = open_pew (d);

  for (guint i = 0; i < G_N_ELEMENTS (pews); i++)
    {
      g_autoptr (GError) error = NULL;
      fp_document_edit (d, fp_set_out_remove (fp_document_scene (d), pews[i], &error), "Remove", NULL);
      g_assert_no_error (error);
    }
  g_autoptr (FpPeople) people = fp_people_new (fp_document_scene (d));
  guint n;
  fp_people_places (people, &n);
  if (n == 0)
    {
      WAIT_FOR (g_str_has_prefix (told (window), "There are no pews"));
    }
  else
    g_assert_cmpuint (fp_pew_window_place (window), <, n);
  gtk_window_destroy (GTK_WINDOW (window));
}

static GFile *
answer_file (const FpFileQuestion *question, gpointer path)
{
  (void) question;
  return g_file_new_for_path (path);
}

static void
test_saves (void)
{
  static const struct { const char *form, *head; } forms[] = { { "png", "\x89PNG" }, { "pdf", "%PDF" }, { "svg", "<?xm" } };
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  FpPewWindow *window = open_pew (d);
  g_autofree char *dir = g_dir_make_tmp ("footpace-XXXXXX", NULL);

  for (guint i = 0; i < G_N_ELEMENTS (forms); i++)
    {
      g_autofree char *name = g_strdup_printf ("seen.%s", forms[i].form), *path = g_build_filename (dir, name, NULL);
      g_autofree char *bytes = NULL;
      fp_ask_files_of (answer_file, path);
      gtk_widget_activate_action (GTK_WIDGET (window), "pew.save", "s", forms[i].form);
      WAIT_FOR (g_str_has_prefix (told (window), "Written:"));
      fp_ask_files_of (NULL, NULL);
      g_assert_true (g_file_get_contents (path, &bytes, NULL, NULL));
      g_assert_true (g_str_has_prefix (bytes, forms[i].head));
      g_unlink (path);
    }
  g_rmdir (dir);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* By the arrow keys every seat of a block is reached, and nobody leaves it. */
static void
test_next (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("fan.footpace");
  g_autoptr (FpPeople) people = fp_people_new (fp_document_scene (d));
  const FpPersonPlace *place = fp_people_places (people, NULL);
  guint at;

  g_assert_true (fp_pew_first_place (people, -1, &at));
  const guint owner = place[at].owner;
  for (guint i = 0; i < 40; i++)
    at = fp_pew_next_place (people, at, 0, -1);
  g_assert_cmpuint (place[at].row, ==, 1);
  for (guint i = 0; i < 40; i++)
    at = fp_pew_next_place (people, at, -1, 0);
  g_assert_cmpuint (place[at].number, ==, 1);
  const guint first = at;
  at = fp_pew_next_place (people, at, 1, 0);
  g_assert_cmpuint (place[at].number, ==, 2);
  g_assert_cmpuint (place[fp_pew_next_place (people, at, 0, 1)].row, ==, 2);
  g_assert_cmpuint (fp_pew_next_place (people, at, -1, 0), ==, first);
  g_assert_cmpuint (place[at].owner, ==, owner);
}

/* Bytes that begin as a PDF does, with the shares of every alternative drawn. */
static void
test_strip (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("parish.footpace");
  const FpProject *project = fp_document_project (d);
  g_autoptr (FpPewStrip) strip = fp_pew_strip_new (project, NULL);
  g_autoptr (GError) error = NULL;
  g_autofree char *dir = g_dir_make_tmp ("footpace-XXXXXX", NULL), *path = g_build_filename (dir, "strip.pdf", NULL);
  g_autofree char *bytes = NULL;

  g_assert_true (fp_pew_strip_has (strip, FP_PEW_FRONT) && fp_pew_strip_has (strip, FP_PEW_CHILD));
  g_assert_false (fp_pew_strip_has (strip, FP_PEW_GALLERY));
  for (guint i = 0; i < fp_project_n_alternatives (project); i++)
    g_assert_nonnull (strstr (fp_pew_strip_get (strip, i, FP_PEW_BACK)->told, "sitting; Offertory. Seen: mensa"));
  g_assert_true (fp_pew_strip_write (project, FP_INK_GREY, path, &error));
  g_assert_no_error (error);
  g_assert_true (g_file_get_contents (path, &bytes, NULL, NULL));
  g_assert_true (g_str_has_prefix (bytes, "%PDF"));
  g_unlink (path);
  g_assert_false (fp_pew_strip_write (project, FP_INK_GREY, "/no/such/folder/strip.pdf", &error));
  g_assert_nonnull (error);
  g_rmdir (dir);
}

/* No strip is made of what is no longer asked for. */
static void
test_strip_cancelled (void)
{
  g_autoptr (FpDocument) d = help_open_sample ("chapel.footpace");
  g_autoptr (GCancellable) cancel = g_cancellable_new ();

  g_cancellable_cancel (cancel);
  g_assert_null (fp_pew_strip_new (fp_document_project (d), cancel));
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pew/places", test_places);
  g_test_add_func ("/pew/follows", test_follows);
  g_test_add_func ("/pew/without-pews", test_without_pews);
  g_test_add_func ("/pew/saves", test_saves);
  g_test_add_func ("/pew/next", test_next);
  g_test_add_func ("/pew/strip", test_strip);
  g_test_add_func ("/pew/strip/cancelled", test_strip_cancelled);
  return g_test_run ();
}
