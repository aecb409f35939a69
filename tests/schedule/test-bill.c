/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-bill.c - slabs, weights and costs of an alternative */
#include "footpace/bearing.h"
#include "footpace/bill.h"
#include "footpace/schedule.h"

#include <math.h>
#include <string.h>

/* --- a project, thing by thing ---------------------------------------------- */

typedef struct { const char *id; double value; } Value;

static FpItem *
make (const char *kind_id, const char *on, const Value *values)
{
  g_autoptr (GError) error = NULL;
  const FpKind *kind = fp_kind_find (kind_id);
  double param[FP_PARAM_MAX];
  const FpItemInit init = { .id = kind_id, .kind = kind, .on = on, .param = param };
  FpItem *item;

  fp_kind_defaults (kind, param);
  for (; values->id != NULL; values++)
    param[fp_kind_param_index (kind, values->id)] = values->value;
  item = fp_item_new (&init, &error);
  g_assert_no_error (error);
  return item;
}

static void
take (FpProject **project, FpProject *next, const GError *error)
{
  g_assert_no_error (error);
  fp_project_unref (*project);
  *project = next;
}

static void
add (FpProject **project, const char *kind_id, const char *on, const Value *values)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FpItem) item = make (kind_id, on, values);
  FpProject *next = fp_project_with_item (*project, 0, item, &error);

  take (project, next, error);
}

static FpProject *
empty (const FpWorks *works)
{
  const FpBrief brief = { .title = "Sanctuary of Saint Vedast", .place = "Oakhanger", .ministers = 3, .percentile = 50 };
  g_autoptr (FpProject) project = fp_project_new (&brief);
  g_autoptr (GError) error = NULL;
  FpProject *own = fp_project_with_works (project, works, &error);

  g_assert_no_error (error);
  return own;
}

static FpBill *
bill_of (const FpProject *project)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);

  return fp_bill_new (scene);
}

/* A solid altar upon two steps on three sides. */
static FpProject *
sanctuary (const FpWorks *works)
{
  static const Value steps[] = {
    { "count", 2 }, { "riser", 150 }, { "tread", 300 }, { "front", 1000 }, { "behind", 0 }, { "ends", 300 }, { "sides", 1 },
    { NULL, 0 },
  };
  static const Value altar[] = {
    { "length", 2000 }, { "depth", 800 }, { "height", 1000 }, { "overhang", 0 }, { NULL, 0 },
  };
  FpProject *project = empty (works);

  add (&project, "footpace", NULL, steps);
  add (&project, "altar", "footpace", altar);
  return project;
}

/* --- slabs -------------------------------------------------------------------- */

static void
assert_slabs (const FpBill *bill, const char *what, const char *where, guint number, double length, double width)
{
  const GArray *rows = fp_bill_rows (bill);

  for (guint i = 0; i < rows->len; i++)
    {
      const FpBillRow *row = &g_array_index (rows, FpBillRow, i);

      if (strcmp (row->what, what) != 0 || g_strcmp0 (row->where, where) != 0 || fabs (row->size.x - length) > 0.01)
        continue;
      g_assert_cmpuint (row->pieces, ==, number);
      g_assert_cmpfloat_with_epsilon (row->size.y, width, 0.01);
      g_assert_cmpfloat (row->size.z, ==, 40);
      return;
    }
  g_test_message ("%s, %s, %g", what, where, length);
  g_assert_not_reached ();
}

/* As the usual works, but of slabs alone: with no joint and no nosing. */
static FpWorks
close_jointed (void)
{
  FpWorks works = fp_works_usual;

  works.joint = 0;
  return works;
}

/* Reckoned by hand: the footpace is 2600 by 1800, the step below it 3200 by 2100; slabs of 40, none longer than 1500. */
static void
test_slabs (void)
{
  const FpWorks works = close_jointed ();
  g_autoptr (FpProject) project = sanctuary (&works);
  g_autoptr (FpBill) bill = bill_of (project);

  assert_slabs (bill, "risers", "step 1, in front", 3, 3200 / 3.0, 110);
  assert_slabs (bill, "risers", "step 1, at the ends", 4, 2060 / 2.0, 110);
  /* Over three risers: two whole and two halves, so that joints are broken. */
  assert_slabs (bill, "treads", "step 1, in front", 2, 3200 / 6.0, 340);
  assert_slabs (bill, "treads", "step 1, in front", 2, 3200 / 3.0, 340);
  /* The tread has a joint in the middle, so the riser on it has none, and so on: rows of two, three and two. */
  assert_slabs (bill, "risers", "step 2, in front", 1, 1300, 110);
  assert_slabs (bill, "risers", "step 2, in front", 2, 650, 110);
  assert_slabs (bill, "floor of slabs", "of the uppermost step", 5, 1300, 600);
  assert_slabs (bill, "floor of slabs", "of the uppermost step", 2, 650, 600);
}

