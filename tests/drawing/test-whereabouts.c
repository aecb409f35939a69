/* SPDX-License-Identifier: GPL-3.0-or-later */
/* From where a builder sets out what stands on the floor: what is told, by which drawings, and typed over.
 *
 * That free-standing furniture is set out from the axis of the church and from the nearest fixed line across it is common
 * practice; no source. */
#include "footpace/drawing.h"
#include "footpace/retype.h"
#include "footpace/store.h"

#include "church.h"
#include "crossings.h"
#include "random-sanctuary.h"
#include "wanted.h"

#include <math.h>
#include <string.h>

#define WIDTH 4000.0
#define EAST  9000.0

static const FpCut NO_CUTS[FP_N_VIEWS];

typedef struct { FpProject *project; FpScene *scene; GArray *between; } Fixture;

static void
look (Fixture *f)
{
  g_clear_pointer (&f->between, g_array_unref);
  g_clear_pointer (&f->scene, fp_scene_unref);
  f->scene = fp_scene_new (f->project, 0);
  f->between = fp_between_things (f->scene, NO_CUTS);
}

/* A room of 8 by 9 m; the altar on three steps, its front edge and its back as worked below; a rail; two steps up to it all,
 * whose upper riser lies at y = 0. */
static void
set_up (Fixture *f, gconstpointer data)
{
  static const FpPoint room[] = { { -WIDTH, -12000 }, { -WIDTH, EAST }, { WIDTH, EAST }, { WIDTH, -12000 } };

  (void) data;
  f->project = church_new (FP_FACING_EAST);
  church_floor (&f->project, "nave", (FpBox) { -WIDTH, -12000, WIDTH, 0 }, 0, 0, 0, 0);
  church_floor (&f->project, "chancel", (FpBox) { -WIDTH, 0, WIDTH, EAST }, 300, 1, 0, 0);
  church_survey (&f->project, &(ChurchThing) { .kind = "wall", .id = "walls", .corner = room, .n_corners = 4,
                                               .param = { { "closed", 1 }, { "thickness", 600 }, { "height", 6000 } } });
  church_survey (&f->project, &(ChurchThing) { .kind = "steps", .id = "flight", .place = { 0, -300, 0 },
                                               .param = { { "width", 6000 }, { "count", 2 }, { "tread", 300 } } });
  church_add (&f->project, &(ChurchThing) { .kind = "footpace", .id = "steps", .place = { 0, 5500, 0 },
                                            .param = { { "count", 3 }, { "riser", 150 }, { "tread", 300 }, { "front", 1100 },
                                                       { "behind", 1100 }, { "ends", 400 } } });
  church_add (&f->project, &(ChurchThing) { .kind = "altar", .id = "altar", .on = "steps", .place = { 0, 5500, 0 },
                                            .param = { { "length", 2400 }, { "depth", 800 }, { "height", 990 } } });
  church_add (&f->project, &(ChurchThing) { .kind = "rail", .id = "rail", .place = { 0, 500, 0 },
                                            .param = { { "length", 6000 }, { "top", 200 } } });
}

static void
tear_down (Fixture *f, gconstpointer data)
{
  (void) data;
  g_clear_pointer (&f->between, g_array_unref);
  g_clear_pointer (&f->scene, fp_scene_unref);
  fp_project_unref (f->project);
}

/* NULL: none is told. */
static const FpBetween *
told (Fixture *f, const char *id, gboolean across)
{
  const FpBetween *found = NULL;

  for (guint i = 0; i < f->between->len; i++)
    {
      const FpBetween *one = &g_array_index (f->between, FpBetween, i);

      if (!one->is_whereabouts || strcmp (one->item, id) != 0 || (fabs (one->spec.b.y - one->spec.a.y) < 1e-9) != across)
        continue;
      g_assert_null (found);
      g_assert_cmpint (one->sort, ==, FP_STRETCH_PLACE);
      g_assert_cmpuint (one->spec.views, ==, 1u << FP_VIEW_PLAN);
      found = one;
    }
  return found;
}

#define NEAR(p, q) g_assert_cmpfloat_with_epsilon (p, q, 1e-6)

static double
length (const FpBetween *one)
{
  g_assert_nonnull (one);
  return fp_vec3_length (fp_vec3_sub (one->spec.b, one->spec.a));
}

/* --- what is told --------------------------------------------------------------------------------- */

