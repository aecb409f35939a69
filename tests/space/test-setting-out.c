/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-setting-out.c - things are put where they belong, and moved with what stands on them */
#include "footpace/people.h"
#include "footpace/setting-out.h"

#include <math.h>
#include <string.h>

/* --- a bare church: nave 10 x 16 m, sanctuary 8 x 7 m raised by 300, walls round both --- */

static FpProject *
add_survey (FpProject *project, const char *id, const char *kind, const char *on, FpPlace place, const double *param,
            const FpPoint *corner, guint n)
{
  const FpItemInit init = { .id = id, .kind = fp_kind_find (kind), .on = on, .place = place, .param = param,
                            .corner = corner, .n_corners = n };
  g_autoptr (GError) error = NULL;
  g_autoptr (FpItem) item = fp_item_new (&init, &error);
  FpProject *next;

  g_assert_no_error (error);
  next = fp_project_with_survey_item (project, item, &error);
  g_assert_no_error (error);
  fp_project_unref (project);
  return next;
}

static void
set (const char *kind, double *param, const char *id, double value)
{
  param[fp_kind_param_index (fp_kind_find (kind), id)] = value;
}

static FpProject *
empty_project (void)
{
  const FpBrief brief = { .title = "Saint Osburg", .ministers = 4, .percentile = 50 };

  return fp_project_new (&brief);
}

static FpProject *
bare_church (void)
{
  const FpPoint nave[] = { { -5000, -16000 }, { 5000, -16000 }, { 5000, 0 }, { -5000, 0 } };
  const FpPoint sanctuary[] = { { -4000, 0 }, { 4000, 0 }, { 4000, 7000 }, { -4000, 7000 } };
  /* Clockwise: the church lies to the right. */
  const FpPoint walls[] = { { -5000, -16000 }, { -5000, 0 }, { -4000, 0 }, { -4000, 7000 },
                            { 4000, 7000 }, { 4000, 0 }, { 5000, 0 }, { 5000, -16000 } };
  const FpPlace origin = { 0, 0, 0 };
  double floor[FP_PARAM_MAX], wall[FP_PARAM_MAX];
  FpProject *p = empty_project ();

  fp_kind_defaults (fp_kind_find ("floor"), floor);
  fp_kind_defaults (fp_kind_find ("wall"), wall);
  set ("wall", wall, "closed", 1);
  p = add_survey (p, "nave", "floor", NULL, origin, floor, nave, 4);
  set ("floor", floor, "use", 1);
  set ("floor", floor, "level", 300);
  p = add_survey (p, "chancel", "floor", NULL, origin, floor, sanctuary, 4);
  return add_survey (p, "walls", "wall", NULL, origin, wall, walls, 8);
}

/* Replaces *@p by an edit of its scene; aborts the test on an error. */
static void
step (FpProject **p, FpProject *next, GError **error)
{
  g_autoptr (GError) amiss = NULL;

  g_assert_no_error (*error);
  g_assert_nonnull (next);
  fp_project_check (next, &amiss);
  g_assert_no_error (amiss);
  fp_project_unref (*p);
  *p = next;
}

static void
add (FpProject **p, const char *kind, const char *want_id)
{
  g_autoptr (FpScene) scene = fp_scene_new (*p, 0);
  g_autoptr (GError) error = NULL;
  g_autofree char *id = NULL;

  step (p, fp_set_out_new (scene, fp_kind_find (kind), &id, &error), &error);
  g_assert_cmpstr (id, ==, want_id);
}

static void
move (FpProject **p, const char *id, double x, double y)
{
  g_autoptr (FpScene) scene = fp_scene_new (*p, 0);
  g_autoptr (GError) error = NULL;

  step (p, fp_set_out_move (scene, id, (FpVec3) { x, y, 12345 }, &error), &error);
}

static void
measure (FpProject **p, const char *id, const char *param, double value)
{
  g_autoptr (FpScene) scene = fp_scene_new (*p, 0);
  g_autoptr (GError) error = NULL;

  step (p, fp_set_out_param (scene, id, param, value, &error), &error);
}

static const FpPlaced *
placed (const FpScene *scene, const char *id)
{
  const int i = fp_scene_find (scene, id);

  g_assert_cmpint (i, >=, 0);
  return &fp_scene_placed (scene, NULL)[i];
}

static const char *
support_of (const FpScene *scene, const char *id)
{
  const int i = placed (scene, id)->support;

  return i >= 0 ? fp_item_id (fp_scene_placed (scene, NULL)[i].item) : NULL;
}

static gboolean
plans_overlap (const FpScene *scene, const char *a, const char *b)
{
  FpBox p = placed (scene, a)->plan, q = placed (scene, b)->plan;

  p.x0 += 0.01;
  p.y0 += 0.01;
  p.x1 -= 0.01;
  p.y1 -= 0.01;
  return fp_box_overlaps (&p, &q);
}

#define assert_near(a, b) g_assert_cmpfloat_with_epsilon (a, b, 1e-3)

/* --- setting out a sanctuary --- */

static void
test_altar_and_footpace (void)
{
  g_autoptr (FpProject) p = bare_church ();
  g_autoptr (FpScene) before = NULL, after = NULL;

  add (&p, "altar", "altar");
  before = fp_scene_new (p, 0);
  g_assert_null (support_of (before, "altar"));
  assert_near (placed (before, "altar")->place.x, 0);
  assert_near (placed (before, "altar")->level, 300);
  /* Room to pass behind: 900 between it and the wall. */
  assert_near (placed (before, "altar")->plan.y1, 7000 - 900);

  add (&p, "footpace", "footpace");
  after = fp_scene_new (p, 0);
  g_assert_cmpstr (support_of (after, "altar"), ==, "footpace");
  assert_near (placed (after, "altar")->place.y, placed (before, "altar")->place.y);
  g_assert_cmpfloat (placed (after, "altar")->level, >, 300 + 3 * 150);
}

