/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The report: as text, as data, as lines for a sheet. */
#include "footpace/review.h"

#include "comma.h"
#include "taking.h"

#include <locale.h>
#include <math.h>
#include <string.h>

#define COLUMNS 100

static FpProject *
church (void)
{
  FpProject *project = taking_church (FP_BOOKS_OLDER, FP_FACING_EAST, FP_CELEBRATION_LOW);

  taking_survey (&project, "pews", "pews", 0, -2000, NULL, 0);
  taking_altar_group (&project, 2);
  return project;
}

/* One rule of a book of our own, on the length of the altar (2400): short or not as @low says. */
static FpFindings *
own_findings (const FpProject *project, const char *low, const char *title)
{
  g_autofree char *escaped = g_markup_escape_text (title, -1);
  g_autofree char *xml = g_strdup_printf (
    "<rulebook xmlns='urn:footpace:rulebook:1' id='own' title='Own book' edition='third'>"
    "<rule id='long' measure='mensa-length' test='at-least' low='%s' unit='mm' weight='required'><title>%s</title>"
    "<source>Own statutes, p. 3</source><advice>Lengthen it.</advice><caution>Ask first.</caution></rule></rulebook>",
    low, escaped);
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) books = g_ptr_array_new_with_free_func ((GDestroyNotify) fp_rulebook_unref);
  FpRulebook *book = fp_rulebook_parse (xml, strlen (xml), "own", &error);

  g_assert_no_error (error);
  g_ptr_array_add (books, book);
  return fp_findings_of (project, 0, books, NULL);
}

/* --- text ---------------------------------------------------------------- */

/* What no report may say. */
static const char *const promises[] = { "complies", "compliant", "compliance", "valid", "licit", "approved by",
                                        "conforms", "passed", "all clear" };

static void
test_clean (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpFindings) findings = own_findings (project, "2400", "Too short");
  g_autofree char *text = fp_report_text (findings, FALSE);

  g_assert_nonnull (strstr (text, "Church of the test, Nowhere"));
  /* It speaks of "the rules listed", and lists them. */
  g_assert_nonnull (strstr (text, "Rules looked at\n---------------\n"));
  g_assert_nonnull (strstr (text, "- Own book [own], 1 rule: 1 within. Edition: third\n"
                                  "  within   Length of the altar: 2\u202f400 mm; asked: at least 2\u202f400 mm; required "
                                  "[own: long]\n"));
  g_assert_true (g_str_has_suffix (text, "\nNo finding against the 1 rule listed.\n"));
}

static void
test_short (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpFindings) findings = own_findings (project, "2401", "Too short");
  g_autofree char *text = fp_report_text (findings, FALSE);

  g_assert_nonnull (strstr (text, "Required: 1\n-----------\n"));
  g_assert_nonnull (strstr (text, "1.  Too short\n"));
  g_assert_nonnull (strstr (text, "Own statutes, p. 3 [own: long]"));
  g_assert_nonnull (strstr (text, "Advice    Lengthen it."));
  g_assert_nonnull (strstr (text, "Caution   Ask first."));
  g_assert_nonnull (strstr (text, "Measured  2\u202f400 mm; asked: at least 2\u202f401 mm"));
  g_assert_nonnull (strstr (text, "Where     Altar\n"));
  g_assert_null (strstr (text, "No finding"));
  g_assert_nonnull (strstr (text, "- Own book [own], 1 rule: 1 short. Edition: third\n"));
  g_assert_null (strstr (text, "  short    Length of the altar"));
  g_assert_true (g_str_has_suffix (
    text, "\n1 of the 1 rule held was found short: 1 required, 0 recommended, 0 customary.\n"));
}

