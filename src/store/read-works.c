/* SPDX-License-Identifier: GPL-3.0-or-later */
/* read-works.c - <works>: of what a parish builds, and at what rates */
#include "read-parts.h"

#include <string.h>

/* --- what it is made of ------------------------------------------------------- */

typedef const FpMatter *(*MatterAt) (guint i);

static const FpMatter *
stone_at (guint i)
{
  return i < FP_N_STONES ? fp_stone ((FpStone) i) : NULL;
}

static const FpMatter *
timber_at (guint i)
{
  return i < FP_N_TIMBERS ? fp_timber ((FpTimber) i) : NULL;
}

static const FpMatter *
metal_at (guint i)
{
  return i < FP_N_METALS ? fp_metal ((FpMetal) i) : NULL;
}

static char *
words_of (MatterAt at)
{
  GString *words = g_string_new (NULL);

  for (guint i = 0; at (i) != NULL; i++)
    g_string_append_printf (words, "%s%s", i == 0 ? "" : at (i + 1) == NULL ? " or " : ", ", at (i)->id);
  return g_string_free (words, FALSE);
}

static gboolean
read_matter (FpReader *r, const xmlNode *node, const char *name, MatterAt at, guint *one)
{
  const char *word = fp_read_needed_attribute (r, node, name);
  g_autofree char *expected = NULL;

  if (word == NULL)
    return FALSE;
  for (*one = 0; at (*one) != NULL; ++*one)
    if (strcmp (at (*one)->id, word) == 0)
      return TRUE;
  expected = words_of (at);
  return fp_read_refuse (r, node, FP_ERROR_INVALID, "%s is “%.40s”; %s is expected", name, word, expected);
}

static gboolean
read_matters (FpReader *r, const xmlNode *node, FpWorks *works)
{
  guint stone, timber, metal;

  if (!read_matter (r, node, "stone", stone_at, &stone) || !read_matter (r, node, "timber", timber_at, &timber)
      || !read_matter (r, node, "metal", metal_at, &metal))
    return FALSE;
  works->stone = (FpStone) stone;
  works->timber = (FpTimber) timber;
  works->metal = (FpMetal) metal;
  return TRUE;
}

/* --- numbers ------------------------------------------------------------------- */

static gboolean
read_needed_number (FpReader *r, const xmlNode *node, const char *name, double *value)
{
  return fp_read_needed_attribute (r, node, name) != NULL && fp_read_number (r, node, name, value);
}

/* What it does not tell is as many as are needed. */
static gboolean
read_smalls (FpReader *r, const xmlNode *node, FpWorks *works)
{
  for (guint i = 0; i < FP_N_SMALLS; i++)
    if (!fp_read_number (r, node, fp_small_id ((FpSmall) i), &works->small[i]))
      return FALSE;
  return TRUE;
}

static gboolean
read_numbers (FpReader *r, const xmlNode *node, FpWorks *works)
{
  return read_needed_number (r, node, "slab", &works->slab) && read_needed_number (r, node, "longest", &works->longest)
         && read_needed_number (r, node, "bears", &works->bears) && read_needed_number (r, node, "burns", &works->burns)
         && read_needed_number (r, node, "bolt", &works->bolt) && read_needed_number (r, node, "warp", &works->warp)
         && read_needed_number (r, node, "weft", &works->weft)
         && read_smalls (r, node, works) && (works->currency = fp_read_needed_attribute (r, node, "currency")) != NULL;
}

/* What was not asked for yet when a file was written is as usual. */
static gboolean
read_stonework (FpReader *r, const xmlNode *node, FpWorks *works)
{
  const char *built = fp_read_attribute (r, node, "built"), *finish = fp_read_attribute (r, node, "finish");

  if (!fp_read_number (r, node, "nosing", &works->nosing) || !fp_read_number (r, node, "joint", &works->joint))
    return FALSE;
  if (built != NULL && strcmp (built, "slabs") != 0 && strcmp (built, "blocks") != 0)
    return fp_read_refuse (r, node, FP_ERROR_INVALID, "built is “%.40s”; slabs or blocks is expected", built);
  works->solid = built != NULL && strcmp (built, "blocks") == 0;
  if (finish != NULL)
    works->finish = finish;
  return TRUE;
}

