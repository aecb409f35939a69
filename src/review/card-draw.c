/* SPDX-License-Identifier: GPL-3.0-or-later */
/* card-draw.c - the card on its page: as large as all of it can be */
#include "card-private.h"

#include "footpace/error.h"

/* Paper mm, on a page as wide as A5; larger pages have all of it larger. */
#define A5_WIDTH 148.0
#define MARGIN   7.5
#define LARGEST  4.4 /* capitals of the text */
#define SMALLEST 1.7
#define STEP     0.1

#define LINE     1.75 /* from line to line, in heights of capitals */
#define SMALL    0.72 /* the reasons, which are never smaller than LEGIBLE */

/* Capitals, mm on any paper: a size of the series of ISO 3098 that is read at arm's length (design judgement). */
#define LEGIBLE  2.5
/* mm: A4 and Letter are as wide, and have room for the reasons. */
#define LARGE    200.0

/* Share of the page for the elevation, the largest first; the last two only where the text cannot be smaller. */
static const double shares[] = { 0.40, 0.36, 0.32, 0.28, 0.24, 0.20 };
#define SHARES_LAST 2

typedef struct
{
  FpDrawing *drawing; /* NULL: only measured                                 */
  double     x0, x1, y; /* y: the top of what comes next                      */
  double     height;
  gboolean   brief;   /* the reasons are left to a larger card              */
} Column;

static void
skip (Column *c, double heights)
{
  c->y -= heights * c->height;
}

/* Wrapped lines from @indent on; the first one's base line is returned. */
static double
put (Column *c, double indent, double height, const char *text)
{
  g_autoptr (GPtrArray) lines = fp_lettering_wrap (text, height, c->x1 - c->x0 - indent);
  const double first = c->y - height;

  for (guint i = 0; i < lines->len; i++)
    if (c->drawing != NULL)
      fp_drawing_text (c->drawing, (FpPoint) { c->x0 + indent, first - i * height * LINE }, height, 0, FP_ALIGN_LEFT,
                       lines->pdata[i]);
  c->y -= lines->len * height * LINE;
  return first;
}

static void
put_heading (Column *c, const char *text)
{
  skip (c, 0.7);
  put (c, 0, c->height * 1.1, text);
  if (c->drawing != NULL)
    fp_drawing_line (c->drawing, FP_PEN_DIMENSION, (FpPoint) { c->x0, c->y + c->height * 0.4 },
                     (FpPoint) { c->x1, c->y + c->height * 0.4 });
  skip (c, 0.25);
}

static void
put_row (Column *c, const char *text, char letter)
{
  const double h = c->height, box = h * 1.3;
  const double base = put (c, h * 4.6, h, text);
  const FpPoint at = { c->x0, base - h * 0.15 };
  const FpPoint tick[] = { at, { at.x + box, at.y }, { at.x + box, at.y + box }, { at.x, at.y + box } };

  skip (c, 0.2);
  if (c->drawing == NULL)
    return;
  fp_drawing_run (c->drawing, FP_PEN_OUTLINE, tick, G_N_ELEMENTS (tick), TRUE);
  if (letter != 0)
    fp_card_draw_letter (c->drawing, (FpPoint) { c->x0 + h * 3.1, base + h / 2 }, h * 0.9, letter);
}

static void
put_rows (Column *c, const FpCard *card)
{
  for (guint i = 0; i < card->rows->len; i++)
    {
      if (fp_card_heading (card, i) != NULL)
        put_heading (c, fp_card_heading (card, i));
      put_row (c, g_array_index (card->rows, FpCardRow, i).text, g_array_index (card->rows, FpCardRow, i).letter);
    }
}

static void
put_steps (Column *c, const FpCard *card)
{
  if (card->steps->len == 0)
    return;
  put_heading (c, FP_CARD_LIGHT);
  for (guint i = 0; i < card->steps->len; i++)
    {
      g_autofree char *number = g_strdup_printf ("%u.", i + 1);
      const double base = put (c, c->height * 2.4, c->height, card->steps->pdata[i]);

      if (c->drawing != NULL)
        fp_drawing_text (c->drawing, (FpPoint) { c->x0, base }, c->height, 0, FP_ALIGN_LEFT, number);
    }
  if (card->putting_out != NULL)
    put (c, c->height * 2.4, c->height, card->putting_out);
}

/* One after the other: nobody reads them in the sacristy. */
static void
put_reasons (Column *c, const FpCard *card)
{
  g_autoptr (GString) all = g_string_new (c->brief && card->reasons->len > 0 ? FP_CARD_BRIEF : "");

  for (guint i = 0; !c->brief && i < card->reasons->len; i++)
    g_string_append_printf (all, "%s%s", i > 0 ? " " : "", (const char *) card->reasons->pdata[i]);
  if (all->len > 0)
    put (c, 0, MAX (c->height * SMALL, LEGIBLE), all->str);
}

static void
put_words (Column *c, const FpCard *card)
{
  put_rows (c, card);
  put_steps (c, card);
  put_heading (c, FP_CARD_CARE);
  for (guint i = 0; i < card->cautions->len; i++)
    put (c, 0, c->height, card->cautions->pdata[i]);
  skip (c, 0.5);
  put_reasons (c, card);
}

/* --- the page --------------------------------------------------------------------- */

typedef struct { FpBox inner, elevation; double top, height; gboolean brief; } Page;

