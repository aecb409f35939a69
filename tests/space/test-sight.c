/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Who sees what, in churches small enough to reckon by hand. */
#include "church.h"
#include "footpace/sight.h"

#include <math.h>

#define OFFERTORY FP_MOMENT_OFFERTORY /* people sit, the celebrant stands at the altar */

static void
near_to (double found, double expected)
{
  g_assert_cmpfloat_with_epsilon (found, expected, 1e-9);
}

static FpSight *
sight_of (FpProject *project)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  FpSight *sight = fp_sight_new (people, NULL);
  g_assert_nonnull (sight);
  return sight;
}

static guint
n_places (const FpSight *sight)
{
  guint n;
  fp_people_places (fp_sight_people (sight), &n);
  return n;
}

static FpProject *
altar_and (FpFacing facing, double rows, double length)
{
  FpProject *project = church_new (facing);
  const ChurchThing altar = { "altar", "altar", NULL, { 0, 5000, 0 }, NULL, 0, { { NULL, 0 } } };
  const ChurchThing pews = {
    "pews", "pews", NULL, { 0, 0, 0 }, NULL, 0, { { "rows", rows }, { "length", length }, { NULL, 0 } },
  };
  church_add (&project, &altar);
  church_survey (&project, &pews);
  return project;
}

/* --- closed forms --------------------------------------------------------- */

static void
test_one_alone_sees_all (void)
{
  g_autoptr (FpProject) project = altar_and (FP_FACING_PEOPLE, 1, 460);
  g_autoptr (FpSight) sight = sight_of (project);
  g_assert_cmpuint (n_places (sight), ==, 1);
  for (int moment = 0; moment < FP_N_MOMENTS; moment++)
    {
      near_to (fp_sight_share (sight, 0, (FpMoment) moment, FP_FOCUS_MENSA), 1);
      near_to (fp_sight_share (sight, 0, (FpMoment) moment, FP_FOCUS_HOST), 1);
    }
  g_assert_true (fp_sight_has (sight, FP_FOCUS_MENSA));
  g_assert_false (fp_sight_has (sight, FP_FOCUS_AMBO));
  near_to (fp_sight_share (sight, 0, OFFERTORY, FP_FOCUS_AMBO), -1);
  near_to (fp_sight_share (sight, 1, OFFERTORY, FP_FOCUS_MENSA), -1);
  g_assert_cmpint (fp_sight_blocker (sight, 0, OFFERTORY, FP_FOCUS_MENSA, NULL), ==, -2);
}

/* A higher altar behind, against the wall, is not what is looked at when the celebrant faces the people. */
static void
test_altar_of_celebration (void)
{
  static const FpFacing facing[] = { FP_FACING_EAST, FP_FACING_PEOPLE };
  for (guint i = 0; i < G_N_ELEMENTS (facing); i++)
    {
      g_autoptr (FpProject) project = altar_and (facing[i], 2, 460);
      const ChurchThing steps = { "footpace", "steps", NULL, { 0, 0, 0 }, NULL, 0, { { NULL, 0 } } };
      const ChurchThing old = { "altar", "old", "steps", { 0, 12000, 0 }, NULL, 0, { { "setting", 1 }, { NULL, 0 } } };
      church_survey (&project, &steps);
      church_survey (&project, &old);
      g_autoptr (FpScene) scene = fp_scene_new (project, 0);
      FpVec3 points[FP_SIGHT_RAYS];
      const double front = (i == 0 ? 12000 : 5000) - 375;
      g_assert_cmpuint (fp_sight_points (scene, FP_FOCUS_MENSA, points), ==, FP_SIGHT_RAYS);
      near_to (points[0].y, front);
      /* The Host over the edge towards the people where he faces east, over the farther one where he faces them. */
      g_assert_cmpuint (fp_sight_points (scene, FP_FOCUS_HOST, points), ==, FP_SIGHT_RAYS);
      near_to (points[0].y, i == 0 ? front : front + 750);

      /* C is reckoned to the same edge: the second row's eye less the front of the mensa. */
      g_autoptr (FpPeople) people = fp_people_new (scene);
      g_autoptr (GArray) rows = fp_row_c_values (people);
      g_assert_cmpuint (rows->len, ==, 1);
      near_to (g_array_index (rows, FpRowC, 0).distance, front - fp_people_eye (people, 1, FP_POSTURE_SITTING).y);
    }
}

