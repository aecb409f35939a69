/* SPDX-License-Identifier: GPL-3.0-or-later */
/* read-mass.c - <site> and <mass> at the end of the brief: where the church is, and when Mass is said there */
#include "read-parts.h"

#include <string.h>

static gboolean
is_empty (FpReader *r, const xmlNode *node, const char *const *known)
{
  const xmlNode *child;

  if (!fp_read_knows_attributes (r, node, known) || !fp_read_has_only_elements (r, node))
    return FALSE;
  child = fp_read_first (node);
  return child == NULL || fp_read_refuse (r, child, FP_ERROR_INVALID, "<%.80s> was found in <%s>, where nothing is expected",
                                          fp_read_name (child), fp_read_name (node));
}

static gboolean
refuse_unfair (FpReader *r, const xmlNode *node, GError *error)
{
  const gboolean refused = fp_read_refuse (r, node, error->code, "%s", error->message);

  g_error_free (error);
  return refused;
}

static gboolean
read_site (FpReader *r, const xmlNode *node, FpSite *site)
{
  static const char *const known[] = { "latitude", "longitude", "zone", NULL };
  GError *error = NULL;

  if (!is_empty (r, node, known))
    return FALSE;
  for (guint i = 0; known[i] != NULL; i++)
    if (fp_read_needed_attribute (r, node, known[i]) == NULL)
      return FALSE;
  site->known = TRUE;
  site->zone = fp_read_attribute (r, node, "zone");
  if (!fp_read_number (r, node, "latitude", &site->latitude) || !fp_read_number (r, node, "longitude", &site->longitude))
    return FALSE;
  return fp_site_check (site, &error) || refuse_unfair (r, node, error);
}

/* "09:30" or "12-25", with nothing before, between or after. */
static gboolean
read_pair (const char *text, char between, guint *first, guint *second)
{
  if (strlen (text) != 5 || text[2] != between || !g_ascii_isdigit (text[0]) || !g_ascii_isdigit (text[1])
      || !g_ascii_isdigit (text[3]) || !g_ascii_isdigit (text[4]))
    return FALSE;
  *first = (guint) (text[0] - '0') * 10 + (guint) (text[1] - '0');
  *second = (guint) (text[3] - '0') * 10 + (guint) (text[4] - '0');
  return TRUE;
}

static gboolean
read_day (const char *text, FpMassTime *mass)
{
  for (guint i = 1; i <= 7; i++)
    if (strcmp (text, fp_weekday_id (i)) == 0)
      mass->weekday = i;
  return mass->weekday > 0 || read_pair (text, '-', &mass->month, &mass->day);
}

static gboolean
read_mass (FpReader *r, const xmlNode *node, FpMassTime *mass)
{
  static const char *const known[] = { "day", "at", NULL };
  const char *day, *at;
  guint hour, minute;
  GError *error = NULL;

  *mass = (FpMassTime) { 0 };
  if (!is_empty (r, node, known) || (day = fp_read_needed_attribute (r, node, "day")) == NULL
      || (at = fp_read_needed_attribute (r, node, "at")) == NULL)
    return FALSE;
  if (!read_day (day, mass))
    return fp_read_refuse (r, node, FP_ERROR_INVALID, "day is “%.40s”; monday to sunday, or month and day such as 12-25, is "
                           "expected", day);
  if (!read_pair (at, ':', &hour, &minute) || minute > 59)
    return fp_read_refuse (r, node, FP_ERROR_INVALID, "at is “%.40s”; a time such as 09:30 is expected", at);
  mass->minute = hour * 60 + minute;
  return fp_mass_time_check (mass, &error) || refuse_unfair (r, node, error);
}

gboolean
fp_read_masses (FpReader *r, const xmlNode **node, FpBrief *brief)
{
  if (fp_read_is (*node, "site"))
    {
      if (!read_site (r, *node, &brief->site))
        return FALSE;
      *node = fp_read_next (*node);
    }
  for (; fp_read_is (*node, "mass"); *node = fp_read_next (*node))
    {
      if (brief->n_masses >= FP_MASS_TIMES_MAX)
        return fp_read_refuse (r, *node, FP_ERROR_RANGE, "there are more than %d of <mass>", FP_MASS_TIMES_MAX);
      if (!read_mass (r, *node, &brief->mass[brief->n_masses]))
        return FALSE;
      brief->n_masses++;
    }
  return TRUE;
}
