/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-room-on-table.c - what is set on an altar, a gradine or a credence finds the room that is left there */
#include "church.h"

#include "footpace/setting-out.h"

#include <string.h>

static FpProject *
furnished (FpFacing facing, const char *const *kinds)
{
  FpProject *p = church_new (facing);

  church_floor (&p, "nave", (FpBox) { -5000, -16000, 5000, 0 }, 0, 0, 0, 0);
  church_floor (&p, "chancel", (FpBox) { -4000, 0, 4000, 7000 }, 300, 1, 0, 0);
  for (; *kinds != NULL; kinds++)
    {
      g_autoptr (FpScene) scene = fp_scene_new (p, 0);
      g_autoptr (GError) error = NULL;
      FpProject *next = fp_set_out_new (scene, fp_kind_find (*kinds), NULL, &error);

      g_assert_no_error (error);
      fp_project_check (next, &error);
      g_assert_no_error (error);
      fp_project_unref (p);
      p = next;
    }
  return p;
}

static const char *
support_of (const FpScene *scene, const char *id)
{
  const int i = church_placed (scene, id)->support;

  return i >= 0 ? fp_item_id (fp_scene_placed (scene, NULL)[i].item) : NULL;
}

/* Of the solids of one part, or of all (-1). */
static FpBox3
body_of (const FpScene *scene, const char *id, int part)
{
  const FpPlaced *placed = church_placed (scene, id);
  const FpSolid *solid = fp_scene_solids (scene, NULL);
  FpBox3 box = FP_BOX3_EMPTY;

  for (guint i = placed->first_solid; i < placed->first_solid + placed->n_solids; i++)
    if (part < 0 || (int) solid[i].part == part)
      {
        const FpBox3 own = fp_solid_box (&solid[i]);
        fp_box3_add_box (&box, &own);
      }
  return box;
}

static gboolean
takes_room (const FpSolid *s)
{
  return s->part != FP_PART_FLOOR && s->part != FP_PART_CLOTH;
}

static gboolean
boxes_meet (const FpBox3 *a, const FpBox3 *b)
{
  return MIN (MIN (MIN (a->hi.x, b->hi.x) - MAX (a->lo.x, b->lo.x), MIN (a->hi.y, b->hi.y) - MAX (a->lo.y, b->lo.y)),
              MIN (a->hi.z, b->hi.z) - MAX (a->lo.z, b->lo.z)) > 0.1;
}

/* By their boxes, which is more than by themselves; pieces of one thing may. */
static void
assert_apart (const FpScene *scene, const char *id)
{
  guint n;
  const FpSolid *solid = fp_scene_solids (scene, &n);
  const int own = fp_scene_find (scene, id);

  for (guint i = 0; i < n; i++)
    for (guint k = 0; (int) solid[i].owner == own && k < n; k++)
      {
        const FpBox3 a = fp_solid_box (&solid[i]), b = fp_solid_box (&solid[k]);
        if ((int) solid[k].owner != own && takes_room (&solid[k]) && boxes_meet (&a, &b))
          g_error ("%s stands in %s", id, fp_item_id (fp_scene_placed (scene, NULL)[solid[k].owner].item));
      }
}

#define assert_near(a, b) g_assert_cmpfloat_with_epsilon (a, b, 1e-3)

/* --- the older form ----------------------------------------------------------- */

