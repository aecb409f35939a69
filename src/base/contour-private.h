/* SPDX-License-Identifier: GPL-3.0-or-later */
/* contour-private.h - what the files of contours share */
#pragma once

#include "footpace/contour.h"

G_BEGIN_DECLS

/* Leaves out what lies on the straight between others, and puts cut corners back (element-type FpPoint). */
void    fp_contour_straighten (GArray *ring, const FpField *field, double step);

/* (transfer full): each hole behind the ring that it lies in. */
GArray *fp_contour_sort (const GArray *rings);

G_END_DECLS
