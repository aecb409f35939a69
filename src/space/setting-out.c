/* SPDX-License-Identifier: GPL-3.0-or-later */
/* setting-out.c - edits of what is there: move, measure, rename, take away */
#include "footpace/setting-out.h"

#include "room.h"
#include "wall-side.h"

#include <math.h>
#include <string.h>

/* A thing as an edit finds it. */
typedef struct
{
  const FpScene   *scene;
  const FpProject *project; /* that of the scene, or what other edits have made of it */
  guint            alternative;
  const FpPlaced  *placed; /* of the whole scene; NULL where it does not stand */
  int              index;  /* into the scene; -1 where it does not stand   */
  const FpItem    *item;
  gboolean         in_survey;
  const char      *on;     /* on what it stands in this alternative        */
  FpPlace          place;  /* its own, in this alternative                 */
} Subject;

static gboolean
find_subject_in (const FpScene *scene, const FpProject *project, const char *id, Subject *s, GError **error)
{
  *s = (Subject) { .scene = scene, .project = project, .alternative = fp_scene_alternative (scene) };
  s->item = id != NULL ? fp_project_find (s->project, s->alternative, id, &s->in_survey) : NULL;
  if (s->item == NULL)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "%s: there is no such thing", id != NULL ? id : "nothing");
      return FALSE;
    }
  s->placed = fp_scene_placed (scene, NULL);
  s->index = fp_scene_find (scene, id);
  s->on = fp_item_on (s->item);
  s->place = fp_item_place (s->item);
  if (s->in_survey)
    fp_alternative_fate (fp_project_alternative (s->project, s->alternative), id, &s->place, &s->on);
  return TRUE;
}

static gboolean
find_subject (const FpScene *scene, const char *id, Subject *s, GError **error)
{
  return find_subject_in (scene, fp_scene_project (scene), id, s, error);
}

static gboolean
must_stand (const Subject *s, GError **error)
{
  if (s->index >= 0)
    return TRUE;
  g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "%s: it is removed in this alternative; restore it first",
               fp_item_id (s->item));
  return FALSE;
}

static gboolean
has_flag (const Subject *s, FpKindFlags flag)
{
  return (fp_item_kind (s->item)->flags & flag) != 0;
}

/* Whether its place is in church coordinates. */
static gboolean
is_placed_freely (const Subject *s)
{
  return s->on == NULL || has_flag (s, FP_KIND_ON_FLOOR);
}

/* --- writing back --------------------------------------------------------- */

static FpProject *
write_item (const Subject *s, const FpProject *project, const FpItemInit *init, GError **error)
{
  g_autoptr (FpItem) item = fp_item_new (init, error);

  if (item == NULL)
    return NULL;
  return s->in_survey ? fp_project_with_survey_item (project, item, error)
         : fp_project_with_item (project, s->alternative, item, error);
}

static FpProject *
write_param (const Subject *s, const char *param, double value, GError **error)
{
  const int index = fp_kind_param_index (fp_item_kind (s->item), param);
  double changed[FP_PARAM_MAX];
  FpItemInit init;

  if (index < 0)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "%s: it has no %s", fp_item_id (s->item), param);
      return NULL;
    }
  fp_item_init_from (s->item, &init);
  if (!fp_param_check_in (&init.kind->params[index], value, fp_project_brief (s->project)->units, error))
    {
      g_prefix_error (error, "%s: ", init.id);
      return NULL;
    }
  memcpy (changed, init.param, fp_kind_n_params (init.kind) * sizeof (double));
  changed[index] = value;
  init.param = changed;
  return write_item (s, s->project, &init, error);
}

static gboolean
same_place (const FpPlace *a, const FpPlace *b)
{
  return fabs (a->x - b->x) < 1e-6 && fabs (a->y - b->y) < 1e-6 && fabs (a->turn - b->turn) < 1e-9;
}

/* A furnishing of the survey is moved in this alternative; brought back to where it was measured, it is kept. */
static FpProject *
write_fate (const Subject *s, const FpProject *project, const FpPlace *place, const char *on, GError **error)
{
  const FpPlace measured = fp_item_place (s->item);
  const gboolean back = same_place (place, &measured) && g_strcmp0 (on, fp_item_on (s->item)) == 0;

  return fp_project_with_fate (project, s->alternative, fp_item_id (s->item), back ? FP_FATE_KEPT : FP_FATE_MOVED,
                               place, on, error);
}

static FpProject *
write_place (const Subject *s, const FpProject *project, const FpPlace *place, const char *on, GError **error)
{
  const FpPlace tidied = fp_place_tidy (place);
  FpItemInit init;

  if (s->in_survey && !has_flag (s, FP_KIND_SURVEY))
    return write_fate (s, project, &tidied, on, error);
  fp_item_init_from (s->item, &init);
  init.place = tidied;
  init.on = on;
  return write_item (s, project, &init, error);
}

