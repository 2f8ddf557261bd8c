/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * support-glpk: the same assignment by a general-purpose solver, the GNU Linear Programming Kit: by its
 * simplex method, since the relaxed problem has a whole solution (G. Birkhoff, 1946), and by its
 * out-of-kilter method for whole costs.
 */

#pragma once

#include <glib.h>
#include <glpk.h>
#include <stddef.h>

/* Each row to one column, each column to one row at most; n_rows <= n_columns. */
static inline double
support_glpk_simplex (const double *cost, guint n_rows, guint n_columns)
{
  int n = (int)(n_rows * n_columns);
  glp_prob *problem = glp_create_prob ();
  g_autofree int *row = g_new (int, 2 * n + 1);
  g_autofree int *column = g_new (int, 2 * n + 1);
  g_autofree double *one = g_new (double, 2 * n + 1);
  glp_smcp how;
  double total;

  glp_term_out (GLP_OFF);
  glp_add_rows (problem, (int)(n_rows + n_columns));
  for (int i = 1; i <= (int)(n_rows + n_columns); i++)
    glp_set_row_bnds (problem, i, i <= (int)n_rows ? GLP_FX : GLP_UP, 1, 1);
  glp_add_cols (problem, n);
  for (int k = 0; k < n; k++)
    {
      glp_set_col_bnds (problem, k + 1, GLP_LO, 0, 0);
      glp_set_obj_coef (problem, k + 1, cost[k]);
      row[2 * k + 1] = 1 + k / (int)n_columns;
      row[2 * k + 2] = 1 + (int)n_rows + k % (int)n_columns;
      column[2 * k + 1] = column[2 * k + 2] = k + 1;
      one[2 * k + 1] = one[2 * k + 2] = 1;
    }
  glp_load_matrix (problem, 2 * n, row, column, one);
  glp_init_smcp (&how);
  how.msg_lev = GLP_MSG_OFF;
  g_assert_cmpint (glp_simplex (problem, &how), ==, 0);
  g_assert_cmpint (glp_get_status (problem), ==, GLP_OPT);
  total = glp_get_obj_val (problem);
  glp_delete_prob (problem);
  glp_free_env ();
  return total;
}

typedef struct {
  int set; /* 0: row, 1: column */
} SupportGlpkVertex;

typedef struct {
  double cost;
} SupportGlpkArc;

/* As many rows as columns; costs are whole numbers. */
static inline double
support_glpk_whole (const double *cost, guint n)
{
  glp_graph *graph = glp_create_graph ((int)sizeof (SupportGlpkVertex), (int)sizeof (SupportGlpkArc));
  double total = 0;

  glp_term_out (GLP_OFF);
  glp_add_vertices (graph, (int)(2 * n));
  for (int i = 1; i <= (int)(2 * n); i++)
    ((SupportGlpkVertex *)graph->v[i]->data)->set = i > (int)n;
  for (guint i = 0; i < n * n; i++)
    {
      glp_arc *arc = glp_add_arc (graph, 1 + (int)(i / n), 1 + (int)n + (int)(i % n));

      ((SupportGlpkArc *)arc->data)->cost = cost[i];
    }
  g_assert_cmpint (glp_asnprob_okalg (GLP_ASN_MIN, graph, (int)offsetof (SupportGlpkVertex, set),
                                      (int)offsetof (SupportGlpkArc, cost), &total, -1),
                   ==, 0);
  glp_delete_graph (graph);
  glp_free_env ();
  return total;
}
