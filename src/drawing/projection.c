/* SPDX-License-Identifier: GPL-3.0-or-later */
/* projection.c - a scene seen in plan, elevation and section
 *
 * A pure function of the scene, so any thread may make one.  What the
 * alternative takes away (ghosts) is sketched apart: it hides nothing that
 * stands, and nothing that stands hides it.
 */
#include "projection-private.h"

#include "footpace/view.h"

#include <math.h>

/* Sections are cut a hair beyond where they are told, so that what begins on the axis is cut too. */
#define BESIDE 1e-3

typedef struct
{
  FpSketch   *sketch;
  FpFaceGrid *grid;
  GArray     *first; /* guint: where the pieces of each edge begin, and the end */
} Layer;

enum { LIVE, GHOSTS, N_LAYERS };

struct _FpProjection
{
  gatomicrefcount ref_count;
  FpScene  *scene;
  FpViewId  view;
  FpCut     cut;
  FpHidden  hidden;
  Layer     layer[N_LAYERS];
  GArray   *pieces; /* FpPiece: of what the lines were made */
  FpMerging *merging;
  GArray   *lines;  /* FpProjectedLine */
  GArray   *cuts;   /* FpProjectedCut  */
  FpBox     box;
  gboolean  whole;  /* was not cancelled */
};

FpPoint
fp_view_point (FpViewId view, FpVec3 p)
{
  const FpVec3 q = fp_sight_point (view, FALSE, p);

  return (FpPoint) { q.x, q.y };
}

FpPoint
fp_layout_point (const FpViewLayout *layout, FpViewId view, FpVec3 p)
{
  const FpVec3 q = fp_sight_point (view, layout->section[view].turned, p);

  return (FpPoint) { q.x, q.y };
}

double
fp_cut_across (const FpScene *scene)
{
  const int altar = fp_scene_celebrated_altar (scene);
  const FpBox3 sanctuary = fp_scene_sanctuary (scene);
  guint n;

  if (altar >= 0)
    return (fp_scene_placed (scene, &n)[altar].plan.y0 + fp_scene_placed (scene, &n)[altar].plan.y1) / 2;
  return sanctuary.lo.y <= sanctuary.hi.y ? (sanctuary.lo.y + sanctuary.hi.y) / 2 : 0;
}

/* Depth of the plane at which the view is told to be cut, towards the viewer. */
static double
depth_of_cut (FpViewId view, const FpCut *cut)
{
  const FpVec3 at = { cut->at, cut->at, 0 };

  return fp_sight_point (view, cut->turned, at).z - BESIDE;
}

/* Depth of the cutting plane. */
static double
nearest_depth (const FpScene *scene, FpViewId view, const FpCut *cut)
{
  switch (view)
    {
    case FP_VIEW_PLAN: return G_MAXDOUBLE;
    case FP_VIEW_ELEVATION: return cut->placed ? depth_of_cut (view, cut) : -fp_elevation_plane (scene);
    case FP_VIEW_SECTION: return depth_of_cut (view, cut);
    case FP_N_VIEWS: break;
    }
  return G_MAXDOUBLE;
}

double
fp_projection_nearest (const FpProjection *self)
{
  return nearest_depth (self->scene, self->view, &self->cut);
}

/* --- the projection ------------------------------------------------------------------ */

static void
clear_cut (gpointer data)
{
  FpProjectedCut *cut = data;

  g_free (cut->outline);
}

static void
measure_box (FpProjection *self)
{
  self->box = FP_BOX_EMPTY;
  for (guint i = 0; i < self->lines->len; i++)
    {
      const FpProjectedLine *l = &g_array_index (self->lines, FpProjectedLine, i);
      fp_box_add_point (&self->box, l->a);
      fp_box_add_point (&self->box, l->b);
    }
  for (guint i = 0; i < self->cuts->len; i++)
    {
      const FpProjectedCut *c = &g_array_index (self->cuts, FpProjectedCut, i);
      const FpBox box = fp_outline_box (c->outline, c->n);
      fp_box_add_box (&self->box, &box);
    }
}

