/* SPDX-License-Identifier: GPL-3.0-or-later */
/* window-private.h - what the files of the window share */
#pragma once

#include "alternatives-strip.h"
#include "board-view.h"
#include "compare-page.h"
#include "findings-list.h"
#include "inspector.h"
#include "keeper.h"
#include "latest.h"
#include "remembered.h"
#include "things-list.h"
#include "window.h"

#include "footpace/remedy.h"

G_BEGIN_DECLS

struct _FpWindow
{
  GtkApplicationWindow parent_instance;
  FpDocument *document;
  FpKeeper   *keeper;        /* of the document; NULL without one            */
  GFileMonitor *monitor;     /* of the document's file; NULL without one     */
  char       *monitored;     /* its path                                     */
  guint       file_check;    /* source that looks at a file that has changed */
  gboolean    asking_file;   /* about the file that has changed              */
  gboolean    closing;       /* asked and answered                           */
  guint       notice_over;   /* source that puts away a message that asks for nothing */
  char       *notice_path;   /* what the message is about; NULL: no file     */
  FpRemembered remembered;
  guint       remember;      /* source that remembers how the window looks, which has changed */
  FpLatest   *settling;      /* of all findings; NULL: nobody asked yet       */
  gboolean    is_settling;
  FpLatest   *remedies;      /* of the chosen finding; NULL: none looked for yet */
  const FpFinding *looked_for; /* whose remedy is being looked for, only to be compared; NULL: none's */
  gboolean    follows;       /* to its field, as soon as that is found       */
  guint       n_remedies;    /* that are offered                             */
  FpRemedy    remedy[FP_FINDINGS_OFFERS];
  char       *remedy_label[FP_FINDINGS_OFFERS]; /* as the edit is called     */
  gboolean    pointing;      /* the chosen finding is what the board is about: nothing else was chosen since */
  gboolean    settled;       /* its mark went away because it was            */
  gboolean    changed;       /* something was changed since it was chosen    */
  GdkFrameClock *first_clock; /* until all has been painted for the first time; NULL */
  gulong      painted;       /* what waits for that                          */
  guint       rest;          /* source that shows what is not in the first frame */
  gulong      laid_out;      /* what waits for the first layout              */
  gboolean    arranged;      /* the side stands as it was left: what moves it now is a hand */

  GtkWidget  *title, *subtitle;
  GtkWidget  *pages, *board, *side, *side_paned, *things_or_thing, *things, *wide_list, *wide_things, *wide_button,
             *board_paned, *inspector, *findings, *alternatives, *compare;
  GtkWidget  *notice, *notice_box, *notice_icon, *notice_text, *notice_folder;
  GtkWidget  *readout;
  GtkWidget  *undo_button, *redo_button, *add_button, *arrange_button, *main_button, *order_button, *save_button, *compare_button;
  GtkWidget  *sight_button, *sight_box, *sight_bar; /* bar: NULL: not shown yet */
  GtkWidget  *sun_button, *sun_box, *sun_bar;       /* likewise                 */
  GtkWidget  *show_button, *show_list, *pew_check, *section_at, *across_at;
  GMenuModel *main_menu, *arrange_menu, *order_menu;
  GtkWidget  *compare_page;  /* in `compare`; NULL: not shown yet            */
  GtkWidget  *report;        /* (weak): the window of the report; NULL: not open */
  GtkWidget  *norms;         /* (weak): that of the norms, likewise              */
  GtkWidget  *capacity;      /* (weak): that of the capacity, likewise           */
  GtkWidget  *schedules;     /* (weak): that of the schedules, likewise          */
  FpPoint     clicked;       /* on the plan, last                                */
  gboolean    was_clicked;
  int         led;           /* the place of Sight that led the view from the pew last; -1 */
  GtkWidget  *pew;           /* (weak): that of the view from the pew, likewise */
  GtkWidget  *setting;       /* (weak): where settings are decided, likewise     */
  GtkWidget  *celebration;   /* that the board shows the church set for          */
  gboolean    telling_celebration;
  guint       told_celebration;
  GtkWidget  *add_popover, *add_find, *add_list, *recent_list, *start;
};

/* --- window.c --- */
/* As fp_window_set_document() does it all: the board, of which a drawing was begun (nullable; taken), and then the rest. */
void fp_window_set_board  (FpWindow *self, FpDocument *document, FpDraft *begun);
void fp_window_set_beside (FpWindow *self);

/* --- window-begin.c --- */
void fp_window_end_beginning (FpWindow *self); /* what was to come after the first frame does not come, or has come */

/* --- window-actions.c --- */
void fp_window_class_add_actions (GtkWidgetClass *widget_class);
/* The one place that says what can be done now. */
void fp_window_update_actions (FpWindow *self);

/* --- window-arrange.c --- */
void fp_window_class_add_arrange_actions (GtkWidgetClass *widget_class);
void fp_window_class_add_furnish_actions (GtkWidgetClass *widget_class);
void fp_window_update_arrange (FpWindow *self); /* what of it can be done now */

