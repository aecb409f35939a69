/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/catches.h"

#include "chosen.h"

#include <math.h>
#include <string.h>

#define SAME 1e-6 /* mm; nearer than this two catches are equally near        */
#define WIDEST_GAP 3000.0 /* mm; wider ones nobody sees as equal: design judgement */

/* An edge or a middle of a thing, in one coordinate, with its extent in the other. */
typedef struct
{
  int      thing;
  gboolean middle;
  double   at, lo, hi;
} Line;

/* A thing as the gaps see it. */
typedef struct
{
  int    thing;
  double lo, hi;       /* in the coordinate that is caught                    */
  double across_lo, across_hi;
} Extent;

struct _FpCatches
{
  const FpScene *scene;
  FpBox          moving;
  GArray        *line[2];   /* of Line: of x, of y                            */
  GArray        *extent[2]; /* of Extent: of x, of y                          */
};

/* --- what there is to catch on -------------------------------------------- */

static void
add_line (FpCatches *self, guint way, int thing, gboolean middle, double at, double lo, double hi)
{
  const Line line = { thing, middle, at, lo, hi };

  if (isfinite (at) && isfinite (lo) && isfinite (hi))
    g_array_append_val (self->line[way], line);
}

static void
add_box (FpCatches *self, int thing, const FpBox *box)
{
  add_line (self, 0, thing, FALSE, box->x0, box->y0, box->y1);
  add_line (self, 0, thing, FALSE, box->x1, box->y0, box->y1);
  add_line (self, 0, thing, TRUE, (box->x0 + box->x1) / 2, box->y0, box->y1);
  add_line (self, 1, thing, FALSE, box->y0, box->x0, box->x1);
  add_line (self, 1, thing, FALSE, box->y1, box->x0, box->x1);
  add_line (self, 1, thing, TRUE, (box->y0 + box->y1) / 2, box->x0, box->x1);
}

/* Each side of an outline or of a wall that runs along or across the church. */
static void
add_sides (FpCatches *self, int thing, const FpPlaced *placed)
{
  const guint n = placed->form.n_corners;

  for (guint i = 0; i < n; i++)
    {
      const FpPoint a = fp_place_point (&placed->place, placed->form.corner[i]);
      const FpPoint b = fp_place_point (&placed->place, placed->form.corner[(i + 1) % n]);

      if (fabs (a.x - b.x) < SAME)
        add_line (self, 0, thing, FALSE, a.x, MIN (a.y, b.y), MAX (a.y, b.y));
      if (fabs (a.y - b.y) < SAME)
        add_line (self, 1, thing, FALSE, a.y, MIN (a.x, b.x), MAX (a.x, b.x));
    }
}

static void
add_extents (FpCatches *self, int thing, const FpBox *box)
{
  const Extent x = { thing, box->x0, box->x1, box->y0, box->y1 }, y = { thing, box->y0, box->y1, box->x0, box->x1 };

  g_array_append_val (self->extent[0], x);
  g_array_append_val (self->extent[1], y);
}

static void
add_thing (FpCatches *self, int thing, const FpPlaced *placed)
{
  if (placed->ghost || fp_box_is_empty (&placed->plan))
    return;
  if (placed->form.n_corners > 0)
    add_sides (self, thing, placed);
  else
    {
      add_box (self, thing, &placed->plan);
      add_extents (self, thing, &placed->plan);
    }
}

/* On what it stands, as far as lining it up goes; -1: the floor, on which footpaces and steps lie too. */
static int
ground_of (const FpPlaced *placed)
{
  return (fp_item_kind (placed->item)->flags & FP_KIND_ON_FLOOR) != 0 ? -1 : placed->support;
}

/* A footpace goes where the altar goes that stands on it. */
static gboolean
is_laid_round (const Chosen *chosen, int thing)
{
  if ((fp_item_kind (chosen->placed[thing].item)->flags & FP_KIND_LAID_ROUND) == 0)
    return FALSE;
  for (guint i = 0; i < chosen->n; i++)
    if (chosen->placed[chosen->index[i]].support == thing)
      return TRUE;
  return FALSE;
}

static gboolean
may_catch (const Chosen *chosen, int thing)
{
  if (chosen->n == 0)
    return TRUE;
  if (is_laid_round (chosen, thing))
    return FALSE;
  for (guint i = 0; i < chosen->n; i++)
    {
      const int ground = ground_of (&chosen->placed[chosen->index[i]]);

      if (thing == ground || ground_of (&chosen->placed[thing]) == ground)
        return TRUE;
    }
  return FALSE;
}

