/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pew-room.h"

#include <math.h>

/* All in paper mm; design judgement. */
#define WIDEST   170.0
#define LEAST    45.0
#define SMALLER  0.9
#define STEP     5.0
#define APART    3.0
#define EDGE     4.0
#define LINE     (13.0 / 3)
#define NARROW   100.0 /* under which a picture is narrow, and very narrow */
#define SLENDER  70.0

GArray *
fp_pew_room_covered (void)
{
  return g_array_new (FALSE, FALSE, sizeof (FpBox));
}

/* --- what is covered ------------------------------------------------------------- */

static FpBox
box_of_text (const FpMark *mark)
{
  const double width = fp_lettering_width (mark->text, mark->height), up = mark->height;
  const double x0 = mark->align == FP_ALIGN_RIGHT ? -width : mark->align == FP_ALIGN_MIDDLE ? -width / 2 : 0;
  const FpPlace turn = { mark->at.x, mark->at.y, mark->turn };
  const FpPoint corner[4] = { { x0, -up / 2 }, { x0 + width, -up / 2 }, { x0 + width, 1.5 * up }, { x0, 1.5 * up } };
  FpBox box = FP_BOX_EMPTY;

  for (guint i = 0; i < G_N_ELEMENTS (corner); i++)
    fp_box_add_point (&box, fp_place_point (&turn, corner[i]));
  return box;
}

static FpBox
box_of (const FpMark *mark, const FpPoint *points)
{
  switch (mark->type)
    {
    case FP_MARK_TEXT:
      return box_of_text (mark);
    case FP_MARK_CIRCLE:
      return (FpBox) { mark->at.x - mark->radius, mark->at.y - mark->radius, mark->at.x + mark->radius, mark->at.y + mark->radius };
    case FP_MARK_LINE:
    case FP_MARK_AREA:
    case FP_MARK_PICTURE:
      break;
    }
  return fp_outline_box (points + mark->first, mark->n);
}

static FpBox
shown_at (const FpBox *box, FpPoint corner, double grown)
{
  return (FpBox) { corner.x + box->x0 * grown, corner.y + box->y0 * grown, corner.x + box->x1 * grown,
                   corner.y + box->y1 * grown };
}

/* A line is no area: it is covered all the same. */
static gboolean
touches (const FpBox *a, const FpBox *b)
{
  return a->x0 <= b->x1 && a->x1 >= b->x0 && a->y0 <= b->y1 && a->y1 >= b->y0;
}

void
fp_pew_room_cover (GArray *covered, const FpDrawing *drawing, FpPoint corner, double grown, const FpBox *quarter)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    {
      if (mark[i].pen == FP_PEN_GUIDE && mark[i].type == FP_MARK_LINE)
        continue;
      const FpBox own = box_of (&mark[i], fp_drawing_points (drawing)), box = shown_at (&own, corner, grown);
      if (touches (&box, quarter))
        g_array_append_val (covered, box);
    }
}

guint
fp_pew_room_lines (double width)
{
  return width < SLENDER ? 7 : width < NARROW ? 5 : 3;
}

double
fp_pew_room_words (double width)
{
  return fp_pew_room_lines (width) * LINE;
}

/* --- room ---------------------------------------------------------------------------- */

FpBox
fp_pew_room_quarter (const FpBoardLayout *layout, const FpBox *seen)
{
  const FpBox *plan = &layout->frame[FP_VIEW_PLAN], *section = &layout->frame[FP_VIEW_SECTION];

  if (layout->alone || fp_box_is_empty (plan) || fp_box_is_empty (section))
    return FP_BOX_EMPTY;
  return (FpBox) { MAX (plan->x1, seen->x0 + EDGE), MAX (plan->y0, seen->y0 + EDGE), MIN (section->x1, seen->x1 - EDGE),
                   MIN (section->y0, seen->y1 - EDGE) };
}

static gboolean
is_free (const FpBoardLayout *layout, const FpBox *room, const GArray *covered)
{
  const FpBox about = { room->x0 - APART, room->y0 - APART, room->x1 + APART, room->y1 + APART };

  if (fp_box_is_crossed (&about, layout->mitre_a, layout->mitre_b))
    return FALSE;
  for (guint i = 0; i < covered->len; i++)
    if (touches (&about, &g_array_index (covered, FpBox, i)))
      return FALSE;
  return TRUE;
}

static gboolean
find_place (const FpBoardLayout *layout, const FpBox *quarter, const GArray *covered, double width, double height, FpBox *room)
{
  for (double y = quarter->y1 - height; y >= quarter->y0; y -= STEP)
    for (double x = quarter->x1 - width; x >= quarter->x0; x -= STEP)
      {
        *room = (FpBox) { x, y, x + width, y + height };
        if (is_free (layout, room, covered))
          return TRUE;
      }
  return FALSE;
}

FpBox
fp_pew_room_find (const FpBoardLayout *layout, const FpBox *quarter, const GArray *covered)
{
  FpBox room;

  for (double width = MIN (WIDEST, quarter->x1 - quarter->x0); width >= LEAST; width *= SMALLER)
    if (find_place (layout, quarter, covered, width, width / FP_PEW_ASPECT + fp_pew_room_words (width), &room))
      return room;
  return FP_BOX_EMPTY;
}
