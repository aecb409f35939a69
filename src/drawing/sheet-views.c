/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sheet-views.h"

#include "footpace/evidence-drawing.h"
#include "footpace/way-drawing.h"

#include "annotation.h"
#include "board.h"
#include "regions.h"
#include "sheet-parts.h"

#include <math.h>
#include <string.h>

/* Between two views, paper mm. */
#define APART 10.0

/* About what is told in words beside the plan of a board, and how wide that is at least, paper mm. */
#define UNTOLD_GAP   8.0
#define UNTOLD_LEAST 50.0

#define MOST_VIEWS 2

/* Where a view lies, and what is written about it. */
typedef struct
{
  FpViewId      view;
  FpViewLayout  layout;
  FpAnnotation *annotation; /* owned */
  FpBox         outline;    /* paper mm about the view's own origin */
} OneView;

struct _FpSheetViews
{
  const FpScene     *scene;
  const FpSheetSpec *spec;
  FpUnits            units;
  FpBox              area;   /* paper mm */
  FpProjection      *projection[FP_N_VIEWS]; /* those that the sheet shows */
  FpCut              cut[FP_N_VIEWS];        /* where they are cut         */
  FpRegions          regions;
  double             scale;
  /* What was last found to fit: */
  const struct Way_ *way;
  OneView            one[MOST_VIEWS];
  guint              n;
  GPtrArray         *untold; /* utf8: what must be told and is not */
  double             words;  /* height that it takes at the foot of the area */
};

/* Two sections as elevation and section stand on the board: the one across on the left. */
static guint
views_of (FpSheetKind kind, FpViewId out[MOST_VIEWS])
{
  out[1] = FP_VIEW_SECTION;
  switch (kind)
    {
    case FP_SHEET_PLAN: out[0] = FP_VIEW_PLAN; return 1;
    case FP_SHEET_SECTION: out[0] = FP_VIEW_SECTION; return 1;
    case FP_SHEET_ELEVATION:
    case FP_SHEET_CROSS: out[0] = FP_VIEW_ELEVATION; return 1;
    case FP_SHEET_SECTIONS: out[0] = FP_VIEW_ELEVATION; return 2;
    case FP_SHEET_BOARD:
    case FP_N_SHEETS: break;
    }
  return 0;
}

static gboolean
cuts_across (FpSheetKind kind)
{
  return kind == FP_SHEET_CROSS || kind == FP_SHEET_SECTIONS;
}

/* Rather a larger scale than walls that stand far off, all of a high wall, or every dimension; in the order in which
 * they are tried. */
typedef struct Way_ { FpExtentShown shown; const FpSurroundings *around; } Way;

static const Way WAYS[] = {
  { FP_SHOWN_BROAD, &FP_SURROUNDINGS_ALONE },
  { FP_SHOWN_SANCTUARY, &FP_SURROUNDINGS_ALONE }, { FP_SHOWN_SANCTUARY, &FP_SURROUNDINGS_LEAN },
  { FP_SHOWN_TIGHT, &FP_SURROUNDINGS_ALONE },     { FP_SHOWN_TIGHT, &FP_SURROUNDINGS_LEAN },
  { FP_SHOWN_SANCTUARY, &FP_SURROUNDINGS_LEANEST }, { FP_SHOWN_TIGHT, &FP_SURROUNDINGS_LEANEST },
};
static const Way WHOLE_WAYS[] = {
  { FP_SHOWN_WHOLE, &FP_SURROUNDINGS_ALONE },
  { FP_SHOWN_WHOLE, &FP_SURROUNDINGS_LEAN },
  { FP_SHOWN_WHOLE, &FP_SURROUNDINGS_LEANEST },
};

static gboolean
lies_between (const FpCut *cut, double lo, double hi)
{
  return cut->at > lo && cut->at < hi;
}

static const FpBox3 *
region_of (const FpSheetViews *c, FpExtentShown shown)
{
  const FpRegions *r = &c->regions;

  return shown == FP_SHOWN_TIGHT ? &r->tight : shown == FP_SHOWN_BROAD ? &r->broad : &r->sanctuary;
}

/* Whether so much of a plan has room for the lines that are to stand on it. */
static gboolean
shows_lines (const FpSheetViews *c, FpExtentShown shown)
{
  const FpBox3 *region = region_of (c, shown);
  const FpCut *along = &c->spec->cut[FP_VIEW_SECTION], *across = &c->spec->cut[FP_VIEW_ELEVATION];

  return shown == FP_SHOWN_WHOLE || c->spec->kind != FP_SHEET_PLAN
         || ((!along->placed || lies_between (along, region->lo.x, region->hi.x))
             && (!across->placed || lies_between (across, region->lo.y, region->hi.y)));
}

