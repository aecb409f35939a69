/* SPDX-License-Identifier: GPL-3.0-or-later */
/* linen-drawing.c - the bolt with all pieces on it
 *
 * The bolt lies along the sheet, its begin on the left.  Where a cut across it
 * meets no piece it may be parted, and goes on in the next row, so that it is
 * drawn larger than in one.
 */
#include "linen-private.h"

#include "span.h"

#include <math.h>

/* Paper mm; design judgement. */
#define LETTERS 2.5
#define SMALL   1.8
#define LINE    4.2
#define ABOVE   7.0  /* over each row: how far along the bolt it is */
#define ASIDE   9.0  /* beside it: the width of the bolt            */
#define BETWEEN 3.0
#define TICK    1.2
#define PAD     1.2
#define ARROW   8.0  /* which way the warp runs                     */

#define HAIR 1e-3

static const double SCALES[] = { 2, 5, 10, 15, 20, 25, 30, 40, 50, 75, 100, 150, 200, 300, 500 };

/* --- rows ------------------------------------------------------------------------------ */

static int
by_size (gconstpointer a, gconstpointer b)
{
  const double p = *(const double *) a, q = *(const double *) b;

  return (p > q) - (p < q);
}

static gboolean
cuts_a_piece (const FpLinenPlan *plan, double along)
{
  for (guint i = 0; i < plan->pieces->len; i++)
    {
      const FpBoltPlace *p = &plan->layout->place[i];
      if (p->y < along - HAIR && p->y + p->along > along + HAIR)
        return TRUE;
    }
  return FALSE;
}

/* The begin, each place at which a cut across meets no piece, and the end. */
static GArray *
cuts_of (const FpLinenPlan *plan)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (double));
  const double begin = 0;

  g_array_append_val (out, begin);
  for (guint i = 0; i < plan->pieces->len; i++)
    {
      const double end = plan->layout->place[i].y + plan->layout->place[i].along;
      if (!cuts_a_piece (plan, end))
        g_array_append_val (out, end);
    }
  g_array_sort (out, by_size);
  for (guint i = out->len - 1; i > 0; i--)
    if (g_array_index (out, double, i) - g_array_index (out, double, i - 1) < HAIR)
      g_array_remove_index (out, i);
  return out;
}

/* FALSE where a piece between two cuts is longer than a row. */
static gboolean
part (const GArray *cuts, double longest, GArray *row)
{
  double begin = 0;

  g_array_set_size (row, 0);
  g_array_append_val (row, begin);
  for (guint i = 1; i < cuts->len; i++)
    {
      const double before = g_array_index (cuts, double, i - 1), end = g_array_index (cuts, double, i);

      if (end - before > longest)
        return FALSE;
      if (end - begin > longest)
        {
          g_array_append_val (row, before);
          begin = before;
        }
    }
  g_array_append_val (row, g_array_index (cuts, double, cuts->len - 1));
  return TRUE;
}

static double
row_height (const FpLinenPlan *plan, double scale)
{
  return ABOVE + plan->spec.bolt / scale + BETWEEN;
}

static gboolean
fits (const FpLinenPlan *plan, const GArray *cuts, double width, double height, double scale)
{
  g_autoptr (GArray) row = g_array_new (FALSE, FALSE, sizeof (double));

  return part (cuts, (width - ASIDE) * scale, row) && (row->len - 1) * row_height (plan, scale) <= height;
}

double
fp_bolt_rows_scale (const FpLinenPlan *plan, double width, double height, double asked)
{
  g_autoptr (GArray) cuts = cuts_of (plan);

  if (asked > 0)
    return fits (plan, cuts, width, height, asked) ? asked : 0;
  for (guint i = 0; i < G_N_ELEMENTS (SCALES); i++)
    if (fits (plan, cuts, width, height, SCALES[i]))
      return SCALES[i];
  return 0;
}

void
fp_bolt_rows_init (FpBoltRows *self, const FpLinenPlan *plan, double width, double scale)
{
  g_autoptr (GArray) cuts = cuts_of (plan);

  *self = (FpBoltRows) { plan, g_array_new (FALSE, FALSE, sizeof (double)), scale };
  part (cuts, (width - ASIDE) * scale, self->row);
}

void
fp_bolt_rows_clear (FpBoltRows *self)
{
  g_clear_pointer (&self->row, g_array_unref);
}

double
fp_bolt_rows_height (const FpBoltRows *self)
{
  return (self->row->len - 1) * row_height (self->plan, self->scale);
}

