/* SPDX-License-Identifier: GPL-3.0-or-later */
/* footpace draw: a sheet to scale, as PDF, SVG or PNG */
#include "command.h"

#include "comparing.h"

#include "pages.h"

#include <string.h>

#define SHEETS "plan, elevation, section, board or compare"
#define PAPERS "a4, a3, a2, a1, letter or tabloid"
#define FORMS  "pdf, svg or png"
#define SCALE_MOST 10000

typedef struct
{
  char    *sheet, *out, *as, *paper, *scale, *alternative;
  gboolean portrait, whole, findings;

  FpPagesForm form;
  gboolean    compare;
} Options;

static void
options_clear (Options *o)
{
  g_free (o->sheet);
  g_free (o->out);
  g_free (o->as);
  g_free (o->paper);
  g_free (o->scale);
  g_free (o->alternative);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Options, options_clear)

static gboolean
find_sheet (const char *id, FpSheetKind *kind)
{
  for (guint i = 0; i < FP_N_SHEETS; i++)
    if (g_ascii_strcasecmp (fp_sheet_id ((FpSheetKind) i), id) == 0)
      {
        *kind = (FpSheetKind) i;
        return TRUE;
      }
  return FALSE;
}

/* "50" or "1:50"; 0 for "fit". */
static gboolean
parse_scale (const char *text, double *scale)
{
  const char *digits = g_str_has_prefix (text, "1:") ? text + 2 : text;
  guint64 number;

  *scale = 0;
  if (g_ascii_strcasecmp (text, "fit") == 0)
    return TRUE;
  if (!g_ascii_string_to_unsigned (digits, 10, 1, SCALE_MOST, &number, NULL))
    return FALSE;
  *scale = (double) number;
  return TRUE;
}

/* ISO 5455: 1, 2 or 5 times a power of ten. */
static gboolean
is_standard (double scale)
{
  while (scale >= 10)
    scale /= 10;
  return scale == 1 || scale == 2 || scale == 5;
}

/* Always FALSE, after having said so. */
static gboolean
wrong (const char *option, const char *value, const char *expected)
{
  fp_command_fail_value (option, value, expected);
  return FALSE;
}

static gboolean
fill_form (Options *o)
{
  if (o->out == NULL)
    return wrong ("--out", NULL, "a file ending in .pdf, .svg or .png, or -");
  if (o->as != NULL)
    return fp_pages_form_find (o->as, &o->form) || wrong ("--as", o->as, FORMS);
  if (g_str_equal (o->out, "-"))
    return wrong ("--as", NULL, FORMS ": standard output has no ending to go by");
  return fp_pages_form_of_path (o->out, &o->form)
         || wrong ("--out", o->out, "a file ending in .pdf, .svg or .png; or say --as " FORMS);
}

/* What the comparison shows is settled: all alternatives, the sanctuary, and the findings counted in its table. */
static gboolean
goes_with_compare (const Options *o)
{
  const char *other = o->alternative != NULL ? "--alternative"
                      : o->findings          ? "--findings"
                      : o->whole             ? "--whole"
                                             : NULL;
  g_autofree char *reason = NULL;

  if (!o->compare || other == NULL)
    return TRUE;
  reason = g_strdup_printf ("%s does not go with --sheet compare, which shows the sanctuary of every alternative",
                            other);
  fp_command_fail (reason);
  return FALSE;
}

/* FALSE after having said what is wrong. */
static gboolean
fill_spec (Options *o, FpSheetSpec *spec)
{
  o->compare = o->sheet != NULL && g_ascii_strcasecmp (o->sheet, "compare") == 0;
  if (o->sheet == NULL || (!o->compare && !find_sheet (o->sheet, &spec->kind)))
    return wrong ("--sheet", o->sheet, SHEETS);
  if (!fill_form (o) || !goes_with_compare (o))
    return FALSE;
  spec->paper = FP_PAPER_A3;
  if (o->paper != NULL && !fp_paper_find (o->paper, &spec->paper))
    return wrong ("--paper", o->paper, PAPERS);
  if (o->scale != NULL && !parse_scale (o->scale, &spec->scale))
    return wrong ("--scale", o->scale, "a whole number such as 50 or 1:50, or fit");
  spec->landscape = !o->portrait;
  spec->whole = o->whole;
  return TRUE;
}

/* One sheet of one alternative, with further ones where its findings take them. */
static GPtrArray *
draw_sheet (const FpProject *project, guint alternative, FpSheetSpec *spec, gboolean with_findings, FpScene **scene,
            GError **error)
{
  g_auto (GStrv) lines = NULL;

  if (with_findings)
    {
      g_autoptr (FpFindings) findings = fp_findings_of (project, alternative, NULL, NULL);
      lines = fp_report_lines (findings);
      spec->findings = (const char *const *) lines;
    }
  *scene = fp_scene_new (project, alternative);
  return fp_sheet_pages (*scene, spec, NULL, error);
}

