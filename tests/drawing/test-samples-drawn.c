/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The sheets of every sample: dimensions stand at what they measure, leaders end on what they name, lines keep apart,
 * large churches keep their overall measures, and what was measured on site is told in whole millimetres. */
#include "footpace/drawing.h"
#include "footpace/store.h"

#include "crossings.h"
#include "reading.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static const char *const SAMPLES[] = { "parish", "chapel", "cathedral", "fan" };

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

static FpScene *
scene_of (const char *sample, guint alternative)
{
  g_autoptr (FpProject) project = load (sample);

  return fp_scene_new (project, alternative);
}

static FpDrawing *
sheet (const FpScene *scene, FpSheetKind kind, FpPaper paper, gboolean whole, double *scale)
{
  const FpSheetSpec spec = { .kind = kind, .paper = paper, .landscape = TRUE, .whole = whole };
  g_autoptr (GError) error = NULL;
  FpDrawing *drawing = fp_sheet_new (scene, &spec, scale, &error);

  g_assert_no_error (error);
  return drawing;
}

static gboolean
shows_thing (const FpMark *mark)
{
  return mark->dimension == 0 && mark->view >= 0 && (mark->type == FP_MARK_LINE || mark->type == FP_MARK_AREA)
         && (mark->pen == FP_PEN_CUT || mark->pen == FP_PEN_OUTLINE || mark->pen == FP_PEN_EDGE
             || mark->pen == FP_PEN_HIDDEN || mark->fill == FP_FILL_CUT);
}

/* From a point to the nearest line of a view, mm. @item: of that thing; NULL: of any */
static double
distance_to_drawn (const FpDrawing *drawing, int view, const char *item, FpPoint p)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  const FpPoint *pt = fp_drawing_points (drawing);
  double nearest = G_MAXDOUBLE;

  for (guint i = 0; i < n; i++)
    for (guint k = 0; shows_thing (&mark[i]) && mark[i].view == view && (item == NULL || item == mark[i].item)
                      && k + 1 < mark[i].n; k++)
      nearest = MIN (nearest, fp_segment_distance (pt[mark[i].first + k], pt[mark[i].first + k + 1], p));
  return nearest;
}

/* --- dimensions stand at what they measure ------------------------------------------------ */

typedef struct { FpPoint a, b; } Extension;

/* Lines of a dimension across its dimension line. */
static guint
extensions_of (const FpDrawing *drawing, const ReadDimension *d, Extension out[2])
{
  guint n, found = 0;
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  const FpPoint *pt = fp_drawing_points (drawing);
  const double dx = d->b.x - d->a.x, dy = d->b.y - d->a.y;

  for (guint i = 0; i < n && found < 2; i++)
    {
      if (mark[i].dimension != d->number || mark[i].type != FP_MARK_LINE || mark[i].pen != FP_PEN_DIMENSION)
        continue;
      const FpPoint a = pt[mark[i].first], b = pt[mark[i].first + 1];
      if (fabs ((b.x - a.x) * dx + (b.y - a.y) * dy) < 1e-6 * hypot (dx, dy) * hypot (b.x - a.x, b.y - a.y) + 1e-9)
        out[found++] = (Extension) { a, b };
    }
  return found;
}

/* Extension lines begin about 2 mm from what they measure (common practice); those without extension lines stand
 * between two faces. On the plan, which hides nothing that is measured. */
static void
assert_stand_at_things (const FpDrawing *drawing, const char *what)
{
  g_autoptr (GArray) found = crossings_read_dimensions (drawing);

  for (guint i = 0; i < found->len; i++)
    {
      const ReadDimension *d = &g_array_index (found, ReadDimension, i);
      Extension line[2];
      const guint n = d->view == FP_VIEW_PLAN ? extensions_of (drawing, d, line) : 0;
      for (guint k = 0; k < n; k++)
        if (distance_to_drawn (drawing, FP_VIEW_PLAN, NULL, line[k].a) > 2.6)
          g_error ("%s: an extension line of \"%s\" (%s) begins at %g %g, away from everything", what, d->text, d->item,
                   line[k].a.x, line[k].a.y);
      if (d->view == FP_VIEW_PLAN && n == 0
          && MAX (distance_to_drawn (drawing, FP_VIEW_PLAN, NULL, d->a),
                  distance_to_drawn (drawing, FP_VIEW_PLAN, NULL, d->b)) > 0.3)
        g_error ("%s: \"%s\" (%s) does not reach from face to face", what, d->text, d->item);
    }
}

