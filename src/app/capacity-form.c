/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "capacity-form.h"

#include "compat-4-8.h"

#include "footpace/error.h"
#include "footpace/units.h"

#include <math.h>
#include <string.h>

#define NONE_ASSUMED "as the parish has found it: none is assumed"

static const struct { const char *label, *about, *empty; } fields[FP_N_RECKONINGS] = {
  [FP_RECKONING_PEOPLE] = { "Communicants", "How many people communicate; left empty, all who sit", "all who sit" },
  [FP_RECKONING_MINISTERS] = { "Ministers at the rail", "How many give Communion there, each along a part of it", "" },
  [FP_RECKONING_LINES] = { "Lines", "In how many lines the people come, a minister at each; left empty, as many as ministers",
                           "as ministers" },
  [FP_RECKONING_EACH] = { "Each, seconds", "How long one communicant takes, " NONE_ASSUMED, "not said" },
  [FP_RECKONING_CHANGE] = { "Change at the rail, seconds",
                            "From one who has received to the next who kneels in his place, " NONE_ASSUMED, "not said" },
  [FP_RECKONING_BACK] = { "Way back, seconds", "Of a minister to where his part of the rail begins, " NONE_ASSUMED, "not said" },
  [FP_RECKONING_STEP] = { "Step in a line, seconds",
                          "From one who has received to the next before the minister, " NONE_ASSUMED, "not said" },
};

/* Of the rail together, then of lines. */
static const FpReckoningPart order[] = { FP_RECKONING_PEOPLE, FP_RECKONING_EACH, FP_RECKONING_MINISTERS, FP_RECKONING_CHANGE,
                                         FP_RECKONING_BACK, FP_RECKONING_LINES, FP_RECKONING_STEP };

typedef struct
{
  FpCapacityForm *form;
  FpReckoningPart part;
  GtkWidget      *entry, *error;
} Field;

struct _FpCapacityForm
{
  GtkGrid     parent_instance;
  FpDocument *document;
  gboolean    filling;
  GtkWidget  *sprinklers;
  Field       field[FP_N_RECKONINGS];
};

G_DEFINE_FINAL_TYPE (FpCapacityForm, fp_capacity_form, GTK_TYPE_GRID)

static const FpReckoning *
reckoning_of (FpCapacityForm *self)
{
  return fp_project_reckoning (fp_document_project (self->document));
}

static gboolean
apply (FpCapacityForm *self, const FpReckoning *reckoning, const char *label, GError **error)
{
  FpProject *next;

  if (fp_reckoning_equal (reckoning, reckoning_of (self)))
    return TRUE;
  next = fp_project_with_reckoning (fp_document_project (self->document), reckoning, error);
  return next != NULL && fp_document_edit (self->document, next, label, NULL);
}

/* --- shown --------------------------------------------------------------------------------- */

static char *
shown (const FpReckoning *reckoning, FpReckoningPart part)
{
  return fp_reckoning_unsaid (reckoning, part) ? g_strdup ("") : fp_number_format (fp_reckoning_get (reckoning, part));
}

static void
show_field (Field *field)
{
  g_autofree char *text = shown (reckoning_of (field->form), field->part);

  if (strcmp (gtk_editable_get_text (GTK_EDITABLE (field->entry)), text) != 0)
    gtk_editable_set_text (GTK_EDITABLE (field->entry), text);
  gtk_widget_hide (field->error);
  gtk_widget_remove_css_class (field->entry, "error");
}

void
fp_capacity_form_show (FpCapacityForm *self)
{
  self->filling = TRUE;
  gtk_check_button_set_active (GTK_CHECK_BUTTON (self->sprinklers), reckoning_of (self)->sprinklers);
  for (guint i = 0; i < FP_N_RECKONINGS; i++)
    show_field (&self->field[i]);
  self->filling = FALSE;
}

/* --- typed --------------------------------------------------------------------------------- */

/* Its unit may be typed after it. */
static char *
bare_number (const char *text)
{
  static const char *const units[] = { "seconds", "second", "sec", "s" };
  char *bare = g_strstrip (g_strdup (text));

  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    if (g_str_has_suffix (bare, units[i]))
      {
        bare[strlen (bare) - strlen (units[i])] = '\0';
        break;
      }
  return g_strchomp (bare);
}

