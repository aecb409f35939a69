/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-wall.c - a wall is cut by its openings and by nothing else; what is expected follows from geometry alone */
#include "kind-fixture.h"

#include <math.h>

/* The ring between two rectangles, times the height: so mitres neither overlap nor gape. */
static void
test_wall_ring (void)
{
  static const FpPoint room[] = { { -3000, -5000 }, { -3000, 5000 }, { 3000, 5000 }, { 3000, -5000 } };
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "wall");

  fixture.form.corner = room;
  fixture.form.n_corners = G_N_ELEMENTS (room);
  fixture_set (&fixture, kind, "closed", 1);
  const double ring = 7200.0 * 11200 - 6000.0 * 10000;
  g_assert_cmpfloat_with_epsilon (fixture_volume (&fixture, kind, -1), ring * 8000, 1e3);

  /* Open, the fourth side is missing: two free ends, cut square. */
  fixture_set (&fixture, kind, "closed", 0);
  g_assert_cmpfloat_with_epsilon (fixture_volume (&fixture, kind, -1), (7200.0 * 10600 - 6000.0 * 10000) * 8000, 1e3);
}

static void
test_wall_openings (void)
{
  static const FpPoint line[] = { { 0, 0 }, { 0, 10000 } };
  /* A door and a window with a half-round head; the window's sill lies above the door. */
  const FpHole hole[] = { { 0, 7000, 1400, 3000, 4500, TRUE }, { 0, 2000, 1000, 0, 2100, FALSE } };
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "wall");

  fixture.form.corner = line;
  fixture.form.n_corners = 2;
  const double whole = fixture_volume (&fixture, kind, -1);
  g_assert_cmpfloat_with_epsilon (whole, 10000.0 * 600 * 8000, 1);
  fixture.form.hole = hole;
  fixture.form.n_holes = 2;
  const double cut = whole - fixture_volume (&fixture, kind, -1);
  const double openings = 600 * (1000.0 * 2100 + 1400.0 * 1500 + G_PI * 700 * 700 / 2);
  /* The chords of an arch keep so near to it that they differ by less than 0.2 % of the openings. */
  g_assert_cmpfloat_with_epsilon (cut, openings, openings * 0.002);

  /* The thickness lies to the left of the walk: walking east, towards the Gospel side. */
  const FpExtent extent = fixture_extent (&fixture, kind);
  g_assert_cmpfloat (extent.plan.x0, ==, -600);
  g_assert_cmpfloat (extent.plan.x1, ==, 0);
}

static gboolean
slopes (const FpSolid *s)
{
  return s->bx != 0 || s->by != 0;
}

/* The number of pieces whose feet slope: the chords of the arch. */
static guint
count_chords (const FpSolids *solids)
{
  guint n, chords = 0;
  const FpSolid *s = fp_solids_peek (solids, &n);

  for (guint i = 0; i < n; i++)
    chords += slopes (&s[i]) ? 1 : 0;
  return chords;
}

/* Feet end on the circle, where the next begins, all of the same length. */
static void
check_chords (const FpSolids *solids, double middle, double springing, double radius, guint chords)
{
  guint n;
  const FpSolid *s = fp_solids_peek (solids, &n);

  for (guint i = 0; i < n; i++)
    {
      const FpBox3 box = fp_solid_box (&s[i]);
      double from, to;
      if (!slopes (&s[i]))
        continue;
      from = fp_solid_foot_at (&s[i], 0, box.lo.y);
      to = fp_solid_foot_at (&s[i], 0, box.hi.y);
      g_assert_cmpfloat_with_epsilon (hypot (box.lo.y - middle, from - springing), radius, 1e-6);
      g_assert_cmpfloat_with_epsilon (hypot (box.hi.y - middle, to - springing), radius, 1e-6);
      g_assert_cmpfloat_with_epsilon (hypot (box.hi.y - box.lo.y, to - from), 2 * radius * sin (G_PI / 2 / chords), 1e-6);
    }
}

