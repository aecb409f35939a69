/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The findings as data, for other programs: JSON (RFC 8259), UTF-8.
 *
 * format "footpace.findings", version 1.  Names are only ever added within a version.
 *
 *   { "format", "version", "project": { "title", "place" }, "alternative": { "id", "name" },
 *     "findings": [
 *       { "rule", "book", "title", "measure", "label": what is measured, in words,
 *         "weight":   "required" | "recommended" | "customary",
 *         "found":    "short" | "within" | "waiting" | "nothing" | "apart",
 *         "measured": { "value": number or null, "unit": "mm" | "mm2" | "kN/m2" | "share" | "yes" | "", "text",
 *                       "counted": what is counted, such as "places", or null },
 *         "times":    number of measured values outside the limit,
 *         "limit":    text,
 *         "test":     { "is", "low", "high", "of", "unit" }  as printed; what the test does not use is null
 *         "source", "advice", "caution": text or null,
 *         "where":    { "item": id or null, "at": [x, y, z] mm or null, "text": text or null },
 *         "reason":   why it was not held, or null,
 *         "way":      only where it was measured along a way: { "width", "tolerance", "narrowest": [ [x, y] ], "route": [ [x, y] ] },
 *         "drawn":    what was measured, in church coordinates, mm; null where nothing was:
 *                     [ { "is": "length" | "line" | "outline" | "thing" | "each", "times": of a length, how often it counts in
 *                         the value, "points": [ [x, y, z] ] } ],
 *         "otherwise": that the parish holds it otherwise than it is printed, and why, or null,
 *         "disagree": what other sources print of the same matter, or null,
 *         "remedy":   null where nobody asked for it or it is not short, or
 *                     { "settles": true or false, "text": the remedy, or what stands in its way, or null,
 *                       "changes": [ { "item", "param": id or null, "value": number or null,
 *                                      "by": [x, y] mm that it is moved, or null } ],
 *                       "worse": [ { "rule", "book" }: of less weight, that it makes worse ] } } ],
 *     "jurisdiction": "unsaid" | "us" | "uk" | "eu" | "other",
 *     "amiss":   [ text: a book that was left out, a norm that could not be held, and why ],
 *     "books":   [ { "id", "title", "edition", "rules", "found" } ],
 *     "summary": { "rules", "held", "found": how many of "short", "within", "waiting", "nothing", "apart",
 *                  "short": { "required", "recommended", "customary" }, "says" },
 *     "cautions": [ text ] }
 */
#include "footpace/review.h"

#include "report-private.h"

#include <math.h>

/* --- writing ------------------------------------------------------------- */

typedef struct
{
  GString *out;
  guint    depth;
  gboolean begun; /* something stands already in the innermost bracket        */
} Json;

static void
put_escaped (GString *out, const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);

  g_string_append_c (out, '"');
  for (const char *p = valid; *p; p++)
    switch (*p)
      {
      case '"':
        g_string_append (out, "\\\"");
        break;
      case '\\':
        g_string_append (out, "\\\\");
        break;
      case '\n':
        g_string_append (out, "\\n");
        break;
      case '\t':
        g_string_append (out, "\\t");
        break;
      default:
        if ((guchar) *p < 0x20 || *p == 0x7f)
          g_string_append_printf (out, "\\u%04x", (guint) (guchar) *p);
        else
          g_string_append_c (out, *p);
      }
  g_string_append_c (out, '"');
}

/* Comma, new line and indent before the next value, and its name where it has one. */
static void
put_lead (Json *json, const char *name)
{
  g_string_append (json->out, json->begun ? ",\n" : json->depth ? "\n" : "");
  g_string_append_printf (json->out, "%*s", (int) json->depth * 2, "");
  if (name)
    {
      put_escaped (json->out, name);
      g_string_append (json->out, ": ");
    }
  json->begun = TRUE;
}

static void
open_bracket (Json *json, const char *name, char bracket)
{
  put_lead (json, name);
  g_string_append_c (json->out, bracket);
  json->depth++;
  json->begun = FALSE;
}

static void
close_bracket (Json *json, char bracket)
{
  json->depth--;
  if (json->begun)
    g_string_append_printf (json->out, "\n%*s", (int) json->depth * 2, "");
  g_string_append_c (json->out, bracket);
  json->begun = TRUE;
}

