/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "set-marks.h"

#include "dimension-line.h"

#include "footpace/order-marks.h"
#include "footpace/order.h"

#include <math.h>

#define OWNER  600000
#define TRIES  4u

typedef struct
{
  const FpScene      *scene;
  const FpSetting    *setting;
  const FpPlaced     *placed;
  guint               n_placed;
  const FpViewLayout *layout;
  FpViewId            view;
  const gboolean     *shows;
  FpCover            *room;
  GArray             *out;
} Setting;

static void
clear_mark (gpointer data)
{
  FpSetMark *mark = data;

  g_free (mark->drape);
  g_free (mark->text);
}

static FpPoint
on_paper (const Setting *s, FpVec3 p)
{
  return fp_view_to_paper (s->layout, fp_layout_point (s->layout, s->view, p));
}

static FpSetMark
mark_of (const Setting *s, FpSetMarkType type, guint thing)
{
  return (FpSetMark) { .type = type, .item = g_intern_string (fp_item_id (s->placed[thing].item)),
                       .standing = s->placed[thing].standing };
}

/* --- words ---------------------------------------------------------------------- */

static gboolean
take (const Setting *s, const FpBox *box)
{
  if (!fp_cover_text_is_free (s->room, box, OWNER + s->out->len))
    return FALSE;
  fp_cover_take_text (s->room, box, OWNER + s->out->len);
  return TRUE;
}

/* About one of those points, the first where it is free; @text is taken. */
static void
add_word (Setting *s, guint thing, FpPoint anchor, const FpPoint *by, guint n, char *text)
{
  FpSetMark mark = mark_of (s, FP_SET_WORD, thing);

  mark.anchor = anchor;
  mark.text = text;
  for (guint i = 0; i < n; i++)
    {
      const FpBox box = fp_set_word_box (text, (FpPoint) { anchor.x + by[i].x, anchor.y + by[i].y });

      mark.by = by[i];
      if (!take (s, &box))
        continue;
      g_array_append_val (s->out, mark);
      return;
    }
  g_free (text);
}

/* --- veils ---------------------------------------------------------------------- */

/* What is veiled is the image, not what it stands on: a cross down to the feet of its figure. */
static double
foot_of_image (const FpPlaced *thing, const FpSolid *solid)
{
  double foot = G_MAXDOUBLE, all = G_MAXDOUBLE;

  for (guint i = thing->first_solid; i < thing->first_solid + thing->n_solids; i++)
    {
      const FpBox3 box = fp_solid_box (&solid[i]);

      all = MIN (all, box.lo.z);
      if (solid[i].part == FP_PART_CORPUS)
        foot = MIN (foot, box.lo.z);
    }
  return foot < G_MAXDOUBLE ? foot : all;
}

/* A cloth thrown over it hangs straight from one point that stands out to the next. */
static FpPoint *
drape_of (const Setting *s, const FpPlaced *thing, guint *n)
{
  const FpSolid *solid = fp_scene_solids (s->scene, NULL);
  const double foot = foot_of_image (thing, solid);
  FpPoint *pt = g_new (FpPoint, 8 * thing->n_solids + 1);

  *n = 0;
  for (guint i = thing->first_solid; i < thing->first_solid + thing->n_solids; i++)
    {
      const FpBox3 box = fp_solid_box (&solid[i]);

      if (solid[i].part == FP_PART_SUPPORT || box.hi.z <= foot)
        continue;
      for (guint k = 0; k < 8; k++)
        pt[(*n)++] = on_paper (s, (FpVec3) { k & 1 ? box.hi.x : box.lo.x, k & 2 ? box.hi.y : box.lo.y,
                                             k & 4 ? box.hi.z : MAX (box.lo.z, foot) });
    }
  *n = fp_hull (pt, *n);
  return pt;
}

static FpBox
box_of (const FpPoint *pt, guint n)
{
  FpBox box = FP_BOX_EMPTY;

  for (guint i = 0; i < n; i++)
    fp_box_add_point (&box, pt[i]);
  return box;
}

static char *
veil_words (FpColour colour)
{
  return colour == FP_COLOUR_UNSAID ? g_strdup ("veiled") : g_strdup_printf ("veiled, %s", fp_colour_id (colour));
}

