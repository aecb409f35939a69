/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is written, read by others: PDF by poppler (poppler.freedesktop.org), SVG by librsvg
 * (gitlab.gnome.org/GNOME/librsvg).  Sizes and lengths are measured on their pictures, and the two are compared.
 *
 * Conversions: 1 mm = 72/25.4 pt; A3 landscape 420 × 297 mm (ISO 216; trimmed sheets as in tasstudent.com and
 * relderton.co.uk) = 1190.551 × 841.890 pt; 1 m at 1:50 = 20 mm. */
#include "drawing-private.h"

#include "church.h"
#include "parish.h"

#include <glib/gstdio.h>
#include <librsvg/rsvg.h>
#include <math.h>
#include <poppler.h>
#include <string.h>
#include <unistd.h>

#define POINTS_PER_MM (72.0 / 25.4)

G_DEFINE_AUTOPTR_CLEANUP_FUNC (PopplerDocument, g_object_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (PopplerPage, g_object_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RsvgHandle, g_object_unref)

/* --- reading ------------------------------------------------------------------- */

static PopplerDocument *
pdf_of (FpDrawing *drawing)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *folder = g_dir_make_tmp ("footpace-render-XXXXXX", &error);
  g_autofree char *path = g_build_filename (folder, "sheet.pdf", NULL);
  g_autofree char *data = NULL;
  g_autoptr (GBytes) bytes = NULL;
  PopplerDocument *document;
  gsize length;

  g_assert_true (fp_drawing_write_pdf (&drawing, 1, "Sanctuary of the test", "A. Drafter", path, &error));
  g_assert_true (g_file_get_contents (path, &data, &length, &error));
  bytes = g_bytes_new (data, length);
  document = poppler_document_new_from_bytes (bytes, NULL, &error);
  g_assert_no_error (error);
  g_unlink (path);
  g_rmdir (folder);
  return document;
}

static RsvgHandle *
svg_of (const FpDrawing *drawing)
{
  g_autoptr (GError) error = NULL;
  gsize length;
  g_autofree char *text = fp_drawing_to_svg (drawing, NULL, "Test", &length);
  RsvgHandle *handle = rsvg_handle_new_from_data ((const guint8 *) text, length, &error);

  g_assert_no_error (error);
  return handle;
}

/* Darkness of each dot, 0 white to 255 black. */
typedef struct { int width, height; guint8 *dot; } Picture;

static void
picture_clear (Picture *self)
{
  g_free (self->dot);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Picture, picture_clear)

static cairo_surface_t *
white_surface (const FpDrawing *drawing, double dots_per_mm)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24,
                                                         (int) lround (fp_drawing_width (drawing) * dots_per_mm),
                                                         (int) lround (fp_drawing_height (drawing) * dots_per_mm));
  cairo_t *cr = cairo_create (surface);

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_destroy (cr);
  return surface;
}

static Picture
picture_of (cairo_surface_t *surface)
{
  Picture p = { cairo_image_surface_get_width (surface), cairo_image_surface_get_height (surface), NULL };
  const int stride = cairo_image_surface_get_stride (surface);
  const guint8 *data;

  cairo_surface_flush (surface);
  data = cairo_image_surface_get_data (surface);
  p.dot = g_malloc ((gsize) p.width * (gsize) p.height);
  for (int y = 0; y < p.height; y++)
    for (int x = 0; x < p.width; x++)
      {
        const guint8 *c = data + y * stride + 4 * x;
        p.dot[y * p.width + x] = (guint8) (255 - (c[0] + c[1] + c[2]) / 3);
      }
  cairo_surface_destroy (surface);
  return p;
}

static Picture
render_pdf (FpDrawing *drawing, double dots_per_mm)
{
  g_autoptr (PopplerDocument) document = pdf_of (drawing);
  g_autoptr (PopplerPage) page = poppler_document_get_page (document, 0);
  cairo_surface_t *surface = white_surface (drawing, dots_per_mm);
  cairo_t *cr = cairo_create (surface);

  cairo_scale (cr, dots_per_mm / POINTS_PER_MM, dots_per_mm / POINTS_PER_MM);
  poppler_page_render (page, cr);
  cairo_destroy (cr);
  return picture_of (surface);
}

