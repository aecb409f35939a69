/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "labels.h"

#include "annotation.h"
#include "label-words.h"
#include "thin.h"

#include <math.h>

/* Paper mm kept between a text and any line, and another text. */
#define CLEAR 0.5
#define APART 1.6
#define TO_LEADER 0.8
#define EDGE  0.7 /* and the border of the thing that it is lettered on */
#define SIDE_CLEAR 2.0 /* and at the ends of the names of the two sides */

/* How many lines a leader may cross, besides the outline of its own thing: first none, then a few. */
#define CROSSES_MOST 3

/* But no plan without the name of its altar. */
#define CROSSES_TO_ALTAR 9

/* Distances of a text from its thing, tried in turn. */
static const double DISTANCES[] = { 3, 1.8, 6, 10, 15 };

/* A name longer than this is cut off with an ellipsis. */
#define WIDEST 40.0

/* At smaller scales only altar and seats are named. */
#define SMALL 320.0

/* Names of pews over their rows may be as small as ISO 3098-1 allows, mm. */
#define SMALL_LETTERING 1.8

#define OWNER 200000

/* A longer leader would wander over the drawing, mm. */
#define LEADER_MOST 22.0

typedef struct
{
  const FpScene      *scene;
  const FpViewLayout *layout;
  const FpBox        *content;
  FpCover            *room;
  guint               crosses; /* lines that a leader may cross */
  double              axis;    /* x of the axis */
  gboolean            over_axis; /* a text may interrupt it */
  const FpPlaced     *placed;  /* the thing that is lettered; NULL */
  guint               over_owner; /* whose lines a text may interrupt; 0: nobody's */
  const FpLabelWords *words, *ways; /* one of the ways in which it may be written */
  FpPoint             thing;   /* the middle of it, paper mm */
  const GArray       *before;  /* FpLabelPlace; NULL */
  const GArray       *drawn;   /* FpProjectedLine: of all things */
  GArray             *own;     /* its lines (FpPoint, pairs), paper mm */
  GArray             *out;
} Lettering;

/* --- one text at one place --------------------------------------------------------- */

static gboolean
lies_within (const FpBox *box, const FpBox *in)
{
  return box->x0 >= in->x0 && box->y0 >= in->y0 && box->x1 <= in->x1 && box->y1 <= in->y1;
}

static FpBox
grown (const FpBox *box, double x, double y)
{
  return (FpBox) { box->x0 - x, box->y0 - y, box->x1 + x, box->y1 + y };
}

/* The name of the pews on one side would be read, across the axis, as that of the others. */
static gboolean
keeps_its_side (const Lettering *l, const FpBox *box)
{
  const FpBox *plan = l->placed != NULL ? &l->placed->plan : NULL;

  if (plan == NULL || fp_item_kind (l->placed->item)->role != FP_ROLE_PEWS)
    return TRUE;
  return (plan->x1 > 0 || box->x1 <= l->axis) && (plan->x0 < 0 || box->x0 >= l->axis);
}

static gboolean
box_is_free (const Lettering *l, const FpBox *box)
{
  const FpBox kept = grown (box, CLEAR, CLEAR), apart = grown (box, APART, APART);

  if (!keeps_its_side (l, box))
    return FALSE;
  if (!l->over_axis && kept.x0 < l->axis && kept.x1 > l->axis)
    return FALSE;
  return lies_within (&kept, l->content) && fp_cover_is_blank (l->room, &kept, l->over_owner)
         && fp_cover_text_is_free (l->room, &apart, OWNER + l->out->len);
}

static gboolean
text_is_free (const Lettering *l, FpPoint middle, double turn)
{
  FpBox box[FP_LABEL_BOXES];
  const guint n = fp_label_words_boxes (l->words, middle, turn, box);

  for (guint i = 0; i < n; i++)
    if (!box_is_free (l, &box[i]))
      return FALSE;
  return TRUE;
}

