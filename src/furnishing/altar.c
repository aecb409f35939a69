/* SPDX-License-Identifier: GPL-3.0-or-later */
/* altar.c - the altar: a mensa on a block, on legs, or on a chest shaped like a tomb
 *
 * Origin: middle of the mensa, z = 0 what the celebrant stands on.
 */
#include "kind-private.h"

enum { LENGTH, DEPTH, HEIGHT, THICKNESS, OVERHANG, SUPPORT, SETTING };
enum { BLOCK, LEGS, CHEST };
enum { FREESTANDING, AGAINST_WALL };

static const FpChoice supports[] = {
  { "block", "Block" }, { "legs", "Legs" }, { "chest", "Chest, shaped like a tomb" }, { NULL, NULL },
};
static const FpChoice settings[] = {
  { "freestanding", "Freestanding" }, { "against-the-wall", "Against the wall" }, { NULL, NULL },
};

static const FpParam params[] = {
  [LENGTH] = FP_LENGTH ("length", "Length of the mensa", 900, 2400, 6000,
                        FP_JUDGEMENT ", between 1800 (Spanish manual, n. 279) and 9 ft (Hübsch 1838, p. 20)"),
  [DEPTH] = FP_LENGTH ("depth", "Depth of the mensa", 400, 750, 1600,
                       FP_JUDGEMENT ", between 600-650 (Spanish manual, n. 279) and 3 ft (Dearmer, later edition, "
                       "p. 78 n.)"),
  [HEIGHT] = FP_LENGTH ("height", "Height of the mensa", 600, 990, 1300,
                        "P. Dearmer, The Parson's Handbook (2nd ed. 1899), p. 57: 3 ft 3 in"),
  [THICKNESS] = FP_LENGTH ("thickness", "Thickness of the mensa", 20, 120, 400, FP_JUDGEMENT),
  [OVERHANG] = FP_LENGTH ("overhang", "Overhang of the mensa", 0, 150, 600,
                          "Christliche Kunstblätter 104 (Linz 1966), no. 3, p. 48: at least 15 cm"),
  [SUPPORT] = FP_CHOICE ("support", "Mensa rests on", supports, BLOCK, FP_JUDGEMENT),
  [SETTING] = FP_CHOICE ("setting", "Setting", settings, FREESTANDING, "GIRM (3rd ed.) 299, read in quotation"),
  FP_NO_MORE_PARAMS
};

static const char mensa[] = "mensa", body[] = "body", plinth[] = "plinth", cornice[] = "cornice", pilasters[] = "pilasters";
static const char leg_bases[] = "bases of the legs", leg_shafts[] = "shafts of the legs", leg_caps[] = "caps of the legs";

static const FpRole stands_on[] = { FP_ROLE_FOOTPACE, FP_ROLE_NONE };

static double
mensa_foot (const FpForm *form)
{
  return form->param[HEIGHT] - form->param[THICKNESS];
}

/* Never less than a fifth of the mensa, however far it is told to overhang (see amiss). */
static FpBox
support_box (const FpForm *form)
{
  const double *p = form->param;
  FpBox box = fp_centred_box (p[LENGTH], p[DEPTH]);
  const double along = MIN (p[OVERHANG], p[LENGTH] * 0.4), across = MIN (p[OVERHANG], p[DEPTH] * 0.4);

  box.x0 += along;
  box.x1 -= along;
  box.y0 += across;
  if (fp_form_is (form, SETTING, FREESTANDING))
    box.y1 -= across;
  return box;
}

static void
extent (const FpForm *form, FpExtent *out)
{
  *out = fp_extent_bearing (fp_centred_box (form->param[LENGTH], form->param[DEPTH]), form->param[HEIGHT]);
}

/* --- supports ------------------------------------------------------------- */

