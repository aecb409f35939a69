/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The books that a project is held against: those that are built in, and its own. */
#include "footpace/rules.h"

#include "rulebook-private.h"

#include <string.h>

/* A book is read once: findings are asked for at every step of a drag.  Of what a project no longer has, the oldest goes. */
#define KEPT_MOST 32

typedef struct
{
  char       *name, *xml;
  FpRulebook *book;  /* NULL: it is none                                       */
  char       *why;   /* then                                                   */
} Kept;

static GMutex lock;
static GQueue kept = G_QUEUE_INIT; /* of Kept, the newest first; guarded by the lock */

static void
kept_free (Kept *self)
{
  g_free (self->name);
  g_free (self->xml);
  fp_rulebook_unref (self->book);
  g_free (self->why);
  g_free (self);
}

static Kept *
kept_find (const FpNormBook *own)
{
  for (GList *link = kept.head; link; link = link->next)
    {
      Kept *one = link->data;

      if (strcmp (one->name, own->name) == 0 && strcmp (one->xml, own->xml) == 0)
        return one;
    }
  return NULL;
}

static Kept *
kept_read (const FpNormBook *own)
{
  g_autoptr (GError) error = NULL;
  Kept *one = g_new0 (Kept, 1);

  one->name = g_strdup (own->name);
  one->xml = g_strdup (own->xml);
  one->book = fp_rulebook_parse (own->xml, strlen (own->xml), own->name, &error);
  if (!one->book)
    one->why = g_strdup (error->message);
  g_queue_push_head (&kept, one);
  if (kept.length > KEPT_MOST)
    kept_free (g_queue_pop_tail (&kept));
  return one;
}

/* A reference to the book; NULL, and why, where it is none. */
static FpRulebook *
read_own (const FpNormBook *own, char **why)
{
  FpRulebook *book = NULL;
  Kept *one;

  g_mutex_lock (&lock);
  one = kept_find (own);
  if (!one)
    one = kept_read (own);
  if (one->book)
    book = fp_rulebook_ref (one->book);
  else
    *why = g_strdup (one->why);
  g_mutex_unlock (&lock);
  return book;
}

gboolean
fp_rulebooks_add (GPtrArray *books, FpRulebook *book, char **why)
{
  for (guint i = 0; i < books->len; i++)
    if (strcmp (fp_rulebook_id (books->pdata[i]), fp_rulebook_id (book)) == 0)
      {
        *why = g_strdup_printf ("there is a book “%s” already (%s): give this one an id of its own", fp_rulebook_id (book),
                                fp_rulebook_title (books->pdata[i]));
        return FALSE;
      }
  g_ptr_array_add (books, fp_rulebook_ref (book));
  return TRUE;
}

/* A reason is a sentence, or the end of one. */
static char *
left_out_words (const char *name, const char *why)
{
  const gsize length = strlen (why);
  const gboolean ends = length > 0 && strchr (".?!", why[length - 1]) != NULL;

  return g_strdup_printf ("The rulebook “%s” is left out: %s%s", name, why, ends ? "" : ".");
}

GPtrArray *
fp_rulebooks_for (const FpProject *project, GPtrArray *left_out)
{
  const FpNorms *norms = fp_project_norms (project);
  GPtrArray *books = fp_rulebooks_built_in ();

  for (guint i = 0; i < norms->n_own; i++)
    {
      g_autofree char *why = NULL;
      g_autoptr (FpRulebook) book = read_own (&norms->own[i], &why);

      if (book)
        fp_rulebooks_add (books, book, &why);
      if (why && left_out)
        g_ptr_array_add (left_out, left_out_words (norms->own[i].name, why));
    }
  return books;
}

const char *
fp_rulebook_own_name (const FpProject *project, const FpRulebook *book)
{
  const FpNorms *norms = fp_project_norms (project);

  for (guint i = 0; i < norms->n_own; i++)
    {
      g_autofree char *why = NULL;
      g_autoptr (FpRulebook) own = read_own (&norms->own[i], &why);

      if (own && strcmp (fp_rulebook_id (own), fp_rulebook_id (book)) == 0)
        return norms->own[i].name;
    }
  return NULL;
}

static const FpRulebook *
find_id (const GPtrArray *books, const char *id)
{
  for (guint i = 0; i < books->len; i++)
    if (strcmp (fp_rulebook_id (books->pdata[i]), id) == 0)
      return books->pdata[i];
  return NULL;
}

void
fp_rulebooks_tell_in_place (const GPtrArray *books, const FpProject *project, const GPtrArray *own, GPtrArray *to)
{
  for (guint i = 0; i < books->len; i++)
    {
      const FpRulebook *book = books->pdata[i], *was = find_id (own, book->id);

      if (was && was != book && strcmp (was->sum, book->sum) != 0 && fp_rulebook_own_name (project, was))
        g_ptr_array_add (to, g_strdup_printf ("“%s”, edition %s, is held in place of edition %s that the project keeps.", book->title,
                                              book->edition, was->edition));
    }
}
