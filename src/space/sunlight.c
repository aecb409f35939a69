/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sunlight.c - through which window the sun shines, and into whose eyes
 *
 * A ray towards the sun that nothing stops has left the church through an
 * opening or over a wall, where a roof would be; which of the two it was is
 * told by where it passed the openings.
 */
#include "sunlight-private.h"

#include <math.h>

#define BEYOND 1.0 /* mm past the outer face, clear of the wall that was passed */

/* --- what there is -------------------------------------------------------------- */

static void
add_solids (FpSunlight *self, const FpPlaced *placed, guint i)
{
  g_autoptr (FpSolids) own = fp_solids_new ();

  fp_item_kind (placed->item)->solids (&placed->form, own);
  fp_solids_append_placed (self->solids, own, &placed->place, placed->level, i);
}

static void
add_window (FpSunlight *self, const FpScene *scene, const FpPlaced *placed, guint i)
{
  const FpItem *item = placed[i].item;
  FpBox3 way;

  if (fp_item_kind (item)->role != FP_ROLE_OPENING || placed[i].support < 0
      || (fp_scene_doorway (scene, i, &way) && fp_doorway_is_door (&way)))
    return;
  const FpSunWindow window = {
    .index = i, .place = placed[i].place, .level = placed[i].level,
    .thickness = fp_item_param (placed[placed[i].support].item, "thickness"),
    .half = fp_item_param (item, "width") / 2, .sill = fp_item_param (item, "sill"),
    .head = MAX (fp_item_param (item, "head"), fp_item_param (item, "sill")),
    .arched = fp_item_param (item, "arch") == 1,
  };
  g_array_append_val (self->windows, window);
}

static void
find_altar (FpSunlight *self, const FpScene *scene)
{
  const int altar = fp_scene_celebrated_altar (scene);

  self->has_altar = altar >= 0;
  if (altar < 0)
    return;
  const FpBox *plan = &fp_scene_placed (scene, NULL)[altar].plan;
  self->altar = (FpPoint) { (plan->x0 + plan->x1) / 2, (plan->y0 + plan->y1) / 2 };
}

FpSunlight *
fp_sunlight_new (const FpPeople *people, FpVec3 towards)
{
  const FpScene *scene = fp_people_scene (people);
  const FpBox3 box = fp_scene_box (scene);
  FpSunlight *self = g_new0 (FpSunlight, 1);
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  self->people = fp_people_ref ((FpPeople *) people);
  self->towards = towards;
  self->far = n > 0 ? 2 * fp_vec3_length (fp_vec3_sub (box.hi, box.lo)) : 0;
  self->solids = fp_solids_new ();
  self->windows = g_array_new (FALSE, FALSE, sizeof (FpSunWindow));
  for (guint i = 0; i < n; i++)
    if (!placed[i].ghost)
      {
        add_solids (self, &placed[i], i);
        add_window (self, scene, placed, i);
      }
  self->index = fp_ray_index_new (self->solids);
  find_altar (self, scene);
  return self;
}

void
fp_sunlight_turn (FpSunlight *self, FpVec3 towards)
{
  self->towards = towards;
}

void
fp_sunlight_free (FpSunlight *self)
{
  if (self == NULL)
    return;
  fp_ray_index_free (self->index);
  fp_solids_free (self->solids);
  g_array_unref (self->windows);
  fp_people_unref ((FpPeople *) self->people);
  g_free (self);
}

/* --- through a window ------------------------------------------------------------- */

static gboolean
is_open_at (const FpSunWindow *window, double x, double z)
{
  if (fabs (x) > window->half || z < window->sill)
    return FALSE;
  if (z <= window->head)
    return TRUE;
  return window->arched && hypot (x, z - window->head) <= window->half;
}

/* Whether the ray passes through the opening, on the middle of the wall: where nothing stops it, it then keeps within
 * all of it.  @leaves: (out): how far from @from it is past the wall. */
static gboolean
passes (const FpSunlight *self, const FpSunWindow *window, FpVec3 from, double *leaves)
{
  const FpPoint at = fp_place_unpoint (&window->place, (FpPoint) { from.x, from.y });
  const FpPlace turn = { 0, 0, window->place.turn };
  const FpPoint way = fp_place_unpoint (&turn, (FpPoint) { self->towards.x, self->towards.y });
  const double middle = window->thickness / 2, far = way.y > 0 ? window->thickness : 0;
  const double t = (middle - at.y) / way.y;

  if (way.y == 0 || !(t > 0))
    return FALSE;
  *leaves = (far - at.y) / way.y;
  return is_open_at (window, at.x + t * way.x, from.z + t * self->towards.z - window->level);
}

