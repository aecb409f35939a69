/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Lists and drawings that the window shows, made without it. */
#include "file-names.h"
#include "samples.h"
#include "sheets.h"
#include "shown-findings.h"
#include "small-drawing.h"
#include "things.h"

#include "footpace/levels.h"
#include "footpace/retype.h"
#include "footpace/setting-out.h"
#include "footpace/store.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

static const char *const samples[] = { "parish.footpace", "chapel.footpace", "fan.footpace", "cathedral.footpace" };

static FpProject *
load (const char *name)
{
  g_autofree char *path = fp_sample_path (name);
  g_autoptr (GError) error = NULL;
  FpProject *project = fp_store_load (path, &error);

  g_assert_no_error (error);
  return project;
}

/* --- things --------------------------------------------------------------- */

/* Each thing once, after what it stands on; where something stood before is not listed. */
static void
check_things (const FpScene *scene)
{
  g_autoptr (GArray) things = fp_things_new (scene);
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);
  g_autofree int *position = g_new (int, n);

  memset (position, 0xff, sizeof (int) * n);
  for (guint i = 0; i < things->len; i++)
    {
      const FpThing *t = &g_array_index (things, FpThing, i);

      g_assert_cmpint (position[t->placed], ==, -1);
      position[t->placed] = (int) i;
      g_assert_cmpint (placed[t->placed].support >= 0, ==, t->depth > 0);
      if (t->depth > 0)
        g_assert_cmpint (position[placed[t->placed].support], >=, 0);
    }
  for (guint i = 0; i < n; i++)
    {
      gboolean stood_before = placed[i].ghost && fp_scene_find (scene, fp_item_id (placed[i].item)) >= 0;

      g_assert_cmpint (position[i] >= 0, ==, !stood_before);
    }
}

static void
test_things (void)
{
  for (guint s = 0; s < G_N_ELEMENTS (samples); s++)
    {
      g_autoptr (FpProject) project = load (samples[s]);

      for (guint a = 0; a < fp_project_n_alternatives (project); a++)
        {
          g_autoptr (FpScene) scene = fp_scene_new (project, a);

          check_things (scene);
        }
    }
}

static void
test_standing_in_words (void)
{
  g_autoptr (FpProject) project = load ("parish.footpace");
  g_autoptr (FpScene) scene = fp_scene_new (project, (guint) fp_project_find_alternative (project, "b"));
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);
  g_autofree char *where = NULL;

  for (guint i = 0; i < n; i++)
    {
      const char *id = fp_item_id (placed[i].item), *standing = fp_thing_standing (scene, &placed[i]);

      if (strcmp (id, "altar-1974") == 0)
        g_assert_cmpstr (standing, ==, "removed");
      else if (strcmp (id, "chair-1974") == 0)
        g_assert_cmpstr (standing, ==, placed[i].ghost ? "stood here before" : "moved");
      else if (strcmp (id, "pews-front-g") == 0)
        g_assert_cmpstr (standing, ==, "existing");
    }
  placed = &placed[fp_scene_role (scene, FP_ROLE_ALTAR)];
  where = fp_thing_where (scene, placed, FP_UNITS_METRIC);
  g_assert_true (g_str_has_prefix (where, "stands on "));
  g_assert_nonnull (strstr (where, "+0."));
}

/* --- findings ------------------------------------------------------------- */

static FpFindings *
quick (const FpScene *scene)
{
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (GPtrArray) books = fp_rulebooks_built_in ();
  const FpMeasuring of = { scene, people, fp_levels (people), NULL };

  return fp_findings_new (&of, books);
}

static void
test_worst_first (void)
{
  g_autoptr (FpProject) project = load ("parish.footpace");
  g_autoptr (FpFindings) findings = fp_findings_of (project, 0, NULL, NULL);
  g_autoptr (GArray) shown = fp_shown_new (findings, findings);
  g_autofree char *summary = fp_shown_summary (shown), *rest = fp_shown_rest (findings, shown);
  guint n_short = 0;

  for (guint w = 0; w < FP_N_WEIGHTS; w++)
    n_short += fp_findings_short (findings, (FpWeight) w);
  g_assert_cmpuint (shown->len, ==, n_short);
  for (guint i = 1; i < shown->len; i++)
    g_assert_cmpint (g_array_index (shown, FpShown, i - 1).finding->rule->weight, <=,
                     g_array_index (shown, FpShown, i).finding->rule->weight);
  g_assert_cmpstr (summary, !=, "");
  g_assert_true (g_str_has_prefix (rest, "No finding against "));
}

