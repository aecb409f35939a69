/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-project.c - a project as a value: refusals, sharing, what an edit takes along */
#include "making.h"

#include <math.h>
#include <string.h>

static void
refused (FpProject *project, GError **error, int code, const char *says)
{
  g_assert_null (project);
  g_assert_error (*error, FP_ERROR, code);
  g_test_message ("%s", (*error)->message);
  g_assert_nonnull (strstr ((*error)->message, says));
}

static void
refuse_item (const FpProject *p, guint alternative, FpItem *item, int code, const char *says)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FpItem) owned = item;

  refused (fp_project_with_item (p, alternative, owned, &error), &error, code, says);
}

static void
refuse_survey (const FpProject *p, FpItem *item, int code, const char *says)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (FpItem) owned = item;

  refused (fp_project_with_survey_item (p, owned, &error), &error, code, says);
}

static void
refuse_fate (const FpProject *p, const char *id, FpFate fate, const FpPlace *moved, const char *on, int code,
             const char *says)
{
  g_autoptr (GError) error = NULL;

  refused (fp_project_with_fate (p, 0, id, fate, moved, on, &error), &error, code, says);
}

static gboolean
has (const FpProject *p, guint alternative, const char *id)
{
  return fp_project_find (p, alternative, id, NULL) != NULL;
}

static FpFate
fate_of (const FpProject *p, guint alternative, const char *id)
{
  return fp_alternative_fate (fp_project_alternative (p, alternative), id, NULL, NULL);
}

/* Replaces *@p; aborts the test on an error. */
static void
step (FpProject **p, FpProject *next, GError **error)
{
  g_assert_no_error (*error);
  g_assert_nonnull (next);
  fp_project_unref (*p);
  *p = next;
}

/* --- invariants --- */

static void
test_new (void)
{
  const FpBrief brief = test_brief ();
  g_autoptr (FpProject) p = fp_project_new (&brief);

  g_assert_true (fp_project_check (p, NULL));
  g_assert_cmpuint (fp_project_n_survey (p), ==, 0);
  g_assert_cmpuint (fp_project_n_alternatives (p), ==, 1);
  g_assert_cmpstr (fp_alternative_id (fp_project_alternative (p, 0)), ==, "a");
  g_assert_cmpint (fp_project_find_alternative (p, "b"), ==, -1);
  g_assert_cmpstr (fp_project_brief (p)->title, ==, brief.title);
  g_assert_true (fp_project_brief (p)->title != brief.title);
}

static void
test_ids_are_unique (void)
{
  g_autoptr (FpProject) p = test_parish ();
  g_autoptr (FpItem) in_b = test_item ("altar", "altar", NULL, 0, 0);
  g_autoptr (FpProject) both = NULL;

  refuse_item (p, 0, test_item ("old-altar", "altar", NULL, 0, 0), FP_ERROR_REFERENCE, "two things with this id");
  refuse_survey (p, test_item ("altar", "altar", NULL, 0, 0), FP_ERROR_REFERENCE, "two things with this id");
  both = fp_project_with_item (p, 1, in_b, NULL); /* alternatives may use the same id */
  g_assert_nonnull (both);
}

static void
test_references (void)
{
  g_autoptr (FpProject) p = test_parish ();
  g_autoptr (FpItem) on_old = test_item ("new-cross", "crucifix", "old-altar", 0, 0);
  g_autoptr (FpProject) fine = NULL;

  refuse_item (p, 0, test_item ("x", "crucifix", "nothing", 0, 0), FP_ERROR_REFERENCE, "“nothing”, which is not there");
  refuse_item (p, 1, test_item ("x", "crucifix", "altar", 0, 0), FP_ERROR_REFERENCE, "not there"); /* only in "a" */
  refuse_survey (p, test_item ("x", "crucifix", "altar", 0, 0), FP_ERROR_REFERENCE, "not there");
  refuse_item (p, 0, test_square ("x", "floor", 4000), FP_ERROR_INVALID, "belongs to the survey");
  fine = fp_project_with_item (p, 0, on_old, NULL);
  g_assert_nonnull (fine);
}

static void
test_what_bears_nothing (void)
{
  g_autoptr (FpProject) p = test_parish ();

  refuse_item (p, 0, test_item ("x", "candlesticks", "cross", 0, 0), FP_ERROR_REFERENCE, "nothing can stand on cross");
  refuse_item (p, 0, test_item ("x", "candlesticks", "wall", 0, 0), FP_ERROR_REFERENCE, "nothing can stand on wall");
  refuse_fate (p, "old-candles", FP_FATE_MOVED, &(FpPlace) { 0 }, "cross", FP_ERROR_REFERENCE, "nothing can stand on");
}

static void
test_circles (void)
{
  g_autoptr (FpProject) p = test_parish ();

  /* altar on footpace on altar */
  refuse_item (p, 0, test_item ("footpace", "footpace", "altar", 0, 0), FP_ERROR_REFERENCE, "circle");
  refuse_item (p, 0, test_item ("altar", "altar", "gradine", 0, 0), FP_ERROR_REFERENCE, "circle");
}

