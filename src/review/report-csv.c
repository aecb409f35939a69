/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The findings as a table for other programs: one line a rule, RFC 4180, UTF-8. */
#include "footpace/review.h"

#include "csv.h"

#include <math.h>

static void
add (GString *out, const char *text)
{
  if (out->len > 0 && out->str[out->len - 1] != '\n')
    g_string_append_c (out, ',');
  fp_csv_add_quoted (out, text ? text : "");
}

static void
add_number (GString *out, double value)
{
  g_autofree char *text = isfinite (value) ? fp_number_format (value) : g_strdup ("");

  g_string_append_printf (out, ",%s", text);
}

static void
add_row (GString *out, const FpFindings *findings, const FpFinding *finding)
{
  const FpMeasure *measure = fp_measure_find (finding->rule->measure);
  const FpScene *scene = fp_findings_scene (findings);
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  add (out, fp_rulebook_id (finding->book));
  add (out, finding->rule->id);
  add (out, finding->title);
  add (out, fp_weight_label (finding->rule->weight));
  add (out, fp_found_id (finding->found));
  add (out, measure->label);
  add (out, fp_measure_unit_id (measure));
  add_number (out, finding->value);
  add (out, finding->measured);
  add (out, finding->limit);
  add (out, finding->owner >= 0 && (guint) finding->owner < n ? fp_item_id (placed[finding->owner].item) : NULL);
  add (out, finding->detail);
  add (out, finding->otherwise);
  add (out, finding->rule->source);
  g_string_append (out, "\r\n");
}

char *
fp_report_csv (const FpFindings *findings)
{
  GString *out = g_string_new ("book,rule,title,weight,found,measure,unit,value,measured,asked,item,detail,otherwise,source\r\n");
  guint n;
  const FpFinding *finding = fp_findings_get (findings, &n);

  for (guint i = 0; i < n; i++)
    add_row (out, findings, &finding[i]);
  return g_string_free (out, FALSE);
}