/* --- what goes with it ---------------------------------------------------- */

/* What lies in church coordinates although it stands on the thing has to be
 * carried: from where the thing was to where it comes. */
static FpProject *
carry_one (const Subject *carried, const FpProject *project, const FpPlace *from, const FpPlace *to, GError **error)
{
  const FpPoint local = fp_place_unpoint (from, (FpPoint) { carried->place.x, carried->place.y });
  const FpPlace inner = { local.x, local.y, carried->place.turn - from->turn };
  const FpPlace place = fp_place_compose (to, &inner);

  return write_place (carried, project, &place, carried->on, error);
}

static FpProject * /* takes @project */
carry (const Subject *s, FpProject *project, const FpPlace *from, const FpPlace *to, GError **error)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (s->scene, &n);

  for (guint i = 0; project != NULL && i < n; i++)
    {
      Subject carried;
      FpProject *next;
      if (placed[i].ghost || placed[i].support != s->index
          || (fp_item_kind (placed[i].item)->flags & FP_KIND_ON_FLOOR) == 0)
        continue;
      next = find_subject_in (s->scene, project, fp_item_id (placed[i].item), &carried, error)
             ? carry_one (&carried, project, from, to, error) : NULL;
      fp_project_unref (project);
      project = next;
    }
  return project;
}

/* Whether it takes its place from what stands on it, as a footpace does. */
static gboolean
is_laid_round (const Subject *s)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (s->scene, &n);

  for (guint i = 0; has_flag (s, FP_KIND_LAID_ROUND) && i < n; i++)
    if (!placed[i].ghost && placed[i].support == s->index
        && (fp_item_kind (placed[i].item)->flags & FP_KIND_ON_FLOOR) != 0)
      return TRUE;
  return FALSE;
}

/* --- moving --------------------------------------------------------------- */

static FpProject *
move_to (const Subject *s, const FpPlace *place, GError **error)
{
  const FpPlace from = s->placed[s->index].place;
  FpProject *next = write_place (s, s->project, place, s->on, error);

  return next != NULL && is_placed_freely (s) ? carry (s, next, &from, place, error) : next;
}

/* Along its wall, as far as the side goes and its neighbours allow. */
static FpProject *
move_in_wall (const Subject *s, FpVec3 by, GError **error)
{
  const FpPlaced *opening = &s->placed[s->index];
  const FpPlaced *wall = opening->support >= 0 ? &s->placed[opening->support] : NULL;
  const FpPlace turn = { 0, 0, opening->place.turn };
  const FpPoint step = fp_place_unpoint (&turn, (FpPoint) { by.x, by.y });
  const guint side = (guint) fp_item_param (s->item, "side") - 1;
  double least, most;
  FpPoint a, b;

  if (wall == NULL)
    return fp_project_ref (s->project);
  a = wall->form.corner[side];
  b = wall->form.corner[(side + 1) % wall->form.n_corners];
  fp_wall_side_room (s->project, s->item, hypot (b.x - a.x, b.y - a.y), &least, &most);
  return write_param (s, "along", MAX (MIN (fp_item_param (s->item, "along") + step.x, most), least), error);
}

/* Relative to a support that is not there (any more): from now on in church coordinates. */
static FpProject *
move_from_lost_support (const Subject *s, FpVec3 by, GError **error)
{
  FpPlace place = s->placed[s->index].place;

  place.x += by.x;
  place.y += by.y;
  return write_place (s, s->project, &place, NULL, error);
}

static FpProject *
move_subject (const Subject *s, FpVec3 by, GError **error)
{
  const FpPlaced *placed = &s->placed[s->index];
  FpPlace place = s->place;

  if (!is_placed_freely (s) && placed->support < 0)
    return move_from_lost_support (s, by, error);
  if (!is_placed_freely (s))
    {
      const FpPlace turn = { 0, 0, s->placed[placed->support].place.turn };
      const FpPoint step = fp_place_unpoint (&turn, (FpPoint) { by.x, by.y });
      by = (FpVec3) { step.x, step.y, 0 };
    }
  place.x += by.x;
  place.y += by.y;
  return move_to (s, &place, error);
}

static FpProject *
move_in (const FpScene *scene, const FpProject *project, const char *id, FpVec3 by, GError **error)
{
  Subject s;

  if (!find_subject_in (scene, project, id, &s, error) || !must_stand (&s, error))
    return NULL;
  if (has_flag (&s, FP_KIND_IN_WALL))
    return move_in_wall (&s, by, error);
  if (is_laid_round (&s))
    {
      const FpPlace from = s.placed[s.index].place, to = { from.x + by.x, from.y + by.y, from.turn };
      return carry (&s, fp_project_ref (s.project), &from, &to, error);
    }
  return move_subject (&s, by, error);
}

