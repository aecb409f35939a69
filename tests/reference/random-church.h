/* SPDX-License-Identifier: GPL-3.0-or-later */
/* random-church.h - solids of all shapes, as they stand in a church */
#pragma once

#include "footpace/solid.h"

G_BEGIN_DECLS

/* Walls, piers round and star-shaped, sloping floors, seats, heads and trunks; the same for the same seed. */
FpSolids *random_church_new (GRand *rand, guint n_people);
FpVec3    random_church_eye (GRand *rand);
FpVec3    random_church_focus (GRand *rand);

G_END_DECLS
