/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The alternatives side by side: every cell against what levels, sight and schedules say themselves. */
#include "comparison-arrange.h"

#include "footpace/bill.h"
#include "footpace/review.h"
#include "footpace/setting-out.h"

#include "crossings.h"
#include "taking.h"

#include <math.h>
#include <string.h>

/* Two alternatives: three steps and a rail; one step on a taller riser, without rail or candles. */
static FpProject *
church (const char *second)
{
  g_autoptr (GError) error = NULL;
  FpProject *project = taking_church (FP_BOOKS_OLDER, FP_FACING_EAST, FP_CELEBRATION_LOW), *next;
  guint alternative;

  taking_survey (&project, "pews", "pews", 0, -2000, "rows", 6);
  taking_altar_group (&project, 2);
  taking_add (&project, "rail", "rail", NULL, 0, 600, "length", 7000);
  next = fp_project_with_new_alternative (project, 0, "second", second, &error);
  g_assert_no_error (error);
  fp_project_unref (project);
  project = next;
  alternative = fp_project_n_alternatives (project) - 1;
  for (guint i = 0; i < fp_alternative_n_items (fp_project_alternative (project, alternative)); i++)
    {
      const FpItem *item = fp_alternative_item (fp_project_alternative (project, alternative), i);
      if (g_str_equal (fp_item_kind (item)->id, "footpace"))
        {
          FpItemInit init;
          double param[FP_PARAM_MAX];
          g_autoptr (FpItem) changed = NULL;
          fp_item_init_from (item, &init);
          memcpy (param, init.param, sizeof (double) * fp_kind_n_params (init.kind));
          param[fp_kind_param_index (init.kind, "count")] = 1;
          param[fp_kind_param_index (init.kind, "riser")] = 200;
          init.param = param;
          changed = fp_item_new (&init, &error);
          g_assert_no_error (error);
          next = fp_project_with_item (project, alternative, changed, &error);
          g_assert_no_error (error);
          fp_project_unref (project);
          project = next;
        }
    }
  next = fp_project_without_item (project, alternative, "rail", &error);
  g_assert_no_error (error);
  fp_project_unref (project);
  return next;
}

typedef struct { FpProject *project; FpFindings *findings[40]; guint n; FpComparison *comparison; } Fixture;

static void
set_up (Fixture *f, FpProject *project)
{
  f->project = project;
  f->n = fp_project_n_alternatives (project);
  for (guint i = 0; i < f->n; i++)
    f->findings[i] = fp_findings_of (project, i, NULL, NULL);
  f->comparison = fp_comparison_new (f->findings, f->n);
}

static void
tear_down (Fixture *f)
{
  fp_comparison_free (f->comparison);
  for (guint i = 0; i < f->n; i++)
    fp_findings_unref (f->findings[i]);
  fp_project_unref (f->project);
}

static guint
row_of (const FpComparison *comparison, const char *label)
{
  for (guint r = 0; r < fp_comparison_rows (comparison); r++)
    if (g_str_equal (fp_comparison_label (comparison, r), label))
      return r;
  g_error ("no row \"%s\"", label);
}

static const char *
cell (const Fixture *f, const char *label, guint column)
{
  return fp_comparison_cell (f->comparison, row_of (f->comparison, label), column);
}

static gboolean
is_short (const Fixture *f, const char *label, guint column)
{
  return fp_comparison_short (f->comparison, row_of (f->comparison, label), column);
}

/* --- which way the celebrant faces ----------------------------------------------------------- */

static FpProject * /* takes @project */
facing_people (FpProject *project, guint alternative)
{
  static const FpFacing people = FP_FACING_PEOPLE;
  FpProject *next = fp_project_with_alternative_facing (project, alternative, &people, NULL);

  g_assert_nonnull (next);
  fp_project_unref (project);
  return next;
}

