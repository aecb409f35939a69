/* SPDX-License-Identifier: GPL-3.0-or-later */
/* free-floor-private.h - Private to src/space: how a free floor is put together */
#pragma once

#include "footpace/free-floor.h"

G_BEGIN_DECLS

/* What people walk on before anything stands there; its outline is borrowed from the scene. */
typedef struct
{
  const FpPoint *outline;
  guint          n_outline;
  double         z, gx, gy;
  FpFloorUse     use;
  int            owner;
  gboolean       is_step;  /* a floor gives its name to a level before a step does */
} FpWalked;

/* (element-type FpWalked): the highest first. */
GArray *fp_walked_new (const FpScene *scene);

/* (element-type FpLevelJoint) */
GArray *fp_level_joints_new (const FpFreeLevel *level, guint n_levels);

/* The outline of a solid on the plan; free with g_free(). */
FpPoint *fp_solid_plan (const FpSolid *solid, guint *n);

G_END_DECLS
