/* SPDX-License-Identifier: GPL-3.0-or-later */
/* footpace draw: a sheet to scale, as PDF, SVG or PNG */
#include "command.h"

#include "asked-sheet.h"

#include "comparing.h"
#include "draw-pew.h"

#include "sun-times.h"

#include "footpace/card.h"
#include "footpace/capacities.h"
#include "footpace/laying.h"
#include "footpace/linen-plan.h"
#include "footpace/schedules.h"

#include <string.h>

#define SHEETS "plan, elevation, section, cross, sections, board, levels, sight, sun, card, schedule, linen, "\
               "laying, capacity or compare"

/* Sheets that are no view of the church alone, and what they show, which is settled. */
static const struct { guint sheet; const char *shows; } apart_sheets[] = {
  { FP_SHEET_COMPARE, "sanctuary of every alternative" },
  { FP_SHEET_LEVELS, "levels of the whole nave" },
  { FP_SHEET_SIGHT, "sight of the whole church" },
  { FP_SHEET_SUN, "sun in the whole church" },
  { FP_SHEET_CARD, "altar as it is set" },
  { FP_SHEET_SCHEDULE, "schedules of the alternative" },
  { FP_SHEET_LINEN, "linen as it is cut" },
  { FP_SHEET_LAYING, "stone as it is laid" },
  { FP_SHEET_CAPACITY, "capacity of the church" },
};

typedef struct
{
  char    *file, *sheet, *out, *as, *paper, *scale, *alternative, *along, *across, *without, *ink, *tiles, *celebration;
  gboolean portrait, whole, findings, turned;
  gboolean tiles_kept; /* as it was printed last, not asked for now */

  FpDrawPew   pew;
  FpPagesForm form;
  guint       apart; /* a sheet that is no view of the church alone; otherwise FP_N_ALL_SHEETS */
  FpPaper     tile;
} Options;

static void
options_clear (Options *o)
{
  g_free (o->file);
  g_free (o->sheet);
  g_free (o->out);
  g_free (o->as);
  g_free (o->paper);
  g_free (o->scale);
  g_free (o->alternative);
  g_free (o->along);
  g_free (o->across);
  g_free (o->without);
  g_free (o->ink);
  g_free (o->tiles);
  g_free (o->celebration);
  fp_draw_pew_clear (&o->pew);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Options, options_clear)

static gboolean
is_apart (const Options *o)
{
  return o->apart < FP_N_ALL_SHEETS;
}

/* --- where it is cut ------------------------------------------------------- */

#define OF(sheet) (1u << FP_SHEET_##sheet)

/* A plan shows where sections are cut, and which way they look.  A board is not turned, and has an elevation, which is
 * cut where it always is. */
static const struct { const char *option; guint sheets; const char *named; } cuts[] = {
  { "--along", OF (PLAN) | OF (SECTION) | OF (SECTIONS) | OF (BOARD), "plan, section, sections and board" },
  { "--across", OF (PLAN) | OF (CROSS) | OF (SECTIONS), "plan, cross and sections" },
  { "--turned", OF (PLAN) | OF (SECTION) | OF (CROSS) | OF (SECTIONS), "plan, section, cross and sections" },
};

/* FALSE after having said what does not go with the sheet. */
static gboolean
cuts_go_with_sheet (const Options *o, const FpSheetSpec *spec)
{
  const gboolean said[] = { o->along != NULL, o->across != NULL, o->turned };
  g_autofree char *reason = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (cuts) && reason == NULL; i++)
    if (said[i] && (is_apart (o) || (cuts[i].sheets & (1u << spec->kind)) == 0))
      reason = g_strdup_printf ("%s does not go with --sheet %s; it goes with %s", cuts[i].option,
                                fp_sheet_any_id (is_apart (o) ? o->apart : (guint) spec->kind), cuts[i].named);
  if (reason == NULL && o->turned && spec->kind == FP_SHEET_PLAN && !spec->cut[FP_VIEW_SECTION].placed
      && !spec->cut[FP_VIEW_ELEVATION].placed)
    reason = g_strdup ("--turned goes with --sheet plan only where --along or --across says where a section is cut");
  if (reason != NULL)
    fp_command_fail (reason);
  return reason == NULL;
}

