/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/recovery.h"

#include "footpace/cause.h"

#include <glib/gstdio.h>

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#define GROUP      "project"
#define WHOLE      (G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE)
#define ABOUT_MAX  65536 /* bytes                                              */
#define LEFT_MAX   200 /* entries looked at: more is not the work of crashes */

struct _FpRecovery
{
  char  *folder, *id;
  char  *path, *digest;     /* of the user's file; NULL                       */
  char  *alternative;       /* what was shown when it was last kept; NULL     */
  GMutex mutex;             /* keeping runs on another thread                 */
  int    lock;
};

static char *
part (const char *folder, const char *id, const char *suffix)
{
  g_autofree char *base = g_strconcat (id, suffix, NULL);

  return g_build_filename (folder, base, NULL);
}

static void
take_away (const char *folder, const char *id)
{
  static const char *const suffixes[] = { ".footpace", ".about", ".lock" };

  for (guint i = 0; i < G_N_ELEMENTS (suffixes); i++)
    {
      g_autofree char *path = part (folder, id, suffixes[i]);
      g_remove (path);
    }
}

char *
fp_recovery_folder (void)
{
  return g_build_filename (g_get_user_state_dir (), "footpace", "recovery", NULL);
}

static gboolean
refuse (GError **error, const char *path, const char *why)
{
  g_autofree char *shown = g_filename_display_name (path);

  g_set_error (error, FP_ERROR, FP_ERROR_WRITE, "What is not saved cannot be kept in “%s”: %s", shown, why);
  return FALSE;
}

/* --- an entry of one's own ------------------------------------------------ */

static void
set_text (GKeyFile *file, const char *key, const char *text)
{
  if (text != NULL)
    g_key_file_set_string (file, GROUP, key, text);
}

static gboolean
write_about (FpRecovery *self, GError **error)
{
  g_autoptr (GKeyFile) file = g_key_file_new ();
  g_autoptr (GError) cause = NULL;
  g_autofree char *about = part (self->folder, self->id, ".about"), *text = NULL, *uri = NULL;
  gsize length;

  /* As an address: the bytes of a file's name need not be text. */
  uri = self->path != NULL ? g_filename_to_uri (self->path, NULL, NULL) : NULL;
  set_text (file, "file", uri);
  set_text (file, "digest", self->digest);
  set_text (file, "alternative", self->alternative);
  text = g_key_file_to_data (file, &length, NULL);
  return g_file_set_contents_full (about, text, (gssize) length, WHOLE, 0600, &cause)
         || refuse (error, self->folder, fp_error_cause (cause));
}

/* A sweep that came between making the file and locking it has removed it: then another is made. */
static gboolean
take_lock (FpRecovery *self, GError **error)
{
  g_autofree char *path = part (self->folder, self->id, ".lock");
  struct stat st = { 0 };

  while (st.st_nlink == 0)
    {
      if (self->lock >= 0)
        close (self->lock);
      self->lock = g_open (path, O_RDWR | O_CREAT | O_CLOEXEC, 0600);
      if (self->lock < 0 || flock (self->lock, LOCK_EX) != 0 || fstat (self->lock, &st) != 0)
        return refuse (error, self->folder, g_strerror (errno));
    }
  return TRUE;
}

static char *
same_everywhere (const char *path)
{
  char *resolved = realpath (path, NULL), *copy;

  if (resolved == NULL)
    return g_canonicalize_filename (path, NULL);
  copy = g_strdup (resolved);
  free (resolved);
  return copy;
}

static void
set_file (FpRecovery *self, const char *path, const char *digest)
{
  g_free (self->path);
  g_free (self->digest);
  self->path = path != NULL ? same_everywhere (path) : NULL;
  self->digest = g_strdup (digest);
}

FpRecovery *
fp_recovery_new (const char *folder, const char *path, const char *digest, GError **error)
{
  g_autoptr (FpRecovery) self = g_new0 (FpRecovery, 1);

  g_mutex_init (&self->mutex);
  self->folder = g_strdup (folder);
  self->id = g_uuid_string_random ();
  self->lock = -1;
  set_file (self, path, digest);
  if (g_mkdir_with_parents (folder, 0700) != 0)
    {
      refuse (error, folder, g_strerror (errno));
      return NULL;
    }
  return take_lock (self, error) && write_about (self, error) ? g_steal_pointer (&self) : NULL;
}

void
fp_recovery_free (FpRecovery *self)
{
  if (self == NULL)
    return;
  take_away (self->folder, self->id);
  if (self->lock >= 0)
    close (self->lock);
  g_mutex_clear (&self->mutex);
  g_free (self->folder);
  g_free (self->id);
  g_free (self->path);
  g_free (self->digest);
  g_free (self->alternative);
  g_free (self);
}

static void
remove_kept (FpRecovery *self)
{
  g_autofree char *kept = part (self->folder, self->id, ".footpace");

  g_remove (kept);
}

gboolean
fp_recovery_saved (FpRecovery *self, const char *path, const char *digest, GError **error)
{
  gboolean good;

  g_mutex_lock (&self->mutex);
  set_file (self, path, digest);
  remove_kept (self);
  good = write_about (self, error);
  g_mutex_unlock (&self->mutex);
  return good;
}

gboolean
fp_recovery_keep (FpRecovery *self, const FpProject *project, const char *alternative, GError **error)
{
  g_autofree char *kept = part (self->folder, self->id, ".footpace");
  gboolean good = TRUE;

  g_mutex_lock (&self->mutex);
  if (g_strcmp0 (alternative, self->alternative) != 0)
    {
      g_free (self->alternative);
      self->alternative = g_strdup (alternative);
      good = write_about (self, error);
    }
  good = good && fp_store_save (project, kept, error);
  g_mutex_unlock (&self->mutex);
  return good;
}

