/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The diagram of levels: heights and lengths by its own scales, the rows that it marks, what it says, and that none of
 * its lettering lies on a line. */
#include "church.h"
#include "cover.h"
#include "footpace/drawing.h"
#include "footpace/level-diagram.h"
#include "footpace/store.h"

#include <math.h>
#include <string.h>

#define NAVE ((FpBox) { -8000, -20000, 8000, 0 })
#define ROOM ((FpBox) { 10, 10, 380, 220 })

static const FpLevelAims AIMS = { 1, { 101.6, 177.8 }, NULL };

/* A footpace of @count steps of @riser on a sanctuary at 300, and ten rows that rise @rise each. */
static FpProject *
church_of (double count, double riser, double rise)
{
  FpProject *project = church_new (FP_FACING_EAST);
  const ChurchThing steps = {
    "footpace", "steps", NULL, { 0, 0, 0 }, NULL, 0, { { "riser", riser }, { "count", count }, { NULL, 0 } },
  };
  const ChurchThing altar = { "altar", "altar", "steps", { 0, 5000, 0 }, NULL, 0, { { "height", 980 }, { NULL, 0 } } };
  const ChurchThing pews = { "pews", "pews", NULL, { 0, -2000, 0 }, NULL, 0, { { "rise", rise }, { NULL, 0 } } };

  church_floor (&project, "nave", NAVE, 0, 0, 0, 0);
  church_floor (&project, "sanctuary", (FpBox) { -6000, 0, 6000, 9000 }, 300, 1, 0, 0);
  church_survey (&project, &pews);
  church_add (&project, &steps);
  church_add (&project, &altar);
  return project;
}

static FpLevelDiagram *
diagram_of (const FpProject *project)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene);

  return fp_level_diagram_new (people, &AIMS);
}

static FpDrawing *
drawn (const FpProject *project, FpBox room, double scale)
{
  g_autoptr (FpLevelDiagram) diagram = diagram_of (project);
  FpDrawing *drawing = fp_drawing_new (420, 297);

  g_assert_true (fp_level_diagram_fits (diagram, &room, scale));
  fp_level_diagram_draw (diagram, drawing, &room, scale);
  return drawing;
}

/* --- what is on the paper ------------------------------------------------------------ */

static gboolean
has_text (const FpDrawing *drawing, const char *text)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_TEXT && strstr (mark[i].text, text) != NULL)
      return TRUE;
  return FALSE;
}

/* The first line of that pen; fails where there is none. */
static const FpPoint *
line_of (const FpDrawing *drawing, FpPen pen)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_LINE && mark[i].pen == pen)
      return &fp_drawing_points (drawing)[mark[i].first];
  g_assert_not_reached ();
}

/* Full ones of that pen, level marks apart. */
static guint
count_triangles (const FpDrawing *drawing)
{
  guint n, found = 0;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    found += mark[i].type == FP_MARK_AREA && mark[i].fill == FP_FILL_INK && mark[i].pen == FP_PEN_EDGE ? 1 : 0;
  return found;
}

/* --- scales ----------------------------------------------------------------------------- */

/* 29 m are 145 mm at 1:200; from the floor to the mensa, at 300 + 450 + 980 = 1730, are 8.65 mm, and with 10 times
 * 86.5: 20 times would be 173, for which what the words leave of 210 mm is too little. */
static void
test_scales (void)
{
  g_autoptr (FpProject) project = church_of (3, 150, 0);
  g_autoptr (FpLevelDiagram) diagram = diagram_of (project);
  g_autoptr (FpDrawing) drawing = drawn (project, ROOM, 200);
  const FpBox low = { 10, 10, 380, 110 }, narrow = { 10, 10, 100, 220 };
  const FpPoint *footpace = line_of (drawing, FP_PEN_AXIS), *mensa = line_of (drawing, FP_PEN_HIDDEN);

  g_assert_cmpfloat (fp_level_diagram_heights (diagram, &ROOM, 200), ==, 10);
  g_assert_cmpfloat (mensa[0].y - footpace[0].y, <, 980 / 200.0 * 10 + 1e-9);
  g_assert_cmpfloat_with_epsilon (mensa[0].y - footpace[0].y, 980 / 200.0 * 10, 1e-9);
  /* From the west end of the nave, on the right as in the section, to the altar, whose middle lies at 5000. */
  g_assert_cmpfloat_with_epsilon (mensa[0].x, footpace[0].x, 1e-9);
  g_assert_cmpfloat (fabs (mensa[0].x - mensa[1].x - 25000 / 200.0), <, 5);
  g_assert_true (has_text (drawing, "1:200, heights 10 times"));
  g_assert_cmpfloat (fp_level_diagram_heights (diagram, &low, 200), <=, 5);
  g_assert_cmpfloat (fp_level_diagram_heights (diagram, &narrow, 200), ==, 0);
  g_assert_false (fp_level_diagram_fits (diagram, &ROOM, 50));
  g_assert_false (fp_level_diagram_fits (diagram, &ROOM, 0));
}

