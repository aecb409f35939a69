/* SPDX-License-Identifier: GPL-3.0-or-later */
/* schedules.c - what a line of a schedule says, cell by cell */
#include "footpace/schedules.h"

#include "footpace/schedule.h"

#include <math.h>
#include <string.h>

#define N_PER_KN        1000.0
#define KG_PER_LB       0.45359237 /* exact: international yard and pound, 1959 */

const char fp_weights_caution[] =
  "Pressures only compare a load with what the floor is rated for, and prove nothing: a licensed engineer decides whether the "
  "floor bears it. What is of no material that is weighed here is left out.";

static const char *const heads[FP_N_BILL_COLUMNS] = {
  [FP_BILL_THING] = "Thing", [FP_BILL_WHAT] = "What", [FP_BILL_MATERIAL] = "Of", [FP_BILL_PIECES] = "Pieces", [FP_BILL_SIZE] = "Size of each",
  [FP_BILL_AMOUNT] = "Amount", [FP_BILL_VOLUME] = "Volume", [FP_BILL_MASS] = "Mass", [FP_BILL_HOURS] = "Burns",
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

/* With a point in every language, as all numbers of a report. */
static char *
number (double value, const char *format)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  return g_strdup (g_ascii_formatd (text, sizeof text, format, value));
}

char *
fp_mass_format (double mass, FpUnits units)
{
  const double shown = units == FP_UNITS_METRIC ? mass : mass / KG_PER_LB;
  const char *unit = units == FP_UNITS_METRIC ? "kg" : "lb";

  if (isnan (mass))
    return g_strdup ("");
  g_autofree char *text = number (shown, shown < 9.95 ? "%.1f" : "%.0f");
  return g_strconcat (text, "\302\240", unit, NULL);
}

char *
fp_pressure_format (double pressure, FpUnits units)
{
  g_autofree char *text = units == FP_UNITS_METRIC ? number (pressure, "%.1f") : number (pressure / FP_KN_M2_PER_PSF, "%.0f");

  return g_strconcat (text, "\302\240", units == FP_UNITS_METRIC ? "kN/m²" : "lb/sq\302\240ft", NULL);
}

/* Thousands apart, so that a long sum can be read. */
char *
fp_cost_format (double cost, const char *currency)
{
  g_autofree char *plain = NULL;
  GString *out;
  guint whole;

  if (isnan (cost))
    return g_strdup ("");
  plain = number (cost, "%.2f");
  out = g_string_new (NULL);
  whole = (guint) (strlen (plain) - 3);
  for (guint i = 0; plain[i] != '\0'; i++)
    {
      if (i > 0 && i < whole && (whole - i) % 3 == 0)
        g_string_append (out, "\302\240");
      g_string_append_c (out, plain[i]);
    }
  if (*currency != '\0')
    g_string_append_printf (out, "\302\240%s", currency);
  return g_string_free (out, FALSE);
}

static char *
size_text (FpVec3 size, FpUnits units)
{
  const double value[] = { size.x, size.y, size.z };
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < 3; i++)
    {
      const gboolean tenths = units == FP_UNITS_METRIC && fabs (value[i] - round (value[i])) > 0.05;
      g_autofree char *length = !(value[i] > 0) ? NULL : tenths ? number (value[i], "%.1f")
                                : fp_length_format (round (value[i]), units);

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
  text = number (shown, shown < 0.0995 ? "%.4f" : type == FP_AMOUNT_VOLUME ? "%.3f" : "%.2f");
  return g_strconcat (text, "\302\240", fp_amount_unit_sign (type, units), NULL);
}

