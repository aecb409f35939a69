/* SPDX-License-Identifier: GPL-3.0-or-later */
/* comparing.h - all alternatives of a project, checked */
#pragma once

#include "footpace/review.h"

G_BEGIN_DECLS

GPtrArray    *fp_comparing_findings (const FpProject *project); /* (element-type FpFindings), owned by the caller */
FpComparison *fp_comparing_new      (GPtrArray *findings);
int           fp_comparing_exit     (GPtrArray *findings); /* FP_EXIT_SHORT when any is short of something required */

G_END_DECLS
