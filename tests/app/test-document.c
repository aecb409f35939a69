/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "document.h"

#include "samples.h"
#include "setting-edit.h"
#include "waiting.h"

#include "footpace/setting-out.h"
#include "footpace/store.h"

#include <glib/gstdio.h>

/* The invented parish, with its restored high altar (the last alternative) shown. */
static FpDocument *
open_parish (void)
{
  g_autofree char *path = fp_sample_path ("parish.footpace");
  g_autoptr (GError) error = NULL;
  FpDocument *document = fp_document_load (path, &error);

  g_assert_no_error (error);
  return document;
}

static const char *
altar_id (FpDocument *d)
{
  int i = fp_scene_role (fp_document_scene (d), FP_ROLE_ALTAR);

  g_assert_cmpint (i, >=, 0);
  return g_intern_string (fp_item_id (fp_scene_placed (fp_document_scene (d), NULL)[i].item));
}

static double
altar_x (FpDocument *d)
{
  return fp_document_placed (d, altar_id (d))->place.x;
}

static FpProject *
moved (FpDocument *d, double dx)
{
  g_autoptr (GError) error = NULL;
  FpProject *next = fp_set_out_move (fp_document_base_scene (d), altar_id (d), (FpVec3) { dx, 0.0, 0.0 }, &error);

  g_assert_no_error (error);
  return next;
}

static void
count (FpDocument *document, guint *n)
{
  (void) document;
  (*n)++;
}

static void
test_open (void)
{
  g_autoptr (FpDocument) d = open_parish ();

  g_assert_false (fp_document_is_modified (d));
  g_assert_null (fp_document_undo_label (d));
  g_assert_null (fp_document_chosen (d));
  g_assert_cmpuint (fp_document_alternative (d), ==, fp_project_n_alternatives (fp_document_project (d)) - 1);
}

static void
test_open_what_is_not_there (void)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (fp_document_load ("/nowhere/at/all.footpace", &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_READ);
}

static void
test_edit_undo_redo (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  double x = altar_x (d);
  guint scenes = 0, states = 0;

  g_signal_connect (d, "scene", G_CALLBACK (count), &scenes);
  g_signal_connect (d, "state", G_CALLBACK (count), &states);
  g_assert_true (fp_document_edit (d, moved (d, 250.0), "Move altar", NULL));
  g_assert_cmpfloat (altar_x (d), ==, x + 250.0);
  g_assert_true (fp_document_is_modified (d));
  g_assert_cmpstr (fp_document_undo_label (d), ==, "Move altar");
  g_assert_true (fp_document_undo (d));
  g_assert_cmpfloat (altar_x (d), ==, x);
  g_assert_false (fp_document_is_modified (d));
  g_assert_false (fp_document_undo (d));
  g_assert_true (fp_document_redo (d));
  g_assert_cmpfloat (altar_x (d), ==, x + 250.0);
  g_assert_false (fp_document_redo (d));
  g_assert_cmpuint (scenes, ==, 3);
  g_assert_cmpuint (states, ==, 3);
}

static void
test_no_edit (void)
{
  g_autoptr (FpDocument) d = open_parish ();

  g_assert_false (fp_document_edit (d, NULL, "Nothing", NULL));
  g_assert_false (fp_document_is_modified (d));
}

/* Ten presses of an arrow key are one step back. */
static void
test_nudges_merge (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  double x = altar_x (d);

  for (guint i = 0; i < 10; i++)
    fp_document_edit (d, moved (d, 10.0), "Move altar", "nudge altar");
  g_assert_cmpfloat (altar_x (d), ==, x + 100.0);
  g_assert_cmpuint (fp_document_depth (d), ==, 1);
  fp_document_undo (d);
  g_assert_cmpfloat (altar_x (d), ==, x);
}

/* A drag is seen while it lasts and is one step when it ends. */
static void
test_preview_kept (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  double x = altar_x (d);

  for (guint i = 1; i <= 20; i++)
    {
      fp_document_preview (d, moved (d, 10.0 * i));
      g_assert_cmpfloat (altar_x (d), ==, x + 10.0 * i); /* from where it was, not from the preview before */
    }
  g_assert_true (fp_document_is_previewing (d));
  g_assert_false (fp_document_is_modified (d));
  fp_document_keep_preview (d, "Move altar");
  g_assert_false (fp_document_is_previewing (d));
  g_assert_cmpfloat (altar_x (d), ==, x + 200.0);
  g_assert_cmpuint (fp_document_depth (d), ==, 1);
}

