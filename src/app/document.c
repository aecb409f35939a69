/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "document.h"

#include "checker.h"
#include "footpace/store.h"

#include <string.h>

struct _FpDocument
{
  GObject     parent_instance;
  FpHistory  *history;
  char       *path, *digest;
  FpProject  *preview;
  const FpScene *scene;       /* owned; of the preview, else of the present    */
  const FpScene *base;        /* owned; of the present                         */
  guint       alternative;
  GPtrArray  *chosen;         /* of ids, the last one first in mind; NULL at the end */
  FpChecker  *checker;
  FpFindings *findings, *sighted;
};

G_DEFINE_FINAL_TYPE (FpDocument, fp_document, G_TYPE_OBJECT)

enum { SCENE, CHOSEN, FINDINGS, STATE, N_SIGNALS };
static guint signals[N_SIGNALS];

static void
emit (FpDocument *self, guint which)
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
  emit (self, FINDINGS);
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
  static const char *const names[N_SIGNALS] = { "scene", "chosen", "findings", "state" };
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->dispose = fp_document_dispose;
  object_class->finalize = fp_document_finalize;
  for (guint i = 0; i < N_SIGNALS; i++)
    signals[i] = g_signal_new (names[i], FP_TYPE_DOCUMENT, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
fp_document_init (FpDocument *self)
{
  self->checker = fp_checker_new (on_findings, self);
  self->chosen = g_ptr_array_new_with_free_func (g_free);
  g_ptr_array_add (self->chosen, NULL);
}

/* --- what is shown -------------------------------------------------------- */

static void
take_scene (const FpScene **slot, const FpScene *scene)
{
  g_clear_pointer (slot, fp_scene_unref);
  *slot = scene;
}

static void
forget_what_is_gone (FpDocument *self)
{
  gboolean any = FALSE;

  for (guint i = 0; i + 1 < self->chosen->len;)
    if (fp_document_placed (self, g_ptr_array_index (self->chosen, i)) == NULL)
      {
        g_ptr_array_remove_index (self->chosen, i);
        any = TRUE;
      }
    else
      i++;
  if (any)
    emit (self, CHOSEN);
}

static void
show (FpDocument *self)
{
  const FpProject *project = fp_document_project (self);

  /* Undo may take away the alternative that is shown. */
  self->alternative = MIN (self->alternative, fp_project_n_alternatives (project) - 1);
  take_scene (&self->scene, fp_scene_new (project, self->alternative));
  if (self->preview == NULL)
    take_scene (&self->base, fp_scene_ref (self->scene));
  fp_checker_check (self->checker, self->scene);
  forget_what_is_gone (self);
  emit (self, SCENE);
}

FpDocument *
fp_document_new (FpProject *project, const char *path, gboolean saved)
{
  FpDocument *self = g_object_new (FP_TYPE_DOCUMENT, NULL);

  self->history = fp_history_new (project, saved);
  self->path = g_strdup (path);
  /* The last is the one that was worked on last. */
  self->alternative = fp_project_n_alternatives (project) - 1;
  show (self);
  return self;
}

FpDocument *
fp_document_load (const char *path, GError **error)
{
  g_autofree char *digest = NULL;
  g_autoptr (FpProject) project = fp_store_load_digest (path, &digest, error);
  FpDocument *self;

  if (project == NULL)
    return NULL;
  self = fp_document_new (project, path, TRUE);
  self->digest = g_steal_pointer (&digest);
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
  emit (self, FINDINGS);
  emit (self, STATE);
}

guint
fp_document_n_chosen (FpDocument *self)
{
  return self->chosen->len - 1;
}

const char *
fp_document_chosen (FpDocument *self)
{
  const guint n = fp_document_n_chosen (self);

  return n > 0 ? g_ptr_array_index (self->chosen, n - 1) : NULL;
}

const char *const *
fp_document_chosen_all (FpDocument *self)
{
  return (const char *const *) self->chosen->pdata;
}

gboolean
fp_document_is_chosen (FpDocument *self, const char *id)
{
  return g_strv_contains (fp_document_chosen_all (self), id);
}

void
fp_document_choose_all (FpDocument *self, const char *const *ids)
{
  g_autoptr (GPtrArray) next = g_ptr_array_new_with_free_func (g_free);

  for (; *ids != NULL; ids++)
    if (fp_document_placed (self, *ids) != NULL && !g_ptr_array_find_with_equal_func (next, *ids, g_str_equal, NULL))
      g_ptr_array_add (next, g_strdup (*ids));
  g_ptr_array_add (next, NULL);
  if (g_strv_equal ((const char *const *) next->pdata, fp_document_chosen_all (self)))
    return;
  g_ptr_array_unref (self->chosen);
  self->chosen = g_steal_pointer (&next);
  emit (self, CHOSEN);
}

void
fp_document_choose (FpDocument *self, const char *id)
{
  const char *const ids[] = { id, NULL };

  fp_document_choose_all (self, ids);
}

void
fp_document_choose_also (FpDocument *self, const char *id)
{
  g_autoptr (GPtrArray) ids = g_ptr_array_new ();
  const gboolean was = fp_document_is_chosen (self, id);

  for (const char *const *c = fp_document_chosen_all (self); *c != NULL; c++)
    if (!g_str_equal (*c, id))
      g_ptr_array_add (ids, (gpointer) *c);
  if (!was)
    g_ptr_array_add (ids, (gpointer) id);
  g_ptr_array_add (ids, NULL);
  fp_document_choose_all (self, (const char *const *) ids->pdata);
}

static gboolean
is_of_chosen_kind (FpDocument *self, const FpKind *kind)
{
  for (const char *const *c = fp_document_chosen_all (self); *c != NULL; c++)
    if (fp_item_kind (fp_document_placed (self, *c)->item) == kind)
      return TRUE;
  return FALSE;
}

gboolean
fp_document_chosen_like (FpDocument *self, GPtrArray *ids)
{
  gboolean others = FALSE;
  guint n = 0;
  const FpPlaced *placed = self != NULL ? fp_scene_placed (self->scene, &n) : NULL;

  for (guint pass = 0; pass < 2; pass++)
    for (guint i = 0; i < n; i++)
      {
        const char *id = fp_item_id (placed[i].item);
        const gboolean is_chosen = fp_document_is_chosen (self, id);

        if (placed[i].ghost || is_chosen != (pass == 1) || !is_of_chosen_kind (self, fp_item_kind (placed[i].item)))
          continue;
        others |= !is_chosen;
        if (ids != NULL)
          g_ptr_array_add (ids, (gpointer) id);
      }
  return others;
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

const FpPlaced *
fp_document_chosen_placed (FpDocument *self)
{
  return fp_document_placed (self, fp_document_chosen (self));
}

/* --- edits ---------------------------------------------------------------- */

gboolean
fp_document_edit (FpDocument *self, FpProject *next, const char *label, const char *merge)
{
  g_autoptr (FpProject) taken = next;

  if (taken == NULL)
    return FALSE;
  g_clear_pointer (&self->preview, fp_project_unref);
  fp_history_push (self->history, taken, label, merge);
  show (self);
  emit (self, STATE);
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
  emit (self, STATE);
  return TRUE;
}

gboolean
fp_document_redo (FpDocument *self)
{
  fp_document_drop_preview (self);
  if (!fp_history_redo (self->history))
    return FALSE;
  show (self);
  emit (self, STATE);
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

/* --- findings ------------------------------------------------------------- */

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

gboolean
fp_document_is_checking (FpDocument *self)
{
  return self->sighted == NULL || fp_findings_scene (self->sighted) != self->scene;
}

/* --- file ----------------------------------------------------------------- */

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
  emit (self, STATE);
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
