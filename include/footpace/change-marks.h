/* SPDX-License-Identifier: GPL-3.0-or-later */
/* change-marks.h - what a change would make of the church, drawn over what is
 */
#pragma once

#include "footpace/view.h"

G_BEGIN_DECLS

/* What stands otherwise in @then than in @now, or only there: (element-type guint), indices in @then; owned by the caller. */
GArray *fp_changed_things (const FpScene *now, const FpScene *then);

/* Its lines in that view, with the pen of what is proposed, on a strip of paper that sets them off from what lies beneath.
 * @changed: of the projection's scene */
void    fp_drawing_add_change (FpDrawing *self, const FpProjection *then, const GArray *changed, const FpViewLayout *layout);

G_END_DECLS