/* --- what it shows ------------------------------------------------------------------------- */

/* The rows stand at 0, 90 … 810; the footpace at 750: the tenth is 60 above it. */
static void
test_marks (void)
{
  g_autoptr (FpProject) above = church_of (3, 150, 90), below = church_of (4, 150, 90);
  g_autoptr (FpDrawing) one = drawn (above, ROOM, 200), none = drawn (below, ROOM, 200);

  /* The row's, and that of the key. */
  g_assert_cmpuint (count_triangles (one), ==, 2);
  g_assert_cmpuint (count_triangles (none), ==, 0);
  g_assert_true (has_text (one, "−60"));
  g_assert_true (has_text (none, "90"));
  g_assert_true (has_text (one, "+0.811 wanted"));
  g_assert_false (has_text (none, "+0.811 wanted"));
  g_assert_true (has_text (one, "+0.750 altar's floor"));
  g_assert_true (has_text (one, "+1.730 mensa"));
  g_assert_true (has_text (one, "rows 1 to 10"));
}

static char *
words_of (const FpProject *project)
{
  g_autoptr (FpLevelDiagram) diagram = diagram_of (project);
  g_auto (GStrv) words = fp_level_diagram_words (diagram);

  return g_strjoinv (" ", words);
}

/* 811 - 300 = 511 = 3 x 170.33 in steps of at most 177.8. */
static void
test_words (void)
{
  g_autoptr (FpProject) project = church_of (3, 150, 90), flat = church_of (3, 150, 0);
  g_autoptr (FpProject) bare = church_new (FP_FACING_EAST);
  g_autofree char *words = words_of (project), *level = words_of (flat), *nothing = words_of (bare);

  g_assert_nonnull (strstr (words, "8 of 80 places are not below"));
  g_assert_nonnull (strstr (words, "60 mm above it"));
  g_assert_nonnull (strstr (words, "is at +0.811: from the floor of the sanctuary at +0.300 by 3 steps of 170.3 mm"));
  g_assert_nonnull (strstr (level, "All 80 places are below"));
  g_assert_nonnull (strstr (level, "is at +0.001: the floor of the sanctuary at +0.300 is as high"));
  g_assert_cmpstr (nothing, ==, "There is no altar.");
}

/* What is said of the first row is said elsewhere, and only told here. */
static void
test_first_row (void)
{
  g_autoptr (FpProject) project = church_of (3, 150, 0);
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  const FpLevelAims aims = { 1, { 101.6, 177.8 }, "The first row is told of." };
  g_autoptr (FpLevelDiagram) diagram = fp_level_diagram_new (people, &aims);
  g_auto (GStrv) words = fp_level_diagram_words (diagram);

  g_assert_true (g_strv_contains ((const char *const *) words, "The first row is told of."));
}

static void
add_pews (FpProject **project, const char *id, double x, const char *name)
{
  const ChurchThing pews = { "pews", id, NULL, { x, -2000, 0 }, NULL, 0, { { "rise", 0 }, { NULL, 0 } }, name };

  church_survey (project, &pews);
}

/* Two blocks beside each other: what both names begin with is said once. */
static void
test_beside (void)
{
  g_autoptr (FpProject) project = church_of (3, 150, 0);

  add_pews (&project, "pews", 0, "Pews, Gospel side");
  add_pews (&project, "pews-e", 5000, "Pews, Epistle side");
  {
    g_autoptr (FpDrawing) two = drawn (project, ROOM, 200);
    g_assert_true (has_text (two, "Pews, Gospel side and Epistle side, rows 1 to 10"));
  }
  add_pews (&project, "pews-n", -5000, "Pews, north");
  g_autoptr (FpDrawing) three = drawn (project, ROOM, 200);
  g_assert_true (has_text (three, "Pews, Gospel side and 2 blocks beside it, rows 1 to 10"));
}

