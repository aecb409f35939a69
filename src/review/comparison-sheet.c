/* SPDX-License-Identifier: GPL-3.0-or-later */
/* comparison-sheet.c - the alternatives side by side on paper
 *
 * Each has a column: its name, its elevation and its plan, all of them to one
 * scale and of the same part of the church, and under them the table.  Where
 * that would make the drawings too small, table and drawings have pages of
 * their own; what does not fit beside goes onto further pages.
 */
#include "comparison-private.h"

#include <math.h>

/* All in paper mm. */
#define LABEL_WIDTH  50.0
#define COLUMN_LEAST 58.0
#define COLUMN_MOST  180.0
#define HEAD_ROOM    12.4 /* two lines of the larger lettering, three of the smaller */
#define TEXT         2.5
#define ROW          4.8
#define GAP          4.0  /* about a drawing                                  */
#define NOTE         10.0 /* what the marks say, under the table              */
#define MARK         1.8
#define SMALL_TEXT   1.8
#define SMALL        200.0 /* scale at which a sanctuary can still be read */

typedef struct
{
  const FpComparison *of;
  const FpSheetSpec  *spec;
  FpBox               content;    /* of a page                                */
  guint               per_page;   /* columns                                  */
  gboolean            apart;      /* drawings and table on pages of their own */
  double              scale;
  FpBox               elevation, plan; /* view coordinates: the same of all alternatives */
  FpCut               cut;        /* where all elevations are cut: what stands foremost in any stands behind it */
  guint               page, pages;
  GPtrArray          *out;
} Making;

/* --- how large -------------------------------------------------------------------- */

static FpBox
common_view (const FpComparison *self, FpViewId view)
{
  FpBox all = FP_BOX_EMPTY;

  for (guint c = 0; c < self->columns; c++)
    {
      const FpBox one = fp_view_sanctuary (fp_findings_scene (self->findings[c]), view);
      fp_box_add_box (&all, &one);
    }
  return all;
}

/* One wall cut here and open there would tell of a difference that is none. */
static FpCut
common_cut (const FpComparison *self)
{
  FpCut cut = { .at = G_MAXDOUBLE };

  for (guint c = 0; c < self->columns; c++)
    {
      const double plane = fp_elevation_plane (fp_findings_scene (self->findings[c]));
      if (plane > -G_MAXDOUBLE)
        cut.at = MIN (cut.at, plane);
    }
  cut.placed = cut.at < G_MAXDOUBLE;
  return cut;
}

static double
table_height (const FpComparison *self)
{
  return self->rows * ROW + NOTE;
}

static double
head_height (void)
{
  return HEAD_ROOM + 2;
}

static double
column_width (const Making *m, guint columns)
{
  return MIN (COLUMN_MOST, (m->content.x1 - m->content.x0 - LABEL_WIDTH) / MAX (columns, 1u));
}

/* Whether elevation and plan, one above the other, fit into a column @height mm high. */
static gboolean
drawings_fit (const Making *m, double scale, double height)
{
  const double width = MAX (m->elevation.x1 - m->elevation.x0, m->plan.x1 - m->plan.x0) / scale;
  const double tall = (m->elevation.y1 - m->elevation.y0 + m->plan.y1 - m->plan.y0) / scale;

  return width <= column_width (m, m->per_page) - 2 * GAP && tall <= height - head_height () - 3 * GAP;
}

/* 0 when none fits. */
static double
largest_scale (const Making *m, double height)
{
  guint n;
  const double *scale = fp_sheet_scales (&n);

  for (guint i = 0; i < n; i++)
    if (drawings_fit (m, scale[i], height))
      return scale[i];
  return 0;
}

