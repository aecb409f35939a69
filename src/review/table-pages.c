/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "table-pages.h"

#include "footpace/error.h"

#include <math.h>

/* Paper mm; letters after ISO 3098, no smaller than 2.5. */
#define LETTERS 2.5
#define HEADS   3.5
#define LINE    4.4
#define OVER    2.2 /* more, before a title                  */
#define BETWEEN 4.0
#define GIVEN   22.0 /* a column is not cut shorter than this */

typedef struct
{
  const FpScene     *scene;
  const FpSheetSpec *spec;
  const char        *title, *code;
  GPtrArray         *pages;
  FpDrawing         *drawing; /* the page that is being set; NULL: none yet   */
  FpBox              room;
  double             y;       /* the upper edge of the next line              */
  guint              page, n_pages; /* n_pages 0: how many is not known yet   */
  const FpTable     *table;
  double             width[FP_N_BILL_COLUMNS], x[FP_N_BILL_COLUMNS];
} Setting;

/* --- columns ------------------------------------------------------------------ */

static gboolean
is_set (const FpTable *table, guint column)
{
  return (table->columns & 1u << column) != 0;
}

static double
widest (const FpTable *table, guint column)
{
  double width = fp_lettering_width (table->heads[column], LETTERS);

  for (guint i = 0; i < table->told->len; i++)
    {
      const FpTold *t = &g_array_index (table->told, FpTold, i);

      if (t->type >= FP_TOLD_ROW && t->cell[column] != NULL)
        width = MAX (width, fp_lettering_width (t->cell[column], LETTERS));
    }
  return width;
}

static gboolean
lay_columns (Setting *s, const FpTable *table, GError **error)
{
  const double room = s->room.x1 - s->room.x0;
  double all = -BETWEEN, x = s->room.x0;

  s->table = table;
  for (guint k = 0; k < FP_N_BILL_COLUMNS; k++)
    if (is_set (table, k))
      all += (s->width[k] = widest (table, k)) + BETWEEN;
  if (all > room)
    s->width[table->gives] -= all - room;
  if (s->width[table->gives] < MIN (GIVEN, widest (table, table->gives)))
    {
      g_set_error_literal (error, FP_ERROR, FP_ERROR_RANGE, "the columns of the schedules do not fit this paper; choose larger "
                           "paper, or lay it across");
      return FALSE;
    }
  for (guint k = 0; k < FP_N_BILL_COLUMNS; k++)
    if (is_set (table, k))
      {
        s->x[k] = x;
        x += s->width[k] + BETWEEN;
      }
  return TRUE;
}

/* --- lines --------------------------------------------------------------------- */

static void
begin_page (Setting *s)
{
  FpSheetSpec spec = *s->spec;

  spec.page = ++s->page;
  spec.pages = MAX (s->n_pages, s->page);
  spec.findings = NULL;
  s->drawing = fp_sheet_blank_of (s->scene, &spec, s->title, s->code, 0, &s->room);
  g_ptr_array_add (s->pages, s->drawing);
  fp_drawing_set_item (s->drawing, NULL, FP_STANDING_EXISTING, -1);
  s->y = s->room.y1;
}

static void
set_text (Setting *s, double x, FpAlign align, double letters, const char *text)
{
  fp_drawing_text (s->drawing, (FpPoint) { x, s->y - letters }, letters, 0, align, text);
}

static void
set_cell (Setting *s, guint column, const char *text)
{
  g_autofree char *cut = column == s->table->gives ? fp_lettering_shorten (text, LETTERS, s->width[column]) : g_strdup (text);

  if ((s->table->words & 1u << column) != 0)
    set_text (s, s->x[column], FP_ALIGN_LEFT, LETTERS, cut);
  else
    set_text (s, s->x[column] + s->width[column], FP_ALIGN_RIGHT, LETTERS, cut);
}