static GPtrArray *
draw_comparison (const FpProject *project, const FpSheetSpec *spec, FpScene **scene, GError **error)
{
  g_autoptr (GPtrArray) findings = fp_comparing_findings (project);
  g_autoptr (FpComparison) comparison = fp_comparing_new (findings);

  *scene = fp_scene_new (project, 0);
  return fp_comparison_sheets (comparison, spec, error);
}

/* Drawn as asked, and said: a builder has no rule for 1:33. */
static void
note_scale (double scale)
{
  g_autofree char *note = NULL;

  if (scale == 0 || is_standard (scale))
    return;
  note = g_strdup_printf ("1:%u is not a scale of ISO 5455 (1:10, 1:20, 1:50, 1:100 …)", (guint) scale);
  fp_command_note (note);
}

static int
draw (const FpProject *project, const Options *o, FpSheetSpec *spec)
{
  g_autoptr (GPtrArray) pages = NULL;
  g_autoptr (FpScene) scene = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *date = g_date_time_format (now, "%Y-%m-%d");
  int alternative = fp_command_alternative (project, o->alternative);

  if (alternative < 0)
    return FP_EXIT_ERROR;
  spec->date = date;
  pages = o->compare ? draw_comparison (project, spec, &scene, &error)
                     : draw_sheet (project, (guint) alternative, spec, o->findings, &scene, &error);
  if (pages == NULL || !fp_pages_write (pages, scene, o->form, o->out, &error))
    return fp_command_fail (error->message);
  note_scale (spec->scale);
  return FP_EXIT_CLEAR;
}

static int
run (int argc, char **argv)
{
  g_auto (Options) o = { 0 };
  g_autofree char *file = NULL;
  g_autoptr (FpProject) project = NULL;
  FpSheetSpec spec = { 0 };
  int exit_code;
  const GOptionEntry entries[] = {
    { "sheet", 's', 0, FP_OPTION_TEXT, &o.sheet, SHEETS, "SHEET" },
    { "out", 'o', 0, G_OPTION_ARG_FILENAME, &o.out, "File to write: .pdf, .svg or .png; - is standard output", "FILE" },
    { "as", 0, 0, FP_OPTION_TEXT, &o.as, FORMS "; otherwise by the ending of --out", "FORM" },
    { "paper", 'p', 0, FP_OPTION_TEXT, &o.paper, PAPERS "; otherwise a3", "PAPER" },
    { "portrait", 0, 0, G_OPTION_ARG_NONE, &o.portrait, "Upright paper; otherwise landscape", NULL },
    { "scale", 0, 0, FP_OPTION_TEXT, &o.scale, "50 or 1:50; otherwise the largest of ISO 5455 that fits", "SCALE" },
    { "whole", 'w', 0, G_OPTION_ARG_NONE, &o.whole, "The whole church instead of the sanctuary", NULL },
    { "findings", 'f', 0, G_OPTION_ARG_NONE, &o.findings, "List the findings on the sheet", NULL },
    { "alternative", 'a', 0, FP_OPTION_TEXT, &o.alternative, "Which alternative, by id or name; otherwise the first",
      "ID" },
    { NULL }
  };

  if (!fp_command_options (&fp_command_draw, argc, argv, entries, &file, &exit_code))
    return exit_code;
  if (!fill_spec (&o, &spec))
    return FP_EXIT_ERROR;
  project = fp_command_load (file);
  return project == NULL ? FP_EXIT_ERROR : draw (project, &o, &spec);
}

const FpCommand fp_command_draw = {
  "draw", "FILE", "writes a sheet to scale as PDF, SVG or PNG",
  "Draws one alternative of the project FILE to scale: its plan, its elevation\n"
  "facing the altar, its section, the three together (board), or all alternatives\n"
  "side by side (compare). The sheet has a title block, a scale bar and cautions.\n"
  "An SVG or PNG holds one page; further pages of a comparison get -2, -3 before\n"
  "the ending of their name.",
  "  footpace draw parish.footpace --sheet elevation --out elevation.pdf\n"
  "  footpace draw parish.footpace -a b --sheet plan --whole --scale 100 --paper a1 --out plan.svg\n"
  "  footpace draw parish.footpace --sheet board --findings --out board.pdf\n"
  "  footpace draw parish.footpace --sheet section --as svg --out - > section.svg\n",
  run
};
