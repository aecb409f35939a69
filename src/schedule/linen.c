/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "linen-cloths.h"

#include "footpace/mensa.h"

#include <math.h>

#define CE_CLOTHS "Catholic Encyclopedia I (1907), Altar-Cloths"
#define CE_RAIL   "Catholic Encyclopedia I (1907), Altar Rail"
#define FORTESCUE "A. Fortescue, The Ceremonies of the Roman Rite Described (1918), p. 6"
#define DEARMER   "P. Dearmer, The Parson's Handbook (2nd ed. 1899)"

/* Dearmer p. 61: 3/4 in for the under cloths; 1 in at the sides and 2 in at the ends for the top cloth. */
#define UNDER_HEM     19.05
#define TOP_HEM_SIDES 25.4
#define TOP_HEM_ENDS  50.8
/* The cere cloth lies under all others and must not show: a narrow hem, turned once, for wax keeps the edge; common practice,
 * no source. */
#define CERE_HEM      10.0
/* Dearmer p. 61: a dust cover is 12 in longer than the mensa where the top cloth stays on. */
#define DUST_LONGER   304.8
/* Of silk: turned over to the back, where the lining covers it; common practice, no source. */
#define SILK_TURNING  38.0

static const FpHems under = { UNDER_HEM, UNDER_HEM, FP_TURNED_IN };
static const FpHems top = { TOP_HEM_ENDS, TOP_HEM_SIDES, FP_TURNED_IN };
static const FpHems cere = { CERE_HEM, CERE_HEM, 0 };
static const FpHems silk = { SILK_TURNING, SILK_TURNING, 0 };

void
fp_cloths_add (GArray *cloths, const FpCloth *cloth)
{
  if (cloth->number > 0 && cloth->length > 0.0 && cloth->width > 0.0)
    g_array_append_val (cloths, *cloth);
}

/* --- on an altar ---------------------------------------------------------------- */

/* How they lie there: as drawn, or as it is usual. */
typedef struct
{
  FpMensaFree mensa;
  double      falls, front; /* of the top cloth */
  guint       layers;       /* with it          */
  gboolean    drawn;
} Lie;

static const FpPlaced *
cloths_on (const FpPlaced *placed, guint n, guint altar)
{
  for (guint i = 0; i < n; i++)
    if (!placed[i].ghost && placed[i].standing != FP_STANDING_REMOVED && placed[i].support == (int) altar
        && fp_item_kind (placed[i].item)->role == FP_ROLE_ALTAR_CLOTHS)
      return &placed[i];
  return NULL;
}

static Lie
lie_on (const FpScene *scene, guint altar, FpBooks books)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n), *drawn = cloths_on (placed, n, altar);
  Lie lie = { .falls = placed[altar].extent.top, .layers = books != FP_BOOKS_NEWER ? 3 : 1, .drawn = drawn != NULL };

  fp_mensa_free (scene, altar, &lie.mensa);
  if (drawn == NULL)
    return lie;
  lie.layers = (guint) fp_item_param (drawn->item, "layers");
  lie.falls = MAX (lie.falls - fp_item_param (drawn->item, "clear"), 0);
  lie.front = MIN (fp_item_param (drawn->item, "front"), placed[altar].extent.top);
  return lie;
}

/* What it is cut out for, of a cloth that falls down so far at the ends and in front. */
static FpBox
notch_of (const FpMensaFree *mensa, double falls, double front)
{
  const FpBox *free = &mensa->free, *n = &mensa->notch;

  if (fp_box_is_empty (n))
    return FP_BOX_EMPTY;
  return (FpBox) { n->x0 - free->x0 + falls, n->y0 - free->y0 + front, n->x1 - free->x0 + falls, n->y1 - free->y0 + front };
}

static void
add_on (GArray *out, const FpPlaced *altar, const Lie *lie, FpCloth cloth)
{
  const FpBox *free = &lie->mensa.free;

  cloth.placed = altar;
  cloth.length += free->x1 - free->x0 + 2 * cloth.falls;
  cloth.width += free->y1 - free->y0 + cloth.front;
  cloth.material = FP_MATERIAL_LINEN;
  cloth.notch = notch_of (&lie->mensa, cloth.falls + (cloth.length - 2 * cloth.falls - (free->x1 - free->x0)) / 2, cloth.front);
  fp_cloths_add (out, &cloth);
}

