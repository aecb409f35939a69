/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "arrange-dialog.h"

#include "amiss.h"
#include "compat-4-8.h"
#include "text-dialog.h"

#include "footpace/arrange.h"

#include <math.h>

#define PREVIEW_DELAY 150  /* ms after the last key: a hundred copies take a while */
#define TIMES_MAX     100

typedef struct _Ask Ask;
struct _Ask
{
  GtkWidget  *window, *grid, *error, *accept;
  FpDocument *document;    /* owned */
  char      **ids;         /* owned: what was chosen as it opened            */
  GtkWidget  *field[4];
  GPtrArray  *choices;     /* (of char *) ids in the order of the list       */
  GError     *none;        /* why there is nothing to choose                 */
  FpProject *(*make) (Ask *ask, char ***made, GError **error);
  char     *(*label) (Ask *ask);
  guint       preview_source;
  guint       rows;
};

static void
ask_free (gpointer data)
{
  Ask *ask = data;

  g_clear_handle_id (&ask->preview_source, g_source_remove);
  g_clear_pointer (&ask->choices, g_ptr_array_unref);
  g_clear_error (&ask->none);
  g_strfreev (ask->ids);
  g_object_unref (ask->document);
  g_free (ask);
}

static FpUnits
units_of (Ask *ask)
{
  return fp_project_brief (fp_document_project (ask->document))->units;
}

char *
fp_chosen_words (FpDocument *document)
{
  const FpPlaced *placed = fp_document_chosen_placed (document);
  const guint n = fp_document_n_chosen (document);

  return n == 1 && placed != NULL ? g_strdup (fp_item_name (placed->item)) : g_strdup_printf ("%u things", n);
}

/* --- showing what would be made -------------------------------------------- */

static void
tell_error (Ask *ask, const GError *error)
{
  g_autofree char *said = error != NULL ? fp_amiss_words (fp_document_base_scene (ask->document), error->message) : NULL;

  gtk_label_set_text (GTK_LABEL (ask->error), said != NULL ? said : "");
  gtk_widget_set_visible (ask->error, error != NULL);
  gtk_widget_set_sensitive (ask->accept, error == NULL);
}

static gboolean
preview (gpointer data)
{
  Ask *ask = data;
  g_autoptr (GError) error = NULL;
  FpProject *next = ask->make (ask, NULL, &error);

  ask->preview_source = 0;
  if (next != NULL)
    fp_document_preview (ask->document, next);
  else
    fp_document_drop_preview (ask->document);
  tell_error (ask, error);
  return G_SOURCE_REMOVE;
}

static void
preview_soon (Ask *ask)
{
  gtk_widget_set_sensitive (ask->accept, TRUE);
  g_clear_handle_id (&ask->preview_source, g_source_remove);
  ask->preview_source = g_timeout_add (PREVIEW_DELAY, preview, ask);
}

static void
on_accept (Ask *ask)
{
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) made = NULL;
  g_autofree char *label = ask->label (ask);
  FpProject *next = ask->make (ask, &made, &error);

  tell_error (ask, error);
  if (!fp_document_edit (ask->document, next, label, NULL))
    return;
  if (made != NULL)
    fp_document_choose_all (ask->document, (const char *const *) made);
  gtk_window_destroy (GTK_WINDOW (ask->window));
}

/* However it is closed: what was only shown is put back. */
static void
on_destroy (Ask *ask)
{
  g_clear_handle_id (&ask->preview_source, g_source_remove);
  fp_document_drop_preview (ask->document);
}

/* --- building -------------------------------------------------------------- */

static GtkWidget *
titlebar (Ask *ask, const char *accept)
{
  GtkWidget *bar = gtk_header_bar_new (), *cancel = gtk_button_new_with_mnemonic ("_Cancel");

  gtk_header_bar_set_show_title_buttons (GTK_HEADER_BAR (bar), FALSE);
  ask->accept = gtk_button_new_with_mnemonic (accept);
  gtk_widget_add_css_class (ask->accept, "suggested-action");
  gtk_header_bar_pack_start (GTK_HEADER_BAR (bar), cancel);
  gtk_header_bar_pack_end (GTK_HEADER_BAR (bar), ask->accept);
  g_signal_connect_swapped (cancel, "clicked", G_CALLBACK (gtk_window_destroy), ask->window);
  g_signal_connect_swapped (ask->accept, "clicked", G_CALLBACK (on_accept), ask);
  return bar;
}

