/* SPDX-License-Identifier: GPL-3.0-or-later */
/* settle-all.c - one finding after the other is settled, and all are checked again in between */
#include "remedy-private.h"

#define ROUNDS 2 /* what could not be settled may be able to after others were */

typedef struct
{
  const FpFindings *first;
  FpFindings       *now;     /* owned                                          */
  GCancellable     *cancel;
  FpSettling       *out;
  FpWeight          least;
  GArray           *index;   /* of guint: of each FpSettled, among the findings of `first` */
} Work;

static void
settled_clear (gpointer data)
{
  FpSettled *settled = data;

  g_free (settled->title);
  g_free (settled->words);
}

static void
list_short (Work *work, FpWeight least)
{
  guint n;
  const FpFinding *finding = fp_findings_get (work->first, &n);

  for (guint i = 0; i < n; i++)
    {
      const FpSettled settled = { .title = g_strdup (finding[i].title), .weight = finding[i].rule->weight };

      if (finding[i].found != FP_FOUND_SHORT || finding[i].rule->weight > least)
        {
          g_free (settled.title);
          continue;
        }
      g_array_append_val (work->out->list, settled);
      g_array_append_val (work->index, i);
    }
}

static void
say (FpSettled *settled, char *words)
{
  g_free (settled->words);
  settled->words = words;
}

/* FALSE: it cannot be made after all, or not be checked. */
static gboolean
make (Work *work, const FpRemedy *remedy)
{
  const FpScene *scene = fp_findings_scene (work->now);
  const FpMeasuring *of = fp_findings_measuring (work->now);
  g_autoptr (FpScene) base = fp_scene_new (fp_scene_project (scene), fp_scene_alternative (scene));
  g_autoptr (FpProject) project = fp_remedy_make (remedy, base, NULL);
  g_autoptr (FpScene) whole = project != NULL ? fp_scene_new (project, fp_scene_alternative (scene)) : NULL;
  g_autoptr (FpScene) then = whole != NULL ? fp_remedy_set (whole, scene) : NULL;
  g_autoptr (FpPeople) people = then != NULL ? fp_people_new (then) : NULL;
  g_autoptr (FpSight) sight = people != NULL && of->sight != NULL ? fp_sight_again (people, of->sight, work->cancel) : NULL;
  FpFindings *next;

  if (people == NULL)
    return FALSE;
  next = fp_findings_new (&(FpMeasuring) { then, people, fp_levels (people), sight }, fp_findings_books (work->now));
  if (g_cancellable_is_cancelled (work->cancel))
    {
      fp_findings_unref (next);
      return FALSE;
    }
  fp_findings_unref (work->now);
  work->now = next;
  g_clear_pointer (&work->out->project, fp_project_unref);
  work->out->project = g_steal_pointer (&project);
  return TRUE;
}

static void
settle (Work *work, FpSettled *settled, const FpFinding *finding)
{
  FpRemedy remedy, further;
  FpHindrance why;

  if (!fp_remedy_find (work->now, finding, work->cancel, &remedy, &why))
    {
      say (settled, fp_hindrance_words (&why, work->now));
      settled->how = why.how;
      return;
    }
  /* One gate is not widened three times. */
  if (fp_remedy_further (work->now, finding, &remedy, work->least, work->cancel, &further))
    remedy = further;
  say (settled, fp_remedy_words (&remedy, work->now));
  settled->how = FP_HINDRANCE_NONE;
  if (fp_remedy_changes_survey (&remedy, fp_findings_scene (work->now)))
    {
      say (settled, g_strdup_printf ("Left for you to decide: %s.", settled->words));
      return;
    }
  settled->settled = make (work, &remedy);
}

/* TRUE: something was changed. */
static gboolean
go_round (Work *work, guint round)
{
  gboolean changed = FALSE;
  guint n;
  const FpFinding *finding = fp_findings_get (work->first, &n);

  for (guint i = 0; i < work->out->list->len && !g_cancellable_is_cancelled (work->cancel); i++)
    {
      FpSettled *settled = &g_array_index (work->out->list, FpSettled, i);
      const FpFinding *now = fp_findings_same (work->now, &finding[g_array_index (work->index, guint, i)]);

      if (settled->settled || now == NULL)
        continue;
      if (now->found == FP_FOUND_SHORT && (round == 0 || settled->how == FP_HINDRANCE_WORSE))
        settle (work, settled, now);
      else if (now->found == FP_FOUND_SHORT)
        continue;
      else if (now->found == FP_FOUND_WITHIN)
        {
          say (settled, g_strdup ("Settled by what settled another."));
          settled->settled = TRUE;
        }
      else /* it has vanished: that is no settling */
        say (settled, g_strdup ("After what settled another it speaks of nothing that is there."));
      changed = changed || settled->settled;
    }
  return changed;
}

FpSettling *
fp_settle_all (const FpFindings *findings, FpWeight least, GCancellable *cancel)
{
  FpSettling *self = g_new0 (FpSettling, 1);
  Work work = { findings, fp_findings_ref (findings), cancel, self, least, g_array_new (FALSE, FALSE, sizeof (guint)) };

  self->list = g_array_new (FALSE, FALSE, sizeof (FpSettled));
  g_array_set_clear_func (self->list, settled_clear);
  list_short (&work, least);
  for (guint i = 0; i < ROUNDS && go_round (&work, i); i++)
    continue;
  for (guint i = 0; i < self->list->len; i++)
    self->n_settled += g_array_index (self->list, FpSettled, i).settled ? 1 : 0;
  if (g_cancellable_is_cancelled (cancel))
    self->cut = FP_HINDRANCE_CANCELLED;
  g_array_unref (work.index);
  fp_findings_unref (work.now);
  return self;
}

void
fp_settling_free (FpSettling *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->project, fp_project_unref);
  g_array_unref (self->list);
  g_free (self);
}

char *
fp_settling_words (const FpSettling *self)
{
  const guint n = self->list->len;

  if (n == 0)
    return g_strdup ("There is nothing to settle.");
  if (self->n_settled == n)
    return n == 1 ? g_strdup ("The one finding is settled.") : g_strdup_printf ("All %u findings are settled.", n);
  return g_strdup_printf ("%u of %u %s settled.", self->n_settled, n, n == 1 ? "finding is" : "findings are");
}
