/* SPDX-License-Identifier: GPL-3.0-or-later */
/* bier-room.h - how wide a bier may be where it stands; private to src/space */
#pragma once

#include "footpace/room-to-move.h"

G_BEGIN_DECLS

typedef struct _FpBierRoom FpBierRoom;

/* Its middle, and which way its length runs, radians from +x. */
typedef struct { double x, y, turn; } FpBierPose;

/* On either side of its long axis, how far it is to what is nearest across it, and where that is. */
typedef struct
{
  double  left, right; /* no more than half of `most` */
  FpPoint at[2];       /* left, right; where there is something */
} FpBierSides;

/* Takes @edges (element-type FpBar). */
FpBierRoom *fp_bier_room_new   (GArray *edges, double length, double most);
void        fp_bier_room_free  (FpBierRoom *self);
void        fp_bier_room_sides (FpBierRoom *self, const FpBierPose *pose, FpBierSides *sides);
/* Of the widest with its middle there; 0: something lies across its axis. */
double      fp_bier_room_width (FpBierRoom *self, const FpBierPose *pose);

G_END_DECLS