static void
test_footpace_first (void)
{
  g_autoptr (FpProject) p = bare_church ();
  g_autoptr (FpScene) scene = NULL;

  add (&p, "footpace", "footpace");
  add (&p, "altar", "altar");
  scene = fp_scene_new (p, 0);
  g_assert_cmpstr (support_of (scene, "altar"), ==, "footpace");
  add (&p, "altar", "altar-2"); /* the footpace is taken: on the floor, clear of the first */
  g_clear_pointer (&scene, fp_scene_unref);
  scene = fp_scene_new (p, 0);
  g_assert_null (support_of (scene, "altar-2"));
  g_assert_false (plans_overlap (scene, "altar-2", "footpace"));
  assert_near (placed (scene, "altar-2")->place.x, 0);
}

/* An altar of the survey is raised too: moved, in this alternative. */
static void
test_footpace_under_old_altar (void)
{
  g_autoptr (FpProject) p = add_survey (bare_church (), "old", "altar", NULL, (FpPlace) { 0, 5000, 0 }, NULL, NULL, 0);
  FpPlace moved;
  const char *on;

  add (&p, "footpace", "footpace");
  g_assert_cmpint (fp_alternative_fate (fp_project_alternative (p, 0), "old", &moved, &on), ==, FP_FATE_MOVED);
  g_assert_cmpstr (on, ==, "footpace");
  assert_near (moved.y, 5000);
}

static void
test_on_the_altar (void)
{
  g_autoptr (FpProject) p = bare_church ();
  g_autoptr (FpScene) scene = NULL;
  const FpPlaced *altar, *gradine, *candles, *tabernacle;

  add (&p, "altar", "altar");
  add (&p, "gradine", "gradine");
  add (&p, "tabernacle", "tabernacle");
  add (&p, "crucifix", "crucifix");
  add (&p, "candlesticks", "candlesticks");
  scene = fp_scene_new (p, 0);
  altar = placed (scene, "altar");
  gradine = placed (scene, "gradine");
  candles = placed (scene, "candlesticks");
  tabernacle = placed (scene, "tabernacle");
  /* As long as the mensa, at its back. */
  assert_near (gradine->plan.x1 - gradine->plan.x0, altar->extent.bearing.x1 - altar->extent.bearing.x0);
  assert_near (gradine->plan.y1, altar->place.y + altar->extent.bearing.y1);
  /* The tabernacle on the mensa, in the middle, before the gradine. */
  g_assert_cmpstr (support_of (scene, "tabernacle"), ==, "altar");
  assert_near (tabernacle->place.x, 0);
  g_assert_cmpfloat (tabernacle->plan.y1, <=, gradine->plan.y0 + 1e-6);
  g_assert_cmpfloat (tabernacle->plan.y0, >=, altar->place.y + altar->extent.bearing.y0);
  /* Cross and lights on the gradine, about the axis; the inner two clear of the tabernacle. */
  g_assert_cmpstr (support_of (scene, "crucifix"), ==, "gradine");
  g_assert_cmpstr (support_of (scene, "candlesticks"), ==, "gradine");
  assert_near (placed (scene, "crucifix")->place.x, 0);
  assert_near (candles->place.x, 0);
  assert_near (candles->place.y, placed (scene, "crucifix")->place.y);
  g_assert_cmpfloat (fp_item_param (candles->item, "gap"), >, fp_item_param (tabernacle->item, "width"));
  g_assert_cmpfloat (candles->plan.x1 - candles->plan.x0, <=, gradine->plan.x1 - gradine->plan.x0);
  assert_near (candles->level, gradine->level + gradine->extent.top);
}

/* Without a gradine, cross and lights leave the middle of the table to the vessels: they stand along the edge that
 * lies away from the celebrant, on whichever side he stands. */
static void
test_along_the_edge_of_the_table (void)
{
  for (int facing = 0; facing < 2; facing++)
    {
      const FpBrief brief = { .title = "Saint Osburg", .ministers = 4, .percentile = 50,
                              .facing = facing == 0 ? FP_FACING_EAST : FP_FACING_PEOPLE };
      g_autoptr (FpProject) bare = bare_church ();
      FpProject *p = fp_project_with_brief (bare, &brief, NULL);
      g_autoptr (FpScene) scene = NULL;
      const FpPlaced *altar, *crucifix, *candles;
      double side;

      add (&p, "altar", "altar");
      add (&p, "crucifix", "crucifix");
      add (&p, "candlesticks", "candlesticks");
      scene = fp_scene_new (p, 0);
      altar = placed (scene, "altar");
      crucifix = placed (scene, "crucifix");
      candles = placed (scene, "candlesticks");
      side = facing == 0 ? altar->plan.y1 - crucifix->plan.y1 : crucifix->plan.y0 - altar->plan.y0;
      g_assert_cmpfloat (side, >=, 0);
      g_assert_cmpfloat (side, <, (altar->plan.y1 - altar->plan.y0) / 4);
      assert_near (candles->place.y, crucifix->place.y);
      fp_project_unref (p);
    }
}

/* A gradine that comes last lies at the back of the table all the same, and what stood there goes up on it. */
static void
test_gradine_comes_last (void)
{
  g_autoptr (FpProject) p = bare_church ();
  g_autoptr (FpScene) scene = NULL;
  const FpPlaced *altar, *gradine, *crucifix;

  add (&p, "altar", "altar");
  add (&p, "crucifix", "crucifix");
  add (&p, "candlesticks", "candlesticks");
  add (&p, "gradine", "gradine");
  scene = fp_scene_new (p, 0);
  altar = placed (scene, "altar");
  gradine = placed (scene, "gradine");
  assert_near (gradine->plan.y1, altar->place.y + altar->extent.bearing.y1);
  g_assert_cmpstr (support_of (scene, "crucifix"), ==, "gradine");
  g_assert_cmpstr (support_of (scene, "candlesticks"), ==, "gradine");
  crucifix = placed (scene, "crucifix");
  assert_near (crucifix->place.x, 0);
  assert_near (crucifix->plan.y0 + crucifix->plan.y1, gradine->plan.y0 + gradine->plan.y1);
  assert_near (placed (scene, "candlesticks")->level, gradine->level + gradine->extent.top);
}

