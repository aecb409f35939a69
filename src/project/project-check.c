/* SPDX-License-Identifier: GPL-3.0-or-later */
/* project-check.c - the invariants of every project */
#include "project-private.h"

#include <math.h>
#include <string.h>

static gboolean
refuse (GError **error, FpError code, const char *format, ...) G_GNUC_PRINTF (3, 4);

static gboolean
refuse (GError **error, FpError code, const char *format, ...)
{
  va_list args;

  va_start (args, format);
  if (error != NULL)
    *error = g_error_new_valist (FP_ERROR, (int) code, format, args);
  va_end (args);
  return FALSE;
}

/* --- ids --- */

/* Adds the things of @list to @all (id to FpItem). */
static gboolean
gather (const FpItemList *list, GHashTable *all, GError **error)
{
  if (list->n > FP_ITEMS_MAX)
    return refuse (error, FP_ERROR_LIMIT, "there are %u things in one list, at most %d are taken", list->n,
                   FP_ITEMS_MAX);
  for (guint i = 0; i < list->n; i++)
    if (!g_hash_table_insert (all, (gpointer) fp_item_id (list->item[i]), (gpointer) list->item[i]))
      return refuse (error, FP_ERROR_REFERENCE, "%s: there are two things with this id", fp_item_id (list->item[i]));
  return TRUE;
}

/* --- one thing on another --- */

static gboolean
bears_things (const FpItem *support)
{
  FpForm form = { .param = fp_item_params (support), .core = FP_CORE_COMMON };
  FpExtent extent = { FP_BOX_EMPTY, FP_BOX_EMPTY, 0, 0 };

  form.corner = fp_item_corners (support, &form.n_corners);
  fp_item_kind (support)->extent (&form, &extent);
  return !fp_box_is_empty (&extent.bearing);
}

/* A veil hangs over a tabernacle on which nothing stands. */
static gboolean
hangs_over (const FpItem *item, const FpItem *support)
{
  const FpKind *kind = fp_item_kind (item);

  for (guint i = 0; (kind->flags & FP_KIND_HUNG) != 0 && kind->stands_on[i] != FP_ROLE_NONE; i++)
    if (kind->stands_on[i] == fp_item_kind (support)->role)
      return TRUE;
  return FALSE;
}

/* The length of the run of a wall between corner @side (from 1) and the next. */
static double
side_length (const FpItem *wall, guint side)
{
  guint n;
  const FpPoint *corner = fp_item_corners (wall, &n);
  const FpPoint a = corner[side - 1], b = corner[side % n];

  return hypot (b.x - a.x, b.y - a.y);
}

static gboolean
fits_wall (const FpItem *opening, const FpItem *wall, GError **error)
{
  const double side = fp_item_param (opening, "side"), along = fp_item_param (opening, "along");
  const double half = fp_item_param (opening, "width") / 2;
  const gboolean closed = fp_item_param (wall, "closed") != 0;
  double length;
  guint n;

  fp_item_corners (wall, &n);
  if (!(side >= 1 && side <= (closed ? n : n - 1)))
    return refuse (error, FP_ERROR_RANGE, "%s: side is %g, but %s has %u sides", fp_item_id (opening), side,
                   fp_item_id (wall), closed ? n : n - 1);
  length = side_length (wall, (guint) side);
  /* A hair of tolerance: lengths of slanting sides are rounded. */
  if (!(along - half >= -1e-6 && along + half <= length + 1e-6))
    return refuse (error, FP_ERROR_RANGE,
                   "%s: it reaches from %g mm to %g mm along side %g of %s, which is %g mm long", fp_item_id (opening),
                   along - half, along + half, side, fp_item_id (wall), length);
  return TRUE;
}

static gboolean
stands_well (const FpItem *item, const FpItem *support, GError **error)
{
  if ((fp_item_kind (item)->flags & FP_KIND_IN_WALL) != 0)
    {
      if (support == NULL || fp_item_kind (support)->role != FP_ROLE_WALL)
        return refuse (error, FP_ERROR_REFERENCE, "%s: it must be in a wall", fp_item_id (item));
      return fits_wall (item, support, error);
    }
  if (support != NULL && !bears_things (support) && !hangs_over (item, support))
    return refuse (error, FP_ERROR_REFERENCE, "%s: nothing can stand on %s (%s)", fp_item_id (item),
                   fp_item_id (support), fp_item_kind (support)->label);
  return TRUE;
}

/* --- openings of one wall --- */

typedef struct
{
  const FpItem *opening;
  double        side, from, to; /* along that side                          */
  double        foot, crown;    /* above the foot of the wall               */
} Span;

static Span
span_of (const FpItem *opening)
{
  const double along = fp_item_param (opening, "along"), width = fp_item_param (opening, "width");
  const double sill = fp_item_param (opening, "sill"), head = fp_item_param (opening, "head");
  const gboolean arched = fp_item_param (opening, "arch") == 1;

  return (Span) { opening, fp_item_param (opening, "side"), along - width / 2, along + width / 2, sill,
                  MAX (sill, head) + (arched ? width / 2 : 0) };
}

