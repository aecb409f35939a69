/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-evidence.c - what is drawn of each measure is what was measured: by its length, its area, or as many marks */
#include "random-parish.h"

#include "footpace/store.h"

#include <math.h>

#define NEAR 1.0 /* mm */

static const char *const samples[] = { "parish", "fan", "cathedral", "chapel" };

typedef struct
{
  const char *where;   /* of the church, for messages */
  guint       n;       /* values that were looked at  */
  gboolean   *had;     /* measures that had a value   */
} Looked;

static double
area_of (const FpEvidence *evidence)
{
  guint n;
  const FpEvidencePiece *piece = fp_evidence_pieces (evidence, &n);
  const FpVec3 *pt = fp_evidence_points (evidence);
  double area = 0;

  for (guint i = 0; i < n; i++)
    if (piece[i].sort == FP_EVIDENCE_OUTLINE)
      {
        g_autofree FpPoint *flat = g_new (FpPoint, piece[i].n);

        for (guint k = 0; k < piece[i].n; k++)
          flat[k] = (FpPoint) { pt[piece[i].first + k].x, pt[piece[i].first + k].y };
        area += fabs (fp_outline_area (flat, piece[i].n));
      }
  return area;
}

static guint
marks_of (const FpEvidence *evidence)
{
  guint n, marks = 0;
  const FpEvidencePiece *piece = fp_evidence_pieces (evidence, &n);

  for (guint i = 0; i < n; i++)
    marks += piece[i].sort == FP_EVIDENCE_EACH ? 1 : 0;
  return marks;
}

/* Nothing was found, nowhere: nothing in a door, nobody above the altar. */
static gboolean
is_nowhere (const FpMeasured *one)
{
  return one->value == 0 && one->owner < 0;
}

static gboolean
is_of_places (const FpMeasure *measure)
{
  return measure->type == FP_MEASURE_COUNT && g_strcmp0 (measure->many, "places") == 0
         && !g_str_equal (measure->id, "wheelchair-lacking") && !g_str_equal (measure->id, "ministers-in-line");
}

static void
check_way (const FpMeasure *measure, const FpMeasured *one, const char *where)
{
  const FpWay *way = one->way;
  const double across = hypot (way->narrow[1].x - way->narrow[0].x, way->narrow[1].y - way->narrow[0].y);

  if (way->narrows && fabs (across - one->value) > NEAR + way->tolerance)
    {
      g_test_message ("%s: %s: the way is %g wide, drawn %g", where, measure->id, one->value, across);
      g_test_fail ();
    }
}

static void
check_one (const FpMeasure *measure, const FpMeasuring *of, const FpMeasured *one, const char *where)
{
  g_autoptr (FpEvidence) evidence = fp_measured_evidence (measure, of, one);
  guint n;
  const gboolean by_way = one->way != NULL && (one->way->narrows || one->way->n_route >= 2);
  const char *amiss = NULL;
  double drawn = one->value;

  fp_evidence_pieces (evidence, &n);
  if (one->way != NULL)
    check_way (measure, one, where);
  if (n == 0 && !by_way && !is_nowhere (one))
    amiss = "nothing is drawn";
  else if (measure->type == FP_MEASURE_LENGTH && one->way == NULL && !is_nowhere (one))
    {
      drawn = fp_evidence_length (evidence);
      amiss = fabs (drawn - one->value) > NEAR ? "another length" : NULL;
    }
  else if (measure->type == FP_MEASURE_AREA)
    {
      drawn = area_of (evidence);
      amiss = fabs (drawn - one->value) > NEAR + one->value * 1e-6 ? "another area" : NULL;
    }
  else if (is_of_places (measure))
    {
      drawn = marks_of (evidence);
      amiss = fabs (drawn - one->value) > 0.5 ? "another number" : NULL;
    }
  if (amiss == NULL)
    return;
  g_test_message ("%s: %s: %s: %g is drawn as %g", where, measure->id, amiss, one->value, drawn);
  g_test_fail ();
}

static void
look_at (const FpProject *project, guint alternative, Looked *looked)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, alternative);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (FpSight) sight = fp_sight_new (people, NULL);
  const FpMeasuring of = { scene, people, fp_levels (people), sight };
  guint n;
  const FpMeasure *measure = fp_measures (&n);

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (GArray) values = fp_measure_take (&measure[i], &of);

      for (guint k = 0; k < values->len; k++)
        {
          const FpMeasured *one = &g_array_index (values, FpMeasured, k);

          if (isnan (one->value))
            continue;
          looked->n++;
          looked->had[i] = TRUE;
          check_one (&measure[i], &of, one, looked->where);
        }
    }
}

static FpProject *
load (const char *sample)
{
  g_autofree char *file = g_strconcat (sample, ".footpace", NULL);
  g_autofree char *path = g_build_filename (g_getenv ("FOOTPACE_SAMPLES"), file, NULL);
  g_autoptr (GError) error = NULL;
  FpProject *project = fp_store_load (path, &error);

  g_assert_no_error (error);
  return project;
}

