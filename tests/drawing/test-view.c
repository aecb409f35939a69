/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Views with their dimensions: that they say what the things are, and that nothing crosses anything. */
#include "footpace/drawing.h"

#include "church.h"
#include "crossings.h"
#include "parish.h"
#include "random-sanctuary.h"
#include "reading.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static FpDrawing *
draw (FpProjection *projection, double scale, FpUnits units, guint *left_out)
{
  const FpViewLayout layout = { .origin = { 400, 400 }, .scale = scale, .clip = FP_BOX_EMPTY, .dimensions = TRUE,
                                .levels = TRUE, .labels = TRUE, .units = units };
  FpDrawing *drawing = fp_drawing_new (800, 800);
  const guint n = fp_drawing_add_view (drawing, projection, &layout);

  if (left_out != NULL)
    *left_out = n;
  return drawing;
}

/* --- nothing crosses --------------------------------------------------------------------- */

static void
test_nothing_crosses (void)
{
  static const double scales[] = { 10, 20, 33, 50, 75, 100, 150, 200, 320, 500 };

  for (guint32 seed = 1; seed <= 24; seed++)
    {
      const FpUnits units = seed % 4 == 0 ? FP_UNITS_IMPERIAL : FP_UNITS_METRIC;
      g_autoptr (FpScene) scene = random_sanctuary_new (seed, units);
      for (int view = 0; view < FP_N_VIEWS; view++)
        {
          g_autoptr (FpProjection) projection = fp_projection_new (scene, (FpViewId) view);
          for (guint s = 0; s < G_N_ELEMENTS (scales); s++)
            {
              g_autoptr (FpDrawing) drawing = draw (projection, scales[s], units, NULL);
              g_autofree char *what = g_strdup_printf ("sanctuary %u, view %d, 1:%g", seed, view, scales[s]);
              crossings_assert_none (drawing, view, what);
              crossings_assert_names_clear (drawing, what);
            }
        }
    }
}

static gboolean
stands_on (const FpPlaced *placed, int index, const char *id)
{
  while (index >= 0 && g_strcmp0 (fp_item_id (placed[index].item), id) != 0)
    index = placed[index].support;
  return index >= 0;
}

/* A name on the mensa is that of the altar, not of the footpace below it. */
static void
assert_name_is_on_its_own (const FpScene *scene, const FpMark *name, double scale)
{
  const FpPoint at = { (name->at.x - 400) * scale, (name->at.y - 400) * scale };
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    if (!placed[i].ghost && placed[i].support >= 0 && stands_on (placed, placed[i].support, name->item)
        && at.x > placed[i].plan.x0 && at.x < placed[i].plan.x1 && at.y > placed[i].plan.y0 && at.y < placed[i].plan.y1)
      g_error ("the name \"%s\" is lettered on %s", name->text, fp_item_name (placed[i].item));
}

static void
test_names_on_their_own (void)
{
  static const double scales[] = { 10, 20, 33, 50, 75, 100 };
  guint seen = 0;

  for (guint32 seed = 1; seed <= 24; seed++)
    {
      g_autoptr (FpScene) scene = random_sanctuary_new (seed, FP_UNITS_METRIC);
      g_autoptr (FpProjection) plan = fp_projection_new (scene, FP_VIEW_PLAN);
      for (guint s = 0; s < G_N_ELEMENTS (scales); s++)
        {
          g_autoptr (FpDrawing) drawing = draw (plan, scales[s], FP_UNITS_METRIC, NULL);
          guint n;
          const FpMark *mark = fp_drawing_marks (drawing, &n);
          for (guint i = 0; i < n; i++)
            if (mark[i].type == FP_MARK_TEXT && mark[i].dimension == 0 && mark[i].item != NULL)
              {
                assert_name_is_on_its_own (scene, &mark[i], scales[s]);
                seen++;
              }
        }
    }
  g_assert_cmpuint (seen, >, 100);
}

/* --- what they say ------------------------------------------------------------------------ */

/* "2 × 305" is 610; metric figures only. */
static double
value_of (const char *text)
{
  const char *times = strstr (text, "×");

  return times != NULL ? g_ascii_strtod (text, NULL) * g_ascii_strtod (times + strlen ("×"), NULL)
                       : g_ascii_strtod (text, NULL);
}

