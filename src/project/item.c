/* SPDX-License-Identifier: GPL-3.0-or-later */
/* item.c - one thing of a project */
#include "project-private.h"

#include <math.h>
#include <string.h>

struct _FpItem
{
  gatomicrefcount ref_count;
  const FpKind   *kind;
  char           *id;
  char           *name; /* NULL: the kind's label */
  char           *on;
  FpPlace         place;
  FpPoint        *corner;
  guint           n_corners;
  guint           n_params;
  FpWeight        weight;
  double          param[];
};

static gboolean
params_are_fair (const FpItemInit *init, GError **error)
{
  const guint n = fp_kind_n_params (init->kind);

  for (guint i = 0; i < n; i++)
    if (!fp_param_check (&init->kind->params[i], init->param[i], error))
      {
        g_prefix_error (error, "%s: ", init->id);
        return FALSE;
      }
  return TRUE;
}

static gboolean
relation_is_fair (const FpItemInit *init, GError **error)
{
  const FpForm form = { .param = init->param, .corner = init->corner, .n_corners = init->n_corners,
                        .core = FP_CORE_COMMON };
  g_autofree char *amiss = init->kind->amiss != NULL ? init->kind->amiss (&form) : NULL;

  if (amiss != NULL)
    g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "%s: %s", init->id, amiss);
  return amiss == NULL;
}

/* A run of walls may be closed by a parameter of its own. */
static gboolean
is_closed (const FpItemInit *init)
{
  const int closed = fp_kind_param_index (init->kind, "closed");

  return (init->kind->flags & FP_KIND_OUTLINE) != 0 || (closed >= 0 && init->param[closed] != 0);
}

static gboolean
corner_count_is_fair (const FpItemInit *init, GError **error)
{
  const gboolean drawn = (init->kind->flags & (FP_KIND_OUTLINE | FP_KIND_RUN)) != 0;
  const guint least = !drawn ? 0 : is_closed (init) ? 3 : 2;

  if (init->n_corners < least || (!drawn && init->n_corners > 0))
    g_set_error (error, FP_ERROR, FP_ERROR_GEOMETRY, drawn ? "%s: %u corners are given, at least %u are needed"
                 : "%s: %u corners are given, but this kind has none", init->id, init->n_corners, least);
  else if (init->n_corners > FP_CORNERS_MAX)
    g_set_error (error, FP_ERROR, FP_ERROR_LIMIT, "%s: %u corners are given, at most %d are taken",
                 init->id, init->n_corners, FP_CORNERS_MAX);
  else
    return TRUE;
  return FALSE;
}

static gboolean
outline_is_fair (const FpItemInit *init, GError **error)
{
  const gboolean closed = is_closed (init);
  FpPoint at;

  for (guint i = 0; i < init->n_corners; i++)
    if (!fp_coordinate_check (init->corner[i].x, init->id, "x of a corner", error)
        || !fp_coordinate_check (init->corner[i].y, init->id, "y of a corner", error))
      return FALSE;
  if (closed && fabs (fp_outline_area (init->corner, init->n_corners)) < 1.0)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_GEOMETRY, "%s: the outline encloses nothing", init->id);
      return FALSE;
    }
  if (closed ? fp_outline_crosses_itself (init->corner, init->n_corners, &at)
      : fp_run_crosses_itself (init->corner, init->n_corners, &at))
    {
      g_autofree char *x = fp_number_format_rounded (at.x, 1), *y = fp_number_format_rounded (at.y, 1);
      g_set_error (error, FP_ERROR, FP_ERROR_GEOMETRY, "%s: the outline crosses or touches itself at %s, %s",
                   init->id, x, y);
      return FALSE;
    }
  return TRUE;
}

static gboolean
is_fair (const FpItemInit *init, GError **error)
{
  if (!fp_id_check (init->id, init->kind->id, error))
    return FALSE;
  if (init->name != NULL && !fp_text_check (init->name, init->id, FALSE, error))
    return FALSE;
  if (init->on != NULL && !fp_id_check (init->on, init->id, error))
    return FALSE;
  if (init->on != NULL && strcmp (init->on, init->id) == 0)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "%s: it cannot stand on itself", init->id);
      return FALSE;
    }
  return fp_place_check (&init->place, init->id, error) && params_are_fair (init, error)
         && corner_count_is_fair (init, error) && (init->n_corners == 0 || outline_is_fair (init, error))
         && relation_is_fair (init, error);
}

