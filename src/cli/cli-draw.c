/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * cli-draw: tenthmark-cli draw, the drawings of a job file and the balloons on them.
 */

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>

#include "cli-json.h"
#include "cli-lock.h"
#include "cli-verbs.h"
#include "exchange-job.h"
#include "report-drawing.h"

#define MOST_PAGES 10000u

/* What was asked for; texts are borrowed from the command line. */
typedef struct {
  const char *path;
  const char *add;    /* a file */
  const char *remove; /* a drawing's name */
  const char *name;
  const char *page;
  const char *sheet;
  const char *balloon;
  const char *place;
  const char *at; /* "x,y", shares of the page */
  const char *to;
  gboolean replace;
  gboolean json;
} Request;

static int
fail_no_drawing (const Request *request, const char *name)
{
  return tm_fail (_ ("%s: there is no drawing “%s”; tenthmark-cli draw with the job file alone names those "
                     "there are"),
                  request->path, name);
}

/* FALSE after an error line.  Nothing is opened yet: a pipe would wait for whoever fills it. */
static gboolean
is_readable (const char *path)
{
  GStatBuf facts;

  if (g_stat (path, &facts) != 0)
    tm_fail (_ ("%s: cannot be read (%s); check the name"), path, g_strerror (errno));
  else if (!S_ISREG (facts.st_mode))
    tm_fail (_ ("%s: is no file; name the drawing's file"), path);
  else if ((guint64)facts.st_size > tm_report_drawing_most ())
    tm_fail (_ ("%s: has more than %u MiB, the most of a drawing; save it smaller"), path,
             (guint)(tm_report_drawing_most () / (1024 * 1024)));
  else
    return TRUE;
  return FALSE;
}

/* The whole file; NULL after an error line. */
static GBytes *
read_file (const char *path)
{
  g_autoptr (GError) error = NULL;
  char *bytes = NULL;
  gsize length = 0;

  if (!is_readable (path))
    return NULL;
  if (g_file_get_contents (path, &bytes, &length, &error))
    return g_bytes_new_take (bytes, length);
  tm_fail (_ ("%s: cannot be read (%s); check the name"), path, error->message);
  return NULL;
}

/* 1 when it is not given; 0 after an error line. */
static guint
read_page (const Request *request)
{
  guint64 page = 1;

  if (request->page != NULL && !g_ascii_string_to_unsigned (request->page, 10, 1, MOST_PAGES, &page, NULL))
    {
      tm_fail (_ ("draw: --page “%s” is no page; write a whole number from 1"), request->page);
      return 0;
    }
  return (guint)page;
}

/* The file's name without folders and ending, unless one was given. */
static char *
choose_name (const Request *request)
{
  g_autofree char *base = NULL, *valid = NULL;
  char *dot;

  if (request->name != NULL)
    return g_strdup (request->name);
  base = g_path_get_basename (request->add);
  valid = g_utf8_make_valid (base, -1);
  dot = strrchr (valid, '.');
  if (dot != NULL && dot != valid)
    *dot = '\0';
  return g_steal_pointer (&valid);
}

/* Its sheet stays as it is unless another is given. */
static void
fill_drawing (const Request *request, TmJob *job, TmDrawing *drawing, GBytes *content, const char *media,
              guint page)
{
  g_autofree char *digest = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, content);

  if (request->sheet != NULL)
    drawing->sheet = tm_job_intern (job, request->sheet);
  drawing->media = tm_job_intern (job, media);
  drawing->page = page;
  drawing->digest = tm_job_intern (job, digest);
  g_clear_pointer (&drawing->content, g_bytes_unref);
  drawing->content = g_bytes_ref (content);
}

/* The drawing that is filled: a new one, or with --replace the one of that name.  NULL after an error line.
 */
static TmDrawing *
find_or_make_drawing (const Request *request, TmJob *job)
{
  g_autofree char *name = choose_name (request);
  TmDrawing *drawing = tm_job_find_drawing (job, name);

  if (drawing != NULL && request->replace)
    return drawing;
  if (drawing != NULL || request->replace)
    {
      if (drawing != NULL)
        tm_fail (_ ("%s: there is a drawing “%s” already; give another --name, or --replace it and keep its "
                    "balloons"),
                 request->path, name);
      else
        fail_no_drawing (request, name);
      return NULL;
    }
  drawing = tm_drawing_new ();
  drawing->name = tm_job_intern (job, name);
  if (tm_job_add_drawing (job, drawing) == TM_ADD_OK)
    return drawing;
  tm_drawing_free (drawing);
  tm_fail (_ ("%s: a drawing needs a name; give one with --name"), request->path);
  return NULL;
}

