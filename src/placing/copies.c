/* SPDX-License-Identifier: GPL-3.0-or-later */
/* copies.c - the like of things set out on the other side, farther on, or in another alternative */
#include "footpace/arrange.h"

#include "chosen.h"
#include "wall-spot.h"

#include "footpace/setting-out.h"

#include <math.h>
#include <string.h>

/* How the places of the copies follow from those of the things: about the axis first, then moved. */
typedef struct
{
  gboolean mirrored;
  FpVec3   by;
  gboolean numbered; /* a copy whose name is taken gets a number: rows of the like could not be told apart */
} Way;

typedef struct
{
  const Chosen *chosen;
  GArray       *all;    /* of int: chosen and carried, supports first        */
  guint         alternative; /* to which furnishings are added               */
  GHashTable   *new_id; /* of a copied thing by its old one                  */
} Copying;

static FpPlace
sent (const Way *way, FpPlace place)
{
  if (way->mirrored)
    place = (FpPlace) { 0.0 - place.x, place.y, place.turn != 0 ? -place.turn : 0 };
  place.x += way->by.x;
  place.y += way->by.y;
  return place;
}

/* --- what a mirror does to the thing itself ------------------------------- */

/* The other way about, so that the thickness of a wall stays on its outer side. */
static FpPoint *
corners_mirrored (const FpPoint *corner, guint n)
{
  FpPoint *out = g_new (FpPoint, MAX (n, 1));

  for (guint i = 0; i < n; i++)
    out[i] = (FpPoint) { 0.0 - corner[n - 1 - i].x, corner[n - 1 - i].y };
  return out;
}

static char *
name_mirrored (const char *name)
{
  static const char *const sides[] = { "Gospel side", "Epistle side" };

  for (guint i = 0; name != NULL && i < 2; i++)
    {
      const char *at = strstr (name, sides[i]);
      if (at != NULL)
        return g_strdup_printf ("%.*s%s%s", (int) (at - name), name, sides[1 - i], at + strlen (sides[i]));
    }
  return g_strdup (name);
}

/* In a wall whose corners now run the other way. */
static void
opening_mirrored (const FpPlaced *opening, const FpPlaced *wall, double *param)
{
  const FpKind *kind = fp_item_kind (opening->item);
  const int side = fp_kind_param_index (kind, "side"), along = fp_kind_param_index (kind, "along");
  const guint n = wall->form.n_corners, old = (guint) param[side] - 1;
  const FpPoint a = wall->form.corner[old], b = wall->form.corner[(old + 1) % n];

  /* The side that closes the run joins the same two corners as before. */
  param[side] = old + 1 == n ? n : n - 1 - old;
  param[along] = hypot (b.x - a.x, b.y - a.y) - param[along];
}

/* In the same wall, at the spot where it is sent. */
static void
opening_sent (const FpPlaced *opening, const FpPlaced *wall, const Way *way, double *param)
{
  const FpKind *kind = fp_item_kind (opening->item);
  const FpPlace to = sent (way, opening->place);

  wall_spot (wall, (FpPoint) { to.x, to.y }, fp_item_param (opening->item, "width"),
             &param[fp_kind_param_index (kind, "side")], &param[fp_kind_param_index (kind, "along")]);
}

/* --- one copy ------------------------------------------------------------- */

static char *
stem_of (const char *id)
{
  gsize n = strlen (id);

  while (n > 0 && g_ascii_isdigit (id[n - 1]))
    n--;
  return n > 1 && n < strlen (id) && id[n - 1] == '-' ? g_strndup (id, n - 1) : g_strdup (id);
}

