/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "thin.h"

#include <math.h>

/* mm of paper between the borders of two lines (ISO 128-2, from memory). */
#define CLEAR 0.7

/* Lines are sorted by direction, each into the two sectors nearest to its own, so that any two within half a
 * sector of each other meet in one. */
#define SECTORS 36u

/* A line counts as covered when another runs along so much of it. */
#define COVERED 0.6

/* Shorter pieces are no lines but parts of a shape, mm of paper. */
#define SHORTEST 0.7

/* A line seen along the direction of a sector; paper mm. */
typedef struct
{
  guint  line;          /* index in the projection                          */
  double t0, t1;        /* along                                            */
  double across;
} Along;

typedef struct
{
  guint  line;
  int    weight;        /* of the pen, the heavier first                    */
  double length;        /* mm of paper, rounded                             */
  guint  turn;          /* 0 for the first of its like, then every half, fourth … */
} Candidate;

typedef struct
{
  const FpProjectedLine *line;
  const FpPlaced        *placed;
  guint                  n_placed;
  double                 scale;
  guint                  first, n;      /* lines of one thing */
  GArray                *sector[SECTORS]; /* Along, by across  */
  double                 along[SECTORS][2]; /* cosine and sine of each */
  double                *turn;          /* in sectors, of each line from the first */
  gboolean              *kept;          /* from the first     */
  gboolean              *gone;          /* likewise: left out whatever lies about it */
  gboolean              *whole;         /* likewise: part of a sign that stays, whatever lies about it */
} Thinning;

double
fp_thin_scale (double scale)
{
  return pow (2, ceil (4 * log2 (MAX (scale, 1)) - 1e-9) / 4);
}

static double
stroke (const Thinning *t, const FpProjectedLine *line)
{
  const FpStanding standing = line->owner < t->n_placed ? t->placed[line->owner].standing : FP_STANDING_EXISTING;

  return fp_pen_stroke (line->pen, standing);
}

/* A thing without one of its sides would be another thing; but steps are many. */
static gboolean
may_go (const Thinning *t, const FpProjectedLine *line)
{
  const FpRole role = line->owner < t->n_placed ? fp_item_kind (t->placed[line->owner].item)->role : FP_ROLE_NONE;

  return line->pen == FP_PEN_EDGE
         || (line->pen == FP_PEN_OUTLINE && (role == FP_ROLE_FOOTPACE || role == FP_ROLE_STEPS));
}

static double
paper_length (const Thinning *t, const FpProjectedLine *line)
{
  return hypot (line->b.x - line->a.x, line->b.y - line->a.y) / t->scale;
}

/* --- sectors ------------------------------------------------------------------------ */

static double
sector_of (const FpProjectedLine *line)
{
  const double turn = atan2 (line->b.y - line->a.y, line->b.x - line->a.x);

  return fmod (turn / G_PI + 2, 1) * SECTORS;
}

static void
see_along (const Thinning *t, guint index, guint sector, Along *out)
{
  const FpProjectedLine *line = &t->line[index];
  const double c = t->along[sector][0], s = t->along[sector][1];
  const double ta = (line->a.x * c + line->a.y * s) / t->scale, tb = (line->b.x * c + line->b.y * s) / t->scale;
  const double x = (line->a.x + line->b.x) / 2, y = (line->a.y + line->b.y) / 2;

  *out = (Along) { index, MIN (ta, tb), MAX (ta, tb), (y * c - x * s) / t->scale };
}

static int
compare_across (gconstpointer a, gconstpointer b)
{
  const Along *p = a, *q = b;

  if (p->across != q->across)
    return p->across < q->across ? -1 : 1;
  return p->t0 < q->t0 ? -1 : p->t0 > q->t0 ? 1 : (int) p->line - (int) q->line;
}

static void
fill_sectors (Thinning *t)
{
  for (guint i = t->first; i < t->first + t->n; i++)
    {
      if (t->gone[i - t->first] || paper_length (t, &t->line[i]) < SHORTEST)
        continue;
      t->turn[i - t->first] = sector_of (&t->line[i]);
      const guint low = (guint) floor (t->turn[i - t->first]) % SECTORS;
      for (guint k = 0; k < 2; k++)
        {
          const guint sector = (low + k) % SECTORS;
          Along along;
          see_along (t, i, sector, &along);
          g_array_append_val (t->sector[sector], along);
        }
    }
  for (guint s = 0; s < SECTORS; s++)
    g_array_sort (t->sector[s], compare_across);
}

/* --- whose turn it is ----------------------------------------------------------------- */

static int
weight_of (FpPen pen)
{
  return pen == FP_PEN_CUT ? 2 : pen == FP_PEN_OUTLINE ? 1 : 0;
}

