/* SPDX-License-Identifier: GPL-3.0-or-later */
/* lettering.h - how wide letters are
 *
 * Millimetres of paper; every surface letters alike.
 */
#pragma once

#include "footpace/geom.h"

G_BEGIN_DECLS

/* Width of a text in mm as every surface letters it. */
double fp_lettering_width (const char *text, double height);

/* The text, or as much of it as fits @width mm with an ellipsis; line breaks become spaces.
 * Empty when not even the ellipsis fits. Owned by the caller. */
char      *fp_lettering_shorten (const char *text, double height, double width);

/**
 * fp_lettering_wrap:
 * @width: of the column, mm
 *
 * Broken at spaces; a word wider than the column is broken where it must be.
 *
 * Returns: (transfer full) (element-type utf8): at least one line, none wider than @width
 *   (unless a single letter is)
 */
GPtrArray *fp_lettering_wrap (const char *text, double height, double width);

G_END_DECLS
