/* SPDX-License-Identifier: GPL-3.0-or-later */
/* level-diagram-key.c - what the marks of the diagram of levels mean */
#include "level-diagram-lay.h"

/* Paper mm; design judgement. */
#define SYMBOL 4.5 /* room of a symbol before its words */
#define GAP    6.0
#define STEP   5.0 /* from line to line                 */
#define UNDER  6.5 /* the title: the first line         */

void
fp_level_not_below (FpDrawing *drawing, FpPoint at, double half)
{
  const double high = 1.8 * half, foot = at.y - high - FP_LEVEL_MARK_GAP - 2 * half;
  const FpPoint triangle[3] = { at, { at.x - half, at.y - high }, { at.x + half, at.y - high } };

  fp_drawing_area (drawing, FP_PEN_EDGE, FP_FILL_INK, 0, triangle, 3);
  fp_drawing_line (drawing, FP_PEN_OUTLINE, (FpPoint) { at.x - half, foot }, (FpPoint) { at.x + half, foot + 2 * half });
  fp_drawing_line (drawing, FP_PEN_OUTLINE, (FpPoint) { at.x - half, foot + 2 * half }, (FpPoint) { at.x + half, foot });
}

/* A symbol, and what it means. */
typedef struct
{
  void      (*draw) (const FpLevelLay *l, FpPoint at); /* from there to the right, on the base line of the words */
  const char *words;                               /* interned */
} KeyItem;

static void
draw_key_of_eyes (const FpLevelLay *l, FpPoint at)
{
  fp_drawing_line (l->drawing, FP_PEN_OUTLINE, (FpPoint) { at.x, at.y + FP_LEVEL_LETTERS / 2 }, (FpPoint) { at.x + 3, at.y + FP_LEVEL_LETTERS / 2 });
}

static void
draw_key_of_spread (const FpLevelLay *l, FpPoint at)
{
  fp_drawing_line (l->drawing, FP_PEN_EDGE, (FpPoint) { at.x + 1.5, at.y - 0.3 }, (FpPoint) { at.x + 1.5, at.y + FP_LEVEL_LETTERS + 0.3 });
}

static void
draw_key_of_floors (const FpLevelLay *l, FpPoint at)
{
  fp_drawing_line (l->drawing, FP_PEN_EDGE, (FpPoint) { at.x, at.y + FP_LEVEL_LETTERS / 2 }, (FpPoint) { at.x + 3, at.y + FP_LEVEL_LETTERS / 2 });
}

static void
draw_key_of_not_below (const FpLevelLay *l, FpPoint at)
{
  fp_level_not_below (l->drawing, (FpPoint) { at.x + 1.5, at.y + 3.2 }, 0.9);
}

static void
add_key (GArray *items, void (*draw) (const FpLevelLay *, FpPoint), const char *words)
{
  const KeyItem item = { draw, g_intern_string (words) };

  g_array_append_val (items, item);
}

static GArray *
key_items (const FpLevelLay *l)
{
  const FpBrief *brief = fp_project_brief (fp_scene_project (l->of->scene));
  g_autofree char *eyes = g_strdup_printf ("eyes of a row, sitting (standing where nobody sits), of the %uth percentile",
                                           brief->percentile);
  GArray *items = g_array_new (FALSE, FALSE, sizeof (KeyItem));
  gboolean any = FALSE;

  for (guint i = 0; i < l->of->rows->len && !any; i++)
    any = fp_level_has_floor_line (l, &g_array_index (l->of->rows, FpRowLevel, i));
  if (l->of->rows->len > 0)
    add_key (items, draw_key_of_eyes, eyes);
  if (l->of->rows->len > 0 && brief->varied)
    add_key (items, draw_key_of_spread, "from the lowest to the highest eyes of its people");
  if (any)
    add_key (items, draw_key_of_floors, "floor of a row, beside higher floor");
  if (l->of->levels.not_below > 0)
    add_key (items, draw_key_of_not_below, "not below the floor of the altar");
  return items;
}

/* From left to right, and on in the next line where one ends; returns the number of lines. */
static guint
flow_key (const FpLevelLay *l, const GArray *items, gboolean drawn)
{
  double x = l->room.x0, y = l->room.y1 - FP_LEVEL_TITLE - UNDER;
  guint lines = items->len > 0 ? 1 : 0;

  for (guint i = 0; i < items->len; i++)
    {
      const KeyItem *item = &g_array_index (items, KeyItem, i);
      const double width = SYMBOL + fp_lettering_width (item->words, FP_LEVEL_LETTERS);

      if (x > l->room.x0 && x + width > l->room.x1)
        {
          x = l->room.x0;
          y -= STEP;
          lines++;
        }
      if (drawn)
        {
          item->draw (l, (FpPoint) { x, y });
          fp_drawing_text (l->drawing, (FpPoint) { x + SYMBOL, y }, FP_LEVEL_LETTERS, 0, FP_ALIGN_LEFT, item->words);
        }
      x += width + GAP;
    }
  return lines;
}

double
fp_level_key_height (const FpLevelLay *l)
{
  g_autoptr (GArray) items = key_items (l);

  return flow_key (l, items, FALSE) * STEP;
}

void
fp_level_key_draw (const FpLevelLay *l)
{
  g_autoptr (GArray) items = key_items (l);

  flow_key (l, items, TRUE);
}
