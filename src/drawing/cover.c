/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cover.h"

#include <math.h>

/* Lines that meet this close to an end only touch. */
#define TOUCH 0.06
#define ALONG 1e-6 /* what lies so near to a line on both ends runs along it */

/* The widest cell that still tells lines of a crowded plan apart, at the size of a label. */
#define CELL 8.0

typedef struct { FpPoint a, b; guint owner; } Line;
typedef struct { FpBox box; guint owner; } Text;
typedef struct { guint first, n; FpBox box; } Filled;
typedef struct { guint object, next; } Held; /* in a cell; next: number from 1 of the one before it there, 0: none */

struct _FpCover
{
  GArray     *lines;   /* Line    */
  GArray     *ticks;   /* Line    */
  GArray     *texts;   /* Text    */
  GArray     *objects; /* Line    */
  GArray     *filled;  /* Filled  */
  GArray     *rows;    /* likewise: fields of seats */
  GArray     *corners; /* FpPoint */
  GArray     *held;    /* Held    */
  GHashTable *cells;   /* of CELL mm: key -> number from 1 of what it holds last */
};

FpCover *
fp_cover_new (void)
{
  FpCover *self = g_new0 (FpCover, 1);

  self->lines = g_array_new (FALSE, FALSE, sizeof (Line));
  self->ticks = g_array_new (FALSE, FALSE, sizeof (Line));
  self->texts = g_array_new (FALSE, FALSE, sizeof (Text));
  self->objects = g_array_new (FALSE, FALSE, sizeof (Line));
  self->held = g_array_new (FALSE, FALSE, sizeof (Held));
  self->filled = g_array_new (FALSE, FALSE, sizeof (Filled));
  self->rows = g_array_new (FALSE, FALSE, sizeof (Filled));
  self->corners = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  return self;
}

void
fp_cover_free (FpCover *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->lines);
  g_array_unref (self->ticks);
  g_array_unref (self->texts);
  g_array_unref (self->objects);
  g_array_unref (self->held);
  g_array_unref (self->filled);
  g_array_unref (self->rows);
  g_array_unref (self->corners);
  g_clear_pointer (&self->cells, g_hash_table_unref);
  g_free (self);
}

/* --- segments and boxes ---------------------------------------------------- */

/* Clips p + t d, 0 <= t <= 1, to lo < x < hi; FALSE when nothing is left. */
static gboolean
clip_axis (double p, double d, double lo, double hi, double *t0, double *t1)
{
  if (fabs (d) < 1e-12)
    return p > lo && p < hi;
  const double ta = (lo - p) / d, tb = (hi - p) / d;
  *t0 = MAX (*t0, MIN (ta, tb));
  *t1 = MIN (*t1, MAX (ta, tb));
  return *t0 < *t1;
}

gboolean
fp_segment_meets_box (FpPoint a, FpPoint b, const FpBox *box)
{
  double t0 = 0, t1 = 1;

  /* By more than what figures are rounded by: most lie far off, and that is told without a division. */
  if (MAX (a.x, b.x) < box->x0 - 1e-6 || MIN (a.x, b.x) > box->x1 + 1e-6 || MAX (a.y, b.y) < box->y0 - 1e-6
      || MIN (a.y, b.y) > box->y1 + 1e-6)
    return FALSE;
  return clip_axis (a.x, b.x - a.x, box->x0, box->x1, &t0, &t1)
         && clip_axis (a.y, b.y - a.y, box->y0, box->y1, &t0, &t1);
}

static double
side_of (FpPoint a, FpPoint b, FpPoint p)
{
  const double length = hypot (b.x - a.x, b.y - a.y);

  return length > 0 ? ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / length : 0;
}

