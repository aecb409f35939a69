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

/* What made a change no remedy most often makes the next none. */
#define FP_REMEDY_REFUSED 3

typedef struct
{
  const FpFindings *base;
  const FpFinding  *finding;
  GCancellable     *cancel;
  FpScene          *whole;   /* owned: as things stand, all of them, however they are set */
  FpRisers          risers;  /* that steps to the altar may have             */
  double            grain;   /* to which lengths are rounded, mm             */
  gint              scenes;  /* made so far, as they count                   */
  FpRemedyOffer     clean;   /* makes nothing worse                          */
  FpRemedyOffer     lesser;  /* makes worse what weighs less                 */
  FpHindrance       why;
  double            why_far; /* how far away what it tells is             */
  guint             refused_by[FP_REMEDY_REFUSED]; /* index among the findings of the base: what became worse last, that first */
  guint             n_refused_by;
  const FpFindings **others; /* (nullable), owned: of each alternative as it is, NULL where nobody has asked yet */
} FpRemedySearch;

/* A first change that does not do alone, and how a second one may help. */
typedef struct
{
  FpChange    change;
  double      cost;
  gboolean    settles;     /* but makes `worse` worse; FALSE: it only does a part of it */
  double      gain;        /* that part, in the printed unit                 */
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
  gboolean        *touches;  /* owned, of each thing: whether it can have a say; NULL: any can */
  GArray          *promises; /* (nullable) of FpRemedyPromise                 */
} FpRemedyStage;

/* What was measured at a value of a dial. */
typedef struct { double at, excess; } FpProbe;

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
  GArray         *known;     /* (element-type FpProbe), owned by the list of dials: what was measured already */
} FpDial;

/* --- remedy-make.c --- */
FpProject *fp_change_make   (const FpChange *change, const FpScene *scene, GError **error);
/* The church of the project as that of @like is set; owned by the caller. */
FpScene   *fp_remedy_set    (const FpScene *whole, const FpScene *like);

/* --- remedy-dial.c --- */
#define FP_DIAL_LENGTH 100.0 /* mm: a change of a length that costs 1 */
gboolean   fp_dial_is_length (const FpDial *self);
FpChange   fp_dial_change    (const FpDial *self, double value);
double     fp_dial_cost      (const FpDial *self, double value);
/* Whether a measure is of how far the people are below the altar's own floor, which its steps decide. */
gboolean   fp_measure_is_of_altars_floor (const FpMeasure *measure);
/* Whether a measure is of what rows see over the heads in front. */
gboolean   fp_measure_is_over_heads (const FpMeasure *measure);
/* Of what takes as long as sight, that which is walked and not seen. */
gboolean   fp_measure_is_of_ways (const FpMeasure *measure);
/* Of these, what leads out of the church. */
gboolean   fp_measure_is_of_ways_out (const FpMeasure *measure);
FpDial     fp_dial_of_param  (const FpRemedyStage *stage, const FpPlaced *placed, const FpParam *param, double value);
FpDial     fp_dial_of_move   (const FpPlaced *placed, FpVec3 along);

/* --- remedy-probe.c --- */
gboolean   fp_remedy_is_over (const FpRemedySearch *all); /* cancelled, or enough has been tried */
double     fp_stage_excess   (const FpRemedyStage *stage, const FpScene *scene);
/* The same of any rule, in the printed unit; INFINITY where nothing is left to be measured, or it was cancelled.
 * @owner: (out) (optional): what the worst is about. */
double     fp_remedy_excess  (const FpRemedySearch *all, const FpMeasure *measure, const FpRule *rule, const FpScene *scene,
                              int *owner);
guint      fp_remedy_price   (const FpMeasure *measure); /* of taking it, as FP_REMEDY_LOOKED */
/* What is looked at or walked. */
gboolean   fp_stage_is_dear  (const FpRemedyStage *stage);
/* What goes by jumps tells nothing of what lies between two values. */
gboolean   fp_measure_goes_by_jumps (const FpMeasure *measure);
#define FP_DIAL_LITTLE 100.0 /* mm: by which it is asked whether a length has a say */
double     fp_dial_within    (const FpDial *self, double value);
double     fp_dial_on_grid   (const FpDial *self, double value);
/* What the stage measures there, as fp_stage_excess(); what was measured once is not measured again. */
double     fp_dial_excess    (FpRemedyStage *stage, const FpDial *dial, double value);
gboolean   fp_dial_settles   (FpRemedyStage *stage, const FpDial *dial, double value);
/* Whether it seems to have a say in it: a little and, where what is measured goes by jumps, as far as it goes.  Any thread. */
gboolean   fp_remedy_has_say (FpRemedyStage *stage, const FpDial *dial);


/* --- remedy-narrow.c --- */
/* Between @bad, which does not settle it, and @good, which does, down to the resolution; the end that does. */
double     fp_dial_narrow    (FpRemedyStage *stage, const FpDial *dial, double bad, double good);
/* A figure near it that a person would write, and that settles it too; otherwise @value. */
double     fp_dial_even      (FpRemedyStage *stage, const FpDial *dial, double value, int way);
/* Where the excess is least between two that do not settle it; NAN where even that does not. */
double     fp_dial_least     (FpRemedyStage *stage, const FpDial *dial, double from, double to);
/* Whether it may meet the limit between them at all. */
gboolean   fp_dial_may_dip   (const FpRemedyStage *stage, FpProbe before, FpProbe last, FpProbe next);
/* The least value beyond @from that way that settles the rule of the stage, whatever else it does; NAN. */
double     fp_remedy_beyond  (FpRemedyStage *stage, const FpDial *dial, double from, int way);

