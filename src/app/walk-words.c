/* SPDX-License-Identifier: GPL-3.0-or-later */
/* walk-words.c - turns and closing errors as people say them */
#include "walk-editor.h"

#include "footpace/error.h"

#include <math.h>
#include <string.h>

#define CLOSED 0.5 /* mm: nothing that a tape can tell */
#define SQUARE 0.05 /* degrees: turns are shown to two decimals, a score of them is off by that much */

static const char *
after_word (const char *text, const char *word)
{
  return g_ascii_strncasecmp (text, word, strlen (word)) == 0 ? text + strlen (word) : NULL;
}

/* The side of "right 90", or "90 right"; what is left in @text is the number. */
static double
take_side (char *text)
{
  static const struct { const char *word; double sign; } sides[] = {
    { "right", -1.0 }, { "left", 1.0 }, { "r", -1.0 }, { "l", 1.0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (sides); i++)
    {
      const char *word = sides[i].word, *after = after_word (text, word);
      const gsize length = strlen (text), n = strlen (word);

      if (after != NULL)
        memmove (text, after, strlen (after) + 1);
      else if (length > n && g_ascii_strcasecmp (text + length - n, word) == 0)
        text[length - n] = '\0';
      else
        continue;
      g_strstrip (text);
      return sides[i].sign;
    }
  return -1.0;
}

gboolean
fp_turn_parse (const char *text, double *turn, GError **error)
{
  g_autofree char *stripped = g_strstrip (g_strdup (text));
  double sign, degrees;

  if (g_ascii_strcasecmp (stripped, "straight on") == 0)
    {
      *turn = 0.0;
      return TRUE;
    }
  sign = take_side (stripped);
  if (g_str_has_suffix (stripped, "°"))
    stripped[strlen (stripped) - strlen ("°")] = '\0';
  if (!fp_number_parse (stripped, &degrees, NULL))
    {
      g_set_error (error, FP_ERROR, FP_ERROR_SYNTAX, "\"%s\" is no turn: type it as \"right 90\", \"left 45\" or "
                   "\"straight on\"", text);
      return FALSE;
    }
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
  g_autofree char *degrees = fp_number_format_rounded (fabs (turn), 2);

  if (strcmp (degrees, "0") == 0)
    return g_strdup ("straight on");
  return g_strdup_printf ("%s %s°", turn < 0 ? "right" : "left", degrees);
}

/* Where the first corner lies; nothing is said of a way that is none. */
static char *
gap_lies (FpPoint gap, FpUnits units)
{
  g_autofree char *across = fp_length_format_unit (fabs (gap.x), units);
  g_autofree char *along = fp_length_format_unit (fabs (gap.y), units);
  const gboolean has_across = fabs (gap.x) >= CLOSED / 2, has_along = fabs (gap.y) >= CLOSED / 2;
  GString *text = g_string_new (NULL);

  if (has_across)
    g_string_append_printf (text, "%s towards the %s side", across, gap.x < 0 ? "Gospel" : "Epistle");
  if (has_across && has_along)
    g_string_append (text, " and ");
  if (has_along)
    g_string_append_printf (text, "%s %s", along, gap.y < 0 ? "west" : "east");
  return g_string_free (text, FALSE);
}

static char *
gap_tells (const FpClosure *closure, FpUnits units)
{
  g_autofree char *gap = fp_length_format_unit (closure->distance, units);
  g_autofree char *walked = fp_length_format_unit (closure->walked, units);
  g_autofree char *lies = gap_lies (closure->gap, units);

  return g_strdup_printf ("It fails to close by %s in %s walked: the first corner lies %s of where the walk ends.", gap,
                          walked, lies);
}

static void
append_angle (GString *text, double off)
{
  g_autofree char *angle = fp_number_format_rounded (fabs (off), 2);

  if (fabs (off) >= SQUARE)
    g_string_append_printf (text, " The turns add up to %s° %s than once round.", angle, off > 0 ? "more" : "less");
}

/* What becomes of it, and from where on it is no measuring error any more. */
static void
append_sharing (GString *text, const FpClosure *closure, gboolean kept, FpUnits units)
{
  g_autofree char *limit = fp_length_format_unit (floor (fp_closure_limit (closure)), units);

  if (fp_closure_is_small (closure))
    g_string_append_printf (text, " That is shared out over the sides%s: up to %s may be, %g %% of the way.",
                            kept ? " that were not typed" : "", limit, FP_CLOSES_WITHIN * 100.0);
  else
    g_string_append_printf (text, " That is too much to be shared out: up to %s may be, %g %% of the way.", limit,
                            FP_CLOSES_WITHIN * 100.0);
}

char *
fp_closure_tells (const FpClosure *closure, gboolean kept, FpUnits units)
{
  GString *text = g_string_new (NULL);
  g_autofree char *gap = closure->distance < CLOSED ? g_strdup ("It closes.") : gap_tells (closure, units);

  g_string_append (text, gap);
  append_angle (text, closure->angle);
  if (closure->distance >= CLOSED)
    append_sharing (text, closure, kept, units);
  return g_string_free (text, FALSE);
}
