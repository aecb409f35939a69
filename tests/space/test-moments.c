/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Who is in the sanctuary at each moment, and what the people do. */
#include "church.h"
#include "footpace/people.h"

#include <math.h>

/* An altar on three steps that faces @facing, an ambo and a chair. */
static FpProject *
sanctuary_new (FpFacing facing, FpBooks books, guint celebrations)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) plain = church_new (facing);
  FpBrief brief = *fp_project_brief (plain);
  brief.books = books;
  brief.celebrations = celebrations;
  FpProject *project = fp_project_with_brief (plain, &brief, &error);
  g_assert_no_error (error);
  const ChurchThing things[] = {
    { "footpace", "steps", NULL, { 0, 0, 0 }, NULL, 0, { { "count", 3 }, { "riser", 150 }, { NULL, 0 } } },
    { "altar", "altar", "steps", { 0, 5000, 0 }, NULL, 0, { { NULL, 0 } } },
    { "ambo", "ambo", NULL, { 3000, 500, 0 }, NULL, 0, { { NULL, 0 } } },
    { "chair", "chair", NULL, { -4000, 4000, 0 }, NULL, 0, { { NULL, 0 } } },
  };
  for (guint i = 0; i < G_N_ELEMENTS (things); i++)
    church_add (&project, &things[i]);
  return project;
}

typedef struct
{
  FpPeople *people;
  FpSolids *solids;
  guint     n;           /* ministers: a head and a trunk each */
} Ministers;

static Ministers
ministers_at (const FpProject *project, FpMoment moment)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  Ministers self = { fp_people_new (scene), fp_solids_new (), 0 };

  fp_people_ministers (self.people, moment, self.solids);
  self.n = fp_solids_count (self.solids) / 2;
  return self;
}

static void
clear (Ministers *self)
{
  fp_people_unref (self->people);
  fp_solids_free (self->solids);
}

static const FpSolid *
head (const Ministers *self, guint i)
{
  const FpSolid *solid = fp_solids_get (self->solids, 2 * i);
  g_assert_cmpint (solid->part, ==, FP_PART_HEAD);
  return solid;
}

static double
foot (const Ministers *self, guint i)
{
  const FpSolid *solid = fp_solids_get (self->solids, 2 * i + 1);
  g_assert_cmpint (solid->part, ==, FP_PART_TRUNK);
  return solid->z0;
}

static const char *
owner (const Ministers *self, guint i)
{
  return fp_item_id (fp_scene_placed (fp_people_scene (self->people), NULL)[head (self, i)->owner].item);
}

static void
test_who_is_there (void)
{
  static const struct { FpMoment moment; guint n; const char *first; } CASES[] = {
    { FP_MOMENT_BEFORE, 0, NULL },          { FP_MOMENT_READINGS, 2, "ambo" },  { FP_MOMENT_GOSPEL, 2, "ambo" },
    { FP_MOMENT_OFFERTORY, 1, "altar" },    { FP_MOMENT_INCENSING, 1, "altar" }, { FP_MOMENT_ELEVATION, 1, "altar" },
    { FP_MOMENT_COLLECT, 1, "altar" },
  };
  g_autoptr (FpProject) project = sanctuary_new (FP_FACING_EAST, FP_BOOKS_OLDER, FP_CELEBRATION_LOW);

  for (guint i = 0; i < G_N_ELEMENTS (CASES); i++)
    {
      Ministers found = ministers_at (project, CASES[i].moment);
      g_assert_cmpuint (found.n, ==, CASES[i].n);
      if (found.n > 0)
        g_assert_cmpstr (owner (&found, 0), ==, CASES[i].first);
      clear (&found);
    }
}

/* "The deacon stands behind the celebrant on the step below, the subdeacon behind the deacon on the next": A. Fortescue,
 * "The Ceremonies of the Roman Rite Described" (1918), solemn Mass (from memory). */
static void
test_in_line (void)
{
  g_autoptr (FpProject) project = sanctuary_new (FP_FACING_EAST, FP_BOOKS_OLDER, FP_CELEBRATION_SOLEMN);
  Ministers line = ministers_at (project, FP_MOMENT_COLLECT);

  g_assert_cmpuint (line.n, ==, 3);
  for (guint i = 0; i < 3; i++)
    {
      g_assert_cmpfloat_with_epsilon (foot (&line, i), 450 - 150.0 * i, 1e-6);
      /* On the axis, but for how far a head leans. */
      g_assert_cmpfloat_with_epsilon (head (&line, i)->cx, 0, 1e-6);
      if (i > 0)
        g_assert_cmpfloat (head (&line, i)->cy, <, head (&line, i - 1)->cy - 200);
    }
  clear (&line);

  Ministers beside = ministers_at (project, FP_MOMENT_INCENSING);
  g_assert_cmpuint (beside.n, ==, 3);
  g_assert_cmpfloat (head (&beside, 1)->cx, >, head (&beside, 0)->cx + 500); /* the deacon at his right, the Epistle side */
  g_assert_cmpfloat (head (&beside, 2)->cx, <, head (&beside, 0)->cx - 500);
  g_assert_cmpfloat_with_epsilon (foot (&beside, 1), 450, 1e-6);
  clear (&beside);

  Ministers kneeling = ministers_at (project, FP_MOMENT_ELEVATION);
  g_assert_cmpuint (kneeling.n, ==, 3);
  for (guint i = 1; i < 3; i++)
    g_assert_cmpfloat (head (&kneeling, i)->cz, <, head (&kneeling, 0)->cz - 400);
  clear (&kneeling);
}

