/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "ahead.h"

#include "footpace/store.h"

typedef struct
{
  FpProject     *project; /* NULL: it could not be read */
  GError        *error;
  char          *digest;
  const FpScene *scene;   /* NULL: handed over          */
  FpDraft       *draft;
} Found;

struct _FpAhead
{
  char    *path;
  GThread *thread; /* ends with what it found; NULL: that was handed over */
};

static void
found_free (Found *found)
{
  g_clear_pointer (&found->project, fp_project_unref);
  g_clear_pointer (&found->scene, fp_scene_unref);
  g_clear_error (&found->error);
  fp_draft_free (found->draft);
  g_free (found->digest);
  g_free (found);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Found, found_free)

static gpointer
find (gpointer data)
{
  const FpAhead *self = data;
  const FpDraftHow how = { 0 };
  Found *found = g_new0 (Found, 1);

  found->project = fp_store_load_digest (self->path, &found->digest, &found->error);
  if (found->project == NULL)
    return found;
  found->scene = fp_document_first_scene (found->project);
  found->draft = fp_draft_begin (found->scene, &how);
  return found;
}

FpAhead *
fp_ahead_begin (const char *path)
{
  FpAhead *self = g_new0 (FpAhead, 1);

  self->path = g_strdup (path);
  self->thread = g_thread_new ("ahead", find, self);
  return self;
}

void
fp_ahead_free (FpAhead *self)
{
  if (self == NULL)
    return;
  if (self->thread != NULL)
    found_free (g_thread_join (self->thread));
  g_free (self->path);
  g_free (self);
}

gboolean
fp_ahead_is_of (const FpAhead *self, const char *path)
{
  g_autoptr (GFile) own = g_file_new_for_path (self->path);
  g_autoptr (GFile) other = path != NULL ? g_file_new_for_path (path) : NULL;

  return self->thread != NULL && other != NULL && g_file_equal (own, other);
}

FpDocument *
fp_ahead_end (FpAhead *self, FpDraft **draft, GError **error)
{
  g_autoptr (Found) found = g_thread_join (g_steal_pointer (&self->thread));

  *draft = g_steal_pointer (&found->draft);
  if (found->project == NULL)
    {
      g_propagate_error (error, g_steal_pointer (&found->error));
      return NULL;
    }
  return fp_document_new_read (found->project, self->path, found->digest, g_steal_pointer (&found->scene));
}
