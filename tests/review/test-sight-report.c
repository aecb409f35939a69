/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is seen, in words, as a table and on paper, against what sight itself says. */
#include "footpace/review.h"

#include "taking.h"

#include <math.h>
#include <string.h>

typedef struct
{
  FpProject *project;
  FpFindings *findings;
  const FpMeasuring *of;
} Fixture;

/* A nave with two blocks of pews and a pier on the Gospel side. */
static void
set_up (Fixture *f)
{
  f->project = taking_church (FP_BOOKS_OLDER, FP_FACING_EAST, FP_CELEBRATION_LOW);
  taking_altar_group (&f->project, 6);
  taking_survey (&f->project, "pews", "gospel", -2600, -2000, "rows", 6);
  taking_survey (&f->project, "pews", "epistle", 2600, -2000, "rows", 6);
  taking_survey (&f->project, "pier", "pier", -1300, -900, "width", 700);
  f->findings = taking_findings (f->project, TRUE);
  f->of = fp_findings_measuring (f->findings);
}

static FpDrawing *
sheet_of (const Fixture *f, FpSightLook look, const FpSheetSpec *spec, double *scale, GError **error)
{
  return fp_sight_sheet (f->of, &look, spec, scale, error);
}

static void
tear_down (Fixture *f)
{
  fp_findings_unref (f->findings);
  fp_project_unref (f->project);
}

static guint
count (const Fixture *f, FpMoment moment, FpFocus focus, FpSightHow how)
{
  guint n, found = 0;

  fp_people_places (f->of->people, &n);
  for (guint i = 0; i < n; i++)
    found += fp_sight_how (f->of->sight, i, moment, focus) == how;
  return found;
}

/* Galleries and the rail apart, of which the fixture has none. */
static guint
count_half (const Fixture *f, FpMoment moment, FpFocus focus)
{
  guint n, found = 0;

  fp_people_places (f->of->people, &n);
  for (guint i = 0; i < n; i++)
    found += 2 * fp_sight_share (f->of->sight, i, moment, focus) >= 1;
  return found;
}

/* --- how ------------------------------------------------------------------------------ */

static void
test_how (void)
{
  Fixture f;
  guint n, seen[FP_N_SIGHT_HOWS] = { 0 };

  set_up (&f);
  fp_people_places (f.of->people, &n);
  for (guint i = 0; i < n; i++)
    {
      const double share = fp_sight_share (f.of->sight, i, FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA);
      const FpSightHow how = fp_sight_how (f.of->sight, i, FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA);
      const int blocker = fp_sight_blocker (f.of->sight, i, FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA, NULL);
      seen[how]++;
      g_assert_cmpint (how == FP_SIGHT_NOTHING, ==, !(share > 0));
      g_assert_cmpint (how == FP_SIGHT_WHOLE, ==, share >= 0.95);
      if (how == FP_SIGHT_BETWEEN_HEADS)
        g_assert_cmpint (blocker, ==, -1);
      if (how == FP_SIGHT_PAST_THINGS)
        g_assert_cmpint (blocker, >=, 0);
    }
  g_assert_cmpuint (seen[FP_SIGHT_BETWEEN_HEADS], >, 0);
  g_assert_cmpuint (seen[FP_SIGHT_PAST_THINGS], >, 0);
  g_assert_cmpint (fp_sight_how (f.of->sight, 0, FP_MOMENT_READINGS, FP_FOCUS_AMBO), ==, FP_SIGHT_NOBODY);
  tear_down (&f);
}

