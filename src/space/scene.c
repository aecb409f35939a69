/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "celebrant.h"
#include "scene-private.h"
#include "standing.h"

#include <math.h>

#define SAME_PLACE 0.01  /* mm: nearer than this nothing was moved */
#define SAME_TURN 0.001  /* degrees */

/* Everything else of a scene is there from the beginning and never changes. */
typedef struct
{
  GMutex         mutex;
  gpointer       made;       /* NULL: nobody has asked                       */
  GDestroyNotify drop;
} Kept;

struct _FpScene
{
  gatomicrefcount  ref_count;
  const FpProject *project;    /* owned reference                           */
  guint            alternative;
  FpFloorSet       floors_before, floors_now; /* of the survey: what levels are taken from */
  FpArrangement    before, now;
  GArray          *placed;     /* (element-type FpPlaced)                   */
  FpFloorSet       floors;     /* of all that is not a ghost                */
  FpSolids        *solids;
  GHashTable      *index;      /* id to index + 1, ghosts left out          */
  int              role[FP_N_ROLES];
  int              celebrated; /* index of the altar, -1                    */
  FpSetting       *setting;    /* NULL: all things stand                    */
  FpBox3           box, sanctuary;
  Kept             kept[FP_N_KEPT];
};

/* --- what is placed ------------------------------------------------------- */

static gboolean
same_place (const FpStandingThing *a, const FpStandingThing *b)
{
  const FpBox *p = &a->form.core, *q = &b->form.core;
  return fabs (a->place.x - b->place.x) < SAME_PLACE && fabs (a->place.y - b->place.y) < SAME_PLACE
         && fabs (a->place.turn - b->place.turn) < SAME_TURN && fabs (a->level - b->level) < SAME_PLACE
         && fabs (p->x0 - q->x0) < SAME_PLACE && fabs (p->x1 - q->x1) < SAME_PLACE
         && fabs (p->y0 - q->y0) < SAME_PLACE && fabs (p->y1 - q->y1) < SAME_PLACE;
}

/* Whether a thing of the survey stands elsewhere than it was measured: by its
 * own fate, or because it was carried along. */
static gboolean
was_moved (const FpScene *self, guint i)
{
  const FpStandingThing *now = fp_arrangement_get (&self->now, i);
  return now->in_survey && now->present && fp_arrangement_get (&self->before, i)->present && !same_place (fp_arrangement_get (&self->before, i), now);
}

static guint
add_placed (FpScene *self, const FpStandingThing *thing, gboolean ghost, gboolean moved)
{
  FpPlaced placed = {
    .item = thing->item, .ghost = ghost, .in_survey = thing->in_survey, .moved = moved && !ghost,
    .support = -1, .place = thing->place, .level = thing->level, .floor = thing->floor,
    .form = thing->form, .extent = thing->extent, .plan = thing->plan,
  };
  if (ghost)
    placed.standing = FP_STANDING_REMOVED;
  else
    placed.standing = thing->in_survey && !moved ? FP_STANDING_EXISTING : FP_STANDING_PROPOSED;
  g_array_append_val (self->placed, placed);
  return self->placed->len - 1;
}

static void
add_all_placed (FpScene *self)
{
  guint n = self->now.thing->len, n_before = self->before.thing->len;
  g_autofree int *stands = g_new (int, n), *ghost = g_new (int, n);

  for (guint i = 0; i < n; i++)
    {
      const FpStandingThing *thing = fp_arrangement_get (&self->now, i);
      stands[i] = thing->present ? (int) add_placed (self, thing, FALSE, was_moved (self, i)) : -1;
      ghost[i] = -1;
    }
  for (guint i = 0; i < n_before; i++)
    if (fp_arrangement_get (&self->before, i)->present && (stands[i] < 0 || was_moved (self, i)))
      ghost[i] = (int) add_placed (self, fp_arrangement_get (&self->before, i), TRUE, FALSE);

  for (guint i = 0; i < n; i++)
    {
      int support = fp_arrangement_get (&self->now, i)->support;
      if (stands[i] >= 0 && support >= 0)
        g_array_index (self->placed, FpPlaced, stands[i]).support = stands[support];
      int before = i < n_before ? fp_arrangement_get (&self->before, i)->support : -1;
      if (ghost[i] >= 0 && before >= 0)
        g_array_index (self->placed, FpPlaced, ghost[i]).support = ghost[before] >= 0 ? ghost[before] : stands[before];
    }
}

