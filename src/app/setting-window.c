/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "setting-window.h"

#include "amiss.h"
#include "compat-4-8.h"
#include "setting-edit.h"

#include "footpace/card.h"

#include <string.h>

typedef struct
{
  FpSettingWindow *window;
  char            *id;
  GtkWidget       *name, *stands, *veiled, *lit, *of, *kept, *why;
} Row;

struct _FpSettingWindow
{
  GtkWindow   parent_instance;
  FpDocument *document;
  gboolean    showing;      /* the widgets are set by the program            */
  gboolean    chosen_here;  /* the board showed everything before            */
  GPtrArray  *rows;         /* of Row                                        */

  GtkWidget  *celebration, *colour, *colour_why, *grid, *state, *usual, *card;
};

G_DEFINE_FINAL_TYPE (FpSettingWindow, fp_setting_window, GTK_TYPE_WINDOW)

enum { THING, STANDS, VEILED, LIT, OF, KEPT, N_COLUMNS };

/* --- choices ------------------------------------------------------------------- */

GtkStringList *
fp_celebration_choices (void)
{
  GtkStringList *list = gtk_string_list_new (NULL);

  gtk_string_list_append (list, "All things");
  for (guint i = 0; i < FP_N_CELEBRATIONS; i++)
    {
      g_autofree char *label = g_strdup (fp_celebration_label ((FpCelebration) (1u << i)));

      label[0] = g_ascii_toupper (label[0]);
      gtk_string_list_append (list, label);
    }
  return list;
}

guint
fp_celebration_choice (guint celebration)
{
  return celebration == 0 ? 0 : 1 + fp_celebration_number ((FpCelebration) celebration);
}

guint
fp_celebration_chosen (guint choice)
{
  return choice == 0 || choice > FP_N_CELEBRATIONS ? 0 : 1u << (choice - 1);
}

static FpCelebration
celebration (FpSettingWindow *self)
{
  return (FpCelebration) fp_document_celebration (self->document);
}

/* --- edits ---------------------------------------------------------------------- */

static void
take (FpSettingWindow *self, FpProject *next, const char *label, const char *merge, const GError *error)
{
  g_autofree char *why = error != NULL ? fp_amiss_words (fp_document_scene (self->document), error->message) : g_strdup ("");

  gtk_label_set_text (GTK_LABEL (self->state), why);
  gtk_widget_set_visible (self->state, why[0] != '\0');
  fp_document_edit (self->document, next, label, merge);
}

static void
on_stands (Row *row)
{
  FpSettingWindow *self = row->window;
  g_autoptr (GError) error = NULL;

  if (self->showing)
    return;
  take (self, fp_setting_edit_stands (fp_document_project (self->document), fp_document_alternative (self->document),
                                      celebration (self), row->id,
                                      gtk_check_button_get_active (GTK_CHECK_BUTTON (row->stands)), &error),
        "Setting", NULL, error);
}

static void
on_veiled (Row *row)
{
  FpSettingWindow *self = row->window;
  g_autoptr (GError) error = NULL;

  if (self->showing)
    return;
  take (self, fp_setting_edit_veiled (fp_document_project (self->document), fp_document_alternative (self->document),
                                      celebration (self), row->id,
                                      gtk_check_button_get_active (GTK_CHECK_BUTTON (row->veiled)), &error),
        "Veil", NULL, error);
}

static void
on_lit (Row *row)
{
  FpSettingWindow *self = row->window;
  g_autoptr (GError) error = NULL;
  g_autofree char *merge = g_strdup_printf ("lit-%s-%s", fp_celebration_id (celebration (self)), row->id);

  if (self->showing)
    return;
  take (self, fp_setting_edit_lit (fp_document_project (self->document), fp_document_alternative (self->document),
                                   celebration (self), row->id,
                                   (guint) gtk_spin_button_get_value_as_int (GTK_SPIN_BUTTON (row->lit)), &error),
        "Lit Candles", merge, error);
}

static void
on_kept (Row *row)
{
  FpSettingWindow *self = row->window;
  const FpProject *project = fp_document_project (self->document);
  const guint alternative = fp_document_alternative (self->document);
  const char *text = gtk_editable_get_text (GTK_EDITABLE (row->kept));
  g_autoptr (GError) error = NULL;

  if (self->showing || strcmp (text, fp_alternative_kept (fp_project_alternative (project, alternative), row->id)) == 0)
    return;
  take (self, fp_project_with_kept (project, alternative, row->id, text, &error), "Where It Is Kept", NULL, error);
}

