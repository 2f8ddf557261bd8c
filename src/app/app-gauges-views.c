/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "app-gauges-views.h"

#include <glib/gi18n-lib.h>

#include "app-button.h"
#include "app-gauge-register.h"
#include "app-material-view.h"
#include "app-method-view.h"
#include "app-rules-view.h"
#include "app-setting-view.h"
#include "app-study-view.h"
#include "app-suitability-view.h"
#include "app-tool-view.h"

static void
set_register_document (GtkWidget *view, TmDocument *document)
{
  tm_gauge_register_set_document (TM_GAUGE_REGISTER (view), document);
}

static void
enter_register (GtkWidget *view)
{
  tm_gauge_register_enter (TM_GAUGE_REGISTER (view));
}

static void
set_study_document (GtkWidget *view, TmDocument *document)
{
  tm_study_view_set_document (TM_STUDY_VIEW (view), document);
}

static void
enter_study (GtkWidget *view)
{
  tm_study_view_enter (TM_STUDY_VIEW (view));
}

static void
set_method_document (GtkWidget *view, TmDocument *document)
{
  tm_method_view_set_document (TM_METHOD_VIEW (view), document);
}

static void
enter_methods (GtkWidget *view)
{
  tm_method_view_enter (TM_METHOD_VIEW (view));
}

static void
set_suitability_document (GtkWidget *view, TmDocument *document)
{
  tm_suitability_view_set_document (TM_SUITABILITY_VIEW (view), document);
}

static void
enter_suitability (GtkWidget *view)
{
  tm_suitability_view_enter (TM_SUITABILITY_VIEW (view));
}

static void
set_rules_document (GtkWidget *view, TmDocument *document)
{
  tm_rules_view_set_document (TM_RULES_VIEW (view), document);
}

static void
enter_rules (GtkWidget *view)
{
  tm_rules_view_enter (TM_RULES_VIEW (view));
}

static void
set_material_document (GtkWidget *view, TmDocument *document)
{
  tm_material_view_set_document (TM_MATERIAL_VIEW (view), document);
}

static void
enter_materials (GtkWidget *view)
{
  tm_material_view_enter (TM_MATERIAL_VIEW (view));
}

static void
set_setting_document (GtkWidget *view, TmDocument *document)
{
  tm_setting_view_set_document (TM_SETTING_VIEW (view), document);
}

static void
enter_setting (GtkWidget *view)
{
  tm_setting_view_enter (TM_SETTING_VIEW (view));
}

static void
set_tool_document (GtkWidget *view, TmDocument *document)
{
  tm_tool_view_set_document (TM_TOOL_VIEW (view), document);
}

static void
enter_tools (GtkWidget *view)
{
  tm_tool_view_enter (TM_TOOL_VIEW (view));
}

static const TmPageKind views[] = {
  { "register", N_ ("Register"), tm_gauge_register_new, set_register_document, enter_register },
  { "methods", N_ ("Methods"), tm_method_view_new, set_method_document, enter_methods },
  { "suitability", N_ ("Suitability"), tm_suitability_view_new, set_suitability_document, enter_suitability },
  { "studies", N_ ("Studies"), tm_study_view_new, set_study_document, enter_study },
  { "setting", N_ ("Setting"), tm_setting_view_new, set_setting_document, enter_setting },
  { "tools", N_ ("Cutting tools"), tm_tool_view_new, set_tool_document, enter_tools },
  { "materials", N_ ("Materials"), tm_material_view_new, set_material_document, enter_materials },
  { "rules", N_ ("Shop rules"), tm_rules_view_new, set_rules_document, enter_rules },
};

const TmPageKind *
tm_gauges_views (guint *n_views)
{
  *n_views = G_N_ELEMENTS (views);
  return views;
}

GtkWidget *
tm_gauges_open_register_new (void)
{
  GtkWidget *open = tm_button_new (_ ("_Open the register"));

  /* The target first: an action without the target it wants is complained about. */
  gtk_actionable_set_action_target (GTK_ACTIONABLE (open), "s", "register");
  gtk_actionable_set_action_name (GTK_ACTIONABLE (open), "gauges.view");
  gtk_widget_set_halign (open, GTK_ALIGN_CENTER);
  gtk_widget_add_css_class (open, "suggested-action");
  gtk_widget_add_css_class (open, "tm-wide");
  return open;
}