gboolean
fp_segments_cross (FpPoint a, FpPoint b, FpPoint c, FpPoint d)
{
  if (MAX (a.x, b.x) < MIN (c.x, d.x) || MIN (a.x, b.x) > MAX (c.x, d.x) || MAX (a.y, b.y) < MIN (c.y, d.y)
      || MIN (a.y, b.y) > MAX (c.y, d.y))
    return FALSE;
  const double c_side = side_of (a, b, c), d_side = side_of (a, b, d);
  const double a_side = side_of (c, d, a), b_side = side_of (c, d, b);
  if (c_side * d_side >= 0 || a_side * b_side >= 0)
    return FALSE;
  /* How far an end lies beyond where they meet is measured along its own line. */
  const double sine = fabs (c_side - d_side) / hypot (d.x - c.x, d.y - c.y), touch = MAX (TOUCH * sine, ALONG);
  return MIN (fabs (c_side), fabs (d_side)) > touch && MIN (fabs (a_side), fabs (b_side)) > touch;
}

/* --- dimensions and texts --------------------------------------------------- */

void
fp_cover_take_line (FpCover *self, FpPoint a, FpPoint b, guint owner)
{
  const Line line = { a, b, owner };

  g_array_append_val (self->lines, line);
}

void
fp_cover_take_text (FpCover *self, const FpBox *box, guint owner)
{
  const Text text = { *box, owner };

  g_array_append_val (self->texts, text);
}

void
fp_cover_take_tick (FpCover *self, FpPoint a, FpPoint b, guint owner)
{
  const Line line = { a, b, owner };

  g_array_append_val (self->ticks, line);
}

FpCoverMark
fp_cover_mark (const FpCover *self)
{
  return (FpCoverMark) { self->lines->len, self->texts->len, self->ticks->len };
}

void
fp_cover_reset (FpCover *self, FpCoverMark mark)
{
  g_array_set_size (self->lines, mark.lines);
  g_array_set_size (self->texts, mark.texts);
  g_array_set_size (self->ticks, mark.ticks);
}

static gboolean
lines_meet_box (const GArray *lines, const FpBox *box, guint owner)
{
  for (guint i = 0; i < lines->len; i++)
    {
      const Line *line = &g_array_index (lines, Line, i);
      if (line->owner != owner && fp_segment_meets_box (line->a, line->b, box))
        return TRUE;
    }
  return FALSE;
}

/* A stroke sits on the node where lines meet: through its middle they may pass. */
static gboolean
line_crosses_tick (FpPoint a, FpPoint b, const Line *tick)
{
  const FpPoint middle = { (tick->a.x + tick->b.x) / 2, (tick->a.y + tick->b.y) / 2 };

  return fp_segments_cross (a, b, tick->a, tick->b) && fabs (side_of (a, b, middle)) > TOUCH;
}

static gboolean
meets_text (const FpCover *self, FpPoint a, FpPoint b, guint owner)
{
  for (guint i = 0; i < self->texts->len; i++)
    {
      const Text *text = &g_array_index (self->texts, Text, i);
      if (text->owner != owner && fp_segment_meets_box (a, b, &text->box))
        return TRUE;
    }
  return FALSE;
}

gboolean
fp_cover_tick_is_free (const FpCover *self, FpPoint a, FpPoint b, guint owner)
{
  const Line tick = { a, b, owner };

  for (guint i = 0; i < self->lines->len; i++)
    {
      const Line *line = &g_array_index (self->lines, Line, i);
      if (line->owner != owner && line_crosses_tick (line->a, line->b, &tick))
        return FALSE;
    }
  for (guint i = 0; i < self->ticks->len; i++)
    {
      const Line *other = &g_array_index (self->ticks, Line, i);
      if (other->owner != owner && line_crosses_tick (a, b, other) && line_crosses_tick (other->a, other->b, &tick))
        return FALSE;
    }
  return !meets_text (self, a, b, owner);
}