/* The panel and the report tell the findings in one order, also while what needs sight is of before. */
static void
test_one_order (void)
{
  for (guint s = 0; s < 2; s++) /* the larger ones take long */
    {
      g_autoptr (FpProject) project = load (samples[s]);
      g_autoptr (FpScene) scene = fp_scene_new (project, 0);
      g_autoptr (FpFindings) quickly = quick (scene), findings = fp_findings_of (project, 0, NULL, NULL);
      g_autoptr (GArray) shown = fp_shown_new (findings, findings), before = fp_shown_new (quickly, findings);
      guint n, at = 0;
      const FpFinding *finding = fp_findings_get (findings, &n);

      for (guint i = 0; i < n; i++)
        if (finding[i].found == FP_FOUND_SHORT)
          {
            g_assert_cmpuint (at, <, MIN (shown->len, before->len));
            g_assert_true (g_array_index (shown, FpShown, at).finding == &finding[i]);
            g_assert_cmpstr (g_array_index (before, FpShown, at++).finding->rule->id, ==, finding[i].rule->id);
          }
      g_assert_cmpuint (at, ==, shown->len);
    }
}

/* The words of approval that the program never uses. */
static void
test_no_approval (void)
{
  for (guint s = 0; s < G_N_ELEMENTS (samples); s++)
    {
      g_autoptr (FpProject) project = load (samples[s]);
      g_autoptr (FpScene) scene = fp_scene_new (project, 0);
      g_autoptr (FpFindings) findings = quick (scene);
      g_autoptr (GArray) shown = fp_shown_new (findings, NULL);
      g_autofree char *rest = fp_shown_rest (findings, shown);

      g_assert_null (strstr (rest, "compl"));
      g_assert_null (strstr (rest, "valid"));
      g_assert_null (strstr (rest, "approved"));
      for (guint i = 0; i < shown->len; i++)
        {
          g_autofree char *speech = fp_shown_speech (&g_array_index (shown, FpShown, i));

          /* Each names where it is printed. */
          g_assert_nonnull (strstr (speech, g_array_index (shown, FpShown, i).finding->rule->source));
        }
    }
}

/* While sight is computed anew, what it last said is shown and marked; without it nothing is made up. */
static void
test_waiting_for_sight (void)
{
  g_autoptr (FpProject) project = load ("parish.footpace");
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpFindings) newest = quick (scene);
  g_autoptr (FpFindings) sighted = fp_findings_of (project, 0, NULL, NULL);
  g_autoptr (GArray) both = fp_shown_new (newest, sighted);
  g_autoptr (GArray) without = fp_shown_new (newest, NULL);
  g_autofree char *rest = fp_shown_rest (newest, both);
  guint stale = 0;

  for (guint i = 0; i < both->len; i++)
    if (g_array_index (both, FpShown, i).stale)
      stale++;
  g_assert_cmpuint (stale, >, 0);
  g_assert_cmpuint (without->len, ==, both->len - stale);
  g_assert_true (g_str_has_prefix (rest, "Rules of sight and of ways are being computed"));
}

/* --- drawings ------------------------------------------------------------- */

static void
test_overview (void)
{
  g_autoptr (FpProject) project = load ("parish.footpace");
  FpOverview *overview = fp_overview_new (project, TRUE, NULL, NULL);
  guint marks;

  g_assert_cmpuint (overview->n, ==, fp_project_n_alternatives (project));
  for (guint i = 0; i < overview->n; i++)
    {
      fp_drawing_marks (overview->elevation[i], &marks);
      g_assert_cmpuint (marks, >, 20);
      fp_drawing_marks (overview->plan[i], &marks);
      g_assert_cmpuint (marks, >, 20);
      g_assert_true (g_str_has_prefix (overview->levels[i], "people"));
    }
  fp_overview_free (overview);
}

