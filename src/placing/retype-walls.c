/* SPDX-License-Identifier: GPL-3.0-or-later */
/* retype-walls.c - the width or depth of the building, typed over: faces of walls move with all that touches them */
#include "footpace/retype.h"

#include "footpace/handles.h"
#include "footpace/setting-out.h"

#include <math.h>
#include <string.h>

#define TOUCHES 1.5 /* mm: nearer than this things touch                        */
/* mm: what is set along a wall keeps its gap to it, for the base or the heating, when the wall is set elsewhere
 * (design judgement) */
#define AT_THE_WALL 250.0
#define SYMMETRICAL 5.0

/* A face of the building, square to x or y, and how far it goes. */
typedef struct
{
  gboolean along_y;  /* it lies at a y, and moves along y; else likewise x      */
  double   at, by;
} Face;

static double
along (const Face *f, FpPoint p)
{
  return f->along_y ? p.y : p.x;
}

static double
across (const Face *f, FpPoint p)
{
  return f->along_y ? p.x : p.y;
}

static FpPoint *
corners_of (const FpPlaced *placed)
{
  FpPoint *corner = g_new (FpPoint, placed->form.n_corners);

  for (guint i = 0; i < placed->form.n_corners; i++)
    corner[i] = fp_place_point (&placed->place, placed->form.corner[i]);
  return corner;
}

static gboolean
is_wall (const FpPlaced *placed)
{
  return !placed->ghost && placed->form.n_corners > 1 && fp_item_kind (placed->item)->role == FP_ROLE_WALL;
}

/* Whether a side of the wall lies in the face, whose inner side is told by its corners and whose outer one is a
 * thickness away. */
static gboolean
lies_in (const Face *f, FpPoint a, FpPoint b, double off)
{
  return fabs (along (f, a) - f->at) <= off + TOUCHES && fabs (along (f, a) - f->at) >= off - TOUCHES
         && fabs (along (f, a) - along (f, b)) < TOUCHES;
}

typedef struct { GArray *corner; double lo, hi; } Moved; /* FpPoint, before; extent across */

static void
note_sides (const Face *f, const FpPlaced *wall, double off, Moved *moved)
{
  g_autofree FpPoint *corner = corners_of (wall);
  const guint n = wall->form.n_corners, sides = fp_item_param (wall->item, "closed") != 0 ? n : n - 1;

  for (guint i = 0; i < sides; i++)
    {
      const FpPoint a = corner[i], b = corner[(i + 1) % n];

      if (!lies_in (f, a, b, off))
        continue;
      g_array_append_val (moved->corner, a);
      g_array_append_val (moved->corner, b);
      moved->lo = fmin (moved->lo, fmin (across (f, a), across (f, b)));
      moved->hi = fmax (moved->hi, fmax (across (f, a), across (f, b)));
    }
}

static gboolean
is_among (const GArray *corners, FpPoint p)
{
  for (guint i = 0; i < corners->len; i++)
    {
      const FpPoint q = g_array_index (corners, FpPoint, i);

      if (hypot (p.x - q.x, p.y - q.y) < TOUCHES)
        return TRUE;
    }
  return FALSE;
}

/* A corner of anything that is one of the moved, or lies on the face between them. */
static gboolean
goes_along (const Face *f, const Moved *moved, FpPoint p, double face)
{
  return is_among (moved->corner, p)
         || (fabs (along (f, p) - face) < TOUCHES && across (f, p) > moved->lo - TOUCHES && across (f, p) < moved->hi + TOUCHES);
}

static FpProject *
move_corners (const Face *f, const FpScene *scene, const FpPlaced *placed, const Moved *moved, double face, GError **error)
{
  g_autofree FpPoint *corner = corners_of (placed);
  gboolean any = FALSE;

  for (guint i = 0; i < placed->form.n_corners; i++)
    if (goes_along (f, moved, corner[i], face))
      {
        *(f->along_y ? &corner[i].y : &corner[i].x) += f->by;
        any = TRUE;
      }
  return any ? fp_corners_set (scene, fp_item_id (placed->item), corner, placed->form.n_corners, error)
         : fp_project_ref (fp_scene_project (scene));
}

