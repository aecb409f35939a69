/* SPDX-License-Identifier: GPL-3.0-or-later */
/* arrange.h - edits of several things at once, as a draughtsman makes them
 *
 * @ids is ended by NULL; each names a thing of the scene (not removed there).
 * What stands on a chosen thing goes with it, and is not moved twice when it
 * is chosen too.  Each function returns the next project, or NULL with an
 * error that can be shown; none changes its arguments.
 */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

/* As fp_set_out_move(), all of them by the same. */
FpProject *fp_arrange_move   (const FpScene *scene, const char *const *ids, FpVec3 by, GError **error);

/* As fp_set_out_remove(). */
FpProject *fp_arrange_remove (const FpScene *scene, const char *const *ids, GError **error);

/* One parameter of all of them, those too that stand on one another.  They need not be of one kind as long as each
 * has it.  An error names the first that cannot take it. */
FpProject *fp_arrange_param  (const FpScene *scene, const char *const *ids, const char *param, double value,
                              GError **error);

/* So that the middle of all their plans together comes on the axis of the church. */
FpProject *fp_arrange_centre (const FpScene *scene, const char *const *ids, GError **error);

/**
 * fp_arrange_mirror:
 * @copy: leave them where they are and set out their like on the other side
 * @made: (out) (optional) (transfer full): ids of what was made (of the chosen things, not of what stands on them)
 *
 * About the axis, from the Gospel to the Epistle side or back.
 */
FpProject *fp_arrange_mirror (const FpScene *scene, const char *const *ids, gboolean copy, char ***made, GError **error);

/* @times (1..100) further ones, each set @by farther than the one before.  Upward only what has a level of its own
 * (floors, galleries, walls): with z other than 0 anything else is an error. */
FpProject *fp_arrange_repeat (const FpScene *scene, const char *const *ids, FpVec3 by, guint times, char ***made,
                              GError **error);

/**
 * fp_arrange_space:
 * @along_church: along the axis instead of across it
 *
 * Equal clear gaps between at least three things; the two outermost stay.
 */
FpProject *fp_arrange_space  (const FpScene *scene, const char *const *ids, gboolean along_church, GError **error);

/**
 * fp_arrange_level:
 * @like: id of the thing whose top gives the level
 *
 * The top of each comes to the top of @like: floors and galleries by their
 * level, other things by their height.  An error names the first that has
 * neither, or would leave its range.
 */
FpProject *fp_arrange_level  (const FpScene *scene, const char *const *ids, const char *like, GError **error);

/**
 * fp_arrange_can_level:
 * @like: id of a thing of the scene
 *
 * Whether fp_arrange_level() would do it, and change something; soon known, for a list of what there is to choose from.
 * %FP_ERROR_INVALID: one of them has neither level nor height, whatever @like is.
 */
gboolean   fp_arrange_can_level (const FpScene *scene, const char *const *ids, const char *like, GError **error);

/**
 * fp_arrange_copy_to:
 * @alternative: another than the scene's
 *
 * Furnishings are added there, on the same support where that is there too
 * and else on the floor; one of the survey gets the fate there that it has here.
 */
FpProject *fp_arrange_copy_to (const FpScene *scene, const char *const *ids, guint alternative, GError **error);

/**
 * fp_arrange_existing:
 * @made: (out) (optional) (transfer full): the ids of the chosen things afterwards
 *
 * What was set out in this alternative stands there already: it goes into the
 * survey with what carries it, and is existing in every alternative from then
 * on.  What stands on it stays proposed.  An error when all of it is surveyed.
 */
FpProject *fp_arrange_existing (const FpScene *scene, const char *const *ids, char ***made, GError **error);

G_END_DECLS
