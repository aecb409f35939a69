/* SPDX-License-Identifier: GPL-3.0-or-later */
/* footpace schedule: what is to be built, bought and cut, how heavy it is, and what it costs by the parish's rates */
#include "command.h"

#include "asked-sheet.h"

#include "footpace/schedules.h"

#include <string.h>

typedef struct
{
  char            *file, *alternative, *of, *only, *as, *out, *paper, *ink;
  gboolean         portrait;
  FpAskedAs               told;
  FpScheduleChoice choice;
  FpPagesForm      form;
  FpSheetSpec      spec;
} Options;

static void
options_clear (Options *o)
{
  g_free (o->file);
  g_free (o->alternative);
  g_free (o->of);
  g_free (o->only);
  g_free (o->as);
  g_free (o->out);
  g_free (o->paper);
  g_free (o->ink);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Options, options_clear)

/* --- as typed -------------------------------------------------------------- */

#define HEADINGS "steps, altar, paving, rail, timber, metalwork, candles, linen, furniture, building or weights"
#define WORKS    "new, moved, removed or kept"

static gboolean
add_of (Options *o, const char *word)
{
  FpHeading heading;

  if (g_ascii_strcasecmp (word, "weights") == 0)
    o->choice.weights = TRUE;
  else if (fp_heading_find (word, &heading))
    o->choice.headings |= 1u << heading;
  else
    {
      fp_command_fail_value ("--of", word, HEADINGS);
      return FALSE;
    }
  return TRUE;
}

static gboolean
fill_of (Options *o)
{
  g_auto (GStrv) words = g_strsplit_set (o->of != NULL ? o->of : "", ", ", -1);

  o->choice.weights = o->of == NULL;
  for (guint i = 0; words[i] != NULL; i++)
    if (words[i][0] != '\0' && !add_of (o, words[i]))
      return FALSE;
  return TRUE;
}

static gboolean
add_only (Options *o, const char *word)
{
  for (guint i = 0; i < FP_N_WORKS; i++)
    if (g_ascii_strcasecmp (word, fp_work_id ((FpWork) i)) == 0)
      {
        o->choice.works |= 1u << i;
        return TRUE;
      }
  fp_command_fail_value ("--only", word, WORKS);
  return FALSE;
}

static gboolean
fill_only (Options *o)
{
  g_auto (GStrv) words = g_strsplit_set (o->only != NULL ? o->only : "", ", ", -1);

  for (guint i = 0; words[i] != NULL; i++)
    if (words[i][0] != '\0' && !add_only (o, words[i]))
      return FALSE;
  return TRUE;
}

static gboolean
fill (Options *o)
{
  o->spec = (FpSheetSpec) { .kind = FP_SHEET_PLAN, .paper = FP_PAPER_A3, .landscape = !o->portrait };
  return fill_of (o) && fill_only (o) && fp_asked_as (o->as, o->out, &o->told, &o->form) && fp_asked_sheet (o->paper, NULL, o->ink, &o->spec);
}

/* --- told ------------------------------------------------------------------- */

static int
draw (const FpBill *bill, Options *o)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *date = g_date_time_format (now, "%Y-%m-%d");
  g_autoptr (GPtrArray) pages = NULL;

  o->spec.date = date;
  pages = fp_schedules_sheets (bill, &o->choice, &o->spec, &error);
  if (pages == NULL || !fp_pages_write (pages, fp_bill_scene (bill), o->form, o->file, o->out, &error))
    return fp_command_fail (error->message);
  return FP_EXIT_CLEAR;
}

static int
tell (const FpProject *project, Options *o)
{
  const int alternative = fp_command_alternative (project, o->alternative);
  g_autoptr (FpScene) scene = NULL;
  g_autoptr (FpBill) bill = NULL;
  g_autofree char *text = NULL;

  if (alternative < 0)
    return FP_EXIT_ERROR;
  scene = fp_scene_new (project, (guint) alternative);
  bill = fp_bill_new (scene);
  if (o->told == FP_ASKED_DRAWN)
    return draw (bill, o);
  text = o->told == FP_ASKED_CSV ? fp_schedules_csv (bill, &o->choice) : fp_schedules_text (bill, &o->choice);
  return fp_command_print (text, strlen (text));
}

static int
run (int argc, char **argv)
{
  g_auto (Options) o = { 0 };
  g_autoptr (FpProject) project = NULL;
  int exit_code;
  const GOptionEntry entries[] = {
    { "alternative", 'a', 0, FP_OPTION_TEXT, &o.alternative, "Which alternative, by id or name; otherwise the first",
      "ID" },
    { "of", 0, 0, FP_OPTION_TEXT, &o.of, "Those alone, parted by commas: steps, altar, linen, weights …",
      "HEADINGS" },
    { "only", 0, 0, FP_OPTION_TEXT, &o.only, WORKS ", parted by commas; otherwise all", "WORK" },
    { "out", 'o', 0, FP_OPTION_TEXT, &o.out, "Set it on sheets in this file; - is standard output", "FILE" },
    { "as", 0, 0, FP_OPTION_TEXT, &o.as, "text or csv; with --out pdf, svg or png, otherwise by its ending", "FORM" },
    { "paper", 'p', 0, FP_OPTION_TEXT, &o.paper, FP_ASKED_PAPERS "; otherwise a3", "PAPER" },
    { "portrait", 0, 0, G_OPTION_ARG_NONE, &o.portrait, "Upright paper; otherwise landscape", NULL },
    { "ink", 0, 0, FP_OPTION_TEXT, &o.ink, FP_ASKED_INKS "; otherwise colour", "INK" },
    { NULL }
  };

  if (!fp_command_options (&fp_command_schedule, argc, argv, entries, &o.file, &exit_code))
    return exit_code;
  if (!fill (&o))
    return FP_EXIT_ERROR;
  project = fp_command_load (o.file);
  return project == NULL ? FP_EXIT_ERROR : tell (project, &o);
}

const FpCommand fp_command_schedule = {
  "schedule", "FILE", "lists what is to be built, bought and cut",
  "Takes from one alternative in the project FILE every line by which people price, cut and\n"
  "build: steps divided into slabs, the parts of the altar, rail, timber, metalwork, candles,\n"
  "linen and furniture, with sizes, net amounts and masses; what is new, moved, taken out and\n"
  "kept apart; and what bears on the floor. Stone, slabs and rates are those of the project's\n"
  "works. No price is known to the program: a cost is the parish's own rate by the amount.",
  "  footpace schedule parish.footpace\n"
  "  footpace schedule parish.footpace -a b --of steps,altar --only new --out steps.pdf\n"
  "  footpace schedule parish.footpace --as csv > parish.csv\n",
  run
};
