/* SPDX-License-Identifier: GPL-3.0-or-later */
/* schedules.c - what a line of a schedule says, cell by cell */
#include "footpace/schedules.h"

#include "footpace/schedule.h"

#include <math.h>

#define KG_PER_LB       0.45359237 /* exact: international yard and pound, 1959 */

static const char *const heads[FP_N_BILL_COLUMNS] = {
  [FP_BILL_THING] = "Thing", [FP_BILL_WHAT] = "What", [FP_BILL_MARKS] = "Marked", [FP_BILL_MATERIAL] = "Of", [FP_BILL_PIECES] = "Pieces", [FP_BILL_SIZE] = "Size of each",
  [FP_BILL_AMOUNT] = "Amount", [FP_BILL_VOLUME] = "Volume", [FP_BILL_MASS] = "Mass", [FP_BILL_EACH] = "Mass of each", [FP_BILL_HOURS] = "Burns",
  [FP_BILL_RATE] = "Rate", [FP_BILL_COST] = "Cost",
};

const char *
fp_bill_column_head (FpBillColumn column)
{
  return heads[MIN ((guint) column, FP_N_BILL_COLUMNS - 1)];
}

static const FpProject *
project_of (const FpBill *bill)
{
  return fp_scene_project (fp_bill_scene (bill));
}

/* --- numbers -------------------------------------------------------------------- */

char *
fp_mass_format (double mass, FpUnits units)
{
  const double shown = units == FP_UNITS_METRIC ? mass : mass / KG_PER_LB;
  const char *unit = units == FP_UNITS_METRIC ? "kg" : "lb";

  if (isnan (mass))
    return g_strdup ("");
  g_autofree char *text = fp_number_format_grouped (shown, shown < 9.95 ? 1 : 0);
  return g_strconcat (text, "\302\240", unit, NULL);
}

char *
fp_pressure_format (double pressure, FpUnits units)
{
  g_autofree char *text = units == FP_UNITS_METRIC ? fp_number_format_grouped (pressure, 1)
                                                   : fp_number_format_grouped (pressure / FP_KN_M2_PER_PSF, 0);

  return g_strconcat (text, "\302\240", units == FP_UNITS_METRIC ? "kN/m²" : "lb/sq\302\240ft", NULL);
}

char *
fp_cost_format (double cost, const char *currency)
{
  if (isnan (cost))
    return g_strdup ("");
  g_autofree char *sum = fp_number_format_grouped (cost, 2);
  return *currency == '\0' ? g_steal_pointer (&sum) : g_strconcat (sum, "\302\240", currency, NULL);
}

static char *
size_text (FpVec3 size, FpUnits units)
{
  const double value[] = { size.x, size.y, size.z };
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < 3; i++)
    {
      const gboolean tenths = units == FP_UNITS_METRIC && fabs (value[i] - round (value[i])) > 0.05;
      g_autofree char *length = !(value[i] > 0) ? NULL
                                : units == FP_UNITS_METRIC ? fp_number_format_grouped (value[i], tenths ? 1 : 0)
                                                           : fp_length_format (value[i], units);

      if (length != NULL)
        g_string_append_printf (out, "%s%s", out->len > 0 ? " × " : "", length);
    }
  return g_string_free (out, FALSE);
}

/* --- cells ---------------------------------------------------------------------- */

static char *
rate_text (const FpBillRow *row, const FpWorks *works)
{
  g_autofree char *rate = fp_cost_format (row->rate, works->currency);

  return isnan (row->rate) ? g_strdup ("") : g_strdup_printf ("%s per %s", rate, row->type == FP_AMOUNT_NUMBER ? "one"
                                                              : fp_amount_unit_sign (row->type, row->per));
}

