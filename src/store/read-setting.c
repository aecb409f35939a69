/* SPDX-License-Identifier: GPL-3.0-or-later */
/* read-setting.c - <setting> and <kept>: what an alternative says of a celebration, and where things are kept */
#include "read-parts.h"
#include "store-words.h"

#include <math.h>
#include <string.h>

void
fp_read_settings_init (FpReadSettings *self)
{
  memset (self, 0, sizeof *self);
  self->changes = g_array_new (FALSE, FALSE, sizeof (FpReadSetting));
  self->kept = g_array_new (FALSE, FALSE, sizeof (FpReadKept));
  self->kept_lines = g_hash_table_new (g_str_hash, g_str_equal);
}

void
fp_read_settings_clear (FpReadSettings *self)
{
  g_array_unref (self->changes);
  g_array_unref (self->kept);
  g_hash_table_unref (self->kept_lines);
}

/* The id of a thing that is there. */
static const char *
read_thing_id (FpReader *r, const xmlNode *node, const char *attribute, const FpReadThings *things)
{
  const char *id = fp_read_needed_attribute (r, node, attribute);

  if (id == NULL || g_hash_table_contains (things->own, id) || g_hash_table_contains (things->survey, id))
    return id;
  fp_read_refuse (r, node, FP_ERROR_REFERENCE, "neither the survey nor the alternative has a thing “%.80s” of which a "
                  "setting could speak", id);
  return NULL;
}

static gboolean
is_empty (FpReader *r, const xmlNode *node)
{
  if (!fp_read_has_only_elements (r, node))
    return FALSE;
  return fp_read_first (node) == NULL
         || fp_read_refuse (r, fp_read_first (node), FP_ERROR_INVALID, "<%.80s> was found in <%s>, where nothing is "
                            "expected", fp_read_name (fp_read_first (node)), fp_read_name (node));
}

/* --- where things are kept -------------------------------------------------- */

gboolean
fp_read_kept (FpReader *r, const xmlNode *node, const FpReadThings *things, FpReadSettings *settings)
{
  static const char *const known[] = { "thing", NULL };
  FpReadKept kept;
  int before;

  if (!fp_read_knows_attributes (r, node, known) || (kept.id = read_thing_id (r, node, "thing", things)) == NULL
      || (kept.where = fp_read_text (r, node)) == NULL)
    return FALSE;
  before = GPOINTER_TO_INT (g_hash_table_lookup (settings->kept_lines, kept.id));
  if (before != 0)
    return fp_read_refuse (r, node, FP_ERROR_REFERENCE, "where “%.80s” is kept was said before, on line %d", kept.id,
                           before);
  g_hash_table_insert (settings->kept_lines, (gpointer) kept.id, GINT_TO_POINTER (fp_read_line (node)));
  g_array_append_val (settings->kept, kept);
  return TRUE;
}

/* --- a setting --------------------------------------------------------------- */

static gboolean
read_said (FpReader *r, const xmlNode *node, const char *name, FpSaid *said)
{
  const char *word = fp_read_attribute (r, node, name);

  *said = word == NULL ? FP_UNSAID : strcmp (word, fp_yes_words[1]) == 0 ? FP_SAID_YES : FP_SAID_NO;
  return *said != FP_SAID_NO || strcmp (word, fp_yes_words[0]) == 0
         || fp_read_refuse (r, node, FP_ERROR_INVALID, "%s is “%.40s”; no or yes is expected", name, word);
}

static gboolean
read_lit (FpReader *r, const xmlNode *node, int *lit)
{
  double value = FP_LIT_UNSAID;

  if (!fp_read_number (r, node, "lit", &value))
    return FALSE;
  if (fp_read_attribute (r, node, "lit") != NULL && !(value >= 0 && value <= FP_COUNT_MAX && floor (value) == value))
    return fp_read_refuse (r, node, FP_ERROR_RANGE, "lit is %g; a whole number from 0 to %d is expected", value,
                           FP_COUNT_MAX);
  *lit = (int) value;
  return TRUE;
}

