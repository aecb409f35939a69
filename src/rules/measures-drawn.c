/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is drawn of each measure.  What has no line here is drawn by its ends, by its parameter, or as the thing that it is about. */
#include "measure-evidence.h"
#include "printed-unit.h"

#include <string.h>

#define SEEN_LEAST 0.5 /* mm */

#define BY_WAY    "the way, and where it is narrowest"
#define STRETCH   "the stretch that is free"
#define EACH_ONE  "each of them"
#define BY_PLACES "each place that was counted"
#define SEEN      "the line of sight from the place that sees least, what stops it, and each place that sees less than half"
#define SIDE      "the thing, and the middle of the altar"
#define CANDLES   "each candle on the altar or about it"

typedef struct
{
  const char  *id;
  const char  *drawn; /* in words; NULL: as of its type                       */
  const char  *param; /* the parameter of its owner that it is               */
  FpEvidenceOf show;
  FpRole       role;  /* all things of that office; and where there is none, where it would be */
} Drawn;

static const Drawn drawn[] = {
  /* altar */
  { "mensa-length", NULL, "length", NULL },
  { "mensa-depth", NULL, "depth", NULL },
  { "mensa-height", NULL, "height", NULL },
  { "mensa-overhang", NULL, "overhang", NULL },
  { "mensa-share-of-sanctuary", "both lengths", NULL, fp_show_mensa_share_of_sanctuary },
  { "altar-freestanding", "the altar, and the room behind it", NULL, fp_show_altar_freestanding },
  { "altar-pressure", "the altar", NULL },
  { "altar-on-rating", "the altar", NULL },
  { "altars", EACH_ONE, NULL, NULL, FP_ROLE_ALTAR },
  { "side-altar-length", NULL, "length", NULL },
  { "side-altar-steps", "each step", NULL, fp_show_steps },
  /* vessels */
  { "corporal-square", "the square, and its side", NULL, fp_show_corporal_square },
  { "credence-length-left", "the length of the credence, and of each thing on it", NULL, fp_show_credence_length_left },
  { "credence-depth-left", "the depth of the credence, and of the deepest thing on it", NULL, fp_show_credence_depth_left },
  { "credence-area", NULL, NULL, fp_show_credence_area },
  /* steps */
  { "altar-steps", "each step", NULL, fp_show_steps },
  { "step-sides", "the steps", NULL, fp_show_steps },
  { "riser", NULL, "riser", NULL },
  { "tread", NULL, "tread", NULL },
  { "two-risers-and-tread", "the riser, and the tread", NULL, fp_show_two_risers_and_tread },
  { "riser-spread", "the highest riser, and the lowest", NULL, fp_show_riser_spread },
  { "footpace-ends", NULL, "ends", NULL },
  { "footpace-celebrant", NULL, NULL, fp_show_footpace_celebrant },
  { "footpace-behind-share", "both depths", NULL, fp_show_footpace_behind_share },
  { "floor-riser", NULL, "riser", NULL },
  { "floor-tread", NULL, "tread", NULL },
  { "floor-flight", "each step", NULL, fp_show_steps },
  { "short-flight-tread", NULL, "tread", NULL },
  { "ramp-slope", "the rise of the steepest run, and its length", NULL, fp_show_ramp_slope },
  { "ramp-landing", NULL, NULL, fp_show_ramp_landing },
  { "ramp-run", NULL, NULL, fp_show_ramp_run },
  { "ramp-width", NULL, "width", NULL },
  { "ramp-handrail", NULL, "handrail", NULL },
  /* rail and ambo */
  { "rail-height", NULL, "height", NULL },
  { "rail-top", NULL, "top", NULL },
  { "kneeling-width", NULL, "kneeling", NULL },
  { "kneeling-places", BY_PLACES, NULL, fp_show_kneeling_places },
  { "gates", "the gate", NULL },
  { "ambo-desk", NULL, "height", NULL },
  { "gate-swing", "how each leaf opens, and how far the thing reaches into that", NULL, fp_show_gate_swing },
  { "tabernacle-swing", "how the door opens, and how far the thing reaches into that", NULL, fp_show_tabernacle_swing },
  { "door-swing", "how each leaf opens, and how far the thing reaches into that", NULL, fp_show_door_swing },
  { "flight-handrails", "the handrails of the flight, or the flight", NULL, fp_show_handrails },
  { "short-flight-handrails", "the handrails of the flight, or the flight", NULL, fp_show_handrails },
  { "flight-beyond-reach", "the part of the edge that is beyond reach, or the flight", NULL },
  { "flight-edge-contrast", "the steps", NULL },
  { "altar-edge-contrast", "the steps", NULL },
  /* levels */
  { "margin-below", "the height, from the highest floor to the level of the altar's", NULL, fp_show_margin_below },
  { "places-not-below", BY_PLACES, NULL, fp_show_places_not_below },
  { "area-not-below", NULL, NULL, fp_show_area_not_below },
  { "places-above-sanctuary", BY_PLACES, NULL, fp_show_places_above_sanctuary },
  { "gallery-places", BY_PLACES, NULL, fp_show_gallery_places },
  { "floor-fall", "the floor, and how far it falls", NULL, fp_show_floor_fall },
  { "steps-lacking-for-rows", "the height of the altar over the front row, and the rows", NULL, fp_show_steps_lacking_for_rows },
  /* sight */
  { "mensa-seen", SEEN, NULL, fp_show_mensa_seen },
  { "tabernacle-seen", SEEN, NULL, fp_show_tabernacle_seen },
  { "crucifix-seen", SEEN, NULL, fp_show_crucifix_seen },
  { "ambo-seen", SEEN, NULL, fp_show_ambo_seen },
  { "chair-seen", SEEN, NULL, fp_show_chair_seen },
  { "mensa-mean", "the line of sight from the place that sees least, and what stops it", NULL, fp_show_mensa_mean },
  { "host-unseen", "the line of sight from the worst place, what stops it, and each place that was counted", NULL, fp_show_host_unseen },
  { "hidden-by-ambo", BY_PLACES, NULL, fp_show_hidden_by },
  { "hidden-by-candles", BY_PLACES, NULL, fp_show_hidden_by },
  { "row-c", "the line of sight, and how far it passes over the eyes in front", NULL, fp_show_row_c },
  { "places-turned", "straight on and to the altar from the place that is turned most, and each place that was counted", NULL,
    fp_show_places_turned },
  { "look-up", "the look up, and the level", NULL, fp_show_look_up },
  /* sides and order */
  { "credences", EACH_ONE, NULL, NULL, FP_ROLE_CREDENCE },
  { "tabernacles", EACH_ONE, NULL, NULL, FP_ROLE_TABERNACLE },
  { "crucifixes", EACH_ONE, NULL, NULL, FP_ROLE_CRUCIFIX },
  { "ambos", EACH_ONE, NULL, NULL, FP_ROLE_AMBO },
  { "chairs", EACH_ONE, NULL, NULL, FP_ROLE_CHAIR },
  { "ministers-seats", "the sedilia", NULL, NULL, FP_ROLE_SEDILIA },
  { "lamps", EACH_ONE, NULL, NULL, FP_ROLE_SANCTUARY_LAMP },
  { "credence-epistle", SIDE, NULL, fp_show_side },
  { "sedilia-epistle", SIDE, NULL, fp_show_side },
  { "bell-epistle", SIDE, NULL, fp_show_side },
  { "sanctus-epistle", SIDE, NULL, fp_show_side },
  { "chair-faces", "the chair, and which way it looks", NULL, fp_show_chair_faces },
  /* lights, and what stands on tables */
  { "candles-low", CANDLES, NULL, fp_show_candles },
  { "candles-sung", CANDLES, NULL, fp_show_candles },
  { "candles-solemn", CANDLES, NULL, fp_show_candles },
  { "candles-pontifical", CANDLES, NULL, fp_show_candles },
  { "candles-requiem", CANDLES, NULL, fp_show_candles },
  { "candles-benediction", CANDLES, NULL, fp_show_candles },
  { "candles-newer", CANDLES, NULL, fp_show_candles },
  { "candles-bishop", CANDLES, NULL, fp_show_candles },
  { "cross-away-older", "the crucifix", NULL, NULL, FP_ROLE_CRUCIFIX },
  { "cross-away-newer", "the crucifix", NULL, NULL, FP_ROLE_CRUCIFIX },
  { "cards-away", "the cards", NULL, NULL, FP_ROLE_ALTAR_CARDS },
  { "lamp-out", "the lamps", NULL, NULL, FP_ROLE_SANCTUARY_LAMP },
  { "cloths", "the cloths", NULL },
  { "ornaments-on-credence", EACH_ONE, NULL, fp_show_ornaments_on_credence },
  { "flowers-on-altar", EACH_ONE, NULL, fp_show_flowers_on_altar },
  /* ways */
  { "way-from-sacristy", BY_WAY, NULL },
  { "way-round-altar", BY_WAY, NULL },
  { "way-from-credence", BY_WAY, NULL },
  { "way-from-sedilia", BY_WAY, NULL },
  { "way-through-nave", BY_WAY, NULL },
  { "way-of-procession", BY_WAY, NULL },
  { "way-on-wheels", BY_WAY, NULL },
  { "way-to-pews", BY_WAY, NULL },
  { "past-celebrant", BY_WAY, NULL },
  { "past-on-step", BY_WAY, NULL },
  { "bier-turning", "the way, and the bier where it is tightest", NULL },
  { "turning-circle", "the circle, and its diameter", NULL },
  { "genuflect-footpace", STRETCH, NULL },
  { "genuflect-floor", STRETCH, NULL },
  { "behind-ministers", STRETCH, NULL },
  { "behind-communicants", STRETCH, NULL },
  { "ministers-in-line", "the floor on which each stands", NULL, fp_show_ministers_in_line },
  /* ways out */
  { "ways-out-lacking-us", "each way out, between its jambs", NULL, fp_show_ways_out },
  { "ways-out-width-us", "each way out, and the width that is asked for", NULL, fp_show_ways_out_width_us },
  { "ways-out-loss-us", "the ways out but the widest, and the width that is asked for", NULL, fp_show_ways_out_loss_us },
  { "ways-out-main-us", "the widest way out, and the width that is asked for", NULL, fp_show_ways_out_main_us },
  { "ways-out-apart-us", "how far the farthest two lie apart, and how far is asked for", NULL, fp_show_ways_out_apart_us },
  { "ways-out-lacking-uk", "each way out, between its jambs", NULL, fp_show_ways_out },
  { "ways-out-hold-uk", "each way out, between its jambs", NULL, fp_show_ways_out },
  /* people */
  { "seats-share", "the blocks of seats", NULL, fp_show_seats_share },
  { "row-spacing", NULL, "spacing", NULL },
  { "row-clear", NULL, NULL, fp_show_row_clear },
  { "row-clear-lacking", "the way that there is, and the way that is asked for", NULL, fp_show_row_clear_lacking },
  { "seat-width", NULL, "seat-width", NULL },
  { "row-seats", "each seat of the longest row", NULL, fp_show_row_seats },
  { "pew-area", "the ground of one seat", NULL, fp_show_pew_area },
  { "nave-to-pews", "the floors, and the pews", NULL, fp_show_nave_to_pews },
  { "sanctuary-of-nave", "both lengths", NULL, fp_show_sanctuary_of_nave },
  { "wheelchair-lacking", "the places that there are, or the floor", NULL, fp_show_wheelchair_lacking },
  { "wheelchair-alone", BY_PLACES, NULL, fp_show_wheelchair_alone },
  { "wheelchair-width", NULL, "width", NULL },
  { "wheelchair-beside", NULL, "width-beside", NULL },
};

