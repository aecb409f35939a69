/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/handles.h"

#include "footpace/setting-out.h"

#include <math.h>

#define PROBE   10.0 /* mm: by so much a parameter is changed to see what comes of it */
#define ON_AXIS 1.0  /* mm                                                      */

static const FpPlaced *
find (const FpScene *scene, const char *id)
{
  const int index = fp_scene_find (scene, id);

  return index >= 0 ? &fp_scene_placed (scene, NULL)[index] : NULL;
}

/* --- corners ------------------------------------------------------------------ */

static void
add_corners (GArray *out, const FpPlaced *placed)
{
  for (guint i = 0; i < placed->form.n_corners; i++)
    {
      const FpHandle handle = { .sort = FP_HANDLE_CORNER, .corner = i,
                                .at = fp_place_point (&placed->place, placed->form.corner[i]) };

      g_array_append_val (out, handle);
    }
}

static FpProject *
move_corner (const FpScene *scene, const char *id, guint at, FpVec3 by, GError **error)
{
  const FpPlaced *placed = find (scene, id);
  const guint n = placed->form.n_corners;
  g_autofree FpPoint *corner = g_new (FpPoint, n);

  for (guint i = 0; i < n; i++)
    corner[i] = fp_place_point (&placed->place, placed->form.corner[i]);
  corner[at].x += by.x;
  corner[at].y += by.y;
  return fp_corners_set (scene, id, corner, n, error);
}

/* --- sides --------------------------------------------------------------------- */

static FpPoint
direction (const FpPlaced *placed, FpPoint local)
{
  const FpPlace turn = { 0, 0, placed->place.turn };

  return fp_place_point (&turn, local);
}

static void
add_side (GArray *out, const FpPlaced *placed, const char *param, FpPoint way)
{
  const FpBox *plan = &placed->extent.plan;
  const FpPoint middle = { (plan->x0 + plan->x1) / 2, (plan->y0 + plan->y1) / 2 };
  const double half = way.x != 0 ? (plan->x1 - plan->x0) / 2 : (plan->y1 - plan->y0) / 2;
  const FpHandle handle = {
    .sort = FP_HANDLE_SIDE, .param = param, .way = direction (placed, way), .reach = 2 * half,
    .at = fp_place_point (&placed->place, (FpPoint) { middle.x + way.x * half, middle.y + way.y * half }),
  };

  g_array_append_val (out, handle);
}

/* Whether the plan grows by just as much as the parameter, and in which direction of its own. */
static gboolean
grows (const FpScene *scene, const char *id, const FpParam *param, double value, gboolean *across)
{
  const double by = value + PROBE <= param->max ? PROBE : -PROBE;
  g_autoptr (FpProject) next = fp_set_out_param (scene, id, param->id, value + by, NULL);
  g_autoptr (FpScene) then = next != NULL ? fp_scene_new (next, fp_scene_alternative (scene)) : NULL;
  const FpPlaced *before = find (scene, id), *after = then != NULL ? find (then, id) : NULL;
  const FpBox *p = &before->extent.plan, *q;
  double wider, deeper;

  if (after == NULL)
    return FALSE;
  q = &after->extent.plan;
  wider = (q->x1 - q->x0) - (p->x1 - p->x0);
  deeper = (q->y1 - q->y0) - (p->y1 - p->y0);
  *across = fabs (wider - by) < 0.01;
  return *across ? fabs (deeper) < 0.01 : fabs (deeper - by) < 0.01 && fabs (wider) < 0.01;
}

/* The measures of its plan that people know by these names. */
static void
add_sides (GArray *out, const FpScene *scene, const char *id, const FpPlaced *placed)
{
  static const char *const names[] = { "length", "width", "depth" };
  const FpKind *kind = fp_item_kind (placed->item);

  if ((kind->flags & (FP_KIND_IN_WALL | FP_KIND_LAID_ROUND)) != 0)
    return;
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      const int index = fp_kind_param_index (kind, names[i]);
      gboolean across;

      if (index < 0 || kind->params[index].type != FP_PARAM_LENGTH
          || !grows (scene, id, &kind->params[index], fp_item_params (placed->item)[index], &across))
        continue;
      add_side (out, placed, kind->params[index].id, across ? (FpPoint) { -1, 0 } : (FpPoint) { 0, -1 });
      add_side (out, placed, kind->params[index].id, across ? (FpPoint) { 1, 0 } : (FpPoint) { 0, 1 });
    }
}

