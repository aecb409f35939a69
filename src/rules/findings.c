/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "finding-words.h"
#include "matters.h"
#include "measuring.h"
#include "norms-held.h"
#include "printed-unit.h"
#include "rulebook-private.h"

#include <math.h>
#include <string.h>

struct _FpFindings
{
  gatomicrefcount ref_count;
  FpMeasuring     of;    /* owns references to scene, people and sight       */
  GPtrArray      *books; /* own reference, so that rules stay                */
  GPtrArray      *held;  /* of FpRule: those that the norms change           */
  GPtrArray      *amiss; /* of char *: what was left out, and why            */
  GArray         *list;  /* of FpFinding                                     */
  guint           n_short[FP_N_WEIGHTS];
};

/* --- whether a rule speaks of this alternative --------------------------- */

static guint
books_bits (FpBooks books)
{
  const guint older = 1u << FP_BOOKS_OLDER, newer = 1u << FP_BOOKS_NEWER;

  switch (books)
    {
    case FP_BOOKS_OLDER:
      return older;
    case FP_BOOKS_NEWER:
      return newer;
    case FP_BOOKS_BOTH:
      return older | newer;
    }
  return older | newer;
}

/* "solemn Mass or pontifical Mass", of a set of celebrations. */
static char *
celebrations_named (guint celebrations)
{
  GString *names = g_string_new (NULL);

  for (guint c = 0; c < FP_N_CELEBRATIONS; c++)
    if (celebrations & (1u << c))
      g_string_append_printf (names, "%s%s", names->len ? " or " : "",
                              fp_celebration_label ((FpCelebration) (1u << c)));
  return g_string_free (names, FALSE);
}

/* Whether the altar of the scene is freestanding: 1, 0; -1 without an altar. */
static int
freestanding (const FpMeasuring *of)
{
  const FpMeasure *measure = fp_measure_find ("altar-freestanding");
  g_autoptr (GArray) measured = fp_measure_take (measure, of);

  return measured->len ? g_array_index (measured, FpMeasured, 0).value > 0 : -1;
}

/* Why the rule does not speak of this alternative; NULL when it does. */
static char *
set_apart (const FpRule *rule, const FpBrief *brief, FpFacing facing, int free_altar)
{
  if (!(rule->books & books_bits (brief->books)))
    return g_strdup (rule->books & (1u << FP_BOOKS_OLDER) ? "for the older form" : "for the newer form");
  if (rule->facing >= 0 && rule->facing != (int) facing)
    return g_strdup (rule->facing == FP_FACING_EAST ? "for a celebrant facing liturgical east"
                                                    : "for a celebrant facing the people");
  if (rule->celebrations && !(rule->celebrations & brief->celebrations))
    {
      g_autofree char *names = celebrations_named (rule->celebrations);

      return g_strdup_printf ("the brief does not ask for %s", names);
    }
  if (rule->freestanding >= 0 && free_altar >= 0 && rule->freestanding != free_altar)
    return g_strdup (rule->freestanding ? "for a freestanding altar" : "for an altar against the wall");
  return NULL;
}

/* --- one rule ------------------------------------------------------------ */

/* The value that is farthest outside, or nearest to it; @times (out): how many are outside. */
static const FpMeasured *
worst_of (const FpRule *rule, GArray *measured, guint *times)
{
  const FpMeasured *worst = NULL;
  double most = 0;

  *times = 0;
  for (guint i = 0; i < measured->len; i++)
    {
      const FpMeasured *one = &g_array_index (measured, FpMeasured, i);
      double excess = fp_rule_excess (rule, one->value);

      if (isnan (one->value))
        continue;
      *times += excess > 0;
      if (!worst || excess > most)
        {
          worst = one;
          most = excess;
        }
    }
  return worst;
}

static void
judge (FpFinding *finding, const FpMeasure *measure, GArray *measured, const FpMeasuring *of)
{
  const FpUnits units = fp_project_brief (fp_scene_project (of->scene))->units;
  const FpMeasured *worst = worst_of (finding->rule, measured, &finding->times);

  if (!worst)
    {
      finding->found = FP_FOUND_NOTHING;
      finding->detail = g_strdup (measured->len ? g_array_index (measured, FpMeasured, 0).detail : measure->absent);
      return;
    }
  finding->found = finding->times > 0 ? FP_FOUND_SHORT : FP_FOUND_WITHIN;
  finding->value = worst->value;
  finding->owner = worst->owner;
  finding->at = worst->at;
  finding->has_at = worst->has_at;
  finding->row = worst->row;
  finding->has_span = worst->has_span;
  memcpy (finding->span, worst->span, sizeof finding->span);
  finding->way = fp_way_copy (worst->way);
  finding->measured = fp_finding_value_words (finding, measure, worst, units);
  if (finding->found == FP_FOUND_SHORT)
    {
      finding->title = fp_finding_title (finding->rule, worst->value);
      finding->detail = fp_finding_where (of, finding->rule, measured, worst);
    }
  else
    finding->detail = g_strdup (worst->detail);
}

