/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A locale in which people write 0,35. */
#pragma once

#include <glib.h>

/* Sets one with a decimal comma, made where none is installed; FALSE: there is none, and nothing was set. */
gboolean comma_locale (void);
