/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "labels.h"

#include "annotation.h"

#include <math.h>

/* Paper mm kept between a text and any line, and another text. */
#define CLEAR 0.5
#define APART 1.6

/* How many lines a leader may cross, besides the outline of its own thing: first none, then a few. */
#define CROSSES_MOST 3

/* Distances of a text from its thing, tried in turn. */
static const double DISTANCES[] = { 3, 1.8, 6, 10, 15 };

/* A name longer than this is cut off with an ellipsis. */
#define WIDEST 52.0

#define OWNER 200000

/* A longer leader would wander over the drawing; a text farther from a row of pews is not among them, mm. */
#define LEADER_MOST 22.0
#define NEAR_ROWS   5.0

typedef struct
{
  FpProjection       *projection;
  const FpScene      *scene;
  const FpViewLayout *layout;
  const FpBox        *content;
  FpCover            *room;
  guint               crosses; /* lines that a leader may cross */
  double              axis;    /* x of the axis */
  gboolean            over_axis; /* a text may interrupt it */
  const FpPlaced     *placed;  /* the thing that is lettered; NULL */
  GArray             *own;     /* its lines (FpPoint, pairs), paper mm */
  GArray             *out;
} Lettering;

/* --- one text at one place --------------------------------------------------------- */

static gboolean
lies_within (const FpBox *box, const FpBox *in)
{
  return box->x0 >= in->x0 && box->y0 >= in->y0 && box->x1 <= in->x1 && box->y1 <= in->y1;
}

static gboolean
text_is_free (const Lettering *l, const FpBox *box)
{
  const FpBox kept = { box->x0 - CLEAR, box->y0 - CLEAR, box->x1 + CLEAR, box->y1 + CLEAR };
  const FpBox apart = { box->x0 - APART, box->y0 - APART, box->x1 + APART, box->y1 + APART };

  if (!l->over_axis && kept.x0 < l->axis && kept.x1 > l->axis)
    return FALSE;
  return lies_within (&kept, l->content) && fp_cover_text_is_free (l->room, &apart, OWNER + l->out->len)
         && fp_cover_is_blank (l->room, &kept);
}

/* @middle: of the text's box */
static FpBox
box_about (FpPoint middle, double width, double turn)
{
  const double half = FP_LABEL_HEIGHT / 2;
  const FpPoint foot = turn == 0 ? (FpPoint) { middle.x, middle.y - half } : (FpPoint) { middle.x + half, middle.y };

  return fp_lettering_box (foot, width, FP_LABEL_HEIGHT, turn, FP_ALIGN_MIDDLE);
}

/* A leader starts within its thing and crosses the outline; what it may cross besides is limited. */
static gboolean
leader_is_free (const Lettering *l, const FpLabel *label)
{
  const guint crossed = fp_cover_crossings (l->room, label->leader[0], label->leader[1]);

  return crossed <= 1 + l->crosses
         && fp_cover_line_is_free (l->room, label->leader[0], label->leader[1], OWNER + l->out->len);
}

