/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is written: SVG that others can read, and files that are whole or not there. */
#include "drawing-private.h"

#include "parish.h"

#include <glib/gstdio.h>
#include <libxml/parser.h>
#include <libxml/xpath.h>
#include <libxml/xpathInternals.h>
#include <signal.h>
#include <string.h>
#include <sys/resource.h>
#include <unistd.h>

static FpPoint
on_paper (const FpProjectedLine *line, gboolean end)
{
  const FpPoint p = end ? line->b : line->a;

  return (FpPoint) { 210 + p.x / 50, 80 + p.y / 50 };
}

/* The lines of two views at 1:50, a dimension, and things that XML has to be careful with. */
static FpDrawing *
sample_new (const FpScene *scene)
{
  FpDrawing *drawing = fp_drawing_new (420, 297);
  guint n, n_placed;
  const FpPlaced *placed = fp_scene_placed (scene, &n_placed);
  const FpPoint area[] = { { 10, 10 }, { 40, 10 }, { 40, 40 }, { 10, 40 } };

  for (guint view = 0; view < 2; view++)
    {
      g_autoptr (FpProjection) projection = fp_projection_new (scene, (FpViewId) view);
      const FpProjectedLine *line = fp_projection_lines (projection, &n);
      for (guint i = 0; i < n; i++)
        {
          const FpPlaced *p = &placed[line[i].owner];
          fp_drawing_set_item (drawing, fp_item_id (p->item), p->standing, (int) view);
          fp_drawing_line (drawing, line[i].pen, on_paper (&line[i], FALSE), on_paper (&line[i], TRUE));
        }
    }
  fp_drawing_set_item (drawing, "altar", FP_STANDING_PROPOSED, FP_VIEW_ELEVATION);
  fp_drawing_set_dimension (drawing, 1, "length");
  fp_drawing_line (drawing, FP_PEN_DIMENSION, area[0], area[1]);
  fp_drawing_text (drawing, area[0], 2.5, 90, FP_ALIGN_MIDDLE, "2 < 3 & \"4\" \001\013 ½ – é");
  fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, -1);
  fp_drawing_set_dimension (drawing, 0, NULL);
  fp_drawing_area (drawing, FP_PEN_FRAME, FP_FILL_CUT, 45, area, 4);
  fp_drawing_circle (drawing, FP_PEN_OUTLINE, FP_FILL_INK, area[2], 3);
  return drawing;
}

/* --- SVG --------------------------------------------------------------------- */

typedef struct { xmlDoc *doc; xmlXPathContext *xpath; } Svg;

static void
svg_clear (Svg *svg)
{
  xmlXPathFreeContext (svg->xpath);
  xmlFreeDoc (svg->doc);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Svg, svg_clear)

static Svg
svg_of (const FpDrawing *drawing, const FpScene *scene)
{
  gsize length;
  g_autofree char *text = fp_drawing_to_svg (drawing, scene, "Elevation & plan", &length);
  Svg svg;

  g_assert_cmpuint (strlen (text), ==, length);
  svg.doc = xmlReadMemory (text, (int) length, "drawing.svg", NULL, XML_PARSE_NONET | XML_PARSE_NOERROR);
  g_assert_nonnull (svg.doc);
  svg.xpath = xmlXPathNewContext (svg.doc);
  xmlXPathRegisterNs (svg.xpath, BAD_CAST "s", BAD_CAST "http://www.w3.org/2000/svg");
  return svg;
}

static double
number_of (const Svg *svg, const char *expression)
{
  xmlXPathObject *found = xmlXPathEvalExpression (BAD_CAST expression, svg->xpath);
  double number;

  g_assert_nonnull (found);
  g_assert_cmpint (found->type, ==, XPATH_NUMBER);
  number = found->floatval;
  xmlXPathFreeObject (found);
  return number;
}

static char *
string_of (const Svg *svg, const char *expression)
{
  xmlXPathObject *found = xmlXPathEvalExpression (BAD_CAST expression, svg->xpath);
  char *text;

  g_assert_nonnull (found);
  g_assert_cmpint (found->type, ==, XPATH_STRING);
  text = g_strdup ((const char *) found->stringval);
  xmlXPathFreeObject (found);
  return text;
}

static void
assert_string (const Svg *svg, const char *expression, const char *expected)
{
  g_autofree char *found = string_of (svg, expression);

  g_assert_cmpstr (found, ==, expected);
}

