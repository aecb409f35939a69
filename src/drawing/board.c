/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board.c - the three views on one surface, in first-angle arrangement
 *
 * The elevation stands at `pan`; plan and section follow from it, so that x,
 * z and, by the mitre line, y are shared at every scale.  What stands between
 * the views depends on the scale: at small scales there are fewer dimensions
 * to make room for.
 */
#include "board.h"

#include "annotation.h"
#include "regions.h"
#include "sheet-parts.h"
#include "thin.h"

#include <math.h>
#include <string.h>

/* All in paper mm, and design judgement. */
#define GAP_SIDE    12.0 /* elevation to section                              */
#define SIDE_LEVELS 17.0 /* and the levels that both share                    */
#define GAP_UNDER   16.0 /* elevation to plan                                 */
#define UNDER_TIERS 34.0 /* and the dimensions under the elevation            */
#define UNDER_LEAST 26.5 /* one of them at least                              */
#define TITLE_ROOM  12.5 /* of the gap, the plan's title and north point take so much */
#define ELEVATION_TITLE 79.0 /* widths of titles with the longest scale          */
#define SECTION_TITLE   69.0
#define GAP_LEFT    12.0 /* left of the elevation                             */
#define LEFT_TIERS  34.0 /* and its heights                                   */
#define LEFT_LEAST  16.0
#define BELOW_PLAN  16.0 /* the width of the whole church                     */
#define LINE_FOOT   10.0 /* below the plan, the end of a cutting line and its letter */
#define FIGURE_ROOM 4.0  /* outside of the last dimension line                */
#define AXIS_CLEAR  1.2  /* of a title over the end of the axis */
#define EDGE        6.0
#define TITLE_HEIGHT 3.5
#define CUT_CLEAR   3.0  /* from a wall that is cut to a title on its right    */
#define TITLE_SIDE  2.0  /* from the border of what belongs to another view     */
#define TOP_ROOM    13.0 /* titles, above                                      */
#define LINE_CLEAR  4.0    /* from a cutting line to a title on its right, and on its left the letter stands */
#define LINE_CLEAR_RIGHT 16.0
#define LINE_LETTER 13.0   /* its letter reaches so far to the left             */
#define FAR         1e6
#define FAR_AWAY    1e5
#define LEAST_SCALE 2.0
#define MOST_SCALE  1e5

/* Of the nave, so much is seen when the sanctuary fills the board, mm of the world. */
#define NAVE_SEEN 800.0

/* At 1:100 and larger there is room for all dimensions, at 1:320 and smaller for none. */
static double
share_of_dimensions (double scale)
{
  return CLAMP (log (320 / scale) / log (3.2), 0, 1);
}

static double
gap_above_plan (double scale)
{
  return MAX (UNDER_LEAST, GAP_UNDER + UNDER_TIERS * share_of_dimensions (scale));
}

/* How far the elevation goes on either side of its own x = 0: turned, what is on the left in plan is on its right. */
typedef struct { double left, right; } Span;

static gboolean
is_turned (const FpCut *across)
{
  return across != NULL && across->placed && across->turned;
}

static Span
span_of (const FpRegions *r, const FpCut *across)
{
  return is_turned (across) ? (Span) { -r->east.hi.x, -r->east.lo.x } : (Span) { r->east.lo.x, r->east.hi.x };
}

/* The title of a narrow elevation must not run into that of the section. */
static double
gap_beside (const FpRegions *r, double scale)
{
  return MAX (GAP_SIDE + SIDE_LEVELS * share_of_dimensions (scale),
              ELEVATION_TITLE - (r->east.hi.x - r->east.lo.x) / scale);
}

static double
gap_left (double scale)
{
  return MAX (LEFT_LEAST, GAP_LEFT + LEFT_TIERS * share_of_dimensions (scale));
}

/* @kept: of the gap, for other things */
static guint
tiers_in (double gap, double kept)
{
  const double room = gap - kept - FP_TIER_FIRST - FIGURE_ROOM;

  return room < 0 ? 0 : 1 + (guint) (room / FP_TIER_STEP);
}

