/* SPDX-License-Identifier: GPL-3.0-or-later */
/* norms-held.h - rules as the parish holds them
 *
 * Private to src/rules.
 */
#pragma once

#include "footpace/rules.h"

G_BEGIN_DECLS

/* Why the norms set the rule apart: the book is not followed, another law, another choice, or a reason.  NULL: they do not. */
char *fp_norms_set_apart (const FpNorms *norms, const FpRulebook *book, const FpRule *rule);

/**
 * fp_norms_changed_rule:
 * @changed: (out): filled where the norms change the limit; borrows from @rule
 * @amiss: (out): why the change cannot be made of such a rule, which is then held as printed; owned by the caller
 *
 * Returns: whether @changed is the rule to hold
 */
gboolean fp_norms_changed_rule (const FpNormChange *change, const FpRule *rule, FpRule *changed, char **amiss);

/* Adds a sentence for each rule that the norms speak of and no book has. */
void fp_norms_unknown (const FpNorms *norms, GPtrArray *books, GPtrArray *amiss);

G_END_DECLS
