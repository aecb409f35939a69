/* SPDX-License-Identifier: GPL-3.0-or-later */
/* hand-bell.c - the server's bell: one, or several on a frame under one handle */
#include "kind-private.h"

#include <math.h>

enum { BELLS, WIDTH, HEIGHT };

static const FpParam params[] = {
  [BELLS] = FP_COUNT ("bells", "Bells under the handle", 1, 3, 6, FP_CUSTOM),
  [WIDTH] = FP_LENGTH ("width", "Width in all", 40, 160, 400, FP_JUDGEMENT),
  [HEIGHT] = FP_LENGTH ("height", "Height", 50, 160, 400, FP_JUDGEMENT),
  FP_NO_MORE_PARAMS
};

/* "On the step": the Spanish manual, n. 291, has it there or on the credence, on the Epistle side. */
static const FpRole stands_on[] = { FP_ROLE_FOOTPACE, FP_ROLE_CREDENCE, FP_ROLE_FLOOR, FP_ROLE_NONE };

static void
extent (const FpForm *form, FpExtent *out)
{
  *out = fp_extent_bare (fp_centred_box (form->param[WIDTH], form->param[WIDTH]), form->param[HEIGHT]);
}

static void
add_bell (FpSolids *out, double x, double y, double radius, double mouth, double crown)
{
  fp_solids_add_round (out, FP_PART_BODY, x, y, mouth, mouth + (crown - mouth) * 0.35, radius, radius * 0.68);
  fp_solids_add_round (out, FP_PART_BODY, x, y, mouth + (crown - mouth) * 0.35, crown, radius * 0.68, radius * 0.4);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;
  const guint n = fp_form_count (form, BELLS);
  const double half = p[WIDTH] / 2, crown = p[HEIGHT] * 0.5, frame = crown + p[HEIGHT] * 0.06;
  const double grip = MIN (14, half * 0.3);
  /* As many circles in a ring inside a circle. */
  const double s = sin (G_PI / MAX (n, 2)), radius = n == 1 ? half : half * s / (1 + s) * 0.98, ring = half - radius;

  for (guint i = 0; i < n; i++)
    {
      const double a = G_PI / 2 + i * 2 * G_PI / n;
      add_bell (out, n == 1 ? 0 : ring * cos (a), n == 1 ? 0 : ring * sin (a), radius, 0, crown);
    }
  fp_solids_add_round (out, FP_PART_BODY, 0, 0, crown, frame, n == 1 ? radius * 0.4 : MAX (ring, grip), n == 1 ? radius * 0.4 : MAX (ring, grip));
  fp_solids_add_round (out, FP_PART_BODY, 0, 0, frame, p[HEIGHT], grip * 0.7, grip);
}

static void
dims (const FpForm *form, GArray *out)
{
  fp_dims_add_z (out, HEIGHT, (FpVec3) { form->param[WIDTH] / 2, 0, 0 }, form->param[HEIGHT], FP_IN_ELEVATION, 8);
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add_metal (out, &fp_kind_hand_bell, form, "hand bell", FP_AMOUNT_NUMBER, 1);
  (void) form;
}

const FpKind fp_kind_hand_bell = {
  .id = "hand-bell",
  .label = "Hand bell",
  .tells = "The server's bell, on the step on the Epistle side or on the credence.",
  .role = FP_ROLE_HAND_BELL,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_ON_SUPPORT,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .quantities = quantities,
};
