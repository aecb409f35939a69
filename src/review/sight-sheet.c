/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sight-sheet.c - what every place sees, on paper */
#include "footpace/review.h"

#include "footpace/error.h"

#include <math.h>

/* All in paper mm; design judgement. */
#define WORDS   74.0  /* the column of words and key, on the right */
#define GRAPH   80.0  /* the column of the graph, left of it; on narrow paper it stands under the words */
#define NARROW  300.0
#define GAP     6.0
#define TITLES  14.0  /* above a view: its title            */
#define LETTERS 2.5
#define LINE    4.0
#define WORST   8

typedef struct
{
  const FpMeasuring *of;
  FpMoment           moment;
  FpFocus            focus;
  int                place;
  FpBox              views, words, graph;
  FpProjection      *plan, *section; /* section: NULL where there is no line of sight */
  FpCut              along;
  double             scale;
  gboolean           stacked;        /* the section stands over the plan, not beside it */
  gboolean           tells_blind;
  const GArray      *blind;          /* (element-type FpBlindFloor), of the sight; NULL: not told of */
} Making;

/* --- views -------------------------------------------------------------------------- */

static double
width_of (const FpBox *box)
{
  return box->x1 - box->x0;
}

static double
height_of (const FpBox *box)
{
  return box->y1 - box->y0;
}

static gboolean
fits (const Making *m, double scale)
{
  const FpBox plan = fp_projection_box (m->plan), none = { 0, 0, 0, 0 };
  const FpBox section = m->section != NULL ? fp_projection_box (m->section) : none;
  const double w0 = width_of (&plan) / scale, h0 = height_of (&plan) / scale + TITLES;
  const double w1 = width_of (&section) / scale, h1 = m->section != NULL ? height_of (&section) / scale + TITLES : 0;
  const double width = m->stacked ? MAX (w0, w1) : w0 + (m->section != NULL ? 2 * GAP : 0) + w1;
  const double height = m->stacked ? h0 + h1 : MAX (h0, h1);

  return width <= width_of (&m->views) && height <= height_of (&m->views);
}

/* The largest that fits, or what was asked for; 0: nothing does. */
static double
scale_for (const Making *m, double wanted)
{
  guint n;
  const double *scale = fp_sheet_scales (&n);

  if (wanted > 0)
    return fits (m, wanted) ? wanted : 0;
  for (guint i = 0; i < n; i++)
    if (fits (m, scale[i]))
      return scale[i];
  return 0;
}

static FpViewLayout
layout_at (const Making *m, const FpBox *box, double x, double y)
{
  return (FpViewLayout) {
    .scale = m->scale, .clip = FP_BOX_EMPTY, .labels = FALSE,
    .units = fp_project_brief (fp_scene_project (m->of->scene))->units,
    .origin = { x - box->x0 / m->scale, y - box->y0 / m->scale },
    .section = { [FP_VIEW_SECTION] = m->along },
  };
}

static void
draw_views (const Making *m, FpDrawing *drawing)
{
  const FpBox plan = fp_projection_box (m->plan);
  const double y = m->stacked ? m->views.y0
                              : m->views.y0 + (height_of (&m->views) - TITLES - height_of (&plan) / m->scale) / 2;
  FpViewLayout layout = layout_at (m, &plan, m->views.x0, y);

  layout.section[FP_VIEW_SECTION].placed = FALSE;
  fp_drawing_add_blind (drawing, m->blind, &layout);
  fp_drawing_add_view (drawing, m->plan, &layout);
  fp_drawing_add_sight (drawing, m->of->sight, m->moment, m->focus, &layout);
  if (m->section == NULL)
    return;
  fp_drawing_add_sight_line (drawing, m->of->sight, (guint) m->place, m->moment, m->focus, FP_VIEW_PLAN, &layout,
                             TRUE);
  const FpBox section = fp_projection_box (m->section);
  layout = m->stacked ? layout_at (m, &section, m->views.x0, m->views.y1 - TITLES - height_of (&section) / m->scale)
                      : layout_at (m, &section, m->views.x0 + width_of (&plan) / m->scale + 2 * GAP, y);
  fp_drawing_add_view (drawing, m->section, &layout);
  fp_drawing_add_sight_line (drawing, m->of->sight, (guint) m->place, m->moment, m->focus, FP_VIEW_SECTION, &layout,
                             TRUE);
}

/* --- words and graph -------------------------------------------------------------------- */

