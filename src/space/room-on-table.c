/* SPDX-License-Identifier: GPL-3.0-or-later */
/* room-on-table.c - where on a mensa, a gradine, a footpace or a credence there is room
 *
 * By the solids of what is there, so that a vase finds its place between two
 * candlesticks, and the cards before them.  What comes in pairs comes as far
 * apart as there is room; what stands alone, as near as may be to where it
 * belongs.  All measures are design judgement.
 */
#include "setting-spot.h"
#include "standing.h"

#include <math.h>

#define STEP       25.0
#define FROM_EDGE  40.0
#define AIR        8.0    /* between two things                                */
#define NEAR       1500.0 /* what is farther from the support is in nobody's way */
#define FROM_END   120.0  /* of the altar, to a card                           */

/* The edge of the table at which a thing stands: the celebrant's, the one away from him, the people's, or the back. */
typedef enum { AT_CELEBRANT, AWAY_FROM_HIM, AT_PEOPLE, AT_BACK } Edge;

typedef struct
{
  FpRole      role;
  double      share;   /* of half the length of the table, towards the Epistle side */
  Edge        edge;
  const char *spread;  /* the parameter that says how far apart; NULL       */
  gboolean    faces;   /* turned to the celebrant                           */
} Belongs;

static const Belongs belongs[] = {
  { FP_ROLE_ALTAR_CARDS, 0, AT_BACK, "apart", TRUE },
  { FP_ROLE_MISSAL_STAND, 0.5, AT_CELEBRANT, NULL, TRUE },
  { FP_ROLE_HAND_BELL, 0.8, AT_PEOPLE, NULL, FALSE },
  { FP_ROLE_SANCTUS_CANDLE, 0.8, AWAY_FROM_HIM, NULL, FALSE },
  { FP_ROLE_SEVENTH_CANDLE, 0, AT_BACK, NULL, FALSE },
  { FP_ROLE_VESSELS, 0, AT_BACK, NULL, FALSE },
  { FP_ROLE_FLOWERS, 0, AWAY_FROM_HIM, "gap", FALSE },
  { FP_ROLE_RELIQUARIES, 0, AWAY_FROM_HIM, "gap", FALSE },
  { FP_ROLE_BRANCHED_LIGHTS, 0, AWAY_FROM_HIM, "gap", FALSE },
};

static const Belongs *
belonging (FpRole role)
{
  for (guint i = 0; i < G_N_ELEMENTS (belongs); i++)
    if (belongs[i].role == role)
      return &belongs[i];
  return NULL;
}

gboolean
fp_draft_belongs_on_table (const FpDraft *self)
{
  return belonging (self->kind->role) != NULL;
}

/* --- what is there ---------------------------------------------------------- */

typedef struct
{
  const FpDraft *draft;
  double         level;  /* of the table                                     */
  GArray        *taken;  /* (element-type FpBox3), church coordinates        */
} Table;

static gboolean
takes_room (FpPart part)
{
  return part != FP_PART_FLOOR && part != FP_PART_CLOTH;
}

static void
table_init (Table *self, const FpDraft *draft)
{
  const FpRoom *room = draft->room;
  const FpPlaced *on = &room->placed[draft->on];
  const FpBox about = { on->plan.x0 - NEAR, on->plan.y0 - NEAR, on->plan.x1 + NEAR, on->plan.y1 + NEAR };
  guint n;
  const FpSolid *solid = fp_scene_solids (room->scene, &n);

  self->draft = draft;
  self->level = on->level + on->extent.top;
  self->taken = g_array_new (FALSE, FALSE, sizeof (FpBox3));
  for (guint i = 0; i < n; i++)
    {
      const FpBox3 box = fp_solid_box (&solid[i]);
      const FpBox plan = { box.lo.x, box.lo.y, box.hi.x, box.hi.y };
      if (takes_room (solid[i].part) && !room->placed[solid[i].owner].ghost && box.hi.z > self->level + 1
          && fp_box_overlaps (&about, &plan) && !fp_room_stands_on (room, draft->on, (int) solid[i].owner))
        g_array_append_val (self->taken, box);
    }
}

static void
table_clear (Table *self)
{
  g_array_unref (self->taken);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Table, table_clear)

/* --- whether it would stand there ------------------------------------------- */

static gboolean
meets (const FpBox3 *a, const FpBox3 *b)
{
  return a->lo.x < b->hi.x + AIR && b->lo.x < a->hi.x + AIR && a->lo.y < b->hi.y + AIR && b->lo.y < a->hi.y + AIR
         && a->lo.z < b->hi.z && b->lo.z < a->hi.z;
}