/* Through what is moved: the old altar onto the new gradine, whose altar stands on the old one. */
static void
test_circle_through_fate (void)
{
  g_autoptr (FpProject) p = test_parish ();
  g_autoptr (GError) error = NULL;
  g_autoptr (FpItem) altar = test_item ("altar", "altar", "old-altar", 0, 2000);

  step (&p, fp_project_with_item (p, 0, altar, &error), &error);
  refuse_fate (p, "old-altar", FP_FATE_MOVED, &(FpPlace) { 0 }, "gradine", FP_ERROR_REFERENCE, "circle");
}

static void
test_openings (void)
{
  g_autoptr (FpProject) p = test_parish ();

  refuse_survey (p, test_item ("d", "opening", NULL, 0, 0), FP_ERROR_REFERENCE, "must be in a wall");
  refuse_survey (p, test_item ("d", "opening", "old-altar", 0, 0), FP_ERROR_REFERENCE, "must be in a wall");
  refuse_survey (p, test_with_param (test_item ("d", "opening", "wall", 0, 0), "side", 2), FP_ERROR_RANGE, "1 sides");
  refuse_survey (p, test_with_param (test_item ("d", "opening", "wall", 0, 0), "along", 100), FP_ERROR_RANGE,
                 "reaches from");
  refuse_survey (p, test_with_param (test_item ("d", "opening", "wall", 0, 0), "along", 7900), FP_ERROR_RANGE,
                 "8000 mm long");
  /* The wall may not shrink away from its door. */
  refuse_survey (p, test_wall ("wall", 400), FP_ERROR_RANGE, "door");
  refuse_fate (p, "door", FP_FATE_MOVED, &(FpPlace) { 0 }, "wall", FP_ERROR_INVALID, "measured anew");
}

static FpItem *
window (const char *id, double along, double width, double sill, double head)
{
  FpItem *item = test_with_param (test_item (id, "opening", "wall", 0, 0), "along", along);

  item = test_with_param (item, "width", width);
  return test_with_param (test_with_param (item, "sill", sill), "head", head);
}

/* The door of the parish reaches from 750 to 2250 of 8000, and 2100 up. */
static void
test_openings_apart (void)
{
  g_autoptr (FpProject) p = test_parish ();
  g_autoptr (GError) error = NULL;
  g_autoptr (FpItem) over = window ("over", 1500, 1000, 2100, 3000), beside = window ("beside", 3000, 1500, 0, 2100);

  refuse_survey (p, window ("w", 2700, 1000, 1000, 2000), FP_ERROR_RANGE,
                 "w: it overlaps door in side 1 of wall: it reaches from 2200 mm to 3200 mm along that side and from 1000 "
                 "mm to 2000 mm up, door from 750 mm to 2250 mm and from 0 mm to 2100 mm");
  refuse_survey (p, window ("w", 1500, 400, 1000, 1500), FP_ERROR_RANGE, "overlaps"); /* within it */
  /* Touching is fine, beside it and above it. */
  step (&p, fp_project_with_survey_item (p, beside, &error), &error);
  step (&p, fp_project_with_survey_item (p, over, &error), &error);
  /* With a half-round head the door would reach 750 higher, into the window over it. */
  refuse_survey (p, test_with_param (window ("door", 1500, 1500, 0, 2100), "arch", 1), FP_ERROR_RANGE,
                 "from 0 mm to 2850 mm");
}

static void
test_fates (void)
{
  g_autoptr (FpProject) p = test_parish ();
  g_autoptr (GError) error = NULL;
  const FpPlace there = { 300, -20, 190 };
  FpPlace moved = { 0 };
  const char *on = "untouched";

  refuse_fate (p, "altar", FP_FATE_REMOVED, NULL, NULL, FP_ERROR_REFERENCE, "survey holds no such thing");
  refuse_fate (p, "old-altar", FP_FATE_MOVED, NULL, NULL, FP_ERROR_INVALID, "not said where");
  refuse_fate (p, "old-altar", FP_FATE_MOVED, &(FpPlace) { NAN, 0, 0 }, NULL, FP_ERROR_RANGE, "x is");
  refuse_fate (p, "old-altar", FP_FATE_MOVED, &there, "nothing", FP_ERROR_REFERENCE, "not there");

  g_assert_cmpint (fp_alternative_fate (fp_project_alternative (p, 0), "old-candles", &moved, &on), ==, FP_FATE_KEPT);
  g_assert_cmpstr (on, ==, "untouched");
  step (&p, fp_project_with_fate (p, 0, "old-candles", FP_FATE_MOVED, &there, "gradine", &error), &error);
  g_assert_cmpint (fp_alternative_fate (fp_project_alternative (p, 0), "old-candles", &moved, &on), ==, FP_FATE_MOVED);
  g_assert_cmpfloat (moved.x, ==, 300);
  g_assert_cmpfloat (moved.turn, ==, -170);
  g_assert_cmpstr (on, ==, "gradine");
  g_assert_cmpint (fate_of (p, 1, "old-candles"), ==, FP_FATE_KEPT); /* only in this alternative */
  step (&p, fp_project_with_fate (p, 0, "old-candles", FP_FATE_KEPT, NULL, NULL, &error), &error);
  g_assert_cmpint (fate_of (p, 0, "old-candles"), ==, FP_FATE_KEPT);
}

