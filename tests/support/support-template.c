/* SPDX-License-Identifier: GPL-3.0-or-later */

#include "support-template.h"

static const char logo[]
    = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"300\" height=\"100\" viewBox=\"0 0 300 100\">"
      "<rect width=\"300\" height=\"100\" fill=\"#1a5f7a\"/>"
      "<circle cx=\"50\" cy=\"50\" r=\"30\" fill=\"#ffffff\"/>"
      "<path d=\"M110 70 L200 30 L290 70 Z\" fill=\"#e8b030\"/></svg>\n";

TmTemplate *
tm_test_template (void)
{
  g_autoptr (GBytes) bytes = g_bytes_new_static (logo, sizeof logo - 1);
  TmTemplate *template = tm_template_new ();
  TmTemplateStatement *statement;

  tm_template_set_text (&template->name, "Example Precision (invented)");
  tm_template_set_text (&template->address, "1 Mill Lane\nExampletown 00000\nTelephone 0");
  template->has_accent = TRUE;
  template->accent = 0x1a5f7a;
  template->has_ground = TRUE;
  template->ground = 0xdfe8c4;
  tm_template_set_logo (template, bytes, "image/svg+xml");
  template->hidden = 1u << TM_TEMPLATE_UNCERTAINTY | 1u << TM_TEMPLATE_GAUGE;
  tm_template_add_field (template, "Heat number", TRUE);
  tm_template_add_field (template, "Packed by", FALSE);
  statement = tm_template_add_statement (template, TM_STATEMENT_BEFORE_SIGNATURES);
  tm_template_statement_add_text (statement, "", "Every part of this lot was made and measured in our shop.");
  tm_template_statement_add_text (statement, "de",
                                  "Jedes Teil dieses Loses wurde bei uns gefertigt und gemessen.");
  statement = tm_template_add_statement (template, TM_STATEMENT_AFTER_COVER);
  tm_template_statement_add_text (statement, "",
                                  "Records are kept for ten years.\nAsk for them by order number.");
  return template;
}
