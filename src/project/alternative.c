/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project-private.h"

#include <string.h>

static void
clear_fate (gpointer data)
{
  FpFateEntry *entry = data;

  g_free (entry->id);
  g_free (entry->on);
}

static GArray *
fates_new (void)
{
  GArray *fates = g_array_new (FALSE, FALSE, sizeof (FpFateEntry));

  g_array_set_clear_func (fates, clear_fate);
  return fates;
}

static FpAlternative *
alternative_with (const char *id, const char *name, const char *note, FpItemList *items)
{
  FpAlternative *self = g_new (FpAlternative, 1);

  g_atomic_ref_count_init (&self->ref_count);
  self->id = g_strdup (id);
  self->name = g_strdup (name);
  self->note = g_strdup (note);
  fp_alternative_set_facing (self, NULL);
  self->items = items;
  self->fates = fates_new ();
  fp_settings_init (&self->settings);
  return self;
}

FpAlternative *
fp_alternative_new (const char *id, const char *name, const char *note)
{
  return alternative_with (id, name, note != NULL ? note : "", fp_item_list_new ());
}

FpAlternative *
fp_alternative_copy (const FpAlternative *self)
{
  FpAlternative *copy = alternative_with (self->id, self->name, self->note, fp_item_list_ref (self->items));

  fp_alternative_set_facing (copy, self->has_facing ? &self->facing : NULL);
  fp_settings_clear (&copy->settings);
  fp_settings_copy (&copy->settings, &self->settings);
  for (guint i = 0; i < self->fates->len; i++)
    {
      FpFateEntry entry = g_array_index (self->fates, FpFateEntry, i);
      entry.id = g_strdup (entry.id);
      entry.on = g_strdup (entry.on);
      g_array_append_val (copy->fates, entry);
    }
  return copy;
}

FpAlternative *
fp_alternative_ref (const FpAlternative *self)
{
  FpAlternative *alternative = (FpAlternative *) self;

  g_atomic_ref_count_inc (&alternative->ref_count);
  return alternative;
}

void
fp_alternative_unref (FpAlternative *self)
{
  if (self == NULL || !g_atomic_ref_count_dec (&self->ref_count))
    return;
  g_free (self->id);
  g_free (self->name);
  g_free (self->note);
  fp_item_list_unref (self->items);
  g_array_unref (self->fates);
  fp_settings_clear (&self->settings);
  g_free (self);
}

void
fp_alternative_set_text (FpAlternative *self, const char *name, const char *note)
{
  g_free (self->name);
  g_free (self->note);
  self->name = g_strdup (name);
  self->note = g_strdup (note);
}

void
fp_alternative_set_facing (FpAlternative *self, const FpFacing *facing)
{
  self->has_facing = facing != NULL;
  self->facing = facing != NULL ? *facing : FP_FACING_EAST;
}

void
fp_alternative_set_items (FpAlternative *self, FpItemList *items)
{
  fp_item_list_unref (self->items);
  self->items = items;
}

static int
find_fate (const FpAlternative *self, const char *id)
{
  for (guint i = 0; i < self->fates->len; i++)
    if (strcmp (g_array_index (self->fates, FpFateEntry, i).id, id) == 0)
      return (int) i;
  return -1;
}

const FpFateEntry *
fp_alternative_fate_entry (const FpAlternative *self, const char *id)
{
  const int i = find_fate (self, id);

  return i >= 0 ? &g_array_index (self->fates, FpFateEntry, (guint) i) : NULL;
}

void
fp_alternative_set_fate (FpAlternative *self, const char *id, FpFate fate, const FpPlace *moved, const char *on)
{
  FpFateEntry entry = { NULL, fate, { 0, 0, 0 }, NULL };
  const int i = find_fate (self, id);

  if (fate != FP_FATE_KEPT)
    entry.id = g_strdup (id); /* before the old entry goes: @id may be its own */
  if (fate == FP_FATE_MOVED)
    {
      entry.moved = (FpPlace) { moved->x + 0.0, moved->y + 0.0, fp_turn_normal (moved->turn) };
      entry.on = g_strdup (on);
    }
  if (i >= 0)
    g_array_remove_index (self->fates, (guint) i);
  if (entry.id != NULL && i >= 0)
    g_array_insert_val (self->fates, (guint) i, entry);
  else if (entry.id != NULL)
    g_array_append_val (self->fates, entry);
}

static gboolean
same_fate (const FpFateEntry *a, const FpFateEntry *b)
{
  return strcmp (a->id, b->id) == 0 && a->fate == b->fate && a->moved.x == b->moved.x && a->moved.y == b->moved.y
         && a->moved.turn == b->moved.turn && g_strcmp0 (a->on, b->on) == 0;
}

