/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "kind-picture.h"

#include "kind-scenes.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#define PEW_VIEW  FP_N_VIEWS
#define PEW_UNITS 1000.0 /* the width of what is seen                            */
/* Of a coordinate: the last digit may fall on either side where processors round differently. */
#define ROUNDING  1.0

static const char *const view_id[KIND_PICTURE_VIEWS] = { "plan", "elevation", "section", "pew" };

static const char *const pen_class[FP_N_PENS] = {
  [FP_PEN_CUT] = "cut", [FP_PEN_OUTLINE] = "outline", [FP_PEN_EDGE] = "edge", [FP_PEN_HIDDEN] = "hidden",
  [FP_PEN_AXIS] = "axis", [FP_PEN_HATCH] = "hatch", [FP_PEN_DIMENSION] = "dimension", [FP_PEN_LETTER] = "letter",
  [FP_PEN_FRAME] = "frame", [FP_PEN_GUIDE] = "guide", [FP_PEN_SIGHT] = "sight", [FP_PEN_BLIND] = "blind",
};

/* Widths in the letter height of the group, which is a dot of the picture whatever its scale. */
static const char style[] =
  "path{fill:none;stroke:#000;stroke-width:.7em}.cut{stroke-width:2em}.outline{stroke-width:1.3em}\n"
  ".hidden{stroke:#777}.cut-face{fill:#ccc;fill-rule:evenodd;stroke:none}\n"
  ".light{fill:#f4f4f4}.middle{fill:#d8d8d8}.dark{fill:#b0b0b0}.light,.middle,.dark{stroke:none}\n";

const char *
kind_picture_view (guint view)
{
  return view_id[view];
}

/* --- writing --------------------------------------------------------------------- */

typedef struct
{
  GString    *out;
  const char *class_name; /* of the path that is open */
  FpBox       box;        /* of all that was written  */
} Picture;

static void
end_path (Picture *self)
{
  if (self->class_name != NULL)
    g_string_append (self->out, "\"/>\n");
  self->class_name = NULL;
}

static void
begin_path (Picture *self, const char *class_name)
{
  if (g_strcmp0 (self->class_name, class_name) == 0)
    return;
  end_path (self);
  g_string_append_printf (self->out, "<path class=\"%s\" d=\"\n", class_name);
  self->class_name = class_name;
}

/* A line of the file for each run, so that runs are compared one by one. */
static void
add_run (Picture *self, const char *class_name, const FpPoint *pt, guint n, gboolean closed)
{
  begin_path (self, class_name);
  for (guint i = 0; i < n; i++)
    {
      g_string_append_printf (self->out, "%s%ld %ld", i == 0 ? "M" : i == 1 ? "L" : " ", lround (pt[i].x), lround (pt[i].y));
      fp_box_add_point (&self->box, pt[i]);
    }
  g_string_append (self->out, closed ? "Z\n" : "\n");
}

/* An opening is what its wall has not. */
static guint
find_it (const FpScene *scene)
{
  const FpPlaced *placed = fp_scene_placed (scene, NULL);
  const int it = fp_scene_find (scene, KIND_SCENE_ID);

  g_assert_cmpint (it, >=, 0);
  return (guint) (fp_item_kind (placed[it].item)->role == FP_ROLE_OPENING ? placed[it].support : it);
}

static void
add_view (Picture *self, const FpScene *scene, FpViewId view)
{
  g_autoptr (FpProjection) projection = fp_projection_new (scene, view);
  const guint it = find_it (scene);
  guint n;
  const FpProjectedCut *cut = fp_projection_cuts (projection, &n);
  const FpProjectedLine *line;

  for (guint i = 0; i < n; i++)
    if (cut[i].owner == it)
      add_run (self, "cut-face", cut[i].outline, cut[i].n, TRUE);
  line = fp_projection_lines (projection, &n);
  for (guint i = 0; i < n; i++)
    if (line[i].owner == it)
      add_run (self, pen_class[line[i].pen], (FpPoint[]) { line[i].a, line[i].b }, 2, FALSE);
}