static gboolean
lies_on (const FpPlaced *support, const FpPlaced *thing, FpPlace church)
{
  const FpBox *bearing = &support->extent.bearing, *plan = &thing->extent.plan;

  for (guint i = 0; i < 4; i++)
    {
      const FpPoint corner = { i & 1 ? plan->x0 : plan->x1, i & 2 ? plan->y0 : plan->y1 };
      const FpPoint p = fp_place_unpoint (&support->place, fp_place_point (&church, corner));
      if (p.x < bearing->x0 - 1 || p.x > bearing->x1 + 1 || p.y < bearing->y0 - 1 || p.y > bearing->y1 + 1)
        return FALSE;
    }
  return TRUE;
}

/* The copy of its support, else the same support where the copy comes to lie on it, else the floor. */
static const char *
support_of_copy (const Copying *c, const FpPlaced *thing, FpPlace church, const FpScene *now)
{
  const char *on = thing->support >= 0 ? fp_item_id (c->chosen->placed[thing->support].item) : NULL;
  const char *copied = on != NULL ? g_hash_table_lookup (c->new_id, on) : NULL;
  const int there = on != NULL ? fp_scene_find (now, on) : -1;

  if (copied != NULL || on == NULL)
    return copied;
  if (there < 0)
    return NULL;
  if (fp_item_kind (thing->item)->flags & FP_KIND_IN_WALL)
    return on;
  return lies_on (&fp_scene_placed (now, NULL)[there], thing, church) ? on : NULL;
}

static FpPlace
place_of_copy (const FpScene *now, const FpPlaced *thing, const char *on, FpPlace church)
{
  const FpKind *kind = fp_item_kind (thing->item);

  if (on == NULL || (kind->flags & (FP_KIND_ON_FLOOR | FP_KIND_IN_WALL)) != 0)
    return church;
  return fp_scene_place_on (now, fp_scene_find (now, on), kind, &thing->extent.plan, church);
}

/* Floors and galleries have a level of their own, walls that of their foot; all else stands where it stands. */
static gboolean
raise_by (const FpItemInit *init, double by, double *param, GError **error)
{
  static const char *const names[] = { "level", "base" };

  for (guint i = 0; by != 0 && i < G_N_ELEMENTS (names); i++)
    {
      const int at = fp_kind_param_index (init->kind, names[i]);

      if (at >= 0)
        {
          param[at] += by;
          return TRUE;
        }
    }
  if (by != 0)
    g_set_error (error, FP_ERROR, FP_ERROR_INVALID, "%s has no level of its own to be raised: it stands on what is "
                 "beneath it", init->name != NULL ? init->name : init->kind->label);
  return by == 0;
}

/* --- names of the like ------------------------------------------------------ */

static gboolean
is_taken (const FpScene *scene, const char *name)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    if (strcmp (fp_item_name (placed[i].item), name) == 0)
      return TRUE;
  return FALSE;
}

/* "Pier 2" is one of the piers, and so is "Pier"; a longer number is a year. */
static char *
without_number (const char *name)
{
  const gsize length = strlen (name);
  gsize digits = 0;

  while (digits < length && g_ascii_isdigit (name[length - 1 - digits]))
    digits++;
  if (digits == 0 || digits > 3 || digits + 1 >= length || name[length - 1 - digits] != ' ')
    return g_strdup (name);
  return g_strndup (name, length - digits - 1);
}

/* The next that is free; NULL: none is needed.  The caller's. */
static char *
name_numbered (const FpItem *item, const FpScene *scene)
{
  g_autofree char *stem = without_number (fp_item_name (item));

  if (!is_taken (scene, fp_item_name (item)))
    return NULL;
  for (guint k = 2;; k++)
    {
      g_autofree char *name = g_strdup_printf ("%s %u", stem, k);

      if (!is_taken (scene, name))
        return g_steal_pointer (&name);
    }
}

static char *
name_of_copy (const FpItem *item, const FpItemInit *init, const FpScene *now, const Way *way)
{
  char *numbered = way->numbered ? name_numbered (item, now) : NULL;

  if (numbered != NULL)
    return numbered;
  return way->mirrored ? name_mirrored (init->name) : g_strdup (init->name);
}

