/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "outline-dialog.h"

#include "amiss.h"
#include "compat-4-8.h"
#include "corner-editor.h"
#include "outline-edit.h"
#include "outline-picture.h"
#include "text-dialog.h"
#include "walk-editor.h"

#define DELAY 150 /* ms after the last key */
#define WORDS_CHARS 34
#define WORDS_LINES 9
#define GAP_SHARED  "Length of each side, turn at its end. A gap of up to 1 %\nof the way is shared out over sides that are not typed."

typedef struct
{
  GtkWidget  *window, *stack, *walk, *corners, *picture, *closing, *error, *accept;
  FpDocument *document;    /* owned */
  char       *id;
  FpUnits     units;
  gboolean    closed;
  GArray     *now;         /* of FpPoint: what was last good                  */
  FpPoint     start;
  double      direction;   /* of the first side                               */
  gboolean    touched;     /* since the editor that is shown was filled       */
  gboolean    changed;     /* at all                                          */
  gboolean    filling;
  guint       source;
} Dialog;

static void
dialog_free (gpointer data)
{
  Dialog *d = data;

  g_clear_handle_id (&d->source, g_source_remove);
  g_array_unref (d->now);
  g_object_unref (d->document);
  g_free (d->id);
  g_free (d);
}

static gboolean
is_walk (Dialog *d)
{
  return g_strcmp0 (gtk_stack_get_visible_child_name (GTK_STACK (d->stack)), "sides") == 0;
}

/* --- reading -------------------------------------------------------------- */

static gboolean
read_walk (Dialog *d, GArray *out, GError **error)
{
  g_autoptr (GArray) legs = g_array_new (FALSE, FALSE, sizeof (FpLeg));
  g_autoptr (GArray) typed = g_array_new (FALSE, FALSE, sizeof (gboolean));
  g_autofree char *tells = NULL;
  const FpLeg *leg;
  const gboolean *kept;
  FpClosure closing;

  if (!fp_walk_editor_read (FP_WALK_EDITOR (d->walk), legs, typed, error))
    return FALSE;
  leg = (const FpLeg *) (gpointer) legs->data;
  kept = (const gboolean *) (gpointer) typed->data;
  if (!fp_outline_walk (leg, legs->len, kept, d->closed, d->start, d->direction, &closing, out, error))
    return FALSE;
  if (!d->closed)
    return TRUE;
  tells = fp_closure_tells (&closing, fp_traverse_can_keep (leg, legs->len, kept, &closing), d->units);
  gtk_label_set_text (GTK_LABEL (d->closing), tells);
  if (fp_closure_is_small (&closing))
    return TRUE;
  g_set_error (error, FP_ERROR, FP_ERROR_GEOMETRY, "%s", tells);
  return FALSE;
}

/* What nobody has touched is not rounded by being shown. */
static gboolean
read_corners (Dialog *d, GArray *out, GError **error)
{
  if (d->touched)
    return is_walk (d) ? read_walk (d, out, error)
           : fp_corner_editor_read (FP_CORNER_EDITOR (d->corners), out, error);
  g_array_append_vals (out, d->now->data, d->now->len);
  return TRUE;
}

static FpProject *
make (Dialog *d, GError **error)
{
  g_autoptr (GArray) corners = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  const guint least = fp_outline_least (d->closed);

  gtk_label_set_text (GTK_LABEL (d->closing), "");
  if (!read_corners (d, corners, error))
    return NULL;
  fp_outline_picture_set (d->picture, (const FpPoint *) (gpointer) corners->data, corners->len, d->closed);
  if (corners->len < least)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_GEOMETRY, "It takes at least %u corners.", least);
      return NULL;
    }
  g_array_set_size (d->now, 0);
  g_array_append_vals (d->now, corners->data, corners->len);
  return fp_outline_make (d->document, d->id, (const FpPoint *) (gpointer) corners->data, corners->len, error);
}

static void
tell_error (Dialog *d, const GError *error)
{
  g_autofree char *said = error != NULL ? fp_amiss_words (fp_document_base_scene (d->document), error->message) : NULL;

  gtk_label_set_text (GTK_LABEL (d->error), said != NULL ? said : "");
  gtk_widget_set_visible (d->error, error != NULL);
  /* What is wrong says it already. */
  gtk_widget_set_visible (d->closing, error == NULL && is_walk (d) && d->closed);
  gtk_widget_set_sensitive (d->accept, error == NULL);
}

