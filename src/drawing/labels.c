/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "labels-private.h"

#include "thin.h"

#include <math.h>
#include <string.h>

/* How many lines a leader may cross, besides the outline of its own thing: first none, then a few. */
#define CROSSES_MOST 3

/* But no plan without the name of its altar. */
#define CROSSES_TO_ALTAR 9

/* What is small is named at larger scales than this. */
#define SMALL_THINGS 60.0

/* A name longer than this is cut off with an ellipsis. */
#define WIDEST 40.0

/* Names of pews over their rows may be as small as ISO 3098-1 allows, mm. */
#define SMALL_LETTERING 1.8

FpBox
fp_lettered_box (const FpLettering *l, const FpBox *plan)
{
  const FpPoint a = fp_view_to_paper (l->layout, (FpPoint) { plan->x0, plan->y0 });
  const FpPoint b = fp_view_to_paper (l->layout, (FpPoint) { plan->x1, plan->y1 });

  return (FpBox) { MAX (a.x, l->content->x0), MAX (a.y, l->content->y0), MIN (b.x, l->content->x1),
                   MIN (b.y, l->content->y1) };
}

/* --- where one name finds room -------------------------------------------------- */

static gboolean
is_altar (const FpPlaced *placed)
{
  return fp_item_kind (placed->item)->role == FP_ROLE_ALTAR;
}

static void
gather_own (FpLettering *l, guint index)
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
G_STATIC_ASSERT (N_WAYS == FP_LABEL_WAYS);

static gboolean
find_inside (FpLettering *l, FpLabel *label, const FpBox *thing, const FpLabelWords *way, guint first)
{
  for (guint i = first; i < first + FP_LABEL_LINES; i++)
    {
      l->words = &way[i];
      if (fp_label_try_inside (l, label, thing))
        return TRUE;
    }
  return FALSE;
}

static gboolean
find_beside (FpLettering *l, FpLabel *label, const FpBox *thing, const FpLabelWords *way, guint last, guint crosses)
{
  for (l->crosses = 0; l->crosses <= crosses; l->crosses += crosses)
    for (guint i = ONE_LINE; i <= last; i++)
      {
        l->words = &way[i];
        if (fp_label_try_around (l, label, thing))
          return TRUE;
      }
  return FALSE;
}

/* What stands at a wall, where within the walls there is no room for its name. */
static gboolean
find_outside (FpLettering *l, FpLabel *label, const FpBox *thing, const FpLabelWords *way)
{
  if (l->outside == NULL || fp_item_kind (l->placed->item)->role == FP_ROLE_PEWS)
    return FALSE;
  for (guint i = ONE_LINE; i <= TWO_LINES; i++)
    {
      l->words = &way[i];
      if (l->words->n > 0 && fp_label_try_outside (l, label, thing))
        return TRUE;
    }
  return FALSE;
}

/* Over its rows, which give way to the name. */
static gboolean
find_over (FpLettering *l, FpLabel *label, const FpBox *thing, const FpLabelWords *way, guint first, guint index)
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
find_place (FpLettering *l, FpLabel *label, const FpBox *thing, const FpLabelWords *way, guint index)
{
  const gboolean crowded = fp_is_crowded (l->placed, l->layout->scale);

  if (fp_label_naming (l->placed) != FP_NAMED)
    return find_beside (l, label, thing, way, TWO_LINES, CROSSES_MOST)
           || (fp_label_naming (l->placed) == FP_NAMED_BESIDE && find_outside (l, label, thing, way));
  for (l->over_axis = FALSE; l->over_axis <= TRUE; l->over_axis++)
    if ((crowded && find_over (l, label, thing, way, ONE_LINE, index))
        || (crowded && find_over (l, label, thing, way, ONE_SMALL, index))
        || find_inside (l, label, thing, way, ONE_LINE)
        || find_beside (l, label, thing, way, l->over_axis ? THREE_LINES : TWO_LINES, CROSSES_MOST)
        || find_over (l, label, thing, way, ONE_LINE, index) || find_over (l, label, thing, way, ONE_SMALL, index))
      return TRUE;
  return find_outside (l, label, thing, way) || find_beside (l, label, thing, way, SHORTENED, CROSSES_MOST)
         || (is_altar (l->placed) && find_beside (l, label, thing, way, SHORTENED, CROSSES_TO_ALTAR));
}

