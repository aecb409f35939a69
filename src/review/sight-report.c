/* SPDX-License-Identifier: GPL-3.0-or-later */
/* sight-report.c - what is seen, as text and as a table for other programs */
#include "footpace/review.h"

#include "csv.h"

#define WORST 10 /* places told by name */

/* @spread: NULL where nobody asks for it */
typedef void (*Add) (const FpMeasuring *of, const FpSightSpread *spread, FpMoment moment, FpFocus focus, GString *out);

/* Each thing that is asked about, at its moment. */
static void
add_each (const FpMeasuring *of, const FpSightSpread *spread, FpMoment moment, FpFocus focus, Add add, GString *out)
{
  for (int i = 0; i < FP_N_FOCUSES; i++)
    if ((focus == FP_N_FOCUSES || (int) focus == i) && (focus != FP_N_FOCUSES || fp_sight_has (of->sight, (FpFocus) i)))
      add (of, spread, moment == FP_N_MOMENTS ? fp_moment_of_focus ((FpFocus) i) : moment, (FpFocus) i, out);
}

/* --- text ------------------------------------------------------------------------- */

/* P. Shepherd, "Sightlines" (University of Bath, 2012): 60 mm or more needs no looking between heads in front. */
#define C_CLEAR 60.0

static const FpRowC *
find_c (const GArray *rows, guint owner, guint row)
{
  for (guint i = 0; rows != NULL && i < rows->len; i++)
    {
      const FpRowC *one = &g_array_index (rows, FpRowC, i);
      if (one->owner == owner && one->row == row)
        return one;
    }
  return NULL;
}

/* C is reckoned over the head straight in front, and knows neither gaps between heads nor piers. */
static void
add_c (const FpMeasuring *of, const FpRowC *row, const FpSightSum *sum, GString *out)
{
  const FpUnits units = fp_project_brief (fp_scene_project (of->scene))->units;

  if (row == NULL)
    return;
  g_autofree char *c = fp_length_format_unit (row->c, units);
  g_string_append_printf (out, "  C %s", c);
  if (row->c >= C_CLEAR && sum->mean < 0.5)
    g_string_append (out, ": clear of the head in front, but something else hides it");
  else if (row->c < 0 && sum->mean >= 0.5)
    g_string_append (out, ": not over the head in front, but past it");
}

static void
add_rows_of (const FpMeasuring *of, guint owner, guint rows, FpMoment moment, FpFocus focus, GString *out)
{
  g_autoptr (GArray) c = focus == FP_FOCUS_MENSA ? fp_row_c_values (of->people) : NULL;

  g_string_append_printf (out, "  %s\n", fp_item_name (fp_scene_placed (of->scene, NULL)[owner].item));
  for (guint row = 1; row <= rows; row++)
    {
      const FpSightSum sum = fp_sight_row (of->sight, owner, row, moment, focus);
      if (sum.places == 0)
        continue;
      g_string_append_printf (out, "    row %2u  %3.0f %%  %u of %u see nothing", row, 100 * sum.mean, sum.none, sum.places);
      add_c (of, find_c (c, owner, row), &sum, out);
      g_string_append_c (out, '\n');
    }
}

static void
add_blocks (const FpMeasuring *of, FpMoment moment, FpFocus focus, GString *out)
{
  guint n;
  const FpPersonPlace *place = fp_people_places (of->people, &n);

  for (guint i = 0, end; i < n; i = end)
    {
      guint rows = 0;
      for (end = i; end < n && place[end].owner == place[i].owner; end++)
        rows = MAX (rows, place[end].row);
      if (!place[i].at_rail)
        add_rows_of (of, place[i].owner, rows, moment, focus, out);
    }
}

static void
add_worst (const FpMeasuring *of, FpMoment moment, FpFocus focus, GString *out)
{
  g_autoptr (GArray) worst = fp_sight_worst (of, moment, focus, WORST);

  if (worst->len > 0)
    g_string_append (out, "  Who sees least:\n");
  for (guint i = 0; i < worst->len; i++)
    {
      const guint place = g_array_index (worst, guint, i);
      g_autofree char *name = fp_people_name (of->people, place);
      g_autofree char *words = fp_sight_place_words (of, place, moment, focus);
      g_string_append_printf (out, "    %s: %s\n", name, words);
    }
}

static void
add_spread (const FpSightSpread *spread, FpMoment moment, FpFocus focus, GString *out)
{
  g_autofree char *sentence = fp_sight_spread_sentence (spread, moment, focus);

  g_string_append_printf (out, "%s\n", sentence);
}

static void
add_text (const FpMeasuring *of, const FpSightSpread *spread, FpMoment moment, FpFocus focus, GString *out)
{
  g_autofree char *sentence = fp_sight_sentence (of, moment, focus);
  g_autofree char *blind = fp_sight_blind_sentence (of, moment, focus);

  g_string_append_printf (out, "%s%s\n", out->len > 0 ? "\n" : "", sentence);
  if (!fp_sight_has (of->sight, focus))
    return;
  if (spread != NULL)
    add_spread (spread, moment, focus, out);
  if (blind != NULL)
    g_string_append_printf (out, "  %s\n", blind);
  add_blocks (of, moment, focus, out);
  add_worst (of, moment, focus, out);
}

static void
add_population (const FpMeasuring *of, GString *out)
{
  g_autofree char *words = fp_people_population (of->people);

  g_string_append_printf (out, "\n%s\n", words);
}

char *
fp_sight_report_text (const FpMeasuring *of, FpMoment moment, FpFocus focus, guint seeds)
{
  g_autoptr (FpSightSpread) spread = seeds > 0 ? fp_sight_spread_new (of->scene, seeds) : NULL;
  GString *out = g_string_new (NULL);

  add_each (of, spread, moment, focus, add_text, out);
  if (out->len == 0)
    g_string_append (out, "There is nothing to see.\n");
  else
    add_population (of, out);
  return g_string_free (out, FALSE);
}

/* --- a table ------------------------------------------------------------------------- */

static void
add_table (const FpMeasuring *of, const FpSightSpread *spread, FpMoment moment, FpFocus focus, GString *out)
{
  (void) spread;
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  guint n;
  const FpPersonPlace *place = fp_people_places (of->people, &n);

  for (guint i = 0; i < n; i++)
    {
      const double share = fp_sight_share (of->sight, i, moment, focus);
      g_autofree char *name = fp_people_name (of->people, i);
      if (share < 0)
        continue;
      fp_csv_add_quoted (out, name);
      g_string_append_printf (out, ",%u,%u,%s,%s,", place[i].row, place[i].number, fp_moment_id (moment),
                              fp_focus_id (focus));
      g_string_append (out, g_ascii_formatd (number, sizeof number, "%.4f", share));
      g_string_append_printf (out, ",%s,", fp_sight_how_label (fp_sight_how (of->sight, i, moment, focus)));
      fp_csv_add_quoted (out, fp_person_population (&place[i].who));
      g_string_append_printf (out, ",%s\r\n", g_ascii_formatd (number, sizeof number, "%.1f", place[i].who.percentile));
    }
}

char *
fp_sight_report_csv (const FpMeasuring *of, FpMoment moment, FpFocus focus)
{
  GString *out = g_string_new ("place,row,number,moment,seen,share,how,population,percentile\r\n");

  add_each (of, NULL, moment, focus, add_table, out);
  return g_string_free (out, FALSE);
}