static FpProject *
add_copy (const Copying *c, const FpProject *project, FpItemInit *init, GError **error)
{
  g_autoptr (FpItem) item = fp_item_new (init, error);

  if (item == NULL)
    return NULL;
  return init->kind->flags & FP_KIND_SURVEY ? fp_project_with_survey_item (project, item, error)
         : fp_project_with_item (project, c->alternative, item, error);
}

static FpProject *
copy_one (const Copying *c, const FpProject *project, const FpPlaced *thing, const Way *way, GError **error)
{
  g_autoptr (FpScene) now = fp_scene_new (project, c->alternative);
  const FpPlace church = sent (way, thing->place);
  const char *on = support_of_copy (c, thing, church, now);
  g_autofree char *stem = stem_of (fp_item_id (thing->item)), *name = NULL;
  g_autofree FpPoint *corner = NULL;
  char *id = fp_project_free_id (project, stem);
  double param[FP_PARAM_MAX];
  FpItemInit init;

  fp_item_init_from (thing->item, &init);
  memcpy (param, init.param, fp_kind_n_params (init.kind) * sizeof *param);
  name = name_of_copy (thing->item, &init, now, way);
  if (way->mirrored && init.n_corners > 0)
    init.corner = corner = corners_mirrored (init.corner, init.n_corners);
  if (init.kind->flags & FP_KIND_IN_WALL && thing->support >= 0)
    {
      const FpPlaced *wall = &c->chosen->placed[thing->support];
      if (!chosen_carries (c->chosen, thing->support))
        opening_sent (thing, wall, way, param);
      else if (way->mirrored)
        opening_mirrored (thing, wall, param);
    }
  if ((thing->support < 0 || !chosen_carries (c->chosen, thing->support)) && !raise_by (&init, way->by.z, param, error))
    {
      g_free (id);
      return NULL;
    }
  init.id = id;
  init.name = name;
  init.on = on;
  init.param = param;
  init.place = place_of_copy (now, thing, on, church);
  g_hash_table_insert (c->new_id, g_strdup (fp_item_id (thing->item)), id);
  return add_copy (c, project, &init, error);
}

/* --- all of them ---------------------------------------------------------- */

static void
copying_init (Copying *c, const Chosen *chosen, guint alternative)
{
  *c = (Copying) { chosen, chosen_with_carried (chosen), alternative,
                   g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free) };
}

static void
copying_clear (Copying *c)
{
  g_clear_pointer (&c->all, g_array_unref);
  g_clear_pointer (&c->new_id, g_hash_table_unref);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Copying, copying_clear)

static FpProject *
copy_all (const Copying *c, const FpProject *project, const Way *way, GError **error)
{
  FpProject *next = fp_project_ref (project);

  g_hash_table_remove_all (c->new_id);
  for (guint i = 0; next != NULL && i < c->all->len; i++)
    {
      g_autoptr (FpProject) before = next;

      next = copy_one (c, before, &c->chosen->placed[g_array_index (c->all, int, i)], way, error);
    }
  return next;
}

static void
note_made (const Copying *c, GPtrArray *made)
{
  for (guint i = 0; i < c->chosen->n; i++)
    {
      const char *old = fp_item_id (c->chosen->placed[c->chosen->index[i]].item);
      g_ptr_array_add (made, g_strdup (g_hash_table_lookup (c->new_id, old)));
    }
}

static void
give_made (GPtrArray *ids, char ***made)
{
  if (made == NULL)
    return;
  g_ptr_array_add (ids, NULL);
  *made = g_strdupv ((char **) ids->pdata);
}

