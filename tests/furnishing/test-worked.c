/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-worked.c - kinds against worked examples and closed forms */
#include "kind-fixture.h"

#include <math.h>

#define INCH 25.4

/* Without the prefix of a source, an expected value follows from geometry alone. */

/* A. J. Schulte, "Altar Steps", Catholic Encyclopedia I (1907): risers 6 in, treads 12 in, footpace 42 in in front and
 * 12 in beyond the ends, three steps with the footpace.  Derived: rise 18 in = 457.2; altar face to lowest riser
 * 42 + 12 + 12 = 66 in = 1676.4; lowest step 2 x (12 + 24) = 72 in longer than the altar. */
static void
test_schulte (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "footpace");

  fixture_set (&fixture, kind, "riser", 6 * INCH);
  fixture_set (&fixture, kind, "tread", 12 * INCH);
  fixture_set (&fixture, kind, "front", 42 * INCH);
  fixture_set (&fixture, kind, "ends", 12 * INCH);
  fixture_set (&fixture, kind, "count", 3);
  FpExtent extent = fixture_extent (&fixture, kind);
  g_assert_cmpfloat_with_epsilon (extent.top, 457.2, 1e-9);
  g_assert_cmpfloat_with_epsilon (fixture.form.core.y0 - extent.plan.y0, 1676.4, 1e-9);
  g_assert_cmpfloat_with_epsilon (extent.plan.x1 - extent.plan.x0, 2400 + 72 * INCH, 1e-9);
  g_assert_cmpfloat_with_epsilon (extent.bearing.x1 - extent.bearing.x0, 2400 + 24 * INCH, 1e-9);
  g_assert_cmpfloat (extent.plan.y1, ==, fixture.form.core.y1); /* three sides: none behind */

  /* Five steps likewise: 30 in; 42 + 4 x 12 = 90 in; 2 x (12 + 48) = 120 in longer. */
  fixture_set (&fixture, kind, "count", 5);
  extent = fixture_extent (&fixture, kind);
  g_assert_cmpfloat_with_epsilon (extent.top, 30 * INCH, 1e-9);
  g_assert_cmpfloat_with_epsilon (fixture.form.core.y0 - extent.plan.y0, 90 * INCH, 1e-9);
  g_assert_cmpfloat_with_epsilon (extent.plan.x1 - extent.plan.x0, 2400 + 120 * INCH, 1e-9);
}

/* The defaults are Schulte's "about" figures, rounded to the millimetre. */
static void
test_schulte_defaults (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "footpace");
  const FpExtent extent = fixture_extent (&fixture, kind);

  g_assert_cmpfloat_with_epsilon (extent.top, 18 * INCH, 2);
  g_assert_cmpfloat_with_epsilon (fixture.form.core.y0 - extent.plan.y0, 66 * INCH, 2);
}

/* Before anything stands on it, it is as large as for an altar of 2400 x 900. */
static void
test_footpace_alone (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "footpace");
  const FpExtent under_altar = fixture_extent (&fixture, kind);

  fixture.form.core = FP_BOX_EMPTY;
  const FpExtent alone = fixture_extent (&fixture, kind);
  g_assert_cmpfloat (alone.plan.x0, ==, under_altar.plan.x0);
  g_assert_cmpfloat (alone.plan.y0, ==, under_altar.plan.y0);
  g_assert_cmpfloat (alone.bearing.x1, ==, under_altar.bearing.x1);
  g_assert_cmpfloat (alone.bearing.y1, ==, under_altar.bearing.y1);
}

static void
test_footpace_sides (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "footpace");
  FpExtent extent;

  fixture_set (&fixture, kind, "sides", 0);
  extent = fixture_extent (&fixture, kind);
  g_assert_cmpfloat (extent.plan.x0, ==, extent.bearing.x0);
  fixture_set (&fixture, kind, "sides", 2);
  fixture_set (&fixture, kind, "behind", 900);
  extent = fixture_extent (&fixture, kind);
  g_assert_cmpfloat (extent.plan.y1, ==, 450 + 900 + 2 * 305);
}

/* Benches of 10 ft 6 in (3200) at 18 in a person: floor (126 / 18) = 7; ten on each side, 140: the IBC's bench rule
 * (section 1004) as worked at thebuildingcodeforum.com, thread 33384, which prints 140. */
