/* SPDX-License-Identifier: GPL-3.0-or-later */
/* capacities-data.c - as a table, and as data
 *
 * JSON: format "footpace.capacity", version 1.  Names are only ever added within a version.
 *
 *   { "format", "version", "project": { "title", "place" }, "alternative": { "id", "name" },
 *     "sections": [
 *       { "id": "places" | "wheelchairs" | "communion" | "ways-out", "title",
 *         "rows": [ { "what", "item": id or null, "sum": of several things, "found", "asked": number or null,
 *                     "unit": "places" | "people" | "mm" | "s" | "", "lacking", "note" } ],
 *         "says": by which rule, its source, and who decides } ],
 *     "caution" }
 */
#include "capacities-private.h"

#include "csv.h"
#include "json.h"

#include <math.h>

/* --- a table ---------------------------------------------------------------------------------- */

static void
add_number (GString *out, double value)
{
  g_autofree char *text = isnan (value) ? g_strdup ("") : fp_number_format (value);

  g_string_append_printf (out, ",%s", text);
}

static void
add_row (GString *out, const FpCapacitySection *section, const FpCapacityRow *row)
{
  g_string_append_printf (out, "%s,", section->id);
  fp_csv_add_quoted (out, row->cell[FP_CAPACITY_WHAT]);
  g_string_append_printf (out, ",%s,%s", row->item != NULL ? row->item : "", row->sum ? "yes" : "no");
  add_number (out, row->found);
  add_number (out, row->asked);
  g_string_append_printf (out, ",%s,%s,", row->unit, row->lacking ? "yes" : "no");
  fp_csv_add_quoted (out, row->cell[FP_CAPACITY_NOTE]);
  g_string_append (out, "\r\n");
}

char *
fp_capacities_csv (const FpCapacities *self)
{
  GString *out = g_string_new ("section,what,item,sum,found,asked,unit,lacking,note\r\n");

  for (guint i = 0; i < FP_N_CAPACITIES; i++)
    {
      const FpCapacitySection *section = fp_capacities_section (self, (FpCapacityOf) i);

      for (guint k = 0; k < section->rows->len; k++)
        add_row (out, section, &g_array_index (section->rows, FpCapacityRow, k));
    }
  return g_string_free (out, FALSE);
}

/* --- data ------------------------------------------------------------------------------------- */

static void
put_row (FpJson *json, const FpCapacityRow *row)
{
  fp_json_open (json, NULL, '{');
  fp_json_text (json, "what", row->cell[FP_CAPACITY_WHAT]);
  fp_json_text (json, "item", row->item);
  fp_json_yes (json, "sum", row->sum);
  fp_json_number (json, "found", row->found);
  fp_json_number (json, "asked", row->asked);
  fp_json_text (json, "unit", row->unit);
  fp_json_yes (json, "lacking", row->lacking);
  fp_json_text (json, "note", row->cell[FP_CAPACITY_NOTE]);
  fp_json_close (json, '}');
}

static void
put_section (FpJson *json, const FpCapacitySection *section)
{
  fp_json_open (json, NULL, '{');
  fp_json_text (json, "id", section->id);
  fp_json_text (json, "title", section->title);
  fp_json_open (json, "rows", '[');
  for (guint i = 0; i < section->rows->len; i++)
    put_row (json, &g_array_index (section->rows, FpCapacityRow, i));
  fp_json_close (json, ']');
  fp_json_text (json, "says", section->closing);
  fp_json_close (json, '}');
}

static void
put_of_what (FpJson *json, const FpScene *scene)
{
  const FpProject *project = fp_scene_project (scene);
  const FpAlternative *alternative = fp_project_alternative (project, fp_scene_alternative (scene));

  fp_json_open (json, "project", '{');
  fp_json_text (json, "title", fp_project_brief (project)->title);
  fp_json_text (json, "place", fp_project_brief (project)->place);
  fp_json_close (json, '}');
  fp_json_open (json, "alternative", '{');
  fp_json_text (json, "id", fp_alternative_id (alternative));
  fp_json_text (json, "name", fp_alternative_name (alternative));
  fp_json_close (json, '}');
}

char *
fp_capacities_json (const FpCapacities *self)
{
  FpJson json = { g_string_new (NULL), 0, FALSE };

  fp_json_open (&json, NULL, '{');
  fp_json_text (&json, "format", "footpace.capacity");
  fp_json_number (&json, "version", 1);
  put_of_what (&json, fp_capacities_scene (self));
  fp_json_open (&json, "sections", '[');
  for (guint i = 0; i < FP_N_CAPACITIES; i++)
    put_section (&json, fp_capacities_section (self, (FpCapacityOf) i));
  fp_json_close (&json, ']');
  fp_json_text (&json, "caution", fp_capacities_caution);
  fp_json_close (&json, '}');
  g_string_append_c (json.out, '\n');
  return g_string_free (json.out, FALSE);
}
