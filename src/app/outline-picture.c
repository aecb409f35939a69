/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "outline-picture.h"

#define MARGIN 26.0 /* px, for the numbers */
#define DOT    3.0

typedef struct
{
  FpPoint *corner; /* owned */
  guint    n;
  gboolean closed;
} Outline;

static void
outline_free (gpointer data)
{
  Outline *o = data;

  g_free (o->corner);
  g_free (o);
}

typedef struct { double scale, x, y; } Fit;

static Fit
fit (const Outline *o, double width, double height)
{
  const FpBox box = fp_outline_box (o->corner, o->n);
  const double w = MAX (box.x1 - box.x0, 1.0), h = MAX (box.y1 - box.y0, 1.0);
  Fit f = { MIN ((width - 2.0 * MARGIN) / w, (height - 2.0 * MARGIN) / h), 0, 0 };

  f.x = width / 2.0 - f.scale * (box.x0 + box.x1) / 2.0;
  f.y = height / 2.0 + f.scale * (box.y0 + box.y1) / 2.0;
  return f;
}

static FpPoint
at (const Fit *f, FpPoint p)
{
  return (FpPoint) { f->x + f->scale * p.x, f->y - f->scale * p.y };
}

static void
draw_number (cairo_t *cr, FpPoint p, FpPoint middle, guint number)
{
  g_autofree char *text = g_strdup_printf ("%u", number);
  const double away = 12.0;
  cairo_text_extents_t e;

  cairo_text_extents (cr, text, &e);
  cairo_move_to (cr, p.x + (p.x < middle.x ? -away : away) - e.width / 2.0, p.y + (p.y < middle.y ? -away : away)
                 + e.height / 2.0);
  cairo_show_text (cr, text);
  cairo_new_path (cr);
  cairo_arc (cr, p.x, p.y, DOT, 0, 2.0 * G_PI);
  cairo_fill (cr);
}

static void
draw (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  const Outline *o = g_object_get_data (G_OBJECT (area), "outline");
  const FpPoint middle = { width / 2.0, height / 2.0 };
  GdkRGBA ink;
  Fit f;

  (void) data;
  if (o == NULL || o->n < 2)
    return;
  f = fit (o, width, height);
  gtk_style_context_get_color (gtk_widget_get_style_context (GTK_WIDGET (area)), &ink);
  gdk_cairo_set_source_rgba (cr, &ink);
  cairo_set_line_width (cr, 2.0);
  for (guint i = 0; i < o->n; i++)
    {
      const FpPoint p = at (&f, o->corner[i]);
      cairo_line_to (cr, p.x, p.y);
    }
  if (o->closed)
    cairo_close_path (cr);
  cairo_stroke (cr);
  cairo_set_font_size (cr, 11.0);
  for (guint i = 0; i < o->n; i++)
    draw_number (cr, at (&f, o->corner[i]), middle, i + 1);
}

GtkWidget *
fp_outline_picture_new (void)
{
  GtkWidget *area = g_object_new (GTK_TYPE_DRAWING_AREA, "accessible-role", GTK_ACCESSIBLE_ROLE_IMG, NULL);

  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (area), draw, NULL, NULL);
  gtk_widget_set_size_request (area, 260, 240);
  gtk_widget_set_hexpand (area, TRUE);
  gtk_widget_set_vexpand (area, TRUE);
  gtk_widget_add_css_class (area, "outline");
  return area;
}

void
fp_outline_picture_set (GtkWidget *picture, const FpPoint *corner, guint n, gboolean closed)
{
  g_autofree char *said = g_strdup_printf ("The outline on the plan, east at the top: %u corners", n);
  Outline *o = g_new (Outline, 1);

  *o = (Outline) { g_memdup2 (corner, n * sizeof *corner), n, closed };
  g_object_set_data_full (G_OBJECT (picture), "outline", o, outline_free);
  gtk_accessible_update_property (GTK_ACCESSIBLE (picture), GTK_ACCESSIBLE_PROPERTY_LABEL, said, -1);
  gtk_widget_queue_draw (picture);
}
