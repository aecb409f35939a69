/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-over.c - drawings of the background that lie over the views of the board */
#include "board-view-private.h"

/* Drawn anew as soon as the scale is another by this much: until then they grow with the paper. */
#define SCALE_APART 1.02

void
fp_board_over_forget (FpBoardOver *over)
{
  for (guint v = 0; v < FP_N_VIEWS; v++)
    g_clear_pointer (&over->node[v], gsk_render_node_unref);
}

void
fp_board_view_shown_views (FpBoardView *self, FpViewLayout view[FP_N_VIEWS])
{
  for (guint v = 0; v < FP_N_VIEWS; v++)
    {
      view[v] = self->layout.view[v];
      if (fp_box_is_empty (&self->layout.frame[v]))
        view[v].scale = 0;
    }
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
snapshot_part (FpBoardView *self, GtkSnapshot *snapshot, FpViewId view, const FpOverPart *part, double scale,
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

gboolean
fp_board_over_is_outgrown (FpBoardView *self, double scale)
{
  const double grown = scale / self->layout.view[FP_VIEW_PLAN].scale;

  return grown > SCALE_APART || grown < 1 / SCALE_APART;
}

void
fp_board_over_snapshot (FpBoardOver *over, FpBoardView *self, GtkSnapshot *snapshot, FpSurfaceLook look,
                        const FpOverPart part[FP_N_VIEWS], double scale)
{
  if (over->painted != look)
    fp_board_over_forget (over);
  over->painted = look;
  for (guint v = 0; v < FP_N_VIEWS; v++)
    {
      if (part[v].drawing == NULL || fp_box_is_empty (&self->layout.frame[v]))
        continue;
      if (over->node[v] == NULL)
        over->node[v] = paint (part[v].drawing, look);
      snapshot_part (self, snapshot, (FpViewId) v, &part[v], scale, over->node[v]);
    }
}
