/* SPDX-License-Identifier: GPL-3.0-or-later */
/* contour.c - marching along the border of where something holds
 *
 * Each side of the grid's squares that has one end within and one without is
 * crossed by the border once, and belongs to two squares: so every crossing
 * leads to one other, and following them closes the rings.
 */
#include "contour-private.h"

#include "footpace/workers.h"

#include <math.h>
#include <string.h>

#define NODES_MOST 500000.0
/* The grid lies askew to what is measured in whole centimetres, so that it never runs along an edge. */
#define SHIFT_X 0.618
#define SHIFT_Y 0.414
#define HALVINGS 9 /* of a side of the grid: a fifth of a millimetre of 100 */

typedef struct
{
  const FpField *field;
  FpBox          box;
  FpPoint        at;       /* of the first node         */
  double         step;
  guint          nx, ny;
  guint8        *holds;    /* of each node              */
  GArray        *crossed;  /* (element-type guint): sides */
  FpPoint       *crossing; /* of each side              */
  guint         *next;     /* of each side, where the border goes on */
} Grid;

/* Sides are numbered by the node at their lower or left end: twice its number that to the right, and that upward. */
enum { RIGHT, UP };

static guint
side_of (const Grid *grid, guint i, guint j, guint way)
{
  return 2 * (j * grid->nx + i) + way;
}

static FpPoint
node_at (const Grid *grid, guint i, guint j)
{
  return (FpPoint) { grid->at.x + i * grid->step, grid->at.y + j * grid->step };
}

static gboolean
holds_at (const Grid *grid, FpPoint p)
{
  return p.x > grid->box.x0 && p.x < grid->box.x1 && p.y > grid->box.y0 && p.y < grid->box.y1
         && grid->field->holds (p, grid->field->data);
}

static gboolean
is_given_up (const Grid *grid)
{
  return grid->field->given_up != NULL && grid->field->given_up (grid->field->data);
}

static void
ask_row (guint j, gpointer data)
{
  Grid *grid = data;

  for (guint i = 0; i < grid->nx && !is_given_up (grid); i++)
    grid->holds[j * grid->nx + i] = holds_at (grid, node_at (grid, i, j)) ? 1 : 0;
}

/* --- crossings ------------------------------------------------------------------- */

static gboolean
node_holds (const Grid *grid, guint i, guint j)
{
  return grid->holds[j * grid->nx + i] != 0;
}

static void
find_crossed (Grid *grid)
{
  for (guint j = 0; j + 1 < grid->ny; j++)
    for (guint i = 0; i + 1 < grid->nx; i++)
      {
        const guint side[] = { side_of (grid, i, j, RIGHT), side_of (grid, i, j, UP) };
        if (node_holds (grid, i, j) != node_holds (grid, i + 1, j))
          g_array_append_val (grid->crossed, side[0]);
        if (node_holds (grid, i, j) != node_holds (grid, i, j + 1))
          g_array_append_val (grid->crossed, side[1]);
      }
}

static void
find_crossing (guint number, gpointer data)
{
  Grid *grid = data;
  const guint side = g_array_index (grid->crossed, guint, number), i = side / 2 % grid->nx, j = side / 2 / grid->nx;
  const FpPoint a = node_at (grid, i, j), b = side % 2 == UP ? node_at (grid, i, j + 1) : node_at (grid, i + 1, j);
  const gboolean first = node_holds (grid, i, j);
  double low = 0, high = 1;

  for (guint n = 0; n < HALVINGS && !is_given_up (grid); n++)
    {
      const double t = (low + high) / 2;
      if (holds_at (grid, (FpPoint) { a.x + t * (b.x - a.x), a.y + t * (b.y - a.y) }) == first)
        low = t;
      else
        high = t;
    }
  low = (low + high) / 2;
  grid->crossing[side] = (FpPoint) { a.x + low * (b.x - a.x), a.y + low * (b.y - a.y) };
}

/* --- rings ------------------------------------------------------------------------- */

/* Round a square, counter-clockwise: where one goes in, and where out.  What lies between is within, so the border leads
 * from there back, with that on its left; of two such pieces it depends on the middle whether they are one. */