static void
test_preview_dropped (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  double x = altar_x (d);

  fp_document_preview (d, moved (d, 300.0));
  fp_document_drop_preview (d);
  g_assert_cmpfloat (altar_x (d), ==, x);
  g_assert_cmpuint (fp_document_depth (d), ==, 0);
  /* Undo in the midst of a drag gives the drag up. */
  fp_document_preview (d, moved (d, 300.0));
  g_assert_false (fp_document_undo (d));
  g_assert_cmpfloat (altar_x (d), ==, x);
}

static void
test_choose (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  guint chosen = 0;

  g_signal_connect (d, "chosen", G_CALLBACK (count), &chosen);
  fp_document_choose (d, altar_id (d));
  fp_document_choose (d, altar_id (d));
  g_assert_cmpuint (chosen, ==, 1);
  g_assert_cmpstr (fp_item_id (fp_document_chosen_placed (d)->item), ==, altar_id (d));
  fp_document_choose (d, "no-such-thing");
  g_assert_null (fp_document_chosen (d));
  g_assert_null (fp_document_chosen_placed (d));
}

static void
test_what_is_removed_is_not_chosen (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  g_autoptr (GError) error = NULL;
  const char *id = altar_id (d);

  fp_document_choose (d, id);
  g_assert_true (fp_document_edit (d, fp_set_out_remove (fp_document_base_scene (d), id, &error), "Remove", NULL));
  g_assert_no_error (error);
  g_assert_null (fp_document_chosen (d));
  fp_document_undo (d);
  g_assert_nonnull (fp_document_placed (d, id));
}

/* What the survey holds and an alternative removes is still there to be chosen and kept again: as a ghost. */
static void
test_ghost_can_be_chosen (void)
{
  g_autoptr (FpDocument) d = open_parish ();

  fp_document_choose (d, "altar-1974");
  g_assert_nonnull (fp_document_chosen_placed (d));
  g_assert_true (fp_document_chosen_placed (d)->ghost);
}

static void
test_alternatives (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  guint last = fp_document_alternative (d), scenes = 0;

  g_assert_cmpuint (last, >, 0);
  g_signal_connect (d, "scene", G_CALLBACK (count), &scenes);
  fp_document_set_alternative (d, 0);
  g_assert_cmpuint (fp_scene_alternative (fp_document_scene (d)), ==, 0);
  fp_document_set_alternative (d, 0);
  fp_document_set_alternative (d, 99);
  g_assert_cmpuint (fp_document_alternative (d), ==, 0);
  g_assert_cmpuint (scenes, ==, 1);
}

/* The alternative on show is undone: another is shown, nothing breaks. */
static void
test_alternative_undone (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  g_autoptr (GError) error = NULL;
  guint n = fp_project_n_alternatives (fp_document_project (d));
  FpProject *next = fp_project_with_new_alternative (fp_document_project (d), 0, "z", "Another", &error);

  g_assert_no_error (error);
  fp_document_edit (d, next, "New alternative", NULL);
  fp_document_set_alternative (d, n);
  fp_document_undo (d);
  g_assert_cmpuint (fp_document_alternative (d), ==, n - 1);
  g_assert_cmpuint (fp_scene_alternative (fp_document_scene (d)), ==, n - 1);
}

static void
test_findings_come_twice (void)
{
  g_autoptr (FpDocument) d = open_parish ();

  g_assert_null (fp_document_findings (d));
  g_assert_true (fp_document_is_checking (d));
  WAIT_FOR (fp_document_findings (d) != NULL);
  WAIT_FOR (!fp_document_is_checking (d));
  g_assert_true (fp_document_findings (d) == fp_document_sighted (d));
  g_assert_nonnull (fp_findings_measuring (fp_document_findings (d))->sight);
  g_assert_true (fp_findings_scene (fp_document_findings (d)) == fp_document_scene (d));
}

/* The answer on show is the same as all of it computed at once, on one thread, without a window. */
static void
test_findings_are_the_right_ones (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  g_autoptr (FpFindings) apart = NULL;
  const FpFinding *a, *b;
  guint na, nb;

  fp_document_edit (d, moved (d, 400.0), "Move altar", NULL);
  WAIT_FOR (!fp_document_is_checking (d));
  apart = fp_findings_of (fp_document_project (d), fp_document_alternative (d), NULL, NULL);
  a = fp_findings_get (fp_document_findings (d), &na);
  b = fp_findings_get (apart, &nb);
  g_assert_cmpuint (na, ==, nb);
  for (guint i = 0; i < na; i++)
    {
      g_assert_cmpstr (a[i].rule->id, ==, b[i].rule->id);
      g_assert_cmpint (a[i].found, ==, b[i].found);
      g_assert_cmpstr (a[i].measured, ==, b[i].measured);
    }
}

