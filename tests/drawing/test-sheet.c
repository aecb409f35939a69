/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sheets: paper, frame and scale as printed in the standards; nothing beyond the frame. */
#include "footpace/drawing.h"

#include "church.h"
#include "crossings.h"
#include "parish.h"
#include "random-sanctuary.h"
#include "reading.h"

#include <math.h>
#include <string.h>

#define HAIR 1e-6

static const FpMark *
find_frame (const FpDrawing *drawing)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_LINE && mark[i].pen == FP_PEN_FRAME && mark[i].closed)
      return &mark[i];
  g_assert_not_reached ();
}

static FpBox
frame_of (const FpDrawing *drawing)
{
  const FpMark *frame = find_frame (drawing);

  return fp_outline_box (fp_drawing_points (drawing) + frame->first, frame->n);
}

static FpDrawing *
sheet (const FpScene *scene, const FpSheetSpec *spec, double *scale)
{
  g_autoptr (GError) error = NULL;
  FpDrawing *drawing = fp_sheet_new (scene, spec, scale, &error);

  g_assert_no_error (error);
  g_assert_nonnull (drawing);
  return drawing;
}

/* --- paper and frame --------------------------------------------------------------- */

/* ISO 216 and ISO 5457, trimmed sheets (as tasstudent.com and relderton.co.uk print them); Letter and Tabloid in inches,
 * ANSI/ASME Y14.1 sizes A and B (from memory). */
static void
test_paper (void)
{
  static const struct { const char *id; double width, height; } printed[] = {
    { "a4", 210, 297 }, { "a3", 297, 420 }, { "a2", 420, 594 }, { "a1", 594, 841 },
    { "letter", 215.9, 279.4 }, { "tabloid", 279.4, 431.8 },
  };

  g_assert_cmpuint (G_N_ELEMENTS (printed), ==, FP_N_PAPERS);
  for (guint i = 0; i < G_N_ELEMENTS (printed); i++)
    {
      FpPaper paper;
      double w, h;
      g_assert_true (fp_paper_find (printed[i].id, &paper));
      g_assert_cmpstr (fp_paper_id (paper), ==, printed[i].id);
      fp_paper_size (paper, FALSE, &w, &h);
      g_assert_cmpfloat_with_epsilon (w, printed[i].width, HAIR);
      g_assert_cmpfloat_with_epsilon (h, printed[i].height, HAIR);
      fp_paper_size (paper, TRUE, &w, &h);
      g_assert_cmpfloat_with_epsilon (w, printed[i].height, HAIR);
    }
  FpPaper paper;
  g_assert_true (fp_paper_find ("A3", &paper));
  g_assert_false (fp_paper_find ("a9", &paper));
}

/* ISO 5457:1999, drawing space (from memory): A1 574 x 811, A2 400 x 564, A3 277 x 390, A4 180 x 277;
 * 20 mm on the left, 10 mm elsewhere; frame line 0.7 mm. */
static void
test_frame (void)
{
  static const struct { FpPaper paper; gboolean landscape; double width, height; } printed[] = {
    { FP_PAPER_A1, TRUE, 811, 574 }, { FP_PAPER_A2, TRUE, 564, 400 }, { FP_PAPER_A3, TRUE, 390, 277 },
    { FP_PAPER_A4, FALSE, 180, 277 },
  };
  g_autoptr (FpScene) scene = parish_scene_new ();

  for (guint i = 0; i < G_N_ELEMENTS (printed); i++)
    {
      const FpSheetSpec spec = { .kind = FP_SHEET_ELEVATION, .paper = printed[i].paper,
                                 .landscape = printed[i].landscape };
      g_autoptr (FpDrawing) drawing = sheet (scene, &spec, NULL);
      const FpBox frame = frame_of (drawing);
      g_assert_cmpfloat_with_epsilon (frame.x0, 20, HAIR);
      g_assert_cmpfloat_with_epsilon (frame.y0, 10, HAIR);
      g_assert_cmpfloat_with_epsilon (frame.x1 - frame.x0, printed[i].width, HAIR);
      g_assert_cmpfloat_with_epsilon (frame.y1 - frame.y0, printed[i].height, HAIR);
    }
  g_assert_cmpfloat_with_epsilon (fp_pen_width (FP_PEN_FRAME), 0.7, HAIR);
}

/* --- everything within ------------------------------------------------------------------- */

