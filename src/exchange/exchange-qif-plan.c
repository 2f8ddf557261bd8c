/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The ids of a QIF document: each number stands once, and the root states the largest, so that all are
 * given out before the first byte is written.
 */

#include <glib/gi18n-lib.h>

#include "exchange-error.h"
#include "exchange-qif-private.h"

/* What may stand between a balloon and the number of a place. */
static const char separators[] = "./-_";

static guint
take (TmQif *qif, guint n)
{
  guint first = qif->next;

  qif->next += n;
  return first;
}

/* Datums. */

static guint
find_text (const GPtrArray *texts, const char *text, gsize length)
{
  for (guint i = 0; i < texts->len; i++)
    {
      const char *one = g_ptr_array_index (texts, i);

      if (strncmp (one, text, length) == 0 && one[length] == '\0')
        return i + 1;
    }
  return 0;
}

/* The letters that @datums ("A B-C DⓂ") names; their order is that of their first naming. */
static void
note_datums (TmQif *qif, const char *datums)
{
  for (const char *at = datums; *at != '\0'; at++)
    if (g_ascii_isupper (*at) && find_text (qif->datums, at, 1) == 0)
      g_ptr_array_add (qif->datums, g_strndup (at, 1));
}

/* The schema has frames of at most five; a longer one stands in the text of the requirement only. */
static gboolean
has_frame (const TmQifFeature *feature)
{
  const char *datums = feature->feature->datums;
  guint n = *datums != '\0';

  for (const char *at = datums; *at != '\0'; at++)
    n += *at == ' ';
  return feature->type->takes_datums && n > 0 && n <= TM_QIF_MAX_DATUMS;
}

static void
note_frame (TmQif *qif, TmQifFeature *feature)
{
  const char *datums = feature->feature->datums;

  if (!has_frame (feature))
    return;
  feature->frame = find_text (qif->frames, datums, strlen (datums));
  if (feature->frame != 0)
    return;
  note_datums (qif, datums);
  g_ptr_array_add (qif->frames, (gpointer)datums);
  feature->frame = qif->frames->len;
}

/* Designators. */

/* A token of XML Schema: no blanks around, single ones inside. */
static char *
make_token (const char *text)
{
  g_autofree char *clean = tm_qif_clean (text);
  GString *out = g_string_new (NULL);

  for (const char *at = clean; *at != '\0'; at++)
    {
      gboolean blank = strchr (" \t\r\n", *at) != NULL;

      if (blank && (out->len == 0 || out->str[out->len - 1] == ' '))
        continue;
      g_string_append_c (out, blank ? ' ' : *at);
    }
  if (out->len > 0 && out->str[out->len - 1] == ' ')
    g_string_truncate (out, out->len - 1);
  return g_string_free (out, FALSE);
}

static char *
make_designator (const TmFeature *feature, guint place, char separator)
{
  g_autofree char *balloon = make_token (feature->balloon);

  if (feature->places <= 1)
    return g_steal_pointer (&balloon);
  return g_strdup_printf ("%s%c%u", balloon, separator, place);
}

static gboolean
is_free (GHashTable *taken, const TmFeature *feature, char separator)
{
  for (guint place = 1; place <= feature->places; place++)
    {
      g_autofree char *designator = make_designator (feature, place, separator);

      if (*designator == '\0' || g_hash_table_contains (taken, designator))
        return FALSE;
    }
  return TRUE;
}

/* The balloons of features with one place go first: they stand as they are. */
static gboolean
choose_separator (GHashTable *taken, TmQifFeature *feature, const char *place, GError **error)
{
  g_autofree char *where = NULL;

  for (const char *separator = separators; *separator != '\0'; separator++)
    {
      if (!is_free (taken, feature->feature, *separator))
        continue;
      feature->separator = *separator;
      for (guint i = 1; i <= feature->feature->places; i++)
        g_hash_table_add (taken, make_designator (feature->feature, i, *separator));
      return TRUE;
    }
  where = g_strdup_printf (_ ("feature %s"), feature->feature->balloon);
  tm_exchange_fail (error, TM_EXCHANGE_ERROR_DISAGREES, place, where,
                    _ ("another balloon is the same once blanks and places are written; give one of them "
                       "another number"));
  return FALSE;
}

static gboolean
choose_separators (TmQif *qif, GError **error)
{
  g_autoptr (GHashTable) taken = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint pass = 0; pass < 2; pass++)
    for (guint i = 0; i < qif->features->len; i++)
      {
        TmQifFeature *feature = &g_array_index (qif->features, TmQifFeature, i);

        if ((feature->feature->places > 1) == (pass == 1)
            && !choose_separator (taken, feature, qif->place, error))
          return FALSE;
      }
  return TRUE;
}

char *
tm_qif_designator (const TmQifFeature *feature, guint place)
{
  return make_designator (feature->feature, place, feature->separator);
}