static void
test_nothing_to_stand_on (void)
{
  static const char *const kinds[] = { "gradine", "tabernacle", "crucifix" };
  g_autoptr (FpProject) p = bare_church ();
  g_autoptr (FpScene) scene = fp_scene_new (p, 0);

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *id = NULL;
      g_assert_null (fp_set_out_new (scene, fp_kind_find (kinds[i]), &id, &error));
      g_assert_error (error, FP_ERROR, FP_ERROR_REFERENCE);
      g_assert_nonnull (strstr (error->message, kinds[i]));
      g_assert_null (id);
    }
}

/* On the Epistle side, back to the wall, facing into the sanctuary. */
static void
assert_at_epistle_wall (const FpScene *scene, const char *id)
{
  const FpPlaced *thing = placed (scene, id);
  const FpVec3 at = fp_placed_point (thing, (FpVec3) { 0, 0, 0 });
  const FpVec3 front = fp_placed_point (thing, (FpVec3) { 0, -1, 0 });

  assert_near (front.x - at.x, -1);
  assert_near (thing->plan.x1, 4000 - fp_item_kind (thing->item)->clearance);
  g_assert_cmpfloat (thing->plan.y0, >=, 0);
  g_assert_cmpfloat (thing->plan.y1, <=, 7000);
  assert_near (thing->level, 300);
}

static void
test_along_the_wall (void)
{
  g_autoptr (FpProject) p = bare_church ();
  g_autoptr (FpScene) scene = NULL;

  add (&p, "altar", "altar");
  add (&p, "footpace", "footpace");
  add (&p, "sedilia", "sedilia");
  add (&p, "credence", "credence");
  add (&p, "credence", "credence-2");
  scene = fp_scene_new (p, 0);
  assert_at_epistle_wall (scene, "sedilia");
  assert_at_epistle_wall (scene, "credence");
  assert_at_epistle_wall (scene, "credence-2");
  g_assert_false (plans_overlap (scene, "sedilia", "credence"));
  g_assert_false (plans_overlap (scene, "sedilia", "credence-2"));
  g_assert_false (plans_overlap (scene, "credence", "credence-2"));
  g_assert_false (plans_overlap (scene, "credence", "footpace"));
  /* The first credence is at hand beside the altar. */
  g_assert_cmpfloat (fabs (placed (scene, "credence")->place.y - placed (scene, "altar")->place.y), <, 1500);
}

/* Not before a door. */
static void
test_door_stays_free (void)
{
  double door[FP_PARAM_MAX];
  g_autoptr (FpProject) p = NULL;
  g_autoptr (FpScene) scene = NULL;

  fp_kind_defaults (fp_kind_find ("opening"), door);
  set ("opening", door, "side", 5); /* the wall on the Epistle side: from 7000 down to 0 */
  set ("opening", door, "along", 1300);
  p = add_survey (bare_church (), "door", "opening", "walls", (FpPlace) { 0, 0, 0 }, door, NULL, 0);
  add (&p, "altar", "altar");
  add (&p, "credence", "credence");
  scene = fp_scene_new (p, 0);
  assert_near (placed (scene, "door")->place.y, 5700);
  {
    const FpBox before = { 3100, 5700 - fp_item_param (placed (scene, "door")->item, "width") / 2, 4000,
                           5700 + fp_item_param (placed (scene, "door")->item, "width") / 2 };
    g_assert_false (fp_box_overlaps (&placed (scene, "credence")->plan, &before));
  }
}

static void
test_rail (void)
{
  g_autoptr (FpProject) p = bare_church ();
  g_autoptr (FpScene) scene = NULL;
  const FpPlaced *rail;

  add (&p, "altar", "altar");
  add (&p, "rail", "rail");
  scene = fp_scene_new (p, 0);
  rail = placed (scene, "rail");
  /* From wall to wall, the gate on the axis. */
  assert_near (rail->plan.x0, -4000);
  assert_near (rail->plan.x1, 4000);
  assert_near (rail->place.x, 0);
  /* A foot back from the edge of the step: J. T. Micklethwaite, Modern Parish Churches (1874), section XIII. */
  assert_near (rail->plan.y0, 305);
}

/* Between piers that narrow the opening. */
static void
test_rail_between_piers (void)
{
  g_autoptr (FpProject) p = bare_church ();
  g_autoptr (FpScene) scene = NULL;

  p = add_survey (p, "pier-g", "pier", NULL, (FpPlace) { -3000, 400, 0 }, NULL, NULL, 0);
  p = add_survey (p, "pier-e", "pier", NULL, (FpPlace) { 3000, 400, 0 }, NULL, NULL, 0);
  add (&p, "rail", "rail");
  scene = fp_scene_new (p, 0);
  g_assert_cmpfloat (placed (scene, "rail")->plan.x1, <=, 2700.5);
  g_assert_cmpfloat (placed (scene, "rail")->plan.x1, >, 2600);
}

/* It goes as far to the side as lets all seats see the altar past it: a seat of the first row at the wall looks across. */
static void
test_ambo_hides_nothing (void)
{
  g_autoptr (FpProject) p = bare_church ();
  g_autoptr (FpScene) scene = NULL;
  g_autoptr (FpPeople) people = NULL;
  const FpPersonPlace *seat;
  const FpPlaced *ambo, *altar;
  guint n, from_side = 0;

  add (&p, "altar", "altar");
  add (&p, "pews", "pews");
  add (&p, "ambo", "ambo");
  scene = fp_scene_new (p, 0);
  people = fp_people_new (scene);
  ambo = placed (scene, "ambo");
  altar = placed (scene, "altar");
  seat = fp_people_places (people, &n);
  for (guint i = 0; i < n; i++)
    for (guint corner = 0; corner < 4; corner++)
      {
        /* The near corners of the ambo lie to the left of the line from the seat to the altar's end on the Gospel side. */
        const FpPoint c = { corner & 1 ? ambo->plan.x1 : ambo->plan.x0, corner & 2 ? ambo->plan.y1 : ambo->plan.y0 };
        const FpPoint eye = { seat[i].at.x, seat[i].at.y }, end = { altar->plan.x0, (altar->plan.y0 + altar->plan.y1) / 2 };

        from_side += seat[i].at.x < ambo->plan.x1 ? 1 : 0;
        g_assert_cmpint (fp_orient (eye, end, c), >=, 0);
      }
  g_assert_cmpuint (from_side, >, 40);
}

