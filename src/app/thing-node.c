/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "things-tree-private.h"

#include "things.h"
#include "typing.h"

#include <math.h>

G_DEFINE_FINAL_TYPE (FpThingNode, fp_thing_node, G_TYPE_OBJECT)

static guint changed_signal;

static void
fp_thing_node_finalize (GObject *object)
{
  FpThingNode *self = FP_THING_NODE (object);

  g_free (self->id);
  g_free (self->speech);
  for (guint c = 0; c < FP_N_COLUMNS; c++)
    g_free (self->text[c]);
  g_object_unref (self->children);
  G_OBJECT_CLASS (fp_thing_node_parent_class)->finalize (object);
}

static void
fp_thing_node_class_init (FpThingNodeClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = fp_thing_node_finalize;
  changed_signal = g_signal_new ("changed", FP_TYPE_THING_NODE, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
}

static void
fp_thing_node_init (FpThingNode *self)
{
  self->children = g_list_store_new (FP_TYPE_THING_NODE);
  self->was_leaf = TRUE;
  for (guint c = 0; c < FP_N_COLUMNS; c++)
    self->value[c] = NAN;
}

FpThingNode *
fp_thing_node_new_group (const char *name)
{
  FpThingNode *node = g_object_new (FP_TYPE_THING_NODE, NULL);

  node->text[FP_COLUMN_NAME] = g_strdup (name);
  node->speech = g_strdup (name);
  return node;
}

const char *
fp_thing_node_id (FpThingNode *self)
{
  return self->id;
}

const char *
fp_thing_node_text (FpThingNode *self, FpColumn column)
{
  return self->text[column] != NULL ? self->text[column] : "";
}

gboolean
fp_thing_node_can_type (FpThingNode *self, FpColumn column)
{
  return (self->can_type & 1u << column) != 0;
}

gboolean
fp_thing_node_is_gone (FpThingNode *self)
{
  return self->is_gone;
}

const char *
fp_thing_node_speech (FpThingNode *self)
{
  return self->speech;
}

GListModel *
fp_thing_node_children (FpThingNode *self)
{
  GListModel *children = G_LIST_MODEL (self->children);

  return g_list_model_get_n_items (children) > 0 ? children : NULL;
}

int
fp_thing_node_compare (FpThingNode *a, FpThingNode *b, FpColumn column)
{
  const double p = a->value[column], q = b->value[column];

  if (a->id == NULL || b->id == NULL)
    return 0;
  if (isnan (p) && isnan (q))
    return g_utf8_collate (fp_thing_node_text (a, column), fp_thing_node_text (b, column));
  if (isnan (p) || isnan (q))
    return isnan (p) ? 1 : -1;
  return p < q ? -1 : p > q;
}

void
fp_thing_node_changed (FpThingNode *self)
{
  g_signal_emit (self, changed_signal, 0);
}

/* --- what it reads -------------------------------------------------------------- */

static void
take_text (FpThingNode *self, FpColumn column, char *text, gboolean *any)
{
  if (g_strcmp0 (self->text[column], text) == 0)
    {
      g_free (text);
      return;
    }
  g_free (self->text[column]);
  self->text[column] = text;
  *any = TRUE;
}

static double
height_of (const FpPlaced *placed)
{
  const char *param = fp_column_param (fp_item_kind (placed->item), FP_COLUMN_HEIGHT);

  return param != NULL ? fp_item_param (placed->item, param) : placed->extent.height;
}

static double
level_of (const FpPlaced *placed)
{
  const char *param = fp_column_param (fp_item_kind (placed->item), FP_COLUMN_LEVEL);

  return param != NULL ? fp_item_param (placed->item, param) : placed->level;
}

static void
read_values (FpThingNode *self, const FpThingReading *r, const FpPlaced *placed, gboolean own)
{
  const FpPlace place = own ? fp_place_now (r->document, placed) : placed->place;

  self->value[FP_COLUMN_LEVEL] = level_of (placed);
  self->value[FP_COLUMN_HEIGHT] = height_of (placed);
  for (guint c = 0; c < FP_N_COLUMNS; c++)
    if (fp_column_is_place ((FpColumn) c))
      self->value[c] = fp_place_field_get (&place, fp_column_field ((FpColumn) c));
  self->value[FP_COLUMN_SIZE] = fp_box_is_empty (&placed->plan) ? NAN
                                : (placed->plan.x1 - placed->plan.x0) * (placed->plan.y1 - placed->plan.y0);
}

static char *
size_text (const FpPlaced *placed, FpUnits units)
{
  g_autofree char *across = NULL, *along = NULL;

  if (fp_box_is_empty (&placed->plan))
    return g_strdup ("");
  across = fp_length_format (round (placed->plan.x1 - placed->plan.x0), units);
  along = fp_length_format (round (placed->plan.y1 - placed->plan.y0), units);
  return g_strdup_printf ("%s × %s", across, along);
}

static guint
what_can_be_typed (const FpPlaced *placed, gboolean own)
{
  const FpKind *kind = fp_item_kind (placed->item);
  guint mask = 1u << FP_COLUMN_NAME;

  if (placed->ghost)
    return 0;
  for (guint c = 0; c < FP_N_COLUMNS; c++)
    if (fp_column_param (kind, (FpColumn) c) != NULL || (own && fp_column_is_place ((FpColumn) c)))
      mask |= 1u << c;
  return mask;
}

static void
read_speech (FpThingNode *self, const FpThingReading *r, const FpPlaced *placed)
{
  g_autofree char *where = fp_thing_where (r->scene, placed, r->units);

  g_free (self->speech);
  self->speech = g_strdup_printf ("%s, %s, %s; across %s, along %s", fp_thing_node_text (self, FP_COLUMN_NAME),
                                  fp_thing_node_text (self, FP_COLUMN_STANDING), where,
                                  fp_thing_node_text (self, FP_COLUMN_ACROSS),
                                  fp_thing_node_text (self, FP_COLUMN_ALONG));
}

gboolean
fp_thing_node_read (FpThingNode *self, const FpThingReading *r, const FpPlaced *placed)
{
  const gboolean own = fp_place_is_own (r->scene, placed);
  const guint can_type = what_can_be_typed (placed, own);
  gboolean any = can_type != self->can_type || self->is_gone != placed->ghost;

  read_values (self, r, placed, own);
  self->can_type = can_type;
  self->is_gone = placed->ghost;
  take_text (self, FP_COLUMN_NAME, g_strdup (fp_item_name (placed->item)), &any);
  take_text (self, FP_COLUMN_STANDING, g_strdup (fp_thing_standing (r->scene, placed)), &any);
  take_text (self, FP_COLUMN_LEVEL, fp_level_format (self->value[FP_COLUMN_LEVEL], r->units), &any);
  take_text (self, FP_COLUMN_HEIGHT, fp_length_format (self->value[FP_COLUMN_HEIGHT], r->units), &any);
  take_text (self, FP_COLUMN_SIZE, size_text (placed, r->units), &any);
  for (guint c = 0; c < FP_N_COLUMNS; c++)
    if (fp_column_is_place ((FpColumn) c))
      take_text (self, (FpColumn) c,
                 fp_typing_show (fp_place_field (fp_column_field ((FpColumn) c)), self->value[c], r->units), &any);
  if (any)
    read_speech (self, r, placed);
  return any;
}
