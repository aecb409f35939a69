/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-layout.c - where the views lie on the board, and how one looks around on it */
#include "board-view-private.h"

#include <math.h>

#define SCALE_MIN 1.0
#define SCALE_MAX 2000.0
/* For which the views are fitted at least, mm: what is written round them takes as much room at any scale. */
#define LEAST_WIDTH  220.0
#define LEAST_HEIGHT 130.0
/* After which paper that was panned, or on which something was changed, lies still. */
#define SETTLE_MS 200
/* px round what is brought into view */
#define REVEAL_ROOM 40.0

/* --- coordinates ---------------------------------------------------------- */

static double
width_mm (FpBoardView *self)
{
  return gtk_widget_get_width (GTK_WIDGET (self)) / PX_PER_MM;
}

double
fp_board_view_height_mm (FpBoardView *self)
{
  return gtk_widget_get_height (GTK_WIDGET (self)) / PX_PER_MM;
}

/* How far the page lies from where it was laid: in whole pixels, so that it stays as sharp as it was painted. */
static FpPoint
shown_shift (FpBoardView *self)
{
  return (FpPoint) { round ((self->pan.x - self->laid_pan.x) * PX_PER_MM) / PX_PER_MM,
                     round ((self->pan.y - self->laid_pan.y) * PX_PER_MM) / PX_PER_MM };
}

FpPoint
fp_board_view_to_paper (FpBoardView *self, double x, double y)
{
  const FpPoint shift = shown_shift (self);

  return (FpPoint) { x / PX_PER_MM + MARGIN_MM - shift.x,
                     fp_board_view_height_mm (self) - y / PX_PER_MM + MARGIN_MM - shift.y };
}

FpPoint
fp_board_view_to_widget (FpBoardView *self, FpPoint paper)
{
  const FpPoint shift = shown_shift (self);

  return (FpPoint) { (paper.x - MARGIN_MM + shift.x) * PX_PER_MM,
                     (fp_board_view_height_mm (self) - (paper.y - MARGIN_MM + shift.y)) * PX_PER_MM };
}

FpPoint
fp_board_view_on_widget (FpBoardView *self, FpViewId view, FpVec3 at)
{
  const FpViewLayout *layout = &self->layout.view[view];

  return fp_board_view_to_widget (self, fp_view_to_paper (layout, fp_layout_point (layout, view, at)));
}

gboolean
fp_board_view_is_turned (FpBoardView *self, FpViewId view)
{
  return self->layout.view[view].section[view].turned;
}

FpUnits
fp_board_view_units (FpBoardView *self)
{
  return fp_project_brief (fp_document_project (self->document))->units;
}

/* --- layout and drawing --------------------------------------------------- */

