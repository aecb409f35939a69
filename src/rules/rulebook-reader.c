/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "rulebook-reader.h"

#include <string.h>

#define FAULTS_MOST 20 /* who has more mends these first */

gboolean
fp_book_fault (const FpBookReader *reader, const xmlNode *node, FpError code, const char *format, ...)
{
  g_autofree char *message = NULL;
  va_list args;

  va_start (args, format);
  message = g_strdup_vprintf (format, args);
  va_end (args);
  if (reader->faults->len < FAULTS_MOST)
    g_ptr_array_add (reader->faults,
                     g_error_new (FP_ERROR, (int) code, "%s:%ld: %s", reader->name, node ? xmlGetLineNo (node) : 1L, message));
  else if (reader->faults->len == FAULTS_MOST)
    g_ptr_array_add (reader->faults, g_error_new (FP_ERROR, FP_ERROR_LIMIT, "%s: and more; mend these first", reader->name));
  return FALSE;
}

gboolean
fp_book_names (const xmlNode *node, const char *name)
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

const char *
fp_book_keep (const FpBookReader *reader, const char *text)
{
  return text ? g_string_chunk_insert_const (reader->book->text, text) : NULL;
}

char *
fp_book_attribute (const xmlNode *node, const char *name)
{
  xmlChar *value = xmlGetNoNsProp (node, (const xmlChar *) name);
  char *copy = value ? squeezed ((const char *) value) : NULL;

  xmlFree (value);
  return copy;
}

gboolean
fp_book_only_attributes (const FpBookReader *reader, const xmlNode *node, const char *const *allowed)
{
  for (const xmlAttr *a = node->properties; a; a = a->next)
    if (a->ns || !g_strv_contains (allowed, (const char *) a->name))
      return fp_book_fault (reader, node, FP_ERROR_INVALID, "“%s” is not an attribute of “%s”", (const char *) a->name,
                    (const char *) node->name);
  return TRUE;
}

gboolean
fp_book_needed (const FpBookReader *reader, const xmlNode *node, const char *name, const char **out)
{
  g_autofree char *value = fp_book_attribute (node, name);

  if (!value)
    return fp_book_fault (reader, node, FP_ERROR_INVALID, "“%s” lacks “%s”", (const char *) node->name, name);
  if (strlen (value) > FP_RULEBOOK_TEXT_MAX)
    return fp_book_fault (reader, node, FP_ERROR_LIMIT, "“%s” is longer than %d bytes", name, FP_RULEBOOK_TEXT_MAX);
  *out = fp_book_keep (reader, value);
  return TRUE;
}

gboolean
fp_book_needed_id (const FpBookReader *reader, const xmlNode *node, const char *name, const char **out)
{
  if (!fp_book_needed (reader, node, name, out))
    return FALSE;
  if (!g_ascii_islower (**out) || strlen (*out) > 64
      || strspn (*out, "abcdefghijklmnopqrstuvwxyz0123456789-") != strlen (*out))
    return fp_book_fault (reader, node, FP_ERROR_INVALID,
                  "%s is “%s”, which is not an id: small letters, digits and hyphens, a letter first", name, *out);
  return TRUE;
}

gboolean
fp_book_word (const FpBookReader *reader, const xmlNode *node, const char *name, const char *const *words, gboolean must,
         int *found)
{
  g_autofree char *value = fp_book_attribute (node, name);
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
  return fp_book_fault (reader, node, FP_ERROR_INVALID, "%s is “%s”, expected one of: %s", name, value ? value : "", all);
}

gboolean
fp_book_text (const FpBookReader *reader, const xmlNode *child, const char **into)
{
  xmlChar *content;
  g_autofree char *text = NULL;

  if (*into)
    return fp_book_fault (reader, child, FP_ERROR_INVALID, "a second “%s”", (const char *) child->name);
  if (child->properties)
    return fp_book_fault (reader, child, FP_ERROR_INVALID, "“%s” takes no attributes", (const char *) child->name);
  for (const xmlNode *inner = child->children; inner; inner = inner->next)
    if (inner->type == XML_ELEMENT_NODE)
      return fp_book_fault (reader, inner, FP_ERROR_INVALID, "“%s” within “%s”: only text is expected",
                    (const char *) inner->name, (const char *) child->name);
  content = xmlNodeGetContent (child);
  text = content ? squeezed ((const char *) content) : NULL;
  xmlFree (content);
  if (!text)
    return fp_book_fault (reader, child, FP_ERROR_INVALID, "“%s” is empty", (const char *) child->name);
  if (strlen (text) > FP_RULEBOOK_TEXT_MAX)
    return fp_book_fault (reader, child, FP_ERROR_LIMIT, "“%s” is longer than %d bytes", (const char *) child->name,
                  FP_RULEBOOK_TEXT_MAX);
  *into = fp_book_keep (reader, text);
  return TRUE;
}

gboolean
fp_book_nothing_said (const FpBookReader *reader, const xmlNode *node)
{
  if (node->type == XML_COMMENT_NODE || xmlIsBlankNode (node))
    return TRUE;
  return fp_book_fault (reader, node, FP_ERROR_INVALID, "text or data outside of an element");
}

gboolean
fp_book_jurisdictions (const FpBookReader *reader, const xmlNode *node, guint *bits)
{
  g_autofree char *text = fp_book_attribute (node, "jurisdictions");
  g_auto (GStrv) words = text ? g_strsplit (text, " ", -1) : NULL;

  for (guint i = 0; words && words[i]; i++)
    {
      FpJurisdiction one;

      if (!fp_jurisdiction_find (words[i], &one) || one == FP_JURISDICTION_UNSAID || one == FP_JURISDICTION_OTHER)
        return fp_book_fault (reader, node, FP_ERROR_INVALID, "“%s” is not a jurisdiction: us, uk and eu are", words[i]);
      *bits |= 1u << one;
    }
  return TRUE;
}
