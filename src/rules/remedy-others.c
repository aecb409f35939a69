/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedy-others.c - what a change of the survey does to the other alternatives
 *
 * What was measured in the church is the same in all of them: whoever changes
 * it for one changes it for those who look at another.
 */
#include "remedy-private.h"

static FpFindings *
findings_in (const FpRemedySearch *all, const FpProject *project, guint alternative, const FpFindings *before, gboolean sight)
{
  const FpSight *last = before != NULL ? fp_findings_measuring (before)->sight : NULL;
  g_autoptr (FpScene) scene = fp_scene_new (project, alternative);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (FpSight) seen = sight ? fp_sight_again (people, last, all->cancel) : NULL;

  return fp_findings_new (&(FpMeasuring) { scene, people, fp_levels (people), seen }, fp_findings_books (all->base));
}

static gboolean
sees (const FpRemedySearch *all)
{
  return fp_findings_measuring (all->base)->sight != NULL;
}

static const FpFindings *
as_it_is (FpRemedySearch *all, guint alternative)
{
  const FpProject *project = fp_scene_project (all->whole);

  if (all->others == NULL)
    all->others = g_new0 (const FpFindings *, fp_project_n_alternatives (project));
  if (all->others[alternative] == NULL)
    all->others[alternative] = findings_in (all, project, alternative, NULL, sees (all));
  return all->others[alternative];
}

static guint
in_the_base (const FpRemedySearch *all, const FpFinding *of)
{
  guint n;

  return (guint) (fp_findings_same (all->base, of) - fp_findings_get (all->base, &n));
}

static gboolean
spoils (FpRemedySearch *all, const FpRemedy *remedy, const FpProject *then, guint alternative, gboolean sight, guint *worse)
{
  const FpFindings *before = as_it_is (all, alternative);
  g_autoptr (FpFindings) after = findings_in (all, then, alternative, before, sight);
  g_autoptr (GArray) list = fp_findings_made_worse (before, after, remedy);
  guint n;

  g_atomic_int_add (&all->scenes, FP_REMEDY_JUDGED);
  if (list->len > 0)
    *worse = in_the_base (all, &fp_findings_get (before, &n)[g_array_index (list, guint, 0)]);
  return list->len > 0;
}

gboolean
fp_remedy_spoils_others (FpRemedySearch *all, const FpRemedy *remedy, const FpProject *then, guint *other, guint *worse)
{
  const guint own = fp_scene_alternative (all->whole);

  if (!fp_remedy_changes_survey (remedy, all->whole))
    return FALSE;
  for (guint i = 0; i < fp_project_n_alternatives (then) && !g_cancellable_is_cancelled (all->cancel); i++)
    if (i != own && (spoils (all, remedy, then, i, FALSE, worse) || (sees (all) && spoils (all, remedy, then, i, TRUE, worse))))
      {
        *other = i;
        return TRUE;
      }
  return FALSE;
}

void
fp_remedy_forget_others (FpRemedySearch *all)
{
  for (guint i = 0; all->others != NULL && i < fp_project_n_alternatives (fp_scene_project (all->whole)); i++)
    g_clear_pointer (&all->others[i], fp_findings_unref);
  g_clear_pointer (&all->others, g_free);
}