/* 400 + 1100 + 2 × 300 before and behind the middle of the altar: the lowest risers lie at y = 3400 and 7600; the faces of
 * the rail at 400 and 600. */
static void
test_values (Fixture *f, gconstpointer data)
{
  static const struct { const char *kind, *id; FpPlace place; double across, along; const char *other; } things[] = {
    /* 900 wide, 700 deep */
    { "ambo", "ambo", { -2300, 1900, 0 }, 2300, 1900 - 350 - 600, "rail" },
    { "ambo", "nearer-the-steps", { 1500, 2700, 0 }, 1500, 3400 - 2700 - 350, "steps" },
    { "credence", "against-the-wall", { 3800, 4800, -90 }, 3800, 4800 - 450 - 3400, "steps" },
    { "credence", "in-the-corner", { 3000, 8000, 0 }, 3000, EAST - 8000 - 200, NULL },
    { "credence", "before-the-rail", { -2000, 150, 0 }, 2000, 400 - 150 - 200, "rail" },
    { "credence", "in-the-nave", { -2000, -1400, 0 }, 2000, 1400 - 300 - 200, "flight" },
  };

  (void) data;
  for (guint i = 0; i < G_N_ELEMENTS (things); i++)
    {
      const gboolean ambo = strcmp (things[i].kind, "ambo") == 0;
      ChurchThing thing = { .kind = things[i].kind, .id = things[i].id, .place = things[i].place,
                            .param = { { ambo ? "width" : "length", 900 }, { "depth", ambo ? 700 : 400 },
                                       { ambo ? "step" : NULL, 0 } } };
      church_add (&f->project, &thing);
    }
  look (f);
  for (guint i = 0; i < G_N_ELEMENTS (things); i++)
    {
      const FpBetween *along = told (f, things[i].id, FALSE);

      g_test_message ("%s", things[i].id);
      NEAR (length (told (f, things[i].id, TRUE)), things[i].across);
      NEAR (length (along), things[i].along);
      g_assert_cmpstr (along->other, ==, things[i].other);
    }
}

/* Turned by 30 degrees, a table of 900 by 400 reaches (900 sin 30 + 400 cos 30) / 2 to the west of its middle. */
static void
test_turned (Fixture *f, gconstpointer data)
{
  const double reach = (900 * 0.5 + 400 * sqrt (3) / 2) / 2;

  (void) data;
  church_add (&f->project, &(ChurchThing) { .kind = "credence", .id = "table", .place = { 2100, 2000, 30 },
                                            .param = { { "length", 900 }, { "depth", 400 } } });
  look (f);
  NEAR (length (told (f, "table", TRUE)), 2100);
  NEAR (length (told (f, "table", FALSE)), 2000 - reach - 600);
}

/* The step of a chair lies before it: the chair itself is set out across, the step along. */
static void
test_step_of_chair (Fixture *f, gconstpointer data)
{
  (void) data;
  church_add (&f->project, &(ChurchThing) { .kind = "chair", .id = "chair", .place = { -3300, 1500, 90 },
                                            .param = { { "step", 150 } } });
  look (f);
  NEAR (length (told (f, "chair", TRUE)), 3300);
  NEAR (length (told (f, "chair", FALSE)), church_placed (f->scene, "chair")->plan.y0 - 600);
}

static void
test_reredos (Fixture *f, gconstpointer data)
{
  (void) data;
  church_add (&f->project, &(ChurchThing) { .kind = "reredos", .id = "reredos", .place = { 0, EAST - 125, 0 },
                                            .param = { { "width", 5000 }, { "depth", 250 } } });
  church_add (&f->project, &(ChurchThing) { .kind = "credence", .id = "table", .place = { 1500, 8300, 0 },
                                            .param = { { "length", 900 }, { "depth", 400 } } });
  look (f);
  NEAR (length (told (f, "table", FALSE)), EAST - 250 - 8500);
  g_assert_cmpstr (told (f, "table", FALSE)->other, ==, "reredos");
  g_assert_null (told (f, "reredos", FALSE));
}

/* --- what is not ------------------------------------------------------------------------------------- */

static void
test_on_the_axis (Fixture *f, gconstpointer data)
{
  (void) data;
  church_add (&f->project, &(ChurchThing) { .kind = "credence", .id = "on", .place = { 0.4, 2000, 0 } });
  church_add (&f->project, &(ChurchThing) { .kind = "credence", .id = "off", .place = { -0.6, 1500, 0 } });
  look (f);
  g_assert_null (told (f, "on", TRUE));
  g_assert_nonnull (told (f, "on", FALSE));
  NEAR (length (told (f, "off", TRUE)), 0.6);
}