/* --- window-survey.c --- */
void fp_window_class_add_survey_actions (GtkWidgetClass *widget_class);
void fp_window_update_survey (FpWindow *self);

/* --- window-add.c --- */
void fp_window_add_add_list (FpWindow *self);
void fp_window_open_add_list (FpWindow *self); /* ready for typing */

/* --- window-show.c --- */
void     fp_window_class_bind_show (GtkWidgetClass *widget_class);
void     fp_window_tell_shown (FpWindow *self); /* what the board shows now */
void     fp_window_add_show (FpWindow *self); /* after what was remembered is known */

/* --- window-setting.c --- */
void     fp_window_class_add_setting (GtkWidgetClass *widget_class);
void     fp_window_add_setting (FpWindow *self);
void     fp_window_tell_celebration (FpWindow *self); /* for which the church is set now */

/* --- window-section.c --- */
void     fp_window_class_bind_sections (GtkWidgetClass *widget_class);
void     fp_window_add_sections (FpWindow *self);
void     fp_window_tell_sections (FpWindow *self); /* where they are cut now */

/* --- window-notice.c --- */
void     fp_window_class_bind_notice (GtkWidgetClass *widget_class);
void     fp_window_tell_amiss (FpWindow *self, const GError *error); /* why nothing came of an edit */
/* FALSE: there was none. */
gboolean fp_window_put_notice_away (FpWindow *self);

/* --- window-remedy.c --- */
void     fp_window_class_bind_remedy (GtkWidgetClass *widget_class);
void     fp_window_forget_remedy (FpWindow *self); /* something was changed */
void     fp_window_look_again (FpWindow *self);    /* findings have come: of what was changed, the chosen one is shown anew */
void     fp_window_stop_pointing (FpWindow *self); /* something else was chosen */
void     fp_window_drop_remedies (FpWindow *self); /* none is looked for any more */

/* --- window-settle.c --- */
void     fp_window_class_add_settle (GtkWidgetClass *widget_class);
void     fp_window_update_settle (FpWindow *self); /* whether it can be asked for now */
void     fp_window_drop_settling (FpWindow *self);

/* --- window-pew.c --- */
void     fp_window_class_add_pew_action (GtkWidgetClass *widget_class);
void     fp_window_add_pew (FpWindow *self); /* clicks on the plan lead it */
/* So does what is chosen in Sight; @anew: even where the place is the one that led it last. */
void     fp_window_lead_pew (FpWindow *self, gboolean anew);

/* --- window-side.c --- */
void     fp_window_arrange  (FpWindow *self); /* as it was left */
void     fp_window_remember (FpWindow *self);
void     fp_window_remember_soon (FpWindow *self); /* a crash must not cost it */
void     fp_window_forget_soon (FpWindow *self);   /* the window goes */
/* What the board showed of the document when it was open last. */
void     fp_window_recall_board (FpWindow *self, gboolean recovered);
/* What stands over the findings: the chosen thing, or the list of things. */
void     fp_window_show_thing (FpWindow *self, gboolean thing);
void     fp_window_class_add_list_actions (GtkWidgetClass *widget_class);
/* The row of that thing in whichever list is on show. */
void     fp_window_focus_list (FpWindow *self, const char *id);

/* --- window-sight.c --- */
void     fp_window_class_add_sight (GtkWidgetClass *widget_class);
/* A place of the plan was clicked; FALSE: Sight is not shown. */
gboolean fp_window_choose_sight_at (FpWindow *self, FpPoint at);
/* What Sight has chosen, and the people among whom its place is, borrowed; FALSE: it is not shown. */
gboolean fp_window_sight_look (FpWindow *self, FpSightLook *look, const FpPeople **people);
/* Shows Sight, and in it what a finding is about; FALSE: it is about nothing that is seen. */
gboolean fp_window_show_finding_in_sight (FpWindow *self, const FpShown *shown);

/* --- window-sun.c --- */
void     fp_window_class_add_sun (GtkWidgetClass *widget_class);

/* --- window-file.c --- */
void     fp_window_class_add_file_actions (GtkWidgetClass *widget_class);
void     fp_window_add_recent  (FpWindow *self);
gboolean fp_window_may_close (FpWindow *self); /* FALSE: it asks first */
void     fp_window_save_as   (FpWindow *self);
/* The window of this program that has the file; NULL. */
FpWindow *fp_window_with_file   (const char *path);
/* This window while nothing is open in it, else a new one. */
FpWindow *fp_window_for_another (FpWindow *self);

/* --- window-keeping.c --- */
/* After another document was set: keeps its unsaved changes, and watches its file. */
void     fp_window_keep      (FpWindow *self);
void     fp_window_keep_off  (FpWindow *self);
/* The document may have another file now. */
void     fp_window_watch_file (FpWindow *self);
/* Asks what to do about a file that someone else has written; @saving: because it was to be saved. */
void     fp_window_ask_changed (FpWindow *self, gboolean saving);

G_END_DECLS
