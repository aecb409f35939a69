/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project-private.h"

#include <string.h>

static FpItemList *
list_with_room (guint n)
{
  FpItemList *self = g_new (FpItemList, 1);

  g_atomic_ref_count_init (&self->ref_count);
  self->n = 0;
  self->item = g_new (const FpItem *, MAX (n, 1));
  return self;
}

static void
append (FpItemList *self, const FpItem *item)
{
  self->item[self->n++] = fp_item_ref (item);
}

FpItemList *
fp_item_list_new (void)
{
  return list_with_room (0);
}

FpItemList *
fp_item_list_ref (const FpItemList *self)
{
  FpItemList *list = (FpItemList *) self;

  g_atomic_ref_count_inc (&list->ref_count);
  return list;
}

void
fp_item_list_unref (FpItemList *self)
{
  if (self == NULL || !g_atomic_ref_count_dec (&self->ref_count))
    return;
  for (guint i = 0; i < self->n; i++)
    fp_item_unref (self->item[i]);
  g_free (self->item);
  g_free (self);
}

int
fp_item_list_find (const FpItemList *self, const char *id)
{
  for (guint i = 0; i < self->n; i++)
    if (strcmp (fp_item_id (self->item[i]), id) == 0)
      return (int) i;
  return -1;
}

FpItemList *
fp_item_list_with (const FpItemList *self, const FpItem *item)
{
  const int at = fp_item_list_find (self, fp_item_id (item));
  FpItemList *next = list_with_room (self->n + 1);

  for (guint i = 0; i < self->n; i++)
    append (next, (int) i == at ? item : self->item[i]);
  if (at < 0)
    append (next, item);
  return next;
}

FpItemList *
fp_item_list_without (const FpItemList *self, GHashTable *gone)
{
  FpItemList *next = list_with_room (self->n);

  for (guint i = 0; i < self->n; i++)
    if (!g_hash_table_contains (gone, fp_item_id (self->item[i])))
      append (next, self->item[i]);
  return next;
}

gboolean
fp_item_list_equal (const FpItemList *a, const FpItemList *b)
{
  if (a == b)
    return TRUE;
  if (a->n != b->n)
    return FALSE;
  for (guint i = 0; i < a->n; i++)
    if (!fp_item_equal (a->item[i], b->item[i]))
      return FALSE;
  return TRUE;
}