gboolean
fp_cover_line_is_free (const FpCover *self, FpPoint a, FpPoint b, guint owner)
{
  for (guint i = 0; i < self->lines->len; i++)
    {
      const Line *line = &g_array_index (self->lines, Line, i);
      if (line->owner != owner && fp_segments_cross (a, b, line->a, line->b))
        return FALSE;
    }
  for (guint i = 0; i < self->ticks->len; i++)
    {
      const Line *tick = &g_array_index (self->ticks, Line, i);
      if (tick->owner != owner && line_crosses_tick (a, b, tick))
        return FALSE;
    }
  return !meets_text (self, a, b, owner);
}

gboolean
fp_cover_text_is_free (const FpCover *self, const FpBox *box, guint owner)
{
  for (guint i = 0; i < self->texts->len; i++)
    {
      const Text *text = &g_array_index (self->texts, Text, i);
      if (text->owner != owner && fp_box_overlaps (&text->box, box))
        return FALSE;
    }
  return !lines_meet_box (self->lines, box, owner) && !lines_meet_box (self->ticks, box, owner);
}

/* --- what is drawn ----------------------------------------------------------- */

static int
cell_of (double at)
{
  return (int) floor (CLAMP (at, -1e5, 1e5) / CELL);
}

static gpointer
cell_key (int column, int row)
{
  return GINT_TO_POINTER (column * 32768 + row + 1);
}

/* Of what a cell holds, one after another: number from 1, 0: nothing more. */
static guint
first_held (const FpCover *self, int column, int row)
{
  return self->cells == NULL ? 0 : GPOINTER_TO_UINT (g_hash_table_lookup (self->cells, cell_key (column, row)));
}

static guint
next_held (const FpCover *self, guint held)
{
  return g_array_index (self->held, Held, held - 1).next;
}

static guint
object_held (const FpCover *self, guint held)
{
  return g_array_index (self->held, Held, held - 1).object;
}

static const Line *
line_held (const FpCover *self, guint held)
{
  return &g_array_index (self->objects, Line, object_held (self, held));
}

static void
put_in_cell (FpCover *self, int column, int row, guint index)
{
  const Held held = { index, first_held (self, column, row) };

  g_array_append_val (self->held, held);
  g_hash_table_insert (self->cells, cell_key (column, row), GUINT_TO_POINTER (self->held->len));
}

void
fp_cover_add_object (FpCover *self, FpPoint a, FpPoint b, guint owner)
{
  const Line line = { a, b, owner };
  const guint index = self->objects->len;
  const int c0 = cell_of (MIN (a.x, b.x)), c1 = cell_of (MAX (a.x, b.x));
  const int r0 = cell_of (MIN (a.y, b.y)), r1 = cell_of (MAX (a.y, b.y));

  g_array_append_val (self->objects, line);
  if (self->cells == NULL)
    self->cells = g_hash_table_new (NULL, NULL);
  for (int c = c0; c <= c1; c++)
    for (int r = r0; r <= r1; r++)
      {
        /* A long oblique line passes through few of the cells of its box. */
        const FpBox cell = { c * CELL - 0.1, r * CELL - 0.1, (c + 1) * CELL + 0.1, (r + 1) * CELL + 0.1 };
        if (c0 == c1 || r0 == r1 || fp_segment_meets_box (a, b, &cell))
          put_in_cell (self, c, r, index);
      }
}

static void
add_area (FpCover *self, GArray *areas, const FpPoint *pt, guint n)
{
  const Filled area = { self->corners->len, n, fp_outline_box (pt, n) };

  g_array_append_vals (self->corners, pt, n);
  g_array_append_val (areas, area);
}

void
fp_cover_add_filled (FpCover *self, const FpPoint *pt, guint n)
{
  add_area (self, self->filled, pt, n);
}

void
fp_cover_add_rows (FpCover *self, const FpPoint *pt, guint n)
{
  add_area (self, self->rows, pt, n);
}

static gboolean
lies_on (const FpCover *self, const Filled *f, FpPoint p)
{
  return p.x >= f->box.x0 && p.x <= f->box.x1 && p.y >= f->box.y0 && p.y <= f->box.y1
         && fp_outline_contains (&g_array_index (self->corners, FpPoint, f->first), f->n, p);
}