/* Whether what is asked for is the whole church; a section across the nave shows all of the nave, and so does a plan on
 * which its line is to stand. */
static gboolean
shows_whole (const FpSheetViews *c)
{
  const FpBox3 *sanctuary = &c->regions.sanctuary;

  return c->spec->whole || !shows_lines (c, FP_SHOWN_SANCTUARY)
         || (cuts_across (c->spec->kind) && !lies_between (&c->cut[FP_VIEW_ELEVATION], sanctuary->lo.y, sanctuary->hi.y));
}

/* Of which those are skipped that do not show the lines. */
static const Way *
ways_of (const FpSheetViews *c, guint *n)
{
  const gboolean whole = shows_whole (c);

  *n = whole ? G_N_ELEMENTS (WHOLE_WAYS) : G_N_ELEMENTS (WAYS);
  return whole ? WHOLE_WAYS : WAYS;
}

static FpViewLayout
layout_at (const FpSheetViews *c, FpViewId view, double scale, FpExtentShown shown)
{
  const FpCut cut = fp_projection_cut (c->projection[view]);
  FpViewLayout layout = {
    .scale = scale, .dimensions = TRUE, .levels = TRUE, .labels = TRUE, .units = c->units,
    .clip = shown == FP_SHOWN_WHOLE ? FP_BOX_EMPTY : fp_region_in_view (region_of (c, shown), view, cut.turned),
  };

  memcpy (layout.section, c->spec->cut, sizeof layout.section);
  layout.section[view] = cut;
  return layout;
}

static gboolean
is_larger_than_area (const FpSheetViews *c, double width, double height)
{
  return width > c->area.x1 - c->area.x0 || height > c->area.y1 - c->area.y0;
}

/* --- one view or two ----------------------------------------------------------- */

static void
forget_views (FpSheetViews *c)
{
  for (guint i = 0; i < c->n; i++)
    g_clear_pointer (&c->one[i].annotation, fp_annotation_free);
  c->n = 0;
  g_ptr_array_set_size (c->untold, 0);
}

/* What no view of the sheet tells is told in words. */
static void
gather_untold (FpSheetViews *c)
{
  for (guint i = 0; i < c->n; i++)
    for (guint k = 0; k < c->one[i].annotation->untold->len; k++)
      {
        const char *words = g_ptr_array_index (c->one[i].annotation->untold, k);
        if (!g_ptr_array_find_with_equal_func (c->untold, words, g_str_equal, NULL))
          g_ptr_array_add (c->untold, g_strdup (words));
      }
  c->words = fp_draw_untold (NULL, &c->area, c->untold);
}

/* Each set out by itself; FALSE when one is too large already. */
static gboolean
set_out (FpSheetViews *c, double scale, const Way *way)
{
  FpViewId view[MOST_VIEWS];
  const guint n = views_of (c->spec->kind, view);

  forget_views (c);
  for (guint i = 0; i < n; i++)
    {
      OneView *one = &c->one[i];
      FpProjection *projection = c->projection[view[i]];
      one->view = view[i];
      one->layout = layout_at (c, view[i], scale, way->shown);
      one->outline = fp_view_outline (projection, &one->layout);
      if (is_larger_than_area (c, one->outline.x1 - one->outline.x0, one->outline.y1 - one->outline.y0))
        return FALSE;
      one->annotation = fp_annotation_new (projection, &one->layout, way->around);
      c->n = i + 1;
    }
  gather_untold (c);
  return TRUE;
}

static double
width_of (const OneView *one)
{
  return one->annotation->margins.left + one->outline.x1 - one->outline.x0 + one->annotation->margins.right;
}

static double
above (const OneView *one)
{
  return one->outline.y1 + one->annotation->margins.above;
}

static double
below (const OneView *one)
{
  return one->annotation->margins.below - one->outline.y0;
}

static void
put (OneView *one, double left, double origin)
{
  one->layout.origin = (FpPoint) { left + one->annotation->margins.left - one->outline.x0, origin };
  fp_annotation_move (one->annotation, one->layout.origin);
  one->annotation->layout.origin = one->layout.origin;
}

