/* SPDX-License-Identifier: GPL-3.0-or-later */
/* project.h - the project, a value
 *
 * A project never changes after it is made: an edit makes the next one and
 * shares with it all that did not change.  So anything may hold one, any
 * thread may read one, and undo is a list of them.
 *
 * Ownership: _ref/_unref count; what is read out of a project is borrowed
 * and lives as long as the project.  fp_project_with_* return a new
 * reference and leave their arguments alone.
 *
 * Invariants of every project (fp_project_check proves them; the _with_
 * functions keep them or return NULL with an error): ids are unique over
 * survey and alternative; every reference names something that is there;
 * nothing stands on itself; every parameter is in its range; outlines are
 * simple; openings of a wall do not overlap; what is said of a setting is said of
 * something that is there; there is no more of anything than the limits below.  Hence every project can be saved and read back.
 */
#pragma once

#include "footpace/error.h"
#include "footpace/mass-time.h"
#include "footpace/page.h"
#include "footpace/norms.h"
#include "footpace/reckoning.h"
#include "footpace/works.h"

G_BEGIN_DECLS

#define FP_TEXT_MAX       2000 /* bytes of a title, a name, a note          */
#define FP_CORNERS_MAX    2000 /* corners of one outline                    */
#define FP_ITEMS_MAX      2000 /* things in a survey or an alternative      */
#define FP_ALTERNATIVES_MAX 40
/* In an alternative together with the survey, whatever of it is removed: */
#define FP_PEOPLE_MAX   20000 /* places where someone sits, stands or kneels  */
#define FP_FACES_MAX   100000 /* faces of all solids: ten cathedrals          */

/* --- a thing ----------------------------------------------------------- */

typedef struct _FpItem FpItem;

/* What an item is made from; pointers are borrowed for the call. */
typedef struct
{
  const char    *id;       /* letters, digits, '-'; starts with a letter; at most 64 bytes */
  const FpKind  *kind;
  const char    *name;     /* NULL: the kind's label                        */
  const char    *on;       /* id of what it stands on; NULL: the floor beneath */
  FpPlace        place;    /* on the plan: church coordinates, or relative to `on` (see scene.h) */
  const double  *param;    /* NULL: the defaults                            */
  const FpPoint *corner;   /* relative to place                             */
  guint          n_corners;
} FpItemInit;

/* NULL with an error when id, numbers, or outline are not as they must be. */
FpItem        *fp_item_new       (const FpItemInit *init, GError **error);
FpItem        *fp_item_ref       (const FpItem *self);
void           fp_item_unref     (const FpItem *self);
const char    *fp_item_id        (const FpItem *self);
const FpKind  *fp_item_kind      (const FpItem *self);
const char    *fp_item_name      (const FpItem *self); /* never NULL        */
gboolean       fp_item_has_name  (const FpItem *self); /* one of its own    */
const char    *fp_item_on        (const FpItem *self); /* NULL: the floor   */
FpPlace        fp_item_place     (const FpItem *self);
const double  *fp_item_params    (const FpItem *self);
double         fp_item_param     (const FpItem *self, const char *id); /* a programming error if there is none */
const FpPoint *fp_item_corners   (const FpItem *self, guint *n);
void           fp_item_init_from (const FpItem *self, FpItemInit *init); /* borrowed from self */
gboolean       fp_item_equal     (const FpItem *a, const FpItem *b);

/* --- the brief --------------------------------------------------------- */

typedef enum { FP_BOOKS_OLDER, FP_BOOKS_NEWER, FP_BOOKS_BOTH } FpBooks;

/* Celebrations for which the sanctuary must serve, and for each of which things may stand, be veiled and be lit in their
 * own way: a setting. */
