/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "read-node.h"

#include <math.h>
#include <string.h>

#define NUMBER_MAX 400 /* characters: the longest that a double can need is 327 */

int
fp_read_line (const xmlNode *node)
{
  return MAX ((int) xmlGetLineNo ((xmlNode *) node), 1);
}

const char *
fp_read_name (const xmlNode *node)
{
  return (const char *) node->name;
}

gboolean
fp_read_is (const xmlNode *node, const char *element)
{
  return node != NULL && strcmp (fp_read_name (node), element) == 0;
}

gboolean
fp_read_refuse (FpReader *self, const xmlNode *at, FpError code, const char *format, ...)
{
  g_autofree char *what = NULL;
  va_list args;

  va_start (args, format);
  what = g_strdup_vprintf (format, args);
  va_end (args);
  if (self->error == NULL)
    self->error = g_error_new (FP_ERROR, (int) code, "%s:%d: %s", self->name, fp_read_line (at), fp_xml_one_line (what));
  return FALSE;
}

gboolean
fp_read_refuse_error (FpReader *self, int line, GError *error)
{
  fp_xml_one_line (error->message);
  g_prefix_error (&error, "%s:%d: ", self->name, MAX (line, 1));
  if (self->error == NULL)
    self->error = error;
  else
    g_error_free (error);
  return FALSE;
}

/* --- elements and texts --- */

static gboolean
is_blank (const xmlNode *node)
{
  for (const char *c = (const char *) node->content; c != NULL && *c != '\0'; c++)
    if (!g_ascii_isspace (*c))
      return FALSE;
  return TRUE;
}

static gboolean
is_ours (const xmlNode *node)
{
  return node->ns != NULL && strcmp ((const char *) node->ns->href, FP_STORE_NAMESPACE) == 0;
}

static gboolean
belongs_among_elements (FpReader *self, const xmlNode *parent, const xmlNode *child)
{
  switch (child->type)
    {
    case XML_COMMENT_NODE:
    case XML_PI_NODE:
      return TRUE;
    case XML_TEXT_NODE:
    case XML_CDATA_SECTION_NODE:
      return is_blank (child)
             || fp_read_refuse (self, parent, FP_ERROR_INVALID, "the text “%.40s” was found in <%s>, where only "
                                "elements are expected", g_strstrip ((char *) child->content), fp_read_name (parent));
    case XML_ELEMENT_NODE:
      return is_ours (child)
             || fp_read_refuse (self, child, FP_ERROR_INVALID, "<%.80s> is of another namespace; only %s is expected",
                                fp_read_name (child), FP_STORE_NAMESPACE);
    default:
      return fp_read_refuse (self, parent, FP_ERROR_INVALID, "“&%.40s;” was found in <%s>, where only elements are "
                             "expected", fp_read_name (child), fp_read_name (parent));
    }
}

gboolean
fp_read_has_only_elements (FpReader *self, const xmlNode *node)
{
  for (const xmlNode *child = node->children; child != NULL; child = child->next)
    if (!belongs_among_elements (self, node, child))
      return FALSE;
  return TRUE;
}

static xmlNode *
skip_to_element (xmlNode *node)
{
  while (node != NULL && node->type != XML_ELEMENT_NODE)
    node = node->next;
  return node;
}

xmlNode *
fp_read_first (const xmlNode *node)
{
  return skip_to_element (node->children);
}

xmlNode *
fp_read_next (const xmlNode *node)
{
  return skip_to_element (node->next);
}

guint
fp_read_count (const xmlNode *node)
{
  guint n = 0;

  for (const xmlNode *child = fp_read_first (node); child != NULL; child = fp_read_next (child))
    n++;
  return n;
}

const char *
fp_read_text (FpReader *self, const xmlNode *node)
{
  g_autoptr (GString) text = g_string_new ("");

  for (const xmlNode *child = node->children; child != NULL; child = child->next)
    if (child->type == XML_TEXT_NODE || child->type == XML_CDATA_SECTION_NODE)
      g_string_append (text, (const char *) child->content);
    else if (child->type != XML_COMMENT_NODE && child->type != XML_PI_NODE)
      {
        fp_read_refuse (self, child->type == XML_ELEMENT_NODE ? child : node, FP_ERROR_INVALID,
                        "<%.80s> was found in <%s>, where only text is expected", fp_read_name (child),
                        fp_read_name (node));
        return NULL;
      }
  return g_string_chunk_insert (self->texts, text->str);
}

/* --- attributes --- */

gboolean
fp_read_knows_attributes (FpReader *self, const xmlNode *node, const char *const *known)
{
  g_autofree char *all = NULL;

  for (const xmlAttr *a = node->properties; a != NULL; a = a->next)
    if (a->ns != NULL || !g_strv_contains (known, (const char *) a->name))
      {
        all = g_strjoinv (", ", (char **) known);
        return fp_read_refuse (self, node, FP_ERROR_INVALID, "<%s> has no attribute “%.80s”; %s%s", fp_read_name (node),
                               (const char *) a->name, all[0] != '\0' ? "it may have: " : "it has none", all);
      }
  return TRUE;
}

const char *
fp_read_attribute (FpReader *self, const xmlNode *node, const char *name)
{
  xmlChar *value = xmlGetNoNsProp ((xmlNode *) node, (const xmlChar *) name);
  const char *kept = value != NULL ? g_string_chunk_insert (self->texts, (const char *) value) : NULL;

  xmlFree (value);
  return kept;
}

const char *
fp_read_needed_attribute (FpReader *self, const xmlNode *node, const char *name)
{
  const char *value = fp_read_attribute (self, node, name);

  if (value == NULL)
    fp_read_refuse (self, node, FP_ERROR_INVALID, "<%s> has no “%s”; %s=\"…\" is expected", fp_read_name (node), name,
                    name);
  return value;
}

static gboolean
has_decimal_syntax (const char *text)
{
  const char *c = text + (*text == '-');

  if (!g_ascii_isdigit (*c))
    return FALSE;
  while (g_ascii_isdigit (*c))
    c++;
  if (*c == '.' && g_ascii_isdigit (c[1]))
    for (c++; g_ascii_isdigit (*c);)
      c++;
  return *c == '\0';
}

gboolean
fp_read_number_text (FpReader *self, const xmlNode *node, const char *what, const char *text, double *value)
{
  if (!has_decimal_syntax (text))
    return fp_read_refuse (self, node, FP_ERROR_RANGE, "%s is “%.40s”; a decimal number such as 1067 or -152.4 is "
                           "expected", what, text);
  if (strlen (text) > NUMBER_MAX || !isfinite (g_ascii_strtod (text, NULL)))
    return fp_read_refuse (self, node, FP_ERROR_RANGE, "%s is %.40s… with %" G_GSIZE_FORMAT " characters, which is "
                           "no number of use", what, text, strlen (text));
  *value = g_ascii_strtod (text, NULL);
  return TRUE;
}

gboolean
fp_read_number (FpReader *self, const xmlNode *node, const char *name, double *value)
{
  const char *text = fp_read_attribute (self, node, name);

  return text == NULL || fp_read_number_text (self, node, name, text, value);
}
