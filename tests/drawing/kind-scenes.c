/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "kind-scenes.h"

#include "church.h"

#define EYE_ID "eye"

/* An L, counter-clockwise, and three walls about a sanctuary. */
static const FpPoint outline[] = { { -4000, -3000 }, { 4000, -3000 }, { 4000, 1000 }, { 1000, 1000 },
                                   { 1000, 5000 }, { -4000, 5000 } };
static const FpPoint run[] = { { -4000, -3000 }, { -4000, 4000 }, { 4000, 4000 }, { 4000, -3000 } };
/* Its third side is towards the altar, as its kind has it. */
static const FpPoint loft[] = { { -4000, -3000 }, { 4000, -3000 }, { 4000, 1000 }, { -4000, 1000 } };

static const FpKind *
kind_of_role (FpRole role)
{
  guint n;
  const FpKind *const *kinds = fp_kinds (&n);

  for (guint i = 0; i < n; i++)
    if (kinds[i]->role == role)
      return kinds[i];
  return NULL;
}

/* The best that it stands on; steps lie round an altar, so nothing else is set on them. NULL: the floor. */
static const FpKind *
carrier_of (const FpKind *kind)
{
  for (const FpRole *role = kind->stands_on; role != NULL && *role != FP_ROLE_NONE; role++)
    if (*role == FP_ROLE_FLOOR || *role == FP_ROLE_GALLERY)
      return NULL;
    else if (*role != FP_ROLE_FOOTPACE || kind->role == FP_ROLE_ALTAR)
      return kind_of_role (*role);
  return NULL;
}

static void
add (FpProject **project, const FpKind *kind, const char *id)
{
  const FpKind *carrier = carrier_of (kind);
  ChurchThing thing = { .kind = kind->id, .id = id, .on = carrier == NULL ? NULL : carrier->id };

  if (carrier != NULL)
    add (project, carrier, carrier->id);
  if (kind->role == FP_ROLE_GALLERY)
    {
      thing.corner = loft;
      thing.n_corners = G_N_ELEMENTS (loft);
    }
  else if (kind->flags & FP_KIND_OUTLINE)
    {
      thing.corner = outline;
      thing.n_corners = G_N_ELEMENTS (outline);
    }
  else if (kind->flags & FP_KIND_RUN)
    {
      thing.corner = run;
      thing.n_corners = G_N_ELEMENTS (run);
    }
  if (kind->role == FP_ROLE_OPENING)
    {
      thing.param[0].name = "side";
      thing.param[0].value = 2;
    }
  if (kind->flags & FP_KIND_SURVEY)
    church_survey (project, &thing);
  else
    church_add (project, &thing);
}

#define FLOOR_SEEN 5000.0 /* mm before the eye, from where the floor is in the picture */

/* So far before it that a picture 60 degrees wide shows the whole of it. */
static void
add_eye (FpProject **project)
{
  g_autoptr (FpScene) scene = fp_scene_new (*project, 0);
  const FpPlaced *it = church_placed (scene, KIND_SCENE_ID);
  const double wide = it->plan.x1 - it->plan.x0, way = MAX (FLOOR_SEEN, MAX (wide, it->extent.height) * 1.2);
  const double x = (it->plan.x0 + it->plan.x1) / 2, y = it->plan.y0 - way;
  const FpPoint corner[] = { { x - 300, y - 600 }, { x + 300, y - 600 }, { x + 300, y }, { x - 300, y } };

  church_survey (project, &(ChurchThing) { .kind = "standing-room", .id = EYE_ID, .corner = corner, .n_corners = 4,
        .param = { { "spacing", 600 } } });
}

FpScene *
kind_scene_new (const FpKind *kind)
{
  FpProject *project = church_new (FP_FACING_EAST);
  FpScene *scene;

  if (kind->role != FP_ROLE_FLOOR)
    church_floor (&project, "ground", (FpBox) { -20000, -40000, 20000, 20000 }, 0, 1, 0, 0);
  add (&project, kind, KIND_SCENE_ID);
  if (kind->role == FP_ROLE_FOOTPACE)
    church_add (&project, &(ChurchThing) { .kind = "altar", .id = "altar", .on = KIND_SCENE_ID });
  add_eye (&project);
  scene = fp_scene_new (project, 0);
  fp_project_unref (project);
  return scene;
}

guint
kind_scene_eye (const FpPeople *people)
{
  const FpPlaced *placed = fp_scene_placed (fp_people_scene (people), NULL);
  guint n;
  const FpPersonPlace *place = fp_people_places (people, &n);

  for (guint i = 0; i < n; i++)
    if (g_str_equal (fp_item_id (placed[place[i].owner].item), EYE_ID))
      return i;
  g_error ("nobody looks");
}
