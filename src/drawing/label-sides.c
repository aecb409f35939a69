/* SPDX-License-Identifier: GPL-3.0-or-later */
/* label-sides.c - the names of the two sides of the sanctuary, at one height on the free floor beside the altar */
#include "labels-private.h"

/* Paper mm kept at the ends of these names besides what any text keeps of a line. */
#define SIDE_CLEAR 2.0

typedef struct { FpLabelWords words; double near, far; } Side;

/* No line of the drawing comes so near that it might belong to the word. */
static gboolean
stands_clear (const FpLettering *l, FpPoint middle)
{
  FpBox box[FP_LABEL_BOXES], kept;

  fp_label_words_boxes (l->words, middle, 0, box);
  kept = fp_box_grown (&box[0], SIDE_CLEAR, FP_LABEL_CLEAR);
  return fp_cover_is_blank (l->room, &kept, 0);
}

static gboolean
letter_side (FpLettering *l, const Side *side, double y)
{
  static const double shares[] = { 0.5, 0.6, 0.7, 0.8, 0.9, 0.4, 0.3, 0.2 };
  FpLabel label = { .standing = FP_STANDING_EXISTING };

  l->words = &side->words;
  for (guint i = 0; i < G_N_ELEMENTS (shares); i++)
    {
      const FpPoint middle = { side->near + (side->far - side->near) * shares[i], y };
      if (stands_clear (l, middle) && fp_label_try (l, &label, middle, 0))
        {
          g_array_append_val (l->out, label);
          return TRUE;
        }
    }
  return FALSE;
}

/* Both at one height on the free floor beside the altar, as near the line of its front as can be. */
static void
letter_both (FpLettering *l, const Side *gospel, const Side *epistle, const FpBox *sanctuary, double front)
{
  const double step = 5, most = MAX (front - sanctuary->y0, sanctuary->y1 - front);

  for (double away = 0; away < most; away += step)
    for (int sign = -1; sign <= 1; sign += 2)
      {
        const double y = front + sign * away;
        const guint before = l->out->len;
        FpCoverMark mark = fp_cover_mark (l->room);
        if (y < sanctuary->y0 + 3 || y > sanctuary->y1 - 3)
          continue;
        if (letter_side (l, gospel, y) && letter_side (l, epistle, y))
          return;
        fp_cover_reset (l->room, mark);
        g_array_set_size (l->out, before);
      }
}

void
fp_letter_sides (FpLettering *l)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (l->scene, &n);
  const int altar = fp_scene_celebrated_altar (l->scene);
  const FpBox3 box = fp_scene_sanctuary (l->scene);
  const FpBox plan = { box.lo.x, box.lo.y, box.hi.x, box.hi.y };
  const FpBox sanctuary = fp_lettered_box (l, &plan);
  Side gospel, epistle;
  FpBox at;

  if (altar < 0 || l->layout->scale > FP_LABEL_SMALL)
    return;
  at = fp_lettered_box (l, &placed[altar].plan);
  gospel = (Side) { .near = at.x0, .far = sanctuary.x0 };
  epistle = (Side) { .near = at.x1, .far = sanctuary.x1 };
  fp_label_words_set (&gospel.words, "GOSPEL SIDE", 1, FP_LABEL_HEIGHT);
  fp_label_words_set (&epistle.words, "EPISTLE SIDE", 1, FP_LABEL_HEIGHT);
  letter_both (l, &gospel, &epistle, &sanctuary, at.y0);
  fp_label_words_clear (&gospel.words);
  fp_label_words_clear (&epistle.words);
}