/* Nor is it told of what is told otherwise, of the building, and of what is taken away. */
static void
test_on_another (Fixture *f, gconstpointer data)
{
  static const char *const untold[] = { "crucifix", "cross", "altar", "steps", "rail", "walls", "flight", "gone" };

  (void) data;
  church_add (&f->project, &(ChurchThing) { .kind = "credence", .id = "table", .place = { 2500, 2000, 0 } });
  church_add (&f->project, &(ChurchThing) { .kind = "crucifix", .id = "crucifix", .on = "altar", .place = { 500, 0, 0 } });
  church_add (&f->project, &(ChurchThing) { .kind = "tabernacle", .id = "cross", .on = "table", .place = { 100, 0, 0 } });
  church_add (&f->project, &(ChurchThing) { .kind = "crucifix", .id = "standing", .place = { -1800, 2500, 0 } });
  church_survey (&f->project, &(ChurchThing) { .kind = "ambo", .id = "gone", .place = { -2500, 2500, 0 } });
  church_fate (&f->project, "gone", FP_FATE_REMOVED, NULL, NULL);
  look (f);
  for (guint i = 0; i < G_N_ELEMENTS (untold); i++)
    {
      g_assert_null (told (f, untold[i], TRUE));
      g_assert_null (told (f, untold[i], FALSE));
    }
  NEAR (length (told (f, "standing", TRUE)), 1800);
}

/* What touches the wall stands against it. */
static void
test_against_the_wall (Fixture *f, gconstpointer data)
{
  (void) data;
  church_add (&f->project, &(ChurchThing) { .kind = "credence", .id = "table", .place = { 2500, EAST - 200, 0 },
                                            .param = { { "depth", 400 } } });
  look (f);
  NEAR (length (told (f, "table", TRUE)), 2500);
  g_assert_null (told (f, "table", FALSE));
}

/* --- typed over ---------------------------------------------------------------------------------------- */

static FpStretch
stretch_of (const FpBetween *one)
{
  return (FpStretch) { .sort = one->sort, .a = one->spec.a, .b = one->spec.b, .item = one->of, .other = one->other };
}

static void
type_over (Fixture *f, gboolean across, double value, FpVec3 expected)
{
  static const char *const chosen[] = { "rail", "steps", NULL };
  const FpStretch stretch = stretch_of (told (f, "table", across));
  const FpPlace before = church_placed (f->scene, "table")->place, on = church_placed (f->scene, "on-it")->place;
  const FpBox rail = church_placed (f->scene, "rail")->plan, steps = church_placed (f->scene, "steps")->plan;
  g_autoptr (GError) error = NULL;
  FpProject *next = fp_retype (f->scene, &stretch, value, chosen, &error);
  g_autofree char *words = fp_stretch_tells (&stretch, f->scene);

  g_assert_no_error (error);
  g_assert_nonnull (strstr (words, across ? ", from the axis" : " to "));
  fp_project_unref (f->project);
  f->project = next;
  look (f);
  NEAR (church_placed (f->scene, "table")->place.x, before.x + expected.x);
  NEAR (church_placed (f->scene, "table")->place.y, before.y + expected.y);
  NEAR (church_placed (f->scene, "on-it")->place.x, on.x + expected.x);
  NEAR (church_placed (f->scene, "on-it")->place.y, on.y + expected.y);
  NEAR (church_placed (f->scene, "rail")->plan.y0, rail.y0);
  NEAR (church_placed (f->scene, "steps")->plan.y0, steps.y0);
  NEAR (length (told (f, "table", across)), value);
}

/* The thing moves, whatever else is chosen, and what stands on it with it: away from the axis on its own side, and from
 * the line on the side on which it stands. */
static void
test_typed_over (Fixture *f, gconstpointer data)
{
  (void) data;
  church_add (&f->project, &(ChurchThing) { .kind = "credence", .id = "table", .place = { -2500, 1800, 0 },
                                            .param = { { "length", 900 }, { "depth", 400 } } });
  church_add (&f->project, &(ChurchThing) { .kind = "tabernacle", .id = "on-it", .on = "table" });
  look (f);
  type_over (f, TRUE, 2620, (FpVec3) { -120, 0, 0 });
  type_over (f, TRUE, 2000, (FpVec3) { 620, 0, 0 });
  /* 1000 from the face of the rail at 600 */
  type_over (f, FALSE, 1150, (FpVec3) { 0, 150, 0 });
  /* 1450 from the steps at 3400, the nearer line now */
  g_assert_cmpstr (told (f, "table", FALSE)->other, ==, "rail");
}

