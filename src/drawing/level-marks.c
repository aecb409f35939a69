/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "level-marks.h"

#include "dimension-line.h"

#include <math.h>

/* All in paper mm. */
#define FROM      1.5 /* the level line begins this far from the outline       */
#define APEX      3.5 /* from there to the apex of the triangle                */
#define TRIANGLE  2.0 /* its height and half its width: 90 degrees at the apex */
#define TO_TEXT   0.8
#define OVER_LINE 0.9
#define BETWEEN   3.0 /* columns                                               */
#define COLUMNS   2u
#define LONG_VIEW 200.0
/* Owners of dimensions are counted from 1. */
#define OWNER     100000

/* Levels that differ by less are one. */
#define EQUAL 1.0

#define HIGHEST_RANK 1u
#define ALTAR_RANK   3u
#define CEILING_RANK 3u
#define FALLING_RANK 4u

/* --- gathering ---------------------------------------------------------------- */

typedef struct
{
  const FpViewLayout *layout;
  FpViewId            view;
  guint               rank_max;
  gboolean            names;
  GArray             *out;
} Gathering;

static gboolean
is_drawn (const Gathering *g, const FpPlaced *of)
{
  return fp_shows_thing (g->layout->hidden, fp_item_kind (of->item), of->standing);
}

static FpLevelMark *
find_level (const Gathering *g, double level)
{
  for (guint i = 0; i < g->out->len; i++)
    if (fabs (g_array_index (g->out, FpLevelMark, i).level - level) < EQUAL)
      return &g_array_index (g->out, FpLevelMark, i);
  return NULL;
}

static gboolean
lies_in_clip (const FpBox *clip, double level)
{
  return fp_box_is_empty (clip) || (level >= clip->y0 && level <= clip->y1);
}

static void
set_reach (const Gathering *g, const FpPlaced *of, FpLevelMark *mark)
{
  const FpPoint a = fp_layout_point (g->layout, g->view, (FpVec3) { of->plan.x0, of->plan.y0, 0 });
  const FpPoint b = fp_layout_point (g->layout, g->view, (FpVec3) { of->plan.x1, of->plan.y1, 0 });

  mark->near = fp_view_to_paper (g->layout, (FpPoint) { MIN (a.x, b.x), 0 }).x;
  mark->far = fp_view_to_paper (g->layout, (FpPoint) { MAX (a.x, b.x), 0 }).x;
}

static FpLevelMark
mark_of (const Gathering *g, const FpPlaced *of, const char *param, double level, guint rank, const char *name)
{
  const FpPoint at = fp_view_to_paper (g->layout, (FpPoint) { 0, level });
  const gboolean has_param = param != NULL && fp_kind_param_index (fp_item_kind (of->item), param) >= 0;
  g_autofree char *text = fp_level_format (level, g->layout->units);
  FpLevelMark mark = { .level = level, .v = at.y, .rank = rank, .item = g_intern_string (fp_item_id (of->item)),
                       .param = has_param ? g_intern_string (param) : NULL };

  mark.measured = (FpStretch) { .sort = FP_STRETCH_LEVEL, .b = { 0, 0, level }, .item = mark.item };

  g_snprintf (mark.text, sizeof mark.text, "%s%s%s", text, name != NULL ? " " : "", name != NULL ? name : "");
  mark.width = fp_lettering_width (mark.text, FP_FIGURE_HEIGHT);
  set_reach (g, of, &mark);
  return mark;
}

/* Of two things on one level, the one of lower rank number keeps the mark. */
static void
put (Gathering *g, const FpPlaced *of, const char *param, double level, guint rank, const char *name)
{
  FpLevelMark *old = find_level (g, level);
  FpLevelMark mark;

  if (rank > g->rank_max || !lies_in_clip (&g->layout->clip, level) || (old != NULL && old->rank <= rank))
    return;
  mark = mark_of (g, of, param, level, rank, name);
  if (old != NULL)
    *old = mark;
  else
    g_array_append_val (g->out, mark);
}

static void
add (Gathering *g, const FpPlaced *of, const char *param, double level, guint rank)
{
  put (g, of, param, level, rank, NULL);
}

/* One end of a floor that falls: when it is typed over, the @other stays. */
static void
add_end (Gathering *g, const FpPlaced *of, double level, double other, guint rank, const char *name)
{
  FpLevelMark *mark;

  put (g, of, NULL, level, rank, name);
  mark = find_level (g, level);
  if (mark == NULL || mark->item != g_intern_string (fp_item_id (of->item)) || mark->param != NULL)
    return;
  mark->measured.sort = FP_STRETCH_FALL;
  mark->measured.a.z = other;
}