/* --- a piece ------------------------------------------------------------------------------ */

/* A row of the bolt: where on the paper its begin is, at the lower selvedge. */
typedef struct
{
  const FpLinenPlan *plan;
  FpDrawing         *drawing;
  FpPoint            origin;
  double             begin, end, scale; /* along the bolt */
} Row;

static FpPoint
at (const Row *row, double along, double across)
{
  return (FpPoint) { row->origin.x + (along - row->begin) / row->scale, row->origin.y + across / row->scale };
}

static void
draw_box (const Row *row, FpPen pen, FpFill fill, double along, double across, double length, double width)
{
  const FpPoint corner[4] = {
    at (row, along, across), at (row, along + length, across), at (row, along + length, across + width), at (row, along, across + width),
  };

  if (fill != FP_FILL_NONE)
    fp_drawing_area (row->drawing, pen, fill, 0, corner, 4);
  else
    fp_drawing_run (row->drawing, pen, corner, 4, TRUE);
}

/* A piece as it was cut: finished measures, from its Gospel end and its front edge, and where they lie on the bolt. */
typedef struct
{
  const Row         *row;
  const FpBoltPlace *place;
  const FpCloth     *cloth;
  double             by_length, by_width;  /* of cut to finished: what the cloth loses, along its own length and width */
  double             ends, sides;          /* hem and what is turned in                                                */
} Piece;

static FpPoint
on_piece (const Piece *p, double length, double width)
{
  const double l = (length + p->ends) * p->by_length, w = (width + p->sides) * p->by_width;

  return p->place->turned ? at (p->row, p->place->y + w, p->place->x + l) : at (p->row, p->place->y + l, p->place->x + w);
}

static void
draw_on (const Piece *p, FpPen pen, double l0, double w0, double l1, double w1)
{
  fp_drawing_line (p->row->drawing, pen, on_piece (p, l0, w0), on_piece (p, l1, w1));
}

/* Where it goes over the edges of the mensa, and where it is folded. */
static void
draw_folds (const Piece *p)
{
  const FpCloth *c = p->cloth;

  for (guint i = 0; i < 2 && c->falls > 0; i++)
    {
      const double l = i == 0 ? c->falls : c->length - c->falls;
      draw_on (p, FP_PEN_AXIS, l, 0, l, c->width);
    }
  if (c->front > 0)
    draw_on (p, FP_PEN_AXIS, 0, c->front, c->length, c->front);
  for (guint i = 1; i < c->fold_along; i++)
    draw_on (p, FP_PEN_AXIS, c->length * i / c->fold_along, 0, c->length * i / c->fold_along, c->width);
  for (guint i = 1; i < c->fold_across; i++)
    draw_on (p, FP_PEN_AXIS, 0, c->width * i / c->fold_across, c->length, c->width * i / c->fold_across);
}

/* Within its mark, so that a hem is left. */
static void
draw_notch (const Piece *p)
{
  const FpBox *n = &p->cloth->notch;
  const gboolean back = n->y1 >= p->cloth->width - 1;
  const double y0 = back ? n->y0 + p->sides : -p->sides, y1 = back ? p->cloth->width + p->sides : n->y1 - p->sides;
  const FpPoint corner[4] = { on_piece (p, n->x0 + p->sides, y0), on_piece (p, n->x0 + p->sides, y1),
                              on_piece (p, n->x1 - p->sides, y1), on_piece (p, n->x1 - p->sides, y0) };

  if (!fp_box_is_empty (n))
    fp_drawing_run (p->row->drawing, FP_PEN_HIDDEN, corner, 4, TRUE);
}

static void
draw_hem (const Piece *p)
{
  const FpPoint corner[4] = { on_piece (p, 0, 0), on_piece (p, p->cloth->length, 0), on_piece (p, p->cloth->length, p->cloth->width),
                              on_piece (p, 0, p->cloth->width) };

  fp_drawing_run (p->row->drawing, FP_PEN_GUIDE, corner, 4, TRUE);
}

/* --- its words ---------------------------------------------------------------------------- */

static void
draw_arrow (FpDrawing *drawing, FpPoint middle)
{
  const FpPoint a = { middle.x - ARROW / 2, middle.y }, b = { middle.x + ARROW / 2, middle.y };

  fp_drawing_line (drawing, FP_PEN_DIMENSION, a, b);
  for (int way = -1; way <= 1; way += 2)
    {
      fp_drawing_line (drawing, FP_PEN_DIMENSION, a, (FpPoint) { a.x + TICK, a.y + way * TICK / 2 });
      fp_drawing_line (drawing, FP_PEN_DIMENSION, b, (FpPoint) { b.x - TICK, b.y + way * TICK / 2 });
    }
}

