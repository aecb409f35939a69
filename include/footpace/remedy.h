/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy.h - the one change that settles a finding
 *
 * A remedy is computed, not looked up: parameters and places are changed one
 * at a time, and what the rule measures is measured again.  It settles its
 * own finding; whether it brings others is seen when it is made.
 */
#pragma once

#include "footpace/rules.h"

G_BEGIN_DECLS

typedef struct
{
  const char    *item;      /* interned id of the thing that is changed      */
  const FpParam *param;     /* what is changed of it; NULL: it is moved      */
  double         value;     /* that the parameter gets: mm, degrees, a number, 0..1, index of a choice */
  FpVec3         by;        /* how far it is moved, along one axis; mm, church coordinates */
  const FpParam *also;      /* a second one of the same thing; NULL: none    */
  double         also_value;
} FpRemedy;

/**
 * fp_remedy_find:
 * @finding: one of @findings that is short
 *
 * The smallest change of the thing that the finding is about; where none
 * settles it, of what it stands on and what stands on it; then of the other
 * furnishings.  That people are not below the altar's floor is settled by its
 * steps first: a riser that the rules allow, or as many steps of theirs as it
 * takes.  Lengths are rounded away from the limit, to 5 mm or 1/4 in by
 * the units of the brief, where that still settles it.  Any thread.
 *
 * Returns: FALSE when no single change settles it, when the rule needs sight
 *   (which takes too long to compute again and again), or when cancelled
 */
gboolean   fp_remedy_find (const FpFindings *findings, const FpFinding *finding, GCancellable *cancel, FpRemedy *out);

/* --- the C-value of the first row ------------------------------------------------ */

#define FP_FIRST_ROW_CS 3
/* mm: what is usually asked for, the least first. */
double     fp_first_row_c (guint i);

typedef enum
{
  FP_FIRST_ROW_BY_STEPS, /* the remedy gives it                               */
  FP_FIRST_ROW_HAS_IT,   /* as things stand                                   */
  FP_FIRST_ROW_NONE,     /* no row looks over another, or there is no altar   */
  FP_FIRST_ROW_NO_STEPS, /* the altar stands on no steps of its own           */
  FP_FIRST_ROW_NO_RISER, /* the rules leave none                              */
  FP_FIRST_ROW_TOO_HIGH, /* it takes more steps than there can be             */
  FP_FIRST_ROW_NO_ROOM,  /* they would reach into a wall                      */
} FpFirstRowHow;

typedef struct
{
  double        wanted;     /* C, mm                                          */
  FpFirstRowHow how;
  guint         owner, row; /* the row that looks over another and is nearest to the altar */
  double        c, after;   /* its own: now, and then                         */
  guint         rows, had, reach; /* rows that look over another; of them those that have it now, and then */
  guint         places, reached; /* people in those rows, and those in the rows that have it then */
  double        level;      /* of the footpace, then; mm                      */
  FpFlight      flight;     /* by which that is climbed from where the steps stand */
  FpRemedy      remedy;     /* set where it is by steps                       */
} FpFirstRow;

/**
 * fp_first_row_find:
 * @wanted: C, mm
 *
 * The lowest floor of the altar from which the first row has it, and the fewest steps, as high as the rules allow, that lead
 * there.  It need not settle a finding: rows behind gain less.  Measured in the church in which it is so.  Any thread.
 */
void       fp_first_row_find (const FpFindings *findings, double wanted, FpFirstRow *out);

/* As the change is called that makes it so: "C 60 mm for the first row"; owned by the caller. */
char      *fp_first_row_label (const FpFirstRow *self, const FpScene *scene);
/* "C 60 mm for the first row: Footpace and steps, 6 steps of 163 mm, the floor of the altar at +0.978; 2 of 22 rows (16 of 190
 * places) have it then, none now; the other 20 stay short of it", or why it cannot be reached; owned by the caller; NULL where
 * there is no such row. */
char      *fp_first_row_words (const FpFirstRow *self, const FpScene *scene);
/* "The first row that looks over another is Front pews, row 2; its C-value is −17 mm.", and the words; likewise. */
char      *fp_first_row_sentence (const FpFirstRow *self, const FpScene *scene);

/* The project in which it has been made; NULL with an error where the thing is not there any more, or it cannot be. */
FpProject *fp_remedy_make (const FpRemedy *remedy, const FpScene *scene, GError **error);

G_END_DECLS
