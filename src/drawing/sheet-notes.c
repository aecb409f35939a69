/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sheet-notes.c - running text on a sheet: cautions and findings, wrapped, never beyond their box */
#include "sheet-parts.h"
#include "text-fit.h"

#include <math.h>

#define SMALL         1.8
#define SMALL_SPACING 2.9
#define PLAIN         2.5
#define PLAIN_SPACING 4.0
#define HEADING       3.5
#define BETWEEN       1.6 /* two findings */
#define COLUMN_GAP    6.0
#define COLUMN_LEAST  60.0
#define INDENT        3.5

guint
fp_draw_lines (FpDrawing *drawing, FpPoint top_left, double height, double spacing, GPtrArray *lines, guint most)
{
  const guint n = MIN (lines->len, most);

  for (guint i = 0; i < n; i++)
    fp_drawing_text (drawing, (FpPoint) { top_left.x, top_left.y - height - i * spacing }, height, 0, FP_ALIGN_LEFT,
                     g_ptr_array_index (lines, i));
  return n;
}

/* --- cautions ------------------------------------------------------------------------ */

double
fp_draw_cautions (FpDrawing *drawing, const FpBox *box, FpUnits units)
{
  g_autofree char *heading = fp_lettering_shorten ("PRELIMINARY, NOT FOR CONSTRUCTION", PLAIN, box->x1 - box->x0);
  g_autofree char *text = g_strconcat (
    units == FP_UNITS_METRIC ? "Dimensions in millimetres, levels in metres above the datum. "
                             : "Dimensions and levels above the datum in feet and inches. ",
    "Verify all dimensions and levels on site. Local codes and the edition adopted there govern. To be confirmed by a "
    "licensed architect; floors, stone and railings by a licensed engineer; candles, lamps and exits by the fire "
    "authority.", NULL);
  g_autoptr (GPtrArray) lines = fp_lettering_wrap (text, SMALL, box->x1 - box->x0);
  const double top = box->y1 - PLAIN - 2.0;
  const double room = top - box->y0;
  guint n;

  fp_drawing_text (drawing, (FpPoint) { box->x0, box->y1 - PLAIN }, PLAIN, 0, FP_ALIGN_LEFT, heading);
  n = fp_draw_lines (drawing, (FpPoint) { box->x0, top }, SMALL, SMALL_SPACING, lines,
                     (guint) MAX (0, floor ((room - SMALL) / SMALL_SPACING) + 1));
  return box->y1 - top + n * SMALL_SPACING;
}

/* --- findings ------------------------------------------------------------------------- */

typedef struct
{
  FpDrawing *drawing;
  FpBox      box;      /* under the heading            */
  guint      columns, column;
  double     width;    /* of a column                  */
  double     y;        /* top of the next line         */
} Column;

static double
column_x (const Column *c)
{
  return c->box.x0 + c->column * (c->width + COLUMN_GAP);
}

/* Whether @lines lines more fit in this column, and one under them. */
static gboolean
has_room (const Column *c, guint lines, gboolean keep_one)
{
  return c->y - (lines + (keep_one ? 1 : 0)) * PLAIN_SPACING >= c->box.y0 - 0.01;
}

/* In the last column a line is kept for the number of those left out. */
static gboolean
find_room (Column *c, guint lines, gboolean is_last)
{
  while (!has_room (c, lines, c->column + 1 == c->columns && !is_last))
    {
      if (c->column + 1 >= c->columns)
        return FALSE;
      c->column++;
      c->y = c->box.y1;
    }
  return TRUE;
}

static gboolean
set_finding (Column *c, const char *finding, gboolean is_last)
{
  g_autoptr (GPtrArray) lines = fp_lettering_wrap (finding, PLAIN, c->width - INDENT);
  const FpPoint box[4] = { { 0, 0 }, { 1.6, 0 }, { 1.6, 1.6 }, { 0, 1.6 } };
  FpPoint mark[4];

  if (!find_room (c, lines->len, is_last))
    return FALSE;
  for (guint i = 0; i < 4; i++)
    mark[i] = (FpPoint) { column_x (c) + box[i].x, c->y - PLAIN + 0.45 + box[i].y };
  fp_drawing_area (c->drawing, FP_PEN_EDGE, FP_FILL_INK, 0, mark, 4);
  fp_draw_lines (c->drawing, (FpPoint) { column_x (c) + INDENT, c->y }, PLAIN, PLAIN_SPACING, lines, lines->len);
  c->y -= lines->len * PLAIN_SPACING + BETWEEN;
  return TRUE;
}

void
fp_draw_findings (FpDrawing *drawing, const FpBox *box, const char *const *findings)
{
  Column c = { .drawing = drawing, .box = *box };
  const guint n = findings == NULL ? 0 : g_strv_length ((char **) findings);
  guint i;

  fp_drawing_text (drawing, (FpPoint) { box->x0, box->y1 - HEADING }, HEADING, 0, FP_ALIGN_LEFT, "FINDINGS");
  c.box.y1 = box->y1 - HEADING - 3.5;
  c.columns = (guint) CLAMP ((box->x1 - box->x0 + COLUMN_GAP) / (COLUMN_LEAST + COLUMN_GAP), 1, 4);
  c.width = (box->x1 - box->x0 + COLUMN_GAP) / c.columns - COLUMN_GAP;
  c.y = c.box.y1;
  for (i = 0; i < n && set_finding (&c, findings[i], i + 1 == n); i++)
    ;
  if (n == 0)
    fp_drawing_text (drawing, (FpPoint) { column_x (&c), c.y - PLAIN }, PLAIN, 0, FP_ALIGN_LEFT,
                     "No finding against the rules listed.");
  if (i < n)
    {
      g_autofree char *more = i == 0 ? g_strdup_printf ("%u findings: see the report", n)
                                     : g_strdup_printf ("and %u more: see the report", n - i);
      fp_drawing_text (drawing, (FpPoint) { column_x (&c) + INDENT, c.y - PLAIN }, PLAIN, 0, FP_ALIGN_LEFT, more);
    }
}
