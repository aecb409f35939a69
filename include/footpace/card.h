/* SPDX-License-Identifier: GPL-3.0-or-later */
/* card.h - the setting card: by which sacristan and servers set the altar and light the candles
 *
 * One page for each celebration: the altar in elevation with letters at what is
 * to be set and numbers at what is to be lit, a list to tick, the order of
 * lighting, and where things are kept.
 */
#pragma once

#include "footpace/drawing.h"
#include "footpace/order.h"

G_BEGIN_DECLS

typedef struct
{
  FpOrderSpec order;
  double      width, height; /* of the paper, mm                             */
  FpInkChoice ink;
  const char *date;          /* ISO 8601; NULL: none                         */
} FpCardSpec;

/* mm; "a5", "a4" or "letter", upright. */
#define FP_CARD_PAPERS "a5, a4 or letter"
gboolean fp_card_paper_find (const char *id, double *width, double *height);

/* Whether things of that office are set before a celebration, and so are always on the list. */
gboolean fp_card_sets (FpRole role);

typedef struct _FpCard FpCard;

/* @whole: a scene of all things. */
FpCard      *fp_card_new     (const FpScene *whole, FpCelebration one, const FpOrderSpec *order);
void         fp_card_free    (FpCard *self);
const FpOrder *fp_card_order (const FpCard *self);
/* What is told on it, a line each; owned by the caller. */
char        *fp_card_text    (const FpCard *self);
/* @spec: its order is not asked: the card has one. */
FpDrawing   *fp_card_draw    (FpCard *self, const FpCardSpec *spec);

/**
 * fp_cards_draw:
 * @celebrations: FpCelebration bits; 0: those of the brief
 *
 * Returns: (transfer full) (element-type FpDrawing): a page for each, in their order; %NULL with %FP_ERROR_INVALID where the
 *   brief names none, or there is no altar
 */
GPtrArray   *fp_cards_draw   (const FpScene *whole, guint celebrations, const FpCardSpec *spec, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpCard, fp_card_free)

G_END_DECLS
