/* SPDX-License-Identifier: GPL-3.0-or-later */
/* linen-sheet.c - on paper: what to buy, the bolt as large as the paper allows, each cloth, and how it is made
 *
 * Drawn twice, for the number of sheets is known only when all is set.
 */
#include "linen-private.h"

#include "footpace/error.h"

#include <math.h>

/* Paper mm; design judgement. */
#define LETTERS 2.5
#define HEAD    3.5
#define LINE    4.2
#define GAP     3.0
#define BETWEEN 4.0

#define TITLE "Linen: the cutting of it"
#define CODE  "linen"

enum { C_LETTER, C_NAME, C_NUMBER, C_CUT, C_FINISHED, C_HEMS, C_MADE, N_COLUMNS };

/* Of the width of the sheet. */
static const double shares[N_COLUMNS] = { 0.03, 0.16, 0.04, 0.14, 0.13, 0.15, 0.35 };
static const char *const heads[N_COLUMNS] = {
  "", "Cloth", "Nr", "Cut, along × across", "Finished", "Hem", "How it is made",
};

typedef struct
{
  const FpLinenPlan *plan;
  const FpSheetSpec *spec;
  GPtrArray         *pages;
  FpDrawing         *drawing; /* the last of them */
  FpBox              room;
  double             y, scale;
  guint              n_pages; /* in all, when it is known; 0 */
} Flow;

/* --- pages, lines --------------------------------------------------------------------------- */

static void
begin_page (Flow *f, double scale)
{
  FpSheetSpec spec = *f->spec;

  spec.page = f->pages->len + 1;
  spec.pages = MAX (f->n_pages, spec.page);
  spec.findings = NULL;
  f->drawing = fp_sheet_blank_of (f->plan->scene, &spec, TITLE, CODE, scale, &f->room);
  g_ptr_array_add (f->pages, f->drawing);
  fp_drawing_set_item (f->drawing, NULL, FP_STANDING_EXISTING, -1);
  f->y = f->room.y1;
}

/* So much in one piece. */
static void
need (Flow *f, double height)
{
  if (f->y - height < f->room.y0)
    begin_page (f, 0);
}

static void
set_text (Flow *f, double x, double letters, const char *text)
{
  fp_drawing_text (f->drawing, (FpPoint) { x, f->y - letters }, letters, 0, FP_ALIGN_LEFT, text);
}

static void
set_lines (Flow *f, const char *text, double letters, double line)
{
  g_autoptr (GPtrArray) lines = fp_lettering_wrap (text, letters, f->room.x1 - f->room.x0);

  need (f, lines->len * line);
  for (guint i = 0; i < lines->len; i++, f->y -= line)
    set_text (f, f->room.x0, letters, g_ptr_array_index (lines, i));
}

static void
set_all (Flow *f, GPtrArray *texts)
{
  for (guint i = 0; i < texts->len; i++)
    set_lines (f, g_ptr_array_index (texts, i), LETTERS, LINE);
  if (texts->len > 0)
    f->y -= GAP;
  g_ptr_array_unref (texts);
}

/* --- the table --------------------------------------------------------------------------------- */

typedef struct { char *text[N_COLUMNS]; } Cells;

static void
cells_clear (Cells *self)
{
  for (guint k = 0; k < N_COLUMNS; k++)
    g_clear_pointer (&self->text[k], g_free);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Cells, cells_clear)

static double
column_at (const Flow *f, guint column)
{
  double x = f->room.x0;

  for (guint k = 0; k < column; k++)
    x += shares[k] * (f->room.x1 - f->room.x0);
  return x;
}

/* Each wrapped to its column.  Returns: how high they are */
static double
wrap_cells (const Flow *f, const char *const *text, GPtrArray **lines)
{
  guint n = 1;

  for (guint k = 0; k < N_COLUMNS; k++)
    {
      lines[k] = fp_lettering_wrap (text[k], LETTERS, shares[k] * (f->room.x1 - f->room.x0) - BETWEEN / 2);
      n = MAX (n, lines[k]->len);
    }
  return n * LINE + 1;
}

