/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "rulebook-private.h"

#include "rules-resources.h"

#include <string.h>

#define ROOT "/org/footpace/rules/"

FpRulebook *
fp_rulebook_new_empty (void)
{
  FpRulebook *self = g_new0 (FpRulebook, 1);

  g_atomic_ref_count_init (&self->ref_count);
  self->text = g_string_chunk_new (4096);
  self->rules = g_array_new (FALSE, TRUE, sizeof (FpRule));
  self->id = self->title = self->edition = self->sum = "";
  return self;
}

FpRulebook *
fp_rulebook_ref (FpRulebook *self)
{
  g_atomic_ref_count_inc (&self->ref_count);
  return self;
}

void
fp_rulebook_unref (FpRulebook *self)
{
  if (!self || !g_atomic_ref_count_dec (&self->ref_count))
    return;
  g_string_chunk_free (self->text);
  g_array_unref (self->rules);
  g_free (self);
}

const char *
fp_rulebook_id (const FpRulebook *self)
{
  return self->id;
}

const char *
fp_rulebook_title (const FpRulebook *self)
{
  return self->title;
}

const char *
fp_rulebook_edition (const FpRulebook *self)
{
  return self->edition;
}

const FpRule *
fp_rulebook_rules (const FpRulebook *self, guint *n)
{
  *n = self->rules->len;
  return (const FpRule *) (gpointer) self->rules->data;
}

FpRulebook *
fp_rulebook_load (const char *path, GError **error)
{
  g_autoptr (GError) why = NULL;
  g_autofree char *xml = NULL;
  g_autofree char *name = g_filename_display_name (path);
  gsize length;

  if (!g_file_get_contents (path, &xml, &length, &why))
    {
      g_set_error (error, FP_ERROR, FP_ERROR_READ, "%s", why->message);
      return NULL;
    }
  return fp_rulebook_parse (xml, length, name, error);
}

/* --- built in ------------------------------------------------------------ */

/* Asked for by name: a resource that only registers itself is dropped from a static library. */
GBytes *
fp_rulebook_file (const char *path)
{
  g_autofree char *full = g_strconcat (ROOT, path, NULL);

  return g_resource_lookup_data (fp_rules_get_resource (), full, G_RESOURCE_LOOKUP_FLAGS_NONE, NULL);
}

const char *
fp_rulebook_schema (gsize *length)
{
  static gsize ready = 0;
  static GBytes *schema;
  gsize size = 0;
  const char *data;

  if (g_once_init_enter (&ready))
    {
      schema = fp_rulebook_file ("rulebook.rng");
      g_once_init_leave (&ready, 1);
    }
  data = g_bytes_get_data (schema, &size);
  if (length)
    *length = size;
  return data;
}

/* In the order in which findings of one weight are told: the altar first, then who sees, then how people walk and sit. */
static const char *const BOOKS[] = { "older-form", "newer-form", "either-form", "levels", "sight", "rail", "step-and-fall", "access",
                                     "room", "seating-and-ways-out", "floor-and-weight", "flame" };

static void
unref_book (gpointer book)
{
  fp_rulebook_unref (book);
}

static GPtrArray *
read_built_in (void)
{
  GPtrArray *books = g_ptr_array_new_with_free_func (unref_book);

  for (guint i = 0; i < G_N_ELEMENTS (BOOKS); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autofree char *name = g_strconcat (BOOKS[i], ".xml", NULL), *path = g_strconcat ("books/", name, NULL);
      g_autoptr (GBytes) file = fp_rulebook_file (path);
      gsize length;
      const char *xml = g_bytes_get_data (file, &length);
      FpRulebook *book = fp_rulebook_parse (xml, length, name, &error);

      if (book)
        g_ptr_array_add (books, book);
      else
        g_critical ("built-in rulebook: %s", error->message);
    }
  return books;
}

GPtrArray *
fp_rulebooks_built_in (void)
{
  static gsize ready = 0;
  static GPtrArray *books; /* read once: findings are asked for at every step of a drag */
  GPtrArray *copy;

  if (g_once_init_enter (&ready))
    {
      books = read_built_in ();
      g_once_init_leave (&ready, 1);
    }

  copy = g_ptr_array_new_full (books->len, unref_book);
  for (guint i = 0; i < books->len; i++)
    g_ptr_array_add (copy, fp_rulebook_ref (g_ptr_array_index (books, i)));
  return copy;
}