static void
assert_true_to_scale (const FpDrawing *drawing, double scale)
{
  g_autoptr (GArray) found = crossings_read_dimensions (drawing);

  g_assert_cmpuint (found->len, >, 0);
  for (guint i = 0; i < found->len; i++)
    {
      const ReadDimension *d = &g_array_index (found, ReadDimension, i);
      g_assert_nonnull (d->text);
      g_assert_nonnull (d->item);
      g_assert_cmpfloat_with_epsilon (hypot (d->b.x - d->a.x, d->b.y - d->a.y) * scale, value_of (d->text), 0.6);
    }
}

static void
test_true_to_scale (void)
{
  for (guint32 seed = 1; seed <= 10; seed++)
    {
      g_autoptr (FpScene) scene = random_sanctuary_new (seed, FP_UNITS_METRIC);
      for (int view = 0; view < FP_N_VIEWS; view++)
        {
          g_autoptr (FpProjection) projection = fp_projection_new (scene, (FpViewId) view);
          g_autoptr (FpDrawing) drawing = draw (projection, 50, FP_UNITS_METRIC, NULL);
          assert_true_to_scale (drawing, 50);
        }
    }
}

static gboolean
shows_param (const FpDrawing *drawing, const char *item, const char *param)
{
  g_autoptr (GArray) found = crossings_read_dimensions (drawing);

  for (guint i = 0; i < found->len; i++)
    {
      const ReadDimension *d = &g_array_index (found, ReadDimension, i);
      if (g_str_equal (d->item, item) && g_strcmp0 (d->param, param) == 0)
        return TRUE;
    }
  return FALSE;
}

/* What the altar, its steps and the rail are built by (design judgement): altar length, depth, height;
 * risers and treads; footpace; rail height and gate. */
static void
test_asked_for (void)
{
  static const struct { FpViewId view; const char *item, *param; } asked[] = {
    { FP_VIEW_ELEVATION, "altar", "length" }, { FP_VIEW_ELEVATION, "altar", "height" },
    { FP_VIEW_ELEVATION, "rail", "height" },  { FP_VIEW_ELEVATION, "rail", "gate" },
    { FP_VIEW_SECTION, "footpace", "riser" },
    { FP_VIEW_PLAN, "altar", "depth" },       { FP_VIEW_PLAN, "rail", "gate" },
    { FP_VIEW_PLAN, "rail", "length" },       { FP_VIEW_PLAN, "footpace", "front" },
    { FP_VIEW_SECTION, "footpace", "tread" }, { FP_VIEW_SECTION, "footpace", "front" },
    { FP_VIEW_SECTION, "altar", "depth" },
  };
  g_autoptr (FpScene) scene = parish_scene_new ();

  for (guint i = 0; i < G_N_ELEMENTS (asked); i++)
    {
      g_autoptr (FpProjection) projection = fp_projection_new (scene, asked[i].view);
      g_autoptr (FpDrawing) drawing = draw (projection, 50, FP_UNITS_METRIC, NULL);
      if (!shows_param (drawing, asked[i].item, asked[i].param))
        g_error ("view %d does not show the %s of the %s", asked[i].view, asked[i].param, asked[i].item);
    }
}

/* Worked by hand from the parish: the rail's face lies at y = 400 + 100; the altar's front at 4200 - 375; three
 * steps with a footpace of 1067 and treads of 305 before it (Schulte, Catholic Encyclopedia I, 1907). */
static void
test_between_things (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) projection = fp_projection_new (scene, FP_VIEW_SECTION);
  g_autoptr (FpDrawing) drawing = draw (projection, 50, FP_UNITS_METRIC, NULL);
  const double lowest = 4200 - 375 - 1067 - 2 * 305;
  g_autofree char *rail_to_step = fp_length_format (lowest - 500, FP_UNITS_METRIC);

  g_assert_true (reading_has_text (drawing, rail_to_step));
  g_assert_true (reading_has_text (drawing, "1067"));
  g_assert_true (reading_has_text (drawing, "2 × 305"));
}

