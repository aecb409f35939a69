/* SPDX-License-Identifier: GPL-3.0-or-later */
/* schedule.c - what an alternative does, counted, and amounts as they are read */
#include "footpace/schedule.h"

#include <math.h>

#define MM_PER_M       1000.0
#define CUBIC_FOOT     (FP_MM_PER_FOOT * FP_MM_PER_FOOT * FP_MM_PER_FOOT)
#define SIXTEENTH      (FP_MM_PER_INCH / 16)
#define SQUARE_FOOT    (FP_MM_PER_FOOT * FP_MM_PER_FOOT)

/* Where a moved thing stood there is a ghost of it too: it is one thing, and is listed where it stands now. */
static gboolean
is_listed (const FpScene *scene, const FpPlaced *placed)
{
  return !placed->ghost || fp_scene_find (scene, fp_item_id (placed->item)) < 0;
}

/* --- counts --------------------------------------------------------------- */

/* That the walls stay where they are tells nobody anything. */
static gboolean
is_fabric (const FpPlaced *placed)
{
  switch (fp_item_kind (placed->item)->role)
    {
    case FP_ROLE_WALL:
    case FP_ROLE_OPENING:
    case FP_ROLE_PIER:
    case FP_ROLE_FLOOR:
    case FP_ROLE_GALLERY:
    case FP_ROLE_STANDING_ROOM:
      return TRUE;
    default:
      return FALSE;
    }
}

static void
count (const FpPlaced *placed, FpScheduleCounts *counts)
{
  if (placed->standing == FP_STANDING_REMOVED)
    counts->removed++;
  else if (placed->moved)
    counts->moved++;
  else if (!placed->in_survey)
    counts->added++;
  else if (!is_fabric (placed))
    counts->kept++;
}

FpScheduleCounts
fp_schedule_counts (const FpScene *scene)
{
  FpScheduleCounts counts = { 0, 0, 0, 0 };
  const FpPlaced *placed;
  guint n;

  placed = fp_scene_placed (scene, &n);
  for (guint i = 0; i < n; i++)
    if (is_listed (scene, &placed[i]))
      count (&placed[i], &counts);
  return counts;
}

/* --- as read -------------------------------------------------------------- */

/* Two decimals, as quantities are billed (NRM2, from memory); three where two would leave one digit. */
static char *
measured (double value, const char *unit)
{
  g_autofree char *number = fp_number_format_grouped (value, fabs (value) < 0.1 ? 3 : 2);

  return g_strconcat (number, "\302\240", unit, NULL);
}

guint
fp_amount_decimals (FpAmountType type, double shown)
{
  return type == FP_AMOUNT_NUMBER ? 0 : shown < 0.0995 ? 4 : type == FP_AMOUNT_VOLUME ? 3 : 2;
}

double
fp_amount_billed (FpAmountType type, double amount, FpUnits units)
{
  const double shown = fp_amount_in (type, amount, units), unit = fp_amount_in (type, 1, units);
  const double steps = pow (10, fp_amount_decimals (type, shown));

  if (type == FP_AMOUNT_NUMBER)
    return amount;
  if (type == FP_AMOUNT_LENGTH && units == FP_UNITS_IMPERIAL)
    return round (amount / SIXTEENTH) * SIXTEENTH;
  return round (shown * steps) / steps / unit;
}

char *
fp_amount_format (FpAmountType type, double amount, FpUnits units)
{
  const gboolean metric = units == FP_UNITS_METRIC;

  if (!isfinite (amount))
    return g_strdup ("\342\200\223");
  switch (type)
    {
    case FP_AMOUNT_LENGTH:
      return metric ? measured (amount / MM_PER_M, "m") : fp_length_format (amount, units);
    case FP_AMOUNT_AREA:
      return metric ? measured (amount / (MM_PER_M * MM_PER_M), "m²") : measured (amount / SQUARE_FOOT, "sq ft");
    case FP_AMOUNT_VOLUME:
      return metric ? measured (amount / (MM_PER_M * MM_PER_M * MM_PER_M), "m³")
                    : measured (amount / CUBIC_FOOT, "cu ft");
    case FP_AMOUNT_NUMBER:
      break;
    }
  return fp_number_format (amount);
}
