/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Hidden lines, cuts and pens, against what can be worked out by hand. */
#include "sketching.h"

#include <math.h>

static GArray *
elevation_of (const FpSolids *solids)
{
  g_autoptr (FpSketch) sketch = sketching_new (solids, FP_VIEW_ELEVATION, G_MAXDOUBLE, FALSE);

  return sketching_lines (sketch);
}

static gboolean
same_line (const FpProjectedLine *a, const FpProjectedLine *b, gboolean turned)
{
  const FpPoint p = turned ? a->b : a->a, q = turned ? a->a : a->b;

  return a->owner == b->owner && a->pen == b->pen && hypot (p.x - b->a.x, p.y - b->a.y) < 1e-6
         && hypot (q.x - b->b.x, q.y - b->b.y) < 1e-6;
}

static void
assert_lines (const GArray *found, const FpProjectedLine *expected, guint n)
{
  for (guint i = 0; i < n; i++)
    {
      gboolean there = FALSE;
      for (guint k = 0; k < found->len && !there; k++)
        {
          const FpProjectedLine *line = &g_array_index (found, FpProjectedLine, k);
          there = same_line (line, &expected[i], FALSE) || same_line (line, &expected[i], TRUE);
        }
      if (!there)
        g_test_message ("no line %g %g to %g %g", expected[i].a.x, expected[i].a.y, expected[i].b.x, expected[i].b.y);
      g_assert_true (there);
    }
  g_assert_cmpuint (found->len, ==, n);
}

/* A box of a metre; behind it, half hidden, one that is higher and wider. */
static void
test_box_before_box (void)
{
  const FpProjectedLine expected[] = {
    { { 0, 0 }, { 1000, 0 }, 0, FP_PEN_OUTLINE },      { { 0, 1000 }, { 1000, 1000 }, 0, FP_PEN_OUTLINE },
    { { 0, 0 }, { 0, 1000 }, 0, FP_PEN_OUTLINE },      { { 1000, 0 }, { 1000, 1000 }, 0, FP_PEN_OUTLINE },
    { { 500, 1000 }, { 500, 1500 }, 1, FP_PEN_OUTLINE }, { { 500, 1500 }, { 2000, 1500 }, 1, FP_PEN_OUTLINE },
    { { 2000, 0 }, { 2000, 1500 }, 1, FP_PEN_OUTLINE }, { { 1000, 0 }, { 2000, 0 }, 1, FP_PEN_OUTLINE },
  };
  g_autoptr (FpSolids) solids = fp_solids_new ();
  g_autoptr (GArray) lines = NULL;

  sketching_add_box (solids, 0, 0, 0, 0, 1000, 500, 1000);
  sketching_add_box (solids, 1, 500, 1000, 0, 2000, 1500, 1500);
  lines = elevation_of (solids);
  assert_lines (lines, expected, G_N_ELEMENTS (expected));
}

/* The same two, the higher one in front: nothing of the other is seen but its left part. */
static void
test_box_behind_box (void)
{
  const FpProjectedLine expected[] = {
    { { 0, 0 }, { 500, 0 }, 0, FP_PEN_OUTLINE },       { { 0, 1000 }, { 500, 1000 }, 0, FP_PEN_OUTLINE },
    { { 0, 0 }, { 0, 1000 }, 0, FP_PEN_OUTLINE },      { { 500, 0 }, { 500, 1500 }, 1, FP_PEN_OUTLINE },
    { { 500, 1500 }, { 2000, 1500 }, 1, FP_PEN_OUTLINE }, { { 2000, 0 }, { 2000, 1500 }, 1, FP_PEN_OUTLINE },
    { { 500, 0 }, { 2000, 0 }, 1, FP_PEN_OUTLINE },
  };
  g_autoptr (FpSolids) solids = fp_solids_new ();
  g_autoptr (GArray) lines = NULL;

  sketching_add_box (solids, 0, 0, 1000, 0, 1000, 1500, 1000);
  sketching_add_box (solids, 1, 500, 0, 0, 2000, 500, 1500);
  lines = elevation_of (solids);
  assert_lines (lines, expected, G_N_ELEMENTS (expected));
}