static GtkWidget *
wrapped (const char *text, const char *css)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 44);
  gtk_widget_add_css_class (label, css);
  return label;
}

static Ask *
ask_new (GtkWindow *parent, FpDocument *document, const char *title, const char *accept, const char *says)
{
  Ask *ask = g_new0 (Ask, 1);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 10);

  ask->document = g_object_ref (document);
  ask->ids = g_strdupv ((char **) fp_document_chosen_all (document));
  ask->window = gtk_window_new ();
  ask->grid = gtk_grid_new ();
  ask->error = wrapped ("", "error");
  gtk_grid_set_row_spacing (GTK_GRID (ask->grid), 6);
  gtk_grid_set_column_spacing (GTK_GRID (ask->grid), 10);
  gtk_widget_hide (ask->error);
  gtk_widget_add_css_class (box, "page");
  gtk_box_append (GTK_BOX (box), wrapped (says, "dim-label"));
  gtk_box_append (GTK_BOX (box), ask->grid);
  gtk_box_append (GTK_BOX (box), ask->error);
  gtk_window_set_title (GTK_WINDOW (ask->window), title);
  gtk_window_set_titlebar (GTK_WINDOW (ask->window), titlebar (ask, accept));
  gtk_window_set_child (GTK_WINDOW (ask->window), box);
  gtk_window_set_modal (GTK_WINDOW (ask->window), TRUE);
  gtk_window_set_resizable (GTK_WINDOW (ask->window), FALSE);
  gtk_window_set_transient_for (GTK_WINDOW (ask->window), parent);
  gtk_window_set_destroy_with_parent (GTK_WINDOW (ask->window), TRUE);
  g_object_set_data_full (G_OBJECT (ask->window), "ask", ask, ask_free);
  g_signal_connect_swapped (ask->window, "destroy", G_CALLBACK (on_destroy), ask);
  fp_close_on_escape (GTK_WINDOW (ask->window));
  return ask;
}

static void
add_field (Ask *ask, GtkWidget *field, const char *label, const char *after)
{
  GtkWidget *name = gtk_label_new (label), *unit = gtk_label_new (after);
  const int row = (int) ask->rows;

  gtk_label_set_xalign (GTK_LABEL (name), 0.0f);
  gtk_widget_add_css_class (unit, "dim-label");
  gtk_widget_set_hexpand (field, TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (field), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  gtk_grid_attach (GTK_GRID (ask->grid), name, 0, row, 1, 1);
  gtk_grid_attach (GTK_GRID (ask->grid), field, 1, row, 1, 1);
  gtk_grid_attach (GTK_GRID (ask->grid), unit, 2, row, 1, 1);
  ask->field[ask->rows++] = field;
}

static void
add_entry (Ask *ask, const char *label, const char *text, const char *unit)
{
  GtkWidget *entry = gtk_entry_new ();

  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  gtk_entry_set_activates_default (GTK_ENTRY (entry), TRUE);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 14);
  g_signal_connect_swapped (entry, "changed", G_CALLBACK (preview_soon), ask);
  add_field (ask, entry, label, unit);
}

/* Enter accepts as in an entry; the space bar and the arrows open the list, in which Enter chooses. */
static gboolean
on_list_key (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state, Ask *ask)
{
  GtkWidget *focus = gtk_window_get_focus (GTK_WINDOW (ask->window));

  (void) keys, (void) code;
  if ((key != GDK_KEY_Return && key != GDK_KEY_KP_Enter && key != GDK_KEY_ISO_Enter)
      || (state & gtk_accelerator_get_default_mod_mask ()) != 0
      || (focus != NULL && gtk_widget_get_ancestor (focus, GTK_TYPE_POPOVER) != NULL))
    return GDK_EVENT_PROPAGATE;
  if (gtk_widget_get_sensitive (ask->accept))
    on_accept (ask);
  return GDK_EVENT_STOP;
}

static void
add_list (Ask *ask, const char *label, GtkStringList *names)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkWidget *list = gtk_drop_down_new (G_LIST_MODEL (names),
                                       gtk_property_expression_new (GTK_TYPE_STRING_OBJECT, NULL, "string"));

  gtk_drop_down_set_enable_search (GTK_DROP_DOWN (list), TRUE);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (on_list_key), ask);
  gtk_widget_add_controller (list, keys);
  gtk_widget_set_sensitive (list, ask->choices->len > 0);
  g_signal_connect_swapped (list, "notify::selected", G_CALLBACK (preview_soon), ask);
  add_field (ask, list, label, "");
}