/* A wall across the Gospel side, its end on the axis on which the one looker sits: half of everything is hidden. */
static void
test_wall_hides_half (void)
{
  g_autoptr (FpProject) project = altar_and (FP_FACING_PEOPLE, 1, 460);
  const FpPoint run[] = { { -9000, 0 }, { 0, 0 } };
  const ChurchThing wall = { "wall", "wall", NULL, { 0, 2500, 0 }, run, 2, { { NULL, 0 } } };
  church_survey (&project, &wall);
  g_autoptr (FpSight) sight = sight_of (project);
  const FpScene *scene = fp_people_scene (fp_sight_people (sight));
  near_to (fp_sight_share (sight, 0, OFFERTORY, FP_FOCUS_MENSA), 0.5);
  near_to (fp_sight_share (sight, 0, OFFERTORY, FP_FOCUS_HOST), 0.5);
  g_assert_cmpint (fp_sight_blocker (sight, 0, OFFERTORY, FP_FOCUS_MENSA, NULL), ==, fp_scene_find (scene, "wall"));

  /* Moved on by an eighth of the mensa, it hides what lies within 5/8 of it: 10 of 16 columns of points. */
  const double eye = fp_people_eye (fp_sight_people (sight), 0, FP_POSTURE_SITTING).y;
  const FpPoint longer[] = { { -9000, 0 }, { 2400.0 / 8 * (2500 - eye) / (5000 - eye), 0 } };
  const ChurchThing wider = { "wall", "wall", NULL, { 0, 2500, 0 }, longer, 2, { { "thickness", 20 }, { NULL, 0 } } };
  church_survey (&project, &wider);
  g_autoptr (FpSight) less = sight_of (project);
  near_to (fp_sight_share (less, 0, OFFERTORY, FP_FOCUS_MENSA), 6.0 / 16);
}

/* On a level floor nobody sees the middle of the mensa over the head straight before him; its ends he sees past it. */
static void
test_head_straight_before (void)
{
  g_autoptr (FpProject) project = altar_and (FP_FACING_PEOPLE, 2, 460);
  g_autoptr (FpSight) sight = sight_of (project);
  int before = -1;
  double share = fp_sight_share (sight, 1, OFFERTORY, FP_FOCUS_MENSA);

  near_to (fp_sight_share (sight, 0, OFFERTORY, FP_FOCUS_MENSA), 1);
  g_assert_cmpfloat (share, >, 0.2);
  g_assert_cmpfloat (share, <, 0.9);
  g_assert_cmpint (fp_sight_blocker (sight, 1, OFFERTORY, FP_FOCUS_MENSA, &before), ==, -1);
  g_assert_cmpint (before, ==, 0);

  /* The head is all that hides here, and a point is hidden if the line to it meets the ellipsoid of that head. */
  const FpPeople *people = fp_sight_people (sight);
  FpVec3 eye = fp_people_eye (people, 1, FP_POSTURE_SITTING), point[FP_SIGHT_RAYS], head = { 0, 0, 0 };
  g_assert_cmpuint (fp_sight_points (fp_people_scene (people), FP_FOCUS_MENSA, point), ==, FP_SIGHT_RAYS);
  head = fp_people_eye (people, 0, FP_POSTURE_SITTING);
  head.y -= 195.0 / 2 - 20;
  guint seen = 0;
  for (guint i = 0; i < FP_SIGHT_RAYS; i++)
    {
      FpVec3 o = { (eye.x - head.x) / 75.5, (eye.y - head.y) / 97.5, (eye.z - head.z) / 111 };
      FpVec3 d = { (point[i].x - eye.x) / 75.5, (point[i].y - eye.y) / 97.5, (point[i].z - eye.z) / 111 };
      FpVec3 nearest = fp_vec3_add (o, fp_vec3_scale (d, -fp_vec3_dot (o, d) / fp_vec3_dot (d, d)));
      seen += fp_vec3_length (nearest) > 1;
    }
  near_to (share, (double) seen / FP_SIGHT_RAYS);
}

/* Every second row shifted half a seat: one looks between two heads (Burris-Meyer and Cole, "Theatres and
 * Auditoriums", 2nd ed. 1964, as reprinted: nobody directly behind another unless a row lies between). */
