/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-guides.c - what is drawn over the page while something is under the hand: projector lines, what has caught it,
 * how far it has come */
#include "board-view-private.h"
#include "things.h"

#include <math.h>

#define TICK_PX  4.0
#define CARRY_PX 4.0

static void
set_colour (cairo_t *cr, FpInk c, double alpha)
{
  cairo_set_source_rgba (cr, c.r, c.g, c.b, alpha);
}

static FpPoint
on_widget (FpBoardView *self, FpViewId view, double h, double v)
{
  return fp_board_view_to_widget (self, fp_view_to_paper (&self->layout.view[view], (FpPoint) { h, v }));
}

static void
line (cairo_t *cr, FpPoint a, FpPoint b)
{
  cairo_move_to (cr, a.x, a.y);
  cairo_line_to (cr, b.x, b.y);
}

/* All that is under the hand, where it is now. */
static FpBox3
box_of (FpBoardView *self, const char *const *ids)
{
  FpBox3 box = FP_BOX3_EMPTY;

  for (; *ids != NULL; ids++)
    {
      const FpPlaced *placed = fp_document_placed (self->document, *ids);

      if (placed == NULL || placed->ghost || fp_box_is_empty (&placed->plan))
        continue;
      fp_box3_add_point (&box, (FpVec3) { placed->plan.x0, placed->plan.y0, placed->level });
      fp_box3_add_point (&box, (FpVec3) { placed->plan.x1, placed->plan.y1, placed->level + placed->extent.height });
    }
  return box;
}

/* --- projector lines ------------------------------------------------------ */

/* Plan to elevation: what keeps its x.  Turned to the west it lies on the other side, and is carried across between the
 * two; @step parts the lines that are. */
static void
project_x (FpBoardView *self, cairo_t *cr, double x, const FpBox3 *box, double step)
{
  const FpPoint a = on_widget (self, FP_VIEW_PLAN, x, box->hi.y);
  const FpPoint b = fp_board_view_on_widget (self, FP_VIEW_ELEVATION, (FpVec3) { x, box->lo.y, box->lo.z });
  const FpPoint border = fp_board_view_to_widget (self, (FpPoint) { 0.0, self->layout.frame[FP_VIEW_PLAN].y1 });

  cairo_move_to (cr, a.x, a.y);
  if (fp_board_view_is_turned (self, FP_VIEW_ELEVATION))
    {
      cairo_line_to (cr, a.x, border.y + step);
      cairo_line_to (cr, b.x, border.y + step);
    }
  cairo_line_to (cr, b.x, b.y);
}

/* Plan to section, round the mitre line: what keeps its y. */
static void
project_y (FpBoardView *self, cairo_t *cr, double y, const FpBox3 *box)
{
  FpPoint a = on_widget (self, FP_VIEW_PLAN, box->hi.x, y), b = on_widget (self, FP_VIEW_SECTION, -y, box->lo.z);

  line (cr, a, (FpPoint) { b.x, a.y });
  cairo_line_to (cr, b.x, b.y);
}

/* Elevation to section: what keeps its z. */
static void
project_z (FpBoardView *self, cairo_t *cr, double z, const FpBox3 *box)
{
  const double right = fp_board_view_is_turned (self, FP_VIEW_ELEVATION) ? box->lo.x : box->hi.x;

  line (cr, fp_board_view_on_widget (self, FP_VIEW_ELEVATION, (FpVec3) { right, box->lo.y, z }),
        on_widget (self, FP_VIEW_SECTION, -box->hi.y, z));
}

static void
draw_mitre (FpBoardView *self, cairo_t *cr)
{
  line (cr, fp_board_view_to_widget (self, self->layout.mitre_a), fp_board_view_to_widget (self, self->layout.mitre_b));
}

/* Where the projector lines turn on the mitre line. */
static void
draw_turn (FpBoardView *self, cairo_t *cr, double y, const FpBox3 *box)
{
  FpPoint a = on_widget (self, FP_VIEW_PLAN, box->hi.x, y), b = on_widget (self, FP_VIEW_SECTION, -y, box->lo.z);

  cairo_new_sub_path (cr);
  cairo_arc (cr, b.x, a.y, 2.5, 0.0, 2.0 * G_PI);
}

