/* SPDX-License-Identifier: GPL-3.0-or-later */
/* kind-fixture.h - a form of any kind, for tests */
#pragma once

#include "footpace/kind.h"

#include <string.h>

/* An L, counter-clockwise. */
static const FpPoint fixture_outline[] = { { -4000, -3000 }, { 4000, -3000 }, { 4000, 1000 }, { 1000, 1000 },
                                           { 1000, 5000 }, { -4000, 5000 } };
/* Clockwise, as walls are walked. */
static const FpPoint fixture_run[] = { { -5000, -9000 }, { -5000, 0 }, { -2500, 2500 }, { 2500, 2500 }, { 5000, 0 },
                                       { 5000, -9000 } };

typedef struct
{
  FpForm form;
  double param[FP_PARAM_MAX];
} Fixture;

static inline void
fixture_init (Fixture *self, const FpKind *kind)
{
  memset (self, 0, sizeof *self);
  fp_kind_defaults (kind, self->param);
  self->form.param = self->param;
  self->form.core = (FpBox) { -1200, -450, 1200, 450 };
  if (kind->flags & FP_KIND_OUTLINE)
    {
      self->form.corner = fixture_outline;
      self->form.n_corners = G_N_ELEMENTS (fixture_outline);
    }
  else if (kind->flags & FP_KIND_RUN)
    {
      self->form.corner = fixture_run;
      self->form.n_corners = G_N_ELEMENTS (fixture_run);
    }
}

static inline const FpKind *
fixture_open (Fixture *self, const char *id)
{
  const FpKind *kind = fp_kind_find (id);

  g_assert_nonnull (kind);
  fixture_init (self, kind);
  return kind;
}

static inline void
fixture_set (Fixture *self, const FpKind *kind, const char *param, double value)
{
  const int i = fp_kind_param_index (kind, param);

  g_assert_cmpint (i, >=, 0);
  g_assert_true (fp_param_check (&kind->params[i], value, NULL));
  self->param[i] = value;
}

static inline FpExtent
fixture_extent (const Fixture *self, const FpKind *kind)
{
  FpExtent extent = { .plan = FP_BOX_EMPTY, .bearing = FP_BOX_EMPTY };

  kind->extent (&self->form, &extent);
  return extent;
}

static inline GArray *
fixture_take (const Fixture *self, void (*function) (const FpForm *, GArray *), gsize size)
{
  GArray *array = g_array_new (FALSE, FALSE, (guint) size);

  if (function != NULL)
    function (&self->form, array);
  return array;
}

static inline FpSolids *
fixture_solids (const Fixture *self, const FpKind *kind)
{
  FpSolids *solids = fp_solids_new ();

  kind->solids (&self->form, solids);
  return solids;
}

/* Of one part, or of all (-1). */
static inline double
fixture_volume (const Fixture *self, const FpKind *kind, int part)
{
  g_autoptr (FpSolids) solids = fixture_solids (self, kind);
  const FpSolid *s;
  double volume = 0;
  guint n;

  s = fp_solids_peek (solids, &n);
  for (guint i = 0; i < n; i++)
    if (part < 0 || (int) s[i].part == part)
      volume += fp_solid_volume (&s[i]);
  return volume;
}

/* Of the first quantity so called; 0 when there is none. */
static inline double
fixture_quantity (const Fixture *self, const FpKind *kind, const char *what)
{
  g_autoptr (GArray) found = fixture_take (self, kind->quantities, sizeof (FpQuantity));

  for (guint i = 0; i < found->len; i++)
    if (strcmp (g_array_index (found, FpQuantity, i).what, what) == 0)
      return g_array_index (found, FpQuantity, i).amount;
  return 0;
}
