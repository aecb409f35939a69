/* SPDX-License-Identifier: GPL-3.0-or-later */
/* setting-pews.c - where new pews go: two blocks about a middle aisle, fitted to the people's floor
 *
 * Or the one that is wanting beside a block that is there.  Aisles and all
 * distances that name no code are design judgement; local code governs ways out.
 */
#include "setting-pews.h"

#include <math.h>
#include <string.h>

#define MIDDLE_AISLE 1200.0
#define SIDE_AISLE   1000.0
#define CROSS_AISLE  1200.0 /* between one block and the next behind it             */
#define BEFORE_PEWS  2000.0 /* to the rail or the lowest step: people kneel and pass */
#define BEHIND_PEWS  1500.0
#define OTHER_GAP    300.0  /* to what else stands in the nave                       */
#define WALL_GAP     50.0
#define SAMPLE       100.0
/* Chicago building code (older text): at most 14 seats between aisles, 7 to a wall. */
#define SEATS_BETWEEN_AISLES 14.0
#define SEATS_TO_WALL        7.0
#define SEATS_FEWEST         2.0

static const char *const names[2][2] = { { "Pews, Gospel side", "More pews, Gospel side" },
                                         { "Pews, Epistle side", "More pews, Epistle side" } };

typedef struct { double from, to; } Stretch; /* along y: from the west to the east */

/* --- the length of the rows --------------------------------------------------- */

static int
by_value (gconstpointer a, gconstpointer b)
{
  const double p = *(const double *) a, q = *(const double *) b;

  return (p > q) - (p < q);
}

/* From the axis to what bounds the nave on that side: to the wall, and to the nearest pier or nib before it. */
static void
bounds_of_side (const FpRoom *room, int side, const Stretch *along, double *wall, double *nearest)
{
  g_autoptr (GArray) reach = g_array_new (FALSE, FALSE, sizeof (double));

  for (double y = along->from; y <= along->to; y += SAMPLE)
    {
      double x0, x1;
      fp_room_nave_across (room, y, &x0, &x1);
      x1 = side < 0 ? -x0 : x1;
      g_array_append_val (reach, x1);
    }
  *wall = *nearest = 0;
  if (reach->len == 0)
    return;
  g_array_sort (reach, by_value);
  *nearest = g_array_index (reach, double, 0);
  *wall = g_array_index (reach, double, reach->len / 2);
}

/* As many whole seats as there is room for between the middle aisle and one at the side; in a narrow nave, up to the
 * wall. */
static double
length_on_side (const FpDraft *self, int side, const Stretch *along)
{
  const double seat = fp_draft_get (self, "seat-width"), inner = MIDDLE_AISLE / 2;
  double wall, nearest, between, to_wall;

  bounds_of_side (self->room, side, along, &wall, &nearest);
  between = floor (MAX (MIN (wall - SIDE_AISLE, nearest - WALL_GAP) - inner, 0) / seat);
  to_wall = floor (MAX (nearest - WALL_GAP - inner, 0) / seat);
  if (between >= MIN (to_wall, SEATS_TO_WALL))
    return MIN (between, SEATS_BETWEEN_AISLES) * seat;
  return MIN (MAX (between, MIN (to_wall, SEATS_TO_WALL)), SEATS_BETWEEN_AISLES) * seat;
}

/* --- the number of rows ------------------------------------------------------- */

/* What bounds the pews towards the altar. */
static gboolean
is_before_nave (const FpPlaced *placed)
{
  switch (fp_item_kind (placed->item)->role)
    {
    case FP_ROLE_RAIL:
    case FP_ROLE_STEPS:
    case FP_ROLE_FOOTPACE:
    case FP_ROLE_ALTAR:
      return TRUE;
    default:
      return FALSE;
    }
}

static Stretch
stretch_of_nave (const FpRoom *room)
{
  Stretch along;

  fp_room_nave_along (room, &along.from, &along.to);
  if (room->has_nave && !room->has_sanctuary) /* the east end of one hall is the sanctuary */
    along.to = MIN (along.to, room->sanctuary.y0);
  for (guint i = 0; i < room->n_placed; i++)
    {
      const FpPlaced *placed = &room->placed[i];
      if (!placed->ghost && is_before_nave (placed) && placed->plan.x0 < MIDDLE_AISLE && placed->plan.x1 > -MIDDLE_AISLE
          && placed->plan.y0 > (along.from + along.to) / 2)
        along.to = MIN (along.to, placed->plan.y0);
    }
  along.from += BEHIND_PEWS;
  along.to -= BEFORE_PEWS;
  return along;
}

