/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pointed.h"

#include <math.h>

#define SAME 0.5 /* mm: a line ends at a corner of a solid                    */

/* What a view shows, and what it leaves open. */
static void
know_what_is_shown (FpPointed *self)
{
  const double side = self->turned ? -self->at.x : self->at.x;

  switch (self->view)
    {
    case FP_VIEW_PLAN:
      self->space = (FpVec3) { self->at.x, self->at.y, 0.0 };
      self->known = FP_KNOWN_X | FP_KNOWN_Y;
      break;
    case FP_VIEW_ELEVATION:
      self->space = (FpVec3) { side, 0.0, self->at.y };
      self->known = FP_KNOWN_X | FP_KNOWN_Z;
      break;
    case FP_VIEW_SECTION:
      self->space = (FpVec3) { 0.0, -side, self->at.y };
      self->known = FP_KNOWN_Y | FP_KNOWN_Z;
      break;
    case FP_N_VIEWS:
      break;
    }
}

FpPointed
fp_pointed_free (FpViewId view, gboolean turned, FpPoint at)
{
  FpPointed self = { .view = view, .turned = turned, .at = at, .sort = FP_POINTED_FREE };

  know_what_is_shown (&self);
  return self;
}

static void
rest_on (FpPointed *self, FpPointedSort sort, FpPoint at, const char *id)
{
  self->at = at;
  self->sort = sort;
  self->id = id != NULL ? g_intern_string (id) : NULL;
  know_what_is_shown (self);
}

static const char *
owner_id (FpProjection *projection, guint owner)
{
  return fp_item_id (fp_scene_placed (fp_projection_scene (projection), NULL)[owner].item);
}

/* --- corners ---------------------------------------------------------------- */

static double
apart (FpPoint a, FpPoint b)
{
  return hypot (a.x - b.x, a.y - b.y);
}

/* Of two corners that the view shows at one point, the one that is seen. */
static gboolean
is_before (const FpPointed *self, FpVec3 a, FpVec3 b)
{
  switch (self->view)
    {
    case FP_VIEW_PLAN:      return a.z > b.z;
    case FP_VIEW_ELEVATION: return self->turned ? a.y > b.y : a.y < b.y;
    case FP_VIEW_SECTION:
    case FP_N_VIEWS:
    default:                return fabs (a.x) < fabs (b.x);
    }
}

static FpPoint
seen (FpViewId view, gboolean turned, FpVec3 at)
{
  const FpPoint p = fp_view_point (view, at);

  return turned ? (FpPoint) { -p.x, p.y } : p;
}

static void
offer_corner (FpPointed *self, FpVec3 corner)
{
  if (apart (seen (self->view, self->turned, corner), self->at) > SAME
      || (self->known == 7 && !is_before (self, corner, self->space)))
    return;
  self->space = corner;
  self->known = FP_KNOWN_X | FP_KNOWN_Y | FP_KNOWN_Z;
}

/* Which corner of its solids it is: the third coordinate. */
static void
know_the_third (FpPointed *self, const FpScene *scene, const FpPlaced *placed)
{
  const FpSolid *solid = fp_scene_solids (scene, NULL) + placed->first_solid;

  for (guint i = 0; i < placed->n_solids; i++)
    for (guint c = 0; solid[i].shape == FP_SOLID_PRISM && c < solid[i].n_outline; c++)
      {
        const FpPoint p = solid[i].outline[c];

        offer_corner (self, (FpVec3) { p.x, p.y, solid[i].z0 + solid[i].bx * p.x + solid[i].by * p.y });
        offer_corner (self, (FpVec3) { p.x, p.y, solid[i].z1 + solid[i].gx * p.x + solid[i].gy * p.y });
      }
}

/* What the end of a line rests on: a corner of a solid, or else where one edge goes behind another, or a symbol. */
static FpPointed
end_of (const FpPointed *self, FpProjection *projection, const FpProjectedLine *line, FpPoint end)
{
  const FpScene *scene = fp_projection_scene (projection);
  FpPointed there = *self;

  rest_on (&there, FP_POINTED_EDGE, end, owner_id (projection, line->owner));
  know_the_third (&there, scene, &fp_scene_placed (scene, NULL)[line->owner]);
  if (there.known == 7)
    there.sort = FP_POINTED_CORNER;
  return there;
}

/* A corner before any other end of a line; of equals the nearest. */
static gboolean
is_better (const FpPointed *there, const FpPointed *best, FpPoint at)
{
  if (best->sort == FP_POINTED_FREE || there->sort != best->sort)
    return best->sort != FP_POINTED_CORNER;
  return apart (there->at, at) < apart (best->at, at);
}

