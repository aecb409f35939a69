/* SPDX-License-Identifier: GPL-3.0-or-later */
/* schedules-closing.c - what is said below schedules: of what all is reckoned, how heavy it is, and who decides */
#include "footpace/schedules.h"

#include "footpace/schedule.h"

#include <math.h>

#define N_PER_KN 1000.0

const char fp_weights_caution[] =
  "Pressures only compare a load with what the floor is rated for, and prove nothing: a licensed engineer decides whether the "
  "floor bears it. What is of no material that is weighed here is left out.";

static const FpProject *
project_of (const FpBill *bill)
{
  return fp_scene_project (fp_bill_scene (bill));
}

/* --- on the floor ------------------------------------------------------------------ */

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
    return g_strdup ("light: below the single load of 4 kN (900 lb) that floors for people bear");
  text = times > 1 ? fp_number_format_grouped (times, 1) : fp_number_format_grouped (times * 100, 0);
  return g_strconcat (text, times > 1 ? " times" : " % of", " the rating", NULL);
}

char *
fp_bearing_name (const FpBearing *self)
{
  const char *word = fp_placed_is_new (self->placed) ? "new" : self->placed->moved ? "moved" : "kept";

  return g_strdup_printf ("%s, %s", fp_item_name (self->placed->item), word);
}

char *
fp_bearing_text (const FpBearing *self, const FpWorks *works, FpUnits units)
{
  g_autofree char *name = fp_bearing_name (self), *own = fp_mass_format (self->own, units), *all = fp_mass_format (self->all, units);
  g_autofree char *area = fp_amount_format (FP_AMOUNT_AREA, self->area, units);
  g_autofree char *pressure = fp_pressure_format (self->pressure, units), *verdict = fp_bearing_verdict (self, works);
  GString *out = g_string_new (NULL);

  g_string_append_printf (out, "%s: %s", name, own);
  if (self->all > self->own)
    g_string_append_printf (out, ", with what stands on it %s", all);
  g_string_append_printf (out, ", on %s: %s", area, pressure);
  if (verdict != NULL)
    g_string_append_printf (out, ", %s", verdict);
  if (self->unweighed > 0)
    g_string_append_printf (out, " (%u of its things not weighed)", self->unweighed);
  return g_string_free (out, FALSE);
}

/* --- costs ------------------------------------------------------------------------- */

static void
add_costs (const FpBill *bill, GString *out)
{
  const char *currency = fp_project_works (project_of (bill))->currency;
  g_autofree char *all = fp_cost_format (fp_bill_cost (bill, FP_N_WORKS), currency);
  g_autofree char *unpriced = fp_unpriced_text (fp_bill_unpriced (bill, FP_N_WORKS));

  if (*all == '\0')
    {
      g_string_append (out, "No rates were typed, so nothing is costed. ");
      return;
    }
  g_string_append_printf (out, "In all %s by the rates that were typed%s", all, unpriced);
  for (guint i = 0; i < FP_N_WORKS; i++)
    {
      g_autofree char *cost = fp_cost_format (fp_bill_cost (bill, (FpWork) i), currency);
      g_autofree char *lacking = fp_unpriced_text (fp_bill_unpriced (bill, (FpWork) i));

      if (*cost != '\0')
        g_string_append_printf (out, "; %s: %s%s", fp_work_label ((FpWork) i), cost, lacking);
      else if (*lacking != '\0')
        g_string_append_printf (out, "; %s: %s", fp_work_label ((FpWork) i), lacking + strlen (", "));
    }
  g_string_append (out, *unpriced != '\0' ? ". What is not priced is in no sum. " : ". ");
}

/* --- stone ------------------------------------------------------------------------- */

char *
fp_stone_text (const FpWorks *works, FpUnits units)
{
  g_autofree char *slab = fp_length_format_unit (works->slab, units), *longest = fp_length_format_unit (works->longest, units);
  g_autofree char *joint = fp_length_format_unit (works->joint, units), *nosing = fp_length_format_unit (works->nosing, units);
  GString *out = g_string_new (NULL);

  g_string_append_printf (out, "Stone: %s. Slabs are %s thick and none is longer than %s; a mensa is of one piece. ", fp_stone (works->stone)->label, slab, longest);
  g_string_append_printf (out, works->joint > 0 ? "Joints and beds of %s are taken off the sizes. " : "Sizes are without joints. ", joint);
  if (works->nosing > 0)
    g_string_append_printf (out, "Treads and floors project %s before their risers. ", nosing);
  else
    g_string_append (out, "Treads and floors have no nosing. ");
  g_string_append_printf (out, "Finish: %s. ", *works->finish != '\0' ? works->finish : "not said");
  return g_string_free (out, FALSE);
}

/* kg: the guideline figure for one man who lifts under the best conditions, HSE INDG143 (from memory). */
#define ONE_LIFTS 25.0