/* Two alternatives that differ in this alone are told apart by it: in the row, by the rules, by where he stands. */
static void
test_facing (void)
{
  Fixture f;
  guint n;
  const FpPlaced *east, *people;

  set_up (&f, facing_people (church ("Versus populum"), 1));
  g_assert_cmpstr (cell (&f, "Celebrant faces", 0), ==, "liturgical east");
  g_assert_cmpstr (cell (&f, "Celebrant faces", 1), ==, "the people");
  east = &fp_scene_placed (fp_findings_scene (f.findings[0]), &n)[fp_scene_celebrated_altar
                                                                     (fp_findings_scene (f.findings[0]))];
  people = &fp_scene_placed (fp_findings_scene (f.findings[1]), &n)[fp_scene_celebrated_altar
                                                                       (fp_findings_scene (f.findings[1]))];
  g_assert_cmpint (east->form.facing, ==, FP_FACING_EAST);
  g_assert_cmpint (people->form.facing, ==, FP_FACING_PEOPLE);
  {
    g_autofree char *first = fp_report_text (f.findings[0], FALSE), *second = fp_report_text (f.findings[1], FALSE);
    g_assert_nonnull (strstr (first, "the celebrant faces liturgical east"));
    g_assert_nonnull (strstr (second, "the celebrant faces the people"));
  }
  tear_down (&f);
}

/* Whoever has no room behind the altar cannot face the people over it. */
static void
test_facing_without_room (void)
{
  FpProject *project = church ("Second");
  Fixture f;

  taking_wall (&project, "wall", -6000, 8500, 6000, 8500); /* the altar's back is at 8375 */
  set_up (&f, facing_people (project, 1));
  g_assert_cmpstr (cell (&f, "Celebrant faces", 0), ==, "liturgical east");
  g_assert_cmpstr (cell (&f, "Celebrant faces", 1), ==, "the people; no room");
  tear_down (&f);
}

/* --- cells -------------------------------------------------------------------------------- */

/* By hand: a sanctuary 300 above the nave; three risers of 152, or one of 200 (Schulte, Catholic Encyclopedia I,
 * 1907: about 6 in, and an uneven number). */
static void
test_levels (void)
{
  Fixture f;

  set_up (&f, church ("Lower"));
  g_assert_cmpuint (fp_comparison_columns (f.comparison), ==, 2);
  g_assert_cmpstr (fp_comparison_head (f.comparison, 1), ==, "Lower");
  g_assert_cmpstr (cell (&f, "Footpace above the datum", 0), ==, "+0.756 m");
  g_assert_cmpstr (cell (&f, "Footpace above the datum", 1), ==, "+0.500 m");
  g_assert_cmpstr (cell (&f, "Altar steps", 0), ==, "3 × 152 mm");
  g_assert_cmpstr (cell (&f, "Altar steps", 1), ==, "1 × 200 mm");
  g_assert_cmpstr (cell (&f, "Level of the people", 0), ==, "756 mm below");
  g_assert_cmpstr (cell (&f, "Level of the people", 1), ==, "500 mm below");
  for (guint c = 0; c < 2; c++)
    {
      const FpLevels *levels = &fp_findings_measuring (f.findings[c])->levels;
      g_autofree char *text = g_strdup_printf ("%u of %u", levels->not_below, levels->places);
      g_assert_cmpstr (cell (&f, "Places not below the altar", c), ==, text);
    }
  tear_down (&f);
}

/* --- moment by moment ------------------------------------------------------------------------ */

/* The rows from one heading to the next. */
static guint
row_under (const FpComparison *moments, const char *heading, const char *label)
{
  for (guint r = row_of (moments, heading) + 1; r < fp_comparison_rows (moments) && !fp_comparison_is_heading (moments, r); r++)
    if (g_str_equal (fp_comparison_label (moments, r), label))
      return r;
  g_error ("nothing is told of %s at %s", label, heading);
}

