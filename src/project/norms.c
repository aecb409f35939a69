/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "project-private.h"
#include "text.h"

#include <math.h>
#include <string.h>

const FpNorms fp_norms_usual = { .jurisdiction = FP_JURISDICTION_UNSAID };

static const struct { const char *id, *label; } jurisdictions[FP_N_JURISDICTIONS] = {
  [FP_JURISDICTION_UNSAID] = { "unsaid", "Not said: all of them" },
  [FP_JURISDICTION_US] = { "us", "United States" },
  [FP_JURISDICTION_UK] = { "uk", "United Kingdom" },
  [FP_JURISDICTION_EU] = { "eu", "European Union" },
  [FP_JURISDICTION_OTHER] = { "other", "Another: none of these" },
};

const char *
fp_jurisdiction_id (FpJurisdiction one)
{
  return (guint) one < FP_N_JURISDICTIONS ? jurisdictions[one].id : "";
}

const char *
fp_jurisdiction_label (FpJurisdiction one)
{
  return (guint) one < FP_N_JURISDICTIONS ? jurisdictions[one].label : "";
}

gboolean
fp_jurisdiction_find (const char *id, FpJurisdiction *one)
{
  for (guint i = 0; i < FP_N_JURISDICTIONS; i++)
    if (strcmp (jurisdictions[i].id, id) == 0)
      {
        *one = (FpJurisdiction) i;
        return TRUE;
      }
  return FALSE;
}

/* --- found ------------------------------------------------------------------------ */

gboolean
fp_norms_follow (const FpNorms *self, const char *book)
{
  for (guint i = 0; i < self->n_without; i++)
    if (strcmp (self->without[i], book) == 0)
      return FALSE;
  return TRUE;
}

const FpNormChange *
fp_norms_change (const FpNorms *self, const char *book, const char *rule)
{
  for (guint i = 0; i < self->n_changes; i++)
    if (strcmp (self->change[i].book, book) == 0 && strcmp (self->change[i].rule, rule) == 0)
      return &self->change[i];
  return NULL;
}

const FpNormChoice *
fp_norms_choice (const FpNorms *self, const char *matter)
{
  for (guint i = 0; i < self->n_choices; i++)
    if (strcmp (self->choice[i].matter, matter) == 0)
      return &self->choice[i];
  return NULL;
}

/* --- as they must be -------------------------------------------------------------- */

static gboolean
refuse (GError **error, FpError code, const char *format, ...)
{
  va_list arguments;
  g_autofree char *what = NULL;

  va_start (arguments, format);
  what = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  g_set_error (error, FP_ERROR, code, "norms: %s", what);
  return FALSE;
}

static gboolean
are_few (guint n, guint most, const char *what, GError **error)
{
  return n <= most || refuse (error, FP_ERROR_LIMIT, "there are %u %s; at most %u are taken", n, what, most);
}

static gboolean
is_name (const char *id)
{
  if (id == NULL || !g_ascii_islower (*id) || strlen (id) > FP_NORM_ID_MAX)
    return FALSE;
  for (const char *c = id; *c != '\0'; c++)
    if (!g_ascii_islower (*c) && !g_ascii_isdigit (*c) && *c != '-')
      return FALSE;
  return TRUE;
}

static gboolean
is_named (const char *id, const char *what, GError **error)
{
  if (is_name (id))
    return TRUE;
  if (id == NULL || !g_utf8_validate (id, -1, NULL))
    return refuse (error, FP_ERROR_INVALID, "%s has no id", what);
  return refuse (error, FP_ERROR_INVALID, "“%.80s” is no id of %s: small letters a to z, digits and '-', a letter first", id, what);
}

static gboolean
limit_is_fair (const FpNormChange *change, double limit, GError **error)
{
  return isnan (limit) || fabs (limit) <= FP_LENGTH_MAX
         || refuse (error, FP_ERROR_RANGE, "the limit of “%s” is %.10g, which is out of all measure", change->rule, limit);
}

