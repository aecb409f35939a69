/* SPDX-License-Identifier: GPL-3.0-or-later */
/* setting-new.c - adding a thing where it belongs */
#include "footpace/setting-out.h"

#include "setting-pews.h"

static gboolean
find_spot (FpDraft *draft, GError **error)
{
  if ((draft->kind->flags & FP_KIND_SURVEY) != 0)
    return fp_spot_nave (draft, error);
  switch (draft->kind->spot)
    {
    case FP_SPOT_AXIS_ALTAR: fp_spot_axis_altar (draft); return TRUE;
    case FP_SPOT_BEHIND_ALTAR: fp_spot_behind_altar (draft); return TRUE;
    case FP_SPOT_EPISTLE_WALL: fp_spot_epistle_wall (draft); return TRUE;
    case FP_SPOT_GOSPEL_WALL: fp_spot_gospel_wall (draft); return TRUE;
    case FP_SPOT_GOSPEL_FRONT: fp_spot_gospel_front (draft); return TRUE;
    case FP_SPOT_OPENING: fp_spot_opening (draft); return TRUE;
    case FP_SPOT_ON_SUPPORT: return fp_spot_on_support (draft, error);
    case FP_SPOT_NAVE: return fp_spot_nave (draft, error);
    case FP_SPOT_ABOVE_ALTAR: fp_spot_above_altar (draft); return TRUE;
    case FP_SPOT_BEFORE_ALTAR: fp_spot_before_altar (draft); return TRUE;
    }
  return TRUE;
}

static FpProject *
add_draft_to (const FpProject *project, const FpDraft *draft, const char *id, GError **error)
{
  const FpScene *scene = draft->room->scene;
  const FpPlaced *support = draft->on >= 0 ? &draft->room->placed[draft->on] : NULL;
  const FpPlace place = (draft->kind->flags & FP_KIND_IN_WALL) != 0 ? draft->place
                        : fp_scene_place_on (scene, draft->on, draft->kind, &draft->plan, draft->place);
  const FpItemInit init = {
    .id = id, .kind = draft->kind, .name = draft->name, .on = support != NULL ? fp_item_id (support->item) : NULL,
    .place = fp_place_tidy (&place),
    .param = draft->param, .corner = draft->n_corners > 0 ? draft->corner : NULL, .n_corners = draft->n_corners,
  };
  g_autoptr (FpItem) item = fp_item_new (&init, error);

  if (item == NULL)
    return NULL;
  if ((draft->kind->flags & FP_KIND_SURVEY) != 0)
    return fp_project_with_survey_item (project, item, error);
  return fp_project_with_item (project, fp_scene_alternative (scene), item, error);
}

static FpProject *
add_draft (const FpDraft *draft, const char *id, GError **error)
{
  return add_draft_to (fp_scene_project (draft->room->scene), draft, id, error);
}

/* An altar that stands on the floor is raised onto its new footpace. */
static FpProject *
raise_altar (const FpProject *project, const FpRoom *room, const char *footpace, GError **error)
{
  const FpPlaced *altar = &room->placed[room->altar];
  const guint alternative = fp_scene_alternative (room->scene);
  g_autoptr (FpItem) raised = NULL;
  FpItemInit init;

  if (altar->in_survey)
    return fp_project_with_fate (project, alternative, fp_item_id (altar->item), FP_FATE_MOVED, &altar->place, footpace,
                                 error);
  fp_item_init_from (altar->item, &init);
  init.on = footpace;
  init.place = altar->place;
  raised = fp_item_new (&init, error);
  return raised != NULL ? fp_project_with_item (project, alternative, raised, error) : NULL;
}

/* Onto the middle of the new gradine, as far across as it stood. */
static FpProject *
lift (const FpProject *project, const FpRoom *room, const FpPlaced *thing, const char *gradine, GError **error)
{
  g_autoptr (FpItem) lifted = NULL;
  FpItemInit init;

  fp_item_init_from (thing->item, &init);
  init.on = gradine;
  init.place = (FpPlace) { init.place.x, 0, init.place.turn };
  lifted = fp_item_new (&init, error);
  return lifted != NULL ? fp_project_with_item (project, fp_scene_alternative (room->scene), lifted, error) : NULL;
}