static void
test_typed_over_east (Fixture *f, gconstpointer data)
{
  (void) data;
  church_add (&f->project, &(ChurchThing) { .kind = "credence", .id = "table", .place = { 2900, 8300, 0 },
                                            .param = { { "length", 900 }, { "depth", 400 } } });
  church_add (&f->project, &(ChurchThing) { .kind = "tabernacle", .id = "on-it", .on = "table" });
  look (f);
  type_over (f, TRUE, 3000, (FpVec3) { 100, 0, 0 });
  type_over (f, FALSE, 400, (FpVec3) { 0, 100, 0 });
}

/* --- on paper --------------------------------------------------------------------------------------------- */

static FpProject *
load (void)
{
  const char *folder = g_getenv ("FOOTPACE_SAMPLES");
  g_autofree char *path = g_build_filename (folder != NULL ? folder : "samples", "parish.footpace", NULL);
  g_autoptr (GError) error = NULL;
  FpProject *project = fp_store_load (path, &error);

  g_assert_no_error (error);
  return project;
}

static gboolean
has_figure (const FpDrawing *drawing, const char *item, const char *figure)
{
  g_autoptr (GArray) found = crossings_read_dimensions (drawing);

  for (guint i = 0; i < found->len; i++)
    {
      const ReadDimension *d = &g_array_index (found, ReadDimension, i);
      const FpStretch *s = fp_drawing_stretch (drawing, d->number);

      if (s->sort == FP_STRETCH_PLACE && strcmp (d->item, item) == 0 && strcmp (d->text, figure) == 0)
        return d->view == FP_VIEW_PLAN;
    }
  return FALSE;
}

/* Worked from the places in the sample: of the ambo, turned by 12 degrees, 700 by 500, the corner nearest to the rail lies
 * 250 cos 12 + 350 sin 12 west of its middle; the rail's face at 405 + 100. */
static void
test_sheets (void)
{
  static const struct { guint alternative; const char *item, *figure; } told[] = {
    { 1, "chair-1974", "3250" }, { 1, "ambo-1974", "2350" }, { 1, "credence", "3420" }, { 1, "sedilia", "140" },
    { 1, "credence", "815" }, { 2, "chair-1974", "3250" }, { 2, "ambo-1974", "2350" }, { 2, "ambo-1974", "678" },
    { 2, "sedilia", "1018" }, { 2, "credence", "2350" },
  };
  g_autoptr (FpProject) project = load ();

  for (guint i = 0; i < G_N_ELEMENTS (told); i++)
    {
      const FpSheetSpec spec = { .kind = FP_SHEET_PLAN, .paper = FP_PAPER_A2, .landscape = TRUE, .scale = 50 };
      g_autoptr (FpScene) scene = fp_scene_new (project, told[i].alternative);
      g_autoptr (GError) error = NULL;
      g_autoptr (FpDrawing) drawing = fp_sheet_new (scene, &spec, NULL, &error);

      g_assert_no_error (error);
      if (!has_figure (drawing, told[i].item, told[i].figure))
        g_error ("alternative %u does not tell the %s of the %s", told[i].alternative, told[i].figure, told[i].item);
      crossings_assert_none (drawing, FP_VIEW_PLAN, told[i].item);
      crossings_assert_figures_clear (drawing, told[i].item);
    }
}

static FpDrawing *
draw_board (const FpScene *scene, double scale, FpBoardMemory *memory, const char *chosen)
{
  const char *const ids[] = { chosen, NULL };
  FpProjection *projection[FP_N_VIEWS];
  FpBoardLayout layout;
  FpDrawing *drawing;

  for (guint v = 0; v < FP_N_VIEWS; v++)
    projection[v] = fp_projection_new (scene, (FpViewId) v);
  fp_board_layout (scene, NULL, scale, (FpPoint) { 150, 250 }, FP_UNITS_METRIC, &layout);
  layout.memory = memory;
  layout.chosen = ids;
  drawing = fp_board_draw (projection, &layout, 500, 450);
  for (guint v = 0; v < FP_N_VIEWS; v++)
    fp_projection_unref (projection[v]);
  return drawing;
}

