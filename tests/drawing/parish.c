/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "parish.h"

#include "church.h"

static void
add_building (FpProject **project)
{
  static const FpPoint corner[] = { { -5000, -14000 }, { -5000, 6500 }, { 5000, 6500 }, { 5000, -14000 } };

  church_floor (project, "nave", (FpBox) { -5000, -14000, 5000, 0 }, 0, 0, 0, 0);
  church_floor (project, "sanctuary", (FpBox) { -5000, 0, 5000, 6500 }, 150, 1, 0, 0);
  church_survey (project, &(ChurchThing) { .kind = "wall", .id = "walls", .corner = corner, .n_corners = 4,
        .param = { { "closed", 1 } } });
  church_survey (project, &(ChurchThing) { .kind = "opening", .id = "door", .on = "walls",
        .param = { { "side", 4 }, { "along", 5000 }, { "width", 1800 } } });
  church_survey (project, &(ChurchThing) { .kind = "opening", .id = "sacristy-door", .on = "walls",
        .param = { { "side", 3 }, { "along", 3000 }, { "width", 1000 }, { "arch", 1 } } });
  church_survey (project, &(ChurchThing) { .kind = "opening", .id = "window", .on = "walls",
        .param = { { "side", 2 }, { "along", 2000 }, { "width", 1200 }, { "sill", 2500 },
                   { "head", 5000 }, { "arch", 1 } } });
  church_survey (project, &(ChurchThing) { .kind = "pier", .id = "pier", .place = { -3500, -3000, 0 } });
  church_survey (project, &(ChurchThing) { .kind = "steps", .id = "sanctuary-steps", .place = { 0, -250, 0 },
        .param = { { "count", 1 }, { "width", 10000 } } });
  church_survey (project, &(ChurchThing) { .kind = "pews", .id = "pews-gospel", .place = { -2600, -4500, 0 },
        .param = { { "rows", 9 }, { "length", 3660 } } });
  church_survey (project, &(ChurchThing) { .kind = "pews", .id = "pews-epistle", .place = { 2600, -4500, 0 },
        .param = { { "rows", 9 }, { "length", 3660 } } });
}

static void
add_altar (FpProject **project)
{
  church_add (project, &(ChurchThing) { .kind = "footpace", .id = "footpace" });
  church_add (project, &(ChurchThing) { .kind = "altar", .id = "altar", .on = "footpace", .place = { 0, 4200, 0 },
        .param = { { "support", 2 } } });
  church_add (project, &(ChurchThing) { .kind = "gradine", .id = "gradine", .on = "altar" });
  church_add (project, &(ChurchThing) { .kind = "tabernacle", .id = "tabernacle", .on = "altar",
        .place = { 0, -210, 0 }, .param = { { "top", 2 } } });
  church_add (project, &(ChurchThing) { .kind = "crucifix", .id = "crucifix", .on = "gradine" });
  church_add (project, &(ChurchThing) { .kind = "candlesticks", .id = "candlesticks", .on = "gradine",
        .param = { { "grading", 1 } } });
  church_add (project, &(ChurchThing) { .kind = "reredos", .id = "reredos", .on = NULL, .place = { 0, 6200, 0 },
        .param = { { "top", 1 } } });
}

static void
add_furniture (FpProject **project)
{
  church_add (project, &(ChurchThing) { .kind = "credence", .id = "credence", .place = { 4600, 4500, -90 } });
  church_add (project, &(ChurchThing) { .kind = "sedilia", .id = "sedilia", .place = { 4500, 2500, -90 } });
  church_add (project, &(ChurchThing) { .kind = "ambo", .id = "ambo", .place = { -3400, 1000, 0 } });
  church_add (project, &(ChurchThing) { .kind = "chair", .id = "chair", .place = { 3200, 1500, -60 } });
  church_add (project, &(ChurchThing) { .kind = "rail", .id = "rail", .place = { 0, 400, 0 },
        .param = { { "length", 8000 }, { "returns", 600 } } });
  church_survey (project, &(ChurchThing) { .kind = "altar", .id = "old-altar", .place = { 0, 1800, 0 } });
  church_survey (project, &(ChurchThing) { .kind = "credence", .id = "old-credence", .place = { -4600, 3500, 90 } });
  church_fate (project, "old-altar", FP_FATE_REMOVED, NULL, NULL);
  church_fate (project, "old-credence", FP_FATE_MOVED, &(FpPlace) { -4600, 5000, 90 }, NULL);
}

