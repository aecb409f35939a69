/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Hidden lines against rays through the same solids. */
#include "sketching.h"

#include <math.h>

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

/* A level top over a foot that slopes, as over an arch. */
static void
add_arching (FpSolids *solids, GRand *rand, FpPoint at)
{
  const FpPlace place = { at.x, at.y, between (rand, 0, 90) };
  const double w = between (rand, 100, 500), d = between (rand, 100, 500), bx = between (rand, -0.5, 0.5);
  const FpPoint pt[] = { fp_place_point (&place, (FpPoint) { -w, -d }), fp_place_point (&place, (FpPoint) { w, -d }),
                         fp_place_point (&place, (FpPoint) { w, d }), fp_place_point (&place, (FpPoint) { -w, d }) };

  fp_solids_add_arching (solids, FP_PART_BODY, pt, 4, between (rand, 300, 900) - bx * at.x, bx, 0, 1600);
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
        fp_solids_add_round (solids, FP_PART_BODY, at.x, at.y, z, z + between (rand, 200, 900),
                             between (rand, 100, 400), between (rand, 0, 400));
      else if (i % 4 == 1)
        fp_solids_add_ellipsoid (solids, FP_PART_BODY, (FpVec3) { at.x, at.y, z }, between (rand, 100, 400),
                                 between (rand, 100, 400), between (rand, 100, 400), between (rand, 0, 180));
      else if (i % 4 == 2)
        add_arching (solids, rand, at);
      else
        add_star (solids, rand, at);
      sketching_own_last (solids, fp_solids_count (solids) - 1);
    }
  return solids;
}

/* Facing west, north (the Gospel side) is on the right; from the Epistle side, east is. */
static FpVec3
to_world (const FpSketch *sketch, FpVec3 p)
{
  if (sketch->view == FP_VIEW_ELEVATION)
    return sketch->turned ? (FpVec3) { -p.x, p.z, p.y } : (FpVec3) { p.x, -p.z, p.y };
  if (sketch->view == FP_VIEW_SECTION)
    return sketch->turned ? (FpVec3) { p.z, p.x, p.y } : (FpVec3) { -p.z, -p.x, p.y };
  return p;
}

/* Whether a ray from @p (sketch coordinates), begun @lift before it, meets something on its way to the viewer. */
static gboolean
is_covered (const FpSolids *solids, const FpSketch *sketch, FpVec3 p, double lift, const FpEdge *edge)
{
  const FpVec3 from = to_world (sketch, (FpVec3) { p.x, p.y, p.z + lift });
  const FpVec3 to = to_world (sketch, (FpVec3) { p.x, p.y, p.z + 20000 });

  for (guint i = 0; i < fp_solids_count (solids); i++)
    if (!(i == edge->solid && (edge->convex || lift < 0)) && fp_solid_ray (fp_solids_get (solids, i), from, to, NULL))
      return TRUE;
  return FALSE;
}

/* +1 covered, -1 free, 0 too near a border to say.  Curved surfaces are facetted, so within 2 % of their
 * radius (8 mm here) the two may differ. */
static int
covered_for_sure (const FpSolids *solids, const FpSketch *sketch, FpVec3 p, const FpEdge *edge)
{
  static const double lift[] = { -8, 1, 40 };
  guint covered = 0;

  for (int i = -1; i <= 1; i++)
    for (int k = -1; k <= 1; k++)
      for (guint n = 0; n < G_N_ELEMENTS (lift); n++)
        covered += is_covered (solids, sketch, (FpVec3) { p.x + 8 * i, p.y + 8 * k, p.z }, lift[n], edge) ? 1 : 0;
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
      const int sure = covered_for_sure (solids, sketch, p, edge);
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
check_against_rays (const FpSolids *solids, FpViewId view, gboolean turned, Tally *tally)
{
  g_autoptr (FpSketch) sketch = turned ? sketching_new_turned (solids, view)
                                       : sketching_new (solids, view, G_MAXDOUBLE, FALSE);
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
      fp_face_grid_visible (grid, FALSE, NULL, NULL, NULL, pieces);
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
        check_against_rays (solids, (FpViewId) view, FALSE, &tally);
      check_against_rays (solids, round % 2 ? FP_VIEW_SECTION : FP_VIEW_ELEVATION, TRUE, &tally);
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
      g_autoptr (FpSketch) sketch = sketching_new (solids, FP_VIEW_ELEVATION, G_MAXDOUBLE, FALSE);
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

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/projection/against-rays", test_against_rays);
  g_test_add_func ("/projection/nearest-against-rays", test_nearest_against_rays);
  return g_test_run ();
}
