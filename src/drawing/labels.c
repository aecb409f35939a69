/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "labels.h"

#include "text-fit.h"
#include "tiers.h"

/* Paper mm kept between a text and any line, and another text. */
#define CLEAR 0.5
#define APART 1.6

/* How many lines a leader may cross, besides the outline of its own thing: first none, then a few. */
#define CROSSES_MOST 3

/* Distances of a text from its thing, tried in turn. */
static const double DISTANCES[] = { 3, 6, 10 };

/* A name longer than this is cut off with an ellipsis. */
#define WIDEST 45.0

#define OWNER 200000

typedef struct
{
  const FpScene      *scene;
  const FpViewLayout *layout;
  const FpBox        *content;
  FpCover            *room;
  guint               crosses; /* lines that a leader may cross */
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
  label->at = turn == 0 ? (FpPoint) { middle.x, middle.y - half } : (FpPoint) { middle.x + half, middle.y };
  fp_cover_take_text (l->room, &box, owner);
  if (label->has_leader)
    fp_cover_take_line (l->room, label->leader[0], label->leader[1], owner);
  return TRUE;
}

/* --- inside and beside ----------------------------------------------------------------- */

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
        if (try_at (l, label, middle, width, turn))
          return TRUE;
      }
  return FALSE;
}

/* The text in the direction (dx, dy), each -1, 0 or 1, at a distance from the thing. */
static gboolean
try_beside (Lettering *l, FpLabel *label, const FpBox *thing, double width, double distance, int dx, int dy)
{
  const double half_w = width / 2, half_h = FP_LABEL_HEIGHT / 2;
  const FpPoint middle = { (thing->x0 + thing->x1) / 2, (thing->y0 + thing->y1) / 2 };
  /* The leader begins on the edge, a little inside, and ends before the text. */
  const FpPoint from = { dx == 0 ? middle.x : dx > 0 ? thing->x1 - 0.4 : thing->x0 + 0.4,
                         dy == 0 ? middle.y : dy > 0 ? thing->y1 - 0.4 : thing->y0 + 0.4 };
  const FpPoint text = { dx == 0 ? middle.x : (dx > 0 ? thing->x1 : thing->x0) + dx * (distance + half_w),
                         dy == 0 ? middle.y : (dy > 0 ? thing->y1 : thing->y0) + dy * (distance + half_h) };

  label->has_leader = TRUE;
  label->leader[0] = from;
  label->leader[1] = (FpPoint) { dx == 0 ? middle.x : text.x - dx * (half_w + 0.8),
                                 dx != 0 ? text.y : text.y - dy * (half_h + 0.8) };
  return try_at (l, label, text, width, 0);
}

static gboolean
try_around (Lettering *l, FpLabel *label, const FpBox *thing, double width)
{
  static const int ways[][2] = { { 1, 0 }, { -1, 0 }, { 0, -1 }, { 0, 1 }, { 1, -1 }, { -1, -1 }, { 1, 1 }, { -1, 1 } };

  for (l->crosses = 0; l->crosses <= CROSSES_MOST; l->crosses += CROSSES_MOST)
    for (guint d = 0; d < G_N_ELEMENTS (DISTANCES); d++)
      for (guint w = 0; w < G_N_ELEMENTS (ways); w++)
        if (try_beside (l, label, thing, width, DISTANCES[d], ways[w][0], ways[w][1]))
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
letter_thing (Lettering *l, const FpPlaced *placed)
{
  const FpBox thing = paper_box (l, &placed->plan);
  FpLabel label = { g_intern_string (fp_item_id (placed->item)), placed->standing, NULL, { 0, 0 }, 0, FALSE, { { 0, 0 } } };
  double width;

  if (thing.x1 - thing.x0 < 0.8 || thing.y1 - thing.y0 < 0.8)
    return;
  label.text = fp_lettering_shorten (fp_item_name (placed->item), FP_LABEL_HEIGHT, WIDEST);
  width = fp_lettering_width (label.text, FP_LABEL_HEIGHT);
  if (try_inside (l, &label, &thing, width, 0) || try_inside (l, &label, &thing, width, 90)
      || try_around (l, &label, &thing, width))
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
    letter_thing (l, &placed[g_array_index (order, guint, i)]);
}

/* --- the two sides --------------------------------------------------------------------------- */

/* On the free floor between the altar and the edge of the sanctuary, as near the line of the altar's front as can be. */
static void
letter_side (Lettering *l, const FpBox *altar, const FpBox *sanctuary, gboolean gospel)
{
  const char *text = gospel ? "GOSPEL SIDE" : "EPISTLE SIDE";
  const double width = fp_lettering_width (text, FP_LABEL_HEIGHT);
  const double near = gospel ? altar->x0 : altar->x1;
  const double far = gospel ? sanctuary->x0 : sanctuary->x1;
  FpLabel label = { NULL, FP_STANDING_EXISTING, NULL, { 0, 0 }, 0, FALSE, { { 0, 0 } } };
  static const double shares[] = { 0.5, 0.6, 0.7, 0.8, 0.9, 0.4, 0.3, 0.2 };

  for (double y = altar->y0; y > sanctuary->y0 + 3; y -= 5)
    for (guint i = 0; i < G_N_ELEMENTS (shares); i++)
      if (try_at (l, &label, (FpPoint) { near + (far - near) * shares[i], y }, width, 0))
        {
          label.text = g_strdup (text);
          g_array_append_val (l->out, label);
          return;
        }
}

static void
letter_sides (Lettering *l)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (l->scene, &n);
  const int altar = fp_scene_role (l->scene, FP_ROLE_ALTAR);
  const FpBox3 box = fp_scene_sanctuary (l->scene);
  const FpBox plan = { box.lo.x, box.lo.y, box.hi.x, box.hi.y };
  FpBox at, sanctuary;

  if (altar < 0)
    return;
  at = paper_box (l, &placed[altar].plan);
  sanctuary = paper_box (l, &plan);
  letter_side (l, &at, &sanctuary, TRUE);
  letter_side (l, &at, &sanctuary, FALSE);
}

static void
clear_label (gpointer label)
{
  g_free (((FpLabel *) label)->text);
}

GArray *
fp_labels_place (const FpScene *scene, const FpViewLayout *layout, const gboolean *shows, const FpBox *content,
                 FpCover *room)
{
  Lettering l = { scene, layout, content, room, 0, g_array_new (FALSE, FALSE, sizeof (FpLabel)) };

  g_array_set_clear_func (l.out, clear_label);
  letter_sides (&l);
  letter_things (&l, shows);
  return l.out;
}

void
fp_labels_draw (FpDrawing *drawing, const GArray *labels, FpViewId view)
{
  for (guint i = 0; i < labels->len; i++)
    {
      const FpLabel *label = &g_array_index (labels, FpLabel, i);
      fp_drawing_set_item (drawing, label->item, label->standing, (int) view);
      if (label->has_leader)
        {
          fp_drawing_line (drawing, FP_PEN_DIMENSION, label->leader[0], label->leader[1]);
          fp_drawing_circle (drawing, FP_PEN_HATCH, FP_FILL_INK, label->leader[0], 0.45);
        }
      fp_drawing_text (drawing, label->at, FP_LABEL_HEIGHT, label->turn, FP_ALIGN_MIDDLE, label->text);
    }
  fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, (int) view);
}
