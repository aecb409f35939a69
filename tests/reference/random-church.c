/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "random-church.h"

#include <math.h>

static double
between (GRand *rand, double a, double b)
{
  return g_rand_double_range (rand, a, b);
}

static void
add_star (GRand *rand, FpSolids *out, FpPoint at)
{
  FpPoint corner[12];
  for (guint i = 0; i < 12; i++)
    {
      double a = i * G_PI / 6, r = i % 2 ? between (rand, 200, 300) : between (rand, 350, 600);
      corner[i] = (FpPoint) { at.x + r * cos (a), at.y + r * sin (a) };
    }
  fp_solids_add_prism (out, FP_PART_PIER, corner, 12, 0, between (rand, 2000, 7000));
}

static void
add_piers (GRand *rand, FpSolids *out)
{
  for (int i = 0; i < 6; i++)
    {
      FpPoint left = { -6000 + between (rand, -300, 300), -20000.0 + i * 4000 };
      add_star (rand, out, left);
      fp_solids_add_round (out, FP_PART_PIER, -left.x, left.y, 0, between (rand, 2000, 7000), between (rand, 250, 500),
                           between (rand, 0, 450));
    }
}

static void
add_sanctuary (FpSolids *out)
{
  for (int i = 0; i < 3; i++)
    fp_solids_add_box (out, FP_PART_STEP, -3000 + 300 * i, 1500 + 300 * i, 0, 3000 - 300 * i, 6000, 150 * (i + 1));
  fp_solids_add_box (out, FP_PART_SUPPORT, -1100, 3600, 450, 1100, 4200, 1330);
  fp_solids_add_box (out, FP_PART_MENSA, -1200, 3500, 1330, 1200, 4250, 1450);
  for (int i = -3; i <= 3; i++)
    {
      double height = i == 0 ? 1200 : 800 - 60 * ABS (i);
      fp_solids_add_round (out, FP_PART_STICK, i * 350.0, 4150, 1450, 1450 + height, 70, 20);
    }
  fp_solids_add_box (out, FP_PART_RAIL_TOP, -5000, 0, 700, -600, 200, 762);
  fp_solids_add_box (out, FP_PART_RAIL_TOP, 600, 0, 700, 5000, 200, 762);
}

static void
add_floor (FpSolids *out)
{
  const FpPoint nave[] = { { -9000, -24000 }, { 9000, -24000 }, { 9000, 0 }, { -9000, 0 } };
  fp_solids_add_sloping (out, FP_PART_FLOOR, nave, 4, -2500, -200, 0.01, 0.03);
}

static void
add_person (GRand *rand, FpSolids *out, guint number)
{
  g_autoptr (FpSolids) body = fp_solids_new ();
  const double x = 240, y = 144, eye = between (rand, 1050, 1300);
  const FpPoint trunk[] = { { x, y / 2 }, { x / 2, y }, { -x / 2, y }, { -x, y / 2 },
                            { -x, -y / 2 }, { -x / 2, -y }, { x / 2, -y }, { x, -y / 2 } };
  const FpPlace place = { between (rand, -5500, 5500), between (rand, -23000, -800), between (rand, -40, 40) };

  fp_solids_add_ellipsoid (body, FP_PART_HEAD, (FpVec3) { 0, 0, eye }, 75, 98, 111, 0);
  fp_solids_add_prism (body, FP_PART_TRUNK, trunk, 8, 450, eye - 193);
  fp_solids_add_box (body, FP_PART_BACK, -230, 250, 0, 230, 290, 850);
  fp_solids_append_placed (out, body, &place, 0, number);
}

/* A wall across the church over a polygonal arch, like a chancel wall, its feet sloping along and across it. */
static void
add_arch (GRand *rand, FpSolids *out)
{
  const double half = between (rand, 1500, 4000), springing = between (rand, 900, 2200), across = between (rand, -0.3, 0.3);

  for (int i = 0; i < 12; i++)
    {
      const double a = G_PI * i / 12, b = G_PI * (i + 1) / 12;
      const FpPoint from = { -half * cos (a), springing + half * sin (a) / 2 };
      const FpPoint to = { -half * cos (b), springing + half * sin (b) / 2 };
      const double slope = (to.y - from.y) / (to.x - from.x);
      const FpPoint plan[] = { { from.x, 800 }, { to.x, 800 }, { to.x, 1300 }, { from.x, 1300 } };
      fp_solids_add_arching (out, FP_PART_WALL, plan, 4, from.y - slope * from.x - across * 800, slope, across, 7000);
    }
}

FpSolids *
random_church_new (GRand *rand, guint n_people)
{
  FpSolids *out = fp_solids_new ();
  add_floor (out);
  fp_solids_add_box (out, FP_PART_WALL, -9600, -24000, -100, -9000, 9000, 8000);
  fp_solids_add_box (out, FP_PART_WALL, 9000, -24000, -100, 9600, 9000, 8000);
  add_piers (rand, out);
  add_sanctuary (out);
  add_arch (rand, out);
  for (guint i = 0; i < n_people; i++)
    add_person (rand, out, i + 1); /* 0 owns the building */
  return out;
}

FpVec3
random_church_eye (GRand *rand)
{
  return (FpVec3) { between (rand, -8500, 8500), between (rand, -23500, -500), between (rand, 900, 1700) };
}

FpVec3
random_church_focus (GRand *rand)
{
  return (FpVec3) { between (rand, -1500, 1500), between (rand, 2000, 5000), between (rand, 500, 3000) };
}