/* Beside each other on one level. */
static gboolean
put_in_a_row (FpSheetViews *c)
{
  double width = APART * (c->n - 1), up = 0, down = 0, x;

  for (guint i = 0; i < c->n; i++)
    {
      width += width_of (&c->one[i]);
      up = MAX (up, above (&c->one[i]));
      down = MAX (down, below (&c->one[i]));
    }
  if (is_larger_than_area (c, width, up + down + c->words))
    return FALSE;
  x = (c->area.x0 + c->area.x1 - width) / 2;
  for (guint i = 0; i < c->n; i++)
    {
      put (&c->one[i], x, (c->area.y0 + c->words + c->area.y1 - up - down) / 2 + down);
      x += width_of (&c->one[i]) + APART;
    }
  return TRUE;
}

/* One under the other, each in the middle. */
static gboolean
put_in_a_column (FpSheetViews *c)
{
  double height = APART * (c->n - 1), width = 0, y;

  for (guint i = 0; i < c->n; i++)
    {
      width = MAX (width, width_of (&c->one[i]));
      height += above (&c->one[i]) + below (&c->one[i]);
    }
  if (is_larger_than_area (c, width, height + c->words))
    return FALSE;
  y = (c->area.y0 + c->words + c->area.y1 + height) / 2;
  for (guint i = 0; i < c->n; i++)
    {
      put (&c->one[i], (c->area.x0 + c->area.x1 - width_of (&c->one[i])) / 2, y - above (&c->one[i]));
      y -= above (&c->one[i]) + below (&c->one[i]) + APART;
    }
  return TRUE;
}

static gboolean
place_views (FpSheetViews *c, double scale, const Way *way)
{
  return set_out (c, scale, way) && (put_in_a_row (c) || (c->n > 1 && put_in_a_column (c)));
}

static void
draw_one (const FpSheetViews *c, const OneView *one, FpDrawing *drawing, guint *number)
{
  FpProjection *projection = c->projection[one->view];

  fp_view_draw_lines (drawing, projection, one->annotation);
  fp_view_draw_breaks (drawing, projection, &one->layout);
  fp_annotation_draw (one->annotation, drawing, number);
  for (guint i = 0; one->view == FP_VIEW_PLAN && c->spec->ways != NULL && c->spec->ways[i] != NULL; i++)
    fp_drawing_add_way (drawing, c->spec->ways[i], &one->layout);
  if (c->spec->measured != NULL)
    fp_drawing_add_evidence (drawing, c->spec->measured, one->view, projection, &one->layout, &(FpLaid) { drawing, { 0, 0 }, 1 }, 1,
                             &c->area);
  if (one->view == FP_VIEW_PLAN)
    fp_draw_north_point (drawing, fp_annotation_after_title (one->annotation, 13), 3.4,
                         fp_project_brief (fp_scene_project (c->scene))->north);
}

/* --- scale --------------------------------------------------------------------- */

static const double SCALES[] = { 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000, 20000, 50000 };

const double *
fp_sheet_scales (guint *n)
{
  *n = G_N_ELEMENTS (SCALES);
  return SCALES;
}

gboolean
fp_scale_is_standard (double scale)
{
  while (scale >= 10)
    scale /= 10;
  return scale == 1 || scale == 2 || scale == 5;
}

/* Whether the sheet fits at a scale, in some way. */
static gboolean
fits (FpSheetViews *c, double scale)
{
  guint n;
  const Way *way = ways_of (c, &n);

  for (guint i = 0; i < n; i++)
    {
      double width, height;
      c->way = &way[i];
      if (c->spec->kind != FP_SHEET_BOARD)
        {
          if (shows_lines (c, way[i].shown) && place_views (c, scale, &way[i]))
            return TRUE;
          continue;
        }
      fp_board_size (c->scene, way[i].shown, scale, &width, &height);
      if (!is_larger_than_area (c, width, height))
        return TRUE;
    }
  return FALSE;
}

char *
fp_sheet_paper_name (const FpSheetSpec *spec)
{
  char *name = g_strdup (spec->width > 0 && spec->paper_name != NULL ? spec->paper_name : fp_paper_id (spec->paper));

  name[0] = g_ascii_toupper (name[0]);
  return name;
}

/* 0 when none does. */
static double
largest_scale (FpSheetViews *c)
{
  for (guint i = 0; i < G_N_ELEMENTS (SCALES); i++)
    if (fits (c, SCALES[i]))
      return SCALES[i];
  return 0;
}

static const char *
sheet_name (FpSheetKind kind)
{
  if (kind == FP_SHEET_SECTIONS)
    return "sheet of both sections";
  return kind == FP_SHEET_CROSS ? "section across" : fp_sheet_id (kind);
}

