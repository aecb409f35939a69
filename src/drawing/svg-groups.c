/* SPDX-License-Identifier: GPL-3.0-or-later */
/* svg-groups.c - marks gathered into a group a thing */
#include "svg-groups.h"

#include "drawing-private.h"

static void
clear_group (gpointer data)
{
  FpSvgGroup *group = data;

  g_array_unref (group->marks);
}

static gboolean
covers (const FpMark *mark)
{
  return mark->type == FP_MARK_PICTURE
         || ((mark->type == FP_MARK_AREA || mark->type == FP_MARK_CIRCLE) && mark->fill != FP_FILL_NONE);
}

static gboolean
same_owner (const FpMark *a, const FpMark *b)
{
  return a->item == b->item && a->standing == b->standing && a->view == b->view
         && a->dimension == b->dimension && a->param == b->param;
}

/* Whether the order of @mark and some mark of the group can be seen. */
static gboolean
overlaps_group (const FpDrawing *drawing, const FpSvgGroup *group, const FpMark *mark, const FpBox *box)
{
  const FpPoint *points = fp_drawing_points (drawing);
  guint n;
  const FpMark *all = fp_drawing_marks (drawing, &n);

  if (!fp_box_overlaps (box, &group->box))
    return FALSE;
  for (guint i = 0; i < group->marks->len; i++)
    {
      const FpMark *other = &all[g_array_index (group->marks, guint, i)];
      const FpBox other_box = fp_mark_box (other, points);
      if ((covers (mark) || covers (other)) && fp_box_overlaps (box, &other_box))
        return TRUE;
    }
  return FALSE;
}

/* The group that @mark may join, looking back no farther than @first, where its view begins. */
static FpSvgGroup *
group_to_join (const FpDrawing *drawing, GArray *groups, guint first, const FpMark *mark, const FpBox *box)
{
  for (guint i = groups->len; i-- > first;)
    {
      FpSvgGroup *group = &g_array_index (groups, FpSvgGroup, i);
      if (same_owner (&group->of, mark))
        return group;
      if (overlaps_group (drawing, group, mark, box))
        return NULL;
    }
  return NULL;
}

GArray *
fp_svg_groups_new (const FpDrawing *drawing)
{
  GArray *groups = g_array_new (FALSE, FALSE, sizeof (FpSvgGroup));
  guint n, first = 0;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  g_array_set_clear_func (groups, clear_group);
  for (guint i = 0; i < n; i++)
    {
      const FpBox box = fp_mark_box (&mark[i], fp_drawing_points (drawing));
      FpSvgGroup *group;
      if (i > 0 && mark[i].view != mark[i - 1].view)
        first = groups->len;
      group = group_to_join (drawing, groups, first, &mark[i], &box);
      if (group == NULL)
        {
          const FpSvgGroup fresh = { mark[i], g_array_new (FALSE, FALSE, sizeof (guint)), FP_BOX_EMPTY };
          g_array_append_val (groups, fresh);
          group = &g_array_index (groups, FpSvgGroup, groups->len - 1);
        }
      g_array_append_val (group->marks, i);
      fp_box_add_box (&group->box, &box);
    }
  return groups;
}
