/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How high the altar must stand for the C-value of the first row: by the formula, and in the church in which it is so. */
#include "taking.h"

#include "footpace/remedy.h"

#include <math.h>
#include <string.h>

/* Three steps of 152 on a sanctuary at 300, and rows on a level floor, the first at @y. */
static FpProject *
church_with_rows (double y, double rows, double rise)
{
  FpProject *project = taking_church (FP_BOOKS_BOTH, FP_FACING_EAST, FP_CELEBRATION_LOW);

  taking_survey (&project, "pews", "pews", 0, y, "rows", rows);
  church_param (&project, "pews", "rise", rise);
  return project;
}

static void
find (const FpProject *project, double wanted, FpFirstRow *out)
{
  g_autoptr (FpFindings) findings = taking_findings (project, FALSE);

  fp_first_row_find (findings, wanted, out);
}

static FpRowC
first_row (const FpProject *project)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (GArray) rows = fp_row_c_values (people);

  g_assert_nonnull (fp_row_c_first (rows));
  return *fp_row_c_first (rows);
}

static FpProject *
made (const FpProject *project, const FpRemedy *remedy)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  FpProject *next = fp_remedy_make (remedy, scene, &error);

  g_assert_no_error (error);
  return next;
}

/* --- the figures ------------------------------------------------------------------- */

/* P. Shepherd, "Sightlines" worksheet, University of Bath (2012). */
static void
test_table (void)
{
  g_assert_cmpfloat (fp_first_row_c (0), ==, 60);
  g_assert_cmpfloat (fp_first_row_c (1), ==, 90);
  g_assert_cmpfloat (fp_first_row_c (2), ==, 120);
}

/* C = D (N + R) / (D + T) - R (the same worksheet): with N nothing and the mensa higher by h, R is less by h, so that C is more
 * by h T / (D + T).  The rules leave risers of 4 to 7 in (International Building Code 2015, 1011.5.2). */
static void
test_by_hand (void)
{
  for (guint i = 0; i < FP_FIRST_ROW_CS; i++)
    {
      g_autoptr (FpProject) project = church_with_rows (-1000, 4, 0);
      const FpRowC row = first_row (project);
      const double wanted = fp_first_row_c (i), footpace = 300 + 3 * 152;
      const double level = footpace + (wanted - row.c) * row.distance / row.between;
      const double steps = ceil ((level - 300) / (7 * 25.4));
      FpFirstRow found;

      find (project, wanted, &found);
      g_assert_cmpint (found.how, ==, FP_FIRST_ROW_BY_STEPS);
      g_assert_cmpfloat_with_epsilon (found.c, row.c, 1e-9);
      g_assert_cmpuint (found.row, ==, row.row);
      g_assert_cmpuint (found.rows, ==, 3);
      g_assert_cmpuint (found.flight.steps, ==, (guint) steps);
      g_assert_cmpfloat (found.flight.riser, ==, ceil ((level - 300) / steps));
      g_assert_cmpfloat_with_epsilon (found.level, 300 + steps * found.flight.riser, 1e-9);
      g_assert_cmpfloat (found.level - level, <, steps); /* a millimetre for each */

      g_autoptr (FpProject) next = made (project, &found.remedy);
      g_assert_cmpfloat_with_epsilon (first_row (next).c, found.after, 1e-9);
      g_assert_cmpfloat (found.after, >=, wanted);
      g_assert_cmpfloat_with_epsilon (found.after, wanted + (found.level - level) * row.between / row.distance, 1e-6);
      assert_within (next, "step-and-fall:riser-code");

      /* One step less, however high, is not enough. */
      church_param (&next, "steps", "count", steps - 1);
      church_param (&next, "steps", "riser", 7 * 25.4);
      g_assert_cmpfloat (first_row (next).c, <, wanted);
    }
}

/* In inches the riser is a whole number of sixteenths, and still no more than is allowed. */
static void
test_inches (void)
{
  g_autoptr (FpProject) project = church_with_rows (-1000, 4, 0);
  FpFirstRow found;

  taking_units (&project, FP_UNITS_IMPERIAL);
  find (project, 90, &found);
  g_assert_cmpint (found.how, ==, FP_FIRST_ROW_BY_STEPS);
  const double sixteenths = found.flight.riser / 25.4 * 16;
  g_assert_cmpfloat_with_epsilon (sixteenths, round (sixteenths), 1e-6);
  g_assert_cmpfloat (found.flight.riser, <=, 7 * 25.4 + 1e-9);
  g_assert_cmpfloat (found.after, >=, 90);
}

static guint
count_places (const FpPeople *people, const FpRowC *row)
{
  guint n, found = 0;
  const FpPersonPlace *place = fp_people_places (people, &n);

  for (guint i = 0; i < n; i++)
    found += place[i].owner == row->owner && place[i].row == row->row;
  return found;
}