static Picture
render_svg (FpDrawing *drawing, double dots_per_mm)
{
  g_autoptr (RsvgHandle) handle = svg_of (drawing);
  g_autoptr (GError) error = NULL;
  cairo_surface_t *surface = white_surface (drawing, dots_per_mm);
  cairo_t *cr = cairo_create (surface);
  const RsvgRectangle all = { 0, 0, fp_drawing_width (drawing) * dots_per_mm,
                              fp_drawing_height (drawing) * dots_per_mm };

  rsvg_handle_render_document (handle, cr, &all, &error);
  g_assert_no_error (error);
  cairo_destroy (cr);
  return picture_of (surface);
}

/* Width and height of all ink, in mm: columns and rows by how dark their darkest dot is. */
static void
measure_ink (const Picture *p, double dots_per_mm, double *width, double *height)
{
  int x0 = p->width, x1 = -1, y0 = p->height, y1 = -1;

  for (int y = 0; y < p->height; y++)
    for (int x = 0; x < p->width; x++)
      if (p->dot[y * p->width + x] >= 90)
        {
          x0 = MIN (x0, x);
          x1 = MAX (x1, x);
          y0 = MIN (y0, y);
          y1 = MAX (y1, y);
        }
  *width = (x1 + 1 - x0) / dots_per_mm;
  *height = (y1 + 1 - y0) / dots_per_mm;
}

/* --- pages ------------------------------------------------------------------------ */

static void
test_page_sizes (void)
{
  static const struct { FpPaper paper; double width, height; } sheet[] = {
    { FP_PAPER_A4, 297, 210 }, { FP_PAPER_A3, 420, 297 }, { FP_PAPER_A2, 594, 420 }, { FP_PAPER_A1, 841, 594 },
    /* 11 × 8 1/2 in and 17 × 11 in (ANSI/ASME Y14.1, sizes A and B, from memory). */
    { FP_PAPER_LETTER, 279.4, 215.9 }, { FP_PAPER_TABLOID, 431.8, 279.4 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (sheet); i++)
    {
      double w, h;
      fp_paper_size (sheet[i].paper, TRUE, &w, &h);
      g_autoptr (FpDrawing) drawing = fp_drawing_new (w, h);
      g_autoptr (PopplerDocument) document = pdf_of (drawing);
      g_autoptr (PopplerPage) page = poppler_document_get_page (document, 0);
      g_autoptr (RsvgHandle) svg = svg_of (drawing);
      RsvgLength width, height;
      poppler_page_get_size (page, &w, &h);
      g_assert_cmpfloat_with_epsilon (w, sheet[i].width * POINTS_PER_MM, 0.01);
      g_assert_cmpfloat_with_epsilon (h, sheet[i].height * POINTS_PER_MM, 0.01);
      rsvg_handle_get_intrinsic_dimensions (svg, NULL, &width, NULL, &height, NULL, NULL);
      g_assert_cmpint (width.unit, ==, RSVG_UNIT_MM);
      g_assert_cmpfloat_with_epsilon (width.length, sheet[i].width, 1e-3);
      g_assert_cmpfloat_with_epsilon (height.length, sheet[i].height, 1e-3);
    }
}

/* The numbers printed in the sources, once more, not computed. */
static void
test_a3 (void)
{
  g_autoptr (FpDrawing) drawing = fp_drawing_new (420, 297);
  g_autoptr (PopplerDocument) document = pdf_of (drawing);
  g_autoptr (PopplerPage) page = poppler_document_get_page (document, 0);
  g_autofree char *title = poppler_document_get_title (document), *author = poppler_document_get_author (document);
  double w, h;

  poppler_page_get_size (page, &w, &h);
  g_assert_cmpfloat_with_epsilon (w, 1190.55, 0.01);
  g_assert_cmpfloat_with_epsilon (h, 841.89, 0.01);
  g_assert_cmpstr (title, ==, "Sanctuary of the test");
  g_assert_cmpstr (author, ==, "A. Drafter");
}

/* --- lengths ------------------------------------------------------------------------ */

/* A pier of 1000 × 2500 at 1:50, with half a line of 0.35 on either side. */
static FpDrawing *
pier_at_1_50 (void)
{
  FpProject *project = church_new (FP_FACING_EAST);
  FpDrawing *drawing = fp_drawing_new (100, 100);
  guint n;

  church_survey (&project, &(ChurchThing) { .kind = "pier", .id = "pier",
                                            .param = { { "shape", 1 }, { "width", 1000 }, { "height", 2500 } } });
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpProjection) elevation = fp_projection_new (scene, FP_VIEW_ELEVATION);
  const FpProjectedLine *line = fp_projection_lines (elevation, &n);
  const FpViewLayout layout = { .origin = { 50, 20 }, .scale = 50 };
  for (guint i = 0; i < n; i++)
    fp_drawing_line (drawing, line[i].pen, fp_view_to_paper (&layout, line[i].a),
                     fp_view_to_paper (&layout, line[i].b));
  fp_project_unref (project);
  return drawing;
}

