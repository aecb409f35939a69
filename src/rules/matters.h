/* SPDX-License-Identifier: GPL-3.0-or-later */
/* matters.h - where printed sources disagree
 *
 * Private to src/rules.  Rules that name one matter are what several sources
 * print of the same thing.  The parish may go by one of them; until it does,
 * all are held, and what they say is told once.
 */
#pragma once

#include "footpace/rules.h"

G_BEGIN_DECLS

/**
 * fp_matters_settle:
 * @list: (element-type FpFinding)
 *
 * Of a matter on which the parish has not chosen: what is short is set apart where another source is met that leaves no
 * value for both, and of several that are short one is told, the weightiest, and of these the one that asks least.  Each
 * tells what the others have.
 */
void fp_matters_settle (GArray *list, const FpNorms *norms);

G_END_DECLS