static guint
rank_of_floor (const FpFloor *floor, const FpPlaced *owner)
{
  if (fabs (floor->z) < EQUAL)
    return 0;
  if (fp_item_kind (owner->item)->role == FP_ROLE_FOOTPACE)
    return 1;
  switch (floor->use)
    {
    case FP_FLOOR_MINISTERS: return 2;
    case FP_FLOOR_PEOPLE: return 4;
    case FP_FLOOR_GALLERY: return 5;
    case FP_FLOOR_WAY: return 6;
    case FP_FLOOR_NONE: break;
    }
  return 6;
}

static int
compare_levels (gconstpointer a, gconstpointer b)
{
  const FpLevelMark *p = a, *q = b;

  if (p->rank != q->rank)
    return p->rank < q->rank ? -1 : 1;
  return p->level < q->level ? -1 : p->level > q->level;
}

typedef struct { double low, high; FpPoint high_at; } Ends;

static Ends
ends_of (const FpFloor *floor)
{
  Ends ends = { G_MAXDOUBLE, -G_MAXDOUBLE, { 0, 0 } };

  for (guint i = 0; i < floor->n_outline; i++)
    {
      const FpPoint p = floor->outline[i];
      const double z = floor->z + floor->gx * p.x + floor->gy * p.y;
      ends.low = MIN (ends.low, z);
      if (z > ends.high)
        {
          ends.high = z;
          ends.high_at = p;
        }
    }
  return ends;
}

/* Where the people stand highest decides whether the altar stands above them: it is told even where it lies
 * outside of what is shown, and then by name. */
static void
add_highest (Gathering *g, const FpScene *scene, const FpPlaced *placed)
{
  guint n, highest = G_MAXUINT;
  const FpFloor *floor = fp_scene_floors (scene, &n);
  const FpBox *clip = &g->layout->clip;
  Ends best = { G_MAXDOUBLE, -G_MAXDOUBLE, { 0, 0 } };
  FpPoint at;

  for (guint i = 0; i < n; i++)
    {
      const Ends ends = ends_of (&floor[i]);
      if (!is_drawn (g, &placed[floor[i].owner]) || floor[i].use != FP_FLOOR_PEOPLE || ends.high <= best.high)
        continue;
      best = ends;
      highest = i;
    }
  if (highest == G_MAXUINT || (floor[highest].gx == 0 && floor[highest].gy == 0))
    return;
  at = fp_layout_point (g->layout, g->view, (FpVec3) { best.high_at.x, best.high_at.y, 0 });
  add_end (g, &placed[floor[highest].owner], best.high, best.low, HIGHEST_RANK,
           !g->names || fp_box_is_empty (clip) || (at.x >= clip->x0 && at.x <= clip->x1) ? NULL : "people, highest");
}

/* Both ends of a floor that falls. */
static void
add_falling (Gathering *g, const FpFloor *floor, const FpPlaced *owner)
{
  const Ends ends = ends_of (floor);

  add_end (g, owner, ends.low, ends.high, fabs (ends.low) < EQUAL ? 0 : FALLING_RANK, NULL);
  add_end (g, owner, ends.high, ends.low, fabs (ends.high) < EQUAL ? 0 : FALLING_RANK, NULL);
}

/* Of a way up, where it leads to. */
static gboolean
is_passed (const FpFloor *floor, guint n, guint i)
{
  if (floor[i].use != FP_FLOOR_WAY)
    return FALSE;
  for (guint k = 0; k < n; k++)
    if (floor[k].owner == floor[i].owner && floor[k].gx == 0 && floor[k].gy == 0 && floor[k].z > floor[i].z)
      return TRUE;
  return floor[i].gx != 0 || floor[i].gy != 0;
}

static void
add_floors (Gathering *g, const FpScene *scene, const FpPlaced *placed, const gboolean *shows)
{
  guint n;
  const FpFloor *floor = fp_scene_floors (scene, &n);

  for (guint i = 0; i < n; i++)
    {
      const FpPlaced *owner = &placed[floor[i].owner];
      if (!is_drawn (g, owner) || is_passed (floor, n, i))
        continue;
      /* The datum is told even where its floor lies behind. */
      if (floor[i].gx != 0 || floor[i].gy != 0)
        add_falling (g, &floor[i], owner);
      else if (shows[floor[i].owner] || fabs (floor[i].z) < EQUAL)
        add (g, owner, "level", floor[i].z, rank_of_floor (&floor[i], owner));
    }
}