static double
put_title (FpDrawing *drawing, const FpBox *inner, double unit, const FpCard *card, const char *date)
{
  const double tall = 5.0 * unit, small = 2.3 * unit;
  const double wide = fp_lettering_width (card->colour, tall * 0.62), room = inner->x1 - inner->x0 - wide - 4 * unit;
  /* A long title is lettered smaller before it is cut off. */
  const double lettering = CLAMP (tall * room / fp_lettering_width (card->title, tall), tall * 0.62, tall);
  g_autofree char *title = fp_lettering_shorten (card->title, lettering, room + 0.01);
  g_autofree char *dated = date != NULL ? g_strdup_printf ("%s, %s", card->of, date) : g_strdup (card->of);
  g_autofree char *of = fp_lettering_shorten (dated, small, inner->x1 - inner->x0);

  if (drawing != NULL)
    {
      fp_drawing_text (drawing, (FpPoint) { inner->x0, inner->y1 - tall }, lettering, 0, FP_ALIGN_LEFT, title);
      fp_drawing_text (drawing, (FpPoint) { inner->x1, inner->y1 - tall }, tall * 0.62, 0, FP_ALIGN_RIGHT, card->colour);
      fp_drawing_text (drawing, (FpPoint) { inner->x0, inner->y1 - tall - 2.2 * small }, small, 0, FP_ALIGN_LEFT, of);
    }
  return inner->y1 - tall - 2.9 * small;
}

/* Whether all words stand on the page with the elevation of that share and text of that height. */
static gboolean
try_page (const FpCard *card, Page *page, double share, double height)
{
  Column c = { NULL, page->inner.x0, page->inner.x1, 0, height, page->brief };

  page->elevation = (FpBox) { page->inner.x0, page->top - share * (page->inner.y1 - page->inner.y0), page->inner.x1, page->top };
  page->height = height;
  c.y = page->elevation.y0;
  put_words (&c, card);
  return c.y >= page->inner.y0;
}

/* The largest text that stands on the page with the elevation of that share, for larger text takes more room; in steps
 * below LARGEST, and more than all of them where not even the smallest does. */
static guint
steps_below_largest (const FpCard *card, Page *page, double share, double unit)
{
  guint low = 0, high = (guint) ((LARGEST - SMALLEST) / STEP + 1.5);

  while (low < high)
    {
      const guint middle = (low + high) / 2;

      if (try_page (card, page, share, (LARGEST - middle * STEP) * unit))
        high = middle;
      else
        low = middle + 1;
    }
  return low;
}

/* The largest text first, since a sacristy is dim; the elevation gives way to it down to a reading size. */
static void
fit_page (const FpCard *card, Page *page, double unit)
{
  static const double aims[] = { 2.7, 2.45, 2.3, 2.2, 2.1, 2.0, 1.85, SMALLEST };
  const guint n = G_N_ELEMENTS (shares), last = G_N_ELEMENTS (aims) - 1;
  double height[G_N_ELEMENTS (shares)];

  for (guint i = 0; i < n; i++)
    height[i] = LARGEST - steps_below_largest (card, page, shares[i], unit) * STEP;
  for (guint aim = 0; aim <= last; aim++)
    for (guint i = 0; i < (aim < last ? n - (page->brief ? 1 : SHARES_LAST) : n); i++)
      if (height[i] >= aims[aim] - STEP / 2)
        {
          try_page (card, page, shares[i], height[i] * unit);
          return;
        }
  try_page (card, page, shares[n - 1], SMALLEST * unit);
}

static FpDrawing *
draw (FpCard *self, const FpCardSpec *spec)
{
  const double unit = spec->width / A5_WIDTH, margin = MARGIN * unit;
  FpDrawing *drawing = fp_drawing_new (spec->width, spec->height);
  Page page = { .inner = { margin, margin, spec->width - margin, spec->height - margin } };
  Column c;

  fp_drawing_set_ink (drawing, spec->ink);
  page.top = put_title (drawing, &page.inner, unit, self, spec->date);
  fit_page (self, &page, unit);
  if (page.height < LEGIBLE && spec->width < LARGE)
    {
      page.brief = TRUE;
      fit_page (self, &page, unit);
    }
  fp_card_draw_elevation (self, drawing, &page.elevation);
  c = (Column) { drawing, page.inner.x0, page.inner.x1, page.elevation.y0, page.height, page.brief };
  put_words (&c, self);
  return drawing;
}

FpDrawing *
fp_card_draw (FpCard *self, const FpCardSpec *spec)
{
  return draw (self, spec);
}

GPtrArray *
fp_cards_draw (const FpScene *whole, guint celebrations, const FpCardSpec *spec, GError **error)
{
  const guint wanted = celebrations != 0 ? celebrations : fp_project_brief (fp_scene_project (whole))->celebrations;
  const gboolean has_altar = fp_scene_celebrated_altar (whole) >= 0;
  GPtrArray *pages;

  if (wanted == 0 || !has_altar)
    {
      g_set_error_literal (error, FP_ERROR, FP_ERROR_INVALID,
                           has_altar ? "the brief names no celebration for which a card could be"
                                     : "there is no altar in this alternative");
      return NULL;
    }
  pages = g_ptr_array_new_with_free_func ((GDestroyNotify) fp_drawing_unref);
  for (guint i = 0; i < FP_N_CELEBRATIONS; i++)
    if ((wanted & 1u << i) != 0)
      {
        g_autoptr (FpCard) card = fp_card_new (whole, (FpCelebration) (1u << i), &spec->order);

        g_ptr_array_add (pages, fp_card_draw (card, spec));
      }
  return pages;
}
