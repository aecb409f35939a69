/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "alternatives-strip.h"

#include "drawing-view.h"
#include "late-menu.h"
#include "latest.h"
#include "scroll-to.h"
#include "small-drawing.h"
#include "tip.h"

/* Small drawings wait for each other, newest first; nobody watches them during a drag. */
#define GRACE_MS 1500
/* They are no part of the frame with the edit: nothing is begun before that has been painted. */
#define LULL_MS  50
#define BAR_PX   14

struct _FpAlternativesStrip
{
  GtkWidget   parent_instance;
  FpDocument *document;
  FpLatest   *latest;
  FpOverviewMemory *memory; /* of the background thread alone */
  const FpProject *drawn;  /* owned: the project that the pictures show or are being made of */
  gboolean    filling;
  guint       bar;         /* source that shows or hides the scroll bar         */
  guint       n, shown;    /* alternatives, and which of them was brought into view */
  GtkWidget  *scroller, *cards, *menu_button;
  GMenuModel *alternative_menu;
  GSimpleAction *facing;   /* of the celebrant: "brief", "east", "people"       */
};

G_DEFINE_FINAL_TYPE (FpAlternativesStrip, fp_alternatives_strip, GTK_TYPE_WIDGET)

typedef struct
{
  GtkWidget *picture, *name;
  char      *levels;       /* what was last computed of it; NULL: nothing yet */
} Card;

static void
card_free (gpointer data)
{
  g_free (((Card *) data)->levels);
  g_free (data);
}

static void
on_toggled (GtkToggleButton *button, FpAlternativesStrip *self)
{
  guint i = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "index"));

  if (!self->filling && gtk_toggle_button_get_active (button))
    fp_document_set_alternative (self->document, i);
}

/* Two lines: most names differ only at their end. */
static GtkWidget *
name_label (GtkWidget *box)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_lines (GTK_LABEL (label), 2);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_label_set_justify (GTK_LABEL (label), GTK_JUSTIFY_CENTER);
  gtk_label_set_width_chars (GTK_LABEL (label), 12);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 12);
  gtk_widget_set_valign (label, GTK_ALIGN_START);
  gtk_widget_add_css_class (label, "caption-heading");
  gtk_box_append (GTK_BOX (box), label);
  return label;
}

static GtkWidget *
card_new (FpAlternativesStrip *self, guint index, GtkWidget *group)
{
  GtkWidget *button = gtk_toggle_button_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  Card *card = g_new0 (Card, 1);

  card->picture = fp_drawing_view_new ("Elevation");
  fp_drawing_view_set_size (FP_DRAWING_VIEW (card->picture), 100, 63);
  gtk_box_append (GTK_BOX (box), card->picture);
  card->name = name_label (box);
  gtk_button_set_child (GTK_BUTTON (button), box);
  gtk_widget_add_css_class (button, "alternative");
  g_object_set_data_full (G_OBJECT (button), "card", card, card_free);
  g_object_set_data (G_OBJECT (button), "index", GUINT_TO_POINTER (index));
  if (group != NULL)
    gtk_toggle_button_set_group (GTK_TOGGLE_BUTTON (button), GTK_TOGGLE_BUTTON (group));
  g_signal_connect (button, "toggled", G_CALLBACK (on_toggled), self);
  return button;
}

static guint
set_card_count (FpAlternativesStrip *self, guint n)
{
  guint have = 0;
  GtkWidget *card = gtk_widget_get_first_child (self->cards), *next;

  for (; card != NULL; card = next, have++)
    {
      next = gtk_widget_get_next_sibling (card);
      if (have >= n)
        gtk_box_remove (GTK_BOX (self->cards), card);
    }
  for (; have < n; have++)
    gtk_box_append (GTK_BOX (self->cards), card_new (self, have, gtk_widget_get_first_child (self->cards)));
  return n;
}

/* --- which way the celebrant faces ------------------------------------------ */

static const char *const facing_words[] = { [FP_FACING_EAST] = "east", [FP_FACING_PEOPLE] = "people" };

static void
show_facing (FpAlternativesStrip *self)
{
  const FpProject *project = fp_document_project (self->document);
  FpFacing facing;
  const gboolean own = fp_alternative_own_facing (fp_project_alternative (project,
                                                                          fp_document_alternative (self->document)),
                                                  &facing);

  g_simple_action_set_state (self->facing, g_variant_new_string (own ? facing_words[facing] : "brief"));
}

