/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/retype.h"

#include "footpace/arrange.h"
#include "footpace/setting-out.h"

#include <math.h>

#define TOUCHES 1.5 /* mm */

static const FpPlaced *
find (const FpScene *scene, const char *id)
{
  const int index = id != NULL ? fp_scene_find (scene, id) : -1;

  return index >= 0 ? &fp_scene_placed (scene, NULL)[index] : NULL;
}

static FpProject *
refuse (GError **error, const char *why, const FpPlaced *placed)
{
  g_set_error (error, FP_ERROR, FP_ERROR_INVALID, "%s: %s", placed != NULL ? fp_item_name (placed->item) : "It", why);
  return NULL;
}

/* --- what it says --------------------------------------------------------------- */

gboolean
fp_stretch_is_level (const FpStretch *self)
{
  return self->sort == FP_STRETCH_LEVEL || self->sort == FP_STRETCH_FALL;
}

double
fp_stretch_value (const FpStretch *self)
{
  const FpVec3 d = fp_vec3_sub (self->b, self->a);

  return fp_stretch_is_level (self) ? self->b.z
         : self->sort == FP_STRETCH_WALLS ? fmax (fabs (d.x), fabs (d.y)) : fp_vec3_length (d);
}

static const char *
name_of (const FpScene *scene, const char *id, const char *otherwise)
{
  const FpPlaced *placed = find (scene, id);

  return placed != NULL ? fp_item_name (placed->item) : otherwise;
}

/* The axis is the only line along the church from which anything is set out. */
static char *
place_tells (const FpStretch *self, const FpScene *scene, const char *item)
{
  if (self->other != NULL)
    return g_strdup_printf ("%s to %s", item, name_of (scene, self->other, "what is beside it"));
  return g_strdup_printf (fabs (self->b.x - self->a.x) > fabs (self->b.y - self->a.y) ? "%s, from the axis" : "%s to the wall",
                          item);
}

char *
fp_stretch_tells (const FpStretch *self, const FpScene *scene)
{
  const char *item = name_of (scene, self->item, "It");

  switch (self->sort)
    {
    case FP_STRETCH_APART:
      return g_strdup_printf ("%s to %s", item, name_of (scene, self->other, "what is beside it"));
    case FP_STRETCH_PLACE: return place_tells (self, scene, item);
    case FP_STRETCH_FRONT: return g_strdup_printf ("%s, from back to front", item);
    case FP_STRETCH_ENDS:  return g_strdup_printf ("%s, from end to end", item);
    case FP_STRETCH_WALLS: return g_strdup ("Between the walls");
    case FP_STRETCH_TOP:   return g_strdup_printf ("Top of %s, over the floor", item);
    case FP_STRETCH_LEVEL: return g_strdup_printf ("Level of %s", item);
    case FP_STRETCH_FALL:  return g_strdup_printf ("Level of this end of %s", item);
    case FP_STRETCH_PARAM:
    default:                return g_strdup (item);
    }
}

/* --- two things apart -------------------------------------------------------------- */

static gboolean
is_listed (const char *id, const char *const *ids)
{
  return id != NULL && g_strv_contains (ids, id);
}

static gboolean
may_move (const FpPlaced *placed)
{
  return placed != NULL && (fp_item_kind (placed->item)->flags & FP_KIND_SURVEY) == 0;
}

/* A furnishing with a face at the point, across the measured direction; -1. */
static int
what_is_at (const FpScene *scene, FpVec3 p, FpVec3 way, const char *not_this)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);
  const gboolean along_y = fabs (way.y) > fabs (way.x);

  for (guint i = 0; i < n; i++)
    {
      const FpBox *plan = &placed[i].plan;
      const double face = along_y ? (way.y > 0 ? plan->y0 : plan->y1) : (way.x > 0 ? plan->x0 : plan->x1);
      const double at = along_y ? p.y : p.x, across = along_y ? p.x : p.y;

      if (placed[i].ghost || !may_move (&placed[i]) || g_strcmp0 (fp_item_id (placed[i].item), not_this) == 0)
        continue;
      if (fabs (face - at) < TOUCHES && across >= (along_y ? plan->x0 : plan->y0) - TOUCHES
          && across <= (along_y ? plan->x1 : plan->y1) + TOUCHES)
        return (int) i;
    }
  return -1;
}

static double
from_altar (const FpScene *scene, const FpPlaced *placed)
{
  const int altar = fp_scene_celebrated_altar (scene);
  const FpPlaced *a = altar >= 0 ? &fp_scene_placed (scene, NULL)[altar] : NULL;

  if (a == NULL)
    return 0;
  return hypot ((placed->plan.x0 + placed->plan.x1 - a->plan.x0 - a->plan.x1) / 2,
                (placed->plan.y0 + placed->plan.y1 - a->plan.y0 - a->plan.y1) / 2);
}

/* The chosen one; else the one that can be moved; else the one farther from the altar. */
static gboolean
first_moves (const FpScene *scene, const FpPlaced *first, const FpPlaced *second, const char *const *chosen)
{
  const gboolean a = is_listed (fp_item_id (first->item), chosen);
  const gboolean b = second != NULL && is_listed (fp_item_id (second->item), chosen);

  if (a != b)
    return a;
  if (second == NULL || may_move (first) != may_move (second))
    return second == NULL || may_move (first);
  return from_altar (scene, first) >= from_altar (scene, second);
}

