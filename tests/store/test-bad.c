/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-bad.c - files that are wrong, one fault each: refused with the line, what was found, what was expected */
#include "store-cases.h"

#include <glib/gstdio.h>
#include <string.h>

typedef struct
{
  const char *file;
  FpError     code;
  int         line;
  const char *says;   /* a part of the message                             */
  gboolean    schema; /* whether the schema alone, and so xmllint, refuses it too */
} BadFile;

#define S TRUE
#define N FALSE

static const BadFile files[] = {
  /* not XML, or not well-formed */
  { "empty", FP_ERROR_SYNTAX, 1, "the file is empty", S },
  { "plain-text", FP_ERROR_SYNTAX, 1, "this is not XML", S },
  { "binary", FP_ERROR_SYNTAX, 1, "byte 0x89 is not text", S },
  { "utf-16", FP_ERROR_SYNTAX, 1, "is not text in UTF-8", N },
  { "invalid-utf-8", FP_ERROR_SYNTAX, 4, "byte 0xDF is not text in UTF-8", S },
  { "latin-1", FP_ERROR_INVALID, 1, "its encoding is “ISO-8859-1”; UTF-8 is expected", N },
  { "not-closed", FP_ERROR_SYNTAX, 20, "</survey> was found; </pier> is expected, which was opened on line 19", S },
  { "mismatched", FP_ERROR_SYNTAX, 19, "</peer> was found; </pier> is expected", S },
  { "cut-short", FP_ERROR_SYNTAX, 22, "the file ends before <project> is closed", S },
  { "twice", FP_ERROR_SYNTAX, 23, "something follows the end of the project", S },
  { "attribute-twice", FP_ERROR_SYNTAX, 19, "“x” is given twice", S },
  { "no-quotes", FP_ERROR_SYNTAX, 19, "a value has no quotation marks", S },
  { "undefined-entity", FP_ERROR_SYNTAX, 4, "“&church;” is not defined", S },
  { "control-character", FP_ERROR_SYNTAX, 4, "a control character", S },
  { "unknown-prefix", FP_ERROR_SYNTAX, 19, "the prefix “fp” stands for no namespace", S },
  /* what a stranger would try */
  { "entity-bomb", FP_ERROR_INVALID, 2, "<!DOCTYPE was found", N },
  { "external-entity", FP_ERROR_INVALID, 2, "<!DOCTYPE was found", N },
  { "external-dtd", FP_ERROR_INVALID, 2, "<!DOCTYPE was found", N },
  /* another version, another format */
  { "later-version", FP_ERROR_VERSION, 2, "a later version of Footpace (its format is 2, this program reads 1)", S },
  { "later-namespace", FP_ERROR_VERSION, 2, "its format is 3", S },
  { "no-version", FP_ERROR_INVALID, 2, "version=\"1\" is expected", S },
  { "wrong-namespace", FP_ERROR_INVALID, 2, "of the namespace “urn:someone:else” was found", S },
  { "no-namespace", FP_ERROR_INVALID, 2, "of the namespace “” was found", S },
  { "another-root", FP_ERROR_INVALID, 2, "<survey> of the namespace", S },
  /* settings */
  { "setting-for-vespers", FP_ERROR_INVALID, 22, "“vespers” is no celebration", S },
  { "setting-twice", FP_ERROR_REFERENCE, 23, "the setting for “low” was given before, on line 22", N },
  { "setting-of-a-stranger", FP_ERROR_REFERENCE, 23, "has a thing “bell”", N },
  { "setting-thing-twice", FP_ERROR_REFERENCE, 24, "“c” was spoken of before in this setting, on line 23", N },
  { "setting-perhaps", FP_ERROR_INVALID, 23, "stands is “perhaps”; no or yes is expected", S },
  { "setting-half-a-light", FP_ERROR_RANGE, 23, "lit is 0.5; a whole number from 0 to 400", N },
  { "setting-too-many-lights", FP_ERROR_RANGE, 23, "lit is 401", N },
  { "setting-no-light", FP_ERROR_RANGE, 23, "lit is -1", N },
  { "setting-mauve", FP_ERROR_INVALID, 22, "colour is “mauve”; white, red,", S },
  { "setting-something-else", FP_ERROR_INVALID, 23, "<altar> was found in <setting>; <thing> is expected", S },
  { "setting-before-things", FP_ERROR_INVALID, 23, "<credence> was found after what is kept or set", S },
  { "kept-after-setting", FP_ERROR_INVALID, 23, "<kept> was found after", S },
  { "kept-twice", FP_ERROR_REFERENCE, 23, "where “c” is kept was said before, on line 22", N },
  { "kept-stranger", FP_ERROR_REFERENCE, 22, "has a thing “bell”", N },
  { "kept-in-two-lines", FP_ERROR_INVALID, 21, "c: ", N },
  /* not what the schema allows */
  { "no-brief", FP_ERROR_INVALID, 3, "<survey> was found; <brief> is expected", S },
  { "brief-out-of-order", FP_ERROR_INVALID, 9, "<seats> was found; <books> is expected", S },
  { "brief-cut", FP_ERROR_INVALID, 3, "<brief> has no <percentile>", S },
  { "unknown-books", FP_ERROR_INVALID, 9, "“oldest”; one of older, newer, both is expected", S },
  { "unknown-celebration", FP_ERROR_INVALID, 11, "“vespers” is no celebration", S },
  { "unknown-facing", FP_ERROR_INVALID, 20, "facing is “west”; one of east, people is expected", S },
  { "site-beyond-the-pole", FP_ERROR_RANGE, 17, "latitude is 90.5, allowed -90 to 90", N },
  { "site-of-a-path", FP_ERROR_INVALID, 17, "the time zone is no name such as", S },
  { "site-without-zone", FP_ERROR_INVALID, 17, "<site> has no “zone”", S },
  { "mass-on-no-day", FP_ERROR_INVALID, 17, "day is “someday”; monday to sunday, or month and day", S },
  { "mass-of-february", FP_ERROR_RANGE, 17, "a Mass is on no day", N },
  { "mass-before-site", FP_ERROR_INVALID, 18, "<site> was found; </brief> is expected here", S },
  { "mass-too-many", FP_ERROR_RANGE, 29, "more than 12 of <mass>", N },
  { "page-of-no-paper", FP_ERROR_INVALID, 22, "paper is “a9”; a4, a3, a2, a1, letter or tabloid is expected", S },
  { "page-without-ink", FP_ERROR_INVALID, 22, "<page> has no “ink”", S },
  { "page-unknown-part", FP_ERROR_INVALID, 22, "without is “roof”; some of building altar", S },
  { "page-out-of-order", FP_ERROR_INVALID, 22, "without is “names seats”; some of building altar", S },
  { "page-scale-between", FP_ERROR_RANGE, 22, "page: scale is 33.5; it may be a whole number", N },
  { "page-far-away", FP_ERROR_RANGE, 22, "page: along is 1000001 mm", N },
  { "page-twice", FP_ERROR_INVALID, 23, "<page> was found; </project> is expected after <page>", S },
  { "norms-of-the-moon", FP_ERROR_INVALID, 22, "jurisdiction is “moon”; unsaid, us, uk, eu or other is expected", S },
  { "norms-without-reason", FP_ERROR_INVALID, 23, "<aside> has no “reason”", S },
  { "norms-limit-of-nothing", FP_ERROR_INVALID, 22, "norms: the rule “rail-top” of “rail” is to be held otherwise, and it is not said how", N },
  { "norms-stranger", FP_ERROR_INVALID, 23, "<waiver> was found in <norms>; <without>, <choice>, <aside>, <limit> or <own> is expected there", S },
  { "norms-own-in-lines", FP_ERROR_INVALID, 23, "<rulebook> was found in <own>; <line> is expected there", S },
  { "norms-after-works", FP_ERROR_INVALID, 23, "<norms> was found; <page> is expected here", S },
  { "norms-book-twice", FP_ERROR_INVALID, 22, "norms: the book “rail” is left out twice", N },
  { "works-of-no-stone", FP_ERROR_INVALID, 22, "stone is “cheese”; marble, granite, limestone, oolite, sandstone or slate is expected", S },
  { "works-without-currency", FP_ERROR_INVALID, 22, "<works> has no “currency”", S },
  { "works-thin-slab", FP_ERROR_RANGE, 22, "works: the thickness of a slab is 4; it may be 10 to 300", N },
  { "works-wide-glued", FP_ERROR_INVALID, 22, "wide is “glued”; told or joined is expected", S },
  { "works-built-of-straw", FP_ERROR_INVALID, 22, "built is “straw”; slabs or blocks is expected", S },
  { "works-wide-joint", FP_ERROR_RANGE, 22, "works: the width of a joint is 21; it may be 0 to 20", N },
  { "works-rate-twice", FP_ERROR_INVALID, 22, "works: there are two rates for “mensa” of “altar”", N },
  { "works-rate-of-nothing", FP_ERROR_INVALID, 22, "works: a rate is for “sofa”, which is no kind of thing", N },
  { "works-rate-per-pound", FP_ERROR_INVALID, 23, "per is “lb”; one, m, m2, m3, ft, sq-ft or cu-ft is expected", S },
  { "works-rate-below-nothing", FP_ERROR_RANGE, 22, "works: a rate is -1; it may be 0 to 1000000000", N },
  { "works-after-page", FP_ERROR_INVALID, 23, "<works> was found; </project> is expected after <page>", S },
  { "works-twice", FP_ERROR_INVALID, 23, "<works> was found; <page> is expected here", S },
  { "capacity-of-nobody", FP_ERROR_RANGE, 22, "capacity: how many communicate is 0; it may be a whole number, 1 to 20000", N },
  { "capacity-half-a-minister", FP_ERROR_RANGE, 22, "capacity: how many give Communion is 2.5; it may be a whole number, 1 to 50", N },
  { "capacity-without-ministers", FP_ERROR_RANGE, 22, "capacity: how many give Communion is 0", N },
  { "capacity-in-no-time", FP_ERROR_RANGE, 22, "capacity: what one communicant takes is 0; it may be 0.1 to 600 seconds", N },
  { "capacity-before-it-begins", FP_ERROR_RANGE, 22, "capacity: the step to the next in a line is -1; it may be 0 to 600 seconds", N },
  { "capacity-for-ever", FP_ERROR_RANGE, 22, "back is “1e9”; a decimal number", S },
  { "capacity-very-long", FP_ERROR_RANGE, 22, "capacity: the change at a place of the rail is 1e+20; it may be 0 to 600 seconds", N },
  { "capacity-perhaps-wet", FP_ERROR_INVALID, 22, "sprinklers is “maybe”; yes or no is expected", S },
  { "capacity-stranger", FP_ERROR_INVALID, 22, "<capacity> has no attribute “hosts”", S },
  { "capacity-with-child", FP_ERROR_INVALID, 23, "<rate> was found in <capacity>, where nothing is expected", S },
  { "capacity-twice", FP_ERROR_INVALID, 23, "<capacity> was found; <page> is expected here", S },
  { "capacity-before-works", FP_ERROR_INVALID, 23, "<works> was found; <page> is expected here", S },
  { "unknown-statures", FP_ERROR_INVALID, 17, "“tall”; one of alike, varied is expected", S },
  { "people-out-of-order", FP_ERROR_INVALID, 18, "<seed> was found; </brief> is expected here", S },
  { "ministers", FP_ERROR_RANGE, 12, "<ministers> is “several”; a whole number is expected", S },
  { "no-alternative", FP_ERROR_INVALID, 2, "<project> has no <alternative>", S },
  { "stray-text", FP_ERROR_INVALID, 18, "the text “a pier stands here” was found in <survey>", S },
  { "text-in-thing", FP_ERROR_INVALID, 21, "the text “marble” was found in <altar>", S },
  { "element-in-text", FP_ERROR_INVALID, 4, "<b> was found in <title>, where only text is expected", S },
  { "unknown-kind", FP_ERROR_KIND, 19, "<cloak-stand> is a kind of thing that is not known; one of altar, footpace", S },
  { "unknown-kind-in-alternative", FP_ERROR_KIND, 21, "<thurible-stand> is a kind of thing that is not known", S },
  { "building-in-alternative", FP_ERROR_INVALID, 21, "it is expected in <survey>", S },
  { "unknown-attribute", FP_ERROR_INVALID, 21, "<altar> has no attribute “heigth”; it may have: id, name", S },
  { "foreign-attribute", FP_ERROR_INVALID, 21, "<altar> has no attribute “x”", S },
  { "foreign-element", FP_ERROR_INVALID, 21, "<altar> is of another namespace", S },
  { "no-id", FP_ERROR_INVALID, 21, "<altar> has no “id”", S },
  { "bad-id", FP_ERROR_INVALID, 21, "“1 st” is not an id", S },
  { "long-id", FP_ERROR_INVALID, 21, "at most 64 characters", S },
  { "corners-of-an-altar", FP_ERROR_INVALID, 22, "<corner> was found in <altar>, where nothing is expected", S },
  { "half-a-corner", FP_ERROR_INVALID, 20, "<corner> has no “y”", S },
  { "wrong-choice", FP_ERROR_INVALID, 21, "support is “marble”; one of block, legs, chest is expected", S },
  { "moved-after-things", FP_ERROR_INVALID, 23, "it is expected before them", S },
  /* numbers */
  { "not-a-number", FP_ERROR_RANGE, 21, "x is “NaN”; a decimal number", S },
  { "infinity", FP_ERROR_RANGE, 21, "x is “Infinity”; a decimal number", S },
  { "exponent", FP_ERROR_RANGE, 21, "x is “1e400”; a decimal number", S },
  { "comma", FP_ERROR_RANGE, 21, "height is “990,5”; a decimal number", S },
  { "unit", FP_ERROR_RANGE, 21, "height is “990mm”; a decimal number", S },
  { "endless-number", FP_ERROR_RANGE, 21, "with 500 characters", N },
  { "zero-size", FP_ERROR_RANGE, 21, "is 0 mm", N },
  { "negative-size", FP_ERROR_RANGE, 21, "-2400 mm", N },
  { "far-away", FP_ERROR_RANGE, 21, "a1: x is 1000000.5 mm; it may be from -1000000 mm to 1000000 mm", N },
  { "turned-round", FP_ERROR_RANGE, 21, "a1: turn is 36001°; it may be from -36000° to 36000°", N },
  { "number-of-two-lines", FP_ERROR_RANGE, 21, "height is “990 5”; a decimal number", S },
  { "half-a-step", FP_ERROR_RANGE, 21, "whole number", N },
  { "percentile", FP_ERROR_RANGE, 3, "percentile is 51, allowed 5, 50 or 95", N },
  { "seed", FP_ERROR_RANGE, 3, "seed is 1e+06, allowed 0 to 999999", N },
  { "children", FP_ERROR_RANGE, 3, "children is 1001, allowed 0 to 1000", N },
  { "long-name", FP_ERROR_LIMIT, 21, "2001 bytes long", N },
  /* references */
  { "missing-reference", FP_ERROR_REFERENCE, 22, "g: it stands on “a2”, which is not there", N },
  { "missing-reference-in-second", FP_ERROR_REFERENCE, 26, "g: it stands on “a1”, which is not there", N },
  { "doubled-id", FP_ERROR_REFERENCE, 21, "the id “p” was given before, on line 19", N },
  { "doubled-id-over-survey", FP_ERROR_REFERENCE, 22, "the id “table” was given before, on line 19", N },
  { "doubled-alternative", FP_ERROR_REFERENCE, 21, "the alternative “a” was given before, on line 20", N },
  { "on-itself", FP_ERROR_REFERENCE, 21, "g: it cannot stand on itself", N },
  { "circle", FP_ERROR_REFERENCE, 21, "things stand on each other in a circle", N },
  { "on-what-bears-nothing", FP_ERROR_REFERENCE, 22, "nothing can stand on t", N },
  { "removed-stranger", FP_ERROR_REFERENCE, 21, "font: the survey holds no such thing", N },
  { "removed-twice", FP_ERROR_REFERENCE, 23, "“c” was moved or removed before, on line 22", N },
  { "opening-in-no-wall", FP_ERROR_REFERENCE, 19, "o: it must be in a wall", N },
  { "opening-past-wall", FP_ERROR_RANGE, 23, "which is 3000 mm long", N },
  /* outlines */
  { "crossing-outline", FP_ERROR_GEOMETRY, 19, "crosses or touches itself", N },
  { "flat-outline", FP_ERROR_GEOMETRY, 19, "encloses nothing", N },
  { "two-corners", FP_ERROR_GEOMETRY, 19, "2 corners are given, at least 3 are needed", N },
};

