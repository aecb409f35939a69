/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A rulebook from XML.  It may come from anyone: no network, no DTD, limits on size.  A fault leaves the whole book
 * out. */
#include "printed-unit.h"
#include "rulebook-private.h"
#include "rulebook-xml.h"

#include <math.h>
#include <string.h>

typedef struct
{
  const char *name;   /* of the input, for messages                          */
  FpRulebook *book;
  GError    **error;
} Reader;

static gboolean fault (const Reader *reader, const xmlNode *node, FpError code, const char *format, ...)
  G_GNUC_PRINTF (4, 5);

/* Always FALSE. */
static gboolean
fault (const Reader *reader, const xmlNode *node, FpError code, const char *format, ...)
{
  g_autofree char *message = NULL;
  va_list args;

  va_start (args, format);
  message = g_strdup_vprintf (format, args);
  va_end (args);
  g_set_error (reader->error, FP_ERROR, (int) code, "%s:%ld: %s", reader->name, node ? xmlGetLineNo (node) : 1L,
               message);
  return FALSE;
}

static gboolean
is_named (const xmlNode *node, const char *name)
{
  return node->ns && strcmp ((const char *) node->ns->href, FP_RULEBOOK_NAMESPACE) == 0
         && strcmp ((const char *) node->name, name) == 0;
}

/* Text with runs of white space made one space; NULL when nothing is left. */
static char *
squeezed (const char *text)
{
  GString *out = g_string_new (NULL);
  gboolean gap = FALSE;

  for (const char *p = text; *p; p++)
    if (g_ascii_isspace (*p))
      gap = out->len > 0;
    else
      {
        if (gap)
          g_string_append_c (out, ' ');
        gap = FALSE;
        g_string_append_c (out, *p);
      }
  return g_string_free (out, out->len == 0);
}

/* Kept in the book; NULL for NULL. */
static const char *
keep (const Reader *reader, const char *text)
{
  return text ? g_string_chunk_insert_const (reader->book->text, text) : NULL;
}

static char *
attribute (const xmlNode *node, const char *name)
{
  xmlChar *value = xmlGetNoNsProp (node, (const xmlChar *) name);
  char *copy = value ? squeezed ((const char *) value) : NULL;

  xmlFree (value);
  return copy;
}

static gboolean
only_attributes (const Reader *reader, const xmlNode *node, const char *const *allowed)
{
  for (const xmlAttr *a = node->properties; a; a = a->next)
    if (a->ns || !g_strv_contains (allowed, (const char *) a->name))
      return fault (reader, node, FP_ERROR_INVALID, "“%s” is not an attribute of “%s”", (const char *) a->name,
                    (const char *) node->name);
  return TRUE;
}

/* An attribute that must be there and say something. */
static gboolean
needed (const Reader *reader, const xmlNode *node, const char *name, const char **out)
{
  g_autofree char *value = attribute (node, name);

  if (!value)
    return fault (reader, node, FP_ERROR_INVALID, "“%s” lacks “%s”", (const char *) node->name, name);
  if (strlen (value) > FP_RULEBOOK_TEXT_MAX)
    return fault (reader, node, FP_ERROR_LIMIT, "“%s” is longer than %d bytes", name, FP_RULEBOOK_TEXT_MAX);
  *out = keep (reader, value);
  return TRUE;
}

static gboolean
needed_id (const Reader *reader, const xmlNode *node, const char *name, const char **out)
{
  if (!needed (reader, node, name, out))
    return FALSE;
  if (!g_ascii_islower (**out) || strlen (*out) > 64
      || strspn (*out, "abcdefghijklmnopqrstuvwxyz0123456789-") != strlen (*out))
    return fault (reader, node, FP_ERROR_INVALID,
                  "“%s” is not an id: small letters, digits and hyphens, a letter first", *out);
  return TRUE;
}

