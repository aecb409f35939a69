/* SPDX-License-Identifier: GPL-3.0-or-later */
/* tabernacle.c - where the Blessed Sacrament is kept: foot, body with a door, cornice, top */
#include "kind-private.h"

#include <math.h>

enum { WIDTH, DEPTH, HEIGHT, WALL, TOP };
enum { FLAT, GABLED, DOMED };

static const FpChoice tops[] = {
  { "flat", "Flat" }, { "gabled", "Gabled" }, { "domed", "Domed" }, { NULL, NULL },
};

static const FpParam params[] = {
  [WIDTH] = FP_LENGTH ("width", "Width", 200, 450, 1500, FP_JUDGEMENT),
  [DEPTH] = FP_LENGTH ("depth", "Depth", 200, 450, 1200, FP_JUDGEMENT),
  [HEIGHT] = FP_LENGTH ("height", "Height", 250, 600, 2500,
                        FP_JUDGEMENT "; a ciborium of 7 in has to stand in it: Catholic Encyclopedia I (1907), "
                        "Altar Vessels, p. 358"),
  [WALL] = FP_LENGTH ("wall", "Thickness of its walls, with the lining", 5, 25, 150, FP_JUDGEMENT),
  [TOP] = FP_CHOICE ("top", "Top", tops, DOMED,
                     "E. Ryan, The Liturgical Construction of the Altar, Liturgical Arts I (1931)"),
  FP_NO_MORE_PARAMS
};

static const FpRole stands_on[] = { FP_ROLE_ALTAR, FP_ROLE_GRADINE, FP_ROLE_NONE };

#define DOOR_RELIEF  15.0 /* the door stands proud of the body by this; design judgement */
#define DOME_RINGS   4

typedef struct
{
  FpBox  foot, body, inside;
  double foot_top, body_top, cornice_top;
  double wall, door_width, door_foot, door_head;
} Parts;

static Parts
parts (const FpForm *form)
{
  const double *p = form->param;
  const double small = MIN (MIN (p[WIDTH], p[DEPTH]), p[HEIGHT]);
  const double crown = fp_form_is (form, TOP, FLAT) ? 0 : fp_form_is (form, TOP, GABLED) ? 0.2 : 0.36;
  Parts of = { .foot = fp_centred_box (p[WIDTH], p[DEPTH]) };

  of.body = of.foot;
  of.body.x0 += small * 0.05;
  of.body.x1 -= small * 0.05;
  of.body.y0 += DOOR_RELIEF;
  of.body.y1 -= small * 0.05;
  of.foot_top = p[HEIGHT] * 0.07;
  of.cornice_top = p[HEIGHT] * (1 - crown);
  of.body_top = of.cornice_top - p[HEIGHT] * 0.06;
  of.door_width = p[WIDTH] * 0.62;
  of.door_foot = of.foot_top + p[HEIGHT] * 0.05;
  of.door_head = of.body_top - p[HEIGHT] * 0.05;
  of.wall = MIN (p[WALL], MIN ((of.body.y1 - of.body.y0) * 0.4, (of.body.x1 - of.body.x0 - of.door_width) / 2));
  of.inside = (FpBox) { of.body.x0 + of.wall, of.body.y0 + of.wall, of.body.x1 - of.wall, of.body.y1 - of.wall };
  return of;
}

static void
extent (const FpForm *form, FpExtent *out)
{
  /* Nothing may stand on it: it is no pedestal for the crucifix (Ryan). */
  *out = fp_extent_bare (fp_centred_box (form->param[WIDTH], form->param[DEPTH]), form->param[HEIGHT]);
}

/* Half a ball, in rings. */
static void
add_dome (FpSolids *out, double radius, double z0, double height)
{
  for (guint i = 0; i < DOME_RINGS; i++)
    {
      const double a = i * G_PI / 2 / DOME_RINGS, b = (i + 1) * G_PI / 2 / DOME_RINGS;
      fp_solids_add_round (out, FP_PART_BODY, 0, 0, z0 + height * sin (a), z0 + height * sin (b), radius * cos (a),
                           radius * cos (b));
    }
}

