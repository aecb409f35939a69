/* SPDX-License-Identifier: GPL-3.0-or-later */
/* comparison-rows.c - what the alternatives are compared by
 *
 * A row has a label, a way to fill a cell, and the measures whose rules tell
 * whether the cell is short.  A new row is a line in the table below.
 */
#include "comparison-private.h"

#include "footpace/schedules.h"

#include <math.h>

#define NOTHING "–"

typedef struct
{
  const FpFindings  *findings;
  const FpMeasuring *of;
  const FpScene     *scene;
  FpUnits            units;
  int                number; /* of the row: a focus, a weight */
} Column;

typedef struct
{
  const char *label;
  char     *(*fill) (const Column *column);
  int         number;
  const char *measures[3];
} Row;

/* --- the celebrant ------------------------------------------------------------------ */

/* Where he is to face the people from behind an altar that has no room there, he cannot. */
static char *
fill_facing (const Column *c)
{
  const int altar = fp_scene_celebrated_altar (c->scene);
  const FpPlaced *placed = altar >= 0 ? &fp_scene_placed (c->scene, NULL)[altar] : NULL;

  if (fp_project_facing (fp_scene_project (c->scene), fp_scene_alternative (c->scene)) == FP_FACING_EAST)
    return g_strdup ("liturgical east");
  return g_strdup (placed != NULL && placed->form.facing == FP_FACING_EAST ? "the people; no room" : "the people");
}

/* --- altar and people -------------------------------------------------------------- */

static char *
fill_footpace (const Column *c)
{
  g_autofree char *level = c->of->levels.has_altar ? fp_level_format (c->of->levels.footpace, c->units) : NULL;

  return level == NULL ? g_strdup (NOTHING) : g_strconcat (level, c->units == FP_UNITS_METRIC ? " m" : "", NULL);
}

static double
first_measured (const Column *c, const char *id)
{
  const FpMeasure *measure = fp_measure_find (id);
  g_autoptr (GArray) values = measure != NULL ? fp_measure_take (measure, c->of) : NULL;

  return values != NULL && values->len > 0 ? g_array_index (values, FpMeasured, 0).value : NAN;
}

static char *
fill_steps (const Column *c)
{
  const double steps = first_measured (c, "altar-steps"), riser = first_measured (c, "riser");
  g_autofree char *height = NULL;

  if (!(steps > 0))
    return g_strdup (steps == 0 ? "none" : NOTHING);
  if (!(riser > 0))
    return g_strdup_printf ("%.0f", steps);
  height = fp_length_format_unit (riser, c->units);
  return g_strdup_printf ("%.0f × %s", steps, height);
}

static char *
fill_tread (const Column *c)
{
  const double tread = first_measured (c, "tread");

  return tread > 0 ? fp_length_format_unit (tread, c->units) : g_strdup (NOTHING);
}

static char *
fill_margin (const Column *c)
{
  const FpLevels *levels = &c->of->levels;
  g_autofree char *text = NULL;

  if (!levels->has_altar || !levels->has_people)
    return g_strdup (NOTHING);
  text = fp_length_format_unit (fabs (levels->margin), c->units);
  return levels->margin > 0    ? g_strdup_printf ("%s below", text)
         : levels->margin == 0 ? g_strdup ("level with it")
                               : g_strdup_printf ("%s above", text);
}

static char *
fill_not_below (const Column *c)
{
  const FpLevels *levels = &c->of->levels;

  return levels->has_altar ? g_strdup_printf ("%u of %u", levels->not_below, levels->places) : g_strdup (NOTHING);
}

/* --- sight ---------------------------------------------------------------------------- */

static char *
fill_seen (const Column *c)
{
  const FpFocus focus = (FpFocus) c->number;
  g_autofree char *share = NULL;
  const FpMoment moment = fp_moment_of_focus (focus);
  FpSightSum sum;

  if (c->of->sight == NULL)
    return g_strdup ("…");
  if (!fp_sight_has (c->of->sight, focus))
    return g_strdup (NOTHING);
  sum = fp_sight_church (c->of->sight, moment, focus);
  if (sum.places == 0)
    return g_strdup (NOTHING);
  share = fp_share_format ((double) sum.half / sum.places, 0);
  return g_strdup_printf ("%s, %s", share, fp_posture_label (fp_people_posture (c->of->people, moment)));
}

