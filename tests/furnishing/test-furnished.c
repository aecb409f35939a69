/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-furnished.c - what furnishes an altar, a sanctuary and a nave, against printed sizes and closed forms */
#include "kind-fixture.h"

#include <math.h>

#define INCH 25.4

/* Without the name of a source, an expected value follows from geometry alone. */

#define assert_near(a, b) g_assert_cmpfloat_with_epsilon (a, b, 1e-6)

static FpBox3
box_of (const Fixture *fixture, const FpKind *kind, int part)
{
  g_autoptr (FpSolids) solids = fixture_solids (fixture, kind);
  FpBox3 box = FP_BOX3_EMPTY;

  for (guint i = 0; i < fp_solids_count (solids); i++)
    if (part < 0 || (int) fp_solids_get (solids, i)->part == part)
      {
        const FpBox3 own = fp_solid_box (fp_solids_get (solids, i));
        fp_box3_add_box (&box, &own);
      }
  return box;
}

static guint
count_of (const Fixture *fixture, const FpKind *kind, FpPart part)
{
  g_autoptr (FpSolids) solids = fixture_solids (fixture, kind);
  guint n = 0;

  for (guint i = 0; i < fp_solids_count (solids); i++)
    n += fp_solids_get (solids, i)->part == part ? 1 : 0;
  return n;
}

static void
assert_amiss (const Fixture *fixture, const FpKind *kind, gboolean amiss)
{
  g_autofree char *sentence = kind->amiss (&fixture->form);

  g_assert_cmpint (sentence != NULL, ==, amiss);
}

/* --- linen and silk ------------------------------------------------------------- */

/* Worked example: mensa 2743 x 914, 991 high (9 ft x 3 ft, Dearmer, later edition, p. 78 n.; 3 ft 3 in, 2nd ed. p. 57).
 * The top cloth reaches to the predella at both ends (Catholic Encyclopedia I, 1907, Altar Cloths) and is exactly as wide
 * as the mensa (Dearmer p. 60): 2743 + 2 x 991 = 4725 long, 914 wide; two more of the size of the mensa. */
static void
test_cloths (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "altar-cloths");

  fixture.form.core = (FpBox) { -2743 / 2.0, -457, 2743 / 2.0, 457 };
  fixture.form.foot = -991;
  fixture.form.head = 1e-9;
  assert_near (fixture_quantity (&fixture, kind, "top cloth as it lies, without hems") / 914, 4725);
  assert_near (fixture_quantity (&fixture, kind, "lower cloths as they lie, without hems"), 2 * 2743.0 * 914);
  assert_near (box_of (&fixture, kind, -1).lo.z, -991);
  /* Round what is 460 wide and 455 deep at its back nothing lies. */
  fixture.form.notch = (FpBox) { -230, 2, 230, 457 };
  assert_near (fixture_quantity (&fixture, kind, "lower cloths as they lie, without hems"), 2 * (2743.0 * 914 - 460 * 455));
  g_autoptr (FpSolids) solids = fixture_solids (&fixture, kind);
  for (guint i = 0; i < fp_solids_count (solids); i++)
    {
      const FpBox3 box = fp_solid_box (fp_solids_get (solids, i));
      const FpBox plan = { box.lo.x, box.lo.y, box.hi.x, box.hi.y };
      g_assert_false (fp_box_overlaps (&plan, &fixture.form.notch));
    }
}

/* Catholic Encyclopedia I (1907), Altar Frontal: the whole front, from the mensa to the predella and from end to end, with
 * a guard of about 3 in at its foot. */
static void
test_frontal (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "frontal");
  FpBox3 box;

  fixture.form.foot = -1000;
  fixture.form.head = 1e-9;
  box = box_of (&fixture, kind, -1);
  assert_near (box.lo.z, -1000);
  assert_near (box.hi.z, 0);
  assert_near (box.hi.x - box.lo.x, 2400);
  g_assert_cmpfloat (box.hi.y, <=, -450);
  g_assert_cmpfloat_with_epsilon (fixture.param[fp_kind_param_index (kind, "guard")], 3 * INCH, 0.5);
  /* Where the people see it from behind as well. */
  fixture_set (&fixture, kind, "sides", 1);
  g_assert_cmpfloat (box_of (&fixture, kind, -1).hi.y, >=, 450);
  g_assert_cmpfloat_with_epsilon (fixture_quantity (&fixture, kind, "frontal"), 2 * 2400.0 * 1000, 1e-3);
}

