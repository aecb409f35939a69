/* SPDX-License-Identifier: GPL-3.0-or-later */
/* linen-words.c - the sentences by which cloths are bought, cut and made */
#include "linen-private.h"

#include "footpace/mensa.h"

#include <math.h>

static char *
told (const FpLinenPlan *self, double mm)
{
  return fp_length_format_unit (round (mm), fp_linen_units (self));
}

static char *
bare (const FpLinenPlan *self, double mm)
{
  return fp_length_format (round (mm), fp_linen_units (self));
}

static gboolean
is_older (const FpLinenPlan *self)
{
  return fp_project_brief (fp_scene_project (self->scene))->books != FP_BOOKS_NEWER;
}

/* --- what to buy -------------------------------------------------------------------- */

/* By the metre, or by the yard and its quarters. */
static char *
length_to_buy (const FpLinenPlan *self)
{
  static const char *const quarter[] = { "", " 1/4", " 1/2", " 3/4" };
  const double mm = fp_linen_plan_to_buy (self);
  const guint quarters = (guint) round (mm / (9 * FP_MM_PER_INCH));
  g_autofree char *metres = fp_number_format_rounded (mm / 1000, 1);

  if (fp_linen_units (self) == FP_UNITS_METRIC)
    return g_strdup_printf ("%s m", metres);
  if (quarters < 4)
    return g_strdup_printf ("%s yd", quarter[quarters] + 1);
  return g_strdup_printf ("%u%s yd", quarters / 4, quarter[quarters % 4]);
}

static char *
width_to_buy (const FpLinenPlan *self)
{
  g_autofree char *inches = fp_number_format_rounded (self->spec.bolt / FP_MM_PER_INCH, 1);

  return fp_linen_units (self) == FP_UNITS_METRIC ? told (self, self->spec.bolt) : g_strdup_printf ("%s in", inches);
}

static char *
how_short (const FpLinenPlan *self)
{
  g_autofree char *bound = told (self, ceil (self->layout->bound));

  return self->layout->least ? g_strdup ("no layout takes less")
                             : g_strdup_printf ("a shorter layout is not excluded; none takes less than %s", bound);
}

static char *
loses (const FpLinenPlan *self)
{
  g_autofree char *warp = fp_number_format_rounded (self->spec.shrinkage.warp * 100.0, 2);
  g_autofree char *weft = fp_number_format_rounded (self->spec.shrinkage.weft * 100.0, 2);

  if (!(self->spec.shrinkage.warp > 0) && !(self->spec.shrinkage.weft > 0))
    return g_strdup ("Nothing is allowed for what cloth loses when it is washed: wash the bolt before it is cut, or wash a piece and have the "
                     "sizes reckoned anew with what it lost.");
  return g_strdup_printf ("What the cloth loses when it is washed is in the pieces: %s %% along the bolt (the warp), %s %% across it (the "
                          "weft).", warp, weft);
}

/* It is of another linen than the rest; "" where there is none. */
static char *
cere_cloth_apart (const FpLinenPlan *self)
{
  for (guint i = 0; i < self->pieces->len; i++)
    if (g_str_equal (fp_linen_cloth (self, fp_linen_part (self, i)->cloth)->id, "cere-cloth"))
      {
        const FpBoltPlace *place = &self->layout->place[i];
        g_autofree char *size = fp_linen_size_text (self, place->along, place->across);

        return g_strdup_printf (" A cere cloth is of close, heavy linen: where this bolt is not, buy a piece of %s for it apart.", size);
      }
  return g_strdup ("");
}

char *
fp_linen_buy_text (const FpLinenPlan *self)
{
  g_autofree char *length = length_to_buy (self), *width = width_to_buy (self), *short_as = how_short (self), *lost = loses (self);
  g_autofree char *cut = told (self, ceil (self->layout->length)), *squaring = told (self, fp_linen_squaring (self));
  g_autofree char *apart = cere_cloth_apart (self);

  return g_strdup_printf ("Buy %s of linen %s wide, and %s more for trying first. %s of it are cut (%s), %s are for squaring the end. %s%s",
                          length, width, fp_linen_units (self) == FP_UNITS_METRIC ? "0.3 m" : "1/4 yd", cut, short_as, squaring, lost, apart);
}

/* --- how a cloth is made ------------------------------------------------------------- */

char *
fp_linen_hems_text (const FpLinenPlan *self, const FpCloth *cloth)
{
  const FpHems *hems = &cloth->hems;
  g_autofree char *ends = bare (self, hems->ends), *sides = bare (self, hems->sides), *in = bare (self, hems->turned_in);
  g_autofree char *turned = hems->turned_in > 0 ? g_strdup_printf (", %s turned in", in) : g_strdup (", turned once");

  return hems->ends == hems->sides ? g_strdup_printf ("%s all round%s", ends, turned)
                                   : g_strdup_printf ("%s at the ends, %s at the sides%s", ends, sides, turned);
}

