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

TM_DEFINE_PAGE (gauge_register, GAUGE_REGISTER)
TM_DEFINE_PAGE (method_view, METHOD_VIEW)
TM_DEFINE_PAGE (suitability_view, SUITABILITY_VIEW)
TM_DEFINE_PAGE (study_view, STUDY_VIEW)
TM_DEFINE_PAGE (setting_view, SETTING_VIEW)
TM_DEFINE_PAGE (tool_view, TOOL_VIEW)
TM_DEFINE_PAGE (material_view, MATERIAL_VIEW)
TM_DEFINE_PAGE (rules_view, RULES_VIEW)

static const TmPageKind views[] = {
  { "register", N_ ("Register"), tm_gauge_register_new, set_gauge_register, enter_gauge_register },
  { "methods", N_ ("Methods"), tm_method_view_new, set_method_view, enter_method_view },
  { "suitability", N_ ("Suitability"), tm_suitability_view_new, set_suitability_view,
    enter_suitability_view },
  { "studies", N_ ("Studies"), tm_study_view_new, set_study_view, enter_study_view },
  { "setting", N_ ("Setting"), tm_setting_view_new, set_setting_view, enter_setting_view },
  { "tools", N_ ("Cutting tools"), tm_tool_view_new, set_tool_view, enter_tool_view },
  { "materials", N_ ("Materials"), tm_material_view_new, set_material_view, enter_material_view },
  { "rules", N_ ("Shop rules"), tm_rules_view_new, set_rules_view, enter_rules_view },
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
