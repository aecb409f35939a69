/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "works-form.h"

#include "compat-4-8.h"

#include "footpace/error.h"

#include <math.h>
#include <string.h>

typedef enum { AS_LENGTH, AS_PER_CENT, AS_PRESSURE, AS_COUNT, AS_WORDS } FieldType;

#define AS_NEEDED      "How many are cut; left empty, as many as one Mass needs"
#define SMALL_AT(which) (G_STRUCT_OFFSET (FpWorks, small) + sizeof (double) * (which))

static const struct
{
  const char *label, *about;
  FieldType   type;
  gboolean    may_be_empty;
  gsize       at;         /* of the double, or the text, in FpWorks */
  FpWorksLength length;   /* which, of lengths        */
} fields[] = {
  { "Thickness of slabs", "Of treads, risers and the floor of the footpace", AS_LENGTH, FALSE, G_STRUCT_OFFSET (FpWorks, slab),
    FP_WORKS_SLAB },
  { "Longest slab", "A longer run is divided, its joints aside from those beneath", AS_LENGTH, FALSE, G_STRUCT_OFFSET (FpWorks, longest),
    FP_WORKS_LONGEST },
  { "Nosing", "How far treads project before their risers; left empty, none", AS_LENGTH, TRUE, G_STRUCT_OFFSET (FpWorks, nosing),
    FP_WORKS_NOSING },
  { "Joints and beds", "How wide they are; 0 for stone upon stone", AS_LENGTH, FALSE, G_STRUCT_OFFSET (FpWorks, joint), FP_WORKS_JOINT },
  { "Finish of the stone", "As the mason is told; may be left empty", AS_WORDS, TRUE, G_STRUCT_OFFSET (FpWorks, finish), 0 },
  { "The floor bears", "What it is rated for, as an engineer said; may be left empty", AS_PRESSURE, TRUE,
    G_STRUCT_OFFSET (FpWorks, bears), 0 },
  { "A candle burns an hour", "So much of its length in an hour, as you found it; may be left empty", AS_LENGTH, TRUE,
    G_STRUCT_OFFSET (FpWorks, burns),
    FP_WORKS_BURNS },
  { "Bolt of linen", "Its width between the selvedges; may be left empty", AS_LENGTH, TRUE, G_STRUCT_OFFSET (FpWorks, bolt),
    FP_WORKS_BOLT },
  { "Warp shrinks", "What a tried piece lost along the bolt when it was washed", AS_PER_CENT, TRUE,
    G_STRUCT_OFFSET (FpWorks, warp), 0 },
  { "Weft shrinks", "What it lost across", AS_PER_CENT, TRUE, G_STRUCT_OFFSET (FpWorks, weft), 0 },
  { "Corporals", AS_NEEDED, AS_COUNT, TRUE, SMALL_AT (FP_SMALL_CORPORAL), 0 },
  { "Palls", AS_NEEDED, AS_COUNT, TRUE, SMALL_AT (FP_SMALL_PALL), 0 },
  { "Purificators", AS_NEEDED, AS_COUNT, TRUE, SMALL_AT (FP_SMALL_PURIFICATOR), 0 },
  { "Finger towels", AS_NEEDED, AS_COUNT, TRUE, SMALL_AT (FP_SMALL_TOWEL), 0 },
  { "Amices", AS_NEEDED, AS_COUNT, TRUE, SMALL_AT (FP_SMALL_AMICE), 0 },
  { "Chalice veils", AS_NEEDED, AS_COUNT, TRUE, SMALL_AT (FP_SMALL_CHALICE_VEIL), 0 },
  { "Burses", AS_NEEDED, AS_COUNT, TRUE, SMALL_AT (FP_SMALL_BURSE), 0 },
  { "Currency", "As written after a sum; may be left empty", AS_WORDS, TRUE,
    G_STRUCT_OFFSET (FpWorks, currency), 0 },
};

typedef struct
{
  FpWorksForm *form;
  guint        which;
  GtkWidget   *entry, *error;
} Field;

struct _FpWorksForm
{
  GtkGrid     parent_instance;
  FpDocument *document;
  gboolean    filling;
  GtkWidget  *stone, *timber, *metal, *built, *wide;
  Field       field[G_N_ELEMENTS (fields)];
};

G_DEFINE_FINAL_TYPE (FpWorksForm, fp_works_form, GTK_TYPE_GRID)

static FpUnits
units_of (FpWorksForm *self)
{
  return fp_project_brief (fp_document_project (self->document))->units;
}

static const FpWorks *
works_of (FpWorksForm *self)
{
  return fp_project_works (fp_document_project (self->document));
}

static gboolean
apply (FpWorksForm *self, const FpWorks *works, const char *label, GError **error)
{
  FpProject *next;

  if (fp_works_equal (works, works_of (self)))
    return TRUE;
  next = fp_project_with_works (fp_document_project (self->document), works, error);
  return next != NULL && fp_document_edit (self->document, next, label, NULL);
}

/* --- fields: shown ----------------------------------------------------------------- */

