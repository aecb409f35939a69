/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "compat-4-8.h"

/* --- files ---------------------------------------------------------------- */

typedef struct
{
  FpFileAnswer answer;
  gpointer     data;
} FileAsk;

/* A native chooser is not kept alive by being shown: this reference is what does. */
static void
on_file_response (GtkNativeDialog *dialog, int response, FileAsk *ask)
{
  g_autoptr (GFile) file = NULL;

  if (response == GTK_RESPONSE_ACCEPT)
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
  ask->answer (file, ask->data);
  g_free (ask);
  gtk_native_dialog_destroy (dialog);
  g_object_unref (dialog);
}

static void
add_filters (GtkFileChooser *chooser, const FpFileQuestion *q)
{
  GtkFileFilter *ours = gtk_file_filter_new (), *all = gtk_file_filter_new ();

  gtk_file_filter_set_name (ours, q->filter_name);
  gtk_file_filter_add_suffix (ours, q->filter_suffix);
  gtk_file_filter_set_name (all, "All files");
  gtk_file_filter_add_pattern (all, "*");
  gtk_file_chooser_add_filter (chooser, ours);
  gtk_file_chooser_add_filter (chooser, all);
  g_object_unref (ours);
  g_object_unref (all);
}

static void
ask_by_chooser (GtkWindow *parent, const FpFileQuestion *q, FpFileAnswer answer, gpointer data)
{
  GtkFileChooserNative *dialog = gtk_file_chooser_native_new (q->title, parent,
                                                              q->save ? GTK_FILE_CHOOSER_ACTION_SAVE
                                                              : GTK_FILE_CHOOSER_ACTION_OPEN, q->accept, "_Cancel");
  FileAsk *ask = g_new (FileAsk, 1);

  *ask = (FileAsk) { answer, data };
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  if (q->filter_suffix != NULL)
    add_filters (GTK_FILE_CHOOSER (dialog), q);
  if (q->folder != NULL)
    gtk_file_chooser_set_current_folder (GTK_FILE_CHOOSER (dialog), q->folder, NULL);
  if (q->save && q->name != NULL)
    gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog), q->name);
  g_signal_connect (dialog, "response", G_CALLBACK (on_file_response), ask);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

static struct
{
  FpFileAsker ask;
  gpointer    data;
} instead;

void
fp_ask_files_of (FpFileAsker asker, gpointer data)
{
  instead.ask = asker;
  instead.data = data;
}

void
fp_ask_file (GtkWindow *parent, const FpFileQuestion *q, FpFileAnswer answer, gpointer data)
{
  g_autoptr (GFile) file = NULL;

  if (instead.ask == NULL)
    {
      ask_by_chooser (parent, q, answer, data);
      return;
    }
  file = instead.ask (q, instead.data);
  answer (file, data);
}

/* --- questions ------------------------------------------------------------ */

typedef struct
{
  FpChoiceAnswer answer;
  gpointer       data;
} ChoiceAsk;

/* Gone without an answer, as when the window goes over which it stood.  A dialog that goes with its parent is left with the
 * parent's address by the toolkit, and looks there when it is freed, which is later if a key in it was what did all this. */
static void
on_choice_destroy (GtkDialog *dialog, ChoiceAsk *ask)
{
  gtk_window_set_transient_for (GTK_WINDOW (dialog), NULL);
  ask->answer (-1, ask->data);
  g_free (ask);
}

/* The dialog goes before the answer is given, which may be to close its parent. */
static void
on_choice_response (GtkDialog *dialog, int response, ChoiceAsk *ask)
{
  g_signal_handlers_disconnect_by_data (dialog, ask);
  gtk_window_set_transient_for (GTK_WINDOW (dialog), NULL);
  gtk_window_destroy (GTK_WINDOW (dialog));
  ask->answer (response >= 0 ? response : -1, ask->data);
  g_free (ask);
}

