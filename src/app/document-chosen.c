/* SPDX-License-Identifier: GPL-3.0-or-later */
/* document-chosen.c - what of a document is chosen: one thing, or several, the last one first in mind */
#include "document-private.h"

#include <string.h>

void
fp_document_forget_gone (FpDocument *self)
{
  gboolean any = FALSE;

  for (guint i = 0; i + 1 < self->chosen->len;)
    if (fp_document_placed (self, g_ptr_array_index (self->chosen, i)) == NULL)
      {
        g_ptr_array_remove_index (self->chosen, i);
        any = TRUE;
      }
    else
      i++;
  if (any)
    fp_document_emit (self, FP_DOCUMENT_CHOSEN);
}

guint
fp_document_n_chosen (FpDocument *self)
{
  return self->chosen->len - 1;
}

const char *
fp_document_chosen (FpDocument *self)
{
  const guint n = fp_document_n_chosen (self);

  return n > 0 ? g_ptr_array_index (self->chosen, n - 1) : NULL;
}

const char *const *
fp_document_chosen_all (FpDocument *self)
{
  return (const char *const *) self->chosen->pdata;
}

gboolean
fp_document_is_chosen (FpDocument *self, const char *id)
{
  return g_strv_contains (fp_document_chosen_all (self), id);
}

void
fp_document_choose_all (FpDocument *self, const char *const *ids)
{
  g_autoptr (GPtrArray) next = g_ptr_array_new_with_free_func (g_free);

  for (; *ids != NULL; ids++)
    if (fp_document_placed (self, *ids) != NULL && !g_ptr_array_find_with_equal_func (next, *ids, g_str_equal, NULL))
      g_ptr_array_add (next, g_strdup (*ids));
  g_ptr_array_add (next, NULL);
  if (g_strv_equal ((const char *const *) next->pdata, fp_document_chosen_all (self)))
    return;
  g_ptr_array_unref (self->chosen);
  self->chosen = g_steal_pointer (&next);
  fp_document_emit (self, FP_DOCUMENT_CHOSEN);
}

void
fp_document_choose (FpDocument *self, const char *id)
{
  const char *const ids[] = { id, NULL };

  fp_document_choose_all (self, ids);
}

void
fp_document_choose_also (FpDocument *self, const char *id)
{
  g_autoptr (GPtrArray) ids = g_ptr_array_new ();
  const gboolean was = fp_document_is_chosen (self, id);

  for (const char *const *c = fp_document_chosen_all (self); *c != NULL; c++)
    if (!g_str_equal (*c, id))
      g_ptr_array_add (ids, (gpointer) *c);
  if (!was)
    g_ptr_array_add (ids, (gpointer) id);
  g_ptr_array_add (ids, NULL);
  fp_document_choose_all (self, (const char *const *) ids->pdata);
}

static gboolean
is_of_chosen_kind (FpDocument *self, const FpKind *kind)
{
  for (const char *const *c = fp_document_chosen_all (self); *c != NULL; c++)
    if (fp_item_kind (fp_document_placed (self, *c)->item) == kind)
      return TRUE;
  return FALSE;
}

gboolean
fp_document_chosen_like (FpDocument *self, GPtrArray *ids)
{
  gboolean others = FALSE;
  guint n = 0;
  const FpPlaced *placed = self != NULL ? fp_scene_placed (self->scene, &n) : NULL;

  for (guint pass = 0; pass < 2; pass++)
    for (guint i = 0; i < n; i++)
      {
        const char *id = fp_item_id (placed[i].item);
        const gboolean is_chosen = fp_document_is_chosen (self, id);

        if (placed[i].ghost || is_chosen != (pass == 1) || !is_of_chosen_kind (self, fp_item_kind (placed[i].item)))
          continue;
        others |= !is_chosen;
        if (ids != NULL)
          g_ptr_array_add (ids, (gpointer) id);
      }
  return others;
}

const FpPlaced *
fp_document_chosen_placed (FpDocument *self)
{
  return fp_document_placed (self, fp_document_chosen (self));
}