/* Every line fits; nothing is promised; every rule of every book is accounted for somewhere. */
static void
test_whole (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpFindings) findings = taking_findings (project, FALSE);
  g_autofree char *text = fp_report_text (findings, TRUE);
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  g_autoptr (GString) flat = g_string_new (NULL);
  guint n;
  const FpFinding *finding = fp_findings_get (findings, &n);

  for (guint i = 0; lines[i]; i++)
    {
      g_assert_cmpint (g_utf8_strlen (lines[i], -1), <=, COLUMNS);
      g_assert_false (g_str_has_suffix (lines[i], " "));
      g_string_append_printf (flat, "%s%s", i ? " " : "", g_strstrip (lines[i]));
    }
  for (guint i = 0; i < G_N_ELEMENTS (promises); i++)
    g_assert_null (strstr (flat->str, promises[i]));
  g_assert_nonnull (strstr (flat->str, "approve nothing"));
  g_assert_nonnull (strstr (flat->str, "waiting  Altar seen: sight and ways are still being computed"));
  g_assert_nonnull (strstr (flat->str, "nothing  Height of the rail: there is no rail before the altar"));
  g_assert_nonnull (strstr (flat->str, "apart    Ambo: for the newer form"));
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *name = g_strdup_printf ("[%s: %s]", fp_rulebook_id (finding[i].book), finding[i].rule->id);

      if (!strstr (flat->str, name))
        g_error ("%s is not in the report", name);
    }
}

/* Two risers are a short flight, and no more are needed. */
static void
set_flight_aside (FpProject **project)
{
  static const FpNormChange aside[] = {
    { "step-and-fall", "floor-flight-short", TRUE, NAN, NAN, "Two risers are enough." },
    { "step-and-fall", "handrail-short-flight", TRUE, NAN, NAN, "Ministers alone walk these steps." },
  };
  const FpNorms norms = { .jurisdiction = FP_JURISDICTION_US, .change = aside, .n_changes = G_N_ELEMENTS (aside) };
  FpProject *next = fp_project_with_norms (*project, &norms, NULL);

  fp_project_unref (*project);
  *project = next;
}

/* A whole church, and every built-in book but that which weighs each altar as if of stone: nothing is short. */
static FpProject *
good_church (void)
{
  static const struct { const char *item, *param; double value; } changed[] = {
    { "altar", "length", 2750 }, { "altar", "depth", 900 }, { "sticks", "height", 140 }, { "sticks", "gap", 1500 },
    { "way-up", "tread", 330.2 }, { "gradine", "height", 80 }, { "pews", "seat-width", 540 },
  };
  FpProject *project = taking_church (FP_BOOKS_OLDER, FP_FACING_EAST, FP_CELEBRATION_LOW);

  taking_wall (&project, "gospel-wall", -4000, 0, -4000, 10000);
  taking_wall (&project, "epistle-wall", 4000, 10000, 4000, 0);
  taking_survey (&project, "pews", "pews", 0, -2000, "rows", 1);
  taking_survey (&project, "wheelchair-places", "chairs", 2750, -1800, NULL, 0);
  taking_add (&project, "rail", "rail", NULL, 0, 405, NULL, 0);
  taking_add (&project, "gradine", "gradine", "altar", 0, 0, NULL, 0);
  taking_add (&project, "candlesticks", "sticks", "altar", 0, 0, "count", 2);
  taking_add (&project, "crucifix", "cross", "gradine", 0, 0, NULL, 0);
  taking_add (&project, "credence", "credence", NULL, 3400, 8000, NULL, 0);
  for (guint i = 0; i < G_N_ELEMENTS (changed); i++)
    church_param (&project, changed[i].item, changed[i].param, changed[i].value);
  set_flight_aside (&project);
  return project;
}

static void
test_nothing_short (void)
{
  static const char *const left_out[] = { "flame", "floor-and-weight", NULL };
  g_autoptr (FpProject) project = good_church ();
  g_autoptr (GPtrArray) books = fp_rulebooks_built_in ();
  g_autoptr (FpFindings) findings = NULL;
  g_autofree char *text = NULL, *flat = NULL;
  g_auto (GStrv) lines = NULL;
  guint n, within = 0;
  const FpFinding *finding;

  for (guint b = books->len; b-- > 0;)
    if (g_strv_contains (left_out, fp_rulebook_id (g_ptr_array_index (books, b))))
      g_ptr_array_remove_index (books, b);
  findings = fp_findings_of (project, 0, books, NULL);
  finding = fp_findings_get (findings, &n);
  for (guint i = 0; i < n; i++)
    {
      if (finding[i].found == FP_FOUND_SHORT)
        g_error ("%s: %s; asked: %s", finding[i].title, finding[i].measured, finding[i].limit);
      within += finding[i].found == FP_FOUND_WITHIN;
    }
  g_assert_cmpuint (within, >, 30);

  text = fp_report_text (findings, FALSE);
  flat = g_strdup_printf ("\nNo finding against the %u rules listed. %u others were not checked.\n", within,
                          n - within);
  g_assert_true (g_str_has_suffix (text, flat));
  g_assert_nonnull (strstr (text, "approve nothing"));
  g_assert_nonnull (strstr (text, "local code"));
  for (guint i = 0; i < G_N_ELEMENTS (promises); i++)
    g_assert_null (strstr (text, promises[i]));
  /* Each that is counted is listed. */
  lines = g_strsplit (text, "\n  within ", -1);
  g_assert_cmpuint (g_strv_length (lines), ==, within + 1);
}