/* --- all of them --------------------------------------------------------- */

typedef struct
{
  FpFindings    *self;
  const FpBrief *brief;
  const FpNorms *norms;
  FpFacing       facing;
  int            free_altar;
  GArray       **taken;  /* by measure; several rules share one              */
} Run;

static GArray *
take_once (Run *run, const FpMeasure *measure)
{
  guint n;
  gsize i = (gsize) (measure - fp_measures (&n));

  if (!run->taken[i])
    run->taken[i] = fp_measure_take (measure, &run->self->of);
  return run->taken[i];
}

/* The rule as the parish holds it; @otherwise (out): a sentence where that is not as it is printed. */
static const FpRule *
as_held (Run *run, const FpRulebook *book, const FpRule *rule, char **otherwise)
{
  const FpNormChange *change = fp_norms_change (run->norms, fp_rulebook_id (book), rule->id);
  g_autofree FpRule *changed = g_new (FpRule, 1);
  g_autofree char *printed = NULL;
  char *amiss = NULL;

  if (!fp_norms_changed_rule (change, rule, changed, &amiss))
    {
      if (amiss)
        g_ptr_array_add (run->self->amiss, amiss);
      return rule;
    }
  printed = fp_printed_limit (fp_measure_find (rule->measure), rule, run->brief->units);
  *otherwise = g_strdup_printf ("The parish holds it otherwise than it is printed (%s): %s", printed, change->reason);
  g_ptr_array_add (run->self->held, changed);
  return g_steal_pointer (&changed);
}

static void
hold (Run *run, const FpRulebook *book, const FpRule *as_printed)
{
  const FpMeasure *measure = fp_measure_find (as_printed->measure); /* a book with another one was not read */
  char *otherwise = NULL;
  const FpRule *rule = as_held (run, book, as_printed, &otherwise);
  FpFinding finding = { .book = book, .rule = rule, .title = rule->title, .value = NAN, .owner = -1, .otherwise = otherwise };

  finding.limit = fp_printed_limit (measure, rule, run->brief->units);
  finding.detail = fp_norms_set_apart (run->norms, book, as_printed);
  if (!finding.detail)
    finding.detail = set_apart (rule, run->brief, run->facing, run->free_altar);
  if (finding.detail)
    finding.found = FP_FOUND_APART;
  else if (measure->needs_sight && !run->self->of.sight)
    finding.found = FP_FOUND_WAITING;
  else
    judge (&finding, measure, take_once (run, measure), &run->self->of);

  if (!finding.measured)
    finding.measured = g_strdup ("");
  g_array_append_val (run->self->list, finding);
}

static void
count_short (FpFindings *self)
{
  for (guint i = 0; i < self->list->len; i++)
    {
      const FpFinding *finding = &g_array_index (self->list, FpFinding, i);

      if (finding->found == FP_FOUND_SHORT)
        self->n_short[finding->rule->weight]++;
    }
}

/* Short ones first, by weight; what is equal stays in the order of the books. */
static void
put_worst_first (GArray *list)
{
  g_autoptr (GArray) sorted = g_array_sized_new (FALSE, FALSE, sizeof (FpFinding), list->len);

  for (int weight = 0; weight <= FP_N_WEIGHTS; weight++)
    for (guint i = 0; i < list->len; i++)
      {
        const FpFinding *finding = &g_array_index (list, FpFinding, i);
        int rank = finding->found == FP_FOUND_SHORT ? (int) finding->rule->weight : FP_N_WEIGHTS;

        if (rank == weight)
          g_array_append_vals (sorted, finding, 1);
      }
  if (list->len)
    memcpy (list->data, sorted->data, list->len * sizeof (FpFinding));
}

static void
finding_clear (gpointer data)
{
  FpFinding *finding = data;

  g_free (finding->measured);
  g_free (finding->limit);
  g_free (finding->detail);
  g_free (finding->otherwise);
  g_free (finding->disagree);
  fp_way_free (finding->way);
}