/* A furnishing on the floor with its back or end at the face. */
static gboolean
leans_on (const Face *f, const Moved *moved, const FpPlaced *placed, double face)
{
  const FpBox *plan = &placed->plan;
  const double lo = f->along_y ? plan->x0 : plan->y0, hi = f->along_y ? plan->x1 : plan->y1;
  const double near = f->along_y ? plan->y0 : plan->x0, far = f->along_y ? plan->y1 : plan->x1;
  const guint flags = fp_item_kind (placed->item)->flags;

  if (placed->ghost || (flags & FP_KIND_SURVEY) != 0 || (placed->support >= 0 && (flags & FP_KIND_ON_FLOOR) == 0))
    return FALSE;
  return (fabs (near - face) < AT_THE_WALL || fabs (far - face) < AT_THE_WALL) && lo < moved->hi && hi > moved->lo;
}

static gboolean
has_corner_along (const Face *f, const Moved *moved, const FpPlaced *placed, double face)
{
  g_autofree FpPoint *corner = corners_of (placed);

  for (guint i = 0; i < placed->form.n_corners; i++)
    if (goes_along (f, moved, corner[i], face))
      return TRUE;
  return FALSE;
}

/* Of most things nothing is asked: each that moves takes a scene of its own. */
static gboolean
is_concerned (const Face *f, const Moved *moved, const FpPlaced *placed, double face)
{
  return !placed->ghost && (has_corner_along (f, moved, placed, face) || leans_on (f, moved, placed, face));
}

static FpProject *
move_one (const Face *f, const FpScene *scene, const FpPlaced *placed, const Moved *moved, double face, GError **error)
{
  if (placed->form.n_corners > 0 && !placed->ghost)
    return move_corners (f, scene, placed, moved, face, error);
  if (leans_on (f, moved, placed, face))
    return fp_set_out_move (scene, fp_item_id (placed->item), f->along_y ? (FpVec3) { 0, f->by, 0 } : (FpVec3) { f->by, 0, 0 },
                            error);
  return fp_project_ref (fp_scene_project (scene));
}

/* Walls, floors, and what leans on them, one after another, each found where it was before. */
static FpProject *
move_face (const Face *f, const FpScene *scene, GError **error)
{
  g_autoptr (GArray) corners = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  Moved moved = { corners, G_MAXDOUBLE, -G_MAXDOUBLE };
  FpProject *project = fp_project_ref (fp_scene_project (scene));
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);
  double face;

  for (guint i = 0; i < n; i++)
    if (is_wall (&placed[i]))
      note_sides (f, &placed[i], 0, &moved);
  for (guint i = 0; corners->len == 0 && i < n; i++)
    if (is_wall (&placed[i]))
      note_sides (f, &placed[i], fp_item_param (placed[i].item, "thickness"), &moved);
  if (corners->len == 0)
    {
      g_clear_pointer (&project, fp_project_unref);
      g_set_error_literal (error, FP_ERROR, FP_ERROR_INVALID, "No wall lies square to this measure: pull its corners instead.");
      return NULL;
    }
  face = along (f, g_array_index (corners, FpPoint, 0));
  for (guint i = 0; project != NULL && i < n; i++)
    if (is_concerned (f, &moved, &placed[i], face))
      {
        g_autoptr (FpProject) before = project;
        g_autoptr (FpScene) now = fp_scene_new (before, fp_scene_alternative (scene));
        const int at = fp_scene_find (now, fp_item_id (placed[i].item));

        project = at >= 0 ? move_one (f, now, &fp_scene_placed (now, NULL)[at], &moved, face, error)
                  : fp_project_ref (before);
      }
  return project;
}

FpProject *
fp_retype_walls (const FpScene *scene, FpVec3 a, FpVec3 b, double value, GError **error)
{
  const gboolean along_y = fabs (b.y - a.y) > fabs (b.x - a.x);
  const double lo = along_y ? fmin (a.y, b.y) : fmin (a.x, b.x), hi = along_y ? fmax (a.y, b.y) : fmax (a.x, b.x);
  const double by = value - (hi - lo);
  const gboolean both = !along_y && fabs (lo + hi) / 2 < SYMMETRICAL;
  /* Along the church the west end gives way, where the people are; across it both, or the Epistle side. */
  const Face first = { along_y, along_y ? lo : hi, along_y ? -by : both ? by / 2 : by };
  const Face second = { along_y, lo, -by / 2 };
  FpProject *project = move_face (&first, scene, error);

  if (project != NULL && both)
    {
      g_autoptr (FpProject) before = project;
      g_autoptr (FpScene) now = fp_scene_new (before, fp_scene_alternative (scene));

      project = move_face (&second, now, error);
    }
  return project;
}
