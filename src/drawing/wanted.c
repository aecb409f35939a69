/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "wanted.h"

#include "drawing-private.h"
#include "must.h"

#include <math.h>
#include <string.h>

/* Measures that differ by less are equal; what does not lie along an axis within this does not read true. */
#define EQUAL 0.5

/* A measure that its kind wants in another view comes after the foremost of this view's own. */
#define FOREIGN_RANK 2

/* From this rank on measures are those of lesser things. */
#define LESSER 4u
#define LAST   99u

/* The axis of what is measured along none of the church's. */
#define OBLIQUE 3u

/* At smaller scales nothing but the whole building is told. */
#define SMALLEST 320.0

/* Below this length on paper the two strokes of a dimension line run into each other, mm. */
#define SHORTEST 1.6

typedef struct
{
  const FpScene      *scene;
  const FpPlaced     *placed;
  guint               n_placed;
  const gboolean     *shows;
  const FpViewLayout *layout;
  FpViewId            view;
  const FpBox        *clip, *outline;
  guint               rank_max;
  const GArray       *shown;
  const char *const  *chosen;
  GArray             *out;
} Gathering;

/* --- what a measure says ------------------------------------------------------- */

static void
letter (FpWanted *w, guint times, FpUnits units)
{
  g_autofree char *one = fp_length_format (w->length / MAX (times, 1u), units);

  if (times > 1)
    g_snprintf (w->text, sizeof w->text, "%u × %s", times, one);
  else
    g_strlcpy (w->text, one, sizeof w->text);
  w->width = fp_lettering_width (w->text, FP_FIGURE_HEIGHT);
}

static gboolean
is_wanted (const Gathering *g, const FpDimSpec *spec, gboolean of_building, FpWanted *w)
{
  const gboolean own = (spec->views & (1u << g->view)) != 0;

  w->rank = spec->rank + (own || g->shown != NULL ? 0 : FOREIGN_RANK);
  if (w->must != NULL)
    return TRUE;
  /* The building runs on before and behind what a view shows: only its own view tells where it is measured. */
  if (of_building && !own)
    return FALSE;
  return w->rank <= g->rank_max && g->layout->scale <= SMALLEST;
}

/* The board shows a measure once: its last view that can show it is the one that has to. */
static gboolean
insists (const Gathering *g, const FpWanted *w)
{
  return w->must != NULL && (g->shown == NULL || g->view == FP_VIEW_PLAN || (g->view == FP_VIEW_SECTION && w->axis == 2));
}

/* --- where it lies ----------------------------------------------------------------- */

static gboolean
lies_in (const FpBox *clip, FpPoint p)
{
  return fp_box_is_empty (clip)
         || (p.x >= clip->x0 - 1 && p.x <= clip->x1 + 1 && p.y >= clip->y0 - 1 && p.y <= clip->y1 + 1);
}

/* Beside the outline, paper mm. */
static gboolean
lies_between (double lo, const FpWanted *w, double hi)
{
  return w->lo >= lo - 0.1 && w->hi <= hi + 0.1;
}

static void
set_axis (FpWanted *w, FpVec3 from, FpVec3 to)
{
  const double x = fabs (to.x - from.x), y = fabs (to.y - from.y), z = fabs (to.z - from.z);

  w->axis = z > x && z > y ? 2 : y > x ? 1 : 0;
  w->from = w->axis == 2 ? MIN (from.z, to.z) : w->axis == 1 ? MIN (from.y, to.y) : MIN (from.x, to.x);
  w->to = w->from + w->length;
}

static gboolean
lies_beside_outline (const Gathering *g, const FpWanted *w)
{
  return w->oblique || (w->upright ? lies_between (g->outline->y0, w, g->outline->y1)
                                   : lies_between (g->outline->x0, w, g->outline->x1));
}