static void
test_limits (void)
{
  const FpBrief brief = test_brief ();
  g_autoptr (FpProjectBuilder) builder = fp_project_builder_new ();
  g_autoptr (FpProject) p = NULL;
  g_autoptr (GError) error = NULL;

  fp_project_builder_brief (builder, &brief);
  g_assert_true (fp_project_builder_alternative (builder, "a", "A", "", NULL));
  for (guint i = 0; i < FP_ITEMS_MAX; i++)
    {
      g_autofree char *id = g_strdup_printf ("thing-%u", i);
      g_autoptr (FpItem) item = test_item (id, "credence", NULL, i, 0);
      g_assert_true (fp_project_builder_item (builder, item, NULL));
    }
  {
    g_autoptr (FpItem) last = test_item ("last", "credence", NULL, 0, 0);
    g_assert_false (fp_project_builder_item (builder, last, &error));
    g_assert_error (error, FP_ERROR, FP_ERROR_LIMIT);
  }
  p = fp_project_builder_end (builder, NULL);
  g_assert_nonnull (p);
  refuse_item (p, 0, test_item ("last", "credence", NULL, 0, 0), FP_ERROR_LIMIT, "at most 2000");
}

static FpItem *
full_pews (const char *id)
{
  return test_with_param (test_with_param (test_item (id, "pews", NULL, 0, -2000), "rows", 100), "length", 40000);
}

/* 100 rows of floor (40000 / 457) = 87 seats: two such blocks are taken, a third is not. */
static void
test_people_limit (void)
{
  g_autoptr (FpProject) p = test_parish ();

  p = test_add_survey (test_add_survey (p, full_pews ("first")), full_pews ("second"));
  refuse_survey (p, full_pews ("third"), FP_ERROR_LIMIT, "third: with it there are places for 26100 people");
}

/* 40 candlesticks are 320 round bodies. */
static void
test_faces_limit (void)
{
  g_autoptr (FpProject) p = test_parish ();
  g_autoptr (GError) error = NULL;
  guint taken = 0;

  while (taken < 1000 && error == NULL)
    {
      g_autofree char *id = g_strdup_printf ("candles-%u", taken);
      g_autoptr (FpItem) item = test_with_param (test_item (id, "candlesticks", NULL, 0, taken), "count", 40);
      FpProject *next = fp_project_with_item (p, 0, item, &error);
      if (next == NULL)
        break;
      fp_project_unref (p);
      p = next;
      taken++;
    }
  g_assert_error (error, FP_ERROR, FP_ERROR_LIMIT);
  g_assert_nonnull (strstr (error->message, "faces to draw, at most 100000 are taken"));
  g_assert_cmpuint (taken, >, 20);
  g_assert_cmpuint (taken, <, 60);
}

static void
test_alternatives_limit (void)
{
  g_autoptr (FpProject) p = test_parish ();
  g_autoptr (GError) error = NULL;

  for (guint i = 2; i < FP_ALTERNATIVES_MAX; i++)
    {
      g_autofree char *id = g_strdup_printf ("x%u", i);
      step (&p, fp_project_with_new_alternative (p, 0, id, "More", &error), &error);
    }
  refused (fp_project_with_new_alternative (p, 0, "more", "Too many", &error), &error, FP_ERROR_LIMIT, "at most 40");
}

static void
test_alternatives (void)
{
  g_autoptr (FpProject) p = test_parish ();
  g_autoptr (GError) error = NULL, twice = NULL, bad = NULL, none = NULL, name = NULL, last = NULL;

  refused (fp_project_with_new_alternative (p, 0, "a", "Twice", &twice), &twice, FP_ERROR_REFERENCE,
           "two alternatives");
  refused (fp_project_with_new_alternative (p, 0, "not ok", "Bad", &bad), &bad, FP_ERROR_INVALID, "is not an id");
  refused (fp_project_with_new_alternative (p, 7, "c", "Bad", &none), &none, FP_ERROR_REFERENCE, "no alternative");
  refused (fp_project_with_alternative_text (p, 0, "a\001", NULL, &name), &name, FP_ERROR_INVALID, "control character");
  /* A note may have lines, however they are parted. */
  step (&p, fp_project_with_alternative_text (p, 0, NULL, "one\342\200\250two", &error), &error);

  step (&p, fp_project_with_new_alternative (p, 0, "c", "Copy", &error), &error);
  g_assert_cmpint (fp_project_find_alternative (p, "c"), ==, 2);
  g_assert_true (has (p, 2, "gradine"));
  /* Copied by sharing. */
  g_assert_true (fp_alternative_item (fp_project_alternative (p, 0), 0)
                 == fp_alternative_item (fp_project_alternative (p, 2), 0));
  step (&p, fp_project_with_alternative_text (p, 2, NULL, "Cheaper", &error), &error);
  g_assert_cmpstr (fp_alternative_name (fp_project_alternative (p, 2)), ==, "Copy");
  g_assert_cmpstr (fp_alternative_note (fp_project_alternative (p, 2)), ==, "Cheaper");
  step (&p, fp_project_with_alternative_text (p, 2, "Third", NULL, &error), &error);
  g_assert_cmpstr (fp_alternative_name (fp_project_alternative (p, 2)), ==, "Third");
  g_assert_cmpstr (fp_alternative_note (fp_project_alternative (p, 2)), ==, "Cheaper");
  step (&p, fp_project_without_alternative (p, 0, &error), &error);
  g_assert_cmpint (fp_project_find_alternative (p, "a"), ==, -1);
  g_assert_cmpint (fp_project_find_alternative (p, "c"), ==, 1);
  step (&p, fp_project_without_alternative (p, 1, &error), &error);
  refused (fp_project_without_alternative (p, 0, &last), &last, FP_ERROR_INVALID, "at least one");
}

