/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Several chosen things typed at once, without a display. */
#include "samples.h"
#include "several.h"

#include "footpace/setting-out.h"

#include <string.h>

static FpDocument *
open_parish (void)
{
  g_autofree char *path = fp_sample_path ("parish.footpace");
  FpDocument *d = fp_document_load (path, NULL);

  g_assert_nonnull (d);
  return d;
}

static void
choose_roles (FpDocument *d, FpRole a, FpRole b)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (fp_document_scene (d), &n);
  g_autoptr (GPtrArray) ids = g_ptr_array_new ();

  for (guint i = 0; i < n; i++)
    if (!placed[i].ghost && (fp_item_kind (placed[i].item)->role == a || fp_item_kind (placed[i].item)->role == b))
      g_ptr_array_add (ids, (gpointer) fp_item_id (placed[i].item));
  g_ptr_array_add (ids, NULL);
  fp_document_choose_all (d, (const char *const *) ids->pdata);
}

static void
test_of_one_kind (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  g_autoptr (GError) error = NULL;
  FpSeveral s;
  double value;

  choose_roles (d, FP_ROLE_PEWS, FP_ROLE_PEWS);
  fp_several_look (d, &s);
  g_assert_cmpuint (s.n, >, 1);
  g_assert_cmpstr (s.kind->id, ==, "pews");
  g_assert_true (s.any_surveyed && s.all_stand && s.have_places);
  g_assert_true (fp_several_enter (d, "spacing", "92 cm", NULL));
  g_assert_cmpuint (fp_document_depth (d), ==, 1);
  g_assert_true (fp_several_param_same (d, "spacing", &value));
  g_assert_cmpfloat (value, ==, 920.0);
  g_assert_nonnull (strstr (fp_document_undo_label (d), "things"));
  /* The same again is no step; a wrong one changes none of them. */
  g_assert_true (fp_several_enter (d, "spacing", "920", NULL));
  g_assert_cmpuint (fp_document_depth (d), ==, 1);
  g_assert_false (fp_several_enter (d, "spacing", "2 mm", &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_RANGE);
  g_assert_true (fp_several_param_same (d, "spacing", &value));
  g_assert_cmpuint (fp_document_n_chosen (d), ==, s.n);
  fp_document_undo (d);
  g_assert_cmpuint (fp_document_depth (d), ==, 0);
}

static void
test_mixed (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  const char *one;
  double value;

  choose_roles (d, FP_ROLE_PEWS, FP_ROLE_PEWS);
  one = fp_document_chosen_all (d)[0];
  g_assert_true (fp_document_edit (d, fp_set_out_param (fp_document_scene (d), one, "spacing", 905.0, NULL), "p", NULL));
  g_assert_false (fp_several_param_same (d, "spacing", &value));
  /* What one of them has is for the others a change. */
  g_assert_true (fp_several_enter (d, "spacing", "905", NULL));
  g_assert_true (fp_several_param_same (d, "spacing", &value));
  g_assert_cmpfloat (value, ==, 905.0);
}

static void
test_of_several_kinds (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  g_autofree char *names = NULL;
  FpSeveral s;

  choose_roles (d, FP_ROLE_CREDENCE, FP_ROLE_RAIL);
  fp_several_look (d, &s);
  g_assert_cmpuint (s.n, ==, 2);
  g_assert_null (s.kind);
  names = fp_several_names (d);
  g_assert_nonnull (strstr (names, " and "));
}

/* One line across the church for all of them, what stands on them going with them. */
static void
test_places (void)
{
  g_autoptr (FpDocument) d = open_parish ();
  double value;

  choose_roles (d, FP_ROLE_PEWS, FP_ROLE_PEWS);
  g_assert_false (fp_several_place_same (d, FP_FIELD_ACROSS, &value));
  g_assert_true (fp_several_place_enter (d, FP_FIELD_ALONG, "-7 m", NULL));
  g_assert_true (fp_several_place_same (d, FP_FIELD_ALONG, &value));
  g_assert_cmpfloat (value, ==, -7000.0);
  g_assert_cmpuint (fp_document_depth (d), ==, 1);
  g_assert_false (fp_several_place_same (d, FP_FIELD_ACROSS, &value));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/several/one-kind", test_of_one_kind);
  g_test_add_func ("/several/mixed", test_mixed);
  g_test_add_func ("/several/kinds", test_of_several_kinds);
  g_test_add_func ("/several/places", test_places);
  return g_test_run ();
}
