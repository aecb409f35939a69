/* SPDX-License-Identifier: GPL-3.0-or-later */
/* corners.c - the corners of outlines and runs of wall, by hand */
#include "footpace/handles.h"

#include <math.h>
#include <string.h>

#define SAME 1e-6 /* mm */

static const FpPlaced *
find_drawn (const FpScene *scene, const char *id, GError **error)
{
  const int index = fp_scene_find (scene, id);
  const FpPlaced *placed = index >= 0 ? &fp_scene_placed (scene, NULL)[index] : NULL;

  if (placed != NULL && placed->form.n_corners > 0)
    return placed;
  g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "%s has no corners here", id);
  return NULL;
}

static gboolean
is_closed (const FpPlaced *placed)
{
  return (fp_item_kind (placed->item)->flags & FP_KIND_OUTLINE) != 0 || fp_item_param (placed->item, "closed") != 0;
}

static FpPoint *
corners_of (const FpPlaced *placed, guint spare)
{
  FpPoint *corner = g_new (FpPoint, placed->form.n_corners + spare);

  for (guint i = 0; i < placed->form.n_corners; i++)
    corner[i] = fp_place_point (&placed->place, placed->form.corner[i]);
  return corner;
}

static guint
n_sides (const FpPlaced *placed, guint n_corners)
{
  return is_closed (placed) ? n_corners : n_corners - 1;
}

/* --- openings stay where they are --------------------------------------------- */

typedef struct { guint side; double along, length; } InSide;

/* The side that is nearest to the point, and how far along it that is. */
static InSide
nearest_side (const FpPoint *corner, guint n, guint sides, FpPoint p)
{
  InSide best = { 0, 0, 0 };
  double nearest = G_MAXDOUBLE;

  for (guint i = 0; i < sides; i++)
    {
      const FpPoint a = corner[i], b = corner[(i + 1) % n];
      const double d = fp_segment_distance (a, b, p), length = hypot (b.x - a.x, b.y - a.y);

      if (d >= nearest || length <= 0)
        continue;
      nearest = d;
      best = (InSide) { i, ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / length, length };
    }
  return best;
}

/* The middle of an opening on the inner face, as the wall was. */
static FpPoint
middle_of_opening (const FpItem *opening, const FpPoint *corner, guint n)
{
  const guint side = (guint) fp_item_param (opening, "side") - 1;
  const FpPoint a = corner[side % n], b = corner[(side + 1) % n];
  const double length = hypot (b.x - a.x, b.y - a.y), t = length > 0 ? fp_item_param (opening, "along") / length : 0;

  return (FpPoint) { a.x + t * (b.x - a.x), a.y + t * (b.y - a.y) };
}

static FpItem *
opening_in (const FpItem *opening, const InSide *in, GError **error)
{
  const double half = fp_item_param (opening, "width") / 2;
  const double along = fmax (fmin (in->along, in->length - half), half);
  double param[FP_PARAM_MAX];
  FpItemInit init;

  fp_item_init_from (opening, &init);
  memcpy (param, init.param, fp_kind_n_params (init.kind) * sizeof (double));
  param[fp_kind_param_index (init.kind, "side")] = in->side + 1;
  if (fabs (along - fp_item_param (opening, "along")) > SAME)
    param[fp_kind_param_index (init.kind, "along")] = along;
  init.param = param;
  return fp_item_new (&init, error);
}

/* Appends the openings of the wall as they are in its new sides. */
static gboolean
add_openings (const FpProject *project, const FpPlaced *wall, const FpPoint *corner, guint n, GPtrArray *items,
              GError **error)
{
  g_autofree FpPoint *before = corners_of (wall, 0);

  for (guint i = 0; i < fp_project_n_survey (project); i++)
    {
      const FpItem *opening = fp_project_survey (project, i);
      InSide in;
      FpItem *item;

      if ((fp_item_kind (opening)->flags & FP_KIND_IN_WALL) == 0
          || g_strcmp0 (fp_item_on (opening), fp_item_id (wall->item)) != 0)
        continue;
      in = nearest_side (corner, n, n_sides (wall, n), middle_of_opening (opening, before, wall->form.n_corners));
      item = opening_in (opening, &in, error);
      if (item == NULL)
        return FALSE;
      g_ptr_array_add (items, item);
    }
  return TRUE;
}