static gboolean
apply_field (Field *field, GError **error)
{
  FpReckoning reckoning = *reckoning_of (field->form);
  g_autofree char *text = bare_number (gtk_editable_get_text (GTK_EDITABLE (field->entry)));
  double value = NAN;

  return (*text == '\0' || fp_number_parse (text, &value, error)) && fp_reckoning_set (&reckoning, field->part, value, error)
         && apply (field->form, &reckoning, fields[field->part].label, error);
}

/* What is wrong begins with what it is of, which the label beside tells already. */
static const char *
words_of (const GError *error)
{
  static const char of[] = "capacity: ";

  return g_str_has_prefix (error->message, of) ? error->message + strlen (of) : error->message;
}

static void
on_typed (Field *field)
{
  g_autoptr (GError) error = NULL;

  if (apply_field (field, &error))
    {
      show_field (field);
      return;
    }
  gtk_label_set_text (GTK_LABEL (field->error), error != NULL ? words_of (error) : "");
  gtk_widget_add_css_class (field->entry, "error");
  gtk_widget_show (field->error);
}

static void
on_left (gpointer data)
{
  if (((Field *) data)->form->document != NULL)
    on_typed (data);
}

static void
on_sprinklers (FpCapacityForm *self)
{
  FpReckoning reckoning = *reckoning_of (self);

  if (self->filling)
    return;
  reckoning.sprinklers = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->sprinklers));
  apply (self, &reckoning, "Sprinklers", NULL);
}

/* --- made ------------------------------------------------------------------------------------ */

static void
add_field (FpCapacityForm *self, FpReckoningPart part, int line)
{
  Field *field = &self->field[part];
  GtkWidget *label = gtk_label_new (fields[part].label);

  *field = (Field) { self, part, gtk_entry_new (), gtk_label_new (NULL) };
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_tooltip_text (label, fields[part].about);
  gtk_editable_set_width_chars (GTK_EDITABLE (field->entry), 10);
  gtk_entry_set_placeholder_text (GTK_ENTRY (field->entry), fields[part].empty);
  gtk_widget_set_hexpand (field->entry, TRUE);
  gtk_widget_set_tooltip_text (field->entry, fields[part].about);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (field->entry), GTK_ACCESSIBLE_RELATION_LABELLED_BY, label, NULL, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (field->entry), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, fields[part].about, -1);
  gtk_label_set_wrap (GTK_LABEL (field->error), TRUE);
  gtk_label_set_xalign (GTK_LABEL (field->error), 0);
  gtk_label_set_max_width_chars (GTK_LABEL (field->error), 30);
  gtk_widget_add_css_class (field->error, "error");
  gtk_widget_hide (field->error);
  gtk_grid_attach (GTK_GRID (self), label, 0, line, 1, 1);
  gtk_grid_attach (GTK_GRID (self), field->entry, 1, line, 1, 1);
  gtk_grid_attach (GTK_GRID (self), field->error, 0, line + 1, 2, 1);
  g_signal_connect_swapped (field->entry, "activate", G_CALLBACK (on_typed), field);
  fp_when_focus_left (field->entry, on_left, field);
}

static void
fp_capacity_form_dispose (GObject *object)
{
  g_clear_object (&FP_CAPACITY_FORM (object)->document);
  G_OBJECT_CLASS (fp_capacity_form_parent_class)->dispose (object);
}

static void
fp_capacity_form_class_init (FpCapacityFormClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = fp_capacity_form_dispose;
}

static void
fp_capacity_form_init (FpCapacityForm *self)
{
  int line = 0;

  gtk_grid_set_row_spacing (GTK_GRID (self), 6);
  gtk_grid_set_column_spacing (GTK_GRID (self), 12);
  for (guint i = 0; i < G_N_ELEMENTS (order); i++, line += 2)
    add_field (self, order[i], line);
  self->sprinklers = gtk_check_button_new_with_label ("Sprinklers, and an alarm that speaks");
  gtk_widget_set_tooltip_text (self->sprinklers, "Throughout the building: some codes then ask for less width of ways out");
  g_signal_connect_swapped (self->sprinklers, "toggled", G_CALLBACK (on_sprinklers), self);
  gtk_grid_attach (GTK_GRID (self), self->sprinklers, 0, line, 2, 1);
}

GtkWidget *
fp_capacity_form_new (FpDocument *document)
{
  FpCapacityForm *self = g_object_new (FP_TYPE_CAPACITY_FORM, NULL);

  self->document = g_object_ref (document);
  fp_capacity_form_show (self);
  return GTK_WIDGET (self);
}
