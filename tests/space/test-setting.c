/* SPDX-License-Identifier: GPL-3.0-or-later */
/* test-setting.c - what stands, is veiled and burns */
#include "church.h"

#include "footpace/scene.h"

#include <math.h>
#include <string.h>

#define SOME(...) { __VA_ARGS__, { NULL, 0 } }

/* An altar on its footpace with a cross and @n candlesticks, and some on the floor beside it. */
static FpProject *
sanctuary_new (guint n, guint beside)
{
  FpProject *p = church_new (FP_FACING_EAST);
  const ChurchThing footpace = { .id = "footpace", .kind = "footpace", .place = { 0, 4000, 0 } };
  const ChurchThing altar = { .id = "altar", .kind = "altar", .on = "footpace", .place = { 0, 4000, 0 } };
  const ChurchThing cross = { .id = "cross", .kind = "crucifix", .on = "altar" };
  const ChurchThing candles = { .id = "candles", .kind = "candlesticks", .on = "altar", .param = SOME ({ "count", n }) };
  const ChurchThing floor = { .id = "beside", .kind = "candlesticks", .place = { 0, 3000, 0 },
                              .param = SOME ({ "count", beside }, { "gap", 3000 }) };

  church_floor (&p, "floor", (FpBox) { -5000, -5000, 5000, 8000 }, 0, 1, 0, 0);
  church_add (&p, &footpace);
  church_add (&p, &altar);
  church_add (&p, &cross);
  church_add (&p, &candles);
  if (beside > 0)
    church_add (&p, &floor);
  return p;
}

static void
say (FpProject **p, FpCelebration one, const char *id, FpSettingChange change)
{
  FpProject *next = fp_project_with_setting (*p, 0, one, id, &change, NULL);

  g_assert_nonnull (next);
  fp_project_unref (*p);
  *p = next;
}

