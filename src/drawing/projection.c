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

/* A plan is cut about 1.0 to 1.2 m above the floor (ISO 7519, from memory). */
#define PLAN_CUT 1100.0

/* Sections are cut a hair beyond where they are told, so that what begins on the axis is cut too. */
#define BESIDE 1e-3

typedef struct
{
  FpSketch   *sketch;
  FpFaceGrid *grid;
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
  GArray   *lines; /* FpProjectedLine */
  GArray   *cuts;  /* FpProjectedCut  */
  FpBox     box;
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

/* --- what enters a view, and how --------------------------------------------------- */

/* A gallery, or something that stands on one: a plan of the church below does not show it from above. */
static gboolean
is_aloft (const FpPlaced *placed, guint index)
{
  const FpPlaced *p = &placed[index];

  while (p->support >= 0)
    {
      p = &placed[p->support];
      if (fp_item_kind (p->item)->role == FP_ROLE_GALLERY)
        return TRUE;
    }
  return FALSE;
}

/* Building: where cut parts of it meet, no line parts them. */
static gboolean
is_fabric (const FpPlaced *owner, FpPart part)
{
  return (fp_item_kind (owner->item)->flags & FP_KIND_SURVEY) != 0
         && (part == FP_PART_WALL || part == FP_PART_PIER || part == FP_PART_FLOOR || part == FP_PART_STEP);
}

/* Walls and piers that run on into each other show one face: nobody sees which of them was drawn first. */
static gboolean
is_masonry (const FpPlaced *owner, FpPart part)
{
  return is_fabric (owner, part) && (part == FP_PART_WALL || part == FP_PART_PIER);
}

/* What a section shows as cut.  Slender and movable things are shown whole, as shafts and the like are on any drawing
 * (ISO 128-3, from memory); the seats of a bench are boards that are fixed. */
static gboolean
is_cut_part (const FpPlaced *owner, FpPart part)
{
  static const FpPart cut[] = { FP_PART_WALL, FP_PART_PIER, FP_PART_FLOOR, FP_PART_STEP, FP_PART_FOOTPACE,
                                FP_PART_MENSA, FP_PART_SUPPORT, FP_PART_SHELF, FP_PART_PANEL };

  if (part == FP_PART_SEAT || part == FP_PART_BACK)
    return fp_item_kind (owner->item)->role != FP_ROLE_CHAIR;
  for (guint i = 0; i < G_N_ELEMENTS (cut); i++)
    if (part == cut[i])
      return TRUE;
  return FALSE;
}

static double
foot_over (const FpSolid *s, double level, FpPoint p)
{
  return fp_solid_foot_at (s, p.x, p.y) - level;
}

/* The part of a prism whose foot lies above a level, or below it; free its outline. */
static FpSolid
part_by_foot (const FpSolid *s, double level, gboolean above)
{
  FpSolid part = *s;

  part.outline = g_new (FpPoint, 2 * (gsize) s->n_outline);
  part.n_outline = 0;
  for (guint i = 0; i < s->n_outline; i++)
    {
      const FpPoint a = s->outline[i], b = s->outline[(i + 1) % s->n_outline];
      const double over_a = foot_over (s, level, a), over_b = foot_over (s, level, b);
      if ((over_a > 0) == above)
        part.outline[part.n_outline++] = a;
      if ((over_a > 0) != (over_b > 0))
        {
          const double t = over_a / (over_a - over_b);
          part.outline[part.n_outline++] = (FpPoint) { a.x + t * (b.x - a.x), a.y + t * (b.y - a.y) };
        }
    }
  return part;
}

/* The foot of an arch may begin below the cut and end above it. */
static void
sketch_by_foot (FpSketch *sketch, const FpSolid *solid, const FpSketchHow *how)
{
  const FpSolid below = part_by_foot (solid, how->plan_cut, FALSE), above = part_by_foot (solid, how->plan_cut, TRUE);

  if (below.n_outline >= 3)
    fp_sketch_add_solid (sketch, &below, how);
  if (above.n_outline >= 3)
    fp_sketch_add_overhead (sketch, &above);
  g_free (below.outline);
  g_free (above.outline);
}

static void
sketch_in_plan (FpSketch *sketch, const FpPlaced *placed, const FpSolid *solid, FpSketchHow *how)
{
  const FpPlaced *owner = &placed[solid->owner];
  const FpKind *kind = fp_item_kind (owner->item);
  const FpBox3 box = fp_solid_box (solid);
  const double cut = owner->floor + PLAN_CUT;

  if (is_aloft (placed, solid->owner))
    return;
  if (kind->role == FP_ROLE_GALLERY)
    {
      fp_sketch_add_overhead (sketch, solid);
      return;
    }
  if ((kind->flags & FP_KIND_CUT) != 0)
    how->plan_cut = cut;
  if (box.lo.z >= how->plan_cut)
    fp_sketch_add_overhead (sketch, solid);
  else if (solid->shape == FP_SOLID_PRISM && (solid->bx != 0 || solid->by != 0))
    sketch_by_foot (sketch, solid, how);
  else
    fp_sketch_add_solid (sketch, solid, how);
}

static void
sketch_solid (FpSketch *sketch, const FpPlaced *placed, const FpSolid *solid, guint index)
{
  const gboolean ghost = placed[solid->owner].ghost;
  FpSketchHow how = { index, G_MAXDOUBLE, FALSE, 0, 0 };

  /* What is taken away is drawn in outline, not as cut. */
  if (!ghost)
    {
      how.cut_face = sketch->view == FP_VIEW_PLAN || is_cut_part (&placed[solid->owner], solid->part);
      how.fabric = is_fabric (&placed[solid->owner], solid->part) ? 1 + (guint) placed[solid->owner].standing : 0;
      how.masonry = is_masonry (&placed[solid->owner], solid->part) ? how.fabric : 0;
    }
  if (sketch->view == FP_VIEW_PLAN)
    sketch_in_plan (sketch, placed, solid, &how);
  else
    fp_sketch_add_solid (sketch, solid, &how);
}

/* Strokes of a symbol lie on top of their own thing; what stands on it hides them. */
static void
sketch_strokes (FpSketch *sketch, const FpPlaced *placed, guint owner)
{
  const FpPlaced *p = &placed[owner];
  const FpKind *kind = fp_item_kind (p->item);
  g_autoptr (GArray) strokes = g_array_new (FALSE, FALSE, sizeof (FpStroke));

  if (sketch->view != FP_VIEW_PLAN || kind->strokes == NULL || is_aloft (placed, owner))
    return;
  kind->strokes (&p->form, strokes);
  for (guint i = 0; i < strokes->len; i++)
    {
      const FpStroke s = g_array_index (strokes, FpStroke, i);
      fp_sketch_add_stroke (sketch, fp_placed_point (p, (FpVec3) { s.a.x, s.a.y, p->extent.height }),
                            fp_placed_point (p, (FpVec3) { s.b.x, s.b.y, p->extent.height }), owner,
                            s.dashed ? FP_PEN_HIDDEN : FP_PEN_EDGE);
    }
}

static gboolean
is_drawn (const FpProjection *self, const FpPlaced *placed, gboolean ghosts)
{
  return placed->ghost == ghosts && fp_shows_thing (self->hidden, fp_item_kind (placed->item), placed->standing);
}

/* Faces alone, to hide what is drawn. */
static void
sketch_hider (FpSketch *sketch, const FpPlaced *placed, const FpSolid *solid, guint index)
{
  const guint edges = sketch->edges->len, cuts = sketch->cuts->len;

  sketch_solid (sketch, placed, solid, index);
  g_array_set_size (sketch->edges, edges);
  g_array_set_size (sketch->cuts, cuts);
}

/* What is taken away is drawn over what comes in its place, but not over the walls behind which it stands. */
static gboolean
hides_ghosts (const FpProjection *self, const FpPlaced *owner, FpPart part)
{
  return self->view != FP_VIEW_PLAN && is_masonry (owner, part) && is_drawn (self, owner, FALSE);
}

static FpSketch *
sketch_layer (const FpProjection *self, gboolean ghosts)
{
  FpSketch *sketch = fp_sketch_new (self->view, self->cut.turned, nearest_depth (self->scene, self->view, &self->cut));
  guint n_solids, n_placed;
  const FpSolid *solid = fp_scene_solids (self->scene, &n_solids);
  const FpPlaced *placed = fp_scene_placed (self->scene, &n_placed);

  for (guint i = 0; i < n_solids; i++)
    if (is_drawn (self, &placed[solid[i].owner], ghosts))
      sketch_solid (sketch, placed, &solid[i], i);
  for (guint i = 0; i < n_placed; i++)
    if (is_drawn (self, &placed[i], ghosts))
      sketch_strokes (sketch, placed, i);
  for (guint i = 0; ghosts && sketch->edges->len > 0 && i < n_solids; i++)
    if (hides_ghosts (self, &placed[solid[i].owner], solid[i].part))
      sketch_hider (sketch, placed, &solid[i], i);
  return sketch;
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
  return fp_projection_new_until (scene, view, cut, hidden, NULL);
}

FpProjection *
fp_projection_new_until (const FpScene *scene, FpViewId view, const FpCut *cut, FpHidden hidden, GCancellable *cancel)
{
  FpProjection *self = g_new0 (FpProjection, 1);
  g_autoptr (GArray) pieces = g_array_new (FALSE, FALSE, sizeof (FpPiece));

  g_atomic_ref_count_init (&self->ref_count);
  self->scene = fp_scene_ref (scene);
  self->view = view;
  self->cut = cut_of (view, cut);
  self->cut.at = self->cut.placed ? self->cut.at : 0;
  self->hidden = hidden;
  self->lines = g_array_new (FALSE, FALSE, sizeof (FpProjectedLine));
  self->cuts = g_array_new (FALSE, FALSE, sizeof (FpProjectedCut));
  g_array_set_clear_func (self->cuts, clear_cut);
  for (guint i = 0; i < N_LAYERS; i++)
    {
      Layer *layer = &self->layer[i];
      layer->sketch = sketch_layer (self, i == GHOSTS);
      fp_sketch_join_cuts (layer->sketch, self->cuts);
      layer->grid = fp_face_grid_new (layer->sketch);
      fp_face_grid_visible (layer->grid, i == GHOSTS, cancel, pieces);
    }
  fp_pieces_merge (pieces, self->lines);
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
    }
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
