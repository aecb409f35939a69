/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "memory.h"

FpBoardMemory *
fp_board_memory_new (void)
{
  FpBoardMemory *self = g_new0 (FpBoardMemory, 1);

  for (guint v = 0; v < FP_N_VIEWS; v++)
    {
      self->view[v].labels = g_array_new (FALSE, FALSE, sizeof (FpLabelPlace));
      self->view[v].wanted = g_array_new (FALSE, FALSE, sizeof (FpWanted));
    }
  return self;
}

void
fp_board_memory_free (FpBoardMemory *self)
{
  for (guint v = 0; self != NULL && v < FP_N_VIEWS; v++)
    {
      g_array_unref (self->view[v].labels);
      g_array_unref (self->view[v].wanted);
    }
  g_free (self);
}

static void
view_memory_take (FpViewMemory *self, const FpViewMemory *other)
{
  self->scale = other->scale;
  g_array_set_size (self->labels, 0);
  g_array_append_vals (self->labels, other->labels->data, other->labels->len);
  g_array_set_size (self->wanted, 0);
  g_array_append_vals (self->wanted, other->wanted->data, other->wanted->len);
}

FpBoardMemory *
fp_board_memory_copy (const FpBoardMemory *self)
{
  FpBoardMemory *copy = fp_board_memory_new ();

  for (guint v = 0; v < FP_N_VIEWS; v++)
    view_memory_take (&copy->view[v], &self->view[v]);
  return copy;
}

gboolean
fp_board_memory_lacks_name (const FpBoardMemory *self)
{
  return self->lacks_name;
}

/* What was remembered at another scale is of no use, and what stands there now still is. */
void
fp_board_memory_recall (FpBoardMemory *self, const FpBoardMemory *other)
{
  for (guint v = 0; v < FP_N_VIEWS; v++)
    if (self->view[v].scale == other->view[v].scale)
      view_memory_take (&self->view[v], &other->view[v]);
}

const FpViewMemory *
fp_view_memory_at (const FpViewMemory *self, double scale)
{
  return self != NULL && self->scale == scale ? self : NULL;
}

void
fp_view_memory_set (FpViewMemory *self, double scale, const GArray *labels, const GArray *wanted)
{
  self->scale = scale;
  g_array_set_size (self->labels, 0);
  for (guint i = 0; i < labels->len; i++)
    if (g_array_index (labels, FpLabel, i).item != NULL)
      g_array_append_vals (self->labels, &g_array_index (labels, FpLabel, i).place, 1);
  /* Of a great church there are thousands, of which few find room. */
  g_array_set_size (self->wanted, 0);
  for (guint i = 0; i < wanted->len; i++)
    if (g_array_index (wanted, FpWanted, i).placed == FP_PLACED_NEAR)
      g_array_append_vals (self->wanted, &g_array_index (wanted, FpWanted, i), 1);
}
