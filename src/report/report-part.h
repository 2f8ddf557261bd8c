/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * report-part: what the parts of the first-article document (report-part-*.c) share: in which languages and
 * number form they speak.
 *
 * While parts are written the words of the first language are in use on the thread.  A label of two languages
 * is "Label / Beschriftung"; a sentence stands twice, the one language beside the other.
 */

#pragma once

#include "report-content.h"
#include "report-document.h"
#include "report-language.h"

G_BEGIN_DECLS

typedef struct {
  const TmReportContent *content;
  const TmJob *job;
  const TmReportForm *form;
  TmReportDocument *document;
  TmWords words[2];
  guint n_words;
  gboolean together; /* many pieces: each characteristic stands for all of them, and those not in are named */
  GArray *plotted;   /* guint: lines of the content that have a band plot */
  guint n_plottable; /* that could have one */
  GPtrArray *drawn;  /* const TmDrawing *: have a page */
  TmReportProgress progress;
  gpointer data;
  gboolean cancelled;
} TmParts;

/* Each part, in the order of the document. */
void tm_part_cover (TmParts *parts);
void tm_part_supplies (TmParts *parts); /* only where there are materials, processes, tests or sub-parts */
void tm_part_drawing (TmParts *parts);  /* only where the job keeps drawings */
void tm_part_characteristics (TmParts *parts);
void tm_part_plots (TmParts *parts); /* only when a bore was measured */
void tm_part_batch (TmParts *parts); /* only where a feature was measured on ten pieces or more */
void tm_part_fit (TmParts *parts);   /* only where a mate was measured or a clearance is wanted */
void tm_part_pins (TmParts *parts);  /* only when there are pin trials */
void tm_part_gauges (TmParts *parts);
void tm_part_rules (TmParts *parts);
void tm_part_signatures (TmParts *parts);
/* Only where the shop's template has some. */
void tm_part_statements_after_cover (TmParts *parts);
void tm_part_statements_before_signatures (TmParts *parts);

/* A label, of a text that is marked for translation (@context NULL: with N_ ()); the document's. */
const char *tm_part_label (TmParts *parts, const char *context, const char *text);

/* Makes a text in the language in use; free it.  NULL: nothing to say. */
typedef char *(*TmSentence) (gconstpointer data);
/* The sentence in each language, on lines of their own; free it. */
char *tm_part_both (TmParts *parts, TmSentence sentence, gconstpointer data) G_GNUC_WARN_UNUSED_RESULT;
/* The same as a paragraph, the languages beside each other. */
void tm_part_say (TmParts *parts, TmSentence sentence, gconstpointer data, gboolean dim);
/* A sentence that is one text. */
void tm_part_say_text (TmParts *parts, const char *text, gboolean dim);

/* A cell whose words are those of each language, joined as a label's. */
void tm_part_word_cell (TmParts *parts, const char *context, const char *word);
/* A fact; left out where it is not known. */
void tm_part_fact (TmParts *parts, const char *label, const char *value);
void tm_part_number_cell (TmParts *parts, double value, guint decimals);
void tm_part_quantity_cell (TmParts *parts, const TmQuantity *quantity, TmUnit unit);
void tm_part_date_cell (TmParts *parts, const char *date);
/* The columns' titles are marked for translation; they are translated here. */
void tm_part_table (TmParts *parts, const TmReportColumn *columns, guint n);
/* A section whose title is marked for translation. */
void tm_part_section (TmParts *parts, const char *title, const char *name, gboolean starts_page);

/* "plot-12": where the band plot of a line stands; free it.  NULL where it has none. */
char *tm_part_plot_name (const TmParts *parts, guint line) G_GNUC_WARN_UNUSED_RESULT;

/* "drawing-1": where the first balloon of a place stands; free it.  NULL where there is none. */
char *tm_part_drawing_name (const TmParts *parts, const TmFeature *feature,
                            guint place) G_GNUC_WARN_UNUSED_RESULT;

/* FALSE when the work is cancelled: stop then. */
gboolean tm_part_goes_on (TmParts *parts, double fraction);

G_END_DECLS
