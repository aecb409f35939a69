/* SPDX-License-Identifier: GPL-3.0-or-later */
/* builder.c - a project made whole from parts */
#include "project-private.h"

struct _FpProjectBuilder
{
  FpBriefPart *brief;
  gboolean     has_page;
  FpPageSetup  page;
  FpWorksPart *works;
  FpNormsPart *norms;
  FpReckoning reckoning;
  GPtrArray   *survey;       /* of FpItem        */
  GPtrArray   *alternatives; /* of FpAlternative */
  GPtrArray   *items;        /* of the last alternative: FpItem */
};

static void
release_item (gpointer item)
{
  fp_item_unref (item);
}

static void
release_alternative (gpointer alternative)
{
  fp_alternative_unref (alternative);
}

FpProjectBuilder *
fp_project_builder_new (void)
{
  FpProjectBuilder *self = g_new0 (FpProjectBuilder, 1);

  self->reckoning = fp_reckoning_usual;
  self->survey = g_ptr_array_new_with_free_func (release_item);
  self->alternatives = g_ptr_array_new_with_free_func (release_alternative);
  self->items = g_ptr_array_new_with_free_func (release_item);
  return self;
}

void
fp_project_builder_free (FpProjectBuilder *self)
{
  if (self == NULL)
    return;
  fp_brief_part_unref (self->brief);
  fp_works_part_unref (self->works);
  fp_norms_part_unref (self->norms);
  g_ptr_array_unref (self->survey);
  g_ptr_array_unref (self->alternatives);
  g_ptr_array_unref (self->items);
  g_free (self);
}

void
fp_project_builder_brief (FpProjectBuilder *self, const FpBrief *brief)
{
  fp_brief_part_unref (self->brief);
  self->brief = fp_brief_part_new (brief);
}

static gboolean
add_item (GPtrArray *list, FpItem *item, GError **error)
{
  if (list->len >= FP_ITEMS_MAX)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_LIMIT, "%s: more than %d things in one list", fp_item_id (item),
                   FP_ITEMS_MAX);
      return FALSE;
    }
  g_ptr_array_add (list, fp_item_ref (item));
  return TRUE;
}

gboolean
fp_project_builder_survey (FpProjectBuilder *self, FpItem *item, GError **error)
{
  return add_item (self->survey, item, error);
}

static FpItemList *
to_list (GPtrArray *items)
{
  FpItemList *list = fp_item_list_new ();

  g_free (list->item);
  list->n = items->len;
  list->item = g_new (const FpItem *, MAX (items->len, 1));
  for (guint i = 0; i < items->len; i++)
    list->item[i] = fp_item_ref (items->pdata[i]);
  return list;
}

static FpAlternative *
last_alternative (FpProjectBuilder *self)
{
  return self->alternatives->len > 0 ? self->alternatives->pdata[self->alternatives->len - 1] : NULL;
}

static void
finish_alternative (FpProjectBuilder *self)
{
  if (self->items->len > 0)
    fp_alternative_set_items (last_alternative (self), to_list (self->items));
  g_ptr_array_set_size (self->items, 0);
}

gboolean
fp_project_builder_alternative (FpProjectBuilder *self, const char *id, const char *name,
                                const char *note, GError **error)
{
  if (!fp_id_check (id, "alternative", error))
    return FALSE;
  if (self->alternatives->len >= FP_ALTERNATIVES_MAX)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_LIMIT, "%s: more than %d alternatives", id, FP_ALTERNATIVES_MAX);
      return FALSE;
    }
  finish_alternative (self);
  g_ptr_array_add (self->alternatives, fp_alternative_new (id, name != NULL ? name : id, note));
  return TRUE;
}

static gboolean
has_alternative (FpProjectBuilder *self, const char *id, GError **error)
{
  if (self->alternatives->len > 0)
    return TRUE;
  g_set_error (error, FP_ERROR, FP_ERROR_INVALID, "%s: there is no alternative to which it could belong", id);
  return FALSE;
}

gboolean
fp_project_builder_facing (FpProjectBuilder *self, FpFacing facing, GError **error)
{
  if (!has_alternative (self, "facing", error))
    return FALSE;
  fp_alternative_set_facing (last_alternative (self), &facing);
  return TRUE;
}

gboolean
fp_project_builder_item (FpProjectBuilder *self, FpItem *item, GError **error)
{
  return has_alternative (self, fp_item_id (item), error) && add_item (self->items, item, error);
}

