/* SPDX-License-Identifier: GPL-3.0-or-later */
/* window-actions.c - what can be done to the open project */
#include "window-private.h"

#include "brief-dialog.h"
#include "report-window.h"
#include "norms-window.h"
#include "capacity-window.h"
#include "schedules-window.h"
#include "sheet-dialog.h"
#include "sheets.h"
#include "text-dialog.h"
#include "tip.h"

#include "footpace/setting-out.h"

#include <string.h>

static FpBoardView *
board (FpWindow *self)
{
  return FP_BOARD_VIEW (self->board);
}

/* --- what can be done now ------------------------------------------------- */

static void
set_history_tooltip (GtkWidget *button, const char *verb, const char *label)
{
  g_autofree char *text = label != NULL ? g_strdup_printf ("%s: %s", verb, label) : g_strdup (verb);

  fp_tip_set (button, text);
}

static gboolean
on_compare_page (FpWindow *self)
{
  return g_strcmp0 (gtk_stack_get_visible_child_name (GTK_STACK (self->pages)), "compare") == 0;
}

static void
enable (FpWindow *self, const char *action, gboolean enabled)
{
  gtk_widget_action_set_enabled (GTK_WIDGET (self), action, enabled);
}

void
fp_window_update_actions (FpWindow *self)
{
  static const char *const need_project[] = {
    "win.save", "win.save-as", "win.export", "win.print", "win.sheet-compare", "win.sheet-levels", "win.sheet-sight",
    "win.sheet-sun", "win.sheet-card", "win.sheet-schedule", "win.sheet-linen", "win.sheet-laying", "win.sheet-capacity", "win.furnish", "win.setting", "win.brief", "win.add",
    "win.alternative-new", "win.alternative-rename", "win.compare", "win.show-board", "win.frame-sanctuary",
    "win.frame-whole", "win.zoom-in", "win.zoom-out", "win.show-things", "win.choose-nothing", "win.add-list",
    "win.report", "win.schedules", "win.capacity", "win.norms", "win.pew", "win.sight", "win.sun", "win.sheet-pews", "win.tape", "win.list-wide", "win.list-order",
    "win.show-findings", "win.show-toggle", "win.show-list",
    "win.only-plan", "win.only-elevation", "win.only-section", "win.all-three"
  };
  FpDocument *d = self->document;
  const FpPlaced *chosen = d != NULL ? fp_document_chosen_placed (d) : NULL;

  for (guint i = 0; i < G_N_ELEMENTS (need_project); i++)
    enable (self, need_project[i], d != NULL);
  enable (self, "win.undo", d != NULL && fp_document_undo_label (d) != NULL);
  enable (self, "win.redo", d != NULL && fp_document_redo_label (d) != NULL);
  enable (self, "win.remove", chosen != NULL && !chosen->ghost);
  enable (self, "win.alternative-remove", d != NULL && fp_project_n_alternatives (fp_document_project (d)) > 1);
  set_history_tooltip (self->undo_button, "Undo", d != NULL ? fp_document_undo_label (d) : NULL);
  set_history_tooltip (self->redo_button, "Redo", d != NULL ? fp_document_redo_label (d) : NULL);
  fp_window_update_arrange (self);
  fp_window_update_survey (self);
  fp_window_update_settle (self);
  gtk_widget_set_sensitive (self->add_button, d != NULL);
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->compare_button), on_compare_page (self));
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->wide_button), gtk_widget_get_visible (self->wide_list));
}

/* Says why nothing came of an edit.  @error: where @next has it, which is made in the same breath. */
static gboolean
edit (FpWindow *self, FpProject *next, const char *label, GError **error)
{
  if (fp_document_edit (self->document, next, label, NULL))
    return TRUE;
  fp_window_tell_amiss (self, *error);
  return FALSE;
}

/* --- history and things --------------------------------------------------- */

static void
undo (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);

  (void) name, (void) parameter;
  if (!fp_board_view_cancel (board (self)))
    fp_document_undo (self->document);
}

static void
redo (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name, (void) parameter;
  fp_document_redo (FP_WINDOW (widget)->document);
}

static void
remove_thing (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name, (void) parameter;
  fp_board_view_remove_chosen (board (FP_WINDOW (widget)));
}

static void
choose_nothing (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);
  g_autofree char *was = g_strdup (fp_document_chosen (self->document));

  (void) name, (void) parameter;
  fp_board_view_mark (board (self), NULL);
  fp_document_choose (self->document, NULL);
  fp_window_focus_list (self, was);
}