static gboolean
choose_scale (FpSheetViews *c, double *scale, GError **error)
{
  const double wanted = c->spec->scale;
  g_autofree char *largest = NULL, *asked = NULL, *paper = fp_sheet_paper_name (c->spec);

  *scale = wanted > 0 && isfinite (wanted) && fits (c, wanted) ? wanted : largest_scale (c);
  if (*scale > 0 && (wanted == 0 || *scale == wanted))
    return TRUE;
  asked = fp_scale_text (wanted);
  largest = fp_scale_text (*scale);
  if (*scale > 0)
    g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "The %s does not fit %s %s at %s; the largest scale that fits is %s",
                 sheet_name (c->spec->kind), paper, c->spec->landscape ? "landscape" : "portrait", asked, largest);
  else
    g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "The %s fits %s at no scale; choose larger paper",
                 sheet_name (c->spec->kind), paper);
  return FALSE;
}

/* --- all of it -------------------------------------------------------------------- */

/* An elevation is no section: it is cut where it always is.  In first-angle arrangement nothing is turned. */
static void
set_cuts (FpSheetViews *c)
{
  const FpSheetSpec *spec = c->spec;

  c->cut[FP_VIEW_SECTION] = spec->cut[FP_VIEW_SECTION];
  if (spec->kind == FP_SHEET_BOARD)
    c->cut[FP_VIEW_SECTION].turned = FALSE;
  if (!cuts_across (spec->kind))
    return;
  c->cut[FP_VIEW_ELEVATION] = spec->cut[FP_VIEW_ELEVATION];
  if (!spec->cut[FP_VIEW_ELEVATION].placed)
    c->cut[FP_VIEW_ELEVATION].at = fp_cut_across (c->scene);
  c->cut[FP_VIEW_ELEVATION].placed = TRUE;
}

static void
make_projections (FpSheetViews *c)
{
  FpViewId view[MOST_VIEWS] = { FP_VIEW_PLAN }; /* none where n is 0 */
  const guint n = views_of (c->spec->kind, view);

  fp_regions_of (c->scene, NULL, &c->regions);
  set_cuts (c);
  for (FpViewId v = FP_VIEW_PLAN; v < FP_N_VIEWS; v++)
    if (n == 0 || v == view[0] || (n > 1 && v == view[1]))
      c->projection[v] = fp_projection_new_cut (c->scene, v, &c->cut[v], c->spec->hidden);
}

FpSheetViews *
fp_sheet_views_new (const FpScene *scene, const FpSheetSpec *spec, const FpBox *area, GError **error)
{
  FpSheetViews *self = g_new0 (FpSheetViews, 1);

  self->scene = scene;
  self->spec = spec;
  self->units = fp_project_brief (fp_scene_project (scene))->units;
  self->area = *area;
  self->untold = g_ptr_array_new_with_free_func (g_free);
  make_projections (self);
  if (!choose_scale (self, &self->scale, error))
    g_clear_pointer (&self, fp_sheet_views_free);
  return self;
}

void
fp_sheet_views_free (FpSheetViews *self)
{
  if (self == NULL)
    return;
  forget_views (self);
  for (guint v = 0; v < FP_N_VIEWS; v++)
    fp_projection_unref (self->projection[v]);
  g_ptr_array_unref (self->untold);
  g_free (self);
}

double
fp_sheet_views_scale (const FpSheetViews *self)
{
  return self->scale;
}

/* What it does not tell stands under the section, in the quadrant that is empty but for the mitre line. */
static void
draw_board (const FpSheetViews *self, FpDrawing *drawing)
{
  g_autoptr (GPtrArray) untold = g_ptr_array_new_with_free_func (g_free);
  FpBoardLayout layout;
  FpBox room;

  fp_board_place (self->scene, self->way->shown, self->scale, &self->area, self->units, &layout);
  fp_board_draw_on (drawing, self->projection, &layout, &self->area, untold);
  room = (FpBox) { MIN (layout.frame[FP_VIEW_PLAN].x1 + UNTOLD_GAP, self->area.x1 - UNTOLD_LEAST), self->area.y0,
                   self->area.x1, layout.frame[FP_VIEW_PLAN].y1 - UNTOLD_GAP };
  fp_draw_untold (drawing, &room, untold);
}

void
fp_sheet_views_draw (const FpSheetViews *self, FpDrawing *drawing)
{
  const FpBox foot = { self->area.x0, self->area.y0, self->area.x1, self->area.y0 + self->words };
  guint number = 0;

  for (guint i = 0; i < self->n; i++)
    draw_one (self, &self->one[i], drawing, &number);
  fp_draw_untold (drawing, &foot, self->untold);
  if (self->spec->kind == FP_SHEET_BOARD)
    draw_board (self, drawing);
}