static gboolean
preview (gpointer data)
{
  Dialog *d = data;
  g_autoptr (GError) error = NULL;
  FpProject *next = make (d, &error);

  d->source = 0;
  if (next != NULL)
    fp_document_preview (d->document, next);
  else
    fp_document_drop_preview (d->document);
  tell_error (d, error);
  return G_SOURCE_REMOVE;
}

static void
on_changed (Dialog *d)
{
  if (d->filling)
    return;
  d->touched = d->changed = TRUE;
  gtk_widget_set_sensitive (d->accept, TRUE);
  g_clear_handle_id (&d->source, g_source_remove);
  d->source = g_timeout_add (DELAY, preview, d);
}

static void
on_accept (Dialog *d)
{
  const FpPlaced *placed = fp_document_placed (d->document, d->id);
  g_autofree char *label = g_strdup_printf ("Outline of %s", placed != NULL ? fp_item_name (placed->item) : d->id);
  g_autoptr (GError) error = NULL;
  FpProject *next = d->changed ? make (d, &error) : NULL;

  tell_error (d, error);
  if (error != NULL)
    return;
  fp_document_edit (d->document, next, label, NULL);
  gtk_window_destroy (GTK_WINDOW (d->window));
}

static void
on_destroy (Dialog *d)
{
  g_clear_handle_id (&d->source, g_source_remove);
  fp_document_drop_preview (d->document);
}

/* --- the two ways ----------------------------------------------------------- */

/* The way that comes to be shown begins from what was last good in the other. */
static void
fill (Dialog *d)
{
  const FpPoint *corner = (const FpPoint *) (gpointer) d->now->data;
  g_autoptr (GArray) legs = NULL;

  d->touched = FALSE;
  if (is_walk (d))
    {
      legs = fp_outline_legs (corner, d->now->len, d->closed, &d->direction);
      d->start = d->now->len > 0 ? corner[0] : (FpPoint) { 0, 0 };
      d->filling = TRUE;
      fp_walk_editor_set (FP_WALK_EDITOR (d->walk), (const FpLeg *) (gpointer) legs->data, legs->len);
      d->filling = FALSE;
    }
  else
    fp_corner_editor_set (FP_CORNER_EDITOR (d->corners), corner, d->now->len);
}

static void
on_way (Dialog *d)
{
  g_autoptr (GError) error = NULL;

  g_clear_handle_id (&d->source, g_source_remove);
  fill (d);
  tell_error (d, NULL);
  d->source = g_timeout_add (DELAY, preview, d);
}

/* --- building ---------------------------------------------------------------- */

static GtkWidget *
scrolled (GtkWidget *child, const char *says)
{
  GtkWidget *scroller = gtk_scrolled_window_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  GtkWidget *label = gtk_label_new (says);

  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_min_content_height (GTK_SCROLLED_WINDOW (scroller), 320);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), child);
  gtk_widget_set_vexpand (scroller, TRUE);
  gtk_widget_set_hexpand (box, TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_widget_add_css_class (label, "dim-label");
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), scroller);
  return box;
}

static GtkWidget *
wrapped (const char *css)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), WORDS_CHARS);
  gtk_label_set_width_chars (GTK_LABEL (label), WORDS_CHARS);
  gtk_widget_add_css_class (label, css);
  gtk_widget_hide (label);
  return label;
}

/* What comes to be said must not move the fields in which one types. */
static void
keep_room (GtkWidget *words)
{
  PangoContext *context = gtk_widget_get_pango_context (words);
  PangoFontMetrics *metrics = pango_context_get_metrics (context, NULL, NULL);
  const int wide = MAX (pango_font_metrics_get_approximate_char_width (metrics),
                        pango_font_metrics_get_approximate_digit_width (metrics)) * WORDS_CHARS;

  gtk_widget_set_size_request (words, PANGO_PIXELS_CEIL (wide),
                               PANGO_PIXELS_CEIL (pango_font_metrics_get_height (metrics)) * WORDS_LINES);
  pango_font_metrics_unref (metrics);
}

