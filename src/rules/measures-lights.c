/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Candles: how many are lit at each celebration, how far apart, and how far from what can burn. */
#include "measuring.h"

#include <math.h>

/* Candlesticks stand "beside" the altar up to here (design judgement). */
#define BESIDE 1500.0

/* --- how many ------------------------------------------------------------ */

static gboolean
near_altar (const FpMeasuring *of, int candles, int altar)
{
  const FpPlaced *a = fp_measuring_placed (of, altar), *c = fp_measuring_placed (of, candles);
  FpBox about = a->plan;

  about.x0 -= BESIDE;
  about.y0 -= BESIDE;
  about.x1 += BESIDE;
  about.y1 += BESIDE;
  return fp_box_overlaps (&about, &c->plan);
}

/* Candlesticks on the altar, or (@beside) about it too; NAN without an altar. */
static double
candles (const FpMeasuring *of, gboolean beside, int *owner)
{
  /* Branched lights do not count, nor does the Sanctus candle (Catholic Encyclopedia I, 1907, Altar Candlesticks). */
  static const FpRole counted[] = { FP_ROLE_SEVENTH_CANDLE, FP_ROLE_CANDLES };
  int altar;
  double n = 0;

  fp_measuring_celebrated (of, &altar);
  *owner = altar;
  if (altar < 0)
    return NAN;
  for (guint r = 0; r < G_N_ELEMENTS (counted); r++)
    for (int i = fp_measuring_next (of, counted[r], -1); i >= 0; i = fp_measuring_next (of, counted[r], i))
      if (fp_measuring_stands_on (of, i, altar) || (beside && near_altar (of, i, altar)))
        {
          n += fp_placed_param (fp_measuring_placed (of, i), "count", 1);
          *owner = i;
        }
  return n;
}

/* The most that may be lit at each. */
static double
most_lit (FpCelebration one)
{
  switch (one)
    {
    case FP_CELEBRATION_LOW:
      return 2;
    case FP_CELEBRATION_SUNG:
    case FP_CELEBRATION_SOLEMN:
    case FP_CELEBRATION_REQUIEM:
    case FP_CELEBRATION_PASSIONTIDE:
    case FP_CELEBRATION_WEEKDAY:
    case FP_CELEBRATION_SUNDAY:
      return 6;
    case FP_CELEBRATION_PONTIFICAL:
    case FP_CELEBRATION_BISHOP:
      return 7;
    case FP_CELEBRATION_GOOD_FRIDAY:
      return 0;
    case FP_CELEBRATION_BENEDICTION:
      return FP_COUNT_MAX; /* twelve at least, and no more than stand there */
    }
  return 0;
}

/* Candlesticks that another celebration of the brief needs stay unlit at this one. */
static void
take_lit (const FpMeasuring *of, GArray *out, FpCelebration one, gboolean beside)
{
  guint asked = fp_project_brief (fp_scene_project (of->scene))->celebrations;
  int owner;
  double stand = candles (of, beside, &owner), lit = stand;

  if (isnan (stand))
    return;
  for (int c = 0; c < FP_N_CELEBRATIONS; c++)
    if ((asked & (1u << c)) && most_lit ((FpCelebration) (1u << c)) > most_lit (one))
      lit = MIN (stand, most_lit (one));

  {
    FpMeasured *measured = fp_measured_add_at (out, lit, owner, fp_placed_middle (fp_measuring_placed (of, owner), 0));

    if (lit < stand)
      measured->detail = g_strdup_printf ("%u stand there for other celebrations", (guint) stand);
  }
}

void
fp_take_candles_low (const FpMeasuring *of, GArray *out)
{
  take_lit (of, out, FP_CELEBRATION_LOW, FALSE);
}

void
fp_take_candles_sung (const FpMeasuring *of, GArray *out)
{
  take_lit (of, out, FP_CELEBRATION_SUNG, FALSE);
}

void
fp_take_candles_solemn (const FpMeasuring *of, GArray *out)
{
  take_lit (of, out, FP_CELEBRATION_SOLEMN, FALSE);
}

void
fp_take_candles_pontifical (const FpMeasuring *of, GArray *out)
{
  take_lit (of, out, FP_CELEBRATION_PONTIFICAL, FALSE);
}

