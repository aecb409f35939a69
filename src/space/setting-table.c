/* SPDX-License-Identifier: GPL-3.0-or-later */
/* setting-table.c - the table of settings
 *
 * A line names those celebrations at which a thing of that office is otherwise
 * than usual: what stands in the church stands, and is not veiled, unless a
 * line says otherwise.  A source that was not opened says "from memory".
 */
#include "setting-table.h"

#define LOW         FP_CELEBRATION_LOW
#define SUNG        FP_CELEBRATION_SUNG
#define SOLEMN      FP_CELEBRATION_SOLEMN
#define PONTIFICAL  FP_CELEBRATION_PONTIFICAL
#define REQUIEM     FP_CELEBRATION_REQUIEM
#define PASSIONTIDE FP_CELEBRATION_PASSIONTIDE
#define GOOD_FRIDAY FP_CELEBRATION_GOOD_FRIDAY
#define BENEDICTION FP_CELEBRATION_BENEDICTION
#define NEWER       FP_CELEBRATIONS_NEWER

#define MASSES      (LOW | SUNG | SOLEMN | PONTIFICAL | REQUIEM | PASSIONTIDE)

#define BARE { "the altar is bare, without cross, candlesticks and cloths", \
               "books of 1956 and later, from memory; before: a veiled cross and unlit candlesticks, from memory" }
#define NO_MASS { "what belongs to Mass alone is taken away", "common practice, no source" }

