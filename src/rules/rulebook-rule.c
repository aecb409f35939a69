/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A rule of a rulebook: what it says, and when it holds. */
#include "rulebook-reader.h"

#include <string.h>

static gboolean
read_celebrations (const FpBookReader *reader, const xmlNode *node, FpRule *rule)
{
  g_autofree char *text = fp_book_attribute (node, "celebrations");
  g_auto (GStrv) words = text ? g_strsplit (text, " ", -1) : NULL;

  for (guint i = 0; words && words[i]; i++)
    {
      guint bit = 0;

      for (guint c = 0; c < FP_N_CELEBRATIONS; c++)
        if (strcmp (words[i], fp_celebration_id ((FpCelebration) (1u << c))) == 0)
          bit = 1u << c;
      if (!bit)
        return fp_book_fault (reader, node, FP_ERROR_INVALID, "“%s” is not a celebration: low, sung, solemn, pontifical, "
                              "requiem, passiontide, good-friday, benediction, weekday, sunday and bishop are", words[i]);
      rule->celebrations |= bit;
    }
  return TRUE;
}

static gboolean
read_conditions (const FpBookReader *reader, const xmlNode *node, FpRule *rule)
{
  static const char *const books[] = { "older", "newer", NULL };
  static const char *const facings[] = { "east", "people", NULL };
  static const char *const yes_no[] = { "no", "yes", NULL };
  int book = -1;

  rule->facing = -1;
  rule->freestanding = -1;
  if (!fp_book_word (reader, node, "books", books, FALSE, &book)
      || !fp_book_word (reader, node, "facing", facings, FALSE, &rule->facing)
      || !fp_book_word (reader, node, "freestanding", yes_no, FALSE, &rule->freestanding)
      || !read_celebrations (reader, node, rule) || !fp_book_jurisdictions (reader, node, &rule->jurisdictions)
      || (xmlHasProp (node, (const xmlChar *) "matter") && !fp_book_needed_id (reader, node, "matter", &rule->matter)))
    return FALSE;
  rule->books = book < 0 ? 1u << FP_BOOKS_OLDER | 1u << FP_BOOKS_NEWER : 1u << book;
  return TRUE;
}

static gboolean
read_child (const FpBookReader *reader, const xmlNode *child, FpRule *rule)
{
  struct { const char *name; const char **into; } texts[]
    = { { "title", &rule->title }, { "below", &rule->below }, { "above", &rule->above },
        { "source", &rule->source }, { "advice", &rule->advice }, { "caution", &rule->caution } };

  if (child->type != XML_ELEMENT_NODE)
    return fp_book_nothing_said (reader, child);
  for (guint t = 0; t < G_N_ELEMENTS (texts); t++)
    if (fp_book_names (child, texts[t].name))
      return fp_book_text (reader, child, texts[t].into);
  return fp_book_fault (reader, child, FP_ERROR_INVALID, "“%s” is not expected in a rule", (const char *) child->name);
}

static gboolean
read_texts (const FpBookReader *reader, const xmlNode *node, FpRule *rule)
{
  gboolean good = TRUE;

  for (const xmlNode *child = node->children; child; child = child->next)
    good &= read_child (reader, child, rule);
  if (good && (!rule->title || !rule->source))
    return fp_book_fault (reader, node, FP_ERROR_INVALID, "rule “%s” lacks its %s", rule->id, rule->title ? "source" : "title");
  return good;
}

static gboolean
only_cases_of_the_test (const FpBookReader *reader, const xmlNode *node, const FpRule *rule)
{
  if ((rule->below || rule->above) && rule->test != FP_TEST_BETWEEN && rule->test != FP_TEST_EQUALS)
    return fp_book_fault (reader, node, FP_ERROR_INVALID, "the test “%s” has only one case: “title” is its title",
                          fp_test_id (rule->test));
  return TRUE;
}

static gboolean
is_new (const FpBookReader *reader, const xmlNode *node, const FpRule *rule)
{
  const GArray *rules = reader->book->rules;

  for (guint i = 0; i < rules->len; i++)
    if (strcmp (g_array_index (rules, FpRule, i).id, rule->id) == 0)
      return fp_book_fault (reader, node, FP_ERROR_REFERENCE, "a second rule “%s”", rule->id);
  if (rules->len == FP_RULEBOOK_RULES_MAX)
    return fp_book_fault (reader, node, FP_ERROR_LIMIT, "more than %d rules", FP_RULEBOOK_RULES_MAX);
  return TRUE;
}

/* Each part is read whatever was wrong with another, so that all is told at once. */
static gboolean
read_parts (const FpBookReader *reader, const xmlNode *node, FpRule *rule)
{
  static const char *const weights[] = { "required", "recommended", "customary", NULL };
  const gboolean limit = fp_book_limit (reader, node, rule);
  int weight = 0;
  const gboolean measure = fp_book_measure (reader, node, rule);
  gboolean good = limit && measure && fp_book_limit_fits (reader, node, rule);

  good &= fp_book_word (reader, node, "weight", weights, TRUE, &weight);
  good &= read_conditions (reader, node, rule);
  good &= read_texts (reader, node, rule);
  good &= !limit || only_cases_of_the_test (reader, node, rule);
  rule->weight = (FpWeight) weight;
  return good;
}

gboolean
fp_book_rule (const FpBookReader *reader, const xmlNode *node)
{
  static const char *const attributes[] = { "id", "measure", "test", "low", "high", "of", "unit", "weight", "printed",
                                            "books", "facing", "celebrations", "freestanding", "jurisdictions", "matter", NULL };
  FpRule rule = { 0 };
  g_autofree char *printed = fp_book_attribute (node, "printed");
  const gboolean known = fp_book_only_attributes (reader, node, attributes);

  gboolean good = known;

  if (!fp_book_needed_id (reader, node, "id", &rule.id))
    return FALSE;
  good &= is_new (reader, node, &rule);
  good &= read_parts (reader, node, &rule);
  rule.printed = fp_book_keep (reader, printed);
  if (rule.jurisdictions == 0)
    rule.jurisdictions = reader->book->jurisdictions;
  g_array_append_val (reader->book->rules, rule); /* a faulty one too, so that a second of its id is told: the book is left out */
  return good;
}
