/* SPDX-License-Identifier: GPL-3.0-or-later */
/* random-hands.c - what hands that know nothing do to the window, by the display's own events
 *
 * Clicks, drags, wheel, keys, text, undo, alternatives, saving and opening, in
 * an order that the seed gives (printed, and taken from FOOTPACE_HANDS_SEED).
 * Criticals abort, leaks are told by the sanitizer.  What was made saves and
 * opens to the same bytes at every stop, and undo leads back to the bytes of
 * the start.
 *
 * Between deeds the hands wait until the window is at rest, so that a seed
 * leads to the same church again, on a machine however slow; its sum is
 * printed.  With FOOTPACE_HANDS_HASTE they do not, and meet the window
 * amidst what it does.
 *
 * Memory: when all is undone, what is in use is about what it was at the start,
 * and what the C library keeps of what it was meanwhile has gone back to the
 * system; when the window is closed, nothing of it or of the document is left.
 */
#include "../folder.h"
#include "../app/resident.h"
#include "../app/waiting.h"
#include "compat-4-8.h"
#include "latest.h"
#include "samples.h"
#include "window.h"

#include "footpace/store.h"

#include <X11/XKBlib.h>
#include <X11/extensions/XTest.h>
#include <X11/keysym.h>
#include <gdk/x11/gdkx.h>
#ifdef __GLIBC__
#include <malloc.h>
#endif
#include <signal.h>
#include <stdlib.h>
#include <string.h>

#define EVENTS      1500  /* by default; FOOTPACE_HANDS says otherwise         */
#define STOP_EVERY  500   /* events after which all is looked at               */
#define TELL_EVERY  10000 /* events after which it is said how far it has come */
/* What may be in use, and held, when all is undone, as so many times what it was at the start. More than once: what can be
 * done again is kept, lists keep rows, and lettering, glyphs and styles once used stay at hand. */
#define IN_USE_MAX  3
#define HELD_MAX    3
#define LONGEST_WAIT 600 /* s: for the threads where the machine is busy with much else, and for a window that is closed to be gone */
#define WIDTH       1200
#define HEIGHT      800
#define HEADER      56    /* px at the top: buttons that open files and close the window */
/* px at the other sides, by which the window is resized.  That is the display's business, and GTK 4.8 then counts the
 * press as let go twice ("Broken accounting of active state"): when the display takes the pointer, and when it tells. */
#define EDGE        12

typedef struct
{
  Display    *display;   /* the hands' own connection                         */
  GRand      *random;
  GtkWidget  *window;
  GdkDisplay *shown_on;
  FpDocument *document;  /* as opened at the start; owned                     */
  char       *start;     /* its bytes then                                    */
  char       *folder;    /* all files that are written go there               */
  char       *file;
  gsize       in_use;    /* bytes at the start; 0 where that is not known     */
  gsize       held;      /* MB of real memory then                            */
  guint       events;
  gboolean    haste;     /* does not wait for the window                      */
  gboolean    painted;
} Hands;

static int
between (Hands *h, int lo, int hi)
{
  return g_rand_int_range (h->random, lo, hi + 1);
}

static void
drain (void)
{
  for (guint i = 0; i < 200 && g_main_context_pending (NULL); i++)
    g_main_context_iteration (NULL, FALSE);
}

static void
settle (Hands *h)
{
  if (h->haste)
    XFlush (h->display);
  else
    {
      /* What the server has to tell the window of it has arrived after this. */
      XSync (h->display, False);
      gdk_display_sync (h->shown_on);
    }
  drain ();
}

static void
on_painted (GdkFrameClock *clock, Hands *h)
{
  (void) clock;
  h->painted = TRUE;
}

/* All that was put off to the next frame is done. */
static void
wait_for_a_frame (Hands *h)
{
  GdkFrameClock *clock = gtk_widget_get_frame_clock (h->window);
  const gulong painted = g_signal_connect (clock, "after-paint", G_CALLBACK (on_painted), h);

  h->painted = FALSE;
  gdk_frame_clock_request_phase (clock, GDK_FRAME_CLOCK_PHASE_AFTER_PAINT);
  WAIT_WITHIN (LONGEST_WAIT, h->painted);
  g_signal_handler_disconnect (clock, painted);
}

