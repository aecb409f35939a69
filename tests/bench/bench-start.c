/* SPDX-License-Identifier: GPL-3.0-or-later */
/* From the start of a program to the first thing it paints, seen from the display's side: the program with the
 * parish sample, beside an empty window of the toolkit.  Aim: within 1.3 times.
 *
 * bench-start PROGRAM SAMPLE; without arguments it is itself the empty window.
 */
#include <gtk/gtk.h>

#include <X11/Xlib.h>
#include <X11/extensions/Xdamage.h>
#include <poll.h>
#include <signal.h>
#include <stdlib.h>
#include <sys/wait.h>
#include <unistd.h>

#define RUNS       7
#define MIN_WIDTH  300  /* narrower ones are the toolkit's own helpers         */
#define PATIENCE_MS 30000

static double
now (void)
{
  return (double) g_get_monotonic_time () / 1e3; /* ms */
}

static int
by_time (const void *a, const void *b)
{
  const double p = *(const double *) a, q = *(const double *) b;
  return (p > q) - (p < q);
}

/* --- the empty window ------------------------------------------------------ */

static void
on_activate (GtkApplication *app)
{
  GtkWidget *window = gtk_application_window_new (app);

  gtk_window_set_default_size (GTK_WINDOW (window), 1200, 800);
  gtk_window_present (GTK_WINDOW (window));
}

static int
be_empty_window (void)
{
  g_autoptr (GtkApplication) app = gtk_application_new ("org.footpace.Empty", G_APPLICATION_NON_UNIQUE);

  g_signal_connect (app, "activate", G_CALLBACK (on_activate), NULL);
  return g_application_run (G_APPLICATION (app), 0, NULL);
}

/* --- watching -------------------------------------------------------------- */

/* Windows come and go while they are looked at; that is no error here. */
static int
ignore (Display *display, XErrorEvent *event)
{
  (void) display, (void) event;
  return 0;
}

static gboolean
next_event (Display *display, XEvent *event, double until)
{
  while (!XPending (display))
    {
      struct pollfd fd = { ConnectionNumber (display), POLLIN, 0 };
      const double left = until - now ();
      if (left <= 0 || poll (&fd, 1, (int) left + 1) < 0)
        return FALSE;
    }
  XNextEvent (display, event);
  return TRUE;
}

/* When a window of some size is first painted; -1 where none was. */
static double
wait_for_paint (Display *display, int damage_event, double begun)
{
  XEvent event;

  while (next_event (display, &event, begun + PATIENCE_MS))
    {
      XWindowAttributes attributes;
      if (event.type == MapNotify && XGetWindowAttributes (display, event.xmap.window, &attributes)
          && attributes.width >= MIN_WIDTH)
        XDamageCreate (display, event.xmap.window, XDamageReportRawRectangles);
      else if (event.type == damage_event + XDamageNotify)
        return now ();
      XFlush (display);
    }
  return -1;
}

static double
time_start (Display *display, int damage_event, const char *const *argv)
{
  const double begun = now ();
  double painted;
  pid_t child = fork ();

  if (child == 0)
    {
      execv (argv[0], (char *const *) argv);
      _exit (127);
    }
  painted = wait_for_paint (display, damage_event, begun);
  kill (child, SIGTERM);
  waitpid (child, NULL, 0);
  XSync (display, True);
  if (painted < 0)
    g_error ("%s painted nothing", argv[0]);
  return painted - begun;
}

static double
middle_start (Display *display, int damage_event, const char *what, const char *const *argv)
{
  double took[RUNS];

  for (guint i = 0; i < RUNS; i++)
    took[i] = time_start (display, damage_event, argv);
  qsort (took, RUNS, sizeof *took, by_time);
  g_print ("  %-36s least %7.1f ms, middle %7.1f ms\n", what, took[0], took[RUNS / 2]);
  return took[RUNS / 2];
}

int
main (int argc, char **argv)
{
  g_autofree char *state = NULL, *self = NULL;
  Display *display;
  int damage_event, damage_error;
  double empty, program;

  if (argc < 3)
    return be_empty_window ();
  state = g_dir_make_tmp ("footpace-bench-XXXXXX", NULL);
  self = g_file_read_link ("/proc/self/exe", NULL);
  g_setenv ("XDG_STATE_HOME", state, TRUE);
  display = XOpenDisplay (NULL);
  if (display == NULL || self == NULL || !XDamageQueryExtension (display, &damage_event, &damage_error))
    {
      g_print ("no display that tells what is painted: nothing measured\n");
      return 77;
    }
  XSetErrorHandler (ignore);
  XSelectInput (display, DefaultRootWindow (display), SubstructureNotifyMask);
  empty = middle_start (display, damage_event, "empty window", (const char *const[]) { self, NULL });
  program = middle_start (display, damage_event, "the program with the parish sample",
                          (const char *const[]) { argv[1], argv[2], NULL });
  g_print ("  ratio %.2f (aim 1.3)\n", program / empty);
  XCloseDisplay (display);
  return 0;
}