/* Counted place by place; marked where more see it. */
static void
check_row (const Fixture *f, const FpComparison *moments, const char *heading, const char *label, FpMoment moment,
           FpFocus focus)
{
  const guint row = row_under (moments, heading, label);
  guint whole[2] = { 0, 0 };

  for (guint c = 0; c < 2; c++)
    {
      const FpMeasuring *of = fp_findings_measuring (f->findings[c]);
      guint n, looked = 0;
      const FpPersonPlace *place = fp_people_places (of->people, &n);
      for (guint i = 0; i < n; i++)
        {
          const double share = fp_sight_share (of->sight, i, moment, focus);
          looked += share >= 0 && !place[i].gallery && !place[i].at_rail;
          whole[c] += share >= 0.95 && !place[i].gallery && !place[i].at_rail;
        }
      g_autofree char *share = fp_share_format ((double) whole[c] / looked, 0);
      g_autofree char *text = g_strdup_printf ("%u of %u, %s", whole[c], looked, share);
      g_assert_cmpstr (fp_comparison_cell (moments, row, c), ==, text);
    }
  g_assert_cmpint (fp_comparison_best (moments, row, 0), ==, whole[0] > whole[1]);
  g_assert_cmpint (fp_comparison_best (moments, row, 1), ==, whole[1] > whole[0]);
}

static void
test_by_moment (void)
{
  Fixture f;

  set_up (&f, church ("Lower"));
  g_autoptr (FpComparison) moments = fp_comparison_by_moment (f.comparison);
  g_assert_cmpuint (fp_comparison_columns (moments), ==, 2);
  g_assert_true (fp_comparison_is_heading (moments, 0));
  check_row (&f, moments, "Offertory, sitting", "Mensa", FP_MOMENT_OFFERTORY, FP_FOCUS_MENSA);
  check_row (&f, moments, "Collect, standing", "Mensa", FP_MOMENT_COLLECT, FP_FOCUS_MENSA);
  check_row (&f, moments, "Elevation of the Host, kneeling", "Raised Host", FP_MOMENT_ELEVATION, FP_FOCUS_HOST);
  check_row (&f, moments, "Before Mass, sitting", "Crucifix", FP_MOMENT_BEFORE, FP_FOCUS_CRUCIFIX);

  /* Nothing that is not there then: no reader without an ambo, and the Host only while it is raised. */
  guint hosts = 0;
  for (guint r = 0; r < fp_comparison_rows (moments); r++)
    {
      g_assert_cmpstr (fp_comparison_label (moments, r), !=, "Reader");
      hosts += g_str_equal (fp_comparison_label (moments, r), "Raised Host");
    }
  g_assert_cmpuint (hosts, ==, 1);

  g_autofree char *text = fp_comparison_text (moments);
  g_assert_nonnull (strstr (text, "\n\nOffertory, sitting\n  Mensa "));
  g_assert_nonnull (strstr (text, "from which all of it is seen"));
  tear_down (&f);
}

/* Of two that are the same, neither is marked. */
static void
test_by_moment_alike (void)
{
  g_autoptr (GError) error = NULL;
  FpProject *one = taking_church (FP_BOOKS_OLDER, FP_FACING_EAST, FP_CELEBRATION_LOW), *two;
  Fixture f;

  taking_survey (&one, "pews", "pews", 0, -2000, "rows", 3);
  two = fp_project_with_new_alternative (one, 0, "second", "The same again", &error);
  g_assert_no_error (error);
  fp_project_unref (one);
  set_up (&f, two);
  g_autoptr (FpComparison) moments = fp_comparison_by_moment (f.comparison);
  g_assert_cmpuint (fp_comparison_rows (moments), >, 7);
  for (guint r = 0; r < fp_comparison_rows (moments); r++)
    {
      g_assert_cmpstr (fp_comparison_cell (moments, r, 0), ==, fp_comparison_cell (moments, r, 1));
      g_assert_false (fp_comparison_best (moments, r, 0) || fp_comparison_best (moments, r, 1));
    }
  tear_down (&f);
}

