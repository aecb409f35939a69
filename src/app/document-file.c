/* SPDX-License-Identifier: GPL-3.0-or-later */
/* document-file.c - the file of a document: opened, recovered, saved, and changed by others meanwhile */
#include "document-private.h"

#include "footpace/store.h"

#include <string.h>

/* --- opening -------------------------------------------------------------------- */

FpDocument *
fp_document_load (const char *path, GError **error)
{
  g_autofree char *digest = NULL;
  g_autoptr (FpProject) project = fp_store_load_digest (path, &digest, error);
  FpDocument *self;

  if (project == NULL)
    return NULL;
  self = fp_document_new_read (project, path, digest, fp_document_first_scene (project));
  fp_document_begin_checks (self);
  return self;
}

/* The file as it is now, if it is what it was when the crash came. */
static FpProject *
file_of (const FpLeft *left)
{
  g_autofree char *digest = NULL;
  g_autoptr (FpProject) file = NULL;

  if (left->path == NULL || left->digest == NULL)
    return NULL;
  file = fp_store_load_digest (left->path, &digest, NULL);
  return g_strcmp0 (digest, left->digest) == 0 ? g_steal_pointer (&file) : NULL;
}

FpDocument *
fp_document_recover (const FpLeft *left, GError **error)
{
  g_autoptr (FpProject) kept = fp_store_load (left->kept, error), file = NULL;
  FpDocument *self;
  int shown;

  if (kept == NULL)
    return NULL;
  file = file_of (left);
  self = fp_document_new (file != NULL ? file : kept, left->path, file != NULL);
  self->digest = g_strdup (left->digest);
  if (file != NULL)
    fp_document_edit (self, fp_project_ref (kept), "What was not saved", NULL);
  shown = left->alternative != NULL ? fp_project_find_alternative (kept, left->alternative) : -1;
  if (shown >= 0)
    fp_document_set_alternative (self, (guint) shown);
  return self;
}

/* --- its name ------------------------------------------------------------------- */

const char *
fp_document_path (FpDocument *self)
{
  return self->path;
}

char *
fp_document_name (FpDocument *self)
{
  const FpBrief *brief = fp_project_brief (fp_document_project (self));

  if (*brief->title == '\0')
    return g_strdup ("Untitled project");
  /* Many titles hold the town already. */
  return *brief->place != '\0' && strstr (brief->title, brief->place) == NULL
         ? g_strdup_printf ("%s, %s", brief->title, brief->place) : g_strdup (brief->title);
}

/* --- saving --------------------------------------------------------------------- */

gboolean
fp_document_is_modified (FpDocument *self)
{
  return fp_history_is_modified (self->history);
}

const char *
fp_document_digest (FpDocument *self)
{
  return self->digest;
}

gboolean
fp_document_is_file_changed (FpDocument *self)
{
  g_autofree char *now = self->path != NULL && self->digest != NULL ? fp_store_digest (self->path) : NULL;

  return now != NULL && strcmp (now, self->digest) != 0;
}

gboolean
fp_document_save_over (FpDocument *self, const char *path, GError **error)
{
  g_autofree char *digest = NULL;

  if (!fp_store_save_digest (fp_history_now (self->history), path, &digest, error))
    return FALSE;
  if (g_strcmp0 (path, self->path) != 0)
    {
      g_free (self->path);
      self->path = g_strdup (path);
    }
  g_free (self->digest);
  self->digest = g_steal_pointer (&digest);
  fp_history_mark_saved (self->history);
  fp_document_emit (self, FP_DOCUMENT_STATE);
  return TRUE;
}

gboolean
fp_document_save (FpDocument *self, const char *path, GError **error)
{
  if (g_strcmp0 (path, self->path) == 0 && fp_document_is_file_changed (self))
    {
      g_autofree char *shown = g_filename_display_name (path);
      g_set_error (error, FP_ERROR, FP_ERROR_CHANGED, "%s: the file was changed by someone else since it was opened here",
                   shown);
      return FALSE;
    }
  return fp_document_save_over (self, path, error);
}
