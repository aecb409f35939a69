/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-linen-plan.c - whoever has the sheet of the linen alone can buy and cut every cloth
 *
 * Sizes by hand: Catholic Encyclopedia I (1907), Altar-Cloths; P. Dearmer, The Parson's Handbook (2nd ed. 1899), pp. 57 to 61;
 * the corporal of Arts and Crafts Magazine, Ecclesiastical Linens: 20 in with a plain hem of 1 in.
 */
#include "church.h"

#include "footpace/bill.h"
#include "footpace/error.h"
#include "footpace/furnish.h"
#include "footpace/linen-plan.h"
#include "footpace/store.h"

#include <math.h>
#include <string.h>

#define INCH 25.4

static const FpShrinkage tried = { 0.06, 0.025 };

static FpProject * /* takes @project */
in_units (FpProject *project, FpUnits units, FpBooks books)
{
  FpBrief brief = *fp_project_brief (project);
  FpProject *next;

  brief.units = units;
  brief.books = books;
  next = fp_project_with_brief (project, &brief, NULL);
  g_assert_nonnull (next);
  fp_project_unref (project);
  return next;
}

/* A mensa of 9 ft by 3 ft, 3 ft 3 in high (Dearmer p. 57), and a rail of 15 ft with a gate. */
static FpProject *
parish (FpUnits units)
{
  FpProject *project = church_new (FP_FACING_EAST);
  const ChurchThing altar = { "altar", "altar", NULL, { 0, 4000, 0 }, NULL, 0,
                              { { "length", 108 * INCH }, { "depth", 36 * INCH }, { "height", 39 * INCH }, { NULL, 0 } }, NULL };
  const ChurchThing rail = { "rail", "rail", NULL, { 0, 0, 0 }, NULL, 0,
                             { { "length", 180 * INCH }, { "cloth", 1 }, { NULL, 0 } }, NULL };

  church_add (&project, &altar);
  church_add (&project, &rail);
  return in_units (project, units, FP_BOOKS_OLDER);
}

static void
add_on_altar (FpProject **project, const char *kind, const char *param, double value)
{
  ChurchThing thing = { kind, kind, "altar", { 0, 0, 0 }, NULL, 0, { { param, value }, { NULL, 0 } }, NULL };

  church_add (project, &thing);
}

static FpLinenPlan *
plan_of (const FpProject *project, double bolt, gboolean join)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  const FpLinenSpec spec = { bolt, tried, join };
  g_autoptr (GError) error = NULL;
  FpLinenPlan *plan = fp_linen_plan_new (scene, &spec, &error);

  g_assert_no_error (error);
  return plan;
}

/* With plain spaces. */
static char *
text_of (const FpLinenPlan *plan)
{
  g_autofree char *text = fp_linen_plan_text (plan);
  GString *plain = g_string_new (text);

  g_string_replace (plain, "\302\240", " ", 0);
  g_string_replace (plain, "\342\200\257", " ", 0);
  return g_string_free (plain, FALSE);
}

static void
assert_says (const FpLinenPlan *plan, const char *words, gboolean says)
{
  g_autofree char *text = text_of (plan);

  if ((strstr (text, words) != NULL) != says)
    g_test_message ("%s", text);
  g_assert_cmpint (strstr (text, words) != NULL, ==, says);
}

static const FpCloth *
cloth_of (const FpLinenPlan *plan, const char *id)
{
  const GArray *cloths = fp_linen_plan_cloths (plan);

  for (guint i = 0; i < cloths->len; i++)
    if (strcmp (g_array_index (cloths, FpCloth, i).id, id) == 0)
      return &g_array_index (cloths, FpCloth, i);
  return NULL;
}

/* --- what to buy ------------------------------------------------------------------- */