/* A tent's top is a pyramid of four gores; round 450 by 450 and 600 high, 10 clear, it rises by half of 600. */
static void
test_veil (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "tabernacle-veil");
  const double side = 470, slant = hypot (side / 2, 300);

  assert_near (fixture_quantity (&fixture, kind, "gore of the veil's top, a triangle, over front and back"), 2 * side * slant);
  assert_near (fixture_quantity (&fixture, kind, "gore of the veil's top, a triangle, over the sides"), 2 * side * slant);
  assert_near (fixture_quantity (&fixture, kind, "half of the tabernacle veil"), 2 * 1.5 * 2 * side * 450);
}

/* --- lights ----------------------------------------------------------------------- */

/* UFC 4-730-02 (2004), p. 60: large candlestick about 50 in (printed 1250 mm), candle about 2 in (50 mm) across. */
static void
test_paschal (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "paschal-candlestick");
  const FpBox3 stick = box_of (&fixture, kind, FP_PART_STICK), candle = box_of (&fixture, kind, FP_PART_CANDLE);

  assert_near (stick.hi.z, 1250);
  assert_near (candle.hi.x - candle.lo.x, 50);
  assert_near (candle.lo.z, stick.hi.z);
}

/* Candelabra have three, five or seven lights, and as many flames are drawn. */
static void
test_branched (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "branched-lights");

  for (guint lights = 3; lights <= 7; lights++)
    {
      fixture_set (&fixture, kind, "lights", lights);
      assert_amiss (&fixture, kind, lights % 2 == 0);
      if (lights % 2 == 1)
        g_assert_cmpuint (count_of (&fixture, kind, FP_PART_CANDLE), ==, 2 * lights);
    }
  /* The rule of this program that candles are 3 in apart is met by what it draws. */
  g_assert_cmpfloat (fixture.param[fp_kind_param_index (kind, "apart")], >=, 3 * INCH);
}

/* Catholic Encyclopedia I (1907), Altar Lamp: one at least; if more, uneven. */
static void
test_lamp (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "sanctuary-lamp");

  for (guint n = 1; n <= 7; n++)
    {
      fixture_set (&fixture, kind, "count", n);
      assert_amiss (&fixture, kind, n % 2 == 0);
      g_assert_cmpuint (count_of (&fixture, kind, FP_PART_CANDLE), ==, n);
    }
  /* Hung, all of it is over people's heads; on a bracket it stands out from the wall; on a stand it reaches down. */
  g_assert_cmpfloat (box_of (&fixture, kind, -1).lo.z, >, 2000);
  fixture_set (&fixture, kind, "mount", 1);
  g_assert_cmpfloat (fixture_extent (&fixture, kind).plan.y1, ==, 0);
  fixture_set (&fixture, kind, "mount", 2);
  assert_near (box_of (&fixture, kind, -1).lo.z, 0);
}

/* --- pulpit, lectern ---------------------------------------------------------------- */

/* P. Dearmer, The Parson's Handbook (2nd ed. 1899), p. 45: sides of 38 to 42 in, their top 4 in broad at least. */
static void
test_pulpit (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "pulpit");
  const double parapet = fixture.param[fp_kind_param_index (kind, "parapet")];

  g_assert_cmpfloat (parapet, >=, 38 * INCH);
  g_assert_cmpfloat (parapet, <=, 42 * INCH);
  g_assert_cmpfloat (fixture.param[fp_kind_param_index (kind, "top")], >=, 4 * INCH);
  /* 1200 in risers of 180 at most: seven, the last of them into the pulpit. */
  assert_near (fixture_quantity (&fixture, kind, "risers of the pulpit"), 7);
  g_assert_cmpuint (count_of (&fixture, kind, FP_PART_STEP), ==, 6);
  assert_near (box_of (&fixture, kind, FP_PART_STEP).hi.z, 1200 * 6 / 7.0);
  /* The stair goes where it is told. */
  g_assert_cmpfloat (box_of (&fixture, kind, FP_PART_STEP).lo.y, >, 0);
  fixture_set (&fixture, kind, "stair", 1);
  g_assert_cmpfloat (box_of (&fixture, kind, FP_PART_STEP).lo.x, >, 0);
  fixture_set (&fixture, kind, "stair", 2);
  g_assert_cmpfloat (box_of (&fixture, kind, FP_PART_STEP).hi.x, <, 0);
}

