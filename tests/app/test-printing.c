/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What goes to the printer, exported to a file and read by another program's library (poppler). */
#include "printing-text.h"

#include "samples.h"
#include "sheets.h"

#include "footpace/store.h"

#include <glib/gstdio.h>
#include <math.h>
#include <poppler.h>
#include <string.h>

static FpSheets *
make (FpPaper paper, gboolean landscape)
{
  g_autofree char *path = fp_sample_path ("parish.footpace");
  g_autoptr (FpProject) project = fp_store_load (path, NULL);
  FpSheetOrder order = { .project = project, .alternative = 1, .page = { .sheet = FP_SHEET_ELEVATION, .paper = paper, .landscape = landscape } };
  FpSheets *sheets = fp_sheets_new (&order, NULL);

  g_assert_no_error (sheets->error);
  return sheets;
}

static void
print_to (const FpSheets *sheets, const char *path)
{
  g_autoptr (GtkPrintOperation) operation = fp_print_operation_new (sheets->pages, "test");
  g_autoptr (GError) error = NULL;

  gtk_print_operation_set_export_filename (operation, path);
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_EXPORT, NULL, &error);
  g_assert_no_error (error);
}

/* ISO 216: A3 is 297 mm by 420 mm; ANSI/ASME Y14.1: Letter is 8.5 in by 11 in. 1 pt = 1/72 in. */
static void
test_page_sizes (void)
{
  const struct { FpPaper paper; gboolean landscape; double w, h; } cases[] = {
    { FP_PAPER_A3, TRUE, 420.0, 297.0 }, { FP_PAPER_A4, FALSE, 210.0, 297.0 }, { FP_PAPER_LETTER, TRUE, 279.4, 215.9 },
  };
  g_autofree char *dir = g_dir_make_tmp ("footpace-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (dir, "printed.pdf", NULL);

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      FpSheets *sheets = make (cases[i].paper, cases[i].landscape);
      g_autofree char *uri = g_filename_to_uri (path, NULL, NULL);
      PopplerDocument *pdf;
      PopplerPage *page;
      double w, h;

      print_to (sheets, path);
      pdf = poppler_document_new_from_file (uri, NULL, NULL);
      g_assert_nonnull (pdf);
      g_assert_cmpint (poppler_document_get_n_pages (pdf), ==, (int) sheets->pages->len);
      page = poppler_document_get_page (pdf, 0);
      poppler_page_get_size (page, &w, &h);
      g_assert_cmpfloat_with_epsilon (w, cases[i].w * 72.0 / 25.4, 0.1);
      g_assert_cmpfloat_with_epsilon (h, cases[i].h * 72.0 / 25.4, 0.1);
      g_object_unref (page);
      g_object_unref (pdf);
      fp_sheets_free (sheets);
      g_unlink (path);
    }
  g_rmdir (dir);
}

/* Dark picture elements on a rendering of 4 dots a millimetre. */
static guint8 *
render (PopplerPage *page, cairo_surface_t **surface)
{
  double w, h;
  cairo_t *cr;

  poppler_page_get_size (page, &w, &h);
  *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int) (w * 25.4 / 72.0 * 4.0),
                                         (int) (h * 25.4 / 72.0 * 4.0));
  cr = cairo_create (*surface);
  cairo_set_source_rgb (cr, 1.0, 1.0, 1.0);
  cairo_paint (cr);
  cairo_scale (cr, 4.0 * 25.4 / 72.0, 4.0 * 25.4 / 72.0);
  poppler_page_render (page, cr);
  cairo_destroy (cr);
  cairo_surface_flush (*surface);
  return cairo_image_surface_get_data (*surface);
}

/* The frame of the sheet (ISO 5457: 20 mm to its left, 10 mm elsewhere) lies where it must: printed to scale, not
 * fitted to what the printer can print. */
