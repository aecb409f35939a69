/* SPDX-License-Identifier: GPL-3.0-or-later */
/* setting-edit.h - one thing of a setting decided otherwise, or again as the rule has it; knows no toolkit */
#pragma once

#include "footpace/scene.h"

G_BEGIN_DECLS

/* Of one of them, the others being as they were.  What the rule says of itself is no decision, and not kept.
 * Returns: (transfer full): the next project; %NULL with an error */
FpProject *fp_setting_edit_stands (const FpProject *project, guint alternative, FpCelebration one, const char *id,
                                   gboolean stands, GError **error);
FpProject *fp_setting_edit_veiled (const FpProject *project, guint alternative, FpCelebration one, const char *id,
                                   gboolean veiled, GError **error);
FpProject *fp_setting_edit_lit    (const FpProject *project, guint alternative, FpCelebration one, const char *id, guint lit,
                                   GError **error);

G_END_DECLS
