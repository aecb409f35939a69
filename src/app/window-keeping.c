/* SPDX-License-Identifier: GPL-3.0-or-later */
/* window-keeping.c - nothing is lost: unsaved changes kept, files that others write noticed, crashes recovered from */
#include "window-private.h"

#include "compat-4-8.h"

#define KEEP_AFTER  3000 /* ms after the first change                          */
#define CHECK_AFTER 400  /* ms after the file's last change: who writes it may not be done */

/* --- the file, and others who have it ------------------------------------- */

/* The window, however the question is answered: it may be closed meanwhile. */
typedef struct { GWeakRef window; gboolean saving; FpLeft *left; GPtrArray *rest; } Question;

static Question *
question_new (FpWindow *window)
{
  Question *question = g_new0 (Question, 1);

  g_weak_ref_init (&question->window, window);
  return question;
}

static void
question_free (Question *question)
{
  g_weak_ref_clear (&question->window);
  fp_left_free (question->left);
  g_clear_pointer (&question->rest, g_ptr_array_unref);
  g_free (question);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (Question, question_free)

static void
save_over (FpWindow *self)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *text = NULL;

  if (fp_document_save_over (self->document, fp_document_path (self->document), &error))
    return;
  text = g_strdup_printf ("Not saved: %s", error->message);
  fp_window_notice (self, text, TRUE);
}

static void
read_anew (FpWindow *self)
{
  g_autofree char *path = g_strdup (fp_document_path (self->document));
  g_autoptr (GError) error = NULL;
  g_autoptr (FpDocument) document = fp_document_load (path, &error);

  if (document != NULL)
    fp_window_set_document (self, document);
  else
    fp_window_notice (self, error->message, TRUE);
}

enum { CHANGED_LATER, CHANGED_THEIRS, CHANGED_ELSEWHERE, CHANGED_MINE };

static void
on_changed_answer (int choice, gpointer data)
{
  g_autoptr (Question) question = data;
  g_autoptr (FpWindow) self = g_weak_ref_get (&question->window);

  if (self == NULL || self->document == NULL)
    return;
  self->asking_file = FALSE;
  if (choice == CHANGED_THEIRS)
    read_anew (self);
  else if (choice == CHANGED_ELSEWHERE)
    fp_window_save_as (self);
  else if (choice == CHANGED_MINE)
    save_over (self);
}

void
fp_window_ask_changed (FpWindow *self, gboolean saving)
{
  static const char *const buttons[] = { "_Decide Later", "Open _Theirs", "Save _Elsewhere…", "Save _Over It", NULL };
  g_autofree char *heading = NULL, *base = NULL;

  if (self->asking_file)
    return;
  self->asking_file = TRUE;
  base = g_path_get_basename (fp_document_path (self->document));
  heading = g_strdup_printf ("“%s” was changed by someone else", base);
  fp_ask (GTK_WINDOW (self), heading,
          saving ? "It is not saved yet. To save over it would undo what they did; to open theirs would undo what you did."
                 : "There are changes here that are not saved. To save over it would undo what they did; to open theirs "
                   "would undo what you did.",
          buttons, CHANGED_THEIRS, on_changed_answer, question_new (self));
}

static gboolean
on_file_check (gpointer data)
{
  FpWindow *self = data;

  self->file_check = 0;
  if (self->document == NULL || !fp_document_is_file_changed (self->document))
    return G_SOURCE_REMOVE;
  if (fp_document_is_modified (self->document))
    {
      fp_window_ask_changed (self, FALSE);
      return G_SOURCE_REMOVE;
    }
  read_anew (self);
  fp_window_notice (self, "The file was changed by someone else and read anew.", FALSE);
  return G_SOURCE_REMOVE;
}

static void
on_file_event (FpWindow *self)
{
  g_clear_handle_id (&self->file_check, g_source_remove);
  self->file_check = g_timeout_add (CHECK_AFTER, on_file_check, self);
}

static void
stop_watching (FpWindow *self)
{
  g_clear_handle_id (&self->file_check, g_source_remove);
  if (self->monitor != NULL)
    g_signal_handlers_disconnect_by_data (self->monitor, self);
  g_clear_object (&self->monitor);
  g_clear_pointer (&self->monitored, g_free);
}

void
fp_window_watch_file (FpWindow *self)
{
  const char *path = self->document != NULL ? fp_document_path (self->document) : NULL;
  g_autoptr (GFile) file = NULL;

  if (g_strcmp0 (path, self->monitored) == 0)
    return;
  stop_watching (self);
  if (path == NULL)
    return;
  file = g_file_new_for_path (path);
  /* Where files cannot be watched, a change is still noticed when it is saved. */
  self->monitor = g_file_monitor_file (file, G_FILE_MONITOR_WATCH_MOVES, NULL, NULL);
  self->monitored = g_strdup (path);
  if (self->monitor != NULL)
    g_signal_connect_swapped (self->monitor, "changed", G_CALLBACK (on_file_event), self);
}

/* --- keeping -------------------------------------------------------------- */

static void
on_open_elsewhere_answer (int choice, gpointer data)
{
  g_autoptr (Question) question = data;
  g_autoptr (FpWindow) self = g_weak_ref_get (&question->window);

  if (self != NULL && choice == 1)
    fp_window_set_document (self, NULL);
}