static void
test_lengths (void)
{
  const double dots_per_mm = 40;
  g_autoptr (FpDrawing) drawing = pier_at_1_50 ();
  g_auto (Picture) pdf = render_pdf (drawing, dots_per_mm), svg = render_svg (drawing, dots_per_mm);
  double w, h;

  measure_ink (&pdf, dots_per_mm, &w, &h);
  g_assert_cmpfloat_with_epsilon (w, 20 + 0.35, 1.5 / dots_per_mm);
  g_assert_cmpfloat_with_epsilon (h, 50 + 0.35, 1.5 / dots_per_mm);
  measure_ink (&svg, dots_per_mm, &w, &h);
  g_assert_cmpfloat_with_epsilon (w, 20 + 0.35, 1.5 / dots_per_mm);
  g_assert_cmpfloat_with_epsilon (h, 50 + 0.35, 1.5 / dots_per_mm);
}

/* A line that runs upward from lower left on paper does so in both: y is turned over, once. */
static void
test_upright (void)
{
  g_autoptr (FpDrawing) drawing = fp_drawing_new (50, 50);
  const double dots_per_mm = 4;

  fp_drawing_line (drawing, FP_PEN_CUT, (FpPoint) { 5, 5 }, (FpPoint) { 20, 5 });
  fp_drawing_line (drawing, FP_PEN_CUT, (FpPoint) { 5, 5 }, (FpPoint) { 5, 45 });
  g_auto (Picture) pdf = render_pdf (drawing, dots_per_mm), svg = render_svg (drawing, dots_per_mm);
  g_assert_cmpuint (pdf.dot[45 * 4 * 200 + 12 * 4], >, 100);
  g_assert_cmpuint (svg.dot[45 * 4 * 200 + 12 * 4], >, 100);
  g_assert_cmpuint (pdf.dot[5 * 4 * 200 + 12 * 4], <, 10);
  g_assert_cmpuint (svg.dot[5 * 4 * 200 + 12 * 4], <, 10);
  g_assert_cmpuint (pdf.dot[10 * 4 * 200 + 5 * 4], >, 100);
  g_assert_cmpuint (svg.dot[10 * 4 * 200 + 5 * 4], >, 100);
}

/* --- lettering ------------------------------------------------------------------------ */

/* From the first letter's left to the last one's right, as poppler has them in the file, mm. */
static double
pdf_text_width (FpDrawing *drawing)
{
  g_autoptr (PopplerDocument) document = pdf_of (drawing);
  g_autoptr (PopplerPage) page = poppler_document_get_page (document, 0);
  PopplerRectangle *box = NULL;
  double x0 = G_MAXDOUBLE, x1 = -G_MAXDOUBLE;
  guint n;

  g_assert_true (poppler_page_get_text_layout (page, &box, &n));
  for (guint i = 0; i < n; i++)
    {
      x0 = MIN (x0, box[i].x1);
      x1 = MAX (x1, box[i].x2);
    }
  g_free (box);
  return (x1 - x0) / POINTS_PER_MM;
}

static double
svg_ink_width (FpDrawing *drawing)
{
  g_autoptr (RsvgHandle) handle = svg_of (drawing);
  const RsvgRectangle all = { 0, 0, fp_drawing_width (drawing), fp_drawing_height (drawing) };
  RsvgRectangle ink;

  rsvg_handle_set_dpi (handle, 25.4); /* the answer is in dots */
  g_assert_true (rsvg_handle_get_geometry_for_layer (handle, "#sheet-lines", &all, &ink, NULL, NULL));
  return ink.width;
}