/* What is typed cuts the church. FALSE after having said from where to where it lies. */
static gboolean
cuts_church (const char *option, const char *text, double at, double low, double high, FpUnits units)
{
  g_autofree char *from = fp_length_format_unit (low, units), *to = fp_length_format_unit (high, units);
  g_autofree char *expected = NULL;

  if (text == NULL || low > high || (at >= low && at <= high)) /* low is more where there is nothing yet */
    return TRUE;
  expected = g_strdup_printf ("a length from %s to %s, where there is a church to be cut", from, to);
  fp_command_fail_value (option, text, expected);
  return FALSE;
}

static gboolean
cuts_lie_in_church (const Options *o, const FpSheetSpec *spec, const FpScene *scene)
{
  const FpBox3 all = fp_scene_box (scene);
  const FpUnits units = fp_project_brief (fp_scene_project (scene))->units;

  return cuts_church ("--along", o->along, spec->cut[FP_VIEW_SECTION].at, all.lo.x, all.hi.x, units)
         && cuts_church ("--across", o->across, spec->cut[FP_VIEW_ELEVATION].at, all.lo.y, all.hi.y, units);
}

/* --- as typed -------------------------------------------------------------- */

/* Always FALSE, after having said so. */
static gboolean
wrong (const char *option, const char *value, const char *expected)
{
  fp_command_fail_value (option, value, expected);
  return FALSE;
}

/* What is typed is in millimetres unless it says otherwise. */
static gboolean
fill_cut (const char *option, const char *text, gboolean turned, FpCut *cut)
{
  g_autoptr (GError) error = NULL;

  *cut = (FpCut) { text != NULL, 0, turned };
  if (text == NULL || fp_length_parse (text, FP_UNITS_METRIC, &cut->at, &error))
    return TRUE;
  return wrong (option, text, "a length such as 1200, -2.5 m or 4' 6\"");
}

static gboolean
fill_hidden (const Options *o, FpHidden *hidden)
{
  g_autofree char *missing = NULL, *all = fp_hidden_text (FP_HIDDEN_ALL), *expected = NULL;

  if (o->without == NULL || fp_hidden_parse (o->without, hidden, &missing))
    return TRUE;
  expected = g_strdup_printf ("some of: %s", all);
  return wrong ("--without", missing, expected);
}

static gboolean
fill_look (Options *o, FpSheetSpec *spec)
{
  if (!fill_cut ("--along", o->along, o->turned, &spec->cut[FP_VIEW_SECTION])
      || !fill_cut ("--across", o->across, o->turned, &spec->cut[FP_VIEW_ELEVATION]) || !fill_hidden (o, &spec->hidden))
    return FALSE;
  if (o->tiles != NULL && !fp_paper_find (o->tiles, &o->tile))
    return wrong ("--tiles", o->tiles, FP_ASKED_PAPERS);
  if (o->tiles_kept && o->form == FP_PAGES_SVG)
    g_clear_pointer (&o->tiles, g_free);
  if (o->tiles != NULL && o->form == FP_PAGES_SVG)
    return wrong ("--as", "svg", "pdf or png with --tiles: a drawing in SVG is written whole");
  return TRUE;
}

/* What such a sheet shows is settled: the comparison has all alternatives, the sanctuary, and the findings counted in
 * its table; the levels are those of the whole nave, sight and sun those of the whole church. */
static gboolean
goes_with_apart (const Options *o)
{
  const gboolean compare = o->apart == FP_SHEET_COMPARE;
  const char *other = compare && o->alternative != NULL ? "--alternative"
                      : !compare && o->without != NULL  ? "--without"
                      : o->findings                     ? "--findings"
                      : o->whole                        ? "--whole"
                                                        : NULL;
  g_autofree char *reason = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (apart_sheets) && other != NULL; i++)
    if (apart_sheets[i].sheet == o->apart)
      reason = g_strdup_printf ("%s does not go with --sheet %s, which shows the %s; name another sheet", other,
                                fp_sheet_any_id (o->apart), apart_sheets[i].shows);
  if (reason != NULL)
    fp_command_fail (reason);
  return reason == NULL;
}