/* Takes @lines. */
static void
set_cells (Flow *f, GPtrArray **lines, double height)
{
  for (guint k = 0; k < N_COLUMNS; k++)
    {
      for (guint i = 0; i < lines[k]->len; i++)
        fp_drawing_text (f->drawing, (FpPoint) { column_at (f, k), f->y - i * LINE - LETTERS }, LETTERS, 0, FP_ALIGN_LEFT,
                         g_ptr_array_index (lines[k], i));
      g_ptr_array_unref (lines[k]);
    }
  f->y -= height;
}

static void
set_heads (Flow *f)
{
  GPtrArray *lines[N_COLUMNS];
  const double height = wrap_cells (f, heads, lines);

  set_cells (f, lines, height);
  fp_drawing_line (f->drawing, FP_PEN_EDGE, (FpPoint) { f->room.x0, f->y + 1 }, (FpPoint) { f->room.x1, f->y + 1 });
}

static void
set_row (Flow *f, const Cells *cells)
{
  GPtrArray *lines[N_COLUMNS];
  const double height = wrap_cells (f, (const char *const *) cells->text, lines);
  const guint page = f->pages->len;

  need (f, height);
  if (f->pages->len != page)
    set_heads (f);
  set_cells (f, lines, height);
}

/* It is broken at its cross alone. */
static char *
unbroken (const FpLinenPlan *plan, double length, double width)
{
  const FpUnits units = fp_linen_units (plan);
  g_autofree char *along = fp_length_format (round (length), units), *across = fp_length_format (round (width), units);
  g_auto (GStrv) parts = g_strsplit (along, " ", -1), others = g_strsplit (across, " ", -1);
  g_autofree char *first = g_strjoinv ("\302\240", parts), *second = g_strjoinv ("\302\240", others);

  return g_strdup_printf ("%s\302\240× %s", first, second);
}

/* As it lies; where some lie otherwise, both. */
static char *
cut_text (const FpLinenPlan *plan, guint cloth)
{
  GString *out = g_string_new (NULL);

  for (guint turned = 0; turned < 2; turned++)
    for (guint i = 0; i < plan->pieces->len; i++)
      {
        const FpBoltPlace *place = &plan->layout->place[i];
        g_autofree char *size = unbroken (plan, place->along, place->across);

        if (fp_linen_part (plan, i)->cloth != cloth || (guint) place->turned != turned)
          continue;
        g_string_append_printf (out, "%s%s%s", out->len > 0 ? "; " : "", size, turned ? ", laid across" : "");
        break;
      }
  return g_string_free (out, FALSE);
}

static void
set_cloth (Flow *f, guint i)
{
  const FpLinenPlan *plan = f->plan;
  const FpCloth *cloth = fp_linen_cloth (plan, i);
  g_auto (Cells) cells = { {
    fp_linen_letter (i), fp_linen_cloth_name (cloth), g_strdup_printf ("%u", cloth->number), cut_text (plan, i),
    unbroken (plan, cloth->length, cloth->width), fp_linen_hems_text (plan, cloth), fp_linen_made_text (plan, cloth),
  } };

  if (*cells.text[C_CUT] == '\0')
    {
      g_free (cells.text[C_CUT]);
      cells.text[C_CUT] = g_strdup ("not of this bolt: see above");
    }
  set_row (f, &cells);
}

static void
set_cloths (Flow *f)
{
  need (f, 5 * LINE);
  set_heads (f);
  for (guint i = 0; i < f->plan->cloths->len; i++)
    set_cloth (f, i);
  f->y -= GAP;
}

/* --- all ---------------------------------------------------------------------------------------- */

static void
set_wide (Flow *f)
{
  g_autofree char *head = fp_linen_wide_head (f->plan);

  if (f->plan->wide->len > 0)
    set_lines (f, head, LETTERS, LINE);
  for (guint i = 0; i < f->plan->wide->len; i++)
    {
      g_autofree char *text = fp_linen_wide_text (f->plan, &g_array_index (f->plan->wide, FpLinenWide, i));
      set_lines (f, text, LETTERS, LINE);
    }
  if (f->plan->wide->len > 0)
    f->y -= GAP;
}