/* Cut, by the formula: (20 + 2 (1 + 8 mm)) / (1 - s). */
static void
test_buy (void)
{
  for (guint units = 0; units < 2; units++)
    {
      g_autoptr (FpProject) project = parish ((FpUnits) units);
      g_autoptr (FpLinenPlan) plan = plan_of (project, 60 * INCH, FALSE);
      const double buy = fp_linen_plan_to_buy (plan), length = fp_linen_plan_layout (plan)->length;
      const double step = units == FP_UNITS_METRIC ? 100 : 9 * INCH, squaring = units == FP_UNITS_METRIC ? 50 : 2 * INCH;

      g_assert_cmpfloat (buy, >=, length + squaring - 1e-6);
      g_assert_cmpfloat (buy, <, length + squaring + step);
      g_assert_cmpfloat_with_epsilon (buy / step, round (buy / step), 1e-9);
      assert_says (plan, units == FP_UNITS_METRIC ? " m of linen 1 524 mm wide" : " yd of linen 60 in wide", TRUE);
      assert_says (plan, "6 % along the bolt (the warp), 2.5 % across it (the weft)", TRUE);
      assert_says (plan, units == FP_UNITS_METRIC ? "finished 508 × 508; hem 25 all round, 8 turned in" : "finished 1' 8\" × 1' 8\"; hem 1\" all round",
                   TRUE);
      g_assert_cmpfloat_with_epsilon (fp_linen_cut (cloth_of (plan, "corporal")->length, cloth_of (plan, "corporal")->hems.ends, 8, 0.06),
                                      (508 + 2 * (25.4 + 8)) / 0.94, 1e-9);
    }
}

/* Where nobody said what it loses, that is told. */
static void
test_not_tried (void)
{
  g_autoptr (FpProject) project = parish (FP_UNITS_METRIC);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpLinenPlan) plan = fp_linen_plan_new (scene, &(FpLinenSpec) { 1500, { 0, 0 }, FALSE }, NULL);

  assert_says (plan, "Nothing is allowed for what cloth loses", TRUE);
}

/* Waxed, it is hemmed otherwise than those over it, and is only where the older books are followed. */
static void
test_books (void)
{
  g_autoptr (FpProject) older = parish (FP_UNITS_METRIC), newer = in_units (parish (FP_UNITS_METRIC), FP_UNITS_METRIC, FP_BOOKS_NEWER);
  g_autoptr (FpLinenPlan) of_older = plan_of (older, 1500, FALSE), of_newer = plan_of (newer, 1500, FALSE);

  g_assert_cmpfloat (cloth_of (of_older, "cere-cloth")->hems.ends, <, cloth_of (of_older, "under-cloth")->hems.ends);
  assert_says (of_older, "waxed with beeswax", TRUE);
  assert_says (of_older, "Linen or hemp only", TRUE);
  g_assert_null (cloth_of (of_newer, "cere-cloth"));
  assert_says (of_newer, "Linen or hemp only", FALSE);
}

/* --- what stands on the mensa -------------------------------------------------------- */

static void
test_gradine (void)
{
  g_autoptr (FpProject) project = parish (FP_UNITS_METRIC);

  add_on_altar (&project, "gradine", "depth", 240);
  g_autoptr (FpLinenPlan) plan = plan_of (project, 1500, FALSE);
  const char *const ids[] = { "cere-cloth", "under-cloth", "top-cloth", "dust-cover" };

  for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
    {
      g_assert_cmpfloat_with_epsilon (cloth_of (plan, ids[i])->width, 36 * INCH - 240, 1e-6);
      g_assert_true (fp_box_is_empty (&cloth_of (plan, ids[i])->notch));
    }
  assert_says (plan, "The cloths stop before what stands fast on it (Gradine), and cover the 674 mm", TRUE);
  /* The gradine is 2200 long on a mensa of 2743. */
  assert_says (plan, "Beside it 272 mm of the mensa stay bare at an end", TRUE);
}

