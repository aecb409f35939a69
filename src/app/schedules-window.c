/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "schedules-window.h"

#include "bill-line.h"
#include "compat-4-8.h"
#include "text-saving.h"
#include "works-form.h"
#include "undo-keys.h"

#include <math.h>
#include <string.h>

#define LULL 120 /* ms: while a thing is dragged the lines are not made anew at every step */

struct _FpSchedulesWindow
{
  GtkWindow   parent_instance;
  FpDocument *document;
  FpBill     *bill;
  GListStore *lines;
  GtkSingleSelection *chosen;
  guint       later;    /* source of the next making; 0: none                */

  GtkWidget  *list, *heading, *work, *pages, *weights, *works, *rate_label, *rate, *set_rate, *closing, *state, *subtitle;
  GtkWidget  *form;
};

G_DEFINE_FINAL_TYPE (FpSchedulesWindow, fp_schedules_window, GTK_TYPE_WINDOW)

static const FpProject *
project_of (FpSchedulesWindow *self)
{
  return fp_document_project (self->document);
}

static void
tell (FpSchedulesWindow *self, const char *text, gboolean wrong)
{
  gtk_label_set_text (GTK_LABEL (self->state), text);
  gtk_widget_set_tooltip_text (self->state, text);
  if (wrong)
    gtk_widget_add_css_class (self->state, "error");
  else
    gtk_widget_remove_css_class (self->state, "error");
}

/* --- what is shown ---------------------------------------------------------- */

/* In the order of the choices in schedules-window.ui: what is to be done, each work alone, everything. */
static guint
works_chosen (FpSchedulesWindow *self)
{
  const guint chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->work));

  if (chosen == 0)
    return ((1u << FP_N_WORKS) - 1) & ~(1u << FP_WORK_KEPT);
  return chosen <= FP_N_WORKS ? 1u << (chosen - 1) : 0;
}

static FpScheduleChoice
choice_of (FpSchedulesWindow *self)
{
  const guint heading = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->heading));

  return (FpScheduleChoice) {
    .headings = heading == 0 || heading > FP_N_HEADINGS ? 0 : 1u << (heading - 1), .works = works_chosen (self), .weights = TRUE,
  };
}

static gboolean
shows_weights (FpSchedulesWindow *self)
{
  return gtk_drop_down_get_selected (GTK_DROP_DOWN (self->heading)) > FP_N_HEADINGS;
}

static FpBillLine *
line_chosen (FpSchedulesWindow *self)
{
  return gtk_single_selection_get_selected_item (self->chosen);
}

static void
show_rate (FpSchedulesWindow *self)
{
  FpBillLine *line = line_chosen (self);
  const FpBillRow *row = line != NULL ? fp_bill_line_row (line) : NULL;
  const gboolean may = row != NULL && row->work != FP_WORK_KEPT;
  const FpUnits units = row == NULL || isnan (row->rate) ? fp_project_brief (project_of (self))->units : row->per;
  g_autofree char *label = !may ? g_strdup ("Choose a line that is new, moved or taken out to type its rate")
                           : g_strdup_printf ("Rate of “%s” of each “%s”, per %s", row->what,
                                              fp_item_kind (row->placed->item)->label,
                                              row->type == FP_AMOUNT_NUMBER ? "one" : fp_amount_unit_sign (row->type, units));
  g_autofree char *rate = may && !isnan (row->rate) ? fp_number_format (row->rate) : g_strdup ("");

  gtk_label_set_text (GTK_LABEL (self->rate_label), label);
  gtk_editable_set_text (GTK_EDITABLE (self->rate), rate);
  gtk_widget_set_sensitive (self->rate, may);
  gtk_widget_set_sensitive (self->set_rate, may);
}

static void
choose_again (FpSchedulesWindow *self, const char *key)
{
  const guint n = g_list_model_get_n_items (G_LIST_MODEL (self->lines));

  for (guint i = 0; key != NULL && i < n; i++)
    {
      g_autoptr (FpBillLine) line = g_list_model_get_item (G_LIST_MODEL (self->lines), i);
      g_autofree char *other = fp_bill_line_key (line);

      if (strcmp (key, other) != 0)
        continue;
      gtk_single_selection_set_selected (self->chosen, i);
      return;
    }
}

