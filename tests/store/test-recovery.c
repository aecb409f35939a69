/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-recovery.c - what is not saved yet, kept through the end of the program, however it ends */
#define _XOPEN_SOURCE 700
#include "store-cases.h"

#include "../folder.h"

#include "footpace/recovery.h"

#include <glib/gstdio.h>
#include <signal.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

typedef struct
{
  char      *root, *folder, *file;
  FpProject *small, *large;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  (void) data;
  f->root = g_dir_make_tmp ("footpace-XXXXXX", NULL);
  f->folder = g_build_filename (f->root, "recovery", NULL);
  f->file = g_build_filename (f->root, "church.footpace", NULL);
  f->small = store_case_small ();
  f->large = store_case_every_kind (NULL);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  folder_remove (f->folder);
  folder_remove (f->root);
  g_free (f->root);
  g_free (f->folder);
  g_free (f->file);
  fp_project_unref (f->small);
  fp_project_unref (f->large);
}

/* Does it in a program of its own, which is killed once it has. */
static void
in_a_program_that_is_killed (void (*act) (Fixture *f), Fixture *f)
{
  int ready[2], status;
  char byte;
  pid_t child;

  g_assert_cmpint (pipe (ready), ==, 0);
  child = fork ();
  if (child == 0)
    {
      g_random_set_seed ((guint32) getpid ()); /* a fork has its parent's */
      act (f);
      if (write (ready[1], "x", 1) != 1)
        _exit (1);
      for (;;)
        pause ();
    }
  close (ready[1]);
  g_assert_cmpint (read (ready[0], &byte, 1), ==, 1);
  close (ready[0]);
  g_assert_cmpint (kill (child, SIGKILL), ==, 0);
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
}

static FpRecovery *
begin (Fixture *f, const char *path, const char *digest)
{
  g_autoptr (GError) error = NULL;
  FpRecovery *recovery = fp_recovery_new (f->folder, path, digest, &error);

  g_assert_no_error (error);
  return recovery;
}

static void
keep (FpRecovery *recovery, const FpProject *project, const char *alternative)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (fp_recovery_keep (recovery, project, alternative, &error));
  g_assert_no_error (error);
}

static guint
n_left (Fixture *f)
{
  g_autoptr (GPtrArray) left = fp_recovery_left (f->folder);

  return left->len;
}

static void
keep_twice (Fixture *f)
{
  FpRecovery *recovery = begin (f, f->file, "0123");

  keep (recovery, f->small, "a");
  keep (recovery, f->large, "b");
}

static void
test_after_a_crash (Fixture *f, gconstpointer data)
{
  g_autoptr (GPtrArray) left = NULL;
  g_autoptr (FpProject) project = NULL;
  g_autoptr (GError) error = NULL;
  g_autofree char *there = NULL;
  const FpLeft *entry;

  (void) data;
  g_assert_true (fp_store_save (f->small, f->file, &error));
  in_a_program_that_is_killed (keep_twice, f);
  left = fp_recovery_left (f->folder);
  g_assert_cmpuint (left->len, ==, 1);
  entry = g_ptr_array_index (left, 0);
  there = realpath (f->file, NULL);
  g_assert_cmpstr (entry->path, ==, there);
  g_assert_cmpstr (entry->digest, ==, "0123");
  g_assert_cmpstr (entry->alternative, ==, "b");
  g_assert_nonnull (entry->when);
  project = fp_store_load (entry->kept, &error);
  g_assert_no_error (error);
  g_assert_true (fp_project_equal (project, f->large));
  fp_left_discard (f->folder, entry);
  g_assert_cmpuint (n_left (f), ==, 0);
  g_assert_cmpuint (folder_remove (f->folder), ==, 0);
}

