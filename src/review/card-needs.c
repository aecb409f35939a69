/* SPDX-License-Identifier: GPL-3.0-or-later */
/* card-needs.c - what is set besides, that the project does not draw
 *
 * A line is left out where a thing of that office stands.  "(m)", which the
 * foot of the card tells as "from memory", stands in the text itself, since it
 * is read by who sets the altar.
 */
#include "card-private.h"

#define NEWER  FP_CELEBRATIONS_NEWER
#define SOLEMN (FP_CELEBRATION_SOLEMN | FP_CELEBRATION_PONTIFICAL)
#define SUNG   (FP_CELEBRATION_SUNG | SOLEMN | FP_CELEBRATION_REQUIEM | FP_CELEBRATION_PASSIONTIDE)
#define MASS   (FP_CELEBRATION_LOW | SUNG)
#define SPANISH "Spanish ceremonial manual (about 1900–1925), n. 291"

/* In the order in which they are brought. */
static const struct
{
  FpRole      role; /* FP_ROLE_NONE: nothing that is drawn                     */
  guint       celebrations;
  const char *text;
  FpReason    reason;
} needs[] = {
  { FP_ROLE_ALTAR_CLOTHS, MASS, "Cloths: over the cere cloth (m) two under cloths of linen, "
    "then the top cloth, down to the footpace at both ends.",
    { "cloths", "Catholic Encyclopedia I (1907), Altar Cloths" } },
  { FP_ROLE_ALTAR_CLOTHS, NEWER, "At least one white cloth.", { "cloth", "GIRM (3rd ed.) 117, 304" } },
  { FP_ROLE_ALTAR_CARDS, MASS, "Three altar cards.", { "cards, Missal stand and bell", SPANISH } },
  { FP_ROLE_MISSAL_STAND, MASS, "Missal on its stand, Epistle side.", { "cards, Missal stand and bell", SPANISH } },
  { FP_ROLE_VESSELS, MASS, "On the credence: cruets, basin and towel, communion paten (m).", { NULL, "" } },
  { FP_ROLE_VESSELS, NEWER, "On the credence: chalice, corporal, purificator, Missal, cruets, basin and towel, until the gifts are "
    "prepared (GIRM 73, 118, from memory).", { NULL, "" } },
  { FP_ROLE_HAND_BELL, MASS, "Bell on the step or credence, Epistle side.", { "cards, Missal stand and bell", SPANISH } },
  { FP_ROLE_NONE, FP_CELEBRATION_LOW, "Chalice made ready in the sacristy: purificator, paten with the host, pall, veil and burse with the "
    "corporal; the celebrant carries it (m).", { NULL, "" } },
  { FP_ROLE_NONE, SUNG, "For the chalice, on the credence: purificator, "
    "paten with the host, pall, veil, burse with the corporal (m).", { NULL, "" } },
  { FP_ROLE_NONE, SOLEMN, "There too: the humeral veil over the chalice, the book of Epistles and Gospels (m).", { NULL, "" } },
  { FP_ROLE_SEDILIA, SUNG, "Bench for the ministers, Epistle side.", { NULL, "" } },
  { FP_ROLE_PROCESSIONAL_CANDLES, SUNG, "Two acolytes' candles, lit in the sacristy (m).", { NULL, "" } },
  { FP_ROLE_NONE, SOLEMN, "In the sacristy: thurible with lit charcoal, incense boat and spoon (m).", { NULL, "" } },
  { FP_ROLE_NONE, FP_CELEBRATION_SUNG | FP_CELEBRATION_PASSIONTIDE | NEWER, "Where incense is used: thurible with lit charcoal, incense boat "
    "and spoon, in the sacristy (m).", { NULL, "" } },
  { FP_ROLE_NONE, FP_CELEBRATION_SUNG | SOLEMN | FP_CELEBRATION_PASSIONTIDE, "On Sundays: holy water and sprinkler, cope of the colour (m).", { NULL, "" } },
  { FP_ROLE_NONE, MASS | NEWER, "Key of the tabernacle; ciborium with hosts for those who come to communion.", { NULL, "" } },
  { FP_ROLE_NONE, FP_CELEBRATION_REQUIEM, "No flowers; candles of unbleached wax; for the absolution: holy water, thurible and incense, "
    "black cope (m).", { NULL, "" } },
  { FP_ROLE_NONE, FP_CELEBRATION_BENEDICTION, "Corporal, monstrance and key of the tabernacle; humeral veil and cope; thurible "
    "and incense (m).", { NULL, "" } },
  { FP_ROLE_NONE, FP_CELEBRATION_GOOD_FRIDAY, "Tabernacle empty and open, no lamp; one cloth ready to be laid for communion; "
    "the veiled cross in the sacristy (m).", { NULL, "" } },
};

static gboolean
stands (const FpCard *card, FpRole role)
{
  return role != FP_ROLE_NONE && fp_scene_role (card->set, role) >= 0;
}

static gboolean
is_needed (const FpCard *self, guint i)
{
  const guint one = (guint) fp_setting_celebration (fp_scene_setting (self->set));

  return (needs[i].celebrations & one) != 0 && !stands (self, needs[i].role);
}

void
fp_card_list_needs_of (FpCard *self, FpRole role)
{
  for (guint i = 0; i < G_N_ELEMENTS (needs); i++)
    if (needs[i].role == role && is_needed (self, i))
      fp_card_take_row (self, FP_CARD_SECTION_SET, g_strdup_printf ("%s Kept: " FP_CARD_BLANK, needs[i].text));
}

void
fp_card_list_needs (FpCard *self)
{
  for (guint i = 0; i < G_N_ELEMENTS (needs); i++)
    if (!fp_card_is_of_altar (needs[i].role) && is_needed (self, i))
      fp_card_take_row (self, FP_CARD_SECTION_READY, g_strdup (needs[i].text));
}

void
fp_card_add_needs_reasons (FpCard *self)
{
  for (guint i = 0; i < G_N_ELEMENTS (needs); i++)
    if (is_needed (self, i))
      fp_card_add_reason (self, &needs[i].reason);
}
