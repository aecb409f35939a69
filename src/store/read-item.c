/* SPDX-License-Identifier: GPL-3.0-or-later */
/* read-item.c - one thing: its kind, its place, its parameters and corners */
#include "read-parts.h"

#include <string.h>

#define COMMON "id", "name", "on", "x", "y", "turn"

static gboolean
refuse_kind (FpReader *r, const xmlNode *node, gboolean in_survey)
{
  g_autoptr (GString) all = g_string_new ("");
  guint n;
  const FpKind *const *kinds = fp_kinds (&n);

  for (guint i = 0; i < n; i++)
    if (in_survey || (kinds[i]->flags & FP_KIND_SURVEY) == 0)
      g_string_append_printf (all, "%s%s", all->len > 0 ? ", " : "", kinds[i]->id);
  return fp_read_refuse (r, node, FP_ERROR_KIND, "<%.80s> is a kind of thing that is not known; one of %s is expected",
                         fp_read_name (node), all->str);
}

static gboolean
kind_is_fair (FpReader *r, const xmlNode *node, const FpKind *kind, gboolean in_survey)
{
  if (kind == NULL)
    return refuse_kind (r, node, in_survey);
  if (!in_survey && (kind->flags & FP_KIND_SURVEY) != 0)
    return fp_read_refuse (r, node, FP_ERROR_INVALID, "<%s> was found in an alternative; it is expected in <survey>",
                           kind->id);
  return TRUE;
}

static gboolean
knows_attributes (FpReader *r, const xmlNode *node, const FpKind *kind)
{
  const char *const common[] = { COMMON };
  const char *known[G_N_ELEMENTS (common) + FP_PARAM_MAX + 1] = { COMMON };
  const guint n = MIN (fp_kind_n_params (kind), FP_PARAM_MAX);

  for (guint i = 0; i < n; i++)
    known[G_N_ELEMENTS (common) + i] = kind->params[i].id;
  return fp_read_knows_attributes (r, node, known);
}

static gboolean
read_choice (FpReader *r, const xmlNode *node, const FpParam *param, const char *text, double *value)
{
  g_autoptr (GString) all = g_string_new ("");

  for (guint i = 0; param->choices[i].id != NULL; i++)
    {
      if (strcmp (param->choices[i].id, text) == 0)
        {
          *value = i;
          return TRUE;
        }
      g_string_append_printf (all, "%s%s", i > 0 ? ", " : "", param->choices[i].id);
    }
  return fp_read_refuse (r, node, FP_ERROR_INVALID, "%s is “%.40s”; one of %s is expected", param->id, text, all->str);
}

/* What is not given keeps its default: the file may be older than the parameter. */
static gboolean
read_params (FpReader *r, const xmlNode *node, const FpKind *kind, double *value)
{
  fp_kind_defaults (kind, value);
  for (guint i = 0; kind->params[i].id != NULL; i++)
    {
      const FpParam *param = &kind->params[i];
      const char *text = fp_read_attribute (r, node, param->id);
      if (text == NULL)
        continue;
      if (param->type == FP_PARAM_CHOICE ? !read_choice (r, node, param, text, &value[i])
          : !fp_read_number_text (r, node, param->id, text, &value[i]))
        return FALSE;
    }
  return TRUE;
}

gboolean
fp_read_place (FpReader *r, const xmlNode *node, FpPlace *place)
{
  *place = (FpPlace) { 0, 0, 0 };
  return fp_read_number (r, node, "x", &place->x) && fp_read_number (r, node, "y", &place->y)
         && fp_read_number (r, node, "turn", &place->turn);
}

static gboolean
read_corner (FpReader *r, const xmlNode *node, GArray *corners)
{
  static const char *const known[] = { "x", "y", NULL };
  FpPoint p = { 0, 0 };

  if (!fp_read_is (node, "corner"))
    return fp_read_refuse (r, node, FP_ERROR_INVALID, "<%.80s> was found; <corner> is expected here",
                           fp_read_name (node));
  if (!fp_read_knows_attributes (r, node, known) || fp_read_needed_attribute (r, node, "x") == NULL
      || fp_read_needed_attribute (r, node, "y") == NULL || !fp_read_number (r, node, "x", &p.x)
      || !fp_read_number (r, node, "y", &p.y) || !fp_read_has_only_elements (r, node))
    return FALSE;
  if (fp_read_first (node) != NULL)
    return fp_read_refuse (r, fp_read_first (node), FP_ERROR_INVALID, "<%.80s> was found in <corner>, where nothing is "
                           "expected", fp_read_name (fp_read_first (node)));
  g_array_append_val (corners, p);
  return TRUE;
}

static gboolean
read_corners (FpReader *r, const xmlNode *node, const FpKind *kind, GArray *corners)
{
  const xmlNode *child;

  if (!fp_read_has_only_elements (r, node))
    return FALSE;
  child = fp_read_first (node);
  if (child != NULL && (kind->flags & (FP_KIND_OUTLINE | FP_KIND_RUN)) == 0)
    return fp_read_refuse (r, child, FP_ERROR_INVALID, "<%.80s> was found in <%s>, where nothing is expected",
                           fp_read_name (child), kind->id);
  for (; child != NULL; child = fp_read_next (child))
    {
      if (corners->len >= FP_CORNERS_MAX)
        return fp_read_refuse (r, child, FP_ERROR_LIMIT, "more than %d corners in one outline, the most that are read",
                               FP_CORNERS_MAX);
      if (!read_corner (r, child, corners))
        return FALSE;
    }
  return TRUE;
}

FpItem *
fp_read_item (FpReader *r, const xmlNode *node, gboolean in_survey)
{
  FpItemInit init = { .kind = fp_kind_find (fp_read_name (node)) };
  g_autoptr (GArray) corners = g_array_new (FALSE, FALSE, sizeof (FpPoint));
  double value[FP_PARAM_MAX];
  GError *error = NULL;
  FpItem *item;

  if (!kind_is_fair (r, node, init.kind, in_survey) || !knows_attributes (r, node, init.kind)
      || (init.id = fp_read_needed_attribute (r, node, "id")) == NULL || !fp_read_place (r, node, &init.place)
      || !read_params (r, node, init.kind, value) || !read_corners (r, node, init.kind, corners))
    return NULL;
  init.name = fp_read_attribute (r, node, "name");
  init.on = fp_read_attribute (r, node, "on");
  init.param = value;
  init.corner = (const FpPoint *) (gpointer) corners->data;
  init.n_corners = corners->len;
  item = fp_item_new (&init, &error);
  if (item == NULL)
    fp_read_refuse_error (r, fp_read_line (node), error);
  return item;
}
