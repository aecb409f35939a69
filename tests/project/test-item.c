/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-item.c - what a thing may be, and what is refused */
#include "making.h"

#include <math.h>
#include <string.h>

/* --- refusals --- */

static const FpPoint square[] = { { 0, 0 }, { 4000, 0 }, { 4000, 4000 }, { 0, 4000 } };
static const FpPoint bow[] = { { 0, 0 }, { 4000, 4000 }, { 4000, 0 }, { 0, 4000 } };
static const FpPoint line[] = { { 0, 0 }, { 2000, 0 }, { 4000, 0 } };
static const FpPoint doubled[] = { { 0, 0 }, { 4000, 0 }, { 4000, 0 }, { 0, 4000 } };
static const FpPoint far_off[] = { { 0, 0 }, { 1.1e6, 0 }, { 0, 4000 } };
static const FpPoint odd[] = { { 0, 0 }, { NAN, 0 }, { 0, 4000 } };
static const FpPoint crossing_run[] = { { 0, 0 }, { 4000, 0 }, { 4000, 2000 }, { 2000, -2000 } };

static void
refused (const FpItemInit *init, int code, const char *says)
{
  g_autoptr (GError) error = NULL;
  FpItem *item = fp_item_new (init, &error);

  g_assert_null (item);
  g_assert_error (error, FP_ERROR, code);
  g_test_message ("%s", error->message);
  g_assert_nonnull (strstr (error->message, says));
  if (init->id != NULL && g_utf8_validate (init->id, -1, NULL) && strlen (init->id) < 70)
    g_assert_nonnull (strstr (error->message, init->id)); /* names the thing */
}

static FpItemInit
altar (void)
{
  return (FpItemInit) { .id = "altar-1", .kind = fp_kind_find ("altar") };
}

static FpItemInit
drawn (const char *kind, const FpPoint *corner, guint n)
{
  return (FpItemInit) { .id = "drawn-1", .kind = fp_kind_find (kind), .corner = corner, .n_corners = n };
}

static void
test_ids (void)
{
  static const char *const bad[] = { "", "1a", "-a", "a b", "a_b", "a.b", "\303\244", "a\n", "a:b", NULL };
  static const char *const good[] = { "a", "Z", "altar-2", "A9", "x--y-", NULL };
  g_autofree char *long_one = g_strnfill (64, 'a'), *too_long = g_strnfill (65, 'a');
  g_autoptr (FpItem) longest = NULL;
  FpItemInit init = altar ();

  for (guint i = 0; bad[i] != NULL; i++)
    {
      init.id = bad[i];
      refused (&init, FP_ERROR_INVALID, "is not an id");
    }
  init.id = too_long;
  refused (&init, FP_ERROR_INVALID, "at most 64");
  init.id = NULL;
  refused (&init, FP_ERROR_INVALID, "id is missing");
  init.id = "a\xff";
  refused (&init, FP_ERROR_INVALID, "altar: an id is missing");
  for (guint i = 0; good[i] != NULL; i++)
    {
      g_autoptr (FpItem) item = NULL;
      init.id = good[i];
      item = fp_item_new (&init, NULL);
      g_assert_nonnull (item);
    }
  init.id = long_one;
  longest = fp_item_new (&init, NULL);
  g_assert_nonnull (longest);
}

static void
test_names (void)
{
  g_autofree char *longest = g_strnfill (FP_TEXT_MAX, 'x'), *too_long = g_strnfill (FP_TEXT_MAX + 1, 'x');
  g_autoptr (FpItem) item = NULL, empty = NULL;
  FpItemInit init = altar ();

  init.name = "two\nlines";
  refused (&init, FP_ERROR_INVALID, "control character (U+000A)");
  init.name = "bell\a";
  refused (&init, FP_ERROR_INVALID, "U+0007");
  init.name = "next\302\205line";
  refused (&init, FP_ERROR_INVALID, "U+0085");
  init.name = "Altar \342\200\256 turned round";
  refused (&init, FP_ERROR_INVALID, "U+202E");
  init.name = "separated\342\200\250lines";
  refused (&init, FP_ERROR_INVALID, "U+2028");
  init.name = "no\357\277\276char";
  refused (&init, FP_ERROR_INVALID, "U+FFFE");
  init.name = "broken \xc3";
  refused (&init, FP_ERROR_INVALID, "not UTF-8");
  init.name = too_long;
  refused (&init, FP_ERROR_LIMIT, "2001 bytes");
  init.name = longest;
  item = fp_item_new (&init, NULL);
  g_assert_true (fp_item_has_name (item));
  init.name = "";
  empty = fp_item_new (&init, NULL);
  g_assert_false (fp_item_has_name (empty));
  g_assert_cmpstr (fp_item_name (empty), ==, init.kind->label);
}

