/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "param-row.h"

#include "compat-4-8.h"
#include "field-tip.h"
#include "typing.h"

struct _FpParamRow
{
  GtkWidget      parent_instance;
  const FpParam *param;
  GtkWidget     *label, *entry, *choices, *unit, *sum, *error;
  char          *shown;      /* what the field held when it was last shown   */
  double         value;
  FpUnits        units;
  gboolean       filling;    /* by us, not by a person                       */
  gboolean       mixed;      /* several things, and not the same of all      */
};

G_DEFINE_FINAL_TYPE (FpParamRow, fp_param_row, GTK_TYPE_WIDGET)

static guint entered_signal;

static void
describe (GtkWidget *field, const char *text)
{
  if (text != NULL)
    gtk_accessible_update_property (GTK_ACCESSIBLE (field), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
  else
    gtk_accessible_reset_property (GTK_ACCESSIBLE (field), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION);
}

static void
clear_failure (FpParamRow *self)
{
  GtkWidget *field = self->entry != NULL ? self->entry : self->choices;

  gtk_widget_hide (self->error);
  gtk_widget_remove_css_class (field, "error");
  gtk_accessible_reset_state (GTK_ACCESSIBLE (field), GTK_ACCESSIBLE_STATE_INVALID);
  describe (field, gtk_widget_get_tooltip_text (self->label));
}

void
fp_param_row_fail (FpParamRow *self, const char *message)
{
  GtkWidget *field = self->entry != NULL ? self->entry : self->choices;

  gtk_label_set_text (GTK_LABEL (self->error), message);
  gtk_widget_show (self->error);
  gtk_widget_add_css_class (field, "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (field), GTK_ACCESSIBLE_STATE_INVALID, GTK_ACCESSIBLE_INVALID_TRUE, -1);
  /* That alone is not heard by everyone who cannot see what is written below. */
  describe (field, message);
}

static void
enter (FpParamRow *self, const char *text)
{
  g_autofree char *copy = g_strdup (text);

  clear_failure (self);
  g_signal_emit (self, entered_signal, 0, copy);
}

static void
enter_if_new (FpParamRow *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->entry));

  if (g_strcmp0 (text, self->shown) != 0)
    enter (self, text);
}

static void
put_back (FpParamRow *self)
{
  clear_failure (self);
  self->filling = TRUE;
  gtk_editable_set_text (GTK_EDITABLE (self->entry), self->shown != NULL ? self->shown : "");
  self->filling = FALSE;
}

static void
on_activate (GtkEntry *entry, FpParamRow *self)
{
  (void) entry;
  enter_if_new (self);
}

/* What is worked out can be seen before it is entered. */
static void
tell_sum (FpParamRow *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->entry));
  const gboolean is_typed = !self->filling && self->param != NULL && self->param->type == FP_PARAM_LENGTH;
  g_autofree char *sum = is_typed ? fp_typing_sum (text, self->units) : NULL;

  gtk_label_set_text (GTK_LABEL (self->sum), sum != NULL ? sum : "");
  gtk_widget_set_visible (self->sum, sum != NULL);
}

static void
on_changed (GtkEditable *editable, FpParamRow *self)
{
  (void) editable;
  if (!self->filling)
    clear_failure (self);
  tell_sum (self);
}

static void
on_focus_left (gpointer self)
{
  enter_if_new (self);
}

static void
step (FpParamRow *self, double by)
{
  double value = self->value + by * fp_typing_step (self->param, self->units);
  g_autofree char *text = fp_typing_show (self->param, CLAMP (value, self->param->min, self->param->max), self->units);

  enter (self, text);
}

static gboolean
on_key (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state, FpParamRow *self)
{
  (void) keys, (void) code;
  if (key == GDK_KEY_Escape && g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (self->entry)), self->shown) != 0)
    {
      put_back (self);
      return TRUE;
    }
  if (self->param == NULL || (state & (GDK_CONTROL_MASK | GDK_ALT_MASK)) != 0)
    return FALSE;
  if ((key == GDK_KEY_Up || key == GDK_KEY_Down) && !self->mixed)
    {
      step (self, key == GDK_KEY_Up ? 1.0 : -1.0);
      return TRUE;
    }
  return FALSE;
}

