/* SPDX-License-Identifier: GPL-3.0-or-later */
/* write-svg.c - a drawing as a structured SVG (W3C SVG 1.1 Second Edition)
 *
 * One group a view, in it one group a thing or dimension, with a title and a
 * description; pens are classes; text is text.  Millimetres, as on paper;
 * y runs downward there, and is turned over here and in paint-cairo.c alone.
 */
#include "drawing-private.h"
#include "svg-groups.h"

#include <libxml/xmlwriter.h>
#include <math.h>
#include <string.h>

typedef struct
{
  xmlTextWriter   *xml;
  const FpDrawing *drawing;
  const FpScene   *scene;
  GHashTable      *ids;      /* in use */
  GArray          *segments; /* FpSegment */
  guint            pictures; /* so far */
} Writer;

static const char *const pen_class[FP_N_PENS] = {
  [FP_PEN_CUT] = "cut", [FP_PEN_OUTLINE] = "outline", [FP_PEN_EDGE] = "edge", [FP_PEN_HIDDEN] = "hidden",
  [FP_PEN_AXIS] = "axis", [FP_PEN_HATCH] = "hatch", [FP_PEN_DIMENSION] = "dimension-line", [FP_PEN_LETTER] = "letter",
  [FP_PEN_FRAME] = "frame", [FP_PEN_GUIDE] = "guide", [FP_PEN_SIGHT] = "sight",
  [FP_PEN_BLIND] = "blind",
};
static const char *const fill_class[FP_N_FILLS] = {
  [FP_FILL_NONE] = "none", [FP_FILL_PAPER] = "paper", [FP_FILL_CUT] = "cut-face", [FP_FILL_TINT] = "tint",
  [FP_FILL_INK] = "ink", [FP_FILL_PEOPLE] = "by-people", [FP_FILL_THINGS] = "by-things",
};
static const char *const standing_class[] = { "existing", "proposed", "removed" };
static const char *const view_id[FP_N_VIEWS] = { "plan", "elevation", "section" };
static const char *const view_title[FP_N_VIEWS] = { "Plan", "Elevation facing east", "Section on the axis" };

/* --- numbers and words ------------------------------------------------------ */

/* A thousandth of a millimetre, without zeros at the end and never "-0". */
static void
append_number (GString *out, double v)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  gsize n;

  g_ascii_formatd (text, sizeof text, "%.3f", v);
  n = strlen (text);
  while (text[n - 1] == '0')
    n--;
  if (text[n - 1] == '.')
    n--;
  text[n] = '\0';
  g_string_append (out, g_str_equal (text, "-0") ? "0" : text);
}

/* XML 1.0 has no way to write most control characters. */
static char *
without_controls (const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  GString *out = g_string_new (NULL);

  for (const char *c = valid; *c != '\0'; c = g_utf8_next_char (c))
    {
      const gunichar u = g_utf8_get_char (c);
      if (u >= 0x20 && u != 0xfffe && u != 0xffff)
        g_string_append_unichar (out, u);
      else if (u == '\t' || u == '\n' || u == '\r')
        g_string_append_c (out, ' ');
    }
  return g_string_free (out, FALSE);
}

static void
start (Writer *w, const char *name)
{
  xmlTextWriterStartElement (w->xml, BAD_CAST name);
}

static void
end (Writer *w)
{
  xmlTextWriterEndElement (w->xml);
}

static void
attribute (Writer *w, const char *name, const char *value)
{
  g_autofree char *clean = without_controls (value);

  xmlTextWriterWriteAttribute (w->xml, BAD_CAST name, BAD_CAST clean);
}

static void
number_attribute (Writer *w, const char *name, double value)
{
  g_autoptr (GString) text = g_string_new (NULL);

  append_number (text, value);
  attribute (w, name, text->str);
}

static void
element_text (Writer *w, const char *name, const char *text)
{
  g_autofree char *clean = without_controls (text);

  xmlTextWriterWriteElement (w->xml, BAD_CAST name, BAD_CAST clean);
}

/* --- style -------------------------------------------------------------------- */