/* What touches the table has to lie on it; what is higher may reach beyond its edge. */
static gboolean
rests_on (const Table *self, const FpBox3 *box)
{
  const FpPlaced *on = &self->draft->room->placed[self->draft->on];
  const FpBox *bearing = &on->extent.bearing;
  const FpPoint corner[2] = { fp_place_unpoint (&on->place, (FpPoint) { box->lo.x, box->lo.y }),
                              fp_place_unpoint (&on->place, (FpPoint) { box->hi.x, box->hi.y }) };

  if (box->lo.z > self->level + 1)
    return TRUE;
  for (guint i = 0; i < 2; i++)
    if (corner[i].x < bearing->x0 - 1 || corner[i].x > bearing->x1 + 1 || corner[i].y < bearing->y0 - 1
        || corner[i].y > bearing->y1 + 1)
      return FALSE;
  return TRUE;
}

static gboolean
is_free (const Table *self, const FpPlace *place)
{
  g_autoptr (FpSolids) own = fp_solids_new (), stood = fp_solids_new ();
  const FpSolid *s;
  guint n;

  fp_draft_solids (self->draft, own);
  fp_solids_append_placed (stood, own, place, self->level, 0);
  s = fp_solids_peek (stood, &n);
  for (guint i = 0; i < n; i++)
    {
      const FpBox3 box = fp_solid_box (&s[i]);
      if (!rests_on (self, &box))
        return FALSE;
      for (guint k = 0; k < self->taken->len; k++)
        if (meets (&box, &g_array_index (self->taken, FpBox3, k)))
          return FALSE;
    }
  return TRUE;
}

gboolean
fp_draft_is_free_on_table (const FpDraft *self)
{
  g_auto (Table) table = { 0 };

  table_init (&table, self);
  return is_free (&table, &self->place);
}

/* --- where it belongs ------------------------------------------------------- */

static const FpBox *
bearing_of (const FpDraft *self)
{
  return &self->room->placed[self->on].extent.bearing;
}

/* In the table's own coordinates. */
static FpPlace
in_church (const FpDraft *self, double x, double y, double turn)
{
  const FpPlace inner = { x, y, turn };

  return fp_place_compose (&self->room->placed[self->on].place, &inner);
}

static gboolean
is_at_back (const FpDraft *self, Edge edge)
{
  const gboolean east = self->room->placed[self->on].form.facing == FP_FACING_EAST;

  switch (edge)
    {
    case AT_CELEBRANT: return !east;
    case AWAY_FROM_HIM: return east;
    case AT_PEOPLE: return FALSE;
    case AT_BACK: return TRUE;
    }
  return TRUE;
}

/* The range over the depth of the table, from the edge where it belongs to the other. */
static void
along_depth (const FpDraft *self, Edge edge, double turn, double *first, double *last)
{
  const FpBox *bearing = bearing_of (self);
  const double before = turn == 0 ? self->plan.y0 : -self->plan.y1, behind = turn == 0 ? self->plan.y1 : -self->plan.y0;
  const FpPlaced *altar = fp_draft_altar (self);
  const double edge_gap = edge == AT_BACK ? AIR : MIN (FROM_EDGE, MAX ((bearing->y1 - bearing->y0 - behind + before) / 2, 0));
  const double y0 = bearing->y0 - before + edge_gap, y1 = bearing->y1 - behind - edge_gap;

  *first = is_at_back (self, edge) ? MAX (y0, y1) : MIN (y0, y1);
  *last = is_at_back (self, edge) ? MIN (y0, y1) : MAX (y0, y1);
  /* On its steps things stand beside an altar or before it: behind it is a way. */
  if (edge != AT_PEOPLE && altar != NULL && self->on == altar->support)
    {
      *first = MAX (MIN (fp_place_unpoint (&self->room->placed[self->on].place, (FpPoint) { altar->place.x, altar->place.y }).y, y1), y0);
      *last = MIN (y0, *first);
    }
}

static gboolean
try_at (FpDraft *self, const Table *table, double x, double y, double turn)
{
  const FpPlace place = in_church (self, x, y, turn);

  if (!is_free (table, &place))
    return FALSE;
  self->place = place;
  return TRUE;
}

/* Alone: the nearest to where it belongs, at most @aside from it along the table, then across it. */
static gboolean
find_alone (FpDraft *self, const Table *table, const Belongs *how, double turn, double aside)
{
  const FpBox *bearing = bearing_of (self);
  const double half = (bearing->x1 - bearing->x0) / 2, middle = (bearing->x0 + bearing->x1) / 2, wish = how->share * half;
  double first, last;

  along_depth (self, how->edge, turn, &first, &last);
  self->place = in_church (self, middle + wish, first, turn);
  for (double across = 0; across <= fabs (last - first); across += STEP)
    for (double way = 0; way <= MIN (half + fabs (wish), aside); way += STEP)
      for (int side = -1; side <= 1; side += 2)
        if (fabs (wish + side * way) <= half
            && try_at (self, table, middle + wish + side * way, first + (last < first ? -across : across), turn))
          return TRUE;
  return FALSE;
}