static void
test_findings_of_another_alternative (void)
{
  g_autoptr (FpDocument) d = open_parish ();

  WAIT_FOR (!fp_document_is_checking (d));
  fp_document_set_alternative (d, 0);
  /* Never those of the other alternative, not even for a moment. */
  g_assert_null (fp_document_findings (d));
  g_assert_null (fp_document_sighted (d));
  WAIT_FOR (!fp_document_is_checking (d));
  g_assert_cmpuint (fp_scene_alternative (fp_findings_scene (fp_document_findings (d))), ==, 0);
}

static void
test_dropped_while_checking (void)
{
  for (guint i = 0; i < 5; i++)
    {
      g_autoptr (FpDocument) d = open_parish ();

      fp_document_edit (d, moved (d, 10.0), "Move altar", NULL);
      g_main_context_iteration (NULL, FALSE);
    }
}

static void
test_save (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  g_autoptr (GError) error = NULL;
  g_autofree char *dir = g_dir_make_tmp ("footpace-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (dir, "saved.footpace", NULL);
  g_autoptr (FpProject) read = NULL;

  fp_document_edit (d, moved (d, 123.0), "Move altar", NULL);
  g_assert_true (fp_document_save (d, path, &error));
  g_assert_no_error (error);
  g_assert_cmpstr (fp_document_path (d), ==, path);
  g_assert_false (fp_document_is_modified (d));
  read = fp_store_load (path, &error);
  g_assert_no_error (error);
  g_assert_true (fp_project_equal (read, fp_document_project (d)));
  fp_document_undo (d);
  g_assert_true (fp_document_is_modified (d)); /* the file holds what was undone */
  g_unlink (path);
  g_rmdir (dir);
}

static void
test_save_that_fails (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  g_autofree char *was = g_strdup (fp_document_path (d));
  g_autoptr (GError) error = NULL;

  fp_document_edit (d, moved (d, 123.0), "Move altar", NULL);
  g_assert_false (fp_document_save (d, "/nowhere/at/all/saved.footpace", &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_WRITE);
  g_assert_cmpstr (fp_document_path (d), ==, was);
  g_assert_true (fp_document_is_modified (d));
}

/* A preview is not saved: it may yet be put back. */
static void
test_save_in_a_drag (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  g_autoptr (FpProject) before = fp_project_ref (fp_document_project (d));
  g_autoptr (FpProject) read = NULL;
  g_autofree char *dir = g_dir_make_tmp ("footpace-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (dir, "saved.footpace", NULL);

  fp_document_preview (d, moved (d, 500.0));
  g_assert_true (fp_document_save (d, path, NULL));
  read = fp_store_load (path, NULL);
  g_assert_true (fp_project_equal (read, before));
  g_unlink (path);
  g_rmdir (dir);
}

static FpProject *
without_cross (FpDocument *d)
{
  g_autoptr (GError) error = NULL;
  FpProject *next = fp_setting_edit_stands (fp_document_project (d), fp_document_alternative (d), FP_CELEBRATION_SUNG,
                                            "crucifix", FALSE, &error);

  g_assert_no_error (error);
  return next;
}

/* What does not stand then is not there to be chosen or checked; an edit is of the whole church even so, and undo leads
 * back. */
static void
test_celebration (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  guint n_whole, n_set, scenes = 0;

  WAIT_FOR (!fp_document_is_checking (d));
  fp_scene_placed (fp_document_scene (d), &n_whole);
  fp_document_choose (d, "crucifix");
  g_signal_connect (d, "scene", G_CALLBACK (count), &scenes);
  fp_document_set_celebration (d, FP_CELEBRATION_GOOD_FRIDAY);
  g_assert_cmpuint (scenes, ==, 1);
  fp_scene_placed (fp_document_scene (d), &n_set);
  g_assert_cmpuint (n_set, ==, n_whole - 2); /* without cross and candlesticks */
  g_assert_null (fp_document_chosen (d));
  g_assert_null (fp_document_sighted (d));
  g_assert_true (fp_document_is_checking (d));
  fp_document_edit (d, moved (d, 250.0), "Move altar", NULL);
  g_assert_cmpfloat_with_epsilon (altar_x (d), 250.0, 1e-6);
  fp_document_set_celebration (d, FP_CELEBRATION_SUNG);
  fp_document_edit (d, without_cross (d), "Setting", NULL);
  g_assert_cmpint (fp_scene_find (fp_document_scene (d), "crucifix"), <, 0);
  fp_document_set_celebration (d, 0);
  g_assert_cmpint (fp_scene_find (fp_document_scene (d), "crucifix"), >=, 0);
  g_assert_cmpfloat_with_epsilon (altar_x (d), 250.0, 1e-6);
  fp_document_set_celebration (d, FP_CELEBRATION_SUNG);
  fp_document_undo (d);
  g_assert_cmpint (fp_scene_find (fp_document_scene (d), "crucifix"), >=, 0);
}

/* What is decided as the rule has it anyway is no decision. */
static void
test_setting_edits (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  const FpProject *p = fp_document_project (d);
  const guint at = fp_document_alternative (d);
  g_autoptr (FpProject) away = fp_setting_edit_stands (p, at, FP_CELEBRATION_SUNG, "crucifix", FALSE, NULL);
  g_autoptr (FpProject) back = fp_setting_edit_stands (away, at, FP_CELEBRATION_SUNG, "crucifix", TRUE, NULL);
  g_autoptr (FpProject) four = fp_setting_edit_lit (p, at, FP_CELEBRATION_SUNG, "candlesticks", 4, NULL);
  g_autoptr (FpProject) six = fp_setting_edit_lit (four, at, FP_CELEBRATION_SUNG, "candlesticks", 6, NULL);
  g_autoptr (FpProject) veiled = fp_setting_edit_veiled (four, at, FP_CELEBRATION_SUNG, "candlesticks", TRUE, NULL);
  g_autoptr (FpProject) bare = fp_setting_edit_veiled (p, at, FP_CELEBRATION_PASSIONTIDE, "crucifix", FALSE, NULL);
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (fp_alternative_setting (fp_project_alternative (away, at), FP_CELEBRATION_SUNG, "crucifix").stands, ==,
                   FP_SAID_NO);
  g_assert_true (fp_project_equal (back, p));
  g_assert_cmpint (fp_alternative_setting (fp_project_alternative (four, at), FP_CELEBRATION_SUNG, "candlesticks").lit, ==, 4);
  g_assert_true (fp_project_equal (six, p));
  g_assert_cmpint (fp_alternative_setting (fp_project_alternative (veiled, at), FP_CELEBRATION_SUNG, "candlesticks").lit, ==, 4);
  g_assert_cmpint (fp_alternative_setting (fp_project_alternative (bare, at), FP_CELEBRATION_PASSIONTIDE, "crucifix").veiled,
                   ==, FP_SAID_NO);
  g_assert_null (fp_setting_edit_lit (p, at, FP_CELEBRATION_SUNG, "no-such-thing", 1, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_REFERENCE);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/document/open", test_open);
  g_test_add_func ("/document/open-nothing", test_open_what_is_not_there);
  g_test_add_func ("/document/edit", test_edit_undo_redo);
  g_test_add_func ("/document/no-edit", test_no_edit);
  g_test_add_func ("/document/nudges", test_nudges_merge);
  g_test_add_func ("/document/preview/kept", test_preview_kept);
  g_test_add_func ("/document/preview/dropped", test_preview_dropped);
  g_test_add_func ("/document/choose", test_choose);
  g_test_add_func ("/document/choose/removed", test_what_is_removed_is_not_chosen);
  g_test_add_func ("/document/choose/ghost", test_ghost_can_be_chosen);
  g_test_add_func ("/document/alternatives", test_alternatives);
  g_test_add_func ("/document/alternatives/undone", test_alternative_undone);
  g_test_add_func ("/document/findings/twice", test_findings_come_twice);
  g_test_add_func ("/document/findings/right", test_findings_are_the_right_ones);
  g_test_add_func ("/document/findings/alternative", test_findings_of_another_alternative);
  g_test_add_func ("/document/findings/dropped", test_dropped_while_checking);
  g_test_add_func ("/document/celebration", test_celebration);
  g_test_add_func ("/document/setting-edits", test_setting_edits);
  g_test_add_func ("/document/save", test_save);
  g_test_add_func ("/document/save/fails", test_save_that_fails);
  g_test_add_func ("/document/save/drag", test_save_in_a_drag);
  return g_test_run ();
}
