/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sight against Embree 3 (the ray-tracing kernels of embree.org) on the same
 * solids: the same answer ray by ray.
 *
 * Embree counts in single precision, and frusta are given to it with 256
 * sides.  A ray that passes within GRAZE of where the answer changes may
 * answer either way; how many are excused on that ground is held down.
 */
#include "embree-scene.h"
#include "parish.h"
#include "random-church.h"
#include "sight-cases.h"

#include <math.h>

#define GRAZE 0.5        /* mm                            */
#define EXCUSED_MAX 2e-3 /* share of all rays             */

typedef struct { guint rays, blocked, excused; } Tally;

static FpVec3
aside (FpVec3 d, double angle)
{
  FpVec3 level = hypot (d.x, d.y) > 0 ? (FpVec3) { d.y, -d.x, 0 } : (FpVec3) { 1, 0, 0 };
  FpVec3 up = fp_vec3_cross (level, d);
  level = fp_vec3_scale (level, cos (angle) * GRAZE / fp_vec3_length (level));
  up = fp_vec3_scale (up, sin (angle) * GRAZE / fp_vec3_length (up));
  return fp_vec3_add (level, up);
}

/* Whether our own answer changes when both ends, or one, are moved by GRAZE. */
static gboolean
grazes (const FpRayIndex *index, FpVec3 from, FpVec3 to, guint skip)
{
  const FpVec3 d = fp_vec3_sub (to, from), along = fp_vec3_scale (d, GRAZE / fp_vec3_length (d));
  const gboolean blocked = fp_ray_index_blocked (index, from, to, skip) >= 0;

  for (guint i = 0; i < 16; i++)
    {
      const FpVec3 by = aside (d, i * G_PI / 8);
      const FpVec3 a = fp_vec3_add (from, by), b = fp_vec3_add (to, by);
      if ((fp_ray_index_blocked (index, a, b, skip) >= 0) != blocked
          || (fp_ray_index_blocked (index, from, b, skip) >= 0) != blocked
          || (fp_ray_index_blocked (index, a, to, skip) >= 0) != blocked)
        return TRUE;
    }
  return (fp_ray_index_blocked (index, from, fp_vec3_add (to, along), skip) >= 0) != blocked
         || (fp_ray_index_blocked (index, from, fp_vec3_sub (to, along), skip) >= 0) != blocked
         || (fp_ray_index_blocked (index, fp_vec3_sub (from, along), to, skip) >= 0) != blocked;
}

static void
compare (Tally *tally, const FpRayIndex *index, EmbreeScene *embree, FpVec3 from, FpVec3 to, guint skip)
{
  const gboolean ours = fp_ray_index_blocked (index, from, to, skip) >= 0;
  const gboolean theirs = embree_scene_blocked (embree, from, to, skip, G_MAXUINT);

  tally->rays++;
  tally->blocked += ours ? 1 : 0;
  if (ours == theirs)
    return;
  if (!grazes (index, from, to, skip))
    g_error ("from (%.3f %.3f %.3f) to (%.3f %.3f %.3f), passing over %u: we say %s, Embree %s", from.x, from.y, from.z,
             to.x, to.y, to.z, skip, ours ? "hidden" : "seen", theirs ? "hidden" : "seen");
  tally->excused++;
}

static void
check_tally (const Tally *tally)
{
  g_test_message ("%u rays, %u hidden, %u excused", tally->rays, tally->blocked, tally->excused);
  g_assert_cmpuint (tally->blocked, >, tally->rays / 20);
  g_assert_cmpuint (tally->blocked, <, tally->rays - tally->rays / 20);
  g_assert_cmpfloat (tally->excused, <=, EXCUSED_MAX * tally->rays);
}

/* An eye within a solid sees nothing of it by its surfaces alone: such are left out, by the boxes of the solids. */
static gboolean
inside_any (const FpSolids *solids, FpVec3 p)
{
  guint n;
  const FpSolid *s = fp_solids_peek (solids, &n);
  for (guint i = 0; i < n; i++)
    {
      FpBox3 box = fp_solid_box (&s[i]);
      if (p.x >= box.lo.x && p.x <= box.hi.x && p.y >= box.lo.y && p.y <= box.hi.y && p.z >= box.lo.z
          && p.z <= box.hi.z)
        return TRUE;
    }
  return FALSE;
}

static void
test_random_church (void)
{
  Tally tally = { 0 };
  for (guint32 seed = 1; seed <= 4; seed++)
    {
      g_autoptr (GRand) rand = g_rand_new_with_seed (seed);
      g_autoptr (FpSolids) solids = random_church_new (rand, 40 * seed);
      g_autoptr (FpRayIndex) index = fp_ray_index_new (solids);
      g_autoptr (EmbreeScene) embree = embree_scene_new (solids);
      for (guint i = 0; i < 15000; i++)
        {
          FpVec3 eye = random_church_eye (rand), focus = random_church_focus (rand);
          if (inside_any (solids, eye))
            continue;
          compare (&tally, index, embree, eye, focus, i % 2 ? G_MAXUINT : 1 + i % (40 * seed));
        }
    }
  check_tally (&tally);
}