/* One of a list of words; @found is left alone where the attribute is missing and may be. */
static gboolean
word_of (const Reader *reader, const xmlNode *node, const char *name, const char *const *words, gboolean must,
         int *found)
{
  g_autofree char *value = attribute (node, name);
  g_autofree char *all = NULL;

  if (!value && !must)
    return TRUE;
  for (int i = 0; value && words[i]; i++)
    if (strcmp (words[i], value) == 0)
      {
        *found = i;
        return TRUE;
      }
  all = g_strjoinv (", ", (char **) words);
  return fault (reader, node, FP_ERROR_INVALID, "%s is “%s”, expected one of: %s", name, value ? value : "", all);
}

/* --- numbers ------------------------------------------------------------- */

/* "12.5" or "1/3", plain decimal, whatever the locale. */
static gboolean
parse_number (const char *text, double *value)
{
  char *end;
  double over;

  if (strspn (text, "-0123456789./") != strlen (text))
    return FALSE;
  *value = g_ascii_strtod (text, &end);
  if (end == text)
    return FALSE;
  if (*end == '/')
    {
      const char *below = end + 1;

      over = g_ascii_strtod (below, &end);
      if (end == below || !(over > 0))
        return FALSE;
      *value /= over;
    }
  return *end == '\0' && fabs (*value) <= FP_LENGTH_MAX;
}

static gboolean
number_of (const Reader *reader, const xmlNode *node, const char *name, double *value)
{
  g_autofree char *text = attribute (node, name);

  if (!text)
    return fault (reader, node, FP_ERROR_INVALID, "the test needs a limit “%s”", name);
  if (!parse_number (text, value))
    return fault (reader, node, FP_ERROR_RANGE, "%s is “%s”, expected a number such as 12.5 or 1/3", name, text);
  return TRUE;
}

static gboolean
read_list (const Reader *reader, const xmlNode *node, FpRule *rule)
{
  g_autofree char *text = attribute (node, "of");
  g_auto (GStrv) parts = text ? g_strsplit (text, " ", -1) : NULL;

  if (!text)
    return fault (reader, node, FP_ERROR_INVALID, "the test needs a list “of”");
  for (guint i = 0; parts[i]; i++)
    {
      if (rule->n_one_of == G_N_ELEMENTS (rule->one_of))
        return fault (reader, node, FP_ERROR_LIMIT, "“of” names more than %u numbers", rule->n_one_of);
      if (!parse_number (parts[i], &rule->one_of[rule->n_one_of++]))
        return fault (reader, node, FP_ERROR_RANGE, "“%s” in “of” is not a number", parts[i]);
    }
  return TRUE;
}

/* Limits that the test does not use would be read by people and ignored by us. */
static gboolean
only_limits (const Reader *reader, const xmlNode *node, FpTest test)
{
  static const char *const limits[] = { "low", "high", "of" };
  static const gboolean used[][3] = {
    [FP_TEST_AT_LEAST] = { TRUE, FALSE, FALSE }, [FP_TEST_AT_MOST] = { FALSE, TRUE, FALSE },
    [FP_TEST_BETWEEN] = { TRUE, TRUE, FALSE },   [FP_TEST_EQUALS] = { TRUE, FALSE, FALSE },
    [FP_TEST_ODD] = { FALSE, FALSE, FALSE },     [FP_TEST_ONE_OF] = { FALSE, FALSE, TRUE },
  };

  for (guint i = 0; i < G_N_ELEMENTS (limits); i++)
    if (!used[test][i] && xmlHasProp (node, (const xmlChar *) limits[i]))
      return fault (reader, node, FP_ERROR_INVALID, "the test “%s” does not use “%s”", fp_test_id (test), limits[i]);
  return TRUE;
}

static gboolean
read_limit (const Reader *reader, const xmlNode *node, FpRule *rule)
{
  static const char *const tests[] = { "at-least", "at-most", "between", "equals", "odd", "one-of", NULL };
  int test = 0;

  if (!word_of (reader, node, "test", tests, TRUE, &test) || !only_limits (reader, node, (FpTest) test))
    return FALSE;
  rule->test = (FpTest) test;
  switch (rule->test)
    {
    case FP_TEST_AT_LEAST:
    case FP_TEST_EQUALS:
      return number_of (reader, node, "low", &rule->low);
    case FP_TEST_AT_MOST:
      return number_of (reader, node, "high", &rule->high);
    case FP_TEST_BETWEEN:
      if (!number_of (reader, node, "low", &rule->low) || !number_of (reader, node, "high", &rule->high))
        return FALSE;
      return rule->low <= rule->high
             || fault (reader, node, FP_ERROR_RANGE, "low (%g) is above high (%g)", rule->low, rule->high);
    case FP_TEST_ODD:
      return TRUE;
    case FP_TEST_ONE_OF:
      return read_list (reader, node, rule);
    }
  return FALSE;
}