static void
test_svg_structure (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpDrawing) drawing = sample_new (scene);
  g_auto (Svg) svg = svg_of (drawing, scene);

  assert_string (&svg, "string(/s:svg/@width)", "420mm");
  assert_string (&svg, "string(/s:svg/@height)", "297mm");
  assert_string (&svg, "string(/s:svg/@viewBox)", "0 0 420 297");
  assert_string (&svg, "string(/s:svg/s:title)", "Elevation & plan");
  g_assert_cmpfloat (number_of (&svg, "count(//s:image)"), ==, 0);
  g_assert_cmpfloat (number_of (&svg, "count(/s:svg/s:g[@class='view'])"), ==, 2);
  assert_string (&svg, "string(//s:g[@id='plan-altar']/s:title)", "Altar");
  assert_string (&svg, "string(//s:g[@id='plan-altar']/s:desc)", "Altar, proposed, at level +0.606");
  assert_string (&svg, "string(//s:g[@id='plan-altar']/@class)", "furnishing proposed");
  assert_string (&svg, "string(//s:g[@id='plan-old-altar-removed']/@class)", "furnishing removed");
  assert_string (&svg, "string(//s:g[@id='elevation-altar-dimension-1']/@data-parameter)", "length");
  /* Real text, with what XML cannot hold left out. */
  assert_string (&svg, "string(//s:g[@class='dimension']/s:text)", "2 < 3 & \"4\"  ½ – é");
  g_assert_cmpfloat (number_of (&svg, "count(//s:text)"), ==, 1);
}

static void
test_svg_ids (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpDrawing) drawing = sample_new (scene);
  g_auto (Svg) svg = svg_of (drawing, scene);
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  xmlXPathObject *ids = xmlXPathEvalExpression (BAD_CAST "//@id", svg.xpath);

  g_assert_cmpint (ids->nodesetval->nodeNr, >, 20);
  for (int i = 0; i < ids->nodesetval->nodeNr; i++)
    {
      xmlChar *id = xmlNodeGetContent (ids->nodesetval->nodeTab[i]);
      g_assert_cmpint (xmlValidateNCName (id, 0), ==, 0);
      g_assert_true (g_hash_table_add (seen, g_strdup ((const char *) id)));
      xmlFree (id);
    }
  xmlXPathFreeObject (ids);
}

/* Every line of the drawing is in the file: as many "move to" as runs, in the groups of their things. */
static void
test_svg_complete (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) plan = fp_projection_new (scene, FP_VIEW_PLAN);
  g_autoptr (FpDrawing) drawing = fp_drawing_new (420, 297);
  g_autofree char *text = NULL;
  guint n, moves = 0;
  const FpProjectedLine *line = fp_projection_lines (plan, &n);

  fp_drawing_set_item (drawing, "all", FP_STANDING_EXISTING, FP_VIEW_PLAN);
  for (guint i = 0; i < n; i++)
    fp_drawing_line (drawing, line[i].pen, on_paper (&line[i], FALSE), on_paper (&line[i], TRUE));
  text = fp_drawing_to_svg (drawing, NULL, NULL, NULL);
  for (const char *d = strstr (text, " d=\""); d != NULL; d = strstr (d + 1, " d=\""))
    for (const char *c = d + 4; *c != '"'; c++)
      moves += *c == 'M';
  g_assert_cmpuint (moves, ==, n);
}

/* An area painted between two marks of a thing stays between them. */
static void
test_svg_order (void)
{
  const FpPoint pt[] = { { 10, 10 }, { 40, 10 }, { 40, 40 }, { 10, 40 } };
  g_autoptr (FpDrawing) drawing = fp_drawing_new (100, 100);

  fp_drawing_set_item (drawing, "a", FP_STANDING_EXISTING, FP_VIEW_PLAN);
  fp_drawing_area (drawing, FP_PEN_OUTLINE, FP_FILL_TINT, 0, pt, 4);
  fp_drawing_set_item (drawing, "b", FP_STANDING_EXISTING, FP_VIEW_PLAN);
  fp_drawing_area (drawing, FP_PEN_OUTLINE, FP_FILL_PAPER, 0, pt, 4);
  fp_drawing_set_item (drawing, "a", FP_STANDING_EXISTING, FP_VIEW_PLAN);
  fp_drawing_line (drawing, FP_PEN_EDGE, pt[0], pt[2]); /* over b: a group of its own */
  fp_drawing_line (drawing, FP_PEN_EDGE, (FpPoint) { 60, 60 }, (FpPoint) { 70, 60 });
  fp_drawing_set_item (drawing, "b", FP_STANDING_EXISTING, FP_VIEW_PLAN);
  fp_drawing_line (drawing, FP_PEN_EDGE, (FpPoint) { 80, 60 }, (FpPoint) { 90, 60 }); /* over nothing: joins b */
  g_auto (Svg) svg = svg_of (drawing, NULL);
  g_assert_cmpfloat (number_of (&svg, "count(//s:g[@class='view']/s:g)"), ==, 3);
  assert_string (&svg, "string(//s:g[@class='view']/s:g[1]/@id)", "plan-a");
  assert_string (&svg, "string(//s:g[@class='view']/s:g[2]/@id)", "plan-b");
  assert_string (&svg, "string(//s:g[@class='view']/s:g[3]/@id)", "plan-a-2");
  g_assert_cmpfloat (number_of (&svg, "count(//s:g[@id='plan-b']/s:path)"), ==, 3);
}

