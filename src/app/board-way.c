/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-way.c - the way of a finding, over the plan of the board: its route, and where it is narrowest */
#include "board-view-private.h"

#include "footpace/way-drawing.h"

struct _FpBoardWay
{
  FpWay      *way;
  FpOverPart  part[FP_N_VIEWS]; /* of the plan alone                   */
  double      scale;            /* 0: not drawn yet                    */
  FpUnits     units;
  FpBoardOver over;
};

static void
forget_drawing (FpBoardWay *self)
{
  fp_over_part_clear (&self->part[FP_VIEW_PLAN]);
  fp_board_over_forget (&self->over);
  self->scale = 0;
}

void
fp_board_view_mark_way (FpBoardView *self, const FpWay *way)
{
  if (self->way != NULL)
    {
      forget_drawing (self->way);
      fp_way_free (self->way->way);
      g_clear_pointer (&self->way, g_free);
    }
  if (way != NULL)
    {
      self->way = g_new0 (FpBoardWay, 1);
      self->way->way = fp_way_copy (way);
    }
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

const FpWay *
fp_board_view_marked_way (FpBoardView *self)
{
  return self->marked && self->way != NULL ? self->way->way : NULL;
}

/* In a drawing of its own, no larger than it. */
static void
draw (FpBoardView *self, FpBoardWay *way)
{
  FpViewLayout plan = self->layout.view[FP_VIEW_PLAN];
  const FpBox box = fp_way_drawn_box (way->way, &plan);
  FpOverPart *part = &way->part[FP_VIEW_PLAN];

  forget_drawing (way);
  way->scale = plan.scale;
  way->units = plan.units = fp_board_view_units (self);
  if (fp_box_is_empty (&box))
    return;
  part->drawing = fp_drawing_new (box.x1 - box.x0, box.y1 - box.y0);
  part->corner = fp_view_from_paper (&plan, (FpPoint) { box.x0, box.y0 });
  plan.origin = (FpPoint) { plan.origin.x - box.x0, plan.origin.y - box.y0 };
  plan.clip = FP_BOX_EMPTY;
  fp_drawing_add_way (part->drawing, way->way, &plan);
}

void
fp_board_view_snapshot_way (FpBoardView *self, GtkSnapshot *snapshot, FpSurfaceLook look)
{
  FpBoardWay *way = self->way;

  if (!self->marked || way == NULL || fp_box_is_empty (&self->layout.frame[FP_VIEW_PLAN]))
    return;
  if (way->scale == 0 || fp_board_over_is_outgrown (self, way->scale) || way->units != fp_board_view_units (self))
    draw (self, way);
  fp_board_over_snapshot (&way->over, self, snapshot, look, way->part, way->scale);
}
