/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Whether there is room for everything: what runs into each other, into walls and piers, and the ways through doors. */
#include "measuring.h"
#include "solid-overlap.h"

/* mm.  Less is what a survey leaves over, and arithmetic (design judgement). */
#define TOUCHING 0.1

typedef struct
{
  const FpPlaced *placed;
  guint           n_placed;
  const FpSolid  *solid;
  FpBox3         *own;   /* of each solid                                   */
  FpBox3         *whole; /* of each placed thing, its floors left out       */
  char          **name;  /* of each, as it is told from what is called alike; NULL: not asked for yet */
} Room;

/* One floor may lie over another, and all else over it; so it is with cloths. */
static gboolean
takes_room (const FpSolid *solid)
{
  return solid->part != FP_PART_FLOOR && solid->part != FP_PART_CLOTH;
}

static void
room_init (Room *self, const FpScene *scene)
{
  guint n_solids;

  self->placed = fp_scene_placed (scene, &self->n_placed);
  self->solid = fp_scene_solids (scene, &n_solids);
  self->own = g_new (FpBox3, n_solids);
  self->whole = g_new (FpBox3, self->n_placed);
  self->name = g_new0 (char *, self->n_placed);
  for (guint i = 0; i < self->n_placed; i++)
    {
      const FpPlaced *placed = &self->placed[i];

      self->whole[i] = FP_BOX3_EMPTY;
      for (guint s = placed->first_solid; s < placed->first_solid + placed->n_solids; s++)
        {
          self->own[s] = fp_solid_box (&self->solid[s]);
          if (takes_room (&self->solid[s]))
            fp_box3_add_box (&self->whole[i], &self->own[s]);
        }
    }
}

static void
room_clear (Room *self)
{
  for (guint i = 0; i < self->n_placed; i++)
    g_free (self->name[i]);
  g_free (self->name);
  g_free (self->own);
  g_free (self->whole);
}

/* --- which two -------------------------------------------------------------- */

static gboolean
is_fabric (const FpPlaced *placed)
{
  switch (fp_placed_role (placed))
    {
    case FP_ROLE_WALL:
    case FP_ROLE_OPENING:
    case FP_ROLE_PIER:
    case FP_ROLE_FLOOR:
    case FP_ROLE_STEPS:
    case FP_ROLE_GALLERY:
    case FP_ROLE_STANDING_ROOM:
      return TRUE;
    default:
      return FALSE;
    }
}

static gboolean
is_rail (const FpPlaced *placed)
{
  return fp_placed_role (placed) == FP_ROLE_RAIL || fp_placed_role (placed) == FP_ROLE_HANDRAIL;
}

/* A rail may stand on the steps between the floors; nothing can be told to. */
static gboolean
is_rail_on_steps (const FpPlaced *a, const FpPlaced *b)
{
  return (is_rail (a) && fp_placed_role (b) == FP_ROLE_STEPS) || (fp_placed_role (a) == FP_ROLE_STEPS && is_rail (b));
}

/* The building was measured as it is: a pier may well stand in a wall. */
static gboolean
must_be_apart (const FpMeasuring *of, const Room *self, guint i, guint j)
{
  const FpPlaced *a = &self->placed[i], *b = &self->placed[j];

  return !a->ghost && !b->ghost && !(is_fabric (a) && is_fabric (b)) && !is_rail_on_steps (a, b)
         && !fp_measuring_stands_on (of, (int) i, (int) j) && !fp_measuring_stands_on (of, (int) j, (int) i);
}

/* --- how far ---------------------------------------------------------------- */

/* Where it is the deepest, and the way by which one would be moved. */
typedef struct { double depth; FpVec3 at, way; } Deepest;

/* Takes it, and shows the way in the middle of what they share. */
static FpMeasured *
add_deepest (GArray *out, const Deepest *deepest, int owner)
{
  const FpVec3 half = fp_vec3_scale (deepest->way, deepest->depth / 2);
  FpMeasured *measured = fp_measured_add_at (out, deepest->depth, owner, deepest->at);

  fp_measured_span (measured, fp_vec3_sub (deepest->at, half), fp_vec3_add (deepest->at, half));
  return measured;
}

static void
overlap_with (const Room *self, guint s, guint other, Deepest *most)
{
  const FpPlaced *placed = &self->placed[other];

  for (guint k = placed->first_solid; k < placed->first_solid + placed->n_solids; k++)
    {
      Deepest here;

      if (!takes_room (&self->solid[k]) || !(fp_box3_overlap (&self->own[s], &self->own[k]) > MAX (most->depth, TOUCHING)))
        continue;
      here.depth = fp_solid_overlap (&self->solid[s], &self->solid[k], MAX (most->depth, TOUCHING), &here.at, &here.way);
      if (here.depth > most->depth)
        *most = here;
    }
}

static Deepest
overlap_of (const Room *self, guint i, guint j)
{
  const FpPlaced *placed = &self->placed[i];
  Deepest most = { 0 };

  for (guint s = placed->first_solid; s < placed->first_solid + placed->n_solids; s++)
    if (takes_room (&self->solid[s]) && fp_box3_overlap (&self->own[s], &self->whole[j]) > MAX (most.depth, TOUCHING))
      overlap_with (self, s, j, &most);
  return most;
}