/* --- leaders end on what they name ------------------------------------------------------------ */

static void
assert_leaders_end_on_things (const FpDrawing *drawing, const char *what)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_CIRCLE && mark[i].view == FP_VIEW_PLAN && mark[i].fill == FP_FILL_INK
        && mark[i].item != NULL && distance_to_drawn (drawing, FP_VIEW_PLAN, mark[i].item, mark[i].at) > 1.05)
      g_error ("%s: the leader to %s ends beside it", what, mark[i].item);
}

/* --- lines keep apart ---------------------------------------------------------------------------- */

typedef struct { FpPoint a, b; double stroke; } Row;

/* Lines along x, of pews drawn one behind another, that run side by side. */
static void
assert_rows_apart (const FpDrawing *drawing, const char *item, const char *what)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  const FpPoint *pt = fp_drawing_points (drawing);
  g_autoptr (GArray) rows = g_array_new (FALSE, FALSE, sizeof (Row));

  for (guint i = 0; i < n; i++)
    if (shows_thing (&mark[i]) && mark[i].view == FP_VIEW_PLAN && mark[i].type == FP_MARK_LINE
        && g_strcmp0 (mark[i].item, item) == 0 && fabs (pt[mark[i].first].y - pt[mark[i].first + 1].y) < 1e-6)
      {
        const Row row = { pt[mark[i].first], pt[mark[i].first + 1], fp_pen_stroke (mark[i].pen, mark[i].standing) };
        g_array_append_val (rows, row);
      }
  g_assert_cmpuint (rows->len, >, 1);
  for (guint i = 0; i < rows->len; i++)
    for (guint j = 0; j < i; j++)
      {
        const Row *p = &g_array_index (rows, Row, i), *q = &g_array_index (rows, Row, j);
        const double apart = fabs (p->a.y - q->a.y) - (p->stroke + q->stroke) / 2;
        const double common = MIN (MAX (p->a.x, p->b.x), MAX (q->a.x, q->b.x))
                              - MAX (MIN (p->a.x, p->b.x), MIN (q->a.x, q->b.x));
        if (common > 1 && fabs (p->a.y - q->a.y) > 1e-6 && apart < 0.7 - 1e-6)
          g_error ("%s: lines of %s stand %g mm apart", what, item, apart);
      }
}

/* ISO 128-2 (from memory): never less than 0.7 mm between parallel lines. */
static void
test_rows_apart (void)
{
  static const FpPaper papers[] = { FP_PAPER_A1, FP_PAPER_A2, FP_PAPER_A3, FP_PAPER_A4 };
  g_autoptr (FpScene) scene = scene_of ("cathedral", 0);

  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    {
      double scale;
      g_autoptr (FpDrawing) drawing = sheet (scene, FP_SHEET_PLAN, papers[i], TRUE, &scale);
      g_autofree char *what = g_strdup_printf ("cathedral on %s, 1:%g", fp_paper_id (papers[i]), scale);
      assert_rows_apart (drawing, "nave-front-g", what);
      assert_rows_apart (drawing, "aisle-front-g", what);
    }
}

/* On the plan that is printed for them the committee finds each thing by its name, also what stands at a wall where there
 * is no room: then outside. */