static void
put_text (Json *json, const char *name, const char *text)
{
  put_lead (json, name);
  if (text)
    put_escaped (json->out, text);
  else
    g_string_append (json->out, "null");
}

static void
put_number (Json *json, const char *name, double value)
{
  put_lead (json, name);
  if (isfinite (value))
    {
      g_autofree char *text = fp_number_format (value);

      g_string_append (json->out, text);
    }
  else
    g_string_append (json->out, "null");
}

/* --- what is written ----------------------------------------------------- */

static void
put_test (Json *json, const FpRule *rule)
{
  gboolean low = rule->test == FP_TEST_AT_LEAST || rule->test == FP_TEST_BETWEEN || rule->test == FP_TEST_EQUALS;
  gboolean high = rule->test == FP_TEST_AT_MOST || rule->test == FP_TEST_BETWEEN;

  open_bracket (json, "test", '{');
  put_text (json, "is", fp_test_id (rule->test));
  put_number (json, "low", low ? rule->low : NAN);
  put_number (json, "high", high ? rule->high : NAN);
  if (rule->test == FP_TEST_ONE_OF)
    {
      open_bracket (json, "of", '[');
      for (guint i = 0; i < rule->n_one_of; i++)
        put_number (json, NULL, rule->one_of[i]);
      close_bracket (json, ']');
    }
  else
    put_text (json, "of", NULL);
  put_text (json, "unit", rule->unit);
  close_bracket (json, '}');
}

static void
put_vec3 (Json *json, const char *name, FpVec3 p)
{
  open_bracket (json, name, '[');
  put_number (json, NULL, p.x);
  put_number (json, NULL, p.y);
  put_number (json, NULL, p.z);
  close_bracket (json, ']');
}

static void
put_where (Json *json, const FpFindings *findings, const FpFinding *finding)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (fp_findings_scene (findings), &n);
  gboolean held = finding->found == FP_FOUND_SHORT || finding->found == FP_FOUND_WITHIN;

  open_bracket (json, "where", '{');
  put_text (json, "item",
            finding->owner >= 0 && (guint) finding->owner < n ? fp_item_id (placed[finding->owner].item) : NULL);
  if (finding->has_at)
    put_vec3 (json, "at", finding->at);
  else
    put_text (json, "at", NULL);
  put_text (json, "text", held ? finding->detail : NULL);
  close_bracket (json, '}');
  put_text (json, "reason", held ? NULL : finding->detail);
}

static void
put_point (Json *json, FpPoint p)
{
  open_bracket (json, NULL, '[');
  put_number (json, NULL, p.x);
  put_number (json, NULL, p.y);
  close_bracket (json, ']');
}

static void
put_points (Json *json, const char *name, const FpPoint *pt, guint n)
{
  open_bracket (json, name, '[');
  for (guint i = 0; i < n; i++)
    put_point (json, pt[i]);
  close_bracket (json, ']');
}

/* In church coordinates, mm; only of what was measured along a way. */
static void
put_way (Json *json, const FpWay *way)
{
  if (way == NULL)
    return;
  open_bracket (json, "way", '{');
  put_number (json, "width", way->width);
  put_number (json, "tolerance", way->tolerance);
  put_points (json, "narrowest", way->narrow, way->narrows ? 2 : 0);
  put_points (json, "route", way->route, way->n_route);
  close_bracket (json, '}');
}

/* To hundredths of a millimetre: a church can be set out no finer, and nobody reads more digits. */
static FpVec3
rounded (FpVec3 p)
{
  return (FpVec3) { round (p.x * 100) / 100, round (p.y * 100) / 100, round (p.z * 100) / 100 };
}

static void
put_piece (Json *json, const FpEvidencePiece *piece, const FpVec3 *pt)
{
  static const char *const is[] = { [FP_EVIDENCE_LENGTH] = "length", [FP_EVIDENCE_LINE] = "line", [FP_EVIDENCE_OUTLINE] = "outline",
                                    [FP_EVIDENCE_BODY] = "thing", [FP_EVIDENCE_EACH] = "each" };

  open_bracket (json, NULL, '{');
  put_text (json, "is", is[piece->sort]);
  if (piece->sort == FP_EVIDENCE_LENGTH)
    put_number (json, "times", piece->times);
  open_bracket (json, "points", '[');
  for (guint i = 0; i < piece->n; i++)
    put_vec3 (json, NULL, rounded (pt[piece->first + i]));
  close_bracket (json, ']');
  close_bracket (json, '}');
}