static void
test_facing (void)
{
  static const FpFacing east = FP_FACING_EAST, people = FP_FACING_PEOPLE, nowhere = (FpFacing) 7;
  g_autoptr (FpProject) p = test_parish (), before = NULL;
  g_autoptr (GError) error = NULL, none = NULL, bad = NULL;
  FpBrief brief = *fp_project_brief (p);
  FpFacing own = people;

  brief.facing = FP_FACING_EAST;
  step (&p, fp_project_with_brief (p, &brief, &error), &error);
  g_assert_false (fp_alternative_own_facing (fp_project_alternative (p, 0), &own));
  g_assert_cmpint (own, ==, FP_FACING_PEOPLE); /* untouched */
  refused (fp_project_with_alternative_facing (p, 7, &east, &none), &none, FP_ERROR_REFERENCE, "no alternative");
  refused (fp_project_with_alternative_facing (p, 0, &nowhere, &bad), &bad, FP_ERROR_RANGE, "facing");

  before = fp_project_ref (p);
  step (&p, fp_project_with_alternative_facing (p, 1, &people, &error), &error);
  g_assert_false (fp_project_equal (p, before));
  g_assert_cmpint (fp_project_facing (p, 0), ==, FP_FACING_EAST);
  g_assert_cmpint (fp_project_facing (p, 1), ==, FP_FACING_PEOPLE);
  g_assert_cmpint (fp_project_facing (before, 1), ==, FP_FACING_EAST);
  /* A copy has it too, and another name changes nothing. */
  step (&p, fp_project_with_new_alternative (p, 1, "c", "Copy", &error), &error);
  step (&p, fp_project_with_alternative_text (p, 2, "Third", NULL, &error), &error);
  g_assert_cmpint (fp_project_facing (p, 2), ==, FP_FACING_PEOPLE);
  /* What has none of its own follows the brief. */
  brief = *fp_project_brief (p);
  brief.facing = FP_FACING_PEOPLE;
  step (&p, fp_project_with_brief (p, &brief, &error), &error);
  g_assert_cmpint (fp_project_facing (p, 0), ==, FP_FACING_PEOPLE);
  step (&p, fp_project_with_alternative_facing (p, 1, &east, &error), &error);
  g_assert_cmpint (fp_project_facing (p, 1), ==, FP_FACING_EAST);
  step (&p, fp_project_with_alternative_facing (p, 1, NULL, &error), &error);
  g_assert_cmpint (fp_project_facing (p, 1), ==, FP_FACING_PEOPLE);
}

static void
test_briefs (void)
{
  g_autoptr (FpProject) p = test_parish ();
  g_autoptr (GError) error = NULL;
  FpBrief bad[15];

  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    bad[i] = test_brief ();
  bad[0].title = "a\nb";
  bad[1].ministers = 0;
  bad[2].ministers = 61;
  bad[3].percentile = 51;
  bad[4].north = NAN;
  bad[5].celebrations = 1u << FP_N_CELEBRATIONS;
  bad[6].books = (FpBooks) 3;
  bad[7].seats = 100001;
  bad[8].note = "\xff";
  bad[9].site = (FpSite) { TRUE, 91, 0, "UTC" };
  bad[10].site = (FpSite) { TRUE, 52, 0, NULL };
  bad[11].n_masses = 1; /* on no day */
  bad[12].n_masses = FP_MASS_TIMES_MAX + 1;
  bad[13].seed = 1000000;
  bad[14].children = 1001;
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr (GError) refusal = NULL;
      g_assert_null (fp_project_with_brief (p, &bad[i], &refusal));
      g_assert_nonnull (refusal);
      g_assert_true (g_str_has_prefix (refusal->message, "brief: "));
    }
  for (guint i = 0; i < 3; i++)
    {
      FpBrief other = test_brief ();
      g_autoptr (FpProject) next = NULL;
      other.varied = i == 0;
      other.seed = i == 1 ? 999999 : 0;
      other.children = i == 2 ? 1000 : 0;
      next = fp_project_with_brief (p, &other, &error);
      g_assert_no_error (error);
      g_assert_false (fp_project_equal (p, next));
    }
  bad[0] = test_brief ();
  bad[0].client = NULL; /* nothing said */
  bad[0].north = 270;
  step (&p, fp_project_with_brief (p, &bad[0], &error), &error);
  g_assert_cmpstr (fp_project_brief (p)->client, ==, "");
  g_assert_cmpfloat (fp_project_brief (p)->north, ==, -90);
}

