/* SPDX-License-Identifier: GPL-3.0-or-later */
/* linen-plan.c - the cloths of an alternative, laid out on one bolt, in words and as a table */
#include "linen-private.h"

#include "csv.h"

#include "footpace/error.h"

#include <math.h>

/* --- made -------------------------------------------------------------------------- */

static gboolean
is_shrinkage (double share)
{
  return share >= 0.0 && share <= FP_SHRINKAGE_MAX;
}

static gboolean
check (const FpLinenSpec *spec, const GArray *cloths, GError **error)
{
  if (!is_shrinkage (spec->shrinkage.warp) || !is_shrinkage (spec->shrinkage.weft))
    g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "cloth shrinks by 0 to %g per cent", FP_SHRINKAGE_MAX * 100.0);
  else if (!(spec->bolt > 0.0) || !isfinite (spec->bolt))
    g_set_error_literal (error, FP_ERROR, FP_ERROR_RANGE, "the bolt has no width");
  else if (cloths->len == 0)
    g_set_error_literal (error, FP_ERROR, FP_ERROR_RANGE, "there is no altar, credence or rail for which cloths are cut");
  else
    return TRUE;
  return FALSE;
}

/* The first that goes on the bolt neither way; -1. */
static int
too_wide (const FpLinenPlan *self)
{
  for (guint i = 0; i < self->pieces->len; i++)
    {
      const FpBoltPiece *piece = &g_array_index (self->pieces, FpBoltPiece, i);

      if (piece->across > self->spec.bolt && piece->turned_across > self->spec.bolt)
        return (int) i;
    }
  return -1;
}

static gboolean
lay_out (FpLinenPlan *self, GError **error)
{
  const int wide = too_wide (self);

  if (wide >= 0)
    {
      const FpBoltPiece *piece = &g_array_index (self->pieces, FpBoltPiece, (guint) wide);
      g_autofree char *name = fp_linen_piece_name (self, (guint) wide);
      g_autofree char *least = fp_length_format_unit (ceil (MIN (piece->across, piece->turned_across)),
                                                      fp_project_brief (fp_scene_project (self->scene))->units);

      g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "%s is wider than the bolt; it needs one of %s at least", name, least);
      return FALSE;
    }
  self->layout = fp_bolt_lay_out ((const FpBoltPiece *) (gconstpointer) self->pieces->data, self->pieces->len,
                                  self->spec.bolt, error);
  return self->layout != NULL;
}

FpLinenPlan *
fp_linen_plan_new (const FpScene *scene, const FpLinenSpec *spec, GError **error)
{
  g_autoptr (FpLinenPlan) self = g_new0 (FpLinenPlan, 1);

  self->scene = fp_scene_ref (scene);
  self->spec = *spec;
  self->cloths = fp_linen_cloths (scene, fp_project_brief (fp_scene_project (scene))->books);
  if (!check (spec, self->cloths, error))
    return NULL;
  self->pieces = fp_linen_pieces (self->cloths, &spec->shrinkage);
  return lay_out (self, error) ? g_steal_pointer (&self) : NULL;
}

void
fp_linen_plan_free (FpLinenPlan *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->cloths, g_array_unref);
  g_clear_pointer (&self->pieces, g_array_unref);
  fp_bolt_layout_free (self->layout);
  fp_scene_unref (self->scene);
  g_free (self);
}

const GArray *
fp_linen_plan_cloths (const FpLinenPlan *self)
{
  return self->cloths;
}

const FpBoltLayout *
fp_linen_plan_layout (const FpLinenPlan *self)
{
  return self->layout;
}

/* --- names ------------------------------------------------------------------------- */

const FpCloth *
fp_linen_cloth_of (const FpLinenPlan *self, guint piece, guint *copy)
{
  guint i = 0;
  const FpCloth *cloth = &g_array_index (self->cloths, FpCloth, 0);

  for (; piece >= cloth->number; cloth = &g_array_index (self->cloths, FpCloth, ++i))
    piece -= cloth->number;
  *copy = piece;
  return cloth;
}