/* Three steps of one thing, each a box from the floor: the risers' edges, the outline heavy, no line doubled. */
static void
test_steps (void)
{
  const FpProjectedLine expected[] = {
    { { -900, 0 }, { 900, 0 }, 0, FP_PEN_OUTLINE },    { { -900, 150 }, { -600, 150 }, 0, FP_PEN_OUTLINE },
    { { 600, 150 }, { 900, 150 }, 0, FP_PEN_OUTLINE }, { { -600, 150 }, { 600, 150 }, 0, FP_PEN_EDGE },
    { { -600, 300 }, { 600, 300 }, 0, FP_PEN_OUTLINE }, { { -900, 0 }, { -900, 150 }, 0, FP_PEN_OUTLINE },
    { { 900, 0 }, { 900, 150 }, 0, FP_PEN_OUTLINE },   { { -600, 150 }, { -600, 300 }, 0, FP_PEN_OUTLINE },
    { { 600, 150 }, { 600, 300 }, 0, FP_PEN_OUTLINE },
  };
  g_autoptr (FpSolids) solids = fp_solids_new ();
  g_autoptr (GArray) lines = NULL;

  sketching_add_box (solids, 0, -900, 0, 0, 900, 1200, 150);
  sketching_add_box (solids, 0, -600, 300, 0, 600, 1200, 300);
  lines = elevation_of (solids);
  assert_lines (lines, expected, G_N_ELEMENTS (expected));
}

static void
test_flush (void)
{
  const FpProjectedLine expected[] = {
    { { 0, 0 }, { 2000, 0 }, 0, FP_PEN_OUTLINE }, { { 0, 800 }, { 2000, 800 }, 0, FP_PEN_OUTLINE },
    { { 0, 0 }, { 0, 800 }, 0, FP_PEN_OUTLINE },  { { 2000, 0 }, { 2000, 800 }, 0, FP_PEN_OUTLINE },
  };
  g_autoptr (FpSolids) solids = fp_solids_new ();
  g_autoptr (GArray) one = NULL, two = NULL;

  sketching_add_box (solids, 0, 0, 0, 0, 700, 500, 800);
  sketching_add_box (solids, 0, 700, 0, 0, 2000, 500, 800);
  sketching_add_box (solids, 0, 300, 900, 0, 700, 950, 700); /* its side lies behind the seam: nothing may show through */
  one = elevation_of (solids);
  assert_lines (one, expected, 4);

  /* Two things: a line parts them, once. */
  sketching_own_last (solids, 1);
  ((FpSolid *) fp_solids_get (solids, 1))->owner = 1;
  two = elevation_of (solids);
  g_assert_cmpuint (two->len, ==, 7);
}

/* A slender bar keeps to the narrow pen; its neighbour of 200 does not. */
static void
test_slight (void)
{
  g_autoptr (FpSolids) solids = fp_solids_new ();
  g_autoptr (GArray) lines = NULL;

  sketching_add_box (solids, 0, 0, 0, 0, 40, 40, 900);
  sketching_add_box (solids, 1, 500, 0, 0, 700, 200, 900);
  lines = elevation_of (solids);
  g_assert_cmpuint (lines->len, ==, 8);
  for (guint i = 0; i < lines->len; i++)
    {
      const FpProjectedLine *l = &g_array_index (lines, FpProjectedLine, i);
      g_assert_cmpint (l->pen, ==, l->owner == 0 ? FP_PEN_EDGE : FP_PEN_OUTLINE);
    }
}

/* A drum is a rectangle in elevation, a cone a triangle; in plan one shows a circle, the other its rim. */
static void
test_round (void)
{
  const FpProjectedLine drum[] = {
    { { 700, 0 }, { 1300, 0 }, 0, FP_PEN_OUTLINE }, { { 700, 900 }, { 1300, 900 }, 0, FP_PEN_OUTLINE },
    { { 700, 0 }, { 700, 900 }, 0, FP_PEN_OUTLINE }, { { 1300, 0 }, { 1300, 900 }, 0, FP_PEN_OUTLINE },
  };
  const FpProjectedLine cone[] = {
    { { -250, 0 }, { 250, 0 }, 0, FP_PEN_OUTLINE }, { { -250, 0 }, { 0, 600 }, 0, FP_PEN_OUTLINE },
    { { 250, 0 }, { 0, 600 }, 0, FP_PEN_OUTLINE },
  };
  g_autoptr (FpSolids) solids = fp_solids_new (), other = fp_solids_new ();
  g_autoptr (GArray) lines = NULL, more = NULL;

  fp_solids_add_round (solids, FP_PART_BODY, 1000, 77, 0, 900, 300, 300);
  lines = elevation_of (solids);
  assert_lines (lines, drum, G_N_ELEMENTS (drum));
  fp_solids_add_round (other, FP_PART_BODY, 0, 0, 0, 600, 250, 0);
  more = elevation_of (other);
  assert_lines (more, cone, G_N_ELEMENTS (cone));
}

