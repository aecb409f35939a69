/* SPDX-License-Identifier: GPL-3.0-or-later */
/* first-row.c - how high the altar must stand for the first row that looks over another, and by how many steps
 *
 * Raised by h, C grows by h T / (D + T), for each row in proportion: so the level is reckoned, and then measured in the church
 * in which the steps are so, where the footpace has grown by a tread for each, too.
 */
#include "footpace/remedy.h"

#include <math.h>

#define MEASURED_AGAIN 4    /* times: what is changed may bring another row to the front */
#define TOUCH          1.0  /* mm: what only touches a wall is not in it               */
#define ENOUGH         1e-6 /* mm                                                       */

double
fp_first_row_c (guint i)
{
  /* P. Shepherd, "Sightlines" worksheet, University of Bath (2012): needs looking between heads, good, the optimum. */
  static const double TABLE[FP_FIRST_ROW_CS] = { 60, 90, 120 };

  return TABLE[MIN (i, FP_FIRST_ROW_CS - 1)];
}

/* The steps of the altar of celebration; -1. */
static int
steps_of_altar (const FpScene *scene)
{
  const FpPlaced *placed = fp_scene_placed (scene, NULL);
  const int altar = fp_scene_celebrated_altar (scene);

  for (int i = altar >= 0 ? placed[altar].support : -1; i >= 0; i = placed[i].support)
    if (fp_item_kind (placed[i].item)->role == FP_ROLE_FOOTPACE)
      return i;
  return -1;
}

static const FpParam *
param_of (const FpPlaced *steps, const char *id)
{
  const FpKind *kind = fp_item_kind (steps->item);

  return &kind->params[fp_kind_param_index (kind, id)];
}

/* A whole millimetre, or a sixteenth of an inch, more; but not more than is allowed. */
static double
even_riser (double riser, FpRisers allowed, FpUnits units)
{
  const double grain = units == FP_UNITS_METRIC ? 1.0 : 25.4 / 16;

  return MIN (ceil (riser / grain - ENOUGH) * grain, allowed.high);
}

/* --- tried -------------------------------------------------------------------------- */

typedef struct
{
  const FpScene    *scene;
  const FpPlaced   *steps;
  FpRisers          risers;
  FpUnits           units;
} Search;

/* As many steps of the same thing, each so high; FALSE where it cannot have so many. */
static gboolean
set_steps (const Search *s, FpFirstRow *out)
{
  const FpParam *count = param_of (s->steps, "count"), *riser = param_of (s->steps, "riser");

  if (out->flight.steps > count->max)
    return FALSE;
  const char *item = g_intern_string (fp_item_id (s->steps->item));

  out->flight.riser = even_riser (out->flight.riser, s->risers, s->units);
  out->remedy = (FpRemedy) {
    .change = { { .item = item, .param = count, .value = out->flight.steps },
                { .item = item, .param = riser, .value = out->flight.riser } },
    .n_changes = 2,
  };
  out->level = s->steps->level + out->flight.steps * out->flight.riser;
  return TRUE;
}

static void
count_rows (const GArray *rows, FpFirstRow *out)
{
  out->rows = rows->len;
  out->reach = out->places = out->reached = 0;
  for (guint i = 0; i < rows->len; i++)
    {
      const FpRowC *row = &g_array_index (rows, FpRowC, i);
      const gboolean has_it = row->c >= out->wanted - ENOUGH;

      out->places += row->places;
      out->reach += has_it ? 1 : 0;
      out->reached += has_it ? row->places : 0;
    }
}