FpCatches *
fp_catches_new (const FpScene *scene, const char *const *moving, FpHidden hidden)
{
  FpCatches *self = g_new0 (FpCatches, 1);
  g_auto (Chosen) chosen = { 0 };
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  self->scene = fp_scene_ref (scene);
  self->moving = FP_BOX_EMPTY;
  for (guint way = 0; way < 2; way++)
    {
      self->line[way] = g_array_new (FALSE, FALSE, sizeof (Line));
      self->extent[way] = g_array_new (FALSE, FALSE, sizeof (Extent));
    }
  chosen_init (&chosen, scene, moving, 0, NULL);
  for (guint i = 0; i < n; i++)
    if (!chosen_carries (&chosen, (int) i))
      {
        if (may_catch (&chosen, (int) i)
            && fp_shows_thing (hidden, fp_item_kind (placed[i].item), placed[i].standing))
          add_thing (self, (int) i, &placed[i]);
      }
    else if (!placed[i].ghost)
      fp_box_add_box (&self->moving, &placed[i].plan);
  return self;
}

void
fp_catches_free (FpCatches *self)
{
  if (self == NULL)
    return;
  for (guint way = 0; way < 2; way++)
    {
      g_array_unref (self->line[way]);
      g_array_unref (self->extent[way]);
    }
  fp_scene_unref (self->scene);
  g_free (self);
}

FpBox
fp_catches_moving (const FpCatches *self)
{
  return self->moving;
}

/* --- one coordinate ------------------------------------------------------- */

/* What moves: its ends and its extent in the other coordinate.  A point has no length. */
typedef struct
{
  double   lo, hi, across_lo, across_hi;
  gboolean is_point;
} Mover;

typedef struct
{
  const FpCatches *catches;
  guint            way;
  Mover            mover;
  double           reach;
  FpCatch          best;
} Search;

static void
offer (Search *s, FpCatch found)
{
  const double nearer = fabs (s->best.by) - fabs (found.by);

  if (fabs (found.by) > s->reach || found.gap > WIDEST_GAP)
    return;
  found.along = s->way == 1;
  if (s->best.sort == FP_CATCH_NONE || nearer > SAME || (fabs (nearer) <= SAME && found.sort < s->best.sort))
    s->best = found;
}

static const char *
id_of (const Search *s, int thing)
{
  return fp_item_id (fp_scene_placed (s->catches->scene, NULL)[thing].item);
}

/* Whether they have some of the other coordinate in common, or nearly so: then they are neighbours. */
static gboolean
are_abreast (const Search *s, double lo, double hi)
{
  return s->mover.across_lo <= hi + s->reach && lo <= s->mover.across_hi + s->reach;
}

static void
offer_line (Search *s, const Line *line, double of, FpCatchSort sort)
{
  const Mover *m = &s->mover;

  offer (s, (FpCatch) { .sort = sort, .at = line->at, .by = line->at - of, .from = MIN (line->lo, m->across_lo),
                        .to = MAX (line->hi, m->across_hi), .id = id_of (s, line->thing) });
}

static void
search_lines (Search *s)
{
  const GArray *lines = s->catches->line[s->way];
  const Mover *m = &s->mover;

  for (guint i = 0; i < lines->len; i++)
    {
      const Line *line = &g_array_index (lines, Line, i);
      const FpCatchSort edge = are_abreast (s, line->lo, line->hi) ? FP_CATCH_EDGE
                                                                                    : FP_CATCH_IN_LINE;
      if (line->middle)
        offer_line (s, line, (m->lo + m->hi) / 2, FP_CATCH_CENTRE);
      else
        {
          offer_line (s, line, m->lo, edge);
          if (!m->is_point)
            offer_line (s, line, m->hi, edge);
        }
    }
}

static void
search_axis (Search *s)
{
  const Mover *m = &s->mover;

  if (s->way == 0)
    offer (s, (FpCatch) { .sort = FP_CATCH_AXIS, .at = 0, .by = -(m->lo + m->hi) / 2,
                          .from = m->across_lo, .to = m->across_hi });
}

/* --- gaps ----------------------------------------------------------------- */

static gboolean
stands_between (const Search *s, const Extent *a, const Extent *b)
{
  return are_abreast (s, a->across_lo, a->across_hi) && are_abreast (s, b->across_lo, b->across_hi)
         && b->lo - a->hi >= s->mover.hi - s->mover.lo;
}

