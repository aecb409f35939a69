/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is seen on the plan, against CGAL's region of visibility (cgal.org,
 * Triangular_expansion_visibility_2, exact arithmetic): a point lies in it if,
 * and only if, our ray from the eye to the point is not blocked.
 *
 * Walls and piers are prisms; rays run level through them.
 */
#include "footpace/contour.h"
#include "footpace/sight.h"

#include <CGAL/Arr_naive_point_location.h>
#include <CGAL/Arr_segment_traits_2.h>
#include <CGAL/Arrangement_2.h>
#include <CGAL/Exact_predicates_exact_constructions_kernel.h>
#include <CGAL/Polygon_2.h>
#include <CGAL/Triangular_expansion_visibility_2.h>

#include <cmath>
#include <variant>
#include <vector>

namespace {

using Kernel = CGAL::Exact_predicates_exact_constructions_kernel;
using Arrangement = CGAL::Arrangement_2<CGAL::Arr_segment_traits_2<Kernel>>;
using Visibility = CGAL::Triangular_expansion_visibility_2<Arrangement, CGAL::Tag_true>;
using Outline = std::vector<FpPoint>;
using Polygon = CGAL::Polygon_2<Kernel>;

constexpr double EYE_LEVEL = 1000, WALL = 300;

/* A room: its outline, counter-clockwise, and the piers that stand free within it. */
struct Room
{
  Outline outline;
  std::vector<Outline> piers;
};

/* --- the room to CGAL ------------------------------------------------------ */

void
add_edges (std::vector<Kernel::Segment_2> &edges, const Outline &outline)
{
  for (std::size_t i = 0; i < outline.size (); i++)
    {
      const FpPoint a = outline[i], b = outline[(i + 1) % outline.size ()];
      edges.emplace_back (Kernel::Point_2 (a.x, a.y), Kernel::Point_2 (b.x, b.y));
    }
}

Polygon
visible_region (const Room &room, FpPoint eye)
{
  std::vector<Kernel::Segment_2> edges;
  add_edges (edges, room.outline);
  for (const Outline &pier : room.piers)
    add_edges (edges, pier);
  Arrangement arrangement;
  CGAL::insert_non_intersecting_curves (arrangement, edges.begin (), edges.end ());

  const Kernel::Point_2 from (eye.x, eye.y);
  CGAL::Arr_naive_point_location<Arrangement> locate (arrangement);
  const auto found = locate.locate (from);
  const Arrangement::Face_const_handle *face = boost::get<Arrangement::Face_const_handle> (&found);
  g_assert_nonnull (face);

  Arrangement region;
  const Arrangement::Face_handle seen = Visibility (arrangement).compute_visibility (from, *face, region);
  Polygon polygon;
  const auto start = seen->outer_ccb ();
  auto at = start;
  do
    polygon.push_back (at->target ()->point ());
  while (++at != start);
  return polygon;
}

double
area_of (const Polygon &polygon)
{
  return std::fabs (CGAL::to_double (polygon.area ()));
}

gboolean
contains (const Polygon &polygon, FpPoint p)
{
  return polygon.has_on_bounded_side (Kernel::Point_2 (p.x, p.y));
}

/* --- the room to our rays -------------------------------------------------- */

FpSolids *
walls_and_piers (const Room &room)
{
  FpSolids *solids = fp_solids_new ();
  for (std::size_t i = 0; i < room.outline.size (); i++)
    {
      const FpPoint a = room.outline[i], b = room.outline[(i + 1) % room.outline.size ()];
      const double length = std::hypot (b.x - a.x, b.y - a.y);
      const FpPoint out = { (b.y - a.y) / length * WALL, -(b.x - a.x) / length * WALL };
      const FpPoint slab[] = { a, { a.x + out.x, a.y + out.y }, { b.x + out.x, b.y + out.y }, b };
      fp_solids_add_prism (solids, FP_PART_WALL, slab, 4, 0, 2 * EYE_LEVEL);
    }
  for (const Outline &pier : room.piers)
    fp_solids_add_prism (solids, FP_PART_PIER, pier.data (), (guint) pier.size (), 0, 2 * EYE_LEVEL);
  return solids;
}

gboolean
we_see (const FpRayIndex *index, FpPoint eye, FpPoint to)
{
  return fp_ray_index_blocked (index, { eye.x, eye.y, EYE_LEVEL }, { to.x, to.y, EYE_LEVEL }, G_MAXUINT) < 0;
}

gboolean
in_room (const Room &room, FpPoint p)
{
  if (!fp_outline_contains (room.outline.data (), room.outline.size (), p))
    return FALSE;
  for (const Outline &pier : room.piers)
    if (fp_outline_contains (pier.data (), pier.size (), p))
      return FALSE;
  return TRUE;
}

/* --- comparing -------------------------------------------------------------- */

/* Near the edge of the region a point may answer either way. */
gboolean
near_edge (const Polygon &polygon, FpPoint p, double tolerance)
{
  for (auto edge = polygon.edges_begin (); edge != polygon.edges_end (); ++edge)
    {
      const FpPoint a = { CGAL::to_double (edge->source ().x ()), CGAL::to_double (edge->source ().y ()) };
      const FpPoint b = { CGAL::to_double (edge->target ().x ()), CGAL::to_double (edge->target ().y ()) };
      if (fp_segment_distance (a, b, p) < tolerance)
        return TRUE;
    }
  return FALSE;
}

struct Tally { guint points, seen, excused; };

void
compare_points (const Room &room, FpPoint eye, GRand *rand, guint n, Tally *tally)
{
  const Polygon region = visible_region (room, eye);
  const FpBox box = fp_outline_box (room.outline.data (), room.outline.size ());
  g_autoptr (FpSolids) solids = walls_and_piers (room);
  g_autoptr (FpRayIndex) index = fp_ray_index_new (solids);

  for (guint i = 0; i < n; i++)
    {
      const FpPoint p = { g_rand_double_range (rand, box.x0, box.x1), g_rand_double_range (rand, box.y0, box.y1) };
      if (!in_room (room, p))
        continue;
      const gboolean ours = we_see (index, eye, p), theirs = contains (region, p);
      tally->points++;
      tally->seen += ours ? 1 : 0;
      if (ours == theirs)
        continue;
      if (!near_edge (region, p, 1e-6))
        g_error ("from (%.17g, %.17g) to (%.17g, %.17g): we say %s, CGAL %s", eye.x, eye.y, p.x, p.y,
                 ours ? "seen" : "hidden", theirs ? "seen" : "hidden");
      tally->excused++;
    }
}

/* Area that our rays see, from the middle of each square of a fine grid. */
double
area_we_see (const Room &room, FpPoint eye, double square)
{
  const FpBox box = fp_outline_box (room.outline.data (), room.outline.size ());
  g_autoptr (FpSolids) solids = walls_and_piers (room);
  g_autoptr (FpRayIndex) index = fp_ray_index_new (solids);
  guint seen = 0;

  for (double x = box.x0 + square / 2; x < box.x1; x += square)
    for (double y = box.y0 + square / 2; y < box.y1; y += square)
      if (in_room (room, { x, y }) && we_see (index, eye, { x, y }))
        seen++;
  return seen * square * square;
}

/* --- rooms ------------------------------------------------------------------ */

Room
l_room ()
{
  return { { { 0, 0 }, { 4000, 0 }, { 4000, 2000 }, { 2000, 2000 }, { 2000, 4000 }, { 0, 4000 } }, {} };
}

Room
column_room ()
{
  return { { { 0, 0 }, { 10000, 0 }, { 10000, 10000 }, { 0, 10000 } },
           { { { 4000, 4500 }, { 6000, 4500 }, { 6000, 5500 }, { 4000, 5500 } } } };
}

/* Regions of visibility (M. L. Benedikt, "To take hold of space: isovists and isovist fields", Environment and
 * Planning B 6, 1979), their areas in square metres worked out by hand. */
void
check_area (const Room &room, FpPoint eye, double square_metres)
{
  /* Squares that an edge of the region cuts count as a whole or not at all. */
  g_assert_cmpfloat_with_epsilon (area_of (visible_region (room, eye)) / 1e6, square_metres, 1e-9);
  g_assert_cmpfloat_with_epsilon (area_we_see (room, eye, 25) / 1e6, square_metres, square_metres * 0.004);
}

void
test_areas ()
{
  check_area (l_room (), { 1000, 1000 }, 12);
  check_area (l_room (), { 3000, 1000 }, 10);
  check_area (column_room (), { 1000, 5000 }, 88);
}

void
test_hand_made_rooms ()
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);
  Tally tally = {};
  compare_points (l_room (), { 1100, 900 }, rand, 2000, &tally);
  compare_points (l_room (), { 3000, 1000 }, rand, 2000, &tally);
  compare_points (l_room (), { 300, 3700 }, rand, 2000, &tally);
  compare_points (column_room (), { 1000, 5000 }, rand, 4000, &tally);
  compare_points (column_room (), { 7300, 4100 }, rand, 4000, &tally);
  g_assert_cmpuint (tally.seen, <, tally.points);
  g_assert_cmpuint (tally.excused, ==, 0);
}

