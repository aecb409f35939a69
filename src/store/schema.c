/* SPDX-License-Identifier: GPL-3.0-or-later */
/* schema.c - the RELAX NG schema, and whether it allows a tree */
#include "parse-xml.h"
#include "store-resources.h"

#include <libxml/relaxng.h>

/* The resource is asked for by name: nothing else would keep it in a static library. */
static GBytes *
schema_bytes (void)
{
  static gsize once = 0;
  static GBytes *bytes = NULL;

  if (g_once_init_enter (&once))
    {
      bytes = g_resource_lookup_data (fp_store_get_resource (), "/footpace/store/project.rng",
                                      G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
      g_once_init_leave (&once, 1);
    }
  return bytes;
}

const char *
fp_store_schema (gsize *length)
{
  return g_bytes_get_data (schema_bytes (), length);
}

/* Compiled once; validating only reads it, so every thread may share it. */
static xmlRelaxNG *
compiled_schema (void)
{
  static gsize once = 0;
  static xmlRelaxNG *schema = NULL;

  if (g_once_init_enter (&once))
    {
      gsize length;
      const char *text = fp_store_schema (&length);
      xmlRelaxNGParserCtxt *parser = xmlRelaxNGNewMemParserCtxt (text, (int) length);

      schema = xmlRelaxNGParse (parser);
      xmlRelaxNGFreeParserCtxt (parser);
      g_once_init_leave (&once, 1);
    }
  return schema;
}

typedef struct
{
  int   line;
  char *says; /* the first complaint */
} Complaint;

#if LIBXML_VERSION >= 21200
static void
on_invalid (void *data, const xmlError *e)
#else
static void
on_invalid (void *data, xmlError *e)
#endif
{
  Complaint *first = data;

  if (first->says != NULL || e->message == NULL)
    return;
  first->says = g_strchomp (g_strdup (e->message));
  first->line = e->node != NULL ? (int) xmlGetLineNo (e->node) : e->line;
}

gboolean
fp_xml_validate (xmlDoc *doc, const char *name, GError **error)
{
  xmlRelaxNGValidCtxt *ctxt = xmlRelaxNGNewValidCtxt (compiled_schema ());
  Complaint first = { 1, NULL };
  int result;

  xmlRelaxNGSetValidStructuredErrors (ctxt, on_invalid, &first);
  result = xmlRelaxNGValidateDoc (ctxt, doc);
  xmlRelaxNGFreeValidCtxt (ctxt);
  if (result != 0)
    g_set_error (error, FP_ERROR, FP_ERROR_INVALID, "%s:%d: not as the schema of a Footpace project allows: %s", name,
                 MAX (first.line, 1), first.says != NULL ? first.says : "unknown reason");
  g_free (first.says);
  return result == 0;
}
