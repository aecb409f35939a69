/* SPDX-License-Identifier: GPL-3.0-or-later */
/* document.h - an open project: its history, its file, what is chosen, what was found
 *
 * Signals:
 *  "scene"    what is shown changed: an edit, a preview, another alternative
 *  "chosen"   another thing (or none) is chosen
 *  "findings" findings arrived from the background
 *  "state"    file, unsaved changes, undo and redo
 *
 * A preview is shown and checked like an edit, but is no part of the history
 * until it is kept.  Needs a main loop, no display.
 */
#pragma once

#include "footpace/history.h"
#include "footpace/recovery.h"
#include "footpace/rules.h"

#include <gio/gio.h>

G_BEGIN_DECLS

#define FP_TYPE_DOCUMENT (fp_document_get_type ())
G_DECLARE_FINAL_TYPE (FpDocument, fp_document, FP, DOCUMENT, GObject)

/* @path: (nullable): of the file; @saved: whether the file holds just this. */
FpDocument *fp_document_new  (FpProject *project, const char *path, gboolean saved);
FpDocument *fp_document_load (const char *path, GError **error);
/* Of the alternative that is shown first: the last, which was worked on last.  Owned by the caller. */
const FpScene *fp_document_first_scene (const FpProject *project);
/* Just as it is in the file, which @digest tells; takes @scene, fp_document_first_scene() of it.  Nothing of it is checked
 * before fp_document_begin_checks(): what it looks like comes first. */
FpDocument *fp_document_new_read (FpProject *project, const char *path, const char *digest, const FpScene *scene);
void        fp_document_begin_checks (FpDocument *self); /* or goes on with them */

/**
 * fp_document_recover:
 *
 * What a crash has left.  Where the file is as it was then, undo leads back
 * to it; where it has changed since, saving asks first (%FP_ERROR_CHANGED).
 */
FpDocument *fp_document_recover (const FpLeft *left, GError **error);

/* --- what is shown (borrowed until the next change) ---------------------- */
const FpProject *fp_document_project     (FpDocument *self);
const FpScene   *fp_document_scene       (FpDocument *self);
guint            fp_document_alternative (FpDocument *self);
void             fp_document_set_alternative (FpDocument *self, guint alternative);
/* For which celebration it is shown, checked and drawn as set: a FpCelebration; 0: all things stand. */
guint            fp_document_celebration     (FpDocument *self);
void             fp_document_set_celebration (FpDocument *self, guint celebration);

/* Id of the thing that is chosen; NULL.  One that is not in the scene is never chosen. */
const char      *fp_document_chosen (FpDocument *self);
void             fp_document_choose (FpDocument *self, const char *id);
/* The thing of that id, or its ghost when there is nothing else; NULL. */
const FpPlaced  *fp_document_placed (FpDocument *self, const char *id);
const FpPlaced  *fp_document_chosen_placed (FpDocument *self);

/* --- several at once ------------------------------------------------------- */

/* All that are chosen, ended by NULL, in the order in which they were; the last is fp_document_chosen(). */
const char *const *fp_document_chosen_all (FpDocument *self);
guint            fp_document_n_chosen    (FpDocument *self);
gboolean         fp_document_is_chosen   (FpDocument *self, const char *id);
/**
 * fp_document_chosen_like:
 * @self: (nullable)
 * @ids: (nullable): gets the ids of all that stand and are of a kind that is chosen, those last that are chosen now;
 *   borrowed from the scene
 *
 * Returns: whether there are others of that kind than those that are chosen
 */
gboolean         fp_document_chosen_like (FpDocument *self, GPtrArray *ids);
/* Chooses it besides the others, or no longer when it was chosen. */
void             fp_document_choose_also (FpDocument *self, const char *id);
/* Just these, ended by NULL; those that are not in the scene are left out. */
void             fp_document_choose_all  (FpDocument *self, const char *const *ids);

/* --- edits ---------------------------------------------------------------- */

/**
 * fp_document_edit:
 * @next: (transfer full) (nullable): what fp_set_out_… returned; NULL does nothing
 * @merge: (nullable): see fp_history_push()
 *
 * Returns: whether there was a project to take
 */
gboolean fp_document_edit (FpDocument *self, FpProject *next, const char *label, const char *merge);

/* How it is printed, kept with the project: unsaved until it is saved, but no edit (see fp_history_set_page()). */
gboolean fp_document_set_page (FpDocument *self, const FpPageSetup *page, GError **error);

void     fp_document_preview (FpDocument *self, FpProject *next); /* (transfer full); replaces the preview before it */
gboolean fp_document_is_previewing (FpDocument *self);
void     fp_document_keep_preview (FpDocument *self, const char *label);
void     fp_document_drop_preview (FpDocument *self);
/* The scene of the history's present, on which a preview is based; borrowed. */
const FpScene *fp_document_base_scene (FpDocument *self);

gboolean    fp_document_undo (FpDocument *self);
gboolean    fp_document_redo (FpDocument *self);
const char *fp_document_undo_label (FpDocument *self); /* NULL: nothing to undo */
const char *fp_document_redo_label (FpDocument *self);
guint       fp_document_depth (FpDocument *self);      /* steps that can be undone */

/* --- findings ------------------------------------------------------------- */

FpFindings *fp_document_findings (FpDocument *self); /* the newest; NULL at first */
/* The newest that hold sight too: what is shown of sight meanwhile. NULL at first. */
FpFindings *fp_document_sighted  (FpDocument *self);
void        fp_document_catch_up (FpDocument *self); /* for who draws a frame: see fp_checker_catch_up() */
gboolean    fp_document_is_checking (FpDocument *self); /* the newest are not complete yet */

/* --- file ----------------------------------------------------------------- */

const char *fp_document_path  (FpDocument *self);  /* NULL: never saved */
char       *fp_document_name  (FpDocument *self);  /* for titles: the project's title; owned by the caller */
gboolean    fp_document_is_modified (FpDocument *self);
/* On failure nothing changed: the old file is whole and the project still unsaved.
 * %FP_ERROR_CHANGED: @path is the document's own file, and someone else has written it since it was read or saved here. */
gboolean    fp_document_save  (FpDocument *self, const char *path, GError **error);
/* Whatever was written there meanwhile. */
gboolean    fp_document_save_over (FpDocument *self, const char *path, GError **error);
/* Of the file as it was read or saved here; NULL: it has none. */
const char *fp_document_digest (FpDocument *self);
/* Whether the file is there and holds something else than was read or saved here. */
gboolean    fp_document_is_file_changed (FpDocument *self);

G_END_DECLS
