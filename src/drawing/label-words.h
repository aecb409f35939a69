/* SPDX-License-Identifier: GPL-3.0-or-later */
/* label-words.h - a name in one to three lines, and the room that they take; paper mm */
#pragma once

#include "dimension-line.h"
#include "labels.h"

G_BEGIN_DECLS

typedef struct
{
  char  *line[FP_LABEL_LINES]; /* owned */
  guint  n;
  double width[FP_LABEL_LINES];
  double lettering;            /* height of the capitals */
  double widest, height;       /* of all lines */
} FpLabelWords;

/* The name in at most @lines lines, as narrow as these allow without breaking a word; @lettering: height of capitals */
void  fp_label_words_set   (FpLabelWords *self, const char *name, guint lines, double lettering);
/* In one line of at most @width, shortened, in the usual lettering. */
void  fp_label_words_short (FpLabelWords *self, const char *name, double width);
void  fp_label_words_clear (FpLabelWords *self);

/* The middle of the base line of each line, where @middle is that of the whole. */
FpPoint fp_label_words_at  (const FpLabelWords *self, FpPoint middle, double turn, guint line);

/* Boxes that together cover the words; returns how many. */
#define FP_LABEL_BOXES (FP_LABEL_LINES * FP_FIGURE_PARTS)
guint fp_label_words_line_boxes (const FpLabelWords *self, FpPoint middle, double turn, guint line,
                                 FpBox out[FP_FIGURE_PARTS]);
guint fp_label_words_boxes (const FpLabelWords *self, FpPoint middle, double turn, FpBox out[FP_LABEL_BOXES]);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (FpLabelWords, fp_label_words_clear)

G_END_DECLS