/* How deep the hem is at the lower side and at the left end, as it lies, where there is room within. */
static void
name_hems (const Piece *p, const FpBox *box)
{
  const FpCloth *c = p->cloth;
  const FpUnits units = fp_linen_units (p->row->plan);
  const double below = p->place->turned ? c->hems.ends : c->hems.sides, left = p->place->turned ? c->hems.sides : c->hems.ends;
  g_autofree char *side = fp_length_format (round (below), units), *end = fp_length_format (round (left), units);
  g_autofree char *side_text = g_strdup_printf ("hem %s", side), *end_text = g_strdup_printf ("hem %s", end);
  const FpPoint inner = on_piece (p, 0, 0);

  if (box->y1 - box->y0 < 14 || box->x1 - box->x0 < 60)
    return;
  fp_drawing_text (p->row->drawing, (FpPoint) { box->x1 - 8, inner.y + 0.7 }, SMALL, 0, FP_ALIGN_RIGHT, side_text);
  fp_drawing_text (p->row->drawing, (FpPoint) { inner.x + 0.7 + SMALL, box->y0 + (inner.y - box->y0) + 1.5 }, SMALL, 90, FP_ALIGN_LEFT,
                   end_text);
}

/* Below what is cut out at the back. */
static double
middle_of (const Piece *p, const FpBox *box)
{
  const FpBox *n = &p->cloth->notch;
  const double top = !fp_box_is_empty (n) && !p->place->turned && n->y1 >= p->cloth->width - 1 ? on_piece (p, 0, n->y0 - p->sides).y - LINE
                                                                                             : box->y1;

  return top - box->y0 > 2.4 * LINE ? (box->y0 + top) / 2 : (box->y0 + box->y1) / 2;
}

/* On a patch of paper, for folds run beneath it: so far beside it that none reads as a minus, and within the piece. */
static void
set_over (FpDrawing *drawing, FpPoint middle, double letters, double room, const char *text)
{
  const double own = fp_lettering_width (text, letters) / 2, half = MAX (own + 0.6, MIN (own + 3, room / 2));
  const double low = middle.y - 0.8, high = middle.y + letters + 0.8;
  const FpPoint corner[4] = { { middle.x - half, low }, { middle.x + half, low }, { middle.x + half, high }, { middle.x - half, high } };

  fp_drawing_area (drawing, FP_PEN_HATCH, FP_FILL_PAPER, 0, corner, 4);
  fp_drawing_text (drawing, middle, letters, 0, FP_ALIGN_MIDDLE, text);
}

/* As much as finds room in it: name and size with an arrow along the warp, name and size, the letter alone. */
static void
name_piece (const Piece *p, guint i, const FpBox *box)
{
  const FpLinenPlan *plan = p->row->plan;
  const double width = box->x1 - box->x0 - 2 * PAD, height = box->y1 - box->y0;
  const FpPoint middle = { (box->x0 + box->x1) / 2, middle_of (p, box) };
  g_autofree char *letter = fp_linen_piece_letter (plan, i), *name = fp_linen_piece_name (plan, i);
  g_autofree char *size = fp_linen_size_text (plan, p->place->along, p->place->across);
  g_autofree char *whole = g_strdup_printf ("%s  %s", letter, name), *kind = g_strdup_printf ("%s  %s", letter, p->cloth->label);
  const char *first = fp_lettering_width (whole, LETTERS) <= width ? whole : fp_lettering_width (kind, LETTERS) <= width ? kind : letter;
  const gboolean sized = height >= 2 * LINE + PAD && fp_lettering_width (size, LETTERS) <= width;
  const double letters = fp_lettering_width (first, LETTERS) <= width && height >= LETTERS + PAD ? LETTERS : SMALL;

  set_over (p->row->drawing, (FpPoint) { middle.x, middle.y + (sized ? PAD : -letters / 2) }, letters, width, first);
  if (sized)
    set_over (p->row->drawing, (FpPoint) { middle.x, middle.y - LETTERS - PAD }, LETTERS, width, size);
  if (sized && middle.y - 2 * LINE > box->y0 + LINE && width >= 2 * ARROW)
    draw_arrow (p->row->drawing, (FpPoint) { middle.x, middle.y - 2 * LINE });
}

