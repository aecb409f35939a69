/* SPDX-License-Identifier: GPL-3.0-or-later */
/* tape.h - the measuring tape: what the hand and the keys do with it
 *
 *   away --taken--> ready --press | Enter--> stretched --release | press | Enter--> laid
 *
 * It is stretched by a drag, or by two clicks.  A laid tape stays until it
 * is put away or another is begun.  Its ends may lie in two views: then it
 * measures what both show.  A state machine without toolkit or project.
 */
#pragma once

#include "pointed.h"

G_BEGIN_DECLS

typedef enum { FP_TAPE_AWAY, FP_TAPE_READY, FP_TAPE_STRETCHED, FP_TAPE_LAID } FpTapeState;

typedef struct
{
  FpTapeState state;
  FpPointed   a, b;     /* READY: b is where it would begin                    */
  gboolean    dragging; /* stretched by the button that is still held          */
  FpVec3      held;     /* of the end in hand, from a view where it was pointed at before; */
  guint       holds;    /* FpKnown: which of its coordinates; 0: none          */
} FpTape;

typedef struct
{
  guint  known;         /* FpKnown: which components are                       */
  FpVec3 part;          /* across, along, height; never negative               */
  double length;        /* in the view; where its ends are pointed at in two, of what both show */
  double true_length;   /* in space; 0 where not all three are known           */
} FpTapeMeasure;

/* @at: where it begins by keyboard */
void     fp_tape_take     (FpTape *self, const FpPointed *at);
void     fp_tape_put_away (FpTape *self);
/* Gives up what is being stretched, else puts it away; FALSE: it was away. */
gboolean fp_tape_escape   (FpTape *self);

/* What of the end in hand is known stays, and the rest of it is given in the next view: elevation, section, plan. */
void     fp_tape_carry    (FpTape *self, gboolean elevation_turned);
/* The elevation is seen from the other side now: what was pointed at in it stays where it is in the church. */
void     fp_tape_turn     (FpTape *self, gboolean elevation_turned);

void     fp_tape_press    (FpTape *self, const FpPointed *at);
void     fp_tape_motion   (FpTape *self, const FpPointed *at);
/* @clicked: the button came up where it had gone down */
void     fp_tape_release  (FpTape *self, gboolean clicked);

/* By keyboard: moves the end (or the beginning that is not set yet) by so much of the view. */
void     fp_tape_shift    (FpTape *self, FpPoint by);
void     fp_tape_enter    (FpTape *self);

/* FALSE: there are not two ends. */
gboolean fp_tape_measure  (const FpTape *self, FpTapeMeasure *out);

/* "2 700 mm"; and below it its components, "across 2 700 mm · along 0 mm"; owned by the caller, NULL without two ends. */
char    *fp_tape_words    (const FpTape *self, FpUnits units);

G_END_DECLS