/* What is told of all but the chosen thing, and where. */
static char *
all_but (const FpDrawing *drawing, const char *chosen)
{
  GString *all = g_string_new (NULL);
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_TEXT && (mark[i].dimension == 0 || g_strcmp0 (mark[i].item, chosen) != 0))
      g_string_append_printf (all, "%s %.6f %.6f\n", mark[i].text, mark[i].at.x, mark[i].at.y);
  return g_string_free (all, FALSE);
}

static guint
count_whereabouts (const FpDrawing *drawing, const char *item)
{
  g_autoptr (GArray) found = crossings_read_dimensions (drawing);
  guint n = 0;

  for (guint i = 0; i < found->len; i++)
    {
      const ReadDimension *d = &g_array_index (found, ReadDimension, i);
      n += fp_drawing_stretch (drawing, d->number)->sort == FP_STRETCH_PLACE && strcmp (d->item, item) == 0 ? 1 : 0;
    }
  return n;
}

/* At a scale at which they are left out otherwise; nothing else comes, goes or moves for it, but where it must give way. */
static void
test_chosen (void)
{
  static const char *const things[] = { "chair-1974", "ambo-1974", "credence", "sedilia" };
  g_autoptr (FpProject) project = load ();
  guint kept = 0, all = 0;

  for (guint a = 1; a < 3; a++)
    for (guint i = 0; i < G_N_ELEMENTS (things); i++)
      {
        g_autoptr (FpScene) scene = fp_scene_new (project, a);
        FpBoardMemory *memory = fp_board_memory_new ();
        g_autoptr (FpDrawing) before = draw_board (scene, 80, memory, NULL);
        g_autoptr (FpDrawing) then = draw_board (scene, 80, memory, things[i]);
        g_autofree char *was = all_but (before, things[i]), *is = all_but (then, things[i]);

        g_assert_cmpuint (count_whereabouts (before, things[i]), ==, 0);
        g_assert_cmpuint (count_whereabouts (then, things[i]), >=, 1);
        kept += g_str_equal (is, was) ? 1 : 0;
        all += count_whereabouts (then, things[i]);
        crossings_assert_none (then, -1, things[i]);
        crossings_assert_figures_clear (then, things[i]);
        fp_board_memory_free (memory);
      }
  /* One of the sixteen would have to pass through the altar. */
  g_assert_cmpuint (all, >=, 15);
  g_assert_cmpuint (kept, >=, 7);
}

/* Wherever it stands and however small it is drawn, nothing that is told of it crosses anything. */
static void
test_nothing_crosses (void)
{
  static const double scales[] = { 20, 45, 70, 113, 200 };

  for (guint32 seed = 1; seed <= 10; seed++)
    {
      g_autoptr (FpScene) scene = random_sanctuary_new (seed, FP_UNITS_METRIC);
      g_autoptr (GArray) between = fp_between_things (scene, NO_CUTS);

      for (guint i = 0; i < between->len; i++)
        {
          const FpBetween *one = &g_array_index (between, FpBetween, i);
          g_autoptr (FpDrawing) drawing = NULL;
          g_autofree char *what = NULL;

          if (!one->is_whereabouts)
            continue;
          drawing = draw_board (scene, scales[(seed + i) % G_N_ELEMENTS (scales)], NULL, one->item);
          what = g_strdup_printf ("random sanctuary %u, %s chosen", seed, one->item);
          crossings_assert_none (drawing, -1, what);
          crossings_assert_figures_clear (drawing, what);
        }
    }
}

#define CASE(name, function) g_test_add ("/whereabouts/" name, Fixture, NULL, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  CASE ("values", test_values);
  CASE ("turned", test_turned);
  CASE ("step-of-chair", test_step_of_chair);
  CASE ("reredos", test_reredos);
  CASE ("on-the-axis", test_on_the_axis);
  CASE ("on-another", test_on_another);
  CASE ("against-the-wall", test_against_the_wall);
  CASE ("typed-over", test_typed_over);
  CASE ("typed-over-east", test_typed_over_east);
  g_test_add_func ("/whereabouts/sheets", test_sheets);
  g_test_add_func ("/whereabouts/chosen", test_chosen);
  g_test_add_func ("/whereabouts/nothing-crosses", test_nothing_crosses);
  return g_test_run ();
}
