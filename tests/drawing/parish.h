/* SPDX-License-Identifier: GPL-3.0-or-later */
/* parish.h - an invented church with everything in it, for tests of drawings */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

/* Nave and sanctuary with walls and openings; one old altar taken away, the old rail moved. */
FpScene *parish_scene_new (void);

/* Two aisles of piers, @rows rows of curved and straight pews, a gallery: 20 seats a row and more. */
FpScene *great_scene_new (guint rows);

G_END_DECLS