/* From @y down; returns where the next line comes. */
static double
add_words (const Making *m, FpDrawing *drawing, double y, const char *text)
{
  g_autoptr (GPtrArray) lines = fp_lettering_wrap (text, LETTERS, width_of (&m->words));

  for (guint i = 0; i < lines->len && y > m->words.y0 + LINE; i++, y -= LINE)
    fp_drawing_text (drawing, (FpPoint) { m->words.x0, y - LETTERS }, LETTERS, 0, FP_ALIGN_LEFT,
                     g_ptr_array_index (lines, i));
  return y;
}

static double
add_place (const Making *m, FpDrawing *drawing, double y, guint place)
{
  g_autofree char *name = fp_people_name (m->of->people, place);
  g_autofree char *words = fp_sight_place_words (m->of, place, m->moment, m->focus);
  g_autofree char *line = g_strdup_printf ("%s: %s", name, words);
  g_auto (GStrv) parts = g_strsplit (line, " %", -1);
  g_autofree char *together = g_strjoinv ("\u00a0%", parts); /* a number and its sign stay on one line */

  return add_words (m, drawing, y, together);
}

static double
add_worst (const Making *m, FpDrawing *drawing, double y)
{
  g_autoptr (GArray) worst = fp_sight_worst (m->of, m->moment, m->focus, WORST);

  if (worst->len == 0)
    return y;
  y = add_words (m, drawing, y, "Who sees least");
  for (guint i = 0; i < worst->len; i++)
    y = add_place (m, drawing, y, g_array_index (worst, guint, i));
  return y - GAP;
}

/* Whose eyes and heads these are, and what hangs on that. */
static double
add_population (const Making *m, FpDrawing *drawing, double y)
{
  g_autofree char *words = fp_people_population (m->of->people);

  y = add_words (m, drawing, y, words);
  if (fp_project_brief (fp_scene_project (m->of->scene))->varied)
    {
      g_autoptr (FpSightSpread) spread = fp_sight_spread_new (m->of->scene, FP_SIGHT_SEEDS);
      g_autofree char *sentence = fp_sight_spread_sentence (spread, m->moment, m->focus);
      y = add_words (m, drawing, y, sentence);
    }
  return y - GAP;
}

/* Returns how far down it came. */
static double
draw_words (const Making *m, FpDrawing *drawing)
{
  g_autofree char *sentence = fp_sight_sentence (m->of, m->moment, m->focus);
  const FpUnits units = fp_project_brief (fp_scene_project (m->of->scene))->units;
  const gboolean any = fp_blind_area (m->blind, FALSE) + fp_blind_area (m->blind, TRUE) > 0;
  g_autofree char *nowhere = any || !m->tells_blind ? NULL : fp_sight_blind_sentence (m->of, m->moment, m->focus); /* otherwise it is in the key */
  FpBox box = m->words;

  fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, -1);
  box.y1 = add_words (m, drawing, box.y1, sentence) - GAP;
  if (nowhere != NULL)
    box.y1 = add_words (m, drawing, box.y1, nowhere) - GAP;
  box.y1 = add_population (m, drawing, box.y1);
  if (m->place >= 0)
    box.y1 = add_place (m, drawing, box.y1, (guint) m->place) - GAP;
  box.y1 -= fp_drawing_add_sight_key (drawing, &box);
  box.y1 -= fp_drawing_add_blind_key (drawing, m->blind, units, &box) + GAP;
  return add_worst (m, drawing, box.y1);
}

static void
draw_graph (const Making *m, FpDrawing *drawing)
{
  FpBox box = m->graph;
  guint left_out;

  fp_drawing_text (drawing, (FpPoint) { box.x0, box.y1 - LETTERS }, LETTERS, 0, FP_ALIGN_LEFT, "By row: the mean share seen");
  box.y1 -= LINE + 1;
  box.y0 += LINE; /* for what is left out */
  left_out = fp_drawing_add_sight_rows (drawing, m->of->sight, m->moment, m->focus, &box);
  if (left_out > 0)
    {
      g_autofree char *words = g_strdup_printf ("%u more block%s of seats", left_out, left_out == 1 ? "" : "s");
      fp_drawing_text (drawing, (FpPoint) { box.x0, m->graph.y0 }, LETTERS, 0, FP_ALIGN_LEFT, words);
    }
}

/* Over the section, beside the plan, where that is room enough for the graph. */
static gboolean
find_room_over_section (const Making *m, FpBox *room)
{
  const FpBox plan = fp_projection_box (m->plan);
  double foot = m->views.y0;

  if (m->stacked)
    return FALSE;
  if (m->section != NULL)
    {
      const FpBox section = fp_projection_box (m->section);
      foot += (height_of (&m->views) - TITLES - height_of (&plan) / m->scale) / 2 + height_of (&section) / m->scale + TITLES;
    }
  *room = (FpBox) { m->views.x0 + width_of (&plan) / m->scale + 4 * GAP, foot, m->words.x0 - GAP, m->views.y1 };
  return width_of (room) >= GRAPH && height_of (room) >= GRAPH;
}

