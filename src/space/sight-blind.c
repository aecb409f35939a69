/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sight-blind.c - parts of the floor from which something is not seen at all, because of what stands fast
 *
 * An eye is put at every point of a fine grid over each floor of the people,
 * as high as the eyes of those who are there; the border between where it
 * sees something of the target and where it sees nothing becomes an outline.
 */
#include "sight-private.h"

#include "body.h"
#include "floor-set.h"

#include "footpace/contour.h"

#include <math.h>

#define STEP    100.0 /* mm; design judgement: nobody's head is narrower */
#define LEAST   2e4   /* mm2, likewise: a person does not stand on less  */
#define INSIDE  1.0   /* mm: an eye is within a solid that it meets so soon */
#define SAME    0.5   /* mm: one level                                   */
/* Rays that are asked before all others: most eyes see one of them. */
#define FIRST_ASKED 0x00000000ff000000u

/* Places that one thing gives. */
typedef struct
{
  const FpPlaced *placed;
  guint           first, n;
  gboolean        even;   /* all as high above the floor, on the same seat     */
  double          rise;   /* that height                                       */
} Block;

typedef struct
{
  const FpSight    *sight;
  FpFocus           focus;
  FpPosture         posture;
  guint             percentile;
  const FpRayIndex *fixed;
  const FpFloor    *floors;
  guint             n_floors;
  GCancellable     *cancel;
  guint             floor;  /* the one that is looked from                     */
  GArray           *blocks; /* (element-type Block): on such floors            */
  double            bare;   /* height of an eye where there are no places      */
} Ask;

/* --- who is there -------------------------------------------------------------- */

static gboolean
is_gallery (const Ask *ask)
{
  return ask->floors[ask->floor].use == FP_FLOOR_GALLERY;
}

static double
eye_of (const Ask *ask, const FpPersonPlace *place)
{
  /* Of the floor, not of whoever happens to be there. */
  const FpPerson plain = { .percentile = ask->percentile, .eye = place->who.eye };
  const FpBody body = fp_body (&plain, fp_person_posture (place, ask->posture), place->seat, place->kneeler);

  return body.eye;
}

static double
rise_of (const Ask *ask, const FpPersonPlace *place)
{
  return place->at.z - fp_floor_level (&ask->floors[ask->floor], (FpPoint) { place->at.x, place->at.y });
}

static gboolean
is_like (const Ask *ask, const FpPersonPlace *a, const FpPersonPlace *b)
{
  return fabs (rise_of (ask, a) - rise_of (ask, b)) < SAME && fabs (eye_of (ask, a) - eye_of (ask, b)) < SAME;
}

static void
find_blocks (Ask *ask)
{
  const FpPlaced *placed = fp_scene_placed (fp_people_scene (ask->sight->people), NULL);
  guint n;
  const FpPersonPlace *place = fp_people_places (ask->sight->people, &n);

  for (guint i = 0; i < n; i++)
    {
      Block *last = ask->blocks->len > 0 ? &g_array_index (ask->blocks, Block, ask->blocks->len - 1) : NULL;
      if (place[i].at_rail || place[i].gallery != is_gallery (ask))
        continue;
      if (last == NULL || last->placed != &placed[place[i].owner])
        {
          const Block block = { &placed[place[i].owner], i, 0, TRUE, rise_of (ask, &place[i]) };
          g_array_append_val (ask->blocks, block);
          last = &g_array_index (ask->blocks, Block, ask->blocks->len - 1);
        }
      last->n = i + 1 - last->first;
      last->even = last->even && is_like (ask, &place[last->first], &place[i]);
    }
}

/* People who have no place there do what those with a place on such a floor do; where nobody has one, they stand. */
static double
eye_on_bare_floor (const Ask *ask)
{
  const FpPersonPlace *place = fp_people_places (ask->sight->people, NULL);
  const FpBody standing = fp_body (&(FpPerson) { .percentile = ask->percentile }, FP_POSTURE_STANDING, 0, 0);

  for (guint i = 0; i < ask->blocks->len; i++)
    {
      const Block *block = &g_array_index (ask->blocks, Block, i);
      if (fp_person_posture (&place[block->first], ask->posture) == ask->posture)
        return eye_of (ask, &place[block->first]);
    }
  return standing.eye;
}

static gboolean
is_among (const Block *block, FpPoint at)
{
  const FpPlaced *placed = block->placed;
  const FpPoint local = fp_place_unpoint (&placed->place, at);
  const FpBox *plan = &placed->extent.plan;

  if (local.x < plan->x0 || local.x > plan->x1 || local.y < plan->y0 || local.y > plan->y1)
    return FALSE;
  return placed->form.n_corners < 3 || fp_outline_contains (placed->form.corner, placed->form.n_corners, local);
}

static const FpPersonPlace *
nearest_place (const Ask *ask, const Block *block, FpPoint at)
{
  const FpPersonPlace *place = fp_people_places (ask->sight->people, NULL) + block->first, *found = place;
  double least = G_MAXDOUBLE;

  for (guint i = 0; i < block->n; i++)
    {
      const double d = hypot (place[i].at.x - at.x, place[i].at.y - at.y);
      if (d < least)
        {
          least = d;
          found = &place[i];
        }
    }
  return found;
}

static double
eye_level (const Ask *ask, FpPoint at)
{
  const FpPersonPlace *place = fp_people_places (ask->sight->people, NULL);
  const double floor = fp_floor_level (&ask->floors[ask->floor], at);

  for (guint i = 0; i < ask->blocks->len; i++)
    {
      const Block *block = &g_array_index (ask->blocks, Block, i);
      if (!is_among (block, at))
        continue;
      if (block->even)
        return floor + block->rise + eye_of (ask, &place[block->first]);
      const FpPersonPlace *nearest = nearest_place (ask, block, at);
      return nearest->at.z + eye_of (ask, nearest);
    }
  return floor + ask->bare;
}

