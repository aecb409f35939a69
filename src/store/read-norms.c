/* SPDX-License-Identifier: GPL-3.0-or-later */
/* read-norms.c - <norms>: whose law, which books, what is held otherwise than it is printed, and books of the project's own */
#include "read-parts.h"

#include <math.h>

void
fp_read_norms_init (FpReadNorms *self)
{
  self->norms = fp_norms_usual;
  self->without = g_array_new (FALSE, FALSE, sizeof (const char *));
  self->changes = g_array_new (FALSE, FALSE, sizeof (FpNormChange));
  self->choices = g_array_new (FALSE, FALSE, sizeof (FpNormChoice));
  self->own = g_array_new (FALSE, FALSE, sizeof (FpNormBook));
}

void
fp_read_norms_clear (FpReadNorms *self)
{
  g_array_unref (self->without);
  g_array_unref (self->changes);
  g_array_unref (self->choices);
  g_array_unref (self->own);
}

static gboolean
is_empty (FpReader *r, const xmlNode *node)
{
  if (!fp_read_has_only_elements (r, node))
    return FALSE;
  return fp_read_first (node) == NULL
         || fp_read_refuse (r, fp_read_first (node), FP_ERROR_INVALID, "<%.80s> was found in <%s>, where nothing is expected",
                            fp_read_name (fp_read_first (node)), fp_read_name (node));
}

/* What is read of one element: at most so many of them. */
static gboolean
has_room (FpReader *r, const xmlNode *node, const GArray *list, guint most)
{
  return list->len < most
         || fp_read_refuse (r, node, FP_ERROR_LIMIT, "there are more than %u of <%s>", most, fp_read_name (node));
}

static gboolean
read_without (FpReader *r, const xmlNode *node, FpReadNorms *norms)
{
  static const char *const known[] = { "book", NULL };
  const char *book;

  if (!has_room (r, node, norms->without, FP_NORM_BOOKS_MAX) || !fp_read_knows_attributes (r, node, known)
      || !is_empty (r, node) || (book = fp_read_needed_attribute (r, node, "book")) == NULL)
    return FALSE;
  g_array_append_val (norms->without, book);
  return TRUE;
}

static gboolean
read_choice (FpReader *r, const xmlNode *node, FpReadNorms *norms)
{
  static const char *const known[] = { "matter", "book", "rule", NULL };
  FpNormChoice choice;

  if (!has_room (r, node, norms->choices, FP_NORM_CHANGES_MAX) || !fp_read_knows_attributes (r, node, known)
      || !is_empty (r, node) || (choice.matter = fp_read_needed_attribute (r, node, "matter")) == NULL
      || (choice.book = fp_read_needed_attribute (r, node, "book")) == NULL
      || (choice.rule = fp_read_needed_attribute (r, node, "rule")) == NULL)
    return FALSE;
  g_array_append_val (norms->choices, choice);
  return TRUE;
}

static gboolean
read_change (FpReader *r, const xmlNode *node, FpReadNorms *norms)
{
  static const char *const of_aside[] = { "book", "rule", "reason", NULL };
  static const char *const of_limit[] = { "book", "rule", "low", "high", "reason", NULL };
  FpNormChange change = { .aside = fp_read_is (node, "aside"), .low = NAN, .high = NAN };

  if (!has_room (r, node, norms->changes, FP_NORM_CHANGES_MAX)
      || !fp_read_knows_attributes (r, node, change.aside ? of_aside : of_limit) || !is_empty (r, node)
      || (change.book = fp_read_needed_attribute (r, node, "book")) == NULL
      || (change.rule = fp_read_needed_attribute (r, node, "rule")) == NULL
      || (change.reason = fp_read_needed_attribute (r, node, "reason")) == NULL)
    return FALSE;
  if (!change.aside && (!fp_read_number (r, node, "low", &change.low) || !fp_read_number (r, node, "high", &change.high)))
    return FALSE;
  g_array_append_val (norms->changes, change);
  return TRUE;
}

