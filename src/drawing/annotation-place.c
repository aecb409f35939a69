/* SPDX-License-Identifier: GPL-3.0-or-later */
/* annotation-place.c - in which order levels, dimensions and names find their places */
#include "annotation-private.h"

#include "near.h"

#include <math.h>

/* Labels stay this far inside the outline, mm. */
#define INSET 1.0

/* What lies so near the edge of the view is dimensioned beside it, mm. */
#define AT_EDGE 4.0

/* Longer extension lines would cut the drawing to pieces (design judgement), mm. */
#define LONGEST            30.0
#define LONGEST_FROM_ABOVE 12.0

/* At smaller scales no slope can be seen. */
#define FALLS_SMALLEST 320.0

/* Measures of a greater rank come after the names. */
#define NAME_RANK 3u

/* Tiers beyond the usual for what must be told. */
#define MORE_TIERS 2u

/* Dimensions within the view may stand out by this much: nearer than the first tier, mm. */
#define STANDS_OUT 3.9

/* --- what a scale has room for -------------------------------------------------- */

/* The smaller the scale, the fewer measures: those of a rank that would only be a heap of figures
 * are not even tried (design judgement). */
static guint
most_rank (double scale)
{
  return scale <= 30 ? 99 : scale <= 60 ? 9 : scale <= 120 ? 4 : scale <= 220 ? 1 : 0;
}

/* At the smallest scales the church is a sign of itself. */
static gboolean
is_legible (double scale)
{
  return scale <= 1000;
}

/* NULL: nothing stood anywhere before. */
static const FpViewMemory *
memory_of (const FpAnnotation *self)
{
  return self->around.anew ? NULL : fp_view_memory_at (self->around.memory, self->layout.scale);
}

/* --- levels --------------------------------------------------------------------- */

static void
set_sides (FpAnnotation *self)
{
  for (FpSide side = 0; side < FP_N_SIDES; side++)
    {
      const double levels = fp_levels_reach (self->levels, side);
      self->sides.first[side] = MAX (FP_TIER_FIRST, levels > 0 ? levels + 4 + FP_FIGURE_HEIGHT : 0);
      self->sides.tiers[side] = self->layout.dimensions ? self->around.tiers[side] : 0;
      self->sides.longest[side] = LONGEST;
    }
  self->sides.more = self->around.has_title_at || !self->layout.dimensions ? 0 : MORE_TIERS;
  /* From above the walls down to what stands on the floor nothing can be told. */
  if (self->view != FP_VIEW_PLAN)
    self->sides.longest[FP_SIDE_ABOVE] = LONGEST_FROM_ABOVE;
}

static void
set_levels (FpAnnotation *self, const FpScene *scene)
{
  const gboolean wanted = self->layout.levels && self->view != FP_VIEW_PLAN && is_legible (self->layout.scale);
  const guint rank = most_rank (self->layout.scale) + 2;

  self->levels = wanted ? fp_levels_gather (scene, &self->layout, self->view, self->shows, rank,
                                           !self->around.levels_only_there)
                        : g_array_new (FALSE, FALSE, sizeof (FpLevelMark));
  fp_levels_place (self->levels, &self->sides.content, self->around.levels_on,
                   self->around.levels_only_there, self->room);
}

/* --- dimensions ----------------------------------------------------------------- */

static void
place_near (FpAnnotation *self, FpNearAmong among, guint rank_max)
{
  const FpBox *c = &self->sides.content;
  /* On a board the next view stands beside it. */
  const double aside = self->around.has_title_at ? 0 : STANDS_OUT;
  const FpBox within = { c->x0 - aside, c->y0 - STANDS_OUT, c->x1 + aside, c->y1 + STANDS_OUT };
  const double axis = self->view == FP_VIEW_SECTION ? NAN : self->layout.origin.x;
  const FpViewMemory *before = memory_of (self);

  fp_near_place (self->wanted, among, rank_max, before != NULL ? before->wanted : NULL, &within, axis, self->room);
}

/* What must be told comes before all else: where it stands well, and then wherever it can. */
static void
place_musts (FpAnnotation *self, FpTiers *tiers)
{
  fp_tiers_place (tiers, AT_EDGE, FP_TIERS_MUSTS);
  place_near (self, FP_NEAR_MUSTS, G_MAXUINT);
  fp_tiers_place (tiers, LONGEST, FP_TIERS_MUSTS);
  place_near (self, FP_NEAR_INSIST, G_MAXUINT);
  fp_tiers_place (tiers, LONGEST, FP_TIERS_INSIST);
  place_near (self, FP_NEAR_ANYHOW, G_MAXUINT);
}

/* First what lies at the edge of the view, beside it; then the foremost of what lies within, near where it stands. */
static void
place_foremost (FpAnnotation *self, FpTiers *tiers)
{
  fp_tiers_place (tiers, AT_EDGE, FP_TIERS_ALL);
  place_near (self, FP_NEAR_ALL, NAME_RANK);
}

/* Names come before measures of the lesser things; what then is left goes beside the view if extension lines can
 * reach it. */
static void
place_rest (FpAnnotation *self, FpTiers *tiers)
{
  place_near (self, FP_NEAR_ALL, G_MAXUINT);
  fp_tiers_place (tiers, LONGEST, FP_TIERS_ALL);
  fp_tiers_settle (tiers);
  fp_tiers_place_late (tiers);
  place_near (self, FP_NEAR_ANYHOW, G_MAXUINT);
  place_near (self, FP_NEAR_CHOSEN, G_MAXUINT);
  self->untold = g_ptr_array_new_with_free_func (g_free);
  fp_wanted_untold (self->wanted, self->around.shown, self->untold);
  fp_levels_untold (self->levels, self->untold);
  self->left_out = 0;
  for (guint i = 0; i < self->wanted->len; i++)
    self->left_out += g_array_index (self->wanted, FpWanted, i).placed == FP_PLACED_NOT ? 1 : 0;
}

