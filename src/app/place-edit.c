/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "place-edit.h"

#include "outline-edit.h"
#include "typing.h"

#include "footpace/setting-out.h"

#include <string.h>

static const FpParam fields[FP_N_FIELDS] = {
  [FP_FIELD_ACROSS] = { "across", "Across (Epistle side +)", FP_PARAM_LENGTH, -FP_LENGTH_MAX, 0.0, FP_LENGTH_MAX },
  [FP_FIELD_ALONG] = { "along", "Along (east +)", FP_PARAM_LENGTH, -FP_LENGTH_MAX, 0.0, FP_LENGTH_MAX },
  [FP_FIELD_TURN] = { "turn", "Turned (to the left +)", FP_PARAM_ANGLE, -360.0, 0.0, 360.0 },
};
static const FpParam corner_fields[2] = {
  { "corner-across", "across", FP_PARAM_LENGTH, -FP_LENGTH_MAX, 0.0, FP_LENGTH_MAX },
  { "corner-along", "along", FP_PARAM_LENGTH, -FP_LENGTH_MAX, 0.0, FP_LENGTH_MAX },
};

const FpParam *
fp_place_field (FpPlaceField field)
{
  return &fields[field];
}

const FpParam *
fp_corner_field (gboolean along)
{
  return &corner_fields[along ? 1 : 0];
}

static double *
slot (FpPlace *place, FpPlaceField field)
{
  return field == FP_FIELD_ACROSS ? &place->x : field == FP_FIELD_ALONG ? &place->y : &place->turn;
}

double
fp_place_field_get (const FpPlace *place, FpPlaceField field)
{
  FpPlace copy = *place;

  return *slot (&copy, field);
}

void
fp_place_field_set (FpPlace *place, FpPlaceField field, double value)
{
  *slot (place, field) = value;
}

gboolean
fp_place_is_own (const FpScene *scene, const FpPlaced *placed)
{
  guint flags = fp_item_kind (placed->item)->flags, n;
  const FpPlaced *all = fp_scene_placed (scene, &n);

  if ((flags & FP_KIND_IN_WALL) != 0)
    return FALSE;
  if ((flags & FP_KIND_LAID_ROUND) == 0)
    return TRUE;
  for (guint i = 0; i < n; i++)
    if (!all[i].ghost && all[i].support >= 0 && &all[all[i].support] == placed)
      return FALSE;
  return TRUE;
}

static FpUnits
units_of (FpDocument *document)
{
  return fp_project_brief (fp_document_project (document))->units;
}

static gboolean
is_gone (const FpPlaced *placed, GError **error)
{
  if (placed != NULL)
    return FALSE;
  g_set_error (error, FP_ERROR, FP_ERROR_REFERENCE, "This thing is not there any more.");
  return TRUE;
}

/* What is shown may be rounded: the same text means the same value. */
static gboolean
read_field (const FpParam *field, double was, const char *text, FpUnits units, double *value, GError **error)
{
  g_autofree char *shown = fp_typing_show (field, was, units);

  *value = was;
  return strcmp (shown, text) == 0 || fp_typing_read (field, text, units, value, error);
}

FpPlace
fp_place_now (FpDocument *document, const FpPlaced *placed)
{
  const FpAlternative *alternative = fp_project_alternative (fp_document_project (document),
                                                             fp_document_alternative (document));
  FpPlace place;

  if (placed->in_survey && !placed->ghost
      && fp_alternative_fate (alternative, fp_item_id (placed->item), &place, NULL) == FP_FATE_MOVED)
    return place;
  return fp_item_place (placed->item);
}

gboolean
fp_place_enter (FpDocument *document, const char *id, FpPlaceField field, const char *text, GError **error)
{
  const FpPlaced *placed = fp_document_placed (document, id);
  FpPlace place;
  g_autofree char *label = NULL;

  if (is_gone (placed, error))
    return FALSE;
  place = fp_place_now (document, placed);
  if (!read_field (&fields[field], *slot (&place, field), text, units_of (document), slot (&place, field), error))
    return FALSE;
  label = g_strdup_printf ("Move %s", fp_item_name (placed->item));
  return fp_document_edit (document, fp_set_out_place (fp_document_base_scene (document), id, &place, error),
                           label, NULL);
}

