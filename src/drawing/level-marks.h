/* SPDX-License-Identifier: GPL-3.0-or-later */
/* level-marks.h - levels beside an elevation or a section
 *
 * A triangle on its level line, with the height above the datum; filled for
 * the datum itself, open for all others (ISO 129-1 and ISO 7519, from memory).
 */
#pragma once

#include "cover.h"
#include "tiers.h"

G_BEGIN_DECLS

typedef struct
{
  double      level;   /* world mm above the datum                           */
  double      v;       /* paper mm                                           */
  guint       rank;
  const char *item;    /* interned                                           */
  const char *param;   /* interned; NULL: it follows from others             */
  FpStretch  measured; /* what typing over it changes                       */
  char        text[32];
  double      width;
  double      near, far; /* paper mm between which its thing lies            */
  /* Where it was put: */
  gboolean    placed;
  FpSide      side;    /* left or right                                      */
  guint       column;  /* 0 nearest to the outline                           */
  gboolean    under;   /* the mark hangs under its line                      */
} FpLevelMark;

/* The distinct levels of a scene that lie in the clip of the layout, by rank; (element-type FpLevelMark).
 * @names: say of what lies outside of the clip what it is */
GArray *fp_levels_gather (const FpScene *scene, const FpViewLayout *layout, FpViewId view, const gboolean *shows,
                          guint rank_max, gboolean names);

/* Stacks them beside @content, on @first where there is room, and on the other side unless @only; returns how
 * many find none. */
guint   fp_levels_place (GArray *levels, const FpBox *content, FpSide first, gboolean only, FpCover *room);
void    fp_levels_draw  (FpDrawing *drawing, const GArray *levels, const FpBox *content, FpViewId view, guint *number);

/* How far the marks of a side reach from the outline, mm; 0 when there are none. */
double  fp_levels_reach (const GArray *levels, FpSide side);

/* Of the levels of datum, footpace, floors, altar and ceiling, those that found no room: "level +1.125"; (element-type utf8) */
void    fp_levels_untold (const GArray *levels, GPtrArray *untold);

/* Adds to @box what the marks cover. */
void    fp_levels_add_boxes (const GArray *levels, const FpBox *content, FpBox *box);

G_END_DECLS
