/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "blank-near.h"

#include "cover.h"

#include <math.h>

/* Paper mm; design judgement. */
#define CLEAR 0.8  /* round the words                         */
#define NEAR  2.5  /* from what they are about                */
#define FAR   35.0 /* a longer leader would not be followed   */
#define STEP  1.0
#define WAYS  24u

/* --- what is there ---------------------------------------------------------- */

static void
add_box (FpCover *cover, const FpBox *box)
{
  const FpPoint corner[4] = { { box->x0, box->y0 }, { box->x1, box->y0 }, { box->x1, box->y1 }, { box->x0, box->y1 } };

  for (guint i = 0; i < 4; i++)
    fp_cover_add_object (cover, corner[i], corner[(i + 1) % 4], 0);
  fp_cover_add_filled (cover, corner, 4);
}

static void
add_run (FpCover *cover, const FpMark *mark, const FpPoint *pt)
{
  const guint n = mark->closed || mark->type == FP_MARK_AREA ? mark->n : mark->n - 1;

  for (guint i = 0; i < n; i++)
    fp_cover_add_object (cover, pt[i], pt[(i + 1) % mark->n], 0);
  if (mark->type == FP_MARK_AREA && (mark->hatch != 0.0 || (mark->fill != FP_FILL_NONE && mark->fill != FP_FILL_PAPER)))
    fp_cover_add_filled (cover, pt, mark->n);
}

static FpBox
box_of (const FpMark *mark)
{
  const double width = mark->type == FP_MARK_TEXT ? fp_lettering_width (mark->text, mark->height) : 0.0;
  const double left = mark->align == FP_ALIGN_LEFT ? 0.0 : mark->align == FP_ALIGN_RIGHT ? width : width / 2.0;

  if (mark->type == FP_MARK_CIRCLE)
    return (FpBox) { mark->at.x - mark->radius, mark->at.y - mark->radius, mark->at.x + mark->radius, mark->at.y + mark->radius };
  if (fabs (mark->turn) > 45.0) /* only level and upright lettering is drawn */
    return (FpBox) { mark->at.x - mark->height, mark->at.y - left, mark->at.x, mark->at.y - left + width };
  return (FpBox) { mark->at.x - left, mark->at.y, mark->at.x - left + width, mark->at.y + mark->height };
}

static FpCover *
cover_of (const FpDrawing *drawing)
{
  const FpPoint *pt = fp_drawing_points (drawing);
  FpCover *cover = fp_cover_new ();
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_LINE || mark[i].type == FP_MARK_AREA)
      add_run (cover, &mark[i], pt + mark[i].first);
    else if (mark[i].type != FP_MARK_PICTURE)
      {
        const FpBox box = box_of (&mark[i]);
        add_box (cover, &box);
      }
  return cover;
}

/* --- looking about ---------------------------------------------------------- */

/* From the middle in the direction of @angle, so far that the nearest edge of the words is @far away. */
static FpBox
words_at (FpPoint at, double angle, double far, double width, double height)
{
  const double x = at.x + cos (angle) * (far + width / 2.0), y = at.y + sin (angle) * (far + height / 2.0);

  return (FpBox) { x - width / 2.0, y - height / 2.0, x + width / 2.0, y + height / 2.0 };
}

static gboolean
is_free (const FpCover *cover, const FpBox *within, const FpBox *words)
{
  const FpBox room = { words->x0 - CLEAR, words->y0 - CLEAR, words->x1 + CLEAR, words->y1 + CLEAR };

  return room.x0 >= within->x0 && room.x1 <= within->x1 && room.y0 >= within->y0 && room.y1 <= within->y1
         && fp_cover_is_blank (cover, &room, 0);
}

gboolean
fp_blank_near (const FpDrawing *drawing, const FpBox *within, FpPoint at, double width, double height, FpPoint *out)
{
  g_autoptr (FpCover) cover = cover_of (drawing);

  for (double far = NEAR; far <= FAR; far += STEP)
    for (guint i = 0; i < WAYS; i++)
      {
        const FpBox words = words_at (at, 2.0 * G_PI * i / WAYS, far, width, height);

        if (!is_free (cover, within, &words))
          continue;
        *out = (FpPoint) { words.x0, words.y0 };
        return TRUE;
      }
  return FALSE;
}
