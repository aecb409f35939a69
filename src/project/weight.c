/* SPDX-License-Identifier: GPL-3.0-or-later */
/* weight.c - how much there is to draw and to look from
 *
 * Two thousand things may each be a rail of a thousand posts.  What can be
 * drawn and checked while someone waits is bounded by faces and by people.
 */
#include "project-private.h"

/* A round body is drawn and cut as if it had about so many. */
#define FACES_OF_ROUND 12

static guint
faces_of (const FpSolid *solid)
{
  return solid->shape == FP_SOLID_PRISM ? solid->n_outline + 2 : FACES_OF_ROUND;
}

/* An opening has no body: it cuts its wall into more pieces.  Over an arch there are at most so many (see wall.c). */
static guint
faces_of_opening (const FpItem *item)
{
  const guint pieces = fp_item_param (item, "arch") == 1 ? 26 + (guint) (fp_item_param (item, "width") / 250) : 3;

  return pieces * 6;
}

FpWeight
fp_weight_of (const FpItem *item)
{
  const FpKind *kind = fp_item_kind (item);
  FpForm form = { .param = fp_item_params (item), .core = FP_CORE_COMMON };
  g_autoptr (FpSolids) solids = fp_solids_new ();
  g_autoptr (GArray) seats = g_array_new (FALSE, FALSE, sizeof (FpSeat));
  FpWeight weight = { 0, 0 };

  form.corner = fp_item_corners (item, &form.n_corners);
  kind->solids (&form, solids);
  if (kind->seats != NULL)
    kind->seats (&form, seats);
  for (guint i = 0; i < fp_solids_count (solids); i++)
    weight.faces += faces_of (fp_solids_get (solids, i));
  if (kind->role == FP_ROLE_OPENING)
    weight.faces += faces_of_opening (item);
  weight.people = seats->len;
  return weight;
}

gboolean
fp_weight_add (FpWeight *sum, const FpItemList *list, GError **error)
{
  for (guint i = 0; i < list->n; i++)
    {
      const FpWeight own = fp_item_weight (list->item[i]);
      sum->faces += own.faces;
      sum->people += own.people;
      if (sum->people <= FP_PEOPLE_MAX && sum->faces <= FP_FACES_MAX)
        continue;
      if (sum->people > FP_PEOPLE_MAX)
        g_set_error (error, FP_ERROR, FP_ERROR_LIMIT, "%s: with it there are places for %u people, at most %d are taken",
                     fp_item_id (list->item[i]), sum->people, FP_PEOPLE_MAX);
      else
        g_set_error (error, FP_ERROR, FP_ERROR_LIMIT, "%s: with it all that stands there has %u faces to draw, at most "
                     "%d are taken; simplify what is made of many pieces", fp_item_id (list->item[i]), sum->faces,
                     FP_FACES_MAX);
      return FALSE;
    }
  return TRUE;
}
