/* SPDX-License-Identifier: GPL-3.0-or-later */
/* remedies.c - a remedy for each finding, for who tells all of them */
#include "footpace/remedy.h"

typedef struct
{
  gboolean found;
  FpRemedy remedy;
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

FpRemedies *
fp_remedies_new (const FpFindings *findings, GCancellable *cancel)
{
  FpRemedies *self = g_new0 (FpRemedies, 1);
  guint n;
  const FpFinding *finding = fp_findings_get (findings, &n);

  self->each = g_array_new (FALSE, FALSE, sizeof (Each));
  g_array_set_clear_func (self->each, each_clear);
  for (guint i = 0; i < n && finding[i].found == FP_FOUND_SHORT; i++)
    {
      FpHindrance why;
      Each each = { .found = FALSE };

      each.found = fp_remedy_find (findings, &finding[i], cancel, &each.remedy, &why);
      each.words = each.found ? fp_remedy_words (&each.remedy, findings) : fp_hindrance_words (&why, findings);
      g_array_append_val (self->each, each);
    }
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
