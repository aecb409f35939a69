/* SPDX-License-Identifier: GPL-3.0-or-later */
/* cause.h - what the system said, for a message of our own */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* “Permission denied”, without what GLib says before it of a file that the person never named.
 * Returns: (transfer none): the end of @error's message */
const char *fp_error_cause (const GError *error);

G_END_DECLS
