/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "brief-dialog.h"

#include "new-project.h"
#include "text-dialog.h"

typedef struct
{
  GtkBuilder        *builder;
  GtkWidget         *window, *error;
  FpDocument        *document;        /* of the brief                        */
  FpNewProjectAnswer answer;          /* of a new project                    */
  gpointer           data;
  GtkWidget         *celebration[FP_N_CELEBRATIONS];
} Dialog;

static void
dialog_free (gpointer data)
{
  Dialog *d = data;

  g_clear_object (&d->document);
  g_object_unref (d->builder);
  g_free (d);
}

static GtkWidget *
widget (Dialog *d, const char *id)
{
  return GTK_WIDGET (gtk_builder_get_object (d->builder, id));
}

static const char *
text (Dialog *d, const char *id)
{
  return gtk_editable_get_text (GTK_EDITABLE (widget (d, id)));
}

static void
set_text (Dialog *d, const char *id, const char *value)
{
  gtk_editable_set_text (GTK_EDITABLE (widget (d, id)), value);
}

static guint
selected (Dialog *d, const char *id)
{
  return gtk_drop_down_get_selected (GTK_DROP_DOWN (widget (d, id)));
}

static void
select_choice (Dialog *d, const char *id, guint value)
{
  gtk_drop_down_set_selected (GTK_DROP_DOWN (widget (d, id)), value);
}

static void
fail (Dialog *d, const GError *error)
{
  gtk_label_set_text (GTK_LABEL (d->error), error->message);
  gtk_widget_show (d->error);
}

static Dialog *
dialog_new (const char *resource, GtkWindow *parent, void (*accept) (Dialog *d))
{
  Dialog *d = g_new0 (Dialog, 1);

  d->builder = gtk_builder_new_from_resource (resource);
  d->window = widget (d, "window");
  d->error = widget (d, "error");
  gtk_window_set_transient_for (GTK_WINDOW (d->window), parent);
  g_object_set_data_full (G_OBJECT (d->window), "dialog", d, dialog_free);
  g_signal_connect_swapped (widget (d, "accept"), "clicked", G_CALLBACK (accept), d);
  g_signal_connect_swapped (widget (d, "cancel"), "clicked", G_CALLBACK (gtk_window_destroy), d->window);
  fp_close_on_escape (GTK_WINDOW (d->window));
  return d;
}

/* --- the brief ------------------------------------------------------------ */

static const guint percentiles[] = { 5, 50, 95 };

static void
add_celebrations (Dialog *d, guint chosen)
{
  for (guint i = 0; i < FP_N_CELEBRATIONS; i++)
    {
      FpCelebration one = (FpCelebration) (1u << i);

      d->celebration[i] = gtk_check_button_new_with_label (fp_celebration_label (one));
      gtk_check_button_set_active (GTK_CHECK_BUTTON (d->celebration[i]), (chosen & one) != 0);
      gtk_box_append (GTK_BOX (widget (d, "celebrations")), d->celebration[i]);
    }
}

static guint
chosen_celebrations (Dialog *d)
{
  guint chosen = 0;

  for (guint i = 0; i < FP_N_CELEBRATIONS; i++)
    if (gtk_check_button_get_active (GTK_CHECK_BUTTON (d->celebration[i])))
      chosen |= 1u << i;
  return chosen;
}

static void
show_brief (Dialog *d, const FpBrief *brief)
{
  g_autofree char *ministers = g_strdup_printf ("%u", brief->ministers);
  g_autofree char *seats = g_strdup_printf ("%u", brief->seats);
  g_autofree char *north = fp_number_format (brief->north);

  set_text (d, "title", brief->title);
  set_text (d, "place", brief->place);
  set_text (d, "client", brief->client);
  set_text (d, "author", brief->author);
  set_text (d, "ministers", ministers);
  set_text (d, "seats", seats);
  set_text (d, "north", north);
  select_choice (d, "books", brief->books);
  select_choice (d, "facing", brief->facing);
  select_choice (d, "units", brief->units);
  select_choice (d, "percentile", brief->percentile <= 5 ? 0 : brief->percentile >= 95 ? 2 : 1);
  add_celebrations (d, brief->celebrations);
}

static gboolean
read_count (Dialog *d, const char *id, const char *label, guint min, guint max, guint *value, GError **error)
{
  double number;

  if (!fp_number_parse (text (d, id), &number, error))
    {
      g_prefix_error (error, "%s: ", label);
      return FALSE;
    }
  if (!(number >= min && number <= max))
    {
      g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "%s: from %u to %u.", label, min, max);
      return FALSE;
    }
  *value = (guint) number;
  return TRUE;
}