static gboolean
try_at (Lettering *l, FpLabel *label, FpPoint middle, double width, double turn)
{
  const double half = FP_LABEL_HEIGHT / 2;
  const FpBox box = box_about (middle, width, turn);
  const guint owner = OWNER + l->out->len;

  if (!text_is_free (l, &box) || (label->has_leader && !leader_is_free (l, label)))
    return FALSE;
  label->turn = turn;
  label->ground = box;
  label->has_ground = box.x0 - CLEAR < l->axis && box.x1 + CLEAR > l->axis;
  label->at = turn == 0 ? (FpPoint) { middle.x, middle.y - half } : (FpPoint) { middle.x + half, middle.y };
  fp_cover_take_text (l->room, &box, owner);
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

/* The box of a turned thing is larger than the thing, and that of curved rows has empty corners. */
static gboolean
is_inside_thing (const Lettering *l, FpPoint middle, double w, double h)
{
  const FpPoint near = nearest_own (l, middle);

  for (int i = 0; i < 4; i++)
    {
      const FpPoint corner = { middle.x + (i % 2 ? w : -w) / 2, middle.y + (i / 2 ? h : -h) / 2 };
      const FpPoint local = fp_place_unpoint (&l->placed->place, fp_view_from_paper (l->layout, corner));
      const FpBox *plan = &l->placed->extent.plan;
      if (local.x < plan->x0 || local.x > plan->x1 || local.y < plan->y0 || local.y > plan->y1)
        return FALSE;
    }
  return fp_item_kind (l->placed->item)->role != FP_ROLE_PEWS
         || hypot (near.x - middle.x, near.y - middle.y) < NEAR_ROWS;
}

/* From the middle outwards. */
static gboolean
try_inside (Lettering *l, FpLabel *label, const FpBox *in, double width, double turn)
{
  static const double shares[] = { 0.5, 0.35, 0.65, 0.2, 0.8, 0.05, 0.95 };
  const double w = turn == 0 ? width : FP_LABEL_HEIGHT, h = turn == 0 ? FP_LABEL_HEIGHT : width;
  const double free_x = in->x1 - in->x0 - w - 2, free_y = in->y1 - in->y0 - h - 2;

  if (free_x < 0 || free_y < 0)
    return FALSE;
  label->has_leader = FALSE;
  for (guint j = 0; j < G_N_ELEMENTS (shares); j++)
    for (guint i = 0; i < G_N_ELEMENTS (shares); i++)
      {
        const FpPoint middle = { in->x0 + 1 + w / 2 + free_x * shares[i], in->y0 + 1 + h / 2 + free_y * shares[j] };
        const FpBox box = box_about (middle, width, turn);
        if (text_is_free (l, &box) && is_inside_thing (l, middle, w, h) && try_at (l, label, middle, width, turn))
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

static gboolean
try_beside (Lettering *l, FpLabel *label, const FpBox *thing, double width, double distance, const Beside *to)
{
  const double half_w = width / 2, half_h = FP_LABEL_HEIGHT / 2;
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

  const FpBox box = box_about (text, width, 0);
  FpPoint own;

  if (!text_is_free (l, &box))
    return FALSE;
  own = nearest_own (l, from);
  label->has_leader = TRUE;
  label->leader[0] = hypot (own.x - from.x, own.y - from.y) > 1 ? own : from;
  label->leader[1] = (FpPoint) { to->dx == 0 ? on.x + aside : text.x - to->dx * (half_w + 0.8),
                                 to->dx != 0 ? text.y : text.y - to->dy * (half_h + 0.8) };
  return hypot (label->leader[1].x - label->leader[0].x, label->leader[1].y - label->leader[0].y) < LEADER_MOST
         && try_at (l, label, text, width, 0);
}

static gboolean
try_around (Lettering *l, FpLabel *label, const FpBox *thing, double width)
{
  for (l->crosses = 0; l->crosses <= CROSSES_MOST; l->crosses += CROSSES_MOST)
    for (guint d = 0; d < G_N_ELEMENTS (DISTANCES); d++)
      for (guint w = 0; w < G_N_ELEMENTS (BESIDE); w++)
        if (try_beside (l, label, thing, width, DISTANCES[d], &BESIDE[w]))
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
  guint n;
  const FpProjectedLine *line = fp_projection_lines (l->projection, &n);

  g_array_set_size (l->own, 0);
  for (guint i = 0; i < n; i++)
    if (line[i].owner == index)
      {
        FpPoint pt[2] = { fp_view_to_paper (l->layout, line[i].a), fp_view_to_paper (l->layout, line[i].b) };
        if (fp_clip_segment (&pt[0], &pt[1], l->content))
          g_array_append_vals (l->own, pt, 2);
      }
}

static gboolean
find_place (Lettering *l, FpLabel *label, const FpBox *thing, double width)
{
  for (l->over_axis = FALSE; l->over_axis <= TRUE; l->over_axis++)
    if (try_inside (l, label, thing, width, 0) || try_inside (l, label, thing, width, 90)
        || try_around (l, label, thing, width))
      return TRUE;
  return FALSE;
}

static void
letter_thing (Lettering *l, const FpPlaced *placed, guint index)
{
  const FpBox thing = paper_box (l, &placed->plan);
  FpLabel label = { .item = g_intern_string (fp_item_id (placed->item)), .standing = placed->standing };

  if (thing.x1 - thing.x0 < 0.8 || thing.y1 - thing.y0 < 0.8)
    return;
  l->placed = placed;
  gather_own (l, index);
  label.text = fp_lettering_shorten (fp_item_name (placed->item), FP_LABEL_HEIGHT, WIDEST);
  if (find_place (l, &label, &thing, fp_lettering_width (label.text, FP_LABEL_HEIGHT)))
    g_array_append_val (l->out, label);
  else
    g_free (label.text);
}

/* What stands on the floor before what stands on other things, then the order of the offices. */
static int
compare_placed (gconstpointer a, gconstpointer b, gpointer data)
{
  const FpPlaced *all = data, *p = &all[*(const guint *) a], *q = &all[*(const guint *) b];
  const gboolean p_high = p->support >= 0 && !(fp_item_kind (p->item)->flags & FP_KIND_ON_FLOOR);
  const gboolean q_high = q->support >= 0 && !(fp_item_kind (q->item)->flags & FP_KIND_ON_FLOOR);

  if (p_high != q_high)
    return p_high ? 1 : -1;
  return (int) fp_item_kind (p->item)->role - (int) fp_item_kind (q->item)->role;
}

static void
letter_things (Lettering *l, const gboolean *shows)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (l->scene, &n);
  g_autoptr (GArray) order = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < n; i++)
    if (shows[i] && is_named (&placed[i]))
      g_array_append_val (order, i);
  g_array_sort_with_data (order, compare_placed, (gpointer) placed);
  for (guint i = 0; i < order->len; i++)
    letter_thing (l, &placed[g_array_index (order, guint, i)], g_array_index (order, guint, i));
}

/* --- the two sides --------------------------------------------------------------------------- */

typedef struct { const char *text; double near, far, width; } Side;

static gboolean
letter_side (Lettering *l, const Side *side, double y)
{
  static const double shares[] = { 0.5, 0.6, 0.7, 0.8, 0.9, 0.4, 0.3, 0.2 };
  FpLabel label = { .standing = FP_STANDING_EXISTING };

  for (guint i = 0; i < G_N_ELEMENTS (shares); i++)
    if (try_at (l, &label, (FpPoint) { side->near + (side->far - side->near) * shares[i], y }, side->width, 0))
      {
        label.text = g_strdup (side->text);
        g_array_append_val (l->out, label);
        return TRUE;
      }
  return FALSE;
}

/* Both at one height on the free floor beside the altar, as near the line of its front as can be. */
static void
letter_sides (Lettering *l)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (l->scene, &n);
  const int altar = fp_scene_celebrated_altar (l->scene);
  const FpBox3 box = fp_scene_sanctuary (l->scene);
  const FpBox plan = { box.lo.x, box.lo.y, box.hi.x, box.hi.y };
  const FpBox sanctuary = paper_box (l, &plan);
  const FpBox at = altar >= 0 ? paper_box (l, &placed[altar].plan) : sanctuary;
  const double step = 5, most = MAX (at.y0 - sanctuary.y0, sanctuary.y1 - at.y0);
  const Side gospel = { "GOSPEL SIDE", at.x0, sanctuary.x0, fp_lettering_width ("GOSPEL SIDE", FP_LABEL_HEIGHT) };
  const Side epistle = { "EPISTLE SIDE", at.x1, sanctuary.x1, fp_lettering_width ("EPISTLE SIDE", FP_LABEL_HEIGHT) };

  if (altar < 0)
    return;
  for (double away = 0; away < most; away += step)
    for (int sign = -1; sign <= 1; sign += 2)
      {
        const double y = at.y0 + sign * away;
        const guint before = l->out->len;
        FpCoverMark mark = fp_cover_mark (l->room);
        if (y < sanctuary.y0 + 3 || y > sanctuary.y1 - 3)
          continue;
        if (letter_side (l, &gospel, y) && letter_side (l, &epistle, y))
          return;
        fp_cover_reset (l->room, mark);
        g_array_set_size (l->out, before);
      }
}

