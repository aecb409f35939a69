/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "report-window.h"

#include "compat-4-8.h"
#include "printing-text.h"
#include "text-find.h"
#include "text-saving.h"

#include "footpace/review.h"

#include <string.h>

struct _FpReportWindow
{
  GtkWindow   parent_instance;
  FpDocument *document;
  FpFindings *shown;        /* owned; what the text was made of               */

  GtkWidget  *stack, *text, *find_bar, *find_entry, *find_count, *find_button, *state, *spinner, *subtitle;
  FpTextFind *find;
};

G_DEFINE_FINAL_TYPE (FpReportWindow, fp_report_window, GTK_TYPE_WINDOW)

static GtkTextBuffer *
buffer (FpReportWindow *self)
{
  return gtk_text_view_get_buffer (GTK_TEXT_VIEW (self->text));
}

/* --- the text ------------------------------------------------------------- */

/* A heading of the report is a line above a rule of '=' or '-'. */
static gboolean
is_rule (const char *line)
{
  return (*line == '=' || *line == '-') && strspn (line, *line == '=' ? "=" : "-") == strlen (line);
}

static void
fill (GtkTextBuffer *text, const char *report)
{
  g_auto (GStrv) lines = g_strsplit (report, "\n", -1);
  GtkTextIter end;

  gtk_text_buffer_set_text (text, "", 0);
  for (guint i = 0; lines[i] != NULL; i++)
    {
      gboolean heading = lines[i + 1] != NULL && *lines[i] != '\0' && is_rule (lines[i + 1]);

      gtk_text_buffer_get_end_iter (text, &end);
      gtk_text_buffer_insert_with_tags_by_name (text, &end, lines[i], -1,
                                                heading ? *lines[i + 1] == '=' ? "title" : "heading" : NULL, NULL);
      if (lines[i + 1] != NULL)
        gtk_text_buffer_insert (text, &end, "\n", 1);
      i += heading ? 1 : 0;
    }
}

static void
show_state (FpReportWindow *self)
{
  gboolean busy = fp_document_is_checking (self->document);
  const char *alternative = fp_alternative_name (fp_project_alternative (fp_document_project (self->document),
                                                                         fp_document_alternative (self->document)));

  gtk_stack_set_visible_child_name (GTK_STACK (self->stack), self->shown != NULL ? "report" : "busy");
  gtk_label_set_text (GTK_LABEL (self->state), busy ? "Being measured anew …" : "");
  gtk_spinner_set_spinning (GTK_SPINNER (self->spinner), busy);
  gtk_label_set_text (GTK_LABEL (self->subtitle), alternative);
}

/* Where a person reads stays in view when the report is made anew. */
static void
show (FpReportWindow *self)
{
  FpFindings *sighted = fp_document_sighted (self->document);
  GtkAdjustment *adjustment = gtk_scrollable_get_vadjustment (GTK_SCROLLABLE (self->text));
  double at = gtk_adjustment_get_value (adjustment);
  g_autofree char *report = NULL;

  if (sighted != NULL && sighted != self->shown)
    {
      g_clear_pointer (&self->shown, fp_findings_unref);
      self->shown = fp_findings_ref (sighted);
      report = fp_report_text (sighted, TRUE);
      fill (buffer (self), report);
      fp_text_find_again (self->find);
      gtk_adjustment_set_value (adjustment, at);
    }
  else if (sighted == NULL)
    g_clear_pointer (&self->shown, fp_findings_unref); /* of another alternative */
  show_state (self);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "report.copy", self->shown != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "report.save-text", self->shown != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "report.save-data", self->shown != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "report.print", self->shown != NULL);
}

/* --- what is done with it ------------------------------------------------- */

static void
tell (FpReportWindow *self, const char *text, gboolean wrong)
{
  gtk_label_set_text (GTK_LABEL (self->state), text);
  if (wrong)
    gtk_widget_add_css_class (self->state, "error");
  else
    gtk_widget_remove_css_class (self->state, "error");
}

