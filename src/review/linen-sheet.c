/* SPDX-License-Identifier: GPL-3.0-or-later */
/* linen-sheet.c - the bolt with all pieces on it, and beside it the sizes of each
 *
 * The bolt lies along the sheet.  Where it is longer than the sheet at a scale
 * at which pieces can be told apart, smaller scales are tried.
 */
#include "linen-private.h"

#include "span.h"

#include "footpace/error.h"

#include <math.h>

/* Paper mm; design judgement. */
#define LETTERS   2.5
#define LINE      4.4
#define ABOVE     12.0 /* over the bolt: its length           */
#define ASIDE     14.0 /* beside it: its width                */
#define GAP       6.0
#define PAD       1.2

#define TITLE "Linen: the cutting of it"
#define CODE  "linen"

/* --- room ------------------------------------------------------------------------------ */

static double
words_height (const FpLinenPlan *self)
{
  return (self->pieces->len + 6) * LINE;
}

static gboolean
fits (const FpLinenPlan *self, const FpBox *room, double scale)
{
  return ASIDE + self->layout->length / scale <= room->x1 - room->x0
         && ABOVE + self->spec.bolt / scale + GAP + words_height (self) <= room->y1 - room->y0;
}

static double
choose_scale (const FpLinenPlan *self, const FpBox *room, double asked, GError **error)
{
  guint n;
  const double *scale = fp_sheet_scales (&n);

  if (asked > 0 && fits (self, room, asked))
    return asked;
  for (guint i = 0; i < n; i++)
    if (fits (self, room, scale[i]))
      {
        if (!(asked > 0))
          return scale[i];
        g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "the bolt does not fit this paper at 1:%g; the largest scale that fits is "
                     "1:%g", asked, scale[i]);
        return 0;
      }
  g_set_error_literal (error, FP_ERROR, FP_ERROR_RANGE, "the bolt fits this paper at no scale; choose larger paper");
  return 0;
}

/* --- drawn ------------------------------------------------------------------------------ */

typedef struct
{
  const FpLinenPlan *plan;
  FpDrawing         *drawing;
  FpPoint            origin; /* of the bolt: its begin, at the lower selvedge; paper mm */
  double             scale;
} Bolt;

static FpPoint
at (const Bolt *b, double along, double across)
{
  return (FpPoint) { b->origin.x + along / b->scale, b->origin.y + across / b->scale };
}

static void
draw_box (const Bolt *b, FpPen pen, FpFill fill, double along, double across, double length, double width)
{
  const FpPoint corner[4] = {
    at (b, along, across), at (b, along + length, across), at (b, along + length, across + width), at (b, along, across + width),
  };

  fp_drawing_area (b->drawing, pen, fill, 0, corner, 4);
}

/* What finds room in it: name and size, the name alone, or the number under which it stands in the list. */
static void
name_piece (const Bolt *b, guint i)
{
  const FpBoltPlace *place = &b->plan->layout->place[i];
  const double width = place->along / b->scale - 2 * PAD, height = place->across / b->scale - 2 * PAD;
  g_autofree char *name = fp_linen_piece_name (b->plan, i), *size = fp_linen_size_text (b->plan, place->along, place->across);
  g_autofree char *numbered = g_strdup_printf ("%u  %s", i + 1, name), *number = g_strdup_printf ("%u", i + 1);
  const FpPoint p = at (b, place->y, place->x + place->across);
  const char *first = fp_lettering_width (numbered, LETTERS) <= width ? numbered : number;

  if (height < LETTERS || fp_lettering_width (number, LETTERS) > width)
    return;
  fp_drawing_text (b->drawing, (FpPoint) { p.x + PAD, p.y - PAD - LETTERS }, LETTERS, 0, FP_ALIGN_LEFT, first);
  if (height >= LINE + LETTERS && fp_lettering_width (size, LETTERS) <= width)
    fp_drawing_text (b->drawing, (FpPoint) { p.x + PAD, p.y - PAD - LETTERS - LINE }, LETTERS, 0, FP_ALIGN_LEFT, size);
}

static void
draw_measures (const Bolt *b)
{
  const FpLinenPlan *plan = b->plan;
  const FpUnits units = fp_project_brief (fp_scene_project (plan->scene))->units;
  g_autofree char *length = fp_length_format (ceil (plan->layout->length), units), *width = fp_length_format (plan->spec.bolt, units);
  const FpPoint near = at (b, 0, 0), far = at (b, plan->layout->length, plan->spec.bolt);

  fp_draw_span (b->drawing, (FpPoint) { near.x, far.y + 4 }, (FpPoint) { far.x, far.y + 4 }, LETTERS, length);
  fp_draw_span (b->drawing, (FpPoint) { near.x - 5, near.y }, (FpPoint) { near.x - 5, far.y }, LETTERS, width);
}

