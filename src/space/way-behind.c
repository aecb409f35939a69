/* SPDX-License-Identifier: GPL-3.0-or-later */
/* way-behind.c - how far it is from the back of an altar to the next thing behind it
 *
 * By true outlines and over the whole length of the altar, so that neither a
 * candlestick nor a low platform is passed over.
 */
#include "footpace/scene.h"

#include <math.h>

#define FAR       20000.0
#define HEAD      1800.0 /* what hangs higher is walked under (design judgement)                    */
#define UNEVEN    50.0   /* mm: what rises less above its floor stops nobody (design judgement)     */
#define EQUAL     0.5    /* mm: a face that differs less is square to the altar                      */
#define GRAZING   1.0    /* mm: a wall in line with the altar's end is beside it                     */

/* In the altar's own coordinates: the strip behind it. */
typedef struct
{
  const FpScene  *scene;
  const FpPlaced *placed;
  int             altar;
  double          x0, x1, back;
  FpBox           reach; /* church coordinates: about all of it                */
} Strip;

static gboolean
carries (const Strip *self, int thing)
{
  for (int i = self->placed[self->altar].support; i >= 0; i = self->placed[i].support)
    if (i == thing)
      return TRUE;
  return FALSE;
}

static gboolean
stands_on_altar (const Strip *self, int thing)
{
  for (int i = thing; i >= 0; i = self->placed[i].support)
    if (i == self->altar)
      return TRUE;
  return FALSE;
}

/* Floors and flights between them are walked on, and so are the altar's own steps; any other platform is in the way. */
static gboolean
may_stop (const Strip *self, const FpSolid *s)
{
  const FpPlaced *owner = &self->placed[s->owner];

  return !owner->ghost && s->part != FP_PART_FLOOR && fp_item_kind (owner->item)->role != FP_ROLE_STEPS
         && !carries (self, (int) s->owner) && !stands_on_altar (self, (int) s->owner);
}

static gboolean
is_in_reach (const Strip *self, const FpSolid *s)
{
  const FpBox3 box = fp_solid_box (s);

  return fp_box_overlaps (&self->reach, &(FpBox) { box.lo.x, box.lo.y, box.hi.x, box.hi.y });
}

static gboolean
is_at_height (const Strip *self, const FpSolid *s, FpPoint at)
{
  const FpBox3 box = fp_solid_box (s);
  gboolean found;
  const double floor = fp_scene_floor_at (self->scene, at, &found);

  return box.lo.z < self->placed[self->altar].level + HEAD && (!found || box.hi.z > floor + UNEVEN);
}

/* --- outlines --------------------------------------------------------------- */

/* Where along the altar the least y is met; NAN: nowhere. */
typedef struct { double y, x0, x1; } Nearest;

static const Nearest nothing = { NAN, 0, 0 };

/* The nearer one; of equals the longer. */
static Nearest
nearer (Nearest a, Nearest b)
{
  if (isnan (b.y) || b.y > a.y + EQUAL)
    return a;
  if (isnan (a.y) || b.y < a.y - EQUAL)
    return b;
  a.y = MIN (a.y, b.y);
  if (b.x1 - b.x0 > a.x1 - a.x0)
    {
      a.x0 = b.x0;
      a.x1 = b.x1;
    }
  return a;
}