/* --- lines --------------------------------------------------------------- */

static void
test_lines (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpFindings) good = own_findings (project, "2400", "Too short");
  g_autoptr (FpFindings) bad = own_findings (project, "2700", "Too short");
  g_auto (GStrv) none = fp_report_lines (good);
  g_auto (GStrv) one = fp_report_lines (bad);
  g_autofree char *length = fp_length_format_unit (2400, FP_UNITS_METRIC);
  g_autofree char *line = g_strdup_printf ("Required: Too short\nMeasured: %s; asked: at least 2\u202f700 mm.", length);

  g_assert_null (none[0]);
  g_assert_true (g_str_has_prefix (one[0], line));
  g_assert_nonnull (strstr (one[0], "\nSource: "));
  g_assert_null (one[1]);
}

/* --- norms --------------------------------------------------------------- */

/* Two of one reason, one of a limit of the parish's own, and a book that is not followed. */
static FpProject *
church_of_norms (void)
{
  static const FpNormChange changes[] = {
    { "step-and-fall", "riser-code", TRUE, NAN, NAN, "Kept as it is." },
    { "step-and-fall", "tread-code", TRUE, NAN, NAN, "Kept as it is." },
    { "own", "long", FALSE, 2500, NAN, "The bishop asks for it." },
  };
  static const char *const without[] = { "flame" };
  static const FpNormBook own = { "broken.xml", "<rulebook\n<" };
  const FpNorms norms = { .change = changes, .n_changes = G_N_ELEMENTS (changes), .without = without, .n_without = 1,
                          .own = &own, .n_own = 1 };
  g_autoptr (FpProject) project = church ();
  g_autoptr (GError) error = NULL;
  FpProject *next = fp_project_with_norms (project, &norms, &error);

  g_assert_no_error (error);
  return next;
}

static void
add_own (GPtrArray *books)
{
  static const char xml[]
    = "<rulebook xmlns='urn:footpace:rulebook:1' id='own' title='Own book' edition='third'>"
      "<rule id='long' measure='mensa-length' test='at-least' low='2000' unit='mm' weight='required'>"
      "<title>Too short</title><source>Own statutes, p. 3</source></rule></rulebook>";
  g_autoptr (FpRulebook) book = fp_rulebook_parse (xml, strlen (xml), "own", NULL);
  g_autofree char *why = NULL;

  g_assert_true (fp_rulebooks_add (books, book, &why));
}

/* Told before the findings, and at the end of a sheet: who reads that a rule was not found short must know that it was not held. */
static void
test_norms (void)
{
  g_autoptr (FpProject) project = church_of_norms ();
  g_autoptr (GPtrArray) books = fp_rulebooks_built_in ();
  g_autoptr (FpFindings) findings = NULL;
  g_autofree char *text = NULL, *flat = NULL, *limit = NULL;
  g_auto (GStrv) lines = NULL;
  const char *head_end;

  add_own (books);
  findings = fp_findings_of (project, 0, books, NULL);
  text = fp_report_text (findings, FALSE);
  head_end = strstr (text, "\n\n");
  g_assert_nonnull (head_end);
  flat = g_strndup (text, (gsize) (head_end - text));
  g_assert_nonnull (strstr (flat, "\nNot followed  Flame [flame], "));
  g_assert_nonnull (strstr (flat, "\nSet aside     2 rules: Riser of the altar steps; Tread of the altar steps (Kept as it is.)"));
  g_assert_nonnull (strstr (flat, "\nOtherwise     1 rule: Length of the altar (The bishop asks for it.)"));
  g_assert_nonnull (strstr (flat, "\nNorms         The rulebook “broken.xml” is left out: "));

  lines = fp_report_lines (findings);
  for (char **line = lines; *line != NULL; line++)
    if (strstr (*line, "Too short\n") != NULL)
      limit = g_strdup (*line);
  g_assert_nonnull (limit);
  g_assert_nonnull (strstr (limit, "\nNorms: The parish holds it otherwise than it is printed (at least 2\u202f000 mm): "
                                   "The bishop asks for it.\nSource: "));
  g_clear_pointer (&flat, g_free);
  flat = g_strjoinv ("\n", lines);
  g_assert_nonnull (strstr (flat, "\nNot followed by the parish: Flame [flame], "));
  g_assert_nonnull (strstr (flat, "\nSet aside by the parish: 2 rules: "));
  g_assert_nonnull (strstr (flat, "\nHeld otherwise than printed: 1 rule: "));
  g_assert_nonnull (strstr (flat, "\nThe rulebook “broken.xml” is left out: "));
}