static gboolean
read_thing (FpReader *r, const xmlNode *node, FpCelebration one, const FpReadThings *things, GHashTable *lines,
            FpReadSettings *settings)
{
  static const char *const known[] = { "id", "stands", "veiled", "lit", NULL };
  FpReadSetting said = { one, NULL, FP_SETTING_UNSAID };
  int before;

  if (!fp_read_is (node, "thing"))
    return fp_read_refuse (r, node, FP_ERROR_INVALID, "<%.80s> was found in <setting>; <thing> is expected",
                           fp_read_name (node));
  if (!fp_read_knows_attributes (r, node, known) || (said.id = read_thing_id (r, node, "id", things)) == NULL
      || !read_said (r, node, "stands", &said.change.stands) || !read_said (r, node, "veiled", &said.change.veiled)
      || !read_lit (r, node, &said.change.lit) || !is_empty (r, node))
    return FALSE;
  before = GPOINTER_TO_INT (g_hash_table_lookup (lines, said.id));
  if (before != 0)
    return fp_read_refuse (r, node, FP_ERROR_REFERENCE, "“%.80s” was spoken of before in this setting, on line %d",
                           said.id, before);
  g_hash_table_insert (lines, (gpointer) said.id, GINT_TO_POINTER (fp_read_line (node)));
  g_array_append_val (settings->changes, said);
  return TRUE;
}

static gboolean
read_celebration (FpReader *r, const xmlNode *node, FpReadSettings *settings, FpCelebration *one)
{
  const char *word = fp_read_needed_attribute (r, node, "for");
  guint number;

  if (word == NULL)
    return FALSE;
  if (!fp_celebration_find (word, one))
    return fp_read_refuse (r, node, FP_ERROR_INVALID, "“%.40s” is no celebration", word);
  number = fp_celebration_number (*one);
  if (settings->line[number] != 0)
    return fp_read_refuse (r, node, FP_ERROR_REFERENCE, "the setting for “%s” was given before, on line %d", word,
                           settings->line[number]);
  settings->line[number] = fp_read_line (node);
  return TRUE;
}

static gboolean
read_colour (FpReader *r, const xmlNode *node, FpColour *colour)
{
  const char *word = fp_read_attribute (r, node, "colour");

  return word == NULL || fp_colour_find (word, colour)
         || fp_read_refuse (r, node, FP_ERROR_INVALID,
                            "colour is “%.40s”; white, red, green, violet, rose or black is expected", word);
}

gboolean
fp_read_setting (FpReader *r, const xmlNode *node, const FpReadThings *things, FpReadSettings *settings)
{
  static const char *const known[] = { "for", "colour", NULL };
  g_autoptr (GHashTable) lines = g_hash_table_new (g_str_hash, g_str_equal);
  FpCelebration one;

  if (!fp_read_knows_attributes (r, node, known) || !fp_read_has_only_elements (r, node)
      || !read_celebration (r, node, settings, &one)
      || !read_colour (r, node, &settings->colour[fp_celebration_number (one)]))
    return FALSE;
  for (const xmlNode *child = fp_read_first (node); child != NULL; child = fp_read_next (child))
    if (!read_thing (r, child, one, things, lines, settings))
      return FALSE;
  return TRUE;
}

gboolean
fp_read_settings_build (const FpReadSettings *self, FpProjectBuilder *builder, GError **error)
{
  for (guint i = 0; i < self->kept->len; i++)
    {
      const FpReadKept *kept = &g_array_index (self->kept, FpReadKept, i);

      if (!fp_project_builder_kept (builder, kept->id, kept->where, error))
        return FALSE;
    }
  for (guint i = 0; i < FP_N_CELEBRATIONS; i++)
    if (!fp_project_builder_colour (builder, (FpCelebration) (1u << i), self->colour[i], error))
      return FALSE;
  for (guint i = 0; i < self->changes->len; i++)
    {
      const FpReadSetting *said = &g_array_index (self->changes, FpReadSetting, i);

      if (!fp_project_builder_setting (builder, said->one, said->id, &said->change, error))
        return FALSE;
    }
  return TRUE;
}
