/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-overlay.c - what lies over the page: the chosen thing, the mark of a finding, projector lines */
#include "board-view-private.h"
#include "things.h"

#include <math.h>

#define MARK_RADIUS_MM 3.2

typedef struct { double r, g, b; } Colour;

static Colour
accent (FpBoardView *self)
{
  return self->dark ? (Colour) { 0.53, 0.73, 1.0 } : (Colour) { 0.11, 0.36, 0.72 };
}

static Colour
amber (FpBoardView *self)
{
  return self->dark ? (Colour) { 1.0, 0.74, 0.3 } : (Colour) { 0.62, 0.36, 0.0 };
}

static void
set_colour (cairo_t *cr, Colour c, double alpha)
{
  cairo_set_source_rgba (cr, c.r, c.g, c.b, alpha);
}

void
fp_board_view_forget_chosen (FpBoardView *self)
{
  for (guint v = 0; v < FP_N_VIEWS; v++)
    g_clear_pointer (&self->chosen_node[v], gsk_render_node_unref);
  g_clear_pointer (&self->figures_node, gsk_render_node_unref);
}

void
fp_board_view_forget_nodes (FpBoardView *self)
{
  g_clear_pointer (&self->page, gsk_render_node_unref);
  fp_board_view_forget_chosen (self);
  g_clear_pointer (&self->hover_node, gsk_render_node_unref);
}

/* --- a thing, outlined ---------------------------------------------------- */

/* In mm from the upper edge of the page, as the page itself is painted. */
static void
trace_mark (FpBoardView *self, cairo_t *cr, const FpMark *mark)
{
  const FpPoint *pt = fp_drawing_points (self->drawing) + mark->first;
  double height = fp_drawing_height (self->drawing);

  if (mark->type == FP_MARK_CIRCLE)
    {
      cairo_new_sub_path (cr);
      cairo_arc (cr, mark->at.x, height - mark->at.y, mark->radius, 0.0, 2.0 * G_PI);
      return;
    }
  for (guint i = 0; i < mark->n; i++)
    if (i == 0)
      cairo_move_to (cr, pt[i].x, height - pt[i].y);
    else
      cairo_line_to (cr, pt[i].x, height - pt[i].y);
  if (mark->closed)
    cairo_close_path (cr);
}

/* Round the figure of a dimension that can be typed over. */
static void
trace_figure (FpBoardView *self, cairo_t *cr, const FpMark *mark)
{
  double w = fp_lettering_width (mark->text, mark->height), pad = mark->height * 0.45;
  double x = mark->align == FP_ALIGN_LEFT ? 0.0 : mark->align == FP_ALIGN_MIDDLE ? -w / 2.0 : -w;

  cairo_save (cr);
  cairo_translate (cr, mark->at.x, fp_drawing_height (self->drawing) - mark->at.y);
  cairo_rotate (cr, -mark->turn * G_PI / 180.0);
  cairo_rectangle (cr, x - pad, -mark->height - pad, w + 2.0 * pad, mark->height + 2.0 * pad);
  cairo_restore (cr);
}

