/* SPDX-License-Identifier: GPL-3.0-or-later */
/* projection-private.h - from solids to visible lines
 *
 * A sketch is a view in the making: the faces that look towards the viewer,
 * and the edges that may be seen.  Its points are h to the right, v up, and
 * depth towards the viewer (x, y, z of an FpVec3), world millimetres; faces
 * run counter-clockwise as the viewer sees them.
 *
 * A point is hidden when a face lies in front of it.  Faces are closed: an
 * edge behind the very border of a face is hidden too, since that border is
 * drawn, or else is a seam through which nothing may show.
 */
#pragma once

#include "footpace/projection.h"

G_BEGIN_DECLS

typedef struct _FpAgain FpAgain; /* what may be taken over from the last projection, see below */

/* mm: what is slighter is drawn with the narrow pen alone.  At 1:50 its sides are 2 mm apart on paper, and
 * ISO 128 wants never less than 0.7 mm between lines. */
#define FP_SLIGHT 100.0

/* mm: a face that lies farther from the box of an edge has no say in how that is drawn. */
#define FP_EDGE_REACH (FP_SLIGHT + 1.0)

/* Whether an outline is drawn with the wide pen. */
typedef enum
{
  FP_WEIGHT_ASK,  /* where it bounds enough of its thing          */
  FP_WEIGHT_WIDE, /* always: buildings                            */
  FP_WEIGHT_NARROW,
} FpWeight;

typedef struct
{
  guint    first, n;          /* corners, in the sketch's points              */
  FpBox    box;
  double   depth_max;
  double   slope_h, slope_v;  /* of the depth, from the first corner          */
  guint    owner, solid;
  gboolean convex;            /* of a solid that is                           */
  FpWeight weight;            /* of its edges                                 */
  gboolean cut;               /* a cut face                                   */
  guint    fabric;            /* cut faces of one number above 0 are of one piece: no line parts them */
  guint    masonry;           /* nor those, cut or not, of one number above 0 that lie in one plane */
} FpFace;

typedef enum
{
  FP_EDGE_SHARP,    /* of a solid                                       */
  FP_EDGE_CUT,      /* border of a cut face                             */
  FP_EDGE_STROKE,   /* of a symbol: has its pen already                 */
  FP_EDGE_OVERHEAD, /* of what hangs above the cut: nothing hides it, but it is not drawn over cut faces */
} FpEdgeType;

typedef struct
{
  FpVec3     a, b;
  guint      owner, solid;
  gboolean   convex;
  int        beside[2];       /* faces that it borders: they never hide it; -1 */
  FpEdgeType type;
  FpWeight   weight;
  FpPen      pen;             /* of a stroke                                  */
} FpEdge;

/* A cut face before those of one thing are made one. */
typedef struct { FpPoint *pt; guint n; guint owner, fabric; double depth; } FpCutPiece;

/* How a solid enters a sketch. */
typedef struct
{
  guint    index;       /* of the solid                                         */
  double   plan_cut;    /* level at which a plan cuts it; G_MAXDOUBLE: not at all */
  gboolean cut_face;    /* where it is cut, the face is filled and has the pen of cuts */
  guint    fabric, masonry; /* see FpFace                                       */
} FpSketchHow;

/* A scene enters a sketch in so many passes, each in the order of the scene. */
typedef enum
{
  FP_PASS_SOLIDS,
  FP_PASS_STROKES,  /* of symbols                                                */
  FP_PASS_HIDERS,   /* solids of which only the faces count                      */
  FP_PASS_JOINED,   /* borders of what is cut, thing by thing                    */
} FpPass;

typedef enum { FP_ENTRY_WHOLE, FP_ENTRY_BY_FOOT, FP_ENTRY_OVERHEAD, FP_ENTRY_STROKES } FpEntry;

/* What entered at one stroke; where that ends the next part begins, and the last is an empty one. */
typedef struct
{
  FpPass      pass;
  guint       source;       /* index of the solid, or of the thing that has the strokes */
  FpEntry     entry;
  FpSketchHow how;
  guint       point, face, edge, cut, overhead; /* where it begins in the arrays of the sketch */
} FpSketchPart;

