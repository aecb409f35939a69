/* SPDX-License-Identifier: GPL-3.0-or-later */
/* From an edit to the painted frame, drawing, levels, sight and findings all updated, in a real window.
 *
 * The floor is cairo alone painting the same marks on a picture of the same
 * size.  Aims: within twice the floor, and inside one frame of 60 Hz on the
 * parish sample.  Prints the middle and the 95th percentile.
 */
#include "board-view.h"
#include "samples.h"
#include "window.h"

#include "footpace/drawing.h"
#include "footpace/setting-out.h"

#include <stdlib.h>

#define EDITS    80
#define WARM_UP  10
#define WIDTH    1400
#define HEIGHT   900
#define FRAME_MS (1000.0 / 60.0)
#define SETTLE_MS 400

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

typedef struct { double middle, most; } Times; /* the middle and the 95th percentile, ms */

static Times
times_of (double *took, guint n)
{
  qsort (took, n, sizeof *took, by_time);
  return (Times) { took[n / 2], took[n * 95 / 100] };
}

/* --- the window ----------------------------------------------------------- */

typedef struct
{
  FpDocument *document;
  GtkWidget  *board;
  double      painted; /* the end of the first frame that shows all since the edit; 0: none yet */
} Watch;

static GtkWidget *
find_board (GtkWidget *widget)
{
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL; child = gtk_widget_get_next_sibling (child))
    {
      GtkWidget *found = FP_IS_BOARD_VIEW (child) ? child : find_board (child);
      if (found != NULL)
        return found;
    }
  return NULL;
}

static gboolean
is_done (FpDocument *document, GtkWidget *board)
{
  return !fp_document_is_checking (document) && fp_board_view_is_current (FP_BOARD_VIEW (board));
}

/* What comes from the background comes between frames, or before one is laid out. */
static void
on_painted (GdkFrameClock *clock, Watch *watch)
{
  (void) clock;
  if (watch->painted <= 0.0 && is_done (watch->document, watch->board))
    watch->painted = now ();
}

static void
edit (FpDocument *document, double by)
{
  const FpScene *scene = fp_document_base_scene (document);
  const char *id = fp_item_id (fp_scene_placed (scene, NULL)[fp_scene_celebrated_altar (scene)].item);

  fp_document_edit (document, fp_set_out_move (scene, id, (FpVec3) { 0, by, 0 }, NULL), "Move", "bench");
}

static gboolean
stop_waiting (gpointer data)
{
  *(gboolean *) data = FALSE;
  return G_SOURCE_REMOVE;
}

/* What the last edit leaves to be done when there is time, such as the cards of the alternatives, is no part of the next. */
static void
settle (void)
{
  gboolean waiting = TRUE;

  g_timeout_add (SETTLE_MS, stop_waiting, &waiting);
  while (waiting)
    g_main_context_iteration (NULL, TRUE);
}

/* To the end of the first frame that is painted once all is known. */
static double
time_edit (Watch *watch, double by)
{
  double begun;

  settle ();
  watch->painted = 0.0;
  begun = now ();
  edit (watch->document, by);
  while (watch->painted <= 0.0)
    g_main_context_iteration (NULL, TRUE);
  return watch->painted - begun;
}

static Times
time_edits (FpDocument *document, GtkWidget *window)
{
  Watch watch = { document, find_board (window), 0.0 };
  GdkFrameClock *clock = gtk_widget_get_frame_clock (window);
  double took[EDITS];

  g_signal_connect (clock, "after-paint", G_CALLBACK (on_painted), &watch);
  for (guint i = 0; i < WARM_UP + EDITS; i++)
    {
      const double ms = time_edit (&watch, i % 2 == 0 ? -20 : 20);
      if (i >= WARM_UP)
        took[i - WARM_UP] = ms;
    }
  g_signal_handlers_disconnect_by_data (clock, &watch);
  return times_of (took, EDITS);
}

/* --- the floor ------------------------------------------------------------ */

static FpDrawing *
draw_board (const FpScene *scene, double width, double height)
{
  FpProjection *projection[FP_N_VIEWS];
  FpBoardLayout layout;
  FpDrawing *drawing;
  double scale;
  FpPoint pan;

  for (guint v = 0; v < FP_N_VIEWS; v++)
    projection[v] = fp_projection_new (scene, (FpViewId) v);
  fp_board_fit (scene, NULL, FALSE, width, height, &scale, &pan);
  fp_board_layout (scene, NULL, scale, pan, FP_UNITS_METRIC, &layout);
  drawing = fp_board_draw (projection, &layout, width, height);
  for (guint v = 0; v < FP_N_VIEWS; v++)
    fp_projection_unref (projection[v]);
  return drawing;
}

static Times
time_painting (const FpScene *scene, GtkWidget *board)
{
  const int width = gtk_widget_get_width (board), height = gtk_widget_get_height (board);
  const double mm = 25.4 / 96.0;
  g_autoptr (FpDrawing) drawing = draw_board (scene, width * mm, height * mm);
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  double took[EDITS];

  for (guint i = 0; i < EDITS; i++)
    {
      const double begun = now ();
      cairo_t *cr = cairo_create (surface);

      cairo_scale (cr, 1.0 / mm, 1.0 / mm);
      fp_drawing_paint (drawing, cr, FP_SURFACE_PAPER, TRUE);
      cairo_destroy (cr);
      took[i] = now () - begun;
    }
  cairo_surface_destroy (surface);
  return times_of (took, EDITS);
}

/* --- a sample ------------------------------------------------------------- */

static void
bench (const char *sample)
{
  g_autofree char *path = fp_sample_path (sample);
  g_autoptr (GError) error = NULL;
  g_autoptr (FpDocument) document = fp_document_load (path, &error);
  GtkWidget *window;
  Times edits, floor_;

  if (document == NULL)
    g_error ("%s", error->message);
  window = fp_window_new (NULL);
  gtk_window_set_default_size (GTK_WINDOW (window), WIDTH, HEIGHT);
  fp_window_set_document (FP_WINDOW (window), document);
  gtk_window_present (GTK_WINDOW (window));
  while (!is_done (document, find_board (window)))
    g_main_context_iteration (NULL, TRUE);
  edits = time_edits (document, window);
  floor_ = time_painting (fp_document_scene (document), find_board (window));
  g_print ("%s\n", sample);
  g_print ("  %-44s middle %7.2f ms, 95 %% within %7.2f ms\n", "edit to painted frame, all checked", edits.middle,
           edits.most);
  g_print ("  %-44s middle %7.2f ms, 95 %% within %7.2f ms\n", "cairo alone, the same marks", floor_.middle, floor_.most);
  g_print ("  ratio %.2f (aim 2); frames of 60 Hz %.2f\n", edits.middle / floor_.middle, edits.middle / FRAME_MS);
  gtk_window_destroy (GTK_WINDOW (window));
}

/* The samples to be measured may be named. */
int
main (int argc, char **argv)
{
  g_autofree char *state = g_dir_make_tmp ("footpace-bench-XXXXXX", NULL);

  g_setenv ("XDG_STATE_HOME", state, TRUE);
  gtk_init ();
  for (int i = 1; i < argc; i++)
    bench (argv[i]);
  if (argc > 1)
    return 0;
  bench ("parish.footpace");
  bench ("cathedral.footpace");
  return 0;
}
