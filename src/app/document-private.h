/* SPDX-License-Identifier: GPL-3.0-or-later */
/* document-private.h - what the files of a document share */
#pragma once

#include "checker.h"
#include "document.h"

G_BEGIN_DECLS

struct _FpDocument
{
  GObject     parent_instance;
  FpHistory  *history;
  char       *path, *digest;
  FpProject  *preview;
  const FpScene *scene;       /* owned; of the preview, else of the present    */
  const FpScene *base;        /* owned; of the present                         */
  guint       alternative;
  guint       celebration;    /* that it is set for; 0: all things stand       */
  GPtrArray  *chosen;         /* of ids, the last one first in mind; NULL at the end */
  FpChecker  *checker;
  gboolean    checked;        /* findings are wanted: what is shown is checked */
  FpFindings *findings, *sighted;
};

typedef enum
{
  FP_DOCUMENT_SCENE, FP_DOCUMENT_CHOSEN, FP_DOCUMENT_FINDINGS, FP_DOCUMENT_STATE, FP_DOCUMENT_N_SIGNALS
} FpDocumentSignal;

/* --- document.c --- */
void fp_document_emit (FpDocument *self, FpDocumentSignal which);

/* --- document-chosen.c --- */
void fp_document_forget_gone (FpDocument *self); /* what is no longer in the scene is no longer chosen */

G_END_DECLS
