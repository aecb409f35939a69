/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-handles.c - corners and sides of the chosen thing, pulled on the plan */
#include "board-view-private.h"

#include "footpace/setting-out.h"

#include <math.h>

#define HALF_PX  4.0  /* of a handle as it is drawn                             */
#define REACH_PX 7.0
#define LEAST_PX 30.0 /* a side that is nearer to the opposite one has no handle: there would be nothing left to take hold of */
#define EDGE_PX  5.0

/* --- what there is --------------------------------------------------------------- */

void
fp_board_view_forget_handles (FpBoardView *self)
{
  g_clear_pointer (&self->handles, g_array_unref);
}

/* The one thing that is chosen; nobody pulls what is not shown. */
static const char *
subject (FpBoardView *self)
{
  const FpPlaced *placed = self->document != NULL ? fp_document_chosen_placed (self->document) : NULL;

  if (placed == NULL || fp_document_n_chosen (self->document) != 1
      || !fp_shows_thing (self->how.hidden, fp_item_kind (placed->item), placed->standing))
    return NULL;
  return fp_document_chosen (self->document);
}

static GArray *
handles (FpBoardView *self)
{
  const char *id = subject (self);

  if (self->handles == NULL)
    self->handles = id != NULL ? fp_handles_new (fp_document_scene (self->document), id)
                    : g_array_new (FALSE, FALSE, sizeof (FpHandle));
  return self->handles;
}

static const FpHandle *
handle_of (FpBoardView *self, guint number)
{
  return number > 0 && number <= handles (self)->len ? &g_array_index (self->handles, FpHandle, number - 1) : NULL;
}

static FpPoint
on_widget (FpBoardView *self, FpPoint at)
{
  return fp_board_view_to_widget (self, fp_view_to_paper (&self->layout.view[FP_VIEW_PLAN], at));
}

static gboolean
is_shown (FpBoardView *self, const FpHandle *handle)
{
  return handle->sort == FP_HANDLE_CORNER
         || handle->reach / self->layout.view[FP_VIEW_PLAN].scale * PX_PER_MM >= LEAST_PX;
}

guint
fp_board_view_handle_at (FpBoardView *self, double x, double y)
{
  guint best = 0;
  double nearest = REACH_PX;

  if (subject (self) == NULL || fp_box_is_empty (&self->layout.frame[FP_VIEW_PLAN]))
    return 0;
  for (guint i = 0; i < handles (self)->len; i++)
    {
      const FpHandle *handle = &g_array_index (self->handles, FpHandle, i);
      const FpPoint p = on_widget (self, handle->at);
      const double d = hypot (p.x - x, p.y - y);

      if (d > nearest || !is_shown (self, handle))
        continue;
      nearest = d;
      best = i + 1;
    }
  return best;
}

char *
fp_board_view_handle_tells (FpBoardView *self, guint number)
{
  const FpHandle *handle = handle_of (self, number);

  return handle != NULL ? fp_handle_tells (handle, fp_document_scene (self->document), subject (self)) : NULL;
}

/* --- pulled by hand --------------------------------------------------------------- */

/* In line with another corner of its own. */
static guint
catch_on_own (FpBoardView *self, FpPoint *at, guint ways, double reach)
{
  guint caught = 0;

  for (guint i = 0; i < self->pulled_from->len && self->pulled.sort == FP_HANDLE_CORNER; i++)
    {
      const FpHandle *other = &g_array_index (self->pulled_from, FpHandle, i);

      if (other->corner == self->pulled.corner)
        continue;
      if ((ways & ~caught & 1) != 0 && fabs (other->at.x - at->x) <= reach)
        {
          at->x = other->at.x;
          caught |= 1;
        }
      if ((ways & ~caught & 2) != 0 && fabs (other->at.y - at->y) <= reach)
        {
          at->y = other->at.y;
          caught |= 2;
        }
    }
  return caught;
}

