/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Where in a thing one of its parameters is: between the points of the dimension that its kind draws, or where such a
 * dimension would stand if the kind drew it. */
#include "measure-evidence.h"

#include <math.h>
#include <string.h>

/* --- what the kind draws ------------------------------------------------------------- */

static gboolean
drawn_by_kind (const FpPlaced *placed, int param, FpVec3 *a, FpVec3 *b)
{
  const FpKind *kind = fp_item_kind (placed->item);
  g_autoptr (GArray) dims = g_array_new (FALSE, FALSE, sizeof (FpDimSpec));

  if (kind->dims != NULL)
    kind->dims (&placed->form, dims);
  for (guint i = 0; i < dims->len; i++)
    {
      const FpDimSpec *dim = &g_array_index (dims, FpDimSpec, i);
      if (dim->param != param)
        continue;
      *a = dim->a;
      *b = fp_vec3_add (dim->a, fp_vec3_scale (fp_vec3_sub (dim->b, dim->a), 1.0 / MAX (dim->times, 1)));
      return TRUE;
    }
  return FALSE;
}

/* --- what it does not ------------------------------------------------------------------ */

static double
value_of (const FpPlaced *placed, const char *param)
{
  return fp_placed_param (placed, param, 0);
}

/* In the middle of the first row. */
static FpVec3
at_seat (const FpPlaced *pews, double width)
{
  return (FpVec3) { -width / 2, 0, value_of (pews, "seat-height") };
}

/* Beside the gate, at the edge towards the people. */
static FpVec3
at_rail (const FpPlaced *rail, double width)
{
  (void) width;
  return (FpVec3) { value_of (rail, "gate") / 2, -value_of (rail, "top") / 2 - value_of (rail, "bow"), value_of (rail, "height") };
}

static FpVec3
at_cushion (const FpPlaced *rail, double thick)
{
  (void) thick;
  return (FpVec3) { value_of (rail, "gate") / 2 + value_of (rail, "kneeling") / 2, rail->extent.plan.y0, 0 };
}

static FpVec3
at_upper_end (const FpPlaced *handrail, double beyond)
{
  (void) beyond;
  return (FpVec3) { 0, value_of (handrail, "length"), value_of (handrail, "rise") + value_of (handrail, "height") };
}

static FpVec3
at_left_edge (const FpPlaced *thing, double length)
{
  (void) length;
  return (FpVec3) { thing->extent.plan.x0, thing->extent.plan.y0, 0 };
}

static FpVec3
at_right_edge (const FpPlaced *thing, double length)
{
  (void) length;
  return (FpVec3) { thing->extent.plan.x1, thing->extent.plan.y0, 0 };
}

/* From the foot of what the cloths hang over. */
static FpVec3
under_hem (const FpPlaced *cloths, double length)
{
  (void) length;
  return (FpVec3) { cloths->form.core.x1, cloths->form.core.y0, cloths->form.foot };
}

static FpVec3
at_front_hem (const FpPlaced *cloths, double front)
{
  return (FpVec3) { cloths->form.core.x0, cloths->form.core.y0, -front };
}

static FpVec3
on_parapet (const FpPlaced *pulpit, double top)
{
  return (FpVec3) { 0, -value_of (pulpit, "width") / 2 - top, value_of (pulpit, "floor") + value_of (pulpit, "parapet") };
}

static FpVec3
at_font_step (const FpPlaced *font, double riser)
{
  (void) riser;
  return (FpVec3) { 0, font->extent.plan.y0, 0 };
}

static FpVec3
on_font_step (const FpPlaced *font, double tread)
{
  (void) tread;
  return (FpVec3) { 0, font->extent.plan.y0, value_of (font, "riser") };
}

/* On the outermost stick. */
static FpVec3
on_stick (const FpPlaced *candles, double length)
{
  FpVec3 a, b;
  const int height = fp_kind_param_index (fp_item_kind (candles->item), "height");

  (void) length;
  return drawn_by_kind (candles, height, &a, &b) ? b : (FpVec3) { 0, 0, value_of (candles, "height") };
}

static FpVec3
in_candle (const FpPlaced *paschal, double diameter)
{
  return (FpVec3) { -diameter / 2, 0, value_of (paschal, "height") + value_of (paschal, "candle") / 2 };
}

