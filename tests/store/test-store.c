/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-store.c - what is written is read again, and always the same bytes */
#include "store-cases.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

static void
assert_round_trip (const FpProject *project)
{
  g_autofree char *bytes = store_case_bytes (project), *again = NULL;
  g_autoptr (FpProject) back = store_case_parse (bytes);

  g_assert_true (fp_project_equal (project, back));
  again = store_case_bytes (back);
  g_assert_cmpstr (again, ==, bytes);
}

static void
test_every_kind (void)
{
  g_autoptr (FpProject) project = store_case_every_kind (NULL);

  assert_round_trip (project);
}

static void
test_many_values (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20260101);

  for (int i = 0; i < 60; i++)
    {
      g_autoptr (FpProject) project = store_case_every_kind (rand);
      assert_round_trip (project);
    }
}

/* The bytes themselves: a change here is a change of the format. */
static void
test_bytes (void)
{
  static const char *const expected =
    "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
    "<project xmlns=\"urn:footpace:project:1\" version=\"1\">\n"
    "  <brief>\n"
    "    <title>Chapel of the Ford</title>\n"
    "    <place>Askerby</place>\n"
    "    <client/>\n"
    "    <author/>\n"
    "    <note/>\n"
    "    <books>both</books>\n"
    "    <facing>east</facing>\n"
    "    <celebrations>low sunday</celebrations>\n"
    "    <ministers>4</ministers>\n"
    "    <seats>80</seats>\n"
    "    <units>metric</units>\n"
    "    <north>90</north>\n"
    "    <percentile>50</percentile>\n"
    "  </brief>\n"
    "  <survey>\n"
    "    <standing-room id=\"back\" x=\"0\" y=\"-100.5\" turn=\"0\" spacing=\"600\">\n"
    "      <corner x=\"0\" y=\"0\"/>\n"
    "      <corner x=\"3000\" y=\"0\"/>\n"
    "      <corner x=\"3000\" y=\"3000\"/>\n"
    "    </standing-room>\n"
    "  </survey>\n"
    "  <alternative id=\"a\" name=\"A &lt;&amp;&quot;&gt;\">\n"
    "    <note>One line,\nand another</note>\n"
    "    <credence id=\"c\" name=\"Small table\" x=\"3000\" y=\"4000\" turn=\"-90\" length=\"762\" depth=\"305\""
    " height=\"762\"/>\n"
    "  </alternative>\n"
    "</project>\n";
  g_autoptr (FpProject) project = store_case_parse (expected);
  g_autofree char *bytes = store_case_bytes (project);

  g_assert_cmpstr (bytes, ==, expected);
  g_assert_cmpstr (fp_alternative_name (fp_project_alternative (project, 0)), ==, "A <&\">");
}

/* What was decided of settings ends an alternative; where nothing was, no byte tells of it. */
static void
test_settings (void)
{
  static const char *const expected =
    "    <kept thing=\"c\">Press &lt;left&gt;</kept>\n"
    "    <setting for=\"low\">\n"
    "      <thing id=\"c\" stands=\"no\" veiled=\"yes\" lit=\"0\"/>\n"
    "    </setting>\n"
    "    <setting for=\"good-friday\" colour=\"violet\"/>\n"
    "    <setting for=\"sunday\" colour=\"green\">\n"
    "      <thing id=\"c\" stands=\"yes\"/>\n"
    "    </setting>\n"
    "  </alternative>\n";
  static const FpSettingChange low = { FP_SAID_NO, FP_SAID_YES, 0 }, sunday = { FP_SAID_YES, FP_UNSAID, FP_LIT_UNSAID };
  g_autoptr (FpProject) small = store_case_small (), p = fp_project_ref (small);
  g_autofree char *bare = store_case_bytes (small), *bytes = NULL;
  const FpItemInit init = { .id = "c", .kind = fp_kind_find ("credence") };
  FpProject *next[7] = { p };

  g_assert_null (strstr (bare, "<setting"));
  g_assert_null (strstr (bare, "<kept"));
  {
    g_autoptr (FpItem) table = fp_item_new (&init, NULL);

    next[1] = fp_project_with_item (next[0], 0, table, NULL);
  }
  next[2] = fp_project_with_setting (next[1], 0, FP_CELEBRATION_SUNDAY, "c", &sunday, NULL);
  next[3] = fp_project_with_colour (next[2], 0, FP_CELEBRATION_SUNDAY, FP_COLOUR_GREEN, NULL);
  next[4] = fp_project_with_setting (next[3], 0, FP_CELEBRATION_LOW, "c", &low, NULL);
  next[5] = fp_project_with_colour (next[4], 0, FP_CELEBRATION_GOOD_FRIDAY, FP_COLOUR_VIOLET, NULL);
  next[6] = fp_project_with_kept (next[5], 0, "c", "Press <left>", NULL);
  bytes = store_case_bytes (next[6]);
  g_assert_nonnull (strstr (bytes, expected));
  assert_round_trip (next[6]);
  for (guint i = 1; i < G_N_ELEMENTS (next); i++)
    fp_project_unref (next[i]);
}