static void
test_older_form (void)
{
  static const char *const kinds[] = {
    "footpace", "altar", "altar-cloths", "gradine", "tabernacle", "crucifix", "candlesticks", "frontal", "tabernacle-veil",
    "altar-cards", "missal-stand", "sanctus-candle", "reliquaries", "flowers", "hand-bell", NULL,
  };
  g_autoptr (FpProject) p = furnished (FP_FACING_EAST, kinds);
  g_autoptr (FpScene) scene = fp_scene_new (p, 0);
  const FpPlaced *altar = church_placed (scene, "altar"), *gradine = church_placed (scene, "gradine");
  const FpPlaced *cards = church_placed (scene, "altar-cards"), *missal = church_placed (scene, "missal-stand");

  for (guint i = 9; kinds[i] != NULL; i++)
    assert_apart (scene, kinds[i]);
  g_assert_cmpstr (support_of (scene, "altar-cards"), ==, "altar");
  g_assert_cmpstr (support_of (scene, "reliquaries"), ==, "gradine");
  g_assert_cmpstr (support_of (scene, "flowers"), ==, "gradine");
  g_assert_cmpstr (support_of (scene, "hand-bell"), ==, "footpace");
  /* The large card in the middle, the others near the ends; before the tabernacle, and on the table. */
  assert_near (cards->place.x, altar->place.x);
  g_assert_cmpfloat (cards->plan.y0, <, church_placed (scene, "tabernacle")->plan.y0);
  g_assert_cmpfloat (cards->plan.y0, >=, altar->plan.y0);
  g_assert_cmpfloat (cards->plan.x1 - cards->plan.x0, >, 0.75 * (altar->plan.x1 - altar->plan.x0));
  /* The Missal, the Sanctus candle and the bell on the Epistle side, the Missal within reach. */
  g_assert_cmpfloat (missal->place.x, >, 0);
  assert_near (missal->place.turn, 0);
  g_assert_cmpfloat (missal->plan.y0, <, altar->place.y);
  g_assert_cmpfloat (church_placed (scene, "sanctus-candle")->place.x, >, 0);
  g_assert_cmpfloat (church_placed (scene, "hand-bell")->place.x, >, 0);
  assert_near (church_placed (scene, "reliquaries")->level, gradine->level + gradine->extent.top);
}

/* Where the celebrant faces the people, the book lies on his left, and faces him. */
static void
test_facing_people (void)
{
  static const char *const kinds[] = { "altar", "crucifix", "candlesticks", "missal-stand", NULL };
  g_autoptr (FpProject) p = furnished (FP_FACING_PEOPLE, kinds);
  g_autoptr (FpScene) scene = fp_scene_new (p, 0);
  const FpPlaced *altar = church_placed (scene, "altar"), *missal = church_placed (scene, "missal-stand");

  assert_near (missal->place.turn, 180);
  g_assert_cmpfloat (missal->place.x, >, altar->place.x);
  g_assert_cmpfloat (missal->place.y, >, altar->place.y);
  assert_apart (scene, "missal-stand");
}

/* Beside the altar rather than on it, where there is no gradine (GIRM 305). */
static void
test_flowers_beside (void)
{
  static const char *const kinds[] = { "footpace", "altar", "flowers", NULL };
  g_autoptr (FpProject) p = furnished (FP_FACING_PEOPLE, kinds);
  g_autoptr (FpScene) scene = fp_scene_new (p, 0);

  g_assert_cmpstr (support_of (scene, "flowers"), ==, "footpace");
  assert_apart (scene, "flowers");
}

/* A gradine that comes last lies at the back all the same; the cards stand before it then. */
static void
test_gradine_after_cards (void)
{
  static const char *const kinds[] = { "altar", "altar-cards", "gradine", NULL };
  g_autoptr (FpProject) p = furnished (FP_FACING_EAST, kinds);
  g_autoptr (FpScene) scene = fp_scene_new (p, 0);
  const FpPlaced *gradine = church_placed (scene, "gradine");

  assert_near (gradine->plan.y1, church_placed (scene, "altar")->plan.y1);
  g_assert_cmpfloat (church_placed (scene, "altar-cards")->plan.y1, <=, gradine->plan.y0 + 1e-6);
}

/* In the middle behind the cross, which comes forward a little, and a little higher than the six: Catholic Encyclopedia I
 * (1907), Altar Candles, p. 348. */
static void
test_seventh (void)
{
  static const char *const kinds[] = { "altar", "gradine", "crucifix", "candlesticks", NULL };
  g_autoptr (FpProject) p = furnished (FP_FACING_EAST, kinds), next = NULL;
  g_autoptr (FpScene) before = NULL, after = NULL;
  g_autoptr (GError) error = NULL;
  FpBox3 seventh;

  church_param (&p, "gradine", "depth", 450);
  before = fp_scene_new (p, 0);
  next = fp_set_out_new (before, fp_kind_find ("seventh-candle"), NULL, &error);
  g_assert_no_error (error);
  after = fp_scene_new (next, 0);
  seventh = body_of (after, "seventh-candle", FP_PART_STICK);
  assert_near (church_placed (after, "seventh-candle")->place.x, 0);
  g_assert_cmpfloat (seventh.hi.z, >, body_of (after, "candlesticks", FP_PART_STICK).hi.z);
  g_assert_cmpfloat (church_placed (after, "crucifix")->plan.y1, <=, church_placed (after, "seventh-candle")->plan.y0);
  g_assert_cmpfloat (church_placed (after, "crucifix")->place.y, <, church_placed (before, "crucifix")->place.y);
  assert_apart (after, "seventh-candle");
}