/* From where to begin, and which way: 'x', 'y' or 'z'. */
static const struct { FpRole role; const char *param; char way; FpVec3 (*from) (const FpPlaced *placed, double value); } spans[] = {
  { FP_ROLE_PEWS, "seat-width", 'x', at_seat },
  { FP_ROLE_RAIL, "kneeling", 'x', at_rail },
  { FP_ROLE_RAIL, "cushion", 'z', at_cushion },
  { FP_ROLE_HANDRAIL, "extend", 'y', at_upper_end },
  { FP_ROLE_WHEELCHAIR, "width", 'x', at_left_edge },
  { FP_ROLE_WHEELCHAIR, "width-beside", 'x', at_left_edge },
  { FP_ROLE_WHEELCHAIR, "depth", 'y', at_right_edge },
  { FP_ROLE_ALTAR_CLOTHS, "clear", 'z', under_hem },
  { FP_ROLE_ALTAR_CLOTHS, "front", 'z', at_front_hem },
  { FP_ROLE_PULPIT, "top", 'y', on_parapet },
  { FP_ROLE_FONT, "riser", 'z', at_font_step },
  { FP_ROLE_FONT, "tread", 'y', on_font_step },
  { FP_ROLE_CANDLES, "candle", 'z', on_stick },
  { FP_ROLE_PASCHAL_CANDLE, "diameter", 'x', in_candle },
  { FP_ROLE_RAMP, "handrail", 'z', at_right_edge },
};

static FpVec3
along (FpVec3 from, char way, double length)
{
  return (FpVec3) { from.x + (way == 'x' ? length : 0), from.y + (way == 'y' ? length : 0), from.z + (way == 'z' ? length : 0) };
}

/* On whichever side of the octagon its stair goes up, which is where it takes more room. */
static gboolean
in_stair (const FpPlaced *pulpit, const char *param, double value, FpVec3 *a, FpVec3 *b)
{
  const FpBox *box = &pulpit->extent.plan;
  const gboolean up = strcmp (param, "riser") == 0;
  const double side = MAX (MAX (box->x1, -box->x0), box->y1), riser = value_of (pulpit, "riser");
  const FpVec3 way = side <= box->x1 ? (FpVec3) { 1, 0, 0 } : side <= -box->x0 ? (FpVec3) { -1, 0, 0 } : (FpVec3) { 0, 1, 0 };

  if (!up && strcmp (param, "tread") != 0)
    return FALSE;
  *a = fp_vec3_scale (way, side);
  if (!up)
    a->z = riser;
  *b = up ? along (*a, 'z', value) : fp_vec3_sub (*a, fp_vec3_scale (way, value));
  return TRUE;
}

/* A parameter of which nothing is said: upright if that is its name, or along the front. */
static void
by_name (const FpPlaced *placed, const char *param, double value, FpVec3 *a, FpVec3 *b)
{
  const gboolean upright = strstr (param, "height") != NULL || strcmp (param, "riser") == 0;

  *a = upright ? at_right_edge (placed, value) : at_left_edge (placed, value);
  *b = along (*a, upright ? 'z' : strcmp (param, "depth") == 0 || strcmp (param, "tread") == 0 ? 'y' : 'x', value);
}

gboolean
fp_param_span (const FpPlaced *placed, const char *param, FpVec3 *a, FpVec3 *b)
{
  const int index = fp_kind_param_index (fp_item_kind (placed->item), param);
  const double value = value_of (placed, param);
  const FpRole role = fp_placed_role (placed);

  if (index < 0)
    return FALSE;
  if (drawn_by_kind (placed, index, a, b))
    return TRUE;
  if (role == FP_ROLE_PULPIT && in_stair (placed, param, value, a, b))
    return TRUE;
  for (guint i = 0; i < G_N_ELEMENTS (spans); i++)
    if (spans[i].role == role && strcmp (spans[i].param, param) == 0)
      {
        *a = spans[i].from (placed, value);
        *b = along (*a, spans[i].way, value);
        return TRUE;
      }
  by_name (placed, param, value, a, b);
  return TRUE;
}