static void
test_tabernacle (void)
{
  g_autoptr (FpProject) project = parish (FP_UNITS_METRIC);

  add_on_altar (&project, "tabernacle", "width", 450);
  g_autoptr (FpLinenPlan) plan = plan_of (project, 1500, FALSE);
  const FpCloth *under = cloth_of (plan, "under-cloth"), *top = cloth_of (plan, "top-cloth");

  g_assert_cmpfloat_with_epsilon (under->width, 36 * INCH, 1e-6);
  g_assert_cmpfloat_with_epsilon (under->notch.x1 - under->notch.x0, 460, 1e-6);
  g_assert_cmpfloat_with_epsilon (under->notch.x0, (108 * INCH - 460) / 2, 1e-6);
  g_assert_cmpfloat_with_epsilon (under->notch.y1, under->width, 1e-6);
  g_assert_cmpfloat_with_epsilon (top->notch.x0, under->notch.x0 + 39 * INCH, 1e-6);
  assert_says (plan, "They are cut out round what stands in their way (Tabernacle)", TRUE);
  assert_says (plan, "Cut out at its back: 460 mm by 455 mm", TRUE);
  assert_says (plan, "Or let all cloths be 459 mm deep", TRUE); /* 914.4 - 455 */
}

/* As they are drawn: two over one another, their ends 100 above the footpace, 50 over the front. */
static void
test_drawn (void)
{
  g_autoptr (FpProject) project = parish (FP_UNITS_METRIC);
  const ChurchThing cloths = { "altar-cloths", "cloths", "altar", { 0, 0, 0 }, NULL, 0,
                               { { "layers", 2 }, { "clear", 100 }, { "front", 50 }, { NULL, 0 } }, NULL };

  church_add (&project, &cloths);
  g_autoptr (FpLinenPlan) plan = plan_of (project, 1500, FALSE);

  g_assert_cmpuint (cloth_of (plan, "under-cloth")->number, ==, 1);
  g_assert_cmpfloat_with_epsilon (cloth_of (plan, "top-cloth")->length, 108 * INCH + 2 * (39 * INCH - 100), 1e-6);
  g_assert_cmpfloat_with_epsilon (cloth_of (plan, "top-cloth")->width, 36 * INCH + 50, 1e-6);
}

/* --- too wide --------------------------------------------------------------------------- */

/* Of a bolt of 36 in the rest is cut; joined, all of it: two widths are as wide as the cloth with its hems and one seam of
 * 13 mm on either side. */
static void
test_wide (void)
{
  g_autoptr (FpProject) project = parish (FP_UNITS_METRIC);
  g_autoptr (FpLinenPlan) apart = plan_of (project, 36 * INCH, FALSE), joined = plan_of (project, 36 * INCH, TRUE);
  const double cut = (36 * INCH + 2 * (19.05 + 8)) / (1 - 0.025), each = (36 * INCH + 2 * (19.05 + 8) + 2 * 13) / 2 / (1 - 0.025);
  g_autofree char *needs = g_strdup_printf ("needs a bolt %.0f mm wide", ceil (cut));
  g_autofree char *widths = g_strdup_printf ("2 widths, each cut %.0f × %.0f", round ((108 * INCH + 2 * (19.05 + 8)) / 0.94), round (each));
  g_autofree char *table = fp_linen_plan_csv (joined), *width = g_strdup_printf (",%.1f,", each);

  g_assert_cmpuint (fp_linen_plan_too_wide (apart), ==, 4); /* cere, under, top cloth, dust cover */
  /* A thousand and more is grouped. */
  assert_says (apart, cut < 1000 ? needs : "needs a bolt", TRUE);
  assert_says (apart, widths, TRUE);
  assert_says (apart, "say nothing of seams", TRUE);
  assert_says (apart, "Communion cloth 1", TRUE);
  assert_says (apart, "Top cloth, Altar, width", FALSE);
  assert_says (joined, "Top cloth, Altar, width 2 of 2", TRUE);
  assert_says (joined, "B1a ", TRUE);
  g_assert_nonnull (strstr (table, width));
  g_assert_cmpfloat (fp_linen_plan_layout (joined)->length, >, fp_linen_plan_layout (apart)->length);
}

static void
refused (const FpProject *project, double bolt, double warp, const char *words)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  const FpLinenSpec spec = { bolt, { warp, 0 }, FALSE };
  g_autoptr (GError) error = NULL;

  g_assert_null (fp_linen_plan_new (scene, &spec, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_RANGE);
  g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, words));
}