static gboolean
is_on_filled (const FpCover *self, const FpBox *box)
{
  const FpPoint middle = { (box->x0 + box->x1) / 2, (box->y0 + box->y1) / 2 };

  for (guint i = 0; i < self->filled->len; i++)
    if (lies_on (self, &g_array_index (self->filled, Filled, i), middle))
      return TRUE;
  return FALSE;
}

static gboolean
cell_is_blank (const FpCover *self, int column, int row, const FpBox *box, guint but)
{
  for (guint held = first_held (self, column, row); held != 0; held = next_held (self, held))
    {
      const Line *line = line_held (self, held);
      if ((but == 0 || line->owner != but) && fp_segment_meets_box (line->a, line->b, box))
        return FALSE;
    }
  return TRUE;
}

gboolean
fp_cover_is_blank (const FpCover *self, const FpBox *box, guint but)
{
  for (int c = cell_of (box->x0); c <= cell_of (box->x1); c++)
    for (int r = cell_of (box->y0); r <= cell_of (box->y1); r++)
      if (!cell_is_blank (self, c, r, box, but))
        return FALSE;
  return !is_on_filled (self, box);
}

gboolean
fp_cover_is_on_filled (const FpCover *self, const FpBox *box)
{
  for (guint k = 0; k < 9; k++)
    {
      const FpPoint p = { box->x0 + (box->x1 - box->x0) * (k % 3) / 2, box->y0 + (box->y1 - box->y0) * (k / 3) / 2 };
      for (guint i = 0; i < self->filled->len; i++)
        if (lies_on (self, &g_array_index (self->filled, Filled, i), p))
          return TRUE;
    }
  return FALSE;
}

/* A line that passes through several cells counts once. */
guint
fp_cover_lines_in (const FpCover *self, const FpBox *box)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (NULL, NULL);

  for (int c = cell_of (box->x0); c <= cell_of (box->x1); c++)
    for (int r = cell_of (box->y0); r <= cell_of (box->y1); r++)
      {
        for (guint held = first_held (self, c, r); held != 0; held = next_held (self, held))
          {
            const Line *line = line_held (self, held);
            if (fp_segment_meets_box (line->a, line->b, box))
              g_hash_table_add (seen, GUINT_TO_POINTER (object_held (self, held) + 1));
          }
      }
  return g_hash_table_size (seen);
}

static gboolean
passes_over (const FpCover *self, const Filled *f, FpPoint a, FpPoint b)
{
  const double step = 0.5; /* mm: no cut face worth the name is thinner */
  const guint n = 1 + (guint) (MIN (hypot (b.x - a.x, b.y - a.y), 200) / step);

  if (MAX (a.x, b.x) < f->box.x0 || MIN (a.x, b.x) > f->box.x1 || MAX (a.y, b.y) < f->box.y0
      || MIN (a.y, b.y) > f->box.y1)
    return FALSE;
  for (guint i = 0; i <= n; i++)
    if (lies_on (self, f, (FpPoint) { a.x + (b.x - a.x) * i / n, a.y + (b.y - a.y) * i / n }))
      return TRUE;
  return FALSE;
}

static gboolean
passes_any (const FpCover *self, const GArray *areas, FpPoint a, FpPoint b)
{
  for (guint i = 0; i < areas->len; i++)
    if (passes_over (self, &g_array_index (areas, Filled, i), a, b))
      return TRUE;
  return FALSE;
}

gboolean
fp_cover_passes_filled (const FpCover *self, FpPoint a, FpPoint b)
{
  return passes_any (self, self->filled, a, b);
}

gboolean
fp_cover_passes_rows (const FpCover *self, FpPoint a, FpPoint b)
{
  return passes_any (self, self->rows, a, b);
}