static void
test_sight (void)
{
  static const struct { const char *label; FpFocus focus; FpMoment moment; FpPosture posture; } rows[] = {
    { "Mensa seen", FP_FOCUS_MENSA, FP_MOMENT_OFFERTORY, FP_POSTURE_SITTING },
    { "Raised Host seen", FP_FOCUS_HOST, FP_MOMENT_ELEVATION, FP_POSTURE_KNEELING },
    { "Crucifix seen", FP_FOCUS_CRUCIFIX, FP_MOMENT_BEFORE, FP_POSTURE_SITTING },
  };
  Fixture f;

  set_up (&f, church ("Lower"));
  for (guint c = 0; c < 2; c++)
    {
      const FpMeasuring *of = fp_findings_measuring (f.findings[c]);
      g_autoptr (GArray) values = fp_row_c_values (of->people);
      double worst = G_MAXDOUBLE;
      for (guint r = 0; r < G_N_ELEMENTS (rows); r++)
        {
          guint n, looked = 0, half = 0;
          const FpPersonPlace *place = fp_people_places (of->people, &n);
          /* Counted place by place. */
          for (guint i = 0; i < n; i++)
            {
              const double share = fp_sight_share (of->sight, i, rows[r].moment, rows[r].focus);
              if (share < 0 || place[i].gallery || place[i].at_rail)
                continue;
              looked++;
              half += share >= 0.5 ? 1 : 0;
            }
          g_autofree char *text = g_strdup_printf ("%.0f %%, %s", 100.0 * half / looked,
                                                   fp_posture_label (rows[r].posture));
          g_assert_cmpuint (looked, >, 0);
          g_assert_cmpstr (cell (&f, rows[r].label, c), ==, text);
        }
      for (guint i = 0; i < values->len; i++)
        worst = MIN (worst, g_array_index (values, FpRowC, i).c);
      g_autofree char *length = fp_length_format_unit (fabs (round (worst)), FP_UNITS_METRIC);
      g_assert_nonnull (strstr (cell (&f, "C-value of the worst row", c), length));
      g_assert_cmpstr (cell (&f, "Reader seen", c), ==, "–");
    }
  tear_down (&f);
}

static void
test_rail_and_counts (void)
{
  Fixture f;
  g_autofree char *length = fp_length_format_unit (7000, FP_UNITS_METRIC);

  set_up (&f, church ("Lower"));
  g_assert_cmpstr (cell (&f, "Rail, length", 0), ==, length);
  g_assert_cmpstr (cell (&f, "Rail, length", 1), ==, "none");
  /* The rail of the fixture is as high as its kind makes it. */
  double preset[FP_PARAM_MAX];
  fp_kind_defaults (fp_kind_find ("rail"), preset);
  g_autofree char *height = fp_length_format_unit (preset[fp_kind_param_index (fp_kind_find ("rail"), "height")],
                                                   FP_UNITS_METRIC);
  g_assert_cmpstr (cell (&f, "Rail, height", 0), ==, height);
  g_assert_cmpstr (cell (&f, "Rail, height", 1), ==, "–");
  g_assert_cmpstr (cell (&f, "Kneeling places at the rail", 1), ==, "0");
  g_assert_cmpuint (g_ascii_strtoull (cell (&f, "Kneeling places at the rail", 0), NULL, 10), >, 0);
  for (guint c = 0; c < 2; c++)
    {
      const FpScene *scene = fp_findings_scene (f.findings[c]);
      const FpScheduleCounts counts = fp_schedule_counts (scene);
      g_autoptr (FpBill) bill = fp_bill_new (scene);
      g_autofree char *stone = fp_amount_format (FP_AMOUNT_VOLUME, fp_bill_stone (bill), FP_UNITS_METRIC);
      g_assert_cmpuint (g_ascii_strtoull (cell (&f, "New", c), NULL, 10), ==, counts.added);
      g_assert_cmpuint (g_ascii_strtoull (cell (&f, "Kept", c), NULL, 10), ==, counts.kept);
      g_assert_cmpuint (g_ascii_strtoull (cell (&f, "Removed", c), NULL, 10), ==, counts.removed);
      g_assert_cmpuint (g_ascii_strtoull (cell (&f, "Moved", c), NULL, 10), ==, counts.moved);
      g_assert_cmpstr (cell (&f, "New stone", c), ==, stone);
      for (int w = 0; w < FP_N_WEIGHTS; w++)
        {
          g_autofree char *label = g_strdup_printf ("Findings, %s", fp_weight_label ((FpWeight) w));
          g_assert_cmpuint (g_ascii_strtoull (cell (&f, label, c), NULL, 10), ==,
                            fp_findings_short (f.findings[c], (FpWeight) w));
        }
    }
  g_assert_cmpuint (g_ascii_strtoull (cell (&f, "New", 0), NULL, 10), ==,
                    g_ascii_strtoull (cell (&f, "New", 1), NULL, 10) + 1);
  tear_down (&f);
}

