/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "regions.h"

#include "projection-private.h"

#include "footpace/view.h"

#include <math.h>

/* Walls that stand farther from the ministers' floor than this do not belong to the sanctuary. */
#define WALLS_WITHIN 1500.0

/* A wall that begins so little beyond the edge of what is shown belongs to it, unless it runs on beyond: then a line
 * across it is longer than this many times its thickness. */
#define WALL_NEAR  1000.0
#define WALL_ASKEW 1.5
#define PIER_THICK 2500.0
/* Walls are looked for along so many lines across what is shown. */
#define LOOKS 24u

/* Of the nave, so much is shown before the rail. */
#define NAVE_STRIP 1500.0
#define NAVE_EDGE   500.0

/* Floors that lie lower by more are not shown. */
#define NEAR_FOOT 1500.0

/* Walls are shown whole when they are at most this many times as high as what stands in the sanctuary. */
#define HIGH_WALLS 2.2

static gboolean
is_furnishing (const FpPlaced *p)
{
  return !p->ghost && (fp_item_kind (p->item)->flags & FP_KIND_SURVEY) == 0;
}

/* What of a solid lies beyond the plane, as one looks east, or turned. */
static FpBox3
beyond (const FpSolid *solid, double plane, gboolean turned)
{
  const FpBox3 whole = fp_solid_box (solid);
  FpBox3 box = FP_BOX3_EMPTY;

  if (turned ? whole.lo.y >= plane : whole.hi.y <= plane)
    return box;
  if ((turned ? whole.hi.y <= plane : whole.lo.y >= plane) || solid->shape != FP_SOLID_PRISM)
    return whole;
  for (guint i = 0; i < solid->n_outline; i++)
    {
      const FpPoint p = solid->outline[i], q = solid->outline[(i + 1) % solid->n_outline];
      if (turned ? p.y <= plane : p.y >= plane)
        fp_box3_add_point (&box, (FpVec3) { p.x, p.y, whole.lo.z });
      if ((p.y < plane) != (q.y < plane))
        fp_box3_add_point (&box, (FpVec3) { p.x + (q.x - p.x) * (plane - p.y) / (q.y - p.y), plane, whole.hi.z });
    }
  box.lo.z = whole.lo.z;
  box.hi.z = whole.hi.z;
  return box;
}

static FpBox3
everything_beyond (const FpScene *scene, double plane, gboolean turned)
{
  guint n, n_placed;
  const FpSolid *solid = fp_scene_solids (scene, &n);
  const FpPlaced *placed = fp_scene_placed (scene, &n_placed);
  FpBox3 box = FP_BOX3_EMPTY;

  for (guint i = 0; i < n; i++)
    {
      const FpBox3 one = beyond (&solid[i], plane, turned);
      if (!placed[solid[i].owner].ghost && one.lo.x <= one.hi.x)
        fp_box3_add_box (&box, &one);
    }
  return box;
}

static double
top_of_furnishings (const FpPlaced *placed, guint n, double otherwise)
{
  double top = -G_MAXDOUBLE;

  for (guint i = 0; i < n; i++)
    if (is_furnishing (&placed[i]))
      top = MAX (top, placed[i].level + placed[i].extent.height);
  return top > -G_MAXDOUBLE ? top : otherwise;
}

static gboolean
is_empty (const FpBox3 *box)
{
  return box->hi.x < box->lo.x;
}

static FpBox3
sanctuary_of (const FpScene *scene, const FpRegions *r, gboolean tight)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);
  const FpBox3 s = fp_scene_sanctuary (scene);
  const double top = top_of_furnishings (placed, n, s.hi.z);
  /* The floor before the rail may lie a little lower; a crypt does not belong to the sanctuary. */
  const double foot = r->east.lo.z - r->all.lo.z < NEAR_FOOT ? r->all.lo.z : r->east.lo.z;
  const double high = r->east.hi.z, cropped = MIN (high, foot + 1.35 * (top - foot));

  return (FpBox3) {
    { MAX (r->east.lo.x, s.lo.x - WALLS_WITHIN), MAX (r->all.lo.y, r->front - (tight ? NAVE_EDGE : NAVE_STRIP)), foot },
    { MIN (r->east.hi.x, s.hi.x + WALLS_WITHIN), MIN (r->all.hi.y, s.hi.y + WALLS_WITHIN),
      !tight && high - foot <= HIGH_WALLS * (top - foot) ? high : cropped },
  };
}

/* --- walls shown whole ---------------------------------------------------------------- */

/* What is shown along x or along y, and the limits between which it is looked for the other way. */
typedef struct { gboolean along_y; double lo, hi, from, to; } Reach;

static double
along (const Reach *r, FpPoint p)
{
  return r->along_y ? p.y : p.x;
}

static double
across (const Reach *r, FpPoint p)
{
  return r->along_y ? p.x : p.y;
}

/* Where an outline lies on the line at @at; FALSE when it does not. */
static gboolean
chord_of (const Reach *r, const FpSolid *solid, double at, double *lo, double *hi)
{
  *lo = G_MAXDOUBLE;
  *hi = -G_MAXDOUBLE;
  for (guint i = 0; i < solid->n_outline; i++)
    {
      const FpPoint p = solid->outline[i], q = solid->outline[(i + 1) % solid->n_outline];
      const double a = across (r, p), b = across (r, q);
      if ((a < at) == (b < at))
        continue;
      const double x = along (r, p) + (along (r, q) - along (r, p)) * (at - a) / (b - a);
      *lo = MIN (*lo, x);
      *hi = MAX (*hi, x);
    }
  return *lo <= *hi;
}