/* Where two segments cross lies in one cell alone: there it is counted. */
static gboolean
cross_in_cell (const Line *line, FpPoint a, FpPoint b, int column, int row)
{
  const double dx = b.x - a.x, dy = b.y - a.y, ex = line->b.x - line->a.x, ey = line->b.y - line->a.y;
  const double d = dx * ey - dy * ex;
  double t;

  if (!fp_segments_cross (a, b, line->a, line->b) || d == 0)
    return FALSE;
  t = ((line->a.x - a.x) * ey - (line->a.y - a.y) * ex) / d;
  return cell_of (a.x + t * dx) == column && cell_of (a.y + t * dy) == row;
}

static guint
crossings_in_cell (const FpCover *self, int column, int row, FpPoint a, FpPoint b)
{
  guint n = 0;

  for (guint held = first_held (self, column, row); held != 0; held = next_held (self, held))
    if (cross_in_cell (line_held (self, held), a, b, column, row))
      n++;
  return n;
}

guint
fp_cover_crossings (const FpCover *self, FpPoint a, FpPoint b)
{
  guint n = 0;

  for (int c = cell_of (MIN (a.x, b.x)); c <= cell_of (MAX (a.x, b.x)); c++)
    for (int r = cell_of (MIN (a.y, b.y)); r <= cell_of (MAX (a.y, b.y)); r++)
      n += crossings_in_cell (self, c, r, a, b);
  return n;
}

/* --- what runs along it -------------------------------------------------------- */

/* Sine of the angle up to which two lines look parallel: about two degrees. */
#define PARALLEL 0.035

/* Shorter stretches side by side do not confuse, mm. */
#define BESIDE_LEAST 1.0

static gboolean
lies_along (const Line *line, FpPoint a, FpPoint b, double distance)
{
  const double length = hypot (b.x - a.x, b.y - a.y), own = hypot (line->b.x - line->a.x, line->b.y - line->a.y);
  const FpPoint u = { (b.x - a.x) / length, (b.y - a.y) / length };
  const double t0 = (line->a.x - a.x) * u.x + (line->a.y - a.y) * u.y;
  const double t1 = (line->b.x - a.x) * u.x + (line->b.y - a.y) * u.y;
  const double c0 = (line->a.y - a.y) * u.x - (line->a.x - a.x) * u.y;
  const double c1 = (line->b.y - a.y) * u.x - (line->b.x - a.x) * u.y;

  return fabs (c1 - c0) <= PARALLEL * own && MIN (fabs (c0), fabs (c1)) < distance
         && MIN (MAX (t0, t1), length) - MAX (MIN (t0, t1), 0) > BESIDE_LEAST;
}

gboolean
fp_cover_line_has_company (const FpCover *self, FpPoint a, FpPoint b, double distance, guint owner)
{
  if (hypot (b.x - a.x, b.y - a.y) < BESIDE_LEAST)
    return FALSE;
  for (guint i = 0; i < self->lines->len; i++)
    {
      const Line *line = &g_array_index (self->lines, Line, i);
      if (line->owner != owner && lies_along (line, a, b, distance))
        return TRUE;
    }
  return FALSE;
}

static gboolean
runs_along_in_cell (const FpCover *self, int column, int row, FpPoint a, FpPoint b, double distance)
{
  for (guint held = first_held (self, column, row); held != 0; held = next_held (self, held))
    if (lies_along (line_held (self, held), a, b, distance))
      return TRUE;
  return FALSE;
}

gboolean
fp_cover_runs_along (const FpCover *self, FpPoint a, FpPoint b, double distance)
{
  if (hypot (b.x - a.x, b.y - a.y) < BESIDE_LEAST)
    return FALSE;
  for (int c = cell_of (MIN (a.x, b.x) - distance); c <= cell_of (MAX (a.x, b.x) + distance); c++)
    for (int r = cell_of (MIN (a.y, b.y) - distance); r <= cell_of (MAX (a.y, b.y) + distance); r++)
      if (runs_along_in_cell (self, c, r, a, b, distance))
        return TRUE;
  return FALSE;
}