static gboolean
choose_scale (Making *m, GError **error)
{
  const double height = m->content.y1 - m->content.y0;
  const double together = largest_scale (m, height - table_height (m->of)), alone = largest_scale (m, height);
  const double wanted = m->spec->scale;
  g_autofree char *paper = g_strdup (fp_paper_id (m->spec->paper));

  paper[0] = g_ascii_toupper (paper[0]);
  /* Small drawings over their table, rather than large ones without it. */
  m->apart = together == 0 || (together > SMALL && together > 2 * alone) || (wanted > 0 && wanted < together);
  m->scale = wanted > 0 ? wanted : m->apart ? alone : together;
  if (m->scale > 0 && (wanted == 0 || drawings_fit (m, m->scale, m->apart ? height : height - table_height (m->of))))
    return TRUE;
  if (alone > 0)
    g_set_error (error, FP_ERROR, FP_ERROR_RANGE,
                 "the comparison does not fit %s at 1:%g; the largest scale that fits is 1:%g",
                 paper, wanted, alone);
  else
    g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "the comparison fits %s at no scale; choose larger paper", paper);
  return FALSE;
}

/* --- a page ---------------------------------------------------------------------------- */

typedef struct
{
  FpDrawing *drawing;
  FpBox      content;
  guint      first, n;   /* columns on this page     */
  double     width;      /* of one                   */
  double     x;          /* left edge of the first   */
} Page;

/* The legend is that of the first alternative that proposes something. */
static const FpScene *
scene_for_legend (const FpComparison *self, guint first, guint n)
{
  for (guint c = first; c < first + n; c++)
    {
      const FpScheduleCounts counts = fp_schedule_counts (fp_findings_scene (self->findings[c]));
      if (counts.added + counts.moved + counts.removed > 0)
        return fp_findings_scene (self->findings[c]);
    }
  return fp_findings_scene (self->findings[first]);
}

/* @scale: 0: nothing on it is drawn to scale */
static void
begin_page (Making *m, Page *page, guint first, guint n, double scale)
{
  FpSheetSpec spec = *m->spec;

  spec.findings = NULL;
  spec.page = ++m->page;
  spec.pages = m->pages;
  page->first = first;
  page->n = n;
  page->drawing = fp_sheet_blank (scene_for_legend (m->of, first, n), &spec, "Comparison of alternatives", scale,
                                  &page->content);
  page->width = column_width (m, n);
  page->x = page->content.x0 + LABEL_WIDTH;
  g_ptr_array_add (m->out, page->drawing);
}

static double
column_x (const Page *page, guint i)
{
  return page->x + i * page->width;
}

/* Lettering in which a name is tried, the largest first. */
typedef struct { double height, line; guint lines; } Lettering;

static const Lettering HEADS[] = { { 3.5, 5.2, 2 }, { 2.5, 4.0, 3 }, { 1.8, 2.9, 4 } };

/* Whole, in the largest lettering in which it finds room; only what is longer than the smallest allows is cut. */
static void
draw_head (const Page *page, guint i, const char *name)
{
  const double room = page->width - 2 * GAP;
  g_autoptr (GPtrArray) lines = NULL;
  guint way = 0;

  for (; way < G_N_ELEMENTS (HEADS); way++)
    {
      g_clear_pointer (&lines, g_ptr_array_unref);
      lines = fp_lettering_wrap (name, HEADS[way].height, room);
      if (lines->len <= HEADS[way].lines)
        break;
    }
  way = MIN (way, (guint) G_N_ELEMENTS (HEADS) - 1);
  for (guint l = 0; l < MIN (lines->len, HEADS[way].lines); l++)
    {
      const gboolean cut = l + 1 == HEADS[way].lines && lines->len > HEADS[way].lines;
      g_autofree char *text = g_strconcat (g_ptr_array_index (lines, l), cut ? " …" : "", NULL);
      const FpPoint at = { column_x (page, i) + page->width / 2,
                           page->content.y1 - HEADS[way].height - l * HEADS[way].line };
      fp_drawing_text (page->drawing, at, HEADS[way].height, 0, FP_ALIGN_MIDDLE, text);
    }
}

