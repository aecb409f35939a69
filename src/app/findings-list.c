/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "findings-list.h"

#include "scroll-to.h"
#include "shown-findings.h"
#include "tip.h"

struct _FpFindingsList
{
  GtkWidget   parent_instance;
  FpDocument *document;
  GArray     *shown;       /* FpShown, one for each row */
  char       *picked;      /* key of the chosen one     */
  char       *head, *note; /* over and under what would settle it; NULL       */
  char      **offers;      /* what would; NULL: nothing known                 */
  gboolean    filling;

  GtkWidget  *summary, *list, *rest, *spinner, *full;
};

G_DEFINE_FINAL_TYPE (FpFindingsList, fp_findings_list, GTK_TYPE_WIDGET)

static guint picked_signal, followed_signal, remedy_signal, full_signal;

static void on_wanted (GtkButton *button, FpFindingsList *self);
static void on_sight (FpFindingsList *self);

/* --- rows ----------------------------------------------------------------- */

typedef struct
{
  GtkWidget *icon, *title, *measure, *detail, *sight, *source, *more, *caution;
  GtkWidget *offer, *head, *note; /* round what is offered                  */
  GtkWidget *words[FP_FINDINGS_OFFERS], *button[FP_FINDINGS_OFFERS]; /* made when first needed */
} Row;

static GtkWidget *
text_line (GtkWidget *box, const char *css)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0.0f);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (css != NULL)
    gtk_widget_add_css_class (label, css);
  gtk_box_append (GTK_BOX (box), label);
  return label;
}

static void
add_offer (Row *row, GtkWidget *text)
{
  row->offer = gtk_box_new (GTK_ORIENTATION_VERTICAL, 4);
  gtk_widget_add_css_class (row->offer, "offer");
  row->head = text_line (row->offer, "caption-heading");
  row->note = text_line (row->offer, "caption");
  gtk_box_append (GTK_BOX (text), row->offer);
}

static void
make_offer (Row *row, guint i, FpFindingsList *self)
{
  GtkWidget *button = gtk_button_new_with_label ("Make This Change");

  row->words[i] = text_line (row->offer, NULL);
  row->button[i] = button;
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  g_object_set_data (G_OBJECT (button), "offer", GUINT_TO_POINTER (i));
  g_signal_connect (button, "clicked", G_CALLBACK (on_wanted), self);
  gtk_box_append (GTK_BOX (row->offer), button);
  gtk_box_reorder_child_after (GTK_BOX (row->offer), row->note, button);
}

/* Several are told apart by what each says. */
static void
show_offer (Row *row, guint i, const char *words)
{
  g_autofree char *spoken = g_strdup_printf ("Make This Change: %s", words);

  gtk_label_set_text (GTK_LABEL (row->words[i]), words);
  gtk_widget_set_tooltip_text (row->button[i], words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row->button[i]), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, spoken, -1);
}

static void
show_offers (Row *row, FpFindingsList *self)
{
  const guint n = self->offers != NULL ? MIN (g_strv_length (self->offers), FP_FINDINGS_OFFERS) : 0;

  gtk_label_set_text (GTK_LABEL (row->head), self->head != NULL ? self->head : "");
  gtk_widget_set_visible (row->head, self->head != NULL);
  gtk_label_set_text (GTK_LABEL (row->note), self->note != NULL ? self->note : "");
  gtk_widget_set_visible (row->note, self->note != NULL);
  for (guint i = 0; i < FP_FINDINGS_OFFERS; i++)
    {
      if (i < n && row->words[i] == NULL)
        make_offer (row, i, self);
      if (i < n)
        show_offer (row, i, self->offers[i]);
      if (row->words[i] == NULL)
        continue;
      gtk_widget_set_visible (row->words[i], i < n);
      gtk_widget_set_visible (row->button[i], i < n);
    }
}

/* Made when first needed; only what is about something to be seen has one. */
static void
show_sight (Row *row, gboolean shown, FpFindingsList *self)
{
  if (shown && row->sight == NULL)
    {
      row->sight = gtk_button_new_with_label ("Show in Sight");
      gtk_widget_add_css_class (row->sight, "small");
      gtk_widget_set_halign (row->sight, GTK_ALIGN_START);
      gtk_widget_set_tooltip_text (row->sight, "What every place sees of it, and the line of sight of the worst (Enter)");
      g_signal_connect_swapped (row->sight, "clicked", G_CALLBACK (on_sight), self);
      gtk_box_insert_child_after (GTK_BOX (gtk_widget_get_parent (row->detail)), row->sight, row->detail);
    }
  if (row->sight != NULL)
    gtk_widget_set_visible (row->sight, shown);
}

