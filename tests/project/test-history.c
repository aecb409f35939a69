/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-history.c - undo to the start, merged steps, what is unsaved */
#include "footpace/history.h"

#include "making.h"

/* The altar so far along. */
static FpProject *
at (double y)
{
  return test_add (test_parish (), 0, test_item ("altar", "altar", "footpace", 0, y));
}

static double
altar_y (const FpHistory *history)
{
  return fp_item_place (fp_project_find (fp_history_now (history), 0, "altar", NULL)).y;
}

static void
push (FpHistory *history, double y, const char *label, const char *merge)
{
  g_autoptr (FpProject) next = at (y);

  fp_history_push (history, next, label, merge);
}

static FpHistory *
started (gboolean saved)
{
  g_autoptr (FpProject) start = at (2000);

  return fp_history_new (start, saved);
}

static void
test_undo_to_the_start (void)
{
  g_autoptr (FpHistory) h = started (TRUE);

  g_assert_null (fp_history_undo_label (h));
  g_assert_false (fp_history_undo (h));
  for (int i = 1; i <= 500; i++)
    push (h, 2000 + i, i % 2 ? "Move the altar" : "Type a length", NULL);
  g_assert_cmpuint (fp_history_depth (h), ==, 500);
  g_assert_cmpstr (fp_history_undo_label (h), ==, "Type a length");
  for (int i = 499; i >= 0; i--)
    {
      g_assert_true (fp_history_undo (h));
      g_assert_cmpfloat (altar_y (h), ==, 2000 + i);
    }
  g_assert_false (fp_history_undo (h));
  g_assert_cmpstr (fp_history_redo_label (h), ==, "Move the altar");
  g_assert_null (fp_history_undo_label (h));
  for (int i = 1; i <= 500; i++)
    g_assert_true (fp_history_redo (h));
  g_assert_false (fp_history_redo (h));
  g_assert_cmpfloat (altar_y (h), ==, 2500);
}

static void
test_new_edit_forgets_redo (void)
{
  g_autoptr (FpHistory) h = started (TRUE);

  push (h, 2100, "One", NULL);
  push (h, 2200, "Two", NULL);
  fp_history_undo (h);
  push (h, 2300, "Three", NULL);
  g_assert_null (fp_history_redo_label (h));
  g_assert_false (fp_history_redo (h));
  g_assert_cmpuint (fp_history_depth (h), ==, 2);
  fp_history_undo (h);
  g_assert_cmpfloat (altar_y (h), ==, 2100);
}

static void
test_equal_is_no_step (void)
{
  g_autoptr (FpHistory) h = started (TRUE);

  push (h, 2000, "Nothing", NULL);
  g_assert_cmpuint (fp_history_depth (h), ==, 0);
  /* Nor does it take away what can be done again. */
  push (h, 2100, "One", NULL);
  fp_history_undo (h);
  push (h, 2000, "Nothing", NULL);
  g_assert_cmpstr (fp_history_redo_label (h), ==, "One");
}

static void
test_merge (void)
{
  g_autoptr (FpHistory) h = started (TRUE);

  push (h, 2010, "Nudge", "nudge-altar");
  push (h, 2020, "Nudge", "nudge-altar");
  push (h, 2030, "Nudge", "nudge-altar");
  g_assert_cmpuint (fp_history_depth (h), ==, 1);
  push (h, 2040, "Nudge", "nudge-rail"); /* another tag */
  push (h, 2050, "Move", NULL);
  push (h, 2060, "Move", NULL); /* no tag never merges */
  push (h, 2070, "Nudge", "nudge-rail"); /* not one after another */
  g_assert_cmpuint (fp_history_depth (h), ==, 5);
  while (fp_history_depth (h) > 1)
    fp_history_undo (h);
  g_assert_cmpfloat (altar_y (h), ==, 2030);
  fp_history_undo (h);
  g_assert_cmpfloat (altar_y (h), ==, 2000);
}

/* After an undo, or a save, the next nudge begins a step of its own. */
static void
test_merge_ends (void)
{
  g_autoptr (FpHistory) h = started (TRUE);

  push (h, 2010, "Nudge", "n");
  push (h, 2020, "Other", "m");
  fp_history_undo (h);
  push (h, 2030, "Nudge", "n");
  g_assert_cmpuint (fp_history_depth (h), ==, 2);
  fp_history_mark_saved (h);
  push (h, 2040, "Nudge", "n");
  g_assert_cmpuint (fp_history_depth (h), ==, 3);
  fp_history_undo (h);
  g_assert_false (fp_history_is_modified (h));
}

static void
test_modified (void)
{
  g_autoptr (FpHistory) h = started (TRUE), fresh = started (FALSE);

  g_assert_true (fp_history_is_modified (fresh)); /* never saved */
  g_assert_false (fp_history_is_modified (h));
  push (h, 2100, "One", NULL);
  g_assert_true (fp_history_is_modified (h));
  fp_history_undo (h);
  g_assert_false (fp_history_is_modified (h)); /* back to what was saved */
  fp_history_redo (h);
  fp_history_mark_saved (h);
  g_assert_false (fp_history_is_modified (h));
  fp_history_undo (h);
  g_assert_true (fp_history_is_modified (h));
  /* What was saved is out of reach; moved there by hand it is still what is in the file. */
  push (h, 2300, "Two", NULL);
  g_assert_true (fp_history_is_modified (h));
  push (h, 2100, "Three", NULL);
  g_assert_false (fp_history_is_modified (h));
}

/* How it is printed is in every step, those too that were undone; only saving makes it saved. */
static void
test_page_is_no_step (void)
{
  g_autoptr (FpHistory) h = started (TRUE);
  FpPageSetup page = { .sheet = FP_SHEET_PLAN, .paper = FP_PAPER_A2, .scale = 50 };
  g_autoptr (GError) error = NULL;

  push (h, 2100, "Move the altar", NULL);
  push (h, 2200, "Move it again", NULL);
  g_assert_true (fp_history_undo (h));
  g_assert_true (fp_history_set_page (h, &page, &error));
  g_assert_no_error (error);
  g_assert_cmpuint (fp_history_depth (h), ==, 1);
  g_assert_true (fp_history_redo (h));
  g_assert_cmpfloat (altar_y (h), ==, 2200);
  g_assert_true (fp_page_setup_equal (fp_project_page (fp_history_now (h)), &page));
  while (fp_history_undo (h))
    ;
  g_assert_cmpfloat (altar_y (h), ==, 2000);
  g_assert_true (fp_page_setup_equal (fp_project_page (fp_history_now (h)), &page));
  g_assert_true (fp_history_is_modified (h));
  page.scale = -1;
  g_assert_false (fp_history_set_page (h, &page, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_RANGE);
  g_assert_cmpfloat (fp_project_page (fp_history_now (h))->scale, ==, 50);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/history/undo-to-the-start", test_undo_to_the_start);
  g_test_add_func ("/history/new-edit-forgets-redo", test_new_edit_forgets_redo);
  g_test_add_func ("/history/equal-is-no-step", test_equal_is_no_step);
  g_test_add_func ("/history/merge", test_merge);
  g_test_add_func ("/history/merge-ends", test_merge_ends);
  g_test_add_func ("/history/page", test_page_is_no_step);
  g_test_add_func ("/history/modified", test_modified);
  return g_test_run ();
}