/* --- layout ------------------------------------------------------------------------- */

static void
arrange (const FpRegions *r, const Span *span, double scale, FpPoint pan, FpBoardLayout *out)
{
  const double gap = gap_above_plan (scale), beside = gap_beside (r, scale);
  const double side = pan.x + span->right / scale + beside / 2;
  const double under = pan.y + r->all.lo.z / scale - gap / 2;

  out->view[FP_VIEW_ELEVATION].origin = pan;
  out->view[FP_VIEW_PLAN].origin = (FpPoint) { pan.x, under - gap / 2 - r->all.hi.y / scale };
  out->view[FP_VIEW_SECTION].origin = (FpPoint) { side + beside / 2 + r->all.hi.y / scale, pan.y };
  out->frame[FP_VIEW_ELEVATION] = (FpBox) { -FAR, under, side, FAR };
  out->frame[FP_VIEW_SECTION] = (FpBox) { side, under, FAR, FAR };
  out->frame[FP_VIEW_PLAN] = (FpBox) { -FAR, -FAR, MAX (side, pan.x + r->all.hi.x / scale + EDGE), under };
}

/* Where y = @y is, carried from the plan to the section. */
static FpPoint
mitre_point (const FpBoardLayout *layout, double y)
{
  const FpPoint in_section = fp_view_to_paper (&layout->view[FP_VIEW_SECTION], (FpPoint) { -y, 0 });
  const FpPoint in_plan = fp_view_to_paper (&layout->view[FP_VIEW_PLAN], (FpPoint) { 0, y });

  return (FpPoint) { in_section.x, in_plan.y };
}

void
fp_board_layout (const FpScene *scene, const FpCut *across, double scale, FpPoint pan, FpUnits units,
                 FpBoardLayout *out)
{
  const FpCut cut = across != NULL && across->placed ? *across : (FpCut) { FALSE, 0, FALSE };
  FpRegions r;
  Span span;

  fp_regions_of (scene, &cut, &r);
  span = span_of (&r, &cut);
  out->alone = FALSE;
  out->seen = FP_BOX_EMPTY;
  out->memory = NULL;
  out->in_hand = FALSE;
  out->chosen = NULL;
  for (guint v = 0; v < FP_N_VIEWS; v++)
    out->view[v] = (FpViewLayout) {
      .scale = CLAMP (scale, LEAST_SCALE, MOST_SCALE), .clip = FP_BOX_EMPTY, .dimensions = TRUE,
      /* Elevation and section share z: their levels stand once, between them. */
      .levels = v == FP_VIEW_SECTION, .labels = TRUE, .units = units, .section[FP_VIEW_ELEVATION] = cut,
    };
  arrange (&r, &span, out->view[0].scale, pan, out);
  out->mitre_a = mitre_point (out, r.all.hi.y);
  out->mitre_b = mitre_point (out, r.all.lo.y);
}

/* The others lie where nobody comes. */
void
fp_board_layout_alone (const FpScene *scene, const FpCut *across, FpViewId view, double scale, FpPoint pan,
                       FpUnits units, FpBoardLayout *out)
{
  fp_board_layout (scene, across, scale, pan, units, out);
  for (guint v = 0; v < FP_N_VIEWS; v++)
    {
      out->view[v].origin = v == view ? pan : (FpPoint) { -FAR_AWAY, -FAR_AWAY };
      out->frame[v] = v == view ? (FpBox) { -FAR, -FAR, FAR, FAR } : FP_BOX_EMPTY;
    }
  out->view[view].levels = view != FP_VIEW_PLAN;
  out->mitre_a = out->mitre_b = (FpPoint) { -FAR_AWAY, -FAR_AWAY };
  out->alone = TRUE;
  out->only = view;
}

/* --- fitting -------------------------------------------------------------------------- */