static const char *
material_text (FpMaterial material, const FpWorks *works)
{
  switch (material)
    {
    case FP_MATERIAL_STONE: return fp_stone (works->stone)->label;
    case FP_MATERIAL_WOOD: return fp_timber (works->timber)->label;
    case FP_MATERIAL_METAL: return fp_metal (works->metal)->label;
    case FP_MATERIAL_LINEN: return "Linen";
    case FP_MATERIAL_SILK: return "Silk";
    case FP_MATERIAL_WAX: return "Wax";
    case FP_MATERIAL_CONCRETE: return "Concrete";
    case FP_MATERIAL_NONE: break;
    }
  return "";
}

/* So many digits that a cost can be reckoned again from what is printed. */
static char *
amount_text (FpAmountType type, double amount, FpUnits units)
{
  const double shown = fp_amount_in (type, amount, units);
  g_autofree char *text = NULL;

  if (type == FP_AMOUNT_NUMBER || (type == FP_AMOUNT_LENGTH && units == FP_UNITS_IMPERIAL))
    return fp_amount_format (type, amount, units);
  text = fp_number_format_grouped (shown, (int) fp_amount_decimals (type, shown));
  return g_strconcat (text, "\302\240", fp_amount_unit_sign (type, units), NULL);
}

/* Where nothing at all is priced nothing is said. */
static char *
cost_text (const FpBill *bill, const FpBillRow *row)
{
  if (row->unpriced && !isnan (fp_bill_cost (bill, FP_N_WORKS)))
    return g_strdup ("not priced");
  return fp_cost_format (row->cost, fp_project_works (project_of (bill))->currency);
}

char *
fp_unpriced_text (guint n)
{
  return n == 0 ? g_strdup ("") : g_strdup_printf (", %u %s not priced", n, n == 1 ? "line" : "lines");
}

static char *
hours_text (const FpBillRow *row)
{
  g_autofree char *text = isnan (row->hours) ? NULL : fp_number_format_grouped (row->hours, 1);

  return text == NULL ? g_strdup ("") : g_strconcat (text, "\302\240h", NULL);
}

static char *
what_text (const FpBillRow *row)
{
  return row->where != NULL ? g_strdup_printf ("%s, %s", row->what, row->where) : g_strdup (row->what);
}

char *
fp_bill_cell (const FpBill *bill, const FpBillRow *row, FpBillColumn column)
{
  const FpWorks *works = fp_project_works (project_of (bill));
  const FpUnits units = fp_project_brief (project_of (bill))->units;

  switch (column)
    {
    case FP_BILL_THING: return g_strdup (fp_item_name (row->placed->item));
    case FP_BILL_WHAT: return what_text (row);
    case FP_BILL_MARKS: return g_strdup (row->marks != NULL ? row->marks : "");
    case FP_BILL_MATERIAL: return g_strdup (material_text (row->material, works));
    case FP_BILL_PIECES: return row->pieces > 0 ? g_strdup_printf ("%u", row->pieces) : g_strdup ("");
    case FP_BILL_SIZE: return row->pieces > 0 ? size_text (row->size, units) : g_strdup ("");
    case FP_BILL_AMOUNT: return amount_text (row->type, row->amount, units);
    case FP_BILL_VOLUME: return isnan (row->volume)
                                    ? g_strdup ("") : amount_text (FP_AMOUNT_VOLUME, row->volume, units);
    case FP_BILL_MASS: return fp_mass_format (row->mass, units);
    case FP_BILL_EACH: return fp_mass_format (fp_bill_row_each (row), units);
    case FP_BILL_HOURS: return hours_text (row);
    case FP_BILL_RATE: return rate_text (row, works);
    case FP_BILL_COST: return cost_text (bill, row);
    case FP_N_BILL_COLUMNS: break;
    }
  return g_strdup ("");
}

gboolean
fp_schedule_chooses (const FpScheduleChoice *choice, const FpBillRow *row)
{
  return (choice->headings == 0 || (choice->headings & 1u << row->heading) != 0)
         && (choice->works == 0 || (choice->works & 1u << row->work) != 0);
}
