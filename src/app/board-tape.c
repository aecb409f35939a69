/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-tape.c - the measuring tape on the board */
#include "board-view-private.h"

#include <math.h>

#define REACH_PX  7.0
#define STROKE_PX 6.0 /* half of an oblique stroke, across and up             */

gboolean
fp_board_view_has_tape (FpBoardView *self)
{
  return self->tape.state != FP_TAPE_AWAY;
}

/* --- what is pointed at ------------------------------------------------------- */

static const FpCatches *
still (FpBoardView *self)
{
  const char *const nothing[] = { NULL };

  if (self->still == NULL)
    self->still = fp_catches_new (fp_projection_scene (self->projection[0]), nothing,
                                  fp_projection_hidden (self->projection[0]));
  return self->still;
}

void
fp_board_view_forget_still (FpBoardView *self)
{
  g_clear_pointer (&self->still, fp_catches_free);
}

/* Its ends lie on what they lay on when the drawing was another. */
void
fp_board_view_tape_follow (FpBoardView *self, const FpScene *was)
{
  FpPointed *const end[] = { &self->tape.a, &self->tape.b };

  if (self->tape.state == FP_TAPE_AWAY)
    return;
  for (guint i = 0; i < G_N_ELEMENTS (end); i++)
    fp_pointed_follow (end[i], was, self->projection[end[i]->view], still (self));
  fp_board_view_tell (self);
}

/* Straight: level or upright from where the tape begins. */
static FpPoint
straightened (FpBoardView *self, FpPoint at)
{
  const FpPoint from = self->tape.a.at;

  return fabs (at.x - from.x) < fabs (at.y - from.y) ? (FpPoint) { from.x, at.y } : (FpPoint) { at.x, from.y };
}

static gboolean
point_at (FpBoardView *self, double x, double y, FpToolManner manner, FpPointed *out)
{
  const FpPoint paper = fp_board_view_to_paper (self, x, y);
  const int view = fp_board_view_view_at (self, paper);
  gboolean turned;
  FpPoint at;

  if (view < 0 || self->projection[0] == NULL)
    return FALSE;
  turned = fp_board_view_is_turned (self, (FpViewId) view);
  at = fp_view_from_paper (&self->layout.view[view], paper);
  *out = manner.fine ? fp_pointed_free ((FpViewId) view, turned, at)
         : fp_pointed_find (self->projection[view], still (self), at, REACH_PX / PX_PER_MM * self->layout.view[view].scale);
  if (manner.straight && self->tape.state == FP_TAPE_STRETCHED && self->tape.a.view == (FpViewId) view)
    *out = fp_pointed_free ((FpViewId) view, turned, straightened (self, out->at));
  return TRUE;
}

/* --- hand ----------------------------------------------------------------------- */

