/* SPDX-License-Identifier: GPL-3.0-or-later */
/* title-block.c - the fields of ISO 7200:2004 (as reported in a table that quotes it), at the lower right of the frame
 *
 *   | legal owner         | title                                             |
 *   |                     | supplementary title                               |
 *   | creator  | approval person | identification number | date of issue      |
 *   | type     | status | language | paper | scale | sheet | projection symbol |
 */
#include "sheet-parts.h"
#include "text-fit.h"

#define CAPTION 1.8
#define INSET   1.5 /* from a line of the block to a text */

typedef struct
{
  double      x, y, width, height; /* of a block 180 mm wide and 40 mm high */
  const char *caption, *text;
  double      lettering;
} Cell;

typedef struct { FpDrawing *drawing; FpPoint origin; double stretch; } Block;

static void
draw_cell (const Block *b, const Cell *cell)
{
  const double x = b->origin.x + cell->x * b->stretch, y = b->origin.y + cell->y, width = cell->width * b->stretch;
  const FpPoint box[4] = { { x, y }, { x + width, y }, { x + width, y + cell->height }, { x, y + cell->height } };
  g_autofree char *caption = fp_lettering_shorten (cell->caption, CAPTION, width - 2 * INSET);
  const double heights[] = { cell->lettering, MIN (cell->lettering, CAPTION), 0 };
  const char *whole = cell->text != NULL ? cell->text : "";
  const double lettering = fp_lettering_height_that_fits (whole, width - 2 * INSET, heights);
  g_autofree char *text = fp_lettering_shorten (whole, lettering, width - 2 * INSET);

  fp_drawing_run (b->drawing, FP_PEN_EDGE, box, 4, TRUE);
  fp_drawing_text (b->drawing, (FpPoint) { x + INSET, y + cell->height - CAPTION - 0.9 }, CAPTION, 0, FP_ALIGN_LEFT,
                   caption);
  fp_drawing_text (b->drawing, (FpPoint) { x + INSET, y + 1.7 }, lettering, 0, FP_ALIGN_LEFT, text);
}

/* The owner's name may take several lines. */
static void
draw_owner (const Block *b, const char *owner, double y, double width, double height)
{
  const Cell cell = { 0, y, width, height, "Legal owner", NULL, 2.5 };
  const guint most = (guint) ((height - CAPTION - 2.5) / 4.2);
  g_autoptr (GPtrArray) lines = fp_lettering_wrap_most (owner, 2.5, width * b->stretch - 2 * INSET, most);

  draw_cell (b, &cell);
  fp_draw_lines (b->drawing, (FpPoint) { b->origin.x + INSET, b->origin.y + y + height - CAPTION - 2.6 }, 2.5, 4.2,
                 lines, most);
}

/* What is left out is told under it: who reads the sheet must not take it for what is not there. */
static void
draw_supplementary (const Block *b, const FpTitleBlock *f)
{
  const Cell cell = { 52, 18, 128, 11, "Supplementary title", f->left_out == NULL ? f->supplementary : NULL, 3.5 };
  const double x = b->origin.x + cell.x * b->stretch + INSET, width = cell.width * b->stretch - 2 * INSET;
  static const double heights[] = { 2.5, 1.8, 0 };
  const double lettering = fp_lettering_height_that_fits (f->supplementary, width, heights);
  g_autofree char *above = NULL, *under = NULL;

  draw_cell (b, &cell);
  if (f->left_out == NULL)
    return;
  above = fp_lettering_shorten (f->supplementary, lettering, width);
  under = fp_lettering_shorten (f->left_out, CAPTION, width);
  fp_drawing_text (b->drawing, (FpPoint) { x, b->origin.y + cell.y + 4.8 }, lettering, 0, FP_ALIGN_LEFT, above);
  fp_drawing_text (b->drawing, (FpPoint) { x, b->origin.y + cell.y + 1.4 }, CAPTION, 0, FP_ALIGN_LEFT, under);
}

void
fp_draw_title_block (FpDrawing *drawing, FpPoint corner, double width, const FpTitleBlock *f)
{
  const Block b = { drawing, { corner.x - width, corner.y }, width / FP_TITLE_BLOCK_WIDTH };
  static const double heights[] = { 5, 3.5, 2.5, 0 };
  const double title = fp_lettering_height_that_fits (f->title, 128 * b.stretch - 2 * INSET, heights);
  const Cell cells[] = {
    { 52, 29, 128, 11, "Title", f->title, title },
    { 0, 9, 52, 9, "Creator", f->creator, 2.5 },
    { 52, 9, 50, 9, "Approval person", "", 2.5 },
    { 102, 9, 44, 9, "Identification number", f->number, 2.5 },
    { 146, 9, 34, 9, "Date of issue", f->date, 2.5 },
    { 0, 0, 52, 9, "Document type", f->document_type, 2.5 },
    { 52, 0, 28, 9, "Document status", "Preliminary", 2.5 },
    { 80, 0, 16, 9, "Language", "en", 2.5 },
    { 96, 0, 17, 9, "Paper", f->paper, 2.5 },
    { 113, 0, 21, 9, "Scale", f->scale, 2.5 },
    { 134, 0, 18, 9, "Sheet", f->sheet, 2.5 },
    { 152, 0, 28, 9, "", "", 2.5 },
  };
  const FpPoint frame[4] = { { corner.x - width, corner.y }, corner, { corner.x, corner.y + FP_TITLE_BLOCK_HEIGHT },
                             { corner.x - width, corner.y + FP_TITLE_BLOCK_HEIGHT } };

  for (guint i = 0; i < G_N_ELEMENTS (cells); i++)
    draw_cell (&b, &cells[i]);
  draw_supplementary (&b, f);
  draw_owner (&b, f->owner, 18, 52, 22);
  fp_draw_projection_symbol (drawing, (FpPoint) { corner.x - 14 * b.stretch, corner.y + 4.5 }, 4.6);
  fp_drawing_run (drawing, FP_PEN_OUTLINE, frame, 4, TRUE);
}
