/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-file.c - loading from and saving to a disk that may fail */
#define _XOPEN_SOURCE 700
#include "store-cases.h"

#include "../folder.h"

#include <glib/gstdio.h>
#include <signal.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

typedef struct
{
  char      *folder, *path;
  FpProject *small, *large;
} Fixture;

static void
set_up (Fixture *f, gconstpointer data)
{
  (void) data;
  f->folder = g_dir_make_tmp ("footpace-XXXXXX", NULL);
  g_assert_nonnull (f->folder);
  f->path = g_build_filename (f->folder, "church.footpace", NULL);
  f->small = store_case_small ();
  f->large = store_case_every_kind (NULL);
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  g_chmod (f->folder, 0700);
  folder_remove (f->folder);
  g_free (f->folder);
  g_free (f->path);
  fp_project_unref (f->small);
  fp_project_unref (f->large);
}

static void
save (const FpProject *project, const char *path)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (fp_store_save (project, path, &error));
  g_assert_no_error (error);
}

static void
assert_holds (const char *path, const FpProject *project)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) found = fp_store_load (path, &error);

  g_assert_no_error (error);
  g_assert_true (fp_project_equal (found, project));
}

static void
assert_not_saved (const FpProject *project, const char *path, FpError code, const char *says)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (fp_store_save (project, path, &error));
  g_test_message ("%s", error->message);
  g_assert_error (error, FP_ERROR, (int) code);
  g_assert_nonnull (strstr (error->message, says));
}

static guint
files_in (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n = 0;

  while (g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

static void
test_save_and_load (Fixture *f, gconstpointer data)
{
  (void) data;
  save (f->small, f->path);
  assert_holds (f->path, f->small);
  save (f->large, f->path);
  assert_holds (f->path, f->large);
  g_assert_cmpuint (files_in (f->folder), ==, 1);
}

/* What is on the disk is what fp_store_write gives, to the byte. */
static void
test_same_bytes (Fixture *f, gconstpointer data)
{
  g_autofree char *wanted = store_case_bytes (f->large), *found = NULL;
  gsize length;

  (void) data;
  save (f->large, f->path);
  g_assert_true (g_file_get_contents (f->path, &found, &length, NULL));
  g_assert_cmpuint (length, ==, strlen (wanted));
  g_assert_cmpstr (found, ==, wanted);
}

/* --- what is no file --- */

static void
assert_not_loaded (const char *path, FpError code, const char *says)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) project = fp_store_load (path, &error);

  g_assert_null (project);
  g_test_message ("%s", error->message);
  g_assert_error (error, FP_ERROR, (int) code);
  g_assert_nonnull (strstr (error->message, says));
  g_assert_nonnull (strstr (error->message, path));
}

static void
test_no_file (Fixture *f, gconstpointer data)
{
  g_autofree char *pipe = g_build_filename (f->folder, "pipe", NULL);

  (void) data;
  assert_not_loaded (f->path, FP_ERROR_READ, "cannot be opened");
  assert_not_loaded (f->folder, FP_ERROR_READ, "it is a folder");
  assert_not_saved (f->small, f->folder, FP_ERROR_WRITE, "it is a folder");
  /* Nobody writes into it: a loader that waits would wait for ever. */
  g_assert_cmpint (mkfifo (pipe, 0600), ==, 0);
  assert_not_loaded (pipe, FP_ERROR_READ, "no ordinary file");
  assert_not_saved (f->small, pipe, FP_ERROR_WRITE, "no ordinary file");
  assert_not_loaded ("/dev/zero", FP_ERROR_READ, "no ordinary file");
}

/* --- links and permissions --- */

static void
test_link (Fixture *f, gconstpointer data)
{
  g_autofree char *link = g_build_filename (f->folder, "link.footpace", NULL), *target = NULL;

  (void) data;
  save (f->small, f->path);
  g_assert_cmpint (symlink ("church.footpace", link), ==, 0);
  save (f->large, link);
  target = g_file_read_link (link, NULL);
  g_assert_cmpstr (target, ==, "church.footpace");
  assert_holds (f->path, f->large);
}

static void
test_dangling_link (Fixture *f, gconstpointer data)
{
  g_autofree char *link = g_build_filename (f->folder, "link.footpace", NULL);

  (void) data;
  g_assert_cmpint (symlink (f->path, link), ==, 0);
  save (f->small, link);
  g_assert_true (g_file_test (link, G_FILE_TEST_IS_SYMLINK));
  assert_holds (f->path, f->small);
}

static void
test_circular_link (Fixture *f, gconstpointer data)
{
  (void) data;
  g_assert_cmpint (symlink ("church.footpace", f->path), ==, 0);
  assert_not_saved (f->small, f->path, FP_ERROR_WRITE, "round in a circle");
}

static void
test_mode (Fixture *f, gconstpointer data)
{
  static const mode_t modes[] = { 0600, 0640, 0664, 0666 };
  struct stat st;

  (void) data;
  save (f->small, f->path);
  for (guint i = 0; i < G_N_ELEMENTS (modes); i++)
    {
      g_assert_cmpint (chmod (f->path, modes[i]), ==, 0);
      save (i % 2 == 0 ? f->large : f->small, f->path);
      g_assert_cmpint (stat (f->path, &st), ==, 0);
      g_assert_cmpint (st.st_mode & 07777, ==, modes[i]);
    }
}

