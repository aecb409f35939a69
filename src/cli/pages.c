/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pages.h"

#include "command.h"
#include "footpace/error.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#define PNG_DOTS_PER_INCH 200.0

static const char *const forms[] = { [FP_PAGES_PDF] = "pdf", [FP_PAGES_SVG] = "svg", [FP_PAGES_PNG] = "png" };

gboolean
fp_pages_form_find (const char *id, FpPagesForm *form)
{
  for (guint i = 0; i < FP_N_PAGES_FORMS; i++)
    if (g_ascii_strcasecmp (forms[i], id) == 0)
      {
        *form = (FpPagesForm) i;
        return TRUE;
      }
  return FALSE;
}

gboolean
fp_pages_form_of_path (const char *path, FpPagesForm *form)
{
  g_autofree char *name = g_path_get_basename (path);
  const char *dot = strrchr (name, '.');

  return dot != NULL && dot > name && fp_pages_form_find (dot + 1, form);
}

static gboolean
write_one (const FpDrawing *page, const FpScene *scene, FpPagesForm form, const char *path, GError **error)
{
  if (form == FP_PAGES_SVG)
    return fp_drawing_write_svg (page, scene, fp_project_brief (fp_scene_project (scene))->title, path, error);
  return fp_drawing_write_png (page, PNG_DOTS_PER_INCH, path, error);
}

static char *
page_path (const char *path, guint page)
{
  const char *dot = strrchr (path, '.'), *slash = strrchr (path, G_DIR_SEPARATOR);

  if (page == 0)
    return g_strdup (path);
  if (dot == NULL || (slash != NULL && dot < slash))
    dot = path + strlen (path);
  return g_strdup_printf ("%.*s-%u%s", (int) (dot - path), path, page + 1, dot);
}

static gboolean
write_files (const GPtrArray *pages, const FpScene *scene, FpPagesForm form, const char *path, GError **error)
{
  const FpBrief *brief = fp_project_brief (fp_scene_project (scene));

  if (form == FP_PAGES_PDF)
    return fp_drawing_write_pdf ((FpDrawing *const *) pages->pdata, pages->len, brief->title, brief->author, path,
                                 error);
  for (guint i = 0; i < pages->len; i++)
    {
      g_autofree char *one = page_path (path, i);

      if (!write_one (g_ptr_array_index (pages, i), scene, form, one, error))
        return FALSE;
    }
  return TRUE;
}

/* --- the project that is drawn ---------------------------------------------- */

static gboolean
is_same_file (const char *a, const char *b)
{
  GStatBuf one, other;

  return g_stat (a, &one) == 0 && g_stat (b, &other) == 0 && one.st_dev == other.st_dev && one.st_ino == other.st_ino;
}

/* A slip in a script must not put a picture in the place of the work. */
static gboolean
spares_project (const GPtrArray *pages, FpPagesForm form, const char *project, const char *path, GError **error)
{
  const guint n = form == FP_PAGES_PDF ? 1 : pages->len;

  for (guint i = 0; i < n; i++)
    {
      g_autofree char *one = page_path (path, i), *shown = NULL;

      if (!is_same_file (one, project))
        continue;
      shown = g_filename_display_name (one);
      g_set_error (error, FP_ERROR, FP_ERROR_WRITE, "“%s” is the project that is drawn, and is left as it is: name "
                   "another file", shown);
      return FALSE;
    }
  return TRUE;
}

/* --- standard output ------------------------------------------------------- */

static gboolean
pour (const char *data, gsize length, GError **error)
{
  if (fwrite (data, 1, length, stdout) == length && fflush (stdout) == 0)
    return TRUE;
  g_set_error (error, FP_ERROR, FP_ERROR_WRITE, "standard output could not be written: %s", g_strerror (errno));
  return FALSE;
}

/* By way of a file, which is gone again before a reader who stops early can end us. */
static gboolean
write_to_memory (const GPtrArray *pages, const FpScene *scene, FpPagesForm form, char **data, gsize *length,
                 GError **error)
{
  g_autofree char *folder = g_dir_make_tmp ("footpace-XXXXXX", error), *path = NULL;
  gboolean ok;

  if (folder == NULL)
    return FALSE;
  path = g_strdup_printf ("%s/page.%s", folder, forms[form]);
  ok = write_files (pages, scene, form, path, error) && g_file_get_contents (path, data, length, error);
  g_unlink (path);
  g_rmdir (folder);
  return ok;
}

/* Whole first, and poured out then: half a drawing helps nobody. */
static gboolean
write_out (const GPtrArray *pages, const FpScene *scene, FpPagesForm form, GError **error)
{
  g_autofree char *data = NULL;
  gsize length;

  if (pages->len > 1 && form != FP_PAGES_PDF)
    {
      g_set_error (error, FP_ERROR, FP_ERROR_INVALID, "%u pages do not fit into one %s: write a PDF, or name a file",
                   pages->len, forms[form]);
      return FALSE;
    }
  if (form != FP_PAGES_SVG && isatty (STDOUT_FILENO))
    {
      g_set_error (error, FP_ERROR, FP_ERROR_INVALID, "a %s is not written to a terminal: name a file", forms[form]);
      return FALSE;
    }
  return write_to_memory (pages, scene, form, &data, &length, error) && pour (data, length, error);
}

gboolean
fp_pages_write (const GPtrArray *pages, const FpScene *scene, FpPagesForm form, const char *project, const char *path,
                GError **error)
{
  g_autofree char *folder = g_path_get_dirname (path);

  if (g_str_equal (path, "-"))
    return write_out (pages, scene, form, error);
  if (!spares_project (pages, form, project, path, error))
    return FALSE;
  if (g_file_test (folder, G_FILE_TEST_IS_DIR))
    return write_files (pages, scene, form, path, error);
  g_set_error (error, FP_ERROR, FP_ERROR_WRITE, "“%s” could not be written: there is no folder “%s”", path, folder);
  return FALSE;
}

/* --- scale ------------------------------------------------------------------ */

gboolean
fp_pages_scale_parse (const char *text, double *scale)
{
  const char *digits = g_str_has_prefix (text, "1:") ? text + 2 : text;
  guint64 number;

  *scale = 0;
  if (g_ascii_strcasecmp (text, "fit") == 0)
    return TRUE;
  if (!g_ascii_string_to_unsigned (digits, 10, 1, FP_SHEET_SCALE_MOST, &number, NULL))
    return FALSE;
  *scale = (double) number;
  return TRUE;
}

void
fp_pages_note_scale (double scale)
{
  g_autofree char *note = NULL;

  if (scale == 0 || fp_scale_is_standard (scale))
    return;
  note = g_strdup_printf ("1:%g is not a scale of ISO 5455 (1:10, 1:20, 1:50, 1:100 …)", scale);
  fp_command_note (note);
}
