/* SPDX-License-Identifier: GPL-3.0-or-later */
/* capacities-sheet.c - for how many there is room, on paper */
#include "capacities-private.h"

#include "table-pages.h"

#define TITLE "Capacity"
#define CODE  "capacity"

#define WORDS (1u << FP_CAPACITY_WHAT | 1u << FP_CAPACITY_NOTE)

static GArray *
told_of (const FpCapacitySection *section)
{
  GArray *out = fp_told_new ();

  for (guint i = 0; i < section->rows->len; i++)
    {
      const FpCapacityRow *row = &g_array_index (section->rows, FpCapacityRow, i);
      const gboolean under = row->sum && i > 0 && !g_array_index (section->rows, FpCapacityRow, i - 1).sum;
      FpTold told = { .type = under ? FP_TOLD_SUM : FP_TOLD_ROW };

      for (guint k = 0; k < FP_N_CAPACITY_CELLS; k++)
        told.cell[k] = row->cell[k][0] != '\0' ? g_strdup (row->cell[k]) : NULL;
      if (row->lacking)
        {
          g_autofree char *note = told.cell[FP_CAPACITY_NOTE];

          told.cell[FP_CAPACITY_NOTE] = g_strconcat ("SHORT", note != NULL ? ": " : "", note != NULL ? note : "", NULL);
        }
      g_array_append_val (out, told);
    }
  return out;
}

GPtrArray *
fp_capacities_sheets (const FpCapacities *self, const FpSheetSpec *spec, GError **error)
{
  const char *heads[FP_N_CAPACITIES][FP_N_BILL_COLUMNS] = { { NULL } };
  GArray *told[FP_N_CAPACITIES];
  g_autofree char *closing = NULL;
  FpTable table[FP_N_CAPACITIES];
  GPtrArray *pages;

  for (guint i = 0; i < FP_N_CAPACITIES; i++)
    {
      const FpCapacitySection *section = fp_capacities_section (self, (FpCapacityOf) i);

      told[i] = told_of (section);
      for (guint k = 0; k < FP_N_CAPACITY_CELLS; k++)
        heads[i][k] = section->head[k];
      heads[i][FP_CAPACITY_WHAT] = section->title; /* a table has no other title */
      table[i] = (FpTable) { heads[i], fp_schedules_columns (told[i]) | 1u << FP_CAPACITY_WHAT, WORDS, told[i], section->closing };
    }
  closing = g_strdup_printf ("%s %s", table[FP_N_CAPACITIES - 1].closing, fp_capacities_caution);
  table[FP_N_CAPACITIES - 1].closing = closing;
  pages = fp_table_pages (fp_capacities_scene (self), spec, TITLE, CODE, table, FP_N_CAPACITIES, error);
  for (guint i = 0; i < FP_N_CAPACITIES; i++)
    g_array_unref (told[i]);
  return pages;
}

GPtrArray *
fp_capacities_sheets_of (const FpScene *scene, const FpSheetSpec *spec, GError **error)
{
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (FpSight) sight = fp_sight_new (people, NULL);
  g_autoptr (FpCapacities) all = fp_capacities_new (people, sight);

  return fp_capacities_sheets (all, spec, error);
}
