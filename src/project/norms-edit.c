/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/norms-edit.h"

#include <string.h>

/* Each list of the norms is copied but for what is to go, and what is new is put at its end. */

static FpProject *
next_with (const FpProject *project, const FpNorms *norms, GError **error)
{
  return fp_project_with_norms (project, norms, error);
}

FpProject *
fp_norms_set_jurisdiction (const FpProject *project, FpJurisdiction one, GError **error)
{
  FpNorms norms = *fp_project_norms (project);

  norms.jurisdiction = one;
  return next_with (project, &norms, error);
}

FpProject *
fp_norms_set_followed (const FpProject *project, const char *book, gboolean followed, GError **error)
{
  FpNorms norms = *fp_project_norms (project);
  g_autoptr (GPtrArray) without = g_ptr_array_new ();

  for (guint i = 0; i < norms.n_without; i++)
    if (strcmp (norms.without[i], book) != 0)
      g_ptr_array_add (without, (gpointer) norms.without[i]);
  if (!followed)
    g_ptr_array_add (without, (gpointer) book);
  norms.without = (const char *const *) without->pdata;
  norms.n_without = without->len;
  return next_with (project, &norms, error);
}

static GArray *
changes_but (const FpNorms *norms, const char *book, const char *rule)
{
  GArray *changes = g_array_new (FALSE, FALSE, sizeof (FpNormChange));
  const FpNormChange *gone = fp_norms_change (norms, book, rule);

  for (guint i = 0; i < norms->n_changes; i++)
    if (&norms->change[i] != gone)
      g_array_append_val (changes, norms->change[i]);
  return changes;
}

static FpProject *
with_changes (const FpProject *project, const GArray *changes, GError **error)
{
  FpNorms norms = *fp_project_norms (project);

  norms.change = (const FpNormChange *) (gconstpointer) changes->data;
  norms.n_changes = changes->len;
  return next_with (project, &norms, error);
}

FpProject *
fp_norms_hold_otherwise (const FpProject *project, const FpNormChange *change, GError **error)
{
  g_autoptr (GArray) changes = changes_but (fp_project_norms (project), change->book, change->rule);

  g_array_append_vals (changes, change, 1);
  return with_changes (project, changes, error);
}

FpProject *
fp_norms_hold_as_printed (const FpProject *project, const char *book, const char *rule, GError **error)
{
  g_autoptr (GArray) changes = changes_but (fp_project_norms (project), book, rule);

  return with_changes (project, changes, error);
}

static GArray *
choices_but (const FpNorms *norms, const char *matter)
{
  GArray *choices = g_array_new (FALSE, FALSE, sizeof (FpNormChoice));

  for (guint i = 0; i < norms->n_choices; i++)
    if (strcmp (norms->choice[i].matter, matter) != 0)
      g_array_append_val (choices, norms->choice[i]);
  return choices;
}

static FpProject *
with_choices (const FpProject *project, const GArray *choices, GError **error)
{
  FpNorms norms = *fp_project_norms (project);

  norms.choice = (const FpNormChoice *) (gconstpointer) choices->data;
  norms.n_choices = choices->len;
  return next_with (project, &norms, error);
}

FpProject *
fp_norms_go_by (const FpProject *project, const FpNormChoice *choice, GError **error)
{
  g_autoptr (GArray) choices = choices_but (fp_project_norms (project), choice->matter);

  g_array_append_vals (choices, choice, 1);
  return with_choices (project, choices, error);
}

FpProject *
fp_norms_go_by_all (const FpProject *project, const char *matter, GError **error)
{
  g_autoptr (GArray) choices = choices_but (fp_project_norms (project), matter);

  return with_choices (project, choices, error);
}

static GArray *
books_but (const FpNorms *norms, const char *name)
{
  GArray *books = g_array_new (FALSE, FALSE, sizeof (FpNormBook));

  for (guint i = 0; i < norms->n_own; i++)
    if (strcmp (norms->own[i].name, name) != 0)
      g_array_append_val (books, norms->own[i]);
  return books;
}

static FpProject *
with_books (const FpProject *project, const GArray *books, GError **error)
{
  FpNorms norms = *fp_project_norms (project);

  norms.own = (const FpNormBook *) (gconstpointer) books->data;
  norms.n_own = books->len;
  return next_with (project, &norms, error);
}

FpProject *
fp_norms_add_book (const FpProject *project, const char *name, const char *xml, GError **error)
{
  g_autoptr (GArray) books = books_but (fp_project_norms (project), name);
  g_auto (GStrv) lines = g_strsplit (xml, "\r\n", -1);
  g_autofree char *plain = g_strjoinv ("\n", lines);
  const FpNormBook book = { name, plain };

  g_array_append_val (books, book);
  return with_books (project, books, error);
}

FpProject *
fp_norms_remove_book (const FpProject *project, const char *name, GError **error)
{
  g_autoptr (GArray) books = books_but (fp_project_norms (project), name);

  return with_books (project, books, error);
}