/* Walls that stand as low as the steps; not what lies over an arch. */
static gboolean
reach_into_walls (const FpScene *scene, const char *id)
{
  guint n;
  const int steps = fp_scene_find (scene, id);
  const FpSolid *solid = fp_scene_solids (scene, &n);

  if (steps < 0)
    return FALSE;
  const FpPlaced *placed = &fp_scene_placed (scene, NULL)[steps];
  const FpBox plan = { placed->plan.x0 + TOUCH, placed->plan.y0 + TOUCH, placed->plan.x1 - TOUCH, placed->plan.y1 - TOUCH };
  for (guint i = 0; i < n; i++)
    if (solid[i].part == FP_PART_WALL && solid[i].z0 < placed->level + placed->extent.height
        && !fp_scene_placed (scene, NULL)[solid[i].owner].ghost)
      for (guint k = 0, j = solid[i].n_outline - 1; k < solid[i].n_outline; j = k++)
        if (fp_box_is_crossed (&plan, solid[i].outline[j], solid[i].outline[k]))
          return TRUE;
  return FALSE;
}

/* Steps that stand in a wall already are left there. */
static gboolean
is_there_room (const Search *s, const FpFirstRow *found)
{
  g_autoptr (FpProject) project = fp_remedy_make (&found->remedy, s->scene, NULL);
  g_autoptr (FpScene) scene = project != NULL ? fp_scene_new (project, fp_scene_alternative (s->scene)) : NULL;

  return scene != NULL && (!reach_into_walls (scene, found->remedy.change[0].item) || reach_into_walls (s->scene, found->remedy.change[0].item));
}

/* What is still missing of the level, mm; NAN where it cannot be made or measured. */
static double
still_missing (const Search *s, FpFirstRow *out)
{
  g_autoptr (FpProject) project = fp_remedy_make (&out->remedy, s->scene, NULL);
  g_autoptr (FpScene) scene = project != NULL ? fp_scene_new (project, fp_scene_alternative (s->scene)) : NULL;
  g_autoptr (FpPeople) people = scene != NULL ? fp_people_new (scene) : NULL;
  g_autoptr (GArray) rows = people != NULL ? fp_row_c_values (people) : NULL;
  const FpRowC *first = rows != NULL ? fp_row_c_first (rows) : NULL;

  if (first == NULL)
    return NAN;
  out->after = first->c;
  count_rows (rows, out);
  return fp_c_raise (first->c, out->wanted, first->distance - first->between, first->between);
}

static void
raise_altar (const Search *s, double level, FpFirstRow *out)
{
  for (guint i = 0; i < MEASURED_AGAIN; i++)
    {
      out->level = level;
      out->flight = fp_flight_for (level - s->steps->level, s->risers);
      out->how = out->flight.steps == 0 ? FP_FIRST_ROW_NO_RISER : FP_FIRST_ROW_TOO_HIGH;
      if (out->flight.steps == 0 || !set_steps (s, out))
        return;
      const double missing = still_missing (s, out);
      if (missing <= ENOUGH)
        out->how = is_there_room (s, out) ? FP_FIRST_ROW_BY_STEPS : FP_FIRST_ROW_NO_ROOM;
      if (!(missing > ENOUGH))
        return;
      level = out->level + missing;
    }
}

void
fp_first_row_find (const FpFindings *findings, double wanted, FpFirstRow *out)
{
  const FpMeasuring *of = fp_findings_measuring (findings);
  g_autoptr (GArray) rows = fp_row_c_values (of->people);
  const FpRowC *first = fp_row_c_first (rows);
  const int steps = steps_of_altar (of->scene);
  Search search = { of->scene, NULL, fp_findings_risers (findings), FP_UNITS_METRIC };

  *out = (FpFirstRow) { .wanted = wanted, .how = FP_FIRST_ROW_NONE };
  if (first == NULL)
    return;
  out->owner = first->owner;
  out->row = first->row;
  out->c = out->after = first->c;
  count_rows (rows, out);
  out->had = out->reach;
  out->how = first->c >= wanted ? FP_FIRST_ROW_HAS_IT : FP_FIRST_ROW_NO_STEPS;
  if (first->c >= wanted || steps < 0)
    return;
  search.steps = &fp_scene_placed (of->scene, NULL)[steps];
  search.units = fp_project_brief (fp_scene_project (of->scene))->units;
  raise_altar (&search, of->levels.footpace
                          + fp_c_raise (first->c, wanted, first->distance - first->between, first->between), out);
}
