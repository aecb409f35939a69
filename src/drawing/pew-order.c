/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pew-order.c - the pieces, the nearest first
 *
 * After M. Newell, R. Newell, T. Sancha, "A solution to the hidden surface
 * problem" (1972, from memory), but from the front: a piece is given out once
 * all that may hide parts of it are, and not at all where those hide the
 * whole of it.  Only pieces that overlap in the picture are asked about, and
 * of those only what begins nearer than the other ends.  What goes round in a
 * circle, and what reaches into each other, is cut.
 */
#include "pew-private.h"

#include <math.h>

/* More cuts than this no church needs; then the order is left as it comes, so that a drawing comes to an end. */
#define CUTS_MOST 20000

typedef enum { WAITING, ASKED, DONE } State;

typedef struct _Node Node;
struct _Node
{
  FpConvex *piece;
  State     state;
  Node     *before, *next; /* in the list of what is not done, by where it begins */
};

typedef struct
{
  FpPewPool  *pool;
  FpPewCover *cover;
  Node        head;   /* of the list; no piece of its own */
  GArray     *seen, *facets;
  guint       cuts;
} Order;

/* --- the list ------------------------------------------------------------------- */

static Node *
new_node (Order *o, FpConvex *piece)
{
  Node *node = fp_pew_pool_take (o->pool, sizeof *node);
  *node = (Node) { .piece = piece };
  return node;
}

static void
put_after (Node *before, Node *node)
{
  node->before = before;
  node->next = before->next;
  if (node->next != NULL)
    node->next->before = node;
  before->next = node;
}

/* A node that is taken out still knows the next, so that who stands on it finds back. */
static void
finish (Node *node)
{
  node->state = DONE;
  node->before->next = node->next;
  if (node->next != NULL)
    node->next->before = node->before;
}

static int
by_nearness (gconstpointer a, gconstpointer b)
{
  const FpConvex *p = *(FpConvex *const *) a, *q = *(FpConvex *const *) b;
  const double near_p = p->box.lo.y, near_q = q->box.lo.y;

  /* Of those that begin alike the one made first, so that the picture does not depend on how they are sorted. */
  if (near_p != near_q)
    return near_p < near_q ? -1 : 1;
  return (p->solid > q->solid) - (p->solid < q->solid);
}

static void
fill_list (Order *o, GPtrArray *pieces)
{
  Node *last = &o->head;

  g_ptr_array_sort (pieces, by_nearness);
  for (guint i = 0; i < pieces->len; i++)
    {
      Node *node = new_node (o, g_ptr_array_index (pieces, i));
      put_after (last, node);
      last = node;
    }
}

/* A part begins no nearer than what it was cut from, whose node is @from, in the list or just taken out of it. */
static void
put_part (Order *o, Node *from, FpConvex *part)
{
  Node *after = from->before;

  if (part == NULL)
    return;
  fp_convex_outline (o->pool, part);
  if (part->n_outline < 3)
    return;
  while (after != &o->head && after->state == DONE)
    after = after->before;
  while (after->next != NULL && after->next->piece->box.lo.y < part->box.lo.y)
    after = after->next;
  put_after (after, new_node (o, part));
}

/* --- cutting ---------------------------------------------------------------------- */

static void
replace (Order *o, Node *node, FpConvex *one, FpConvex *two)
{
  o->cuts++;
  finish (node);
  put_part (o, node, one);
  put_part (o, node, two);
}

static void
cut_by (Order *o, Node *node, FpVec3 n, double d)
{
  FpConvex *within = fp_convex_cut (o->pool, node->piece, n, d, TRUE);
  FpConvex *beyond = fp_convex_cut (o->pool, node->piece, fp_vec3_scale (n, -1), -d, TRUE);

  replace (o, node, within, beyond);
}

/* A face of @by that goes through @piece; -1.  @through (out): how many do. */
static int
crossing_facet (const FpConvex *by, const FpConvex *piece, guint *through)
{
  int found = -1;

  *through = 0;
  for (guint i = 0; i < by->n_facets; i++)
    if (fp_convex_least (piece, by->facet[i].n) < by->facet[i].d - FP_PEW_TOUCH
        && fp_convex_most (piece, by->facet[i].n) > by->facet[i].d + FP_PEW_TOUCH)
      {
        (*through)++;
        found = found < 0 ? (int) i : found;
      }
  return found;
}

/* Round things have no faces to cut by, and are none once they are cut. */
static gboolean
facet_round (Order *o, Node *node)
{
  if (!node->piece->round)
    return FALSE;
  replace (o, node, fp_convex_facetted (o->pool, node->piece), NULL);
  return TRUE;
}

/* In a ring of pieces of which none cuts another: in two, across where it is longest. */
static void
halve (Order *o, Node *node)
{
  const FpBox3 box = node->piece->box;
  const FpVec3 size = fp_vec3_sub (box.hi, box.lo), middle = fp_vec3_scale (fp_vec3_add (box.lo, box.hi), 0.5);

  if (size.x >= size.y && size.x >= size.z)
    cut_by (o, node, (FpVec3) { 1, 0, 0 }, middle.x);
  else if (size.y >= size.z)
    cut_by (o, node, (FpVec3) { 0, 1, 0 }, middle.y);
  else
    cut_by (o, node, (FpVec3) { 0, 0, 1 }, middle.z);
}