static const FpSetRule rules[] = {
  /* what stands */
  { FP_ROLE_CRUCIFIX, FP_WHERE_ON_ALTAR, GOOD_FRIDAY, FP_SAID_NO, FP_UNSAID, FP_UNSAID, BARE },
  { FP_ROLE_CANDLES, FP_WHERE_ON_ALTAR, GOOD_FRIDAY, FP_SAID_NO, FP_UNSAID, FP_UNSAID, BARE },
  { FP_ROLE_BRANCHED_LIGHTS, FP_WHERE_ON_ALTAR, GOOD_FRIDAY, FP_SAID_NO, FP_UNSAID, FP_UNSAID, BARE },
  { FP_ROLE_ALTAR_CLOTHS, FP_WHERE_ANY, GOOD_FRIDAY, FP_SAID_NO, FP_UNSAID, FP_UNSAID, BARE },
  { FP_ROLE_FRONTAL, FP_WHERE_ANY, GOOD_FRIDAY, FP_SAID_NO, FP_UNSAID, FP_UNSAID, BARE },
  { FP_ROLE_MISSAL_STAND, FP_WHERE_ON_ALTAR, GOOD_FRIDAY | BENEDICTION, FP_SAID_NO, FP_UNSAID, FP_UNSAID, NO_MASS },
  { FP_ROLE_TABERNACLE_VEIL, FP_WHERE_ANY, GOOD_FRIDAY, FP_SAID_NO, FP_UNSAID, FP_UNSAID,
    { "the tabernacle is empty and open", "Missal, from memory" } },
  { FP_ROLE_ALTAR_CARDS, FP_WHERE_ANY, NEWER, FP_SAID_NO, FP_UNSAID, FP_UNSAID,
    { "altar cards belong to the older form", "from memory" } },
  { FP_ROLE_ALTAR_CARDS, FP_WHERE_ANY, GOOD_FRIDAY | BENEDICTION, FP_SAID_NO, FP_UNSAID, FP_UNSAID, NO_MASS },
  { FP_ROLE_SANCTUS_CANDLE, FP_WHERE_ANY, NEWER | GOOD_FRIDAY | BENEDICTION, FP_SAID_NO, FP_UNSAID, FP_UNSAID,
    { "the Sanctus candle is of the older form of Mass",
      "Missal, general rubrics XX, through Catholic Encyclopedia I (1907), Altar Candlesticks" } },
  { FP_ROLE_HAND_BELL, FP_WHERE_ANY, GOOD_FRIDAY, FP_SAID_NO, FP_UNSAID, FP_UNSAID,
    { "no bell is rung from Holy Thursday to the vigil", "Missal, from memory" } },
  { FP_ROLE_FLOWERS, FP_WHERE_ANY, REQUIEM | PASSIONTIDE | GOOD_FRIDAY, FP_SAID_NO, FP_UNSAID, FP_UNSAID,
    { "no flowers for the dead, nor in Passiontide", "Caeremoniale, from memory" } },
  { FP_ROLE_RELIQUARIES, FP_WHERE_ANY, REQUIEM | PASSIONTIDE | GOOD_FRIDAY | BENEDICTION, FP_SAID_NO, FP_UNSAID, FP_UNSAID,
    { "no relics for the dead, in Passiontide, or before the Blessed Sacrament exposed", "Caeremoniale, from memory" } },
  { FP_ROLE_SEVENTH_CANDLE, FP_WHERE_ANY, ~(guint) (PONTIFICAL | FP_CELEBRATION_BISHOP), FP_SAID_NO, FP_UNSAID, FP_UNSAID,
    { "the seventh candlestick stands only for the bishop of the place",
      "Catholic Encyclopedia I (1907), Altar Candles, p. 348" } },
  { FP_ROLE_PASCHAL_CANDLE, FP_WHERE_ANY, PASSIONTIDE | GOOD_FRIDAY, FP_SAID_NO, FP_UNSAID, FP_UNSAID,
    { "the Paschal candle stands from the vigil of Easter on", "Missal, from memory" } },
  { FP_ROLE_PROCESSIONAL_CANDLES, FP_WHERE_ANY, LOW | FP_CELEBRATION_WEEKDAY, FP_SAID_NO, FP_UNSAID, FP_UNSAID,
    { "acolytes carry no candles then", "common practice, no source" } },
  /* what is veiled */
  { FP_ROLE_CRUCIFIX, FP_WHERE_ANY, PASSIONTIDE, FP_UNSAID, FP_SAID_YES, FP_UNSAID,
    { "crosses and images are veiled in violet before the first Vespers of Passion Sunday",
      "Missal, rubric before Passion Sunday, from memory" } },
  { FP_ROLE_STATUE, FP_WHERE_ANY, PASSIONTIDE | GOOD_FRIDAY, FP_UNSAID, FP_SAID_YES, FP_UNSAID,
    { "crosses and images are veiled in violet before the first Vespers of Passion Sunday",
      "Missal, rubric before Passion Sunday, from memory" } },
  { FP_ROLE_CRUCIFIX, FP_WHERE_NOT_ON_ALTAR, GOOD_FRIDAY, FP_UNSAID, FP_SAID_YES, FP_UNSAID,
    { "crosses stay veiled until the cross is unveiled in the liturgy", "Missal, from memory" } },
  /* what burns besides the candles of the altar */
  { FP_ROLE_SANCTUARY_LAMP, FP_WHERE_ANY, ~(guint) GOOD_FRIDAY, FP_UNSAID, FP_UNSAID, FP_SAID_YES,
    { "a lamp burns always before the Blessed Sacrament",
      "Roman Ritual IV, 6, through Catholic Encyclopedia I (1907), Altar Lamp; GIRM (3rd ed.) 316" } },
  { FP_ROLE_SANCTUARY_LAMP, FP_WHERE_ANY, GOOD_FRIDAY, FP_UNSAID, FP_UNSAID, FP_SAID_NO,
    { "the tabernacle is empty and open", "Missal, from memory" } },
  { FP_ROLE_SANCTUS_CANDLE, FP_WHERE_ANY, MASSES, FP_UNSAID, FP_UNSAID, FP_SAID_YES,
    { "lit from the consecration to the communion",
      "Missal, general rubrics XX, through Catholic Encyclopedia I (1907), Altar Candlesticks" } },
  { FP_ROLE_PROCESSIONAL_CANDLES, FP_WHERE_ANY, ~(guint) (LOW | GOOD_FRIDAY | FP_CELEBRATION_WEEKDAY), FP_UNSAID, FP_UNSAID,
    FP_SAID_YES, { "carried by the acolytes", "common practice, no source" } },
};