static GtkWidget *
present (Ask *ask)
{
  gtk_window_set_default_widget (GTK_WINDOW (ask->window), ask->accept);
  fp_name_buttons (ask->window);
  gtk_window_present (GTK_WINDOW (ask->window));
  gtk_widget_grab_focus (ask->field[0]);
  preview_soon (ask);
  return ask->window;
}

/* --- further ones ---------------------------------------------------------- */

static gboolean
read_length (Ask *ask, guint field, const char *label, double *mm, GError **error)
{
  if (fp_length_parse (gtk_editable_get_text (GTK_EDITABLE (ask->field[field])), units_of (ask), mm, error))
    return TRUE;
  g_prefix_error (error, "%s: ", label);
  return FALSE;
}

static gboolean
read_times (Ask *ask, guint *times, GError **error)
{
  double number;

  if (!fp_number_parse (gtk_editable_get_text (GTK_EDITABLE (ask->field[0])), &number, error))
  {
    g_prefix_error (error, "How many more: ");
    return FALSE;
  }
  if (!(number >= 1 && number <= TIMES_MAX && number == floor (number)))
  {
    g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "How many more: a whole number from 1 to %d.", TIMES_MAX);
    return FALSE;
  }
  *times = (guint) number;
  return TRUE;
}

/* What was repeated remains chosen with its copies: they are a row now. */
static void
add_repeated (char **ids, char ***made)
{
  g_autoptr (GStrvBuilder) all = g_strv_builder_new ();
  char **copies = *made;

  g_strv_builder_addv (all, (const char **) ids);
  g_strv_builder_addv (all, (const char **) copies);
  *made = g_strv_builder_end (all);
  g_strfreev (copies);
}

static FpProject *
make_repeated (Ask *ask, char ***made, GError **error)
{
  FpVec3 by = { 0, 0, 0 };
  FpProject *next;
  guint times;

  if (!read_times (ask, &times, error) || !read_length (ask, 1, "Across", &by.x, error)
      || !read_length (ask, 2, "Along", &by.y, error) || !read_length (ask, 3, "Up", &by.z, error))
    return NULL;
  if (by.x == 0 && by.y == 0 && by.z == 0)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "Say how far: they would all stand in one place.");
      return NULL;
    }
  next = fp_arrange_repeat (fp_document_base_scene (ask->document), (const char *const *) ask->ids, by, times, made,
                            error);
  if (next != NULL && made != NULL && *made != NULL)
    add_repeated (ask->ids, made);
  return next;
}

static char *
label_repeated (Ask *ask)
{
  g_autofree char *what = fp_chosen_words (ask->document);

  return g_strdup_printf ("Repeat %s", what);
}

/* Beside one another on the side where they are: as wide as they are, and as much again as a hand needs. */
static double
usual_step (FpDocument *document)
{
  FpBox box = FP_BOX_EMPTY;

  for (const char *const *id = fp_document_chosen_all (document); *id != NULL; id++)
    fp_box_add_box (&box, &fp_document_placed (document, *id)->plan);
  return ceil ((box.x1 - box.x0) / 100.0) * 100.0 * (box.x0 + box.x1 < -1.0 ? -1.0 : 1.0);
}

GtkWidget *
fp_repeat_dialog_show (GtkWindow *parent, FpDocument *document)
{
  Ask *ask = ask_new (parent, document, "Repeat", "_Repeat",
                      "Sets out more of the like, each farther by the same than the one before.");
  const FpUnits units = units_of (ask);
  const char *unit = units == FP_UNITS_METRIC ? "mm" : "";
  g_autofree char *step = fp_length_format (usual_step (document), units), *none = fp_length_format (0.0, units);

  ask->make = make_repeated;
  ask->label = label_repeated;
  add_entry (ask, "How many more", "1", "");
  add_entry (ask, "Across (Epistle side +)", step, unit);
  add_entry (ask, "Along (east +)", none, unit);
  add_entry (ask, "Up", none, unit);
  return present (ask);
}

/* --- the level of another -------------------------------------------------- */

