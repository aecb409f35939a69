/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "board-view-private.h"

#include <math.h>

#define SCALE_MIN 1.0
#define SCALE_MAX 2000.0
/* For which the views are fitted at least, mm: what is written round them takes as much room at any scale. */
#define LEAST_WIDTH  220.0
#define LEAST_HEIGHT 130.0

G_DEFINE_FINAL_TYPE (FpBoardView, fp_board_view, GTK_TYPE_WIDGET)

enum { NOTICE, N_SIGNALS };
static guint signals[N_SIGNALS];
enum { PROP_0, PROP_READOUT, PROP_TAPE, N_PROPS };
static GParamSpec *props[N_PROPS];

/* --- coordinates ---------------------------------------------------------- */

static double
width_mm (FpBoardView *self)
{
  return gtk_widget_get_width (GTK_WIDGET (self)) / PX_PER_MM;
}

static double
height_mm (FpBoardView *self)
{
  return gtk_widget_get_height (GTK_WIDGET (self)) / PX_PER_MM;
}

FpPoint
fp_board_view_to_paper (FpBoardView *self, double x, double y)
{
  return (FpPoint) { x / PX_PER_MM + MARGIN_MM - (self->pan.x - self->laid_pan.x),
                     height_mm (self) - y / PX_PER_MM + MARGIN_MM - (self->pan.y - self->laid_pan.y) };
}

FpPoint
fp_board_view_to_widget (FpBoardView *self, FpPoint paper)
{
  return (FpPoint) { (paper.x - MARGIN_MM + (self->pan.x - self->laid_pan.x)) * PX_PER_MM,
                     (height_mm (self) - (paper.y - MARGIN_MM + (self->pan.y - self->laid_pan.y))) * PX_PER_MM };
}

FpUnits
fp_board_view_units (FpBoardView *self)
{
  return fp_project_brief (fp_document_project (self->document))->units;
}

/* --- layout and drawing --------------------------------------------------- */

