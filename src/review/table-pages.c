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
#define GIVEN   22.0 /* a column of words is no narrower than this, or than it needs */

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
  const char        *work, *heading; /* under which the next line comes; NULL: none */
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
gives (const Setting *s, guint column)
{
  return is_set (s->table, column) && (s->table->words & 1u << column) != 0;
}

/* The widest of those that can still give, and by how much more it is wider than the next; FP_N_BILL_COLUMNS where none can. */
static guint
widest_that_gives (const Setting *s, double *over)
{
  guint most = FP_N_BILL_COLUMNS;
  double next = GIVEN;

  for (guint k = 0; k < FP_N_BILL_COLUMNS; k++)
    if (gives (s, k) && s->width[k] > GIVEN && (most == FP_N_BILL_COLUMNS || s->width[k] > s->width[most]))
      most = k;
  for (guint k = 0; k < FP_N_BILL_COLUMNS && most < FP_N_BILL_COLUMNS; k++)
    if (k != most && gives (s, k))
      next = MAX (next, s->width[k]);
  *over = most < FP_N_BILL_COLUMNS ? MAX (s->width[most] - next, 1.0) : 0;
  return most;
}

/* The widest columns of words give first, so that as few lines as may be run on. */
static gboolean
give (Setting *s, double much)
{
  while (much > 0)
    {
      double over;
      const guint k = widest_that_gives (s, &over);

      if (k == FP_N_BILL_COLUMNS)
        return FALSE;
      const double given = MIN (MIN (over, much), s->width[k] - GIVEN);
      s->width[k] -= given;
      much -= given;
    }
  return TRUE;
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
  if (!give (s, all - room))
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

/* A hair over, for what was measured and added up. */
static GPtrArray *
lines_of (const Setting *s, guint column, const char *text)
{
  return fp_lettering_wrap (text, LETTERS, s->width[column] + 0.01);
}

static void
set_cell (Setting *s, guint column, const char *text)
{
  const double y = s->y;

  if ((s->table->words & 1u << column) == 0)
    {
      set_text (s, s->x[column] + s->width[column], FP_ALIGN_RIGHT, LETTERS, text);
      return;
    }
  g_autoptr (GPtrArray) lines = lines_of (s, column, text);
  for (guint i = 0; i < lines->len; i++, s->y -= LINE)
    set_text (s, s->x[column], FP_ALIGN_LEFT, LETTERS, g_ptr_array_index (lines, i));
  s->y = y;
}

static guint
n_lines (const Setting *s, const FpTold *told)
{
  guint most = 1;

  for (guint k = 0; k < FP_N_BILL_COLUMNS; k++)
    if (gives (s, k) && told->cell[k] != NULL)
      {
        g_autoptr (GPtrArray) lines = lines_of (s, k, told->cell[k]);
        most = MAX (most, lines->len);
      }
  return most;
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
height_of (const Setting *s, const FpTold *told)
{
  return told->type == FP_TOLD_WORK ? OVER + HEADS + 2.5 : told->type == FP_TOLD_HEADING ? OVER + LINE : n_lines (s, told) * LINE;
}

/* A title stays with what is under it. */
static double
height_with_next (const Setting *s, guint i)
{
  double height = 0;

  for (; i < s->table->told->len; i++)
    {
      const FpTold *told = &g_array_index (s->table->told, FpTold, i);

      height += height_of (s, told);
      if (told->type >= FP_TOLD_ROW)
        break;
    }
  return height;
}

static void
set_title (Setting *s, FpToldType type, const char *words)
{
  const FpTold told = { .type = type };

  s->y -= OVER;
  set_text (s, s->room.x0, FP_ALIGN_LEFT, type == FP_TOLD_WORK ? HEADS : LETTERS + 0.3, words);
  s->y -= height_of (s, &told) - OVER;
}

/* On a new page in the middle of a heading: what that heading is. */
static void
set_continued (Setting *s, FpToldType next)
{
  g_autofree char *work = s->work != NULL ? g_strdup_printf ("%s, continued", s->work) : NULL;
  g_autofree char *heading = s->heading != NULL ? g_strdup_printf ("%s, continued", s->heading) : NULL;

  if (work != NULL && next != FP_TOLD_WORK)
    set_title (s, FP_TOLD_WORK, work);
  if (heading != NULL && next >= FP_TOLD_ROW)
    set_title (s, FP_TOLD_HEADING, heading);
}

static void
set_told (Setting *s, const FpTold *told)
{
  if (told->type == FP_TOLD_WORK || told->type == FP_TOLD_HEADING)
    {
      s->heading = told->type == FP_TOLD_HEADING ? told->cell[0] : NULL;
      s->work = told->type == FP_TOLD_WORK ? told->cell[0] : s->work;
      set_title (s, told->type, told->cell[0]);
      return;
    }
  if (told->type == FP_TOLD_SUM)
    draw_line_over (s, FP_PEN_HATCH);
  for (guint k = 0; k < FP_N_BILL_COLUMNS; k++)
    if (is_set (s->table, k) && told->cell[k] != NULL && *told->cell[k] != '\0')
      set_cell (s, k, told->cell[k]);
  s->y -= height_of (s, told);
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
  s->work = s->heading = NULL;
  set_heads (s);
  for (guint i = 0; i < table->told->len; i++)
    {
      const FpTold *told = &g_array_index (table->told, FpTold, i);

      if (s->y - height_with_next (s, i) < s->room.y0)
        {
          begin_page (s);
          set_heads (s);
          set_continued (s, told->type);
        }
      set_told (s, told);
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