static gboolean
set_ends (const Gathering *g, FpPoint a, FpPoint b, FpWanted *w)
{
  const gboolean is_short = w->length / g->layout->scale < SHORTEST;

  w->a = fp_view_to_paper (g->layout, a);
  w->b = fp_view_to_paper (g->layout, b);
  w->lo = w->upright ? MIN (w->a.y, w->b.y) : MIN (w->a.x, w->b.x);
  w->hi = w->upright ? MAX (w->a.y, w->b.y) : MAX (w->a.x, w->b.x);
  w->is_tiny = w->must != NULL && (is_short || g->layout->scale > SMALLEST);
  return w->length >= 1 && (w->must != NULL || !is_short) && lies_beside_outline (g, w)
         && lies_in (g->clip, a) && lies_in (g->clip, b);
}

/* From the end of the building to the other end, along the axis along which they lie farther apart. */
static gboolean
lay_overall (const Gathering *g, FpVec3 from, FpVec3 to, FpWanted *w)
{
  const FpPoint a = fp_layout_point (g->layout, g->view, from), b = fp_layout_point (g->layout, g->view, to);

  set_axis (w, from, to);
  w->upright = g->view == FP_VIEW_PLAN && w->axis == 1;
  w->length = w->axis == 1 ? fabs (to.y - from.y) : fabs (to.x - from.x);
  w->to = w->from + w->length;
  return set_ends (g, a, b, w);
}

/* FALSE where the measure does not read true in the view, or lies outside of it. */
static gboolean
lay (const Gathering *g, FpVec3 from, FpVec3 to, gboolean may_be_oblique, FpWanted *w)
{
  const FpPoint a = fp_layout_point (g->layout, g->view, from), b = fp_layout_point (g->layout, g->view, to);
  const double length = fp_vec3_length (fp_vec3_sub (to, from));
  const double h = fabs (b.x - a.x), v = fabs (b.y - a.y);

  w->measured.a = from;
  w->measured.b = to;
  if (w->overall)
    return lay_overall (g, from, to, w);
  w->oblique = MIN (h, v) > EQUAL;
  w->upright = v > h;
  w->length = w->oblique ? length : MAX (h, v);
  if ((w->oblique && !may_be_oblique) || fabs (hypot (h, v) - length) > EQUAL)
    return FALSE;
  set_axis (w, from, to);
  w->axis = w->oblique ? OBLIQUE : w->axis;
  return set_ends (g, a, b, w);
}

/* Where its thing lies, along the measure and to its left. */
static void
set_own (const Gathering *g, const FpPlaced *placed, FpWanted *w)
{
  const FpPoint u = fp_wanted_along (w);
  const FpBox *plan = &placed->extent.plan;

  w->own = FP_BOX_EMPTY;
  for (guint i = 0; i < 8; i++)
    {
      const FpVec3 corner = { i % 2 ? plan->x1 : plan->x0, i / 2 % 2 ? plan->y1 : plan->y0,
                              i / 4 ? placed->extent.height : 0 };
      const FpPoint p = fp_view_to_paper (g->layout, fp_layout_point (g->layout, g->view, fp_placed_point (placed, corner)));
      const double x = p.x - w->a.x, y = p.y - w->a.y;
      fp_box_add_point (&w->own, (FpPoint) { x * u.x + y * u.y, y * u.x - x * u.y });
    }
}

/* What lies off the view cannot be seen: there the extension line of what goes on begins where the axis ends. */
static double
across_at (const Gathering *g, const FpWanted *w, double at)
{
  const FpPoint p = fp_view_to_paper (g->layout, w->upright ? (FpPoint) { at, 0 } : (FpPoint) { 0, at });
  const FpBox *o = g->outline;

  return w->upright ? w->a.x - CLAMP (p.x, o->x0, o->x1)
                    : CLAMP (p.y, o->y0 - FP_AXIS_OVERRUN, o->y1 + FP_AXIS_OVERRUN) - w->a.y;
}

