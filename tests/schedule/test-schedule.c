/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-schedule.c - quantities of an alternative */
#include "footpace/bill.h"
#include "footpace/schedule.h"

#include <math.h>

#include <string.h>

/* --- a project, thing by thing ---------------------------------------------- */

static FpItem *
make (const char *id, const char *kind_id, const char *on, FpPlace place, const double *param)
{
  g_autoptr (GError) error = NULL;
  const FpItemInit init = { .id = id, .kind = fp_kind_find (kind_id), .on = on, .place = place, .param = param };
  FpItem *item = fp_item_new (&init, &error);

  g_assert_no_error (error);
  return item;
}

static void
take (FpProject **project, FpProject *next, GError *error)
{
  g_assert_no_error (error);
  fp_project_unref (*project);
  *project = next;
}

static void
add (FpProject **project, gboolean to_survey, FpItem *item)
{
  GError *error = NULL;
  FpProject *next = to_survey ? fp_project_with_survey_item (*project, item, &error)
                              : fp_project_with_item (*project, 0, item, &error);

  take (project, next, error);
  fp_item_unref (item);
}

static FpProject *
empty (void)
{
  const FpBrief brief = {
    .title = "Sanctuary of Saint Vedast", .place = "Oakhanger", .client = "", .author = "", .note = "",
    .celebrations = FP_CELEBRATION_LOW, .ministers = 3, .percentile = 50,
  };

  return fp_project_new (&brief);
}

/* mm3 in all lines of a thing. */
static double
volume_of (const FpBill *bill, const char *id)
{
  double volume = 0;

  for (guint i = 0; i < fp_bill_rows (bill)->len; i++)
    {
      const FpBillRow *row = &g_array_index (fp_bill_rows (bill), FpBillRow, i);
      if (strcmp (fp_item_id (row->placed->item), id) == 0 && !isnan (row->volume))
        volume += row->volume;
    }
  return volume;
}

static double
amount_of (const FpBill *bill, const char *id, const char *what)
{
  double amount = 0;

  for (guint i = 0; i < fp_bill_rows (bill)->len; i++)
    {
      const FpBillRow *row = &g_array_index (fp_bill_rows (bill), FpBillRow, i);
      if (strcmp (fp_item_id (row->placed->item), id) == 0 && strcmp (row->what, what) == 0)
        amount += row->amount;
    }
  return amount;
}

/* --- stone -------------------------------------------------------------------- */

/* Three steps after Schulte (Catholic Encyclopedia I, 1907: risers 6 in, treads 12, footpace 42 in front and 12 beyond
 * the ends) round an altar of 9 x 3 ft (P. Dearmer, later edition, p. 78 n.), in inches by hand:
 * footpace 132 x 78, then 156 x 90, 180 x 102; each counts for one riser. */
static void
test_nested_steps (void)
{
  g_autoptr (FpProject) project = empty ();
  const FpKind *footpace = fp_kind_find ("footpace"), *altar = fp_kind_find ("altar");
  double steps[FP_PARAM_MAX], mensa[FP_PARAM_MAX];
  const double cubic_inches = 6 * (132.0 * 78 + 156.0 * 90 + 180.0 * 102);

  fp_kind_defaults (footpace, steps);
  fp_kind_defaults (altar, mensa);
  steps[fp_kind_param_index (footpace, "riser")] = 6 * 25.4;
  steps[fp_kind_param_index (footpace, "tread")] = 12 * 25.4;
  steps[fp_kind_param_index (footpace, "front")] = 42 * 25.4;
  steps[fp_kind_param_index (footpace, "ends")] = 12 * 25.4;
  mensa[fp_kind_param_index (altar, "length")] = 9 * 304.8;
  mensa[fp_kind_param_index (altar, "depth")] = 3 * 304.8;
  add (&project, FALSE, make ("steps", "footpace", NULL, (FpPlace) { 0, 4000, 0 }, steps));
  add (&project, FALSE, make ("altar", "altar", "steps", (FpPlace) { 0, 4000, 0 }, mensa));

  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpBill) bill = fp_bill_new (scene);
  const double stone = volume_of (bill, "steps"); /* slabs, core and joints */
  g_assert_cmpfloat_with_epsilon (stone, cubic_inches * 25.4 * 25.4 * 25.4, 1);
  g_autofree char *text = fp_amount_format (FP_AMOUNT_VOLUME, stone, FP_UNITS_IMPERIAL);
  g_assert_cmpstr (text, ==, "148.25\302\240cu ft"); /* 256176 / 1728 = 148.25 exactly */
}

/* --- what stays and what goes ---------------------------------------------------- */

static FpProject *
reordering (void)
{
  FpProject *project = empty ();
  GError *error = NULL;

  add (&project, TRUE, make ("pier", "pier", NULL, (FpPlace) { 5000, -3000, 0 }, NULL));
  add (&project, TRUE, make ("old-altar", "altar", NULL, (FpPlace) { 0, 6000, 0 }, NULL));
  add (&project, TRUE, make ("pews", "pews", NULL, (FpPlace) { 0, -3000, 0 }, NULL));
  add (&project, TRUE, make ("ambo", "ambo", NULL, (FpPlace) { -2500, 1500, 0 }, NULL));
  add (&project, TRUE, make ("chair", "chair", NULL, (FpPlace) { 2500, 5000, 0 }, NULL));
  add (&project, FALSE, make ("rail", "rail", NULL, (FpPlace) { 0, 500, 0 }, NULL));
  take (&project, fp_project_with_fate (project, 0, "ambo", FP_FATE_REMOVED, NULL, NULL, &error), error);
  const FpPlace forward = { 0, 4000, 0 };
  take (&project, fp_project_with_fate (project, 0, "old-altar", FP_FATE_MOVED, &forward, NULL, &error), error);
  return project;
}

