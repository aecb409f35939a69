/* SPDX-License-Identifier: GPL-3.0-or-later */
/* new-church.h - a project to begin from: the brief, a room, and what can be set out in it by rule
 *
 * Lengths in mm, inside the walls.  The church lies about the axis, the end
 * of the nave (and of the transepts) at y = 0, its floor at the datum.
 */
#pragma once

#include "footpace/project.h"

G_BEGIN_DECLS

typedef enum
{
  FP_ROOM_RECTANGLE, /* nave and sanctuary of one width                       */
  FP_ROOM_CHANCEL,   /* a narrower chancel beyond the nave                    */
  FP_ROOM_TRANSEPTS, /* arms to either side before the chancel                */
  FP_ROOM_WALKED,    /* an outline of one's own                               */
  FP_N_ROOMS
} FpRoomShape;

const char *fp_room_shape_id    (FpRoomShape shape);
const char *fp_room_shape_label (FpRoomShape shape); /* "Nave with a chancel" …    */

typedef struct
{
  FpBrief     brief;            /* texts borrowed for the call               */
  FpRoomShape shape;
  gboolean    apse;             /* the sanctuary ends in a half circle; not of a rectangle or a walked outline */
  double      nave_width, nave_length;
  double      sanctuary_width;  /* not of a rectangle                        */
  double      sanctuary_depth;  /* to the wall in the east, the apse included */
  double      sanctuary_level;  /* above the nave; 0: none                   */
  double      transept_span;    /* over both arms, from wall to wall         */
  double      transept_width;   /* of an arm, along the church               */
  double      wall_height, wall_thickness;
  gboolean    doors;            /* a door in the west, and one to a sacristy  */
  gboolean    furnish;          /* an altar on its steps, with its lights and the furniture that the books ask; set out by rule, as far as there is room */
  const FpPoint *corner;        /* FP_ROOM_WALKED: inside the walls, either way round; borrowed */
  guint       n_corners;
} FpNewChurch;

/* A church of middling size; texts are static. */
void       fp_new_church_defaults (FpNewChurch *spec);

/**
 * fp_new_church_make:
 *
 * Pews are set out when the brief wants seats: as many rows as give that
 * many, as far as the nave holds them.
 *
 * Returns: the project; %NULL with %FP_ERROR_RANGE or %FP_ERROR_GEOMETRY, saying which measure and what it may be
 */
FpProject *fp_new_church_make     (const FpNewChurch *spec, GError **error);

/* The walls' inner face as it would be built: an array of FpPoint, owned by the caller; NULL as above. */
GArray    *fp_new_church_outline  (const FpNewChurch *spec, GError **error);

G_END_DECLS