static void
test_places (void)
{
  FpItemInit init = altar ();

  init.place.x = NAN;
  refused (&init, FP_ERROR_RANGE, "x is");
  init.place = (FpPlace) { 0, 1.0000001e6, 0 };
  refused (&init, FP_ERROR_RANGE, "y is");
  init.place = (FpPlace) { 0, 0, INFINITY };
  refused (&init, FP_ERROR_RANGE, "turn is");
}

static void
test_turn_is_normal (void)
{
  static const double turns[][2] = {
    { 0, 0 }, { 180, 180 }, { -180, 180 }, { 181, -179 }, { 360, 0 }, { -90, -90 }, { 270, -90 }, { 725, 5 },
      { -540, 180 },
    { -0.0, 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (turns); i++)
    {
      g_autoptr (FpItem) item = NULL;
      FpItemInit init = altar ();
      init.place.turn = turns[i][0];
      item = fp_item_new (&init, NULL);
      g_assert_cmpfloat (fp_item_place (item).turn, ==, turns[i][1]);
      g_assert_false (signbit (fp_item_place (item).turn) && turns[i][1] == 0);
    }
}

static void
test_supports (void)
{
  FpItemInit init = altar ();

  init.on = "not an id";
  refused (&init, FP_ERROR_INVALID, "is not an id");
  init.on = "altar-1";
  refused (&init, FP_ERROR_REFERENCE, "on itself");
  init.kind = NULL;
  refused (&init, FP_ERROR_KIND, "kind is not known");
}

/* Every parameter of every kind: below, above, not a number, not whole. */
static void
refuse_param (const FpKind *kind, guint index, double value)
{
  double param[FP_PARAM_MAX];
  const gboolean is_drawn = (kind->flags & (FP_KIND_OUTLINE | FP_KIND_RUN)) != 0;
  FpItemInit init = { .id = "thing-1", .kind = kind, .param = param, .corner = is_drawn ? square : NULL,
                      .n_corners = is_drawn ? 4 : 0 };

  fp_kind_defaults (kind, param);
  param[index] = value;
  refused (&init, FP_ERROR_RANGE, kind->params[index].label);
}

static void
test_params (void)
{
  guint n;
  const FpKind *const *kind = fp_kinds (&n);

  g_assert_cmpuint (n, >, 10);
  for (guint k = 0; k < n; k++)
    for (guint i = 0; i < fp_kind_n_params (kind[k]); i++)
      {
        const FpParam *param = &kind[k]->params[i];
        refuse_param (kind[k], i, param->max + 1);
        refuse_param (kind[k], i, param->min - 1);
        refuse_param (kind[k], i, NAN);
        refuse_param (kind[k], i, -INFINITY);
        if (param->type == FP_PARAM_COUNT && param->max > param->min)
          refuse_param (kind[k], i, param->min + 0.5);
      }
}

static void
test_relations (void)
{
  double param[FP_PARAM_MAX];
  FpItemInit init = { .id = "rail-1", .kind = fp_kind_find ("rail"), .param = param };

  fp_kind_defaults (init.kind, param);
  param[fp_kind_param_index (init.kind, "length")] = 1300;
  param[fp_kind_param_index (init.kind, "gate")] = 1290;
  refused (&init, FP_ERROR_RANGE, "gate");
}

static void
test_corners (void)
{
  double param[FP_PARAM_MAX];
  g_autofree FpPoint *many = g_new0 (FpPoint, FP_CORNERS_MAX + 1);
  FpItemInit init = drawn ("floor", square, 2);

  refused (&init, FP_ERROR_GEOMETRY, "at least 3");
  init = drawn ("floor", NULL, 0);
  refused (&init, FP_ERROR_GEOMETRY, "at least 3");
  init = drawn ("wall", square, 1);
  refused (&init, FP_ERROR_GEOMETRY, "at least 2");
  init = drawn ("altar", square, 4);
  refused (&init, FP_ERROR_GEOMETRY, "this kind has none");
  init = drawn ("floor", bow, 4);
  refused (&init, FP_ERROR_GEOMETRY, "encloses nothing"); /* its two halves cancel */
  init = drawn ("floor", line, 3);
  refused (&init, FP_ERROR_GEOMETRY, "encloses nothing");
  init = drawn ("floor", doubled, 4);
  refused (&init, FP_ERROR_GEOMETRY, "crosses or touches itself");
  init = drawn ("floor", far_off, 3);
  refused (&init, FP_ERROR_RANGE, "x of a corner");
  init = drawn ("floor", odd, 3);
  refused (&init, FP_ERROR_RANGE, "x of a corner");
  init = drawn ("floor", many, FP_CORNERS_MAX + 1);
  refused (&init, FP_ERROR_LIMIT, "at most 2000");
  init = drawn ("wall", crossing_run, 4);
  refused (&init, FP_ERROR_GEOMETRY, "at 3000, 0");
  /* A run of two is a wall; closed, it encloses nothing. */
  init = drawn ("wall", square, 2);
  fp_kind_defaults (init.kind, param);
  param[fp_kind_param_index (init.kind, "closed")] = 1;
  init.param = param;
  refused (&init, FP_ERROR_GEOMETRY, "at least 3");
}

static void
test_many_corners (void)
{
  g_autofree FpPoint *round_one = g_new (FpPoint, FP_CORNERS_MAX);
  g_autoptr (GError) error = NULL;
  g_autoptr (FpItem) item = NULL;
  FpItemInit init;

  for (guint i = 0; i < FP_CORNERS_MAX; i++)
    round_one[i] = (FpPoint) { 9000 * cos (2 * G_PI * i / FP_CORNERS_MAX), 9000 * sin (2 * G_PI * i / FP_CORNERS_MAX) };
  init = drawn ("floor", round_one, FP_CORNERS_MAX);
  item = fp_item_new (&init, &error);
  g_assert_no_error (error);
}

/* --- what is kept --- */

static void
test_item_keeps (void)
{
  FpPoint corner[4];
  char id[] = "floor-1", name[] = "Chancel floor";
  FpItemInit init = { .id = id, .kind = fp_kind_find ("floor"), .name = name, .place = { 1, -0.0, 450 },
                      .corner = corner,
                      .n_corners = 4 };
  g_autoptr (FpItem) item = NULL, same = NULL;
  FpItemInit from;
  guint n;

  memcpy (corner, square, sizeof corner);
  item = fp_item_new (&init, NULL);
  /* Nothing is borrowed. */
  id[0] = name[0] = 'x';
  corner[0].x = 77;
  g_assert_cmpstr (fp_item_id (item), ==, "floor-1");
  g_assert_cmpstr (fp_item_name (item), ==, "Chancel floor");
  g_assert_cmpfloat (fp_item_corners (item, &n)[0].x, ==, 0);
  g_assert_cmpuint (n, ==, 4);
  g_assert_false (signbit (fp_item_place (item).y)); /* -0 is written as 0 */
  g_assert_cmpfloat (fp_item_param (item, "thickness"), ==, 200);
  g_assert_null (fp_item_on (item));

  fp_item_init_from (item, &from);
  same = fp_item_new (&from, NULL);
  g_assert_true (fp_item_equal (item, same));
}

static void
test_item_equal (void)
{
  g_autoptr (FpItem) a = test_item ("altar", "altar", NULL, 0, 0), b = test_item ("altar", "altar", NULL, 0, 1);
  g_autoptr (FpItem) c = test_item ("altar-2", "altar", NULL, 0, 0), d = test_item ("altar", "altar", "x", 0, 0);
  g_autoptr (FpItem) e = test_with_param (test_item ("altar", "altar", NULL, 0, 0), "length", 2500);
  g_autoptr (FpItem) f = test_item ("altar", "credence", NULL, 0, 0);
  g_autoptr (FpItem) g = test_item ("altar", "altar", NULL, 0, 0);
  g_autoptr (FpItem) s = test_square ("floor", "floor", 4000), t = test_square ("floor", "floor", 4001);

  g_assert_true (fp_item_equal (a, g));
  g_assert_false (fp_item_equal (a, b));
  g_assert_false (fp_item_equal (a, c));
  g_assert_false (fp_item_equal (a, d));
  g_assert_false (fp_item_equal (a, e));
  g_assert_false (fp_item_equal (a, f));
  g_assert_false (fp_item_equal (s, t));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/item/ids", test_ids);
  g_test_add_func ("/item/names", test_names);
  g_test_add_func ("/item/places", test_places);
  g_test_add_func ("/item/turn-is-normal", test_turn_is_normal);
  g_test_add_func ("/item/supports", test_supports);
  g_test_add_func ("/item/params", test_params);
  g_test_add_func ("/item/relations", test_relations);
  g_test_add_func ("/item/corners", test_corners);
  g_test_add_func ("/item/many-corners", test_many_corners);
  g_test_add_func ("/item/keeps", test_item_keeps);
  g_test_add_func ("/item/equal", test_item_equal);
  return g_test_run ();
}
