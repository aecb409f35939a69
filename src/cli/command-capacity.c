/* SPDX-License-Identifier: GPL-3.0-or-later */
/* footpace capacity: for how many there is room, how long Communion takes, and by which ways the people leave */
#include "command.h"

#include "footpace/capacities.h"

#include <math.h>
#include <string.h>

#define FORMS "text, csv or json"

typedef struct
{
  char *file, *alternative, *as, *part[FP_N_RECKONINGS], *sprinklers;
} Asked;

static void
asked_clear (Asked *asked)
{
  g_free (asked->file);
  g_free (asked->alternative);
  g_free (asked->as);
  g_free (asked->sprinklers);
  for (guint i = 0; i < FP_N_RECKONINGS; i++)
    g_free (asked->part[i]);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Asked, asked_clear)

/* --- what is said, over what the project keeps ------------------------------------------------ */

static gboolean
read_part (FpReckoningPart part, const char *text, FpReckoning *reckoning)
{
  g_autoptr (GError) error = NULL;
  double value;

  if (text == NULL || (fp_number_parse (text, &value, &error) && fp_reckoning_set (reckoning, part, value, &error)))
    return TRUE;
  {
    g_autofree char *said = g_strdup_printf ("--%s is “%s”: %s", fp_reckoning_id (part), text, error->message);

    fp_command_fail (said);
  }
  return FALSE;
}

static gboolean
read_sprinklers (const char *text, FpReckoning *reckoning)
{
  if (text == NULL)
    return TRUE;
  if (strcmp (text, "yes") != 0 && strcmp (text, "no") != 0)
    {
      fp_command_fail_value ("--sprinklers", text, "yes or no");
      return FALSE;
    }
  reckoning->sprinklers = strcmp (text, "yes") == 0;
  return TRUE;
}

/* (transfer full): NULL after having said what is wrong. */
static FpProject *
as_asked (const FpProject *project, const Asked *asked)
{
  FpReckoning reckoning = *fp_project_reckoning (project);

  for (guint i = 0; i < FP_N_RECKONINGS; i++)
    if (!read_part ((FpReckoningPart) i, asked->part[i], &reckoning))
      return NULL;
  return read_sprinklers (asked->sprinklers, &reckoning) ? fp_project_with_reckoning (project, &reckoning, NULL) : NULL;
}

/* --- told --------------------------------------------------------------------------------------- */

typedef char *(*Write) (const FpCapacities *all);

static Write
form_of (const char *as)
{
  if (as == NULL || g_ascii_strcasecmp (as, "text") == 0)
    return fp_capacities_text;
  if (g_ascii_strcasecmp (as, "csv") == 0)
    return fp_capacities_csv;
  if (g_ascii_strcasecmp (as, "json") == 0)
    return fp_capacities_json;
  fp_command_fail_value ("--as", as, FORMS);
  return NULL;
}

static int
tell (const FpProject *project, guint alternative, Write write)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, alternative);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (FpSight) sight = fp_sight_new (people, NULL);
  g_autoptr (FpCapacities) all = fp_capacities_new (people, sight);
  g_autofree char *text = write (all);

  return fp_command_print (text, strlen (text));
}

static int
tell_asked (const Asked *asked)
{
  const Write write = form_of (asked->as);
  g_autoptr (FpProject) kept = NULL, project = NULL;
  int alternative;

  if (write == NULL)
    return FP_EXIT_ERROR;
  kept = fp_command_load (asked->file);
  alternative = kept != NULL ? fp_command_alternative (kept, asked->alternative) : -1;
  project = alternative >= 0 ? as_asked (kept, asked) : NULL;
  return project == NULL ? FP_EXIT_ERROR : tell (project, (guint) alternative, write);
}

static int
run (int argc, char **argv)
{
  g_auto (Asked) asked = { 0 };
  int exit_code;
  const GOptionEntry entries[] = {
    { "alternative", 'a', 0, FP_OPTION_TEXT, &asked.alternative, "Which alternative, by id or name; otherwise the first", "ID" },
    { "as", 0, 0, FP_OPTION_TEXT, &asked.as, FORMS "; otherwise text", "FORM" },
    { "people", 0, 0, FP_OPTION_TEXT, &asked.part[FP_RECKONING_PEOPLE], "How many communicate; otherwise all who sit", "NUMBER" },
    { "ministers", 0, 0, FP_OPTION_TEXT, &asked.part[FP_RECKONING_MINISTERS], "How many give Communion; otherwise one", "NUMBER" },
    { "lines", 0, 0, FP_OPTION_TEXT, &asked.part[FP_RECKONING_LINES], "In how many lines; otherwise as many", "NUMBER" },
    { "each", 0, 0, FP_OPTION_TEXT, &asked.part[FP_RECKONING_EACH], "Seconds that one communicant takes", "SECONDS" },
    { "change", 0, 0, FP_OPTION_TEXT, &asked.part[FP_RECKONING_CHANGE], "Seconds from one to the next at the rail", "SECONDS" },
    { "step", 0, 0, FP_OPTION_TEXT, &asked.part[FP_RECKONING_STEP], "Seconds from one to the next in a line", "SECONDS" },
    { "back", 0, 0, FP_OPTION_TEXT, &asked.part[FP_RECKONING_BACK], "Seconds of the way back along the rail", "SECONDS" },
    { "sprinklers", 0, 0, FP_OPTION_TEXT, &asked.sprinklers, "yes or no: throughout, with an alarm that speaks", "YES" },
    { NULL }
  };

  return fp_command_options (&fp_command_capacity, argc, argv, entries, &asked.file, &exit_code) ? tell_asked (&asked) : exit_code;
}

const FpCommand fp_command_capacity = {
  "capacity", "FILE", "tells for how many there is room, and how long Communion takes",
  "Counts the places of one alternative of the project FILE: seats by block and in all, by\n"
  "the parish's width of a seat and by a printed rule, places for wheelchairs with companions\n"
  "and with what is seen from them, room to stand, and places to kneel at the rail; how long\n"
  "Communion takes at the rail and in lines; and the ways out against printed tables. What the\n"
  "project keeps of times and ministers holds where an option does not say otherwise.",
  "  footpace capacity parish.footpace\n"
  "  footpace capacity parish.footpace --ministers 2 --each 4 --change 20 --back 6 --step 1\n"
  "  footpace capacity parish.footpace --as json > capacity.json\n",
  run
};
