/* SPDX-License-Identifier: GPL-3.0-or-later */
/* store-read.c - XML to a project
 *
 * Three gates, each narrower than the one before: well-formed and within the
 * limits (parse-xml.c); every element, attribute and number as it must be,
 * said in plain words (here and read-*.c), which the schema then confirms; and
 * the invariants of a project (fp_project_builder_end).
 */
#include "read-parts.h"
#include "store-words.h"

#include <string.h>

typedef struct
{
  char   *id, *on;  /* owned by the reader */
  FpFate  fate;
  FpPlace moved;
} Fate;

/* A survey, or an alternative: what stands in it, and on which line. */
typedef struct
{
  const char *id, *name, *note; /* of the alternative                       */
  gboolean    has_facing;       /* one of its own                           */
  FpFacing    facing;
  int         line;
  GPtrArray  *items;            /* of FpItem                                */
  GHashTable *item_lines;       /* id to line                               */
  GArray     *fates;            /* of Fate                                  */
  GHashTable *fate_lines;
  FpReadSettings settings;
} Part;

typedef struct
{
  FpReader   reader;
  FpBrief    brief;
  int        brief_line;
  FpPageSetup page;
  int        page_line;         /* 0: there is none                         */
  FpWorks    works;
  FpReadNorms norms;
  int        norms_line;        /* likewise                                 */
  FpReckoning reckoning;
  int        reckoning_line;    /* likewise                                 */
  GArray    *rates;             /* of FpRate: of the works                  */
  int        works_line;        /* likewise                                 */
  Part      *survey;
  GPtrArray *alternatives;      /* of Part                                  */
} Parts;

static void
release_item (gpointer item)
{
  fp_item_unref (item);
}

static Part *
part_new (int line)
{
  Part *part = g_new0 (Part, 1);

  part->line = line;
  part->items = g_ptr_array_new_with_free_func (release_item);
  part->item_lines = g_hash_table_new (g_str_hash, g_str_equal);
  part->fates = g_array_new (FALSE, FALSE, sizeof (Fate));
  part->fate_lines = g_hash_table_new (g_str_hash, g_str_equal);
  fp_read_settings_init (&part->settings);
  return part;
}

static void
part_free (gpointer data)
{
  Part *part = data;

  g_hash_table_unref (part->item_lines);
  g_hash_table_unref (part->fate_lines);
  g_ptr_array_unref (part->items);
  g_array_unref (part->fates);
  fp_read_settings_clear (&part->settings);
  g_free (part);
}

static void
parts_init (Parts *p, const char *name)
{
  memset (p, 0, sizeof *p);
  p->reader.name = name;
  p->reader.texts = g_string_chunk_new (4096);
  p->survey = part_new (1);
  p->alternatives = g_ptr_array_new_with_free_func (part_free);
  p->rates = g_array_new (FALSE, FALSE, sizeof (FpRate));
  fp_read_norms_init (&p->norms);
}

static void
parts_clear (Parts *p)
{
  part_free (p->survey);
  g_ptr_array_unref (p->alternatives);
  g_array_unref (p->rates);
  fp_read_norms_clear (&p->norms);
  g_string_chunk_free (p->reader.texts);
}

/* --- reading --- */

static int
line_in (GHashTable *lines, const char *id)
{
  return GPOINTER_TO_INT (g_hash_table_lookup (lines, id));
}

static gboolean
id_is_new (Parts *p, const Part *part, const xmlNode *node, const char *id)
{
  const int first = MAX (line_in (p->survey->item_lines, id), line_in (part->item_lines, id));

  return first == 0
         || fp_read_refuse (&p->reader, node, FP_ERROR_REFERENCE, "the id “%s” was given before, on line %d; each "
                            "thing needs an id of its own", id, first);
}

static gboolean
read_thing (Parts *p, Part *part, const xmlNode *node)
{
  FpItem *item = fp_read_item (&p->reader, node, part == p->survey);

  if (item == NULL)
    return FALSE;
  g_ptr_array_add (part->items, item);
  if (part->items->len > FP_ITEMS_MAX)
    return fp_read_refuse (&p->reader, node, FP_ERROR_LIMIT, "more than %d things in <%s>, the most that are read",
                           FP_ITEMS_MAX, fp_read_name (node->parent));
  if (!id_is_new (p, part, node, fp_item_id (item)))
    return FALSE;
  g_hash_table_insert (part->item_lines, (gpointer) fp_item_id (item), GINT_TO_POINTER (fp_read_line (node)));
  return TRUE;
}

