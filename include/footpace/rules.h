/* SPDX-License-Identifier: GPL-3.0-or-later */
/* rules.h - what is measured, what it is held against, what was found
 *
 * A measure is computed in C and has a name.  A rule is data: an XML rulebook
 * (namespace urn:footpace:rulebook:1) binds a measure to a limit, a weight
 * and a printed source.  A finding is what a rule says of one alternative.
 *
 * Nothing here approves anything: a rule that was not found short says "no
 * finding", never that something complies.
 */
#pragma once

#include "footpace/evidence.h"
#include "footpace/levels.h"
#include "footpace/room-to-move.h"
#include "footpace/sight.h"

G_BEGIN_DECLS

/* --- measures ------------------------------------------------------------ */

typedef enum { FP_MEASURE_LENGTH, FP_MEASURE_COUNT, FP_MEASURE_SHARE, FP_MEASURE_AREA, FP_MEASURE_YES } FpMeasureType;

/* What measures are taken from. */
typedef struct
{
  const FpScene  *scene;
  const FpPeople *people;
  FpLevels        levels;
  const FpSight  *sight;   /* NULL while it is still being computed          */
} FpMeasuring;

/* One value: some measures give several (each rail, each row). */
typedef struct
{
  double value;            /* mm, mm2, a number, 0..1, or 0/1                */
  int    owner;            /* placed thing that it is about, -1: the whole   */
  FpVec3 at;               /* where to show it                               */
  gboolean has_at;
  guint  row;              /* the row of seats that it is about; 0: none     */
  char  *detail;           /* (nullable) more about where and what; owned.  NULL: the owner's name tells.
                              With a value of NAN: why nothing was measured */
  char  *text;             /* (nullable) the value in words where a number alone
                              says too little: "287 of 312 places"; owned    */
  FpWay *way;              /* (nullable) the way that was measured, and where it is narrowest; owned */
  FpVec3 span[2];          /* straight between which it was measured         */
  gboolean has_span;
} FpMeasured;

typedef struct
{
  const char   *id;        /* "riser"                                        */
  const char   *label;     /* "Riser of the altar steps"                     */
  const char   *tells;     /* definition, one sentence                       */
  FpMeasureType type;
  gboolean      needs_sight; /* taken with sight: it needs that, or takes as long, as ways do */
  void        (*take) (const FpMeasuring *of, GArray *out); /* FpMeasured; none when there is nothing to measure; see fp_measure_take() */
  const char   *unit;      /* of a count that is not a plain number: "kN/m2"; otherwise NULL */
  const char   *one, *many; /* what is counted: "place", "places"; NULL where nothing is */
  const char   *absent;    /* why there may be nothing to measure: "there is no altar" */
  FpRole        role;      /* of what a parameter is measured: then `take` is NULL  */
  const char   *param;     /* (nullable) id of the parameter                  */
  gboolean      apart;     /* of how two things lie to each other: settled by moving one, not by making it otherwise */
} FpMeasure;

const FpMeasure *fp_measures (guint *n);
const FpMeasure *fp_measure_find (const char *id);
const char      *fp_measure_unit_id (const FpMeasure *measure); /* of FpMeasured.value: "mm", "mm2", "kN/m2", "share", "yes", "" */
GArray          *fp_measure_take (const FpMeasure *measure, const FpMeasuring *of); /* (element-type FpMeasured) */

/**
 * fp_measured_evidence:
 * @one: of fp_measure_take() with the same @of
 *
 * What was measured, drawn: a length between its ends, each place that was counted, the line of sight from the place that
 * sees least.  It is made when somebody asks.  What is measured along a way has its way for that (room-to-move.h), and its
 * evidence may be empty.  Of what was not found, nothing is drawn but where it would be.
 *
 * Returns: owned by the caller
 */
FpEvidence      *fp_measured_evidence (const FpMeasure *measure, const FpMeasuring *of, const FpMeasured *one);
/* What that is, in words: "the length, between its ends"; static. */
const char      *fp_measure_drawn (const FpMeasure *measure);

/* What is to be seen by a measure of sight; FALSE: it is none. */
gboolean         fp_measure_focus (const char *id, FpFocus *focus);

/* --- what is seen, in words ------------------------------------------------ */

/* These need FpMeasuring.sight.  Galleries and places at the rail are left out. */

/* "Elevation of the Host, kneeling: from 287 of 312 places the raised Host is wholly seen; 14 look past something, most
 * past Pier 3 (Pews, Gospel side: rows 9 to 12)."  Owned by the caller. */
char   *fp_sight_sentence    (const FpMeasuring *of, FpMoment moment, FpFocus focus);
/* "With other people in these places, 9 times over (seeds 3 to 11): wholly seen from 102 of 312 places at least, 118 in the
 * middle, 131 at most."  Owned by the caller. */