static void
append_colour (GString *out, FpInk ink)
{
  g_string_append_printf (out, "#%02x%02x%02x", (guint) lround (ink.r * 255), (guint) lround (ink.g * 255),
                          (guint) lround (ink.b * 255));
}

static void
append_pen_rule (GString *css, FpSurfaceLook look, FpPen pen, FpStanding standing)
{
  double dashes[6];
  const guint n = fp_pen_dashes (pen, standing, dashes);

  g_string_append_printf (css, ".%s.%s{fill:none;stroke:", pen_class[pen], standing_class[standing]);
  append_colour (css, fp_pen_ink (pen, standing, look));
  g_string_append (css, ";stroke-width:");
  append_number (css, fp_pen_stroke (pen, standing));
  g_string_append (css, n > 0 || pen == FP_PEN_HATCH ? ";stroke-linecap:butt" : ";stroke-linecap:square");
  for (guint i = 0; i < n; i++)
    {
      g_string_append (css, i == 0 ? ";stroke-dasharray:" : ",");
      append_number (css, dashes[i]);
    }
  g_string_append (css, "}\n");
}

static void
append_fill_rule (GString *css, FpSurfaceLook look, FpFill fill, FpStanding standing)
{
  g_string_append_printf (css, ".%s.%s{stroke:none;fill-rule:evenodd;fill:", fill_class[fill],
                          standing_class[standing]);
  append_colour (css, fp_fill_ink (fill, standing, look));
  g_string_append (css, "}\n");
}

static char *
style_sheet (FpSurfaceLook look)
{
  GString *css = g_string_new ("\n");

  for (guint s = FP_STANDING_EXISTING; s <= FP_STANDING_REMOVED; s++)
    {
      for (guint pen = 0; pen < FP_N_PENS; pen++)
        append_pen_rule (css, look, (FpPen) pen, (FpStanding) s);
      for (guint fill = FP_FILL_PAPER; fill < FP_N_FILLS; fill++)
        append_fill_rule (css, look, (FpFill) fill, (FpStanding) s);
      g_string_append_printf (css, ".cross.%s{fill:none;stroke-linecap:butt;stroke:", standing_class[s]);
      append_colour (css, fp_pen_ink (FP_PEN_EDGE, (FpStanding) s, look));
      g_string_append (css, ";stroke-width:");
      append_number (css, fp_pen_width (FP_PEN_EDGE));
      g_string_append (css, "}\n");
    }
  g_string_append (css, "text{stroke:none;font-family:" FP_LETTERING_FAMILY ";fill:");
  append_colour (css, fp_pen_ink (FP_PEN_LETTER, FP_STANDING_EXISTING, look));
  g_string_append (css, "}\n");
  return g_string_free (css, FALSE);
}

/* --- marks ---------------------------------------------------------------------- */

static double
down (const Writer *w, double y)
{
  return fp_drawing_height (w->drawing) - y;
}

static void
append_point (const Writer *w, GString *d, char command, FpPoint p)
{
  g_string_append_c (d, command);
  append_number (d, p.x);
  g_string_append_c (d, ' ');
  append_number (d, down (w, p.y));
}

static void
append_run (const Writer *w, GString *d, const FpMark *mark)
{
  const FpPoint *pt = fp_drawing_points (w->drawing) + mark->first;

  for (guint i = 0; i < mark->n; i++)
    append_point (w, d, i == 0 ? 'M' : 'L', pt[i]);
  if (mark->closed)
    g_string_append_c (d, 'Z');
}

static void
classes (Writer *w, const char *what, FpStanding standing)
{
  g_autofree char *both = g_strdup_printf ("%s %s", what, standing_class[standing]);

  attribute (w, "class", both);
}

static void
write_path (Writer *w, const char *what, FpStanding standing, const char *d)
{
  start (w, "path");
  classes (w, what, standing);
  attribute (w, "d", d);
  end (w);
}