static GtkWidget *
row_new (void)
{
  GtkWidget *list_row = gtk_list_box_row_new (), *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  GtkWidget *text = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  Row *row = g_new0 (Row, 1);

  row->icon = gtk_image_new ();
  gtk_widget_set_valign (row->icon, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (line), row->icon);
  gtk_box_append (GTK_BOX (line), text);
  gtk_widget_set_hexpand (text, TRUE);
  row->title = text_line (text, "heading");
  row->measure = text_line (text, NULL);
  row->detail = text_line (text, NULL);
  add_offer (row, text);
  row->source = text_line (text, "caption");
  row->more = text_line (text, "remedy");
  row->caution = text_line (text, "caution");
  gtk_widget_add_css_class (row->source, "dim-label");
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (list_row), line);
  g_object_set_data_full (G_OBJECT (list_row), "row", row, g_free);
  return list_row;
}

static const char *const icons[FP_N_WEIGHTS] = {
  [FP_WEIGHT_REQUIRED] = "footpace-required-symbolic",
  [FP_WEIGHT_RECOMMENDED] = "footpace-recommended-symbolic",
  [FP_WEIGHT_CUSTOMARY] = "footpace-customary-symbolic",
};
static const char *const weight_css[FP_N_WEIGHTS] = {
  [FP_WEIGHT_REQUIRED] = "required",
  [FP_WEIGHT_RECOMMENDED] = "recommended",
  [FP_WEIGHT_CUSTOMARY] = "customary",
};

/* Where and why only of the one that is chosen: more of them are in view.  One line is no paragraph: the toolkit sets a
 * paragraph a dozen times, at as many widths, before it knows how much room it needs. */
static void
set_lines (GtkWidget *label, gboolean open, int lines)
{
  gtk_label_set_wrap (GTK_LABEL (label), open || lines > 1);
  gtk_label_set_lines (GTK_LABEL (label), open ? -1 : lines);
  gtk_label_set_ellipsize (GTK_LABEL (label), open ? PANGO_ELLIPSIZE_NONE : PANGO_ELLIPSIZE_END);
}

static void
set_line (GtkWidget *label, const char *text, gboolean visible)
{
  gtk_label_set_text (GTK_LABEL (label), text != NULL ? text : "");
  gtk_widget_set_visible (label, visible && text != NULL && *text != '\0');
}

/* Only where it changes: the toolkit measures all of a row anew that is given even the same icon again. */
static void
show_weight (GtkWidget *icon, FpWeight weight)
{
  if (g_strcmp0 (gtk_image_get_icon_name (GTK_IMAGE (icon)), icons[weight]) == 0)
    return;
  gtk_image_set_from_icon_name (GTK_IMAGE (icon), icons[weight]);
  for (guint w = 0; w < FP_N_WEIGHTS; w++)
    if (w == (guint) weight)
      gtk_widget_add_css_class (icon, weight_css[w]);
    else
      gtk_widget_remove_css_class (icon, weight_css[w]);
  fp_tip_set (icon, fp_weight_label (weight));
}

static void
row_show (FpFindingsList *self, GtkWidget *list_row, const FpShown *shown, gboolean open)
{
  const gboolean offered = open && (self->offers != NULL || self->note != NULL);
  Row *row = g_object_get_data (G_OBJECT (list_row), "row");
  const FpFinding *f = shown->finding;
  FpFocus focus;
  g_autofree char *measure = fp_shown_measure (f), *speech = fp_shown_speech (shown);

  show_weight (row->icon, f->rule->weight);
  set_line (row->title, f->title, TRUE);
  set_line (row->measure, measure, TRUE);
  set_line (row->detail, f->detail, open);
  show_sight (row, open && fp_measure_focus (f->rule->measure, &focus), self);
  set_line (row->source, f->rule->source, open);
  set_lines (row->title, open, 2);
  set_lines (row->measure, open, 1);
  if (offered)
    show_offers (row, self);
  gtk_widget_set_visible (row->offer, offered);
  set_line (row->more, f->rule->advice, open);
  set_line (row->caution, f->rule->caution, open);
  if (shown->stale)
    gtk_widget_add_css_class (list_row, "stale");
  else
    gtk_widget_remove_css_class (list_row, "stale");
  gtk_accessible_update_property (GTK_ACCESSIBLE (list_row), GTK_ACCESSIBLE_PROPERTY_LABEL, speech, -1);
}