static void
test_all_named (void)
{
  static const char *const names[][6] = {
    { "High", "Sedilia", "Credence", "Celebrant’s chair", "Footpace and steps", NULL },
    { "High", "Sedilia", "Credence", "Celebrant’s", "Footpace", "Ambo of 1974" },
  };

  for (guint a = 0; a < 2; a++)
    {
      g_autoptr (FpScene) scene = scene_of ("parish", a + 1);
      g_autoptr (FpDrawing) plan = sheet (scene, FP_SHEET_PLAN, FP_PAPER_A3, FALSE, NULL);

      for (guint i = 0; i < G_N_ELEMENTS (names[a]) && names[a][i] != NULL; i++)
        if (!reading_has_text (plan, names[a][i]))
          g_error ("%s is not on the plan", names[a][i]);
    }
}

/* The whole of it is told even at 1:500: worked from the corners of the walls, which are 600 or 900 thick. */
static void
test_small_scale (void)
{
  double scale;
  g_autoptr (FpScene) scene = scene_of ("cathedral", 0);
  g_autoptr (FpDrawing) plan = sheet (scene, FP_SHEET_PLAN, FP_PAPER_A3, TRUE, &scale);
  g_autoptr (FpDrawing) section = sheet (scene, FP_SHEET_SECTION, FP_PAPER_A4, TRUE, NULL);
  g_autoptr (FpDrawing) board = sheet (scene, FP_SHEET_BOARD, FP_PAPER_A3, TRUE, NULL);

  g_assert_cmpfloat (scale, ==, 500);
  g_assert_true (reading_has_text (plan, "65800"));
  g_assert_true (reading_has_text (plan, "23400"));
  g_assert_true (reading_has_text (plan, "Nave pews, front,"));
  g_assert_true (reading_has_text (section, "65800"));
  g_assert_true (reading_has_text (section, "±0.000"));
  g_assert_true (reading_has_text (board, "65800"));
  g_assert_true (reading_has_text (board, "23400"));
  g_assert_true (reading_has_text (board, "±0.000"));
}

/* --- what the fan needs ------------------------------------------------------------------------------ */

/* By hand from fan.footpace: the middle floor lies at -360 at its origin (y = 6000) and falls six in a hundred towards
 * the altar: 0 at y = 0, and -360 + 0.06 (6000 + 15300) = 918 at its far end; 1 / 0.06 = 16.7. */
static void
test_falling_floor (void)
{
  g_autoptr (FpScene) scene = scene_of ("fan", 0);

  for (int whole = 0; whole < 2; whole++)
    {
      g_autoptr (FpDrawing) section = sheet (scene, FP_SHEET_SECTION, FP_PAPER_A3, whole, NULL);
      g_assert_true (reading_has_text (section, "±0.000"));
      g_assert_true (reading_has_text (section, whole ? "+0.918" : "+0.918 people, highest"));
      g_assert_true (reading_has_text (section, "1:16.7"));
    }
}

/* By hand: the straight walls of the sanctuary stand 2 x 6060 apart; between the oblique ones there is no one width. */
static void
test_width_is_measured_square (void)
{
  g_autoptr (FpScene) scene = scene_of ("fan", 0);
  g_autoptr (FpDrawing) plan = sheet (scene, FP_SHEET_PLAN, FP_PAPER_A3, FALSE, NULL);
  g_autoptr (GArray) found = crossings_read_dimensions (plan);

  g_assert_true (reading_has_text (plan, "12120"));
  for (guint i = 0; i < found->len; i++)
    g_assert_null (strchr (g_array_index (found, ReadDimension, i).text, '.'));
}

/* The ambo of the fan is turned by 25 degrees: its width is told along its own front. */
static void
test_turned_things (void)
{
  g_autoptr (FpScene) scene = scene_of ("fan", 0);
  g_autoptr (FpDrawing) plan = sheet (scene, FP_SHEET_PLAN, FP_PAPER_A3, FALSE, NULL);
  g_autoptr (GArray) found = crossings_read_dimensions (plan);
  gboolean told = FALSE;

  for (guint i = 0; i < found->len; i++)
    {
      const ReadDimension *d = &g_array_index (found, ReadDimension, i);
      if (g_strcmp0 (d->item, "ambo") != 0 || g_strcmp0 (d->param, "width") != 0)
        continue;
      g_assert_true (d->oblique);
      g_assert_cmpfloat_with_epsilon (fabs (atan2 (d->b.y - d->a.y, d->b.x - d->a.x)) * 180 / G_PI, 25, 0.01);
      told = TRUE;
    }
  g_assert_true (told);
}

