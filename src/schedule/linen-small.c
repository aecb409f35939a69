/* SPDX-License-Identifier: GPL-3.0-or-later */
/* linen-small.c - the small linens: their finished sizes, hems and folds */
#include "linen-cloths.h"

#include <math.h>

#define INCH FP_MM_PER_INCH

#define LINENS    "Catholic Encyclopedia I (1907), Altar-Linens"
#define MAGAZINE  "Arts and Crafts Magazine, Ecclesiastical Linens"

/* A corporal of 20 in lies on the mensa with an inch or two to spare (Dearmer p. 57); it is never under 15 in (Altar-Linens). */
#define CORPORAL       (20 * INCH)
#define CORPORAL_LEAST (15 * INCH)
#define TO_SPARE       INCH

typedef struct
{
  const char *id, *label;
  guint       needed; /* of one Mass      */
  guint       pieces; /* cut for each one */
  double      length, width;
  FpHems      hems;
  guint       fold_along, fold_across;
  FpMaterial  material;
  const char *source, *note;
} Small;

/* Hems but the corporal's: common practice, no source. */
static const Small smalls[FP_N_SMALLS] = {
  [FP_SMALL_CORPORAL] = { "corporal", "Corporal", 1, 1, CORPORAL, CORPORAL, { INCH, INCH, FP_TURNED_IN }, 3, 3, FP_MATERIAL_LINEN,
                          MAGAZINE ": 20 in, with a plain hem of 1 in; P. Dearmer, The Parson's Handbook (2nd ed. 1899), p. 57; "
                          "no smaller than 15 in: " LINENS,
                          "Folded in three both ways, with the upper side inward." },
  [FP_SMALL_PALL] = { "pall", "Pall, one of its two sides", 1, 2, 6 * INCH, 6 * INCH, { 10, 10, 0 }, 0, 0, FP_MATERIAL_LINEN,
                      LINENS " (from memory): 5 to 7 in square",
                      "Two sides are sewn together on three edges and turned; a stiff card or starched linen is slipped in, so "
                      "that it comes out for the wash." },
  [FP_SMALL_PURIFICATOR] = { "purificator", "Purificator", 1, 1, 18 * INCH, 10 * INCH, { 6, 6, 6 }, 0, 3, FP_MATERIAL_LINEN,
                             LINENS " (from memory): 12 to 18 in long, 9 or 10 in wide; hem: common practice, no source",
                             "Folded lengthwise in three; a small cross may be worked in its middle." },
  [FP_SMALL_TOWEL] = { "finger-towel", "Finger towel", 1, 1, 18 * INCH, 14 * INCH, { 13, 6, 6 }, 0, 3, FP_MATERIAL_LINEN,
                       LINENS " (from memory): about 18 by 14 in; hem: common practice, no source", "Folded lengthwise in three." },
  [FP_SMALL_AMICE] = { "amice", "Amice", 0, 1, 36 * INCH, 24 * INCH, { 13, 13, 6 }, 0, 0, FP_MATERIAL_LINEN,
                       "Catholic Encyclopedia I (1907), Amice (from memory): at least 32 by 24 in; hem: common practice, no source",
                       "Tapes at the two corners of one long side; a cross in the middle near that side." },
  [FP_SMALL_CHALICE_VEIL] = { "chalice-veil", "Chalice veil", 0, 1, 21 * INCH, 21 * INCH, { 13, 13, 0 }, 0, 0, FP_MATERIAL_SILK,
                              "common practice, no source: 20 to 22 in square", "In the colour of the day." },
  [FP_SMALL_BURSE] = { "burse", "Burse, one of its two sides", 0, 2, 9 * INCH, 9 * INCH, { 25, 25, 0 }, 0, 0, FP_MATERIAL_SILK,
                       "common practice, no source: 9 in square; it holds the folded corporal",
                       "Each over a stiff card; hinged at one edge, with gussets at two; lined with linen." },
};

static void
add (GArray *cloths, const FpPlaced *altar, const Small *small, double asked, double most)
{
  const double number = asked >= 0 ? asked : small->needed;
  const FpCloth cloth = {
    .placed = altar, .id = small->id, .label = small->label, .number = (guint) number * small->pieces,
    .length = MIN (small->length, most), .width = MIN (small->width, most), .hems = small->hems, .material = small->material,
    .notch = FP_BOX_EMPTY, .fold_along = small->fold_along, .fold_across = small->fold_across, .source = small->source,
    .note = small->note,
  };

  fp_cloths_add (cloths, &cloth);
}

void
fp_cloths_add_small (GArray *cloths, const FpPlaced *altar, double depth, const FpWorks *works)
{
  for (guint i = 0; i < FP_N_SMALLS; i++)
    if (smalls[i].material == FP_MATERIAL_LINEN)
      add (cloths, altar, &smalls[i], works->small[i],
           i == FP_SMALL_CORPORAL ? MAX (depth - TO_SPARE, CORPORAL_LEAST) : INFINITY);
}

void
fp_cloths_add_small_silk (GArray *cloths, const FpPlaced *altar, const FpWorks *works)
{
  for (guint i = 0; i < FP_N_SMALLS; i++)
    if (smalls[i].material == FP_MATERIAL_SILK)
      add (cloths, altar, &smalls[i], works->small[i], INFINITY);
}
