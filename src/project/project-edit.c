/* SPDX-License-Identifier: GPL-3.0-or-later */
/* project-edit.c - from one project to the next */
#include "project-private.h"

FpProject *
fp_project_checked (FpProject *self, GError **error)
{
  if (fp_project_check (self, error))
    return self;
  fp_project_unref (self);
  return NULL;
}

void
fp_project_take_alternative (FpProject *self, guint i, FpAlternative *alternative)
{
  fp_alternative_unref (self->alternative[i]);
  self->alternative[i] = alternative;
}

static void
take_survey (FpProject *self, FpItemList *survey)
{
  fp_item_list_unref (self->survey);
  self->survey = survey;
}

static gboolean
has_alternative (const FpProject *self, guint alternative, GError **error)
{
  if (alternative < self->n_alternatives)
    return TRUE;
  g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "there is no alternative number %u", alternative + 1);
  return FALSE;
}

FpProject *
fp_project_with_brief (const FpProject *self, const FpBrief *brief, GError **error)
{
  FpProject *next;

  if (!fp_brief_check (brief, error))
    return NULL;
  next = fp_project_copy (self, 0);
  fp_brief_part_unref (next->brief);
  next->brief = fp_brief_part_new (brief);
  return next;
}

FpProject *
fp_project_with_page (const FpProject *self, const FpPageSetup *page, GError **error)
{
  FpProject *next;

  if (page != NULL && !fp_page_setup_check (page, error))
    return NULL;
  next = fp_project_copy (self, 0);
  next->has_page = page != NULL;
  if (page != NULL)
    next->page = *page;
  return next;
}

FpProject *
fp_project_with_works (const FpProject *self, const FpWorks *works, GError **error)
{
  FpProject *next;

  if (works != NULL && !fp_works_check (works, error))
    return NULL;
  next = fp_project_copy (self, 0);
  fp_works_part_unref (next->works);
  next->works = works != NULL ? fp_works_part_new (works) : NULL;
  return next;
}

FpProject *
fp_project_with_norms (const FpProject *self, const FpNorms *norms, GError **error)
{
  FpProject *next;

  if (norms != NULL && !fp_norms_check (norms, error))
    return NULL;
  next = fp_project_copy (self, 0);
  fp_norms_part_unref (next->norms);
  next->norms = norms != NULL && !fp_norms_equal (norms, &fp_norms_usual) ? fp_norms_part_new (norms) : NULL;
  return next;
}

FpProject *
fp_project_with_reckoning (const FpProject *self, const FpReckoning *reckoning, GError **error)
{
  FpProject *next;

  if (!fp_reckoning_check (reckoning, error))
    return NULL;
  next = fp_project_copy (self, 0);
  next->reckoning = *reckoning;
  return next;
}

FpProject *
fp_project_with_survey_item (const FpProject *self, FpItem *item, GError **error)
{
  FpProject *next = fp_project_copy (self, 0);

  take_survey (next, fp_item_list_with (self->survey, item));
  return fp_project_checked (next, error);
}

FpProject *
fp_project_with_survey_items (const FpProject *self, FpItem *const *item, guint n, GError **error)
{
  FpProject *next = fp_project_copy (self, 0);

  for (guint i = 0; i < n; i++)
    take_survey (next, fp_item_list_with (next->survey, item[i]));
  return fp_project_checked (next, error);
}

/* Survey and other alternatives are as they were: only this one can be amiss. */
static FpProject *
with_alternative (const FpProject *self, guint i, FpAlternative *alternative, GError **error)
{
  FpProject *next;

  if (!fp_alternative_check (alternative, self->survey, error))
    {
      fp_alternative_unref (alternative);
      return NULL;
    }
  next = fp_project_copy (self, 0);
  fp_project_take_alternative (next, i, alternative);
  return next;
}

