/* SPDX-License-Identifier: GPL-3.0-or-later */
/* footpace sun: where the sun stands at a time, and in whose eyes */
#include "command.h"

#include "asked-sheet.h"

#include "footpace/review.h"
#include "sun-times.h"

#include <math.h>
#include <string.h>

#define AT     "a time such as 2026-06-21T09:30+01:00, or a day such as 2026-06-21"

typedef struct
{
  char       *file, *at, *latitude, *longitude, *alternative, *as, *out, *paper, *scale, *ink;
  double      north, east; /* latitude and longitude, degrees */
  GPtrArray  *times;       /* (element-type GDateTime) */
  FpPagesForm form;
  FpSheetSpec spec;
} Options;

static void
options_clear (Options *o)
{
  g_free (o->file);
  g_free (o->at);
  g_free (o->latitude);
  g_free (o->longitude);
  g_free (o->alternative);
  g_free (o->as);
  g_free (o->out);
  g_free (o->paper);
  g_free (o->scale);
  g_free (o->ink);
  g_clear_pointer (&o->times, g_ptr_array_unref);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Options, options_clear)

/* --- as typed -------------------------------------------------------------- */

/* FALSE after having said what is wrong. */
static gboolean
fill_degrees (const char *option, const char *text, double most, const char *expected, double *value)
{
  if (text != NULL && fp_number_parse (text, value, NULL) && fabs (*value) <= most)
    return TRUE;
  fp_command_fail_value (option, text, expected);
  return FALSE;
}

/* Both, or neither: then the brief tells. */
static gboolean
fill_place (Options *o)
{
  if (o->latitude == NULL && o->longitude == NULL)
    return TRUE;
  return fill_degrees ("--latitude", o->latitude, 90, "degrees from -90 to 90, north of the equator above 0", &o->north)
         && fill_degrees ("--longitude", o->longitude, 180, "degrees from -180 to 180, east of Greenwich above 0", &o->east);
}

static gboolean
check_time (const Options *o)
{
  g_autoptr (GError) error = NULL;

  if (o->at != NULL && !g_utf8_validate (o->at, -1, NULL))
    fp_command_fail_value ("--at", o->at, AT);
  else if (fp_sun_times_check (o->at, &error))
    return TRUE;
  else if (error->code == FP_ERROR_RANGE)
    fp_command_fail (error->message);
  else
    fp_command_fail_value ("--at", o->at, AT);
  return FALSE;
}

/* Without --out it is text. */
static gboolean
fill_form (Options *o)
{
  const gboolean text = o->as != NULL && g_ascii_strcasecmp (o->as, "text") == 0;

  if (o->out == NULL || text)
    {
      const gboolean fits = o->out == NULL && (o->as == NULL || text);
      if (!fits)
        fp_command_fail_value ("--as", o->as, o->out == NULL ? "text, or --out with it: a sheet is written to a file"
                                                             : "pdf, svg or png with --out");
      return fits;
    }
  return fp_asked_pages (o->as, o->out, &o->form);
}

static gboolean
fill_sheet (Options *o)
{
  o->spec = (FpSheetSpec) { .kind = FP_SHEET_PLAN, .paper = FP_PAPER_A3, .landscape = TRUE, .whole = TRUE };
  return fp_asked_sheet (o->paper, o->scale, o->ink, &o->spec);
}

static gboolean
fill (Options *o)
{
  return check_time (o) && fill_place (o) && fill_form (o) && fill_sheet (o);
}

/* What was not typed. */
static gboolean
fill_from_brief (Options *o, const FpBrief *brief)
{
  g_autoptr (GError) error = NULL;

  if (o->latitude == NULL && !brief->site.known)
    {
      fp_command_fail ("the brief does not tell where the church is: give --latitude and --longitude");
      return FALSE;
    }
  if (o->latitude == NULL)
    {
      o->north = brief->site.latitude;
      o->east = brief->site.longitude;
    }
  o->times = fp_sun_times_of (brief, o->at, &error);
  if (o->times == NULL)
    fp_command_fail (error->message);
  return o->times != NULL;
}

/* --- told ------------------------------------------------------------------- */

static void
free_study (gpointer study)
{
  fp_sun_study_free (study);
}

static int
draw (const FpScene *scene, Options *o)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();
  g_autofree char *date = g_date_time_format (now, "%Y-%m-%d");
  g_autoptr (GPtrArray) pages = NULL;

  o->spec.date = date;
  pages = fp_sun_sheets (scene, o->times, o->north, o->east, &o->spec, &error);
  if (pages == NULL || !fp_pages_write (pages, scene, o->form, o->file, o->out, &error))
    return fp_command_fail (error->message);
  fp_pages_note_scale (o->spec.scale);
  return FP_EXIT_CLEAR;
}