static const FpLightRule lights[] = {
  { LOW, 2, 2, 2, FALSE,
    { "two at low Mass", "Catholic Encyclopedia I (1907), Altar Candles, p. 348" } },
  { SUNG, 4, 6, 6, FALSE,
    { "at least four at sung Mass without ministers; six may be lit",
      "S.R.C. 12 August 1854, through Catholic Encyclopedia I (1907), Altar Candles, p. 348" } },
  { SOLEMN, 6, 6, 6, FALSE,
    { "six at solemn Mass", "Catholic Encyclopedia I (1907), Altar Candles, p. 348" } },
  { PONTIFICAL, 7, 7, 7, FALSE,
    { "seven when the bishop of the place celebrates, the seventh in the middle and a little higher",
      "Catholic Encyclopedia I (1907), Altar Candles, p. 348" } },
  { REQUIEM, 2, 6, 6, FALSE,
    { "as at any Mass: two at low, four to six at sung Mass; never the seventh",
      "Catholic Encyclopedia I (1907), Altar Candles, p. 348" } },
  { PASSIONTIDE, 2, 6, 6, FALSE,
    { "as at any Mass: two at low, four to six at sung Mass", "Catholic Encyclopedia I (1907), Altar Candles, p. 348" } },
  { GOOD_FRIDAY, 0, 0, 0, FALSE,
    { "none burns at first: two are brought with the Blessed Sacrament", "books of 1956 and later, from memory" } },
  { BENEDICTION, 12, FP_COUNT_MAX, 0, TRUE,
    { "at least twelve while the Blessed Sacrament is exposed in the monstrance", "custom and diocesan law, from memory" } },
  { FP_CELEBRATION_WEEKDAY, 2, 2, 6, TRUE,
    { "at least two, on the altar or beside it", "GIRM (3rd ed.) 117" } },
  { FP_CELEBRATION_SUNDAY, 2, 6, 6, TRUE,
    { "at least two, or four or six on Sundays and holydays", "GIRM (3rd ed.) 117" } },
  { FP_CELEBRATION_BISHOP, 2, 7, 7, TRUE,
    { "seven when the diocesan bishop celebrates", "GIRM (3rd ed.) 117" } },
};

static const struct { guint celebrations; FpColour colour; FpReason reason; } colours[] = {
  { REQUIEM, FP_COLOUR_BLACK, { "black for the dead", "Missal, general rubrics, from memory" } },
  { GOOD_FRIDAY, FP_COLOUR_BLACK, { "black", "Missal, from memory" } },
  { PASSIONTIDE, FP_COLOUR_VIOLET, { "violet in Passiontide", "Missal, general rubrics, from memory" } },
  { BENEDICTION, FP_COLOUR_WHITE, { "white before the Blessed Sacrament", "Roman Ritual, from memory" } },
};

static gboolean
speaks_of (const FpSetRule *rule, FpRole role, gboolean on_altar, FpCelebration one)
{
  return rule->role == role && (rule->celebrations & one) != 0
         && (rule->where == FP_WHERE_ANY || on_altar == (rule->where == FP_WHERE_ON_ALTAR));
}

const FpSetRule *
fp_set_rule_standing (FpRole role, gboolean on_altar, FpCelebration one)
{
  for (guint i = 0; i < G_N_ELEMENTS (rules); i++)
    if (rules[i].stands != FP_UNSAID && speaks_of (&rules[i], role, on_altar, one))
      return &rules[i];
  return NULL;
}

const FpSetRule *
fp_set_rule_veiling (FpRole role, gboolean on_altar, FpCelebration one)
{
  for (guint i = 0; i < G_N_ELEMENTS (rules); i++)
    if (rules[i].veiled != FP_UNSAID && speaks_of (&rules[i], role, on_altar, one))
      return &rules[i];
  return NULL;
}

const FpSetRule *
fp_set_rule_burning (FpRole role, gboolean on_altar, FpCelebration one)
{
  for (guint i = 0; i < G_N_ELEMENTS (rules); i++)
    if (rules[i].burns != FP_UNSAID && speaks_of (&rules[i], role, on_altar, one))
      return &rules[i];
  return NULL;
}

const FpLightRule *
fp_light_rule (FpCelebration one)
{
  for (guint i = 0; i < G_N_ELEMENTS (lights); i++)
    if (lights[i].one == one)
      return &lights[i];
  g_return_val_if_reached (&lights[0]);
}

FpColour
fp_set_colour (FpCelebration one, FpReason *reason)
{
  for (guint i = 0; i < G_N_ELEMENTS (colours); i++)
    if ((colours[i].celebrations & one) != 0)
      {
        *reason = colours[i].reason;
        return colours[i].colour;
      }
  *reason = (FpReason) { NULL, NULL };
  return FP_COLOUR_UNSAID;
}
