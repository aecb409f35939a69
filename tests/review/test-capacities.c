/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Capacity as it is read: sections, sums, times, and what is said below. */
#include "footpace/capacities.h"
#include "footpace/store.h"

#include <math.h>
#include <string.h>

static FpProject *
load (const char *name)
{
  g_autofree char *path = g_build_filename (g_getenv ("FOOTPACE_SAMPLES"), name, NULL);
  g_autoptr (GError) error = NULL;
  FpProject *project = fp_store_load (path, &error);

  g_assert_no_error (error);
  return project;
}

static FpCapacities *
capacities (const FpProject *project, gboolean sight)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, fp_project_n_alternatives (project) - 1);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (FpSight) seen = sight ? fp_sight_new (people, NULL) : NULL;

  return fp_capacities_new (people, seen);
}

static const FpCapacityRow *
row_of (const FpCapacities *all, FpCapacityOf of, const char *begins)
{
  const FpCapacitySection *section = fp_capacities_section (all, of);

  for (guint i = 0; i < section->rows->len; i++)
    {
      const FpCapacityRow *row = &g_array_index (section->rows, FpCapacityRow, i);

      if (g_str_has_prefix (row->cell[FP_CAPACITY_WHAT], begins))
        return row;
    }
  return NULL;
}

/* Blocks add up to their sum, as drawn and by the rule. */
static void
test_sums (void)
{
  g_autoptr (FpProject) project = load ("parish.footpace");
  g_autoptr (FpCapacities) all = capacities (project, FALSE);
  const FpCapacitySection *places = fp_capacities_section (all, FP_CAPACITY_PLACES);
  const FpCapacityRow *sum = row_of (all, FP_CAPACITY_PLACES, "Seats in all");
  double drawn = 0, ruled = 0;

  g_assert_nonnull (sum);
  g_assert_true (sum->sum);
  for (guint i = 0; i < places->rows->len && &g_array_index (places->rows, FpCapacityRow, i) != sum; i++)
    {
      const FpCapacityRow *row = &g_array_index (places->rows, FpCapacityRow, i);

      g_assert_nonnull (row->item);
      drawn += row->found;
      ruled += row->asked > 0 ? row->asked : row->found;
    }
  g_assert_cmpfloat (drawn, ==, sum->found);
  g_assert_cmpfloat (ruled, ==, sum->asked);
  g_assert_nonnull (strstr (places->closing, "International Building Code 2015, 1004.4"));
}

/* 120 people, two ministers: 60 before each, each 4 s; a rail of so many places that nobody waits for a change of no time. */
static void
test_communion (void)
{
  g_autoptr (FpProject) project = load ("parish.footpace"), told = NULL;
  g_autoptr (FpCapacities) silent = capacities (project, FALSE), all = NULL;
  FpReckoning reckoning = fp_reckoning_usual;
  const FpCapacityRow *rail, *lines;

  if (fp_reckoning_unsaid (fp_project_reckoning (project), FP_RECKONING_EACH))
    g_assert_nonnull (row_of (silent, FP_CAPACITY_COMMUNION, "Not reckoned"));
  reckoning = (FpReckoning) { .people = 120, .ministers = 2, .lines = 3, .each = 4, .change = 0, .step = 1, .back = 0 };
  told = fp_project_with_reckoning (project, &reckoning, NULL);
  all = capacities (told, FALSE);
  rail = row_of (all, FP_CAPACITY_COMMUNION, "At the rail");
  lines = row_of (all, FP_CAPACITY_COMMUNION, "In 3 lines");
  g_assert_cmpfloat (rail->found, ==, 60 * 4);
  g_assert_cmpstr (rail->cell[FP_CAPACITY_FOUND], ==, "4 min 00 s");
  g_assert_cmpfloat (lines->found, ==, 40 * 4 + 39);
  g_assert_cmpstr (lines->unit, ==, "s");
  g_assert_nonnull (strstr (lines->cell[FP_CAPACITY_NOTE], "120 people, 4 s each; a step to the next 1 s"));
}

/* What was not said is left out, and the time is then the least that it can be. */
static void
test_left_out (void)
{
  g_autoptr (FpProject) project = load ("parish.footpace"), told = NULL;
  g_autoptr (FpCapacities) all = NULL;
  FpReckoning reckoning = fp_reckoning_usual;
  const FpCapacityRow *lines;

  reckoning.people = 30;
  reckoning.each = 4;
  told = fp_project_with_reckoning (project, &reckoning, NULL);
  all = capacities (told, FALSE);
  lines = row_of (all, FP_CAPACITY_COMMUNION, "In 1 line");
  g_assert_cmpstr (lines->cell[FP_CAPACITY_FOUND], ==, "at least 2 min 00 s");
  g_assert_nonnull (strstr (lines->cell[FP_CAPACITY_NOTE], "a step to the next was not said"));
}

static void
test_wheelchairs (void)
{
  g_autoptr (FpProject) project = load ("parish.footpace");
  g_autoptr (FpCapacities) all = capacities (project, TRUE);
  const FpCapacityRow *sum = row_of (all, FP_CAPACITY_WHEELCHAIRS, "Wheelchair places in all");

  g_assert_nonnull (sum);
  g_assert_cmpint (sum->lacking, ==, sum->found < sum->asked);
  for (guint i = 0; i < (guint) sum->found; i++)
    {
      const FpCapacityRow *row = &g_array_index (fp_capacities_section (all, FP_CAPACITY_WHEELCHAIRS)->rows, FpCapacityRow, i);

      g_assert_nonnull (strstr (row->cell[FP_CAPACITY_NOTE], "companion"));
      g_assert_nonnull (strstr (row->cell[FP_CAPACITY_NOTE], "of the raised Host"));
    }
}