static void
on_choice (GtkDropDown *choices, GParamSpec *pspec, FpParamRow *self)
{
  g_autofree char *text = NULL;

  (void) pspec;
  if (self->filling || gtk_drop_down_get_selected (choices) == GTK_INVALID_LIST_POSITION)
    return;
  text = g_strdup_printf ("%u", gtk_drop_down_get_selected (choices));
  enter (self, text);
}

/* --- making it ------------------------------------------------------------ */

static void
add_entry (FpParamRow *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->entry = gtk_entry_new ();
  gtk_entry_set_has_frame (GTK_ENTRY (self->entry), FALSE);
  gtk_editable_set_alignment (GTK_EDITABLE (self->entry), self->param != NULL ? 1.0f : 0.0f);
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), 9);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), 11);
  g_signal_connect (self->entry, "activate", G_CALLBACK (on_activate), self);
  g_signal_connect (self->entry, "changed", G_CALLBACK (on_changed), self);
  fp_when_focus_left (self->entry, on_focus_left, self);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (on_key), self);
  gtk_widget_add_controller (self->entry, keys);
}

static void
add_choices (FpParamRow *self)
{
  g_autoptr (GPtrArray) labels = g_ptr_array_new ();

  for (const FpChoice *c = self->param->choices; c->id != NULL; c++)
    g_ptr_array_add (labels, (gpointer) c->label);
  g_ptr_array_add (labels, NULL);
  self->choices = gtk_drop_down_new_from_strings ((const char *const *) labels->pdata);
  gtk_widget_add_css_class (self->choices, "flat");
  g_signal_connect (self->choices, "notify::selected", G_CALLBACK (on_choice), self);
}

static void
add_label (FpParamRow *self, const char *text)
{
  self->label = gtk_label_new (text);
  fp_field_tip_hush (self->label);
  gtk_label_set_xalign (GTK_LABEL (self->label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (self->label), TRUE);
  gtk_widget_set_hexpand (self->label, TRUE);
}

static void
build (FpParamRow *self, const char *label)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6), *field;

  add_label (self, label);
  if (self->param != NULL && self->param->type == FP_PARAM_CHOICE)
    add_choices (self);
  else
    add_entry (self);
  field = self->entry != NULL ? self->entry : self->choices;
  gtk_widget_set_halign (field, GTK_ALIGN_END);
  gtk_accessible_update_property (GTK_ACCESSIBLE (field), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  self->unit = gtk_label_new ("");
  gtk_widget_add_css_class (self->unit, "unit");
  gtk_label_set_xalign (GTK_LABEL (self->unit), 0.0f);
  gtk_box_append (GTK_BOX (line), self->label);
  gtk_box_append (GTK_BOX (line), field);
  gtk_box_append (GTK_BOX (line), self->unit);
  gtk_widget_set_parent (line, GTK_WIDGET (self));
  self->sum = gtk_label_new ("");
  gtk_label_set_xalign (GTK_LABEL (self->sum), 1.0f);
  gtk_widget_add_css_class (self->sum, "dim-label");
  gtk_widget_hide (self->sum);
  gtk_widget_set_parent (self->sum, GTK_WIDGET (self));
  self->error = gtk_label_new ("");
  gtk_label_set_xalign (GTK_LABEL (self->error), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (self->error), TRUE);
  gtk_label_set_natural_wrap_mode (GTK_LABEL (self->error), GTK_NATURAL_WRAP_NONE);
  gtk_widget_add_css_class (self->error, "error");
  gtk_widget_hide (self->error);
  gtk_widget_set_parent (self->error, GTK_WIDGET (self));
}