/* The thing itself lies where its end of the measure does. */
static void
set_span (const Gathering *g, const FpBetween *between, FpWanted *w)
{
  for (guint end = 0; end < 2; end++)
    {
      const double p = across_at (g, w, between->span[end][0]), q = across_at (g, w, between->span[end][1]);
      w->span[end][0] = MIN (p, q);
      w->span[end][1] = MAX (p, q);
    }
  w->own = (FpBox) { 0, w->span[0][0], 0, w->span[0][1] };
}

static void
set_slide (const Gathering *g, const FpBetween *between, FpWanted *w)
{
  for (guint i = 0; i < 2 && g->view == FP_VIEW_PLAN && !w->oblique; i++)
    {
      const double at = between->slide[i];
      const FpPoint p = fp_view_to_paper (g->layout, w->upright ? (FpPoint) { at, 0 } : (FpPoint) { 0, at });
      w->slide[i] = w->upright ? w->a.x - p.x : p.y - w->a.y;
    }
}

/* Measures over the same stretch say the same, and so do two of one parameter: the first stays. */
static gboolean
says_the_same (const FpShown *o, const FpWanted *w)
{
  /* Where one thing stands says nothing of another that stands as far off. */
  if ((o->is_whereabouts || w->is_whereabouts) && o->item != w->item)
    return FALSE;
  if (o->axis == w->axis && o->axis != OBLIQUE && fabs (o->lo - w->from) < EQUAL && fabs (o->hi - w->to) < EQUAL)
    return TRUE;
  return w->param != NULL && o->param == w->param && o->item == w->item;
}

static FpShown
shown_of (const FpWanted *w)
{
  return (FpShown) { w->axis, w->from, w->to, w->item, w->param, w->is_whereabouts };
}

static gboolean
is_noted (const FpWanted *w, const GArray *shown)
{
  for (guint i = 0; shown != NULL && i < shown->len; i++)
    if (says_the_same (&g_array_index (shown, FpShown, i), w))
      return TRUE;
  return FALSE;
}

static gboolean
is_shown (const Gathering *g, const FpWanted *w)
{
  for (guint i = 0; i < g->out->len; i++)
    {
      const FpShown o = shown_of (&g_array_index (g->out, FpWanted, i));
      if (says_the_same (&o, w))
        return TRUE;
    }
  return is_noted (w, g->shown);
}

/* Between oblique walls, and of what was measured on site, no tenth of a millimetre means anything. */
static void
finish (Gathering *g, const FpDimSpec *spec, gboolean in_whole_mm, FpWanted *w)
{
  if (in_whole_mm && g->layout->units == FP_UNITS_METRIC)
    w->length = round (w->length);
  letter (w, spec->times, g->layout->units);
  w->insists = insists (g, w);
  g_array_append_vals (g->out, w, 1);
}

/* What of a thing follows from several of its parameters. */
static FpStretchSort
sort_of (const FpKind *kind, const FpDimSpec *spec)
{
  const FpVec3 d = fp_vec3_sub (spec->b, spec->a);

  if (spec->param >= 0)
    return FP_STRETCH_PARAM;
  if (fabs (d.z) > fmax (fabs (d.x), fabs (d.y)))
    return FP_STRETCH_TOP;
  if (kind->role == FP_ROLE_WALL)
    return FP_STRETCH_WALLS;
  return fabs (d.x) > fabs (d.y) ? FP_STRETCH_ENDS : FP_STRETCH_FRONT;
}

/* --- gathering --------------------------------------------------------------------- */

/* Of the thing's own axes, which it keeps unless it is turned. */
static guint
main_axis (const FpDimSpec *spec)
{
  const FpVec3 d = fp_vec3_sub (spec->b, spec->a);

  return fabs (d.z) > MAX (fabs (d.x), fabs (d.y)) ? 2 : fabs (d.y) > fabs (d.x) ? 1 : 0;
}