static void
draw_projectors (FpBoardView *self, cairo_t *cr, const FpBox3 *box)
{
  static const double dots[] = { 1.0, 4.0 };

  set_colour (cr, fp_board_view_accent (self), 0.85);
  cairo_set_line_width (cr, 1.0);
  draw_mitre (self, cr);
  cairo_stroke (cr);
  draw_turn (self, cr, box->lo.y, box);
  draw_turn (self, cr, box->hi.y, box);
  cairo_fill (cr);
  cairo_save (cr);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  cairo_set_line_width (cr, 1.6);
  cairo_set_dash (cr, dots, 2, 0.0);
  project_x (self, cr, box->lo.x, box, -CARRY_PX);
  project_x (self, cr, box->hi.x, box, CARRY_PX);
  project_y (self, cr, box->lo.y, box);
  project_y (self, cr, box->hi.y, box);
  project_z (self, cr, box->lo.z, box);
  project_z (self, cr, box->hi.z, box);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* --- what has caught it --------------------------------------------------- */

/* What is moved, and what caught it: from the lower to the higher. */
static void
heights (FpBoardView *self, const FpCatch *found, const FpBox3 *box, double *lo, double *hi)
{
  const char *const ids[] = { found->id, NULL };
  const FpBox3 other = box_of (self, ids);

  *lo = MIN (box->lo.z, other.lo.z);
  *hi = MAX (box->hi.z, other.hi.z);
}

static void
draw_plan_guide (FpBoardView *self, cairo_t *cr, const FpCatch *c)
{
  const double over = 2.0 * self->layout.view[FP_VIEW_PLAN].scale; /* 2 mm of paper beyond either end */

  if (c->along)
    line (cr, on_widget (self, FP_VIEW_PLAN, c->from - over, c->at), on_widget (self, FP_VIEW_PLAN, c->to + over, c->at));
  else
    line (cr, on_widget (self, FP_VIEW_PLAN, c->at, c->from - over), on_widget (self, FP_VIEW_PLAN, c->at, c->to + over));
}

/* x is seen in the elevation, y in the section. */
static void
draw_upright_guide (FpBoardView *self, cairo_t *cr, const FpCatch *c, const FpBox3 *box)
{
  const FpViewId view = c->along ? FP_VIEW_SECTION : FP_VIEW_ELEVATION;
  const double h = c->along || fp_board_view_is_turned (self, view) ? -c->at : c->at, over = 2.0 * self->layout.view[view].scale;
  double lo, hi;

  heights (self, c, box, &lo, &hi);
  line (cr, on_widget (self, view, h, lo - over), on_widget (self, view, h, hi + over));
}

/* The axis runs through the whole of plan and elevation. */
static void
draw_axis (FpBoardView *self, cairo_t *cr)
{
  static const FpViewId across[] = { FP_VIEW_ELEVATION, FP_VIEW_PLAN };

  for (guint i = 0; i < G_N_ELEMENTS (across); i++)
    {
      const FpBox *f = &self->layout.frame[across[i]];
      double x = fp_view_to_paper (&self->layout.view[across[i]], (FpPoint) { 0.0, 0.0 }).x;

      line (cr, fp_board_view_to_widget (self, (FpPoint) { x, f->y1 }),
            fp_board_view_to_widget (self, (FpPoint) { x, f->y0 }));
    }
}

/* One of two equal gaps on the plan: a line across it, with a stroke at either end. */
static void
draw_gap (FpBoardView *self, cairo_t *cr, const FpCatch *c, double at)
{
  const double middle = (c->from + c->to) / 2.0;
  FpPoint a, b;

  if (c->along)
    {
      a = on_widget (self, FP_VIEW_PLAN, middle, at);
      b = on_widget (self, FP_VIEW_PLAN, middle, at + c->gap);
      line (cr, (FpPoint) { a.x - TICK_PX, a.y }, (FpPoint) { a.x + TICK_PX, a.y });
      line (cr, (FpPoint) { b.x - TICK_PX, b.y }, (FpPoint) { b.x + TICK_PX, b.y });
    }
  else
    {
      a = on_widget (self, FP_VIEW_PLAN, at, middle);
      b = on_widget (self, FP_VIEW_PLAN, at + c->gap, middle);
      line (cr, (FpPoint) { a.x, a.y - TICK_PX }, (FpPoint) { a.x, a.y + TICK_PX });
      line (cr, (FpPoint) { b.x, b.y - TICK_PX }, (FpPoint) { b.x, b.y + TICK_PX });
    }
  line (cr, a, b);
}

static void
draw_catch (FpBoardView *self, cairo_t *cr, const FpCatch *c, const FpBox3 *box)
{
  switch (c->sort)
    {
    case FP_CATCH_NONE:
      return;
    case FP_CATCH_AXIS:
      draw_axis (self, cr);
      break;
    case FP_CATCH_GAP:
      draw_gap (self, cr, c, c->gap_at[0]);
      draw_gap (self, cr, c, c->gap_at[1]);
      break;
    case FP_CATCH_EDGE:
    case FP_CATCH_CENTRE:
    case FP_CATCH_IN_LINE:
      draw_plan_guide (self, cr, c);
      draw_upright_guide (self, cr, c, box);
      break;
    }
  set_colour (cr, fp_board_view_accent (self), 1.0);
  cairo_set_line_width (cr, 2.0);
  cairo_stroke (cr);
}

/* --- words beside the pointer ----------------------------------------------- */

static char *
caught_words (FpBoardView *self)
{
  const FpScene *scene = fp_document_base_scene (self->document);
  g_autofree char *x = fp_catch_tells (&self->catch_x, scene), *y = fp_catch_tells (&self->catch_y, scene);

  return g_strconcat (x, *x != '\0' && *y != '\0' ? " · " : "", y, NULL);
}

/* How far it has been moved and which way, and what has caught it. */
char *
fp_board_view_travel_words (FpBoardView *self)
{
  g_autofree char *caught = caught_words (self);
  g_autofree char *travel = fp_travel_words (self->tool.by, fp_board_view_units (self));

  if (self->amiss != NULL)
    return g_strdup (self->amiss);
  return g_strconcat (travel, *caught != '\0' ? "\n" : "", caught, NULL);
}

void
fp_board_view_draw_words (FpBoardView *self, cairo_t *cr, const char *text, double x, double y)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (GTK_WIDGET (self), text);
  int w, h;

  pango_layout_get_pixel_size (layout, &w, &h);
  x = MAX (MIN (x, gtk_widget_get_width (GTK_WIDGET (self)) - w - 16.0), 12.0);
  y = MAX (MIN (y, gtk_widget_get_height (GTK_WIDGET (self)) - h - 12.0), 8.0);
  cairo_new_path (cr);
  cairo_rectangle (cr, x - 8.0, y - 4.0, w + 16.0, h + 8.0);
  set_colour (cr, self->dark ? (FpInk) { 0.85, 0.88, 0.93 } : (FpInk) { 0.13, 0.16, 0.21 }, 0.94);
  cairo_fill (cr);
  set_colour (cr, self->dark ? (FpInk) { 0.08, 0.09, 0.11 } : (FpInk) { 1.0, 1.0, 1.0 }, 1.0);
  cairo_move_to (cr, x, y);
  pango_cairo_show_layout (cr, layout);
}