static void
test_bench_count (void)
{
  /* Thread 1307 of thebuildingcodeforum.com: 128 in gives 7; the others by the same rule (IBC 2015, 1004.4). */
  static const struct { double inches; guint seats; } bench[] = {
    { 128, 7 }, { 120, 6 }, { 126, 7 }, { 144, 8 }, { 240, 13 }, { 270, 15 },
  };
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "pews");

  fixture_set (&fixture, kind, "rows", 10);
  fixture_set (&fixture, kind, "length", 3200);
  g_autoptr (GArray) block = fixture_take (&fixture, kind->seats, sizeof (FpSeat));
  g_assert_cmpuint (2 * block->len, ==, 140);
  g_assert_cmpfloat (2 * fixture_quantity (&fixture, kind, "seats"), ==, 140);

  fixture_set (&fixture, kind, "rows", 1);
  fixture_set (&fixture, kind, "seat-width", 18 * INCH);
  for (guint i = 0; i < G_N_ELEMENTS (bench); i++)
    {
      fixture_set (&fixture, kind, "length", bench[i].inches * INCH);
      g_autoptr (GArray) row = fixture_take (&fixture, kind->seats, sizeof (FpSeat));
      g_assert_cmpuint (row->len, ==, bench[i].seats);
    }
}

/* --- pews ------------------------------------------------------------------ */

static void
test_pews_numbering (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "pews");

  fixture_set (&fixture, kind, "rise", 100);
  g_autoptr (GArray) seats = fixture_take (&fixture, kind->seats, sizeof (FpSeat));
  const FpSeat *first = &g_array_index (seats, FpSeat, 0), *last = &g_array_index (seats, FpSeat, seats->len - 1);
  g_assert_cmpuint (first->row, ==, 1);
  g_assert_cmpuint (first->number, ==, 1);
  g_assert_cmpfloat (first->at.x, <, 0); /* the Gospel side */
  g_assert_cmpuint (last->row, ==, 10);
  g_assert_cmpfloat (last->at.x, ==, -first->at.x);
  g_assert_cmpfloat_with_epsilon (first->at.y - last->at.y, 9 * 900, 1e-9);
  g_assert_cmpfloat_with_epsilon (last->z, 900, 1e-9);
}

/* Every seat looks at the centre, and rows are as far from each other as they are told. */
static void
test_pews_curved (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "pews");
  const FpPoint centre = { 0, 12000 };

  fixture_set (&fixture, kind, "radius", 12000);
  fixture_set (&fixture, kind, "length", 9000);
  g_autoptr (GArray) seats = fixture_take (&fixture, kind->seats, sizeof (FpSeat));
  const guint n = seats->len / 10;
  for (guint i = 0; i < seats->len; i++)
    {
      const FpSeat *seat = &g_array_index (seats, FpSeat, i);
      const double a = seat->facing * G_PI / 180, away = hypot (centre.x - seat->at.x, centre.y - seat->at.y);
      g_assert_cmpfloat_with_epsilon (seat->at.x - sin (a) * away, centre.x, 1e-6);
      g_assert_cmpfloat_with_epsilon (seat->at.y + cos (a) * away, centre.y, 1e-6);
      if (i >= n)
        {
          const FpSeat *before = &g_array_index (seats, FpSeat, i - n);
          g_assert_cmpfloat_with_epsilon (away - hypot (before->at.x, centre.y - before->at.y), 900, 1e-6);
        }
    }
  /* Row 1 takes 9000 of a circle of radius 12000: 43 degrees in pieces of at most 3, two corners an end: 32 corners. */
  g_autoptr (FpSolids) solids = fixture_solids (&fixture, kind);
  g_assert_cmpuint (fp_solids_get (solids, 0)->n_outline, ==, 32);
}

static void
test_pews_stagger (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "pews");

  fixture_set (&fixture, kind, "stagger", 1);
  g_autoptr (GArray) seats = fixture_take (&fixture, kind->seats, sizeof (FpSeat));
  const guint n = seats->len / 10;
  g_assert_cmpfloat_with_epsilon (g_array_index (seats, FpSeat, n).at.x - g_array_index (seats, FpSeat, 0).at.x,
                                  457 / 2.0, 1e-9);
  g_assert_cmpfloat (g_array_index (seats, FpSeat, 2 * n).at.x, ==, g_array_index (seats, FpSeat, 0).at.x);
}

static double
ramp (gconstpointer data, FpPoint local)
{
  const double *slope = data;

  return *slope * local.y;
}