static void
forget_drawing (FpBoardView *self)
{
  g_clear_pointer (&self->drawing, fp_drawing_unref);
  fp_board_view_forget_nodes (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static gboolean
has_projections (FpBoardView *self)
{
  return self->projection[0] != NULL;
}

static const FpScene *
drawn_scene (FpBoardView *self)
{
  return fp_projection_scene (self->projection[0]);
}

static void
lay_out (FpBoardView *self)
{
  FpPoint pan = { self->pan.x + MARGIN_MM, self->pan.y + MARGIN_MM };

  if (self->only >= 0)
    fp_board_layout_alone (drawn_scene (self), (FpViewId) self->only, self->scale, pan, fp_board_view_units (self),
                           &self->layout);
  else
    fp_board_layout (drawn_scene (self), self->scale, pan, fp_board_view_units (self), &self->layout);
  /* About what is seen as much again is drawn: titles stand in what is seen. */
  self->layout.seen = (FpBox) { MARGIN_MM, MARGIN_MM, MARGIN_MM + width_mm (self), MARGIN_MM + height_mm (self) };
  self->laid_pan = self->pan;
}

static void
frame (FpBoardView *self)
{
  if (!has_projections (self) || width_mm (self) < 1.0 || height_mm (self) < 1.0)
    return;
  /* On a small board they run off at the right and below: better than to be too small to see. */
  if (self->only >= 0)
    fp_board_fit_alone (drawn_scene (self), (FpViewId) self->only, self->framing == FRAME_WHOLE,
                        MAX (width_mm (self), LEAST_WIDTH), MAX (height_mm (self), LEAST_HEIGHT), &self->scale,
                        &self->pan);
  else
    fp_board_fit (drawn_scene (self), self->framing == FRAME_WHOLE, MAX (width_mm (self), LEAST_WIDTH),
                  MAX (height_mm (self), LEAST_HEIGHT), fp_board_view_units (self), &self->scale, &self->pan);
  self->scale = CLAMP (self->scale, SCALE_MIN, SCALE_MAX);
  self->pan.y += MIN (height_mm (self) - LEAST_HEIGHT, 0.0);
  lay_out (self);
  forget_drawing (self);
  fp_board_view_update_readout (self);
}

/* The gaps between the views follow from what stands where; one view must not move under the eye when they change. */
void
fp_board_view_relayout (FpBoardView *self)
{
  const FpViewId anchor = self->only >= 0 ? (FpViewId) self->only : self->anchor;
  FpPoint before = self->layout.view[anchor].origin, now;

  if (!has_projections (self) || self->scale <= 0.0)
    return;
  before.x += self->pan.x - self->laid_pan.x;
  before.y += self->pan.y - self->laid_pan.y;
  lay_out (self);
  now = self->layout.view[anchor].origin;
  self->pan.x += before.x - now.x;
  self->pan.y += before.y - now.y;
  lay_out (self);
  forget_drawing (self);
}

void
fp_board_view_ensure (FpBoardView *self)
{
  if (self->drawing != NULL || !has_projections (self) || self->scale <= 0.0)
    return;
  self->drawing = fp_board_draw (self->projection, &self->layout, width_mm (self) + 2.0 * MARGIN_MM,
                                 height_mm (self) + 2.0 * MARGIN_MM);
}

static void
on_projections (FpProjection *const *projection, gpointer data)
{
  FpBoardView *self = data;

  for (guint v = 0; v < FP_N_VIEWS; v++)
    {
      g_clear_pointer (&self->projection[v], fp_projection_unref);
      self->projection[v] = fp_projection_ref (projection[v]);
    }
  fp_board_view_forget_still (self);
  if (self->document == NULL)
    return;
  if (self->scale <= 0.0)
    frame (self);
  else if (self->held)
    forget_drawing (self);
  else
    fp_board_view_relayout (self);
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

void
fp_board_view_pan_by (FpBoardView *self, FpPoint by)
{
  fp_board_view_end_typing (self);
  self->framing = FRAME_BY_HAND;
  shift (&self->pan, by);
  if (fabs (self->pan.x - self->laid_pan.x) > MARGIN_MM || fabs (self->pan.y - self->laid_pan.y) > MARGIN_MM)
    {
      shift_layout (self);
      forget_drawing (self);
    }
  gtk_widget_queue_draw (GTK_WIDGET (self));
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

  if (!has_projections (self) || self->scale <= 0.0 || self->held)
    return;
  fp_board_view_end_typing (self);
  paper = fp_board_view_to_paper (self, x, y);
  view = nearest_view (self, paper);
  world = fp_view_from_paper (&self->layout.view[view], paper);
  self->scale = CLAMP (self->scale / factor, SCALE_MIN, SCALE_MAX);
  lay_out (self);
  now = fp_view_to_paper (&self->layout.view[view], world);
  paper = fp_board_view_to_paper (self, x, y);
  self->pan.x += paper.x - now.x;
  self->pan.y += paper.y - now.y;
  lay_out (self);
  self->framing = FRAME_BY_HAND;
  forget_drawing (self);
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
  frame (self);
}

void
fp_board_view_show_only (FpBoardView *self, int view)
{
  if (self->held || view == self->only || !has_projections (self) || self->scale <= 0.0)
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
  if (self->framing != FRAME_BY_HAND)
    frame (self);
  else
    {
      self->scale = self->all_three.scale;
      self->pan = self->all_three.pan;
      lay_out (self);
      forget_drawing (self);
    }
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

gboolean
fp_board_view_is_current (FpBoardView *self)
{
  return self->document != NULL && has_projections (self)
         && fp_projection_scene (self->projection[0]) == fp_document_scene (self->document)
         && fp_projection_hidden (self->projection[0]) == self->how.hidden;
}

gboolean
fp_board_view_locate (FpBoardView *self, FpViewId view, FpVec3 at, double *x, double *y)
{
  FpPoint p;

  if (!has_projections (self) || self->scale <= 0.0)
    return FALSE;
  p = fp_board_view_to_widget (self, fp_view_to_paper (&self->layout.view[view], fp_view_point (view, at)));
  *x = p.x;
  *y = p.y;
  return TRUE;
}

/* On the plan, which is where people look for a place; or on the one view that there is. */
static gboolean
is_in_view (FpBoardView *self, FpVec3 at)
{
  double x, y;

  return fp_board_view_locate (self, self->only >= 0 ? (FpViewId) self->only : FP_VIEW_PLAN, at, &x, &y) && x >= 0.0 && y >= 0.0
         && x <= gtk_widget_get_width (GTK_WIDGET (self)) && y <= gtk_widget_get_height (GTK_WIDGET (self));
}

void
fp_board_view_mark (FpBoardView *self, const FpVec3 *at)
{
  self->marked = at != NULL;
  if (at != NULL)
    {
      self->mark = *at;
      if (!is_in_view (self, *at))
        fp_board_view_frame (self, TRUE);
    }
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

gboolean
fp_board_view_marked (FpBoardView *self, FpVec3 *at)
{
  *at = self->mark;
  return self->marked;
}

/* --- the document --------------------------------------------------------- */

static void
on_scene (FpDocument *document, FpBoardView *self)
{
  /* An edit from elsewhere (undo, a typed value) ends a move that is still under the hand. */
  if (self->held && !self->own_change)
    {
      if (self->tool.state == FP_TOOL_TYPING)
        fp_board_view_drop_typing (self);
      fp_board_tool_cancel (&self->tool);
      fp_board_view_let_go (self);
    }
  fp_board_view_forget_handles (self);
  fp_drafter_draft (self->drafter, fp_document_scene (document), &self->how);
  if (!fp_document_is_previewing (document))
    fp_board_view_tell (self);
}

static void
on_chosen (FpDocument *document, FpBoardView *self)
{
  (void) document;
  fp_board_view_forget_chosen (self);
  fp_board_view_forget_handles (self);
  self->handle = 0;
  self->marked = FALSE;
  fp_board_view_tell (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
forget_document (FpBoardView *self)
{
  fp_board_view_drop_typing (self);
  fp_board_view_set_tape (self, FALSE);
  fp_board_view_forget_still (self);
  fp_board_view_forget_handles (self);
  if (self->document == NULL)
    return;
  g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->drafter, fp_drafter_free);
  for (guint v = 0; v < FP_N_VIEWS; v++)
    g_clear_pointer (&self->projection[v], fp_projection_unref);
  forget_drawing (self);
}

void
fp_board_view_set_document (FpBoardView *self, FpDocument *document)
{
  forget_document (self);
  self->scale = 0.0;
  self->framing = FRAME_SANCTUARY;
  self->only = -1;
  self->marked = FALSE;
  fp_board_view_let_go (self);
  fp_board_tool_cancel (&self->tool);
  fp_board_tool_release (&self->tool, self->tool.last);
  if (document == NULL)
    return;
  self->document = g_object_ref (document);
  self->drafter = fp_drafter_new (on_projections, self);
  g_signal_connect (document, "scene", G_CALLBACK (on_scene), self);
  g_signal_connect (document, "chosen", G_CALLBACK (on_chosen), self);
  on_scene (document, self);
}

void
fp_board_view_notice (FpBoardView *self, const char *text)
{
  g_signal_emit (self, signals[NOTICE], 0, text);
}

/* --- what is shown, and how ------------------------------------------------ */

static void
draw_anew (FpBoardView *self)
{
  if (self->document == NULL)
    return;
  fp_board_view_cancel (self);
  fp_drafter_draft (self->drafter, fp_document_scene (self->document), &self->how);
}

void
fp_board_view_set_hidden (FpBoardView *self, FpHidden hidden)
{
  if (self->how.hidden == hidden)
    return;
  self->how.hidden = hidden;
  draw_anew (self);
}

FpHidden
fp_board_view_hidden (FpBoardView *self)
{
  return self->how.hidden;
}

void
fp_board_view_set_section (FpBoardView *self, const FpCut *cut)
{
  self->how.section = (FpCut) { cut->placed, cut->at, FALSE };
  draw_anew (self);
}

FpCut
fp_board_view_section (FpBoardView *self)
{
  return self->how.section;
}

static FpSurfaceLook
look_of (FpBoardView *self)
{
  return fp_surface_look (self->ink, self->dark);
}

static void
set_dark (FpBoardView *self)
{
  self->dark = self->ground == FP_GROUND_OF_SYSTEM ? self->system_dark : self->ground == FP_GROUND_DARK;
  fp_board_view_forget_nodes (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
fp_board_view_set_look (FpBoardView *self, FpGround ground, FpInkChoice ink)
{
  self->ground = ground;
  self->ink = ink;
  set_dark (self);
}

/* --- the widget ----------------------------------------------------------- */

static GskRenderNode *
page_node (FpBoardView *self)
{
  graphene_rect_t bounds;
  cairo_t *cr;

  graphene_rect_init (&bounds, 0, 0, (float) (fp_drawing_width (self->drawing) * PX_PER_MM),
                      (float) (fp_drawing_height (self->drawing) * PX_PER_MM));
  self->page = gsk_cairo_node_new (&bounds);
  cr = gsk_cairo_node_get_draw_context (self->page);
  cairo_scale (cr, PX_PER_MM, PX_PER_MM);
  fp_drawing_paint (self->drawing, cr, look_of (self), FALSE);
  cairo_destroy (cr);
  return self->page;
}

static void
fp_board_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FpBoardView *self = FP_BOARD_VIEW (widget);
  float w = (float) gtk_widget_get_width (widget), h = (float) gtk_widget_get_height (widget);
  FpInk ink = fp_fill_ink (FP_FILL_PAPER, FP_STANDING_EXISTING, look_of (self));
  GdkRGBA paper = { (float) ink.r, (float) ink.g, (float) ink.b, 1.0f };
  FpPoint corner;

  gtk_snapshot_push_clip (snapshot, &GRAPHENE_RECT_INIT (0, 0, w, h));
  gtk_snapshot_append_color (snapshot, &paper, &GRAPHENE_RECT_INIT (0, 0, w, h));
  fp_board_view_ensure (self);
  if (self->drawing != NULL)
    {
      corner = fp_board_view_to_widget (self, (FpPoint) { 0.0, fp_drawing_height (self->drawing) });
      gtk_snapshot_save (snapshot);
      gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT ((float) corner.x, (float) corner.y));
      gtk_snapshot_append_node (snapshot, self->page != NULL ? self->page : page_node (self));
      gtk_snapshot_restore (snapshot);
      fp_board_view_snapshot_overlays (self, snapshot, w, h);
    }
  gtk_snapshot_pop (snapshot);
}

static void
fp_board_view_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  FpBoardView *self = FP_BOARD_VIEW (widget);

  (void) width, (void) height, (void) baseline;
  if (self->height > 0.0)
    self->pan.y += height_mm (self) - self->height;
  self->height = height_mm (self);
  if (self->framing != FRAME_BY_HAND)
    frame (self);
  else if (has_projections (self) && !self->held)
    {
      lay_out (self);
      forget_drawing (self);
    }
  if (self->typing != NULL)
    gtk_popover_present (GTK_POPOVER (self->typing));
}

static void
fp_board_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                       int *minimum_baseline, int *natural_baseline)
{
  (void) widget, (void) for_size;
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 320 : 240;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 900 : 640;
  *minimum_baseline = *natural_baseline = -1;
}

/* The style is dark where its letters are light. */
static void
fp_board_view_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  FpBoardView *self = FP_BOARD_VIEW (widget);
  GdkRGBA letters;
  gboolean dark;

  GTK_WIDGET_CLASS (fp_board_view_parent_class)->css_changed (widget, change);
  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &letters);
  dark = letters.red + letters.green + letters.blue > 1.5f;
  if (dark == self->system_dark)
    return;
  self->system_dark = dark;
  set_dark (self);
}

static void
fp_board_view_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  if (id == PROP_READOUT)
    g_value_set_string (value, FP_BOARD_VIEW (object)->readout);
  else if (id == PROP_TAPE)
    g_value_set_boolean (value, fp_board_view_has_tape (FP_BOARD_VIEW (object)));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
fp_board_view_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  if (id == PROP_TAPE)
    fp_board_view_set_tape (FP_BOARD_VIEW (object), g_value_get_boolean (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
fp_board_view_dispose (GObject *object)
{
  FpBoardView *self = FP_BOARD_VIEW (object);

  forget_document (self);
  fp_board_view_forget_nodes (self);
  fp_board_view_let_go (self);
  g_clear_pointer (&self->hover, g_free);
  g_clear_pointer (&self->readout, g_free);
  G_OBJECT_CLASS (fp_board_view_parent_class)->dispose (object);
}

static void
fp_board_view_class_init (FpBoardViewClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  object_class->dispose = fp_board_view_dispose;
  object_class->get_property = fp_board_view_get_property;
  object_class->set_property = fp_board_view_set_property;
  widget_class->snapshot = fp_board_view_snapshot;
  widget_class->size_allocate = fp_board_view_size_allocate;
  widget_class->measure = fp_board_view_measure;
  widget_class->css_changed = fp_board_view_css_changed;
  gtk_widget_class_set_css_name (widget_class, "board");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  props[PROP_READOUT] = g_param_spec_string ("readout", NULL, NULL, NULL, G_PARAM_READABLE | G_PARAM_STATIC_STRINGS);
  props[PROP_TAPE] = g_param_spec_boolean ("tape", NULL, NULL, FALSE,
                                           G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (object_class, N_PROPS, props);
  signals[NOTICE] = g_signal_new ("notice", FP_TYPE_BOARD_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                  G_TYPE_STRING);
}

static void
fp_board_view_init (FpBoardView *self)
{
  self->pointer = (FpPoint) { -1.0, -1.0 };
  self->anchor = FP_VIEW_PLAN;
  self->only = -1;
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, "Board", -1);
  fp_board_view_add_controllers (self);
}

GtkWidget *
fp_board_view_new (void)
{
  return g_object_new (FP_TYPE_BOARD_VIEW, NULL);
}