/* What is wider than the bolt. */
static gboolean
read_wide (FpReader *r, const xmlNode *node, FpWorks *works)
{
  const char *wide = fp_read_attribute (r, node, "wide");

  if (wide != NULL && strcmp (wide, "told") != 0 && strcmp (wide, "joined") != 0)
    return fp_read_refuse (r, node, FP_ERROR_INVALID, "wide is “%.40s”; told or joined is expected", wide);
  works->joined = wide != NULL && strcmp (wide, "joined") == 0;
  return TRUE;
}

/* --- rates --------------------------------------------------------------------- */

static gboolean
read_rate (FpReader *r, const xmlNode *node, FpRate *rate)
{
  static const char *const known[] = { "kind", "what", "per", "amount", NULL };
  const char *per;

  if (!fp_read_knows_attributes (r, node, known) || !fp_read_has_only_elements (r, node))
    return FALSE;
  if (fp_read_first (node) != NULL)
    return fp_read_refuse (r, fp_read_first (node), FP_ERROR_INVALID, "<%.80s> was found in <rate>, where nothing is expected",
                           fp_read_name (fp_read_first (node)));
  rate->kind = fp_read_needed_attribute (r, node, "kind");
  rate->what = rate->kind != NULL ? fp_read_needed_attribute (r, node, "what") : NULL;
  per = rate->what != NULL ? fp_read_needed_attribute (r, node, "per") : NULL;
  if (per == NULL)
    return FALSE;
  if (!fp_amount_unit_find (per, &rate->per, &rate->units))
    return fp_read_refuse (r, node, FP_ERROR_INVALID, "per is “%.40s”; one, m, m2, m3, ft, sq-ft or cu-ft is expected", per);
  return read_needed_number (r, node, "amount", &rate->rate);
}

static gboolean
read_rates (FpReader *r, const xmlNode *node, GArray *rates)
{
  for (const xmlNode *child = fp_read_first (node); child != NULL; child = fp_read_next (child))
    {
      FpRate rate = { 0 };

      if (!fp_read_is (child, "rate"))
        return fp_read_refuse (r, child, FP_ERROR_INVALID, "<%.80s> was found in <works>; <rate> is expected there",
                               fp_read_name (child));
      if (rates->len >= FP_RATES_MAX)
        return fp_read_refuse (r, child, FP_ERROR_RANGE, "there are more than %d of <rate>", FP_RATES_MAX);
      if (!read_rate (r, child, &rate))
        return FALSE;
      g_array_append_val (rates, rate);
    }
  return TRUE;
}

gboolean
fp_read_works (FpReader *r, const xmlNode *node, FpWorks *works, GArray *rates)
{
  static const char *const known[] = { "stone", "timber", "metal", "slab", "longest", "nosing", "joint", "built", "finish",
                                       "bears", "burns", "bolt", "warp", "weft", "wide", "currency", "corporals", "palls",
                                       "purificators", "finger-towels", "amices", "chalice-veils", "burses", NULL };
  GError *error = NULL;

  *works = fp_works_usual;
  if (!fp_read_knows_attributes (r, node, known) || !fp_read_has_only_elements (r, node) || !read_matters (r, node, works)
      || !read_numbers (r, node, works) || !read_stonework (r, node, works) || !read_wide (r, node, works)
      || !read_rates (r, node, rates))
    return FALSE;
  works->rate = (const FpRate *) (gpointer) rates->data;
  works->n_rates = rates->len;
  return fp_works_check (works, &error) || fp_read_refuse_error (r, fp_read_line (node), error);
}