/* --- a book of the project's own ---------------------------------------------------- */

static gboolean
read_lines (FpReader *r, const xmlNode *node, GString *text)
{
  for (const xmlNode *child = fp_read_first (node); child != NULL; child = fp_read_next (child))
    {
      static const char *const known[] = { NULL };
      const char *line;

      if (!fp_read_is (child, "line"))
        return fp_read_refuse (r, child, FP_ERROR_INVALID, "<%.80s> was found in <own>; <line> is expected there",
                               fp_read_name (child));
      if (!fp_read_knows_attributes (r, child, known) || (line = fp_read_text (r, child)) == NULL)
        return FALSE;
      g_string_append (text, line);
      if (text->len > FP_NORM_OWN_BYTES)
        return fp_read_refuse (r, child, FP_ERROR_LIMIT, "the rulebook is longer than %d bytes", FP_NORM_OWN_BYTES);
      if (fp_read_next (child) != NULL)
        g_string_append_c (text, '\n');
    }
  return TRUE;
}

static gboolean
read_own (FpReader *r, const xmlNode *node, FpReadNorms *norms)
{
  static const char *const known[] = { "name", NULL };
  g_autoptr (GString) text = g_string_new (NULL);
  FpNormBook book;

  if (!has_room (r, node, norms->own, FP_NORM_OWN_MAX) || !fp_read_knows_attributes (r, node, known)
      || !fp_read_has_only_elements (r, node) || (book.name = fp_read_needed_attribute (r, node, "name")) == NULL
      || !read_lines (r, node, text))
    return FALSE;
  book.xml = g_string_chunk_insert (r->texts, text->str);
  g_array_append_val (norms->own, book);
  return TRUE;
}

/* --- all of them ------------------------------------------------------------------- */

static gboolean
read_one (FpReader *r, const xmlNode *node, FpReadNorms *norms)
{
  if (fp_read_is (node, "without"))
    return read_without (r, node, norms);
  if (fp_read_is (node, "choice"))
    return read_choice (r, node, norms);
  if (fp_read_is (node, "aside") || fp_read_is (node, "limit"))
    return read_change (r, node, norms);
  if (fp_read_is (node, "own"))
    return read_own (r, node, norms);
  return fp_read_refuse (r, node, FP_ERROR_INVALID,
                         "<%.80s> was found in <norms>; <without>, <choice>, <aside>, <limit> or <own> is expected there",
                         fp_read_name (node));
}

gboolean
fp_read_norms (FpReader *r, const xmlNode *node, FpReadNorms *norms)
{
  static const char *const known[] = { "jurisdiction", NULL };
  const char *jurisdiction;
  GError *error = NULL;

  if (!fp_read_knows_attributes (r, node, known) || !fp_read_has_only_elements (r, node)
      || (jurisdiction = fp_read_needed_attribute (r, node, "jurisdiction")) == NULL)
    return FALSE;
  if (!fp_jurisdiction_find (jurisdiction, &norms->norms.jurisdiction))
    return fp_read_refuse (r, node, FP_ERROR_INVALID, "jurisdiction is “%.40s”; unsaid, us, uk, eu or other is expected",
                           jurisdiction);
  for (const xmlNode *child = fp_read_first (node); child != NULL; child = fp_read_next (child))
    if (!read_one (r, child, norms))
      return FALSE;
  norms->norms = (FpNorms) { norms->norms.jurisdiction,
                             (const char *const *) (gpointer) norms->without->data, norms->without->len,
                             (const FpNormChange *) (gpointer) norms->changes->data, norms->changes->len,
                             (const FpNormChoice *) (gpointer) norms->choices->data, norms->choices->len,
                             (const FpNormBook *) (gpointer) norms->own->data, norms->own->len };
  return fp_norms_check (&norms->norms, &error) || fp_read_refuse_error (r, fp_read_line (node), error);
}