static void
test_ambo_chair_reredos (void)
{
  g_autoptr (FpProject) p = bare_church ();
  g_autoptr (FpScene) scene = NULL;
  const FpPlaced *ambo, *chair, *reredos, *altar;

  add (&p, "altar", "altar");
  add (&p, "footpace", "footpace");
  add (&p, "rail", "rail");
  add (&p, "ambo", "ambo");
  add (&p, "reredos", "reredos");
  add (&p, "chair", "chair");
  scene = fp_scene_new (p, 0);
  ambo = placed (scene, "ambo");
  altar = placed (scene, "altar");
  chair = placed (scene, "chair");
  reredos = placed (scene, "reredos");
  g_assert_cmpfloat (ambo->plan.x1, <, 0); /* the Gospel side */
  g_assert_cmpfloat (ambo->plan.x0, >, -4000);
  g_assert_cmpfloat (ambo->plan.y1, <, altar->plan.y0);
  g_assert_cmpfloat (ambo->place.turn, ==, 0); /* towards the people */
  g_assert_false (plans_overlap (scene, "ambo", "rail"));
  g_assert_false (plans_overlap (scene, "ambo", "footpace"));
  g_assert_cmpfloat (reredos->plan.y0, >=, altar->plan.y1 - 1e-6);
  g_assert_cmpfloat (reredos->plan.y1, <=, 7000 + 1e-6);
  assert_near (reredos->place.x, 0);
  g_assert_false (plans_overlap (scene, "chair", "altar"));
  g_assert_false (plans_overlap (scene, "chair", "footpace"));
  g_assert_false (plans_overlap (scene, "chair", "reredos"));
  /* There is no room for it behind the altar: to the side, its back to the wall. */
  assert_near (chair->plan.x1, 4000 - 50);
}

/* Where there is room behind the altar, the chair is at the head of the sanctuary and faces the people. */
static void
test_chair_behind (void)
{
  g_autoptr (FpProject) p = bare_church ();
  g_autoptr (FpScene) scene = NULL;

  add (&p, "altar", "altar");
  move (&p, "altar", 0, -3000);
  add (&p, "chair", "chair");
  scene = fp_scene_new (p, 0);
  assert_near (placed (scene, "chair")->place.x, 0);
  g_assert_cmpfloat (placed (scene, "chair")->place.turn, ==, 0);
  g_assert_cmpfloat (placed (scene, "chair")->plan.y0 - placed (scene, "altar")->plan.y1, >=, 900);
}

/* Whatever is asked for, in whatever order, nothing but the altar itself lands at the origin,
 * and everything lies inside the church. */
static void
test_every_kind_lands_inside (void)
{
  guint n;
  const FpKind *const *kind = fp_kinds (&n);
  g_autoptr (FpProject) p = bare_church ();

  for (guint round = 0; round < 2; round++)
    for (guint i = 0; i < n; i++)
      {
        g_autoptr (FpScene) scene = fp_scene_new (p, 0), after = NULL;
        g_autoptr (GError) error = NULL;
        g_autofree char *id = NULL;
        const FpPlaced *thing;

        g_test_message ("%s", kind[i]->id);
        step (&p, fp_set_out_new (scene, kind[i], &id, &error), &error);
        after = fp_scene_new (p, 0);
        thing = placed (after, id);
        if (kind[i]->role == FP_ROLE_WALL || kind[i]->role == FP_ROLE_OPENING)
          continue;
        g_assert_false (fp_box_is_empty (&thing->plan));
        g_assert_cmpfloat (thing->plan.x0, >=, -5001);
        g_assert_cmpfloat (thing->plan.x1, <=, 5001);
        g_assert_cmpfloat (thing->plan.y0, >=, -16001);
        g_assert_cmpfloat (thing->plan.y1, <=, 7001);
        g_assert_true (fabs (thing->place.x) + fabs (thing->place.y) > 1 || fp_item_on (thing->item) != NULL);
      }
}

/* Into another side of its wall an opening goes before it is said how far along that is: as far as there is room. */
static void
test_opening_into_another_side (void)
{
  g_autoptr (FpProject) p = empty_project ();
  g_autoptr (GError) error = NULL;
  const FpItem *wall, *moved;
  double length, second;

  add (&p, "floor", "floor");
  add (&p, "wall", "wall");
  add (&p, "opening", "opening");
  add (&p, "opening", "opening-2");
  for (guint side = 1; side <= 4; side++)
    for (guint i = 0; i < 2; i++)
      {
        g_autoptr (FpScene) scene = fp_scene_new (p, 0);

        step (&p, fp_set_out_param (scene, i == 0 ? "opening" : "opening-2", "side", side, &error), &error);
      }
  wall = fp_project_find (p, 0, "wall", NULL);
  moved = fp_project_find (p, 0, "opening", NULL);
  second = fp_item_param (fp_project_find (p, 0, "opening-2", NULL), "along");
  {
    guint n;
    const FpPoint *corner = fp_item_corners (wall, &n);

    g_assert_cmpuint (n, ==, 4);
    length = hypot (corner[0].x - corner[3].x, corner[0].y - corner[3].y);
  }
  g_assert_cmpfloat (fp_item_param (moved, "side"), ==, 4);
  g_assert_cmpfloat (fp_item_param (moved, "along"), <=, length - fp_item_param (moved, "width") / 2);
  g_assert_cmpfloat (fabs (second - fp_item_param (moved, "along")), >=, fp_item_param (moved, "width") - 1e-6);
}

/* --- a survey from nothing --- */