static gboolean
rest_on_corner (FpPointed *self, FpProjection *projection, double reach)
{
  guint n;
  const FpProjectedLine *line = fp_projection_lines (projection, &n);
  FpPointed best = *self;

  for (guint i = 0; i < n; i++)
    for (guint end = 0; end < 2; end++)
      {
        const FpPoint p = end == 0 ? line[i].a : line[i].b;
        FpPointed there;

        if (line[i].pen == FP_PEN_HATCH || apart (p, self->at) > reach)
          continue;
        there = end_of (self, projection, &line[i], p);
        if (is_better (&there, &best, self->at))
          best = there;
      }
  if (best.sort == FP_POINTED_FREE)
    return FALSE;
  *self = best;
  return TRUE;
}

/* --- edges, middles, the axis ------------------------------------------------- */

static gboolean
is_alongside (const FpScene *scene, const FpCatch *found, FpPoint at, double reach)
{
  const int i = found->id != NULL ? fp_scene_find (scene, found->id) : -1;
  const FpBox *plan = i >= 0 ? &fp_scene_placed (scene, NULL)[i].plan : NULL;

  if (plan == NULL)
    return FALSE;
  return found->along ? at.x >= plan->x0 - reach && at.x <= plan->x1 + reach
         : at.y >= plan->y0 - reach && at.y <= plan->y1 + reach;
}

static FpPointedSort
sort_of (const FpScene *scene, const FpCatch *found, FpPoint at, double reach)
{
  if (found->sort == FP_CATCH_AXIS)
    return FP_POINTED_AXIS;
  if (found->sort == FP_CATCH_EDGE)
    return FP_POINTED_EDGE;
  if (found->sort == FP_CATCH_CENTRE && is_alongside (scene, found, at, reach))
    return FP_POINTED_MIDDLE;
  return FP_POINTED_FREE;
}

static gboolean
rest_on_plan (FpPointed *self, const FpScene *scene, const FpCatches *catches, double reach)
{
  FpPoint at = self->at, to = at;
  FpCatch x, y;
  FpPointedSort sx, sy;

  fp_catches_find_point (catches, &to, reach, &x, &y);
  sx = sort_of (scene, &x, at, reach);
  sy = sort_of (scene, &y, at, reach);
  if (sx == FP_POINTED_FREE && sy == FP_POINTED_FREE)
    return FALSE;
  if (sx != FP_POINTED_FREE)
    at.x = to.x;
  if (sy != FP_POINTED_FREE)
    at.y = to.y;
  rest_on (self, MAX (sx, sy), at, sx >= sy ? x.id : y.id);
  return TRUE;
}

static FpPoint
nearest_on (const FpProjectedLine *line, FpPoint at)
{
  const double dx = line->b.x - line->a.x, dy = line->b.y - line->a.y, length2 = dx * dx + dy * dy;
  const double t = length2 > 0.0 ? ((at.x - line->a.x) * dx + (at.y - line->a.y) * dy) / length2 : 0.0;
  const double u = CLAMP (t, 0.0, 1.0);

  return (FpPoint) { line->a.x + u * dx, line->a.y + u * dy };
}

static gboolean
rest_on_edge (FpPointed *self, FpProjection *projection, double reach)
{
  guint n;
  const FpProjectedLine *line = fp_projection_lines (projection, &n), *best = NULL;
  FpPoint nearest = { 0.0, 0.0 };

  for (guint i = 0; i < n; i++)
    {
      const FpPoint p = nearest_on (&line[i], self->at);

      if (line[i].pen == FP_PEN_HATCH || apart (p, self->at) > reach
          || (best != NULL && apart (p, self->at) >= apart (nearest, self->at)))
        continue;
      best = &line[i];
      nearest = p;
    }
  if (best == NULL)
    return FALSE;
  rest_on (self, FP_POINTED_EDGE, nearest, owner_id (projection, best->owner));
  return TRUE;
}

/* In the elevation the axis is upright; along a level edge one comes to rest on it, but no other edge is left for it. */
static void
rest_on_axis (FpPointed *self, FpPoint from, double reach)
{
  if (self->view != FP_VIEW_ELEVATION || fabs (from.x) > reach || fabs (self->at.x - from.x) > 1e-6)
    return;
  rest_on (self, MAX (self->sort, FP_POINTED_AXIS), (FpPoint) { 0.0, self->at.y }, self->id);
}

