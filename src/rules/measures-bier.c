/* SPDX-License-Identifier: GPL-3.0-or-later */
/* How wide a coffin on its bier gets to the head of the nave. */
#include "measuring-ways.h"

#include <math.h>

/* mm.  Common practice, no source: a coffin on its bier is about 2.2 m long, and 0.7 m wide. */
#define BIER        2200.0
/* Design judgement, mm. */
#define BIER_WIDEST 1200.0 /* of what is wider nobody asks                                   */
#define BIER_CLEAR  300.0  /* from its end to the edge or the rail, where it lies along the axis */
#define AT_DOOR     60.0
#define HEAD        700.0  /* the head of the nave lies so far behind the edge (measuring-ways.c) */

static FpBierDoor
bier_door (const FpMeasuring *of, const FpDoorEnd *door)
{
  const FpPlaced *opening = fp_measuring_placed (of, door->opening);
  const FpPoint middle = { (door->jamb[0].x + door->jamb[1].x) / 2, (door->jamb[0].y + door->jamb[1].y) / 2 };
  const double dx = middle.x - door->inside.at.x, dy = middle.y - door->inside.at.y, d = hypot (dx, dy);

  return (FpBierDoor) { { door->jamb[0], door->jamb[1] }, { dx / d, dy / d },
                        fp_placed_param (fp_measuring_placed (of, opening->support), "thickness", 0) };
}

/* Outside the door, its length square to the wall. */
static FpBierEnd
outside (const FpBierDoor *door)
{
  const FpPoint middle = { (door->jamb[0].x + door->jamb[1].x) / 2, (door->jamb[0].y + door->jamb[1].y) / 2 };
  const double far = door->thickness + BIER / 2 + AT_DOOR;

  return (FpBierEnd) { { middle.x + door->out.x * far, middle.y + door->out.y * far }, 0, atan2 (-door->out.x, door->out.y) * 180 / G_PI };
}

/* So that it may lie along the axis of the altar, its end near to the edge or the rail, or across, where there is less room. */
static FpBierEnd
at_head (const FpPlaced *altar, const FpWayEnd *head)
{
  const FpPoint local = fp_placed_local (altar, head->at);

  return (FpBierEnd) { fp_place_point (&altar->place, (FpPoint) { local.x, local.y + HEAD - BIER_CLEAR - BIER / 2 }), head->reach, NAN };
}

void
fp_take_bier_turning (const FpMeasuring *of, GArray *out)
{
  FpDoorEnd door;
  FpWayEnd head;

  if (fp_measuring_main_door (of, &door) && fp_measuring_nave_head (of, &head))
    {
      const FpBierDoor through = bier_door (of, &door);
      const FpBierEnd from = outside (&through), to = at_head (fp_measuring_celebrated (of, NULL), &head);
      FpWay *way = fp_way_of_bier (of->scene, BIER, BIER_WIDEST, &from, &through, &to);
      g_autofree char *name = fp_measuring_name (of, door.opening), *lead = g_strdup_printf ("from “%s” to the head of the nave", name);
      FpMeasured *measured;

      measured = fp_measured_add_way (out, of, way, -1, to.at, lead);
      if (way->width >= BIER_WIDEST)
        {
          g_autofree char *most = fp_length_format_unit (BIER_WIDEST, fp_project_brief (fp_scene_project (of->scene))->units);
          measured->text = g_strdup_printf ("%s or more", most);
        }
    }
}