static gboolean
fate_has_only_its_own (FpReader *r, const xmlNode *node, FpFate fate)
{
  static const char *const moved[] = { "id", "on", "x", "y", "turn", NULL }, *const removed[] = { "id", NULL };

  if (!fp_read_knows_attributes (r, node, fate == FP_FATE_MOVED ? moved : removed)
      || !fp_read_has_only_elements (r, node))
    return FALSE;
  return fp_read_first (node) == NULL
         || fp_read_refuse (r, fp_read_first (node), FP_ERROR_INVALID, "<%.80s> was found in <%s>, where nothing is "
                            "expected", fp_read_name (fp_read_first (node)), fp_read_name (node));
}

static gboolean
read_fate (Parts *p, Part *part, const xmlNode *node)
{
  FpReader *r = &p->reader;
  Fate fate = { .fate = fp_read_is (node, "moved") ? FP_FATE_MOVED : FP_FATE_REMOVED };

  if (!fate_has_only_its_own (r, node, fate.fate)
      || (fate.id = (char *) fp_read_needed_attribute (r, node, "id")) == NULL
      || !fp_read_place (r, node, &fate.moved))
    return FALSE;
  if (line_in (part->fate_lines, fate.id) != 0)
    return fp_read_refuse (r, node, FP_ERROR_REFERENCE, "“%.80s” was moved or removed before, on line %d", fate.id,
                           line_in (part->fate_lines, fate.id));
  fate.on = (char *) fp_read_attribute (r, node, "on");
  g_array_append_val (part->fates, fate);
  g_hash_table_insert (part->fate_lines, fate.id, GINT_TO_POINTER (fp_read_line (node)));
  return TRUE;
}

static gboolean
read_survey (Parts *p, const xmlNode *node)
{
  static const char *const none[] = { NULL };

  p->survey->line = fp_read_line (node);
  if (!fp_read_knows_attributes (&p->reader, node, none) || !fp_read_has_only_elements (&p->reader, node))
    return FALSE;
  for (const xmlNode *child = fp_read_first (node); child != NULL; child = fp_read_next (child))
    if (!read_thing (p, p->survey, child))
      return FALSE;
  return TRUE;
}

static gboolean
alternative_is_new (Parts *p, const xmlNode *node, const char *id)
{
  if (p->alternatives->len >= FP_ALTERNATIVES_MAX)
    return fp_read_refuse (&p->reader, node, FP_ERROR_LIMIT, "more than %d alternatives, the most that are read",
                           FP_ALTERNATIVES_MAX);
  for (guint i = 0; i < p->alternatives->len; i++)
    {
      const Part *other = p->alternatives->pdata[i];
      if (strcmp (other->id, id) == 0)
        return fp_read_refuse (&p->reader, node, FP_ERROR_REFERENCE, "the alternative “%.80s” was given before, on "
                               "line %d; each needs an id of its own", id, other->line);
    }
  return TRUE;
}

static gboolean
is_of_settings (const xmlNode *node)
{
  return fp_read_is (node, "kept") || fp_read_is (node, "setting");
}

static gboolean
read_settings (Parts *p, Part *part, const xmlNode *child)
{
  const FpReadThings things = { part->item_lines, p->survey->item_lines };

  for (; fp_read_is (child, "kept"); child = fp_read_next (child))
    if (!fp_read_kept (&p->reader, child, &things, &part->settings))
      return FALSE;
  for (; fp_read_is (child, "setting"); child = fp_read_next (child))
    if (!fp_read_setting (&p->reader, child, &things, &part->settings))
      return FALSE;
  return child == NULL
         || fp_read_refuse (&p->reader, child, FP_ERROR_INVALID, "<%.80s> was found after what is kept or set; it is "
                            "expected before it", fp_read_name (child));
}

/* The note comes first, then what is done with the survey, then the things, then the settings. */
static gboolean
read_alternative_parts (Parts *p, Part *part, const xmlNode *node)
{
  const xmlNode *child = fp_read_first (node);

  part->note = "";
  if (fp_read_is (child, "note"))
    {
      static const char *const none[] = { NULL };
      if (!fp_read_knows_attributes (&p->reader, child, none)
          || (part->note = fp_read_text (&p->reader, child)) == NULL)
        return FALSE;
      child = fp_read_next (child);
    }
  for (; fp_read_is (child, "moved") || fp_read_is (child, "removed"); child = fp_read_next (child))
    if (!read_fate (p, part, child))
      return FALSE;
  for (; child != NULL && !is_of_settings (child); child = fp_read_next (child))
    {
      if (fp_read_is (child, "note") || fp_read_is (child, "moved") || fp_read_is (child, "removed"))
        return fp_read_refuse (&p->reader, child, FP_ERROR_INVALID, "<%s> was found after things; it is expected "
                               "before them", fp_read_name (child));
      if (!read_thing (p, part, child))
        return FALSE;
    }
  return read_settings (p, part, child);
}