/* --- JSON ---------------------------------------------------------------- */

/* Runs a Python that reads the JSON on its standard input as `d`; an independent reader of RFC 8259. */
static void
python (const char *json, const char *asserts)
{
  g_autofree char *program = g_find_program_in_path ("python3");
  g_autofree char *script = g_strconcat ("import json, sys\nd = json.loads(sys.stdin.buffer.read().decode('utf-8'))\n",
                                         asserts, NULL);
  const char *argv[] = { program, "-c", script, NULL };
  g_autoptr (GError) error = NULL;
  g_autoptr (GSubprocess) process = NULL;
  g_autoptr (GBytes) input = g_bytes_new (json, strlen (json));
  g_autoptr (GBytes) problems = NULL;

  if (!program)
    {
      g_test_skip ("python3 is not installed");
      return;
    }
  process = g_subprocess_newv (argv, G_SUBPROCESS_FLAGS_STDIN_PIPE | G_SUBPROCESS_FLAGS_STDERR_PIPE, &error);
  g_assert_no_error (error);
  g_assert_true (g_subprocess_communicate (process, input, NULL, NULL, &problems, &error));
  g_assert_no_error (error);
  if (g_bytes_get_size (problems))
    g_test_message ("%.*s", (int) g_bytes_get_size (problems), (const char *) g_bytes_get_data (problems, NULL));
  g_assert_cmpint (g_subprocess_get_exit_status (process), ==, 0);
}

/* The remedy of one, and what stands in the way of another; nothing of either where nobody asked. */
static void
test_remedied (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpFindings) settled = own_findings (project, "2500", "Too short"), hindered = own_findings (project, "9000", "Too short");
  g_autoptr (FpRemedies) a = fp_remedies_new (settled, NULL), b = fp_remedies_new (hindered, NULL);
  g_autofree char *one = fp_report_text_remedied (settled, FALSE, a), *other = fp_report_text_remedied (hindered, FALSE, b);
  g_autofree char *plain = fp_report_text (settled, FALSE), *json = fp_report_json_remedied (settled, a);
  g_autofree char *json_b = fp_report_json_remedied (hindered, b);

  g_assert_nonnull (strstr (one, "Remedy    Altar: Length of the mensa from 2\u202f400 mm to 2\u202f500 mm\n"));
  g_assert_null (strstr (one, "Hindrance"));
  g_assert_nonnull (strstr (other, "Hindrance "));
  g_assert_null (strstr (other, "Remedy    "));
  g_assert_null (strstr (plain, "Remedy    "));
  python (json, "r = d['findings'][0]['remedy']\n"
                "assert r['settles'] is True and r['worse'] == [] and r['text'].startswith('Altar: Length')\n"
                "assert r['changes'] == [{'item': 'altar', 'param': 'length', 'value': 2500, 'by': None}], r\n");
  python (json_b, "r = d['findings'][0]['remedy']\n"
                  "assert r['settles'] is False and r['changes'] == [] and r['text'], r\n");
}

