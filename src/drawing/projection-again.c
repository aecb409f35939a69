/* SPDX-License-Identifier: GPL-3.0-or-later */
/* projection-again.c - what a projection takes over from the last
 *
 * While one thing is dragged the church stands still.  What a solid gives to
 * a sketch depends on that solid alone, so it is copied where the solid is
 * the same.  How an edge is seen depends on the edge and on the faces about
 * it, so it is copied where both are: no face that came or went lies within
 * reach.  Copies are renumbered, and renumbering keeps the order, which
 * decides between equals; so nothing differs from a projection made from
 * nothing, and each copy is complete, so that the last may go.
 */
#include "projection-private.h"

#include <string.h>

struct _FpAgain
{
  FpLastLayer           last;
  const FpCounterparts *same;
  guint                 next;     /* part of the last sketch that is yet to be met  */
  guint                 next_joined, next_overhead; /* likewise                     */
  GArray               *edge_was; /* int: of each edge its number in the last, or -1 */
  GArray               *stirred;  /* FpBox: where faces came or went                */
  FpBox                 bounds;   /* of all of them                                 */
  GArray               *piece_was; /* borrowed                                      */
};

FpAgain *
fp_again_new (const FpLastLayer *last, const FpCounterparts *same, GArray *piece_was)
{
  FpAgain *self = g_new0 (FpAgain, 1);

  self->last = *last;
  self->same = same;
  self->piece_was = piece_was;
  self->edge_was = g_array_sized_new (FALSE, FALSE, sizeof (int), last->sketch->edges->len + 16);
  self->stirred = g_array_new (FALSE, FALSE, sizeof (FpBox));
  self->bounds = FP_BOX_EMPTY;
  return self;
}

void
fp_again_free (FpAgain *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->edge_was);
  g_array_unref (self->stirred);
  g_free (self);
}

/* --- parts ------------------------------------------------------------------------ */

static const FpSketchPart *
last_part (const FpAgain *self, guint i)
{
  return &g_array_index (self->last.sketch->parts, FpSketchPart, i);
}

static void
stir (FpAgain *self, const FpSketch *sketch, guint from, guint to)
{
  FpBox box = FP_BOX_EMPTY;

  if (from >= to)
    return;
  for (guint i = from; i < to; i++)
    fp_box_add_box (&box, &g_array_index (sketch->faces, FpFace, i).box);
  fp_box_add_box (&self->bounds, &box);
  g_array_append_val (self->stirred, box);
}

static void
pass_over (FpAgain *self)
{
  const FpSketchPart *part = last_part (self, self->next);

  stir (self, self->last.sketch, part[0].face, part[1].face);
  self->next++;
}

static int
compare_parts (const FpSketchPart *a, FpPass pass, guint source)
{
  if (a->pass != pass)
    return a->pass < pass ? -1 : 1;
  return (a->source > source) - (a->source < source);
}

static gboolean
same_how (const FpSketchHow *a, const FpSketchHow *b)
{
  return a->plan_cut == b->plan_cut && a->cut_face == b->cut_face && a->fabric == b->fabric && a->masonry == b->masonry;
}

/* Those that come before its counterpart are met no more. */
static const FpSketchPart *
find_last_part (FpAgain *self, FpPass pass, guint source)
{
  const int was = pass == FP_PASS_STROKES ? self->same->thing[source] : self->same->solid[source];

  if (was < 0)
    return NULL;
  while (compare_parts (last_part (self, self->next), pass, (guint) was) < 0)
    pass_over (self);
  return compare_parts (last_part (self, self->next), pass, (guint) was) == 0 ? last_part (self, self->next) : NULL;
}

/* --- copies ------------------------------------------------------------------------ */

static void
note_edge (FpAgain *self, int was)
{
  g_array_append_val (self->edge_was, was);
}

static void
copy_faces (const FpAgain *self, FpSketch *now, const FpSketchPart *was, guint owner, guint solid)
{
  const GArray *points = self->last.sketch->points, *faces = self->last.sketch->faces;
  const guint shift = now->points->len - was[0].point, first = now->faces->len;

  g_array_append_vals (now->points, &g_array_index (points, FpVec3, was[0].point), was[1].point - was[0].point);
  g_array_append_vals (now->faces, &g_array_index (faces, FpFace, was[0].face), was[1].face - was[0].face);
  for (guint i = first; i < now->faces->len; i++)
    {
      FpFace *face = &g_array_index (now->faces, FpFace, i);
      face->first += shift;
      face->owner = owner;
      face->solid = solid;
    }
}