/* The one is cut by a face of the other: that which the fewest faces go through, so that it falls into few parts. */
static void
cut_one (Order *o, Node *a, Node *b, gboolean they_meet)
{
  guint through_a, through_b;
  const int in_a = crossing_facet (b->piece, a->piece, &through_a), in_b = crossing_facet (a->piece, b->piece, &through_b);
  const gboolean cut_a = in_a >= 0 && !a->piece->round && (in_b < 0 || b->piece->round || through_a <= through_b);

  if (they_meet && in_a < 0 && !b->piece->round) /* wholly within the other */
    replace (o, a, NULL, NULL);
  else if (they_meet && in_b < 0 && !a->piece->round)
    replace (o, b, NULL, NULL);
  else if (cut_a)
    cut_by (o, a, b->piece->facet[in_a].n, b->piece->facet[in_a].d);
  else if (in_b >= 0 && !b->piece->round)
    cut_by (o, b, a->piece->facet[in_b].n, a->piece->facet[in_b].d);
  else if (!facet_round (o, a) && !facet_round (o, b))
    halve (o, a);
}

/* --- giving out --------------------------------------------------------------------- */

static void
see_facets (Order *o, const FpConvex *piece)
{
  for (guint i = 0; i < piece->n_facets; i++)
    {
      const FpFacet *facet = &piece->facet[i];
      FpPoint pt[64];
      if (facet->inner || facet->d >= 0) /* the eye lies behind it */
        continue;
      for (guint k = 0; k < facet->count && k < G_N_ELEMENTS (pt); k++)
        pt[k] = fp_pew_project (piece->vertex[piece->loop[facet->first + k]]);
      if (facet->count > G_N_ELEMENTS (pt) || !fp_pew_cover_hides (o->cover, pt, facet->count))
        g_array_append_val (o->facets, i);
    }
}

static void
cover_with (Order *o, const FpConvex *piece)
{
  /* From corners about an ellipse to as many on it. */
  FpPoint within[64];
  FpPoint at, a, b;

  if (!piece->round)
    {
      fp_pew_cover_add (o->cover, piece->outline, piece->n_outline);
      return;
    }
  fp_convex_ellipse (piece, &at, &a, &b);
  for (guint i = 0; i < piece->n_outline; i++)
    {
      const double shrink = cos (G_PI / piece->n_outline);
      within[i] = (FpPoint) { at.x + shrink * (piece->outline[i].x - at.x), at.y + shrink * (piece->outline[i].y - at.y) };
    }
  fp_pew_cover_add (o->cover, within, piece->n_outline);
}

static gboolean
is_hidden (const Order *o, const FpConvex *piece)
{
  return fp_pew_cover_hides (o->cover, piece->outline, piece->n_outline);
}

static void
give_out (Order *o, Node *node)
{
  FpPewSeen seen = { node->piece, o->facets->len, 0 };

  finish (node);
  if (is_hidden (o, node->piece))
    return;
  see_facets (o, node->piece);
  seen.n = o->facets->len - seen.first;
  if (seen.n > 0 || node->piece->round)
    g_array_append_val (o->seen, seen);
  cover_with (o, node->piece);
}

static void ask (Order *o, Node *node);

/* @other may hide a part of @node, or they may meet. */
static void
settle (Order *o, Node *node, Node *other)
{
  const FpFront front = fp_convex_front (node->piece, other->piece);

  if (front == FP_FRONT_NEITHER || front == FP_FRONT_FIRST || !fp_outlines_overlap (node->piece, other->piece))
    return;
  if (front == FP_FRONT_SECOND && other->state == WAITING)
    ask (o, other);
  else if (o->cuts < CUTS_MOST)
    cut_one (o, node, other, front == FP_FRONT_MEET);
}

/* As fp_box_overlaps() of boxes that are not empty: asked more often than anything else here. */
static inline gboolean
may_overlap (const FpBox *a, const FpBox *b)
{
  return a->x0 < b->x1 && b->x0 < a->x1 && a->y0 < b->y1 && b->y0 < a->y1;
}

/* Gives out, before @node, all that may hide parts of it, and then itself, unless it is cut meanwhile. */
static void
ask (Order *o, Node *node)
{
  guint cuts;

  if (is_hidden (o, node->piece))
    {
      finish (node);
      return;
    }
  node->state = ASKED;
  do
    {
      cuts = o->cuts;
      for (Node *other = o->head.next; other != NULL && other->piece->box.lo.y < node->piece->box.hi.y;
           other = other->next)
        {
          if (other == node || other->state == DONE || !may_overlap (&node->piece->seen, &other->piece->seen))
            continue;
          settle (o, node, other);
          if (node->state == DONE)
            return;
        }
    }
  while (cuts != o->cuts);
  give_out (o, node);
}

void
fp_pew_order (FpPewPool *pool, FpBox picture, GPtrArray *pieces, GArray *seen, GArray *facets)
{
  g_autoptr (FpPewCover) cover = fp_pew_cover_new (picture);
  Order o = { .pool = pool, .cover = cover, .seen = seen, .facets = facets };

  fill_list (&o, pieces);
  while (o.head.next != NULL)
    ask (&o, o.head.next);
}