static void
add_of_thing (Gathering *g, const FpPlaced *placed)
{
  const FpKind *kind = fp_item_kind (placed->item);
  const gboolean of_building = (kind->flags & FP_KIND_SURVEY) != 0;
  g_autoptr (GArray) specs = g_array_new (FALSE, FALSE, sizeof (FpDimSpec));

  if (kind->dims == NULL)
    return;
  kind->dims (&placed->form, specs);
  for (guint i = 0; i < specs->len; i++)
    {
      const FpDimSpec *spec = &g_array_index (specs, FpDimSpec, i);
      FpWanted w = { .item = g_intern_string (fp_item_id (placed->item)), .of_rows = kind->role == FP_ROLE_PEWS,
                     .measured = { .sort = sort_of (kind, spec) } };
      w.measured.item = w.item;
      w.must = fp_must_be_told (g->scene, placed, spec->param, main_axis (spec));
      if (!is_wanted (g, spec, of_building, &w)
          || !lay (g, fp_placed_point (placed, spec->a), fp_placed_point (placed, spec->b),
                   !of_building && g->view == FP_VIEW_PLAN, &w))
        continue;
      w.param = spec->param < 0 ? NULL : g_intern_string (kind->params[spec->param].id);
      set_own (g, placed, &w);
      finish (g, spec, of_building || w.param == NULL, &w);
    }
}

/* @item: NULL: none in particular */
static gboolean
tells_of_thing (const Gathering *g, const char *item, gboolean strict)
{
  for (guint i = 0; item != NULL && i < g->n_placed; i++)
    if (g_str_equal (fp_item_id (g->placed[i].item), item) && !g->placed[i].ghost)
      return g->shows[i] || (!strict && fp_shows_thing (g->layout->hidden, fp_item_kind (g->placed[i].item),
                                                        g->placed[i].standing));
  return TRUE;
}

/* Whose measure is left out with it.  Where a section is cut elsewhere, only what it shows is measured, at both ends. */
static gboolean
tells_of (const Gathering *g, const FpBetween *one)
{
  const gboolean strict = g->layout->section[g->view].placed && g->view != FP_VIEW_PLAN;

  if (one->not_in & (1u << g->view))
    return FALSE;
  if (one->overall)
    return fp_shows (g->layout->hidden, FP_SHOW_BUILDING);
  if (one->is_whereabouts && !tells_of_thing (g, one->other, FALSE))
    return FALSE;
  return tells_of_thing (g, one->item, strict)
         && (!strict || (tells_of_thing (g, one->of, TRUE) && tells_of_thing (g, one->other, TRUE)));
}

/* What is chosen is told of at every scale at which anything is, but then after all else, which must not change for it. */
static gboolean
is_between_wanted (const Gathering *g, const FpBetween *one, FpWanted *w)
{
  const gboolean own = (one->spec.views & (1u << g->view)) != 0;

  if (one->overall || (one->is_whereabouts && !own))
    return own;
  w->is_chosen = one->is_whereabouts && g->chosen != NULL && g_strv_contains (g->chosen, one->item);
  if (is_wanted (g, &one->spec, FALSE, w))
    return TRUE;
  w->rank = LAST;
  return w->is_chosen && g->layout->scale <= SMALLEST;
}

static void
add_between (Gathering *g)
{
  g_autoptr (GArray) between = fp_between_things (g->scene, g->layout->section);

  for (guint i = 0; i < between->len; i++)
    {
      const FpBetween *one = &g_array_index (between, FpBetween, i);
      FpWanted w = { .item = one->item, .own = FP_BOX_EMPTY, .overall = one->overall, .must = one->must,
                     .is_whereabouts = one->is_whereabouts,
                     .measured = { .sort = one->sort, .item = one->of, .other = one->other } };
      if (!tells_of (g, one) || !is_between_wanted (g, one, &w) || !lay (g, one->spec.a, one->spec.b, FALSE, &w))
        continue;
      set_slide (g, one, &w);
      if (one->is_whereabouts)
        set_span (g, one, &w);
      finish (g, &one->spec, TRUE, &w);
    }
}