/* The way behind the altar is the one that the rules measure: to the platform of a chair, though it is low. */
static void
test_behind_altar (void)
{
  const ChurchThing altar = { "altar", "altar", NULL, { 0, 4000, 0 }, NULL, 0, { { NULL, 0 } } };
  const ChurchThing chair = { "chair", "chair", NULL, { 0, 7013, 0 }, NULL, 0, { { "step", 150 } } };
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  g_autoptr (FpScene) scene = NULL;
  int index;
  double room;

  church_floor (&project, "chancel", (FpBox) { -4000, 0, 4000, 9000 }, 300, 1, 0, 0);
  church_add (&project, &altar);
  church_add (&project, &chair);
  scene = fp_scene_new (project, 0);
  index = fp_scene_celebrated_altar (scene);
  room = fp_scene_room_behind_altar (scene, index, NULL);
  g_assert_cmpfloat_with_epsilon (room, church_placed (scene, "chair")->plan.y0 - 4375, 1e-6);
  for (guint i = 0; i < 2; i++)
    {
      g_autoptr (FpProjection) projection = fp_projection_new (scene, i ? FP_VIEW_PLAN : FP_VIEW_SECTION);
      g_autoptr (FpDrawing) drawing = draw (projection, 50, FP_UNITS_METRIC, NULL);
      g_autofree char *text = fp_length_format (room, FP_UNITS_METRIC);
      g_assert_true (reading_has_text (drawing, text));
    }
}

static void
test_once (void)
{
  for (guint32 seed = 1; seed <= 10; seed++)
    {
      g_autoptr (FpScene) scene = random_sanctuary_new (seed, FP_UNITS_METRIC);
      for (int view = 0; view < FP_N_VIEWS; view++)
        {
          g_autoptr (FpProjection) projection = fp_projection_new (scene, (FpViewId) view);
          g_autoptr (FpDrawing) drawing = draw (projection, 40, FP_UNITS_METRIC, NULL);
          g_autoptr (GArray) found = crossings_read_dimensions (drawing);
          g_assert_cmpuint (found->len, >, 3);
          for (guint i = 0; i < found->len; i++)
            for (guint j = i + 1; j < found->len; j++)
              {
                const ReadDimension *p = &g_array_index (found, ReadDimension, i);
                const ReadDimension *q = &g_array_index (found, ReadDimension, j);
                g_assert_false (p->upright == q->upright && !p->oblique && !q->oblique && fabs (p->lo - q->lo) < 0.005
                                && fabs (p->hi - q->hi) < 0.005);
                g_assert_false (p->param != NULL && p->param == q->param && p->item == q->item);
              }
        }
    }
}

/* --- where they stand ------------------------------------------------------------------------- */

/* Beside the view the first line stands at least 10 mm from the outline; two lines side by side at least 6 mm apart
 * (a course on ISO 129-1, scribd.com/document/398713789: 10, then 8; 6 in the practice of the United States). */
static void
test_spacing (void)
{
  const double scale = 50;
  g_autoptr (FpScene) scene = parish_scene_new ();

  for (int view = 0; view < FP_N_VIEWS; view++)
    {
      g_autoptr (FpProjection) projection = fp_projection_new (scene, (FpViewId) view);
      g_autoptr (FpDrawing) drawing = draw (projection, scale, FP_UNITS_METRIC, NULL);
      g_autoptr (GArray) found = crossings_read_dimensions (drawing);
      const FpBox box = fp_projection_box (projection);
      g_assert_cmpuint (found->len, >, 3);
      for (guint i = 0; i < found->len; i++)
        {
          const ReadDimension *p = &g_array_index (found, ReadDimension, i);
          const double lo = 400 + (p->upright ? box.x0 : box.y0) / scale;
          const double hi = 400 + (p->upright ? box.x1 : box.y1) / scale;
          g_assert_true (p->oblique || (p->at >= lo - 4 && p->at <= hi + 4) || p->at <= lo - 10 + 1e-6
                         || p->at >= hi + 10 - 1e-6);
          for (guint j = 0; j < i; j++)
            {
              const ReadDimension *q = &g_array_index (found, ReadDimension, j);
              const double apart = fabs (p->at - q->at);
              g_assert_true (p->oblique || q->oblique || p->upright != q->upright || apart < 1e-6 || apart >= 6 - 1e-6
                             || p->hi < q->lo + 1 || q->hi < p->lo + 1);
            }
        }
    }
}

