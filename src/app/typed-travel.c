/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "typed-travel.h"

#include <math.h>

/* What a hand strays sideways on its way, as a share of it: design judgement. */
#define STRAYS 0.2

gboolean
fp_typed_travel_begins (gunichar letter)
{
  static const gunichar others[] = { '+', '-', 0x2212, '.', ',', '\'', '(' }; /* U+2212: the minus sign */

  for (guint i = 0; i < G_N_ELEMENTS (others); i++)
    if (letter == others[i])
      return TRUE;
  return letter >= '0' && letter <= '9';
}

static void
drop_what_strays (FpTypedTravel *self, guint caught)
{
  for (guint i = 0; self->ways == 3 && i < 2; i++)
    if ((caught & (1u << i)) == 0 && self->far[i] < STRAYS * self->far[1 - i])
      self->far[i] = 0.0;
}

void
fp_typed_travel_init (FpTypedTravel *self, FpViewId view, FpVec3 by, guint caught, FpUnits units)
{
  const double hand[2] = { by.x, by.y };

  *self = (FpTypedTravel) { .units = units };
  self->ways = view == FP_VIEW_PLAN ? 3 : view == FP_VIEW_ELEVATION ? 1 : 2;
  for (guint i = 0; i < 2; i++)
    {
      self->sign[i] = hand[i] < 0.0 ? -1.0 : 1.0;
      self->far[i] = fabs (hand[i]);
    }
  self->way = self->ways != 3 ? self->ways : self->far[0] >= self->far[1] ? 1 : 2;
  drop_what_strays (self, caught);
}

FpVec3
fp_typed_travel_by (const FpTypedTravel *self)
{
  return (FpVec3) { self->sign[0] * self->far[0], self->sign[1] * self->far[1], 0.0 };
}

const char *
fp_typed_travel_words (const FpTypedTravel *self)
{
  if (self->way == 1)
    return self->sign[0] > 0.0 ? "To the Epistle side" : "To the Gospel side";
  return self->sign[1] > 0.0 ? "East" : "West";
}

char *
fp_typed_travel_title (const FpTypedTravel *self)
{
  static const char *const words[2][2] = { { "to the Gospel side", "to the Epistle side" }, { "west", "east" } };
  const guint other = 2 - self->way; /* its place in far[] */
  g_autofree char *far = NULL;
  double by = self->sign[other] * self->far[other];

  if (self->ways != 3 || by == 0.0)
    return g_strdup (fp_typed_travel_words (self));
  far = fp_length_format_unit (fabs (by), self->units);
  return g_strdup_printf ("%s, and %s %s", fp_typed_travel_words (self), far, words[other][by > 0.0 ? 1 : 0]);
}

char *
fp_typed_travel_text (const FpTypedTravel *self)
{
  return fp_length_format (self->far[self->way - 1], self->units);
}

gboolean
fp_typed_travel_read (FpTypedTravel *self, const char *text, GError **error)
{
  return fp_length_parse (text, self->units, &self->far[self->way - 1], error);
}

gboolean
fp_typed_travel_other (FpTypedTravel *self)
{
  if (self->ways != 3)
    return FALSE;
  self->way = 3 - self->way;
  return TRUE;
}
