/* SPDX-License-Identifier: GPL-3.0-or-later */
/* footpace linen: the cloths, and how they are cut of one bolt */
#include "command.h"

#include "asked-sheet.h"

#include "footpace/linen-plan.h"

#include <string.h>

typedef struct
{
  char       *file, *alternative, *bolt, *warp, *weft, *small, *as, *out, *paper, *scale, *ink;
  gboolean    portrait, join;
  FpAskedAs          told;
  FpLinenSpec linen;
  FpPagesForm form;
  FpSheetSpec spec;
} Options;

static void
options_clear (Options *o)
{
  g_free (o->file);
  g_free (o->alternative);
  g_free (o->bolt);
  g_free (o->warp);
  g_free (o->weft);
  g_free (o->small);
  g_free (o->as);
  g_free (o->out);
  g_free (o->paper);
  g_free (o->scale);
  g_free (o->ink);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Options, options_clear)

/* --- as typed -------------------------------------------------------------- */

/* What the project's works say where nothing is typed, and they say anything of linen. */
static gboolean
fill_share (const char *option, const char *text, const FpWorks *works, double own, double *share)
{
  double percent;

  *share = own;
  if (text == NULL && works->bolt > 0)
    return TRUE;
  if (text != NULL && fp_number_parse (text, &percent, NULL) && percent >= 0 && percent <= FP_SHRINKAGE_MAX * 100)
    {
      *share = percent / 100;
      return TRUE;
    }
  fp_command_fail_value (option, text, "what a tried piece lost in washing, 0 to 25 per cent");
  return FALSE;
}

static gboolean
fill_sheet (Options *o)
{
  o->spec = (FpSheetSpec) { .kind = FP_SHEET_PLAN, .paper = FP_PAPER_A3, .landscape = !o->portrait };
  return fp_asked_sheet (o->paper, o->scale, o->ink, &o->spec);
}

static gboolean
fill (Options *o)
{
  return fp_asked_as (o->as, o->out, &o->told, &o->form) && fill_sheet (o);
}

/* In the units of the project, unless it names others. */
static gboolean
fill_bolt (Options *o, const FpWorks *works, FpUnits units)
{
  g_autoptr (GError) error = NULL;

  if (o->bolt == NULL && works->bolt > 0)
    {
      o->linen.bolt = works->bolt;
      return TRUE;
    }
  if (o->bolt == NULL || !fp_length_parse (o->bolt, units, &o->linen.bolt, NULL) || !(o->linen.bolt > 0))
    {
      fp_command_fail_value ("--bolt", o->bolt, "the width of the cloth between its selvedges, such as 1500 mm or 60 in");
      return FALSE;
    }
  if (fp_works_length_check (FP_WORKS_BOLT, o->linen.bolt, o->bolt, units, &error))
    return TRUE;
  fp_command_fail (error->message);
  return FALSE;
}

/* "purificators=12": one of those parted by commas. */
static gboolean
fill_small (char *text, FpWorks *works)
{
  char *number = strchr (text, '=');
  FpSmall one;
  guint64 n;

  if (number == NULL)
    return FALSE;
  *number++ = '\0';
  if (!fp_small_find (g_strstrip (text), &one) || !g_ascii_string_to_unsigned (g_strstrip (number), 10, 0, FP_SMALLS_MOST, &n, NULL))
    return FALSE;
  works->small[one] = (double) n;
  return TRUE;
}

/* The project with so many small linens; (transfer full), NULL where they were told badly. */
static FpProject *
with_smalls (const Options *o, const FpProject *project)
{
  g_auto (GStrv) part = o->small != NULL ? g_strsplit (o->small, ",", -1) : NULL;
  FpWorks works = *fp_project_works (project);

  for (guint i = 0; part != NULL && part[i] != NULL; i++)
    if (!fill_small (part[i], &works))
      {
        fp_command_fail_value ("--small", o->small, "such as corporals=2,purificators=12; there are corporals, palls, purificators, "
                               "finger-towels, amices, chalice-veils and burses, at most 40 of each");
        return NULL;
      }
  return fp_project_with_works (project, &works, NULL);
}

static gboolean
fill_cloth (Options *o, const FpProject *project)
{
  const FpWorks *works = fp_project_works (project);

  return fill_share ("--warp", o->warp, works, works->warp, &o->linen.shrinkage.warp)
         && fill_share ("--weft", o->weft, works, works->weft, &o->linen.shrinkage.weft)
         && fill_bolt (o, works, fp_project_brief (project)->units);
}

/* --- told ------------------------------------------------------------------- */

static int
draw (const FpLinenPlan *plan, const FpScene *scene, Options *o)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *date = g_date_time_format (now, "%Y-%m-%d");
  g_autoptr (GPtrArray) pages = NULL;
  double scale;

  o->spec.date = date;
  pages = fp_linen_plan_sheets (plan, &o->spec, &scale, &error);
  if (pages == NULL || !fp_pages_write (pages, scene, o->form, o->file, o->out, &error))
    return fp_command_fail (error->message);
  if (o->scale != NULL)
    fp_pages_note_scale (scale);
  return FP_EXIT_CLEAR;
}