/* The same with a nosing of 25 and joints of 3: three slabs with two joints between them make the run, which is as much
 * shorter at either end as the nosing projects there; the riser stands between two beds under the tread. */
static void
test_joints_and_nosing (void)
{
  FpWorks works = fp_works_usual;

  works.nosing = 25;
  g_autoptr (FpProject) project = sanctuary (&works);
  g_autoptr (FpBill) bill = bill_of (project);
  assert_slabs (bill, "risers", "step 1, in front", 3, (3200 - 2 * 25 - 2 * 3) / 3.0, 150 - 40 - 2 * 3);
  assert_slabs (bill, "risers", "step 1, at the ends", 4, (2100 - (25 + 40 + 3) - 3) / 2.0, 104);
  assert_slabs (bill, "treads", "step 1, at the ends", 4, (2100 - (300 + 25 + 40 + 3) - 3) / 2.0, 300 + 25 + 40);
}

static double
volume_of (const FpBill *bill, const char *id)
{
  const GArray *rows = fp_bill_rows (bill);
  double volume = 0;

  for (guint i = 0; i < rows->len; i++)
    {
      const FpBillRow *row = &g_array_index (rows, FpBillRow, i);

      if (strcmp (fp_item_id (row->placed->item), id) == 0 && !isnan (row->volume))
        volume += row->volume;
    }
  return volume;
}

/* Slabs and core, which has the joints too, fill what the steps fill, however they are laid, and no slab is longer than it may
 * be. */
static void
test_all_is_filled (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20261128);

  for (guint i = 0; i < 200; i++)
    {
      const Value steps[] = {
        { "count", g_rand_int_range (rand, 1, 8) }, { "riser", g_rand_double_range (rand, 80, 250) },
        { "tread", g_rand_double_range (rand, 200, 900) }, { "front", g_rand_double_range (rand, 600, 3000) },
        { "behind", g_rand_double_range (rand, 100, 2000) }, { "ends", g_rand_double_range (rand, 100, 2000) },
        { "sides", g_rand_int_range (rand, 0, 3) }, { NULL, 0 },
      };
      FpWorks works = fp_works_usual;
      double solid = 0;

      works.slab = g_rand_double_range (rand, 10, 60);
      works.longest = g_rand_double_range (rand, 300, 6000);
      works.joint = g_rand_double_range (rand, 0, 8);
      g_autoptr (FpProject) project = empty (&works);
      add (&project, "footpace", NULL, steps);
      g_autoptr (FpBill) bill = bill_of (project);
      const FpPlaced *placed = fp_scene_placed (fp_bill_scene (bill), NULL);
      g_autoptr (GArray) found = g_array_new (FALSE, FALSE, sizeof (FpQuantity));
      fp_item_kind (placed->item)->quantities (&placed->form, found);
      for (guint k = 0; k < found->len; k++)
        if (g_array_index (found, FpQuantity, k).type == FP_AMOUNT_VOLUME)
          solid += g_array_index (found, FpQuantity, k).amount;
      g_assert_cmpfloat_with_epsilon (volume_of (bill, "footpace") / solid, 1, 1e-9);
      for (guint k = 0; k < fp_bill_rows (bill)->len; k++)
        if (g_array_index (fp_bill_rows (bill), FpBillRow, k).heading == FP_HEADING_STEPS)
          g_assert_cmpfloat (g_array_index (fp_bill_rows (bill), FpBillRow, k).size.x, <=, works.longest + 1e-6);
    }
}

/* --- weights ------------------------------------------------------------------ */

static const FpBearing *
bearing_of (const GArray *bearings, const char *id)
{
  for (guint i = 0; i < bearings->len; i++)
    if (strcmp (fp_item_id (g_array_index (bearings, FpBearing, i).placed->item), id) == 0)
      return &g_array_index (bearings, FpBearing, i);
  g_assert_not_reached ();
}

/* 1.50 x 0.75 x 0.95 m at 28 kN/m3 weigh 29.925 kN, which are 3051.5 kg at standard gravity, and bear on their footprint with
 * 26.6 kN/m2: arithmetic; 28 kN/m3 is slate in EN 1991-1-1, Table A.5. */