static void
write_segments (Writer *w, const char *what, FpStanding standing)
{
  g_autoptr (GString) d = g_string_new (NULL);

  for (guint i = 0; i < w->segments->len; i++)
    {
      const FpSegment s = g_array_index (w->segments, FpSegment, i);
      append_point (w, d, 'M', s.a);
      append_point (w, d, 'L', s.b);
    }
  if (d->len > 0)
    write_path (w, what, standing, d->str);
  g_array_set_size (w->segments, 0);
}

static void
write_crosses (Writer *w, const FpMark *mark)
{
  const FpPoint *pt = fp_drawing_points (w->drawing) + mark->first;
  const guint last = mark->closed ? mark->n : mark->n - 1;

  if (!fp_pen_crosses (mark->pen, mark->standing))
    return;
  for (guint i = 0; i < last; i++)
    fp_cross_lines (pt[i], pt[(i + 1) % mark->n], w->segments);
  write_segments (w, "cross", mark->standing);
}

static void
write_area (Writer *w, const FpMark *mark)
{
  g_autoptr (GString) d = g_string_new (NULL);

  append_run (w, d, mark);
  if (mark->fill != FP_FILL_NONE)
    write_path (w, fill_class[mark->fill], mark->standing, d->str);
  if (mark->hatch != 0)
    {
      fp_hatch_lines (fp_drawing_points (w->drawing) + mark->first, mark->n, mark->hatch, w->segments);
      write_segments (w, pen_class[fp_mark_hatch_pen (mark)], mark->standing);
    }
  if (fp_mark_has_border (mark))
    {
      write_path (w, pen_class[mark->pen], mark->standing, d->str);
      write_crosses (w, mark);
    }
}

static void
write_one_circle (Writer *w, const FpMark *mark, const char *what)
{
  start (w, "circle");
  classes (w, what, mark->standing);
  number_attribute (w, "cx", mark->at.x);
  number_attribute (w, "cy", down (w, mark->at.y));
  number_attribute (w, "r", mark->radius);
  end (w);
}

static void
write_circle (Writer *w, const FpMark *mark)
{
  if (mark->fill != FP_FILL_NONE)
    write_one_circle (w, mark, fill_class[mark->fill]);
  if (fp_mark_has_border (mark))
    write_one_circle (w, mark, pen_class[mark->pen]);
}

static void
write_turn (Writer *w, const FpMark *mark)
{
  g_autoptr (GString) turn = g_string_new ("rotate(");

  if (mark->turn == 0)
    return;
  append_number (turn, -mark->turn);
  g_string_append_c (turn, ' ');
  append_number (turn, mark->at.x);
  g_string_append_c (turn, ' ');
  append_number (turn, down (w, mark->at.y));
  g_string_append_c (turn, ')');
  attribute (w, "transform", turn->str);
}

static void
write_text (Writer *w, const FpMark *mark)
{
  static const char *const anchor[] = { "start", "middle", "end" };
  g_autofree char *clean = without_controls (mark->text);

  start (w, "text");
  number_attribute (w, "x", mark->at.x);
  number_attribute (w, "y", down (w, mark->at.y));
  number_attribute (w, "font-size", fp_lettering_font_size (mark->height));
  if (mark->align != FP_ALIGN_LEFT)
    attribute (w, "text-anchor", anchor[mark->align]);
  write_turn (w, mark);
  xmlTextWriterWriteString (w->xml, BAD_CAST clean);
  end (w);
}

static void
write_picture (Writer *w, const FpMark *mark)
{
  const FpPoint *pt = fp_drawing_points (w->drawing) + mark->first;
  const FpBox box = { pt[0].x, down (w, pt[1].y), pt[1].x, down (w, pt[0].y) };
  g_autofree char *svg = fp_pew_view_to_svg (mark->picture, box, FP_PEW_PEN,
                                             fp_surface_look (fp_drawing_ink (w->drawing), FALSE), ++w->pictures);

  xmlTextWriterWriteRaw (w->xml, BAD_CAST svg);
  start (w, "rect");
  classes (w, pen_class[mark->pen], mark->standing);
  number_attribute (w, "x", box.x0);
  number_attribute (w, "y", box.y0);
  number_attribute (w, "width", box.x1 - box.x0);
  number_attribute (w, "height", box.y1 - box.y0);
  end (w);
}