/* The newer books, or facing the people: the collect is said at the chair, and everybody stands. */
static void
test_collect_at_chair (void)
{
  static const struct { FpFacing facing; FpBooks books; const char *where; } CASES[] = {
    { FP_FACING_EAST, FP_BOOKS_NEWER, "chair" }, { FP_FACING_PEOPLE, FP_BOOKS_BOTH, "chair" },
    { FP_FACING_EAST, FP_BOOKS_BOTH, "altar" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (CASES); i++)
    {
      g_autoptr (FpProject) project = sanctuary_new (CASES[i].facing, CASES[i].books, FP_CELEBRATION_LOW);
      Ministers found = ministers_at (project, FP_MOMENT_COLLECT);
      g_assert_cmpuint (found.n, ==, 1);
      g_assert_cmpstr (owner (&found, 0), ==, CASES[i].where);
      clear (&found);
    }

  g_autoptr (FpProject) project = sanctuary_new (FP_FACING_PEOPLE, FP_BOOKS_NEWER, FP_CELEBRATION_SUNDAY);
  Ministers sitting = ministers_at (project, FP_MOMENT_READINGS), standing = ministers_at (project, FP_MOMENT_GOSPEL);
  g_assert_cmpstr (owner (&sitting, 1), ==, "chair");
  g_assert_cmpfloat (head (&standing, 1)->cz, >, head (&sitting, 1)->cz + 200);
  g_assert_cmpfloat (head (&standing, 1)->cy, <, head (&sitting, 1)->cy - 300); /* he has stepped before it */
  clear (&sitting);
  clear (&standing);
}

/* --- what the people do ------------------------------------------------------------ */

/* General Instruction of the Roman Missal (3rd typical edition), no. 43 (from memory): they stand at the collect and the
 * Gospel, sit for the readings before it and while the gifts are prepared, and kneel at the consecration. */
static void
test_postures (void)
{
  static const FpPosture posture[FP_N_MOMENTS] = {
    [FP_MOMENT_BEFORE] = FP_POSTURE_SITTING,    [FP_MOMENT_COLLECT] = FP_POSTURE_STANDING,
    [FP_MOMENT_READINGS] = FP_POSTURE_SITTING,  [FP_MOMENT_GOSPEL] = FP_POSTURE_STANDING,
    [FP_MOMENT_OFFERTORY] = FP_POSTURE_SITTING, [FP_MOMENT_INCENSING] = FP_POSTURE_SITTING,
    [FP_MOMENT_ELEVATION] = FP_POSTURE_KNEELING,
  };
  g_autoptr (FpProject) project = sanctuary_new (FP_FACING_EAST, FP_BOOKS_BOTH, FP_CELEBRATION_LOW);
  const ChurchThing pews = { "pews", "pews", NULL, { 0, -2000, 0 }, NULL, 0, { { "rows", 2 }, { NULL, 0 } } };
  church_survey (&project, &pews);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene);

  for (int moment = 0; moment < FP_N_MOMENTS; moment++)
    {
      FpPosture taken;
      FpMoment found;
      g_assert_cmpint (fp_moment_posture ((FpMoment) moment), ==, posture[moment]);
      g_assert_true (fp_people_looks (people, 0, (FpMoment) moment, &taken));
      g_assert_cmpint (taken, ==, posture[moment]);
      g_assert_cmpint (fp_people_posture (people, (FpMoment) moment), ==, posture[moment]);
      g_assert_true (fp_moment_find (fp_moment_id ((FpMoment) moment), &found));
      g_assert_cmpint (found, ==, moment);
      g_assert_cmpstr (fp_moment_label ((FpMoment) moment), !=, "");
      g_assert_true (g_str_has_suffix (fp_moment_tells ((FpMoment) moment), "."));
    }
  for (int focus = 0; focus < FP_N_FOCUSES; focus++)
    g_assert_true (fp_moment_shows (fp_moment_of_focus ((FpFocus) focus), (FpFocus) focus));
  g_assert_false (fp_moment_shows (FP_MOMENT_OFFERTORY, FP_FOCUS_HOST));
  g_assert_false (fp_moment_shows (FP_MOMENT_OFFERTORY, FP_FOCUS_AMBO));
  g_assert_true (fp_moment_shows (FP_MOMENT_GOSPEL, FP_FOCUS_AMBO));
  g_assert_false (fp_moment_find ("matins", &(FpMoment) { 0 }));
}

/* Where nobody can kneel or sit, all stand at the elevation. */
static void
test_standing_room (void)
{
  g_autoptr (FpProject) project = sanctuary_new (FP_FACING_EAST, FP_BOOKS_BOTH, FP_CELEBRATION_LOW);
  const FpPoint corner[] = { { -3000, -3000 }, { 3000, -3000 }, { 3000, 0 }, { -3000, 0 } };
  const ChurchThing standing = { "standing-room", "back", NULL, { 0, -5000, 0 }, corner, 4, { { NULL, 0 } } };
  church_survey (&project, &standing);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  FpPosture taken;

  g_assert_cmpint (fp_people_posture (people, FP_MOMENT_ELEVATION), ==, FP_POSTURE_STANDING);
  g_assert_true (fp_people_looks (people, 0, FP_MOMENT_ELEVATION, &taken));
  g_assert_cmpint (taken, ==, FP_POSTURE_STANDING);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/moments/who-is-there", test_who_is_there);
  g_test_add_func ("/moments/in-line", test_in_line);
  g_test_add_func ("/moments/collect-at-chair", test_collect_at_chair);
  g_test_add_func ("/moments/postures", test_postures);
  g_test_add_func ("/moments/standing-room", test_standing_room);
  return g_test_run ();
}