static guint
looked_begin (Looked *looked)
{
  guint n;

  fp_measures (&n);
  *looked = (Looked) { .had = g_new0 (gboolean, n) };
  return n;
}

/* What no sample has, as it is when it is added. */
static FpProject *
church_with_more (void)
{
  static const struct { const char *kind, *id, *on; double x, y; const char *param; double value; } more[] = {
    { "pulpit", "pulpit", NULL, -4500, 1500, NULL, 0 },
    { "font", "font", NULL, -3000, -15000, "steps", 2 },
    { "handrail", "handrail", NULL, 3000, -600, NULL, 0 },
    { "handrail", "left-handrail", NULL, -1400, -300, NULL, 0 },
    { "handrail", "right-handrail", NULL, 1400, -300, NULL, 0 },
    { "sanctuary-lamp", "lamp", NULL, 2000, 5000, NULL, 0 },
    { "paschal-candlestick", "paschal", NULL, -3000, 4000, NULL, 0 },
    { "canopy", "canopy", NULL, 0, 8000, NULL, 0 },
    { "screen", "screen", NULL, 0, 200, NULL, 0 },
    { "ramp", "ramp", NULL, 5000, -9000, "rise", 400 },
    { "credence", "credence", NULL, 4500, 8000, NULL, 0 },
    { "flowers", "flowers", "credence", 0, 0, NULL, 0 },
    { "sedilia", "sedilia", NULL, 4500, 5000, NULL, 0 },
    { "ambo", "ambo", NULL, -3500, 3000, NULL, 0 },
    { "hand-bell", "bell", NULL, 2500, 6500, NULL, 0 },
    { "lectern", "lectern", NULL, 0, 7000, NULL, 0 },
    { "sanctus-candle", "sanctus", NULL, 2800, 6500, NULL, 0 },
    { "rail", "rail", NULL, 0, 3000, "cushion", 50 },
    { "altar-cloths", "cloths", "altar", 0, 0, NULL, 0 },
    { "altar-cards", "cards", "altar", 0, 0, NULL, 0 },
    { "altar", "side-altar", NULL, -4500, 9000, NULL, 0 },
  };
  FpProject *project = taking_church (FP_BOOKS_BOTH, FP_FACING_EAST, FP_CELEBRATION_LOW | FP_CELEBRATION_REQUIEM | FP_CELEBRATION_BENEDICTION
                                                                       | FP_CELEBRATION_SUNDAY | FP_CELEBRATION_BISHOP);

  taking_altar_group (&project, 6);
  taking_seats (&project, 100);
  taking_survey (&project, "pews", "pews", 0, -6000, NULL, 0);
  taking_survey (&project, "wheelchair-places", "one", -4000, -3000, "count", 1);
  taking_survey (&project, "wheelchair-places", "three", 4000, -3000, "count", 3);
  for (guint i = 0; i < G_N_ELEMENTS (more); i++)
    taking_add (&project, more[i].kind, more[i].id, more[i].on, more[i].x, more[i].y, more[i].param, more[i].value);
  return project;
}

/* No measure is left out: each has a value in one of these churches, and so something that is drawn. */
static void
test_all (void)
{
  Looked looked;
  const guint n = looked_begin (&looked);
  guint all;
  const FpMeasure *measure = fp_measures (&all);
  g_autoptr (FpProject) project = church_with_more ();

  looked.where = "more";
  look_at (project, 0, &looked);
  for (guint s = 0; s < G_N_ELEMENTS (samples); s++)
    {
      g_autoptr (FpProject) sample = load (samples[s]);

      looked.where = samples[s];
      for (guint a = 0; a < fp_project_n_alternatives (sample); a++)
        look_at (sample, a, &looked);
    }
  for (guint i = 0; i < n; i++)
    if (!looked.had[i])
      {
        g_test_message ("no church here has a value of %s, so that nobody knows what is drawn of it", measure[i].id);
        g_test_fail ();
      }
  g_free (looked.had);
}

static void
test_random (void)
{
  Looked looked;

  looked_begin (&looked);
  for (guint32 seed = 1; seed <= 40; seed++)
    {
      g_autoptr (FpProject) project = random_parish_new (seed);
      g_autofree char *where = g_strdup_printf ("seed %u", seed);

      looked.where = where;
      look_at (project, 0, &looked);
    }
  g_assert_cmpuint (looked.n, >, 1000);
  g_free (looked.had);
}

/* Of whatever a rule may hold against a limit it is told what is drawn of it. */
static void
test_told (void)
{
  guint n;
  const FpMeasure *measure = fp_measures (&n);

  for (guint i = 0; i < n; i++)
    g_assert_cmpstr (fp_measure_drawn (&measure[i]), !=, "");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/evidence/all", test_all);
  g_test_add_func ("/evidence/random", test_random);
  g_test_add_func ("/evidence/told", test_told);
  return g_test_run ();
}