/* UFC 4-730-02 (2004), ch. 3, 2h(2): desk of 22 x 15 in at about 20 degrees, its lower edge 39 to 45 in above its floor. */
static void
test_lectern (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "lectern");
  const double edge = fixture.param[fp_kind_param_index (kind, "height")];

  g_assert_cmpfloat (edge, >=, 39 * INCH);
  g_assert_cmpfloat (edge, <=, 45 * INCH);
  g_assert_cmpfloat_with_epsilon (fixture_extent (&fixture, kind).plan.x1 * 2, 22 * INCH, 2);
  g_assert_cmpfloat_with_epsilon (fixture_extent (&fixture, kind).plan.y1 * 2, 15 * INCH, 2);
  assert_near (box_of (&fixture, kind, FP_PART_SHELF).hi.z, edge + 380 * tan (20 * G_PI / 180));
}

/* --- ministers ------------------------------------------------------------------------ */

static void
test_throne (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "throne");

  /* Three steps of 150; the seat on the uppermost, which is the platform. */
  assert_near (box_of (&fixture, kind, FP_PART_FOOTPACE).hi.z, 450);
  assert_near (box_of (&fixture, kind, FP_PART_STEP).hi.z, 300);
  assert_near (box_of (&fixture, kind, FP_PART_SEAT).lo.z, 450);
  assert_near (box_of (&fixture, kind, FP_PART_STEP).lo.y, -350 - 800 - 2 * 300);
}

static void
test_stalls (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "choir-stalls");

  fixture_set (&fixture, kind, "rows", 2);
  assert_near (fixture_quantity (&fixture, kind, "choir stalls"), 8);
  g_assert_cmpuint (count_of (&fixture, kind, FP_PART_SEAT), ==, 8);
  /* The second row is raised. */
  assert_near (box_of (&fixture, kind, FP_PART_SEAT).hi.z, 150 + 450);
}

/* The frames of a folding seat cross: each leg begins at one side and ends at the other. */
static void
test_faldstool (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "faldstool");
  g_autoptr (FpSolids) solids = fixture_solids (&fixture, kind);
  const FpSolid *leg = fp_solids_get (solids, 0);

  assert_near (fp_solid_foot_at (leg, -325 + 22.5, 0), 0);
  assert_near (fp_solid_top_at (leg, 325 - 22.5, 0), 400);
  assert_near (fp_solid_top_at (leg, 0, 0) - fp_solid_foot_at (leg, 0, 0), 45);
}

/* --- the people -------------------------------------------------------------------------- */

/* UFC 4-730-02 (2004), ch. 3, 2e: 20 in from shoulder to shoulder, 36 in (printed 900 mm) from back to back. */
static void
test_chairs (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "chairs");
  g_autoptr (GArray) seats = fixture_take (&fixture, kind->seats, sizeof (FpSeat));
  const FpSeat *first = &g_array_index (seats, FpSeat, 0), *next = &g_array_index (seats, FpSeat, 1);
  const FpSeat *behind = &g_array_index (seats, FpSeat, 6);

  g_assert_cmpuint (seats->len, ==, 18);
  g_assert_cmpfloat_with_epsilon (next->at.x - first->at.x, 20 * INCH, 0.5);
  assert_near (first->at.y - behind->at.y, 900);
  g_assert_cmpuint (behind->row, ==, 2);
  g_assert_cmpfloat (first->at.x, <, 0); /* numbered from the Gospel side */
}

/* ADA Standards (2010), read in quotation: slope 1:12 at most (405.2), 30 in (760 mm) of rise in one run (405.6), landings
 * of 60 in (405.7).  1600 then takes three runs: 1600 x 12 + 3 x 1525 in all. */
static void
test_ramp (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "ramp");
  FpBox3 box;

  fixture_set (&fixture, kind, "rise", 1600);
  box = box_of (&fixture, kind, FP_PART_STEP);
  assert_near (box.hi.y, 1600 * 12 + 3 * 1525);
  assert_near (box.hi.z, 1600);
  assert_near (box.hi.x - box.lo.x, 1000 + 2 * 50);
  g_assert_cmpuint (count_of (&fixture, kind, FP_PART_STEP), ==, 6);
  fixture_set (&fixture, kind, "rise", 760);
  assert_near (box_of (&fixture, kind, FP_PART_STEP).hi.y, 760 * 12 + 1525);
  /* Handrails go with the slope: as high over its foot as over its head. */
  box = box_of (&fixture, kind, FP_PART_RAIL_TOP);
  assert_near (box.hi.z, 760 + 900);
  assert_near (box.lo.z, 900 - 42);
}