gboolean
fp_corner_enter (FpDocument *document, const char *id, guint i, gboolean along, const char *text, GError **error)
{
  const FpPlaced *placed = fp_document_placed (document, id);
  g_autofree FpPoint *corner = NULL;
  g_autofree char *label = NULL;
  const FpPoint *was;
  double *value;
  guint n;

  if (is_gone (placed, error))
    return FALSE;
  was = fp_item_corners (placed->item, &n);
  if (i >= n)
    return !is_gone (NULL, error);
  corner = g_memdup2 (was, sizeof (FpPoint) * n);
  value = along ? &corner[i].y : &corner[i].x;
  if (!read_field (&corner_fields[along ? 1 : 0], *value, text, units_of (document), value, error))
    return FALSE;
  label = g_strdup_printf ("Corner of %s", fp_item_name (placed->item));
  return fp_document_edit (document, fp_outline_make (document, id, corner, n, error), label, NULL);
}

gboolean
fp_name_enter (FpDocument *document, const char *id, const char *text, GError **error)
{
  const FpPlaced *placed = fp_document_placed (document, id);

  if (is_gone (placed, error))
    return FALSE;
  if (strcmp (fp_item_name (placed->item), text) == 0)
    return TRUE;
  return fp_document_edit (document, fp_set_out_name (fp_document_base_scene (document), id, text, error), "Rename",
                           NULL);
}

gboolean
fp_support_enter (FpDocument *document, const char *id, const char *on, GError **error)
{
  const FpPlaced *placed = fp_document_placed (document, id);
  g_autofree char *label = NULL;

  if (is_gone (placed, error))
    return FALSE;
  label = g_strdup_printf ("Put %s elsewhere", fp_item_name (placed->item));
  return fp_document_edit (document,
                           fp_set_out_on (fp_document_base_scene (document), id, *on != '\0' ? on : NULL, error),
                           label, NULL);
}

/* Standing on itself, however indirectly, is no choice. */
static gboolean
is_carried_by (const FpPlaced *all, guint i, const FpPlaced *what)
{
  for (int at = (int) i; at >= 0; at = all[at].support)
    if (&all[at] == what)
      return TRUE;
  return FALSE;
}

static void
offer (GPtrArray *out, const char *id)
{
  const char *known = g_intern_string (id);

  if (!g_ptr_array_find (out, known, NULL))
    g_ptr_array_add (out, (gpointer) known);
}

static void
offer_role (GPtrArray *out, const FpScene *scene, const FpPlaced *placed, FpRole role)
{
  guint n;
  const FpPlaced *all = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    if (!all[i].ghost && fp_item_kind (all[i].item)->role == role && !is_carried_by (all, i, placed))
      offer (out, fp_item_id (all[i].item));
}

/* What stands on a mensa stands on any table: a tabernacle on a stand. */
static gboolean
needs_a_table (const FpRole *role)
{
  for (; role != NULL && *role != FP_ROLE_NONE; role++)
    if (*role == FP_ROLE_ALTAR)
      return TRUE;
  return FALSE;
}

GPtrArray *
fp_supports_new (const FpScene *scene, const FpPlaced *placed)
{
  GPtrArray *out = g_ptr_array_new ();
  const FpRole *roles = fp_item_kind (placed->item)->stands_on;

  for (const FpRole *role = roles; role != NULL && *role != FP_ROLE_NONE; role++)
    if (*role == FP_ROLE_FLOOR)
      offer (out, "");
    else
      offer_role (out, scene, placed, *role);
  if (needs_a_table (roles) && fp_item_kind (placed->item)->role != FP_ROLE_FRONTAL)
    offer_role (out, scene, placed, FP_ROLE_CREDENCE);
  if (placed->support >= 0)
    offer (out, fp_item_id (fp_scene_placed (scene, NULL)[placed->support].item));
  /* A crucifix in a foot of its own, a gradine built up from the floor: only what hangs, or is in a wall, needs something. */
  if (roles != NULL && (fp_item_kind (placed->item)->flags & FP_KIND_HUNG) == 0 && (placed->support < 0 || (fp_item_kind (placed->item)->flags & FP_KIND_IN_WALL) == 0))
    offer (out, "");
  return out;
}