/* A wall that is chosen is where a new opening is wanted. */
static FpProject *
into_chosen_wall (FpWindow *self, FpProject *added, const char *id, const char *wall)
{
  g_autoptr (FpScene) scene = NULL;
  const FpPlaced *was = fp_document_placed (self->document, wall);
  FpProject *moved;

  if (added == NULL || was == NULL || was->ghost || fp_item_kind (was->item)->role != FP_ROLE_WALL
      || (fp_item_kind (fp_project_find (added, fp_document_alternative (self->document), id, NULL))->flags
          & FP_KIND_IN_WALL) == 0)
    return added;
  scene = (FpScene *) fp_scene_new (added, fp_document_alternative (self->document));
  moved = fp_set_out_on (scene, id, wall, NULL);
  if (moved == NULL)
    return added;
  fp_project_unref (added);
  return moved;
}

static void
add (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);
  const FpKind *kind = fp_kind_find (g_variant_get_string (parameter, NULL));
  g_autofree char *id = NULL, *label = NULL;
  g_autoptr (GError) error = NULL;
  FpProject *next;

  (void) name;
  if (kind == NULL)
    return;
  label = g_strdup_printf ("Add %s", kind->label);
  next = fp_set_out_new (fp_document_base_scene (self->document), kind, &id, &error);
  next = into_chosen_wall (self, next, id, fp_document_chosen (self->document));
  if (edit (self, next, label, &error))
    fp_document_choose (self->document, id);
}

/* --- alternatives --------------------------------------------------------- */

/* Ids of alternatives are letters as people call them: a, b, c. */
static char *
free_alternative_id (const FpProject *project)
{
  for (char c = 'a'; c <= 'z'; c++)
    {
      char id[] = { c, '\0' };

      if (fp_project_find_alternative (project, id) < 0)
        return g_strdup (id);
    }
  return fp_project_free_id (project, "alternative");
}

static char *
on_alternative_new (const char *name, const char *note, gpointer data)
{
  FpWindow *self = data;
  const FpProject *project = fp_document_project (self->document);
  g_autofree char *id = free_alternative_id (project);
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) copy = NULL;
  FpProject *next;
  guint n = fp_project_n_alternatives (project);

  copy = fp_project_with_new_alternative (project, (int) fp_document_alternative (self->document), id, name, &error);
  next = copy != NULL ? fp_project_with_alternative_text (copy, n, name, note, &error) : NULL;
  if (!fp_document_edit (self->document, next, "New alternative", NULL))
    return g_strdup (error->message);
  fp_document_set_alternative (self->document, n);
  return NULL;
}

static void
alternative_new (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);
  const FpProject *project = fp_document_project (self->document);
  const FpAlternative *from = fp_project_alternative (project, fp_document_alternative (self->document));
  g_autofree char *name = g_strdup_printf ("%s, varied", fp_alternative_name (from));

  (void) action, (void) parameter;
  fp_text_dialog_show (GTK_WINDOW (self), "New Alternative", "_Make", name, "", on_alternative_new,
                       g_object_ref (self), g_object_unref);
}

static char *
on_alternative_text (const char *name, const char *note, gpointer data)
{
  FpWindow *self = data;
  g_autoptr (GError) error = NULL;
  FpProject *next = fp_project_with_alternative_text (fp_document_project (self->document),
                                                      fp_document_alternative (self->document), name, note, &error);

  if (!fp_document_edit (self->document, next, "Name and note of the alternative", NULL))
    return g_strdup (error->message);
  return NULL;
}

static void
alternative_rename (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);
  const FpAlternative *alternative = fp_project_alternative (fp_document_project (self->document),
                                                             fp_document_alternative (self->document));

  (void) action, (void) parameter;
  fp_text_dialog_show (GTK_WINDOW (self), "Alternative", "_Apply", fp_alternative_name (alternative),
                       fp_alternative_note (alternative), on_alternative_text, g_object_ref (self), g_object_unref);
}

static void
alternative_remove (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);
  g_autoptr (GError) error = NULL;

  (void) action, (void) parameter;
  edit (self, fp_project_without_alternative (fp_document_project (self->document),
                                              fp_document_alternative (self->document), &error),
        "Remove the alternative", &error);
}

/* --- pages and views ------------------------------------------------------ */

static void
show_page (FpWindow *self, const char *page)
{
  gtk_stack_set_visible_child_name (GTK_STACK (self->pages), page);
  fp_window_update_actions (self);
}

static void
compare (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);

  (void) name, (void) parameter;
  fp_board_view_cancel (board (self));
  show_page (self, on_compare_page (self) ? "board" : "compare");
}

static void
show_board (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name, (void) parameter;
  show_page (FP_WINDOW (widget), "board");
}

/* One step back towards the board, with nothing in the way. */
static void
escape (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);

  (void) name, (void) parameter;
  if (self->document != NULL && fp_board_view_cancel (board (self)))
    return;
  if (on_compare_page (self))
    show_page (self, "board");
  else if (fp_window_put_notice_away (self) || self->document == NULL)
    return;
  gtk_widget_grab_focus (self->board);
}

