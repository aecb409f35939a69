/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "typing.h"

#include "place-edit.h"
#include "samples.h"

static FpDocument *
open_sample (const char *name)
{
  g_autofree char *path = fp_sample_path (name);
  g_autoptr (GError) error = NULL;
  FpDocument *document = fp_document_load (path, &error);

  g_assert_no_error (error);
  return document;
}

static const FpPlaced *
altar (FpDocument *d)
{
  return &fp_scene_placed (fp_document_scene (d), NULL)[fp_scene_role (fp_document_scene (d), FP_ROLE_ALTAR)];
}

static const char *
altar_id (FpDocument *d)
{
  return g_intern_string (fp_item_id (altar (d)->item));
}

static double
param (FpDocument *d, const char *id)
{
  return fp_item_param (altar (d)->item, id);
}

/* Levels are lettered in metres: typed as they stand on the paper they are read so. */
static void
test_levels (void)
{
  static const struct { const char *text; double mm; } cases[] = {
    { "1800", 1800 }, { "+1.8", 1800 }, { "1,746", 1746 }, { "-0.36", -360 }, { "+0.300", 300 }, { "1.8 m", 1800 },
    { "180 cm", 1800 }, { "+1800", 1800 }, { "1200 + 2*35", 1270 },
  };
  double value;

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_true (fp_typing_read_level (cases[i].text, FP_UNITS_METRIC, &value, &error));
      g_assert_cmpfloat_with_epsilon (value, cases[i].mm, 1e-9);
    }
  g_assert_false (fp_typing_read_level ("high", FP_UNITS_METRIC, &value, NULL));
  g_assert_true (fp_typing_read_level ("1.5", FP_UNITS_IMPERIAL, &value, NULL));
  g_assert_cmpfloat (value, <, 1000);
}

static void
test_metric (void)
{
  g_autoptr (FpDocument) d = open_sample ("parish.footpace");
  const struct { const char *text; double mm; } cases[] = {
    { "2750", 2750.0 }, { "2.6 m", 2600.0 }, { "250 cm", 2500.0 }, { "2*1200 + 35", 2435.0 },
    { "9'", 2743.2 }, /* 1 ft = 304.8 mm exactly (international foot, 1959) */
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      gboolean taken = fp_typing_enter (d, altar_id (d), "length", cases[i].text, &error);

      g_assert_no_error (error);
      g_assert_true (taken);
      g_assert_cmpfloat_with_epsilon (param (d, "length"), cases[i].mm, 1e-6);
    }
}

static void
test_wrong_text_changes_nothing (void)
{
  g_autoptr (FpDocument) d = open_sample ("parish.footpace");
  const char *const wrong[] = { "", "wide", "2400 mm or so", "1/0", "-5", "0", "99999999", "1e999", "nan", "2400)" };
  double was = param (d, "length");

  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      g_autoptr (GError) error = NULL;

      g_assert_false (fp_typing_enter (d, altar_id (d), "length", wrong[i], &error));
      g_assert_nonnull (error);
      g_assert_cmpfloat (param (d, "length"), ==, was);
    }
  g_assert_cmpuint (fp_document_depth (d), ==, 0);
}