/* So far apart as there is room, beginning with what is usual. */
static gboolean
find_spread (FpDraft *self, const Table *table, const Belongs *how, double turn)
{
  const FpBox *bearing = bearing_of (self);
  const double length = bearing->x1 - bearing->x0, middle = (bearing->x0 + bearing->x1) / 2;
  const double usual = fp_draft_get (self, how->spread);
  double first, last;

  along_depth (self, how->edge, turn, &first, &last);
  self->place = in_church (self, middle, first, turn);
  for (double across = 0; across <= fabs (last - first); across += STEP)
    for (double way = 0; way <= length; way += STEP)
      for (int side = -1; side <= 1; side += 2)
        {
          const double apart = usual + side * way;
          if (apart <= 0 || apart > length || fp_draft_set_well (self, how->spread, apart) == FALSE)
            continue;
          if (try_at (self, table, middle, first + (last < first ? -across : across), turn))
            return TRUE;
        }
  fp_draft_set (self, how->spread, usual);
  return FALSE;
}

/* The cards at the ends go as far back as they can, the one in the middle before the tabernacle. */
static gboolean
find_cards (FpDraft *self, const Table *table, const Belongs *how, double turn)
{
  const FpBox *bearing = bearing_of (self);
  const double length = bearing->x1 - bearing->x0, depth = bearing->y1 - bearing->y0, middle = (bearing->x0 + bearing->x1) / 2;
  const double usual = length - fp_draft_get (self, "side-width") - 2 * FROM_END;
  double first, last;

  along_depth (self, how->edge, turn, &first, &last);
  fp_draft_set (self, how->spread, usual);
  self->place = in_church (self, middle, first, turn);
  for (double across = 0; across <= fabs (last - first); across += STEP)
    for (double inward = 0; inward <= length / 4; inward += 2 * STEP)
      for (double forward = 0; forward + across < depth; forward += STEP)
        {
          fp_draft_set (self, "forward", forward);
          if (fp_draft_set_well (self, how->spread, MAX (usual - inward, 0))
              && try_at (self, table, middle, first + (last < first ? -across : across), turn))
            return TRUE;
        }
  fp_draft_set (self, "forward", 0);
  fp_draft_set (self, how->spread, usual);
  return FALSE;
}

/* A little higher than the highest of the others (Catholic Encyclopedia I, 1907, Altar Candles, p. 348). */
static void
fit_seventh (FpDraft *self)
{
  const FpRoom *room = self->room;
  const FpSolid *solid = fp_scene_solids (room->scene, NULL);
  const double level = room->placed[self->on].level + room->placed[self->on].extent.top, higher = 50;
  double highest = 0;

  for (guint i = 0; i < room->n_placed; i++)
    for (guint k = 0; fp_placed_has_role (&room->placed[i], FP_ROLE_CANDLES) && k < room->placed[i].n_solids; k++)
      if (room->altar >= 0 && fp_room_stands_on (room, (int) i, room->altar) && solid[room->placed[i].first_solid + k].part == FP_PART_STICK)
        highest = MAX (highest, fp_solid_box (&solid[room->placed[i].first_solid + k]).hi.z - level);
  if (highest > 0)
    fp_draft_set (self, "height", highest + higher);
}

static gboolean
find_on (FpDraft *self, int on)
{
  const Belongs *how = belonging (self->kind->role);
  const double turn = how->faces && self->room->placed[on].form.facing == FP_FACING_PEOPLE && on == self->room->altar ? 180 : 0;
  g_auto (Table) table = { 0 };

  self->on = on;
  if (self->kind->role == FP_ROLE_SEVENTH_CANDLE)
    fit_seventh (self);
  table_init (&table, self);
  if (self->kind->role == FP_ROLE_ALTAR_CARDS)
    return find_cards (self, &table, how, turn);
  if (how->spread != NULL)
    return find_spread (self, &table, how, turn);
  /* The seventh candlestick is in the middle, if that can be. */
  return (self->kind->role == FP_ROLE_SEVENTH_CANDLE && find_alone (self, &table, how, turn, 0))
         || find_alone (self, &table, how, turn, G_MAXDOUBLE);
}

gboolean
fp_spot_on_table (FpDraft *self)
{
  const FpRole *role = self->kind->stands_on;
  FpDraft first = *self;
  gboolean found = FALSE;

  for (; *role != FP_ROLE_NONE; role++)
    {
      const int on = *role != FP_ROLE_FLOOR ? fp_room_best_support (self->room, *role) : -1;
      FpDraft draft = *self;

      if (on < 0)
        continue;
      if (find_on (&draft, on))
        {
          *self = draft;
          return TRUE;
        }
      if (!found)
        first = draft;
      found = TRUE;
    }
  *self = first;
  return found;
}