static void
test_stagger_helps (void)
{
  g_autoptr (FpProject) project = altar_and (FP_FACING_PEOPLE, 2, 920);
  g_autoptr (FpSight) aligned = sight_of (project);
  church_param (&project, "pews", "stagger", 1);
  g_autoptr (FpSight) staggered = sight_of (project);
  guint owner = fp_people_places (fp_sight_people (aligned), NULL)[0].owner;
  FpSightSum before = fp_sight_row (aligned, owner, 2, OFFERTORY, FP_FOCUS_HOST);
  FpSightSum after = fp_sight_row (staggered, owner, 2, OFFERTORY, FP_FOCUS_HOST);
  g_assert_cmpuint (before.places, ==, 2);
  g_assert_cmpfloat (before.mean, <, 0.5);
  near_to (after.mean, 1);
}

/* --- ministers ------------------------------------------------------------ */

static void
test_celebrant_hides (void)
{
  g_autoptr (FpProject) east = altar_and (FP_FACING_EAST, 1, 460), people = altar_and (FP_FACING_PEOPLE, 1, 460);
  g_autoptr (FpSight) past = sight_of (east), plain = sight_of (people);
  g_assert_cmpfloat (fp_sight_share (past, 0, OFFERTORY, FP_FOCUS_MENSA), <, 1);
  near_to (fp_sight_share (plain, 0, OFFERTORY, FP_FOCUS_MENSA), 1);
  /* What hides it is the altar's own minister. */
  const FpScene *scene = fp_people_scene (fp_sight_people (past));
  g_assert_cmpint (fp_sight_blocker (past, 0, OFFERTORY, FP_FOCUS_MENSA, NULL), ==, fp_scene_find (scene, "altar"));
  g_assert_true (fp_sight_blocker_is_minister (past, 0, OFFERTORY, FP_FOCUS_MENSA));
  g_assert_false (fp_sight_blocker_is_minister (plain, 0, OFFERTORY, FP_FOCUS_MENSA));
  /* The Host is raised above his head. */
  near_to (fp_sight_share (past, 0, OFFERTORY, FP_FOCUS_HOST), 1);
}

static void
test_reader_does_not_hide_himself (void)
{
  g_autoptr (FpProject) project = altar_and (FP_FACING_PEOPLE, 1, 460);
  const ChurchThing ambo = { "ambo", "ambo", NULL, { 0, 2500, 0 }, NULL, 0, { { NULL, 0 } } };
  const ChurchThing chair = { "chair", "chair", NULL, { 3000, 7000, 0 }, NULL, 0, { { NULL, 0 } } };
  church_add (&project, &ambo);
  church_add (&project, &chair);
  g_autoptr (FpSight) sight = sight_of (project);
  near_to (fp_sight_share (sight, 0, FP_MOMENT_READINGS, FP_FOCUS_AMBO), 1);
  near_to (fp_sight_share (sight, 0, FP_MOMENT_READINGS, FP_FOCUS_CHAIR), 1);
  /* But he hides what is behind him while he reads, and his desk does so always. */
  g_assert_cmpfloat (fp_sight_share (sight, 0, FP_MOMENT_READINGS, FP_FOCUS_HOST), <,
                     fp_sight_share (sight, 0, OFFERTORY, FP_FOCUS_HOST));
  g_assert_cmpfloat (fp_sight_share (sight, 0, OFFERTORY, FP_FOCUS_MENSA), <, 1);
}

/* --- who looks, and how --------------------------------------------------- */

static FpProject *
with_rail_and_gallery (void)
{
  FpProject *project = altar_and (FP_FACING_PEOPLE, 3, 2000);
  const FpPoint loft[] = { { -5000, -20000 }, { 5000, -20000 }, { 5000, -16000 }, { -5000, -16000 } };
  const ChurchThing gallery = { "gallery", "loft", NULL, { 0, 0, 0 }, loft, 4, { { NULL, 0 } } };
  const ChurchThing choir = { "pews", "choir", "loft", { 0, -16500, 0 }, NULL, 0, { { "rows", 1 }, { NULL, 0 } } };
  const ChurchThing rail = { "rail", "rail", NULL, { 0, 2000, 0 }, NULL, 0, { { NULL, 0 } } };
  church_survey (&project, &gallery);
  church_survey (&project, &choir);
  church_add (&project, &rail);
  return project;
}