/* What is selected, or all of it. */
static void
copy (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpReportWindow *self = FP_REPORT_WINDOW (widget);
  g_autofree char *report = NULL;

  (void) name, (void) parameter;
  if (gtk_text_buffer_get_has_selection (buffer (self)))
    gtk_text_buffer_copy_clipboard (buffer (self), gtk_widget_get_clipboard (widget));
  else
    {
      report = fp_report_text (self->shown, TRUE);
      gdk_clipboard_set_text (gtk_widget_get_clipboard (widget), report);
    }
  tell (self, "Copied", FALSE);
}

static void
tell_window (GtkWindow *window, const char *text, gboolean wrong)
{
  tell (FP_REPORT_WINDOW (window), text, wrong);
}

static char *
make_data (GtkWindow *window)
{
  FpReportWindow *self = FP_REPORT_WINDOW (window);

  return self->shown != NULL ? fp_report_json (self->shown) : NULL;
}

static char *
make_text (GtkWindow *window)
{
  FpReportWindow *self = FP_REPORT_WINDOW (window);

  return self->shown != NULL ? fp_report_text (self->shown, TRUE) : NULL;
}

static void
save_as (GtkWidget *widget, const char *action, GVariant *parameter)
{
  static const FpTextSaving data = { "Save Report", "report", "json", "JSON data", make_data, tell_window };
  static const FpTextSaving text = { "Save Report", "report", "txt", "Text", make_text, tell_window };

  (void) parameter;
  fp_save_text (GTK_WINDOW (widget), FP_REPORT_WINDOW (widget)->document, strcmp (action, "report.save-data") == 0 ? &data : &text);
}

static void
on_printed (gboolean printed, const GError *error, gpointer data)
{
  g_autoptr (FpReportWindow) self = data;

  (void) printed;
  if (error != NULL)
    tell (self, error->message, TRUE);
}

static void
print (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpReportWindow *self = FP_REPORT_WINDOW (widget);
  g_autofree char *title = fp_document_name (self->document), *report = fp_report_text (self->shown, TRUE);
  gboolean imperial = fp_project_brief (fp_document_project (self->document))->units == FP_UNITS_IMPERIAL;

  (void) name, (void) parameter;
  fp_print_text (GTK_WINDOW (self), report, title, imperial ? FP_PAPER_LETTER : FP_PAPER_A4, on_printed,
                 g_object_ref (self));
}

/* --- searching ------------------------------------------------------------ */

static void
show_count (FpReportWindow *self)
{
  g_autofree char *text = fp_text_find_said (self->find);

  gtk_label_set_text (GTK_LABEL (self->find_count), text);
}

static void
on_find_changed (FpReportWindow *self)
{
  fp_text_find_look (self->find, gtk_editable_get_text (GTK_EDITABLE (self->find_entry)));
  show_count (self);
}

static void
on_find_next (FpReportWindow *self)
{
  fp_text_find_step (self->find, TRUE);
  show_count (self);
}

static void
on_find_previous (FpReportWindow *self)
{
  fp_text_find_step (self->find, FALSE);
  show_count (self);
}

/* The keys go to the text at once, not when the bar has slid away. */
static void
on_find_mode (FpReportWindow *self)
{
  if (!gtk_search_bar_get_search_mode (GTK_SEARCH_BAR (self->find_bar)))
    gtk_widget_grab_focus (self->text);
}

static void
find (GtkWidget *widget, const char *name, GVariant *parameter)
{
  FpReportWindow *self = FP_REPORT_WINDOW (widget);

  (void) name, (void) parameter;
  gtk_search_bar_set_search_mode (GTK_SEARCH_BAR (self->find_bar), TRUE);
  gtk_widget_grab_focus (self->find_entry);
}

static void
find_again (GtkWidget *widget, const char *name, GVariant *parameter)
{
  (void) parameter;
  if (strcmp (name, "report.find-next") == 0)
    on_find_next (FP_REPORT_WINDOW (widget));
  else
    on_find_previous (FP_REPORT_WINDOW (widget));
}

/* --- the window ----------------------------------------------------------- */