static void
changed (FpBoardView *self)
{
  fp_board_view_tell (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
fp_board_view_tape_press (FpBoardView *self, double x, double y, FpToolManner manner)
{
  FpPointed at;

  if (!point_at (self, x, y, manner, &at))
    return;
  fp_tape_press (&self->tape, &at);
  changed (self);
}

void
fp_board_view_tape_motion (FpBoardView *self, double x, double y, FpToolManner manner)
{
  FpPointed at;

  if (!point_at (self, x, y, manner, &at))
    return;
  fp_tape_motion (&self->tape, &at);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

void
fp_board_view_tape_release (FpBoardView *self, gboolean clicked)
{
  fp_tape_release (&self->tape, clicked);
  changed (self);
}

/* --- keys ------------------------------------------------------------------------- */

/* Where it begins by keyboard: at the chosen thing, or where the axis meets the datum line. */
static FpPointed
where_to_begin (FpBoardView *self)
{
  const FpPlaced *chosen = fp_document_chosen_placed (self->document);
  FpPointed at;

  if (self->pointer.x >= 0.0 && point_at (self, self->pointer.x, self->pointer.y, (FpToolManner) { 0 }, &at))
    return at;
  if (chosen == NULL || fp_box_is_empty (&chosen->plan))
    return fp_pointed_free (FP_VIEW_PLAN, FALSE, (FpPoint) { 0.0, 0.0 });
  return fp_pointed_free (FP_VIEW_PLAN, FALSE, (FpPoint) { (chosen->plan.x0 + chosen->plan.x1) / 2.0, chosen->plan.y0 });
}

void
fp_board_view_set_tape (FpBoardView *self, gboolean taken)
{
  FpPointed at;

  if (self->document == NULL || self->projection[0] == NULL || self->held || taken == fp_board_view_has_tape (self))
    return;
  fp_board_view_end_typing (self);
  if (taken)
    {
      at = where_to_begin (self);
      fp_tape_take (&self->tape, &at);
      gtk_widget_grab_focus (GTK_WIDGET (self));
    }
  else
    fp_tape_put_away (&self->tape);
  self->taping = FALSE;
  g_object_notify (G_OBJECT (self), "tape");
  fp_board_view_hover (self);
  changed (self);
}

gboolean
fp_board_view_tape_escape (FpBoardView *self)
{
  if (!fp_tape_escape (&self->tape))
    return FALSE;
  g_object_notify (G_OBJECT (self), "tape");
  fp_board_view_hover (self);
  changed (self);
  return TRUE;
}

void
fp_board_view_tape_shift (FpBoardView *self, double right, double up)
{
  fp_tape_shift (&self->tape, (FpPoint) { right, up });
  changed (self);
}

void
fp_board_view_tape_carry (FpBoardView *self)
{
  fp_tape_carry (&self->tape, fp_board_view_is_turned (self, FP_VIEW_ELEVATION));
  changed (self);
}

void
fp_board_view_tape_enter (FpBoardView *self)
{
  fp_tape_enter (&self->tape);
  changed (self);
}

/* --- in words ---------------------------------------------------------------------- */

char *
fp_board_view_tape_words (FpBoardView *self)
{
  const FpScene *scene = fp_document_scene (self->document);
  g_autofree char *from = fp_pointed_tells (&self->tape.a, scene), *to = fp_pointed_tells (&self->tape.b, scene);
  g_autofree char *words = fp_tape_words (&self->tape, fp_board_view_units (self));

  if (words == NULL)
    return *to != '\0' ? g_strdup (to) : NULL;
  if (*from == '\0' && *to == '\0')
    return g_steal_pointer (&words);
  return g_strdup_printf ("%s\n%s – %s", words, *from != '\0' ? from : "free", *to != '\0' ? to : "free");
}

/* --- on the board -------------------------------------------------------------------- */

static FpPoint
on_widget (FpBoardView *self, const FpPointed *p)
{
  return fp_board_view_to_widget (self, fp_view_to_paper (&self->layout.view[p->view], p->at));
}

/* A ring where something holds the end; a cross where nothing does. */
static void
trace_end (cairo_t *cr, const FpPointed *p, FpPoint at)
{
  cairo_new_sub_path (cr);
  if (p->sort != FP_POINTED_FREE)
    {
      cairo_arc (cr, at.x, at.y, 5.0, 0.0, 2.0 * G_PI);
      return;
    }
  cairo_move_to (cr, at.x - STROKE_PX, at.y);
  cairo_line_to (cr, at.x + STROKE_PX, at.y);
  cairo_move_to (cr, at.x, at.y - STROKE_PX);
  cairo_line_to (cr, at.x, at.y + STROKE_PX);
}

static void
trace_stroke (cairo_t *cr, FpPoint at)
{
  cairo_move_to (cr, at.x - STROKE_PX, at.y + STROKE_PX);
  cairo_line_to (cr, at.x + STROKE_PX, at.y - STROKE_PX);
}

/* In every view that shows both of its ends; FALSE where none does. */
static gboolean
trace_in_views (FpBoardView *self, cairo_t *cr)
{
  gboolean any = FALSE;

  for (guint v = 0; v < FP_N_VIEWS; v++)
    {
      const gboolean turned = fp_board_view_is_turned (self, (FpViewId) v);
      const FpPointed *end[] = { &self->tape.a, &self->tape.b };
      FpPoint at[2], on[2];

      if (self->tape.a.view == self->tape.b.view && self->tape.a.view != (FpViewId) v)
        continue;
      if (!fp_pointed_in (end[0], (FpViewId) v, turned, &at[0]) || !fp_pointed_in (end[1], (FpViewId) v, turned, &at[1]))
        continue;
      for (guint i = 0; i < 2; i++)
        on[i] = fp_board_view_to_widget (self, fp_view_to_paper (&self->layout.view[v], at[i]));
      cairo_move_to (cr, on[0].x, on[0].y);
      cairo_line_to (cr, on[1].x, on[1].y);
      trace_stroke (cr, on[0]);
      trace_stroke (cr, on[1]);
      any = TRUE;
    }
  return any;
}

/* From one view to another: no view shows it, and it is no line of the church. */
static void
stroke_between (cairo_t *cr, FpPoint a, FpPoint b)
{
  static const double dashes[] = { 4.0, 4.0 };

  cairo_save (cr);
  cairo_set_dash (cr, dashes, 2, 0.0);
  cairo_set_line_width (cr, 1.0);
  cairo_move_to (cr, a.x, a.y);
  cairo_line_to (cr, b.x, b.y);
  cairo_stroke (cr);
  cairo_restore (cr);
}

static void
trace_tape (FpBoardView *self, cairo_t *cr)
{
  const FpPoint a = on_widget (self, &self->tape.a), b = on_widget (self, &self->tape.b);

  if (!trace_in_views (self, cr))
    {
      stroke_between (cr, a, b);
      trace_stroke (cr, a);
      trace_stroke (cr, b);
    }
  trace_end (cr, &self->tape.a, a);
}

void
fp_board_view_draw_tape (FpBoardView *self, cairo_t *cr)
{
  const FpInk ink = fp_board_view_accent (self);
  const FpPoint b = on_widget (self, &self->tape.b);
  g_autofree char *words = fp_board_view_tape_words (self);

  cairo_new_path (cr);
  cairo_set_source_rgb (cr, ink.r, ink.g, ink.b);
  if (self->tape.state != FP_TAPE_READY)
    trace_tape (self, cr);
  trace_end (cr, &self->tape.b, b);
  cairo_set_line_width (cr, 1.6);
  cairo_stroke (cr);
  if (words != NULL)
    fp_board_view_draw_words (self, cr, words, b.x + 18.0, b.y + 18.0);
}
