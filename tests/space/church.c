/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "church.h"

FpProject *
church_new (FpFacing facing)
{
  const FpBrief brief = {
    .title = "Church of the test", .place = "Nowhere", .client = "", .author = "", .note = "",
    .books = FP_BOOKS_BOTH, .facing = facing, .celebrations = FP_CELEBRATION_LOW, .ministers = 3, .seats = 0,
    .units = FP_UNITS_METRIC, .north = 90, .percentile = 50,
  };
  FpProject *project = fp_project_new (&brief);
  g_assert_nonnull (project);
  return project;
}

static void
replace (FpProject **project, FpProject *next, const GError *error)
{
  g_assert_no_error (error);
  g_assert_nonnull (next);
  fp_project_unref (*project);
  *project = next;
}

static FpItem *
make_item (const ChurchThing *thing)
{
  g_autoptr (GError) error = NULL;
  const FpKind *kind = fp_kind_find (thing->kind);
  double param[FP_PARAM_MAX];

  if (kind == NULL)
    g_error ("no kind \"%s\"", thing->kind);
  fp_kind_defaults (kind, param);
  for (guint i = 0; thing->param[i].name != NULL; i++)
    {
      int index = fp_kind_param_index (kind, thing->param[i].name);
      if (index < 0)
        g_error ("%s has no \"%s\"", thing->kind, thing->param[i].name);
      param[index] = thing->param[i].value;
    }
  const FpItemInit init = {
    .id = thing->id, .name = thing->name, .kind = kind, .on = thing->on, .place = thing->place, .param = param,
    .corner = thing->corner, .n_corners = thing->n_corners,
  };
  FpItem *item = fp_item_new (&init, &error);
  g_assert_no_error (error);
  return item;
}

void
church_survey (FpProject **project, const ChurchThing *thing)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FpItem) item = make_item (thing);
  FpProject *next = fp_project_with_survey_item (*project, item, &error);
  replace (project, next, error);
}

void
church_add (FpProject **project, const ChurchThing *thing)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FpItem) item = make_item (thing);
  FpProject *next = fp_project_with_item (*project, 0, item, &error);
  replace (project, next, error);
}

void
church_fate (FpProject **project, const char *id, FpFate fate, const FpPlace *moved, const char *on)
{
  g_autoptr (GError) error = NULL;
  FpProject *next = fp_project_with_fate (*project, 0, id, fate, moved, on, &error);
  replace (project, next, error);
}

void
church_param (FpProject **project, const char *id, const char *param, double value)
{
  g_autoptr (GError) error = NULL;
  gboolean in_survey;
  const FpItem *old = fp_project_find (*project, 0, id, &in_survey);
  g_assert_nonnull (old);

  const FpKind *kind = fp_item_kind (old);
  double values[FP_PARAM_MAX];
  for (guint i = 0; i < fp_kind_n_params (kind); i++)
    values[i] = fp_item_params (old)[i];
  g_assert_cmpint (fp_kind_param_index (kind, param), >=, 0);
  values[fp_kind_param_index (kind, param)] = value;

  FpItemInit init;
  fp_item_init_from (old, &init);
  init.param = values;
  g_autoptr (FpItem) item = fp_item_new (&init, &error);
  g_assert_no_error (error);
  FpProject *next = in_survey ? fp_project_with_survey_item (*project, item, &error)
                              : fp_project_with_item (*project, 0, item, &error);
  replace (project, next, error);
}

void
church_population (FpProject **project, guint seed, guint children)
{
  g_autoptr (GError) error = NULL;
  FpBrief brief = *fp_project_brief (*project);

  brief.varied = TRUE;
  brief.seed = seed;
  brief.children = children;
  FpProject *next = fp_project_with_brief (*project, &brief, &error);
  replace (project, next, error);
}

void
church_floor (FpProject **project, const char *id, FpBox box, double level, int use, double fall, double direction)
{
  const FpPoint corner[] = { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 }, { box.x0, box.y1 } };
  const ChurchThing floor = {
    "floor", id, NULL, { 0, 0, 0 }, corner, 4,
    { { "level", level }, { "use", use }, { "fall", fall }, { "direction", direction }, { NULL, 0 } },
  };
  church_survey (project, &floor);
}

const FpPlaced *
church_placed (const FpScene *scene, const char *id)
{
  int at = fp_scene_find (scene, id);
  if (at < 0)
    g_error ("nothing called \"%s\" stands there", id);
  return &fp_scene_placed (scene, NULL)[at];
}

const FpPlaced *
church_ghost (const FpScene *scene, const char *id)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);
  for (guint i = 0; i < n; i++)
    if (placed[i].ghost && g_str_equal (fp_item_id (placed[i].item), id))
      return &placed[i];
  return NULL;
}