/* A leader starts within its thing and crosses the outline; what it may cross besides is limited. */
static gboolean
leader_is_free (const Lettering *l, const FpLabel *label)
{
  return fp_cover_crossings (l->room, label->leader[0], label->leader[1]) <= 1 + l->crosses
         && !fp_cover_passes_filled (l->room, label->leader[0], label->leader[1])
         && fp_cover_line_is_free (l->room, label->leader[0], label->leader[1], OWNER + l->out->len);
}

/* Takes the room where it is free. */
static gboolean
try_at (Lettering *l, FpLabel *label, FpPoint middle, double turn)
{
  const guint owner = OWNER + l->out->len;
  FpBox box[FP_LABEL_BOXES];
  guint n;

  if (!text_is_free (l, middle, turn) || (label->has_leader && !leader_is_free (l, label)))
    return FALSE;
  n = fp_label_words_boxes (l->words, middle, turn, box);
  label->turn = turn;
  label->has_ground = l->over_owner != 0;
  if (l->placed != NULL)
    label->place = (FpLabelPlace) {
      .item = label->item, .thing = l->thing, .middle = middle, .turn = turn, .has_leader = label->has_leader,
      .leader = { label->leader[0], label->leader[1] }, .way = (guint) (l->words - l->ways), .crosses = l->crosses,
      .over_axis = l->over_axis, .over_rows = l->over_owner != 0,
    };
  label->n_lines = l->words->n;
  label->lettering = l->words->lettering;
  for (guint i = 0; i < n; i++)
    {
      /* Nothing passes between a text and its leader. */
      const FpBox taken = grown (&box[i], label->has_leader ? TO_LEADER : 0, label->has_leader ? TO_LEADER : 0);
      label->has_ground |= box[i].x0 - CLEAR < l->axis && box[i].x1 + CLEAR > l->axis;
      fp_cover_take_text (l->room, &taken, owner);
    }
  for (guint i = 0; i < label->n_lines; i++)
    {
      label->at[i] = fp_label_words_at (l->words, middle, turn, i);
      label->line[i] = g_strdup (l->words->line[i]);
    }
  if (label->has_leader)
    fp_cover_take_line (l->room, label->leader[0], label->leader[1], owner);
  return TRUE;
}

/* --- inside and beside ----------------------------------------------------------------- */

static FpPoint
nearest_on (FpPoint a, FpPoint b, FpPoint p)
{
  const double dx = b.x - a.x, dy = b.y - a.y, square = dx * dx + dy * dy;
  const double t = square > 0 ? CLAMP (((p.x - a.x) * dx + (p.y - a.y) * dy) / square, 0, 1) : 0;

  return (FpPoint) { a.x + t * dx, a.y + t * dy };
}

/* The point of the thing's own lines nearest to @p; @p where it has none. */
static FpPoint
nearest_own (const Lettering *l, FpPoint p)
{
  FpPoint nearest = p;
  double least = G_MAXDOUBLE;

  for (guint i = 0; i + 1 < l->own->len; i += 2)
    {
      const FpPoint q = nearest_on (g_array_index (l->own, FpPoint, i), g_array_index (l->own, FpPoint, i + 1), p);
      const double d = hypot (q.x - p.x, q.y - p.y);
      if (d < least)
        {
          least = d;
          nearest = q;
        }
    }
  return nearest;
}

static gboolean
contains (const Lettering *l, FpPoint paper)
{
  const FpPoint world = fp_view_from_paper (l->layout, paper), local = fp_place_unpoint (&l->placed->place, world);
  const FpBox *plan = &l->placed->extent.plan;

  if (fp_item_kind (l->placed->item)->role == FP_ROLE_PEWS)
    return fp_pews_contain (l->placed, world);
  return local.x >= plan->x0 && local.x <= plan->x1 && local.y >= plan->y0 && local.y <= plan->y1;
}

/* The box of a turned thing is larger than the thing, and that of curved rows has empty corners. */
static gboolean
is_inside_thing (const Lettering *l, FpPoint middle, double turn)
{
  const FpPlace place = { middle.x, middle.y, turn };
  const double w = l->words->widest / 2 + CLEAR, h = l->words->height / 2 + CLEAR;

  for (int i = 0; i < 4; i++)
    if (!contains (l, fp_place_point (&place, (FpPoint) { i % 2 ? w : -w, i / 2 ? h : -h })))
      return FALSE;
  return TRUE;
}

