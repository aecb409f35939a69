/* SPDX-License-Identifier: GPL-3.0-or-later */
/* read-page.c - <page>: how the project is printed */
#include "read-parts.h"
#include "store-words.h"

#include <string.h>

static const char *const known[] = { "sheet", "paper", "lies", "scale", "whole", "findings", "ink", "without", "tiles",
                                     "along", "from", "across", "facing", NULL };

static gboolean
refuse_word (FpReader *r, const xmlNode *node, const char *name, const char *word, const char *expected)
{
  return fp_read_refuse (r, node, FP_ERROR_INVALID, "%s is “%.40s”; %s is expected", name, word, expected);
}

/* One of two words, FALSE's first. */
static gboolean
read_either (FpReader *r, const xmlNode *node, const char *name, const char *const words[3], gboolean *value)
{
  const char *word = fp_read_needed_attribute (r, node, name);
  g_autofree char *expected = g_strdup_printf ("%s or %s", words[0], words[1]);

  if (word == NULL)
    return FALSE;
  *value = strcmp (word, words[1]) == 0;
  return *value || strcmp (word, words[0]) == 0 || refuse_word (r, node, name, word, expected);
}

/* The file has words in one spelling only. */
static gboolean
is_spelt (const char *word, const char *right)
{
  return strcmp (word, right) == 0;
}

static gboolean
read_sheet (FpReader *r, const xmlNode *node, guint *sheet)
{
  const char *word = fp_read_needed_attribute (r, node, "sheet");

  if (word == NULL)
    return FALSE;
  if (fp_sheet_find (word, sheet) && is_spelt (word, fp_sheet_any_id (*sheet)))
    return TRUE;
  return refuse_word (r, node, "sheet", word,
                      "plan, elevation, section, cross, sections, board, compare, levels, sight, sun, card, schedule or linen");
}

static gboolean
read_paper (FpReader *r, const xmlNode *node, const char *name, gboolean may_be_none, FpPaper *paper)
{
  const char *word = fp_read_needed_attribute (r, node, name);

  if (word == NULL)
    return FALSE;
  if ((may_be_none && is_spelt (word, "none")) || (fp_paper_find (word, paper) && is_spelt (word, fp_paper_id (*paper))))
    return TRUE;
  return refuse_word (r, node, name, word, "a4, a3, a2, a1, letter or tabloid");
}

static gboolean
read_ink (FpReader *r, const xmlNode *node, FpInkChoice *ink)
{
  const char *word = fp_read_needed_attribute (r, node, "ink");

  if (word == NULL)
    return FALSE;
  if (fp_ink_find (word, ink) && is_spelt (word, fp_ink_id (*ink)))
    return TRUE;
  return refuse_word (r, node, "ink", word, "colour, grey or safe");
}

static gboolean
read_without (FpReader *r, const xmlNode *node, FpHidden *hidden)
{
  const char *words = fp_read_needed_attribute (r, node, "without");
  g_autofree char *wrong = NULL, *all = fp_hidden_text (FP_HIDDEN_ALL), *expected = NULL, *again = NULL;

  if (words == NULL)
    return FALSE;
  if (fp_hidden_parse (words, hidden, &wrong))
    {
      again = fp_hidden_text (*hidden);
      if (is_spelt (words, again))
        return TRUE;
    }
  expected = g_strdup_printf ("some of %s, in this order,", all);
  return refuse_word (r, node, "without", wrong != NULL ? wrong : words, expected);
}

static gboolean
read_cut (FpReader *r, const xmlNode *node, const char *at, const char *way, const char *const words[3], FpCut *cut)
{
  cut->placed = fp_read_attribute (r, node, at) != NULL;
  return fp_read_number (r, node, at, &cut->at) && read_either (r, node, way, words, &cut->turned);
}

gboolean
fp_read_page (FpReader *r, const xmlNode *node, FpPageSetup *page)
{
  const xmlNode *child;

  *page = (FpPageSetup) { .sheet = FP_SHEET_ELEVATION };
  if (!fp_read_knows_attributes (r, node, known) || !fp_read_has_only_elements (r, node))
    return FALSE;
  if ((child = fp_read_first (node)) != NULL)
    return fp_read_refuse (r, child, FP_ERROR_INVALID, "<%.80s> was found in <page>, where nothing is expected",
                           fp_read_name (child));
  if (!read_sheet (r, node, &page->sheet) || !read_paper (r, node, "paper", FALSE, &page->paper)
      || !read_either (r, node, "lies", fp_lies_words, &page->landscape)
      || fp_read_needed_attribute (r, node, "scale") == NULL || !fp_read_number (r, node, "scale", &page->scale)
      || !read_either (r, node, "whole", fp_yes_words, &page->whole)
      || !read_either (r, node, "findings", fp_yes_words, &page->findings) || !read_ink (r, node, &page->ink)
      || !read_without (r, node, &page->hidden) || !read_paper (r, node, "tiles", TRUE, &page->tile))
    return FALSE;
  page->tiled = strcmp (fp_read_attribute (r, node, "tiles"), "none") != 0;
  return read_cut (r, node, "along", "from", fp_from_words, &page->along)
         && read_cut (r, node, "across", "facing", fp_towards_words, &page->across);
}
