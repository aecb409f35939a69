/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy.h - the smallest change that settles a finding
 *
 * A remedy is computed, not looked up: parameters and places are changed one
 * at a time, then two together, and what the rules measure is measured again.
 *
 * What is worse
 *  A change makes a rule worse when, of all rules held for the church as it
 *  is then, this one
 *   - was not short and is;
 *   - was short and its worst value lies farther outside, in the printed unit, or more places are outside than were;
 *     of what people see, only where 2 in 100 of the places are lost, or more: less is told and not forbidden;
 *   - was short and cannot be measured any more: what is taken away is not put right;
 *   - was within and cannot be measured any more, unless the change gives another size to what the rule speaks of, so that
 *     there is nothing of that sort left on it; but where the rule asks for so much at least of the very size
 *     that is changed, as it does of a gate, that is worse.
 *  No remedy makes a rule worse that weighs as much as the one it settles, or
 *  more.  Those that make nothing worse and keep all places for people come first, of one change and of two;
 *  only where there is none of either is one offered that makes a rule of less weight
 *  worse, or loses some places, and it tells which and how many.  Rules about what people see are asked last, and
 *  only where the findings hold sight; where they do not, they are not asked.
 *
 *  A remedy that gives another size to what was measured in the church changes all alternatives: in none of the others may it
 *  make anything worse.
 */
#pragma once

#include "footpace/rules.h"

G_BEGIN_DECLS

/* One thing, changed in one way. */
typedef struct
{
  const char    *item;      /* interned id of the thing that is changed      */
  const FpParam *param;     /* what is changed of it; NULL: it is moved      */
  double         value;     /* that the parameter gets: mm, degrees, a number, 0..1, index of a choice */
  FpVec3         by;        /* how far it is moved, along one axis; mm, church coordinates */
} FpChange;

#define FP_REMEDY_CHANGES 2
#define FP_REMEDY_WORSE   4 /* of them told; where more rules became worse it is no remedy (design judgement) */
#define FP_REMEDY_SETTLES 6 /* of them told                                  */
#define FP_REMEDY_DIMS    12 /* likewise: as many as there are rules of sight, and more */
/* Design judgement: so large a share of the places may be lost to sight and is told, and so large a one may be taken away. */
#define FP_REMEDY_SIGHT_LOST  0.02
#define FP_REMEDY_PLACES_LOST 0.25

typedef struct
{
  FpChange change[FP_REMEDY_CHANGES]; /* made one after the other            */
  guint    n_changes;
  guint    worse[FP_REMEDY_WORSE]; /* rules of less weight that it makes worse: index among fp_findings_get() */
  guint    n_worse;
  guint    settles[FP_REMEDY_SETTLES]; /* other findings that it settles, likewise */
  guint    n_settles;
  struct { guint finding; double lost; } dims[FP_REMEDY_DIMS]; /* rules of sight that were short and are farther outside, and
                                                                  by what share of the places, or of what is seen on average */
  guint    n_dims;
  guint    places_lost;    /* for people; those at the rail do not count     */
} FpRemedy;

/* What stands in the way where there is no remedy. */
typedef enum
{
  FP_HINDRANCE_NONE,
  FP_HINDRANCE_WORSE,     /* `change` would settle it, but makes a rule worse that weighs as much, or any in another alternative */
  FP_HINDRANCE_PLACES,    /* `change` would settle it, but takes away `lost` places for people, which are too many */
  FP_HINDRANCE_RULES,     /* `change` would have to be about `wanted`, beyond what rules allow    */
  FP_HINDRANCE_RANGE,     /* likewise, beyond what the thing can have        */
  FP_HINDRANCE_REACH,     /* likewise, so far that it is another design      */
  FP_HINDRANCE_STANDS,    /* `change.item` is bought whole and stands there: no other size is given to it; `change` is what
                             another would have, without a parameter where no size of it settles it */
  FP_HINDRANCE_NO_SAY,    /* no size and no place has a say in it            */
  FP_HINDRANCE_SIGHT,     /* it is about what people see, and nobody has looked yet */
  FP_HINDRANCE_MANY,      /* not all that could be tried was: there is too much */
  FP_HINDRANCE_CANCELLED,
} FpHindranceHow;