/* The opening of an arch is half a regular polygon of 2 n sides in the circle, n r^2 sin (pi / n) / 2 (closed form). */
static void
test_wall_arch (void)
{
  static const FpPoint line[] = { { 0, 0 }, { 0, 10000 } };
  static const double radius[] = { 60, 450, 900, 3100, 4900 };

  for (guint i = 0; i < G_N_ELEMENTS (radius); i++)
    {
      const double r = radius[i];
      const FpHole hole = { 0, 5000, 2 * r, 0, 2100, TRUE };
      Fixture fixture;
      const FpKind *kind = fixture_open (&fixture, "wall");

      fixture.form.corner = line;
      fixture.form.n_corners = 2;
      const double whole = fixture_volume (&fixture, kind, -1);
      fixture.form.hole = &hole;
      fixture.form.n_holes = 1;
      g_autoptr (FpSolids) solids = fixture_solids (&fixture, kind);
      const guint n = count_chords (solids);
      g_assert_cmpuint (n, >=, 24);
      /* A tenth of a millimetre on paper at 1:20. */
      g_assert_cmpfloat (r * (1 - cos (G_PI / 2 / n)), <=, 2.0);
      g_assert_cmpfloat_with_epsilon ((whole - fixture_volume (&fixture, kind, -1)) / 600,
                                      2 * r * 2100 + n * r * r * sin (G_PI / n) / 2, 1e-2);
      check_chords (solids, 5000, 2100, r, n);
    }
}

/* An arch that rises above its wall leaves what is beside it; one at a corner keeps to its own side of the wall. */
static void
test_wall_arch_ends (void)
{
  static const FpPoint corner[] = { { 0, 0 }, { 0, 10000 }, { 10000, 10000 } };
  const FpHole high = { 0, 5000, 4000, 0, 7000, TRUE }, at_end = { 0, 9300, 1400, 0, 2100, TRUE };
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "wall");
  double share, volume;

  fixture.form.corner = corner;
  fixture.form.n_corners = 3;
  const double whole = fixture_volume (&fixture, kind, -1);
  fixture.form.hole = &high;
  fixture.form.n_holes = 1;
  /* Of the half circle only the 1000 above the springing: r^2 asin (h / r) + h sqrt (r^2 - h^2) (closed form). */
  share = 2000 * 2000 * asin (0.5) + 1000 * sqrt (2000 * 2000 - 1000 * 1000);
  volume = whole - fixture_volume (&fixture, kind, -1);
  g_assert_cmpfloat_with_epsilon (volume / 600, 4000.0 * 7000 + share, share * 0.003);
  /* The mitre of that corner is open to the springing too, and filled above it. */
  fixture.form.hole = &at_end;
  volume = whole - fixture_volume (&fixture, kind, -1);
  share = 1400.0 * 2100 + G_PI * 700 * 700 / 2;
  g_assert_cmpfloat (volume / 600, >, share);
  g_assert_cmpfloat (volume / 600, <, share + 300 * 2100 + 300 * 200);
}

/* Whatever way a wall turns, its pieces are simple outlines within its plan. */
static void
test_wall_turns (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (3);

  for (guint round = 0; round < 300; round++)
    {
      const FpHole hole = { 1, g_rand_double_range (rand, 0, 6000), 900, 800, 2000, round % 2 };
      FpPoint corner[6];
      Fixture fixture;
      const FpKind *kind = fixture_open (&fixture, "wall");

      for (guint i = 0; i < 6; i++)
        corner[i] = (FpPoint) { g_rand_double_range (rand, -6000, 6000), g_rand_double_range (rand, -6000, 6000) };
      fixture.form.corner = corner;
      fixture.form.n_corners = 6;
      fixture.form.hole = &hole;
      fixture.form.n_holes = 1;
      fixture_set (&fixture, kind, "closed", round % 3 == 0);
      const FpExtent extent = fixture_extent (&fixture, kind);
      g_autoptr (FpSolids) solids = fixture_solids (&fixture, kind);
      guint n;
      const FpSolid *s = fp_solids_peek (solids, &n);
      g_assert_cmpuint (n, >=, 5);
      for (guint i = 0; i < n; i++)
        {
          const FpBox box = fp_outline_box (s[i].outline, s[i].n_outline);
          g_assert_false (fp_outline_crosses_itself (s[i].outline, s[i].n_outline, NULL));
          g_assert_true (fp_outline_is_convex (s[i].outline, s[i].n_outline));
          g_assert_cmpfloat (box.x0, >=, extent.plan.x0 - 1);
          g_assert_cmpfloat (box.y1, <=, extent.plan.y1 + 1);
        }
    }
}