/* --- a rule -------------------------------------------------------------- */

#define LIKE_MOST 3 /* letters by which a word may differ from what was meant */

/* How many letters are to be put in, taken out or changed to make one of the other (V. I. Levenshtein, 1965). */
static guint
letters_apart (const char *a, const char *b)
{
  const gsize n = strlen (b);
  g_autofree guint *row = g_new (guint, n + 1);

  for (gsize k = 0; k <= n; k++)
    row[k] = (guint) k;
  for (gsize i = 0; a[i] != '\0'; i++)
    {
      guint before = row[0];

      row[0] = (guint) i + 1;
      for (gsize k = 1; k <= n; k++)
        {
          const guint changed = before + (a[i] != b[k - 1]);

          before = row[k];
          row[k] = MIN (MIN (row[k], row[k - 1]) + 1, changed);
        }
    }
  return row[n];
}

static gboolean
no_measure (const Reader *reader, const xmlNode *node, const char *id)
{
  guint n, least = LIKE_MOST + 1;
  const FpMeasure *measure = fp_measures (&n), *like = NULL;

  for (guint i = 0; i < n; i++)
    {
      const guint apart = letters_apart (id, measure[i].id);

      if (apart < least)
        {
          least = apart;
          like = &measure[i];
        }
    }
  if (like)
    return fault (reader, node, FP_ERROR_REFERENCE, "there is no measure “%s”; is “%s” meant?", id, like->id);
  return fault (reader, node, FP_ERROR_REFERENCE, "there is no measure “%s”; “footpace measures” lists them", id);
}

static gboolean
read_measure (const Reader *reader, const xmlNode *node, FpRule *rule)
{
  g_autofree char *unit = attribute (node, "unit");
  const FpMeasure *measure;
  const FpPrintedUnit *printed;

  if (!needed_id (reader, node, "measure", &rule->measure))
    return FALSE;
  measure = fp_measure_find (rule->measure);
  if (!measure)
    return no_measure (reader, node, rule->measure);

  rule->unit = keep (reader, unit ? unit : "");
  printed = fp_printed_unit_find (rule->unit);
  if (!printed)
    return fault (reader, node, FP_ERROR_INVALID, "“%s” is not a unit", rule->unit);
  if (!fp_printed_unit_fits (printed, measure))
    return *rule->unit == '\0'
             ? fault (reader, node, FP_ERROR_INVALID, "“%s” needs the unit in which its limit is printed", rule->measure)
             : fault (reader, node, FP_ERROR_INVALID, "“%s” cannot be held against figures in “%s”", rule->measure, rule->unit);
  if (rule->test == FP_TEST_ODD && (measure->type != FP_MEASURE_COUNT || measure->unit))
    return fault (reader, node, FP_ERROR_INVALID, "“%s” is not counted: it is neither odd nor even", rule->measure);
  return TRUE;
}

static gboolean
read_celebrations (const Reader *reader, const xmlNode *node, FpRule *rule)
{
  g_autofree char *text = attribute (node, "celebrations");
  g_auto (GStrv) words = text ? g_strsplit (text, " ", -1) : NULL;

  for (guint i = 0; words && words[i]; i++)
    {
      guint bit = 0;

      for (guint c = 0; c < FP_N_CELEBRATIONS; c++)
        if (strcmp (words[i], fp_celebration_id ((FpCelebration) (1u << c))) == 0)
          bit = 1u << c;
      if (!bit)
        return fault (reader, node, FP_ERROR_INVALID, "“%s” is not a celebration: low, sung, solemn, pontifical, requiem, passiontide, good-friday, benediction, "
                      "weekday, sunday and bishop are", words[i]);
      rule->celebrations |= bit;
    }
  return TRUE;
}

