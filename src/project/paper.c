/* SPDX-License-Identifier: GPL-3.0-or-later */
/* paper.c - sizes of paper
 *
 * ISO 216 and ISO 5457, trimmed (as tasstudent.com and relderton.co.uk print
 * them); Letter and Tabloid 8 1/2 x 11 and 11 x 17 in (ANSI/ASME Y14.1 sizes A and B, from memory).
 */
#include "footpace/page.h"

static const struct { const char *id; double width, height; } papers[FP_N_PAPERS] = {
  [FP_PAPER_A4] = { "a4", 210, 297 },
  [FP_PAPER_A3] = { "a3", 297, 420 },
  [FP_PAPER_A2] = { "a2", 420, 594 },
  [FP_PAPER_A1] = { "a1", 594, 841 },
  [FP_PAPER_LETTER] = { "letter", 8.5 * FP_MM_PER_INCH, 11 * FP_MM_PER_INCH },
  [FP_PAPER_TABLOID] = { "tabloid", 11 * FP_MM_PER_INCH, 17 * FP_MM_PER_INCH },
};

const char *
fp_paper_id (FpPaper paper)
{
  return papers[MIN ((guint) paper, FP_N_PAPERS - 1)].id;
}

gboolean
fp_paper_find (const char *id, FpPaper *paper)
{
  for (guint i = 0; i < FP_N_PAPERS; i++)
    if (g_ascii_strcasecmp (id, papers[i].id) == 0)
      {
        *paper = (FpPaper) i;
        return TRUE;
      }
  return FALSE;
}

void
fp_paper_size (FpPaper paper, gboolean landscape, double *width, double *height)
{
  const guint i = MIN ((guint) paper, FP_N_PAPERS - 1);

  *width = landscape ? papers[i].height : papers[i].width;
  *height = landscape ? papers[i].width : papers[i].height;
}
