/* SPDX-License-Identifier: GPL-3.0-or-later */
/* footpace draw: a sheet to scale, as PDF, SVG or PNG */
#include "command.h"

#include "comparing.h"

#include <math.h>
#include <string.h>

#define PNG_DOTS_PER_INCH 200.0

typedef struct
{
  char    *sheet, *out, *paper, *scale, *alternative;
  gboolean portrait, whole, findings;
} Options;

static void
options_clear (Options *o)
{
  g_free (o->sheet);
  g_free (o->out);
  g_free (o->paper);
  g_free (o->scale);
  g_free (o->alternative);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Options, options_clear)

static gboolean
find_sheet (const char *id, FpSheetKind *kind)
{
  for (guint i = 0; i < FP_N_SHEETS; i++)
    if (g_str_equal (fp_sheet_id ((FpSheetKind) i), id))
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
  char *end;

  if (text == NULL || g_str_equal (text, "fit"))
    {
      *scale = 0;
      return TRUE;
    }
  *scale = g_ascii_strtod (g_str_has_prefix (text, "1:") ? text + 2 : text, &end);
  return *end == '\0' && isfinite (*scale) && *scale >= 1 && *scale <= 10000;
}

/* Returns NULL, or what is wrong with the options. */
static const char *
fill_spec (const Options *o, FpSheetSpec *spec, gboolean *compare)
{
  *compare = g_strcmp0 (o->sheet, "compare") == 0;
  if (o->sheet == NULL || (!*compare && !find_sheet (o->sheet, &spec->kind)))
    return "--sheet is plan, elevation, section, board or compare";
  if (o->out == NULL
      || !(g_str_has_suffix (o->out, ".pdf") || g_str_has_suffix (o->out, ".svg") || g_str_has_suffix (o->out, ".png")))
    return "--out names a file that ends in .pdf, .svg or .png";
  spec->paper = FP_PAPER_A3;
  if (o->paper != NULL && !fp_paper_find (o->paper, &spec->paper))
    return "--paper is a4, a3, a2, a1, letter or tabloid";
  if (!parse_scale (o->scale, &spec->scale))
    return "--scale is a number such as 50 or 1:50, or fit";
  spec->landscape = !o->portrait;
  spec->whole = o->whole;
  return NULL;
}

/* SVG and PNG hold one page each: further ones get "-2", "-3" before the ending. */
static char *
page_path (const char *path, guint page)
{
  const char *dot = strrchr (path, '.');

  if (page == 0)
    return g_strdup (path);
  return g_strdup_printf ("%.*s-%u%s", (int) (dot - path), path, page + 1, dot);
}

static gboolean
write_pages (GPtrArray *pages, const FpScene *scene, const char *path, GError **error)
{
  const FpBrief *brief = fp_project_brief (fp_scene_project (scene));

  if (g_str_has_suffix (path, ".pdf"))
    return fp_drawing_write_pdf ((FpDrawing *const *) pages->pdata, pages->len, brief->title, brief->author, path,
                                 error);
  for (guint i = 0; i < pages->len; i++)
    {
      g_autofree char *one = page_path (path, i);
      const FpDrawing *page = g_ptr_array_index (pages, i);
      gboolean ok = g_str_has_suffix (path, ".svg") ? fp_drawing_write_svg (page, scene, brief->title, one, error)
                                                    : fp_drawing_write_png (page, PNG_DOTS_PER_INCH, one, error);
      if (!ok)
        return FALSE;
    }
  return TRUE;
}

static void
unref_drawing (gpointer drawing)
{
  fp_drawing_unref (drawing);
}

/* One sheet of one alternative. */
static GPtrArray *
draw_sheet (const FpProject *project, guint alternative, FpSheetSpec *spec, gboolean with_findings, FpScene **scene,
            GError **error)
{
  g_auto (GStrv) lines = NULL;
  FpDrawing *page;
  GPtrArray *pages;

  if (with_findings)
    {
      g_autoptr (FpFindings) findings = fp_findings_of (project, alternative, NULL, NULL);
      lines = fp_report_lines (findings);
      spec->findings = (const char *const *) lines;
    }
  *scene = fp_scene_new (project, alternative);
  page = fp_sheet_new (*scene, spec, NULL, error);
  if (page == NULL)
    return NULL;
  pages = g_ptr_array_new_with_free_func (unref_drawing);
  g_ptr_array_add (pages, page);
  return pages;
}

static GPtrArray *
draw_comparison (const FpProject *project, const FpSheetSpec *spec, FpScene **scene, GError **error)
{
  g_autoptr (GPtrArray) findings = fp_comparing_findings (project);
  g_autoptr (FpComparison) comparison = fp_comparing_new (findings);

  *scene = fp_scene_new (project, 0);
  return fp_comparison_sheets (comparison, spec, error);
}

static int
draw (const FpProject *project, const Options *o, FpSheetSpec *spec, gboolean compare)
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
  pages = compare ? draw_comparison (project, spec, &scene, &error)
                  : draw_sheet (project, (guint) alternative, spec, o->findings, &scene, &error);
  if (pages == NULL || !write_pages (pages, scene, o->out, &error))
    return fp_command_fail (error->message);
  return FP_EXIT_CLEAR;
}

static int
run (int argc, char **argv)
{
  g_auto (Options) o = { 0 };
  g_autofree char *file = NULL;
  g_autoptr (FpProject) project = NULL;
  FpSheetSpec spec = { 0 };
  gboolean compare;
  const char *wrong;
  int exit_code;
  const GOptionEntry entries[] = {
    { "sheet", 's', 0, G_OPTION_ARG_STRING, &o.sheet, "plan, elevation, section, board or compare", "SHEET" },
    { "out", 'o', 0, G_OPTION_ARG_FILENAME, &o.out, "File to write: .pdf, .svg or .png", "FILE" },
    { "paper", 'p', 0, G_OPTION_ARG_STRING, &o.paper, "a4, a3, a2, a1, letter or tabloid (a3)", "PAPER" },
    { "portrait", 0, 0, G_OPTION_ARG_NONE, &o.portrait, "Upright paper (landscape)", NULL },
    { "scale", 0, 0, G_OPTION_ARG_STRING, &o.scale, "50 or 1:50, or fit (fit)", "SCALE" },
    { "whole", 'w', 0, G_OPTION_ARG_NONE, &o.whole, "The whole church instead of the sanctuary", NULL },
    { "findings", 'f', 0, G_OPTION_ARG_NONE, &o.findings, "List the findings on the sheet", NULL },
    { "alternative", 'a', 0, G_OPTION_ARG_STRING, &o.alternative, "Which alternative, by id or name (the first)", "ID" },
    { NULL }
  };

  if (!fp_command_options (&fp_command_draw, argc, argv, entries, &file, &exit_code))
    return exit_code;
  wrong = fill_spec (&o, &spec, &compare);
  if (wrong != NULL)
    return fp_command_fail (wrong);
  project = fp_command_load (file);
  return project == NULL ? FP_EXIT_ERROR : draw (project, &o, &spec, compare);
}

const FpCommand fp_command_draw = { "draw", "FILE", "writes a sheet to scale as PDF, SVG or PNG", run };