static char *
shown (const FpWorks *works, guint which, FpUnits units)
{
  const double value = fields[which].type == AS_WORDS ? 0 : G_STRUCT_MEMBER (double, works, fields[which].at);

  if (fields[which].type == AS_WORDS)
    return g_strdup (G_STRUCT_MEMBER (const char *, works, fields[which].at));
  if (fields[which].may_be_empty && (fields[which].type == AS_COUNT ? value < 0 : !(value > 0)))
    return g_strdup ("");
  switch (fields[which].type)
    {
    case AS_LENGTH: return fp_length_format_unit (value, units);
    case AS_PER_CENT: return fp_number_format (round (value * 1e6) / 1e4);
    case AS_COUNT: return fp_number_format (value);
    case AS_PRESSURE:
      return fp_number_format (units == FP_UNITS_METRIC ? value : round (value / FP_KN_M2_PER_PSF * 100) / 100);
    case AS_WORDS: break;
    }
  return g_strdup ("");
}

static void
show_field (FpWorksForm *self, guint which)
{
  g_autofree char *text = shown (works_of (self), which, units_of (self));

  if (strcmp (gtk_editable_get_text (GTK_EDITABLE (self->field[which].entry)), text) != 0)
    gtk_editable_set_text (GTK_EDITABLE (self->field[which].entry), text);
  gtk_widget_hide (self->field[which].error);
}

void
fp_works_form_show (FpWorksForm *self)
{
  const FpWorks *works = works_of (self);

  self->filling = TRUE;
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->stone), works->stone);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->timber), works->timber);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->metal), works->metal);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->built), works->solid ? 1 : 0);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->wide), works->joined ? 1 : 0);
  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    show_field (self, i);
  self->filling = FALSE;
}

/* --- fields: typed ------------------------------------------------------------------ */

/* The unit of its label may be typed after it. */
static char *
without_unit (const char *text)
{
  static const char *const units[] = { "kN/m²", "kN/m2", "kn/m2", "lb/sq ft", "psf", "per cent", "%" };

  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    if (g_str_has_suffix (text, units[i]))
      return g_strstrip (g_strndup (text, strlen (text) - strlen (units[i])));
  return g_strdup (text);
}

static gboolean
read_value (const char *text, guint which, FpUnits units, double *value, GError **error)
{
  if (*text == '\0' && fields[which].may_be_empty)
    {
      *value = fields[which].type == AS_COUNT ? FP_SMALL_AS_NEEDED : 0;
      return TRUE;
    }
  if (fields[which].type == AS_LENGTH)
    return fp_length_parse (text, units, value, error)
           && ((fields[which].may_be_empty && *value == 0)
               || fp_works_length_check (fields[which].length, *value, text, units, error));
  g_autofree char *bare = without_unit (text);

  if (!fp_number_parse (bare, value, error))
    return FALSE;
  if (fields[which].type == AS_PER_CENT)
    *value /= 100;
  else if (fields[which].type == AS_PRESSURE && units == FP_UNITS_IMPERIAL)
    *value *= FP_KN_M2_PER_PSF;
  return TRUE;
}

static gboolean
apply_field (Field *field, GError **error)
{
  FpWorksForm *self = field->form;
  FpWorks works = *works_of (self);
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (field->entry))));
  g_autofree char *before = shown (&works, field->which, units_of (self));

  if (strcmp (text, before) == 0) /* what is shown may be rounded */
    return TRUE;
  if (fields[field->which].type == AS_WORDS)
    G_STRUCT_MEMBER (const char *, &works, fields[field->which].at) = text;
  else if (!read_value (text, field->which, units_of (self), &G_STRUCT_MEMBER (double, &works, fields[field->which].at), error))
    return FALSE;
  return apply (self, &works, fields[field->which].label, error);
}

static void
on_typed (Field *field)
{
  g_autoptr (GError) error = NULL;

  if (apply_field (field, &error))
    {
      show_field (field->form, field->which);
      return;
    }
  gtk_label_set_text (GTK_LABEL (field->error), error != NULL ? error->message : "");
  gtk_widget_show (field->error);
}

static void
on_left (gpointer data)
{
  if (((Field *) data)->form->document != NULL)
    on_typed (data);
}

static void
on_chosen (FpWorksForm *self)
{
  FpWorks works = *works_of (self);

  if (self->filling)
    return;
  works.stone = (FpStone) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->stone));
  works.timber = (FpTimber) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->timber));
  works.metal = (FpMetal) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->metal));
  works.solid = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->built)) == 1;
  works.joined = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->wide)) == 1;
  apply (self, &works, works.joined != works_of (self)->joined ? "Wide linen" : "Material", NULL);
}

/* --- made ----------------------------------------------------------------------------- */

static GtkWidget *
add_label (FpWorksForm *self, const char *text, const char *about, GtkWidget *of, int line)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_tooltip_text (label, about);
  gtk_grid_attach (GTK_GRID (self), label, 0, line, 1, 1);
  gtk_grid_attach (GTK_GRID (self), of, 1, line, 1, 1);
  gtk_accessible_update_relation (GTK_ACCESSIBLE (of), GTK_ACCESSIBLE_RELATION_LABELLED_BY, label, NULL, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (of), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, about, -1);
  return label;
}

