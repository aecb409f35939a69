/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "check-many.h"

#include "check-books.h"

#include "footpace/store.h"
#include "footpace/workers.h"

#include <string.h>

#define SUFFIX   ".footpace"
#define DEEP_MAX 64 /* folders within folders */

/* --- which files --------------------------------------------------------------------- */

static int
by_name (gconstpointer a, gconstpointer b)
{
  return strcmp (*(const char *const *) a, *(const char *const *) b);
}

static GPtrArray *
names_in (const char *folder)
{
  GPtrArray *names = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL)
    if (*name != '.')
      g_ptr_array_add (names, g_strdup (name));
  g_ptr_array_sort (names, by_name);
  return names;
}

static void
collect (GPtrArray *files, const char *folder, guint deep)
{
  g_autoptr (GPtrArray) names = names_in (folder);

  for (guint i = 0; i < names->len; i++)
    {
      g_autofree char *path = g_build_filename (folder, names->pdata[i], NULL);

      if (g_file_test (path, G_FILE_TEST_IS_DIR))
        {
          if (deep < DEEP_MAX && !g_file_test (path, G_FILE_TEST_IS_SYMLINK))
            collect (files, path, deep + 1);
        }
      else if (g_str_has_suffix (path, SUFFIX))
        g_ptr_array_add (files, g_steal_pointer (&path));
    }
}

GPtrArray *
fp_check_many_files (char *const *given, guint n)
{
  GPtrArray *files = g_ptr_array_new_with_free_func (g_free);

  for (guint i = 0; i < n; i++)
    if (g_file_test (given[i], G_FILE_TEST_IS_DIR))
      collect (files, given[i], 0);
    else
      g_ptr_array_add (files, g_strdup (given[i]));
  return files;
}

/* --- rows ------------------------------------------------------------------------------- */

typedef struct
{
  const FpCheckMany *how;
  GPtrArray         *files;
  GMutex             mutex;
  char             **rows;    /* guarded: of each file, once it is done          */
  guint              printed; /* guarded: how many files' rows are out           */
  int                exit_code; /* guarded: the greatest                         */
} Run;

static void
add_field (GString *out, const char *text)
{
  g_string_append (out, out->len > 0 && out->str[out->len - 1] != '\n' ? ",\"" : "\"");
  for (const char *c = text; *c != '\0'; c++)
    {
      if (*c == '"')
        g_string_append_c (out, '"');
      g_string_append_c (out, *c);
    }
  g_string_append_c (out, '"');
}

static void
add_numbers (GString *out, const guint *number, guint n)
{
  for (guint i = 0; i < n; i++)
    g_string_append_printf (out, ",%u", number[i]);
}

static void
add_refused (const Run *run, const char *file, const char *why, GString *out)
{
  g_autofree char *name = g_filename_display_name (file);

  if (!run->how->csv)
    {
      g_string_append_printf (out, "%s: not checked: %s\n", name, why);
      return;
    }
  add_field (out, name);
  g_string_append (out, ",,,,,,,,"); /* nothing in the columns between */
  add_field (out, why);
  g_string_append (out, ",,,,\r\n");
}

static guint
held_of (const FpFindings *findings)
{
  guint n, held = 0;
  const FpFinding *finding = fp_findings_get (findings, &n);

  for (guint i = 0; i < n; i++)
    held += finding[i].found == FP_FOUND_SHORT || finding[i].found == FP_FOUND_WITHIN;
  return held;
}

/* "rail:rail-height access:gate-route", of all that are short: a diocese looks for its own book. */
static char *
short_of (const FpFindings *findings)
{
  guint n;
  const FpFinding *finding = fp_findings_get (findings, &n);
  GString *rules = g_string_new (NULL);

  for (guint i = 0; i < n && finding[i].found == FP_FOUND_SHORT; i++)
    g_string_append_printf (rules, "%s%s:%s", i > 0 ? " " : "", fp_rulebook_id (finding[i].book), finding[i].rule->id);
  return g_string_free (rules, FALSE);
}

static const char *
worst_of (const FpFindings *findings)
{
  guint n;
  const FpFinding *finding = fp_findings_get (findings, &n);

  return n > 0 && finding[0].found == FP_FOUND_SHORT ? finding[0].title : "";
}

/* --- what the parish holds otherwise ------------------------------------------------------ */

typedef struct
{
  guint aside, otherwise; /* rules                                                   */
  char *without;          /* ids of books that are not followed, parted by spaces    */
  char *amiss;            /* sentences: a book in place of another, a norm of no book */
} Norms;

static void
norms_clear (Norms *norms)
{
  g_free (norms->without);
  g_free (norms->amiss);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Norms, norms_clear)

static char *
amiss_of (const FpFindings *findings)
{
  const GPtrArray *amiss = fp_findings_amiss (findings);
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < amiss->len; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? " " : "", (const char *) amiss->pdata[i]);
  return g_strdelimit (g_string_free (text, FALSE), "\r\n", ' ');
}

static Norms
norms_of (const FpFindings *findings)
{
  const FpNorms *held = fp_project_norms (fp_scene_project (fp_findings_scene (findings)));
  GString *without = g_string_new (NULL);
  Norms norms = { .amiss = amiss_of (findings) };
  guint n;
  const FpFinding *finding = fp_findings_get (findings, &n);

  for (guint i = 0; i < n; i++)
    {
      const FpNormChange *change = fp_norms_change (held, fp_rulebook_id (finding[i].book), finding[i].rule->id);
      const gboolean followed = fp_norms_follow (held, fp_rulebook_id (finding[i].book));

      norms.aside += followed && change != NULL && change->aside;
      norms.otherwise += finding[i].otherwise != NULL && finding[i].found != FP_FOUND_APART;
    }
  for (guint i = 0; i < held->n_without; i++)
    g_string_append_printf (without, "%s%s", i > 0 ? " " : "", held->without[i]);
  norms.without = g_string_free (without, FALSE);
  return norms;
}

