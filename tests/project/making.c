/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "making.h"

#include <string.h>

FpBrief
test_brief (void)
{
  return (FpBrief) { .title = "Sanctuary of Saint Aldwin", .place = "Netherby Marsh",
                     .client = "Parish of Saint Aldwin",
                     .author = "", .note = "First line\nsecond line", .books = FP_BOOKS_BOTH, .facing = FP_FACING_EAST,
                     .celebrations = FP_CELEBRATION_LOW | FP_CELEBRATION_SUNDAY, .ministers = 6, .seats = 120,
                     .units = FP_UNITS_METRIC, .north = 90, .percentile = 50 };
}

static FpItem *
made (const FpItemInit *init)
{
  g_autoptr (GError) error = NULL;
  FpItem *item = fp_item_new (init, &error);

  g_assert_no_error (error);
  return item;
}

FpItem *
test_item (const char *id, const char *kind, const char *on, double x, double y)
{
  const FpItemInit init = { .id = id, .kind = fp_kind_find (kind), .on = on, .place = { x, y, 0 } };

  return made (&init);
}

FpItem *
test_square (const char *id, const char *kind, double side)
{
  const double h = side / 2;
  const FpPoint corner[4] = { { -h, -h }, { h, -h }, { h, h }, { -h, h } };
  const FpItemInit init = { .id = id, .kind = fp_kind_find (kind), .corner = corner, .n_corners = 4 };

  return made (&init);
}

FpItem *
test_wall (const char *id, double length)
{
  const FpPoint corner[2] = { { 0, 0 }, { length, 0 } };
  const FpItemInit init = { .id = id, .kind = fp_kind_find ("wall"), .corner = corner, .n_corners = 2 };

  return made (&init);
}

FpItem *
test_with_param (FpItem *self, const char *param, double value)
{
  double changed[FP_PARAM_MAX];
  FpItemInit init;
  FpItem *item;

  fp_item_init_from (self, &init);
  memcpy (changed, init.param, fp_kind_n_params (init.kind) * sizeof (double));
  g_assert_cmpint (fp_kind_param_index (init.kind, param), >=, 0);
  changed[fp_kind_param_index (init.kind, param)] = value;
  init.param = changed;
  item = made (&init);
  fp_item_unref (self);
  return item;
}

static FpProject *
next_of (FpProject *before, FpItem *item, FpProject *next, GError *error)
{
  g_assert_no_error (error);
  g_assert_nonnull (next);
  fp_item_unref (item);
  fp_project_unref (before);
  return next;
}

FpProject *
test_add (FpProject *project, guint alternative, FpItem *item)
{
  g_autoptr (GError) error = NULL;
  FpProject *next = fp_project_with_item (project, alternative, item, &error);

  return next_of (project, item, next, error);
}

FpProject *
test_add_survey (FpProject *project, FpItem *item)
{
  g_autoptr (GError) error = NULL;
  FpProject *next = fp_project_with_survey_item (project, item, &error);

  return next_of (project, item, next, error);
}

FpProject *
test_parish (void)
{
  const FpBrief brief = test_brief ();
  FpProject *p = fp_project_new (&brief), *both;

  p = test_add_survey (p, test_square ("nave", "floor", 12000));
  p = test_add_survey (p, test_wall ("wall", 8000));
  p = test_add_survey (p, test_item ("door", "opening", "wall", 0, 0));
  p = test_add_survey (p, test_item ("old-altar", "altar", NULL, 0, 4000));
  p = test_add_survey (p, test_item ("old-candles", "candlesticks", "old-altar", 0, 0));
  p = test_add_survey (p, test_item ("old-cross", "crucifix", "old-altar", 0, 0));
  both = fp_project_with_new_alternative (p, -1, "b", "As it is", NULL);
  fp_project_unref (p);
  p = test_add (both, 0, test_item ("footpace", "footpace", NULL, 0, 2000));
  p = test_add (p, 0, test_item ("altar", "altar", "footpace", 0, 2000));
  p = test_add (p, 0, test_item ("gradine", "gradine", "altar", 0, 0));
  return test_add (p, 0, test_item ("cross", "crucifix", "gradine", 0, 0));
}
