/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window-private.h"

#include "compat-4-8.h"
#include "late-menu.h"
#include "show-list.h"

G_DEFINE_FINAL_TYPE (FpWindow, fp_window, GTK_TYPE_APPLICATION_WINDOW)

FpDocument *
fp_window_document (FpWindow *self)
{
  return self->document;
}

/* --- showing the document ------------------------------------------------- */

static void
show_title (FpWindow *self)
{
  g_autofree char *name = NULL, *title = NULL;
  const FpProject *project;

  if (self->document == NULL)
    {
      gtk_label_set_text (GTK_LABEL (self->title), "Footpace");
      gtk_widget_hide (self->subtitle);
      gtk_window_set_title (GTK_WINDOW (self), "Footpace");
      return;
    }
  project = fp_document_project (self->document);
  name = fp_document_name (self->document);
  title = g_strdup_printf ("%s%s", fp_document_is_modified (self->document) ? "• " : "", name);
  gtk_label_set_text (GTK_LABEL (self->title), title);
  gtk_label_set_text (GTK_LABEL (self->subtitle),
                      fp_alternative_name (fp_project_alternative (project, fp_document_alternative (self->document))));
  gtk_widget_show (self->subtitle);
  gtk_window_set_title (GTK_WINDOW (self), title);
}

static void
on_scene (FpWindow *self)
{
  fp_window_forget_remedy (self);
  if (fp_document_is_previewing (self->document))
    return;
  fp_window_tell_celebration (self);
  show_title (self);
  fp_window_update_actions (self);
}

static void
on_chosen (FpWindow *self)
{
  gboolean thing = self->document != NULL && fp_document_chosen (self->document) != NULL;

  fp_window_stop_pointing (self);
  /* Who chooses in the list goes on in the list. */
  if (!thing || !fp_things_list_is_choosing (FP_THINGS_LIST (self->things)))
    fp_window_show_thing (self, thing);
  if (self->document != NULL)
    fp_window_update_actions (self);
}

static void
on_state (FpWindow *self)
{
  fp_window_watch_file (self);
  show_title (self);
  fp_window_update_actions (self);
}

static void
on_thing_activated (FpWindow *self)
{
  fp_window_show_thing (self, TRUE);
  fp_inspector_focus (FP_INSPECTOR (self->inspector));
}

void
fp_window_set_board (FpWindow *self, FpDocument *document, FpDraft *begun)
{
  fp_window_end_beginning (self);
  fp_window_keep_off (self);
  fp_window_drop_remedies (self);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  fp_board_view_set_begun (FP_BOARD_VIEW (self->board), document, begun);
  fp_window_recall_board (self, FALSE);
  gtk_stack_set_visible_child_name (GTK_STACK (self->pages), document != NULL ? "board" : "start");
  fp_alternatives_strip_set_document (FP_ALTERNATIVES_STRIP (self->alternatives), document);
  if (document != NULL)
    gtk_widget_grab_focus (self->board);
  show_title (self);
  fp_window_update_actions (self);
}

void
fp_window_set_beside (FpWindow *self)
{
  FpDocument *document = self->document;

  fp_inspector_set_document (FP_INSPECTOR (self->inspector), document);
  fp_things_list_set_document (FP_THINGS_LIST (self->things), document);
  fp_things_list_set_document (FP_THINGS_LIST (self->wide_things), document);
  fp_findings_list_set_document (FP_FINDINGS_LIST (self->findings), document);
  if (self->compare_page != NULL)
    fp_compare_page_set_document (FP_COMPARE_PAGE (self->compare_page), document);
  if (document != NULL)
    {
      g_signal_connect_swapped (document, "scene", G_CALLBACK (on_scene), self);
      g_signal_connect_swapped (document, "chosen", G_CALLBACK (on_chosen), self);
      g_signal_connect_swapped (document, "state", G_CALLBACK (on_state), self);
      g_signal_connect_swapped (document, "findings", G_CALLBACK (fp_window_look_again), self);
      fp_window_keep (self);
    }
  on_chosen (self);
  on_state (self);
}

void
fp_window_set_document (FpWindow *self, FpDocument *document)
{
  fp_window_set_board (self, document, NULL);
  fp_window_set_beside (self);
}

static void
make_compare_page (FpWindow *self)
{
  self->compare_page = fp_compare_page_new ();
  gtk_widget_set_hexpand (self->compare_page, TRUE);
  gtk_box_append (GTK_BOX (self->compare), self->compare_page);
  fp_compare_page_set_document (FP_COMPARE_PAGE (self->compare_page), self->document);
}

static void
on_page (FpWindow *self)
{
  const gboolean compares = g_strcmp0 (gtk_stack_get_visible_child_name (GTK_STACK (self->pages)), "compare") == 0;

  if (compares && self->compare_page == NULL)
    make_compare_page (self);
  if (self->compare_page != NULL)
    fp_compare_page_set_shown (FP_COMPARE_PAGE (self->compare_page), compares);
}

