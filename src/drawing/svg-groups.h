/* SPDX-License-Identifier: GPL-3.0-or-later */
/* svg-groups.h - marks gathered into a group a thing */
#pragma once

#include "footpace/surface.h"

G_BEGIN_DECLS

typedef struct
{
  FpMark  of;      /* what all its marks share: item, standing, view, dimension, param */
  GArray *marks;   /* guint: indices into the drawing's marks          */
  FpBox   box;     /* paper mm                                         */
} FpSvgGroup;

/**
 * fp_svg_groups_new:
 *
 * In the order in which they are to be painted, all groups of one view next to each other where the
 * drawing has them so.  A mark joins the group that its thing has already, unless it would then be
 * painted under (or over) an area that it lay over (or under): then its thing gets another group.
 *
 * Returns: (transfer full) (element-type FpSvgGroup)
 */
GArray *fp_svg_groups_new (const FpDrawing *drawing);

G_END_DECLS
