/* SPDX-License-Identifier: GPL-3.0-or-later */
/* projection-counterparts.c - what is the same in two scenes
 *
 * Things go by their names.  Solids have none: of a thing's own the first and
 * the last are the same as long as they measure the same to the last digit,
 * so a row of pews more leaves those before it as they were.
 */
#include "projection-private.h"

#include <stddef.h>
#include <string.h>

typedef struct
{
  const FpPlaced *placed;
  const FpSolid  *solid;
  guint           n_placed, n_solids;
} Standing;

static Standing
standing_of (const FpScene *scene)
{
  Standing s;

  s.placed = fp_scene_placed (scene, &s.n_placed);
  s.solid = fp_scene_solids (scene, &s.n_solids);
  return s;
}

/* --- things --------------------------------------------------------------------- */

static gboolean
same_name (const FpPlaced *a, const FpPlaced *b)
{
  return a->ghost == b->ghost && (a->item == b->item || g_str_equal (fp_item_id (a->item), fp_item_id (b->item)));
}

/* By name to index + 1, of what stands or of ghosts. */
static GHashTable *
numbers_new (const Standing *s, gboolean ghosts)
{
  GHashTable *number = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < s->n_placed; i++)
    if (s->placed[i].ghost == ghosts)
      g_hash_table_insert (number, (gpointer) fp_item_id (s->placed[i].item), GUINT_TO_POINTER (i + 1));
  return number;
}

/* Where the names are no longer one by one the same; what comes before another in one scene does so in the other. */
static void
find_by_name (const Standing *last, const Standing *now, guint from, int *thing)
{
  g_autoptr (GHashTable) stands = numbers_new (last, FALSE), ghosts = numbers_new (last, TRUE);
  int before = (int) from - 1;

  for (guint i = from; i < now->n_placed; i++)
    {
      GHashTable *among = now->placed[i].ghost ? ghosts : stands;
      const int was = GPOINTER_TO_INT (g_hash_table_lookup (among, fp_item_id (now->placed[i].item))) - 1;
      thing[i] = was > before ? was : -1;
      before = MAX (before, was);
    }
}

static int *
find_things (const Standing *last, const Standing *now)
{
  int *thing = g_new (int, now->n_placed);
  guint i;

  for (i = 0; i < MIN (last->n_placed, now->n_placed) && same_name (&last->placed[i], &now->placed[i]); i++)
    thing[i] = (int) i;
  if (i < now->n_placed)
    find_by_name (last, now, i, thing);
  return thing;
}

/* --- solids --------------------------------------------------------------------- */

static void
find_solids_of (const Standing *last, const Standing *now, const FpPlaced *was, const FpPlaced *is, int *solid)
{
  const guint least = MIN (was->n_solids, is->n_solids);
  guint before = 0, after = 0;

  while (before < least
         && fp_solid_same (&last->solid[was->first_solid + before], &now->solid[is->first_solid + before]))
    {
      solid[is->first_solid + before] = (int) (was->first_solid + before);
      before++;
    }
  /* Of as many as there were any may be the same, otherwise only what is counted from the end. */
  for (after = 1; after <= least - before; after++)
    {
      const guint i = is->first_solid + is->n_solids - after, k = was->first_solid + was->n_solids - after;
      if (fp_solid_same (&last->solid[k], &now->solid[i]))
        solid[i] = (int) k;
      else if (was->n_solids != is->n_solids)
        break;
    }
}

FpCounterparts
fp_counterparts_find (const FpScene *last, const FpScene *now)
{
  const Standing was = standing_of (last), is = standing_of (now);
  FpCounterparts self = { find_things (&was, &is), g_new (int, is.n_solids), g_new (int, was.n_placed) };

  for (guint i = 0; i < was.n_placed; i++)
    self.thing_now[i] = -1;
  for (guint i = 0; i < is.n_solids; i++)
    self.solid[i] = -1;
  for (guint i = 0; i < is.n_placed; i++)
    if (self.thing[i] >= 0)
      {
        self.thing_now[self.thing[i]] = (int) i;
        find_solids_of (&was, &is, &was.placed[self.thing[i]], &is.placed[i], self.solid);
      }
  return self;
}

void
fp_counterparts_clear (FpCounterparts *self)
{
  g_clear_pointer (&self->thing, g_free);
  g_clear_pointer (&self->solid, g_free);
  g_clear_pointer (&self->thing_now, g_free);
}