/* By work first, as on paper. */
static void
fill_lines (FpSchedulesWindow *self)
{
  const FpScheduleChoice choice = choice_of (self);
  const GArray *rows = fp_bill_rows (self->bill);
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_object_unref);
  FpBillLine *before = line_chosen (self);
  g_autofree char *key = before != NULL ? fp_bill_line_key (before) : NULL;

  for (guint work = 0; work < FP_N_WORKS; work++)
    for (guint i = 0; i < rows->len; i++)
      {
        const FpBillRow *row = &g_array_index (rows, FpBillRow, i);

        if (row->work == (FpWork) work && fp_schedule_chooses (&choice, row))
          g_ptr_array_add (lines, fp_bill_line_new (self->bill, i));
      }
  g_list_store_splice (self->lines, 0, g_list_model_get_n_items (G_LIST_MODEL (self->lines)), lines->pdata, lines->len);
  fp_bill_line_show_columns (GTK_COLUMN_VIEW (self->list), G_LIST_MODEL (self->lines));
  choose_again (self, key);
}

static void
fill_weights (FpSchedulesWindow *self)
{
  const FpWorks *works = fp_project_works (project_of (self));
  g_autoptr (GArray) bearings = fp_scene_bearings (fp_bill_scene (self->bill));
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < bearings->len; i++)
    {
      g_autofree char *line = fp_bearing_text (&g_array_index (bearings, FpBearing, i), works,
                                               fp_project_brief (project_of (self))->units);
      g_string_append_printf (text, "%s\n\n", line);
    }
  if (bearings->len == 0)
    g_string_append (text, "Nothing here is of a material that is weighed.\n\n");
  if (!(works->bears > 0))
    g_string_append (text, "What the floor is rated for was not said: see “The floor bears” on the right.\n\n");
  g_string_append (text, fp_weights_caution);
  gtk_label_set_text (GTK_LABEL (self->weights), text->str);
  g_string_free (text, TRUE);
}

static void
show (FpSchedulesWindow *self)
{
  const FpScheduleChoice choice = choice_of (self);
  g_autofree char *closing = NULL;

  fill_lines (self);
  fill_weights (self);
  show_rate (self);
  closing = fp_schedules_closing (self->bill, &choice);
  gtk_label_set_text (GTK_LABEL (self->closing), closing);
  gtk_stack_set_visible_child_name (GTK_STACK (self->pages), shows_weights (self) ? "weights"
                                    : g_list_model_get_n_items (G_LIST_MODEL (self->lines)) > 0 ? "lines" : "none");
  gtk_label_set_text (GTK_LABEL (self->subtitle), fp_alternative_name (fp_project_alternative (project_of (self),
                                                                       fp_document_alternative (self->document))));
}

static void
make (FpSchedulesWindow *self)
{
  g_clear_pointer (&self->bill, fp_bill_unref);
  self->bill = fp_bill_new (fp_document_scene (self->document));
  show (self);
  fp_works_form_show (FP_WORKS_FORM (self->form));
}

static gboolean
on_lull (gpointer data)
{
  FpSchedulesWindow *self = data;

  self->later = 0;
  make (self);
  return G_SOURCE_REMOVE;
}

static void
on_scene (FpSchedulesWindow *self)
{
  g_clear_handle_id (&self->later, g_source_remove);
  self->later = g_timeout_add (LULL, on_lull, self);
}

static void
on_choice (FpSchedulesWindow *self)
{
  if (self->bill != NULL)
    show (self);
}

/* A line of the board's alternative shows what it is of. */
static void
on_line (FpSchedulesWindow *self)
{
  if (self->bill != NULL)
    show_rate (self);
}

static void
on_activated (FpSchedulesWindow *self, guint position)
{
  g_autoptr (FpBillLine) line = g_list_model_get_item (G_LIST_MODEL (self->lines), position);

  fp_document_choose (self->document, fp_item_id (fp_bill_line_row (line)->placed->item));
  gtk_widget_grab_focus (self->rate);
}

/* --- rates --------------------------------------------------------------------- */

