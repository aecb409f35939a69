/* SPDX-License-Identifier: GPL-3.0-or-later */
/* settings.c - what an alternative says of its settings, where it is otherwise than the rule has it */
#include "project-private.h"

#include <string.h>

static const char *const colours[FP_N_COLOURS] = { "", "white", "red", "green", "violet", "rose", "black" };

const char *
fp_colour_id (FpColour colour)
{
  g_return_val_if_fail ((guint) colour < FP_N_COLOURS, "");
  return colours[colour];
}

gboolean
fp_colour_find (const char *id, FpColour *colour)
{
  for (guint i = FP_COLOUR_UNSAID + 1; i < FP_N_COLOURS; i++)
    if (strcmp (colours[i], id) == 0)
      {
        *colour = (FpColour) i;
        return TRUE;
      }
  return FALSE;
}

gboolean
fp_setting_change_is_empty (const FpSettingChange *self)
{
  return self->stands == FP_UNSAID && self->veiled == FP_UNSAID && self->lit == FP_LIT_UNSAID;
}

/* --- life ------------------------------------------------------------------ */

static void
clear_entry (gpointer data)
{
  g_free (((FpSettingEntry *) data)->id);
}

static void
clear_kept (gpointer data)
{
  FpKeptEntry *kept = data;

  g_free (kept->id);
  g_free (kept->where);
}

void
fp_settings_init (FpSettings *self)
{
  memset (self->colour, 0, sizeof self->colour);
  self->entries = g_array_new (FALSE, FALSE, sizeof (FpSettingEntry));
  g_array_set_clear_func (self->entries, clear_entry);
  self->kept = g_array_new (FALSE, FALSE, sizeof (FpKeptEntry));
  g_array_set_clear_func (self->kept, clear_kept);
}

void
fp_settings_clear (FpSettings *self)
{
  g_array_unref (self->entries);
  g_array_unref (self->kept);
}

void
fp_settings_copy (FpSettings *self, const FpSettings *from)
{
  fp_settings_init (self);
  memcpy (self->colour, from->colour, sizeof self->colour);
  for (guint i = 0; i < from->entries->len; i++)
    {
      FpSettingEntry entry = g_array_index (from->entries, FpSettingEntry, i);

      entry.id = g_strdup (entry.id);
      g_array_append_val (self->entries, entry);
    }
  for (guint i = 0; i < from->kept->len; i++)
    {
      FpKeptEntry kept = g_array_index (from->kept, FpKeptEntry, i);

      kept.id = g_strdup (kept.id);
      kept.where = g_strdup (kept.where);
      g_array_append_val (self->kept, kept);
    }
}

/* --- what is said ---------------------------------------------------------- */

static int
find_entry (const FpSettings *self, guint celebration, const char *id)
{
  for (guint i = 0; i < self->entries->len; i++)
    {
      const FpSettingEntry *entry = &g_array_index (self->entries, FpSettingEntry, i);

      if (entry->celebration == celebration && strcmp (entry->id, id) == 0)
        return (int) i;
    }
  return -1;
}

FpSettingChange
fp_settings_get (const FpSettings *self, guint celebration, const char *id)
{
  const int i = find_entry (self, celebration, id);

  return i >= 0 ? g_array_index (self->entries, FpSettingEntry, i).change : FP_SETTING_UNSAID;
}

void
fp_settings_set (FpSettings *self, guint celebration, const char *id, const FpSettingChange *change)
{
  const int i = find_entry (self, celebration, id);

  if (i >= 0 && fp_setting_change_is_empty (change))
    g_array_remove_index (self->entries, (guint) i);
  else if (i >= 0)
    g_array_index (self->entries, FpSettingEntry, i).change = *change;
  else if (!fp_setting_change_is_empty (change))
    {
      const FpSettingEntry entry = { celebration, g_strdup (id), *change };

      g_array_append_val (self->entries, entry);
    }
}

static int
find_kept (const FpSettings *self, const char *id)
{
  for (guint i = 0; i < self->kept->len; i++)
    if (strcmp (g_array_index (self->kept, FpKeptEntry, i).id, id) == 0)
      return (int) i;
  return -1;
}

const char *
fp_settings_kept (const FpSettings *self, const char *id)
{
  const int i = find_kept (self, id);

  return i >= 0 ? g_array_index (self->kept, FpKeptEntry, i).where : "";
}

