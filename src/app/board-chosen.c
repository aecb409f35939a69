/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-chosen.c - several things at once on the board */
#include "board-view-private.h"
#include "things.h"

char **
fp_board_view_standing (FpBoardView *self)
{
  const FpScene *base = fp_document_base_scene (self->document);
  GPtrArray *ids = g_ptr_array_new ();

  for (const char *const *id = fp_document_chosen_all (self->document); *id != NULL; id++)
    if (fp_scene_find (base, *id) >= 0)
      g_ptr_array_add (ids, g_strdup (*id));
  g_ptr_array_add (ids, NULL);
  return (char **) g_ptr_array_free (ids, FALSE);
}

char *
fp_board_view_names (FpBoardView *self, const char *const *ids)
{
  const guint n = g_strv_length ((char **) ids);
  const FpPlaced *placed = n == 1 ? fp_document_placed (self->document, ids[0]) : NULL;

  return placed != NULL ? g_strdup (fp_item_name (placed->item)) : g_strdup_printf ("%u things", n);
}

/* --- by keys ---------------------------------------------------------------- */

static gboolean
shows (FpBoardView *self, const FpPlaced *placed)
{
  return fp_shows_thing (self->how.hidden, fp_item_kind (placed->item), placed->standing);
}

gboolean
fp_board_view_choose_next (FpBoardView *self, gboolean backward)
{
  const FpScene *scene = fp_document_scene (self->document);
  g_autoptr (GArray) things = fp_things_new (scene);
  const FpPlaced *placed = fp_scene_placed (scene, NULL), *chosen = fp_document_chosen_placed (self->document);
  const int step = backward ? -1 : 1;
  int at = backward ? (int) things->len : -1;

  for (guint i = 0; chosen != NULL && i < things->len; i++)
    if (&placed[g_array_index (things, FpThing, i).placed] == chosen)
      at = (int) i;
  for (at += step; at >= 0 && at < (int) things->len; at += step)
    {
      const FpPlaced *next = &placed[g_array_index (things, FpThing, at).placed];

      if (!shows (self, next))
        continue;
      fp_document_choose (self->document, fp_item_id (next->item));
      fp_board_view_reveal (self, fp_document_chosen_placed (self->document));
      return TRUE;
    }
  return FALSE;
}

void
fp_board_view_choose_all (FpBoardView *self)
{
  g_auto (GStrv) ids = fp_things_furnishings (fp_document_scene (self->document), self->how.hidden);

  fp_document_choose_all (self->document, (const char *const *) ids);
}

/* --- a frame ---------------------------------------------------------------- */

/* The tool's paper does not shift while it is panned; the drawing's does. */
FpBox
fp_board_view_from_steady (FpBoardView *self, FpBox steady)
{
  const double height = gtk_widget_get_height (GTK_WIDGET (self));
  const FpPoint a = fp_board_view_to_paper (self, steady.x0 * PX_PER_MM, height - steady.y0 * PX_PER_MM);
  const FpPoint b = fp_board_view_to_paper (self, steady.x1 * PX_PER_MM, height - steady.y1 * PX_PER_MM);

  return (FpBox) { a.x, a.y, b.x, b.y };
}

static void
add_those_drawn (FpBoardView *self, GPtrArray *out, FpViewId view, char **ids)
{
  for (; *ids != NULL; ids++)
    if (fp_board_view_is_drawn (self, *ids, view) && !g_ptr_array_find_with_equal_func (out, *ids, g_str_equal, NULL))
      g_ptr_array_add (out, *ids);
}

/* In each view that the frame touches, what lies wholly in it there. */
void
fp_board_view_choose_within (FpBoardView *self, FpBox steady, gboolean also)
{
  const FpBox paper = fp_board_view_from_steady (self, steady);
  const FpScene *scene = fp_document_scene (self->document);
  g_autoptr (GPtrArray) ids = g_ptr_array_new (), held = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);

  for (const char *const *id = fp_document_chosen_all (self->document); also && *id != NULL; id++)
    g_ptr_array_add (ids, (gpointer) *id);
  fp_board_view_ensure (self);
  for (guint v = 0; self->drawing != NULL && v < FP_N_VIEWS; v++)
    {
      const FpPoint a = fp_view_from_paper (&self->layout.view[v], (FpPoint) { paper.x0, paper.y0 });
      const FpPoint b = fp_view_from_paper (&self->layout.view[v], (FpPoint) { paper.x1, paper.y1 });
      const gboolean turned = fp_board_view_is_turned (self, (FpViewId) v);
      const FpBox frame = turned ? (FpBox) { -b.x, a.y, -a.x, b.y } : (FpBox) { a.x, a.y, b.x, b.y };
      char **within = fp_things_within (scene, (FpViewId) v, &frame);

      g_ptr_array_add (held, within);
      add_those_drawn (self, ids, (FpViewId) v, within);
    }
  g_ptr_array_add (ids, NULL);
  fp_document_choose_all (self->document, (const char *const *) ids->pdata);
}