/* The part of a side that lies in the strip. */
static Nearest
nearest_of_side (const Strip *self, FpPoint a, FpPoint b)
{
  double t0 = 0, t1 = 1;
  const double dx = b.x - a.x, dy = b.y - a.y;

  if (fabs (dx) > 1e-9)
    {
      const double p = (self->x0 - a.x) / dx, q = (self->x1 - a.x) / dx;
      t0 = MAX (t0, MIN (p, q));
      t1 = MIN (t1, MAX (p, q));
    }
  else if (a.x < self->x0 || a.x > self->x1)
    return nothing;
  if (fabs (dy) > 1e-9)
    {
      const double t = (self->back - a.y) / dy;
      if (dy > 0)
        t0 = MAX (t0, t);
      else
        t1 = MIN (t1, t);
    }
  else if (a.y < self->back)
    return nothing;
  if (t0 > t1)
    return nothing;
  {
    const FpPoint p = { a.x + t0 * dx, a.y + t0 * dy }, q = { a.x + t1 * dx, a.y + t1 * dy };
    if (fabs (p.y - q.y) <= EQUAL)
      return (Nearest) { MIN (p.y, q.y), MIN (p.x, q.x), MAX (p.x, q.x) };
    return p.y < q.y ? (Nearest) { p.y, p.x, p.x } : (Nearest) { q.y, q.x, q.x };
  }
}

static Nearest
nearest_of_prism (const Strip *self, const FpSolid *s)
{
  const FpPlace *place = &self->placed[self->altar].place;
  const FpPoint middle = { (self->x0 + self->x1) / 2, self->back };
  Nearest best = nothing;

  if (fp_outline_contains (s->outline, s->n_outline, fp_place_point (place, middle)))
    return (Nearest) { self->back, middle.x, middle.x };
  for (guint i = 0; i < s->n_outline; i++)
    best = nearer (best, nearest_of_side (self, fp_place_unpoint (place, s->outline[i]),
                                          fp_place_unpoint (place, s->outline[(i + 1) % s->n_outline])));
  return best;
}

static Nearest
nearest_of_round (const Strip *self, const FpSolid *s)
{
  const FpPoint c = fp_place_unpoint (&self->placed[self->altar].place, (FpPoint) { s->cx, s->cy });
  const double r = s->shape == FP_SOLID_ROUND ? MAX (s->r0, s->r1) : MAX (s->rx, s->ry);
  const double x = CLAMP (c.x, self->x0, self->x1), off = fabs (x - c.x);

  if (off > r || c.y + r < self->back)
    return nothing;
  return (Nearest) { MAX (c.y - sqrt (r * r - off * off), self->back), x, x };
}

/* --- the room ---------------------------------------------------------------- */

static void
lay_strip (Strip *self)
{
  const FpPlaced *altar = &self->placed[self->altar];

  self->x0 = altar->extent.plan.x0 + GRAZING;
  self->x1 = altar->extent.plan.x1 - GRAZING;
  self->back = altar->extent.plan.y1;
  self->reach = FP_BOX_EMPTY;
  for (guint k = 0; k < 4; k++)
    fp_box_add_point (&self->reach, fp_place_point (&altar->place, (FpPoint) { k % 2 ? self->x0 : self->x1,
                                                                               self->back + (k / 2 ? FAR : -GRAZING) }));
}

static Nearest
nearest_of (const Strip *self, const FpSolid *s)
{
  Nearest found;

  if (!is_in_reach (self, s) || !may_stop (self, s))
    return nothing;
  found = s->shape == FP_SOLID_PRISM ? nearest_of_prism (self, s) : nearest_of_round (self, s);
  if (isnan (found.y)
      || !is_at_height (self, s, fp_place_point (&self->placed[self->altar].place, (FpPoint) { found.x0, found.y })))
    return nothing;
  return found;
}

double
fp_scene_room_behind_altar (const FpScene *scene, int altar, FpBox *where)
{
  guint n, n_placed;
  const FpSolid *s = fp_scene_solids (scene, &n);
  Strip strip = { .scene = scene, .placed = fp_scene_placed (scene, &n_placed), .altar = altar };
  Nearest best = nothing;

  if (altar < 0 || (guint) altar >= n_placed)
    return -1;
  lay_strip (&strip);
  for (guint i = 0; i < n; i++)
    best = nearer (best, nearest_of (&strip, &s[i]));
  if (!(best.y - strip.back <= FAR))
    return -1;
  if (where != NULL)
    *where = (FpBox) { best.x0, strip.back, best.x1, best.y };
  return best.y - strip.back;
}