/* The line to the middle is stopped exactly where asking every solid finds it stopped first. */
static void
test_line (void)
{
  Fixture f;
  guint n, n_solids, stopped = 0, named = 0, asked = 0;

  set_up (&f);
  fp_people_places (f.of->people, &n);
  g_autoptr (FpSolids) solids = fp_sight_obstacles (f.of->people, FP_MOMENT_OFFERTORY);
  const FpSolid *solid = fp_solids_peek (solids, &n_solids);
  for (guint i = 0; i < n; i++)
    {
      FpSightLine line;
      double nearest = 1, t;
      int by = -1;
      g_assert_true (fp_sight_line (f.of->sight, i, FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA, &line));
      for (guint k = 0; k < n_solids; k++)
        if (solid[k].owner != FP_SIGHT_PERSON + i && fp_solid_ray (&solid[k], line.eye, line.goal, &t) && t < nearest)
          {
            nearest = t;
            by = (int) k;
          }
      g_autofree char *words = fp_sight_line_words (f.of->sight, &line);
      /* The altar itself is met at the point looked at. */
      if (nearest > 0.9999)
        continue;
      g_assert_true (line.stopped);
      g_assert_nonnull (words);
      const FpVec3 at = fp_vec3_add (line.eye, fp_vec3_scale (fp_vec3_sub (line.goal, line.eye), nearest));
      g_assert_cmpfloat (fp_vec3_length (fp_vec3_sub (at, line.stop)), <, 1e-6);
      if (solid[by].owner >= FP_SIGHT_PERSON)
        g_assert_cmpint (line.place_in_front, ==, (int) (solid[by].owner - FP_SIGHT_PERSON));
      else
        g_assert_cmpint (line.thing, ==, (int) solid[by].owner);
      stopped++;
      /* The line shows what the words name. */
      int in_front;
      const int blocker = fp_sight_blocker (f.of->sight, i, FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA, &in_front);
      asked += blocker >= -1;
      named += blocker >= 0 ? line.thing == blocker : blocker == -1 && line.place_in_front == in_front;
    }
  g_assert_cmpuint (stopped, >, n / 4);
  g_assert_cmpuint (asked, >, n / 4);
  g_assert_cmpuint (named, ==, asked);
  g_assert_false (fp_sight_line (f.of->sight, n, FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA, &(FpSightLine) { .thing = 0 }));
  tear_down (&f);
}

/* --- words ------------------------------------------------------------------------------ */

static void
test_sentence (void)
{
  Fixture f;

  set_up (&f);
  g_autofree char *sentence = fp_sight_sentence (f.of, FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA);
  const FpSightSum sum = fp_sight_church (f.of->sight, FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA);
  g_autofree char *begins = g_strdup_printf ("Offertory, sitting: from %u of %u places the mensa is wholly seen, from %u half or",
                                             count (&f, FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA, FP_SIGHT_WHOLE), sum.places,
                                             count_half (&f, FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA));
  g_autofree char *past = g_strdup_printf ("; %u look past something",
                                           count (&f, FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA, FP_SIGHT_PAST_THINGS));
  g_assert_true (g_str_has_prefix (sentence, begins));
  g_assert_nonnull (strstr (sentence, past));
  g_assert_nonnull (strstr (sentence, "row"));
  g_autofree char *none = fp_sight_sentence (f.of, FP_MOMENT_READINGS, FP_FOCUS_AMBO);
  g_assert_cmpstr (none, ==, "There is no reader at the ambo to see.");
  tear_down (&f);
}

/* Children are counted on their own, and what is told of other people stands beneath. */
static void
test_children (void)
{
  Fixture f;

  set_up (&f);
  FpBrief brief = *fp_project_brief (f.project);
  brief.varied = TRUE;
  brief.seed = 4;
  brief.children = 5;
  FpProject *project = fp_project_with_brief (f.project, &brief, NULL);
  tear_down (&f);
  f.project = project;
  f.findings = taking_findings (f.project, TRUE);
  f.of = fp_findings_measuring (f.findings);

  guint n, children = 0, whole = 0;
  const FpPersonPlace *place = fp_people_places (f.of->people, &n);
  for (guint i = 0; i < n; i++)
    if (place[i].who.child && !place[i].at_rail)
      {
        children++;
        whole += fp_sight_share (f.of->sight, i, FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA) >= 0.95;
      }
  g_assert_cmpuint (children, >, 1);
  g_autofree char *of_them = g_strdup_printf (" half or more of it (of %u children %u see%s all of it)", children, whole,
                                              whole == 1 ? "s" : "");
  g_autofree char *text = fp_sight_report_text (f.of, FP_N_MOMENTS, FP_FOCUS_MENSA, 2);
  g_assert_nonnull (strstr (text, of_them));
  g_assert_nonnull (strstr (text, "2 times over (seeds 4 to 5): wholly seen from "));
  g_assert_nonnull (strstr (text, "each of his own stature (seed 4). "));
  g_autofree char *csv = fp_sight_report_csv (f.of, FP_N_MOMENTS, FP_FOCUS_MENSA);
  g_assert_nonnull (strstr (csv, ",\"child of seven years, CDC (2000)\","));
  tear_down (&f);
}