/* --- the window ----------------------------------------------------------- */

static gboolean
fp_window_close_request (GtkWindow *window)
{
  FpWindow *self = FP_WINDOW (window);

  if (!fp_window_may_close (self))
    return TRUE;
  fp_window_remember (self);
  return GTK_WINDOW_CLASS (fp_window_parent_class)->close_request (window);
}

static void
fp_window_dispose (GObject *object)
{
  FpWindow *self = FP_WINDOW (object);

  fp_window_end_beginning (self);
  fp_window_forget_soon (self);
  fp_window_keep_off (self);
  fp_window_drop_remedies (self);
  fp_window_put_notice_away (self);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (fp_window_parent_class)->dispose (object);
}

#define BIND(name) gtk_widget_class_bind_template_child (widget_class, FpWindow, name)

static void
bind_children (GtkWidgetClass *widget_class)
{
  BIND (title);
  BIND (subtitle);
  BIND (pages);
  BIND (board);
  BIND (side);
  BIND (things_or_thing);
  BIND (things);
  BIND (wide_list);
  BIND (wide_things);
  BIND (wide_button);
  BIND (board_paned);
  BIND (inspector);
  BIND (findings);
  BIND (alternatives);
  BIND (compare);
  BIND (notice);
  BIND (notice_box);
  BIND (notice_icon);
  BIND (notice_text);
  BIND (notice_folder);
  BIND (side_paned);
  BIND (readout);
  BIND (undo_button);
  BIND (redo_button);
  BIND (add_button);
  BIND (arrange_button);
  BIND (save_button);
  BIND (compare_button);
  BIND (add_popover);
  BIND (add_find);
  BIND (add_list);
  BIND (main_button);
  BIND (order_button);
  BIND (main_menu);
  BIND (arrange_menu);
  BIND (order_menu);
}

#undef BIND

static void
ensure_types (void)
{
  g_type_ensure (FP_TYPE_BOARD_VIEW);
  g_type_ensure (FP_TYPE_INSPECTOR);
  g_type_ensure (FP_TYPE_THINGS_LIST);
  g_type_ensure (FP_TYPE_FINDINGS_LIST);
  g_type_ensure (FP_TYPE_ALTERNATIVES_STRIP);
  g_type_ensure (FP_TYPE_SHOW_LIST);
}

static void
fp_window_class_init (FpWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  ensure_types ();
  G_OBJECT_CLASS (klass)->dispose = fp_window_dispose;
  GTK_WINDOW_CLASS (klass)->close_request = fp_window_close_request;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/footpace/Footpace/window.ui");
  bind_children (widget_class);
  fp_window_class_bind_notice (widget_class);
  fp_window_class_bind_remedy (widget_class);
  fp_window_class_add_settle (widget_class);
  fp_window_class_bind_show (widget_class);
  fp_window_class_bind_sections (widget_class);
  gtk_widget_class_bind_template_callback (widget_class, on_thing_activated);
  gtk_widget_class_bind_template_callback (widget_class, on_page);
  fp_window_class_add_actions (widget_class);
  fp_window_class_add_list_actions (widget_class);
  fp_window_class_add_survey_actions (widget_class);
  fp_window_class_add_pew_action (widget_class);
  fp_window_class_add_arrange_actions (widget_class);
  fp_window_class_add_furnish_actions (widget_class);
  fp_window_class_add_file_actions (widget_class);
  fp_window_class_add_sight (widget_class);
  fp_window_class_add_sun (widget_class);
  fp_window_class_add_setting (widget_class);
}

static void
fp_window_init (FpWindow *self)
{
  g_autoptr (GtkWindowGroup) own = gtk_window_group_new ();

  /* A question over one window does not stop the hands of another. */
  gtk_window_group_add_window (own, GTK_WINDOW (self));
  gtk_widget_init_template (GTK_WIDGET (self));
  fp_name_buttons (GTK_WIDGET (self));
  g_object_bind_property (self->board, "readout", self->readout, "label", G_BINDING_SYNC_CREATE);
  fp_late_menu_set (self->main_button, self->main_menu);
  fp_late_menu_set (self->arrange_button, self->arrange_menu);
  fp_late_menu_set (self->order_button, self->order_menu);
  fp_window_add_add_list (self);
  fp_window_add_recent (self);
  fp_window_arrange (self);
  fp_window_add_show (self);
  fp_window_add_setting (self);
  fp_window_add_sections (self);
  fp_window_add_pew (self);
  fp_window_set_document (self, NULL);
}

GtkWidget *
fp_window_new (GtkApplication *application)
{
  return g_object_new (FP_TYPE_WINDOW, "application", application, NULL);
}