/* Where it is not given, the brief says. */
static gboolean
read_facing (Parts *p, Part *part, const xmlNode *node)
{
  const char *word = fp_read_attribute (&p->reader, node, "facing");

  for (guint i = 0; word != NULL && fp_facing_words[i] != NULL; i++)
    if (strcmp (word, fp_facing_words[i]) == 0)
      {
        part->has_facing = TRUE;
        part->facing = (FpFacing) i;
        return TRUE;
      }
  return word == NULL || fp_read_refuse (&p->reader, node, FP_ERROR_INVALID, "facing is “%.40s”; one of %s, %s is "
                                         "expected", word, fp_facing_words[0], fp_facing_words[1]);
}

static gboolean
read_alternative (Parts *p, const xmlNode *node)
{
  static const char *const known[] = { "id", "name", "facing", NULL };
  Part *part = part_new (fp_read_line (node));
  const char *id = fp_read_needed_attribute (&p->reader, node, "id");

  part->id = id;
  if (id == NULL || !alternative_is_new (p, node, id))
    {
      part_free (part);
      return FALSE;
    }
  g_ptr_array_add (p->alternatives, part);
  part->name = fp_read_needed_attribute (&p->reader, node, "name");
  return part->name != NULL && fp_read_knows_attributes (&p->reader, node, known)
         && read_facing (p, part, node) && fp_read_has_only_elements (&p->reader, node) && read_alternative_parts (p, part, node);
}

static gboolean
is_next (Parts *p, const xmlNode *parent, const xmlNode *node, const char *element)
{
  if (fp_read_is (node, element))
    return TRUE;
  return node != NULL ? fp_read_refuse (&p->reader, node, FP_ERROR_INVALID, "<%.80s> was found; <%s> is expected here",
                                        fp_read_name (node), element)
         : fp_read_refuse (&p->reader, parent, FP_ERROR_INVALID, "<%s> has no <%s>, which is expected",
                           fp_read_name (parent), element);
}

/* The last, where it is there at all. */
static gboolean
read_page (Parts *p, const xmlNode *node)
{
  const xmlNode *after = fp_read_next (node);

  p->page_line = fp_read_line (node);
  return fp_read_page (&p->reader, node, &p->page)
         && (after == NULL || fp_read_refuse (&p->reader, after, FP_ERROR_INVALID, "<%.80s> was found; </project> is "
                                              "expected after <page>", fp_read_name (after)));
}

static gboolean
read_project (Parts *p, const xmlNode *root)
{
  static const char *const known[] = { "version", NULL };
  const xmlNode *child;

  if (!fp_read_knows_attributes (&p->reader, root, known) || !fp_read_has_only_elements (&p->reader, root))
    return FALSE;
  child = fp_read_first (root);
  if (!is_next (p, root, child, "brief") || !fp_read_brief (&p->reader, child, &p->brief))
    return FALSE;
  p->brief_line = fp_read_line (child);
  child = fp_read_next (child);
  if (!is_next (p, root, child, "survey") || !read_survey (p, child))
    return FALSE;
  child = fp_read_next (child);
  do
    {
      if (!is_next (p, root, child, "alternative") || !read_alternative (p, child))
        return FALSE;
      child = fp_read_next (child);
    }
  while (child != NULL && !fp_read_is (child, "norms") && !fp_read_is (child, "works")
         && !fp_read_is (child, "capacity") && !fp_read_is (child, "page"));
  if (fp_read_is (child, "norms"))
    {
      p->norms_line = fp_read_line (child);
      if (!fp_read_norms (&p->reader, child, &p->norms))
        return FALSE;
      child = fp_read_next (child);
    }
  if (fp_read_is (child, "works"))
    {
      p->works_line = fp_read_line (child);
      if (!fp_read_works (&p->reader, child, &p->works, p->rates))
        return FALSE;
      child = fp_read_next (child);
    }
  if (fp_read_is (child, "capacity"))
    {
      p->reckoning_line = fp_read_line (child);
      if (!fp_read_reckoning (&p->reader, child, &p->reckoning))
        return FALSE;
      child = fp_read_next (child);
    }
  if (child != NULL && !fp_read_is (child, "page"))
    return is_next (p, root, child, "page");
  return child == NULL || read_page (p, child);
}