static void
test_credence (void)
{
  static const char *const kinds[] = { "altar", "credence", "credence-vessels", NULL };
  g_autoptr (FpProject) p = furnished (FP_FACING_EAST, kinds);
  g_autoptr (FpScene) scene = fp_scene_new (p, 0);
  const FpBox *table = &church_placed (scene, "credence")->plan, *vessels = &church_placed (scene, "credence-vessels")->plan;

  g_assert_cmpstr (support_of (scene, "credence-vessels"), ==, "credence");
  g_assert_cmpfloat (vessels->x0, >=, table->x0 - 1);
  g_assert_cmpfloat (vessels->x1, <=, table->x1 + 1);
  g_assert_cmpfloat (vessels->y0, >=, table->y0 - 1);
  g_assert_cmpfloat (vessels->y1, <=, table->y1 + 1);
}

/* --- over the altar and about it -------------------------------------------------- */

/* Large enough for the altar and its footpace (Catholic Encyclopedia I, 1907, Altar Canopy, p. 351), over all that stands
 * there, its columns beside the steps. */
static void
test_canopy (void)
{
  static const char *const kinds[] = { "footpace", "altar", "gradine", "crucifix", "candlesticks", "canopy", NULL };
  g_autoptr (FpProject) p = furnished (FP_FACING_EAST, kinds);
  g_autoptr (FpScene) scene = fp_scene_new (p, 0);
  const FpBox *steps = &church_placed (scene, "footpace")->plan, *canopy = &church_placed (scene, "canopy")->plan;

  g_assert_cmpfloat (canopy->x0, <=, steps->x0);
  g_assert_cmpfloat (canopy->x1, >=, steps->x1);
  g_assert_cmpfloat (canopy->y0, <=, steps->y0);
  g_assert_cmpfloat (canopy->y1, >=, steps->y1);
  g_assert_cmpfloat (body_of (scene, "canopy", FP_PART_BODY).lo.z, >, body_of (scene, "crucifix", -1).hi.z);
  assert_apart (scene, "canopy");
}

/* What hangs overhead is in nobody's way. */
static void
test_under_the_lamp (void)
{
  static const char *const kinds[] = { "footpace", "altar", "sanctuary-lamp", "canopy", "kneelers", NULL };
  g_autoptr (FpProject) p = furnished (FP_FACING_EAST, kinds);
  g_autoptr (FpScene) scene = fp_scene_new (p, 0);
  const FpPlaced *lamp = church_placed (scene, "sanctuary-lamp"), *steps = church_placed (scene, "footpace");

  /* In front of the altar and clear of the steps: Catholic Encyclopedia I (1907), Altar Lamp. */
  assert_near (lamp->place.x, 0);
  g_assert_cmpfloat (lamp->plan.y1, <, steps->plan.y0);
  assert_near (church_placed (scene, "kneelers")->place.x, 0);
  g_assert_cmpfloat (church_placed (scene, "kneelers")->plan.y1, >, lamp->plan.y0);
}

/* Where the Blessed Sacrament is kept apart from the altar, the lamp hangs there. */
static void
test_lamp_aside (void)
{
  static const char *const kinds[] = { "altar", "credence", NULL };
  const ChurchThing tabernacle = { "tabernacle", "aside", "credence", { 0, 0, 0 }, NULL, 0, { { "width", 300 }, { "depth", 300 }, { NULL, 0 } } };
  g_autoptr (FpProject) p = furnished (FP_FACING_EAST, kinds), next = NULL;
  g_autoptr (FpScene) before = NULL, after = NULL;
  g_autoptr (GError) error = NULL;

  church_add (&p, &tabernacle);
  before = fp_scene_new (p, 0);
  next = fp_set_out_new (before, fp_kind_find ("sanctuary-lamp"), NULL, &error);
  g_assert_no_error (error);
  after = fp_scene_new (next, 0);
  assert_near (church_placed (after, "sanctuary-lamp")->place.x, church_placed (after, "aside")->place.x);
}

