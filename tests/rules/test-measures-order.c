/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sides, the middle of the altar, lights and flames. */
#include "taking.h"

static FpProject *
church (void)
{
  return taking_church (FP_BOOKS_BOTH, FP_FACING_EAST, FP_CELEBRATION_LOW | FP_CELEBRATION_SUNDAY);
}

/* --- sides --------------------------------------------------------------- */

/* Gospel side is left as seen from the nave facing the altar, Epistle side right (Wikipedia, "Epistle side"): x grows to
 * the right. */
static void
test_sides (void)
{
  g_autoptr (FpProject) project = church ();

  assert_measure (project, "credences", 0);
  g_assert_cmpuint (taking_count (project, "credence-epistle"), ==, 0);
  taking_add (&project, "credence", "credence", NULL, -3000, 8000, NULL, 0);
  assert_measure (project, "credence-epistle", 0);
  assert_short (project, "older-form:credence-side");
  taking_add (&project, "credence", "credence-2", NULL, 3000, 8000, NULL, 0);
  assert_measure (project, "credence-epistle", 1);
  assert_measure (project, "credences", 2);
  assert_within (project, "older-form:credence-side");

  taking_add (&project, "sedilia", "sedilia", NULL, 3500, 5000, NULL, 0);
  assert_measure (project, "sedilia-epistle", 1);
  assert_measure (project, "ministers-seats", 3);
  church_param (&project, "sedilia", "seats", 1);
  assert_measure (project, "ministers-seats", 1);
}

/* UFC 4-730-02, 2h(5), 30 × 12 in, and Burnett's 360 sq in are the same area. */
static void
test_credence_area (void)
{
  g_autoptr (FpProject) project = church ();

  taking_add (&project, "credence", "credence", NULL, 3000, 8000, "length", 762);
  church_param (&project, "credence", "depth", 304.8);
  assert_measure (project, "credence-area", 360 * 25.4 * 25.4);
  assert_within (project, "either-form:credence-size");
  church_param (&project, "credence", "depth", 300);
  assert_short (project, "either-form:credence-size");
}

static void
test_counts (void)
{
  g_autoptr (FpProject) project = church ();

  assert_measure (project, "ambos", 0);
  assert_measure (project, "chairs", 0);
  assert_measure (project, "tabernacles", 0);
  assert_measure (project, "crucifixes", 0);
  taking_add (&project, "ambo", "ambo", NULL, -3000, 2000, NULL, 0);
  taking_add (&project, "chair", "chair", NULL, 3000, 2000, NULL, 0);
  assert_measure (project, "ambos", 1);
  assert_measure (project, "ambo-desk", 1050);
  assert_measure (project, "chairs", 1);
}

/* --- the middle ---------------------------------------------------------- */

static void
test_middle (void)
{
  g_autoptr (FpProject) project = church ();

  taking_altar_group (&project, 6);
  assert_measure (project, "crucifix-off-middle", 0);
  taking_add (&project, "crucifix", "cross", "gradine", -40, 0, NULL, 0);
  assert_measure (project, "crucifix-off-middle", 40);
  assert_short (project, "older-form:crucifix-middle");

  taking_add (&project, "tabernacle", "tabernacle", "altar", 30, 0, NULL, 0);
  assert_measure (project, "tabernacle-off-middle", 30);
  assert_measure (project, "tabernacle-on-altar", 1);
  assert_short (project, "newer-form:tabernacle-apart");
  taking_add (&project, "tabernacle", "tabernacle", NULL, 30, 9000, NULL, 0);
  assert_measure (project, "tabernacle-on-altar", 0);
  g_assert_cmpuint (taking_count (project, "tabernacle-off-middle"), ==, 0);
}

/* Two altars: facing the people, the freestanding one nearest to them is the altar of celebration. */
static void
test_celebration (void)
{
  g_autoptr (FpProject) project = church ();

  church_param (&project, "altar", "setting", 1);
  taking_add (&project, "tabernacle", "tabernacle", "altar", 0, 0, NULL, 0);
  taking_add (&project, "altar", "new-altar", NULL, 0, 3000, "length", 1800);
  assert_measure (project, "mensa-length", 2400);
  assert_measure (project, "tabernacle-on-altar", 1);
  taking_brief (&project, FP_BOOKS_NEWER, FP_FACING_PEOPLE, FP_CELEBRATION_SUNDAY);
  assert_measure (project, "mensa-length", 1800);
  assert_measure (project, "altar-freestanding", 1);
  assert_measure (project, "tabernacle-on-altar", 0);
  assert_measure (project, "altars", 2);
}