static void
test_nothing_there (void)
{
  g_autoptr (FpDocument) d = open_sample ("parish.footpace");
  g_autoptr (GError) error = NULL;

  g_assert_false (fp_typing_enter (d, "no-such-thing", "length", "2400", &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_REFERENCE);
  g_clear_error (&error);
  g_assert_false (fp_typing_enter (d, altar_id (d), "no-such-measure", "2400", &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_REFERENCE);
}

/* In feet and inches 2743.2 mm is 9 ft; a bare number is inches. */
static void
test_imperial (void)
{
  g_autoptr (FpDocument) d = open_sample ("chapel.footpace");
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (fp_project_brief (fp_document_project (d))->units, ==, FP_UNITS_IMPERIAL);
  g_assert_true (fp_typing_enter (d, altar_id (d), "length", "9'", &error));
  g_assert_cmpfloat_with_epsilon (param (d, "length"), 2743.2, 1e-6);
  g_assert_true (fp_typing_enter (d, altar_id (d), "length", "100", &error));
  g_assert_cmpfloat_with_epsilon (param (d, "length"), 2540.0, 1e-6);
  g_assert_no_error (error);
}

/* To leave a field is not to round what it shows. */
static void
test_what_is_shown_is_not_rounded (void)
{
  g_autoptr (FpDocument) d = open_sample ("chapel.footpace");
  const FpParam *length;
  g_autofree char *shown = NULL;
  double value;

  g_assert_true (fp_typing_enter (d, altar_id (d), "length", "2000.3 mm", NULL));
  length = fp_typing_param (altar (d), "length", &value);
  shown = fp_typing_show (length, value, FP_UNITS_IMPERIAL);
  g_assert_true (fp_typing_enter (d, altar_id (d), "length", shown, NULL));
  g_assert_cmpfloat (param (d, "length"), ==, value);
  g_assert_cmpuint (fp_document_depth (d), ==, 1);
}

/* Every parameter of every kind reads back what is shown of its default. */
static void
test_every_kind (void)
{
  guint n;
  const FpKind *const *kind = fp_kinds (&n);

  for (guint k = 0; k < n; k++)
    for (const FpParam *p = kind[k]->params; p != NULL && p->id != NULL; p++)
      for (guint units = 0; units < 2; units++)
        {
          g_autofree char *shown = fp_typing_show (p, p->def, (FpUnits) units);
          g_autofree char *about = fp_typing_about (p, (FpUnits) units);
          g_autoptr (GError) error = NULL;
          double value = -1.0;

          g_assert_cmpstr (shown, !=, "");
          g_assert_cmpstr (about, !=, "");
          g_assert_cmpfloat (fp_typing_step (p, (FpUnits) units), >, 0.0);
          if (p->type == FP_PARAM_CHOICE)
            continue;
          g_assert_true (fp_typing_read (p, shown, (FpUnits) units, &value, &error));
          /* Imperial shows the nearest sixteenth of an inch: 0.8 mm either way. */
          g_assert_cmpfloat_with_epsilon (value, p->def, units == FP_UNITS_METRIC ? 0.051 : 0.8);
        }
}

static void
test_share_and_angle (void)
{
  const FpKind *floor_kind = fp_kind_find ("floor");
  const FpParam *fall = &floor_kind->params[fp_kind_param_index (floor_kind, "fall")];
  const FpParam *direction = &floor_kind->params[fp_kind_param_index (floor_kind, "direction")];
  g_autofree char *shown = fp_typing_show (fall, 0.05, FP_UNITS_METRIC);
  double value;

  g_assert_cmpstr (shown, ==, "5");
  g_assert_true (fp_typing_read (fall, "5 %", FP_UNITS_METRIC, &value, NULL));
  g_assert_cmpfloat_with_epsilon (value, 0.05, 1e-12);
  g_assert_true (fp_typing_read (fall, "2.5", FP_UNITS_METRIC, &value, NULL));
  g_assert_cmpfloat_with_epsilon (value, 0.025, 1e-12);
  g_assert_true (fp_typing_read (direction, "90°", FP_UNITS_METRIC, &value, NULL));
  g_assert_cmpfloat (value, ==, 90.0);
}

/* --- where it stands ------------------------------------------------------ */

static void
test_place (void)
{
  g_autoptr (FpDocument) d = open_sample ("parish.footpace");
  g_autoptr (GError) error = NULL;
  FpPlace was = altar (d)->place;

  g_assert_true (fp_place_is_own (fp_document_scene (d), altar (d)));
  g_assert_true (fp_place_enter (d, altar_id (d), FP_FIELD_ACROSS, "150", &error));
  g_assert_no_error (error);
  g_assert_cmpfloat (altar (d)->place.x, ==, 150.0);
  g_assert_cmpfloat (altar (d)->place.y, ==, was.y);
  g_assert_false (fp_place_enter (d, altar_id (d), FP_FIELD_ALONG, "over there", &error));
  g_assert_nonnull (error);
  fp_document_undo (d);
  g_assert_cmpfloat (altar (d)->place.x, ==, was.x);
}

/* What lies round the altar goes where the altar goes. */
static void
test_footpace_has_no_place_of_its_own (void)
{
  g_autoptr (FpDocument) d = open_sample ("parish.footpace");
  const FpScene *scene = fp_document_scene (d);

  g_assert_false (fp_place_is_own (scene, &fp_scene_placed (scene, NULL)[fp_scene_role (scene, FP_ROLE_FOOTPACE)]));
}

static void
test_a_moved_thing_of_the_survey (void)
{
  g_autoptr (FpDocument) d = open_sample ("parish.footpace");
  g_autoptr (GError) error = NULL;

  g_assert_true (fp_place_enter (d, "chair-1974", FP_FIELD_ALONG, "4500", &error));
  g_assert_no_error (error);
  g_assert_cmpfloat (fp_document_placed (d, "chair-1974")->place.y, ==, 4500.0);
  g_assert_true (fp_document_placed (d, "chair-1974")->moved);
  /* In the alternative that keeps it, it stands where it stood. */
  fp_document_set_alternative (d, 0);
  g_assert_cmpfloat (fp_document_placed (d, "chair-1974")->place.y, ==, 6400.0);
}

static void
test_corner (void)
{
  g_autoptr (FpDocument) d = open_sample ("parish.footpace");
  g_autoptr (GError) error = NULL;
  const FpPoint *corner;
  guint n;

  corner = fp_item_corners (fp_document_placed (d, "nave-floor")->item, &n);
  g_assert_cmpuint (n, >=, 3);
  g_assert_true (fp_corner_enter (d, "nave-floor", 0, FALSE, "-6543", &error));
  g_assert_no_error (error);
  corner = fp_item_corners (fp_document_placed (d, "nave-floor")->item, &n);
  g_assert_cmpfloat (corner[0].x, ==, -6543.0);
  g_assert_false (fp_corner_enter (d, "nave-floor", n, FALSE, "0", &error));
  g_assert_nonnull (error);
}

/* An outline that crosses itself is refused, and nothing of it stays. */
static void
test_corner_that_crosses (void)
{
  g_autoptr (FpDocument) d = open_sample ("parish.footpace");
  g_autoptr (FpProject) before = fp_project_ref (fp_document_project (d));
  g_autoptr (GError) error = NULL;
  guint n;
  const FpPoint *corner = fp_item_corners (fp_document_placed (d, "nave-floor")->item, &n);
  FpPoint opposite = corner[2];
  g_autofree char *across = g_strdup_printf ("%g", opposite.x + (opposite.x > corner[0].x ? 100.0 : -100.0));

  /* The first corner is carried past its neighbour, over to the other side. */
  g_assert_false (fp_corner_enter (d, "nave-floor", 0, FALSE, across, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_GEOMETRY);
  g_assert_true (fp_document_project (d) == before);
}

/* What may carry a thing is there, is not the thing, and is not carried by it. */
static void
test_supports (void)
{
  g_autoptr (FpDocument) d = open_sample ("parish.footpace");
  const FpScene *scene = fp_document_scene (d);
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    {
      g_autoptr (GPtrArray) supports = NULL;

      if (placed[i].ghost)
        continue;
      supports = fp_supports_new (scene, &placed[i]);
      /* What carries it now can be shown, and all but an opening can come down to the floor. */
      if (placed[i].support >= 0)
        g_assert_true (g_ptr_array_find (supports, g_intern_string (fp_item_id (placed[placed[i].support].item)), NULL));
      if (supports->len > 0 && (fp_item_kind (placed[i].item)->flags & FP_KIND_IN_WALL) == 0)
        g_assert_true (g_ptr_array_find (supports, g_intern_string (""), NULL));
      for (guint s = 0; s < supports->len; s++)
        {
          const char *id = g_ptr_array_index (supports, s);

          if (*id == '\0')
            continue;
          for (int at = fp_scene_find (scene, id); at >= 0; at = placed[at].support)
            g_assert_cmpint (at, !=, (int) i);
        }
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/typing/metric", test_metric);
  g_test_add_func ("/typing/wrong", test_wrong_text_changes_nothing);
  g_test_add_func ("/typing/nothing-there", test_nothing_there);
  g_test_add_func ("/typing/imperial", test_imperial);
  g_test_add_func ("/typing/not-rounded", test_what_is_shown_is_not_rounded);
  g_test_add_func ("/typing/every-kind", test_every_kind);
  g_test_add_func ("/typing/share-and-angle", test_share_and_angle);
  g_test_add_func ("/place/enter", test_place);
  g_test_add_func ("/place/laid-round", test_footpace_has_no_place_of_its_own);
  g_test_add_func ("/typing/levels", test_levels);
  g_test_add_func ("/place/survey", test_a_moved_thing_of_the_survey);
  g_test_add_func ("/place/corner", test_corner);
  g_test_add_func ("/place/corner/crosses", test_corner_that_crosses);
  g_test_add_func ("/place/supports", test_supports);
  return g_test_run ();
}