void
fp_settings_set_kept (FpSettings *self, const char *id, const char *where)
{
  const int i = find_kept (self, id);
  const FpKeptEntry kept = { g_strdup (id), g_strdup (where) }; /* before the old one goes: both may be its own */

  if (i >= 0)
    g_array_remove_index (self->kept, (guint) i);
  if (where[0] == '\0')
    clear_kept ((gpointer) &kept);
  else if (i >= 0)
    g_array_insert_val (self->kept, (guint) i, kept);
  else
    g_array_append_val (self->kept, kept);
}

void
fp_settings_forget (FpSettings *self, guint celebration)
{
  self->colour[celebration] = FP_COLOUR_UNSAID;
  for (guint i = self->entries->len; i-- > 0;)
    if (g_array_index (self->entries, FpSettingEntry, i).celebration == celebration)
      g_array_remove_index (self->entries, i);
}

static gboolean
is_there (const char *id, const FpItemList *survey, const FpItemList *items)
{
  return fp_item_list_find (survey, id) >= 0 || fp_item_list_find (items, id) >= 0;
}

void
fp_settings_keep_only (FpSettings *self, const FpItemList *survey, const FpItemList *items)
{
  for (guint i = self->entries->len; i-- > 0;)
    if (!is_there (g_array_index (self->entries, FpSettingEntry, i).id, survey, items))
      g_array_remove_index (self->entries, i);
  for (guint i = self->kept->len; i-- > 0;)
    if (!is_there (g_array_index (self->kept, FpKeptEntry, i).id, survey, items))
      g_array_remove_index (self->kept, i);
}

gboolean
fp_settings_equal (const FpSettings *a, const FpSettings *b)
{
  if (memcmp (a->colour, b->colour, sizeof a->colour) != 0 || a->entries->len != b->entries->len
      || a->kept->len != b->kept->len)
    return FALSE;
  for (guint i = 0; i < a->entries->len; i++)
    {
      const FpSettingEntry *mine = &g_array_index (a->entries, FpSettingEntry, i);
      const FpSettingChange other = fp_settings_get (b, mine->celebration, mine->id);

      if (mine->change.stands != other.stands || mine->change.veiled != other.veiled || mine->change.lit != other.lit)
        return FALSE;
    }
  for (guint i = 0; i < a->kept->len; i++)
    {
      const FpKeptEntry *mine = &g_array_index (a->kept, FpKeptEntry, i);

      if (strcmp (mine->where, fp_settings_kept (b, mine->id)) != 0)
        return FALSE;
    }
  return TRUE;
}

/* --- what may be said ------------------------------------------------------ */

static gboolean
is_celebration (FpCelebration one, const char *whose, GError **error)
{
  for (guint i = 0; i < FP_N_CELEBRATIONS; i++)
    if ((guint) one == 1u << i)
      return TRUE;
  g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "%s: %u is no celebration", whose, (guint) one);
  return FALSE;
}

gboolean
fp_setting_check (FpCelebration one, const char *id, const FpSettingChange *change, GError **error)
{
  if (!fp_id_check (id, "setting", error) || !is_celebration (one, id, error))
    return FALSE;
  if ((guint) change->stands > FP_SAID_YES || (guint) change->veiled > FP_SAID_YES)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "%s: it is said neither yes nor no", id);
      return FALSE;
    }
  if (change->lit >= FP_LIT_UNSAID && change->lit <= FP_COUNT_MAX)
    return TRUE;
  g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "%s: %d of its lights burn, allowed 0 to %d", id, change->lit,
               FP_COUNT_MAX);
  return FALSE;
}

gboolean
fp_colour_check (FpCelebration one, FpColour colour, GError **error)
{
  if (!is_celebration (one, "colour", error))
    return FALSE;
  if ((guint) colour < FP_N_COLOURS)
    return TRUE;
  g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "colour: %u is no liturgical colour", (guint) colour);
  return FALSE;
}

gboolean
fp_kept_check (const char *id, const char *where, GError **error)
{
  return fp_id_check (id, "kept", error) && fp_text_check (where, id, FALSE, error);
}

static gboolean
refuse_stranger (const char *id, GError **error)
{
  g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "%s: there is no such thing of which a setting could speak", id);
  return FALSE;
}

gboolean
fp_settings_check (const FpSettings *self, const FpItemList *survey, const FpItemList *items, GError **error)
{
  for (guint i = 0; i < self->entries->len; i++)
    if (!is_there (g_array_index (self->entries, FpSettingEntry, i).id, survey, items))
      return refuse_stranger (g_array_index (self->entries, FpSettingEntry, i).id, error);
  for (guint i = 0; i < self->kept->len; i++)
    if (!is_there (g_array_index (self->kept, FpKeptEntry, i).id, survey, items))
      return refuse_stranger (g_array_index (self->kept, FpKeptEntry, i).id, error);
  return TRUE;
}
