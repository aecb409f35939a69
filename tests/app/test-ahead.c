/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ahead.h"

#include "samples.h"
#include "waiting.h"

#include "footpace/store.h"

typedef struct
{
  const FpScene *scene; /* owned: of what was received last; NULL: nothing */
  guint          times;
} Received;

static void
receive (FpProjection *const *projection, gpointer data)
{
  Received *self = data;

  for (guint v = 0; v < FP_N_VIEWS; v++)
    g_assert_true (fp_projection_scene (projection[v]) == fp_projection_scene (projection[0]));
  g_clear_pointer (&self->scene, fp_scene_unref);
  self->scene = fp_scene_ref (fp_projection_scene (projection[0]));
  self->times++;
}

static FpDocument *
open_ahead (const char *sample, FpDraft **draft)
{
  g_autofree char *path = fp_sample_path (sample);
  g_autoptr (FpAhead) ahead = fp_ahead_begin (path);
  g_autoptr (GError) error = NULL;
  FpDocument *document = fp_ahead_end (ahead, draft, &error);

  g_assert_no_error (error);
  return document;
}

/* --- reading ---------------------------------------------------------------- */

static void
test_reads_as_load_does (void)
{
  g_autofree char *path = fp_sample_path ("parish.footpace"), *a = NULL, *b = NULL;
  g_autoptr (FpDraft) draft = NULL;
  g_autoptr (FpDocument) d = open_ahead ("parish.footpace", &draft);
  g_autoptr (FpDocument) loaded = fp_document_load (path, NULL);

  a = fp_store_write (fp_document_project (d), NULL);
  b = fp_store_write (fp_document_project (loaded), NULL);
  g_assert_cmpstr (a, ==, b);
  g_assert_cmpuint (fp_document_alternative (d), ==, fp_document_alternative (loaded));
  g_assert_cmpstr (fp_document_path (d), ==, path);
  g_assert_cmpstr (fp_document_digest (d), ==, fp_document_digest (loaded));
  g_assert_false (fp_document_is_modified (d));
}

static void
test_says_why_not (void)
{
  g_autoptr (FpAhead) ahead = fp_ahead_begin ("/nowhere/nothing.footpace");
  g_autoptr (GError) error = NULL, loading = NULL;
  FpDraft *draft = NULL;

  g_assert_null (fp_ahead_end (ahead, &draft, &error));
  g_assert_null (draft);
  g_assert_null (fp_document_load ("/nowhere/nothing.footpace", &loading));
  g_assert_error (error, loading->domain, loading->code);
  g_assert_cmpstr (error->message, ==, loading->message);
}

/* One file may be named in several ways; what was handed over is not handed over again. */
static void
test_knows_its_file (void)
{
  g_autofree char *path = fp_sample_path ("chapel.footpace"), *other = fp_sample_path ("parish.footpace");
  g_autofree char *dir = g_path_get_dirname (path), *round = g_strconcat (dir, "/./chapel.footpace", NULL);
  g_autoptr (FpAhead) ahead = fp_ahead_begin (path);
  g_autoptr (FpDraft) draft = NULL;
  g_autoptr (FpDocument) document = NULL;

  g_assert_true (fp_ahead_is_of (ahead, round));
  g_assert_false (fp_ahead_is_of (ahead, other));
  g_assert_false (fp_ahead_is_of (ahead, NULL));
  document = fp_ahead_end (ahead, &draft, NULL);
  g_assert_nonnull (document);
  g_assert_false (fp_ahead_is_of (ahead, path));
}

static void
test_given_up (void)
{
  g_autofree char *path = fp_sample_path ("parish.footpace");

  fp_ahead_free (fp_ahead_begin (path));
  fp_ahead_free (NULL);
}

/* --- checking --------------------------------------------------------------- */