static void
fp_report_window_dispose (GObject *object)
{
  FpReportWindow *self = FP_REPORT_WINDOW (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->shown, fp_findings_unref);
  g_clear_pointer (&self->find, fp_text_find_free);
  G_OBJECT_CLASS (fp_report_window_parent_class)->dispose (object);
}

#define BIND(name) gtk_widget_class_bind_template_child (widget_class, FpReportWindow, name)

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class, "/org/footpace/Footpace/report-window.ui");
  BIND (stack);
  BIND (text);
  BIND (find_bar);
  BIND (find_entry);
  BIND (find_count);
  BIND (find_button);
  BIND (state);
  BIND (spinner);
  BIND (subtitle);
  gtk_widget_class_bind_template_callback (widget_class, on_find_changed);
  gtk_widget_class_bind_template_callback (widget_class, on_find_next);
  gtk_widget_class_bind_template_callback (widget_class, on_find_previous);
}

#undef BIND

static void
fp_report_window_class_init (FpReportWindowClass *klass)
{
  GtkWidgetClass *c = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fp_report_window_dispose;
  bind_template (c);
  gtk_widget_class_install_action (c, "report.copy", NULL, copy);
  gtk_widget_class_install_action (c, "report.save-text", NULL, save_as);
  gtk_widget_class_install_action (c, "report.save-data", NULL, save_as);
  gtk_widget_class_install_action (c, "report.print", NULL, print);
  gtk_widget_class_install_action (c, "report.find", NULL, find);
  gtk_widget_class_install_action (c, "report.find-next", NULL, find_again);
  gtk_widget_class_install_action (c, "report.find-previous", NULL, find_again);
  gtk_widget_class_add_binding_action (c, GDK_KEY_f, GDK_CONTROL_MASK, "report.find", NULL);
  gtk_widget_class_add_binding_action (c, GDK_KEY_g, GDK_CONTROL_MASK, "report.find-next", NULL);
  gtk_widget_class_add_binding_action (c, GDK_KEY_g, GDK_CONTROL_MASK | GDK_SHIFT_MASK, "report.find-previous", NULL);
  gtk_widget_class_add_binding_action (c, GDK_KEY_s, GDK_CONTROL_MASK, "report.save-text", NULL);
  gtk_widget_class_add_binding_action (c, GDK_KEY_p, GDK_CONTROL_MASK, "report.print", NULL);
  gtk_widget_class_add_binding_action (c, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
add_tags (GtkTextBuffer *text)
{
  gtk_text_buffer_create_tag (text, "title", "weight", PANGO_WEIGHT_BOLD, "scale", 1.5, NULL);
  gtk_text_buffer_create_tag (text, "heading", "weight", PANGO_WEIGHT_BOLD, "scale", 1.15, NULL);
}

static void
fp_report_window_init (FpReportWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fp_name_buttons (GTK_WIDGET (self));
  add_tags (buffer (self));
  self->find = fp_text_find_new (GTK_TEXT_VIEW (self->text));
  gtk_search_bar_connect_entry (GTK_SEARCH_BAR (self->find_bar), GTK_EDITABLE (self->find_entry));
  g_object_bind_property (self->find_button, "active", self->find_bar, "search-mode-enabled",
                          G_BINDING_BIDIRECTIONAL | G_BINDING_SYNC_CREATE);
  g_signal_connect_swapped (self->find_bar, "notify::search-mode-enabled", G_CALLBACK (on_find_mode), self);
}

GtkWidget *
fp_report_window_new (GtkWindow *parent, FpDocument *document)
{
  FpReportWindow *self = g_object_new (FP_TYPE_REPORT_WINDOW, "transient-for", parent, "destroy-with-parent", TRUE,
                                       NULL);

  self->document = g_object_ref (document);
  g_signal_connect_swapped (document, "findings", G_CALLBACK (show), self);
  g_signal_connect_swapped (document, "scene", G_CALLBACK (show_state), self);
  show (self);
  gtk_widget_grab_focus (self->text);
  return GTK_WIDGET (self);
}