static void
assert_within_frame (const FpDrawing *drawing, const char *what)
{
  const FpBox frame = frame_of (drawing);
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  const FpPoint *pt = fp_drawing_points (drawing);

  for (guint i = 0; i < n; i++)
    {
      FpBox box = FP_BOX_EMPTY;
      if (mark[i].pen == FP_PEN_FRAME)
        continue;
      if (mark[i].type == FP_MARK_TEXT)
        box = crossings_text_box (&mark[i]);
      else if (mark[i].type == FP_MARK_CIRCLE)
        box = (FpBox) { mark[i].at.x - mark[i].radius, mark[i].at.y - mark[i].radius, mark[i].at.x + mark[i].radius,
                        mark[i].at.y + mark[i].radius };
      else
        box = fp_outline_box (pt + mark[i].first, mark[i].n);
      /* The ruler stands in the margin where the sheet is bound. */
      if (box.x0 > frame.x0 - 10 && box.x1 < frame.x0 - 1 && box.y0 >= frame.y0 - 1)
        continue;
      if (box.x0 < frame.x0 - HAIR || box.y0 < frame.y0 - HAIR || box.x1 > frame.x1 + HAIR || box.y1 > frame.y1 + HAIR)
        g_error ("%s: a mark (\"%s\", pen %d) lies beyond the frame: %g %g to %g %g", what,
                 mark[i].type == FP_MARK_TEXT ? mark[i].text : "", mark[i].pen, box.x0, box.y0, box.x1, box.y1);
    }
}

/* Texts of the sheet itself keep apart from each other and from the drawing's. */
static void
assert_texts_apart (const FpDrawing *drawing, const char *what)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    for (guint j = i + 1; mark[i].type == FP_MARK_TEXT && j < n; j++)
      if (mark[j].type == FP_MARK_TEXT)
        {
          const FpBox a = crossings_text_box (&mark[i]), b = crossings_text_box (&mark[j]);
          if (fp_box_overlaps (&a, &b))
            g_error ("%s: \"%s\" and \"%s\" overlap", what, mark[i].text, mark[j].text);
        }
}

static void
test_all_within (void)
{
  for (guint32 seed = 0; seed < 3; seed++)
    {
      const FpUnits units = seed == 2 ? FP_UNITS_IMPERIAL : FP_UNITS_METRIC;
      g_autoptr (FpScene) scene = seed == 0 ? parish_scene_new () : random_sanctuary_new (seed, units);
      for (int kind = 0; kind < FP_N_SHEETS; kind++)
        for (int paper = 0; paper < FP_N_PAPERS; paper++)
          for (int way = 0; way < 4; way++)
            {
              static const char *const findings[] = { "One thing that was found, told at some length.", NULL };
              const FpSheetSpec spec = { .kind = (FpSheetKind) kind, .paper = (FpPaper) paper,
                                         .landscape = way % 2 == 0,
                                         .whole = way / 2 == 1, .date = "2024-05-12",
                                         .findings = way == 1 ? findings : NULL };
              g_autofree char *what = g_strdup_printf ("sanctuary %u, %s on %s, way %d", seed, fp_sheet_id (spec.kind),
                                                       fp_paper_id (spec.paper), way);
              g_autoptr (FpDrawing) drawing = sheet (scene, &spec, NULL);
              assert_within_frame (drawing, what);
              assert_texts_apart (drawing, what);
              crossings_assert_none (drawing, -1, what);
            }
    }
}

/* --- scale --------------------------------------------------------------------------------------- */

static gboolean
is_of_iso_5455 (double scale)
{
  /* ISO 5455 (from memory): reductions 1:2, 1:5, 1:10 and their tenfolds. */
  while (scale >= 10)
    scale /= 10;
  return scale == 1 || scale == 2 || scale == 5;
}

static void
test_scale_is_the_largest (void)
{
  for (guint32 seed = 0; seed < 6; seed++)
    {
      g_autoptr (FpScene) scene = seed == 0 ? parish_scene_new () : random_sanctuary_new (seed, FP_UNITS_METRIC);
      for (int kind = 0; kind < FP_N_SHEETS; kind++)
        {
          FpSheetSpec spec = { .kind = (FpSheetKind) kind, .paper = FP_PAPER_A3, .landscape = TRUE };
          double chosen, larger;
          g_autoptr (FpDrawing) drawing = sheet (scene, &spec, &chosen);
          g_autoptr (GError) error = NULL;
          g_autofree char *named = NULL;
          g_assert_true (is_of_iso_5455 (chosen));
          if (chosen <= 10)
            continue;
          larger = fmod (log10 (chosen / 5), 1) == 0 ? chosen / 2.5 : chosen / 2;
          g_assert_true (is_of_iso_5455 (larger));
          spec.scale = larger;
          g_assert_null (fp_sheet_new (scene, &spec, NULL, &error));
          g_assert_error (error, FP_ERROR, FP_ERROR_RANGE);
          named = g_strdup_printf ("1:%g", chosen);
          g_assert_nonnull (strstr (error->message, named));
        }
    }
}