typedef struct
{
  FpHindranceHow how;
  FpChange       change;    /* the one that comes nearest                    */
  double         wanted;    /* as FpChange.value, or mm of a move: reckoned from the last two that were measured */
  double         limit;     /* that it may not pass, likewise                */
  guint          worse;     /* index among fp_findings_get()                 */
  gboolean       gone;      /* it is worse for not being measured any more   */
  guint          other;     /* 1 + the number of the other alternative in which it is; 0: in this */
  guint          lost;      /* places                                        */
  FpChange       help;      /* of FP_HINDRANCE_STANDS: of what may be changed, what does most; item NULL: nothing does any */
  double         part;      /* that it makes up of what is short, 0..1       */
} FpHindrance;

/* How many churches are made at most in looking for one remedy; for how many one counts in which all rules are held, one in
 * which people look, and one in which ways are walked.  By number and not by the clock: the same project has the same remedies on every computer. */
#define FP_REMEDY_SCENES 4000
#define FP_REMEDY_JUDGED 8
#define FP_REMEDY_LOOKED 12
#define FP_REMEDY_WALKED 40

/**
 * fp_remedy_find:
 * @finding: one of @findings that is short
 * @why: (out) (optional): what stands in the way; %FP_HINDRANCE_NONE where there is a remedy, or it is not short
 *
 * What is bought whole and stands there already is moved and not given another size.  Of ways, gates are tried first.
 * The smallest change of the thing that the finding is about; where none
 * settles it, of what it stands on and what stands on it; then of the other
 * furnishings; then two changes together, the second of which mends what the first makes worse, or does the rest of what the
 * first alone cannot.  That people are not below the altar's floor is settled by its
 * steps first: a riser that the rules allow, or as many steps of theirs as it
 * takes; so is what people see, as far as some hundreds of looks lead.  Each is bracketed and bisected on the church itself.  Lengths are rounded away from the limit, to 5 mm or 1/4 in by
 * the units of the brief, where that still settles it.  Any thread.
 *
 * Returns: FALSE when nothing was found that settles it and makes nothing worse (see above)
 */
gboolean   fp_remedy_find (const FpFindings *findings, const FpFinding *finding, GCancellable *cancel, FpRemedy *out,
                           FpHindrance *why);

/**
 * fp_remedy_further:
 * @of: what fp_remedy_find() gave for @finding
 * @least: findings of less weight are not asked for
 *
 * More of the same change where one parameter is changed, that settles other findings of that parameter too: a gate that is
 * wide enough for a wheelchair at 815 mm lets two walk abreast at 1200.  It makes nothing worse and keeps all places.  Any thread.
 *
 * Returns: FALSE where no farther value does
 */
gboolean   fp_remedy_further (const FpFindings *findings, const FpFinding *finding, const FpRemedy *of, FpWeight least,
                              GCancellable *cancel, FpRemedy *out);
/* Whether that is so little more that it is better offered first. */
gboolean   fp_remedy_is_little_more (const FpRemedy *further, const FpRemedy *than);

/* The project in which it has been made; NULL with an error where the thing is not there any more, or it cannot be. */
FpProject *fp_remedy_make (const FpRemedy *remedy, const FpScene *scene, GError **error);

/* Whether it gives another size to what was measured in the church, and so to all alternatives. */
gboolean   fp_remedy_changes_survey (const FpRemedy *remedy, const FpScene *scene);