void
fp_window_keep (FpWindow *self)
{
  static const char *const buttons[] = { "_Open It Here Too", "_Leave It There", NULL };
  g_autofree char *folder = fp_recovery_folder ();

  self->keeper = fp_keeper_new (self->document, folder, KEEP_AFTER);
  if (fp_keeper_trouble (self->keeper) != NULL)
    fp_window_notice (self, fp_keeper_trouble (self->keeper), TRUE);
  if (!fp_keeper_is_open_elsewhere (self->keeper))
    return;
  /* What is not saved here is not to be lost by an answer. */
  if (fp_document_is_modified (self->document))
    fp_window_notice (self, "This project is open in another window too. Whoever saves last would undo what the other has "
                      "saved; you would be asked before.", TRUE);
  else
    fp_ask (GTK_WINDOW (self), "This project is open in another window",
            "Whoever saves last would undo what the other has saved; you would be asked before.", buttons, -1,
            on_open_elsewhere_answer, question_new (self));
}

void
fp_window_keep_off (FpWindow *self)
{
  stop_watching (self);
  g_clear_pointer (&self->keeper, fp_keeper_free);
}

/* --- what was left -------------------------------------------------------- */

static void offer_next (FpWindow *self, GPtrArray *left);

enum { LEFT_AWAY, LEFT_LATER, LEFT_OPEN };

/* The window that has the file, so long as nothing was done in it: then it holds only what is older. */
static FpWindow *
window_for_left (FpWindow *self, const FpLeft *left)
{
  FpWindow *there = left->path != NULL ? fp_window_with_file (left->path) : NULL;

  if (there != NULL && !fp_document_is_modified (there->document))
    return there;
  return fp_window_for_another (self);
}

static void
open_left (FpWindow *self, const FpLeft *left)
{
  g_autofree char *folder = fp_recovery_folder ();
  g_autoptr (GError) error = NULL;
  g_autoptr (FpDocument) document = fp_document_recover (left, &error);
  FpWindow *window;

  if (document == NULL)
    {
      fp_window_notice (self, error->message, TRUE);
      return;
    }
  window = window_for_left (self, left);
  fp_window_set_document (window, document);
  fp_window_recall_board (window, TRUE);
  /* Kept anew before the old entry goes. */
  fp_keeper_keep_now (window->keeper);
  fp_left_discard (folder, left);
}

static void offer (FpWindow *self, Question *question);

enum { AWAY_NOT, AWAY_INDEED };

static void
on_away_answer (int choice, gpointer data)
{
  Question *question = data;
  g_autoptr (FpWindow) self = g_weak_ref_get (&question->window);
  g_autofree char *folder = fp_recovery_folder ();

  if (self != NULL && choice != AWAY_INDEED)
    {
      offer (self, question);
      return;
    }
  if (self != NULL)
    {
      fp_left_discard (folder, question->left);
      offer_next (self, question->rest);
    }
  question_free (question);
}

static void
ask_away (FpWindow *self, Question *question)
{
  static const char *const buttons[] = { "_Keep", "_Throw Away", NULL };

  fp_ask (GTK_WINDOW (self), "Throw away what was not saved?", "It cannot be brought back.", buttons, AWAY_INDEED,
          on_away_answer, question);
}

static void
on_left_answer (int choice, gpointer data)
{
  Question *question = data;
  g_autoptr (FpWindow) self = g_weak_ref_get (&question->window);

  if (self != NULL && choice == LEFT_AWAY)
    {
      ask_away (self, question);
      return;
    }
  if (self != NULL && choice == LEFT_OPEN)
    open_left (self, question->left);
  if (self != NULL)
    offer_next (self, question->rest);
  question_free (question);
}

static char *
title_of (const FpLeft *left)
{
  g_autoptr (FpProject) project = fp_store_load (left->kept, NULL);
  const char *title = project != NULL ? fp_project_brief (project)->title : "";

  if (*title != '\0')
    return g_strdup (title);
  return left->path != NULL ? g_path_get_basename (left->path) : g_strdup ("Untitled project");
}

static void
offer (FpWindow *self, Question *question)
{
  static const char *const buttons[] = { "_Throw Away…", "_Later", "_Recover", NULL };
  g_autofree char *title = NULL, *heading = NULL, *body = NULL, *when = NULL;

  title = title_of (question->left);
  when = g_date_time_format (question->left->when, "%e %B %Y, %H:%M");
  heading = g_strdup_printf ("Recover “%s”?", title);
  body = g_strdup_printf ("The program ended before this was saved. What was there on %s has been kept.", g_strstrip (when));
  fp_ask (GTK_WINDOW (self), heading, body, buttons, -1, on_left_answer, question);
}

static void
offer_next (FpWindow *self, GPtrArray *left)
{
  Question *question;

  if (left->len == 0)
    return;
  question = question_new (self);
  question->left = g_ptr_array_steal_index (left, 0);
  question->rest = g_ptr_array_ref (left);
  offer (self, question);
}

void
fp_window_offer_left (FpWindow *self)
{
  g_autofree char *folder = fp_recovery_folder ();
  g_autoptr (GPtrArray) left = fp_recovery_left (folder);

  offer_next (self, left);
}