static void
test_postures (void)
{
  g_autoptr (FpProject) project = with_rail_and_gallery ();
  g_autoptr (FpSight) sight = sight_of (project);
  guint n, at_rail = 0;
  const FpPersonPlace *place = fp_people_places (fp_sight_people (sight), &n);
  for (guint i = 0; i < n; i++)
    for (int moment = 0; moment < FP_N_MOMENTS; moment++)
      {
        FpPosture posture;
        const gboolean looks = fp_people_looks (fp_sight_people (sight), i, (FpMoment) moment, &posture);
        const double share = fp_sight_share (sight, i, (FpMoment) moment, FP_FOCUS_MENSA);
        g_assert_true (looks ? share >= 0 && share <= 1 : share == -1);
        g_assert_cmpint (looks, ==, !place[i].at_rail || moment == FP_MOMENT_ELEVATION);
        g_assert_cmpuint (place[i].postures & (1u << posture), !=, 0);
        at_rail += place[i].at_rail && looks ? 1 : 0;
      }
  g_assert_cmpuint (at_rail, >, 0);
}

static void
test_sums (void)
{
  g_autoptr (FpProject) project = with_rail_and_gallery ();
  g_autoptr (FpSight) sight = sight_of (project);
  const FpScene *scene = fp_people_scene (fp_sight_people (sight));
  guint pews = (guint) fp_scene_find (scene, "pews"), choir = (guint) fp_scene_find (scene, "choir");
  FpSightSum church = fp_sight_church (sight, OFFERTORY, FP_FOCUS_MENSA);
  FpSightSum block = fp_sight_block (sight, pews, OFFERTORY, FP_FOCUS_MENSA);

  g_assert_cmpuint (church.places, ==, 3 * 4);
  g_assert_cmpuint (fp_sight_block (sight, choir, OFFERTORY, FP_FOCUS_MENSA).places, ==, 8);
  g_assert_cmpuint (church.places, ==, block.places);
  g_assert_cmpuint (church.worst, ==, block.worst);
  near_to (church.mean, block.mean);

  double mean = 0;
  guint all = 0, half = 0, none = 0;
  for (guint row = 1; row <= 3; row++)
    {
      FpSightSum sum = fp_sight_row (sight, pews, row, OFFERTORY, FP_FOCUS_MENSA);
      g_assert_cmpuint (sum.places, ==, 4);
      mean += sum.mean / 3;
      all += sum.all;
      half += sum.half;
      none += sum.none;
    }
  near_to (mean, church.mean);
  g_assert_cmpuint (all, ==, church.all);
  g_assert_cmpuint (half, ==, church.half);
  g_assert_cmpuint (none, ==, church.none);
  near_to (fp_sight_row (sight, pews, 1, OFFERTORY, FP_FOCUS_MENSA).mean, 1);
  g_assert_cmpuint (fp_sight_row (sight, pews, 4, OFFERTORY, FP_FOCUS_MENSA).places, ==, 0);
  g_assert_cmpuint (fp_sight_row (sight, pews, 0, OFFERTORY, FP_FOCUS_MENSA).places, ==, 0);
  g_assert_cmpuint (fp_sight_church (sight, OFFERTORY, FP_FOCUS_AMBO).places, ==, 0);
  for (guint i = 0; i < 12; i++)
    g_assert_cmpfloat (fp_sight_share (sight, church.worst, OFFERTORY, FP_FOCUS_MENSA), <=,
                       fp_sight_share (sight, i, OFFERTORY, FP_FOCUS_MENSA));
}

static guint
count_whole (const FpSight *sight)
{
  guint whole = 0;

  for (guint i = 0; i < n_places (sight); i++)
    whole += fp_sight_share (sight, i, OFFERTORY, FP_FOCUS_MENSA) >= 0.95;
  return whole;
}