/* The cut faces of one thing made one: from which pieces, and what came of it. */
typedef struct
{
  guint owner;
  guint piece, n_pieces;    /* in the cuts or the overhead of the sketch         */
  guint edge, n_edges;
  guint cut, n_cuts;        /* in the cuts of the projection                     */
} FpJoined;

typedef struct
{
  FpViewId view;
  gboolean turned;            /* seen from the other side               */
  double   near;              /* depth of the cutting plane: nothing nearer is kept */
  GArray  *points;            /* FpVec3     */
  GArray  *faces;             /* FpFace     */
  GArray  *edges;             /* FpEdge     */
  GArray  *cuts;              /* FpCutPiece */
  GArray  *overhead;          /* FpCutPiece: outlines of what lies above the cut of a plan */
  GArray  *parts;             /* FpSketchPart, where a scene was sketched */
  GArray  *joined, *joined_overhead; /* FpJoined   */
} FpSketch;

FpSketch *fp_sketch_new  (FpViewId view, gboolean turned, double near);
void      fp_sketch_free (FpSketch *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpSketch, fp_sketch_free)

void fp_sketch_add_solid (FpSketch *self, const FpSolid *solid, const FpSketchHow *how);
void fp_sketch_add_stroke (FpSketch *self, FpVec3 a, FpVec3 b, guint owner, FpPen pen);
/* Outline of what hangs above the cut: drawn dashed, merged by owner. */
void fp_sketch_add_overhead (FpSketch *self, const FpSolid *solid);
/* @world in the sketch's coordinates. */
FpVec3 fp_sketch_point (const FpSketch *self, FpVec3 world);
/* Depth of the cutting plane: what is nearer to the viewer is not drawn. */
double fp_projection_nearest (const FpProjection *self);
FpVec3 fp_sight_point  (FpViewId view, gboolean turned, FpVec3 world);

/**
 * fp_sketch_add_scene:
 * @ghosts: whether what is taken away is sketched, or all else
 * @again: (nullable): what may be taken over
 */
void fp_sketch_add_scene (FpSketch *self, const FpScene *scene, FpHidden hidden, gboolean ghosts, FpAgain *again);

/**
 * fp_sketch_join_cuts:
 * @cuts: (element-type FpProjectedCut): the outlines are appended; they are the caller's
 * @again: (nullable): what may be taken over
 *
 * Makes the cut faces of each thing one, likewise what hangs above the cut, and adds their borders to the edges.
 */
void fp_sketch_join_cuts (FpSketch *self, GArray *cuts, FpAgain *again);

/* mm: corners of neighbours that differ by less are one; cut faces that meet so have no crack between them. */
#define FP_CUT_GRID 0.001

/* Joins each piece to the one before it in @pieces (FpCutPiece) where both are convex, of one owner and fabric, share a
 * whole side, and are convex together: what the pieces cover stays the same. */
void fp_cut_strips_join (GArray *pieces);

/* --- what hides what --------------------------------------------------------- */

/* Faces sorted into cells; @sketch must outlive it and not change. */
typedef struct _FpFaceGrid FpFaceGrid;
FpFaceGrid *fp_face_grid_new  (const FpSketch *sketch);
void        fp_face_grid_free (FpFaceGrid *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpFaceGrid, fp_face_grid_free)

/* Index of the face nearest the viewer at a point; -1 where there is none. */
int  fp_face_grid_nearest (const FpFaceGrid *self, FpPoint p);

/* A visible piece, with what the order of drawing needs. */
typedef struct
{
  FpPoint  a, b;
  guint    owner;
  FpPen    pen;
  double   depth;
  gboolean ghost;
} FpPiece;

/**
 * fp_face_grid_visible:
 * @again: (nullable): what may be taken over
 * @first: (element-type guint) (nullable): where in @out the pieces of each edge begin, and where the last end
 * @out: (element-type FpPiece)
 *
 * Appends what is seen of all edges.
 */
void fp_face_grid_visible (FpFaceGrid *self, gboolean ghost, GCancellable *cancel, const FpAgain *again, GArray *first,
                           GArray *out);