void
fp_ask (GtkWindow *parent, const char *heading, const char *body, const char *const *buttons, int destructive,
        FpChoiceAnswer answer, gpointer data)
{
  GtkWidget *dialog = gtk_message_dialog_new (parent, GTK_DIALOG_MODAL | GTK_DIALOG_DESTROY_WITH_PARENT,
                                              GTK_MESSAGE_QUESTION, GTK_BUTTONS_NONE, "%s", heading);
  ChoiceAsk *ask = g_new (ChoiceAsk, 1);
  GtkWidget *usual;
  int n = 0, first_choice;

  *ask = (ChoiceAsk) { answer, data };
  gtk_message_dialog_format_secondary_text (GTK_MESSAGE_DIALOG (dialog), "%s", body);
  for (; buttons[n] != NULL; n++)
    {
      GtkWidget *button = gtk_dialog_add_button (GTK_DIALOG (dialog), buttons[n], n);

      if (n == destructive)
        gtk_widget_add_css_class (button, "destructive-action");
    }
  first_choice = n - 1 == destructive ? 0 : n - 1;
  usual = gtk_dialog_get_widget_for_response (GTK_DIALOG (dialog), first_choice);
  gtk_widget_add_css_class (usual, "suggested-action");
  gtk_dialog_set_default_response (GTK_DIALOG (dialog), first_choice);
  g_signal_connect (dialog, "response", G_CALLBACK (on_choice_response), ask);
  g_signal_connect (dialog, "destroy", G_CALLBACK (on_choice_destroy), ask);
  gtk_window_present (GTK_WINDOW (dialog));
}

/* --- popovers --------------------------------------------------------------- */

/* Left in what is not on the screen any more, the focus would take every key with it. */
static void
take_focus_out_of (GtkWidget *popover)
{
  GtkRoot *root = gtk_widget_get_root (popover);
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  if (focus != NULL && gtk_widget_is_ancestor (focus, popover)
      && !gtk_widget_grab_focus (gtk_widget_get_parent (popover)))
    gtk_root_set_focus (root, NULL);
}

static gboolean
on_any_closed (GSignalInvocationHint *hint, guint n, const GValue *value, gpointer data)
{
  GtkWidget *popover = g_value_get_object (&value[0]);

  (void) hint, (void) n, (void) data;
  if (gtk_widget_get_mapped (popover))
    return TRUE;
  take_focus_out_of (popover);
  gtk_widget_unrealize (popover);
  /* A tip that was waited for in it would ask its surface for the pointer: now it is looked for beneath. */
  if (gtk_widget_get_root (popover) != NULL)
    gtk_widget_trigger_tooltip_query (GTK_WIDGET (gtk_widget_get_root (popover)));
  return TRUE;
}

void
fp_let_popovers_go (void)
{
  g_autoptr (GTypeClass) popovers = g_type_class_ref (GTK_TYPE_POPOVER);

  g_signal_add_emission_hook (g_signal_lookup ("closed", GTK_TYPE_POPOVER), 0, on_any_closed, NULL, NULL);
}

/* --- windows ---------------------------------------------------------------- */

static void
forget_presses (GtkWidget *widget)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++)
    {
      g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);

      if (GTK_IS_GESTURE (controller))
        gtk_event_controller_reset (controller);
    }
  for (GtkWidget *w = gtk_widget_get_first_child (widget); w != NULL; w = gtk_widget_get_next_sibling (w))
    forget_presses (w);
}

static void
on_windows (GListModel *windows, guint at, guint removed, guint added, gpointer data)
{
  (void) removed, (void) data;
  for (guint i = at; i < at + added; i++)
    {
      g_autoptr (GtkWidget) window = g_list_model_get_item (windows, i);

      g_signal_connect (window, "unrealize", G_CALLBACK (forget_presses), NULL);
    }
}

void
fp_let_windows_go (void)
{
  g_signal_connect (gtk_window_get_toplevels (), "items-changed", G_CALLBACK (on_windows), NULL);
}

/* --- focus ------------------------------------------------------------------ */

typedef struct
{
  GtkEventController *controller; /* owns this                                    */
  FpFocusLeft         left;
  gpointer            data;
  GtkRoot            *root;       /* weak; while the toolkit is on its way, or NULL */
} FocusWatch;

static void
end_watch (FocusWatch *watch)
{
  if (watch->root != NULL)
    g_signal_handlers_disconnect_by_data (watch->root, watch);
  g_clear_weak_pointer (&watch->root);
}

static void
on_arrived (GtkRoot *root, GParamSpec *pspec, FocusWatch *watch)
{
  GtkWidget *widget = gtk_event_controller_get_widget (watch->controller);

  (void) pspec;
  end_watch (watch);
  if (gtk_widget_get_root (widget) == root
      && !gtk_event_controller_focus_contains_focus (GTK_EVENT_CONTROLLER_FOCUS (watch->controller)))
    watch->left (watch->data);
}

/* GTK 4.8 emits this in synthesize_focus_change_events(), which goes from the new focus up to the ancestor that both
 * have, and never finds it when the new focus is unparented here.  Either property is notified when that is done. */
static void
on_leave (GtkEventController *controller, FocusWatch *watch)
{
  GtkRoot *root = gtk_widget_get_root (gtk_event_controller_get_widget (controller));

  end_watch (watch);
  if (root == NULL)
    return;
  g_set_weak_pointer (&watch->root, root);
  g_signal_connect (root, "notify::focus-widget", G_CALLBACK (on_arrived), watch);
  g_signal_connect (root, "notify::is-active", G_CALLBACK (on_arrived), watch);
}