/* A node as large as the page, in its millimetres. */
static GskRenderNode *
begin_node (FpBoardView *self, cairo_t **cr)
{
  GskRenderNode *node;
  graphene_rect_t bounds;

  graphene_rect_init (&bounds, 0, 0, (float) (fp_drawing_width (self->drawing) * PX_PER_MM),
                      (float) (fp_drawing_height (self->drawing) * PX_PER_MM));
  node = gsk_cairo_node_new (&bounds);
  *cr = gsk_cairo_node_get_draw_context (node);
  cairo_scale (*cr, PX_PER_MM, PX_PER_MM);
  cairo_set_line_cap (*cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join (*cr, CAIRO_LINE_JOIN_ROUND);
  return node;
}

/* Where a thing stood before it was moved is not the thing. */
static gboolean
is_of_a_ghost (FpBoardView *self, const FpMark *mark)
{
  const FpPlaced *placed;

  if (mark->standing != FP_STANDING_REMOVED)
    return FALSE;
  placed = fp_document_placed (self->document, mark->item);
  return placed != NULL && !placed->ghost;
}

static gboolean
is_outlined (FpBoardView *self, const FpMark *mark, const char *item, int view)
{
  if (mark->dimension != 0 || mark->type == FP_MARK_TEXT || mark->pen == FP_PEN_HATCH
      || mark->pen == FP_PEN_DIMENSION || mark->item == NULL)
    return FALSE;
  if (view >= 0 && mark->view != view)
    return FALSE;
  return (mark->item == item
          || (view >= 0 && self->moving != NULL && g_hash_table_contains (self->moving, mark->item)))
         && !is_of_a_ghost (self, mark);
}

/* @view: -1 for all; otherwise with what moves together with the thing. */
static GskRenderNode *
outline_node (FpBoardView *self, const char *id, int view, double width, double alpha)
{
  const char *item = g_intern_string (id);
  cairo_t *cr;
  GskRenderNode *node = begin_node (self, &cr);
  guint n;
  const FpMark *mark = fp_drawing_marks (self->drawing, &n);

  for (guint i = 0; i < n; i++)
    if (is_outlined (self, &mark[i], item, view))
      trace_mark (self, cr, &mark[i]);
  /* One stroke for all of it: where outlines overlap it gets no darker. */
  set_colour (cr, accent (self), alpha);
  cairo_set_line_width (cr, width);
  cairo_stroke (cr);
  cairo_destroy (cr);
  return node;
}

static GskRenderNode *
figures_node (FpBoardView *self, const char *id)
{
  const char *item = g_intern_string (id);
  cairo_t *cr;
  GskRenderNode *node = begin_node (self, &cr);
  guint n;
  const FpMark *mark = fp_drawing_marks (self->drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].item == item && mark[i].param != NULL && mark[i].type == FP_MARK_TEXT)
      trace_figure (self, cr, &mark[i]);
  set_colour (cr, accent (self), 1.0);
  cairo_set_line_width (cr, 0.25);
  cairo_stroke (cr);
  cairo_destroy (cr);
  return node;
}

static void
append_page_node (FpBoardView *self, GtkSnapshot *snapshot, GskRenderNode *node, FpPoint by)
{
  FpPoint corner = fp_board_view_to_widget (self, (FpPoint) { by.x, fp_drawing_height (self->drawing) + by.y });

  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float) corner.x, (float) corner.y));
  gtk_snapshot_append_node (snapshot, node);
  gtk_snapshot_restore (snapshot);
}

/* How far the chosen thing is from where the page shows it: a large church is drawn a little behind the hand. */
static FpVec3
lead (FpBoardView *self)
{
  const FpScene *drawn = fp_projection_scene (self->projection[0]);
  const FpPlaced *now = fp_document_chosen_placed (self->document);
  int i = fp_scene_find (drawn, fp_document_chosen (self->document));
  const FpPlaced *then = i >= 0 ? &fp_scene_placed (drawn, NULL)[i] : NULL;

  if (now == NULL || then == NULL || now->ghost)
    return (FpVec3) { 0.0, 0.0, 0.0 };
  return (FpVec3) { now->place.x - then->place.x, now->place.y - then->place.y, 0.0 };
}

static void
snapshot_chosen (FpBoardView *self, GtkSnapshot *snapshot, const char *chosen)
{
  FpVec3 by = lead (self);

  for (guint v = 0; v < FP_N_VIEWS; v++)
    {
      FpPoint shift = fp_view_point ((FpViewId) v, by);
      double scale = self->layout.view[v].scale;

      if (self->chosen_node[v] == NULL)
        self->chosen_node[v] = outline_node (self, chosen, (int) v, 0.6, 0.8);
      append_page_node (self, snapshot, self->chosen_node[v], (FpPoint) { shift.x / scale, shift.y / scale });
    }
  if (self->figures_node == NULL)
    self->figures_node = figures_node (self, chosen);
  if (by.x == 0.0 && by.y == 0.0)
    append_page_node (self, snapshot, self->figures_node, (FpPoint) { 0.0, 0.0 });
}

/* --- projector lines ------------------------------------------------------ */

static void
to_page (FpBoardView *self, FpViewId view, double h, double v, double *x, double *y)
{
  FpPoint p = fp_board_view_to_widget (self, fp_view_to_paper (&self->layout.view[view], (FpPoint) { h, v }));

  *x = p.x;
  *y = p.y;
}