static FpFindings *
findings_new_empty (const FpMeasuring *of, GPtrArray *books)
{
  FpFindings *self = g_new0 (FpFindings, 1);

  g_atomic_ref_count_init (&self->ref_count);
  self->of = *of;
  self->of.scene = fp_scene_ref ((FpScene *) of->scene);
  self->of.people = fp_people_ref ((FpPeople *) of->people);
  self->of.sight = of->sight ? fp_sight_ref ((FpSight *) of->sight) : NULL;
  self->amiss = g_ptr_array_new_with_free_func (g_free);
  self->held = g_ptr_array_new_with_free_func (g_free);
  {
    g_autoptr (GPtrArray) own = fp_rulebooks_for (fp_scene_project (of->scene), self->amiss); /* also for what is left out */

    self->books = g_ptr_array_ref (books ? books : own);
    fp_rulebooks_tell_in_place (self->books, fp_scene_project (of->scene), own, self->amiss);
  }
  self->list = g_array_new (FALSE, FALSE, sizeof (FpFinding));
  g_array_set_clear_func (self->list, finding_clear);
  return self;
}

FpFindings *
fp_findings_new (const FpMeasuring *of, GPtrArray *books)
{
  FpFindings *self = findings_new_empty (of, books);
  guint n_measures;
  const FpProject *project = fp_scene_project (of->scene);
  Run run = { self, fp_project_brief (project), fp_project_norms (project), fp_project_facing (project, fp_scene_alternative (of->scene)),
              freestanding (&self->of), NULL };

  fp_measures (&n_measures);
  run.taken = g_new0 (GArray *, n_measures);
  fp_norms_unknown (run.norms, self->books, self->amiss);
  for (guint b = 0; b < self->books->len; b++)
    {
      const FpRulebook *book = g_ptr_array_index (self->books, b);
      guint n;
      const FpRule *rule = fp_rulebook_rules (book, &n);

      for (guint r = 0; r < n; r++)
        hold (&run, book, &rule[r]);
    }
  fp_matters_settle (self->list, run.norms);
  count_short (self);
  put_worst_first (self->list);

  for (guint i = 0; i < n_measures; i++)
    g_clear_pointer (&run.taken[i], g_array_unref);
  g_free (run.taken);
  return self;
}

FpFindings *
fp_findings_ref (const FpFindings *self)
{
  FpFindings *mine = (FpFindings *) self; /* only the count changes */

  g_atomic_ref_count_inc (&mine->ref_count);
  return mine;
}

void
fp_findings_unref (const FpFindings *self)
{
  FpFindings *mine = (FpFindings *) self;

  if (!mine || !g_atomic_ref_count_dec (&mine->ref_count))
    return;
  g_array_unref (mine->list);
  g_ptr_array_unref (mine->books);
  g_ptr_array_unref (mine->held);
  g_ptr_array_unref (mine->amiss);
  if (mine->of.sight)
    fp_sight_unref ((FpSight *) mine->of.sight);
  fp_people_unref ((FpPeople *) mine->of.people);
  fp_scene_unref ((FpScene *) mine->of.scene);
  g_free (mine);
}

const FpFinding *
fp_findings_get (const FpFindings *self, guint *n)
{
  *n = self->list->len;
  return (const FpFinding *) (gpointer) self->list->data;
}

guint
fp_findings_short (const FpFindings *self, FpWeight weight)
{
  return (guint) weight < FP_N_WEIGHTS ? self->n_short[weight] : 0;
}

const FpScene *
fp_findings_scene (const FpFindings *self)
{
  return self->of.scene;
}

GPtrArray *
fp_findings_books (const FpFindings *self)
{
  return self->books;
}

GPtrArray *
fp_findings_amiss (const FpFindings *self)
{
  return self->amiss;
}

const FpMeasuring *
fp_findings_measuring (const FpFindings *self)
{
  return &self->of;
}

FpFindings *
fp_findings_of (const FpProject *project, guint alternative, GPtrArray *books, GCancellable *cancel)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, alternative);

  return fp_findings_of_scene (scene, books, cancel);
}

FpFindings *
fp_findings_of_scene (const FpScene *scene, GPtrArray *books, GCancellable *cancel)
{
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (FpSight) sight = fp_sight_new (people, cancel);
  FpMeasuring of = { scene, people, fp_levels (people), sight };
  FpFindings *findings;

  if (!sight)
    return NULL;
  findings = fp_findings_new (&of, books);
  if (g_cancellable_is_cancelled (cancel)) /* meanwhile: not all was looked at */
    g_clear_pointer (&findings, fp_findings_unref);
  return findings;
}
