/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tape.h"

#include <math.h>

void
fp_tape_take (FpTape *self, const FpPointed *at)
{
  *self = (FpTape) { .state = FP_TAPE_READY, .a = *at, .b = *at };
}

void
fp_tape_put_away (FpTape *self)
{
  self->state = FP_TAPE_AWAY;
  self->dragging = FALSE;
}

gboolean
fp_tape_escape (FpTape *self)
{
  if (self->state == FP_TAPE_AWAY)
    return FALSE;
  if (self->state == FP_TAPE_STRETCHED)
    {
      self->state = FP_TAPE_READY;
      self->dragging = FALSE;
    }
  else
    fp_tape_put_away (self);
  return TRUE;
}

int
fp_tape_view (const FpTape *self)
{
  return self->state == FP_TAPE_STRETCHED ? (int) self->a.view : -1;
}

static void
begin (FpTape *self, const FpPointed *at)
{
  self->a = self->b = *at;
  self->state = FP_TAPE_STRETCHED;
}

void
fp_tape_press (FpTape *self, const FpPointed *at)
{
  if (self->state == FP_TAPE_AWAY)
    return;
  if (self->state == FP_TAPE_STRETCHED)
    {
      self->b = *at;
      self->dragging = FALSE; /* the second click: lays it wherever the button comes up */
      return;
    }
  begin (self, at);
  self->dragging = TRUE;
}

void
fp_tape_motion (FpTape *self, const FpPointed *at)
{
  if (self->state == FP_TAPE_STRETCHED || self->state == FP_TAPE_READY)
    self->b = *at;
}

void
fp_tape_release (FpTape *self, gboolean clicked)
{
  if (self->state != FP_TAPE_STRETCHED)
    return;
  if (!(self->dragging && clicked))
    self->state = FP_TAPE_LAID;
  self->dragging = FALSE;
}

void
fp_tape_shift (FpTape *self, FpPoint by)
{
  if (self->state == FP_TAPE_AWAY)
    return;
  self->b = fp_pointed_free (self->b.view, (FpPoint) { self->b.at.x + by.x, self->b.at.y + by.y });
}

void
fp_tape_enter (FpTape *self)
{
  if (self->state == FP_TAPE_STRETCHED)
    self->state = FP_TAPE_LAID;
  else if (self->state != FP_TAPE_AWAY)
    {
      const FpPointed at = self->b;

      begin (self, &at);
    }
}

/* --- what it says ------------------------------------------------------------- */

gboolean
fp_tape_measure (const FpTape *self, FpTapeMeasure *out)
{
  const FpVec3 *a = &self->a.space, *b = &self->b.space;

  if (self->state != FP_TAPE_STRETCHED && self->state != FP_TAPE_LAID)
    return FALSE;
  *out = (FpTapeMeasure) { .known = self->a.known & self->b.known };
  out->part.x = (out->known & FP_KNOWN_X) != 0 ? fabs (b->x - a->x) : 0.0;
  out->part.y = (out->known & FP_KNOWN_Y) != 0 ? fabs (b->y - a->y) : 0.0;
  out->part.z = (out->known & FP_KNOWN_Z) != 0 ? fabs (b->z - a->z) : 0.0;
  out->length = hypot (self->b.at.x - self->a.at.x, self->b.at.y - self->a.at.y);
  if (out->known == 7)
    out->true_length = hypot (hypot (out->part.x, out->part.y), out->part.z);
  return TRUE;
}

static void
add_part (GString *text, const FpTapeMeasure *m, guint which, const char *name, double mm, FpUnits units)
{
  g_autofree char *length = fp_length_format_unit (mm, units);

  if ((m->known & which) != 0)
    g_string_append_printf (text, "%s%s %s", text->len > 0 ? " · " : "", name, length);
}

char *
fp_tape_words (const FpTape *self, FpUnits units)
{
  g_autofree char *length = NULL, *true_length = NULL;
  g_autoptr (GString) parts = g_string_new (NULL);
  FpTapeMeasure m;

  if (!fp_tape_measure (self, &m))
    return NULL;
  length = fp_length_format_unit (m.length, units);
  add_part (parts, &m, FP_KNOWN_X, "across", m.part.x, units);
  add_part (parts, &m, FP_KNOWN_Y, "along", m.part.y, units);
  add_part (parts, &m, FP_KNOWN_Z, "height", m.part.z, units);
  if (m.true_length - m.length < 0.05)
    return g_strdup_printf ("%s\n%s", length, parts->str);
  true_length = fp_length_format_unit (m.true_length, units);
  return g_strdup_printf ("%s\n%s\ntrue length %s", length, parts->str, true_length);
}
