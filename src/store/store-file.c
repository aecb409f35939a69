/* SPDX-License-Identifier: GPL-3.0-or-later */
/* store-file.c - projects on the disk
 *
 * A save is made whole in memory and read back there before the disk is
 * touched.  g_file_replace_contents would put a truncated file in the place of
 * the good one when the disk is full; g_file_set_contents_full does not.
 */
#define _XOPEN_SOURCE 700 /* O_CLOEXEC, S_ISREG */
#include "parse-xml.h"

#include "footpace/cause.h"

#include <glib/gstdio.h>

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#define LINKS_MAX 40
#define SAVE_FLAGS (G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE)
#define HEAD_MAX  65536 /* enough of a file to see its root */

static gboolean
refuse (GError **error, FpError code, const char *path, const char *format, ...) G_GNUC_PRINTF (4, 5);

static gboolean
refuse (GError **error, FpError code, const char *path, const char *format, ...)
{
  g_autofree char *shown = g_filename_display_name (path), *what = NULL;
  va_list args;

  va_start (args, format);
  what = g_strdup_vprintf (format, args);
  va_end (args);
  g_set_error (error, FP_ERROR, (int) code, "%s: %s", shown, what);
  return FALSE;
}

/* --- reading --- */

/* Without waiting: opening a pipe would wait for someone to write into it. */
static int
open_regular (const char *path, struct stat *st, GError **error)
{
  const int fd = g_open (path, O_RDONLY | O_NONBLOCK | O_CLOEXEC, 0);

  if (fd < 0)
    {
      refuse (error, FP_ERROR_READ, path, "it cannot be opened: %s", g_strerror (errno));
      return -1;
    }
  if (fstat (fd, st) == 0 && S_ISREG (st->st_mode))
    return fd;
  refuse (error, FP_ERROR_READ, path, S_ISDIR (st->st_mode) ? "it is a folder; a file is expected"
          : "it is no ordinary file; a file is expected");
  close (fd);
  return -1;
}

/* At most @most bytes; the file may grow while it is read. */
static GString *
read_up_to (int fd, gsize most, const char *path, GError **error)
{
  g_autoptr (GString) bytes = g_string_new ("");
  char buffer[65536];

  while (bytes->len < most)
    {
      const gssize n = read (fd, buffer, MIN (sizeof buffer, most - bytes->len));
      if (n < 0 && errno == EINTR)
        continue;
      if (n < 0)
        {
          refuse (error, FP_ERROR_READ, path, "it cannot be read: %s", g_strerror (errno));
          return NULL;
        }
      if (n == 0)
        break;
      g_string_append_len (bytes, buffer, n);
    }
  return g_steal_pointer (&bytes);
}

static gboolean
size_is_fair (guint64 size, const char *path, GError **error)
{
  return size <= FP_STORE_BYTES_MAX
         || refuse (error, FP_ERROR_LIMIT, path, "it is %" G_GUINT64_FORMAT " bytes long, at most %u are read", size,
                    FP_STORE_BYTES_MAX);
}

static GString *
read_fairly (const char *path, GError **error)
{
  GString *bytes = NULL;
  struct stat st = { 0 };
  const int fd = open_regular (path, &st, error);

  if (fd < 0)
    return NULL;
  if (size_is_fair ((guint64) st.st_size, path, error))
    bytes = read_up_to (fd, FP_STORE_BYTES_MAX + 1, path, error);
  close (fd);
  return bytes;
}

static char *
digest_of (const char *bytes, gsize length)
{
  return g_compute_checksum_for_data (G_CHECKSUM_SHA256, (const guchar *) bytes, length);
}

FpProject *
fp_store_load_digest (const char *path, char **digest, GError **error)
{
  g_autofree char *shown = g_filename_display_name (path);
  g_autoptr (GString) bytes = read_fairly (path, error);
  FpProject *project = bytes != NULL ? fp_store_parse (bytes->str, bytes->len, shown, error) : NULL;

  if (digest != NULL)
    *digest = project != NULL ? digest_of (bytes->str, bytes->len) : NULL;
  return project;
}

FpProject *
fp_store_load (const char *path, GError **error)
{
  return fp_store_load_digest (path, NULL, error);
}

char *
fp_store_digest (const char *path)
{
  g_autoptr (GString) bytes = read_fairly (path, NULL);

  return bytes != NULL ? digest_of (bytes->str, bytes->len) : NULL;
}

/* --- where to write --- */