/* They are the project's own, and one other than the rest makes another project. */
static void
test_sun_of_brief (void)
{
  g_autoptr (FpProject) p = test_parish (), was = NULL;
  g_autoptr (FpProject) first = fp_project_ref (p); /* of which the texts of the brief are borrowed */
  g_autoptr (GError) error = NULL;
  g_autofree char *zone = g_strdup ("+01:00");
  FpBrief brief = *fp_project_brief (p);

  g_assert_false (brief.site.known);
  brief.site = (FpSite) { TRUE, 52.25, -0.75, zone };
  brief.mass[0] = (FpMassTime) { .weekday = 7, .minute = 570 };
  brief.n_masses = 1;
  step (&p, fp_project_with_brief (p, &brief, &error), &error);
  g_assert_cmpstr (fp_project_brief (p)->site.zone, ==, zone);
  g_assert_true (fp_project_brief (p)->site.zone != zone);
  was = fp_project_ref (p);
  brief.mass[0].minute = 571;
  step (&p, fp_project_with_brief (p, &brief, &error), &error);
  g_assert_false (fp_project_equal (was, p));
  brief.mass[0].minute = 570;
  brief.site.longitude = 0.75;
  step (&p, fp_project_with_brief (p, &brief, &error), &error);
  g_assert_false (fp_project_equal (was, p));
  brief.site.longitude = -0.75;
  step (&p, fp_project_with_brief (p, &brief, &error), &error);
  g_assert_true (fp_project_equal (was, p));
  brief.site.known = FALSE;
  step (&p, fp_project_with_brief (p, &brief, &error), &error);
  g_assert_null (fp_project_brief (p)->site.zone);
}

static void
test_celebrations (void)
{
  for (guint i = 0; i < FP_N_CELEBRATIONS; i++)
    for (guint k = 0; k < i; k++)
      {
        g_assert_cmpstr (fp_celebration_id ((FpCelebration) (1u << i)), !=,
                         fp_celebration_id ((FpCelebration) (1u << k)));
        g_assert_cmpstr (fp_celebration_label ((FpCelebration) (1u << i)), !=,
                         fp_celebration_label ((FpCelebration) (1u << k)));
      }
  g_assert_cmpstr (fp_celebration_id (FP_CELEBRATION_LOW), ==, "low");
  g_assert_cmpstr (fp_celebration_label (FP_CELEBRATION_LOW), ==, "low Mass");
}

/* --- a value --- */

static void
test_nothing_changes (void)
{
  g_autoptr (FpProject) p = test_parish (), twin = test_parish ();
  g_autoptr (FpProject) next = NULL;
  g_autoptr (FpItem) item = test_item ("altar", "altar", "footpace", 0, 2500);

  g_assert_true (fp_project_equal (p, twin));
  next = fp_project_with_item (p, 0, item, NULL);
  g_assert_true (fp_project_equal (p, twin)); /* still */
  g_assert_false (fp_project_equal (p, next));
  g_assert_cmpfloat (fp_item_place (fp_project_find (p, 0, "altar", NULL)).y, ==, 2000);
  g_assert_cmpfloat (fp_item_place (fp_project_find (next, 0, "altar", NULL)).y, ==, 2500);
}

static void
test_sharing (void)
{
  g_autoptr (FpProject) p = test_parish ();
  g_autoptr (FpItem) item = test_item ("altar", "altar", "footpace", 0, 2500);
  g_autoptr (FpProject) next = fp_project_with_item (p, 0, item, NULL);
  gboolean in_survey = FALSE;

  /* All but the one is the same, not a copy. */
  for (guint i = 0; i < fp_project_n_survey (p); i++)
    g_assert_true (fp_project_survey (p, i) == fp_project_survey (next, i));
  g_assert_true (fp_project_brief (p) == fp_project_brief (next));
  g_assert_true (fp_project_alternative (p, 1) == fp_project_alternative (next, 1));
  g_assert_true (fp_project_find (p, 0, "gradine", NULL) == fp_project_find (next, 0, "gradine", NULL));
  g_assert_true (fp_project_find (next, 0, "altar", NULL) == item);
  /* The order stays. */
  g_assert_cmpstr (fp_item_id (fp_alternative_item (fp_project_alternative (next, 0), 1)), ==, "altar");
  g_assert_nonnull (fp_project_find (p, 0, "old-altar", &in_survey));
  g_assert_true (in_survey);
}

/* The first outlives what was made from it, and the other way round. */
static void
test_lifetimes (void)
{
  FpProject *p = test_parish ();
  FpItem *item = test_item ("altar", "altar", "footpace", 0, 2500);
  FpProject *next = fp_project_with_item (p, 0, item, NULL);

  fp_item_unref (item);
  fp_project_unref (p);
  g_assert_cmpstr (fp_item_id (fp_project_find (next, 0, "gradine", NULL)), ==, "gradine");
  g_assert_true (fp_project_check (next, NULL));
  fp_project_unref (next);
}

static gpointer
count_up_and_down (gpointer data)
{
  FpProject *p = data;

  for (guint i = 0; i < 20000; i++)
    {
      g_autoptr (FpProject) mine = fp_project_ref (p);
      g_autoptr (FpItem) item = fp_item_ref (fp_project_survey (mine, i % fp_project_n_survey (mine)));
      g_assert_nonnull (fp_item_id (item));
    }
  return NULL;
}

