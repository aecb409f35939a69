/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-typed.c - how far, typed while something is dragged */
#include "board-view-private.h"
#include "typed-travel.h"

typedef struct
{
  FpBoardView  *board;
  FpTypedTravel travel;
} Typed;

/* What can be read is shown at once. */
static void
change (gpointer data, const char *text)
{
  Typed *t = data;
  FpToolAnswer answer;

  if (!fp_typed_travel_read (&t->travel, text, NULL))
    return;
  answer = fp_board_tool_typed (&t->board->tool, fp_typed_travel_by (&t->travel));
  fp_board_view_obey (t->board, &answer);
}

static gboolean
enter (gpointer data, const char *text, GError **error)
{
  Typed *t = data;
  FpToolAnswer answer;

  if (!fp_typed_travel_read (&t->travel, text, error))
    return FALSE;
  change (data, text);
  answer = fp_board_tool_enter (&t->board->tool);
  fp_board_view_obey (t->board, &answer);
  return TRUE;
}

static void
give_up (gpointer data)
{
  Typed *t = data;
  FpToolAnswer answer = fp_board_tool_cancel (&t->board->tool);

  fp_board_view_obey (t->board, &answer);
}

static void
other (gpointer data)
{
  Typed *t = data;
  g_autofree char *text = NULL, *title = NULL;

  if (!fp_typed_travel_other (&t->travel))
    return;
  text = fp_typed_travel_text (&t->travel);
  title = fp_typed_travel_title (&t->travel);
  fp_board_view_renew_field (t->board, title, fp_typed_travel_words (&t->travel), text);
}

/* Where somebody may have meant it to rest on its way.  Equal gaps and what is in line elsewhere lie everywhere: nobody who
 * types how far it goes one way wants to have gone the other for them. */
static gboolean
is_meant (const FpCatch *found)
{
  return found->sort == FP_CATCH_AXIS || found->sort == FP_CATCH_EDGE || found->sort == FP_CATCH_CENTRE;
}

static guint
caught (FpBoardView *self)
{
  return (is_meant (&self->catch_x) ? 1 : 0) | (is_meant (&self->catch_y) ? 2 : 0);
}

/* A cutting line goes one way only, as a thing does in the view that shows no other. */
static FpViewId
view_of (const FpToolHit *hit)
{
  return hit->ways == 1 ? FP_VIEW_ELEVATION : hit->ways == 2 ? FP_VIEW_SECTION : (FpViewId) hit->view;
}

gboolean
fp_board_view_type_travel (FpBoardView *self, gunichar letter)
{
  const GdkRectangle where = { (int) self->pointer.x, (int) self->pointer.y, 1, 1 };
  const FpUnits units = fp_board_view_units (self);
  g_autofree char *title = NULL;
  char text[8] = { 0 };
  Typed *t;

  if (!fp_typed_travel_begins (letter) || !fp_board_tool_type (&self->tool))
    return FALSE;
  t = g_new0 (Typed, 1);
  t->board = self;
  fp_typed_travel_init (&t->travel, view_of (&self->tool.hit), self->tool.by, caught (self), units);
  self->catch_x.sort = self->catch_y.sort = FP_CATCH_NONE; /* what is typed holds now */
  title = fp_typed_travel_title (&t->travel);
  g_unichar_to_utf8 (letter, text);
  fp_board_view_open_field (self, &(FpBoardField) { .title = title,
                                                    .label = fp_typed_travel_words (&t->travel), .text = text,
                                                    .typed = TRUE, .is_length = TRUE, .unit = units == FP_UNITS_METRIC ? "mm" : "",
                                                    .hint = t->travel.ways == 3 ? "Tab: the other way" : NULL,
                                                    .enter = enter, .change = change, .give_up = give_up,
                                                    .other = other, .data = t, .destroy = g_free }, &where);
  change (t, text);
  return TRUE;
}