/* Four walls about the room within, the front one about the doorway. */
static void
add_walls (const Parts *of, FpSolids *out)
{
  const FpBox *b = &of->body, *in = &of->inside;
  const double x = of->door_width / 2;

  fp_solids_add_box (out, FP_PART_BODY, b->x0, in->y0, of->foot_top, in->x0, b->y1, of->body_top);
  fp_solids_add_box (out, FP_PART_BODY, in->x1, in->y0, of->foot_top, b->x1, b->y1, of->body_top);
  fp_solids_add_box (out, FP_PART_BODY, in->x0, in->y1, of->foot_top, in->x1, b->y1, of->body_top);
  fp_solids_add_box (out, FP_PART_BODY, b->x0, b->y0, of->foot_top, -x, in->y0, of->body_top);
  fp_solids_add_box (out, FP_PART_BODY, x, b->y0, of->foot_top, b->x1, in->y0, of->body_top);
  fp_solids_add_box (out, FP_PART_BODY, -x, b->y0, of->foot_top, x, in->y0, of->door_foot);
  fp_solids_add_box (out, FP_PART_BODY, -x, b->y0, of->door_head, x, in->y0, of->body_top);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;
  const Parts of = parts (form);
  const FpBox *foot = &of.foot;

  fp_solids_add_box (out, FP_PART_BODY, foot->x0, foot->y0, 0, foot->x1, foot->y1, of.foot_top);
  add_walls (&of, out);
  fp_solids_add_box (out, FP_PART_DOOR, -of.door_width / 2, foot->y0, of.door_foot, of.door_width / 2, of.body.y0,
                     of.door_head);
  fp_solids_add_box (out, FP_PART_BODY, foot->x0, foot->y0, of.body_top, foot->x1, foot->y1, of.cornice_top);
  if (fp_form_is (form, TOP, GABLED))
    fp_solids_add_gable (out, FP_PART_BODY, &of.body, of.cornice_top, p[HEIGHT] - of.cornice_top);
  else if (fp_form_is (form, TOP, DOMED))
    add_dome (out, MIN (p[WIDTH], p[DEPTH]) * 0.46, of.cornice_top, p[HEIGHT] - of.cornice_top);
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const double x = p[WIDTH] / 2, y = p[DEPTH] / 2;

  fp_dims_add_x (out, WIDTH, (FpVec3) { -x, -y, p[HEIGHT] }, p[WIDTH], FP_IN_ELEVATION, 4);
  fp_dims_add_y (out, DEPTH, (FpVec3) { x, -y, p[HEIGHT] }, p[DEPTH], FP_IN_SECTION, 4);
  fp_dims_add_z (out, HEIGHT, (FpVec3) { x, -y, 0 }, p[HEIGHT], FP_IN_SECTION, 2);
}

static void
targets (const FpForm *form, GArray *out)
{
  const Parts of = parts (form);

  fp_targets_add_upright (out, FP_FOCUS_TABERNACLE, (FpVec3) { 0, of.foot.y0, of.door_foot }, of.door_width,
                          of.door_head - of.door_foot);
}

static void
quantities (const FpForm *form, GArray *out)
{
  (void) form;
  fp_quantities_add_metal (out, &fp_kind_tabernacle, form, "tabernacle", FP_AMOUNT_NUMBER, 1);
}

static char *
amiss (const FpForm *form)
{
  const Parts of = parts (form);

  return form->param[WALL] > of.wall ? g_strdup ("The walls of the tabernacle leave too little room within.") : NULL;
}

const FpKind fp_kind_tabernacle = {
  .id = "tabernacle",
  .label = "Tabernacle",
  .tells = "The locked and solid chest in which the Blessed Sacrament is kept.",
  .role = FP_ROLE_TABERNACLE,
  .anchor = FP_ANCHOR_BACK,
  .spot = FP_SPOT_ON_SUPPORT,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .dims = dims,
  .targets = targets,
  .quantities = quantities,
  .amiss = amiss,
};
