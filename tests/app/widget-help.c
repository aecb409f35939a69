/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "widget-help.h"

#include "samples.h"
#include "waiting.h"

FpDocument *
help_open_sample (const char *name)
{
  g_autofree char *path = fp_sample_path (name);
  g_autoptr (GError) error = NULL;
  FpDocument *document = fp_document_load (path, &error);

  g_assert_no_error (error);
  return document;
}

const FpPlaced *
help_altar (FpDocument *d)
{
  return &fp_scene_placed (fp_document_scene (d), NULL)[fp_scene_role (fp_document_scene (d), FP_ROLE_ALTAR)];
}

const char *
help_altar_id (FpDocument *d)
{
  return g_intern_string (fp_item_id (help_altar (d)->item));
}

/* A window that holds one widget. */
GtkWidget *
help_show (GtkWidget *child)
{
  GtkWidget *window = gtk_window_new ();

  gtk_window_set_default_size (GTK_WINDOW (window), 1000, 700);
  gtk_window_set_child (GTK_WINDOW (window), child);
  gtk_window_present (GTK_WINDOW (window));
  WAIT_FOR (gtk_widget_get_width (child) > 0);
  return window;
}

GtkWidget *
help_find_that (GtkWidget *top, HelpIs is, gconstpointer data)
{
  if (is (top, data))
    return top;
  for (GtkWidget *w = gtk_widget_get_first_child (top); w != NULL; w = gtk_widget_get_next_sibling (w))
    {
      GtkWidget *found = help_find_that (w, is, data);

      if (found != NULL)
        return found;
    }
  return NULL;
}

static gboolean
is_of_type (GtkWidget *widget, gconstpointer type)
{
  return G_TYPE_CHECK_INSTANCE_TYPE (widget, *(const GType *) type);
}

GtkWidget *
help_find (GtkWidget *top, GType type)
{
  return help_find_that (top, is_of_type, &type);
}

static gboolean
is_styled (GtkWidget *widget, gconstpointer css)
{
  return gtk_widget_has_css_class (widget, css);
}

GtkWidget *
help_find_styled (GtkWidget *top, const char *css)
{
  return help_find_that (top, is_styled, css);
}

static gboolean
is_called (GtkWidget *widget, gconstpointer id)
{
  return g_strcmp0 (gtk_buildable_get_buildable_id (GTK_BUILDABLE (widget)), id) == 0;
}

GtkWidget *
help_find_called (GtkWidget *top, const char *id)
{
  return help_find_that (top, is_called, id);
}

static gboolean
is_button (GtkWidget *widget, gconstpointer label)
{
  return GTK_IS_BUTTON (widget) && g_strcmp0 (gtk_button_get_label (GTK_BUTTON (widget)), label) == 0;
}

GtkWidget *
help_find_button (GtkWidget *top, const char *label)
{
  return help_find_that (top, is_button, label);
}
