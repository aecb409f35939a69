/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-setting-pews.c - new pews stand in two blocks about a middle aisle, fitted to the floor of the people */
#include "church.h"

#include "footpace/setting-out.h"

#include <math.h>

#define assert_near(a, b) g_assert_cmpfloat_with_epsilon (a, b, 1e-3)

/* A nave so wide and so long before y = 0, a sanctuary 6 m wide and 7 m deep beyond it, walls round both. */
static FpProject *
church (double width, double length)
{
  const double w = width / 2;
  const FpPoint walls[] = { { -w, -length }, { -w, 0 }, { -3000, 0 }, { -3000, 7000 },
                            { 3000, 7000 }, { 3000, 0 }, { w, 0 }, { w, -length } };
  const ChurchThing wall = { "wall", "walls", NULL, { 0, 0, 0 }, walls, 8, { { "closed", 1 } } };
  FpProject *p = church_new (FP_FACING_EAST);

  church_floor (&p, "nave", (FpBox) { -w, -length, w, 0 }, 0, 0, 0, 0);
  church_floor (&p, "chancel", (FpBox) { -3000, 0, 3000, 7000 }, 300, 1, 0, 0);
  church_survey (&p, &wall);
  return p;
}

static char *
add (FpProject **p, const char *kind)
{
  g_autoptr (FpScene) scene = fp_scene_new (*p, 0);
  g_autoptr (GError) error = NULL;
  char *id = NULL;
  FpProject *next = fp_set_out_new (scene, fp_kind_find (kind), &id, &error);

  g_assert_no_error (error);
  g_assert_true (fp_project_check (next, NULL));
  fp_project_unref (*p);
  *p = next;
  return id;
}

static void
add_pews (FpProject **p, const char *want_id)
{
  g_autofree char *id = add (p, "pews");

  g_assert_cmpstr (id, ==, want_id);
}

static const FpItem *
item (const FpProject *p, const char *id)
{
  const FpItem *found = fp_project_find (p, 0, id, NULL);

  g_assert_nonnull (found);
  return found;
}

static double
param (const FpProject *p, const char *id, const char *name)
{
  return fp_item_param (item (p, id), name);
}

static FpBox
plan_of (const FpProject *p, const char *id)
{
  g_autoptr (FpScene) scene = fp_scene_new (p, 0);

  return church_placed (scene, id)->plan;
}

static gboolean
plans_meet (FpBox a, FpBox b)
{
  return fp_box_overlaps (&(FpBox) { a.x0 + 0.01, a.y0 + 0.01, a.x1 - 0.01, a.y1 - 0.01 }, &b);
}

/* 10 m: 5000 - 600 - 1000 = 3400 for each block, 7 seats of 457.  16 m: from 2000 before the sanctuary to 1500 before
 * the west wall are 12500, which take 13 rows of 900: 12 spacings, a pew of 550 and the kneeler before it. */
static void
test_two_blocks (void)
{
  g_autoptr (FpProject) p = church (10000, 16000);
  FpBox gospel, epistle;

  add_pews (&p, "pews");
  gospel = plan_of (p, "pews");
  epistle = plan_of (p, "pews-2");
  g_assert_cmpstr (fp_item_name (item (p, "pews")), ==, "Pews, Gospel side");
  g_assert_cmpstr (fp_item_name (item (p, "pews-2")), ==, "Pews, Epistle side");
  assert_near (param (p, "pews", "length"), 7 * 457);
  assert_near (param (p, "pews", "rows"), 13);
  assert_near (gospel.x1, -600);
  assert_near (epistle.x0, 600);
  assert_near (gospel.x0, -epistle.x1);
  g_assert_cmpfloat (gospel.x0, >=, -5000 + 1000);
  assert_near (gospel.y1, -2000);
  g_assert_cmpfloat (gospel.y0, >=, -16000 + 1500);
  assert_near (gospel.y0, epistle.y0);
}

/* Before a rail or steps that reach into the nave. */
static void
test_before_the_rail (void)
{
  const ChurchThing steps = { "steps", "steps", NULL, { 0, -600, 0 }, NULL, 0, { { "count", 2 } } };
  const ChurchThing rail = { "rail", "rail", NULL, { 0, -1500, 0 }, NULL, 0, { { "top", 200 } } };
  g_autoptr (FpProject) p = church (10000, 16000);

  church_survey (&p, &steps);
  {
    g_autoptr (FpProject) q = fp_project_ref (p);
    add_pews (&q, "pews");
    assert_near (plan_of (q, "pews").y1, -2600);
  }
  church_add (&p, &rail);
  add_pews (&p, "pews");
  assert_near (plan_of (p, "pews").y1, plan_of (p, "rail").y0 - 2000);
}

/* No more than 14 seats between two aisles: Chicago building code (older text), as in our rule on seats in a row. */
static void
test_wide_nave (void)
{
  g_autoptr (FpProject) p = church (24000, 20000);

  add_pews (&p, "pews");
  assert_near (param (p, "pews", "length"), 14 * 457);
  assert_near (param (p, "pews-2", "length"), 14 * 457);
}

/* Where the nave is too narrow for aisles at the sides the pews go to the walls, 7 seats at the most (same code). */
static void
test_narrow_nave (void)
{
  g_autoptr (FpProject) p = church (6200, 12000);

  add_pews (&p, "pews");
  assert_near (plan_of (p, "pews").x1, -600);
  g_assert_cmpfloat (plan_of (p, "pews").x0, >=, -3100);
  assert_near (param (p, "pews", "length"), 5 * 457);
}

