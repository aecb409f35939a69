/* SPDX-License-Identifier: GPL-3.0-or-later */
/* level-diagram-words.c - what the diagram of levels says in words */
#include "level-diagram-private.h"

#include <math.h>

/* --- how far they are below ------------------------------------------------------- */

static char *
say_levels (const FpLevelDiagram *self)
{
  const FpRowLevel *tightest = fp_row_levels_tightest (self->rows);
  g_autofree char *footpace = fp_level_format (self->levels.footpace, self->units);
  g_autofree char *mensa = fp_level_format (fp_level_diagram_mensa (self), self->units);
  g_autofree char *highest = fp_level_format (self->levels.highest, self->units);
  g_autofree char *margin = fp_length_format_unit (fabs (self->levels.margin), self->units);
  g_autofree char *place = tightest != NULL ? fp_people_name (self->people, tightest->highest) : NULL;
  const char *way = self->levels.margin < 0 ? "above it" : "below it";
  const gboolean there = tightest != NULL && tightest->at.z >= self->levels.highest - 1;

  if (!self->levels.has_people)
    return g_strdup_printf ("The floor of the altar is at %s, the mensa at %s; there are no people.", footpace, mensa);
  return g_strdup_printf ("The floor of the altar is at %s, the mensa at %s. The floor of the people is highest at %s (%s): "
                          "%s %s.", footpace, mensa, highest, there ? place : "where nobody has a place", margin, way);
}

static char *
say_places (const FpLevelDiagram *self)
{
  if (!self->levels.has_people || self->levels.places == 0)
    return NULL;
  if (self->levels.not_below == 0)
    return g_strdup_printf ("All %u places are below the floor of the altar%s.", self->levels.places,
                            self->levels.gallery_places > 0 ? ", galleries apart" : "");
  return g_strdup_printf ("%u of %u places are not below the floor of the altar; their rows are marked.",
                          self->levels.not_below, self->levels.places);
}

/* --- how high it would have to be ----------------------------------------------------- */

/* "3 steps of 150 mm": from the floor of the sanctuary. */
static char *
say_flight (const FpLevelDiagram *self, double level)
{
  const FpFlight flight = fp_flight_for (level - self->levels.sanctuary, self->aims.risers);
  g_autofree char *sanctuary = fp_level_format (self->levels.sanctuary, self->units);
  g_autofree char *riser = fp_length_format_unit (flight.riser, self->units);
  g_autofree char *low = fp_length_format_unit (self->aims.risers.low, self->units);
  g_autofree char *high = fp_length_format_unit (self->aims.risers.high, self->units);

  if (level <= self->levels.sanctuary)
    return g_strdup_printf ("the floor of the sanctuary at %s is as high, and no step is needed", sanctuary);
  if (flight.steps == 0)
    return g_strdup ("the rules allow no riser");
  return g_strdup_printf ("from the floor of the sanctuary at %s by %u step%s of %s (from %s to %s is allowed)", sanctuary,
                          flight.steps, flight.steps == 1 ? "" : "s", riser, low, high);
}

static char *
say_wanted (const FpLevelDiagram *self)
{
  double level;
  g_autofree char *text = NULL, *flight = NULL, *by = NULL;

  if (!fp_level_diagram_wanted (self, &level))
    return NULL;
  text = fp_level_format (level, self->units);
  flight = say_flight (self, level);
  by = fp_length_format_unit (self->aims.margin, self->units);
  return g_strdup_printf ("The lowest floor of the altar below which all of them stand, by %s, is at %s: %s.", by, text,
                          flight);
}

static char *
say_first_row (const FpLevelDiagram *self)
{
  return g_strdup (self->aims.first_row);
}

char **
fp_level_diagram_words (const FpLevelDiagram *self)
{
  GStrvBuilder *words = g_strv_builder_new ();
  char *(*const say[]) (const FpLevelDiagram *) = { say_levels, say_places, say_wanted, say_first_row };
  char **out;

  if (self->altar == NULL)
    g_strv_builder_add (words, "There is no altar.");
  for (guint i = 0; i < G_N_ELEMENTS (say) && self->altar != NULL; i++)
    {
      g_autofree char *one = say[i] (self);

      if (one != NULL)
        g_strv_builder_add (words, one);
    }
  out = g_strv_builder_end (words);
  g_strv_builder_unref (words);
  return out;
}