static char *
path_of (const BadFile *bad)
{
  g_autofree char *file = g_strconcat (bad->file, ".footpace", NULL);

  return g_test_build_filename (G_TEST_DIST, "store", "bad", file, NULL);
}

static void
test_file (gconstpointer data)
{
  const BadFile *bad = data;
  g_autofree char *path = path_of (bad), *start = g_strdup_printf ("%s:%d: ", path, bad->line);
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) project = fp_store_load (path, &error);

  g_assert_null (project);
  g_test_message ("%s", error->message);
  g_assert_error (error, FP_ERROR, (int) bad->code);
  g_assert_true (g_str_has_prefix (error->message, start));
  g_assert_nonnull (strstr (error->message, bad->says));
  g_assert_true (g_utf8_validate (error->message, -1, NULL));
}

/* An independent reader (xmllint, of libxml2) agrees on what the schema can tell. */
static void
test_xmllint (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (files); i++)
    {
      g_autofree char *path = path_of (&files[i]), *says = NULL;
      int status;
      if (!files[i].schema)
        continue;
      if (!store_case_xmllint (path, &status, &says))
        {
          g_test_skip ("xmllint is not installed");
          return;
        }
      g_test_message ("%s", files[i].file);
      g_assert_cmpint (status, !=, 0);
    }
}