/* --- crosses of the mensa ----------------------------------------------------------------------------- */

/* Strokes of the altar on the plan that are not longer than those of its crosses, and among them those with another across
 * their middle. */
static void
count_strokes (const FpDrawing *drawing, double longest, guint *strokes, guint *crossed)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  const FpPoint *pt = fp_drawing_points (drawing);
  g_autoptr (GArray) middles = g_array_new (FALSE, FALSE, sizeof (FpPoint));

  for (guint i = 0; i < n; i++)
    {
      const FpPoint *p = pt + mark[i].first;
      if (mark[i].type != FP_MARK_LINE || mark[i].n != 2 || mark[i].pen != FP_PEN_EDGE || mark[i].dimension > 0
          || g_strcmp0 (mark[i].item, "altar") != 0 || hypot (p[1].x - p[0].x, p[1].y - p[0].y) > longest)
        continue;
      const FpPoint middle = { (p[0].x + p[1].x) / 2, (p[0].y + p[1].y) / 2 };
      g_array_append_val (middles, middle);
    }
  *strokes = middles->len;
  *crossed = 0;
  for (guint i = 0; i < middles->len; i++)
    for (guint j = 0; j < middles->len; j++)
      {
        const FpPoint p = g_array_index (middles, FpPoint, i), q = g_array_index (middles, FpPoint, j);
        *crossed += i != j && hypot (p.x - q.x, p.y - q.y) < 0.01 ? 1 : 0;
      }
}

/* Two strokes each, 90 mm long (altar.c), wherever the mensa's edge lies near; where a candlestick stands on one, none.
 * Some stand free in each sample. */
static void
test_crosses_are_whole (void)
{
  static const FpPaper papers[] = { FP_PAPER_A4, FP_PAPER_A3, FP_PAPER_A2, FP_PAPER_A1 };

  for (guint s = 0; s < G_N_ELEMENTS (SAMPLES); s++)
    {
      g_autoptr (FpProject) project = load (SAMPLES[s]);
      guint drawn = 0;
      for (guint a = 0; a < fp_project_n_alternatives (project); a++)
        for (guint p = 0; p < G_N_ELEMENTS (papers); p++)
          {
            g_autoptr (FpScene) scene = fp_scene_new (project, a);
            double scale;
            g_autoptr (FpDrawing) plan = sheet (scene, FP_SHEET_PLAN, papers[p], FALSE, &scale);
            guint strokes, crossed;
            count_strokes (plan, 91 / scale, &strokes, &crossed);
            if (strokes != crossed)
              g_error ("%s, alternative %u, 1:%g: of %u strokes only %u are parts of crosses", SAMPLES[s], a, scale, strokes,
                       crossed);
            drawn += strokes;
          }
      g_assert_cmpuint (drawn, >, 0);
    }
}

/* --- gate and rail ---------------------------------------------------------------------------------- */

/* The clear width of the gate and the way from the rail to the lowest step (8610 - 640 - 1067 - 2 x 305 - 505). */
static void
test_gate (void)
{
  g_autoptr (FpScene) scene = scene_of ("parish", 2);
  static const FpPaper papers[] = { FP_PAPER_A2, FP_PAPER_A3, FP_PAPER_A4, FP_PAPER_LETTER };

  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    {
      g_autoptr (FpDrawing) plan = sheet (scene, FP_SHEET_PLAN, papers[i], FALSE, NULL);
      g_autoptr (FpDrawing) elevation = sheet (scene, FP_SHEET_ELEVATION, papers[i], FALSE, NULL);
      g_assert_true (reading_has_text (plan, "760"));
      g_assert_true (reading_has_text (plan, "5788"));
      g_assert_true (reading_has_text (elevation, "760"));
      g_assert_true (reading_has_text (elevation, "2700"));
    }
}