/* The rows behind gain less: who has it then is counted in the church in which it is so. */
static void
test_rows_behind (void)
{
  g_autoptr (FpProject) project = church_with_rows (-1000, 10, 0);
  FpFirstRow found;
  guint reach = 0, reached = 0, places = 0;

  find (project, 60, &found);
  g_autoptr (FpProject) next = made (project, &found.remedy);
  g_autoptr (FpScene) scene = fp_scene_new (next, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (GArray) rows = fp_row_c_values (people);
  for (guint i = 0; i < rows->len; i++)
    {
      const FpRowC *row = &g_array_index (rows, FpRowC, i);

      reach += row->c >= 60 - 1e-6;
      reached += row->c >= 60 - 1e-6 ? count_places (people, row) : 0;
      places += count_places (people, row);
    }
  g_assert_cmpuint (found.rows, ==, rows->len);
  g_assert_cmpuint (found.had, ==, 0);
  g_assert_cmpuint (found.reach, ==, reach);
  g_assert_cmpuint (found.places, ==, places);
  g_assert_cmpuint (found.reached, ==, reached);
  g_assert_cmpuint (reach, >=, 1);
  g_assert_cmpuint (reach, <, rows->len);

  g_autoptr (FpScene) now = fp_scene_new (project, 0);
  g_autofree char *words = fp_first_row_words (&found, now);
  g_autofree char *gain = g_strdup_printf ("%u of %u rows (%u of %u places) ha%s it then, none now; the other %u stay short of it",
                                           reach, rows->len, reached, places, reach == 1 ? "s" : "ve", rows->len - reach);
  g_assert_nonnull (strstr (words, gain));
}

/* --- where it cannot be ---------------------------------------------------------------- */

static void
test_too_high (void)
{
  g_autoptr (FpProject) far = church_with_rows (-19000, 3, 0);
  FpFirstRow found;

  find (far, 120, &found);
  g_assert_cmpint (found.how, ==, FP_FIRST_ROW_TOO_HIGH);
  g_assert_cmpuint (found.flight.steps, >, 15); /* as many as a footpace can have */
  g_assert_cmpfloat (found.level, >, 300 + 15 * 7 * 25.4);
  g_assert_cmpfloat (found.after, ==, found.c);
}

static FpBox
plan_of (const FpProject *project, const char *id)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);

  return fp_scene_placed (scene, NULL)[fp_scene_find (scene, id)].plan;
}

/* A wall beside the steps: where the higher steps would reach into it they are not offered, and where they do not they
 * are. */
static void
test_no_room (void)
{
  guint refused = 0, offered = 0;

  for (double beside = 150; beside <= 6000; beside += 450)
    {
      g_autoptr (FpProject) project = church_with_rows (-1000, 4, 0);
      const FpBox steps = plan_of (project, "steps");
      FpFirstRow found;

      taking_wall (&project, "side", steps.x1 + beside, steps.y0 - 2000, steps.x1 + beside, steps.y1 + 2000);
      const FpBox wall = plan_of (project, "side");
      if (wall.x0 < steps.x1)
        continue;
      find (project, 120, &found);
      g_assert_true (found.how == FP_FIRST_ROW_BY_STEPS || found.how == FP_FIRST_ROW_NO_ROOM);
      g_autoptr (FpProject) next = made (project, &found.remedy);
      const FpBox then = plan_of (next, "steps");
      g_assert_cmpint (found.how == FP_FIRST_ROW_NO_ROOM, ==, then.x1 > wall.x0 + 1);
      refused += found.how == FP_FIRST_ROW_NO_ROOM;
      offered += found.how == FP_FIRST_ROW_BY_STEPS;
    }
  g_assert_cmpuint (refused, >, 0);
  g_assert_cmpuint (offered, >, 0);
}

static void
test_has_it (void)
{
  g_autoptr (FpProject) project = church_with_rows (-1000, 3, 400);
  FpFirstRow found;

  find (project, 60, &found);
  g_assert_cmpint (found.how, ==, FP_FIRST_ROW_HAS_IT);
  g_assert_cmpfloat (found.c, >=, 60);
}

static void
test_no_steps (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_PEOPLE);
  FpFirstRow found;

  church_floor (&project, "nave", (FpBox) { -6000, -20000, 6000, 0 }, 0, 0, 0, 0);
  taking_survey (&project, "pews", "pews", 0, -2000, "rows", 3);
  find (project, 60, &found);
  g_assert_cmpint (found.how, ==, FP_FIRST_ROW_NONE); /* no altar */
  taking_add (&project, "altar", "altar", NULL, 0, 5000, NULL, 0);
  find (project, 60, &found);
  g_assert_cmpint (found.how, ==, FP_FIRST_ROW_NO_STEPS);
  church_param (&project, "pews", "rows", 1);
  find (project, 60, &found);
  g_assert_cmpint (found.how, ==, FP_FIRST_ROW_NONE); /* nobody looks over anybody */
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/first-row/table", test_table);
  g_test_add_func ("/first-row/by-hand", test_by_hand);
  g_test_add_func ("/first-row/inches", test_inches);
  g_test_add_func ("/first-row/rows-behind", test_rows_behind);
  g_test_add_func ("/first-row/too-high", test_too_high);
  g_test_add_func ("/first-row/no-room", test_no_room);
  g_test_add_func ("/first-row/has-it", test_has_it);
  g_test_add_func ("/first-row/no-steps", test_no_steps);
  return g_test_run ();
}