static void
draw_heads (const Making *m, const Page *page)
{
  for (guint i = 0; i < page->n; i++)
    draw_head (page, i, m->of->head[page->first + i]);
}

/* @foot: paper y of the lower edge of @clip */
static void
draw_view (const Making *m, const Page *page, guint i, FpViewId view, const FpBox *clip, double foot)
{
  const FpScene *scene = fp_findings_scene (m->of->findings[page->first + i]);
  g_autoptr (FpProjection) projection = fp_projection_new_cut (scene, view, view == FP_VIEW_ELEVATION ? &m->cut : NULL,
                                                                m->spec->hidden);
  const FpViewLayout layout = {
    .scale = m->scale, .clip = *clip, .units = fp_project_brief (fp_scene_project (scene))->units,
    .origin = { column_x (page, i) + page->width / 2 - (clip->x0 + clip->x1) / 2 / m->scale,
                foot - clip->y0 / m->scale },
  };

  fp_drawing_add_view (page->drawing, projection, &layout);
}

static void
draw_label (const Page *page, double y, const char *text)
{
  fp_drawing_set_item (page->drawing, NULL, FP_STANDING_EXISTING, -1);
  fp_drawing_text (page->drawing, (FpPoint) { page->content.x0, y }, TEXT, 0, FP_ALIGN_LEFT, text);
}

/* All plans stand on one line, and all elevations. */
static void
draw_drawings (const Making *m, const Page *page)
{
  const double high = (m->elevation.y1 - m->elevation.y0) / m->scale;
  const double deep = (m->plan.y1 - m->plan.y0) / m->scale;
  const double elevation = page->content.y1 - head_height () - GAP - high, plan = elevation - GAP - deep;

  draw_label (page, elevation + high / 2, "Elevation");
  draw_label (page, plan + deep / 2, "Plan");
  for (guint i = 0; i < page->n; i++)
    {
      draw_view (m, page, i, FP_VIEW_ELEVATION, &m->elevation, elevation);
      draw_view (m, page, i, FP_VIEW_PLAN, &m->plan, plan);
    }
  fp_drawing_set_item (page->drawing, NULL, FP_STANDING_EXISTING, -1);
}

/* --- table ------------------------------------------------------------------------------- */

static void
draw_mark (const Page *page, FpPoint at)
{
  /* A diamond, as the window marks the same. */
  const double half = MARK / 2;
  const FpPoint pt[4] = { { at.x + half, at.y }, { at.x + MARK, at.y + half }, { at.x + half, at.y + MARK },
                          { at.x, at.y + half } };

  fp_drawing_area (page->drawing, FP_PEN_EDGE, FP_FILL_INK, 0, pt, 4);
}

static void
draw_row (const Making *m, const Page *page, guint row, double foot)
{
  const double y = foot + (ROW - TEXT) / 2;
  g_autofree char *label = fp_lettering_shorten (m->of->label[row], TEXT, LABEL_WIDTH - 2);

  fp_drawing_text (page->drawing, (FpPoint) { page->content.x0, y }, TEXT, 0, FP_ALIGN_LEFT, label);
  for (guint i = 0; i < page->n; i++)
    {
      const double x = column_x (page, i) + GAP;
      g_autofree char *cell = fp_lettering_shorten (fp_comparison_cell (m->of, row, page->first + i), TEXT,
                                                    page->width - 2 * GAP - MARK);
      if (fp_comparison_short (m->of, row, page->first + i))
        draw_mark (page, (FpPoint) { x, y + 0.45 });
      fp_drawing_text (page->drawing, (FpPoint) { x + MARK + 1.2, y }, TEXT, 0, FP_ALIGN_LEFT, cell);
    }
  fp_drawing_line (page->drawing, FP_PEN_EDGE, (FpPoint) { page->content.x0, foot },
                   (FpPoint) { column_x (page, page->n), foot });
}