/* A cell is marked exactly when a rule over its measure is short in that alternative. */
static void
test_short (void)
{
  static const struct { const char *label, *measures[2]; } rows[] = {
    { "Altar steps", { "altar-steps", "riser" } },
    { "Level of the people", { "margin-below", "" } },
    { "Kneeling places at the rail", { "kneeling-places", "" } },
  };
  Fixture f;

  set_up (&f, church ("Lower"));
  for (guint c = 0; c < 2; c++)
    for (guint r = 0; r < G_N_ELEMENTS (rows); r++)
      {
        guint n;
        const FpFinding *finding = fp_findings_get (f.findings[c], &n);
        gboolean expected = FALSE;
        FpWeight heaviest = FP_N_WEIGHTS;
        for (guint i = 0; i < n; i++)
          expected |= finding[i].found == FP_FOUND_SHORT
                      && (g_str_equal (finding[i].rule->measure, rows[r].measures[0])
                          || g_str_equal (finding[i].rule->measure, rows[r].measures[1]));
        for (guint i = 0; i < n; i++)
          if (finding[i].found == FP_FOUND_SHORT && finding[i].rule->weight < heaviest
              && (g_str_equal (finding[i].rule->measure, rows[r].measures[0])
                  || g_str_equal (finding[i].rule->measure, rows[r].measures[1])))
            heaviest = finding[i].rule->weight;
        g_assert_cmpint (is_short (&f, rows[r].label, c), ==, expected);
        if (expected)
          g_assert_cmpint (fp_comparison_weight (f.comparison, row_of (f.comparison, rows[r].label), c), ==, heaviest);
      }
  /* One step of 200 mm is short of the printed number and height; the default steps are not. */
  g_assert_true (is_short (&f, "Altar steps", 1));
  g_assert_false (is_short (&f, "Altar steps", 0));
  tear_down (&f);
}

/* --- text ------------------------------------------------------------------------------------ */

static guint
width_of (const char *from, const char *to)
{
  guint width = 0;

  for (const char *p = from; p < to; p = g_utf8_next_char (p))
    width += g_unichar_iszerowidth (g_utf8_get_char (p)) ? 0 : g_unichar_iswide (g_utf8_get_char (p)) ? 2 : 1;
  return width;
}

/* Columns begin at one place in every line, whatever letters stand before them. */
static void
test_text (void)
{
  static const char *const names[] = { "Lower", "Über 堂 the nave, a name that is much too long for one column",
                                       "e\xcc\x81" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      Fixture f;
      set_up (&f, church (names[i]));
      g_autofree char *text = fp_comparison_text (f.comparison);
      g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
      const char *first = fp_comparison_cell (f.comparison, 0, 1);
      const char *at = g_strrstr (lines[2], first); /* both columns may say the same */
      guint column;
      g_assert_nonnull (at);
      column = width_of (lines[2], at);
      for (guint r = 0; r < fp_comparison_rows (f.comparison); r++)
        {
          const char *line = lines[2 + r], *p = line;
          g_autofree char *last = NULL;
          while (*p != '\0' && width_of (line, p) < column)
            p = g_utf8_next_char (p);
          g_assert_cmpuint (width_of (line, p), ==, column);
          last = g_strconcat (fp_comparison_cell (f.comparison, r, 1),
                              fp_comparison_short (f.comparison, r, 1) ? " !" : "", NULL);
          g_assert_cmpstr (p, ==, last);
          g_assert_true (g_str_has_prefix (line, fp_comparison_label (f.comparison, r)));
        }
      g_assert_true (g_utf8_validate (text, -1, NULL));
      tear_down (&f);
    }
}

