/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "parse-xml.h"

#include <libxml/parser.h>
#include <libxml/SAX2.h>
#include <libxml/xmlerror.h>

#include <string.h>

#define NAMESPACE_STEM "urn:footpace:project:"

#if LIBXML_VERSION >= 21200
typedef const xmlError XmlError;
#else
typedef xmlError XmlError;
#endif

/* One parse, as the callbacks of libxml2 see it. */
typedef struct
{
  const char *name;
  GError     *error;    /* the first one: what follows it is its echo       */
  guint       depth, elements;
  guint       version;  /* of the root, 0 while it has not been seen        */
} Parse;

/* What was shortened by bytes may end within a letter, which neither a terminal nor a label shows. */
static void
drop_cut_letters (char *text)
{
  const char *bad;

  while (!g_utf8_validate (text, -1, &bad))
    {
      text += bad - text;
      memmove (text, text + 1, strlen (text));
    }
}

char *
fp_xml_one_line (char *text)
{
  drop_cut_letters (text);
  for (char *c = text; *c != '\0'; c++)
    {
      const gboolean upper = c[0] == '\302' && (guchar) c[1] >= 0x80 && (guchar) c[1] < 0xa0; /* U+0080 to U+009F */
      if (g_ascii_iscntrl (*c) || upper)
        *c = ' ';
      if (upper)
        *++c = ' ';
    }
  return text;
}

static void
complain (Parse *p, int line, FpError code, const char *format, ...) G_GNUC_PRINTF (4, 5);

static void
complain (Parse *p, int line, FpError code, const char *format, ...)
{
  g_autofree char *what = NULL;
  va_list args;

  if (p->error != NULL)
    return;
  va_start (args, format);
  what = g_strdup_vprintf (format, args);
  va_end (args);
  p->error = g_error_new (FP_ERROR, (int) code, "%s:%d: %s", p->name, MAX (line, 1), fp_xml_one_line (what));
}

static void
stop (xmlParserCtxt *ctxt, FpError code, const char *what)
{
  complain (ctxt->_private, xmlSAX2GetLineNumber (ctxt), code, "%s", what);
  xmlStopParser (ctxt);
}

/* --- what libxml2 finds wrong, in plain words --- */

static const struct
{
  int         code;
  const char *says; /* may have one %s: the first word that libxml2 names    */
} plain_words[] = {
  { XML_ERR_DOCUMENT_EMPTY, "this is not XML; a Footpace project is expected" },
  { XML_ERR_DOCUMENT_END, "something follows the end of the project; nothing is expected after </project>" },
  { XML_ERR_TAG_NOT_FINISHED, "the file ends before <%s> is closed" },
  { XML_ERR_GT_REQUIRED, "<%s> is not finished; “>” or “/>” is expected" },
  { XML_ERR_UNDECLARED_ENTITY, "“&%s;” is not defined; only &amp; &lt; &gt; &quot; &apos; are" },
  { XML_ERR_ENTITYREF_SEMICOL_MISSING, "a “&” without an end; write &amp; for the sign itself" },
  { XML_ERR_ATTRIBUTE_NOT_STARTED, "a value has no quotation marks; \" or ' is expected before it" },
  { XML_ERR_ATTRIBUTE_NOT_FINISHED, "the quotation marks of a value are not closed" },
  { XML_ERR_ATTRIBUTE_WITHOUT_VALUE, "“%s” has no value; =\"…\" is expected after it" },
  { XML_ERR_ATTRIBUTE_REDEFINED, "“%s” is given twice in one element" },
  { XML_ERR_LT_IN_ATTRIBUTE, "a “<” within a value; write &lt; for the sign itself" },
  { XML_ERR_SPACE_REQUIRED, "a space is missing between two attributes" },
  { XML_ERR_INVALID_CHAR, "a control character that XML does not allow" },
  { XML_ERR_INVALID_CHARREF, "a control character that XML does not allow" },
  { XML_NS_ERR_UNDEFINED_NAMESPACE, "the prefix “%s” stands for no namespace" },
};

static char *
in_plain_words (XmlError *e)
{
  const char *word = e->str1 != NULL ? e->str1 : "?";

  if (e->code == XML_ERR_TAG_NAME_MISMATCH)
    return g_strdup_printf ("</%s> was found; </%s> is expected, which was opened on line %d",
                            e->str2 != NULL ? e->str2 : "?", word, e->int1);
  for (guint i = 0; i < G_N_ELEMENTS (plain_words); i++)
    if (plain_words[i].code == e->code)
      {
        g_auto (GStrv) halves = g_strsplit (plain_words[i].says, "%s", 2);
        return g_strjoinv (word, halves);
      }
  return g_strdup (e->message != NULL ? e->message : "it cannot be read");
}

static void
on_error (void *data, XmlError *e)
{
  xmlParserCtxt *ctxt = data;
  Parse *p = ctxt->_private;
  g_autofree char *what = in_plain_words (e);

  if (e->level >= XML_ERR_ERROR)
    complain (p, e->line, FP_ERROR_SYNTAX, "not well-formed XML: %s", g_strchomp (what));
}

