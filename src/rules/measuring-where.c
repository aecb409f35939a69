/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Saying where among the people something is, in words that are used in a church. */
#include "measuring.h"

#include <string.h>

#define BLOCKS_NAMED 4 /* more are only counted */

static gboolean
name_tells_side (const char *name)
{
  g_autofree char *lower = g_utf8_strdown (name, -1);

  return strstr (lower, "gospel") || strstr (lower, "epistle") || strstr (lower, "north") || strstr (lower, "south")
         || strstr (lower, "left") || strstr (lower, "right");
}

char *
fp_places_of (guint some, guint all, const char *one, const char *many)
{
  const char *verb = some == 1 ? one : many;

  return g_strdup_printf ("%u of %u place%s%s%s", some, all, all == 1 ? "" : "s", *verb ? " " : "", verb);
}

char *
fp_measuring_name (const FpMeasuring *of, int owner)
{
  const FpPlaced *placed = fp_measuring_placed (of, owner);
  const char *name;

  if (!placed)
    return NULL;
  name = fp_item_name (placed->item);
  if (!name_tells_side (name) && placed->plan.x1 <= 0)
    return g_strdup_printf ("%s, Gospel side", name);
  if (!name_tells_side (name) && placed->plan.x0 >= 0)
    return g_strdup_printf ("%s, Epistle side", name);
  return g_strdup (name);
}

/* Rows 1..n as "rows 2, 4 to 9", from a set of row numbers. */
static void
append_rows (GString *out, const gboolean *row, guint rows)
{
  guint named = 0, parts = 0;
  GString *list = g_string_new (NULL);

  for (guint r = 1; r <= rows; r++)
    {
      guint last = r;

      if (!row[r])
        continue;
      while (last < rows && row[last + 1])
        last++;
      named += last - r + 1;
      g_string_append (list, parts++ ? ", " : "");
      if (last == r)
        g_string_append_printf (list, "%u", r);
      else
        g_string_append_printf (list, last == r + 1 ? "%u and %u" : "%u to %u", r, last);
      r = last;
    }
  g_string_append_printf (out, named == 1 ? "row %s" : "rows %s", list->str);
  g_string_free (list, TRUE);
}

static void
append_named_rows (const FpMeasuring *of, int owner, const gboolean *row, guint rows, GString *out)
{
  g_autofree char *name = fp_measuring_name (of, owner);

  g_string_append_printf (out, "%s%s", out->len ? "; " : "", name ? name : "");
  if (rows > 1)
    {
      g_string_append (out, ": ");
      append_rows (out, row, rows);
    }
}

static char *
end_of_blocks (GString *out, guint blocks)
{
  if (blocks > BLOCKS_NAMED)
    g_string_append_printf (out, "; and %u more block%s of seats", blocks - BLOCKS_NAMED,
                            blocks - BLOCKS_NAMED == 1 ? "" : "s");
  return g_string_free (out, blocks == 0);
}

/* Adds "name: rows …" of the block whose places begin at @from; returns where the next block begins. */
static guint
append_block (const FpMeasuring *of, guint from, FpPlaceTest test, gpointer data, GString *out, guint *blocks)
{
  guint n = 0;
  const FpPersonPlace *place = fp_people_places (of->people, &n);
  guint end = from, rows = 0, hits = 0;
  g_autofree gboolean *row = NULL;

  for (; end < n && place[end].owner == place[from].owner; end++)
    rows = MAX (rows, place[end].row);
  row = g_new0 (gboolean, rows + 2);
  for (guint i = from; i < end; i++)
    if (test (of, i, data))
      {
        row[place[i].row] = TRUE;
        hits++;
      }
  if (hits && ++*blocks <= BLOCKS_NAMED)
    append_named_rows (of, (int) place[from].owner, row, rows, out);
  return end;
}

char *
fp_measuring_where (const FpMeasuring *of, FpPlaceTest test, gpointer data)
{
  GString *out = g_string_new (NULL);
  guint n = 0, blocks = 0;

  fp_people_places (of->people, &n);
  for (guint i = 0; i < n;)
    i = append_block (of, i, test, data, out, &blocks);
  return end_of_blocks (out, blocks);
}

char *
fp_measuring_rows (const FpMeasuring *of, const GPtrArray *measured)
{
  g_autofree gboolean *done = g_new0 (gboolean, measured->len + 1);
  GString *out = g_string_new (NULL);
  guint blocks = 0;

  for (guint i = 0; i < measured->len; i++)
    {
      const int owner = ((const FpMeasured *) g_ptr_array_index (measured, i))->owner;
      guint rows = 0;
      g_autofree gboolean *row = NULL;

      if (done[i])
        continue;
      for (guint j = i; j < measured->len; j++)
        rows = MAX (rows, ((const FpMeasured *) g_ptr_array_index (measured, j))->row);
      row = g_new0 (gboolean, rows + 2);
      for (guint j = i; j < measured->len; j++)
        {
          const FpMeasured *one = g_ptr_array_index (measured, j);

          if (one->owner != owner)
            continue;
          row[one->row] = TRUE;
          done[j] = TRUE;
        }
      if (++blocks <= BLOCKS_NAMED)
        append_named_rows (of, owner, row, rows, out);
    }
  return end_of_blocks (out, blocks);
}