/* --- solids and floors ---------------------------------------------------- */

static void
make_bodies (FpScene *self)
{
  for (guint i = 0; i < self->placed->len; i++)
    {
      FpPlaced *placed = &g_array_index (self->placed, FpPlaced, i);
      const FpKind *kind = fp_item_kind (placed->item);
      g_autoptr (FpSolids) own = fp_solids_new ();
      kind->solids (&placed->form, own);
      placed->first_solid = fp_solids_count (self->solids);
      fp_solids_append_placed (self->solids, own, &placed->place, placed->level, i);
      placed->n_solids = fp_solids_count (self->solids) - placed->first_solid;
      if (!placed->ghost)
        fp_floor_set_add (&self->floors, kind, &placed->form, &placed->place, placed->level, i);
    }
}

/* --- finding -------------------------------------------------------------- */

static void
note_role (FpScene *self, guint i)
{
  const FpPlaced *placed = &g_array_index (self->placed, FpPlaced, i);
  FpRole role = fp_item_kind (placed->item)->role;
  if ((guint) role >= FP_N_ROLES)
    return;
  int first = self->role[role];
  if (first < 0
      || (role == FP_ROLE_ALTAR && placed->level > g_array_index (self->placed, FpPlaced, first).level + SAME_PLACE))
    self->role[role] = (int) i;
}

static void
make_index (FpScene *self)
{
  self->index = g_hash_table_new (g_str_hash, g_str_equal);
  for (guint i = 0; i < FP_N_ROLES; i++)
    self->role[i] = -1;
  for (guint i = 0; i < self->placed->len; i++)
    {
      const FpPlaced *placed = &g_array_index (self->placed, FpPlaced, i);
      if (placed->ghost)
        continue;
      g_hash_table_insert (self->index, (gpointer) fp_item_id (placed->item), GUINT_TO_POINTER (i + 1));
      note_role (self, i);
    }
}

/* Where the brief has the celebrant face the people, but an altar leaves him no room behind it, he stands before it. */
static void
settle_celebrant (FpScene *self, FpFacing facing)
{
  guint n;
  const FpSolid *solid = fp_solids_peek (self->solids, &n);
  const FpPlaced *placed = (const FpPlaced *) (gpointer) self->placed->data;

  self->celebrated = fp_celebrated_altar (placed, self->placed->len, self->role[FP_ROLE_ALTAR], facing);
  for (guint i = 0; facing == FP_FACING_PEOPLE && i < self->placed->len; i++)
    if (fp_item_kind (placed[i].item)->role == FP_ROLE_ALTAR && !fp_celebrant_fits_behind (placed, i, solid, n))
      g_array_index (self->placed, FpPlaced, i).form.facing = FP_FACING_EAST;
}

/* --- boxes ---------------------------------------------------------------- */

/* Whether a thing is, carries, or stands on the altar or its steps, or is the rail or what rises behind the altar. */
static gboolean
belongs_to_sanctuary (const FpScene *self, guint i)
{
  guint depth = 0;
  for (int at = (int) i; at >= 0 && depth++ < self->placed->len;)
    {
      const FpPlaced *placed = &g_array_index (self->placed, FpPlaced, at);
      switch (fp_item_kind (placed->item)->role)
        {
        case FP_ROLE_ALTAR:
        case FP_ROLE_FOOTPACE:
        case FP_ROLE_RAIL:
        case FP_ROLE_REREDOS:
          return TRUE;
        default:
          at = placed->support;
        }
    }
  return FALSE;
}

