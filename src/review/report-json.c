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
 *     "norms":   { "not-followed": [ book ], "aside", "otherwise": [ { "rule", "book", "reason" } ] },
 *     "amiss":   [ text: a book that was left out or is held in place of another edition, a norm that could not be held, and why ],
 *     "books":   [ { "id", "title", "edition", "rules", "found" } ],
 *     "summary": { "rules", "held", "found": how many of "short", "within", "waiting", "nothing", "apart",
 *                  "short": { "required", "recommended", "customary" }, "says" },
 *     "cautions": [ text ] }
 */
#include "footpace/review.h"

#include "json.h"
#include "report-private.h"

#include <math.h>

/* --- what is written ----------------------------------------------------- */

static void
put_test (FpJson *json, const FpRule *rule)
{
  gboolean low = rule->test == FP_TEST_AT_LEAST || rule->test == FP_TEST_BETWEEN || rule->test == FP_TEST_EQUALS;
  gboolean high = rule->test == FP_TEST_AT_MOST || rule->test == FP_TEST_BETWEEN;

  fp_json_open (json, "test", '{');
  fp_json_text (json, "is", fp_test_id (rule->test));
  fp_json_number (json, "low", low ? rule->low : NAN);
  fp_json_number (json, "high", high ? rule->high : NAN);
  if (rule->test == FP_TEST_ONE_OF)
    {
      fp_json_open (json, "of", '[');
      for (guint i = 0; i < rule->n_one_of; i++)
        fp_json_number (json, NULL, rule->one_of[i]);
      fp_json_close (json, ']');
    }
  else
    fp_json_text (json, "of", NULL);
  fp_json_text (json, "unit", rule->unit);
  fp_json_close (json, '}');
}

static void
put_vec3 (FpJson *json, const char *name, FpVec3 p)
{
  fp_json_open (json, name, '[');
  fp_json_number (json, NULL, p.x);
  fp_json_number (json, NULL, p.y);
  fp_json_number (json, NULL, p.z);
  fp_json_close (json, ']');
}

static void
put_where (FpJson *json, const FpFindings *findings, const FpFinding *finding)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (fp_findings_scene (findings), &n);
  gboolean held = finding->found == FP_FOUND_SHORT || finding->found == FP_FOUND_WITHIN;

  fp_json_open (json, "where", '{');
  fp_json_text (json, "item",
            finding->owner >= 0 && (guint) finding->owner < n ? fp_item_id (placed[finding->owner].item) : NULL);
  if (finding->has_at)
    put_vec3 (json, "at", finding->at);
  else
    fp_json_text (json, "at", NULL);
  fp_json_text (json, "text", held ? finding->detail : NULL);
  fp_json_close (json, '}');
  fp_json_text (json, "reason", held ? NULL : finding->detail);
}

static void
put_point (FpJson *json, FpPoint p)
{
  fp_json_open (json, NULL, '[');
  fp_json_number (json, NULL, p.x);
  fp_json_number (json, NULL, p.y);
  fp_json_close (json, ']');
}

static void
put_points (FpJson *json, const char *name, const FpPoint *pt, guint n)
{
  fp_json_open (json, name, '[');
  for (guint i = 0; i < n; i++)
    put_point (json, pt[i]);
  fp_json_close (json, ']');
}

/* In church coordinates, mm; only of what was measured along a way. */
static void
put_way (FpJson *json, const FpWay *way)
{
  if (way == NULL)
    return;
  fp_json_open (json, "way", '{');
  fp_json_number (json, "width", way->width);
  fp_json_number (json, "tolerance", way->tolerance);
  put_points (json, "narrowest", way->narrow, way->narrows ? 2 : 0);
  put_points (json, "route", way->route, way->n_route);
  fp_json_close (json, '}');
}

/* To hundredths of a millimetre: a church can be set out no finer, and nobody reads more digits. */
static FpVec3
rounded (FpVec3 p)
{
  return (FpVec3) { round (p.x * 100) / 100, round (p.y * 100) / 100, round (p.z * 100) / 100 };
}

