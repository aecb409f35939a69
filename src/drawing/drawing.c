/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <glib.h>
typedef int fp_not_empty;