static GtkListBoxRow *
row_at (FpFindingsList *self, guint i)
{
  return gtk_list_box_get_row_at_index (GTK_LIST_BOX (self->list), (int) i);
}

static void
set_row_count (FpFindingsList *self, guint n)
{
  GtkListBoxRow *extra;

  while ((extra = row_at (self, n)) != NULL)
    gtk_list_box_remove (GTK_LIST_BOX (self->list), GTK_WIDGET (extra));
  for (guint i = 0; i < n; i++)
    if (row_at (self, i) == NULL)
      gtk_list_box_append (GTK_LIST_BOX (self->list), row_new ());
}

/* --- showing -------------------------------------------------------------- */

static gboolean
is_picked (FpFindingsList *self, guint i)
{
  g_autofree char *key = fp_shown_key (&g_array_index (self->shown, FpShown, i));

  return g_strcmp0 (key, self->picked) == 0;
}

static void
show_rows (FpFindingsList *self)
{
  GtkListBoxRow *picked = NULL;

  self->filling = TRUE;
  set_row_count (self, self->shown->len);
  for (guint i = 0; i < self->shown->len; i++)
    {
      row_show (self, GTK_WIDGET (row_at (self, i)), &g_array_index (self->shown, FpShown, i), is_picked (self, i));
      if (is_picked (self, i))
        picked = row_at (self, i);
    }
  if (gtk_list_box_get_selected_row (GTK_LIST_BOX (self->list)) != picked)
    gtk_list_box_select_row (GTK_LIST_BOX (self->list), picked);
  self->filling = FALSE;
}

static void
show (FpFindingsList *self)
{
  FpFindings *newest = fp_document_findings (self->document);
  g_autofree char *summary = NULL, *rest = NULL;

  g_array_unref (self->shown);
  self->shown = fp_shown_new (newest, fp_document_sighted (self->document));
  show_rows (self);
  summary = fp_shown_summary (self->shown);
  rest = newest != NULL ? fp_shown_rest (newest, self->shown) : g_strdup ("Being measured …");
  gtk_label_set_text (GTK_LABEL (self->summary), summary);
  gtk_label_set_text (GTK_LABEL (self->rest), rest);
  gtk_widget_set_visible (self->list, self->shown->len > 0);
}

static void
show_busy (FpFindingsList *self)
{
  gboolean busy = fp_document_is_checking (self->document);

  gtk_spinner_set_spinning (GTK_SPINNER (self->spinner), busy);
  gtk_widget_set_opacity (self->spinner, busy ? 1.0 : 0.0);
}

static void
on_findings (FpFindingsList *self)
{
  show (self);
  show_busy (self);
}

static void
forget_offers (FpFindingsList *self)
{
  g_clear_pointer (&self->offers, g_strfreev);
  g_clear_pointer (&self->head, g_free);
  g_clear_pointer (&self->note, g_free);
}

static void
on_row_selected (GtkListBox *list, GtkListBoxRow *row, FpFindingsList *self)
{
  (void) list;
  if (self->filling || row == NULL)
    return;
  forget_offers (self);
  g_free (self->picked);
  self->picked = fp_shown_key (&g_array_index (self->shown, FpShown, gtk_list_box_row_get_index (row)));
  show_rows (self);
  fp_scroll_to (GTK_WIDGET (row));
  g_signal_emit (self, picked_signal, 0);
}

static void
on_sight (FpFindingsList *self)
{
  g_signal_emit (self, followed_signal, 0);
}

/* A click on the one that is chosen already: its mark may have been taken away meanwhile. */
static void
on_row_activated (GtkListBox *list, GtkListBoxRow *row, FpFindingsList *self)
{
  (void) list, (void) row;
  g_signal_emit (self, picked_signal, 0);
}

const FpShown *
fp_findings_list_picked (FpFindingsList *self)
{
  for (guint i = 0; i < self->shown->len; i++)
    if (is_picked (self, i))
      return &g_array_index (self->shown, FpShown, i);
  return NULL;
}

static gboolean
is_offered (FpFindingsList *self, const char *head, const char *const *remedies, const char *note)
{
  if ((remedies == NULL) != (self->offers == NULL) || g_strcmp0 (head, self->head) != 0 || g_strcmp0 (note, self->note) != 0)
    return FALSE;
  return remedies == NULL || g_strv_equal (remedies, (const char *const *) self->offers);
}

void
fp_findings_list_offer (FpFindingsList *self, const char *head, const char *const *remedies, const char *note)
{
  const char *const *any = remedies != NULL && remedies[0] != NULL ? remedies : NULL;

  if (is_offered (self, head, any, note))
    return;
  forget_offers (self);
  self->offers = g_strdupv ((char **) any);
  self->head = g_strdup (head);
  self->note = g_strdup (note);
  show_rows (self);
}

