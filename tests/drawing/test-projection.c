/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Hidden lines, cuts and pens: against what can be worked out by hand, and
 * against rays through the same solids. */
#include "projection-private.h"

#include "church.h"
#include "parish.h"

#include <math.h>

/* --- solids without a church ---------------------------------------------------- */

static FpSketch *
sketch_of (const FpSolids *solids, FpViewId view, double near, gboolean cut_face)
{
  FpSketch *sketch = fp_sketch_new (view, near);

  for (guint i = 0; i < fp_solids_count (solids); i++)
    fp_sketch_add_solid (sketch, fp_solids_get (solids, i), &(FpSketchHow) { i, G_MAXDOUBLE, cut_face, 0 });
  return sketch;
}

static GArray *
lines_of (FpSketch *sketch)
{
  g_autoptr (GArray) pieces = g_array_new (FALSE, FALSE, sizeof (FpPiece));
  g_autoptr (FpFaceGrid) grid = fp_face_grid_new (sketch);
  GArray *lines = g_array_new (FALSE, FALSE, sizeof (FpProjectedLine));

  fp_face_grid_visible (grid, FALSE, pieces);
  fp_pieces_merge (pieces, lines);
  return lines;
}

static GArray *
elevation_of (const FpSolids *solids)
{
  g_autoptr (FpSketch) sketch = sketch_of (solids, FP_VIEW_ELEVATION, G_MAXDOUBLE, FALSE);

  return lines_of (sketch);
}

/* A copy of what was added last, owned by @owner. */
static void
own_last (FpSolids *solids, guint owner)
{
  ((FpSolid *) fp_solids_get (solids, fp_solids_count (solids) - 1))->owner = owner;
}

