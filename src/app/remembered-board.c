/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "remembered-board.h"

#include <glib/gstdio.h>

#include <math.h>
#include <string.h>

#define GROUP "board"

/* No church lies farther from its origin, mm. */
#define FARTHEST 1e6

static const struct { FpViewId view; const char *at, *turned; } keys[] = {
  { FP_VIEW_SECTION, "along", "along-turned" },
  { FP_VIEW_ELEVATION, "across", "across-turned" },
};

static char *
path_of (void)
{
  return g_build_filename (g_get_user_config_dir (), "footpace", "board.ini", NULL);
}

void
fp_remembered_board_save (const char *path, FpHidden hidden, const FpCut cuts[FP_N_VIEWS])
{
  g_autoptr (GKeyFile) file = g_key_file_new ();
  g_autofree char *name = path_of (), *folder = g_path_get_dirname (name), *left_out = fp_hidden_text (hidden);

  g_key_file_set_string (file, GROUP, "project", path != NULL ? path : "");
  g_key_file_set_string (file, GROUP, "hidden", left_out);
  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    if (cuts[keys[i].view].placed)
      {
        g_key_file_set_double (file, GROUP, keys[i].at, cuts[keys[i].view].at);
        g_key_file_set_boolean (file, GROUP, keys[i].turned, cuts[keys[i].view].turned);
      }
  if (g_mkdir_with_parents (folder, 0700) == 0)
    g_key_file_save_to_file (file, name, NULL);
}

/* What is read may have been written by hand. */
static FpCut
cut_in (GKeyFile *file, const char *at, const char *turned)
{
  const double value = g_key_file_get_double (file, GROUP, at, NULL);

  if (!g_key_file_has_key (file, GROUP, at, NULL) || !(fabs (value) <= FARTHEST))
    return (FpCut) { FALSE, 0.0, FALSE };
  return (FpCut) { TRUE, value, g_key_file_get_boolean (file, GROUP, turned, NULL) };
}

gboolean
fp_remembered_board_load (const char *path, FpHidden *hidden, FpCut cuts[FP_N_VIEWS])
{
  g_autoptr (GKeyFile) file = g_key_file_new ();
  g_autofree char *name = path_of (), *project = NULL, *left_out = NULL, *wrong = NULL;

  g_key_file_load_from_file (file, name, G_KEY_FILE_NONE, NULL);
  project = g_key_file_get_string (file, GROUP, "project", NULL);
  if (project == NULL || strcmp (project, path != NULL ? path : "") != 0)
    return FALSE;
  left_out = g_key_file_get_string (file, GROUP, "hidden", NULL);
  if (left_out == NULL || !fp_hidden_parse (left_out, hidden, &wrong))
    *hidden = 0;
  for (guint i = 0; i < G_N_ELEMENTS (keys); i++)
    cuts[keys[i].view] = cut_in (file, keys[i].at, keys[i].turned);
  return TRUE;
}
