/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Arches in projections: a wall over an arch is built of pieces that stand on its chords, and the drawing shows the
 * chords alone.  What is expected follows from the circle. */
#include "church.h"

#include "footpace/drawing.h"

#include <math.h>

#define THICKNESS 600.0
#define HEIGHT 8000.0

typedef struct { double middle, springing, radius; } Arch;

/* A wall from @a to @b with one arched opening, @along its first corner. */
static FpScene *
wall_scene_new (FpPoint a, FpPoint b, double along, double width, double sill, double springing)
{
  const FpPoint corner[] = { a, b };
  FpProject *project = church_new (FP_FACING_EAST);
  FpScene *scene;

  church_survey (&project, &(ChurchThing) { .kind = "wall", .id = "wall", .corner = corner, .n_corners = 2,
                                            .param = { { "thickness", THICKNESS }, { "height", HEIGHT } } });
  church_survey (&project, &(ChurchThing) { .kind = "opening", .id = "opening", .on = "wall",
                                            .param = { { "side", 1 }, { "along", along }, { "width", width },
                                                       { "sill", sill }, { "head", springing }, { "arch", 1 } } });
  scene = fp_scene_new (project, 0);
  fp_project_unref (project);
  return scene;
}

/* The wall stands across the church, seen square on. */
static FpScene *
across_new (Arch arch)
{
  return wall_scene_new ((FpPoint) { -6000, 0 }, (FpPoint) { 6000, 0 }, 6000 + arch.middle, 2 * arch.radius, 0,
                         arch.springing);
}

static double
length_of (const FpProjectedLine *l)
{
  return hypot (l->b.x - l->a.x, l->b.y - l->a.y);
}

static gboolean
is_on_circle (FpPoint p, const Arch *arch)
{
  return p.y > arch->springing - 1e-3
         && fabs (hypot (p.x - arch->middle, p.y - arch->springing) - arch->radius) < 1e-3;
}

static gboolean
is_upright (const FpProjectedLine *l)
{
  return fabs (l->a.x - l->b.x) < 1e-6;
}

static gboolean
is_level (const FpProjectedLine *l, double y)
{
  return fabs (l->a.y - y) < 1e-6 && fabs (l->b.y - y) < 1e-6;
}

/* Every line is a chord, a jamb or a border of the wall; returns how many chords. */
static guint
count_chords (const FpProjection *projection, const Arch *arch, double sill)
{
  guint n, chords = 0;
  const FpProjectedLine *line = fp_projection_lines (projection, &n);

  for (guint i = 0; i < n; i++)
    {
      const FpProjectedLine *l = &line[i];
      const double off = fabs (l->a.x - arch->middle);
      if (is_on_circle (l->a, arch) && is_on_circle (l->b, arch))
        {
          chords++;
          continue;
        }
      if (is_upright (l) && fabs (off - arch->radius) < 1e-6)
        g_assert_cmpfloat (MAX (l->a.y, l->b.y), <=, arch->springing + 1e-6);
      else if (!is_upright (l) || off < arch->radius)
        g_assert_true (is_level (l, 0) || is_level (l, sill) || is_level (l, HEIGHT));
    }
  return chords;
}

/* All of one length: none is drawn twice, none is missing, none is cut short, and so none is steeper than a chord. */
static void
check_chords (const FpProjection *projection, const Arch *arch, guint chords)
{
  guint n;
  const FpProjectedLine *line = fp_projection_lines (projection, &n);
  const double chord = 2 * arch->radius * sin (G_PI / 2 / chords);

  g_assert_cmpuint (chords, >=, 24);
  for (guint i = 0; i < n; i++)
    if (is_on_circle (line[i].a, arch) && is_on_circle (line[i].b, arch))
      g_assert_cmpfloat_with_epsilon (length_of (&line[i]), chord, 1e-3);
}

static void
test_elevation (void)
{
  static const Arch arch[] = { { 0, 4000, 3100 }, { 1730, 5200, 450 }, { -2000, 100, 3900 }, { -123.4, 2100, 900 } };

  for (guint i = 0; i < G_N_ELEMENTS (arch); i++)
    {
      g_autoptr (FpScene) scene = across_new (arch[i]);
      g_autoptr (FpProjection) elevation = fp_projection_new (scene, FP_VIEW_ELEVATION);
      guint n;
      const guint chords = count_chords (elevation, &arch[i], 0);
      fp_projection_lines (elevation, &n);
      check_chords (elevation, &arch[i], chords);
      /* Four borders, the lower one in two; two jambs. */
      g_assert_cmpuint (n, ==, chords + 7);
    }
}

/* A window in a side wall, beyond the cut. */
static void
test_section_seen (void)
{
  const Arch window = { 2500, 5000, 600 }; /* across: minus y */
  g_autoptr (FpScene) scene = wall_scene_new ((FpPoint) { 4000, 3000 }, (FpPoint) { 4000, -9000 }, 5500, 1200, 2400,
                                              5000);
  g_autoptr (FpProjection) section = fp_projection_new (scene, FP_VIEW_SECTION);
  guint n;
  const guint chords = count_chords (section, &window, 2400);

  fp_projection_lines (section, &n);
  check_chords (section, &window, chords);
  g_assert_cmpuint (n, ==, chords + 7);
}

static double
area_of_cuts (const FpProjection *projection)
{
  guint n;
  const FpProjectedCut *cut = fp_projection_cuts (projection, &n);
  double sum = 0;

  for (guint i = 0; i < n; i++)
    sum += fp_outline_area (cut[i].outline, cut[i].n);
  return sum;
}