static int
tell (const FpProject *project, Options *o)
{
  const int alternative = fp_command_alternative (project, o->alternative);
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) reckoned = NULL;
  g_autoptr (FpScene) scene = NULL;
  g_autoptr (FpLinenPlan) plan = NULL;
  g_autofree char *text = NULL;

  if (alternative < 0 || !fill_cloth (o, project))
    return FP_EXIT_ERROR;
  reckoned = with_smalls (o, project);
  if (reckoned == NULL)
    return FP_EXIT_ERROR;
  o->linen.join = o->join || fp_project_works (project)->joined;
  scene = fp_scene_new (reckoned, (guint) alternative);
  plan = fp_linen_plan_new (scene, &o->linen, &error);
  if (plan == NULL)
    return fp_command_fail (error->message);
  if (o->told == FP_ASKED_DRAWN)
    return draw (plan, scene, o);
  text = o->told == FP_ASKED_CSV ? fp_linen_plan_csv (plan) : fp_linen_plan_text (plan);
  return fp_command_print (text, strlen (text));
}

static int
run (int argc, char **argv)
{
  g_auto (Options) o = { 0 };
  g_autoptr (FpProject) project = NULL;
  int exit_code;
  const GOptionEntry entries[] = {
    { "bolt", 'b', 0, FP_OPTION_TEXT, &o.bolt, "Width of the cloth between its selvedges", "LENGTH" },
    { "warp", 0, 0, FP_OPTION_TEXT, &o.warp, "What a tried piece lost along the bolt", "PER CENT" },
    { "weft", 0, 0, FP_OPTION_TEXT, &o.weft, "What it lost across", "PER CENT" },
    { "small", 0, 0, FP_OPTION_TEXT, &o.small, "Of small linens: corporals=2,purificators=12; otherwise for one Mass",
      "NUMBERS" },
    { "join", 0, 0, G_OPTION_ARG_NONE, &o.join, "Cut what is wider than the bolt in widths that are joined", NULL },
    { "alternative", 'a', 0, FP_OPTION_TEXT, &o.alternative, "Which alternative, by id or name; otherwise the first",
      "ID" },
    { "out", 'o', 0, FP_OPTION_TEXT, &o.out, "Draw it into this file; - is standard output", "FILE" },
    { "as", 0, 0, FP_OPTION_TEXT, &o.as, "text or csv; with --out pdf, svg or png, otherwise by its ending", "FORM" },
    { "paper", 'p', 0, FP_OPTION_TEXT, &o.paper, FP_ASKED_PAPERS "; otherwise a3", "PAPER" },
    { "portrait", 0, 0, G_OPTION_ARG_NONE, &o.portrait, "Upright paper; otherwise landscape", NULL },
    { "scale", 0, 0, FP_OPTION_TEXT, &o.scale, "20 or 1:20; otherwise the largest that fits", "SCALE" },
    { "ink", 0, 0, FP_OPTION_TEXT, &o.ink, FP_ASKED_INKS "; otherwise colour", "INK" },
    { NULL }
  };

  if (!fp_command_options (&fp_command_linen, argc, argv, entries, &o.file, &exit_code))
    return exit_code;
  if (!fill (&o))
    return FP_EXIT_ERROR;
  project = fp_command_load (o.file);
  return project == NULL ? FP_EXIT_ERROR : tell (project, &o);
}

const FpCommand fp_command_linen = {
  "linen", "FILE", "lays out the cloths to be cut of a bolt",
  "Takes the sizes of the cloths that one alternative in the project FILE needs from the\n"
  "things as they are drawn: of altars what of the mensa is free before a gradine or round a\n"
  "tabernacle, of credences, of rails that have a cloth; and the small linens of one Mass, or\n"
  "as many as are told. Adds hems and what the cloth loses in washing, and lays the pieces out\n"
  "on a bolt so that as little as can be is cut. With --out it is drawn: what to buy, the bolt\n"
  "with the pieces on it, the size of each, and how it is made; frontals and veils, too, which\n"
  "are of silk. What is wider than the bolt is told with the width that it needs. What a cloth\n"
  "loses nobody knows beforehand: wash a piece of it, and measure. What is not typed is as\n"
  "the project's works say.",
  "  footpace linen parish.footpace --bolt '1500 mm' --warp 6 --weft 2.5\n"
  "  footpace linen parish.footpace -a b --bolt '60 in' --warp 4 --weft 4 --out linen.pdf\n"
  "  footpace linen parish.footpace --bolt '36 in' --warp 6 --weft 2.5 --join\n"
  "  footpace linen parish.footpace --bolt 1500 --warp 6 --weft 2.5 --small purificators=12 --as csv\n",
  run
};
