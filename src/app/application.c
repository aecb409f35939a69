/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "application.h"

#include "compat-4-8.h"
#include "help-window.h"
#include "window.h"

#define RESOURCES "/org/footpace/Footpace"

struct _FpApplication
{
  GtkApplication parent_instance;
  gboolean       offered;   /* what an earlier run has left */
  FpAhead       *ahead;     /* NULL: nothing was read before */
};

G_DEFINE_FINAL_TYPE (FpApplication, fp_application, GTK_TYPE_APPLICATION)

/* --- actions -------------------------------------------------------------- */

/* Each window asks for itself; the program ends with its last window. */
static void
quit (GSimpleAction *action, GVariant *parameter, gpointer app)
{
  g_autoptr (GList) windows = g_list_copy (gtk_application_get_windows (GTK_APPLICATION (app)));

  (void) action, (void) parameter;
  for (GList *l = windows; l != NULL; l = l->next)
    if (FP_IS_WINDOW (l->data))
      gtk_window_close (GTK_WINDOW (l->data));
}

static void
about (GSimpleAction *action, GVariant *parameter, gpointer app)
{
  (void) action, (void) parameter;
  gtk_show_about_dialog (gtk_application_get_active_window (GTK_APPLICATION (app)),
                         "program-name", "Footpace",
                         "version", FP_VERSION,
                         "logo-icon-name", FP_APPLICATION_ID,
                         "license-type", GTK_LICENSE_GPL_3_0,
                         "comments", "Sets out the sanctuary of a church.\n\n"
                         "Footpace approves nothing. Local codes govern; licensed architects and engineers, "
                         "the fire authority and the bishop decide.",
                         NULL);
}

static void
help (GSimpleAction *action, GVariant *parameter, gpointer app)
{
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (app));

  (void) action, (void) parameter;
  if (window != NULL)
    fp_help_show (window, NULL);
}

static const GActionEntry entries[] = { { .name = "help", .activate = help }, { .name = "quit", .activate = quit }, { .name = "about", .activate = about } };

static void
set_keys (GtkApplication *app)
{
  static const struct { const char *action; const char *keys[4]; } table[] = {
    { "app.quit", { "<Ctrl>q" } },
    { "window.close", { "<Ctrl>w" } },
    { "win.new", { "<Ctrl>n" } },
    { "win.open", { "<Ctrl>o" } },
    { "win.save", { "<Ctrl>s" } },
    { "win.save-as", { "<Ctrl><Shift>s" } },
    { "win.export", { "<Ctrl>e" } },
    { "win.print", { "<Ctrl>p" } },
    { "win.undo", { "<Ctrl>z" } },
    { "win.redo", { "<Ctrl><Shift>z", "<Ctrl>y" } },
    { "win.compare", { "<Ctrl>k" } },
    { "win.show-things", { "<Ctrl>l" } },
    { "win.show-findings", { "<Ctrl><Shift>f" } },
    { "win.settle-all", { "<Ctrl><Shift>x" } },
    { "win.list-wide", { "<Ctrl><Shift>l" } },
    { "win.alternative-new", { "<Ctrl><Shift>n" } },
    { "win.brief", { "<Ctrl>b" } },
    { "win.norms", { "<Ctrl>u" } },
    { "win.setting", { "<Ctrl><Shift>b" } },
    { "win.add-list", { "<Ctrl>i" } },
    { "win.report", { "<Ctrl>r" } },
    { "win.schedules", { "<Ctrl>d" } },
    { "win.capacity", { "<Ctrl>h" } },
    { "win.pew", { "<Ctrl><Shift>v" } },
    { "win.outline", { "<Ctrl><Shift>o" } },
    { "win.centre", { "<Ctrl><Shift>c" } },
    { "win.mirror", { "<Ctrl>m" } },
    { "win.mirror-copy", { "<Ctrl><Shift>m" } },
    { "win.repeat", { "<Ctrl><Shift>r" } },
    { "win.space-across", { "<Ctrl>g" } },
    { "win.space-along", { "<Ctrl><Shift>g" } },
    { "win.match-level", { "<Ctrl>t" } },
    { "win.copy-to", { "<Ctrl><Shift>k" } },
    { "win.put-into-survey", { "<Ctrl><Shift>p" } },
    { "win.choose-like", { "<Ctrl><Shift>i" } },
    { "win.zoom-in", { "<Ctrl>plus", "<Ctrl>equal", "<Ctrl>KP_Add" } },
    { "win.zoom-out", { "<Ctrl>minus", "<Ctrl>KP_Subtract" } },
    { "win.frame-sanctuary", { "<Ctrl>0", "<Ctrl>KP_0" } },
    { "win.frame-whole", { "<Ctrl>9", "<Ctrl>KP_9" } },
    { "win.sight", { "<Ctrl>j" } },
    { "win.sun", { "<Ctrl><Shift>j" } },
    { "win.show-list", { "<Ctrl><Shift>h" } },
    { "win.show-toggle('dimensions')", { "<Ctrl><Shift>d" } },
    { "win.show-toggle('levels')", { "<Ctrl><Shift>e" } },
    { "win.show-toggle('names')", { "<Ctrl><Shift>t" } },
    { "win.only-elevation", { "<Ctrl>1", "<Ctrl>KP_1" } },
    { "win.only-section", { "<Ctrl>2", "<Ctrl>KP_2" } },
    { "win.only-plan", { "<Ctrl>3", "<Ctrl>KP_3" } },
    { "win.all-three", { "<Ctrl>4", "<Ctrl>KP_4" } },
    { "app.help", { "F1" } },
    { "win.shortcuts", { "<Ctrl>question", "<Ctrl>F1" } },
  };

  for (guint i = 0; i < G_N_ELEMENTS (table); i++)
    gtk_application_set_accels_for_action (app, table[i].action, (const char *const *) table[i].keys);
}

