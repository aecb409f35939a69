/* SPDX-License-Identifier: GPL-3.0-or-later */
/* setting-out.h - edits that an architect makes, on a project
 *
 * Each returns the next project, or NULL with an error that can be shown.
 * None changes its arguments.
 */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

/**
 * fp_set_out_new:
 * @id: (out) (optional) (transfer full): the id that it was given
 *
 * Adds a thing of @kind where it belongs by the kind's rule: on the best
 * support that is there, on its side, clear of walls, of what stands there
 * already, of the ways through doors and of the way round an altar.  A kind
 * of the survey goes into the survey.
 *
 * A reredos for which there is no room behind the altar brings the altar and
 * all that stands with it forward, where there is room before it.  Pews come
 * as two blocks about a middle aisle, @id being the first; beside a block
 * that stands alone, as its like on the other side.
 */
FpProject *fp_set_out_new (const FpScene *scene, const FpKind *kind, char **id, GError **error);

/**
 * fp_set_out_move:
 * @by: how far, church coordinates, mm (z is ignored: levels come from what things stand on)
 *
 * Moves a thing and all that stands on it.  Taking hold of a footpace moves
 * what it lies round.  A thing of the survey that is a furnishing becomes
 * "moved" in this alternative; a part of the building is measured anew (for
 * all alternatives).
 */
FpProject *fp_set_out_move (const FpScene *scene, const char *id, FpVec3 by, GError **error);

/* Several, ended by NULL, of which none stands on another: in one go, as long as it takes for each. */
FpProject *fp_set_out_move_all (const FpScene *scene, const char *const *ids, FpVec3 by, GError **error);

/* One parameter, by its id.  For a thing of the survey: measured anew.  An opening that comes into another side of its
 * wall stays as far along as there is room. */
FpProject *fp_set_out_param (const FpScene *scene, const char *id, const char *param, double value, GError **error);

/* Where a thing stands, in the terms of its own place (FpItem), and its turn. */
FpProject *fp_set_out_place (const FpScene *scene, const char *id, const FpPlace *place, GError **error);
FpProject *fp_set_out_name  (const FpScene *scene, const char *id, const char *name, GError **error);

/* Puts a thing on another support (NULL: the floor), where it is on the plan. */
FpProject *fp_set_out_on    (const FpScene *scene, const char *id, const char *on, GError **error);

/* A proposed thing is taken away with all that stands on it; one of the
 * survey becomes "removed" in this alternative, with all that stands on it. */
FpProject *fp_set_out_remove (const FpScene *scene, const char *id, GError **error);

/* A thing of the survey that was moved or removed is kept again. */
FpProject *fp_set_out_restore (const FpScene *scene, const char *id, GError **error);

G_END_DECLS
