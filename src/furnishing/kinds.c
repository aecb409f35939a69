/* SPDX-License-Identifier: GPL-3.0-or-later */
/* kinds.c - the table of kinds, and what is asked of every kind alike */
#include "kind-private.h"

#include "footpace/error.h"

#include <math.h>
#include <string.h>

static const FpKind *const kinds[] = {
#define FP_KIND(name) &fp_kind_##name,
#include "kinds.list.h"
#undef FP_KIND
};

const FpKind *
fp_kind_find (const char *id)
{
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (g_strcmp0 (kinds[i]->id, id) == 0)
      return kinds[i];
  return NULL;
}

const FpKind *const *
fp_kinds (guint *n)
{
  *n = G_N_ELEMENTS (kinds);
  return kinds;
}

guint
fp_kind_n_params (const FpKind *kind)
{
  guint n = 0;

  while (kind->params != NULL && kind->params[n].id != NULL)
    n++;
  return n;
}

int
fp_kind_param_index (const FpKind *kind, const char *id)
{
  const guint n = fp_kind_n_params (kind);

  for (guint i = 0; i < n; i++)
    if (g_strcmp0 (kind->params[i].id, id) == 0)
      return (int) i;
  return -1;
}

void
fp_kind_defaults (const FpKind *kind, double *param)
{
  const guint n = fp_kind_n_params (kind);

  for (guint i = 0; i < n; i++)
    param[i] = kind->params[i].def;
}

FpSort
fp_kind_sort (const FpKind *kind)
{
  switch (kind->role)
    {
    case FP_ROLE_WALL: case FP_ROLE_OPENING: case FP_ROLE_PIER: case FP_ROLE_FLOOR: case FP_ROLE_STEPS:
    case FP_ROLE_GALLERY: case FP_ROLE_RAMP: case FP_ROLE_HANDRAIL: case FP_ROLE_SCREEN:
      return FP_SORT_BUILDING;
    case FP_ROLE_ALTAR: case FP_ROLE_FOOTPACE: case FP_ROLE_GRADINE: case FP_ROLE_TABERNACLE: case FP_ROLE_CRUCIFIX:
    case FP_ROLE_REREDOS: case FP_ROLE_ALTAR_CLOTHS: case FP_ROLE_FRONTAL: case FP_ROLE_TABERNACLE_VEIL:
    case FP_ROLE_ALTAR_CARDS: case FP_ROLE_MISSAL_STAND: case FP_ROLE_FLOWERS: case FP_ROLE_RELIQUARIES:
    case FP_ROLE_CANOPY: case FP_ROLE_STATUE:
      return FP_SORT_ALTAR;
    case FP_ROLE_CANDLES: case FP_ROLE_SANCTUS_CANDLE: case FP_ROLE_BRANCHED_LIGHTS: case FP_ROLE_SEVENTH_CANDLE:
    case FP_ROLE_SANCTUARY_LAMP: case FP_ROLE_PASCHAL_CANDLE: case FP_ROLE_PROCESSIONAL_CANDLES:
      return FP_SORT_LIGHTS;
    case FP_ROLE_SEDILIA: case FP_ROLE_CHAIR: case FP_ROLE_FALDSTOOL: case FP_ROLE_THRONE: case FP_ROLE_STOOLS:
    case FP_ROLE_CHOIR_STALLS:
      return FP_SORT_SEDILIA;
    case FP_ROLE_PEWS: case FP_ROLE_STANDING_ROOM: case FP_ROLE_WHEELCHAIR: case FP_ROLE_KNEELERS: case FP_ROLE_CHAIRS:
      return FP_SORT_SEATS;
    case FP_ROLE_CREDENCE: case FP_ROLE_AMBO: case FP_ROLE_RAIL: case FP_ROLE_HAND_BELL: case FP_ROLE_VESSELS:
    case FP_ROLE_AMBRY: case FP_ROLE_PISCINA: case FP_ROLE_FONT: case FP_ROLE_LECTERN: case FP_ROLE_PULPIT:
    case FP_ROLE_NONE: case FP_N_ROLES:
      break;
    }
  return FP_SORT_FURNITURE;
}

/* --- checks --------------------------------------------------------------- */

