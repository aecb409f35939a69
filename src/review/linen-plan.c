/* SPDX-License-Identifier: GPL-3.0-or-later */
/* linen-plan.c - the cloths of an alternative, laid out on one bolt */
#include "linen-private.h"

#include "footpace/error.h"

#include <math.h>

#define WIDTHS_MOST 8u /* of which a cloth is joined: with more it is another cloth */

/* --- what is asked ------------------------------------------------------------------- */

static gboolean
is_shrinkage (double share)
{
  return share >= 0.0 && share <= FP_SHRINKAGE_MAX;
}

static gboolean
check (const FpLinenSpec *spec, const GArray *cloths, FpUnits units, GError **error)
{
  if (!is_shrinkage (spec->shrinkage.warp) || !is_shrinkage (spec->shrinkage.weft))
    g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "cloth shrinks by 0 to %g per cent", FP_SHRINKAGE_MAX * 100.0);
  else if (!fp_works_length_check (FP_WORKS_BOLT, spec->bolt, "mm", units, error))
    return FALSE;
  else if (cloths->len == 0)
    g_set_error_literal (error, FP_ERROR, FP_ERROR_RANGE, "there is no altar, credence or rail for which cloths are cut");
  else
    return TRUE;
  return FALSE;
}

/* --- what is too wide ---------------------------------------------------------------- */

/* A cloth of so many widths: their seams run along the warp, from end to end. */
static FpBoltPiece
width_of (const FpCloth *cloth, const FpShrinkage *shrinkage, guint widths)
{
  FpBoltPiece piece = fp_linen_piece (cloth, shrinkage);
  const double seams = 2 * FP_LINEN_SEAM * (widths - 1);

  piece.across = (cloth->width + 2 * (cloth->hems.sides + cloth->hems.turned_in) + seams) / widths / (1 - shrinkage->weft);
  piece.turned_across = piece.turned_along = 0;
  return piece;
}

/* 0 where it is not too wide. */
static guint
widths_of (const FpLinenPlan *self, const FpCloth *cloth, FpLinenWide *wide)
{
  const FpShrinkage *shrinkage = &self->spec.shrinkage;
  const FpBoltPiece piece = fp_linen_piece (cloth, shrinkage);
  guint widths = 2;

  if (MIN (piece.across, piece.turned_across) <= self->spec.bolt)
    return 0;
  while (widths < WIDTHS_MOST && width_of (cloth, shrinkage, widths).across > self->spec.bolt)
    widths++;
  *wide = (FpLinenWide) {
    .along_needs = piece.across, .across_needs = piece.turned_across, .widths = widths, .piece = width_of (cloth, shrinkage, widths),
  };
  return widths;
}

/* --- what is cut ----------------------------------------------------------------------- */

static void
add_pieces (FpLinenPlan *self, guint which, guint widths, const FpBoltPiece *piece)
{
  for (guint i = 0; i < fp_linen_cloth (self, which)->number * widths; i++)
    {
      const FpLinenPart part = { which, i / widths, i % widths, widths };

      g_array_append_val (self->parts, part);
      g_array_append_val (self->pieces, *piece);
    }
}

static void
take_cloth (FpLinenPlan *self, guint which)
{
  const FpCloth *cloth = fp_linen_cloth (self, which);
  const FpBoltPiece piece = fp_linen_piece (cloth, &self->spec.shrinkage);
  FpLinenWide wide;
  const guint widths = widths_of (self, cloth, &wide);

  if (widths == 0)
    {
      add_pieces (self, which, 1, &piece);
      return;
    }
  wide.cloth = which;
  wide.laid = self->spec.join && wide.piece.across <= self->spec.bolt;
  g_array_append_val (self->wide, wide);
  if (wide.laid)
    add_pieces (self, which, widths, &wide.piece);
}