/* A view from the pew is no projection: it has neither scale nor cuts, and shows all that there is to be seen. */
static gboolean
goes_with_pew (const Options *o)
{
  const char *other = o->sheet != NULL                                         ? "--sheet"
                      : o->scale != NULL                                       ? "--scale"
                      : o->along != NULL || o->across != NULL || o->turned     ? "a cut"
                      : o->without != NULL                                     ? "--without"
                      : o->whole                                               ? "--whole"
                      : o->findings                                            ? "--findings"
                      : o->alternative != NULL && fp_draw_pew_is_strip (&o->pew) ? "--alternative with strip"
                                                                               : NULL;
  g_autofree char *reason = NULL;

  if (other == NULL)
    return TRUE;
  reason = g_strdup_printf ("%s does not go with --pew", other);
  fp_command_fail (reason);
  return FALSE;
}

/* What is not said is as the project was printed last. */
static void
fill_from_page (Options *o, const FpPageSetup *page)
{
  const gboolean view = page->sheet < FP_N_SHEETS, compare = page->sheet == FP_SHEET_COMPARE;

  o->sheet = g_strdup (fp_sheet_any_id (page->sheet));
  o->portrait = o->portrait || (o->paper == NULL && !page->landscape);
  o->whole = o->whole || (page->whole && view);
  o->findings = o->findings || (page->findings && view);
  if (o->paper == NULL)
    o->paper = g_strdup (fp_paper_id (page->paper));
  if (o->scale == NULL && page->scale > 0)
    o->scale = g_strdup_printf ("%.0f", page->scale);
  if (o->ink == NULL)
    o->ink = g_strdup (fp_ink_id (page->ink));
  if (o->without == NULL && (view || compare))
    o->without = fp_hidden_text (page->hidden);
  o->tiles_kept = o->tiles == NULL && page->tiled;
  if (o->tiles_kept)
    o->tiles = g_strdup (fp_paper_id (page->tile));
}

/* As typed, or else as the project has them; turned where either says so. */
static void
fill_cuts_from_page (const Options *o, const FpPageSetup *page, FpSheetSpec *spec)
{
  if (o->along == NULL)
    spec->cut[FP_VIEW_SECTION] = page->along;
  if (o->across == NULL)
    spec->cut[FP_VIEW_ELEVATION] = page->across;
  if (o->turned)
    spec->cut[FP_VIEW_SECTION].turned = spec->cut[FP_VIEW_ELEVATION].turned = TRUE;
}

static gboolean
fill_what (Options *o, FpSheetSpec *spec)
{
  guint sheet;

  o->apart = FP_N_ALL_SHEETS;
  if (o->pew.place != NULL)
    return goes_with_pew (o) && fp_draw_pew_check (&o->pew);
  if (o->pew.when != NULL || o->pew.look != NULL)
    return wrong ("--pew", NULL, "a place, as --when and --look are of a view from the pew");
  if (o->sheet == NULL || !fp_sheet_find (o->sheet, &sheet))
    return wrong ("--sheet", o->sheet, SHEETS);
  if (sheet < FP_N_SHEETS)
    spec->kind = (FpSheetKind) sheet;
  else
    o->apart = sheet;
  return TRUE;
}

/* FALSE after having said what is wrong. */
static gboolean
fill_spec (Options *o, FpSheetSpec *spec)
{
  if (!fill_what (o, spec) || !fp_asked_pages (o->as, o->out, &o->form) || !goes_with_apart (o))
    return FALSE;
  spec->paper = FP_PAPER_A3;
  if (!fp_asked_sheet (o->paper, o->scale, o->ink, spec))
    return FALSE;
  spec->landscape = !o->portrait;
  spec->whole = o->whole;
  return fill_look (o, spec);
}