/* What the marks and what "seen" mean. */
static void
draw_note (const Page *page, double foot)
{
  static const char *const notes[] = {
    "outside a limit of the rules listed; who must confirm it is told in the report of findings",
    "Seen: " FP_COMPARISON_SEEN,
    "–  nothing there to measure",
  };
  double y = foot - 1.4;

  draw_mark (page, (FpPoint) { page->content.x0, y - SMALL_TEXT + 0.2 });
  for (guint i = 0; i < G_N_ELEMENTS (notes); i++)
    {
      const double indent = i == 0 ? MARK + 1.2 : 0;
      g_autofree char *line = fp_lettering_shorten (notes[i], SMALL_TEXT, page->content.x1 - page->content.x0 - indent);
      fp_drawing_text (page->drawing, (FpPoint) { page->content.x0 + indent, y - SMALL_TEXT }, SMALL_TEXT, 0,
                       FP_ALIGN_LEFT, line);
      y -= 3;
    }
}

static void
draw_table (const Making *m, const Page *page, double top)
{
  const double foot = top - m->of->rows * ROW, right = column_x (page, page->n);

  fp_drawing_set_item (page->drawing, NULL, FP_STANDING_EXISTING, -1);
  fp_drawing_line (page->drawing, FP_PEN_OUTLINE, (FpPoint) { page->content.x0, top }, (FpPoint) { right, top });
  for (guint r = 0; r < m->of->rows; r++)
    draw_row (m, page, r, top - (r + 1) * ROW);
  for (guint i = 0; i <= page->n; i++)
    fp_drawing_line (page->drawing, FP_PEN_EDGE, (FpPoint) { column_x (page, i), top },
                     (FpPoint) { column_x (page, i), foot });
  fp_drawing_line (page->drawing, FP_PEN_OUTLINE, (FpPoint) { page->content.x0, foot }, (FpPoint) { right, foot });
  draw_note (page, foot);
}

/* --- pages -------------------------------------------------------------------------------- */

static void
make_pages (Making *m, guint first, guint n)
{
  Page page;

  begin_page (m, &page, first, n, m->scale);
  draw_heads (m, &page);
  draw_drawings (m, &page);
  if (!m->apart)
    {
      draw_table (m, &page, page.content.y0 + table_height (m->of));
      return;
    }
  begin_page (m, &page, first, n, 0);
  draw_heads (m, &page);
  draw_table (m, &page, page.content.y1 - head_height ());
}

static void
unref_drawing (gpointer drawing)
{
  fp_drawing_unref (drawing);
}

/* How much room a page has, learnt from an empty one. */
static void
measure_page (Making *m)
{
  FpSheetSpec spec = *m->spec;

  spec.findings = NULL;
  fp_drawing_unref (fp_sheet_blank (fp_findings_scene (m->of->findings[0]), &spec, "", 0, &m->content));
}

GPtrArray *
fp_comparison_sheets (const FpComparison *self, const FpSheetSpec *spec, GError **error)
{
  Making m = { .of = self, .spec = spec };
  guint sets, most;

  m.out = g_ptr_array_new_with_free_func (unref_drawing);
  if (self->columns == 0)
    return m.out;
  measure_page (&m);
  most = (guint) MAX (1, floor ((m.content.x1 - m.content.x0 - LABEL_WIDTH) / COLUMN_LEAST));
  sets = (self->columns + most - 1) / most;
  m.per_page = (self->columns + sets - 1) / sets;
  m.elevation = common_view (self, FP_VIEW_ELEVATION);
  m.plan = common_view (self, FP_VIEW_PLAN);
  m.cut = common_cut (self);
  if (!choose_scale (&m, error))
    {
      g_ptr_array_unref (m.out);
      return NULL;
    }
  m.pages = (self->columns + m.per_page - 1) / m.per_page * (m.apart ? 2 : 1);
  for (guint first = 0; first < self->columns; first += m.per_page)
    make_pages (&m, first, MIN (m.per_page, self->columns - first));
  return m.out;
}