static void
assert_alike (FpDrawing *a, FpDrawing *b)
{
  g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (FpBox));
  guint n, m;

  fp_drawing_marks (a, &n);
  fp_drawing_marks (b, &m);
  g_assert_cmpuint (n, ==, m);
  g_assert_true (fp_drawing_differences (a, b, boxes));
  g_assert_cmpuint (boxes->len, ==, 0);
}

/* Whatever was drawn before: other places, fewer alternatives. */
static void
assert_overview_with (FpOverviewMemory *memory, const FpProject *project)
{
  FpOverview *with = fp_overview_new (project, TRUE, memory, NULL);
  FpOverview *without = fp_overview_new (project, TRUE, NULL, NULL);

  g_assert_cmpuint (with->n, ==, without->n);
  for (guint i = 0; i < with->n; i++)
    {
      assert_alike (with->elevation[i], without->elevation[i]);
      assert_alike (with->plan[i], without->plan[i]);
      g_assert_cmpstr (with->levels[i], ==, without->levels[i]);
    }
  fp_overview_free (with);
  fp_overview_free (without);
}

static FpProject *
with_altar_moved (const FpProject *project, double by)
{
  const FpScene *scene = fp_scene_new (project, 0);
  const char *id = fp_item_id (fp_scene_placed (scene, NULL)[fp_scene_celebrated_altar (scene)].item);
  FpProject *moved = fp_set_out_move (scene, id, (FpVec3) { 0, by, 0 }, NULL);

  fp_scene_unref (scene);
  g_assert_nonnull (moved);
  return moved;
}

static void
test_overview_again (void)
{
  g_autoptr (FpProject) project = load ("parish.footpace"), moved = with_altar_moved (project, -120), fewer = NULL;
  FpOverviewMemory *memory = fp_overview_memory_new ();

  fewer = fp_project_without_alternative (moved, 1, NULL);
  g_assert_nonnull (fewer);
  assert_overview_with (memory, project);
  assert_overview_with (memory, moved);
  assert_overview_with (memory, fewer);
  assert_overview_with (memory, project);
  fp_overview_memory_free (memory);
}

static void
test_overview_cancelled (void)
{
  g_autoptr (FpProject) project = load ("parish.footpace");
  g_autoptr (GCancellable) cancel = g_cancellable_new ();

  g_cancellable_cancel (cancel);
  g_assert_null (fp_overview_new (project, TRUE, NULL, cancel));
}

static void
test_sheets (void)
{
  g_autoptr (FpProject) measured = load ("parish.footpace"), project = NULL;
  FpWorks works = fp_works_usual;

  works.bolt = 2000;
  project = fp_project_with_works (measured, &works, NULL);
  for (guint sheet = 0; sheet < FP_N_ALL_SHEETS; sheet++)
    {
      FpSheetOrder order = { .looks = { .sight = { FP_MOMENT_ELEVATION, FP_FOCUS_HOST, -1 } }, .project = project, .alternative = 1, .page = { .sheet = sheet, .paper = FP_PAPER_A3, .landscape = TRUE,
                                       .findings = sheet == FP_SHEET_ELEVATION } };
      FpSheets *sheets = fp_sheets_new (&order, NULL);
      g_autofree char *name = fp_sheets_file_name (&order, "pdf");

      g_assert_no_error (sheets->error);
      g_assert_cmpuint (sheets->pages->len, >=, 1);
      /* A3 is 420 mm by 297 mm (ISO 216); a card is always upright. */
      if (sheet == FP_SHEET_CARD)
        {
          g_assert_cmpfloat_with_epsilon (fp_drawing_width (g_ptr_array_index (sheets->pages, 0)), 297.0, 1e-9);
          g_assert_cmpuint (sheets->pages->len, ==, 4); /* the brief names so many celebrations */
          fp_sheets_free (sheets);
          continue;
        }
      g_assert_cmpfloat_with_epsilon (fp_drawing_width (g_ptr_array_index (sheets->pages, 0)), 420.0, 1e-9);
      g_assert_cmpfloat_with_epsilon (fp_drawing_height (g_ptr_array_index (sheets->pages, 0)), 297.0, 1e-9);
      g_assert_true (g_str_has_suffix (name, ".pdf"));
      g_assert_true (sheets->scale > 0 || sheet == FP_SHEET_COMPARE || sheet == FP_SHEET_SCHEDULE
                     || sheet == FP_SHEET_CAPACITY);
      g_assert_null (strchr (name, '/'));
      fp_sheets_free (sheets);
    }
}

