/* SPDX-License-Identifier: GPL-3.0-or-later */
/* lettering.c - texts as every surface letters them
 *
 * Metrics are not hinted and glyph positions not rounded: otherwise a label
 * that fits on the screen would not fit on paper.  Texts are laid out at one
 * large size and scaled, so that their widths are in proportion to their
 * height to the last digit.
 *
 * Pango is used from the window's thread and from workers: each thread has a
 * font map of its own, which also keeps the window's resolution out of here.
 */
#include "drawing-private.h"

/* Layouts kept for the next frame of a drag. */
#define LAYOUTS_MAX 2000

typedef struct
{
  PangoFontMap *map;
  PangoContext *context;
  GHashTable   *layouts; /* text -> PangoLayout */
  double        size;    /* of the font whose capitals are FP_LETTERING_CAPITAL high */
} Lettering;

static void
lettering_free (gpointer data)
{
  Lettering *self = data;

  g_hash_table_unref (self->layouts);
  g_object_unref (self->context);
  g_object_unref (self->map);
  g_free (self);
}

static GPrivate of_thread = G_PRIVATE_INIT (lettering_free);

static PangoContext *
context_new (PangoFontMap *map)
{
  PangoContext *context = pango_font_map_create_context (map);
  cairo_font_options_t *options = cairo_font_options_create ();

  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_antialias (options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options (context, options);
  cairo_font_options_destroy (options);
  pango_context_set_round_glyph_positions (context, FALSE);
  /* The same layout whatever the language of the desktop. */
  pango_context_set_language (context, pango_language_from_string ("en"));
  pango_context_set_base_dir (context, PANGO_DIRECTION_LTR);
  return context;
}

static PangoLayout *
layout_new (PangoContext *context, double size, const char *text)
{
  PangoLayout *layout = pango_layout_new (context);
  PangoFontDescription *font = pango_font_description_new ();

  pango_font_description_set_family_static (font, FP_LETTERING_FAMILY);
  pango_font_description_set_absolute_size (font, size * PANGO_SCALE);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  pango_layout_set_single_paragraph_mode (layout, TRUE);
  pango_layout_set_text (layout, text, -1);
  return layout;
}

/* Whatever font is found, its H is FP_LETTERING_CAPITAL high. */
static double
calibrate (PangoContext *context)
{
  const double trial = 1000;
  g_autoptr (PangoLayout) layout = layout_new (context, trial, "H");
  PangoRectangle ink;

  pango_layout_get_extents (layout, &ink, NULL);
  if (ink.height <= 0)
    return FP_LETTERING_CAPITAL / 0.7; /* no font at all: nothing will show */
  return trial * FP_LETTERING_CAPITAL * PANGO_SCALE / ink.height;
}

static Lettering *
lettering (void)
{
  Lettering *self = g_private_get (&of_thread);

  if (self != NULL)
    return self;
  self = g_new0 (Lettering, 1);
  self->map = pango_cairo_font_map_new ();
  self->context = context_new (self->map);
  self->layouts = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_object_unref);
  self->size = calibrate (self->context);
  g_private_set (&of_thread, self);
  return self;
}

PangoLayout *
fp_lettering_layout (const char *text)
{
  Lettering *self = lettering ();
  PangoLayout *layout = g_hash_table_lookup (self->layouts, text);

  if (layout != NULL)
    return layout;
  if (g_hash_table_size (self->layouts) >= LAYOUTS_MAX)
    g_hash_table_remove_all (self->layouts);
  layout = layout_new (self->context, self->size, text);
  g_hash_table_insert (self->layouts, g_strdup (text), layout);
  return layout;
}

double
fp_lettering_font_size (double height)
{
  return lettering ()->size * height / FP_LETTERING_CAPITAL;
}

double
fp_lettering_width (const char *text, double height)
{
  PangoRectangle logical;
  g_autofree char *valid = NULL;

  if (text == NULL || *text == '\0')
    return 0;
  valid = g_utf8_make_valid (text, -1);
  pango_layout_get_extents (fp_lettering_layout (valid), NULL, &logical);
  return logical.width * height / (FP_LETTERING_CAPITAL * PANGO_SCALE);
}
