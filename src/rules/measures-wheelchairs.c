/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Places for wheelchairs: how many, and how large. */
#include "measure-evidence.h"

#include "footpace/capacity.h"

#include <math.h>

static guint
places_there (const FpMeasuring *of, int *owner)
{
  double n = 0;

  *owner = -1;
  for (int i = fp_measuring_next (of, FP_ROLE_WHEELCHAIR, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_WHEELCHAIR, i))
    {
      n += fp_placed_param (fp_measuring_placed (of, i), "count", 1);
      *owner = i;
    }
  return (guint) n;
}

void
fp_take_wheelchair_lacking (const FpMeasuring *of, GArray *out)
{
  int owner;
  const guint there = places_there (of, &owner), seats = fp_people_seats (of->people);
  const guint benches = seats > there ? seats - there : 0, wanted = fp_wheelchairs_wanted (seats);
  FpMeasured *measured;

  if (benches == 0)
    return;
  measured = owner >= 0 ? fp_measured_add_at (out, wanted > there ? wanted - there : 0, owner,
                                              fp_placed_middle (fp_measuring_placed (of, owner), 0))
                        : fp_measured_add (out, wanted);
  measured->text = wanted > there ? g_strdup_printf ("%u lacking: %u of %u for %u seats", wanted - there, there, wanted, seats)
                                  : g_strdup_printf ("%u of %u for %u seats", there, wanted, seats);
}

/* Beside one another they are narrower than alone. */
static void
take_width (const FpMeasuring *of, GArray *out, gboolean alone)
{
  for (int i = fp_measuring_next (of, FP_ROLE_WHEELCHAIR, -1); i >= 0; i = fp_measuring_next (of, FP_ROLE_WHEELCHAIR, i))
    {
      const FpPlaced *places = fp_measuring_placed (of, i);

      if ((fp_placed_param (places, "count", 1) < 2) == alone)
        fp_measured_add_at (out, fp_placed_param (places, alone ? "width" : "width-beside", NAN), i, fp_placed_middle (places, 0));
    }
}

void
fp_take_wheelchair_width (const FpMeasuring *of, GArray *out)
{
  take_width (of, out, TRUE);
}

void
fp_take_wheelchair_beside (const FpMeasuring *of, GArray *out)
{
  take_width (of, out, FALSE);
}

/* Those that there are, or the floor on which there are none. */
void
fp_show_wheelchair_lacking (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  (void) one;
  fp_evidence_add_role (out, of, FP_ROLE_WHEELCHAIR);
  if (fp_evidence_is_empty (out))
    fp_evidence_add_floors (out, of, FP_FLOOR_PEOPLE);
}

/* --- companions --------------------------------------------------------------------------------- */

/* @companies: (element-type FpCompany) */
static gboolean
is_alone (const FpMeasuring *of, guint place, gpointer companies)
{
  const GArray *all = companies;

  (void) of;
  for (guint i = 0; i < all->len; i++)
    if (g_array_index (all, FpCompany, i).place == place)
      return g_array_index (all, FpCompany, i).companion < 0;
  return FALSE;
}

void
fp_take_wheelchair_alone (const FpMeasuring *of, GArray *out)
{
  g_autoptr (GArray) companies = fp_companies (of->people);
  const FpPersonPlace *first = NULL;
  FpMeasured *measured;
  guint alone = 0;

  for (guint i = 0; i < companies->len; i++)
    if (g_array_index (companies, FpCompany, i).companion < 0)
      {
        const FpPersonPlace *place = fp_measuring_place (of, g_array_index (companies, FpCompany, i).place);

        first = alone++ == 0 ? place : first;
      }
  if (companies->len == 0)
    return;
  measured = first != NULL ? fp_measured_add_at (out, alone, (int) first->owner, first->at) : fp_measured_add (out, 0);
  measured->text = fp_places_of (alone, companies->len, "", "");
  measured->detail = fp_measuring_where (of, is_alone, companies);
}

void
fp_show_wheelchair_alone (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out)
{
  g_autoptr (GArray) companies = fp_companies (of->people);

  (void) one;
  fp_evidence_add_places (out, of, is_alone, companies);
}
