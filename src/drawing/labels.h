/* SPDX-License-Identifier: GPL-3.0-or-later */
/* labels.h - names on the plan
 *
 * Larger things carry their name inside; smaller ones beside them, at a short
 * leader that ends on the thing; only where it crosses nothing that is drawn.
 * Names are broken into lines before they are shortened.  A block of pews may
 * carry its name over its rows.  What finds no such place goes without.
 */
#pragma once

#include "cover.h"
#include "wanted.h"

G_BEGIN_DECLS

#define FP_LABEL_HEIGHT 2.5

/* A name may take so many lines. */
#define FP_LABEL_LINES 3

/* How a name was placed, about the middle of its thing: paper mm. */
typedef struct
{
  const char *item;
  FpPoint     thing;     /* the middle of it                               */
  FpPoint     middle;    /* of the text                                    */
  double      turn;
  gboolean    has_leader;
  FpPoint     leader[2];
  guint       way, crosses;
  gboolean    over_axis, over_rows;
} FpLabelPlace;

typedef struct
{
  const char *item;      /* interned; NULL: of the sanctuary               */
  FpLabelPlace place;
  FpStanding  standing;
  char       *line[FP_LABEL_LINES]; /* owned                               */
  guint       n_lines;
  double      lettering; /* height of its capitals                         */
  FpPoint     at[FP_LABEL_LINES];   /* middle of the base line of each     */
  double      turn;
  gboolean    has_ground; /* it interrupts the axis, or the rows of pews   */
  gboolean    has_leader;
  FpPoint     leader[2]; /* from the thing towards the text                */
  FpPoint     shelf;     /* and on to it                                   */
} FpLabel;

/* None yet; (element-type FpLabel). */
GArray *fp_labels_new   (void);

/* The name of the altar ranks above all else on the plan. */
typedef enum { FP_LABELS_ALTAR, FP_LABELS_REST, FP_LABELS_SMALL } FpLabelsAmong;

/* Letters what the plan shows within @content (paper mm) and adds it to @out.
 * @outside: (nullable): names that find no room there may stand left and right of this; paper mm
 * @drawn: (element-type FpProjectedLine): what is drawn of all things
 * @before: (nullable) (element-type FpLabelPlace): where names stood, and stay where they still fit
 *
 * Returns: how many things found no room for their name
 */
guint   fp_labels_place (FpProjection *projection, const FpViewLayout *layout, const gboolean *shows, const GArray *drawn,
                         const FpBox *content, const FpBox *outside, FpLabelsAmong among, const GArray *before,
                         FpCover *room, GArray *out);
/* What the texts cover, added to a box. */
void    fp_labels_add_boxes (const GArray *labels, FpBox *box);
void    fp_labels_draw  (FpDrawing *drawing, const GArray *labels, FpViewId view);

G_END_DECLS
