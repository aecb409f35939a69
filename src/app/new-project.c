/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "new-project.h"

#include "footpace/setting-out.h"

#include <math.h>

#define RISER 150.0 /* the rise that is aimed at between the floors: design judgement */

void
fp_new_project_defaults (FpNewProject *spec)
{
  *spec = (FpNewProject) {
    .title = "", .place = "", .units = FP_UNITS_METRIC, .books = FP_BOOKS_BOTH,
    .nave_width = 12000.0, .nave_length = 20000.0,
    .sanctuary_width = 9000.0, .sanctuary_depth = 8000.0, .sanctuary_level = 300.0
  };
}

static gboolean
spec_check (const FpNewProject *spec, GError **error)
{
  const struct { const char *what; double value, min, max; } limits[] = {
    { "The width of the nave", spec->nave_width, 3000.0, 100000.0 },
    { "The length of the nave", spec->nave_length, 3000.0, 200000.0 },
    { "The width of the sanctuary", spec->sanctuary_width, 3000.0, spec->nave_width },
    { "The depth of the sanctuary", spec->sanctuary_depth, 3000.0, 100000.0 },
    { "The level of the sanctuary floor", spec->sanctuary_level, 0.0, 3000.0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (limits); i++)
    if (!(limits[i].value >= limits[i].min && limits[i].value <= limits[i].max))
      {
        g_autofree char *value = fp_length_format_unit (limits[i].value, spec->units);
        g_autofree char *min = fp_length_format_unit (limits[i].min, spec->units);
        g_autofree char *max = fp_length_format_unit (limits[i].max, spec->units);

        g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "%s is %s; it must be from %s to %s.",
                     limits[i].what, value, min, max);
        return FALSE;
      }
  return TRUE;
}

static FpProject *
begin (const FpNewProject *spec, GError **error)
{
  const FpBrief brief = {
    .title = spec->title, .place = spec->place, .client = "", .author = "", .note = "",
    .books = spec->books, .facing = FP_FACING_EAST,
    .celebrations = spec->books == FP_BOOKS_NEWER ? FP_CELEBRATION_WEEKDAY | FP_CELEBRATION_SUNDAY
                                                  : FP_CELEBRATION_LOW | FP_CELEBRATION_SUNG,
    .ministers = 5, .seats = 0, .units = spec->units, .north = 90.0, .percentile = 50
  };
  g_autoptr (FpProject) empty = fp_project_new (&brief);

  /* Proves texts and numbers of the brief, which came from outside. */
  return fp_project_with_brief (empty, &brief, error);
}

static FpProject *
with_survey (FpProject *project, FpItemInit *init, const char *kind, const char *id, const char *const *param,
             const double *value, GError **error)
{
  g_autoptr (FpProject) before = project;
  g_autoptr (FpItem) item = NULL;
  double values[FP_PARAM_MAX];

  init->id = id;
  init->kind = fp_kind_find (kind);
  fp_kind_defaults (init->kind, values);
  for (guint i = 0; param != NULL && param[i] != NULL; i++)
    values[fp_kind_param_index (init->kind, param[i])] = value[i];
  init->param = values;
  item = fp_item_new (init, error);
  return item != NULL ? fp_project_with_survey_item (before, item, error) : NULL;
}

/* The inner face, walked clockwise seen from above. */
static FpProject *
with_walls (FpProject *project, const FpNewProject *spec, GError **error)
{
  const double w = spec->nave_width / 2.0, s = spec->sanctuary_width / 2.0, d = spec->sanctuary_depth;
  const FpPoint narrower[] = { { -w, -spec->nave_length }, { -w, 0 }, { -s, 0 }, { -s, d }, { s, d }, { s, 0 },
                               { w, 0 }, { w, -spec->nave_length } };
  const FpPoint plain[] = { { -w, -spec->nave_length }, { -w, d }, { w, d }, { w, -spec->nave_length } };
  FpItemInit init = { .corner = w > s ? narrower : plain, .n_corners = w > s ? 8 : 4 };
  static const char *const param[] = { "closed", NULL };
  static const double value[] = { 1.0 };

  return with_survey (project, &init, "wall", "walls", param, value, error);
}

static FpProject *
with_floor (FpProject *project, const char *id, const char *name, double half, double y0, double y1, double level,
            gboolean ministers, GError **error)
{
  const FpPoint corner[] = { { -half, y0 }, { half, y0 }, { half, y1 }, { -half, y1 } };
  FpItemInit init = { .name = name, .corner = corner, .n_corners = 4 };
  static const char *const param[] = { "level", "use", NULL };
  const double value[] = { level, ministers ? 1.0 : 0.0 };

  return with_survey (project, &init, "floor", id, param, value, error);
}

static FpProject *
with_steps (FpProject *project, const FpNewProject *spec, GError **error)
{
  const double count = MAX (1.0, round (spec->sanctuary_level / RISER));
  const double tread = 300.0;
  FpItemInit init = { .place = { 0.0, -(count - 1.0) * tread, 0.0 } };
  static const char *const param[] = { "width", "count", "riser", "tread", NULL };
  const double value[] = { MIN (3000.0, spec->sanctuary_width), count, spec->sanctuary_level / count, tread };

  if (spec->sanctuary_level <= 0.0)
    return project;
  return with_survey (project, &init, "steps", "steps", param, value, error);
}

static FpProject *
with_new (FpProject *project, const char *kind, GError **error)
{
  g_autoptr (FpProject) before = project;
  g_autoptr (FpScene) scene = fp_scene_new (before, 0);

  return fp_set_out_new (scene, fp_kind_find (kind), NULL, error);
}

FpProject *
fp_new_project_make (const FpNewProject *spec, GError **error)
{
  FpProject *project;

  if (!spec_check (spec, error))
    return NULL;
  project = begin (spec, error);
  if (project != NULL)
    project = with_walls (project, spec, error);
  if (project != NULL)
    project = with_floor (project, "nave-floor", "Nave floor", spec->nave_width / 2.0, -spec->nave_length, 0.0, 0.0,
                          FALSE, error);
  if (project != NULL)
    project = with_floor (project, "sanctuary-floor", "Sanctuary floor", spec->sanctuary_width / 2.0, 0.0,
                          spec->sanctuary_depth, spec->sanctuary_level, TRUE, error);
  if (project != NULL)
    project = with_steps (project, spec, error);
  if (project != NULL)
    project = with_new (project, "footpace", error);
  if (project != NULL)
    project = with_new (project, "altar", error);
  return project;
}
