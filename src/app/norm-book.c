/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "norm-book.h"

#include "footpace/norms-edit.h"

#include <string.h>

/* What is built in comes with the program, and no project replaces it. */
static gboolean
is_of_its_own (FpRulebook *book, GError **error)
{
  g_autoptr (GPtrArray) built_in = fp_rulebooks_built_in ();
  g_autofree char *why = NULL;

  if (fp_rulebooks_add (built_in, book, &why))
    return TRUE;
  g_set_error_literal (error, FP_ERROR, FP_ERROR_INVALID, why);
  return FALSE;
}

static char *
replaced_words (const FpProject *project, const FpRulebook *book, const char *name, const char *was_in)
{
  g_autoptr (GPtrArray) books = fp_rulebooks_for (project, NULL);

  for (guint i = 0; i < books->len; i++)
    if (strcmp (fp_rulebook_id (books->pdata[i]), fp_rulebook_id (book)) == 0)
      return g_strdup_printf ("“%s”, edition %s from “%s”, is replaced by edition %s from “%s”. Undo brings it back.",
                              fp_rulebook_title (books->pdata[i]), fp_rulebook_edition (books->pdata[i]), was_in,
                              fp_rulebook_edition (book), name);
  return NULL;
}

FpProject *
fp_norm_book_add (const FpProject *project, const char *name, const char *xml, char **said, GError **error)
{
  g_autoptr (FpRulebook) book = fp_rulebook_parse (xml, strlen (xml), name, error);
  g_autoptr (FpProject) without = NULL;
  const char *was_in;

  *said = NULL;
  if (book == NULL || !is_of_its_own (book, error))
    return NULL;
  was_in = fp_rulebook_own_name (project, book);
  if (was_in == NULL)
    return fp_norms_add_book (project, name, xml, error);
  without = fp_norms_remove_book (project, was_in, error);
  if (without == NULL)
    return NULL;
  *said = replaced_words (project, book, name, was_in);
  return fp_norms_add_book (without, name, xml, error);
}