static void
test_refused (void)
{
  g_autoptr (FpProject) project = parish (FP_UNITS_IMPERIAL), empty = church_new (FP_FACING_EAST);

  refused (project, 1500 * INCH, 0, "the width of the bolt is 125' 0\"");
  refused (project, NAN, 0, "the width of the bolt");
  refused (project, 100, 0, "the width of the bolt");
  refused (project, 1500, 0.3, "shrinks by 0 to 25");
  refused (project, 1500, NAN, "shrinks by 0 to 25");
  refused (empty, 1500, 0, "no altar, credence or rail");
}

/* --- the rail ------------------------------------------------------------------------------ */

static void
test_rail (void)
{
  g_autoptr (FpProject) project = parish (FP_UNITS_METRIC);
  g_autoptr (FpLinenPlan) with = plan_of (project, 1500, FALSE);

  g_assert_cmpuint (cloth_of (with, "rail-cloth")->number, ==, 2);
  church_param (&project, "rail", "cloth", 0);
  g_autoptr (FpLinenPlan) without = plan_of (project, 1500, FALSE);
  g_assert_null (cloth_of (without, "rail-cloth"));
}

/* --- small linens, silk ------------------------------------------------------------------------ */

static void
test_small (void)
{
  g_autoptr (FpProject) project = parish (FP_UNITS_METRIC), told = NULL;
  FpWorks works = fp_works_usual;

  works.small[FP_SMALL_PURIFICATOR] = 12;
  works.small[FP_SMALL_PALL] = 3;
  works.small[FP_SMALL_CORPORAL] = 0;
  works.small[FP_SMALL_BURSE] = 1;
  told = fp_project_with_works (project, &works, NULL);
  g_autoptr (FpLinenPlan) plan = plan_of (told, 1500, FALSE), usual = plan_of (project, 1500, FALSE);
  g_assert_cmpuint (cloth_of (usual, "purificator")->number, ==, 1);
  g_assert_null (cloth_of (usual, "amice"));
  assert_says (usual, "Burse", FALSE);
  g_assert_cmpuint (cloth_of (plan, "purificator")->number, ==, 12);
  g_assert_cmpuint (cloth_of (plan, "pall")->number, ==, 6); /* two sides */
  g_assert_null (cloth_of (plan, "corporal"));
  assert_says (plan, "Burse, one of its two sides, Altar: 2;", TRUE);
}

/* On a mensa that is no deeper than that, a corporal leaves an inch (Dearmer p. 57: an inch or two to spare), and is not under
 * 15 in (Catholic Encyclopedia I, Altar-Linens). */
static void
test_corporal (void)
{
  const struct { double depth, corporal; } row[] = { { 30, 20 }, { 20, 19 }, { 15.8, 15 } };

  for (guint i = 0; i < G_N_ELEMENTS (row); i++)
    {
      g_autoptr (FpProject) project = parish (FP_UNITS_METRIC);

      church_param (&project, "altar", "depth", row[i].depth * INCH);
      g_autoptr (FpLinenPlan) plan = plan_of (project, 1500, FALSE);
      g_assert_cmpfloat_with_epsilon (cloth_of (plan, "corporal")->width, row[i].corporal * INCH, 1e-6);
    }
}

/* Catholic Encyclopedia I (1907), Altar-Frontal: the whole front, from end to end and from the mensa to the footpace. */
static void
test_silk (void)
{
  g_autoptr (FpProject) project = parish (FP_UNITS_METRIC);

  add_on_altar (&project, "frontal", "frontlet", 180);
  g_autoptr (FpLinenPlan) plan = plan_of (project, 1500, FALSE);
  assert_says (plan, "Frontal: 1; finished 2743 × 991, cut 2819 × 1067 with 38 on every side", TRUE);
  assert_says (plan, "Frontlet, Frontal: 1; finished 2743 × 180", TRUE);
}

/* --- on paper ------------------------------------------------------------------------------------- */