static void
add_leg (FpSolids *out, double x, double y, double side, double height)
{
  const double block = MIN (side * 0.4, height * 0.15), half = side / 2;

  fp_solids_call (out, leg_bases);
  fp_solids_add_box (out, FP_PART_SUPPORT, x - half, y - half, 0, x + half, y + half, block);
  fp_solids_call (out, leg_shafts);
  fp_solids_add_round (out, FP_PART_SUPPORT, x, y, block, height - block, side * 0.4, side * 0.36);
  fp_solids_call (out, leg_caps);
  fp_solids_add_box (out, FP_PART_SUPPORT, x - half, y - half, height - block, x + half, y + half, height);
}

/* A colonnette every metre and a half or so along the front, and as many behind. */
static void
add_legs (FpSolids *out, const FpBox *box, double height)
{
  const double length = box->x1 - box->x0, depth = box->y1 - box->y0;
  const double side = MIN (MIN (180, depth * 0.4), length * 0.2);
  const guint n = 2 + (guint) (length / 1500);
  const double first = box->x0 + side / 2, step = (length - side) / (n - 1);

  for (guint i = 0; i < n; i++)
    {
      add_leg (out, first + i * step, box->y0 + side / 2, side, height);
      add_leg (out, first + i * step, box->y1 - side / 2, side, height);
    }
}

/* Plinth, body between pilasters, cornice: what a chest is made of, in its own coordinates. */
typedef struct
{
  FpBox  body;               /* without the pilasters                        */
  double plinth, cornice;    /* height of either; the body is between them   */
  double relief;             /* of the pilasters                             */
} Chest;

static Chest
chest_of (const FpBox *box, double height)
{
  const double relief = MIN (30, (box->y1 - box->y0) * 0.1), set_back = relief * 0.8;

  return (Chest) {
    { box->x0 + set_back, box->y0 + set_back + relief, box->x1 - set_back, box->y1 }, MIN (110, height * 0.14),
    MIN (60, height * 0.08), relief,
  };
}

static void
add_chest (FpSolids *out, const FpBox *box, double height)
{
  const Chest c = chest_of (box, height);
  const double length = c.body.x1 - c.body.x0, width = length * 0.07;
  const double z0 = c.plinth, z1 = height - c.cornice;

  fp_solids_call (out, plinth);
  fp_solids_add_box (out, FP_PART_SUPPORT, box->x0, box->y0, 0, box->x1, box->y1, c.plinth);
  fp_solids_call (out, body);
  fp_solids_add_box (out, FP_PART_SUPPORT, c.body.x0, c.body.y0, z0, c.body.x1, c.body.y1, z1);
  fp_solids_call (out, pilasters);
  for (guint i = 0; i < 4; i++)
    {
      const double x = c.body.x0 + i * (length - width) / 3;
      fp_solids_add_box (out, FP_PART_SUPPORT, x, c.body.y0 - c.relief, z0, x + width, c.body.y0, z1);
    }
  fp_solids_call (out, cornice);
  fp_solids_add_box (out, FP_PART_SUPPORT, box->x0, box->y0, z1, box->x1, box->y1, height);
}

static void
add_block (FpSolids *out, const FpBox *box, double height)
{
  fp_solids_call (out, body);
  fp_solids_add_box (out, FP_PART_SUPPORT, box->x0, box->y0, 0, box->x1, box->y1, height);
}

static void
solids (const FpForm *form, FpSolids *out)
{
  const double *p = form->param;
  const FpBox box = support_box (form);
  const double foot = mensa_foot (form);

  if (fp_form_is (form, SUPPORT, LEGS))
    add_legs (out, &box, foot);
  else if (fp_form_is (form, SUPPORT, CHEST))
    add_chest (out, &box, foot);
  else
    add_block (out, &box, foot);
  fp_solids_call (out, mensa);
  fp_solids_add_box (out, FP_PART_MENSA, -p[LENGTH] / 2, -p[DEPTH] / 2, foot, p[LENGTH] / 2, p[DEPTH] / 2, p[HEIGHT]);
}

/* --- symbol and dimensions ------------------------------------------------ */

static void
add_cross (GArray *out, double x, double y, double arm)
{
  fp_strokes_add (out, (FpPoint) { x - arm, y }, (FpPoint) { x + arm, y }, FALSE);
  fp_strokes_add (out, (FpPoint) { x, y - arm }, (FpPoint) { x, y + arm }, FALSE);
}

