/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sight made again after an edit against sight made from nothing: the same, to the last ray. */
#include "church.h"
#include "footpace/sight.h"

#define EDITS 30

static FpProject *
small_church (void)
{
  FpProject *project = church_new (FP_FACING_EAST);
  const FpPoint run[] = { { -9000, 0 }, { -4000, 0 } };
  const ChurchThing survey[] = {
    { "pews", "pews-gospel", NULL, { -2500, -1500, 0 }, NULL, 0, { { "rows", 9 }, { "length", 3600 }, { NULL, 0 } } },
    { "pews", "pews-epistle", NULL, { 2500, -1500, 0 }, NULL, 0, { { "rows", 9 }, { "length", 3600 }, { NULL, 0 } } },
    { "pier", "pier", NULL, { 700, 2500, 0 }, NULL, 0, { { NULL, 0 } } },
    { "wall", "wall", NULL, { 0, 3000, 0 }, run, 2, { { NULL, 0 } } },
  };
  const ChurchThing things[] = {
    { "footpace", "steps", NULL, { 0, 0, 0 }, NULL, 0, { { NULL, 0 } } },
    { "altar", "altar", "steps", { 0, 6000, 0 }, NULL, 0, { { NULL, 0 } } },
    { "crucifix", "cross", "altar", { 0, 0, 0 }, NULL, 0, { { NULL, 0 } } },
    { "candlesticks", "candles", "altar", { 0, 0, 0 }, NULL, 0, { { NULL, 0 } } },
    { "ambo", "ambo", NULL, { -2500, 2000, 0 }, NULL, 0, { { NULL, 0 } } },
    { "chair", "chair", NULL, { 3500, 6500, 0 }, NULL, 0, { { NULL, 0 } } },
    { "credence", "credence", NULL, { 4200, 5000, 0 }, NULL, 0, { { NULL, 0 } } },
  };
  for (guint i = 0; i < G_N_ELEMENTS (survey); i++)
    church_survey (&project, &survey[i]);
  for (guint i = 0; i < G_N_ELEMENTS (things); i++)
    church_add (&project, &things[i]);
  return project;
}

static void
move (FpProject **project, const char *id, double dx, double dy)
{
  g_autoptr (GError) error = NULL;
  gboolean in_survey;
  const FpItem *old = fp_project_find (*project, 0, id, &in_survey);
  FpItemInit init;

  g_assert_nonnull (old);
  fp_item_init_from (old, &init);
  init.place.x += dx;
  init.place.y += dy;
  g_autoptr (FpItem) item = fp_item_new (&init, &error);
  g_assert_no_error (error);
  FpProject *next = in_survey ? fp_project_with_survey_item (*project, item, &error)
                              : fp_project_with_item (*project, 0, item, &error);
  g_assert_no_error (error);
  fp_project_unref (*project);
  *project = next;
}

static void
toggle_second_credence (FpProject **project, GRand *rand)
{
  g_autoptr (GError) error = NULL;
  const ChurchThing credence = {
    "credence", "second", NULL, { g_rand_double_range (rand, -3000, 3000), 2200, 0 }, NULL, 0, { { NULL, 0 } },
  };

  if (fp_project_find (*project, 0, "second", NULL) == NULL)
    church_add (project, &credence);
  else
    {
      FpProject *next = fp_project_without_item (*project, 0, "second", &error);
      g_assert_no_error (error);
      fp_project_unref (*project);
      *project = next;
    }
}

static void
edit (FpProject **project, GRand *rand)
{
  static const char *const MOVABLE[] = { "altar", "pier", "wall", "ambo", "chair", "credence", "pews-gospel" };

  switch (g_rand_int_range (rand, 0, 8))
    {
    case 0:
      church_param (project, "altar", "height", g_rand_double_range (rand, 900, 1100));
      break;
    case 1:
      church_param (project, "steps", "riser", g_rand_double_range (rand, 120, 180));
      break;
    case 2:
      toggle_second_credence (project, rand);
      break;
    case 3:
      church_param (project, "pews-gospel", "rows", g_rand_int_range (rand, 7, 11));
      break;
    default:
      move (project, MOVABLE[g_rand_int_range (rand, 0, G_N_ELEMENTS (MOVABLE))], g_rand_double_range (rand, -300, 300),
            g_rand_double_range (rand, -200, 200));
    }
}

static FpSight *
look (const FpProject *project, const FpSight *last)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene);

  return fp_sight_again (people, last, NULL);
}

/* As somebody might ask: not always all there is. */
static void
assert_same (const FpSight *again, const FpSight *anew, GRand *rand, guint *seen_partly)
{
  guint n;

  fp_people_places (fp_sight_people (anew), &n);
  for (int moment = 0; moment < FP_N_MOMENTS; moment++)
    for (int focus = 0; focus < FP_N_FOCUSES; focus++)
      if (g_rand_int_range (rand, 0, 4) > 0)
        for (guint i = 0; i < n; i++)
          {
            const double share = fp_sight_share (anew, i, (FpMoment) moment, (FpFocus) focus);
            g_assert_cmpfloat (fp_sight_share (again, i, (FpMoment) moment, (FpFocus) focus), ==, share);
            *seen_partly += share > 0 && share < 1;
          }
}

/* With @varied they differ in stature, some are children, and now and then others come. */
static void
edit_at_random (guint32 seed, gboolean varied)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (seed);
  g_autoptr (FpProject) project = small_church ();
  g_autoptr (FpSight) last = NULL;
  const ChurchThing wheelchairs = {
    "wheelchair-places", "wheelchairs", NULL, { 0, -1000, 0 }, NULL, 0, { { "count", 2 }, { NULL, 0 } },
  };
  guint seen_partly = 0;

  if (varied)
    church_add (&project, &wheelchairs);
  for (guint i = 0; i < EDITS; i++)
    {
      g_autoptr (FpSight) again = look (project, last), anew = look (project, NULL);
      assert_same (again, anew, rand, &seen_partly);
      g_clear_pointer (&last, fp_sight_unref);
      last = g_steal_pointer (&again);
      if (varied && i % 10 == 0)
        church_population (&project, seed + i, 5 + i / 10);
      edit (&project, rand);
    }
  g_assert_cmpuint (seen_partly, >, EDITS * 100);
}

static void
test_random_edits (void)
{
  for (guint32 seed = 1; seed <= 3; seed++)
    edit_at_random (seed, FALSE);
}

static void
test_varied_people (void)
{
  for (guint32 seed = 4; seed <= 5; seed++)
    edit_at_random (seed, TRUE);
}

/* One that was cancelled before it looked is no worse than none. */
static void
test_after_cancelled (void)
{
  g_autoptr (FpProject) project = small_church ();
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (GCancellable) cancel = g_cancellable_new ();
  g_autoptr (GRand) rand = g_rand_new_with_seed (4);
  g_autoptr (FpSight) last = fp_sight_new (people, cancel);
  guint seen_partly = 0;

  g_cancellable_cancel (cancel);
  g_assert_cmpfloat (fp_sight_share (last, 0, FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA), ==, -1);
  move (&project, "pier", 250, 0);
  g_autoptr (FpSight) again = look (project, last), anew = look (project, NULL);
  assert_same (again, anew, rand, &seen_partly);
  g_assert_null (fp_sight_again (people, last, cancel));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sight-again/random-edits", test_random_edits);
  g_test_add_func ("/sight-again/varied-people", test_varied_people);
  g_test_add_func ("/sight-again/after-cancelled", test_after_cancelled);
  return g_test_run ();
}