/* The file behind a symbolic link, whether it is there yet or not. */
static char *
follow_links (const char *path, GError **error)
{
  g_autofree char *at = g_strdup (path);

  for (int i = 0; i < LINKS_MAX; i++)
    {
      g_autofree char *target = g_file_read_link (at, NULL);
      g_autofree char *folder = g_path_get_dirname (at);
      if (target == NULL)
        return g_steal_pointer (&at);
      g_free (at);
      at = g_path_is_absolute (target) ? g_steal_pointer (&target) : g_build_filename (folder, target, NULL);
    }
  refuse (error, FP_ERROR_WRITE, path, "it is a link that leads round in a circle");
  return NULL;
}

static gboolean
is_not_later (const char *path, GError **error)
{
  g_autoptr (GString) head = NULL;
  struct stat st = { 0 };
  const int fd = open_regular (path, &st, NULL);
  guint version;

  if (fd < 0)
    return TRUE;
  head = read_up_to (fd, HEAD_MAX, path, NULL);
  close (fd);
  return head == NULL || !fp_xml_is_later (head->str, head->len, &version)
         || refuse (error, FP_ERROR_VERSION, path, "the file there was written by a later version of Footpace (its "
                    "format is %u); it is not overwritten: save under another name", version);
}

/* @old, @there (out): the file that it would take the place of */
static gboolean
may_be_written (const char *path, struct stat *old, gboolean *there, GError **error)
{
  *there = stat (path, old) == 0;
  if (!*there)
    return TRUE; /* what stands in the way will be said when it is written */
  if (!S_ISREG (old->st_mode))
    return refuse (error, FP_ERROR_WRITE, path, S_ISDIR (old->st_mode) ? "it is a folder; a file is expected"
                   : "it is no ordinary file; a file is expected");
  /* A rename over it would not ask. */
  if (g_access (path, W_OK) != 0)
    return refuse (error, FP_ERROR_WRITE, path, "the file is write-protected; it is left as it is");
  return is_not_later (path, error);
}

/* --- writing --- */

/* What is about to be written, read as it will be, must give the same again. */
static gboolean
reads_back (const char *bytes, gsize length, const char *path, GError **error)
{
  g_autofree char *shown = g_filename_display_name (path), *again = NULL;
  g_autoptr (FpProject) project = fp_store_parse (bytes, length, shown, error);
  gsize again_length;

  if (project == NULL)
    {
      g_prefix_error (error, "not saved, because it could not be read again: ");
      return FALSE;
    }
  again = fp_store_write (project, &again_length);
  return (again_length == length && memcmp (again, bytes, length) == 0)
         || refuse (error, FP_ERROR_WRITE, path, "not saved, because it would not read back as it is");
}

/* Renaming has put a new file in the place of the old one: give it what the old one had. */
static void
restore_owner_and_mode (const char *path, const struct stat *old)
{
  struct stat now;

  if (stat (path, &now) != 0)
    return;
  /* A different group that cannot be given back gets none of the group's rights. */
  if (now.st_gid != old->st_gid && chown (path, (uid_t) -1, old->st_gid) != 0)
    g_chmod (path, (int) (old->st_mode & 0707));
  else
    g_chmod (path, (int) (old->st_mode & 07777));
}

static gboolean
put (const char *path, const char *bytes, gsize length, const struct stat *old, GError **error)
{
  g_autoptr (GError) cause = NULL;

  if (g_file_set_contents_full (path, bytes, (gssize) length, SAVE_FLAGS,
                                old != NULL ? (int) (old->st_mode & 0777) : 0666, &cause))
    {
      if (old != NULL)
        restore_owner_and_mode (path, old);
      return TRUE;
    }
  return refuse (error, FP_ERROR_WRITE, path, "it cannot be written: %s.%s", fp_error_cause (cause),
                 old != NULL ? " The file that was there is whole." : "");
}

gboolean
fp_store_save_digest (const FpProject *project, const char *path, char **digest, GError **error)
{
  g_autofree char *target = follow_links (path, error), *bytes = NULL;
  struct stat old = { 0 };
  gboolean there;
  gsize length;

  if (target == NULL || !may_be_written (target, &old, &there, error))
    return FALSE;
  bytes = fp_store_write (project, &length);
  if (length > FP_STORE_BYTES_MAX)
    return refuse (error, FP_ERROR_LIMIT, path, "the project is %" G_GSIZE_FORMAT " bytes long, at most %u are written",
                   length, FP_STORE_BYTES_MAX);
  if (!reads_back (bytes, length, target, error) || !put (target, bytes, length, there ? &old : NULL, error))
    return FALSE;
  if (digest != NULL)
    *digest = digest_of (bytes, length);
  return TRUE;
}

gboolean
fp_store_save (const FpProject *project, const char *path, GError **error)
{
  return fp_store_save_digest (project, path, NULL, error);
}