gboolean
fp_project_builder_fate (FpProjectBuilder *self, const char *id, FpFate fate,
                         const FpPlace *moved, const char *on, GError **error)
{
  if (!fp_id_check (id, "moved or removed", error) || !has_alternative (self, id, error)
      || (on != NULL && !fp_id_check (on, id, error)))
    return FALSE;
  if (fp_alternative_fate_entry (last_alternative (self), id) != NULL)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "%s: it is moved or removed twice", id);
      return FALSE;
    }
  if (fate == FP_FATE_MOVED && moved == NULL)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_INVALID, "%s: it is moved, but not said where", id);
      return FALSE;
    }
  if (fate == FP_FATE_MOVED && !fp_place_check (moved, id, error))
    return FALSE;
  fp_alternative_set_fate (last_alternative (self), id, fate, moved, on);
  return TRUE;
}

gboolean
fp_project_builder_setting (FpProjectBuilder *self, FpCelebration one, const char *id, const FpSettingChange *change,
                            GError **error)
{
  FpSettingChange said;

  if (!fp_id_check (id, "setting", error) || !has_alternative (self, id, error) || !fp_setting_check (one, id, change, error))
    return FALSE;
  said = fp_alternative_setting (last_alternative (self), one, id);
  if (!fp_setting_change_is_empty (&said))
    {
      g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "%s: it is said twice how it stands at %s", id,
                   fp_celebration_label (one));
      return FALSE;
    }
  fp_settings_set (&last_alternative (self)->settings, fp_celebration_number (one), id, change);
  return TRUE;
}

gboolean
fp_project_builder_colour (FpProjectBuilder *self, FpCelebration one, FpColour colour, GError **error)
{
  if (!has_alternative (self, "colour", error) || !fp_colour_check (one, colour, error))
    return FALSE;
  last_alternative (self)->settings.colour[fp_celebration_number (one)] = colour;
  return TRUE;
}

gboolean
fp_project_builder_kept (FpProjectBuilder *self, const char *id, const char *where, GError **error)
{
  if (!fp_id_check (id, "kept", error) || !has_alternative (self, id, error) || !fp_kept_check (id, where, error))
    return FALSE;
  if (fp_alternative_kept (last_alternative (self), id)[0] != '\0')
    {
      g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "%s: it is said twice where it is kept", id);
      return FALSE;
    }
  fp_settings_set_kept (&last_alternative (self)->settings, id, where);
  return TRUE;
}

void
fp_project_builder_page (FpProjectBuilder *self, const FpPageSetup *page)
{
  self->has_page = TRUE;
  self->page = *page;
}

gboolean
fp_project_builder_works (FpProjectBuilder *self, const FpWorks *works, GError **error)
{
  if (!fp_works_check (works, error))
    return FALSE;
  fp_works_part_unref (self->works);
  self->works = fp_works_part_new (works);
  return TRUE;
}

gboolean
fp_project_builder_norms (FpProjectBuilder *self, const FpNorms *norms, GError **error)
{
  if (!fp_norms_check (norms, error))
    return FALSE;
  fp_norms_part_unref (self->norms);
  self->norms = fp_norms_part_new (norms);
  return TRUE;
}

gboolean
fp_project_builder_reckoning (FpProjectBuilder *self, const FpReckoning *reckoning, GError **error)
{
  if (!fp_reckoning_check (reckoning, error))
    return FALSE;
  self->reckoning = *reckoning;
  return TRUE;
}

FpProject *
fp_project_builder_end (FpProjectBuilder *self, GError **error)
{
  FpProject *project;

  if (self->brief == NULL)
    {
      g_set_error_literal (error, FP_ERROR, FP_ERROR_INVALID, "the brief is missing");
      return NULL;
    }
  if (!fp_brief_check (&self->brief->brief, error))
    return NULL;
  finish_alternative (self);
  project = g_new (FpProject, 1);
  g_atomic_ref_count_init (&project->ref_count);
  project->brief = fp_brief_part_ref (self->brief);
  project->survey = to_list (self->survey);
  project->has_page = self->has_page;
  project->page = self->page;
  project->works = fp_works_part_ref (self->works);
  project->norms = fp_norms_part_ref (self->norms);
  project->reckoning = self->reckoning;
  project->n_alternatives = self->alternatives->len;
  project->alternative = g_new (FpAlternative *, MAX (self->alternatives->len, 1));
  for (guint i = 0; i < self->alternatives->len; i++)
    project->alternative[i] = fp_alternative_ref (self->alternatives->pdata[i]);
  return fp_project_checked (project, error);
}
