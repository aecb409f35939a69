/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-overlay.c - what lies over the page: what is chosen, and the mark of a finding */
#include "board-view-private.h"

#include <math.h>

#define MARK_RADIUS_MM 3.2
#define FIGURE_WIDTH_MM 0.25
#define LEFT_WIDTH_MM  1.0 /* wider than any pen, with what smooths its edges */

/* Of what is chosen: no ink of the drawing, nor like one to who sees no difference of red and green.  The safe inks draw
 * proposed work in blue, so there it is the bluish green that goes with them. */
FpInk
fp_board_view_accent (FpBoardView *self)
{
  if (self->ink == FP_INK_SAFE)
    return self->dark ? (FpInk) { 0.25, 0.85, 0.66 } : (FpInk) { 0.0, 0.47, 0.35 };
  return self->dark ? (FpInk) { 0.53, 0.73, 1.0 } : (FpInk) { 0.11, 0.36, 0.72 };
}

static FpInk
amber (FpBoardView *self)
{
  return self->dark ? (FpInk) { 1.0, 0.74, 0.3 } : (FpInk) { 0.62, 0.36, 0.0 };
}

static void
set_colour (cairo_t *cr, FpInk c, double alpha)
{
  cairo_set_source_rgba (cr, c.r, c.g, c.b, alpha);
}

static void
line (cairo_t *cr, double x0, double y0, double x1, double y1)
{
  cairo_move_to (cr, x0, y0);
  cairo_line_to (cr, x1, y1);
}

void
fp_board_view_forget_chosen (FpBoardView *self)
{
  for (guint v = 0; v < FP_N_VIEWS; v++)
    {
      g_clear_pointer (&self->chosen_node[v], gsk_render_node_unref);
      g_clear_pointer (&self->left_node[v], gsk_render_node_unref);
    }
  g_clear_pointer (&self->figures_node, gsk_render_node_unref);
}