typedef enum
{
  FP_CELEBRATION_LOW       = 1 << 0, /* older form: low Mass                 */
  FP_CELEBRATION_SUNG      = 1 << 1, /* older form: sung Mass                */
  FP_CELEBRATION_SOLEMN    = 1 << 2, /* older form: solemn Mass              */
  FP_CELEBRATION_PONTIFICAL = 1 << 3, /* older form: by the Ordinary         */
  FP_CELEBRATION_REQUIEM   = 1 << 4, /* older form: for the dead             */
  FP_CELEBRATION_PASSIONTIDE = 1 << 5, /* older form: from Passion Sunday on */
  FP_CELEBRATION_GOOD_FRIDAY = 1 << 6, /* older form                         */
  FP_CELEBRATION_BENEDICTION = 1 << 7, /* with the Blessed Sacrament         */
  FP_CELEBRATION_WEEKDAY   = 1 << 8, /* newer form                           */
  FP_CELEBRATION_SUNDAY    = 1 << 9, /* newer form: Sundays and holydays     */
  FP_CELEBRATION_BISHOP    = 1 << 10, /* newer form: the diocesan bishop     */
} FpCelebration;
#define FP_N_CELEBRATIONS 11
/* The newer form of the rite; all others are celebrated by the older books. */
#define FP_CELEBRATIONS_NEWER (FP_CELEBRATION_WEEKDAY | FP_CELEBRATION_SUNDAY | FP_CELEBRATION_BISHOP)
const char *fp_celebration_id    (FpCelebration one); /* "low" …             */
const char *fp_celebration_label (FpCelebration one); /* "low Mass" …        */
guint       fp_celebration_number (FpCelebration one); /* of its bit, from 0 */
gboolean    fp_celebration_find  (const char *id, FpCelebration *one);

typedef struct
{
  const char *title;       /* of the project: "Sanctuary of Saint …"        */
  const char *place;       /* town                                          */
  const char *client;      /* legal owner in the title block; may be ""     */
  const char *author;      /* creator in the title block; may be ""         */
  const char *note;        /* free text; may be ""                          */
  FpBooks     books;
  FpFacing    facing;      /* of the celebrant; an alternative may have its own: see fp_project_facing() */
  guint       celebrations; /* FpCelebration bits                           */
  guint       ministers;   /* in the sanctuary at the greatest celebration, 1..60 */
  guint       seats;       /* wanted; 0: not said                           */
  FpUnits     units;
  double      north;       /* degrees from liturgical east to true north, counter-clockwise on the plan:
                              90 where liturgical east is true east (north is then to the left) */
  guint       percentile;  /* of stature, for eyes and crowns: 5, 50 or 95  */
  gboolean    varied;      /* the people differ in stature; the ministers are of the percentile even so */
  guint       seed;        /* whose stature is what, and where children sit: another church full of people for each, 0..999999 */
  guint       children;    /* one in so many of those who sit is a child, 1..1000; 0: none */
  FpSite      site;        /* where the sun is reckoned for; may be not known */
  FpMassTime  mass[FP_MASS_TIMES_MAX]; /* when Mass is said                  */
  guint       n_masses;
} FpBrief;

/* --- alternatives ------------------------------------------------------ */

/* What an alternative does with something that the survey holds. */
typedef enum { FP_FATE_KEPT, FP_FATE_MOVED, FP_FATE_REMOVED } FpFate;

typedef struct _FpAlternative FpAlternative;
const char   *fp_alternative_id      (const FpAlternative *self);
const char   *fp_alternative_name    (const FpAlternative *self);
const char   *fp_alternative_note    (const FpAlternative *self); /* never NULL */
/* Whether it has the celebrant face another way than the brief may ask; @facing (out, optional) which. */
gboolean      fp_alternative_own_facing (const FpAlternative *self, FpFacing *facing);
guint         fp_alternative_n_items (const FpAlternative *self);
const FpItem *fp_alternative_item    (const FpAlternative *self, guint i);
/* Fate of a thing of the survey; for FP_FATE_MOVED, @moved (out, optional) is where
 * it stands now and @on (out, optional) on what (NULL: the floor). */
FpFate        fp_alternative_fate    (const FpAlternative *self, const char *id, FpPlace *moved, const char **on);

/* --- settings ------------------------------------------------------------
 *
 * An alternative keeps only what somebody decided otherwise than the rule has it; what the rule is, setting.h tells.
 */

typedef enum { FP_UNSAID, FP_SAID_NO, FP_SAID_YES } FpSaid;
#define FP_LIT_UNSAID (-1)

