/* SPDX-License-Identifier: GPL-3.0-or-later */
/* capacities-places.c - places by block and in all, and places for wheelchairs */
#include "capacities-private.h"

#include "footpace/rules.h"

#include <math.h>
#include <string.h>

static char *
count (guint n)
{
  return g_strdup_printf ("%u", n);
}

/* --- by block ------------------------------------------------------------------------------ */

/* How much of bench, floor or rail each is given; NULL where that is no matter. */
static char *
width_of_each (const FpCapacityAsked *of, const FpItem *item)
{
  static const struct { const char *kind, *param; } widths[] = {
    { "pews", "seat-width" }, { "chairs", "width" }, { "rail", "kneeling" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (widths); i++)
    if (strcmp (fp_item_kind (item)->id, widths[i].kind) == 0)
      return fp_length_format_unit (fp_item_param (item, widths[i].param), of->units);
  return NULL;
}

static char *
how_counted (const FpCapacityAsked *of, const FpCapacityLine *line)
{
  g_autofree char *width = width_of_each (of, fp_capacity_item (of, line->owner));

  return g_strconcat (line->gallery ? "in a gallery" : "", line->gallery && width != NULL ? "; " : "",
                      width != NULL ? width : "", width != NULL ? " for each" : "", NULL);
}

static void
add_block (const FpCapacityAsked *of, FpCapacitySection *to, const FpCapacityLine *line)
{
  const FpItem *item = fp_capacity_item (of, line->owner);
  FpCapacityRow *row = fp_capacity_add (to, g_strdup (fp_item_name (item)), count (line->places),
                                        line->ruled ? count (line->by_rule) : NULL, how_counted (of, line));

  row->item = fp_item_id (item);
  fp_capacity_data (row, "places", line->places, line->ruled ? (double) line->by_rule : NAN);
}

typedef struct { guint places, by_rule; gboolean ruled, mixed; } Sum;

static Sum
add_blocks (const FpCapacityAsked *of, FpCapacitySection *to, FpPlacesSort sort)
{
  Sum sum = { 0 };

  for (guint i = 0; i < of->lines->len; i++)
    {
      const FpCapacityLine *line = &g_array_index (of->lines, FpCapacityLine, i);

      if (line->sort != sort)
        continue;
      sum.places += line->places;
      sum.by_rule += line->by_rule;
      sum.ruled |= line->ruled;
      sum.mixed |= !line->ruled;
      add_block (of, to, line);
    }
  return sum;
}

static void
add_sum (const FpCapacityAsked *of, FpCapacitySection *to, FpPlacesSort sort, const Sum *sum)
{
  const guint wanted = sort == FP_PLACES_SEATED ? fp_project_brief (of->project)->seats : 0;
  g_autofree char *brief = wanted > 0 ? g_strdup_printf ("the brief wants %u", wanted) : NULL;
  const char *mixed = sum->ruled && sum->mixed ? "where the rule does not speak, as drawn" : NULL;
  FpCapacityRow *row = fp_capacity_add (to, g_strdup_printf ("%s in all", fp_places_label (sort)), count (sum->places),
                                        sum->ruled ? count (sum->by_rule) : NULL,
                                        g_strconcat (brief ? brief : "", brief && mixed ? "; " : "", mixed ? mixed : "", NULL));

  row->sum = TRUE;
  fp_capacity_data (row, "places", sum->places, sum->ruled ? (double) sum->by_rule : NAN);
}

void
fp_capacity_fill_places (const FpCapacityAsked *of, FpCapacitySection *to)
{
  for (guint sort = 0; sort < FP_N_PLACES; sort++)
    {
      const Sum sum = add_blocks (of, to, (FpPlacesSort) sort);

      if (sum.places > 0)
        add_sum (of, to, (FpPlacesSort) sort, &sum);
    }
  if (to->rows->len == 0)
    fp_capacity_add (to, g_strdup ("Nobody has a place here"), NULL, NULL, NULL);
  to->closing = g_strdup ("As drawn: by the parish's own width of a seat, of chairs and rail as they are set out. By "
                          "the printed rule: of straight benches without arms one person for each whole 18 in (457 mm) "
                          "of each bench, International Building Code 2015, 1004.4 (other editions number it "
                          "otherwise); of bent benches, chairs and the rail it does not speak. How many may be in the "
                          "room is not said by either: local code and the fire authority do.");
}

/* --- for wheelchairs ------------------------------------------------------------------------- */

/* Who cannot rise is worst off when all others stand, and looks up at what is raised when all kneel. */
static const struct { FpMoment moment; FpFocus focus; const char *words; } looks[] = {
  { FP_MOMENT_ELEVATION, FP_FOCUS_HOST, "the raised Host" },
  { FP_MOMENT_GOSPEL, FP_FOCUS_AMBO, "the reader, while all stand," },
};

static void
append_seen (GString *out, const FpCapacityAsked *of, guint place)
{
  const FpMeasuring measuring = { .scene = of->scene, .people = of->people, .sight = of->sight };

  guint told = 0;

  for (guint i = 0; of->sight != NULL && i < G_N_ELEMENTS (looks); i++)
    if (fp_sight_has (of->sight, looks[i].focus))
      {
        g_autofree char *seen = fp_sight_place_words (&measuring, place, looks[i].moment, looks[i].focus);

        g_string_append_printf (out, "; %sof %s %s", told++ == 0 ? "sees " : "", looks[i].words, seen);
      }
}

static void
add_place (const FpCapacityAsked *of, FpCapacitySection *to, const FpCompany *company)
{
  guint n;
  const FpPersonPlace *place = fp_people_places (of->people, &n);
  g_autofree char *companion = company->companion >= 0 ? fp_people_name (of->people, (guint) company->companion) : NULL;
  GString *note = g_string_new (NULL);
  FpCapacityRow *row;

  if (companion != NULL)
    g_string_append_printf (note, "companion: %s", companion);
  else
    g_string_append (note, "no seat beside it for a companion");
  append_seen (note, of, company->place);
  row = fp_capacity_add (to, fp_people_name (of->people, company->place), NULL, NULL, g_string_free (note, FALSE));
  row->item = fp_item_id (fp_capacity_item (of, place[company->place].owner));
  row->lacking = companion == NULL;
}

static void
add_of_asked (FpCapacitySection *to, const char *what, guint found, guint asked, char *note)
{
  FpCapacityRow *row = fp_capacity_add (to, g_strdup (what), count (found), count (asked), note);

  row->sum = TRUE;
  row->lacking = found < asked;
  fp_capacity_data (row, "places", found, asked);
}

void
fp_capacity_fill_wheelchairs (const FpCapacityAsked *of, FpCapacitySection *to)
{
  g_autoptr (GArray) companies = fp_companies (of->people);
  const guint there = companies->len, seats = fp_people_seats (of->people);
  guint accompanied = 0;

  for (guint i = 0; i < there; i++)
    {
      const FpCompany *company = &g_array_index (companies, FpCompany, i);

      accompanied += company->companion >= 0;
      add_place (of, to, company);
    }
  add_of_asked (to, "Wheelchair places in all", there, fp_wheelchairs_wanted (seats), g_strdup_printf ("for %u seats", seats));
  if (there > 0)
    add_of_asked (to, "With a companion", accompanied, there, NULL);
  to->closing = g_strdup ("By the table of the 2010 ADA Standards, 221.2.1.1: 1 for 4 to 25 seats, 2 to 50, 4 to 150, "
                          "5 to 300, 6 to 500, one more for each 150 or part of it to 5000; with a seat for a "
                          "companion beside each, shoulder to shoulder (221.3 and 802.3, from memory). Churches are "
                          "exempt from that law, building codes bind them even so; outside the United States other "
                          "tables hold. Seen: what share of it, and past what, by whoever cannot rise when others do. "
                          "Local code decides.");
}
