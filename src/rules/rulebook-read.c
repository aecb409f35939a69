/* SPDX-License-Identifier: GPL-3.0-or-later */
/* A rulebook from XML.  It may come from anyone: no network, no DTD, limits on size.  A fault leaves the whole book
 * out. */
#include "rulebook-reader.h"
#include "rulebook-xml.h"

#include <string.h>

/* What is said of the whole book. */
static void
read_head (const FpBookReader *reader, const xmlNode *root)
{
  static const char *const attributes[] = { "id", "title", "edition", "jurisdictions", NULL };

  fp_book_only_attributes (reader, root, attributes);
  fp_book_needed_id (reader, root, "id", &reader->book->id);
  fp_book_needed (reader, root, "title", &reader->book->title);
  fp_book_needed (reader, root, "edition", &reader->book->edition);
  fp_book_jurisdictions (reader, root, &reader->book->jurisdictions);
}

static void
read_book (const FpBookReader *reader, const xmlNode *root)
{
  if (!root || !fp_book_names (root, "rulebook"))
    {
      fp_book_fault (reader, root, FP_ERROR_INVALID, "found “%s”, expected “rulebook” of %s",
                     root ? (const char *) root->name : "nothing", FP_RULEBOOK_NAMESPACE);
      return;
    }
  read_head (reader, root);
  for (const xmlNode *child = root->children; child; child = child->next)
    if (child->type != XML_ELEMENT_NODE)
      fp_book_nothing_said (reader, child);
    else if (!fp_book_names (child, "rule"))
      fp_book_fault (reader, child, FP_ERROR_INVALID, "found “%s”, expected “rule”", (const char *) child->name);
    else
      fp_book_rule (reader, child);
  if (reader->book->rules->len == 0 && reader->faults->len == 0)
    fp_book_fault (reader, root, FP_ERROR_INVALID, "a rulebook without rules");
}

/* All of them, a line each, under the code of the first. */
static void
tell_faults (const FpBookReader *reader, GError **error)
{
  const GError *first = g_ptr_array_index (reader->faults, 0);
  g_autoptr (GString) all = g_string_new (NULL);

  for (guint i = 0; i < reader->faults->len; i++)
    g_string_append_printf (all, "%s%s", i > 0 ? "\n" : "", ((const GError *) g_ptr_array_index (reader->faults, i))->message);
  g_set_error_literal (error, FP_ERROR, first->code, all->str);
}

static void
free_error (gpointer error)
{
  g_error_free (error);
}

/* The same of a file as it is and as a project keeps it: its lines end in LF, its end may be without one. */
static void
add_sum (FpRulebook *book, const char *xml, gsize length)
{
  g_autoptr (GChecksum) sum = g_checksum_new (G_CHECKSUM_SHA256);
  const char *end = xml + length;

  while (end > xml && g_ascii_isspace (end[-1]))
    end--;
  for (const char *from = xml; from < end;)
    {
      const char *cr = memchr (from, '\r', (gsize) (end - from)), *to = cr ? cr : end;

      g_checksum_update (sum, (const guchar *) from, to - from);
      from = to + (cr != NULL);
    }
  book->sum = g_string_chunk_insert (book->text, g_checksum_get_string (sum));
}

FpRulebook *
fp_rulebook_parse (const char *xml, gsize length, const char *name, GError **error)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func (free_error);
  FpBookReader reader = { name ? name : "rulebook", NULL, faults };
  gboolean good;
  xmlDoc *doc;

  if (length > FP_RULEBOOK_BYTES_MAX)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_LIMIT, "%s:1: larger than %u bytes", reader.name, FP_RULEBOOK_BYTES_MAX);
      return NULL;
    }
  doc = fp_rulebook_xml (xml, length, reader.name, error);
  if (!doc)
    return NULL;

  reader.book = fp_rulebook_new_empty ();
  add_sum (reader.book, xml, length);
  read_book (&reader, xmlDocGetRootElement (doc));
  if (faults->len > 0)
    tell_faults (&reader, error);
  good = faults->len == 0 && fp_rulebook_fits_schema (doc, reader.name, error);
  xmlFreeDoc (doc);
  if (!good)
    g_clear_pointer (&reader.book, fp_rulebook_unref);
  return reader.book;
}
