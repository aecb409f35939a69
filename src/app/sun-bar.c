/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sun-bar.h"

#include "sun-choice.h"
#include "word-list.h"

struct _FpSunBar
{
  GtkWidget  parent_instance;
  GDate      worst;  /* the day that the year's sentence names as a link */
  GtkWidget *choice, *sentence, *year, *brief, *windows, *windows_list, *windows_popover;
};

G_DEFINE_FINAL_TYPE (FpSunBar, fp_sun_bar, GTK_TYPE_WIDGET)

static guint look_signal;

FpSunLook
fp_sun_bar_look (FpSunBar *self)
{
  return fp_sun_choice_look (FP_SUN_CHOICE (self->choice));
}

static void
show_brief_wanted (FpSunBar *self, gboolean wanted)
{
  gtk_widget_set_visible (self->brief, wanted);
  gtk_widget_set_visible (self->windows, !wanted);
}

void
fp_sun_bar_set_brief (FpSunBar *self, const FpBrief *brief)
{
  fp_sun_choice_set_brief (FP_SUN_CHOICE (self->choice), brief);
  show_brief_wanted (self, !brief->site.known);
}

static void
on_look (FpSunBar *self)
{
  g_signal_emit (self, look_signal, 0);
}

static void
fill_windows (FpSunBar *self, const GPtrArray *windows)
{
  fp_word_list_fill (GTK_LIST_BOX (self->windows_list), windows);
  gtk_widget_set_sensitive (self->windows, windows->len > 0);
}

/* The worst day is a link. */
static void
tell_year (FpSunBar *self, const FpSunDraft *draft)
{
  g_autofree char *escaped = g_markup_escape_text (draft->year != NULL ? draft->year : "", -1), *markup = NULL;
  char day[16];

  self->worst = draft->worst;
  if (!g_date_valid (&self->worst))
    {
      gtk_label_set_markup (GTK_LABEL (self->year), escaped);
      return;
    }
  g_date_strftime (day, sizeof day, "%Y-%m-%d", &self->worst);
  g_auto (GStrv) parts = g_strsplit (escaped, day, 2);
  g_autofree char *link = g_strdup_printf ("<a href=\"day\" title=\"Look at that day\">%s</a>", day);
  markup = g_strjoinv (link, parts);
  gtk_label_set_markup (GTK_LABEL (self->year), markup);
}

/* The same Mass on that day. */
static gboolean
on_worst_day (FpSunBar *self)
{
  FpSunLook look = fp_sun_bar_look (self);

  look.day = FP_N_SUN_DAYS;
  look.year = g_date_get_year (&self->worst);
  look.month = (guint) g_date_get_month (&self->worst);
  look.date = g_date_get_day (&self->worst);
  fp_sun_choice_set_look (FP_SUN_CHOICE (self->choice), &look);
  g_signal_emit (self, look_signal, 0);
  return TRUE;
}

void
fp_sun_bar_tell (FpSunBar *self, const FpSunDraft *draft)
{
  gtk_label_set_text (GTK_LABEL (self->sentence), draft->sentence);
  tell_year (self, draft);
  gtk_widget_set_visible (self->year, draft->year != NULL);
  fp_sun_bar_set_brief (self, fp_project_brief (fp_scene_project (draft->scene)));
  if (!gtk_widget_get_visible (self->windows_popover)) /* not under the hand */
    fill_windows (self, draft->windows);
}

/* --- life ------------------------------------------------------------------------------- */

static void
fp_sun_bar_dispose (GObject *object)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (object))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (fp_sun_bar_parent_class)->dispose (object);
}

static void
fp_sun_bar_class_init (FpSunBarClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);

  g_type_ensure (FP_TYPE_SUN_CHOICE);
  G_OBJECT_CLASS (class)->dispose = fp_sun_bar_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/footpace/Footpace/sun-bar.ui");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "sunbar");
  gtk_widget_class_bind_template_child (widget_class, FpSunBar, choice);
  gtk_widget_class_bind_template_child (widget_class, FpSunBar, sentence);
  gtk_widget_class_bind_template_child (widget_class, FpSunBar, year);
  gtk_widget_class_bind_template_child (widget_class, FpSunBar, brief);
  gtk_widget_class_bind_template_child (widget_class, FpSunBar, windows);
  gtk_widget_class_bind_template_child (widget_class, FpSunBar, windows_list);
  gtk_widget_class_bind_template_child (widget_class, FpSunBar, windows_popover);
  gtk_widget_class_bind_template_callback (widget_class, on_look);
  gtk_widget_class_bind_template_callback (widget_class, on_worst_day);
  look_signal = g_signal_new ("look", FP_TYPE_SUN_BAR, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
fp_sun_bar_init (FpSunBar *self)
{
  g_date_clear (&self->worst, 1);
  gtk_widget_init_template (GTK_WIDGET (self));
}
