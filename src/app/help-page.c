/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "help-page.h"

#include "drawing-view.h"
#include "samples.h"
#include "small-drawing.h"

#include "footpace/store.h"

#include <cmark.h>
#include <string.h>

#define COLUMN     72     /* letters in a line of text                        */
#define PICTURE_W  120.0  /* mm, from which the widths of its lines follow    */
#define PICTURE_H  80.0
#define PICTURE_PX 300    /* its height in the window                         */
#define INDENT     18

typedef struct
{
  GtkWidget *page;
  FpHelpLink on_link;
  gpointer   data;
} Writer;

/* --- text ----------------------------------------------------------------- */

static void
append_escaped (GString *out, const char *text)
{
  g_autofree char *escaped = g_markup_escape_text (text != NULL ? text : "", -1);

  g_string_append (out, escaped);
}

static void
append_link (GString *out, const char *url, gboolean entering)
{
  if (!entering)
    {
      g_string_append (out, "</a>");
      return;
    }
  g_string_append (out, "<a href=\"");
  append_escaped (out, url);
  g_string_append (out, "\">");
}

static void
append_inline (GString *out, cmark_node *node, gboolean entering)
{
  switch (cmark_node_get_type (node))
    {
    case CMARK_NODE_TEXT:
      append_escaped (out, cmark_node_get_literal (node));
      break;
    case CMARK_NODE_CODE:
      g_string_append (out, "<tt>");
      append_escaped (out, cmark_node_get_literal (node));
      g_string_append (out, "</tt>");
      break;
    case CMARK_NODE_SOFTBREAK:
      g_string_append_c (out, ' ');
      break;
    case CMARK_NODE_LINEBREAK:
      g_string_append_c (out, '\n');
      break;
    case CMARK_NODE_EMPH:
      g_string_append (out, entering ? "<i>" : "</i>");
      break;
    case CMARK_NODE_STRONG:
      g_string_append (out, entering ? "<b>" : "</b>");
      break;
    case CMARK_NODE_LINK:
      append_link (out, cmark_node_get_url (node), entering);
      break;
    default: /* no other stands in a line of a page of help */
      break;
    }
}

/* All that stands in a block, as Pango's markup. */
static char *
markup_of (cmark_node *block)
{
  GString *out = g_string_new ("");
  cmark_iter *iter = cmark_iter_new (block);
  cmark_event_type event;

  while ((event = cmark_iter_next (iter)) != CMARK_EVENT_DONE)
    append_inline (out, cmark_iter_get_node (iter), event == CMARK_EVENT_ENTER);
  cmark_iter_free (iter);
  return g_string_free (out, FALSE);
}

/* Its words alone. */
static char *
text_of (cmark_node *block)
{
  g_autofree char *markup = markup_of (block);
  char *text = NULL;

  pango_parse_markup (markup, -1, 0, NULL, &text, NULL, NULL);
  return text != NULL ? text : g_strdup ("");
}

static gboolean
on_activate_link (GtkLabel *label, const char *uri, Writer *w)
{
  (void) label;
  w->on_link (uri, w->data);
  return TRUE;
}

#define CODE_INDENT 12 /* of what is typed as it stands */

static GtkWidget *
add_label (Writer *w, const char *markup, int indent)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_markup (GTK_LABEL (label), markup);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_max_width_chars (GTK_LABEL (label), COLUMN);
  gtk_label_set_selectable (GTK_LABEL (label), TRUE);
  gtk_widget_set_margin_start (label, indent);
  g_signal_connect (label, "activate-link", G_CALLBACK (on_activate_link), w);
  gtk_box_append (GTK_BOX (w->page), label);
  return label;
}

/* --- pictures ------------------------------------------------------------- */

static const char *const views[FP_N_VIEWS] = { "plan", "elevation", "section" };

static FpDrawing *
draw_view (const FpScene *scene, FpViewId view)
{
  const FpBox frame = fp_small_frame (scene, view);
  g_autoptr (FpProjection) projection = fp_projection_new (scene, view);

  return fp_small_drawing (projection, &frame, PICTURE_W, PICTURE_H);
}

static FpDrawing *
draw_pew (const FpScene *scene, FpPewTypical from)
{
  g_autoptr (FpPeople) people = fp_people_new (scene);
  FpPewSpec spec = { .aspect = PICTURE_W / PICTURE_H };

  return fp_pew_typical_spec (people, from, &spec) ? fp_pew_drawing_new (people, &spec, PICTURE_W) : NULL;
}

