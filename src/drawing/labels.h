/* SPDX-License-Identifier: GPL-3.0-or-later */
/* labels.h - names on the plan
 *
 * Larger things carry their name inside; smaller ones beside them, at a short
 * leader; only where it crosses nothing that is drawn.  What finds no such
 * place goes without.
 */
#pragma once

#include "cover.h"
#include "wanted.h"

G_BEGIN_DECLS

#define FP_LABEL_HEIGHT 2.5

typedef struct
{
  const char *item;      /* interned; NULL: of the sanctuary               */
  FpStanding  standing;
  char       *text;      /* owned                                          */
  FpPoint     at;        /* middle of its base line                        */
  double      turn;
  gboolean    has_ground; /* it interrupts the axis                        */
  FpBox       ground;
  gboolean    has_leader;
  FpPoint     leader[2]; /* from the thing to the text                     */
} FpLabel;

/* Letters what the plan shows within @content (paper mm); (element-type FpLabel). */
GArray *fp_labels_place (FpProjection *projection, const FpViewLayout *layout, const gboolean *shows,
                         const FpBox *content, FpCover *room);
void    fp_labels_draw  (FpDrawing *drawing, const GArray *labels, FpViewId view);

G_END_DECLS
