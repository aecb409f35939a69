/* SPDX-License-Identifier: GPL-3.0-or-later */
/* projection-doubles.c - things that stand in the very place of others that look the same to the last digit
 *
 * They add nothing to a drawing, and yet each edge of one would be asked of
 * each face of all the others, which lie just where it does.
 */
#include "projection-private.h"

#include <string.h>

typedef struct
{
  const FpPlaced *placed;
  const FpSolid  *solid;
  guint           index;
  gboolean        aloft;
} Standing;

static guint
hash_of (gconstpointer data)
{
  const Standing *s = data;
  const FpPlaced *p = &s->placed[s->index];
  const double number[] = { p->place.x, p->place.y, p->place.turn, p->level };
  guint hash = g_direct_hash (fp_item_kind (p->item)) ^ p->n_solids;

  for (guint i = 0; i < G_N_ELEMENTS (number); i++)
    hash = hash * 33 ^ g_double_hash (&number[i]);
  return hash;
}

static gboolean
same_place (const FpPlaced *a, const FpPlaced *b)
{
  return a->place.x == b->place.x && a->place.y == b->place.y && a->place.turn == b->place.turn && a->level == b->level
         && a->floor == b->floor && a->ghost == b->ghost && a->standing == b->standing;
}

static gboolean
same_form (const FpPlaced *a, const FpPlaced *b)
{
  const FpKind *kind = fp_item_kind (a->item);
  const guint n = fp_kind_n_params (kind);

  if (kind != fp_item_kind (b->item) || a->form.n_corners != b->form.n_corners)
    return FALSE;
  for (guint i = 0; i < n; i++)
    if (a->form.param[i] != b->form.param[i])
      return FALSE;
  return TRUE;
}

static gboolean
same_solids (const Standing *a, const Standing *b)
{
  const FpPlaced *p = &a->placed[a->index], *q = &b->placed[b->index];

  if (p->n_solids != q->n_solids)
    return FALSE;
  for (guint i = 0; i < p->n_solids; i++)
    if (!fp_solid_same (&a->solid[p->first_solid + i], &b->solid[q->first_solid + i]))
      return FALSE;
  return TRUE;
}

static gboolean
is_double (gconstpointer a, gconstpointer b)
{
  const Standing *p = a, *q = b;

  return p->aloft == q->aloft && same_place (&p->placed[p->index], &q->placed[q->index])
         && same_form (&p->placed[p->index], &q->placed[q->index]) && same_solids (p, q);
}

gboolean *
fp_doubles_find (const FpScene *scene, gboolean (*is_aloft) (const FpPlaced *placed, guint index))
{
  guint n, n_solids;
  const FpPlaced *placed = fp_scene_placed (scene, &n);
  const FpSolid *solid = fp_scene_solids (scene, &n_solids);
  g_autofree Standing *standing = g_new (Standing, MAX (n, 1u));
  g_autoptr (GHashTable) met = g_hash_table_new (hash_of, is_double);
  gboolean *doubles = g_new0 (gboolean, MAX (n, 1u));

  for (guint i = 0; i < n; i++)
    {
      standing[i] = (Standing) { placed, solid, i, is_aloft (placed, i) };
      doubles[i] = placed[i].n_solids > 0 && g_hash_table_contains (met, &standing[i]);
      if (!doubles[i])
        g_hash_table_add (met, &standing[i]);
    }
  return doubles;
}
