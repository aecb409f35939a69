/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pew-pool.c - memory of the pieces of one view */
#include "pew-private.h"

#define BLOCK ((gsize) 256 * 1024)
#define SPARE_MOST 24 /* blocks: more than a large church takes */

struct _FpPewPool
{
  GPtrArray *blocks; /* of BLOCK bytes, but those that hold one larger thing */
  GPtrArray *large;
  guint      used;   /* of the blocks                                       */
  guint8    *free;
  gsize      left;
};

static void
destroy_pool (gpointer data)
{
  FpPewPool *self = data;

  g_ptr_array_unref (self->blocks);
  g_ptr_array_unref (self->large);
  g_free (self);
}

/* What the last view took on this thread serves for the next: while something is dragged there is one in every frame, and
 * to get as much from the system anew takes a quarter of its time. */
static GPrivate spare = G_PRIVATE_INIT (destroy_pool);

FpPewPool *
fp_pew_pool_new (void)
{
  FpPewPool *self = g_private_get (&spare);

  if (self != NULL)
    {
      g_private_set (&spare, NULL);
      return self;
    }
  self = g_new0 (FpPewPool, 1);
  self->blocks = g_ptr_array_new_with_free_func (g_free);
  self->large = g_ptr_array_new_with_free_func (g_free);
  return self;
}

void
fp_pew_pool_free (FpPewPool *self)
{
  g_ptr_array_set_size (self->large, 0);
  if (self->blocks->len > SPARE_MOST)
    g_ptr_array_set_size (self->blocks, SPARE_MOST);
  self->used = 0;
  self->free = NULL;
  self->left = 0;
  g_private_replace (&spare, self);
}

static void
next_block (FpPewPool *self)
{
  if (self->used == self->blocks->len)
    g_ptr_array_add (self->blocks, g_malloc (BLOCK));
  self->free = g_ptr_array_index (self->blocks, self->used++);
  self->left = BLOCK;
}

gpointer
fp_pew_pool_take (FpPewPool *self, gsize size)
{
  const gsize whole = (size + 15) & ~(gsize) 15;
  gpointer taken;

  if (whole > BLOCK)
    {
      g_ptr_array_add (self->large, g_malloc (whole));
      return g_ptr_array_index (self->large, self->large->len - 1);
    }
  if (whole > self->left)
    next_block (self);
  taken = self->free;
  self->free += whole;
  self->left -= whole;
  return taken;
}