/* --- every line once ------------------------------------------------------------ */

/* How pieces became lines: what the next projection needs to know of it. */
typedef struct _FpMerging FpMerging;
typedef struct _FpLastMerging FpLastMerging; /* see below */

/**
 * fp_merging_new:
 * @pieces: (element-type FpPiece)
 * @last: (nullable): what may be taken over
 * @lines: (element-type FpProjectedLine): the lines are appended
 *
 * Draws coincident pieces once, joins what continues, sorts by owner and pen.
 */
FpMerging *fp_merging_new  (const GArray *pieces, const FpLastMerging *last, GArray *lines);
void       fp_merging_free (FpMerging *self);

/* The same, where there is no next. */
void fp_pieces_merge (const GArray *pieces, GArray *lines);

/* (element-type FpProjectedLine): by owner and pen, otherwise as they come. */
GArray *fp_lines_sorted_new (const GArray *lines);

/* Lines that were put in order, what came of it, and of each owner his number there. */
typedef struct { const GArray *sorted, *lines; const int *owner_was; } FpLastOrder;

/* Appends sorted lines so that those that run on into each other follow each other.  @last may be %NULL. */
void fp_lines_order (const GArray *sorted, const FpLastOrder *last, GArray *out);

/* --- what is there more than once ------------------------------------------------ */

/**
 * fp_doubles_find:
 * @is_aloft: whether a thing stands where a plan does not show it
 *
 * Returns: (transfer full) (array): for each placed thing, whether one before it looks the same in the same place
 */
gboolean *fp_doubles_find (const FpScene *scene, gboolean (*is_aloft) (const FpPlaced *placed, guint index));


/* --- made again after an edit --------------------------------------------------- */

/* Of the things and solids of a scene those that are the same in the last: their numbers there, -1 where there is
 * none; and of the things of the last their numbers now.  The order is the same in both. */
typedef struct { int *thing, *solid, *thing_now; } FpCounterparts;
FpCounterparts fp_counterparts_find  (const FpScene *last, const FpScene *now);
void           fp_counterparts_clear (FpCounterparts *self);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (FpCounterparts, fp_counterparts_clear)

/* A layer of the last projection, borrowed. */
typedef struct
{
  const FpSketch *sketch;
  const GArray   *cuts;     /* FpProjectedCut                                        */
  const GArray   *first;    /* guint: where the pieces of each edge begin, and the end */
  const GArray   *pieces;   /* FpPiece                                               */
} FpLastLayer;

/**
 * fp_again_new:
 * @piece_was: (element-type int): gets of each piece that is taken over its number in the last, -1 for those between
 *
 * What is made again is exactly what is made from nothing.  All arguments must outlive it.
 */
FpAgain *fp_again_new  (const FpLastLayer *last, const FpCounterparts *same, GArray *piece_was);
void     fp_again_free (FpAgain *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpAgain, fp_again_free)

/* In the order of making.  For each part, which is not yet among those of @now: whether it could be taken over; if not,
 * make it and say so. */
gboolean fp_again_take_part (FpAgain *self, FpSketch *now, const FpSketchPart *part, guint owner);
void     fp_again_note_part (FpAgain *self, const FpSketch *now, const FpSketchPart *part);
/* After the last part. */
void     fp_again_end_parts (FpAgain *self);

/* For the cut faces of one thing, of which @joined says the owner and the pieces: likewise.  @cuts may be %NULL. */
gboolean fp_again_take_joined (FpAgain *self, FpSketch *now, const FpJoined *joined, gboolean overhead, GArray *cuts);
void     fp_again_note_edges  (FpAgain *self, const FpSketch *now);

/* Where an edge is seen as it was: appends its pieces. */
gboolean fp_again_take_pieces (const FpAgain *self, const FpSketch *now, guint edge, GArray *out);

struct _FpLastMerging
{
  const FpMerging      *merging;
  const GArray         *lines;     /* FpProjectedLine: what came of it    */
  const GArray         *piece_was; /* int: of each piece, -1              */
  const FpCounterparts *same;
};

G_END_DECLS
