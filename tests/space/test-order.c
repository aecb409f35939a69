/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-order.c - lighting from the cross outward, and what the servers reach */
#include "church.h"

#include "footpace/order.h"

#include <math.h>
#include <string.h>

#define SOME(...) { __VA_ARGS__, { NULL, 0 } }

typedef struct
{
  FpProject *project;
  FpScene   *set;
} Church;

static void
church_clear (Church *self)
{
  fp_scene_unref (self->set);
  fp_project_unref (self->project);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Church, church_clear)

/* Candles 300, 550 and 800 from the cross on an altar 900 deep and 1000 high, turned by @turn; the odd one in the middle. */
static Church
sanctuary_new (guint count, double stick, gboolean tabernacle, double turn, FpCelebration one)
{
  Church self = { church_new (FP_FACING_EAST), NULL };
  const ChurchThing footpace = { .id = "footpace", .kind = "footpace", .place = { 0, 4000, turn } };
  const ChurchThing altar = { .id = "altar", .kind = "altar", .on = "footpace", .place = { 0, 4000, turn },
                              .param = SOME ({ "length", 2400 }, { "depth", 900 }, { "height", 1000 }) };
  const ChurchThing cross = { .id = "cross", .kind = "crucifix", .on = "altar" };
  const ChurchThing house = { .id = "house", .kind = "tabernacle", .on = "altar",
                              .param = SOME ({ "width", 500 }, { "height", 1500 }) };
  const ChurchThing candles = { .id = "candles", .kind = "candlesticks", .on = "altar",
                                .param = SOME ({ "count", count }, { "gap", 600 }, { "spacing", 250 }, { "height", stick },
                                               { "candle", 300 }) };
  g_autoptr (FpScene) whole = NULL;

  church_floor (&self.project, "floor", (FpBox) { -5000, -5000, 5000, 8000 }, 0, 1, 0, 0);
  church_add (&self.project, &footpace);
  church_add (&self.project, &altar);
  church_add (&self.project, tabernacle ? &house : &cross);
  church_add (&self.project, &candles);
  whole = fp_scene_new (self.project, 0);
  self.set = fp_scene_new_set (whole, one);
  return self;
}

static char *
all_steps (const FpOrder *order, gboolean out)
{
  g_autoptr (GArray) steps = fp_order_steps (order, out);
  g_autoptr (GString) text = g_string_new ("");

  for (guint i = 0; i < steps->len; i++)
    {
      const FpOrderStep *step = &g_array_index (steps, FpOrderStep, i);
      g_autofree char *line = fp_order_step_text (order, step, out);

      g_string_append_printf (text, "%u %s\n", step->server + 1, line);
    }
  return g_strdup (text->str);
}

/* Epistle side first, from the candle nearest the cross; put out in reverse: M. Britt, How to Serve, as quoted at
 * traditionalaltarboy.wordpress.com 2015/08/18. */
static void
test_one_server (void)
{
  static const double x[] = { 300, 550, 800, -300, -550, -800 };
  g_auto (Church) c = sanctuary_new (6, 500, FALSE, 0, FP_CELEBRATION_SOLEMN);
  g_autoptr (FpOrder) order = fp_order_new (c.set, &FP_ORDER_USUAL);
  g_autofree char *lighting = all_steps (order, FALSE), *out = all_steps (order, TRUE);
  guint n;
  const FpOrderLight *light = fp_order_lights (order, &n);

  g_assert_cmpuint (n, ==, 6);
  for (guint i = 0; i < n; i++)
    {
      g_assert_cmpuint (light[i].number, ==, i + 1);
      g_assert_cmpfloat_with_epsilon (light[i].at.x, x[i], 1e-6);
      g_assert_cmpint (light[i].side, ==, i < 3 ? FP_EPISTLE_SIDE : FP_GOSPEL_SIDE);
    }
  g_assert_cmpstr (lighting, ==,
                   "1 In the middle, before the lowest step: bow to the cross.\n"
                   "1 Epistle side: light 1, 2, 3.\n"
                   "1 Cross to the Gospel side: in the middle bow to the cross.\n"
                   "1 Gospel side: light 4, 5, 6.\n"
                   "1 Back before the lowest step: bow to the cross, and leave.\n");
  g_assert_cmpstr (out, ==,
                   "1 In the middle, before the lowest step: bow to the cross.\n"
                   "1 Gospel side: put out 6, 5, 4.\n"
                   "1 Cross to the Epistle side: in the middle bow to the cross.\n"
                   "1 Epistle side: put out 3, 2, 1.\n"
                   "1 Back before the lowest step: bow to the cross, and leave.\n");
}

/* The other side first where that is asked, and before the tabernacle one genuflects. */
static void
test_gospel_first (void)
{
  const FpOrderSpec spec = { 1, FP_GOSPEL_SIDE, 1200, 550, 1000 };
  g_auto (Church) c = sanctuary_new (6, 500, TRUE, 0, FP_CELEBRATION_LOW);
  g_autoptr (FpOrder) order = fp_order_new (c.set, &spec);
  g_autofree char *lighting = all_steps (order, FALSE);
  guint n;
  const FpOrderLight *light = fp_order_lights (order, &n);

  g_assert_cmpuint (n, ==, 2);
  g_assert_cmpfloat_with_epsilon (light[0].at.x, -300, 1e-6);
  g_assert_cmpstr (lighting, ==,
                   "1 In the middle, before the lowest step: genuflect.\n"
                   "1 Gospel side: light 1.\n"
                   "1 Cross to the Epistle side: in the middle genuflect.\n"
                   "1 Epistle side: light 2.\n"
                   "1 Back before the lowest step: genuflect, and leave.\n");
}