static void
test_round_plan (void)
{
  g_autoptr (FpSolids) solids = fp_solids_new ();
  g_autoptr (FpSketch) sketch = NULL;
  g_autoptr (GArray) lines = NULL;
  double length = 0;

  fp_solids_add_round (solids, FP_PART_BODY, 1000, 2000, 0, 900, 300, 300);
  sketch = sketching_new (solids, FP_VIEW_PLAN, G_MAXDOUBLE, FALSE);
  lines = sketching_lines (sketch);
  for (guint i = 0; i < lines->len; i++)
    {
      const FpProjectedLine *l = &g_array_index (lines, FpProjectedLine, i);
      const FpProjectedLine *next = &g_array_index (lines, FpProjectedLine, (i + 1) % lines->len);
      length += hypot (l->b.x - l->a.x, l->b.y - l->a.y);
      g_assert_cmpfloat_with_epsilon (hypot (l->a.x - 1000, l->a.y - 2000), 300, 1e-6);
      /* They follow each other round, so that dashes run on. */
      g_assert_cmpfloat (hypot (l->b.x - next->a.x, l->b.y - next->a.y), <, 1e-6);
    }
  /* A regular polygon within the circle whose sides keep within 0.4 mm of it: its perimeter is that of
   * the circle less at most 4 (sagitta / radius) / 3 of it. */
  g_assert_cmpfloat (length, <, 2 * G_PI * 300);
  g_assert_cmpfloat (length, >, 2 * G_PI * 300 * (1 - 4 * 0.4 / 300 / 3));
}

/* The outline of an ellipsoid of half-axes 300 and 200, turned by any angle about its height, is an ellipse of
 * half-height 200 and half-width sqrt (300^2 cos^2 + 100^2 sin^2). */
static void
test_ellipsoid (void)
{
  g_autoptr (FpSolids) solids = fp_solids_new ();
  g_autoptr (GArray) lines = NULL;
  const double turn = 30 * G_PI / 180, half = hypot (300 * cos (turn), 100 * sin (turn));
  FpBox box = FP_BOX_EMPTY;

  fp_solids_add_ellipsoid (solids, FP_PART_BODY, (FpVec3) { 50, 60, 1000 }, 300, 100, 200, 30);
  lines = elevation_of (solids);
  g_assert_cmpuint (lines->len, ==, 32);
  for (guint i = 0; i < lines->len; i++)
    {
      const FpPoint p = g_array_index (lines, FpProjectedLine, i).a;
      g_assert_cmpfloat_with_epsilon (hypot ((p.x - 50) / half, (p.y - 1000) / 200), 1, 1e-9);
      fp_box_add_point (&box, p);
    }
  g_assert_cmpfloat (box.x1 - box.x0, >, 2 * half * cos (G_PI / 32));
  g_assert_cmpfloat (box.y1 - box.y0, >, 400 * cos (G_PI / 32));
}

/* --- cuts ---------------------------------------------------------------------------- */

static double
cut_area (const GArray *cuts, guint owner)
{
  double sum = 0;

  for (guint i = 0; i < cuts->len; i++)
    {
      const FpProjectedCut *cut = &g_array_index (cuts, FpProjectedCut, i);
      if (cut->owner == owner)
        sum += fp_outline_area (cut->outline, cut->n);
    }
  return sum;
}

static void
clear_cut (gpointer data)
{
  g_free (((FpProjectedCut *) data)->outline);
}

static GArray *
cuts_of (FpSketch *sketch)
{
  GArray *cuts = g_array_new (FALSE, FALSE, sizeof (FpProjectedCut));

  g_array_set_clear_func (cuts, clear_cut);
  fp_sketch_join_cuts (sketch, cuts, NULL);
  return cuts;
}

static double
section_area (FpSolids *solids)
{
  g_autoptr (FpSketch) sketch = sketching_new (solids, FP_VIEW_SECTION, -1e-3, TRUE);
  g_autoptr (GArray) cuts = cuts_of (sketch);

  return cut_area (cuts, 0);
}

