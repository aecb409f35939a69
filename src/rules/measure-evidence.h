/* SPDX-License-Identifier: GPL-3.0-or-later */
/* measure-evidence.h - drawing what was measured: what the measures share
 *
 * Private to src/rules.  A measure says in its take function between which points a length was (fp_measured_span()), or has a
 * line in the table of measures-drawn.c: which parameter it is, or a function that draws it.
 */
#pragma once

#include "measuring.h"

G_BEGIN_DECLS

/* Draws one value of a measure. */
typedef void (*FpEvidenceOf) (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out);

/* The room that a thing takes; of a floor its outline.  Nothing for -1. */
void fp_evidence_add_thing (FpEvidence *self, const FpMeasuring *of, int index);
/* All things of an office that are there. */
void fp_evidence_add_role  (FpEvidence *self, const FpMeasuring *of, FpRole role);
/* All floors of a use, each by its outline. */
void fp_evidence_add_floors (FpEvidence *self, const FpMeasuring *of, FpFloorUse use);
void fp_evidence_add_floor  (FpEvidence *self, const FpFloor *floor);
/* A piece of a thing by its outline, at its top. */
void fp_evidence_add_solid (FpEvidence *self, const FpSolid *solid);
/* A box on the plan of a thing, at a level of its own coordinates. */
void fp_evidence_add_box   (FpEvidence *self, const FpPlaced *placed, const FpBox *box, double z);
/* Between points of a thing's own coordinates. */
void fp_evidence_add_length_in (FpEvidence *self, const FpPlaced *placed, FpVec3 a, FpVec3 b, double times);
/* A parameter of it, where its kind draws the dimension, or would. */
void fp_evidence_add_param (FpEvidence *self, const FpPlaced *placed, const char *param, double times);
/* The places that pass a test, each. */
void fp_evidence_add_places (FpEvidence *self, const FpMeasuring *of, FpPlaceTest test, gpointer data);
/* What lies to the middle of an altar: a line upwards and eastwards through it. */
void fp_evidence_add_axis  (FpEvidence *self, const FpPlaced *altar, FpVec3 through);

/* Where such a parameter is, local coordinates; FALSE where the thing has none of that id. */
gboolean fp_param_span (const FpPlaced *placed, const char *param, FpVec3 *a, FpVec3 *b);

/* --- what is drawn by a function, in the file of its measure ----------------- */

#define FP_SHOW(name) void fp_show_##name (const FpMeasuring *of, const FpMeasured *one, FpEvidence *out);
FP_SHOW (mensa_share_of_sanctuary)
FP_SHOW (altar_freestanding)
FP_SHOW (ornaments_on_credence)
FP_SHOW (flowers_on_altar)
FP_SHOW (margin_below)
FP_SHOW (places_not_below)
FP_SHOW (places_above_sanctuary)
FP_SHOW (gallery_places)
FP_SHOW (area_not_below)
FP_SHOW (floor_fall)
FP_SHOW (steps_lacking_for_rows)
FP_SHOW (candles)
FP_SHOW (sanctuary_of_nave)
FP_SHOW (pew_area)
FP_SHOW (nave_to_pews)
FP_SHOW (row_clear_lacking)
FP_SHOW (places_turned)
FP_SHOW (look_up)
FP_SHOW (row_clear)
FP_SHOW (row_seats)
FP_SHOW (seats_share)
FP_SHOW (ministers_in_line)
FP_SHOW (kneeling_places)
FP_SHOW (side)
FP_SHOW (chair_faces)
FP_SHOW (credence_area)
FP_SHOW (mensa_seen)
FP_SHOW (tabernacle_seen)
FP_SHOW (crucifix_seen)
FP_SHOW (ambo_seen)
FP_SHOW (chair_seen)
FP_SHOW (mensa_mean)
FP_SHOW (host_unseen)
FP_SHOW (hidden_by)
FP_SHOW (row_c)
FP_SHOW (two_risers_and_tread)
FP_SHOW (steps)
FP_SHOW (footpace_celebrant)
FP_SHOW (footpace_behind_share)
FP_SHOW (riser_spread)
FP_SHOW (gate_swing)
FP_SHOW (tabernacle_swing)
FP_SHOW (door_swing)
FP_SHOW (handrails)
FP_SHOW (corporal_square)
FP_SHOW (credence_length_left)
FP_SHOW (credence_depth_left)
FP_SHOW (wheelchair_lacking)
FP_SHOW (wheelchair_alone)
FP_SHOW (ways_out)
FP_SHOW (ways_out_width_us)
FP_SHOW (ways_out_loss_us)
FP_SHOW (ways_out_main_us)
FP_SHOW (ways_out_apart_us)
FP_SHOW (ramp_slope)
FP_SHOW (ramp_landing)
FP_SHOW (ramp_run)
#undef FP_SHOW

G_END_DECLS