static void
test_survey_from_nothing (void)
{
  g_autoptr (FpProject) p = empty_project ();
  g_autoptr (FpScene) scene = NULL;
  const FpItem *walls, *steps, *door, *other;

  add (&p, "floor", "floor");   /* the nave */
  add (&p, "floor", "floor-2"); /* the sanctuary */
  add (&p, "wall", "wall");
  add (&p, "steps", "steps");
  add (&p, "opening", "opening");
  add (&p, "opening", "opening-2");
  add (&p, "pews", "pews");
  add (&p, "pier", "pier");
  add (&p, "gallery", "gallery");
  add (&p, "standing-room", "standing-room");
  add (&p, "altar", "altar");
  scene = fp_scene_new (p, 0);

  walls = placed (scene, "wall")->item;
  g_assert_cmpfloat (fp_item_param (walls, "closed"), ==, 1);
  {
    guint n;
    const FpPoint *corner = fp_item_corners (walls, &n);
    g_assert_cmpfloat (fp_outline_area (corner, n), <, 0); /* clockwise: the church is inside */
  }
  g_assert_cmpfloat (fp_item_param (placed (scene, "floor")->item, "use"), ==, 0);
  g_assert_cmpfloat (fp_item_param (placed (scene, "floor-2")->item, "use"), ==, 1);
  assert_near (placed (scene, "floor-2")->plan.y0, placed (scene, "floor")->plan.y1);
  /* The steps climb exactly to the sanctuary, and end at its edge. */
  steps = placed (scene, "steps")->item;
  assert_near (fp_item_param (steps, "count") * fp_item_param (steps, "riser"),
               fp_item_param (placed (scene, "floor-2")->item, "level"));
  g_assert_cmpfloat (placed (scene, "steps")->level, ==, 0);
  assert_near (placed (scene, "steps")->plan.x0, placed (scene, "floor-2")->plan.x0);
  g_assert_false (plans_overlap (scene, "pews", "pier"));
  g_assert_cmpfloat (placed (scene, "altar")->level, ==, fp_item_param (placed (scene, "floor-2")->item, "level"));
  /* The two doors are not in each other's way. */
  door = placed (scene, "opening")->item;
  other = placed (scene, "opening-2")->item;
  g_assert_true (fp_item_param (door, "side") != fp_item_param (other, "side")
                 || fabs (fp_item_param (door, "along") - fp_item_param (other, "along")) > 1000);
}

/* One after another into a bare rectangle: the long sides first, each in the middle, then evenly, never nearer to one
 * another than 200 mm of wall. */
static void
test_openings_spread (void)
{
  g_autoptr (FpProject) p = empty_project ();
  double side[9], along[9], width = 0;

  add (&p, "floor", "floor");
  add (&p, "wall", "wall");
  for (guint i = 0; i < G_N_ELEMENTS (side); i++)
    {
      g_autofree char *id = i == 0 ? g_strdup ("opening") : g_strdup_printf ("opening-%u", i + 1);
      const FpItem *item;

      add (&p, "opening", id);
      item = fp_project_find (p, 0, id, NULL);
      side[i] = fp_item_param (item, "side");
      along[i] = fp_item_param (item, "along");
      width = fp_item_param (item, "width");
    }
  /* A side and the one across from it are two apart. */
  g_assert_cmpfloat (fabs (side[0] - side[1]), ==, 2);
  assert_near (along[0], along[1]);
  for (guint i = 0; i < G_N_ELEMENTS (side); i++)
    for (guint k = 0; k < i; k++)
      g_assert_true (side[i] != side[k] || fabs (along[i] - along[k]) >= width + 200 - 1e-6);
}

