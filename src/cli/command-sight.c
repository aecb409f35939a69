/* SPDX-License-Identifier: GPL-3.0-or-later */
/* footpace sight: who sees what, and past what */
#include "command.h"

#include "asked-sheet.h"
#include "asked.h"

#include "footpace/review.h"

#include <string.h>


typedef struct
{
  char     *file, *alternative, *of, *when, *place, *as, *out, *paper, *ink, *seeds;
  gboolean  portrait;

  FpMoment  moment;  /* FP_N_MOMENTS: of each thing its own */
  FpFocus   focus;   /* FP_N_FOCUSES: all                   */
  guint     n_seeds; /* 0: only who is there by the brief   */
  FpPagesForm form;
} Options;

static void
options_clear (Options *o)
{
  g_free (o->file);
  g_free (o->alternative);
  g_free (o->of);
  g_free (o->when);
  g_free (o->place);
  g_free (o->as);
  g_free (o->out);
  g_free (o->paper);
  g_free (o->ink);
  g_free (o->seeds);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Options, options_clear)

/* --- as typed -------------------------------------------------------------------- */

static gboolean
wrong (const char *option, const char *value, const char *expected)
{
  fp_command_fail_value (option, value, expected);
  return FALSE;
}

static gboolean
find_what (Options *o)
{
  o->focus = FP_N_FOCUSES;
  o->moment = FP_N_MOMENTS;
  return (o->of == NULL || fp_asked_focus ("--of", o->of, &o->focus))
         && (o->when == NULL || fp_asked_moment ("--when", o->when, &o->moment));
}

static gboolean
check_seeds (Options *o)
{
  guint64 seeds;

  if (o->seeds == NULL)
    return TRUE;
  if (!g_ascii_string_to_unsigned (o->seeds, 10, 2, FP_SIGHT_SEEDS_MOST, &seeds, NULL))
    return wrong ("--seeds", o->seeds, "a whole number from 2 to 99");
  if (o->out != NULL || g_strcmp0 (o->as, "csv") == 0)
    return wrong ("--seeds", o->seeds, "the report as text, without --out and --as csv");
  o->n_seeds = (guint) seeds;
  return TRUE;
}

static gboolean
check_form (Options *o)
{
  if (o->as != NULL && !g_str_equal (o->as, "text") && !g_str_equal (o->as, "csv"))
    return wrong ("--as", o->as, "text or csv");
  if (o->out == NULL)
    return TRUE;
  if (o->focus == FP_N_FOCUSES)
    return wrong ("--of", NULL, "what the sheet of --out shows: mensa, host, tabernacle …");
  return fp_pages_form_of_path (o->out, &o->form) || wrong ("--out", o->out, "a file ending in .pdf, .svg or .png");
}

/* As a view from the pew is asked for, or by the name that this command tells: -1 after having said so. */
static int
find_place (const FpPeople *people, const char *wanted)
{
  g_autofree char *block = NULL;
  guint n, row, number, found;

  if (fp_asked_seat (wanted, &block, &row, &number) && fp_pew_place_find (people, block, row, number, &found))
    return (int) found;
  fp_people_places (people, &n);
  for (guint i = 0; i < n; i++)
    {
      g_autofree char *name = fp_people_name (people, i);
      if (g_ascii_strcasecmp (name, wanted) == 0)
        return (int) i;
    }
  fp_command_fail_value ("--place", wanted, FP_ASKED_SEAT " of a place that there is, or its name");
  return -1;
}

/* --- what is made --------------------------------------------------------------------- */

static int
print_report (const FpMeasuring *of, const Options *o)
{
  g_autofree char *text = g_strcmp0 (o->as, "csv") == 0 ? fp_sight_report_csv (of, o->moment, o->focus)
                                                        : fp_sight_report_text (of, o->moment, o->focus, o->n_seeds);

  return fp_command_print (text, strlen (text));
}

