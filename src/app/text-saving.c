/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "text-saving.h"

#include "compat-4-8.h"
#include "file-names.h"

typedef struct
{
  GtkWindow   *window; /* held                                                */
  FpTextSaving saving;
} Asked;

static void
on_file (GFile *file, gpointer data)
{
  g_autofree Asked *asked = data;
  g_autoptr (GtkWindow) window = asked->window;
  const FpTextSaving *saving = &asked->saving;
  g_autofree char *chosen = file != NULL ? g_file_get_path (file) : NULL, *path = NULL, *said = NULL;
  g_autofree char *text = file != NULL ? saving->make (window) : NULL;
  g_autoptr (GError) error = NULL;

  if (text == NULL)
    return;
  if (chosen == NULL)
    {
      saving->tell (window, "It can only be written to files on this computer.", TRUE);
      return;
    }
  path = fp_file_with_suffix (chosen, saving->suffix, &error);
  if (path == NULL || !g_file_set_contents_full (path, text, -1, G_FILE_SET_CONTENTS_CONSISTENT, 0666, &error))
    {
      saving->tell (window, error->message, TRUE);
      return;
    }
  said = g_strdup_printf ("Written: %s", path);
  saving->tell (window, said, FALSE);
}

void
fp_save_text (GtkWindow *window, FpDocument *document, const FpTextSaving *saving)
{
  const char *path = fp_document_path (document);
  const char *alternative = fp_alternative_name (fp_project_alternative (fp_document_project (document),
                                                                         fp_document_alternative (document)));
  g_autofree char *project = fp_document_name (document);
  g_autofree char *name = fp_file_offered_name (project, alternative, saving->what, saving->suffix);
  g_autoptr (GFile) file = path != NULL ? g_file_new_for_path (path) : NULL;
  g_autoptr (GFile) folder = file != NULL ? g_file_get_parent (file) : NULL;
  const FpFileQuestion question = {
    .title = saving->title, .accept = "_Save", .save = TRUE, .name = name, .folder = folder, .filter_name = saving->filter_name,
    .filter_suffix = saving->suffix,
  };
  Asked *asked = g_new (Asked, 1);

  *asked = (Asked) { g_object_ref (window), *saving };
  fp_ask_file (window, &question, on_file, asked);
}