/* What is said of one thing at one celebration. */
typedef struct
{
  FpSaid stands, veiled;
  int    lit;      /* how many of its lights burn, 0..FP_COUNT_MAX; FP_LIT_UNSAID */
} FpSettingChange;
#define FP_SETTING_UNSAID ((FpSettingChange) { FP_UNSAID, FP_UNSAID, FP_LIT_UNSAID })
gboolean      fp_setting_change_is_empty (const FpSettingChange *self);

/* Of vestments, frontal and veils. */
typedef enum
{
  FP_COLOUR_UNSAID, /* as the rule has it, or of the day                     */
  FP_COLOUR_WHITE, FP_COLOUR_RED, FP_COLOUR_GREEN, FP_COLOUR_VIOLET, FP_COLOUR_ROSE, FP_COLOUR_BLACK,
  FP_N_COLOURS
} FpColour;
const char   *fp_colour_id   (FpColour colour); /* "white"; "" for what is not said */
gboolean      fp_colour_find (const char *id, FpColour *colour);

/* FP_SETTING_UNSAID where nothing is. */
FpSettingChange fp_alternative_setting (const FpAlternative *self, FpCelebration one, const char *id);
FpColour      fp_alternative_colour  (const FpAlternative *self, FpCelebration one);
/* Where that thing is kept while it does not stand; "" where nobody said. */
const char   *fp_alternative_kept    (const FpAlternative *self, const char *id);

/* --- the project ------------------------------------------------------- */

typedef struct _FpProject FpProject;

FpProject     *fp_project_new   (const FpBrief *brief); /* an empty survey, one alternative "a" */
FpProject     *fp_project_ref   (const FpProject *self);
void           fp_project_unref (const FpProject *self);

const FpBrief *fp_project_brief (const FpProject *self);
guint          fp_project_n_survey (const FpProject *self);
const FpItem  *fp_project_survey   (const FpProject *self, guint i);
guint          fp_project_n_alternatives (const FpProject *self); /* at least 1 */
const FpAlternative *fp_project_alternative (const FpProject *self, guint i);
int            fp_project_find_alternative (const FpProject *self, const char *id); /* -1 */

/* NULL: nobody has set a page up. */
const FpPageSetup *fp_project_page (const FpProject *self);

/* Never NULL: %fp_works_usual where nobody said anything. */
const FpWorks *fp_project_works (const FpProject *self);
gboolean       fp_project_has_works (const FpProject *self); /* somebody did */

/* Never NULL: %fp_norms_usual where nobody said anything. */
const FpNorms *fp_project_norms (const FpProject *self);

/* Never NULL: %fp_reckoning_usual where nobody said anything. */
const FpReckoning *fp_project_reckoning (const FpProject *self);

/* Which way the celebrant faces in that alternative: its own way, else the brief's.  Whoever needs it asks here. */
FpFacing       fp_project_facing (const FpProject *self, guint alternative);

/**
 * fp_project_find:
 * @in_survey: (out) (optional): whether the survey holds it
 *
 * The thing of that id in the survey or in the alternative; NULL when there is none.
 */
const FpItem  *fp_project_find (const FpProject *self, guint alternative, const char *id, gboolean *in_survey);

/* Equal in every value (not only the same pointer). */
gboolean       fp_project_equal (const FpProject *a, const FpProject *b);

/* Proves the invariants; FALSE with an error that names the thing. */
gboolean       fp_project_check (const FpProject *self, GError **error);

/* --- the next project: each returns NULL with an error when the result would
 * not be a project, and never touches @self ------------------------------- */

FpProject *fp_project_with_brief (const FpProject *self, const FpBrief *brief, GError **error);

/* @page: NULL takes it away. */
FpProject *fp_project_with_page (const FpProject *self, const FpPageSetup *page, GError **error);

/* @works: NULL for the usual. */
FpProject *fp_project_with_works (const FpProject *self, const FpWorks *works, GError **error);

/* @norms: NULL, or what says nothing, for the usual. */
FpProject *fp_project_with_norms (const FpProject *self, const FpNorms *norms, GError **error);

FpProject *fp_project_with_reckoning (const FpProject *self, const FpReckoning *reckoning, GError **error);