static void
test_new_file_mode (Fixture *f, gconstpointer data)
{
  const mode_t mask = umask (027);
  struct stat st;

  (void) data;
  save (f->small, f->path);
  umask (mask);
  g_assert_cmpint (stat (f->path, &st), ==, 0);
  g_assert_cmpint (st.st_mode & 07777, ==, 0640);
}

/* --- a disk that fails --- */

static gboolean
is_root (void)
{
  if (geteuid () != 0)
    return FALSE;
  g_test_skip ("root may write everywhere");
  return TRUE;
}

static void
test_read_only_folder (Fixture *f, gconstpointer data)
{
  (void) data;
  save (f->small, f->path);
  if (is_root ())
    return;
  g_chmod (f->folder, 0500);
  assert_not_saved (f->large, f->path, FP_ERROR_WRITE, "The file that was there is whole");
  g_chmod (f->folder, 0700);
  assert_holds (f->path, f->small);
}

static void
test_write_protected_file (Fixture *f, gconstpointer data)
{
  (void) data;
  save (f->small, f->path);
  if (is_root ())
    return;
  g_chmod (f->path, 0400);
  assert_not_saved (f->large, f->path, FP_ERROR_WRITE, "write-protected");
  assert_holds (f->path, f->small);
}

static void
test_vanished_folder (Fixture *f, gconstpointer data)
{
  g_autofree char *path = g_build_filename (f->folder, "gone", "church.footpace", NULL);

  (void) data;
  assert_not_saved (f->small, path, FP_ERROR_WRITE, "cannot be written");
}

/* In a process of its own, whose files may not grow past @limit bytes. Returns its exit status. */
static int
save_within (const FpProject *project, const char *path, rlim_t limit)
{
  const pid_t child = fork ();
  int status;

  if (child == 0)
    {
      const struct rlimit most = { limit, limit };
      g_autoptr (GError) error = NULL;
      signal (SIGXFSZ, SIG_IGN);
      if (setrlimit (RLIMIT_FSIZE, &most) != 0)
        _exit (3);
      if (fp_store_save (project, path, &error))
        _exit (0);
      _exit (g_error_matches (error, FP_ERROR, FP_ERROR_WRITE) ? 1 : 2);
    }
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  g_assert_true (WIFEXITED (status));
  return WEXITSTATUS (status);
}

/* As on a full disk: the write stops in the middle. */
static void
test_full_disk (Fixture *f, gconstpointer data)
{
  g_autofree char *bytes = store_case_bytes (f->large);
  const rlim_t whole = strlen (bytes);

  (void) data;
  save (f->small, f->path);
  for (rlim_t limit = 0; limit < whole; limit += whole / 5 + 1)
    {
      g_assert_cmpint (save_within (f->large, f->path, limit), ==, 1);
      assert_holds (f->path, f->small);
      g_assert_cmpuint (files_in (f->folder), ==, 1); /* no remains beside it */
    }
  g_assert_cmpint (save_within (f->large, f->path, whole), ==, 0);
  assert_holds (f->path, f->large);
}

/* --- what a later version has written --- */

static void
assert_kept (Fixture *f, const char *contents)
{
  g_autofree char *found = NULL;

  g_assert_true (g_file_set_contents (f->path, contents, -1, NULL));
  assert_not_saved (f->small, f->path, FP_ERROR_VERSION, "it is not overwritten: save under another name");
  g_assert_true (g_file_get_contents (f->path, &found, NULL, NULL));
  g_assert_cmpstr (found, ==, contents);
}

static void
test_later_version (Fixture *f, gconstpointer data)
{
  g_autoptr (GString) large = g_string_new ("<p:project xmlns:p=\"urn:footpace:project:12\" version=\"12\">\n");

  (void) data;
  assert_kept (f, "<project xmlns=\"urn:footpace:project:1\" version=\"2\"><new/></project>\n");
  assert_kept (f, "<!-- by hand -->\n<project version='99999999999' xmlns='urn:footpace:project:1'>");
  for (int i = 0; i < 20000; i++)
    g_string_append (large, "<p:thing>more than the head of the file</p:thing>\n");
  assert_kept (f, large->str);
}

/* Anything else was chosen by the one who saves. */
static void
test_overwrites (Fixture *f, gconstpointer data)
{
  static const char *const contents[] = { "", "a letter to the bishop", "<svg xmlns=\"http://www.w3.org/2000/svg\"/>",
                                          "<project xmlns=\"urn:footpace:project:1\" version=\"1\">broken" };

  (void) data;
  for (guint i = 0; i < G_N_ELEMENTS (contents); i++)
    {
      g_assert_true (g_file_set_contents (f->path, contents[i], -1, NULL));
      save (f->small, f->path);
      assert_holds (f->path, f->small);
    }
}

#define ADD(name, function) g_test_add ("/file/" name, Fixture, NULL, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD ("save-and-load", test_save_and_load);
  ADD ("same-bytes", test_same_bytes);
  ADD ("no-file", test_no_file);
  ADD ("link", test_link);
  ADD ("dangling-link", test_dangling_link);
  ADD ("circular-link", test_circular_link);
  ADD ("mode", test_mode);
  ADD ("new-file-mode", test_new_file_mode);
  ADD ("read-only-folder", test_read_only_folder);
  ADD ("write-protected-file", test_write_protected_file);
  ADD ("vanished-folder", test_vanished_folder);
  ADD ("full-disk", test_full_disk);
  ADD ("later-version", test_later_version);
  ADD ("overwrites", test_overwrites);
  return g_test_run ();
}