/* --- names --------------------------------------------------------------------------------------------- */

/* 2 mm at least from the end of the name of a side to any line. */
static void
assert_sides_clear (const FpDrawing *drawing, const char *what)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    {
      if (mark[i].type != FP_MARK_TEXT || !g_str_has_suffix (mark[i].text, "E SIDE"))
        continue;
      const FpBox box = crossings_text_box (&mark[i]);
      const FpPoint left = { box.x0, (box.y0 + box.y1) / 2 }, right = { box.x1, left.y };
      if (MIN (distance_to_drawn (drawing, FP_VIEW_PLAN, NULL, left), distance_to_drawn (drawing, FP_VIEW_PLAN, NULL, right))
          < 1.99)
        g_error ("%s: \"%s\" touches something", what, mark[i].text);
    }
}

/* All that stands in the section lies on a floor that is drawn as cut, down to its foot. */
static void
test_nave_floor_is_cut (void)
{
  g_autoptr (FpScene) scene = scene_of ("chapel", 0);
  const FpBox box = fp_view_sanctuary (scene, FP_VIEW_SECTION);
  static const FpPaper papers[] = { FP_PAPER_A1, FP_PAPER_A3, FP_PAPER_A4, FP_PAPER_LETTER };

  /* The nave floor is 8 in thick and its top is the datum. */
  g_assert_cmpfloat (box.y0, <=, -203.2 + 1e-6);
  for (guint i = 0; i < G_N_ELEMENTS (papers); i++)
    {
      g_autoptr (FpDrawing) section = sheet (scene, FP_SHEET_SECTION, papers[i], FALSE, NULL);
      guint n, hatched = 0;
      const FpMark *mark = fp_drawing_marks (section, &n);
      for (guint k = 0; k < n; k++)
        if (mark[k].type == FP_MARK_AREA && mark[k].fill == FP_FILL_CUT && g_strcmp0 (mark[k].item, "nave-floor") == 0)
          hatched += mark[k].n >= 3 && mark[k].hatch != 0 ? 1 : 0;
      g_assert_cmpuint (hatched, >, 0);
    }
}

/* Nothing of a view lies over the title block and the notes, or beyond the frame. */
static void
assert_within_sheet (const FpDrawing *drawing, const char *what)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  double foot = 0;

  /* The line over notes and title block is the longest level line of the sheet that is not its frame. */
  for (guint i = 0; i < n; i++)
    if (mark[i].view < 0 && mark[i].type == FP_MARK_LINE && mark[i].n == 2 && mark[i].pen == FP_PEN_EDGE)
      {
        const FpPoint *p = fp_drawing_points (drawing) + mark[i].first;
        if (p[0].y == p[1].y && fabs (p[1].x - p[0].x) > fp_drawing_width (drawing) - 40)
          foot = p[0].y;
      }
  g_assert_cmpfloat (foot, >, 0);
  for (guint i = 0; i < n; i++)
    {
      if (mark[i].view < 0 || mark[i].type != FP_MARK_TEXT)
        continue;
      const FpBox box = crossings_text_box (&mark[i]);
      if (box.y0 < foot || box.x0 < 20 || box.x1 > fp_drawing_width (drawing) - 10 || box.y1 > fp_drawing_height (drawing) - 10)
        g_error ("%s: \"%s\" lies beyond the room for drawings", what, mark[i].text);
    }
}

static gboolean
has_name (const FpDrawing *drawing, const char *item)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_TEXT && mark[i].view == FP_VIEW_PLAN && mark[i].dimension == 0
        && g_strcmp0 (mark[i].item, item) == 0)
      return TRUE;
  return FALSE;
}