static void
add_ministers_floors (FpScene *self)
{
  for (guint i = 0; i < self->floors.floor->len; i++)
    {
      const FpFloor *floor = &g_array_index (self->floors.floor, FpFloor, i);
      for (guint k = 0; floor->use == FP_FLOOR_MINISTERS && k < floor->n_outline; k++)
        {
          FpPoint p = floor->outline[k];
          fp_box3_add_point (&self->sanctuary, (FpVec3) { p.x, p.y, fp_floor_level (floor, p) });
        }
    }
}

static void
make_boxes (FpScene *self)
{
  guint n;
  const FpSolid *solid = fp_solids_peek (self->solids, &n);

  self->box = self->sanctuary = FP_BOX3_EMPTY;
  for (guint i = 0; i < self->placed->len; i++)
    {
      const FpPlaced *placed = &g_array_index (self->placed, FpPlaced, i);
      if (placed->ghost)
        continue;
      FpBox3 own = FP_BOX3_EMPTY;
      for (guint k = placed->first_solid; k < placed->first_solid + placed->n_solids; k++)
        {
          FpBox3 box = fp_solid_box (&solid[k]);
          fp_box3_add_box (&own, &box);
        }
      if (placed->n_solids == 0)
        continue;
      fp_box3_add_box (&self->box, &own);
      if (belongs_to_sanctuary (self, i))
        fp_box3_add_box (&self->sanctuary, &own);
    }
  add_ministers_floors (self);
  if (self->sanctuary.hi.x < self->sanctuary.lo.x)
    self->sanctuary = self->box;
}

/* --- life ----------------------------------------------------------------- */

static FpScene *
scene_without (const FpProject *project, guint alternative, GHashTable *away)
{
  FpScene *self = g_new0 (FpScene, 1);
  FpFacing facing;

  g_atomic_ref_count_init (&self->ref_count);
  self->project = fp_project_ref (project);
  self->alternative = MIN (alternative, fp_project_n_alternatives (project) - 1);
  facing = fp_project_facing (project, self->alternative);
  fp_floor_set_init (&self->floors_before);
  fp_floor_set_init (&self->floors_now);
  fp_floor_set_init (&self->floors);
  fp_arrangement_init (&self->before, project, NULL, facing, NULL, &self->floors_before, away);
  fp_arrangement_init (&self->now, project, fp_project_alternative (project, self->alternative), facing,
                       &self->before, &self->floors_now, away);
  self->placed = g_array_sized_new (FALSE, FALSE, sizeof (FpPlaced), self->now.thing->len);
  self->solids = fp_solids_new ();
  add_all_placed (self);
  make_bodies (self);
  make_index (self);
  settle_celebrant (self, facing);
  make_boxes (self);
  for (guint i = 0; i < FP_N_KEPT; i++)
    g_mutex_init (&self->kept[i].mutex);
  return self;
}

FpScene *
fp_scene_new (const FpProject *project, guint alternative)
{
  return scene_without (project, alternative, NULL);
}

FpScene *
fp_scene_new_set (const FpScene *whole, FpCelebration one)
{
  FpSetting *setting = fp_setting_new (whole, one);
  g_autoptr (GHashTable) away = g_hash_table_new (NULL, NULL);
  guint n;
  const FpSetThing *thing = fp_setting_things (setting, &n);
  FpScene *self;

  for (guint i = 0; i < n; i++)
    if (!thing[i].stands)
      g_hash_table_add (away, (gpointer) thing[i].item);
  self = scene_without (whole->project, whole->alternative, away);
  self->setting = setting;
  return self;
}

const FpSetting *
fp_scene_setting (const FpScene *self)
{
  return self->setting;
}

FpScene *
fp_scene_ref (const FpScene *self)
{
  FpScene *mine = (FpScene *) self;
  g_atomic_ref_count_inc (&mine->ref_count);
  return mine;
}

