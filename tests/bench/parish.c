/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "parish.h"

#include "church.h"

static void
add_sanctuary (FpProject **project)
{
  const ChurchThing things[] = {
    { "footpace", "steps", NULL, { 0, 0, 0 }, NULL, 0, { { NULL, 0 } } },
    { "altar", "altar", "steps", { 0, 5500, 0 }, NULL, 0, { { NULL, 0 } } },
    { "gradine", "gradine", "altar", { 0, 0, 0 }, NULL, 0, { { NULL, 0 } } },
    { "tabernacle", "tabernacle", "altar", { 0, 0, 0 }, NULL, 0, { { NULL, 0 } } },
    { "crucifix", "crucifix", "gradine", { 0, 0, 0 }, NULL, 0, { { NULL, 0 } } },
    { "candlesticks", "candles", "gradine", { 0, 0, 0 }, NULL, 0, { { NULL, 0 } } },
    { "reredos", "reredos", NULL, { 0, 6600, 0 }, NULL, 0, { { NULL, 0 } } },
    { "credence", "credence", NULL, { 4500, 6000, -90 }, NULL, 0, { { NULL, 0 } } },
    { "sedilia", "sedilia", NULL, { 4500, 3500, -90 }, NULL, 0, { { NULL, 0 } } },
    { "ambo", "ambo", NULL, { -3200, 1500, 0 }, NULL, 0, { { NULL, 0 } } },
    { "chair", "chair", NULL, { 3600, 5200, -60 }, NULL, 0, { { NULL, 0 } } },
    { "rail", "rail", NULL, { 0, 300, 0 }, NULL, 0, { { "length", 8000 }, { NULL, 0 } } },
  };
  church_floor (project, "sanctuary", (FpBox) { -5500, 0, 5500, 8000 }, 150, 1, 0, 0);
  for (guint i = 0; i < G_N_ELEMENTS (things); i++)
    church_add (project, &things[i]);
}

static void
add_pews_at (FpProject **project, const char *id, double x, double y, double rows, double seats)
{
  const ChurchThing pews = {
    "pews", id, NULL, { x, y, 0 }, NULL, 0, { { "rows", rows }, { "length", seats * 457 }, { NULL, 0 } },
  };
  church_survey (project, &pews);
}

static void
add_pews (FpProject **project, const char *id, double x, double rows, double seats)
{
  add_pews_at (project, id, x, -2500, rows, seats);
}

static void
add_walls (FpProject **project, double half_width, double end)
{
  const FpPoint corner[] = { { -half_width, end }, { -half_width, 9000 }, { half_width, 9000 }, { half_width, end } };
  const ChurchThing wall = { "wall", "wall", NULL, { 0, 0, 0 }, corner, 4, { { "closed", 1 }, { NULL, 0 } } };
  church_survey (project, &wall);
  for (guint i = 0; i < 8; i++)
    {
      g_autofree char *id = g_strdup_printf ("window-%u", i + 1);
      const ChurchThing window = {
        "opening", id, "wall", { 0, 0, 0 }, NULL, 0,
        { { "side", i % 2 ? 3 : 1 }, { "along", 2500 + i / 2 * 3000 }, { "sill", 2500 }, { "head", 5500 },
          { "arch", 1 }, { NULL, 0 } },
      };
      church_survey (project, &window);
    }
}

static void
add_piers (FpProject **project, double x, double spacing, guint pairs)
{
  for (guint i = 0; i < 2 * pairs; i++)
    {
      g_autofree char *id = g_strdup_printf ("pier-%u", i + 1);
      const ChurchThing pier = {
        "pier", id, NULL, { i % 2 ? x : -x, -1200 - i / 2 * spacing, 0 }, NULL, 0,
        { { "width", 700 }, { "shape", i / 2 % 3 }, { NULL, 0 } },
      };
      church_survey (project, &pier);
    }
}

FpProject *
parish_new (guint rows)
{
  FpProject *project = church_new (FP_FACING_EAST);
  double end = -2500 - 900.0 * rows - 3000;
  church_floor (&project, "nave", (FpBox) { -8000, end, 8000, 0 }, 0, 0, 0, 0);
  add_walls (&project, 8000, end);
  add_piers (&project, 7000, 3600, 4);
  add_pews (&project, "gospel", -3600, rows, 12);
  add_pews (&project, "epistle", 3600, rows, 12);
  add_sanctuary (&project);
  return project;
}

FpProject *
cathedral_new (guint rows)
{
  FpProject *project = church_new (FP_FACING_EAST);
  double end = -2500 - 900.0 * rows - 3000;
  church_floor (&project, "nave", (FpBox) { -16000, end, 16000, 0 }, 0, 0, 0, 0);
  add_walls (&project, 16000, end);
  add_piers (&project, 7200, 4500, 6);
  add_pews (&project, "gospel", -3600, rows, 12);
  add_pews (&project, "epistle", 3600, rows, 12);
  add_pews (&project, "gospel-aisle", -11500, rows, 12);
  add_pews (&project, "epistle-aisle", 11500, rows, 12);
  add_sanctuary (&project);
  return project;
}

FpProject *
hall_new (guint blocks, guint rows)
{
  const guint most = 50; /* rows in a block */
  FpProject *project = church_new (FP_FACING_EAST);
  const double half = blocks * 3400.0 + 2000, end = -2500 - 950.0 * rows - 3000;

  church_floor (&project, "nave", (FpBox) { -half, end, half, 0 }, 0, 0, 0, 0);
  add_walls (&project, half, end);
  for (guint block = 0; block < blocks; block++)
    for (guint done = 0; done < rows; done += most)
      {
        g_autofree char *id = g_strdup_printf ("pews-%u-%u", block + 1, done);
        add_pews_at (&project, id, (block + 0.5 - blocks / 2.0) * 6800, -2500 - done * 900.0, MIN (most, rows - done), 12);
      }
  add_sanctuary (&project);
  return project;
}

void
parish_move (FpProject **project, const char *id, double dx, double dy)
{
  g_autoptr (GError) error = NULL;
  gboolean in_survey;
  FpItemInit init;

  fp_item_init_from (fp_project_find (*project, 0, id, &in_survey), &init);
  init.place.x += dx;
  init.place.y += dy;
  g_autoptr (FpItem) item = fp_item_new (&init, &error);
  FpProject *next = in_survey ? fp_project_with_survey_item (*project, item, &error)
                              : fp_project_with_item (*project, 0, item, &error);
  g_assert_no_error (error);
  fp_project_unref (*project);
  *project = next;
}