/* Of a corner or side that is pulled, its own point. */
static FpBox3
box_in_hand (FpBoardView *self)
{
  FpBox3 box = box_of (self, fp_document_chosen_all (self->document));

  if (fp_board_view_is_pulling (self))
    {
      box.lo.x = box.hi.x = self->pulled.at.x + self->tool.by.x;
      box.lo.y = box.hi.y = self->pulled.at.y + self->tool.by.y;
    }
  return box;
}

static void
draw_moving (FpBoardView *self, cairo_t *cr)
{
  const FpBox3 box = box_in_hand (self);
  g_autofree char *words = fp_board_view_travel_words (self);

  if (box.hi.x >= box.lo.x)
    {
      if (!self->layout.alone)
        draw_projectors (self, cr, &box);
      draw_catch (self, cr, &self->catch_x, &box);
      draw_catch (self, cr, &self->catch_y, &box);
    }
  if (self->tool.state == FP_TOOL_MOVING)
    fp_board_view_draw_words (self, cr, words, self->pointer.x + 18.0, self->pointer.y + 18.0);
}

static void
draw_section_words (FpBoardView *self, cairo_t *cr)
{
  g_autofree char *words = fp_board_view_section_words (self, fp_board_view_section_of (self->tool.hit.item));

  fp_board_view_draw_words (self, cr, words, self->pointer.x + 18.0, self->pointer.y + 18.0);
}

/* --- a frame ---------------------------------------------------------------- */

static void
draw_frame (FpBoardView *self, cairo_t *cr)
{
  static const double dashes[] = { 5.0, 3.0 };
  const FpBox *f = &self->frame;
  FpPoint a = fp_board_view_to_widget (self, (FpPoint) { f->x0, f->y1 });
  FpPoint b = fp_board_view_to_widget (self, (FpPoint) { f->x1, f->y0 });

  cairo_rectangle (cr, a.x, a.y, b.x - a.x, b.y - a.y);
  set_colour (cr, fp_board_view_accent (self), 0.08);
  cairo_fill_preserve (cr);
  set_colour (cr, fp_board_view_accent (self), 1.0);
  cairo_save (cr);
  cairo_set_dash (cr, dashes, 2, 0.0);
  cairo_set_line_width (cr, 1.2);
  cairo_stroke (cr);
  cairo_restore (cr);
}

/* --- all of it -------------------------------------------------------------- */

gboolean
fp_board_view_has_guides (FpBoardView *self)
{
  return self->held || self->tool.state == FP_TOOL_MOVING || self->tool.state == FP_TOOL_FRAMING || fp_board_view_has_tape (self)
         || fp_board_view_has_handles (self);
}

void
fp_board_view_draw_guides (FpBoardView *self, cairo_t *cr)
{
  if (fp_board_view_has_handles (self))
    fp_board_view_draw_handles (self, cr);
  if (self->held)
    draw_moving (self, cr);
  else if (self->tool.state == FP_TOOL_MOVING && fp_board_view_is_section (self->tool.hit.item))
    draw_section_words (self, cr);
  if (self->tool.state == FP_TOOL_FRAMING)
    draw_frame (self, cr);
  if (fp_board_view_has_tape (self))
    fp_board_view_draw_tape (self, cr);
}
