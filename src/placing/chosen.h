/* SPDX-License-Identifier: GPL-3.0-or-later */
/* chosen.h - the things that an edit is about
 *
 * Private to src/placing.
 */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

typedef struct
{
  const FpScene  *scene;   /* borrowed                                       */
  const FpPlaced *placed;  /* of the scene                                   */
  guint           n_placed;
  int            *index;   /* owned; of the chosen ones, those left out that stand on another */
  guint           n;
} Chosen;

/* FALSE with an error when one is not there, or fewer than @least are left. */
gboolean chosen_init  (Chosen *self, const FpScene *scene, const char *const *ids, guint least, GError **error);
void     chosen_clear (Chosen *self);

/* Whether the thing is chosen or stands, perhaps on other things, on one that is. */
gboolean chosen_carries (const Chosen *self, int thing);

/* All that goes with them, supports before what they carry; (element-type int), owned by the caller. */
GArray  *chosen_with_carried (const Chosen *self);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Chosen, chosen_clear)

G_END_DECLS
