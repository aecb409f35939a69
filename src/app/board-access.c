/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-access.c - the board in words */
#include "board-view-private.h"
#include "things.h"

#include <math.h>

static char *
scale_text (double scale)
{
  return scale >= 10.0 ? g_strdup_printf ("1:%.0f", scale) : g_strdup_printf ("1:%.1f", scale);
}

static char *
place_text (FpBoardView *self, const FpPlaced *placed)
{
  FpUnits units = fp_board_view_units (self);
  g_autofree char *across = fp_length_format_unit (fabs (placed->place.x), units);
  g_autofree char *along = fp_length_format_unit (fabs (placed->place.y), units);
  g_autofree char *where = fp_thing_where (fp_document_scene (self->document), placed, units);
  const char *side = placed->place.x > 0.05 ? "to the Epistle side"
                     : placed->place.x < -0.05 ? "to the Gospel side" : NULL;

  if (side == NULL)
    return g_strdup_printf ("%s, on the axis, %s %s of the datum line", where, along,
                            placed->place.y < 0.0 ? "west" : "east");
  return g_strdup_printf ("%s, %s %s, %s %s of the datum line", where, across, side, along,
                          placed->place.y < 0.0 ? "west" : "east");
}

/* "Altar, Rail and 3 more" */
static char *
several_text (FpBoardView *self)
{
  const char *const *ids = fp_document_chosen_all (self->document);
  const guint n = fp_document_n_chosen (self->document), told = n <= 4 ? n : 3;
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < told; i++)
    g_string_append_printf (text, "%s%s", i == 0 ? "" : i + 1 == n ? " and " : ", ",
                            fp_item_name (fp_document_placed (self->document, ids[i])->item));
  if (told < n)
    g_string_append_printf (text, " and %u more", n - told);
  return g_string_free (text, FALSE);
}

/* In the place of the elevation. */
static gboolean
is_across (FpBoardView *self)
{
  return fp_board_view_cut (self, FP_VIEW_ELEVATION).placed;
}

static const char *
views_text (FpBoardView *self)
{
  switch (fp_board_view_only (self))
    {
    case FP_VIEW_ELEVATION: return is_across (self) ? "Section across" : "Elevation";
    case FP_VIEW_SECTION:   return "Section";
    case FP_VIEW_PLAN:      return "Plan";
    default:                return is_across (self) ? "Section across, section and plan" : "Elevation, section and plan";
    }
}

static void
add_handle (FpBoardView *self, char **text)
{
  g_autofree char *told = NULL, *handle = fp_board_view_handle_tells (self, self->handle);

  if (handle == NULL)
    return;
  told = *text;
  *text = g_strdup_printf ("%s In hand: %s.", told, handle);
}

static void
add_tape (FpBoardView *self, char **text)
{
  g_autofree char *told = *text, *words = NULL, *line = NULL;

  *text = NULL;
  if (fp_board_view_has_tape (self))
    {
      words = fp_board_view_tape_words (self);
      line = g_strdelimit (g_strdup (words != NULL ? words : "nothing is measured yet"), "\n", ',');
    }
  *text = line != NULL ? g_strdup_printf ("%s Tape: %s.", told, line) : g_strdup (told);
}

static void
add_shown_change (FpBoardView *self, char **text)
{
  g_autofree char *told = NULL, *line = NULL;

  if (fp_board_view_change (self) == NULL)
    return;
  told = *text;
  line = g_strdelimit (g_strdup (fp_board_view_change (self)), "\n", ',');
  *text = g_strdup_printf ("%s Drawn over it, not made: %s.", told, line);
}

void
fp_board_view_tell (FpBoardView *self)
{
  const FpPlaced *chosen = fp_document_chosen_placed (self->document);
  g_autoptr (GArray) things = fp_things_new (fp_document_scene (self->document));
  g_autofree char *text = NULL, *where = NULL;

  if (fp_document_n_chosen (self->document) > 1)
    {
      where = several_text (self);
      text = g_strdup_printf ("%s of %u things. %u chosen: %s.", views_text (self), things->len,
                              fp_document_n_chosen (self->document), where);
    }
  else if (chosen != NULL)
    {
      where = place_text (self, chosen);
      text = g_strdup_printf ("%s of %u things. Chosen: %s, %s.", views_text (self), things->len,
                              fp_item_name (chosen->item), where);
    }
  else
    text = g_strdup_printf ("%s of %u things. Nothing is chosen.", views_text (self), things->len);
  add_handle (self, &text);
  add_tape (self, &text);
  add_shown_change (self, &text);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
}

/* What the pointer is over, in the coordinates that its view shows. */
static char *
pointer_text (FpBoardView *self)
{
  FpUnits units = fp_board_view_units (self);
  FpPoint paper = fp_board_view_to_paper (self, self->pointer.x, self->pointer.y);

  for (guint v = 0; v < FP_N_VIEWS; v++)
    {
      const FpBox *f = &self->layout.frame[v];
      FpPoint p = fp_view_from_paper (&self->layout.view[v], paper);
      const gboolean mirrored = v == FP_VIEW_SECTION || fp_board_view_is_turned (self, (FpViewId) v);
      g_autofree char *h = fp_length_format (round (mirrored ? -p.x : p.x), units);
      g_autofree char *l = v == FP_VIEW_PLAN ? fp_length_format (round (p.y), units)
                           : fp_level_format (round (p.y), units);

      if (paper.x < f->x0 || paper.x > f->x1 || paper.y < f->y0 || paper.y > f->y1)
        continue;
      return v == FP_VIEW_PLAN ? g_strdup_printf ("x %s   y %s", h, l)
             : g_strdup_printf ("%s %s   level %s", v == FP_VIEW_SECTION ? "y" : "x", h, l);
    }
  return NULL;
}

void
fp_board_view_update_readout (FpBoardView *self)
{
  g_autofree char *scale = NULL, *pointer = NULL, *text = NULL;

  if (self->document != NULL && self->scale > 0.0)
    {
      scale = scale_text (self->scale);
      pointer = self->pointer.x >= 0.0 ? pointer_text (self) : NULL;
      text = pointer != NULL ? g_strdup_printf ("%s    %s", scale, pointer) : g_strdup (scale);
    }
  if (g_strcmp0 (text, self->readout) == 0)
    return;
  g_free (self->readout);
  self->readout = g_steal_pointer (&text);
  g_object_notify (G_OBJECT (self), "readout");
}
