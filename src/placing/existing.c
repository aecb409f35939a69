/* SPDX-License-Identifier: GPL-3.0-or-later */
/* existing.c - what was set out in an alternative stands there already: it goes into the survey */
#include "footpace/arrange.h"

typedef struct
{
  const FpProject *project;
  guint            here;     /* the alternative                              */
  const FpPlaced  *placed;
  guint            n_placed;
  GHashTable      *goes;     /* id in the survey, by the id that it has here */
} Handing;

static void
handing_clear (Handing *h)
{
  g_clear_pointer (&h->goes, g_hash_table_unref);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Handing, handing_clear)

/* --- what goes ------------------------------------------------------------ */

/* The survey shares its ids with every alternative. */
static char *
id_in_survey (const Handing *h, const char *id)
{
  for (guint i = 0; i < fp_project_n_alternatives (h->project); i++)
    if (i != h->here && fp_project_find (h->project, i, id, NULL) != NULL)
      return fp_project_free_id (h->project, id);
  return g_strdup (id);
}

/* With what carries it: the survey stands on nothing that is only proposed. */
static void
let_go (Handing *h, int thing)
{
  for (int i = thing; i >= 0; i = h->placed[i].support)
    {
      const char *id = fp_item_id (h->placed[i].item);

      if (!h->placed[i].in_survey && !g_hash_table_contains (h->goes, id))
        g_hash_table_insert (h->goes, (gpointer) id, id_in_survey (h, id));
    }
}

static gboolean
goes (const Handing *h, const FpItem *item)
{
  return g_hash_table_contains (h->goes, fp_item_id (item));
}

static gboolean
choose_what_goes (Handing *h, const FpScene *scene, const char *const *ids, GError **error)
{
  for (; *ids != NULL; ids++)
    {
      const int thing = fp_scene_find (scene, *ids);

      if (thing < 0)
        {
          g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "“%s” does not stand in this alternative", *ids);
          return FALSE;
        }
      let_go (h, thing);
    }
  if (g_hash_table_size (h->goes) > 0)
    return TRUE;
  g_set_error_literal (error, FP_ERROR, FP_ERROR_INVALID, "Choose something that is not in the survey yet.");
  return FALSE;
}

/* --- made anew ------------------------------------------------------------ */

static const char *
renamed (const Handing *h, const char *id)
{
  const char *new_id = id != NULL ? g_hash_table_lookup (h->goes, id) : NULL;

  return new_id != NULL ? new_id : id;
}

/* A footpace that leaves behind what it lies round stays where that has put it. */
static FpPlace
place_of (const Handing *h, const FpItem *item)
{
  const FpPlaced *placed = NULL;

  for (guint i = 0; i < h->n_placed; i++)
    if (h->placed[i].item == item)
      placed = &h->placed[i];
  if (placed == NULL || !goes (h, item) || (fp_item_kind (item)->flags & FP_KIND_LAID_ROUND) == 0)
    return fp_item_place (item);
  for (guint i = 0; i < h->n_placed; i++)
    if (h->placed[i].support >= 0 && &h->placed[h->placed[i].support] == placed && goes (h, h->placed[i].item))
      return fp_item_place (item);
  return placed->place;
}

static FpItem *
as_renamed (const Handing *h, const FpItem *item, GError **error)
{
  FpItemInit init;

  fp_item_init_from (item, &init);
  init.id = renamed (h, init.id);
  init.on = renamed (h, init.on);
  init.place = place_of (h, item);
  return fp_item_new (&init, error);
}

static gboolean
hand_survey (const Handing *h, FpProjectBuilder *builder, GError **error)
{
  const FpAlternative *here = fp_project_alternative (h->project, h->here);

  for (guint i = 0; i < fp_project_n_survey (h->project); i++)
    if (!fp_project_builder_survey (builder, (FpItem *) fp_project_survey (h->project, i), error))
      return FALSE;
  for (guint i = 0; i < fp_alternative_n_items (here); i++)
    if (goes (h, fp_alternative_item (here, i)))
      {
        g_autoptr (FpItem) item = as_renamed (h, fp_alternative_item (here, i), error);

        if (item == NULL || !fp_project_builder_survey (builder, item, error))
          return FALSE;
      }
  return TRUE;
}