/* Two servers in mirror image; the one whose side is first has the middle. */
static void
test_two_servers (void)
{
  const FpOrderSpec spec = { 2, FP_EPISTLE_SIDE, 1200, 550, 1000 };
  g_auto (Church) c = sanctuary_new (7, 500, FALSE, 0, FP_CELEBRATION_PONTIFICAL);
  g_autoptr (FpOrder) order = fp_order_new (c.set, &spec);
  g_autofree char *lighting = all_steps (order, FALSE), *out = all_steps (order, TRUE);
  guint n;
  const FpOrderLight *light = fp_order_lights (order, &n);

  g_assert_cmpuint (n, ==, 7);
  g_assert_true (light[0].middle);
  g_assert_cmpfloat_with_epsilon (light[0].at.x, 0, 1e-6);
  for (guint i = 1; i < n; i += 2)
    {
      g_assert_cmpuint (light[i].number, ==, light[i + 1].number);
      g_assert_cmpfloat_with_epsilon (light[i].at.x, -light[i + 1].at.x, 1e-6);
      g_assert_cmpuint (light[i].server, ==, 0);
      g_assert_cmpuint (light[i + 1].server, ==, 1);
    }
  g_assert_nonnull (strstr (lighting, "1 In the middle: light 1.\n1 Epistle side: light 2, 3, 4.\n"));
  g_assert_nonnull (strstr (lighting, "2 Gospel side: light 2, 3, 4.\n"));
  g_assert_nonnull (strstr (out, "1 Epistle side: put out 4, 3, 2.\n1 In the middle: put out 1.\n"));
  g_assert_null (strstr (lighting, "Cross to"));
}

/* An altar that is turned has its sides with it. */
static void
test_turned (void)
{
  g_auto (Church) c = sanctuary_new (2, 500, FALSE, 90, FP_CELEBRATION_LOW);
  g_autoptr (FpOrder) order = fp_order_new (c.set, &FP_ORDER_USUAL);
  guint n;
  const FpOrderLight *light = fp_order_lights (order, &n);

  g_assert_cmpuint (n, ==, 2);
  g_assert_cmpint (light[0].side, ==, FP_EPISTLE_SIDE);
  /* its own +x points along +y of the church */
  g_assert_cmpfloat_with_epsilon (light[0].at.y - light[1].at.y, 600, 1e-6);
}

/* He stands 250 before an altar 900 deep: 700 from the wick on the level; the wick is 1000 + stick + 300 above him, his
 * shoulder 1200.  Pythagoras. */
static void
test_reach (void)
{
  static const struct { double stick, away; gboolean reached; } rows[] = {
    { 500, 921.954445729, TRUE },   /* 700, 600   */
    { 1280, 1547.384891358, TRUE }, /* 700, 1380  */
    { 1290, 1556.309738, FALSE },   /* 700, 1390  */
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_auto (Church) c = sanctuary_new (2, rows[i].stick, FALSE, 0, FP_CELEBRATION_LOW);
      g_autoptr (FpOrder) order = fp_order_new (c.set, &FP_ORDER_USUAL);
      g_autoptr (GPtrArray) cautions = fp_order_cautions (order, FP_UNITS_METRIC);
      guint n;
      const FpOrderLight *light = fp_order_lights (order, &n);

      g_assert_cmpfloat_with_epsilon (light[0].height, 1300 + rows[i].stick, 1e-6);
      g_assert_cmpfloat_with_epsilon (light[0].away, rows[i].away, 1e-4);
      g_assert_true (light[0].reached == rows[i].reached);
      g_assert_cmpuint (cautions->len, ==, rows[i].reached ? 0 : 1);
      g_assert_true (rows[i].reached || strstr (cautions->pdata[0], "Candles 1 and 2 are out of reach with a pole of") != NULL);
    }
}

/* A tabernacle 500 wide that rises above the flames, 300 from its axis: 50 beside it. */
static void
test_flames (void)
{
  g_auto (Church) c = sanctuary_new (2, 500, TRUE, 0, FP_CELEBRATION_LOW);
  g_autoptr (FpOrder) order = fp_order_new (c.set, &FP_ORDER_USUAL);
  g_autoptr (GPtrArray) cautions = fp_order_cautions (order, FP_UNITS_METRIC);
  guint n;
  const FpOrderLight *light = fp_order_lights (order, &n);

  g_assert_cmpint (light[0].beside, ==, fp_scene_find (c.set, "house"));
  g_assert_cmpfloat_with_epsilon (light[0].beside_by, 50, 1e-6);
  g_assert_cmpuint (cautions->len, ==, 1);
  g_assert_nonnull (strstr (cautions->pdata[0], "Candles 1 and 2 are as near as 50 mm to Tabernacle."));
}

/* Nothing burns, so nothing is done. */
static void
test_nothing (void)
{
  g_auto (Church) c = sanctuary_new (6, 500, TRUE, 0, FP_CELEBRATION_GOOD_FRIDAY);
  g_autoptr (FpOrder) order = fp_order_new (c.set, &FP_ORDER_USUAL);
  g_autoptr (GArray) steps = fp_order_steps (order, FALSE);
  guint n;

  fp_order_lights (order, &n);
  g_assert_cmpuint (n, ==, 0);
  g_assert_cmpuint (steps->len, ==, 0);
  g_assert_false (fp_order_genuflects (order));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/order/one-server", test_one_server);
  g_test_add_func ("/order/gospel-first", test_gospel_first);
  g_test_add_func ("/order/two-servers", test_two_servers);
  g_test_add_func ("/order/turned", test_turned);
  g_test_add_func ("/order/reach", test_reach);
  g_test_add_func ("/order/flames", test_flames);
  g_test_add_func ("/order/nothing", test_nothing);
  return g_test_run ();
}