typedef const FpMatter *(*MatterAt) (guint i);

static const FpMatter *
stone_at (guint i)
{
  return i < FP_N_STONES ? fp_stone ((FpStone) i) : NULL;
}

static const FpMatter *
timber_at (guint i)
{
  return i < FP_N_TIMBERS ? fp_timber ((FpTimber) i) : NULL;
}

static const FpMatter *
metal_at (guint i)
{
  return i < FP_N_METALS ? fp_metal ((FpMetal) i) : NULL;
}

/* @names: (transfer full) */
static GtkWidget *
add_choice (FpWorksForm *self, const char *label, const char *about, GtkStringList *names, int line)
{
  GtkWidget *choice = gtk_drop_down_new (G_LIST_MODEL (names), NULL);

  add_label (self, label, about, choice, line);
  g_signal_connect_swapped (choice, "notify::selected", G_CALLBACK (on_chosen), self);
  return choice;
}

static GtkWidget *
add_matters (FpWorksForm *self, const char *label, MatterAt at, int line)
{
  GtkStringList *names = gtk_string_list_new (NULL);

  for (guint i = 0; at (i) != NULL; i++)
    gtk_string_list_append (names, at (i)->label);
  return add_choice (self, label, "By which weights are reckoned", names, line);
}

static char *
label_of (FpWorksForm *self, guint which)
{
  switch (fields[which].type)
    {
    case AS_PER_CENT: return g_strconcat (fields[which].label, ", per cent", NULL);
    case AS_PRESSURE: return g_strconcat (fields[which].label, units_of (self) == FP_UNITS_METRIC ? ", kN/m²" : ", lb/sq ft", NULL);
    case AS_LENGTH:
    case AS_COUNT:
    case AS_WORDS: break;
    }
  return g_strdup (fields[which].label);
}

static void
add_field (FpWorksForm *self, guint which, int line)
{
  Field *field = &self->field[which];
  g_autofree char *label = label_of (self, which);

  *field = (Field) { self, which, gtk_entry_new (), gtk_label_new (NULL) };
  gtk_editable_set_width_chars (GTK_EDITABLE (field->entry), 8);
  if (fields[which].type == AS_COUNT)
    gtk_entry_set_placeholder_text (GTK_ENTRY (field->entry), "for one Mass");
  gtk_widget_set_hexpand (field->entry, TRUE);
  add_label (self, label, fields[which].about, field->entry, line);
  gtk_label_set_wrap (GTK_LABEL (field->error), TRUE);
  gtk_label_set_xalign (GTK_LABEL (field->error), 0);
  gtk_label_set_max_width_chars (GTK_LABEL (field->error), 26);
  gtk_widget_add_css_class (field->error, "error");
  gtk_widget_hide (field->error);
  gtk_grid_attach (GTK_GRID (self), field->error, 0, line + 1, 2, 1);
  g_signal_connect_swapped (field->entry, "activate", G_CALLBACK (on_typed), field);
  fp_when_focus_left (field->entry, on_left, field);
}

static void
fp_works_form_dispose (GObject *object)
{
  g_clear_object (&FP_WORKS_FORM (object)->document);
  G_OBJECT_CLASS (fp_works_form_parent_class)->dispose (object);
}

static void
fp_works_form_class_init (FpWorksFormClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = fp_works_form_dispose;
}

static void
fp_works_form_init (FpWorksForm *self)
{
  gtk_grid_set_row_spacing (GTK_GRID (self), 6);
  gtk_grid_set_column_spacing (GTK_GRID (self), 12);
}

static void
add_all (FpWorksForm *self)
{
  static const char *const built[] = { "Slabs on a core", "Solid blocks", NULL }, *const wide[] = { "Told, not cut", "Joined of widths", NULL };
  int line = 4;

  self->stone = add_matters (self, "Stone", stone_at, 0);
  self->timber = add_matters (self, "Timber", timber_at, 1);
  self->metal = add_matters (self, "Metal", metal_at, 2);
  self->built = add_choice (self, "Altars built of", "Steps are always of slabs on a core", gtk_string_list_new (built), 3);
  for (guint i = 0; i < G_N_ELEMENTS (fields); i++, line += 2)
    {
      add_field (self, i, line);
      if (fields[i].at != G_STRUCT_OFFSET (FpWorks, bolt))
        continue;
      line++;
      self->wide = add_choice (self, "Wider than the bolt", "Whether such pieces are cut in widths that are joined, selvedge to selvedge",
                               gtk_string_list_new (wide), line + 1);
    }
}

GtkWidget *
fp_works_form_new (FpDocument *document)
{
  FpWorksForm *self = g_object_new (FP_TYPE_WORKS_FORM, NULL);

  self->document = g_object_ref (document);
  add_all (self);
  fp_works_form_show (self);
  return GTK_WIDGET (self);
}