/* Between faces, where others would bar its way; whereabouts along the church would bar that across it. */
static gboolean
slides (const FpWanted *w)
{
  return !w->is_whereabouts && w->slide[0] != w->slide[1];
}

/* The size of a lesser thing can be taken off the thing itself, but not where it stands. */
static gboolean
precedes (const FpWanted *p, const FpWanted *q)
{
  return p->is_whereabouts && p->rank < LAST && !q->is_whereabouts && q->rank >= LESSER;
}

/* What must be told; then by rank; then what stands between faces, where others would bar its way; then the longer first: it says more. */
static int
compare_wanted (gconstpointer a, gconstpointer b)
{
  const FpWanted *p = a, *q = b;
  const gboolean p_slides = slides (p), q_slides = slides (q);

  if ((p->must != NULL) != (q->must != NULL))
    return p->must != NULL ? -1 : 1;
  if (precedes (p, q) || precedes (q, p))
    return precedes (p, q) ? -1 : 1;
  if (p->rank != q->rank)
    return p->rank < q->rank ? -1 : 1;
  if (p_slides != q_slides)
    return p_slides ? -1 : 1;
  if (fabs (p->length - q->length) > EQUAL)
    return p->length > q->length ? -1 : 1;
  if (p->lo != q->lo)
    return p->lo < q->lo ? -1 : 1;
  return p->item == q->item ? g_strcmp0 (p->param, q->param) : g_strcmp0 (p->item, q->item);
}

static GArray *
without_repeats (Gathering *g)
{
  GArray *all = g->out;

  g->out = g_array_new (FALSE, FALSE, sizeof (FpWanted));
  for (guint i = 0; i < all->len; i++)
    if (!is_shown (g, &g_array_index (all, FpWanted, i)))
      g_array_append_vals (g->out, &g_array_index (all, FpWanted, i), 1);
  g_array_unref (all);
  return g->out;
}

GArray *
fp_wanted_gather (const FpScene *scene, const FpViewLayout *layout, FpViewId view, const gboolean *shows,
                  const FpBox *outline, guint rank_max, const GArray *shown, const char *const *chosen)
{
  Gathering g = { .scene = scene, .layout = layout, .view = view, .clip = &layout->clip, .outline = outline,
                  .rank_max = rank_max, .shown = shown, .chosen = chosen, .shows = shows };

  g.placed = fp_scene_placed (scene, &g.n_placed);
  g.out = g_array_new (FALSE, FALSE, sizeof (FpWanted));
  for (guint i = 0; i < g.n_placed; i++)
    if (!g.placed[i].ghost && shows[i])
      add_of_thing (&g, &g.placed[i]);
  add_between (&g);
  g_array_sort (g.out, compare_wanted);
  return without_repeats (&g);
}

void
fp_wanted_note (const GArray *wanted, GArray *shown)
{
  for (guint i = 0; i < wanted->len; i++)
    {
      const FpWanted *w = &g_array_index (wanted, FpWanted, i);
      const FpShown one = shown_of (w);
      if (w->placed != FP_PLACED_NOT)
        g_array_append_val (shown, one);
    }
}

gboolean
fp_wanted_is_open (const FpWanted *self)
{
  return self->placed == FP_PLACED_NOT && !self->is_tiny;
}

void
fp_wanted_untold (const GArray *wanted, const GArray *shown, GPtrArray *untold)
{
  for (guint i = 0; i < wanted->len; i++)
    {
      const FpWanted *w = &g_array_index (wanted, FpWanted, i);
      g_autofree char *words = NULL;
      if (w->must == NULL || w->placed != FP_PLACED_NOT || is_noted (w, shown))
        continue;
      words = g_strdup_printf ("%s %s", w->must, w->text);
      if (!g_ptr_array_find_with_equal_func (untold, words, g_str_equal, NULL))
        g_ptr_array_add (untold, g_steal_pointer (&words));
    }
}