/* What must be told is told in words where the church is a sign of itself. */
static void
keep_musts_alone (GArray *wanted)
{
  for (guint i = wanted->len; i-- > 0;)
    if (g_array_index (wanted, FpWanted, i).must == NULL)
      g_array_remove_index (wanted, i);
}

static void
gather_dimensions (FpAnnotation *self, const FpScene *scene)
{
  if (!self->layout.dimensions)
    {
      self->wanted = g_array_new (FALSE, FALSE, sizeof (FpWanted));
      return;
    }
  self->wanted = fp_wanted_gather (scene, &self->layout, self->view, self->shows, &self->sides.content,
                                   most_rank (self->layout.scale), self->around.shown, self->around.chosen);
  if (!is_legible (self->layout.scale))
    keep_musts_alone (self->wanted);
}

/* --- names and falls ------------------------------------------------------------ */

static void
set_labels (FpAnnotation *self, FpProjection *projection, FpLabelsAmong among)
{
  const FpBox outline = fp_view_outline (projection, &self->layout);
  const FpBox inside = { outline.x0 + INSET, outline.y0 + INSET, outline.x1 - INSET, outline.y1 - INSET };
  const FpViewMemory *before = memory_of (self);
  guint lacking = 0;

  if (self->layout.labels && fp_shows (self->layout.hidden, FP_SHOW_NAMES)
      && self->view == FP_VIEW_PLAN && is_legible (self->layout.scale))
    lacking = fp_labels_place (projection, &self->layout, self->shows, self->drawn, &inside,
                                      self->around.names_outside ? &outline : NULL, among,
                                      before != NULL ? before->labels : NULL, self->room, self->labels);
  /* That of what is small is not missed. */
  if (among != FP_LABELS_SMALL)
    self->nameless = lacking;
}

static void
set_setting (FpAnnotation *self, const FpScene *scene)
{
  self->set = fp_set_marks_place (scene, &self->layout, self->view, self->shows,
                                  self->layout.labels && fp_shows (self->layout.hidden, FP_SHOW_NAMES)
                                    && self->layout.scale <= FP_SET_SMALLEST, self->room);
}

static void
set_falls (FpAnnotation *self, FpProjection *projection)
{
  if (self->layout.levels && self->layout.scale <= FALLS_SMALLEST)
    self->falls = fp_falls_place (projection, &self->layout, &self->sides.content, self->room);
  else
    self->falls = g_array_new (FALSE, FALSE, sizeof (FpFall));
}

/* --- all of it ------------------------------------------------------------------ */

static void
place_all (FpAnnotation *self, FpProjection *projection, gboolean chosen_first)
{
  g_autoptr (FpTiers) tiers = fp_tiers_new (self->wanted, &self->sides, self->room);

  self->labels = fp_labels_new ();
  set_labels (self, projection, FP_LABELS_ALTAR);
  place_musts (self, tiers);
  if (chosen_first)
    place_near (self, FP_NEAR_CHOSEN, G_MAXUINT);
  place_foremost (self, tiers);
  set_falls (self, projection);
  set_labels (self, projection, FP_LABELS_REST);
  place_rest (self, tiers);
  set_labels (self, projection, FP_LABELS_SMALL);
}

static guint
count_chosen_untold (const FpAnnotation *self)
{
  guint n = 0;

  for (guint i = 0; i < self->wanted->len; i++)
    {
      const FpWanted *w = &g_array_index (self->wanted, FpWanted, i);
      n += w->is_chosen && w->placed == FP_PLACED_NOT ? 1 : 0;
    }
  return n;
}

static void
forget_all (FpAnnotation *self)
{
  g_array_unref (self->wanted);
  g_array_unref (self->labels);
  g_array_unref (self->falls);
  g_ptr_array_unref (self->untold);
}

/* Where what is chosen found no room left, names and lesser measures give way to it, if that helps.
 * @start: what was taken before all of them */
static void
place_chosen_first (FpAnnotation *self, FpProjection *projection, FpCoverMark start)
{
  FpAnnotation usual = *self;

  self->wanted = g_array_copy (usual.wanted);
  for (guint i = 0; i < self->wanted->len; i++)
    g_array_index (self->wanted, FpWanted, i).placed = FP_PLACED_NOT;
  fp_cover_reset (self->room, start);
  place_all (self, projection, TRUE);
  if (count_chosen_untold (self) < count_chosen_untold (&usual))
    forget_all (&usual);
  else
    {
      forget_all (self);
      *self = usual;
    }
}

void
fp_annotation_place (FpAnnotation *self, FpProjection *projection)
{
  FpCoverMark start;

  set_levels (self, fp_projection_scene (projection));
  set_sides (self);
  if (self->layout.dimensions || self->layout.labels)
    fp_annotation_cover_objects (self, projection);
  set_setting (self, fp_projection_scene (projection));
  gather_dimensions (self, fp_projection_scene (projection));
  start = fp_cover_mark (self->room);
  place_all (self, projection, FALSE);
  if (count_chosen_untold (self) > 0)
    place_chosen_first (self, projection, start);
  if (self->around.shown != NULL)
    fp_wanted_note (self->wanted, self->around.shown);
}
