/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pew-maker.h"

#include "latest.h"

#include <cairo.h>
#include <math.h>

/* A view takes some milliseconds: one that was begun is ended, so that pictures follow a drag. */
#define GRACE 40

struct _FpPewMaker
{
  FpLatest *latest;
  void    (*received) (const FpPewMade *made, gpointer data);
  gpointer  data;
};

/* --- on the thread --------------------------------------------------------------- */

typedef struct
{
  const FpScene *scene; /* owned */
  FpPewSpec      spec;
  int            width;
  double         pen;
  FpSurfaceLook  look;
} Request;

static void
request_free (gpointer data)
{
  Request *self = data;

  fp_scene_unref (self->scene);
  g_free (self);
}

static void
made_free (gpointer data)
{
  FpPewMade *self = data;

  fp_pew_view_unref (self->view);
  cairo_surface_destroy (self->image);
  g_free (self->eye);
  g_free (self->seen);
  g_free (self);
}

/* With as many shades at edges as are told apart while it moves: that takes a quarter less. */
static cairo_surface_t *
paint (const FpPewView *view, const Request *of)
{
  const FpBox box = fp_pew_view_box (view);
  const int height = (int) MAX (round (of->width * (box.y1 - box.y0) / (box.x1 - box.x0)), 1);
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, of->width, height);
  cairo_t *cr = cairo_create (image);

  cairo_set_antialias (cr, CAIRO_ANTIALIAS_FAST);
  fp_pew_view_paint (view, cr, (FpBox) { 0, 0, of->width, height }, of->pen, of->look);
  cairo_destroy (cr);
  cairo_surface_flush (image);
  return image;
}

static void
post (FpLatestJob *job, const FpPewView *view, cairo_surface_t *image, char *seen)
{
  FpPewMade *made = g_new (FpPewMade, 1);

  *made = (FpPewMade) {
    fp_pew_view_ref (view), cairo_surface_reference (image),
    fp_pew_eye_text (fp_pew_view_people (view), fp_pew_view_spec (view)), seen,
  };
  fp_latest_job_post (job, made);
}

static void
run (FpLatestJob *job, gpointer request, gpointer data)
{
  const Request *of = request;
  GCancellable *cancel = fp_latest_job_cancellable (job);
  g_autoptr (FpPeople) people = fp_people_new (of->scene);
  g_autoptr (FpPewView) view = NULL;
  g_autoptr (FpSight) sight = NULL;
  cairo_surface_t *image;
  guint n;

  (void) data;
  fp_people_places (people, &n);
  if (of->spec.place >= n)
    return;
  view = fp_pew_view_new (people, &of->spec);
  image = paint (view, of);
  post (job, view, image, NULL);
  sight = fp_sight_new (people, cancel);
  g_autofree char *seen = sight != NULL ? fp_pew_seen_text (sight, &of->spec) : NULL;
  if (seen != NULL && !g_cancellable_is_cancelled (cancel))
    post (job, view, image, g_steal_pointer (&seen));
  cairo_surface_destroy (image);
}

static void
receive (gpointer result, gpointer data)
{
  FpPewMaker *self = data;

  self->received (result, self->data);
}

/* --- life ------------------------------------------------------------------------ */

static const FpLatestWork work = {
  .run = run, .receive = receive, .request_free = request_free, .result_free = made_free, .grace = GRACE,
};

FpPewMaker *
fp_pew_maker_new (void (*received) (const FpPewMade *made, gpointer data), gpointer data)
{
  FpPewMaker *self = g_new0 (FpPewMaker, 1);

  self->received = received;
  self->data = data;
  self->latest = fp_latest_new ("pew", &work, self);
  return self;
}

void
fp_pew_maker_free (FpPewMaker *self)
{
  fp_latest_free (self->latest);
  g_free (self);
}

void
fp_pew_maker_ask (FpPewMaker *self, const FpScene *scene, const FpPewSpec *spec, int width, double pen, FpSurfaceLook look)
{
  Request *request = g_new (Request, 1);

  *request = (Request) { fp_scene_ref (scene), *spec, CLAMP (width, 1, 16000), pen, look };
  fp_latest_ask (self->latest, request);
}

gboolean
fp_pew_maker_is_busy (FpPewMaker *self)
{
  return fp_latest_is_busy (self->latest);
}

/* --- places ------------------------------------------------------------------------ */

gboolean
fp_pew_first_place (const FpPeople *people, int owner, guint *place)
{
  FpPewSpec spec = { 0 };
  guint n, first = G_MAXUINT, last = 0;
  const FpPersonPlace *all = fp_people_places (people, &n);

  for (guint i = 0; i < n; i++)
    if ((int) all[i].owner == owner)
      {
        first = MIN (first, i);
        last = i;
      }
  if (first <= last)
    *place = (first + last) / 2;
  else if (fp_pew_typical_spec (people, FP_PEW_MIDDLE, &spec) || fp_pew_typical_spec (people, FP_PEW_STANDING, &spec))
    *place = spec.place;
  else
    *place = 0;
  return n > 0;
}

gboolean
fp_pew_nearest_place (const FpPeople *people, FpPoint at, double reach, guint *place)
{
  guint n;
  const FpPersonPlace *all = fp_people_places (people, &n);
  double least = reach;

  for (guint i = 0; i < n; i++)
    {
      const double d = hypot (all[i].at.x - at.x, all[i].at.y - at.y);
      if (d > least)
        continue;
      least = d;
      *place = i;
    }
  return least < reach;
}

guint
fp_pew_same_place (const FpPeople *were, guint place, const FpPeople *people)
{
  const FpPersonPlace *was = &fp_people_places (were, NULL)[place];
  const char *id = fp_item_id (fp_scene_placed (fp_people_scene (were), NULL)[was->owner].item);
  guint found;

  if (fp_pew_place_find (people, id, was->row, was->number, &found)
      || fp_pew_nearest_place (people, (FpPoint) { was->at.x, was->at.y }, G_MAXDOUBLE, &found))
    return found;
  return 0;
}

guint
fp_pew_next_place (const FpPeople *people, guint place, int seats, int rows)
{
  guint n, best = place;
  const FpPersonPlace *all = fp_people_places (people, &n), from = all[place];
  double least = G_MAXDOUBLE;

  /* A row is taken up where the person before or behind is nearest: rows may have more seats than others. */
  for (guint i = 0; i < n; i++)
    {
      const double d = hypot (all[i].at.x - from.at.x, all[i].at.y - from.at.y);
      if (all[i].owner != from.owner || (gint64) all[i].row != (gint64) from.row + rows
          || (rows == 0 && (gint64) all[i].number != (gint64) from.number + seats) || d >= least)
        continue;
      least = d;
      best = i;
    }
  return best;
}