static void
link_square (Grid *grid, guint i, guint j)
{
  const guint side[4] = { side_of (grid, i, j, RIGHT), side_of (grid, i + 1, j, UP), side_of (grid, i, j + 1, RIGHT),
                          side_of (grid, i, j, UP) };
  const gboolean within[4] = { node_holds (grid, i, j), node_holds (grid, i + 1, j), node_holds (grid, i + 1, j + 1),
                               node_holds (grid, i, j + 1) };
  guint in[2], out[2], n_in = 0, n_out = 0, first_out = 4;

  for (guint k = 0; k < 4; k++)
    if (!within[k] && within[(k + 1) % 4])
      first_out = k;
  for (guint k = 0; first_out < 4 && k < 4; k++)
    {
      const guint at = (first_out + k) % 4;
      if (!within[at] && within[(at + 1) % 4])
        in[n_in++] = side[at];
      else if (within[at] && !within[(at + 1) % 4])
        out[n_out++] = side[at];
    }
  if (n_in == 1)
    grid->next[out[0]] = in[0];
  if (n_in < 2)
    return;
  const FpPoint foot = node_at (grid, i, j);
  const gboolean joined = holds_at (grid, (FpPoint) { foot.x + grid->step / 2, foot.y + grid->step / 2 });
  grid->next[out[0]] = in[joined ? 1 : 0];
  grid->next[out[1]] = in[joined ? 0 : 1];
}

/* From one side on until it closes; those that were met lead nowhere any more. */
static GArray *
follow (Grid *grid, guint from)
{
  GArray *ring = g_array_new (FALSE, FALSE, sizeof (FpPoint));

  for (guint side = from; side != G_MAXUINT;)
    {
      const guint next = grid->next[side];
      if (next != G_MAXUINT)
        g_array_append_val (ring, grid->crossing[side]);
      grid->next[side] = G_MAXUINT;
      side = next;
    }
  return ring;
}

static GArray *
trace (Grid *grid, double least)
{
  g_autoptr (GArray) found = fp_rings_new ();

  for (guint j = 0; j + 1 < grid->ny; j++)
    for (guint i = 0; i + 1 < grid->nx; i++)
      link_square (grid, i, j);
  for (guint i = 0; i < grid->crossed->len; i++)
    {
      g_autoptr (GArray) ring = follow (grid, g_array_index (grid->crossed, guint, i));
      fp_contour_straighten (ring, grid->field, grid->step);
      const double area = fp_outline_area ((const FpPoint *) (gpointer) ring->data, ring->len);
      if (fabs (area) >= least && ring->len >= 3)
        fp_rings_add (found, (const FpPoint *) (gpointer) ring->data, ring->len, area < 0);
    }
  return fp_contour_sort (found);
}

/* --- all of it ------------------------------------------------------------------------ */

static void
grid_init (Grid *self, const FpField *field, const FpBox *box, double step)
{
  const double width = box->x1 - box->x0, height = box->y1 - box->y0;
  gsize n;

  *self = (Grid) { .field = field, .box = *box };
  self->step = MAX (step, sqrt (width * height / NODES_MOST));
  self->at = (FpPoint) { box->x0 - SHIFT_X * self->step, box->y0 - SHIFT_Y * self->step };
  self->nx = (guint) ceil (width / self->step + SHIFT_X) + 1;
  self->ny = (guint) ceil (height / self->step + SHIFT_Y) + 1;
  n = (gsize) self->nx * self->ny;
  self->holds = g_new0 (guint8, n);
  self->crossed = g_array_new (FALSE, FALSE, sizeof (guint));
  self->crossing = g_new (FpPoint, 2 * n);
  self->next = g_new (guint, 2 * n);
  memset (self->next, 0xff, 2 * n * sizeof *self->next);
}

static void
grid_clear (Grid *self)
{
  g_free (self->holds);
  g_array_unref (self->crossed);
  g_free (self->crossing);
  g_free (self->next);
}

GArray *
fp_contours (const FpField *field, const FpBox *box, double step, double least)
{
  GArray *rings = NULL;
  Grid grid;

  if (fp_box_is_empty (box) || !(step > 0))
    return fp_rings_new ();
  grid_init (&grid, field, box, step);
  fp_workers_do (grid.ny, ask_row, &grid);
  find_crossed (&grid);
  fp_workers_do (grid.crossed->len, find_crossing, &grid);
  if (!is_given_up (&grid))
    rings = trace (&grid, least);
  grid_clear (&grid);
  return rings;
}