/* Five crosses, cut at the corners and in the middle (Regensburg diocesan building guide, p. 253). */
static void
strokes (const FpForm *form, GArray *out)
{
  const double inset = MIN (150, form->param[DEPTH] / 4), arm = MIN (45, inset / 2);
  const double x = form->param[LENGTH] / 2 - inset, y = form->param[DEPTH] / 2 - inset;

  add_cross (out, 0, 0, arm);
  add_cross (out, -x, -y, arm);
  add_cross (out, x, -y, arm);
  add_cross (out, x, y, arm);
  add_cross (out, -x, y, arm);
}

static void
dims (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const double x = p[LENGTH] / 2, y = p[DEPTH] / 2;
  const FpBox box = support_box (form);

  fp_dims_add_x (out, LENGTH, (FpVec3) { -x, -y, p[HEIGHT] }, p[LENGTH], FP_IN_ELEVATION | FP_IN_PLAN, 0);
  fp_dims_add_y (out, DEPTH, (FpVec3) { x, -y, p[HEIGHT] }, p[DEPTH], FP_IN_PLAN | FP_IN_SECTION, 0);
  fp_dims_add_z (out, HEIGHT, (FpVec3) { x, -y, 0 }, p[HEIGHT], FP_IN_ELEVATION | FP_IN_SECTION, 0);
  fp_dims_add_z (out, THICKNESS, (FpVec3) { x, -y, mensa_foot (form) }, p[THICKNESS], FP_IN_SECTION, 5);
  if (box.y0 + y == p[OVERHANG])
    fp_dims_add_y (out, OVERHANG, (FpVec3) { x, -y, mensa_foot (form) }, p[OVERHANG], FP_IN_SECTION, 5);
}

/* --- people --------------------------------------------------------------- */

/* Whoever faces the people stands behind the altar, and behind one against the wall nobody can. */
static gboolean
stands_before (const FpForm *form)
{
  return form->facing == FP_FACING_EAST || fp_form_is (form, SETTING, AGAINST_WALL);
}

static void
targets (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  /* Not its upper face: where the people stand below the altar as they should, their eyes are below that too. What
   * they look at is its front edge and what is held or stands 300 mm over it (design judgement). */
  const double foot = mensa_foot (form);
  const gboolean east = stands_before (form);
  /* Design judgement: raised above his own head when his back is to the people, before his face otherwise; the Host with
   * the fingers that hold it, the chalice with the hands about it. */
  const double host = 200, chalice = 240, cup = 150, middle = east ? 2100 : 1700, y = (east ? -1 : 1) * p[DEPTH] / 2;

  fp_targets_add_upright (out, FP_FOCUS_MENSA, (FpVec3) { 0, -p[DEPTH] / 2, foot }, p[LENGTH], p[HEIGHT] + 300 - foot);
  fp_targets_add_shaped (out, FP_FOCUS_HOST, FP_TARGET_ROUND, (FpVec3) { 0, y, middle - host / 2 }, host, host);
  fp_targets_add_upright (out, FP_FOCUS_CHALICE, (FpVec3) { 0, y, middle - chalice / 2 }, cup, chalice);
}

static void
ministers (const FpForm *form, GArray *out)
{
  const gboolean east = stands_before (form);
  const double from_middle = form->param[DEPTH] / 2 + 200; /* close to the mensa; design judgement */
  const FpMinister celebrant = { .at = { 0, east ? -from_middle : from_middle }, .facing = east ? 0 : 180 };

  g_array_append_val (out, celebrant);
}

/* --- stone ------------------------------------------------------------------ */

static void
quantities (const FpForm *form, GArray *out)
{
  fp_quantities_add_called (out, &fp_kind_altar, form, FP_MATERIAL_STONE);
  for (guint i = 0; i < out->len; i++)
    {
      FpQuantity *quantity = &g_array_index (out, FpQuantity, i);
      quantity->laid = quantity->what == mensa || quantity->what == body || quantity->what == plinth || quantity->what == cornice;
    }
}

