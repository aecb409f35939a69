/* SPDX-License-Identifier: GPL-3.0-or-later */
/* read-brief.c - <brief>: its elements, each once and in order */
#include "read-parts.h"
#include "store-words.h"

#include <string.h>

static gboolean
read_word (FpReader *r, const xmlNode *node, const char *text, const char *const *words, guint *value)
{
  g_autofree char *word = g_strstrip (g_strdup (text));
  g_autofree char *all = NULL;

  for (guint i = 0; words[i] != NULL; i++)
    if (strcmp (words[i], word) == 0)
      {
        *value = i;
        return TRUE;
      }
  all = g_strjoinv (", ", (char **) words);
  return fp_read_refuse (r, node, FP_ERROR_INVALID, "<%s> is “%.40s”; one of %s is expected", fp_read_name (node), word,
                         all);
}

static gboolean
read_whole (FpReader *r, const xmlNode *node, const char *text, guint *value)
{
  g_autofree char *digits = g_strstrip (g_strdup (text));

  if (digits[0] == '\0' || digits[strspn (digits, "0123456789")] != '\0' || strlen (digits) > 9)
    return fp_read_refuse (r, node, FP_ERROR_RANGE, "<%s> is “%.40s”; a whole number is expected", fp_read_name (node),
                           digits);
  *value = (guint) g_ascii_strtoull (digits, NULL, 10);
  return TRUE;
}

static int
celebration_of (const char *word)
{
  for (int i = 0; i < FP_N_CELEBRATIONS; i++)
    if (strcmp (word, fp_celebration_id ((FpCelebration) (1u << i))) == 0)
      return i;
  return -1;
}

static gboolean
refuse_celebration (FpReader *r, const xmlNode *node, const char *word)
{
  g_autoptr (GString) all = g_string_new ("");

  for (guint i = 0; i < FP_N_CELEBRATIONS; i++)
    g_string_append_printf (all, "%s%s", i > 0 ? ", " : "", fp_celebration_id ((FpCelebration) (1u << i)));
  return fp_read_refuse (r, node, FP_ERROR_INVALID, "“%.40s” is no celebration; of %s are expected", word, all->str);
}

static gboolean
read_celebrations (FpReader *r, const xmlNode *node, const char *text, guint *value)
{
  g_auto (GStrv) words = g_strsplit_set (text, " \t\r\n", -1);

  *value = 0;
  for (guint i = 0; words[i] != NULL; i++)
    {
      const int which = celebration_of (words[i]);
      if (words[i][0] == '\0')
        continue;
      if (which < 0)
        return refuse_celebration (r, node, words[i]);
      *value |= 1u << which;
    }
  return TRUE;
}

static gboolean
read_north (FpReader *r, const xmlNode *node, const char *text, double *value)
{
  g_autofree char *number = g_strstrip (g_strdup (text));

  return fp_read_number_text (r, node, "<north>", number, value);
}

static gboolean
read_part (FpReader *r, const xmlNode *node, const char *text, FpBrief *brief)
{
  guint word = 0;
  gboolean fair = TRUE;

  if (fp_read_is (node, "title"))
    brief->title = text;
  else if (fp_read_is (node, "place"))
    brief->place = text;
  else if (fp_read_is (node, "client"))
    brief->client = text;
  else if (fp_read_is (node, "author"))
    brief->author = text;
  else if (fp_read_is (node, "note"))
    brief->note = text;
  else if (fp_read_is (node, "books"))
    {
      fair = read_word (r, node, text, fp_books_words, &word);
      brief->books = (FpBooks) word;
    }
  else if (fp_read_is (node, "facing"))
    {
      fair = read_word (r, node, text, fp_facing_words, &word);
      brief->facing = (FpFacing) word;
    }
  else if (fp_read_is (node, "celebrations"))
    fair = read_celebrations (r, node, text, &brief->celebrations);
  else if (fp_read_is (node, "ministers"))
    fair = read_whole (r, node, text, &brief->ministers);
  else if (fp_read_is (node, "seats"))
    fair = read_whole (r, node, text, &brief->seats);
  else if (fp_read_is (node, "units"))
    {
      fair = read_word (r, node, text, fp_units_words, &word);
      brief->units = (FpUnits) word;
    }
  else if (fp_read_is (node, "north"))
    fair = read_north (r, node, text, &brief->north);
  else if (fp_read_is (node, "percentile"))
    fair = read_whole (r, node, text, &brief->percentile);
  else if (fp_read_is (node, "statures"))
    {
      fair = read_word (r, node, text, fp_statures_words, &word);
      brief->varied = word == 1;
    }
  else if (fp_read_is (node, "seed"))
    fair = read_whole (r, node, text, &brief->seed);
  else if (fp_read_is (node, "children"))
    fair = read_whole (r, node, text, &brief->children);
  return fair;
}

gboolean
fp_read_brief (FpReader *r, const xmlNode *node, FpBrief *brief)
{
  /* Those that came later may be left out. */
  static const struct { const char *name; gboolean optional; } order[] = {
    { "title", FALSE }, { "place", FALSE }, { "client", FALSE }, { "author", FALSE }, { "note", FALSE }, { "books", FALSE },
    { "facing", FALSE }, { "celebrations", FALSE }, { "ministers", FALSE }, { "seats", FALSE }, { "units", FALSE },
    { "north", FALSE }, { "percentile", FALSE }, { "statures", TRUE }, { "seed", TRUE }, { "children", TRUE },
  };
  static const char *const none[] = { NULL };
  const xmlNode *child;

  if (!fp_read_knows_attributes (r, node, none) || !fp_read_has_only_elements (r, node))
    return FALSE;
  child = fp_read_first (node);
  for (guint i = 0; i < G_N_ELEMENTS (order); i++)
    {
      const char *text;
      if (order[i].optional && (child == NULL || !fp_read_is (child, order[i].name)))
        continue;
      if (child == NULL)
        return fp_read_refuse (r, node, FP_ERROR_INVALID, "<brief> has no <%s>, which is expected", order[i].name);
      if (!fp_read_is (child, order[i].name))
        return fp_read_refuse (r, child, FP_ERROR_INVALID, "<%.80s> was found; <%s> is expected here",
                               fp_read_name (child), order[i].name);
      if (!fp_read_knows_attributes (r, child, none) || (text = fp_read_text (r, child)) == NULL
          || !read_part (r, child, text, brief))
        return FALSE;
      child = fp_read_next (child);
    }
  if (!fp_read_masses (r, &child, brief))
    return FALSE;
  if (child != NULL)
    return fp_read_refuse (r, child, FP_ERROR_INVALID, "<%.80s> was found; </brief> is expected here",
                           fp_read_name (child));
  return TRUE;
}