/* --- openings over one another ---------------------------------------------- */

static double
area_of_hole (const FpHole *hole)
{
  return hole->width * (hole->head - hole->sill) + (hole->arched ? G_PI * hole->width * hole->width / 8 : 0);
}

static double
crown_of_hole (const FpHole *hole)
{
  return hole->head + (hole->arched ? hole->width / 2 : 0);
}

static gboolean
holes_meet (const FpHole *a, const FpHole *b)
{
  return fabs (a->along - b->along) < (a->width + b->width) / 2 && a->sill < crown_of_hole (b)
         && b->sill < crown_of_hole (a);
}

static gboolean
is_in_hole (const FpHole *hole, double s, double z)
{
  const double off = s - hole->along;

  if (fabs (off) > hole->width / 2 || z < hole->sill)
    return FALSE;
  return z < hole->head || (hole->arched && hypot (off, z - hole->head) < hole->width / 2);
}

static guint
solids_about (const FpSolids *solids, FpVec3 p)
{
  guint n, about = 0;
  const FpSolid *s = fp_solids_peek (solids, &n);

  for (guint i = 0; i < n; i++)
    if (fp_outline_contains (s[i].outline, s[i].n_outline, (FpPoint) { p.x, p.y })
        && p.z > fp_solid_foot_at (&s[i], p.x, p.y) && p.z < fp_solid_top_at (&s[i], p.x, p.y))
      about++;
  return about;
}

/* In no piece where an opening is, and in one everywhere else: within 3 mm of an arch its chords decide. */
static void
check_points (const FpSolids *solids, const FpHole *hole, guint n, GRand *rand)
{
  for (guint i = 0; i < 400; i++)
    {
      const double s = g_rand_double_range (rand, 0, 10000), z = g_rand_double_range (rand, 0, 8000);
      gboolean open = FALSE, near = FALSE;
      for (guint h = 0; h < n; h++)
        {
          open = open || is_in_hole (&hole[h], s, z);
          near = near || (hole[h].arched && fabs (hypot (s - hole[h].along, z - hole[h].head) - hole[h].width / 2) < 3);
        }
      if (!near)
        g_assert_cmpuint (solids_about (solids, (FpVec3) { -300, s, z }), ==, open ? 0 : 1);
    }
}

/* Along a wall 10 m long, 8 m high and 600 thick. */
static FpSolids *
wall_with (const FpHole *hole, guint n)
{
  static const FpPoint line[] = { { 0, 0 }, { 0, 10000 } };
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "wall");
  double openings = 0, volume, arches = 0;

  fixture.form.corner = line;
  fixture.form.n_corners = 2;
  fixture.form.hole = hole;
  fixture.form.n_holes = n;
  volume = fixture_volume (&fixture, kind, -1);
  for (guint h = 0; h < n; h++)
    {
      openings += area_of_hole (&hole[h]);
      arches += hole[h].arched ? area_of_hole (&hole[h]) * 0.003 : 0; /* chords for the arch */
    }
  g_assert_cmpfloat_with_epsilon (volume / 600, 10000.0 * 8000 - openings, arches + 1);
  g_assert_null (kind->amiss (&fixture.form));
  return fixture_solids (&fixture, kind);
}

/* A window over a door, wider, narrower, beside its middle, arched or not, either given first. */
static void
test_wall_stacked (void)
{
  static const FpHole cases[][3] = {
    { { 0, 5500, 1600, 5000, 6000, TRUE }, { 0, 5200, 1000, 0, 2400, FALSE }, { 0, 500, 800, 0, 2000, FALSE } },
    { { 0, 5200, 1000, 0, 2400, TRUE }, { 0, 5500, 1600, 5000, 6000, TRUE }, { 0, 500, 800, 0, 2000, FALSE } },
    { { 0, 5000, 900, 3000, 4000, FALSE }, { 0, 5000, 3000, 4500, 5500, TRUE }, { 0, 5000, 2000, 0, 2200, FALSE } },
    { { 0, 4000, 1000, 0, 2000, FALSE }, { 0, 5000, 3000, 2000, 3000, FALSE }, { 0, 6000, 1000, 3000, 4000, TRUE } },
    { { 0, 4000, 1000, 0, 2000, TRUE }, { 0, 6000, 1000, 0, 2000, TRUE }, { 0, 5000, 3200, 3000, 5000, TRUE } },
  };
  g_autoptr (GRand) rand = g_rand_new_with_seed (5);

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (FpSolids) solids = wall_with (cases[i], 3);
      check_points (solids, cases[i], 3, rand);
    }
}