/* --- where it stood before ------------------------------------------------------ */

/* What had to be cut short is tried anew: there may be room for the whole of it now. */
static const FpLabelPlace *
place_before (const FpLettering *l, const FpPlaced *placed)
{
  for (guint i = 0; l->before != NULL && i < l->before->len; i++)
    {
      const FpLabelPlace *before = &g_array_index (l->before, FpLabelPlace, i);

      if (g_strcmp0 (before->item, fp_item_id (placed->item)) == 0)
        return before->way == SHORTENED ? NULL : before;
    }
  return NULL;
}

static FpPoint
shifted (FpPoint p, FpPoint from, FpPoint to)
{
  return (FpPoint) { p.x + to.x - from.x, p.y + to.y - from.y };
}

/* It goes with its thing. */
static gboolean
find_as_before (FpLettering *l, FpLabel *label, const FpLabelPlace *before, guint index)
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
          && (before->has_leader || fp_label_is_inside (l, shifted (before->middle, before->thing, l->thing), before->turn))
          && fp_label_try (l, label, shifted (before->middle, before->thing, l->thing), before->turn);
  l->over_axis = FALSE;
  l->over_owner = 0;
  return found;
}

/* --- one name ------------------------------------------------------------------- */

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
is_worth_naming (const FpLettering *l, const FpPlaced *placed)
{
  const FpRole role = fp_item_kind (placed->item)->role;

  return l->layout->scale <= FP_LABEL_SMALL || role == FP_ROLE_ALTAR || role == FP_ROLE_PEWS || role == FP_ROLE_GALLERY
         || role == FP_ROLE_STANDING_ROOM || role == FP_ROLE_WHEELCHAIR;
}

static gboolean
may_be_lettered (const FpLettering *l, const FpPlaced *placed)
{
  const FpBox thing = fp_lettered_box (l, &placed->plan);

  return thing.x1 - thing.x0 >= 0.8 && thing.y1 - thing.y0 >= 0.8 && is_worth_naming (l, placed);
}

/* @as_before: only where it stood before */
static void
letter_thing (FpLettering *l, const FpPlaced *placed, guint index, const FpLabelPlace *as_before)
{
  const FpBox thing = fp_lettered_box (l, &placed->plan);
  FpLabel label = { .item = g_intern_string (fp_item_id (placed->item)), .standing = placed->standing };
  FpLabelWords way[N_WAYS];

  if (!may_be_lettered (l, placed))
    return;
  l->placed = placed;
  l->thing = (FpPoint) { (thing.x0 + thing.x1) / 2, (thing.y0 + thing.y1) / 2 };
  l->ways = way;
  memset (l->beside, 0, sizeof l->beside);
  gather_own (l, index);
  set_ways (fp_item_name (placed->item), way);
  if (as_before != NULL ? find_as_before (l, &label, as_before, index) : find_place (l, &label, &thing, way, index))
    g_array_append_val (l->out, label);
  for (guint i = 0; i < N_WAYS; i++)
    fp_label_words_clear (&way[i]);
}

/* --- which names, and in which order -------------------------------------------- */

static gboolean
is_among (const FpLettering *l, const FpPlaced *placed, FpLabelsAmong among)
{
  const FpNaming naming = placed->ghost ? FP_NOT_NAMED : fp_label_naming (placed);

  if (l->layout->no_seat_names && fp_kind_sort (fp_item_kind (placed->item)) == FP_SORT_SEATS)
    return FALSE;
  switch (among)
    {
    case FP_LABELS_ALTAR: return naming == FP_NAMED && is_altar (placed);
    case FP_LABELS_REST: return naming == FP_NAMED || naming == FP_NAMED_BESIDE;
    case FP_LABELS_SMALL: return naming == FP_NAMED_LAST && l->layout->scale <= SMALL_THINGS;
    }
  return FALSE;
}

/* The altar; then what stands on the floor before what stands on other things; then the order of the offices; what is
 * overhead comes last. */