static void
test_solid_altar (void)
{
  static const Value altar[] = {
    { "length", 1500 }, { "depth", 750 }, { "height", 950 }, { "overhang", 0 }, { NULL, 0 },
  };
  FpWorks works = fp_works_usual;

  works.stone = FP_STONE_SLATE;
  works.solid = TRUE;
  works.joint = 0;
  g_autoptr (FpProject) project = empty (&works);
  add (&project, "altar", NULL, altar);
  g_autoptr (FpBill) bill = bill_of (project);
  g_autoptr (GArray) bearings = fp_scene_bearings (fp_bill_scene (bill));
  const FpBearing *b = bearing_of (bearings, "altar");
  g_assert_cmpfloat_with_epsilon (b->own, 3051.5, 0.05);
  g_assert_cmpfloat_with_epsilon (b->area, 1.125e6, 1);
  g_assert_cmpfloat_with_epsilon (b->pressure, 26.6, 0.001);
}

/* Steps are nested blocks, which stand on the area of the lowest; what stands on them bears with them. */
static void
test_steps_bear (void)
{
  FpWorks works = close_jointed ();

  works.solid = TRUE;
  g_autoptr (FpProject) project = sanctuary (&works);
  g_autoptr (FpBill) bill = bill_of (project);
  g_autoptr (GArray) bearings = fp_scene_bearings (fp_bill_scene (bill));
  const FpBearing *steps = bearing_of (bearings, "footpace"), *altar = bearing_of (bearings, "altar");

  g_assert_cmpfloat_with_epsilon (steps->area, 3200.0 * 2100.0, 1);
  g_assert_cmpfloat_with_epsilon (steps->all, steps->own + altar->own, 1e-6);
  g_assert_cmpfloat_with_epsilon (steps->pressure, steps->all * FP_GRAVITY / 1000 / (3.2 * 2.1), 1e-6);
  g_assert_cmpfloat_with_epsilon (altar->own, 2.0 * 0.8 * 1.0 * 25.9 * 1000 / FP_GRAVITY, 0.05);
  g_assert_true (&g_array_index (bearings, FpBearing, 0) == altar);
}

static const FpBillRow *
row_of (const FpBill *bill, const char *id, const char *what)
{
  for (guint i = 0; i < fp_bill_rows (bill)->len; i++)
    {
      const FpBillRow *row = &g_array_index (fp_bill_rows (bill), FpBillRow, i);

      if (strcmp (fp_item_id (row->placed->item), id) == 0 && strcmp (row->what, what) == 0)
        return row;
    }
  return NULL;
}

/* 2000 by 800 by 1000 with a mensa of 120: a body of 880 with slabs of 40 round a core, which is 1920 by 720 and as high as the
 * body; by hand, without joints.  Limestone 165 lb/cu ft, concrete 24 kN/m3 (ASCE 7 Table C3-1, EN 1991-1-1 Table A.1, from
 * memory). */
static void
test_clad_altar (void)
{
  const FpWorks works = close_jointed ();
  g_autoptr (FpProject) project = sanctuary (&works);
  g_autoptr (FpBill) bill = bill_of (project);
  const FpBillRow *core = row_of (bill, "altar", "core of concrete"), *mensa = row_of (bill, "altar", "mensa");

  assert_slabs (bill, "slabs of the body", "in front", 2, 1000, 880);
  assert_slabs (bill, "slabs of the body", "at the ends", 2, 720, 880);
  assert_slabs (bill, "slabs of the body", "behind", 2, 1000, 880);
  g_assert_cmpfloat_with_epsilon (core->volume, 1920.0 * 720 * 880, 1);
  g_assert_cmpfloat_with_epsilon (core->mass, 1.92 * 0.72 * 0.88 * 24000 / FP_GRAVITY, 0.01);
  /* 165 lb is 74.84 kg, a cubic foot 0.0283168 m3 (NIST SP 811); printed as 25.9 kN/m3. */
  g_assert_cmpfloat_with_epsilon (mensa->mass, 2.0 * 0.8 * 0.12 * 74.84 / 0.0283168, 0.5);
  g_assert_cmpuint (mensa->pieces, ==, 1);
  g_assert_cmpstr (row_of (bill, "altar", "slabs of the body")->marks, !=, mensa->marks);
  g_assert_true (fp_bill_heaviest (bill, 0, 0) == mensa);
}