static void
put_piece (FpJson *json, const FpEvidencePiece *piece, const FpVec3 *pt)
{
  static const char *const is[] = { [FP_EVIDENCE_LENGTH] = "length", [FP_EVIDENCE_LINE] = "line", [FP_EVIDENCE_OUTLINE] = "outline",
                                    [FP_EVIDENCE_BODY] = "thing", [FP_EVIDENCE_EACH] = "each" };

  fp_json_open (json, NULL, '{');
  fp_json_text (json, "is", is[piece->sort]);
  if (piece->sort == FP_EVIDENCE_LENGTH)
    fp_json_number (json, "times", piece->times);
  fp_json_open (json, "points", '[');
  for (guint i = 0; i < piece->n; i++)
    put_vec3 (json, NULL, rounded (pt[piece->first + i]));
  fp_json_close (json, ']');
  fp_json_close (json, '}');
}

static void
put_drawn (FpJson *json, const FpFindings *findings, const FpFinding *finding)
{
  g_autoptr (FpEvidence) evidence = fp_finding_evidence (findings, finding);
  guint n = 0;
  const FpEvidencePiece *piece = evidence != NULL ? fp_evidence_pieces (evidence, &n) : NULL;

  if (evidence == NULL)
    {
      fp_json_text (json, "drawn", NULL);
      return;
    }
  fp_json_open (json, "drawn", '[');
  for (guint i = 0; i < n; i++)
    put_piece (json, &piece[i], fp_evidence_points (evidence));
  fp_json_close (json, ']');
}

static void
put_change (FpJson *json, const FpChange *change)
{
  fp_json_open (json, NULL, '{');
  fp_json_text (json, "item", change->item);
  fp_json_text (json, "param", change->param != NULL ? change->param->id : NULL);
  fp_json_number (json, "value", change->param != NULL ? change->value : NAN);
  if (change->param == NULL)
    {
      fp_json_open (json, "by", '[');
      fp_json_number (json, NULL, change->by.x);
      fp_json_number (json, NULL, change->by.y);
      fp_json_close (json, ']');
    }
  else
    fp_json_text (json, "by", NULL);
  fp_json_close (json, '}');
}

static void
put_rules (FpJson *json, const char *name, const FpFinding *all, const guint *index, guint n)
{
  fp_json_open (json, name, '[');
  for (guint i = 0; i < n; i++)
    {
      fp_json_open (json, NULL, '{');
      fp_json_text (json, "rule", all[index[i]].rule->id);
      fp_json_text (json, "book", fp_rulebook_id (all[index[i]].book));
      fp_json_close (json, '}');
    }
  fp_json_close (json, ']');
}

static void
put_sight_lost (FpJson *json, const FpFinding *all, const FpRemedy *remedy)
{
  fp_json_open (json, "sight-lost", '[');
  for (guint i = 0; remedy != NULL && i < remedy->n_dims; i++)
    {
      const FpFinding *finding = &all[remedy->dims[i].finding];

      fp_json_open (json, NULL, '{');
      fp_json_text (json, "rule", finding->rule->id);
      fp_json_text (json, "book", fp_rulebook_id (finding->book));
      fp_json_number (json, "share", remedy->dims[i].lost);
      fp_json_close (json, '}');
    }
  fp_json_close (json, ']');
}

static void
put_further (FpJson *json, const FpFinding *all, const FpRemedy *further)
{
  if (further == NULL)
    {
      fp_json_text (json, "further", NULL);
      return;
    }
  fp_json_open (json, "further", '{');
  fp_json_number (json, "value", further->change[0].value);
  put_rules (json, "also", all, further->settles, further->n_settles);
  fp_json_close (json, '}');
}

