/* SPDX-License-Identifier: GPL-3.0-or-later */
/* random-parish.h - whole projects in which much is amiss, for tests */
#pragma once

#include "taking.h"

G_BEGIN_DECLS

/* A church with what belongs into it, much of it at another size or place than it should be; the same for the same seed. */
FpProject *random_parish_new (guint32 seed);

G_END_DECLS
