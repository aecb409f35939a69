/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "random-sanctuary.h"

#include "church.h"

#include <math.h>

static double
between (GRand *r, double lo, double hi)
{
  return round (g_rand_double_range (r, lo, hi));
}

static void
add_building (FpProject **project, GRand *r, double half, double deep, double rise)
{
  const double thick = between (r, 200, 1200), nave = half + (g_rand_boolean (r) ? between (r, 0, 6000) : 0);
  const FpPoint corner[] = { { -nave, -16000 }, { -nave, 0 }, { -half, 0 },  { -half, deep },
                             { half, deep },    { half, 0 },  { nave, 0 },   { nave, -16000 } };
  const FpPoint plain[] = { { -half, -16000 }, { -half, deep }, { half, deep }, { half, -16000 } };

  church_floor (project, "nave", (FpBox) { -nave, -16000, nave, 0 }, 0, 0, 0, 0);
  church_floor (project, "sanctuary", (FpBox) { -half, 0, half, deep }, rise, 1, 0, 0);
  church_survey (project, &(ChurchThing) { .kind = "wall", .id = "walls", .corner = nave > half ? corner : plain,
                                           .n_corners = nave > half ? 8 : 4,
                                           .param = { { "closed", 1 }, { "thickness", thick },
                                                      { "height", between (r, 4000, 14000) } } });
  church_survey (project, &(ChurchThing) { .kind = "pews", .id = "pews",
                                           .place = { between (r, -1500, 1500), -4000, 0 },
                                           .param = { { "rows", 6 }, { "radius", g_rand_boolean (r) ? 9000 : 0 } } });
}

static void
add_altar (FpProject **project, GRand *r, double y)
{
  church_add (project, &(ChurchThing) { .kind = "footpace", .id = "footpace",
                                        .param = { { "count", g_rand_int_range (r, 1, 8) },
                                                   { "riser", between (r, 90, 200) },
                                                   { "tread", between (r, 250, 450) },
                                                   { "front", between (r, 500, 1800) },
                                                   { "behind", between (r, 0, 1200) }, { "ends", between (r, 0, 600) },
                                                   { "sides", g_rand_int_range (r, 0, 2) } } });
  church_add (project, &(ChurchThing) { .kind = "altar", .id = "altar", .on = "footpace", .place = { 0, y, 0 },
                                        .param = { { "length", between (r, 1500, 4000) },
                                                   { "depth", between (r, 600, 1300) },
                                                   { "height", between (r, 850, 1100) },
                                                   { "support", g_rand_int_range (r, 0, 3) } } });
  if (g_rand_boolean (r))
    {
      church_add (project, &(ChurchThing) { .kind = "gradine", .id = "gradine", .on = "altar",
                                            .param = { { "length", 1400 }, { "height", between (r, 80, 300) } } });
      church_add (project, &(ChurchThing) { .kind = "candlesticks", .id = "candlesticks", .on = "gradine",
                                            .param = { { "count", g_rand_int_range (r, 2, 8) }, { "spacing", 150 },
                                                       { "gap", 300 }, { "grading", g_rand_int_range (r, 0, 2) } } });
    }
  church_add (project, &(ChurchThing) { .kind = "crucifix", .id = "crucifix", .on = "altar",
                                        .param = { { "height", between (r, 700, 1800) } } });
  if (g_rand_boolean (r))
    church_add (project, &(ChurchThing) { .kind = "tabernacle", .id = "tabernacle", .on = "altar" });
}

static void
add_furniture (FpProject **project, GRand *r, double half, double deep)
{
  static const double turns[] = { 0, 90, -90, 180, 30, -47.5 };

  church_add (project, &(ChurchThing) { .kind = "credence", .id = "credence",
                                        .place = { between (r, 0, half - 500), between (r, 500, deep - 500),
                                                   turns[g_rand_int_range (r, 0, 6)] } });
  church_add (project, &(ChurchThing) { .kind = "sedilia", .id = "sedilia",
                                        .place = { half - 700, between (r, 1200, deep - 1200), -90 } });
  church_add (project, &(ChurchThing) { .kind = "ambo", .id = "ambo",
                                        .place = { between (r, 700 - half, 0), between (r, 300, 2500),
                                                   turns[g_rand_int_range (r, 0, 6)] } });
  if (g_rand_boolean (r))
    church_add (project, &(ChurchThing) { .kind = "rail", .id = "rail", .place = { 0, between (r, 200, 900), 0 },
                                          .param = { { "length", between (r, 4000, 2 * half) },
                                                     { "gate", between (r, 700, 1800) },
                                                     { "returns", g_rand_boolean (r) ? 500 : 0 } } });
  church_survey (project, &(ChurchThing) { .kind = "chair", .id = "old-chair",
                                           .place = { between (r, 500 - half, half - 500),
                                                      between (r, 500, deep - 500), 0 } });
  if (g_rand_boolean (r))
    church_fate (project, "old-chair", FP_FATE_REMOVED, NULL, NULL);
}

FpScene *
random_sanctuary_new (guint32 seed, FpUnits units)
{
  g_autoptr (GRand) r = g_rand_new_with_seed (seed);
  g_autoptr (GError) error = NULL;
  FpProject *project = church_new (g_rand_boolean (r) ? FP_FACING_EAST : FP_FACING_PEOPLE), *next;
  FpBrief brief = *fp_project_brief (project);
  const double half = between (r, 3000, 9000), deep = between (r, 6000, 14000), rise = between (r, 0, 600);
  FpScene *scene;

  brief.units = units;
  next = fp_project_with_brief (project, &brief, &error);
  g_assert_no_error (error);
  fp_project_unref (project);
  project = next;
  add_building (&project, r, half, deep, rise);
  add_altar (&project, r, between (r, 3500, deep - 1500));
  add_furniture (&project, r, half, deep);
  scene = fp_scene_new (project, 0);
  fp_project_unref (project);
  return scene;
}