static void
test_worst (void)
{
  Fixture f;

  set_up (&f);
  g_autoptr (GArray) worst = fp_sight_worst (f.of, FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA, 12);
  double last = -1, least = 2;
  guint n;
  fp_people_places (f.of->people, &n);
  for (guint i = 0; i < n; i++)
    least = MIN (least, fp_sight_share (f.of->sight, i, FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA));
  g_assert_cmpuint (worst->len, ==, 12);
  for (guint i = 0; i < worst->len; i++)
    {
      const guint place = g_array_index (worst, guint, i);
      const double share = fp_sight_share (f.of->sight, place, FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA);
      g_autofree char *words = fp_sight_place_words (f.of, place, FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA);
      g_autofree char *seen = fp_share_format (share, 0);
      g_autofree char *begins = g_strdup_printf ("%s, past ", seen);
      g_assert_cmpfloat (share, >=, last);
      if (i == 0)
        g_assert_cmpfloat (share, ==, least);
      g_assert_true (g_str_has_prefix (words, share > 0 ? begins : "nothing, past "));
      last = share;
    }
  tear_down (&f);
}

/* A line a place and thing, and shares that add up to the mean. */
static void
test_table (void)
{
  Fixture f;

  set_up (&f);
  const FpSightSum sum = fp_sight_church (f.of->sight, FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA);
  g_autofree char *csv = fp_sight_report_csv (f.of, FP_N_MOMENTS, FP_FOCUS_MENSA);
  g_auto (GStrv) lines = g_strsplit (csv, "\r\n", -1);
  double all = 0;
  g_assert_cmpstr (lines[0], ==, "place,row,number,moment,seen,share,how,population,percentile");
  g_assert_cmpuint (g_strv_length (lines), ==, sum.places + 2);
  for (guint i = 1; i <= sum.places; i++)
    {
      const char *at = strstr (lines[i], ",offertory,mensa,");
      g_assert_nonnull (at);
      g_assert_true (g_str_has_suffix (lines[i], ",\"ANSUR II (2012), half women, half men\",50.0"));
      all += g_ascii_strtod (at + strlen (",offertory,mensa,"), NULL);
    }
  g_assert_cmpfloat_with_epsilon (all / sum.places, sum.mean, 1e-4);

  g_autofree char *text = fp_sight_report_text (f.of, FP_N_MOMENTS, FP_N_FOCUSES, 0);
  g_assert_nonnull (strstr (text, "Elevation of the Host, kneeling"));
  g_assert_nonnull (strstr (text, "crucifix"));
  g_assert_null (strstr (text, "ambo"));
  g_assert_nonnull (strstr (text, "Who sees least"));
  g_assert_true (g_str_has_suffix (text, "\nPeople: ANSUR II (2012), half women, half men, all of the 50th percentile of "
                                         "stature.\n"));

  /* Of the mensa the C-value of each row, too, as it is reckoned for the findings. */
  g_autoptr (GArray) rows = fp_row_c_values (f.of->people);
  g_autofree char *of_mensa = fp_sight_report_text (f.of, FP_N_MOMENTS, FP_FOCUS_MENSA, 0);
  g_assert_cmpuint (rows->len, >, 4);
  for (guint i = 0; i < rows->len; i++)
    {
      g_autofree char *c = fp_length_format_unit (g_array_index (rows, FpRowC, i).c, FP_UNITS_METRIC);
      g_autofree char *words = g_strdup_printf ("  C %s", c);
      g_assert_nonnull (strstr (of_mensa, words));
    }
  tear_down (&f);
}

