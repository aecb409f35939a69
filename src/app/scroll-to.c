/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "scroll-to.h"

#define FRAMES 2 /* one to be laid out in, and one that finds it so */
#define ROOM   6.0

static void
scroll (GtkWidget *widget)
{
  GtkWidget *viewport = gtk_widget_get_ancestor (widget, GTK_TYPE_VIEWPORT);
  GtkWidget *all = viewport != NULL ? gtk_viewport_get_child (GTK_VIEWPORT (viewport)) : NULL;
  graphene_rect_t box;

  if (all == NULL || !gtk_widget_compute_bounds (widget, all, &box))
    return;
  gtk_adjustment_clamp_page (gtk_scrollable_get_hadjustment (GTK_SCROLLABLE (viewport)), box.origin.x,
                             box.origin.x + box.size.width);
  gtk_adjustment_clamp_page (gtk_scrollable_get_vadjustment (GTK_SCROLLABLE (viewport)), box.origin.y - ROOM,
                             box.origin.y + box.size.height + ROOM);
}

static gboolean
on_frame (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  guint *left = data;

  (void) clock;
  if ((*left)-- > 0)
    return G_SOURCE_CONTINUE;
  scroll (widget);
  return G_SOURCE_REMOVE;
}

void
fp_scroll_to (GtkWidget *widget)
{
  guint *left = g_new (guint, 1);

  *left = FRAMES;
  gtk_widget_add_tick_callback (widget, on_frame, left, g_free);
}
