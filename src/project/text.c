/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "text.h"

#include <math.h>
#include <string.h>

/* A hundred times round: of a far larger number the rest is chance. */
#define TURN_MAX 36000.0

static gboolean
has_id_syntax (const char *id)
{
  if (!g_ascii_isalpha (id[0]))
    return FALSE;
  for (const char *c = id; *c != '\0'; c++)
    if (!g_ascii_isalnum (*c) && *c != '-')
      return FALSE;
  return TRUE;
}

gboolean
fp_id_check (const char *id, const char *whose, GError **error)
{
  if (id != NULL && strlen (id) <= FP_ID_MAX && has_id_syntax (id))
    return TRUE;
  if (id != NULL && g_utf8_validate (id, -1, NULL))
    g_set_error (error, FP_ERROR, FP_ERROR_INVALID,
                 "%s: “%.80s” is not an id: letters a to z, digits and '-', a letter first, at most %d characters",
                 whose, id, FP_ID_MAX);
  else
    g_set_error (error, FP_ERROR, FP_ERROR_INVALID, "%s: an id is missing", whose);
  return FALSE;
}

/* They turn round what follows, also of a sentence of ours in which the text stands. */
static gboolean
is_override (gunichar c)
{
  return c == 0x202d || c == 0x202e;
}

/* What XML 1.0 cannot hold, or would not give back as it was; in a name also what begins a new line. */
static gboolean
is_forbidden (gunichar c, gboolean lines)
{
  if (lines && (c == '\n' || c == '\t'))
    return FALSE;
  if (is_override (c) || (!lines && (c == 0x2028 || c == 0x2029)))
    return TRUE;
  return g_unichar_iscntrl (c) || c == 0xfffe || c == 0xffff;
}

gboolean
fp_text_check (const char *text, const char *whose, gboolean lines, GError **error)
{
  if (strlen (text) > FP_TEXT_MAX)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_LIMIT,
                   "%s: the text is %" G_GSIZE_FORMAT " bytes long, at most %d are taken",
                   whose, strlen (text), FP_TEXT_MAX);
      return FALSE;
    }
  if (!g_utf8_validate (text, -1, NULL))
    {
      g_set_error (error, FP_ERROR, FP_ERROR_INVALID, "%s: the text is not UTF-8", whose);
      return FALSE;
    }
  for (const char *c = text; *c != '\0'; c = g_utf8_next_char (c))
    if (is_forbidden (g_utf8_get_char (c), lines))
      {
        g_set_error (error, FP_ERROR, FP_ERROR_INVALID, "%s: the text has a control character (U+%04X) in it",
                     whose, g_utf8_get_char (c));
        return FALSE;
      }
  return TRUE;
}

gboolean
fp_coordinate_check (double value, const char *whose, const char *what, GError **error)
{
  /* Written so that a NaN fails too. */
  if (fabs (value) <= FP_LENGTH_MAX)
    return TRUE;
  g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "%s: %s is %.10g mm; it may be from %.0f mm to %.0f mm", whose, what,
               value, -FP_LENGTH_MAX, FP_LENGTH_MAX);
  return FALSE;
}

gboolean
fp_place_check (const FpPlace *place, const char *whose, GError **error)
{
  if (!fp_coordinate_check (place->x, whose, "x", error) || !fp_coordinate_check (place->y, whose, "y", error))
    return FALSE;
  /* Written so that a NaN fails too. */
  if (fabs (place->turn) <= TURN_MAX)
    return TRUE;
  g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "%s: turn is %.10g°; it may be from %.0f° to %.0f°", whose, place->turn,
               -TURN_MAX, TURN_MAX);
  return FALSE;
}

double
fp_turn_normal (double turn)
{
  const double rest = fmod (turn, 360.0);

  if (rest > 180.0)
    return rest - 360.0;
  if (rest <= -180.0)
    return rest + 360.0;
  return rest == 0 ? 0.0 : rest; /* not -0 */
}