/* Where no time was asked for: what lies between equinoxes and solstices. */
static void
add_years (GString *text, const FpPeople *people, const Options *o)
{
  const FpBrief *brief = fp_project_brief (fp_scene_project (fp_people_scene (people)));
  const int year = g_date_time_get_year (o->times->pdata[0]);

  for (guint i = 0; o->at == NULL && i < brief->n_masses; i++)
    {
      g_autofree char *line = fp_sun_year_text (people, i, year, NULL, NULL);
      if (line != NULL)
        g_string_append_printf (text, "%s\n", line);
    }
}

static int
tell (const FpProject *project, Options *o)
{
  const int alternative = fp_command_alternative (project, o->alternative);
  g_autoptr (FpScene) scene = NULL;
  g_autoptr (FpPeople) people = NULL;
  g_autoptr (GPtrArray) studies = g_ptr_array_new_with_free_func (free_study);
  g_autofree char *told = NULL;
  g_autoptr (GString) text = NULL;

  if (alternative < 0 || !fill_from_brief (o, fp_project_brief (project)))
    return FP_EXIT_ERROR;
  scene = fp_scene_new (project, (guint) alternative);
  if (o->out != NULL)
    return draw (scene, o);
  people = fp_people_new (scene);
  for (guint i = 0; i < o->times->len; i++)
    g_ptr_array_add (studies, fp_sun_study_new (people, o->times->pdata[i], o->north, o->east));
  told = fp_sun_studies_text ((FpSunStudy *const *) studies->pdata, studies->len);
  text = g_string_new (told);
  add_years (text, people, o);
  return fp_command_print (text->str, text->len);
}

static int
run (int argc, char **argv)
{
  g_auto (Options) o = { 0 };
  g_autoptr (FpProject) project = NULL;
  int exit_code;
  const GOptionEntry entries[] = {
    { "at", 't', 0, FP_OPTION_TEXT, &o.at, "A time, or a day, for every Mass of the brief; see below", "TIME" },
    { "latitude", 0, 0, FP_OPTION_TEXT, &o.latitude, "Degrees; south is negative; otherwise as the brief has it", "DEGREES" },
    { "longitude", 0, 0, FP_OPTION_TEXT, &o.longitude, "Degrees; west is negative; likewise", "DEGREES" },
    { "alternative", 'a', 0, FP_OPTION_TEXT, &o.alternative, "Which alternative, by id or name; otherwise the first",
      "ID" },
    { "out", 'o', 0, FP_OPTION_TEXT, &o.out, "Draw it into this file; - is standard output", "FILE" },
    { "as", 0, 0, FP_OPTION_TEXT, &o.as, "text; with --out pdf, svg or png, otherwise by its ending", "FORM" },
    { "paper", 'p', 0, FP_OPTION_TEXT, &o.paper, FP_ASKED_PAPERS "; otherwise a3", "PAPER" },
    { "scale", 0, 0, FP_OPTION_TEXT, &o.scale, "50 or 1:50; otherwise the largest of ISO 5455 that fits", "SCALE" },
    { "ink", 0, 0, FP_OPTION_TEXT, &o.ink, FP_ASKED_INKS "; otherwise colour", "INK" },
    { NULL }
  };

  if (!fp_command_options (&fp_command_sun, argc, argv, entries, &o.file, &exit_code))
    return exit_code;
  if (!fill (&o))
    return FP_EXIT_ERROR;
  project = fp_command_load (o.file);
  return project == NULL ? FP_EXIT_ERROR : tell (project, &o);
}

const FpCommand fp_command_sun = {
  "sun", "FILE", "tells in whose eyes the sun is at a time",
  "Reckons where the sun stands at a time, as of a Mass, over the place of the church,\n"
  "and tells which places have it low in their eyes, and through which window; so of\n"
  "the celebrant, at the altar and at the chair, and of the reader. What is true north,\n"
  "where the church is and when Mass is said there is in the brief of the project FILE.\n"
  "Without --at it is every Mass at the equinoxes and solstices of this year; with a day,\n"
  "every Mass of the week about it. A time by the clock is told with its hours before\n"
  "UTC, so that summer time is not mistaken (+01:00, -05:00, Z), unless the brief tells\n"
  "the time zone. With --out it is drawn on plan and section, a sheet a time, with the\n"
  "light on the floor and the shafts on which it comes in.",
  "  footpace sun parish.footpace\n"
  "  footpace sun parish.footpace --at 2026-06-21T09:30 --out sun.pdf --ink grey\n"
  "  footpace sun parish.footpace -t 2026-03-22T07:30Z --latitude 51.5 --longitude -0.1\n",
  run
};