FpProject *
fp_set_out_move (const FpScene *scene, const char *id, FpVec3 by, GError **error)
{
  return move_in (scene, fp_scene_project (scene), id, by, error);
}

/* None of them moves another, so where each stands is as the scene has it. */
FpProject *
fp_set_out_move_all (const FpScene *scene, const char *const *ids, FpVec3 by, GError **error)
{
  FpProject *project = fp_project_ref (fp_scene_project (scene));

  for (; project != NULL && *ids != NULL; ids++)
    {
      g_autoptr (FpProject) before = project;

      project = move_in (scene, before, *ids, by, error);
    }
  return project;
}

FpProject *
fp_set_out_place (const FpScene *scene, const char *id, const FpPlace *place, GError **error)
{
  Subject s;

  if (!find_subject (scene, id, &s, error) || !must_stand (&s, error))
    return NULL;
  if (has_flag (&s, FP_KIND_IN_WALL))
    {
      g_set_error (error, FP_ERROR, FP_ERROR_INVALID,
                   "%s: its place is given by its side of the wall and how far along",
                   id);
      return NULL;
    }
  if (is_laid_round (&s))
    return carry (&s, fp_project_ref (s.project), &s.placed[s.index].place, place, error);
  return move_to (&s, place, error);
}

/* --- measuring and naming ------------------------------------------------- */

/* In another side of its wall an opening stays as far along as that side and its neighbours there allow: else neither
 * could be typed before the other. */
static FpProject *
write_side (const Subject *s, double side, GError **error)
{
  const FpPlaced *wall = &s->placed[s->placed[s->index].support];
  const int along = fp_kind_param_index (fp_item_kind (s->item), "along");
  double changed[FP_PARAM_MAX];
  FpItemInit init;
  FpPoint a, b;

  if (!(side >= 1 && side <= wall->form.n_corners))
    return write_param (s, "side", side, error);
  a = wall->form.corner[(guint) side - 1];
  b = wall->form.corner[(guint) side % wall->form.n_corners];
  fp_item_init_from (s->item, &init);
  memcpy (changed, init.param, fp_kind_n_params (init.kind) * sizeof (double));
  changed[fp_kind_param_index (init.kind, "side")] = side;
  changed[along] = fp_wall_side_nearest (s->project, s->item, (guint) side, hypot (b.x - a.x, b.y - a.y),
                                         changed[along]);
  init.param = changed;
  return write_item (s, s->project, &init, error);
}

static gboolean
is_in_wall (const Subject *s)
{
  return has_flag (s, FP_KIND_IN_WALL) && s->index >= 0 && s->placed[s->index].support >= 0;
}

FpProject *
fp_set_out_param (const FpScene *scene, const char *id, const char *param, double value, GError **error)
{
  Subject s;

  if (!find_subject (scene, id, &s, error))
    return NULL;
  return is_in_wall (&s) && strcmp (param, "side") == 0 ? write_side (&s, value, error)
         : write_param (&s, param, value, error);
}

FpProject *
fp_set_out_name (const FpScene *scene, const char *id, const char *name, GError **error)
{
  FpItemInit init;
  Subject s;

  if (!find_subject (scene, id, &s, error))
    return NULL;
  fp_item_init_from (s.item, &init);
  init.name = name;
  return write_item (&s, s.project, &init, error);
}

/* --- onto another support ------------------------------------------------- */

static double
distance_to_side (const FpPlaced *wall, guint side, FpPoint p)
{
  return fp_segment_distance (wall->form.corner[side], wall->form.corner[(side + 1) % wall->form.n_corners], p);
}

/* Into the side of another wall that is nearest to where it was. */
static FpProject *
put_into_wall (const Subject *s, const FpPlaced *wall, GError **error)
{
  const FpPlaced *opening = &s->placed[s->index];
  const FpPoint p = fp_place_unpoint (&wall->place, (FpPoint) { opening->place.x, opening->place.y });
  const int side_param = fp_kind_param_index (fp_item_kind (s->item), "side");
  const int along_param = fp_kind_param_index (fp_item_kind (s->item), "along");
  const double half = fp_item_param (s->item, "width") / 2;
  const guint n = wall->form.n_corners, n_sides = fp_item_param (wall->item, "closed") != 0 ? n : n - 1;
  double changed[FP_PARAM_MAX], length;
  guint side = 0;
  FpItemInit init;
  FpPoint a, b;

  for (guint i = 1; i < n_sides; i++)
    if (distance_to_side (wall, i, p) < distance_to_side (wall, side, p))
      side = i;
  a = wall->form.corner[side];
  b = wall->form.corner[(side + 1) % n];
  length = hypot (b.x - a.x, b.y - a.y);
  fp_item_init_from (s->item, &init);
  memcpy (changed, init.param, fp_kind_n_params (init.kind) * sizeof (double));
  changed[side_param] = side + 1;
  changed[along_param] = ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / length;
  changed[along_param] = MAX (MIN (changed[along_param], length - half), half);
  init.param = changed;
  init.on = fp_item_id (wall->item);
  return write_item (s, s->project, &init, error);
}

