/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "printing-text.h"

#include <string.h>

#define COLUMNS     100
#define MARGIN_LEFT 22.0 /* mm: room for the holes of a binder */
#define MARGIN      16.0
#define FOOT        10.0
#define FONT_MAX    3.3  /* mm an em, some 9.5 pt               */
#define LINE        1.32 /* of an em                            */
#define KEEP        3    /* lines that must follow a heading on its page */

typedef struct
{
  char    *text;
  gboolean heading;
} Line;

typedef struct
{
  GArray *lines;      /* of Line                                            */
  GArray *first;      /* guint: index of the first line of each page        */
  char   *name;
  double  width, height;
  double  em;         /* mm                                                 */
} Report;

static void
line_clear (gpointer data)
{
  g_free (((Line *) data)->text);
}

static void
report_free (gpointer data)
{
  Report *self = data;

  g_array_unref (self->lines);
  g_array_unref (self->first);
  g_free (self->name);
  g_free (self);
}

static gboolean
is_rule (const char *line)
{
  return (*line == '=' || *line == '-') && strspn (line, *line == '=' ? "=" : "-") == strlen (line);
}

static GArray *
split (const char *text)
{
  g_auto (GStrv) part = g_strsplit (text, "\n", -1);
  GArray *lines = g_array_new (FALSE, FALSE, sizeof (Line));

  g_array_set_clear_func (lines, line_clear);
  for (guint i = 0; part[i] != NULL; i++)
    {
      gboolean heading = part[i + 1] != NULL && *part[i] != '\0' && is_rule (part[i + 1]);
      Line line = { g_strdup (part[i]), heading };

      g_array_append_val (lines, line);
      i += heading ? 1 : 0;
    }
  return lines;
}

/* --- pages ---------------------------------------------------------------- */

/* The layout measures in units of the context, which are millimetres: rounded to those, no letter would stand where
 * it belongs. */
static void
take_no_rounding (PangoLayout *layout)
{
  PangoContext *context = pango_layout_get_context (layout);
  cairo_font_options_t *options = cairo_font_options_create ();

  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  pango_cairo_context_set_font_options (context, options);
  pango_context_set_round_glyph_positions (context, FALSE);
  cairo_font_options_destroy (options);
}

static PangoLayout *
layout_of (Report *self, GtkPrintContext *context, gboolean bold)
{
  PangoLayout *layout = gtk_print_context_create_pango_layout (context);
  PangoFontDescription *font = pango_font_description_from_string (bold ? "monospace bold" : "monospace");

  take_no_rounding (layout);
  pango_font_description_set_absolute_size (font, self->em * PANGO_SCALE);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  return layout;
}

/* The size at which a full line just fits between the margins. */
static void
choose_size (Report *self, GtkPrintContext *context)
{
  g_autoptr (PangoLayout) layout = NULL;
  g_autofree char *full = g_strnfill (COLUMNS, 'm');
  int w, h;

  self->em = FONT_MAX;
  layout = layout_of (self, context, FALSE);
  pango_layout_set_text (layout, full, -1);
  pango_layout_get_size (layout, &w, &h);
  self->em *= MIN (1.0, (self->width - MARGIN_LEFT - MARGIN) * PANGO_SCALE / w);
}

static void
paginate (Report *self)
{
  guint room = (guint) ((self->height - 2.0 * MARGIN - FOOT) / (self->em * LINE)), used = 0;

  g_array_set_size (self->first, 0);
  for (guint i = 0; i < self->lines->len; i++)
    {
      const Line *line = &g_array_index (self->lines, Line, i);

      if (i == 0 || used >= room || (line->heading && used + KEEP >= room))
        {
          /* No page begins with an empty line. */
          while (i + 1 < self->lines->len && *g_array_index (self->lines, Line, i).text == '\0')
            i++;
          g_array_append_val (self->first, i);
          used = 0;
        }
      used++;
    }
}

static void
on_begin (GtkPrintOperation *operation, GtkPrintContext *context, Report *self)
{
  self->width = gtk_print_context_get_width (context);
  self->height = gtk_print_context_get_height (context);
  choose_size (self, context);
  paginate (self);
  gtk_print_operation_set_n_pages (operation, (int) self->first->len);
}

static void
draw_line (cairo_t *cr, PangoLayout *layout, const char *text, double x, double y)
{
  pango_layout_set_text (layout, text, -1);
  cairo_move_to (cr, x, y);
  pango_cairo_show_layout (cr, layout);
}

static void
draw_foot (Report *self, cairo_t *cr, PangoLayout *layout, guint page)
{
  g_autofree char *text = g_strdup_printf ("%s    %u / %u", self->name, page + 1, self->first->len);

  draw_line (cr, layout, text, MARGIN_LEFT, self->height - MARGIN - self->em);
}

static void
on_draw_page (GtkPrintOperation *operation, GtkPrintContext *context, int page, Report *self)
{
  g_autoptr (PangoLayout) plain = layout_of (self, context, FALSE), bold = layout_of (self, context, TRUE);
  cairo_t *cr = gtk_print_context_get_cairo_context (context);
  guint from = g_array_index (self->first, guint, page);
  guint to = (guint) page + 1 < self->first->len ? g_array_index (self->first, guint, page + 1) : self->lines->len;

  (void) operation;
  cairo_set_source_rgb (cr, 0.0, 0.0, 0.0);
  for (guint i = from; i < to; i++)
    {
      const Line *line = &g_array_index (self->lines, Line, i);

      draw_line (cr, line->heading ? bold : plain, line->text, MARGIN_LEFT, MARGIN + (i - from) * self->em * LINE);
    }
  draw_foot (self, cr, plain, (guint) page);
}

/* --- the operation -------------------------------------------------------- */

GtkPrintOperation *
fp_print_text_operation_new (const char *text, const char *name, FpPaper paper)
{
  double w, h;
  GtkPrintOperation *operation;
  Report *self = g_new0 (Report, 1);

  fp_paper_size (paper, FALSE, &w, &h);
  operation = fp_print_operation_for (w, h, name);
  self->lines = split (text);
  self->first = g_array_new (FALSE, FALSE, sizeof (guint));
  self->name = g_strdup (name);
  g_object_set_data_full (G_OBJECT (operation), "report", self, report_free);
  g_signal_connect (operation, "begin-print", G_CALLBACK (on_begin), self);
  g_signal_connect (operation, "draw-page", G_CALLBACK (on_draw_page), self);
  return operation;
}

void
fp_print_text (GtkWindow *parent, const char *text, const char *name, FpPaper paper, FpPrintAnswer answer,
               gpointer data)
{
  g_autoptr (GtkPrintOperation) operation = fp_print_text_operation_new (text, name, paper);

  fp_print_run (parent, operation, answer, data);
}
