/* SPDX-License-Identifier: GPL-3.0-or-later */
/* kinds.list.h - the only list of kinds, in the order in which people list them
 *
 * A new kind is a new file in this folder and a line here.  Included several
 * times with different meanings of FP_KIND, hence without a guard.
 */
FP_KIND (altar)
FP_KIND (footpace)
FP_KIND (floor)
FP_KIND (wall)
FP_KIND (pews)