static int
compare_placed (gconstpointer a, gconstpointer b, gpointer data)
{
  const FpPlaced *all = data, *p = &all[*(const guint *) a], *q = &all[*(const guint *) b];
  const gboolean p_high = p->support >= 0 && !(fp_item_kind (p->item)->flags & FP_KIND_ON_FLOOR);
  const gboolean q_high = q->support >= 0 && !(fp_item_kind (q->item)->flags & FP_KIND_ON_FLOOR);

  if (is_altar (p) != is_altar (q))
    return is_altar (p) ? -1 : 1;
  if ((fp_label_naming (p) == FP_NAMED_BESIDE) != (fp_label_naming (q) == FP_NAMED_BESIDE))
    return fp_label_naming (p) == FP_NAMED_BESIDE ? 1 : -1;
  if (p_high != q_high)
    return p_high ? 1 : -1;
  return (int) fp_item_kind (p->item)->role - (int) fp_item_kind (q->item)->role;
}

static gboolean
has_name (const FpLettering *l, const FpPlaced *placed)
{
  for (guint i = 0; i < l->out->len; i++)
    if (g_strcmp0 (g_array_index (l->out, FpLabel, i).item, fp_item_id (placed->item)) == 0)
      return TRUE;
  return FALSE;
}

/* The name of a gradine would be read as that of the altar that has none. */
static gboolean
stands_on_nameless_altar (const FpLettering *l, const FpPlaced *placed, guint index)
{
  int on = placed[index].support;

  while (on >= 0 && !is_altar (&placed[on]))
    on = placed[on].support;
  return on >= 0 && !has_name (l, &placed[on]);
}

/* All of it is dashed. */
static gboolean
is_overhead (const FpLettering *l, const FpPlaced *placed, guint index)
{
  if (fp_label_naming (placed) == FP_NAMED_BESIDE)
    for (guint i = 0; i < l->drawn->len; i++)
      if (g_array_index (l->drawn, FpProjectedLine, i).owner == index)
        return TRUE;
  return FALSE;
}

static guint
letter_things (FpLettering *l, const gboolean *shows, FpLabelsAmong among)
{
  guint n, lacking = 0;
  const FpPlaced *placed = fp_scene_placed (l->scene, &n);
  g_autoptr (GArray) order = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < n; i++)
    if (is_among (l, &placed[i], among) && (shows[i] || is_overhead (l, &placed[i], i)))
      g_array_append_val (order, i);
  g_array_sort_with_data (order, compare_placed, (gpointer) placed);
  for (int again = 0; again < 2; again++)
    for (guint i = 0; i < order->len; i++)
      {
        const guint index = g_array_index (order, guint, i);
        const FpLabelPlace *before = again ? NULL : place_before (l, &placed[index]);
        if ((again || before != NULL) && !has_name (l, &placed[index]) && !stands_on_nameless_altar (l, placed, index))
          letter_thing (l, &placed[index], index, before);
        lacking += again && may_be_lettered (l, &placed[index]) && !has_name (l, &placed[index]) ? 1 : 0;
      }
  return lacking;
}

/* --- all ------------------------------------------------------------------------ */

void
fp_labels_add_boxes (const GArray *labels, FpBox *box)
{
  for (guint i = 0; i < labels->len; i++)
    {
      const FpLabel *label = &g_array_index (labels, FpLabel, i);
      const double along_x = cos (label->turn * G_PI / 180), along_y = sin (label->turn * G_PI / 180);

      for (guint line = 0; line < label->n_lines; line++)
        {
          const double half = fp_lettering_width (label->line[line], label->lettering) / 2;

          fp_box_add_point (box, (FpPoint) { label->at[line].x - half * along_x, label->at[line].y - half * along_y });
          fp_box_add_point (box, (FpPoint) { label->at[line].x + half * along_x, label->at[line].y + half * along_y });
        }
    }
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

guint
fp_labels_place (FpProjection *projection, const FpViewLayout *layout, const gboolean *shows, const GArray *drawn,
                 const FpBox *content, const FpBox *outside, FpLabelsAmong among, const GArray *before, FpCover *room,
                 GArray *out)
{
  FpLettering l = { .scene = fp_projection_scene (projection), .layout = layout, .content = content,
                  .outside = outside, .room = room,
                  .drawn = drawn, .axis = layout->origin.x, .before = before, .out = out };

  guint lacking;

  l.own = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  if (among == FP_LABELS_REST)
    fp_letter_sides (&l);
  lacking = letter_things (&l, shows, among);
  g_array_unref (l.own);
  return lacking;
}