/* --- on paper ----------------------------------------------------------------------------- */

/* Every place has its circle where it stands, to scale; and nothing leaves the paper. */
static void
test_sheet (void)
{
  g_autoptr (GError) error = NULL;
  const FpSheetSpec spec = { .paper = FP_PAPER_A3, .landscape = TRUE };
  double scale = 0;
  Fixture f;
  guint n_marks, circles = 0;

  set_up (&f);
  g_autoptr (FpDrawing) sheet = sheet_of (&f, (FpSightLook) { FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA, 3, TRUE }, &spec, &scale, &error);
  g_assert_no_error (error);
  g_assert_true (fp_scale_is_standard (scale));
  const double radius = fp_sight_mark_radius (scale);
  const FpMark *mark = fp_drawing_marks (sheet, &n_marks);
  for (guint i = 0; i < n_marks; i++)
    {
      circles += mark[i].type == FP_MARK_CIRCLE && mark[i].view == FP_VIEW_PLAN && mark[i].pen == FP_PEN_EDGE
                 && fabs (mark[i].radius - radius) < 1e-9;
      if (mark[i].type == FP_MARK_TEXT)
        {
          const double width = fp_lettering_width (mark[i].text, mark[i].height);
          const double x = mark[i].at.x - (mark[i].align == FP_ALIGN_RIGHT ? width : mark[i].align == FP_ALIGN_MIDDLE ? width / 2 : 0);
          if (mark[i].turn == 0 && (x < 0 || x + width > fp_drawing_width (sheet) - 9))
            g_error ("\"%s\" leaves the frame", mark[i].text);
        }
    }
  g_assert_cmpuint (circles, ==, fp_sight_church (f.of->sight, FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA).places);

  g_assert_null (sheet_of (&f, (FpSightLook) { FP_MOMENT_READINGS, FP_FOCUS_AMBO, -1, TRUE }, &spec, NULL, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_RANGE);
  g_clear_error (&error);

  const FpSheetSpec small = { .paper = FP_PAPER_A4, .scale = 10 };
  g_assert_null (sheet_of (&f, (FpSightLook) { FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA, -1, TRUE }, &small, NULL, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_RANGE);
  tear_down (&f);
}

/* --- from where nobody could see it --------------------------------------------------------- */

static double
hatched (const FpDrawing *sheet, guint *outlines)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (sheet, &n);
  double area = 0;

  *outlines = 0;
  for (guint i = 0; i < n; i++)
    {
      if (mark[i].pen != FP_PEN_BLIND || mark[i].view != FP_VIEW_PLAN)
        continue;
      if (mark[i].type == FP_MARK_AREA)
        area += fabs (fp_outline_area (fp_drawing_points (sheet) + mark[i].first, mark[i].n));
      *outlines += mark[i].type == FP_MARK_LINE ? 1 : 0;
    }
  return area;
}

static gboolean
says (const FpDrawing *sheet, const char *words)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (sheet, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_TEXT && strstr (mark[i].text, words) != NULL)
      return TRUE;
  return FALSE;
}