/* --- sheets -------------------------------------------------------------------------------------- */

static FpBox
frame_of (const FpDrawing *drawing)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].pen == FP_PEN_FRAME && mark[i].closed)
      return fp_outline_box (fp_drawing_points (drawing) + mark[i].first, mark[i].n);
  g_assert_not_reached ();
}

static guint
count_text (GPtrArray *pages, const char *text)
{
  guint found = 0;

  for (guint p = 0; p < pages->len; p++)
    {
      guint n;
      const FpMark *mark = fp_drawing_marks (g_ptr_array_index (pages, p), &n);
      for (guint i = 0; i < n; i++)
        found += mark[i].type == FP_MARK_TEXT && g_str_equal (mark[i].text, text) ? 1 : 0;
    }
  return found;
}

static void
assert_page (const FpDrawing *page)
{
  const FpBox frame = frame_of (page);
  guint n;
  const FpMark *mark = fp_drawing_marks (page, &n);

  for (guint i = 0; i < n; i++)
    {
      if (mark[i].type != FP_MARK_TEXT)
        continue;
      const FpBox box = crossings_text_box (&mark[i]);
      /* The ruler stands in the margin where the sheet is bound. */
      if (box.x0 > frame.x0 - 10 && box.x1 < frame.x0 - 1)
        continue;
      g_assert_cmpfloat (box.x0, >=, frame.x0);
      g_assert_cmpfloat (box.y0, >=, frame.y0);
      g_assert_cmpfloat (box.x1, <=, frame.x1);
      g_assert_cmpfloat (box.y1, <=, frame.y1);
      for (guint j = 0; j < i; j++)
        if (mark[j].type == FP_MARK_TEXT)
          {
            const FpBox other = crossings_text_box (&mark[j]);
            if (fp_box_overlaps (&box, &other))
              g_error ("\"%s\" and \"%s\" overlap", mark[i].text, mark[j].text);
          }
    }
}

static FpProject *
with_alternatives (FpProject *project, guint n)
{
  while (fp_project_n_alternatives (project) < n)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *id = g_strdup_printf ("more-%u", fp_project_n_alternatives (project));
      g_autofree char *name = g_strdup_printf ("Alternative %u with a name that takes two lines or more of its column",
                                               fp_project_n_alternatives (project));
      FpProject *next = fp_project_with_new_alternative (project, 1, id, name, &error);
      g_assert_no_error (error);
      fp_project_unref (project);
      project = next;
    }
  return project;
}

/* Names of alternatives and all that the table says are whole. */
static void
assert_nothing_cut (GPtrArray *pages)
{
  for (guint p = 0; p < pages->len; p++)
    {
      guint n;
      const FpMark *mark = fp_drawing_marks (g_ptr_array_index (pages, p), &n);
      for (guint i = 0; i < n; i++)
        if (mark[i].type == FP_MARK_TEXT && g_str_has_suffix (mark[i].text, "…"))
          g_error ("\"%s\" is cut", mark[i].text);
    }
}

static gboolean
page_has (const FpDrawing *page, const char *start)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (page, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_TEXT && g_str_has_prefix (mark[i].text, start))
      return TRUE;
  return FALSE;
}

/* Under every table stands what its marks mean. */
static void
assert_marks_explained (GPtrArray *pages)
{
  for (guint p = 0; p < pages->len; p++)
    {
      const FpDrawing *page = g_ptr_array_index (pages, p);
      if (!page_has (page, "Altar steps"))
        continue;
      g_assert_true (page_has (page, "outside a limit of the rules listed"));
      g_assert_true (page_has (page, "Seen: "));
      g_assert_true (page_has (page, "–  nothing there to measure"));
    }
}

