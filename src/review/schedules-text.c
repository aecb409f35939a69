/* SPDX-License-Identifier: GPL-3.0-or-later */
/* schedules-text.c - schedules in words, and as a table for other programs */
#include "schedules-private.h"

#include "csv.h"

#include "footpace/schedule.h"

#include <math.h>

#define MM3_PER_M3 1e9
#define BETWEEN    2

/* --- line after line ----------------------------------------------------------------- */

static void
told_clear (gpointer data)
{
  FpTold *told = data;

  for (guint i = 0; i < FP_N_BILL_COLUMNS; i++)
    g_free (told->cell[i]);
}

GArray *
fp_told_new (void)
{
  GArray *told = g_array_new (FALSE, FALSE, sizeof (FpTold));

  g_array_set_clear_func (told, told_clear);
  return told;
}

static void
add_title (GArray *out, FpToldType type, const char *words)
{
  const FpTold title = { .type = type, .cell = { g_strdup (words) } };

  g_array_append_val (out, title);
}

static void
add_row (GArray *out, const FpBill *bill, const FpBillRow *row)
{
  FpTold told = { .type = FP_TOLD_ROW };

  for (guint i = 0; i < FP_N_BILL_COLUMNS; i++)
    told.cell[i] = fp_bill_cell (bill, row, (FpBillColumn) i);
  g_array_append_val (out, told);
}

typedef struct { double mass, cost; guint n, unpriced; } Sum;

static void
add_to_sum (Sum *sum, const FpBillRow *row)
{
  sum->n++;
  sum->unpriced += row->unpriced ? 1 : 0;
  if (!isnan (row->mass))
    sum->mass = (isnan (sum->mass) ? 0 : sum->mass) + row->mass;
  if (!isnan (row->cost))
    sum->cost = (isnan (sum->cost) ? 0 : sum->cost) + row->cost;
}

/* Of lines in several units only mass and cost can be added up. */
static void
add_sum (GArray *out, const FpBill *bill, const Sum *sum)
{
  const FpProject *project = fp_scene_project (fp_bill_scene (bill));
  g_autofree char *unpriced = fp_unpriced_text (isnan (fp_bill_cost (bill, FP_N_WORKS)) ? 0 : sum->unpriced);
  FpTold told = { .type = FP_TOLD_SUM };

  if (sum->n < 2 || (isnan (sum->mass) && isnan (sum->cost)))
    return;
  told.cell[FP_BILL_THING] = g_strconcat ("In all", unpriced, NULL);
  told.cell[FP_BILL_MASS] = fp_mass_format (sum->mass, fp_project_brief (project)->units);
  told.cell[FP_BILL_COST] = fp_cost_format (sum->cost, fp_project_works (project)->currency);
  g_array_append_val (out, told);
}

static void
add_heading (GArray *out, const FpBill *bill, const FpScheduleChoice *choice, FpWork work, FpHeading heading, gboolean *titled)
{
  const GArray *rows = fp_bill_rows (bill);
  Sum sum = { NAN, NAN, 0, 0 };

  for (guint i = 0; i < rows->len; i++)
    {
      const FpBillRow *row = &g_array_index (rows, FpBillRow, i);

      if (row->work != work || row->heading != heading || !fp_schedule_chooses (choice, row))
        continue;
      if (!*titled)
        add_title (out, FP_TOLD_WORK, fp_work_label (work));
      if (sum.n == 0)
        add_title (out, FP_TOLD_HEADING, fp_heading_label (heading));
      *titled = TRUE;
      add_row (out, bill, row);
      add_to_sum (&sum, row);
    }
  add_sum (out, bill, &sum);
}

GArray *
fp_schedules_told (const FpBill *bill, const FpScheduleChoice *choice)
{
  GArray *out = fp_told_new ();

  for (guint work = 0; work < FP_N_WORKS; work++)
    {
      gboolean titled = FALSE;

      for (guint heading = 0; heading < FP_N_HEADINGS; heading++)
        add_heading (out, bill, choice, (FpWork) work, (FpHeading) heading, &titled);
    }
  return out;
}