static void
clear_label (gpointer label)
{
  g_free (((FpLabel *) label)->text);
}

GArray *
fp_labels_place (FpProjection *projection, const FpViewLayout *layout, const gboolean *shows, const FpBox *content,
                 FpCover *room)
{
  Lettering l = { .projection = projection, .scene = fp_projection_scene (projection), .layout = layout,
                  .content = content, .room = room, .axis = layout->origin.x };

  l.own = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  l.out = g_array_new (FALSE, FALSE, sizeof (FpLabel));
  g_array_set_clear_func (l.out, clear_label);
  letter_sides (&l);
  letter_things (&l, shows);
  g_array_unref (l.own);
  return l.out;
}

static void
draw_ground (FpDrawing *drawing, const FpBox *box)
{
  const FpPoint corner[4] = { { box->x0, box->y0 }, { box->x1, box->y0 }, { box->x1, box->y1 }, { box->x0, box->y1 } };

  fp_drawing_area (drawing, FP_PEN_HATCH, FP_FILL_PAPER, 0, corner, 4);
}

void
fp_labels_draw (FpDrawing *drawing, const GArray *labels, FpViewId view)
{
  for (guint i = 0; i < labels->len; i++)
    {
      const FpLabel *label = &g_array_index (labels, FpLabel, i);
      fp_drawing_set_item (drawing, label->item, label->standing, (int) view);
      if (label->has_ground)
        draw_ground (drawing, &label->ground);
      if (label->has_leader)
        {
          fp_drawing_line (drawing, FP_PEN_DIMENSION, label->leader[0], label->leader[1]);
          fp_drawing_circle (drawing, FP_PEN_HATCH, FP_FILL_INK, label->leader[0], 0.45);
        }
      fp_drawing_text (drawing, label->at, FP_LABEL_HEIGHT, label->turn, FP_ALIGN_MIDDLE, label->text);
    }
  fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, (int) view);
}
