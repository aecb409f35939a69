/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "document-private.h"

#include <string.h>

G_DEFINE_FINAL_TYPE (FpDocument, fp_document, G_TYPE_OBJECT)

static guint signals[FP_DOCUMENT_N_SIGNALS];

void
fp_document_emit (FpDocument *self, FpDocumentSignal which)
{
  g_signal_emit (self, signals[which], 0);
}

static void
on_findings (FpFindings *findings, gpointer data)
{
  FpDocument *self = data;

  fp_findings_ref (findings);
  g_clear_pointer (&self->findings, fp_findings_unref);
  self->findings = findings;
  if (fp_findings_measuring (findings)->sight != NULL)
    {
      g_clear_pointer (&self->sighted, fp_findings_unref);
      self->sighted = fp_findings_ref (findings);
    }
  fp_document_emit (self, FP_DOCUMENT_FINDINGS);
}

static void
fp_document_dispose (GObject *object)
{
  FpDocument *self = FP_DOCUMENT (object);

  g_clear_pointer (&self->checker, fp_checker_free);
  g_clear_pointer (&self->findings, fp_findings_unref);
  g_clear_pointer (&self->sighted, fp_findings_unref);
  G_OBJECT_CLASS (fp_document_parent_class)->dispose (object);
}

static void
fp_document_finalize (GObject *object)
{
  FpDocument *self = FP_DOCUMENT (object);

  g_clear_pointer (&self->scene, fp_scene_unref);
  g_clear_pointer (&self->base, fp_scene_unref);
  g_clear_pointer (&self->preview, fp_project_unref);
  g_clear_pointer (&self->history, fp_history_free);
  g_clear_pointer (&self->path, g_free);
  g_clear_pointer (&self->digest, g_free);
  g_clear_pointer (&self->chosen, g_ptr_array_unref);
  G_OBJECT_CLASS (fp_document_parent_class)->finalize (object);
}

