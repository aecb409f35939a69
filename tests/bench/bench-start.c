/* SPDX-License-Identifier: GPL-3.0-or-later */
/* From the start of a program to the first frame that holds what it is started for, seen from the display's side: the
 * program with the parish sample drawn on its board, beside an empty window of the toolkit.  Aim: within 1.3 times.
 *
 * bench-start PROGRAM SAMPLE; without arguments it is itself the empty window.
 */
#include <gtk/gtk.h>

#include <X11/Xlib.h>
#include <X11/Xutil.h>
#include <X11/extensions/Xdamage.h>
#include <poll.h>
#include <signal.h>
#include <stdlib.h>
#include <sys/wait.h>
#include <unistd.h>

#define RUNS       11
#define MIN_WIDTH  300  /* narrower ones are the toolkit's own helpers         */
#define PATIENCE_MS 30000
#define REST_MS    3000 /* after which all is drawn, by far                  */
#define WHOLE      0.9  /* of the ink there is at rest: names may still move */

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

typedef struct
{
  Display *display;
  int      damage_event;
} Watch;

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

/* Of what the server shows before a program has painted. */
#define UNPAINTED 0x000000u
#define RGB(pixel) ((pixel) & 0xffffffu)

/* The middle of a window: there the board lies.  NULL: it is gone. */
static XImage *
middle_of (Display *display, Window window)
{
  XWindowAttributes a;

  if (!XGetWindowAttributes (display, window, &a))
    return NULL;
  return XGetImage (display, window, a.width / 4, a.height / 4, (guint) a.width / 3, (guint) a.height / 2, AllPlanes, ZPixmap);
}

/* How many pixels of it are not of its ground, and one more for a ground; 0: nothing has been painted. */
static guint
ink_of (Display *display, Window window)
{
  XImage *picture = middle_of (display, window);
  guint ink = 0;

  if (picture == NULL)
    return 0;
  ink += RGB (XGetPixel (picture, 0, 0)) != UNPAINTED;
  for (int y = 0; y < picture->height; y++)
    for (int x = 0; x < picture->width; x++)
      ink += XGetPixel (picture, x, y) != XGetPixel (picture, 0, 0);
  XDestroyImage (picture);
  return ink;
}

/* When a window of some size holds that much ink, -1 where none did; @painted: that window. */
static double
wait_for_ink (Watch *watch, guint ink, Window *painted)
{
  const double until = now () + PATIENCE_MS;
  XEvent event;

  while (next_event (watch->display, &event, until))
    {
      XWindowAttributes attributes;
      if (event.type == MapNotify && XGetWindowAttributes (watch->display, event.xmap.window, &attributes)
          && attributes.width >= MIN_WIDTH)
        XDamageCreate (watch->display, event.xmap.window, XDamageReportRawRectangles);
      else if (event.type == watch->damage_event + XDamageNotify)
        {
          const double at = now ();
          *painted = ((XDamageNotifyEvent *) &event)->drawable;
          if (ink_of (watch->display, *painted) >= ink)
            return at;
        }
      XFlush (watch->display);
    }
  return -1;
}

static pid_t
start (const char *const *argv)
{
  pid_t child = fork ();

  if (child == 0)
    {
      execv (argv[0], (char *const *) argv);
      _exit (127);
    }
  return child;
}

static void
end (Watch *watch, pid_t child)
{
  kill (child, SIGTERM);
  waitpid (child, NULL, 0);
  XSync (watch->display, True);
}

static double
time_start (Watch *watch, const char *const *argv, guint ink)
{
  const double begun = now ();
  const pid_t child = start (argv);
  Window window;
  double painted = wait_for_ink (watch, ink, &window);

  end (watch, child);
  if (painted < 0)
    g_error ("%s painted nothing", argv[0]);
  return painted - begun;
}

/* How much ink there is when nothing changes any more. */
static guint
ink_at_rest (Watch *watch, const char *const *argv)
{
  const pid_t child = start (argv);
  Window window;
  guint ink = 0;

  if (wait_for_ink (watch, 1, &window) >= 0)
    {
      g_usleep (REST_MS * 1000);
      ink = ink_of (watch->display, window);
    }
  end (watch, child);
  if (ink <= 1)
    g_error ("%s drew nothing", argv[0]);
  return ink;
}

static double
middle (const char *what, double *took)
{
  qsort (took, RUNS, sizeof *took, by_time);
  g_print ("  %-36s least %7.1f ms, middle %7.1f ms\n", what, took[0], took[RUNS / 2]);
  return took[RUNS / 2];
}

/* By turns, so that whatever else the machine does slows both alike. */
static void
compare (Watch *watch, const char *const *empty, const char *const *program)
{
  const guint ink = (guint) (WHOLE * ink_at_rest (watch, program));
  double empty_took[RUNS], program_took[RUNS], of_empty, of_program;

  for (guint i = 0; i < RUNS; i++)
    {
      empty_took[i] = time_start (watch, empty, 1);
      program_took[i] = time_start (watch, program, ink);
    }
  of_empty = middle ("empty window", empty_took);
  of_program = middle ("the parish sample, drawn", program_took);
  g_print ("  ratio %.2f (aim 1.3)\n", of_program / of_empty);
}

int
main (int argc, char **argv)
{
  g_autofree char *state = NULL, *self = NULL;
  Watch watch;
  int damage_error;

  if (argc < 3)
    return be_empty_window ();
  state = g_dir_make_tmp ("footpace-bench-XXXXXX", NULL);
  self = g_file_read_link ("/proc/self/exe", NULL);
  g_setenv ("XDG_STATE_HOME", state, TRUE);
  watch.display = XOpenDisplay (NULL);
  if (watch.display == NULL || self == NULL || !XDamageQueryExtension (watch.display, &watch.damage_event, &damage_error))
    {
      g_print ("no display that tells what is painted: nothing measured\n");
      return 77;
    }
  XSetErrorHandler (ignore);
  XSelectInput (watch.display, DefaultRootWindow (watch.display), SubstructureNotifyMask);
  compare (&watch, (const char *const[]) { self, NULL }, (const char *const[]) { argv[1], argv[2], NULL });
  XCloseDisplay (watch.display);
  return 0;
}
