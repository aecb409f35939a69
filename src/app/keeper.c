/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "keeper.h"

#include "latest.h"

#define GRACE_MS (60 * 1000) /* a write that has begun is never cancelled for a newer one */

struct _FpKeeper
{
  FpDocument *document;
  char       *folder;
  guint       delay, timer;
  FpRecovery *recovery;     /* NULL: there was trouble                         */
  FpLatest   *latest;
  char       *trouble;
  const FpProject *kept;    /* owned; asked to be kept last; NULL: nothing is  */
  char       *path, *digest; /* as the entry has them                          */
};

typedef struct
{
  FpProject *project;
  char      *alternative;
} Request;

static void
request_free (gpointer data)
{
  Request *request = data;

  fp_project_unref (request->project);
  g_free (request->alternative);
  g_free (request);
}

/* --- on the thread -------------------------------------------------------- */

static void
keep (FpLatestJob *job, gpointer data, gpointer owner)
{
  const Request *request = data;
  FpKeeper *self = owner;
  g_autoptr (GError) error = NULL;

  fp_recovery_keep (self->recovery, request->project, request->alternative, &error);
  fp_latest_job_post (job, g_strdup (error != NULL ? error->message : ""));
}

static void
receive (gpointer result, gpointer owner)
{
  FpKeeper *self = owner;
  const char *message = result;

  g_free (self->trouble);
  self->trouble = *message != '\0' ? g_strdup (message) : NULL;
}

static const FpLatestWork work = { keep, receive, request_free, g_free, GRACE_MS, 0 };

/* --- on the owner's ------------------------------------------------------- */

static const FpProject *
present (FpKeeper *self)
{
  return fp_scene_project (fp_document_base_scene (self->document));
}

static void
set_kept (FpKeeper *self, const FpProject *project)
{
  if (self->kept != NULL)
    fp_project_unref ((FpProject *) self->kept);
  self->kept = project != NULL ? fp_project_ref (project) : NULL;
}

static gboolean
keep_now (gpointer data)
{
  FpKeeper *self = data;
  const guint shown = fp_document_alternative (self->document);
  const FpProject *project = present (self);
  Request *request = g_new (Request, 1);

  self->timer = 0;
  *request = (Request) { fp_project_ref (project),
                         g_strdup (fp_alternative_id (fp_project_alternative (project, shown))) };
  set_kept (self, project);
  fp_latest_ask (self->latest, request);
  return G_SOURCE_REMOVE;
}

/* Waits for a write that is under way: it would put back what is dropped. */
static void
drop (FpKeeper *self)
{
  g_clear_handle_id (&self->timer, g_source_remove);
  if (self->kept == NULL)
    return;
  g_clear_pointer (&self->latest, fp_latest_free);
  fp_recovery_drop (self->recovery);
  self->latest = fp_latest_new ("keeping", &work, self);
  set_kept (self, NULL);
}

static void
follow_file (FpKeeper *self)
{
  const char *path = fp_document_path (self->document), *digest = fp_document_digest (self->document);

  if (g_strcmp0 (path, self->path) == 0 && g_strcmp0 (digest, self->digest) == 0)
    return;
  drop (self);
  g_free (self->path);
  g_free (self->digest);
  self->path = g_strdup (path);
  self->digest = g_strdup (digest);
  fp_recovery_saved (self->recovery, path, digest, NULL);
}

static void
on_state (FpKeeper *self)
{
  if (self->recovery == NULL)
    return;
  follow_file (self);
  if (!fp_document_is_modified (self->document))
    drop (self);
  else if (self->timer == 0 && present (self) != self->kept)
    self->timer = g_timeout_add (self->delay, keep_now, self);
}

FpKeeper *
fp_keeper_new (FpDocument *document, const char *folder, guint delay)
{
  FpKeeper *self = g_new0 (FpKeeper, 1);
  g_autoptr (GError) error = NULL;

  self->document = document;
  self->folder = g_strdup (folder);
  self->delay = delay;
  self->path = g_strdup (fp_document_path (document));
  self->digest = g_strdup (fp_document_digest (document));
  self->recovery = fp_recovery_new (folder, self->path, self->digest, &error);
  if (self->recovery == NULL)
    self->trouble = g_strdup (error->message);
  self->latest = fp_latest_new ("keeping", &work, self);
  g_signal_connect_swapped (document, "state", G_CALLBACK (on_state), self);
  on_state (self);
  return self;
}

void
fp_keeper_free (FpKeeper *self)
{
  if (self == NULL)
    return;
  g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_handle_id (&self->timer, g_source_remove);
  fp_latest_free (self->latest);
  fp_recovery_free (self->recovery);
  set_kept (self, NULL);
  g_free (self->folder);
  g_free (self->trouble);
  g_free (self->path);
  g_free (self->digest);
  g_free (self);
}

void
fp_keeper_keep_now (FpKeeper *self)
{
  const guint shown = fp_document_alternative (self->document);
  const FpProject *project = present (self);

  if (self->recovery == NULL || !fp_document_is_modified (self->document))
    return;
  g_clear_handle_id (&self->timer, g_source_remove);
  set_kept (self, project);
  fp_recovery_keep (self->recovery, project, fp_alternative_id (fp_project_alternative (project, shown)), NULL);
}

const char *
fp_keeper_trouble (FpKeeper *self)
{
  return self->trouble;
}

gboolean
fp_keeper_is_idle (FpKeeper *self)
{
  return self->timer == 0 && !fp_latest_is_busy (self->latest);
}

gboolean
fp_keeper_is_open_elsewhere (FpKeeper *self)
{
  return self->path != NULL && fp_recovery_is_open (self->folder, self->path, self->recovery);
}