static const char *
top_source (const Lie *lie, FpBooks books)
{
  if (lie->drawn)
    return books != FP_BOOKS_NEWER ? "as drawn; " CE_CLOTHS ": to the footpace at both ends; " DEARMER ", p. 60: none over the front; hem: p. 61"
                                   : "as drawn; General Instruction of the Roman Missal, 117 and 304: at least one white cloth";
  return books != FP_BOOKS_NEWER ? CE_CLOTHS ": to the footpace at both ends; " DEARMER ", p. 60: none over the front; hem: p. 61"
                                 : "General Instruction of the Roman Missal, 117 and 304: at least one white cloth; to the footpace "
                                   "at both ends: design judgement";
}

static void
add_for_altar (GArray *out, const FpScene *scene, guint which, FpBooks books)
{
  const FpPlaced *altar = &fp_scene_placed (scene, NULL)[which];
  const Lie lie = lie_on (scene, which, books);

  if (books != FP_BOOKS_NEWER)
    add_on (out, altar, &lie, (FpCloth) {
      .id = "cere-cloth", .label = "Cere cloth, waxed", .number = 1, .hems = cere,
      .source = FORTESCUE ": exactly the mensa; hem: common practice, no source",
      .note = "Close, heavy linen. Washed and hemmed first, then waxed with beeswax on one side, which lies on the stone; not "
              "washed again. One of the books (Burnett, Low Mass Ceremonial, djvu/52) has it cover the four edges of the mensa as well.",
    });
  add_on (out, altar, &lie, (FpCloth) {
    .id = "under-cloth", .label = "Under cloth", .number = lie.layers - 1, .hems = under,
    .source = CE_CLOTHS ": two that cover the whole mensa, or one folded double; hem: " DEARMER ", p. 61",
  });
  add_on (out, altar, &lie, (FpCloth) {
    .id = "top-cloth", .label = "Top cloth", .number = 1, .hems = top, .falls = lie.falls, .front = lie.front,
    .source = top_source (&lie, books), .note = "Corners mitred (Arts and Crafts Magazine, Ecclesiastical Linens).",
  });
  add_on (out, altar, &lie, (FpCloth) {
    .id = "dust-cover", .label = "Dust cover", .number = 1, .falls = DUST_LONGER / 2, .hems = under, .source = DEARMER ", p. 61",
  });
}

/* --- credence, rail -------------------------------------------------------------- */

/* Along from end to end, and from front to back. */
static void
measure (const FpPlaced *placed, double *length, double *width)
{
  const FpBox *plan = &placed->extent.plan;

  *length = plan->x1 - plan->x0;
  *width = plan->y1 - plan->y0;
}

/* Printed is only that it reaches to the floor; on which sides is design judgement. */
static void
add_for_credence (GArray *out, const FpPlaced *credence)
{
  const double height = credence->extent.height;
  double length, width;

  measure (credence, &length, &width);
  fp_cloths_add (out, &(FpCloth) {
    .placed = credence, .id = "credence-cloth", .label = "Credence cloth", .number = 1, .length = length + 2.0 * height,
    .width = width + height, .hems = under, .material = FP_MATERIAL_LINEN, .notch = FP_BOX_EMPTY, .falls = height, .front = height,
    .source = "New Catholic Dictionary (1929), Credence: to the floor on solemn feasts; at the ends and in front: design judgement",
    .note = "Its front corners hang lower than its edges and trail on the floor: round them off, or let it fall less.",
  });
}

/* As the kind of rail has it: none, or in pieces between its gates. */
static void
add_for_rail (GArray *out, const FpPlaced *rail)
{
  g_autoptr (GArray) found = g_array_new (FALSE, FALSE, sizeof (FpQuantity));

  fp_item_kind (rail->item)->quantities (&rail->form, found);
  for (guint i = 0; i < found->len; i++)
    {
      const FpQuantity *q = &g_array_index (found, FpQuantity, i);

      if (q->material == FP_MATERIAL_LINEN && q->type == FP_AMOUNT_NUMBER)
        fp_cloths_add (out, &(FpCloth) {
          .placed = rail, .id = "rail-cloth", .label = q->what, .number = (guint) q->amount, .length = q->size.x, .width = q->size.y,
          .hems = under, .material = FP_MATERIAL_LINEN, .notch = FP_BOX_EMPTY,
          .source = CE_RAIL ": the full length of the rail, about 2 ft wide; hem: as of an under cloth, common practice, no source",
          .note = "Tapes or hooks along one long side: it is fastened on the side of the sanctuary.",
        });
    }
}

/* A stand of the tabernacle is no credence, though it is made like one. */
static gboolean
bears_tabernacle (const FpPlaced *placed, guint n, guint which)
{
  for (guint i = 0; i < n; i++)
    if (!placed[i].ghost && placed[i].support == (int) which && fp_item_kind (placed[i].item)->role == FP_ROLE_TABERNACLE)
      return TRUE;
  return FALSE;
}