static guint
n_heavy (const FpBill *bill, const FpScheduleChoice *choice, FpWork work)
{
  const GArray *rows = fp_bill_rows (bill);
  guint n = 0;

  for (guint i = 0; i < rows->len; i++)
    {
      const FpBillRow *row = &g_array_index (rows, FpBillRow, i);

      if (row->work == work && fp_schedule_chooses (choice, row) && fp_bill_row_each (row) > ONE_LIFTS)
        n += row->pieces;
    }
  return n;
}

/* "42 new, 3 taken out"; "" where none is so heavy. */
static char *
heavy_text (const FpBill *bill, const FpScheduleChoice *choice)
{
  static const char *const words[FP_N_WORKS] = { [FP_WORK_NEW] = "new", [FP_WORK_MOVED] = "moved", [FP_WORK_REMOVED] = "taken out" };
  GString *out = g_string_new (NULL);

  for (guint i = 0; i < FP_N_WORKS; i++)
    {
      const guint n = words[i] != NULL ? n_heavy (bill, choice, (FpWork) i) : 0;

      if (n > 0)
        g_string_append_printf (out, "%s%u %s", out->len > 0 ? ", " : "", n, words[i]);
    }
  return g_string_free (out, FALSE);
}

static void
add_lifting (const FpBill *bill, const FpScheduleChoice *choice, GString *out)
{
  const FpUnits units = fp_project_brief (project_of (bill))->units;
  const FpBillRow *heaviest = fp_bill_heaviest (bill, choice->works, choice->headings);
  g_autofree char *most = heaviest != NULL ? fp_mass_format (fp_bill_row_each (heaviest), units) : NULL;
  g_autofree char *one = fp_mass_format (ONE_LIFTS, units), *heavy = heavy_text (bill, choice);

  if (heaviest == NULL || *heavy == '\0')
    return;
  g_string_append_printf (out, "Lifting: the heaviest piece is “%s” of “%s”, %s. Pieces of more than %s, beyond what one man lifts (HSE "
                          "INDG143, from memory): %s. Have a competent person plan how they are brought in, lifted and set, and an "
                          "engineer look at the floors over which they come. ", heaviest->what,
                          fp_item_name (heaviest->placed->item), most, one, heavy);
}

/* --- weights ----------------------------------------------------------------------- */

/* Bits: of what is told here; where it is told what bears on the floor, of all that is there. */
static guint
materials_of (const FpBill *bill, const FpScheduleChoice *choice)
{
  const GArray *rows = fp_bill_rows (bill);
  guint materials = 0;

  for (guint i = 0; i < rows->len; i++)
    {
      const FpBillRow *row = &g_array_index (rows, FpBillRow, i);

      if (choice->weights || fp_schedule_chooses (choice, row))
        materials |= 1u << row->material;
    }
  return materials;
}

static void
add_weight (GString *out, gboolean *any, const char *label, double weight, const char *source)
{
  g_autofree char *text = fp_number_format_rounded (weight, 1);

  g_string_append_printf (out, "%s%s %s (%s)", *any ? ", " : "Weights in kN/m³: ", label, text, source);
  *any = TRUE;
}

static void
add_weights (const FpWorks *works, guint materials, GString *out)
{
  const FpMatter *stone = fp_stone (works->stone), *timber = fp_timber (works->timber), *metal = fp_metal (works->metal);
  gboolean any = FALSE;

  if ((materials & 1u << FP_MATERIAL_STONE) != 0)
    add_weight (out, &any, stone->label, stone->weight, stone->source);
  if ((materials & 1u << FP_MATERIAL_WOOD) != 0)
    add_weight (out, &any, timber->label, timber->weight, timber->source);
  if ((materials & 1u << FP_MATERIAL_METAL) != 0)
    add_weight (out, &any, metal->label, metal->weight, metal->source);
  if ((materials & 1u << FP_MATERIAL_CONCRETE) != 0)
    add_weight (out, &any, "concrete", FP_CONCRETE_WEIGHT, "EN 1991-1-1 Table A.1, from memory");
  if (any)
    g_string_append (out, ". ");
  if ((materials & 1u << FP_MATERIAL_METAL) != 0)
    g_string_append_printf (out, "Metal is reckoned hollow, %g mm thick; what stands there already as solid. ", FP_METAL_WALL);
}

char *
fp_schedules_closing (const FpBill *bill, const FpScheduleChoice *choice)
{
  const FpWorks *works = fp_project_works (project_of (bill));
  g_autofree char *stone = fp_stone_text (works, fp_project_brief (project_of (bill))->units);
  GString *out = g_string_new (NULL);

  add_costs (bill, out);
  g_string_append (out, "Net as fixed, without waste. ");
  g_string_append (out, stone);
  g_string_append (out, "Where each marked slab lies is on the sheet of the laying. The floor of the uppermost step runs on under the "
                        "altar. ");
  add_lifting (bill, choice, out);
  add_weights (works, materials_of (bill, choice), out);
  g_string_append (out, "Measure on the spot before anything is cut.");
  return g_string_free (out, FALSE);
}
