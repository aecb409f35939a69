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
  const FpPlaced *placed;
  int            *first, *next; /* what stands on each thing, the last one first; first[n]: on the floor; -1 ends */
  GArray         *out;
} Listing;

static int
rank_of (const FpKind *kind)
{
  guint n, i = 0;
  const FpKind *const *all = fp_kinds (&n);

  while (i < n && all[i] != kind)
    i++;
  return (int) i;
}

/* Things are added to their lists in the order in which these are to be read, backwards. */
static void
fill (Listing *l, const FpScene *scene, guint n)
{
  guint n_kinds;

  fp_kinds (&n_kinds);
  g_autofree int *rank = g_new (int, MAX (n, 1u));
  for (guint i = 0; i <= n; i++)
    l->first[i] = -1;
  for (guint i = 0; i < n; i++)
    rank[i] = stood_before (scene, &l->placed[i]) ? -1 : rank_of (fp_item_kind (l->placed[i].item));
  for (int k = (int) n_kinds; k >= 0; k--)
    for (guint i = n; i-- > 0;)
      if (rank[i] == k)
        {
          const guint on = l->placed[i].support >= 0 ? (guint) l->placed[i].support : n;

          l->next[i] = l->first[on];
          l->first[on] = (int) i;
        }
}

static void
list_what_stands_on (Listing *l, guint support, guint depth, gboolean building)
{
  for (int i = l->first[support]; i >= 0; i = l->next[i])
    if (depth > 0 || ((fp_item_kind (l->placed[i].item)->flags & FP_KIND_SURVEY) != 0) == building)
      {
        const FpThing thing = { (guint) i, depth };

        g_array_append_val (l->out, thing);
        list_what_stands_on (l, (guint) i, depth + 1, building);
      }
}

GArray *
fp_things_new (const FpScene *scene)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);
  g_autofree int *first = g_new (int, n + 1), *next = g_new (int, n + 1);
  Listing l = { placed, first, next, g_array_new (FALSE, FALSE, sizeof (FpThing)) };

  fill (&l, scene, n);
  list_what_stands_on (&l, n, 0, FALSE);
  list_what_stands_on (&l, n, 0, TRUE);
  return l.out;
}

/* --- several at once ------------------------------------------------------ */

static gboolean
is_furnishing (const FpPlaced *placed)
{
  return !placed->ghost && (fp_item_kind (placed->item)->flags & FP_KIND_SURVEY) == 0;
}

/* All that there is of it, as the view shows it; empty where it has no body. */
static FpBox
box_in_view (const FpScene *scene, const FpPlaced *placed, FpViewId view)
{
  const FpSolid *solid = fp_scene_solids (scene, NULL) + placed->first_solid;
  FpBox box = FP_BOX_EMPTY;

  for (guint i = 0; i < placed->n_solids; i++)
    {
      const FpBox3 b = fp_solid_box (&solid[i]);

      fp_box_add_point (&box, fp_view_point (view, b.lo));
      fp_box_add_point (&box, fp_view_point (view, b.hi));
    }
  return box;
}

static char **
furnishings (const FpScene *scene, FpHidden hidden, FpViewId view, const FpBox *frame)
{
  g_autoptr (GArray) things = fp_things_new (scene);
  GPtrArray *ids = g_ptr_array_new ();
  const FpPlaced *all = fp_scene_placed (scene, NULL);

  for (guint i = 0; i < things->len; i++)
    {
      const FpPlaced *placed = &all[g_array_index (things, FpThing, i).placed];
      FpBox box;

      if (!is_furnishing (placed) || !fp_shows_thing (hidden, fp_item_kind (placed->item), placed->standing))
        continue;
      box = frame != NULL ? box_in_view (scene, placed, view) : FP_BOX_EMPTY;
      if (frame == NULL || (!fp_box_is_empty (&box) && box.x0 >= frame->x0 && box.x1 <= frame->x1
                            && box.y0 >= frame->y0 && box.y1 <= frame->y1))
        g_ptr_array_add (ids, g_strdup (fp_item_id (placed->item)));
    }
  g_ptr_array_add (ids, NULL);
  return (char **) g_ptr_array_free (ids, FALSE);
}

char **
fp_things_furnishings (const FpScene *scene, FpHidden hidden)
{
  return furnishings (scene, hidden, FP_VIEW_PLAN, NULL);
}

char **
fp_things_within (const FpScene *scene, FpViewId view, const FpBox *frame)
{
  return furnishings (scene, 0, view, frame);
}

/* --- in words ------------------------------------------------------------- */

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
fp_travel_words (FpVec3 by, FpUnits units)
{
  GString *text = g_string_new (NULL);

  add_way (text, by.y, "east", "west", units);
  add_way (text, by.x, "to the Epistle side", "to the Gospel side", units);
  add_way (text, by.z, "up", "down", units);
  if (text->len == 0)
    g_string_append (text, "where it was");
  return g_string_free (text, FALSE);
}