/* "; set aside: 2; not followed: flame": nothing where all is held as it is printed. */
static void
add_norms_words (const Norms *norms, GString *out)
{
  if (norms->aside > 0)
    g_string_append_printf (out, "; set aside: %u", norms->aside);
  if (norms->otherwise > 0)
    g_string_append_printf (out, "; held otherwise than printed: %u", norms->otherwise);
  if (*norms->without != '\0')
    g_string_append_printf (out, "; not followed: %s", norms->without);
  if (*norms->amiss != '\0')
    g_string_append_printf (out, "; norms: %s", norms->amiss);
}

static void
add_norms_fields (const Norms *norms, GString *out)
{
  const guint number[] = { norms->aside, norms->otherwise };

  add_numbers (out, number, G_N_ELEMENTS (number));
  add_field (out, norms->without);
  add_field (out, norms->amiss);
}

static void
add_row (const Run *run, const char *file, const FpAlternative *alternative, const FpFindings *findings, GString *out)
{
  g_autofree char *name = g_filename_display_name (file);
  const guint number[] = { fp_findings_short (findings, FP_WEIGHT_REQUIRED), fp_findings_short (findings, FP_WEIGHT_RECOMMENDED),
                           fp_findings_short (findings, FP_WEIGHT_CUSTOMARY), held_of (findings) };
  const char *worst = worst_of (findings);
  g_autofree char *rules = short_of (findings);
  g_auto (Norms) norms = norms_of (findings);

  if (!run->how->csv)
    {
      g_string_append_printf (out, "%s: %s: short %u required, %u recommended, %u customary, of %u rules held%s%s", name,
                              fp_alternative_name (alternative), number[0], number[1], number[2], number[3],
                              *worst != '\0' ? "; first: " : "", worst);
      add_norms_words (&norms, out);
      g_string_append_c (out, '\n');
      return;
    }
  add_field (out, name);
  add_field (out, fp_alternative_id (alternative));
  add_field (out, fp_alternative_name (alternative));
  add_numbers (out, number, G_N_ELEMENTS (number));
  add_field (out, worst);
  add_field (out, rules);
  add_field (out, "");
  add_norms_fields (&norms, out);
  g_string_append (out, "\r\n");
}

/* --- one file --------------------------------------------------------------------------- */

static gboolean
is_wanted (const Run *run, const FpAlternative *alternative)
{
  const char *wanted = run->how->alternative;

  return wanted == NULL || strcmp (wanted, fp_alternative_id (alternative)) == 0
         || strcmp (wanted, fp_alternative_name (alternative)) == 0;
}

static int
check_project (const Run *run, const char *file, const FpProject *project, GString *out)
{
  g_autoptr (GPtrArray) books = fp_check_books_for (project, run->how->books);
  int exit_code = FP_EXIT_CLEAR;

  for (guint i = 0; i < fp_project_n_alternatives (project); i++)
    {
      const FpAlternative *alternative = fp_project_alternative (project, i);
      g_autoptr (FpFindings) findings = NULL;

      if (!is_wanted (run, alternative))
        continue;
      findings = fp_findings_of (project, i, books, NULL);
      add_row (run, file, alternative, findings, out);
      if (fp_findings_short (findings, FP_WEIGHT_REQUIRED) > 0)
        exit_code = FP_EXIT_SHORT;
    }
  if (out->len == 0)
    {
      add_refused (run, file, "it has no such alternative", out);
      return FP_EXIT_ERROR;
    }
  return exit_code;
}

/* Whatever is next in their order and done. */
static void
print_ready (Run *run)
{
  while (run->printed < run->files->len && run->rows[run->printed] != NULL)
    {
      char **row = &run->rows[run->printed++];

      if (fp_command_print (*row, strlen (*row)) != FP_EXIT_CLEAR)
        run->exit_code = FP_EXIT_ERROR;
      g_clear_pointer (row, g_free);
    }
}

static void
check_one (guint i, gpointer data)
{
  Run *run = data;
  const char *file = run->files->pdata[i];
  g_autoptr (GError) error = NULL;
  g_autoptr (FpProject) project = fp_store_load (file, &error);
  GString *out = g_string_new (NULL);
  int exit_code = FP_EXIT_ERROR;

  if (project != NULL)
    exit_code = check_project (run, file, project, out);
  else
    add_refused (run, file, error->message, out);

  g_mutex_lock (&run->mutex);
  run->rows[i] = g_string_free (out, FALSE);
  run->exit_code = MAX (run->exit_code, exit_code);
  print_ready (run);
  g_mutex_unlock (&run->mutex);
}

int
fp_check_many (const FpCheckMany *self, GPtrArray *files)
{
  static const char head[]
    = "file,alternative,name,required,recommended,customary,held,first,short,not checked,set aside,otherwise,not followed,norms\r\n";
  Run run = { .how = self, .files = files, .exit_code = FP_EXIT_CLEAR };

  if (self->csv && fp_command_print (head, strlen (head)) != FP_EXIT_CLEAR)
    return FP_EXIT_ERROR;
  g_mutex_init (&run.mutex);
  run.rows = g_new0 (char *, files->len);
  fp_workers_do (files->len, check_one, &run);
  g_free (run.rows);
  g_mutex_clear (&run.mutex);
  return run.exit_code;
}