static void
draw_piece (const Row *row, guint i)
{
  const FpLinenPlan *plan = row->plan;
  const FpBoltPlace *place = &plan->layout->place[i];
  const FpLinenPart *of = fp_linen_part (plan, i);
  const FpCloth *cloth = fp_linen_cloth (plan, of->cloth);
  const double warp = 1 / (1 - plan->spec.shrinkage.warp), weft = 1 / (1 - plan->spec.shrinkage.weft);
  const Piece piece = {
    row, place, cloth, place->turned ? weft : warp, place->turned ? warp : weft, cloth->hems.ends + cloth->hems.turned_in,
    cloth->hems.sides + cloth->hems.turned_in,
  };
  const FpPoint low = at (row, place->y, place->x), high = at (row, place->y + place->along, place->x + place->across);
  const FpBox box = { low.x, low.y, high.x, high.y };

  draw_box (row, FP_PEN_EDGE, FP_FILL_PAPER, place->y, place->x, place->along, place->across);
  if (of->widths == 1)
    {
      draw_hem (&piece);
      draw_folds (&piece);
      draw_notch (&piece);
      name_hems (&piece, &box);
    }
  name_piece (&piece, i, &box);
}

/* --- a row ---------------------------------------------------------------------------------- */

/* How far from the begin of the bolt a cut across is; @x, @align: of the figure. */
static void
draw_station (const Row *row, double along, double x, FpAlign align, const char *figure)
{
  const FpPoint p = at (row, along, row->plan->spec.bolt);

  fp_drawing_line (row->drawing, FP_PEN_DIMENSION, (FpPoint) { p.x, p.y + 0.5 }, (FpPoint) { p.x, p.y + 3.0 });
  fp_drawing_line (row->drawing, FP_PEN_DIMENSION, (FpPoint) { p.x - TICK, p.y + 2 - TICK }, (FpPoint) { p.x + TICK, p.y + 2 + TICK });
  fp_drawing_text (row->drawing, (FpPoint) { x, p.y + 3.6 }, LETTERS, 0, align, figure);
}

/* The second follows the first where the row is too short for both over it. */
static void
draw_stations (const Row *row)
{
  const FpUnits units = fp_linen_units (row->plan);
  const FpPoint near = at (row, row->begin, row->plan->spec.bolt), far = at (row, row->end, row->plan->spec.bolt);
  g_autofree char *first = fp_length_format (round (row->begin), units), *second = fp_length_format (round (row->end), units);
  const double taken = near.x + fp_lettering_width (first, LETTERS) + 2 * PAD;
  const gboolean over = far.x - fp_lettering_width (second, LETTERS) >= taken;

  fp_drawing_line (row->drawing, FP_PEN_DIMENSION, (FpPoint) { near.x, near.y + 2 }, (FpPoint) { far.x, far.y + 2 });
  draw_station (row, row->begin, near.x, FP_ALIGN_LEFT, first);
  draw_station (row, row->end, over ? far.x : MAX (taken, far.x), over ? FP_ALIGN_RIGHT : FP_ALIGN_LEFT, second);
}

static void
draw_width (const Row *row)
{
  const FpPoint low = at (row, row->begin, 0), high = at (row, row->begin, row->plan->spec.bolt);
  g_autofree char *figure = fp_length_format (row->plan->spec.bolt, fp_linen_units (row->plan));

  fp_draw_span (row->drawing, (FpPoint) { low.x - 3, low.y }, (FpPoint) { low.x - 3, high.y }, LETTERS, figure);
}

static void
draw_row (const Row *row)
{
  const FpLinenPlan *plan = row->plan;

  draw_box (row, FP_PEN_OUTLINE, FP_FILL_NONE, row->begin, 0, row->end - row->begin, plan->spec.bolt);
  for (guint i = 0; i < plan->pieces->len; i++)
    {
      const FpBoltPlace *place = &plan->layout->place[i];
      if (place->y > row->begin - HAIR && place->y + place->along < row->end + HAIR)
        draw_piece (row, i);
    }
  draw_stations (row);
  draw_width (row);
}

void
fp_bolt_rows_draw (const FpBoltRows *self, FpDrawing *drawing, double left, double top)
{
  const double height = row_height (self->plan, self->scale);
  const guint n = self->row->len - 1;

  fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, -1);
  for (guint i = 0; i < n; i++)
    {
      const Row row = {
        self->plan, drawing, { left + ASIDE, top - i * height - ABOVE - self->plan->spec.bolt / self->scale },
        g_array_index (self->row, double, i), g_array_index (self->row, double, i + 1), self->scale,
      };
      draw_row (&row);
    }
}