/* Least, middle and most are those of as many churches, each with its seed in the brief; and the same when asked again. */
static void
test_spread (void)
{
  g_autoptr (FpProject) project = altar_and (FP_FACING_PEOPLE, 8, 4600);
  guint whole[5], least = G_MAXUINT, most = 0, below = 0, above = 0, half_least = G_MAXUINT, half_most = 0;

  church_population (&project, 999998, 6); /* after 999999 comes 0 */
  for (guint i = 0; i < G_N_ELEMENTS (whole); i++)
    {
      g_autoptr (FpProject) other = fp_project_ref (project);
      church_population (&other, (999998 + i) % 1000000, 6);
      g_autoptr (FpSight) sight = sight_of (other);
      const guint half = fp_sight_church (sight, OFFERTORY, FP_FOCUS_MENSA).half;
      whole[i] = count_whole (sight);
      half_least = MIN (half_least, half);
      half_most = MAX (half_most, half);
      least = MIN (least, whole[i]);
      most = MAX (most, whole[i]);
    }
  g_assert_cmpuint (least, <, most);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  for (guint again = 0; again < 2; again++)
    {
      g_autoptr (FpSightSpread) spread = fp_sight_spread_new (scene, G_N_ELEMENTS (whole));
      const FpSightRange range = fp_sight_spread_range (spread, OFFERTORY, FP_FOCUS_MENSA);
      g_assert_cmpuint (range.whole.least, ==, least);
      g_assert_cmpuint (range.whole.most, ==, most);
      g_assert_cmpuint (range.half.least, ==, half_least);
      g_assert_cmpuint (range.half.most, ==, half_most);
      g_assert_true (range.half.middle >= half_least && range.half.middle <= half_most);
      g_assert_cmpuint (range.first, ==, 999998);
      g_assert_cmpuint (range.last, ==, 2);
      g_assert_cmpuint (range.places, ==, 80);
      for (guint i = 0; i < G_N_ELEMENTS (whole) && again == 0; i++)
        {
          below += whole[i] <= range.whole.middle;
          above += whole[i] >= range.whole.middle;
        }
    }
  g_assert_cmpuint (below, >=, 3);
  g_assert_cmpuint (above, >=, 3);
}

/* One in a wheelchair does not rise: behind people who stand he sees less of the mensa than whoever stands with them. */
static void
test_wheelchair_stays_seated (void)
{
  g_autoptr (FpProject) project = altar_and (FP_FACING_PEOPLE, 3, 4600);
  const ChurchThing chair = { "wheelchair-places", "chairs", NULL, { 0, -2700, 0 }, NULL, 0, { { NULL, 0 } } };
  const ChurchThing pew = { "pews", "behind", NULL, { 0, -2700, 0 }, NULL, 0, { { "rows", 1 }, { "length", 915 }, { NULL, 0 } } };
  g_autoptr (FpProject) seated = fp_project_ref (project), standing = fp_project_ref (project);
  church_add (&seated, &chair);
  church_survey (&standing, &pew);
  g_autoptr (FpSight) a = sight_of (seated), b = sight_of (standing);
  const double low = fp_sight_share (a, n_places (a) - 1, FP_MOMENT_GOSPEL, FP_FOCUS_MENSA);
  const double high = fp_sight_share (b, n_places (b) - 1, FP_MOMENT_GOSPEL, FP_FOCUS_MENSA);
  g_assert_cmpfloat (low, >=, 0);
  g_assert_cmpfloat (low, <, high);
}

static void
test_cancelled (void)
{
  g_autoptr (FpProject) project = altar_and (FP_FACING_PEOPLE, 2, 4600);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (GCancellable) cancel = g_cancellable_new ();
  g_cancellable_cancel (cancel);
  g_assert_null (fp_sight_new (people, cancel));
  g_cancellable_reset (cancel);
  g_autoptr (FpSight) sight = fp_sight_new (people, cancel);
  g_assert_nonnull (sight);
  g_assert_cmpfloat (fp_sight_share (sight, 0, OFFERTORY, FP_FOCUS_MENSA), >=, 0);
  g_cancellable_cancel (cancel);
  /* What was looked at is known; the rest is not. */
  g_assert_cmpfloat (fp_sight_share (sight, 0, OFFERTORY, FP_FOCUS_MENSA), >=, 0);
  g_assert_cmpfloat (fp_sight_share (sight, 0, OFFERTORY, FP_FOCUS_HOST), ==, -1);
  g_assert_cmpint (fp_sight_blocker (sight, 0, OFFERTORY, FP_FOCUS_HOST, NULL), ==, -2);
}