static void
focus_watch_free (gpointer data, GClosure *closure)
{
  (void) closure;
  end_watch (data);
  g_free (data);
}

void
fp_when_focus_left (GtkWidget *widget, FpFocusLeft left, gpointer data)
{
  GtkEventController *controller = gtk_event_controller_focus_new ();
  FocusWatch *watch = g_new0 (FocusWatch, 1);

  *watch = (FocusWatch) { controller, left, data, NULL };
  g_signal_connect_data (controller, "leave", G_CALLBACK (on_leave), watch, focus_watch_free, 0);
  gtk_widget_add_controller (widget, controller);
}

static gboolean
has_focus_within (GtkWidget *widget)
{
  GtkRoot *root = gtk_widget_get_root (widget);
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  return focus != NULL && (focus == widget || gtk_widget_is_ancestor (focus, widget));
}

void
fp_show_or_hide (GtkWidget *widget, gboolean shown, GtkWidget *next)
{
  if (!shown && has_focus_within (widget) && !gtk_widget_grab_focus (next))
    gtk_root_set_focus (gtk_widget_get_root (widget), NULL);
  gtk_widget_set_visible (widget, shown);
}

/* --- lists with columns --------------------------------------------------- */

void
fp_column_view_scroll_to (GtkWidget *view, guint at)
{
  GtkWidget *list = gtk_widget_get_last_child (view);

  while (list != NULL && !GTK_IS_LIST_VIEW (list))
    list = gtk_widget_get_prev_sibling (list);
  if (list != NULL && at != GTK_INVALID_LIST_POSITION)
    gtk_widget_activate_action (list, "list.scroll-to-item", "u", at);
}

GtkWidget *
fp_list_row_of (GtkWidget *cell)
{
  GtkWidget *row = cell;

  while (row != NULL && gtk_widget_get_parent (row) != NULL && !GTK_IS_LIST_VIEW (gtk_widget_get_parent (row)))
    row = gtk_widget_get_parent (row);
  return row;
}

static void
name_row (GtkWidget *cell)
{
  GtkWidget *row = fp_list_row_of (cell);
  const char *name = g_object_get_data (G_OBJECT (cell), "row-name");

  if (row != cell && GTK_IS_LIST_VIEW (gtk_widget_get_parent (row)) && name != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

void
fp_name_list_row (GtkWidget *cell, const char *name)
{
  if (g_object_get_data (G_OBJECT (cell), "row-name") == NULL)
    g_signal_connect (cell, "map", G_CALLBACK (name_row), NULL);
  g_object_set_data_full (G_OBJECT (cell), "row-name", g_strdup (name), g_free);
  name_row (cell);
}

/* --- lists that drop down --------------------------------------------------- */

#define DROPPED_HIGH 620 /* a screen of 768 less bars and title */

static GtkWidget *
find_scrolled (GtkWidget *top)
{
  GtkWidget *found = GTK_IS_SCROLLED_WINDOW (top) ? top : NULL;

  for (GtkWidget *child = gtk_widget_get_first_child (top); child != NULL && found == NULL; child = gtk_widget_get_next_sibling (child))
    found = find_scrolled (child);
  return found;
}

void
fp_drop_down_show_all (GtkWidget *drop_down)
{
  GtkWidget *scrolled = find_scrolled (drop_down);

  if (scrolled != NULL)
    gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scrolled), DROPPED_HIGH);
}

/* --- names of buttons ----------------------------------------------------- */

void
fp_name_buttons (GtkWidget *top)
{
  if (GTK_IS_BUTTON (top) && gtk_button_get_use_underline (GTK_BUTTON (top)))
    gtk_accessible_reset_property (GTK_ACCESSIBLE (top), GTK_ACCESSIBLE_PROPERTY_LABEL);
  for (GtkWidget *child = gtk_widget_get_first_child (top); child != NULL; child = gtk_widget_get_next_sibling (child))
    fp_name_buttons (child);
}

/* --- presses --------------------------------------------------------------- */

gboolean
fp_was_let_go (GtkEventController *gesture)
{
  const GdkModifierType any = GDK_BUTTON1_MASK | GDK_BUTTON2_MASK | GDK_BUTTON3_MASK;
  GdkEvent *event = gtk_event_controller_get_current_event (gesture);

  return event != NULL && gdk_event_get_event_type (event) == GDK_MOTION_NOTIFY
         && (gdk_event_get_modifier_state (event) & any) == 0;
}