GtkWidget *
fp_param_row_new (const FpParam *param)
{
  FpParamRow *self = g_object_new (FP_TYPE_PARAM_ROW, NULL);

  self->param = param;
  build (self, param->label);
  return GTK_WIDGET (self);
}

GtkWidget *
fp_param_row_new_text (const char *label)
{
  FpParamRow *self = g_object_new (FP_TYPE_PARAM_ROW, NULL);

  build (self, label);
  gtk_widget_set_halign (self->entry, GTK_ALIGN_FILL);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (self->entry), 24);
  gtk_widget_set_hexpand (self->entry, TRUE);
  gtk_widget_set_hexpand (self->label, FALSE);
  gtk_editable_set_alignment (GTK_EDITABLE (self->entry), 1.0f);
  gtk_widget_hide (self->unit);
  return GTK_WIDGET (self);
}

const FpParam *
fp_param_row_param (FpParamRow *self)
{
  return self->param;
}

void
fp_param_row_show_text (FpParamRow *self, const char *text)
{
  /* What is just being typed is left alone as long as the value stays as it was. */
  if (g_strcmp0 (self->shown, text) == 0)
    return;
  g_free (self->shown);
  self->shown = g_strdup (text);
  put_back (self);
}

static void
show_units (FpParamRow *self, FpUnits units)
{
  g_autofree char *about = NULL;

  if (self->units == units && gtk_widget_get_tooltip_text (self->label) != NULL)
    return;
  about = fp_typing_about (self->param, units);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->label), about);
  describe (self->entry != NULL ? self->entry : self->choices, about);
  gtk_label_set_text (GTK_LABEL (self->unit), fp_typing_unit (self->param, units));
  self->units = units;
}

static void
show_choice (FpParamRow *self, guint choice)
{
  self->filling = TRUE;
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->choices), choice);
  self->filling = FALSE;
}

static void
set_mixed (FpParamRow *self, gboolean mixed)
{
  self->mixed = mixed;
  if (self->entry != NULL)
    gtk_entry_set_placeholder_text (GTK_ENTRY (self->entry), mixed ? "mixed" : NULL);
}

void
fp_param_row_show_mixed (FpParamRow *self, FpUnits units)
{
  show_units (self, units);
  set_mixed (self, TRUE);
  if (self->choices != NULL)
    show_choice (self, GTK_INVALID_LIST_POSITION);
  else
    fp_param_row_show_text (self, "");
}

void
fp_param_row_show (FpParamRow *self, double value, FpUnits units)
{
  g_autofree char *text = NULL;

  show_units (self, units);
  set_mixed (self, FALSE);
  self->value = value;
  if (self->choices != NULL)
    {
      show_choice (self, (guint) value);
      return;
    }
  text = fp_typing_show (self->param, value, units);
  fp_param_row_show_text (self, text);
}

void
fp_param_row_settle (FpParamRow *self)
{
  if (self->entry != NULL)
    put_back (self);
}

void
fp_param_row_focus (FpParamRow *self)
{
  gtk_widget_grab_focus (self->entry != NULL ? self->entry : self->choices);
}

/* --- the widget ----------------------------------------------------------- */

static void
fp_param_row_dispose (GObject *object)
{
  FpParamRow *self = FP_PARAM_ROW (object);
  GtkWidget *child;

  /* A field that has the focus loses it while it is taken apart. */
  self->filling = TRUE;
  g_clear_pointer (&self->shown, g_free);
  if (self->entry != NULL)
    self->shown = g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entry)));
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  self->entry = self->choices = NULL;
  g_clear_pointer (&self->shown, g_free);
  G_OBJECT_CLASS (fp_param_row_parent_class)->dispose (object);
}

static void
fp_param_row_class_init (FpParamRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fp_param_row_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BOX_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "paramrow");
  entered_signal = g_signal_new ("entered", FP_TYPE_PARAM_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                 G_TYPE_STRING);
}

static void
fp_param_row_init (FpParamRow *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
}
