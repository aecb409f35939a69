/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-ways-up.c - what leads up is walked on: ramps, the stair of a pulpit, the steps of a font, the platforms of stalls */
#include "underfoot.h"

#include "footpace/levels.h"
#include "footpace/people.h"

#include "church.h"

#include <math.h>

static FpProject *
church_with (const char *kind, const char *param, double value, const char *other, double other_value)
{
  FpProject *project = church_new (FP_FACING_EAST);

  church_floor (&project, "floor", (FpBox) { -9000, -9000, 9000, 9000 }, 100, 0, 0, 0);
  church_add (&project, &(ChurchThing) { .kind = kind, .id = "it", .place = { 500, -2000, 0 },
        .param = { { param, value }, { other, other_value } } });
  return project;
}

/* The highest surface of the thing there, by its own coordinates; NAN where there is none. */
static double
surface_at (const FpScene *scene, double x, double y)
{
  const FpPlaced *it = church_placed (scene, "it");
  const FpVec3 at = fp_placed_point (it, (FpVec3) { x, y, 0 });
  const guint index = (guint) fp_scene_find (scene, "it");
  double highest = NAN;
  guint n;
  const FpFloor *floor = fp_scene_floors (scene, &n);

  for (guint i = 0; i < n; i++)
    if (floor[i].owner == index && fp_outline_contains (floor[i].outline, floor[i].n_outline, (FpPoint) { at.x, at.y }))
      {
        const double z = floor[i].z + floor[i].gx * at.x + floor[i].gy * at.y - it->level;

        g_assert_cmpint (floor[i].use, ==, FP_FLOOR_WAY);
        highest = isnan (highest) ? z : MAX (highest, z);
      }
  return highest;
}

/* Who comes to that place stands on it. */
static void
check_underfoot (const FpScene *scene, double x, double y, double level)
{
  const FpPlaced *it = church_placed (scene, "it");
  const FpVec3 at = fp_placed_point (it, (FpVec3) { x, y, 0 });

  g_assert_cmpfloat_with_epsilon (surface_at (scene, x, y), level, 1e-6);
  g_assert_cmpfloat_with_epsilon (fp_level_underfoot (scene, (FpPoint) { at.x, at.y }, it->level + level + 10) - it->level, level, 1e-6);
}

/* 300 high at 1:12 in one run of 3600, with a landing of 1525. */
static void
test_ramp (void)
{
  g_autoptr (FpProject) project = church_with ("ramp", "rise", 300, "slope", 1.0 / 12);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);

  g_assert_true (isnan (surface_at (scene, 0, -10)));
  check_underfoot (scene, 0, 1200, 100);
  check_underfoot (scene, 400, 3000, 250);
  check_underfoot (scene, -400, 3600 + 700, 300);
  g_assert_true (isnan (surface_at (scene, 0, 3600 + 1535)));
  g_assert_true (isnan (surface_at (scene, 700, 1200)));
}

/* Turned a quarter it rises towards -x. */
static void
test_ramp_turned (void)
{
  g_autoptr (FpProject) project = church_with ("ramp", "rise", 300, "slope", 1.0 / 12);
  g_autoptr (FpScene) scene = NULL, turned = NULL;
  g_autoptr (FpProject) next = NULL;
  g_autoptr (FpItem) item = NULL;
  FpItemInit init;
  guint n;
  const FpFloor *floor;

  fp_item_init_from (fp_project_find (project, 0, "it", NULL), &init);
  init.place.turn = 90;
  item = fp_item_new (&init, NULL);
  next = fp_project_with_item (project, 0, item, NULL);
  turned = fp_scene_new (next, 0);
  floor = fp_scene_floors (turned, &n);
  g_assert_cmpuint (n, ==, 3);
  g_assert_cmpfloat_with_epsilon (floor[1].gx, -1.0 / 12, 1e-9);
  g_assert_cmpfloat_with_epsilon (floor[1].gy, 0, 1e-9);
  check_underfoot (turned, 100, 1200, 100);
}