static void
line (cairo_t *cr, double x0, double y0, double x1, double y1)
{
  cairo_move_to (cr, x0, y0);
  cairo_line_to (cr, x1, y1);
}

/* Plan to elevation: what keeps its x. */
static void
project_x (FpBoardView *self, cairo_t *cr, double x, const FpPlaced *placed)
{
  double x0, y0, x1, y1;

  to_page (self, FP_VIEW_PLAN, x, placed->plan.y1, &x0, &y0);
  to_page (self, FP_VIEW_ELEVATION, x, placed->level, &x1, &y1);
  line (cr, x0, y0, x1, y1);
}

/* Plan to section, round the mitre line: what keeps its y. */
static void
project_y (FpBoardView *self, cairo_t *cr, double y, const FpPlaced *placed)
{
  double x0, y0, x1, y1;

  to_page (self, FP_VIEW_PLAN, placed->plan.x1, y, &x0, &y0);
  to_page (self, FP_VIEW_SECTION, -y, placed->level, &x1, &y1);
  line (cr, x0, y0, x1, y0);
  cairo_line_to (cr, x1, y1);
}

/* Elevation to section: what keeps its z. */
static void
project_z (FpBoardView *self, cairo_t *cr, double z, const FpPlaced *placed)
{
  double x0, y0, x1, y1;

  to_page (self, FP_VIEW_ELEVATION, placed->plan.x1, z, &x0, &y0);
  to_page (self, FP_VIEW_SECTION, -placed->plan.y1, z, &x1, &y1);
  line (cr, x0, y0, x1, y1);
}

static void
draw_mitre (FpBoardView *self, cairo_t *cr)
{
  FpPoint a = fp_board_view_to_widget (self, self->layout.mitre_a);
  FpPoint b = fp_board_view_to_widget (self, self->layout.mitre_b);

  line (cr, a.x, a.y, b.x, b.y);
}

static void
draw_projectors (FpBoardView *self, cairo_t *cr)
{
  const FpPlaced *placed = fp_document_chosen_placed (self->document);
  static const double dots[] = { 1.0, 4.0 };

  if (placed == NULL)
    return;
  set_colour (cr, accent (self), 0.85);
  cairo_set_line_width (cr, 1.0);
  draw_mitre (self, cr);
  cairo_stroke (cr);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_width (cr, 1.4);
  cairo_set_dash (cr, dots, 2, 0.0);
  project_x (self, cr, placed->plan.x0, placed);
  project_x (self, cr, placed->plan.x1, placed);
  project_y (self, cr, placed->plan.y0, placed);
  project_y (self, cr, placed->plan.y1, placed);
  project_z (self, cr, placed->level, placed);
  project_z (self, cr, placed->level + placed->extent.height, placed);
  cairo_stroke (cr);
}

/* --- the axis of the church, while it holds what is moved ----------------- */

static gboolean
is_held_by_axis (FpBoardView *self)
{
  const FpPlaced *placed = fp_document_chosen_placed (self->document);

  return placed != NULL && self->tool.hit.view != FP_VIEW_SECTION && fabs (placed->place.x) < 0.05;
}

static void
draw_axis (FpBoardView *self, cairo_t *cr)
{
  static const FpViewId across[] = { FP_VIEW_ELEVATION, FP_VIEW_PLAN };

  set_colour (cr, accent (self), 1.0);
  cairo_set_line_width (cr, 2.0);
  cairo_set_dash (cr, NULL, 0, 0.0);
  for (guint i = 0; i < G_N_ELEMENTS (across); i++)
    {
      const FpBox *f = &self->layout.frame[across[i]];
      double x = fp_view_to_paper (&self->layout.view[across[i]], (FpPoint) { 0.0, 0.0 }).x;
      FpPoint top = fp_board_view_to_widget (self, (FpPoint) { x, f->y1 });
      FpPoint bottom = fp_board_view_to_widget (self, (FpPoint) { x, f->y0 });

      line (cr, top.x, top.y, bottom.x, bottom.y);
    }
  cairo_stroke (cr);
}

