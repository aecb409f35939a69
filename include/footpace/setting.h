/* SPDX-License-Identifier: GPL-3.0-or-later */
/* setting.h - what stands, is veiled and burns at one kind of celebration
 *
 * What nobody decided follows from one table (src/space/setting-table.c), each
 * line of which names its source; what an alternative says of a setting goes
 * before it.  The table tells what printed books and authors say, and what is
 * from memory: never what is allowed.
 *
 * Only furnishings are told of: the building always stands.
 */
#pragma once

#include "footpace/project.h"

G_BEGIN_DECLS

typedef struct _FpScene FpScene;
typedef struct _FpSetting FpSetting;

/* Why it is so, and where that is said; static. */
typedef struct { const char *why, *source; } FpReason;

typedef struct
{
  const FpItem *item;      /* borrowed from the project                     */
  gboolean      stands, veiled;
  guint         lights;    /* that it has                                   */
  guint         lit;       /* of them; 0 where it does not stand            */
  gboolean      about;     /* candles on or beside the altar of celebration */
  FpReason      standing, veiling, lighting; /* why NULL: nothing is said of it */
} FpSetThing;

/* Where the alternative itself says so. */
#define FP_SETTING_DECIDED "decided here"

/**
 * fp_setting_new:
 * @whole: the scene of all things
 * @one: the celebration
 *
 * Returns: (transfer full): of every furnishing that the alternative does not remove
 */
FpSetting        *fp_setting_new   (const FpScene *whole, FpCelebration one);
FpSetting        *fp_setting_of    (const FpProject *project, guint alternative, FpCelebration one);
FpSetting        *fp_setting_ref   (FpSetting *self);
void              fp_setting_unref (FpSetting *self);
FpCelebration     fp_setting_celebration (const FpSetting *self);
/* Of vestments and veils; FP_COLOUR_UNSAID: of the day. @reason: (out) (optional) */
FpColour          fp_setting_colour (const FpSetting *self, FpReason *reason);
/* Of what has that office: the same, but that nothing black hangs before the Blessed Sacrament: its veil, and the frontal of an
 * altar where a tabernacle stands, are violet then (custom and decrees, from memory). */
FpColour          fp_setting_colour_of (const FpSetting *self, FpRole role);
const FpSetThing *fp_setting_things (const FpSetting *self, guint *n);
const FpSetThing *fp_setting_find  (const FpSetting *self, const char *id); /* NULL */
/* Candles about the altar that burn, and what the books ask of their number: @least and @most (out) (optional), 0: nothing. */
guint             fp_setting_lit   (const FpSetting *self, guint *least, guint *most, FpReason *reason);

/* One light. */
typedef struct
{
  FpVec3   at;     /* its wick, church coordinates                          */
  guint    owner;  /* index of the placed thing                             */
  gboolean lit;
} FpLight;
/* (element-type FpLight): all lights that stand in the scene.  Which of a thing burn where not all do: pairs, those nearest
 * the middle first; of an odd number the middle one, where there is one. Without a setting all of them do. */
GArray           *fp_scene_lights  (const FpScene *scene);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpSetting, fp_setting_unref)

G_END_DECLS
