/* SPDX-License-Identifier: GPL-3.0-or-later */
/* schedule.c - quantities of one alternative */
#include "footpace/schedule.h"

#include <math.h>

#define MM_PER_M       1000.0
#define CUBIC_FOOT     (FP_MM_PER_FOOT * FP_MM_PER_FOOT * FP_MM_PER_FOOT)
#define SQUARE_FOOT    (FP_MM_PER_FOOT * FP_MM_PER_FOOT)

/* Where a moved thing stood there is a ghost of it too: it is one thing, and is listed where it stands now. */
static gboolean
is_listed (const FpScene *scene, const FpPlaced *placed)
{
  return !placed->ghost || fp_scene_find (scene, fp_item_id (placed->item)) < 0;
}

static void
add_lines (const FpPlaced *placed, GArray *out)
{
  const FpKind *kind = fp_item_kind (placed->item);

  if (kind->quantities == NULL)
    return;
  g_autoptr (GArray) found = g_array_new (FALSE, FALSE, sizeof (FpQuantity));
  kind->quantities (&placed->form, found);
  for (guint i = 0; i < found->len; i++)
    {
      const FpScheduleLine line = { placed, g_array_index (found, FpQuantity, i) };
      g_array_append_val (out, line);
    }
}

GArray *
fp_schedule_lines (const FpScene *scene)
{
  GArray *lines = g_array_new (FALSE, FALSE, sizeof (FpScheduleLine));
  const FpPlaced *placed;
  guint n;

  placed = fp_scene_placed (scene, &n);
  for (guint i = 0; i < n; i++)
    if (is_listed (scene, &placed[i]))
      add_lines (&placed[i], lines);
  return lines;
}

double
fp_schedule_stone (const FpScene *scene)
{
  g_autoptr (GArray) lines = fp_schedule_lines (scene);
  double stone = 0;

  for (guint i = 0; i < lines->len; i++)
    {
      const FpScheduleLine *line = &g_array_index (lines, FpScheduleLine, i);
      if (line->placed->standing == FP_STANDING_PROPOSED && !line->placed->moved
          && line->quantity.material == FP_MATERIAL_STONE && line->quantity.type == FP_AMOUNT_VOLUME)
        stone += line->quantity.amount;
    }
  return stone;
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
  char number[G_ASCII_DTOSTR_BUF_SIZE];

  g_ascii_formatd (number, sizeof number, fabs (value) < 0.1 ? "%.3f" : "%.2f", value);
  return g_strconcat (number, "\302\240", unit, NULL);
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
