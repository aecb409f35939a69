/* SPDX-License-Identifier: GPL-3.0-or-later */
/* setting-lights.c - the wicks of a scene, and which of them burn */
#include "footpace/scene.h"

#include <math.h>

typedef struct { guint light; double from_middle, side; } Rank;

/* From the middle outward, the Epistle side first. */
static int
by_rank (gconstpointer a, gconstpointer b)
{
  const Rank *p = a, *q = b;

  if (fabs (p->from_middle - q->from_middle) > 0.5)
    return p->from_middle < q->from_middle ? -1 : 1;
  return (p->side < q->side) - (p->side > q->side);
}

/* Of the lights @first to @end - 1, of one thing, @lit burn. */
static void
let_burn (GArray *lights, const FpPlaced *placed, guint first, guint end, guint lit)
{
  g_autofree Rank *rank = g_new (Rank, end - first);
  const guint n = end - first;
  guint from = 0;

  for (guint i = 0; i < n; i++)
    {
      const FpVec3 at = g_array_index (lights, FpLight, first + i).at;
      const FpPoint own = fp_place_unpoint (&placed->place, (FpPoint) { at.x, at.y });

      g_array_index (lights, FpLight, first + i).lit = FALSE;
      rank[i] = (Rank) { first + i, fabs (own.x), own.x };
    }
  qsort (rank, n, sizeof *rank, by_rank);
  /* The one in the middle is left out of an even number. */
  if (n % 2 == 1 && lit % 2 == 0 && lit < n && rank[0].from_middle < 0.5)
    from = 1;
  for (guint i = from; i < MIN (from + lit, n); i++)
    g_array_index (lights, FpLight, rank[i].light).lit = TRUE;
}

static void
add_lights_of (const FpScene *scene, guint thing, GArray *out)
{
  const FpPlaced *placed = &fp_scene_placed (scene, NULL)[thing];
  const FpSolid *solid = fp_scene_solids (scene, NULL);
  const FpSetThing *set = fp_scene_setting (scene) != NULL
                          ? fp_setting_find (fp_scene_setting (scene), fp_item_id (placed->item)) : NULL;
  const guint first = out->len;

  for (guint i = placed->first_solid; i < placed->first_solid + placed->n_solids; i++)
    if (solid[i].part == FP_PART_CANDLE)
      {
        const FpBox3 box = fp_solid_box (&solid[i]);
        const FpLight light = { { (box.lo.x + box.hi.x) / 2, (box.lo.y + box.hi.y) / 2, box.hi.z }, thing, TRUE };

        g_array_append_val (out, light);
      }
  if (set != NULL && out->len > first)
    let_burn (out, placed, first, out->len, set->lit);
}

GArray *
fp_scene_lights (const FpScene *scene)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpLight));
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    if (!placed[i].ghost)
      add_lights_of (scene, i, out);
  return out;
}