/* What is hatched on the sheet is as large, to scale, as the areas are, and so it is told; an outline for every ring. */
static void
test_blind_on_sheet (void)
{
  g_autoptr (GError) error = NULL;
  const FpSheetSpec spec = { .paper = FP_PAPER_A3, .landscape = TRUE };
  double scale = 0;
  guint rings = 0, outlines;
  Fixture f;

  set_up (&f);
  const GArray *blind = fp_sight_blind (f.of->sight, FP_MOMENT_ELEVATION, FP_FOCUS_HOST, NULL);
  const double area = fp_blind_area (blind, FALSE);
  g_assert_cmpfloat (area, >, 1e5);
  for (guint i = 0; i < blind->len; i++)
    rings += g_array_index (blind, FpBlindFloor, i).rings->len;

  g_autoptr (FpDrawing) sheet = sheet_of (&f, (FpSightLook) { FP_MOMENT_ELEVATION, FP_FOCUS_HOST, -1, TRUE }, &spec, &scale, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat_with_epsilon (hatched (sheet, &outlines) * scale * scale / area, 1, 1e-6);
  g_assert_cmpuint (outlines, ==, rings);
  g_autofree char *number = fp_number_format_rounded (area / 1e6, 1);
  g_autofree char *key = g_strdup_printf ("blind area: %s m²", number);
  g_assert_true (says (sheet, key));
  g_assert_false (says (sheet, "blind area on the gallery"));

  /* Asked for without, it has none, and says nothing of them. */
  g_autoptr (FpDrawing) bare = sheet_of (&f, (FpSightLook) { FP_MOMENT_ELEVATION, FP_FOCUS_HOST, -1, FALSE }, &spec, &scale, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat (hatched (bare, &outlines), ==, 0);
  g_assert_false (says (bare, "blind area"));

  g_autofree char *text = fp_sight_report_text (f.of, FP_MOMENT_ELEVATION, FP_FOCUS_HOST, 0);
  g_autofree char *exact = fp_number_format_rounded (area / 1e6, 2);
  g_autofree char *line = g_strdup_printf ("hide all of it on %s m² of the people's floor.", exact);
  g_assert_nonnull (strstr (text, line));
  tear_down (&f);
}

/* Where nothing stands in the way nothing is hatched, and that is said. */
static void
test_blind_nowhere (void)
{
  g_autoptr (GError) error = NULL;
  const FpSheetSpec spec = { .paper = FP_PAPER_A3, .landscape = TRUE };
  guint outlines;
  Fixture f;

  f.project = taking_church (FP_BOOKS_OLDER, FP_FACING_EAST, FP_CELEBRATION_LOW);
  taking_altar_group (&f.project, 6);
  taking_survey (&f.project, "pews", "pews", 0, -2000, "rows", 3);
  f.findings = taking_findings (f.project, TRUE);
  f.of = fp_findings_measuring (f.findings);
  g_autoptr (FpDrawing) sheet = sheet_of (&f, (FpSightLook) { FP_MOMENT_ELEVATION, FP_FOCUS_HOST, -1, TRUE }, &spec, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpfloat (hatched (sheet, &outlines), ==, 0);
  g_assert_cmpuint (outlines, ==, 0);
  g_assert_false (says (sheet, "blind area: "));
  g_assert_true (says (sheet, "Nowhere where the people are"));
  tear_down (&f);
}

/* The circle under the pointer is that of the place whose eye is there. */
static void
test_place_at (void)
{
  Fixture f;
  guint n;

  set_up (&f);
  fp_people_places (f.of->people, &n);
  for (guint i = 0; i < n; i += 7)
    {
      const FpVec3 eye = fp_people_eye (f.of->people, i, FP_POSTURE_SITTING);
      g_assert_cmpint (fp_sight_place_at (f.of->sight, FP_MOMENT_OFFERTORY, (FpPoint) { eye.x + 60, eye.y - 40 }, 250), ==,
                       (int) i);
    }
  g_assert_cmpint (fp_sight_place_at (f.of->sight, FP_MOMENT_OFFERTORY, (FpPoint) { 0, 9000 }, 250), ==, -1);
  tear_down (&f);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sight-report/how", test_how);
  g_test_add_func ("/sight-report/line", test_line);
  g_test_add_func ("/sight-report/sentence", test_sentence);
  g_test_add_func ("/sight-report/children", test_children);
  g_test_add_func ("/sight-report/worst", test_worst);
  g_test_add_func ("/sight-report/table", test_table);
  g_test_add_func ("/sight-report/sheet", test_sheet);
  g_test_add_func ("/sight-report/blind-on-sheet", test_blind_on_sheet);
  g_test_add_func ("/sight-report/blind-nowhere", test_blind_nowhere);
  g_test_add_func ("/sight-report/place-at", test_place_at);
  return g_test_run ();
}
