/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "findings-list.h"

#include "finding-row.h"
#include "scroll-to.h"

struct _FpFindingsList
{
  GtkWidget   parent_instance;
  FpDocument *document;
  GArray     *shown;       /* FpShown, one for each row */
  char       *picked;      /* key of the chosen one     */
  char       *head, *note; /* over and under what would settle it; NULL       */
  char      **offers;      /* what would; NULL: nothing known                 */
  gboolean    filling;
  guint       pointed;     /* the offer that the pointer or the focus is on; FP_FINDINGS_NO_OFFER */

  GtkWidget  *summary, *list, *rest, *spinner, *full, *settle, *amiss, *amiss_words;
};

G_DEFINE_FINAL_TYPE (FpFindingsList, fp_findings_list, GTK_TYPE_WIDGET)

static guint picked_signal, followed_signal, remedy_signal, pointed_signal, full_signal;

/* --- rows ----------------------------------------------------------------- */

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
      gtk_list_box_append (GTK_LIST_BOX (self->list), fp_finding_row_new (self));
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
  const FpFindingOffers offers = { self->head, self->note, (const char *const *) self->offers };
  GtkListBoxRow *picked = NULL;

  self->filling = TRUE;
  set_row_count (self, self->shown->len);
  for (guint i = 0; i < self->shown->len; i++)
    {
      fp_finding_row_show (GTK_WIDGET (row_at (self, i)), &g_array_index (self->shown, FpShown, i), is_picked (self, i), &offers);
      if (is_picked (self, i))
        picked = row_at (self, i);
    }
  if (gtk_list_box_get_selected_row (GTK_LIST_BOX (self->list)) != picked)
    gtk_list_box_select_row (GTK_LIST_BOX (self->list), picked);
  self->filling = FALSE;
}

/* A rulebook with a fault finds nothing, which must not look as if nothing were wrong. */
static void
show_amiss (FpFindingsList *self, FpFindings *newest)
{
  const GPtrArray *amiss = newest != NULL ? fp_findings_amiss (newest) : NULL;
  g_autoptr (GString) all = g_string_new (NULL);
  g_autofree char *words = newest != NULL ? fp_shown_amiss (newest) : NULL;

  for (guint i = 0; amiss != NULL && i < amiss->len; i++)
    g_string_append_printf (all, "%s%s", i > 0 ? "\n" : "", (const char *) amiss->pdata[i]);
  gtk_widget_set_visible (self->amiss, words != NULL);
  gtk_label_set_text (GTK_LABEL (self->amiss_words), words != NULL ? words : "");
  gtk_widget_set_tooltip_text (self->amiss, all->str);
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
  show_amiss (self, newest);
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
  fp_findings_list_point (self, FP_FINDINGS_NO_OFFER);
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
fp_findings_list_want (FpFindingsList *self, guint which)
{
  g_signal_emit (self, remedy_signal, 0, which);
}

void
fp_findings_list_point (FpFindingsList *self, guint which)
{
  if (self->pointed == which)
    return;
  self->pointed = which;
  g_signal_emit (self, pointed_signal, 0, which);
}

void
fp_findings_list_follow (FpFindingsList *self)
{
  g_signal_emit (self, followed_signal, 0);
}

void
fp_findings_list_reveal (FpFindingsList *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (GTK_LIST_BOX (self->list));

  if (row != NULL)
    fp_scroll_to (GTK_WIDGET (row));
}

void
fp_findings_list_set_settling (FpFindingsList *self, gboolean settling)
{
  gtk_button_set_label (GTK_BUTTON (self->settle), settling ? "Settling …" : "Settle All");
}

gboolean
fp_findings_list_focus (FpFindingsList *self)
{
  GtkListBoxRow *row = gtk_list_box_get_selected_row (GTK_LIST_BOX (self->list));

  row = row != NULL ? row : row_at (self, 0);
  return row != NULL && gtk_widget_grab_focus (GTK_WIDGET (row));
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
  gtk_widget_class_bind_template_child (widget_class, FpFindingsList, settle);
  gtk_widget_class_bind_template_child (widget_class, FpFindingsList, amiss);
  gtk_widget_class_bind_template_child (widget_class, FpFindingsList, amiss_words);
  gtk_widget_class_bind_template_callback (widget_class, on_full);
  gtk_widget_class_bind_template_callback (widget_class, on_row_selected);
  gtk_widget_class_bind_template_callback (widget_class, on_row_activated);
  picked_signal = g_signal_new ("picked", FP_TYPE_FINDINGS_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 0);
  followed_signal = g_signal_new ("followed", FP_TYPE_FINDINGS_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                  G_TYPE_NONE, 0);
  remedy_signal = g_signal_new ("remedy", FP_TYPE_FINDINGS_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 1, G_TYPE_UINT);
  pointed_signal = g_signal_new ("pointed", FP_TYPE_FINDINGS_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 1, G_TYPE_UINT);
  full_signal = g_signal_new ("full", FP_TYPE_FINDINGS_LIST, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
fp_findings_list_init (FpFindingsList *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  self->shown = fp_shown_new (NULL, NULL);
  self->pointed = FP_FINDINGS_NO_OFFER;
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