static void
draw_bolt (const Bolt *b)
{
  const FpLinenPlan *plan = b->plan;

  fp_drawing_set_item (b->drawing, NULL, FP_STANDING_EXISTING, -1);
  draw_box (b, FP_PEN_OUTLINE, FP_FILL_NONE, 0, 0, plan->layout->length, plan->spec.bolt);
  for (guint i = 0; i < plan->pieces->len; i++)
    {
      const FpBoltPlace *place = &plan->layout->place[i];

      draw_box (b, FP_PEN_EDGE, FP_FILL_PAPER, place->y, place->x, place->along, place->across);
      name_piece (b, i);
    }
  draw_measures (b);
}

/* --- the list ------------------------------------------------------------------------------ */

static double
add_line (FpDrawing *drawing, double x, double y, const char *text)
{
  fp_drawing_text (drawing, (FpPoint) { x, y - LETTERS }, LETTERS, 0, FP_ALIGN_LEFT, text);
  return y - LINE;
}

static void
draw_row (const FpLinenPlan *self, FpDrawing *drawing, const double *column, double y, guint i)
{
  guint copy;
  const FpCloth *cloth = fp_linen_cloth_of (self, i, &copy);
  const FpUnits units = fp_project_brief (fp_scene_project (self->scene))->units;
  const FpBoltPlace *place = &self->layout->place[i];
  g_autofree char *name = fp_linen_piece_name (self, i), *numbered = g_strdup_printf ("%u  %s", i + 1, name);
  g_autofree char *cut = fp_linen_size_text (self, place->along, place->across);
  g_autofree char *finished = fp_linen_size_text (self, cloth->length, cloth->width);
  g_autofree char *ends = fp_length_format (round (cloth->hems.ends), units);
  g_autofree char *sides = fp_length_format (round (cloth->hems.sides), units);
  g_autofree char *turned_in = fp_length_format (round (cloth->hems.turned_in), units);
  g_autofree char *hems = g_strdup_printf ("%s at the ends, %s at the sides, %s turned in", ends, sides, turned_in);
  const char *const text[] = { numbered, cut, finished, hems };

  for (guint k = 0; k < G_N_ELEMENTS (text); k++)
    add_line (drawing, column[k], y, text[k]);
}

static void
draw_list (const FpLinenPlan *self, FpDrawing *drawing, const FpBox *room, double y)
{
  static const char *const heads[] = { "Piece", "Cut, along × across", "Finished, length × width", "Hems" };
  const double wide = room->x1 - room->x0;
  const double column[] = { room->x0, room->x0 + 0.30 * wide, room->x0 + 0.48 * wide, room->x0 + 0.68 * wide };
  g_autofree char *warp = fp_number_format (self->spec.shrinkage.warp * 100.0);
  g_autofree char *weft = fp_number_format (self->spec.shrinkage.weft * 100.0);
  g_autofree char *shrinks = g_strdup_printf ("The warp runs along the bolt. Shrinkage %s %% along, %s %% across. %s %s", warp, weft,
                                              self->layout->least ? "No layout takes less of it." : "", FP_LINEN_CAUTION);
  g_autoptr (GPtrArray) lines = fp_lettering_wrap (shrinks, LETTERS, wide);

  for (guint k = 0; k < G_N_ELEMENTS (heads); k++)
    add_line (drawing, column[k], y, heads[k]);
  y -= LINE;
  for (guint i = 0; i < self->pieces->len; i++, y -= LINE)
    draw_row (self, drawing, column, y, i);
  y -= LINE / 2;
  for (guint i = 0; i < lines->len; i++)
    y = add_line (drawing, room->x0, y, g_ptr_array_index (lines, i));
}

FpDrawing *
fp_linen_plan_sheet (const FpLinenPlan *self, const FpSheetSpec *spec, double *scale, GError **error)
{
  FpSheetSpec bare = *spec;
  Bolt bolt = { .plan = self };
  FpBox room;

  bare.findings = NULL;
  fp_drawing_unref (fp_sheet_blank_of (self->scene, &bare, TITLE, CODE, 1, &room));
  bolt.scale = choose_scale (self, &room, spec->scale, error);
  if (!(bolt.scale > 0))
    return NULL;
  bolt.drawing = fp_sheet_blank_of (self->scene, &bare, TITLE, CODE, bolt.scale, &room);
  bolt.origin = (FpPoint) { room.x0 + ASIDE, room.y1 - ABOVE - self->spec.bolt / bolt.scale };
  draw_bolt (&bolt);
  draw_list (self, bolt.drawing, &room, bolt.origin.y - GAP);
  if (scale != NULL)
    *scale = bolt.scale;
  return bolt.drawing;
}

FpDrawing *
fp_linen_sheet_of (const FpScene *scene, const FpSheetSpec *spec, double *scale, GError **error)
{
  const FpWorks *works = fp_project_works (fp_scene_project (scene));
  const FpLinenSpec linen = { works->bolt, { works->warp, works->weft } };
  g_autoptr (FpLinenPlan) plan = NULL;

  if (!(works->bolt > 0))
    {
      g_set_error_literal (error, FP_ERROR, FP_ERROR_RANGE, "how wide the bolt of linen is has not been said: type it under "
                           "Schedules, Reckoned By");
      return NULL;
    }
  plan = fp_linen_plan_new (scene, &linen, error);
  return plan != NULL ? fp_linen_plan_sheet (plan, spec, scale, error) : NULL;
}
