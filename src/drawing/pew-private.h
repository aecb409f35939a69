/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pew-private.h - the convex pieces of which a view from the pew is made
 *
 * All in the eye's own coordinates: x to the right, y ahead, z up, mm, the
 * eye at the origin.  Pieces are never changed; a piece that is cut makes way
 * for its parts.
 */
#pragma once

#include "footpace/pew-view.h"

G_BEGIN_DECLS

/* Nearer than this nothing is told apart, mm: it lies side by side, or in one plane. */
#define FP_PEW_TOUCH 0.02
/* Nothing is drawn that is nearer to the eye than this, mm. */
#define FP_PEW_NEAR 20.0

/* --- pieces ---------------------------------------------------------------- */

typedef struct
{
  FpVec3   n;            /* outward, of length 1                            */
  double   d;            /* inside: n . p <= d                              */
  guint    first, count; /* into the loop of the piece; counter-clockwise seen from outside */
  gboolean inner;        /* no surface: another part of the same solid goes on there */
} FpFacet;

typedef struct
{
  gboolean  round;       /* an ellipsoid; otherwise bounded by facets       */
  gboolean  turned;      /* facets stand for the mantle of an upright frustum */
  guint     owner, solid;
  FpPart    part;
  FpVec3   *vertex;
  guint     n_vertices;
  FpFacet  *facet;
  guint     n_facets;
  guint16  *loop;        /* indices of vertices                             */
  guint     n_loop;
  FpVec3    centre, axis[3]; /* ellipsoid: half-axes                        */
  FpBox3    box;
  FpBox     seen;        /* in the picture                                  */
  FpPoint  *outline;     /* in the picture, convex, counter-clockwise; about an ellipsoid, not on it */
  guint     n_outline;
} FpConvex;

/* Memory of all pieces of one view, given back at once: to its thread, for the next. */
typedef struct _FpPewPool FpPewPool;
FpPewPool *fp_pew_pool_new  (void);
void       fp_pew_pool_free (FpPewPool *self);
gpointer   fp_pew_pool_take (FpPewPool *self, gsize size); /* not cleared */
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpPewPool, fp_pew_pool_free)

/**
 * fp_convex_between:
 * @low, @high: as many corners each, counter-clockwise seen from above, the one over the other; where both are one the
 *   sides end there in an edge or a tip
 * @inner: (nullable): whether the side from a corner to the next is no surface
 *
 * Returns: NULL where it has no body
 */
FpConvex *fp_convex_between (FpPewPool *pool, const FpConvex *like, const FpVec3 *low, const FpVec3 *high, guint n,
                             const gboolean *inner);
FpConvex *fp_convex_ellipsoid (FpPewPool *pool, const FpConvex *like, FpVec3 centre, const FpVec3 axis[3]);
/* As many facets as make it look round near by; inscribed. */
FpConvex *fp_convex_facetted (FpPewPool *pool, const FpConvex *ellipsoid);
/* What of it lies where n . p <= d, NULL for nothing; @inner: whether the cut is no surface. */
FpConvex *fp_convex_cut (FpPewPool *pool, const FpConvex *self, FpVec3 n, double d, gboolean inner);
/* How far it reaches that way, and the other way. */
double    fp_convex_most  (const FpConvex *self, FpVec3 n);
double    fp_convex_least (const FpConvex *self, FpVec3 n);
/* Finds its outline in the picture; all of it must lie before the eye. */
void      fp_convex_outline (FpPewPool *pool, FpConvex *self);
/* The ellipse that is seen of an ellipsoid: centre, and its half-axes, the first nearly level, the second nearly upright. */
void      fp_convex_ellipse (const FpConvex *self, FpPoint *at, FpPoint *a, FpPoint *b);

static inline FpPoint
fp_pew_project (FpVec3 p)
{
  return (FpPoint) { p.x / p.y, p.z / p.y };
}

/* Parts an outline, counter-clockwise, into convex ones: (element-type guint16) corners, part by part, each closed by
 * G_MAXUINT16. */
void fp_outline_part (const FpPoint *pt, guint n, GArray *parts);

/* --- what stands before what ------------------------------------------------ */

typedef enum
{
  FP_FRONT_NEITHER,
  FP_FRONT_FIRST,  /* nothing of the second hides anything of the first     */
  FP_FRONT_SECOND,
  FP_FRONT_MEET,   /* they reach into each other, or no plane was found that parts them */
} FpFront;

FpFront  fp_convex_front (const FpConvex *first, const FpConvex *second);
gboolean fp_outlines_overlap (const FpConvex *a, const FpConvex *b); /* in the picture */

/* --- what is covered already -------------------------------------------------- */

typedef struct _FpPewCover FpPewCover;
FpPewCover *fp_pew_cover_new  (FpBox picture);
void        fp_pew_cover_free (FpPewCover *self);
/* A convex outline, counter-clockwise.  Errs only by keeping what is hidden. */
void        fp_pew_cover_add  (FpPewCover *self, const FpPoint *pt, guint n);
gboolean    fp_pew_cover_hides (const FpPewCover *self, const FpPoint *pt, guint n);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpPewCover, fp_pew_cover_free)

/* --- from the church to the list of faces -------------------------------------- */

/* Where the eye is, which way it looks, and how far aside it sees. */
typedef struct
{
  FpVec3  eye;
  FpPoint ahead; /* of length 1, on the plan */
  FpBox   picture;
} FpPewCamera;

static inline FpVec3
fp_pew_from_church (const FpPewCamera *camera, FpVec3 p)
{
  const double x = p.x - camera->eye.x, y = p.y - camera->eye.y;
  return (FpVec3) { x * camera->ahead.y - y * camera->ahead.x, x * camera->ahead.x + y * camera->ahead.y,
                    p.z - camera->eye.z };
}

/* (element-type FpConvex*) the pieces of all solids that are not @skip_owner's, clipped to the picture. */
void fp_pew_pieces (FpPewPool *pool, const FpPewCamera *camera, const FpSolids *solids, guint skip_owner,
                    GPtrArray *pieces);

/* Tells which faces of walls lie against their own wall. */
void fp_pew_find_joints (GPtrArray *pieces);

/* A piece in the order, with those of its facets that are seen. */
typedef struct
{
  const FpConvex *piece;
  guint           first, n; /* into the facets */
} FpPewSeen;

/* Sorts the pieces, the nearest first, cuts those that cannot be sorted, and leaves out what is hidden.
 * @seen: (element-type FpPewSeen); @facets: (element-type guint). */
void fp_pew_order (FpPewPool *pool, FpBox picture, GPtrArray *pieces, GArray *seen, GArray *facets);

/* An edge of a facet that is seen. */
typedef struct
{
  FpVec3        a, b;  /* the facet lies on its left, seen from outside     */
  FpVec3        n, m;  /* normals of this facet and of the next on the piece */
  guint         owner, seen; /* index of the FpPewSeen                      */
  guint         facet, beside; /* those two, among the piece's              */
  gboolean      faces; /* that next facet faces the eye as well             */
  FpPewLineType type;
} FpPewEdge;

/* @edges: (element-type FpPewEdge), in the order of @seen; where one piece goes on smoothly in another they are joints. */
void fp_pew_edges (FpPewPool *pool, const GArray *seen, const GArray *facets, GArray *edges);

G_END_DECLS