static void
test_while_it_lives (Fixture *f, gconstpointer data)
{
  FpRecovery *recovery = begin (f, NULL, NULL);

  (void) data;
  keep (recovery, f->small, "a");
  g_assert_cmpuint (n_left (f), ==, 0);
  fp_recovery_free (recovery);
  g_assert_cmpuint (n_left (f), ==, 0);
  g_assert_cmpuint (folder_remove (f->folder), ==, 0);
}

static void
begin_only (Fixture *f)
{
  begin (f, f->file, NULL);
}

static void
keep_and_save (Fixture *f)
{
  FpRecovery *recovery = begin (f, NULL, NULL);

  keep (recovery, f->small, "a");
  g_assert_true (fp_recovery_saved (recovery, f->file, "4567", NULL));
}

static void
keep_and_drop (Fixture *f)
{
  FpRecovery *recovery = begin (f, NULL, NULL);

  keep (recovery, f->small, "a");
  fp_recovery_drop (recovery);
}

static void
test_nothing_to_offer (Fixture *f, gconstpointer data)
{
  (void) data;
  in_a_program_that_is_killed (begin_only, f);
  in_a_program_that_is_killed (keep_and_save, f);
  in_a_program_that_is_killed (keep_and_drop, f);
  g_assert_cmpuint (n_left (f), ==, 0);
  g_assert_cmpuint (folder_remove (f->folder), ==, 0); /* swept away */
}

static void
test_open_elsewhere (Fixture *f, gconstpointer data)
{
  g_autofree char *link = g_build_filename (f->root, "link.footpace", NULL);
  FpRecovery *first, *second;

  (void) data;
  g_assert_true (fp_store_save (f->small, f->file, NULL));
  g_assert_cmpint (symlink (f->file, link), ==, 0);
  g_assert_false (fp_recovery_is_open (f->folder, f->file, NULL));
  first = begin (f, f->file, NULL);
  g_assert_true (fp_recovery_is_open (f->folder, f->file, NULL));
  g_assert_true (fp_recovery_is_open (f->folder, link, NULL));
  g_assert_false (fp_recovery_is_open (f->folder, f->file, first));
  second = begin (f, link, NULL);
  g_assert_true (fp_recovery_is_open (f->folder, f->file, first));
  fp_recovery_free (first);
  g_assert_true (fp_recovery_is_open (f->folder, f->file, NULL));
  fp_recovery_free (second);
  g_assert_false (fp_recovery_is_open (f->folder, f->file, NULL));
}

static void
test_newest_first (Fixture *f, gconstpointer data)
{
  g_autoptr (GPtrArray) left = NULL;

  (void) data;
  in_a_program_that_is_killed (keep_twice, f);
  g_usleep (50 * 1000); /* more than a tick of the clock of the disk's files */
  in_a_program_that_is_killed (keep_twice, f);
  left = fp_recovery_left (f->folder);
  g_assert_cmpuint (left->len, ==, 2);
  g_assert_cmpint (g_date_time_compare (((FpLeft *) left->pdata[0])->when, ((FpLeft *) left->pdata[1])->when), >, 0);
}

