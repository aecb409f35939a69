/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "check-books.h"

#include <string.h>

/* Not of the id of a built-in book, nor two of one: FALSE after having said so. */
static gboolean
is_of_its_own (GPtrArray *known, FpRulebook *book)
{
  g_autofree char *why = NULL, *reason = NULL;

  if (fp_rulebooks_add (known, book, &why))
    return TRUE;
  reason = g_strdup_printf ("--rulebook: %s", why);
  fp_command_fail (reason);
  return FALSE;
}

GPtrArray *
fp_check_books_asked (char *const *files)
{
  g_autoptr (GPtrArray) asked = g_ptr_array_new_with_free_func ((GDestroyNotify) fp_rulebook_unref);
  g_autoptr (GPtrArray) known = fp_rulebooks_built_in ();

  for (guint i = 0; files != NULL && files[i] != NULL; i++)
    {
      g_autoptr (GError) error = NULL;
      FpRulebook *book = fp_rulebook_load (files[i], &error);

      if (book == NULL)
        {
          fp_command_fail (error->message);
          return NULL;
        }
      g_ptr_array_add (asked, book);
      if (!is_of_its_own (known, book))
        return NULL;
    }
  return g_steal_pointer (&asked);
}

/* What a diocese gives is the edition that it holds now; what a project keeps may be an older one. */
static void
put (GPtrArray *books, FpRulebook *book)
{
  for (guint i = 0; i < books->len; i++)
    if (strcmp (fp_rulebook_id (books->pdata[i]), fp_rulebook_id (book)) == 0)
      {
        fp_rulebook_unref (books->pdata[i]);
        books->pdata[i] = fp_rulebook_ref (book);
        return;
      }
  g_ptr_array_add (books, fp_rulebook_ref (book));
}

GPtrArray *
fp_check_books_for (const FpProject *project, const GPtrArray *asked)
{
  GPtrArray *books = fp_rulebooks_for (project, NULL);

  for (guint i = 0; i < asked->len; i++)
    put (books, asked->pdata[i]);
  return books;
}