/* Its stair rises in equal steps from the floor to its own floor. */
static void
test_pulpit (void)
{
  g_autoptr (FpProject) project = church_with ("pulpit", "floor", 1000, NULL, 0);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  const FpPlaced *it = church_placed (scene, "it");
  const guint index = (guint) fp_scene_find (scene, "it");
  guint n, own = 0;
  const FpFloor *floor = fp_scene_floors (scene, &n);
  double lowest = G_MAXDOUBLE;

  check_underfoot (scene, 0, 0, 1000);
  for (guint i = 0; i < n; i++)
    if (floor[i].owner == index)
      {
        own++;
        lowest = MIN (lowest, floor[i].z - it->level);
      }
  g_assert_cmpuint (own, >=, 4);
  g_assert_cmpfloat_with_epsilon (lowest, 1000.0 / own, 1e-6); /* as many risers as treads, its floor being the last */
}

static void
test_font (void)
{
  g_autoptr (FpProject) project = church_with ("font", "steps", 2, "riser", 150);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  const FpPlaced *it = church_placed (scene, "it");
  const double half = it->extent.plan.x1, tread = fp_item_params (it->item)[fp_kind_param_index (fp_item_kind (it->item), "tread")];

  check_underfoot (scene, half - tread / 2, 0, 150);
  check_underfoot (scene, half - tread * 1.5, 0, 300);
  g_assert_true (isnan (surface_at (scene, half - 5, half - 5))); /* an octagon */
}

static void
test_stalls (void)
{
  g_autoptr (FpProject) project = church_with ("choir-stalls", "rows", 2, NULL, 0);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  const FpPlaced *it = church_placed (scene, "it");
  g_autoptr (GArray) seats = g_array_new (FALSE, FALSE, sizeof (FpSeat));
  const FpKind *kind = fp_item_kind (it->item);
  guint raised = 0;

  if (kind->seats != NULL)
    kind->seats (&it->form, seats);
  for (double y = it->extent.plan.y0 + 100; y < it->extent.plan.y1; y += 100)
    if (!isnan (surface_at (scene, 0, y)))
      {
        g_assert_cmpfloat (surface_at (scene, 0, y), >, 0);
        raised++;
      }
  g_assert_cmpuint (raised, >, 0);
}

/* A way up is nobody's place: what is set out on the floor stays on it, and the people are as far below the altar as they were. */
static void
test_no_place (void)
{
  FpProject *project = church_with ("ramp", "rise", 900, "slope", 1.0 / 12);
  g_autoptr (FpScene) scene = NULL;
  g_autoptr (FpPeople) people = NULL;
  FpLevels levels;
  gboolean found;

  church_add (&project, &(ChurchThing) { .kind = "footpace", .id = "footpace" });
  church_add (&project, &(ChurchThing) { .kind = "altar", .id = "altar", .on = "footpace", .place = { -4000, 6000, 0 } });
  church_survey (&project, &(ChurchThing) { .kind = "ramp", .id = "old", .place = { 5000, -2000, 0 }, .param = { { "rise", 300 } } });
  church_survey (&project, &(ChurchThing) { .kind = "handrail", .id = "rail", .place = { 5000, 500, 0 } });
  scene = fp_scene_new (project, 0);
  people = fp_people_new (scene);
  levels = fp_levels (people);
  g_assert_cmpfloat (levels.highest, ==, 100);
  g_assert_cmpfloat (levels.area_not_below, ==, 0);
  g_assert_cmpfloat (fp_scene_floor_at (scene, (FpPoint) { 5000, 2500 }, &found), ==, 100);
  g_assert_true (found);
  g_assert_cmpfloat (church_placed (scene, "rail")->level, ==, 100);
  fp_project_unref (project);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/ways-up/ramp", test_ramp);
  g_test_add_func ("/ways-up/ramp-turned", test_ramp_turned);
  g_test_add_func ("/ways-up/pulpit", test_pulpit);
  g_test_add_func ("/ways-up/font", test_font);
  g_test_add_func ("/ways-up/stalls", test_stalls);
  g_test_add_func ("/ways-up/no-place", test_no_place);
  return g_test_run ();
}