static gboolean
hand_items (const Handing *h, FpProjectBuilder *builder, guint at, GError **error)
{
  const FpAlternative *alternative = fp_project_alternative (h->project, at);

  for (guint i = 0; i < fp_alternative_n_items (alternative); i++)
    {
      const FpItem *was = fp_alternative_item (alternative, i);
      g_autoptr (FpItem) item = NULL;

      if (at == h->here && goes (h, was))
        continue;
      item = at == h->here ? as_renamed (h, was, error) : fp_item_ref (was);
      if (item == NULL || !fp_project_builder_item (builder, item, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
hand_fates (const Handing *h, FpProjectBuilder *builder, guint at, GError **error)
{
  const FpAlternative *alternative = fp_project_alternative (h->project, at);

  for (guint i = 0; i < fp_project_n_survey (h->project); i++)
    {
      const char *id = fp_item_id (fp_project_survey (h->project, i)), *on = NULL;
      FpPlace moved = { 0, 0, 0 };
      const FpFate fate = fp_alternative_fate (alternative, id, &moved, &on);

      if (fate != FP_FATE_KEPT
          && !fp_project_builder_fate (builder, id, fate, &moved, at == h->here ? renamed (h, on) : on, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
hand_said (const FpAlternative *alternative, FpProjectBuilder *builder, const char *id, const char *now, GError **error)
{
  for (guint i = 0; i < FP_N_CELEBRATIONS; i++)
    {
      const FpSettingChange said = fp_alternative_setting (alternative, (FpCelebration) (1u << i), id);

      if (!fp_setting_change_is_empty (&said)
          && !fp_project_builder_setting (builder, (FpCelebration) (1u << i), now, &said, error))
        return FALSE;
    }
  return fp_project_builder_kept (builder, now, fp_alternative_kept (alternative, id), error);
}

/* What is said of a thing goes where it goes. */
static gboolean
hand_settings (const Handing *h, FpProjectBuilder *builder, guint at, GError **error)
{
  const FpAlternative *alternative = fp_project_alternative (h->project, at);

  for (guint i = 0; i < FP_N_CELEBRATIONS; i++)
    if (!fp_project_builder_colour (builder, (FpCelebration) (1u << i),
                                    fp_alternative_colour (alternative, (FpCelebration) (1u << i)), error))
      return FALSE;
  for (guint i = 0; i < fp_project_n_survey (h->project); i++)
    {
      const char *id = fp_item_id (fp_project_survey (h->project, i));

      if (!hand_said (alternative, builder, id, id, error))
        return FALSE;
    }
  for (guint i = 0; i < fp_alternative_n_items (alternative); i++)
    {
      const char *id = fp_item_id (fp_alternative_item (alternative, i));

      if (!hand_said (alternative, builder, id, at == h->here ? renamed (h, id) : id, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
hand_alternative (const Handing *h, FpProjectBuilder *builder, guint at, GError **error)
{
  const FpAlternative *alternative = fp_project_alternative (h->project, at);
  FpFacing facing;

  return fp_project_builder_alternative (builder, fp_alternative_id (alternative), fp_alternative_name (alternative),
                                         fp_alternative_note (alternative), error)
         && (!fp_alternative_own_facing (alternative, &facing) || fp_project_builder_facing (builder, facing, error))
         && hand_items (h, builder, at, error) && hand_fates (h, builder, at, error)
         && hand_settings (h, builder, at, error);
}

static FpProject *
hand_over (const Handing *h, GError **error)
{
  g_autoptr (FpProjectBuilder) builder = fp_project_builder_new ();

  fp_project_builder_brief (builder, fp_project_brief (h->project));
  if (fp_project_page (h->project) != NULL)
    fp_project_builder_page (builder, fp_project_page (h->project));
  if (!hand_survey (h, builder, error))
    return NULL;
  for (guint i = 0; i < fp_project_n_alternatives (h->project); i++)
    if (!hand_alternative (h, builder, i, error))
      return NULL;
  return fp_project_builder_end (builder, error);
}

static char **
ids_made (const Handing *h, const char *const *ids)
{
  g_autoptr (GPtrArray) out = g_ptr_array_new ();

  for (; *ids != NULL; ids++)
    g_ptr_array_add (out, (gpointer) renamed (h, *ids));
  g_ptr_array_add (out, NULL);
  return g_strdupv ((char **) out->pdata);
}

FpProject *
fp_arrange_existing (const FpScene *scene, const char *const *ids, char ***made, GError **error)
{
  g_auto (Handing) h = { .project = fp_scene_project (scene), .here = fp_scene_alternative (scene) };
  FpProject *next;

  h.placed = fp_scene_placed (scene, &h.n_placed);
  h.goes = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, g_free);
  next = choose_what_goes (&h, scene, ids, error) ? hand_over (&h, error) : NULL;
  if (next != NULL && made != NULL)
    *made = ids_made (&h, ids);
  return next;
}
