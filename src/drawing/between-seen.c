/* SPDX-License-Identifier: GPL-3.0-or-later */
/* between-seen.c - width and depth of the room as a section shows them: none is told that lies behind the viewer, or behind
 * a wall that is cut; of the room that is cut its own is told instead */
#include "between-private.h"

#include <math.h>

/* Faces that lie no farther apart are one. */
#define EQUAL 1.0

/* Where a view is cut, along what it looks along, and which way that is. */
typedef struct { FpViewId view; double at, way; } Plane;

static Plane
plane_of (const FpBetweenSearch *s, FpViewId view)
{
  const FpCut *cut = &s->cuts[view];
  const double at = cut->placed ? cut->at : view == FP_VIEW_ELEVATION ? fp_elevation_plane (s->scene) : 0;

  return (Plane) { view, at, cut->turned ? -1 : 1 };
}

/* Whether no wall stands between the cut and the end of a measure, which lies through @from to @to along the way. */
static gboolean
is_end_seen (const FpBetweenSearch *s, const Plane *plane, FpVec3 end, double inwards, double from, double to)
{
  const gboolean along_y = plane->view == FP_VIEW_ELEVATION;
  const double off = CLAMP (plane->at, from, to) - plane->at;
  FpVec3 at = { end.x, end.y, end.z + FP_REACH_HEIGHT };
  double met;

  /* What lies this side of the cut is cut away. */
  if (off * plane->way < 0)
    return FALSE;
  *(along_y ? &at.x : &at.y) += inwards;
  *(along_y ? &at.y : &at.x) = plane->at;
  met = fp_between_reach (s, at, along_y ? (FpVec3) { 0, plane->way, 0 } : (FpVec3) { plane->way, 0, 0 });
  return !(met < fabs (off) - EQUAL);
}

/* Which ends of a measure lie at a wall. */
enum { FIRST_AT_WALL = 1, LAST_AT_WALL = 2 };

static gboolean
is_measure_seen (const FpBetweenSearch *s, const Plane *plane, const FpBetween *one, guint at_wall)
{
  const double from = MIN (one->slide[0], one->slide[1]), to = MAX (one->slide[0], one->slide[1]);
  const FpVec3 d = fp_vec3_sub (one->spec.b, one->spec.a);
  const double inwards = copysign (2 * EQUAL, plane->view == FP_VIEW_ELEVATION ? d.x : d.y);

  return (!(at_wall & FIRST_AT_WALL) || is_end_seen (s, plane, one->spec.a, inwards, from, to))
         && (!(at_wall & LAST_AT_WALL) || is_end_seen (s, plane, one->spec.b, -inwards, from, to));
}

/* Between faces of the room that is cut itself, in that view alone. */
static void
add_of_cut (const FpBetweenSearch *s, const Plane *plane, const FpPlaced *of, FpVec3 a, FpVec3 b, guint rank)
{
  const FpBetween one = { .spec = { -1, a, b, 1u << plane->view, 1, rank }, .item = g_intern_string (fp_item_id (of->item)),
                          .not_in = ~(1u << plane->view), .slide = { plane->at, plane->at } };

  if (fp_vec3_length (fp_vec3_sub (b, a)) >= 1)
    g_array_append_val (s->out, one);
}

static void
add_width_of_cut (const FpBetweenSearch *s, const Plane *plane, const FpPlaced *about, double level)
{
  const FpVec3 at = { (about->plan.x0 + about->plan.x1) / 2, plane->at, level + FP_REACH_HEIGHT };
  const double lo = fp_between_reach (s, at, (FpVec3) { -1, 0, 0 }), hi = fp_between_reach (s, at, (FpVec3) { 1, 0, 0 });

  if (!isnan (lo) && !isnan (hi))
    add_of_cut (s, plane, about, (FpVec3) { at.x - lo, at.y, level }, (FpVec3) { at.x + hi, at.y, level }, 1);
}

static void
add_depth_of_cut (const FpBetweenSearch *s, const Plane *plane, const FpPlaced *rail)
{
  const FpVec3 at = { plane->at, fp_between_rail_face (rail, TRUE), rail->level + FP_REACH_HEIGHT };
  const double ahead = fp_between_reach (s, at, (FpVec3) { 0, 1, 0 });

  if (!isnan (ahead) && at.x > rail->plan.x0 && at.x < rail->plan.x1)
    add_of_cut (s, plane, rail, (FpVec3) { at.x, at.y, rail->level }, (FpVec3) { at.x, at.y + ahead, rail->level }, 2);
}

/* Of the measures that were added since there were @before.  FALSE where one is hidden. */
static gboolean
see (const FpBetweenSearch *s, const Plane *plane, guint before, guint at_wall)
{
  gboolean all = TRUE;

  for (guint i = before; i < s->out->len; i++)
    {
      FpBetween *one = &g_array_index (s->out, FpBetween, i);

      if (is_measure_seen (s, plane, one, at_wall))
        continue;
      one->not_in |= 1u << plane->view;
      all = FALSE;
    }
  return all;
}

void
fp_between_see_width (const FpBetweenSearch *s, guint since, const FpPlaced *about)
{
  const Plane plane = plane_of (s, FP_VIEW_ELEVATION);

  /* Where one has cut is what one wants to know of. */
  if (!see (s, &plane, since, FIRST_AT_WALL | LAST_AT_WALL) || s->cuts[FP_VIEW_ELEVATION].placed)
    add_width_of_cut (s, &plane, about, about->level);
}

void
fp_between_see_depth (const FpBetweenSearch *s, guint since)
{
  const Plane plane = plane_of (s, FP_VIEW_SECTION);

  if (!see (s, &plane, since, LAST_AT_WALL))
    add_depth_of_cut (s, &plane, s->rail);
}