FpProject *
fp_project_with_item (const FpProject *self, guint alternative, FpItem *item, GError **error)
{
  FpAlternative *changed;

  if (!has_alternative (self, alternative, error))
    return NULL;
  changed = fp_alternative_copy (self->alternative[alternative]);
  fp_alternative_set_items (changed, fp_item_list_with (changed->items, item));
  return with_alternative (self, alternative, changed, error);
}

static GHashTable *
set_of_one (const char *id)
{
  GHashTable *set = g_hash_table_new (g_str_hash, g_str_equal);

  g_hash_table_add (set, (gpointer) id);
  return set;
}

/* All that stands on @id in the survey, and @id. */
static GHashTable *
with_dependents (const FpItemList *survey, const char *id)
{
  GHashTable *gone = set_of_one (id);
  guint before;

  do
    {
      before = g_hash_table_size (gone);
      for (guint i = 0; i < survey->n; i++)
        if (fp_item_on (survey->item[i]) != NULL && g_hash_table_contains (gone, fp_item_on (survey->item[i])))
          g_hash_table_add (gone, (gpointer) fp_item_id (survey->item[i]));
    }
  while (g_hash_table_size (gone) > before);
  return gone;
}

static FpProject *
without_survey_item (const FpProject *self, const char *id, GError **error)
{
  g_autoptr (GHashTable) gone = with_dependents (self->survey, id);
  FpProject *next = fp_project_copy (self, 0);

  take_survey (next, fp_item_list_without (self->survey, gone));
  for (guint i = 0; i < next->n_alternatives; i++)
    {
      FpAlternative *changed = fp_alternative_copy (next->alternative[i]);
      fp_alternative_let_fall (changed, next->survey);
      fp_project_take_alternative (next, i, changed);
    }
  return fp_project_checked (next, error);
}

FpProject *
fp_project_without_item (const FpProject *self, guint alternative, const char *id, GError **error)
{
  g_autoptr (GHashTable) gone = set_of_one (id);
  FpAlternative *changed;
  gboolean in_survey;

  if (!has_alternative (self, alternative, error))
    return NULL;
  if (fp_project_find (self, alternative, id, &in_survey) == NULL)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "%s: there is no such thing to take away", id);
      return NULL;
    }
  if (in_survey)
    return without_survey_item (self, id, error);
  changed = fp_alternative_copy (self->alternative[alternative]);
  fp_alternative_set_items (changed, fp_item_list_without (changed->items, gone));
  fp_alternative_let_fall (changed, self->survey);
  return with_alternative (self, alternative, changed, error);
}

FpProject *
fp_project_with_fate (const FpProject *self, guint alternative, const char *id,
                      FpFate fate, const FpPlace *moved, const char *on, GError **error)
{
  FpAlternative *changed;

  if (!has_alternative (self, alternative, error))
    return NULL;
  if (fp_item_list_find (self->survey, id) < 0)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "%s: the survey holds no such thing", id);
      return NULL;
    }
  if (fate == FP_FATE_MOVED && (moved == NULL || !fp_place_check (moved, id, error)))
    {
      if (moved == NULL)
        g_set_error (error, FP_ERROR, FP_ERROR_INVALID, "%s: it is moved, but not said where", id);
      return NULL;
    }
  changed = fp_alternative_copy (self->alternative[alternative]);
  fp_alternative_set_fate (changed, id, fate, moved, on);
  return with_alternative (self, alternative, changed, error);
}

static FpAlternative *
copy_under_id (const FpAlternative *from, const char *id, const char *name)
{
  FpAlternative *copy = fp_alternative_copy (from);

  g_free (copy->id);
  copy->id = g_strdup (id);
  fp_alternative_set_text (copy, name, from->note);
  return copy;
}