static int
add_drawing (const Request *request, TmJob *job)
{
  const guint page = read_page (request);
  g_autoptr (GBytes) content = page > 0 ? read_file (request->add) : NULL;
  g_autoptr (GError) error = NULL;
  TmDrawing *drawing;
  const char *media;

  if (content == NULL)
    return 2;
  media = tm_report_drawing_media (content, page, &error);
  if (media == NULL)
    return tm_fail ("%s: %s", request->add, error->message);
  drawing = find_or_make_drawing (request, job);
  if (drawing == NULL)
    return 2;
  fill_drawing (request, job, drawing, content, media, page);
  return 0;
}

static int
remove_drawing (const Request *request, TmJob *job)
{
  TmDrawing *drawing = tm_job_find_drawing (job, request->remove);

  if (drawing == NULL)
    return fail_no_drawing (request, request->remove);
  tm_job_remove_drawing (job, drawing);
  return 0;
}

/* -------- Balloons -------- */

/* "0.25,0.4"; FALSE after an error line. */
static gboolean
read_point (const char *option, const char *text, TmQuantity *x, TmQuantity *y)
{
  g_auto (GStrv) both = g_strsplit (text, ",", -1);

  if (g_strv_length (both) == 2 && tm_quantity_read (both[0], TM_UNIT_HARDNESS, x) == TM_READ_OK
      && tm_quantity_read (both[1], TM_UNIT_HARDNESS, y) == TM_READ_OK && x->count >= 0 && y->count >= 0
      && x->count <= tm_unit_counts (TM_UNIT_HARDNESS) && y->count <= tm_unit_counts (TM_UNIT_HARDNESS))
    return TRUE;
  tm_fail (_ ("draw: --%s “%s” is no point; write shares of the page's width and height, such as 0.25,0.4"),
           option, text);
  return FALSE;
}

/* The drawing that --name names, else the only one; NULL after an error line. */
static TmDrawing *
choose_drawing (const Request *request, TmJob *job)
{
  TmDrawing *drawing = request->name != NULL ? tm_job_find_drawing (job, request->name) : NULL;

  if (request->name == NULL && job->drawings->len == 1)
    drawing = g_ptr_array_index (job->drawings, 0);
  if (drawing != NULL)
    return drawing;
  if (request->name != NULL)
    fail_no_drawing (request, request->name);
  else
    tm_fail (_ ("%s: say with --name on which drawing the balloon goes"), request->path);
  return NULL;
}

/* 0, for all places, when it is not given; FALSE after an error line. */
static gboolean
read_place (const Request *request, const TmFeature *feature, guint *place)
{
  *place = 0;
  return request->place == NULL || tm_pick_place ("draw", feature, request->place, place);
}

static TmBalloonMark *
find_mark (const TmJob *job, const TmBalloonMark *like)
{
  for (guint i = 0; i < job->balloon_marks->len; i++)
    {
      TmBalloonMark *mark = g_ptr_array_index (job->balloon_marks, i);

      if (mark->place == like->place && g_str_equal (mark->drawing, like->drawing)
          && g_str_equal (mark->feature, like->feature))
        return mark;
    }
  return NULL;
}

/* A balloon that is there already is moved. */
static int
put_balloon (const Request *request, TmJob *job)
{
  TmBalloonMark *mark = tm_balloon_mark_new (), *before;
  const TmDrawing *drawing = choose_drawing (request, job);
  TmFeature *feature = NULL;

  if (drawing != NULL && tm_pick_feature (job, request->path, request->balloon, &feature)
      && read_place (request, feature, &mark->place) && read_point ("at", request->at, &mark->x, &mark->y)
      && (request->to == NULL || read_point ("to", request->to, &mark->to_x, &mark->to_y)))
    {
      mark->drawing = drawing->name;
      mark->feature = feature->balloon;
      before = find_mark (job, mark);
      if (before != NULL)
        tm_job_remove_balloon_mark (job, before);
      if (tm_job_add_balloon_mark (job, mark) == TM_ADD_OK)
        return 0;
      tm_fail (_ ("%s: feature %s has no place %u; it has %u"), request->path, feature->balloon, mark->place,
               feature->places);
    }
  tm_balloon_mark_free (mark);
  return 2;
}

/* -------- What there is -------- */

static guint
count_balloons (const TmJob *job, const TmDrawing *drawing)
{
  guint n = 0;

  for (guint i = 0; i < job->balloon_marks->len; i++)
    {
      const TmBalloonMark *mark = g_ptr_array_index (job->balloon_marks, i);

      n += g_str_equal (mark->drawing, drawing->name);
    }
  return n;
}