static void
add_box (FpSolids *solids, guint owner, double x0, double y0, double z0, double x1, double y1, double z1)
{
  fp_solids_add_box (solids, FP_PART_BODY, x0, y0, z0, x1, y1, z1);
  own_last (solids, owner);
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

  add_box (solids, 0, 0, 0, 0, 1000, 500, 1000);
  add_box (solids, 1, 500, 1000, 0, 2000, 1500, 1500);
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

  add_box (solids, 0, 0, 1000, 0, 1000, 1500, 1000);
  add_box (solids, 1, 500, 0, 0, 2000, 500, 1500);
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

  add_box (solids, 0, -900, 0, 0, 900, 1200, 150);
  add_box (solids, 0, -600, 300, 0, 600, 1200, 300);
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

  add_box (solids, 0, 0, 0, 0, 700, 500, 800);
  add_box (solids, 0, 700, 0, 0, 2000, 500, 800);
  add_box (solids, 0, 300, 900, 0, 700, 950, 700); /* its side lies behind the seam: nothing may show through */
  one = elevation_of (solids);
  assert_lines (one, expected, 4);

  /* Two things: a line parts them, once. */
  own_last (solids, 1);
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

  add_box (solids, 0, 0, 0, 0, 40, 40, 900);
  add_box (solids, 1, 500, 0, 0, 700, 200, 900);
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
  sketch = sketch_of (solids, FP_VIEW_PLAN, G_MAXDOUBLE, FALSE);
  lines = lines_of (sketch);
  for (guint i = 0; i < lines->len; i++)
    {
      const FpProjectedLine *l = &g_array_index (lines, FpProjectedLine, i), *next = &g_array_index (lines, FpProjectedLine, (i + 1) % lines->len);
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
  fp_sketch_join_cuts (sketch, cuts);
  return cuts;
}

static double
section_area (FpSolids *solids)
{
  g_autoptr (FpSketch) sketch = sketch_of (solids, FP_VIEW_SECTION, -1e-3, TRUE);
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

  add_box (box, 0, -100, 200, 50, 300, 900, 450);
  g_assert_cmpfloat_with_epsilon (section_area (box), 700 * 400, 1);
  add_box (box, 0, 500, 200, 50, 600, 900, 450); /* wholly beyond the plane: seen, not cut */
  add_box (box, 0, -600, 200, 50, -500, 900, 450); /* wholly before it: neither */
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

  add_box (steps, 0, -900, 0, 0, 900, 900, 150);
  add_box (steps, 0, -600, 300, 0, 600, 900, 300);
  g_assert_cmpfloat_with_epsilon (section_area (steps), 900 * 150 + 600 * 150, 1);

  add_box (ring, 0, 0, 0, 0, 4000, 500, 3000);
  add_box (ring, 0, 0, 2500, 0, 4000, 3000, 3000);
  add_box (ring, 0, 0, 500, 0, 500, 2500, 3000);
  add_box (ring, 0, 3500, 500, 0, 4000, 2500, 3000);
  sketch = fp_sketch_new (FP_VIEW_PLAN, G_MAXDOUBLE);
  for (guint i = 0; i < 4; i++)
    fp_sketch_add_solid (sketch, fp_solids_get (ring, i), &(FpSketchHow) { i, 1100, TRUE, 1 });
  cuts = cuts_of (sketch);
  g_assert_cmpuint (cuts->len, ==, 1);
  g_assert_cmpfloat_with_epsilon (cut_area (cuts, 0), 4000 * 3000 - 3000 * 2000, 1);
  lines = lines_of (sketch);
  g_assert_cmpuint (lines->len, ==, 8); /* four without, four within: no seams, no slit */
  for (guint i = 0; i < 8; i++)
    g_assert_cmpint (g_array_index (lines, FpProjectedLine, i).pen, ==, FP_PEN_CUT);
}

/* --- against rays --------------------------------------------------------------------- */

static double
between (GRand *rand, double a, double b)
{
  return g_rand_double_range (rand, a, b);
}

static void
add_star (FpSolids *solids, GRand *rand, FpPoint at)
{
  const guint n = 5 + (guint) g_rand_int_range (rand, 0, 5);
  FpPoint pt[10];

  for (guint i = 0; i < n; i++)
    {
      const double a = 2 * G_PI * i / n, r = between (rand, 150, 700);
      pt[i] = (FpPoint) { at.x + r * cos (a), at.y + r * sin (a) };
    }
  const double gx = between (rand, -0.3, 0.3), gy = between (rand, -0.3, 0.3), z = between (rand, 0, 900);
  fp_solids_add_sloping (solids, FP_PART_BODY, pt, n, z, z + between (rand, 400, 1200) - gx * at.x - gy * at.y, gx, gy);
}

static FpSolids *
random_solids (GRand *rand)
{
  FpSolids *solids = fp_solids_new ();

  for (guint i = 0; i < 14; i++)
    {
      const FpPoint at = { between (rand, -1500, 1500), between (rand, -1500, 1500) };
      const double z = between (rand, 0, 1000);
      if (i % 4 == 0)
        fp_solids_add_round (solids, FP_PART_BODY, at.x, at.y, z, z + between (rand, 200, 900), between (rand, 100, 400),
                             between (rand, 0, 400));
      else if (i % 4 == 1)
        fp_solids_add_ellipsoid (solids, FP_PART_BODY, (FpVec3) { at.x, at.y, z }, between (rand, 100, 400),
                                 between (rand, 100, 400), between (rand, 100, 400), between (rand, 0, 180));
      else
        add_star (solids, rand, at);
      own_last (solids, fp_solids_count (solids) - 1);
    }
  return solids;
}

static FpVec3
to_world (FpViewId view, FpVec3 p)
{
  if (view == FP_VIEW_ELEVATION)
    return (FpVec3) { p.x, -p.z, p.y };
  if (view == FP_VIEW_SECTION)
    return (FpVec3) { -p.z, -p.x, p.y };
  return p;
}

/* Whether a ray from @p (sketch coordinates), begun @lift before it, meets something on its way to the viewer. */
static gboolean
is_covered (const FpSolids *solids, FpViewId view, FpVec3 p, double lift, const FpEdge *edge)
{
  const FpVec3 from = to_world (view, (FpVec3) { p.x, p.y, p.z + lift });
  const FpVec3 to = to_world (view, (FpVec3) { p.x, p.y, p.z + 20000 });

  for (guint i = 0; i < fp_solids_count (solids); i++)
    if (!(i == edge->solid && (edge->convex || lift < 0)) && fp_solid_ray (fp_solids_get (solids, i), from, to, NULL))
      return TRUE;
  return FALSE;
}

/* +1 covered, -1 free, 0 too near a border to say.  Curved surfaces are facetted, so within 2 % of their
 * radius (8 mm here) the two may differ. */
static int
covered_for_sure (const FpSolids *solids, FpViewId view, FpVec3 p, const FpEdge *edge)
{
  static const double lift[] = { -8, 1, 40 };
  guint covered = 0;

  for (int i = -1; i <= 1; i++)
    for (int k = -1; k <= 1; k++)
      for (guint n = 0; n < G_N_ELEMENTS (lift); n++)
        covered += is_covered (solids, view, (FpVec3) { p.x + 8 * i, p.y + 8 * k, p.z }, lift[n], edge) ? 1 : 0;
  return covered == 9 * G_N_ELEMENTS (lift) ? 1 : covered == 0 ? -1 : 0;
}

static gboolean
is_drawn (const GArray *pieces, FpVec3 p)
{
  for (guint i = 0; i < pieces->len; i++)
    {
      const FpPiece *piece = &g_array_index (pieces, FpPiece, i);
      if (fp_segment_distance (piece->a, piece->b, (FpPoint) { p.x, p.y }) < 1e-3)
        return TRUE;
    }
  return FALSE;
}

typedef struct { guint covered, free; } Tally;

static void
check_edge (const FpSolids *solids, FpSketch *sketch, const FpEdge *edge, const GArray *pieces, Tally *tally)
{
  for (guint i = 1; i < 24; i++)
    {
      const FpVec3 p = fp_vec3_add (edge->a, fp_vec3_scale (fp_vec3_sub (edge->b, edge->a), i / 24.0));
      const int sure = covered_for_sure (solids, sketch->view, p, edge);
      if (sure != 0 && is_drawn (pieces, p) != (sure < 0))
        g_test_message ("view %d, solid %u, edge %g %g %g to %g %g %g, point %u: rays say %s", (int) sketch->view,
                        edge->solid, edge->a.x, edge->a.y, edge->a.z, edge->b.x, edge->b.y, edge->b.z, i,
                        sure > 0 ? "covered" : "free");
      if (sure > 0)
        g_assert_false (is_drawn (pieces, p));
      if (sure < 0)
        g_assert_true (is_drawn (pieces, p));
      tally->covered += sure > 0;
      tally->free += sure < 0;
    }
}

/* Faces that meet at less than 12 degrees are one curved surface, with no line between. */
static gboolean
is_crease (const FpSketch *sketch, const FpEdge *edge)
{
  const FpFace *one, *two;

  if (edge->beside[0] < 0 || edge->beside[1] < 0)
    return TRUE;
  one = &g_array_index (sketch->faces, FpFace, edge->beside[0]);
  two = &g_array_index (sketch->faces, FpFace, edge->beside[1]);
  const FpVec3 a = { -one->slope_h, -one->slope_v, 1 }, b = { -two->slope_h, -two->slope_v, 1 };
  return fp_vec3_dot (a, b) < cos (12.5 * G_PI / 180) * fp_vec3_length (a) * fp_vec3_length (b);
}

/* Each edge by itself, all faces before it: what a ray finds covered is not drawn, what it finds free is. */
static void
check_against_rays (const FpSolids *solids, FpViewId view, Tally *tally)
{
  g_autoptr (FpSketch) sketch = sketch_of (solids, view, G_MAXDOUBLE, FALSE);
  g_autoptr (FpFaceGrid) grid = fp_face_grid_new (sketch);
  g_autoptr (GArray) all = g_array_ref (sketch->edges);

  for (guint i = 0; i < all->len; i++)
    {
      const FpEdge edge = g_array_index (all, FpEdge, i);
      g_autoptr (GArray) pieces = g_array_new (FALSE, FALSE, sizeof (FpPiece));
      g_autoptr (GArray) one = g_array_new (FALSE, FALSE, sizeof (FpEdge));
      if (hypot (edge.b.x - edge.a.x, edge.b.y - edge.a.y) < 1 || !is_crease (sketch, &edge))
        continue;
      g_array_append_val (one, edge);
      sketch->edges = one;
      fp_face_grid_visible (grid, FALSE, pieces);
      check_edge (solids, sketch, &edge, pieces, tally);
    }
  sketch->edges = g_array_ref (all);
}

static void
test_against_rays (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (1903);
  Tally tally = { 0, 0 };

  for (guint round = 0; round < 8; round++)
    {
      g_autoptr (FpSolids) solids = random_solids (rand);
      for (guint view = 0; view < FP_N_VIEWS; view++)
        check_against_rays (solids, (FpViewId) view, &tally);
    }
  g_test_message ("%u points covered, %u free", tally.covered, tally.free);
  g_assert_cmpuint (tally.covered, >, 10000);
  g_assert_cmpuint (tally.free, >, 10000);
}

/* The owner nearest the viewer at a point, by the faces and by rays. */
static void
test_nearest_against_rays (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);
  guint agreed = 0, differed = 0;

  for (guint round = 0; round < 40; round++)
    {
      g_autoptr (FpSolids) solids = random_solids (rand);
      g_autoptr (FpSketch) sketch = sketch_of (solids, FP_VIEW_ELEVATION, G_MAXDOUBLE, FALSE);
      g_autoptr (FpFaceGrid) grid = fp_face_grid_new (sketch);
      for (guint k = 0; k < 200; k++)
        {
          const FpPoint p = { between (rand, -2000, 2000), between (rand, -200, 2000) };
          const int face = fp_face_grid_nearest (grid, p);
          int first = -1;
          double least = 2, t;
          for (guint i = 0; i < fp_solids_count (solids); i++)
            if (fp_solid_ray (fp_solids_get (solids, i), (FpVec3) { p.x, -9000, p.y }, (FpVec3) { p.x, 9000, p.y }, &t)
                && t < least)
              {
                least = t;
                first = (int) i;
              }
          if ((face < 0 ? -1 : (int) g_array_index (sketch->faces, FpFace, face).owner) == first)
            agreed++;
          else
            differed++;
        }
    }
  /* Facets lie up to 2 % of a radius within their surface. */
  g_assert_cmpuint (agreed + differed, ==, 8000);
  g_assert_cmpuint (differed, <, 80);
}