static char *
value_text (const FpParam *param, double value)
{
  if (!isfinite (value))
    return g_strdup ("not a number");

  g_autofree char *number = fp_number_format_rounded (param->type == FP_PARAM_SHARE ? value * 100 : value, 3);
  switch (param->type)
    {
    case FP_PARAM_LENGTH:
    case FP_PARAM_LEVEL:
      return g_strconcat (number, " mm", NULL);
    case FP_PARAM_ANGLE:
      return g_strconcat (number, "\302\260", NULL);
    case FP_PARAM_SHARE:
      return g_strconcat (number, " %", NULL);
    case FP_PARAM_COUNT:
    case FP_PARAM_CHOICE:
      break;
    }
  return g_steal_pointer (&number);
}

static gboolean
is_length_type (FpParamType type)
{
  return type == FP_PARAM_LENGTH || type == FP_PARAM_LEVEL;
}

static gboolean
is_whole_type (FpParamType type)
{
  return type == FP_PARAM_COUNT || type == FP_PARAM_CHOICE;
}

/* Written so that a NaN fails too. */
static gboolean
is_in_range (const FpParam *param, double value)
{
  return value >= param->min && value <= param->max;
}

gboolean
fp_param_check_in (const FpParam *param, double value, FpUnits units, GError **error)
{
  g_autofree char *found = NULL, *low = NULL, *high = NULL;
  const char *about = "";

  if (is_in_range (param, value) || !is_length_type (param->type) || !isfinite (value))
    return fp_param_check (param, value, error);
  found = fp_length_format_unit (value, units);
  low = fp_length_format_unit (param->min, units);
  high = fp_length_format_unit (param->max, units);
  /* Rounded, it would look like what it may be. */
  if (strcmp (found, low) == 0 || strcmp (found, high) == 0)
    about = value < param->min ? "a little less than " : "a little more than ";
  g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "%s is %s%s; it may be from %s to %s", param->label, about, found, low,
               high);
  return FALSE;
}

gboolean
fp_param_check (const FpParam *param, double value, GError **error)
{
  const gboolean in_range = is_in_range (param, value);

  if (in_range && !(is_whole_type (param->type) && value != floor (value)))
    return TRUE;

  g_autofree char *found = value_text (param, value);
  if (in_range)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "%s is %s; it must be a whole number", param->label, found);
      return FALSE;
    }
  g_autofree char *low = value_text (param, param->min);
  g_autofree char *high = value_text (param, param->max);
  g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "%s is %s; it may be from %s to %s", param->label, found, low, high);
  return FALSE;
}

/* --- names ---------------------------------------------------------------- */

static const struct { const char *id, *label; } focuses[FP_N_FOCUSES] = {
  [FP_FOCUS_MENSA] = { "mensa", "mensa" },
  [FP_FOCUS_HOST] = { "host", "raised Host" },
  [FP_FOCUS_CHALICE] = { "chalice", "raised chalice" },
  [FP_FOCUS_TABERNACLE] = { "tabernacle", "tabernacle" },
  [FP_FOCUS_CRUCIFIX] = { "crucifix", "crucifix" },
  [FP_FOCUS_AMBO] = { "ambo", "reader at the ambo" },
  [FP_FOCUS_CHAIR] = { "chair", "celebrant at the chair" },
  [FP_FOCUS_REREDOS] = { "reredos", "reredos" },
};

const char *
fp_focus_label (FpFocus focus)
{
  return focuses[focus].label;
}

const char *
fp_focus_id (FpFocus focus)
{
  return focuses[focus].id;
}

const char *
fp_posture_label (FpPosture posture)
{
  static const char *const label[FP_N_POSTURES] = {
    [FP_POSTURE_SITTING] = "sitting", [FP_POSTURE_KNEELING] = "kneeling", [FP_POSTURE_STANDING] = "standing",
  };

  return label[posture];
}

/* --- surfaces ------------------------------------------------------------- */

static void
clear_surface (gpointer data)
{
  g_free (((FpSurface *) data)->outline);
}

GArray *
fp_surfaces_new (void)
{
  GArray *surfaces = g_array_new (FALSE, FALSE, sizeof (FpSurface));

  g_array_set_clear_func (surfaces, clear_surface);
  return surfaces;
}

void
fp_surfaces_add (GArray *surfaces, FpFloorUse use, const FpPoint *outline, guint n, double z, double gx, double gy)
{
  FpSurface surface = { .use = use, .n_outline = n, .z = z, .gx = gx, .gy = gy };

  if (n < 3)
    return;
  surface.outline = g_memdup2 (outline, n * sizeof *outline);
  g_array_append_val (surfaces, surface);
}
