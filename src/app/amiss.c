/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "amiss.h"

#include <string.h>

static const char *
name_of (const FpScene *scene, const char *id)
{
  const int i = fp_scene_find (scene, id);

  return i >= 0 ? fp_item_name (fp_scene_placed (scene, NULL)[i].item) : NULL;
}

static gboolean
is_a_name (const FpScene *scene, const char *text)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    if (strcmp (fp_item_name (placed[i].item), text) == 0)
      return TRUE;
  return FALSE;
}

/* "wall-2 has no corners here" */
static char *
of_sentence (const FpScene *scene, const char *message)
{
  const char *end = strchr (message, ' ');
  g_autofree char *id = end != NULL ? g_strndup (message, (gsize) (end - message)) : NULL;
  const char *name = id != NULL ? name_of (scene, id) : NULL;

  if (name == NULL || !(g_str_has_prefix (end, " has ") || g_str_has_prefix (end, " does ")))
    return g_strdup (message);
  return g_strconcat (name, end, NULL);
}

static gboolean
put_length (const GMatchInfo *match, GString *out, gpointer units)
{
  g_autofree char *number = g_match_info_fetch (match, 1);
  g_autofree char *length = fp_length_format_unit (g_ascii_strtod (number, NULL), *(const FpUnits *) units);

  g_string_append (out, length);
  return FALSE;
}

/* A name may hold such words as well, and keeps them: "Ambo 500 mm: …". */
static char *
in_units (const FpScene *scene, const char *message)
{
  FpUnits units = fp_project_brief (fp_scene_project (scene))->units;
  g_autoptr (GRegex) length = NULL;

  if (units == FP_UNITS_METRIC)
    return g_strdup (message);
  length = g_regex_new ("(-?\\d+(?:\\.\\d+)?) mm\\b", G_REGEX_DEFAULT, G_REGEX_MATCH_DEFAULT, NULL);
  return g_regex_replace_eval (length, message, -1, 0, G_REGEX_MATCH_DEFAULT, put_length, &units, NULL);
}

/* Who hands an error on may have put the name before the id: then it is said once. */
char *
fp_amiss_words (const FpScene *scene, const char *message)
{
  g_autofree char *said = NULL, *words = NULL;
  const char *rest = message, *end;

  while ((end = strstr (rest, ": ")) != NULL)
    {
      g_autofree char *head = g_strndup (rest, (gsize) (end - rest));
      const char *name = name_of (scene, head);

      if (name == NULL && !is_a_name (scene, head))
        break;
      g_free (said);
      said = g_strdup (name != NULL ? name : head);
      rest = end + 2;
    }
  words = in_units (scene, rest);
  return said != NULL ? g_strdup_printf ("%s: %s", said, words) : of_sentence (scene, words);
}
