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
      self->holds = 0;
    }
  else
    fp_tape_put_away (self);
  return TRUE;
}

/* --- both ends, in one view or in two --------------------------------------------- */

static FpPointed
given (const FpTape *self, const FpPointed *at)
{
  FpPointed end = *at;

  if (self->holds != 0)
    fp_pointed_hold (&end, self->held, self->holds);
  return end;
}

static void
begin (FpTape *self, const FpPointed *at)
{
  self->a = self->b = *at;
  self->state = FP_TAPE_STRETCHED;
  self->holds = 0;
}

void
fp_tape_carry (FpTape *self, gboolean elevation_turned)
{
  const FpViewId view = self->b.view == FP_VIEW_ELEVATION ? FP_VIEW_SECTION
                        : self->b.view == FP_VIEW_SECTION ? FP_VIEW_PLAN : FP_VIEW_ELEVATION;
  const gboolean turned = view == FP_VIEW_ELEVATION && elevation_turned;
  FpPointed there;
  FpPoint at;

  if (self->state != FP_TAPE_READY && self->state != FP_TAPE_STRETCHED)
    return;
  self->held = self->b.space;
  self->holds = self->b.known;
  fp_pointed_in (&self->b, view, turned, &at);
  there = fp_pointed_free (view, turned, at);
  self->b = given (self, &there);
  /* What nobody has said yet is not known. */
  self->b.known = self->holds;
}

static void
turn (FpPointed *end, gboolean turned)
{
  if (end->view != FP_VIEW_ELEVATION || end->turned == turned)
    return;
  end->turned = turned;
  end->at.x = -end->at.x;
}

void
fp_tape_turn (FpTape *self, gboolean elevation_turned)
{
  turn (&self->a, elevation_turned);
  turn (&self->b, elevation_turned);
}

/* --- hand and keys ------------------------------------------------------------------ */

void
fp_tape_press (FpTape *self, const FpPointed *at)
{
  /* What is held is held of the end in hand, and a laid tape has none. */
  const FpPointed end = self->state == FP_TAPE_LAID ? *at : given (self, at);

  if (self->state == FP_TAPE_AWAY)
    return;
  if (self->state == FP_TAPE_STRETCHED)
    {
      self->b = end;
      self->dragging = FALSE; /* the second click: lays it wherever the button comes up */
      return;
    }
  begin (self, &end);
  self->dragging = TRUE;
}

void
fp_tape_motion (FpTape *self, const FpPointed *at)
{
  if (self->state == FP_TAPE_STRETCHED || self->state == FP_TAPE_READY)
    self->b = given (self, at);
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

/* The laid end, moved, keeps what is known of it beside what its view shows. */
void
fp_tape_shift (FpTape *self, FpPoint by)
{
  FpPointed end;

  if (self->state == FP_TAPE_AWAY)
    return;
  end = fp_pointed_free (self->b.view, self->b.turned, (FpPoint) { self->b.at.x + by.x, self->b.at.y + by.y });
  self->b = given (self, &end);
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

static double
length_of (FpVec3 part)
{
  return hypot (hypot (part.x, part.y), part.z);
}

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
  out->length = self->a.view == self->b.view ? hypot (self->b.at.x - self->a.at.x, self->b.at.y - self->a.at.y)
                                             : length_of (out->part);
  if (out->known == 7)
    out->true_length = length_of (out->part);
  return TRUE;
}

static gboolean
is_single (guint known)
{
  return (known & (known - 1)) == 0;
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
  add_part (parts, &m, FP_KNOWN_X, "across", m.part.x, units);
  add_part (parts, &m, FP_KNOWN_Y, "along", m.part.y, units);
  add_part (parts, &m, FP_KNOWN_Z, "height", m.part.z, units);
  /* Pointed at in two views, which have but one coordinate in common. */
  if (is_single (m.known))
    return g_strdup (parts->str);
  length = fp_length_format_unit (m.length, units);
  if (m.true_length - m.length < 0.05)
    return g_strdup_printf ("%s\n%s", length, parts->str);
  true_length = fp_length_format_unit (m.true_length, units);
  return g_strdup_printf ("%s\n%s\ntrue length %s", length, parts->str, true_length);
}
