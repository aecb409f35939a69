/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-linen.c - cloths of an altar as it is drawn, and as they are cut
 *
 * Sizes of the cloths: Catholic Encyclopedia I (1907), Altar-Cloths and Altar
 * Rail; hems: P. Dearmer, The Parson's Handbook (2nd ed. 1899), p. 61.  By hand
 * in inches.
 */
#include "footpace/linen.h"

#include <math.h>
#include <string.h>

#define INCH 25.4

static FpProject *
take (FpProject *was, FpProject *next, GError *error)
{
  g_assert_no_error (error);
  fp_project_unref (was);
  return next;
}

static FpProject * /* takes @project */
add (FpProject *project, const char *id, FpPlace place, const char *const *names, const double *values)
{
  GError *error = NULL;
  double param[FP_PARAM_MAX];
  const FpKind *kind = fp_kind_find (id);
  FpItemInit init = { .id = id, .kind = kind, .place = place, .param = param };
  g_autoptr (FpItem) item = NULL;

  fp_kind_defaults (kind, param);
  for (guint i = 0; names[i] != NULL; i++)
    param[fp_kind_param_index (kind, names[i])] = values[i];
  item = fp_item_new (&init, &error);
  g_assert_no_error (error);
  return take (project, fp_project_with_item (project, 0, item, &error), error);
}

/* An altar of 9 ft by 3 ft, 3 ft 3 in high, a credence of 30 by 12 in, 30 in high, and a rail of 15 ft. */
static FpScene *
scene_new (FpProject **out)
{
  static const char *const sizes[] = { "length", "depth", "height", NULL }, *const rail[] = { "length", "cloth", NULL };
  const FpBrief brief = { .title = "", .place = "", .client = "", .author = "", .note = "", .ministers = 1, .percentile = 50 };
  FpProject *project = fp_project_new (&brief);

  project = add (project, "altar", (FpPlace) { 0, 4000, 0 }, sizes, (const double[]) { 108 * INCH, 36 * INCH, 39 * INCH });
  project = add (project, "credence", (FpPlace) { 3000, 4000, 0 }, sizes, (const double[]) { 30 * INCH, 12 * INCH, 30 * INCH });
  project = add (project, "rail", (FpPlace) { 0, 0, 0 }, rail, (const double[]) { 180 * INCH, 1 });
  *out = project;
  return fp_scene_new (project, 0);
}

static const FpCloth *
find (const GArray *cloths, const char *id)
{
  for (guint i = 0; i < cloths->len; i++)
    if (strcmp (g_array_index (cloths, FpCloth, i).id, id) == 0)
      return &g_array_index (cloths, FpCloth, i);
  return NULL;
}

static void
assert_cloth (const GArray *cloths, const char *id, guint number, double length, double width)
{
  const FpCloth *cloth = find (cloths, id);

  g_assert_nonnull (cloth);
  g_assert_cmpuint (cloth->number, ==, number);
  g_assert_cmpfloat_with_epsilon (cloth->length, length * INCH, 1e-6);
  g_assert_cmpfloat_with_epsilon (cloth->width, width * INCH, 1e-6);
  g_assert_cmpuint (strlen (cloth->source), >, 10);
}

static void
test_cloths (void)
{
  g_autoptr (FpProject) project = NULL;
  g_autoptr (FpScene) scene = scene_new (&project);
  g_autoptr (GArray) older = fp_linen_cloths (scene, FP_BOOKS_OLDER), newer = fp_linen_cloths (scene, FP_BOOKS_NEWER);

  assert_cloth (older, "cere-cloth", 1, 108, 36);
  assert_cloth (older, "under-cloth", 2, 108, 36);
  assert_cloth (older, "top-cloth", 1, 108 + 2 * 39, 36); /* 186 in: 4724.4 mm */
  assert_cloth (older, "dust-cover", 1, 108 + 12, 36);
  assert_cloth (older, "credence-cloth", 1, 30 + 2 * 30, 12 + 30);
  assert_cloth (older, "rail-cloth", 2, (180 - 1200 / INCH) / 2, 610 / INCH); /* on either side of a gate of 1200 */
  g_assert_null (find (newer, "under-cloth"));
  assert_cloth (newer, "top-cloth", 1, 186, 36);
}

/* Top cloth: hems of 2 in at the ends and 1 in at the sides; 6 % in the warp and 2.5 % in the weft, as measured at 60 degrees
 * of two linens (18thcstockholm.blogspot.com, 28 September 2017). */
static void
test_cut (void)
{
  g_autoptr (FpProject) project = NULL;
  g_autoptr (FpScene) scene = scene_new (&project);
  g_autoptr (GArray) cloths = fp_linen_cloths (scene, FP_BOOKS_OLDER);
  const FpShrinkage shrinkage = { .warp = 0.06, .weft = 0.025 };
  g_autoptr (GArray) pieces = fp_linen_pieces (cloths, &shrinkage);
  const FpBoltPiece *top = &g_array_index (pieces, FpBoltPiece, 3); /* after cere cloth and two under cloths */

  g_assert_cmpuint (pieces->len, ==, 8 + 5); /* and of small linens: corporal, a pall's two sides, purificator, towel */
  g_assert_cmpfloat_with_epsilon (top->along, (4724.4 + 2 * (50.8 + 8)) / 0.94, 1e-9);
  g_assert_cmpfloat_with_epsilon (top->across, (914.4 + 2 * (25.4 + 8)) / 0.975, 1e-9);
  g_assert_cmpfloat_with_epsilon (top->turned_across, (4724.4 + 2 * (50.8 + 8)) / 0.975, 1e-9);
  g_assert_cmpfloat_with_epsilon (top->turned_along, (914.4 + 2 * (25.4 + 8)) / 0.94, 1e-9);
  /* Washed, hemmed, it is as large as it was to be. */
  g_assert_cmpfloat_with_epsilon (top->along * (1 - shrinkage.warp) - 2 * (50.8 + 8), 4724.4, 1e-9);
  g_assert_cmpfloat_with_epsilon (fp_linen_cut (1000, 0, 0, 0), 1000, 1e-12);
  g_assert_true (isnan (fp_linen_cut (1000, 0, 0, -0.01)) && isnan (fp_linen_cut (1000, 0, 0, 0.9))
                 && isnan (fp_linen_cut (1000, 0, 0, NAN)));
}

/* All of it from a bolt of 60 in; what no bolt of 36 in holds either way is told. */
static void
test_from_the_bolt (void)
{
  g_autoptr (FpProject) project = NULL;
  g_autoptr (FpScene) scene = scene_new (&project);
  g_autoptr (GArray) cloths = fp_linen_cloths (scene, FP_BOOKS_OLDER);
  g_autoptr (GArray) pieces = fp_linen_pieces (cloths, &(FpShrinkage) { 0.06, 0.025 });
  const FpBoltPiece *piece = (const FpBoltPiece *) (gpointer) pieces->data;
  g_autoptr (GError) error = NULL;
  g_autoptr (FpBoltLayout) layout = fp_bolt_lay_out (piece, pieces->len, 60 * INCH, &error);

  g_assert_no_error (error);
  g_assert_cmpfloat (layout->length, >=, layout->bound);
  g_assert_cmpfloat (layout->length, <, 1.1 * layout->bound);
  g_assert_null (fp_bolt_lay_out (piece, pieces->len, 36 * INCH, &error));
  g_assert_nonnull (error);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/linen/cloths", test_cloths);
  g_test_add_func ("/linen/cut", test_cut);
  g_test_add_func ("/linen/from-the-bolt", test_from_the_bolt);
  return g_test_run ();
}