static void
test_cut_areas (void)
{
  static const FpPoint ell[] = { { -100, 0 }, { 900, 0 }, { 900, 400 }, { 300, 400 }, { 300, 1000 }, { -100, 1000 } };
  static const FpPoint comb[] = { { -50, 0 }, { 100, 0 }, { 100, 600 }, { -50, 600 }, { -50, 500 }, { 50, 500 },
                                  { 50, 100 }, { -50, 100 } };
  g_autoptr (FpSolids) box = fp_solids_new (), slope = fp_solids_new (), two = fp_solids_new ();
  g_autoptr (FpSolids) cone = fp_solids_new (), drum = fp_solids_new (), egg = fp_solids_new ();

  sketching_add_box (box, 0, -100, 200, 50, 300, 900, 450);
  g_assert_cmpfloat_with_epsilon (section_area (box), 700 * 400, 1);
  sketching_add_box (box, 0, 500, 200, 50, 600, 900, 450); /* wholly beyond the plane: seen, not cut */
  sketching_add_box (box, 0, -600, 200, 50, -500, 900, 450); /* wholly before it: neither */
  g_assert_cmpfloat_with_epsilon (section_area (box), 700 * 400, 1);
  /* The L is 1000 deep on the axis and 500 high in front, 20 % up towards the east. */
  fp_solids_add_sloping (slope, FP_PART_BODY, ell, 6, 0, 500, 0, 0.2);
  g_assert_cmpfloat_with_epsilon (section_area (slope), 1000 * (500 + 700) / 2.0, 2);
  /* Two prongs of 100 each lie across the axis. */
  fp_solids_add_prism (two, FP_PART_BODY, comb, 8, 0, 1000);
  g_assert_cmpfloat_with_epsilon (section_area (two), 200 * 1000, 1);
  /* Through its axis a frustum is a trapezium; beside it a drum is a narrower rectangle. */
  fp_solids_add_round (cone, FP_PART_BODY, 0, 0, 0, 900, 300, 200);
  g_assert_cmpfloat_with_epsilon (section_area (cone), 500 * 900, 2);
  fp_solids_add_round (drum, FP_PART_BODY, 180, 0, 0, 900, 300, 300);
  g_assert_cmpfloat_with_epsilon (section_area (drum), 2 * 240 * 900, 2);
  /* An ellipse, but for the 32 corners it is drawn with. */
  fp_solids_add_ellipsoid (egg, FP_PART_BODY, (FpVec3) { 0, 0, 500 }, 100, 200, 300, 0);
  g_assert_cmpfloat_with_epsilon (section_area (egg), G_PI * 200 * 300 * sin (G_PI / 16) / (G_PI / 16), 2);
}

/* Steps that reach down to the floor overlap; they are one. A ring of walls keeps its hole. */
static void
test_cuts_joined (void)
{
  g_autoptr (FpSolids) steps = fp_solids_new (), ring = fp_solids_new ();
  g_autoptr (FpSketch) sketch = NULL;
  g_autoptr (GArray) cuts = NULL, lines = NULL;

  sketching_add_box (steps, 0, -900, 0, 0, 900, 900, 150);
  sketching_add_box (steps, 0, -600, 300, 0, 600, 900, 300);
  g_assert_cmpfloat_with_epsilon (section_area (steps), 900 * 150 + 600 * 150, 1);

  sketching_add_box (ring, 0, 0, 0, 0, 4000, 500, 3000);
  sketching_add_box (ring, 0, 0, 2500, 0, 4000, 3000, 3000);
  sketching_add_box (ring, 0, 0, 500, 0, 500, 2500, 3000);
  sketching_add_box (ring, 0, 3500, 500, 0, 4000, 2500, 3000);
  sketch = fp_sketch_new (FP_VIEW_PLAN, FALSE, G_MAXDOUBLE);
  for (guint i = 0; i < 4; i++)
    fp_sketch_add_solid (sketch, fp_solids_get (ring, i), &(FpSketchHow) { i, 1100, TRUE, 1 });
  cuts = cuts_of (sketch);
  g_assert_cmpuint (cuts->len, ==, 1);
  g_assert_cmpfloat_with_epsilon (cut_area (cuts, 0), 4000 * 3000 - 3000 * 2000, 1);
  lines = sketching_lines (sketch);
  g_assert_cmpuint (lines->len, ==, 8); /* four without, four within: no seams, no slit */
  for (guint i = 0; i < 8; i++)
    g_assert_cmpint (g_array_index (lines, FpProjectedLine, i).pen, ==, FP_PEN_CUT);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/projection/box-before-box", test_box_before_box);
  g_test_add_func ("/projection/box-behind-box", test_box_behind_box);
  g_test_add_func ("/projection/steps", test_steps);
  g_test_add_func ("/projection/flush", test_flush);
  g_test_add_func ("/projection/slight", test_slight);
  g_test_add_func ("/projection/round", test_round);
  g_test_add_func ("/projection/round-plan", test_round_plan);
  g_test_add_func ("/projection/ellipsoid", test_ellipsoid);
  g_test_add_func ("/projection/cut-areas", test_cut_areas);
  g_test_add_func ("/projection/cuts-joined", test_cuts_joined);
  return g_test_run ();
}