/* A star-shaped room with piers in it, none touching another or a wall. */
Room
random_room (GRand *rand)
{
  Room room;
  const guint sides = 5 + (guint) g_rand_int_range (rand, 0, 9);
  for (guint i = 0; i < sides; i++)
    {
      const double a = 2 * G_PI * i / sides, r = g_rand_double_range (rand, 7000, 14000);
      room.outline.push_back ({ r * std::cos (a), r * std::sin (a) });
    }
  for (int i = 0; i < 9; i++)
    {
      const FpPoint middle = { (i % 3 - 1) * 2400.0, (i / 3 - 1) * 2400.0 };
      Outline pier;
      for (int k = 0; k < 8 && i != 4; k++)
        {
          const double a = k * G_PI / 4, r = g_rand_double_range (rand, 200, 900);
          pier.push_back ({ middle.x + r * std::cos (a), middle.y + r * std::sin (a) });
        }
      if (!pier.empty () && g_rand_boolean (rand))
        room.piers.push_back (pier);
    }
  return room;
}

/* --- outlines of what is not seen ------------------------------------------- */

struct Hidden
{
  const Room *room;
  const FpRayIndex *index;
  FpPoint target;
};

gboolean
is_hidden (FpPoint at, gpointer data)
{
  const Hidden *hidden = static_cast<const Hidden *> (data);
  return in_room (*hidden->room, at) && !we_see (hidden->index, at, hidden->target);
}