/* Whoever has nothing chosen is told so. */
static void
test_nothing_is_refused (void)
{
  g_autoptr (FpProject) p = bare_church ();
  g_autoptr (FpScene) scene = fp_scene_new (p, 0);
  g_autoptr (GError) error = NULL;

  g_assert_null (fp_set_out_restore (scene, NULL, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_REFERENCE);
  g_clear_error (&error);
  g_assert_null (fp_set_out_remove (scene, NULL, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_REFERENCE);
}

static void
test_opening_needs_a_wall (void)
{
  g_autoptr (FpProject) p = empty_project ();
  g_autoptr (FpScene) scene = fp_scene_new (p, 0);
  g_autoptr (GError) error = NULL;

  g_assert_null (fp_set_out_new (scene, fp_kind_find ("opening"), NULL, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_REFERENCE);
}

/* --- moving --- */

static FpProject *
furnished (void)
{
  FpProject *p = bare_church ();

  add (&p, "altar", "altar");
  add (&p, "footpace", "footpace");
  add (&p, "gradine", "gradine");
  add (&p, "candlesticks", "candlesticks");
  return p;
}

static void
assert_moved (const FpScene *before, const FpScene *after, const char *id, double x, double y)
{
  assert_near (placed (after, id)->place.x - placed (before, id)->place.x, x);
  assert_near (placed (after, id)->place.y - placed (before, id)->place.y, y);
  assert_near (placed (after, id)->level, placed (before, id)->level);
}

static void
test_move_carries (void)
{
  static const char *const ids[] = { "footpace", "altar", "gradine", "candlesticks" };

  /* Taken hold of at the altar, or at the footpace, it is the same. */
  for (guint hold = 0; hold < 2; hold++)
    {
      g_autoptr (FpProject) p = furnished ();
      g_autoptr (FpScene) before = fp_scene_new (p, 0), after = NULL;

      move (&p, ids[hold], 120, -340);
      after = fp_scene_new (p, 0);
      for (guint i = 0; i < G_N_ELEMENTS (ids); i++)
        assert_moved (before, after, ids[i], 120, -340);
    }
}

static void
test_move_on_support (void)
{
  g_autoptr (FpProject) p = furnished ();
  g_autoptr (FpScene) before = NULL, after = NULL;

  /* On an altar that is turned, a thing still goes the way it is pulled. */
  {
    g_autoptr (FpScene) scene = fp_scene_new (p, 0);
    g_autoptr (GError) error = NULL;
    const FpPlace turned = { 0, 4000, 90 };
    step (&p, fp_set_out_place (scene, "altar", &turned, &error), &error);
  }
  before = fp_scene_new (p, 0);
  move (&p, "candlesticks", 30, -10);
  after = fp_scene_new (p, 0);
  assert_moved (before, after, "candlesticks", 30, -10);
  assert_moved (before, after, "altar", 0, 0);
}

static void
test_move_survey (void)
{
  g_autoptr (FpProject) p = add_survey (bare_church (), "old", "altar", NULL, (FpPlace) { 0, 5000, 0 }, NULL, NULL, 0);
  g_autoptr (GError) error = NULL;
  FpPlace moved = { 0 };

  {
    FpProject *next = fp_project_with_new_alternative (p, 0, "b", "B", &error);
    step (&p, next, &error);
  }
  move (&p, "old", 10, 20);
  g_assert_cmpint (fp_alternative_fate (fp_project_alternative (p, 0), "old", &moved, NULL), ==, FP_FATE_MOVED);
  assert_near (moved.y, 5020);
  g_assert_cmpint (fp_alternative_fate (fp_project_alternative (p, 1), "old", NULL, NULL), ==, FP_FATE_KEPT);
  assert_near (fp_item_place (fp_project_find (p, 0, "old", NULL)).y, 5000); /* as it was measured */
  move (&p, "old", 5, 0);
  move (&p, "old", -15, -20); /* back where it was: kept */
  g_assert_cmpint (fp_alternative_fate (fp_project_alternative (p, 0), "old", NULL, NULL), ==, FP_FATE_KEPT);

  move (&p, "chancel", 0, 100); /* a part of the building is measured anew */
  assert_near (fp_item_place (fp_project_find (p, 1, "chancel", NULL)).y, 100);
}

/* An opening goes along its wall and no farther. */
static void
test_move_opening (void)
{
  double door[FP_PARAM_MAX];
  g_autoptr (FpProject) p = NULL;
  double width;

  fp_kind_defaults (fp_kind_find ("opening"), door);
  set ("opening", door, "side", 4); /* the east wall: from x = -4000 to 4000 */
  set ("opening", door, "along", 4000);
  p = add_survey (bare_church (), "door", "opening", "walls", (FpPlace) { 0, 0, 0 }, door, NULL, 0);
  width = fp_item_param (fp_project_find (p, 0, "door", NULL), "width");
  move (&p, "door", 250, 999);
  assert_near (fp_item_param (fp_project_find (p, 0, "door", NULL), "along"), 4250);
  move (&p, "door", 99999, 0);
  assert_near (fp_item_param (fp_project_find (p, 0, "door", NULL), "along"), 8000 - width / 2);
  move (&p, "door", -99999, 0);
  assert_near (fp_item_param (fp_project_find (p, 0, "door", NULL), "along"), width / 2);
}

/* It stops at its neighbour, but passes under a window. */
static void
test_move_opening_past_others (void)
{
  double door[FP_PARAM_MAX];
  g_autoptr (FpProject) p = NULL;

  fp_kind_defaults (fp_kind_find ("opening"), door); /* 1500 wide, 2100 high */
  set ("opening", door, "side", 4);
  set ("opening", door, "along", 4000);
  p = add_survey (bare_church (), "door", "opening", "walls", (FpPlace) { 0, 0, 0 }, door, NULL, 0);
  set ("opening", door, "along", 6500);
  p = add_survey (p, "other", "opening", "walls", (FpPlace) { 0, 0, 0 }, door, NULL, 0);
  set ("opening", door, "along", 2000);
  set ("opening", door, "sill", 3000);
  set ("opening", door, "head", 5000);
  p = add_survey (p, "window", "opening", "walls", (FpPlace) { 0, 0, 0 }, door, NULL, 0);
  move (&p, "door", 99999, 0);
  assert_near (fp_item_param (fp_project_find (p, 0, "door", NULL), "along"), 6500 - 1500);
  move (&p, "door", -3000, 0);
  assert_near (fp_item_param (fp_project_find (p, 0, "door", NULL), "along"), 2000);
  move (&p, "other", -99999, 0);
  assert_near (fp_item_param (fp_project_find (p, 0, "other", NULL), "along"), 3500);
}

/* A new one keeps clear of one that this alternative takes away: in the others it is still there. */
static void
test_new_opening_apart (void)
{
  g_autoptr (FpProject) p = bare_church ();
  g_autoptr (GError) error = NULL;

  add (&p, "opening", "opening");
  step (&p, fp_project_with_fate (p, 0, "opening", FP_FATE_REMOVED, NULL, NULL, &error), &error);
  add (&p, "opening", "opening-2");
  g_assert_true (fp_project_check (p, NULL));
}

/* Pews on a gallery keep church coordinates; they go with it all the same. */
static void
test_move_gallery_with_pews (void)
{
  g_autoptr (FpProject) p = bare_church ();
  g_autoptr (FpScene) before = NULL, after = NULL;

  add (&p, "gallery", "gallery");
  p = add_survey (p, "up", "pews", "gallery", (FpPlace) { 0, -14000, 0 }, NULL, NULL, 0);
  before = fp_scene_new (p, 0);
  move (&p, "gallery", 0, 500);
  after = fp_scene_new (p, 0);
  assert_moved (before, after, "gallery", 0, 500);
  assert_moved (before, after, "up", 0, 500);
}

/* Far out of the project's range: refused, and nothing is changed. */
static void
test_move_too_far (void)
{
  g_autoptr (FpProject) p = furnished ();
  g_autoptr (FpScene) scene = fp_scene_new (p, 0);
  g_autoptr (GError) error = NULL, nan = NULL, none = NULL;

  g_assert_null (fp_set_out_move (scene, "altar", (FpVec3) { 2e6, 0, 0 }, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_RANGE);
  g_assert_null (fp_set_out_move (scene, "altar", (FpVec3) { NAN, 0, 0 }, &nan));
  g_assert_error (nan, FP_ERROR, FP_ERROR_RANGE);
  g_assert_null (fp_set_out_move (scene, "nothing", (FpVec3) { 0, 0, 0 }, &none));
  g_assert_error (none, FP_ERROR, FP_ERROR_REFERENCE);
}

/* --- measuring --- */

static void
test_param (void)
{
  g_autoptr (FpProject) p = furnished ();
  g_autoptr (FpScene) before = fp_scene_new (p, 0), after = NULL;
  g_autoptr (GError) none = NULL, range = NULL;

  g_assert_null (fp_set_out_param (before, "altar", "wheels", 4, &none));
  g_assert_error (none, FP_ERROR, FP_ERROR_REFERENCE);
  g_assert_null (fp_set_out_param (before, "altar", "length", -4, &range));
  g_assert_error (range, FP_ERROR, FP_ERROR_RANGE);

  measure (&p, "footpace", "riser", 160);
  after = fp_scene_new (p, 0);
  /* Raise a step, and all above it rises. */
  assert_near (placed (after, "altar")->level - placed (before, "altar")->level, 3 * (160 - 152));
  assert_near (placed (after, "candlesticks")->level - placed (before, "candlesticks")->level, 3 * (160 - 152));
  measure (&p, "chancel", "level", 450); /* the survey, for all alternatives */
  assert_near (fp_item_param (fp_project_find (p, 0, "chancel", NULL), "level"), 450);
  /* What touched the back of the mensa still touches it when the altar grows deeper. */
  measure (&p, "altar", "depth", 950);
  g_clear_pointer (&after, fp_scene_unref);
  after = fp_scene_new (p, 0);
  assert_near (placed (after, "gradine")->plan.y1, placed (after, "altar")->place.y
               + placed (after, "altar")->extent.bearing.y1);
}

static void
test_name (void)
{
  g_autoptr (FpProject) p = furnished ();
  g_autoptr (FpScene) scene = fp_scene_new (p, 0);
  g_autoptr (GError) error = NULL, bad = NULL;

  g_assert_null (fp_set_out_name (scene, "altar", "a\tb", &bad));
  g_assert_error (bad, FP_ERROR, FP_ERROR_INVALID);
  step (&p, fp_set_out_name (scene, "altar", "High altar", &error), &error);
  g_assert_cmpstr (fp_item_name (fp_project_find (p, 0, "altar", NULL)), ==, "High altar");
}

/* --- onto another support --- */

static void
test_on (void)
{
  g_autoptr (FpProject) p = furnished ();
  g_autoptr (FpScene) before = fp_scene_new (p, 0), after = NULL;
  g_autoptr (GError) error = NULL, circle = NULL, none = NULL;

  g_assert_null (fp_set_out_on (before, "altar", "gradine", &circle));
  g_assert_error (circle, FP_ERROR, FP_ERROR_REFERENCE);
  g_assert_null (fp_set_out_on (before, "altar", "nothing", &none));
  g_assert_error (none, FP_ERROR, FP_ERROR_REFERENCE);

  step (&p, fp_set_out_on (before, "candlesticks", "altar", &error), &error);
  after = fp_scene_new (p, 0);
  assert_near (placed (after, "candlesticks")->place.x, placed (before, "candlesticks")->place.x);
  assert_near (placed (after, "candlesticks")->place.y, placed (before, "candlesticks")->place.y);
  assert_near (placed (after, "candlesticks")->level, placed (after, "altar")->level
               + placed (after, "altar")->extent.top);

  step (&p, fp_set_out_on (after, "candlesticks", NULL, &error), &error);
  g_clear_pointer (&after, fp_scene_unref);
  after = fp_scene_new (p, 0);
  assert_near (placed (after, "candlesticks")->place.y, placed (before, "candlesticks")->place.y);
  assert_near (placed (after, "candlesticks")->level, 300);
}

/* --- taking away --- */

static void
test_remove_proposed (void)
{
  g_autoptr (FpProject) p = furnished ();
  g_autoptr (FpScene) scene = fp_scene_new (p, 0);
  g_autoptr (GError) error = NULL;

  step (&p, fp_set_out_remove (scene, "altar", &error), &error);
  g_assert_cmpuint (fp_alternative_n_items (fp_project_alternative (p, 0)), ==, 1);
  g_assert_nonnull (fp_project_find (p, 0, "footpace", NULL));
}

static FpProject *
with_old_altar (void)
{
  FpProject *p = add_survey (bare_church (), "old", "altar", NULL, (FpPlace) { 0, 5000, 0 }, NULL, NULL, 0);

  p = add_survey (p, "old-gradine", "gradine", "old", (FpPlace) { 0, 0, 0 }, NULL, NULL, 0);
  return add_survey (p, "old-candles", "candlesticks", "old-gradine", (FpPlace) { 0, 0, 0 }, NULL, NULL, 0);
}

static FpFate
fate_of (const FpProject *p, const char *id)
{
  return fp_alternative_fate (fp_project_alternative (p, 0), id, NULL, NULL);
}

static void
test_remove_and_restore (void)
{
  g_autoptr (FpProject) p = with_old_altar (), start = fp_project_ref (p);
  g_autoptr (FpScene) scene = NULL, removed = NULL;
  g_autoptr (GError) error = NULL, gone = NULL, own = NULL;

  add (&p, "crucifix", "crucifix"); /* new, on the old gradine */
  scene = fp_scene_new (p, 0);
  step (&p, fp_set_out_remove (scene, "old", &error), &error);
  g_assert_cmpint (fate_of (p, "old"), ==, FP_FATE_REMOVED);
  g_assert_cmpint (fate_of (p, "old-gradine"), ==, FP_FATE_REMOVED);
  g_assert_cmpint (fate_of (p, "old-candles"), ==, FP_FATE_REMOVED);
  g_assert_null (fp_project_find (p, 0, "crucifix", NULL));

  removed = fp_scene_new (p, 0);
  g_assert_null (fp_set_out_move (removed, "old", (FpVec3) { 1, 0, 0 }, &gone));
  g_assert_error (gone, FP_ERROR, FP_ERROR_REFERENCE);
  /* The candlesticks back, and what carried them. */
  step (&p, fp_set_out_restore (removed, "old-candles", &error), &error);
  g_assert_cmpint (fate_of (p, "old"), ==, FP_FATE_KEPT);
  g_assert_cmpint (fate_of (p, "old-gradine"), ==, FP_FATE_KEPT);
  g_assert_true (fp_project_equal (p, start));

  add (&p, "ambo", "ambo");
  g_clear_pointer (&scene, fp_scene_unref);
  scene = fp_scene_new (p, 0);
  g_assert_null (fp_set_out_restore (scene, "ambo", &own));
  g_assert_error (own, FP_ERROR, FP_ERROR_REFERENCE);
}

/* What is kept although its support went keeps its place when it is taken hold of. */
static void
test_move_without_support (void)
{
  g_autoptr (FpProject) p = with_old_altar ();
  g_autoptr (FpScene) before = NULL, after = NULL;
  g_autoptr (GError) error = NULL;
  FpProject *next = fp_project_with_fate (p, 0, "old", FP_FATE_REMOVED, NULL, NULL, &error);

  step (&p, next, &error);
  before = fp_scene_new (p, 0);
  move (&p, "old-gradine", 100, 0);
  after = fp_scene_new (p, 0);
  assert_moved (before, after, "old-gradine", 100, 0);
}

/* Random hands: every edit that is taken leaves a project, and none changes the one before. */
static FpProject *
random_edit (const FpScene *scene, GError **error)
{
  guint n, n_kinds;
  const FpPlaced *all = fp_scene_placed (scene, &n);
  const FpKind *const *kind = fp_kinds (&n_kinds);
  const FpItem *item = all[g_test_rand_int_range (0, (gint32) n)].item;
  const char *id = fp_item_id (item), *other = fp_item_id (all[g_test_rand_int_range (0, (gint32) n)].item);
  const FpVec3 by = { g_test_rand_double_range (-2000, 2000), g_test_rand_double_range (-2000, 2000), 0 };
  const FpPlace place = { by.x, by.y, g_test_rand_double_range (-180, 180) };
  const gint32 n_params = (gint32) fp_kind_n_params (fp_item_kind (item));
  const FpParam *param = &fp_item_kind (item)->params[g_test_rand_int_range (0, n_params)];

  switch (g_test_rand_int_range (0, 8))
    {
    case 0: case 1: return fp_set_out_new (scene, kind[g_test_rand_int_range (0, (gint32) n_kinds)], NULL, error);
    case 2: return fp_set_out_move (scene, id, by, error);
    case 3: return fp_set_out_place (scene, id, &place, error);
    case 4: return fp_set_out_param (scene, id, param->id, round (g_test_rand_double_range (param->min, param->max)),
                                     error);
    case 5: return fp_set_out_on (scene, id, g_test_rand_bit () ? other : NULL, error);
    case 6: return fp_set_out_remove (scene, id, error);
    default: return fp_set_out_restore (scene, id, error);
    }
}

static void
test_random_hands (void)
{
  guint taken = 0;

  for (guint run = 0; run < 6; run++)
    {
      g_autoptr (FpProject) p = with_old_altar ();
      for (guint i = 0; i < 60; i++)
        {
          g_autoptr (FpScene) scene = fp_scene_new (p, 0);
          g_autoptr (GError) error = NULL, amiss = NULL;
          FpProject *next = random_edit (scene, &error);

          g_assert_true ((next == NULL) == (error != NULL));
          if (next == NULL)
            continue;
          fp_project_check (next, &amiss);
          g_assert_no_error (amiss);
          fp_project_unref (p);
          p = next;
          taken++;
        }
    }
  g_assert_cmpuint (taken, >, 100); /* or the test tests nothing */
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/setting-out/altar-and-footpace", test_altar_and_footpace);
  g_test_add_func ("/setting-out/footpace-first", test_footpace_first);
  g_test_add_func ("/setting-out/footpace-under-old-altar", test_footpace_under_old_altar);
  g_test_add_func ("/setting-out/on-the-altar", test_on_the_altar);
  g_test_add_func ("/setting-out/edge-of-the-table", test_along_the_edge_of_the_table);
  g_test_add_func ("/setting-out/gradine-last", test_gradine_comes_last);
  g_test_add_func ("/setting-out/nothing-to-stand-on", test_nothing_to_stand_on);
  g_test_add_func ("/setting-out/along-the-wall", test_along_the_wall);
  g_test_add_func ("/setting-out/opening-into-another-side", test_opening_into_another_side);
  g_test_add_func ("/setting-out/door-stays-free", test_door_stays_free);
  g_test_add_func ("/setting-out/rail", test_rail);
  g_test_add_func ("/setting-out/rail-between-piers", test_rail_between_piers);
  g_test_add_func ("/setting-out/ambo-chair-reredos", test_ambo_chair_reredos);
  g_test_add_func ("/setting-out/ambo-hides-nothing", test_ambo_hides_nothing);
  g_test_add_func ("/setting-out/chair-behind", test_chair_behind);
  g_test_add_func ("/setting-out/every-kind-lands-inside", test_every_kind_lands_inside);
  g_test_add_func ("/setting-out/survey-from-nothing", test_survey_from_nothing);
  g_test_add_func ("/setting-out/openings-spread", test_openings_spread);
  g_test_add_func ("/setting-out/nothing-is-refused", test_nothing_is_refused);
  g_test_add_func ("/setting-out/opening-needs-a-wall", test_opening_needs_a_wall);
  g_test_add_func ("/setting-out/move-carries", test_move_carries);
  g_test_add_func ("/setting-out/move-on-support", test_move_on_support);
  g_test_add_func ("/setting-out/move-survey", test_move_survey);
  g_test_add_func ("/setting-out/move-opening", test_move_opening);
  g_test_add_func ("/setting-out/move-opening-past-others", test_move_opening_past_others);
  g_test_add_func ("/setting-out/new-opening-apart", test_new_opening_apart);
  g_test_add_func ("/setting-out/move-gallery-with-pews", test_move_gallery_with_pews);
  g_test_add_func ("/setting-out/move-too-far", test_move_too_far);
  g_test_add_func ("/setting-out/param", test_param);
  g_test_add_func ("/setting-out/name", test_name);
  g_test_add_func ("/setting-out/on", test_on);
  g_test_add_func ("/setting-out/remove-proposed", test_remove_proposed);
  g_test_add_func ("/setting-out/remove-and-restore", test_remove_and_restore);
  g_test_add_func ("/setting-out/move-without-support", test_move_without_support);
  g_test_add_func ("/setting-out/random-hands", test_random_hands);
  return g_test_run ();
}