/* 1 m at 1:50 is 20 mm, by arithmetic. A scale set by hand is kept. */
static void
test_scale_by_hand (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  const FpSheetSpec spec = { .kind = FP_SHEET_ELEVATION, .paper = FP_PAPER_A1, .landscape = TRUE, .scale = 50 };
  double scale = 0;
  g_autoptr (FpDrawing) drawing = sheet (scene, &spec, &scale);
  g_autoptr (GArray) found = crossings_read_dimensions (drawing);
  gboolean any = FALSE;

  g_assert_cmpfloat (scale, ==, 50);
  g_assert_true (reading_has_text (drawing, "1:50"));
  for (guint i = 0; i < found->len; i++)
    {
      const ReadDimension *d = &g_array_index (found, ReadDimension, i);
      if (g_str_equal (d->text, "2400"))
        {
          g_assert_cmpfloat_with_epsilon (d->hi - d->lo, 2.4 * 20, HAIR);
          any = TRUE;
        }
    }
  g_assert_true (any);
}

/* The bar's figures stand where its divisions say. */
static void
test_scale_bar (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  static const double scales[] = { 20, 50, 100, 200 };

  for (guint s = 0; s < G_N_ELEMENTS (scales); s++)
    {
      const FpSheetSpec spec = { .kind = FP_SHEET_ELEVATION, .paper = FP_PAPER_A1, .landscape = TRUE,
                                 .scale = scales[s] };
      g_autoptr (FpDrawing) drawing = sheet (scene, &spec, NULL);
      guint n, parts = 0;
      const FpMark *mark = fp_drawing_marks (drawing, &n);
      const FpPoint *pt = fp_drawing_points (drawing);
      double left = G_MAXDOUBLE, right = 0, last = 0;
      for (guint i = 0; i < n; i++)
        {
          if (mark[i].type == FP_MARK_AREA && mark[i].view == -1 && mark[i].n == 4
              && (mark[i].fill == FP_FILL_INK || mark[i].fill == FP_FILL_PAPER) && pt[mark[i].first].y < 30)
            {
              const FpBox box = fp_outline_box (pt + mark[i].first, 4);
              left = MIN (left, box.x0);
              right = MAX (right, box.x1);
              parts++;
            }
          if (mark[i].type == FP_MARK_TEXT && g_str_has_suffix (mark[i].text, " m"))
            last = g_ascii_strtod (mark[i].text, NULL);
        }
      g_assert_cmpuint (parts, ==, 5);
      g_assert_cmpfloat (last, >, 0);
      g_assert_cmpfloat_with_epsilon ((right - left) * scales[s], last * 1000, 0.01);
      g_assert_true (reading_has_text (drawing, "Do not scale; check the bar."));
    }
}

/* --- title block ------------------------------------------------------------------------------------ */

static FpProject *
named_project (const FpProject *from, const char *text)
{
  g_autoptr (GError) error = NULL;
  FpBrief brief = *fp_project_brief (from);
  FpProject *next;

  brief.title = brief.place = brief.client = brief.author = text;
  next = fp_project_with_brief (from, &brief, &error);
  g_assert_no_error (error);
  return next;
}

/* ISO 7200:2004 (as reported in a table that quotes it): the mandatory fields, and those asked for besides. */
static void
test_title_block (void)
{
  static const char *const captions[] = {
    "Legal owner", "Identification number", "Date of issue", "Sheet", "Title", "Supplementary title", "Approval person",
    "Creator", "Document type", "Scale", "Paper", "Language", "Document status",
  };
  g_autoptr (FpScene) scene = parish_scene_new ();
  const FpSheetSpec spec = { .kind = FP_SHEET_PLAN, .paper = FP_PAPER_A3, .landscape = TRUE, .date = "2024-05-12",
                             .number = "HR-017" };
  g_autoptr (FpDrawing) drawing = sheet (scene, &spec, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (captions); i++)
    if (!reading_has_text (drawing, captions[i]))
      g_error ("no field \"%s\"", captions[i]);
  g_assert_true (reading_has_text (drawing, "2024-05-12"));
  g_assert_true (reading_has_text (drawing, "HR-017"));
  g_assert_true (reading_has_text (drawing, "A3"));
  g_assert_true (reading_has_text (drawing, "en"));
  g_assert_true (reading_has_text (drawing, "1 of 1"));
  g_assert_true (reading_has_text (drawing, "PRELIMINARY, NOT FOR CONSTRUCTION"));
  g_assert_true (reading_has_text (drawing, "N"));
}

