/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "footpace/furnish.h"

#include "footpace/setting-out.h"

#include <math.h>
#include <string.h>

/* mm: what touches, or lies in a fold of cloth, is in nobody's way. */
#define TOUCH 6.0

#define OLDER (FP_CELEBRATION_LOW | FP_CELEBRATION_SUNG | FP_CELEBRATION_SOLEMN | FP_CELEBRATION_PONTIFICAL \
               | FP_CELEBRATION_REQUIEM | FP_CELEBRATION_PASSIONTIDE)
#define OLD_ALL (OLDER | FP_CELEBRATION_BENEDICTION | FP_CELEBRATION_GOOD_FRIDAY)
#define NEWER (FP_CELEBRATION_WEEKDAY | FP_CELEBRATION_SUNDAY | FP_CELEBRATION_BISHOP)
#define WITH_BENCH (FP_CELEBRATION_SUNG | FP_CELEBRATION_SOLEMN | FP_CELEBRATION_PONTIFICAL | FP_CELEBRATION_REQUIEM \
                    | FP_CELEBRATION_PASSIONTIDE | FP_CELEBRATION_GOOD_FRIDAY)

/* In the order in which they are set out.  What each form needs: Fortescue, "The Ceremonies of the Roman Rite Described"
 * (1918), chapter I; General Instruction of the Roman Missal (3rd typical edition), nos. 117-118, 296-318 (both from
 * memory).  A lamp burns where the Blessed Sacrament is kept: GIRM 316; A. J. Schulte, "Altar-Lamp", Catholic Encyclopedia I
 * (1907). */
static const struct
{
  const char *kind;
  guint       celebrations;
  const char *with; /* NULL, or what there must be for it */
} needed[] = {
  { "footpace", OLD_ALL | NEWER, NULL },
  { "altar", OLD_ALL | NEWER, NULL },
  { "gradine", OLD_ALL, NULL },
  { "tabernacle", OLD_ALL, NULL },
  { "sanctuary-lamp", OLD_ALL | NEWER, "tabernacle" },
  { "crucifix", OLD_ALL | NEWER, NULL },
  { "candlesticks", OLD_ALL | NEWER, NULL },
  { "altar-cloths", OLD_ALL | NEWER, NULL },
  { "altar-cards", OLDER, NULL },
  { "missal-stand", OLDER | NEWER, NULL },
  { "rail", OLD_ALL, NULL },
  { "credence", OLD_ALL | NEWER, NULL },
  { "sedilia", WITH_BENCH, NULL },
  { "ambo", NEWER, NULL },
  { "chair", NEWER, NULL },
};

static void
furnished_clear (gpointer data)
{
  FpFurnished *f = data;

  g_free (f->id);
  g_free (f->why);
}

GArray *
fp_furnished_new (void)
{
  GArray *told = g_array_new (FALSE, FALSE, sizeof (FpFurnished));

  g_array_set_clear_func (told, furnished_clear);
  return told;
}

/* --- whether it is there already ---------------------------------------------- */

static gboolean
has_kind (const FpScene *scene, const FpKind *kind)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    if (!placed[i].ghost && fp_item_kind (placed[i].item) == kind)
      return TRUE;
  return FALSE;
}

/* --- whether it stands well ------------------------------------------------------ */

static gboolean
stands_upon (const FpPlaced *placed, int which, int below)
{
  for (int i = which; i >= 0; i = placed[i].support)
    if (i == below)
      return TRUE;
  return FALSE;
}

/* Floors, and what lies in them, are walked upon. */
static gboolean
may_be_in_the_way (const FpPlaced *placed)
{
  switch (fp_item_kind (placed->item)->role)
    {
    case FP_ROLE_FLOOR:
    case FP_ROLE_STEPS:
    case FP_ROLE_GALLERY:
    case FP_ROLE_STANDING_ROOM:
    case FP_ROLE_OPENING:
      return FALSE;
    default:
      return !placed->ghost;
    }
}

static gboolean
boxes_meet (const FpBox3 *a, const FpBox3 *b)
{
  return a->lo.x + TOUCH < b->hi.x && b->lo.x + TOUCH < a->hi.x && a->lo.y + TOUCH < b->hi.y && b->lo.y + TOUCH < a->hi.y
         && a->lo.z + TOUCH < b->hi.z && b->lo.z + TOUCH < a->hi.z;
}

static FpBox
smaller (const FpBox3 *box)
{
  return (FpBox) { box->lo.x + TOUCH, box->lo.y + TOUCH, box->hi.x - TOUCH, box->hi.y - TOUCH };
}