static void
test_handrail (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "handrail");
  const FpBox3 bar = box_of (&fixture, kind, FP_PART_RAIL_TOP);

  /* ADA Standards (2010), 505.4, from memory: 34 to 38 in. */
  g_assert_cmpfloat (fixture.param[fp_kind_param_index (kind, "height")], >=, 34 * INCH);
  g_assert_cmpfloat (fixture.param[fp_kind_param_index (kind, "height")], <=, 38 * INCH);
  assert_near (bar.hi.z, 900 + 450);
  assert_near (bar.hi.y - bar.lo.y, 900 + 2 * 305);
  assert_near (fixture_quantity (&fixture, kind, "handrail"), hypot (900, 450) + 610);
}

/* The vessels fit on a credence of 30 x 12 in (UFC 4-730-02, 2004, ch. 3, 2h(5)). */
static void
test_vessels (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "credence-vessels");
  const FpBox plan = fixture_extent (&fixture, kind).plan;

  g_assert_cmpfloat (plan.x1 - plan.x0, <=, 30 * INCH);
  g_assert_cmpfloat (plan.y1 - plan.y0, <=, 12 * INCH);
}

static void
test_font (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "font");
  const double flat = 850 / 2.0;

  assert_near (box_of (&fixture, kind, FP_PART_BODY).hi.z, 150 + 1000);
  assert_near (box_of (&fixture, kind, FP_PART_DOOR).lo.z, 150 + 1000);
  assert_near (box_of (&fixture, kind, FP_PART_BODY).hi.x, flat);
  /* An octagon whose flats are so far apart has 8 f^2 tan (pi / 8). */
  assert_near (fixture_volume (&fixture, kind, FP_PART_STEP), 150 * 8 * pow (flat * 0.8 + 450, 2) * tan (G_PI / 8));
  fixture_set (&fixture, kind, "cover", 0);
  g_assert_cmpuint (count_of (&fixture, kind, FP_PART_DOOR), ==, 0);
}

/* --- reredos and rail ------------------------------------------------------------------ */

/* Shut, the wings lie before the panel and meet in the middle; opened by half a turn they continue it. */
static void
test_wings (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "reredos");

  g_assert_cmpuint (count_of (&fixture, kind, FP_PART_DOOR), ==, 0);
  fixture_set (&fixture, kind, "wings", 1500);
  fixture_set (&fixture, kind, "opening", 0);
  g_assert_cmpuint (count_of (&fixture, kind, FP_PART_DOOR), ==, 2);
  assert_near (box_of (&fixture, kind, FP_PART_DOOR).hi.x, 1500);
  assert_near (box_of (&fixture, kind, FP_PART_DOOR).hi.y, -100);
  fixture_set (&fixture, kind, "opening", 180);
  assert_near (box_of (&fixture, kind, FP_PART_DOOR).hi.x, 3000);
  fixture_set (&fixture, kind, "opening", 90);
  assert_near (box_of (&fixture, kind, FP_PART_DOOR).lo.y, -100 - 1500);
  assert_amiss (&fixture, kind, FALSE);
  fixture_set (&fixture, kind, "wings", 1600);
  assert_amiss (&fixture, kind, TRUE);
}

/* An arc over a chord of 6000 that rises by 900 has the radius (3000^2 + 900^2) / 1800 = 5450. */
static void
test_bowed_rail (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "rail");
  g_autoptr (GArray) straight = fixture_take (&fixture, kind->seats, sizeof (FpSeat)), seats = NULL;
  const double radius = 5450, middle = radius - 900;

  fixture_set (&fixture, kind, "bow", 900);
  assert_near (fixture_extent (&fixture, kind).plan.y0, -900 - 100);
  assert_near (box_of (&fixture, kind, FP_PART_RAIL_TOP).hi.x, 3000);
  seats = fixture_take (&fixture, kind->seats, sizeof (FpSeat));
  g_assert_cmpuint (seats->len, >=, straight->len);
  for (guint i = 0; i < seats->len; i++)
    {
      const FpSeat *seat = &g_array_index (seats, FpSeat, i);
      /* As far before the rail as before a straight one, and facing it. */
      assert_near (hypot (seat->at.x, seat->at.y - middle), radius + 100 + 150);
      assert_near (-sin (seat->facing * G_PI / 180), -seat->at.x / (radius + 250));
    }
}