static void
test_no_folder (Fixture *f, gconstpointer data)
{
  g_autofree char *inside = g_build_filename (f->file, "recovery", NULL);
  g_autoptr (GPtrArray) left = NULL;
  g_autoptr (GError) error = NULL;

  (void) data;
  g_assert_true (g_file_set_contents (f->file, "x", 1, NULL));
  g_assert_null (fp_recovery_new (inside, NULL, NULL, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_WRITE);
  left = fp_recovery_left (inside);
  g_assert_cmpuint (left->len, ==, 0);
}

/* Rubbish in the folder, and an entry whose note is rubbish, hide nothing and break nothing. */
static void
test_rubbish (Fixture *f, gconstpointer data)
{
  g_autoptr (GPtrArray) left = NULL;
  g_autofree char *stray = g_build_filename (f->folder, "readme.txt", NULL), *about = NULL, *id = NULL;

  (void) data;
  in_a_program_that_is_killed (keep_twice, f);
  g_assert_true (g_file_set_contents (stray, "x", 1, NULL));
  left = fp_recovery_left (f->folder);
  g_assert_cmpuint (left->len, ==, 1);
  id = g_strconcat (((FpLeft *) left->pdata[0])->id, ".about", NULL);
  about = g_build_filename (f->folder, id, NULL);
  g_assert_true (g_file_set_contents (about, "\xff[[", 3, NULL));
  g_ptr_array_unref (left);
  left = fp_recovery_left (f->folder);
  g_assert_cmpuint (left->len, ==, 1);
  g_assert_null (((FpLeft *) left->pdata[0])->path);
  g_assert_true (g_file_test (stray, G_FILE_TEST_EXISTS));
}

static char *
note_of_what_was_left (const Fixture *f)
{
  g_autoptr (GPtrArray) left = fp_recovery_left (f->folder);
  g_autofree char *id = NULL;

  g_assert_cmpuint (left->len, ==, 1);
  id = g_strconcat (((FpLeft *) left->pdata[0])->id, ".about", NULL);
  return g_build_filename (f->folder, id, NULL);
}

static void
assert_left_without_note (const Fixture *f)
{
  g_autoptr (GPtrArray) left = fp_recovery_left (f->folder);

  g_assert_cmpuint (left->len, ==, 1);
  g_assert_null (((FpLeft *) left->pdata[0])->path);
}

/* A pipe, a device and a huge file in the place of the note: none is waited for, none is read. */
static void
test_no_ordinary_note (Fixture *f, gconstpointer data)
{
  g_autofree char *about = NULL;

  (void) data;
  in_a_program_that_is_killed (keep_twice, f);
  about = note_of_what_was_left (f);
  g_assert_cmpint (g_remove (about), ==, 0);
  g_assert_cmpint (mkfifo (about, 0600), ==, 0);
  assert_left_without_note (f);
  g_assert_cmpint (g_remove (about), ==, 0);
  g_assert_cmpint (symlink ("/dev/zero", about), ==, 0);
  assert_left_without_note (f);
  g_assert_cmpint (g_remove (about), ==, 0);
  g_assert_true (g_file_set_contents (about, "[project]\nfile=file:///x\n#", -1, NULL));
  g_assert_cmpint (truncate (about, (off_t) 4 << 30), ==, 0);
  assert_left_without_note (f);
}

/* SHA-256 of "abc": FIPS 180-2, appendix B.1. */
static void
test_digest (Fixture *f, gconstpointer data)
{
  g_autofree char *digest = NULL, *loaded = NULL, *saved = NULL, *now = NULL;
  g_autoptr (FpProject) project = NULL;

  (void) data;
  g_assert_true (g_file_set_contents (f->file, "abc", 3, NULL));
  digest = fp_store_digest (f->file);
  g_assert_cmpstr (digest, ==, "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
  g_assert_true (fp_store_save_digest (f->large, f->file, &saved, NULL));
  project = fp_store_load_digest (f->file, &loaded, NULL);
  g_assert_cmpstr (saved, ==, loaded);
  g_assert_true (fp_store_save_digest (f->small, f->file, &now, NULL));
  g_assert_cmpstr (saved, !=, now);
  g_assert_null (fp_store_digest (f->folder));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, function) g_test_add ("/recovery/" name, Fixture, NULL, set_up, function, tear_down)
  ADD ("after-a-crash", test_after_a_crash);
  ADD ("while-it-lives", test_while_it_lives);
  ADD ("nothing-to-offer", test_nothing_to_offer);
  ADD ("open-elsewhere", test_open_elsewhere);
  ADD ("newest-first", test_newest_first);
  ADD ("no-folder", test_no_folder);
  ADD ("rubbish", test_rubbish);
  ADD ("no-ordinary-note", test_no_ordinary_note);
  ADD ("digest", test_digest);
  return g_test_run ();
}
