/* SPDX-License-Identifier: GPL-3.0-or-later */
/* room.h - where there is room to put something
 *
 * Private to src/space.  What setting out asks of a scene: how far the
 * sanctuary and the nave reach, how far it is to a wall, and whether a spot
 * is taken.  Church coordinates, mm.
 */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

typedef struct
{
  const FpScene *scene;
  const FpPlaced *placed; /* of the scene                                    */
  guint    n_placed;
  FpBox    sanctuary;  /* of the ministers' floors; where there are none, taken from what there is */
  FpBox    nave;       /* of the people's floors, likewise                   */
  gboolean has_sanctuary, has_nave; /* FALSE where the box is a guess        */
  int      altar;      /* index of the altar of celebration, -1              */
  int      footpace;   /* under that altar, else any; -1                     */
  GArray  *bounds;     /* private: walls, piers and screens                  */
  GArray  *ways;       /* private: through openings                          */
} FpRoom;

void fp_room_init  (FpRoom *self, const FpScene *scene);
void fp_room_clear (FpRoom *self);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (FpRoom, fp_room_clear)

/* How far one can go from @from along the unit vector @way before a wall, a pier or a screen, at most @most. */
double fp_room_reach (const FpRoom *self, FpPoint from, FpPoint way, double most);

/* The ministers' floor across the church at y, between the walls: x0 <= 0 <= x1. */
void fp_room_across (const FpRoom *self, double y, double *x0, double *x1);

/* Along the axis: from the edge towards the nave to the wall or edge in the east. */
void fp_room_along (const FpRoom *self, double *y0, double *y1);

/* Likewise of the people's floor. */
void fp_room_nave_across (const FpRoom *self, double y, double *x0, double *x1);
void fp_room_nave_along  (const FpRoom *self, double *y0, double *y1);

typedef enum
{
  FP_ROOM_UNDER_ARCHES = 1 << 0, /* it may stand in an opening that is too wide to be a door */
  FP_ROOM_ON_ANY_LEVEL = 1 << 1, /* it may stand across the edge of a floor                  */
  FP_ROOM_AMONG_PEOPLE = 1 << 2, /* it must stand on a floor of the people, where any is measured */
} FpRoomFlags;

/**
 * fp_room_is_free:
 * @plan: of the thing, in its own coordinates
 * @place: where it would come
 * @gap: to be kept from others on all sides; touching a wall is no harm
 * @on: index of what it would stand on, which is then not in its way; -1
 * @flags: FpRoomFlags
 *
 * Clear, too, of the ways through doors and round altars that stand free.
 */
gboolean fp_room_is_free (const FpRoom *self, const FpBox *plan, const FpPlace *place, double gap, int on, guint flags);

/* Whether nothing is in a box of church coordinates but @except and what stands on it (-1: nothing at all). */
gboolean fp_room_is_clear (const FpRoom *self, const FpBox *box, int except, guint flags);

/* Whether the plans of a thing and of another that is there have more than an edge in common. */
gboolean fp_room_overlaps (const FpBox *plan, const FpPlace *place, const FpPlaced *other);

/* The free place nearest to @wish within @bounds (at @wish when there is none). */
FpPlace fp_room_nearest_free (const FpRoom *self, const FpBox *plan, FpPlace wish, const FpBox *bounds, double gap,
                              guint flags);

/* The footpace if @plan at @place lies wholly on it, else -1. */
int fp_room_footpace_under (const FpRoom *self, const FpBox *plan, const FpPlace *place);

/* Whether the thing stands, perhaps on other things, on @support. */
gboolean fp_room_stands_on (const FpRoom *self, int thing, int support);

/* To the millionth of a millimetre: turning to and fro leaves dust, which would be written into the file. */
FpPlace fp_place_tidy (const FpPlace *place);

/* Whether it is an opening in that side (from 1) of that wall, at whatever height. */
static inline gboolean
fp_item_is_in_side (const FpItem *item, const char *wall, guint side)
{
  return (fp_item_kind (item)->flags & FP_KIND_IN_WALL) != 0 && g_strcmp0 (fp_item_on (item), wall) == 0
         && (guint) fp_item_param (item, "side") == side;
}

static inline gboolean
fp_placed_has_role (const FpPlaced *placed, FpRole role)
{
  return !placed->ghost && fp_item_kind (placed->item)->role == role;
}

G_END_DECLS