/* --- whole churches ---------------------------------------------------------------------- */

static int
owner_of (const FpScene *scene, const char *id, gboolean ghost)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    if (placed[i].ghost == ghost && g_str_equal (fp_item_id (placed[i].item), id))
      return (int) i;
  g_error ("no %s", id);
  return -1;
}

static double
length_of (const FpProjection *projection, int owner, FpPen pen)
{
  guint n;
  const FpProjectedLine *line = fp_projection_lines (projection, &n);
  double sum = 0;

  for (guint i = 0; i < n; i++)
    if ((int) line[i].owner == owner && (line[i].pen == pen || pen == FP_N_PENS))
      sum += hypot (line[i].b.x - line[i].a.x, line[i].b.y - line[i].a.y);
  return sum;
}

static double
area_of (const FpProjection *projection, int owner)
{
  guint n;
  const FpProjectedCut *cut = fp_projection_cuts (projection, &n);
  double sum = 0;

  for (guint i = 0; i < n; i++)
    if ((int) cut[i].owner == owner)
      sum += fp_outline_area (cut[i].outline, cut[i].n);
  return sum;
}

/* A ring of walls 600 thick round 10 000 × 20 500, with doors of 1800 and 1000; the window's sill
 * lies above the cut of 1.1 m. */
static void
test_plan (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) plan = fp_projection_new (scene, FP_VIEW_PLAN);
  const int walls = owner_of (scene, "walls", FALSE);
  const double ring = 11200.0 * 21700.0 - 10000.0 * 20500.0;

  g_assert_cmpfloat_with_epsilon (area_of (plan, walls), ring - 600.0 * (1800 + 1000), 10);
  /* Without, within, and the four jambs. */
  g_assert_cmpfloat_with_epsilon (length_of (plan, walls, FP_PEN_CUT),
                                  2 * (11200 + 21700) + 2 * (10000 + 20500) - 2 * (1800 + 1000) + 4 * 600, 1);
  /* The heads of both doors hang above the cut; their inner edges lie over the edges of the floors. */
  g_assert_cmpfloat_with_epsilon (length_of (plan, walls, FP_PEN_HIDDEN), 1800 + 1000, 1);
  g_assert_cmpfloat (length_of (plan, owner_of (scene, "pews-gospel", FALSE), FP_N_PENS), >, 9 * 4 * 3000);
  /* A pier is cut: a circle. */
  g_assert_cmpfloat_with_epsilon (length_of (plan, owner_of (scene, "pier", FALSE), FP_PEN_CUT), 600 * G_PI, 5);
}