/* Results. */

gboolean
tm_qif_is_shown (const TmJob *job, guint piece, const TmFeature *feature, guint place)
{
  const TmPiece *of = g_ptr_array_index (job->pieces, piece);

  return tm_job_feature_is_due (job, feature, of, piece)
         || tm_job_readings_at (job, of, feature, place) != NULL
         || tm_job_pin_trials_at (job, of, feature, place) != NULL;
}

gboolean
tm_qif_is_first_article (const TmJob *job, guint index)
{
  const TmPiece *piece = g_ptr_array_index (job->pieces, index);

  return tm_job_has_first_article (job) ? piece->first_article : index == 0;
}

gboolean
tm_qif_concerns (const TmNonconformance *event, const TmPiece *piece)
{
  return *event->piece == '\0' || g_str_equal (event->piece, piece->serial);
}

/* Results and events of one piece. */
static guint
count_rows (const TmQif *qif, guint piece)
{
  const TmJob *job = qif->job;
  guint n = 0;

  for (guint f = 0; f < job->features->len; f++)
    {
      const TmFeature *feature = g_ptr_array_index (job->features, f);

      for (guint place = 1; place <= feature->places; place++)
        n += tm_qif_is_shown (job, piece, feature, place);
    }
  for (guint i = 0; i < job->nonconformances->len; i++)
    n += tm_qif_concerns (g_ptr_array_index (job->nonconformances, i),
                          g_ptr_array_index (job->pieces, piece));
  return n;
}

static void
add_feature (TmQif *qif, const TmFeature *feature)
{
  TmQifFeature one = { .feature = feature, .type = tm_qif_type_of (feature) };

  note_frame (qif, &one);
  if (one.type->shape == TM_QIF_THREAD)
    one.thread = ++qif->n_threads;
  qif->n_items += feature->places;
  g_array_append_val (qif->features, one);
  g_hash_table_insert (qif->by_balloon, (gpointer)feature->balloon, GUINT_TO_POINTER (qif->features->len));
}

static void
number_features (TmQif *qif)
{
  for (guint i = 0; i < qif->features->len; i++)
    {
      TmQifFeature *feature = &g_array_index (qif->features, TmQifFeature, i);

      feature->definition = take (qif, 1);
      feature->nominal = take (qif, 1);
      feature->first_item = take (qif, feature->feature->places);
      if (feature->frame != 0)
        feature->frame += qif->frame - 1;
      if (feature->thread != 0)
        feature->thread += qif->thread - 1;
    }
}

static void
number_all (TmQif *qif)
{
  const TmJob *job = qif->job;

  qif->next = 1;
  qif->standard = take (qif, 1);
  qif->software = take (qif, 1);
  qif->datum = take (qif, qif->datums->len);
  qif->frame = take (qif, qif->frames->len);
  qif->gauge = take (qif, job->gauges->len);
  qif->thread = take (qif, qif->n_threads);
  qif->part = take (qif, 1);
  qif->external = take (qif, 1);
  qif->drawing = take (qif, 1);
  number_features (qif);
  qif->component = take (qif, job->pieces->len);
  qif->result = take (qif, job->pieces->len);
  qif->study = take (qif, 1);
  qif->study_result = take (qif, 1);
  qif->id_max = qif->next - 1;
  for (guint p = 0; p < job->pieces->len; p++)
    qif->id_max += count_rows (qif, p);
}

gboolean
tm_qif_plan (TmQif *qif, GError **error)
{
  const TmJob *job = qif->job;

  qif->features = g_array_new (FALSE, TRUE, sizeof (TmQifFeature));
  qif->by_balloon = g_hash_table_new (g_str_hash, g_str_equal);
  qif->datums = g_ptr_array_new_with_free_func (g_free);
  qif->frames = g_ptr_array_new ();
  qif->pieces = g_array_new (FALSE, TRUE, sizeof (TmQifPiece));
  g_array_set_size (qif->pieces, job->pieces->len);
  for (guint i = 0; i < job->features->len; i++)
    add_feature (qif, g_ptr_array_index (job->features, i));
  if (!choose_separators (qif, error))
    return FALSE;
  number_all (qif);
  return TRUE;
}

void
tm_qif_plan_clear (TmQif *qif)
{
  g_array_unref (qif->features);
  g_hash_table_unref (qif->by_balloon);
  g_ptr_array_unref (qif->datums);
  g_ptr_array_unref (qif->frames);
  g_array_unref (qif->pieces);
}

const TmQifFeature *
tm_qif_feature (const TmQif *qif, const TmFeature *feature)
{
  guint index = GPOINTER_TO_UINT (g_hash_table_lookup (qif->by_balloon, feature->balloon));

  return index > 0 ? &g_array_index (qif->features, TmQifFeature, index - 1) : NULL;
}
