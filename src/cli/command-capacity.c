/* SPDX-License-Identifier: GPL-3.0-or-later */
/* footpace capacity: for how many there is room, and how long Communion takes */
#include "command.h"

#include "footpace/capacity.h"

#include <math.h>
#include <string.h>

typedef struct
{
  char *file, *alternative, *people, *ministers, *each, *change, *step, *back;
} Asked;

static void
asked_clear (Asked *asked)
{
  g_free (asked->file);
  g_free (asked->alternative);
  g_free (asked->people);
  g_free (asked->ministers);
  g_free (asked->each);
  g_free (asked->change);
  g_free (asked->step);
  g_free (asked->back);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Asked, asked_clear)

/* --- room -------------------------------------------------------------------------------- */

/* Where the rule speaks of it. */
static void
add_by_rule (GString *out, guint places, guint by_rule, gboolean ruled)
{
  if (ruled && by_rule == places)
    g_string_append (out, "; by the printed rule the same");
  else if (ruled)
    g_string_append_printf (out, "; by the printed rule %u", by_rule);
  g_string_append_c (out, '\n');
}

static void
add_line (GString *out, const FpScene *scene, const FpCapacityLine *line)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);
  const char *name = fp_item_name (placed[line->owner].item);

  g_string_append_printf (out, "  %s: %u%s", name, line->places, line->gallery ? ", in a gallery" : "");
  add_by_rule (out, line->places, line->by_rule, line->ruled);
}

static guint
add_sort (GString *out, const FpScene *scene, const GArray *lines, FpPlacesSort sort)
{
  guint places = 0, by_rule = 0;
  gboolean ruled = TRUE;

  for (guint i = 0; i < lines->len; i++)
    {
      const FpCapacityLine *line = &g_array_index (lines, FpCapacityLine, i);

      if (line->sort != sort)
        continue;
      places += line->places;
      by_rule += line->by_rule;
      ruled &= line->ruled; /* else the sum would be of two ways of counting */
    }
  if (places == 0)
    return 0;
  g_string_append_printf (out, "%s: %u", fp_places_label (sort), places);
  add_by_rule (out, places, by_rule, ruled);
  for (guint i = 0; i < lines->len; i++)
    if (g_array_index (lines, FpCapacityLine, i).sort == sort)
      add_line (out, scene, &g_array_index (lines, FpCapacityLine, i));
  return places;
}

/* --- Communion ------------------------------------------------------------------------------ */

static gboolean
read_count (const char *option, const char *text, guint most, guint *count)
{
  double value;

  if (text == NULL)
    return TRUE;
  if (fp_number_parse (text, &value, NULL) && value >= 1 && value <= most && value == floor (value))
    {
      *count = (guint) value;
      return TRUE;
    }
  {
    g_autofree char *expected = g_strdup_printf ("a whole number from 1 to %u", most);

    fp_command_fail_value (option, text, expected);
  }
  return FALSE;
}

static gboolean
read_seconds (const char *option, const char *text, double least, double *seconds)
{
  if (text == NULL)
    return TRUE;
  if (fp_number_parse (text, seconds, NULL) && *seconds >= least && *seconds <= FP_COMMUNION_SECONDS_MAX)
    return TRUE;
  fp_command_fail_value (option, text, "seconds, up to 600");
  return FALSE;
}

static gboolean
read_communion (const Asked *asked, FpCommunion *c, double *step)
{
  return read_count ("--people", asked->people, FP_COMMUNION_PEOPLE_MAX, &c->people)
         && read_count ("--ministers", asked->ministers, FP_COMMUNION_MINISTERS_MAX, &c->ministers)
         && read_seconds ("--each", asked->each, 0.1, &c->each) && read_seconds ("--change", asked->change, 0, &c->change)
         && read_seconds ("--back", asked->back, 0, &c->back) && read_seconds ("--step", asked->step, 0, step);
}

#define SECONDS_TOLD 300 /* of longer times whole minutes are told: what is entered is no more exact */

static char *
minutes_words (double seconds, gboolean told)
{
  const char *how = told ? "about " : "at least ";
  const guint whole = (guint) ceil (seconds);

  return whole < SECONDS_TOLD ? g_strdup_printf ("%s%u min %02u s", told ? "" : how, whole / 60, whole % 60)
                              : g_strdup_printf ("%s%u min", how, told ? (whole + 30) / 60 : whole / 60);
}