FpProjection *
fp_projection_new (const FpScene *scene, FpViewId view)
{
  return fp_projection_new_cut (scene, view, NULL, 0);
}

/* What nobody says: an elevation is seen from before the rail, a section on the axis. */
static FpCut
cut_of (FpViewId view, const FpCut *cut)
{
  if (view == FP_VIEW_PLAN || cut == NULL || !isfinite (cut->at) || (view == FP_VIEW_ELEVATION && !cut->placed))
    return (FpCut) { FALSE, 0, FALSE };
  return *cut;
}

FpProjection *
fp_projection_new_cut (const FpScene *scene, FpViewId view, const FpCut *cut, FpHidden hidden)
{
  return fp_projection_again (NULL, scene, view, cut, hidden, NULL);
}

static FpProjection *
projection_new (const FpScene *scene, FpViewId view, const FpCut *cut, FpHidden hidden)
{
  FpProjection *self = g_new0 (FpProjection, 1);

  g_atomic_ref_count_init (&self->ref_count);
  self->scene = fp_scene_ref (scene);
  self->view = view;
  self->cut = cut_of (view, cut);
  self->cut.at = self->cut.placed ? self->cut.at : 0;
  self->hidden = hidden;
  self->pieces = g_array_new (FALSE, FALSE, sizeof (FpPiece));
  self->lines = g_array_new (FALSE, FALSE, sizeof (FpProjectedLine));
  self->cuts = g_array_new (FALSE, FALSE, sizeof (FpProjectedCut));
  g_array_set_clear_func (self->cuts, clear_cut);
  for (guint i = 0; i < N_LAYERS; i++)
    {
      self->layer[i].sketch = fp_sketch_new (view, self->cut.turned, nearest_depth (scene, view, &self->cut));
      self->layer[i].first = g_array_new (FALSE, FALSE, sizeof (guint));
    }
  return self;
}

static void
make_layer (FpProjection *self, guint which, FpAgain *again, GCancellable *cancel)
{
  Layer *layer = &self->layer[which];

  fp_sketch_add_scene (layer->sketch, self->scene, self->hidden, which == GHOSTS, again);
  fp_sketch_join_cuts (layer->sketch, self->cuts, again);
  layer->grid = fp_face_grid_new (layer->sketch);
  fp_face_grid_visible (layer->grid, which == GHOSTS, cancel, again, layer->first, self->pieces);
}

/* Seen from elsewhere, or cut off at another plane, nothing looks the same. */
static gboolean
is_seen_alike (const FpProjection *a, const FpProjection *b)
{
  return a->view == b->view && a->layer[LIVE].sketch->turned == b->layer[LIVE].sketch->turned
         && a->layer[LIVE].sketch->near == b->layer[LIVE].sketch->near;
}

/* Arrays that grow are copied over and over: this one will be about as long as the last. */
static void
make_room (GArray *array, const GArray *last)
{
  g_array_set_size (array, last->len + last->len / 16 + 16);
  g_array_set_size (array, 0);
}

static void
make_room_as_last (FpProjection *self, const FpProjection *last)
{
  make_room (self->pieces, last->pieces);
  make_room (self->lines, last->lines);
  for (guint i = 0; i < N_LAYERS; i++)
    {
      FpSketch *sketch = self->layer[i].sketch;
      const FpSketch *was = last->layer[i].sketch;

      make_room (self->layer[i].first, last->layer[i].first);
      make_room (sketch->points, was->points);
      make_room (sketch->faces, was->faces);
      make_room (sketch->edges, was->edges);
      make_room (sketch->parts, was->parts);
    }
}

