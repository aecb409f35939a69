/* SPDX-License-Identifier: GPL-3.0-or-later */
/* walk-words.c - turns and closing errors as people say them */
#include "walk-editor.h"

#include "footpace/error.h"

#include <math.h>
#include <string.h>

#define CLOSED 0.5 /* mm: nothing that a tape can tell */

static const char *
after_word (const char *text, const char *word)
{
  return g_ascii_strncasecmp (text, word, strlen (word)) == 0 ? text + strlen (word) : NULL;
}

gboolean
fp_turn_parse (const char *text, double *turn, GError **error)
{
  g_autofree char *stripped = g_strstrip (g_strdup (text));
  const char *rest = stripped, *after;
  double sign = -1.0, degrees;

  if (g_ascii_strcasecmp (stripped, "straight on") == 0)
    {
      *turn = 0.0;
      return TRUE;
    }
  if ((after = after_word (stripped, "right")) != NULL || (after = after_word (stripped, "r")) != NULL)
    rest = after;
  else if ((after = after_word (stripped, "left")) != NULL || (after = after_word (stripped, "l")) != NULL)
    {
      rest = after;
      sign = 1.0;
    }
  if (g_str_has_suffix (stripped, "°"))
    stripped[strlen (stripped) - strlen ("°")] = '\0';
  if (!fp_number_parse (rest, &degrees, error))
    return FALSE;
  if (!(fabs (degrees) <= 180.0))
    {
      g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "a turn is at most 180°");
      return FALSE;
    }
  *turn = sign * degrees + 0.0;
  return TRUE;
}

char *
fp_turn_format (double turn)
{
  g_autofree char *degrees = fp_number_format (fabs (turn));

  if (turn == 0.0)
    return g_strdup ("straight on");
  return g_strdup_printf ("%s %s°", turn < 0 ? "right" : "left", degrees);
}

static char *
gap_tells (const FpClosure *closure, FpUnits units)
{
  g_autofree char *gap = fp_length_format_unit (closure->distance, units);
  g_autofree char *walked = fp_length_format_unit (closure->walked, units);
  g_autofree char *across = fp_length_format_unit (fabs (closure->gap.x), units);
  g_autofree char *along = fp_length_format_unit (fabs (closure->gap.y), units);

  return g_strdup_printf ("It fails to close by %s in %s walked: the first corner lies %s towards the %s side and %s "
                          "%s of where the walk ends.", gap, walked, across,
                          closure->gap.x < 0 ? "Gospel" : "Epistle", along, closure->gap.y < 0 ? "west" : "east");
}

char *
fp_closure_tells (const FpClosure *closure, FpUnits units)
{
  g_autofree char *gap = NULL, *angle = NULL;
  const double off = closure->angle;

  if (closure->distance < CLOSED && fabs (off) < 1e-6)
    return g_strdup ("It closes.");
  gap = closure->distance < CLOSED ? g_strdup ("It closes.") : gap_tells (closure, units);
  if (fabs (off) < 1e-6)
    return g_steal_pointer (&gap);
  angle = fp_number_format (round (fabs (off) * 100.0) / 100.0);
  return g_strdup_printf ("%s The turns add up to %s° %s than once round.", gap, angle,
                          off > 0 ? "more" : "less");
}