static char *
fill_c_value (const Column *c)
{
  g_autoptr (GArray) rows = fp_row_c_values (c->of->people);
  double worst = G_MAXDOUBLE;
  g_autofree char *text = NULL;

  for (guint i = 0; i < rows->len; i++)
    worst = MIN (worst, g_array_index (rows, FpRowC, i).c);
  if (rows->len == 0)
    return g_strdup (NOTHING);
  text = fp_length_format_unit (fabs (round (worst)), c->units);
  return g_strdup_printf ("%s%s", round (worst) < 0 ? "−" : "", text);
}

/* --- rail ---------------------------------------------------------------------------------- */

static char *
fill_rail (const Column *c)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (c->scene, &n);
  double length = 0;
  gboolean any = FALSE;

  for (guint i = 0; i < n; i++)
    {
      const FpKind *kind = fp_item_kind (placed[i].item);
      const int param = fp_kind_param_index (kind, "length");
      if (placed[i].ghost || kind->role != FP_ROLE_RAIL)
        continue;
      any = TRUE;
      length += param >= 0 ? placed[i].form.param[param] : placed[i].plan.x1 - placed[i].plan.x0;
    }
  return any ? fp_length_format_unit (length, c->units) : g_strdup ("none");
}

/* Of the highest; where none stands there is nothing to measure. */
static char *
fill_rail_height (const Column *c)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (c->scene, &n);
  double height = 0;

  for (guint i = 0; i < n; i++)
    {
      const int param = fp_kind_param_index (fp_item_kind (placed[i].item), "height");
      if (!placed[i].ghost && fp_item_kind (placed[i].item)->role == FP_ROLE_RAIL && param >= 0)
        height = MAX (height, placed[i].form.param[param]);
    }
  return height > 0 ? fp_length_format_unit (height, c->units) : g_strdup (NOTHING);
}

static char *
fill_kneeling (const Column *c)
{
  guint n, at_rail = 0;
  const FpPersonPlace *place = fp_people_places (c->of->people, &n);

  for (guint i = 0; i < n; i++)
    at_rail += place[i].at_rail ? 1 : 0;
  return g_strdup_printf ("%u", at_rail);
}

/* --- findings and quantities ------------------------------------------------------------------ */

static char *
fill_findings (const Column *c)
{
  return g_strdup_printf ("%u", fp_findings_short (c->findings, (FpWeight) c->number));
}

enum { KEPT, ADDED, MOVED, REMOVED };

static char *
fill_counts (const Column *c)
{
  const FpScheduleCounts counts = fp_schedule_counts (c->scene);
  const guint of[] = { [KEPT] = counts.kept, [ADDED] = counts.added, [MOVED] = counts.moved,
                       [REMOVED] = counts.removed };

  return g_strdup_printf ("%u", of[c->number]);
}

static char *
fill_stone (const Column *c)
{
  g_autoptr (FpBill) bill = fp_bill_new (c->scene);
  const double stone = fp_bill_stone (bill);

  return stone > 0 ? fp_amount_format (FP_AMOUNT_VOLUME, stone, c->units) : g_strdup ("none");
}

static char *
fill_cost (const Column *c)
{
  g_autoptr (FpBill) bill = fp_bill_new (c->scene);
  g_autofree char *cost = fp_cost_format (fp_bill_cost (bill, FP_N_WORKS), fp_project_works (fp_scene_project (c->scene))->currency);

  g_autofree char *unpriced = fp_unpriced_text (fp_bill_unpriced (bill, FP_N_WORKS));

  return *cost != '\0' ? g_strconcat (cost, unpriced, NULL) : g_strdup ("none");
}

/* --- the table ------------------------------------------------------------------------------------ */