static void
on_kept_left (gpointer data)
{
  on_kept (data);
}

static void
on_colour (FpSettingWindow *self)
{
  const guint colour = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->colour));
  g_autoptr (GError) error = NULL;

  if (self->showing || colour >= FP_N_COLOURS)
    return;
  take (self, fp_project_with_colour (fp_document_project (self->document), fp_document_alternative (self->document),
                                      celebration (self), (FpColour) colour, &error), "Colour", NULL, error);
}

static void
on_usual (FpSettingWindow *self)
{
  g_autoptr (GError) error = NULL;

  take (self, fp_project_without_setting (fp_document_project (self->document), fp_document_alternative (self->document),
                                          celebration (self), &error), "Setting as Usual", NULL, error);
}

static void
on_celebration (FpSettingWindow *self)
{
  if (!self->showing)
    fp_document_set_celebration (self->document,
                                 fp_celebration_chosen (gtk_drop_down_get_selected (GTK_DROP_DOWN (self->celebration))));
}

static void
on_card (FpSettingWindow *self)
{
  GtkWindow *parent = gtk_window_get_transient_for (GTK_WINDOW (self));

  if (parent != NULL)
    gtk_widget_activate_action (GTK_WIDGET (parent), "win.sheet-card", NULL);
}

/* --- rows ------------------------------------------------------------------------ */

static void
row_free (gpointer data)
{
  Row *row = data;

  g_free (row->id);
  g_free (row);
}

static void
name_widget (GtkWidget *widget, const char *thing, const char *what)
{
  g_autofree char *name = g_strdup_printf ("%s: %s", thing, what);

  gtk_accessible_update_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

static GtkWidget *
put_label (FpSettingWindow *self, const char *text, int column, int at, int width, const char *style)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_widget_add_css_class (label, style);
  gtk_grid_attach (GTK_GRID (self->grid), label, column, at, width, 1);
  return label;
}

static void
add_row (FpSettingWindow *self, const FpSetThing *thing)
{
  const char *name = fp_item_name (thing->item);
  Row *row = g_new0 (Row, 1);
  const int at = 1 + 2 * (int) self->rows->len;

  row->window = self;
  row->id = g_strdup (fp_item_id (thing->item));
  row->name = put_label (self, name, THING, at, 1, "body");
  gtk_widget_set_hexpand (row->name, TRUE);
  gtk_label_set_ellipsize (GTK_LABEL (row->name), PANGO_ELLIPSIZE_END);
  row->stands = gtk_check_button_new ();
  row->veiled = gtk_check_button_new ();
  row->lit = gtk_spin_button_new_with_range (0, MAX (thing->lights, 1), 1);
  row->of = gtk_label_new (NULL);
  row->kept = gtk_entry_new ();
  gtk_entry_set_placeholder_text (GTK_ENTRY (row->kept), "not said");
  name_widget (row->stands, name, "stands");
  name_widget (row->veiled, name, "veiled");
  name_widget (row->lit, name, "how many are lit");
  name_widget (row->kept, name, "where it is kept");
  gtk_grid_attach (GTK_GRID (self->grid), row->stands, STANDS, at, 1, 1);
  gtk_grid_attach (GTK_GRID (self->grid), row->veiled, VEILED, at, 1, 1);
  gtk_grid_attach (GTK_GRID (self->grid), row->lit, LIT, at, 1, 1);
  gtk_grid_attach (GTK_GRID (self->grid), row->of, OF, at, 1, 1);
  gtk_grid_attach (GTK_GRID (self->grid), row->kept, KEPT, at, 1, 1);
  row->why = put_label (self, "", THING, at + 1, N_COLUMNS, "caption");
  gtk_label_set_wrap (GTK_LABEL (row->why), TRUE);
  g_ptr_array_add (self->rows, row);
  g_signal_connect_swapped (row->stands, "toggled", G_CALLBACK (on_stands), row);
  g_signal_connect_swapped (row->veiled, "toggled", G_CALLBACK (on_veiled), row);
  g_signal_connect_swapped (row->lit, "value-changed", G_CALLBACK (on_lit), row);
  g_signal_connect_swapped (row->kept, "activate", G_CALLBACK (on_kept), row);
  fp_when_focus_left (row->kept, on_kept_left, row);
}

