/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What nobody would leave out is on every sheet: as a figure, or, where no figure finds room, in words. */
#include "footpace/drawing.h"
#include "footpace/setting-out.h"
#include "footpace/store.h"

#include "church.h"
#include "crossings.h"
#include "random-sanctuary.h"
#include "reading.h"

#include <string.h>

/* Which measures: what an altar, its steps and a rail are ordered and built by (common practice, no source). */
typedef struct { const char *kind, *param; guint views; const char *words; } Must;

#define PLAN      (1u << FP_SHEET_PLAN)
#define ELEVATION (1u << FP_SHEET_ELEVATION)
#define SECTION   (1u << FP_SHEET_SECTION)
#define BOARD     (1u << FP_SHEET_BOARD)

static const Must MUSTS[] = {
  { "altar", "length", PLAN | ELEVATION | BOARD, "mensa length" },
  { "altar", "depth", PLAN | SECTION | BOARD, "mensa depth" },
  { "altar", "height", ELEVATION | SECTION | BOARD, "altar height" },
  { "footpace", "riser", ELEVATION | SECTION | BOARD, "each riser of the altar steps" },
  { "footpace", "tread", PLAN | SECTION | BOARD, "each tread of the altar steps" },
  { "footpace", "front", PLAN | SECTION | BOARD, "footpace before the altar" },
  { "steps", "riser", SECTION | BOARD, "each riser of the steps between floors" },
  { "rail", "height", ELEVATION | SECTION | BOARD, "rail height" },
  { "rail", "gate", PLAN | ELEVATION | BOARD, "gate of the rail" },
};

/* All that is said in words, on one line. */
static char *
all_words (const FpDrawing *drawing)
{
  GString *all = g_string_new (NULL);
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_TEXT && mark[i].view < 0)
      g_string_append_printf (all, " %s", mark[i].text);
  return g_string_free (all, FALSE);
}

/* As a figure in some view: of its parameter, or, since what is equal and in line is told once, its value. */
static gboolean
is_dimensioned (const GArray *found, const char *param, const char *figure)
{
  for (guint i = 0; i < found->len; i++)
    {
      const ReadDimension *d = &g_array_index (found, ReadDimension, i);
      if (g_str_equal (d->text, figure) || (g_strcmp0 (d->param, param) == 0 && g_str_has_suffix (d->text, figure)))
        return TRUE;
    }
  return FALSE;
}

/* FALSE where there is nothing to tell: of a gate that is not there, and of the tread of a single step. */
static gboolean
assert_told (const FpScene *scene, const FpPlaced *of, const Must *must, const FpDrawing *drawing, const char *what)
{
  const FpKind *kind = fp_item_kind (of->item);
  const double value = of->form.param[fp_kind_param_index (kind, must->param)];
  const FpUnits units = fp_project_brief (fp_scene_project (scene))->units;
  g_autofree char *figure = fp_length_format (value, units), *words = all_words (drawing);
  g_autoptr (GArray) found = crossings_read_dimensions (drawing);
  const int count = fp_kind_param_index (kind, "count");

  if (value < 1 || (strcmp (must->param, "tread") == 0 && count >= 0 && of->form.param[count] < 2))
    return FALSE;
  if (!is_dimensioned (found, must->param, figure)
      && (strstr (words, must->words) == NULL || strstr (words, figure) == NULL))
    g_error ("%s: neither dimension nor words tell the %s %s", what, must->words, figure);
  return TRUE;
}

static gboolean
is_of_celebrated (const FpScene *scene, const FpPlaced *of)
{
  const FpPlaced *placed = fp_scene_placed (scene, NULL);
  const int altar = fp_scene_celebrated_altar (scene);
  const FpRole role = fp_item_kind (of->item)->role;

  if (role == FP_ROLE_ALTAR)
    return altar >= 0 && of == &placed[altar];
  return role != FP_ROLE_FOOTPACE || (altar >= 0 && placed[altar].support >= 0 && of == &placed[placed[altar].support]);
}

static gboolean
is_drawn (const FpDrawing *drawing, const char *item)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_LINE && mark[i].pen != FP_PEN_HIDDEN && mark[i].dimension == 0
        && g_strcmp0 (mark[i].item, item) == 0)
      return TRUE;
  return FALSE;
}

static void
assert_sheet (const FpScene *scene, FpSheetKind kind, FpPaper paper, gboolean whole, const char *what, guint *told)
{
  const FpSheetSpec spec = { .kind = kind, .paper = paper, .landscape = TRUE, .whole = whole };
  guint n;
  double scale;
  g_autoptr (GError) error = NULL;
  g_autoptr (FpDrawing) drawing = fp_sheet_new (scene, &spec, &scale, &error);
  const FpPlaced *placed = fp_scene_placed (scene, &n);
  g_autofree char *where = NULL;

  g_assert_no_error (error);
  where = g_strdup_printf ("%s, %s%s on %s, 1:%g", what, fp_sheet_id (kind), whole ? " of the whole" : "",
                           fp_paper_id (paper), scale);
  for (guint i = 0; i < n; i++)
    for (guint m = 0; m < G_N_ELEMENTS (MUSTS); m++)
      if (!placed[i].ghost && (MUSTS[m].views & (1u << kind)) != 0
          && g_str_equal (fp_item_kind (placed[i].item)->id, MUSTS[m].kind) && is_of_celebrated (scene, &placed[i])
          && placed[i].place.turn == 0 && is_drawn (drawing, fp_item_id (placed[i].item)))
        told[m] += assert_told (scene, &placed[i], &MUSTS[m], drawing, where) ? 1 : 0;
  crossings_assert_none (drawing, -1, where);
  crossings_assert_figures_clear (drawing, where);
}

