/* SPDX-License-Identifier: GPL-3.0-or-later */
/* pew-cover.c - which parts of the picture are covered by what stands in front
 *
 * A grid of squares over the picture, one bit each.  A square counts as
 * covered once a convex face covers all of it; a face is hidden when every
 * square that it touches is covered.  So nothing is left out that would be
 * seen at any scale.
 */
#include "pew-private.h"

#include <math.h>
#include <string.h>

#define ACROSS 640
#define WORDS  (ACROSS / 64)
#define DOWN_MOST 1024

struct _FpPewCover
{
  double  x0, y0, scale; /* squares = (picture - origin) * scale              */
  int     down;
  guint64 bits[DOWN_MOST][WORDS];
};

FpPewCover *
fp_pew_cover_new (FpBox picture)
{
  FpPewCover *self = g_new0 (FpPewCover, 1);

  self->scale = ACROSS / (picture.x1 - picture.x0);
  self->x0 = picture.x0;
  self->y0 = picture.y0;
  self->down = (int) CLAMP (ceil ((picture.y1 - picture.y0) * self->scale), 1, DOWN_MOST);
  return self;
}

void
fp_pew_cover_free (FpPewCover *self)
{
  g_free (self);
}

/* The bits from @from to before @to of word @w. */
static inline guint64
mask_of (int w, int from, int to)
{
  const int a = MAX (from - 64 * w, 0), b = MIN (to - 64 * w, 64);

  if (a >= b)
    return 0;
  return (b == 64 ? ~(guint64) 0 : ((guint64) 1 << b) - 1) & ~(((guint64) 1 << a) - 1);
}

static FpPoint
to_grid (const FpPewCover *self, FpPoint p)
{
  return (FpPoint) { (p.x - self->x0) * self->scale, (p.y - self->y0) * self->scale };
}

/* --- covering -------------------------------------------------------------------- */

typedef struct { double lo, hi; } Span;

/* From where to where the outline reaches on each level line between rows @r0 and @r1. */
static void
find_levels (const FpPewCover *self, const FpPoint *pt, guint n, int r0, int r1, Span *level)
{
  for (int r = r0; r <= r1; r++)
    level[r] = (Span) { G_MAXDOUBLE, -G_MAXDOUBLE };
  for (guint i = 0; i < n; i++)
    {
      FpPoint a = to_grid (self, pt[i]), b = to_grid (self, pt[(i + 1) % n]);
      if (a.y > b.y)
        {
          const FpPoint swap = a;
          a = b;
          b = swap;
        }
      const int from = (int) MAX (ceil (MAX (a.y, r0 - 1.0)), r0), to = (int) MIN (floor (MIN (b.y, r1 + 1.0)), r1);
      for (int r = from; r <= to; r++)
        {
          const double x = b.y > a.y ? a.x + (r - a.y) * (b.x - a.x) / (b.y - a.y) : a.x;
          level[r].lo = MIN (level[r].lo, b.y > a.y ? x : MIN (a.x, b.x));
          level[r].hi = MAX (level[r].hi, b.y > a.y ? x : MAX (a.x, b.x));
        }
    }
}

void
fp_pew_cover_add (FpPewCover *self, const FpPoint *pt, guint n)
{
  const FpBox box = fp_outline_box (pt, n);
  const int r0 = (int) CLAMP (ceil ((box.y0 - self->y0) * self->scale), 0, self->down);
  const int r1 = (int) CLAMP (floor ((box.y1 - self->y0) * self->scale), 0, self->down);
  Span level[DOWN_MOST + 1];

  if (n < 3 || r1 <= r0)
    return;
  find_levels (self, pt, n, r0, r1, level);
  for (int r = r0; r < r1; r++)
    {
      const double lo = MAX (level[r].lo, level[r + 1].lo), hi = MIN (level[r].hi, level[r + 1].hi);
      const int from = (int) ceil (CLAMP (lo, 0, ACROSS) + 1e-9), to = (int) floor (CLAMP (hi, 0, ACROSS) - 1e-9);
      for (int w = from / 64; from < to && w <= (to - 1) / 64; w++)
        self->bits[r][w] |= mask_of (w, from, to);
    }
}

/* --- asking ------------------------------------------------------------------------ */

/* Widens the spans of the rows that the edge from @a to @b goes through. */
static void
touch_rows (FpPoint a, FpPoint b, int r0, int r1, Span *row)
{
  if (a.y > b.y)
    {
      const FpPoint swap = a;
      a = b;
      b = swap;
    }
  const double slope = b.y > a.y ? (b.x - a.x) / (b.y - a.y) : 0;
  const int from = (int) CLAMP (floor (a.y), r0, r1), to = (int) CLAMP (floor (b.y), r0, r1);
  for (int r = from; r <= to; r++)
    {
      const double y0 = CLAMP (r, a.y, b.y), y1 = CLAMP (r + 1.0, a.y, b.y);
      const double x0 = b.y > a.y ? a.x + (y0 - a.y) * slope : a.x, x1 = b.y > a.y ? a.x + (y1 - a.y) * slope : b.x;
      row[r].lo = MIN (row[r].lo, MIN (x0, x1));
      row[r].hi = MAX (row[r].hi, MAX (x0, x1));
    }
}

static gboolean
row_hides (const FpPewCover *self, int r, const Span *span)
{
  const int from = (int) floor (CLAMP (span->lo, 0, ACROSS)), to = (int) ceil (CLAMP (span->hi, 0, ACROSS));

  for (int w = from / 64; from < to && w <= (to - 1) / 64; w++)
    if (mask_of (w, from, to) & ~self->bits[r][w])
      return FALSE;
  return TRUE;
}

/* A corner in the open tells at once that a face is not hidden. */
static gboolean
is_open_at (const FpPewCover *self, FpPoint at)
{
  return at.x >= 0 && at.y >= 0 && at.x < ACROSS && at.y < self->down
         && (self->bits[(int) at.y][(int) at.x / 64] & (guint64) 1 << ((int) at.x % 64)) == 0;
}

gboolean
fp_pew_cover_hides (const FpPewCover *self, const FpPoint *pt, guint n)
{
  const FpBox box = fp_outline_box (pt, n);
  const double y0 = (box.y0 - self->y0) * self->scale, y1 = (box.y1 - self->y0) * self->scale;
  const int r0 = (int) CLAMP (floor (y0), 0, self->down - 1), r1 = (int) CLAMP (floor (y1), 0, self->down - 1);
  Span row[DOWN_MOST];

  if (y1 <= 0 || y0 >= self->down)
    return TRUE;
  for (guint i = 0; i < n; i++)
    if (is_open_at (self, to_grid (self, pt[i])))
      return FALSE;
  for (int r = r0; r <= r1; r++)
    row[r] = (Span) { G_MAXDOUBLE, -G_MAXDOUBLE };
  for (guint i = 0; i < n; i++)
    touch_rows (to_grid (self, pt[i]), to_grid (self, pt[(i + 1) % n]), r0, r1, row);
  for (int r = r0; r <= r1; r++)
    if (!row_hides (self, r, &row[r]))
      return FALSE;
  return TRUE;
}
