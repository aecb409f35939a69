/* SPDX-License-Identifier: GPL-3.0-or-later */
/* population.c - who is at which place, and what is said of them
 *
 * Drawn by lot, but by the same lot each time: a number that follows from the
 * seed of the brief and from the place, and from nothing else.
 */
#include "body.h"

typedef enum { LOT_STATURE, LOT_CHILD } Lot;

/* S. Vigna's splitmix64 (2015; from memory): spreads whatever was put in over all bits. */
static guint64
spread (guint64 x)
{
  x += G_GUINT64_CONSTANT (0x9e3779b97f4a7c15);
  x = (x ^ (x >> 30)) * G_GUINT64_CONSTANT (0xbf58476d1ce4e5b9);
  x = (x ^ (x >> 27)) * G_GUINT64_CONSTANT (0x94d049bb133111eb);
  return x ^ (x >> 31);
}

/* Evenly from 0 to below 1. */
static double
draw (guint seed, const char *owner, guint row, guint number, Lot lot)
{
  guint64 x = spread (seed);

  for (const char *c = owner; *c != '\0'; c++)
    x = spread (x ^ (guint8) *c);
  x = spread (x ^ row);
  x = spread (x ^ number);
  x = spread (x ^ lot);
  return (double) (x >> 11) * 0x1p-53;
}

FpPerson
fp_population_person (const FpBrief *brief, const char *owner, guint row, guint number, gboolean seated)
{
  FpPerson who = { .percentile = brief->percentile };

  if (brief->varied)
    who.percentile = 100 * draw (brief->seed, owner, row, number, LOT_STATURE);
  if (seated && brief->children > 0)
    who.child = draw (brief->seed, owner, row, number, LOT_CHILD) * brief->children < 1;
  return who;
}

/* --- in words ------------------------------------------------------------------ */

#define GROWN "ANSUR II (2012), half women, half men"

const char *
fp_person_population (const FpPerson *who)
{
  if (who->eye > 0)
    return "wheelchair user, CEN/TR 15913 (2009)";
  return who->child ? "child of seven years, CDC (2000)" : GROWN;
}

char *
fp_population_words (const FpBrief *brief, guint children, guint wheelchairs)
{
  GString *out = g_string_new ("People: " GROWN);

  if (brief->varied)
    g_string_append_printf (out, ", each of his own stature (seed %u).", brief->seed);
  else
    g_string_append_printf (out, ", all of the %uth percentile of stature.", brief->percentile);
  if (children > 0)
    g_string_append_printf (out, " %u of them %s of seven years (CDC, 2000).", children,
                            children == 1 ? "is a child" : "are children");
  if (wheelchairs > 0)
    g_string_append_printf (out, " %u %s in a wheelchair and stay%s seated.", wheelchairs, wheelchairs == 1 ? "is" : "are",
                            wheelchairs == 1 ? "s" : "");
  return g_string_free (out, FALSE);
}