/* On a floor that falls 1 in 20 away from the altar, the back of row 10 is 0.05 x 8100 lower than that of row 1. */
static void
test_pews_on_a_fall (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "pews");
  const double slope = 0.05;
  double top[2] = { -G_MAXDOUBLE, -G_MAXDOUBLE };
  guint n;

  fixture.form.ground = ramp;
  fixture.form.ground_data = &slope;
  g_autoptr (FpSolids) solids = fixture_solids (&fixture, kind);
  const FpSolid *s = fp_solids_peek (solids, &n);
  for (guint i = 0; i < n; i++)
    if (s[i].part == FP_PART_BACK)
      {
        const FpBox3 box = fp_solid_box (&s[i]);
        top[box.lo.y < -8000 ? 1 : 0] = MAX (top[box.lo.y < -8000 ? 1 : 0], box.hi.z);
        g_assert_cmpfloat_with_epsilon (box.hi.z, 850 + slope * box.hi.y, 1e-6);
      }
  g_assert_cmpfloat_with_epsilon (top[0] - top[1], 0.05 * 8100, 1e-6);
}

/* --- the altar ---------------------------------------------------------------- */

static void
test_altar_block (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "altar");
  const double mensa = 2400.0 * 750 * 120, block = 2100.0 * 450 * 870;

  g_assert_cmpfloat_with_epsilon (fixture_volume (&fixture, kind, FP_PART_MENSA), mensa, 1);
  g_assert_cmpfloat_with_epsilon (fixture_volume (&fixture, kind, FP_PART_SUPPORT), block, 1);
  g_assert_cmpfloat_with_epsilon (fixture_quantity (&fixture, kind, "mensa"), mensa, 1);
  g_assert_cmpfloat_with_epsilon (fixture_quantity (&fixture, kind, "body"), block, 1);

  /* Against the wall nothing overhangs at the back. */
  fixture_set (&fixture, kind, "setting", 1);
  g_assert_cmpfloat_with_epsilon (fixture_volume (&fixture, kind, FP_PART_SUPPORT), 2100.0 * 600 * 870, 1);
}

static void
test_altar_people (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "altar");

  for (guint facing = 0; facing < 2; facing++)
    {
      fixture.form.facing = facing == 0 ? FP_FACING_EAST : FP_FACING_PEOPLE;
      g_autoptr (GArray) ministers = fixture_take (&fixture, kind->ministers, sizeof (FpMinister));
      g_autoptr (GArray) targets = fixture_take (&fixture, kind->targets, sizeof (FpTarget));
      const FpMinister *celebrant = &g_array_index (ministers, FpMinister, 0);
      const FpTarget *host = &g_array_index (targets, FpTarget, 1);
      const double side = facing == 0 ? -1 : 1;

      /* He stands on the people's side when he faces east (common practice, no source); the Host is over that edge. */
      g_assert_cmpfloat (celebrant->at.y * side, >, 375);
      g_assert_cmpfloat (celebrant->facing, ==, facing == 0 ? 0 : 180);
      g_assert_cmpint (host->focus, ==, FP_FOCUS_HOST);
      g_assert_cmpfloat (host->origin.y, ==, 375 * side);
      g_assert_cmpfloat (host->origin.z + 100, ==, facing == 0 ? 2100 : 1700);
    }
  g_autoptr (GArray) crosses = fixture_take (&fixture, kind->strokes, sizeof (FpStroke));
  g_assert_cmpuint (crosses->len, ==, 2 * 5); /* five crosses: Regensburg diocesan building guide, p. 253 */
}

/* --- closed forms ------------------------------------------------------------------ */

/* Three nested steps, by hand: footpace 3010 x 1967 (2400 + 2 x 305; 900 + 1067), each lower one 610 wider and 305
 * deeper, and every one counted only for its own riser. */
static void
test_nested_steps (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "footpace");
  const double by_hand = 152 * (3010.0 * 1967 + 3620.0 * 2272 + 4230.0 * 2577);

  g_assert_cmpfloat_with_epsilon (fixture_quantity (&fixture, kind, "steps and footpace, solid"), by_hand, 1);
  g_assert_cmpfloat_with_epsilon (fixture_quantity (&fixture, kind, "floor of the footpace"), 3010.0 * 1967, 1e-3);
  g_assert_cmpfloat_with_epsilon (fixture_quantity (&fixture, kind, "edges of steps"),
                                  3010 + 3620 + 4230 + 2 * (1967 + 2272 + 2577), 1e-6);
}

static void
test_flight (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "steps");

  fixture_set (&fixture, kind, "count", 4);
  /* Under the n-th tread lie n risers: 1 + 2 + 3 + 4 = 10. */
  g_assert_cmpfloat_with_epsilon (fixture_quantity (&fixture, kind, "steps, solid"), 10 * 3000.0 * 300 * 150, 1);
}