/* E. Ryan, Liturgical Arts I (1931): the bottom of the figure is never below the tops of
 * the candlesticks.  With tops 500 above the gradine it is short at 480, and at 500 it is not. */
static void
test_corpus (void)
{
  g_autoptr (FpProject) project = church ();

  taking_altar_group (&project, 6);
  church_param (&project, "sticks", "height", 500);
  church_param (&project, "cross", "corpus", 480);
  assert_measure (project, "corpus-over-sticks", -20);
  assert_short (project, "older-form:corpus-over-candlesticks");
  church_param (&project, "cross", "corpus", 500);
  assert_measure (project, "corpus-over-sticks", 0);
  assert_within (project, "older-form:corpus-over-candlesticks");

  /* Graded by 60, the innermost of three a side stand at 620. */
  church_param (&project, "sticks", "grading", 1);
  assert_measure (project, "corpus-over-sticks", -120);
  g_assert_cmpuint (taking_count (project, "cross-over-sticks"), ==, 1);
  assert_short (project, "older-form:cross-over-candlesticks");
}

/* --- lights -------------------------------------------------------------- */

/* A. J. Schulte, "Altar-Candles", Catholic Encyclopedia I (1907), p. 348; GIRM (3rd ed.) 117; of three or five the
 * documents are silent: P. Turner, "Items on the altar" (web page, undated). */