/* To just before the front of the new gradine. */
static FpProject *
push (const FpProject *project, const FpDraft *gradine, const FpPlaced *thing, GError **error)
{
  const FpPlaced *altar = &gradine->room->placed[gradine->on];
  const FpPoint front = fp_place_unpoint (&altar->place, fp_place_point (&gradine->place, (FpPoint) { 0, gradine->plan.y0 }));
  g_autoptr (FpItem) pushed = NULL;
  FpItemInit init;

  fp_item_init_from (thing->item, &init);
  init.place.y = MIN (init.place.y, front.y - altar->extent.bearing.y1);
  pushed = fp_item_new (&init, error);
  return pushed != NULL ? fp_project_with_item (project, fp_scene_alternative (gradine->room->scene), pushed, error) : NULL;
}

/* Cross and lights that stand where it comes to lie go up on it; cards go before it. */
static FpProject *
set_out_gradine (const FpRoom *room, const FpKind *kind, const char *id, GError **error)
{
  FpDraft draft;
  FpProject *project;

  fp_draft_init (&draft, room, kind);
  project = find_spot (&draft, error) ? add_draft (&draft, id, error) : NULL;
  for (guint i = 0; project != NULL && draft.on >= 0 && i < room->n_placed; i++)
    if ((fp_draft_lifts (&draft, &room->placed[i]) || fp_draft_pushes (&draft, &room->placed[i]))
        && fp_room_overlaps (&draft.plan, &draft.place, &room->placed[i]))
      {
        FpProject *next = fp_draft_pushes (&draft, &room->placed[i]) ? push (project, &draft, &room->placed[i], error)
                          : lift (project, room, &room->placed[i], id, error);

        fp_project_unref (project);
        project = next;
      }
  return project;
}

static FpProject *
add_footpace (FpDraft *draft, const char *id, GError **error)
{
  const FpRoom *room = draft->room;
  const gboolean raises = room->altar >= 0 && room->placed[room->altar].support < 0
                          && fp_kind_may_stand_on (fp_item_kind (room->placed[room->altar].item), FP_ROLE_FOOTPACE);
  g_autoptr (FpProject) with_footpace = NULL;

  if (raises)
    draft->place = room->placed[room->altar].place;
  else
    fp_spot_axis_altar (draft);
  with_footpace = add_draft (draft, id, error);
  if (with_footpace == NULL || !raises)
    return g_steal_pointer (&with_footpace);
  return raise_altar (with_footpace, room, id, error);
}

static FpProject *
set_out_on (const FpRoom *room, const FpKind *kind, const char *id, GError **error)
{
  FpDraft draft;

  fp_draft_init (&draft, room, kind);
  if (kind->role == FP_ROLE_FOOTPACE)
    return add_footpace (&draft, id, error);
  return find_spot (&draft, error) ? add_draft (&draft, id, error) : NULL;
}

/* What stands on the altar and its steps goes with them. */
static FpProject *
bring_altar_forward (const FpRoom *room, double by)
{
  const FpPlaced *group = &room->placed[fp_room_altar_group (room)];

  return fp_set_out_move (room->scene, fp_item_id (group->item), (FpVec3) { 0, -by, 0 }, NULL);
}

/* A reredos for which there is no room behind the altar: the altar comes forward for it, so far that one can still
 * walk round it or, failing that, that the two do not meet.  NULL where it need not, or cannot. */
static FpProject *
make_room_behind (const FpRoom *room, const FpKind *kind)
{
  double by[2];
  FpDraft draft;

  fp_draft_init (&draft, room, kind);
  fp_spot_behind_altar (&draft);
  by[0] = fp_draft_lacks_behind (&draft, &by[1]);
  for (guint i = 0; i < G_N_ELEMENTS (by); i++)
    if (by[i] > 0 && fp_room_may_come_forward (room, by[i]))
      return bring_altar_forward (room, by[i]);
  return NULL;
}