FpProject *
fp_set_out_on (const FpScene *scene, const char *id, const char *on, GError **error)
{
  FpPlace place;
  Subject s;
  int support;

  if (!find_subject (scene, id, &s, error) || !must_stand (&s, error))
    return NULL;
  support = on != NULL ? fp_scene_find (scene, on) : -1;
  if (on != NULL && support < 0)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "%s: “%s” is not there to stand on", id, on);
      return NULL;
    }
  if (has_flag (&s, FP_KIND_IN_WALL) && support >= 0 && fp_placed_has_role (&s.placed[support], FP_ROLE_WALL))
    return put_into_wall (&s, &s.placed[support], error);
  place = fp_scene_place_on (scene, support, fp_item_kind (s.item), &s.placed[s.index].extent.plan,
                             s.placed[s.index].place);
  return write_place (&s, s.project, &place, on, error);
}

/* --- taking away and bringing back ---------------------------------------- */

static gboolean
stands_upon (const FpPlaced *placed, int thing, int support)
{
  for (int i = placed[thing].support; i >= 0; i = placed[i].support)
    if (i == support)
      return TRUE;
  return FALSE;
}

static FpProject *
take_away (const Subject *s, const FpProject *project, const FpPlaced *placed, GError **error)
{
  const char *id = fp_item_id (placed->item);

  if (placed->in_survey)
    return fp_project_with_fate (project, s->alternative, id, FP_FATE_REMOVED, NULL, NULL, error);
  /* It may have gone already with what carried it. */
  if (fp_project_find (project, s->alternative, id, NULL) == NULL)
    return fp_project_ref (project);
  return fp_project_without_item (project, s->alternative, id, error);
}

/* A footpace that loses what it lies round stays where it is. */
static FpProject * /* takes @project */
leave_footpace (const Subject *s, FpProject *project, const FpPlaced *gone, GError **error)
{
  const FpPlaced *footpace = gone->support >= 0 ? &s->placed[gone->support] : NULL;
  FpProject *next;
  Subject left;

  if (footpace == NULL || footpace->in_survey || (fp_item_kind (footpace->item)->flags & FP_KIND_LAID_ROUND) == 0
      || fp_project_find (project, s->alternative, fp_item_id (footpace->item), NULL) == NULL)
    return project;
  next = find_subject (s->scene, fp_item_id (footpace->item), &left, error)
         ? write_place (&left, project, &footpace->place, left.on, error) : NULL;
  fp_project_unref (project);
  return next;
}

FpProject *
fp_set_out_remove (const FpScene *scene, const char *id, GError **error)
{
  guint n;
  Subject s;
  FpProject *project;

  if (!find_subject (scene, id, &s, error) || !must_stand (&s, error))
    return NULL;
  fp_scene_placed (scene, &n);
  project = fp_project_ref (s.project);
  for (guint i = 0; project != NULL && i < n; i++)
    {
      FpProject *next;
      if (s.placed[i].ghost || ((int) i != s.index && !stands_upon (s.placed, (int) i, s.index)))
        continue;
      next = take_away (&s, project, &s.placed[i], error);
      fp_project_unref (project);
      project = next != NULL ? leave_footpace (&s, next, &s.placed[i], error) : NULL;
    }
  return project;
}

/* What carried it is kept again too, where that was removed. */
static FpProject *
restore_with_supports (const Subject *s, GError **error)
{
  const FpAlternative *alternative = fp_project_alternative (s->project, s->alternative);
  FpProject *project = fp_project_with_fate (s->project, s->alternative, fp_item_id (s->item), FP_FATE_KEPT, NULL, NULL,
                                             error);
  const char *on = fp_item_on (s->item);

  while (project != NULL && on != NULL && fp_alternative_fate (alternative, on, NULL, NULL) == FP_FATE_REMOVED)
    {
      FpProject *next = fp_project_with_fate (project, s->alternative, on, FP_FATE_KEPT, NULL, NULL, error);
      fp_project_unref (project);
      project = next;
      on = fp_item_on (fp_project_find (s->project, s->alternative, on, NULL));
    }
  return project;
}

FpProject *
fp_set_out_restore (const FpScene *scene, const char *id, GError **error)
{
  Subject s;

  if (!find_subject (scene, id, &s, error))
    return NULL;
  if (!s.in_survey)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "%s: the survey holds no such thing to be kept", id);
      return NULL;
    }
  return restore_with_supports (&s, error);
}