char *
fp_linen_piece_name (const FpLinenPlan *self, guint piece)
{
  guint copy;
  const FpCloth *cloth = fp_linen_cloth_of (self, piece, &copy);
  const char *of = fp_item_name (cloth->placed->item);

  if (cloth->number > 1)
    return g_strdup_printf ("%s %u, %s", cloth->label, copy + 1, of);
  return g_strdup_printf ("%s, %s", cloth->label, of);
}

char *
fp_linen_size_text (const FpLinenPlan *self, double length, double width)
{
  const FpUnits units = fp_project_brief (fp_scene_project (self->scene))->units;
  g_autofree char *along = fp_length_format (round (length), units), *across = fp_length_format (round (width), units);

  return g_strdup_printf ("%s × %s", along, across);
}

/* --- told ---------------------------------------------------------------------------- */

static void
add_piece (const FpLinenPlan *self, guint i, GString *out)
{
  guint copy;
  const FpCloth *cloth = fp_linen_cloth_of (self, i, &copy);
  const FpBoltPlace *place = &self->layout->place[i];
  g_autofree char *name = fp_linen_piece_name (self, i);
  g_autofree char *cut = fp_linen_size_text (self, place->turned ? place->across : place->along,
                                             place->turned ? place->along : place->across);
  g_autofree char *finished = fp_linen_size_text (self, cloth->length, cloth->width);
  g_autofree char *at = fp_linen_size_text (self, place->y, place->x);

  g_string_append_printf (out, "  %-36s cut %-16s finished %-16s at %s%s\n", name, cut, finished, at,
                          place->turned ? ", across the bolt" : "");
}

char *
fp_linen_plan_text (const FpLinenPlan *self)
{
  const FpUnits units = fp_project_brief (fp_scene_project (self->scene))->units;
  GString *out = g_string_new (NULL);
  g_autofree char *length = fp_length_format_unit (ceil (self->layout->length), units);
  g_autofree char *width = fp_length_format_unit (self->spec.bolt, units);
  g_autofree char *bound = fp_length_format_unit (ceil (self->layout->bound), units);
  g_autofree char *warp = fp_number_format (self->spec.shrinkage.warp * 100.0);
  g_autofree char *weft = fp_number_format (self->spec.shrinkage.weft * 100.0);

  g_string_append_printf (out, "Of a bolt %s wide %s are cut; %s. Shrinkage %s %% along, %s %% across.\n", width, length,
                          self->layout->least ? "no layout takes less" : "a shorter layout is not excluded", warp, weft);
  if (!self->layout->least)
    g_string_append_printf (out, "No layout takes less than %s.\n", bound);
  for (guint i = 0; i < self->pieces->len; i++)
    add_piece (self, i, out);
  g_string_append_printf (out, "\n%s\n", FP_LINEN_CAUTION);
  return g_string_free (out, FALSE);
}

/* --- as a table ------------------------------------------------------------------------ */

static void
add_number (GString *out, double value)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  g_string_append_printf (out, ",%s", g_ascii_formatd (text, sizeof text, "%.1f", value));
}

char *
fp_linen_plan_csv (const FpLinenPlan *self)
{
  GString *out = g_string_new ("piece,finished_length,finished_width,cut_along,cut_across,at_along,at_across,turned,source\r\n");

  for (guint i = 0; i < self->pieces->len; i++)
    {
      guint copy;
      const FpCloth *cloth = fp_linen_cloth_of (self, i, &copy);
      const FpBoltPlace *place = &self->layout->place[i];
      g_autofree char *name = fp_linen_piece_name (self, i);
      const double value[] = { cloth->length, cloth->width, place->along, place->across, place->y, place->x };

      fp_csv_add_quoted (out, name);
      for (guint k = 0; k < G_N_ELEMENTS (value); k++)
        add_number (out, value[k]);
      g_string_append (out, place->turned ? ",yes," : ",no,");
      fp_csv_add_quoted (out, cloth->source);
      g_string_append (out, "\r\n");
    }
  return g_string_free (out, FALSE);
}