static FpProject *
set_out_reredos (const FpRoom *room, const FpKind *kind, const char *id, GError **error)
{
  g_autoptr (FpProject) moved = make_room_behind (room, kind);
  g_autoptr (FpScene) scene = NULL;
  g_auto (FpRoom) wider = { 0 };

  if (moved == NULL)
    return set_out_on (room, kind, id, error);
  scene = fp_scene_new (moved, fp_scene_alternative (room->scene));
  fp_room_init (&wider, scene);
  return set_out_on (&wider, kind, id, error);
}

/* The cross comes forward a little for the candlestick behind it (Catholic Encyclopedia I, 1907, Altar Candles, p. 348);
 * NULL where it need not, or cannot. */
static FpProject *
bring_cross_forward (const FpRoom *room, const FpKind *kind)
{
  const int at = fp_scene_role (room->scene, FP_ROLE_CRUCIFIX);
  const FpPlaced *cross = at >= 0 ? &room->placed[at] : NULL;
  const FpPlaced *on = cross != NULL && cross->support >= 0 ? &room->placed[cross->support] : NULL;
  const double air = 20; /* design judgement */
  FpDraft draft;
  FpPoint own, by;
  double lacks;

  if (on == NULL || !fp_kind_may_stand_on (kind, fp_item_kind (on->item)->role))
    return NULL;
  fp_draft_init (&draft, room, kind);
  own = fp_place_unpoint (&on->place, (FpPoint) { cross->place.x, cross->place.y });
  lacks = own.y + cross->extent.plan.y1 + draft.plan.y1 - draft.plan.y0 + air - on->extent.bearing.y1;
  if (!(lacks > 0) || own.y + cross->extent.plan.y0 - lacks < on->extent.bearing.y0)
    return NULL;
  by = fp_place_point (&(FpPlace) { 0, 0, on->place.turn }, (FpPoint) { 0, -lacks });
  return fp_set_out_move (room->scene, fp_item_id (cross->item), (FpVec3) { by.x, by.y, 0 }, NULL);
}

static FpProject *
set_out_seventh (const FpRoom *room, const FpKind *kind, const char *id, GError **error)
{
  g_autoptr (FpProject) moved = bring_cross_forward (room, kind);
  g_autoptr (FpScene) scene = NULL;
  g_auto (FpRoom) wider = { 0 };

  if (moved == NULL)
    return set_out_on (room, kind, id, error);
  scene = fp_scene_new (moved, fp_scene_alternative (room->scene));
  fp_room_init (&wider, scene);
  return set_out_on (&wider, kind, id, error);
}

/* Where there is room for no block beside the aisle, one in the nave, wherever it goes. */
static FpProject *
set_out_pews (const FpRoom *room, const FpKind *kind, const char *id, GError **error)
{
  g_autoptr (FpProject) first = NULL;
  g_autofree char *second = NULL;
  FpDraft block[2];
  const guint n = fp_lay_pews (room, kind, block);

  if (n == 0)
    return set_out_on (room, kind, id, error);
  first = add_draft (&block[0], id, error);
  if (first == NULL || n == 1)
    return g_steal_pointer (&first);
  second = fp_project_free_id (first, kind->id);
  return add_draft_to (first, &block[1], second, error);
}

static FpProject *
set_out (const FpRoom *room, const FpKind *kind, const char *id, GError **error)
{
  switch (kind->role)
    {
    case FP_ROLE_REREDOS: return set_out_reredos (room, kind, id, error);
    case FP_ROLE_GRADINE: return set_out_gradine (room, kind, id, error);
    case FP_ROLE_PEWS: return set_out_pews (room, kind, id, error);
    case FP_ROLE_SEVENTH_CANDLE: return set_out_seventh (room, kind, id, error);
    default: return set_out_on (room, kind, id, error);
    }
}

FpProject *
fp_set_out_new (const FpScene *scene, const FpKind *kind, char **id, GError **error)
{
  g_autofree char *free_id = fp_project_free_id (fp_scene_project (scene), kind->id);
  FpProject *next;
  g_auto (FpRoom) room = { 0 };

  fp_room_init (&room, scene);
  next = set_out (&room, kind, free_id, error);
  if (next != NULL && id != NULL)
    *id = g_steal_pointer (&free_id);
  return next;
}
