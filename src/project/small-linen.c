/* SPDX-License-Identifier: GPL-3.0-or-later */
/* small-linen.c - the small linens of which a parish says how many are made */
#include "project-private.h"

#include <math.h>

static const struct { const char *id, *label; } smalls[FP_N_SMALLS] = {
  [FP_SMALL_CORPORAL] = { "corporals", "Corporals" },
  [FP_SMALL_PALL] = { "palls", "Palls" },
  [FP_SMALL_PURIFICATOR] = { "purificators", "Purificators" },
  [FP_SMALL_TOWEL] = { "finger-towels", "Finger towels" },
  [FP_SMALL_AMICE] = { "amices", "Amices" },
  [FP_SMALL_CHALICE_VEIL] = { "chalice-veils", "Chalice veils" },
  [FP_SMALL_BURSE] = { "burses", "Burses" },
};

const char *
fp_small_id (FpSmall one)
{
  return smalls[MIN ((guint) one, FP_N_SMALLS - 1)].id;
}

const char *
fp_small_label (FpSmall one)
{
  return smalls[MIN ((guint) one, FP_N_SMALLS - 1)].label;
}

gboolean
fp_small_find (const char *id, FpSmall *one)
{
  for (guint i = 0; i < FP_N_SMALLS; i++)
    if (g_ascii_strcasecmp (id, smalls[i].id) == 0)
      {
        *one = (FpSmall) i;
        return TRUE;
      }
  return FALSE;
}

gboolean
fp_smalls_check (const double *number, GError **error)
{
  for (guint i = 0; i < FP_N_SMALLS; i++)
    /* Written so that a NaN fails too. */
    if (!(number[i] == FP_SMALL_AS_NEEDED || (number[i] >= 0 && number[i] <= FP_SMALLS_MOST && floor (number[i]) == number[i])))
      {
        g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "works: the number of %s is %.10g; it may be a whole number, 0 to %d",
                     smalls[i].id, number[i], FP_SMALLS_MOST);
        return FALSE;
      }
  return TRUE;
}

gboolean
fp_smalls_equal (const double *a, const double *b)
{
  for (guint i = 0; i < FP_N_SMALLS; i++)
    if (a[i] != b[i])
      return FALSE;
  return TRUE;
}