/* Names of the greatest length that a project may hold, of every kind of letter, stay in their fields. */
static void
test_long_names (void)
{
  g_autoptr (FpScene) parish = parish_scene_new ();

  for (int wide = 0; wide < 2; wide++)
    {
      g_autoptr (GString) name = g_string_new (NULL);
      g_autoptr (FpProject) named = NULL;
      g_autoptr (FpScene) scene = NULL;
      while (name->len + 8 < FP_TEXT_MAX)
        g_string_append (name, wide ? "堂WMÄ" : "Saint Nobody of the Wharf ");
      g_string_truncate (name, MIN (name->len, FP_TEXT_MAX));
      g_assert_true (g_utf8_validate (name->str, -1, NULL));
      named = named_project (fp_scene_project (parish), name->str);
      scene = fp_scene_new (named, 0);
      for (int paper = 0; paper < FP_N_PAPERS; paper++)
        {
          const FpSheetSpec spec = { .kind = FP_SHEET_ELEVATION, .paper = (FpPaper) paper, .landscape = TRUE,
                                     .number = name->str, .date = name->str };
          g_autoptr (FpDrawing) drawing = sheet (scene, &spec, NULL);
          guint n, cut = 0;
          const FpMark *mark = fp_drawing_marks (drawing, &n);
          assert_within_frame (drawing, "long names");
          assert_texts_apart (drawing, "long names");
          for (guint i = 0; i < n; i++)
            cut += mark[i].type == FP_MARK_TEXT && g_str_has_suffix (mark[i].text, "…") ? 1 : 0;
          g_assert_cmpuint (cut, >=, 5); /* owner, title, creator, number, date */
        }
    }
}

/* --- findings ------------------------------------------------------------------------------------------ */

static void
test_findings (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();

  static const guint counts[] = { 0, 1, 7, 18, 60 };

  for (guint c = 0; c < G_N_ELEMENTS (counts); c++)
    for (int paper = 0; paper < FP_N_PAPERS; paper++)
      for (int landscape = 0; landscape < 2; landscape++)
        {
          g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);
          const guint count = counts[c];
          for (guint i = 0; i < count; i++)
            g_ptr_array_add (lines, g_strdup_printf ("F%u: the riser is high\nMeasured: 160 mm; asked: 6 in (152 mm).\n"
                                                     "Where: the lowest step, and others.\nSource: a book of some title, "
                                                     "by an author, printed long ago, page %u.", i, i));
          g_ptr_array_add (lines, NULL);
          const FpSheetSpec spec = { .kind = FP_SHEET_ELEVATION, .paper = (FpPaper) paper, .landscape = landscape,
                                     .findings = (const char *const *) lines->pdata };
          g_autoptr (FpDrawing) drawing = sheet (scene, &spec, NULL);
          guint n, told = 0, more = 0;
          const FpMark *mark = fp_drawing_marks (drawing, &n);
          assert_within_frame (drawing, "findings");
          assert_texts_apart (drawing, "findings");
          g_assert_true (reading_has_text (drawing, "FINDINGS"));
          for (guint i = 0; i < n; i++)
            if (mark[i].type == FP_MARK_TEXT)
              {
                told += mark[i].text[0] == 'F' && g_ascii_isdigit (mark[i].text[1]) ? 1 : 0;
                if (g_str_has_prefix (mark[i].text, "and ") && strstr (mark[i].text, " more") != NULL)
                  more = (guint) g_ascii_strtoull (mark[i].text + 4, NULL, 10);
              }
          /* Every finding is told or counted. */
          g_assert_cmpuint (told + more, ==, count);
          g_assert_true (count > 0 || reading_has_text (drawing, "No finding against the rules listed."));
        }
}

