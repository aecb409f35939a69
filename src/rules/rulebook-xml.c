/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "rulebook-xml.h"

#include "rulebook-private.h"

#include <libxml/parser.h>
#include <libxml/relaxng.h>
#include <libxml/xmlschemastypes.h>

/* No DTD, and so no entities: the parser stops where one begins. */
static void
refuse_dtd (void *data, const xmlChar *name, const xmlChar *external, const xmlChar *system)
{
  xmlParserCtxt *parser = data;

  (void) name;
  (void) external;
  (void) system;
  *(gboolean *) parser->_private = TRUE;
  xmlStopParser (parser);
}

static xmlDoc *
parse_xml (const char *xml, gsize length, const char *name, GError **error)
{
  xmlParserCtxt *parser = xmlNewParserCtxt ();
  gboolean dtd = FALSE;
  xmlDoc *doc;

  parser->_private = &dtd;
  parser->sax->internalSubset = refuse_dtd;
  doc = xmlCtxtReadMemory (parser, xml, (int) length, name, NULL,
                           XML_PARSE_NONET | XML_PARSE_NOERROR | XML_PARSE_NOWARNING | XML_PARSE_NOCDATA);
  if (dtd || !doc || !parser->wellFormed)
    {
      const xmlError *why = xmlCtxtGetLastError (parser);
      g_autofree char *message = g_strstrip (g_strdup (why && why->message ? why->message : "not XML"));

      if (dtd)
        g_set_error (error, FP_ERROR, FP_ERROR_INVALID, "%s:%d: a document type is not allowed", name,
                     parser->input ? parser->input->line : 1);
      else
        g_set_error (error, FP_ERROR, FP_ERROR_SYNTAX, "%s:%d: not well-formed: %s", name,
                     why ? why->line : 1, message);
      g_clear_pointer (&doc, xmlFreeDoc);
    }
  xmlFreeParserCtxt (parser);
  return doc;
}

static void
first_error (void *data, xmlErrorPtr found)
{
  GString *first = data;

  if (first->len == 0 && found->message)
    g_string_printf (first, "%d: %s", found->line, found->message);
}

/* libxml2 makes these tables when they are first asked for, and takes no lock. */
static void
make_tables_once (void)
{
  static gsize ready = 0;

  if (g_once_init_enter (&ready))
    {
      xmlInitParser ();
      xmlSchemaInitTypes ();
      xmlRelaxNGInitTypes ();
      g_once_init_leave (&ready, 1);
    }
}

static xmlRelaxNG *
schema (void)
{
  static gsize ready = 0;
  static xmlRelaxNG *parsed;

  if (g_once_init_enter (&ready))
    {
      gsize length;
      const char *rng = fp_rulebook_schema (&length);
      xmlRelaxNGParserCtxt *parser = xmlRelaxNGNewMemParserCtxt (rng, (int) length);

      parsed = xmlRelaxNGParse (parser);
      xmlRelaxNGFreeParserCtxt (parser);
      g_once_init_leave (&ready, 1);
    }
  return parsed;
}

/* The schema that is given to those who write rulebooks may not allow less than the reader, nor more. */
gboolean
fp_rulebook_fits_schema (xmlDoc *doc, const char *name, GError **error)
{
  xmlRelaxNGValidCtxt *valid = xmlRelaxNGNewValidCtxt (schema ());
  g_autoptr (GString) first = g_string_new (NULL);
  gboolean fits;

  xmlRelaxNGSetValidStructuredErrors (valid, first_error, first);
  fits = xmlRelaxNGValidateDoc (valid, doc) == 0;
  xmlRelaxNGFreeValidCtxt (valid);
  if (!fits)
    g_set_error (error, FP_ERROR, FP_ERROR_INVALID, "%s:%s", name, g_strstrip (first->str));
  return fits;
}

xmlDoc *
fp_rulebook_xml (const char *xml, gsize length, const char *name, GError **error)
{
  make_tables_once ();
  return parse_xml (xml, length, name, error);
}