/* @told: how often each of the MUSTS was, added to. */
static void
assert_sheets (const FpScene *scene, guint *turn, const char *what, guint *told)
{
  static const FpSheetKind kinds[] = { FP_SHEET_PLAN, FP_SHEET_ELEVATION, FP_SHEET_SECTION, FP_SHEET_BOARD };

  for (guint k = 0; k < G_N_ELEMENTS (kinds); k++)
    for (int whole = 0; whole < 2; whole++)
      for (guint p = 0; p < 2; p++)
        assert_sheet (scene, kinds[k], (FpPaper) ((*turn)++ % (FP_N_PAPERS - 1)), whole, what, told);
}

/* Of all but the steps between nave and sanctuary, which some have not. */
static void
assert_most_told (const guint *told)
{
  for (guint m = 0; m < G_N_ELEMENTS (MUSTS); m++)
    if (!g_str_equal (MUSTS[m].kind, "steps"))
      g_assert_cmpuint (told[m], >, 0);
}

static FpProject *
load (const char *name)
{
  const char *folder = g_getenv ("FOOTPACE_SAMPLES");
  g_autofree char *file = g_strconcat (name, ".footpace", NULL);
  g_autofree char *path = g_build_filename (folder != NULL ? folder : "samples", file, NULL);
  g_autoptr (GError) error = NULL;
  FpProject *project = fp_store_load (path, &error);

  g_assert_no_error (error);
  return project;
}

static void
test_samples (gconstpointer data)
{
  g_autoptr (FpProject) project = load (data);
  guint turn = 0, told[G_N_ELEMENTS (MUSTS)] = { 0 };

  for (guint a = 0; a < fp_project_n_alternatives (project); a++)
    {
      g_autoptr (FpScene) scene = fp_scene_new (project, a);
      g_autofree char *what = g_strdup_printf ("%s, alternative %u", (const char *) data, a);
      assert_sheets (scene, &turn, what, told);
    }
  for (guint m = 0; m < 6; m++) /* not each has a rail, or steps before it */
    g_assert_cmpuint (told[m], >, 0);
}

static void
test_random (void)
{
  guint turn = 0, told[G_N_ELEMENTS (MUSTS)] = { 0 };

  for (guint32 seed = 1; seed <= 12; seed++)
    {
      g_autoptr (FpScene) scene = random_sanctuary_new (seed, seed % 3 == 0 ? FP_UNITS_IMPERIAL : FP_UNITS_METRIC);
      g_autofree char *what = g_strdup_printf ("random sanctuary %u", seed);
      assert_sheets (scene, &turn, what, told);
    }
  assert_most_told (told);
}

/* --- the parish with more steps and a wider gate ------------------------------------------------ */

static FpProject *
with (FpProject *project, const char *item, const char *param, double value)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 2);
  g_autoptr (GError) error = NULL;
  FpProject *next = fp_set_out_param (scene, item, param, value, &error);

  g_assert_no_error (error);
  fp_project_unref (project);
  return next;
}

static void
test_altered_parish (void)
{
  g_autoptr (FpProject) project = with (with (with (load ("parish"), "footpace", "count", 5), "footpace", "tread", 350),
                                        "rail", "gate", 1200);
  g_autoptr (FpScene) scene = fp_scene_new (project, 2);
  static const FpSheetKind kinds[] = { FP_SHEET_PLAN, FP_SHEET_ELEVATION, FP_SHEET_BOARD };
  static const FpPaper papers[] = { FP_PAPER_A2, FP_PAPER_A3, FP_PAPER_A4 };
  guint turn = 0, told[G_N_ELEMENTS (MUSTS)] = { 0 };

  assert_sheets (scene, &turn, "altered parish", told);
  assert_most_told (told);
  /* Here there is room: as figures. */
  for (guint k = 0; k < G_N_ELEMENTS (kinds); k++)
    for (guint p = 0; p < G_N_ELEMENTS (papers); p++)
      {
        const FpSheetSpec spec = { .kind = kinds[k], .paper = papers[p], .landscape = TRUE };
        g_autoptr (FpDrawing) drawing = fp_sheet_new (scene, &spec, NULL, NULL);
        g_assert_true (reading_has_text (drawing, "2700"));
        g_assert_true (reading_has_text (drawing, "1200"));
        if (kinds[k] == FP_SHEET_PLAN)
          g_assert_true (reading_has_text (drawing, "4 × 350"));
        if (kinds[k] == FP_SHEET_ELEVATION && papers[p] == FP_PAPER_A3)
          {
            g_assert_true (reading_has_text (drawing, "6200")); /* the arch */
            g_assert_true (reading_has_text (drawing, "+8.500"));
            g_assert_true (reading_has_text (drawing, "5 × 165"));
          }
      }
}

int
main (int argc, char **argv)
{
  static const char *const samples[] = { "parish", "chapel", "cathedral", "fan" };

  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (samples); i++)
    {
      g_autofree char *path = g_strconcat ("/musts/samples/", samples[i], NULL);
      g_test_add_data_func (path, samples[i], test_samples);
    }
  g_test_add_func ("/musts/random", test_random);
  g_test_add_func ("/musts/altered-parish", test_altered_parish);
  return g_test_run ();
}