static void
put_remedy (FpJson *json, const FpFinding *all, const FpRemedy *remedy, const FpRemedy *further, const char *words)
{
  fp_json_open (json, "remedy", '{');
  fp_json_yes (json, "settles", remedy != NULL);
  fp_json_text (json, "text", words);
  fp_json_open (json, "changes", '[');
  for (guint i = 0; remedy != NULL && i < remedy->n_changes; i++)
    put_change (json, &remedy->change[i]);
  fp_json_close (json, ']');
  put_rules (json, "worse", all, remedy != NULL ? remedy->worse : NULL, remedy != NULL ? remedy->n_worse : 0);
  put_rules (json, "also", all, remedy != NULL ? remedy->settles : NULL, remedy != NULL ? remedy->n_settles : 0);
  fp_json_number (json, "places-lost", remedy != NULL ? remedy->places_lost : 0);
  put_sight_lost (json, all, remedy);
  put_further (json, all, further);
  fp_json_close (json, '}');
}

static void
put_finding (FpJson *json, const FpFindings *findings, guint i, const FpRemedies *remedies)
{
  guint n;
  const FpFinding *all = fp_findings_get (findings, &n), *finding = &all[i];
  const char *words = NULL;
  const FpRemedy *remedy = remedies != NULL ? fp_remedies_get (remedies, i, &words) : NULL;
  const FpMeasure *measure = fp_measure_find (finding->rule->measure);

  fp_json_open (json, NULL, '{');
  fp_json_text (json, "rule", finding->rule->id);
  fp_json_text (json, "book", fp_rulebook_id (finding->book));
  fp_json_text (json, "title", finding->title);
  fp_json_text (json, "measure", measure->id);
  fp_json_text (json, "label", measure->label);
  fp_json_text (json, "weight", fp_weight_label (finding->rule->weight));
  fp_json_text (json, "found", fp_found_id (finding->found));
  fp_json_open (json, "measured", '{');
  fp_json_number (json, "value", finding->value);
  fp_json_text (json, "unit", fp_measure_unit_id (measure));
  fp_json_text (json, "text", finding->measured);
  fp_json_text (json, "counted", measure->many);
  fp_json_close (json, '}');
  fp_json_number (json, "times", finding->times);
  fp_json_text (json, "limit", finding->limit);
  put_test (json, finding->rule);
  fp_json_text (json, "source", finding->rule->source);
  fp_json_text (json, "advice", finding->rule->advice);
  fp_json_text (json, "caution", finding->rule->caution);
  put_where (json, findings, finding);
  put_way (json, finding->way);
  put_drawn (json, findings, finding);
  fp_json_text (json, "otherwise", finding->otherwise);
  fp_json_text (json, "disagree", finding->disagree);
  if (remedies != NULL && finding->found == FP_FOUND_SHORT)
    put_remedy (json, all, remedy, remedy != NULL ? fp_remedies_further (remedies, i) : NULL, words);
  else
    fp_json_text (json, "remedy", NULL);
  fp_json_close (json, '}');
}

static void
put_states (FpJson *json, const FpReportStates *states)
{
  fp_json_open (json, "found", '{');
  for (guint f = 0; f < G_N_ELEMENTS (states->of); f++)
    fp_json_number (json, fp_found_id ((FpFound) f), states->of[f]);
  fp_json_close (json, '}');
}

static void
put_books (FpJson *json, const FpFindings *findings)
{
  g_autoptr (GPtrArray) books = fp_report_books (findings);

  fp_json_open (json, "books", '[');
  for (guint b = 0; b < books->len; b++)
    {
      const FpRulebook *book = g_ptr_array_index (books, b);
      const FpReportStates states = fp_report_states (findings, book);

      fp_json_open (json, NULL, '{');
      fp_json_text (json, "id", fp_rulebook_id (book));
      fp_json_text (json, "title", fp_rulebook_title (book));
      fp_json_text (json, "edition", fp_rulebook_edition (book));
      fp_json_number (json, "rules", states.all);
      put_states (json, &states);
      fp_json_close (json, '}');
    }
  fp_json_close (json, ']');
}

static void
put_changes (FpJson *json, const char *name, const FpFindings *findings, gboolean aside)
{
  guint n;
  const FpFinding *finding = fp_findings_get (findings, &n);

  fp_json_open (json, name, '[');
  for (guint i = 0; i < n; i++)
    {
      const FpNormChange *change = fp_report_norm (findings, &finding[i]);

      if (change == NULL || change->aside != aside)
        continue;
      fp_json_open (json, NULL, '{');
      fp_json_text (json, "rule", change->rule);
      fp_json_text (json, "book", change->book);
      fp_json_text (json, "reason", change->reason);
      fp_json_close (json, '}');
    }
  fp_json_close (json, ']');
}