void
fp_take_candles_newer (const FpMeasuring *of, GArray *out)
{
  take_lit (of, out, FP_CELEBRATION_SUNDAY, TRUE);
}

void
fp_take_candles_bishop (const FpMeasuring *of, GArray *out)
{
  take_lit (of, out, FP_CELEBRATION_BISHOP, TRUE);
}

/* --- where the flames are ------------------------------------------------ */

typedef struct { FpVec3 at; int owner; } Flame;

static GArray *
flames (const FpMeasuring *of)
{
  guint n = 0;
  const FpSolid *solid = fp_scene_solids (of->scene, &n);
  GArray *list = g_array_new (FALSE, FALSE, sizeof (Flame));

  for (guint i = 0; i < n; i++)
    if (solid[i].part == FP_PART_CANDLE && !fp_measuring_placed (of, (int) solid[i].owner)->ghost)
      {
        FpBox3 box = fp_solid_box (&solid[i]);
        Flame flame = { { (box.lo.x + box.hi.x) / 2, (box.lo.y + box.hi.y) / 2, box.hi.z }, (int) solid[i].owner };

        g_array_append_val (list, flame);
      }
  return list;
}

void
fp_take_candle_spacing (const FpMeasuring *of, GArray *out)
{
  g_autoptr (GArray) list = flames (of);
  double least = -1;
  const Flame *closest = NULL;

  for (guint i = 0; i < list->len; i++)
    for (guint j = i + 1; j < list->len; j++)
      {
        const Flame *a = &g_array_index (list, Flame, i), *b = &g_array_index (list, Flame, j);
        double apart = hypot (a->at.x - b->at.x, a->at.y - b->at.y);

        if (least < 0 || apart < least)
          {
            least = apart;
            closest = a;
          }
      }
  if (closest)
    fp_measured_add_at (out, least, closest->owner, closest->at);
}

/* Level distance from a point to a solid's plan; 0 inside. */
static double
distance_to (const FpSolid *solid, FpPoint from)
{
  double nearest = G_MAXDOUBLE;

  if (solid->shape != FP_SOLID_PRISM)
    {
      double radius = solid->shape == FP_SOLID_ROUND ? MAX (solid->r0, solid->r1) : MAX (solid->rx, solid->ry);

      return MAX (0, hypot (from.x - solid->cx, from.y - solid->cy) - radius);
    }
  if (fp_outline_contains (solid->outline, solid->n_outline, from))
    return 0;
  for (guint i = 0; i < solid->n_outline; i++)
    nearest = MIN (nearest, fp_segment_distance (solid->outline[i],
                                                 solid->outline[(i + 1) % solid->n_outline], from));
  return nearest;
}

/* Furnishings that rise to the flame or above may be of wood or hung with cloth: the model does not know. */
static gboolean
may_burn (const FpMeasuring *of, const FpSolid *solid, double flame)
{
  const FpPlaced *owner = fp_measuring_placed (of, (int) solid->owner);
  FpRole role = fp_placed_role (owner);

  return !owner->ghost && !(fp_item_kind (owner->item)->flags & FP_KIND_SURVEY)
         && fp_kind_sort (fp_item_kind (owner->item)) != FP_SORT_LIGHTS && role != FP_ROLE_CRUCIFIX && fp_solid_box (solid).hi.z > flame;
}

void
fp_take_flame_clear (const FpMeasuring *of, GArray *out)
{
  g_autoptr (GArray) list = flames (of);
  guint n = 0;
  const FpSolid *solid = fp_scene_solids (of->scene, &n);
  double least = -1;
  int flame = -1, thing = -1;

  for (guint f = 0; f < list->len; f++)
    for (guint i = 0; i < n; i++)
      {
        const FpVec3 at = g_array_index (list, Flame, f).at;
        double distance;

        if (!may_burn (of, &solid[i], at.z))
          continue;
        distance = distance_to (&solid[i], (FpPoint) { at.x, at.y });
        if (least < 0 || distance < least)
          {
            least = distance;
            flame = (int) f;
            thing = (int) solid[i].owner;
          }
      }

  if (flame >= 0)
    {
      const Flame *closest = &g_array_index (list, Flame, flame);

      fp_measured_add_at (out, least, closest->owner, closest->at)->detail
        = g_strdup_printf ("from a flame to: %s", fp_item_name (fp_measuring_placed (of, thing)->item));
    }
}