/* --- what we refuse while it is read, before it can grow --- */

static void
on_document_type (void *data, const xmlChar *name, const xmlChar *external, const xmlChar *system)
{
  (void) name, (void) external, (void) system;
  stop (data, FP_ERROR_INVALID, "<!DOCTYPE was found; a Footpace project has no document type and no entities of its "
        "own");
}

/* A whole number; 0 when it is none, the greatest when it is greater than that. */
static guint
number_of (const char *text, gsize length)
{
  guint n = 0;

  for (gsize i = 0; i < length; i++)
    {
      if (!g_ascii_isdigit (text[i]))
        return 0;
      n = n < G_MAXUINT / 10 - 1 ? n * 10 + (guint) g_ascii_digit_value (text[i]) : G_MAXUINT;
    }
  return n;
}

/* @attributes as libxml2 hands them over: five pointers each. */
static guint
version_attribute (const xmlChar **attributes, int n)
{
  for (int i = 0; i < n; i++, attributes += 5)
    if (attributes[1] == NULL && strcmp ((const char *) attributes[0], "version") == 0)
      return number_of ((const char *) attributes[3], (gsize) (attributes[4] - attributes[3]));
  return 0;
}

static void
check_root (xmlParserCtxt *ctxt, const char *element, const char *ns, guint version)
{
  Parse *p = ctxt->_private;
  const char *stem = ns != NULL && g_str_has_prefix (ns, NAMESPACE_STEM) ? ns + strlen (NAMESPACE_STEM) : "";
  const guint format = number_of (stem, strlen (stem));
  const int line = xmlSAX2GetLineNumber (ctxt);

  p->version = MAX (format, version);
  if (strcmp (element, "project") != 0 || format == 0)
    complain (p, line, FP_ERROR_INVALID, "<%.80s> of the namespace “%.80s” was found; a Footpace project begins with "
              "<project xmlns=\"%s\" version=\"1\">", element, ns != NULL ? ns : "", FP_STORE_NAMESPACE);
  else if (p->version > FP_STORE_VERSION)
    complain (p, line, FP_ERROR_VERSION, "this project was written by a later version of Footpace (its format is %u, "
              "this program reads %u); a newer Footpace is needed to open it", p->version, FP_STORE_VERSION);
  else if (version != FP_STORE_VERSION)
    complain (p, line, FP_ERROR_INVALID, "<project> does not say its version; version=\"%u\" is expected",
              FP_STORE_VERSION);
  if (p->error != NULL)
    xmlStopParser (ctxt);
}

static void
on_start (void *data, const xmlChar *element, const xmlChar *prefix, const xmlChar *ns, int n_namespaces,
          const xmlChar **namespaces, int n_attributes, int n_defaulted, const xmlChar **attributes)
{
  xmlParserCtxt *ctxt = data;
  Parse *p = ctxt->_private;

  if (p->depth == 0)
    check_root (ctxt, (const char *) element, (const char *) ns, version_attribute (attributes, n_attributes));
  if (++p->depth > FP_STORE_DEPTH_MAX)
    stop (ctxt, FP_ERROR_LIMIT, "elements lie deeper in each other than " G_STRINGIFY (FP_STORE_DEPTH_MAX)
          ", the most that is read");
  if (++p->elements > FP_STORE_ELEMENTS_MAX)
    stop (ctxt, FP_ERROR_LIMIT, "more than " G_STRINGIFY (FP_STORE_ELEMENTS_MAX) " elements, the most that are read");
  if (n_attributes > FP_STORE_ATTRIBUTES_MAX || n_namespaces > FP_STORE_ATTRIBUTES_MAX)
    stop (ctxt, FP_ERROR_LIMIT, "more than " G_STRINGIFY (FP_STORE_ATTRIBUTES_MAX) " attributes in one element, the "
          "most that are read");
  if (p->error == NULL)
    xmlSAX2StartElementNs (ctxt, element, prefix, ns, n_namespaces, namespaces, n_attributes, n_defaulted, attributes);
}

static void
on_end (void *data, const xmlChar *element, const xmlChar *prefix, const xmlChar *ns)
{
  xmlParserCtxt *ctxt = data;
  Parse *p = ctxt->_private;

  p->depth--;
  if (p->error == NULL)
    xmlSAX2EndElementNs (ctxt, element, prefix, ns);
}

/* --- what we refuse before it is read --- */

static int
line_at (const char *bytes, const char *at)
{
  int line = 1;

  for (const char *c = bytes; c < at; c++)
    line += *c == '\n';
  return line;
}

/* libxml2 compares every attribute of an element with every other before it
 * calls us, so one endless tag would keep it busy for hours. */
static const char *
find_endless_piece (const char *bytes, gsize length)
{
  const char *begin = bytes, *end = bytes + length;

  while (begin < end)
    {
      const char *next = memchr (begin + 1, '<', (gsize) (end - begin - 1));
      if ((gsize) ((next != NULL ? next : end) - begin) > FP_STORE_PIECE_MAX)
        return begin;
      begin = next != NULL ? next : end;
    }
  return NULL;
}

