/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "print-preview.h"

#include <math.h>

/* Longest side of a page, px: one page is read, of many the order is looked at. */
#define PAGE_PX      1000.0
#define MANY_PAGE_PX 560.0
#define MANY         4
#define PAGES_MOST   60

typedef struct
{
  GtkPrintOperationPreview *preview; /* owned */
  GtkPrintContext          *context; /* owned */
  GtkPrintOperation        *operation; /* owned */
  GtkWidget                *window, *pages;
} Preview;

static void
preview_free (gpointer data)
{
  Preview *self = data;

  g_signal_handlers_disconnect_by_data (self->preview, self);
  gtk_print_operation_preview_end_preview (self->preview);
  g_object_unref (self->preview);
  g_object_unref (self->context);
  g_object_unref (self->operation);
  g_free (self);
}

static cairo_surface_t *
render (Preview *self, int page, double dots_per_mm)
{
  GtkPageSetup *setup = gtk_print_context_get_page_setup (self->context);
  const double w = gtk_page_setup_get_paper_width (setup, GTK_UNIT_MM) * dots_per_mm;
  const double h = gtk_page_setup_get_paper_height (setup, GTK_UNIT_MM) * dots_per_mm;
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, MAX ((int) round (w), 1),
                                                         MAX ((int) round (h), 1));
  cairo_t *cr = cairo_create (surface);

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  gtk_print_context_set_cairo_context (self->context, cr, dots_per_mm * 25.4, dots_per_mm * 25.4);
  gtk_print_operation_preview_render_page (self->preview, page);
  cairo_destroy (cr);
  return surface;
}

static GtkWidget *
picture_of (cairo_surface_t *surface, const char *label)
{
  const int w = cairo_image_surface_get_width (surface), h = cairo_image_surface_get_height (surface);
  const gsize stride = (gsize) cairo_image_surface_get_stride (surface);
  g_autoptr (GBytes) bytes = NULL;
  g_autoptr (GdkTexture) texture = NULL;
  GtkWidget *picture;

  cairo_surface_flush (surface);
  bytes = g_bytes_new (cairo_image_surface_get_data (surface), stride * (gsize) h);
  texture = gdk_memory_texture_new (w, h, G_BYTE_ORDER == G_LITTLE_ENDIAN ? GDK_MEMORY_B8G8R8A8 : GDK_MEMORY_A8R8G8B8,
                                    bytes, stride);
  picture = gtk_picture_new_for_paintable (GDK_PAINTABLE (texture));
  gtk_picture_set_can_shrink (GTK_PICTURE (picture), FALSE);
  gtk_picture_set_alternative_text (GTK_PICTURE (picture), label);
  gtk_widget_set_halign (picture, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (picture, "sheet");
  return picture;
}

static void
add_page (Preview *self, int page, int n)
{
  GtkPageSetup *setup = gtk_print_context_get_page_setup (self->context);
  const double longest = MAX (gtk_page_setup_get_paper_width (setup, GTK_UNIT_MM),
                              gtk_page_setup_get_paper_height (setup, GTK_UNIT_MM));
  cairo_surface_t *surface = render (self, page, (n > MANY ? MANY_PAGE_PX : PAGE_PX) / MAX (longest, 1.0));
  g_autofree char *label = g_strdup_printf ("Page %d of %d", page + 1, n);
  GtkWidget *caption = gtk_label_new (label);

  gtk_box_append (GTK_BOX (self->pages), picture_of (surface, label));
  gtk_widget_add_css_class (caption, "caption");
  gtk_box_append (GTK_BOX (self->pages), caption);
  cairo_surface_destroy (surface);
}

static void
on_ready (Preview *self)
{
  int n = 1;

  g_object_get (self->operation, "n-pages", &n, NULL);
  for (int i = 0; i < MIN (n, PAGES_MOST); i++)
    add_page (self, i, n);
  gtk_window_present (GTK_WINDOW (self->window));
}

static GtkWidget *
note_new (void)
{
  GtkWidget *note = gtk_label_new ("At 100 %: a drawing to scale is never fitted to the page. Measure the ruler on the print.");

  gtk_label_set_wrap (GTK_LABEL (note), TRUE);
  gtk_widget_add_css_class (note, "section");
  return note;
}

static void
build (Preview *self, GtkWindow *parent)
{
  GtkWidget *scrolled = gtk_scrolled_window_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->window = gtk_window_new ();
  gtk_window_set_title (GTK_WINDOW (self->window), "Print Preview");
  gtk_window_set_default_size (GTK_WINDOW (self->window), 1100, 780);
  if (parent != NULL)
    {
      gtk_window_set_transient_for (GTK_WINDOW (self->window), parent);
      gtk_window_set_modal (GTK_WINDOW (self->window), TRUE);
    }
  self->pages = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  gtk_widget_add_css_class (self->pages, "page");
  gtk_widget_set_vexpand (scrolled, TRUE);
  gtk_widget_add_css_class (scrolled, "desk");
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scrolled), self->pages);
  gtk_box_append (GTK_BOX (box), scrolled);
  gtk_box_append (GTK_BOX (box), note_new ());
  gtk_window_set_child (GTK_WINDOW (self->window), box);
}

static gboolean
on_escape (GtkWidget *widget, GVariant *args, gpointer data)
{
  (void) args, (void) data;
  gtk_window_close (GTK_WINDOW (widget));
  return TRUE;
}

static void
add_escape (GtkWidget *window)
{
  GtkEventController *keys = gtk_shortcut_controller_new ();

  gtk_shortcut_controller_add_shortcut (GTK_SHORTCUT_CONTROLLER (keys),
                                        gtk_shortcut_new (gtk_keyval_trigger_new (GDK_KEY_Escape, 0),
                                                          gtk_callback_action_new (on_escape, NULL, NULL)));
  gtk_widget_add_controller (window, keys);
}

/* The operation wants something to draw on before it is asked for a page. */
static void
give_paper (GtkPrintContext *context)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 1, 1);
  cairo_t *cr = cairo_create (surface);

  gtk_print_context_set_cairo_context (context, cr, 72, 72);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

static gboolean
on_preview (GtkPrintOperation *operation, GtkPrintOperationPreview *preview, GtkPrintContext *context, GtkWindow *parent,
            gpointer data)
{
  Preview *self = g_new0 (Preview, 1);

  (void) data;
  g_object_set_data (G_OBJECT (operation), "fp-previewed", operation);
  *self = (Preview) { .preview = g_object_ref (preview), .context = g_object_ref (context),
                      .operation = g_object_ref (operation) };
  build (self, parent);
  add_escape (self->window);
  give_paper (context);
  g_signal_connect_swapped (preview, "ready", G_CALLBACK (on_ready), self);
  g_object_set_data_full (G_OBJECT (self->window), "fp-preview", self, preview_free);
  return TRUE;
}

gboolean
fp_print_was_previewed (GtkPrintOperation *operation)
{
  return g_object_get_data (G_OBJECT (operation), "fp-previewed") != NULL;
}

void
fp_print_preview_connect (GtkPrintOperation *operation)
{
  g_signal_connect (operation, "preview", G_CALLBACK (on_preview), NULL);
}
