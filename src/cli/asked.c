/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "asked.h"

#include "command.h"

#include <string.h>

/* --- one of a few ------------------------------------------------------------------ */

typedef const char *(*NameOf) (int i);

static const char *
name_of_focus (int i)
{
  return fp_focus_id ((FpFocus) i);
}

static const char *
name_of_moment (int i)
{
  return fp_moment_id ((FpMoment) i);
}

/* -1 after having said which there are. */
static int
find (const char *option, const char *text, NameOf name, int n)
{
  g_autoptr (GString) all = g_string_new (NULL);

  for (int i = 0; i < n; i++)
    {
      if (g_ascii_strcasecmp (name (i), text) == 0)
        return i;
      g_string_append_printf (all, "%s%s", i == 0 ? "" : i + 1 == n ? " or " : ", ", name (i));
    }
  fp_command_fail_value (option, text, all->str);
  return -1;
}

gboolean
fp_asked_focus (const char *option, const char *text, FpFocus *focus)
{
  const int found = find (option, text, name_of_focus, FP_N_FOCUSES);

  if (found >= 0)
    *focus = (FpFocus) found;
  return found >= 0;
}

gboolean
fp_asked_moment (const char *option, const char *text, FpMoment *moment)
{
  const int found = find (option, text, name_of_moment, FP_N_MOMENTS);

  if (found >= 0)
    *moment = (FpMoment) found;
  return found >= 0;
}

/* --- a seat ----------------------------------------------------------------------------- */

gboolean
fp_asked_seat (const char *text, char **block, guint *row, guint *number)
{
  g_autofree char *left = g_strdup (text);
  guint64 value[2];

  for (guint i = 2; i-- > 0;)
    {
      char *comma = strrchr (left, ',');
      const char *digits = comma != NULL ? comma + 1 : left;
      g_autofree char *clean = g_strstrip (g_strdup (digits));
      if ((comma == NULL && i == 1) || !g_ascii_string_to_unsigned (clean, 10, 1, FP_PEOPLE_MAX, &value[i], NULL))
        return FALSE;
      if (comma != NULL)
        *comma = '\0';
      else
        *left = '\0';
    }
  *row = (guint) value[0];
  *number = (guint) value[1];
  *block = *g_strstrip (left) != '\0' ? g_strdup (left) : NULL;
  return TRUE;
}