static void
add_falls (const FpLinenPlan *self, const FpCloth *cloth, GString *out)
{
  g_autofree char *ends = told (self, cloth->falls), *front = told (self, cloth->front);

  if (cloth->falls > 0 && cloth->front > 0)
    g_string_append_printf (out, "Falls %s at either end and %s in front. ", ends, front);
  else if (cloth->falls > 0)
    g_string_append_printf (out, "Falls %s at either end. ", ends);
  else if (cloth->front > 0)
    g_string_append_printf (out, "Falls %s in front. ", front);
}

static void
add_notch (const FpLinenPlan *self, const FpCloth *cloth, GString *out)
{
  const FpBox *n = &cloth->notch;
  const gboolean back = n->y1 >= cloth->width - 1;
  g_autofree char *wide = told (self, n->x1 - n->x0), *deep = told (self, n->y1 - n->y0);
  g_autofree char *gospel = told (self, n->x0), *epistle = told (self, cloth->length - n->x1);
  g_autofree char *within = told (self, cloth->hems.sides + cloth->hems.turned_in);

  if (!fp_box_is_empty (n))
    g_string_append_printf (out, "Cut out at its %s: %s by %s, %s from the Gospel end and %s from the Epistle end, less %s on each side for "
                            "its hem. ", back ? "back" : "front", wide, deep, gospel, epistle, within);
}

char *
fp_linen_made_text (const FpLinenPlan *self, const FpCloth *cloth)
{
  GString *out = g_string_new (NULL);

  add_falls (self, cloth, out);
  add_notch (self, cloth, out);
  if (cloth->note != NULL)
    g_string_append (out, cloth->note);
  return g_strstrip (g_string_free (out, FALSE));
}

char *
fp_linen_silk_text (const FpLinenPlan *self, const FpCloth *cloth)
{
  const FpHems *hems = &cloth->hems;
  g_autofree char *name = fp_linen_cloth_name (cloth), *finished = fp_linen_size_text (self, cloth->length, cloth->width);
  g_autofree char *cut = fp_linen_size_text (self, fp_linen_cut (cloth->length, hems->ends, hems->turned_in, 0),
                                             fp_linen_cut (cloth->width, hems->sides, hems->turned_in, 0));
  g_autofree char *over = bare (self, hems->ends);

  name[0] = g_ascii_toupper (name[0]);
  return g_strdup_printf ("%s: %u; finished %s, cut %s with %s on every side to turn over, its lining as it is finished.%s%s",
                          name, cloth->number, finished, cut, over, cloth->note != NULL ? " " : "", cloth->note != NULL ? cloth->note : "");
}

/* --- too wide ------------------------------------------------------------------------ */

static double
needs (const FpLinenWide *wide)
{
  return MIN (wide->along_needs, wide->across_needs);
}

char *
fp_linen_wide_head (const FpLinenPlan *self)
{
  double widest = 0;

  for (guint i = 0; i < self->wide->len; i++)
    widest = MAX (widest, needs (&g_array_index (self->wide, FpLinenWide, i)));
  g_autofree char *all = told (self, ceil (widest)), *seam = told (self, FP_LINEN_SEAM), *bolt = width_to_buy (self);

  return g_strdup_printf ("Wider than this bolt of %s; one %s wide takes all. Or they are joined of widths, selvedge to selvedge, by seams that "
                          "run from end to end and are felled, with %s for them in each edge that is joined. The books that were read "
                          "say nothing of seams in altar linen: ask whoever has charge of the altar.", bolt, all, seam);
}

char *
fp_linen_wide_text (const FpLinenPlan *self, const FpLinenWide *wide)
{
  const FpCloth *cloth = fp_linen_cloth (self, wide->cloth);
  g_autofree char *name = fp_linen_cloth_name (cloth), *letter = fp_linen_letter (wide->cloth);
  g_autofree char *along = told (self, ceil (wide->along_needs)), *across = told (self, ceil (wide->across_needs));
  g_autofree char *each = fp_linen_size_text (self, wide->piece.along, wide->piece.across);
  g_autofree char *from = told (self, cloth->width / wide->widths);
  g_autofree char *number = cloth->number > 1 ? g_strdup_printf (", %u of them", cloth->number) : g_strdup ("");

  return g_strdup_printf ("%s  %s%s: needs a bolt %s wide, or %s laid across it; %s %u widths, each cut %s, a seam %s from the front edge%s.",
                          letter, name, number, along, across, wide->laid ? "cut here in" : "or joined of", wide->widths, each, from,
                          wide->widths > 2 ? " and as far from each other" : "");
}