FpProject *
fp_arrange_repeat (const FpScene *scene, const char *const *ids, FpVec3 by, guint times, char ***made, GError **error)
{
  g_autoptr (GPtrArray) all = g_ptr_array_new_with_free_func (g_free);
  g_auto (Chosen) chosen = { 0 };
  g_auto (Copying) c = { 0 };
  FpProject *project;

  if (times < 1 || times > 100)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "%u is not from 1 to 100 times.", times);
      return NULL;
    }
  if (!chosen_init (&chosen, scene, ids, 1, error))
    return NULL;
  copying_init (&c, &chosen, fp_scene_alternative (scene));
  project = fp_project_ref (fp_scene_project (scene));
  for (guint k = 1; project != NULL && k <= times; k++)
    {
      g_autoptr (FpProject) before = project;
      const Way way = { FALSE, fp_vec3_scale (by, k), TRUE };

      project = copy_all (&c, before, &way, error);
      if (project != NULL)
        note_made (&c, all);
    }
  if (project != NULL)
    give_made (all, made);
  return project;
}

/* --- mirrored where it stands --------------------------------------------- */

static FpProject *
turn_over_corners (const FpScene *now, const FpPlaced *thing, FpPlace church, GError **error)
{
  g_autofree FpPoint *corner = NULL;
  g_autoptr (FpItem) item = NULL;
  FpItemInit init;

  fp_item_init_from (thing->item, &init);
  init.corner = corner = corners_mirrored (init.corner, init.n_corners);
  init.place = church;
  item = fp_item_new (&init, error);
  return item != NULL ? fp_project_with_survey_item (fp_scene_project (now), item, error) : NULL;
}

static FpProject *
mirror_in_wall (const FpScene *now, const FpPlaced *thing, GError **error)
{
  const FpPlaced *wall = &fp_scene_placed (now, NULL)[thing->support];
  const FpPlace to = sent (&(Way) { .mirrored = TRUE }, thing->place);
  double param[FP_PARAM_MAX];
  g_autoptr (FpItem) item = NULL;
  FpItemInit init;

  fp_item_init_from (thing->item, &init);
  memcpy (param, init.param, fp_kind_n_params (init.kind) * sizeof *param);
  wall_spot (wall, (FpPoint) { to.x, to.y }, fp_item_param (thing->item, "width"),
             &param[fp_kind_param_index (init.kind, "side")], &param[fp_kind_param_index (init.kind, "along")]);
  init.param = param;
  item = fp_item_new (&init, error);
  return item != NULL ? fp_project_with_survey_item (fp_scene_project (now), item, error) : NULL;
}

static gboolean
is_a_wall_with_openings (const FpPlaced *placed, guint n, int thing)
{
  for (guint i = 0; i < n; i++)
    if (!placed[i].ghost && placed[i].support == thing && fp_item_kind (placed[i].item)->flags & FP_KIND_IN_WALL)
      return TRUE;
  return FALSE;
}

/* Whether something else decides where it stands: what a footpace lies round, the wall that an opening is in. */
static gboolean
follows (const Chosen *chosen, int thing)
{
  for (guint i = 0; fp_item_kind (chosen->placed[thing].item)->flags & FP_KIND_LAID_ROUND && i < chosen->n_placed; i++)
    if (!chosen->placed[i].ghost && chosen->placed[i].support == thing)
      return TRUE;
  return FALSE;
}

static FpProject *
mirror_one (const FpScene *now, const Chosen *chosen, int thing, GError **error)
{
  const FpPlaced *was = &chosen->placed[thing];
  const char *id = fp_item_id (was->item);
  const FpPlace church = sent (&(Way) { .mirrored = TRUE }, was->place);
  const int index = fp_scene_find (now, id);
  const FpPlaced *placed = &fp_scene_placed (now, NULL)[index];
  FpPlace own = church;

  if (follows (chosen, thing))
    return fp_project_ref (fp_scene_project (now));
  if (fp_item_kind (was->item)->flags & FP_KIND_IN_WALL && placed->support >= 0)
    return mirror_in_wall (now, placed, error);
  if (was->form.n_corners > 0)
    return turn_over_corners (now, placed, church, error);
  if (placed->support >= 0 && !(fp_item_kind (was->item)->flags & FP_KIND_ON_FLOOR))
    own = fp_scene_place_on (now, placed->support, fp_item_kind (was->item), &placed->extent.plan, church);
  return fp_set_out_place (now, id, &own, error);
}

