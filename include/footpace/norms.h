/* SPDX-License-Identifier: GPL-3.0-or-later */
/* norms.h - which norms a parish goes by: whose law, which books, what it holds otherwise than it is printed, and books
 * of its own
 *
 * Values without a scene: a project keeps them.  Books and rules are named by
 * their ids (rules.h); whether there are such is found out where things are
 * checked, and said there: a book may come with the next edition of the
 * program, or go, and no project is refused for that.
 */
#pragma once

#include "footpace/error.h"

G_BEGIN_DECLS

#define FP_NORM_CHANGES_MAX 500
#define FP_NORM_BOOKS_MAX   200            /* that are not followed             */
#define FP_NORM_OWN_MAX     8              /* books of its own                  */
#define FP_NORM_OWN_BYTES   (256 * 1024)   /* of each                           */
#define FP_NORM_OWN_LINE    8000           /* bytes of one line                 */
#define FP_NORM_ID_MAX      64             /* bytes: a-z, 0-9 and '-', a letter first */

/* Whose law the building is under.  Nobody said: the rules of all are held up. */
typedef enum
{
  FP_JURISDICTION_UNSAID, FP_JURISDICTION_US, FP_JURISDICTION_UK, FP_JURISDICTION_EU, FP_JURISDICTION_OTHER, FP_N_JURISDICTIONS
} FpJurisdiction;

const char *fp_jurisdiction_id    (FpJurisdiction one); /* "unsaid", "us", "uk", "eu", "other": in files */
const char *fp_jurisdiction_label (FpJurisdiction one); /* "United States" */
gboolean    fp_jurisdiction_find  (const char *id, FpJurisdiction *one);

/* A rule that is held otherwise than it is printed.  The reason is printed with it. */
typedef struct
{
  const char *book, *rule;
  gboolean    aside;      /* the rule is not held at all                       */
  double      low, high;  /* in the unit of the rule; NAN: as printed          */
  const char *reason;     /* never empty                                       */
} FpNormChange;

/* Where printed sources disagree on a matter, the rule that the parish goes by. */
typedef struct
{
  const char *matter;     /* as the rules name it: "altar-height"              */
  const char *book, *rule;
} FpNormChoice;

/* A rulebook of the parish's or the diocese's own. */
typedef struct
{
  const char *name;       /* of the file that it came from: told where it is at fault; unique */
  const char *xml;        /* as it was, its lines ended by '\n'; whether it is a rulebook is told where things are checked */
} FpNormBook;

typedef struct
{
  FpJurisdiction      jurisdiction;
  const char *const  *without;  /* ids of books that are not followed, each once */
  guint               n_without;
  const FpNormChange *change;   /* each rule at most once                      */
  guint               n_changes;
  const FpNormChoice *choice;   /* each matter at most once                    */
  guint               n_choices;
  const FpNormBook   *own;
  guint               n_own;
} FpNorms;

/* Of a project in which nobody said anything: every book, as it is printed. */
extern const FpNorms fp_norms_usual;

/* FALSE with %FP_ERROR_RANGE, %FP_ERROR_LIMIT or %FP_ERROR_INVALID where something is not as above. */
gboolean            fp_norms_check  (const FpNorms *self, GError **error);
gboolean            fp_norms_equal  (const FpNorms *a, const FpNorms *b);

gboolean            fp_norms_follow (const FpNorms *self, const char *book); /* whether the book is followed */
const FpNormChange *fp_norms_change (const FpNorms *self, const char *book, const char *rule); /* NULL: as printed */
const FpNormChoice *fp_norms_choice (const FpNorms *self, const char *matter); /* NULL: none was made */

G_END_DECLS