static void
test_candles (void)
{
  static const struct
  {
    FpBooks books; guint celebration; double candles; const char *rule; gboolean within;
  } rows[] = {
    { FP_BOOKS_OLDER, FP_CELEBRATION_LOW, 2, "older-form:candles-low", TRUE },
    { FP_BOOKS_OLDER, FP_CELEBRATION_LOW, 6, "older-form:candles-low", FALSE },
    { FP_BOOKS_OLDER, FP_CELEBRATION_SUNG, 2, "older-form:candles-sung", FALSE },
    { FP_BOOKS_OLDER, FP_CELEBRATION_SUNG, 4, "older-form:candles-sung", TRUE },
    { FP_BOOKS_OLDER, FP_CELEBRATION_SUNG, 6, "older-form:candles-sung", TRUE },
    { FP_BOOKS_OLDER, FP_CELEBRATION_SOLEMN, 6, "older-form:candles-solemn", TRUE },
    { FP_BOOKS_OLDER, FP_CELEBRATION_SOLEMN, 7, "older-form:candles-solemn", FALSE },
    { FP_BOOKS_OLDER, FP_CELEBRATION_PONTIFICAL, 7, "older-form:candles-pontifical", TRUE },
    { FP_BOOKS_OLDER, FP_CELEBRATION_PONTIFICAL, 6, "older-form:candles-pontifical", FALSE },
    { FP_BOOKS_NEWER, FP_CELEBRATION_SUNDAY, 1, "newer-form:candles-two", FALSE },
    { FP_BOOKS_NEWER, FP_CELEBRATION_SUNDAY, 2, "newer-form:candles-number", TRUE },
    { FP_BOOKS_NEWER, FP_CELEBRATION_SUNDAY, 4, "newer-form:candles-number", TRUE },
    { FP_BOOKS_NEWER, FP_CELEBRATION_SUNDAY, 6, "newer-form:candles-number", TRUE },
    { FP_BOOKS_NEWER, FP_CELEBRATION_SUNDAY, 3, "newer-form:candles-number", FALSE }, /* a note: customary */
    { FP_BOOKS_NEWER, FP_CELEBRATION_SUNDAY, 5, "newer-form:candles-two", TRUE },
    { FP_BOOKS_NEWER, FP_CELEBRATION_BISHOP, 7, "newer-form:candles-bishop", TRUE },
    { FP_BOOKS_NEWER, FP_CELEBRATION_BISHOP, 6, "newer-form:candles-bishop", FALSE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autoptr (FpProject) project = taking_church (rows[i].books, FP_FACING_EAST, rows[i].celebration);

      taking_altar_group (&project, rows[i].candles);
      g_test_message ("%g candles, %s", rows[i].candles, rows[i].rule);
      g_assert_cmpstr (fp_found_id (taking_found (project, rows[i].rule)), ==, rows[i].within ? "within" : "short");
    }
}

/* Six stand for solemn Mass, two of them are lit at low Mass. */
static void
test_unlit (void)
{
  g_autoptr (FpProject) project
    = taking_church (FP_BOOKS_OLDER, FP_FACING_EAST, FP_CELEBRATION_LOW | FP_CELEBRATION_SOLEMN);

  taking_altar_group (&project, 6);
  assert_measure (project, "candles-low", 2);
  assert_measure (project, "candles-solemn", 6);
  taking_brief (&project, FP_BOOKS_OLDER, FP_FACING_EAST, FP_CELEBRATION_LOW | FP_CELEBRATION_PONTIFICAL);
  church_param (&project, "sticks", "count", 7);
  assert_measure (project, "candles-low", 2);
  assert_measure (project, "candles-pontifical", 7);
  g_assert_cmpstr (fp_found_id (taking_found (project, "older-form:candles-solemn")), ==, "apart");
}

/* The seventh counts where the bishop celebrates and nowhere else; candelabra and the Sanctus candle never do (A. J. Schulte,
 * "Altar-Candles" and "Altar-Candlesticks", Catholic Encyclopedia I, 1907). */
static void
test_counted (void)
{
  g_autoptr (FpProject) project = taking_church (FP_BOOKS_OLDER, FP_FACING_EAST, FP_CELEBRATION_PONTIFICAL);

  taking_altar_group (&project, 6);
  assert_measure (project, "candles-pontifical", 6);
  taking_add (&project, "seventh-candle", "seventh", "gradine", 0, 0, NULL, 0);
  taking_add (&project, "branched-lights", "candelabra", "altar", 0, 0, NULL, 0);
  taking_add (&project, "sanctus-candle", "sanctus", "altar", 900, 0, NULL, 0);
  assert_measure (project, "candles-pontifical", 7);
  assert_within (project, "older-form:candles-pontifical");
  taking_brief (&project, FP_BOOKS_OLDER, FP_FACING_EAST, FP_CELEBRATION_SOLEMN);
  assert_measure (project, "candles-solemn", 6);
  assert_within (project, "older-form:candles-solemn");
}

static void
decide_lit (FpProject **project, FpCelebration one, int lit)
{
  const FpSettingChange change = { FP_UNSAID, FP_UNSAID, lit };
  FpProject *next = fp_project_with_setting (*project, 0, one, "sticks", &change, NULL);

  g_assert_nonnull (next);
  fp_project_unref (*project);
  *project = next;
}

/* What was decided of the setting is measured, of that celebration alone; what the board shows set likewise. */
static void
test_decided (void)
{
  g_autoptr (FpProject) project = taking_church (FP_BOOKS_OLDER, FP_FACING_EAST, FP_CELEBRATION_LOW);
  g_autoptr (FpScene) whole = NULL, set = NULL;

  taking_altar_group (&project, 6);
  assert_short (project, "older-form:candles-low");
  decide_lit (&project, FP_CELEBRATION_LOW, 2);
  assert_within (project, "older-form:candles-low");
  assert_measure (project, "candles-low", 2);
  assert_measure (project, "candles-solemn", 6);
  decide_lit (&project, FP_CELEBRATION_LOW, FP_LIT_UNSAID);
  assert_measure (project, "candles-low", 6);
  whole = fp_scene_new (project, 0);
  set = fp_scene_new_set (whole, FP_CELEBRATION_LOW);
  {
    g_autoptr (FpPeople) people = fp_people_new (set);
    const FpMeasuring of = { set, people, fp_levels (people), NULL };
    g_autoptr (GArray) low = fp_measure_take (fp_measure_find ("candles-low"), &of);

    g_assert_cmpuint (low->len, ==, 1);
    g_assert_cmpfloat (g_array_index (low, FpMeasured, 0).value, ==, 2);
  }
}

/* A. J. Schulte (1907), p. 348: never the seventh at a Requiem; twelve at Benediction: from memory. */
static void
test_by_setting (void)
{
  g_autoptr (FpProject) project
    = taking_church (FP_BOOKS_OLDER, FP_FACING_EAST, FP_CELEBRATION_REQUIEM | FP_CELEBRATION_BENEDICTION);

  taking_altar_group (&project, 7);
  assert_measure (project, "candles-requiem", 6);
  assert_within (project, "older-form:candles-requiem");
  decide_lit (&project, FP_CELEBRATION_REQUIEM, 7);
  assert_short (project, "older-form:candles-requiem");
  assert_measure (project, "candles-benediction", 7);
  assert_short (project, "older-form:candles-benediction");
  taking_add (&project, "candlesticks", "standing", "steps", 0, 0, "count", 6);
  assert_measure (project, "candles-benediction", 13);
  assert_within (project, "older-form:candles-benediction");
}

static void
take_away (FpProject **project, FpCelebration one, const char *id)
{
  const FpSettingChange change = { FP_SAID_NO, FP_UNSAID, FP_LIT_UNSAID };
  FpProject *next = fp_project_with_setting (*project, 0, one, id, &change, NULL);

  g_assert_nonnull (next);
  fp_project_unref (*project);
  *project = next;
}

/* Of what is drawn, at each Mass that the brief asks for, whichever was decided otherwise; never on Good Friday. */
static void
test_missing (void)
{
  g_autoptr (FpProject) project
    = taking_church (FP_BOOKS_BOTH, FP_FACING_EAST,
                     FP_CELEBRATION_LOW | FP_CELEBRATION_SUNG | FP_CELEBRATION_GOOD_FRIDAY | FP_CELEBRATION_SUNDAY);

  g_assert_cmpuint (taking_count (project, "cross-away-older"), ==, 0);
  g_assert_cmpuint (taking_count (project, "cards-away"), ==, 0);
  taking_altar_group (&project, 6);
  taking_add (&project, "altar-cards", "cards", "altar", 0, 0, NULL, 0);
  assert_measure (project, "cross-away-older", 0);
  assert_measure (project, "cross-away-newer", 0);
  assert_measure (project, "cards-away", 0);
  take_away (&project, FP_CELEBRATION_SUNG, "cards");
  assert_measure (project, "cards-away", 1);
  assert_short (project, "older-form:cards-at-each");
  for (guint i = 0; i < fp_alternative_n_items (fp_project_alternative (project, 0)); i++)
    {
      const FpItem *item = fp_alternative_item (fp_project_alternative (project, 0), i);

      if (fp_item_kind (item)->role != FP_ROLE_CRUCIFIX)
        continue;
      {
        g_autofree char *id = g_strdup (fp_item_id (item));

        take_away (&project, FP_CELEBRATION_SUNDAY, id);
      }
      break;
    }
  assert_measure (project, "cross-away-older", 0);
  assert_measure (project, "cross-away-newer", 1);
  assert_short (project, "newer-form:cross-at-each");
  assert_within (project, "older-form:cross-at-each");
}

/* GIRM 117 counts those beside the altar; the older rubrics only those that stand on it. */
static void
test_beside (void)
{
  g_autoptr (FpProject) project = church ();

  taking_add (&project, "candlesticks", "standing", "steps", 0, 0, "count", 4);
  assert_measure (project, "candles-newer", 4);
  assert_measure (project, "candles-solemn", 0);
  taking_add (&project, "candlesticks", "far", NULL, 0, 1000, "count", 2);
  assert_measure (project, "candles-newer", 4);
}

static void
test_spacing (void)
{
  g_autoptr (FpProject) project = church ();

  g_assert_cmpuint (taking_count (project, "candle-spacing"), ==, 0);
  taking_altar_group (&project, 6);
  church_param (&project, "sticks", "spacing", 200);
  assert_measure (project, "candle-spacing", 200);
}

/* City of Edmonton (1 ft) and FDNY Smart (4 ft), web pages, undated. By arithmetic: a dossal 300 from the flame is short
 * of 1 ft (305) and of 4 ft (1219); at 305 it passes the first. */
static void
test_flame (void)
{
  g_autoptr (FpProject) project = church ();

  taking_add (&project, "candlesticks", "sticks", "altar", 0, 0, "count", 2);
  g_assert_cmpuint (taking_count (project, "flame-clear"), ==, 0);

  /* The reredos is 200 deep, and the candles stand at y = 8000. */
  taking_add (&project, "reredos", "reredos", NULL, 0, 8400, NULL, 0);
  assert_measure (project, "flame-clear", 300);
  assert_short (project, "flame:flame-one-foot");
  assert_short (project, "flame:flame-four-feet");
  taking_add (&project, "reredos", "reredos", NULL, 0, 8405, NULL, 0);
  assert_within (project, "flame:flame-one-foot");
  assert_short (project, "flame:flame-four-feet");
  taking_add (&project, "reredos", "reredos", NULL, 0, 9320, NULL, 0);
  assert_within (project, "flame:flame-four-feet");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sides/sides", test_sides);
  g_test_add_func ("/sides/credence-area", test_credence_area);
  g_test_add_func ("/sides/counts", test_counts);
  g_test_add_func ("/sides/middle", test_middle);
  g_test_add_func ("/sides/celebration", test_celebration);
  g_test_add_func ("/sides/corpus", test_corpus);
  g_test_add_func ("/lights/candles", test_candles);
  g_test_add_func ("/lights/unlit", test_unlit);
  g_test_add_func ("/lights/counted", test_counted);
  g_test_add_func ("/lights/decided", test_decided);
  g_test_add_func ("/lights/by-setting", test_by_setting);
  g_test_add_func ("/lights/missing", test_missing);
  g_test_add_func ("/lights/beside", test_beside);
  g_test_add_func ("/lights/spacing", test_spacing);
  g_test_add_func ("/lights/flame", test_flame);
  return g_test_run ();
}
