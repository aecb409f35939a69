/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "random-parish.h"

#include "footpace/setting-out.h"

#include <math.h>

#define CHANGED 0.12 /* of all parameters                                    */
#define MOVED   0.35 /* of all furnishings on the floor                      */

static gboolean
chance (GRand *rand, double of)
{
  return g_rand_double (rand) < of;
}

static void
add (FpProject **project, GRand *rand, const char *kind, const char *on, double x, double y)
{
  if (chance (rand, 0.7))
    taking_add (project, kind, kind, on, x, y, NULL, 0);
}

static void
furnish (FpProject **project, GRand *rand)
{
  if (chance (rand, 0.9))
    taking_altar_group (project, 2 * g_rand_int_range (rand, 1, 4));
  add (project, rand, "rail", NULL, 0, 405);
  add (project, rand, "credence", NULL, 4500, 6500);
  add (project, rand, "sedilia", NULL, 4500, 4000);
  add (project, rand, "ambo", NULL, -3500, 1500);
  add (project, rand, "chair", NULL, -2500, 5000);
  taking_survey (project, "pews", "pews", -2500, -2000, "rows", g_rand_int_range (rand, 4, 14));
  if (chance (rand, 0.5))
    taking_survey (project, "pews", "pews-2", 2500, -2000, "rows", g_rand_int_range (rand, 4, 14));
  taking_wall (project, "east", -6000, 10000, 6000, 10000);
}

/* What cannot be is left as it was. */
static void
take (FpProject **project, FpProject *next)
{
  if (next == NULL)
    return;
  fp_project_unref (*project);
  *project = next;
}

static double
otherwise (GRand *rand, const FpParam *p, double value)
{
  switch (p->type)
    {
    case FP_PARAM_LENGTH:
    case FP_PARAM_LEVEL:
      return CLAMP (round (value + g_rand_double_range (rand, -0.3, 0.3) * MAX (fabs (value), 100)), p->min, p->max);
    case FP_PARAM_COUNT:
      return CLAMP (value + g_rand_int_range (rand, -1, 2), p->min, p->max);
    default:
      return value;
    }
}

static void
disturb (FpProject **project, GRand *rand, const char *id)
{
  g_autoptr (FpScene) scene = fp_scene_new (*project, 0);
  const FpPlaced *placed = &fp_scene_placed (scene, NULL)[fp_scene_find (scene, id)];
  const FpKind *kind = fp_item_kind (placed->item);

  for (guint i = 0; i < fp_kind_n_params (kind); i++)
    if (chance (rand, CHANGED))
      {
        g_autoptr (FpScene) now = fp_scene_new (*project, 0);
        const double value = otherwise (rand, &kind->params[i], fp_item_params (placed->item)[i]);

        take (project, fp_set_out_param (now, id, kind->params[i].id, value, NULL));
      }
  if (!(kind->flags & FP_KIND_SURVEY) && placed->support < 0 && chance (rand, MOVED))
    {
      g_autoptr (FpScene) now = fp_scene_new (*project, 0);
      const FpVec3 by = { round (g_rand_double_range (rand, -600, 600)), round (g_rand_double_range (rand, -600, 600)), 0 };

      take (project, fp_set_out_move (now, id, by, NULL));
    }
}

static void
disturb_all (FpProject **project, GRand *rand)
{
  g_autoptr (FpScene) scene = fp_scene_new (*project, 0);
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    if (fp_item_kind (placed[i].item)->role != FP_ROLE_FLOOR)
      disturb (project, rand, fp_item_id (placed[i].item));
}

FpProject *
random_parish_new (guint32 seed)
{
  static const guint celebrations[] = {
    FP_CELEBRATION_LOW, FP_CELEBRATION_LOW | FP_CELEBRATION_SUNG | FP_CELEBRATION_SOLEMN,
    FP_CELEBRATION_WEEKDAY | FP_CELEBRATION_SUNDAY, FP_CELEBRATION_SUNDAY | FP_CELEBRATION_LOW | FP_CELEBRATION_BENEDICTION,
  };
  GRand *rand = g_rand_new_with_seed (seed);
  FpProject *project = taking_church ((FpBooks) g_rand_int_range (rand, 0, 3), chance (rand, 0.6) ? FP_FACING_EAST : FP_FACING_PEOPLE,
                                      celebrations[g_rand_int_range (rand, 0, G_N_ELEMENTS (celebrations))]);

  furnish (&project, rand);
  if (chance (rand, 0.3))
    taking_units (&project, FP_UNITS_IMPERIAL);
  if (chance (rand, 0.4))
    church_param (&project, "pews", "rise", 20 * g_rand_int_range (rand, 1, 7));
  disturb_all (&project, rand);
  g_rand_free (rand);
  return project;
}