/* @first, @second: where the two gaps begin that are then equal */
static void
offer_gap (Search *s, double lo, double gap, double first, double second)
{
  const Mover *m = &s->mover;

  offer (s, (FpCatch) { .sort = FP_CATCH_GAP, .at = lo, .by = lo - m->lo, .from = m->across_lo, .to = m->across_hi,
                        .gap = gap, .gap_at = { first, second } });
}

/* In the middle between a and b; or beyond either, as far as the two are apart. */
static void
search_pair (Search *s, const Extent *a, const Extent *b)
{
  const double length = s->mover.hi - s->mover.lo, gap = b->lo - a->hi;

  if (gap <= 1.0)
    return;
  if (stands_between (s, a, b))
    offer_gap (s, (a->hi + b->lo - length) / 2, (gap - length) / 2, a->hi, (a->hi + b->lo + length) / 2);
  if (are_abreast (s, b->across_lo, b->across_hi))
    offer_gap (s, b->hi + gap, gap, a->hi, b->hi);
  if (are_abreast (s, a->across_lo, a->across_hi))
    offer_gap (s, a->lo - gap - length, gap, a->lo - gap, a->hi);
}

/* Only things of one row have a gap between them. */
static gboolean
are_in_a_row (const Extent *a, const Extent *b)
{
  return a->across_lo < b->across_hi && b->across_lo < a->across_hi;
}

static void
search_gaps (Search *s)
{
  const GArray *extents = s->catches->extent[s->way];

  for (guint i = 0; i < extents->len; i++)
    for (guint j = 0; j < extents->len; j++)
      {
        const Extent *a = &g_array_index (extents, Extent, i), *b = &g_array_index (extents, Extent, j);
        if (i != j && are_abreast (s, a->across_lo, a->across_hi) && are_in_a_row (a, b))
          search_pair (s, a, b);
      }
}

static FpCatch
search (const FpCatches *self, guint way, const Mover *mover, double reach)
{
  Search s = { self, way, *mover, reach, { .sort = FP_CATCH_NONE } };

  search_axis (&s);
  search_lines (&s);
  if (!mover->is_point)
    search_gaps (&s);
  return s.best;
}

void
fp_catches_find (const FpCatches *self, FpVec3 *by, guint ways, double reach, FpCatch *x, FpCatch *y)
{
  const FpBox *box = &self->moving;
  const Mover of_x = { box->x0 + by->x, box->x1 + by->x, box->y0 + by->y, box->y1 + by->y, FALSE };
  const Mover of_y = { box->y0 + by->y, box->y1 + by->y, box->x0 + by->x, box->x1 + by->x, FALSE };
  FpCatch found_x = { .sort = FP_CATCH_NONE }, found_y = { .sort = FP_CATCH_NONE };

  if (!fp_box_is_empty (box))
    {
      if (ways & 1)
        found_x = search (self, 0, &of_x, reach);
      if (ways & 2)
        found_y = search (self, 1, &of_y, reach);
    }
  by->x += found_x.by;
  by->y += found_y.by;
  if (x != NULL)
    *x = found_x;
  if (y != NULL)
    *y = found_y;
}

void
fp_catches_find_point (const FpCatches *self, FpPoint *point, double reach, FpCatch *x, FpCatch *y)
{
  const Mover of_x = { point->x, point->x, point->y, point->y, TRUE };
  const Mover of_y = { point->y, point->y, point->x, point->x, TRUE };
  const FpCatch found_x = search (self, 0, &of_x, reach), found_y = search (self, 1, &of_y, reach);

  point->x += found_x.by;
  point->y += found_y.by;
  if (x != NULL)
    *x = found_x;
  if (y != NULL)
    *y = found_y;
}

char *
fp_catch_tells (const FpCatch *found, const FpScene *scene)
{
  const int index = found->id != NULL ? fp_scene_find (scene, found->id) : -1;
  const char *name = index >= 0 ? fp_item_name (fp_scene_placed (scene, NULL)[index].item) : "something else";
  g_autofree char *gap = NULL;

  switch (found->sort)
    {
    case FP_CATCH_AXIS:
      return g_strdup ("on the axis");
    case FP_CATCH_EDGE:
      return g_strdup_printf ("at the edge of %s", name);
    case FP_CATCH_CENTRE:
      return g_strdup_printf ("in line with the middle of %s", name);
    case FP_CATCH_IN_LINE:
      return g_strdup_printf ("in line with the edge of %s", name);
    case FP_CATCH_GAP:
      gap = fp_length_format (found->gap, fp_project_brief (fp_scene_project (scene))->units);
      return g_strdup_printf ("equal gaps of %s", gap);
    case FP_CATCH_NONE:
    default:
      return g_strdup ("");
    }
}