static void
load_style (void)
{
  g_autoptr (GtkCssProvider) css = gtk_css_provider_new ();
  GdkDisplay *display = gdk_display_get_default ();

  gtk_css_provider_load_from_resource (css, RESOURCES "/style.css");
  gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (css),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
}

/* --- windows -------------------------------------------------------------- */

/* Once, in the first window that is shown. */
static void
offer_left (GApplication *app)
{
  FpApplication *self = FP_APPLICATION (app);
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (app));

  if (self->offered || !FP_IS_WINDOW (window))
    return;
  self->offered = TRUE;
  fp_window_offer_left (FP_WINDOW (window));
}

static void
fp_application_activate (GApplication *app)
{
  GtkWindow *window = gtk_application_get_active_window (GTK_APPLICATION (app));

  if (window == NULL)
    window = GTK_WINDOW (fp_window_new (GTK_APPLICATION (app)));
  gtk_window_present (window);
  offer_left (app);
}

static void
open_file (FpApplication *self, const char *path)
{
  FpWindow *window = FP_WINDOW (fp_window_new (GTK_APPLICATION (self)));

  if (self->ahead != NULL && fp_ahead_is_of (self->ahead, path))
    {
      self->offered = TRUE; /* there */
      fp_window_begin (window, self->ahead);
      return;
    }
  gtk_window_present (GTK_WINDOW (window));
  if (path != NULL)
    fp_window_open (window, path);
  else
    fp_window_notice (window, "Projects can only be opened from files on this computer.", TRUE);
}

static void
fp_application_open (GApplication *app, GFile **files, int n, const char *hint)
{
  FpApplication *self = FP_APPLICATION (app);

  (void) hint;
  for (int i = 0; i < n; i++)
    {
      g_autofree char *path = g_file_get_path (files[i]);

      open_file (self, path);
    }
  offer_left (app);
}

static void
fp_application_startup (GApplication *app)
{
  G_APPLICATION_CLASS (fp_application_parent_class)->startup (app);
  fp_let_popovers_go ();
  fp_let_windows_go ();
  g_action_map_add_action_entries (G_ACTION_MAP (app), entries, G_N_ELEMENTS (entries), app);
  set_keys (GTK_APPLICATION (app));
  load_style ();
  gtk_window_set_default_icon_name (FP_APPLICATION_ID);
}

static void
fp_application_dispose (GObject *object)
{
  g_clear_pointer (&FP_APPLICATION (object)->ahead, fp_ahead_free);
  G_OBJECT_CLASS (fp_application_parent_class)->dispose (object);
}

static void
fp_application_class_init (FpApplicationClass *klass)
{
  GApplicationClass *app_class = G_APPLICATION_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = fp_application_dispose;
  app_class->activate = fp_application_activate;
  app_class->open = fp_application_open;
  app_class->startup = fp_application_startup;
}

static void
fp_application_init (FpApplication *self)
{
  (void) self;
}

GtkApplication *
fp_application_new (void)
{
  return g_object_new (FP_TYPE_APPLICATION, "application-id", FP_APPLICATION_ID,
                       "flags", G_APPLICATION_HANDLES_OPEN, NULL);
}

void
fp_application_take_ahead (FpApplication *self, FpAhead *ahead)
{
  g_clear_pointer (&self->ahead, fp_ahead_free);
  self->ahead = ahead;
}