static gboolean
bytes_are_fair (Parse *p, const char *bytes, gsize length)
{
  const char *bad;

  if (length == 0)
    complain (p, 1, FP_ERROR_SYNTAX, "the file is empty; a Footpace project is expected");
  else if (length > FP_STORE_BYTES_MAX)
    complain (p, 1, FP_ERROR_LIMIT, "it is %" G_GSIZE_FORMAT " bytes long, at most %u are read", length,
              FP_STORE_BYTES_MAX);
  else if (!g_utf8_validate_len (bytes, length, &bad))
    complain (p, line_at (bytes, bad), FP_ERROR_SYNTAX, "byte 0x%02X is not text in UTF-8; a Footpace project is "
              "expected", (guint) (guchar) *bad);
  else if ((bad = find_endless_piece (bytes, length)) != NULL)
    complain (p, line_at (bytes, bad), FP_ERROR_LIMIT, "an element or a text is longer than %d bytes, the most that "
              "is read", FP_STORE_PIECE_MAX);
  return p->error == NULL;
}

/* What <?xml encoding="…"?> says; NULL where it says nothing. */
static char *
declared_encoding (const char *bytes, gsize length)
{
  g_autofree char *head = g_strndup (bytes, MIN (length, 200));
  const char *declaration = g_str_has_prefix (head, "\357\273\277") ? head + 3 : head;
  const char *end = g_str_has_prefix (declaration, "<?xml") ? strstr (declaration, "?>") : NULL;
  const char *at = end != NULL ? g_strstr_len (declaration, end - declaration, "encoding") : NULL;

  if (at == NULL)
    return NULL;
  at += strlen ("encoding");
  at += strspn (at, " \t\r\n=\"'");
  return g_strndup (at, strcspn (at, " \t\r\n?\"'"));
}

/* A name of another encoding over bytes that are UTF-8 would garble every accent. */
static gboolean
encoding_is_fair (Parse *p, const char *bytes, gsize length)
{
  g_autofree char *encoding = declared_encoding (bytes, length);

  if (encoding != NULL && g_ascii_strcasecmp (encoding, "UTF-8") != 0 && g_ascii_strcasecmp (encoding, "US-ASCII") != 0)
    complain (p, 1, FP_ERROR_INVALID, "its encoding is “%.40s”; UTF-8 is expected", encoding);
  return p->error == NULL;
}

/* --- */

static xmlParserCtxt *
context_new (Parse *p)
{
  xmlParserCtxt *ctxt;

  xmlInitParser ();
  ctxt = xmlNewParserCtxt ();
  g_assert (ctxt != NULL); /* out of memory */
  ctxt->_private = p;
  ctxt->sax->serror = on_error;
  ctxt->sax->internalSubset = on_document_type;
  ctxt->sax->startElementNs = on_start;
  ctxt->sax->endElementNs = on_end;
  /* Nothing is done with these, and a million of them would fill the memory. */
  ctxt->sax->comment = NULL;
  ctxt->sax->processingInstruction = NULL;
  return ctxt;
}

static xmlDoc *
parse (Parse *p, const char *bytes, gsize length)
{
  xmlParserCtxt *ctxt = context_new (p);
  xmlDoc *doc;

  /* The encoding is told, so that none of the file's own choice is looked up. */
  doc = xmlCtxtReadMemory (ctxt, bytes, (int) length, NULL, "UTF-8",
                           XML_PARSE_NONET | XML_PARSE_NOCDATA | XML_PARSE_COMPACT | XML_PARSE_BIG_LINES);
  if (doc == NULL && ctxt->myDoc != NULL)
    {
      xmlFreeDoc (ctxt->myDoc);
      ctxt->myDoc = NULL;
    }
  xmlFreeParserCtxt (ctxt);
  return doc;
}

xmlDoc *
fp_xml_parse (const char *bytes, gsize length, const char *name, GError **error)
{
  Parse p = { .name = name };
  xmlDoc *doc = NULL;

  if (bytes_are_fair (&p, bytes, length) && encoding_is_fair (&p, bytes, length))
    doc = parse (&p, bytes, length);
  if (doc == NULL)
    complain (&p, 1, FP_ERROR_SYNTAX, "not well-formed XML");
  if (p.error != NULL)
    {
      g_clear_pointer (&doc, xmlFreeDoc);
      g_propagate_error (error, p.error);
    }
  return doc;
}

gboolean
fp_xml_is_later (const char *bytes, gsize length, guint *found)
{
  Parse p = { .name = "" };
  g_autoptr (xmlDoc) doc = parse (&p, bytes, MIN (length, FP_STORE_BYTES_MAX));
  const gboolean later = g_error_matches (p.error, FP_ERROR, FP_ERROR_VERSION);

  g_clear_error (&p.error);
  *found = p.version;
  return later;
}
