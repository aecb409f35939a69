/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-keeper.c - unsaved work is kept while one works, and what a crash leaves is opened again */
#include "keeper.h"

#include "../folder.h"
#include "samples.h"
#include "waiting.h"

#include "footpace/setting-out.h"

#include <glib/gstdio.h>
#include <string.h>

#define DELAY 30 /* ms */

typedef struct
{
  char       *root, *folder, *file;
  FpDocument *document;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  g_autofree char *sample = fp_sample_path ("parish.footpace");
  g_autoptr (FpProject) project = fp_store_load (sample, NULL);

  (void) data;
  f->root = g_dir_make_tmp ("footpace-XXXXXX", NULL);
  f->folder = g_build_filename (f->root, "recovery", NULL);
  f->file = g_build_filename (f->root, "church.footpace", NULL);
  g_assert_true (fp_store_save (project, f->file, NULL));
  f->document = fp_document_load (f->file, NULL);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  g_clear_object (&f->document);
  folder_remove (f->folder);
  folder_remove (f->root);
  g_free (f->root);
  g_free (f->folder);
  g_free (f->file);
}

static void
nudge (FpDocument *document, double by)
{
  const FpScene *scene = fp_document_base_scene (document);
  const char *id = fp_item_id (fp_scene_placed (scene, NULL)[fp_scene_celebrated_altar (scene)].item);

  g_assert_true (fp_document_edit (document, fp_set_out_move (scene, id, (FpVec3) { by, 0, 0 }, NULL), "Move", NULL));
}