static const Drawn *
find (const char *id)
{
  for (guint i = 0; i < G_N_ELEMENTS (drawn); i++)
    if (strcmp (drawn[i].id, id) == 0)
      return &drawn[i];
  return NULL;
}

const char *
fp_measure_drawn (const FpMeasure *measure)
{
  const Drawn *own = find (measure->id);

  if (own != NULL && own->drawn != NULL)
    return own->drawn;
  switch (measure->type)
    {
    case FP_MEASURE_LENGTH:
      return "the length, between its ends";
    case FP_MEASURE_COUNT:
      return "what was counted";
    case FP_MEASURE_AREA:
      return "the outline of the area";
    case FP_MEASURE_SHARE:
    case FP_MEASURE_YES:
      return "the thing";
    }
  return "";
}

/* Each of them; where there is none, the floor of the ministers, on which it would be. */
static void
add_all (FpEvidence *out, const FpMeasuring *of, FpRole role)
{
  fp_evidence_add_role (out, of, role);
  if (fp_evidence_is_empty (out))
    fp_evidence_add_floors (out, of, FP_FLOOR_MINISTERS);
}

/* Nothing, or lengths of nothing, which nobody would see. */
static gboolean
is_no_length (const FpEvidence *evidence)
{
  guint n;
  const FpEvidencePiece *piece = fp_evidence_pieces (evidence, &n);
  const FpVec3 *pt = fp_evidence_points (evidence);

  for (guint i = 0; i < n; i++)
    if (piece[i].sort != FP_EVIDENCE_LENGTH
        || fp_vec3_length (fp_vec3_sub (pt[piece[i].first + 1], pt[piece[i].first])) > SEEN_LEAST)
      return FALSE;
  return TRUE;
}