static void
fp_document_class_init (FpDocumentClass *klass)
{
  static const char *const names[FP_DOCUMENT_N_SIGNALS] = { "scene", "chosen", "findings", "state" };
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->dispose = fp_document_dispose;
  object_class->finalize = fp_document_finalize;
  for (guint i = 0; i < FP_DOCUMENT_N_SIGNALS; i++)
    signals[i] = g_signal_new (names[i], FP_TYPE_DOCUMENT, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
fp_document_init (FpDocument *self)
{
  self->checker = fp_checker_new (on_findings, self);
  self->chosen = g_ptr_array_new_with_free_func (g_free);
  g_ptr_array_add (self->chosen, NULL);
}

/* --- what is shown -------------------------------------------------------------- */

static void
take_scene (const FpScene **slot, const FpScene *scene)
{
  g_clear_pointer (slot, fp_scene_unref);
  *slot = scene;
}

static void
show_scene (FpDocument *self, const FpScene *scene)
{
  self->alternative = fp_scene_alternative (scene);
  take_scene (&self->scene, scene);
  if (self->preview == NULL)
    take_scene (&self->base, fp_scene_ref (self->scene));
  fp_document_forget_gone (self);
  fp_document_emit (self, FP_DOCUMENT_SCENE);
  /* After what is drawn at once has been projected, on all processors: what is found is told beside the drawing, not
   * before. */
  if (self->checked)
    fp_checker_check (self->checker, self->scene);
}

static void
show (FpDocument *self)
{
  const FpProject *project = fp_document_project (self);
  /* Undo may take away the alternative that is shown. */
  FpScene *whole = fp_scene_new (project, MIN (self->alternative, fp_project_n_alternatives (project) - 1));
  FpScene *set = self->celebration != 0 ? fp_scene_new_set (whole, (FpCelebration) self->celebration) : NULL;

  if (set != NULL)
    fp_scene_unref (whole);
  show_scene (self, set != NULL ? set : whole);
}

const FpScene *
fp_document_first_scene (const FpProject *project)
{
  return fp_scene_new (project, fp_project_n_alternatives (project) - 1);
}

static FpDocument *
document_new (FpProject *project, const char *path, gboolean saved, const FpScene *scene)
{
  FpDocument *self = g_object_new (FP_TYPE_DOCUMENT, NULL);

  self->history = fp_history_new (project, saved);
  self->path = g_strdup (path);
  show_scene (self, scene);
  return self;
}

FpDocument *
fp_document_new (FpProject *project, const char *path, gboolean saved)
{
  FpDocument *self = document_new (project, path, saved, fp_document_first_scene (project));

  fp_document_begin_checks (self);
  return self;
}

FpDocument *
fp_document_new_read (FpProject *project, const char *path, const char *digest, const FpScene *scene)
{
  FpDocument *self = document_new (project, path, TRUE, scene);

  self->digest = g_strdup (digest);
  return self;
}

const FpProject *
fp_document_project (FpDocument *self)
{
  return self->preview != NULL ? self->preview : fp_history_now (self->history);
}

const FpScene *
fp_document_scene (FpDocument *self)
{
  return self->scene;
}

const FpScene *
fp_document_base_scene (FpDocument *self)
{
  return self->base;
}

guint
fp_document_alternative (FpDocument *self)
{
  return self->alternative;
}

void
fp_document_set_alternative (FpDocument *self, guint alternative)
{
  if (alternative == self->alternative || alternative >= fp_project_n_alternatives (fp_document_project (self)))
    return;
  fp_document_drop_preview (self);
  self->alternative = alternative;
  /* Sight of another alternative must not be taken for this one's. */
  g_clear_pointer (&self->sighted, fp_findings_unref);
  g_clear_pointer (&self->findings, fp_findings_unref);
  show (self);
  fp_document_emit (self, FP_DOCUMENT_FINDINGS);
  fp_document_emit (self, FP_DOCUMENT_STATE);
}

guint
fp_document_celebration (FpDocument *self)
{
  return self->celebration;
}

void
fp_document_set_celebration (FpDocument *self, guint celebration)
{
  if (celebration == self->celebration)
    return;
  fp_document_drop_preview (self);
  self->celebration = celebration;
  /* Nor sight of a church that is set otherwise. */
  g_clear_pointer (&self->sighted, fp_findings_unref);
  g_clear_pointer (&self->findings, fp_findings_unref);
  show (self);
  fp_document_emit (self, FP_DOCUMENT_FINDINGS);
  fp_document_emit (self, FP_DOCUMENT_STATE);
}

const FpPlaced *
fp_document_placed (FpDocument *self, const char *id)
{
  const FpPlaced *ghost = NULL;
  guint n;
  const FpPlaced *placed = fp_scene_placed (self->scene, &n);

  if (id == NULL)
    return NULL;
  for (guint i = 0; i < n; i++)
    if (strcmp (fp_item_id (placed[i].item), id) == 0)
      {
        if (!placed[i].ghost)
          return &placed[i];
        ghost = &placed[i];
      }
  return ghost;
}

/* --- edits ---------------------------------------------------------------------- */

gboolean
fp_document_edit (FpDocument *self, FpProject *next, const char *label, const char *merge)
{
  g_autoptr (FpProject) taken = next;

  if (taken == NULL)
    return FALSE;
  g_clear_pointer (&self->preview, fp_project_unref);
  fp_history_push (self->history, taken, label, merge);
  show (self);
  fp_document_emit (self, FP_DOCUMENT_STATE);
  return TRUE;
}

gboolean
fp_document_set_page (FpDocument *self, const FpPageSetup *page, GError **error)
{
  if (!fp_history_set_page (self->history, page, error))
    return FALSE;
  g_clear_pointer (&self->preview, fp_project_unref);
  show (self);
  fp_document_emit (self, FP_DOCUMENT_STATE);
  return TRUE;
}

void
fp_document_preview (FpDocument *self, FpProject *next)
{
  g_clear_pointer (&self->preview, fp_project_unref);
  self->preview = next;
  show (self);
}

gboolean
fp_document_is_previewing (FpDocument *self)
{
  return self->preview != NULL;
}

void
fp_document_keep_preview (FpDocument *self, const char *label)
{
  if (self->preview != NULL)
    fp_document_edit (self, g_steal_pointer (&self->preview), label, NULL);
}

void
fp_document_drop_preview (FpDocument *self)
{
  if (self->preview == NULL)
    return;
  g_clear_pointer (&self->preview, fp_project_unref);
  show (self);
}

gboolean
fp_document_undo (FpDocument *self)
{
  fp_document_drop_preview (self);
  if (!fp_history_undo (self->history))
    return FALSE;
  show (self);
  fp_document_emit (self, FP_DOCUMENT_STATE);
  return TRUE;
}

gboolean
fp_document_redo (FpDocument *self)
{
  fp_document_drop_preview (self);
  if (!fp_history_redo (self->history))
    return FALSE;
  show (self);
  fp_document_emit (self, FP_DOCUMENT_STATE);
  return TRUE;
}

const char *
fp_document_undo_label (FpDocument *self)
{
  return fp_history_undo_label (self->history);
}

const char *
fp_document_redo_label (FpDocument *self)
{
  return fp_history_redo_label (self->history);
}

guint
fp_document_depth (FpDocument *self)
{
  return fp_history_depth (self->history);
}

/* --- findings ------------------------------------------------------------------- */

void
fp_document_begin_checks (FpDocument *self)
{
  if (self->checked)
    return;
  self->checked = TRUE;
  fp_checker_check (self->checker, self->scene);
}

FpFindings *
fp_document_findings (FpDocument *self)
{
  return self->findings;
}

FpFindings *
fp_document_sighted (FpDocument *self)
{
  return self->sighted;
}

void
fp_document_catch_up (FpDocument *self)
{
  fp_checker_catch_up (self->checker);
}

gboolean
fp_document_is_checking (FpDocument *self)
{
  return self->sighted == NULL || fp_findings_scene (self->sighted) != self->scene;
}