/* Path of the one project that is kept; NULL. */
static char *
kept_file (Fixture *f)
{
  g_autoptr (GDir) dir = g_dir_open (f->folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (g_str_has_suffix (name, ".footpace"))
      return g_build_filename (f->folder, name, NULL);
  return NULL;
}

/* As a crash would leave it: a copy of the entry, without its lock. */
static FpLeft *
after_a_crash (Fixture *f)
{
  g_autofree char *kept = kept_file (f), *bytes = NULL, *about = NULL, *copy = NULL, *note = NULL;
  g_autofree char *id = g_uuid_string_random ();
  g_autoptr (GPtrArray) left = NULL;
  gsize length;

  g_assert_nonnull (kept);
  g_assert_true (g_file_get_contents (kept, &bytes, &length, NULL));
  copy = g_strdup_printf ("%s/%s.footpace", f->folder, id);
  g_assert_true (g_file_set_contents (copy, bytes, (gssize) length, NULL));
  strcpy (strrchr (kept, '.'), ".about");
  g_assert_true (g_file_get_contents (kept, &note, &length, NULL));
  about = g_strdup_printf ("%s/%s.about", f->folder, id);
  g_assert_true (g_file_set_contents (about, note, (gssize) length, NULL));
  left = fp_recovery_left (f->folder);
  g_assert_cmpuint (left->len, ==, 1);
  return g_ptr_array_steal_index (left, 0);
}

static void
test_kept (Fixture *f, gconstpointer data)
{
  g_autoptr (FpKeeper) keeper = fp_keeper_new (f->document, f->folder, DELAY);
  g_autofree char *none = kept_file (f), *kept = NULL;
  g_autoptr (FpProject) project = NULL;

  (void) data;
  g_assert_null (none);
  nudge (f->document, 100);
  nudge (f->document, 100);
  g_assert_false (fp_keeper_is_idle (keeper));
  WAIT_FOR (fp_keeper_is_idle (keeper));
  g_assert_null (fp_keeper_trouble (keeper));
  kept = kept_file (f);
  project = fp_store_load (kept, NULL);
  g_assert_true (fp_project_equal (project, fp_document_project (f->document)));
}

/* A stream of changes, each sooner than the delay after the one before, is kept all the same. */
static void
test_not_put_off (Fixture *f, gconstpointer data)
{
  g_autoptr (FpKeeper) keeper = fp_keeper_new (f->document, f->folder, 100);
  const gint64 begun = g_get_monotonic_time ();
  g_autofree char *kept = NULL;

  (void) data;
  while (kept == NULL && g_get_monotonic_time () - begun < 20 * G_USEC_PER_SEC)
    {
      nudge (f->document, 1);
      for (guint i = 0; i < 3; i++)
        {
          g_usleep (10 * 1000);
          while (g_main_context_iteration (NULL, FALSE))
            ;
        }
      kept = kept_file (f);
    }
  g_assert_nonnull (kept);
}

static void
test_saved_and_undone (Fixture *f, gconstpointer data)
{
  g_autoptr (FpKeeper) keeper = fp_keeper_new (f->document, f->folder, DELAY);
  g_autofree char *saved = NULL, *undone = NULL;

  (void) data;
  nudge (f->document, 100);
  WAIT_FOR (fp_keeper_is_idle (keeper));
  g_assert_true (fp_document_save (f->document, f->file, NULL));
  saved = kept_file (f);
  g_assert_null (saved);
  nudge (f->document, 100);
  WAIT_FOR (fp_keeper_is_idle (keeper));
  fp_document_undo (f->document);
  undone = kept_file (f);
  g_assert_null (undone);
}

/* Undo leads from what was not saved back to the file. */
static void
test_recovered (Fixture *f, gconstpointer data)
{
  FpKeeper *keeper = fp_keeper_new (f->document, f->folder, DELAY);
  g_autoptr (FpProject) file = fp_store_load (f->file, NULL);
  g_autoptr (FpDocument) again = NULL;
  g_autoptr (FpLeft) left = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  fp_document_set_alternative (f->document, 0);
  nudge (f->document, 100);
  nudge (f->document, 50);
  WAIT_FOR (fp_keeper_is_idle (keeper));
  left = after_a_crash (f);
  again = fp_document_recover (left, &error);
  g_assert_no_error (error);
  g_assert_true (fp_project_equal (fp_document_project (again), fp_document_project (f->document)));
  g_assert_cmpuint (fp_document_alternative (again), ==, 0);
  g_assert_true (fp_document_is_modified (again));
  g_assert_true (fp_document_undo (again));
  g_assert_true (fp_project_equal (fp_document_project (again), file));
  g_assert_false (fp_document_is_modified (again));
  g_assert_true (fp_document_redo (again));
  g_assert_true (fp_document_save (again, fp_document_path (again), &error));
  fp_keeper_free (keeper);
}

/* Where someone else has written the file since the crash, what was kept is opened, and saving asks first. */
static void
test_recovered_over_a_changed_file (Fixture *f, gconstpointer data)
{
  FpKeeper *keeper = fp_keeper_new (f->document, f->folder, DELAY);
  g_autoptr (FpDocument) again = NULL, other = fp_document_load (f->file, NULL);
  g_autoptr (FpLeft) left = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  nudge (f->document, 100);
  WAIT_FOR (fp_keeper_is_idle (keeper));
  left = after_a_crash (f);
  nudge (other, -500);
  g_assert_true (fp_document_save (other, f->file, NULL));
  again = fp_document_recover (left, NULL);
  g_assert_true (fp_project_equal (fp_document_project (again), fp_document_project (f->document)));
  g_assert_null (fp_document_undo_label (again));
  g_assert_true (fp_document_is_modified (again));
  g_assert_false (fp_document_save (again, fp_document_path (again), &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_CHANGED);
  fp_keeper_free (keeper);
}

static void
test_changed_by_someone_else (Fixture *f, gconstpointer data)
{
  g_autoptr (FpDocument) other = fp_document_load (f->file, NULL);
  g_autoptr (GError) error = NULL;
  g_autofree char *elsewhere = g_build_filename (f->root, "elsewhere.footpace", NULL);

  (void) data;
  nudge (other, 300);
  g_assert_true (fp_document_save (other, f->file, NULL));
  g_assert_true (fp_document_is_file_changed (f->document));
  nudge (f->document, 100);
  g_assert_false (fp_document_save (f->document, f->file, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_CHANGED);
  g_assert_true (fp_document_is_modified (f->document));
  g_clear_error (&error);
  g_assert_true (fp_document_save (f->document, elsewhere, &error));
  g_assert_true (fp_document_save_over (f->document, f->file, &error));
  g_assert_false (fp_document_is_file_changed (f->document));
  g_remove (f->file);
  g_assert_false (fp_document_is_file_changed (f->document));
  nudge (f->document, 100);
  g_assert_true (fp_document_save (f->document, f->file, &error));
}

static void
test_open_elsewhere (Fixture *f, gconstpointer data)
{
  g_autoptr (FpKeeper) keeper = fp_keeper_new (f->document, f->folder, DELAY);
  g_autoptr (FpDocument) other = fp_document_load (f->file, NULL);
  FpKeeper *second;

  (void) data;
  g_assert_false (fp_keeper_is_open_elsewhere (keeper));
  second = fp_keeper_new (other, f->folder, DELAY);
  g_assert_true (fp_keeper_is_open_elsewhere (keeper));
  g_assert_true (fp_keeper_is_open_elsewhere (second));
  fp_keeper_free (second);
  g_assert_false (fp_keeper_is_open_elsewhere (keeper));
}

static void
test_no_folder (Fixture *f, gconstpointer data)
{
  g_autofree char *inside = g_build_filename (f->file, "recovery", NULL);
  g_autoptr (FpKeeper) keeper = fp_keeper_new (f->document, inside, DELAY);

  (void) data;
  g_assert_nonnull (fp_keeper_trouble (keeper));
  nudge (f->document, 100);
  g_assert_true (fp_document_save (f->document, f->file, NULL));
}

/* --- several chosen -------------------------------------------------------- */

static void
test_choosing (Fixture *f, gconstpointer data)
{
  const FpScene *scene = fp_document_scene (f->document);
  const FpPlaced *placed = fp_scene_placed (scene, NULL);
  const char *altar = fp_item_id (placed[fp_scene_role (scene, FP_ROLE_ALTAR)].item);
  const char *rail = fp_item_id (placed[fp_scene_role (scene, FP_ROLE_RAIL)].item);
  g_autofree char *altar_id = g_strdup (altar), *rail_id = g_strdup (rail);
  FpProject *without;

  (void) data;
  fp_document_choose (f->document, altar_id);
  fp_document_choose_also (f->document, rail_id);
  g_assert_cmpuint (fp_document_n_chosen (f->document), ==, 2);
  g_assert_cmpstr (fp_document_chosen (f->document), ==, rail_id);
  g_assert_true (fp_document_is_chosen (f->document, altar_id));
  without = fp_set_out_remove (fp_document_base_scene (f->document), rail_id, NULL);
  fp_document_edit (f->document, without, "Remove", NULL);
  if (fp_document_placed (f->document, rail_id) == NULL)
    g_assert_cmpuint (fp_document_n_chosen (f->document), ==, 1);
  fp_document_choose_also (f->document, altar_id);
  g_assert_false (fp_document_is_chosen (f->document, altar_id));
  fp_document_choose (f->document, NULL);
  g_assert_cmpuint (fp_document_n_chosen (f->document), ==, 0);
  g_assert_null (fp_document_chosen (f->document));
  fp_document_choose_also (f->document, "nobody");
  g_assert_cmpuint (fp_document_n_chosen (f->document), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, function) g_test_add ("/keeper/" name, Fixture, NULL, set_up, function, tear_down)
  ADD ("kept", test_kept);
  ADD ("not-put-off", test_not_put_off);
  ADD ("saved-and-undone", test_saved_and_undone);
  ADD ("recovered", test_recovered);
  ADD ("recovered-over-a-changed-file", test_recovered_over_a_changed_file);
  ADD ("changed-by-someone-else", test_changed_by_someone_else);
  ADD ("open-elsewhere", test_open_elsewhere);
  ADD ("no-folder", test_no_folder);
  ADD ("choosing", test_choosing);
  return g_test_run ();
}