static void
on_facing (GSimpleAction *action, GVariant *value, FpAlternativesStrip *self)
{
  const char *word = g_variant_get_string (value, NULL);
  const FpFacing facing = g_str_equal (word, "people") ? FP_FACING_PEOPLE : FP_FACING_EAST;
  g_autoptr (GError) error = NULL;

  (void) action;
  if (self->document == NULL)
    return;
  fp_document_edit (self->document,
                    fp_project_with_alternative_facing (fp_document_project (self->document),
                                                        fp_document_alternative (self->document),
                                                        g_str_equal (word, "brief") ? NULL : &facing, &error),
                    "Way the celebrant faces", NULL);
}

static void
add_actions (FpAlternativesStrip *self)
{
  g_autoptr (GSimpleActionGroup) group = g_simple_action_group_new ();

  self->facing = g_simple_action_new_stateful ("facing", G_VARIANT_TYPE_STRING, g_variant_new_string ("brief"));
  g_signal_connect (self->facing, "change-state", G_CALLBACK (on_facing), self);
  g_action_map_add_action (G_ACTION_MAP (group), G_ACTION (self->facing));
  gtk_widget_insert_action_group (GTK_WIDGET (self), "alternative", G_ACTION_GROUP (group));
}

/* --- the cards ---------------------------------------------------------------- */

/* The name in full, for it may be cut; then what is known of the alternative. */
static void
tell (GtkWidget *w, const FpAlternative *alternative)
{
  const Card *card = g_object_get_data (G_OBJECT (w), "card");
  const char *name = fp_alternative_name (alternative), *note = fp_alternative_note (alternative);
  g_autofree char *spoken = g_strdup (card->levels != NULL ? card->levels : "");
  g_autofree char *tip = NULL;

  g_strdelimit (spoken, "\n", ' ');
  tip = g_strdup_printf ("%s%s%s%s%s", name, *spoken != '\0' ? "\n" : "", spoken, *note != '\0' ? "\n" : "", note);
  fp_tip_set (w, tip);
  gtk_accessible_update_property (GTK_ACCESSIBLE (w), GTK_ACCESSIBLE_PROPERTY_LABEL, name,
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, spoken, -1);
}

static void
show_names (FpAlternativesStrip *self)
{
  const FpProject *project = fp_document_project (self->document);
  guint i = 0;

  self->filling = TRUE;
  set_card_count (self, fp_project_n_alternatives (project));
  for (GtkWidget *w = gtk_widget_get_first_child (self->cards); w != NULL; w = gtk_widget_get_next_sibling (w), i++)
    {
      const Card *card = g_object_get_data (G_OBJECT (w), "card");
      const FpAlternative *alternative = fp_project_alternative (project, i);

      gtk_label_set_text (GTK_LABEL (card->name), fp_alternative_name (alternative));
      tell (w, alternative);
      gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (w), i == fp_document_alternative (self->document));
    }
  self->filling = FALSE;
  if (self->n == i && self->shown == fp_document_alternative (self->document))
    return; /* whoever scrolled elsewhere meanwhile meant to */
  self->n = i;
  self->shown = fp_document_alternative (self->document);
  for (GtkWidget *w = gtk_widget_get_first_child (self->cards); w != NULL; w = gtk_widget_get_next_sibling (w))
    if (gtk_toggle_button_get_active (GTK_TOGGLE_BUTTON (w)))
      fp_scroll_to (w);
}

/* The board and the findings come first: no cards are drawn while those are being worked at. */
static void
draw_cards (FpAlternativesStrip *self)
{
  const FpProject *project = fp_document_project (self->document);

  if (project == self->drawn || fp_document_is_previewing (self->document) || fp_document_is_checking (self->document))
    return;
  g_clear_pointer (&self->drawn, fp_project_unref);
  self->drawn = fp_project_ref (project);
  fp_latest_ask (self->latest, (gpointer) fp_project_ref (project));
}

static void
show (FpAlternativesStrip *self)
{
  if (fp_document_is_previewing (self->document))
    return;
  show_names (self);
  show_facing (self);
  draw_cards (self);
}

/* --- pictures ------------------------------------------------------------- */

static void
draw (FpLatestJob *job, gpointer request, gpointer data)
{
  FpAlternativesStrip *self = data;
  FpOverview *overview;

  if (self->memory == NULL)
    self->memory = fp_overview_memory_new ();
  overview = fp_overview_new (request, FALSE, self->memory, fp_latest_job_cancellable (job));
  if (overview != NULL)
    fp_latest_job_post (job, overview);
}