guint
fp_schedules_columns (const GArray *told)
{
  guint columns = 0;

  for (guint i = 0; i < told->len; i++)
    for (guint k = 0; k < FP_N_BILL_COLUMNS; k++)
      {
        const char *cell = g_array_index (told, FpTold, i).cell[k];

        if (cell != NULL && *cell != '\0')
          columns |= 1u << k;
      }
  return columns;
}

/* --- in words -------------------------------------------------------------------------- */

static gboolean
is_words (guint column)
{
  return column <= FP_BILL_MATERIAL;
}

static void
add_cell (GString *out, const char *cell, guint column, glong width)
{
  const glong room = width - g_utf8_strlen (cell, -1);

  if (is_words (column))
    g_string_append_printf (out, "%s%*s", cell, (int) (room + BETWEEN), "");
  else
    g_string_append_printf (out, "%*s%s%*s", (int) room, "", cell, BETWEEN, "");
}

static void
end_line (GString *out)
{
  while (out->len > 0 && out->str[out->len - 1] == ' ')
    g_string_truncate (out, out->len - 1);
  g_string_append_c (out, '\n');
}

static void
measure (const GArray *told, glong width[FP_N_BILL_COLUMNS])
{
  for (guint k = 0; k < FP_N_BILL_COLUMNS; k++)
    width[k] = g_utf8_strlen (fp_bill_column_head ((FpBillColumn) k), -1);
  for (guint i = 0; i < told->len; i++)
    for (guint k = 0; k < FP_N_BILL_COLUMNS; k++)
      {
        const FpTold *t = &g_array_index (told, FpTold, i);

        if (t->type >= FP_TOLD_ROW && t->cell[k] != NULL)
          width[k] = MAX (width[k], g_utf8_strlen (t->cell[k], -1));
      }
}

static void
add_heads (GString *out, guint columns, const glong *width)
{
  g_string_append (out, "  ");
  for (guint k = 0; k < FP_N_BILL_COLUMNS; k++)
    if ((columns & 1u << k) != 0)
      add_cell (out, fp_bill_column_head ((FpBillColumn) k), k, width[k]);
  end_line (out);
}

static void
add_told (GString *out, const FpTold *told, guint columns, const glong *width)
{
  if (told->type == FP_TOLD_WORK)
    g_string_append_printf (out, "\n%s\n", told->cell[0]);
  else if (told->type == FP_TOLD_HEADING)
    g_string_append_printf (out, "\n %s\n", told->cell[0]);
  else
    {
      g_string_append (out, "  ");
      for (guint k = 0; k < FP_N_BILL_COLUMNS; k++)
        if ((columns & 1u << k) != 0)
          add_cell (out, told->cell[k] != NULL ? told->cell[k] : "", k, width[k]);
      end_line (out);
    }
}

static void
add_weights (GString *out, const FpBill *bill)
{
  const FpProject *project = fp_scene_project (fp_bill_scene (bill));
  const FpWorks *works = fp_project_works (project);
  const FpUnits units = fp_project_brief (project)->units;
  g_autoptr (GArray) bearings = fp_scene_bearings (fp_bill_scene (bill));

  g_string_append (out, "\nOn floor and steps\n");
  if (works->bears > 0)
    {
      g_autofree char *rated = fp_pressure_format (works->bears, units);
      g_string_append_printf (out, "  The floor is rated for %s.\n", rated);
    }
  for (guint i = 0; i < bearings->len; i++)
    {
      g_autofree char *text = fp_bearing_text (&g_array_index (bearings, FpBearing, i), works, units);
      g_string_append_printf (out, "  %s\n", text);
    }
  if (!(works->bears > 0))
    g_string_append (out, "  What the floor is rated for was not said.\n");
  g_string_append_printf (out, "\n%s\n", fp_weights_caution);
}