/**
 * fp_findings_made_worse:
 * @after: of the same project and books after a change; with sight only where @before has it
 * @by: (nullable): the change; what it takes away with good reason is not known without
 *
 * Returns: (element-type guint) (transfer full): indices among fp_findings_get() of @before
 */
GArray    *fp_findings_made_worse (const FpFindings *before, const FpFindings *after, const FpRemedy *by);
/* By what share of the places, of what is seen on average, or of the C-value that is asked, a rule of sight that was short is
 * farther outside; 0 of others.
 * @i: among fp_findings_get() of @before. */
double     fp_findings_sight_lost (const FpFindings *before, const FpFindings *after, guint i);

/* --- in words -------------------------------------------------------------------- */

/* "Footpace and steps: Riser from 150 mm to 161 mm; the floor of the altar 34 mm higher, at +0.783", what else it settles, what
 * is lost, and what of less weight becomes worse; owned by the caller. */
char      *fp_remedy_words     (const FpRemedy *remedy, const FpFindings *findings);
/* "or to 1 200 mm, which also settles “The gate is too narrow”": of what goes farther; owned by the caller. */
char      *fp_remedy_further_words (const FpRemedy *further, const FpFindings *findings);
/* The same without names and what follows: "Riser: 161 mm", "120 mm east", one a line; as it is written beside the thing. */
char      *fp_remedy_beside    (const FpRemedy *remedy, FpUnits units);
/* As the edit is called: "Settle: Riser of the altar steps". */
char      *fp_remedy_label     (const FpFinding *finding);
/* A sentence; NULL of %FP_HINDRANCE_NONE and of what was cancelled. */
char      *fp_hindrance_words  (const FpHindrance *why, const FpFindings *findings);

/* --- of each -------------------------------------------------------------------------- */

/* A remedy, or what stands in its way, of each finding that is short. */
typedef struct _FpRemedies FpRemedies;
FpRemedies *fp_remedies_new   (const FpFindings *findings, GCancellable *cancel); /* takes as long as each does */
void        fp_remedies_free  (FpRemedies *self);
/* What goes farther, and settles more; NULL: there is none; borrowed.  The words of the remedy tell of it. */
const FpRemedy *fp_remedies_further (const FpRemedies *self, guint i);
/* @i: among fp_findings_get().  @words: (out) (optional): borrowed; %NULL where it is not short.  NULL: there is none; borrowed. */
const FpRemedy *fp_remedies_get (const FpRemedies *self, guint i, const char **words);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpRemedies, fp_remedies_free)

/* --- all of them ------------------------------------------------------------------ */

typedef struct
{
  char     *title;    /* of the finding                                     */
  FpWeight  weight;
  gboolean  settled;
  FpHindranceHow how; /* what stands in the way; %FP_HINDRANCE_NONE: nothing */
  char     *words;    /* by which change, with which other finding, or what stands in the way */
} FpSettled;

typedef struct
{
  FpProject *project; /* (nullable): with all that was changed; NULL: nothing was */
  GArray    *list;    /* of FpSettled, in the order of the findings          */
  guint      n_settled;
  FpHindranceHow cut; /* %FP_HINDRANCE_NONE, or %FP_HINDRANCE_CANCELLED      */
} FpSettling;

/**
 * fp_settle_all:
 * @least: rules of less weight are left alone
 *
 * Works through what is short in the order of the findings, makes each remedy and checks everything again before the next;
 * what had none because something else would have become worse is tried once more after others have been settled.  Where more of
 * the same change settles others of these findings too, that is made.  The survey stays as it was measured: a remedy that
 * changes it is told and not made.  Any thread.
 *
 * Returns: (transfer full): fp_settling_free() it
 */
FpSettling *fp_settle_all     (const FpFindings *findings, FpWeight least, GCancellable *cancel);
void        fp_settling_free  (FpSettling *self);
/* "2 of 3 required findings settled." */
char       *fp_settling_words (const FpSettling *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpSettling, fp_settling_free)

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

G_END_DECLS