static void
test_elevation (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) elevation = fp_projection_new (scene, FP_VIEW_ELEVATION);
  const int walls = owner_of (scene, "walls", FALSE);

  /* Both side walls are cut; the pews lie behind the viewer. */
  g_assert_cmpfloat_with_epsilon (area_of (elevation, walls), 2 * 600 * 8000, 1);
  g_assert_cmpfloat (length_of (elevation, owner_of (scene, "pews-gospel", FALSE), FP_N_PENS), ==, 0);
  g_assert_cmpfloat (length_of (elevation, owner_of (scene, "pier", FALSE), FP_N_PENS), ==, 0);
  g_assert_cmpfloat (length_of (elevation, owner_of (scene, "altar", FALSE), FP_N_PENS), >, 2400);
  /* The nave floor is cut before the steps, the sanctuary's is not. */
  g_assert_cmpfloat_with_epsilon (area_of (elevation, owner_of (scene, "nave", FALSE)), 10000 * 200, 1);
  g_assert_cmpfloat (area_of (elevation, owner_of (scene, "sanctuary", FALSE)), ==, 0);
}

static void
test_section (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) section = fp_projection_new (scene, FP_VIEW_SECTION);
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);
  const FpPlaced *altar = &placed[owner_of (scene, "altar", FALSE)];

  /* Mensa and chest, by their own boxes: less than the mensa's depth times the height, more than its half. */
  g_assert_cmpfloat (area_of (section, owner_of (scene, "altar", FALSE)), <, 750 * altar->extent.height);
  g_assert_cmpfloat (area_of (section, owner_of (scene, "altar", FALSE)), >, 375 * altar->extent.height);
  /* East wall whole, west wall above its door of 2100. */
  g_assert_cmpfloat_with_epsilon (area_of (section, owner_of (scene, "walls", FALSE)), 600 * 8000 + 600 * 5900, 1);
  /* East on the left. */
  g_assert_cmpfloat (fp_projection_box (section).x0, <, -7000);
  g_assert_cmpfloat (fp_projection_box (section).x1, >, 14000);
  /* The crucifix is on the axis but not shown as cut. */
  g_assert_cmpfloat (area_of (section, owner_of (scene, "crucifix", FALSE)), ==, 0);
  g_assert_cmpfloat (length_of (section, owner_of (scene, "crucifix", FALSE), FP_N_PENS), >, 1000);
}