static void
test_any_thread (void)
{
  g_autoptr (FpProject) p = test_parish ();
  GThread *thread[4];

  for (guint i = 0; i < G_N_ELEMENTS (thread); i++)
    thread[i] = g_thread_new ("reader", count_up_and_down, p);
  for (guint i = 0; i < G_N_ELEMENTS (thread); i++)
    g_thread_join (thread[i]);
  g_assert_true (fp_project_check (p, NULL));
}

/* --- taking away --- */

static void
test_without_item (void)
{
  g_autoptr (FpProject) p = test_parish ();
  g_autoptr (GError) error = NULL, none = NULL;

  refused (fp_project_without_item (p, 0, "nothing", &none), &none, FP_ERROR_REFERENCE, "no such thing");
  step (&p, fp_project_with_fate (p, 0, "old-candles", FP_FATE_MOVED, &(FpPlace) { 0 }, "gradine", &error), &error);
  step (&p, fp_project_without_item (p, 0, "footpace", &error), &error);
  /* All that stood on it, at any remove, is gone; what was brought there from the survey is removed. */
  g_assert_cmpuint (fp_alternative_n_items (fp_project_alternative (p, 0)), ==, 0);
  g_assert_cmpint (fate_of (p, 0, "old-candles"), ==, FP_FATE_REMOVED);
  g_assert_cmpint (fate_of (p, 0, "old-altar"), ==, FP_FATE_KEPT);
  g_assert_cmpint (fate_of (p, 1, "old-candles"), ==, FP_FATE_KEPT);
}

static void
test_without_survey_item (void)
{
  g_autoptr (FpProject) p = test_parish ();
  g_autoptr (GError) error = NULL;
  g_autoptr (FpItem) on_old = test_item ("vase", "candlesticks", "old-altar", 0, 0);

  step (&p, fp_project_with_item (p, 1, on_old, &error), &error);
  step (&p, fp_project_with_fate (p, 0, "old-cross", FP_FATE_REMOVED, NULL, NULL, &error), &error);
  step (&p, fp_project_without_item (p, 0, "old-altar", &error), &error);
  g_assert_false (has (p, 0, "old-altar"));
  g_assert_false (has (p, 0, "old-candles"));
  g_assert_false (has (p, 0, "old-cross"));
  g_assert_cmpint (fate_of (p, 0, "old-cross"), ==, FP_FATE_KEPT); /* forgotten */
  g_assert_false (has (p, 1, "vase"));
  g_assert_true (has (p, 0, "gradine"));
  g_assert_true (has (p, 0, "wall"));
  /* An opening goes with its wall. */
  step (&p, fp_project_without_item (p, 0, "wall", &error), &error);
  g_assert_false (has (p, 0, "door"));
}

static void
test_free_id (void)
{
  g_autoptr (FpProject) p = test_parish ();
  g_autofree char *a = fp_project_free_id (p, "credence"), *b = fp_project_free_id (p, "altar");
  g_autofree char *c = fp_project_free_id (p, "b"), *stem = g_strnfill (64, 'x'), *d = NULL;
  g_autoptr (FpItem) long_one = test_item (stem, "credence", NULL, 0, 0);
  g_autoptr (FpProject) next = fp_project_with_item (p, 0, long_one, NULL);

  g_assert_cmpstr (a, ==, "credence");
  g_assert_cmpstr (b, ==, "altar-2");
  g_assert_cmpstr (c, ==, "b-2"); /* an alternative's */
  d = fp_project_free_id (next, stem);
  g_assert_cmpuint (strlen (d), <=, 64);
  g_assert_null (fp_project_find (next, 0, d, NULL));
}

/* --- the builder --- */

static void
build_refused (const char *says, const FpBrief *brief, gboolean with_alternative, FpItem *survey, FpItem *item,
               const char *fate)
{
  g_autoptr (FpProjectBuilder) builder = fp_project_builder_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) p = NULL;
  gboolean going = TRUE;

  if (brief != NULL)
    fp_project_builder_brief (builder, brief);
  if (with_alternative)
    going = fp_project_builder_alternative (builder, "a", NULL, NULL, &error);
  if (going && survey != NULL)
    going = fp_project_builder_survey (builder, survey, &error);
  if (going && item != NULL)
    going = fp_project_builder_item (builder, item, &error);
  if (going && fate != NULL)
    going = fp_project_builder_fate (builder, fate, FP_FATE_REMOVED, NULL, NULL, &error)
            && fp_project_builder_fate (builder, fate, FP_FATE_REMOVED, NULL, NULL, &error);
  if (going)
    p = fp_project_builder_end (builder, &error);
  g_assert_null (p);
  g_assert_nonnull (error);
  g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, says));
  g_clear_pointer (&survey, fp_item_unref);
  g_clear_pointer (&item, fp_item_unref);
}