/* NULL where the sample or the view is not known. */
static FpDrawing *
draw (const char *url)
{
  g_auto (GStrv) part = g_strsplit (url + strlen ("picture:"), "/", 2);
  g_autofree char *base = g_strconcat (part[0], ".footpace", NULL), *path = fp_sample_path (base);
  g_autoptr (FpProject) project = path != NULL ? fp_store_load (path, NULL) : NULL;
  g_autoptr (FpScene) scene = NULL;

  if (project == NULL || part[1] == NULL)
    return NULL;
  scene = fp_scene_new (project, fp_project_n_alternatives (project) - 1);
  for (guint v = 0; v < FP_N_VIEWS; v++)
    if (g_str_equal (views[v], part[1]))
      return draw_view (scene, (FpViewId) v);
  for (guint k = 0; k < FP_N_PEW_TYPICAL; k++)
    if (g_str_equal (fp_pew_typical_id ((FpPewTypical) k), part[1]))
      return draw_pew (scene, (FpPewTypical) k);
  return NULL;
}

static void
add_picture (Writer *w, cmark_node *image)
{
  const char *url = cmark_node_get_url (image);
  g_autofree char *tells = text_of (image), *caption = NULL;
  g_autoptr (FpDrawing) drawing = g_str_has_prefix (url, "picture:") ? draw (url) : NULL;
  GtkWidget *view = fp_drawing_view_new (tells);

  gtk_widget_set_size_request (view, -1, PICTURE_PX);
  fp_drawing_view_set (FP_DRAWING_VIEW (view), drawing, FALSE);
  gtk_box_append (GTK_BOX (w->page), view);
  caption = g_markup_printf_escaped ("<i>%s</i>", tells);
  gtk_widget_add_css_class (add_label (w, caption, 0), "dim-label");
}

/* --- blocks --------------------------------------------------------------- */

static cmark_node *
lone_picture (cmark_node *paragraph)
{
  cmark_node *child = cmark_node_first_child (paragraph);

  return child != NULL && cmark_node_next (child) == NULL && cmark_node_get_type (child) == CMARK_NODE_IMAGE ? child : NULL;
}

static void
add_heading (Writer *w, cmark_node *node)
{
  static const char *const classes[] = { "start-title", "section-title", "group-title" };
  g_autofree char *markup = markup_of (node);
  const int level = cmark_node_get_heading_level (node);
  GtkWidget *label = add_label (w, markup, 0);

  gtk_widget_add_css_class (label, classes[CLAMP (level, 1, 3) - 1]);
  gtk_widget_set_margin_top (label, level == 1 ? 0 : 10);
}

static void
add_items (Writer *w, cmark_node *list)
{
  const gboolean ordered = cmark_node_get_list_type (list) == CMARK_ORDERED_LIST;
  int number = cmark_node_get_list_start (list);

  for (cmark_node *item = cmark_node_first_child (list); item != NULL; item = cmark_node_next (item))
    {
      g_autofree char *words = markup_of (item);
      g_autofree char *line = ordered ? g_strdup_printf ("%d.  %s", number++, words) : g_strconcat ("•  ", words, NULL);

      add_label (w, line, INDENT);
    }
}

/* The last line ends where the text does. */
static char *
code_markup (cmark_node *node)
{
  g_autofree char *code = g_strchomp (g_strdup (cmark_node_get_literal (node)));

  return g_markup_printf_escaped ("<tt>%s</tt>", code);
}

static void
add_block (Writer *w, cmark_node *node)
{
  g_autofree char *markup = NULL;

  switch (cmark_node_get_type (node))
    {
    case CMARK_NODE_HEADING:
      add_heading (w, node);
      break;
    case CMARK_NODE_LIST:
      add_items (w, node);
      break;
    case CMARK_NODE_CODE_BLOCK:
      markup = code_markup (node);
      add_label (w, markup, CODE_INDENT);
      break;
    case CMARK_NODE_PARAGRAPH:
      if (lone_picture (node) != NULL)
        add_picture (w, lone_picture (node));
      else
        {
          markup = markup_of (node);
          add_label (w, markup, 0);
        }
      break;
    default: /* pages of help are written without others; tests see to it */
      break;
    }
}

GtkWidget *
fp_help_page_new (const char *markdown, FpHelpLink on_link, gpointer data)
{
  cmark_node *root = cmark_parse_document (markdown, strlen (markdown), CMARK_OPT_SMART);
  Writer *w = g_new (Writer, 1);

  *w = (Writer) { gtk_box_new (GTK_ORIENTATION_VERTICAL, 8), on_link, data };
  gtk_widget_add_css_class (w->page, "page");
  g_object_set_data_full (G_OBJECT (w->page), "writer", w, g_free);
  for (cmark_node *node = cmark_node_first_child (root); node != NULL; node = cmark_node_next (node))
    add_block (w, node);
  cmark_node_free (root);
  return w->page;
}

char *
fp_help_page_title (const char *markdown)
{
  cmark_node *root = cmark_parse_document (markdown, strlen (markdown), CMARK_OPT_SMART);
  cmark_node *first = cmark_node_first_child (root);
  char *title = first != NULL && cmark_node_get_type (first) == CMARK_NODE_HEADING ? text_of (first) : g_strdup ("");

  cmark_node_free (root);
  return title;
}