/* The name of anything on an altar is read as that of the altar, where that has none. */
static void
assert_altar_named_first (const FpScene *scene, const FpDrawing *drawing, const char *what)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    {
      int on = placed[i].support;
      while (on >= 0 && fp_item_kind (placed[on].item)->role != FP_ROLE_ALTAR)
        on = placed[on].support;
      if (on >= 0 && !placed[on].ghost && has_name (drawing, fp_item_id (placed[i].item))
          && !has_name (drawing, fp_item_id (placed[on].item)))
        g_error ("%s: %s has a name and %s has none", what, fp_item_id (placed[i].item), fp_item_id (placed[on].item));
    }
}

static gboolean
is_pews (const FpScene *scene, const char *item)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    if (g_strcmp0 (fp_item_id (placed[i].item), item) == 0)
      return fp_item_kind (placed[i].item)->role == FP_ROLE_PEWS && !placed[i].ghost;
  return FALSE;
}

/* Side of the line through @a and @b on which @p lies: twice the area of the triangle. */
static double
side_of (FpPoint a, FpPoint b, FpPoint p)
{
  return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
}

static gboolean
cross (FpPoint a, FpPoint b, FpPoint c, FpPoint d)
{
  return side_of (a, b, c) * side_of (a, b, d) < 0 && side_of (c, d, a) * side_of (c, d, b) < 0;
}

static gboolean
crosses_mark (const ReadDimension *d, const FpMark *mark, const FpPoint *pt)
{
  for (guint i = 0; i + 1 < mark->n + (mark->closed ? 1 : 0); i++)
    if (cross (d->a, d->b, pt[mark->first + i], pt[mark->first + (i + 1) % mark->n]))
      return TRUE;
  return FALSE;
}

/* A dimension line among the rows would be taken for one of them; only what measures the rows stands there. */
static void
assert_rows_clear (const FpScene *scene, const FpDrawing *drawing, const char *what)
{
  g_autoptr (GArray) read = crossings_read_dimensions (drawing);
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  const FpPoint *pt = fp_drawing_points (drawing);

  for (guint r = 0; r < read->len; r++)
    {
      const ReadDimension *d = &g_array_index (read, ReadDimension, r);
      for (guint i = 0; d->view == FP_VIEW_PLAN && !is_pews (scene, d->item) && i < n; i++)
        if (mark[i].view == FP_VIEW_PLAN && mark[i].dimension == 0 && mark[i].type == FP_MARK_LINE
            && (mark[i].pen == FP_PEN_OUTLINE || mark[i].pen == FP_PEN_EDGE) && is_pews (scene, mark[i].item)
            && crosses_mark (d, &mark[i], pt))
          g_error ("%s: the line of %s runs through the rows of %s", what, d->text, mark[i].item);
    }
}

/* At 1:200 the width of this sanctuary was dimensioned across the front pews. */
static void
test_rows_without_lines (void)
{
  for (guint a = 0; a < 3; a++)
    {
      g_autoptr (FpScene) scene = scene_of ("parish", a);
      const FpSheetSpec spec = { .kind = FP_SHEET_PLAN, .paper = FP_PAPER_A3, .landscape = TRUE, .whole = TRUE,
                                 .scale = 200 };
      g_autoptr (GError) error = NULL;
      g_autoptr (FpDrawing) drawing = fp_sheet_new (scene, &spec, NULL, &error);
      g_autoptr (GArray) read = crossings_read_dimensions (drawing);

      g_assert_no_error (error);
      g_assert_cmpuint (read->len, >=, 4);
      assert_rows_clear (scene, drawing, "the parish at 1:200");
    }
}

/* --- everything, on every paper ---------------------------------------------------------------------- */

