/* SPDX-License-Identifier: GPL-3.0-or-later */
/* way-sites.c - edges divided into short pieces, less what no body can touch
 *
 * Most edges of a church lie between its pews.  A body as narrow as any that
 * counts rolls along all edges; where it finds no room beside an edge, nothing
 * of that edge stops anybody, for what it touches before and after lies so
 * near together that nobody passes between.
 */
#include "ways.h"

#include <math.h>

#define SAME 0.01  /* mm: sites that lie nearer are one                            */
#define CELL 500.0 /* mm: of the grid by which edges are found                      */
#define CELLS_MAX 400 /* of the grid, each way: a larger church has larger cells    */
#define TOUCH 0.5  /* mm: by so much a body may overlap what it touches              */

/* Of all edges together, in pieces: ten cathedrals have as many.  Where there are more, no way is looked for. */
#define PIECES_MAX 200000.0

/* What it rolls over may be so much farther apart than its own width, since pieces have a length. */
#define ROLLING ((FP_WAY_LEAST - FP_WAY_PIECE) / 2)

/* --- edges by where they lie ------------------------------------------------------ */

typedef struct
{
  const FpBar *edge;
  FpBox        box;
  double       cell;
  guint        nx, ny;
  guint       *first; /* of each cell, and of the end: index into index */
  guint       *index;
} Grid;

static guint
cell_of (double v, double v0, double cell, guint n)
{
  return (guint) CLAMP (floor ((v - v0) / cell), 0, (double) n - 1);
}

/* The cells about a stretch, as far as a rolling body reaches. */
typedef struct { guint x0, y0, x1, y1; } Cells;

static Cells
cells_about (const Grid *self, FpPoint a, FpPoint b)
{
  return (Cells) {
    cell_of (MIN (a.x, b.x) - ROLLING, self->box.x0, self->cell, self->nx),
    cell_of (MIN (a.y, b.y) - ROLLING, self->box.y0, self->cell, self->ny),
    cell_of (MAX (a.x, b.x) + ROLLING, self->box.x0, self->cell, self->nx),
    cell_of (MAX (a.y, b.y) + ROLLING, self->box.y0, self->cell, self->ny),
  };
}

static Grid
grid_new (const GArray *edges)
{
  Grid self = { .edge = (const FpBar *) (gpointer) edges->data, .box = FP_BOX_EMPTY };

  for (guint i = 0; i < edges->len; i++)
    {
      fp_box_add_point (&self.box, self.edge[i].a);
      fp_box_add_point (&self.box, self.edge[i].b);
    }
  self.cell = MAX (CELL, MAX (self.box.x1 - self.box.x0, self.box.y1 - self.box.y0) / CELLS_MAX);
  self.nx = (guint) CLAMP (ceil ((self.box.x1 - self.box.x0) / self.cell), 1, CELLS_MAX);
  self.ny = (guint) CLAMP (ceil ((self.box.y1 - self.box.y0) / self.cell), 1, CELLS_MAX);
  self.first = g_new0 (guint, self.nx * self.ny + 2);
  for (guint pass = 0; pass < 2; pass++)
    {
      for (guint i = 0; i < edges->len; i++)
        {
          const Cells c = cells_about (&self, self.edge[i].a, self.edge[i].b);
          for (guint y = c.y0; y <= c.y1; y++)
            for (guint x = c.x0; x <= c.x1; x++)
              if (pass == 0)
                self.first[x + self.nx * y + 2]++;
              else
                self.index[self.first[x + self.nx * y + 1]++] = i;
        }
      if (pass > 0)
        break;
      for (guint i = 2; i < self.nx * self.ny + 2; i++)
        self.first[i] += self.first[i - 1];
      self.index = g_new (guint, self.first[self.nx * self.ny + 1] + 1);
    }
  return self;
}

static void
grid_clear (Grid *self)
{
  g_free (self->first);
  g_free (self->index);
}

