/* SPDX-License-Identifier: GPL-3.0-or-later */
/* project-private.h - of what a project is made
 *
 * Every part is counted and never changes once it is in a project, so the
 * next project shares all parts but the one that an edit replaced.  A part
 * that is still being made has one owner, who may change it.
 */
#pragma once

#include "text.h"

G_BEGIN_DECLS

/* What a kind is laid round while it is judged by itself: a common altar, 2400 x 900 (design judgement). */
#define FP_CORE_COMMON ((FpBox) { -1200, -450, 1200, 450 })

/* --- how much there is --- */

typedef struct { guint faces, people; } FpWeight;

FpWeight fp_weight_of   (const FpItem *item);
FpWeight fp_item_weight (const FpItem *item); /* the same, reckoned once */

/* --- lists of things --- */

typedef struct
{
  gatomicrefcount ref_count;
  guint           n;
  const FpItem  **item; /* owned references */
} FpItemList;

FpItemList *fp_item_list_new   (void);
FpItemList *fp_item_list_ref   (const FpItemList *self);
void        fp_item_list_unref (FpItemList *self);
int         fp_item_list_find  (const FpItemList *self, const char *id); /* -1 */
/* A new list, in which @item replaces the one of its id, or is added last. */
FpItemList *fp_item_list_with  (const FpItemList *self, const FpItem *item);
/* A new list without those whose ids are keys of @gone. */
FpItemList *fp_item_list_without (const FpItemList *self, GHashTable *gone);
gboolean    fp_item_list_equal (const FpItemList *a, const FpItemList *b);

/* Adds the things of @list to @sum; FALSE where that is more than a project may hold. */
gboolean    fp_weight_add (FpWeight *sum, const FpItemList *list, GError **error);

/* --- what an alternative says of settings --- */

typedef struct
{
  guint           celebration; /* number of it                             */
  char           *id;
  FpSettingChange change;
} FpSettingEntry;

typedef struct { char *id, *where; } FpKeptEntry;

typedef struct
{
  FpColour colour[FP_N_CELEBRATIONS];
  GArray  *entries; /* of FpSettingEntry: none says nothing, and none twice of the same */
  GArray  *kept;    /* of FpKeptEntry, likewise                              */
} FpSettings;

void            fp_settings_init  (FpSettings *self);
void            fp_settings_clear (FpSettings *self);
void            fp_settings_copy  (FpSettings *self, const FpSettings *from); /* @self: not yet made */
gboolean        fp_settings_equal (const FpSettings *a, const FpSettings *b); /* in whatever order */
FpSettingChange fp_settings_get   (const FpSettings *self, guint celebration, const char *id);
void            fp_settings_set   (FpSettings *self, guint celebration, const char *id, const FpSettingChange *change);
const char     *fp_settings_kept  (const FpSettings *self, const char *id); /* "" */
void            fp_settings_set_kept (FpSettings *self, const char *id, const char *where);
void            fp_settings_forget (FpSettings *self, guint celebration);
/* Drops what is said of things that are in neither list. */
void            fp_settings_keep_only (FpSettings *self, const FpItemList *survey, const FpItemList *items);
gboolean        fp_settings_check (const FpSettings *self, const FpItemList *survey, const FpItemList *items,
                                   GError **error);
/* Of the parts one by one; each begins with the id. */
gboolean        fp_setting_check  (FpCelebration one, const char *id, const FpSettingChange *change, GError **error);
gboolean        fp_colour_check   (FpCelebration one, FpColour colour, GError **error);
gboolean        fp_kept_check     (const char *id, const char *where, GError **error);

/* --- an alternative --- */

typedef struct
{
  char   *id;    /* of a thing of the survey                              */
  FpFate  fate;  /* moved or removed: what has no entry is kept           */
  FpPlace moved;
  char   *on;    /* NULL: the floor */
} FpFateEntry;

struct _FpAlternative
{
  gatomicrefcount ref_count;
  char           *id, *name, *note;
  gboolean        has_facing; /* else the brief's                               */
  FpFacing        facing;
  FpItemList     *items;
  GArray         *fates; /* of FpFateEntry, in the order in which they were decided */
  FpSettings      settings;
};