static double
our_ink_width (const char *text, double height)
{
  PangoRectangle ink;

  pango_layout_get_extents (fp_lettering_layout (text), &ink, NULL);
  return ink.width * height / (FP_LETTERING_CAPITAL * PANGO_SCALE);
}

/* The same widths on the screen (Pango, as fp_lettering_width tells), in SVG and in PDF, but for how finely these
 * count.  librsvg sets letters to 1/1024 of a unit, here 1 mm, and tells ink to 1/64 (FreeType's).  In PDF, widths of
 * glyphs count in thousandths of the size of the font (ISO 32000-1, 9.2.4), and cairo writes whole ones: for each
 * letter less than one is lost, 0.0035 mm for letters 2.5 mm high; places count in 1/256 pt. */
static void
test_text_widths (void)
{
  static const char *const texts[] = { "ELEVATION, FACING EAST", "2 700", "+0.480", "Epistle side", "8' 10 1/4\"" };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    for (double height = 2.5; height < 8; height *= 1.4)
      {
        g_autoptr (FpDrawing) drawing = fp_drawing_new (420, 297);
        fp_drawing_text (drawing, (FpPoint) { 40, 100 }, height, 0, FP_ALIGN_LEFT, texts[i]);
        const double n = (double) strlen (texts[i]);
        g_assert_cmpfloat_with_epsilon (svg_ink_width (drawing), our_ink_width (texts[i], height), n / 2048 + 1.0 / 64);
        g_assert_cmpfloat_with_epsilon (pdf_text_width (drawing), fp_lettering_width (texts[i], height),
                                        n * fp_lettering_font_size (height) / 1000 + 25.4 / 72 / 256);
      }
}

static void
test_text_is_text (void)
{
  g_autoptr (FpDrawing) drawing = fp_drawing_new (420, 297);

  fp_drawing_text (drawing, (FpPoint) { 40, 100 }, 5, 0, FP_ALIGN_LEFT, "Sanctuary of the test, +0.480");
  g_autoptr (PopplerDocument) document = pdf_of (drawing);
  g_autoptr (PopplerPage) page = poppler_document_get_page (document, 0);
  g_autofree char *text = poppler_page_get_text (page);
  g_assert_cmpstr (g_strstrip (text), ==, "Sanctuary of the test, +0.480");
}

/* --- the two compared -------------------------------------------------------------------- */

static int
darkest_near (const Picture *p, int x, int y, int reach)
{
  int darkest = 0;

  for (int j = MAX (y - reach, 0); j <= MIN (y + reach, p->height - 1); j++)
    for (int i = MAX (x - reach, 0); i <= MIN (x + reach, p->width - 1); i++)
      darkest = MAX (darkest, p->dot[j * p->width + i]);
  return darkest;
}

/* Dots that are dark in one picture although nothing within a dot of them is half as dark in the other. */
static guint
count_missing (const Picture *one, const Picture *other)
{
  guint missing = 0;

  for (int y = 0; y < one->height; y++)
    for (int x = 0; x < one->width; x++)
      {
        const int dark = one->dot[y * one->width + x];
        if (dark >= 80 && darkest_near (other, x, y, 1) < dark / 2)
          missing++;
      }
  return missing;
}

static double
mean_difference (const Picture *one, const Picture *other)
{
  double sum = 0;

  for (int i = 0; i < one->width * one->height; i++)
    sum += ABS (one->dot[i] - other->dot[i]);
  return sum / (one->width * one->height);
}

static void
compare (FpDrawing *drawing, const char *what)
{
  const double dots_per_mm = 6;
  g_auto (Picture) pdf = render_pdf (drawing, dots_per_mm), svg = render_svg (drawing, dots_per_mm);
  const guint missing = count_missing (&pdf, &svg) + count_missing (&svg, &pdf);
  const double mean = mean_difference (&pdf, &svg);

  g_test_message ("%s: mean difference %.3f of 255, %u dots without counterpart", what, mean, missing);
  g_assert_cmpint (pdf.width, ==, svg.width);
  g_assert_cmpfloat (mean, <, 1.5);
  g_assert_cmpuint (missing, <=, 20);
}

