/* SPDX-License-Identifier: GPL-3.0-or-later */
/* label-fit.c - whether a text has room at one place, and taking that room */
#include "labels-private.h"

/* Paper mm kept between two texts. */
#define APART 1.6

#define OWNER 200000

static gboolean
lies_within (const FpBox *box, const FpBox *in)
{
  return box->x0 >= in->x0 && box->y0 >= in->y0 && box->x1 <= in->x1 && box->y1 <= in->y1;
}

FpBox
fp_box_grown (const FpBox *box, double x, double y)
{
  return (FpBox) { box->x0 - x, box->y0 - y, box->x1 + x, box->y1 + y };
}

/* The name of the pews on one side would be read, across the axis, as that of the others. */
static gboolean
keeps_its_side (const FpLettering *l, const FpBox *box)
{
  const FpBox *plan = l->placed != NULL ? &l->placed->plan : NULL;

  if (plan == NULL || fp_item_kind (l->placed->item)->role != FP_ROLE_PEWS)
    return TRUE;
  return (plan->x1 > 0 || box->x1 <= l->axis) && (plan->x0 < 0 || box->x0 >= l->axis);
}

static gboolean
is_off_axis (const FpLettering *l, const FpBox *box)
{
  return box->x0 - FP_LABEL_CLEAR >= l->axis || box->x1 + FP_LABEL_CLEAR <= l->axis;
}

static gboolean
has_room (const FpLettering *l, const FpBox *box)
{
  const FpBox kept = fp_box_grown (box, FP_LABEL_CLEAR, FP_LABEL_CLEAR), apart = fp_box_grown (box, APART, APART);

  if (!keeps_its_side (l, box))
    return FALSE;
  return lies_within (&kept, l->content) && fp_cover_is_blank (l->room, &kept, l->over_owner)
         && fp_cover_text_is_free (l->room, &apart, OWNER + l->out->len);
}

/* Asked line by line: where one has no room, no other need be looked at. */
static gboolean
is_every_line (const FpLettering *l, FpPoint middle, double turn, gboolean (*so) (const FpLettering *, const FpBox *))
{
  FpBox box[FP_FIGURE_PARTS];

  for (guint line = 0; line < l->words->n; line++)
    {
      const guint n = fp_label_words_line_boxes (l->words, middle, turn, line, box);

      for (guint i = 0; i < n; i++)
        if (!so (l, &box[i]))
          return FALSE;
    }
  return TRUE;
}

gboolean
fp_label_text_has_room (const FpLettering *l, FpPoint middle, double turn)
{
  return is_every_line (l, middle, turn, has_room);
}

gboolean
fp_label_text_keeps_off_axis (const FpLettering *l, FpPoint middle, double turn)
{
  return l->over_axis || is_every_line (l, middle, turn, is_off_axis);
}

gboolean
fp_label_text_is_free (const FpLettering *l, FpPoint middle, double turn)
{
  return fp_label_text_keeps_off_axis (l, middle, turn) && fp_label_text_has_room (l, middle, turn);
}

/* A leader starts within its thing and crosses the outline; what it may cross besides is limited. */
static gboolean
leader_is_free (const FpLettering *l, const FpLabel *label)
{
  return fp_cover_crossings (l->room, label->leader[0], label->leader[1]) <= 1 + l->crosses
         && (l->through_walls || !fp_cover_passes_filled (l->room, label->leader[0], label->leader[1]))
         && fp_cover_line_is_free (l->room, label->leader[0], label->leader[1], OWNER + l->out->len);
}

/* Where it is looked for first the next time. */
static void
remember_place (const FpLettering *l, FpLabel *label, FpPoint middle)
{
  label->place = (FpLabelPlace) {
    .item = label->item, .thing = l->thing, .middle = middle, .turn = label->turn, .has_leader = label->has_leader,
    .leader = { label->leader[0], label->leader[1] }, .way = (guint) (l->words - l->ways), .crosses = l->crosses,
    .over_axis = l->over_axis, .over_rows = l->over_owner != 0,
  };
}

static void
take_room (FpLettering *l, FpLabel *label, FpPoint middle)
{
  /* Nothing passes between a text and its leader. */
  const double more = label->has_leader ? FP_LABEL_TO_LEADER : 0;
  const guint owner = OWNER + l->out->len;
  FpBox box[FP_LABEL_BOXES];
  const guint n = fp_label_words_boxes (l->words, middle, label->turn, box);

  for (guint i = 0; i < n; i++)
    {
      const FpBox taken = fp_box_grown (&box[i], more, more);
      label->has_ground |= box[i].x0 - FP_LABEL_CLEAR < l->axis && box[i].x1 + FP_LABEL_CLEAR > l->axis;
      fp_cover_take_text (l->room, &taken, owner);
    }
  if (label->has_leader)
    fp_cover_take_line (l->room, label->leader[0], label->leader[1], owner);
}

static void
take_words (const FpLettering *l, FpLabel *label, FpPoint middle)
{
  label->n_lines = l->words->n;
  label->lettering = l->words->lettering;
  for (guint i = 0; i < label->n_lines; i++)
    {
      label->at[i] = fp_label_words_at (l->words, middle, label->turn, i);
      label->line[i] = g_strdup (l->words->line[i]);
    }
}

gboolean
fp_label_try (FpLettering *l, FpLabel *label, FpPoint middle, double turn)
{
  if (!fp_label_text_is_free (l, middle, turn) || (label->has_leader && !leader_is_free (l, label)))
    return FALSE;
  label->turn = turn;
  label->has_ground = l->over_owner != 0;
  if (l->placed != NULL)
    remember_place (l, label, middle);
  take_words (l, label, middle);
  take_room (l, label, middle);
  return TRUE;
}