static int
by_place (gconstpointer a, gconstpointer b)
{
  const Span *p = a, *q = b;
  const int wall = strcmp (fp_item_on (p->opening), fp_item_on (q->opening));

  if (wall != 0)
    return wall;
  return p->side != q->side ? (p->side > q->side) - (p->side < q->side) : (p->from > q->from) - (p->from < q->from);
}

static GArray *
spans_in_order (const FpItemList *survey)
{
  GArray *spans = g_array_new (FALSE, FALSE, sizeof (Span));

  for (guint i = 0; i < survey->n; i++)
    if ((fp_item_kind (survey->item[i])->flags & FP_KIND_IN_WALL) != 0)
      {
        const Span span = span_of (survey->item[i]);
        g_array_append_val (spans, span);
      }
  g_array_sort (spans, by_place);
  return spans;
}

/* A hair of tolerance: what touches does not overlap. */
static gboolean
overlap (double a0, double a1, double b0, double b1)
{
  return MIN (a1, b1) - MAX (a0, b0) > 1e-6;
}

static gboolean
refuse_overlap (const Span *a, const Span *b, GError **error)
{
  const char *id = fp_item_id (a->opening), *other = fp_item_id (b->opening);

  return refuse (error, FP_ERROR_RANGE,
                 "%s: it overlaps %s in side %g of %s: it reaches from %g mm to %g mm along that side and from %g mm to "
                 "%g mm up, %s from %g mm to %g mm and from %g mm to %g mm", id, other, a->side, fp_item_on (a->opening), a->from,
                 a->to, a->foot, a->crown, other, b->from, b->to, b->foot, b->crown);
}

/* A window may lie over a door; but what is cut out of a wall is cut out once. */
static gboolean
openings_lie_apart (const FpItemList *survey, GError **error)
{
  g_autoptr (GArray) spans = spans_in_order (survey);

  for (guint i = 0; i < spans->len; i++)
    for (guint k = i + 1; k < spans->len; k++)
      {
        const Span *a = &g_array_index (spans, Span, i), *b = &g_array_index (spans, Span, k);
        if (strcmp (fp_item_on (a->opening), fp_item_on (b->opening)) != 0 || a->side < b->side
            || !overlap (a->from, a->to, b->from, b->to))
          break;
        if (overlap (a->foot, a->crown, b->foot, b->crown))
          return refuse_overlap (b, a, error);
      }
  return TRUE;
}

/* --- circles --- */

typedef struct
{
  GHashTable          *all;         /* id to FpItem                         */
  GHashTable          *own;         /* the alternative's own things         */
  const FpAlternative *alternative; /* NULL: the survey as it was measured  */
} Standing;

static const char *
support_id (const Standing *s, const FpItem *item)
{
  if (s->alternative != NULL && !g_hash_table_contains (s->own, item))
    return fp_alternative_support (s->alternative, item);
  return fp_item_on (item);
}

/* Follows supports down from @item; what was proved to reach the floor is in @safe. */
static gboolean
reaches_floor (const Standing *s, const FpItem *item, GHashTable *safe, GError **error)
{
  g_autoptr (GHashTable) way = g_hash_table_new (NULL, NULL);
  const FpItem *at = item;
  GHashTableIter iter;
  gpointer passed;

  while (at != NULL && !g_hash_table_contains (safe, at))
    {
      const char *on = support_id (s, at);
      if (!g_hash_table_add (way, (gpointer) at))
        return refuse (error, FP_ERROR_REFERENCE, "%s: things stand on each other in a circle", fp_item_id (at));
      at = on != NULL ? g_hash_table_lookup (s->all, on) : NULL;
    }
  g_hash_table_iter_init (&iter, way);
  while (g_hash_table_iter_next (&iter, &passed, NULL))
    g_hash_table_add (safe, passed);
  return TRUE;
}

static gboolean
is_removed (const Standing *s, const char *id)
{
  const FpFateEntry *entry = s->alternative != NULL ? fp_alternative_fate_entry (s->alternative, id) : NULL;

  return entry != NULL && entry->fate == FP_FATE_REMOVED;
}

static gboolean
stands (const Standing *s, const FpItem *item, GError **error)
{
  const char *on = support_id (s, item);
  const FpItem *support = on != NULL ? g_hash_table_lookup (s->all, on) : NULL;

  if (is_removed (s, fp_item_id (item)))
    return TRUE;
  if (on != NULL && support == NULL)
    return refuse (error, FP_ERROR_REFERENCE, "%s: it stands on “%s”, which is not there", fp_item_id (item), on);
  return stands_well (item, support, error);
}

static gboolean
all_stand (const Standing *s, const FpItemList *list, GHashTable *safe, GError **error)
{
  for (guint i = 0; i < list->n; i++)
    if (!stands (s, list->item[i], error) || !reaches_floor (s, list->item[i], safe, error))
      return FALSE;
  return TRUE;
}

