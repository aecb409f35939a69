/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "chosen.h"

static gboolean
is_listed (const Chosen *self, int thing)
{
  for (guint i = 0; i < self->n; i++)
    if (self->index[i] == thing)
      return TRUE;
  return FALSE;
}

gboolean
chosen_carries (const Chosen *self, int thing)
{
  for (int i = thing; i >= 0; i = self->placed[i].support)
    if (is_listed (self, i))
      return TRUE;
  return FALSE;
}

/* A footpace goes where the altar on it goes: to move both would move the altar twice. */
static gboolean
follows_another (const Chosen *self, int thing)
{
  const int support = self->placed[thing].support;

  return support >= 0 && chosen_carries (self, support);
}

static void
leave_out_followers (Chosen *self)
{
  g_autofree int *kept = g_new (int, self->n);
  guint n = 0;

  for (guint i = 0; i < self->n; i++)
    if (!follows_another (self, self->index[i]))
      kept[n++] = self->index[i];
  g_free (self->index);
  self->index = g_steal_pointer (&kept);
  self->n = n;
}

gboolean
chosen_init (Chosen *self, const FpScene *scene, const char *const *ids, guint least, GError **error)
{
  self->scene = scene;
  self->placed = fp_scene_placed (scene, &self->n_placed);
  self->index = g_new (int, g_strv_length ((char **) ids) + 1);
  self->n = 0;
  for (; *ids != NULL; ids++)
    {
      const int index = fp_scene_find (scene, *ids);
      if (index < 0)
        {
          g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "“%s” does not stand in this alternative", *ids);
          return FALSE;
        }
      if (!is_listed (self, index))
        self->index[self->n++] = index;
    }
  leave_out_followers (self);
  if (self->n >= least)
    return TRUE;
  g_set_error (error, FP_ERROR, FP_ERROR_INVALID, least == 1 ? "Choose something first."
               : "Choose at least %u things that do not stand on one another.", least);
  return FALSE;
}

void
chosen_clear (Chosen *self)
{
  g_clear_pointer (&self->index, g_free);
}

static guint
depth_of (const Chosen *self, int thing)
{
  guint depth = 0;

  for (int i = self->placed[thing].support; i >= 0; i = self->placed[i].support)
    depth++;
  return depth;
}

static int
supports_first (gconstpointer a, gconstpointer b, gpointer data)
{
  const guint p = depth_of (data, *(const int *) a), q = depth_of (data, *(const int *) b);

  return p != q ? (p < q ? -1 : 1) : *(const int *) a - *(const int *) b;
}

GArray *
chosen_with_carried (const Chosen *self)
{
  GArray *all = g_array_new (FALSE, FALSE, sizeof (int));

  for (int i = 0; i < (int) self->n_placed; i++)
    if (!self->placed[i].ghost && chosen_carries (self, i))
      g_array_append_val (all, i);
  g_array_sort_with_data (all, supports_first, (gpointer) self);
  return all;
}