static FpProject *
under (const FpProject *project, FpJurisdiction law)
{
  const FpNorms norms = { .jurisdiction = law };

  return fp_project_with_norms (project, &norms, NULL);
}

/* Each law has its own tables, and where another holds none are told. */
static void
test_laws (void)
{
  g_autoptr (FpProject) project = load ("parish.footpace"), us = under (project, FP_JURISDICTION_US);
  g_autoptr (FpProject) uk = under (project, FP_JURISDICTION_UK), other = under (project, FP_JURISDICTION_OTHER);
  g_autoptr (FpCapacities) in_us = capacities (us, FALSE), in_uk = capacities (uk, FALSE), elsewhere = capacities (other, FALSE);

  g_assert_nonnull (row_of (in_us, FP_CAPACITY_WAYS_OUT, "Width in all, US"));
  g_assert_null (row_of (in_us, FP_CAPACITY_WAYS_OUT, "Ways out, UK"));
  g_assert_nonnull (row_of (in_uk, FP_CAPACITY_WAYS_OUT, "Ways out, UK"));
  g_assert_null (row_of (in_uk, FP_CAPACITY_WAYS_OUT, "Ways out, US"));
  g_assert_null (row_of (elsewhere, FP_CAPACITY_WAYS_OUT, "Ways out, "));
  g_assert_nonnull (row_of (elsewhere, FP_CAPACITY_WAYS_OUT, "People to leave"));
  g_assert_nonnull (row_of (elsewhere, FP_CAPACITY_WAYS_OUT, "By local law"));
  g_assert_null (row_of (in_us, FP_CAPACITY_WAYS_OUT, "By local law"));
}

/* Approved Document B (2019), from memory: two ways for 61 to 600 people, however wide one is; over 1050 mm a person for each
 * 5 mm of the whole width: 1900 mm let out 380. */
static void
test_one_way_in_uk (void)
{
  g_autoptr (FpProject) project = load ("parish.footpace"), uk = under (project, FP_JURISDICTION_UK);
  g_autoptr (FpCapacities) all = capacities (uk, FALSE);
  const FpCapacityRow *ways = row_of (all, FP_CAPACITY_WAYS_OUT, "Ways out, UK");
  const FpCapacityRow *leave = row_of (all, FP_CAPACITY_WAYS_OUT, "Who can leave by it, UK");

  g_assert_true (ways->lacking);
  g_assert_cmpfloat (ways->found, ==, 1);
  g_assert_cmpfloat (leave->found, ==, 380);
  g_assert_true (isnan (leave->asked)); /* it is not held against the people, as if it were enough */
  g_assert_true (g_str_has_prefix (leave->cell[FP_CAPACITY_NOTE], "not enough, whatever their width, while ways out are lacking"));
  g_assert_nonnull (strstr (leave->cell[FP_CAPACITY_NOTE], "by a wider one a person for each 5 mm of its width"));
}

/* Every sample tells something everywhere, in lines that a terminal holds, and on paper. */
static void
test_samples (void)
{
  static const char *const samples[] = { "parish.footpace", "chapel.footpace", "cathedral.footpace", "fan.footpace" };

  for (guint i = 0; i < G_N_ELEMENTS (samples); i++)
    {
      g_autoptr (FpProject) project = load (samples[i]);
      g_autoptr (FpCapacities) all = capacities (project, FALSE);
      const FpSheetSpec spec = { .kind = FP_SHEET_PLAN, .paper = FP_PAPER_A4, .date = "2026-01-01" };
      g_autoptr (GError) error = NULL;
      g_autoptr (GPtrArray) pages = fp_capacities_sheets (all, &spec, &error);
      g_autofree char *text = fp_capacities_text (all);
      g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

      g_assert_no_error (error);
      g_assert_cmpuint (pages->len, >=, 1);
      for (guint k = 0; lines[k] != NULL; k++)
        g_assert_cmpint (g_utf8_strlen (lines[k], -1), <=, 110);
      for (guint of = 0; of < FP_N_CAPACITIES; of++)
        g_assert_cmpuint (fp_capacities_section (all, (FpCapacityOf) of)->rows->len, >, 0);
      g_assert_nonnull (strstr (text, "approves nothing"));
    }
}

/* Of a church in which nobody has a place. */
static void
test_empty (void)
{
  const FpBrief brief = { .title = "Sanctuary of Saint Vedast", .ministers = 3, .percentile = 50 };
  g_autoptr (FpProject) project = fp_project_new (&brief);
  g_autoptr (FpCapacities) all = capacities (project, TRUE);
  g_autofree char *text = fp_capacities_text (all), *csv = fp_capacities_csv (all), *json = fp_capacities_json (all);

  g_assert_nonnull (strstr (text, "Nobody has a place here"));
  g_assert_nonnull (strstr (csv, "ways-out"));
  g_assert_nonnull (strstr (json, "\"ways-out\""));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/capacities/sums", test_sums);
  g_test_add_func ("/capacities/communion", test_communion);
  g_test_add_func ("/capacities/left-out", test_left_out);
  g_test_add_func ("/capacities/wheelchairs", test_wheelchairs);
  g_test_add_func ("/capacities/laws", test_laws);
  g_test_add_func ("/capacities/one-way-in-uk", test_one_way_in_uk);
  g_test_add_func ("/capacities/samples", test_samples);
  g_test_add_func ("/capacities/empty", test_empty);
  return g_test_run ();
}