/* World box that is to be seen, the same for all three views. */
static FpBox3
region_to_fit (const FpRegions *r, FpExtentShown shown)
{
  FpBox3 box = shown == FP_SHOWN_TIGHT ? r->tight : r->sanctuary;

  if (shown == FP_SHOWN_WHOLE)
    return r->all;
  box.hi.y = r->all.hi.y;
  box.lo.x = r->east.lo.x;
  box.hi.x = r->east.hi.x;
  box.lo.y = MAX (r->all.lo.y, r->front - NAVE_SEEN);
  return box;
}

/* Then its width is told under the plan; otherwise under the elevation. */
static gboolean
is_wider_than_elevation (const FpRegions *r)
{
  return r->all.lo.x < r->east.lo.x - 1 || r->all.hi.x > r->east.hi.x + 1;
}

typedef struct { double width, height; } Size;

static Size
size_at (const FpRegions *r, const Span *span, const FpBox3 *box, double scale)
{
  const gboolean has_width = box->lo.y <= r->all.lo.y && is_wider_than_elevation (r);
  /* The plan may be wider than the elevation; the section begins beside the elevation. */
  const double left = MIN (box->lo.x, span->left);
  const double section = MAX ((r->all.hi.y - box->lo.y) / scale, SECTION_TITLE);
  const double beside = (span->right - left) / scale + gap_beside (r, scale) + section;
  const double plan = (box->hi.x - left) / scale;

  return (Size) {
    gap_left (scale) + MAX (beside, plan) + EDGE,
    TOP_ROOM + (box->hi.z - r->all.lo.z + r->all.hi.y - box->lo.y) / scale + gap_above_plan (scale)
      + (has_width ? BELOW_PLAN : box->lo.y <= r->all.lo.y ? LINE_FOOT : EDGE),
  };
}

void
fp_board_size (const FpScene *scene, FpExtentShown shown, double scale, double *width, double *height)
{
  FpRegions r;
  FpBox3 box;
  Size size;
  Span span;

  fp_regions_of (scene, NULL, &r);
  span = span_of (&r, NULL);
  box = region_to_fit (&r, shown);
  size = size_at (&r, &span, &box, scale);
  *width = size.width;
  *height = size.height;
}

static FpPoint
pan_for (const FpRegions *r, const Span *span, const FpBox3 *box, double scale, double width, double height)
{
  const Size size = size_at (r, span, box, scale);

  return (FpPoint) { gap_left (scale) + MAX (width - size.width, 0) / 2 - MIN (box->lo.x, span->left) / scale,
                     height - TOP_ROOM - MAX (height - size.height, 0) / 2 - box->hi.z / scale };
}

void
fp_board_place (const FpScene *scene, FpExtentShown shown, double scale, const FpBox *area, FpUnits units,
                FpBoardLayout *out)
{
  FpRegions r;
  FpBox3 box;
  Span span;
  FpPoint pan;

  fp_regions_of (scene, NULL, &r);
  span = span_of (&r, NULL);
  box = region_to_fit (&r, shown);
  pan = pan_for (&r, &span, &box, scale, area->x1 - area->x0, area->y1 - area->y0);
  fp_board_layout (scene, NULL, scale, (FpPoint) { area->x0 + pan.x, area->y0 + pan.y }, units, out);
  if (shown == FP_SHOWN_WHOLE)
    return;
  for (guint v = 0; v < FP_N_VIEWS; v++)
    out->view[v].clip = fp_region_in_view (&box, (FpViewId) v, FALSE);
  out->mitre_b = mitre_point (out, box.lo.y);
}

/* The same for both: what the elevation shows, where it is cut elsewhere too. */
static void
what_to_fit (const FpScene *scene, const FpCut *across, gboolean whole, FpRegions *r, FpBox3 *box)
{
  fp_regions_of (scene, across, r);
  *box = region_to_fit (r, whole ? FP_SHOWN_WHOLE : FP_SHOWN_SANCTUARY);
}