/* Of what was counted, each is marked; a length that is told in words is drawn with these. */
static void
set_figure (FpEvidence *out, const FpMeasure *measure, const FpMeasuring *of, const FpMeasured *one)
{
  const gboolean is_value = measure->type == FP_MEASURE_AREA || measure->type == FP_MEASURE_SHARE || measure->unit != NULL;
  const gboolean is_length = measure->type == FP_MEASURE_LENGTH && one->text != NULL;
  g_autofree char *printed = NULL;

  if (fp_evidence_figure (out) != NULL || (!is_value && !is_length))
    return;
  if (one->text == NULL)
    printed = fp_printed_value (measure, one->value, fp_project_brief (fp_scene_project (of->scene))->units);
  fp_evidence_set_figure (out, one->text != NULL ? one->text : printed);
}

FpEvidence *
fp_measured_evidence (const FpMeasure *measure, const FpMeasuring *of, const FpMeasured *one)
{
  const Drawn *own = find (measure->id);
  const char *param = measure->param != NULL ? measure->param : own != NULL ? own->param : NULL;
  const gboolean has_way = one->way != NULL && (one->way->narrows || one->way->n_route >= 2);
  FpEvidence *out = fp_evidence_new ();

  if (own != NULL && own->show != NULL)
    own->show (of, one, out);
  else if (own != NULL && own->role != FP_ROLE_NONE)
    add_all (out, of, own->role);
  else if (one->has_span)
    fp_evidence_add_length (out, one->span[0], one->span[1], one->value < 0 ? -1 : 1);
  else if (param != NULL && one->owner >= 0)
    fp_evidence_add_param (out, fp_measuring_placed (of, one->owner), param, 1);
  if (is_no_length (out) && !has_way)
    fp_evidence_add_thing (out, of, one->owner);
  set_figure (out, measure, of, one);
  return out;
}