/* What stands there already is told as it stands: nobody knows how it was built. */
static void
test_kept_is_solid (void)
{
  static const Value usual[] = { { NULL, 0 } };
  g_autoptr (GError) error = NULL;
  g_autoptr (FpItem) steps = make ("footpace", NULL, usual);
  g_autoptr (FpProject) project = empty (&fp_works_usual);

  take (&project, fp_project_with_survey_item (project, steps, &error), error);
  g_autoptr (FpBill) bill = bill_of (project);
  g_assert_null (row_of (bill, "footpace", "treads"));
  g_assert_null (row_of (bill, "footpace", "core of concrete"));
  g_assert_cmpint (row_of (bill, "footpace", "steps and footpace, solid")->work, ==, FP_WORK_KEPT);
}

/* Brass at 84 kN/m3 (EN 1991-1-1, Table A.4: 83 to 85). */
static void
test_metal (void)
{
  static const Value usual[] = { { NULL, 0 } };
  g_autoptr (FpProject) project = empty (&fp_works_usual);

  add (&project, "altar", NULL, usual);
  add (&project, "candlesticks", "altar", usual);
  g_autoptr (FpBill) bill = bill_of (project);
  const FpBillRow *sticks = row_of (bill, "candlesticks", "candlesticks");
  g_assert_cmpfloat (sticks->volume, >, 0);
  g_assert_cmpfloat_with_epsilon (sticks->mass, sticks->volume / 1e9 * 84000 / FP_GRAVITY, 1e-6);
  /* So much that one lifts it, and not so little that it would fall over: common practice, no source. */
  g_assert_cmpfloat (sticks->mass / sticks->amount, >, 0.5);
  g_assert_cmpfloat (sticks->mass / sticks->amount, <, 25);
}

/* --- costs -------------------------------------------------------------------- */

static void
test_costs (void)
{
  const FpRate rate[] = {
    { "altar", "mensa", FP_AMOUNT_VOLUME, FP_UNITS_METRIC, 4000 },
    { "footpace", "treads", FP_AMOUNT_LENGTH, FP_UNITS_IMPERIAL, 10 },
    { "footpace", "setting up", FP_AMOUNT_NUMBER, FP_UNITS_METRIC, 500 },
    { "chair", "setting up", FP_AMOUNT_NUMBER, FP_UNITS_METRIC, 9999 },
  };
  FpWorks works = close_jointed ();
  double mensa = 0;
  guint unpriced = 0;

  works.rate = rate;
  works.n_rates = G_N_ELEMENTS (rate);
  g_autoptr (FpProject) project = sanctuary (&works);
  g_autoptr (FpBill) bill = bill_of (project);
  for (guint i = 0; i < fp_bill_rows (bill)->len; i++)
    if (strcmp (g_array_index (fp_bill_rows (bill), FpBillRow, i).what, "mensa") == 0)
      mensa += g_array_index (fp_bill_rows (bill), FpBillRow, i).amount;
  g_assert_cmpfloat (mensa, >, 0);
  /* Treads: 3200 in front and twice 1760 at the ends. */
  /* As anybody reckons who has only what is printed: the mensa to a thousandth of a cubic metre, lengths to a hundredth of a metre,
   * and each line to the cent. */
  g_assert_cmpfloat_with_epsilon (fp_bill_cost (bill, FP_N_WORKS),
                                  round (mensa / 1e6) / 1e3 * 4000 + round (3200 / 304.8 * 1000) / 100 + 2 * round (1760 / 304.8 * 1000) / 100 + 500,
                                  0.02);
  for (guint i = 0; i < fp_bill_rows (bill)->len; i++)
    {
      const FpBillRow *row = &g_array_index (fp_bill_rows (bill), FpBillRow, i);

      g_assert_true (isnan (row->cost) || fabs (row->cost * 100 - round (row->cost * 100)) < 1e-6);
      g_assert_cmpint (row->unpriced, ==, isnan (row->cost) && row->work != FP_WORK_KEPT);
      unpriced += row->unpriced ? 1 : 0;
    }
  g_assert_cmpuint (unpriced, >, 0);
  g_assert_cmpuint (fp_bill_unpriced (bill, FP_N_WORKS), ==, unpriced);
  g_assert_cmpuint (fp_bill_unpriced (bill, FP_WORK_REMOVED), ==, 0);
  g_assert_true (isnan (fp_bill_cost (bill, FP_WORK_REMOVED)));
}