void
fp_board_fit (const FpScene *scene, const FpCut *across, gboolean whole, double width, double height, double *scale,
              FpPoint *pan)
{
  double fits = MOST_SCALE, too_large = LEAST_SCALE;
  FpRegions r;
  FpBox3 box;
  Span span;

  what_to_fit (scene, across, whole, &r, &box);
  span = span_of (&r, across);
  for (guint i = 0; i < 60; i++)
    {
      const double middle = sqrt (fits * too_large);
      const Size size = size_at (&r, &span, &box, middle);

      if (size.width <= width && size.height <= height)
        fits = middle;
      else
        too_large = middle;
    }
  *scale = fits;
  *pan = pan_for (&r, &span, &box, fits, width, height);
}

/* The view with its dimensions round it. */
static Size
size_alone (const FpBox *box, double scale)
{
  return (Size) { (box->x1 - box->x0) / scale + 2 * gap_left (scale),
                  (box->y1 - box->y0) / scale + TOP_ROOM + gap_left (scale) / 2 + gap_above_plan (scale) };
}

void
fp_board_fit_alone (const FpScene *scene, const FpCut *across, FpViewId view, gboolean whole, double width,
                    double height, double *scale, FpPoint *pan)
{
  double fits = MOST_SCALE, too_large = LEAST_SCALE;
  FpRegions r;
  FpBox3 region;
  FpBox box;

  what_to_fit (scene, across, whole, &r, &region);
  region.lo.z = r.all.lo.z;
  box = fp_region_in_view (&region, view, view == FP_VIEW_ELEVATION && is_turned (across));
  for (guint i = 0; i < 60; i++)
    {
      const double middle = sqrt (fits * too_large);
      const Size size = size_alone (&box, middle);

      if (size.width <= width && size.height <= height)
        fits = middle;
      else
        too_large = middle;
    }
  *scale = fits;
  pan->x = width / 2 - (box.x0 + box.x1) / 2 / fits;
  pan->y = height - TOP_ROOM - gap_left (fits) / 2 - (height - size_alone (&box, fits).height) / 2 - box.y1 / fits;
}

/* --- drawing -------------------------------------------------------------------------------- */

typedef struct
{
  FpDrawing           *drawing;
  const FpBoardLayout *layout;
  FpProjection *const *projection;
  FpRegions            regions;
  FpBox                paper, seen; /* on which all is drawn; of which titles stay within */
  FpCut                cut[FP_N_VIEWS];
  GArray              *shown;
  GArray              *missing; /* FpWanted: what must be told, and its view did not */
  GPtrArray           *untold;  /* utf8: levels without room; NULL: on the board, not on a sheet */
  FpAnnotation        *annotation[FP_N_VIEWS]; /* NULL: that view is not there */
  gboolean             anew;    /* nothing stays where it stood */
  guint                number;
} Board;

static FpBox
within_clip (const Board *b, FpViewId view, FpBox box)
{
  const FpBox *clip = &b->layout->view[view].clip;

  if (fp_box_is_empty (clip))
    return box;
  return (FpBox) { MAX (box.x0, clip->x0), MAX (box.y0, clip->y0), MIN (box.x1, clip->x1), MIN (box.y1, clip->y1) };
}

/* What dimensions stay out of, or else stand within; view coordinates. */
static FpBox
outline_of (const Board *b, FpViewId view)
{
  FpBox3 region = view == FP_VIEW_ELEVATION ? b->regions.east : b->regions.all;

  region.lo.z = b->regions.all.lo.z;
  return within_clip (b, view, fp_region_in_view (&region, view, b->cut[view].turned));
}

static FpBox
on_paper (const FpViewLayout *layout, const FpBox *box)
{
  const FpPoint p = fp_view_to_paper (layout, (FpPoint) { box->x0, box->y0 });
  const FpPoint q = fp_view_to_paper (layout, (FpPoint) { box->x1, box->y1 });

  return (FpBox) { p.x, p.y, q.x, q.y };
}

static gboolean title_of (const Board *b, FpViewId view, FpPoint *at);