/* One sheet of one alternative, with further ones where its findings take them. */
static GPtrArray *
draw_sheet (const FpScene *scene, FpSheetSpec *spec, const Options *o, GError **error)
{
  g_auto (GStrv) lines = NULL;
  g_autoptr (FpFindings) findings = NULL;
  g_autofree const FpWay **ways = NULL;
  g_autoptr (FpEvidence) spans = NULL;

  if (o->findings)
    {
      findings = fp_findings_of_scene (scene, NULL, NULL);
      lines = fp_report_lines (findings);
      ways = fp_findings_ways (findings);
      spec->findings = (const char *const *) lines;
      spec->ways = ways;
      spec->measured = spans = fp_findings_spans (findings);
    }
  return o->tiles != NULL ? fp_sheet_pages_tiled (scene, spec, o->tile, NULL, error)
                          : fp_sheet_pages (scene, spec, NULL, error);
}

static GPtrArray *
draw_comparison (const FpProject *project, const FpSheetSpec *spec, const Options *o, GError **error)
{
  g_autoptr (GPtrArray) sheets = NULL;
  g_autoptr (GPtrArray) findings = fp_comparing_findings (project);
  g_autoptr (FpComparison) comparison = fp_comparing_new (findings);

  sheets = fp_comparison_sheets (comparison, spec, error);
  if (sheets == NULL || o->tiles == NULL)
    return g_steal_pointer (&sheets);
  return fp_sheets_tiled (sheets, o->tile, fp_project_brief (project)->units);
}

static void
unref_drawing (gpointer drawing)
{
  fp_drawing_unref (drawing);
}

/* One page, taken (NULL: it failed), or that in pieces. */
static GPtrArray *
pages_of (FpDrawing *sheet, const FpScene *scene, const Options *o)
{
  g_autoptr (GPtrArray) sheets = g_ptr_array_new_with_free_func (unref_drawing);

  if (sheet == NULL)
    return NULL;
  g_ptr_array_add (sheets, sheet);
  return o->tiles != NULL ? fp_sheets_tiled (sheets, o->tile, fp_project_brief (fp_scene_project (scene))->units)
                          : g_steal_pointer (&sheets);
}

/* The raised Host, which matters most. */
static FpDrawing *
draw_sight (const FpScene *scene, const FpSheetSpec *spec, GError **error)
{
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (FpSight) sight = fp_sight_new (people, NULL);
  const FpMeasuring of = { scene, people, fp_levels (people), sight };

  const FpSightLook look = { fp_moment_of_focus (FP_FOCUS_HOST), FP_FOCUS_HOST, -1, TRUE };
  return fp_sight_sheet (&of, &look, spec, NULL, error);
}

/* Every Mass through the year, a sheet each. */
static GPtrArray *
draw_sun (const FpScene *scene, const FpSheetSpec *spec, const Options *o, GError **error)
{
  const FpBrief *brief = fp_project_brief (fp_scene_project (scene));
  g_autoptr (GPtrArray) times = fp_sun_times_of (brief, NULL, error), sheets = NULL;

  if (times == NULL)
    return NULL;
  sheets = fp_sun_sheets (scene, times, brief->site.latitude, brief->site.longitude, spec, error);
  return sheets == NULL || o->tiles == NULL ? g_steal_pointer (&sheets) : fp_sheets_tiled (sheets, o->tile, brief->units);
}

/* @pages: (transfer full) (nullable) */
static GPtrArray *
tiled (GPtrArray *pages, const FpScene *scene, const Options *o)
{
  g_autoptr (GPtrArray) whole = pages;

  if (whole == NULL || o->tiles == NULL)
    return g_steal_pointer (&whole);
  return fp_sheets_tiled (whole, o->tile, fp_project_brief (fp_scene_project (scene))->units);
}

/* For each celebration of the brief; a card is always upright. */
static GPtrArray *
draw_cards (const FpScene *scene, const FpSheetSpec *spec, const Options *o, GError **error)
{
  FpCardSpec card = { .order = FP_ORDER_USUAL, .ink = spec->ink, .date = spec->date };

  fp_paper_size (spec->paper, FALSE, &card.width, &card.height);
  return tiled (fp_cards_draw (scene, 0, &card, error), scene, o);
}