static const Row rows[] = {
  { "Celebrant faces", fill_facing, 0, { NULL } },
  { "Footpace above the datum", fill_footpace, 0, { NULL } },
  { "Altar steps", fill_steps, 0, { "altar-steps", "riser", NULL } },
  { "Treads of the altar steps", fill_tread, 0, { "tread", NULL } },
  { "Level of the people", fill_margin, 0, { "margin-below", NULL } },
  { "Places not below the altar", fill_not_below, 0, { "places-not-below", NULL } },
  { "Mensa seen", fill_seen, FP_FOCUS_MENSA, { "mensa-seen", "mensa-mean", NULL } },
  { "Raised Host seen", fill_seen, FP_FOCUS_HOST, { "host-unseen", NULL } },
  { "Tabernacle seen", fill_seen, FP_FOCUS_TABERNACLE, { "tabernacle-seen", NULL } },
  { "Crucifix seen", fill_seen, FP_FOCUS_CRUCIFIX, { "crucifix-seen", NULL } },
  { "Reader seen", fill_seen, FP_FOCUS_AMBO, { "ambo-seen", NULL } },
  { "Celebrant seated seen", fill_seen, FP_FOCUS_CHAIR, { "chair-seen", NULL } },
  { "C-value of the worst row", fill_c_value, 0, { "row-c", NULL } },
  { "Rail, length", fill_rail, 0, { NULL } },
  { "Rail, height", fill_rail_height, 0, { "rail-height", NULL } },
  { "Kneeling places at the rail", fill_kneeling, 0, { "kneeling-places", NULL } },
  { "Findings, required", fill_findings, FP_WEIGHT_REQUIRED, { NULL } },
  { "Findings, recommended", fill_findings, FP_WEIGHT_RECOMMENDED, { NULL } },
  { "Findings, customary", fill_findings, FP_WEIGHT_CUSTOMARY, { NULL } },
  { "Kept", fill_counts, KEPT, { NULL } },
  { "New", fill_counts, ADDED, { NULL } },
  { "Moved", fill_counts, MOVED, { NULL } },
  { "Removed", fill_counts, REMOVED, { NULL } },
  { "New stone", fill_stone, 0, { NULL } },
  { "Cost by the rates typed", fill_cost, 0, { NULL } }, /* the last: where no rates were typed there is none */
};

guint
fp_comparison_n_row_kinds (const FpProject *project)
{
  return (guint) G_N_ELEMENTS (rows) - (project != NULL && fp_project_works (project)->n_rates > 0 ? 0 : 1);
}

const char *
fp_comparison_row_label (guint row)
{
  return rows[row].label;
}

static gboolean
is_of_row (const Row *row, const char *measure)
{
  for (guint i = 0; row->measures[i] != NULL; i++)
    if (g_str_equal (row->measures[i], measure))
      return TRUE;
  return FALSE;
}

/* @weight: (out): of the heaviest, which come first */
static gboolean
is_short (const Row *row, const FpFindings *findings, FpWeight *weight)
{
  guint n;
  const FpFinding *finding = fp_findings_get (findings, &n);

  if (row->fill == fill_findings)
    return row->number == FP_WEIGHT_REQUIRED && fp_findings_short (findings, FP_WEIGHT_REQUIRED) > 0;
  for (guint i = 0; i < n; i++)
    if (finding[i].found == FP_FOUND_SHORT && is_of_row (row, finding[i].rule->measure))
      {
        *weight = finding[i].rule->weight;
        return TRUE;
      }
  return FALSE;
}

void
fp_comparison_row_fill (guint row, const FpFindings *findings, FpComparisonCell *cell)
{
  const FpScene *scene = fp_findings_scene (findings);
  const Column column = {
    .findings = findings, .of = fp_findings_measuring (findings), .scene = scene,
    .units = fp_project_brief (fp_scene_project (scene))->units, .number = rows[row].number,
  };

  cell->text = rows[row].fill (&column);
  cell->is_short = is_short (&rows[row], findings, &cell->weight);
}
