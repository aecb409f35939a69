/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "brief-sun.h"

#include "built.h"

#include "footpace/error.h"

static const struct { const char *id, *label; } fields[] = {
  { "latitude", "Latitude" }, { "longitude", "Longitude" }, { "zone", "Time zone" }, { "masses", "Mass times" },
};
enum { LATITUDE, LONGITUDE, ZONE, MASSES };

void
fp_brief_sun_show (GtkBuilder *builder, const FpBrief *brief)
{
  g_autofree char *latitude = fp_number_format (brief->site.latitude), *longitude = fp_number_format (brief->site.longitude);
  g_autofree char *masses = fp_mass_times_text (brief->mass, brief->n_masses);

  fp_built_set_text (builder, "latitude", brief->site.known ? latitude : "");
  fp_built_set_text (builder, "longitude", brief->site.known ? longitude : "");
  fp_built_set_text (builder, "zone", brief->site.known ? brief->site.zone : "");
  fp_built_set_text (builder, "masses", masses);
}

static const char *
text_of (GtkBuilder *builder, int field)
{
  return fp_built_text (builder, fields[field].id);
}

/* FALSE always. */
static gboolean
refuse (GtkBuilder *builder, int field, GError **error)
{
  GtkWidget *entry = fp_built (builder, fields[field].id);

  g_prefix_error (error, "%s: ", fields[field].label);
  gtk_widget_add_css_class (entry, "error");
  gtk_widget_grab_focus (entry);
  return FALSE;
}

/* Of latitude, longitude and zone none is of use without the others. */
static gboolean
all_are_said (GtkBuilder *builder, GError **error)
{
  for (int i = LATITUDE; i <= ZONE; i++)
    if (*text_of (builder, i) == '\0')
      {
        g_set_error_literal (error, FP_ERROR, FP_ERROR_SYNTAX,
                             "it is asked with the others; leave latitude, longitude and time zone empty, or none of them");
        return refuse (builder, i, error);
      }
  return TRUE;
}

/* What came with the file is left, whether this computer knows it or not. */
static gboolean
read_zone (GtkBuilder *builder, const FpSite *before, FpSite *site, GError **error)
{
  g_autoptr (GDateTime) time = NULL;

  site->zone = text_of (builder, ZONE);
  if (before->known && g_strcmp0 (before->zone, site->zone) == 0)
    return TRUE;
  if (fp_site_check (site, error))
    time = fp_site_time (site, 2000, 1, 1, 0, error);
  return time != NULL || refuse (builder, ZONE, error);
}

static gboolean
read_site (GtkBuilder *builder, FpSite *site, GError **error)
{
  const FpSite before = *site;

  *site = (FpSite) { FALSE, 0, 0, NULL };
  if (*text_of (builder, LATITUDE) == '\0' && *text_of (builder, LONGITUDE) == '\0' && *text_of (builder, ZONE) == '\0')
    return TRUE;
  if (!all_are_said (builder, error))
    return FALSE;
  site->known = TRUE;
  if (!fp_site_degrees_parse (text_of (builder, LATITUDE), TRUE, &site->latitude, error))
    return refuse (builder, LATITUDE, error);
  if (!fp_site_degrees_parse (text_of (builder, LONGITUDE), FALSE, &site->longitude, error))
    return refuse (builder, LONGITUDE, error);
  return read_zone (builder, &before, site, error);
}

gboolean
fp_brief_sun_read (GtkBuilder *builder, FpBrief *brief, GError **error)
{
  for (guint i = 0; i < G_N_ELEMENTS (fields); i++)
    gtk_widget_remove_css_class (fp_built (builder, fields[i].id), "error");
  if (!read_site (builder, &brief->site, error))
    return FALSE;
  return fp_mass_times_parse (text_of (builder, MASSES), brief->mass, &brief->n_masses, error)
         || refuse (builder, MASSES, error);
}