static void
test_svg_repeats (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpDrawing) one = sample_new (scene), two = sample_new (scene);
  g_autofree char *a = fp_drawing_to_svg (one, scene, "T", NULL), *b = fp_drawing_to_svg (two, scene, "T", NULL);

  g_assert_cmpstr (a, ==, b);
}

/* --- files ------------------------------------------------------------------------ */

static char *
folder_new (void)
{
  g_autoptr (GError) error = NULL;
  char *folder = g_dir_make_tmp ("footpace-surfaces-XXXXXX", &error);

  g_assert_no_error (error);
  return folder;
}

static void
remove_folder (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_unlink (path);
    }
  g_rmdir (folder);
}

static gboolean
write_as (FpDrawing *drawing, guint type, const char *path, GError **error)
{
  switch (type)
    {
    case 0: return fp_drawing_write_pdf (&drawing, 1, "Title", "Author", path, error);
    case 1: return fp_drawing_write_png (drawing, 50, path, error);
    default: return fp_drawing_write_svg (drawing, NULL, "Title", path, error);
    }
}

static void
test_written (void)
{
  static const char *const starts[] = { "%PDF-", "\211PNG", "<?xml" };
  g_autofree char *folder = folder_new ();
  g_autofree char *path = g_build_filename (folder, "drawing", NULL);
  g_autoptr (FpDrawing) drawing = fp_drawing_new (210, 297);

  fp_drawing_line (drawing, FP_PEN_CUT, (FpPoint) { 10, 10 }, (FpPoint) { 20, 10 });
  for (guint type = 0; type < 3; type++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *bytes = NULL;
      gsize length;
      g_assert_true (write_as (drawing, type, path, &error));
      g_assert_no_error (error);
      g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
      g_assert_cmpuint (length, >, 100);
      g_assert_cmpint (memcmp (bytes, starts[type], strlen (starts[type])), ==, 0);
    }
  remove_folder (folder);
}

/* A folder that is not there, a folder in the place of the file, a picture of no size. */
static void
test_refused (void)
{
  g_autofree char *folder = folder_new ();
  g_autofree char *nowhere = g_build_filename (folder, "not-there", "drawing", NULL);
  g_autofree char *good = g_build_filename (folder, "picture.png", NULL);
  g_autoptr (FpDrawing) drawing = fp_drawing_new (210, 297);
  g_autoptr (GError) size = NULL;

  for (guint type = 0; type < 3; type++)
    {
      g_autoptr (GError) error = NULL, taken = NULL;
      g_assert_false (write_as (drawing, type, nowhere, &error));
      g_assert_error (error, FP_ERROR, FP_ERROR_WRITE);
      g_assert_nonnull (strstr (error->message, nowhere));
      g_assert_false (write_as (drawing, type, folder, &taken));
      g_assert_error (taken, FP_ERROR, FP_ERROR_WRITE);
    }
  g_assert_false (fp_drawing_write_png (drawing, 100000, good, &size));
  g_assert_error (size, FP_ERROR, FP_ERROR_WRITE);
  g_assert_false (g_file_test (good, G_FILE_TEST_EXISTS));
  remove_folder (folder);
}