static int
compare_candidates (gconstpointer a, gconstpointer b)
{
  const Candidate *p = a, *q = b;

  if (p->weight != q->weight)
    return q->weight - p->weight;
  if (p->length != q->length)
    return p->length > q->length ? -1 : 1;
  if (p->turn != q->turn)
    return p->turn < q->turn ? -1 : 1;
  return p->line < q->line ? -1 : p->line > q->line;
}

/* Of eight in a row: 0, 4, 2, 6 and then the odd ones. */
static guint
turn_of (guint place)
{
  guint turn = 32;

  if (place == 0)
    return 0;
  while ((place & 1u) == 0)
    {
      place >>= 1;
      turn--;
    }
  return turn;
}

/* All lines of the thing, the one that stays longest first. */
static GArray *
candidates_of (const Thinning *t)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (Candidate));

  for (guint s = 0; s < SECTORS; s++)
    for (guint i = 0; i < t->sector[s]->len; i++)
      {
        const Along *along = &g_array_index (t->sector[s], Along, i);
        const FpProjectedLine *line = &t->line[along->line];
        /* World mm: the order must not depend on the scale. */
        const Candidate one = { along->line, weight_of (line->pen), round (paper_length (t, line) * t->scale / 50),
                                turn_of (i) };
        if ((guint) round (t->turn[along->line - t->first]) % SECTORS == s)
          g_array_append_val (out, one);
      }
  g_array_sort (out, compare_candidates);
  return out;
}

/* --- who covers whom --------------------------------------------------------------------- */

static gboolean
covers (const Thinning *t, const Along *by, const Along *of)
{
  const double common = MIN (by->t1, of->t1) - MAX (by->t0, of->t0);
  const double least = CLEAR + (stroke (t, &t->line[by->line]) + stroke (t, &t->line[of->line])) / 2;

  return by->line != of->line && t->kept[by->line - t->first] && fabs (by->across - of->across) < least
         && common > COVERED * (of->t1 - of->t0);
}

static guint
first_from (const GArray *sector, double across)
{
  guint lo = 0, hi = sector->len;

  while (lo < hi)
    {
      const guint middle = (lo + hi) / 2;
      if (g_array_index (sector, Along, middle).across < across)
        lo = middle + 1;
      else
        hi = middle;
    }
  return lo;
}

static gboolean
is_covered (const Thinning *t, guint index)
{
  const guint low = (guint) floor (t->turn[index - t->first]) % SECTORS;
  const double reach = CLEAR + 1; /* no pen is wider */

  for (guint k = 0; k < 2; k++)
    {
      const GArray *sector = t->sector[(low + k) % SECTORS];
      Along of;
      see_along (t, index, (low + k) % SECTORS, &of);
      for (guint i = first_from (sector, of.across - reach); i < sector->len; i++)
        {
          const Along *by = &g_array_index (sector, Along, i);
          if (by->across > of.across + reach)
            break;
          if (covers (t, by, &of))
            return TRUE;
        }
    }
  return FALSE;
}

/* Leaves in `kept` what is to be drawn of one thing. */
static void
thin_thing (Thinning *t)
{
  g_autoptr (GArray) candidates = NULL;

  for (guint s = 0; s < SECTORS; s++)
    g_array_set_size (t->sector[s], 0);
  fill_sectors (t);
  candidates = candidates_of (t);
  for (guint i = 0; i < candidates->len; i++)
    t->kept[g_array_index (candidates, Candidate, i).line - t->first] = FALSE;
  for (guint i = 0; i < candidates->len; i++)
    {
      const guint index = g_array_index (candidates, Candidate, i).line;
      t->kept[index - t->first] = !may_go (t, &t->line[index]) || !is_covered (t, index);
    }
}

/* --- pews on the plan ---------------------------------------------------------------------- */

/* mm of the world within which a line lies on the front of a row. */
#define ON_FRONT 20.0

/* mm of paper between narrow lines that still look like rows. */
#define ROWS_APART 1.4

/* mm of paper that a kneeler with its two edges needs between two rows. */
#define KNEELER_ROOM 3.0

typedef struct
{
  FpPewBlock of;
  guint      every;  /* row that is drawn */
} Block;

/* FALSE where the rows stand far enough apart to be drawn one by one. */
static gboolean
is_crowded (const FpPlaced *placed, double scale, Block *out)
{
  const double clear = CLEAR + fp_pen_stroke (FP_PEN_OUTLINE, placed->standing);
  const FpPewBlock of = fp_pew_block (placed);

  *out = (Block) { of, 1 };
  if (of.spacing <= of.depth || of.depth <= 0 || MIN (of.depth, of.spacing - of.depth) / scale >= clear)
    return FALSE;
  while (out->every < 1024 && out->every * of.spacing / scale < ROWS_APART)
    out->every *= 2;
  return TRUE;
}