/* What the sun is reckoned for stands at the end of the brief; where none is said, no byte tells of it. */
static void
test_masses (void)
{
  static const char *const expected =
    "    <percentile>50</percentile>\n"
    "    <site latitude=\"52.25\" longitude=\"-0.75\" zone=\"Europe/London\"/>\n"
    "    <mass day=\"sunday\" at=\"09:30\"/>\n"
    "    <mass day=\"12-25\" at=\"00:00\"/>\n"
    "  </brief>\n";
  g_autoptr (FpProject) small = store_case_small (), told = NULL, again = NULL, later = NULL;
  g_autofree char *bytes = NULL, *bare = store_case_bytes (small), *without = NULL;
  FpBrief brief = *fp_project_brief (small);

  g_assert_null (strstr (bare, "<site"));
  g_assert_null (strstr (bare, "<mass"));
  brief.site = (FpSite) { TRUE, 52.25, -0.75, "Europe/London" };
  brief.mass[0] = (FpMassTime) { .weekday = 7, .minute = 570 };
  brief.mass[1] = (FpMassTime) { .month = 12, .day = 25 };
  brief.n_masses = 2;
  told = fp_project_with_brief (small, &brief, NULL);
  bytes = store_case_bytes (told);
  g_assert_nonnull (strstr (bytes, expected));
  assert_round_trip (told);
  again = store_case_parse (bytes);
  g_assert_cmpfloat (fp_project_brief (again)->site.longitude, ==, -0.75);
  g_assert_cmpuint (fp_project_brief (again)->mass[1].month, ==, 12);
  brief.site.known = FALSE;
  brief.n_masses = 0;
  later = fp_project_with_brief (told, &brief, NULL);
  without = store_case_bytes (later);
  g_assert_cmpstr (without, ==, bare);
}

/* What tells of the people is left out where it says nothing, so that older files keep their bytes. */
static void
test_people (void)
{
  static const struct { gboolean varied; guint seed, children; const char *written; } CASES[] = {
    { FALSE, 0, 0, "<percentile>50</percentile>\n  </brief>" },
    { TRUE, 0, 0, "<percentile>50</percentile>\n    <statures>varied</statures>\n  </brief>" },
    { TRUE, 3, 8, "<percentile>50</percentile>\n    <statures>varied</statures>\n    <seed>3</seed>\n"
                  "    <children>8</children>\n  </brief>" },
    { FALSE, 999999, 1000, "<percentile>50</percentile>\n    <seed>999999</seed>\n    <children>1000</children>\n  </brief>" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (CASES); i++)
    {
      g_autoptr (FpProject) small = store_case_small ();
      FpBrief brief = *fp_project_brief (small);
      brief.varied = CASES[i].varied;
      brief.seed = CASES[i].seed;
      brief.children = CASES[i].children;
      g_autoptr (FpProject) project = fp_project_with_brief (small, &brief, NULL);
      g_autofree char *bytes = store_case_bytes (project);
      g_assert_nonnull (strstr (bytes, CASES[i].written));
      assert_round_trip (project);
    }
}

static void
test_texts (void)
{
  static const char *const texts[] = {
    "", " ", "  leading and trailing  ", "<b>&amp;</b>", "\"quoted\" 'twice' > ]]> <!-- no comment -->",
    "Æthelþryð · 聖堂 · Ἐκκλησία · 🕯", "one\nline\n\nafter\tanother\n",
  };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (FpProject) small = store_case_small ();
      FpBrief brief = *fp_project_brief (small);
      g_autoptr (FpProject) with_brief = NULL, whole = NULL;
      brief.note = texts[i];
      brief.title = strchr (texts[i], '\n') == NULL ? texts[i] : "title";
      with_brief = fp_project_with_brief (small, &brief, NULL);
      whole = fp_project_with_alternative_text (with_brief, 0, brief.title, texts[i], NULL);
      g_assert_nonnull (whole);
      assert_round_trip (whole);
    }
}