static double
thickest (const FpPlaced *placed)
{
  const FpKind *kind = fp_item_kind (placed->item);
  const int thickness = kind->role == FP_ROLE_WALL ? fp_kind_param_index (kind, "thickness") : -1;

  return thickness >= 0 ? WALL_ASKEW * fp_item_params (placed->item)[thickness] : PIER_THICK;
}

/* Most of what bounds a room does so elsewhere: it ends, by more than what figures are rounded by, within what is shown,
 * or lies beside all lines. */
static gboolean
may_bound (const Reach *r, const FpSolid *solid)
{
  FpBox box = { G_MAXDOUBLE, G_MAXDOUBLE, -G_MAXDOUBLE, -G_MAXDOUBLE }; /* along and across */

  for (guint i = 0; i < solid->n_outline; i++)
    fp_box_add_point (&box, (FpPoint) { along (r, solid->outline[i]), across (r, solid->outline[i]) });
  return (box.x0 < r->lo + 1.0 || box.x1 > r->hi - 1.0) && box.y1 >= r->from && box.y0 <= r->to;
}

/* @lo, @hi: what is shown, widened by what of the solid bounds it. */
static void
take_in (const Reach *r, const FpSolid *solid, double most, double *lo, double *hi)
{
  if (!may_bound (r, solid))
    return;
  for (guint i = 0; i < LOOKS; i++)
    {
      double a, b;
      if (!chord_of (r, solid, r->from + (r->to - r->from) * (i + 0.5) / LOOKS, &a, &b) || b - a > most)
        continue;
      if (a < r->lo && b > r->lo - WALL_NEAR)
        *lo = MIN (*lo, a);
      if (b > r->hi && a < r->hi + WALL_NEAR)
        *hi = MAX (*hi, b);
    }
}

static gboolean
bounds_a_room (const FpPlaced *placed)
{
  const FpRole role = fp_item_kind (placed->item)->role;

  return !placed->ghost && (role == FP_ROLE_WALL || role == FP_ROLE_PIER);
}

/* A wall at which a view ends is shown with its whole thickness: half a wall reads as a line without one. */
static void
show_walls_whole (const FpScene *scene, FpBox3 *box)
{
  const Reach x = { FALSE, box->lo.x, box->hi.x, box->lo.y, box->hi.y };
  const Reach y = { TRUE, box->lo.y, box->hi.y, box->lo.x, box->hi.x };
  guint n, n_placed;
  const FpSolid *solid = fp_scene_solids (scene, &n);
  const FpPlaced *placed = fp_scene_placed (scene, &n_placed);
  double none = box->lo.y;

  for (guint i = 0; i < n; i++)
    if (solid[i].shape == FP_SOLID_PRISM && bounds_a_room (&placed[solid[i].owner]))
      {
        const double most = thickest (&placed[solid[i].owner]);

        take_in (&x, &solid[i], most, &box->lo.x, &box->hi.x);
        /* Towards the nave it ends in the open. */
        take_in (&y, &solid[i], most, &none, &box->hi.y);
      }
}

static gboolean
is_flat (const FpBox3 *box)
{
  return box->hi.x <= box->lo.x || box->hi.y <= box->lo.y || box->hi.z <= box->lo.z;
}

void
fp_regions_of (const FpScene *scene, const FpCut *across, FpRegions *out)
{
  static const FpBox3 a_room = { { -3000, -3000, 0 }, { 3000, 3000, 3000 } };

  out->all = fp_scene_box (scene);
  if (is_empty (&out->all))
    out->all = a_room;
  out->east = everything_beyond (scene, fp_elevation_plane (scene), FALSE);
  if (is_empty (&out->east))
    out->east = out->all;
  out->front = MAX (MIN (fp_scene_sanctuary (scene).lo.y, out->east.lo.y), out->all.lo.y);
  out->sanctuary = sanctuary_of (scene, out, FALSE);
  if (is_flat (&out->sanctuary))
    out->sanctuary = out->all;
  show_walls_whole (scene, &out->sanctuary);
  out->tight = sanctuary_of (scene, out, TRUE);
  if (is_flat (&out->tight))
    out->tight = out->sanctuary;
  out->close = out->tight;
  show_walls_whole (scene, &out->tight);
  out->broad = out->sanctuary;
  out->broad.lo.x = MIN (out->broad.lo.x, out->east.lo.x);
  out->broad.hi.x = MAX (out->broad.hi.x, out->east.hi.x);
  if (across == NULL || !across->placed)
    return;
  out->east = everything_beyond (scene, across->at, across->turned);
  if (is_empty (&out->east))
    out->east = out->all;
}

FpBox
fp_region_in_view (const FpBox3 *box, FpViewId view, gboolean turned)
{
  const FpVec3 a = fp_sight_point (view, turned, box->lo), b = fp_sight_point (view, turned, box->hi);

  return (FpBox) { MIN (a.x, b.x), MIN (a.y, b.y), MAX (a.x, b.x), MAX (a.y, b.y) };
}

FpBox
fp_view_sanctuary (const FpScene *scene, FpViewId view)
{
  FpRegions r;

  fp_regions_of (scene, NULL, &r);
  return fp_region_in_view (&r.tight, view, FALSE);
}

FpBox
fp_view_sanctuary_close (const FpScene *scene, FpViewId view)
{
  FpRegions r;

  fp_regions_of (scene, NULL, &r);
  return fp_region_in_view (&r.close, view, FALSE);
}
