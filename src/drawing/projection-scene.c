/* SPDX-License-Identifier: GPL-3.0-or-later */
/* projection-scene.c - what of a scene enters a view, and how */
#include "projection-private.h"

/* A plan is cut about 1.0 to 1.2 m above the floor (ISO 7519, from memory). */
#define PLAN_CUT 1100.0

typedef struct
{
  FpSketch       *sketch;
  const FpPlaced *placed;
  const FpSolid  *solid;
  guint           n_placed, n_solids;
  FpHidden        hidden;
  gboolean        ghosts;
  const gboolean *doubles; /* of each thing: it adds nothing to another */
  FpAgain        *again; /* NULL */
} Entering;

/* --- what enters, and how ------------------------------------------------------------- */

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

/* Fixed and solid, and better told by what is within: the bowl of a font, the inside of a tabernacle. */
static gboolean
is_cut_whole (FpRole role)
{
  return role == FP_ROLE_TABERNACLE || role == FP_ROLE_FONT || role == FP_ROLE_AMBO || role == FP_ROLE_PULPIT
         || role == FP_ROLE_AMBRY || role == FP_ROLE_PISCINA;
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
  if (part == FP_PART_BODY || part == FP_PART_DOOR)
    return is_cut_whole (fp_item_kind (owner->item)->role);
  for (guint i = 0; i < G_N_ELEMENTS (cut); i++)
    if (part == cut[i])
      return TRUE;
  return FALSE;
}

/* A cloth on a table, and where it falls at its ends, is not told from the table on a plan, which shows what is on it. */
static gboolean
is_mere_cloth (const FpSolid *solid)
{
  const FpBox3 box = fp_solid_box (solid);
  const double thick = 10; /* mm */

  return solid->part == FP_PART_CLOTH && (box.hi.z - box.lo.z < thick || box.hi.x - box.lo.x < thick || box.hi.y - box.lo.y < thick);
}

/* Whether a solid enters a plan at all; if so, as what. */
static gboolean
find_entry_in_plan (const FpPlaced *placed, const FpSolid *solid, FpSketchPart *part)
{
  const FpPlaced *owner = &placed[solid->owner];
  const FpKind *kind = fp_item_kind (owner->item);

  if (is_aloft (placed, solid->owner) || is_mere_cloth (solid))
    return FALSE;
  part->entry = FP_ENTRY_OVERHEAD;
  if (kind->role == FP_ROLE_GALLERY)
    return TRUE;
  if ((kind->flags & FP_KIND_CUT) != 0)
    part->how.plan_cut = owner->floor + PLAN_CUT;
  if (fp_solid_box (solid).lo.z < part->how.plan_cut)
    part->entry = solid->shape == FP_SOLID_PRISM && (solid->bx != 0 || solid->by != 0) ? FP_ENTRY_BY_FOOT
                                                                                       : FP_ENTRY_WHOLE;
  return TRUE;
}

static gboolean
find_entry (const Entering *e, guint index, FpSketchPart *part)
{
  const FpSolid *solid = &e->solid[index];
  const FpPlaced *owner = &e->placed[solid->owner];

  part->source = index;
  part->entry = FP_ENTRY_WHOLE;
  part->how = (FpSketchHow) { index, G_MAXDOUBLE, FALSE, 0, 0 };
  /* What is taken away is drawn in outline, not as cut. */
  if (!owner->ghost)
    {
      part->how.cut_face = e->sketch->view == FP_VIEW_PLAN || is_cut_part (owner, solid->part);
      part->how.fabric = is_fabric (owner, solid->part) ? 1 + (guint) owner->standing : 0;
      part->how.masonry = is_masonry (owner, solid->part) ? part->how.fabric : 0;
    }
  return e->sketch->view != FP_VIEW_PLAN || find_entry_in_plan (e->placed, solid, part);
}

static gboolean
is_drawn (const Entering *e, const FpPlaced *placed, gboolean ghosts)
{
  return placed->ghost == ghosts && !e->doubles[placed - e->placed] && fp_shows_thing (e->hidden, fp_item_kind (placed->item), placed->standing);
}

/* What is taken away is drawn over what comes in its place, but not over the walls behind which it stands. */
static gboolean
hides_ghosts (const Entering *e, const FpPlaced *owner, FpPart part)
{
  return e->sketch->view != FP_VIEW_PLAN && is_masonry (owner, part) && is_drawn (e, owner, FALSE);
}

/* --- entering --------------------------------------------------------------------------- */

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