/* Up to the piers: the aisle is beyond them. */
static void
test_between_piers (void)
{
  g_autoptr (FpProject) p = church (18000, 24000);

  for (guint i = 0; i < 10; i++)
    {
      const double side = i % 2 ? 1 : -1;
      const ChurchThing pier = { "pier", NULL, NULL, { side * 5000, -3000 - 4000.0 * (i / 2), 0 }, NULL, 0,
                                 { { "width", 800 } } };
      g_autofree char *id = g_strdup_printf ("pier-%u", i);
      ChurchThing one = pier;
      one.id = id;
      church_survey (&p, &one);
    }
  add_pews (&p, "pews");
  /* 4600 - 50 - 600 = 3950. */
  assert_near (param (p, "pews", "length"), 8 * 457);
  g_assert_cmpfloat (param (p, "pews", "rows"), >, 20);
}

/* A block that stands alone gets its like. */
static void
test_beside_one (void)
{
  const ChurchThing old = { "pews", "old", NULL, { 2500, -5000, 10 }, NULL, 0,
                            { { "rows", 6 }, { "length", 3000 }, { "spacing", 950 }, { "stagger", 1 } } };
  g_autoptr (FpProject) p = church (12000, 20000);
  g_autoptr (FpScene) scene = NULL;

  church_survey (&p, &old);
  add_pews (&p, "pews");
  assert_near (param (p, "pews", "rows"), 6);
  assert_near (param (p, "pews", "length"), 3000);
  assert_near (param (p, "pews", "spacing"), 950);
  assert_near (param (p, "pews", "stagger"), 1);
  scene = fp_scene_new (p, 0);
  assert_near (church_placed (scene, "pews")->place.x, -2500);
  assert_near (church_placed (scene, "pews")->place.y, -5000);
  assert_near (church_placed (scene, "pews")->place.turn, -10);
  g_assert_cmpstr (fp_item_name (item (p, "pews")), ==, "Pews, Gospel side");
  g_assert_cmpint (fp_scene_find (scene, "pews-2"), ==, -1);
}

/* Behind those that are there, over a cross-aisle. */
static void
test_behind_others (void)
{
  g_autoptr (FpProject) p = church (10000, 30000);

  add_pews (&p, "pews");
  church_param (&p, "pews", "rows", 8);
  church_param (&p, "pews-2", "rows", 8);
  add_pews (&p, "pews-3");
  assert_near (plan_of (p, "pews-3").y1, plan_of (p, "pews").y0 - 1200);
  assert_near (plan_of (p, "pews-4").y1, plan_of (p, "pews").y0 - 1200);
  g_assert_cmpstr (fp_item_name (item (p, "pews-4")), ==, "More pews, Epistle side");
}

/* Clear of the way in, wherever the door is. */
static void
test_doors (void)
{
  g_autoptr (FpProject) p = church (5000, 14000);
  const ChurchThing door = { "opening", "door", "walls", { 0, 0, 0 }, NULL, 0,
                             { { "side", 7 }, { "along", 6000 }, { "width", 1200 } } };

  church_survey (&p, &door); /* in the Epistle wall of the nave, from -5400 to -6600 */
  add_pews (&p, "pews");
  for (guint i = 0; i < 2; i++)
    g_assert_false (plans_meet (plan_of (p, i ? "pews-2" : "pews"), (FpBox) { 1600, -6600, 2500, -5400 }));
}

/* In a full nave a last block goes where there is still room on a floor of the people. */
static void
test_full (void)
{
  g_autoptr (FpProject) p = church (10000, 16000);
  FpBox transept;

  add_pews (&p, "pews");
  church_floor (&p, "transept", (FpBox) { 5000, -8000, 12000, 0 }, 0, 0, 0, 0);
  {
    g_autofree char *id = add (&p, "pews");
    transept = plan_of (p, id);
    g_assert_cmpfloat (transept.x0, >=, 5000);
    g_assert_cmpfloat (transept.x1, <=, 12000);
    g_assert_cmpfloat (transept.y0, >=, -8000);
  }
}

/* Before anything is measured, and in one hall whose east end is the sanctuary. */
static void
test_unmeasured (void)
{
  for (guint hall = 0; hall < 2; hall++)
    {
      g_autoptr (FpProject) p = church_new (FP_FACING_EAST);

      if (hall)
        church_floor (&p, "hall", (FpBox) { -4000, -12000, 4000, 6000 }, 0, 0, 0, 0);
      add_pews (&p, "pews");
      assert_near (plan_of (p, "pews").y1, -2000);
      assert_near (plan_of (p, "pews").x1, -600);
      assert_near (plan_of (p, "pews-2").x0, 600);
      g_assert_cmpfloat (plan_of (p, "pews").y0, >=, -12000 + 1500);
    }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/setting-pews/two-blocks", test_two_blocks);
  g_test_add_func ("/setting-pews/before-the-rail", test_before_the_rail);
  g_test_add_func ("/setting-pews/wide-nave", test_wide_nave);
  g_test_add_func ("/setting-pews/narrow-nave", test_narrow_nave);
  g_test_add_func ("/setting-pews/between-piers", test_between_piers);
  g_test_add_func ("/setting-pews/beside-one", test_beside_one);
  g_test_add_func ("/setting-pews/behind-others", test_behind_others);
  g_test_add_func ("/setting-pews/doors", test_doors);
  g_test_add_func ("/setting-pews/full", test_full);
  g_test_add_func ("/setting-pews/unmeasured", test_unmeasured);
  return g_test_run ();
}