static void
add_stone (GArray *out, const char *what, const FpBox *box, double foot, double top, gboolean whole)
{
  const FpCourse course = {
    .type = FP_COURSE_BLOCK, .of = what, .what = what, .side = "", .from = { box->x0, box->y0 }, .along = { 1, 0 },
    .length = box->x1 - box->x0, .width = box->y1 - box->y0, .foot = foot, .top = top, .whole = whole,
  };

  g_array_append_val (out, course);
}

/* The slab in front passes the ends, and one behind does, where there is any: nobody sees the back of what stands at a wall. */
static void
add_faces (GArray *out, const FpBox *box, double foot, double top, gboolean behind)
{
  const double length = box->x1 - box->x0, depth = box->y1 - box->y0;
  const FpCourseEnd back = behind ? FP_END_BUTTS : FP_END_FREE;
  const FpCourse faces[] = {
    { .side = "in front", .from = { box->x0, box->y0 }, .along = { 1, 0 }, .length = length, .begins = FP_END_PASSES,
      .ends = FP_END_PASSES },
    { .side = "at the ends", .from = { box->x1, box->y0 }, .along = { 0, 1 }, .length = depth, .begins = FP_END_BUTTS, .ends = back },
    { .side = "at the ends", .from = { box->x0, box->y1 }, .along = { 0, -1 }, .length = depth, .begins = back, .ends = FP_END_BUTTS },
    { .side = "behind", .from = { box->x1, box->y1 }, .along = { -1, 0 }, .length = length, .begins = FP_END_PASSES,
      .ends = FP_END_PASSES },
  };

  for (guint i = 0; i < (behind ? 4 : 3); i++)
    {
      FpCourse course = faces[i];

      course.type = FP_COURSE_FACE;
      course.of = body;
      course.what = "slabs of the body";
      course.foot = foot;
      course.top = top;
      g_array_append_val (out, course);
    }
}

static void
courses (const FpForm *form, GArray *out)
{
  const double *p = form->param;
  const FpBox box = support_box (form), top = fp_centred_box (p[LENGTH], p[DEPTH]);
  const double foot = mensa_foot (form);
  const gboolean behind = fp_form_is (form, SETTING, FREESTANDING);

  if (fp_form_is (form, SUPPORT, CHEST))
    {
      const Chest c = chest_of (&box, foot);

      add_stone (out, plinth, &box, 0, c.plinth, FALSE);
      add_faces (out, &c.body, c.plinth, foot - c.cornice, behind);
      add_stone (out, cornice, &box, foot - c.cornice, foot, FALSE);
    }
  else if (fp_form_is (form, SUPPORT, BLOCK))
    add_faces (out, &box, 0, foot, behind);
  /* Of one natural stone (Codex Iuris Canonici 1983, can. 1236 § 1). */
  add_stone (out, mensa, &top, foot, p[HEIGHT], TRUE);
}

static char *
amiss (const FpForm *form)
{
  const double *p = form->param;

  if (p[OVERHANG] > p[DEPTH] * 0.4 || p[OVERHANG] > p[LENGTH] * 0.4)
    return g_strdup ("The mensa overhangs so far that too little is left to carry it.");
  return NULL;
}

const FpKind fp_kind_altar = {
  .id = "altar",
  .label = "Altar",
  .tells = "The table of stone on which the Sacrifice is offered; its top is called the mensa.",
  .role = FP_ROLE_ALTAR,
  .flags = FP_KIND_ON_FLOOR,
  .anchor = FP_ANCHOR_CENTRE,
  .spot = FP_SPOT_AXIS_ALTAR,
  .clearance = 900,
  .stands_on = stands_on,
  .params = params,
  .extent = extent,
  .solids = solids,
  .strokes = strokes,
  .dims = dims,
  .targets = targets,
  .ministers = ministers,
  .quantities = quantities,
  .courses = courses,
  .amiss = amiss,
};
