/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sheet-findings.c - the findings on a sheet: what was measured, the limit, where, and where that is printed */
#include "sheet-parts.h"
#include "text-fit.h"

/* Nothing that has to be read is smaller than 2.5 (ISO 3098-1). */
#define PLAIN         2.5
#define PLAIN_SPACING 4.0
#define HEADING       3.5
#define BETWEEN       2.0 /* two findings */
#define COLUMN_GAP    6.0
#define COLUMN_LEAST  60.0
#define COLUMN_MOST   130.0
#define INDENT        3.5

typedef struct
{
  FpDrawing *drawing;  /* NULL: nothing is drawn       */
  FpBox      box;      /* under the heading            */
  guint      columns, column;
  double     width;    /* of a column                  */
  double     y;        /* top of the next line         */
  FpTold     told;
} Column;

/* A finding made into lines. */
typedef struct
{
  GPtrArray *heading, *rest; /* utf8 */
  double     height;
} Block;

static double
column_x (const Column *c)
{
  return c->box.x0 + c->column * (c->width + COLUMN_GAP);
}

/* --- one finding --------------------------------------------------------------------- */

static void
append_wrapped (GPtrArray *to, const char *text, double height, double width)
{
  GPtrArray *lines = fp_lettering_wrap (text, height, width);

  for (guint i = 0; i < lines->len; i++)
    g_ptr_array_add (to, g_ptr_array_index (lines, i));
  g_ptr_array_set_free_func (lines, NULL);
  g_ptr_array_unref (lines);
}

static void
fill_rest (const Column *c, char *const *line, Block *block)
{
  const double width = c->width - INDENT;
  const guint n = g_strv_length ((char **) line), most = c->told == FP_TOLD_IN_BRIEF ? MIN (n, 1u) : n;

  for (guint i = 0; i < most; i++)
    if (c->told == FP_TOLD_FULLY)
      append_wrapped (block->rest, line[i], PLAIN, width);
    else
      g_ptr_array_add (block->rest, fp_lettering_shorten (line[i], PLAIN, width));
}

static void
block_fill (const Column *c, const char *finding, Block *block)
{
  g_auto (GStrv) line = g_strsplit (finding, "\n", -1);

  block->heading = fp_lettering_wrap (line[0] != NULL ? line[0] : "", PLAIN, c->width - INDENT);
  block->rest = g_ptr_array_new_with_free_func (g_free);
  if (line[0] != NULL)
    fill_rest (c, line + 1, block);
  block->height = block->heading->len * PLAIN_SPACING + block->rest->len * PLAIN_SPACING;
}

static void
block_clear (Block *block)
{
  g_ptr_array_unref (block->heading);
  g_ptr_array_unref (block->rest);
}

static void
draw_block (Column *c, const Block *block)
{
  const FpPoint at = { column_x (c), c->y - PLAIN + 0.45 };
  const FpPoint mark[4] = { at, { at.x + 1.6, at.y }, { at.x + 1.6, at.y + 1.6 }, { at.x, at.y + 1.6 } };
  const double x = column_x (c) + INDENT;

  fp_drawing_area (c->drawing, FP_PEN_EDGE, FP_FILL_INK, 0, mark, 4);
  fp_draw_lines (c->drawing, (FpPoint) { x, c->y }, PLAIN, PLAIN_SPACING, block->heading, block->heading->len);
  fp_draw_lines (c->drawing, (FpPoint) { x, c->y - block->heading->len * PLAIN_SPACING }, PLAIN, PLAIN_SPACING, block->rest,
                 block->rest->len);
}

/* --- columns -------------------------------------------------------------------------- */

/* In the last column room is kept for the line that tells of those left out. */
static gboolean
find_room (Column *c, double height, double kept)
{
  while (c->y - height - (c->column + 1 == c->columns ? kept : 0) < c->box.y0 - 0.01)
    {
      if (c->column + 1 >= c->columns)
        return FALSE;
      c->column++;
      c->y = c->box.y1;
    }
  return TRUE;
}