/* Every ray of a whole church as the program asks them, and the shares that come of them. */
static void
check_church (const SightCase *sight_case)
{
  g_autoptr (FpSight) sight = fp_sight_new (sight_case->people, NULL);
  guint n_places;
  fp_people_places (sight_case->people, &n_places);
  const FpScene *scene = fp_people_scene (sight_case->people);
  Tally tally = { 0 };

  for (int moment = 0; moment < FP_N_MOMENTS; moment++)
    {
      g_autoptr (FpSolids) solids = fp_sight_obstacles (sight_case->people, (FpMoment) moment);
      g_autoptr (FpRayIndex) index = fp_ray_index_new (solids);
      g_autoptr (EmbreeScene) embree = embree_scene_new (solids);
      for (int focus = 0; focus < FP_N_FOCUSES; focus++)
        {
          FpVec3 point[FP_SIGHT_RAYS];
          /* The minister who is looked at does not hide himself: see below. */
          if (focus == FP_FOCUS_AMBO || focus == FP_FOCUS_CHAIR
              || fp_sight_points (scene, (FpFocus) focus, point) == 0)
            continue;
          for (guint place = 0; place < n_places; place += sight_case->every)
            {
              if (fp_sight_share (sight, place, (FpMoment) moment, (FpFocus) focus) < 0)
                continue;
              FpVec3 eye = fp_people_eye (sight_case->people, place, fp_moment_posture ((FpMoment) moment));
              for (guint i = 0; i < FP_SIGHT_RAYS; i++)
                compare (&tally, index, embree, eye, sight_case_end (eye, point[i]), FP_SIGHT_PERSON + place);
            }
        }
    }
  check_tally (&tally);
}

/* Shares: they may differ by the rays that graze, at most a few in all. */
static void
check_shares (const SightCase *sight_case)
{
  g_autoptr (FpSight) sight = fp_sight_new (sight_case->people, NULL);
  guint cells = 0, differing = 0;

  for (int moment = 0; moment < FP_N_MOMENTS; moment++)
    {
      g_autoptr (FpSolids) solids = fp_sight_obstacles (sight_case->people, (FpMoment) moment);
      g_autoptr (EmbreeScene) embree = embree_scene_new (solids);
      for (int focus = 0; focus < FP_N_FOCUSES; focus++)
        {
          FpVec3 point[FP_SIGHT_RAYS];
          guint n_places;
          fp_people_places (sight_case->people, &n_places);
          if (fp_sight_points (fp_people_scene (sight_case->people), (FpFocus) focus, point) == 0)
            continue;
          for (guint place = 0; place < n_places; place += sight_case->every)
            {
              double share = fp_sight_share (sight, place, (FpMoment) moment, (FpFocus) focus);
              if (share < 0)
                continue;
              FpVec3 eye = fp_people_eye (sight_case->people, place, fp_moment_posture ((FpMoment) moment));
              guint seen = 0;
              for (guint i = 0; i < FP_SIGHT_RAYS; i++)
                seen += !embree_scene_blocked (embree, eye, sight_case_end (eye, point[i]), FP_SIGHT_PERSON + place,
                                               sight_case_minister (sight_case, (FpFocus) focus));
              g_assert_cmpfloat (fabs (share * FP_SIGHT_RAYS - seen), <=, 2);
              differing += fabs (share * FP_SIGHT_RAYS - seen) > 0.5;
              cells++;
            }
        }
    }
  g_test_message ("%u shares, %u differ", cells, differing);
  g_assert_cmpuint (cells, >, 100);
  g_assert_cmpfloat (differing, <=, 0.02 * cells);
}

static void
test_built (void)
{
  g_autoptr (FpProject) project = parish_new (13);
  g_autoptr (SightCase) sight_case = sight_case_new (project);
  check_church (sight_case);
  check_shares (sight_case);
}

/* In a wheelchair beside the middle aisle. */
static FpProject *
with_wheelchairs (const FpProject *project)
{
  g_autoptr (GError) error = NULL;
  double param[FP_PARAM_MAX];
  const FpKind *kind = fp_kind_find ("wheelchair-places");

  fp_kind_defaults (kind, param);
  param[fp_kind_param_index (kind, "count")] = 4;
  g_autoptr (FpItem) item = fp_item_new (&(FpItemInit) { .id = "wheelchairs", .kind = kind, .place = { 0, -3000, 0 },
                                                         .param = param }, &error);
  g_assert_no_error (error);
  FpProject *next = fp_project_with_survey_item (project, item, &error);
  g_assert_no_error (error);
  return next;
}

/* Each of his own stature, every fifth a child, and four in wheelchairs. */
static void
test_varied (void)
{
  g_autoptr (FpProject) parish = parish_new (13), alike = with_wheelchairs (parish);
  g_autoptr (GError) error = NULL;
  FpBrief brief = *fp_project_brief (alike);

  brief.varied = TRUE;
  brief.seed = 11;
  brief.children = 5;
  g_autoptr (FpProject) project = fp_project_with_brief (alike, &brief, &error);
  g_assert_no_error (error);
  g_autoptr (SightCase) sight_case = sight_case_new (project);
  check_church (sight_case);
  check_shares (sight_case);
}

static void
test_sample (gconstpointer data)
{
  g_autoptr (SightCase) sight_case = sight_case_load (data);

  g_assert_nonnull (sight_case);
  check_church (sight_case);
  check_shares (sight_case);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/embree/random-church", test_random_church);
  g_test_add_func ("/embree/built", test_built);
  g_test_add_func ("/embree/varied", test_varied);
  g_test_add_data_func ("/embree/parish", "parish.footpace", test_sample);
  g_test_add_data_func ("/embree/cathedral", "cathedral.footpace", test_sample);
  return g_test_run ();
}
