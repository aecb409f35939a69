/* SPDX-License-Identifier: GPL-3.0-or-later */
/* falls.h - how steeply floors fall: "1:16.7" with an arrow that points down the slope */
#pragma once

#include "cover.h"
#include "footpace/view.h"

G_BEGIN_DECLS

typedef struct
{
  const char *item;     /* interned; the floor                               */
  char        text[32];
  FpPoint     at;       /* middle of the base line, paper mm                 */
  gboolean    has_arrow; /* on the plan the floor has its own                */
  FpPoint     from, to;
} FpFall;

/* Of the floors that the view shows, where there is room within @content; (element-type FpFall). */
GArray *fp_falls_place (FpProjection *projection, const FpViewLayout *layout, const FpBox *content, FpCover *room);
void    fp_falls_draw  (FpDrawing *drawing, const GArray *falls, FpViewId view);

G_END_DECLS