/* Footpace: three steps of 305 round a top; the area of its cut follows from its parameters. */
static void
test_footpace_cut (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) section = fp_projection_new (scene, FP_VIEW_SECTION);
  const double riser = 152, tread = 305, top = 750 + 1067;

  g_assert_cmpfloat_with_epsilon (area_of (section, owner_of (scene, "footpace", FALSE)),
                                  riser * (top + (top + tread) + (top + 2 * tread)), 2);
}

/* What is taken away lies over the drawing whole, and takes nothing from it. */
static void
test_ghosts (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) elevation = fp_projection_new (scene, FP_VIEW_ELEVATION);
  g_autoptr (FpProjection) plan = fp_projection_new (scene, FP_VIEW_PLAN);
  const int old = owner_of (scene, "old-altar", TRUE);
  guint n, in_front = 0;
  const FpProjectedLine *line = fp_projection_lines (elevation, &n);

  /* The mensa's outline, though the rail stands before it; where lines coincide what stands has them. */
  g_assert_cmpfloat (length_of (elevation, old, FP_N_PENS), >, 2 * 2400);
  /* The credence was only moved along y: in elevation it covers what it was, in plan it does not. */
  g_assert_cmpfloat (length_of (elevation, owner_of (scene, "old-credence", TRUE), FP_N_PENS), ==, 0);
  g_assert_cmpfloat_with_epsilon (length_of (plan, owner_of (scene, "old-credence", TRUE), FP_N_PENS), 2 * (762 + 305), 1e-3);
  /* The altar is farther than the old one, yet is not hidden by it. */
  for (guint i = 0; i < n; i++)
    if ((int) line[i].owner == owner_of (scene, "altar", FALSE)
        && MIN (line[i].a.y, line[i].b.y) < 150 + 990 && fabs (line[i].a.x) < 1200)
      in_front++;
  g_assert_cmpuint (in_front, >, 0);
  g_assert_cmpfloat (area_of (elevation, old), ==, 0);
}