static void
wait_for_rest (Hands *h)
{
  do
    {
      WAIT_WITHIN (LONGEST_WAIT, fp_latest_all_at_rest ());
      wait_for_a_frame (h);
      drain ();
    }
  while (!fp_latest_all_at_rest ());
}

static void
rest (Hands *h)
{
  if (!h->haste)
    wait_for_rest (h);
}

/* --- single events -------------------------------------------------------- */

static void
move_to (Hands *h, int x, int y)
{
  XTestFakeMotionEvent (h->display, -1, x, y, CurrentTime);
  h->events++;
  settle (h);
}

static void
button (Hands *h, guint which, gboolean down)
{
  XTestFakeButtonEvent (h->display, which, down, CurrentTime);
  h->events++;
  settle (h);
}

static void
press_key (Hands *h, KeySym sym, guint modifiers)
{
  static const struct { guint mask; KeySym sym; } held[] = {
    { ControlMask, XK_Control_L }, { ShiftMask, XK_Shift_L }, { Mod1Mask, XK_Alt_L }
  };
  const KeyCode code = XKeysymToKeycode (h->display, sym);

  for (guint i = 0; i < G_N_ELEMENTS (held); i++)
    if (modifiers & held[i].mask)
      XTestFakeKeyEvent (h->display, XKeysymToKeycode (h->display, held[i].sym), True, CurrentTime);
  XTestFakeKeyEvent (h->display, code, True, CurrentTime);
  XTestFakeKeyEvent (h->display, code, False, CurrentTime);
  for (guint i = 0; i < G_N_ELEMENTS (held); i++)
    if (modifiers & held[i].mask)
      XTestFakeKeyEvent (h->display, XKeysymToKeycode (h->display, held[i].sym), False, CurrentTime);
  h->events += 2;
  settle (h);
}

/* Somewhere in the window, below the header bar. */
static void
wander (Hands *h)
{
  move_to (h, between (h, EDGE, WIDTH - EDGE), between (h, HEADER, HEIGHT - EDGE));
}

/* --- deeds ---------------------------------------------------------------- */

static void
click (Hands *h)
{
  const guint which = between (h, 0, 9) == 0 ? 3 : 1;
  const int times = between (h, 0, 5) == 0 ? 2 : 1;

  wander (h);
  for (int i = 0; i < times; i++)
    {
      button (h, which, TRUE);
      button (h, which, FALSE);
    }
}

static void
drag (Hands *h)
{
  int x = between (h, EDGE, WIDTH - EDGE), y = between (h, HEADER, HEIGHT - EDGE);
  const int steps = between (h, 1, 12);

  move_to (h, x, y);
  button (h, 1, TRUE);
  for (int i = 0; i < steps; i++)
    {
      x = CLAMP (x + between (h, -40, 40), EDGE, WIDTH - EDGE);
      y = CLAMP (y + between (h, -40, 40), HEADER, HEIGHT - EDGE);
      move_to (h, x, y);
    }
  if (between (h, 0, 5) == 0)
    press_key (h, XK_Escape, 0);
  button (h, 1, FALSE);
}

static void
wheel (Hands *h)
{
  const guint which = between (h, 0, 1) == 0 ? 4 : 5;

  wander (h);
  for (int i = between (h, 1, 4); i > 0; i--)
    {
      button (h, which, TRUE);
      button (h, which, FALSE);
    }
}