/* Whether a rolling body has room with its middle there. */
static gboolean
has_room (const Grid *self, FpPoint middle)
{
  const guint cell = cell_of (middle.x, self->box.x0, self->cell, self->nx)
                     + self->nx * cell_of (middle.y, self->box.y0, self->cell, self->ny);

  for (guint i = self->first[cell]; i < self->first[cell + 1]; i++)
    {
      const FpBar *edge = &self->edge[self->index[i]];
      if (fp_segment_distance (edge->a, edge->b, middle) < ROLLING - TOUCH)
        return FALSE;
    }
  return TRUE;
}

/* --- sites --------------------------------------------------------------------- */

typedef struct
{
  FpPoint at;
  FpWaySite  site;
} Sited;

static void
add_arm (FpWaySite *site, FpPoint arm)
{
  if (site->n_arms < FP_SITE_ARMS)
    site->arm[site->n_arms++] = arm;
}

static FpPoint
between (FpPoint a, FpPoint b, double share)
{
  return (FpPoint) { a.x + share * (b.x - a.x), a.y + share * (b.y - a.y) };
}

static void
add_sites (GArray *out, const Grid *grid, const FpBar *run)
{
  const double length = hypot (run->b.x - run->a.x, run->b.y - run->a.y);
  const guint n = (guint) CLAMP (ceil (length / FP_WAY_PIECE), 1, 100000);

  for (guint i = 0; i <= n; i++)
    {
      Sited one = { .at = i == n ? run->b : between (run->a, run->b, (double) i / n) };
      const FpPoint beside = { one.at.x - (run->b.y - run->a.y) / length * ROLLING, one.at.y + (run->b.x - run->a.x) / length * ROLLING };

      if (i > 0 && i < n && !has_room (grid, beside))
        continue;
      if (i > 0)
        add_arm (&one.site, between (run->a, run->b, (i - 0.5) / n));
      if (i < n)
        add_arm (&one.site, between (run->a, run->b, (i + 0.5) / n));
      g_array_append_val (out, one);
    }
}

static int
by_point (gconstpointer a, gconstpointer b)
{
  return fp_point_order (&((const Sited *) a)->at, &((const Sited *) b)->at);
}

/* One that was sited before and lies so near as to be the same; -1. */
static int
same_before (const GArray *points, FpPoint at)
{
  for (guint i = points->len; i-- > 0;)
    {
      const FpPoint *p = &g_array_index (points, FpPoint, i);
      if (at.x - p->x > SAME)
        return -1;
      if (fabs (at.y - p->y) <= SAME)
        return (int) i;
    }
  return -1;
}

static double
pieces_of (const GArray *edges)
{
  double n = 0;

  for (guint i = 0; i < edges->len; i++)
    {
      const FpBar *run = &g_array_index (edges, FpBar, i);
      n += 1 + hypot (run->b.x - run->a.x, run->b.y - run->a.y) / FP_WAY_PIECE;
    }
  return n;
}

void
fp_way_sites_gather (const GArray *edges, GArray *points, GArray *sites)
{
  g_autoptr (GArray) all = g_array_new (FALSE, FALSE, sizeof (Sited));
  Grid grid;

  if (pieces_of (edges) > PIECES_MAX)
    return;
  grid = grid_new (edges);

  for (guint i = 0; i < edges->len; i++)
    add_sites (all, &grid, &g_array_index (edges, FpBar, i));
  grid_clear (&grid);
  g_array_sort (all, by_point);
  for (guint i = 0; i < all->len; i++)
    {
      const Sited *one = &g_array_index (all, Sited, i);
      const int before = same_before (points, one->at);

      if (before < 0)
        {
          g_array_append_val (points, one->at);
          g_array_append_val (sites, one->site);
        }
      else
        for (guint k = 0; k < one->site.n_arms; k++)
          add_arm (&g_array_index (sites, FpWaySite, before), one->site.arm[k]);
    }
}