static void
make_again (FpProjection *self, const FpProjection *last, GCancellable *cancel)
{
  g_auto (FpCounterparts) same = fp_counterparts_find (last->scene, self->scene);
  g_autoptr (GArray) piece_was = g_array_new (FALSE, FALSE, sizeof (int));
  const FpLastMerging merging = { last->merging, last->lines, piece_was, &same };
  const int none = -1;

  make_room_as_last (self, last);
  make_room (piece_was, last->pieces);
  for (guint i = 0; i < N_LAYERS; i++)
    {
      const Layer *layer = &last->layer[i];
      const FpLastLayer was = { layer->sketch, last->cuts, layer->first, last->pieces };
      g_autoptr (FpAgain) again = fp_again_new (&was, &same, piece_was);
      make_layer (self, i, again, cancel);
    }
  while (piece_was->len < self->pieces->len)
    g_array_append_val (piece_was, none);
  self->merging = fp_merging_new (self->pieces, &merging, self->lines);
}

static void
make_from_nothing (FpProjection *self, GCancellable *cancel)
{
  for (guint i = 0; i < N_LAYERS; i++)
    make_layer (self, i, NULL, cancel);
  self->merging = fp_merging_new (self->pieces, NULL, self->lines);
}

FpProjection *
fp_projection_again (const FpProjection *last, const FpScene *scene, FpViewId view, const FpCut *cut, FpHidden hidden,
                     GCancellable *cancel)
{
  FpProjection *self = projection_new (scene, view, cut, hidden);

  if (last != NULL && last->whole && is_seen_alike (last, self))
    make_again (self, last, cancel);
  else
    make_from_nothing (self, cancel);
  self->whole = !g_cancellable_is_cancelled (cancel);
  measure_box (self);
  return self;
}

FpProjection *
fp_projection_ref (FpProjection *self)
{
  g_atomic_ref_count_inc (&self->ref_count);
  return self;
}

void
fp_projection_unref (FpProjection *self)
{
  if (self == NULL || !g_atomic_ref_count_dec (&self->ref_count))
    return;
  for (guint i = 0; i < N_LAYERS; i++)
    {
      fp_face_grid_free (self->layer[i].grid);
      fp_sketch_free (self->layer[i].sketch);
      g_array_unref (self->layer[i].first);
    }
  g_array_unref (self->pieces);
  fp_merging_free (self->merging);
  g_array_unref (self->lines);
  g_array_unref (self->cuts);
  fp_scene_unref (self->scene);
  g_free (self);
}

const FpScene *
fp_projection_scene (const FpProjection *self)
{
  return self->scene;
}

FpViewId
fp_projection_view (const FpProjection *self)
{
  return self->view;
}

FpCut
fp_projection_cut (const FpProjection *self)
{
  return self->cut;
}

FpHidden
fp_projection_hidden (const FpProjection *self)
{
  return self->hidden;
}

FpBox
fp_projection_box (const FpProjection *self)
{
  return self->box;
}

const FpProjectedLine *
fp_projection_lines (const FpProjection *self, guint *n)
{
  *n = self->lines->len;
  return (const FpProjectedLine *) (gconstpointer) self->lines->data;
}

const FpProjectedCut *
fp_projection_cuts (const FpProjection *self, guint *n)
{
  *n = self->cuts->len;
  return (const FpProjectedCut *) (gconstpointer) self->cuts->data;
}

static int
owner_at (const Layer *layer, FpPoint at)
{
  const int face = fp_face_grid_nearest (layer->grid, at);

  return face >= 0 ? (int) g_array_index (layer->sketch->faces, FpFace, face).owner : -1;
}

/* What has its level from the datum is a backdrop. */
static gboolean
is_backdrop (const FpScene *scene, int owner)
{
  guint n;

  return owner < 0 || (fp_item_kind (fp_scene_placed (scene, &n)[owner].item)->flags & FP_KIND_FROM_DATUM) != 0;
}

int
fp_projection_pick (const FpProjection *self, FpPoint at)
{
  const int live = owner_at (&self->layer[LIVE], at);
  const int ghost = is_backdrop (self->scene, live) ? owner_at (&self->layer[GHOSTS], at) : -1;

  /* Or a wall that hides it. */
  return ghost >= 0 && fp_scene_placed (self->scene, NULL)[ghost].ghost ? ghost : live;
}
