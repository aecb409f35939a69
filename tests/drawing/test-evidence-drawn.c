/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What was measured as marks over a view: true lengths with their figures, the others without, and figures where nothing is. */
#include "footpace/evidence-drawing.h"

#include <math.h>

static const FpViewLayout layout = { .origin = { 100, 100 }, .scale = 50, .clip = { G_MAXDOUBLE, G_MAXDOUBLE, -G_MAXDOUBLE, -G_MAXDOUBLE } };
static const FpBox all = { 0, 0, 300, 300 };

static guint
marks_of (const FpDrawing *drawing, FpMarkType type)
{
  guint n, of = 0;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    of += mark[i].type == type ? 1 : 0;
  return of;
}

static const FpMark *
text_of (const FpDrawing *drawing)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_TEXT)
      return &mark[i];
  return NULL;
}

static FpDrawing *
draw (const FpEvidence *evidence, FpViewId view, const FpDrawing *under)
{
  FpDrawing *drawing = fp_drawing_new (300, 300);
  const FpLaid laid = { under, { 0, 0 }, 1 };

  fp_drawing_add_evidence (drawing, evidence, view, NULL, &layout, &laid, under != NULL ? 1 : 0, &all);
  return drawing;
}

/* 1500 along the altar: true in plan and elevation, and seen end on in the section. */
static void
test_length (void)
{
  g_autoptr (FpEvidence) evidence = fp_evidence_new ();

  fp_evidence_add_length (evidence, (FpVec3) { -500, 0, 900 }, (FpVec3) { 1000, 0, 900 }, 1);
  for (FpViewId v = FP_VIEW_PLAN; v < FP_N_VIEWS; v++)
    {
      g_autoptr (FpDrawing) drawing = draw (evidence, v, NULL);
      const FpMark *text = text_of (drawing);

      if (v == FP_VIEW_SECTION)
        {
          g_assert_null (text);
          g_assert_cmpuint (marks_of (drawing, FP_MARK_CIRCLE), ==, 1);
          continue;
        }
      g_assert_cmpstr (text->text, ==, "1500");
      g_assert_cmpuint (marks_of (drawing, FP_MARK_LINE), ==, 3); /* the line and two strokes: nothing else is in its way */
    }
}

/* On a slant to all views but the plan, 3-4-5. */
static void
test_shortened (void)
{
  g_autoptr (FpEvidence) evidence = fp_evidence_new ();

  fp_evidence_add_length (evidence, (FpVec3) { 0, 0, 0 }, (FpVec3) { 300, 400, 0 }, 2);
  {
    g_autoptr (FpDrawing) plan = draw (evidence, FP_VIEW_PLAN, NULL), elevation = draw (evidence, FP_VIEW_ELEVATION, NULL);

    g_assert_cmpstr (text_of (plan)->text, ==, "2 × 500");
    g_assert_null (text_of (elevation));
    g_assert_cmpuint (marks_of (elevation, FP_MARK_LINE), ==, 1);
  }
}

/* Where an edge runs along what was measured, the dimension lies beside it with extension lines. */
static void
test_beside (void)
{
  g_autoptr (FpEvidence) evidence = fp_evidence_new ();
  g_autoptr (FpDrawing) under = fp_drawing_new (300, 300), drawing = NULL;
  const FpMark *text;

  fp_evidence_add_length (evidence, (FpVec3) { 0, 0, 0 }, (FpVec3) { 2000, 0, 0 }, 1);
  fp_drawing_line (under, FP_PEN_OUTLINE, (FpPoint) { 100, 100 }, (FpPoint) { 140, 100 });
  drawing = draw (evidence, FP_VIEW_PLAN, under);
  text = text_of (drawing);
  g_assert_cmpuint (marks_of (drawing, FP_MARK_LINE), ==, 5);
  g_assert_cmpfloat (fabs (text->at.y - 100), >, 3);
  g_assert_cmpfloat (text->at.x, >, 100);
  g_assert_cmpfloat (text->at.x, <, 140);
}

