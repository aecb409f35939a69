/* SPDX-License-Identifier: GPL-3.0-or-later */
/* set-marks.h - a church as it is set for a celebration: veils, flames, the order of lighting, the colour of the frontal
 *
 * Of a scene that is not set for any there are none.
 */
#pragma once

#include "cover.h"
#include "footpace/view.h"

G_BEGIN_DECLS

/* mm: of words and of the figures of numbers, as small as ISO 3098-1 allows; a number's figures are four fifths of it */
#define FP_SET_WORD_HIGH   1.8
#define FP_SET_NUMBER_HIGH 2.25
#define FP_SET_FLAME_HIGH  1.8
#define FP_SET_AIR         0.6  /* about a word on its patch, and between numbers */

typedef enum
{
  FP_SET_VEIL,   /* the drape over a thing, hatched by its colour */
  FP_SET_FLAME,
  FP_SET_NUMBER, /* of the order of lighting; first..last         */
  FP_SET_WORD,   /* on a patch of paper, about its middle         */
} FpSetMarkType;

typedef struct
{
  FpSetMarkType type;
  const char   *item;     /* interned                              */
  FpStanding    standing;
  FpPoint       anchor;   /* paper mm: grows with the view         */
  FpPoint       by;       /* from there; does not grow             */
  FpPoint      *drape;    /* owned; paper mm, grows with the view  */
  guint         n_drape;
  FpColour      colour;   /* of a veil                             */
  guint         first, last;
  char         *text;     /* owned; of a word                      */
} FpSetMark;

/* At smaller scales numbers and words would be nothing but ink: design judgement. */
#define FP_SET_SMALLEST 110.0

/* @words: not veils alone, but flames, numbers and colours; numbers and words take their room on the paper before all else.
 * Returns: (element-type FpSetMark), which frees what they own */
GArray *fp_set_marks_place (const FpScene *scene, const FpViewLayout *layout, FpViewId view, const gboolean *shows,
                            gboolean words, FpCover *room);
/* What the numbers are, for the title; NULL where there are none; the caller's. */
char   *fp_set_marks_words (const FpScene *scene, const FpViewLayout *layout, FpViewId view);
void    fp_set_marks_grow  (GArray *marks, double times);
void    fp_set_marks_move  (GArray *marks, FpPoint by);
/* The patch of a word about @middle. */
FpBox   fp_set_word_box    (const char *text, FpPoint middle);
void    fp_set_marks_draw  (FpDrawing *drawing, const GArray *marks, FpViewId view);

G_END_DECLS