/* From the middle outwards. */
static gboolean
try_inside (Lettering *l, FpLabel *label, const FpBox *in, double turn)
{
  static const double shares[] = { 0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95 };
  const double w = turn == 0 ? l->words->widest : l->words->height, h = turn == 0 ? l->words->height : l->words->widest;
  const double free_x = in->x1 - in->x0 - w - 2 * EDGE, free_y = in->y1 - in->y0 - h - 2 * EDGE;

  if (free_x < 0 || free_y < 0)
    return FALSE;
  label->has_leader = FALSE;
  for (guint j = 0; j < G_N_ELEMENTS (shares); j++)
    for (guint i = 0; i < G_N_ELEMENTS (shares); i++)
      {
        const FpPoint middle = { in->x0 + EDGE + w / 2 + free_x * shares[i], in->y0 + EDGE + h / 2 + free_y * shares[j] };
        if (is_inside_thing (l, middle, turn) && try_at (l, label, middle, turn))
          return TRUE;
      }
  return FALSE;
}

/* As it is read along the thing's own front: not standing on its head. */
static double
own_turn (const FpPlaced *placed)
{
  const double turn = remainder (placed->place.turn, 180);

  return turn <= -90 + 1e-6 ? turn + 180 : turn;
}

static gboolean
is_oblique (const FpPlaced *placed)
{
  return fabs (remainder (placed->place.turn, 90)) > 1;
}

/* Along the thing's own front, where it is turned. */
static gboolean
try_inside_turned (Lettering *l, FpLabel *label)
{
  static const double shares[] = { 0.5, 0.3, 0.7, 0.1, 0.9 };
  const FpBox *plan = &l->placed->extent.plan;

  label->has_leader = FALSE;
  for (guint j = 0; is_oblique (l->placed) && j < G_N_ELEMENTS (shares); j++)
    for (guint i = 0; i < G_N_ELEMENTS (shares); i++)
      {
        const FpPoint local = { plan->x0 + (plan->x1 - plan->x0) * shares[i], plan->y0 + (plan->y1 - plan->y0) * shares[j] };
        const FpPoint middle = fp_view_to_paper (l->layout, fp_place_point (&l->placed->place, local));
        if (is_inside_thing (l, middle, own_turn (l->placed)) && try_at (l, label, middle, own_turn (l->placed)))
          return TRUE;
      }
  return FALSE;
}

/* Where a text may stand beside its thing: to which side, and at what share of that side the leader begins. */
typedef struct { int dx, dy; double share; } Beside;

static const Beside BESIDE[] = {
  { 1, 0, 0.5 },   { -1, 0, 0.5 },   { 0, -1, 0.5 },  { 0, 1, 0.5 },   { 1, 0, 0.2 },   { -1, 0, 0.2 }, { 1, 0, 0.8 },
  { -1, 0, 0.8 },  { 1, -1, 0 },     { -1, -1, 0 },   { 1, 1, 0 },     { -1, 1, 0 },    { 0, -1, 0.2 }, { 0, -1, 0.8 },
  { 0, 1, 0.2 },   { 0, 1, 0.8 },    { 0, -1, 0.08 }, { 0, -1, 0.92 }, { 0, 1, 0.08 },  { 0, 1, 0.92 },
};

/* The box of a turned thing has empty corners: there a leader ends on the outline instead. */
static FpPoint
end_on_thing (const Lettering *l, FpPoint from)
{
  const FpPoint own = nearest_own (l, from);

  return contains (l, from) && hypot (own.x - from.x, own.y - from.y) <= 0.8 ? from : own;
}

