/* SPDX-License-Identifier: GPL-3.0-or-later */
/* kind-scenes.h - each kind where it belongs, with what carries it and one person who looks at it */
#pragma once

#include "footpace/people.h"

G_BEGIN_DECLS

#define KIND_SCENE_ID "it" /* of the thing of that kind */

/* With default parameters, its front to the people, on the axis. */
FpScene *kind_scene_new (const FpKind *kind);

/* The place of the one person who looks. */
guint kind_scene_eye (const FpPeople *people);

G_END_DECLS
