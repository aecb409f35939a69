/* SPDX-License-Identifier: GPL-3.0-or-later */
/* board-dimension.c - a dimension is typed over on the spot */
#include "board-view-private.h"
#include "typing.h"

#include "footpace/retype.h"

#include <math.h>

#define NEXT "Tab: enters it, and the next"

typedef struct
{
  FpBoardView *board;
  char        *item, *param;
} Dimension;

static void
dimension_free (gpointer data)
{
  Dimension *d = data;

  g_free (d->item);
  g_free (d->param);
  g_free (d);
}

static gboolean
enter (gpointer data, const char *text, GError **error)
{
  Dimension *d = data;

  return fp_typing_enter (d->board->document, d->item, d->param, text, error);
}

static void
next (gpointer data)
{
  fp_board_view_figure_on (((Dimension *) data)->board);
}

/* Keys go from one figure of what is chosen to the next. */
static gboolean
walks (FpBoardView *self)
{
  return self->figure != 0;
}

/* The figure of the dimension (by its number, or what it shows) nearest the pointer, in widget px. */
static GdkRectangle
figure_at (FpBoardView *self, const char *item, const char *param, guint dimension)
{
  const FpMark *mark, *best = NULL;
  guint n;
  double nearest = G_MAXDOUBLE;

  /* Choosing its thing may have changed what is drawn. */
  fp_board_view_ensure (self);
  mark = self->drawing != NULL ? fp_drawing_marks (self->drawing, &n) : NULL;
  for (guint i = 0; mark != NULL && i < n; i++)
    if (mark[i].type == FP_MARK_TEXT
        && (dimension != 0 ? mark[i].dimension == dimension : mark[i].item == item && mark[i].param == param))
      {
        FpPoint at = fp_board_view_to_widget (self, mark[i].at);
        double d = hypot (at.x - self->pointer.x, at.y - self->pointer.y);

        if (d < nearest)
          {
            nearest = d;
            best = &mark[i];
          }
      }
  if (best == NULL)
    return (GdkRectangle) { (int) self->pointer.x, (int) self->pointer.y, 1, 1 };

  FpPoint at = fp_board_view_to_widget (self, best->at);
  int h = (int) ceil (best->height * PX_PER_MM);

  return (GdkRectangle) { (int) at.x - h, (int) at.y - h, 2 * h, h };
}

void
fp_board_view_type_over (FpBoardView *self, const char *item, const char *param_id, guint dimension)
{
  const FpPlaced *placed = fp_document_placed (self->document, item);
  const FpUnits units = fp_board_view_units (self);
  double value;
  const FpParam *param = fp_typing_param (placed, param_id, &value);
  g_autofree char *title = NULL, *text = NULL;
  GdkRectangle where;
  Dimension *d;

  if (param == NULL || param->type == FP_PARAM_CHOICE)
    return;
  where = figure_at (self, item, param_id, dimension);
  d = g_new0 (Dimension, 1);
  d->board = self;
  d->item = g_strdup (item);
  d->param = g_strdup (param_id);
  title = g_strdup_printf ("%s: %s", fp_item_name (placed->item), param->label);
  text = fp_typing_show (param, value, units);
  fp_board_view_open_field (self, &(FpBoardField) { .title = title, .label = param->label, .text = text,
                                                    .unit = fp_typing_unit (param, units), .enter = enter,
                                                    .is_length = param->type == FP_PARAM_LENGTH,
                                                    .other = walks (self) ? next : NULL, .hint = walks (self) ? NEXT : NULL,
                                                    .data = d, .destroy = dimension_free }, &where);
}

/* --- what lies between things, and levels ---------------------------------------- */

typedef struct
{
  FpBoardView *board;
  FpStretch   measured;
  char        *shown;
} Measure;

static void
measure_free (gpointer data)
{
  Measure *m = data;

  g_free (m->shown);
  g_free (m);
}

static gboolean
enter_measure (gpointer data, const char *text, GError **error)
{
  Measure *m = data;
  FpDocument *document = m->board->document;
  const FpScene *base = fp_document_base_scene (document);
  g_autofree char *label = NULL;
  double value;

  if (g_strcmp0 (text, m->shown) == 0)
    return TRUE;
  if (!(fp_stretch_is_level (&m->measured) ? fp_typing_read_level : fp_length_parse) (text, fp_board_view_units (m->board),
                                                                                      &value, error))
    return FALSE;
  label = fp_stretch_tells (&m->measured, base);
  return fp_document_edit (document, fp_retype (base, &m->measured, value, fp_document_chosen_all (document), error),
                           label, NULL);
}

static void
next_measure (gpointer data)
{
  fp_board_view_figure_on (((Measure *) data)->board);
}

void
fp_board_view_hold_measure (FpBoardView *self, guint dimension)
{
  self->pressed = dimension != 0 ? *fp_drawing_stretch (self->drawing, dimension) : (FpStretch) { .item = NULL };
}

static double
moved (const FpStretch *a, const FpStretch *b)
{
  return fabs (a->a.x - b->a.x) + fabs (a->a.y - b->a.y) + fabs (a->a.z - b->a.z)
         + fabs (a->b.x - b->b.x) + fabs (a->b.y - b->b.y) + fabs (a->b.z - b->b.z);
}

/* The number that the drawing as it is now gives to what was pressed, 0 if it tells it no more: of what is measured
 * between the same things the nearest. */
static guint
pressed_now (FpBoardView *self)
{
  const FpMark *mark;
  double nearest = G_MAXDOUBLE;
  guint n, found = 0;

  fp_board_view_ensure (self);
  if (self->drawing == NULL || self->pressed.item == NULL)
    return 0;
  mark = fp_drawing_marks (self->drawing, &n);
  for (guint i = 0; i < n; i++)
    {
      const FpStretch *s = mark[i].type == FP_MARK_TEXT && mark[i].dimension != 0
                           ? fp_drawing_stretch (self->drawing, mark[i].dimension) : NULL;

      if (s == NULL || s->sort != self->pressed.sort || s->item != self->pressed.item || s->other != self->pressed.other
          || moved (s, &self->pressed) >= nearest)
        continue;
      nearest = moved (s, &self->pressed);
      found = mark[i].dimension;
    }
  return found;
}

void
fp_board_view_type_measure (FpBoardView *self)
{
  const guint dimension = pressed_now (self);
  const FpStretch *measured = dimension != 0 ? fp_drawing_stretch (self->drawing, dimension) : NULL;
  const FpUnits units = fp_board_view_units (self);
  const GdkRectangle where = figure_at (self, NULL, NULL, dimension);
  g_autofree char *title = NULL;
  Measure *m;

  if (measured == NULL)
    return;
  m = g_new0 (Measure, 1);
  m->board = self;
  m->measured = *measured;
  m->shown = fp_length_format (fp_stretch_value (measured), units);
  title = fp_stretch_tells (measured, fp_document_scene (self->document));
  fp_board_view_open_field (self, &(FpBoardField) { .title = title, .label = title, .text = m->shown,
                                                    .unit = units == FP_UNITS_METRIC ? "mm" : "", .enter = enter_measure,
                                                    .is_length = !fp_stretch_is_level (measured),
                                                    .other = walks (self) ? next_measure : NULL,
                                                    .hint = walks (self) ? NEXT : NULL, .data = m, .destroy = measure_free }, &where);
}