static void
put_norms (FpJson *json, const FpFindings *findings)
{
  const FpNorms *norms = fp_project_norms (fp_scene_project (fp_findings_scene (findings)));

  fp_json_open (json, "norms", '{');
  fp_json_open (json, "not-followed", '[');
  for (guint i = 0; i < norms->n_without; i++)
    fp_json_text (json, NULL, norms->without[i]);
  fp_json_close (json, ']');
  put_changes (json, "aside", findings, TRUE);
  put_changes (json, "otherwise", findings, FALSE);
  fp_json_close (json, '}');
}

static void
put_summary (FpJson *json, const FpFindings *findings)
{
  const FpReportStates states = fp_report_states (findings, NULL);
  g_autofree char *says = fp_report_closing (findings);

  fp_json_open (json, "summary", '{');
  fp_json_number (json, "rules", states.all);
  fp_json_number (json, "held", states.held);
  put_states (json, &states);
  fp_json_open (json, "short", '{');
  for (int weight = 0; weight < FP_N_WEIGHTS; weight++)
    fp_json_number (json, fp_weight_label ((FpWeight) weight), fp_findings_short (findings, (FpWeight) weight));
  fp_json_close (json, '}');
  fp_json_text (json, "says", says);
  fp_json_close (json, '}');
}

/* What goes with every report, however clean. */
static void
put_cautions (FpJson *json)
{
  guint n;
  const char *const *caution = fp_report_cautions (&n);

  fp_json_open (json, "cautions", '[');
  for (guint i = 0; i < n; i++)
    fp_json_text (json, NULL, caution[i]);
  fp_json_close (json, ']');
}

char *
fp_report_json (const FpFindings *findings)
{
  return fp_report_json_remedied (findings, NULL);
}

char *
fp_report_json_remedied (const FpFindings *findings, const FpRemedies *remedies)
{
  FpJson json = { g_string_new (NULL), 0, FALSE };
  const FpScene *scene = fp_findings_scene (findings);
  const FpProject *project = fp_scene_project (scene);
  const FpBrief *brief = fp_project_brief (project);
  const FpAlternative *alternative = fp_project_alternative (project, fp_scene_alternative (scene));
  guint n;

  fp_findings_get (findings, &n);
  fp_json_open (&json, NULL, '{');
  fp_json_text (&json, "format", "footpace.findings");
  fp_json_number (&json, "version", 1);
  fp_json_open (&json, "project", '{');
  fp_json_text (&json, "title", brief->title);
  fp_json_text (&json, "place", brief->place);
  fp_json_close (&json, '}');
  fp_json_open (&json, "alternative", '{');
  fp_json_text (&json, "id", fp_alternative_id (alternative));
  fp_json_text (&json, "name", fp_alternative_name (alternative));
  fp_json_close (&json, '}');
  if (fp_scene_setting (fp_findings_scene (findings)) != NULL)
    fp_json_text (&json, "celebration", fp_celebration_id (fp_setting_celebration (fp_scene_setting (fp_findings_scene (findings)))));
  fp_json_open (&json, "findings", '[');
  for (guint i = 0; i < n; i++)
    put_finding (&json, findings, i, remedies);
  fp_json_close (&json, ']');
  fp_json_text (&json, "jurisdiction", fp_jurisdiction_id (fp_project_norms (fp_scene_project (fp_findings_scene (findings)))->jurisdiction));
  put_norms (&json, findings);
  fp_json_open (&json, "amiss", '[');
  for (guint i = 0; i < fp_findings_amiss (findings)->len; i++)
    fp_json_text (&json, NULL, fp_findings_amiss (findings)->pdata[i]);
  fp_json_close (&json, ']');
  put_books (&json, findings);
  put_summary (&json, findings);
  put_cautions (&json);
  fp_json_close (&json, '}');
  g_string_append_c (json.out, '\n');
  return g_string_free (json.out, FALSE);
}