/* Whatever openings lie apart, the wall is cut by each of them and by nothing else. */
static void
test_wall_any_openings (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (17);
  guint stacked = 0;

  for (guint round = 0; round < 150; round++)
    {
      FpHole hole[9];
      guint n = 0;

      for (guint i = 0; i < 40 && n < G_N_ELEMENTS (hole); i++)
        {
          const double width = g_rand_double_range (rand, 200, 3000), sill = g_rand_double_range (rand, -500, 6500);
          const FpHole wish = { 0, g_rand_double_range (rand, width / 2, 10000 - width / 2), width, MAX (sill, 0),
                                MAX (sill, 0) + g_rand_double_range (rand, 100, 2000), g_rand_boolean (rand) };
          gboolean meets = crown_of_hole (&wish) > 8000;

          for (guint h = 0; h < n && !meets; h++)
            meets = holes_meet (&hole[h], &wish);
          for (guint h = 0; h < n && !meets; h++)
            stacked += fabs (hole[h].along - wish.along) < (hole[h].width + wish.width) / 2 ? 1 : 0;
          if (!meets)
            hole[n++] = wish;
        }
      {
        g_autoptr (FpSolids) solids = wall_with (hole, n);
        check_points (solids, hole, n, rand);
      }
    }
  g_assert_cmpuint (stacked, >, 150); /* or the test tests nothing */
}

/* Where nothing changes there is one piece: beside, below and above a door under a window of the same width are six. */
static void
test_wall_few_pieces (void)
{
  static const FpHole hole[] = { { 0, 5000, 1000, 0, 2000, FALSE }, { 0, 5000, 1000, 3000, 4000, FALSE },
                                 { 0, 7000, 1000, 0, 2000, FALSE } };
  g_autoptr (FpSolids) solids = wall_with (hole, 3);

  g_assert_cmpuint (fp_solids_count (solids), ==, 6);
}

static void
test_wall_amiss (void)
{
  const FpHole beyond = { 0, 500, 1400, 0, 2100, FALSE };
  const FpHole elsewhere = { 9, 500, 400, 0, 2100, FALSE };
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "wall");

  fixture.form.n_holes = 1;
  fixture.form.hole = &beyond;
  g_autofree char *first = kind->amiss (&fixture.form);
  g_assert_nonnull (strstr (first, "side 1"));
  fixture.form.hole = &elsewhere;
  g_autofree char *second = kind->amiss (&fixture.form);
  g_assert_nonnull (strstr (second, "side 10"));

  /* A window over a door, and one into it. */
  const FpHole over[] = { { 0, 1500, 1000, 0, 2100, FALSE }, { 0, 1500, 1000, 2100, 3000, FALSE } };
  const FpHole into[] = { { 0, 1500, 1000, 0, 2100, TRUE }, { 0, 1500, 1000, 2100, 3000, FALSE } };
  fixture.form.n_holes = 2;
  fixture.form.hole = over;
  g_assert_null (kind->amiss (&fixture.form));
  fixture.form.hole = into;
  g_autofree char *third = kind->amiss (&fixture.form);
  g_assert_nonnull (third);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/wall/ring", test_wall_ring);
  g_test_add_func ("/wall/openings", test_wall_openings);
  g_test_add_func ("/wall/arch", test_wall_arch);
  g_test_add_func ("/wall/arch-ends", test_wall_arch_ends);
  g_test_add_func ("/wall/turns", test_wall_turns);
  g_test_add_func ("/wall/stacked", test_wall_stacked);
  g_test_add_func ("/wall/any-openings", test_wall_any_openings);
  g_test_add_func ("/wall/few-pieces", test_wall_few_pieces);
  g_test_add_func ("/wall/amiss", test_wall_amiss);
  return g_test_run ();
}