/* Each alternative has its column once, on as many pages as it takes, all to one scale. */
static void
test_sheets (void)
{
  Fixture f;

  set_up (&f, with_alternatives (church ("Lower"), 7));
  for (int paper = 0; paper < FP_N_PAPERS; paper++)
    for (int landscape = 0; landscape < 2; landscape++)
      {
        const FpSheetSpec spec = { .paper = (FpPaper) paper, .landscape = landscape, .date = "2024-05-12" };
        g_autoptr (GError) error = NULL;
        g_autoptr (GPtrArray) pages = fp_comparison_sheets (f.comparison, &spec, &error);
        guint tables;
        g_assert_no_error (error);
        g_assert_cmpuint (pages->len, >=, 1);
        for (guint p = 0; p < pages->len; p++)
          {
            g_autofree char *sheet = g_strdup_printf ("%u of %u", p + 1, pages->len);
            assert_page (g_ptr_array_index (pages, p));
            g_assert_cmpuint (count_text (pages, sheet), ==, 1);
          }
        assert_nothing_cut (pages);
        assert_marks_explained (pages);
        /* One table a set of columns, and in it every alternative: "+0.500 m" is the footpace of all but the first. */
        tables = count_text (pages, "Altar steps");
        g_assert_cmpuint (tables, >=, 1);
        g_assert_cmpuint (count_text (pages, "+0.500 m"), ==, 6);
        g_assert_cmpuint (count_text (pages, "+0.756 m"), ==, 1);
        g_assert_cmpuint (count_text (pages, "Plan"), ==, tables);
      }
  tear_down (&f);
}

/* --- what stands on which page --------------------------------------------------------------------- */

/* A sanctuary 10 m wide, 5 m high and 9 m deep. */
static FpArrangementRoom
room_of (double width, double height, guint columns, double table)
{
  return (FpArrangementRoom) { width, height, columns, table, 10000, 5000, 9000 };
}

static void
assert_arranged (FpArrangementRoom room, FpArrangementId id, double elevation, double plan)
{
  FpArrangement how;

  g_assert_true (fp_arrangement_find (&room, 0, &how));
  g_assert_cmpint (how.id, ==, id);
  g_assert_cmpfloat (how.elevation, ==, elevation);
  g_assert_cmpfloat (how.plan, ==, plan);
}

/* Worked by hand from the sizes above: a head of 14.4 mm, gaps of 4 mm, 50 mm for labels, columns of at most 180 mm. */
static void
test_arrangements (void)
{
  FpArrangementRoom large = room_of (500, 245, 2, 120);
  FpArrangement how;

  /* 1:100 takes 140 + 26.4 mm above a table of 120 mm. */
  assert_arranged (room_of (400, 300, 2, 120), FP_ARRANGED_ABOVE, 100, 100);
  /* That is too high for 280 mm, and beside the table 400 - 166 - 8 - 18 mm are too narrow for two of 108 mm. */
  assert_arranged (room_of (400, 280, 2, 120), FP_ARRANGED_APART, 100, 100);
  assert_arranged (room_of (410, 280, 2, 120), FP_ARRANGED_BESIDE, 100, 100);
  /* Where drawings are no smaller beside their table, there is one page, small as they may be. */
  assert_arranged (room_of (400, 150, 2, 120), FP_ARRANGED_BESIDE, 200, 200);
  /* All drawings together would be half as large as elevations above the table (149.4 mm) and plans apart. */
  assert_arranged (room_of (500, 150, 4, 77), FP_ARRANGED_BY_VIEW, 100, 100);
  /* Each page at its own scale. */
  assert_arranged (room_of (500, 150, 4, 80), FP_ARRANGED_BY_VIEW, 200, 100);
  /* 8 m wide, 1:50 fits by view alone; but what can be read well on one page is not spread over two unasked. */
  large.wide = 8000;
  g_assert_true (fp_arrangement_find (&large, 50, &how));
  g_assert_cmpint (how.id, ==, FP_ARRANGED_BY_VIEW);
  assert_arranged (large, FP_ARRANGED_BESIDE, 100, 100);
  g_assert_false (fp_arrangement_find (&large, 20, &how));
}

