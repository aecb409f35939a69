/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "draw-pew.h"

#include "asked.h"
#include "command.h"

#include "footpace/error.h"

#include <string.h>

#define STRIP  "strip"
#define PLACES "front, middle, back, side, gallery, standing, wheelchair, child, strip, or " FP_ASKED_SEAT

void
fp_draw_pew_clear (FpDrawPew *self)
{
  g_free (self->place);
  g_free (self->when);
  g_free (self->look);
}

gboolean
fp_draw_pew_is_strip (const FpDrawPew *self)
{
  return g_ascii_strcasecmp (self->place, STRIP) == 0;
}

/* --- as typed ------------------------------------------------------------------- */

static gboolean
find_typical (const char *text, FpPewTypical *one)
{
  for (guint i = 0; i < FP_N_PEW_TYPICAL; i++)
    if (g_ascii_strcasecmp (fp_pew_typical_id ((FpPewTypical) i), text) == 0)
      {
        *one = (FpPewTypical) i;
        return TRUE;
      }
  return FALSE;
}

static gboolean
wrong (const char *option, const char *value, const char *expected)
{
  fp_command_fail_value (option, value, expected);
  return FALSE;
}

gboolean
fp_draw_pew_check (const FpDrawPew *self)
{
  g_autofree char *block = NULL;
  FpPewTypical one;
  FpMoment moment;
  FpFocus focus;
  guint row, number;

  if (!fp_draw_pew_is_strip (self) && !find_typical (self->place, &one)
      && !fp_asked_seat (self->place, &block, &row, &number))
    return wrong ("--pew", self->place, PLACES);
  if (self->when != NULL && !fp_asked_moment ("--when", self->when, &moment))
    return FALSE;
  if (self->look != NULL && !fp_asked_focus ("--look", self->look, &focus))
    return FALSE;
  return TRUE;
}

/* --- drawn ------------------------------------------------------------------------ */

static gboolean
find_place (const FpDrawPew *self, const FpPeople *people, FpPewSpec *spec, GError **error)
{
  g_autofree char *block = NULL;
  FpPewTypical one;
  guint row, number;

  if (find_typical (self->place, &one))
    {
      if (fp_pew_typical_spec (people, one, spec))
        return TRUE;
      g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "there is no place “%s” in this alternative",
                   fp_pew_typical_id (one));
      return FALSE;
    }
  fp_asked_seat (self->place, &block, &row, &number);
  if (fp_pew_place_find (people, block, row, number, &spec->place))
    return TRUE;
  g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "there is no row %u with a seat %u%s%s%s", row, number,
               block != NULL ? " in “" : "", block != NULL ? block : "", block != NULL ? "”" : "");
  return FALSE;
}

static void
unref_sight (gpointer sight)
{
  fp_sight_unref (sight);
}

static GPtrArray *
strip_of (const FpProject *project, const FpSheetSpec *sheet)
{
  g_autoptr (GPtrArray) sights = g_ptr_array_new_with_free_func (unref_sight);

  for (guint i = 0; i < fp_project_n_alternatives (project); i++)
    {
      g_autoptr (FpScene) scene = fp_scene_new (project, i);
      g_autoptr (FpPeople) people = fp_people_new (scene);
      g_ptr_array_add (sights, fp_sight_new (people, NULL));
    }
  return fp_pew_strip_sheets ((FpSight *const *) sights->pdata, sights->len, sheet);
}

static void
unref_drawing (gpointer drawing)
{
  fp_drawing_unref (drawing);
}

GPtrArray *
fp_draw_pew_pages (const FpDrawPew *self, const FpScene *scene, const FpSheetSpec *sheet, GError **error)
{
  g_autoptr (FpPeople) people = NULL;
  g_autoptr (FpSight) sight = NULL;
  FpPewSpec spec = { 0 };
  GPtrArray *pages;

  if (fp_draw_pew_is_strip (self))
    return strip_of (fp_scene_project (scene), sheet);
  people = fp_people_new (scene);
  if (!find_place (self, people, &spec, error))
    return NULL;
  spec.moment = FP_MOMENT_OFFERTORY;
  if (self->when != NULL)
    fp_moment_find (self->when, &spec.moment);
  if (self->look != NULL)
    fp_asked_focus ("--look", self->look, &spec.focus);
  sight = fp_sight_new (people, NULL);
  pages = g_ptr_array_new_with_free_func (unref_drawing);
  g_ptr_array_add (pages, fp_pew_sheet_new (sight, &spec, sheet));
  return pages;
}
