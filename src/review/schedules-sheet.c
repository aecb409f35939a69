/* SPDX-License-Identifier: GPL-3.0-or-later */
/* schedules-sheet.c - schedules on paper, and what bears on the floor */
#include "table-pages.h"

#include "footpace/error.h"
#include "footpace/schedule.h"

#define TITLE "Schedules"
#define CODE  "schedule"

/* The same columns mean other things where weights are told. */
enum { W_THING, W_OWN, W_ALL, W_AREA, W_PRESSURE, W_VERDICT, W_UNWEIGHED };

static const char *const weight_heads[FP_N_BILL_COLUMNS] = {
  [W_THING] = "On floor and steps", [W_OWN] = "Weighs", [W_ALL] = "With all on it", [W_AREA] = "Stands on", [W_PRESSURE] = "Presses with",
  [W_VERDICT] = "Rating", [W_UNWEIGHED] = "Not weighed",
};

static void
add_bearing (GArray *out, const FpBearing *b, const FpWorks *works, FpUnits units)
{
  FpTold told = { .type = FP_TOLD_ROW };

  told.cell[W_THING] = fp_bearing_name (b);
  told.cell[W_OWN] = fp_mass_format (b->own, units);
  told.cell[W_ALL] = fp_mass_format (b->all, units);
  told.cell[W_AREA] = fp_amount_format (FP_AMOUNT_AREA, b->area, units);
  told.cell[W_PRESSURE] = fp_pressure_format (b->pressure, units);
  told.cell[W_VERDICT] = fp_bearing_verdict (b, works);
  told.cell[W_UNWEIGHED] = b->unweighed > 0 ? g_strdup_printf ("%u things", b->unweighed) : NULL;
  g_array_append_val (out, told);
}

static GArray *
weights_told (const FpBill *bill)
{
  const FpProject *project = fp_scene_project (fp_bill_scene (bill));
  GArray *out = fp_told_new ();
  g_autoptr (GArray) bearings = fp_scene_bearings (fp_bill_scene (bill));

  for (guint i = 0; i < bearings->len; i++)
    add_bearing (out, &g_array_index (bearings, FpBearing, i), fp_project_works (project), fp_project_brief (project)->units);
  return out;
}

static char *
weights_closing (const FpProject *project)
{
  const double bears = fp_project_works (project)->bears;
  g_autofree char *rated = bears > 0 ? fp_pressure_format (bears, fp_project_brief (project)->units) : NULL;

  return rated == NULL ? g_strdup (fp_weights_caution)
                       : g_strdup_printf ("The floor is rated for %s, as the parish was told. %s", rated, fp_weights_caution);
}

/* What a small sheet may do without, for it follows from the rest. */
#define SPARE (1u << FP_BILL_VOLUME | 1u << FP_BILL_EACH)

static GPtrArray *
set_tables (const FpBill *bill, const FpScheduleChoice *choice, const FpSheetSpec *spec, const GArray *told, guint left_out,
            GError **error)
{
  const char *heads[FP_N_BILL_COLUMNS];
  g_autoptr (GArray) weights = weights_told (bill);
  g_autofree char *closing = fp_schedules_closing (bill, choice);
  g_autofree char *weighed = weights_closing (fp_scene_project (fp_bill_scene (bill)));
  FpTable table[2];
  guint n = 1;

  for (guint k = 0; k < FP_N_BILL_COLUMNS; k++)
    heads[k] = fp_bill_column_head ((FpBillColumn) k);
  table[0] = (FpTable) {
    heads, fp_schedules_columns (told) & ~left_out,
    1u << FP_BILL_THING | 1u << FP_BILL_WHAT | 1u << FP_BILL_MARKS | 1u << FP_BILL_MATERIAL, told, closing,
  };
  if (choice->weights && weights->len > 0)
    table[n++] = (FpTable) {
      weight_heads, fp_schedules_columns (weights), 1u << W_THING | 1u << W_VERDICT, weights, weighed,
    };
  return fp_table_pages (fp_bill_scene (bill), spec, TITLE, CODE, table, n, error);
}

GPtrArray *
fp_schedules_sheets (const FpBill *bill, const FpScheduleChoice *choice, const FpSheetSpec *spec, GError **error)
{
  g_autoptr (GArray) told = fp_schedules_told (bill, choice);
  GPtrArray *pages;

  if (told->len == 0)
    {
      g_set_error_literal (error, FP_ERROR, FP_ERROR_RANGE, "there is nothing of this in the alternative");
      return NULL;
    }
  pages = set_tables (bill, choice, spec, told, 0, NULL);
  return pages != NULL ? pages : set_tables (bill, choice, spec, told, SPARE, error);
}

GPtrArray *
fp_schedules_sheets_of (const FpScene *scene, const FpSheetSpec *spec, GError **error)
{
  const FpScheduleChoice choice = { .works = ((1u << FP_N_WORKS) - 1) & ~(1u << FP_WORK_KEPT), .weights = TRUE };
  g_autoptr (FpBill) bill = fp_bill_new (scene);
  g_autoptr (GPtrArray) pages = fp_schedules_sheets (bill, &choice, spec, NULL);
  const FpScheduleChoice all = { .weights = TRUE };

  /* Where nothing is to be done what is there is told. */
  return pages != NULL ? g_steal_pointer (&pages) : fp_schedules_sheets (bill, &all, spec, error);
}