static GtkWidget *
editors (Dialog *d)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6), *switcher = gtk_stack_switcher_new ();

  d->stack = gtk_stack_new ();
  d->walk = fp_walk_editor_new (d->units);
  d->corners = fp_corner_editor_new (d->units, d->closed);
  gtk_stack_add_titled (GTK_STACK (d->stack), scrolled (d->corners, "Across (Epistle side +), along (east +)"),
                        "corners", "Corners");
  gtk_stack_add_titled (GTK_STACK (d->stack), scrolled (d->walk, d->closed ? GAP_SHARED : "Length of each side, turn at its end"),
                        "sides", "Sides and Turns");
  gtk_stack_switcher_set_stack (GTK_STACK_SWITCHER (switcher), GTK_STACK (d->stack));
  gtk_widget_set_halign (switcher, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (box), switcher);
  gtk_box_append (GTK_BOX (box), d->stack);
  g_signal_connect_swapped (d->walk, "changed", G_CALLBACK (on_changed), d);
  g_signal_connect_swapped (d->corners, "changed", G_CALLBACK (on_changed), d);
  g_signal_connect_swapped (d->stack, "notify::visible-child", G_CALLBACK (on_way), d);
  return box;
}

static GtkWidget *
picture (Dialog *d)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 8), *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  d->picture = fp_outline_picture_new ();
  d->closing = wrapped ("dim-label");
  gtk_widget_add_css_class (d->closing, "closing");
  d->error = wrapped ("error");
  gtk_box_append (GTK_BOX (box), d->picture);
  gtk_box_append (GTK_BOX (words), d->closing);
  gtk_box_append (GTK_BOX (words), d->error);
  keep_room (words);
  gtk_box_append (GTK_BOX (box), words);
  return box;
}

static GtkWidget *
titlebar (Dialog *d)
{
  GtkWidget *bar = gtk_header_bar_new (), *cancel = gtk_button_new_with_mnemonic ("_Cancel");

  gtk_header_bar_set_show_title_buttons (GTK_HEADER_BAR (bar), FALSE);
  d->accept = gtk_button_new_with_mnemonic ("_Apply");
  gtk_widget_add_css_class (d->accept, "suggested-action");
  gtk_header_bar_pack_start (GTK_HEADER_BAR (bar), cancel);
  gtk_header_bar_pack_end (GTK_HEADER_BAR (bar), d->accept);
  g_signal_connect_swapped (cancel, "clicked", G_CALLBACK (gtk_window_destroy), d->window);
  g_signal_connect_swapped (d->accept, "clicked", G_CALLBACK (on_accept), d);
  return bar;
}

static void
build (Dialog *d, GtkWindow *parent, const char *name)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 18);
  g_autofree char *title = g_strdup_printf ("Outline of %s", name);

  gtk_widget_add_css_class (box, "page");
  gtk_box_append (GTK_BOX (box), editors (d));
  gtk_box_append (GTK_BOX (box), picture (d));
  gtk_window_set_title (GTK_WINDOW (d->window), title);
  gtk_window_set_titlebar (GTK_WINDOW (d->window), titlebar (d));
  gtk_window_set_child (GTK_WINDOW (d->window), box);
  gtk_window_set_modal (GTK_WINDOW (d->window), TRUE);
  gtk_window_set_default_size (GTK_WINDOW (d->window), 820, 500);
  gtk_window_set_transient_for (GTK_WINDOW (d->window), parent);
  gtk_window_set_destroy_with_parent (GTK_WINDOW (d->window), TRUE);
  gtk_window_set_default_widget (GTK_WINDOW (d->window), d->accept);
  fp_close_on_escape (GTK_WINDOW (d->window));
  fp_name_buttons (d->window);
}

GtkWidget *
fp_outline_dialog_show (GtkWindow *parent, FpDocument *document, const char *id)
{
  const FpItem *item = fp_document_placed (document, id)->item;
  Dialog *d = g_new0 (Dialog, 1);
  guint n;
  const FpPoint *corner = fp_item_corners (item, &n);

  d->window = gtk_window_new ();
  d->document = g_object_ref (document);
  d->id = g_strdup (id);
  d->units = fp_project_brief (fp_document_project (document))->units;
  d->closed = fp_outline_closed (item);
  d->now = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  g_array_append_vals (d->now, corner, n);
  g_object_set_data_full (G_OBJECT (d->window), "dialog", d, dialog_free);
  g_signal_connect_swapped (d->window, "destroy", G_CALLBACK (on_destroy), d);
  build (d, parent, fp_item_name (item));
  fill (d);
  fp_outline_picture_set (d->picture, corner, n, d->closed);
  gtk_window_present (GTK_WINDOW (d->window));
  gtk_widget_child_focus (d->corners, GTK_DIR_TAB_FORWARD);
  return d->window;
}
