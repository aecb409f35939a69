/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "things.h"

#include <math.h>

/* A ghost of what now stands elsewhere, not of what was removed. */
static gboolean
stood_before (const FpScene *scene, const FpPlaced *placed)
{
  return placed->ghost && fp_scene_find (scene, fp_item_id (placed->item)) >= 0;
}

typedef struct
{
  const FpScene  *scene;
  const FpPlaced *placed;
  guint           n;
  GArray         *out;
} Listing;

static void
list_what_stands_on (Listing *l, int support, guint depth, gboolean building)
{
  guint n_kinds;
  const FpKind *const *kind = fp_kinds (&n_kinds);

  for (guint k = 0; k < n_kinds; k++)
    {
      if (depth == 0 && ((kind[k]->flags & FP_KIND_SURVEY) != 0) != building)
        continue;
      for (guint i = 0; i < l->n; i++)
        if (l->placed[i].support == support && fp_item_kind (l->placed[i].item) == kind[k]
            && !stood_before (l->scene, &l->placed[i]))
          {
            FpThing thing = { i, depth };

            g_array_append_val (l->out, thing);
            list_what_stands_on (l, (int) i, depth + 1, building);
          }
    }
}

GArray *
fp_things_new (const FpScene *scene)
{
  Listing l = { .scene = scene, .out = g_array_new (FALSE, FALSE, sizeof (FpThing)) };

  l.placed = fp_scene_placed (scene, &l.n);
  list_what_stands_on (&l, -1, 0, FALSE);
  list_what_stands_on (&l, -1, 0, TRUE);
  return l.out;
}

const char *
fp_thing_standing (const FpScene *scene, const FpPlaced *placed)
{
  if (placed->ghost)
    return stood_before (scene, placed) ? "stood here before" : "removed";
  if (placed->moved)
    return "moved";
  return placed->standing == FP_STANDING_EXISTING ? "existing" : "proposed";
}

char *
fp_thing_where (const FpScene *scene, const FpPlaced *placed, FpUnits units)
{
  g_autofree char *level = fp_level_format (placed->level, units);
  guint n;
  const FpPlaced *all = fp_scene_placed (scene, &n);

  if ((fp_item_kind (placed->item)->flags & FP_KIND_IN_WALL) != 0 && placed->support >= 0)
    return g_strdup_printf ("in %s", fp_item_name (all[placed->support].item));
  if ((fp_item_kind (placed->item)->flags & FP_KIND_FROM_DATUM) != 0)
    return g_strdup ("measured from the datum");
  if (placed->support >= 0 && (guint) placed->support < n)
    return g_strdup_printf ("stands on %s, %s", fp_item_name (all[placed->support].item), level);
  return g_strdup_printf ("stands on the floor, %s", level);
}

static void
add_way (GString *text, double by, const char *forward, const char *backward, FpUnits units)
{
  g_autofree char *length = fp_length_format_unit (fabs (by), units);

  if (fabs (by) >= 0.05)
    g_string_append_printf (text, "%s%s %s", text->len > 0 ? " · " : "", length, by > 0.0 ? forward : backward);
}

char *
fp_travel_words (FpVec3 by, FpUnits units, gboolean on_axis)
{
  GString *text = g_string_new (NULL);

  add_way (text, by.y, "east", "west", units);
  add_way (text, by.x, "to the Epistle side", "to the Gospel side", units);
  add_way (text, by.z, "up", "down", units);
  if (text->len == 0)
    g_string_append (text, "where it was");
  if (on_axis)
    g_string_append (text, " · on the axis");
  return g_string_free (text, FALSE);
}