/* --- remedy-walk.c --- */
/* Both ways, or through all choices. */
void       fp_remedy_turn    (FpRemedyStage *stage, const FpDial *dial);

/* --- remedy-say.c --- */
GArray    *fp_remedy_dials_new (void); /* (element-type FpDial) */
/* One parameter of a thing; all of them; all that can be changed of it, where that may be. */
void       fp_remedy_add_param (const FpRemedyStage *stage, const FpPlaced *placed, guint param, GArray *out);
void       fp_remedy_add_sizes (const FpRemedyStage *stage, const FpPlaced *placed, GArray *out);
void       fp_remedy_add_dials (const FpRemedyStage *stage, const FpPlaced *placed, GArray *out);
/* Turns one after the other; @asked: only those that have a say, which is asked of several side by side. */
void       fp_remedy_turn_all  (FpRemedyStage *stage, const GArray *dials, gboolean asked);
gboolean   fp_remedy_is_part_of_the_building (const FpPlaced *placed);
/* What is bought whole and stands there is moved, or another is chosen; what is built where it stands can be altered there. */
gboolean   fp_remedy_is_bought_and_there (const FpPlaced *placed);
/* Of each thing of the base, whether it can have a say in what is short; NULL: any can; owned by the caller. */
gboolean  *fp_remedy_touching  (const FpFindings *findings, const FpFinding *finding, const FpMeasure *measure);

/* --- remedy-judge.c --- */
/* Holds all rules in the church in which @change too is made; keeps it where it is better than what was found.  TRUE: it settles
 * the finding and makes nothing worse. */
gboolean   fp_remedy_judge   (FpRemedyStage *stage, const FpChange *change, double cost);
/* @change too: what becomes of all of it. */
FpRemedy   fp_remedy_with    (const FpRemedyStage *stage, const FpChange *change);

/* --- remedy-hinder.c --- */
/* Keeps what lies nearest: @by, as it costs. */
void       fp_remedy_note       (FpRemedySearch *all, const FpHindrance *why, double by);
/* That a dial does not go so far. */
void       fp_remedy_note_limit (FpRemedyStage *stage, const FpDial *dial, double wanted, double limit);
/* That it would settle it but for a rule, among the findings of the base, which becomes worse; @gone: is not measured any more. */
void       fp_remedy_refuse     (FpRemedyStage *stage, const FpChange *change, double cost, guint worse, gboolean gone);
void       fp_remedy_remember   (FpRemedySearch *all, guint worse);
/* One rule is held sooner than all: most often it is the same again that becomes worse. */
gboolean   fp_remedy_is_refused (FpRemedyStage *stage, const FpScene *scene, const FpChange *change, double cost);
/* That a second change may mend what is worse in @after. */
void       fp_remedy_promise    (FpRemedyStage *stage, const FpFindings *after, const FpChange *change, double cost, guint worse);

/* --- remedy-effects.c --- */
guint      fp_remedy_places       (const FpPeople *people); /* those at the rail left out */
void       fp_remedy_note_worse   (FpRemedy *remedy, const GArray *worse);
/* Of findings that were short: what is settled too, and what is seen less. */
void       fp_remedy_note_effects (const FpRemedySearch *all, FpRemedy *remedy, const FpFindings *after);

/* --- remedy-others.c --- */
/* Whether a remedy that changes the survey makes anything worse in another alternative, and what: @other: its number; @worse:
 * among the findings of the base. */
gboolean   fp_remedy_spoils_others (FpRemedySearch *all, const FpRemedy *remedy, const FpProject *then, guint *other, guint *worse);
void       fp_remedy_forget_others (FpRemedySearch *all);

/* --- remedy-stands.c --- */
/* What another of what stands there would have to be, and what else does most. */
FpHindrance fp_remedy_stands (FpRemedyStage *stage);

/* --- remedy-pairs.c --- */
void       fp_remedy_try_pairs (FpRemedyStage *first);

/* --- remedy.c --- */
void       fp_remedy_search_init  (FpRemedySearch *all, const FpFindings *findings, const FpFinding *finding, GCancellable *cancel);
void       fp_remedy_search_clear (FpRemedySearch *all);
/* Turns all dials of a thing; @asked: of which few may have a say. */
void       fp_remedy_try_thing (FpRemedyStage *stage, const FpPlaced *placed, gboolean asked);
gboolean   fp_remedy_stands_on (const FpPlaced *all, int thing, int below);
/* What it stands on and what stands on it, however many are between. */
void       fp_remedy_try_neighbours (FpRemedyStage *stage, int owner);
void       fp_remedy_try_supports (FpRemedyStage *stage); /* of the altar */

/* --- remedy-words.c --- */
char         *fp_remedy_value_words (const FpParam *param, double value, FpUnits units);
const char   *fp_remedy_way_words   (FpVec3 by);
char         *fp_remedy_label_words (const FpParam *param); /* "Steps" of "Steps, the footpace included" */
const FpItem *fp_remedy_item        (const FpScene *scene, const char *id); /* NULL where it does not stand */
const char   *fp_remedy_item_name   (const FpScene *scene, const char *id);
void          fp_remedy_add_change  (GString *text, const FpChange *change, const FpScene *scene, gboolean named, FpUnits units);

/* --- worse.c --- */
/* The finding of the same rule; NULL. */
const FpFinding *fp_findings_same (const FpFindings *self, const FpFinding *as);

G_END_DECLS