void
fp_board_view_forget_nodes (FpBoardView *self)
{
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

/* --- nodes that lie on the page ------------------------------------------- */

/* A path in mm of the page and how it is stroked, before it is known how much room it takes. */
static cairo_t *
begin_path (double width)
{
  cairo_surface_t *none = cairo_image_surface_create (CAIRO_FORMAT_A8, 0, 0);
  cairo_t *cr = cairo_create (none);

  cairo_surface_destroy (none);
  cairo_scale (cr, PX_PER_MM, PX_PER_MM);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
  cairo_set_line_width (cr, width);
  return cr;
}

/* What a stroke along the path covers, whole pixels of the page; FALSE: nothing. */
static gboolean
bounds_of (cairo_t *path, graphene_rect_t *out)
{
  double x0, y0, x1, y1;

  cairo_stroke_extents (path, &x0, &y0, &x1, &y1);
  if (!(x1 > x0 && y1 > y0))
    return FALSE;
  x0 = floor (x0 * PX_PER_MM) - 1.0;
  y0 = floor (y0 * PX_PER_MM) - 1.0;
  graphene_rect_init (out, (float) x0, (float) y0, (float) (ceil (x1 * PX_PER_MM) + 1.0 - x0),
                      (float) (ceil (y1 * PX_PER_MM) + 1.0 - y0));
  return TRUE;
}

static void
stroke_like (cairo_t *cr, cairo_t *path, FpInk ink, double alpha)
{
  cairo_path_t *copy = cairo_copy_path (path);

  cairo_scale (cr, PX_PER_MM, PX_PER_MM);
  cairo_set_line_cap (cr, cairo_get_line_cap (path));
  cairo_set_line_join (cr, cairo_get_line_join (path));
  cairo_set_line_width (cr, cairo_get_line_width (path));
  set_colour (cr, ink, alpha);
  cairo_append_path (cr, copy);
  /* One stroke for all of it: where outlines overlap it gets no darker. */
  cairo_stroke (cr);
  cairo_path_destroy (copy);
}

/* No larger than what is drawn: all that a node covers is painted anew where it is another, and what is chosen is another
 * in each frame of a drag.  Takes the path. */
static GskRenderNode *
end_path (cairo_t *path, FpInk ink, double alpha)
{
  GskRenderNode *node;
  graphene_rect_t bounds;

  if (bounds_of (path, &bounds))
    {
      cairo_t *cr;

      node = gsk_cairo_node_new (&bounds);
      cr = gsk_cairo_node_get_draw_context (node);
      stroke_like (cr, path, ink, alpha);
      cairo_destroy (cr);
    }
  else
    node = gsk_container_node_new (NULL, 0);
  cairo_destroy (path);
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
is_outlined (FpBoardView *self, const FpMark *mark, GHashTable *items, int view)
{
  if (mark->dimension != 0 || mark->type == FP_MARK_TEXT || mark->pen == FP_PEN_HATCH
      || mark->pen == FP_PEN_DIMENSION || mark->item == NULL)
    return FALSE;
  if (view >= 0 && mark->view != view)
    return FALSE;
  return (g_hash_table_contains (items, mark->item)
          || (view >= 0 && self->moving != NULL && g_hash_table_contains (self->moving, mark->item)))
         && !is_of_a_ghost (self, mark);
}

/* As a set of interned ids. */
static GHashTable *
items_of (const char *const *ids)
{
  GHashTable *items = g_hash_table_new (NULL, NULL);

  for (; *ids != NULL; ids++)
    g_hash_table_add (items, (gpointer) g_intern_string (*ids));
  return items;
}

/* @view: -1 for all; otherwise with what moves together with the things. */
static GskRenderNode *
outline_node (FpBoardView *self, const char *const *ids, int view, FpInk ink, double width, double alpha)
{
  g_autoptr (GHashTable) items = items_of (ids);
  cairo_t *path = begin_path (width);
  guint n;
  const FpMark *mark = fp_drawing_marks (self->drawing, &n);

  for (guint i = 0; i < n; i++)
    if (is_outlined (self, &mark[i], items, view))
      trace_mark (self, path, &mark[i]);
  return end_path (path, ink, alpha);
}

static GskRenderNode *
figures_node (FpBoardView *self, const char *const *ids)
{
  g_autoptr (GHashTable) items = items_of (ids);
  cairo_t *path = begin_path (FIGURE_WIDTH_MM);
  guint n;
  const FpMark *mark = fp_drawing_marks (self->drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].dimension != 0 && mark[i].type == FP_MARK_TEXT && g_hash_table_contains (items, mark[i].item))
      trace_figure (self, path, &mark[i]);
  return end_path (path, fp_board_view_accent (self), 1.0);
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

/* Where the page still shows what the hand has moved on, it is wiped: nobody has two altars. */
static void
wipe_left (FpBoardView *self, GtkSnapshot *snapshot, const char *const *chosen, FpViewId view)
{
  const FpInk paper = fp_fill_ink (FP_FILL_PAPER, FP_STANDING_EXISTING, self->dark ? FP_SURFACE_DARK : FP_SURFACE_PAPER);

  if (self->left_node[view] == NULL)
    self->left_node[view] = outline_node (self, chosen, (int) view, paper, LEFT_WIDTH_MM, 1.0);
  append_page_node (self, snapshot, self->left_node[view], (FpPoint) { 0.0, 0.0 });
}

static void
snapshot_chosen (FpBoardView *self, GtkSnapshot *snapshot, const char *const *chosen)
{
  FpVec3 by = lead (self);

  for (guint v = 0; v < FP_N_VIEWS; v++)
    {
      FpPoint shift = fp_layout_point (&self->layout.view[v], (FpViewId) v, by);
      double scale = self->layout.view[v].scale;

      if (by.x != 0.0 || by.y != 0.0)
        wipe_left (self, snapshot, chosen, (FpViewId) v);
      if (self->chosen_node[v] == NULL)
        self->chosen_node[v] = outline_node (self, chosen, (int) v, fp_board_view_accent (self), 0.6, 0.8);
      append_page_node (self, snapshot, self->chosen_node[v], (FpPoint) { shift.x / scale, shift.y / scale });
    }
  if (self->figures_node == NULL)
    self->figures_node = figures_node (self, chosen);
  if (by.x == 0.0 && by.y == 0.0)
    append_page_node (self, snapshot, self->figures_node, (FpPoint) { 0.0, 0.0 });
}

/* --- the mark of a finding ------------------------------------------------ */

static void
draw_ring (FpBoardView *self, cairo_t *cr, FpPoint at)
{
  double r = MARK_RADIUS_MM * PX_PER_MM;

  for (guint pass = 0; pass < 2; pass++)
    {
      if (pass == 0)
        set_colour (cr, self->dark ? (FpInk) { 0.0, 0.0, 0.0 } : (FpInk) { 1.0, 1.0, 1.0 }, 0.9);
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

/* A ring would hide what was measured, or the narrowest place of a way, which has a circle of its own. */
static gboolean
is_drawn_there (FpBoardView *self, FpViewId view)
{
  const FpWay *way = fp_board_view_marked_way (self);

  return fp_board_view_has_evidence (self, view) || (view == FP_VIEW_PLAN && way != NULL && way->narrows);
}

static void
draw_marks (FpBoardView *self, cairo_t *cr)
{
  for (guint v = 0; v < FP_N_VIEWS; v++)
    {
      FpPoint at;

      if (!is_drawn_there (self, (FpViewId) v) && fp_board_view_locate (self, (FpViewId) v, self->mark, &at.x, &at.y))
        draw_ring (self, cr, at);
    }
}

/* --- all of it ------------------------------------------------------------ */

static void
draw_focus (FpBoardView *self, cairo_t *cr, double width, double height)
{
  set_colour (cr, fp_board_view_accent (self), 0.7);
  cairo_set_dash (cr, NULL, 0, 0.0);
  cairo_set_line_width (cr, 2.0);
  cairo_rectangle (cr, 1.0, 1.0, width - 2.0, height - 2.0);
  cairo_stroke (cr);
}

static void
snapshot_hover (FpBoardView *self, GtkSnapshot *snapshot)
{
  const char *const ids[] = { self->hover, NULL };

  if (self->hover_node == NULL)
    self->hover_node = outline_node (self, ids, -1, fp_board_view_accent (self), 0.8, 0.3);
  append_page_node (self, snapshot, self->hover_node, (FpPoint) { 0.0, 0.0 });
}

void
fp_board_view_snapshot_overlays (FpBoardView *self, GtkSnapshot *snapshot, double width, double height)
{
  const char *const *chosen = fp_document_chosen_all (self->document);
  gboolean guided = fp_board_view_has_guides (self), numbered = fp_board_view_has_sides (self);
  gboolean focus = gtk_widget_has_visible_focus (GTK_WIDGET (self));
  cairo_t *cr;

  if (self->hover != NULL && !self->held && !fp_document_is_chosen (self->document, self->hover))
    snapshot_hover (self, snapshot);
  if (*chosen != NULL)
    snapshot_chosen (self, snapshot, chosen);
  if (!guided && !self->marked && !focus && !numbered)
    return;
  cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  if (focus)
    draw_focus (self, cr, width, height);
  if (numbered)
    fp_board_view_draw_sides (self, cr);
  if (self->marked)
    draw_marks (self, cr);
  if (guided)
    fp_board_view_draw_guides (self, cr);
  cairo_destroy (cr);
}