/* --- where they stop ------------------------------------------------------------------- */

/* The names of gradines, or of what else stands fast on that altar; "". */
static char *
fast_on (const FpLinenPlan *self, guint altar, gboolean gradines)
{
  GString *out = g_string_new (NULL);
  guint n;
  const FpPlaced *placed = fp_scene_placed (self->scene, &n);

  for (guint i = 0; i < n; i++)
    {
      const FpRole role = fp_item_kind (placed[i].item)->role;
      if (!placed[i].ghost && placed[i].support == (int) altar && fp_mensa_holds_fast (role) && (role == FP_ROLE_GRADINE) == gradines)
        g_string_append_printf (out, "%s%s", out->len > 0 ? ", " : "", fp_item_name (placed[i].item));
    }
  return g_string_free (out, FALSE);
}

static char *
stops_text (const FpLinenPlan *self, guint altar)
{
  const FpPlaced *placed = &fp_scene_placed (self->scene, NULL)[altar];
  const FpBox *mensa = fp_box_is_empty (&placed->extent.bearing) ? &placed->extent.plan : &placed->extent.bearing;
  FpMensaFree free;
  const FpBox *f = &free.free, *cut = &free.notch;
  GString *out;

  fp_mensa_free (self->scene, altar, &free);
  if (!free.stops && fp_box_is_empty (cut))
    return NULL;
  g_autofree char *size = fp_linen_size_text (self, mensa->x1 - mensa->x0, mensa->y1 - mensa->y0), *gradine = fast_on (self, altar, TRUE);
  g_autofree char *other = fast_on (self, altar, FALSE);
  g_autofree char *deep = told (self, f->y1 - f->y0), *beside = told (self, free.beside);
  g_autofree char *left = told (self, MAX (cut->y0 - f->y0, f->y1 - cut->y1));

  out = g_string_new (NULL);
  g_string_append_printf (out, "%s: the mensa is %s.", fp_item_name (placed->item), size);
  if (free.stops)
    g_string_append_printf (out, " The cloths stop before what stands fast on it (%s), and cover the %s of its depth that are free.",
                            *gradine != '\0' ? gradine : other, deep);
  if (free.beside > 1)
    g_string_append_printf (out, " Beside it %s of the mensa stay bare at an end.", beside);
  if (!fp_box_is_empty (cut))
    g_string_append_printf (out, " They are cut out round what stands in their way (%s): when a cloth is washed, try it on the altar and mark "
                            "where; cut within the mark by what is told for the hem, snip into the corners, and hem. Or let all cloths be %s "
                            "deep and stop before it; the mensa beside it then stays bare.", *other != '\0' ? other : gradine, left);
  return g_string_free (out, FALSE);
}

GPtrArray *
fp_linen_stops_texts (const FpLinenPlan *self)
{
  GPtrArray *out = g_ptr_array_new_with_free_func (g_free);
  guint n;
  const FpPlaced *placed = fp_scene_placed (self->scene, &n);

  for (guint i = 0; i < n; i++)
    if (!placed[i].ghost && placed[i].standing != FP_STANDING_REMOVED && fp_item_kind (placed[i].item)->role == FP_ROLE_ALTAR)
      {
        char *text = stops_text (self, i);
        if (text != NULL)
          g_ptr_array_add (out, text);
      }
  return out;
}

/* --- in which order ----------------------------------------------------------------------- */

GPtrArray *
fp_linen_order_texts (const FpLinenPlan *self)
{
  static const char *const order[] = {
    "Try a piece first: wash it hotter than the cloth will be washed, measure what it loses along and across, and have the sizes "
    "reckoned anew with that.",
    "Draw a thread across the end of the bolt and cut along it. Then cut the pieces, each by a drawn thread; write on each its letter, "
    "and which way the warp runs.",
    "Wash all pieces as they will be washed, and press them.",
    "Turn in and hem to the finished size; where the cloth shrank otherwise than the tried piece, let the hem take up the difference.",
    "Lay each cloth on its altar, and press the folds where it goes over the edge.",
  };
  GPtrArray *out = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < G_N_ELEMENTS (order); i++)
    g_ptr_array_add (out, g_strdup_printf ("%u.  %s", i + 1, order[i]));
  if (is_older (self))
    g_ptr_array_add (out, g_strdup ("Linen or hemp only, where the older books are followed (decree of 15 May 1819, by the Catholic Encyclopedia I, "
                                     "Altar-Cloths)."));
  return out;
}