static FpProject *
with_pier (double x, double width)
{
  const FpKind *pier = fp_kind_find ("pier");
  double param[FP_PARAM_MAX];
  g_autoptr (FpProject) small = store_case_small ();
  g_autoptr (FpItem) item = NULL;

  fp_kind_defaults (pier, param);
  param[fp_kind_param_index (pier, "width")] = width;
  item = fp_item_new (&(FpItemInit) { .id = "p", .kind = pier, .place = { x, 0, 0 }, .param = param }, NULL);
  g_assert_nonnull (item);
  return fp_project_with_survey_item (small, item, NULL);
}

static void
test_numbers (void)
{
  static const double numbers[] = { 0, -0.0, 0.1, 1.0 / 3, 1066.8, -152.4, 1e-7, 5e-324, 999999.9999999999,
                                    -1e6, 123456.78901234567 };

  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      g_autoptr (FpProject) project = with_pier (numbers[i], 612.7000000000001);
      assert_round_trip (project);
    }
}

/* --- what is done with the survey --- */

static FpProject *
with_survey (void)
{
  static const char *const kinds[] = { "credence", "ambo", "chair" };
  FpProject *project = store_case_small ();

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autoptr (FpItem) item = fp_item_new (&(FpItemInit) { .id = kinds[i], .kind = fp_kind_find (kinds[i]),
                                                             .place = { 0, 1000.0 * i, 0 } }, NULL);
      FpProject *next = fp_project_with_survey_item (project, item, NULL);
      g_assert_nonnull (next);
      fp_project_unref (project);
      project = next;
    }
  return project;
}

static void
test_fates (void)
{
  g_autoptr (FpProject) measured = with_survey ();
  g_autoptr (FpProject) without = fp_project_with_fate (measured, 0, "ambo", FP_FATE_REMOVED, NULL, NULL, NULL);
  const FpPlace to = { -1200, 300.5, 45 };
  g_autoptr (FpProject) both = fp_project_with_fate (without, 0, "credence", FP_FATE_MOVED, &to, NULL, NULL);
  g_autofree char *bytes = store_case_bytes (both), *again = NULL;
  g_autoptr (FpProject) back = store_case_parse (bytes);
  FpPlace moved;

  g_assert_cmpint (fp_alternative_fate (fp_project_alternative (back, 0), "ambo", NULL, NULL), ==, FP_FATE_REMOVED);
  g_assert_cmpint (fp_alternative_fate (fp_project_alternative (back, 0), "chair", NULL, NULL), ==, FP_FATE_KEPT);
  g_assert_cmpint (fp_alternative_fate (fp_project_alternative (back, 0), "credence", &moved, NULL), ==, FP_FATE_MOVED);
  g_assert_cmpfloat (moved.x, ==, -1200);
  g_assert_cmpfloat (moved.y, ==, 300.5);
  g_assert_cmpfloat (moved.turn, ==, 45);
  again = store_case_bytes (back);
  g_assert_cmpstr (again, ==, bytes);
}

/* The order in which things were decided is no part of a project, so it is none of its file. */
static void
test_order_of_fates (void)
{
  g_autoptr (FpProject) measured = with_survey ();
  g_autoptr (FpProject) a1 = fp_project_with_fate (measured, 0, "ambo", FP_FATE_REMOVED, NULL, NULL, NULL);
  g_autoptr (FpProject) a2 = fp_project_with_fate (a1, 0, "chair", FP_FATE_REMOVED, NULL, NULL, NULL);
  g_autoptr (FpProject) b1 = fp_project_with_fate (measured, 0, "chair", FP_FATE_REMOVED, NULL, NULL, NULL);
  g_autoptr (FpProject) b2 = fp_project_with_fate (b1, 0, "ambo", FP_FATE_REMOVED, NULL, NULL, NULL);
  g_autofree char *a = store_case_bytes (a2), *b = store_case_bytes (b2);

  g_assert_cmpstr (a, ==, b);
}