static gboolean
lay_out (FpLinenPlan *self, GError **error)
{
  for (guint i = 0; i < self->cloths->len; i++)
    take_cloth (self, i);
  if (self->pieces->len == 0)
    {
      g_autofree char *words = fp_linen_wide_text (self, &g_array_index (self->wide, FpLinenWide, 0));

      g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "no cloth goes on this bolt; %s", words);
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
  self->silks = fp_linen_silks (scene);
  self->wide = g_array_new (FALSE, FALSE, sizeof (FpLinenWide));
  self->parts = g_array_new (FALSE, FALSE, sizeof (FpLinenPart));
  self->pieces = g_array_new (FALSE, FALSE, sizeof (FpBoltPiece));
  return check (spec, self->cloths, fp_linen_units (self), error) && lay_out (self, error) ? g_steal_pointer (&self) : NULL;
}

void
fp_linen_plan_free (FpLinenPlan *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->cloths);
  g_array_unref (self->silks);
  g_array_unref (self->wide);
  g_array_unref (self->parts);
  g_array_unref (self->pieces);
  fp_bolt_layout_free (self->layout);
  fp_scene_unref (self->scene);
  g_free (self);
}

/* --- asked ----------------------------------------------------------------------------- */

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

guint
fp_linen_plan_too_wide (const FpLinenPlan *self)
{
  return self->wide->len;
}

double
fp_linen_plan_to_buy (const FpLinenPlan *self)
{
  const double step = fp_linen_units (self) == FP_UNITS_METRIC ? 100.0 : 9 * FP_MM_PER_INCH;

  return ceil ((self->layout->length + fp_linen_squaring (self)) / step - 1e-9) * step;
}

FpUnits
fp_linen_units (const FpLinenPlan *self)
{
  return fp_project_brief (fp_scene_project (self->scene))->units;
}

double
fp_linen_squaring (const FpLinenPlan *self)
{
  return fp_linen_units (self) == FP_UNITS_METRIC ? 50.0 : 2 * FP_MM_PER_INCH; /* design judgement */
}

/* --- names ------------------------------------------------------------------------------- */

char *
fp_linen_cloth_name (const FpCloth *cloth)
{
  const char *of = fp_item_name (cloth->placed->item);

  return g_ascii_strcasecmp (cloth->label, of) == 0 ? g_strdup (of) : g_strdup_printf ("%s, %s", cloth->label, of);
}

char *
fp_linen_piece_name (const FpLinenPlan *self, guint piece)
{
  const FpLinenPart *part = fp_linen_part (self, piece);
  const FpCloth *cloth = fp_linen_cloth (self, part->cloth);
  g_autofree char *number = cloth->number > 1 ? g_strdup_printf (" %u", part->copy + 1) : g_strdup ("");
  g_autofree char *width = part->widths > 1 ? g_strdup_printf (", width %u of %u", part->width + 1, part->widths) : g_strdup ("");

  return g_strdup_printf ("%s%s, %s%s", cloth->label, number, fp_item_name (cloth->placed->item), width);
}

char *
fp_linen_letter (guint cloth)
{
  const char last = (char) ('A' + cloth % 26);

  return cloth < 26 ? g_strdup_printf ("%c", last) : g_strdup_printf ("%c%c", 'A' + (cloth / 26 - 1) % 26, last);
}

char *
fp_linen_piece_letter (const FpLinenPlan *self, guint piece)
{
  const FpLinenPart *part = fp_linen_part (self, piece);
  g_autofree char *letter = fp_linen_letter (part->cloth);

  g_autofree char *number = fp_linen_cloth (self, part->cloth)->number > 1 ? g_strdup_printf ("%u", part->copy + 1) : g_strdup ("");

  return part->widths > 1 ? g_strdup_printf ("%s%s%c", letter, number, (char) ('a' + part->width % 26))
                          : g_strdup_printf ("%s%s", letter, number);
}

char *
fp_linen_size_text (const FpLinenPlan *self, double length, double width)
{
  const FpUnits units = fp_linen_units (self);
  g_autofree char *along = fp_length_format (round (length), units), *across = fp_length_format (round (width), units);

  return g_strdup_printf ("%s × %s", along, across);
}
