/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sheet-notes.c - running text on a sheet: cautions, wrapped, never beyond their box */
#include "must.h"
#include "sheet-parts.h"
#include "text-fit.h"

#include <math.h>

#define SMALL         1.8
#define SMALL_SPACING 2.9
#define PLAIN         2.5
#define PLAIN_SPACING 4.0

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
    units == FP_UNITS_METRIC ? "Dimensions in mm, levels in m above the datum. "
                             : "In feet and inches; levels above the datum. ",
    "Verify all dimensions and levels on site. Local codes, as adopted there, govern. To be confirmed by a licensed "
    "architect, with steps and access; floors, stone and railings by a licensed engineer; flames and exits by "
    "the fire authority.", NULL);
  g_autoptr (GPtrArray) lines = fp_lettering_wrap (text, SMALL, box->x1 - box->x0);
  const double top = box->y1 - PLAIN - 2.0;
  const double room = top - box->y0;
  guint n;

  fp_drawing_text (drawing, (FpPoint) { box->x0, box->y1 - PLAIN }, PLAIN, 0, FP_ALIGN_LEFT, heading);
  n = fp_draw_lines (drawing, (FpPoint) { box->x0, top }, SMALL, SMALL_SPACING, lines,
                     (guint) MAX (0, floor ((room - SMALL) / SMALL_SPACING) + 1));
  return box->y1 - top + n * SMALL_SPACING;
}

/* --- what is not dimensioned ------------------------------------------------------------ */

double
fp_draw_untold (FpDrawing *drawing, const FpBox *box, const GPtrArray *untold)
{
  g_autofree char *text = fp_untold_words (untold);
  g_autoptr (GPtrArray) lines = NULL;
  double height;

  if (text == NULL)
    return 0;
  lines = fp_lettering_wrap (text, PLAIN, box->x1 - box->x0);
  height = lines->len * PLAIN_SPACING;
  if (drawing != NULL)
    {
      const FpPoint ground[4] = { { box->x0 - 1, box->y1 + 1 }, { box->x1, box->y1 + 1 }, { box->x1, box->y1 - height },
                                  { box->x0 - 1, box->y1 - height } };
      fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, -1);
      fp_drawing_area (drawing, FP_PEN_HATCH, FP_FILL_PAPER, 0, ground, 4);
      fp_draw_lines (drawing, (FpPoint) { box->x0, box->y1 }, PLAIN, PLAIN_SPACING, lines, lines->len);
    }
  return height;
}