void
fp_findings_list_reveal (FpFindingsList *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (GTK_LIST_BOX (self->list));

  if (row != NULL)
    fp_scroll_to (GTK_WIDGET (row));
}

gboolean
fp_findings_list_focus (FpFindingsList *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (GTK_LIST_BOX (self->list));

  row = row != NULL ? row : row_at (self, 0);
  return row != NULL && gtk_widget_grab_focus (GTK_WIDGET (row));
}

static void
on_wanted (GtkButton *button, FpFindingsList *self)
{
  g_signal_emit (self, remedy_signal, 0, GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "offer")));
}

static gboolean
on_key (GtkEventControllerKey *keys, guint key, guint code, GdkModifierType state, FpFindingsList *self)
{
  GtkRoot *root = gtk_widget_get_root (GTK_WIDGET (self)); /* NULL: the window is going */
  GtkWidget *focus = root != NULL ? gtk_root_get_focus (root) : NULL;

  (void) keys, (void) code, (void) state;
  if ((key != GDK_KEY_Return && key != GDK_KEY_KP_Enter) || !GTK_IS_LIST_BOX_ROW (focus)
      || fp_findings_list_picked (self) == NULL)
    return FALSE;
  g_signal_emit (self, followed_signal, 0);
  return TRUE;
}

static void
on_full (FpFindingsList *self)
{
  gboolean full = fp_findings_list_is_full (self);

  gtk_button_set_icon_name (GTK_BUTTON (self->full), full ? "pan-down-symbolic" : "pan-up-symbolic");
  gtk_widget_set_tooltip_text (self->full, full ? "Show the list of things again" : "Findings at the full height");
  g_signal_emit (self, full_signal, 0);
}

gboolean
fp_findings_list_is_full (FpFindingsList *self)
{
  return gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (self->full));
}

void
fp_findings_list_set_full (FpFindingsList *self, gboolean full)
{
  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (self->full), full);
}

void
fp_findings_list_set_document (FpFindingsList *self, FpDocument *document)
{
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  g_clear_pointer (&self->picked, g_free);
  forget_offers (self);
  if (document == NULL)
    return;
  g_signal_connect_swapped (document, "findings", G_CALLBACK (on_findings), self);
  g_signal_connect_swapped (document, "scene", G_CALLBACK (show_busy), self);
  on_findings (self);
}

/* --- the widget ----------------------------------------------------------- */

static void
fp_findings_list_dispose (GObject *object)
{
  FpFindingsList *self = FP_FINDINGS_LIST (object);
  GtkWidget *child;

  fp_findings_list_set_document (self, NULL);
  self->filling = TRUE;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  g_clear_pointer (&self->shown, g_array_unref);
  G_OBJECT_CLASS (fp_findings_list_parent_class)->dispose (object);
}

static void
fp_findings_list_class_init (FpFindingsListClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fp_findings_list_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "findings");
  gtk_widget_class_set_template_from_resource (widget_class, "/org/footpace/Footpace/findings-list.ui");
  gtk_widget_class_bind_template_child (widget_class, FpFindingsList, summary);
  gtk_widget_class_bind_template_child (widget_class, FpFindingsList, list);
  gtk_widget_class_bind_template_child (widget_class, FpFindingsList, rest);
  gtk_widget_class_bind_template_child (widget_class, FpFindingsList, spinner);
  gtk_widget_class_bind_template_child (widget_class, FpFindingsList, full);
  gtk_widget_class_bind_template_callback (widget_class, on_full);
  gtk_widget_class_bind_template_callback (widget_class, on_row_selected);
  gtk_widget_class_bind_template_callback (widget_class, on_row_activated);
  picked_signal = g_signal_new ("picked", FP_TYPE_FINDINGS_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 0);
  followed_signal = g_signal_new ("followed", FP_TYPE_FINDINGS_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 0);
  remedy_signal = g_signal_new ("remedy", FP_TYPE_FINDINGS_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 1, G_TYPE_UINT);
  full_signal = g_signal_new ("full", FP_TYPE_FINDINGS_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
fp_findings_list_init (FpFindingsList *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->shown = fp_shown_new (NULL, NULL);
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect (keys, "key-pressed", G_CALLBACK (on_key), self);
  gtk_widget_add_controller (self->list, keys);
}

GtkWidget *
fp_findings_list_new (void)
{
  return g_object_new (FP_TYPE_FINDINGS_LIST, NULL);
}