/* Lines of one pen that follow each other become one path. Returns how many marks were written. */
static guint
write_lines (Writer *w, const FpMark *all, const guint *index, guint n)
{
  g_autoptr (GString) d = g_string_new (NULL);
  const FpMark *first = &all[index[0]];
  guint i;

  for (i = 0; i < n && all[index[i]].type == FP_MARK_LINE && all[index[i]].pen == first->pen; i++)
    append_run (w, d, &all[index[i]]);
  write_path (w, pen_class[first->pen], first->standing, d->str);
  for (guint k = 0; k < i; k++)
    write_crosses (w, &all[index[k]]);
  return i;
}

static void
write_marks (Writer *w, const FpSvgGroup *group)
{
  guint n, i = 0;
  const FpMark *all = fp_drawing_marks (w->drawing, &n);
  const guint *index = (const guint *) (gconstpointer) group->marks->data;

  while (i < group->marks->len)
    {
      const FpMark *mark = &all[index[i]];
      switch (mark->type)
        {
        case FP_MARK_LINE: i += write_lines (w, all, index + i, group->marks->len - i); continue;
        case FP_MARK_AREA: write_area (w, mark); break;
        case FP_MARK_CIRCLE: write_circle (w, mark); break;
        case FP_MARK_TEXT: write_text (w, mark); break;
        case FP_MARK_PICTURE: write_picture (w, mark); break;
        }
      i++;
    }
}

/* --- groups --------------------------------------------------------------------- */

/* Sheets of comparison hold several plans: the second altar is "plan-altar-2". */
static void
write_id (Writer *w, const char *wanted)
{
  g_autofree char *id = g_strdup (wanted);

  for (guint i = 2; g_hash_table_contains (w->ids, id); i++)
    {
      g_free (id);
      id = g_strdup_printf ("%s-%u", wanted, i);
    }
  attribute (w, "id", id);
  g_hash_table_add (w->ids, g_steal_pointer (&id));
}

static char *
id_of_group (const FpMark *of)
{
  GString *id = g_string_new (of->view >= 0 && of->view < FP_N_VIEWS ? view_id[of->view] : "sheet");

  if (of->item != NULL)
    g_string_append_printf (id, "-%s", of->item);
  else if (of->dimension == 0)
    g_string_append (id, "-lines");
  if (of->item != NULL && of->standing == FP_STANDING_REMOVED)
    g_string_append (id, "-removed");
  if (of->dimension != 0)
    g_string_append_printf (id, "-dimension-%u", of->dimension);
  return g_string_free (id, FALSE);
}

static const FpPlaced *
placed_of (const FpScene *scene, const FpMark *of)
{
  guint n;
  const FpPlaced *placed = scene != NULL ? fp_scene_placed (scene, &n) : NULL;

  if (placed == NULL || of->item == NULL)
    return NULL;
  for (guint i = 0; i < n; i++)
    if (placed[i].standing == of->standing && g_str_equal (fp_item_id (placed[i].item), of->item))
      return &placed[i];
  return NULL;
}

static void
write_names (Writer *w, const FpMark *of)
{
  const FpPlaced *placed = placed_of (w->scene, of);
  g_autofree char *level = NULL, *tells = NULL;

  if (placed == NULL)
    {
      if (of->item != NULL)
        element_text (w, "title", of->item);
      return;
    }
  level = fp_level_format (placed->level, fp_project_brief (fp_scene_project (w->scene))->units);
  tells = g_strdup_printf ("%s, %s, at level %s", fp_item_kind (placed->item)->label, standing_class[of->standing],
                           level);
  element_text (w, "title", fp_item_name (placed->item));
  element_text (w, "desc", tells);
}

static void
write_group (Writer *w, const FpSvgGroup *group)
{
  g_autofree char *id = id_of_group (&group->of);

  start (w, "g");
  write_id (w, id);
  if (group->of.dimension != 0)
    attribute (w, "class", "dimension");
  else if (group->of.item != NULL)
    classes (w, "furnishing", group->of.standing);
  if (group->of.param != NULL)
    attribute (w, "data-parameter", group->of.param);
  if (group->of.dimension == 0)
    write_names (w, &group->of);
  write_marks (w, group);
  end (w);
}

