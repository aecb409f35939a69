/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-wheelchairs.c - how many places for wheelchairs the printed table wants, and who sits beside each */
#include "footpace/capacity.h"

#include "church.h"

#define LEVEL (-5720.0) /* of chairs, so that who sits there is level with who is in a wheelchair whose place begins at -5000 */

/* 2010 ADA Standards, 221.2.1.1: each end of each line of the table. */
static void
test_table (void)
{
  static const struct { guint seats, places; } table[] = {
    { 0, 0 },   { 3, 0 },   { 4, 1 },   { 25, 1 },  { 26, 2 },  { 50, 2 },   { 51, 4 },    { 150, 4 },   { 151, 5 },
    { 300, 5 }, { 301, 6 }, { 500, 6 }, { 501, 7 }, { 650, 7 }, { 651, 8 }, { 5000, 36 }, { 5001, 37 }, { 5200, 37 }, { 5201, 38 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (table); i++)
    g_assert_cmpuint (fp_wheelchairs_wanted (table[i].seats), ==, table[i].places);
}

static GArray *
companies (const FpProject *project, FpPeople **people)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);

  *people = fp_people_new (scene);
  return fp_companies (*people);
}

static void
add (FpProject **project, const char *kind, const char *id, double x, double y, const char *param, double value)
{
  const ChurchThing thing = { kind, id, NULL, { x, y, 0 }, NULL, 0, { { param, value }, { NULL, 0 } }, NULL };

  church_survey (project, &thing);
}

static guint
accompanied (const FpProject *project)
{
  g_autoptr (FpPeople) people = NULL;
  g_autoptr (GArray) all = companies (project, &people);
  guint n = 0;

  for (guint i = 0; i < all->len; i++)
    n += g_array_index (all, FpCompany, i).companion >= 0;
  return n;
}

/* The chair's middle: half its single width of 915 from the end of the bench of one seat of 457 beside it, so that the two sit
 * 686 apart; and no farther than 1200. */
static void
test_beside (void)
{
  static const struct { double x, y; guint n; } table[] = {
    { 686, 0, 1 }, { -686, 0, 1 }, { 1199, 0, 1 }, { 1200, 0, 1 }, { 1201, 0, 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (table); i++)
    {
      FpProject *project = church_new (FP_FACING_EAST);
      g_autoptr (FpPeople) people = NULL;
      const FpPersonPlace *place;
      g_autoptr (GArray) all = NULL;
      double behind;
      guint n;

      church_floor (&project, "nave", (FpBox) { -6000, -20000, 6000, 0 }, 0, 0, 0, 0);
      add (&project, "wheelchair-places", "chair", 0, -5000, "count", 1);
      add (&project, "chairs", "seats", table[i].x, LEVEL, "seats", 1);
      church_param (&project, "seats", "rows", 1);
      all = companies (project, &people);
      place = fp_people_places (people, &n);
      g_assert_cmpuint (n, ==, 2);
      /* Shoulder to shoulder: brought level with the one in the wheelchair. */
      behind = place[0].at.y - place[1].at.y;
      g_assert_cmpfloat (ABS (behind), <=, 1);
      g_assert_cmpuint (all->len, ==, 1);
      g_assert_cmpint (g_array_index (all, FpCompany, 0).companion >= 0, ==, table[i].n > 0);
      fp_project_unref (project);
    }
}

/* Far before it, nobody is a companion, and another wheelchair, who stands, or who kneels at the rail is none. */
static void
test_none (void)
{
  FpProject *project = church_new (FP_FACING_EAST);

  church_floor (&project, "nave", (FpBox) { -6000, -20000, 6000, 0 }, 0, 0, 0, 0);
  add (&project, "wheelchair-places", "chairs-here", 0, -5000, "count", 2);
  g_assert_cmpuint (accompanied (project), ==, 0);
  add (&project, "rail", "rail", 0, -4300, "length", 4000);
  g_assert_cmpuint (accompanied (project), ==, 0);
  add (&project, "chairs", "before", 1200, -3000, "seats", 1);
  church_param (&project, "before", "rows", 1);
  g_assert_cmpuint (accompanied (project), ==, 0);
  fp_project_unref (project);
}

/* One seat serves one; where the first could take either of two seats and the second but one, both have one. */
static void
test_shared (void)
{
  FpProject *project = church_new (FP_FACING_EAST);

  church_floor (&project, "nave", (FpBox) { -6000, -20000, 6000, 0 }, 0, 0, 0, 0);
  add (&project, "wheelchair-places", "first", 0, -5000, "count", 1);
  add (&project, "wheelchair-places", "second", 1900, -5000, "count", 1);
  add (&project, "chairs", "between", 950, LEVEL, "seats", 1);
  church_param (&project, "between", "rows", 1);
  g_assert_cmpuint (accompanied (project), ==, 1);
  add (&project, "chairs", "left", -950, LEVEL, "seats", 1);
  church_param (&project, "left", "rows", 1);
  g_assert_cmpuint (accompanied (project), ==, 2);
  fp_project_unref (project);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/wheelchairs/table", test_table);
  g_test_add_func ("/wheelchairs/beside", test_beside);
  g_test_add_func ("/wheelchairs/none", test_none);
  g_test_add_func ("/wheelchairs/shared", test_shared);
  return g_test_run ();
}