static void
put_drawn (Json *json, const FpFindings *findings, const FpFinding *finding)
{
  g_autoptr (FpEvidence) evidence = fp_finding_evidence (findings, finding);
  guint n = 0;
  const FpEvidencePiece *piece = evidence != NULL ? fp_evidence_pieces (evidence, &n) : NULL;

  if (evidence == NULL)
    {
      put_text (json, "drawn", NULL);
      return;
    }
  open_bracket (json, "drawn", '[');
  for (guint i = 0; i < n; i++)
    put_piece (json, &piece[i], fp_evidence_points (evidence));
  close_bracket (json, ']');
}

static void
put_change (Json *json, const FpChange *change)
{
  open_bracket (json, NULL, '{');
  put_text (json, "item", change->item);
  put_text (json, "param", change->param != NULL ? change->param->id : NULL);
  put_number (json, "value", change->param != NULL ? change->value : NAN);
  if (change->param == NULL)
    {
      open_bracket (json, "by", '[');
      put_number (json, NULL, change->by.x);
      put_number (json, NULL, change->by.y);
      close_bracket (json, ']');
    }
  else
    put_text (json, "by", NULL);
  close_bracket (json, '}');
}

static void
put_remedy (Json *json, const FpFinding *all, const FpRemedy *remedy, const char *words)
{
  open_bracket (json, "remedy", '{');
  put_lead (json, "settles");
  g_string_append (json->out, remedy != NULL ? "true" : "false");
  put_text (json, "text", words);
  open_bracket (json, "changes", '[');
  for (guint i = 0; remedy != NULL && i < remedy->n_changes; i++)
    put_change (json, &remedy->change[i]);
  close_bracket (json, ']');
  open_bracket (json, "worse", '[');
  for (guint i = 0; remedy != NULL && i < remedy->n_worse; i++)
    {
      open_bracket (json, NULL, '{');
      put_text (json, "rule", all[remedy->worse[i]].rule->id);
      put_text (json, "book", fp_rulebook_id (all[remedy->worse[i]].book));
      close_bracket (json, '}');
    }
  close_bracket (json, ']');
  close_bracket (json, '}');
}

static void
put_finding (Json *json, const FpFindings *findings, guint i, const FpRemedies *remedies)
{
  guint n;
  const FpFinding *all = fp_findings_get (findings, &n), *finding = &all[i];
  const char *words = NULL;
  const FpRemedy *remedy = remedies != NULL ? fp_remedies_get (remedies, i, &words) : NULL;
  const FpMeasure *measure = fp_measure_find (finding->rule->measure);

  open_bracket (json, NULL, '{');
  put_text (json, "rule", finding->rule->id);
  put_text (json, "book", fp_rulebook_id (finding->book));
  put_text (json, "title", finding->title);
  put_text (json, "measure", measure->id);
  put_text (json, "label", measure->label);
  put_text (json, "weight", fp_weight_label (finding->rule->weight));
  put_text (json, "found", fp_found_id (finding->found));
  open_bracket (json, "measured", '{');
  put_number (json, "value", finding->value);
  put_text (json, "unit", fp_measure_unit_id (measure));
  put_text (json, "text", finding->measured);
  put_text (json, "counted", measure->many);
  close_bracket (json, '}');
  put_number (json, "times", finding->times);
  put_text (json, "limit", finding->limit);
  put_test (json, finding->rule);
  put_text (json, "source", finding->rule->source);
  put_text (json, "advice", finding->rule->advice);
  put_text (json, "caution", finding->rule->caution);
  put_where (json, findings, finding);
  put_way (json, finding->way);
  put_drawn (json, findings, finding);
  put_text (json, "otherwise", finding->otherwise);
  put_text (json, "disagree", finding->disagree);
  if (remedies != NULL && finding->found == FP_FOUND_SHORT)
    put_remedy (json, all, remedy, words);
  else
    put_text (json, "remedy", NULL);
  close_bracket (json, '}');
}

