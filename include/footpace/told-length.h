/* SPDX-License-Identifier: GPL-3.0-or-later */
/* told-length.h - how exactly a length that was measured is told, in words and on a drawing alike */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Decimals of @mm, a length in millimetres: none; one of what is of the order of a millimetre, less than 20 mm. */
int    fp_told_decimals (double mm);
/* Rounded to them, mm. */
double fp_told_length   (double mm);

G_END_DECLS