/* What is kept costs nothing, what is removed the taking down alone. */
static void
test_removed (void)
{
  static const Value usual[] = { { NULL, 0 } };
  const FpRate rate[] = {
    { "altar", "mensa", FP_AMOUNT_VOLUME, FP_UNITS_METRIC, 4000 },
    { "altar", "taking down", FP_AMOUNT_NUMBER, FP_UNITS_METRIC, 750 },
  };
  FpWorks works = fp_works_usual;
  g_autoptr (GError) error = NULL;
  g_autoptr (FpItem) altar = make ("altar", NULL, usual);

  works.rate = rate;
  works.n_rates = G_N_ELEMENTS (rate);
  g_autoptr (FpProject) project = empty (&works);
  take (&project, fp_project_with_survey_item (project, altar, &error), error);
  g_autoptr (FpBill) kept = bill_of (project);
  g_assert_true (isnan (fp_bill_cost (kept, FP_N_WORKS)));
  g_assert_cmpuint (fp_bill_unpriced (kept, FP_N_WORKS), ==, 0);
  take (&project, fp_project_with_fate (project, 0, "altar", FP_FATE_REMOVED, NULL, NULL, &error), error);
  g_autoptr (FpBill) removed = bill_of (project);
  g_assert_cmpfloat (fp_bill_cost (removed, FP_N_WORKS), ==, 750);
  g_assert_cmpfloat (fp_bill_cost (removed, FP_WORK_REMOVED), ==, 750);
  g_autoptr (GArray) bearings = fp_scene_bearings (fp_bill_scene (removed));
  g_assert_cmpuint (bearings->len, ==, 0);
}

/* --- candles, linen ------------------------------------------------------------ */

static void
test_candles (void)
{
  static const Value six[] = { { "count", 6 }, { "candle", 300 }, { NULL, 0 } };
  static const Value usual[] = { { NULL, 0 } };
  FpWorks works = fp_works_usual;
  guint found = 0;

  works.burns = 25;
  g_autoptr (FpProject) project = empty (&works);
  add (&project, "altar", NULL, usual);
  add (&project, "candlesticks", "altar", six);
  g_autoptr (FpBill) bill = bill_of (project);
  for (guint i = 0; i < fp_bill_rows (bill)->len; i++)
    {
      const FpBillRow *row = &g_array_index (fp_bill_rows (bill), FpBillRow, i);

      if (row->heading == FP_HEADING_LINEN && strcmp (row->what, "Top cloth") == 0)
        found++;
      if (row->heading != FP_HEADING_CANDLES || row->type != FP_AMOUNT_NUMBER || row->pieces == 0)
        continue;
      g_assert_cmpuint (row->pieces, ==, 6);
      g_assert_cmpfloat (row->size.x, ==, 300);
      g_assert_cmpfloat (row->hours, ==, 12);
      found++;
    }
  g_assert_cmpuint (found, ==, 2);
}

static FpHeading
heading_of (const FpBill *bill, const char *id, FpAmountType type)
{
  for (guint i = 0; i < fp_bill_rows (bill)->len; i++)
    {
      const FpBillRow *row = &g_array_index (fp_bill_rows (bill), FpBillRow, i);

      if (strcmp (fp_item_id (row->placed->item), id) == 0 && row->type == type)
        return row->heading;
    }
  g_assert_not_reached ();
}

/* A frontal has an area as a platform has, and is no paving. */
static void
test_headings (void)
{
  static const Value usual[] = { { NULL, 0 } }, step[] = { { "step", 150 }, { NULL, 0 } };
  g_autoptr (FpProject) project = empty (&fp_works_usual);

  add (&project, "altar", NULL, usual);
  add (&project, "frontal", "altar", usual);
  add (&project, "chair", NULL, step);
  g_autoptr (FpBill) bill = bill_of (project);
  g_assert_cmpint (heading_of (bill, "frontal", FP_AMOUNT_AREA), ==, FP_HEADING_LINEN);
  g_assert_cmpint (heading_of (bill, "chair", FP_AMOUNT_AREA), ==, FP_HEADING_PAVING);
  g_assert_cmpint (heading_of (bill, "altar", FP_AMOUNT_VOLUME), ==, FP_HEADING_ALTAR);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bill/slabs", test_slabs);
  g_test_add_func ("/bill/joints-and-nosing", test_joints_and_nosing);
  g_test_add_func ("/bill/clad-altar", test_clad_altar);
  g_test_add_func ("/bill/kept-is-solid", test_kept_is_solid);
  g_test_add_func ("/bill/metal", test_metal);
  g_test_add_func ("/bill/all-is-filled", test_all_is_filled);
  g_test_add_func ("/bill/solid-altar", test_solid_altar);
  g_test_add_func ("/bill/steps-bear", test_steps_bear);
  g_test_add_func ("/bill/costs", test_costs);
  g_test_add_func ("/bill/removed", test_removed);
  g_test_add_func ("/bill/candles", test_candles);
  g_test_add_func ("/bill/headings", test_headings);
  return g_test_run ();
}