char   *fp_sight_spread_sentence (const FpSightSpread *spread, FpMoment moment, FpFocus focus);
/* "Building or furnishings hide all of it on 34.21 m² of the people's floor, and on 2.10 m² of the gallery.": whoever else is
 * there.  Owned by the caller; NULL where there is no such thing to see, or no floor of the people. */
char   *fp_sight_blind_sentence (const FpMeasuring *of, FpMoment moment, FpFocus focus);
/* Places that do not see all of it, the least first, at most so many; (element-type guint), owned by the caller. */
GArray *fp_sight_worst       (const FpMeasuring *of, FpMoment moment, FpFocus focus, guint most);
/* "31 %, past Pier 3": what one place sees, and past what; owned by the caller. */
char   *fp_sight_place_words (const FpMeasuring *of, guint place, FpMoment moment, FpFocus focus);

/* --- rulebooks ----------------------------------------------------------- */

typedef enum { FP_WEIGHT_REQUIRED, FP_WEIGHT_RECOMMENDED, FP_WEIGHT_CUSTOMARY, FP_N_WEIGHTS } FpWeight;
const char *fp_weight_label (FpWeight weight);

typedef enum
{
  FP_TEST_AT_LEAST, FP_TEST_AT_MOST, FP_TEST_BETWEEN, FP_TEST_EQUALS, FP_TEST_ODD, FP_TEST_ONE_OF
} FpTest;

typedef struct
{
  const char *id, *title, *measure;
  const char *below, *above; /* (nullable) the title where a value is below low, or above high */
  FpTest      test;
  double      low, high;     /* in the printed unit                          */
  double      one_of[8];     /* FP_TEST_ONE_OF                               */
  guint       n_one_of;
  const char *unit;          /* as printed: "mm", "cm", "in", "ft", "%", ""  */
  FpWeight    weight;
  const char *source;        /* author, title, page; never empty             */
  const char *caution;       /* (nullable) who must confirm it               */
  const char *advice;        /* what to do about it, one sentence            */
  guint       books;         /* 1 << FpBooks where it holds; older and newer */
  int         facing;        /* FpFacing, -1: either                         */
  guint       celebrations;  /* bits; 0: whatever is celebrated              */
  int         freestanding;  /* 1, 0, -1: either                             */
  guint       jurisdictions; /* 1 << FpJurisdiction, under whose law it is; 0: it is of no law */
  const char *matter;        /* (nullable) on which printed sources disagree: rules of one matter exclude each other */
  const char *printed;       /* (nullable) the limit in the words of the source: "about 6 in" */
} FpRule;

/**
 * fp_rule_excess:
 * @value: as measured: mm, mm2, a number, 0..1
 *
 * How far a value lies outside the limit, in the printed unit; 0 or less
 * when it lies within, the lesser the farther within.  What is not odd, or
 * none of a list, is outside by at least 1.  NAN is never outside (-INFINITY).
 *
 * A limit that was printed in inches or feet gives way by 0.45 mm: the same
 * norms print 7 in as 178 mm and 36 in as 914 mm, so a nearer value cannot be told from it.
 */
double      fp_rule_excess (const FpRule *rule, double value);
const char *fp_test_id     (FpTest test); /* "at-least" … */

typedef struct _FpRulebook FpRulebook;
/* With every fault that was found, a line each, as "@name:line: why". */
FpRulebook   *fp_rulebook_parse (const char *xml, gsize length, const char *name, GError **error);
FpRulebook   *fp_rulebook_load  (const char *path, GError **error);
GPtrArray    *fp_rulebooks_built_in (void); /* (element-type FpRulebook), owned by the caller */

/**
 * fp_rulebooks_for:
 * @left_out: (element-type utf8) (nullable): a sentence is added for each book of the project's own that cannot be used
 *
 * The built-in books and the project's own.  Which of them it follows is told by its norms, of which findings know.
 *
 * Returns: (element-type FpRulebook) (transfer full)
 */
GPtrArray    *fp_rulebooks_for (const FpProject *project, GPtrArray *left_out);
/* The file that a book of the project's own came from, owned by the project; NULL: it is built in. */
const char   *fp_rulebook_own_name  (const FpProject *project, const FpRulebook *book);
/* Adds a reference; FALSE where a book of that id is there already, and why, owned by the caller. */
gboolean      fp_rulebooks_add (GPtrArray *books, FpRulebook *book, char **why);
FpRulebook   *fp_rulebook_ref   (FpRulebook *self);
void          fp_rulebook_unref (FpRulebook *self);
const char   *fp_rulebook_id    (const FpRulebook *self);
const char   *fp_rulebook_title (const FpRulebook *self);
const char   *fp_rulebook_edition (const FpRulebook *self);
const FpRule *fp_rulebook_rules (const FpRulebook *self, guint *n);
const char   *fp_rulebook_schema (gsize *length);