/* What the parish builds with, and its rates to the last digit; a project in which nobody said anything is written as before. */
static void
test_works (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) project = store_case_small ();
  const FpRate rate[] = {
    { "altar", "mensa", FP_AMOUNT_VOLUME, FP_UNITS_METRIC, 3200.125 },
    { "rail", "rail, less the gate & “posts”", FP_AMOUNT_LENGTH, FP_UNITS_IMPERIAL, 0 },
  };
  FpWorks works = fp_works_usual;
  g_autofree char *before = store_case_bytes (project), *after = NULL;
  g_autoptr (FpProject) own = NULL, back = NULL;

  works.stone = FP_STONE_GRANITE;
  works.nosing = 19.05;
  works.joint = 0;
  works.solid = TRUE;
  works.joined = TRUE;
  works.finish = "honed & “sealed”";
  works.burns = 22.5;
  works.warp = 0.06;
  works.small[FP_SMALL_PURIFICATOR] = 12;
  works.small[FP_SMALL_AMICE] = 0;
  works.currency = "EUR";
  works.rate = rate;
  works.n_rates = G_N_ELEMENTS (rate);
  own = fp_project_with_works (project, &works, &error);
  g_assert_no_error (error);
  g_assert_null (strstr (before, "<works"));
  g_assert_false (fp_project_equal (project, own));
  assert_round_trip (own);
  back = fp_project_with_works (own, NULL, NULL);
  after = store_case_bytes (back);
  g_assert_cmpstr (before, ==, after);
}

/* By what capacity is reckoned: what is said, and nothing of what is not; a step of no time is said. */
static void
test_reckoning (void)
{
  g_autoptr (FpProject) project = store_case_small (), own = NULL, back = NULL;
  FpReckoning reckoning = fp_reckoning_usual;
  g_autofree char *before = store_case_bytes (project), *said = NULL, *after = NULL;

  reckoning.people = 212;
  reckoning.ministers = 3;
  reckoning.each = 4.125;
  reckoning.step = 0;
  reckoning.sprinklers = TRUE;
  own = fp_project_with_reckoning (project, &reckoning, NULL);
  g_assert_null (strstr (before, "<capacity"));
  g_assert_false (fp_project_equal (project, own));
  assert_round_trip (own);
  said = store_case_bytes (own);
  g_assert_nonnull (strstr (said, "<capacity people=\"212\" ministers=\"3\" each=\"4.125\" step=\"0\" sprinklers=\"yes\"/>"));
  back = fp_project_with_reckoning (own, &fp_reckoning_usual, NULL);
  after = store_case_bytes (back);
  g_assert_cmpstr (before, ==, after);
}

/* Norms to the last digit, and a book of the project's own to the last blank; norms that say nothing are not written. */
static void
test_norms (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) project = store_case_small ();
  static const char *const without[] = { "flame", "rail" };
  static const FpNormChange change[] = {
    { "step-and-fall", "riser-code", FALSE, NAN, 6.25, "“Old” & <steep>" },
    { "access", "gate-route", FALSE, 32, NAN, "A" },
    { "sight", "farthest", TRUE, NAN, NAN, "B" },
  };
  static const FpNormChoice choice[] = { { "altar-height", "older-form", "altar-height" } };
  static const FpNormBook own[] = { { "diocese.xml", "<rulebook>\n\n  <a b='&amp;'/>\t\n</rulebook>\n" }, { "none.xml", "" } };
  const FpNorms norms = { FP_JURISDICTION_UK, without, 2, change, G_N_ELEMENTS (change), choice, 1, own, G_N_ELEMENTS (own) };
  g_autofree char *before = store_case_bytes (project), *after = NULL;
  g_autoptr (FpProject) said = fp_project_with_norms (project, &norms, &error), back = NULL;

  g_assert_no_error (error);
  g_assert_false (fp_project_equal (project, said));
  assert_round_trip (said);
  back = fp_project_with_norms (said, &fp_norms_usual, NULL);
  after = store_case_bytes (back);
  g_assert_cmpstr (before, ==, after);
}