/* Along a row: its front, when it is one that is drawn; and the back of the last. */
static gboolean
keep_row (const Block *b, double d, FpPen *pen)
{
  const double row = round (d / b->of.spacing);

  if (fabs (d - fp_pew_block_depth (&b->of)) < ON_FRONT || fabs (d) < ON_FRONT)
    {
      *pen = FP_PEN_OUTLINE;
      return TRUE;
    }
  *pen = FP_PEN_EDGE;
  return fabs (d - row * b->of.spacing) < ON_FRONT && (guint) MAX (row, 0) % b->every == 0;
}

static FpPoint
beyond (FpPoint from, FpPoint to, double share)
{
  return (FpPoint) { from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share };
}

/* The end of a row is carried on to the row behind it. */
static gboolean
keep_end (const Block *b, double da, double db, FpProjectedLine *line)
{
  const double front = MIN (da, db), back = MAX (da, db), row = round (front / b->of.spacing);
  const double share = b->of.spacing / (back - front);

  if (back - front < b->of.depth / 2 || fabs (front - row * b->of.spacing) > ON_FRONT)
    return FALSE;
  line->pen = FP_PEN_OUTLINE;
  if (row + 1.5 > b->of.rows)
    return TRUE;
  if (da < db)
    line->b = beyond (line->a, line->b, share);
  else
    line->a = beyond (line->b, line->a, share);
  return TRUE;
}

/* What is dashed or cut stays as it is. */
static gboolean
keep_of_block (const Block *b, FpProjectedLine *line)
{
  const double da = fp_pew_block_behind (&b->of, line->a), db = fp_pew_block_behind (&b->of, line->b);

  if (line->pen != FP_PEN_OUTLINE && line->pen != FP_PEN_EDGE)
    return TRUE;
  if (fabs (da - db) < ON_FRONT)
    return keep_row (b, (da + db) / 2, &line->pen);
  return keep_end (b, da, db, line);
}

static gboolean
is_block (const Thinning *t, FpViewId view)
{
  const guint owner = t->line[t->first].owner;

  return view == FP_VIEW_PLAN && owner < t->n_placed && fp_item_kind (t->placed[owner].item)->role == FP_ROLE_PEWS;
}

static void
add_block (const Thinning *t, const Block *block, GArray *out)
{
  for (guint i = t->first; i < t->first + t->n; i++)
    {
      FpProjectedLine line = t->line[i];
      if (keep_of_block (block, &line))
        g_array_append_val (out, line);
    }
}

/* --- signs of two strokes ------------------------------------------------------------------ */

/* mm of the world within which a line lies on a stroke. */
#define ON_STROKE 1.0

typedef struct { FpPoint a, b; } Stroke;

static Stroke
stroke_at (const FpPlaced *placed, const FpStroke *s)
{
  const FpVec3 a = fp_placed_point (placed, (FpVec3) { s->a.x, s->a.y, 0 }), b = fp_placed_point (placed, (FpVec3) { s->b.x, s->b.y, 0 });

  return (Stroke) { { a.x, a.y }, { b.x, b.y } };
}

static gboolean
cross_in_middle (const Stroke *p, const Stroke *q)
{
  return fabs (p->a.x + p->b.x - q->a.x - q->b.x) < ON_STROKE && fabs (p->a.y + p->b.y - q->a.y - q->b.y) < ON_STROKE;
}

static gboolean
lies_on (const FpProjectedLine *line, const Stroke *s)
{
  return fp_segment_distance (s->a, s->b, line->a) < ON_STROKE && fp_segment_distance (s->a, s->b, line->b) < ON_STROKE;
}

/* World mm of it that are drawn. */
static double
seen_of (const Thinning *t, const Stroke *s)
{
  double seen = 0;

  for (guint i = t->first; i < t->first + t->n; i++)
    if (t->line[i].pen == FP_PEN_EDGE && lies_on (&t->line[i], s))
      seen += hypot (t->line[i].b.x - t->line[i].a.x, t->line[i].b.y - t->line[i].a.y);
  return seen;
}