static const char *
told_apart (const FpMeasuring *of, const Room *self, guint i)
{
  if (self->name[i] == NULL)
    self->name[i] = fp_measuring_name (of, (int) i);
  return self->name[i];
}

/* “Ambo” and “Altar steps”; what is called alike is told apart by its side. */
static char *
both_named (const FpMeasuring *of, const Room *self, guint i, guint j)
{
  const char *a = fp_item_name (self->placed[i].item), *b = fp_item_name (self->placed[j].item);

  if (g_strcmp0 (a, b) == 0)
    {
      a = told_apart (of, self, i);
      b = told_apart (of, self, j);
    }
  return g_strconcat ("“", a, "” and “", b, "”", NULL);
}

void
fp_take_overlap (const FpMeasuring *of, GArray *out)
{
  Room room;
  guint furnishings = 0, first = out->len;

  room_init (&room, of->scene);
  for (guint j = 0; j < room.n_placed; j++)
    {
      furnishings += !room.placed[j].ghost && !is_fabric (&room.placed[j]) ? 1 : 0;
      for (guint i = 0; i < j; i++)
        {
          Deepest most;

          if (!(fp_box3_overlap (&room.whole[i], &room.whole[j]) > TOUCHING) || !must_be_apart (of, &room, i, j))
            continue;
          most = overlap_of (&room, i, j);
          if (most.depth > 0)
            add_deepest (out, &most, (int) (is_fabric (&room.placed[j]) ? i : j))->detail
              = both_named (of, &room, i, j);
        }
    }
  if (furnishings > 0 && out->len == first)
    fp_measured_add (out, 0);
  room_clear (&room);
}

/* --- doors ------------------------------------------------------------------ */

/* Steps and footpaces are walked on, and a gate opens. */
static gboolean
stops_people (const FpSolid *solid)
{
  return takes_room (solid) && solid->part != FP_PART_STEP && solid->part != FP_PART_FOOTPACE
         && solid->part != FP_PART_GATE;
}

/* A rail across a door is passed by its gate, where that lies in the way. */
static gboolean
gate_lies_in (const FpMeasuring *of, guint thing, guint door, const FpBox3 *way)
{
  const FpPlaced *rail = fp_measuring_placed (of, (int) thing), *opening = fp_measuring_placed (of, (int) door);
  FpPoint gate;

  if (fp_placed_role (rail) != FP_ROLE_RAIL || fp_placed_param (rail, "gate", 0) <= 0)
    return FALSE;
  gate = fp_placed_local (opening, (FpPoint) { rail->place.x, rail->place.y });
  return gate.x > way->lo.x && gate.x < way->hi.x && gate.y > way->lo.y && gate.y < way->hi.y;
}

/* How far it reaches into the way. */
static Deepest
reach_into (const Room *self, guint thing, const FpSolid *way, const FpBox3 *box)
{
  const FpPlaced *placed = &self->placed[thing];
  Deepest most = { 0 };

  for (guint s = placed->first_solid; s < placed->first_solid + placed->n_solids; s++)
    {
      Deepest here;

      if (!stops_people (&self->solid[s]) || !(fp_box3_overlap (&self->own[s], box) > MAX (most.depth, TOUCHING)))
        continue;
      here.depth = fp_solid_overlap (&self->solid[s], way, MAX (most.depth, TOUCHING), &here.at, &here.way);
      if (here.depth > most.depth)
        most = here;
    }
  return most;
}

static void
take_door (const FpMeasuring *of, const Room *room, guint door, const FpBox3 *way, GArray *out)
{
  g_autoptr (FpSolids) own = fp_solids_new (), stood = fp_solids_new ();
  const FpPlaced *opening = &room->placed[door];
  FpBox3 box;

  fp_solids_add_box (own, FP_PART_BODY, way->lo.x, way->lo.y, way->lo.z, way->hi.x, way->hi.y, way->hi.z);
  fp_solids_append_placed (stood, own, &opening->place, opening->level, 0);
  if (fp_solids_count (stood) == 0)
    return;
  box = fp_solid_box (fp_solids_get (stood, 0));
  for (guint i = 0; i < room->n_placed; i++)
    {
      Deepest most;

      if (room->placed[i].ghost || is_fabric (&room->placed[i])
          || !(fp_box3_overlap (&room->whole[i], &box) > TOUCHING) || gate_lies_in (of, i, door, way))
        continue;
      most = reach_into (room, i, fp_solids_get (stood, 0), &box);
      if (most.depth > 0)
        add_deepest (out, &most, (int) i)->detail = both_named (of, room, i, door);
    }
}

void
fp_take_in_doorway (const FpMeasuring *of, GArray *out)
{
  guint doors = 0, first = out->len;
  Room room;

  room_init (&room, of->scene);
  for (guint i = 0; i < room.n_placed; i++)
    {
      FpBox3 way;

      if (!fp_scene_doorway (of->scene, i, &way) || !fp_doorway_is_door (&way))
        continue;
      doors++;
      take_door (of, &room, i, &way, out);
    }
  if (doors > 0 && out->len == first)
    fp_measured_add (out, 0);
  room_clear (&room);
}
