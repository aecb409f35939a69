/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "drawing-view.h"

#include <math.h>

struct _FpDrawingView
{
  GtkWidget      parent_instance;
  FpDrawing     *drawing;
  GskRenderNode *node;      /* for the size, look and drawing that were painted last */
  gboolean       paper, dark;
  int            width, height;
};

G_DEFINE_FINAL_TYPE (FpDrawingView, fp_drawing_view, GTK_TYPE_WIDGET)

static void
repaint (FpDrawingView *self)
{
  g_clear_pointer (&self->node, gsk_render_node_unref);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* --- ink ------------------------------------------------------------------ */

#define INK "fp-ink"

static FpInkChoice
ink_of (FpDrawingView *self)
{
  for (GtkWidget *w = GTK_WIDGET (self); w != NULL; w = gtk_widget_get_parent (w))
    if (g_object_get_data (G_OBJECT (w), INK) != NULL)
      return (FpInkChoice) (GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (w), INK)) - 1);
  return FP_INK_COLOUR;
}

FpSurfaceLook
fp_drawing_view_look (FpDrawingView *self)
{
  return self->paper ? FP_SURFACE_PAPER : fp_surface_look (ink_of (self), self->dark);
}

static void
repaint_within (GtkWidget *top)
{
  if (FP_IS_DRAWING_VIEW (top))
    repaint (FP_DRAWING_VIEW (top));
  for (GtkWidget *child = gtk_widget_get_first_child (top); child != NULL; child = gtk_widget_get_next_sibling (child))
    repaint_within (child);
}

void
fp_drawing_view_set_ink_within (GtkWidget *top, FpInkChoice ink)
{
  g_object_set_data (G_OBJECT (top), INK, GUINT_TO_POINTER ((guint) ink + 1));
  repaint_within (top);
}

/* --- painting ------------------------------------------------------------- */

static GskRenderNode *
paint (FpDrawingView *self, double width, double height)
{
  double w = fp_drawing_width (self->drawing), h = fp_drawing_height (self->drawing);
  double scale = MIN (width / w, height / h);
  GskRenderNode *node = gsk_cairo_node_new (&GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
  cairo_t *cr = gsk_cairo_node_get_draw_context (node);

  cairo_translate (cr, floor ((width - w * scale) / 2.0), floor ((height - h * scale) / 2.0));
  cairo_scale (cr, scale, scale);
  cairo_rectangle (cr, 0.0, 0.0, w, h);
  cairo_clip (cr);
  fp_drawing_paint (self->drawing, cr, fp_drawing_view_look (self), self->paper);
  cairo_destroy (cr);
  return node;
}

static void
fp_drawing_view_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  FpDrawingView *self = FP_DRAWING_VIEW (widget);
  double width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);

  if (self->drawing == NULL || width < 1.0 || height < 1.0)
    return;
  if (self->node == NULL)
    self->node = paint (self, width, height);
  gtk_snapshot_append_node (snapshot, self->node);
}

static void
fp_drawing_view_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  (void) width, (void) height, (void) baseline;
  repaint (FP_DRAWING_VIEW (widget));
}

static void
fp_drawing_view_measure (GtkWidget *widget, GtkOrientation orientation, int for_size, int *minimum, int *natural,
                         int *minimum_baseline, int *natural_baseline)
{
  FpDrawingView *self = FP_DRAWING_VIEW (widget);

  (void) for_size;
  *minimum = *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? self->width : self->height;
  *minimum_baseline = *natural_baseline = -1;
}

static void
fp_drawing_view_css_changed (GtkWidget *widget, GtkCssStyleChange *change)
{
  FpDrawingView *self = FP_DRAWING_VIEW (widget);
  GdkRGBA letters;

  GTK_WIDGET_CLASS (fp_drawing_view_parent_class)->css_changed (widget, change);
  gtk_style_context_get_color (gtk_widget_get_style_context (widget), &letters);
  self->dark = letters.red + letters.green + letters.blue > 1.5f;
  repaint (self);
}

static void
fp_drawing_view_dispose (GObject *object)
{
  FpDrawingView *self = FP_DRAWING_VIEW (object);

  g_clear_pointer (&self->node, gsk_render_node_unref);
  g_clear_pointer (&self->drawing, fp_drawing_unref);
  G_OBJECT_CLASS (fp_drawing_view_parent_class)->dispose (object);
}

static void
fp_drawing_view_class_init (FpDrawingViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fp_drawing_view_dispose;
  widget_class->snapshot = fp_drawing_view_snapshot;
  widget_class->size_allocate = fp_drawing_view_size_allocate;
  widget_class->measure = fp_drawing_view_measure;
  widget_class->css_changed = fp_drawing_view_css_changed;
  gtk_widget_class_set_css_name (widget_class, "drawing");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
}

static void
fp_drawing_view_init (FpDrawingView *self)
{
  self->width = 120;
  self->height = 80;
}

GtkWidget *
fp_drawing_view_new (const char *label)
{
  FpDrawingView *self = g_object_new (FP_TYPE_DRAWING_VIEW, NULL);

  fp_drawing_view_set_label (self, label);
  return GTK_WIDGET (self);
}

static gboolean
looks_alike (FpDrawing *was, FpDrawing *is)
{
  g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (FpBox));

  return was != NULL && is != NULL && fp_drawing_differences (was, is, boxes) && boxes->len == 0;
}

void
fp_drawing_view_set (FpDrawingView *self, FpDrawing *drawing, gboolean paper)
{
  const gboolean alike = self->paper == paper && looks_alike (self->drawing, drawing);

  if (drawing != NULL)
    fp_drawing_ref (drawing);
  g_clear_pointer (&self->drawing, fp_drawing_unref);
  self->drawing = drawing;
  self->paper = paper;
  if (!alike)
    repaint (self);
}

void
fp_drawing_view_set_label (FpDrawingView *self, const char *label)
{
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

void
fp_drawing_view_set_size (FpDrawingView *self, int width, int height)
{
  self->width = width;
  self->height = height;
  gtk_widget_queue_resize (GTK_WIDGET (self));
}