static void
add_reason (GString *out, const FpReason *reason)
{
  if (reason->why == NULL)
    return;
  g_string_append_printf (out, "%s%c%s", out->len > 0 ? " " : "", g_ascii_toupper (reason->why[0]), reason->why + 1);
  if (reason->source[0] != '\0')
    g_string_append_printf (out, " (%s)", reason->source);
  g_string_append_c (out, '.');
}

static void
show_row (FpSettingWindow *self, Row *row, const FpSetThing *thing)
{
  const FpProject *project = fp_document_project (self->document);
  const FpAlternative *alternative = fp_project_alternative (project, fp_document_alternative (self->document));
  const char *kept = fp_alternative_kept (alternative, row->id);
  g_autofree char *of = thing->lights > 0 ? g_strdup_printf ("of %u", thing->lights) : g_strdup ("");
  g_autoptr (GString) why = g_string_new ("");

  gtk_check_button_set_active (GTK_CHECK_BUTTON (row->stands), thing->stands);
  gtk_check_button_set_active (GTK_CHECK_BUTTON (row->veiled), thing->veiled);
  gtk_widget_set_sensitive (row->veiled, thing->stands);
  gtk_widget_set_visible (row->lit, thing->lights > 0);
  gtk_widget_set_sensitive (row->lit, thing->stands);
  gtk_spin_button_set_range (GTK_SPIN_BUTTON (row->lit), 0, MAX (thing->lights, 1));
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (row->lit), thing->lit);
  gtk_label_set_text (GTK_LABEL (row->of), of);
  gtk_label_set_text (GTK_LABEL (row->name), fp_item_name (thing->item));
  if (strcmp (gtk_editable_get_text (GTK_EDITABLE (row->kept)), kept) != 0 && !gtk_widget_has_focus (row->kept))
    gtk_editable_set_text (GTK_EDITABLE (row->kept), kept);
  add_reason (why, &thing->standing);
  add_reason (why, &thing->veiling);
  add_reason (why, &thing->lighting);
  gtk_label_set_text (GTK_LABEL (row->why), why->str);
  gtk_widget_set_visible (row->why, why->len > 0);
}

/* What is set before a celebration, and then what is always there. */
static GPtrArray *
in_order (const FpSetting *setting)
{
  GPtrArray *things = g_ptr_array_new ();
  guint n;
  const FpSetThing *thing = fp_setting_things (setting, &n);

  for (gboolean set = TRUE; set >= FALSE; set--)
    for (guint i = 0; i < n; i++)
      if (!fp_card_sets (fp_item_kind (thing[i].item)->role) == !set)
        g_ptr_array_add (things, (gpointer) &thing[i]);
  return things;
}

static gboolean
are_the_same (FpSettingWindow *self, const GPtrArray *things)
{
  if (things->len != self->rows->len)
    return FALSE;
  for (guint i = 0; i < things->len; i++)
    if (strcmp (((Row *) self->rows->pdata[i])->id, fp_item_id (((const FpSetThing *) things->pdata[i])->item)) != 0)
      return FALSE;
  return TRUE;
}

static void
add_headings (FpSettingWindow *self)
{
  static const struct { int column; const char *text; } headings[] = {
    { THING, "Thing" }, { STANDS, "Stands" }, { VEILED, "Veiled" }, { LIT, "Lit" }, { KEPT, "Where it is kept" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (headings); i++)
    put_label (self, headings[i].text, headings[i].column, 0, 1, "group-title");
}

static void
make_rows (FpSettingWindow *self, const GPtrArray *things)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->grid)) != NULL)
    gtk_grid_remove (GTK_GRID (self->grid), child);
  g_ptr_array_set_size (self->rows, 0);
  add_headings (self);
  for (guint i = 0; i < things->len; i++)
    add_row (self, things->pdata[i]);
}

static void
show_colour (FpSettingWindow *self, const FpSetting *setting)
{
  const FpProject *project = fp_document_project (self->document);
  const FpColour said = fp_alternative_colour (fp_project_alternative (project, fp_document_alternative (self->document)),
                                               celebration (self));
  FpReason reason;
  const FpColour colour = fp_setting_colour (setting, &reason);
  g_autoptr (GString) why = g_string_new ("");

  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->colour), (guint) said);
  if (said == FP_COLOUR_UNSAID && colour != FP_COLOUR_UNSAID)
    add_reason (why, &reason);
  gtk_label_set_text (GTK_LABEL (self->colour_why), why->str);
  gtk_widget_set_visible (self->colour_why, why->len > 0);
}

