/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pew-places.c - places from which a church is looked at when nobody names one, and what is said of a view */
#include "footpace/pew-view.h"

#include <math.h>
#include <string.h>

static const struct { const char *id, *label; } typical[FP_N_PEW_TYPICAL] = {
  [FP_PEW_FRONT] = { "front", "In front" },    [FP_PEW_MIDDLE] = { "middle", "In the middle" },
  [FP_PEW_BACK] = { "back", "At the back" },   [FP_PEW_SIDE] = { "side", "Farthest to the side" },
  [FP_PEW_GALLERY] = { "gallery", "On the gallery" }, [FP_PEW_STANDING] = { "standing", "In the standing room" },
  [FP_PEW_WHEELCHAIR] = { "wheelchair", "In a wheelchair" },
  [FP_PEW_CHILD] = { "child", "A child, in the middle" },
};

const char *
fp_pew_typical_id (FpPewTypical one)
{
  return typical[one].id;
}

const char *
fp_pew_typical_label (FpPewTypical one)
{
  return typical[one].label;
}

/* --- which place that is ------------------------------------------------------- */

/* Where the people look: the middle of the mensa, or the east end of where they sit. */
static FpPoint
find_altar (const FpPeople *people)
{
  FpVec3 point[FP_SIGHT_RAYS];
  const guint n = fp_sight_points (fp_people_scene (people), FP_FOCUS_MENSA, point);
  guint places;
  const FpPersonPlace *place = fp_people_places (people, &places);
  FpPoint at = { 0, -G_MAXDOUBLE };

  for (guint i = 0; i < places && n == 0; i++)
    at.y = MAX (at.y, place[i].at.y);
  for (guint i = 0; i < n; i++)
    at = (FpPoint) { at.x + point[i].x / n, (i == 0 ? 0 : at.y) + point[i].y / n };
  return at;
}

static gboolean
is_of (const FpPersonPlace *place, FpPewTypical one)
{
  const gboolean sits = (place->postures & (1u << FP_POSTURE_SITTING)) != 0;

  if (place->at_rail)
    return FALSE;
  if (one == FP_PEW_WHEELCHAIR || place->who.eye > 0)
    return one == FP_PEW_WHEELCHAIR && place->who.eye > 0;
  if (one == FP_PEW_GALLERY)
    return place->gallery;
  return !place->gallery && sits != (one == FP_PEW_STANDING);
}

/* The least is taken. @middle: half-way between the nearest and the farthest. */
static double
merit (FpPewTypical one, double distance, double aside, double middle)
{
  switch (one)
    {
    case FP_PEW_FRONT: return distance;
    case FP_PEW_BACK: return -distance;
    case FP_PEW_SIDE: return -fabs (atan2 (aside, distance));
    case FP_PEW_MIDDLE:
    case FP_PEW_GALLERY:
    case FP_PEW_STANDING:
    case FP_PEW_WHEELCHAIR:
    case FP_PEW_CHILD:
    case FP_N_PEW_TYPICAL: break;
    }
  return fabs (distance - middle) + aside / 2;
}

gboolean
fp_pew_typical_spec (const FpPeople *people, FpPewTypical one, FpPewSpec *spec)
{
  guint n;
  const FpPersonPlace *place = fp_people_places (people, &n);
  const FpPoint altar = find_altar (people);
  double nearest = G_MAXDOUBLE, farthest = -G_MAXDOUBLE, best = G_MAXDOUBLE;

  for (guint i = 0; i < n; i++)
    if (is_of (&place[i], one))
      {
        const double d = hypot (place[i].at.x - altar.x, place[i].at.y - altar.y);
        nearest = MIN (nearest, d);
        farthest = MAX (farthest, d);
      }
  for (guint i = 0; i < n; i++)
    if (is_of (&place[i], one))
      {
        const double aside = fabs (place[i].at.x - altar.x), d = hypot (aside, place[i].at.y - altar.y);
        const double this = merit (one, d, aside, (nearest + farthest) / 2);
        if (this < best)
          spec->place = i;
        best = MIN (best, this);
      }
  spec->child = one == FP_PEW_CHILD;
  return best < G_MAXDOUBLE;
}

gboolean
fp_pew_place_find (const FpPeople *people, const char *block, guint row, guint number, guint *found)
{
  guint n;
  const FpPersonPlace *place = fp_people_places (people, &n);
  const FpPlaced *placed = fp_scene_placed (fp_people_scene (people), NULL);

  for (guint i = 0; i < n; i++)
    {
      const FpItem *item = placed[place[i].owner].item;
      if (place[i].row != row || place[i].number != number
          || (block != NULL && strcmp (block, fp_item_id (item)) != 0 && strcmp (block, fp_item_name (item)) != 0))
        continue;
      *found = i;
      return TRUE;
    }
  return FALSE;
}

/* --- what is said of it ---------------------------------------------------------- */

char *
fp_pew_eye_text (const FpPeople *people, const FpPewSpec *spec)
{
  const gboolean is_child = spec->child || fp_people_places (people, NULL)[spec->place].who.child;
  g_autofree char *name = fp_people_name (people, spec->place);
  FpPosture posture;

  fp_people_looks (people, spec->place, spec->moment, &posture);
  return g_strdup_printf ("%s, %s%s; %s", name, is_child ? "a child " : "", fp_posture_label (posture),
                          fp_moment_label (spec->moment));
}

static void
add_share (GString *text, FpFocus focus, double share)
{
  g_string_append_printf (text, "%s%s ", text->len > 0 ? ", " : "", fp_focus_label (focus));
  if (share >= 1)
    g_string_append (text, "all");
  else if (share <= 0)
    g_string_append (text, "nothing");
  else
    g_string_append_printf (text, "%.0f %%", share * 100);
}

char *
fp_pew_seen_text (const FpSight *sight, const FpPewSpec *spec)
{
  GString *text = g_string_new (NULL);

  /* Shares are known of who is there anyhow. */
  for (int focus = 0; focus < FP_N_FOCUSES && !spec->child; focus++)
    {
      const double share = fp_sight_has (sight, (FpFocus) focus) && fp_moment_shows (spec->moment, (FpFocus) focus)
                             ? fp_sight_share (sight, spec->place, spec->moment, (FpFocus) focus) : -1;
      if (share >= 0)
        add_share (text, (FpFocus) focus, share);
    }
  return g_string_free (text, FALSE);
}