/* --- what he sees --------------------------------------------------------------- */

/* On this floor, and not on another that lies over it: galleries apart, which are floors of their own. */
static gboolean
is_on_floor (const Ask *ask, FpPoint at)
{
  const FpFloor *own = &ask->floors[ask->floor];
  const double level = fp_floor_level (own, at);

  if (!fp_outline_contains (own->outline, own->n_outline, at))
    return FALSE;
  for (guint i = 0; i < ask->n_floors; i++)
    {
      const FpFloor *other = &ask->floors[i];
      if (i == ask->floor || (other->use == FP_FLOOR_GALLERY) != is_gallery (ask)
          || !fp_outline_contains (other->outline, other->n_outline, at))
        continue;
      const double higher = fp_floor_level (other, at) - level;
      if (higher > SAME || (higher > -SAME && (other->use == FP_FLOOR_MINISTERS || i < ask->floor)))
        return FALSE;
    }
  return TRUE;
}

static gboolean
sees_any (const Ask *ask, FpVec3 eye, guint64 asked)
{
  const FpRaySkip nobody = { FP_RAY_SKIP_NOBODY, FP_RAY_SKIP_NOBODY };
  FpRays rays;

  fp_rays_to_points (&rays, eye, &ask->sight->point[ask->focus], FP_SIGHT_SHORT);
  return fp_ray_index_seen (ask->fixed, &rays, nobody, asked) != 0;
}

static gboolean
is_blind (FpPoint at, gpointer data)
{
  const Ask *ask = data;

  if (!is_on_floor (ask, at))
    return FALSE;
  const FpVec3 eye = { at.x, at.y, eye_level (ask, at) };
  if (sees_any (ask, eye, FIRST_ASKED) || sees_any (ask, eye, ~(guint64) FIRST_ASKED))
    return FALSE;
  return fp_ray_index_blocked (ask->fixed, eye, (FpVec3) { eye.x, eye.y, eye.z + INSIDE }, FP_RAY_SKIP_NOBODY) < 0;
}

static gboolean
is_given_up (gpointer data)
{
  const Ask *ask = data;

  return g_cancellable_is_cancelled (ask->cancel) || g_cancellable_is_cancelled (ask->sight->cancel);
}

/* --- floor by floor --------------------------------------------------------------- */

/* FALSE: given up. */
static gboolean
look_from_floor (Ask *ask, GArray *out)
{
  const FpFloor *floor = &ask->floors[ask->floor];
  const FpBox box = fp_outline_box (floor->outline, floor->n_outline);
  GArray *rings;

  ask->blocks = g_array_new (FALSE, FALSE, sizeof (Block));
  find_blocks (ask);
  ask->bare = eye_on_bare_floor (ask);
  rings = fp_contours (&(FpField) { is_blind, is_given_up, ask }, &box, STEP, LEAST);
  g_clear_pointer (&ask->blocks, g_array_unref);
  if (rings == NULL)
    return FALSE;
  const FpBlindFloor one = { ask->floor, is_gallery (ask), fp_rings_area (rings), rings };
  g_array_append_val (out, one);
  return TRUE;
}

static void
clear_floor (gpointer floor)
{
  g_array_unref (((FpBlindFloor *) floor)->rings);
}

static GArray *
look_from_floors (Ask *ask)
{
  g_autoptr (GArray) out = g_array_new (FALSE, FALSE, sizeof (FpBlindFloor));

  g_array_set_clear_func (out, clear_floor);
  for (ask->floor = 0; ask->floor < ask->n_floors; ask->floor++)
    {
      const FpFloorUse use = ask->floors[ask->floor].use;
      if ((use == FP_FLOOR_PEOPLE || use == FP_FLOOR_GALLERY) && !look_from_floor (ask, out))
        return NULL;
    }
  return g_steal_pointer (&out);
}

/* With the mutex held. */
static const FpRayIndex *
index_fixed (FpSight *self)
{
  if (self->fixed.index == NULL)
    {
      self->fixed.solids = fp_solids_new ();
      fp_sight_add_things (self->people, self->fixed.solids);
      self->fixed.index = fp_ray_index_new (self->fixed.solids);
    }
  return self->fixed.index;
}

const GArray *
fp_sight_blind (const FpSight *self, FpMoment moment, FpFocus focus, GCancellable *cancel)
{
  const FpScene *scene = fp_people_scene (self->people);
  const FpPosture posture = fp_moment_posture (moment);
  FpSight *mine = (FpSight *) self;
  GArray **blind = &mine->blind[posture][focus];

  if (self->target[focus] < 0 || g_atomic_pointer_get (blind) != NULL)
    return *blind;
  g_mutex_lock (&mine->blind_mutex);
  if (*blind == NULL)
    {
      Ask ask = { .sight = self, .focus = focus, .posture = posture, .cancel = cancel, .fixed = index_fixed (mine) };
      ask.percentile = fp_project_brief (fp_scene_project (scene))->percentile;
      ask.floors = fp_scene_floors (scene, &ask.n_floors);
      g_atomic_pointer_set (blind, look_from_floors (&ask));
    }
  g_mutex_unlock (&mine->blind_mutex);
  return g_atomic_pointer_get (blind);
}

double
fp_blind_area (const GArray *blind, gboolean gallery)
{
  double area = 0;

  for (guint i = 0; blind != NULL && i < blind->len; i++)
    if (g_array_index (blind, FpBlindFloor, i).gallery == gallery)
      area += g_array_index (blind, FpBlindFloor, i).area;
  return area;
}