/* On as many sheets as they take every finding is told with all it says, or else with a line of each. */
static void
test_pages_of_findings (void)
{
  static const guint counts[] = { 0, 3, 18, 60 };
  static const char parts[] = "FMWS";
  g_autoptr (FpScene) scene = parish_scene_new ();

  for (guint c = 0; c < G_N_ELEMENTS (counts); c++)
    for (int paper = 0; paper < FP_N_PAPERS; paper++)
      {
        g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);
        g_autoptr (GError) error = NULL;
        for (guint i = 0; i < counts[c]; i++)
          g_ptr_array_add (lines, g_strdup_printf ("F%u\nM%u measured\nW%u where\nS%u source", i, i, i, i));
        g_ptr_array_add (lines, NULL);
        const FpSheetSpec spec = { .kind = FP_SHEET_PLAN, .paper = (FpPaper) paper, .landscape = paper % 2 == 0,
                                   .findings = (const char *const *) lines->pdata };
        g_autoptr (GPtrArray) pages = fp_sheet_pages (scene, &spec, NULL, &error);
        guint told[4] = { 0 };
        g_assert_no_error (error);
        for (guint p = 0; p < pages->len; p++)
          {
            const FpDrawing *page = g_ptr_array_index (pages, p);
            g_autofree char *sheet_number = g_strdup_printf ("%u of %u", p + 1, pages->len);
            guint n;
            const FpMark *mark = fp_drawing_marks (page, &n);
            /* ISO 3098-1: 2.5 mm for what is to be reproduced. */
            for (guint i = 0; i < n; i++)
              if (mark[i].type == FP_MARK_TEXT && strchr (parts, mark[i].text[0]) != NULL && mark[i].text[0] != '\0'
                  && g_ascii_isdigit (mark[i].text[1]))
                g_assert_cmpfloat (mark[i].height, >=, 2.5);
            assert_within_frame (page, "pages of findings");
            assert_texts_apart (page, "pages of findings");
            g_assert_true (reading_has_text (page, sheet_number));
            /* Where nothing is drawn there are no lines to be explained. */
            g_assert_cmpint (reading_has_text (page, "removed"), ==, p == 0);
            for (guint i = 0; i < n; i++)
              {
                const char *at = mark[i].type == FP_MARK_TEXT && g_ascii_isdigit (mark[i].text[0] == '\0' ? 0 : mark[i].text[1])
                                   ? strchr (parts, mark[i].text[0]) : NULL;
                if (at != NULL)
                  told[at - parts]++;
                g_assert_false (mark[i].type == FP_MARK_TEXT && strstr (mark[i].text, " more:") != NULL);
              }
          }
        for (guint i = 0; i < 4; i++)
          g_assert_cmpuint (told[i], ==, counts[c]);
      }
}

/* --- kinds --------------------------------------------------------------------------------------------- */

static void
test_board_sheet (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  const FpSheetSpec spec = { .kind = FP_SHEET_BOARD, .paper = FP_PAPER_A2, .landscape = TRUE };
  double scale;
  g_autoptr (FpDrawing) drawing = sheet (scene, &spec, &scale);

  g_assert_true (reading_has_text (drawing, "PLAN"));
  g_assert_true (reading_has_text (drawing, "ELEVATION, FACING EAST"));
  g_assert_true (reading_has_text (drawing, "SECTION ON THE AXIS"));
  g_assert_cmpstr (fp_sheet_id (FP_SHEET_BOARD), ==, "board");
}

/* Down to its last word, on the smallest paper and with a legend beside it; in feet and inches it is longer. */
static void
test_cautions_whole (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();

  for (FpPaper paper = 0; paper < FP_N_PAPERS; paper++)
    for (guint landscape = 0; landscape < 2; landscape++)
      {
        const FpSheetSpec spec = { .kind = FP_SHEET_ELEVATION, .paper = paper, .landscape = landscape != 0 };
        g_autoptr (FpDrawing) drawing = sheet (scene, &spec, NULL);
        g_autoptr (GString) all = g_string_new (NULL);
        guint n;
        const FpMark *mark = fp_drawing_marks (drawing, &n);

        for (guint i = 0; i < n; i++)
          if (mark[i].type == FP_MARK_TEXT)
            g_string_append_printf (all, "%s ", mark[i].text);
        if (strstr (all->str, "licensed engineer") == NULL || strstr (all->str, "exits by the fire authority.") == NULL)
          g_error ("the cautions are not whole on %s, landscape %u", fp_paper_id (paper), landscape);
      }
}

/* Existing, proposed and removed are told in a legend where there is more than the first. */
static void
test_legend (void)
{
  const FpSheetSpec spec = { .kind = FP_SHEET_PLAN, .paper = FP_PAPER_A3, .landscape = TRUE };
  g_autoptr (FpScene) changed = parish_scene_new ();
  g_autoptr (FpProject) empty = church_new (FP_FACING_EAST);
  g_autoptr (FpScene) nothing = fp_scene_new (empty, 0);
  g_autoptr (FpDrawing) with = sheet (changed, &spec, NULL), without = sheet (nothing, &spec, NULL);

  g_assert_true (reading_has_text (with, "existing"));
  g_assert_true (reading_has_text (with, "proposed"));
  g_assert_true (reading_has_text (with, "removed"));
  g_assert_false (reading_has_text (without, "existing"));
}

/* --- where sections are cut ------------------------------------------------------------ */

/* The line of a pen that runs along x or y at a place of the paper and is the longest; 0. */
static double
longest_at (const FpDrawing *drawing, FpPen pen, gboolean upright, double at)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  const FpPoint *pt = fp_drawing_points (drawing);
  double longest = 0;

  for (guint i = 0; i < n; i++)
    {
      const FpPoint a = pt[mark[i].first], b = pt[mark[i].first + 1];
      if (mark[i].type != FP_MARK_LINE || mark[i].pen != pen || mark[i].n != 2)
        continue;
      if (upright ? fabs (a.x - at) < 1e-3 && fabs (b.x - at) < 1e-3 : fabs (a.y - at) < 1e-3 && fabs (b.y - at) < 1e-3)
        longest = MAX (longest, hypot (b.x - a.x, b.y - a.y));
    }
  return longest;
}

