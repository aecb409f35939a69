/* SPDX-License-Identifier: GPL-3.0-or-later */
/* furnish.h - a whole sanctuary set out by rule, in one step
 *
 * What a celebration needs and the alternative has not is added where it
 * belongs (fp_set_out_new()), one after the other: the altar on its steps
 * first, then what stands on and about it.  What would stand in another's way,
 * or in a wall, is left out and told of.
 */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

typedef struct
{
  const FpKind *kind;
  char         *id;   /* of what was added; NULL: it was left out            */
  char         *why;  /* why it was left out: "it would stand in “Sedilia”"; NULL */
} FpFurnished;

GArray    *fp_furnished_new (void); /* (element-type FpFurnished); frees what they hold */

/**
 * fp_furnish:
 * @one: the celebration
 * @told: (element-type FpFurnished): appended to
 *
 * Returns: (transfer full): the next project, which is the same where nothing was added; NULL with an error where not even
 *   an altar can be set out
 */
FpProject *fp_furnish (const FpScene *scene, FpCelebration one, GArray *told, GError **error);

/* What was done in a sentence or two, for the person who asked: owned by the caller. */
char      *fp_furnished_text (const GArray *told);

G_END_DECLS