static gboolean
change_is_fair (const FpNorms *self, const FpNormChange *change, GError **error)
{
  if (!is_named (change->book, "a book", error) || !is_named (change->rule, "a rule", error))
    return FALSE;
  if (fp_norms_change (self, change->book, change->rule) != change)
    return refuse (error, FP_ERROR_INVALID, "the rule “%s” of “%s” is changed twice", change->rule, change->book);
  if (change->reason == NULL || *change->reason == '\0')
    return refuse (error, FP_ERROR_INVALID, "the rule “%s” of “%s” is held otherwise, and no reason is given", change->rule,
                   change->book);
  if (!change->aside && isnan (change->low) && isnan (change->high))
    return refuse (error, FP_ERROR_INVALID, "the rule “%s” of “%s” is to be held otherwise, and it is not said how", change->rule,
                   change->book);
  if (change->low > change->high)
    return refuse (error, FP_ERROR_RANGE, "the rule “%s” of “%s” is held from %.10g to %.10g, which is nowhere", change->rule,
                   change->book, change->low, change->high);
  return limit_is_fair (change, change->low, error) && limit_is_fair (change, change->high, error)
         && fp_text_check (change->reason, "norms: a reason", FALSE, error);
}

static gboolean
choice_is_fair (const FpNorms *self, const FpNormChoice *choice, GError **error)
{
  if (!is_named (choice->matter, "a matter", error) || !is_named (choice->book, "a book", error)
      || !is_named (choice->rule, "a rule", error))
    return FALSE;
  return fp_norms_choice (self, choice->matter) == choice
         || refuse (error, FP_ERROR_INVALID, "of “%s” two rules are gone by", choice->matter);
}