/* Where the room of a title ends on the right: that of the section stands beside that of the elevation. */
static double
right_of_title (const Board *b, FpViewId view)
{
  const double edge = b->seen.x1 - EDGE;
  FpPoint section;

  /* Beside the plan nothing stands so high as its title, which a cutting line may push there. */
  if (view == FP_VIEW_PLAN && b->cut[FP_VIEW_SECTION].placed)
    return edge;
  if (view != FP_VIEW_ELEVATION)
    return MIN (b->layout->frame[view].x1 - TITLE_SIDE, edge);
  return title_of (b, FP_VIEW_SECTION, &section) ? MIN (section.x - 2 * TITLE_SIDE, edge) : edge;
}

/* The cutting line of the section ends where the plan has its title: that stands on the right of it then, or where
 * there is no room, on the left. */
static double
beside_section_line (const Board *b, double x, double width, double left, double right)
{
  const FpCut *cut = &b->cut[FP_VIEW_SECTION];
  const double line = fp_view_to_paper (&b->layout->view[FP_VIEW_PLAN], (FpPoint) { cut->at, 0 }).x;
  const double before = line - LINE_LETTER - width;

  if (!cut->placed || line <= x - LINE_CLEAR || line >= x + width + LINE_CLEAR_RIGHT)
    return x;
  return line + LINE_CLEAR + width > right && before >= left ? before : line + LINE_CLEAR;
}

static gboolean
lies_over (const FpProjectedCut *cut, const FpBox *box)
{
  for (guint i = 0, k = cut->n - 1; i < cut->n; k = i++)
    if (fp_box_is_crossed (box, cut->outline[i], cut->outline[k]))
      return TRUE;
  return fp_outline_contains (cut->outline, cut->n, (FpPoint) { box->x0, box->y0 });
}

static FpBox
title_about (FpPoint at, double width)
{
  return (FpBox) { at.x - CUT_CLEAR / 2, at.y - CUT_CLEAR / 2, at.x + width, at.y + TITLE_HEIGHT + CUT_CLEAR / 2 };
}

static gboolean
lies_over_cut (const Board *b, FpViewId view, const FpBox *title)
{
  const FpViewLayout *layout = &b->layout->view[view];
  const FpPoint low = fp_view_from_paper (layout, (FpPoint) { title->x0, title->y0 });
  const FpPoint high = fp_view_from_paper (layout, (FpPoint) { title->x1, title->y1 });
  const FpBox box = { low.x, low.y, high.x, high.y };
  guint n;
  const FpProjectedCut *cut = fp_projection_cuts (b->projection[view], &n);

  for (guint i = 0; i < n; i++)
    if (lies_over (&cut[i], &box))
      return TRUE;
  return FALSE;
}

/* Where the view runs off above, its title stands in it: beside the walls that are cut there rather than over them.  Over an
 * elevation's floor there is air, on their right; in the plan what stands there is looked at, so its title stays on their
 * left.  Where no place is left for it, it stays where it was. */
static double
beside_cuts (const Board *b, FpViewId view, FpPoint at, double width, double left, double right)
{
  const FpViewLayout *layout = &b->layout->view[view];
  const double shift = view == FP_VIEW_PLAN ? -width - CUT_CLEAR : CUT_CLEAR;
  guint n;
  const FpProjectedCut *cut = fp_projection_cuts (b->projection[view], &n);
  double best = INFINITY;

  for (guint i = 0; i <= n; i++)
    for (guint k = 0; k < (i < n ? cut[i].n : 1); k++)
      {
        const double x = i < n ? fp_view_to_paper (layout, cut[i].outline[k]).x + shift : at.x;
        const FpBox title = title_about ((FpPoint) { x, at.y }, width);

        if ((x - at.x) * shift >= 0 && fabs (x - at.x) < fabs (best - at.x) && x >= left && x + width <= right
            && !lies_over_cut (b, view, &title))
          best = x;
      }
  return isfinite (best) ? best : at.x;
}

