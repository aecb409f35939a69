/* SPDX-License-Identifier: GPL-3.0-or-later */
/* drawing.h - all that a drawing is made of: for who needs most of it
 *
 * pens.h       what lines and fills look like
 * lettering.h  how wide letters are
 * marks.h      the drawing itself, a list of marks
 * order-marks.h flames and the numbers of the order of lighting
 * projection.h what is seen of the church from one side
 * view.h       a projection on paper, with dimensions and names
 * board.h      three views on one surface
 * level-diagram.h how far the people are below the altar
 * pew-view.h   what is seen from a place
 * sheet.h      pages with frame and title block
 * sun-marks.h  sunlight on plans and sections
 * evidence-drawing.h what was measured, over a view
 * way-drawing.h  a way on the plan, and where it is narrowest
 * change-marks.h what a change would make of the church
 * tiles.h      a large sheet on small pages
 * surface.h    screen, printer, PDF, PNG and SVG
 */
#pragma once

#include "footpace/board.h"
#include "footpace/evidence-drawing.h"
#include "footpace/lettering.h"
#include "footpace/level-diagram.h"
#include "footpace/marks.h"
#include "footpace/order-marks.h"
#include "footpace/pens.h"
#include "footpace/projection.h"
#include "footpace/pew-view.h"
#include "footpace/sheet.h"
#include "footpace/sight-drawing.h"
#include "footpace/sun-marks.h"
#include "footpace/way-drawing.h"
#include "footpace/change-marks.h"
#include "footpace/surface.h"
#include "footpace/tiles.h"
#include "footpace/view.h"