/* x of the axis, on which the plan is drawn. */
static double
axis_of (const FpDrawing *drawing)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_LINE && mark[i].pen == FP_PEN_AXIS && mark[i].view == FP_VIEW_PLAN)
      return fp_drawing_points (drawing)[mark[i].first].x;
  g_assert_not_reached ();
}

/* The head of an arrow that ends at @x: whether it comes from the left. */
static gboolean
arrow_looks_right (const FpDrawing *drawing, double x)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  const FpPoint *pt = fp_drawing_points (drawing);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_AREA && mark[i].fill == FP_FILL_INK && mark[i].n == 3
        && fabs (pt[mark[i].first].x - x) < 1e-3)
      return pt[mark[i].first + 1].x < x;
  g_assert_not_reached ();
}

/* At 1:100, 2 m from the axis is 20 mm of paper: there the plan has its long-dashed line, thick at both ends. */
static void
test_section_line (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();

  for (int turned = 0; turned < 2; turned++)
    {
      FpSheetSpec spec = { .kind = FP_SHEET_PLAN, .paper = FP_PAPER_A2, .landscape = TRUE, .scale = 100 };
      spec.cut[FP_VIEW_SECTION] = (FpCut) { TRUE, 2000, turned };
      g_autoptr (FpDrawing) drawing = sheet (scene, &spec, NULL);
      const double x = axis_of (drawing) + 20;

      g_assert_cmpfloat (longest_at (drawing, FP_PEN_AXIS, TRUE, x), >, 70);
      g_assert_cmpfloat_with_epsilon (longest_at (drawing, FP_PEN_CUT, TRUE, x), 6, HAIR);
      g_assert_cmpint (arrow_looks_right (drawing, x), ==, !turned);
      g_assert_true (reading_has_text (drawing, "A"));
      assert_within_frame (drawing, "section line");
    }
}

static void
test_section_titles (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  FpSheetSpec spec = { .kind = FP_SHEET_SECTION, .paper = FP_PAPER_A3, .landscape = TRUE };

  spec.cut[FP_VIEW_SECTION] = (FpCut) { TRUE, -1500, FALSE };
  spec.cut[FP_VIEW_ELEVATION] = (FpCut) { TRUE, -3000, TRUE };
  g_autoptr (FpDrawing) along = sheet (scene, &spec, NULL);
  spec.kind = FP_SHEET_CROSS;
  g_autoptr (FpDrawing) across = sheet (scene, &spec, NULL);
  spec.kind = FP_SHEET_ELEVATION; /* is no section: it stays what it is */
  g_autoptr (FpDrawing) elevation = sheet (scene, &spec, NULL);

  g_assert_true (reading_has_text (along, "SECTION A–A"));
  g_assert_true (reading_has_text (across, "SECTION B–B, FACING WEST"));
  g_assert_true (reading_has_text (elevation, "ELEVATION, FACING EAST"));
  /* It is called so where there is no other as well: the plan that shows both is another sheet. */
  spec.kind = FP_SHEET_CROSS;
  spec.cut[FP_VIEW_SECTION].placed = FALSE;
  g_autoptr (FpDrawing) alone = sheet (scene, &spec, NULL);
  g_assert_true (reading_has_text (alone, "SECTION B–B, FACING WEST"));
  assert_within_frame (along, "section along");
  assert_within_frame (across, "section across");
}

/* Both on one sheet: on landscape paper beside each other on one level, the one across on the left. */
static void
test_both_sections (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  FpSheetSpec spec = { .kind = FP_SHEET_SECTIONS, .paper = FP_PAPER_A2, .landscape = TRUE };
  FpBox box[FP_N_VIEWS] = { FP_BOX_EMPTY, FP_BOX_EMPTY, FP_BOX_EMPTY };
  double foot[FP_N_VIEWS];
  guint n;

  spec.cut[FP_VIEW_SECTION] = (FpCut) { TRUE, -1500, FALSE };
  g_autoptr (FpDrawing) drawing = sheet (scene, &spec, NULL);
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  for (guint i = 0; i < n; i++)
    if (mark[i].view >= 0 && mark[i].type == FP_MARK_AREA && mark[i].fill == FP_FILL_CUT)
      {
        const FpBox one = fp_outline_box (fp_drawing_points (drawing) + mark[i].first, mark[i].n);
        fp_box_add_box (&box[mark[i].view], &one);
      }
  foot[FP_VIEW_ELEVATION] = box[FP_VIEW_ELEVATION].y0;
  foot[FP_VIEW_SECTION] = box[FP_VIEW_SECTION].y0;
  g_assert_true (reading_has_text (drawing, "SECTION A–A"));
  g_assert_true (reading_has_text (drawing, "SECTION B–B, FACING EAST"));
  g_assert_true (fp_box_is_empty (&box[FP_VIEW_PLAN]));
  g_assert_cmpfloat (box[FP_VIEW_ELEVATION].x1, <, box[FP_VIEW_SECTION].x0);
  /* Both floors of the sanctuary are as deep; the nave's lies lower in the section along. */
  g_assert_cmpfloat (foot[FP_VIEW_SECTION], <=, foot[FP_VIEW_ELEVATION] + HAIR);
  assert_within_frame (drawing, "both sections");
}