static void
key (Hands *h)
{
  static const struct { KeySym sym; guint modifiers; } keys[] = {
    { XK_Left, 0 }, { XK_Right, 0 }, { XK_Up, 0 }, { XK_Down, 0 }, { XK_Left, ShiftMask }, { XK_Up, Mod1Mask },
    { XK_Tab, 0 }, { XK_Tab, 0 }, { XK_Tab, ShiftMask }, { XK_Tab, ControlMask }, { XK_Return, 0 }, { XK_Escape, 0 },
    { XK_Delete, 0 }, { XK_plus, ShiftMask }, { XK_minus, 0 }, { XK_0, 0 }, { XK_9, 0 }, { XK_space, 0 },
    { XK_z, ControlMask }, { XK_z, ControlMask }, { XK_z, ControlMask | ShiftMask }, { XK_k, ControlMask },
    { XK_l, ControlMask }, { XK_b, ControlMask }, { XK_i, ControlMask }, { XK_r, ControlMask }, { XK_Home, 0 },
    { XK_End, 0 }, { XK_BackSpace, 0 }, { XK_a, ControlMask }, { XK_Page_Down, 0 }, { XK_F1, 0 }, { XK_d, 0 }, { XK_m, 0 },
  };
  const int i = between (h, 0, G_N_ELEMENTS (keys) - 1);

  press_key (h, keys[i].sym, keys[i].modifiers);
}

static void
text (Hands *h)
{
  static const KeySym signs[] = { XK_1, XK_2, XK_5, XK_0, XK_0, XK_0, XK_period, XK_minus, XK_space, XK_m, XK_apostrophe, XK_x };

  for (int i = between (h, 1, 5); i > 0; i--)
    press_key (h, signs[between (h, 0, G_N_ELEMENTS (signs) - 1)], 0);
  if (between (h, 0, 2) > 0)
    press_key (h, XK_Return, 0);
}

static void
act (Hands *h)
{
  static const char *const actions[] = {
    "win.undo", "win.redo", "win.remove", "win.alternative-new", "win.compare", "win.show-board", "win.frame-whole",
    "win.frame-sanctuary", "win.zoom-in", "win.zoom-out", "win.choose-nothing"
  };
  static const char *const kinds[] = { "credence", "ambo", "chair", "sedilia", "candlesticks", "rail", "pews", "pier", "altar" };

  h->events++;
  if (between (h, 0, 3) == 0)
    gtk_widget_activate_action (h->window, "win.add", "s", kinds[between (h, 0, G_N_ELEMENTS (kinds) - 1)]);
  else
    gtk_widget_activate_action (h->window, actions[between (h, 0, G_N_ELEMENTS (actions) - 1)], NULL);
  settle (h);
}

static void
switch_alternative (Hands *h)
{
  const guint n = fp_project_n_alternatives (fp_document_project (h->document));

  h->events++;
  fp_document_set_alternative (h->document, (guint) between (h, 0, (int) n - 1));
  settle (h);
}

static void
do_something (Hands *h)
{
  const int which = between (h, 0, 99);

  if (which < 25)
    click (h);
  else if (which < 45)
    drag (h);
  else if (which < 55)
    wheel (h);
  else if (which < 80)
    key (h);
  else if (which < 90)
    text (h);
  else if (which < 97)
    act (h);
  else
    switch_alternative (h);
  rest (h);
}

/* --- stops ---------------------------------------------------------------- */

/* The hands may have opened dialogs, and other windows. */
static void
close_others (Hands *h)
{
  g_autoptr (GList) windows = gtk_window_list_toplevels ();

  for (GList *l = windows; l != NULL; l = l->next)
    if (l->data != h->window && gtk_widget_get_visible (l->data))
      gtk_window_destroy (l->data);
  settle (h);
}

static void
take_focus (Hands *h)
{
  GdkSurface *surface = gtk_native_get_surface (GTK_NATIVE (h->window));

  gtk_window_present (GTK_WINDOW (h->window));
  XSetInputFocus (h->display, gdk_x11_surface_get_xid (surface), RevertToPointerRoot, CurrentTime);
  XSync (h->display, False);
  settle (h);
}

/* 0 where that is not known, as with a sanitizer. */
static gsize
bytes_in_use (void)
{
#ifdef __GLIBC__
  const struct mallinfo2 info = mallinfo2 ();

  return info.uordblks + info.hblkhd;
#else
  return 0;
#endif
}

static char *
bytes_of (const FpProject *project)
{
  return fp_store_write (project, NULL);
}

