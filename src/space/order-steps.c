/* SPDX-License-Identifier: GPL-3.0-or-later */
/* order-steps.c - the order in words */
#include "order-private.h"

#include <math.h>

const char *
fp_altar_side_id (FpAltarSide side)
{
  return side == FP_EPISTLE_SIDE ? "epistle" : "gospel";
}

const char *
fp_altar_side_label (FpAltarSide side)
{
  return side == FP_EPISTLE_SIDE ? "Epistle side" : "Gospel side";
}

/* --- what each server does -------------------------------------------------------- */

static void
add (GArray *out, FpAct act, guint server, FpAltarSide side, const FpOrderStep *lights)
{
  FpOrderStep step = { .act = act, .server = server, .side = side };

  if (lights != NULL)
    {
      step.middle = lights->middle;
      step.first = lights->first;
      step.last = lights->last;
    }
  g_array_append_val (out, step);
}

/* The lights of that server on one side, or in the middle; FALSE where he has none. */
static gboolean
run_of (const FpOrder *self, guint server, FpAltarSide side, gboolean middle, FpOrderStep *run)
{
  *run = (FpOrderStep) { .middle = middle };
  for (guint i = 0; i < self->lights->len; i++)
    {
      const FpOrderLight *light = &g_array_index (self->lights, FpOrderLight, i);

      if (light->server != server || light->middle != middle || (!middle && light->side != side))
        continue;
      if (run->first == 0)
        run->first = light->number;
      run->last = light->number;
    }
  return run->first > 0;
}

static void
add_server (const FpOrder *self, guint server, gboolean out, GArray *steps)
{
  const FpAltarSide first = self->spec.first, other = first == FP_EPISTLE_SIDE ? FP_GOSPEL_SIDE : FP_EPISTLE_SIDE;
  const struct { FpAltarSide side; gboolean middle; } lighting[] = { { first, TRUE }, { first, FALSE }, { other, FALSE } };
  FpOrderStep before = { .middle = TRUE };

  add (steps, FP_ACT_COME, server, first, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (lighting); i++)
    {
      const guint at = out ? G_N_ELEMENTS (lighting) - 1 - i : i;
      FpOrderStep run;

      if (!run_of (self, server, lighting[at].side, lighting[at].middle, &run))
        continue;
      /* From the middle to a side, or back, nothing is passed. */
      if (!before.middle && !run.middle)
        add (steps, FP_ACT_PASS, server, lighting[at].side, NULL);
      add (steps, FP_ACT_LIGHT, server, lighting[at].side, &run);
      before = run;
    }
  add (steps, FP_ACT_LEAVE, server, first, NULL);
}

GArray *
fp_order_steps (const FpOrder *self, gboolean out)
{
  GArray *steps = g_array_new (FALSE, FALSE, sizeof (FpOrderStep));

  for (guint server = 0; self->lights->len > 0 && server < MAX (self->spec.servers, 1); server++)
    add_server (self, server, out, steps);
  return steps;
}

/* --- in words ----------------------------------------------------------------------- */

char *
fp_order_step_numbers (const FpOrderStep *step, gboolean out)
{
  GString *text = g_string_new ("");

  for (guint i = step->first; i <= step->last; i++)
    g_string_append_printf (text, "%s%u", i > step->first ? ", " : "", out ? step->last - (i - step->first) : i);
  return g_string_free (text, FALSE);
}

char *
fp_order_step_text (const FpOrder *self, const FpOrderStep *step, gboolean out)
{
  const char *reverence = self->genuflects ? "genuflect" : "bow to the cross";
  g_autofree char *which = step->act == FP_ACT_LIGHT ? fp_order_step_numbers (step, out) : NULL;
  const char *verb = out ? "put out" : "light";

  switch (step->act)
    {
    case FP_ACT_COME:
      return g_strdup_printf ("In the middle, before the lowest step: %s.", reverence);
    case FP_ACT_PASS:
      return g_strdup_printf ("Cross to the %s: in the middle %s.", fp_altar_side_label (step->side), reverence);
    case FP_ACT_LEAVE:
      return g_strdup_printf ("Back before the lowest step: %s, and leave.", reverence);
    case FP_ACT_LIGHT:
    default:
      if (step->middle)
        return g_strdup_printf ("In the middle: %s %s.", verb, which);
      return g_strdup_printf ("%s: %s %s.", fp_altar_side_label (step->side), verb, which);
    }
}

/* --- what is amiss ------------------------------------------------------------------ */

/* As poles are bought: up to the next 10 mm, or half inch. */
static double
rounded_up (double mm, FpUnits units)
{
  const double step = units == FP_UNITS_METRIC ? 10 : 12.7;

  return ceil (mm / step) * step;
}

typedef gboolean (*LightTest) (const FpOrderLight *light, int thing);

static gboolean
is_unreached (const FpOrderLight *light, G_GNUC_UNUSED int thing)
{
  return !light->reached;
}