static gboolean
read_brief (Dialog *d, FpBrief *brief, GError **error)
{
  brief->title = text (d, "title");
  brief->place = text (d, "place");
  brief->client = text (d, "client");
  brief->author = text (d, "author");
  brief->books = (FpBooks) selected (d, "books");
  brief->facing = (FpFacing) selected (d, "facing");
  brief->units = (FpUnits) selected (d, "units");
  brief->percentile = percentiles[MIN (selected (d, "percentile"), 2)];
  brief->celebrations = chosen_celebrations (d);
  if (!fp_number_parse (text (d, "north"), &brief->north, error))
    {
      g_prefix_error (error, "True north: ");
      return FALSE;
    }
  return read_count (d, "ministers", "Ministers", 1, 60, &brief->ministers, error)
         && read_count (d, "seats", "Seats wanted", 0, 20000, &brief->seats, error);
}

static void
on_brief_accept (Dialog *d)
{
  const FpProject *project = fp_document_project (d->document);
  FpBrief brief = *fp_project_brief (project);
  g_autoptr (GError) error = NULL;

  if (read_brief (d, &brief, &error)
      && fp_document_edit (d->document, fp_project_with_brief (project, &brief, &error), "The brief", NULL))
    gtk_window_destroy (GTK_WINDOW (d->window));
  else
    fail (d, error);
}

void
fp_brief_dialog_show (GtkWindow *parent, FpDocument *document)
{
  Dialog *d = dialog_new ("/org/footpace/Footpace/brief-dialog.ui", parent, on_brief_accept);

  d->document = g_object_ref (document);
  show_brief (d, fp_project_brief (fp_document_project (document)));
  gtk_window_present (GTK_WINDOW (d->window));
}

/* --- a new project -------------------------------------------------------- */

static const char *const lengths[] = { "nave-width", "nave-length", "sanctuary-width", "sanctuary-depth",
                                       "sanctuary-level" };

static gboolean
read_length (Dialog *d, const char *id, const char *label, FpUnits units, double *mm, GError **error)
{
  if (fp_length_parse (text (d, id), units, mm, error))
    return TRUE;
  g_prefix_error (error, "%s: ", label);
  return FALSE;
}

static gboolean
read_new (Dialog *d, FpNewProject *spec, GError **error)
{
  spec->title = text (d, "title");
  spec->place = text (d, "place");
  spec->books = (FpBooks) selected (d, "books");
  spec->units = (FpUnits) selected (d, "units");
  return read_length (d, "nave-width", "Width of the nave", spec->units, &spec->nave_width, error)
         && read_length (d, "nave-length", "Length of the nave", spec->units, &spec->nave_length, error)
         && read_length (d, "sanctuary-width", "Width of the sanctuary", spec->units, &spec->sanctuary_width, error)
         && read_length (d, "sanctuary-depth", "Depth of the sanctuary", spec->units, &spec->sanctuary_depth, error)
         && read_length (d, "sanctuary-level", "Level of its floor", spec->units, &spec->sanctuary_level, error);
}

static void
on_new_accept (Dialog *d)
{
  FpNewProject spec;
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) project = NULL;

  fp_new_project_defaults (&spec);
  if (read_new (d, &spec, &error))
    project = fp_new_project_make (&spec, &error);
  if (project == NULL)
    {
      fail (d, error);
      return;
    }
  gtk_widget_hide (d->window);
  d->answer (project, d->data);
  gtk_window_destroy (GTK_WINDOW (d->window));
}

static void
show_lengths (Dialog *d)
{
  FpNewProject spec;
  FpUnits units = (FpUnits) selected (d, "units");
  const double *value[] = { &spec.nave_width, &spec.nave_length, &spec.sanctuary_width, &spec.sanctuary_depth,
                            &spec.sanctuary_level };

  fp_new_project_defaults (&spec);
  for (guint i = 0; i < G_N_ELEMENTS (lengths); i++)
    {
      g_autofree char *shown = fp_length_format (*value[i], units);

      set_text (d, lengths[i], shown);
    }
}

/* What was typed keeps its length when other units are chosen. */
static void
on_units (Dialog *d)
{
  FpUnits now = (FpUnits) selected (d, "units");
  FpUnits was = now == FP_UNITS_METRIC ? FP_UNITS_IMPERIAL : FP_UNITS_METRIC;

  for (guint i = 0; i < G_N_ELEMENTS (lengths); i++)
    {
      double mm;

      if (fp_length_parse (text (d, lengths[i]), was, &mm, NULL))
        {
          g_autofree char *shown = fp_length_format (mm, now);

          set_text (d, lengths[i], shown);
        }
    }
}

void
fp_new_project_dialog_show (GtkWindow *parent, FpNewProjectAnswer answer, gpointer data)
{
  Dialog *d = dialog_new ("/org/footpace/Footpace/new-project-dialog.ui", parent, on_new_accept);

  d->answer = answer;
  d->data = data;
  select_choice (d, "books", FP_BOOKS_BOTH);
  show_lengths (d);
  g_signal_connect_swapped (widget (d, "units"), "notify::selected", G_CALLBACK (on_units), d);
  gtk_window_present (GTK_WINDOW (d->window));
}