static void
check_saves_and_opens (Hands *h)
{
  const FpProject *project = fp_scene_project (fp_document_base_scene (h->document));
  g_autofree char *before = bytes_of (project), *after = NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) again = NULL;

  g_assert_true (fp_project_check (project, &error));
  g_assert_true (fp_store_save (project, h->file, &error));
  again = fp_store_load (h->file, &error);
  g_assert_no_error (error);
  after = bytes_of (again);
  g_assert_cmpstr (before, ==, after);
}

/* The hands may have saved and then opened a file, in the same window: they go on with what they had. */
static void
take_up_again (Hands *h)
{
  if (fp_window_document (FP_WINDOW (h->window)) != h->document)
    fp_window_set_document (FP_WINDOW (h->window), h->document);
}

static void
stop (Hands *h)
{
  close_others (h);
  take_up_again (h);
  check_saves_and_opens (h);
  /* Now and then all the way back and forth again. */
  if (between (h, 0, 9) == 0)
    {
      /* What is worked out for each is handed over, and let go, by the main loop. */
      while (fp_document_undo (h->document))
        drain ();
      while (fp_document_redo (h->document))
        drain ();
    }
  take_focus (h);
  rest (h);
}

static guint
n_widgets (GtkWidget *top)
{
  guint n = 1;

  for (GtkWidget *w = gtk_widget_get_first_child (top); w != NULL; w = gtk_widget_get_next_sibling (w))
    n += n_widgets (w);
  return n;
}

/* How far it has come, and what it has come to. */
static void
tell (Hands *h)
{
  g_autofree char *bytes = bytes_of (fp_document_project (h->document));
  g_autofree char *sum = g_compute_checksum_for_string (G_CHECKSUM_SHA256, bytes, -1);

  g_test_message ("%u events: %u steps of undo, %u widgets, %" G_GSIZE_FORMAT " MB in use of %" G_GSIZE_FORMAT
                  " MB, church %.12s", h->events, fp_document_depth (h->document), n_widgets (h->window),
                  bytes_in_use () >> 20, resident_mb (), sum);
}

static void
check_undo_to_the_start (Hands *h)
{
  g_autofree char *end = NULL;

  fp_document_drop_preview (h->document);
  while (fp_document_undo (h->document))
    drain ();
  end = bytes_of (fp_document_project (h->document));
  g_assert_cmpstr (end, ==, h->start);
}

/* All that could be done again is so no more, but for one edit. */
static void
forget_what_was_undone (Hands *h)
{
  FpBrief brief = *fp_project_brief (fp_document_project (h->document));
  FpProject *other;

  brief.title = "Other";
  other = fp_project_with_brief (fp_document_project (h->document), &brief, NULL);
  g_assert_true (fp_document_edit (h->document, other, "Title", NULL));
  drain ();
  g_assert_true (fp_document_undo (h->document));
  drain ();
}

/* Told only where each block is the C library's own: GLib's slices are kept, and would count as in use. */
static gboolean
knows_memory (void)
{
  return bytes_in_use () > 0 && resident_mb () > 0 && g_strcmp0 (g_getenv ("G_SLICE"), "always-malloc") == 0;
}

/* What is kept of the page of alternatives is that of this church then. */
static void
look_at_the_alternatives (Hands *h)
{
  gtk_widget_activate_action (h->window, "win.compare", NULL);
  wait_for_rest (h);
  gtk_widget_activate_action (h->window, "win.show-board", NULL);
  wait_for_rest (h);
}

static void
note_memory (Hands *h)
{
  look_at_the_alternatives (h);
  h->in_use = knows_memory () ? bytes_in_use () : 0;
  h->held = resident_mb ();
  tell (h);
}

static void
check_memory_has_come_back (Hands *h)
{
  look_at_the_alternatives (h);
  tell (h);
  if (h->in_use == 0)
    return;
  g_assert_cmpuint (bytes_in_use (), <, IN_USE_MAX * h->in_use);
  WAIT_WITHIN (LONGEST_WAIT, resident_mb () < HELD_MAX * h->held);
}

/* --- the whole ------------------------------------------------------------- */

/* The toolkit's chooser (4.8) is not what is tried here: put away while it still lists files, it crashes of itself. */
static GFile *
answer_for_file (const FpFileQuestion *question, gpointer data)
{
  Hands *h = data;

  if (between (h, 0, 2) == 0)
    return NULL;
  if (!question->save)
    return g_file_new_for_path (h->file);
  return g_file_new_build_filename (h->folder, question->name != NULL ? question->name : "other.footpace", NULL);
}