static void
test_pier (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "pier");
  const double w = 600, h = 8000;

  g_assert_cmpfloat_with_epsilon (fixture_volume (&fixture, kind, -1), G_PI * w * w / 4 * h, 1e3);
  fixture_set (&fixture, kind, "shape", 1);
  g_assert_cmpfloat_with_epsilon (fixture_volume (&fixture, kind, -1), w * w * h, 1e3);
  fixture_set (&fixture, kind, "shape", 2);
  g_assert_cmpfloat_with_epsilon (fixture_volume (&fixture, kind, -1), 2 * (sqrt (2) - 1) * w * w * h, 1e3);
}

/* Direction 90: it descends towards the Gospel side, -x. */
static void
test_floor_fall (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "floor");

  fixture_set (&fixture, kind, "fall", 0.05);
  fixture_set (&fixture, kind, "direction", 90);
  fixture_set (&fixture, kind, "level", 100);
  g_autoptr (GArray) surfaces = fp_surfaces_new ();
  kind->surfaces (&fixture.form, surfaces);
  const FpSurface *surface = &g_array_index (surfaces, FpSurface, 0);
  g_assert_cmpfloat_with_epsilon (surface->gx, 0.05, 1e-12);
  g_assert_cmpfloat_with_epsilon (surface->gy, 0, 1e-12);
  g_assert_cmpfloat_with_epsilon (surface->z, 100, 1e-12);

  fixture_set (&fixture, kind, "direction", 0);
  g_autoptr (GArray) east = fp_surfaces_new ();
  kind->surfaces (&fixture.form, east);
  g_assert_cmpfloat_with_epsilon (g_array_index (east, FpSurface, 0).gy, -0.05, 1e-12);

  const FpExtent extent = fixture_extent (&fixture, kind);
  g_assert_cmpfloat_with_epsilon (extent.height, 100 + 0.05 * 3000, 1e-9); /* the corner farthest from the altar */
}

/* --- small things ---------------------------------------------------------------- */

/* The seventh candlestick stands in the middle and moves none of the six (Catholic Encyclopedia I, Altar Candles,
 * p. 348: in line with the others, a little higher). */
static void
test_seventh_candle (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "candlesticks");

  fixture_set (&fixture, kind, "grading", 1);
  const FpExtent six = fixture_extent (&fixture, kind);
  g_assert_cmpfloat (six.height, ==, 500 + 2 * 60 + 300);
  fixture_set (&fixture, kind, "count", 7);
  const FpExtent seven = fixture_extent (&fixture, kind);
  g_assert_cmpfloat (seven.plan.x1, ==, six.plan.x1);
  g_assert_cmpfloat (seven.height, ==, six.height + 60);
  g_assert_cmpfloat (fixture_quantity (&fixture, kind, "candles"), ==, 7);

  fixture_set (&fixture, kind, "spacing", 60);
  g_autofree char *amiss = kind->amiss (&fixture.form);
  g_assert_nonnull (amiss);
}

static void
test_corpus (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "crucifix");
  double foot = G_MAXDOUBLE;
  guint n;

  g_autoptr (FpSolids) solids = fixture_solids (&fixture, kind);
  const FpSolid *s = fp_solids_peek (solids, &n);
  for (guint i = 0; i < n; i++)
    if (s[i].part == FP_PART_CORPUS)
      foot = MIN (foot, fp_solid_box (&s[i]).lo.z);
  g_assert_cmpfloat_with_epsilon (foot, 500, 1e-6);
  fixture_set (&fixture, kind, "corpus", 1150);
  g_autofree char *amiss = kind->amiss (&fixture.form);
  g_assert_nonnull (amiss);
}

/* 6000 with a gate of 1200: two sides of 2400, four communicants of 600 on each. */
static void
test_rail (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "rail");

  g_assert_cmpfloat (fixture_quantity (&fixture, kind, "rail, less the gate"), ==, 4800);
  g_assert_cmpfloat (fixture_quantity (&fixture, kind, "kneeling places"), ==, 8);
  g_assert_cmpfloat_with_epsilon (fixture_quantity (&fixture, kind, "top of the rail"), 4800.0 * 200 * 60, 1e-3);
  fixture_set (&fixture, kind, "returns", 1000);
  g_assert_cmpfloat (fixture_quantity (&fixture, kind, "rail, less the gate"), ==, 6800);
  fixture_set (&fixture, kind, "gate", 0);
  g_assert_cmpfloat (fixture_quantity (&fixture, kind, "gates of two leaves"), ==, 0);
  g_assert_cmpfloat (fixture_quantity (&fixture, kind, "kneeling places"), ==, 10);
  fixture_set (&fixture, kind, "gate", 5900);
  g_autofree char *amiss = kind->amiss (&fixture.form);
  g_assert_nonnull (amiss);
}