static int
draw_sheet (const FpMeasuring *of, const Options *o)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) pages = g_ptr_array_new_with_free_func ((GDestroyNotify) fp_drawing_unref);
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *date = g_date_time_format (now, "%Y-%m-%d");
  const FpMoment moment = o->moment == FP_N_MOMENTS ? fp_moment_of_focus (o->focus) : o->moment;
  FpSheetSpec spec = { .paper = FP_PAPER_A3, .landscape = !o->portrait, .date = date };
  int place = -1;
  FpDrawing *sheet;

  if (!fp_asked_sheet (o->paper, NULL, o->ink, &spec))
    return FP_EXIT_ERROR;
  if (o->place != NULL && (place = find_place (of->people, o->place)) < 0)
    return FP_EXIT_ERROR;
  const FpSightLook look = { moment, o->focus, place, TRUE };
  sheet = fp_sight_sheet (of, &look, &spec, NULL, &error);
  if (sheet == NULL)
    return fp_command_fail (error->message);
  g_ptr_array_add (pages, sheet);
  if (!fp_pages_write (pages, of->scene, o->form, o->file, o->out, &error))
    return fp_command_fail (error->message);
  return FP_EXIT_CLEAR;
}

static int
look (const FpProject *project, guint alternative, const Options *o)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, alternative);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (FpSight) sight = fp_sight_new (people, NULL);
  const FpMeasuring of = { scene, people, fp_levels (people), sight };

  return o->out != NULL ? draw_sheet (&of, o) : print_report (&of, o);
}

static int
run (int argc, char **argv)
{
  g_auto (Options) o = { NULL };
  g_autoptr (FpProject) project = NULL;
  int exit_code, alternative;
  const GOptionEntry entries[] = {
    { "alternative", 'a', 0, FP_OPTION_TEXT, &o.alternative, "Which alternative, by id or name; otherwise the first", "ID" },
    { "of", 0, 0, FP_OPTION_TEXT, &o.of, "What is looked at, such as host or ambo; otherwise everything", "ID" },
    { "when", 0, 0, FP_OPTION_TEXT, &o.when, "At which moment, such as elevation; otherwise when it matters", "MOMENT" },
    { "place", 0, 0, FP_OPTION_TEXT, &o.place, "Whose line of sight the sheet shows: " FP_ASKED_SEAT, "PLACE" },
    { "seeds", 0, 0, FP_OPTION_TEXT, &o.seeds, "Also with other people in the places, so many times over", "N" },
    { "as", 0, 0, FP_OPTION_TEXT, &o.as, "text or csv; otherwise text", "FORM" },
    { "out", 'o', 0, FP_OPTION_TEXT, &o.out, "Draw a sheet into this file: .pdf, .svg or .png", "FILE" },
    { "paper", 'p', 0, FP_OPTION_TEXT, &o.paper, FP_ASKED_PAPERS "; otherwise a3", "PAPER" },
    { "portrait", 0, 0, G_OPTION_ARG_NONE, &o.portrait, "Upright; otherwise landscape", NULL },
    { "ink", 0, 0, FP_OPTION_TEXT, &o.ink, FP_ASKED_INKS "; otherwise colour", "INK" },
    { NULL }
  };

  if (!fp_command_options (&fp_command_sight, argc, argv, entries, &o.file, &exit_code))
    return exit_code;
  if (!find_what (&o) || !check_form (&o) || !check_seeds (&o))
    return FP_EXIT_ERROR;
  project = fp_command_load (o.file);
  if (project == NULL)
    return FP_EXIT_ERROR;
  alternative = fp_command_alternative (project, o.alternative);
  return alternative < 0 ? FP_EXIT_ERROR : look (project, (guint) alternative, &o);
}

const FpCommand fp_command_sight = {
  "sight", "FILE", "tells who sees what, and past what",
  "Looks from every place of the people in one alternative of the project FILE, at the\n"
  "moments of the celebration, past building, furnishings, ministers and the people in\n"
  "front; tells it in a sentence, by row, and for those who see least. With --out it is\n"
  "drawn: each place on the plan marked by what it sees, and the line of sight of one.\n"
  "With --seeds 9 nine other sets of people, short and tall, are put into the places in\n"
  "turn, to tell how much hangs on who sits where.",
  "  footpace sight parish.footpace\n"
  "  footpace sight parish.footpace --of host --when elevation\n"
  "  footpace sight parish.footpace --seeds 9\n"
  "  footpace sight parish.footpace --as csv > sight.csv\n"
  "  footpace sight parish.footpace --of mensa --out sight.pdf\n",
  run
};