/* Strokes of a symbol lie on top of their own thing; what stands on it hides them. */
static void
sketch_strokes (FpSketch *sketch, const FpPlaced *placed, guint owner)
{
  const FpPlaced *p = &placed[owner];
  g_autoptr (GArray) strokes = g_array_new (FALSE, FALSE, sizeof (FpStroke));

  fp_item_kind (p->item)->strokes (&p->form, strokes);
  for (guint i = 0; i < strokes->len; i++)
    {
      const FpStroke s = g_array_index (strokes, FpStroke, i);
      fp_sketch_add_stroke (sketch, fp_placed_point (p, (FpVec3) { s.a.x, s.a.y, p->extent.height }),
                            fp_placed_point (p, (FpVec3) { s.b.x, s.b.y, p->extent.height }), owner,
                            s.dashed ? FP_PEN_HIDDEN : FP_PEN_EDGE);
    }
}

/* Faces alone, to hide what is drawn. */
static void
drop_all_but_faces (FpSketch *sketch, const FpSketchPart *part)
{
  g_array_set_size (sketch->edges, part->edge);
  g_array_set_size (sketch->cuts, part->cut);
}

static void
make_part (const Entering *e, const FpSketchPart *part)
{
  switch (part->entry)
    {
    case FP_ENTRY_WHOLE: fp_sketch_add_solid (e->sketch, &e->solid[part->source], &part->how); break;
    case FP_ENTRY_BY_FOOT: sketch_by_foot (e->sketch, &e->solid[part->source], &part->how); break;
    case FP_ENTRY_OVERHEAD: fp_sketch_add_overhead (e->sketch, &e->solid[part->source]); break;
    case FP_ENTRY_STROKES: sketch_strokes (e->sketch, e->placed, part->source); break;
    }
  if (part->pass == FP_PASS_HIDERS)
    drop_all_but_faces (e->sketch, part);
}

static void
set_beginning (const FpSketch *sketch, FpSketchPart *part)
{
  part->point = sketch->points->len;
  part->face = sketch->faces->len;
  part->edge = sketch->edges->len;
  part->cut = sketch->cuts->len;
  part->overhead = sketch->overhead->len;
}

static void
enter (const Entering *e, FpSketchPart *part)
{
  const guint owner = part->pass == FP_PASS_STROKES ? part->source : e->solid[part->source].owner;

  set_beginning (e->sketch, part);
  if (e->again == NULL || !fp_again_take_part (e->again, e->sketch, part, owner))
    {
      make_part (e, part);
      if (e->again != NULL)
        fp_again_note_part (e->again, e->sketch, part);
    }
  g_array_append_val (e->sketch->parts, *part);
}

static void
enter_solids (const Entering *e)
{
  FpSketchPart part = { .pass = FP_PASS_SOLIDS };

  for (guint i = 0; i < e->n_solids; i++)
    if (is_drawn (e, &e->placed[e->solid[i].owner], e->ghosts) && find_entry (e, i, &part))
      enter (e, &part);
}

static void
enter_strokes (const Entering *e)
{
  FpSketchPart part = { .pass = FP_PASS_STROKES, .entry = FP_ENTRY_STROKES };

  for (guint i = 0; e->sketch->view == FP_VIEW_PLAN && i < e->n_placed; i++)
    if (is_drawn (e, &e->placed[i], e->ghosts) && fp_item_kind (e->placed[i].item)->strokes != NULL
        && !is_aloft (e->placed, i))
      {
        part.source = i;
        enter (e, &part);
      }
}

static void
enter_hiders (const Entering *e)
{
  FpSketchPart part = { .pass = FP_PASS_HIDERS };

  for (guint i = 0; i < e->n_solids; i++)
    if (hides_ghosts (e, &e->placed[e->solid[i].owner], e->solid[i].part) && find_entry (e, i, &part))
      enter (e, &part);
}

void
fp_sketch_add_scene (FpSketch *self, const FpScene *scene, FpHidden hidden, gboolean ghosts, FpAgain *again)
{
  g_autofree gboolean *doubles = fp_doubles_find (scene, is_aloft);
  Entering e = { .sketch = self, .hidden = hidden, .ghosts = ghosts, .again = again, .doubles = doubles };
  FpSketchPart end = { .pass = FP_PASS_JOINED };

  e.placed = fp_scene_placed (scene, &e.n_placed);
  e.solid = fp_scene_solids (scene, &e.n_solids);
  enter_solids (&e);
  enter_strokes (&e);
  if (ghosts && self->edges->len > 0)
    enter_hiders (&e);
  if (again != NULL)
    fp_again_end_parts (again);
  set_beginning (self, &end);
  g_array_append_val (self->parts, end);
}