/* Catholic Encyclopedia I (1907), Altar Candles, p. 348, and GIRM 117 (sources of each line: see setting-table.c). */
static void
test_lit (void)
{
  static const struct { guint on, beside; FpCelebration one; guint lit, of_them_on; } rows[] = {
    { 6, 0, FP_CELEBRATION_LOW, 2, 2 },
    { 6, 0, FP_CELEBRATION_SUNG, 6, 6 },
    { 4, 0, FP_CELEBRATION_SUNG, 4, 4 },
    { 6, 0, FP_CELEBRATION_SOLEMN, 6, 6 },
    { 7, 0, FP_CELEBRATION_SOLEMN, 6, 6 },
    { 7, 0, FP_CELEBRATION_PONTIFICAL, 7, 7 },
    { 7, 0, FP_CELEBRATION_REQUIEM, 6, 6 },
    { 6, 0, FP_CELEBRATION_GOOD_FRIDAY, 0, 0 },
    { 2, 4, FP_CELEBRATION_SUNG, 2, 2 },    /* older form: on the altar          */
    { 2, 4, FP_CELEBRATION_SUNDAY, 6, 2 },  /* newer form: or beside it          */
    { 2, 4, FP_CELEBRATION_WEEKDAY, 2, 2 },
    { 6, 6, FP_CELEBRATION_BENEDICTION, 12, 6 },
    { 1, 6, FP_CELEBRATION_BISHOP, 7, 1 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (FpProject) p = sanctuary_new (rows[i].on, rows[i].beside);
      g_autoptr (FpSetting) setting = fp_setting_of (p, 0, rows[i].one);

      g_test_message ("row %u", i);
      g_assert_cmpuint (fp_setting_lit (setting, NULL, NULL, NULL), ==, rows[i].lit);
      g_assert_cmpuint (fp_setting_find (setting, "candles")->lit, ==, rows[i].of_them_on);
      g_assert_cmpuint (fp_setting_find (setting, "candles")->lights, ==, rows[i].on);
    }
}

/* Pairs, from the cross outward; the middle one only of an odd number. */
static void
test_which_burn (void)
{
  for (guint count = 2; count <= 7; count++)
    for (guint lit = 0; lit <= count; lit++)
      {
        g_autoptr (FpProject) p = sanctuary_new (count, 0);
        g_autoptr (FpScene) whole = NULL, set = NULL;
        g_autoptr (GArray) lights = NULL;
        double farthest = -1, nearest_dark = INFINITY;
        int n = 0, gospel = 0, epistle = 0;

        say (&p, FP_CELEBRATION_SUNG, "candles", (FpSettingChange) { FP_UNSAID, FP_UNSAID, (int) lit });
        whole = fp_scene_new (p, 0);
        set = fp_scene_new_set (whole, FP_CELEBRATION_SUNG);
        lights = fp_scene_lights (set);
        g_assert_cmpuint (lights->len, ==, count);
        for (guint i = 0; i < count; i++)
          {
            const FpLight *light = &g_array_index (lights, FpLight, i);

            n += light->lit;
            gospel += light->lit && light->at.x < -1;
            epistle += light->lit && light->at.x > 1;
            if (light->lit)
              farthest = MAX (farthest, fabs (light->at.x));
            else if (fabs (light->at.x) > 1)
              nearest_dark = MIN (nearest_dark, fabs (light->at.x));
          }
        g_assert_cmpint (n, ==, (int) lit);
        g_assert_true (gospel == epistle || (gospel + 1 == epistle && count % 2 == 0 && lit % 2 == 1));
        g_assert_cmpfloat (farthest, <=, nearest_dark + 0.5);
      }
}

/* Nothing black hangs before the Blessed Sacrament (custom and decrees, from memory). */
static void
test_colour_of (void)
{
  g_autoptr (FpProject) p = sanctuary_new (6, 0);
  g_autoptr (FpSetting) requiem = fp_setting_of (p, 0, FP_CELEBRATION_REQUIEM);
  g_autoptr (FpSetting) passiontide = fp_setting_of (p, 0, FP_CELEBRATION_PASSIONTIDE);
  const gboolean kept = fp_setting_find (requiem, "tabernacle") != NULL;

  g_assert_cmpint (fp_setting_colour (requiem, NULL), ==, FP_COLOUR_BLACK);
  g_assert_cmpint (fp_setting_colour_of (requiem, FP_ROLE_TABERNACLE_VEIL), ==, FP_COLOUR_VIOLET);
  g_assert_cmpint (fp_setting_colour_of (requiem, FP_ROLE_FRONTAL), ==, kept ? FP_COLOUR_VIOLET : FP_COLOUR_BLACK);
  g_assert_cmpint (fp_setting_colour_of (requiem, FP_ROLE_VESSELS), ==, FP_COLOUR_BLACK);
  g_assert_cmpint (fp_setting_colour_of (passiontide, FP_ROLE_FRONTAL), ==, FP_COLOUR_VIOLET);
}

/* What the alternative says goes before the table, and is told as its own. */
static void
test_decided (void)
{
  g_autoptr (FpProject) p = sanctuary_new (6, 0);
  g_autoptr (FpSetting) was = fp_setting_of (p, 0, FP_CELEBRATION_PASSIONTIDE), setting = NULL;

  g_assert_true (fp_setting_find (was, "cross")->veiled);
  g_assert_nonnull (strstr (fp_setting_find (was, "cross")->veiling.source, "from memory"));
  g_assert_cmpint (fp_setting_colour (was, NULL), ==, FP_COLOUR_VIOLET);
  say (&p, FP_CELEBRATION_PASSIONTIDE, "cross", (FpSettingChange) { FP_UNSAID, FP_SAID_NO, FP_LIT_UNSAID });
  say (&p, FP_CELEBRATION_PASSIONTIDE, "candles", (FpSettingChange) { FP_UNSAID, FP_UNSAID, 400 });
  setting = fp_setting_of (p, 0, FP_CELEBRATION_PASSIONTIDE);
  g_assert_false (fp_setting_find (setting, "cross")->veiled);
  g_assert_cmpstr (fp_setting_find (setting, "cross")->veiling.why, ==, FP_SETTING_DECIDED);
  g_assert_cmpuint (fp_setting_find (setting, "candles")->lit, ==, 6);
  g_assert_true (fp_setting_find (setting, "altar")->stands);
  g_assert_null (fp_setting_find (setting, "altar")->standing.why);
}

/* The scene is without what does not stand, in the survey too, and nothing is told as removed. */
static void
test_scene (void)
{
  g_autoptr (FpProject) p = sanctuary_new (6, 0);
  const ChurchThing old = { .id = "old", .kind = "credence", .place = { 3000, 3000, 0 } };
  g_autoptr (FpScene) whole = NULL, bare = NULL, again = NULL;
  guint n_whole, n_bare, n_solids, n_before;

  church_survey (&p, &old);
  say (&p, FP_CELEBRATION_GOOD_FRIDAY, "old", (FpSettingChange) { FP_SAID_NO, FP_UNSAID, FP_LIT_UNSAID });
  whole = fp_scene_new (p, 0);
  bare = fp_scene_new_set (whole, FP_CELEBRATION_GOOD_FRIDAY);
  fp_scene_placed (whole, &n_whole);
  fp_scene_placed (bare, &n_bare);
  g_assert_cmpuint (n_bare, ==, n_whole - 3);
  g_assert_cmpint (fp_scene_find (bare, "cross"), ==, -1);
  g_assert_cmpint (fp_scene_find (bare, "candles"), ==, -1);
  g_assert_cmpint (fp_scene_find (bare, "old"), ==, -1);
  g_assert_cmpint (fp_scene_find (bare, "altar"), >=, 0);
  for (guint i = 0; i < n_bare; i++)
    g_assert_false (fp_scene_placed (bare, NULL)[i].ghost);
  g_assert_true (fp_scene_project (bare) == p);
  g_assert_cmpint (fp_setting_celebration (fp_scene_setting (bare)), ==, FP_CELEBRATION_GOOD_FRIDAY);
  /* where nothing is left out, it is the same church */
  again = fp_scene_new_set (whole, FP_CELEBRATION_SUNG);
  fp_scene_solids (whole, &n_before);
  fp_scene_solids (again, &n_solids);
  g_assert_cmpuint (n_solids, ==, n_before);
}

/* What stands on a thing goes with it. */
static void
test_carried (void)
{
  g_autoptr (FpProject) p = sanctuary_new (2, 0);
  const ChurchThing gradine = { .id = "gradine", .kind = "gradine", .on = "altar" };
  const ChurchThing more = { .id = "more", .kind = "candlesticks", .on = "gradine", .param = SOME ({ "count", 4 }) };
  g_autoptr (FpSetting) setting = NULL;

  church_add (&p, &gradine);
  church_add (&p, &more);
  say (&p, FP_CELEBRATION_SOLEMN, "gradine", (FpSettingChange) { FP_SAID_NO, FP_UNSAID, FP_LIT_UNSAID });
  setting = fp_setting_of (p, 0, FP_CELEBRATION_SOLEMN);
  g_assert_false (fp_setting_find (setting, "more")->stands);
  g_assert_cmpuint (fp_setting_find (setting, "more")->lit, ==, 0);
  g_assert_cmpuint (fp_setting_lit (setting, NULL, NULL, NULL), ==, 2);
}

/* Nothing in the table is without a source, and nothing is told twice. */
static void
test_table (void)
{
  for (guint i = 0; i < FP_N_CELEBRATIONS; i++)
    {
      g_autoptr (FpProject) p = sanctuary_new (6, 2);
      g_autoptr (FpSetting) setting = fp_setting_of (p, 0, (FpCelebration) (1u << i));
      guint n, least, most;
      FpReason reason;
      const FpSetThing *thing = fp_setting_things (setting, &n);
      const guint lit = fp_setting_lit (setting, &least, &most, &reason);

      g_assert_cmpuint (strlen (reason.source), >, 0);
      g_assert_true (most == 0 || lit <= most);
      g_assert_true (most == 0 || least <= most);
      for (guint k = 0; k < n; k++)
        {
          g_assert_true (thing[k].stands || thing[k].standing.why != NULL);
          g_assert_true (!thing[k].veiled || thing[k].veiling.why != NULL);
          g_assert_cmpuint (thing[k].lit, <=, thing[k].lights);
        }
    }
}

/* What is not always there: of each, whether it stands and how many of its lights burn (setting-table.c has the sources). */
static void
test_small_things (void)
{
  static const struct { const char *kind; FpCelebration one; gboolean stands; guint lit; } rows[] = {
    { "altar-cards", FP_CELEBRATION_LOW, TRUE, 0 },
    { "altar-cards", FP_CELEBRATION_SUNDAY, FALSE, 0 },
    { "flowers", FP_CELEBRATION_SOLEMN, TRUE, 0 },
    { "flowers", FP_CELEBRATION_REQUIEM, FALSE, 0 },
    { "sanctus-candle", FP_CELEBRATION_SUNG, TRUE, 1 },
    { "sanctus-candle", FP_CELEBRATION_WEEKDAY, FALSE, 0 },
    { "hand-bell", FP_CELEBRATION_GOOD_FRIDAY, FALSE, 0 },
    { "seventh-candle", FP_CELEBRATION_SOLEMN, FALSE, 0 },
    { "frontal", FP_CELEBRATION_GOOD_FRIDAY, FALSE, 0 },
    { "altar-cloths", FP_CELEBRATION_GOOD_FRIDAY, FALSE, 0 },
    { "branched-lights", FP_CELEBRATION_SOLEMN, TRUE, 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (FpProject) p = sanctuary_new (2, 0);
      const ChurchThing small = { .id = "small", .kind = rows[i].kind, .on = "altar" };
      g_autoptr (FpSetting) setting = NULL;

      church_add (&p, &small);
      setting = fp_setting_of (p, 0, rows[i].one);
      g_test_message ("%s, %s", rows[i].kind, fp_celebration_id (rows[i].one));
      g_assert_true (fp_setting_find (setting, "small")->stands == rows[i].stands);
      g_assert_cmpuint (fp_setting_find (setting, "small")->lit, ==, rows[i].lit);
      g_assert_false (fp_setting_find (setting, "small")->about);
    }
}

/* Lamps burn always but when the tabernacle is empty; images are veiled with the crosses. */
static void
test_lamp_and_statue (void)
{
  g_autoptr (FpProject) p = sanctuary_new (6, 0);
  const ChurchThing lamp = { .id = "lamp", .kind = "sanctuary-lamp", .place = { 0, 2000, 0 } };
  const ChurchThing statue = { .id = "statue", .kind = "statue", .place = { 3000, 5000, 0 } };
  g_autoptr (FpSetting) low = NULL, passiontide = NULL, friday = NULL;

  church_add (&p, &lamp);
  church_add (&p, &statue);
  low = fp_setting_of (p, 0, FP_CELEBRATION_LOW);
  passiontide = fp_setting_of (p, 0, FP_CELEBRATION_PASSIONTIDE);
  friday = fp_setting_of (p, 0, FP_CELEBRATION_GOOD_FRIDAY);
  g_assert_cmpuint (fp_setting_find (low, "lamp")->lights, >, 0);
  g_assert_cmpuint (fp_setting_find (low, "lamp")->lit, ==, fp_setting_find (low, "lamp")->lights);
  g_assert_cmpuint (fp_setting_find (friday, "lamp")->lit, ==, 0);
  g_assert_false (fp_setting_find (low, "lamp")->about); /* no candle of the altar */
  g_assert_false (fp_setting_find (low, "statue")->veiled);
  g_assert_true (fp_setting_find (passiontide, "statue")->veiled);
}

/* Candelabra count before the Blessed Sacrament exposed, and not at Mass. */
static void
test_candelabra (void)
{
  g_autoptr (FpProject) p = sanctuary_new (6, 0);
  const ChurchThing branched = { .id = "branched", .kind = "branched-lights", .on = "altar" };
  g_autoptr (FpSetting) mass = NULL, benediction = NULL;

  church_add (&p, &branched);
  mass = fp_setting_of (p, 0, FP_CELEBRATION_SOLEMN);
  benediction = fp_setting_of (p, 0, FP_CELEBRATION_BENEDICTION);
  g_assert_cmpuint (fp_setting_lit (mass, NULL, NULL, NULL), ==, 6);
  g_assert_cmpuint (fp_setting_lit (benediction, NULL, NULL, NULL), ==,
                    6 + fp_setting_find (benediction, "branched")->lights);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/setting/lit", test_lit);
  g_test_add_func ("/setting/which-burn", test_which_burn);
  g_test_add_func ("/setting/colour-of", test_colour_of);
  g_test_add_func ("/setting/decided", test_decided);
  g_test_add_func ("/setting/scene", test_scene);
  g_test_add_func ("/setting/carried", test_carried);
  g_test_add_func ("/setting/small-things", test_small_things);
  g_test_add_func ("/setting/lamp-and-statue", test_lamp_and_statue);
  g_test_add_func ("/setting/candelabra", test_candelabra);
  g_test_add_func ("/setting/table", test_table);
  return g_test_run ();
}
