/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-pick.c - what lies under a point of a view when no line of the drawing does
 *
 * A drawing holds edges; people click on faces.  So the scene is asked which
 * thing shows its face there: the highest on the plan, the nearest to the
 * people in the elevation, the nearest to the axis in the section.
 */
#include "board-view-private.h"

#include <math.h>

/* Floors and walls are the ground of every view: a click on them is a click on the paper. */
static gboolean
is_ground (const FpPlaced *placed)
{
  switch (fp_item_kind (placed->item)->role)
    {
    case FP_ROLE_WALL:
    case FP_ROLE_OPENING:
    case FP_ROLE_FLOOR:
    case FP_ROLE_GALLERY:
    case FP_ROLE_STANDING_ROOM:
      return TRUE;
    default:
      return placed->ghost;
    }
}

static gboolean
covers_on_plan (const FpSolid *s, FpPoint at)
{
  switch (s->shape)
    {
    case FP_SOLID_PRISM:     return fp_outline_contains (s->outline, s->n_outline, at);
    case FP_SOLID_ROUND:     return hypot (at.x - s->cx, at.y - s->cy) <= MAX (s->r0, s->r1);
    case FP_SOLID_ELLIPSOID: return hypot (at.x - s->cx, at.y - s->cy) <= MAX (s->rx, s->ry);
    }
  return FALSE;
}

/* Upright views take the box of the solid: faces of things that stand straight. */
static gboolean
covers (const FpSolid *s, const FpViewLayout *layout, FpViewId view, FpPoint at)
{
  FpBox3 box = fp_solid_box (s);
  FpPoint a = fp_layout_point (layout, view, box.lo), b = fp_layout_point (layout, view, box.hi);

  if (at.x < MIN (a.x, b.x) || at.x > MAX (a.x, b.x) || at.y < MIN (a.y, b.y) || at.y > MAX (a.y, b.y))
    return FALSE;
  return view != FP_VIEW_PLAN || covers_on_plan (s, at);
}

/* The greater the nearer to the eye. */
static double
nearness (const FpSolid *s, FpViewId view, gboolean turned)
{
  FpBox3 box = fp_solid_box (s);

  switch (view)
    {
    case FP_VIEW_PLAN:      return box.hi.z;
    case FP_VIEW_ELEVATION: return turned ? box.hi.y : -box.lo.y;
    case FP_VIEW_SECTION:   return -fabs (box.lo.x + box.hi.x);
    case FP_N_VIEWS:        break;
    }
  return 0.0;
}

/* On a plan one looks under what hangs overhead, and takes hold of a table through the cloth on it. */
static gboolean
is_looked_past (const FpPlaced *owner, const FpSolid *s, FpViewId view)
{
  const double overhead = 2000; /* mm over the floor, design judgement */
  const FpBox3 box = fp_solid_box (s);

  return view == FP_VIEW_PLAN && ((s->part == FP_PART_CLOTH && box.hi.z - box.lo.z < 10)
                                  || ((fp_item_kind (owner->item)->flags & FP_KIND_CUT) != 0 && box.lo.z > owner->floor + overhead));
}

/* What a view does not draw (pews before the elevation) cannot be clicked in it. */
gboolean
fp_board_view_is_drawn (FpBoardView *self, const char *id, FpViewId view)
{
  const char *item = g_intern_string (id);
  guint n;
  const FpMark *mark = fp_drawing_marks (self->drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].item == item && mark[i].view == (int) view && mark[i].dimension == 0)
      return TRUE;
  return FALSE;
}

int
fp_board_view_view_at (FpBoardView *self, FpPoint paper)
{
  for (guint v = 0; v < FP_N_VIEWS; v++)
    {
      const FpBox *f = &self->layout.frame[v];

      if (paper.x >= f->x0 && paper.x <= f->x1 && paper.y >= f->y0 && paper.y <= f->y1)
        return (int) v;
    }
  return -1;
}

/* Wheelchair places have nothing that stands there: their floor is clicked. */
static const FpPlaced *
clear_floor_at (const FpScene *scene, FpPoint at)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    {
      const FpBox *floor = &placed[i].extent.plan;
      const FpPoint p = fp_place_unpoint (&placed[i].place, at);
      if (!placed[i].ghost && fp_item_kind (placed[i].item)->role == FP_ROLE_WHEELCHAIR
          && p.x >= floor->x0 && p.x <= floor->x1 && p.y >= floor->y0 && p.y <= floor->y1)
        return &placed[i];
    }
  return NULL;
}

const FpPlaced *
fp_board_view_face_at (FpBoardView *self, FpPoint paper, int *view)
{
  const FpScene *scene = fp_projection_scene (self->projection[0]);
  const FpPlaced *placed = fp_scene_placed (scene, NULL), *best = NULL;
  guint n;
  const FpSolid *solid = fp_scene_solids (scene, &n);
  double nearest = -G_MAXDOUBLE;
  FpPoint at;

  *view = fp_board_view_view_at (self, paper);
  if (*view < 0)
    return NULL;
  at = fp_view_from_paper (&self->layout.view[*view], paper);
  for (guint i = 0; i < n; i++)
    {
      const FpPlaced *owner = &placed[solid[i].owner];
      double near = nearness (&solid[i], (FpViewId) *view, fp_board_view_is_turned (self, (FpViewId) *view));

      if (near <= nearest || is_ground (owner) || is_looked_past (owner, &solid[i], (FpViewId) *view) || !covers (&solid[i], &self->layout.view[*view], (FpViewId) *view, at)
          || !fp_board_view_is_drawn (self, fp_item_id (owner->item), (FpViewId) *view))
        continue;
      nearest = near;
      best = owner;
    }
  return best != NULL || *view != FP_VIEW_PLAN ? best : clear_floor_at (scene, at);
}
