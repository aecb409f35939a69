/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "asked-sheet.h"

#include "command.h"

static gboolean
wrong (const char *option, const char *value, const char *expected)
{
  fp_command_fail_value (option, value, expected);
  return FALSE;
}

gboolean
fp_asked_sheet (const char *paper, const char *scale, const char *ink, FpSheetSpec *spec)
{
  if (paper != NULL && !fp_paper_find (paper, &spec->paper))
    return wrong ("--paper", paper, FP_ASKED_PAPERS);
  if (scale != NULL && !fp_pages_scale_parse (scale, &spec->scale))
    return wrong ("--scale", scale, "a whole number such as 50 or 1:50, or fit");
  if (ink != NULL && !fp_ink_find (ink, &spec->ink))
    return wrong ("--ink", ink, FP_ASKED_INKS);
  return TRUE;
}

gboolean
fp_asked_pages (const char *as, const char *out, FpPagesForm *form)
{
  if (out == NULL || *out == '\0')
    return wrong ("--out", NULL, "a file ending in .pdf, .svg or .png, or -");
  if (g_str_has_suffix (out, ".footpace"))
    return wrong ("--out", out, "another ending: .footpace is that of a project, which a drawing would take the place of");
  if (as != NULL)
    return fp_pages_form_find (as, form) || wrong ("--as", as, FP_ASKED_FORMS);
  if (g_str_equal (out, "-"))
    return wrong ("--as", NULL, FP_ASKED_FORMS ": standard output has no ending to go by");
  return fp_pages_form_of_path (out, form)
         || wrong ("--out", out, "a file ending in .pdf, .svg or .png; or say --as " FP_ASKED_FORMS);
}

gboolean
fp_asked_as (const char *as, const char *out, FpAskedAs *told, FpPagesForm *form)
{
  *told = out != NULL ? FP_ASKED_DRAWN : as != NULL && g_ascii_strcasecmp (as, "csv") == 0 ? FP_ASKED_CSV : FP_ASKED_TEXT;
  if (*told == FP_ASKED_DRAWN)
    return fp_asked_pages (as, out, form);
  if (as == NULL || *told == FP_ASKED_CSV || g_ascii_strcasecmp (as, "text") == 0)
    return TRUE;
  fp_command_fail_value ("--as", as, "text or csv, or --out with it: a sheet is written to a file");
  return FALSE;
}