/* Symmetry about the axis is what a draughtsman keeps before all else. */
static gboolean
is_symmetrical (const FpPlaced *placed, const FpHandle *handle)
{
  return fabs (handle->way.x) > 0.999 && fabs (placed->plan.x0 + placed->plan.x1) / 2 < ON_AXIS;
}

/* The middle of the side opposite to the handle's, or of the whole. */
static FpPoint
what_stays (const FpPlaced *placed, const FpHandle *handle, gboolean whole)
{
  const FpBox *plan = &placed->extent.plan;
  const FpPlace turn = { 0, 0, placed->place.turn };
  const FpPoint way = fp_place_unpoint (&turn, handle->way);
  const FpPoint middle = { (plan->x0 + plan->x1) / 2, (plan->y0 + plan->y1) / 2 };
  const double half = whole ? 0 : fabs (way.x) > 0.5 ? (plan->x1 - plan->x0) / 2 : (plan->y1 - plan->y0) / 2;

  return fp_place_point (&placed->place, (FpPoint) { middle.x - way.x * half, middle.y - way.y * half });
}

static FpProject *
pull_side (const FpScene *scene, const char *id, const FpHandle *handle, FpVec3 by, GError **error)
{
  const FpPlaced *placed = find (scene, id);
  const gboolean both = is_symmetrical (placed, handle);
  const double pulled = by.x * handle->way.x + by.y * handle->way.y;
  const double value = fp_item_param (placed->item, handle->param) + (both ? 2 * pulled : pulled);
  g_autoptr (FpProject) next = fp_set_out_param (scene, id, handle->param, value, error);
  g_autoptr (FpScene) then = next != NULL ? fp_scene_new (next, fp_scene_alternative (scene)) : NULL;
  const FpPlaced *now = then != NULL ? find (then, id) : NULL;
  FpPoint was, is;

  if (now == NULL)
    return NULL;
  was = what_stays (placed, handle, both);
  is = what_stays (now, handle, both);
  if (hypot (was.x - is.x, was.y - is.y) < 1e-6)
    return g_steal_pointer (&next);
  return fp_set_out_move (then, id, (FpVec3) { was.x - is.x, was.y - is.y, 0 }, error);
}

/* --- both ------------------------------------------------------------------------ */

GArray *
fp_handles_new (const FpScene *scene, const char *id)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpHandle));
  const FpPlaced *placed = find (scene, id);

  if (placed == NULL)
    return out;
  if (placed->form.n_corners > 0)
    add_corners (out, placed);
  else if (!fp_box_is_empty (&placed->extent.plan))
    add_sides (out, scene, id, placed);
  return out;
}

guint
fp_handle_ways (const FpHandle *self)
{
  if (self->sort == FP_HANDLE_CORNER)
    return 3;
  return fabs (self->way.x) > 0.999 ? 1 : fabs (self->way.y) > 0.999 ? 2 : 0;
}

char *
fp_handle_tells (const FpHandle *self, const FpScene *scene, const char *id)
{
  const FpPlaced *placed = find (scene, id);
  const FpKind *kind;

  if (placed == NULL)
    return g_strdup ("");
  kind = fp_item_kind (placed->item);
  return self->sort == FP_HANDLE_CORNER
           ? g_strdup_printf ("Corner %u of %s", self->corner + 1, fp_item_name (placed->item))
           : g_strdup_printf ("%s of %s", kind->params[fp_kind_param_index (kind, self->param)].label,
                              fp_item_name (placed->item));
}

FpProject *
fp_handle_move (const FpScene *scene, const char *id, const FpHandle *handle, FpVec3 by, GError **error)
{
  if (find (scene, id) == NULL)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "%s does not stand in this alternative", id);
      return NULL;
    }
  return handle->sort == FP_HANDLE_CORNER ? move_corner (scene, id, handle->corner, by, error)
         : pull_side (scene, id, handle, by, error);
}