static void
test_without (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  FpSheetSpec spec = { .kind = FP_SHEET_PLAN, .paper = FP_PAPER_A2, .landscape = TRUE };
  guint n, dimensions = 0;

  spec.hidden = 1u << FP_SHOW_DIMENSIONS | 1u << FP_SHOW_NAMES | 1u << FP_SHOW_REMOVED | 1u << FP_SHOW_EXISTING;
  g_autoptr (FpDrawing) drawing = sheet (scene, &spec, NULL);
  const FpMark *mark = fp_drawing_marks (drawing, &n);
  for (guint i = 0; i < n; i++)
    {
      dimensions += mark[i].dimension != 0;
      g_assert_true (mark[i].item == NULL || mark[i].standing == FP_STANDING_PROPOSED);
    }
  g_assert_cmpuint (dimensions, ==, 0);
  g_assert_true (reading_has_text (drawing, "PLAN"));
  g_assert_false (reading_has_text (drawing, "removed")); /* in the legend */
  /* The title block says what is missing of the church, not of the lettering. */
  g_assert_true (reading_has_text (drawing, "Not shown: existing work; removed work"));
  assert_texts_apart (drawing, "a sheet that leaves out");
}

/* Even on the smallest paper with all that can be left out at once without there being nothing to draw. */
static void
test_says_what_it_leaves_out (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();

  for (int paper = 0; paper < FP_N_PAPERS; paper++)
    for (int landscape = 0; landscape < 2; landscape++)
      {
        const FpSheetSpec spec = { .kind = FP_SHEET_PLAN, .paper = (FpPaper) paper, .landscape = landscape,
                                   .hidden = 1u << FP_SHOW_LIGHTS | 1u << FP_SHOW_SEATS | 1u << FP_SHOW_SEDILIA };
        const FpSheetSpec whole = { .kind = FP_SHEET_PLAN, .paper = (FpPaper) paper, .landscape = landscape,
                                    .hidden = 1u << FP_SHOW_NAMES };
        g_autoptr (FpDrawing) drawing = sheet (scene, &spec, NULL), all = sheet (scene, &whole, NULL);

        g_assert_true (reading_has_text (drawing, "Not shown: lights; sedilia and chair; pews and people"));
        g_assert_false (reading_has_part (all, "Not shown"));
        assert_within_frame (drawing, "a sheet that leaves out");
        assert_texts_apart (drawing, "a sheet that leaves out");
      }
}

/* --- larger than the paper ---------------------------------------------------------------- */

/* A3 has no room for the whole plan at 1:50 (21.7 m are 434 mm): it is drawn on A2, whichever way takes fewer pages. */
static void
test_tiled (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  FpSheetSpec spec = { .kind = FP_SHEET_PLAN, .paper = FP_PAPER_A3, .whole = TRUE, .scale = 50 };
  double scale = 0;
  g_autoptr (GPtrArray) whole = fp_sheet_pages (scene, &spec, NULL, NULL);
  g_autoptr (GPtrArray) tiles = fp_sheet_pages_tiled (scene, &spec, FP_PAPER_A4, &scale, NULL), other = NULL;

  g_assert_null (whole);
  g_assert_nonnull (tiles);
  g_assert_cmpfloat (scale, ==, 50);
  g_assert_cmpuint (tiles->len, >, 4);
  spec.landscape = !spec.landscape;
  other = fp_sheet_pages_tiled (scene, &spec, FP_PAPER_A4, &scale, NULL);
  g_assert_cmpuint (other->len, ==, tiles->len);
  /* Four by two, or three by three, without what would be blank. */
  g_assert_cmpuint (tiles->len, <, 8);
  for (guint i = 0; i < tiles->len; i++)
    g_assert_cmpfloat_with_epsilon (fp_drawing_width (tiles->pdata[i]) * fp_drawing_height (tiles->pdata[i]), 210 * 297, HAIR);
}