/* What lies of a segment between two levels. */
static void
add_between (FpBox *box, FpPoint p, FpPoint q, double low, double high)
{
  const FpPoint under = p.y < q.y ? p : q, over = p.y < q.y ? q : p;
  const double run = over.y > under.y ? (over.x - under.x) / (over.y - under.y) : 0;

  if (over.y <= low || under.y >= high)
    return;
  fp_box_add_point (box, under.y < low ? (FpPoint) { under.x + run * (low - under.y), low } : under);
  fp_box_add_point (box, over.y > high ? (FpPoint) { over.x - run * (over.y - high), high } : over);
}

/* All that the plan cuts beside its title: a chancel is narrower than the nave. */
static FpBox
cuts_beside (const Board *b, const FpBox *title)
{
  const FpViewLayout *layout = &b->layout->view[FP_VIEW_PLAN];
  FpBox box = FP_BOX_EMPTY;
  guint n;
  const FpProjectedCut *cut = fp_projection_cuts (b->projection[FP_VIEW_PLAN], &n);

  for (guint i = 0; i < n; i++)
    for (guint k = 0, j = cut[i].n - 1; k < cut[i].n; j = k++)
      add_between (&box, fp_view_to_paper (layout, cut[i].outline[j]), fp_view_to_paper (layout, cut[i].outline[k]), title->y0,
                   title->y1);
  return box;
}

/* Where a plan leaves no room on its left, its title stands on its right, where there is nothing but the mitre line; where there
 * is none either, in it. */
static double
beside_plan (const Board *b, FpPoint at, double width, double right)
{
  const FpBox title = title_about (at, width), walls = cuts_beside (b, &title);

  if (fp_box_is_empty (&walls) || title.x1 <= walls.x0 || title.x0 >= walls.x1)
    return at.x;
  return walls.x1 + CUT_CLEAR + width <= right ? walls.x1 + CUT_CLEAR : at.x;
}

/* Titles stay where they are seen although what they name runs off it, and with their own view.  FALSE where that leaves
 * no room. */
static gboolean
title_of (const Board *b, FpViewId view, FpPoint *at)
{
  const FpBox *frame = &b->layout->frame[view];
  const FpBox in_view = outline_of (b, view), outline = on_paper (&b->layout->view[view], &in_view);
  const double left = MAX (frame->x0 + TITLE_SIDE, b->seen.x0 + EDGE);
  const double width = fp_view_title_width (view, b->cut, b->layout->view[view].scale);
  const double foot = MAX (outline.y0, view == FP_VIEW_PLAN ? b->seen.y0 : frame->y0) + EDGE;
  const double top = MIN (frame->y1, b->seen.y1 - EDGE + TITLE_HEIGHT) - TITLE_HEIGHT;

  double right = right_of_title (b, view);

  at->x = CLAMP (outline.x0, left, MAX (left, right - width));
  if (view == FP_VIEW_PLAN)
    at->x = beside_section_line (b, at->x, width, left, right);
  at->y = MIN (outline.y1 + (view == FP_VIEW_PLAN ? FP_AXIS_OVERRUN + AXIS_CLEAR : 6.5), top);
  if (at->y < outline.y1)
    at->x = beside_cuts (b, view, *at, width, left, right);
  if (at->y < outline.y1 && view == FP_VIEW_PLAN)
    {
      right = b->seen.x1 - EDGE;
      at->x = beside_plan (b, *at, width, right);
    }
  return right - at->x >= width && at->y >= foot;
}

/* Dimensions on all sides. */
static void
surround_alone (const Board *b, FpViewId view, FpSurroundings *out)
{
  *out = FP_SURROUNDINGS_ALONE;
  out->names_outside = FALSE;
  out->outline = outline_of (b, view);
  out->seen = b->paper;
  out->has_title_at = TRUE;
  out->steady = TRUE;
  out->memory = b->layout->memory != NULL ? &b->layout->memory->view[view] : NULL;
  out->anew = b->anew;
  out->chosen = b->layout->chosen;
  out->has_no_title = !title_of (b, view, &out->title_at);
}

