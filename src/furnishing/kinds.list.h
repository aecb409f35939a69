/* SPDX-License-Identifier: GPL-3.0-or-later */
/* kinds.list.h - the only list of kinds, in the order in which people list them
 *
 * A new kind is a new file in this folder and a line here.  Included several
 * times with different meanings of FP_KIND, hence without a guard.
 */
FP_KIND (altar)
FP_KIND (footpace)
FP_KIND (gradine)
FP_KIND (tabernacle)
FP_KIND (crucifix)
FP_KIND (candlesticks)
FP_KIND (reredos)
FP_KIND (credence)
FP_KIND (sedilia)
FP_KIND (ambo)
FP_KIND (chair)
FP_KIND (rail)
FP_KIND (wall)
FP_KIND (opening)
FP_KIND (pier)
FP_KIND (floor)
FP_KIND (steps)
FP_KIND (pews)
FP_KIND (gallery)
FP_KIND (standing_room)
FP_KIND (wheelchair_places)