void
fp_scene_unref (const FpScene *self)
{
  FpScene *mine = (FpScene *) self;
  if (!g_atomic_ref_count_dec (&mine->ref_count))
    return;
  for (guint i = 0; i < FP_N_KEPT; i++)
    {
      if (mine->kept[i].made != NULL)
        mine->kept[i].drop (mine->kept[i].made);
      g_mutex_clear (&mine->kept[i].mutex);
    }
  g_hash_table_unref (mine->index);
  fp_setting_unref (mine->setting);
  fp_solids_free (mine->solids);
  g_array_unref (mine->placed);
  fp_arrangement_clear (&mine->now);
  fp_arrangement_clear (&mine->before);
  fp_floor_set_clear (&mine->floors);
  fp_floor_set_clear (&mine->floors_now);
  fp_floor_set_clear (&mine->floors_before);
  fp_project_unref (mine->project);
  g_free (mine);
}

gconstpointer
fp_scene_keep (const FpScene *self, FpKept slot, FpKeptMake make, GDestroyNotify drop)
{
  Kept *kept = &((FpScene *) self)->kept[slot];

  g_mutex_lock (&kept->mutex);
  if (kept->made == NULL)
    {
      kept->made = make (self);
      kept->drop = drop;
    }
  g_mutex_unlock (&kept->mutex);
  return kept->made;
}

/* --- asking --------------------------------------------------------------- */

const FpProject *
fp_scene_project (const FpScene *self)
{
  return self->project;
}

guint
fp_scene_alternative (const FpScene *self)
{
  return self->alternative;
}

const FpPlaced *
fp_scene_placed (const FpScene *self, guint *n)
{
  if (n != NULL)
    *n = self->placed->len;
  return (const FpPlaced *) (gpointer) self->placed->data;
}

int
fp_scene_find (const FpScene *self, const char *id)
{
  return id != NULL ? GPOINTER_TO_INT (g_hash_table_lookup (self->index, id)) - 1 : -1;
}

int
fp_scene_role (const FpScene *self, FpRole role)
{
  return (guint) role < FP_N_ROLES ? self->role[role] : -1;
}

int
fp_scene_celebrated_altar (const FpScene *self)
{
  return self->celebrated;
}

const FpSolid *
fp_scene_solids (const FpScene *self, guint *n)
{
  guint count;
  const FpSolid *solids = fp_solids_peek (self->solids, &count);
  if (n != NULL)
    *n = count;
  return solids;
}

const FpFloor *
fp_scene_floors (const FpScene *self, guint *n)
{
  if (n != NULL)
    *n = self->floors.floor->len;
  return (const FpFloor *) (gpointer) self->floors.floor->data;
}

double
fp_scene_floor_at (const FpScene *self, FpPoint at, gboolean *found)
{
  return fp_floor_set_at (&self->floors_now, at, found);
}

FpVec3
fp_placed_point (const FpPlaced *placed, FpVec3 local)
{
  FpPoint p = fp_place_point (&placed->place, (FpPoint) { local.x, local.y });
  return (FpVec3) { p.x, p.y, placed->level + local.z };
}

FpPlace
fp_scene_place_on (const FpScene *self, int on, const FpKind *kind, const FpBox *plan, FpPlace church)
{
  if (on < 0 || (guint) on >= self->placed->len || (kind->flags & FP_KIND_ON_FLOOR))
    return church;
  const FpPlaced *support = &g_array_index (self->placed, FpPlaced, on);
  FpPoint at = fp_place_unpoint (&support->place, (FpPoint) { church.x, church.y });
  FpPlace origin = { at.x, at.y, church.turn - support->place.turn };
  if (kind->flags & FP_KIND_HUNG)
    return origin;
  return fp_place_from_bearing (&support->extent.bearing, kind->anchor, plan, &origin);
}

FpBox3
fp_scene_box (const FpScene *self)
{
  return self->box;
}

FpBox3
fp_scene_sanctuary (const FpScene *self)
{
  return self->sanctuary;
}
