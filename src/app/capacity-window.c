/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "capacity-window.h"

#include "capacity-form.h"
#include "capacity-table.h"
#include "compat-4-8.h"
#include "text-saving.h"
#include "undo-keys.h"

#include <string.h>

#define LULL 120 /* ms: while a thing is dragged the lines are not made anew at every step */

struct _FpCapacityWindow
{
  GtkWindow     parent_instance;
  FpDocument   *document;
  FpCapacities *all;
  char         *shown[FP_N_CAPACITIES]; /* of each section: what it says; NULL: not shown yet */
  guint         later;    /* source of the next making; 0: none                */

  GtkWidget    *sections, *reckoned, *caution, *state, *subtitle;
  GtkWidget    *form;
};

G_DEFINE_FINAL_TYPE (FpCapacityWindow, fp_capacity_window, GTK_TYPE_WINDOW)

static void
tell (FpCapacityWindow *self, const char *text, gboolean wrong)
{
  gtk_label_set_text (GTK_LABEL (self->state), text);
  gtk_widget_set_tooltip_text (self->state, text);
  gtk_widget_set_visible (self->state, *text != '\0');
  if (wrong)
    gtk_widget_add_css_class (self->state, "error");
  else
    gtk_widget_remove_css_class (self->state, "error");
}

/* --- what is shown ------------------------------------------------------------------------------ */

/* What is seen is looked at in the background: it is told once it is known of just what is shown. */
static const FpMeasuring *
seen_of (FpDocument *document)
{
  const FpFindings *sighted = fp_document_sighted (document);

  return sighted != NULL && fp_findings_scene (sighted) == fp_document_scene (document) ? fp_findings_measuring (sighted) : NULL;
}

static FpCapacities *
capacities_of (FpDocument *document)
{
  const FpMeasuring *seen = seen_of (document);
  g_autoptr (FpPeople) people = seen == NULL ? fp_people_new (fp_document_scene (document)) : NULL;

  return seen != NULL ? fp_capacities_new (seen->people, seen->sight) : fp_capacities_new (people, NULL);
}

/* All that a section says, to know whether it says something else. */
static char *
words_of (const FpCapacitySection *section)
{
  GString *words = g_string_new (section->closing);

  for (guint i = 0; i < section->rows->len; i++)
    {
      const FpCapacityRow *row = &g_array_index (section->rows, FpCapacityRow, i);

      for (guint k = 0; k < FP_N_CAPACITY_CELLS; k++)
        g_string_append_printf (words, "\n%s", row->cell[k]);
      g_string_append_printf (words, "\n%s %d", row->item != NULL ? row->item : "", row->lacking);
    }
  return g_string_free (words, FALSE);
}

static GtkWidget *
nth_child (GtkWidget *box, guint n)
{
  GtkWidget *child = gtk_widget_get_first_child (box);

  for (; child != NULL && n > 0; n--)
    child = gtk_widget_get_next_sibling (child);
  return child;
}

/* In the place of what it was before; what says the same stays, with the focus that it may have. */
static void
show_section (FpCapacityWindow *self, guint of)
{
  const FpCapacitySection *section = fp_capacities_section (self->all, (FpCapacityOf) of);
  char *words = words_of (section);
  GtkWidget *before = nth_child (self->sections, of), *table;

  if (g_strcmp0 (words, self->shown[of]) == 0)
    {
      g_free (words);
      return;
    }
  g_free (self->shown[of]);
  self->shown[of] = words;
  table = fp_capacity_table_new (section, self->document);
  gtk_box_insert_child_after (GTK_BOX (self->sections), table,
                              before != NULL ? before : gtk_widget_get_last_child (self->sections));
  if (before != NULL)
    gtk_box_remove (GTK_BOX (self->sections), before);
}

/* What tells of sight waits for it, so that nothing shrinks and grows again under the eye. */
static gboolean
waits (FpCapacityWindow *self, guint of)
{
  return (of == FP_CAPACITY_WHEELCHAIRS || of == FP_CAPACITY_WAYS_OUT) && self->shown[of] != NULL
         && seen_of (self->document) == NULL && fp_document_is_checking (self->document);
}

static void
make (FpCapacityWindow *self)
{
  const FpAlternative *alternative
    = fp_project_alternative (fp_document_project (self->document), fp_document_alternative (self->document));

  g_clear_pointer (&self->all, fp_capacities_free);
  self->all = capacities_of (self->document);
  for (guint i = 0; i < FP_N_CAPACITIES; i++)
    if (!waits (self, i))
      show_section (self, i);
  gtk_label_set_text (GTK_LABEL (self->subtitle), fp_alternative_name (alternative));
}

static gboolean
on_lull (gpointer data)
{
  FpCapacityWindow *self = data;

  self->later = 0;
  make (self);
  return G_SOURCE_REMOVE;
}

static void
make_later (FpCapacityWindow *self)
{
  g_clear_handle_id (&self->later, g_source_remove);
  self->later = g_timeout_add (LULL, on_lull, self);
}

static void
on_scene (FpCapacityWindow *self)
{
  fp_capacity_form_show (FP_CAPACITY_FORM (self->form));
  make_later (self);
}