/* The rates without that of the line, and with a new one where there is one. */
static GArray *
rates_with (const FpWorks *works, const FpBillRow *row, const double *rate, FpUnits units)
{
  const char *kind = fp_item_kind (row->placed->item)->id;
  const FpRate *old = fp_works_rate (works, kind, row->what, row->type);
  GArray *rates = g_array_new (FALSE, FALSE, sizeof (FpRate));

  for (guint i = 0; i < works->n_rates; i++)
    if (&works->rate[i] != old)
      g_array_append_val (rates, works->rate[i]);
  if (rate != NULL)
    {
      const FpRate one = { kind, row->what, row->type, old != NULL ? old->units : units, *rate };
      g_array_append_val (rates, one);
    }
  return rates;
}

static gboolean
set_rate (FpSchedulesWindow *self, const FpBillRow *row, const char *text, GError **error)
{
  FpWorks works = *fp_project_works (project_of (self));
  g_autoptr (GArray) rates = NULL;
  g_autofree char *label = g_strdup_printf ("Rate of %s", row->what);
  FpProject *next;
  double rate;

  if (*text != '\0' && !fp_number_parse (text, &rate, error))
    return FALSE;
  rates = rates_with (&works, row, *text != '\0' ? &rate : NULL, fp_project_brief (project_of (self))->units);
  works.rate = (const FpRate *) (gpointer) rates->data;
  works.n_rates = rates->len;
  next = fp_project_with_works (project_of (self), &works, error);
  return next != NULL && fp_document_edit (self->document, next, label, NULL);
}

static void
on_rate (FpSchedulesWindow *self)
{
  FpBillLine *line = line_chosen (self);
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->rate))));
  g_autoptr (GError) error = NULL;

  if (line == NULL)
    return;
  if (!set_rate (self, fp_bill_line_row (line), text, &error))
    {
      tell (self, error != NULL ? error->message : "", TRUE);
      return;
    }
  tell (self, "", FALSE);
  make (self);
}

/* --- files and sheets ------------------------------------------------------------ */

static void
tell_window (GtkWindow *window, const char *text, gboolean wrong)
{
  tell (FP_SCHEDULES_WINDOW (window), text, wrong);
}

static char *
make_table (GtkWindow *window)
{
  FpSchedulesWindow *self = FP_SCHEDULES_WINDOW (window);
  const FpScheduleChoice choice = choice_of (self);

  return self->bill != NULL ? fp_schedules_csv (self->bill, &choice) : NULL;
}

static char *
make_text (GtkWindow *window)
{
  FpSchedulesWindow *self = FP_SCHEDULES_WINDOW (window);
  const FpScheduleChoice choice = choice_of (self);

  return self->bill != NULL ? fp_schedules_text (self->bill, &choice) : NULL;
}

static void
save_as (GtkWidget *widget, const char *action, GVariant *parameter)
{
  static const FpTextSaving table = { "Save Schedules", "schedules", "csv", "Table (CSV)", make_table, tell_window };
  static const FpTextSaving text = { "Save Schedules", "schedules", "txt", "Text", make_text, tell_window };

  (void) parameter;
  fp_save_text (GTK_WINDOW (widget), FP_SCHEDULES_WINDOW (widget)->document, strcmp (action, "schedules.save-table") == 0 ? &table : &text);
}

static void
sheet (GtkWidget *widget, const char *action, GVariant *parameter)
{
  GtkWindow *parent = gtk_window_get_transient_for (GTK_WINDOW (widget));

  (void) parameter;
  if (parent != NULL)
    gtk_widget_activate_action (GTK_WIDGET (parent), strcmp (action, "schedules.linen") == 0 ? "win.sheet-linen"
                                                     : strcmp (action, "schedules.laying") == 0 ? "win.sheet-laying"
                                                                                                : "win.sheet-schedule", NULL);
}

/* What is typed here is an edit like any other. */
static void
step (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FpSchedulesWindow *self = FP_SCHEDULES_WINDOW (widget);

  (void) parameter;
  if (strcmp (action, "schedules.undo") == 0)
    fp_document_undo (self->document);
  else
    fp_document_redo (self->document);
}

static void
save_project (GtkWidget *widget, const char *action, GVariant *parameter)
{
  GtkWindow *parent = gtk_window_get_transient_for (GTK_WINDOW (widget));

  (void) action, (void) parameter;
  if (parent != NULL)
    gtk_widget_activate_action (GTK_WIDGET (parent), "win.save", NULL);
}

/* --- the window ------------------------------------------------------------------ */

