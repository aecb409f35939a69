/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "taking.h"

#include <math.h>
#include <string.h>

void
taking_brief (FpProject **project, FpBooks books, FpFacing facing, guint celebrations)
{
  FpBrief brief = *fp_project_brief (*project);
  FpProject *next;

  brief.books = books;
  brief.facing = facing;
  brief.celebrations = celebrations;
  next = fp_project_with_brief (*project, &brief, NULL);
  g_assert_nonnull (next);
  fp_project_unref (*project);
  *project = next;
}

void
taking_units (FpProject **project, FpUnits units)
{
  FpBrief brief = *fp_project_brief (*project);
  FpProject *next;

  brief.units = units;
  next = fp_project_with_brief (*project, &brief, NULL);
  g_assert_nonnull (next);
  fp_project_unref (*project);
  *project = next;
}

void
taking_works (FpProject **project, const FpWorks *works)
{
  FpProject *next = fp_project_with_works (*project, works, NULL);

  g_assert_nonnull (next);
  fp_project_unref (*project);
  *project = next;
}

void
taking_seats (FpProject **project, guint seats)
{
  FpBrief brief = *fp_project_brief (*project);
  FpProject *next;

  brief.seats = seats;
  next = fp_project_with_brief (*project, &brief, NULL);
  g_assert_nonnull (next);
  fp_project_unref (*project);
  *project = next;
}

void
taking_add (FpProject **project, const char *kind, const char *id, const char *on, double x, double y,
            const char *param, double value)
{
  const ChurchThing thing = { kind, id, on, { x, y, 0 }, NULL, 0, { { param, value }, { NULL, 0 } } };

  church_add (project, &thing);
}

void
taking_survey (FpProject **project, const char *kind, const char *id, double x, double y, const char *param,
               double value)
{
  const ChurchThing thing = { kind, id, NULL, { x, y, 0 }, NULL, 0, { { param, value }, { NULL, 0 } } };

  church_survey (project, &thing);
}

void
taking_wall (FpProject **project, const char *id, double x0, double y0, double x1, double y1)
{
  const FpPoint corner[] = { { x0, y0 }, { x1, y1 } };
  const ChurchThing thing = { "wall", id, NULL, { 0, 0, 0 }, corner, 2, { { NULL, 0 } } };

  church_survey (project, &thing);
}

/* The law of one country, so that one printed riser is asked for and not two. */
static void
take_law (FpProject **project)
{
  const FpNorms norms = { .jurisdiction = FP_JURISDICTION_US };
  FpProject *next = fp_project_with_norms (*project, &norms, NULL);

  fp_project_unref (*project);
  *project = next;
}

FpProject *
taking_church (FpBooks books, FpFacing facing, guint celebrations)
{
  FpProject *project = church_new (facing);

  taking_brief (&project, books, facing, celebrations);
  take_law (&project);
  church_floor (&project, "nave", (FpBox) { -6000, -20000, 6000, 0 }, 0, 0, 0, 0);
  church_floor (&project, "sanctuary", (FpBox) { -6000, 0, 6000, 10000 }, 300, 1, 0, 0);
  taking_survey (&project, "steps", "way-up", 0, -300, NULL, 0);
  taking_add (&project, "footpace", "steps", NULL, 0, 8000, NULL, 0);
  taking_add (&project, "altar", "altar", "steps", 0, 8000, NULL, 0);
  return project;
}

void
taking_altar_group (FpProject **project, double count)
{
  taking_add (project, "gradine", "gradine", "altar", 0, 0, NULL, 0);
  taking_add (project, "candlesticks", "sticks", "gradine", 0, 0, "count", count);
  taking_add (project, "crucifix", "cross", "gradine", 0, 0, NULL, 0);
}

GArray *
taking_values (const FpProject *project, const char *id)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  const FpMeasure *measure = fp_measure_find (id);
  g_autoptr (FpSight) sight = NULL;
  FpMeasuring of = { scene, people, fp_levels (people), NULL };

  if (!measure)
    g_error ("no measure \"%s\"", id);
  if (measure->needs_sight)
    of.sight = sight = fp_sight_new (people, NULL);
  return fp_measure_take (measure, &of);
}

double
taking_value (const FpProject *project, const char *measure)
{
  g_autoptr (GArray) values = taking_values (project, measure);

  g_assert_cmpuint (values->len, ==, 1);
  return g_array_index (values, FpMeasured, 0).value;
}

guint
taking_count (const FpProject *project, const char *measure)
{
  g_autoptr (GArray) values = taking_values (project, measure);
  guint n = 0;

  for (guint i = 0; i < values->len; i++)
    if (!isnan (g_array_index (values, FpMeasured, i).value))
      n++;
  return n;
}

FpFindings *
taking_findings (const FpProject *project, gboolean sight)
{
  g_autoptr (FpScene) scene = fp_scene_new (project, 0);
  g_autoptr (FpPeople) people = fp_people_new (scene);
  g_autoptr (GPtrArray) books = fp_rulebooks_built_in ();
  FpMeasuring of = { scene, people, fp_levels (people), NULL };

  return sight ? fp_findings_of (project, 0, NULL, NULL) : fp_findings_new (&of, books);
}

const FpFinding *
taking_finding (FpFindings *findings, const char *rule)
{
  guint n;
  const FpFinding *finding = fp_findings_get (findings, &n);

  for (guint i = 0; i < n; i++)
    {
      g_autofree char *name = g_strdup_printf ("%s:%s", fp_rulebook_id (finding[i].book), finding[i].rule->id);

      if (strcmp (name, rule) == 0)
        return &finding[i];
    }
  g_error ("no rule \"%s\"", rule);
}

FpFound
taking_found (const FpProject *project, const char *rule)
{
  g_autoptr (FpFindings) findings = taking_findings (project, FALSE);

  return taking_finding (findings, rule)->found;
}