static void
test_reredos_gable (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "reredos");
  guint n;
  double gable = 0;

  fixture_set (&fixture, kind, "top", 1);
  g_autoptr (FpSolids) solids = fixture_solids (&fixture, kind);
  const FpSolid *s = fp_solids_peek (solids, &n);
  for (guint i = 0; i < n; i++)
    if (s[i].gx != 0)
      gable += fp_solid_volume (&s[i]);
  g_assert_cmpfloat_with_epsilon (gable, 3000.0 * 900 / 2 * 200, 1e-3); /* half of base times rise, times depth */
}

static void
test_standing_room (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "standing-room");

  fixture_set (&fixture, kind, "spacing", 1000);
  g_autoptr (GArray) places = fixture_take (&fixture, kind->seats, sizeof (FpSeat));
  g_assert_cmpuint (places->len, ==, 5 * 4 + 8 * 4); /* of the L: 5 wide for 4 rows, then 8 wide for 4 */
  g_assert_cmpfloat (g_array_index (places, FpSeat, 0).at.y, ==, 4500);
  g_assert_cmpfloat (g_array_index (places, FpSeat, 0).at.x, ==, -3500);
}

/* ICC A117.1-2003, 802: 36 in wide, or 33 in each where there are two; 48 in deep. CEN/TR 15913:2009: eyes at 1.15 m. */
static void
test_wheelchair_places (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "wheelchair-places");

  for (guint count = 1; count <= 2; count++)
    {
      fixture_set (&fixture, kind, "count", count);
      const FpBox plan = fixture_extent (&fixture, kind).plan;
      g_autoptr (GArray) places = fixture_take (&fixture, kind->seats, sizeof (FpSeat));
      g_assert_cmpfloat_with_epsilon (plan.x1 - plan.x0, count == 1 ? 36 * 25.4 : 2 * 33 * 25.4, 5);
      g_assert_cmpfloat (plan.x1 - plan.x0, >=, count == 1 ? 36 * 25.4 : 2 * 33 * 25.4);
      g_assert_cmpfloat_with_epsilon (plan.y1 - plan.y0, 48 * 25.4, 1);
      g_assert_cmpuint (places->len, ==, count);
      for (guint i = 0; i < count; i++)
        {
          const FpSeat *seat = &g_array_index (places, FpSeat, i);
          g_assert_cmpfloat (seat->eye, ==, 1150);
          g_assert_cmpuint (seat->postures, ==, 1 << FP_POSTURE_SITTING);
          g_assert_true (seat->at.x > plan.x0 && seat->at.x < plan.x1 && seat->at.y > plan.y0 && seat->at.y < plan.y1);
        }
    }
}

static void
test_gallery_front (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "gallery");

  g_assert_cmpfloat_with_epsilon (fixture_volume (&fixture, kind, FP_PART_PANEL), 8000.0 * 100 * 1000, 1e-3);
  g_assert_cmpfloat (fixture_extent (&fixture, kind).top, ==, 3500);
  fixture_set (&fixture, kind, "front-side", 7);
  g_autofree char *amiss = kind->amiss (&fixture.form);
  g_assert_nonnull (amiss);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/worked/schulte", test_schulte);
  g_test_add_func ("/worked/schulte-defaults", test_schulte_defaults);
  g_test_add_func ("/worked/footpace-alone", test_footpace_alone);
  g_test_add_func ("/worked/footpace-sides", test_footpace_sides);
  g_test_add_func ("/worked/bench-count", test_bench_count);
  g_test_add_func ("/pews/numbering", test_pews_numbering);
  g_test_add_func ("/pews/curved", test_pews_curved);
  g_test_add_func ("/pews/stagger", test_pews_stagger);
  g_test_add_func ("/pews/on-a-fall", test_pews_on_a_fall);
  g_test_add_func ("/altar/block", test_altar_block);
  g_test_add_func ("/altar/people", test_altar_people);
  g_test_add_func ("/volumes/nested-steps", test_nested_steps);
  g_test_add_func ("/volumes/flight", test_flight);
  g_test_add_func ("/volumes/pier", test_pier);
  g_test_add_func ("/floor/fall", test_floor_fall);
  g_test_add_func ("/candlesticks/seventh", test_seventh_candle);
  g_test_add_func ("/crucifix/corpus", test_corpus);
  g_test_add_func ("/rail/lengths", test_rail);
  g_test_add_func ("/volumes/gable", test_reredos_gable);
  g_test_add_func ("/standing-room/grid", test_standing_room);
  g_test_add_func ("/wheelchair-places/standard", test_wheelchair_places);
  g_test_add_func ("/gallery/front", test_gallery_front);
  return g_test_run ();
}