static guint
number_from (const char *variable, guint otherwise)
{
  const char *text = g_getenv (variable);

  return text != NULL ? (guint) g_ascii_strtoull (text, NULL, 10) : otherwise;
}

/* Of a copy: the hands find the button that saves. */
static FpDocument *
open_copy (Hands *h)
{
  g_autofree char *sample = fp_sample_path ("parish.footpace"), *copy = g_build_filename (h->folder, "church.footpace", NULL);
  g_autofree char *bytes = NULL;
  g_autoptr (GError) error = NULL;
  FpDocument *document;
  gsize length;

  g_file_get_contents (sample, &bytes, &length, &error);
  g_assert_no_error (error);
  g_file_set_contents (copy, bytes, (gssize) length, &error);
  g_assert_no_error (error);
  document = fp_document_load (copy, &error);
  g_assert_no_error (error);
  return document;
}

static gboolean
begin (Hands *h, guint seed)
{
  int event, fault, major, minor;

  h->display = XOpenDisplay (NULL);
  if (h->display == NULL || !XTestQueryExtension (h->display, &event, &fault, &major, &minor))
    return FALSE;
  fp_let_popovers_go ();
  fp_let_windows_go ();
  h->haste = g_getenv ("FOOTPACE_HANDS_HASTE") != NULL;
  /* Both go by the clock. */
  g_object_set (gtk_settings_get_default (), "gtk-enable-animations", h->haste, "gtk-cursor-blink", h->haste, NULL);
  h->random = g_rand_new_with_seed (seed);
  h->folder = g_dir_make_tmp ("footpace-hands-XXXXXX", NULL);
  h->document = open_copy (h);
  h->start = bytes_of (fp_document_project (h->document));
  h->file = g_build_filename (h->folder, "hands.footpace", NULL);
  fp_ask_files_of (answer_for_file, h);
  h->window = fp_window_new (NULL);
  h->shown_on = gtk_widget_get_display (h->window);
  gtk_window_set_default_size (GTK_WINDOW (h->window), WIDTH, HEIGHT);
  fp_window_set_document (FP_WINDOW (h->window), h->document);
  gtk_window_present (GTK_WINDOW (h->window));
  for (guint i = 0; i < 300; i++)
    {
      g_main_context_iteration (NULL, FALSE);
      g_usleep (2000);
    }
  take_focus (h);
  note_memory (h);
  return TRUE;
}

/* Of what is kept, the counts and what else is open tell by whom. */
static void
tell_what_is_kept (gpointer window, gpointer document)
{
  g_autoptr (GListModel) open = g_object_ref (gtk_window_get_toplevels ());

  g_test_message ("window kept %u times, document %u times", window != NULL ? G_OBJECT (window)->ref_count : 0,
                  document != NULL ? G_OBJECT (document)->ref_count : 0);
  for (guint i = 0; i < g_list_model_get_n_items (open); i++)
    {
      g_autoptr (GtkWindow) other = g_list_model_get_item (open, i);
      const char *title = gtk_window_get_title (other);

      g_test_message ("open: %s “%s”", G_OBJECT_TYPE_NAME (other), title != NULL ? title : "");
    }
}

/* So that what outlives its window can be told by name. */
static void
watch_widgets (GtkWidget *widget, GPtrArray *watched)
{
  GWeakRef *ref = g_new0 (GWeakRef, 1);

  g_weak_ref_init (ref, widget);
  g_ptr_array_add (watched, ref);
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    watch_widgets (child, watched);
}

static void
ref_free (gpointer ref)
{
  g_weak_ref_clear (ref);
  g_free (ref);
}