FpAlternative *fp_alternative_new   (const char *id, const char *name, const char *note);
FpAlternative *fp_alternative_copy  (const FpAlternative *self); /* one owner; shares the things */
FpAlternative *fp_alternative_ref   (const FpAlternative *self);
void           fp_alternative_unref (FpAlternative *self);
void           fp_alternative_set_text  (FpAlternative *self, const char *name, const char *note);
void           fp_alternative_set_facing (FpAlternative *self, const FpFacing *facing); /* NULL: the brief's */
void           fp_alternative_set_items (FpAlternative *self, FpItemList *items); /* takes it */
void           fp_alternative_set_fate  (FpAlternative *self, const char *id, FpFate fate, const FpPlace *moved,
                                         const char *on);
const FpFateEntry *fp_alternative_fate_entry (const FpAlternative *self, const char *id); /* NULL: kept */
gboolean       fp_alternative_equal (const FpAlternative *a, const FpAlternative *b);
/* What a thing of the survey stands on in this alternative; NULL: the floor. */
const char    *fp_alternative_support (const FpAlternative *self, const FpItem *survey_item);

/**
 * fp_alternative_let_fall:
 * @survey: the survey over which it stands
 *
 * Takes away each thing whose support neither it nor the survey holds (any more),
 * and what stands on that in turn: its own things are left out, those of the
 * survey become removed.
 */
void           fp_alternative_let_fall (FpAlternative *self, const FpItemList *survey);

/* --- the brief --- */

typedef struct
{
  gatomicrefcount ref_count;
  FpBrief         brief; /* owns its texts, none of them NULL */
} FpBriefPart;

gboolean     fp_brief_check (const FpBrief *brief, GError **error);
FpBriefPart *fp_brief_part_new   (const FpBrief *brief);
FpBriefPart *fp_brief_part_ref   (const FpBriefPart *self);
void         fp_brief_part_unref (FpBriefPart *self);
gboolean     fp_brief_equal (const FpBrief *a, const FpBrief *b);

/* --- the works --- */

gboolean fp_smalls_check (const double *number, GError **error); /* FpWorks.small, likewise below */
gboolean fp_smalls_equal (const double *a, const double *b);

typedef struct
{
  gatomicrefcount ref_count;
  FpWorks         works; /* owns its texts and rates */
} FpWorksPart;

FpWorksPart *fp_works_part_new   (const FpWorks *works); /* of works that are as they must be */
FpWorksPart *fp_works_part_ref   (FpWorksPart *self);    /* (nullable) */
void         fp_works_part_unref (FpWorksPart *self);    /* (nullable) */

/* --- the norms --- */

typedef struct
{
  gatomicrefcount ref_count;
  GStringChunk   *texts; /* every text of them */
  FpNorms         norms;
} FpNormsPart;

FpNormsPart *fp_norms_part_new   (const FpNorms *norms); /* of norms that are as they must be */
FpNormsPart *fp_norms_part_ref   (FpNormsPart *self);    /* (nullable) */
void         fp_norms_part_unref (FpNormsPart *self);    /* (nullable) */

/* --- the project --- */

struct _FpProject
{
  gatomicrefcount ref_count;
  FpBriefPart    *brief;
  FpItemList     *survey;
  guint           n_alternatives;
  FpAlternative **alternative;
  gboolean        has_page;
  FpPageSetup     page;
  FpWorksPart    *works; /* NULL: the usual */
  FpNormsPart    *norms; /* NULL: the usual */
  FpReckoning     reckoning;
};

/* Shares every part of @self; has room for @spare more alternatives. */
FpProject *fp_project_copy (const FpProject *self, guint spare);
/* @self if it is a project, else NULL with an error, and @self is released. */
FpProject *fp_project_checked (FpProject *self, GError **error);
void       fp_project_take_alternative (FpProject *self, guint i, FpAlternative *alternative);

/* Of one alternative over the survey. */
gboolean   fp_alternative_check (const FpAlternative *self, const FpItemList *survey, GError **error);
gboolean   fp_survey_check (const FpItemList *survey, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpItemList, fp_item_list_unref)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FpAlternative, fp_alternative_unref)

G_END_DECLS