static void
test_counts (void)
{
  g_autoptr (FpProject) project = reordering ();
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  const FpScheduleCounts counts = fp_schedule_counts (scene);

  g_assert_cmpuint (counts.kept, ==, 2); /* pews and chair; the pier is not counted */
  g_assert_cmpuint (counts.added, ==, 1);
  g_assert_cmpuint (counts.moved, ==, 1);
  g_assert_cmpuint (counts.removed, ==, 1);
}

/* What is only moved is listed once, and needs no new stone; what is removed is listed as removed. */
static void
test_moved (void)
{
  g_autoptr (FpProject) project = reordering ();
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpBill) bill = fp_bill_new (scene);
  guint removed = 0;

  g_assert_cmpfloat_with_epsilon (amount_of (bill, "old-altar", "mensa"), 2400.0 * 750 * 120, 1);
  g_assert_cmpfloat (fp_bill_stone (bill), ==, 0);
  for (guint i = 0; i < fp_bill_rows (bill)->len; i++)
    {
      const FpBillRow *row = &g_array_index (fp_bill_rows (bill), FpBillRow, i);
      if (row->work != FP_WORK_REMOVED)
        continue;
      removed++;
      g_assert_cmpstr (fp_item_id (row->placed->item), ==, "ambo");
    }
  g_assert_cmpuint (removed, >, 0);
  g_assert_cmpfloat (amount_of (bill, "rail", "rail, less the gate"), ==, 4800);
}

/* --- as read --------------------------------------------------------------------- */

static void
check_format (FpAmountType type, double amount, FpUnits units, const char *expected)
{
  g_autofree char *text = fp_amount_format (type, amount, units);

  g_assert_cmpstr (text, ==, expected);
}

static void
test_format (void)
{
  check_format (FP_AMOUNT_VOLUME, 1.27e9, FP_UNITS_METRIC, "1.27\302\240m³");
  check_format (FP_AMOUNT_VOLUME, 0.0274e9, FP_UNITS_METRIC, "0.027\302\240m³");
  check_format (FP_AMOUNT_LENGTH, 2700, FP_UNITS_METRIC, "2.70\302\240m");
  check_format (FP_AMOUNT_AREA, 4.5e6, FP_UNITS_METRIC, "4.50\302\240m²");
  check_format (FP_AMOUNT_NUMBER, 3, FP_UNITS_METRIC, "3");
  check_format (FP_AMOUNT_NUMBER, 3, FP_UNITS_IMPERIAL, "3");
  /* 1 ft = 304.8 mm exactly (international foot, 1959). */
  check_format (FP_AMOUNT_AREA, 10 * 304.8 * 304.8, FP_UNITS_IMPERIAL, "10.00\302\240sq ft");
  check_format (FP_AMOUNT_VOLUME, 27 * 304.8 * 304.8 * 304.8, FP_UNITS_IMPERIAL, "27.00\302\240cu ft");
  check_format (FP_AMOUNT_LENGTH, 9 * 304.8, FP_UNITS_IMPERIAL, "9' 0\"");
  check_format (FP_AMOUNT_AREA, G_MAXDOUBLE * 10, FP_UNITS_METRIC, "\342\200\223");
}

/* What is priced is what is printed. */
static void
test_billed (void)
{
  g_assert_cmpfloat_with_epsilon (fp_amount_billed (FP_AMOUNT_VOLUME, 0.30782e9, FP_UNITS_METRIC), 0.308e9, 1);
  g_assert_cmpfloat_with_epsilon (fp_amount_billed (FP_AMOUNT_VOLUME, 0.013824e9, FP_UNITS_METRIC), 0.0138e9, 1);
  g_assert_cmpfloat_with_epsilon (fp_amount_billed (FP_AMOUNT_AREA, 2.3456e6, FP_UNITS_METRIC), 2.35e6, 1e-3);
  g_assert_cmpfloat_with_epsilon (fp_amount_billed (FP_AMOUNT_LENGTH, 27672, FP_UNITS_METRIC), 27670, 1e-6);
  /* Feet and inches are printed to a sixteenth. */
  g_assert_cmpfloat_with_epsilon (fp_amount_billed (FP_AMOUNT_LENGTH, 100, FP_UNITS_IMPERIAL), 63 * 25.4 / 16, 1e-9);
  g_assert_cmpfloat_with_epsilon (fp_amount_billed (FP_AMOUNT_AREA, 100000, FP_UNITS_IMPERIAL), 1.08 * 304.8 * 304.8, 1e-3);
  g_assert_cmpfloat (fp_amount_billed (FP_AMOUNT_NUMBER, 7, FP_UNITS_METRIC), ==, 7);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/schedule/nested-steps", test_nested_steps);
  g_test_add_func ("/schedule/counts", test_counts);
  g_test_add_func ("/schedule/moved", test_moved);
  g_test_add_func ("/schedule/format", test_format);
  g_test_add_func ("/schedule/billed", test_billed);
  return g_test_run ();
}