static void
tell_widgets_kept (const GPtrArray *watched)
{
  for (guint i = 0; i < watched->len; i++)
    {
      g_autoptr (GtkWidget) widget = g_weak_ref_get (g_ptr_array_index (watched, i));
      GtkWidget *parent = widget != NULL ? gtk_widget_get_parent (widget) : NULL;

      if (widget != NULL)
        g_test_message ("kept %u times: %s in %s", G_OBJECT (widget)->ref_count - 1, G_OBJECT_TYPE_NAME (widget),
                        parent != NULL ? G_OBJECT_TYPE_NAME (parent) : "nothing");
    }
}

static gboolean
are_gone (gpointer *window, gpointer *document)
{
  const gint64 until = g_get_monotonic_time () + LONGEST_WAIT * G_USEC_PER_SEC;

  while ((*window != NULL || *document != NULL) && g_get_monotonic_time () < until)
    if (!g_main_context_iteration (NULL, FALSE))
      g_usleep (1000);
  return *window == NULL && *document == NULL;
}

static void
end (Hands *h)
{
  gpointer window = h->window, document = h->document;
  g_autoptr (GPtrArray) watched = g_ptr_array_new_with_free_func (ref_free);

  close_others (h);
  watch_widgets (GTK_WIDGET (h->window), watched);
  g_object_add_weak_pointer (window, &window);
  g_object_add_weak_pointer (document, &document);
  gtk_window_destroy (GTK_WINDOW (h->window));
  settle (h);
  g_object_unref (h->document);
  if (!are_gone (&window, &document))
    {
      tell_what_is_kept (window, document);
      tell_widgets_kept (watched);
      g_assert_not_reached ();
    }
  g_test_message ("%" G_GSIZE_FORMAT " MB in use when all is closed", bytes_in_use () >> 20);
  if (h->in_use > 0)
    g_assert_cmpuint (bytes_in_use (), <, h->in_use);
  fp_ask_files_of (NULL, NULL);
  folder_remove (h->folder);
  g_free (h->folder);
  g_free (h->file);
  g_free (h->start);
  g_rand_free (h->random);
  XCloseDisplay (h->display);
}

static void
test_hands (void)
{
  const guint seed = number_from ("FOOTPACE_HANDS_SEED", 20261125), n = number_from ("FOOTPACE_HANDS", EVENTS);
  Hands h = { 0 };
  guint next = STOP_EVERY, next_word = TELL_EVERY;

  if (!begin (&h, seed))
    {
      g_test_skip ("no display that takes made events");
      return;
    }
  g_test_message ("seed %u, %u events, %s", seed, n, h.haste ? "in haste" : "at rest between them");
  while (h.events < n)
    {
      do_something (&h);
      if (h.events < next)
        continue;
      stop (&h);
      next += STOP_EVERY;
      if (h.events < next_word)
        continue;
      tell (&h);
      next_word += TELL_EVERY;
    }
  stop (&h);
  tell (&h);
  g_assert_cmpuint (fp_document_depth (h.document), >, 0);
  check_undo_to_the_start (&h);
  tell (&h);
  forget_what_was_undone (&h);
  check_memory_has_come_back (&h);
  end (&h);
  g_test_message ("seed %u: %u events done", seed, h.events);
}

/* Warnings are fatal but for one that the toolkit (4.8) owes to itself: see EDGE; dialogs have such sides too. */
static GLogWriterOutput
log_writer (GLogLevelFlags level, const GLogField *fields, gsize n, gpointer data)
{
  for (gsize i = 0; i < n; i++)
    if (g_strcmp0 (fields[i].key, "MESSAGE") == 0 && g_str_has_prefix (fields[i].value, "Broken accounting of active state"))
      return g_log_writer_standard_streams (level, fields, n, data);
  return g_log_writer_default (level, fields, n, data);
}

int
main (int argc, char **argv)
{
  g_autofree char *state = g_dir_make_tmp ("footpace-hands-XXXXXX", NULL);

  g_setenv ("XDG_STATE_HOME", state, TRUE);
  g_log_set_writer_func (log_writer, NULL, NULL);
  gtk_test_init (&argc, &argv, NULL);
  g_log_set_always_fatal ((GLogLevelFlags) (G_LOG_FATAL_MASK | G_LOG_LEVEL_CRITICAL | G_LOG_LEVEL_WARNING));
  g_test_add_func ("/random-hands", test_hands);
  return g_test_run ();
}