static gboolean
set_finding (Column *c, const char *finding, double kept)
{
  Block block;
  gboolean fits;

  block_fill (c, finding, &block);
  fits = find_room (c, block.height, kept);
  if (fits && c->drawing != NULL)
    draw_block (c, &block);
  if (fits)
    c->y -= block.height + BETWEEN;
  block_clear (&block);
  return fits;
}

static char *
rest_text (const FpFindingsList *list, guint left, guint all)
{
  if (list->next > 0)
    return g_strdup_printf ("Continued on sheet %u.", list->next);
  if (left == all)
    return g_strdup_printf ("%u findings: see the report (footpace check, or Report in the window)", left);
  return g_strdup_printf ("and %u more: see the report (footpace check, or Report in the window)", left);
}

static void
draw_rest (Column *c, const FpFindingsList *list, guint left, guint all)
{
  g_autofree char *text = rest_text (list, left, all);
  g_autoptr (GPtrArray) lines = fp_lettering_wrap (text, PLAIN, c->width - INDENT);

  fp_draw_lines (c->drawing, (FpPoint) { column_x (c) + INDENT, c->y }, PLAIN, PLAIN_SPACING, lines, lines->len);
}

/* Height of the longest line that may tell of those left out. */
static double
room_for_rest (const Column *c, const FpFindingsList *list, guint all)
{
  g_autofree char *text = rest_text (list, all, all + 1);
  g_autoptr (GPtrArray) lines = fp_lettering_wrap (text, PLAIN, c->width - INDENT);

  return lines->len * PLAIN_SPACING;
}

static Column
begin (FpDrawing *drawing, const FpBox *box, FpTold told)
{
  Column c = { .drawing = drawing, .box = *box, .told = told };
  const double width = box->x1 - box->x0 + COLUMN_GAP;

  c.box.y1 = box->y1 - HEADING - 3.5;
  c.columns = (guint) CLAMP (width / (COLUMN_LEAST + COLUMN_GAP), 1, 2);
  while (width / c.columns - COLUMN_GAP > COLUMN_MOST)
    c.columns++;
  c.width = width / c.columns - COLUMN_GAP;
  c.y = c.box.y1;
  return c;
}

guint
fp_draw_findings (FpDrawing *drawing, const FpBox *box, const FpFindingsList *list)
{
  Column c = begin (drawing, box, list->told);
  const guint all = list->findings == NULL ? 0 : g_strv_length ((char **) list->findings);
  const double kept = room_for_rest (&c, list, all);
  guint i;

  if (drawing != NULL)
    fp_drawing_text (drawing, (FpPoint) { box->x0, box->y1 - HEADING }, HEADING, 0, FP_ALIGN_LEFT,
                     list->first == 0 ? "FINDINGS" : "FINDINGS, CONTINUED");
  for (i = list->first; i < all && set_finding (&c, list->findings[i], i + 1 == all ? 0 : kept); i++)
    ;
  if (drawing != NULL && all == 0)
    fp_drawing_text (drawing, (FpPoint) { column_x (&c), c.y - PLAIN }, PLAIN, 0, FP_ALIGN_LEFT,
                     "No finding against the rules listed.");
  if (drawing != NULL && i < all)
    draw_rest (&c, list, all - i, all);
  return i - list->first;
}

FpTold
fp_findings_told (const FpBox *box, const char *const *findings)
{
  const guint all = findings == NULL ? 0 : g_strv_length ((char **) findings);

  for (FpTold told = FP_TOLD_FULLY; told < FP_TOLD_IN_BRIEF; told++)
    {
      const FpFindingsList list = { .findings = findings, .told = told };
      if (fp_draw_findings (NULL, box, &list) == all)
        return told;
    }
  return FP_TOLD_IN_BRIEF;
}