/* Sheets that are no view of the church are kept as others are. */
static void
test_every_sheet (void)
{
  for (guint sheet = 0; sheet < FP_N_ALL_SHEETS; sheet++)
    {
      g_autoptr (FpProject) project = store_case_small ();
      const FpPageSetup page = { .sheet = sheet };
      g_autoptr (FpProject) own = fp_project_with_page (project, &page, NULL);
      g_autofree char *said = store_case_bytes (own), *words = g_strdup_printf ("<page sheet=\"%s\"", fp_sheet_any_id (sheet));
      guint found;

      g_assert_true (fp_sheet_find (fp_sheet_any_id (sheet), &found));
      g_assert_cmpuint (found, ==, sheet);
      g_assert_nonnull (strstr (said, words));
      assert_round_trip (own);
    }
}

/* One line, the same bytes each time; a project without one is written as before. */
static void
test_page (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) project = store_case_small ();
  const FpPageSetup page = {
    .sheet = FP_SHEET_CROSS, .paper = FP_PAPER_A2, .landscape = TRUE, .scale = 75, .whole = TRUE, .ink = FP_INK_SAFE,
    .hidden = 1u << FP_SHOW_NAMES | 1u << FP_SHOW_SEATS, .tiled = TRUE, .tile = FP_PAPER_LETTER,
    .along = { TRUE, 1200.5, TRUE }, .across = { FALSE, 0, TRUE },
  };
  static const char line[]
    = "  <page sheet=\"cross\" paper=\"a2\" lies=\"landscape\" scale=\"75\" whole=\"yes\" findings=\"no\" ink=\"safe\" "
      "without=\"seats names\" tiles=\"letter\" along=\"1200.5\" from=\"epistle\" facing=\"west\"/>\n</project>\n";
  g_autoptr (FpProject) own = fp_project_with_page (project, &page, &error);
  g_autofree char *before = store_case_bytes (project), *bytes = store_case_bytes (own);
  g_autoptr (FpProject) read = store_case_parse (bytes);
  g_autoptr (FpProject) back = fp_project_with_page (own, NULL, &error);

  g_assert_no_error (error);
  g_assert_null (strstr (before, "<page"));
  g_assert_true (g_str_has_suffix (bytes, line));
  g_assert_true (fp_project_equal (own, read));
  g_assert_true (fp_page_setup_equal (&page, fp_project_page (read)));
  g_assert_false (fp_project_equal (own, project));
  g_assert_true (fp_project_equal (back, project));
}

/* An alternative that has the celebrant face its own way says so; one that does not says nothing, as ever. */
static void
test_facing (void)
{
  static const FpFacing people = FP_FACING_PEOPLE, east = FP_FACING_EAST;
  g_autoptr (FpProject) project = store_case_small ();
  g_autoptr (GError) error = NULL;
  g_autofree char *before = store_case_bytes (project);
  g_autoptr (FpProject) own = fp_project_with_alternative_facing (project, 0, &people, &error);
  g_autoptr (FpProject) same = fp_project_with_alternative_facing (project, 0, &east, &error);
  g_autoptr (FpProject) back = fp_project_with_alternative_facing (own, 0, NULL, &error);
  g_autofree char *bytes = store_case_bytes (own), *said = store_case_bytes (same), *after = store_case_bytes (back);

  g_assert_no_error (error);
  g_assert_null (strstr (before, "facing=\""));
  g_assert_nonnull (strstr (bytes, " facing=\"people\">"));
  g_assert_nonnull (strstr (said, " facing=\"east\">")); /* so that a change of the brief does not change it */
  g_assert_cmpstr (after, ==, before);
  assert_round_trip (own);
  assert_round_trip (same);
}

/* --- what other hands may write --- */

static const char *const BY_HAND_HEAD =
  "<!-- measured on a wet day -->\n"
  "<f:project xmlns:f='urn:footpace:project:1' version='1'><f:brief><f:title>T</f:title><f:place>P</f:place>"
  "<f:client/><f:author/><f:note><![CDATA[a < b]]></f:note><f:books> newer </f:books><f:facing>people</f:facing>"
  "<f:celebrations>\n  sunday\n  weekday\n</f:celebrations><f:ministers> 3 </f:ministers><f:seats>0</f:seats>"
  "<f:units>imperial</f:units><f:north>-12.5</f:north><f:percentile>95</f:percentile>"
  "<f:statures> varied </f:statures><f:children>9</f:children></f:brief>\n";