static gboolean
covers (const FpPlaced *placed, const FpRoom *room, guint i, FpBox *box)
{
  FpBox3 way;

  switch (fp_item_kind (placed->item)->role)
    {
    case FP_ROLE_FLOOR:
    case FP_ROLE_GALLERY:
    case FP_ROLE_STANDING_ROOM:
    case FP_ROLE_WALL:
      return FALSE;
    case FP_ROLE_OPENING:
      if (!fp_scene_doorway (room->scene, i, &way))
        return FALSE;
      *box = FP_BOX_EMPTY;
      for (guint k = 0; k < 4; k++)
        fp_box_add_point (box, fp_place_point (&placed->place, (FpPoint) { k % 2 ? way.lo.x : way.hi.x,
                                                                           k / 2 ? way.lo.y : way.hi.y }));
      return TRUE;
    default:
      *box = placed->plan;
      return !fp_box_is_empty (box);
    }
}

static double
gap_to (const FpPlaced *placed)
{
  switch (fp_item_kind (placed->item)->role)
    {
    case FP_ROLE_PEWS: return CROSS_AISLE;
    case FP_ROLE_OPENING: return 0;
    default: return OTHER_GAP;
    }
}

static int
from_the_east (gconstpointer a, gconstpointer b)
{
  const Stretch *p = a, *q = b;

  return (p->to < q->to) - (p->to > q->to);
}

/* Where something stands in the band of the church between x0 and x1. */
static GArray *
taken_stretches (const FpRoom *room, double x0, double x1)
{
  GArray *taken = g_array_new (FALSE, FALSE, sizeof (Stretch));

  for (guint i = 0; i < room->n_placed; i++)
    {
      const FpPlaced *placed = &room->placed[i];
      FpBox box;
      if (placed->ghost || !covers (placed, room, i, &box) || box.x1 <= x0 || box.x0 >= x1)
        continue;
      g_array_append_val (taken, ((Stretch) { box.y0 - gap_to (placed), box.y1 + gap_to (placed) }));
    }
  g_array_sort (taken, from_the_east);
  return taken;
}

/* The longest that is free, of equals the nearest to the altar. */
static Stretch
free_stretch (const FpRoom *room, const Stretch *along, double x0, double x1)
{
  g_autoptr (GArray) taken = taken_stretches (room, x0, x1);
  Stretch best = { along->to, along->to };
  double to = along->to;

  for (guint i = 0; i <= taken->len; i++)
    {
      const Stretch *next = i < taken->len ? &g_array_index (taken, Stretch, i) : NULL;
      const double from = next != NULL ? MAX (next->to, along->from) : along->from;
      if (to - from > best.to - best.from + 1)
        best = (Stretch) { from, to };
      if (next != NULL)
        to = MIN (to, next->from);
    }
  return best;
}

/* --- the blocks ----------------------------------------------------------------- */

static gboolean
stands_free (const FpDraft *self)
{
  return fp_room_is_free (self->room, &self->plan, &self->place, 0, -1, FP_ROOM_ON_ANY_LEVEL | FP_ROOM_AMONG_PEOPLE);
}

/* As many rows as go into the stretch, the first at its east end. */
static gboolean
fit_rows (FpDraft *self, const Stretch *along)
{
  double rows;

  fp_draft_set (self, "rows", 1);
  rows = floor ((along->to - along->from - (self->plan.y1 - self->plan.y0)) / fp_draft_get (self, "spacing")) + 1;
  self->place.y = along->to - self->plan.y1;
  for (; rows >= 1; rows--)
    {
      fp_draft_set (self, "rows", rows);
      if (stands_free (self))
        return TRUE;
    }
  return FALSE;
}

static gboolean
has_pews (const FpRoom *room)
{
  for (guint i = 0; i < room->n_placed; i++)
    if (fp_placed_has_role (&room->placed[i], FP_ROLE_PEWS))
      return TRUE;
  return FALSE;
}