/* From edge @from of the last on, @n of them are the next of this one. */
static void
note_edges (FpAgain *self, guint from, guint n)
{
  const guint first = self->edge_was->len;

  g_array_set_size (self->edge_was, first + n);
  for (guint i = 0; i < n; i++)
    g_array_index (self->edge_was, int, first + i) = (int) (from + i);
}

/* @shift: how much higher the faces beside them are numbered. */
static void
copy_edges (FpAgain *self, FpSketch *now, const FpSketchPart *was, guint owner, guint solid, int shift)
{
  const guint first = now->edges->len, n = was[1].edge - was[0].edge;

  g_array_append_vals (now->edges, &g_array_index (self->last.sketch->edges, FpEdge, was[0].edge), n);
  note_edges (self, was[0].edge, n);
  for (guint i = first; i < first + n; i++)
    {
      FpEdge *edge = &g_array_index (now->edges, FpEdge, i);
      edge->owner = owner;
      edge->solid = solid;
      for (guint k = 0; k < 2; k++)
        edge->beside[k] += edge->beside[k] >= 0 ? shift : 0;
    }
}

static void
copy_pieces (const GArray *pieces, guint from, guint to, guint owner, GArray *out)
{
  for (guint i = from; i < to; i++)
    {
      FpCutPiece piece = g_array_index (pieces, FpCutPiece, i);
      piece.pt = g_memdup2 (piece.pt, piece.n * sizeof (FpPoint));
      piece.owner = owner;
      g_array_append_val (out, piece);
    }
}

static void
copy_part (FpAgain *self, FpSketch *now, const FpSketchPart *was, guint owner, guint solid)
{
  const FpSketch *last = self->last.sketch;
  const int shift = (int) now->faces->len - (int) was[0].face;

  copy_faces (self, now, was, owner, solid);
  copy_edges (self, now, was, owner, solid, shift);
  copy_pieces (last->cuts, was[0].cut, was[1].cut, owner, now->cuts);
  copy_pieces (last->overhead, was[0].overhead, was[1].overhead, owner, now->overhead);
}

gboolean
fp_again_take_part (FpAgain *self, FpSketch *now, const FpSketchPart *part, guint owner)
{
  const FpSketchPart *was = part->pass != FP_PASS_STROKES ? find_last_part (self, part->pass, part->source) : NULL;

  if (was == NULL || was->entry != part->entry || !same_how (&was->how, &part->how))
    return FALSE;
  copy_part (self, now, was, owner, part->source);
  self->next++;
  return TRUE;
}

/* --- what is made anew --------------------------------------------------------------- */

static gboolean
same_stroke (const FpEdge *a, const FpEdge *b)
{
  return a->pen == b->pen && memcmp (&a->a, &b->a, sizeof a->a) == 0 && memcmp (&a->b, &b->b, sizeof a->b) == 0;
}

/* Strokes depend on much of a thing, and cost little: they are made, and compared. */
static void
note_strokes (FpAgain *self, const FpSketch *now, const FpSketchPart *part)
{
  const FpSketchPart *was = find_last_part (self, part->pass, part->source);
  const guint n = now->edges->len - part->edge;
  const guint n_last = was != NULL ? was[1].edge - was[0].edge : 0;

  for (guint i = 0; i < n; i++)
    {
      const gboolean same = i < n_last
        && same_stroke (&g_array_index (now->edges, FpEdge, part->edge + i),
                        &g_array_index (self->last.sketch->edges, FpEdge, was[0].edge + i));
      note_edge (self, same ? (int) (was[0].edge + i) : -1);
    }
}

void
fp_again_note_edges (FpAgain *self, const FpSketch *now)
{
  while (self->edge_was->len < now->edges->len)
    note_edge (self, -1);
}

void
fp_again_note_part (FpAgain *self, const FpSketch *now, const FpSketchPart *part)
{
  if (part->pass == FP_PASS_STROKES)
    note_strokes (self, now, part);
  stir (self, now, part->face, now->faces->len);
  fp_again_note_edges (self, now);
}

void
fp_again_end_parts (FpAgain *self)
{
  while (last_part (self, self->next)->pass != FP_PASS_JOINED)
    pass_over (self);
}

/* --- what is joined ------------------------------------------------------------------- */

/* That of the thing that was @owner in the last; NULL. */
static const FpJoined *
find_last_joined (const GArray *joined, guint *next, int owner)
{
  while (*next < joined->len && (int) g_array_index (joined, FpJoined, *next).owner < owner)
    ++*next;
  if (*next >= joined->len || (int) g_array_index (joined, FpJoined, *next).owner != owner)
    return NULL;
  return &g_array_index (joined, FpJoined, *next);
}