static void
put_states (Json *json, const FpReportStates *states)
{
  open_bracket (json, "found", '{');
  for (guint f = 0; f < G_N_ELEMENTS (states->of); f++)
    put_number (json, fp_found_id ((FpFound) f), states->of[f]);
  close_bracket (json, '}');
}

static void
put_books (Json *json, const FpFindings *findings)
{
  g_autoptr (GPtrArray) books = fp_report_books (findings);

  open_bracket (json, "books", '[');
  for (guint b = 0; b < books->len; b++)
    {
      const FpRulebook *book = g_ptr_array_index (books, b);
      const FpReportStates states = fp_report_states (findings, book);

      open_bracket (json, NULL, '{');
      put_text (json, "id", fp_rulebook_id (book));
      put_text (json, "title", fp_rulebook_title (book));
      put_text (json, "edition", fp_rulebook_edition (book));
      put_number (json, "rules", states.all);
      put_states (json, &states);
      close_bracket (json, '}');
    }
  close_bracket (json, ']');
}

static void
put_summary (Json *json, const FpFindings *findings)
{
  const FpReportStates states = fp_report_states (findings, NULL);
  g_autofree char *says = fp_report_closing (findings);

  open_bracket (json, "summary", '{');
  put_number (json, "rules", states.all);
  put_number (json, "held", states.held);
  put_states (json, &states);
  open_bracket (json, "short", '{');
  for (int weight = 0; weight < FP_N_WEIGHTS; weight++)
    put_number (json, fp_weight_label ((FpWeight) weight), fp_findings_short (findings, (FpWeight) weight));
  close_bracket (json, '}');
  put_text (json, "says", says);
  close_bracket (json, '}');
}

/* What goes with every report, however clean. */
static void
put_cautions (Json *json)
{
  guint n;
  const char *const *caution = fp_report_cautions (&n);

  open_bracket (json, "cautions", '[');
  for (guint i = 0; i < n; i++)
    put_text (json, NULL, caution[i]);
  close_bracket (json, ']');
}

char *
fp_report_json (const FpFindings *findings)
{
  return fp_report_json_remedied (findings, NULL);
}

char *
fp_report_json_remedied (const FpFindings *findings, const FpRemedies *remedies)
{
  Json json = { g_string_new (NULL), 0, FALSE };
  const FpScene *scene = fp_findings_scene (findings);
  const FpProject *project = fp_scene_project (scene);
  const FpBrief *brief = fp_project_brief (project);
  const FpAlternative *alternative = fp_project_alternative (project, fp_scene_alternative (scene));
  guint n;

  fp_findings_get (findings, &n);
  open_bracket (&json, NULL, '{');
  put_text (&json, "format", "footpace.findings");
  put_number (&json, "version", 1);
  open_bracket (&json, "project", '{');
  put_text (&json, "title", brief->title);
  put_text (&json, "place", brief->place);
  close_bracket (&json, '}');
  open_bracket (&json, "alternative", '{');
  put_text (&json, "id", fp_alternative_id (alternative));
  put_text (&json, "name", fp_alternative_name (alternative));
  close_bracket (&json, '}');
  if (fp_scene_setting (fp_findings_scene (findings)) != NULL)
    put_text (&json, "celebration", fp_celebration_id (fp_setting_celebration (fp_scene_setting (fp_findings_scene (findings)))));
  open_bracket (&json, "findings", '[');
  for (guint i = 0; i < n; i++)
    put_finding (&json, findings, i, remedies);
  close_bracket (&json, ']');
  put_text (&json, "jurisdiction", fp_jurisdiction_id (fp_project_norms (fp_scene_project (fp_findings_scene (findings)))->jurisdiction));
  open_bracket (&json, "amiss", '[');
  for (guint i = 0; i < fp_findings_amiss (findings)->len; i++)
    put_text (&json, NULL, fp_findings_amiss (findings)->pdata[i]);
  close_bracket (&json, ']');
  put_books (&json, findings);
  put_summary (&json, findings);
  put_cautions (&json);
  close_bracket (&json, '}');
  g_string_append_c (json.out, '\n');
  return g_string_free (json.out, FALSE);
}