/* On a sheet, which is not panned, there is as much as the paper has. */
static guint
tiers_below_plan (const Board *b)
{
  const FpBox outline = outline_of (b, FP_VIEW_PLAN);

  if (b->untold != NULL)
    return tiers_in (on_paper (&b->layout->view[FP_VIEW_PLAN], &outline).y0 - b->paper.y0, 0);
  return is_wider_than_elevation (&b->regions) ? tiers_in (BELOW_PLAN, 0) : 0;
}

static void
surround (const Board *b, FpViewId view, FpSurroundings *out)
{
  /* As many tiers as there is room for at the next step of the ladder: they must not come and go between two. */
  const double scale = fp_thin_scale (b->layout->view[view].scale);

  *out = FP_SURROUNDINGS_ALONE;
  out->names_outside = FALSE;
  out->outline = outline_of (b, view);
  out->seen = b->paper;
  out->shown = b->shown;
  out->levels_on = FP_SIDE_LEFT;
  out->levels_only_there = TRUE;
  out->has_title_at = TRUE;
  out->steady = TRUE;
  out->memory = b->layout->memory != NULL ? &b->layout->memory->view[view] : NULL;
  out->anew = b->anew;
  out->chosen = b->layout->chosen;
  out->has_no_title = !title_of (b, view, &out->title_at);
  out->tiers[FP_SIDE_ABOVE] = 0;
  out->tiers[FP_SIDE_BELOW] = view != FP_VIEW_PLAN ? tiers_in (gap_above_plan (scale), TITLE_ROOM)
                              : tiers_below_plan (b);
  out->tiers[FP_SIDE_LEFT] = view == FP_VIEW_SECTION ? 0 : tiers_in (gap_left (scale), 0);
  out->tiers[FP_SIDE_RIGHT] = view == FP_VIEW_PLAN
                                  && b->regions.all.hi.x <= span_of (&b->regions, &b->cut[FP_VIEW_ELEVATION]).right
                                ? tiers_in (gap_beside (&b->regions, scale), 0) : 0;
}

static void
note_missing (Board *b, const FpAnnotation *annotation)
{
  for (guint i = 0; i < annotation->wanted->len; i++)
    {
      const FpWanted *w = &g_array_index (annotation->wanted, FpWanted, i);
      if (w->must != NULL && w->placed == FP_PLACED_NOT)
        g_array_append_vals (b->missing, w, 1);
    }
  fp_levels_untold (annotation->levels, b->untold);
}

/* @usual: (nullable): of the same view */
static FpAnnotation *
annotate (const Board *b, FpViewId view, const FpAnnotation *usual)
{
  FpViewLayout layout = b->layout->view[view];
  FpSurroundings around;

  (b->layout->alone ? surround_alone : surround) (b, view, &around);
  memcpy (layout.section, b->cut, sizeof layout.section);
  around.drawn = usual != NULL ? usual->drawn : NULL;
  return fp_annotation_new (b->projection[view], &layout, &around);
}

/* A measure stands in one of the three: the plan has what the other two could not show. */
static const FpViewId order[] = { FP_VIEW_ELEVATION, FP_VIEW_SECTION, FP_VIEW_PLAN };

/* @usual: as set out before, NULL each where there is none */
static void
annotate_all (Board *b, FpAnnotation *const usual[FP_N_VIEWS])
{
  g_array_set_size (b->shown, 0);
  for (guint i = 0; i < G_N_ELEMENTS (order); i++)
    if (!b->layout->alone || b->layout->only == order[i])
      b->annotation[order[i]] = annotate (b, order[i], usual[order[i]]);
}

static guint
count_nameless (FpAnnotation *const annotation[FP_N_VIEWS])
{
  guint nameless = 0;

  for (guint v = 0; v < FP_N_VIEWS; v++)
    nameless += annotation[v] != NULL ? annotation[v]->nameless : 0;
  return nameless;
}

static void
free_annotations (FpAnnotation *const annotation[FP_N_VIEWS])
{
  for (guint v = 0; v < FP_N_VIEWS; v++)
    fp_annotation_free (annotation[v]);
}

