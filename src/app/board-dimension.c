/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-dimension.c - a dimension is typed over on the spot */
#include "board-view-private.h"
#include "typing.h"

#include <math.h>

typedef struct
{
  FpBoardView *board;
  char        *item, *param;
} Dimension;

static void
dimension_free (gpointer data)
{
  Dimension *d = data;

  g_free (d->item);
  g_free (d->param);
  g_free (d);
}

static gboolean
enter (gpointer data, const char *text, GError **error)
{
  Dimension *d = data;

  return fp_typing_enter (d->board->document, d->item, d->param, text, error);
}

/* The figure of the dimension nearest the pointer, in widget px. */
static GdkRectangle
figure_at (FpBoardView *self, const char *item, const char *param)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (self->drawing, &n), *best = NULL;
  double nearest = G_MAXDOUBLE;

  for (guint i = 0; i < n; i++)
    if (mark[i].item == item && mark[i].param == param && mark[i].type == FP_MARK_TEXT)
      {
        FpPoint at = fp_board_view_to_widget (self, mark[i].at);
        double d = hypot (at.x - self->pointer.x, at.y - self->pointer.y);

        if (d < nearest)
          {
            nearest = d;
            best = &mark[i];
          }
      }
  if (best == NULL)
    return (GdkRectangle) { (int) self->pointer.x, (int) self->pointer.y, 1, 1 };

  FpPoint at = fp_board_view_to_widget (self, best->at);
  int h = (int) ceil (best->height * PX_PER_MM);

  return (GdkRectangle) { (int) at.x - h, (int) at.y - h, 2 * h, h };
}

void
fp_board_view_type_over (FpBoardView *self, const char *item, const char *param_id)
{
  const FpPlaced *placed = fp_document_placed (self->document, item);
  const FpUnits units = fp_board_view_units (self);
  double value;
  const FpParam *param = fp_typing_param (placed, param_id, &value);
  g_autofree char *title = NULL, *text = NULL;
  GdkRectangle where;
  Dimension *d;

  if (param == NULL || param->type == FP_PARAM_CHOICE)
    return;
  where = figure_at (self, item, param_id);
  d = g_new0 (Dimension, 1);
  d->board = self;
  d->item = g_strdup (item);
  d->param = g_strdup (param_id);
  title = g_strdup_printf ("%s: %s", fp_item_name (placed->item), param->label);
  text = fp_typing_show (param, value, units);
  fp_board_view_open_field (self, &(FpBoardField) { .title = title, .label = param->label, .text = text,
                                                    .unit = fp_typing_unit (param, units), .enter = enter,
                                                    .data = d, .destroy = dimension_free }, &where);
}