/* --- edits ---------------------------------------------------------------------- */

static void
release (gpointer item)
{
  fp_item_unref (item);
}

FpProject *
fp_corners_set (const FpScene *scene, const char *id, const FpPoint *corner, guint n, GError **error)
{
  const FpPlaced *placed = find_drawn (scene, id, error);
  g_autoptr (GPtrArray) items = g_ptr_array_new_with_free_func (release);
  g_autofree FpPoint *local = g_new (FpPoint, MAX (n, 1));
  FpItemInit init;
  FpItem *item;

  if (placed == NULL)
    return NULL;
  for (guint i = 0; i < n; i++)
    local[i] = fp_place_unpoint (&placed->place, corner[i]);
  fp_item_init_from (placed->item, &init);
  init.corner = local;
  init.n_corners = n;
  item = fp_item_new (&init, error);
  if (item == NULL)
    return NULL;
  g_ptr_array_add (items, item);
  if (!add_openings (fp_scene_project (scene), placed, corner, n, items, error))
    return NULL;
  return fp_project_with_survey_items (fp_scene_project (scene), (FpItem *const *) items->pdata, items->len, error);
}

int
fp_corner_side (const FpScene *scene, const char *id, FpPoint at, double reach)
{
  const FpPlaced *placed = find_drawn (scene, id, NULL);
  g_autofree FpPoint *corner = placed != NULL ? corners_of (placed, 0) : NULL;
  const guint n = placed != NULL ? placed->form.n_corners : 0;
  InSide in;

  if (placed == NULL)
    return -1;
  in = nearest_side (corner, n, n_sides (placed, n), at);
  return fp_segment_distance (corner[in.side], corner[(in.side + 1) % n], at) <= reach ? (int) in.side : -1;
}

FpPoint
fp_corner_on_side (const FpScene *scene, const char *id, guint side, FpPoint at)
{
  const FpPlaced *placed = find_drawn (scene, id, NULL);
  g_autofree FpPoint *corner = placed != NULL ? corners_of (placed, 0) : NULL;
  const guint n = placed != NULL ? placed->form.n_corners : 0;
  FpPoint a, b;
  double length, t;

  g_return_val_if_fail (side < n, at);
  a = corner[side];
  b = corner[(side + 1) % n];
  length = hypot (b.x - a.x, b.y - a.y);
  if (length <= 0)
    return a;
  t = ((at.x - a.x) * (b.x - a.x) + (at.y - a.y) * (b.y - a.y)) / length;
  t = fmin (fmax (round (t), 0), length) / length;
  return (FpPoint) { a.x + t * (b.x - a.x), a.y + t * (b.y - a.y) };
}

FpProject *
fp_corner_add (const FpScene *scene, const char *id, guint side, FpPoint at, GError **error)
{
  const FpPlaced *placed = find_drawn (scene, id, error);
  g_autofree FpPoint *corner = placed != NULL ? corners_of (placed, 1) : NULL;
  const guint n = placed != NULL ? placed->form.n_corners : 0;

  if (placed == NULL)
    return NULL;
  g_return_val_if_fail (side < n, NULL);
  memmove (&corner[side + 2], &corner[side + 1], (n - side - 1) * sizeof (FpPoint));
  corner[side + 1] = at;
  return fp_corners_set (scene, id, corner, n + 1, error);
}

FpProject *
fp_corner_remove (const FpScene *scene, const char *id, guint at, GError **error)
{
  const FpPlaced *placed = find_drawn (scene, id, error);
  g_autofree FpPoint *corner = placed != NULL ? corners_of (placed, 0) : NULL;
  const guint n = placed != NULL ? placed->form.n_corners : 0;

  if (placed == NULL)
    return NULL;
  g_return_val_if_fail (at < n, NULL);
  memmove (&corner[at], &corner[at + 1], (n - at - 1) * sizeof (FpPoint));
  return fp_corners_set (scene, id, corner, n - 1, error);
}