typedef struct { const FpSight *sight; double sum; int blockers; } Asker;

static gpointer
ask_all (gpointer data)
{
  Asker *self = data;
  guint n;

  fp_people_places (fp_sight_people (self->sight), &n);
  for (int focus = 0; focus < FP_N_FOCUSES; focus++)
    for (int moment = 0; moment < FP_N_MOMENTS; moment++)
      for (guint i = 0; i < n; i++)
        {
          self->sum += fp_sight_share (self->sight, i, (FpMoment) moment, (FpFocus) focus);
          self->blockers += fp_sight_blocker (self->sight, i, (FpMoment) moment, (FpFocus) focus, NULL);
        }
  return NULL;
}

/* Several ask one sight at the same time, and are told the same. */
static void
test_asked_by_several (void)
{
  g_autoptr (FpProject) project = altar_and (FP_FACING_EAST, 14, 5000);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  Asker asker[4];
  GThread *thread[4];

  for (guint run = 0; run < 20; run++)
    {
      g_autoptr (FpSight) sight = fp_sight_new (people, NULL);
      for (guint i = 0; i < 4; i++)
        {
          asker[i] = (Asker) { sight, 0, 0 };
          thread[i] = g_thread_new ("asker", ask_all, &asker[i]);
        }
      for (guint i = 0; i < 4; i++)
        {
          g_thread_join (thread[i]);
          g_assert_cmpfloat (asker[i].sum, ==, asker[0].sum);
          g_assert_cmpint (asker[i].blockers, ==, asker[0].blockers);
        }
    }
}

/* A church large enough for two threads answers as one ray at a time does. */
static void
test_ray_by_ray (void)
{
  g_autoptr (FpProject) project = altar_and (FP_FACING_EAST, 14, 5000);
  const ChurchThing pier = { "pier", "pier", NULL, { 700, 2500, 0 }, NULL, 0, { { NULL, 0 } } };
  const ChurchThing cross = { "crucifix", "cross", "altar", { 0, 0, 0 }, NULL, 0, { { NULL, 0 } } };
  church_survey (&project, &pier);
  church_add (&project, &cross);
  g_autoptr (FpSight) sight = sight_of (project);
  const FpPeople *people = fp_sight_people (sight);
  g_assert_cmpuint (n_places (sight), >, 100);

  for (int moment = 0; moment < FP_N_MOMENTS; moment++)
    {
      g_autoptr (FpSolids) solids = fp_sight_obstacles (people, (FpMoment) moment);
      g_autoptr (FpRayIndex) index = fp_ray_index_new (solids);
      for (int focus = FP_FOCUS_MENSA; focus <= FP_FOCUS_CRUCIFIX; focus++)
        {
          FpVec3 point[FP_SIGHT_RAYS];
          if (fp_sight_points (fp_people_scene (people), (FpFocus) focus, point) == 0)
            continue;
          for (guint place = 0; place < n_places (sight); place += 7)
            {
              FpVec3 eye = fp_people_eye (people, place, fp_moment_posture ((FpMoment) moment));
              guint seen = 0;
              for (guint i = 0; i < FP_SIGHT_RAYS; i++)
                {
                  FpVec3 d = fp_vec3_sub (point[i], eye);
                  FpVec3 end = fp_vec3_add (eye, fp_vec3_scale (d, 1 - 2 / fp_vec3_length (d)));
                  seen += fp_ray_index_blocked (index, eye, end, FP_SIGHT_PERSON + place) < 0;
                }
              near_to (fp_sight_share (sight, place, (FpMoment) moment, (FpFocus) focus),
                       seen / (double) FP_SIGHT_RAYS);
            }
        }
    }
}