/* A cross is no cross without one of its strokes: it stays whole, or, where something stands on it, goes whole. */
static void
settle_cross (Thinning *t, const Stroke stroke[2])
{
  const double all = hypot (stroke[0].b.x - stroke[0].a.x, stroke[0].b.y - stroke[0].a.y)
                     + hypot (stroke[1].b.x - stroke[1].a.x, stroke[1].b.y - stroke[1].a.y);
  const gboolean whole = seen_of (t, &stroke[0]) + seen_of (t, &stroke[1]) > all - 2 * ON_STROKE;

  for (guint i = 0; i < t->n; i++)
    if (t->line[t->first + i].pen == FP_PEN_EDGE
        && (lies_on (&t->line[t->first + i], &stroke[0]) || lies_on (&t->line[t->first + i], &stroke[1])))
      (whole ? t->whole : t->gone)[i] = TRUE;
}

static void
settle_crosses (Thinning *t, FpViewId view)
{
  const guint owner = t->line[t->first].owner;
  const FpPlaced *placed = owner < t->n_placed ? &t->placed[owner] : NULL;
  g_autoptr (GArray) strokes = g_array_new (FALSE, FALSE, sizeof (FpStroke));

  if (view != FP_VIEW_PLAN || placed == NULL || fp_item_kind (placed->item)->strokes == NULL)
    return;
  fp_item_kind (placed->item)->strokes (&placed->form, strokes);
  for (guint i = 0; i + 1 < strokes->len; i++)
    {
      const Stroke pair[2] = { stroke_at (placed, &g_array_index (strokes, FpStroke, i)),
                               stroke_at (placed, &g_array_index (strokes, FpStroke, i + 1)) };
      if (cross_in_middle (&pair[0], &pair[1]))
        settle_cross (t, pair);
    }
}

/* --- all of it ---------------------------------------------------------------------------- */

/* What lies between the back of one row and the front of the next. */
static void
leave_out_kneelers (Thinning *t, const Block *b)
{
  for (guint i = 0; i < t->n; i++)
    {
      const FpProjectedLine *line = &t->line[t->first + i];
      const double da = fp_pew_block_behind (&b->of, line->a), db = fp_pew_block_behind (&b->of, line->b), d = (da + db) / 2;
      const double within = d - floor ((d + ON_FRONT) / b->of.spacing) * b->of.spacing;
      t->gone[i] = (line->pen == FP_PEN_OUTLINE || line->pen == FP_PEN_EDGE) && within > b->of.depth + ON_FRONT;
    }
}

/* @kneelers_of: (nullable): pews whose kneelers are left out */
static void
add_thing (Thinning *t, FpViewId view, const Block *kneelers_of, GArray *out)
{
  t->turn = g_new (double, t->n);
  t->kept = g_new (gboolean, t->n);
  t->gone = g_new0 (gboolean, t->n);
  t->whole = g_new0 (gboolean, t->n);
  settle_crosses (t, view);
  if (kneelers_of != NULL)
    leave_out_kneelers (t, kneelers_of);
  for (guint i = 0; i < t->n; i++)
    t->kept[i] = !t->gone[i];
  thin_thing (t);
  for (guint i = 0; i < t->n; i++)
    if (t->kept[i] || t->whole[i])
      g_array_append_vals (out, &t->line[t->first + i], 1);
  g_free (t->turn);
  g_free (t->kept);
  g_free (t->whole);
  g_free (t->gone);
}

gboolean
fp_is_crowded (const FpPlaced *pews, double scale)
{
  Block block;

  return fp_item_kind (pews->item)->role == FP_ROLE_PEWS && is_crowded (pews, fp_thin_scale (scale), &block);
}

GArray *
fp_thinned_lines (FpProjection *projection, double scale)
{
  guint n;
  Thinning t = { .line = fp_projection_lines (projection, &n), .scale = fp_thin_scale (scale) };
  GArray *out = g_array_sized_new (FALSE, FALSE, sizeof (FpProjectedLine), n);

  t.placed = fp_scene_placed (fp_projection_scene (projection), &t.n_placed);
  for (guint s = 0; s < SECTORS; s++)
    {
      t.along[s][0] = cos (G_PI * s / SECTORS);
      t.along[s][1] = sin (G_PI * s / SECTORS);
      t.sector[s] = g_array_new (FALSE, FALSE, sizeof (Along));
    }
  for (t.first = 0; t.first < n; t.first += t.n)
    {
      const FpViewId view = fp_projection_view (projection);
      Block block;
      for (t.n = 1; t.first + t.n < n && t.line[t.first + t.n].owner == t.line[t.first].owner; t.n++)
        ;
      if (!is_block (&t, view))
        add_thing (&t, view, NULL, out);
      else if (is_crowded (&t.placed[t.line[t.first].owner], t.scale, &block))
        add_block (&t, &block, out);
      else
        add_thing (&t, view, (block.of.spacing - block.of.depth) / t.scale < KNEELER_ROOM ? &block : NULL, out);
    }
  for (guint s = 0; s < SECTORS; s++)
    g_array_unref (t.sector[s]);
  return out;
}
