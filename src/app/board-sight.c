/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-sight.c - over the board: what every place sees, and the line of sight of one */
#include "board-view-private.h"

/* Drawn anew as soon as the scale is another by this much: until then the circles grow with the paper. */
#define SCALE_APART 1.02

struct _FpBoardSight
{
  FpSightDrafter *drafter;
  FpSightLook     look;
  FpSightDraft   *draft;    /* NULL: none has come yet                        */
  FpBlindDrafter *blind_drafter;
  FpBlindDraft   *blind;    /* NULL: it is not shown, or has not come yet     */
  FpSurfaceLook   painted;  /* in which look the nodes are                    */
  GskRenderNode  *node[FP_N_VIEWS], *blind_node;
};

static gboolean
has_outgrown (double drawn, double scale)
{
  return drawn > scale * SCALE_APART || drawn < scale / SCALE_APART;
}

static void
forget_nodes (FpBoardSight *sight)
{
  for (guint v = 0; v < FP_N_VIEWS; v++)
    g_clear_pointer (&sight->node[v], gsk_render_node_unref);
  g_clear_pointer (&sight->blind_node, gsk_render_node_unref);
}

static void
forget_blind (FpBoardSight *sight)
{
  g_clear_pointer (&sight->blind, fp_blind_draft_free);
  g_clear_pointer (&sight->blind_node, gsk_render_node_unref);
}

/* --- asked for ------------------------------------------------------------------------- */

/* Views that are not on the board have no scale. */
static void
shown_views (FpBoardView *self, FpViewLayout view[FP_N_VIEWS])
{
  for (guint v = 0; v < FP_N_VIEWS; v++)
    {
      view[v] = self->layout.view[v];
      if (fp_box_is_empty (&self->layout.frame[v]))
        view[v].scale = 0;
    }
}

/* What is shown stays while the paper grows; of another state of the church it would be wrong. */
static void
ask_blind (FpBoardView *self, FpFindings *of, const FpViewLayout *plan)
{
  FpBoardSight *sight = self->sight;
  const FpBlindDraft *blind = sight->blind;

  if (blind != NULL && (blind->of != of || blind->moment != sight->look.moment || blind->focus != sight->look.focus))
    forget_blind (sight);
  if (sight->look.blind && plan->scale > 0 && (sight->blind == NULL || has_outgrown (sight->blind->scale, plan->scale)))
    fp_blind_drafter_ask (sight->blind_drafter, of, sight->look.moment, sight->look.focus, plan);
}

static void
ask (FpBoardView *self)
{
  FpFindings *of = self->document != NULL ? fp_document_sighted (self->document) : NULL;
  FpViewLayout view[FP_N_VIEWS];

  if (self->sight == NULL || of == NULL || !fp_board_view_has_projections (self))
    return;
  shown_views (self, view);
  fp_sight_drafter_ask (self->sight->drafter, of, self->sight->look, view);
  ask_blind (self, of, &view[FP_VIEW_PLAN]);
}

