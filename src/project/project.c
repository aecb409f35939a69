/* SPDX-License-Identifier: GPL-3.0-or-later */
/* project.c - what can be read out of a project */
#include "project-private.h"

#include <string.h>

FpProject *
fp_project_new (const FpBrief *brief)
{
  g_autoptr (GError) error = NULL;
  FpProject *self;

  if (!fp_brief_check (brief, &error))
    {
      g_critical ("%s", error->message);
      return NULL;
    }
  self = g_new (FpProject, 1);
  g_atomic_ref_count_init (&self->ref_count);
  self->brief = fp_brief_part_new (brief);
  self->survey = fp_item_list_new ();
  self->has_page = FALSE;
  self->works = NULL;
  self->norms = NULL;
  self->reckoning = fp_reckoning_usual;
  self->n_alternatives = 1;
  self->alternative = g_new (FpAlternative *, 1);
  self->alternative[0] = fp_alternative_new ("a", "Alternative A", "");
  return self;
}

FpProject *
fp_project_copy (const FpProject *self, guint spare)
{
  FpProject *copy = g_new (FpProject, 1);

  g_atomic_ref_count_init (&copy->ref_count);
  copy->brief = fp_brief_part_ref (self->brief);
  copy->survey = fp_item_list_ref (self->survey);
  copy->has_page = self->has_page;
  copy->page = self->page;
  copy->works = fp_works_part_ref (self->works);
  copy->norms = fp_norms_part_ref (self->norms);
  copy->reckoning = self->reckoning;
  copy->n_alternatives = self->n_alternatives;
  copy->alternative = g_new (FpAlternative *, self->n_alternatives + spare);
  for (guint i = 0; i < self->n_alternatives; i++)
    copy->alternative[i] = fp_alternative_ref (self->alternative[i]);
  return copy;
}

FpProject *
fp_project_ref (const FpProject *self)
{
  FpProject *project = (FpProject *) self; /* the count is not part of the value */

  g_atomic_ref_count_inc (&project->ref_count);
  return project;
}

void
fp_project_unref (const FpProject *self)
{
  FpProject *project = (FpProject *) self;

  if (project == NULL || !g_atomic_ref_count_dec (&project->ref_count))
    return;
  fp_brief_part_unref (project->brief);
  fp_item_list_unref (project->survey);
  fp_works_part_unref (project->works);
  fp_norms_part_unref (project->norms);
  for (guint i = 0; i < project->n_alternatives; i++)
    fp_alternative_unref (project->alternative[i]);
  g_free (project->alternative);
  g_free (project);
}

const FpPageSetup *
fp_project_page (const FpProject *self)
{
  return self->has_page ? &self->page : NULL;
}

gboolean
fp_project_has_works (const FpProject *self)
{
  return self->works != NULL;
}

const FpWorks *
fp_project_works (const FpProject *self)
{
  return self->works != NULL ? &self->works->works : &fp_works_usual;
}

const FpNorms *
fp_project_norms (const FpProject *self)
{
  return self->norms != NULL ? &self->norms->norms : &fp_norms_usual;
}

const FpReckoning *
fp_project_reckoning (const FpProject *self)
{
  return &self->reckoning;
}

const FpBrief *
fp_project_brief (const FpProject *self)
{
  return &self->brief->brief;
}

guint
fp_project_n_survey (const FpProject *self)
{
  return self->survey->n;
}

const FpItem *
fp_project_survey (const FpProject *self, guint i)
{
  g_return_val_if_fail (i < self->survey->n, NULL);
  return self->survey->item[i];
}

guint
fp_project_n_alternatives (const FpProject *self)
{
  return self->n_alternatives;
}

const FpAlternative *
fp_project_alternative (const FpProject *self, guint i)
{
  g_return_val_if_fail (i < self->n_alternatives, NULL);
  return self->alternative[i];
}

int
fp_project_find_alternative (const FpProject *self, const char *id)
{
  for (guint i = 0; i < self->n_alternatives; i++)
    if (strcmp (self->alternative[i]->id, id) == 0)
      return (int) i;
  return -1;
}

FpFacing
fp_project_facing (const FpProject *self, guint alternative)
{
  FpFacing facing = self->brief->brief.facing;

  if (alternative < self->n_alternatives)
    fp_alternative_own_facing (self->alternative[alternative], &facing);
  return facing;
}

const FpItem *
fp_project_find (const FpProject *self, guint alternative, const char *id, gboolean *in_survey)
{
  const int in_s = fp_item_list_find (self->survey, id);
  int in_a;

  g_return_val_if_fail (alternative < self->n_alternatives, NULL);
  if (in_survey != NULL)
    *in_survey = in_s >= 0;
  if (in_s >= 0)
    return self->survey->item[in_s];
  in_a = fp_item_list_find (self->alternative[alternative]->items, id);
  return in_a >= 0 ? self->alternative[alternative]->items->item[in_a] : NULL;
}

gboolean
fp_project_equal (const FpProject *a, const FpProject *b)
{
  if (a == b)
    return TRUE;
  if (a->n_alternatives != b->n_alternatives || !fp_brief_equal (&a->brief->brief, &b->brief->brief)
      || !fp_item_list_equal (a->survey, b->survey) || !fp_page_setup_equal (fp_project_page (a), fp_project_page (b))
      || fp_project_has_works (a) != fp_project_has_works (b) || !fp_works_equal (fp_project_works (a), fp_project_works (b))
      || !fp_norms_equal (fp_project_norms (a), fp_project_norms (b)) || !fp_reckoning_equal (&a->reckoning, &b->reckoning))
    return FALSE;
  for (guint i = 0; i < a->n_alternatives; i++)
    if (!fp_alternative_equal (a->alternative[i], b->alternative[i]))
      return FALSE;
  return TRUE;
}

static gboolean
is_taken (const FpProject *self, const char *id)
{
  if (fp_item_list_find (self->survey, id) >= 0 || fp_project_find_alternative (self, id) >= 0)
    return TRUE;
  for (guint i = 0; i < self->n_alternatives; i++)
    if (fp_item_list_find (self->alternative[i]->items, id) >= 0)
      return TRUE;
  return FALSE;
}

char *
fp_project_free_id (const FpProject *self, const char *stem)
{
  char *id = g_strdup (stem);

  for (guint n = 2; is_taken (self, id); n++)
    {
      g_free (id);
      /* A long stem is cut so that the number still fits. */
      id = g_strdup_printf ("%.*s-%u", FP_ID_MAX - 12, stem, n);
    }
  return id;
}