static void
test_builder_refuses (void)
{
  const FpBrief brief = test_brief ();
  FpBrief bad = test_brief ();

  bad.percentile = 3;
  build_refused ("brief is missing", NULL, TRUE, NULL, NULL, NULL);
  build_refused ("percentile", &bad, TRUE, NULL, NULL, NULL);
  build_refused ("at least one alternative", &brief, FALSE, NULL, NULL, NULL);
  build_refused ("no alternative to which", &brief, FALSE, NULL, test_item ("x", "altar", NULL, 0, 0), NULL);
  build_refused ("no alternative to which", &brief, FALSE, NULL, NULL, "x");
  build_refused ("not there", &brief, TRUE, NULL, test_item ("x", "crucifix", "y", 0, 0), NULL);
  build_refused ("two things", &brief, TRUE, test_item ("x", "altar", NULL, 0, 0),
                 test_item ("x", "altar", NULL, 0, 0), NULL);
  build_refused ("twice", &brief, TRUE, test_item ("x", "altar", NULL, 0, 0), NULL, "x");
  build_refused ("must be in a wall", &brief, TRUE, test_item ("x", "opening", NULL, 0, 0), NULL, NULL);
}

static void
build_again (FpProjectBuilder *builder, const FpProject *p)
{
  fp_project_builder_brief (builder, fp_project_brief (p));
  for (guint a = 0; a < fp_project_n_alternatives (p); a++)
    {
      const FpAlternative *alternative = fp_project_alternative (p, a);
      g_assert_true (fp_project_builder_alternative (builder, fp_alternative_id (alternative),
                                                     fp_alternative_name (alternative),
                                                     fp_alternative_note (alternative), NULL));
      /* In any order: what stands on something before that something. */
      for (guint i = fp_alternative_n_items (alternative); i-- > 0;)
        g_assert_true (fp_project_builder_item (builder, (FpItem *) fp_alternative_item (alternative, i), NULL));
    }
  for (guint i = 0; i < fp_project_n_survey (p); i++)
    g_assert_true (fp_project_builder_survey (builder, (FpItem *) fp_project_survey (p, i), NULL));
}

static void
test_builder (void)
{
  g_autoptr (FpProject) p = test_parish (), again = NULL;
  g_autoptr (FpProjectBuilder) builder = fp_project_builder_new ();
  g_autoptr (GError) error = NULL;

  build_again (builder, p);
  again = fp_project_builder_end (builder, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (fp_project_n_survey (again), ==, fp_project_n_survey (p));
  g_assert_true (fp_project_find (again, 0, "cross", NULL) == fp_project_find (p, 0, "cross", NULL));
  g_assert_true (fp_project_check (again, NULL));
}

/* --- random edits keep the invariants --- */

static FpItem *
random_item (void)
{
  static const char *const kinds[] = { "altar", "footpace", "gradine", "crucifix", "candlesticks", "credence",
                                       "tabernacle",
                                       "rail", "pews", "opening" };
  static const char *const ids[] = { "p", "q", "r", "s", "t", "u", "v" };
  const char *on = g_test_rand_int_range (0, 3) == 0 ? NULL : ids[g_test_rand_int_range (0, G_N_ELEMENTS (ids))];
  const FpItemInit init = { .id = ids[g_test_rand_int_range (0, G_N_ELEMENTS (ids))],
                            .kind = fp_kind_find (kinds[g_test_rand_int_range (0, G_N_ELEMENTS (kinds))]), .on = on,
                            .place = { g_test_rand_double_range (-9e3, 9e3), 0,
                                       g_test_rand_double_range (-720, 720) } };

  return fp_item_new (&init, NULL);
}

static FpProject *
random_edit (const FpProject *p)
{
  static const char *const ids[] = { "p", "q", "r", "s", "t", "u", "v", "old-altar", "old-candles", "old-cross",
                                     "wall" };
  const guint a = (guint) g_test_rand_int_range (0, (gint32) fp_project_n_alternatives (p));
  const char *id = ids[g_test_rand_int_range (0, G_N_ELEMENTS (ids))];
  const char *on = g_test_rand_bit () ? NULL : ids[g_test_rand_int_range (0, G_N_ELEMENTS (ids))];
  const FpPlace place = { g_test_rand_double_range (-9e3, 9e3), 5, 0 };
  g_autoptr (FpItem) item = random_item ();
  g_autofree char *free_id = fp_project_free_id (p, "n");

  switch (g_test_rand_int_range (0, 9))
    {
    case 0: case 1: case 2: return item != NULL ? fp_project_with_item (p, a, item, NULL) : NULL;
    case 3: return item != NULL ? fp_project_with_survey_item (p, item, NULL) : NULL;
    case 4: return fp_project_without_item (p, a, id, NULL);
    case 5: case 6: return fp_project_with_fate (p, a, id, (FpFate) g_test_rand_int_range (0, 3), &place, on, NULL);
    case 7: return fp_project_with_new_alternative (p, (int) a, free_id, "N", NULL);
    default: return fp_project_without_alternative (p, a, NULL);
    }
}

static void
test_random_edits (void)
{
  g_autoptr (FpProject) start = test_parish (), twin = test_parish ();
  guint taken = 0;

  for (guint run = 0; run < 40; run++)
    {
      g_autoptr (FpProject) p = fp_project_ref (start);
      for (guint i = 0; i < 120; i++)
        {
          g_autoptr (GError) error = NULL;
          FpProject *next = random_edit (p);
          if (next == NULL)
            continue;
          fp_project_check (next, &error);
          g_assert_no_error (error);
          fp_project_unref (p);
          p = next;
          taken++;
        }
    }
  g_assert_true (fp_project_equal (start, twin));
  g_assert_cmpuint (taken, >, 500); /* or the test tests nothing */
}

/* --- the page ---------------------------------------------------------------- */

static void
test_page (void)
{
  const FpBrief brief = test_brief ();
  g_autoptr (FpProject) p = fp_project_new (&brief);
  g_autoptr (GError) error = NULL;
  const FpPageSetup good = { .sheet = FP_SHEET_COMPARE, .scale = 75, .hidden = FP_HIDDEN_ALL, .along = { TRUE, -1e6, TRUE } };
  FpPageSetup bad[6];
  g_autoptr (FpProject) with = fp_project_with_page (p, &good, &error);

  g_assert_no_error (error);
  g_assert_null (fp_project_page (p));
  g_assert_true (fp_page_setup_equal (fp_project_page (with), &good));
  g_assert_false (fp_project_equal (p, with));
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    bad[i] = good;
  bad[0].scale = NAN;
  bad[1].scale = 33.5;
  bad[2].scale = FP_SHEET_SCALE_MOST + 1;
  bad[3].along.at = INFINITY;
  bad[4].hidden = FP_HIDDEN_ALL + 1;
  bad[5].sheet = FP_N_ALL_SHEETS;
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr (GError) why = NULL;
      refused (fp_project_with_page (p, &bad[i], &why), &why, FP_ERROR_RANGE, "page:");
    }
}