/* Whether the ray goes over or under that piece of wall, which rises above @sill. */
static gboolean
follows (const FpSolid *piece, double sill, FpVec3 from, FpVec3 to)
{
  FpSolid flat = *piece;

  if (piece->part != FP_PART_WALL || piece->shape != FP_SOLID_PRISM || piece->z1 <= sill)
    return FALSE;
  flat.z0 = -1;
  flat.z1 = 1;
  flat.bx = flat.by = flat.gx = flat.gy = 0;
  from.z = to.z = 0;
  return fp_solid_ray (&flat, from, to, NULL);
}

static gboolean
is_outer (const FpSunlight *self, const FpSunWindow *window, FpVec3 from, FpVec3 to)
{
  guint n;
  const FpSolid *solid = fp_solids_peek (self->solids, &n);

  for (guint i = 0; i < n; i++)
    if (follows (&solid[i], window->level + window->sill, from, to))
      return FALSE;
  return TRUE;
}

static FpVec3
along (const FpSunlight *self, FpVec3 from, double by)
{
  return fp_vec3_add (from, fp_vec3_scale (self->towards, by));
}

gboolean
fp_sunlight_sees_sky (const FpSunlight *self, const FpSunWindow *window, FpVec3 from)
{
  double leaves;

  return passes (self, window, from, &leaves)
         && is_outer (self, window, along (self, from, leaves + BEYOND), along (self, from, self->far));
}

int
fp_sunlight_window (const FpSunlight *self, FpVec3 from)
{
  if (!(self->towards.z > 0) || fp_ray_index_blocked (self->index, from, along (self, from, self->far), G_MAXUINT) >= 0)
    return -1;
  for (guint i = 0; i < self->windows->len; i++)
    {
      const FpSunWindow *window = &g_array_index (self->windows, FpSunWindow, i);
      if (fp_sunlight_sees_sky (self, window, from))
        return (int) window->index;
    }
  return -1;
}

/* --- into eyes ---------------------------------------------------------------------- */

/* Sitting where he can; -1: nobody is there while others look. */
static int
posture_of (const FpPersonPlace *place)
{
  if (place->at_rail)
    return -1;
  if (place->postures & (1u << FP_POSTURE_SITTING))
    return FP_POSTURE_SITTING;
  return place->postures & (1u << FP_POSTURE_STANDING) ? FP_POSTURE_STANDING : -1;
}

static FpPoint
look_of (const FpSunlight *self, const FpPersonPlace *place)
{
  const FpPlace turn = { 0, 0, place->facing };

  if (self->has_altar)
    return (FpPoint) { self->altar.x - place->at.x, self->altar.y - place->at.y };
  return fp_place_point (&turn, (FpPoint) { 0, 1 });
}

/* Degrees on the plan, 0..180. */
static double
angle_between (FpPoint a, FpPoint b)
{
  return atan2 (fabs (a.x * b.y - a.y * b.x), a.x * b.x + a.y * b.y) * 180 / G_PI;
}

/* Whether it is before who looks that way, and not too high for him. */
static gboolean
is_faced (const FpSunlight *self, FpPoint look)
{
  const FpPoint sun = { self->towards.x, self->towards.y };

  return atan2 (self->towards.z, hypot (sun.x, sun.y)) * 180 / G_PI <= FP_SUN_HEIGHT_MOST
         && angle_between (look, sun) <= FP_SUN_ASIDE_MOST;
}

int
fp_sunlight_in_eyes (const FpSunlight *self, guint place)
{
  guint n;
  const FpPersonPlace *places = fp_people_places (self->people, &n);

  if (place >= n || posture_of (&places[place]) < 0 || !is_faced (self, look_of (self, &places[place])))
    return -1;
  return fp_sunlight_window (self, fp_people_eye (self->people, place, (FpPosture) posture_of (&places[place])));
}

int
fp_sunlight_in_minister (const FpSunlight *self, FpOffice office)
{
  FpVec3 eye;
  double facing;

  if (!fp_people_minister_eye (self->people, office, &eye, &facing))
    return -1;
  const FpPlace turn = { 0, 0, facing };
  return is_faced (self, fp_place_point (&turn, (FpPoint) { 0, 1 })) ? fp_sunlight_window (self, eye) : -1;
}
