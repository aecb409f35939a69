/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sight-rows.c - a graph of what each row of seats sees */
#include "footpace/sight-drawing.h"

#include "text-fit.h"

#include <math.h>

/* All in paper mm; design judgement. */
#define LETTERS   2.5
#define HEAD      6.0  /* room of the name over a block     */
#define ROW_MOST  4.0
#define ROW_LEAST 3.2  /* closer, numbers would run together */
#define NUMBERS   7.0  /* room of the row's number           */
#define NOTES     34.0 /* of what stands beyond the bar      */
#define BAR       0.6  /* of the step of rows                */
#define APART     5.0
#define COLUMN    84.0 /* at most so wide: further blocks stand beside */
#define BESIDE    8.0

typedef struct
{
  guint owner, rows;
} Block;

/* Blocks of seats in the order of the church; (element-type Block). */
static GArray *
find_blocks (const FpPeople *people)
{
  GArray *blocks = g_array_new (FALSE, FALSE, sizeof (Block));
  guint n;
  const FpPersonPlace *place = fp_people_places (people, &n);

  for (guint i = 0; i < n; i++)
    {
      Block *last = blocks->len > 0 ? &g_array_index (blocks, Block, blocks->len - 1) : NULL;
      if (place[i].at_rail)
        continue;
      if (last == NULL || last->owner != place[i].owner)
        {
          const Block block = { place[i].owner, 0 };
          g_array_append_val (blocks, block);
          last = &g_array_index (blocks, Block, blocks->len - 1);
        }
      last->rows = MAX (last->rows, place[i].row);
    }
  return blocks;
}

typedef struct
{
  FpDrawing     *drawing;
  const FpSight *sight;
  FpMoment       moment;
  FpFocus        focus;
  double         x0, x1;    /* of the bars */
  double         step;
} Graph;

static void
draw_bar (const Graph *g, double y, double share, FpFill fill)
{
  const double half = g->step * BAR / 2, x = g->x0 + share * (g->x1 - g->x0);
  const FpPoint corner[4] = { { g->x0, y - half }, { x, y - half }, { x, y + half }, { g->x0, y + half } };

  if (x > g->x0)
    fp_drawing_area (g->drawing, FP_PEN_EDGE, fill, 0, corner, 4);
}

/* "62 %; 3 see nothing" */
static char *
note_of (const FpSightSum *sum)
{
  if (sum->none == 0)
    return g_strdup_printf ("%.0f %%", 100 * sum->mean);
  return g_strdup_printf ("%.0f %%; %u see nothing", 100 * sum->mean, sum->none);
}

static void
draw_row (const Graph *g, guint owner, guint row, double y)
{
  const FpSightSum sum = fp_sight_row (g->sight, owner, row, g->moment, g->focus);
  g_autofree char *number = g_strdup_printf ("%u", row);
  g_autofree char *note = note_of (&sum);

  fp_drawing_text (g->drawing, (FpPoint) { g->x0 - 1.5, y - LETTERS / 2 }, LETTERS, 0, FP_ALIGN_RIGHT, number);
  if (sum.places == 0)
    return;
  draw_bar (g, y, sum.mean, FP_FILL_TINT);
  fp_drawing_text (g->drawing, (FpPoint) { g->x1 + 1.5, y - LETTERS / 2 }, LETTERS, 0, FP_ALIGN_LEFT, note);
}

/* Nothing and all, upright lines through the bars. */
static void
draw_scale (const Graph *g, double top, double foot)
{
  fp_drawing_line (g->drawing, FP_PEN_EDGE, (FpPoint) { g->x0, foot }, (FpPoint) { g->x0, top });
  fp_drawing_line (g->drawing, FP_PEN_GUIDE, (FpPoint) { g->x1, foot }, (FpPoint) { g->x1, top });
}

static double
draw_block (const Graph *g, const Block *block, double top)
{
  const FpScene *scene = fp_people_scene (fp_sight_people (g->sight));
  const char *name = fp_item_name (fp_scene_placed (scene, NULL)[block->owner].item);
  g_autoptr (GPtrArray) lines = fp_lettering_wrap_most (name, LETTERS, g->x1 - g->x0 + NUMBERS + NOTES, 1);
  const double first = top - HEAD, foot = first - block->rows * g->step;

  if (lines->len > 0)
    fp_drawing_text (g->drawing, (FpPoint) { g->x0 - NUMBERS, top - LETTERS - 1 }, LETTERS, 0, FP_ALIGN_LEFT,
                     g_ptr_array_index (lines, 0));
  for (guint row = 1; row <= block->rows; row++)
    draw_row (g, block->owner, row, first - (row - 0.5) * g->step);
  draw_scale (g, first, foot);
  return foot - APART;
}

guint
fp_drawing_add_sight_rows (FpDrawing *self, const FpSight *sight, FpMoment moment, FpFocus focus, const FpBox *box)
{
  g_autoptr (GArray) blocks = find_blocks (fp_sight_people (sight));
  const double width = MIN (COLUMN, box->x1 - box->x0);
  Graph graph = { self, sight, moment, focus, box->x0 + NUMBERS, box->x0 + width - NOTES, ROW_MOST };
  double y = box->y1, wanted = 0;
  guint rows = 0;

  for (guint i = 0; i < blocks->len; i++)
    rows += g_array_index (blocks, Block, i).rows;
  wanted = blocks->len * (HEAD + APART);
  if (rows > 0)
    graph.step = CLAMP ((box->y1 - box->y0 - wanted) / rows, ROW_LEAST, ROW_MOST);
  fp_drawing_set_item (self, NULL, FP_STANDING_EXISTING, -1);
  for (guint i = 0; i < blocks->len; i++)
    {
      const Block *block = &g_array_index (blocks, Block, i);
      if (y < box->y1 && y - HEAD - block->rows * graph.step < box->y0 && graph.x1 + NOTES + BESIDE + width <= box->x1)
        {
          graph.x0 += width + BESIDE;
          graph.x1 += width + BESIDE;
          y = box->y1;
        }
      if (y - HEAD - block->rows * graph.step < box->y0)
        return blocks->len - i;
      y = draw_block (&graph, block, y);
    }
  return 0;
}