FpScene *
parish_scene_new (void)
{
  FpProject *project = church_new (FP_FACING_EAST);
  FpScene *scene;

  add_building (&project);
  add_altar (&project);
  add_furniture (&project);
  scene = fp_scene_new (project, 0);
  fp_project_unref (project);
  return scene;
}

static void
add_piers (FpProject **project, double y0, double y1)
{
  for (guint i = 0; y0 + 5000 * i < y1; i++)
    for (int side = -1; side <= 1; side += 2)
      {
        g_autofree char *id = g_strdup_printf ("pier-%c-%u", side < 0 ? 'g' : 'e', i);
        church_survey (project, &(ChurchThing) { .kind = "pier", .id = id, .place = { side * 6500, y0 + 5000 * i, 0 },
        .param = { { "shape", i % 3 }, { "width", 1100 } } });
      }
}

FpScene *
great_scene_new (guint rows)
{
  const double west = -4000 - 950.0 * rows - 4000;
  const FpPoint corner[] = { { -12000, west }, { -12000, 12000 }, { 12000, 12000 }, { 12000, west } };
  const FpPoint gallery[] = { { -12000, west }, { 12000, west }, { 12000, west + 6000 }, { -12000, west + 6000 } };
  FpProject *project = church_new (FP_FACING_EAST);
  FpScene *scene;

  church_floor (&project, "nave", (FpBox) { -12000, west, 12000, 0 }, 0, 0, 0.01, 0);
  church_floor (&project, "sanctuary", (FpBox) { -12000, 0, 12000, 12000 }, 450, 1, 0, 0);
  church_survey (&project, &(ChurchThing) { .kind = "wall", .id = "walls", .corner = corner, .n_corners = 4,
        .param = { { "closed", 1 }, { "height", 16000 }, { "thickness", 900 } } });
  for (guint i = 0; i < 16; i++)
    {
      g_autofree char *id = g_strdup_printf ("window-%u", i);
      church_survey (&project, &(ChurchThing) { .kind = "opening", .id = id, .on = "walls",
        .param = { { "side", i % 2 ? 3 : 1 }, { "along", 4000 + 4000 * (i / 2) },
                   { "width", 1500 }, { "sill", 3000 }, { "head", 8000 },
                   { "arch", 1 } } });
    }
  add_piers (&project, west + 5000, 8000);
  for (int block = -1; block <= 1; block++)
    {
      g_autofree char *id = g_strdup_printf ("pews-%d", block + 1);
      church_survey (&project, &(ChurchThing) { .kind = "pews", .id = id, .place = { block * 8700, -4000, 0 },
        .param = { { "rows", rows }, { "length", block == 0 ? 9000 : 4200 },
                   { "spacing", 950 }, { "radius", block == 0 ? 24000 : 0 } } });
    }
  church_survey (&project, &(ChurchThing) { .kind = "gallery", .id = "gallery", .corner = gallery, .n_corners = 4,
        .param = { { "front-side", 3 } } });
  church_survey (&project, &(ChurchThing) { .kind = "pews", .id = "loft", .on = "gallery",
        .place = { 0, west + 5000, 0 },
        .param = { { "rows", 4 }, { "length", 15000 }, { "rise", 200 } } });
  add_altar (&project);
  add_furniture (&project);
  scene = fp_scene_new (project, 0);
  fp_project_unref (project);
  return scene;
}
