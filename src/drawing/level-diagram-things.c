/* SPDX-License-Identifier: GPL-3.0-or-later */
/* level-diagram-things.c - altar, rail and reredos in the diagram of levels, and their names */
#include "level-diagram-lay.h"

#include "dimension-line.h"

#define NAME_GAP   1.3 /* paper mm, from a thing to its name; design judgement */
#define NAME_OWNER 3u

void
fp_level_altar_draw (const FpLevelLay *l)
{
  const FpPlaced *altar = l->of->altar;
  const FpPoint low = fp_level_point (l, altar->plan.y0, altar->level);
  const FpPoint high = fp_level_point (l, altar->plan.y1, fp_level_diagram_mensa (l->of));
  const FpPoint corner[4] = { low, { high.x, low.y }, high, { low.x, high.y } };

  fp_drawing_set_item (l->drawing, fp_item_id (altar->item), altar->standing, -1);
  fp_drawing_area (l->drawing, FP_PEN_OUTLINE, FP_FILL_TINT, 0, corner, 4);
  fp_drawing_set_item (l->drawing, NULL, FP_STANDING_EXISTING, -1);
  fp_cover_add_filled (l->cover, corner, 4);
  for (guint i = 0; i < 4; i++)
    fp_cover_add_object (l->cover, corner[i], corner[(i + 1) % 4], FP_LEVEL_OBJECT);
}

/* As high as the diagram: what rises over it is drawn open at its top. */
static gboolean
box_of_thing (const FpLevelLay *l, const FpPlaced *placed, FpBox *box)
{
  const FpPoint low = fp_level_point (l, placed->plan.y1, placed->level);
  const FpPoint high = fp_level_point (l, placed->plan.y0, placed->level + placed->extent.height);

  *box = (FpBox) { MAX (low.x, l->content.x0), low.y, MIN (high.x, l->content.x1), MIN (high.y, l->content.y1) };
  return box->x1 > box->x0 && box->y1 > box->y0;
}

static gboolean
is_shown (const FpPlaced *placed)
{
  const FpRole role = fp_item_kind (placed->item)->role;

  return !placed->ghost && (role == FP_ROLE_RAIL || role == FP_ROLE_REREDOS);
}

static void
draw_thing (const FpLevelLay *l, const FpPlaced *placed)
{
  const gboolean open = fp_level_point (l, 0, placed->level + placed->extent.height).y > l->content.y1 + 0.01;
  FpBox box;

  if (!box_of_thing (l, placed, &box))
    return;
  fp_drawing_set_item (l->drawing, fp_item_id (placed->item), placed->standing, -1);
  fp_level_line (l, FP_PEN_EDGE, (FpPoint) { box.x0, box.y0 }, (FpPoint) { box.x0, box.y1 });
  fp_level_line (l, FP_PEN_EDGE, (FpPoint) { box.x1, box.y0 }, (FpPoint) { box.x1, box.y1 });
  if (!open)
    fp_level_line (l, FP_PEN_EDGE, (FpPoint) { box.x0, box.y1 }, (FpPoint) { box.x1, box.y1 });
  fp_drawing_set_item (l->drawing, NULL, FP_STANDING_EXISTING, -1);
}

void
fp_level_things_draw (const FpLevelLay *l)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (l->of->scene, &n);

  for (guint i = 0; i < n; i++)
    if (is_shown (&placed[i]))
      draw_thing (l, &placed[i]);
}

/* --- names -------------------------------------------------------------------------------- */

typedef struct { FpPoint at; FpAlign align; } NameSpot;

/* Over it, or beside its top, where there is room. */
static void
draw_name (const FpLevelLay *l, const FpBox *box, const char *name)
{
  const double over = box->y1 + NAME_GAP, beside = box->y1 - FP_LEVEL_LETTERS, width = fp_lettering_width (name, FP_LEVEL_LETTERS);
  const NameSpot spots[] = {
    { { (box->x0 + box->x1) / 2, over }, FP_ALIGN_MIDDLE }, { { box->x0, over }, FP_ALIGN_LEFT },
    { { box->x1, over }, FP_ALIGN_RIGHT },                  { { box->x1 + NAME_GAP, beside }, FP_ALIGN_LEFT },
    { { box->x0 - NAME_GAP, beside }, FP_ALIGN_RIGHT },     { { box->x1 + NAME_GAP, over }, FP_ALIGN_LEFT },
    { { box->x0 - NAME_GAP, over }, FP_ALIGN_RIGHT },
  };

  for (guint i = 0; i < G_N_ELEMENTS (spots); i++)
    {
      const FpBox words = fp_lettering_box (spots[i].at, width, FP_LEVEL_LETTERS, 0, spots[i].align);

      if (words.x0 < l->room.x0 || words.x1 > l->room.x1 || !fp_cover_is_blank (l->cover, &words, 0)
          || !fp_cover_text_is_free (l->cover, &words, 0))
        continue;
      fp_drawing_text (l->drawing, spots[i].at, FP_LEVEL_LETTERS, 0, spots[i].align, name);
      fp_cover_take_text (l->cover, &words, NAME_OWNER);
      return;
    }
}

static void
name_thing (const FpLevelLay *l, guint i)
{
  const FpPlaced *placed = &fp_scene_placed (l->of->scene, NULL)[i];
  g_autofree char *name = fp_level_diagram_name (l->of, i);
  FpBox box;

  if (box_of_thing (l, placed, &box))
    draw_name (l, &box, name);
}

void
fp_level_names_draw (const FpLevelLay *l)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (l->of->scene, &n);

  if (l->of->altar != NULL)
    name_thing (l, (guint) (l->of->altar - placed));
  for (guint i = 0; i < n; i++)
    if (is_shown (&placed[i]))
      name_thing (l, i);
}