static void
add_veil (Setting *s, guint thing, gboolean words)
{
  FpSetMark mark = mark_of (s, FP_SET_VEIL, thing);
  FpBox box;

  mark.drape = drape_of (s, &s->placed[thing], &mark.n_drape);
  mark.colour = fp_setting_colour (s->setting, NULL);
  if (mark.n_drape < 3)
    {
      g_free (mark.drape);
      return;
    }
  g_array_append_val (s->out, mark);
  box = box_of (mark.drape, mark.n_drape);
  if (words)
    {
      g_autofree char *text = veil_words (mark.colour);
      const double wide = fp_lettering_width (text, FP_SET_WORD_HIGH);
      const double up = (box.y1 - box.y0) / 2 + FP_SET_WORD_HIGH, aside = (box.x1 - box.x0 + wide) / 2 + 2 * FP_SET_AIR;
      const FpPoint by[] = { { 0, up }, { aside, 0 }, { -aside, 0 }, { 0, 0 }, { 0, -up } };

      add_word (s, thing, (FpPoint) { (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 }, by, G_N_ELEMENTS (by),
                g_steal_pointer (&text));
    }
}

/* --- what is of the colour of the day --------------------------------------------- */

static gboolean
has_colour (FpRole role)
{
  return role == FP_ROLE_FRONTAL || role == FP_ROLE_TABERNACLE_VEIL;
}

/* Within it, or not at all: it tells no other's colour. */
static void
add_colour (Setting *s, guint thing)
{
  const FpColour colour = fp_setting_colour_of (s->setting, fp_item_kind (s->placed[thing].item)->role);
  g_autofree FpPoint *pt = NULL;
  g_autofree char *text = colour == FP_COLOUR_UNSAID ? g_strdup ("colour of the day") : g_strdup (fp_colour_id (colour));
  guint n;
  FpBox box;

  pt = drape_of (s, &s->placed[thing], &n);
  box = box_of (pt, n);
  if (n > 2 && box.x1 - box.x0 > fp_lettering_width (text, FP_SET_WORD_HIGH) + 2 * FP_SET_AIR
      && box.y1 - box.y0 > FP_SET_WORD_HIGH + 2 * FP_SET_AIR)
    {
      const double down = (box.y1 - box.y0) / 4;
      const FpPoint by[] = { { 0, 0 }, { 0, -down }, { 0, down } };

      add_word (s, thing, (FpPoint) { (box.x0 + box.x1) / 2, (box.y0 + box.y1) / 2 }, by, G_N_ELEMENTS (by),
                g_steal_pointer (&text));
    }
}

/* --- lights ----------------------------------------------------------------------- */

/* Of candelabra one label tells all that are lit one after the other on one side. */
static gboolean
goes_with (const Setting *s, const FpOrderLight *a, const FpOrderLight *b)
{
  return a->owner == b->owner && a->side == b->side
         && fp_item_kind (s->placed[a->owner].item)->role == FP_ROLE_BRANCHED_LIGHTS;
}

/* Over the middle of all that goes with it, told by the first of them; FALSE where it is not that. */
static gboolean
set_number (const Setting *s, const FpOrderLight *light, guint n, guint i, FpSetMark *mark)
{
  FpBox box = FP_BOX_EMPTY;

  mark->first = mark->last = light[i].number;
  for (guint k = 0; k < n; k++)
    if (k == i || goes_with (s, &light[k], &light[i]))
      {
        if (k < i)
          return FALSE;
        fp_box_add_point (&box, on_paper (s, light[k].at));
        mark->first = MIN (mark->first, light[k].number);
        mark->last = MAX (mark->last, light[k].number);
      }
  mark->anchor = (FpPoint) { (box.x0 + box.x1) / 2, box.y1 };
  return TRUE;
}

/* Over its flame, or over the number that stands there. */
static void
add_number (Setting *s, FpSetMark *mark)
{
  const double half = mark->first == mark->last ? FP_SET_NUMBER_HIGH
                                                : fp_order_range_half (FP_SET_NUMBER_HIGH, mark->first, mark->last);

  for (guint i = 0; i < TRIES; i++)
    {
      const FpPoint by = { 0, FP_SET_FLAME_HIGH + FP_SET_NUMBER_HIGH * 1.1 + i * (2 * FP_SET_NUMBER_HIGH + FP_SET_AIR) };
      const FpPoint at = { mark->anchor.x, mark->anchor.y + by.y };
      const FpBox box = { at.x - half, at.y - FP_SET_NUMBER_HIGH, at.x + half, at.y + FP_SET_NUMBER_HIGH };

      mark->by = by;
      if (!take (s, &box))
        continue;
      g_array_append_val (s->out, *mark);
      return;
    }
}

/* Numbers are told in the elevation: in the others candles stand before each other. */
static void
add_lights (Setting *s)
{
  const FpOrderSpec usual = FP_ORDER_USUAL;
  g_autoptr (FpOrder) order = fp_order_new (s->scene, &usual);
  guint n;
  const FpOrderLight *light = fp_order_lights (order, &n);

  for (guint i = 0; i < n; i++)
    {
      FpSetMark flame = mark_of (s, FP_SET_FLAME, light[i].owner), number = mark_of (s, FP_SET_NUMBER, light[i].owner);

      if (!s->shows[light[i].owner])
        continue;
      flame.anchor = on_paper (s, light[i].at);
      g_array_append_val (s->out, flame);
      if (s->view == FP_VIEW_ELEVATION && set_number (s, light, n, i, &number))
        add_number (s, &number);
    }
}

char *
fp_set_marks_words (const FpScene *scene, const FpViewLayout *layout, FpViewId view)
{
  const FpOrderSpec usual = FP_ORDER_USUAL;

  if (fp_scene_setting (scene) == NULL || view != FP_VIEW_ELEVATION || layout->scale > FP_SET_SMALLEST)
    return NULL;
  return g_strdup_printf ("candles numbered as one server lights them, %s first", fp_altar_side_label (usual.first));
}

/* --- all of it ----------------------------------------------------------------------- */

GArray *
fp_set_marks_place (const FpScene *scene, const FpViewLayout *layout, FpViewId view, const gboolean *shows, gboolean words,
                    FpCover *room)
{
  Setting s = { scene, fp_scene_setting (scene), NULL, 0, layout, view, shows, room,
                g_array_new (FALSE, FALSE, sizeof (FpSetMark)) };

  g_array_set_clear_func (s.out, clear_mark);
  if (s.setting == NULL)
    return s.out;
  s.placed = fp_scene_placed (scene, &s.n_placed);
  for (guint i = 0; i < s.n_placed; i++)
    {
      const FpSetThing *thing = s.placed[i].ghost || !shows[i] ? NULL
                                                               : fp_setting_find (s.setting, fp_item_id (s.placed[i].item));

      if (thing != NULL && thing->veiled)
        add_veil (&s, i, words && view != FP_VIEW_PLAN);
      else if (thing != NULL && words && view == FP_VIEW_ELEVATION && has_colour (fp_item_kind (s.placed[i].item)->role))
        add_colour (&s, i);
    }
  if (view != FP_VIEW_PLAN && words)
    add_lights (&s);
  return s.out;
}

void
fp_set_marks_grow (GArray *marks, double times)
{
  for (guint i = 0; i < marks->len; i++)
    {
      FpSetMark *mark = &g_array_index (marks, FpSetMark, i);

      mark->anchor = (FpPoint) { mark->anchor.x * times, mark->anchor.y * times };
      for (guint k = 0; k < mark->n_drape; k++)
        mark->drape[k] = (FpPoint) { mark->drape[k].x * times, mark->drape[k].y * times };
    }
}

void
fp_set_marks_move (GArray *marks, FpPoint by)
{
  for (guint i = 0; i < marks->len; i++)
    {
      FpSetMark *mark = &g_array_index (marks, FpSetMark, i);

      mark->anchor = (FpPoint) { mark->anchor.x + by.x, mark->anchor.y + by.y };
      for (guint k = 0; k < mark->n_drape; k++)
        mark->drape[k] = (FpPoint) { mark->drape[k].x + by.x, mark->drape[k].y + by.y };
    }
}
