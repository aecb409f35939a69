/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-sides.c - the sides of a wall by their numbers, while an opening in it is chosen */
#include "board-view-private.h"

#include <math.h>

#define RADIUS_PX    9.0
#define SHORTEST_PX 22.0 /* a shorter side shows its number only where the opening is in it */

typedef struct { const FpPlaced *wall; const FpViewLayout *plan; guint chosen; } Sides;

/* The wall of the one thing that is chosen, where that is an opening and the plan is seen. */
static gboolean
find_sides (FpBoardView *self, Sides *out)
{
  const FpPlaced *chosen = fp_document_n_chosen (self->document) == 1 ? fp_document_chosen_placed (self->document) : NULL;
  guint n;
  const FpPlaced *placed = fp_scene_placed (fp_document_scene (self->document), &n);

  if (chosen == NULL || chosen->ghost || chosen->support < 0 || fp_item_kind (chosen->item)->role != FP_ROLE_OPENING
      || (self->only >= 0 && self->only != FP_VIEW_PLAN) || self->held)
    return FALSE;
  *out = (Sides) { &placed[chosen->support], &self->layout.view[FP_VIEW_PLAN], (guint) fp_item_param (chosen->item, "side") };
  return TRUE;
}

gboolean
fp_board_view_has_sides (FpBoardView *self)
{
  Sides sides;

  return find_sides (self, &sides);
}

static FpPoint
corner_on_widget (FpBoardView *self, const Sides *sides, guint corner)
{
  const FpForm *form = &sides->wall->form;
  const FpPoint church = fp_place_point (&sides->wall->place, form->corner[corner % form->n_corners]);

  return fp_board_view_to_widget (self, fp_view_to_paper (sides->plan, church));
}

static void
set_ink (cairo_t *cr, FpInk ink)
{
  cairo_set_source_rgb (cr, ink.r, ink.g, ink.b);
}

static void
draw_number (FpBoardView *self, cairo_t *cr, FpPoint at, guint number, gboolean is_chosen)
{
  const FpInk accent = fp_board_view_accent (self), white = { 1.0, 1.0, 1.0 }, black = { 0.08, 0.09, 0.11 };
  g_autofree char *text = g_strdup_printf ("%u", number);
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), text);
  int w, h;

  pango_layout_get_pixel_size (layout, &w, &h);
  cairo_new_path (cr);
  cairo_arc (cr, at.x, at.y, MAX (RADIUS_PX, w / 2.0 + 3.0), 0.0, 2.0 * G_PI);
  set_ink (cr, is_chosen ? accent : self->dark ? black : white);
  cairo_fill_preserve (cr);
  set_ink (cr, accent);
  cairo_set_line_width (cr, 1.5);
  cairo_stroke (cr);
  if (is_chosen)
    set_ink (cr, self->dark ? black : white);
  cairo_move_to (cr, at.x - w / 2.0, at.y - h / 2.0);
  pango_cairo_show_layout (cr, layout);
}

void
fp_board_view_draw_sides (FpBoardView *self, cairo_t *cr)
{
  Sides sides;
  guint n;

  if (!find_sides (self, &sides))
    return;
  n = sides.wall->form.n_corners;
  for (guint i = 0; i < (fp_item_param (sides.wall->item, "closed") != 0 ? n : n - 1); i++)
    {
      const FpPoint a = corner_on_widget (self, &sides, i), b = corner_on_widget (self, &sides, i + 1);

      if (hypot (b.x - a.x, b.y - a.y) >= SHORTEST_PX || i + 1 == sides.chosen)
        draw_number (self, cr, (FpPoint) { (a.x + b.x) / 2.0, (a.y + b.y) / 2.0 }, i + 1, i + 1 == sides.chosen);
    }
}