static void
add_communion (GString *out, FpCommunion c, gboolean told, const char *where)
{
  g_autofree char *time = minutes_words (fp_communion_seconds (&c), told);
  g_autofree char *each = fp_number_format (c.each), *change = fp_number_format (c.change), *back = fp_number_format (c.back);

  g_string_append_printf (out, "Communion of %u %s, %u minister%s: %s (%s s each, %s s a change%s%s%s)\n", c.people, where,
                          c.ministers, c.ministers == 1 ? "" : "s", time, each, change, c.places > 0 ? ", " : "",
                          c.places > 0 ? back : "", c.places > 0 ? " s the way back along the rail" : "");
}

static void
add_communions (GString *out, const Asked *asked, FpCommunion c, double step, guint kneeling)
{
  if (asked->each == NULL)
    {
      g_string_append (out, "\nHow long Communion takes is told where --each says how many seconds one communicant takes: no\n"
                            "printed figure was found, and none is assumed.\n");
      return;
    }
  g_string_append_c (out, '\n');
  if (kneeling > 0)
    {
      c.places = MIN (kneeling, FP_COMMUNION_PLACES_MAX);
      add_communion (out, c, asked->change != NULL && asked->back != NULL, "at the rail");
    }
  c.places = 0;
  c.change = step;
  add_communion (out, c, asked->step != NULL, "in lines");
}

static int
tell (const Asked *asked, const FpProject *project, guint alternative)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, alternative);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (GArray) lines = fp_capacity (people);
  g_autoptr (GString) out = g_string_new (NULL);
  FpCommunion c = { .people = CLAMP (fp_people_seats (people), 1, FP_COMMUNION_PEOPLE_MAX), .ministers = 1 };
  guint kneeling = 0;
  double step = 0;

  if (!read_communion (asked, &c, &step))
    return FP_EXIT_ERROR;
  for (guint sort = 0; sort < FP_N_PLACES; sort++)
    {
      const guint places = add_sort (out, scene, lines, (FpPlacesSort) sort);

      kneeling = sort == FP_PLACES_KNEELING ? places : kneeling;
    }
  if (lines->len == 0)
    g_string_append (out, "Nobody has a place here.\n");
  add_communions (out, asked, c, step, kneeling);
  g_string_append (out, "\nThe printed rule, of straight benches: one person for each whole 18 in (457 mm), International\n"
                        "Building Code 2015, 1004.4. A count is not comfort: local code and the fire authority say how many\n"
                        "may be in the room.\n");
  return fp_command_print (out->str, out->len);
}

static int
run (int argc, char **argv)
{
  g_auto (Asked) asked = { 0 };
  g_autoptr (FpProject) project = NULL;
  int exit_code, alternative;
  const GOptionEntry entries[] = {
    { "alternative", 'a', 0, FP_OPTION_TEXT, &asked.alternative, "Which alternative, by id or name; otherwise the first", "ID" },
    { "people", 0, 0, FP_OPTION_TEXT, &asked.people, "How many communicate; otherwise all who sit", "NUMBER" },
    { "ministers", 0, 0, FP_OPTION_TEXT, &asked.ministers, "How many give Communion; otherwise one", "NUMBER" },
    { "each", 0, 0, FP_OPTION_TEXT, &asked.each, "Seconds that one communicant takes, as you found it", "SECONDS" },
    { "change", 0, 0, FP_OPTION_TEXT, &asked.change, "Seconds from one to the next at a place of the rail; otherwise 0", "SECONDS" },
    { "step", 0, 0, FP_OPTION_TEXT, &asked.step, "Seconds from one to the next in a line; otherwise 0", "SECONDS" },
    { "back", 0, 0, FP_OPTION_TEXT, &asked.back, "Seconds of the way back along the rail; otherwise 0", "SECONDS" },
    { NULL }
  };

  if (!fp_command_options (&fp_command_capacity, argc, argv, entries, &asked.file, &exit_code))
    return exit_code;
  project = fp_command_load (asked.file);
  alternative = project != NULL ? fp_command_alternative (project, asked.alternative) : -1;
  return alternative < 0 ? FP_EXIT_ERROR : tell (&asked, project, (guint) alternative);
}

const FpCommand fp_command_capacity = {
  "capacity", "FILE", "tells for how many there is room, and how long Communion takes",
  "Counts the places of one alternative of the project FILE: seats by block and in all, by\n"
  "the parish's width of a seat and by a printed rule, places for wheelchairs, room to\n"
  "stand, and places to kneel at the rail. With the seconds that one communicant takes it\n"
  "tells how long Communion takes at the rail and in lines.",
  "  footpace capacity parish.footpace\n"
  "  footpace capacity parish.footpace --ministers 2 --each 4 --change 20 --back 6 --step 1\n",
  run
};