static void
add_list (GtkWidget *widget, const char *name, GVariant *parameter)
{
  show_board (widget, name, parameter);
  fp_window_open_add_list (FP_WINDOW (widget));
}

static void
report (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);

  (void) name, (void) parameter;
  if (self->report == NULL)
    {
      self->report = fp_report_window_new (GTK_WINDOW (self), self->document);
      g_object_add_weak_pointer (G_OBJECT (self->report), (gpointer *) &self->report);
    }
  gtk_window_present (GTK_WINDOW (self->report));
}

static void
norms (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);

  (void) name, (void) parameter;
  if (self->norms == NULL)
    {
      self->norms = fp_norms_window_new (GTK_WINDOW (self), self->document);
      g_object_add_weak_pointer (G_OBJECT (self->norms), (gpointer *) &self->norms);
    }
  gtk_window_present (GTK_WINDOW (self->norms));
}

static void
capacity (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);

  (void) name, (void) parameter;
  if (self->capacity == NULL)
    {
      self->capacity = fp_capacity_window_new (GTK_WINDOW (self), self->document);
      g_object_add_weak_pointer (G_OBJECT (self->capacity), (gpointer *) &self->capacity);
    }
  gtk_window_present (GTK_WINDOW (self->capacity));
}

static void
schedules (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);

  (void) name, (void) parameter;
  if (self->schedules == NULL)
    {
      self->schedules = fp_schedules_window_new (GTK_WINDOW (self), self->document);
      g_object_add_weak_pointer (G_OBJECT (self->schedules), (gpointer *) &self->schedules);
    }
  gtk_window_present (GTK_WINDOW (self->schedules));
}

static void
look (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);

  (void) parameter;
  if (strcmp (name, "win.zoom-in") == 0)
    fp_board_view_zoom (board (self), 1.25);
  else if (strcmp (name, "win.zoom-out") == 0)
    fp_board_view_zoom (board (self), 0.8);
  else
    fp_board_view_frame (board (self), strcmp (name, "win.frame-whole") == 0);
}

static void
show_only (GtkWidget *widget, const char *name, GVariant *parameter)
{
  static const char *const views[] = { "win.only-plan", "win.only-elevation", "win.only-section" };
  int view = -1;

  show_board (widget, name, parameter);
  for (guint i = 0; i < G_N_ELEMENTS (views); i++)
    if (strcmp (name, views[i]) == 0)
      view = (int) i;
  fp_board_view_show_only (board (FP_WINDOW (widget)), view);
  gtk_widget_grab_focus (FP_WINDOW (widget)->board);
}

static void
tape (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);
  gboolean taken;

  show_board (widget, name, parameter);
  g_object_get (self->board, "tape", &taken, NULL);
  g_object_set (self->board, "tape", !taken, NULL);
}

static void
brief (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) name, (void) parameter;
  fp_brief_dialog_show (GTK_WINDOW (widget), FP_WINDOW (widget)->document);
}

/* Made when it is first asked for: under the name by which the toolkit finds it by itself, it would be at the start. */
static void
shortcuts (GtkWidget *widget, const char *name, GVariant *parameter)
{
  GtkApplicationWindow *self = GTK_APPLICATION_WINDOW (widget);
  g_autoptr (GtkBuilder) builder = NULL;

  (void) name, (void) parameter;
  if (gtk_application_window_get_help_overlay (self) == NULL)
    {
      builder = gtk_builder_new_from_resource ("/org/footpace/Footpace/shortcuts.ui");
      gtk_application_window_set_help_overlay (self, GTK_SHORTCUTS_WINDOW (gtk_builder_get_object (builder, "help_overlay")));
    }
  gtk_window_present (GTK_WINDOW (gtk_application_window_get_help_overlay (self)));
}

static void
on_written (FpSheetDialog *dialog, const char *path, guint files, FpWindow *self)
{
  g_autofree char *text = files > 1 ? g_strdup_printf ("Written: %s and %u more beside it, numbered from 2", path, files - 1)
                                    : g_strdup_printf ("Written: %s", path);

  (void) dialog;
  fp_window_notice_file (self, text, path);
}

/* Which sheet an action asks for. */
static guint
sheet_of (FpWindow *self, const char *action)
{
  static const struct { const char *action; guint sheet; } sheets[] = {
    { "win.sheet-compare", FP_SHEET_COMPARE }, { "win.sheet-levels", FP_SHEET_LEVELS },
    { "win.sheet-sight", FP_SHEET_SIGHT }, { "win.sheet-sun", FP_SHEET_SUN },
    { "win.sheet-card", FP_SHEET_CARD }, { "win.sheet-schedule", FP_SHEET_SCHEDULE },
    { "win.sheet-linen", FP_SHEET_LINEN }, { "win.sheet-laying", FP_SHEET_LAYING },
    { "win.sheet-capacity", FP_SHEET_CAPACITY },
  };

  for (guint i = 0; i < G_N_ELEMENTS (sheets); i++)
    if (strcmp (action, sheets[i].action) == 0)
      return sheets[i].sheet;
  return on_compare_page (self) ? FP_SHEET_COMPARE : FP_SHEET_ELEVATION;
}