static gboolean
try_beside (Lettering *l, FpLabel *label, const FpBox *thing, double distance, const Beside *to)
{
  const double half_w = l->words->widest / 2, half_h = l->words->height / 2;
  const FpPoint on = { thing->x0 + (thing->x1 - thing->x0) * to->share,
                       thing->y0 + (thing->y1 - thing->y0) * to->share };
  /* A leader on the axis could not be told from it. */
  const double aside = to->dx == 0 && fabs (on.x - l->axis) < 1 ? MIN (2, (thing->x1 - thing->x0) / 4) : 0;
  /* The leader begins on the edge, a little inside, and ends before the text. */
  const FpPoint from = { to->dx == 0 ? on.x + aside : to->dx > 0 ? thing->x1 - 0.4 : thing->x0 + 0.4,
                         to->dy == 0 ? on.y : to->dy > 0 ? thing->y1 - 0.4 : thing->y0 + 0.4 };
  const FpPoint text = {
    to->dx == 0 ? on.x : (to->dx > 0 ? thing->x1 : thing->x0) + to->dx * (distance + half_w),
    to->dy == 0 ? on.y : (to->dy > 0 ? thing->y1 : thing->y0) + to->dy * (distance + half_h),
  };

  if (!text_is_free (l, text, 0))
    return FALSE;
  label->has_leader = TRUE;
  label->leader[0] = end_on_thing (l, from);
  label->leader[1] = (FpPoint) { to->dx == 0 ? on.x + aside : text.x - to->dx * (half_w + TO_LEADER),
                                 to->dx != 0 ? text.y : text.y - to->dy * (half_h + TO_LEADER) };
  label->shelf = label->leader[1];
  return hypot (label->leader[1].x - label->leader[0].x, label->leader[1].y - label->leader[0].y) < LEADER_MOST
         && try_at (l, label, text, 0);
}

static gboolean
try_around (Lettering *l, FpLabel *label, const FpBox *thing)
{
  for (guint d = 0; d < G_N_ELEMENTS (DISTANCES); d++)
    for (guint w = 0; w < G_N_ELEMENTS (BESIDE); w++)
      if (try_beside (l, label, thing, DISTANCES[d], &BESIDE[w]))
        return TRUE;
  return FALSE;
}

/* --- the names of things ------------------------------------------------------------------ */

/* The building explains itself. */
static gboolean
is_named (const FpPlaced *placed)
{
  switch (fp_item_kind (placed->item)->role)
    {
    case FP_ROLE_WALL:
    case FP_ROLE_OPENING:
    case FP_ROLE_PIER:
    case FP_ROLE_FLOOR:
    case FP_ROLE_STEPS:
      return FALSE;
    case FP_ROLE_NONE:
    case FP_ROLE_ALTAR:
    case FP_ROLE_FOOTPACE:
    case FP_ROLE_GRADINE:
    case FP_ROLE_TABERNACLE:
    case FP_ROLE_CRUCIFIX:
    case FP_ROLE_CANDLES:
    case FP_ROLE_REREDOS:
    case FP_ROLE_CREDENCE:
    case FP_ROLE_SEDILIA:
    case FP_ROLE_AMBO:
    case FP_ROLE_CHAIR:
    case FP_ROLE_RAIL:
    case FP_ROLE_PEWS:
    case FP_ROLE_GALLERY:
    case FP_ROLE_STANDING_ROOM:
      return !placed->ghost;
    }
  return FALSE;
}

static FpBox
paper_box (const Lettering *l, const FpBox *plan)
{
  const FpPoint a = fp_view_to_paper (l->layout, (FpPoint) { plan->x0, plan->y0 });
  const FpPoint b = fp_view_to_paper (l->layout, (FpPoint) { plan->x1, plan->y1 });

  return (FpBox) { MAX (a.x, l->content->x0), MAX (a.y, l->content->y0), MIN (b.x, l->content->x1),
                   MIN (b.y, l->content->y1) };
}

static void
gather_own (Lettering *l, guint index)
{
  g_array_set_size (l->own, 0);
  for (guint i = 0; i < l->drawn->len; i++)
    {
      const FpProjectedLine *line = &g_array_index (l->drawn, FpProjectedLine, i);
      FpPoint pt[2] = { fp_view_to_paper (l->layout, line->a), fp_view_to_paper (l->layout, line->b) };
      if (line->owner == index && fp_clip_segment (&pt[0], &pt[1], l->content))
        g_array_append_vals (l->own, pt, 2);
    }
}