/* No figure lies on lettering while there is room beside it. */
static void
test_off_lettering (void)
{
  g_autoptr (FpEvidence) evidence = fp_evidence_new ();
  g_autoptr (FpDrawing) under = fp_drawing_new (300, 300), drawing = NULL;
  const FpMark *text;

  fp_evidence_add_length (evidence, (FpVec3) { 0, 0, 0 }, (FpVec3) { 2000, 0, 0 }, 1);
  fp_drawing_text (under, (FpPoint) { 105, 101 }, 2.5, 0, FP_ALIGN_LEFT, "High altar of old");
  drawing = draw (evidence, FP_VIEW_PLAN, under);
  text = text_of (drawing);
  g_assert_true (text->at.y > 103.5 || text->at.y + text->height < 101);
}

/* A title is higher than half a figure is wide, and no figure lies on one; where nothing else is left, it is left out. */
static void
test_off_titles (void)
{
  g_autoptr (FpEvidence) evidence = fp_evidence_new ();

  fp_evidence_add_length (evidence, (FpVec3) { 0, 0, 0 }, (FpVec3) { 0, 250, 0 }, 1);
  for (guint full = 0; full < 2; full++)
    {
      g_autoptr (FpDrawing) under = fp_drawing_new (300, 300), drawing = NULL;
      const FpMark *text;

      for (double y = full ? 0 : 102; y < (full ? 300 : 103); y += 2)
        fp_drawing_text (under, (FpPoint) { 20, y }, 1.8, 0, FP_ALIGN_LEFT,
                         "Plan Plan Plan Plan Plan Plan Plan Plan Plan Plan Plan Plan Plan Plan Plan Plan Plan Plan Plan Plan Plan");
      drawing = draw (evidence, FP_VIEW_PLAN, under);
      text = text_of (drawing);
      g_assert_true ((text == NULL) == (full == 1));
      if (text != NULL) /* upright: it runs upwards from there */
        g_assert_true (text->at.y > 103.8 || text->at.y + fp_lettering_width (text->text, text->height) < 102);
    }
}