/* No line is drawn over another: level and upright ones, which nearly all are. */
static void
check_no_doubles (FpProjection *projection)
{
  guint n;
  const FpProjectedLine *line = fp_projection_lines (projection, &n);

  for (guint i = 0; i < n; i++)
    for (guint k = i + 1; k < n; k++)
      {
        const FpProjectedLine *a = &line[i], *b = &line[k];
        const gboolean level = a->a.y == a->b.y && b->a.y == b->b.y && fabs (a->a.y - b->a.y) < 1e-3;
        if (!level)
          continue;
        const double from = MAX (MIN (a->a.x, a->b.x), MIN (b->a.x, b->b.x));
        const double to = MIN (MAX (a->a.x, a->b.x), MAX (b->a.x, b->b.x));
        g_assert_cmpfloat (to - from, <, 1e-3);
      }
}

static void
test_no_doubles (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();

  for (guint view = 0; view < FP_N_VIEWS; view++)
    {
      g_autoptr (FpProjection) projection = fp_projection_new (scene, (FpViewId) view);
      check_no_doubles (projection);
    }
}

static void
test_order (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) plan = fp_projection_new (scene, FP_VIEW_PLAN);
  guint n;
  const FpProjectedLine *line = fp_projection_lines (plan, &n);

  for (guint i = 1; i < n; i++)
    g_assert_true (line[i].owner > line[i - 1].owner
                   || (line[i].owner == line[i - 1].owner && line[i].pen >= line[i - 1].pen));
}

static void
test_pick (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) plan = fp_projection_new (scene, FP_VIEW_PLAN);
  g_autoptr (FpProjection) elevation = fp_projection_new (scene, FP_VIEW_ELEVATION);
  const FpPoint mensa = { 800, 4000 }, front = { 800, 150 + 456 + 700 }, gone = { 300, 1700 };

  g_assert_cmpint (fp_projection_pick (plan, mensa), ==, owner_of (scene, "altar", FALSE));
  g_assert_cmpint (fp_projection_pick (elevation, front), ==, owner_of (scene, "altar", FALSE));
  g_assert_cmpint (fp_projection_pick (plan, gone), ==, owner_of (scene, "old-altar", TRUE));
  g_assert_cmpint (fp_projection_pick (plan, (FpPoint) { -4000, -1500 }), ==, owner_of (scene, "nave", FALSE));
  g_assert_cmpint (fp_projection_pick (plan, (FpPoint) { 90000, 0 }), ==, -1);
}