static void
show (FpSettingWindow *self)
{
  const guint one = fp_document_celebration (self->document);
  g_autoptr (FpSetting) setting = NULL;
  g_autoptr (GPtrArray) things = NULL;

  if (fp_document_is_previewing (self->document))
    return;
  self->showing = TRUE;
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->celebration), fp_celebration_choice (one));
  gtk_widget_set_sensitive (self->grid, one != 0);
  gtk_widget_set_sensitive (self->colour, one != 0);
  gtk_widget_set_sensitive (self->usual, one != 0);
  if (one != 0)
    {
      setting = fp_setting_of (fp_document_project (self->document), fp_document_alternative (self->document),
                               (FpCelebration) one);
      things = in_order (setting);
      if (!are_the_same (self, things))
        make_rows (self, things);
      for (guint i = 0; i < things->len; i++)
        show_row (self, self->rows->pdata[i], things->pdata[i]);
      show_colour (self, setting);
    }
  self->showing = FALSE;
}

/* --- the window --------------------------------------------------------------------- */

static void
fp_setting_window_dispose (GObject *object)
{
  FpSettingWindow *self = FP_SETTING_WINDOW (object);

  self->showing = TRUE;
  if (self->document != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->document, self);
      if (self->chosen_here)
        fp_document_set_celebration (self->document, 0);
    }
  g_clear_object (&self->document);
  G_OBJECT_CLASS (fp_setting_window_parent_class)->dispose (object);
}

static void
fp_setting_window_finalize (GObject *object)
{
  g_ptr_array_unref (FP_SETTING_WINDOW (object)->rows);
  G_OBJECT_CLASS (fp_setting_window_parent_class)->finalize (object);
}

#define BIND(name) gtk_widget_class_bind_template_child (widget_class, FpSettingWindow, name)

static void
fp_setting_window_class_init (FpSettingWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fp_setting_window_dispose;
  G_OBJECT_CLASS (klass)->finalize = fp_setting_window_finalize;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/footpace/Footpace/setting-window.ui");
  BIND (celebration);
  BIND (colour);
  BIND (colour_why);
  BIND (grid);
  BIND (state);
  BIND (usual);
  BIND (card);
  gtk_widget_class_bind_template_callback (widget_class, on_celebration);
  gtk_widget_class_bind_template_callback (widget_class, on_colour);
  gtk_widget_class_bind_template_callback (widget_class, on_usual);
  gtk_widget_class_bind_template_callback (widget_class, on_card);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

#undef BIND

static GtkStringList *
colours (void)
{
  GtkStringList *list = gtk_string_list_new (NULL);

  gtk_string_list_append (list, "As usual");
  for (guint i = FP_COLOUR_UNSAID + 1; i < FP_N_COLOURS; i++)
    {
      g_autofree char *label = g_strdup (fp_colour_id ((FpColour) i));

      label[0] = g_ascii_toupper (label[0]);
      gtk_string_list_append (list, label);
    }
  return list;
}

static void
fp_setting_window_init (FpSettingWindow *self)
{
  g_autoptr (GtkStringList) celebrations = fp_celebration_choices ();
  g_autoptr (GtkStringList) colour_list = colours ();

  self->rows = g_ptr_array_new_with_free_func (row_free);
  self->showing = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->celebration), G_LIST_MODEL (celebrations));
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->colour), G_LIST_MODEL (colour_list));
  fp_name_buttons (GTK_WIDGET (self));
  self->showing = FALSE;
}

/* The first that the brief asks for, or low Mass. */
static guint
first_celebration (FpDocument *document)
{
  const guint asked = fp_project_brief (fp_document_project (document))->celebrations;

  for (guint i = 0; i < FP_N_CELEBRATIONS; i++)
    if ((asked & 1u << i) != 0)
      return 1u << i;
  return FP_CELEBRATION_LOW;
}

GtkWidget *
fp_setting_window_new (GtkWindow *parent, FpDocument *document)
{
  FpSettingWindow *self = g_object_new (FP_TYPE_SETTING_WINDOW, "transient-for", parent, NULL);

  self->document = g_object_ref (document);
  if (fp_document_celebration (document) == 0)
    {
      self->chosen_here = TRUE;
      fp_document_set_celebration (document, first_celebration (document));
    }
  g_signal_connect_swapped (document, "scene", G_CALLBACK (show), self);
  show (self);
  return GTK_WIDGET (self);
}