/* @beside: the graph has a column of its own, where the paper is wide enough */
static void
lay_columns (Making *m, const FpBox *content, gboolean beside)
{
  m->words = (FpBox) { content->x1 - WORDS, content->y0, content->x1, content->y1 };
  m->graph = m->words;
  if (beside && width_of (content) >= NARROW)
    {
      m->graph.x1 = m->words.x0 - GAP;
      m->graph.x0 = m->graph.x1 - GRAPH;
    }
  m->views = (FpBox) { content->x0, content->y0, m->graph.x0 - GAP, content->y1 };
}

/* Rather a larger scale than room for the graph; of equal scales the first. */
static double
arrange (Making *m, const FpBox *content, double wanted)
{
  static const struct { gboolean beside, stacked; } WAYS[] = {
    { TRUE, FALSE }, { TRUE, TRUE }, { FALSE, FALSE }, { FALSE, TRUE },
  };
  double best = 0;
  guint way = 0;

  for (guint i = 0; i < G_N_ELEMENTS (WAYS); i++)
    {
      m->stacked = WAYS[i].stacked && m->section != NULL;
      lay_columns (m, content, WAYS[i].beside);
      const double scale = scale_for (m, wanted);
      if (scale > 0 && (!(best > 0) || scale < best))
        {
          best = scale;
          way = i;
        }
    }
  m->stacked = WAYS[way].stacked && m->section != NULL;
  lay_columns (m, content, WAYS[way].beside);
  return best;
}

/* --- the sheet ------------------------------------------------------------------------------ */

/* The section lies where the eye is. */
static void
project (Making *m, FpHidden hidden)
{
  FpSightLine line;

  m->plan = fp_projection_new_cut (m->of->scene, FP_VIEW_PLAN, NULL, hidden);
  if (m->place >= 0 && fp_sight_line (m->of->sight, (guint) m->place, m->moment, m->focus, &line))
    {
      m->along = (FpCut) { .placed = TRUE, .at = line.goal.x };
      m->section = fp_projection_new_cut (m->of->scene, FP_VIEW_SECTION, &m->along, hidden);
    }
}

static FpDrawing *
draw (Making *m, const FpSheetSpec *spec, GError **error)
{
  g_autofree char *title = g_strdup_printf ("Sight: %s", fp_focus_label (m->focus));
  FpSheetSpec bare = *spec;
  FpDrawing *drawing;
  FpBox content;

  bare.findings = NULL;
  fp_drawing_unref (fp_sheet_blank_of (m->of->scene, &bare, title, "sight", 1, &content));
  m->scale = arrange (m, &content, spec->scale);
  if (!(m->scale > 0))
    {
      g_set_error (error, FP_ERROR, FP_ERROR_RANGE,
                   "The plan does not fit this paper at that scale; take larger paper or let the scale be found");
      return NULL;
    }
  drawing = fp_sheet_blank_of (m->of->scene, &bare, title, "sight", m->scale, &content);
  draw_views (m, drawing);
  const double foot = draw_words (m, drawing);
  FpBox room;
  if (find_room_over_section (m, &room) && height_of (&room) * width_of (&room) > height_of (&m->graph) * GRAPH)
    m->graph = room;
  else if (m->graph.x0 >= m->words.x0)
    m->graph.y1 = foot;
  draw_graph (m, drawing);
  return drawing;
}

FpDrawing *
fp_sight_sheet (const FpMeasuring *of, const FpSightLook *look, const FpSheetSpec *spec, double *scale, GError **error)
{
  Making making = { .of = of, .moment = look->moment, .focus = look->focus, .place = look->place, .tells_blind = look->blind };
  FpDrawing *drawing;

  if (!fp_sight_has (of->sight, look->focus))
    {
      g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "There is no %s to see in this alternative", fp_focus_label (look->focus));
      return NULL;
    }
  if (look->blind)
    making.blind = fp_sight_blind (of->sight, look->moment, look->focus, NULL);
  project (&making, spec->hidden);
  drawing = draw (&making, spec, error);
  if (drawing != NULL && scale != NULL)
    *scale = making.scale;
  fp_projection_unref (making.plan);
  if (making.section != NULL)
    fp_projection_unref (making.section);
  return drawing;
}
