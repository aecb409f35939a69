/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The room that vessels need against closed-form values of small churches: just inside, on and just outside what is asked. */
#include "taking.h"

#include <math.h>

#define CORPORAL 508.0 /* 20 in: P. Dearmer, The Parson's Handbook, 2nd ed. (1899), p. 57 */

static FpProject *
church (FpFacing facing)
{
  return taking_church (facing == FP_FACING_EAST ? FP_BOOKS_OLDER : FP_BOOKS_NEWER, facing,
                        facing == FP_FACING_EAST ? FP_CELEBRATION_LOW | FP_CELEBRATION_SUNG | FP_CELEBRATION_BENEDICTION
                                                 : FP_CELEBRATIONS_NEWER);
}

static void
assert_found (const FpProject *project, const char *rule, gboolean within)
{
  g_assert_cmpstr (fp_found_id (taking_found (project, rule)), ==, within ? "within" : "short");
}

/* --- on the mensa ----------------------------------------------------------- */

static void
test_corporal_depth (void)
{
  static const struct { double depth; gboolean within; } rows[] = { { 509, TRUE }, { CORPORAL, TRUE }, { 507, FALSE } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (FpProject) project = church (FP_FACING_EAST);

      church_param (&project, "altar", "depth", rows[i].depth);
      assert_measure (project, "corporal-square", rows[i].depth);
      assert_found (project, "either-form:corporal", rows[i].within);
    }
}

/* A missal stand 400 wide at the celebrant's edge: from its inner side to the axis is half the corporal. */
static void
test_corporal_aside (void)
{
  static const struct { double more; gboolean within; } rows[] = { { 1, TRUE }, { 0, TRUE }, { -1, FALSE } };

  for (int side = -1; side <= 1; side += 2)
    for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
      {
        g_autoptr (FpProject) project = church (FP_FACING_EAST);

        taking_add (&project, "missal-stand", "stand", "altar", side * (CORPORAL / 2 + 200 + rows[i].more), 0, NULL, 0);
        assert_measure (project, "corporal-square", CORPORAL + 2 * rows[i].more);
        assert_found (project, "either-form:corporal", rows[i].within);
      }
}

/* A gradine 200 deep at the back of a mensa of 750 leaves 550 to who stands in front, whatever is on it; the corporal of one
 * who stands behind would be on it. Linen takes no room. */
static void
test_corporal_before (void)
{
  for (FpFacing facing = FP_FACING_EAST; facing <= FP_FACING_PEOPLE; facing++)
    {
      g_autoptr (FpProject) project = church (facing);

      taking_add (&project, "altar-cloths", "cloths", "altar", 0, 0, NULL, 0);
      assert_measure (project, "corporal-square", 750);
      taking_altar_group (&project, 6);
      assert_measure (project, "corporal-square", facing == FP_FACING_EAST ? 550 : 0);
      assert_found (project, "either-form:corporal", facing == FP_FACING_EAST);
    }
}

/* The canopy's underside is at its height above the floor of the sanctuary; the mensa, 990 above three steps of 152. */
static void
test_over_corporal (void)
{
  static const struct { double room; gboolean within; } rows[] = { { 901, TRUE }, { 900, TRUE }, { 899, FALSE } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (FpProject) project = church (FP_FACING_EAST);
      double mensa;

      g_assert_cmpuint (taking_count (project, "room-over-corporal"), ==, 0);
      taking_add (&project, "canopy", "canopy", NULL, 0, 8000, "height", 4500);
      mensa = 4500 - taking_value (project, "room-over-corporal");
      g_assert_cmpfloat_with_epsilon (mensa, 990 + 3 * 152, 1e-6);
      church_param (&project, "canopy", "height", mensa + rows[i].room);
      assert_measure (project, "room-over-corporal", rows[i].room);
      assert_found (project, "either-form:monstrance-height", rows[i].within);
    }
}

/* --- in the tabernacle -------------------------------------------------------- */