char *
fp_schedules_text (const FpBill *bill, const FpScheduleChoice *choice)
{
  GString *out = g_string_new (NULL);
  g_autoptr (GArray) told = fp_schedules_told (bill, choice);
  g_autofree char *closing = fp_schedules_closing (bill, choice);
  const guint columns = fp_schedules_columns (told);
  glong width[FP_N_BILL_COLUMNS];

  measure (told, width);
  add_heads (out, columns, width);
  for (guint i = 0; i < told->len; i++)
    add_told (out, &g_array_index (told, FpTold, i), columns, width);
  g_string_append_printf (out, "\n%s\n", closing);
  if (choice->weights)
    add_weights (out, bill);
  return g_string_free (out, FALSE);
}

/* --- as a table --------------------------------------------------------------------------- */

static void
add_number (GString *out, double value, const char *format)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  g_string_append_c (out, ',');
  if (!isnan (value))
    g_string_append (out, g_ascii_formatd (text, sizeof text, format, value));
}

static double
or_nothing (double value)
{
  return value > 0 ? value : NAN;
}

static void
add_csv_row (GString *out, const FpBill *bill, const FpBillRow *row)
{
  static const char *const materials[] = {
    [FP_MATERIAL_NONE] = "", [FP_MATERIAL_STONE] = "stone", [FP_MATERIAL_WOOD] = "wood", [FP_MATERIAL_METAL] = "metal",
    [FP_MATERIAL_LINEN] = "linen", [FP_MATERIAL_WAX] = "wax", [FP_MATERIAL_CONCRETE] = "concrete",
    [FP_MATERIAL_SILK] = "silk",
  };
  const FpUnits per = isnan (row->rate) ? FP_UNITS_METRIC : row->per;
  const FpUnits units = fp_project_brief (fp_scene_project (fp_bill_scene (bill)))->units;
  g_autofree char *what = fp_bill_cell (bill, row, FP_BILL_WHAT);

  g_string_append_printf (out, "%s,%s,", fp_work_id (row->work), fp_heading_id (row->heading));
  fp_csv_add_quoted (out, fp_item_id (row->placed->item));
  g_string_append_c (out, ',');
  fp_csv_add_quoted (out, fp_item_name (row->placed->item));
  g_string_append_c (out, ',');
  fp_csv_add_quoted (out, what);
  g_string_append_c (out, ',');
  fp_csv_add_quoted (out, row->marks != NULL ? row->marks : "");
  g_string_append_printf (out, ",%s", materials[row->material]);
  add_number (out, or_nothing (row->pieces), "%.0f");
  add_number (out, or_nothing (row->size.x), "%.1f");
  add_number (out, or_nothing (row->size.y), "%.1f");
  add_number (out, or_nothing (row->size.z), "%.1f");
  add_number (out, fp_amount_in (row->type, fp_amount_billed (row->type, row->amount, units), FP_UNITS_METRIC), "%.4f");
  g_string_append_printf (out, ",%s", fp_amount_unit (row->type, FP_UNITS_METRIC));
  add_number (out, row->volume / MM3_PER_M3, "%.5f");
  add_number (out, row->mass, "%.1f");
  add_number (out, row->hours, "%.2f");
  add_number (out, row->rate, "%.4f");
  g_string_append_printf (out, ",%s", isnan (row->rate) ? "" : fp_amount_unit (row->type, per));
  add_number (out, row->cost, "%.2f");
  g_string_append (out, "\r\n");
}

char *
fp_schedules_csv (const FpBill *bill, const FpScheduleChoice *choice)
{
  const GArray *rows = fp_bill_rows (bill);
  GString *out = g_string_new ("work,heading,id,thing,what,marks,material,pieces,length,width,thickness,amount,unit,volume_m3,mass_kg,"
                               "burns_h,rate,rate_per,cost\r\n");

  for (guint i = 0; i < rows->len; i++)
    {
      const FpBillRow *row = &g_array_index (rows, FpBillRow, i);

      if (fp_schedule_chooses (choice, row))
        add_csv_row (out, bill, row);
    }
  return g_string_free (out, FALSE);
}