static gboolean
is_of_it (const FpPeople *people, guint owner)
{
  const guint it = find_it (fp_people_scene (people));

  return it == (owner < FP_SIGHT_PERSON ? owner : fp_people_places (people, NULL)[owner - FP_SIGHT_PERSON].owner);
}

/* Its tone is part of what a face looks like; an ellipse has its line about it. */
static void
add_face (Picture *self, const FpPewFace *face, const FpPoint *points, double unit)
{
  g_autofree FpPoint *pt = NULL;
  const char *class_name = g_intern_string (face->tone > 0.8 ? "light" : face->tone > 0.65 ? "middle" : "dark");
  const guint n = face->type == FP_PEW_POLYGON ? face->n : 24;

  pt = g_new (FpPoint, n);
  for (guint i = 0; i < n; i++)
    {
      const double t = 2 * G_PI * i / n;
      const FpPoint p = face->type == FP_PEW_POLYGON
                          ? points[face->first + i]
                          : (FpPoint) { face->at.x + face->a.x * cos (t) + face->b.x * sin (t),
                                        face->at.y + face->a.y * cos (t) + face->b.y * sin (t) };
      pt[i] = (FpPoint) { p.x * unit, p.y * unit };
    }
  add_run (self, class_name, pt, n, TRUE);
  if (face->type == FP_PEW_ELLIPSE)
    add_run (self, "edge", pt, n, TRUE);
}

/* Joints are not seen: there the surface goes on. */
static void
add_face_lines (Picture *self, const FpPewFace *face, const FpPewLine *line, double unit)
{
  for (guint i = face->first_line; i < face->first_line + face->n_lines; i++)
    if (line[i].type != FP_PEW_JOINT)
      add_run (self, line[i].type == FP_PEW_OUTLINE ? "outline" : "edge",
               (FpPoint[]) { { line[i].a.x * unit, line[i].a.y * unit }, { line[i].b.x * unit, line[i].b.y * unit } }, 2, FALSE);
}

static void
add_pew (Picture *self, const FpScene *scene)
{
  g_autoptr (FpPeople) people = fp_people_new (scene);
  const FpPewSpec spec = { .place = kind_scene_eye (people), .moment = FP_MOMENT_BEFORE, .focus = FP_FOCUS_MENSA };
  g_autoptr (FpPewView) seen = fp_pew_view_new (people, &spec);
  const FpBox box = fp_pew_view_box (seen);
  const double unit = PEW_UNITS / (box.x1 - box.x0);
  guint n;
  const FpPewFace *face = fp_pew_view_faces (seen, &n);

  for (guint i = 0; i < n; i++)
    if (is_of_it (people, face[i].owner))
      {
        add_face (self, &face[i], fp_pew_view_points (seen), unit);
        add_face_lines (self, &face[i], fp_pew_view_lines (seen), unit);
      }
}

/* Each view turned up, in a square of its own: the plan below the elevation, as on the board. */
static void
append_group (GString *out, guint view, const Picture *picture)
{
  const double size = 300, wide = MAX (picture->box.x1 - picture->box.x0, picture->box.y1 - picture->box.y0);
  const double scale = size / MAX (wide, 1);
  const FpPoint corner = { view == FP_VIEW_SECTION || view == PEW_VIEW ? 340 : 20,
                           view == FP_VIEW_PLAN || view == PEW_VIEW ? 640 : 320 };

  g_string_append_printf (out, "<g id=\"%s\" transform=\"translate(%.1f %.1f) scale(%.4f %.4f)\" font-size=\"%.3f\">\n%s</g>\n",
                          view_id[view], corner.x - picture->box.x0 * scale, corner.y + picture->box.y0 * scale, scale, -scale,
                          1 / scale, picture->out->str);
}

