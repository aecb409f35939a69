/* SPDX-License-Identifier: GPL-3.0-or-later */
/* setting-table.h - what books and custom say of a setting
 *
 * Private to src/space.
 */
#pragma once

#include "footpace/setting.h"

G_BEGIN_DECLS

typedef enum { FP_WHERE_ANY, FP_WHERE_ON_ALTAR, FP_WHERE_NOT_ON_ALTAR } FpSetWhere;

/* Of things of one office. */
typedef struct
{
  FpRole      role;
  FpSetWhere  where;
  guint       celebrations; /* FpCelebration bits                           */
  FpSaid      stands, veiled;
  FpSaid      burns;        /* of lights that are not the candles of the altar */
  FpReason    reason;
} FpSetRule;

/* Of the candles on and beside the altar. */
typedef struct
{
  FpCelebration one;
  guint         least, usual, most; /* most 0: nobody says                   */
  gboolean      beside;             /* those beside the altar count too      */
  FpReason      reason;
} FpLightRule;

/* The first line that speaks of it; NULL. */
const FpSetRule   *fp_set_rule_standing (FpRole role, gboolean on_altar, FpCelebration one);
const FpSetRule   *fp_set_rule_veiling  (FpRole role, gboolean on_altar, FpCelebration one);
const FpSetRule   *fp_set_rule_burning  (FpRole role, gboolean on_altar, FpCelebration one);
const FpLightRule *fp_light_rule (FpCelebration one);
/* FP_COLOUR_UNSAID: of the day. */
FpColour           fp_set_colour (FpCelebration one, FpReason *reason);

G_END_DECLS