static void
assert_sheet (const FpScene *scene, FpSheetKind kind, FpPaper paper, gboolean whole, const char *sample)
{
  double scale;
  g_autoptr (FpDrawing) drawing = sheet (scene, kind, paper, whole, &scale);
  g_autofree char *what = g_strdup_printf ("%s, alternative %u, %s of %s on %s, 1:%g", sample,
                                           fp_scene_alternative (scene), fp_sheet_id (kind),
                                           whole ? "the whole" : "the sanctuary", fp_paper_id (paper), scale);

  crossings_assert_none (drawing, -1, what);
  crossings_assert_names_clear (drawing, what);
  crossings_assert_figures_clear (drawing, what);
  assert_within_sheet (drawing, what);
  assert_stand_at_things (drawing, what);
  assert_leaders_end_on_things (drawing, what);
  assert_altar_named_first (scene, drawing, what);
  assert_sides_clear (drawing, what);
  assert_rows_clear (scene, drawing, what);
}

static void
test_every_sheet (gconstpointer data)
{
  const char *sample = data;
  g_autoptr (FpProject) project = load (sample);
  guint turn = 0;

  for (guint a = 0; a < fp_project_n_alternatives (project); a++)
    {
      g_autoptr (FpScene) scene = fp_scene_new (project, a);
      /* Papers take turns: each kind of sheet comes to stand on several. */
      for (int kind = 0; kind < FP_N_SHEETS; kind++)
        for (int whole = 0; whole < 2; whole++)
          assert_sheet (scene, (FpSheetKind) kind, (FpPaper) (turn++ % (FP_N_PAPERS - 1)), whole, sample);
    }
}

/* The walls of the nave and the wall of the chancel arch are flush: what is seen of them is one face, with no joint at the
 * corner of the nave (x = 3600), and where the arch ends the line of its jamb (x = 3100). */
static void
test_flush_walls (void)
{
  g_autoptr (FpScene) scene = scene_of ("parish", 2);
  g_autoptr (FpProjection) elevation = fp_projection_new (scene, FP_VIEW_ELEVATION);
  guint n;
  const FpProjectedLine *line = fp_projection_lines (elevation, &n);
  double joint = 0, jamb = 0;

  for (guint i = 0; i < n; i++)
    if (fabs (line[i].a.x - line[i].b.x) < 1e-6 && MAX (line[i].a.y, line[i].b.y) > 1000)
      {
        joint += fabs (fabs (line[i].a.x) - 3600) < 1 ? fabs (line[i].b.y - line[i].a.y) : 0;
        jamb += fabs (fabs (line[i].a.x) - 3100) < 1 ? fabs (line[i].b.y - line[i].a.y) : 0;
      }
  g_assert_cmpfloat (joint, ==, 0);
  g_assert_cmpfloat (jamb, >, 2000);
}

static double
length_of (const FpProjection *projection, const char *id)
{
  const FpScene *scene = fp_projection_scene (projection);
  guint n;
  const FpProjectedLine *line = fp_projection_lines (projection, &n);
  double length = 0;

  for (guint i = 0; i < n; i++)
    if (g_str_equal (fp_item_id (fp_scene_placed (scene, NULL)[line[i].owner].item), id))
      length += hypot (line[i].b.x - line[i].a.x, line[i].b.y - line[i].a.y);
  return length;
}

/* The small credence that is taken away stands beside the proposed one, both behind the wall of the chancel arch (3100 from the
 * axis) but for a strip of it; the platform that is taken away is seen through the arch, before the new altar. */
static void
test_removed_behind_walls (void)
{
  g_autoptr (FpScene) scene = scene_of ("parish", 2);
  g_autoptr (FpProjection) elevation = fp_projection_new (scene, FP_VIEW_ELEVATION);
  g_autoptr (FpProjection) section = fp_projection_new (scene, FP_VIEW_SECTION);
  const FpScene *drawn = fp_projection_scene (elevation);
  guint n;
  const FpProjectedLine *line = fp_projection_lines (elevation, &n);
  int i;

  for (guint k = 0; k < n; k++)
    if (g_str_equal (fp_item_id (fp_scene_placed (drawn, NULL)[line[k].owner].item), "credence-1974"))
      g_assert_cmpfloat (MAX (line[k].a.x, line[k].b.x), <=, 3100 + 1);
  g_assert_cmpfloat (length_of (elevation, "platform-1974"), >, 3000);
  /* Nor is it picked there: what is seen is the wall. */
  i = fp_projection_pick (elevation, (FpPoint) { 3400, 900 });
  g_assert_cmpint (i, >=, 0);
  g_assert_false (fp_scene_placed (drawn, NULL)[i].ghost);
  g_assert_cmpfloat (length_of (section, "credence-1974"), >, 1500);
}

