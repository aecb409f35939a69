/* SPDX-License-Identifier: GPL-3.0-or-later */
/* capacities-ways.c - ways out, and what the printed tables ask of their number, width and distance */
#include "capacities-private.h"

#include "footpace/rules.h"

#include <math.h>

typedef struct
{
  const FpCapacityAsked *of;
  FpCapacitySection     *to;
  const GArray          *ways;
  FpLeaving              leaving;
} Ways;

static char *
length (const Ways *w, double mm)
{
  return fp_length_format_unit (mm, w->of->units);
}

static void
add_way (const Ways *w, const FpWayOut *way)
{
  const FpItem *item = fp_capacity_item (w->of, way->opening);
  FpCapacityRow *row = fp_capacity_add (w->to, g_strdup (fp_item_name (item)), length (w, way->clear), NULL,
                                        g_strdup ("clear, between its jambs"));

  row->item = fp_item_id (item);
  fp_capacity_data (row, "mm", way->clear, NAN);
}

/* As the rules measure it: how wide a body gets there from the head of the nave.  It takes as long as looking does, and is told
 * with that. */
static void
add_aisle (const Ways *w)
{
  const FpMeasuring of = { .scene = w->of->scene, .people = w->of->people, .sight = w->of->sight };
  g_autoptr (GArray) measured = w->of->sight != NULL ? fp_measure_take (fp_measure_find ("way-through-nave"), &of) : NULL;
  const FpMeasured *one = measured != NULL && measured->len > 0 ? &g_array_index (measured, FpMeasured, 0) : NULL;

  if (one == NULL || isnan (one->value))
    return;
  fp_capacity_data (fp_capacity_add (w->to, g_strdup ("The way to the widest"), length (w, one->value), NULL,
                                     g_strdup_printf ("widest body that gets %s", one->detail)), "mm", one->value, NAN);
}

/* A line that holds what is found against what is asked. */
static void
add_held (const Ways *w, const char *what, gboolean lengths, double found, double asked, const char *by)
{
  const char *unit = lengths ? "mm" : "";
  FpCapacityRow *row = fp_capacity_add (w->to, g_strdup (what), lengths ? length (w, found) : fp_number_format (found),
                                        lengths ? length (w, asked) : fp_number_format (asked), g_strdup (by));

  row->sum = TRUE;
  row->lacking = found < asked;
  fp_capacity_data (row, unit, found, asked);
}

static void
add_us (const Ways *w)
{
  const FpLeaving *l = &w->leaving;
  const gboolean wet = w->of->reckoning->sprinklers;
  const double wanted = fp_us_width_wanted (l->load, wet);

  add_held (w, "Ways out, US", FALSE, l->ways, fp_us_ways_wanted (l->load),
            "IBC 1006: 1 for up to 49 people, 2 to 500, 3 to 1000, 4 for more");
  add_held (w, "Width in all, US", TRUE, l->clear, wanted,
            wet ? "IBC 1005.3.2: 0.15 in for each, with sprinklers and an alarm that speaks"
                : "IBC 1005.3.2: 0.2 in for each");
  if (fp_us_main_wanted (l->load, wet) > 0)
    add_held (w, "The widest, US", TRUE, l->widest, fp_us_main_wanted (l->load, wet),
              "IBC 1029.2: the main way takes half, where there are more than 300 people");
  if (l->ways < 2 || fp_us_ways_wanted (l->load) < 2)
    return;
  add_held (w, "Without the widest, US", TRUE, l->clear - l->widest, wanted / 2,
            "IBC 1005.5: half of it stays when one is lost");
  add_held (w, "The farthest two apart, US", TRUE, l->apart, fp_us_apart_wanted (l->diagonal, wet),
            wet ? "IBC 1007.1.1: a third of the diagonal of the floor, with sprinklers"
                : "IBC 1007.1.1: half the diagonal of the floor");
}

#define UK_WIDTHS \
  "Approved Document B: 60 people by 750 mm, 110 by 850, 220 by 1050, by a wider one a person for each 5 mm of its width"

/* Held against the people only where there are ways enough: too few of them are not made good by their width. */
static void
add_uk (const Ways *w)
{
  const FpLeaving *l = &w->leaving;
  const guint wanted = fp_uk_ways_wanted (l->load), hold = fp_uk_ways_hold (w->ways);
  const char *what = l->ways > 1 ? "Who can leave without the widest, UK" : "Who can leave by it, UK";

  add_held (w, "Ways out, UK", FALSE, l->ways, wanted, "Approved Document B: 1 for up to 60 people, 2 to 600, 3 for more");
  if (l->ways >= wanted)
    add_held (w, what, FALSE, hold, l->load, UK_WIDTHS);
  else
    fp_capacity_data (fp_capacity_add (w->to, g_strdup (what), fp_number_format (hold), NULL,
                                       g_strdup ("not enough, whatever their width, while ways out are lacking. " UK_WIDTHS)),
                      "people", hold, NAN);
}

void
fp_capacity_fill_ways_out (const FpCapacityAsked *of, FpCapacitySection *to)
{
  g_autoptr (GArray) ways = fp_ways_out (of->scene);
  const Ways w = { of, to, ways, fp_leaving (of->people) };
  const FpJurisdiction law = fp_project_norms (of->project)->jurisdiction;
  FpCapacityRow *row;

  for (guint i = 0; i < ways->len; i++)
    add_way (&w, &g_array_index (ways, FpWayOut, i));
  add_aisle (&w);
  row = fp_capacity_add (to, g_strdup ("People to leave"), g_strdup_printf ("%u", w.leaving.load), NULL,
                         g_strdup ("all who sit, by the printed rule where it speaks, and who stands"));
  row->sum = TRUE;
  fp_capacity_data (row, "people", w.leaving.load, NAN);
  if (law == FP_JURISDICTION_UNSAID || law == FP_JURISDICTION_US)
    add_us (&w);
  if (law == FP_JURISDICTION_UNSAID || law == FP_JURISDICTION_UK)
    add_uk (&w);
  if (law == FP_JURISDICTION_EU || law == FP_JURISDICTION_OTHER)
    fp_capacity_add (to, g_strdup ("By local law"), NULL, NULL,
                     g_strdup ("no printed table of it is held here: ask the authority having jurisdiction"));
  to->closing = g_strdup ("A way out is a door that opens on a floor of the people and on no other floor that is "
                          "drawn; doors of the sanctuary, inner doors and arches are none. Its width is that of the "
                          "opening: a leaf that does not open flat takes of it. International Building Code (2018 and "
                          "2021) and Approved Document B, volume 2 (2019), both from memory. Not looked at: how the "
                          "doors swing and fasten, stairs on the way, how far it is to them, and galleries' own ways. "
                          "The authority having jurisdiction decides on ways out.");
}