/* Every file of the folder is in the table. */
static void
test_complete (void)
{
  g_autofree char *folder = g_test_build_filename (G_TEST_DIST, "store", "bad", NULL);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n = 0;

  g_assert_nonnull (dir);
  while (g_dir_read_name (dir) != NULL)
    n++;
  g_assert_cmpuint (n, ==, G_N_ELEMENTS (files));
}

/* --- too much: made here, because a file would be large --- */

static const char HEAD[] =
  "<project xmlns=\"urn:footpace:project:1\" version=\"1\"><brief><title>T</title><place>P</place><client/><author/>"
  "<note/><books>both</books><facing>east</facing><celebrations/><ministers>3</ministers><seats>80</seats>"
  "<units>metric</units><north>90</north><percentile>50</percentile></brief><survey>\n";
static const char TAIL[] = "</survey><alternative id=\"a\" name=\"A\"/></project>\n";

static void
assert_refused (const GString *xml, FpError code, const char *says)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GTimer) timer = g_timer_new ();
  g_autoptr (FpProject) project = fp_store_parse (xml->str, xml->len, "much", &error);

  g_assert_null (project);
  g_test_message ("%.200s (%.2f s)", error->message, g_timer_elapsed (timer, NULL));
  g_assert_error (error, FP_ERROR, (int) code);
  g_assert_nonnull (strstr (error->message, says));
  g_assert_cmpfloat (g_timer_elapsed (timer, NULL), <, 20);
}