static void
draw_line_over (Setting *s, FpPen pen)
{
  fp_drawing_line (s->drawing, pen, (FpPoint) { s->room.x0, s->y + 1.0 }, (FpPoint) { s->room.x1, s->y + 1.0 });
}

static void
set_heads (Setting *s)
{
  for (guint k = 0; k < FP_N_BILL_COLUMNS; k++)
    if (is_set (s->table, k))
      set_cell (s, k, s->table->heads[k]);
  s->y -= LINE + 1.0;
  draw_line_over (s, FP_PEN_EDGE);
}

static double
height_of (const FpTold *told)
{
  return told->type == FP_TOLD_WORK ? OVER + HEADS + 2.5 : told->type == FP_TOLD_HEADING ? OVER + LINE : LINE;
}

/* A title stays with what is under it. */
static double
height_with_next (const FpTable *table, guint i)
{
  double height = 0;

  for (; i < table->told->len; i++)
    {
      const FpTold *told = &g_array_index (table->told, FpTold, i);

      height += height_of (told);
      if (told->type >= FP_TOLD_ROW)
        break;
    }
  return height;
}

static void
set_told (Setting *s, const FpTold *told)
{
  if (told->type == FP_TOLD_WORK || told->type == FP_TOLD_HEADING)
    {
      s->y -= OVER;
      set_text (s, s->room.x0, FP_ALIGN_LEFT, told->type == FP_TOLD_WORK ? HEADS : LETTERS + 0.3, told->cell[0]);
      s->y -= height_of (told) - OVER;
      return;
    }
  if (told->type == FP_TOLD_SUM)
    draw_line_over (s, FP_PEN_HATCH);
  for (guint k = 0; k < FP_N_BILL_COLUMNS; k++)
    if (is_set (s->table, k) && told->cell[k] != NULL && *told->cell[k] != '\0')
      set_cell (s, k, told->cell[k]);
  s->y -= LINE;
}

static void
set_closing (Setting *s, const char *words)
{
  g_autoptr (GPtrArray) lines = fp_lettering_wrap (words, LETTERS, MIN (s->room.x1 - s->room.x0, 180.0));

  s->y -= LINE / 2;
  for (guint i = 0; i < lines->len; i++)
    {
      if (s->y - LINE < s->room.y0)
        begin_page (s);
      set_text (s, s->room.x0, FP_ALIGN_LEFT, LETTERS, g_ptr_array_index (lines, i));
      s->y -= LINE;
    }
  s->y -= LINE;
}

static gboolean
set_table (Setting *s, const FpTable *table, GError **error)
{
  if (s->drawing == NULL || s->y - 6 * LINE < s->room.y0)
    begin_page (s);
  if (!lay_columns (s, table, error))
    return FALSE;
  set_heads (s);
  for (guint i = 0; i < table->told->len; i++)
    {
      if (s->y - height_with_next (table, i) < s->room.y0)
        {
          begin_page (s);
          set_heads (s);
        }
      set_told (s, &g_array_index (table->told, FpTold, i));
    }
  set_closing (s, table->closing);
  return TRUE;
}

static GPtrArray *
set_all (Setting s, const FpTable *tables, guint n, GError **error)
{
  s.pages = g_ptr_array_new_with_free_func ((GDestroyNotify) fp_drawing_unref);
  for (guint i = 0; i < n; i++)
    if (!set_table (&s, &tables[i], error))
      {
        g_ptr_array_unref (s.pages);
        return NULL;
      }
  return s.pages;
}

/* Twice: each page says of how many it is. */
GPtrArray *
fp_table_pages (const FpScene *scene, const FpSheetSpec *spec, const char *title, const char *code, const FpTable *tables, guint n,
                GError **error)
{
  Setting s = { .scene = scene, .spec = spec, .title = title, .code = code };
  g_autoptr (GPtrArray) first = set_all (s, tables, n, error);

  if (first == NULL || first->len < 2)
    return g_steal_pointer (&first);
  s.n_pages = first->len;
  return set_all (s, tables, n, error);
}