/* How a name may be written, the best first. */
enum { ONE_LINE, TWO_LINES, THREE_LINES, SHORTENED, ONE_SMALL, TWO_SMALL, THREE_SMALL, N_WAYS };

static gboolean
find_inside (Lettering *l, FpLabel *label, const FpBox *thing, const FpLabelWords *way, guint first)
{
  for (guint i = first; i < first + FP_LABEL_LINES; i++)
    {
      l->words = &way[i];
      if (try_inside (l, label, thing, 0) || try_inside (l, label, thing, 90) || try_inside_turned (l, label))
        return TRUE;
    }
  return FALSE;
}

static gboolean
find_beside (Lettering *l, FpLabel *label, const FpBox *thing, const FpLabelWords *way, guint last, guint crosses)
{
  for (l->crosses = 0; l->crosses <= crosses; l->crosses += crosses)
    for (guint i = ONE_LINE; i <= last; i++)
      {
        l->words = &way[i];
        if (try_around (l, label, thing))
          return TRUE;
      }
  return FALSE;
}

/* Over its rows, which give way to the name. */
static gboolean
find_over (Lettering *l, FpLabel *label, const FpBox *thing, const FpLabelWords *way, guint first, guint index)
{
  gboolean found;

  if (fp_item_kind (l->placed->item)->role != FP_ROLE_PEWS)
    return FALSE;
  l->over_owner = index + 1;
  found = find_inside (l, label, thing, way, first);
  l->over_owner = 0;
  return found;
}

static gboolean
is_altar (const FpPlaced *placed)
{
  return fp_item_kind (placed->item)->role == FP_ROLE_ALTAR;
}

static gboolean
find_place (Lettering *l, FpLabel *label, const FpBox *thing, const FpLabelWords *way, guint index)
{
  const gboolean crowded = fp_is_crowded (l->placed, l->layout->scale);

  for (l->over_axis = FALSE; l->over_axis <= TRUE; l->over_axis++)
    if ((crowded && find_over (l, label, thing, way, ONE_LINE, index))
        || (crowded && find_over (l, label, thing, way, ONE_SMALL, index))
        || find_inside (l, label, thing, way, ONE_LINE)
        || find_beside (l, label, thing, way, l->over_axis ? THREE_LINES : TWO_LINES, CROSSES_MOST)
        || find_over (l, label, thing, way, ONE_LINE, index) || find_over (l, label, thing, way, ONE_SMALL, index))
      return TRUE;
  return find_beside (l, label, thing, way, SHORTENED, CROSSES_MOST)
         || (is_altar (l->placed) && find_beside (l, label, thing, way, SHORTENED, CROSSES_TO_ALTAR));
}

/* --- where it stood before ----------------------------------------------------------------- */

static const FpLabelPlace *
place_before (const Lettering *l, const FpPlaced *placed)
{
  for (guint i = 0; l->before != NULL && i < l->before->len; i++)
    if (g_strcmp0 (g_array_index (l->before, FpLabelPlace, i).item, fp_item_id (placed->item)) == 0)
      return &g_array_index (l->before, FpLabelPlace, i);
  return NULL;
}

static FpPoint
shifted (FpPoint p, FpPoint from, FpPoint to)
{
  return (FpPoint) { p.x + to.x - from.x, p.y + to.y - from.y };
}

/* It goes with its thing. */
static gboolean
find_as_before (Lettering *l, FpLabel *label, const FpLabelPlace *before, guint index)
{
  gboolean found;

  l->words = &l->ways[before->way];
  l->over_axis = before->over_axis;
  l->over_owner = before->over_rows ? index + 1 : 0;
  l->crosses = before->crosses;
  label->has_leader = before->has_leader;
  for (guint i = 0; i < 2; i++)
    label->leader[i] = shifted (before->leader[i], before->thing, l->thing);
  label->shelf = label->leader[1];
  found = l->words->n > 0
          && (before->has_leader || is_inside_thing (l, shifted (before->middle, before->thing, l->thing), before->turn))
          && try_at (l, label, shifted (before->middle, before->thing, l->thing), before->turn);
  l->over_axis = FALSE;
  l->over_owner = 0;
  return found;
}