static void
test_margins_hold_all (void)
{
  for (guint32 seed = 1; seed <= 8; seed++)
    {
      g_autoptr (FpScene) scene = random_sanctuary_new (seed, FP_UNITS_METRIC);
      for (int view = 0; view < FP_N_VIEWS; view++)
        {
          g_autoptr (FpProjection) projection = fp_projection_new (scene, (FpViewId) view);
          const FpViewLayout layout = { .origin = { 400, 400 }, .scale = 75, .clip = FP_BOX_EMPTY, .dimensions = TRUE,
                                        .levels = TRUE, .labels = TRUE, .units = FP_UNITS_METRIC };
          const FpMargins m = fp_view_margins (projection, &layout);
          g_autoptr (FpDrawing) drawing = draw (projection, 75, FP_UNITS_METRIC, NULL);
          const FpBox box = fp_projection_box (projection);
          const FpBox all = { 400 + box.x0 / 75 - m.left, 400 + box.y0 / 75 - m.below, 400 + box.x1 / 75 + m.right,
                              400 + box.y1 / 75 + m.above };
          guint n;
          const FpMark *mark = fp_drawing_marks (drawing, &n);
          for (guint i = 0; i < n; i++)
            if (mark[i].type == FP_MARK_TEXT)
              {
                const FpBox text = crossings_text_box (&mark[i]);
                g_assert_cmpfloat (text.x0, >=, all.x0 - 1e-6);
                g_assert_cmpfloat (text.y0, >=, all.y0 - 1e-6);
                g_assert_cmpfloat (text.x1, <=, all.x1 + 1e-6);
                g_assert_cmpfloat (text.y1, <=, all.y1 + 1e-6);
              }
        }
    }
}

static void
test_thinning (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) projection = fp_projection_new (scene, FP_VIEW_ELEVATION);
  guint last = G_MAXUINT;

  for (double scale = 25; scale <= 800; scale *= 2)
    {
      g_autoptr (FpDrawing) drawing = draw (projection, scale, FP_UNITS_METRIC, NULL);
      g_autoptr (GArray) found = crossings_read_dimensions (drawing);
      g_assert_cmpuint (found->len, <=, last);
      last = found->len;
    }
  /* The width of the whole building is told at every scale. */
  g_assert_cmpuint (last, ==, 1);
}

/* --- levels -------------------------------------------------------------------------------------- */

static void
test_levels (void)
{
  const double scale = 50;
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) projection = fp_projection_new (scene, FP_VIEW_ELEVATION);
  g_autoptr (FpDrawing) drawing = draw (projection, scale, FP_UNITS_METRIC, NULL);
  const FpPlaced *altar = church_placed (scene, "altar");
  g_autofree char *footpace = fp_level_format (altar->level, FP_UNITS_METRIC);
  g_autofree char *mensa = fp_level_format (altar->level + altar->extent.top, FP_UNITS_METRIC);
  guint n, triangles = 0;
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  const FpPoint *pt = fp_drawing_points (drawing);

  /* Three risers of 152 on a sanctuary 150 above the nave, and an altar of 990. */
  g_assert_cmpstr (footpace, ==, "+0.606");
  g_assert_cmpstr (mensa, ==, "+1.596");
  g_assert_true (reading_has_text (drawing, footpace));
  g_assert_true (reading_has_text (drawing, mensa));
  g_assert_true (reading_has_text (drawing, "±0.000"));
  for (guint i = 0; i + 1 < n; i++)
    if (mark[i].type == FP_MARK_AREA && mark[i].dimension > 0)
      {
        /* The apex of each triangle stands at the level that is lettered beside it. */
        const char *text = mark[i + 1].text;
        const char *number = g_str_has_prefix (text, "±") ? text + strlen ("±") : text;
        g_assert_cmpfloat_with_epsilon ((pt[mark[i].first].y - 400) * scale, 1000 * g_ascii_strtod (number, NULL), 0.6);
        g_assert_cmpint (mark[i].fill == FP_FILL_INK, ==, g_str_equal (text, "±0.000"));
        triangles++;
      }
  g_assert_cmpuint (triangles, >=, 4);
}

/* --- names, hatches, switches ------------------------------------------------------------------------ */

