/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/error.h"

G_DEFINE_QUARK (fp-error-quark, fp_error)
