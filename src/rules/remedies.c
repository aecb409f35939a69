/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedies.c - a remedy for each finding, for who tells all of them */
#include "footpace/remedy.h"

#include "footpace/workers.h"

typedef struct
{
  gboolean found, goes_further;
  FpRemedy remedy, further;
  char    *words;
} Each;

struct _FpRemedies
{
  GArray *each; /* of Each, of the findings that are short, which come first */
};

static void
each_clear (gpointer data)
{
  g_free (((Each *) data)->words);
}

typedef struct
{
  const FpFindings *findings;
  GCancellable     *cancel;
  Each             *each;
} Search;

static void
tell_further (const Search *self, Each *each)
{
  g_autofree char *words = each->words, *further = fp_remedy_further_words (&each->further, self->findings);

  each->words = g_strdup_printf ("%s; %s", words, further);
}

static void
find (guint part, gpointer data)
{
  const Search *self = data;
  guint n;
  const FpFinding *finding = &fp_findings_get (self->findings, &n)[part];
  Each *each = &self->each[part];
  FpHindrance why;

  each->found = fp_remedy_find (self->findings, finding, self->cancel, &each->remedy, &why);
  each->goes_further = each->found
                       && fp_remedy_further (self->findings, finding, &each->remedy, FP_WEIGHT_CUSTOMARY, self->cancel, &each->further);
  each->words = each->found ? fp_remedy_words (&each->remedy, self->findings) : fp_hindrance_words (&why, self->findings);
  if (each->goes_further)
    tell_further (self, each);
}

FpRemedies *
fp_remedies_new (const FpFindings *findings, GCancellable *cancel)
{
  FpRemedies *self = g_new0 (FpRemedies, 1);
  guint n, n_short = 0;
  const FpFinding *finding = fp_findings_get (findings, &n);

  while (n_short < n && finding[n_short].found == FP_FOUND_SHORT)
    n_short++;
  self->each = g_array_sized_new (FALSE, TRUE, sizeof (Each), n_short);
  g_array_set_clear_func (self->each, each_clear);
  g_array_set_size (self->each, n_short);
  fp_workers_do (n_short, find, &(Search) { findings, cancel, (Each *) (gpointer) self->each->data });
  return self;
}

void
fp_remedies_free (FpRemedies *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->each);
  g_free (self);
}

const FpRemedy *
fp_remedies_get (const FpRemedies *self, guint i, const char **words)
{
  const Each *each = i < self->each->len ? &g_array_index (self->each, Each, i) : NULL;

  if (words != NULL)
    *words = each != NULL ? each->words : NULL;
  return each != NULL && each->found ? &each->remedy : NULL;
}

const FpRemedy *
fp_remedies_further (const FpRemedies *self, guint i)
{
  const Each *each = i < self->each->len ? &g_array_index (self->each, Each, i) : NULL;

  return each != NULL && each->goes_further ? &each->further : NULL;
}