static gboolean
lay_block (FpDraft *self, const FpRoom *room, const FpKind *kind, int side, const Stretch *along, double length)
{
  fp_draft_init (self, room, kind);
  if (length < SEATS_FEWEST * fp_draft_get (self, "seat-width"))
    return FALSE;
  self->name = names[side > 0 ? 1 : 0][has_pews (room) ? 1 : 0];
  fp_draft_set (self, "length", length);
  self->place = (FpPlace) { side * (MIDDLE_AISLE + length) / 2, 0, 0 };
  return fit_rows (self, along);
}

static guint
lay_two_blocks (const FpRoom *room, const FpKind *kind, FpDraft block[2])
{
  Stretch along = stretch_of_nave (room);
  double length[2];
  guint n = 0;
  FpDraft probe;

  fp_draft_init (&probe, room, kind);
  for (int side = 0; side < 2; side++)
    length[side] = length_on_side (&probe, side ? 1 : -1, &along);
  along = free_stretch (room, &along, -MIDDLE_AISLE / 2 - length[0], MIDDLE_AISLE / 2 + length[1]);
  for (int side = 0; side < 2; side++)
    if (lay_block (&block[n], room, kind, side ? 1 : -1, &along, length[side]))
      n++;
  /* The two end in one line. */
  for (guint i = 0; n == 2 && i < n; i++)
    fp_draft_set (&block[i], "rows", MIN (fp_draft_get (&block[0], "rows"), fp_draft_get (&block[1], "rows")));
  return n;
}

/* --- beside one that is there ------------------------------------------------------ */

/* Its like on the other side of the axis. */
static gboolean
mirror_block (FpDraft *self, const FpRoom *room, const FpPlaced *pews)
{
  const FpKind *kind = fp_item_kind (pews->item);

  if (!fp_placed_has_role (pews, FP_ROLE_PEWS) || pews->support >= 0
      || fabs (pews->place.x) < fp_item_param (pews->item, "length") / 2)
    return FALSE;
  fp_draft_init (self, room, kind);
  memcpy (self->param, fp_item_params (pews->item), fp_kind_n_params (kind) * sizeof (double));
  fp_draft_measure (self);
  self->name = names[pews->place.x < 0 ? 1 : 0][0];
  self->place = (FpPlace) { -pews->place.x, pews->place.y, -pews->place.turn };
  return stands_free (self);
}

static gboolean
lay_beside (const FpRoom *room, FpDraft *block)
{
  double nearest = -G_MAXDOUBLE;

  for (guint i = 0; i < room->n_placed; i++)
    {
      FpDraft mirrored;
      if (!(room->placed[i].place.y > nearest) || !mirror_block (&mirrored, room, &room->placed[i]))
        continue;
      nearest = room->placed[i].place.y;
      *block = mirrored;
    }
  return nearest > -G_MAXDOUBLE;
}

/* --- anywhere ----------------------------------------------------------------------- */

/* Fewer rows where there is no room for more; where there is none at all, on the axis, for the findings to tell. */
void
fp_spot_pews (FpDraft *self)
{
  const FpBox *nave = &self->room->nave;
  const guint flags = FP_ROOM_ON_ANY_LEVEL | FP_ROOM_AMONG_PEOPLE;
  const FpPlace wish = { (nave->x0 + nave->x1) / 2, nave->y1 - BEFORE_PEWS, 0 };
  const double most = fp_draft_get (self, "rows");

  fp_draft_set (self, "length", MIN (fp_draft_get (self, "length"), MAX (nave->x1 - nave->x0 - 2 * SIDE_AISLE, 1000)));
  for (double rows = most; rows >= 1; rows = floor (rows / 2))
    {
      fp_draft_set (self, "rows", rows);
      self->place = fp_room_nearest_free (self->room, &self->plan, wish, nave, OTHER_GAP, flags);
      if (fp_room_is_free (self->room, &self->plan, &self->place, OTHER_GAP, -1, flags))
        return;
    }
  fp_draft_set (self, "rows", most);
  self->place = wish;
}

guint
fp_lay_pews (const FpRoom *room, const FpKind *kind, FpDraft block[2])
{
  return lay_beside (room, &block[0]) ? 1 : lay_two_blocks (room, kind, block);
}