static void
add_tops (Gathering *g, const FpScene *scene, const FpPlaced *placed, guint n, const gboolean *shows)
{
  const int altar = fp_scene_celebrated_altar (scene);
  const FpPlaced *high = NULL;

  if (altar >= 0 && shows[altar])
    add (g, &placed[altar], "height", placed[altar].level + placed[altar].extent.top, ALTAR_RANK);
  for (guint i = 0; i < n; i++)
    if (shows[i] && !placed[i].ghost && !(fp_item_kind (placed[i].item)->flags & FP_KIND_SURVEY)
        && (high == NULL || placed[i].level + placed[i].extent.height > high->level + high->extent.height))
      high = &placed[i];
  if (high != NULL)
    add (g, high, "height", high->level + high->extent.height, 5);
}

/* Where the walls end, which is where the ceiling begins. */
static void
add_ceiling (Gathering *g, const FpPlaced *placed, guint n, const gboolean *shows)
{
  const FpPlaced *high = NULL;

  for (guint i = 0; i < n; i++)
    if (shows[i] && !placed[i].ghost && fp_item_kind (placed[i].item)->role == FP_ROLE_WALL
        && lies_in_clip (&g->layout->clip, placed[i].level + placed[i].extent.height)
        && (high == NULL || placed[i].level + placed[i].extent.height > high->level + high->extent.height))
      high = &placed[i];
  if (high != NULL)
    add (g, high, "height", high->level + high->extent.height, CEILING_RANK);
}

GArray *
fp_levels_gather (const FpScene *scene, const FpViewLayout *layout, FpViewId view, const gboolean *shows,
                  guint rank_max, gboolean names)
{
  Gathering g = { layout, view, rank_max, names, g_array_new (FALSE, FALSE, sizeof (FpLevelMark)) };
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  add_floors (&g, scene, placed, shows);
  add_highest (&g, scene, placed);
  add_tops (&g, scene, placed, n, shows);
  add_ceiling (&g, placed, n, shows);
  g_array_sort (g.out, compare_levels);
  return g.out;
}

/* --- placing ---------------------------------------------------------------------- */

static double
mark_length (const FpLevelMark *mark)
{
  return APEX + TRIANGLE + TO_TEXT + mark->width;
}

/* Columns are as wide as the widest mark, so that the marks of a column stand under one another. */
static double
column_step (const GArray *levels)
{
  double widest = 0;

  for (guint i = 0; i < levels->len; i++)
    widest = MAX (widest, mark_length (&g_array_index (levels, FpLevelMark, i)));
  return widest + BETWEEN;
}

typedef struct
{
  FpPoint line[2];
  FpPoint triangle[3];
  FpPoint text_at;  /* left end of the base line */
  FpBox   box;      /* triangle and text         */
} Shape;

static void
shape_of (const FpLevelMark *mark, const FpBox *content, double step, Shape *out)
{
  const double length = mark_length (mark), from = FROM + mark->column * step;
  const double x0 = mark->side == FP_SIDE_RIGHT ? content->x1 + from : content->x0 - from - length;
  const double up = mark->under ? -1 : 1;
  const double apex = x0 + APEX;

  out->line[0] = (FpPoint) { x0, mark->v };
  out->line[1] = (FpPoint) { x0 + length, mark->v };
  out->triangle[0] = (FpPoint) { apex, mark->v };
  out->triangle[1] = (FpPoint) { apex + TRIANGLE, mark->v + up * TRIANGLE };
  out->triangle[2] = (FpPoint) { apex - TRIANGLE, mark->v + up * TRIANGLE };
  out->text_at = (FpPoint) { apex + TRIANGLE + TO_TEXT,
                             mark->v + (mark->under ? -OVER_LINE - FP_FIGURE_HEIGHT : OVER_LINE) };
  out->box = fp_lettering_box (out->text_at, mark->width, FP_FIGURE_HEIGHT, 0, FP_ALIGN_LEFT);
  out->box.x0 = apex - TRIANGLE;
}

static gboolean
take_if_free (FpLevelMark *mark, const FpBox *content, double step, FpCover *room, guint owner)
{
  Shape shape;

  shape_of (mark, content, step, &shape);
  if (!fp_cover_text_is_free (room, &shape.box, owner)
      || !fp_cover_line_is_free (room, shape.line[0], shape.line[1], owner))
    return FALSE;
  fp_cover_take_text (room, &shape.box, owner);
  fp_cover_take_line (room, shape.line[0], shape.line[1], owner);
  return TRUE;
}

/* Of two levels close together, the lower one hangs under its line. */
static gboolean
should_hang (const GArray *levels, const FpLevelMark *mark)
{
  const double room = OVER_LINE + FP_FIGURE_HEIGHT + 1.2;
  gboolean above = FALSE, below = FALSE;

  for (guint i = 0; i < levels->len; i++)
    {
      const double up = g_array_index (levels, FpLevelMark, i).v - mark->v;
      above |= up > 0 && up < room;
      below |= up < 0 && up > -room;
    }
  return above && !below;
}