double
area_within (const Room &room)
{
  double area = std::fabs (fp_outline_area (room.outline.data (), room.outline.size ()));
  for (const Outline &pier : room.piers)
    area -= std::fabs (fp_outline_area (pier.data (), pier.size ()));
  return area;
}

GArray *
outline_hidden (const Room &room, FpPoint target)
{
  const FpBox box = fp_outline_box (room.outline.data (), room.outline.size ());
  g_autoptr (FpSolids) solids = walls_and_piers (room);
  g_autoptr (FpRayIndex) index = fp_ray_index_new (solids);
  Hidden hidden = { &room, index, target };
  const FpField field = { is_hidden, nullptr, &hidden };
  return fp_contours (&field, &box, 50, 0);
}

/* What a point is not seen from is the room less the region that is seen from it. */
void
check_hidden (const Room &room, FpPoint target, double share)
{
  g_autoptr (GArray) rings = outline_hidden (room, target);
  const double theirs = area_within (room) - area_of (visible_region (room, target));
  g_test_message ("%.4f m2 hidden, CGAL %.4f m2", fp_rings_area (rings) / 1e6, theirs / 1e6);
  g_assert_cmpfloat_with_epsilon (fp_rings_area (rings) / 1e6, theirs / 1e6, share * theirs / 1e6 + 0.01);
}

void
test_hidden_areas ()
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (2012);
  check_hidden (l_room (), { 3000, 1000 }, 0);
  check_hidden (column_room (), { 1000, 5000 }, 0);
  for (guint i = 0; i < 8; i++)
    {
      const FpPoint target = { g_rand_double_range (rand, -900, 900), g_rand_double_range (rand, -900, 900) };
      check_hidden (random_room (rand), target, 0.003);
    }
}

void
test_random_rooms ()
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (1979);
  Tally tally = {};
  for (guint i = 0; i < 25; i++)
    {
      const Room room = random_room (rand);
      const FpPoint eye = { g_rand_double_range (rand, -900, 900), g_rand_double_range (rand, -900, 900) };
      compare_points (room, eye, rand, 1200, &tally);
    }
  g_test_message ("%u points, %u seen, %u excused", tally.points, tally.seen, tally.excused);
  g_assert_cmpuint (tally.seen, >, tally.points / 10);
  g_assert_cmpuint (tally.seen, <, tally.points - tally.points / 10);
  g_assert_cmpuint (tally.excused, <=, 2);
}

} // namespace

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, nullptr);
  g_test_add_func ("/cgal/areas", test_areas);
  g_test_add_func ("/cgal/hand-made-rooms", test_hand_made_rooms);
  g_test_add_func ("/cgal/random-rooms", test_random_rooms);
  g_test_add_func ("/cgal/hidden-areas", test_hidden_areas);
  return g_test_run ();
}