/* Where the highest cut face of the elevations of one half of the page ends, paper mm. */
static double
top_of_cut (const FpDrawing *page, gboolean right)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (page, &n);
  const FpPoint *pt = fp_drawing_points (page);
  double top = -1;

  for (guint i = 0; i < n; i++)
    for (guint k = 0; mark[i].type == FP_MARK_AREA && mark[i].view == FP_VIEW_ELEVATION && mark[i].fill == FP_FILL_CUT
                      && k < mark[i].n; k++)
      if ((pt[mark[i].first + k].x > fp_drawing_width (page) / 2 + 25) == right)
        top = MAX (top, pt[mark[i].first + k].y);
  return top;
}

static gboolean
has_view (const FpDrawing *page)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (page, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].view >= 0)
      return TRUE;
  return FALSE;
}

/* One alternative has a rail in the nave: the other is cut there too, or it would seem to stand on another floor.  And
 * where nothing is drawn to scale, there is no scale bar. */
static void
test_cut_alike (void)
{
  const FpSheetSpec spec = { .paper = FP_PAPER_A4, .landscape = TRUE };
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) before = church ("Lower");
  g_autoptr (FpScene) scene = fp_scene_new (before, 0);
  Fixture f;

  set_up (&f, fp_set_out_place (scene, "rail", &(FpPlace) { 0, -700, 0 }, &error));
  g_assert_no_error (error);
  g_autoptr (GPtrArray) pages = fp_comparison_sheets (f.comparison, &spec, &error);
  g_assert_no_error (error);
  const FpDrawing *first = g_ptr_array_index (pages, 0);
  g_assert_cmpfloat (top_of_cut (first, FALSE), >, 0);
  g_assert_cmpfloat_with_epsilon (top_of_cut (first, FALSE), top_of_cut (first, TRUE), 1e-6);
  for (guint p = 0; p < pages->len; p++)
    g_assert_cmpint (page_has (g_ptr_array_index (pages, p), "Do not scale"), ==, has_view (g_ptr_array_index (pages, p)));
  tear_down (&f);
}

static void
test_scale_by_hand (void)
{
  Fixture f;
  g_autoptr (GError) error = NULL;
  FpSheetSpec spec = { .paper = FP_PAPER_A1, .landscape = TRUE, .scale = 200 };

  set_up (&f, church ("Lower"));
  g_autoptr (GPtrArray) pages = fp_comparison_sheets (f.comparison, &spec, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (count_text (pages, "1:200"), ==, pages->len);
  spec.scale = 2;
  g_assert_null (fp_comparison_sheets (f.comparison, &spec, &error));
  g_assert_error (error, FP_ERROR, FP_ERROR_RANGE);
  g_assert_nonnull (strstr (error->message, "largest scale"));
  tear_down (&f);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/comparison/levels", test_levels);
  g_test_add_func ("/comparison/facing", test_facing);
  g_test_add_func ("/comparison/facing-without-room", test_facing_without_room);
  g_test_add_func ("/comparison/sight", test_sight);
  g_test_add_func ("/comparison/by-moment", test_by_moment);
  g_test_add_func ("/comparison/by-moment-alike", test_by_moment_alike);
  g_test_add_func ("/comparison/rail-and-counts", test_rail_and_counts);
  g_test_add_func ("/comparison/short", test_short);
  g_test_add_func ("/comparison/text", test_text);
  g_test_add_func ("/comparison/sheets", test_sheets);
  g_test_add_func ("/comparison/arrangements", test_arrangements);
  g_test_add_func ("/comparison/scale-by-hand", test_scale_by_hand);
  g_test_add_func ("/comparison/cut-alike", test_cut_alike);
  return g_test_run ();
}
