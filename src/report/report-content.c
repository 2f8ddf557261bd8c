/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "report-content.h"

#include "report-gaps.h"
#include "report-signed.h"

static void
free_line_cb (gpointer data)
{
  TmReportLine *line = data;

  tm_judgement_clear (&line->judgement);
  if (line->first != NULL)
    tm_first_result_clear (line->first);
  g_free (line->first);
  g_free (line);
}

static void
count_line (TmReportContent *content, const TmReportLine *line)
{
  switch (line->judgement.verdict)
    {
    case TM_VERDICT_IN:
      content->n_in++;
      break;
    case TM_VERDICT_OUT:
      content->n_out++;
      break;
    case TM_VERDICT_TOO_CLOSE:
      content->n_too_close++;
      break;
    case TM_VERDICT_NOT_MEASURED:
    case TM_N_VERDICTS:
    default:
      content->n_not_measured++;
      break;
    }
}

static TmFirstResult *
find_first (const TmJob *job, const TmReportLine *line)
{
  TmFirstResult found = { 0 };

  return tm_first_result (job, line->piece, line->feature, line->place, &found)
             ? g_memdup2 (&found, sizeof found)
             : NULL;
}

static void
add_line (TmReportContent *content, const TmPiece *piece, const TmFeature *feature, guint place)
{
  TmReportLine *line = g_new0 (TmReportLine, 1);

  line->feature = feature;
  line->piece = piece;
  line->place = place;
  tm_judge (content->job, piece, feature, place, &line->judgement);
  line->nonconformance = tm_job_nonconformance_at (content->job, piece, feature, place);
  line->first = find_first (content->job, line);
  g_ptr_array_add (content->lines, line);
  count_line (content, line);
}

/* A first article is measured whole; of other pieces only what their plan asks for, or what was
 * read all the same. */
static gboolean
belongs (const TmJob *job, const TmPiece *piece, guint index, const TmFeature *feature, guint place)
{
  return piece->first_article || tm_job_feature_is_due (job, feature, piece, index)
         || tm_job_readings_at (job, piece, feature, place) != NULL
         || tm_job_pin_trials_at (job, piece, feature, place) != NULL;
}

static void
add_lines (TmReportContent *content)
{
  const TmJob *job = content->job;
  const gboolean marked = tm_job_has_first_article (job);

  for (guint p = 0; p < job->pieces->len; p++)
    {
      const TmPiece *piece = g_ptr_array_index (job->pieces, p);
      if (marked && !piece->first_article)
        continue;
      for (guint f = 0; f < job->features->len; f++)
        {
          const TmFeature *feature = g_ptr_array_index (job->features, f);
          if (!tm_job_feature_is_asked (job, feature))
            continue;
          for (guint place = 1; place <= feature->places; place++)
            if (belongs (job, piece, p, feature, place))
              add_line (content, piece, feature, place);
        }
    }
}

static void
add_referred (TmReportContent *content)
{
  for (guint i = 0; i < content->job->features->len; i++)
    {
      TmFeature *feature = g_ptr_array_index (content->job->features, i);

      if (!tm_job_feature_is_asked (content->job, feature))
        g_ptr_array_add (content->referred, feature);
    }
}

typedef struct {
  TmReportContent *content;
  GHashTable *seen; /* gauges */
} GaugeCollection;

static void
collect_tag (GaugeCollection *collection, const char *tag)
{
  TmGauge *gauge = tm_job_find_gauge (collection->content->job, tag);

  if (gauge != NULL && g_hash_table_add (collection->seen, gauge))
    g_ptr_array_add (collection->content->gauges, gauge);
}

static void
collect_tag_cb (const char *tag, const TmReading *reading, gpointer data)
{
  collect_tag (data, tag);
}

static void
add_gauges (TmReportContent *content)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (NULL, NULL);
  GaugeCollection collection = { content, seen };

  for (guint i = 0; i < content->job->readings->len; i++)
    tm_report_each_tag (content->job, g_ptr_array_index (content->job->readings, i), collect_tag_cb,
                        &collection);
  for (guint i = 0; i < content->job->pin_trials->len; i++)
    collect_tag (&collection, ((const TmPinTrial *)g_ptr_array_index (content->job->pin_trials, i))->gauge);
}

TmReportContent *
tm_report_content_new (const TmJob *job)
{
  TmReportContent *content;

  g_return_val_if_fail (job != NULL, NULL);
  content = g_new0 (TmReportContent, 1);
  content->job = job;
  content->lines = g_ptr_array_new_with_free_func (free_line_cb);
  content->gaps = g_ptr_array_new_with_free_func ((GDestroyNotify)tm_gap_free);
  content->gauges = g_ptr_array_new ();
  content->referred = g_ptr_array_new ();
  add_lines (content);
  add_referred (content);
  add_gauges (content);
  tm_report_find_gaps (content);
  tm_report_find_signed_gaps (content);
  return content;
}

void
tm_report_content_free (TmReportContent *content)
{
  if (content == NULL)
    return;
  g_ptr_array_unref (content->lines);
  g_ptr_array_unref (content->gaps);
  g_ptr_array_unref (content->gauges);
  g_ptr_array_unref (content->referred);
  g_free (content->digest);
  g_free (content->namesake);
  tm_template_free (content->template);
  g_free (content);
}