static void
test_frame_is_to_scale (void)
{
  g_autofree char *dir = g_dir_make_tmp ("footpace-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (dir, "printed.pdf", NULL);
  g_autofree char *uri = g_filename_to_uri (path, NULL, NULL);
  FpSheets *sheets = make (FP_PAPER_A3, TRUE);
  PopplerDocument *pdf;
  PopplerPage *page;
  cairo_surface_t *surface;
  const guint8 *data;
  int y, left = -1, right = -1;

  print_to (sheets, path);
  pdf = poppler_document_new_from_file (uri, NULL, NULL);
  page = poppler_document_get_page (pdf, 0);
  data = render (page, &surface);
  y = cairo_image_surface_get_height (surface) / 3; /* away from the centring marks */
  for (int x = 0; x < cairo_image_surface_get_width (surface); x++)
    if (data[y * cairo_image_surface_get_stride (surface) + 4 * x] < 128)
      {
        if (left < 0)
          left = x;
        right = x;
      }
  g_assert_cmpint (left, >=, 0);
  g_assert_cmpfloat_with_epsilon (left / 4.0, 20.0, 0.6);
  g_assert_cmpfloat_with_epsilon (right / 4.0, 410.0, 0.6);
  cairo_surface_destroy (surface);
  g_object_unref (page);
  g_object_unref (pdf);
  fp_sheets_free (sheets);
  g_unlink (path);
  g_rmdir (dir);
}

/* --- lengths ----------------------------------------------------------------- */

/* From the first dark element of a line of the picture to the last; mm. */
static double
reach_along (cairo_surface_t *surface, int y, int x0, int x1)
{
  const guint8 *data = cairo_image_surface_get_data (surface);
  int first = -1, last = -1;

  for (int x = x0; x < x1; x++)
    if (data[y * cairo_image_surface_get_stride (surface) + 4 * x] < 128)
      {
        first = first < 0 ? x : first;
        last = x;
      }
  return first < 0 ? 0 : (last - first + 1) / 4.0;
}

/* The ruler at the foot of every page to be joined is 100 mm long on paper, and a page is an A4 (ISO 216). */
static void
test_tiles_are_to_scale (void)
{
  g_autofree char *path = fp_sample_path ("parish.footpace"), *dir = g_dir_make_tmp ("footpace-XXXXXX", NULL);
  g_autofree char *out = g_build_filename (dir, "tiles.pdf", NULL), *uri = g_filename_to_uri (out, NULL, NULL);
  g_autoptr (FpProject) project = fp_store_load (path, NULL);
  FpSheetOrder order = { .project = project, .alternative = 1,
                         .page = { .sheet = FP_SHEET_ELEVATION, .paper = FP_PAPER_A3, .landscape = TRUE, .scale = 20,
                                   .tiled = TRUE, .tile = FP_PAPER_A4 } };
  FpSheets *sheets = fp_sheets_new (&order, NULL);
  PopplerDocument *pdf;
  int n;

  g_assert_no_error (sheets->error);
  g_assert_false (fp_sheets_can_be (&order, "svg"));
  print_to (sheets, out);
  pdf = poppler_document_new_from_file (uri, NULL, NULL);
  n = poppler_document_get_n_pages (pdf);
  g_assert_cmpint (n, ==, (int) sheets->pages->len);
  g_assert_cmpint (n, >, 4);
  for (int i = 0; i < n; i++)
    {
      PopplerPage *page = poppler_document_get_page (pdf, i);
      cairo_surface_t *surface;
      double w, h, longest = 0;

      poppler_page_get_size (page, &w, &h);
      g_assert_cmpfloat_with_epsilon (MIN (w, h), 210 * 72 / 25.4, 0.1);
      g_assert_cmpfloat_with_epsilon (MAX (w, h), 297 * 72 / 25.4, 0.1);
      render (page, &surface);
      /* It begins 8 mm from the left and lies 13 mm from the foot. */
      for (int y = -3; y <= 3; y++)
        longest = MAX (longest, reach_along (surface, cairo_image_surface_get_height (surface) - 13 * 4 + y, 0, 111 * 4));
      g_assert_cmpfloat_with_epsilon (longest, 100.35, 0.5); /* with half a line at either end */
      cairo_surface_destroy (surface);
      g_object_unref (page);
    }
  g_object_unref (pdf);
  fp_sheets_free (sheets);
  g_unlink (out);
  g_rmdir (dir);
}

/* For a copier nothing is coloured: no element of the page has a hue. */
static void
test_grey_print (void)
{
  g_autofree char *path = fp_sample_path ("parish.footpace"), *dir = g_dir_make_tmp ("footpace-XXXXXX", NULL);
  g_autofree char *out = g_build_filename (dir, "grey.pdf", NULL), *uri = g_filename_to_uri (out, NULL, NULL);
  g_autoptr (FpProject) project = fp_store_load (path, NULL);

  for (guint ink = 0; ink < FP_N_INKS; ink++)
    {
      FpSheetOrder order = { .project = project, .alternative = 1,
                             .page = { .sheet = FP_SHEET_ELEVATION, .paper = FP_PAPER_A4, .ink = (FpInkChoice) ink } };
      FpSheets *sheets = fp_sheets_new (&order, NULL);
      PopplerDocument *pdf;
      PopplerPage *page;
      cairo_surface_t *surface;
      const guint8 *data;
      guint coloured = 0;

      print_to (sheets, out);
      pdf = poppler_document_new_from_file (uri, NULL, NULL);
      page = poppler_document_get_page (pdf, 0);
      data = render (page, &surface);
      for (int y = 0; y < cairo_image_surface_get_height (surface); y++)
        for (int x = 0; x < cairo_image_surface_get_width (surface); x++)
          {
            const guint8 *p = data + y * cairo_image_surface_get_stride (surface) + 4 * x;
            coloured += ABS (p[0] - p[1]) > 12 || ABS (p[1] - p[2]) > 12;
          }
      if (ink == FP_INK_GREY)
        g_assert_cmpuint (coloured, ==, 0);
      else
        g_assert_cmpuint (coloured, >, 1000);
      cairo_surface_destroy (surface);
      g_object_unref (page);
      g_object_unref (pdf);
      fp_sheets_free (sheets);
      g_unlink (out);
    }
  g_rmdir (dir);
}

/* All of a report is on the pages: its first line, its last, and each between, within the paper. */
static void
test_report (void)
{
  g_autofree char *dir = g_dir_make_tmp ("footpace-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (dir, "report.pdf", NULL);
  g_autofree char *uri = g_filename_to_uri (path, NULL, NULL);
  GString *text = g_string_new ("Findings\n========\n"), *read = g_string_new (NULL);
  g_autoptr (GtkPrintOperation) operation = NULL;
  g_autofree char *widest = g_strnfill (95, 'w');
  PopplerDocument *pdf;
  int n;

  for (guint i = 0; i < 200; i++)
    g_string_append_printf (text, "%s%03u\n", i == 77 ? widest : "line ", i);
  operation = fp_print_text_operation_new (text->str, "Holy Rood", FP_PAPER_LETTER);
  gtk_print_operation_set_export_filename (operation, path);
  gtk_print_operation_run (operation, GTK_PRINT_OPERATION_ACTION_EXPORT, NULL, NULL);
  pdf = poppler_document_new_from_file (uri, NULL, NULL);
  g_assert_nonnull (pdf);
  n = poppler_document_get_n_pages (pdf);
  g_assert_cmpint (n, >=, 2);
  g_assert_cmpint (n, <=, 5);
  for (int i = 0; i < n; i++)
    {
      PopplerPage *page = poppler_document_get_page (pdf, i);
      g_autofree char *words = poppler_page_get_text (page), *foot = g_strdup_printf ("%d / %d", i + 1, n);
      double w, h;

      poppler_page_get_size (page, &w, &h);
      g_assert_cmpfloat_with_epsilon (w, 8.5 * 72.0, 0.1); /* ANSI/ASME Y14.1: Letter is 8.5 in by 11 in */
      g_assert_cmpfloat_with_epsilon (h, 11.0 * 72.0, 0.1);
      g_assert_nonnull (strstr (words, foot));
      g_string_append (read, words);
      g_object_unref (page);
    }
  g_assert_nonnull (strstr (read->str, "Findings"));
  g_assert_null (strstr (read->str, "===="));
  for (guint i = 0; i < 200; i++)
    {
      g_autofree char *line = g_strdup_printf ("%s%03u", i == 77 ? widest : "line ", i);

      if (strstr (read->str, line) == NULL)
        g_error ("%s is not on the pages:\n%s", line, read->str);
    }
  g_object_unref (pdf);
  g_string_free (text, TRUE);
  g_string_free (read, TRUE);
  g_unlink (path);
  g_rmdir (dir);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/printing/page-sizes", test_page_sizes);
  g_test_add_func ("/printing/frame", test_frame_is_to_scale);
  g_test_add_func ("/printing/tiles", test_tiles_are_to_scale);
  g_test_add_func ("/printing/grey", test_grey_print);
  g_test_add_func ("/printing/report", test_report);
  return g_test_run ();
}
