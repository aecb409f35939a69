/* SPDX-License-Identifier: GPL-3.0-or-later */
/* card-sketch.h - the drawing on a card while it is made: the altar, then letters of what stands there, then numbers of lights
 *
 * Private to src/review.
 */
#pragma once

#include "card-private.h"

G_BEGIN_DECLS

/* Of the letters from the drawing, in heights of their capitals. */
#define FP_CARD_COLUMN 2.1

typedef struct
{
  FpCard      *card;
  FpDrawing   *drawing;
  FpViewLayout layout;
  FpBox        area;    /* paper mm: of the view                              */
  double       tag;     /* height of the capitals of letters                  */
  double       number;  /* of numbers                                         */
  double       flame;
  GArray      *tags;    /* (element-type FpPoint): middles, paper mm          */
  GArray      *covered; /* (element-type FpBox): where no number goes, paper mm */
} FpCardSketch;

FpBox3  fp_card_body_of       (const FpScene *scene, const FpPlaced *placed); /* mm of the church */
gboolean fp_card_belongs       (const FpCard *card, int thing, int altar); /* whether it stands on or about that altar */
FpPoint fp_card_on_paper      (const FpCardSketch *s, FpVec3 p);

/* The capitals of numbers so large that those of neighbours stand beside each other, paper mm: card-numbers.c. */
double  fp_card_number_height (const FpCardSketch *s, const FpOrderLight *light, guint n);
void    fp_card_draw_numbers  (FpCardSketch *s);

/* A column of letters on either side, and leaders: card-letters.c. */
void    fp_card_letter_rows   (FpCardSketch *s, int altar);

G_END_DECLS
