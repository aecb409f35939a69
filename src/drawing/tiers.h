/* SPDX-License-Identifier: GPL-3.0-or-later */
/* tiers.h - dimension lines set out beside a view
 *
 * Dimension lines lie in tiers on the four sides of a view, the shorter
 * nearer.  First tier at least 10 mm from the outline, as a course on ISO 129-1
 * has it (scribd.com/document/398713789); tiers 7.5 mm apart, between its 8 and
 * the 6 of the United States.  Extension lines begin at what is measured, and what
 * lies too far within the view for them is not dimensioned here.  No line crosses
 * another dimension's line or figure.
 */
#pragma once

#include "cover.h"
#include "wanted.h"

G_BEGIN_DECLS

#define FP_TIER_FIRST 10.0
#define FP_TIER_STEP  7.5

typedef struct
{
  FpBox  content;              /* outline of the view, paper mm              */
  double first[FP_N_SIDES];    /* of the first tier, from the outline        */
  guint  tiers[FP_N_SIDES];    /* most tiers; 0: nothing may stand there     */
  guint  more;                 /* and so many for what must be told          */
  double longest[FP_N_SIDES];  /* how far extension lines may reach into the view, mm */
} FpTierSides;

/* Sets measures out, side by side, until it is told that all is placed. */
typedef struct _FpTiers FpTiers;

/* @wanted, @sides and @room must outlive it. */
FpTiers *fp_tiers_new  (GArray *wanted, const FpTierSides *sides, FpCover *room);
void     fp_tiers_free (FpTiers *self);

/* What is placed now. */
typedef enum
{
  FP_TIERS_ALL,
  FP_TIERS_MUSTS,  /* only what must be told                                                              */
  FP_TIERS_INSIST, /* what must be told here, whatever its extension lines cross, and in farther tiers too */
} FpTiersAmong;

/**
 * fp_tiers_place:
 * @depth: only what lies at most so far within the outline, mm; what measures the whole building in any case
 *
 * Finds room for what is not yet placed.  Which tier each has is known only when all are settled.
 */
void     fp_tiers_place (FpTiers *self, double depth, FpTiersAmong among);

/* Takes the room, and leaves out what meets something nevertheless. */
void     fp_tiers_settle (FpTiers *self);

/* Once all is settled: of what must be told here and is not, what finds a line in any tier that is clear of all else. */
void     fp_tiers_place_late (FpTiers *self);

/* How far the dimensions of a side reach from the outline, mm; 0 when there are none. */
double   fp_tiers_reach (const GArray *wanted, const FpTierSides *sides, FpSide side);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpTiers, fp_tiers_free)

G_END_DECLS