static guint
catch (FpVec3 *by, guint ways, double scale, gpointer data)
{
  FpBoardView *self = data;
  const double reach = REACH_PX / PX_PER_MM * scale;
  const FpPoint from = self->pulled.at;
  FpPoint at = { from.x + by->x, from.y + by->y }, to;
  guint own;

  self->catch_x.sort = self->catch_y.sort = FP_CATCH_NONE;
  ways &= self->catch_ways;
  if (ways == 0)
    return 0;
  own = catch_on_own (self, &at, ways, reach);
  to = at;
  fp_catches_find_point (self->catches, &to, reach, &self->catch_x, &self->catch_y);
  if ((ways & ~own & 1) == 0)
    self->catch_x.sort = FP_CATCH_NONE;
  if ((ways & ~own & 2) == 0)
    self->catch_y.sort = FP_CATCH_NONE;
  if (self->catch_x.sort != FP_CATCH_NONE)
    at.x = to.x;
  if (self->catch_y.sort != FP_CATCH_NONE)
    at.y = to.y;
  by->x = at.x - from.x;
  by->y = at.y - from.y;
  return own | (self->catch_x.sort != FP_CATCH_NONE ? 1 : 0) | (self->catch_y.sort != FP_CATCH_NONE ? 2 : 0);
}

void
fp_board_view_begin_pulling (FpBoardView *self, guint number)
{
  const char *const ids[] = { subject (self), NULL };
  const FpHandle *handle = handle_of (self, number);

  if (handle == NULL)
    return;
  self->pulled = *handle;
  self->pulled_from = g_array_ref (self->handles);
  self->handle = number;
  fp_board_view_begin_catching (self, ids);
  self->catch_ways = fp_handle_ways (handle);
  fp_board_tool_catch_by (&self->tool, catch, self);
}

void
fp_board_view_end_pulling (FpBoardView *self)
{
  g_clear_pointer (&self->pulled_from, g_array_unref);
  g_clear_pointer (&self->amiss, g_free);
}

gboolean
fp_board_view_is_pulling (FpBoardView *self)
{
  return self->pulled_from != NULL;
}

FpProject *
fp_board_view_pulled (FpBoardView *self, FpVec3 by, GError **error)
{
  return fp_handle_move (fp_document_base_scene (self->document), subject (self), &self->pulled, by, error);
}

/* --- keys --------------------------------------------------------------------------- */