static char *
hours_text (const FpBillRow *row)
{
  g_autofree char *text = isnan (row->hours) ? NULL : number (row->hours, "%.1f");

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
    case FP_BILL_MATERIAL: return g_strdup (material_text (row->material, works));
    case FP_BILL_PIECES: return row->pieces > 0 ? g_strdup_printf ("%u", row->pieces) : g_strdup ("");
    case FP_BILL_SIZE: return row->pieces > 0 ? size_text (row->size, units) : g_strdup ("");
    case FP_BILL_AMOUNT: return amount_text (row->type, row->amount, units);
    case FP_BILL_VOLUME: return isnan (row->volume) || row->type == FP_AMOUNT_VOLUME
                                    ? g_strdup ("") : amount_text (FP_AMOUNT_VOLUME, row->volume, units);
    case FP_BILL_MASS: return fp_mass_format (row->mass, units);
    case FP_BILL_HOURS: return hours_text (row);
    case FP_BILL_RATE: return rate_text (row, works);
    case FP_BILL_COST: return fp_cost_format (row->cost, works->currency);
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

/* --- what closes them ------------------------------------------------------------- */

/* What is lighter than the single load that a floor of people bears anywhere says nothing by its small feet: 4 kN, EN 1991-1-1,
 * Table 6.2, categories C1 to C3 (from memory). */
#define SINGLE_LOAD 4.0 /* kN */

char *
fp_bearing_verdict (const FpBearing *bearing, const FpWorks *works)
{
  const double times = bearing->pressure / works->bears;
  g_autofree char *text = NULL;

  if (!(works->bears > 0))
    return NULL;
  if (bearing->all * FP_GRAVITY / N_PER_KN < SINGLE_LOAD)
    return g_strdup ("light: below the single load of 4 kN that floors for people bear");
  text = times > 1 ? number (times, "%.1f") : number (times * 100, "%.0f");
  return g_strconcat (text, times > 1 ? " times" : " % of", " the rating", NULL);
}

char *
fp_bearing_text (const FpBearing *self, const FpWorks *works, FpUnits units)
{
  g_autofree char *own = fp_mass_format (self->own, units), *all = fp_mass_format (self->all, units);
  g_autofree char *area = fp_amount_format (FP_AMOUNT_AREA, self->area, units);
  g_autofree char *pressure = fp_pressure_format (self->pressure, units), *verdict = fp_bearing_verdict (self, works);
  GString *out = g_string_new (NULL);

  g_string_append_printf (out, "%s: %s", fp_item_name (self->placed->item), own);
  if (self->all > self->own)
    g_string_append_printf (out, ", with what stands on it %s", all);
  g_string_append_printf (out, ", on %s: %s", area, pressure);
  if (verdict != NULL)
    g_string_append_printf (out, ", %s", verdict);
  if (self->unweighed > 0)
    g_string_append_printf (out, " (%u of its things not weighed)", self->unweighed);
  return g_string_free (out, FALSE);
}

static void
add_costs (const FpBill *bill, GString *out)
{
  const char *currency = fp_project_works (project_of (bill))->currency;
  g_autofree char *all = fp_cost_format (fp_bill_cost (bill, FP_N_WORKS), currency);

  if (*all == '\0')
    {
      g_string_append (out, "No rates were typed, so nothing is costed. ");
      return;
    }
  g_string_append_printf (out, "In all %s by the rates that were typed", all);
  for (guint i = 0; i < FP_N_WORKS; i++)
    {
      g_autofree char *cost = fp_cost_format (fp_bill_cost (bill, (FpWork) i), currency);

      if (*cost != '\0')
        g_string_append_printf (out, "; %s: %s", fp_work_label ((FpWork) i), cost);
    }
  g_string_append (out, ". A line without a rate costs nothing here. ");
}

char *
fp_schedules_closing (const FpBill *bill)
{
  const FpWorks *works = fp_project_works (project_of (bill));
  const FpUnits units = fp_project_brief (project_of (bill))->units;
  g_autofree char *slab = fp_length_format_unit (works->slab, units), *longest = fp_length_format_unit (works->longest, units);
  g_autofree char *stone = number (fp_stone (works->stone)->weight, "%.1f");
  g_autofree char *timber = number (fp_timber (works->timber)->weight, "%.1f");
  g_autofree char *concrete = number (FP_CONCRETE_WEIGHT, "%.1f");
  GString *out = g_string_new (NULL);

  add_costs (bill, out);
  g_string_append_printf (out, "Net as fixed, without waste. Slabs are %s thick and none is longer than %s; %s is reckoned at "
                          "%s kN/m³, %s at %s, concrete at %s, what is kept or taken out likewise. The floor of the uppermost step runs on "
                          "under the altar. Measure on the spot before anything is cut.", slab, longest,
                          fp_stone (works->stone)->label, stone, fp_timber (works->timber)->label, timber, concrete);
  return g_string_free (out, FALSE);
}