/* How far it has been moved and which way, beside the pointer. */
static void
draw_travel (FpBoardView *self, cairo_t *cr)
{
  g_autofree char *text = fp_travel_words (self->tool.by, fp_board_view_units (self), is_held_by_axis (self));
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), text);
  double x = self->pointer.x + 18.0, y = self->pointer.y + 18.0;
  int w, h;

  pango_layout_get_pixel_size (layout, &w, &h);
  x = MIN (x, gtk_widget_get_width (GTK_WIDGET (self)) - w - 16.0);
  y = MIN (y, gtk_widget_get_height (GTK_WIDGET (self)) - h - 12.0);
  cairo_set_dash (cr, NULL, 0, 0.0);
  cairo_rectangle (cr, x - 8.0, y - 4.0, w + 16.0, h + 8.0);
  set_colour (cr, self->dark ? (Colour) { 0.85, 0.88, 0.93 } : (Colour) { 0.13, 0.16, 0.21 }, 0.94);
  cairo_fill (cr);
  set_colour (cr, self->dark ? (Colour) { 0.08, 0.09, 0.11 } : (Colour) { 1.0, 1.0, 1.0 }, 1.0);
  cairo_move_to (cr, x, y);
  pango_cairo_show_layout (cr, layout);
}

/* --- the mark of a finding ------------------------------------------------ */

static void
draw_ring (FpBoardView *self, cairo_t *cr, FpPoint at)
{
  double r = MARK_RADIUS_MM * PX_PER_MM;

  for (guint pass = 0; pass < 2; pass++)
    {
      if (pass == 0)
        set_colour (cr, self->dark ? (Colour) { 0.0, 0.0, 0.0 } : (Colour) { 1.0, 1.0, 1.0 }, 0.9);
      else
        set_colour (cr, amber (self), 1.0);
      cairo_set_line_width (cr, pass == 0 ? 6.0 : 2.5);
      cairo_new_path (cr);
      cairo_arc (cr, at.x, at.y, r, 0.0, 2.0 * G_PI);
      for (guint i = 0; i < 4; i++)
        {
          double a = i * G_PI / 2.0;

          line (cr, at.x + cos (a) * r, at.y + sin (a) * r, at.x + cos (a) * r * 1.7, at.y + sin (a) * r * 1.7);
        }
      cairo_stroke (cr);
    }
}

static void
draw_marks (FpBoardView *self, cairo_t *cr)
{
  for (guint v = 0; v < FP_N_VIEWS; v++)
    {
      FpPoint at;

      if (fp_board_view_locate (self, (FpViewId) v, self->mark, &at.x, &at.y))
        draw_ring (self, cr, at);
    }
}

/* --- all of it ------------------------------------------------------------ */

static void
draw_focus (FpBoardView *self, cairo_t *cr, double width, double height)
{
  set_colour (cr, accent (self), 0.7);
  cairo_set_dash (cr, NULL, 0, 0.0);
  cairo_set_line_width (cr, 2.0);
  cairo_rectangle (cr, 1.0, 1.0, width - 2.0, height - 2.0);
  cairo_stroke (cr);
}

void
fp_board_view_snapshot_overlays (FpBoardView *self, GtkSnapshot *snapshot, double width, double height)
{
  const char *chosen = fp_document_chosen (self->document);
  gboolean moving = self->tool.state == FP_TOOL_MOVING;
  gboolean focus = gtk_widget_has_visible_focus (GTK_WIDGET (self));
  cairo_t *cr;

  if (self->hover != NULL && !moving && g_strcmp0 (self->hover, chosen) != 0)
    {
      if (self->hover_node == NULL)
        self->hover_node = outline_node (self, self->hover, -1, 0.8, 0.3);
      append_page_node (self, snapshot, self->hover_node, (FpPoint) { 0.0, 0.0 });
    }
  if (chosen != NULL)
    snapshot_chosen (self, snapshot, chosen);
  if (!moving && !self->marked && !focus)
    return;
  cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  if (focus)
    draw_focus (self, cr, width, height);
  if (self->marked)
    draw_marks (self, cr);
  if (moving)
    {
      draw_projectors (self, cr);
      if (is_held_by_axis (self))
        draw_axis (self, cr);
      draw_travel (self, cr);
    }
  cairo_destroy (cr);
}