static void
sheet (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpWindow *self = FP_WINDOW (widget);
  const FpSightDraft *sight = fp_board_view_sight (board (self));
  const FpSunDraft *sun = fp_board_view_sun (board (self));
  const FpSheetSeen seen = {
    .sight = sight != NULL ? &sight->look : NULL, .sun = sun != NULL ? &sun->look : NULL,
    .hidden = fp_board_view_hidden (board (self)), .ink = (FpInkChoice) self->remembered.ink,
    .along = fp_board_view_cut (board (self), FP_VIEW_SECTION),
    .across = fp_board_view_cut (board (self), FP_VIEW_ELEVATION),
  };
  GtkWidget *dialog = fp_sheet_dialog_new (GTK_WINDOW (self), self->document, sheet_of (self, name), &seen);

  (void) parameter;
  g_signal_connect_object (dialog, "written", G_CALLBACK (on_written), self, 0);
  gtk_window_present (GTK_WINDOW (dialog));
}

/* --- table ---------------------------------------------------------------- */

void
fp_window_class_add_actions (GtkWidgetClass *c)
{
  gtk_widget_class_install_action (c, "win.undo", NULL, undo);
  gtk_widget_class_install_action (c, "win.redo", NULL, redo);
  gtk_widget_class_install_action (c, "win.remove", NULL, remove_thing);
  gtk_widget_class_install_action (c, "win.choose-nothing", NULL, choose_nothing);
  gtk_widget_class_install_action (c, "win.add", "s", add);
  gtk_widget_class_install_action (c, "win.alternative-new", NULL, alternative_new);
  gtk_widget_class_install_action (c, "win.alternative-rename", NULL, alternative_rename);
  gtk_widget_class_install_action (c, "win.alternative-remove", NULL, alternative_remove);
  gtk_widget_class_install_action (c, "win.compare", NULL, compare);
  gtk_widget_class_install_action (c, "win.show-board", NULL, show_board);
  gtk_widget_class_install_action (c, "win.frame-sanctuary", NULL, look);
  gtk_widget_class_install_action (c, "win.frame-whole", NULL, look);
  gtk_widget_class_install_action (c, "win.zoom-in", NULL, look);
  gtk_widget_class_install_action (c, "win.zoom-out", NULL, look);
  gtk_widget_class_install_action (c, "win.tape", NULL, tape);
  gtk_widget_class_install_action (c, "win.only-plan", NULL, show_only);
  gtk_widget_class_install_action (c, "win.only-elevation", NULL, show_only);
  gtk_widget_class_install_action (c, "win.only-section", NULL, show_only);
  gtk_widget_class_install_action (c, "win.all-three", NULL, show_only);
  gtk_widget_class_install_action (c, "win.escape", NULL, escape);
  gtk_widget_class_install_action (c, "win.add-list", NULL, add_list);
  gtk_widget_class_install_action (c, "win.report", NULL, report);
  gtk_widget_class_install_action (c, "win.schedules", NULL, schedules);
  gtk_widget_class_install_action (c, "win.capacity", NULL, capacity);
  gtk_widget_class_install_action (c, "win.norms", NULL, norms);
  gtk_widget_class_install_action (c, "win.brief", NULL, brief);
  gtk_widget_class_install_action (c, "win.shortcuts", NULL, shortcuts);
  gtk_widget_class_install_action (c, "win.export", NULL, sheet);
  gtk_widget_class_install_action (c, "win.print", NULL, sheet);
  gtk_widget_class_install_action (c, "win.sheet-compare", NULL, sheet);
  gtk_widget_class_install_action (c, "win.sheet-levels", NULL, sheet);
  gtk_widget_class_install_action (c, "win.sheet-sight", NULL, sheet);
  gtk_widget_class_install_action (c, "win.sheet-sun", NULL, sheet);
  gtk_widget_class_install_action (c, "win.sheet-card", NULL, sheet);
  gtk_widget_class_install_action (c, "win.sheet-schedule", NULL, sheet);
  gtk_widget_class_install_action (c, "win.sheet-linen", NULL, sheet);
  gtk_widget_class_install_action (c, "win.sheet-laying", NULL, sheet);
  gtk_widget_class_install_action (c, "win.sheet-capacity", NULL, sheet);
  /* Last: whoever has the focus may want the key first. */
  gtk_widget_class_add_binding_action (c, GDK_KEY_Escape, 0, "win.escape", NULL);
}