static void
receive (gpointer result, gpointer data)
{
  FpAlternativesStrip *self = data;
  const FpOverview *overview = result;
  const FpProject *project = fp_document_project (self->document); /* whose the cards are: it may be a newer one */
  const guint n = MIN (overview->n, fp_project_n_alternatives (project));
  guint i = 0;

  for (GtkWidget *w = gtk_widget_get_first_child (self->cards); w != NULL && i < n;
       w = gtk_widget_get_next_sibling (w), i++)
    {
      Card *card = g_object_get_data (G_OBJECT (w), "card");

      fp_drawing_view_set (FP_DRAWING_VIEW (card->picture), overview->elevation[i], FALSE);
      g_free (card->levels);
      card->levels = g_strdup (overview->levels[i]);
      tell (w, fp_project_alternative (project, i));
    }
}

static const FpLatestWork drawing = {
  draw, receive, (GDestroyNotify) fp_project_unref, (GDestroyNotify) fp_overview_free, GRACE_MS, LULL_MS
};

void
fp_alternatives_strip_set_document (FpAlternativesStrip *self, FpDocument *document)
{
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_set_object (&self->document, document);
  g_clear_pointer (&self->latest, fp_latest_free);
  g_clear_pointer (&self->memory, fp_overview_memory_free);
  g_clear_pointer (&self->drawn, fp_project_unref);
  self->n = 0;
  if (document == NULL)
    return;
  self->latest = fp_latest_new ("alternatives", &drawing, self);
  g_signal_connect_swapped (document, "scene", G_CALLBACK (show), self);
  g_signal_connect_swapped (document, "findings", G_CALLBACK (draw_cards), self);
  show (self);
}

/* The bar is there, and has room of its own, just when there is more than fits. */
static gboolean
show_bar (gpointer data)
{
  FpAlternativesStrip *self = data;
  GtkScrolledWindow *scroller = GTK_SCROLLED_WINDOW (self->scroller);
  GtkAdjustment *across = gtk_scrolled_window_get_hadjustment (scroller);
  gboolean more = gtk_adjustment_get_upper (across) > gtk_adjustment_get_page_size (across) + 1.0;

  self->bar = 0;
  gtk_scrolled_window_set_policy (scroller, more ? GTK_POLICY_ALWAYS : GTK_POLICY_EXTERNAL, GTK_POLICY_NEVER);
  /* The toolkit (4.8) takes the room of the bar from the cards. */
  gtk_widget_set_margin_bottom (self->cards, more ? BAR_PX : 0);
  return G_SOURCE_REMOVE;
}

/* It comes while places are being given, when no other can be asked for. */
static void
on_extent (FpAlternativesStrip *self)
{
  if (self->bar == 0)
    self->bar = g_idle_add (show_bar, self);
}

/* --- the widget ----------------------------------------------------------- */

static void
fp_alternatives_strip_dispose (GObject *object)
{
  FpAlternativesStrip *self = FP_ALTERNATIVES_STRIP (object);
  GtkWidget *child;

  fp_alternatives_strip_set_document (self, NULL);
  if (self->facing != NULL)
    g_signal_handlers_disconnect_by_data (self->facing, self);
  g_clear_object (&self->facing);
  self->filling = TRUE;
  if (self->scroller != NULL)
    g_signal_handlers_disconnect_by_data (gtk_scrolled_window_get_hadjustment (GTK_SCROLLED_WINDOW (self->scroller)),
                                          self);
  g_clear_handle_id (&self->bar, g_source_remove);
  self->scroller = NULL;
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (fp_alternatives_strip_parent_class)->dispose (object);
}

static void
fp_alternatives_strip_class_init (FpAlternativesStripClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fp_alternatives_strip_dispose;
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "alternatives");
  gtk_widget_class_set_template_from_resource (widget_class, "/org/footpace/Footpace/alternatives-strip.ui");
  gtk_widget_class_bind_template_child (widget_class, FpAlternativesStrip, scroller);
  gtk_widget_class_bind_template_child (widget_class, FpAlternativesStrip, cards);
  gtk_widget_class_bind_template_child (widget_class, FpAlternativesStrip, menu_button);
  gtk_widget_class_bind_template_child (widget_class, FpAlternativesStrip, alternative_menu);
}

static void
fp_alternatives_strip_init (FpAlternativesStrip *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  fp_late_menu_set (self->menu_button, self->alternative_menu);
  g_signal_connect_swapped (gtk_scrolled_window_get_hadjustment (GTK_SCROLLED_WINDOW (self->scroller)), "changed",
                            G_CALLBACK (on_extent), self);
  add_actions (self);
}

GtkWidget *
fp_alternatives_strip_new (void)
{
  return g_object_new (FP_TYPE_ALTERNATIVES_STRIP, NULL);
}
