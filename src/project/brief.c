/* SPDX-License-Identifier: GPL-3.0-or-later */
/* brief.c - what the parish asks for */
#include "project-private.h"

#include <math.h>
#include <string.h>

#define MINISTERS_MAX 60
#define SEATS_MAX     100000
#define SEED_MAX      999999
#define CHILDREN_MAX  1000

static const struct
{
  const char *id, *label;
} celebrations[FP_N_CELEBRATIONS] = {
  { "low", "low Mass" },
  { "sung", "sung Mass" },
  { "solemn", "solemn Mass" },
  { "pontifical", "pontifical Mass" },
  { "requiem", "Requiem Mass" },
  { "passiontide", "Mass in Passiontide" },
  { "good-friday", "Good Friday" },
  { "benediction", "Benediction" },
  { "weekday", "weekday Mass" },
  { "sunday", "Sunday Mass" },
  { "bishop", "Mass of the diocesan bishop" },
};

guint
fp_celebration_number (FpCelebration one)
{
  for (guint i = 0; i < FP_N_CELEBRATIONS; i++)
    if ((guint) one == 1u << i)
      return i;
  g_return_val_if_reached (0);
}

const char *
fp_celebration_id (FpCelebration one)
{
  return celebrations[fp_celebration_number (one)].id;
}

const char *
fp_celebration_label (FpCelebration one)
{
  return celebrations[fp_celebration_number (one)].label;
}

gboolean
fp_celebration_find (const char *id, FpCelebration *one)
{
  for (guint i = 0; i < FP_N_CELEBRATIONS; i++)
    if (strcmp (celebrations[i].id, id) == 0)
      {
        *one = (FpCelebration) (1u << i);
        return TRUE;
      }
  return FALSE;
}

static const char *
text_or_empty (const char *text)
{
  return text != NULL ? text : "";
}

static gboolean
texts_are_fair (const FpBrief *brief, GError **error)
{
  return fp_text_check (text_or_empty (brief->title), "brief: title", FALSE, error)
         && fp_text_check (text_or_empty (brief->place), "brief: place", FALSE, error)
         && fp_text_check (text_or_empty (brief->client), "brief: client", FALSE, error)
         && fp_text_check (text_or_empty (brief->author), "brief: author", FALSE, error)
         && fp_text_check (text_or_empty (brief->note), "brief: note", TRUE, error);
}

static gboolean
refuse_number (GError **error, const char *what, double found, const char *allowed)
{
  g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "brief: %s is %g, allowed %s", what, found, allowed);
  return FALSE;
}

static gboolean
masses_are_fair (const FpBrief *brief, GError **error)
{
  if (brief->n_masses > FP_MASS_TIMES_MAX)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "more than %d Masses are told", FP_MASS_TIMES_MAX);
      return FALSE;
    }
  for (guint i = 0; i < brief->n_masses; i++)
    if (!fp_mass_time_check (&brief->mass[i], error))
      return FALSE;
  return TRUE;
}

gboolean
fp_brief_check (const FpBrief *brief, GError **error)
{
  if (!texts_are_fair (brief, error))
    return FALSE;
  if ((guint) brief->books > FP_BOOKS_BOTH)
    return refuse_number (error, "books", (double) brief->books, "older, newer or both");
  if ((guint) brief->facing > FP_FACING_PEOPLE)
    return refuse_number (error, "facing", (double) brief->facing, "east or people");
  if ((guint) brief->units > FP_UNITS_IMPERIAL)
    return refuse_number (error, "units", (double) brief->units, "metric or imperial");
  if (brief->celebrations >= 1u << FP_N_CELEBRATIONS)
    return refuse_number (error, "celebrations", brief->celebrations, "only known ones");
  if (brief->ministers < 1 || brief->ministers > MINISTERS_MAX)
    return refuse_number (error, "ministers", brief->ministers, "1 to 60");
  if (brief->seats > SEATS_MAX)
    return refuse_number (error, "seats", brief->seats, "0 to 100000");
  if (!(fabs (brief->north) <= 360))
    return refuse_number (error, "north", brief->north, "-360 to 360 degrees");
  if (brief->percentile != 5 && brief->percentile != 50 && brief->percentile != 95)
    return refuse_number (error, "percentile", brief->percentile, "5, 50 or 95");
  if (!fp_site_check (&brief->site, error) || !masses_are_fair (brief, error))
    {
      g_prefix_error (error, "brief: ");
      return FALSE;
    }
  if (brief->seed > SEED_MAX)
    return refuse_number (error, "seed", brief->seed, "0 to 999999");
  if (brief->children > CHILDREN_MAX)
    return refuse_number (error, "children", brief->children, "0 to 1000");
  return TRUE;
}

FpBriefPart *
fp_brief_part_new (const FpBrief *brief)
{
  FpBriefPart *self = g_new (FpBriefPart, 1);

  g_atomic_ref_count_init (&self->ref_count);
  self->brief = *brief;
  self->brief.title = g_strdup (text_or_empty (brief->title));
  self->brief.place = g_strdup (text_or_empty (brief->place));
  self->brief.client = g_strdup (text_or_empty (brief->client));
  self->brief.author = g_strdup (text_or_empty (brief->author));
  self->brief.note = g_strdup (text_or_empty (brief->note));
  self->brief.north = fp_turn_normal (brief->north);
  if (!brief->site.known)
    self->brief.site = (FpSite) { FALSE, 0, 0, NULL };
  self->brief.site.zone = g_strdup (self->brief.site.zone);
  self->brief.varied = brief->varied != FALSE;
  return self;
}

FpBriefPart *
fp_brief_part_ref (const FpBriefPart *self)
{
  FpBriefPart *part = (FpBriefPart *) self;

  g_atomic_ref_count_inc (&part->ref_count);
  return part;
}

void
fp_brief_part_unref (FpBriefPart *self)
{
  if (self == NULL || !g_atomic_ref_count_dec (&self->ref_count))
    return;
  g_free ((char *) self->brief.title);
  g_free ((char *) self->brief.place);
  g_free ((char *) self->brief.client);
  g_free ((char *) self->brief.author);
  g_free ((char *) self->brief.note);
  g_free ((char *) self->brief.site.zone);
  g_free (self);
}

static gboolean
masses_are_equal (const FpBrief *a, const FpBrief *b)
{
  gboolean equal = a->n_masses == b->n_masses;

  for (guint i = 0; equal && i < a->n_masses; i++)
    equal = fp_mass_time_equal (&a->mass[i], &b->mass[i]);
  return equal;
}

gboolean
fp_brief_equal (const FpBrief *a, const FpBrief *b)
{
  return a == b
         || (strcmp (a->title, b->title) == 0 && strcmp (a->place, b->place) == 0
             && strcmp (a->client, b->client) == 0 && strcmp (a->author, b->author) == 0
             && strcmp (a->note, b->note) == 0 && a->books == b->books && a->facing == b->facing
             && a->celebrations == b->celebrations && a->ministers == b->ministers && a->seats == b->seats
             && a->units == b->units && a->north == b->north && a->percentile == b->percentile
             && fp_site_equal (&a->site, &b->site) && masses_are_equal (a, b)
             && !a->varied == !b->varied && a->seed == b->seed && a->children == b->children);
}