static void
test_sheets_alike (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();

  for (guint kind = 0; kind < FP_N_SHEETS; kind++)
    {
      g_autoptr (GError) error = NULL;
      const FpSheetSpec spec = { .kind = (FpSheetKind) kind, .paper = FP_PAPER_A3, .landscape = TRUE,
                                 .date = "2031-05-04" };
      g_autoptr (FpDrawing) sheet = fp_sheet_new (scene, &spec, NULL, &error);
      g_assert_no_error (error);
      compare (sheet, fp_sheet_id ((FpSheetKind) kind));
    }
}

/* Every pen, fill, standing, alignment and turn. */
static void
test_marks_alike (void)
{
  g_autoptr (FpDrawing) drawing = fp_drawing_new (297, 210);

  for (guint standing = FP_STANDING_EXISTING; standing <= FP_STANDING_REMOVED; standing++)
    {
      const double x = 15 + 90 * standing;
      fp_drawing_set_item (drawing, "thing", (FpStanding) standing, FP_VIEW_PLAN);
      for (guint pen = 0; pen < FP_N_PENS; pen++)
        fp_drawing_line (drawing, (FpPen) pen, (FpPoint) { x, 10 + 5 * pen }, (FpPoint) { x + 70, 13 + 5 * pen });
      for (guint fill = FP_FILL_NONE; fill <= FP_FILL_INK; fill++)
        {
          const double y = 70 + 22 * fill;
          const FpPoint pt[] = { { x, y }, { x + 30, y }, { x + 25, y + 18 }, { x + 3, y + 15 } };
          fp_drawing_area (drawing, fill % 2 ? FP_PEN_HATCH : FP_PEN_OUTLINE, (FpFill) fill, 45 + 15 * fill, pt, 4);
          fp_drawing_circle (drawing, FP_PEN_EDGE, (FpFill) fill, (FpPoint) { x + 42, y + 9 }, 8);
          fp_drawing_text (drawing, (FpPoint) { x + 65, y + 9 }, 3.5, 30.0 * fill, (FpAlign) (fill % 3), "Rail 6 000");
        }
    }
  compare (drawing, "marks");
}

/* Its catalogue, found as every reader finds it (ISO 32000-1, 7.5.5): by the last startxref and its table. */
static void
test_language (void)
{
  g_autoptr (FpDrawing) drawing = fp_drawing_new (210, 297);
  FpDrawing *page = drawing;
  g_autofree char *path = NULL, *bytes = NULL;
  g_autoptr (GError) error = NULL;
  const char *table, *object;
  gsize length;
  const int fd = g_file_open_tmp ("footpace-XXXXXX.pdf", &path, &error);

  close (fd);
  fp_drawing_line (drawing, FP_PEN_EDGE, (FpPoint) { 10, 10 }, (FpPoint) { 200, 10 });
  g_assert_true (fp_drawing_write_pdf (&page, 1, "Title", "Author", path, &error));
  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  table = bytes + g_ascii_strtoull (g_strrstr_len (bytes, (gssize) length, "startxref") + 9, NULL, 10);
  g_assert_true (g_str_has_prefix (table, "xref\n"));
  object = bytes + g_ascii_strtoull (strchr (table + 5, '\n') + 1, NULL, 10);
  g_assert_nonnull (g_strstr_len (object, 200, "/Type /Catalog"));
  g_assert_nonnull (g_strstr_len (object, 200, "/Lang (en)"));
  g_remove (path);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/render/page-sizes", test_page_sizes);
  g_test_add_func ("/render/a3", test_a3);
  g_test_add_func ("/render/language", test_language);
  g_test_add_func ("/render/lengths", test_lengths);
  g_test_add_func ("/render/upright", test_upright);
  g_test_add_func ("/render/text-widths", test_text_widths);
  g_test_add_func ("/render/text-is-text", test_text_is_text);
  g_test_add_func ("/render/marks-alike", test_marks_alike);
  g_test_add_func ("/render/sheets-alike", test_sheets_alike);
  return g_test_run ();
}
