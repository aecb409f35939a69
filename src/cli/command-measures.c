/* SPDX-License-Identifier: GPL-3.0-or-later */
/* footpace measures: everything that a rulebook can hold against a limit */
#include "command.h"

#include <string.h>

static const char *
unit_words (const FpMeasure *measure)
{
  switch (measure->type)
    {
    case FP_MEASURE_LENGTH:
      return "length: mm, cm, m, in, ft, ft-wuerttemberg, ft-baden or cubit";
    case FP_MEASURE_AREA:
      return "area: m2, in2 or ft2";
    case FP_MEASURE_SHARE:
      return "share: % or no unit";
    case FP_MEASURE_YES:
      return "yes or no: 1 or 0, no unit";
    case FP_MEASURE_COUNT:
      if (measure->unit == NULL)
        return "number: no unit";
      return strcmp (measure->unit, "deg") == 0 ? "angle: deg" : "pressure: kN/m2 or psf";
    }
  return "";
}

static void
add_measure (GString *out, const FpMeasure *measure)
{
  g_string_append_printf (out, "%s\n  %s. %s\n  %s%s\n  Drawn where it is shown: %s.\n  Nothing is measured where %s.\n", measure->id, measure->label, measure->tells,
                          unit_words (measure), measure->needs_sight ? "; needs sight, which takes a while" : "", fp_measure_drawn (measure), measure->absent);
}

static int
run (int argc, char **argv)
{
  gboolean schema = FALSE;
  int exit_code;
  guint n;
  const FpMeasure *measure = fp_measures (&n);
  g_autoptr (GString) out = g_string_new (NULL);
  const GOptionEntry entries[] = {
    { "schema", 0, 0, G_OPTION_ARG_NONE, &schema, "Print the RELAX NG schema of a rulebook instead", NULL },
    { NULL }
  };

  if (!fp_command_without_files (&fp_command_measures, argc, argv, entries, &exit_code))
    return exit_code;
  if (schema)
    {
      gsize length;
      const char *text = fp_rulebook_schema (&length);

      return fp_command_print (text, length);
    }
  for (guint i = 0; i < n; i++)
    add_measure (out, &measure[i]);
  return fp_command_print (out->str, out->len);
}

const FpCommand fp_command_measures = {
  "measures", "", "lists what a rulebook can hold against a limit",
  "Lists every measure by the name under which a rulebook binds it: what it is, in which\n"
  "units its limit may be printed, what is drawn of it where a finding is shown, and when\n"
  "there is nothing to measure. The help page on rulebooks tells how one is written.",
  "  footpace measures\n"
  "  footpace measures --schema > rulebook.rng\n",
  run
};