/* What does not fit says so, and which scale would. */
static void
test_sheet_too_large (void)
{
  g_autoptr (FpProject) project = load ("cathedral.footpace");
  FpSheetOrder order = { .project = project, .page = { .sheet = FP_SHEET_PLAN, .paper = FP_PAPER_A4, .scale = 10.0, .whole = TRUE } };
  FpSheets *sheets = fp_sheets_new (&order, NULL);

  g_assert_error (sheets->error, FP_ERROR, FP_ERROR_RANGE);
  g_assert_null (sheets->pages);
  fp_sheets_free (sheets);
  /* On several pages it does, at 1:50. */
  order.page.scale = 50;
  order.page.tiled = TRUE;
  order.page.tile = FP_PAPER_A3;
  sheets = fp_sheets_new (&order, NULL);
  g_assert_no_error (sheets->error);
  g_assert_cmpuint (sheets->pages->len, >=, 6);
  g_assert_cmpfloat (sheets->scale, ==, 50);
  fp_sheets_free (sheets);
}

static void
test_sheet_files (void)
{
  g_autoptr (FpProject) project = load ("parish.footpace");
  FpSheetOrder order = { .project = project, .alternative = 1, .page = { .sheet = FP_SHEET_ELEVATION, .paper = FP_PAPER_A4, .landscape = TRUE } };
  FpSheets *sheets = fp_sheets_new (&order, NULL);
  g_autofree char *dir = g_dir_make_tmp ("footpace-XXXXXX", NULL);
  const struct { const char *format, *begins; } cases[] = {
    { "pdf", "%PDF-" }, { "svg", "<?xml" }, { "png", "\x89PNG" }
  };
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *name = g_strconcat ("sheet.", cases[i].format, NULL);
      g_autofree char *path = g_build_filename (dir, name, NULL), *content = NULL;

      g_assert_true (fp_sheets_write (sheets, cases[i].format, path, &error));
      g_assert_no_error (error);
      g_assert_true (g_file_get_contents (path, &content, NULL, NULL));
      g_assert_true (g_str_has_prefix (content, cases[i].begins));
      g_unlink (path);
    }
  g_assert_false (fp_sheets_write (sheets, "pdf", "/nowhere/at/all/sheet.pdf", &error));
  g_assert_nonnull (error);
  fp_sheets_free (sheets);
  g_rmdir (dir);
}