/* The wall cut on the axis: a rectangle from the arch to the top; beyond it the faces of the wall, and nothing on the
 * soffit between them. */
static void
check_section_through (Arch arch)
{
  g_autoptr (FpScene) scene = across_new (arch);
  g_autoptr (FpProjection) section = fp_projection_new (scene, FP_VIEW_SECTION);
  const double foot = arch.springing + sqrt (arch.radius * arch.radius - arch.middle * arch.middle);
  guint n, n_cuts;
  const FpProjectedLine *line = fp_projection_lines (section, &n);
  const FpProjectedCut *cut = fp_projection_cuts (section, &n_cuts);

  g_assert_cmpuint (n_cuts, ==, 1);
  g_assert_cmpuint (cut[0].n, ==, 4);
  /* Chords lie within the circle, by 2 at most; off the crown that is more upright. */
  g_assert_cmpfloat_with_epsilon (area_of_cuts (section), THICKNESS * (HEIGHT - foot), THICKNESS * 3);
  for (guint i = 0; i < n; i++)
    {
      const double x = (line[i].a.x + line[i].b.x) / 2;
      if (x < -1e-6 && x > -THICKNESS + 1e-6 && line[i].pen != FP_PEN_CUT)
        g_assert_true (is_level (&line[i], 0));
    }
}

static void
test_section_through (void)
{
  check_section_through ((Arch) { 0, 4000, 3100 });
  check_section_through ((Arch) { 700, 4000, 3100 });
  check_section_through ((Arch) { -1900, 3000, 2300 });
}

/* Crown of an arch of chords: it is a corner of theirs. */
static void
test_crown (void)
{
  g_autoptr (FpScene) scene = across_new ((Arch) { 0, 4000, 3100 });
  g_autoptr (FpProjection) section = fp_projection_new (scene, FP_VIEW_SECTION);

  g_assert_cmpfloat_with_epsilon (area_of_cuts (section), THICKNESS * (HEIGHT - 7100), 1);
}

/* Where the soffit itself is seen nothing is drawn on it: what joins the near curve to the far one would be level. */
static void
check_turned (double turn, FpViewId view)
{
  const double c = cos (turn * G_PI / 180), s = sin (turn * G_PI / 180);
  g_autoptr (FpScene) scene = wall_scene_new ((FpPoint) { 3000 - 6000 * c, 1000 - 6000 * s },
                                              (FpPoint) { 3000 + 6000 * c, 1000 + 6000 * s }, 6000, 3000, 800, 3500);
  g_autoptr (FpProjection) projection = fp_projection_new (scene, view);
  guint n, steep = 0;
  const FpProjectedLine *line = fp_projection_lines (projection, &n);

  for (guint i = 0; i < n; i++)
    {
      const FpProjectedLine *l = &line[i];
      const double low = MIN (l->a.y, l->b.y), high = MAX (l->a.y, l->b.y);
      if (low < 3500 - 1e-6 || high > 5000 + 1e-6)
        continue;
      g_assert_cmpfloat (high - low, >, 1e-3);
      steep++;
    }
  g_assert_cmpuint (steep, >, 24);
}

static void
test_turned (void)
{
  for (double turn = 10; turn < 360; turn += 25)
    for (int view = FP_VIEW_ELEVATION; view <= FP_VIEW_SECTION; view++)
      if (fabs (remainder (turn - (view == FP_VIEW_ELEVATION ? 90 : 0), 180)) > 5)
        check_turned (turn, (FpViewId) view);
}

static double
length_in_plan (const FpProjection *plan, FpPen pen)
{
  guint n;
  const FpProjectedLine *line = fp_projection_lines (plan, &n);
  double sum = 0;

  for (guint i = 0; i < n; i++)
    if (line[i].pen == pen)
      sum += length_of (&line[i]);
  return sum;
}

/* Above the cut of 1.1 m the arch hangs dashed, both faces; where it springs lower, as wide as it is at the cut. */
static void
test_plan (void)
{
  g_autoptr (FpScene) high = across_new ((Arch) { 0, 4000, 3100 }), low = across_new ((Arch) { 500, 300, 2000 });
  g_autoptr (FpProjection) over = fp_projection_new (high, FP_VIEW_PLAN), through = fp_projection_new (low, FP_VIEW_PLAN);
  const double width = 2 * sqrt (2000 * 2000 - 800 * 800);

  g_assert_cmpfloat_with_epsilon (area_of_cuts (over), THICKNESS * (12000 - 6200), 1);
  g_assert_cmpfloat_with_epsilon (length_in_plan (over, FP_PEN_HIDDEN), 2 * 6200, 1);
  /* The chords lie within the circle, by 2 at most. */
  g_assert_cmpfloat_with_epsilon (area_of_cuts (through), THICKNESS * (12000 - width), THICKNESS * 5);
  g_assert_cmpfloat_with_epsilon (length_in_plan (through, FP_PEN_HIDDEN), 2 * width, 10);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/arches/elevation", test_elevation);
  g_test_add_func ("/arches/section-seen", test_section_seen);
  g_test_add_func ("/arches/section-through", test_section_through);
  g_test_add_func ("/arches/crown", test_crown);
  g_test_add_func ("/arches/turned", test_turned);
  g_test_add_func ("/arches/plan", test_plan);
  return g_test_run ();
}
