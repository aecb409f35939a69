/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "sun-choice.h"

#include "field-tip.h"

#define AT_FIRST (10 * 60) /* minute of the day of another time, until one is typed */

struct _FpSunChoice
{
  GtkBox     parent_instance;
  GtkWidget *mass, *clock, *day, *date;
  FpSunLook  look;
  FpMassTime masses[FP_MASS_TIMES_MAX];
  guint      n_masses;
  gboolean   setting;  /* the choices are set by ourselves              */
};

G_DEFINE_FINAL_TYPE (FpSunChoice, fp_sun_choice, GTK_TYPE_BOX)

static guint look_signal;

FpSunLook
fp_sun_choice_look (FpSunChoice *self)
{
  return self->look;
}

/* --- shown ------------------------------------------------------------------------- */

/* What is on one day of the year is asked no day. */
static gboolean
is_asked_day (FpSunChoice *self)
{
  return self->look.mass >= self->n_masses || self->masses[self->look.mass].weekday > 0;
}

static void
show_fields (FpSunChoice *self)
{
  gtk_widget_set_visible (self->clock, self->look.mass >= self->n_masses);
  gtk_widget_set_visible (self->day, is_asked_day (self));
  gtk_widget_set_visible (self->date, is_asked_day (self) && self->look.day == FP_N_SUN_DAYS);
}

static void
show_look (FpSunChoice *self)
{
  const FpSunLook *look = &self->look;
  g_autofree char *clock = g_strdup_printf ("%02u:%02u", look->minute / 60, look->minute % 60);
  g_autofree char *date = g_strdup_printf ("%04d-%02u-%02u", look->year, look->month, look->date);

  self->setting = TRUE;
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->mass), MIN (look->mass, self->n_masses));
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->day), (guint) look->day);
  gtk_editable_set_text (GTK_EDITABLE (self->clock), clock);
  gtk_editable_set_text (GTK_EDITABLE (self->date), date);
  self->setting = FALSE;
  show_fields (self);
}

void
fp_sun_choice_set_look (FpSunChoice *self, const FpSunLook *look)
{
  self->look = *look;
  show_look (self);
}

static gboolean
has_masses_of (FpSunChoice *self, const FpBrief *brief)
{
  gboolean same = gtk_drop_down_get_model (GTK_DROP_DOWN (self->mass)) != NULL && self->n_masses == brief->n_masses;

  for (guint i = 0; same && i < self->n_masses; i++)
    same = fp_mass_time_equal (&self->masses[i], &brief->mass[i]);
  return same;
}

void
fp_sun_choice_set_brief (FpSunChoice *self, const FpBrief *brief)
{
  g_autoptr (GtkStringList) list = NULL;

  if (has_masses_of (self, brief))
    return;
  list = gtk_string_list_new (NULL);
  for (guint i = 0; i < brief->n_masses; i++)
    {
      self->masses[i] = brief->mass[i];
      gtk_string_list_take (list, fp_mass_time_text (&brief->mass[i]));
    }
  gtk_string_list_append (list, "Another time");
  self->n_masses = brief->n_masses;
  self->setting = TRUE;
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->mass), G_LIST_MODEL (list));
  show_look (self);
}

/* --- chosen by hand ------------------------------------------------------------------ */

static void
on_choice (FpSunChoice *self)
{
  if (self->setting)
    return;
  self->look.mass = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->mass));
  self->look.day = (FpSunDay) gtk_drop_down_get_selected (GTK_DROP_DOWN (self->day));
  show_fields (self);
  g_signal_emit (self, look_signal, 0);
}

/* What would be right its tip tells, when nobody types. */
static void
mark_wrong (GtkWidget *entry, gboolean wrong)
{
  if (wrong)
    gtk_widget_add_css_class (entry, "error");
  else
    gtk_widget_remove_css_class (entry, "error");
  gtk_accessible_update_state (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_STATE_INVALID,
                               wrong ? GTK_ACCESSIBLE_INVALID_TRUE : GTK_ACCESSIBLE_INVALID_FALSE, -1);
}

/* What is no time leaves the last one, and says so. */
static void
on_typed (FpSunChoice *self)
{
  const FpSunLook before = self->look;
  gboolean clock, date;

  if (self->setting)
    return;
  clock = fp_sun_look_set_clock (&self->look, gtk_editable_get_text (GTK_EDITABLE (self->clock)));
  date = fp_sun_look_set_date (&self->look, gtk_editable_get_text (GTK_EDITABLE (self->date)));
  mark_wrong (self->clock, !clock);
  mark_wrong (self->date, !date);
  if (!fp_sun_look_equal (&before, &self->look))
    g_signal_emit (self, look_signal, 0);
}

/* --- life -------------------------------------------------------------------------------- */

static void
fp_sun_choice_class_init (FpSunChoiceClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  gtk_widget_class_set_template_from_resource (widget_class, "/org/footpace/Footpace/sun-choice.ui");
  gtk_widget_class_bind_template_child (widget_class, FpSunChoice, mass);
  gtk_widget_class_bind_template_child (widget_class, FpSunChoice, clock);
  gtk_widget_class_bind_template_child (widget_class, FpSunChoice, day);
  gtk_widget_class_bind_template_child (widget_class, FpSunChoice, date);
  gtk_widget_class_bind_template_callback (widget_class, on_choice);
  gtk_widget_class_bind_template_callback (widget_class, on_typed);
  look_signal = g_signal_new ("look", FP_TYPE_SUN_CHOICE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
fill_days (FpSunChoice *self)
{
  g_autoptr (GtkStringList) list = gtk_string_list_new (NULL);

  for (int i = 0; i < FP_N_SUN_DAYS; i++)
    gtk_string_list_append (list, fp_sun_day_label ((FpSunDay) i));
  gtk_string_list_append (list, "On a day of one’s own");
  gtk_drop_down_set_model (GTK_DROP_DOWN (self->day), G_LIST_MODEL (list));
}

static void
fp_sun_choice_init (FpSunChoice *self)
{
  g_autoptr (GDateTime) now = g_date_time_new_now_local ();

  self->look = (FpSunLook) { .minute = AT_FIRST, .year = g_date_time_get_year (now),
                             .month = (guint) g_date_time_get_month (now),
                             .date = (guint) g_date_time_get_day_of_month (now) };
  self->setting = TRUE;
  gtk_widget_init_template (GTK_WIDGET (self));
  fp_field_tip (self->clock, "A time such as 9:30");
  fp_field_tip (self->date, "A day such as 2026-06-21");
  fill_days (self);
  show_look (self);
}