static gboolean
is_close_to (const FpOrderLight *light, int thing)
{
  return light->beside == thing && light->beside_by < FP_FLAME_BESIDE;
}

static gboolean
has_number (const GArray *numbers, guint number)
{
  for (guint i = 0; i < numbers->len; i++)
    if (g_array_index (numbers, guint, i) == number)
      return TRUE;
  return FALSE;
}

/* "Candle 3 is", "Candles 1, 3 and 6 are", of those of which it is true; owned by the caller. */
static char *
candles_are (const FpOrder *self, LightTest test, int thing)
{
  g_autoptr (GArray) numbers = g_array_new (FALSE, FALSE, sizeof (guint));
  GString *out = g_string_new ("Candle");

  for (guint i = 0; i < self->lights->len; i++)
    {
      const FpOrderLight *light = &g_array_index (self->lights, FpOrderLight, i);

      /* Of two servers each lights one of that number. */
      if (test (light, thing) && !has_number (numbers, light->number))
        g_array_append_val (numbers, light->number);
    }
  if (numbers->len != 1)
    g_string_append_c (out, 's');
  for (guint i = 0; i < numbers->len; i++)
    g_string_append_printf (out, "%s%u", i == 0 ? " " : i + 1 < numbers->len ? ", " : " and ", g_array_index (numbers, guint, i));
  g_string_append (out, numbers->len == 1 ? " is" : " are");
  return g_string_free (out, FALSE);
}

static const FpOrderLight *
farthest_unreached (const FpOrder *self)
{
  const FpOrderLight *farthest = NULL;

  for (guint i = 0; i < self->lights->len; i++)
    {
      const FpOrderLight *light = &g_array_index (self->lights, FpOrderLight, i);

      if (!light->reached && (farthest == NULL || light->away > farthest->away))
        farthest = light;
    }
  return farthest;
}

static void
add_reach (const FpOrder *self, FpUnits units, GPtrArray *out)
{
  const FpOrderLight *farthest = farthest_unreached (self);
  g_autofree char *candles = candles_are (self, is_unreached, -1);

  if (farthest != NULL)
    {
      g_autofree char *height = fp_length_format_unit (farthest->height, units);
      g_autofree char *has = fp_length_format_unit (self->spec.pole, units);
      g_autofree char *with = self->spec.pole > 0 ? g_strdup_printf ("with a pole of %s", has) : g_strdup ("without a pole");
      g_autofree char *pole = fp_length_format_unit (rounded_up (farthest->away - self->spec.arm, units), units);

      g_ptr_array_add (out, g_strdup_printf ("%s out of reach %s: take one of %s at least; the flame of candle %u is %s "
                                             "above where the server stands. Do not climb on anything.",
                                             candles, with, pole, farthest->number, height));
    }
}

/* All that are close to the same thing together; TRUE where @first is the first of them. */
static gboolean
add_close_to (const FpOrder *self, const FpOrderLight *first, FpUnits units, GPtrArray *out)
{
  double nearest = first->beside_by;

  for (guint i = 0; i < self->lights->len; i++)
    {
      const FpOrderLight *light = &g_array_index (self->lights, FpOrderLight, i);

      if (!is_close_to (light, first->beside))
        continue;
      if (light < first)
        return FALSE;
      nearest = MIN (nearest, light->beside_by);
    }
  {
    g_autofree char *candles = candles_are (self, is_close_to, first->beside);
    g_autofree char *far = fp_length_format_unit (nearest, units);
    g_autofree char *by = nearest > 0 ? g_strdup_printf ("as near as %s to", far) : g_strdup ("against or under");

    g_ptr_array_add (out, g_strdup_printf ("%s %s %s.", candles, by,
                                           fp_item_name (fp_scene_placed (self->scene, NULL)[first->beside].item)));
  }
  return TRUE;
}

/* What things are made of is not known here: the advice is that of the rule of flames (rules/books/flame.xml). */
static void
add_flames (const FpOrder *self, FpUnits units, GPtrArray *out)
{
  guint things = 0;

  for (guint i = 0; i < self->lights->len; i++)
    {
      const FpOrderLight *light = &g_array_index (self->lights, FpOrderLight, i);

      if (light->beside >= 0 && light->beside_by < FP_FLAME_BESIDE)
        things += add_close_to (self, light, units, out) ? 1 : 0;
    }
  if (things > 0)
    {
      g_autofree char *least = fp_length_format_unit (FP_FLAME_BESIDE, units);
      char **last = (char **) &out->pdata[out->len - 1];
      char *text = g_strdup_printf ("%s Stone and metal need no such distance; where it is of wood or hung with cloth, keep %s, or "
                                    "ask the fire authority before you light.", *last, least);

      g_free (*last);
      *last = text;
    }
}

GPtrArray *
fp_order_cautions (const FpOrder *self, FpUnits units)
{
  GPtrArray *out = g_ptr_array_new_with_free_func (g_free);

  add_reach (self, units, out);
  add_flames (self, units, out);
  return out;
}