static const FpMark *
text_of (const FpDrawing *drawing, const char *text)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_TEXT && strstr (mark[i].text, text) != NULL)
      return &mark[i];
  g_error ("no “%s”", text);
}

/* Altar and rail by name, the altar left of the rows. */
static void
test_things (void)
{
  g_autoptr (FpProject) project = church_of (3, 150, 0);
  const ChurchThing rail = { "rail", "rail", NULL, { 0, 500, 0 }, NULL, 0, { { NULL, 0 } }, "Rail of oak" };
  const ChurchThing altar = { "altar", "altar", "steps", { 0, 5000, 0 }, NULL, 0, { { NULL, 0 } }, "High altar" };

  church_add (&project, &rail);
  church_add (&project, &altar);
  g_autoptr (FpDrawing) drawing = drawn (project, ROOM, 200);

  g_assert_cmpfloat (text_of (drawing, "High altar")->at.x, <, text_of (drawing, "Rail of oak")->at.x);
  g_assert_cmpfloat (text_of (drawing, "Rail of oak")->at.x, <, text_of (drawing, "rows 1 to 10")->at.x);
}

static guint
count_upright (const FpDrawing *drawing)
{
  guint n, found = 0;
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  const FpPoint *pt = fp_drawing_points (drawing);

  for (guint i = 0; i < n; i++)
    found += mark[i].type == FP_MARK_LINE && mark[i].pen == FP_PEN_EDGE && fabs (pt[mark[i].first].x - pt[mark[i].first + 1].x) < 1e-9;
  return found;
}

/* People who differ: from the lowest to the highest eyes of each of ten rows; all of one stature: none, nor in the key. */
static void
test_spread (void)
{
  g_autoptr (FpProject) project = church_of (3, 150, 0);
  g_autoptr (FpDrawing) alike = drawn (project, ROOM, 200);

  g_assert_false (has_text (alike, "from the lowest to the highest"));
  church_floor (&project, "nave", NAVE, 0, 0, 0.02, 0); /* across the rows, so that eyes of one height are not level */
  g_autoptr (FpDrawing) falling = drawn (project, ROOM, 200);
  g_assert_cmpuint (count_upright (falling), ==, count_upright (alike));
  church_floor (&project, "nave", NAVE, 0, 0, 0, 0);
  church_population (&project, 1, 0);
  g_autoptr (FpDrawing) varied = drawn (project, ROOM, 200);
  g_assert_true (has_text (varied, "from the lowest to the highest"));
  g_assert_cmpuint (count_upright (varied), ==, count_upright (alike) + 11); /* one of the key */
}

/* --- lettering ------------------------------------------------------------------------------ */

static FpBox
box_of_text (const FpMark *mark)
{
  const double width = fp_lettering_width (mark->text, mark->height);
  const double x = mark->align == FP_ALIGN_LEFT ? 0 : mark->align == FP_ALIGN_MIDDLE ? -width / 2 : -width;

  if (mark->turn != 0)
    return (FpBox) { mark->at.x - mark->height, mark->at.y + x, mark->at.x, mark->at.y + x + width };
  return (FpBox) { mark->at.x + x, mark->at.y, mark->at.x + x + width, mark->at.y + mark->height };
}

static void
text_is_clear (const FpDrawing *drawing, const FpMark *text, const FpBox *paper)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  const FpPoint *pt = fp_drawing_points (drawing);
  const FpBox box = box_of_text (text);

  g_assert_true (box.x0 >= paper->x0 && box.x1 <= paper->x1 && box.y0 >= paper->y0 && box.y1 <= paper->y1);
  for (guint i = 0; i < n; i++)
    {
      const FpBox other = mark[i].type == FP_MARK_TEXT ? box_of_text (&mark[i]) : (FpBox) { 0, 0, 0, 0 };

      if (mark[i].type == FP_MARK_TEXT && &mark[i] != text && fp_box_overlaps (&box, &other))
        g_error ("“%s” lies on “%s”", text->text, mark[i].text);
      for (guint k = 0; (mark[i].type == FP_MARK_LINE || mark[i].type == FP_MARK_AREA) && k + 1 < mark[i].n; k++)
        if (fp_segment_meets_box (pt[mark[i].first + k], pt[mark[i].first + k + 1], &box))
          g_error ("“%s” at %.1f, %.1f lies on a line from %.1f, %.1f to %.1f, %.1f", text->text, text->at.x, text->at.y,
                   pt[mark[i].first + k].x, pt[mark[i].first + k].y, pt[mark[i].first + k + 1].x, pt[mark[i].first + k + 1].y);
    }
}

