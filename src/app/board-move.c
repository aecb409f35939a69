/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-move.c - what the tool answered, done to the project */
#include "board-view-private.h"

#include "amiss.h"

#include "footpace/arrange.h"
#include "footpace/setting-out.h"

static void
begin_move (FpBoardView *self, const char *item)
{
  g_auto (GStrv) moving = NULL;

  if (!fp_document_is_chosen (self->document, item))
    fp_document_choose (self->document, item);
  moving = fp_board_view_standing (self);
  self->held = TRUE;
  self->anchor = (FpViewId) self->tool.hit.view;
  if (self->tool.hit.handle != 0)
    fp_board_view_begin_pulling (self, self->tool.hit.handle);
  else
    fp_board_view_begin_catching (self, (const char *const *) moving);
}

void
fp_board_view_let_go (FpBoardView *self)
{
  self->held = FALSE;
  g_clear_pointer (&self->moving, g_hash_table_unref);
  fp_board_view_end_catching (self);
  fp_board_view_end_pulling (self);
}

/* One alone needs no scene of its own for every step of the hand. */
static FpProject *
moved (FpBoardView *self, const char *const *ids, FpVec3 by, GError **error)
{
  const FpScene *base = fp_document_base_scene (self->document);

  return ids[0] != NULL && ids[1] == NULL ? fp_set_out_move (base, ids[0], by, error)
         : fp_arrange_move (base, ids, by, error);
}

/* All that is somewhere else than before: what stands on the thing, and what is laid round it. */
static void
note_what_moves (FpBoardView *self)
{
  const FpScene *base = fp_document_base_scene (self->document), *scene = fp_document_scene (self->document);
  const FpPlaced *before = fp_scene_placed (base, NULL);
  guint n;
  const FpPlaced *now = fp_scene_placed (scene, &n);

  if (self->moving != NULL || base == scene)
    return;
  self->moving = g_hash_table_new (NULL, NULL);
  for (guint i = 0; i < n; i++)
    {
      int was = now[i].ghost ? -1 : fp_scene_find (base, fp_item_id (now[i].item));

      if (was >= 0 && (before[was].place.x != now[i].place.x || before[was].place.y != now[i].place.y))
        g_hash_table_add (self->moving, (gpointer) g_intern_string (fp_item_id (now[i].item)));
    }
  fp_board_view_forget_chosen (self);
}

/* What is pulled where it cannot be says so beside the pointer, and is not shown there. */
static void
preview_pull (FpBoardView *self, FpVec3 by)
{
  g_autoptr (GError) error = NULL;
  FpProject *next = fp_board_view_pulled (self, by, &error);

  g_clear_pointer (&self->amiss, g_free);
  self->own_change = TRUE;
  if (next != NULL)
    fp_document_preview (self->document, next);
  else
    {
      fp_document_drop_preview (self->document);
      self->amiss = fp_amiss_words (fp_document_base_scene (self->document), error->message);
    }
  self->own_change = FALSE;
}

static void
preview_move (FpBoardView *self, const FpToolAnswer *answer)
{
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) ids = fp_board_view_standing (self);
  FpProject *next = NULL;

  if (fp_board_view_is_pulling (self))
    {
      preview_pull (self, answer->by);
      return;
    }
  self->own_change = TRUE;
  if (answer->by.x == 0.0 && answer->by.y == 0.0)
    fp_document_drop_preview (self->document);
  else
    {
      next = moved (self, (const char *const *) ids, answer->by, &error);
      if (next != NULL)
        fp_document_preview (self->document, next);
      else
        fp_board_view_notice (self, error->message);
    }
  self->own_change = FALSE;
  note_what_moves (self);
}

static void
end_move (FpBoardView *self, gboolean keep)
{
  g_auto (GStrv) ids = fp_board_view_standing (self);
  g_autofree char *names = fp_board_view_names (self, (const char *const *) ids);
  g_autofree char *pulled = fp_board_view_is_pulling (self) ? fp_board_view_handle_tells (self, self->handle) : NULL;
  g_autofree char *label = pulled != NULL ? g_strdup (pulled) : g_strdup_printf ("Move %s", names);

  if (keep && self->amiss != NULL)
    fp_board_view_notice (self, self->amiss);
  fp_board_view_let_go (self);
  fp_board_view_forget_chosen (self);
  if (keep && fp_document_is_previewing (self->document))
    fp_document_keep_preview (self->document, label);
  else
    fp_document_drop_preview (self->document);
  self->anchor = FP_VIEW_PLAN;
}