/* --- of linen, of silk ------------------------------------------------------------ */

static gboolean
is_there (const FpPlaced *placed)
{
  return !placed->ghost && placed->standing != FP_STANDING_REMOVED;
}

/* The altar at which Mass is said: -1 where there is none that stays. */
static int
celebrated (const FpScene *scene)
{
  const int altar = fp_scene_celebrated_altar (scene);

  return altar >= 0 && is_there (&fp_scene_placed (scene, NULL)[altar]) ? altar : -1;
}

static void
add_small (GArray *out, const FpScene *scene)
{
  const int altar = celebrated (scene);
  FpMensaFree mensa;

  if (altar < 0)
    return;
  fp_mensa_free (scene, (guint) altar, &mensa);
  fp_cloths_add_small (out, &fp_scene_placed (scene, NULL)[altar], mensa.free.y1 - mensa.free.y0,
                       fp_project_works (fp_scene_project (scene)));
}

GArray *
fp_linen_cloths (const FpScene *scene, FpBooks books)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpCloth));
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    {
      if (!is_there (&placed[i]))
        continue;
      switch (fp_item_kind (placed[i].item)->role)
        {
        case FP_ROLE_ALTAR: add_for_altar (out, scene, i, books); break;
        case FP_ROLE_CREDENCE:
          if (!bears_tabernacle (placed, n, i))
            add_for_credence (out, &placed[i]);
          break;
        case FP_ROLE_RAIL: add_for_rail (out, &placed[i]); break;
        default: break;
        }
    }
  add_small (out, scene);
  return out;
}

/* As the kind has its pieces. */
static void
add_silk_of (GArray *out, const FpPlaced *placed)
{
  g_autoptr (GArray) found = g_array_new (FALSE, FALSE, sizeof (FpQuantity));

  fp_item_kind (placed->item)->quantities (&placed->form, found);
  for (guint i = 0; i < found->len; i++)
    {
      const FpQuantity *q = &g_array_index (found, FpQuantity, i);

      if (q->material == FP_MATERIAL_SILK && q->size.x > 0 && q->size.y > 0)
        fp_cloths_add (out, &(FpCloth) {
          .placed = placed, .id = "hanging", .label = q->what, .number = (guint) round (q->amount / (q->size.x * q->size.y)),
          .length = q->size.x, .width = q->size.y, .hems = silk, .material = FP_MATERIAL_SILK, .notch = FP_BOX_EMPTY,
          .source = "as drawn; turnings: common practice, no source",
        });
    }
}

GArray *
fp_linen_silks (const FpScene *scene)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpCloth));
  const int altar = celebrated (scene);
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    {
      const FpRole role = fp_item_kind (placed[i].item)->role;
      if (is_there (&placed[i]) && (role == FP_ROLE_FRONTAL || role == FP_ROLE_TABERNACLE_VEIL))
        add_silk_of (out, &placed[i]);
    }
  if (altar >= 0)
    fp_cloths_add_small_silk (out, &placed[altar], fp_project_works (fp_scene_project (scene)));
  return out;
}

/* --- as they are cut -------------------------------------------------------------- */

double
fp_linen_cut (double finished, double hem, double turned_in, double shrinkage)
{
  if (!(shrinkage >= 0.0) || shrinkage > FP_SHRINKAGE_MAX)
    return NAN;
  return (finished + 2.0 * (hem + turned_in)) / (1.0 - shrinkage);
}

FpBoltPiece
fp_linen_piece (const FpCloth *cloth, const FpShrinkage *shrinkage)
{
  const FpHems *hems = &cloth->hems;

  return (FpBoltPiece) {
    .across = fp_linen_cut (cloth->width, hems->sides, hems->turned_in, shrinkage->weft),
    .along = fp_linen_cut (cloth->length, hems->ends, hems->turned_in, shrinkage->warp),
    .turned_across = fp_linen_cut (cloth->length, hems->ends, hems->turned_in, shrinkage->weft),
    .turned_along = fp_linen_cut (cloth->width, hems->sides, hems->turned_in, shrinkage->warp),
  };
}

GArray *
fp_linen_pieces (const GArray *cloths, const FpShrinkage *shrinkage)
{
  GArray *out = g_array_new (FALSE, FALSE, sizeof (FpBoltPiece));

  for (guint i = 0; i < cloths->len; i++)
    {
      const FpCloth *cloth = &g_array_index (cloths, FpCloth, i);
      const FpBoltPiece piece = fp_linen_piece (cloth, shrinkage);

      for (guint k = 0; k < cloth->number; k++)
        g_array_append_val (out, piece);
    }
  return out;
}