static gboolean
lines_are_fair (const FpNormBook *book, GError **error)
{
  g_auto (GStrv) lines = g_strsplit (book->xml, "\n", -1);

  for (guint i = 0; lines[i] != NULL; i++)
    {
      g_autofree char *whose = g_strdup_printf ("norms: line %u of “%s”", i + 1, book->name);

      if (strlen (lines[i]) > FP_NORM_OWN_LINE)
        return refuse (error, FP_ERROR_LIMIT, "line %u of “%s” is longer than %d bytes: break it", i + 1, book->name,
                       FP_NORM_OWN_LINE);
      if (!fp_text_check (lines[i], whose, TRUE, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
own_is_fair (const FpNorms *self, guint i, GError **error)
{
  const FpNormBook *book = &self->own[i];

  if (book->name == NULL || *book->name == '\0')
    return refuse (error, FP_ERROR_INVALID, "a rulebook has no name");
  if (!fp_text_check (book->name, "norms: the name of a rulebook", FALSE, error))
    return FALSE;
  for (guint k = 0; k < i; k++)
    if (strcmp (self->own[k].name, book->name) == 0)
      return refuse (error, FP_ERROR_INVALID, "two rulebooks are called “%s”", book->name);
  if (strlen (book->xml) > FP_NORM_OWN_BYTES)
    return refuse (error, FP_ERROR_LIMIT, "the rulebook “%s” is longer than %d bytes", book->name, FP_NORM_OWN_BYTES);
  return lines_are_fair (book, error);
}

static gboolean
without_is_fair (const FpNorms *self, guint i, GError **error)
{
  if (!is_named (self->without[i], "a book", error))
    return FALSE;
  for (guint k = 0; k < i; k++)
    if (strcmp (self->without[k], self->without[i]) == 0)
      return refuse (error, FP_ERROR_INVALID, "the book “%s” is left out twice", self->without[i]);
  return TRUE;
}

gboolean
fp_norms_check (const FpNorms *self, GError **error)
{
  if ((guint) self->jurisdiction >= FP_N_JURISDICTIONS)
    return refuse (error, FP_ERROR_RANGE, "the jurisdiction is none of those that there are");
  if (!are_few (self->n_without, FP_NORM_BOOKS_MAX, "books that are not followed", error)
      || !are_few (self->n_changes, FP_NORM_CHANGES_MAX, "rules held otherwise", error)
      || !are_few (self->n_choices, FP_NORM_CHANGES_MAX, "matters", error)
      || !are_few (self->n_own, FP_NORM_OWN_MAX, "rulebooks of the project's own", error))
    return FALSE;
  for (guint i = 0; i < self->n_without; i++)
    if (!without_is_fair (self, i, error))
      return FALSE;
  for (guint i = 0; i < self->n_changes; i++)
    if (!change_is_fair (self, &self->change[i], error))
      return FALSE;
  for (guint i = 0; i < self->n_choices; i++)
    if (!choice_is_fair (self, &self->choice[i], error))
      return FALSE;
  for (guint i = 0; i < self->n_own; i++)
    if (!own_is_fair (self, i, error))
      return FALSE;
  return TRUE;
}

/* --- alike ------------------------------------------------------------------------ */

static gboolean
limits_are_equal (double a, double b)
{
  return a == b || (isnan (a) && isnan (b));
}

static gboolean
changes_are_equal (const FpNormChange *a, const FpNormChange *b)
{
  return strcmp (a->book, b->book) == 0 && strcmp (a->rule, b->rule) == 0 && !a->aside == !b->aside
         && limits_are_equal (a->low, b->low) && limits_are_equal (a->high, b->high) && strcmp (a->reason, b->reason) == 0;
}

static gboolean
choices_are_equal (const FpNormChoice *a, const FpNormChoice *b)
{
  return strcmp (a->matter, b->matter) == 0 && strcmp (a->book, b->book) == 0 && strcmp (a->rule, b->rule) == 0;
}

gboolean
fp_norms_equal (const FpNorms *a, const FpNorms *b)
{
  if (a->jurisdiction != b->jurisdiction || a->n_without != b->n_without || a->n_changes != b->n_changes
      || a->n_choices != b->n_choices || a->n_own != b->n_own)
    return FALSE;
  for (guint i = 0; i < a->n_without; i++)
    if (strcmp (a->without[i], b->without[i]) != 0)
      return FALSE;
  for (guint i = 0; i < a->n_changes; i++)
    if (!changes_are_equal (&a->change[i], &b->change[i]))
      return FALSE;
  for (guint i = 0; i < a->n_choices; i++)
    if (!choices_are_equal (&a->choice[i], &b->choice[i]))
      return FALSE;
  for (guint i = 0; i < a->n_own; i++)
    if (strcmp (a->own[i].name, b->own[i].name) != 0 || strcmp (a->own[i].xml, b->own[i].xml) != 0)
      return FALSE;
  return TRUE;
}

/* --- a part of a project ---------------------------------------------------------- */

/* Every text of them is in one chunk, which goes with the part. */
FpNormsPart *
fp_norms_part_new (const FpNorms *norms)
{
  FpNormsPart *self = g_new0 (FpNormsPart, 1);
  GStringChunk *texts = g_string_chunk_new (1024);
  const char **without = g_new0 (const char *, norms->n_without);
  FpNormChange *change = g_new0 (FpNormChange, norms->n_changes);
  FpNormChoice *choice = g_new0 (FpNormChoice, norms->n_choices);
  FpNormBook *own = g_new0 (FpNormBook, norms->n_own);

  for (guint i = 0; i < norms->n_without; i++)
    without[i] = g_string_chunk_insert_const (texts, norms->without[i]);
  for (guint i = 0; i < norms->n_changes; i++)
    {
      change[i] = norms->change[i];
      change[i].book = g_string_chunk_insert_const (texts, change[i].book);
      change[i].rule = g_string_chunk_insert_const (texts, change[i].rule);
      change[i].reason = g_string_chunk_insert_const (texts, change[i].reason);
    }
  for (guint i = 0; i < norms->n_choices; i++)
    choice[i] = (FpNormChoice) { g_string_chunk_insert_const (texts, norms->choice[i].matter),
                                 g_string_chunk_insert_const (texts, norms->choice[i].book),
                                 g_string_chunk_insert_const (texts, norms->choice[i].rule) };
  for (guint i = 0; i < norms->n_own; i++)
    own[i] = (FpNormBook) { g_string_chunk_insert (texts, norms->own[i].name), g_string_chunk_insert (texts, norms->own[i].xml) };

  g_atomic_ref_count_init (&self->ref_count);
  self->texts = texts;
  self->norms = (FpNorms) { norms->jurisdiction, without, norms->n_without, change, norms->n_changes,
                            choice, norms->n_choices, own, norms->n_own };
  return self;
}

FpNormsPart *
fp_norms_part_ref (FpNormsPart *self)
{
  if (self != NULL)
    g_atomic_ref_count_inc (&self->ref_count);
  return self;
}

void
fp_norms_part_unref (FpNormsPart *self)
{
  if (self == NULL || !g_atomic_ref_count_dec (&self->ref_count))
    return;
  g_free ((gpointer) self->norms.without);
  g_free ((gpointer) self->norms.change);
  g_free ((gpointer) self->norms.choice);
  g_free ((gpointer) self->norms.own);
  g_string_chunk_free (self->texts);
  g_free (self);
}