/* Adds the thing, or replaces the one of the same id, in the survey or in the alternative. */
FpProject *fp_project_with_survey_item (const FpProject *self, FpItem *item, GError **error);
/* Several at once, where one without the others would not do: a wall and the openings in it. */
FpProject *fp_project_with_survey_items (const FpProject *self, FpItem *const *item, guint n, GError **error);
FpProject *fp_project_with_item (const FpProject *self, guint alternative, FpItem *item, GError **error);

/* Takes a thing away altogether, and with it all that stands on it; for a thing
 * of the survey, from every alternative. */
FpProject *fp_project_without_item (const FpProject *self, guint alternative, const char *id, GError **error);

FpProject *fp_project_with_fate (const FpProject *self, guint alternative, const char *id,
                                 FpFate fate, const FpPlace *moved, const char *on, GError **error);

/* @copy_of: index of an alternative to start from, or -1 for an empty one.  Added last. */
FpProject *fp_project_with_new_alternative (const FpProject *self, int copy_of,
                                            const char *id, const char *name, GError **error);
FpProject *fp_project_with_alternative_text (const FpProject *self, guint alternative,
                                             const char *name, const char *note, GError **error);
/* @facing: NULL for what the brief asks. */
FpProject *fp_project_with_alternative_facing (const FpProject *self, guint alternative, const FpFacing *facing,
                                               GError **error);
/* @change: FP_SETTING_UNSAID for what the rule says. */
FpProject *fp_project_with_setting (const FpProject *self, guint alternative, FpCelebration one, const char *id,
                                    const FpSettingChange *change, GError **error);
FpProject *fp_project_with_colour  (const FpProject *self, guint alternative, FpCelebration one, FpColour colour,
                                    GError **error);
/* @where: one line, "" to say nothing. */
FpProject *fp_project_with_kept    (const FpProject *self, guint alternative, const char *id, const char *where,
                                    GError **error);
/* All that is said of one celebration is taken back. */
FpProject *fp_project_without_setting (const FpProject *self, guint alternative, FpCelebration one, GError **error);
FpProject *fp_project_without_alternative (const FpProject *self, guint alternative, GError **error);

/* An id that nothing in the project has: "@stem", "@stem-2", … Owned by the caller. */
char      *fp_project_free_id (const FpProject *self, const char *stem);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpItem, fp_item_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpProject, fp_project_unref)

/* --- making one whole from parts (for the store) ------------------------ */

/* Gathers parts in any order, then proves the invariants once. */
typedef struct _FpProjectBuilder FpProjectBuilder;
FpProjectBuilder *fp_project_builder_new  (void);
void              fp_project_builder_free (FpProjectBuilder *self);
void              fp_project_builder_brief (FpProjectBuilder *self, const FpBrief *brief);
gboolean          fp_project_builder_survey (FpProjectBuilder *self, FpItem *item, GError **error);
gboolean          fp_project_builder_alternative (FpProjectBuilder *self, const char *id, const char *name,
                                                  const char *note, GError **error);
/* These go to the alternative added last. */
gboolean          fp_project_builder_facing (FpProjectBuilder *self, FpFacing facing, GError **error);
gboolean          fp_project_builder_item (FpProjectBuilder *self, FpItem *item, GError **error);
gboolean          fp_project_builder_fate (FpProjectBuilder *self, const char *id, FpFate fate,
                                           const FpPlace *moved, const char *on, GError **error);
gboolean          fp_project_builder_setting (FpProjectBuilder *self, FpCelebration one, const char *id,
                                              const FpSettingChange *change, GError **error);
gboolean          fp_project_builder_colour (FpProjectBuilder *self, FpCelebration one, FpColour colour, GError **error);
gboolean          fp_project_builder_kept (FpProjectBuilder *self, const char *id, const char *where, GError **error);
void              fp_project_builder_page (FpProjectBuilder *self, const FpPageSetup *page);
gboolean          fp_project_builder_works (FpProjectBuilder *self, const FpWorks *works, GError **error);
gboolean          fp_project_builder_norms (FpProjectBuilder *self, const FpNorms *norms, GError **error);
gboolean          fp_project_builder_reckoning (FpProjectBuilder *self, const FpReckoning *reckoning, GError **error);
FpProject        *fp_project_builder_end (FpProjectBuilder *self, GError **error);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpProjectBuilder, fp_project_builder_free)

G_END_DECLS