/* A length is told as in words: whole millimetres, tenths of what is small; and as its words where it has them. */
static void
test_told (void)
{
  static const struct { double length; const char *words, *figure; } told[] = {
    { 27202.6, NULL, "27203" }, { 12.34, NULL, "12.3" }, { 1500, "1 500 mm", "1 500 mm" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (told); i++)
    {
      g_autoptr (FpEvidence) evidence = fp_evidence_new ();
      g_autoptr (FpDrawing) drawing = NULL;

      fp_evidence_add_length (evidence, (FpVec3) { 0, 0, 0 }, (FpVec3) { told[i].length, 0, 0 }, 1);
      fp_evidence_set_figure (evidence, told[i].words);
      drawing = draw (evidence, FP_VIEW_PLAN, NULL);
      g_assert_cmpuint (marks_of (drawing, FP_MARK_TEXT), ==, 1);
      g_assert_cmpstr (text_of (drawing)->text, ==, told[i].figure);
    }
}

/* What was counted is told from above; from the side only a few. */
static void
test_rings (void)
{
  g_autoptr (FpEvidence) evidence = fp_evidence_new ();

  for (guint i = 0; i < 40; i++)
    fp_evidence_add_each (evidence, (FpVec3) { 500.0 * i, 0, 0 });
  {
    g_autoptr (FpDrawing) plan = draw (evidence, FP_VIEW_PLAN, NULL), section = draw (evidence, FP_VIEW_SECTION, NULL);

    g_assert_cmpuint (marks_of (plan, FP_MARK_CIRCLE), ==, 40);
    g_assert_cmpuint (marks_of (section, FP_MARK_CIRCLE), ==, 0);
  }
}

/* A thing has a line about it, a little outside its silhouette. */
static void
test_body (void)
{
  g_autoptr (FpEvidence) evidence = fp_evidence_new ();
  const FpVec3 corner[4] = { { 0, 0, 0 }, { 1000, 0, 0 }, { 1000, 500, 0 }, { 0, 500, 900 } };
  g_autoptr (FpDrawing) drawing = NULL;
  const FpMark *mark;
  FpBox box;
  guint n;

  fp_evidence_add_body (evidence, corner, 4);
  drawing = draw (evidence, FP_VIEW_PLAN, NULL);
  mark = fp_drawing_marks (drawing, &n);
  g_assert_cmpuint (n, ==, 1);
  box = fp_outline_box (fp_drawing_points (drawing) + mark->first, mark->n);
  g_assert_cmpfloat (box.x0, <, 100);
  g_assert_cmpfloat (box.x0, >, 98);
  g_assert_cmpfloat (box.y1, >, 110);
  g_assert_cmpfloat (box.y1, <, 112);
}

/* The floor of a nave is outlined from above alone; a step, however wide, from all sides. */
static void
test_floors (void)
{
  g_autoptr (FpEvidence) floor = fp_evidence_new (), step = fp_evidence_new ();
  const FpVec3 nave[4] = { { -6000, -20000, 0 }, { 6000, -20000, 0 }, { 6000, 0, 0 }, { -6000, 0, 0 } };
  const FpVec3 tread[4] = { { -6000, -300, 150 }, { 6000, -300, 150 }, { 6000, 0, 150 }, { -6000, 0, 150 } };

  fp_evidence_add_outline (floor, nave, 4);
  fp_evidence_add_outline (step, tread, 4);
  for (FpViewId v = FP_VIEW_PLAN; v < FP_N_VIEWS; v++)
    {
      g_autoptr (FpDrawing) of_floor = draw (floor, v, NULL), of_step = draw (step, v, NULL);

      g_assert_cmpuint (marks_of (of_floor, FP_MARK_LINE), ==, v == FP_VIEW_PLAN ? 1 : 0);
      g_assert_cmpuint (marks_of (of_step, FP_MARK_LINE), ==, 1);
    }
}

/* What a sheet does not show of the church is not drawn on it. */
static void
test_clipped (void)
{
  g_autoptr (FpEvidence) evidence = fp_evidence_new ();
  FpViewLayout part = layout;
  g_autoptr (FpDrawing) drawing = fp_drawing_new (300, 300);
  guint n;

  fp_evidence_add_length (evidence, (FpVec3) { 0, 0, 0 }, (FpVec3) { 9000, 0, 0 }, 1);
  part.clip = (FpBox) { -5000, -5000, 5000, 5000 };
  fp_drawing_add_evidence (drawing, evidence, FP_VIEW_PLAN, NULL, &part, NULL, 0, &all);
  fp_drawing_marks (drawing, &n);
  g_assert_cmpuint (n, ==, 0);
}

/* By itself it is no larger than its marks, and lies where it would. */
static void
test_by_itself (void)
{
  g_autoptr (FpEvidence) evidence = fp_evidence_new (), none = fp_evidence_new ();
  g_autoptr (FpDrawing) own = NULL, over = NULL;
  FpPoint corner;

  fp_evidence_add_length (evidence, (FpVec3) { 0, 0, 0 }, (FpVec3) { 2000, 0, 0 }, 1);
  own = fp_evidence_draw (evidence, FP_VIEW_PLAN, NULL, &layout, NULL, 0, &all, &corner);
  over = draw (evidence, FP_VIEW_PLAN, NULL);
  g_assert_cmpfloat_with_epsilon (text_of (own)->at.x + corner.x, text_of (over)->at.x, 1e-9);
  g_assert_cmpfloat_with_epsilon (text_of (own)->at.y + corner.y, text_of (over)->at.y, 1e-9);
  g_assert_cmpfloat (fp_drawing_width (own), <, 50);
  g_assert_cmpfloat (fp_drawing_height (own), <, 10);
  g_assert_null (fp_evidence_draw (none, FP_VIEW_PLAN, NULL, &layout, NULL, 0, &all, &corner));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/evidence-drawn/length", test_length);
  g_test_add_func ("/evidence-drawn/shortened", test_shortened);
  g_test_add_func ("/evidence-drawn/beside", test_beside);
  g_test_add_func ("/evidence-drawn/off-lettering", test_off_lettering);
  g_test_add_func ("/evidence-drawn/off-titles", test_off_titles);
  g_test_add_func ("/evidence-drawn/told", test_told);
  g_test_add_func ("/evidence-drawn/rings", test_rings);
  g_test_add_func ("/evidence-drawn/body", test_body);
  g_test_add_func ("/evidence-drawn/floors", test_floors);
  g_test_add_func ("/evidence-drawn/clipped", test_clipped);
  g_test_add_func ("/evidence-drawn/by-itself", test_by_itself);
  return g_test_run ();
}