static void
start_view (Writer *w, int view)
{
  const gboolean known = view >= 0 && view < FP_N_VIEWS;

  start (w, "g");
  write_id (w, known ? view_id[view] : "sheet");
  attribute (w, "class", known ? "view" : "sheet");
  if (known)
    element_text (w, "title", view_title[view]);
}

static void
write_groups (Writer *w)
{
  g_autoptr (GArray) groups = fp_svg_groups_new (w->drawing);

  for (guint i = 0; i < groups->len; i++)
    {
      const FpSvgGroup *group = &g_array_index (groups, FpSvgGroup, i);
      const int before = i > 0 ? g_array_index (groups, FpSvgGroup, i - 1).of.view : G_MININT;
      if (group->of.view != before && i > 0)
        end (w);
      if (group->of.view != before)
        start_view (w, group->of.view);
      write_group (w, group);
    }
  if (groups->len > 0)
    end (w);
}

/* --- the document ------------------------------------------------------------------ */

static void
write_root (Writer *w, const char *title)
{
  const double width = fp_drawing_width (w->drawing), height = fp_drawing_height (w->drawing);
  g_autoptr (GString) w_mm = g_string_new (NULL), h_mm = g_string_new (NULL), box = g_string_new ("0 0 ");
  g_autofree char *css = style_sheet (fp_surface_look (fp_drawing_ink (w->drawing), FALSE));

  append_number (w_mm, width);
  append_number (h_mm, height);
  g_string_append_printf (box, "%s %s", w_mm->str, h_mm->str);
  g_string_append (w_mm, "mm");
  g_string_append (h_mm, "mm");
  start (w, "svg");
  attribute (w, "xmlns", "http://www.w3.org/2000/svg");
  attribute (w, "version", "1.1");
  attribute (w, "width", w_mm->str);
  attribute (w, "height", h_mm->str);
  attribute (w, "viewBox", box->str);
  attribute (w, "xml:space", "preserve");
  if (title != NULL)
    element_text (w, "title", title);
  element_text (w, "desc", "1 unit is 1 mm of paper. Made by Footpace " FP_VERSION ".");
  xmlTextWriterWriteElement (w->xml, BAD_CAST "style", BAD_CAST css);
}

static void
write_paper (Writer *w)
{
  start (w, "rect");
  attribute (w, "class", "paper existing");
  number_attribute (w, "width", fp_drawing_width (w->drawing));
  number_attribute (w, "height", fp_drawing_height (w->drawing));
  end (w);
}

char *
fp_drawing_to_svg (const FpDrawing *self, const FpScene *scene, const char *title, gsize *length)
{
  xmlBuffer *buffer = xmlBufferCreate ();
  g_autoptr (GHashTable) ids = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_autoptr (GArray) segments = g_array_new (FALSE, FALSE, sizeof (FpSegment));
  Writer w = { xmlNewTextWriterMemory (buffer, 0), self, scene, ids, segments, 0 };
  char *svg;

  xmlTextWriterSetIndent (w.xml, 1);
  xmlTextWriterSetIndentString (w.xml, BAD_CAST " ");
  xmlTextWriterStartDocument (w.xml, NULL, "UTF-8", NULL);
  write_root (&w, title);
  write_paper (&w);
  write_groups (&w);
  xmlTextWriterEndDocument (w.xml);
  xmlFreeTextWriter (w.xml); /* flushes into the buffer */
  svg = g_strndup ((const char *) xmlBufferContent (buffer), (gsize) xmlBufferLength (buffer));
  if (length != NULL)
    *length = (gsize) xmlBufferLength (buffer);
  xmlBufferFree (buffer);
  return svg;
}

gboolean
fp_drawing_write_svg (const FpDrawing *self, const FpScene *scene, const char *title, const char *path, GError **error)
{
  gsize length;
  g_autofree char *svg = fp_drawing_to_svg (self, scene, title, &length);

  return fp_write_file (path, svg, length, error);
}