static void
test_json_shape (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpFindings) findings = taking_findings (project, FALSE);
  g_autofree char *json = fp_report_json (findings);

  python (json,
          "assert d['format'] == 'footpace.findings' and d['version'] == 1\n"
          "assert list(d) == ['format','version','project','alternative','findings','jurisdiction','norms','amiss','books','summary','cautions']\n"
          "assert d['project'] == {'title': 'Church of the test', 'place': 'Nowhere'}\n"
          "names = {'rule','book','title','measure','label','weight','found','measured','times','limit','test','source',"
          "'advice','caution','where','reason','drawn','otherwise','disagree','remedy'}\n"
          "for f in d['findings']:\n"
          "  assert set(f) == names, f\n"
          "  assert f['weight'] in ('required','recommended','customary')\n"
          "  assert f['found'] in ('short','within','waiting','nothing','apart')\n"
          "  assert (f['measured']['value'] is not None) == (f['found'] in ('short','within')), f\n"
          "  assert f['source']\n"
          "  assert set(f['where']) == {'item','at','text'}\n"
          "short = [f for f in d['findings'] if f['found'] == 'short']\n"
          "assert sum(d['summary']['short'].values()) == len(short) > 0\n"
          "for f in d['findings']: assert f['reason'] or f['found'] not in ('nothing','apart'), f\n"
          "count = lambda fs: {w: len([f for f in fs if f['found'] == w]) "
          "for w in ('short','within','waiting','nothing','apart')}\n"
          "assert d['summary']['found'] == count(d['findings'])\n"
          "for b in d['books']: assert b['found'] == count([f for f in d['findings'] if f['book'] == b['id']])\n"
          "assert any('approve nothing' in c for c in d['cautions'])\n"
          "assert [f for f in d['findings'] if f['rule'] == 'steps-odd'][0]['measured'] == "
          "{'value': 3, 'unit': '', 'text': '3 steps', 'counted': 'steps'}\n"
          "assert d['summary']['rules'] == len(d['findings']) == sum(b['rules'] for b in d['books'])\n"
          "r = [f for f in d['findings'] if f['rule'] == 'riser-code'][0]\n"
          "assert r['measured'] == {'value': 152, 'unit': 'mm', 'text': '152 mm', 'counted': None}\n"
          "assert r['test'] == {'is': 'between', 'low': 4, 'high': 7, 'of': None, 'unit': 'in'}\n"
          "assert r['where']['item'] == 'steps' and len(r['where']['at']) == 3\n"
          "o = [f for f in d['findings'] if f['rule'] == 'candles-number'][0]\n"
          "assert o['test']['of'] == [2, 4, 6] and o['reason'] == 'for the newer form'\n");
}

/* What must be escaped (RFC 8259, 7), and what must not be broken. */
static void
test_json_escapes (void)
{
  g_autoptr (FpProject) project = church ();
  g_autoptr (FpFindings) findings = own_findings (project, "2401", "A \"quoted\" back\\slash / é … 𝄞 </script> \x7f");
  g_autofree char *json = fp_report_json (findings);

  python (json, "assert d['findings'][0]['title'] == "
                "'A \"quoted\" back\\\\slash / \\u00e9 \\u2026 \\U0001d11e </script> \\x7f'\n");
}

/* A comma for a decimal point in the locale does not get into the data. */
static void
test_json_locale (void)
{
  g_autoptr (FpProject) project = church ();

  if (!comma_locale ())
    {
      g_test_skip ("no locale with a decimal comma can be had");
      return;
    }
  g_assert_cmpstr (localeconv ()->decimal_point, ==, ",");
  church_param (&project, "steps", "riser", 152.4);
  {
    g_autoptr (FpFindings) findings = taking_findings (project, FALSE);
    g_autofree char *json = fp_report_json (findings);

    g_assert_nonnull (strstr (json, "\"value\": 152.4"));
    python (json, "assert [f for f in d['findings'] if f['rule'] == 'riser-code'][0]['measured']['value'] == 152.4\n");
  }
  setlocale (LC_ALL, "C");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/report/clean", test_clean);
  g_test_add_func ("/report/short", test_short);
  g_test_add_func ("/report/whole", test_whole);
  g_test_add_func ("/report/nothing-short", test_nothing_short);
  g_test_add_func ("/report/lines", test_lines);
  g_test_add_func ("/report/norms", test_norms);
  g_test_add_func ("/report/remedied", test_remedied);
  g_test_add_func ("/report/json/shape", test_json_shape);
  g_test_add_func ("/report/json/escapes", test_json_escapes);
  g_test_add_func ("/report/json/locale", test_json_locale);
  return g_test_run ();
}