static void
test_file_names (void)
{
  g_autofree char *dir = g_dir_make_tmp ("footpace-XXXXXX", NULL);
  g_autofree char *plain = g_build_filename (dir, "holy rood", NULL), *longer = g_strconcat (plain, ".footpace", NULL);
  g_autofree char *upper = g_build_filename (dir, "A.FOOTPACE", NULL), *added = NULL, *kept = NULL, *same = NULL;
  g_autofree char *clean = fp_file_clean_name ("Saint John/Paul: north\\south"), *hidden = fp_file_clean_name (".x");
  g_autofree char *offered = fp_file_offered_name ("Holy Rood", "Altar / rail", "schedules", "csv");
  g_autofree char *of_all = fp_file_offered_name ("Holy Rood", NULL, "comparison", "pdf"), *many = g_strnfill (200, '-');
  g_autofree char *long_name = g_strconcat ("ä", many, NULL), *accents = g_strjoinv ("é", (char *[]) { long_name, long_name, NULL });
  g_autofree char *cut = fp_file_offered_name (accents, accents, "schedules", "csv");
  g_autoptr (GError) error = NULL;

  added = fp_file_with_suffix (plain, "footpace", &error);
  g_assert_cmpstr (added, ==, longer);
  kept = fp_file_with_suffix (longer, "footpace", &error);
  g_assert_cmpstr (kept, ==, longer);
  same = fp_file_with_suffix (upper, "footpace", &error);
  g_assert_cmpstr (same, ==, upper);
  g_assert_no_error (error);
  /* Nobody was asked about the longer name: it is not overwritten. */
  g_assert_true (g_file_set_contents (longer, "precious", -1, NULL));
  g_assert_null (fp_file_with_suffix (plain, "footpace", &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_WRITE);
  g_assert_cmpstr (clean, ==, "Saint John-Paul- north-south");
  g_assert_cmpstr (hidden, ==, "-x");
  g_assert_cmpstr (offered, ==, "Holy Rood, Altar - rail, schedules.csv");
  g_assert_cmpstr (of_all, ==, "Holy Rood, comparison.pdf");
  g_assert_cmpuint (strlen (cut), <, 255);
  g_assert_true (g_utf8_validate (cut, -1, NULL));
  g_unlink (longer);
  g_rmdir (dir);
}

/* A frame holds what lies wholly in it, in any view; the building is none of it. */
static void
test_within (void)
{
  g_autoptr (FpProject) project = load ("parish.footpace");
  g_autoptr (FpScene) scene = fp_scene_new (project, 1);
  const FpPlaced *altar = &fp_scene_placed (scene, NULL)[fp_scene_celebrated_altar (scene)];
  const char *id = fp_item_id (altar->item);
  const double top = altar->level + altar->extent.height;
  FpBox plan = { altar->plan.x0 - 1, altar->plan.y0 - 1, altar->plan.x1 + 1, altar->plan.y1 + 1 };
  FpBox upright = { altar->plan.x0 - 1, altar->level - 1, altar->plan.x1 + 1, top + 1 };
  FpBox everything = { -1e6, -1e6, 1e6, 1e6 };
  g_auto (GStrv) all = fp_things_furnishings (scene, 0), in_plan = fp_things_within (scene, FP_VIEW_PLAN, &plan);
  g_auto (GStrv) in_elevation = fp_things_within (scene, FP_VIEW_ELEVATION, &upright);
  g_auto (GStrv) in_all = fp_things_within (scene, FP_VIEW_SECTION, &everything);
  g_auto (GStrv) cut = NULL, less = fp_things_furnishings (scene, 1u << FP_SHOW_ALTAR);

  g_assert_true (g_strv_contains ((const char *const *) all, id));
  g_assert_false (g_strv_contains ((const char *const *) less, id));
  g_assert_cmpuint (g_strv_length (less), >, 0);
  g_assert_cmpuint (g_strv_length (all), >, 5);
  for (char **one = all; *one != NULL; one++)
    g_assert_false (fp_item_kind (fp_scene_placed (scene, NULL)[fp_scene_find (scene, *one)].item)->flags & FP_KIND_SURVEY);
  g_assert_true (g_strv_contains ((const char *const *) in_plan, id));
  g_assert_true (g_strv_contains ((const char *const *) in_elevation, id));
  g_assert_cmpuint (g_strv_length (in_all), ==, g_strv_length (all));
  plan.x1 -= 2; /* not wholly any more */
  cut = fp_things_within (scene, FP_VIEW_PLAN, &plan);
  g_assert_false (g_strv_contains ((const char *const *) cut, id));
}

/* --- dimensions as handles ---------------------------------------------------- */

static FpDrawing *
draw_board (const FpScene *scene)
{
  FpProjection *projection[FP_N_VIEWS];
  FpBoardLayout layout;
  FpDrawing *drawing;
  double scale;
  FpPoint pan;

  for (guint v = 0; v < FP_N_VIEWS; v++)
    projection[v] = fp_projection_new (scene, (FpViewId) v);
  fp_board_fit (scene, NULL, FALSE, 800.0, 560.0, &scale, &pan);
  fp_board_layout (scene, NULL, scale, pan, FP_UNITS_METRIC, &layout);
  drawing = fp_board_draw (projection, &layout, 800.0, 560.0);
  for (guint v = 0; v < FP_N_VIEWS; v++)
    fp_projection_unref (projection[v]);
  return drawing;
}

/* Whether a drawing tells that measure of the same thing, to the millimetre. */
static gboolean
tells (const FpDrawing *drawing, const FpStretch *s, double value)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    {
      const FpStretch *t = mark[i].dimension != 0 ? fp_drawing_stretch (drawing, mark[i].dimension) : NULL;

      if (t != NULL && t->sort == s->sort && t->item == s->item && t->other == s->other
          && fabs (fp_stretch_value (t) - value) < 1.0)
        return TRUE;
    }
  return FALSE;
}