static gboolean
read_jurisdictions (const Reader *reader, const xmlNode *node, guint *bits)
{
  g_autofree char *text = attribute (node, "jurisdictions");
  g_auto (GStrv) words = text ? g_strsplit (text, " ", -1) : NULL;

  for (guint i = 0; words && words[i]; i++)
    {
      FpJurisdiction one;

      if (!fp_jurisdiction_find (words[i], &one) || one == FP_JURISDICTION_UNSAID || one == FP_JURISDICTION_OTHER)
        return fault (reader, node, FP_ERROR_INVALID, "“%s” is not a jurisdiction: us, uk and eu are", words[i]);
      *bits |= 1u << one;
    }
  return TRUE;
}

static gboolean
read_conditions (const Reader *reader, const xmlNode *node, FpRule *rule)
{
  static const char *const books[] = { "older", "newer", NULL };
  static const char *const facings[] = { "east", "people", NULL };
  static const char *const yes_no[] = { "no", "yes", NULL };
  int book = -1;

  rule->facing = -1;
  rule->freestanding = -1;
  if (!word_of (reader, node, "books", books, FALSE, &book)
      || !word_of (reader, node, "facing", facings, FALSE, &rule->facing)
      || !word_of (reader, node, "freestanding", yes_no, FALSE, &rule->freestanding)
      || !read_celebrations (reader, node, rule) || !read_jurisdictions (reader, node, &rule->jurisdictions)
      || (xmlHasProp (node, (const xmlChar *) "matter") && !needed_id (reader, node, "matter", &rule->matter)))
    return FALSE;
  rule->books = book < 0 ? 1u << FP_BOOKS_OLDER | 1u << FP_BOOKS_NEWER : 1u << book;
  return TRUE;
}

static gboolean
read_text (const Reader *reader, const xmlNode *child, const char **into)
{
  xmlChar *content;
  g_autofree char *text = NULL;

  if (*into)
    return fault (reader, child, FP_ERROR_INVALID, "a second “%s”", (const char *) child->name);
  if (child->properties)
    return fault (reader, child, FP_ERROR_INVALID, "“%s” takes no attributes", (const char *) child->name);
  for (const xmlNode *inner = child->children; inner; inner = inner->next)
    if (inner->type == XML_ELEMENT_NODE)
      return fault (reader, inner, FP_ERROR_INVALID, "“%s” within “%s”: only text is expected",
                    (const char *) inner->name, (const char *) child->name);
  content = xmlNodeGetContent (child);
  text = content ? squeezed ((const char *) content) : NULL;
  xmlFree (content);
  if (!text)
    return fault (reader, child, FP_ERROR_INVALID, "“%s” is empty", (const char *) child->name);
  if (strlen (text) > FP_RULEBOOK_TEXT_MAX)
    return fault (reader, child, FP_ERROR_LIMIT, "“%s” is longer than %d bytes", (const char *) child->name,
                  FP_RULEBOOK_TEXT_MAX);
  *into = keep (reader, text);
  return TRUE;
}

/* FALSE at anything but white space and comments between elements. */
static gboolean
nothing_said (const Reader *reader, const xmlNode *node)
{
  if (node->type == XML_COMMENT_NODE || xmlIsBlankNode (node))
    return TRUE;
  return fault (reader, node, FP_ERROR_INVALID, "text or data outside of an element");
}

static gboolean
read_texts (const Reader *reader, const xmlNode *node, FpRule *rule)
{
  struct { const char *name; const char **into; } texts[]
    = { { "title", &rule->title }, { "below", &rule->below }, { "above", &rule->above },
        { "source", &rule->source }, { "advice", &rule->advice }, { "caution", &rule->caution } };

  for (const xmlNode *child = node->children; child; child = child->next)
    {
      guint t = 0;

      if (child->type != XML_ELEMENT_NODE)
        {
          if (!nothing_said (reader, child))
            return FALSE;
          continue;
        }
      while (t < G_N_ELEMENTS (texts) && !is_named (child, texts[t].name))
        t++;
      if (t == G_N_ELEMENTS (texts))
        return fault (reader, child, FP_ERROR_INVALID, "“%s” is not expected in a rule", (const char *) child->name);
      if (!read_text (reader, child, texts[t].into))
        return FALSE;
    }
  if (!rule->title || !rule->source)
    return fault (reader, node, FP_ERROR_INVALID, "rule “%s” lacks its %s", rule->id, rule->title ? "source" : "title");
  if ((rule->below || rule->above) && rule->test != FP_TEST_BETWEEN && rule->test != FP_TEST_EQUALS)
    return fault (reader, node, FP_ERROR_INVALID, "the test “%s” has only one case: “title” is its title",
                  fp_test_id (rule->test));
  return TRUE;
}

