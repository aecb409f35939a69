/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "footpace/card.h"

G_BEGIN_DECLS

/* Headings. */
#define FP_CARD_SET   "Set, in this order"
#define FP_CARD_READY "Make ready besides"
#define FP_CARD_AWAY  "Take away"
#define FP_CARD_LIGHT "Light"
#define FP_CARD_CARE  "Take care"
#define FP_CARD_WHY   "Why"
#define FP_CARD_MEMORY "(m): from memory."
/* Where there is no room for the reasons. */
#define FP_CARD_BRIEF FP_CARD_MEMORY " Why, with sources: on the card in A4."

typedef enum { FP_CARD_SECTION_SET, FP_CARD_SECTION_READY, FP_CARD_SECTION_AWAY } FpCardSection;

/* A thing to be set, made ready or taken away. */
typedef struct
{
  FpCardSection     section;
  const FpSetThing *thing;  /* NULL: the project does not draw it              */
  int               placed; /* index in the set scene; -1: it does not stand   */
  char              letter; /* on the elevation; 0: none                       */
  char             *text;   /* owned                                           */
} FpCardRow;

struct _FpCard
{
  FpScene   *set;
  FpOrder   *order;
  FpUnits    units;
  char      *title, *of, *colour; /* owned                                     */
  GArray    *rows;          /* (element-type FpCardRow): section by section     */
  GPtrArray *steps;         /* utf8: lighting, step by step                     */
  GPtrArray *cautions, *reasons; /* utf8                                        */
  char      *putting_out;   /* owned; NULL: nothing burns                       */
};

/* What is told of one thing: "Six candlesticks: light 2 of 6. On the gradine, both sides. Kept: press."; the caller's. */
char *fp_card_row_text (const FpCard *self, const FpSetThing *thing, int placed);

/* A ruled blank, where nobody said where a thing is kept. */
#define FP_CARD_BLANK "________"

/* Where that row begins a section, its heading; else NULL. */
const char *fp_card_heading (const FpCard *self, guint row);

/* The row of what is not drawn; takes @text. */
void  fp_card_take_row (FpCard *self, FpCardSection section, char *text);
/* What is needed of that office and is not drawn, set on the altar. */
void  fp_card_list_needs_of (FpCard *self, FpRole role);
/* Whether an office is of the altar itself; what is not is only made ready. */
gboolean fp_card_is_of_altar (FpRole role);
/* What else is needed and is not drawn. */
void  fp_card_list_needs (FpCard *self);
/* Why those are needed. */
void  fp_card_add_needs_reasons (FpCard *self);
/* Told once, where it has a source. */
void  fp_card_add_reason (FpCard *self, const FpReason *reason);

/**
 * fp_card_draw_elevation:
 * @area: paper mm
 *
 * The altar as it is set, as large as the area takes; letters the rows of what is seen on it.
 */
void  fp_card_draw_elevation (FpCard *self, FpDrawing *drawing, const FpBox *area);

/* A letter in its frame, about its middle. */
void  fp_card_draw_letter (FpDrawing *drawing, FpPoint at, double height, char letter);

G_END_DECLS
