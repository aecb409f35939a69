/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "blank-near.h"

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

static FpPoint
lies_at (const FpLaid *laid, FpPoint p)
{
  return (FpPoint) { laid->corner.x + p.x * laid->grown, laid->corner.y + p.y * laid->grown };
}

static void
add_run (FpCover *cover, const FpLaid *laid, const FpMark *mark, const FpPoint *pt)
{
  const guint n = mark->closed || mark->type == FP_MARK_AREA ? mark->n : mark->n - 1;

  for (guint i = 0; i < n; i++)
    fp_cover_add_object (cover, lies_at (laid, pt[i]), lies_at (laid, pt[(i + 1) % mark->n]), 0);
  if (mark->type == FP_MARK_AREA && (mark->hatch != 0.0 || (mark->fill != FP_FILL_NONE && mark->fill != FP_FILL_PAPER)))
    {
      g_autofree FpPoint *outline = g_new (FpPoint, mark->n);

      for (guint i = 0; i < mark->n; i++)
        outline[i] = lies_at (laid, pt[i]);
      fp_cover_add_filled (cover, outline, mark->n);
    }
}

static FpBox
box_of_text (const FpMark *mark)
{
  const double width = fp_lettering_width (mark->text, mark->height);
  const double left = mark->align == FP_ALIGN_LEFT ? 0.0 : mark->align == FP_ALIGN_RIGHT ? width : width / 2.0;

  if (fabs (mark->turn) > 45.0) /* only level and upright lettering is drawn */
    return (FpBox) { mark->at.x - mark->height, mark->at.y - left, mark->at.x, mark->at.y - left + width };
  return (FpBox) { mark->at.x - left, mark->at.y, mark->at.x - left + width, mark->at.y + mark->height };
}

static FpBox
box_of (const FpMark *mark, const FpPoint *pt)
{
  if (mark->type == FP_MARK_LINE || mark->type == FP_MARK_AREA)
    return fp_outline_box (pt, mark->n);
  if (mark->type == FP_MARK_CIRCLE)
    return (FpBox) { mark->at.x - mark->radius, mark->at.y - mark->radius, mark->at.x + mark->radius, mark->at.y + mark->radius };
  return box_of_text (mark);
}

/* Lettering takes no less than its capitals, and hardly more than this: measuring it takes longer. */
static gboolean
may_touch (const FpLaid *laid, const FpMark *mark, const FpBox *about)
{
  const FpPoint at = lies_at (laid, mark->at);
  const double reach = mark->type == FP_MARK_TEXT ? 1.5 * mark->height * laid->grown * (double) strlen (mark->text) : 0;

  return mark->type != FP_MARK_TEXT || (at.x + reach >= about->x0 && at.x - reach <= about->x1
                                        && at.y + reach >= about->y0 && at.y - reach <= about->y1);
}

static void
cover_by (FpCover *cover, const FpLaid *laid, const FpBox *about)
{
  const FpPoint *pt = fp_drawing_points (laid->drawing);
  guint n;
  const FpMark *mark = fp_drawing_marks (laid->drawing, &n);

  for (guint i = 0; i < n; i++)
    {
      if (mark[i].type == FP_MARK_PICTURE || !may_touch (laid, &mark[i], about))
        continue;
      const FpBox own = box_of (&mark[i], pt + mark[i].first);
      const FpPoint low = lies_at (laid, (FpPoint) { own.x0, own.y0 }), high = lies_at (laid, (FpPoint) { own.x1, own.y1 });
      const FpBox box = { low.x, low.y, high.x, high.y };
      if (low.x > about->x1 || high.x < about->x0 || low.y > about->y1 || high.y < about->y0)
        continue;
      if (mark[i].type == FP_MARK_LINE || mark[i].type == FP_MARK_AREA)
        add_run (cover, laid, &mark[i], pt + mark[i].first);
      else
        add_box (cover, &box);
      if (mark[i].type == FP_MARK_TEXT)
        fp_cover_take_text (cover, &box, 1);
    }
}

FpCover *
fp_laid_cover (const FpLaid *laid, guint n, const FpBox *about)
{
  FpCover *cover = fp_cover_new ();

  for (guint i = 0; i < n; i++)
    cover_by (cover, &laid[i], about);
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

static gboolean
look_about (const FpCover *cover, const FpBox *within, FpPoint at, double width, double height, FpPoint *out)
{
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

gboolean
fp_blank_near (const FpLaid *laid, guint n, const FpBox *within, FpPoint at, double width, double height, FpPoint *out)
{
  const double x = FAR + width + CLEAR, y = FAR + height + CLEAR;
  const FpBox about = { at.x - x, at.y - y, at.x + x, at.y + y };
  const FpBox stood = { out->x, out->y, out->x + width, out->y + height };
  g_autoptr (FpCover) cover = fp_laid_cover (laid, n, &about);

  if (stood.x0 >= about.x0 && stood.x1 <= about.x1 && stood.y0 >= about.y0 && stood.y1 <= about.y1
      && is_free (cover, within, &stood))
    return TRUE;
  return look_about (cover, within, at, width, height, out);
}