static FpProject *
make_level (Ask *ask, char ***made, GError **error)
{
  const guint i = gtk_drop_down_get_selected (GTK_DROP_DOWN (ask->field[0]));

  (void) made;
  if (i >= ask->choices->len)
    {
      g_propagate_error (error, g_error_copy (ask->none));
      return NULL;
    }
  return fp_arrange_level (fp_document_base_scene (ask->document), (const char *const *) ask->ids,
                           g_ptr_array_index (ask->choices, i), error);
}

static char *
label_level (Ask *ask)
{
  g_autofree char *what = fp_chosen_words (ask->document);

  return g_strdup_printf ("Level of %s", what);
}

static double
top_of (const FpPlaced *placed)
{
  return placed->level + (fp_box_is_empty (&placed->extent.bearing) ? placed->extent.height : placed->extent.top);
}

/* Only what can be matched is listed; where nothing can, what is wrong with all that was tried. */
static void
list_levels (Ask *ask, GtkStringList *names)
{
  const FpScene *scene = fp_document_base_scene (ask->document);
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    {
      const char *id = fp_item_id (placed[i].item);
      g_autofree char *level = fp_level_format (top_of (&placed[i]), units_of (ask));
      g_autofree char *name = g_strdup_printf ("%s, top at %s", fp_item_name (placed[i].item), level);
      g_autoptr (GError) why = NULL;

      if (placed[i].ghost || fp_document_is_chosen (ask->document, id))
        continue;
      if (fp_arrange_can_level (scene, (const char *const *) ask->ids, id, &why))
        {
          gtk_string_list_append (names, name);
          g_ptr_array_add (ask->choices, g_strdup (id));
        }
      else if (ask->none == NULL && g_error_matches (why, FP_ERROR, FP_ERROR_INVALID))
        ask->none = g_steal_pointer (&why);
    }
  if (ask->none == NULL)
    g_set_error (&ask->none, FP_ERROR, FP_ERROR_RANGE, "Nothing else here has its top at another level that can be "
                 "matched.");
}

GtkWidget *
fp_level_dialog_show (GtkWindow *parent, FpDocument *document)
{
  Ask *ask = ask_new (parent, document, "Match a Level", "_Match",
                      "Brings the top of what is chosen to the top of another thing: floors and galleries by their "
                      "level, other things by their height. Only what can be matched is listed.");
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  ask->make = make_level;
  ask->label = label_level;
  ask->choices = g_ptr_array_new_with_free_func (g_free);
  list_levels (ask, names);
  add_list (ask, "Like", g_steal_pointer (&names));
  return present (ask);
}

/* --- into another alternative ---------------------------------------------- */

static FpProject *
make_copy (Ask *ask, char ***made, GError **error)
{
  const guint i = gtk_drop_down_get_selected (GTK_DROP_DOWN (ask->field[0]));
  const FpScene *scene = fp_document_base_scene (ask->document);
  const int to = i < ask->choices->len
                 ? fp_project_find_alternative (fp_scene_project (scene), g_ptr_array_index (ask->choices, i)) : -1;

  (void) made;
  return fp_arrange_copy_to (scene, (const char *const *) ask->ids, to >= 0 ? (guint) to : fp_scene_alternative (scene),
                             error);
}

static char *
label_copy (Ask *ask)
{
  g_autofree char *what = fp_chosen_words (ask->document);

  return g_strdup_printf ("Copy %s to another alternative", what);
}

GtkWidget *
fp_copy_to_dialog_show (GtkWindow *parent, FpDocument *document)
{
  Ask *ask = ask_new (parent, document, "Copy to Another Alternative", "_Copy",
                      "What is chosen, and all that stands on it, is set out there in the same place. A thing of the "
                      "survey is kept, moved or removed there as it is here.");
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  const FpProject *project = fp_document_project (document);

  ask->make = make_copy;
  ask->label = label_copy;
  ask->choices = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < fp_project_n_alternatives (project); i++)
    if (i != fp_document_alternative (document))
      {
        const FpAlternative *other = fp_project_alternative (project, i);

        gtk_string_list_append (names, fp_alternative_name (other));
        g_ptr_array_add (ask->choices, g_strdup (fp_alternative_id (other)));
      }
  add_list (ask, "To", g_steal_pointer (&names));
  return present (ask);
}