static void
fp_schedules_window_dispose (GObject *object)
{
  FpSchedulesWindow *self = FP_SCHEDULES_WINDOW (object);

  g_clear_handle_id (&self->later, g_source_remove);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  if (self->chosen != NULL)
    g_signal_handlers_disconnect_by_data (self->chosen, self);
  g_clear_object (&self->chosen);
  g_clear_object (&self->lines);
  g_clear_object (&self->document);
  g_clear_pointer (&self->bill, fp_bill_unref);
  G_OBJECT_CLASS (fp_schedules_window_parent_class)->dispose (object);
}

#define BIND(name) gtk_widget_class_bind_template_child (widget_class, FpSchedulesWindow, name)

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class, "/org/footpace/Footpace/schedules-window.ui");
  BIND (list);
  BIND (heading);
  BIND (work);
  BIND (pages);
  BIND (weights);
  BIND (works);
  BIND (rate_label);
  BIND (rate);
  BIND (set_rate);
  BIND (closing);
  BIND (state);
  BIND (subtitle);
  gtk_widget_class_bind_template_callback (widget_class, on_choice);
  gtk_widget_class_bind_template_callback (widget_class, on_rate);
  gtk_widget_class_bind_template_callback (widget_class, on_activated);
}

#undef BIND

static void
fp_schedules_window_class_init (FpSchedulesWindowClass *klass)
{
  GtkWidgetClass *c = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fp_schedules_window_dispose;
  bind_template (c);
  gtk_widget_class_install_action (c, "schedules.save-table", NULL, save_as);
  gtk_widget_class_install_action (c, "schedules.save-text", NULL, save_as);
  gtk_widget_class_install_action (c, "schedules.sheet", NULL, sheet);
  gtk_widget_class_install_action (c, "schedules.linen", NULL, sheet);
  gtk_widget_class_install_action (c, "schedules.laying", NULL, sheet);
  gtk_widget_class_install_action (c, "schedules.undo", NULL, step);
  gtk_widget_class_install_action (c, "schedules.redo", NULL, step);
  gtk_widget_class_install_action (c, "schedules.save", NULL, save_project);
  gtk_widget_class_add_binding_action (c, GDK_KEY_s, GDK_CONTROL_MASK, "schedules.save", NULL);
  gtk_widget_class_add_binding_action (c, GDK_KEY_p, GDK_CONTROL_MASK, "schedules.sheet", NULL);
  gtk_widget_class_add_binding_action (c, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
fill_choices (FpSchedulesWindow *self)
{
  g_autoptr (GtkStringList) headings = gtk_string_list_new (NULL);

  gtk_string_list_append (headings, "All schedules");
  for (guint i = 0; i < FP_N_HEADINGS; i++)
    gtk_string_list_append (headings, fp_heading_label ((FpHeading) i));
  gtk_string_list_append (headings, "Weight on the floor");
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->heading), G_LIST_MODEL (headings));
}

static void
fp_schedules_window_init (FpSchedulesWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fp_add_undo_keys (GTK_WIDGET (self), "schedules.undo", "schedules.redo");
  fp_name_buttons (GTK_WIDGET (self));
  fill_choices (self);
  self->lines = g_list_store_new (FP_TYPE_BILL_LINE);
  self->chosen = gtk_single_selection_new (g_object_ref (G_LIST_MODEL (self->lines)));
  g_signal_connect_swapped (self->chosen, "notify::selected-item", G_CALLBACK (on_line), self);
  fp_bill_line_add_columns (GTK_COLUMN_VIEW (self->list));
  gtk_column_view_set_model (GTK_COLUMN_VIEW (self->list), GTK_SELECTION_MODEL (self->chosen));
}

GtkWidget *
fp_schedules_window_new (GtkWindow *parent, FpDocument *document)
{
  FpSchedulesWindow *self = g_object_new (FP_TYPE_SCHEDULES_WINDOW, "transient-for", parent, "destroy-with-parent", TRUE, NULL);

  self->document = g_object_ref (document);
  self->form = fp_works_form_new (document);
  gtk_box_append (GTK_BOX (self->works), self->form);
  g_signal_connect_swapped (document, "scene", G_CALLBACK (on_scene), self);
  make (self);
  gtk_widget_grab_focus (self->list);
  return GTK_WIDGET (self);
}