void
fp_board_view_forget_drawing (FpBoardView *self)
{
  g_clear_pointer (&self->drawing, fp_drawing_unref);
  fp_board_view_forget_nodes (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  fp_board_view_prepare (self);
}

gboolean
fp_board_view_has_projections (FpBoardView *self)
{
  return self->projection[0] != NULL;
}

static const FpScene *
drawn_scene (FpBoardView *self)
{
  return fp_projection_scene (self->projection[0]);
}

/* Where what is drawn is cut across: what is told may be a little ahead of it. */
static FpCut
drawn_across (FpBoardView *self)
{
  return fp_projection_cut (self->projection[FP_VIEW_ELEVATION]);
}

void
fp_board_view_lay_out (FpBoardView *self)
{
  const FpCut across = drawn_across (self);
  FpPoint pan = { self->pan.x + MARGIN_MM, self->pan.y + MARGIN_MM };

  if (self->only >= 0)
    fp_board_layout_alone (drawn_scene (self), &across, (FpViewId) self->only, self->scale, pan,
                           fp_board_view_units (self), &self->layout);
  else
    fp_board_layout (drawn_scene (self), &across, self->scale, pan, fp_board_view_units (self), &self->layout);
  if (self->sight != NULL || self->sun != NULL) /* circles and dots lie where the names of the pews do */
    self->layout.view[FP_VIEW_PLAN].no_seat_names = TRUE;
  /* About what is seen as much again is drawn: titles stand in what is seen. */
  self->layout.memory = self->memory;
  self->layout.seen = (FpBox) { MARGIN_MM, MARGIN_MM, MARGIN_MM + width_mm (self), MARGIN_MM + fp_board_view_height_mm (self) };
  self->laid_pan = self->pan;
}

void
fp_board_view_fit (FpBoardView *self)
{
  FpCut across;

  if (!fp_board_view_has_projections (self) || width_mm (self) < 1.0 || fp_board_view_height_mm (self) < 1.0)
    return;
  across = drawn_across (self);
  /* On a small board they run off at the right and below: better than to be too small to see. */
  if (self->only >= 0)
    fp_board_fit_alone (drawn_scene (self), &across, (FpViewId) self->only, self->framing == FRAME_WHOLE,
                        MAX (width_mm (self), LEAST_WIDTH), MAX (fp_board_view_height_mm (self), LEAST_HEIGHT), &self->scale,
                        &self->pan);
  else
    fp_board_fit (drawn_scene (self), &across, self->framing == FRAME_WHOLE, MAX (width_mm (self), LEAST_WIDTH),
                  MAX (fp_board_view_height_mm (self), LEAST_HEIGHT), &self->scale, &self->pan);
  self->scale = CLAMP (self->scale, SCALE_MIN, SCALE_MAX);
  self->pan.y += MIN (fp_board_view_height_mm (self) - LEAST_HEIGHT, 0.0);
  fp_board_view_lay_out (self);
  fp_board_view_forget_drawing (self);
  fp_board_view_update_readout (self);
}

/* The gaps between the views follow from what stands where; one view must not move under the eye when they change. */
void
fp_board_view_relayout (FpBoardView *self)
{
  const FpViewId anchor = self->only >= 0 ? (FpViewId) self->only : self->anchor;
  FpPoint before = self->layout.view[anchor].origin, now;

  if (!fp_board_view_has_projections (self) || self->scale <= 0.0)
    return;
  before.x += self->pan.x - self->laid_pan.x;
  before.y += self->pan.y - self->laid_pan.y;
  fp_board_view_lay_out (self);
  now = self->layout.view[anchor].origin;
  if (before.x != now.x || before.y != now.y)
    {
      self->pan.x += before.x - now.x;
      self->pan.y += before.y - now.y;
      fp_board_view_lay_out (self);
    }
  fp_board_view_forget_drawing (self);
}

/* --- looking around ------------------------------------------------------- */

static void
shift (FpPoint *p, FpPoint by)
{
  p->x += by.x;
  p->y += by.y;
}

/* The layout is the same wherever the paper lies: so it is, while something is being moved on it. */
static void
shift_layout (FpBoardView *self)
{
  FpPoint by = { self->pan.x - self->laid_pan.x, self->pan.y - self->laid_pan.y };

  for (guint v = 0; v < FP_N_VIEWS; v++)
    {
      FpBox *box = &self->layout.frame[v];

      shift (&self->layout.view[v].origin, by);
      *box = (FpBox) { box->x0 + by.x, box->y0 + by.y, box->x1 + by.x, box->y1 + by.y };
    }
  shift (&self->layout.mitre_a, by);
  shift (&self->layout.mitre_b, by);
  self->laid_pan = self->pan;
}

static gboolean
is_previewing (FpBoardView *self)
{
  return self->document != NULL && fp_document_is_previewing (self->document);
}

/* The paper lies still: titles and dimensions are set out for what is seen of it now, and names for what stands there. */
static gboolean
settle (gpointer data)
{
  FpBoardView *self = data;
  const gboolean panned = self->pan.x != self->laid_pan.x || self->pan.y != self->laid_pan.y;
  const gboolean lacking = !is_previewing (self) && fp_board_memory_lacks_name (self->memory);

  if (self->held)
    return G_SOURCE_CONTINUE;
  self->settling = 0;
  if (!fp_board_view_has_projections (self) || self->scale <= 0.0 || (!panned && !lacking))
    return G_SOURCE_REMOVE;
  if (panned)
    shift_layout (self);
  fp_board_view_forget_drawing (self);
  self->at_rest = !is_previewing (self);
  return G_SOURCE_REMOVE;
}

static void
settle_soon (FpBoardView *self)
{
  g_clear_handle_id (&self->settling, g_source_remove);
  self->settling = g_timeout_add (SETTLE_MS, settle, self);
}

gboolean
fp_board_view_lies_still (FpBoardView *self)
{
  return fp_board_view_is_current (self) && self->drawing != NULL && self->settling == 0;
}

void
fp_board_view_pan_by (FpBoardView *self, FpPoint by)
{
  fp_board_view_end_typing (self);
  self->framing = FRAME_BY_HAND;
  shift (&self->pan, by);
  if (fabs (self->pan.x - self->laid_pan.x) > MARGIN_MM || fabs (self->pan.y - self->laid_pan.y) > MARGIN_MM)
    {
      shift_layout (self);
      fp_board_view_forget_drawing (self);
    }
  gtk_widget_queue_draw (GTK_WIDGET (self));
  settle_soon (self);
}

/* --- the drawing ---------------------------------------------------------- */

/* While changes may follow one upon the other, a name for which there is no room beside what stood somewhere can wait. */
void
fp_board_view_ensure (FpBoardView *self)
{
  if (self->drawing != NULL || !fp_board_view_has_projections (self) || self->scale <= 0.0)
    return;
  self->layout.chosen = self->document != NULL ? fp_document_chosen_all (self->document) : NULL;
  self->layout.in_hand = !self->at_rest || is_previewing (self);
  self->at_rest = FALSE;
  self->drawing = fp_board_draw (self->projection, &self->layout, width_mm (self) + 2.0 * MARGIN_MM,
                                 fp_board_view_height_mm (self) + 2.0 * MARGIN_MM);
  self->layout.chosen = NULL;
  fp_board_view_keep_memory (self);
  if (!is_previewing (self) && fp_board_memory_lacks_name (self->memory))
    settle_soon (self);
}

static double
box_distance (const FpBox *box, FpPoint p)
{
  double dx = MAX (MAX (box->x0 - p.x, p.x - box->x1), 0.0);
  double dy = MAX (MAX (box->y0 - p.y, p.y - box->y1), 0.0);

  return hypot (dx, dy);
}

static FpViewId
nearest_view (FpBoardView *self, FpPoint paper)
{
  FpViewId best = FP_VIEW_PLAN;

  for (guint v = 0; v < FP_N_VIEWS; v++)
    if (box_distance (&self->layout.frame[v], paper) < box_distance (&self->layout.frame[best], paper))
      best = (FpViewId) v;
  return best;
}

/* What lies under the pointer stays under it. */
void
fp_board_view_zoom_at (FpBoardView *self, double factor, double x, double y)
{
  FpPoint paper, world, now;
  FpViewId view;

  if (!fp_board_view_has_projections (self) || self->scale <= 0.0 || self->held)
    return;
  fp_board_view_end_typing (self);
  paper = fp_board_view_to_paper (self, x, y);
  view = nearest_view (self, paper);
  world = fp_view_from_paper (&self->layout.view[view], paper);
  self->scale = CLAMP (self->scale / factor, SCALE_MIN, SCALE_MAX);
  fp_board_view_lay_out (self);
  now = fp_view_to_paper (&self->layout.view[view], world);
  paper = fp_board_view_to_paper (self, x, y);
  self->pan.x += paper.x - now.x;
  self->pan.y += paper.y - now.y;
  fp_board_view_lay_out (self);
  self->framing = FRAME_BY_HAND;
  fp_board_view_forget_drawing (self);
  fp_board_view_update_readout (self);
}

void
fp_board_view_zoom (FpBoardView *self, double factor)
{
  fp_board_view_zoom_at (self, factor, gtk_widget_get_width (GTK_WIDGET (self)) / 2.0,
                         gtk_widget_get_height (GTK_WIDGET (self)) / 2.0);
}

void
fp_board_view_frame (FpBoardView *self, gboolean whole)
{
  if (self->held)
    return;
  fp_board_view_end_typing (self);
  self->framing = whole ? FRAME_WHOLE : FRAME_SANCTUARY;
  fp_board_view_fit (self);
}

void
fp_board_view_lie (FpBoardView *self, double scale, FpPoint pan, Framing framing)
{
  fp_board_view_end_typing (self);
  self->framing = framing;
  if (framing != FRAME_BY_HAND)
    {
      fp_board_view_fit (self);
      return;
    }
  self->scale = CLAMP (scale, SCALE_MIN, SCALE_MAX);
  self->pan = pan;
  fp_board_view_lay_out (self);
  fp_board_view_forget_drawing (self);
  fp_board_view_update_readout (self);
}

void
fp_board_view_show_only (FpBoardView *self, int view)
{
  if (self->held || view == self->only || !fp_board_view_has_projections (self) || self->scale <= 0.0)
    return;
  fp_board_view_end_typing (self);
  if (self->only < 0)
    {
      self->all_three.scale = self->scale;
      self->all_three.pan = self->pan;
      self->all_three.framing = self->framing;
    }
  self->only = view;
  self->framing = view < 0 ? self->all_three.framing : self->framing == FRAME_WHOLE ? FRAME_WHOLE : FRAME_SANCTUARY;
  fp_board_view_lie (self, self->all_three.scale, self->all_three.pan, self->framing);
  fp_board_view_tell (self);
  fp_board_view_hover (self);
}

int
fp_board_view_only (FpBoardView *self)
{
  return self->only;
}

double
fp_board_view_scale (FpBoardView *self)
{
  return self->scale;
}

static gboolean
is_cut_as_told (FpBoardView *self, FpViewId view)
{
  const FpCut drawn = fp_projection_cut (self->projection[view]), told = self->how.cut[view];

  return drawn.placed == told.placed && drawn.at == told.at && drawn.turned == told.turned;
}

gboolean
fp_board_view_is_current (FpBoardView *self)
{
  return self->document != NULL && fp_board_view_has_projections (self)
         && fp_projection_scene (self->projection[0]) == fp_document_scene (self->document)
         && fp_projection_hidden (self->projection[0]) == self->how.hidden && is_cut_as_told (self, FP_VIEW_ELEVATION)
         && is_cut_as_told (self, FP_VIEW_SECTION);
}

gboolean
fp_board_view_locate (FpBoardView *self, FpViewId view, FpVec3 at, double *x, double *y)
{
  FpPoint p;

  if (!fp_board_view_has_projections (self) || self->scale <= 0.0)
    return FALSE;
  p = fp_board_view_on_widget (self, view, at);
  *x = p.x;
  *y = p.y;
  return TRUE;
}

/* All that there is of it, in widget px as a view shows it. */
static FpBox
box_on_widget (FpBoardView *self, const FpPlaced *placed, FpViewId view)
{
  const double level[] = { placed->level, placed->level + placed->extent.height };
  FpBox box = FP_BOX_EMPTY;

  for (guint i = 0; i < 8; i++)
    {
      const FpVec3 at = { i & 1 ? placed->plan.x1 : placed->plan.x0, i & 2 ? placed->plan.y1 : placed->plan.y0,
                          level[i / 4] };

      fp_box_add_point (&box, fp_board_view_on_widget (self, view, at));
    }
  return box;
}

/* Half of it, or of the screen where it is larger. */
static gboolean
is_seen (double lo, double hi, double screen)
{
  return MIN (hi, screen) - MAX (lo, 0.0) >= MIN (hi - lo, screen) / 2.0;
}

/* How far it has to go to be on the screen with some room round it; in the middle of it where it is too large. */
static double
way_in (double lo, double hi, double screen)
{
  const double room = MIN (REVEAL_ROOM, MAX (screen - (hi - lo), 0.0) / 2.0);

  if (hi - lo + 2.0 * room >= screen)
    return (screen - lo - hi) / 2.0;
  return lo < room ? room - lo : hi > screen - room ? screen - room - hi : 0.0;
}

/* Drawn there, which what lies before or behind the cut is not, and on the screen. */
static gboolean
is_seen_in (FpBoardView *self, const FpPlaced *placed, FpViewId view)
{
  const FpBox box = box_on_widget (self, placed, view);

  return (self->only < 0 || self->only == (int) view) && fp_board_view_is_drawn (self, fp_item_id (placed->item), view)
         && is_seen (box.x0, box.x1, gtk_widget_get_width (GTK_WIDGET (self)))
         && is_seen (box.y0, box.y1, gtk_widget_get_height (GTK_WIDGET (self)));
}

void
fp_board_view_reveal (FpBoardView *self, const FpPlaced *placed)
{
  const double width = gtk_widget_get_width (GTK_WIDGET (self)), height = gtk_widget_get_height (GTK_WIDGET (self));
  const FpViewId best = self->only >= 0 ? (FpViewId) self->only : FP_VIEW_PLAN;
  FpPoint by;
  FpBox box;

  if (placed == NULL || !fp_board_view_has_projections (self) || self->scale <= 0.0 || self->held)
    return;
  fp_board_view_ensure (self);
  for (guint v = 0; self->drawing != NULL && v < FP_N_VIEWS; v++)
    if (is_seen_in (self, placed, (FpViewId) v))
      return;
  box = box_on_widget (self, placed, best);
  by = (FpPoint) { way_in (box.x0, box.x1, width) / PX_PER_MM, -way_in (box.y0, box.y1, height) / PX_PER_MM };
  if (hypot (by.x, by.y) * PX_PER_MM >= 1.0) /* the page lies on whole pixels */
    fp_board_view_pan_by (self, by);
}

void
fp_board_view_mark (FpBoardView *self, const FpVec3 *at)
{
  if (at == NULL || at->x != self->mark.x || at->y != self->mark.y || at->z != self->mark.z)
    {
      fp_board_view_mark_way (self, NULL);
      fp_board_view_mark_evidence (self, NULL);
    }
  self->marked = at != NULL;
  if (at != NULL)
    self->mark = *at;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

gboolean
fp_board_view_marked (FpBoardView *self, FpVec3 *at)
{
  *at = self->mark;
  return self->marked;
}