static FpProject *
apart (const FpScene *scene, const FpStretch *m, double value, const char *const *chosen, GError **error)
{
  const FpPlaced *item = find (scene, m->item), *other = find (scene, m->other);
  const FpVec3 way = fp_vec3_scale (fp_vec3_sub (m->b, m->a), 1 / fp_vec3_length (fp_vec3_sub (m->b, m->a)));
  const double by = value - fp_vec3_length (fp_vec3_sub (m->b, m->a));
  const int met = m->other == NULL ? what_is_at (scene, m->b, way, m->item) : -1;

  if (item == NULL)
    return refuse (error, "it does not stand here any more", NULL);
  if (met >= 0)
    other = &fp_scene_placed (scene, NULL)[met];
  /* The item lies at a: it goes back for a longer measure, the other goes on. */
  return first_moves (scene, item, other, chosen)
           ? fp_set_out_move (scene, m->item, fp_vec3_scale (way, -by), error)
           : fp_set_out_move (scene, fp_item_id (other->item), fp_vec3_scale (way, by), error);
}

/* Whatever is chosen, the line from which it is set out stays. */
static FpProject *
set_out (const FpScene *scene, const FpStretch *m, double by, GError **error)
{
  const FpVec3 from = fp_vec3_sub (m->a, m->b);

  if (find (scene, m->item) == NULL)
    return refuse (error, "it does not stand here any more", NULL);
  return fp_set_out_move (scene, m->item, fp_vec3_scale (from, by / fp_vec3_length (from)), error);
}

/* --- footpaces ----------------------------------------------------------------------- */

static FpProject *
change (const FpScene *scene, const FpPlaced *placed, const char *param, double by, GError **error)
{
  if (placed == NULL || fp_kind_param_index (fp_item_kind (placed->item), param) < 0)
    return refuse (error, "this follows from other measures; type over those", placed);
  return fp_set_out_param (scene, fp_item_id (placed->item), param, fp_item_param (placed->item, param) + by, error);
}

/* --- levels ---------------------------------------------------------------------------- */

static FpProject *
to_level (const FpScene *scene, const FpStretch *m, double level, GError **error)
{
  static const char *const raising[] = { "level", "height" };
  const FpPlaced *placed = find (scene, m->item);
  const FpKind *kind = placed != NULL ? fp_item_kind (placed->item) : NULL;

  /* All its steps rise alike. */
  if (kind != NULL && kind->role == FP_ROLE_FOOTPACE)
    return change (scene, placed, "riser", (level - m->b.z) / fp_item_param (placed->item, "count"), error);
  for (guint i = 0; kind != NULL && i < G_N_ELEMENTS (raising); i++)
    if (fp_kind_param_index (kind, raising[i]) >= 0)
      return change (scene, placed, raising[i], level - m->b.z, error);
  return refuse (error, "its level follows from other measures; type over those", placed);
}

/* How far the floor rises from the fixed end to the typed one decides its fall: the fixed end stays. */
static FpProject *
to_fall (const FpScene *scene, const FpStretch *m, double level, GError **error)
{
  const FpPlaced *placed = find (scene, m->item);
  const double fall = placed != NULL ? fp_item_param (placed->item, "fall") : 0;
  const double origin = placed != NULL ? fp_item_param (placed->item, "level") : 0;
  g_autoptr (FpProject) next = NULL;
  g_autoptr (FpScene) then = NULL;
  double steeper;

  if (!(fall > 0) || m->a.z == m->b.z)
    return refuse (error, "it does not fall any more", placed);
  steeper = (m->a.z - level) / (m->a.z - m->b.z);
  if (steeper < 0)
    return refuse (error, "then it would fall the other way: turn its direction round first", placed);
  next = fp_set_out_param (scene, m->item, "fall", fall * steeper, error);
  then = next != NULL ? fp_scene_new (next, fp_scene_alternative (scene)) : NULL;
  /* The level is told at its origin, which lies somewhere along the fall. */
  return then != NULL ? fp_set_out_param (then, m->item, "level", m->a.z + (origin - m->a.z) * steeper, error) : NULL;
}

/* --- all of them -------------------------------------------------------------------------- */

FpProject *
fp_retype (const FpScene *scene, const FpStretch *m, double value, const char *const *chosen, GError **error)
{
  const double by = value - fp_stretch_value (m);

  if (!fp_stretch_is_level (m) && value < 0)
    {
      g_set_error_literal (error, FP_ERROR, FP_ERROR_RANGE, "A length cannot be less than nothing.");
      return NULL;
    }
  switch (m->sort)
    {
    case FP_STRETCH_APART: return apart (scene, m, value, chosen, error);
    case FP_STRETCH_PLACE: return set_out (scene, m, by, error);
    case FP_STRETCH_FRONT: return change (scene, find (scene, m->item), "front", by, error);
    case FP_STRETCH_ENDS:  return change (scene, find (scene, m->item), "ends", by / 2, error);
    case FP_STRETCH_WALLS: return fp_retype_walls (scene, m->a, m->b, value, error);
    case FP_STRETCH_TOP:   return change (scene, find (scene, m->item), "height", by, error);
    case FP_STRETCH_LEVEL: return to_level (scene, m, value, error);
    case FP_STRETCH_FALL:  return to_fall (scene, m, value, error);
    case FP_STRETCH_PARAM:
    default:                return refuse (error, "it is typed beside the thing itself", find (scene, m->item));
    }
}