static gboolean
same_pieces (const FpCutPiece *a, const FpCutPiece *b, guint n)
{
  for (guint i = 0; i < n; i++)
    if (a[i].n != b[i].n || a[i].fabric != b[i].fabric || a[i].depth != b[i].depth
        || memcmp (a[i].pt, b[i].pt, a[i].n * sizeof (FpPoint)) != 0)
      return FALSE;
  return TRUE;
}

static void
copy_borders (FpAgain *self, FpSketch *now, const FpJoined *was, guint owner)
{
  const guint first = now->edges->len;

  g_array_append_vals (now->edges, &g_array_index (self->last.sketch->edges, FpEdge, was->edge), was->n_edges);
  note_edges (self, was->edge, was->n_edges);
  for (guint i = first; i < now->edges->len; i++)
    g_array_index (now->edges, FpEdge, i).owner = owner;
}

static void
copy_cuts (const FpAgain *self, const FpJoined *was, guint owner, GArray *cuts)
{
  for (guint i = was->cut; i < was->cut + was->n_cuts; i++)
    {
      FpProjectedCut cut = g_array_index (self->last.cuts, FpProjectedCut, i);
      cut.owner = owner;
      cut.outline = g_memdup2 (cut.outline, cut.n * sizeof (FpPoint));
      g_array_append_val (cuts, cut);
    }
}

gboolean
fp_again_take_joined (FpAgain *self, FpSketch *now, const FpJoined *joined, gboolean overhead, GArray *cuts)
{
  const FpSketch *last = self->last.sketch;
  const GArray *from = overhead ? last->overhead : last->cuts, *to = overhead ? now->overhead : now->cuts;
  const FpJoined *was = find_last_joined (overhead ? last->joined_overhead : last->joined,
                                          overhead ? &self->next_overhead : &self->next_joined,
                                          self->same->thing[joined->owner]);

  if (was == NULL || was->n_pieces != joined->n_pieces
      || !same_pieces (&g_array_index (from, FpCutPiece, was->piece), &g_array_index (to, FpCutPiece, joined->piece),
                       joined->n_pieces))
    return FALSE;
  copy_borders (self, now, was, joined->owner);
  if (cuts != NULL)
    copy_cuts (self, was, joined->owner, cuts);
  return TRUE;
}

/* --- how edges are seen --------------------------------------------------------------- */

/* Asked of each edge and each box. */
static inline gboolean
overlap (const FpBox *a, const FpBox *b)
{
  return a->x0 <= b->x1 && b->x0 <= a->x1 && a->y0 <= b->y1 && b->y0 <= a->y1;
}

static gboolean
is_stirred (const FpAgain *self, const FpBox *box)
{
  if (!overlap (box, &self->bounds))
    return FALSE;
  for (guint i = 0; i < self->stirred->len; i++)
    if (overlap (box, &g_array_index (self->stirred, FpBox, i)))
      return TRUE;
  return FALSE;
}

/* Of an edge and what lies so near that it has a say. */
static FpBox
box_about (const FpEdge *edge)
{
  return (FpBox) { MIN (edge->a.x, edge->b.x) - FP_EDGE_REACH, MIN (edge->a.y, edge->b.y) - FP_EDGE_REACH,
                   MAX (edge->a.x, edge->b.x) + FP_EDGE_REACH, MAX (edge->a.y, edge->b.y) + FP_EDGE_REACH };
}

/* Up to where the pieces go that have been made meanwhile. */
static void
note_pieces (const FpAgain *self, guint n)
{
  const int none = -1;

  while (self->piece_was->len < n)
    g_array_append_val (self->piece_was, none);
}

gboolean
fp_again_take_pieces (const FpAgain *self, const FpSketch *now, guint edge, GArray *out)
{
  const FpEdge *is = &g_array_index (now->edges, FpEdge, edge);
  const int was = g_array_index (self->edge_was, int, edge);
  const FpBox about = box_about (is);
  guint from, n;

  if (was < 0 || is_stirred (self, &about))
    return FALSE;
  from = g_array_index (self->last.first, guint, was);
  n = g_array_index (self->last.first, guint, was + 1) - from;
  note_pieces (self, out->len);
  g_array_set_size (self->piece_was, out->len + n);
  for (guint i = 0; i < n; i++)
    g_array_index (self->piece_was, int, out->len + i) = (int) (from + i);
  if (n > 0)
    g_array_append_vals (out, &g_array_index (self->last.pieces, FpPiece, from), n);
  for (guint i = out->len - n; i < out->len; i++)
    g_array_index (out, FpPiece, i).owner = is->owner;
  return TRUE;
}