static void
test_empty (void)
{
  FpProject *project = church_new (FP_FACING_EAST);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);

  for (guint view = 0; view < FP_N_VIEWS; view++)
    {
      g_autoptr (FpProjection) projection = fp_projection_new (scene, (FpViewId) view);
      const FpBox box = fp_projection_box (projection);
      guint n;
      fp_projection_lines (projection, &n);
      g_assert_cmpuint (n, ==, 0);
      g_assert_true (fp_box_is_empty (&box));
      g_assert_cmpint (fp_projection_pick (projection, (FpPoint) { 0, 0 }), ==, -1);
    }
  fp_project_unref (project);
}

static gpointer
project_again (gpointer data)
{
  return fp_projection_new (data, FP_VIEW_PLAN);
}

/* The same lines, in the same order, whichever thread makes them. */
static void
test_threads (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (FpProjection) here = fp_projection_new (scene, FP_VIEW_PLAN);
  GThread *thread[4];
  guint n, m;
  const FpProjectedLine *line = fp_projection_lines (here, &n);

  for (guint i = 0; i < 4; i++)
    thread[i] = g_thread_new ("projection", project_again, scene);
  for (guint i = 0; i < 4; i++)
    {
      g_autoptr (FpProjection) there = g_thread_join (thread[i]);
      const FpProjectedLine *other = fp_projection_lines (there, &m);
      g_assert_cmpuint (m, ==, n);
      for (guint k = 0; k < n; k++)
        g_assert_true (same_line (&line[k], &other[k], FALSE));
    }
}

/* A nave of 1,200 seats: what is seen stays the same however much is hidden, and the gallery hangs dashed above it. */
static void
test_great (void)
{
  g_autoptr (FpScene) scene = great_scene_new (33);
  g_autoptr (FpProjection) plan = fp_projection_new (scene, FP_VIEW_PLAN);
  const gint64 before = g_get_monotonic_time ();

  for (guint view = 0; view < FP_N_VIEWS; view++)
    fp_projection_unref (fp_projection_new (scene, (FpViewId) view));
  g_test_message ("three projections of 1,200 seats: %.1f ms", (double) (g_get_monotonic_time () - before) / 1000.0);
  g_assert_cmpfloat (length_of (plan, owner_of (scene, "loft", FALSE), FP_N_PENS), ==, 0);
  g_assert_cmpfloat (length_of (plan, owner_of (scene, "gallery", FALSE), FP_PEN_HIDDEN), >, 23000);
  g_assert_cmpfloat (length_of (plan, owner_of (scene, "gallery", FALSE), FP_PEN_OUTLINE), ==, 0);
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
  g_test_add_func ("/projection/against-rays", test_against_rays);
  g_test_add_func ("/projection/nearest-against-rays", test_nearest_against_rays);
  g_test_add_func ("/projection/plan", test_plan);
  g_test_add_func ("/projection/elevation", test_elevation);
  g_test_add_func ("/projection/section", test_section);
  g_test_add_func ("/projection/footpace-cut", test_footpace_cut);
  g_test_add_func ("/projection/ghosts", test_ghosts);
  g_test_add_func ("/projection/no-doubles", test_no_doubles);
  g_test_add_func ("/projection/order", test_order);
  g_test_add_func ("/projection/pick", test_pick);
  g_test_add_func ("/projection/empty", test_empty);
  g_test_add_func ("/projection/threads", test_threads);
  g_test_add_func ("/projection/great", test_great);
  return g_test_run ();
}
