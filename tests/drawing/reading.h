/* SPDX-License-Identifier: GPL-3.0-or-later */
/* reading.h - what is lettered on a drawing */
#pragma once

#include "footpace/drawing.h"

#include <string.h>

static inline gboolean
reading_has_text (const FpDrawing *drawing, const char *text)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_TEXT && g_str_equal (mark[i].text, text))
      return TRUE;
  return FALSE;
}

static inline gboolean
reading_has_part (const FpDrawing *drawing, const char *part)
{
  guint n;
  const FpMark *mark = fp_drawing_marks (drawing, &n);

  for (guint i = 0; i < n; i++)
    if (mark[i].type == FP_MARK_TEXT && strstr (mark[i].text, part) != NULL)
      return TRUE;
  return FALSE;
}
