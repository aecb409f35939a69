/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy-private.h - what the parts of the search for a remedy share
 *
 * Private to src/rules.  A search goes in stages: of one change, and of a
 * second one in the church in which a first has been made.  In a stage dials
 * are turned; what settles the rule of the stage is judged, by all rules, as
 * a remedy of the finding.
 */
#pragma once

#include "footpace/remedy.h"

G_BEGIN_DECLS

typedef struct
{
  FpRemedy remedy;
  double   cost;           /* INFINITY: none yet                             */
} FpRemedyOffer;

typedef struct
{
  const FpFindings *base;
  const FpFinding  *finding;
  GCancellable     *cancel;
  FpScene          *whole;   /* owned: as things stand, all of them, however they are set */
  FpRisers          risers;  /* that steps to the altar may have             */
  double            grain;   /* to which lengths are rounded, mm             */
  guint             scenes;  /* made so far                                  */
  FpRemedyOffer     clean;   /* makes nothing worse                          */
  FpRemedyOffer     lesser;  /* makes worse what weighs less                 */
  FpHindrance       why;
  double            why_far; /* how far away what it tells is             */
} FpRemedySearch;

/* A first change that does not do alone, and how a second one may help. */
typedef struct
{
  FpChange    change;
  double      cost;
  gboolean    settles;     /* but makes `worse` worse; FALSE: it only does a part of it */
  guint       worse;       /* index among the findings of the base           */
  const char *owner;       /* interned id of what is worse then; NULL: the whole */
} FpRemedyPromise;

typedef struct
{
  FpRemedySearch  *all;
  FpRemedy         made;     /* the first change; none in the first stage     */
  double           spent;    /* what it costs                                 */
  FpScene         *whole;    /* owned: in which it is made                    */
  FpScene         *scene;    /* owned: the same as it is set                  */
  const FpRule    *rule;     /* to be settled                                 */
  const FpMeasure *measure;
  double           target;   /* excess at which it is: 0, or what it was before in the printed unit */
  double           excess;   /* where nothing is turned                       */
  GArray          *promises; /* (nullable) of FpRemedyPromise                 */
} FpRemedyStage;

/* One thing that could be changed, in one way. */
typedef struct
{
  const FpPlaced *placed;
  const FpParam  *param;     /* NULL: a move                                 */
  FpVec3          along;     /* of a move: its axis                          */
  double          start, min, max;
  gboolean        min_by_rules, max_by_rules; /* rules allow no less, no more */
  double          first, least; /* first step, and the resolution            */
  double          unit;      /* of cost: what a person would call a small change */
} FpDial;

/* --- remedy-make.c --- */
FpProject *fp_change_make   (const FpChange *change, const FpScene *scene, GError **error);
/* The church of the project as that of @like is set; owned by the caller. */
FpScene   *fp_remedy_set    (const FpScene *whole, const FpScene *like);

/* --- remedy-dial.c --- */
gboolean   fp_dial_is_length (const FpDial *self);
FpChange   fp_dial_change    (const FpDial *self, double value);
double     fp_dial_cost      (const FpDial *self, double value);
/* Whether a measure is of how far the people are below the altar's own floor, which its steps decide. */
gboolean   fp_measure_is_of_altars_floor (const FpMeasure *measure);
/* Of what takes as long as sight, that which is walked and not seen. */
gboolean   fp_measure_is_of_ways (const FpMeasure *measure);
FpDial     fp_dial_of_param  (const FpRemedyStage *stage, const FpPlaced *placed, const FpParam *param, double value);
FpDial     fp_dial_of_move   (const FpPlaced *placed, FpVec3 along);

/* --- remedy-walk.c --- */
gboolean   fp_remedy_is_over (const FpRemedySearch *all); /* cancelled, or enough has been tried */
double     fp_stage_excess   (const FpRemedyStage *stage, const FpScene *scene);
/* Both ways, or through all choices. */
void       fp_remedy_turn    (FpRemedyStage *stage, const FpDial *dial);
/* Whether it seems to have a say in it: a little and as far as it goes. */
gboolean   fp_remedy_has_say (FpRemedyStage *stage, const FpDial *dial);

/* --- remedy-judge.c --- */
/* Holds all rules in the church in which @change too is made; keeps it where it is better than what was found.  TRUE: it settles
 * the finding and makes nothing worse. */
gboolean   fp_remedy_judge   (FpRemedyStage *stage, const FpChange *change, double cost);
/* That a dial does not go so far. */
void       fp_remedy_note_limit (FpRemedyStage *stage, const FpDial *dial, double wanted, double limit);

/* --- remedy-pairs.c --- */
void       fp_remedy_try_pairs (FpRemedyStage *first);

/* --- remedy.c --- */
/* Turns all dials of a thing, of which few may have a say. */
void       fp_remedy_try_thing (FpRemedyStage *stage, const FpPlaced *placed, gboolean far);
/* What it stands on and what stands on it, however many are between. */
void       fp_remedy_try_neighbours (FpRemedyStage *stage, int owner);
void       fp_remedy_try_supports (FpRemedyStage *stage); /* of the altar */

/* --- worse.c --- */
/* The finding of the same rule; NULL. */
const FpFinding *fp_findings_same (const FpFindings *self, const FpFinding *as);

G_END_DECLS