void
fp_board_view_obey (FpBoardView *self, const FpToolAnswer *answer)
{
  if (fp_board_view_obey_section (self, answer))
    return;
  switch (answer->deed)
    {
    case FP_TOOL_NOTHING:
      break;
    case FP_TOOL_CHOOSE:
      fp_document_choose (self->document, answer->item);
      break;
    case FP_TOOL_CHOOSE_ALSO:
      fp_document_choose_also (self->document, answer->item);
      break;
    case FP_TOOL_FRAME:
      self->frame = fp_board_view_from_steady (self, answer->frame);
      break;
    case FP_TOOL_CHOOSE_WITHIN:
      fp_board_view_choose_within (self, answer->frame, answer->also);
      break;
    case FP_TOOL_DROP_FRAME:
      break;
    case FP_TOOL_CHOOSE_HANDLE:
      fp_board_view_choose_handle (self, answer->handle);
      break;
    case FP_TOOL_TYPE_OVER:
      fp_document_choose (self->document, answer->item);
      fp_board_view_type_over (self, answer->item, answer->param, 0);
      break;
    case FP_TOOL_TYPE_MEASURE:
      fp_board_view_type_measure (self);
      break;
    case FP_TOOL_BEGIN:
      begin_move (self, answer->item);
      break;
    case FP_TOOL_MOVE:
      preview_move (self, answer);
      break;
    case FP_TOOL_KEEP:
      end_move (self, TRUE);
      break;
    case FP_TOOL_PUT_BACK:
      end_move (self, FALSE);
      break;
    case FP_TOOL_PAN:
      fp_board_view_pan_by (self, answer->pan);
      break;
    }
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

gboolean
fp_board_view_cancel (FpBoardView *self)
{
  FpToolState was = self->tool.state;
  FpToolAnswer answer;

  if (was == FP_TOOL_TYPING)
    fp_board_view_drop_typing (self);
  fp_board_view_end_typing (self);
  if (was != FP_TOOL_MOVING && was != FP_TOOL_FRAMING && was != FP_TOOL_TYPING)
    return FALSE;
  answer = fp_board_tool_cancel (&self->tool);
  fp_board_view_obey (self, &answer);
  fp_board_view_hover (self);
  return TRUE;
}

void
fp_board_view_nudge (FpBoardView *self, double dx, double dy)
{
  g_auto (GStrv) ids = self->document != NULL ? fp_board_view_standing (self) : NULL;
  g_autofree char *names = NULL, *label = NULL, *all = NULL, *merge = NULL;
  g_autoptr (GError) error = NULL;

  if (ids == NULL || ids[0] == NULL || self->held)
    return;
  names = fp_board_view_names (self, (const char *const *) ids);
  label = g_strdup_printf ("Move %s", names);
  all = g_strjoinv (" ", ids);
  merge = g_strconcat ("nudge ", all, NULL);
  if (!fp_document_edit (self->document, moved (self, (const char *const *) ids, (FpVec3) { dx, dy, 0.0 }, &error),
                         label, merge))
    fp_board_view_notice (self, error->message);
}

void
fp_board_view_remove_chosen (FpBoardView *self)
{
  g_auto (GStrv) ids = self->document != NULL ? fp_board_view_standing (self) : NULL;
  g_autofree char *names = NULL, *label = NULL;
  g_autoptr (GError) error = NULL;

  if (ids == NULL || ids[0] == NULL || self->held)
    return;
  names = fp_board_view_names (self, (const char *const *) ids);
  label = g_strdup_printf ("Remove %s", names);
  if (!fp_document_edit (self->document,
                         fp_arrange_remove (fp_document_base_scene (self->document), (const char *const *) ids, &error),
                         label, NULL))
    fp_board_view_notice (self, error->message);
}