/* The drawing on pages to be joined, the findings that follow it on pages to be read: upright, whole, counted as sheets. */
static void
test_tiled_with_findings (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func (g_free);
  guint further = 0, told = 0;

  for (guint i = 0; i < 90; i++)
    g_ptr_array_add (lines, g_strdup_printf ("F%u\nM%u measured\nW%u where\nS%u source", i, i, i, i));
  g_ptr_array_add (lines, NULL);
  const FpSheetSpec spec = { .kind = FP_SHEET_PLAN, .paper = FP_PAPER_A2, .landscape = TRUE,
                             .findings = (const char *const *) lines->pdata };
  g_autoptr (GPtrArray) pages = fp_sheet_pages_tiled (scene, &spec, FP_PAPER_A4, NULL, NULL);

  for (guint i = 0; i < pages->len; i++)
    further += reading_has_text (pages->pdata[i], "Findings") ? 1 : 0;
  g_assert_cmpuint (further, >=, 2);
  g_assert_cmpuint (pages->len - further, >=, 4); /* A2 is four of A4, and more with what overlaps */
  for (guint i = 0; i < further; i++)
    {
      const FpDrawing *page = pages->pdata[pages->len - further + i];
      g_autofree char *sheet_number = g_strdup_printf ("%u of %u", i + 2, further + 1);
      guint n;
      const FpMark *mark = fp_drawing_marks (page, &n);

      g_assert_cmpfloat (fp_drawing_width (page), ==, 210);
      g_assert_cmpfloat (fp_drawing_height (page), ==, 297);
      g_assert_true (reading_has_text (page, sheet_number));
      assert_within_frame (page, "findings of a tiled sheet");
      assert_texts_apart (page, "findings of a tiled sheet");
      for (guint k = 0; k < n; k++)
        told += mark[k].type == FP_MARK_TEXT && mark[k].text[0] == 'S' && g_ascii_isdigit (mark[k].text[1]);
    }
  g_assert_true (reading_has_text (pages->pdata[pages->len - 1], "S89 source"));
  g_assert_cmpuint (told, ==, 90); /* beside the drawing they would be cut where pages are joined */
}

/* The title block says both: for which paper it was drawn, and on which it is printed. */
static void
test_joined_from (void)
{
  g_autoptr (FpScene) scene = parish_scene_new ();
  FpSheetSpec spec = { .kind = FP_SHEET_PLAN, .paper = FP_PAPER_A2, .landscape = TRUE, .joined_from = "A4" };
  g_autoptr (FpDrawing) joined = sheet (scene, &spec, NULL), whole = NULL;

  g_assert_true (reading_has_text (joined, "A2 on A4"));
  spec.joined_from = NULL;
  whole = sheet (scene, &spec, NULL);
  g_assert_true (reading_has_text (whole, "A2"));
}

static void
test_nothing_to_draw (void)
{
  g_autoptr (FpProject) empty = church_new (FP_FACING_EAST);
  g_autoptr (FpScene) scene = fp_scene_new (empty, 0);

  for (int kind = 0; kind < FP_N_SHEETS; kind++)
    {
      const FpSheetSpec spec = { .kind = (FpSheetKind) kind, .paper = FP_PAPER_A4 };
      g_autoptr (FpDrawing) drawing = sheet (scene, &spec, NULL);
      assert_within_frame (drawing, "nothing to draw");
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheet/paper", test_paper);
  g_test_add_func ("/sheet/tiled-with-findings", test_tiled_with_findings);
  g_test_add_func ("/sheet/tiled-with-findings/joined-from", test_joined_from);
  g_test_add_func ("/sheet/frame", test_frame);
  g_test_add_func ("/sheet/all-within", test_all_within);
  g_test_add_func ("/sheet/scale-is-the-largest", test_scale_is_the_largest);
  g_test_add_func ("/sheet/scale-by-hand", test_scale_by_hand);
  g_test_add_func ("/sheet/scale-bar", test_scale_bar);
  g_test_add_func ("/sheet/title-block", test_title_block);
  g_test_add_func ("/sheet/long-names", test_long_names);
  g_test_add_func ("/sheet/findings", test_findings);
  g_test_add_func ("/sheet/pages-of-findings", test_pages_of_findings);
  g_test_add_func ("/sheet/board", test_board_sheet);
  g_test_add_func ("/sheet/legend", test_legend);
  g_test_add_func ("/sheet/cautions-whole", test_cautions_whole);
  g_test_add_func ("/sheet/section-line", test_section_line);
  g_test_add_func ("/sheet/section-titles", test_section_titles);
  g_test_add_func ("/sheet/both-sections", test_both_sections);
  g_test_add_func ("/sheet/without", test_without);
  g_test_add_func ("/sheet/says-what-it-leaves-out", test_says_what_it_leaves_out);
  g_test_add_func ("/sheet/tiled", test_tiled);
  g_test_add_func ("/sheet/nothing-to-draw", test_nothing_to_draw);
  return g_test_run ();
}
