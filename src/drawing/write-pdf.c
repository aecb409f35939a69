/* SPDX-License-Identifier: GPL-3.0-or-later */
/* write-pdf.c - drawings as PDF and PNG */
#include "drawing-private.h"

#include "pdf-language.h"

#include <cairo-pdf.h>
#include <math.h>

#define POINTS_PER_MM (72.0 / FP_MM_PER_INCH)

/* cairo's image surfaces end here. */
#define PIXELS_MAX 32767.0

static cairo_status_t
take_bytes (void *closure, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (closure, data, length);
  return CAIRO_STATUS_SUCCESS;
}

/* A build that has to be repeatable sets SOURCE_DATE_EPOCH (reproducible-builds.org). */
static char *
date_of_writing (void)
{
  const char *epoch = g_getenv ("SOURCE_DATE_EPOCH");
  g_autoptr (GDateTime) when = NULL;

  if (epoch != NULL)
    when = g_date_time_new_from_unix_utc (g_ascii_strtoll (epoch, NULL, 10));
  if (when == NULL)
    when = g_date_time_new_now_utc ();
  return g_date_time_format (when, "%Y-%m-%dT%H:%M:%SZ");
}

static void
set_metadata (cairo_surface_t *surface, const char *title, const char *author)
{
  g_autofree char *date = date_of_writing ();

  if (title != NULL)
    cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_TITLE, title);
  if (author != NULL && *author != '\0')
    cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_AUTHOR, author);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATOR, "Footpace " FP_VERSION);
  cairo_pdf_surface_set_metadata (surface, CAIRO_PDF_METADATA_CREATE_DATE, date);
}

static void
add_page (cairo_surface_t *surface, cairo_t *cr, const FpDrawing *page)
{
  cairo_pdf_surface_set_size (surface, fp_drawing_width (page) * POINTS_PER_MM,
                              fp_drawing_height (page) * POINTS_PER_MM);
  cairo_save (cr);
  cairo_scale (cr, POINTS_PER_MM, POINTS_PER_MM);
  fp_drawing_paint (page, cr, FP_SURFACE_PAPER, FALSE);
  cairo_restore (cr);
  cairo_show_page (cr);
}

gboolean
fp_drawing_write_pdf (FpDrawing *const *page, guint n_pages, const char *title, const char *author,
                      const char *path, GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  cairo_surface_t *surface = cairo_pdf_surface_create_for_stream (take_bytes, bytes, 1, 1);
  cairo_t *cr = cairo_create (surface);
  cairo_status_t status;

  set_metadata (surface, title, author);
  for (guint i = 0; i < n_pages; i++)
    add_page (surface, cr, page[i]);
  status = cairo_status (cr);
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  if (status != CAIRO_STATUS_SUCCESS)
    return fp_write_failed (path, cairo_status_to_string (status), error);
  fp_pdf_add_language (bytes, "en");
  return fp_write_file (path, bytes->data, bytes->len, error);
}

static cairo_surface_t *
rendered (const FpDrawing *self, double dots_per_mm, int width, int height)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  cairo_t *cr = cairo_create (surface);

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_scale (cr, dots_per_mm, dots_per_mm);
  fp_drawing_paint (self, cr, FP_SURFACE_PAPER, TRUE);
  cairo_destroy (cr);
  return surface;
}

gboolean
fp_drawing_write_png (const FpDrawing *self, double dots_per_inch, const char *path, GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  const double dots_per_mm = dots_per_inch / FP_MM_PER_INCH;
  const double width = round (fp_drawing_width (self) * dots_per_mm);
  const double height = round (fp_drawing_height (self) * dots_per_mm);
  cairo_surface_t *surface;
  cairo_status_t status;

  if (!(width >= 1 && height >= 1 && width <= PIXELS_MAX && height <= PIXELS_MAX))
    return fp_write_failed (path, "a picture has 1 to 32767 dots each way; choose other dots per inch", error);
  surface = rendered (self, dots_per_mm, (int) width, (int) height);
  status = cairo_surface_write_to_png_stream (surface, take_bytes, bytes);
  cairo_surface_destroy (surface);
  if (status != CAIRO_STATUS_SUCCESS)
    return fp_write_failed (path, cairo_status_to_string (status), error);
  return fp_write_file (path, bytes->data, bytes->len, error);
}
