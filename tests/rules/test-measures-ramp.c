/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Ramps against the ADA Standards (2010), 405 and 505.4: just within, at and just beyond what is printed. */
#include "taking.h"

static void
test_ramp (void)
{
  /* A ramp of 300 mm but where another rise is told. */
  static const struct { const char *param; double value, rise; const char *measure, *rule; double measured; gboolean within; } rows[] = {
    { "slope", 0.083, 300, "ramp-slope", "access:ramp-slope", 0.083, TRUE },
    { "slope", 1.0 / 12, 300, "ramp-slope", "access:ramp-slope", 1.0 / 12, TRUE },
    { "slope", 0.084, 300, "ramp-slope", "access:ramp-slope", 0.084, FALSE },
    { "width", 915, 300, "ramp-width", "access:ramp-width", 915, TRUE },
    { "width", 914.4, 300, "ramp-width", "access:ramp-width", 914.4, TRUE },
    { "width", 913, 300, "ramp-width", "access:ramp-width", 913, FALSE },
    { "landing", 1525, 300, "ramp-landing", "access:ramp-landing", 1525, TRUE },
    { "landing", 1524, 300, "ramp-landing", "access:ramp-landing", 1524, TRUE },
    { "landing", 1523, 300, "ramp-landing", "access:ramp-landing", 1523, FALSE },
    /* 1600 in two runs of 800, more than 762; in three of 533 where a landing comes sooner. */
    { "run", 800, 1600, "ramp-run", "access:ramp-run", 800, FALSE },
    { "run", 762, 1524, "ramp-run", "access:ramp-run", 762, TRUE },
    { "run", 760, 1600, "ramp-run", "access:ramp-run", 1600.0 / 3, TRUE },
    { "handrail", 864, 300, "ramp-handrail", "access:ramp-handrail", 864, TRUE },
    { "handrail", 863, 300, "ramp-handrail", "access:ramp-handrail", 863, FALSE },
    { "handrail", 965, 300, "ramp-handrail", "access:ramp-handrail", 965, TRUE },
    { "handrail", 966, 300, "ramp-handrail", "access:ramp-handrail", 966, FALSE },
    { "handrail", 0, 300, "ramp-handrail", "access:ramp-handrail", 0, FALSE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (FpProject) project = taking_church (FP_BOOKS_NEWER, FP_FACING_PEOPLE, FP_CELEBRATIONS_NEWER);

      g_assert_cmpuint (taking_count (project, rows[i].measure), ==, 0);
      taking_add (&project, "ramp", "ramp", NULL, 3000, -9000, rows[i].param, rows[i].value);
      church_param (&project, "ramp", "rise", rows[i].rise);
      assert_measure (project, rows[i].measure, rows[i].measured);
      g_assert_cmpstr (fp_found_id (taking_found (project, rows[i].rule)), ==, rows[i].within ? "within" : "short");
    }
}

/* 6 in may be climbed without. */
static void
test_low (void)
{
  g_autoptr (FpProject) project = taking_church (FP_BOOKS_NEWER, FP_FACING_PEOPLE, FP_CELEBRATIONS_NEWER);

  taking_add (&project, "ramp", "ramp", NULL, 3000, -9000, "rise", 152);
  church_param (&project, "ramp", "handrail", 0);
  g_assert_cmpuint (taking_count (project, "ramp-handrail"), ==, 0);
  church_param (&project, "ramp", "rise", 153);
  assert_measure (project, "ramp-handrail", 0);
}

/* It is no floor on which people stay: what is said of those does not ask it. */
static void
test_no_floor (void)
{
  g_autoptr (FpProject) project = taking_church (FP_BOOKS_NEWER, FP_FACING_PEOPLE, FP_CELEBRATIONS_NEWER);
  const guint floors = taking_count (project, "floor-fall");

  taking_add (&project, "ramp", "ramp", NULL, 3000, -9000, "slope", 0.25);
  g_assert_cmpuint (taking_count (project, "floor-fall"), ==, floors);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/ramp/ramp", test_ramp);
  g_test_add_func ("/ramp/low", test_low);
  g_test_add_func ("/ramp/no-floor", test_no_floor);
  return g_test_run ();
}