static void
test_bytes (void)
{
  g_autofree char *path = g_build_filename (g_get_tmp_dir (), "footpace-large.footpace", NULL);
  g_autofree char *spaces = g_malloc (17u * 1024 * 1024);
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) project = NULL;

  memset (spaces, ' ', 17u * 1024 * 1024);
  g_assert_true (g_file_set_contents (path, spaces, 17 * 1024 * 1024, NULL));
  project = fp_store_load (path, &error);
  g_remove (path);
  g_assert_null (project);
  g_assert_error (error, FP_ERROR, FP_ERROR_LIMIT);
  g_assert_nonnull (strstr (error->message, "17825792 bytes long, at most 16777216 are read"));
}

static void
test_depth (void)
{
  g_autoptr (GString) xml = g_string_new (HEAD);

  for (int i = 0; i < 100; i++)
    g_string_append (xml, "<pier>");
  assert_refused (xml, FP_ERROR_LIMIT, "deeper in each other than 16");
}

static void
test_elements (void)
{
  g_autoptr (GString) xml = g_string_new (HEAD);

  for (int i = 0; i < 1000000; i++)
    g_string_append (xml, "<pier/>\n");
  g_string_append (xml, TAIL);
  assert_refused (xml, FP_ERROR_LIMIT, "much:399");
}