static void
lettering_is_clear (const FpDrawing *drawing, const FpBox *paper)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_TEXT)
      text_is_clear (drawing, &mark[i], paper);
}

static void
test_lettering (void)
{
  static const struct { double count, riser, rise, scale; FpBox room; } cases[] = {
    { 3, 150, 0, 200, { 10, 10, 380, 220 } },  { 3, 150, 90, 200, { 10, 10, 380, 220 } },
    { 1, 60, 5, 200, { 10, 10, 380, 220 } },   { 1, 50, 45, 200, { 10, 10, 380, 160 } },
    { 3, 150, 83, 200, { 10, 10, 380, 120 } }, { 12, 200, 0, 200, { 10, 10, 380, 220 } },
    { 3, 150, 90, 500, { 10, 10, 200, 150 } }, { 2, 150, 0, 100, { 10, 10, 400, 260 } },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (FpProject) project = church_of (cases[i].count, cases[i].riser, cases[i].rise);
      g_autoptr (FpDrawing) drawing = drawn (project, cases[i].room, cases[i].scale);

      lettering_is_clear (drawing, &cases[i].room);
    }
}

/* At the largest scale that finds room; fails where none does. */
static void
check_alternative (const FpProject *project, guint alternative, const FpBox *room)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, alternative);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (FpLevelDiagram) diagram = fp_level_diagram_new (people, &AIMS);
  g_autoptr (FpDrawing) drawing = fp_drawing_new (420, 297);
  guint n, i = 0;
  const double *scale = fp_sheet_scales (&n);

  while (i < n && !fp_level_diagram_fits (diagram, room, scale[i]))
    i++;
  g_assert_cmpuint (i, <, n);
  fp_level_diagram_draw (diagram, drawing, room, scale[i]);
  lettering_is_clear (drawing, room);
}

/* Churches with floors that fall, rows that are curved and turned, and several altars. */
static void
test_samples (void)
{
  static const char *const samples[] = { "parish", "chapel", "cathedral", "fan" };
  static const FpBox rooms[] = { { 10, 10, 380, 220 }, { 10, 10, 270, 140 }, { 10, 10, 175, 200 } };

  for (guint s = 0; s < G_N_ELEMENTS (samples); s++)
    {
      g_autofree char *name = g_strconcat (samples[s], ".footpace", NULL);
      g_autofree char *path = g_build_filename (g_getenv ("FOOTPACE_SAMPLES"), name, NULL);
      g_autoptr (GError) error = NULL;
      g_autoptr (FpProject) project = fp_store_load (path, &error);

      g_assert_no_error (error);
      for (guint a = 0; a < fp_project_n_alternatives (project); a++)
        for (guint r = 0; r < G_N_ELEMENTS (rooms); r++)
          check_alternative (project, a, &rooms[r]);
    }
}

/* Nothing at all, and people without an altar, are drawn as far as there is something. */
static void
test_little (void)
{
  g_autoptr (FpProject) project = church_new (FP_FACING_EAST);
  g_autoptr (FpDrawing) nothing = drawn (project, ROOM, 200);
  const ChurchThing pews = { "pews", "pews", NULL, { 0, -2000, 0 }, NULL, 0, { { NULL, 0 } } };

  g_assert_true (has_text (nothing, "There is no altar."));
  church_floor (&project, "nave", NAVE, 0, 0, 0, 0);
  church_survey (&project, &pews);
  {
    g_autoptr (FpDrawing) people = drawn (project, ROOM, 200);

    g_assert_true (has_text (people, "eyes of a row"));
    g_assert_cmpuint (count_triangles (people), ==, 0);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/level-diagram/scales", test_scales);
  g_test_add_func ("/level-diagram/marks", test_marks);
  g_test_add_func ("/level-diagram/words", test_words);
  g_test_add_func ("/level-diagram/first-row", test_first_row);
  g_test_add_func ("/level-diagram/beside", test_beside);
  g_test_add_func ("/level-diagram/things", test_things);
  g_test_add_func ("/level-diagram/spread", test_spread);
  g_test_add_func ("/level-diagram/lettering", test_lettering);
  g_test_add_func ("/level-diagram/samples", test_samples);
  g_test_add_func ("/level-diagram/little", test_little);
  return g_test_run ();
}