static gboolean
is_lettered (const GPtrArray *pages, const char *text)
{
  for (guint p = 0; p < pages->len; p++)
    {
      guint n;
      const FpMark *mark = fp_drawing_marks (g_ptr_array_index (pages, p), &n);

      for (guint i = 0; i < n; i++)
        if (mark[i].type == FP_MARK_TEXT && g_str_has_prefix (mark[i].text, text))
          return TRUE;
    }
  return FALSE;
}

/* All points and words lie on the paper. */
static void
assert_on_paper (FpDrawing *page)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (page, &n);
  const double width = fp_drawing_width (page), height = fp_drawing_height (page);

  for (guint i = 0; i < n; i++)
    {
      const double long_as = mark[i].type == FP_MARK_TEXT ? fp_lettering_width (mark[i].text, mark[i].height) : 0;
      const double from = mark[i].align == FP_ALIGN_LEFT ? 0 : mark[i].align == FP_ALIGN_MIDDLE ? -long_as / 2 : -long_as;

      for (guint k = 0; mark[i].type == FP_MARK_LINE && k < mark[i].n; k++)
        {
          const FpPoint p = fp_drawing_points (page)[mark[i].first + k];
          g_assert_true (p.x >= 0 && p.x <= width && p.y >= 0 && p.y <= height);
        }
      if (mark[i].type != FP_MARK_TEXT)
        continue;
      if (mark[i].turn == 0 && !(mark[i].at.x + from >= 0 && mark[i].at.x + from + long_as <= width))
        g_test_message ("off the paper: %s", mark[i].text);
      g_assert_true (mark[i].turn != 0 || (mark[i].at.x + from >= 0 && mark[i].at.x + from + long_as <= width));
      g_assert_true (mark[i].at.y >= 0 && mark[i].at.y <= height);
    }
}

static void
assert_sheets (const FpLinenPlan *plan, const FpSheetSpec *spec)
{
  g_autoptr (GError) error = NULL;
  double scale = 0;
  g_autoptr (GPtrArray) pages = fp_linen_plan_sheets (plan, spec, &scale, &error);
  g_autofree char *table = fp_linen_plan_csv (plan), *last = NULL;
  g_auto (GStrv) lines = g_strsplit (table, "\r\n", -1);

  g_assert_no_error (error);
  g_assert_true (is_lettered (pages, "Buy "));
  for (guint i = 0; i < pages->len; i++)
    assert_on_paper (g_ptr_array_index (pages, i));
  last = g_strdup_printf ("%u of %u", pages->len, pages->len);
  g_assert_true (is_lettered (pages, last));
  /* Each piece by its letter, which is the last but one in the table. */
  for (guint i = 1; lines[i] != NULL && *lines[i] != '\0'; i++)
    {
      g_auto (GStrv) cells = g_strsplit (lines[i], ",", -1);
      const char *letter = cells[g_strv_length (cells) - 2];
      g_assert_true (is_lettered (pages, letter));
    }
}

static void
test_sheets (void)
{
  for (guint units = 0; units < 2; units++)
    {
      g_autoptr (FpProject) project = parish ((FpUnits) units);

      add_on_altar (&project, "gradine", "depth", 240);
      add_on_altar (&project, "frontal", "guard", 76);
      g_autoptr (FpLinenPlan) wide = plan_of (project, 60 * INCH, FALSE), narrow = plan_of (project, 24 * INCH, TRUE);

      for (guint landscape = 0; landscape < 2; landscape++)
        {
          const FpSheetSpec a3 = { .paper = FP_PAPER_A3, .landscape = landscape == 1 }, a4 = { .paper = FP_PAPER_A4, .landscape = landscape == 1 };

          assert_sheets (wide, &a3);
          assert_sheets (narrow, &a3);
          assert_sheets (wide, &a4);
        }
    }
}

