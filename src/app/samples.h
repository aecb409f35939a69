/* SPDX-License-Identifier: GPL-3.0-or-later */
/* samples.h - where the invented parishes lie */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Beside the source the program was built from, or where it was installed; owned by the caller. It may not exist. */
char *fp_sample_path (const char *name);

G_END_DECLS