static void
test_is_checked_when_asked (void)
{
  g_autoptr (FpDraft) draft = NULL;
  g_autoptr (FpDocument) d = open_ahead ("chapel.footpace", &draft);
  gint64 until = g_get_monotonic_time () + 300 * 1000;

  while (g_get_monotonic_time () < until)
    g_main_context_iteration (NULL, FALSE);
  g_assert_null (fp_document_findings (d));
  g_assert_true (fp_document_is_checking (d)); /* findings are yet to come */
  fp_document_begin_checks (d);
  WAIT_FOR (!fp_document_is_checking (d));
  g_assert_nonnull (fp_document_findings (d));
}

/* --- drawing ---------------------------------------------------------------- */

/* The drafter hands over what was begun, and draws the next by itself. */
static void
test_draft_is_taken (void)
{
  FpDraft *draft;
  g_autoptr (FpDocument) d = open_ahead ("chapel.footpace", &draft);
  const FpDraftHow as_first = { 0 };
  Received received = { NULL, 0 };
  g_autoptr (FpDrafter) drafter = fp_drafter_new (receive, &received);

  fp_drafter_take_begun (drafter, draft);
  fp_drafter_draft (drafter, fp_document_scene (d), &as_first);
  WAIT_FOR (received.times == 1);
  g_assert_true (received.scene == fp_document_scene (d));
  fp_drafter_draft (drafter, fp_document_scene (d), &as_first);
  WAIT_FOR (received.times == 2);
  g_clear_pointer (&received.scene, fp_scene_unref);
}

/* Done already, it is there before fp_drafter_draft() returns: the first frame has it. */
static void
test_draft_that_is_done (void)
{
  FpDraft *draft;
  g_autoptr (FpDocument) d = open_ahead ("chapel.footpace", &draft);
  const FpDraftHow as_first = { 0 };
  Received received = { NULL, 0 };
  g_autoptr (FpDrafter) drafter = fp_drafter_new (receive, &received);

  WAIT_FOR (fp_draft_is_done (draft));
  fp_drafter_take_begun (drafter, draft);
  fp_drafter_draft (drafter, fp_document_scene (d), &as_first);
  g_assert_cmpuint (received.times, ==, 1);
  g_clear_pointer (&received.scene, fp_scene_unref);
}

/* Another drawing is wanted by then: what was begun is dropped. */
static void
test_draft_of_something_else (void)
{
  FpDraft *draft;
  g_autoptr (FpDocument) d = open_ahead ("chapel.footpace", &draft);
  const FpDraftHow less = { .hidden = 1u << FP_SHOW_DIMENSIONS };
  Received received = { NULL, 0 };
  g_autoptr (FpDrafter) drafter = fp_drafter_new (receive, &received);

  fp_drafter_take_begun (drafter, draft);
  fp_drafter_draft (drafter, fp_document_scene (d), &less);
  WAIT_FOR (received.times == 1);
  g_clear_pointer (&received.scene, fp_scene_unref);
}

/* Nobody asks for it: it is let go of with the drafter. */
static void
test_draft_that_nobody_wants (void)
{
  FpDraft *draft;
  g_autoptr (FpDocument) d = open_ahead ("parish.footpace", &draft);
  g_autoptr (FpDrafter) drafter = fp_drafter_new (receive, NULL);

  fp_drafter_take_begun (drafter, draft);
  g_assert_nonnull (d);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/ahead/reads", test_reads_as_load_does);
  g_test_add_func ("/ahead/why-not", test_says_why_not);
  g_test_add_func ("/ahead/its-file", test_knows_its_file);
  g_test_add_func ("/ahead/given-up", test_given_up);
  g_test_add_func ("/ahead/checks", test_is_checked_when_asked);
  g_test_add_func ("/ahead/draft", test_draft_is_taken);
  g_test_add_func ("/ahead/draft/done", test_draft_that_is_done);
  g_test_add_func ("/ahead/draft/another", test_draft_of_something_else);
  g_test_add_func ("/ahead/draft/unwanted", test_draft_that_nobody_wants);
  return g_test_run ();
}
