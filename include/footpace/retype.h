/* SPDX-License-Identifier: GPL-3.0-or-later */
/* retype.h - a measure that is no single parameter, typed over
 *
 * What changes is what a draughtsman would change: of two things the chosen
 * one moves, else the one farther from the altar; what is set out from a line
 * moves, and the line stays; footpaces grow; walls move with what touches
 * them; what is symmetrical about the axis stays so.
 */
#pragma once

#include "stretch.h"

G_BEGIN_DECLS

/* Whether it is a level above the datum, not a length. */
gboolean   fp_stretch_is_level (const FpStretch *self);
/* As it is now, mm. */
double     fp_stretch_value (const FpStretch *self);
/* "Altar rail to Footpace", "Level of Chancel floor"; owned by the caller. */
char      *fp_stretch_tells (const FpStretch *self, const FpScene *scene);

/**
 * fp_retype:
 * @value: mm; a length, or a level above the datum
 * @chosen: ids, ended by NULL: of two things the one that is among them moves
 *
 * Returns: the next project; NULL with an error that can be shown
 */
FpProject *fp_retype (const FpScene *scene, const FpStretch *measured, double value, const char *const *chosen,
                      GError **error);

/* The building between two faces, along x or y: the walls with what touches them; see FP_STRETCH_WALLS. */
FpProject *fp_retype_walls (const FpScene *scene, FpVec3 a, FpVec3 b, double value, GError **error);

G_END_DECLS