static void
test_by_hand (void)
{
  g_autofree char *xml = g_strconcat (BY_HAND_HEAD, "<f:survey><!-- one --><f:pier id='p'/></f:survey>"
                                      "<f:alternative id='a' name='A'/></f:project><?end?>", NULL);
  g_autoptr (FpProject) project = store_case_parse (xml);
  const FpBrief *brief = fp_project_brief (project);
  const FpItem *pier = fp_project_survey (project, 0);
  double defaults[FP_PARAM_MAX];

  g_assert_cmpint (brief->books, ==, FP_BOOKS_NEWER);
  g_assert_cmpuint (brief->celebrations, ==, FP_CELEBRATION_SUNDAY | FP_CELEBRATION_WEEKDAY);
  g_assert_cmpstr (brief->note, ==, "a < b");
  g_assert_cmpfloat (brief->north, ==, -12.5);
  g_assert_true (brief->varied);
  g_assert_cmpuint (brief->children, ==, 9);
  fp_kind_defaults (fp_item_kind (pier), defaults);
  for (guint i = 0; i < fp_kind_n_params (fp_item_kind (pier)); i++)
    g_assert_cmpfloat (fp_item_params (pier)[i], ==, defaults[i]);
  assert_round_trip (project);
}

/* Independent reader: xmllint, of libxml2 (RELAX NG, OASIS committee specification 3 December 2001). */
static void
test_xmllint (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);
  g_autofree char *path = g_build_filename (g_get_tmp_dir (), "footpace-xmllint.footpace", NULL);

  for (int i = 0; i < 5; i++)
    {
      g_autoptr (FpProject) project = store_case_every_kind (i == 0 ? NULL : rand);
      g_autofree char *says = NULL;
      g_autoptr (GError) error = NULL;
      int status = 1;
      g_assert_true (fp_store_save (project, path, &error));
      g_assert_no_error (error);
      if (!store_case_xmllint (path, &status, &says))
        {
          g_test_skip ("xmllint is not installed");
          break;
        }
      g_test_message ("%s", says);
      g_assert_cmpint (status, ==, 0);
    }
  g_remove (path);
}

/* Autosave writes and reads on another thread while the window opens a file. NULL when all went well. */
static gpointer
read_many_times (gpointer data)
{
  for (int i = 0; i < 20; i++)
    {
      g_autoptr (FpProject) project = fp_store_parse (data, strlen (data), "thread", NULL);
      g_autofree char *bytes = project != NULL ? fp_store_write (project, NULL) : NULL;
      if (g_strcmp0 (bytes, data) != 0)
        return data;
    }
  return NULL;
}

static void
test_threads (void)
{
  g_autoptr (FpProject) project = store_case_every_kind (NULL);
  g_autofree char *bytes = store_case_bytes (project);
  GThread *threads[4];

  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    threads[i] = g_thread_new ("reader", read_many_times, bytes);
  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    g_assert_null (g_thread_join (threads[i]));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/store/every-kind", test_every_kind);
  g_test_add_func ("/store/many-values", test_many_values);
  g_test_add_func ("/store/bytes", test_bytes);
  g_test_add_func ("/store/settings", test_settings);
  g_test_add_func ("/store/masses", test_masses);
  g_test_add_func ("/store/people", test_people);
  g_test_add_func ("/store/texts", test_texts);
  g_test_add_func ("/store/numbers", test_numbers);
  g_test_add_func ("/store/fates", test_fates);
  g_test_add_func ("/store/order-of-fates", test_order_of_fates);
  g_test_add_func ("/store/facing", test_facing);
  g_test_add_func ("/store/page", test_page);
  g_test_add_func ("/store/works", test_works);
  g_test_add_func ("/store/reckoning", test_reckoning);
  g_test_add_func ("/store/norms", test_norms);
  g_test_add_func ("/store/every-sheet", test_every_sheet);
  g_test_add_func ("/store/by-hand", test_by_hand);
  g_test_add_func ("/store/threads", test_threads);
  g_test_add_func ("/store/xmllint", test_xmllint);
  return g_test_run ();
}
