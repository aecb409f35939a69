/* SPDX-License-Identifier: GPL-3.0-or-later */
/* standing-room.c - where people stand: one place for each square of a grid that lies inside the outline
 *
 * z = 0 is the floor beneath.  The grid starts at the liturgical north-east
 * corner of the outline's box, so that row 1 is nearest the altar and places
 * are numbered from the Gospel side.
 */
#include "kind-private.h"

#include <math.h>

enum { SPACING };

/* More places than any church has standing; keeps a slip of the keyboard from making a million. */
#define PLACES_MAX 4000

static const FpParam params[] = {
  [SPACING] = FP_LENGTH ("spacing", "Spacing of places", 400, 600, 3000,
                         FP_JUDGEMENT "; IBC 2015, 1004, counts 5 sq ft (0.46 m2) for one who stands"),
  FP_NO_MORE_PARAMS
};

static void
extent (const FpForm *form, FpExtent *out)
{
  *out = fp_extent_bare (fp_outline_box (form->corner, form->n_corners), 0);
}

/* It has no body: people make it up. */
static void
solids (const FpForm *form, FpSolids *out)
{
  (void) form;
  (void) out;
}

static void
strokes (const FpForm *form, GArray *out)
{
  fp_strokes_add_outline (out, form->corner, form->n_corners, TRUE);
}

/* The four corners of the square, drawn in by a hair so that one on the outline itself counts as inside. */
static gboolean
square_inside (const FpForm *form, double x0, double y0, double side)
{
  const double hair = side * 1e-6;
  const FpBox box = { x0 + hair, y0 + hair, x0 + side - hair, y0 + side - hair };
  FpPoint corner[4];

  fp_box_corners (&box, corner);
  for (guint i = 0; i < 4; i++)
    if (!fp_outline_contains (form->corner, form->n_corners, corner[i]))
      return FALSE;
  return TRUE;
}

static void
seats (const FpForm *form, GArray *out)
{
  const double side = form->param[SPACING];
  const FpBox box = fp_outline_box (form->corner, form->n_corners);
  guint row = 0, made = 0;

  for (double y = box.y1 - side; y >= box.y0 - side * 1e-6 && made < PLACES_MAX; y -= side)
    {
      guint number = 0;
      row++;
      for (double x = box.x0; x + side <= box.x1 + side * 1e-6 && made < PLACES_MAX; x += side)
        {
          if (!square_inside (form, x, y, side))
            continue;
          const FpSeat seat = {
            .at = { x + side / 2, y + side / 2 },
            .postures = 1 << FP_POSTURE_STANDING,
            .row = row,
            .number = ++number,
          };
          g_array_append_val (out, seat);
          made++;
        }
    }
}

static guint
n_places (const FpForm *form)
{
  g_autoptr (GArray) places = g_array_new (FALSE, FALSE, sizeof (FpSeat));

  seats (form, places);
  return places->len;
}

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add (out, "standing places", FP_MATERIAL_NONE, FP_AMOUNT_NUMBER, n_places (form));
  fp_quantities_add (out, "standing room", FP_MATERIAL_NONE, FP_AMOUNT_AREA,
                     fabs (fp_outline_area (form->corner, form->n_corners)));
}

static char *
amiss (const FpForm *form)
{
  const guint n = n_places (form);

  if (n == 0)
    return g_strdup ("The outline has no room for one standing place.");
  if (n >= PLACES_MAX)
    return g_strdup_printf ("The outline holds more than %d standing places; only so many are counted.", PLACES_MAX);
  return NULL;
}

const FpKind fp_kind_standing_room = {
  .id = "standing-room",
  .label = "Standing room",
  .tells = "A part of the floor where people stand when the seats are taken.",
  .role = FP_ROLE_STANDING_ROOM,
  .flags = FP_KIND_SURVEY | FP_KIND_OUTLINE,
  .spot = FP_SPOT_NAVE,
  .params = params,
  .extent = extent,
  .solids = solids,
  .strokes = strokes,
  .seats = seats,
  .quantities = quantities,
  .amiss = amiss,
};
