/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "book-ahead.h"

#include <string.h>

/* Facts handed over at once, and how many such portions there are: the thread is never far ahead, so that
 * its texts take little memory. */
#define PORTION_FACTS 512
#define N_PORTIONS    3

typedef struct {
  gsize at; /* of the payload in the text */
  gsize length;
  guint8 hash[TM_HASH_BYTES];
} Made;

typedef struct {
  GString *text;
  Made made[PORTION_FACTS];
  guint n;
} Portion;

struct _TmAhead {
  TmBookKind kind;
  gint64 job;
  const GPtrArray *rows;
  GThread *thread;
  GAsyncQueue *blank; /* Portion: to be filled; a poke when it is to stop */
  GAsyncQueue *ready; /* Portion: filled */
  gint stopped;       /* atomic */
  Portion portions[N_PORTIONS];

  /* The thread's alone. */
  TmCells cells;
  TmChain chain;

  /* The caller's alone. */
  Portion *portion;
  guint next; /* in it */
  TmFact fact;
};

static void
make_fact (TmAhead *self, gconstpointer row, Portion *portion)
{
  Made *made = &portion->made[portion->n++];

  made->at = portion->text->len;
  tm_cells_from_struct (&self->cells, self->kind, NULL, row);
  tm_cells_payload (&self->cells, self->kind, portion->text);
  made->length = portion->text->len - made->at;
  tm_hash_fact (self->chain.hash, ++self->chain.seq, self->job, tm_kind_info (self->kind)->table,
                portion->text->str + made->at, made->length, made->hash);
  memcpy (self->chain.hash, made->hash, TM_HASH_BYTES);
}

static gpointer
make_facts (gpointer data)
{
  TmAhead *self = data;
  guint i = 0;

  while (i < self->rows->len)
    {
      Portion *portion = g_async_queue_pop (self->blank);

      if (g_atomic_int_get (&self->stopped))
        break;
      g_string_truncate (portion->text, 0);
      portion->n = 0;
      while (i < self->rows->len && portion->n < PORTION_FACTS)
        make_fact (self, g_ptr_array_index (self->rows, i++), portion);
      g_async_queue_push (self->ready, portion);
    }
  return NULL;
}

TmAhead *
tm_ahead_new (TmBookKind kind, gint64 job, const GPtrArray *rows, const TmChain *chain)
{
  TmAhead *self = g_new0 (TmAhead, 1);

  g_assert (!tm_kind_info (kind)->versioned);
  self->kind = kind;
  self->job = job;
  self->rows = rows;
  self->chain = *chain;
  self->blank = g_async_queue_new ();
  self->ready = g_async_queue_new ();
  tm_cells_init (&self->cells);
  for (guint i = 0; i < N_PORTIONS; i++)
    {
      self->portions[i].text = g_string_new (NULL);
      g_async_queue_push (self->blank, &self->portions[i]);
    }
  self->thread = g_thread_try_new ("tenthmark-facts", make_facts, self, NULL);
  if (self->thread != NULL)
    return self;
  tm_ahead_free (self);
  return NULL;
}

void
tm_ahead_free (TmAhead *self)
{
  g_atomic_int_set (&self->stopped, TRUE);
  g_async_queue_push (self->blank, &self->portions[0]);
  g_clear_pointer (&self->thread, g_thread_join);
  g_async_queue_unref (self->blank);
  g_async_queue_unref (self->ready);
  tm_cells_clear (&self->cells);
  for (guint i = 0; i < N_PORTIONS; i++)
    g_string_free (self->portions[i].text, TRUE);
  g_free (self);
}

const TmFact *
tm_ahead_next (TmAhead *self)
{
  const Made *made;

  if (self->portion != NULL && self->next == self->portion->n)
    {
      g_async_queue_push (self->blank, self->portion);
      self->portion = NULL;
    }
  if (self->portion == NULL)
    {
      self->portion = g_async_queue_pop (self->ready);
      self->next = 0;
    }
  made = &self->portion->made[self->next++];
  self->fact.payload = self->portion->text->str + made->at;
  self->fact.length = made->length;
  memcpy (self->fact.hash, made->hash, TM_HASH_BYTES);
  return &self->fact;
}