static FpProject *
mirror_where_they_stand (const FpScene *scene, const Chosen *chosen, GError **error)
{
  g_autoptr (GArray) all = chosen_with_carried (chosen);
  FpProject *project = fp_project_ref (fp_scene_project (scene));

  for (guint i = 0; project != NULL && i < all->len; i++)
    {
      g_autoptr (FpProject) before = project;
      g_autoptr (FpScene) now = fp_scene_new (before, fp_scene_alternative (scene));
      const int thing = g_array_index (all, int, i);

      project = NULL;
      if (!is_a_wall_with_openings (chosen->placed, chosen->n_placed, thing))
        project = mirror_one (now, chosen, thing, error);
      else
        g_set_error (error, FP_ERROR, FP_ERROR_INVALID, "%s has openings: set out its like on the other side, then "
                     "take this one away", fp_item_name (chosen->placed[thing].item));
    }
  return project;
}

FpProject *
fp_arrange_mirror (const FpScene *scene, const char *const *ids, gboolean copy, char ***made, GError **error)
{
  g_autoptr (GPtrArray) all = g_ptr_array_new_with_free_func (g_free);
  g_auto (Chosen) chosen = { 0 };
  g_auto (Copying) c = { 0 };
  FpProject *project;

  if (!chosen_init (&chosen, scene, ids, 1, error))
    return NULL;
  if (!copy)
    project = mirror_where_they_stand (scene, &chosen, error);
  else
    {
      copying_init (&c, &chosen, fp_scene_alternative (scene));
      project = copy_all (&c, fp_scene_project (scene), &(Way) { .mirrored = TRUE }, error);
      if (project != NULL)
        note_made (&c, all);
    }
  if (project != NULL)
    give_made (all, made);
  return project;
}

/* --- to another alternative ----------------------------------------------- */

/* What was measured is there already: it gets the same fate. */
static FpProject *
same_fate (const Copying *c, const FpProject *project, const FpPlaced *thing, GError **error)
{
  const char *id = fp_item_id (thing->item), *on = NULL;
  FpPlace moved = { 0, 0, 0 };
  const guint here = fp_scene_alternative (c->chosen->scene);
  const FpFate fate = fp_alternative_fate (fp_project_alternative (project, here), id, &moved, &on);

  if (on != NULL && fp_project_find (project, c->alternative, on, NULL) == NULL)
    on = g_hash_table_lookup (c->new_id, on);
  return fp_project_with_fate (project, c->alternative, id, fate, &moved, on, error);
}

FpProject *
fp_arrange_copy_to (const FpScene *scene, const char *const *ids, guint alternative, GError **error)
{
  static const Way stay = { FALSE, { 0, 0, 0 } };
  g_auto (Chosen) chosen = { 0 };
  g_auto (Copying) c = { 0 };
  FpProject *project;

  if (alternative == fp_scene_alternative (scene)
      || alternative >= fp_project_n_alternatives (fp_scene_project (scene)))
    {
      g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "There is no other alternative to copy to.");
      return NULL;
    }
  if (!chosen_init (&chosen, scene, ids, 1, error))
    return NULL;
  copying_init (&c, &chosen, alternative);
  project = fp_project_ref (fp_scene_project (scene));
  for (guint i = 0; project != NULL && i < c.all->len; i++)
    {
      g_autoptr (FpProject) before = project;
      const FpPlaced *thing = &chosen.placed[g_array_index (c.all, int, i)];

      project = thing->in_survey ? same_fate (&c, before, thing, error) : copy_one (&c, before, thing, &stay, error);
    }
  return project;
}