void
fp_board_view_choose_handle (FpBoardView *self, guint number)
{
  self->handle = number <= handles (self)->len ? number : 0;
  fp_board_view_tell (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

gboolean
fp_board_view_next_handle (FpBoardView *self, gboolean backward)
{
  const guint n = handles (self)->len;
  guint at = self->handle;

  if (n == 0)
    return FALSE;
  for (guint tried = 0; tried < n; tried++)
    {
      at = backward ? (at <= 1 ? n : at - 1) : at % n + 1;
      if (!is_shown (self, handle_of (self, at)))
        continue;
      fp_board_view_choose_handle (self, at);
      return TRUE;
    }
  return FALSE;
}

/* @error: where @next has it, which is made in the same breath. */
static gboolean
edit (FpBoardView *self, FpProject *next, const char *what, const char *merge, GError **error)
{
  g_autofree char *label = g_strdup_printf ("%s of %s", what, fp_item_name (fp_document_chosen_placed (self->document)->item));

  if (fp_document_edit (self->document, next, label, merge))
    return TRUE;
  fp_board_view_notice (self, (*error)->message);
  return FALSE;
}

void
fp_board_view_nudge_handle (FpBoardView *self, double dx, double dy)
{
  const FpHandle *handle = handle_of (self, self->handle);
  g_autofree char *merge = NULL;
  g_autoptr (GError) error = NULL;
  const guint number = self->handle;

  if (handle == NULL || self->held)
    return;
  merge = g_strdup_printf ("pull %s %u", subject (self), number);
  edit (self, fp_handle_move (fp_document_base_scene (self->document), subject (self), handle, (FpVec3) { dx, dy, 0.0 }, &error),
        handle->sort == FP_HANDLE_CORNER ? "Corner" : "Side", merge, &error);
  fp_board_view_choose_handle (self, number);
}

/* The chosen corner; FALSE: none is, and the key means the thing. */
gboolean
fp_board_view_remove_corner (FpBoardView *self)
{
  const FpHandle *handle = handle_of (self, self->handle);
  g_autoptr (GError) error = NULL;

  if (handle == NULL || handle->sort != FP_HANDLE_CORNER)
    return FALSE;
  edit (self, fp_corner_remove (fp_document_base_scene (self->document), subject (self), handle->corner, &error),
        "Remove a corner", NULL, &error);
  return TRUE;
}

static gboolean
add_corner (FpBoardView *self, guint side, FpPoint at)
{
  g_autoptr (GError) error = NULL;

  if (!edit (self, fp_corner_add (fp_document_base_scene (self->document), subject (self), side, at, &error),
             "Another corner", NULL, &error))
    return FALSE;
  fp_board_view_choose_handle (self, side + 2);
  return TRUE;
}

/* In the middle of the side that follows the chosen corner. */
gboolean
fp_board_view_insert_corner (FpBoardView *self)
{
  const FpHandle *handle = handle_of (self, self->handle), *next;

  if (handle == NULL || handle->sort != FP_HANDLE_CORNER)
    return FALSE;
  next = handle_of (self, self->handle % self->handles->len + 1);
  return add_corner (self, handle->corner,
                     (FpPoint) { (handle->at.x + next->at.x) / 2.0, (handle->at.y + next->at.y) / 2.0 });
}

gboolean
fp_board_view_insert_corner_at (FpBoardView *self, double x, double y)
{
  const FpPoint paper = fp_board_view_to_paper (self, x, y);
  const FpViewLayout *plan = &self->layout.view[FP_VIEW_PLAN];
  const FpPoint at = fp_view_from_paper (plan, paper);
  int side;

  if (subject (self) == NULL || fp_board_view_view_at (self, paper) != FP_VIEW_PLAN
      || fp_board_view_handle_at (self, x, y) != 0)
    return FALSE;
  side = fp_corner_side (fp_document_base_scene (self->document), subject (self), at, EDGE_PX / PX_PER_MM * plan->scale);
  /* The pointer is only near the line: a new corner does not bend the wall. */
  return side >= 0 && add_corner (self, (guint) side,
                                  fp_corner_on_side (fp_document_base_scene (self->document), subject (self), (guint) side, at));
}

/* --- on the board ---------------------------------------------------------------------- */

gboolean
fp_board_view_has_handles (FpBoardView *self)
{
  /* While something is moved they would only follow it; those of sides take several scenes to find. */
  if (self->held && (self->pulled_from == NULL || self->pulled.sort != FP_HANDLE_CORNER))
    return FALSE;
  return subject (self) != NULL && !fp_board_view_has_tape (self) && !fp_box_is_empty (&self->layout.frame[FP_VIEW_PLAN])
         && handles (self)->len > 0;
}

static void
draw_handle (FpBoardView *self, cairo_t *cr, const FpHandle *handle, gboolean chosen)
{
  const FpInk ink = fp_board_view_accent (self);
  const FpInk paper = fp_fill_ink (FP_FILL_PAPER, FP_STANDING_EXISTING, self->dark ? FP_SURFACE_DARK : FP_SURFACE_PAPER);
  const FpPoint p = on_widget (self, handle->at);

  cairo_rectangle (cr, p.x - HALF_PX, p.y - HALF_PX, 2.0 * HALF_PX, 2.0 * HALF_PX);
  if (chosen)
    cairo_set_source_rgb (cr, ink.r, ink.g, ink.b);
  else
    cairo_set_source_rgb (cr, paper.r, paper.g, paper.b);
  cairo_fill_preserve (cr);
  cairo_set_source_rgb (cr, ink.r, ink.g, ink.b);
  cairo_set_line_width (cr, 1.5);
  cairo_stroke (cr);
}

void
fp_board_view_draw_handles (FpBoardView *self, cairo_t *cr)
{
  cairo_new_path (cr);
  for (guint i = 0; i < handles (self)->len; i++)
    {
      const FpHandle *handle = &g_array_index (self->handles, FpHandle, i);

      if (is_shown (self, handle))
        draw_handle (self, cr, handle, self->handle == i + 1);
    }
}