FpItem *
fp_item_new (const FpItemInit *init, GError **error)
{
  FpItemInit full = *init;
  g_autofree double *defaults = NULL;
  guint n_params;
  FpItem *self;

  if (init->kind == NULL)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_KIND, "%s: its kind is not known", init->id != NULL ? init->id : "?");
      return NULL;
    }
  n_params = fp_kind_n_params (init->kind);
  if (init->param == NULL)
    {
      defaults = g_new0 (double, n_params + 1);
      fp_kind_defaults (init->kind, defaults);
      full.param = defaults;
    }
  if (!is_fair (&full, error))
    return NULL;

  self = g_malloc (sizeof (FpItem) + n_params * sizeof (double));
  g_atomic_ref_count_init (&self->ref_count);
  self->kind = full.kind;
  self->id = g_strdup (full.id);
  self->name = full.name != NULL && full.name[0] != '\0' ? g_strdup (full.name) : NULL;
  self->on = g_strdup (full.on);
  self->place = (FpPlace) { full.place.x + 0.0, full.place.y + 0.0, fp_turn_normal (full.place.turn) };
  self->corner = g_memdup2 (full.corner, full.n_corners * sizeof (FpPoint));
  self->n_corners = full.n_corners;
  self->n_params = n_params;
  for (guint i = 0; i < n_params; i++)
    self->param[i] = full.param[i] + 0.0; /* no -0: it is written as 0 */
  self->weight = fp_weight_of (self);
  return self;
}

FpItem *
fp_item_ref (const FpItem *self)
{
  FpItem *item = (FpItem *) self; /* the count is not part of the value */

  g_atomic_ref_count_inc (&item->ref_count);
  return item;
}

void
fp_item_unref (const FpItem *self)
{
  FpItem *item = (FpItem *) self;

  if (item == NULL || !g_atomic_ref_count_dec (&item->ref_count))
    return;
  g_free (item->id);
  g_free (item->name);
  g_free (item->on);
  g_free (item->corner);
  g_free (item);
}

const char *
fp_item_id (const FpItem *self)
{
  return self->id;
}

const FpKind *
fp_item_kind (const FpItem *self)
{
  return self->kind;
}

const char *
fp_item_name (const FpItem *self)
{
  return self->name != NULL ? self->name : self->kind->label;
}

gboolean
fp_item_has_name (const FpItem *self)
{
  return self->name != NULL;
}

const char *
fp_item_on (const FpItem *self)
{
  return self->on;
}

FpPlace
fp_item_place (const FpItem *self)
{
  return self->place;
}

const double *
fp_item_params (const FpItem *self)
{
  return self->param;
}

double
fp_item_param (const FpItem *self, const char *id)
{
  const int i = fp_kind_param_index (self->kind, id);

  g_return_val_if_fail (i >= 0, 0.0);
  return self->param[i];
}

const FpPoint *
fp_item_corners (const FpItem *self, guint *n)
{
  *n = self->n_corners;
  return self->corner;
}

FpWeight
fp_item_weight (const FpItem *self)
{
  return self->weight;
}

void
fp_item_init_from (const FpItem *self, FpItemInit *init)
{
  *init = (FpItemInit) { .id = self->id, .kind = self->kind, .name = self->name, .on = self->on,
                         .place = self->place, .param = self->param, .corner = self->corner,
                         .n_corners = self->n_corners };
}

static gboolean
same_numbers (const FpItem *a, const FpItem *b)
{
  if (a->place.x != b->place.x || a->place.y != b->place.y || a->place.turn != b->place.turn)
    return FALSE;
  for (guint i = 0; i < a->n_params; i++)
    if (a->param[i] != b->param[i])
      return FALSE;
  if (a->n_corners != b->n_corners)
    return FALSE;
  for (guint i = 0; i < a->n_corners; i++)
    if (a->corner[i].x != b->corner[i].x || a->corner[i].y != b->corner[i].y)
      return FALSE;
  return TRUE;
}

gboolean
fp_item_equal (const FpItem *a, const FpItem *b)
{
  return a == b
         || (a->kind == b->kind && g_strcmp0 (a->id, b->id) == 0 && g_strcmp0 (a->name, b->name) == 0
             && g_strcmp0 (a->on, b->on) == 0 && same_numbers (a, b));
}