typedef struct
{
  const FpBox *content;
  gboolean     only;  /* no other side */
  double       step;  /* of columns    */
  FpCover     *room;
} Stack;

static gboolean
place_one (FpLevelMark *mark, const Stack *stack, FpSide first, gboolean hang, guint owner)
{
  const FpSide sides[2] = { first, first == FP_SIDE_LEFT ? FP_SIDE_RIGHT : FP_SIDE_LEFT };

  /* A level line in the second column has lost its object: last resort, on the first side only. */
  for (mark->column = 0; mark->column < (stack->only ? 1u : COLUMNS); mark->column++)
    for (guint s = 0; s < (mark->column == 0 && !stack->only ? 2u : 1u); s++)
      {
        mark->side = sides[s];
        for (guint i = 0; i < 2; i++)
          {
            mark->under = i == 0 ? hang : !hang;
            if (take_if_free (mark, stack->content, stack->step, stack->room, owner))
              return TRUE;
          }
      }
  return FALSE;
}

/* A mark on the far side of a long view would be lost to its thing. */
static FpSide
side_of_thing (const FpLevelMark *mark, const FpBox *content, FpSide otherwise)
{
  const double left = MAX (mark->near - content->x0, 0), right = MAX (content->x1 - mark->far, 0);

  if (MAX (left, right) < LONG_VIEW)
    return otherwise;
  return left < right ? FP_SIDE_LEFT : FP_SIDE_RIGHT;
}

guint
fp_levels_place (GArray *levels, const FpBox *content, FpSide first, gboolean only, FpCover *room)
{
  const Stack stack = { content, only, column_step (levels), room };
  guint left_out = 0;

  for (guint i = 0; i < levels->len; i++)
    {
      FpLevelMark *mark = &g_array_index (levels, FpLevelMark, i);
      const FpSide side = only ? first : side_of_thing (mark, content, first);
      mark->placed = place_one (mark, &stack, side, should_hang (levels, mark), OWNER + i);
      left_out += mark->placed ? 0 : 1;
    }
  return left_out;
}

/* --- drawing ------------------------------------------------------------------------ */

void
fp_levels_draw (FpDrawing *drawing, const GArray *levels, const FpBox *content, FpViewId view, guint *number)
{
  const double step = column_step (levels);

  for (guint i = 0; i < levels->len; i++)
    {
      const FpLevelMark *mark = &g_array_index (levels, FpLevelMark, i);
      Shape shape;
      if (!mark->placed)
        continue;
      shape_of (mark, content, step, &shape);
      fp_drawing_set_item (drawing, mark->item, FP_STANDING_EXISTING, (int) view);
      fp_drawing_set_dimension (drawing, ++*number, mark->param);
      fp_drawing_set_stretch (drawing, *number, &mark->measured);
      fp_drawing_line (drawing, FP_PEN_DIMENSION, shape.line[0], shape.line[1]);
      fp_drawing_area (drawing, FP_PEN_DIMENSION, fabs (mark->level) < EQUAL ? FP_FILL_INK : FP_FILL_NONE, 0,
                       shape.triangle, 3);
      fp_drawing_text (drawing, shape.text_at, FP_FIGURE_HEIGHT, 0, FP_ALIGN_LEFT, mark->text);
    }
  fp_drawing_set_dimension (drawing, 0, NULL);
  fp_drawing_set_item (drawing, NULL, FP_STANDING_EXISTING, (int) view);
}

double
fp_levels_reach (const GArray *levels, FpSide side)
{
  const double step = column_step (levels);
  double reach = 0;

  for (guint i = 0; i < levels->len; i++)
    {
      const FpLevelMark *mark = &g_array_index (levels, FpLevelMark, i);
      if (mark->placed && mark->side == side)
        reach = MAX (reach, FROM + mark->column * step + mark_length (mark));
    }
  return reach;
}

void
fp_levels_add_boxes (const GArray *levels, const FpBox *content, FpBox *box)
{
  const double step = column_step (levels);

  for (guint i = 0; i < levels->len; i++)
    {
      const FpLevelMark *mark = &g_array_index (levels, FpLevelMark, i);
      Shape shape;
      if (!mark->placed)
        continue;
      shape_of (mark, content, step, &shape);
      fp_box_add_box (box, &shape.box);
      fp_box_add_point (box, shape.line[0]);
      fp_box_add_point (box, shape.line[1]);
    }
}

void
fp_levels_untold (const GArray *levels, GPtrArray *untold)
{
  for (guint i = 0; i < levels->len; i++)
    {
      const FpLevelMark *mark = &g_array_index (levels, FpLevelMark, i);
      if (!mark->placed && mark->rank <= CEILING_RANK)
        g_ptr_array_add (untold, g_strdup_printf ("level %s", mark->text));
    }
}
