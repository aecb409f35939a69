/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-move.c - what the tool answered, done to the project */
#include "board-view-private.h"

#include "footpace/setting-out.h"

static void
begin_move (FpBoardView *self, const char *item)
{
  fp_document_choose (self->document, item);
  self->held = TRUE;
  self->anchor = (FpViewId) self->tool.hit.view;
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

static void
preview_move (FpBoardView *self, const FpToolAnswer *answer)
{
  g_autoptr (GError) error = NULL;
  FpProject *next = NULL;

  self->own_change = TRUE;
  if (answer->by.x == 0.0 && answer->by.y == 0.0)
    fp_document_drop_preview (self->document);
  else
    {
      next = fp_set_out_move (fp_document_base_scene (self->document), answer->item, answer->by, &error);
      if (next != NULL)
        fp_document_preview (self->document, next);
      else
        fp_board_view_notice (self, error->message);
    }
  self->own_change = FALSE;
  note_what_moves (self);
}

static char *
move_label (FpBoardView *self, const char *item)
{
  const FpPlaced *placed = fp_document_placed (self->document, item);

  return g_strdup_printf ("Move %s", placed != NULL ? fp_item_name (placed->item) : item);
}

static void
end_move (FpBoardView *self, const char *item, gboolean keep)
{
  g_autofree char *label = move_label (self, item);

  self->held = FALSE;
  g_clear_pointer (&self->moving, g_hash_table_unref);
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
  switch (answer->deed)
    {
    case FP_TOOL_NOTHING:
      break;
    case FP_TOOL_CHOOSE:
      fp_document_choose (self->document, answer->item);
      break;
    case FP_TOOL_TYPE_OVER:
      fp_document_choose (self->document, answer->item);
      fp_board_view_type_over (self, answer->item, answer->param);
      break;
    case FP_TOOL_BEGIN:
      begin_move (self, answer->item);
      break;
    case FP_TOOL_MOVE:
      preview_move (self, answer);
      break;
    case FP_TOOL_KEEP:
      end_move (self, answer->item, TRUE);
      break;
    case FP_TOOL_PUT_BACK:
      end_move (self, answer->item, FALSE);
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
  gboolean moving = self->tool.state == FP_TOOL_MOVING;
  FpToolAnswer answer;

  fp_board_view_end_typing (self);
  if (!moving)
    return FALSE;
  answer = fp_board_tool_cancel (&self->tool);
  fp_board_view_obey (self, &answer);
  fp_board_view_hover (self);
  return TRUE;
}

void
fp_board_view_nudge (FpBoardView *self, double dx, double dy)
{
  const char *id = self->document != NULL ? fp_document_chosen (self->document) : NULL;
  g_autofree char *label = NULL, *merge = NULL;
  g_autoptr (GError) error = NULL;

  if (id == NULL || self->held)
    return;
  label = move_label (self, id);
  merge = g_strconcat ("nudge ", id, NULL);
  if (!fp_document_edit (self->document,
                         fp_set_out_move (fp_document_base_scene (self->document), id, (FpVec3) { dx, dy, 0.0 },
                                          &error),
                         label, merge))
    fp_board_view_notice (self, error->message);
}

void
fp_board_view_remove_chosen (FpBoardView *self)
{
  const FpPlaced *placed = self->document != NULL ? fp_document_chosen_placed (self->document) : NULL;
  g_autofree char *label = NULL;
  g_autoptr (GError) error = NULL;

  if (placed == NULL || placed->ghost || self->held)
    return;
  label = g_strdup_printf ("Remove %s", fp_item_name (placed->item));
  if (!fp_document_edit (self->document,
                         fp_set_out_remove (fp_document_base_scene (self->document), fp_item_id (placed->item), &error),
                         label, NULL))
    fp_board_view_notice (self, error->message);
}
