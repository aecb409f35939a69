/* SPDX-License-Identifier: GPL-3.0-or-later */
/* scene-private.h - what is made of a scene when somebody asks for it, and kept with it
 *
 * Private to src/space.
 */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

/* What is made of what lies before it: no slot may ask for a later one while it is made. */
typedef enum
{
  FP_KEPT_FREE_FLOOR,
  FP_KEPT_WAYS,
  FP_N_KEPT
} FpKept;

typedef gpointer (*FpKeptMake) (const FpScene *scene);

/* Made once, by whichever thread asks first; the others wait for it. @make, @drop: always the same for a slot. */
gconstpointer fp_scene_keep (const FpScene *self, FpKept slot, FpKeptMake make, GDestroyNotify drop);

G_END_DECLS