gboolean
fp_alternative_equal (const FpAlternative *a, const FpAlternative *b)
{
  if (a == b)
    return TRUE;
  if (strcmp (a->id, b->id) != 0 || strcmp (a->name, b->name) != 0 || strcmp (a->note, b->note) != 0
      || a->has_facing != b->has_facing || a->facing != b->facing
      || a->fates->len != b->fates->len || !fp_item_list_equal (a->items, b->items)
      || !fp_settings_equal (&a->settings, &b->settings))
    return FALSE;
  /* In whatever order they were decided: a file has them in the survey's. */
  for (guint i = 0; i < a->fates->len; i++)
    {
      const FpFateEntry *mine = &g_array_index (a->fates, FpFateEntry, i);
      const FpFateEntry *other = fp_alternative_fate_entry (b, mine->id);
      if (other == NULL || !same_fate (mine, other))
        return FALSE;
    }
  return TRUE;
}

const char *
fp_alternative_support (const FpAlternative *self, const FpItem *survey_item)
{
  const FpFateEntry *entry = fp_alternative_fate_entry (self, fp_item_id (survey_item));

  return entry != NULL && entry->fate == FP_FATE_MOVED ? entry->on : fp_item_on (survey_item);
}

static gboolean
is_removed (const FpAlternative *self, const FpItem *survey_item)
{
  const FpFateEntry *entry = fp_alternative_fate_entry (self, fp_item_id (survey_item));

  return entry != NULL && entry->fate == FP_FATE_REMOVED;
}

/* One round: TRUE when something fell.  @there: ids of what stands. */
static gboolean
fall_once (FpAlternative *self, const FpItemList *survey, GHashTable *there)
{
  g_autoptr (GHashTable) gone = g_hash_table_new (g_str_hash, g_str_equal);
  gboolean fell = FALSE;

  for (guint i = 0; i < survey->n; i++)
    {
      const char *id = fp_item_id (survey->item[i]), *on = fp_alternative_support (self, survey->item[i]);
      if (on == NULL || g_hash_table_contains (there, on) || is_removed (self, survey->item[i]))
        continue;
      g_hash_table_remove (there, id);
      fp_alternative_set_fate (self, id, FP_FATE_REMOVED, NULL, NULL);
      fell = TRUE;
    }
  for (guint i = 0; i < self->items->n; i++)
    {
      const char *id = fp_item_id (self->items->item[i]), *on = fp_item_on (self->items->item[i]);
      if (on == NULL || g_hash_table_contains (there, on))
        continue;
      g_hash_table_remove (there, id);
      g_hash_table_add (gone, (gpointer) id);
      fell = TRUE;
    }
  if (g_hash_table_size (gone) > 0)
    fp_alternative_set_items (self, fp_item_list_without (self->items, gone));
  return fell;
}

/* Forgets fates of what the survey does not hold any more. */
static void
drop_strange_fates (FpAlternative *self, const FpItemList *survey)
{
  for (guint i = self->fates->len; i-- > 0;)
    if (fp_item_list_find (survey, g_array_index (self->fates, FpFateEntry, i).id) < 0)
      g_array_remove_index (self->fates, i);
}

void
fp_alternative_let_fall (FpAlternative *self, const FpItemList *survey)
{
  /* Owns its keys: things that fall are freed while it is read. */
  g_autoptr (GHashTable) there = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  drop_strange_fates (self, survey);
  for (guint i = 0; i < survey->n; i++)
    g_hash_table_add (there, g_strdup (fp_item_id (survey->item[i])));
  for (guint i = 0; i < self->items->n; i++)
    g_hash_table_add (there, g_strdup (fp_item_id (self->items->item[i])));
  while (fall_once (self, survey, there))
    ;
  fp_settings_keep_only (&self->settings, survey, self->items);
}

const char *
fp_alternative_id (const FpAlternative *self)
{
  return self->id;
}

const char *
fp_alternative_name (const FpAlternative *self)
{
  return self->name;
}

const char *
fp_alternative_note (const FpAlternative *self)
{
  return self->note;
}

gboolean
fp_alternative_own_facing (const FpAlternative *self, FpFacing *facing)
{
  if (self->has_facing && facing != NULL)
    *facing = self->facing;
  return self->has_facing;
}

guint
fp_alternative_n_items (const FpAlternative *self)
{
  return self->items->n;
}

const FpItem *
fp_alternative_item (const FpAlternative *self, guint i)
{
  g_return_val_if_fail (i < self->items->n, NULL);
  return self->items->item[i];
}

FpFate
fp_alternative_fate (const FpAlternative *self, const char *id, FpPlace *moved, const char **on)
{
  const FpFateEntry *entry = fp_alternative_fate_entry (self, id);

  if (entry == NULL)
    return FP_FATE_KEPT;
  if (entry->fate == FP_FATE_MOVED && moved != NULL)
    *moved = entry->moved;
  if (entry->fate == FP_FATE_MOVED && on != NULL)
    *on = entry->on;
  return entry->fate;
}

FpSettingChange
fp_alternative_setting (const FpAlternative *self, FpCelebration one, const char *id)
{
  return fp_settings_get (&self->settings, fp_celebration_number (one), id);
}

FpColour
fp_alternative_colour (const FpAlternative *self, FpCelebration one)
{
  return self->settings.colour[fp_celebration_number (one)];
}

const char *
fp_alternative_kept (const FpAlternative *self, const char *id)
{
  return fp_settings_kept (&self->settings, id);
}
