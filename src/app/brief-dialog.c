/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "brief-dialog.h"

#include "brief-sun.h"
#include "built.h"
#include "field-tip.h"
#include "compat-4-8.h"
#include "text-dialog.h"

typedef struct
{
  GtkBuilder *builder;
  GtkWidget  *window, *error;
  FpDocument *document;
  GtkWidget  *celebration[FP_N_CELEBRATIONS];
} Dialog;

static void
dialog_free (gpointer data)
{
  Dialog *d = data;

  g_clear_object (&d->document);
  g_object_unref (d->builder);
  g_free (d);
}

static void
fail (Dialog *d, const GError *error)
{
  gtk_label_set_text (GTK_LABEL (d->error), error->message);
  gtk_widget_show (d->error);
}

static const guint percentiles[] = { 5, 50, 95 };

static void
add_celebrations (Dialog *d, guint chosen)
{
  for (guint i = 0; i < FP_N_CELEBRATIONS; i++)
    {
      FpCelebration one = (FpCelebration) (1u << i);

      d->celebration[i] = gtk_check_button_new_with_label (fp_celebration_label (one));
      gtk_check_button_set_active (GTK_CHECK_BUTTON (d->celebration[i]), (chosen & one) != 0);
      gtk_box_append (GTK_BOX (fp_built (d->builder, "celebrations")), d->celebration[i]);
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

static GtkTextBuffer *
note_of (Dialog *d)
{
  return gtk_text_view_get_buffer (GTK_TEXT_VIEW (fp_built (d->builder, "note")));
}

static char *
read_note (Dialog *d)
{
  GtkTextIter from, to;

  gtk_text_buffer_get_bounds (note_of (d), &from, &to);
  return gtk_text_buffer_get_text (note_of (d), &from, &to, FALSE);
}

static void
show_count (Dialog *d, const char *id, guint count)
{
  g_autofree char *text = g_strdup_printf ("%u", count);

  fp_built_set_text (d->builder, id, text);
}

static void
show_brief (Dialog *d, const FpBrief *brief)
{
  g_autofree char *north = fp_number_format (brief->north);

  fp_built_set_text (d->builder, "title", brief->title);
  fp_built_set_text (d->builder, "place", brief->place);
  fp_built_set_text (d->builder, "client", brief->client);
  fp_built_set_text (d->builder, "author", brief->author);
  gtk_text_buffer_set_text (note_of (d), brief->note, -1);
  show_count (d, "ministers", brief->ministers);
  show_count (d, "seats", brief->seats);
  fp_built_set_text (d->builder, "north", north);
  fp_built_select (d->builder, "books", brief->books);
  fp_built_select (d->builder, "facing", brief->facing);
  fp_built_select (d->builder, "units", brief->units);
  fp_built_select (d->builder, "percentile", brief->percentile <= 5 ? 0 : brief->percentile >= 95 ? 2 : 1);
  fp_brief_sun_show (d->builder, brief);
  fp_built_select (d->builder, "statures", brief->varied ? 1 : 0);
  show_count (d, "seed", brief->seed);
  if (brief->children > 0)
    show_count (d, "children", brief->children);
  add_celebrations (d, brief->celebrations);
}

/* Nothing is typed where there are none. */
static gboolean
read_children (Dialog *d, FpBrief *brief, GError **error)
{
  brief->children = 0;
  return *fp_built_text (d->builder, "children") == '\0'
         || fp_built_count (d->builder, "children", "Children: one person in every", 0, 1000, &brief->children, error);
}

static gboolean
read_brief (Dialog *d, FpBrief *brief, GError **error)
{
  brief->title = fp_built_text (d->builder, "title");
  brief->place = fp_built_text (d->builder, "place");
  brief->client = fp_built_text (d->builder, "client");
  brief->author = fp_built_text (d->builder, "author");
  brief->books = (FpBooks) fp_built_selected (d->builder, "books");
  brief->facing = (FpFacing) fp_built_selected (d->builder, "facing");
  brief->units = (FpUnits) fp_built_selected (d->builder, "units");
  brief->percentile = percentiles[MIN (fp_built_selected (d->builder, "percentile"), 2)];
  brief->varied = fp_built_selected (d->builder, "statures") == 1;
  brief->celebrations = chosen_celebrations (d);
  if (!fp_number_parse (fp_built_text (d->builder, "north"), &brief->north, error))
    {
      g_prefix_error (error, "True north: ");
      return FALSE;
    }
  return fp_built_count (d->builder, "ministers", "Ministers", 1, 60, &brief->ministers, error)
         && fp_built_count (d->builder, "seats", "Seats wanted", 0, 20000, &brief->seats, error)
         && fp_brief_sun_read (d->builder, brief, error)
         && fp_built_count (d->builder, "seed", "Seed", 0, 999999, &brief->seed, error)
         && read_children (d, brief, error);
}

static void
on_brief_accept (Dialog *d)
{
  const FpProject *project = fp_document_project (d->document);
  FpBrief brief = *fp_project_brief (project);
  g_autofree char *note = read_note (d);
  g_autoptr (GError) error = NULL;

  brief.note = note;
  if (read_brief (d, &brief, &error)
      && fp_document_edit (d->document, fp_project_with_brief (project, &brief, &error), "The brief", NULL))
    gtk_window_destroy (GTK_WINDOW (d->window));
  else
    fail (d, error);
}

void
fp_brief_dialog_show (GtkWindow *parent, FpDocument *document)
{
  Dialog *d = g_new0 (Dialog, 1);

  d->builder = gtk_builder_new_from_resource ("/org/footpace/Footpace/brief-dialog.ui");
  d->window = fp_built (d->builder, "window");
  d->error = fp_built (d->builder, "error");
  fp_field_tip (fp_built (d->builder, "seed"),
                "A number of your choice: with each, others are tall and short, and children sit elsewhere");
  fp_field_tip (fp_built (d->builder, "children"),
                "One in so many of those who sit is a child of seven years; empty: there are no children");
  d->document = g_object_ref (document);
  gtk_window_set_transient_for (GTK_WINDOW (d->window), parent);
  g_object_set_data_full (G_OBJECT (d->window), "dialog", d, dialog_free);
  g_signal_connect_swapped (fp_built (d->builder, "accept"), "clicked", G_CALLBACK (on_brief_accept), d);
  g_signal_connect_swapped (fp_built (d->builder, "cancel"), "clicked", G_CALLBACK (gtk_window_destroy), d->window);
  fp_close_on_escape (GTK_WINDOW (d->window));
  show_brief (d, fp_project_brief (fp_document_project (document)));
  fp_name_buttons (d->window);
  gtk_window_present (GTK_WINDOW (d->window));
}