/* UFC 4-730-02 (2004), ch. 3, 2g: a cushion of about 3 in on a ledge of about 10 in (250 mm); Catholic Encyclopedia I (1907),
 * Altar Rail: a cloth about 2 ft wide, fastened on the sanctuary side. */
static void
test_rail_cloths (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "rail");
  FpBox3 box;

  g_assert_cmpuint (count_of (&fixture, kind, FP_PART_CLOTH), ==, 0);
  fixture_set (&fixture, kind, "cushion", 75);
  box = box_of (&fixture, kind, FP_PART_CLOTH);
  assert_near (box.hi.z, 75);
  assert_near (box.hi.y - box.lo.y, 250);
  assert_near (box.hi.y, -100);
  fixture_set (&fixture, kind, "cushion", 0);
  fixture_set (&fixture, kind, "cloth", 1);
  box = box_of (&fixture, kind, FP_PART_CLOTH);
  assert_near (box.hi.z - box.lo.z, 610);
  g_assert_cmpfloat (box.lo.y, >=, 100);
}

static FpQuantity
quantity_of (const Fixture *fixture, const FpKind *kind, const char *what)
{
  g_autoptr (GArray) found = fixture_take (fixture, kind->quantities, sizeof (FpQuantity));

  for (guint i = 0; i < found->len; i++)
    if (strcmp (g_array_index (found, FpQuantity, i).what, what) == 0)
      return g_array_index (found, FpQuantity, i);
  return (FpQuantity) { 0 };
}

/* Of a rail of 6000 with a gate of 1200 there are 2400 on either side. An arc over a chord of 6000 that rises by 900 has the
 * radius 5450. */
static void
test_rail_cloth_pieces (void)
{
  Fixture fixture;
  const FpKind *kind = fixture_open (&fixture, "rail");
  FpQuantity cloth;

  assert_near (quantity_of (&fixture, kind, "Communion cloth").amount, 0);
  fixture_set (&fixture, kind, "cloth", 1);
  cloth = quantity_of (&fixture, kind, "Communion cloth");
  assert_near (cloth.amount, 2);
  assert_near (cloth.size.x, 2400);
  assert_near (quantity_of (&fixture, kind, "Communion cloth over the gate").amount, 0);
  fixture_set (&fixture, kind, "cloth", 2);
  assert_near (quantity_of (&fixture, kind, "Communion cloth").size.x, 2400);
  assert_near (quantity_of (&fixture, kind, "Communion cloth over the gate").size.x, 1200);
  fixture_set (&fixture, kind, "gate", 0);
  cloth = quantity_of (&fixture, kind, "Communion cloth");
  assert_near (cloth.amount, 1);
  assert_near (cloth.size.x, 6000);
  assert_near (quantity_of (&fixture, kind, "Communion cloth over the gate").amount, 0);
  /* On the inner side of the top, 200 wide; it ends where its outer edge is 3000 from the axis. */
  fixture_set (&fixture, kind, "bow", 900);
  cloth = quantity_of (&fixture, kind, "Communion cloth");
  assert_near (cloth.amount, 1);
  assert_near (cloth.size.x, 2 * (5450 - 100) * asin (3000.0 / 5550));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/furnished/cloths", test_cloths);
  g_test_add_func ("/furnished/frontal", test_frontal);
  g_test_add_func ("/furnished/veil", test_veil);
  g_test_add_func ("/furnished/paschal", test_paschal);
  g_test_add_func ("/furnished/branched", test_branched);
  g_test_add_func ("/furnished/lamp", test_lamp);
  g_test_add_func ("/furnished/pulpit", test_pulpit);
  g_test_add_func ("/furnished/lectern", test_lectern);
  g_test_add_func ("/furnished/throne", test_throne);
  g_test_add_func ("/furnished/stalls", test_stalls);
  g_test_add_func ("/furnished/faldstool", test_faldstool);
  g_test_add_func ("/furnished/chairs", test_chairs);
  g_test_add_func ("/furnished/ramp", test_ramp);
  g_test_add_func ("/furnished/handrail", test_handrail);
  g_test_add_func ("/furnished/vessels", test_vessels);
  g_test_add_func ("/furnished/font", test_font);
  g_test_add_func ("/furnished/wings", test_wings);
  g_test_add_func ("/furnished/bowed-rail", test_bowed_rail);
  g_test_add_func ("/furnished/rail-cloths", test_rail_cloths);
  g_test_add_func ("/furnished/rail-cloth-pieces", test_rail_cloth_pieces);
  return g_test_run ();
}