static void
test_names (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) projection = fp_projection_new (scene, FP_VIEW_PLAN);
  g_autoptr (FpDrawing) drawing = draw (projection, 40, FP_UNITS_METRIC, NULL);
  static const char *const names[] = { "PLAN", "1:40", "GOSPEL SIDE", "EPISTLE SIDE", "Altar", "Sedilia", "Ambo" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    g_assert_true (reading_has_text (drawing, names[i]));
}

/* ISO 128-50 (from memory): the same part has the same hatch; parts that touch differ. */
static void
test_hatches (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) projection = fp_projection_new (scene, FP_VIEW_SECTION);
  g_autoptr (FpDrawing) drawing = draw (projection, 50, FP_UNITS_METRIC, NULL);
  g_autoptr (GHashTable) of = g_hash_table_new (NULL, NULL);
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_AREA && mark[i].fill == FP_FILL_CUT)
      {
        gpointer old = g_hash_table_lookup (of, mark[i].item);
        g_assert_cmpfloat (mark[i].hatch, >, 0);
        if (old != NULL)
          g_assert_cmpint (GPOINTER_TO_INT (old), ==, (int) mark[i].hatch);
        g_hash_table_insert (of, (gpointer) mark[i].item, GINT_TO_POINTER ((int) mark[i].hatch));
      }
  /* Walls and floors are of one piece; the altar stands on its footpace, and that on the floor. */
  g_assert_true (g_hash_table_lookup (of, g_intern_string ("walls"))
                 == g_hash_table_lookup (of, g_intern_string ("sanctuary")));
  static const char *const touching[][2] = { { "altar", "footpace" }, { "footpace", "sanctuary" } };
  for (guint i = 0; i < G_N_ELEMENTS (touching); i++)
    {
      gpointer a = g_hash_table_lookup (of, g_intern_string (touching[i][0]));
      gpointer b = g_hash_table_lookup (of, g_intern_string (touching[i][1]));
      g_assert_nonnull (a);
      g_assert_nonnull (b);
      g_assert_true (a != b);
    }
}

static void
test_switches (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();

  for (int view = 0; view < FP_N_VIEWS; view++)
    {
      g_autoptr (FpProjection) projection = fp_projection_new (scene, (FpViewId) view);
      const FpViewLayout bare = { .origin = { 400, 400 }, .scale = 50, .clip = { -3000, 0, 3000, 3000 } };
      g_autoptr (FpDrawing) drawing = fp_drawing_new (800, 800);
      guint n;
      g_assert_cmpuint (fp_drawing_add_view (drawing, projection, &bare), ==, 0);
      const FpMark *mark = fp_drawing_marks (drawing, &n);
      const FpPoint *pt = fp_drawing_points (drawing);
      g_assert_cmpuint (n, >, 0);
      for (guint i = 0; i < n; i++)
        {
          g_assert_cmpint (mark[i].type, !=, FP_MARK_TEXT);
          g_assert_cmpuint (mark[i].dimension, ==, 0);
          /* Nothing but the axis stands out of the clip. */
          for (guint p = mark[i].first; mark[i].pen != FP_PEN_AXIS && p < mark[i].first + mark[i].n; p++)
            {
              g_assert_cmpfloat (fabs (pt[p].x - 400), <=, 60 + 1e-6);
              g_assert_cmpfloat (pt[p].y, >=, 400 - 1e-6);
              g_assert_cmpfloat (pt[p].y, <=, 460 + 1e-6);
            }
        }
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/view/nothing-crosses", test_nothing_crosses);
  g_test_add_func ("/view/names-on-their-own", test_names_on_their_own);
  g_test_add_func ("/view/true-to-scale", test_true_to_scale);
  g_test_add_func ("/view/asked-for", test_asked_for);
  g_test_add_func ("/view/between-things", test_between_things);
  g_test_add_func ("/view/behind-altar", test_behind_altar);
  g_test_add_func ("/view/once", test_once);
  g_test_add_func ("/view/spacing", test_spacing);
  g_test_add_func ("/view/margins-hold-all", test_margins_hold_all);
  g_test_add_func ("/view/thinning", test_thinning);
  g_test_add_func ("/view/levels", test_levels);
  g_test_add_func ("/view/names", test_names);
  g_test_add_func ("/view/hatches", test_hatches);
  g_test_add_func ("/view/switches", test_switches);
  return g_test_run ();
}