FpPointed
fp_pointed_find (FpProjection *projection, const FpCatches *catches, FpPoint at, double reach)
{
  FpPointed self = fp_pointed_free (fp_projection_view (projection), fp_projection_cut (projection).turned, at);

  if (rest_on_corner (&self, projection, reach))
    return self;
  if (self.view == FP_VIEW_PLAN && catches != NULL
      && rest_on_plan (&self, fp_projection_scene (projection), catches, reach))
    return self;
  rest_on_edge (&self, projection, reach);
  rest_on_axis (&self, at, reach);
  return self;
}

/* --- in another scene ----------------------------------------------------------- */

static const FpPlaced *
placed_of (const FpScene *scene, const char *id)
{
  const int i = fp_scene_find (scene, id);

  return i >= 0 ? &fp_scene_placed (scene, NULL)[i] : NULL;
}

/* Where a point of a thing is when the thing stands elsewhere; what is not known of it stays out of account. */
static FpVec3
carried (const FpPlaced *was, const FpPlaced *is, FpVec3 space)
{
  const FpPoint own = fp_place_unpoint (&was->place, (FpPoint) { space.x, space.y });
  const FpPoint there = fp_place_point (&is->place, own);

  return (FpVec3) { there.x, there.y, space.z + is->level - was->level };
}

static gboolean
is_as_it_was (const FpPlaced *was, const FpPlaced *is)
{
  return was->level == is->level && was->extent.height == is->extent.height
         && was->place.x == is->place.x && was->place.y == is->place.y && was->place.turn == is->place.turn
         && was->plan.x0 == is->plan.x0 && was->plan.y0 == is->plan.y0 && was->plan.x1 == is->plan.x1
         && was->plan.y1 == is->plan.y1;
}

void
fp_pointed_follow (FpPointed *self, const FpScene *was, FpProjection *projection, const FpCatches *catches)
{
  const FpPlaced *before = self->id != NULL ? placed_of (was, self->id) : NULL;
  const FpPlaced *after = before != NULL ? placed_of (fp_projection_scene (projection), self->id) : NULL;
  FpPointed there;
  FpVec3 space;

  if (self->id == NULL || (after != NULL && is_as_it_was (before, after)))
    return;
  there = fp_pointed_free (self->view, self->turned, self->at);
  if (after != NULL)
    {
      space = carried (before, after, self->space);
      there = fp_pointed_find (projection, catches, seen (self->view, self->turned, space), SAME);
      if (there.sort != self->sort)
        there = fp_pointed_free (self->view, self->turned, self->at);
      else
        fp_pointed_hold (&there, space, self->known & ~there.known);
    }
  *self = there;
}

/* --- in several views ----------------------------------------------------------- */

static guint
shown_in (FpViewId view)
{
  return view == FP_VIEW_PLAN ? FP_KNOWN_X | FP_KNOWN_Y : view == FP_VIEW_ELEVATION ? FP_KNOWN_X | FP_KNOWN_Z
         : FP_KNOWN_Y | FP_KNOWN_Z;
}

void
fp_pointed_hold (FpPointed *self, FpVec3 space, guint known)
{
  FpPoint at;

  if ((known & FP_KNOWN_X) != 0)
    self->space.x = space.x;
  if ((known & FP_KNOWN_Y) != 0)
    self->space.y = space.y;
  if ((known & FP_KNOWN_Z) != 0)
    self->space.z = space.z;
  self->known |= known;
  at = seen (self->view, self->turned, self->space);
  /* It rests on nothing any more where it had to give way. */
  if (apart (at, self->at) > SAME)
    {
      self->sort = FP_POINTED_FREE;
      self->id = NULL;
    }
  self->at = at;
}

gboolean
fp_pointed_in (const FpPointed *self, FpViewId view, gboolean turned, FpPoint *at)
{
  *at = seen (view, turned, self->space);
  return (shown_in (view) & ~self->known) == 0;
}

char *
fp_pointed_tells (const FpPointed *self, const FpScene *scene)
{
  const int i = self->id != NULL ? fp_scene_find (scene, self->id) : -1;
  const char *name = i >= 0 ? fp_item_name (fp_scene_placed (scene, NULL)[i].item) : "something";

  switch (self->sort)
    {
    case FP_POINTED_AXIS:   return g_strdup ("on the axis");
    case FP_POINTED_MIDDLE: return g_strdup_printf ("middle of %s", name);
    case FP_POINTED_EDGE:   return g_strdup_printf ("edge of %s", name);
    case FP_POINTED_CORNER: return g_strdup_printf ("corner of %s", name);
    case FP_POINTED_FREE:
    default:             return g_strdup ("");
    }
}