/* The pattern lies evenly in its target: their middles are the same, and the target's edges are half a field away. */
static void
test_points (void)
{
  g_autoptr (FpProject) project = altar_and (FP_FACING_PEOPLE, 1, 460);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  const FpPlaced *altar = church_placed (scene, "altar");
  g_autoptr (GArray) targets = g_array_new (FALSE, FALSE, sizeof (FpTarget));
  fp_item_kind (altar->item)->targets (&altar->form, targets);
  const FpTarget *mensa = &g_array_index (targets, FpTarget, 0);
  g_assert_cmpint (mensa->focus, ==, FP_FOCUS_MENSA);
  g_assert_cmpfloat (fp_vec3_length (mensa->u), >, fp_vec3_length (mensa->v));

  FpVec3 point[FP_SIGHT_RAYS], sum = { 0, 0, 0 };
  FpBox3 box = FP_BOX3_EMPTY;
  g_assert_cmpuint (fp_sight_points (scene, FP_FOCUS_MENSA, point), ==, FP_SIGHT_RAYS);
  for (guint i = 0; i < FP_SIGHT_RAYS; i++)
    {
      sum = fp_vec3_add (sum, fp_vec3_scale (point[i], 1.0 / FP_SIGHT_RAYS));
      fp_box3_add_point (&box, point[i]);
    }
  FpVec3 half = fp_vec3_scale (fp_vec3_add (mensa->u, mensa->v), 0.5);
  FpVec3 middle = fp_placed_point (altar, fp_vec3_add (mensa->origin, half));
  g_assert_cmpfloat_with_epsilon (fp_vec3_length (fp_vec3_sub (sum, middle)), 0, 1e-6);
  g_assert_cmpfloat_with_epsilon (box.hi.x - box.lo.x, mensa->u.x * 15 / 16, 1e-6);
  g_assert_cmpfloat_with_epsilon (box.hi.z - box.lo.z, mensa->v.z * 3 / 4, 1e-6);
  g_assert_cmpuint (fp_sight_points (scene, FP_FOCUS_TABERNACLE, point), ==, 0);
}

/* --- a kind with two targets, as a cross of two beams might have ---------- */

static void
cross_extent (const FpForm *form, FpExtent *extent)
{
  (void) form;
  *extent = (FpExtent) { .plan = { -300, -50, 300, 50 }, .bearing = FP_BOX_EMPTY, .height = 1000 };
}

static void
cross_solids (const FpForm *form, FpSolids *out)
{
  (void) form;
  fp_solids_add_box (out, FP_PART_CROSS, -50, -50, 0, 50, 50, 1000);
  fp_solids_add_box (out, FP_PART_CROSS, -300, -50, 600, 300, 50, 700);
}

static void
cross_targets (const FpForm *form, GArray *out)
{
  (void) form;
  const FpTarget beams[] = {
    { FP_FOCUS_CRUCIFIX, FP_TARGET_PANEL, { -50, -50, 0 }, { 100, 0, 0 }, { 0, 0, 1000 } },
    { FP_FOCUS_CRUCIFIX, FP_TARGET_PANEL, { -300, -50, 600 }, { 600, 0, 0 }, { 0, 0, 100 } },
    { FP_FOCUS_CRUCIFIX, FP_TARGET_PANEL, { 299, -50, 600 }, { 1, 0, 0 }, { 0, 0, 1 } },
  };
  g_array_append_vals (out, beams, G_N_ELEMENTS (beams));
}

static const FpParam no_params[] = { { .id = NULL } };
static const FpKind two_beams = {
  .id = "two-beams", .label = "Cross", .tells = "", .params = no_params,
  .extent = cross_extent, .solids = cross_solids, .targets = cross_targets,
};

/* Points go by area, and the least of the targets has one. */
static void
test_many_targets (void)
{
  g_autoptr (FpProject) empty = altar_and (FP_FACING_PEOPLE, 1, 460);
  g_autoptr (GError) error = NULL;
  const FpItemInit init = { .id = "beams", .kind = &two_beams, .place = { 0, 4000, 0 } };
  g_autoptr (FpItem) item = fp_item_new (&init, &error);
  g_assert_no_error (error);
  g_autoptr (FpProject) project = fp_project_with_item (empty, 0, item, &error);
  g_assert_no_error (error);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  FpVec3 point[FP_SIGHT_RAYS];
  guint upright = 0, across = 0, speck = 0;

  g_assert_cmpuint (fp_sight_points (scene, FP_FOCUS_CRUCIFIX, point), ==, FP_SIGHT_RAYS);
  for (guint i = 0; i < FP_SIGHT_RAYS; i++)
    {
      near_to (point[i].y, 4000 - 50);
      if (i == FP_SIGHT_RAYS - 1)
        speck += point[i].x > 299;
      else if (upright == i && fabs (point[i].x) < 50)
        upright++;
      else
        across += fabs (point[i].x) < 300 && point[i].z > 600 && point[i].z < 700;
    }
  g_assert_cmpuint (speck, ==, 1);
  g_assert_cmpuint (upright + across, ==, FP_SIGHT_RAYS - 1);
  /* 100 x 1000 to 600 x 100. */
  g_assert_cmpuint (upright, >=, 39);
  g_assert_cmpuint (upright, <=, 40);

  g_autoptr (FpSight) sight = sight_of (project);
  near_to (fp_sight_share (sight, 0, OFFERTORY, FP_FOCUS_CRUCIFIX), 1);
}