/* --- findings ------------------------------------------------------------ */

typedef enum
{
  FP_FOUND_SHORT,      /* outside the limit: a finding                       */
  FP_FOUND_WITHIN,     /* measured, no finding                               */
  FP_FOUND_WAITING,    /* needs sight, which is still being computed         */
  FP_FOUND_NOTHING,    /* nothing there to measure                           */
  FP_FOUND_APART       /* the rule is for another form, celebration, …       */
} FpFound;
const char *fp_found_id (FpFound found); /* "short", "within", "waiting", "nothing", "apart" */

typedef struct
{
  const FpRulebook *book;
  const FpRule     *rule;
  const char       *title;    /* of the rule, or of the case that was found  */
  FpFound           found;
  double            value;    /* the worst measured, as FpMeasured; NAN when none */
  guint             times;    /* how many measured values are outside        */
  int               owner;    /* index in the scene, -1                      */
  FpVec3            at;
  gboolean          has_at;
  char             *measured; /* "160 mm", "287 of 312 seats"                */
  char             *limit;    /* "at least 914 mm (36 in)": in the units of the brief first */
  char             *detail;   /* (nullable) more about where; why nothing was measured, or why the rule is set apart */
  char             *otherwise; /* (nullable) that the parish holds it otherwise than it is printed, and why; a sentence */
  char             *disagree; /* (nullable) what other sources print of the same matter; sentences */
  FpWay            *way;      /* (nullable) to be drawn: a route, its narrowest place, or that alone */
  guint             row;      /* as FpMeasured                               */
  FpVec3            span[2];
  gboolean          has_span;
} FpFinding;

typedef struct _FpFindings FpFindings;
/* @books: (nullable): those of the project where NULL.  Its norms are held in any case. */
FpFindings      *fp_findings_new   (const FpMeasuring *of, GPtrArray *books);
FpFindings      *fp_findings_ref   (const FpFindings *self);
void             fp_findings_unref (const FpFindings *self);
/* Every rule of every book: short ones first, by weight, then by book order. */
const FpFinding *fp_findings_get   (const FpFindings *self, guint *n);
guint            fp_findings_short (const FpFindings *self, FpWeight weight); /* how many are short */
/* The lengths of those that are short and were measured straight from one thing to another, each once: for a sheet, which tells
 * sizes of things already; owned by the caller. */
FpEvidence      *fp_findings_spans (const FpFindings *self);
/* What was measured, drawn (fp_measured_evidence()); owned by the caller.  NULL where nothing was. */
FpEvidence      *fp_finding_evidence (const FpFindings *self, const FpFinding *finding);
const FpScene   *fp_findings_scene (const FpFindings *self);
/* The ways of those that are short, each once, ended by NULL: the array is the caller's, the ways are not. */
const FpWay    **fp_findings_ways  (const FpFindings *self);
/* (element-type FpRulebook) (transfer none): what it was held against. */
GPtrArray       *fp_findings_books (const FpFindings *self);
/* (element-type utf8) (transfer none): sentences on books that were left out, and norms that could not be held. */
GPtrArray       *fp_findings_amiss (const FpFindings *self);

/* As measured: mm, a number, 0..1. */
typedef struct { double low, high; } FpLimits;

/**
 * fp_findings_limits:
 * @least: rules of less weight do not count
 *
 * What all rules that speak of this alternative leave a measure, by their limits of one side or two.
 *
 * Returns: from -INFINITY to INFINITY where none limits it; low is more than high where they exclude each other
 */
FpLimits         fp_findings_limits (const FpFindings *self, const char *measure, FpWeight least);

/* The risers that steps to the altar may have: what a footpace can have, and all rules of weight leave of it. */
FpRisers         fp_findings_risers (const FpFindings *self);

/**
 * fp_findings_of:
 *
 * All of it at once, on this thread: scene, people, levels, sight, findings.
 * @books: (nullable): those of the project where NULL
 *
 * Returns: (nullable): NULL when cancelled
 */
FpFindings      *fp_findings_of (const FpProject *project, guint alternative, GPtrArray *books,
                                 GCancellable *cancel);
/* The same of a scene, as it may be set for a celebration. */
FpFindings      *fp_findings_of_scene (const FpScene *scene, GPtrArray *books, GCancellable *cancel);
const FpMeasuring *fp_findings_measuring (const FpFindings *self); /* borrowed */

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpRulebook, fp_rulebook_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpFindings, fp_findings_unref)

G_END_DECLS