static void
set_silks (Flow *f)
{
  if (f->plan->silks->len == 0)
    return;
  need (f, 2 * LINE);
  set_lines (f, FP_LINEN_SILK_HEAD, LETTERS, LINE);
  for (guint i = 0; i < f->plan->silks->len; i++)
    {
      g_autofree char *text = fp_linen_silk_text (f->plan, &g_array_index (f->plan->silks, FpCloth, i));
      set_lines (f, text, LETTERS, LINE);
    }
  f->y -= GAP;
}

static void
set_bolt (Flow *f)
{
  FpBoltRows rows;

  fp_bolt_rows_init (&rows, f->plan, f->room.x1 - f->room.x0, f->scale);
  fp_bolt_rows_draw (&rows, f->drawing, f->room.x0, f->y);
  f->y -= fp_bolt_rows_height (&rows);
  fp_bolt_rows_clear (&rows);
  set_lines (f, FP_LINEN_LEGEND, LETTERS, LINE);
  f->y -= GAP;
}

static double
words_height (const Flow *f, const char *buy)
{
  const double wide = f->room.x1 - f->room.x0;
  g_autoptr (GPtrArray) lines = fp_lettering_wrap (buy, HEAD, wide), legend = fp_lettering_wrap (FP_LINEN_LEGEND, LETTERS, wide);

  return lines->len * (HEAD + 2) + GAP + legend->len * LINE;
}

static gboolean
set_sheets (Flow *f, GError **error)
{
  g_autofree char *buy = fp_linen_buy_text (f->plan);
  double width, height;

  begin_page (f, f->scale > 0 ? f->scale : 1);
  width = f->room.x1 - f->room.x0;
  height = f->room.y1 - f->room.y0 - words_height (f, buy);
  if (!(f->scale > 0))
    f->scale = fp_bolt_rows_scale (f->plan, width, height, f->spec->scale);
  if (!(f->scale > 0))
    {
      const double largest = fp_bolt_rows_scale (f->plan, width, height, 0);

      if (largest > 0)
        g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "the bolt does not fit this paper at 1:%g; the largest scale that fits is 1:%g",
                     f->spec->scale, largest);
      else
        g_set_error_literal (error, FP_ERROR, FP_ERROR_RANGE, "the bolt fits this paper at no scale; choose larger paper");
      return FALSE;
    }
  set_lines (f, buy, HEAD, HEAD + 2);
  f->y -= GAP;
  set_bolt (f);
  set_wide (f);
  set_all (f, fp_linen_stops_texts (f->plan));
  set_cloths (f);
  set_silks (f);
  set_all (f, fp_linen_order_texts (f->plan));
  return TRUE;
}

GPtrArray *
fp_linen_plan_sheets (const FpLinenPlan *self, const FpSheetSpec *spec, double *scale, GError **error)
{
  Flow f = { .plan = self, .spec = spec };

  for (guint pass = 0; pass < 2; pass++)
    {
      f.n_pages = f.pages != NULL ? f.pages->len : 0;
      g_clear_pointer (&f.pages, g_ptr_array_unref);
      f.pages = g_ptr_array_new_with_free_func ((GDestroyNotify) fp_drawing_unref);
      if (!set_sheets (&f, error))
        {
          g_ptr_array_unref (f.pages);
          return NULL;
        }
    }
  if (scale != NULL)
    *scale = f.scale;
  return f.pages;
}

GPtrArray *
fp_linen_sheets_of (const FpScene *scene, const FpSheetSpec *spec, double *scale, GError **error)
{
  const FpWorks *works = fp_project_works (fp_scene_project (scene));
  const FpLinenSpec linen = { works->bolt, { works->warp, works->weft }, works->joined };
  g_autoptr (FpLinenPlan) plan = NULL;

  if (!(works->bolt > 0))
    {
      g_set_error_literal (error, FP_ERROR, FP_ERROR_RANGE, "how wide the bolt of linen is has not been said: type it under "
                           "Schedules, Reckoned By");
      return NULL;
    }
  plan = fp_linen_plan_new (scene, &linen, error);
  return plan != NULL ? fp_linen_plan_sheets (plan, spec, scale, error) : NULL;
}