typedef struct { guint taken, told, refused; } Tally;

static void
type_over (const FpScene *scene, const FpStretch *s, Tally *tally)
{
  static const char *const nothing[] = { NULL };
  g_autoptr (GError) error = NULL;
  const double value = fp_stretch_value (s) + 8.0;
  g_autoptr (FpProject) next = fp_retype (scene, s, value, nothing, &error);
  g_autoptr (FpScene) then = next != NULL ? fp_scene_new (next, fp_scene_alternative (scene)) : NULL;
  g_autoptr (FpDrawing) drawing = then != NULL ? draw_board (then) : NULL;
  g_autofree char *words = fp_stretch_tells (s, scene);

  g_assert_cmpstr (words, !=, "");
  if (next == NULL)
    {
      g_assert_nonnull (error);
      tally->refused++;
      return;
    }
  tally->taken++;
  if (tells (drawing, s, value))
    tally->told++;
  else
    g_test_message ("%s: %g is not told any more", words, value);
}

/* Every dimension and level on the paper says what it measures; those between things can be typed over, and are then
 * told as they were typed. */
static void
test_dimensions_are_handles (void)
{
  Tally tally = { 0, 0, 0 };

  for (guint f = 0; f < 2; f++)
    {
      g_autoptr (FpProject) project = load (samples[f]);
      g_autoptr (FpScene) scene = fp_scene_new (project, fp_project_n_alternatives (project) - 1);
      g_autoptr (FpDrawing) drawing = draw_board (scene);
      guint n;
      const FpMark *mark = fp_drawing_marks (drawing, &n);

      for (guint i = 0; i < n; i++)
        {
          const FpStretch *s = fp_drawing_stretch (drawing, mark[i].dimension);

          if (mark[i].dimension == 0 || mark[i].type != FP_MARK_TEXT)
            continue;
          g_assert_nonnull (s);
          g_assert_true (s->sort != FP_STRETCH_PARAM || mark[i].param != NULL);
          if (s->sort != FP_STRETCH_PARAM)
            type_over (scene, s, &tally);
        }
    }
  g_test_message ("%u taken, %u told, %u refused", tally.taken, tally.told, tally.refused);
  g_assert_cmpuint (tally.taken, >, 10);
  /* Another may bar the way of the figure now; most stand where they stood. */
  g_assert_cmpuint (tally.told, >=, tally.taken * 3 / 4);
}

/* A way is told by where it goes, never by the sign of a coordinate. */
static void
test_travel (void)
{
  const struct { FpVec3 by; const char *words; } cases[] = {
    { { 0.0, -120.0, 0.0 }, "120 mm west" },
    { { -45.0, 30.0, 0.0 }, "30 mm east · 45 mm to the Gospel side" },
    { { 310.0, 0.0, 0.0 }, "310 mm to the Epistle side" },
    { { 0.0, 0.0, 30.0 }, "30 mm up" },
    { { 0.0, 0.0, 0.0 }, "where it was" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *words = fp_travel_words (cases[i].by, FP_UNITS_METRIC);

      g_assert_cmpstr (words, ==, cases[i].words);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/things/each-once", test_things);
  g_test_add_func ("/things/words", test_standing_in_words);
  g_test_add_func ("/shown/worst-first", test_worst_first);
  g_test_add_func ("/shown/one-order", test_one_order);
  g_test_add_func ("/shown/no-approval", test_no_approval);
  g_test_add_func ("/shown/waiting", test_waiting_for_sight);
  g_test_add_func ("/overview/all", test_overview);
  g_test_add_func ("/overview/again", test_overview_again);
  g_test_add_func ("/overview/cancelled", test_overview_cancelled);
  g_test_add_func ("/sheets/each", test_sheets);
  g_test_add_func ("/sheets/too-large", test_sheet_too_large);
  g_test_add_func ("/sheets/files", test_sheet_files);
  g_test_add_func ("/file-names", test_file_names);
  g_test_add_func ("/dimensions/handles", test_dimensions_are_handles);
  g_test_add_func ("/things/within", test_within);
  g_test_add_func ("/things/travel", test_travel);
  return g_test_run ();
}
