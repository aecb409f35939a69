/* SPDX-License-Identifier: GPL-3.0-or-later */
/* projection-ellipsoids.c - the half of an ellipsoid that faces the viewer */
#include "projection-solids.h"

#include <math.h>

/* Rings of the half of an ellipsoid that faces the viewer. */
#define ELLIPSOID_RINGS 4
#define ELLIPSOID_CORNERS 32

/* An ellipsoid as the image of the unit sphere: p = centre + columns · s. */
typedef struct { FpVec3 centre, column[3]; } Affine;

static FpVec3
image_of (const Affine *f, FpVec3 s)
{
  FpVec3 p = f->centre;

  p = fp_vec3_add (p, fp_vec3_scale (f->column[0], s.x));
  p = fp_vec3_add (p, fp_vec3_scale (f->column[1], s.y));
  return fp_vec3_add (p, fp_vec3_scale (f->column[2], s.z));
}

static Affine
affine_of (const FpSketch *sketch, const FpSolid *s)
{
  const FpPlace turn = { 0, 0, s->turn };
  const FpPoint u = fp_place_point (&turn, (FpPoint) { s->rx, 0 }), w = fp_place_point (&turn, (FpPoint) { 0, s->ry });

  return (Affine) { fp_sketch_point (sketch, (FpVec3) { s->cx, s->cy, s->cz }),
                    { fp_sketch_point (sketch, (FpVec3) { u.x, u.y, 0 }),
                      fp_sketch_point (sketch, (FpVec3) { w.x, w.y, 0 }),
                      fp_sketch_point (sketch, (FpVec3) { 0, 0, s->rz }) } };
}

static FpVec3
unit (FpVec3 v)
{
  return fp_vec3_scale (v, 1 / fp_vec3_length (v));
}

/* How the depth grows over the sphere. */
static FpVec3
depth_of (const Affine *f)
{
  return (FpVec3) { f->column[0].z, f->column[1].z, f->column[2].z };
}

/* What the line of sight is the image of: the outline of the ellipsoid comes from the circle square to it.
 * (The columns are square to each other.) */
static FpVec3
sight_of (const Affine *f)
{
  const FpVec3 k = depth_of (f);

  return (FpVec3) { k.x / fp_vec3_dot (f->column[0], f->column[0]), k.y / fp_vec3_dot (f->column[1], f->column[1]),
                    k.z / fp_vec3_dot (f->column[2], f->column[2]) };
}

/* Image of a point of the sphere, @up towards the pole (its sine) and @turn round it (radians). */
static FpVec3
on_sphere (const Affine *f, FpVec3 towards, double up, double turn)
{
  const FpVec3 pole = unit (towards);
  const FpVec3 any = fabs (pole.x) < 0.6 ? (FpVec3) { 1, 0, 0 } : (FpVec3) { 0, 1, 0 };
  const FpVec3 e1 = unit (fp_vec3_cross (any, pole)), e2 = fp_vec3_cross (pole, e1);
  const double across = sqrt (MAX (1 - up * up, 0.0));
  FpVec3 s = fp_vec3_scale (pole, up);

  s = fp_vec3_add (s, fp_vec3_scale (e1, across * cos (turn)));
  s = fp_vec3_add (s, fp_vec3_scale (e2, across * sin (turn)));
  return image_of (f, s);
}

static void
add_dome_facet (FpSketch *self, const Affine *f, guint ring, guint i, const FpFace *like)
{
  const double low = sin (G_PI / 2 * ring / ELLIPSOID_RINGS), high = sin (G_PI / 2 * (ring + 1) / ELLIPSOID_RINGS);
  const double t0 = 2 * G_PI * i / ELLIPSOID_CORNERS, t1 = 2 * G_PI * (i + 1) / ELLIPSOID_CORNERS;
  const FpVec3 sight = sight_of (f);
  const FpVec3 a = on_sphere (f, sight, low, t0), b = on_sphere (f, sight, low, t1);
  const FpVec3 c = on_sphere (f, sight, high, t1), d = on_sphere (f, sight, high, t0);
  const FpVec3 lower[3] = { a, b, c }, upper[3] = { a, c, d };
  const int left = fp_sketch_add_face (self, lower, 3, like);

  if (ring + 1 < ELLIPSOID_RINGS)
    fp_sketch_add_face (self, upper, 3, like);
  if (ring == 0)
    fp_sketch_add_edge (self, a, b, left, -1, like);
}

void
fp_sketch_add_ellipsoid (FpSketch *self, const FpSolid *s, const FpSketchHow *how, FpFace *like)
{
  const Affine f = affine_of (self, s);
  const double up = (self->near - f.centre.z) / fp_vec3_length (depth_of (&f)); /* where the plane cuts the sphere */
  FpPoint cap[ELLIPSOID_CORNERS];

  if (up <= -1)
    return;
  like->convex = TRUE;
  for (guint ring = 0; ring < ELLIPSOID_RINGS; ring++)
    for (guint i = 0; i < ELLIPSOID_CORNERS; i++)
      add_dome_facet (self, &f, ring, i, like);
  if (up >= 1)
    return;
  for (guint i = 0; i < ELLIPSOID_CORNERS; i++)
    {
      const FpVec3 p = on_sphere (&f, depth_of (&f), up, 2 * G_PI * i / ELLIPSOID_CORNERS);
      cap[i] = (FpPoint) { p.x, p.y };
    }
  fp_sketch_add_cap (self, cap, ELLIPSOID_CORNERS, like, how->cut_face);
}