static void
test_things (void)
{
  g_autoptr (GString) xml = g_string_new (HEAD);

  for (int i = 0; i < FP_ITEMS_MAX + 1; i++)
    g_string_append_printf (xml, "<pier id=\"p%d\" x=\"%d\"/>\n", i, i * 100);
  g_string_append (xml, TAIL);
  assert_refused (xml, FP_ERROR_LIMIT, "much:2002: more than 2000 things");
}

static void
test_corners (void)
{
  g_autoptr (GString) xml = g_string_new (HEAD);

  g_string_append (xml, "<floor id=\"f\">");
  for (int i = 0; i < FP_CORNERS_MAX + 1; i++)
    g_string_append_printf (xml, "<corner x=\"%d\" y=\"%d\"/>\n", i, i * i);
  g_string_append_printf (xml, "</floor>%s", TAIL);
  assert_refused (xml, FP_ERROR_LIMIT, "more than 2000 corners");
}

static void
test_alternatives (void)
{
  g_autoptr (GString) xml = g_string_new (HEAD);

  g_string_append (xml, "</survey>\n");
  for (int i = 0; i < FP_ALTERNATIVES_MAX + 1; i++)
    g_string_append_printf (xml, "<alternative id=\"a%d\" name=\"\"/>\n", i);
  g_string_append (xml, "</project>");
  assert_refused (xml, FP_ERROR_LIMIT, "more than 40 alternatives");
}