static void
set_ways (const char *name, FpLabelWords way[N_WAYS])
{
  for (guint i = 0; i < FP_LABEL_LINES; i++)
    {
      fp_label_words_set (&way[ONE_LINE + i], name, i + 1, FP_LABEL_HEIGHT);
      fp_label_words_set (&way[ONE_SMALL + i], name, i + 1, SMALL_LETTERING);
    }
  fp_label_words_short (&way[SHORTENED], name, WIDEST);
}

/* At the smallest scales a church is its altar and its seats. */
static gboolean
is_worth_naming (const Lettering *l, const FpPlaced *placed)
{
  const FpRole role = fp_item_kind (placed->item)->role;

  return l->layout->scale <= SMALL || role == FP_ROLE_ALTAR || role == FP_ROLE_PEWS || role == FP_ROLE_GALLERY
         || role == FP_ROLE_STANDING_ROOM;
}

/* @as_before: only where it stood before */
static void
letter_thing (Lettering *l, const FpPlaced *placed, guint index, const FpLabelPlace *as_before)
{
  const FpBox thing = paper_box (l, &placed->plan);
  FpLabel label = { .item = g_intern_string (fp_item_id (placed->item)), .standing = placed->standing };
  FpLabelWords way[N_WAYS];

  if (thing.x1 - thing.x0 < 0.8 || thing.y1 - thing.y0 < 0.8 || !is_worth_naming (l, placed))
    return;
  l->placed = placed;
  l->thing = (FpPoint) { (thing.x0 + thing.x1) / 2, (thing.y0 + thing.y1) / 2 };
  l->ways = way;
  gather_own (l, index);
  set_ways (fp_item_name (placed->item), way);
  if (as_before != NULL ? find_as_before (l, &label, as_before, index) : find_place (l, &label, &thing, way, index))
    g_array_append_val (l->out, label);
  for (guint i = 0; i < N_WAYS; i++)
    fp_label_words_clear (&way[i]);
}

/* The altar; then what stands on the floor before what stands on other things; then the order of the offices. */
static int
compare_placed (gconstpointer a, gconstpointer b, gpointer data)
{
  const FpPlaced *all = data, *p = &all[*(const guint *) a], *q = &all[*(const guint *) b];
  const gboolean p_high = p->support >= 0 && !(fp_item_kind (p->item)->flags & FP_KIND_ON_FLOOR);
  const gboolean q_high = q->support >= 0 && !(fp_item_kind (q->item)->flags & FP_KIND_ON_FLOOR);

  if (is_altar (p) != is_altar (q))
    return is_altar (p) ? -1 : 1;
  if (p_high != q_high)
    return p_high ? 1 : -1;
  return (int) fp_item_kind (p->item)->role - (int) fp_item_kind (q->item)->role;
}

static gboolean
has_name (const Lettering *l, const FpPlaced *placed)
{
  for (guint i = 0; i < l->out->len; i++)
    if (g_strcmp0 (g_array_index (l->out, FpLabel, i).item, fp_item_id (placed->item)) == 0)
      return TRUE;
  return FALSE;
}

/* The name of a gradine would be read as that of the altar that has none. */
static gboolean
stands_on_nameless_altar (const Lettering *l, const FpPlaced *placed, guint index)
{
  int on = placed[index].support;

  while (on >= 0 && !is_altar (&placed[on]))
    on = placed[on].support;
  return on >= 0 && !has_name (l, &placed[on]);
}