/* A disk that is full: files may not grow beyond 64 bytes. The old file is whole, and nothing lies beside it. */
static void
test_full_disk (void)
{
  g_autofree char *folder = folder_new ();
  g_autofree char *path = g_build_filename (folder, "drawing", NULL);
  g_autoptr (FpDrawing) drawing = fp_drawing_new (210, 297);
  struct rlimit before, small;

  g_assert_true (g_file_set_contents (path, "the old drawing", -1, NULL));
  getrlimit (RLIMIT_FSIZE, &before);
  small = before;
  small.rlim_cur = 64;
  signal (SIGXFSZ, SIG_IGN);
  for (guint type = 0; type < 3; type++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *bytes = NULL;
      gboolean written;
      setrlimit (RLIMIT_FSIZE, &small);
      written = write_as (drawing, type, path, &error);
      setrlimit (RLIMIT_FSIZE, &before);
      g_assert_false (written);
      g_assert_error (error, FP_ERROR, FP_ERROR_WRITE);
      g_assert_true (g_file_get_contents (path, &bytes, NULL, NULL));
      g_assert_cmpstr (bytes, ==, "the old drawing");
    }
  g_unlink (path);
  g_assert_cmpint (g_rmdir (folder), ==, 0); /* so nothing was left behind */
}

/* A link is followed, not replaced; a device is written into. */
static void
test_link_and_device (void)
{
  g_autofree char *folder = folder_new ();
  g_autofree char *path = g_build_filename (folder, "drawing.svg", NULL);
  g_autofree char *link = g_build_filename (folder, "link.svg", NULL);
  g_autoptr (FpDrawing) drawing = fp_drawing_new (210, 297);
  g_autoptr (GError) error = NULL;
  g_autofree char *bytes = NULL;

  g_assert_true (g_file_set_contents (path, "old", -1, NULL));
  g_assert_cmpint (symlink (path, link), ==, 0);
  g_assert_true (fp_drawing_write_svg (drawing, NULL, NULL, link, &error));
  g_assert_no_error (error);
  g_assert_true (g_file_test (link, G_FILE_TEST_IS_SYMLINK));
  g_assert_true (g_file_get_contents (path, &bytes, NULL, NULL));
  g_assert_true (g_str_has_prefix (bytes, "<?xml"));
  g_assert_true (fp_drawing_write_svg (drawing, NULL, NULL, "/dev/null", &error));
  g_assert_no_error (error);
  if (g_file_test ("/dev/full", G_FILE_TEST_EXISTS))
    {
      g_assert_false (fp_drawing_write_svg (drawing, NULL, NULL, "/dev/full", &error));
      g_assert_error (error, FP_ERROR, FP_ERROR_WRITE);
    }
  remove_folder (folder);
}

/* The same drawing gives the same bytes when the date is given (reproducible-builds.org, SOURCE_DATE_EPOCH). */
static void
test_pdf_repeats (void)
{
  g_autofree char *folder = folder_new ();
  g_autofree char *path = g_build_filename (folder, "drawing.pdf", NULL);
  g_autoptr (FpDrawing) drawing = fp_drawing_new (210, 297);
  g_autofree char *one = NULL, *two = NULL;
  gsize n_one, n_two;

  fp_drawing_text (drawing, (FpPoint) { 30, 30 }, 5, 0, FP_ALIGN_LEFT, "Gospel side");
  g_setenv ("SOURCE_DATE_EPOCH", "1000000000", TRUE);
  g_assert_true (write_as (drawing, 0, path, NULL));
  g_assert_true (g_file_get_contents (path, &one, &n_one, NULL));
  g_usleep (1100000);
  g_assert_true (write_as (drawing, 0, path, NULL));
  g_assert_true (g_file_get_contents (path, &two, &n_two, NULL));
  g_unsetenv ("SOURCE_DATE_EPOCH");
  g_assert_cmpuint (n_one, ==, n_two);
  g_assert_cmpint (memcmp (one, two, n_one), ==, 0);
  remove_folder (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/surfaces/svg/structure", test_svg_structure);
  g_test_add_func ("/surfaces/svg/ids", test_svg_ids);
  g_test_add_func ("/surfaces/svg/complete", test_svg_complete);
  g_test_add_func ("/surfaces/svg/order", test_svg_order);
  g_test_add_func ("/surfaces/svg/repeats", test_svg_repeats);
  g_test_add_func ("/surfaces/files/written", test_written);
  g_test_add_func ("/surfaces/files/refused", test_refused);
  g_test_add_func ("/surfaces/files/full-disk", test_full_disk);
  g_test_add_func ("/surfaces/files/link-and-device", test_link_and_device);
  g_test_add_func ("/surfaces/pdf/repeats", test_pdf_repeats);
  return g_test_run ();
}