/* By the shares of its parts: walls stand in by a twentieth of the least measure, the door is proud of them by 15. */
static void
test_tabernacle (void)
{
  static const struct { const char *measure, *rule; double width, depth, height, wall, value; gboolean within; } rows[] = {
    { "tabernacle-width-within", "either-form:tabernacle-width-within", 400, 600, 1000, 29, 400 * 0.9 - 58, TRUE },
    { "tabernacle-width-within", "either-form:tabernacle-width-within", 400, 600, 1000, 30, 400 * 0.9 - 60, TRUE },
    { "tabernacle-width-within", "either-form:tabernacle-width-within", 400, 600, 1000, 31, 400 * 0.9 - 62, FALSE },
    { "tabernacle-depth-within", "either-form:tabernacle-depth-within", 600, 250, 1000, 22, 250 * 0.95 - 15 - 22, TRUE },
    { "tabernacle-depth-within", "either-form:tabernacle-depth-within", 600, 250, 1000, 22.5, 250 * 0.95 - 15 - 22.5, TRUE },
    { "tabernacle-depth-within", "either-form:tabernacle-depth-within", 600, 250, 1000, 23, 250 * 0.95 - 15 - 23, FALSE },
    /* Domed: the cornice ends at 64 % of the height and is 6 % high, the foot 7 %, the door 5 % from either. */
    { "tabernacle-height-within", "either-form:tabernacle-height-within", 450, 450, 491, 25, 491 * 0.51, TRUE },
    { "tabernacle-height-within", "either-form:tabernacle-height-within", 450, 450, 250 / 0.51, 25, 250, TRUE },
    { "tabernacle-height-within", "either-form:tabernacle-height-within", 450, 450, 490, 25, 490 * 0.51, FALSE },
    { "tabernacle-door-width", "either-form:tabernacle-door-width", 291, 450, 600, 25, 291 * 0.62, TRUE },
    { "tabernacle-door-width", "either-form:tabernacle-door-width", 180 / 0.62, 450, 600, 25, 180, TRUE },
    { "tabernacle-door-width", "either-form:tabernacle-door-width", 290, 450, 600, 25, 290 * 0.62, FALSE },
    { "tabernacle-door-height", "either-form:tabernacle-door-height", 450, 450, 434, 25, 434 * 0.41, TRUE },
    { "tabernacle-door-height", "either-form:tabernacle-door-height", 450, 450, 177.8 / 0.41, 25, 177.8, TRUE },
    { "tabernacle-door-height", "either-form:tabernacle-door-height", 450, 450, 432, 25, 432 * 0.41, FALSE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (FpProject) project = church (FP_FACING_EAST);

      g_assert_cmpuint (taking_count (project, rows[i].measure), ==, 0);
      taking_add (&project, "tabernacle", "tabernacle", "altar", 0, 0, "width", rows[i].width);
      church_param (&project, "tabernacle", "depth", rows[i].depth);
      church_param (&project, "tabernacle", "height", rows[i].height);
      church_param (&project, "tabernacle", "wall", rows[i].wall);
      assert_measure (project, rows[i].measure, rows[i].value);
      assert_found (project, rows[i].rule, rows[i].within);
    }
}

/* Turned to the side it is the same within. */
static void
test_tabernacle_turned (void)
{
  g_autoptr (FpProject) project = church (FP_FACING_EAST);
  const ChurchThing thing = { "tabernacle", "tabernacle", "altar", { 600, 0, 30 }, NULL, 0, { { "width", 500 }, { "depth", 450 } } };

  church_add (&project, &thing);
  assert_measure (project, "tabernacle-width-within", 500 - 2 * 450 * 0.05 - 2 * 25);
  assert_measure (project, "tabernacle-door-width", 500 * 0.62);
}

/* --- on the credence ---------------------------------------------------------- */

static void
test_credence_length (void)
{
  static const struct { double more; gboolean within; } rows[] = { { 1, TRUE }, { 0, TRUE }, { -1, FALSE } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    for (guint drawn = 0; drawn < 2; drawn++)
      {
        g_autoptr (FpProject) project = church (FP_FACING_EAST);
        double left;

        g_assert_cmpuint (taking_count (project, "credence-length-left"), ==, 0);
        taking_add (&project, "credence", "credence", NULL, 4000, 8000, "length", 1000);
        if (drawn)
          taking_add (&project, "credence-vessels", "vessels", "credence", 0, 0, NULL, 0);
        left = taking_value (project, "credence-length-left");
        g_assert_cmpfloat (left, >, 0);
        church_param (&project, "credence", "length", 1000 - left + rows[i].more);
        assert_found (project, "either-form:credence-length", rows[i].within);
      }
}

/* Two cruets on a tray, a basin of 150 with its towel, a finger bowl, a paten and a chalice, 8 apart. */
static void
test_credence_needs (void)
{
  g_autoptr (FpProject) project = church (FP_FACING_EAST);
  const double tray = 5 * 120 * 0.22 + 16, row = tray + 8 + 150 + 45 + 8 + 70 + 8 + 130;

  taking_add (&project, "credence", "credence", NULL, 4000, 8000, "length", 1000);
  assert_measure (project, "credence-length-left", 1000 - row - 168);
  taking_brief (&project, FP_BOOKS_OLDER, FP_FACING_EAST, FP_CELEBRATION_LOW);
  assert_measure (project, "credence-length-left", 1000 - row);
  /* A bell that stands there takes its room as well; one on the steps does not. */
  taking_add (&project, "hand-bell", "bell", "steps", 900, 0, NULL, 0);
  assert_measure (project, "credence-length-left", 1000 - row);
  taking_add (&project, "crucifix", "cross", "credence", 400, 0, "width", 120);
  g_assert_cmpfloat (taking_value (project, "credence-length-left"), <=, 1000 - row - 120);
}

/* The paten lies with its handle of 100 towards the server: 230 in all. */
static void
test_credence_depth (void)
{
  static const struct { double depth; gboolean within; } rows[] = { { 231, TRUE }, { 230, TRUE }, { 229, FALSE } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (FpProject) project = church (FP_FACING_EAST);

      taking_add (&project, "credence", "credence", NULL, 4000, 8000, "depth", rows[i].depth);
      assert_measure (project, "credence-depth-left", rows[i].depth - 230);
      assert_found (project, "either-form:credence-depth", rows[i].within);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/vessels/corporal-depth", test_corporal_depth);
  g_test_add_func ("/vessels/corporal-aside", test_corporal_aside);
  g_test_add_func ("/vessels/corporal-before", test_corporal_before);
  g_test_add_func ("/vessels/over-corporal", test_over_corporal);
  g_test_add_func ("/vessels/tabernacle", test_tabernacle);
  g_test_add_func ("/vessels/tabernacle-turned", test_tabernacle_turned);
  g_test_add_func ("/vessels/credence-length", test_credence_length);
  g_test_add_func ("/vessels/credence-needs", test_credence_needs);
  g_test_add_func ("/vessels/credence-depth", test_credence_depth);
  return g_test_run ();
}
