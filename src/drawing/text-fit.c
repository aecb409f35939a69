/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "text-fit.h"

#include <string.h>

/* No letter is narrower than this share of the height of capitals on average: more need not be measured. */
#define NARROWEST 0.15

static char *
one_line (const char *text)
{
  char *line = g_utf8_make_valid (text, -1);

  for (char *p = line; *p != '\0'; p++)
    if (*p == '\n' || *p == '\r' || *p == '\t')
      *p = ' ';
  return g_strstrip (line);
}

/* The longest beginning of at most @most letters that fits together with @tail. */
static glong
letters_that_fit (const char *text, glong most, const char *tail, double height, double width)
{
  glong fits = 0, too_many = most + 1;

  while (too_many - fits > 1)
    {
      const glong n = (fits + too_many) / 2;
      g_autofree char *start = g_utf8_substring (text, 0, n);
      g_autofree char *all = g_strconcat (start, tail, NULL);
      if (fp_lettering_width (all, height) <= width)
        fits = n;
      else
        too_many = n;
    }
  return fits;
}

static glong
most_letters (const char *text, double height, double width)
{
  const glong length = g_utf8_strlen (text, -1);

  return MIN (length, (glong) (MAX (width, 0) / (NARROWEST * height)) + 1);
}

char *
fp_lettering_shorten (const char *text, double height, double width)
{
  g_autofree char *line = one_line (text);
  const glong most = most_letters (line, height, width);
  g_autofree char *start = NULL;
  glong n;

  if (most == g_utf8_strlen (line, -1) && fp_lettering_width (line, height) <= width)
    return g_steal_pointer (&line);
  n = letters_that_fit (line, most, "…", height, width);
  if (n == 0)
    return g_strdup (fp_lettering_width ("…", height) <= width ? "…" : "");
  start = g_utf8_substring (line, 0, n);
  g_strchomp (start);
  return g_strconcat (start, "…", NULL);
}

/* Bytes of the first line of @text, which has no leading space. */
static gsize
first_line (const char *text, double height, double width)
{
  const glong most = most_letters (text, height, width);
  const glong n = letters_that_fit (text, most, "", height, width);
  const char *end = g_utf8_offset_to_pointer (text, MAX (n, 1));
  const char *space;

  if (*end == '\0' || *end == ' ')
    return (gsize) (end - text);
  space = g_strrstr_len (text, end - text, " ");
  return (gsize) ((space != NULL && space > text ? space : end) - text);
}

GPtrArray *
fp_lettering_wrap (const char *text, double height, double width)
{
  g_autofree char *all = one_line (text);
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);
  const char *rest = all;

  do
    {
      const gsize n = *rest == '\0' ? 0 : first_line (rest, height, width);
      g_ptr_array_add (lines, g_strchomp (g_strndup (rest, n)));
      rest += n;
      while (*rest == ' ')
        rest++;
    }
  while (*rest != '\0');
  return lines;
}

GPtrArray *
fp_lettering_wrap_most (const char *text, double height, double width, guint most)
{
  GPtrArray *lines = fp_lettering_wrap (text, height, width);
  g_autoptr (GString) rest = NULL;

  if (most == 0 || lines->len <= most)
    return lines;
  rest = g_string_new (g_ptr_array_index (lines, most - 1));
  for (guint i = most; i < lines->len; i++)
    g_string_append_printf (rest, " %s", (const char *) g_ptr_array_index (lines, i));
  g_ptr_array_set_size (lines, (gint) most - 1);
  g_ptr_array_add (lines, fp_lettering_shorten (rest->str, height, width));
  return lines;
}

double
fp_lettering_height_that_fits (const char *text, double width, const double *heights)
{
  guint i = 0;

  while (heights[i + 1] > 0 && fp_lettering_width (text, heights[i]) > width)
    i++;
  return heights[i];
}