static GPtrArray *
draw_pew (const FpScene *scene, const FpSheetSpec *spec, const Options *o, GError **error)
{
  return tiled (fp_draw_pew_pages (&o->pew, scene, spec, error), scene, o);
}

static GPtrArray *
draw_pages (const FpScene *scene, FpSheetSpec *spec, const Options *o, GError **error)
{
  if (o->pew.place != NULL)
    return draw_pew (scene, spec, o, error);
  switch (o->apart)
    {
    case FP_SHEET_COMPARE: return draw_comparison (fp_scene_project (scene), spec, o, error);
    case FP_SHEET_LEVELS: return pages_of (fp_levels_sheet (scene, NULL, spec, NULL, error), scene, o);
    case FP_SHEET_SIGHT: return pages_of (draw_sight (scene, spec, error), scene, o);
    case FP_SHEET_SUN: return draw_sun (scene, spec, o, error);
    case FP_SHEET_CARD: return draw_cards (scene, spec, o, error);
    case FP_SHEET_SCHEDULE: return tiled (fp_schedules_sheets_of (scene, spec, error), scene, o);
    case FP_SHEET_LINEN: return tiled (fp_linen_sheets_of (scene, spec, NULL, error), scene, o);
    case FP_SHEET_LAYING: return tiled (fp_laying_sheets_of (scene, spec, NULL, error), scene, o);
    case FP_SHEET_CAPACITY: return tiled (fp_capacities_sheets_of (scene, spec, error), scene, o);
    default: return draw_sheet (scene, spec, o, error);
    }
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
  scene = fp_command_scene (project, (guint) alternative, o->celebration);
  if (scene == NULL || !cuts_lie_in_church (o, spec, scene))
    return FP_EXIT_ERROR;
  spec->date = date;
  pages = draw_pages (scene, spec, o, &error);
  if (pages == NULL || !fp_pages_write (pages, scene, o->form, o->file, o->out, &error))
    return fp_command_fail (error->message);
  fp_pages_note_scale (spec->scale);
  return FP_EXIT_CLEAR;
}

static int
run (int argc, char **argv)
{
  g_auto (Options) o = { 0 };
  g_autoptr (FpProject) project = NULL;
  const FpPageSetup *page;
  FpSheetSpec spec = { 0 };
  int exit_code;
  const GOptionEntry entries[] = {
    { "sheet", 's', 0, FP_OPTION_TEXT, &o.sheet, "plan, elevation, board, levels … (see above)", "SHEET" },
    { "pew", 0, 0, FP_OPTION_TEXT, &o.pew.place, "Instead of a sheet to scale: what is seen from a place (see below)",
      "PLACE" },
    { "when", 0, 0, FP_OPTION_TEXT, &o.pew.when, "At which moment, with --pew: elevation; otherwise the offertory",
      "POSTURE" },
    { "look", 0, 0, FP_OPTION_TEXT, &o.pew.look, "Towards which, with --pew: mensa, host, tabernacle …", "FOCUS" },
    { "out", 'o', 0, G_OPTION_ARG_FILENAME, &o.out, "File to write: .pdf, .svg or .png; - is standard output", "FILE" },
    { "as", 0, 0, FP_OPTION_TEXT, &o.as, FP_ASKED_FORMS "; otherwise by the ending of --out", "FORM" },
    { "paper", 'p', 0, FP_OPTION_TEXT, &o.paper, FP_ASKED_PAPERS "; otherwise a3", "PAPER" },
    { "portrait", 0, 0, G_OPTION_ARG_NONE, &o.portrait, "Upright paper; otherwise landscape", NULL },
    { "scale", 0, 0, FP_OPTION_TEXT, &o.scale, "50 or 1:50; otherwise the largest of ISO 5455 that fits", "SCALE" },
    { "along", 0, 0, FP_OPTION_TEXT, &o.along, "Where the section is cut: so far to the Epistle side", "LENGTH" },
    { "across", 0, 0, FP_OPTION_TEXT, &o.across, "Where the section across is cut: so far east; a plan shows both",
      "LENGTH" },
    { "turned", 0, 0, G_OPTION_ARG_NONE, &o.turned, "The sections: seen from the Epistle side; facing west", NULL },
    { "without", 0, 0, FP_OPTION_TEXT, &o.without, "Leave out: dimensions,names,seats … (see below)", "LIST" },
    { "ink", 0, 0, FP_OPTION_TEXT, &o.ink, FP_ASKED_INKS "; otherwise colour", "INK" },
    { "tiles", 0, 0, FP_OPTION_TEXT, &o.tiles, "On pages of this paper, to be joined", "PAPER" },
    { "whole", 'w', 0, G_OPTION_ARG_NONE, &o.whole, "The whole church instead of the sanctuary", NULL },
    { "findings", 'f', 0, G_OPTION_ARG_NONE, &o.findings, "List the findings on the sheet", NULL },
    { "for", 0, 0, FP_OPTION_TEXT, &o.celebration, FP_COMMAND_FOR, "CELEBRATION" },
    { "alternative", 'a', 0, FP_OPTION_TEXT, &o.alternative, "Which alternative, by id or name; otherwise the first",
      "ID" },
    { NULL }
  };

  if (!fp_command_options (&fp_command_draw, argc, argv, entries, &o.file, &exit_code))
    return exit_code;
  /* What is wrong with the options is told before the file is opened, unless it is to say what they leave open. */
  if (o.sheet == NULL && o.pew.place == NULL && o.out != NULL && (project = fp_command_load (o.file)) == NULL)
    return FP_EXIT_ERROR;
  page = project != NULL ? fp_project_page (project) : NULL;
  if (page != NULL)
    fill_from_page (&o, page);
  if (!fill_spec (&o, &spec))
    return FP_EXIT_ERROR;
  if (page != NULL)
    fill_cuts_from_page (&o, page, &spec);
  if (!cuts_go_with_sheet (&o, &spec))
    return FP_EXIT_ERROR;
  if (project == NULL)
    project = fp_command_load (o.file);
  return project == NULL ? FP_EXIT_ERROR : draw (project, &o, &spec);
}

