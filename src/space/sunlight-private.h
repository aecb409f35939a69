/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sunlight-private.h - what the files of sunlight share */
#pragma once

#include "footpace/sight.h"
#include "footpace/sun.h"

G_BEGIN_DECLS

/* An opening, seen in its own coordinates: x along the wall, y through it, z above its foot. */
typedef struct
{
  guint   index;      /* of the placed thing                              */
  FpPlace place;
  double  level;
  double  thickness, half, sill, head;
  gboolean arched;
} FpSunWindow;

struct _FpSunlight
{
  const FpPeople *people;   /* owned reference                            */
  FpVec3          towards;
  double          far;      /* mm: how far it is out of the church from anywhere in it */
  FpSolids       *solids;
  FpRayIndex     *index;
  GArray         *windows;  /* (element-type FpSunWindow)                      */
  gboolean        has_altar;
  FpPoint         altar;    /* its middle                                 */
};

/* Whether the ray towards the sun passes through that opening, whatever else stops it, and no next room follows. */
gboolean fp_sunlight_sees_sky (const FpSunlight *self, const FpSunWindow *window, FpVec3 from);

G_END_DECLS
