/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-stonework.c - slabs lie within what is drawn, never in each other, and with their joints broken */
#include "footpace/stonework.h"

#include <math.h>

#define TRIALS 300

typedef struct { FpForm form; double param[FP_PARAM_MAX]; const FpKind *kind; } Made;

static void
begin (Made *m, const char *kind)
{
  m->kind = fp_kind_find (kind);
  fp_kind_defaults (m->kind, m->param);
  m->form = (FpForm) { .param = m->param, .core = FP_BOX_EMPTY };
}

static void
set (Made *m, const char *id, double value)
{
  m->param[fp_kind_param_index (m->kind, id)] = value;
}

static void
random_steps (Made *m, GRand *rand)
{
  begin (m, "footpace");
  set (m, "count", g_rand_int_range (rand, 1, 6));
  set (m, "riser", g_rand_double_range (rand, 110, 200));
  set (m, "tread", g_rand_double_range (rand, 280, 600));
  set (m, "front", g_rand_double_range (rand, 600, 2500));
  set (m, "behind", g_rand_double_range (rand, 100, 2000));
  set (m, "ends", g_rand_double_range (rand, 300, 2000));
  set (m, "sides", g_rand_int_range (rand, 0, 3));
}

static void
random_altar (Made *m, GRand *rand)
{
  begin (m, "altar");
  set (m, "length", g_rand_double_range (rand, 1500, 4000));
  set (m, "depth", g_rand_double_range (rand, 600, 1200));
  set (m, "support", g_rand_boolean (rand) ? 0 : 2);
  set (m, "setting", g_rand_int_range (rand, 0, 2));
}

static FpWorks
random_works (GRand *rand)
{
  FpWorks works = fp_works_usual;

  works.slab = g_rand_double_range (rand, 20, 60);
  works.longest = g_rand_double_range (rand, 500, 2500);
  works.joint = g_rand_double_range (rand, 0, 8);
  works.nosing = g_rand_boolean (rand) ? 0 : g_rand_double_range (rand, 0, 50);
  return works;
}

static gboolean
overlap (const FpBox3 *a, const FpBox3 *b)
{
  const double slack = 1e-6;

  return a->lo.x < b->hi.x - slack && b->lo.x < a->hi.x - slack && a->lo.y < b->hi.y - slack && b->lo.y < a->hi.y - slack
         && a->lo.z < b->hi.z - slack && b->lo.z < a->hi.z - slack;
}

/* Whether a box lies in one of the solids: each course is within a block of the drawn steps. */
static gboolean
is_within (const FpBox3 *box, const FpSolid *s, guint n)
{
  const double slack = 1e-6;

  for (guint i = 0; i < n; i++)
    {
      const FpBox3 room = fp_solid_box (&s[i]);

      if (box->lo.x > room.lo.x - slack && box->hi.x < room.hi.x + slack && box->lo.y > room.lo.y - slack
          && box->hi.y < room.hi.y + slack && box->lo.z > room.lo.z - slack && box->hi.z < room.hi.z + slack)
        return TRUE;
    }
  return FALSE;
}

static void
assert_lies_well (const Made *m, const FpWorks *works)
{
  g_autoptr (FpStonework) stonework = fp_stonework_new (m->kind, &m->form, works);
  g_autoptr (FpSolids) solids = fp_solids_new ();
  const GArray *slabs = stonework->slabs;
  const FpSolid *s;
  guint n;

  m->kind->solids (&m->form, solids);
  s = fp_solids_peek (solids, &n);
  g_assert_cmpuint (slabs->len, >, 0);
  for (guint i = 0; i < slabs->len; i++)
    {
      const FpSlab *slab = &g_array_index (slabs, FpSlab, i);
      const FpCourse *course = &g_array_index (stonework->courses, FpCourse, slab->course);
      const FpBox3 *box = &slab->box;

      g_assert_true (is_within (box, s, n));
      g_assert_true (course->whole || slab->length <= works->longest + 1e-6);
      g_assert_cmpfloat_with_epsilon (slab->length * slab->width * slab->thickness,
                                      (box->hi.x - box->lo.x) * (box->hi.y - box->lo.y) * (box->hi.z - box->lo.z), 1e-3);
      for (guint k = 0; k < i; k++)
        g_assert_false (overlap (box, &g_array_index (slabs, FpSlab, k).box));
    }
}

static void
test_lies_well (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20261129);

  for (guint i = 0; i < TRIALS; i++)
    {
      Made m;
      const FpWorks works = random_works (rand);

      if (i % 2 == 0)
        random_steps (&m, rand);
      else
        random_altar (&m, rand);
      m.form.param = m.param;
      assert_lies_well (&m, &works);
    }
}

/* Of a course in front, where its joints are by x. */
static GArray *
joints_of (const FpStonework *stonework, guint course, guint row)
{
  GArray *joints = g_array_new (FALSE, FALSE, sizeof (double));

  for (guint i = 0; i + 1 < stonework->slabs->len; i++)
    {
      const FpSlab *a = &g_array_index (stonework->slabs, FpSlab, i), *b = &g_array_index (stonework->slabs, FpSlab, i + 1);

      if (a->course == course && b->course == course && a->row == row && b->row == row)
        {
          const double at = (a->box.hi.x + b->box.lo.x) / 2;
          g_array_append_val (joints, at);
        }
    }
  return joints;
}

static double
least_lap (const GArray *a, const GArray *b)
{
  double least = INFINITY;

  for (guint i = 0; i < a->len; i++)
    for (guint k = 0; k < b->len; k++)
      least = MIN (least, fabs (g_array_index (a, double, i) - g_array_index (b, double, k)));
  return least;
}

/* From the lowest riser to the rows of the floor none stands over another: 150 mm aside, as the design has it. */
static void
test_joints_are_broken (void)
{
  g_autoptr (FpStonework) stonework = NULL;
  g_autoptr (GArray) beneath = NULL;
  Made m;

  begin (&m, "footpace");
  stonework = fp_stonework_new (m.kind, &m.form, &fp_works_usual);
  for (guint i = 0; i < stonework->courses->len; i++)
    {
      const FpCourse *course = &g_array_index (stonework->courses, FpCourse, i);

      for (guint row = 0; course->along.x > 0.5 && row < (course->type == FP_COURSE_FLOOR ? 3 : 1); row++)
        {
          GArray *joints = joints_of (stonework, i, row);

          if (beneath != NULL)
            g_assert_cmpfloat (least_lap (joints, beneath), >=, 150);
          g_clear_pointer (&beneath, g_array_unref);
          beneath = joints;
        }
    }
  g_assert_nonnull (beneath);
}

/* Blocks have no faces, and nothing is laid that is of no stone. */
static void
test_blocks (void)
{
  FpWorks works = fp_works_usual;
  Made m;

  begin (&m, "altar");
  works.solid = TRUE;
  g_autoptr (FpStonework) blocks = fp_stonework_new (m.kind, &m.form, &works);
  g_assert_cmpuint (blocks->slabs->len, ==, 1); /* the mensa */
  begin (&m, "credence");
  g_autoptr (FpStonework) wood = fp_stonework_new (m.kind, &m.form, &works);
  g_assert_cmpuint (wood->slabs->len, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/stonework/lies-well", test_lies_well);
  g_test_add_func ("/stonework/joints-are-broken", test_joints_are_broken);
  g_test_add_func ("/stonework/blocks", test_blocks);
  return g_test_run ();
}