/* Whatever is left out is told in words, and read again from them. */
static void
test_hidden (void)
{
  g_autofree char *wrong = NULL;
  FpHidden again;
  guint n;
  const FpKind *const *kind = fp_kinds (&n);

  for (FpHidden hidden = 0; hidden <= FP_HIDDEN_ALL; hidden++)
    {
      g_autofree char *text = fp_hidden_text (hidden);
      g_assert_true (fp_hidden_parse (text, &again, NULL));
      g_assert_cmpuint (again, ==, hidden);
    }
  g_assert_true (fp_hidden_parse (" Names,seats ,", &again, NULL));
  g_assert_cmpuint (again, ==, 1u << FP_SHOW_NAMES | 1u << FP_SHOW_SEATS);
  /* The pews are left out by themselves: whoever looks at the sanctuary wants to see who sits in it. */
  g_assert_false (fp_shows_thing (1u << FP_SHOW_SEATS, fp_kind_find ("pews"), FP_STANDING_PROPOSED));
  g_assert_true (fp_shows_thing (1u << FP_SHOW_SEATS, fp_kind_find ("sedilia"), FP_STANDING_PROPOSED));
  g_assert_true (fp_shows_thing (1u << FP_SHOW_SEATS, fp_kind_find ("chair"), FP_STANDING_PROPOSED));
  g_assert_false (fp_shows_thing (1u << FP_SHOW_SEDILIA, fp_kind_find ("chair"), FP_STANDING_PROPOSED));
  g_assert_false (fp_hidden_parse ("names;seats", &again, &wrong));
  g_assert_cmpstr (wrong, ==, "names;seats");
  /* Each kind has a sort, and is left out with it or with its standing, and with nothing else. */
  for (guint i = 0; i < n; i++)
    for (guint show = 0; show < FP_N_SHOWS; show++)
      g_assert_cmpint (fp_shows_thing (1u << show, kind[i], FP_STANDING_PROPOSED), ==,
                       show != (guint) fp_kind_sort (kind[i]) && show != FP_SHOW_PROPOSED);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/project/new", test_new);
  g_test_add_func ("/project/ids-are-unique", test_ids_are_unique);
  g_test_add_func ("/project/references", test_references);
  g_test_add_func ("/project/what-bears-nothing", test_what_bears_nothing);
  g_test_add_func ("/project/circles", test_circles);
  g_test_add_func ("/project/circle-through-fate", test_circle_through_fate);
  g_test_add_func ("/project/openings", test_openings);
  g_test_add_func ("/project/openings-apart", test_openings_apart);
  g_test_add_func ("/project/fates", test_fates);
  g_test_add_func ("/project/limits", test_limits);
  g_test_add_func ("/project/people-limit", test_people_limit);
  g_test_add_func ("/project/faces-limit", test_faces_limit);
  g_test_add_func ("/project/alternatives-limit", test_alternatives_limit);
  g_test_add_func ("/project/alternatives", test_alternatives);
  g_test_add_func ("/project/facing", test_facing);
  g_test_add_func ("/project/briefs", test_briefs);
  g_test_add_func ("/project/sun-of-brief", test_sun_of_brief);
  g_test_add_func ("/project/celebrations", test_celebrations);
  g_test_add_func ("/project/nothing-changes", test_nothing_changes);
  g_test_add_func ("/project/sharing", test_sharing);
  g_test_add_func ("/project/lifetimes", test_lifetimes);
  g_test_add_func ("/project/any-thread", test_any_thread);
  g_test_add_func ("/project/without-item", test_without_item);
  g_test_add_func ("/project/without-survey-item", test_without_survey_item);
  g_test_add_func ("/project/free-id", test_free_id);
  g_test_add_func ("/project/builder-refuses", test_builder_refuses);
  g_test_add_func ("/project/builder", test_builder);
  g_test_add_func ("/project/random-edits", test_random_edits);
  g_test_add_func ("/project/page", test_page);
  g_test_add_func ("/project/hidden", test_hidden);
  return g_test_run ();
}
