/* SPDX-License-Identifier: GPL-3.0-or-later */
/* comparison-sheet.c - the alternatives side by side on paper
 *
 * Each has a column: its name, its elevation and its plan, of the same part
 * of the church in all of them, and the table.  What stands on which page is
 * decided by comparison-arrange.h; what does not fit beside goes onto further
 * pages.
 */
#include "comparison-page.h"

#include <math.h>

/* Drawings with room to spare stand this far from each other, paper mm. */
#define GAP_MOST 14.0

typedef struct
{
  const FpComparison *of;
  const FpSheetSpec  *spec;
  FpArrangementRoom   room;       /* of a page                                */
  FpArrangement       how;
  FpBox               clip[FP_N_VIEWS]; /* view coordinates: the same of all alternatives */
  FpCut               cut;        /* where all elevations are cut: what stands foremost in any stands behind it */
  guint               page, pages;
  GPtrArray          *out;
} Making;

/* --- what of the church ------------------------------------------------------------ */

typedef FpBox (*FindBox) (const FpScene *scene, FpViewId view);

static FpBox
common_view (const FpComparison *self, FindBox find, FpViewId view)
{
  FpBox all = FP_BOX_EMPTY;

  for (guint c = 0; c < self->columns; c++)
    {
      const FpBox one = find (fp_findings_scene (self->findings[c]), view);
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

/* --- a page ---------------------------------------------------------------------------- */

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
static FpComparisonArea
begin_page (Making *m, guint first, guint n, double scale)
{
  FpComparisonArea area = { .label = FP_COMPARISON_LABEL, .first = first, .n = n };
  FpSheetSpec spec = *m->spec;

  spec.findings = NULL;
  spec.page = ++m->page;
  spec.pages = m->pages;
  area.drawing = fp_sheet_blank (scene_for_legend (m->of, first, n), &spec, "Comparison of alternatives", scale,
                                 &area.content);
  g_ptr_array_add (m->out, area.drawing);
  return area;
}

static double
below_head (const FpComparisonArea *area)
{
  return area->content.y1 - FP_COMPARISON_HEAD;
}

/* --- drawings ----------------------------------------------------------------------------- */

static double
scale_of (const Making *m, FpViewId view)
{
  return view == FP_VIEW_PLAN ? m->how.plan : m->how.elevation;
}

static double
height_of (const Making *m, FpViewId view)
{
  return (m->clip[view].y1 - m->clip[view].y0) / scale_of (m, view);
}

/* @foot: paper y of its lower edge */
static void
draw_view (const Making *m, const FpComparisonArea *area, guint i, FpViewId view, double foot)
{
  const FpScene *scene = fp_findings_scene (m->of->findings[area->first + i]);
  g_autoptr (FpProjection) projection = fp_projection_new_cut (scene, view, view == FP_VIEW_ELEVATION ? &m->cut : NULL,
                                                                m->spec->hidden);
  const FpBox *clip = &m->clip[view];
  const double scale = scale_of (m, view);
  const double middle = fp_comparison_column_x (area, i) + fp_comparison_column_width (area) / 2;
  const FpViewLayout layout = {
    .scale = scale, .clip = *clip, .units = fp_project_brief (fp_scene_project (scene))->units,
    .origin = { middle - (clip->x0 + clip->x1) / 2 / scale, foot - clip->y0 / scale },
  };

  fp_drawing_add_view (area->drawing, projection, &layout);
}

static void
draw_row_of (const Making *m, const FpComparisonArea *area, FpViewId view, double foot)
{
  fp_comparison_draw_label (area, foot + height_of (m, view) / 2, view == FP_VIEW_PLAN ? "Plan" : "Elevation");
  for (guint i = 0; i < area->n; i++)
    draw_view (m, area, i, view, foot);
  fp_drawing_set_item (area->drawing, NULL, FP_STANDING_EXISTING, -1);
}

/* All plans stand on one line, and all elevations; what room is left above @foot parts them. */
static void
draw_views (const Making *m, const FpComparisonArea *area, const FpViewId *view, guint n, double foot)
{
  double left = below_head (area) - foot, gap, y = below_head (area);

  for (guint i = 0; i < n; i++)
    left -= height_of (m, view[i]);
  gap = CLAMP (left / (n + 1), FP_COMPARISON_GAP, GAP_MOST);
  for (guint i = 0; i < n; i++)
    {
      y -= gap + height_of (m, view[i]);
      draw_row_of (m, area, view[i], y);
    }
}

/* --- the arrangements ----------------------------------------------------------------------- */

static const FpViewId BOTH[] = { FP_VIEW_ELEVATION, FP_VIEW_PLAN };

static void
draw_above (const Making *m, FpComparisonArea *area, const FpViewId *view, guint n)
{
  const double top = area->content.y0 + m->room.table;

  draw_views (m, area, view, n, top);
  fp_comparison_draw_table (m->of, area, top, FALSE);
  fp_comparison_draw_heads (m->of, area);
}

static void
draw_alone (const Making *m, const FpComparisonArea *area, const FpViewId *view, guint n)
{
  draw_views (m, area, view, n, area->content.y0);
  fp_comparison_draw_heads (m->of, area);
}

static void
draw_table_alone (const Making *m, FpComparisonArea *area, gboolean fills)
{
  fp_comparison_draw_table (m->of, area, below_head (area), fills);
  fp_comparison_draw_heads (m->of, area);
}

static void
draw_beside (const Making *m, const FpComparisonArea *area)
{
  FpComparisonArea left = *area, right = *area;

  right.content.x0 = area->content.x1 - fp_arrangement_table_width (area->n);
  left.content.x1 = right.content.x0 - FP_COMPARISON_APART;
  left.label = FP_COMPARISON_ASIDE;
  draw_alone (m, &left, BOTH, 2);
  draw_table_alone (m, &right, FALSE);
}

static void
make_pages (Making *m, guint first, guint n)
{
  FpComparisonArea area = begin_page (m, first, n, m->how.elevation);

  switch (m->how.id)
    {
    case FP_ARRANGED_ABOVE:
      draw_above (m, &area, BOTH, 2);
      break;
    case FP_ARRANGED_BESIDE:
      draw_beside (m, &area);
      break;
    case FP_ARRANGED_APART:
      draw_alone (m, &area, BOTH, 2);
      area = begin_page (m, first, n, 0);
      draw_table_alone (m, &area, TRUE);
      break;
    case FP_ARRANGED_BY_VIEW:
      draw_above (m, &area, &BOTH[0], 1);
      area = begin_page (m, first, n, m->how.plan);
      draw_alone (m, &area, &BOTH[1], 1);
      break;
    case FP_N_ARRANGEMENTS:
      break;
    }
}

/* --- how much room there is ------------------------------------------------------------------- */

/* As many columns a page as it has room for, and on each page nearly as many; how much a page holds is learnt from
 * an empty one. */
static void
measure_page (Making *m)
{
  FpSheetSpec spec = *m->spec;
  guint most, sets;
  FpBox content;

  spec.findings = NULL;
  fp_drawing_unref (fp_sheet_blank (fp_findings_scene (m->of->findings[0]), &spec, "", 0, &content));
  most = (guint) MAX (1, floor ((content.x1 - content.x0 - FP_COMPARISON_LABEL) / FP_COMPARISON_LEAST));
  sets = (m->of->columns + most - 1) / most;
  m->room = (FpArrangementRoom) {
    .width = content.x1 - content.x0, .height = content.y1 - content.y0,
    .columns = (m->of->columns + sets - 1) / sets, .table = fp_comparison_table_height (m->of),
  };
}

static void
measure_views (Making *m, FindBox find)
{
  FpBox *elevation = &m->clip[FP_VIEW_ELEVATION], *plan = &m->clip[FP_VIEW_PLAN];

  *elevation = common_view (m->of, find, FP_VIEW_ELEVATION);
  *plan = common_view (m->of, find, FP_VIEW_PLAN);
  m->room.wide = MAX (elevation->x1 - elevation->x0, plan->x1 - plan->x0);
  m->room.elevation = elevation->y1 - elevation->y0;
  m->room.plan = plan->y1 - plan->y0;
}

/* With whole walls at the edges, unless drawings can be larger without. */
static gboolean
find_arrangement (Making *m)
{
  FpArrangement whole;
  gboolean fits;

  measure_views (m, fp_view_sanctuary);
  fits = fp_arrangement_find (&m->room, m->spec->scale, &whole);
  measure_views (m, fp_view_sanctuary_close);
  if (fp_arrangement_find (&m->room, m->spec->scale, &m->how) && (!fits || fp_arrangement_is_better (&m->how, &whole)))
    return TRUE;
  measure_views (m, fp_view_sanctuary);
  m->how = whole;
  return fits;
}

/* 0 where none does. */
static double
largest_that_fits (const Making *m)
{
  FpArrangement any;
  guint n;
  const double *scale = fp_sheet_scales (&n);

  for (guint i = 0; i < n; i++)
    if (fp_arrangement_find (&m->room, scale[i], &any))
      return scale[i];
  return 0;
}

/* "A4", "Tabloid" */
static char *
paper_name (FpPaper paper)
{
  char *name = g_strdup (fp_paper_id (paper));

  name[0] = g_ascii_toupper (name[0]);
  return name;
}

static gboolean
choose_arrangement (Making *m, GError **error)
{
  g_autofree char *paper = paper_name (m->spec->paper);
  double largest;

  if (find_arrangement (m))
    return TRUE;
  measure_views (m, fp_view_sanctuary_close);
  largest = largest_that_fits (m);
  if (largest > 0)
    g_set_error (error, FP_ERROR, FP_ERROR_RANGE,
                 "The comparison does not fit %s at 1:%g; the largest scale that fits is 1:%g", paper, m->spec->scale,
                 largest);
  else
    g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "the comparison fits %s at no scale; choose larger paper", paper);
  return FALSE;
}

static void
unref_drawing (gpointer drawing)
{
  fp_drawing_unref (drawing);
}

GPtrArray *
fp_comparison_sheets (const FpComparison *self, const FpSheetSpec *spec, GError **error)
{
  g_autoptr (GPtrArray) out = g_ptr_array_new_with_free_func (unref_drawing);
  Making m = { .of = self, .spec = spec, .out = out };

  if (self->columns == 0)
    return g_steal_pointer (&out);
  m.cut = common_cut (self);
  measure_page (&m);
  if (!choose_arrangement (&m, error))
    return NULL;
  m.pages = (self->columns + m.room.columns - 1) / m.room.columns * fp_arrangement_pages (m.how.id);
  for (guint first = 0; first < self->columns; first += m.room.columns)
    make_pages (&m, first, MIN (m.room.columns, self->columns - first));
  return g_steal_pointer (&out);
}
