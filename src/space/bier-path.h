/* SPDX-License-Identifier: GPL-3.0-or-later */
/* bier-path.h - a way of a bier from pose to pose, and how wide it may be on each leg between; private to src/space */
#pragma once

#include "bier-search.h"

G_BEGIN_DECLS

#define FP_BIER_SAMPLE 4.0 /* mm: a corner moves no farther from one look to the next */

typedef struct
{
  double     width; /* of the widest on all of the leg, or the way */
  FpBierPose at;    /* where it is tightest                        */
} FpBierTightest;

typedef struct
{
  FpBierRoom *room;
  double      length, most; /* of the bier; what is wider is not told                  */
  GArray     *poses;        /* (element-type FpBierPose)                               */
  GArray     *legs;         /* (element-type FpBierTightest): from each to the next    */
} FpBierPath;

/* Takes @poses, which are not empty. */
FpBierPath    *fp_bier_path_new      (FpBierRoom *room, double length, double most, GArray *poses);
void           fp_bier_path_free     (FpBierPath *self);
FpBierTightest fp_bier_path_tightest (const FpBierPath *self);
/* Its tight parts, as far as they are less wide than @enough, in steps half as long as those of @coarse; what gets no wider
 * by that stays. */
void           fp_bier_path_refine   (FpBierPath *self, const FpBierAsk *coarse, double enough);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpBierPath, fp_bier_path_free)

G_END_DECLS
