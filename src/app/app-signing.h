/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * app-signing: signing a report, off the main loop: a copy of the record is read and laid out, so that the
 * person sees what is signed; then pages and workbook are made of that copy with the signature in it, and the
 * book keeps their bytes.  The signature itself joins the record with tm_edit_add_signature() after that:
 * bytes that no signature names do no harm.
 */

#pragma once

#include <gtk/gtk.h>

#include "app-document.h"
#include "app-report-form.h"

G_BEGIN_DECLS

/* What is about to be signed.  Shared with the thread that signs: only read after it was prepared. */
typedef struct {
  char *book_path;
  char *id;
  TmJobForm form;
  TmJob *job;  /* the copy; the thread's while it signs */
  gint64 mark; /* the newest fact of the book before the copy was read */
  char *digest;
  char *namesake; /* another job with the same report identifier, or NULL */
  guint n_in, n_out, n_too_close, n_not_measured;
  guint n_pages;
  GPtrArray *missing; /* char *: a line for each thing that is missing, the signature apart */
  char *unprintable;  /* a line on signs that the pages would show as boxes, or NULL */
} TmSigning;

TmSigning *tm_signing_ref (TmSigning *signing);
void tm_signing_unref (TmSigning *signing);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (TmSigning, tm_signing_unref)

/* On the main loop.  @signing is NULL with @error, or without when it was cancelled; take a reference to keep
 * it. */
typedef void (*TmSigningPrepared) (GtkWidget *parent, TmSigning *signing, const GError *error);
void tm_signing_prepare (GtkWidget *parent, TmDocument *document, TmSigningPrepared done);

/* On the main loop.  @row, whose texts live until it returns, is complete: the signature to be kept; NULL
 * with
 * @error, or without when it was cancelled. */
typedef void (*TmSigningMade) (GtkWidget *parent, const TmSignature *row, const GError *error);
void tm_signing_make (GtkWidget *parent, TmSigning *signing, const char *by, const char *role,
                      TmSigningMade done);

G_END_DECLS