/* --- the parts --- */

gboolean
fp_survey_check (const FpItemList *survey, GError **error)
{
  g_autoptr (GHashTable) all = g_hash_table_new (g_str_hash, g_str_equal), safe = g_hash_table_new (NULL, NULL);
  const Standing s = { all, NULL, NULL };
  FpWeight weight = { 0, 0 };

  return gather (survey, all, error) && fp_weight_add (&weight, survey, error) && all_stand (&s, survey, safe, error) && openings_lie_apart (survey, error);
}

static gboolean
fate_is_fair (const FpFateEntry *entry, const FpItemList *survey, GError **error)
{
  const int i = fp_item_list_find (survey, entry->id);

  if (i < 0)
    return refuse (error, FP_ERROR_REFERENCE, "%s: the survey holds no such thing to be moved or removed", entry->id);
  if (entry->fate != FP_FATE_MOVED)
    return TRUE;
  if ((fp_item_kind (survey->item[i])->flags & FP_KIND_IN_WALL) != 0)
    return refuse (error, FP_ERROR_INVALID, "%s: what is in a wall cannot be moved, only measured anew", entry->id);
  return fp_place_check (&entry->moved, entry->id, error);
}

static gboolean
fates_are_fair (const FpAlternative *self, const FpItemList *survey, GError **error)
{
  g_autoptr (GHashTable) named = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < self->fates->len; i++)
    {
      const FpFateEntry *entry = &g_array_index (self->fates, FpFateEntry, i);
      if (!fate_is_fair (entry, survey, error))
        return FALSE;
      if (!g_hash_table_add (named, entry->id))
        return refuse (error, FP_ERROR_REFERENCE, "%s: it is moved or removed twice", entry->id);
    }
  return TRUE;
}

static gboolean
holds_only_furnishings (const FpAlternative *self, GError **error)
{
  for (guint i = 0; i < self->items->n; i++)
    if ((fp_item_kind (self->items->item[i])->flags & FP_KIND_SURVEY) != 0)
      return refuse (error, FP_ERROR_INVALID, "%s: %s belongs to the survey, not to an alternative",
                     fp_item_id (self->items->item[i]), fp_item_kind (self->items->item[i])->id);
  return TRUE;
}

static gboolean
facing_is_known (const FpAlternative *self, GError **error)
{
  if ((guint) self->facing <= FP_FACING_PEOPLE)
    return TRUE;
  return refuse (error, FP_ERROR_RANGE, "%s: facing is %d; it is east or people", self->id, (int) self->facing);
}

gboolean
fp_alternative_check (const FpAlternative *self, const FpItemList *survey, GError **error)
{
  g_autoptr (GHashTable) all = g_hash_table_new (g_str_hash, g_str_equal), safe = g_hash_table_new (NULL, NULL);
  g_autoptr (GHashTable) own = g_hash_table_new (NULL, NULL);
  const Standing s = { all, own, self };
  FpWeight weight = { 0, 0 };

  for (guint i = 0; i < self->items->n; i++)
    g_hash_table_add (own, (gpointer) self->items->item[i]);
  return fp_id_check (self->id, "alternative", error) && fp_text_check (self->name, self->id, FALSE, error)
         && fp_text_check (self->note, self->id, TRUE, error) && facing_is_known (self, error)
         && gather (survey, all, error) && gather (self->items, all, error)
         && fp_weight_add (&weight, survey, error) && fp_weight_add (&weight, self->items, error)
         && holds_only_furnishings (self, error)
         && fates_are_fair (self, survey, error) && fp_settings_check (&self->settings, survey, self->items, error)
         && all_stand (&s, survey, safe, error)
         && all_stand (&s, self->items, safe, error);
}

static gboolean
alternatives_differ (const FpProject *self, GError **error)
{
  if (self->n_alternatives == 0)
    return refuse (error, FP_ERROR_INVALID, "a project has at least one alternative");
  if (self->n_alternatives > FP_ALTERNATIVES_MAX)
    return refuse (error, FP_ERROR_LIMIT, "there are %u alternatives, at most %d are taken", self->n_alternatives,
                   FP_ALTERNATIVES_MAX);
  for (guint i = 0; i < self->n_alternatives; i++)
    if (fp_project_find_alternative (self, self->alternative[i]->id) != (int) i)
      return refuse (error, FP_ERROR_REFERENCE, "%s: there are two alternatives with this id",
                     self->alternative[i]->id);
  return TRUE;
}

gboolean
fp_project_check (const FpProject *self, GError **error)
{
  if (!fp_brief_check (&self->brief->brief, error) || !fp_survey_check (self->survey, error)
      || !alternatives_differ (self, error) || (self->has_page && !fp_page_setup_check (&self->page, error)))
    return FALSE;
  for (guint i = 0; i < self->n_alternatives; i++)
    if (!fp_alternative_check (self->alternative[i], self->survey, error))
      return FALSE;
  return TRUE;
}