static void
letter_things (Lettering *l, const gboolean *shows, FpLabelsAmong among)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (l->scene, &n);
  g_autoptr (GArray) order = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < n; i++)
    if (shows[i] && is_named (&placed[i]) && (among == FP_LABELS_REST || is_altar (&placed[i])))
      g_array_append_val (order, i);
  g_array_sort_with_data (order, compare_placed, (gpointer) placed);
  for (int again = 0; again < 2; again++)
    for (guint i = 0; i < order->len; i++)
      {
        const guint index = g_array_index (order, guint, i);
        const FpLabelPlace *before = again ? NULL : place_before (l, &placed[index]);
        if ((again || before != NULL) && !has_name (l, &placed[index]) && !stands_on_nameless_altar (l, placed, index))
          letter_thing (l, &placed[index], index, before);
      }
}

/* --- the two sides --------------------------------------------------------------------------- */

typedef struct { FpLabelWords words; double near, far; } Side;

/* No line of the drawing comes so near that it might belong to the word. */
static gboolean
stands_clear (const Lettering *l, FpPoint middle)
{
  FpBox box[FP_LABEL_BOXES], kept;

  fp_label_words_boxes (l->words, middle, 0, box);
  kept = grown (&box[0], SIDE_CLEAR, CLEAR);
  return fp_cover_is_blank (l->room, &kept, 0);
}

static gboolean
letter_side (Lettering *l, const Side *side, double y)
{
  static const double shares[] = { 0.5, 0.6, 0.7, 0.8, 0.9, 0.4, 0.3, 0.2 };
  FpLabel label = { .standing = FP_STANDING_EXISTING };

  l->words = &side->words;
  for (guint i = 0; i < G_N_ELEMENTS (shares); i++)
    {
      const FpPoint middle = { side->near + (side->far - side->near) * shares[i], y };
      if (stands_clear (l, middle) && try_at (l, &label, middle, 0))
        {
          g_array_append_val (l->out, label);
          return TRUE;
        }
    }
  return FALSE;
}

/* Both at one height on the free floor beside the altar, as near the line of its front as can be. */
static void
letter_both (Lettering *l, const Side *gospel, const Side *epistle, const FpBox *sanctuary, double front)
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

static void
letter_sides (Lettering *l)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (l->scene, &n);
  const int altar = fp_scene_celebrated_altar (l->scene);
  const FpBox3 box = fp_scene_sanctuary (l->scene);
  const FpBox plan = { box.lo.x, box.lo.y, box.hi.x, box.hi.y };
  const FpBox sanctuary = paper_box (l, &plan);
  Side gospel, epistle;
  FpBox at;

  if (altar < 0 || l->layout->scale > SMALL)
    return;
  at = paper_box (l, &placed[altar].plan);
  gospel = (Side) { .near = at.x0, .far = sanctuary.x0 };
  epistle = (Side) { .near = at.x1, .far = sanctuary.x1 };
  fp_label_words_set (&gospel.words, "GOSPEL SIDE", 1, FP_LABEL_HEIGHT);
  fp_label_words_set (&epistle.words, "EPISTLE SIDE", 1, FP_LABEL_HEIGHT);
  letter_both (l, &gospel, &epistle, &sanctuary, at.y0);
  fp_label_words_clear (&gospel.words);
  fp_label_words_clear (&epistle.words);
}

static void
clear_label (gpointer data)
{
  FpLabel *label = data;

  for (guint i = 0; i < label->n_lines; i++)
    g_free (label->line[i]);
}

GArray *
fp_labels_new (void)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpLabel));

  g_array_set_clear_func (out, clear_label);
  return out;
}

void
fp_labels_place (FpProjection *projection, const FpViewLayout *layout, const gboolean *shows, const GArray *drawn,
                 const FpBox *content, FpLabelsAmong among, const GArray *before, FpCover *room, GArray *out)
{
  Lettering l = { .scene = fp_projection_scene (projection), .layout = layout, .content = content, .room = room,
                  .drawn = drawn, .axis = layout->origin.x, .before = before, .out = out };

  l.own = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  if (among == FP_LABELS_REST)
    letter_sides (&l);
  letter_things (&l, shows, among);
  g_array_unref (l.own);
}