static void
on_blind (FpBlindDraft *draft, gpointer data)
{
  FpBoardView *self = data;

  forget_blind (self->sight);
  if (self->sight->look.blind)
    self->sight->blind = draft;
  else
    fp_blind_draft_free (draft);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
on_draft (FpSightDraft *draft, gpointer data)
{
  FpBoardView *self = data;

  fp_sight_draft_free (self->sight->draft);
  self->sight->draft = draft;
  self->sight->look.place = draft->look.place;
  forget_nodes (self->sight);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_signal_emit_by_name (self, "sight-told");
}

void
fp_board_view_sight_changed (FpBoardView *self)
{
  ask (self);
}

void
fp_board_view_forget_sight (FpBoardView *self)
{
  if (self->sight == NULL)
    return;
  g_clear_pointer (&self->sight->draft, fp_sight_draft_free);
  forget_blind (self->sight);
  self->sight->look.place = -1;
  forget_nodes (self->sight);
}

void
fp_board_view_free_sight (FpBoardView *self)
{
  FpBoardSight *sight = g_steal_pointer (&self->sight);

  if (sight == NULL)
    return;
  fp_sight_drafter_free (sight->drafter);
  fp_blind_drafter_free (sight->blind_drafter);
  fp_sight_draft_free (sight->draft);
  forget_blind (sight);
  forget_nodes (sight);
  g_free (sight);
}

void
fp_board_view_set_sight (FpBoardView *self, const FpSightLook *look)
{
  const gboolean was_shown = self->sight != NULL;

  if (look == NULL)
    fp_board_view_free_sight (self);
  else
    {
      if (self->sight == NULL)
        {
          self->sight = g_new0 (FpBoardSight, 1);
          self->sight->drafter = fp_sight_drafter_new (on_draft, self);
          self->sight->blind_drafter = fp_blind_drafter_new (on_blind, self);
        }
      self->sight->look = *look;
      if (!look->blind)
        forget_blind (self->sight);
      ask (self);
    }
  if (was_shown != (self->sight != NULL) && fp_board_view_has_projections (self))
    {
      fp_board_view_lay_out (self);
      fp_board_view_forget_drawing (self);
    }
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

const FpSightDraft *
fp_board_view_sight (FpBoardView *self)
{
  return self->sight != NULL ? self->sight->draft : NULL;
}

const FpBlindDraft *
fp_board_view_blind (FpBoardView *self)
{
  return self->sight != NULL ? self->sight->blind : NULL;
}

/* --- painted ------------------------------------------------------------------------------ */

static GskRenderNode *
paint (const FpDrawing *drawing, FpSurfaceLook look)
{
  graphene_rect_t bounds;
  GskRenderNode *node;
  cairo_t *cr;

  graphene_rect_init (&bounds, 0, 0, (float) (fp_drawing_width (drawing) * PX_PER_MM),
                      (float) (fp_drawing_height (drawing) * PX_PER_MM));
  node = gsk_cairo_node_new (&bounds);
  cr = gsk_cairo_node_get_draw_context (node);
  cairo_scale (cr, PX_PER_MM, PX_PER_MM);
  fp_drawing_paint (drawing, cr, look, FALSE);
  cairo_destroy (cr);
  return node;
}

/* Where the church lies now, however it was panned since; at another scale it grows with the paper. */
static void
snapshot_part (FpBoardView *self, GtkSnapshot *snapshot, FpViewId view, const FpSightPart *part, double scale,
               GskRenderNode *node)
{
  const FpViewLayout *layout = &self->layout.view[view];
  const float grown = (float) (scale / layout->scale);
  const FpPoint foot = fp_board_view_to_widget (self, fp_view_to_paper (layout, part->corner));

  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT (
    (float) foot.x, (float) (foot.y - fp_drawing_height (part->drawing) * PX_PER_MM * grown)));
  gtk_snapshot_scale (snapshot, grown, grown);
  gtk_snapshot_append_node (snapshot, node);
  gtk_snapshot_restore (snapshot);
}

/* While a view has the whole surface, or the scale is another, what comes next is drawn for that. */
static gboolean
is_outgrown (FpBoardView *self)
{
  return has_outgrown (self->sight->draft->scale, self->layout.view[FP_VIEW_PLAN].scale);
}

/* Under the circles. */
static void
snapshot_blind (FpBoardView *self, GtkSnapshot *snapshot, FpSurfaceLook look)
{
  FpBoardSight *sight = self->sight;

  if (sight->blind == NULL || sight->blind->part.drawing == NULL || fp_box_is_empty (&self->layout.frame[FP_VIEW_PLAN]))
    return;
  if (sight->blind_node == NULL)
    sight->blind_node = paint (sight->blind->part.drawing, look);
  snapshot_part (self, snapshot, FP_VIEW_PLAN, &sight->blind->part, sight->blind->scale, sight->blind_node);
}

void
fp_board_view_snapshot_sight (FpBoardView *self, GtkSnapshot *snapshot, FpSurfaceLook look)
{
  FpBoardSight *sight = self->sight;

  if (sight == NULL || sight->draft == NULL)
    return;
  if (sight->painted != look)
    forget_nodes (sight);
  sight->painted = look;
  snapshot_blind (self, snapshot, look);
  for (guint v = 0; v < FP_N_VIEWS; v++)
    {
      if (sight->draft->part[v].drawing == NULL || fp_box_is_empty (&self->layout.frame[v]))
        continue;
      if (sight->node[v] == NULL)
        sight->node[v] = paint (sight->draft->part[v].drawing, look);
      snapshot_part (self, snapshot, (FpViewId) v, &sight->draft->part[v], sight->draft->scale, sight->node[v]);
    }
  if (is_outgrown (self) && !self->held)
    ask (self);
}