char *
kind_picture_new (const FpKind *kind)
{
  g_autoptr (FpScene) scene = kind_scene_new (kind);
  GString *out = g_string_new ("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"660\" height=\"660\">\n");

  g_string_append_printf (out, "<title>%s</title>\n<style>\n%s</style>\n", kind->label, style);
  for (guint view = 0; view < KIND_PICTURE_VIEWS; view++)
    {
      Picture picture = { .out = g_string_new (NULL), .box = FP_BOX_EMPTY };

      if (view == PEW_VIEW)
        add_pew (&picture, scene);
      else
        add_view (&picture, scene, (FpViewId) view);
      end_path (&picture);
      if (!fp_box_is_empty (&picture.box))
        append_group (out, view, &picture);
      g_string_free (picture.out, TRUE);
    }
  g_string_append (out, "</svg>\n");
  return g_string_free (out, FALSE);
}

/* --- comparing ---------------------------------------------------------------------- */

typedef struct
{
  const char *class_name; /* interned; with the number of corners and the last letter, what has to be the same */
  GArray     *number;     /* double */
  char        last;
} Run;

static void
clear_run (gpointer data)
{
  g_array_unref (((Run *) data)->number);
}

static void
read_run (const char *line, const char *class_name, GArray *runs)
{
  Run run = { class_name, g_array_new (FALSE, FALSE, sizeof (double)), line[strlen (line) - 1] == 'Z' ? 'Z' : ' ' };

  for (const char *c = line; *c != '\0';)
    {
      char *after;
      const double v = g_ascii_strtod (c, &after);

      if (after == c)
        c++;
      else
        {
          g_array_append_val (run.number, v);
          c = after;
        }
    }
  g_array_append_val (runs, run);
}

/* Of each view, in the order of the file. */
static void
read_picture (const char *text, GArray *runs[KIND_PICTURE_VIEWS])
{
  g_auto (GStrv) line = g_strsplit (text, "\n", -1);
  GArray *into = NULL;
  const char *class_name = NULL;

  for (guint i = 0; line[i] != NULL; i++)
    {
      if (g_str_has_prefix (line[i], "<g id=\""))
        {
          for (guint view = 0; view < KIND_PICTURE_VIEWS; view++)
            if (g_str_has_prefix (line[i] + strlen ("<g id=\""), view_id[view]))
              into = runs[view];
        }
      else if (g_str_has_prefix (line[i], "<path "))
        class_name = g_intern_string (line[i]);
      else if (line[i][0] == 'M' && into != NULL)
        read_run (line[i], class_name, into);
    }
}

static gboolean
runs_agree (const Run *a, const Run *b)
{
  if (a->class_name != b->class_name || a->last != b->last || a->number->len != b->number->len)
    return FALSE;
  for (guint i = 0; i < a->number->len; i++)
    if (fabs (g_array_index (a->number, double, i) - g_array_index (b->number, double, i)) > ROUNDING)
      return FALSE;
  return TRUE;
}

/* In whatever order: what is as far away may be told in another. */
static gboolean
views_agree (GArray *was, GArray *is)
{
  if (was->len != is->len)
    return FALSE;
  for (guint i = 0; i < is->len; i++)
    {
      guint j = 0;

      while (j < was->len && !runs_agree (&g_array_index (is, Run, i), &g_array_index (was, Run, j)))
        j++;
      if (j == was->len)
        return FALSE;
      g_array_remove_index (was, j);
    }
  return TRUE;
}

guint
kind_picture_differences (const char *was, const char *is)
{
  GArray *runs[2][KIND_PICTURE_VIEWS];
  guint differ = 0;

  for (guint view = 0; view < KIND_PICTURE_VIEWS; view++)
    for (guint i = 0; i < 2; i++)
      {
        runs[i][view] = g_array_new (FALSE, FALSE, sizeof (Run));
        g_array_set_clear_func (runs[i][view], clear_run);
      }
  read_picture (was, runs[0]);
  read_picture (is, runs[1]);
  for (guint view = 0; view < KIND_PICTURE_VIEWS; view++)
    {
      if (!views_agree (runs[0][view], runs[1][view]))
        differ |= 1u << view;
      g_array_unref (runs[0][view]);
      g_array_unref (runs[1][view]);
    }
  return differ;
}