FpProject *
fp_project_with_new_alternative (const FpProject *self, int copy_of,
                                 const char *id, const char *name, GError **error)
{
  FpProject *next;
  FpAlternative *added;

  if (copy_of >= 0 && !has_alternative (self, (guint) copy_of, error))
    return NULL;
  if (!fp_id_check (id, "alternative", error))
    return NULL;
  added = copy_of >= 0 ? copy_under_id (self->alternative[copy_of], id, name != NULL ? name : id)
          : fp_alternative_new (id, name != NULL ? name : id, "");
  next = fp_project_copy (self, 1);
  next->alternative[next->n_alternatives++] = added;
  return fp_project_checked (next, error);
}

FpProject *
fp_project_with_alternative_text (const FpProject *self, guint alternative,
                                  const char *name, const char *note, GError **error)
{
  const FpAlternative *from;
  FpAlternative *changed;

  if (!has_alternative (self, alternative, error))
    return NULL;
  from = self->alternative[alternative];
  changed = fp_alternative_copy (from);
  fp_alternative_set_text (changed, name != NULL ? name : from->name, note != NULL ? note : from->note);
  return with_alternative (self, alternative, changed, error);
}

FpProject *
fp_project_with_alternative_facing (const FpProject *self, guint alternative, const FpFacing *facing, GError **error)
{
  FpAlternative *changed;

  if (!has_alternative (self, alternative, error))
    return NULL;
  changed = fp_alternative_copy (self->alternative[alternative]);
  fp_alternative_set_facing (changed, facing);
  return with_alternative (self, alternative, changed, error);
}

FpProject *
fp_project_with_setting (const FpProject *self, guint alternative, FpCelebration one, const char *id,
                         const FpSettingChange *change, GError **error)
{
  FpAlternative *changed;

  if (!has_alternative (self, alternative, error) || !fp_setting_check (one, id, change, error))
    return NULL;
  changed = fp_alternative_copy (self->alternative[alternative]);
  fp_settings_set (&changed->settings, fp_celebration_number (one), id, change);
  return with_alternative (self, alternative, changed, error);
}

FpProject *
fp_project_with_colour (const FpProject *self, guint alternative, FpCelebration one, FpColour colour, GError **error)
{
  FpAlternative *changed;

  if (!has_alternative (self, alternative, error) || !fp_colour_check (one, colour, error))
    return NULL;
  changed = fp_alternative_copy (self->alternative[alternative]);
  changed->settings.colour[fp_celebration_number (one)] = colour;
  return with_alternative (self, alternative, changed, error);
}

FpProject *
fp_project_with_kept (const FpProject *self, guint alternative, const char *id, const char *where, GError **error)
{
  FpAlternative *changed;

  if (!has_alternative (self, alternative, error) || !fp_kept_check (id, where, error))
    return NULL;
  changed = fp_alternative_copy (self->alternative[alternative]);
  fp_settings_set_kept (&changed->settings, id, where);
  return with_alternative (self, alternative, changed, error);
}

FpProject *
fp_project_without_setting (const FpProject *self, guint alternative, FpCelebration one, GError **error)
{
  FpAlternative *changed;

  if (!has_alternative (self, alternative, error) || !fp_colour_check (one, FP_COLOUR_UNSAID, error))
    return NULL;
  changed = fp_alternative_copy (self->alternative[alternative]);
  fp_settings_forget (&changed->settings, fp_celebration_number (one));
  return with_alternative (self, alternative, changed, error);
}

FpProject *
fp_project_without_alternative (const FpProject *self, guint alternative, GError **error)
{
  FpProject *next;

  if (!has_alternative (self, alternative, error))
    return NULL;
  if (self->n_alternatives == 1)
    {
      g_set_error_literal (error, FP_ERROR, FP_ERROR_INVALID, "a project has at least one alternative");
      return NULL;
    }
  next = fp_project_copy (self, 0);
  fp_alternative_unref (next->alternative[alternative]);
  for (guint i = alternative; i + 1 < next->n_alternatives; i++)
    next->alternative[i] = next->alternative[i + 1];
  next->n_alternatives--;
  return next;
}
