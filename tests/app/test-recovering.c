/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What a crash has left, opened again in the window: beside the file as it was saved, and beside newer work on it. */
#include "samples.h"
#include "window.h"

#include "../folder.h"

#include "footpace/recovery.h"

#include <string.h>
#include <unistd.h>

static struct { char *self, *folder, *file; } at;

static FpProject *
titled (const FpProject *project, const char *title)
{
  FpBrief brief = *fp_project_brief (project);

  brief.title = title;
  return fp_project_with_brief (project, &brief, NULL);
}

/* What another program does: it works on the file, and ends without a word. */
static int
work_and_crash (const char *file)
{
  g_autofree char *folder = fp_recovery_folder (), *digest = NULL;
  FpProject *saved = fp_store_load_digest (file, &digest, NULL);
  FpRecovery *recovery = fp_recovery_new (folder, file, digest, NULL);
  FpProject *unsaved = saved != NULL ? titled (saved, "As it was not saved") : NULL;

  _exit (recovery != NULL && unsaved != NULL && fp_recovery_keep (recovery, unsaved, "a", NULL) ? 0 : 1);
}

static void
crash (void)
{
  const char *argv[] = { at.self, "--crash", at.file, NULL };
  g_autoptr (GError) error = NULL;
  int status;

  g_spawn_sync (NULL, (char **) argv, NULL, G_SPAWN_DEFAULT, NULL, NULL, NULL, NULL, &status, &error);
  g_assert_no_error (error);
  g_assert_cmpint (status, ==, 0);
}

static FpWindow *
open_file (void)
{
  g_autoptr (FpDocument) document = fp_document_load (at.file, NULL);
  FpWindow *window = FP_WINDOW (fp_window_new (NULL));

  g_assert_nonnull (document);
  gtk_window_present (GTK_WINDOW (window));
  fp_window_set_document (window, document);
  return window;
}

static const char *
title_in (FpWindow *window)
{
  FpDocument *document = fp_window_document (window);

  return document != NULL ? fp_project_brief (fp_document_project (document))->title : NULL;
}

/* The window, other than @but, that is of that sort; NULL. */
static gpointer
window_of (GType type, gpointer but)
{
  GListModel *windows = gtk_window_get_toplevels ();

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++)
    {
      g_autoptr (GObject) window = g_list_model_get_item (windows, i);

      if (window != but && G_TYPE_CHECK_INSTANCE_TYPE (window, type))
        return window;
    }
  return NULL;
}

/* The buttons are: throw away, later, recover. */
static void
recover (FpWindow *window)
{
  fp_window_offer_left (window);
  g_assert_nonnull (window_of (GTK_TYPE_DIALOG, NULL));
  gtk_dialog_response (GTK_DIALOG (window_of (GTK_TYPE_DIALOG, NULL)), 2);
}

/* What Enter takes. */
static const char *
usual_button (GtkWidget *dialog)
{
  return gtk_button_get_label (GTK_BUTTON (gtk_window_get_default_widget (GTK_WINDOW (dialog))));
}

/* Nothing is lost by the first button, or by the Enter key: to be thrown away it has to be asked for twice. */
static void
test_not_lost_by_haste (void)
{
  g_autofree char *folder = fp_recovery_folder ();
  g_autoptr (GPtrArray) left = NULL, gone = NULL;
  FpWindow *window;
  GtkWidget *dialog;

  crash ();
  window = open_file ();
  fp_window_offer_left (window);
  dialog = window_of (GTK_TYPE_DIALOG, NULL);
  g_assert_cmpstr (usual_button (dialog), ==, "_Recover");
  g_assert_true (gtk_widget_has_css_class (gtk_window_get_default_widget (GTK_WINDOW (dialog)), "suggested-action"));
  gtk_dialog_response (GTK_DIALOG (dialog), 0);
  dialog = window_of (GTK_TYPE_DIALOG, NULL);
  g_assert_nonnull (dialog);
  g_assert_cmpstr (usual_button (dialog), ==, "_Keep");
  gtk_dialog_response (GTK_DIALOG (dialog), 0);
  dialog = window_of (GTK_TYPE_DIALOG, NULL);
  g_assert_cmpstr (usual_button (dialog), ==, "_Recover");
  left = fp_recovery_left (folder);
  g_assert_cmpuint (left->len, ==, 1);
  gtk_dialog_response (GTK_DIALOG (dialog), 0);
  gtk_dialog_response (GTK_DIALOG (window_of (GTK_TYPE_DIALOG, NULL)), 1);
  g_assert_null (window_of (GTK_TYPE_DIALOG, NULL));
  gone = fp_recovery_left (folder);
  g_assert_cmpuint (gone->len, ==, 0);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* It takes the place of what it came from: no second window, and no question whose answer could lose it. */
static void
test_in_place (void)
{
  FpWindow *window;

  crash ();
  window = open_file ();
  recover (window);
  g_assert_null (window_of (GTK_TYPE_DIALOG, NULL));
  g_assert_null (window_of (FP_TYPE_WINDOW, window));
  g_assert_cmpstr (title_in (window), ==, "As it was not saved");
  g_assert_true (fp_document_is_modified (fp_window_document (window)));
  /* Undo leads back to the file. */
  g_assert_true (fp_document_undo (fp_window_document (window)));
  g_assert_false (fp_document_is_modified (fp_window_document (window)));
  gtk_window_destroy (GTK_WINDOW (window));
}

/* Beside what was done in the meantime it has a window of its own, which tells of the other and asks nothing. */
static void
test_beside_newer (void)
{
  FpWindow *window, *other;
  FpDocument *document;

  crash ();
  window = open_file ();
  document = fp_window_document (window);
  g_assert_true (fp_document_edit (document, titled (fp_document_project (document), "Newer"), "Title", NULL));
  recover (window);
  other = window_of (FP_TYPE_WINDOW, window);
  g_assert_nonnull (other);
  g_assert_null (window_of (GTK_TYPE_DIALOG, NULL));
  g_assert_cmpstr (title_in (window), ==, "Newer");
  g_assert_cmpstr (title_in (other), ==, "As it was not saved");
  g_assert_true (fp_document_is_modified (fp_window_document (other)));
  gtk_window_destroy (GTK_WINDOW (other));
  gtk_window_destroy (GTK_WINDOW (window));
}

static void
begin (void)
{
  g_autofree char *sample = fp_sample_path ("chapel.footpace");
  g_autoptr (FpProject) project = fp_store_load (sample, NULL);

  at.folder = g_dir_make_tmp ("footpace-XXXXXX", NULL);
  at.file = g_build_filename (at.folder, "church.footpace", NULL);
  g_setenv ("XDG_STATE_HOME", at.folder, TRUE);
  g_assert_nonnull (project);
  g_assert_true (fp_store_save (project, at.file, NULL));
}

static void
end (void)
{
  g_autofree char *folder = fp_recovery_folder (), *above = g_path_get_dirname (folder);

  folder_remove (folder);
  folder_remove (above);
  folder_remove (at.folder);
  g_free (at.folder);
  g_free (at.file);
}

int
main (int argc, char **argv)
{
  int result;

  if (argc == 3 && strcmp (argv[1], "--crash") == 0)
    return work_and_crash (argv[2]);
  at.self = argv[0];
  begin ();
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/recovering/not-lost-by-haste", test_not_lost_by_haste);
  g_test_add_func ("/recovering/in-place", test_in_place);
  g_test_add_func ("/recovering/beside-newer", test_beside_newer);
  result = g_test_run ();
  end ();
  return result;
}