/* A wall may run aslant, or round an apse: its own outline tells, not the box about it. */
static gboolean
is_within (const FpSolid *solid, const FpBox3 *other)
{
  const FpBox box = smaller (other);
  const FpPoint corner[4] = { { box.x0, box.y0 }, { box.x1, box.y0 }, { box.x1, box.y1 }, { box.x0, box.y1 } };

  return solid->shape != FP_SOLID_PRISM
         || fp_outlines_common_area (solid->outline, solid->n_outline, corner, G_N_ELEMENTS (corner)) > 0;
}

static gboolean
solids_meet (const FpSolid *a, const FpSolid *b)
{
  const FpBox3 box_a = fp_solid_box (a), box_b = fp_solid_box (b);

  return boxes_meet (&box_a, &box_b) && is_within (a, &box_b) && is_within (b, &box_a);
}

static gboolean
things_meet (const FpScene *scene, const FpPlaced *a, const FpPlaced *b)
{
  const FpSolid *s = fp_scene_solids (scene, NULL);

  for (guint i = 0; i < a->n_solids; i++)
    for (guint k = 0; k < b->n_solids; k++)
      if (solids_meet (&s[a->first_solid + i], &s[b->first_solid + k]))
        return TRUE;
  return FALSE;
}

/* The first in whose way it stands; -1. */
static int
in_the_way_of (const FpScene *scene, int which)
{
  guint n;
  const FpPlaced *placed = fp_scene_placed (scene, &n);

  for (guint i = 0; i < n; i++)
    if ((int) i != which && may_be_in_the_way (&placed[i]) && !stands_upon (placed, which, (int) i)
        && !stands_upon (placed, (int) i, which) && things_meet (scene, &placed[which], &placed[i]))
      return (int) i;
  return -1;
}

/* --- one after the other ------------------------------------------------------------ */

/* The next project; @project where it is left out, with why. */
static FpProject *
add_one (const FpProject *project, guint alternative, const FpKind *kind, FpFurnished *told)
{
  g_autoptr (FpScene) before = fp_scene_new (project, alternative), after = NULL;
  g_autoptr (FpProject) next = NULL;
  g_autoptr (GError) error = NULL;
  int which, other;

  next = fp_set_out_new (before, kind, &told->id, &error);
  if (next == NULL)
    {
      told->why = g_strdup (error->message);
      return fp_project_ref (project);
    }
  after = fp_scene_new (next, alternative);
  which = fp_scene_find (after, told->id);
  other = which >= 0 ? in_the_way_of (after, which) : -1;
  if (other < 0)
    return g_steal_pointer (&next);
  told->why = g_strdup_printf ("it would stand in “%s”", fp_item_name (fp_scene_placed (after, NULL)[other].item));
  g_clear_pointer (&told->id, g_free);
  return fp_project_ref (project);
}

static gboolean
is_needed (const FpProject *project, guint alternative, guint i, FpCelebration one)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, alternative);

  return (needed[i].celebrations & (guint) one) != 0 && !has_kind (scene, fp_kind_find (needed[i].kind))
         && (needed[i].with == NULL || has_kind (scene, fp_kind_find (needed[i].with)));
}

FpProject *
fp_furnish (const FpScene *scene, FpCelebration one, GArray *told, GError **error)
{
  const guint alternative = fp_scene_alternative (scene);
  g_autoptr (FpProject) project = fp_project_ref (fp_scene_project (scene));

  for (guint i = 0; i < G_N_ELEMENTS (needed); i++)
    {
      FpFurnished f = { .kind = fp_kind_find (needed[i].kind) };
      FpProject *next;

      if (!is_needed (project, alternative, i, one))
        continue;
      next = add_one (project, alternative, f.kind, &f);
      fp_project_unref (project);
      project = next;
      if (f.id == NULL && f.kind->role == FP_ROLE_ALTAR)
        {
          g_set_error (error, FP_ERROR, FP_ERROR_RANGE, "no altar can be set out here: %s", f.why);
          furnished_clear (&f);
          return NULL;
        }
      g_array_append_val (told, f);
    }
  return g_steal_pointer (&project);
}

/* --- told ---------------------------------------------------------------------------- */

char *
fp_furnished_text (const GArray *told)
{
  g_autoptr (GString) added = g_string_new (NULL), left_out = g_string_new (NULL);

  for (guint i = 0; i < told->len; i++)
    {
      const FpFurnished *f = &g_array_index (told, FpFurnished, i);

      if (f->id != NULL)
        g_string_append_printf (added, "%s%s", added->len > 0 ? ", " : "", f->kind->label);
      else
        g_string_append_printf (left_out, "%s%s (%s)", left_out->len > 0 ? ", " : "", f->kind->label, f->why);
    }
  if (told->len == 0)
    return g_strdup ("Nothing was missing.");
  return g_strdup_printf ("%s%s%s%s%s", added->len > 0 ? "Added: " : "Nothing was added", added->str,
                          left_out->len > 0 ? ". There is no room for: " : "", left_out->str, ".");
}