/* --- putting it together --- */

static gboolean
add_alternative (FpProjectBuilder *builder, const Part *part, GError **error)
{
  if (!fp_project_builder_alternative (builder, part->id, part->name, part->note, error)
      || (part->has_facing && !fp_project_builder_facing (builder, part->facing, error)))
    return FALSE;
  for (guint i = 0; i < part->fates->len; i++)
    {
      const Fate *f = &g_array_index (part->fates, Fate, i);
      if (!fp_project_builder_fate (builder, f->id, f->fate, &f->moved, f->on, error))
        return FALSE;
    }
  for (guint i = 0; i < part->items->len; i++)
    if (!fp_project_builder_item (builder, part->items->pdata[i], error))
      return FALSE;
  return fp_read_settings_build (&part->settings, builder, error);
}

/* The project with the alternatives @from to @to - 1. */
static FpProject *
assemble (const Parts *p, guint from, guint to, GError **error)
{
  g_autoptr (FpProjectBuilder) builder = fp_project_builder_new ();

  fp_project_builder_brief (builder, &p->brief);
  for (guint i = 0; i < p->survey->items->len; i++)
    if (!fp_project_builder_survey (builder, p->survey->items->pdata[i], error))
      return NULL;
  if (p->page_line > 0)
    fp_project_builder_page (builder, &p->page);
  if (p->works_line > 0 && !fp_project_builder_works (builder, &p->works, error))
    return NULL;
  if (p->norms_line > 0 && !fp_project_builder_norms (builder, &p->norms.norms, error))
    return NULL;
  if (p->reckoning_line > 0 && !fp_project_builder_reckoning (builder, &p->reckoning, error))
    return NULL;
  for (guint i = from; i < to; i++)
    if (!add_alternative (builder, p->alternatives->pdata[i], error))
      return NULL;
  return fp_project_builder_end (builder, error);
}

/* Messages of a project begin with the id of the thing that they are about. */
static int
line_of_message (const Parts *p, const Part *alternative, const char *message)
{
  const char *colon = strchr (message, ':');
  g_autofree char *id = g_strndup (message, colon != NULL ? (gsize) (colon - message) : 0);
  GHashTable *const lines[] = { alternative->item_lines, alternative->fate_lines, p->survey->item_lines };

  if (strcmp (id, "brief") == 0)
    return p->brief_line;
  if (strcmp (id, "works") == 0 && p->works_line > 0)
    return p->works_line;
  if (strcmp (id, "capacity") == 0 && p->reckoning_line > 0)
    return p->reckoning_line;
  if (strcmp (id, "norms") == 0 && p->norms_line > 0)
    return p->norms_line;
  if (strcmp (id, "page") == 0 && p->page_line > 0)
    return p->page_line;
  for (guint i = 0; i < G_N_ELEMENTS (lines); i++)
    if (line_in (lines[i], id) != 0)
      return line_in (lines[i], id);
  return alternative->line;
}

/* Ids are unique within one alternative only, so it is found out first in which of them the fault lies. */
static void
locate (Parts *p, GError *fault)
{
  const Part *part = p->alternatives->pdata[0];

  for (guint i = 0; i < p->alternatives->len; i++)
    {
      GError *alone = NULL;
      g_autoptr (FpProject) whole = assemble (p, i, i + 1, &alone);
      if (whole != NULL)
        continue;
      part = p->alternatives->pdata[i];
      g_error_free (fault);
      fault = alone;
      break;
    }
  fp_read_refuse_error (&p->reader, line_of_message (p, part, fault->message), fault);
}

FpProject *
fp_store_parse (const char *xml, gsize length, const char *name, GError **error)
{
  g_autoptr (xmlDoc) doc = fp_xml_parse (xml, length, name, error);
  FpProject *project = NULL;
  GError *fault = NULL;
  Parts p;

  if (doc == NULL)
    return NULL;
  parts_init (&p, name);
  if (read_project (&p, xmlDocGetRootElement (doc)) && fp_xml_validate (doc, name, &p.reader.error)
      && (project = assemble (&p, 0, p.alternatives->len, &fault)) == NULL)
    locate (&p, fault);
  if (p.reader.error != NULL)
    g_propagate_error (error, p.reader.error);
  parts_clear (&p);
  return project;
}
