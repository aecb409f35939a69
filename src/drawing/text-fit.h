/* SPDX-License-Identifier: GPL-3.0-or-later */
/* text-fit.h - texts made to fit the room that there is; heights and widths in paper mm */
#pragma once

#include "footpace/lettering.h"

G_BEGIN_DECLS

/* As fp_lettering_wrap(), in at most @most lines, the last of them shortened where there is more. */
GPtrArray *fp_lettering_wrap_most (const char *text, double height, double width, guint most);

/* The largest of @heights (ended by 0) at which the text fits, or the last of them. */
double     fp_lettering_height_that_fits (const char *text, double width, const double *heights);

G_END_DECLS
