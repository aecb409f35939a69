/* SPDX-License-Identifier: GPL-3.0-or-later */
/* linen-text.c - the cutting of the linen in words, and as a table for other programs */
#include "linen-private.h"

#include "csv.h"

/* --- told ---------------------------------------------------------------------------- */

static void
add_piece (const FpLinenPlan *self, guint i, GString *out)
{
  const FpBoltPlace *place = &self->layout->place[i];
  g_autofree char *name = fp_linen_piece_name (self, i), *letter = fp_linen_piece_letter (self, i);
  g_autofree char *cut = fp_linen_size_text (self, place->along, place->across);
  g_autofree char *at = fp_linen_size_text (self, place->y, place->x);

  g_string_append_printf (out, "  %-4s %-40s cut %-18s at %s%s\n", letter, name, cut, at, place->turned ? ", its length across the bolt" : "");
}

static void
add_cloth (const FpLinenPlan *self, guint i, GString *out)
{
  const FpCloth *cloth = fp_linen_cloth (self, i);
  g_autofree char *letter = fp_linen_letter (i), *name = fp_linen_cloth_name (cloth);
  g_autofree char *finished = fp_linen_size_text (self, cloth->length, cloth->width), *hems = fp_linen_hems_text (self, cloth);
  g_autofree char *made = fp_linen_made_text (self, cloth);

  g_string_append_printf (out, "  %-4s %s: %u; finished %s; hem %s.%s%s\n       Size: %s.\n", letter, name, cloth->number, finished, hems,
                          *made != '\0' ? " " : "", made, cloth->source);
}

static void
add_texts (GString *out, GPtrArray *texts)
{
  for (guint i = 0; i < texts->len; i++)
    g_string_append_printf (out, "%s\n", (char *) g_ptr_array_index (texts, i));
  if (texts->len > 0)
    g_string_append_c (out, '\n');
  g_ptr_array_unref (texts);
}

static void
add_silks (const FpLinenPlan *self, GString *out)
{
  if (self->silks->len > 0)
    g_string_append (out, FP_LINEN_SILK_HEAD "\n");
  for (guint i = 0; i < self->silks->len; i++)
    {
      g_autofree char *text = fp_linen_silk_text (self, &g_array_index (self->silks, FpCloth, i));
      g_string_append_printf (out, "  %s\n", text);
    }
  if (self->silks->len > 0)
    g_string_append_c (out, '\n');
}

static void
add_wide (const FpLinenPlan *self, GString *out)
{
  g_autofree char *head = fp_linen_wide_head (self);

  if (self->wide->len > 0)
    g_string_append_printf (out, "%s\n", head);
  for (guint i = 0; i < self->wide->len; i++)
    {
      g_autofree char *text = fp_linen_wide_text (self, &g_array_index (self->wide, FpLinenWide, i));
      g_string_append_printf (out, "  %s\n", text);
    }
  if (self->wide->len > 0)
    g_string_append_c (out, '\n');
}

char *
fp_linen_plan_text (const FpLinenPlan *self)
{
  GString *out = g_string_new (NULL);
  g_autofree char *buy = fp_linen_buy_text (self);

  g_string_append_printf (out, "%s\n\n", buy);
  add_wide (self, out);
  add_texts (out, fp_linen_stops_texts (self));
  g_string_append (out, "Pieces, along the bolt × across it, and where each begins\n");
  for (guint i = 0; i < self->pieces->len; i++)
    add_piece (self, i, out);
  g_string_append (out, "\nCloths\n");
  for (guint i = 0; i < self->cloths->len; i++)
    add_cloth (self, i, out);
  g_string_append_c (out, '\n');
  add_silks (self, out);
  add_texts (out, fp_linen_order_texts (self));
  g_string_truncate (out, out->len - 1);
  return g_string_free (out, FALSE);
}

/* --- as a table ------------------------------------------------------------------------ */

static void
add_numbers (GString *out, const double *value, guint n)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];

  for (guint i = 0; i < n; i++)
    g_string_append_printf (out, ",%s", g_ascii_formatd (text, sizeof text, "%.1f", value[i]));
}

/* @place: NULL: it is on no bolt */
static void
add_line (GString *out, const char *name, const char *letter, const FpCloth *cloth, const FpBoltPlace *place)
{
  const double finished[] = { cloth->length, cloth->width };
  const double unlaid[] = { fp_linen_cut (cloth->length, cloth->hems.ends, cloth->hems.turned_in, 0),
                            fp_linen_cut (cloth->width, cloth->hems.sides, cloth->hems.turned_in, 0) };
  const double hems[] = { cloth->hems.ends, cloth->hems.sides, cloth->hems.turned_in };

  fp_csv_add_quoted (out, name);
  add_numbers (out, finished, 2);
  if (place != NULL)
    add_numbers (out, (const double[]) { place->along, place->across, place->y, place->x }, 4);
  else if (cloth->material == FP_MATERIAL_SILK)
    add_numbers (out, unlaid, 2);
  g_string_append (out, place != NULL ? place->turned ? ",yes," : ",no," : cloth->material == FP_MATERIAL_SILK ? ",,,," : ",,,,,,");
  fp_csv_add_quoted (out, cloth->source);
  add_numbers (out, hems, 3);
  g_string_append_printf (out, ",%s,%s\r\n", letter, cloth->material == FP_MATERIAL_SILK ? "silk" : "linen");
}

char *
fp_linen_plan_csv (const FpLinenPlan *self)
{
  GString *out = g_string_new ("piece,finished_length,finished_width,cut_along,cut_across,at_along,at_across,turned,source,hem_ends,"
                               "hem_sides,turned_in,letter,material\r\n");

  for (guint i = 0; i < self->pieces->len; i++)
    {
      g_autofree char *name = fp_linen_piece_name (self, i), *letter = fp_linen_piece_letter (self, i);
      add_line (out, name, letter, fp_linen_cloth (self, fp_linen_part (self, i)->cloth), &self->layout->place[i]);
    }
  for (guint i = 0; i < self->wide->len; i++)
    {
      const FpLinenWide *wide = &g_array_index (self->wide, FpLinenWide, i);
      g_autofree char *name = fp_linen_cloth_name (fp_linen_cloth (self, wide->cloth)), *letter = fp_linen_letter (wide->cloth);
      if (!wide->laid)
        add_line (out, name, letter, fp_linen_cloth (self, wide->cloth), NULL);
    }
  for (guint i = 0; i < self->silks->len; i++)
    {
      const FpCloth *cloth = &g_array_index (self->silks, FpCloth, i);
      g_autofree char *name = fp_linen_cloth_name (cloth);
      for (guint k = 0; k < cloth->number; k++)
        add_line (out, name, "", cloth, NULL);
    }
  return g_string_free (out, FALSE);
}
