/* SPDX-License-Identifier: GPL-3.0-or-later */
/* random-sanctuary.h - sanctuaries with everything in them, in any size and place that may be */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

/* The same number gives the same scene. */
FpScene *random_sanctuary_new (guint32 seed, FpUnits units);

G_END_DECLS