/* --- C-value of rows ------------------------------------------------------ */

/* Straight rows on a level floor: C = -R T / (D + T) (worked out from P. Shepherd, "Sightlines", 2012), with the eye
 * that people.h tells of over the front edge of the mensa. */
static void
test_row_c_values (void)
{
  g_autoptr (FpProject) project = altar_and (FP_FACING_PEOPLE, 5, 460);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (GArray) rows = fp_row_c_values (people);
  const double front = 5000 - 375;

  g_assert_cmpuint (rows->len, ==, 4);
  for (guint i = 0; i < 4; i++)
    {
      const FpRowC *row = &g_array_index (rows, FpRowC, i);
      FpVec3 eye = fp_people_eye (people, i, FP_POSTURE_SITTING);
      g_assert_cmpuint (row->row, ==, i + 2);
      g_assert_cmpfloat_with_epsilon (row->c, -(eye.z - 990) * 900 / (front - eye.y + 900), 1e-6);
      g_assert_cmpfloat_with_epsilon (row->distance, front - eye.y + 900, 1e-6);
    }
}

/* A rise reckoned from a wanted C gives that C in a church. */
static void
test_row_rise (void)
{
  g_autoptr (FpProject) project = altar_and (FP_FACING_PEOPLE, 2, 460);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  FpVec3 eye = fp_people_eye (people, 0, FP_POSTURE_SITTING);
  double rise = fp_c_rise (5000 - 375 - eye.y, eye.z - 990, 60, 900);

  church_param (&project, "pews", "rise", rise);
  g_autoptr (FpScene) raised = fp_scene_new (project, 0);
  g_autoptr (FpPeople) raised_people = fp_people_new (raised);
  g_autoptr (GArray) rows = fp_row_c_values (raised_people);
  g_assert_cmpuint (rows->len, ==, 1);
  g_assert_cmpfloat_with_epsilon (g_array_index (rows, FpRowC, 0).c, 60, 1e-6);

  church_fate (&project, "pews", FP_FATE_REMOVED, NULL, NULL);
  g_autoptr (FpScene) bare = fp_scene_new (project, 0);
  g_autoptr (FpPeople) nobody = fp_people_new (bare);
  g_autoptr (GArray) none = fp_row_c_values (nobody);
  g_assert_cmpuint (none->len, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sight/altar-of-celebration", test_altar_of_celebration);
  g_test_add_func ("/sight/one-alone-sees-all", test_one_alone_sees_all);
  g_test_add_func ("/sight/wall-hides-half", test_wall_hides_half);
  g_test_add_func ("/sight/head-straight-before", test_head_straight_before);
  g_test_add_func ("/sight/stagger-helps", test_stagger_helps);
  g_test_add_func ("/sight/celebrant-hides", test_celebrant_hides);
  g_test_add_func ("/sight/reader-does-not-hide-himself", test_reader_does_not_hide_himself);
  g_test_add_func ("/sight/postures", test_postures);
  g_test_add_func ("/sight/sums", test_sums);
  g_test_add_func ("/sight/spread", test_spread);
  g_test_add_func ("/sight/wheelchair-stays-seated", test_wheelchair_stays_seated);
  g_test_add_func ("/sight/cancelled", test_cancelled);
  g_test_add_func ("/sight/asked-by-several", test_asked_by_several);
  g_test_add_func ("/sight/ray-by-ray", test_ray_by_ray);
  g_test_add_func ("/sight/points", test_points);
  g_test_add_func ("/sight/many-targets", test_many_targets);
  g_test_add_func ("/sight/row-c-values", test_row_c_values);
  g_test_add_func ("/sight/row-rise", test_row_rise);
  return g_test_run ();
}