static void
test_attributes (void)
{
  g_autoptr (GString) xml = g_string_new (HEAD);

  g_string_append (xml, "<pier");
  for (int i = 0; i < 3000; i++)
    g_string_append_printf (xml, " a%d=\"\"", i);
  g_string_append_printf (xml, "/>%s", TAIL);
  assert_refused (xml, FP_ERROR_LIMIT, "more than 64 attributes");
}

/* libxml2 would compare millions of attributes with each other. */
static void
test_endless_tag (void)
{
  g_autoptr (GString) xml = g_string_new (HEAD);

  g_string_append (xml, "<pier");
  for (int i = 0; i < 1000000; i++)
    g_string_append_printf (xml, " a%d=\"\"", i);
  g_string_append_printf (xml, "/>%s", TAIL);
  assert_refused (xml, FP_ERROR_LIMIT, "longer than 65536 bytes");
}

/* All that is allowed is read, and in bearable time. */
static void
test_as_much_as_allowed (void)
{
  g_autoptr (GString) xml = g_string_new (HEAD);
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) project = NULL;

  for (int i = 0; i < FP_ITEMS_MAX; i++)
    g_string_append_printf (xml, "<pier id=\"p%d\" x=\"%d\"/>\n", i, i * 100);
  g_string_append (xml, "</survey>\n");
  for (int a = 0; a < FP_ALTERNATIVES_MAX; a++)
    {
      g_string_append_printf (xml, "<alternative id=\"a%d\" name=\"\">\n", a);
      for (int i = 0; i < 100; i++)
        g_string_append_printf (xml, "<ambo id=\"t%d\" x=\"%d\"/>\n", i, i * 100);
      g_string_append (xml, "</alternative>\n");
    }
  g_string_append (xml, "</project>");
  project = fp_store_parse (xml->str, xml->len, "much", &error);
  g_assert_no_error (error);
  g_assert_cmpuint (fp_project_n_survey (project), ==, FP_ITEMS_MAX);
  g_assert_cmpuint (fp_project_n_alternatives (project), ==, FP_ALTERNATIVES_MAX);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (files); i++)
    {
      g_autofree char *name = g_strconcat ("/bad/file/", files[i].file, NULL);
      g_test_add_data_func (name, &files[i], test_file);
    }
  g_test_add_func ("/bad/complete", test_complete);
  g_test_add_func ("/bad/xmllint", test_xmllint);
  g_test_add_func ("/bad/much/bytes", test_bytes);
  g_test_add_func ("/bad/much/depth", test_depth);
  g_test_add_func ("/bad/much/elements", test_elements);
  g_test_add_func ("/bad/much/things", test_things);
  g_test_add_func ("/bad/much/corners", test_corners);
  g_test_add_func ("/bad/much/alternatives", test_alternatives);
  g_test_add_func ("/bad/much/attributes", test_attributes);
  g_test_add_func ("/bad/much/endless-tag", test_endless_tag);
  g_test_add_func ("/bad/much/as-much-as-allowed", test_as_much_as_allowed);
  return g_test_run ();
}
