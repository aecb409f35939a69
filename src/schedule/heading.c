/* SPDX-License-Identifier: GPL-3.0-or-later */
/* heading.c - the headings and the works of a bill, and which of them a line comes under */
#include "bill-private.h"

/* --- names --------------------------------------------------------------------- */

static const struct { const char *id, *label; } headings[FP_N_HEADINGS] = {
  [FP_HEADING_STEPS] = { "steps", "Steps and stone" },
  [FP_HEADING_ALTAR] = { "altar", "Altar" },
  [FP_HEADING_PAVING] = { "paving", "Paving and floors" },
  [FP_HEADING_RAIL] = { "rail", "Rail" },
  [FP_HEADING_TIMBER] = { "timber", "Timber" },
  [FP_HEADING_METAL] = { "metalwork", "Metalwork" },
  [FP_HEADING_CANDLES] = { "candles", "Candles" },
  [FP_HEADING_LINEN] = { "linen", "Linen and hangings" },
  [FP_HEADING_FURNITURE] = { "furniture", "Furniture" },
  [FP_HEADING_BUILDING] = { "building", "Building" },
};

const char *
fp_heading_id (FpHeading self)
{
  return headings[MIN ((guint) self, FP_N_HEADINGS - 1)].id;
}

const char *
fp_heading_label (FpHeading self)
{
  return headings[MIN ((guint) self, FP_N_HEADINGS - 1)].label;
}

gboolean
fp_heading_find (const char *id, FpHeading *heading)
{
  for (guint i = 0; i < FP_N_HEADINGS; i++)
    if (g_ascii_strcasecmp (id, headings[i].id) == 0)
      {
        *heading = (FpHeading) i;
        return TRUE;
      }
  return FALSE;
}

static const struct { const char *id, *label; } works_names[FP_N_WORKS] = {
  [FP_WORK_NEW] = { "new", "New" },
  [FP_WORK_MOVED] = { "moved", "Moved" },
  [FP_WORK_REMOVED] = { "removed", "Taken out" },
  [FP_WORK_KEPT] = { "kept", "Kept" },
};

const char *
fp_work_id (FpWork self)
{
  return works_names[MIN ((guint) self, FP_N_WORKS - 1)].id;
}

const char *
fp_work_label (FpWork self)
{
  return works_names[MIN ((guint) self, FP_N_WORKS - 1)].label;
}

/* --- what it belongs to --------------------------------------------------------- */

FpWork
fp_work_of (const FpPlaced *placed)
{
  if (placed->standing == FP_STANDING_REMOVED)
    return FP_WORK_REMOVED;
  if (placed->moved)
    return FP_WORK_MOVED;
  return placed->in_survey ? FP_WORK_KEPT : FP_WORK_NEW;
}

static FpHeading
heading_of_role (FpRole role)
{
  switch (role)
    {
    case FP_ROLE_FOOTPACE:
    case FP_ROLE_STEPS:
      return FP_HEADING_STEPS;
    case FP_ROLE_ALTAR:
    case FP_ROLE_GRADINE:
    case FP_ROLE_REREDOS:
      return FP_HEADING_ALTAR;
    case FP_ROLE_ALTAR_CLOTHS:
    case FP_ROLE_FRONTAL:
    case FP_ROLE_TABERNACLE_VEIL:
      return FP_HEADING_LINEN;
    case FP_ROLE_RAIL:
      return FP_HEADING_RAIL;
    case FP_ROLE_FLOOR:
      return FP_HEADING_PAVING;
    case FP_ROLE_WALL:
    case FP_ROLE_OPENING:
    case FP_ROLE_PIER:
    case FP_ROLE_GALLERY:
    case FP_ROLE_STANDING_ROOM:
      return FP_HEADING_BUILDING;
    default:
      return FP_HEADING_FURNITURE;
    }
}

FpHeading
fp_heading_of (const FpPlaced *placed, FpMaterial material, FpAmountType type)
{
  const FpHeading heading = heading_of_role (fp_item_kind (placed->item)->role);

  if (material == FP_MATERIAL_WAX)
    return FP_HEADING_CANDLES;
  if (heading != FP_HEADING_FURNITURE)
    return heading;
  if (type == FP_AMOUNT_AREA)
    return FP_HEADING_PAVING;
  if (material == FP_MATERIAL_METAL)
    return FP_HEADING_METAL;
  return material == FP_MATERIAL_WOOD && type != FP_AMOUNT_NUMBER ? FP_HEADING_TIMBER : heading;
}