void
fp_recovery_drop (FpRecovery *self)
{
  g_mutex_lock (&self->mutex);
  remove_kept (self);
  g_mutex_unlock (&self->mutex);
}

/* --- what others left, or hold -------------------------------------------- */

void
fp_left_free (FpLeft *self)
{
  if (self == NULL)
    return;
  g_free (self->id);
  g_free (self->path);
  g_free (self->digest);
  g_free (self->alternative);
  g_free (self->kept);
  g_clear_pointer (&self->when, g_date_time_unref);
  g_free (self);
}

/* The lock of an entry that nobody holds, taken until @fd is closed; FALSE: somebody holds it.
 * Where there is no lock at all, nobody can hold it. */
static gboolean
take_if_free (const char *folder, const char *id, int *fd)
{
  g_autofree char *path = part (folder, id, ".lock");

  *fd = g_open (path, O_RDWR | O_CLOEXEC, 0);
  if (*fd < 0 || flock (*fd, LOCK_EX | LOCK_NB) == 0)
    return TRUE;
  close (*fd);
  *fd = -1;
  return FALSE;
}

static gboolean
is_held (const char *folder, const char *id)
{
  int fd;
  const gboolean held = !take_if_free (folder, id, &fd);

  if (fd >= 0)
    close (fd);
  return held;
}

static GDateTime *
time_of (const struct stat *st)
{
  g_autoptr (GDateTime) second = g_date_time_new_from_unix_local (st->st_mtime);

  return g_date_time_add (second, st->st_mtim.tv_nsec / 1000);
}

/* To open a pipe would wait for someone to write into it, and what is huge was not written by us. */
static gboolean
is_small_file (const char *path)
{
  struct stat st;

  return stat (path, &st) == 0 && S_ISREG (st.st_mode) && st.st_size <= ABOUT_MAX;
}

static FpLeft *
read_entry (const char *folder, const char *id)
{
  g_autoptr (GKeyFile) file = g_key_file_new ();
  g_autofree char *about = part (folder, id, ".about"), *uri = NULL;
  FpLeft *left = g_new0 (FpLeft, 1);
  struct stat st;

  left->id = g_strdup (id);
  left->kept = part (folder, id, ".footpace");
  if (is_small_file (about) && g_key_file_load_from_file (file, about, G_KEY_FILE_NONE, NULL))
    {
      uri = g_key_file_get_string (file, GROUP, "file", NULL);
      left->path = uri != NULL ? g_filename_from_uri (uri, NULL, NULL) : NULL;
      left->digest = g_key_file_get_string (file, GROUP, "digest", NULL);
      left->alternative = g_key_file_get_string (file, GROUP, "alternative", NULL);
    }
  if (stat (left->kept, &st) == 0 && S_ISREG (st.st_mode))
    left->when = time_of (&st);
  return left;
}

/* The ids in the folder, each once. */
static GPtrArray *
entries (const char *folder)
{
  GPtrArray *ids = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && ids->len < LEFT_MAX && (name = g_dir_read_name (dir)) != NULL)
    {
      const char *dot = strrchr (name, '.');
      g_autofree char *id = dot != NULL ? g_strndup (name, (gsize) (dot - name)) : NULL;

      if (id != NULL && g_uuid_string_is_valid (id) && !g_ptr_array_find_with_equal_func (ids, id, g_str_equal, NULL))
        g_ptr_array_add (ids, g_steal_pointer (&id));
    }
  return ids;
}

static int
newest_first (gconstpointer a, gconstpointer b)
{
  const FpLeft *p = *(FpLeft *const *) a, *q = *(FpLeft *const *) b;
  const int by_time = g_date_time_compare (q->when, p->when);

  return by_time != 0 ? by_time : strcmp (p->id, q->id);
}

/* The entry of a program that is gone; NULL when it lives, or kept nothing (then the entry is swept away). */
static FpLeft *
left_or_swept (const char *folder, const char *id)
{
  g_autoptr (FpLeft) entry = NULL;
  int fd;

  if (!take_if_free (folder, id, &fd))
    return NULL;
  entry = read_entry (folder, id);
  if (entry->when == NULL)
    take_away (folder, id);
  if (fd >= 0)
    close (fd);
  return entry->when != NULL ? g_steal_pointer (&entry) : NULL;
}

GPtrArray *
fp_recovery_left (const char *folder)
{
  GPtrArray *left = g_ptr_array_new_with_free_func ((GDestroyNotify) fp_left_free);
  g_autoptr (GPtrArray) ids = entries (folder);

  for (guint i = 0; i < ids->len; i++)
    {
      FpLeft *entry = left_or_swept (folder, g_ptr_array_index (ids, i));

      if (entry != NULL)
        g_ptr_array_add (left, entry);
    }
  g_ptr_array_sort (left, newest_first);
  return left;
}

void
fp_left_discard (const char *folder, const FpLeft *left)
{
  take_away (folder, left->id);
}

gboolean
fp_recovery_is_open (const char *folder, const char *path, const FpRecovery *own)
{
  g_autoptr (GPtrArray) ids = entries (folder);
  g_autofree char *sought = same_everywhere (path);

  for (guint i = 0; i < ids->len; i++)
    {
      const char *id = g_ptr_array_index (ids, i);
      g_autoptr (FpLeft) entry = NULL;

      if ((own != NULL && strcmp (own->id, id) == 0) || !is_held (folder, id))
        continue;
      entry = read_entry (folder, id);
      if (g_strcmp0 (entry->path, sought) == 0)
        return TRUE;
    }
  return FALSE;
}