static gboolean
remembers (const Board *b)
{
  const FpBoardMemory *memory = b->layout->memory;
  gboolean any = FALSE;

  for (guint v = 0; memory != NULL && v < FP_N_VIEWS; v++)
    any |= fp_view_memory_at (&memory->view[v], fp_thin_scale (b->layout->view[v].scale)) != NULL;
  return any;
}

/* What stood somewhere stays there, unless a name is missing for it that has room when all is set out anew: what was done
 * before must not cost a name. */
static void
set_out (Board *b)
{
  const gboolean remembered = remembers (b);
  FpAnnotation *usual[FP_N_VIEWS] = { NULL };
  FpBoardMemory *memory;

  annotate_all (b, usual);
  if (b->layout->memory != NULL)
    b->layout->memory->lacks_name = FALSE;
  if (!remembered || count_nameless (b->annotation) == 0)
    return;
  if (b->layout->in_hand)
    {
      b->layout->memory->lacks_name = TRUE;
      return;
    }
  memory = fp_board_memory_copy (b->layout->memory);
  memcpy (usual, b->annotation, sizeof usual);
  b->anew = TRUE;
  annotate_all (b, usual);
  if (count_nameless (b->annotation) < count_nameless (usual))
    free_annotations (usual);
  else
    {
      free_annotations (b->annotation);
      memcpy (b->annotation, usual, sizeof usual);
      fp_board_memory_recall (b->layout->memory, memory);
    }
  fp_board_memory_free (memory);
}

static void
draw_view (Board *b, FpViewId view)
{
  const FpAnnotation *annotation = b->annotation[view];

  fp_view_draw_lines (b->drawing, b->projection[view], annotation);
  fp_view_draw_breaks (b->drawing, b->projection[view], &b->layout->view[view]);
  fp_annotation_draw (annotation, b->drawing, &b->number);
  if (b->untold != NULL)
    note_missing (b, annotation);
  if (view == FP_VIEW_PLAN && !annotation->around.has_no_title)
    fp_draw_north_point (b->drawing, fp_annotation_after_title (annotation, 13), 3.2,
                         fp_project_brief (fp_scene_project (fp_projection_scene (b->projection[view])))->north);
}

void
fp_board_draw_on (FpDrawing *drawing, FpProjection *const projection[FP_N_VIEWS], const FpBoardLayout *layout,
                  const FpBox *area, GPtrArray *untold)
{
  g_autoptr (GArray) shown = g_array_new (FALSE, FALSE, sizeof (FpShown));
  g_autoptr (GArray) missing = g_array_new (FALSE, FALSE, sizeof (FpWanted));
  Board b = { .drawing = drawing, .layout = layout, .projection = projection, .shown = shown, .missing = missing, .untold = untold,
              .paper = *area, .seen = fp_box_is_empty (&layout->seen) ? *area : layout->seen };

  for (guint v = 0; v < FP_N_VIEWS; v++)
    b.cut[v] = fp_projection_cut (projection[v]);
  b.number = fp_drawing_last_dimension (drawing);
  fp_regions_of (fp_projection_scene (projection[0]), &b.cut[FP_VIEW_ELEVATION], &b.regions);
  fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, -1);
  if (!layout->alone)
    fp_drawing_line (drawing, FP_PEN_GUIDE, layout->mitre_a, layout->mitre_b);
  set_out (&b);
  for (guint i = 0; i < G_N_ELEMENTS (order); i++)
    if (b.annotation[order[i]] != NULL)
      draw_view (&b, order[i]);
  free_annotations (b.annotation);
  if (untold != NULL)
    fp_wanted_untold (missing, shown, untold);
  fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, -1);
}

FpDrawing *
fp_board_draw (FpProjection *const projection[FP_N_VIEWS], const FpBoardLayout *layout, double width, double height)
{
  const FpBox paper = { 0, 0, width, height };
  FpDrawing *drawing = fp_drawing_new (width, height);

  fp_board_draw_on (drawing, projection, layout, &paper, NULL);
  return drawing;
}
