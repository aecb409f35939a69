/* SPDX-License-Identifier: GPL-3.0-or-later */
/* own-rules.h - rules made for a test, held without any others */
#pragma once

#include "taking.h"

G_BEGIN_DECLS

/* held: attributes of measure, test and limit, and whatever else; the title is "Of ID". */
typedef struct { const char *id, *held, *weight; } OwnRule;

GPtrArray  *own_book (const OwnRule *rule, guint n);
/* Of the first alternative. */
FpFindings *own_held (const FpProject *project, const OwnRule *rule, guint n, gboolean sight);

G_END_DECLS
