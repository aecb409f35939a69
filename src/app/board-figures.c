/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-figures.c - the figures of what is chosen, one after another, to be typed over without a pointer */
#include "board-view-private.h"
#include "typing.h"

typedef struct
{
  const char *param;     /* interned: the parameter of the chosen thing that it shows; NULL: it lies between things */
  guint       dimension; /* of the drawing                                                                        */
} Figure;

/* FALSE: it is no figure that can be typed over, or about something else. */
static gboolean
figure_of (FpBoardView *self, const FpMark *mark, const FpPlaced *chosen, Figure *out)
{
  const char *id = fp_item_id (chosen->item);
  const FpStretch *s;

  if (mark->type != FP_MARK_TEXT || mark->dimension == 0)
    return FALSE;
  if (g_strcmp0 (mark->item, id) == 0 && mark->param != NULL)
    {
      const FpParam *param = fp_typing_param (chosen, mark->param, NULL);

      *out = (Figure) { mark->param, mark->dimension };
      return param != NULL && param->type != FP_PARAM_CHOICE;
    }
  s = fp_drawing_stretch (self->drawing, mark->dimension);
  *out = (Figure) { NULL, mark->dimension };
  return s != NULL && s->sort != FP_STRETCH_PARAM && (g_strcmp0 (s->item, id) == 0 || g_strcmp0 (s->other, id) == 0);
}

/* A measure may be lettered in two places, and a parameter be shown in two views: once is enough. */
static gboolean
is_there (const GArray *figures, const Figure *figure)
{
  for (guint i = 0; i < figures->len; i++)
    {
      const Figure *one = &g_array_index (figures, Figure, i);

      if (one->dimension == figure->dimension || (figure->param != NULL && one->param == figure->param))
        return TRUE;
    }
  return FALSE;
}

/* In the order in which they are drawn; of what is chosen last where there are several. */
static GArray *
figures_of_chosen (FpBoardView *self)
{
  GArray *figures = g_array_new (FALSE, FALSE, sizeof (Figure));
  const FpPlaced *chosen = fp_document_chosen_placed (self->document);
  const FpMark *mark;
  guint n;

  fp_board_view_ensure (self);
  if (chosen == NULL || chosen->ghost || self->drawing == NULL)
    return figures;
  mark = fp_drawing_marks (self->drawing, &n);
  for (guint i = 0; i < n; i++)
    {
      Figure figure;

      if (figure_of (self, &mark[i], chosen, &figure) && !is_there (figures, &figure))
        g_array_append_val (figures, figure);
    }
  return figures;
}

gboolean
fp_board_view_next_figure (FpBoardView *self)
{
  g_autoptr (GArray) figures = NULL;
  const Figure *figure;

  if (fp_document_chosen (self->document) == NULL || self->held)
    return FALSE;
  figures = figures_of_chosen (self);
  if (figures->len == 0)
    {
      fp_board_view_notice (self, "No dimension of what is chosen is drawn here: nearer, more of them are.");
      return TRUE;
    }
  self->figure = self->figure % figures->len + 1;
  figure = &g_array_index (figures, Figure, self->figure - 1);
  if (figure->param != NULL)
    {
      fp_board_view_type_over (self, fp_document_chosen (self->document), figure->param, figure->dimension);
      return TRUE;
    }
  fp_board_view_hold_measure (self, figure->dimension);
  fp_board_view_type_measure (self);
  return TRUE;
}

static gboolean
go_on (gpointer data)
{
  FpBoardView *self = data;

  if (self->document != NULL)
    fp_board_view_next_figure (self);
  return G_SOURCE_REMOVE;
}

/* What was typed is entered first, as when one goes elsewhere.  The field is still about the key that was pressed in it, so
 * the next one opens a little later. */
void
fp_board_view_figure_on (FpBoardView *self)
{
  fp_board_view_end_typing (self);
  g_idle_add_full (G_PRIORITY_DEFAULT, go_on, g_object_ref (self), g_object_unref);
}