/* On a board a view may run off above; then its title stands in it, and so does the north point that goes with that of the
 * plan: beside the walls that are cut, on their left, or where the plan runs off there too, on its right. */
static void
test_north_point_clear_of_walls (void)
{
  g_autoptr (FpScene) scene = scene_of ("parish", 2);
  FpProjection *projection[FP_N_VIEWS];
  const FpProjectedCut *cut;
  guint n_cuts, points = 0;

  for (guint v = 0; v < FP_N_VIEWS; v++)
    projection[v] = fp_projection_new (scene, (FpViewId) v);
  cut = fp_projection_cuts (projection[FP_VIEW_PLAN], &n_cuts);
  for (guint i = 0; i < 24; i++)
    {
      FpBoardLayout layout;
      g_autoptr (FpDrawing) drawing = NULL;
      guint n;
      const FpMark *mark;

      fp_board_layout_alone (scene, NULL, FP_VIEW_PLAN, 63, (FpPoint) { i < 12 ? 140 : 70, i % 12 - 16.0 }, FP_UNITS_METRIC, &layout);
      drawing = fp_board_draw (projection, &layout, 250, 150);
      mark = fp_drawing_marks (drawing, &n);
      for (guint k = 0; k < n; k++)
        for (guint q = 0; mark[k].type == FP_MARK_CIRCLE && mark[k].item == NULL && fabs (mark[k].radius - 3.2) < 1e-6 && q < 8; q++)
          {
            const double a = G_PI * q / 4;
            const FpPoint p = { mark[k].at.x + mark[k].radius * cos (a), mark[k].at.y + mark[k].radius * sin (a) };
            const FpPoint in_view = fp_view_from_paper (&layout.view[FP_VIEW_PLAN], p);

            points++;
            for (guint c = 0; c < n_cuts; c++)
              g_assert_false (fp_outline_contains (cut[c].outline, cut[c].n, in_view));
          }
    }
  g_assert_cmpuint (points, >, 40);
  for (guint v = 0; v < FP_N_VIEWS; v++)
    fp_projection_unref (projection[v]);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (SAMPLES); i++)
    {
      g_autofree char *path = g_strconcat ("/samples-drawn/every-sheet/", SAMPLES[i], NULL);
      g_test_add_data_func (path, SAMPLES[i], test_every_sheet);
    }
  g_test_add_func ("/samples/north-point-clear-of-walls", test_north_point_clear_of_walls);
  g_test_add_func ("/samples/removed-behind-walls", test_removed_behind_walls);
  g_test_add_func ("/samples/flush-walls", test_flush_walls);
  g_test_add_func ("/samples-drawn/rows-apart", test_rows_apart);
  g_test_add_func ("/samples-drawn/rows-without-lines", test_rows_without_lines);
  g_test_add_func ("/samples-drawn/all-named", test_all_named);
  g_test_add_func ("/samples-drawn/small-scale", test_small_scale);
  g_test_add_func ("/samples-drawn/falling-floor", test_falling_floor);
  g_test_add_func ("/samples-drawn/width-is-measured-square", test_width_is_measured_square);
  g_test_add_func ("/samples-drawn/turned-things", test_turned_things);
  g_test_add_func ("/samples-drawn/crosses-are-whole", test_crosses_are_whole);
  g_test_add_func ("/samples-drawn/gate", test_gate);
  g_test_add_func ("/samples-drawn/nave-floor-is-cut", test_nave_floor_is_cut);
  return g_test_run ();
}