static void
print_drawing (yajl_gen gen, const TmJob *job, const TmDrawing *drawing)
{
  const guint n = count_balloons (job, drawing);

  if (gen == NULL)
    {
      printf (ngettext ("%s: %s, page %u, %u balloon\n", "%s: %s, page %u, %u balloons\n", n), drawing->name,
              drawing->media, drawing->page, n);
      return;
    }
  yajl_gen_map_open (gen);
  tm_print_text (gen, "name", drawing->name);
  tm_print_text (gen, "media", drawing->media);
  tm_print_integer (gen, "page", drawing->page);
  tm_print_text (gen, "sheet", drawing->sheet);
  tm_print_text (gen, "digest", drawing->digest);
  tm_print_integer (gen, "bytes", drawing->content != NULL ? (gint64)g_bytes_get_size (drawing->content) : 0);
  tm_print_integer (gen, "balloons", n);
  yajl_gen_map_close (gen);
}

static void
print_drawings (const TmJob *job, gboolean json)
{
  yajl_gen gen = json ? tm_print_begin () : NULL;

  if (json)
    yajl_gen_array_open (gen);
  for (guint i = 0; i < job->drawings->len; i++)
    print_drawing (gen, job, g_ptr_array_index (job->drawings, i));
  if (json)
    {
      yajl_gen_array_close (gen);
      tm_print_end (gen);
    }
}

static gboolean
changes_job (const Request *request)
{
  return request->add != NULL || request->remove != NULL || request->balloon != NULL;
}

static int
change_job (const Request *request, TmJob *job)
{
  GError *error = NULL;
  int status = 0;

  if (request->remove != NULL)
    status = remove_drawing (request, job);
  if (status == 0 && request->add != NULL)
    status = add_drawing (request, job);
  if (status == 0 && request->balloon != NULL)
    status = put_balloon (request, job);
  if (status == 0 && !tm_job_to_file (job, request->path, &error))
    status = tm_fail_error (error);
  return status;
}

/* Nobody else may write between our reading of the file and our writing of it. */
static int
work_on_file (const Request *request)
{
  const int lock = changes_job (request) ? tm_lock_take (request->path) : -1;
  g_autoptr (TmJob) job = tm_load_job (request->path);
  int status = job != NULL ? 0 : 2;

  if (status == 0 && changes_job (request))
    status = change_job (request, job);
  tm_lock_release (lock);
  if (status == 0)
    print_drawings (job, request->json);
  return status;
}

static gboolean
are_texts_valid (const Request *request)
{
  const char *const texts[] = { request->name, request->sheet, request->remove, request->balloon };

  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    if (texts[i] != NULL && !g_utf8_validate (texts[i], -1, NULL))
      {
        g_autofree char *shown = g_utf8_make_valid (texts[i], -1);

        tm_fail (_ ("%s: “%s” is not UTF-8 text; nothing was changed"), request->path, shown);
        return FALSE;
      }
  return TRUE;
}

int
tm_verb_draw (int n_words, char **words)
{
  const TmVerb *verb = tm_verb_find ("draw");
  Request request = { NULL };
  const TmOption options[] = {
    { "add", "FILE", N_ ("keep this drawing with the job: PNG, JPEG, SVG or PDF"), &request.add, NULL },
    { "page", "N", N_ ("which page of a PDF; 1 if not given"), &request.page, NULL },
    { "sheet", "TEXT", N_ ("what the drawing calls the sheet"), &request.sheet, NULL },
    { "name", "TEXT", N_ ("the drawing's name in the job; else the file's"), &request.name, NULL },
    { "replace", NULL, N_ ("put it in the place of the drawing of that name, whose balloons stay"), NULL,
      &request.replace },
    { "remove", "NAME", N_ ("take this drawing and its balloons out of the job"), &request.remove, NULL },
    { "feature", "N", N_ ("put the balloon of this feature on the drawing, or move it"), &request.balloon,
      NULL },
    { "place", "K", N_ ("of this one of its places; else of all"), &request.place, NULL },
    { "at", "X,Y", N_ ("where it stands: shares of the page from its upper left corner"), &request.at, NULL },
    { "to", "X,Y", N_ ("where its leader line points"), &request.to, NULL },
    { "json", NULL, N_ ("print JSON"), NULL, &request.json },
    { NULL },
  };
  int status;
  g_autoptr (GPtrArray) operands = tm_options_read (verb, options, n_words, words, &status);

  if (operands == NULL)
    return status;
  if (operands->len != 1)
    return tm_fail (_ ("draw: it takes one job file; see tenthmark-cli draw --help"));
  if ((request.balloon != NULL) != (request.at != NULL)
      || (request.balloon == NULL && (request.to != NULL || request.place != NULL))
      || (request.add == NULL && (request.page != NULL || request.sheet != NULL || request.replace)))
    return tm_fail (
        _ ("draw: a balloon takes --feature N and --at X,Y, and may have --place and --to; --page, "
           "--sheet and --replace go with --add"));
  request.path = g_ptr_array_index (operands, 0);
  return are_texts_valid (&request) ? work_on_file (&request) : 2;
}
