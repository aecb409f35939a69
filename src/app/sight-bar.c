/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sight-bar.h"

#include "word-list.h"

struct _FpSightBar
{
  GtkWidget  parent_instance;
  GtkWidget *focus, *moment, *told, *sentence, *place, *blind, *least, *least_list, *least_popover;
  FpSightLook look;
  gboolean   own_change; /* the choices are set by ourselves              */
  GArray    *worst;      /* (element-type guint): of the list             */
};

G_DEFINE_FINAL_TYPE (FpSightBar, fp_sight_bar, GTK_TYPE_WIDGET)

static guint look_signal;

FpSightLook
fp_sight_bar_look (FpSightBar *self)
{
  return self->look;
}

static void
look_otherwise (FpSightBar *self)
{
  g_signal_emit (self, look_signal, 0);
}

/* --- chosen by hand -------------------------------------------------------------- */

/* What is looked at brings the moment at which it matters; that may be chosen otherwise after it. */
void
fp_sight_bar_set_focus (FpSightBar *self, FpFocus focus, int place)
{
  self->look.focus = focus;
  self->look.moment = fp_moment_of_focus (focus);
  self->look.place = place;
  self->own_change = TRUE;
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->focus), (guint) focus);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->moment), (guint) self->look.moment);
  self->own_change = FALSE;
  look_otherwise (self);
}

static void
on_focus (FpSightBar *self)
{
  if (!self->own_change)
    fp_sight_bar_set_focus (self, (FpFocus) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->focus)), self->look.place);
}

static void
on_moment (FpSightBar *self)
{
  if (self->own_change)
    return;
  self->look.moment = (FpMoment) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->moment));
  look_otherwise (self);
}

static void
on_blind (FpSightBar *self)
{
  self->look.blind = gtk_check_button_get_active (GTK_CHECK_BUTTON (self->blind));
  look_otherwise (self);
}

static void
on_least_chosen (FpSightBar *self, GtkListBoxRow *row)
{
  const guint i = (guint) gtk_list_box_row_get_index (row);

  if (i < self->worst->len)
    fp_sight_bar_set_place (self, (int) g_array_index (self->worst, guint, i));
  gtk_popover_popdown (GTK_POPOVER (self->least_popover));
}

void
fp_sight_bar_set_place (FpSightBar *self, int place)
{
  if (self->look.place == place)
    return;
  self->look.place = place;
  look_otherwise (self);
}

/* --- told --------------------------------------------------------------------------- */

static void
fill_least (FpSightBar *self, const FpSightDraft *draft)
{
  g_array_set_size (self->worst, 0);
  g_array_append_vals (self->worst, draft->worst->data, draft->worst->len);
  fp_word_list_fill (GTK_LIST_BOX (self->least_list), draft->worst_words);
  gtk_widget_set_sensitive (self->least, draft->worst->len > 0);
}

/* Of another place, so that it is read first. */
static void
tell_place (FpSightBar *self, const char *words)
{
  if (g_str_equal (gtk_label_get_text (GTK_LABEL (self->place)), words))
    return;
  gtk_label_set_text (GTK_LABEL (self->place), words);
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (GTK_SCROLLED_WINDOW (self->told)), 0);
}

void
fp_sight_bar_tell (FpSightBar *self, const FpSightDraft *draft)
{
  self->look.place = draft->look.place;
  gtk_label_set_text (GTK_LABEL (self->sentence), draft->sentence);
  tell_place (self, draft->place_words != NULL ? draft->place_words : "");
  gtk_widget_set_visible (self->place, draft->place_words != NULL);
  if (!gtk_widget_get_visible (self->least_popover)) /* not under the hand */
    fill_least (self, draft);
}

/* --- life ------------------------------------------------------------------------------- */

static void
fill_choices (FpSightBar *self)
{
  const char *focuses[FP_N_FOCUSES + 1] = { NULL }, *moments[FP_N_MOMENTS + 1] = { NULL };
  g_autoptr (GtkStringList) focus_list = NULL;
  g_autoptr (GtkStringList) moment_list = NULL;

  for (int i = 0; i < FP_N_FOCUSES; i++)
    focuses[i] = fp_focus_label ((FpFocus) i);
  for (int i = 0; i < FP_N_MOMENTS; i++)
    moments[i] = fp_moment_label ((FpMoment) i);
  focus_list = gtk_string_list_new (focuses);
  moment_list = gtk_string_list_new (moments);
  self->own_change = TRUE;
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->focus), G_LIST_MODEL (focus_list));
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->moment), G_LIST_MODEL (moment_list));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->focus), (guint) self->look.focus);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->moment), (guint) self->look.moment);
  self->own_change = FALSE;
}

static void
fp_sight_bar_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (fp_sight_bar_parent_class)->dispose (object);
}

static void
fp_sight_bar_finalize (GObject *object)
{
  g_array_unref (FP_SIGHT_BAR (object)->worst);
  G_OBJECT_CLASS (fp_sight_bar_parent_class)->finalize (object);
}

static void
fp_sight_bar_class_init (FpSightBarClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  G_OBJECT_CLASS (class)->dispose = fp_sight_bar_dispose;
  G_OBJECT_CLASS (class)->finalize = fp_sight_bar_finalize;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/footpace/Footpace/sight-bar.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "sightbar");
  gtk_widget_class_bind_template_child (widget_class, FpSightBar, focus);
  gtk_widget_class_bind_template_child (widget_class, FpSightBar, moment);
  gtk_widget_class_bind_template_child (widget_class, FpSightBar, told);
  gtk_widget_class_bind_template_child (widget_class, FpSightBar, sentence);
  gtk_widget_class_bind_template_child (widget_class, FpSightBar, place);
  gtk_widget_class_bind_template_child (widget_class, FpSightBar, blind);
  gtk_widget_class_bind_template_child (widget_class, FpSightBar, least);
  gtk_widget_class_bind_template_child (widget_class, FpSightBar, least_list);
  gtk_widget_class_bind_template_child (widget_class, FpSightBar, least_popover);
  gtk_widget_class_bind_template_callback (widget_class, on_focus);
  gtk_widget_class_bind_template_callback (widget_class, on_moment);
  gtk_widget_class_bind_template_callback (widget_class, on_blind);
  gtk_widget_class_bind_template_callback (widget_class, on_least_chosen);
  look_signal = g_signal_new ("look", FP_TYPE_SIGHT_BAR, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
fp_sight_bar_init (FpSightBar *self)
{
  self->worst = g_array_new (FALSE, FALSE, sizeof (guint));
  self->look = (FpSightLook) { fp_moment_of_focus (FP_FOCUS_HOST), FP_FOCUS_HOST, -1, TRUE };
  self->own_change = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  fill_choices (self);
}