static gboolean
read_rule (const Reader *reader, const xmlNode *node)
{
  static const char *const attributes[] = { "id", "measure", "test", "low", "high", "of", "unit", "weight", "printed",
                                            "books", "facing", "celebrations", "freestanding", "jurisdictions", "matter", NULL };
  static const char *const weights[] = { "required", "recommended", "customary", NULL };
  FpRule rule = { 0 };
  g_autofree char *printed = attribute (node, "printed");
  int weight = 0;

  if (!only_attributes (reader, node, attributes) || !needed_id (reader, node, "id", &rule.id)
      || !read_limit (reader, node, &rule) || !read_measure (reader, node, &rule)
      || !word_of (reader, node, "weight", weights, TRUE, &weight) || !read_conditions (reader, node, &rule)
      || !read_texts (reader, node, &rule))
    return FALSE;

  for (guint i = 0; i < reader->book->rules->len; i++)
    if (strcmp (g_array_index (reader->book->rules, FpRule, i).id, rule.id) == 0)
      return fault (reader, node, FP_ERROR_REFERENCE, "a second rule “%s”", rule.id);
  if (reader->book->rules->len == FP_RULEBOOK_RULES_MAX)
    return fault (reader, node, FP_ERROR_LIMIT, "more than %d rules", FP_RULEBOOK_RULES_MAX);

  rule.weight = (FpWeight) weight;
  rule.printed = keep (reader, printed);
  g_array_append_val (reader->book->rules, rule);
  return TRUE;
}

static gboolean
read_book (const Reader *reader, const xmlNode *root)
{
  static const char *const attributes[] = { "id", "title", "edition", NULL };

  if (!root || !is_named (root, "rulebook"))
    return fault (reader, root, FP_ERROR_INVALID, "found “%s”, expected “rulebook” of %s",
                  root ? (const char *) root->name : "nothing", FP_RULEBOOK_NAMESPACE);
  if (!only_attributes (reader, root, attributes) || !needed_id (reader, root, "id", &reader->book->id)
      || !needed (reader, root, "title", &reader->book->title)
      || !needed (reader, root, "edition", &reader->book->edition))
    return FALSE;

  for (const xmlNode *child = root->children; child; child = child->next)
    {
      if (child->type != XML_ELEMENT_NODE)
        {
          if (!nothing_said (reader, child))
            return FALSE;
          continue;
        }
      if (!is_named (child, "rule"))
        return fault (reader, child, FP_ERROR_INVALID, "found “%s”, expected “rule”", (const char *) child->name);
      if (!read_rule (reader, child))
        return FALSE;
    }
  return reader->book->rules->len > 0 || fault (reader, root, FP_ERROR_INVALID, "a rulebook without rules");
}

FpRulebook *
fp_rulebook_parse (const char *xml, gsize length, const char *name, GError **error)
{
  Reader reader = { name ? name : "rulebook", NULL, error };
  xmlDoc *doc;
  gboolean good;

  if (length > FP_RULEBOOK_BYTES_MAX)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_LIMIT, "%s:1: larger than %u bytes", reader.name, FP_RULEBOOK_BYTES_MAX);
      return NULL;
    }
  doc = fp_rulebook_xml (xml, length, reader.name, error);
  if (!doc)
    return NULL;

  reader.book = fp_rulebook_new_empty ();
  good = read_book (&reader, xmlDocGetRootElement (doc)) && fp_rulebook_fits_schema (doc, reader.name, error);
  xmlFreeDoc (doc);
  if (!good)
    g_clear_pointer (&reader.book, fp_rulebook_unref);
  return reader.book;
}