const FpCommand fp_command_draw = {
  "draw", "FILE", "writes a sheet to scale as PDF, SVG or PNG",
  "Draws one alternative of the project FILE to scale: its plan, its elevation\n"
  "facing the altar, its section along the church, its section across it (cross),\n"
  "both sections, plan, elevation and section together (board), the levels of\n"
  "people and altar along the nave, with heights exaggerated (levels), what every\n"
  "place sees of the raised Host (sight), the sun at every Mass of the brief (sun),\n"
  "or all alternatives side by side (compare). The sheet has a title block, a\n"
  "scale bar and cautions.\n"
  "Without --sheet the page set-up that is kept in the project is taken.\n"
  "With --pew it draws in true perspective what a person sees from a PLACE: front,\n"
  "middle, back, side, gallery, standing, wheelchair or child; ROW,SEAT of the first\n"
  "block that has them; BLOCK,ROW,SEAT of the block of that id or name; or strip,\n"
  "views from all those places, for every alternative.\n"
  "What may be left out: building, altar, lights, furniture, sedilia, seats;\n"
  "existing, proposed, removed; dimensions, levels, names.\n"
  "An SVG or PNG holds one page; further pages of a comparison get -2, -3 before\n"
  "the ending of their name.",
  "  footpace draw parish.footpace --sheet elevation --out elevation.pdf\n"
  "  footpace draw parish.footpace -a b --sheet plan --whole --scale 100 --paper a1 --out plan.svg\n"
  "  footpace draw parish.footpace --sheet board --findings --out board.pdf\n"
  "  footpace draw parish.footpace --sheet levels --paper a4 --out levels.pdf\n"
  "  footpace draw parish.footpace --sheet section --along 2.5m --turned --out a-a.pdf\n"
  "  footpace draw parish.footpace --pew middle --out middle.pdf\n"
  "  footpace draw parish.footpace --pew pews-rear-g,6,3 --when elevation --look host --out 6-3.svg\n"
  "  footpace draw parish.footpace --sheet plan --scale 20 --tiles a4 --out plan.pdf\n"
  "  footpace draw parish.footpace --sheet section --as svg --out - > section.svg\n",
  run
};