/* --- files and sheets ------------------------------------------------------------------------------ */

static void
tell_window (GtkWindow *window, const char *text, gboolean wrong)
{
  tell (FP_CAPACITY_WINDOW (window), text, wrong);
}

static char *
make_table (GtkWindow *window)
{
  return fp_capacities_csv (FP_CAPACITY_WINDOW (window)->all);
}

static char *
make_data (GtkWindow *window)
{
  return fp_capacities_json (FP_CAPACITY_WINDOW (window)->all);
}

static char *
make_text (GtkWindow *window)
{
  return fp_capacities_text (FP_CAPACITY_WINDOW (window)->all);
}

static void
save_as (GtkWidget *widget, const char *action, GVariant *parameter)
{
  static const FpTextSaving savings[] = {
    { "Save Capacity", "capacity", "csv", "Table (CSV)", make_table, tell_window },
    { "Save Capacity", "capacity", "json", "Data (JSON)", make_data, tell_window },
    { "Save Capacity", "capacity", "txt", "Text", make_text, tell_window },
  };
  const guint which = strcmp (action, "capacity.save-table") == 0 ? 0 : strcmp (action, "capacity.save-data") == 0 ? 1 : 2;

  (void) parameter;
  fp_save_text (GTK_WINDOW (widget), FP_CAPACITY_WINDOW (widget)->document, &savings[which]);
}

static void
ask_parent (GtkWidget *widget, const char *action)
{
  GtkWindow *parent = gtk_window_get_transient_for (GTK_WINDOW (widget));

  if (parent != NULL)
    gtk_widget_activate_action (GTK_WIDGET (parent), action, NULL);
}

static void
sheet (GtkWidget *widget, const char *action, GVariant *parameter)
{
  (void) action, (void) parameter;
  ask_parent (widget, "win.sheet-capacity");
}

static void
save_project (GtkWidget *widget, const char *action, GVariant *parameter)
{
  (void) action, (void) parameter;
  ask_parent (widget, "win.save");
}

/* What is typed here is an edit like any other. */
static void
step (GtkWidget *widget, const char *action, GVariant *parameter)
{
  FpCapacityWindow *self = FP_CAPACITY_WINDOW (widget);

  (void) parameter;
  if (strcmp (action, "capacity.undo") == 0)
    fp_document_undo (self->document);
  else
    fp_document_redo (self->document);
}

/* --- the window -------------------------------------------------------------------------------------- */

static void
fp_capacity_window_dispose (GObject *object)
{
  FpCapacityWindow *self = FP_CAPACITY_WINDOW (object);

  g_clear_handle_id (&self->later, g_source_remove);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->all, fp_capacities_free);
  for (guint i = 0; i < FP_N_CAPACITIES; i++)
    g_clear_pointer (&self->shown[i], g_free);
  G_OBJECT_CLASS (fp_capacity_window_parent_class)->dispose (object);
}

#define BIND(name) gtk_widget_class_bind_template_child (widget_class, FpCapacityWindow, name)

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class, "/org/footpace/Footpace/capacity-window.ui");
  BIND (sections);
  BIND (reckoned);
  BIND (caution);
  BIND (state);
  BIND (subtitle);
}

#undef BIND

static void
fp_capacity_window_class_init (FpCapacityWindowClass *klass)
{
  GtkWidgetClass *c = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fp_capacity_window_dispose;
  bind_template (c);
  gtk_widget_class_install_action (c, "capacity.save-table", NULL, save_as);
  gtk_widget_class_install_action (c, "capacity.save-data", NULL, save_as);
  gtk_widget_class_install_action (c, "capacity.save-text", NULL, save_as);
  gtk_widget_class_install_action (c, "capacity.sheet", NULL, sheet);
  gtk_widget_class_install_action (c, "capacity.undo", NULL, step);
  gtk_widget_class_install_action (c, "capacity.redo", NULL, step);
  gtk_widget_class_install_action (c, "capacity.save", NULL, save_project);
  gtk_widget_class_add_binding_action (c, GDK_KEY_s, GDK_CONTROL_MASK, "capacity.save", NULL);
  gtk_widget_class_add_binding_action (c, GDK_KEY_p, GDK_CONTROL_MASK, "capacity.sheet", NULL);
  gtk_widget_class_add_binding_action (c, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
fp_capacity_window_init (FpCapacityWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fp_add_undo_keys (GTK_WIDGET (self), "capacity.undo", "capacity.redo");
  gtk_label_set_text (GTK_LABEL (self->caution), fp_capacities_caution);
  tell (self, "", FALSE);
}

GtkWidget *
fp_capacity_window_new (GtkWindow *parent, FpDocument *document)
{
  FpCapacityWindow *self = g_object_new (FP_TYPE_CAPACITY_WINDOW, "transient-for", parent, "destroy-with-parent", TRUE, NULL);

  self->document = g_object_ref (document);
  self->form = fp_capacity_form_new (document);
  gtk_box_append (GTK_BOX (self->reckoned), self->form);
  g_signal_connect_swapped (document, "scene", G_CALLBACK (on_scene), self);
  g_signal_connect_swapped (document, "findings", G_CALLBACK (make_later), self);
  make (self);
  return GTK_WIDGET (self);
}