/* Larger than 1:50, on which pieces could hardly be told apart; what was asked for is told where it does not fit. */
static void
test_scale (void)
{
  g_autoptr (FpProject) project = parish (FP_UNITS_METRIC);
  g_autoptr (FpLinenPlan) plan = plan_of (project, 1500, FALSE);
  FpSheetSpec spec = { .paper = FP_PAPER_A3, .landscape = TRUE };
  g_autoptr (GError) error = NULL;
  double scale = 0;
  g_autoptr (GPtrArray) pages = fp_linen_plan_sheets (plan, &spec, &scale, &error);

  g_assert_no_error (error);
  g_assert_cmpfloat (scale, >, 0);
  g_assert_cmpfloat (scale, <=, 30);
  spec.scale = 50;
  g_autoptr (GPtrArray) smaller = fp_linen_plan_sheets (plan, &spec, &scale, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat (scale, ==, 50);
  spec.scale = 2;
  g_assert_null (fp_linen_plan_sheets (plan, &spec, &scale, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_RANGE);
  g_assert_nonnull (strstr (error->message, "the largest scale that fits is 1:"));
}

/* --- with others ------------------------------------------------------------------------------------ */

/* Each cloth stands in the bill once, as it is finished. */
static void
test_bill (void)
{
  g_autoptr (FpProject) project = parish (FP_UNITS_METRIC);
  g_autoptr (FpLinenPlan) plan = plan_of (project, 1500, FALSE);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpBill) bill = fp_bill_new (scene);
  const GArray *cloths = fp_linen_plan_cloths (plan), *rows = fp_bill_rows (bill);
  guint linen = 0;

  for (guint i = 0; i < rows->len; i++)
    linen += g_array_index (rows, FpBillRow, i).material == FP_MATERIAL_LINEN;
  g_assert_cmpuint (linen, ==, cloths->len);
  for (guint i = 0; i < cloths->len; i++)
    {
      const FpCloth *cloth = &g_array_index (cloths, FpCloth, i);
      guint found = 0;

      for (guint k = 0; k < rows->len; k++)
        {
          const FpBillRow *row = &g_array_index (rows, FpBillRow, k);
          found += row->material == FP_MATERIAL_LINEN && strcmp (row->what, cloth->label) == 0 && row->pieces == cloth->number
                   && fabs (row->size.x - cloth->length) < 1e-6 && fabs (row->size.y - cloth->width) < 1e-6;
        }
      g_assert_cmpuint (found, ==, 1);
    }
}

/* A parish of which all is set out by rule. */
static void
test_furnished (void)
{
  g_autofree char *path = g_build_filename (g_getenv ("FOOTPACE_SAMPLES"), "chapel.footpace", NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) project = fp_store_load (path, &error);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (GArray) told = fp_furnished_new ();
  g_autoptr (FpProject) furnished = fp_furnish (scene, FP_CELEBRATION_SUNG, told, &error);
  const FpSheetSpec a3 = { .paper = FP_PAPER_A3, .landscape = TRUE };

  g_assert_no_error (error);
  g_autoptr (FpLinenPlan) plan = plan_of (furnished, 1500, FALSE);
  g_assert_nonnull (cloth_of (plan, "top-cloth"));
  assert_sheets (plan, &a3);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/linen-plan/buy", test_buy);
  g_test_add_func ("/linen-plan/not-tried", test_not_tried);
  g_test_add_func ("/linen-plan/books", test_books);
  g_test_add_func ("/linen-plan/gradine", test_gradine);
  g_test_add_func ("/linen-plan/tabernacle", test_tabernacle);
  g_test_add_func ("/linen-plan/drawn", test_drawn);
  g_test_add_func ("/linen-plan/wide", test_wide);
  g_test_add_func ("/linen-plan/refused", test_refused);
  g_test_add_func ("/linen-plan/rail", test_rail);
  g_test_add_func ("/linen-plan/small", test_small);
  g_test_add_func ("/linen-plan/corporal", test_corporal);
  g_test_add_func ("/linen-plan/silk", test_silk);
  g_test_add_func ("/linen-plan/sheets", test_sheets);
  g_test_add_func ("/linen-plan/scale", test_scale);
  g_test_add_func ("/linen-plan/bill", test_bill);
  g_test_add_func ("/linen-plan/furnished", test_furnished);
  return g_test_run ();
}