/* The two of the acolytes at the two ends of the lowest step. */
static void
test_processional (void)
{
  static const char *const kinds[] = { "footpace", "altar", "processional-candlesticks", NULL };
  g_autoptr (FpProject) p = furnished (FP_FACING_EAST, kinds);
  g_autoptr (FpScene) scene = fp_scene_new (p, 0);
  const FpPlaced *steps = church_placed (scene, "footpace"), *pair = church_placed (scene, "processional-candlesticks");

  assert_near (fp_item_param (pair->item, "gap"), steps->plan.x1 - steps->plan.x0);
  g_assert_cmpfloat (pair->plan.y1, <=, steps->plan.y0);
}

/* --- what hangs takes the size of what it hangs over ------------------------------ */

static void
test_hangs (void)
{
  static const char *const kinds[] = { "footpace", "altar", "altar-cloths", "frontal", "tabernacle", "tabernacle-veil", NULL };
  g_autoptr (FpProject) p = furnished (FP_FACING_EAST, kinds);
  g_autoptr (FpScene) scene = NULL;
  FpBox3 frontal, cloths, veil, tabernacle;

  church_param (&p, "altar", "length", 3000);
  church_param (&p, "altar", "height", 1050);
  church_param (&p, "tabernacle", "width", 600);
  scene = fp_scene_new (p, 0);
  frontal = body_of (scene, "frontal", -1);
  cloths = body_of (scene, "altar-cloths", -1);
  /* The whole front, from the mensa to the footpace and from end to end: Catholic Encyclopedia I (1907), Altar Frontal. */
  assert_near (frontal.hi.x - frontal.lo.x, 3000);
  assert_near (frontal.lo.z, church_placed (scene, "altar")->level);
  assert_near (frontal.hi.z, church_placed (scene, "altar")->level + 1050);
  g_assert_cmpfloat (frontal.hi.y, <=, church_placed (scene, "altar")->plan.y0 + 1e-6);
  /* The top cloth reaches to the predella at both ends: ibid., Altar Cloths. */
  assert_near (cloths.lo.z, church_placed (scene, "altar")->level);
  g_assert_cmpfloat (cloths.hi.x - cloths.lo.x, >, 3000);
  /* The veil covers the tabernacle on all sides: E. Ryan, Liturgical Arts I (1931). */
  veil = body_of (scene, "tabernacle-veil", -1);
  tabernacle = body_of (scene, "tabernacle", -1);
  g_assert_cmpfloat (veil.lo.x, <, tabernacle.lo.x);
  g_assert_cmpfloat (veil.hi.x, >, tabernacle.hi.x);
  g_assert_cmpfloat (veil.lo.y, <, tabernacle.lo.y);
  g_assert_cmpfloat (veil.hi.y, >, tabernacle.hi.y);
  g_assert_cmpfloat (veil.hi.z, >, tabernacle.hi.z);
  assert_near (veil.lo.z, tabernacle.lo.z);
}

/* It goes where that goes. */
static void
test_hanging_moves (void)
{
  static const char *const kinds[] = { "altar", "frontal", NULL };
  g_autoptr (FpProject) p = furnished (FP_FACING_EAST, kinds), moved = NULL;
  g_autoptr (FpScene) before = fp_scene_new (p, 0), after = NULL;
  g_autoptr (GError) error = NULL;

  moved = fp_set_out_move (before, "altar", (FpVec3) { 200, -300, 0 }, &error);
  g_assert_no_error (error);
  after = fp_scene_new (moved, 0);
  assert_near (body_of (after, "frontal", -1).lo.x, body_of (before, "frontal", -1).lo.x + 200);
  assert_near (body_of (after, "frontal", -1).hi.y, body_of (before, "frontal", -1).hi.y - 300);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/room-on-table/older-form", test_older_form);
  g_test_add_func ("/room-on-table/facing-people", test_facing_people);
  g_test_add_func ("/room-on-table/flowers-beside", test_flowers_beside);
  g_test_add_func ("/room-on-table/gradine-after-cards", test_gradine_after_cards);
  g_test_add_func ("/room-on-table/seventh", test_seventh);
  g_test_add_func ("/room-on-table/credence", test_credence);
  g_test_add_func ("/room-on-table/canopy", test_canopy);
  g_test_add_func ("/room-on-table/under-the-lamp", test_under_the_lamp);
  g_test_add_func ("/room-on-table/lamp-aside", test_lamp_aside);
  g_test_add_func ("/room-on-table/processional", test_processional);
  g_test_add_func ("/room-on-table/hangs", test_hangs);
  g_test_add_func ("/room-on-table/hanging-moves", test_hanging_moves);
  return g_test_run ();
}
