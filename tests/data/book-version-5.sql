-- A book of version 5, written by the program as it was before version 6, as the statements that make it
-- again; invented contents.  application_id and user_version are set by the test.
BEGIN TRANSACTION;
CREATE TABLE balloon (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, drawing TEXT NOT NULL, feature TEXT NOT NULL, place INTEGER, x_count INTEGER, x_form TEXT, y_count INTEGER, y_form TEXT, to_x_count INTEGER, to_x_form TEXT, to_y_count INTEGER, to_y_form TEXT, extra TEXT NOT NULL) STRICT;
INSERT INTO "balloon" VALUES(35,1,'1',1048576,0,'','','sheet 1','10',NULL,250000,'hardness.2',500000,'hardness.4',1000000,'hardness.0',0,'hardness.0','"m": 1');
INSERT INTO "balloon" VALUES(36,1,'2',2097152,0,'','','sheet 2','10',1,250000,'hardness.2',500000,'hardness.4',NULL,NULL,NULL,NULL,'"m": 1');
INSERT INTO "balloon" VALUES(62,1,'2',2097152,1,'RW','2026-05-05T07:00:00Z','','',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'');
CREATE TABLE budget_line (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, method TEXT NOT NULL, kind TEXT NOT NULL, name TEXT NOT NULL, value_pm INTEGER, value_form TEXT, distribution TEXT NOT NULL, divisor_count INTEGER, divisor_form TEXT, dof_count INTEGER, dof_form TEXT, source TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "budget_line" VALUES(14,1,'1',1048576,0,'','','transfer','people','between people',2000000,'mm.4','t',1500000,'hardness.1',12500000,'hardness.1','study one','"l": 1');
INSERT INTO "budget_line" VALUES(15,1,'2',2097152,0,'','','transfer','other','between people',2000000,'mm.4','normal',1500000,'hardness.1',12500000,'hardness.1','study one','"l": 1');
CREATE TABLE calibration (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, gauge TEXT NOT NULL, date TEXT NOT NULL, due TEXT NOT NULL, certificate TEXT NOT NULL, calibrated_by TEXT NOT NULL, uncertainty_pm INTEGER, uncertainty_form TEXT, coverage_count INTEGER, coverage_form TEXT, error_pm INTEGER, error_form TEXT, outcome TEXT NOT NULL, note TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "calibration" VALUES(7,1,'1',1048576,0,'','','M-25','2025-03-01','','C-\1187','Invented Laboratory',762000,'in.5',2000000,'hardness.2',-1270000,'in.5','bad','thimble
reset','"c": 1');
INSERT INTO "calibration" VALUES(8,1,'2',2097152,0,'','','M-25','2026-03-01','2027-03-01','C-\1187','Invented Laboratory',762000,'in.5',2000000,'hardness.2',-1270000,'in.5','','thimble
reset','"c": 1');
CREATE TABLE content (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, digest TEXT NOT NULL, length INTEGER NOT NULL, bytes BLOB NOT NULL, UNIQUE (job, digest)) STRICT;
INSERT INTO "content" VALUES(32,1,'419b35f233e29caaa169c6b5a99e52a8f608fbb9de7aed1f7e86a1da9f0b9495',7,X'6E6F0020504446');
INSERT INTO "content" VALUES(65,1,'2d36548b5c72f50aa2f81e28127b3ecd6698a1f241d94cf928e123f40173e3eb',25,X'706167657320617320746865792077657265207369676E6564');
CREATE TABLE cut (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, id TEXT NOT NULL, piece TEXT NOT NULL, feature TEXT NOT NULL, dialled_pm INTEGER, dialled_form TEXT, passes INTEGER NOT NULL, taken_by TEXT NOT NULL, taken_at TEXT NOT NULL, replaces TEXT NOT NULL, reason TEXT NOT NULL, extra TEXT NOT NULL, reads TEXT NOT NULL DEFAULT '', place INTEGER, tool TEXT NOT NULL DEFAULT '', after_reading TEXT NOT NULL DEFAULT '', note TEXT NOT NULL DEFAULT '', UNIQUE (job, id)) STRICT;
INSERT INTO "cut" VALUES(56,1,'1','003','10',150000000,'mm.3',4,'RW','2026-05-04T09:12:33Z','','','"spring": 2','',NULL,'','','');
INSERT INTO "cut" VALUES(57,1,'2','002','10',50800000,'in.4',2,'RW','2026-05-04T09:12:33Z','','','','radius',3,'boring bar 16','none','after the roughing cut');
INSERT INTO "cut" VALUES(58,1,'3','002','10',38100000,'in.4',2,'RW','2026-05-04T09:12:33Z','','','','radius',3,'boring bar 16','b-7','after the roughing cut');
CREATE TABLE drawing (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, name TEXT NOT NULL, sheet TEXT NOT NULL, media TEXT NOT NULL, page INTEGER, digest TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "drawing" VALUES(33,1,'sheet 1',1048576,0,'','','sheet 1','1','application/pdf',NULL,'419b35f233e29caaa169c6b5a99e52a8f608fbb9de7aed1f7e86a1da9f0b9495','"d": 1');
INSERT INTO "drawing" VALUES(34,1,'sheet 2',2097152,0,'','','sheet 2','1','application/pdf',2,'419b35f233e29caaa169c6b5a99e52a8f608fbb9de7aed1f7e86a1da9f0b9495','"d": 1');
INSERT INTO "drawing" VALUES(61,1,'sheet 2',2097152,1,'RW','2026-05-05T07:00:00Z','','','',NULL,'','');
CREATE TABLE event (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, before_piece TEXT NOT NULL, kind TEXT NOT NULL, note TEXT NOT NULL, amount TEXT NOT NULL, extra TEXT NOT NULL, feature TEXT NOT NULL DEFAULT '', tool TEXT NOT NULL DEFAULT '', seen_by TEXT NOT NULL DEFAULT '', seen_at TEXT NOT NULL DEFAULT '') STRICT;
INSERT INTO "event" VALUES(37,1,'1',1048576,0,'','','002','tool','new insert','0.0050','"e": 0.10','','','','');
INSERT INTO "event" VALUES(38,1,'2',2097152,0,'','','002','tool','new insert','0.0050','"e": 0.10','','','','');
INSERT INTO "event" VALUES(39,1,'3',3145728,0,'','','','offset','recentred
after 002','-0.0004','','10','boring bar 16','RW','2026-05-04T11:12:33Z');
CREATE TABLE facts (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, part_number TEXT NOT NULL, part_name TEXT NOT NULL, revision TEXT NOT NULL, drawing TEXT NOT NULL, customer TEXT NOT NULL, order_number TEXT NOT NULL, unit TEXT NOT NULL, material TEXT NOT NULL, standard TEXT NOT NULL, decision TEXT NOT NULL, simple_ratio_count INTEGER, simple_ratio_form TEXT, general_tolerance TEXT NOT NULL, first_article TEXT NOT NULL, first_article_reason TEXT NOT NULL, first_article_baseline TEXT NOT NULL, first_article_extra TEXT NOT NULL, extra TEXT NOT NULL, job_extra TEXT NOT NULL, part_temp_limit_count INTEGER, part_temp_limit_form TEXT, gauge_temp_limit_count INTEGER, gauge_temp_limit_form TEXT, thermometer_count INTEGER, thermometer_form TEXT, expansion_count INTEGER, expansion_form TEXT, entry_clearance_pm INTEGER, entry_clearance_form TEXT, drift_rule TEXT NOT NULL DEFAULT '', drift_limit_count INTEGER, drift_limit_form TEXT, check_hours_count INTEGER, check_hours_form TEXT, cut_risk_count INTEGER, cut_risk_form TEXT, cut_aim TEXT NOT NULL DEFAULT '', drawing_revision TEXT NOT NULL DEFAULT '', article TEXT NOT NULL DEFAULT '', report_identifier TEXT NOT NULL DEFAULT '', organisation TEXT NOT NULL DEFAULT '', supplier_code TEXT NOT NULL DEFAULT '', manufacturing_record TEXT NOT NULL DEFAULT '', drawing_changes TEXT NOT NULL DEFAULT '', language TEXT NOT NULL DEFAULT '', second_language TEXT NOT NULL DEFAULT '', report_extra TEXT NOT NULL DEFAULT '') STRICT;
INSERT INTO "facts" VALUES(2,1,'',0,0,'','','INV-1001','Housing “A”','C','D-1001','Invented Works','PO 5','in','steel','ASME','simple',4000000,'hardness.1','.X .1, .XX .01','partial','new revision','B','"fa": 1','"top": {
  "deep": "\n"
}','"colour": "blue"',3000000,'celsius.0',2000000,'celsius.1',500000,'celsius.1',23600000,'hardness.1',1016000,'in.5','ask',500000,'hardness.1',8000000,'hardness.0',1000,'hardness.3','proven','C1','assembly','FA-0031','Invented Shop','S-77','traveller 12
(two sheets)','note 4 struck out','de','en','"r": 1');
INSERT INTO "facts" VALUES(60,1,'',0,0,'RW','2026-05-05T07:00:00Z','INV-1001','Housing “A”','C','D-1001','Other Works','PO 5','in','steel','ASME','simple',4000000,'hardness.1','.X .1, .XX .01','partial','new revision','B','"fa": 1','"top": {
  "deep": "\n"
}','"colour": "blue"',3000000,'celsius.0',2000000,'celsius.1',500000,'celsius.1',23600000,'hardness.1',1016000,'in.5','ask',500000,'hardness.1',8000000,'hardness.0',1000,'hardness.3','proven','C1','assembly','FA-0031','Invented Shop','S-77','traveller 12
(two sheets)','note 4 struck out','de','en','"r": 1');
CREATE TABLE feature (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, balloon TEXT NOT NULL, kind TEXT NOT NULL, name TEXT NOT NULL, requirement TEXT NOT NULL, unit TEXT NOT NULL, nominal_pm INTEGER, nominal_form TEXT, lower_pm INTEGER, lower_form TEXT, upper_pm INTEGER, upper_form TEXT, cut TEXT NOT NULL, envelope INTEGER NOT NULL, designator TEXT NOT NULL, places INTEGER NOT NULL, stations TEXT NOT NULL, size_feature TEXT NOT NULL, method TEXT NOT NULL, check_rule TEXT NOT NULL, group_size INTEGER NOT NULL, sheet TEXT NOT NULL, zone TEXT NOT NULL, mate_given INTEGER NOT NULL, mate_kind TEXT NOT NULL, mate_lower_pm INTEGER, mate_lower_form TEXT, mate_upper_pm INTEGER, mate_upper_form TEXT, mate_extra TEXT NOT NULL, zone_diameter INTEGER NOT NULL, modifier TEXT NOT NULL, datums TEXT NOT NULL, extra TEXT NOT NULL, counts TEXT NOT NULL DEFAULT '', form_unseen_pm INTEGER, form_unseen_form TEXT, tool TEXT NOT NULL DEFAULT '', wanted_least_pm INTEGER, wanted_least_form TEXT, wanted_most_pm INTEGER, wanted_most_form TEXT, press_length_pm INTEGER, press_length_form TEXT, hub_outside_pm INTEGER, hub_outside_form TEXT, shaft_inside_pm INTEGER, shaft_inside_form TEXT, hub_material TEXT NOT NULL DEFAULT '', shaft_material TEXT NOT NULL DEFAULT '', friction_least_count INTEGER, friction_least_form TEXT, friction_most_count INTEGER, friction_most_form TEXT, hub_roughness_pm INTEGER, hub_roughness_form TEXT, shaft_roughness_pm INTEGER, shaft_roughness_form TEXT, press_gap_pm INTEGER, press_gap_form TEXT, press_extra TEXT NOT NULL DEFAULT '', chart_rules TEXT NOT NULL DEFAULT '', chart_baseline INTEGER, affected INTEGER, tooling TEXT NOT NULL DEFAULT '', comment TEXT NOT NULL DEFAULT '') STRICT;
INSERT INTO "feature" VALUES(18,1,'10',1048576,0,'','','10','bore','bearing bore','Ø25 H7','mm',25000000000,'mm.0',25000000000,'mm.3',25021000000,'mm.3','grows',1,'critical',4,'mouth/12
odd\nstation \\ here

','','transfer','every 5',5,'1','B4',1,'shaft',24980000000,'mm.3',24990000000,'mm.2','"m": null',0,'','','"f": true','combined',3000000,'mm.3','boring bar 16',-35000000,'mm.3',-10000000,'mm.4',20000000000,'mm.0',50000000000,'mm.1',12700000000,'in.1','steel','bush bronze',80000,'hardness.2',150000,'hardness.3',3200000,'um.1',1600000,'um.1',20000000,'mm.2','"pr": 1','beyond-3s 8-one-side',12,1,'ring gauge R-9','seat for the bearing');
INSERT INTO "feature" VALUES(19,1,'2',2097152,0,'','','2','position','','','in',NULL,NULL,NULL,NULL,203200000,'in.4','shrinks',0,'',1,'','10','','',0,'','',0,'',NULL,NULL,NULL,NULL,'',1,'mmc','A B C','','',NULL,NULL,'',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'','',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'','',NULL,NULL,'','');
INSERT INTO "feature" VALUES(20,1,'1',3145728,0,'','','1','note','','break edges','none',NULL,NULL,NULL,NULL,NULL,NULL,'',0,'',1,'','','','',0,'','',0,'',NULL,NULL,NULL,NULL,'',0,'','','','',NULL,NULL,'',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'','',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'','',NULL,NULL,'','');
CREATE TABLE gauge (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, tag TEXT NOT NULL, kind TEXT NOT NULL, unit TEXT NOT NULL, resolution_pm INTEGER, resolution_form TEXT, error_limit_pm INTEGER, error_limit_form TEXT, calibrated TEXT NOT NULL, due TEXT NOT NULL, certificate TEXT NOT NULL, extra TEXT NOT NULL, serial TEXT NOT NULL DEFAULT '', owner TEXT NOT NULL DEFAULT '', place TEXT NOT NULL DEFAULT '', range_from_pm INTEGER, range_from_form TEXT, range_to_pm INTEGER, range_to_form TEXT, feel_pm INTEGER, feel_form TEXT, expansion_count INTEGER, expansion_form TEXT, pin_step_pm INTEGER, pin_step_form TEXT, pin_class TEXT NOT NULL DEFAULT '', pin_sign TEXT NOT NULL DEFAULT '', source TEXT NOT NULL DEFAULT '', blocks TEXT NOT NULL DEFAULT '') STRICT;
INSERT INTO "gauge" VALUES(4,1,'TG-1',1048576,0,'','','TG-1','telescoping gauge','mm',NULL,NULL,NULL,NULL,'','','','','','','',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'','','','');
INSERT INTO "gauge" VALUES(5,1,'M-25',2097152,0,'','','M-25','micrometer','in',2540000,'in.4',2540000,'in.5','2026-03-01','2027-03-01','C-\1187
second line','"colour": "red",
"n": [1,2]','','','',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'','','','');
INSERT INTO "gauge" VALUES(6,1,'PS-1',3145728,0,'','','PS-1','pin set','mm',NULL,NULL,NULL,NULL,'','','','','77-B','the shop','drawer 3',24000000000,'mm.2',26000000000,'mm.2',1000000,'mm.3',11500000,'hardness.1',10000000,'mm.2','X','plus','assumed','1.001-1.009 by 0.001');
CREATE TABLE gauge_check (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, gauge TEXT NOT NULL, standard_pm INTEGER, standard_form TEXT, reading_pm INTEGER, reading_form TEXT, checked_by TEXT NOT NULL, checked_at TEXT NOT NULL, note TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "gauge_check" VALUES(9,1,'1',1048576,0,'','','M-25',25400000000,'in.4',25402540000,'in.4','RW','2026-05-04T09:00:00Z','warm','"k": 1');
INSERT INTO "gauge_check" VALUES(10,1,'2',2097152,0,'','','M-25',25400000000,'in.4',25402540000,'in.4','RW','2026-05-04T09:00:00Z','warm','"k": 1');
CREATE TABLE job (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL CHECK (job = seq), id TEXT NOT NULL UNIQUE) STRICT;
INSERT INTO "job" VALUES(1,1,'5f6c2f0e-0000-4000-8000-000000000006');
CREATE TABLE journal (seq INTEGER PRIMARY KEY CHECK (seq > 0), job INTEGER NOT NULL, kind TEXT NOT NULL, payload TEXT NOT NULL, prev BLOB NOT NULL CHECK (length (prev) = 32)) STRICT;
INSERT INTO "journal" VALUES(1,1,'job','id=5f6c2f0e-0000-4000-8000-000000000006
',X'0000000000000000000000000000000000000000000000000000000000000000');
INSERT INTO "journal" VALUES(2,1,'facts','rank=0
removed=0
part_number=INV-1001
part_name=Housing “A”
revision=C
drawing=D-1001
customer=Invented Works
order_number=PO 5
unit=in
material=steel
standard=ASME
decision=simple
simple_ratio_count=4000000
simple_ratio_form=hardness.1
general_tolerance=.X .1, .XX .01
first_article=partial
first_article_reason=new revision
first_article_baseline=B
first_article_extra="fa": 1
extra="top": {\n  "deep": "\\n"\n}
job_extra="colour": "blue"
part_temp_limit_count=3000000
part_temp_limit_form=celsius.0
gauge_temp_limit_count=2000000
gauge_temp_limit_form=celsius.1
thermometer_count=500000
thermometer_form=celsius.1
expansion_count=23600000
expansion_form=hardness.1
entry_clearance_pm=1016000
entry_clearance_form=in.5
drift_rule=ask
drift_limit_count=500000
drift_limit_form=hardness.1
check_hours_count=8000000
check_hours_form=hardness.0
cut_risk_count=1000
cut_risk_form=hardness.3
cut_aim=proven
drawing_revision=C1
article=assembly
report_identifier=FA-0031
organisation=Invented Shop
supplier_code=S-77
manufacturing_record=traveller 12\n(two sheets)
drawing_changes=note 4 struck out
language=de
second_language=en
report_extra="r": 1
',X'C1624FF65983B6C7F2D1B434C273C9F321D2DBAF748C46A9CB57D8B67118A988');
INSERT INTO "journal" VALUES(3,1,'person','key=RW
rank=1048576
removed=0
initials=RW
name=R. Wren
extra="badge": 7
',X'630059766C171239B739CC8A70E3AB277A3A8E953CE27966F3F7A0E2A63B974E');
INSERT INTO "journal" VALUES(4,1,'gauge','key=TG-1
rank=1048576
removed=0
tag=TG-1
kind=telescoping gauge
unit=mm
',X'AAD292436F7BEA8D5107CD6DB7319F27298B483001B778CEA43B411520E0E999');
INSERT INTO "journal" VALUES(5,1,'gauge','key=M-25
rank=2097152
removed=0
tag=M-25
kind=micrometer
unit=in
resolution_pm=2540000
resolution_form=in.4
error_limit_pm=2540000
error_limit_form=in.5
calibrated=2026-03-01
due=2027-03-01
certificate=C-\\1187\nsecond line
extra="colour": "red",\n"n": [1,2]
',X'BB82D0004DD9A9C36EE9A5171B315D3FCD884FAAEFD81EB0BDFB39A1D81F5CB1');
INSERT INTO "journal" VALUES(6,1,'gauge','key=PS-1
rank=3145728
removed=0
tag=PS-1
kind=pin set
unit=mm
serial=77-B
owner=the shop
place=drawer 3
range_from_pm=24000000000
range_from_form=mm.2
range_to_pm=26000000000
range_to_form=mm.2
feel_pm=1000000
feel_form=mm.3
expansion_count=11500000
expansion_form=hardness.1
pin_step_pm=10000000
pin_step_form=mm.2
pin_class=X
pin_sign=plus
source=assumed
blocks=1.001-1.009 by 0.001
',X'D4681FDCC5234A048186485F508BEF56C44180B031AFED2FB8D7E3A76222D0C8');
INSERT INTO "journal" VALUES(7,1,'calibration','key=1
rank=1048576
removed=0
gauge=M-25
date=2025-03-01
certificate=C-\\1187
calibrated_by=Invented Laboratory
uncertainty_pm=762000
uncertainty_form=in.5
coverage_count=2000000
coverage_form=hardness.2
error_pm=-1270000
error_form=in.5
outcome=bad
note=thimble\nreset
extra="c": 1
',X'10A69B8DD9B93178A279378352D4208DD20D50D0D9DB767CE0A514A375B523F5');
INSERT INTO "journal" VALUES(8,1,'calibration','key=2
rank=2097152
removed=0
gauge=M-25
date=2026-03-01
due=2027-03-01
certificate=C-\\1187
calibrated_by=Invented Laboratory
uncertainty_pm=762000
uncertainty_form=in.5
coverage_count=2000000
coverage_form=hardness.2
error_pm=-1270000
error_form=in.5
note=thimble\nreset
extra="c": 1
',X'233540FEB7558100A9F4558DE22BC8617F991E194BD1B195AE473A3B8549F696');
INSERT INTO "journal" VALUES(9,1,'gauge_check','key=1
rank=1048576
removed=0
gauge=M-25
standard_pm=25400000000
standard_form=in.4
reading_pm=25402540000
reading_form=in.4
checked_by=RW
checked_at=2026-05-04T09:00:00Z
note=warm
extra="k": 1
',X'0A9504432FB837C594C48D6ED302B5B15876799AAC999AABE5028FED4C966E37');
INSERT INTO "journal" VALUES(10,1,'gauge_check','key=2
rank=2097152
removed=0
gauge=M-25
standard_pm=25400000000
standard_form=in.4
reading_pm=25402540000
reading_form=in.4
checked_by=RW
checked_at=2026-05-04T09:00:00Z
note=warm
extra="k": 1
',X'06761A27D3EF6D1BFBD0E7AD294AFBA0336C9441C0E9A436653284BCCCDDEAAE');
INSERT INTO "journal" VALUES(11,1,'pin_size','key=1
rank=1048576
removed=0
gauge=PS-1
size_pm=25000000000
size_form=mm.2
measured_pm=25000300000
measured_form=mm.4
extra="p": 1
',X'37B37549A939DCDF1591D563380FD941FE7DBFBA0D0D034EAB08369217E15AC9');
INSERT INTO "journal" VALUES(12,1,'pin_size','key=2
rank=2097152
removed=0
gauge=PS-1
size_pm=25010000000
size_form=mm.2
measured_pm=25000300000
measured_form=mm.4
extra="p": 1
',X'7420698C12D3ADD3F1517FA01378DC80F07AD8B43216C5B6ED189F1E1415FEDD');
INSERT INTO "journal" VALUES(13,1,'method','key=transfer
rank=1048576
removed=0
name=transfer
gauges=TG-1\nM-25\n
repeatability_pm=3000000
repeatability_form=mm.3
repeatability_dof_count=30
repeatability_dof_form=count.0
extra="x": 1
repeatability_source=study one
',X'BF4BF06B220B82B415FAB4E88BBFCDD34E1993BFA2FA98F62E19971B6D2E902A');
INSERT INTO "journal" VALUES(14,1,'budget_line','key=1
rank=1048576
removed=0
method=transfer
kind=people
name=between people
value_pm=2000000
value_form=mm.4
distribution=t
divisor_count=1500000
divisor_form=hardness.1
dof_count=12500000
dof_form=hardness.1
source=study one
extra="l": 1
',X'FFB475E48A7C1ABBACBA1D69EC6B5DFE89D1DE5474162DE15386A5E216A32C96');
INSERT INTO "journal" VALUES(15,1,'budget_line','key=2
rank=2097152
removed=0
method=transfer
kind=other
name=between people
value_pm=2000000
value_form=mm.4
distribution=normal
divisor_count=1500000
divisor_form=hardness.1
dof_count=12500000
dof_form=hardness.1
source=study one
extra="l": 1
',X'D52649E1D32104134993C149026283766C952B5C58D2D2419FEF890D42933B53');
INSERT INTO "journal" VALUES(16,1,'tool','key=boring bar 16
rank=1048576
removed=0
name=boring bar 16
unit=in
reads=radius
graduation_pm=25400000
graduation_form=in.4
least_cut_pm=12700000
least_cut_form=in.4
backlash_pm=127000000
backlash_form=in.3
spring_passes_count=2
spring_passes_form=count.0
note=lathe 2\nkeyed
extra="t": 1
offset_step_pm=1270000
offset_step_form=in.5
',X'72992B941014D63BB7F4F5CADE22DF7F3AEA7846D0A93E21A2BCDB432258680E');
INSERT INTO "journal" VALUES(17,1,'material','key=bush bronze
rank=1048576
removed=0
name=bush bronze
modulus_count=105000000
modulus_form=hardness.0
poisson_count=340000
poisson_form=hardness.2
yield_count=150000000
yield_form=hardness.0
expansion_count=18000000
expansion_form=hardness.1
cold_count=16500000
cold_form=hardness.1
plastic=1
source=invented
extra="b": 1
',X'8591A85AEDBC42BC2F6D94F039F1EC6CB7EAE245EDFEBEEE66BC35ECCD7CA8D9');
INSERT INTO "journal" VALUES(18,1,'feature','key=10
rank=1048576
removed=0
balloon=10
kind=bore
name=bearing bore
requirement=Ø25 H7
unit=mm
nominal_pm=25000000000
nominal_form=mm.0
lower_pm=25000000000
lower_form=mm.3
upper_pm=25021000000
upper_form=mm.3
cut=grows
envelope=1
designator=critical
places=4
stations=mouth/12\nodd\\nstation \\\\ here\n\n
method=transfer
check_rule=every 5
group_size=5
sheet=1
zone=B4
mate_given=1
mate_kind=shaft
mate_lower_pm=24980000000
mate_lower_form=mm.3
mate_upper_pm=24990000000
mate_upper_form=mm.2
mate_extra="m": null
zone_diameter=0
extra="f": true
counts=combined
form_unseen_pm=3000000
form_unseen_form=mm.3
tool=boring bar 16
wanted_least_pm=-35000000
wanted_least_form=mm.3
wanted_most_pm=-10000000
wanted_most_form=mm.4
press_length_pm=20000000000
press_length_form=mm.0
hub_outside_pm=50000000000
hub_outside_form=mm.1
shaft_inside_pm=12700000000
shaft_inside_form=in.1
hub_material=steel
shaft_material=bush bronze
friction_least_count=80000
friction_least_form=hardness.2
friction_most_count=150000
friction_most_form=hardness.3
hub_roughness_pm=3200000
hub_roughness_form=um.1
shaft_roughness_pm=1600000
shaft_roughness_form=um.1
press_gap_pm=20000000
press_gap_form=mm.2
press_extra="pr": 1
chart_rules=beyond-3s 8-one-side
chart_baseline=12
affected=1
tooling=ring gauge R-9
comment=seat for the bearing
',X'0372DE1C9D61A67D959FC1F25B56F03CF7D46952838CED046F2A13AC0C4FD710');
INSERT INTO "journal" VALUES(19,1,'feature','key=2
rank=2097152
removed=0
balloon=2
kind=position
unit=in
upper_pm=203200000
upper_form=in.4
cut=shrinks
envelope=0
places=1
size_feature=10
group_size=0
mate_given=0
zone_diameter=1
modifier=mmc
datums=A B C
',X'724FB4597A5EA5DC23EACA0000445487CDD20709B2C4A31B1E941E59A7B79561');
INSERT INTO "journal" VALUES(20,1,'feature','key=1
rank=3145728
removed=0
balloon=1
kind=note
requirement=break edges
unit=none
envelope=0
places=1
group_size=0
mate_given=0
zone_diameter=0
',X'B7987DF748F8B2E6CB3DD7A8F145A2E7EE7CAA1C113819ADD78A5CF25E5BE72A');
INSERT INTO "journal" VALUES(21,1,'piece','key=003
rank=1048576
removed=0
serial=003
first_article=0
disposition=scrap
',X'DA2B598DB30FB7681751A23DBED422E7A9DEFDB5578EAA80D07E7AFA6845EA23');
INSERT INTO "journal" VALUES(22,1,'piece','key=002
rank=2097152
removed=0
serial=002
first_article=1
disposition=hold
disposition_note=made after \\ the shift
',X'08340C24A811D7E0CE0100E63BC86B16E947F0F1CA9D6756D75740363F76B81A');
INSERT INTO "journal" VALUES(23,1,'piece','key=001
rank=3145728
removed=0
serial=001
first_article=0
extra="melt": "77"
',X'F6B2A2512C0040C45111B01747DF5D70288418B887037CBFCC39B010D1F46EC8');
INSERT INTO "journal" VALUES(24,1,'mate','key=1
rank=1048576
removed=0
feature=10
serial=B1
smallest_pm=25024000000
smallest_form=mm.4
largest_pm=25026000000
largest_form=mm.3
uncertainty_pm=2000000
uncertainty_form=mm.3
piece=003
place_count=4
place_form=count.0
measured_by=RW
measured_at=2026-05-04T09:30:00Z
note=at the collar
extra="mt": 1
',X'42F24FC6C4AC844FE4902CBC66D4356FCC182AD3E508E5A99589072EE6451B95');
INSERT INTO "journal" VALUES(25,1,'mate','key=2
rank=2097152
removed=0
feature=2
serial=B1
smallest_pm=25024000000
smallest_form=mm.4
largest_pm=25026000000
largest_form=mm.3
uncertainty_pm=2000000
uncertainty_form=mm.3
piece=003
place_count=4
place_form=count.0
measured_by=RW
measured_at=2026-05-04T09:30:00Z
note=at the collar
extra="mt": 1
',X'368C7A9521B05BAE5C338607CA04011860815509980BE2CE72A8EFE98161CC07');
INSERT INTO "journal" VALUES(26,1,'supply','key=1
rank=1048576
removed=0
kind=process
name=anodise
specification=invented 12
code=A2
supplier=Invented Plating
approval=not asked
certificate=P-\\9
note=clear
extra="u": 1
',X'5216AA1F685443818A478BED8EF2CACA74B675EA9D87EE73FE6DA40D2C47E13A');
INSERT INTO "journal" VALUES(27,1,'supply','key=2
rank=2097152
removed=0
kind=process
name=anodise
specification=invented 12
code=A2
supplier=Invented Plating
approval=not asked
certificate=P-\\9
note=clear
extra="u": 1
',X'BE232B15E35457ECF89DF92B3777A2121034801142C128A26A6BD092BF027074');
INSERT INTO "journal" VALUES(28,1,'sub_part','key=1
rank=1048576
removed=0
number=INV-7
name=bush
serial=B1
report=FA-0030
extra="a": 1
',X'391D80840EB4EA5C27B44255D5A2808A9ED15EAB61FF62964F44418DCF7AF4D4');
INSERT INTO "journal" VALUES(29,1,'sub_part','key=2
rank=2097152
removed=0
number=INV-8
name=bush
serial=B1
report=FA-0030
extra="a": 1
',X'EF801F2D7482F5076CB3C2F47A951FE9043549E79DCBA88736731BEFD83D71F1');
INSERT INTO "journal" VALUES(30,1,'report_field','key=1
rank=1048576
removed=0
name=traceability
value=lot 5
extra="f": 1
',X'D07911A208D8A32F582581C55C56B18B010232919543C7CF225C0EFEA2BEE08E');
INSERT INTO "journal" VALUES(31,1,'report_field','key=2
rank=2097152
removed=0
name=traceability
extra="f": 1
',X'07E1FEAD11FC8C499A38CF7797F0886B778B8AEA59704BD19B1310D609A1FA30');
INSERT INTO "journal" VALUES(32,1,'content','digest=419b35f233e29caaa169c6b5a99e52a8f608fbb9de7aed1f7e86a1da9f0b9495
length=7
',X'726A2E5BC2B116E4498F024AB1D7812E03EDA8878339D727789CE471E2E258AB');
INSERT INTO "journal" VALUES(33,1,'drawing','key=sheet 1
rank=1048576
removed=0
name=sheet 1
sheet=1
media=application/pdf
digest=419b35f233e29caaa169c6b5a99e52a8f608fbb9de7aed1f7e86a1da9f0b9495
extra="d": 1
',X'480C75E063F2EA90EBBD8DC9F3AFE0CFBAC704F058863B455BD80B3704898B6D');
INSERT INTO "journal" VALUES(34,1,'drawing','key=sheet 2
rank=2097152
removed=0
name=sheet 2
sheet=1
media=application/pdf
page=2
digest=419b35f233e29caaa169c6b5a99e52a8f608fbb9de7aed1f7e86a1da9f0b9495
extra="d": 1
',X'75757E82979C72FAFD116FAF20DB22374052DC75675D92A991A283364F5F6ACF');
INSERT INTO "journal" VALUES(35,1,'balloon','key=1
rank=1048576
removed=0
drawing=sheet 1
feature=10
x_count=250000
x_form=hardness.2
y_count=500000
y_form=hardness.4
to_x_count=1000000
to_x_form=hardness.0
to_y_count=0
to_y_form=hardness.0
extra="m": 1
',X'A709AE8E1DEF1BF88C7F113A05EE7E0290439B7061DAE8B5B5091BA0DF9DE00A');
INSERT INTO "journal" VALUES(36,1,'balloon','key=2
rank=2097152
removed=0
drawing=sheet 2
feature=10
place=1
x_count=250000
x_form=hardness.2
y_count=500000
y_form=hardness.4
extra="m": 1
',X'83165739D97D7E214A5DB7B4DA1584AD1F19C568C0C39BEC32E798BB756C7194');
INSERT INTO "journal" VALUES(37,1,'event','key=1
rank=1048576
removed=0
before_piece=002
kind=tool
note=new insert
amount=0.0050
extra="e": 0.10
',X'BBB82F5088FC5EDC4EBFB3F4E60D171B6D120E760BD62EA23341C73606A0DECD');
INSERT INTO "journal" VALUES(38,1,'event','key=2
rank=2097152
removed=0
before_piece=002
kind=tool
note=new insert
amount=0.0050
extra="e": 0.10
',X'093EEF58AA325BB8FB7EFD6AC78B5A8511508FE1E3C583A814470B3E77CACB3B');
INSERT INTO "journal" VALUES(39,1,'event','key=3
rank=3145728
removed=0
kind=offset
note=recentred\nafter 002
amount=-0.0004
feature=10
tool=boring bar 16
seen_by=RW
seen_at=2026-05-04T11:12:33Z
',X'14A521D862599227CAD908CCC785D2EEDB2E0C0097F9C164B41021DF336EAF45');
INSERT INTO "journal" VALUES(40,1,'nonconformance','key=1
rank=1048576
removed=0
piece=003
feature=1
number=NC-14
note=edge not broken
disposition=rework
extra="q": "ü"
place=1
raised_by=RW
raised_at=2026-05-04T09:30:00Z
rework_by=MF
rework_at=2026-05-04T10:30:00Z
rework_after=none
',X'92B137760C01CBDCAEA0F429CD5F8D38376FD58259F7BA762EABBE2FA75FEC85');
INSERT INTO "journal" VALUES(41,1,'nonconformance','key=2
rank=2097152
removed=0
feature=1
number=NC-14
disposition=rework
extra="q": "ü"
',X'5F6E6BEC5C12E9981404E9C4B024AE6D9E2B30D3FF6D87A3D7FF16724ECA58C1');
INSERT INTO "journal" VALUES(42,1,'study','key=one
rank=1048576
removed=0
name=one
feature=10
method=transfer
unit=in
pieces=a\\nb\nc\n
people=RW\n
repeats_count=3
repeats_form=count.0
seed_count=12345
seed_form=count.0
band_pm=25400000
band_form=in.4
begun_at=2026-05-04T08:00:00Z
note=quiet room
extra="s": 1
',X'AC7DD5B070160759C6E961026F631AB9D03E61BE6BAC4539EE85341344F54091');
INSERT INTO "journal" VALUES(43,1,'study_reading','key=1
rank=1048576
removed=0
study=one
piece=c
person=RW
trial_count=1
trial_form=count.0
value_pm=25001220000
value_form=in.5
typed=.9843
taken_at=2026-05-04T08:01:00Z
extra="v": 1
',X'5D5601351499A6E671A759CC2519B5CEE392E0E9E1663F1C97CEB78564C1FFC3');
INSERT INTO "journal" VALUES(44,1,'study_reading','key=2
rank=2097152
removed=0
study=one
piece=c
person=RW
trial_count=2
trial_form=count.0
value_pm=25001220000
value_form=in.5
typed=.9843
taken_at=2026-05-04T08:01:00Z
extra="v": 1
',X'D1BA01DCA1BDC8019C94B01C7420E8595B7EE932D7779A3DB3C527357EEE4137');
INSERT INTO "journal" VALUES(45,1,'study_reading','key=3
rank=3145728
removed=0
study=one
piece=c
person=RW
trial_count=3
trial_form=count.0
value_pm=25001220000
value_form=in.5
typed=.9843
taken_at=2026-05-04T08:01:00Z
extra="v": 1
',X'A4AB8FBD0867D1688AAA84F643FA9E77A471DC36E3C084803AEC9FE0EEDD0B30');
INSERT INTO "journal" VALUES(46,1,'signature','key=1
rank=1048576
removed=0
signed_by=R. Wren
role=inspector
signed_at=2026-05-04T11:00:00Z
digest=00ff
extra="s": []
',X'EBC6342462D4D00F536140132ADA50AABCC0785542F0DC9799EE0692713C9356');
INSERT INTO "journal" VALUES(47,1,'signature','key=2
rank=2097152
removed=0
signed_by=M. Fell
role=customer
signed_at=2026-05-04T12:00:00Z
digest=22ff
report=FA-0031
pages=33ff
workbook=44ff
',X'7A5010E3E4419017690AEFA94BA4AE100529D64E593B9A7692D73309AFAD0293');
INSERT INTO "journal" VALUES(48,1,'reading','id=b-7
piece=002
feature=10
place=3
station=mouth/12
value_pm=25001220000
value_form=in.4
typed=.9843 in
method=M-25
part_temp_count=22500000
part_temp_form=celsius.1
gauge_temp_count=-500000
gauge_temp_form=celsius.2
taken_by=RW
taken_at=2026-05-04T09:12:33Z
extra="r": 1
',X'A43392665A06F169FC79632CADB360C1C8B0CAFE668D658F9289A2A158C558F4');
INSERT INTO "journal" VALUES(49,1,'reading','id=1
piece=002
feature=10
place=1
value_pm=25012000000
value_form=mm.4
taken_by=RW
taken_at=2026-05-04T09:12:33Z
replaces=b-7
reason=wrong place
overdue_reason=no other gauge that day
',X'8E9F1C117F58DEC0FA5C8480A0CD4E4FC6710E168DB24DF664632CC5226233C0');
INSERT INTO "journal" VALUES(50,1,'reading','id=2
piece=001
feature=2
place=1
dx_pm=27940000
dx_form=in.4
dy_pm=-50800000
dy_form=in.3
taken_by=RW
taken_at=2026-05-04T09:12:33Z
',X'0CEDD5C97F6096B200667956B9FE355A2DB1C1ED53CFBFD590D1240B78B6F6FF');
INSERT INTO "journal" VALUES(51,1,'reading','id=9
piece=003
feature=1
place=1
outcome=fail
taken_by=RW
taken_at=2026-05-04T09:12:33Z
',X'2EADE7A64A5932182A42292978D33AD00894BEE9A2B1F674CF6C52DEE1B6066F');
INSERT INTO "journal" VALUES(52,1,'withdrawal','target=reading
id=9
done_by=RW
done_at=2026-05-04T10:00:00Z
reason=read the wrong piece
extra="w": {}
',X'61550BA80FC9D44E5AB466A05A19894DA1D2A99A00E0FEED3962669A8D82980F');
INSERT INTO "journal" VALUES(53,1,'pin_trial','id=1
piece=001
feature=10
size_pm=25000000000
size_form=mm.3
pin_class=Z
sign=plus
went=1
taken_by=RW
taken_at=2026-05-04T09:12:33Z
',X'AEBC5D80175FEDD0DF941F7FA156A3344711EDC43C66F017E70E98B652347121');
INSERT INTO "journal" VALUES(54,1,'pin_trial','id=2
piece=001
feature=10
size_pm=25010000000
size_form=mm.2
pin_class=X
sign=minus
went=0
taken_by=RW
taken_at=2026-05-04T09:12:33Z
place=4
gauge=PS-1
measured_pm=25010300000
measured_form=mm.4
overdue_reason=no other set
',X'3B581D3D1A1F927F2D5DE9E9AE2E78F82C9897813382F0EEEB3269FD71FB4575');
INSERT INTO "journal" VALUES(55,1,'withdrawal','target=pin_trial
id=1
reason=dirty pin
',X'700EF08457EDC05D12B00EAE31D5335E173BB625A33D35508FC5AB2B8906C3D2');
INSERT INTO "journal" VALUES(56,1,'cut','id=1
piece=003
feature=10
dialled_pm=150000000
dialled_form=mm.3
passes=4
taken_by=RW
taken_at=2026-05-04T09:12:33Z
extra="spring": 2
',X'DF6BC6EBDB50D1776F917C716F6987573300013D9D6FF7C3C8FD4DF909B1D58C');
INSERT INTO "journal" VALUES(57,1,'cut','id=2
piece=002
feature=10
dialled_pm=50800000
dialled_form=in.4
passes=2
taken_by=RW
taken_at=2026-05-04T09:12:33Z
reads=radius
place=3
tool=boring bar 16
after_reading=none
note=after the roughing cut
',X'91D097D85933CBA91CD4C990CC6DE4C6CB67B4C1C6794E3884FE96F96C27CACE');
INSERT INTO "journal" VALUES(58,1,'cut','id=3
piece=002
feature=10
dialled_pm=38100000
dialled_form=in.4
passes=2
taken_by=RW
taken_at=2026-05-04T09:12:33Z
reads=radius
place=3
tool=boring bar 16
after_reading=b-7
note=after the roughing cut
',X'32E369F9EBBD8C8EE1C1487DC17173F77EE78F962CA130DE82BAB2CCAD52C24C');
INSERT INTO "journal" VALUES(59,1,'withdrawal','target=cut
id=2
done_by=RW
done_at=2026-05-04T09:20:00Z
reason=not made
',X'4C2A33F990E551AD6DCF77CBD75557ADEBCC05D782F85D50C85DEA5D9E4F5EE4');
INSERT INTO "journal" VALUES(60,1,'facts','rank=0
removed=0
changed_by=RW
changed_at=2026-05-05T07:00:00Z
part_number=INV-1001
part_name=Housing “A”
revision=C
drawing=D-1001
customer=Other Works
order_number=PO 5
unit=in
material=steel
standard=ASME
decision=simple
simple_ratio_count=4000000
simple_ratio_form=hardness.1
general_tolerance=.X .1, .XX .01
first_article=partial
first_article_reason=new revision
first_article_baseline=B
first_article_extra="fa": 1
extra="top": {\n  "deep": "\\n"\n}
job_extra="colour": "blue"
part_temp_limit_count=3000000
part_temp_limit_form=celsius.0
gauge_temp_limit_count=2000000
gauge_temp_limit_form=celsius.1
thermometer_count=500000
thermometer_form=celsius.1
expansion_count=23600000
expansion_form=hardness.1
entry_clearance_pm=1016000
entry_clearance_form=in.5
drift_rule=ask
drift_limit_count=500000
drift_limit_form=hardness.1
check_hours_count=8000000
check_hours_form=hardness.0
cut_risk_count=1000
cut_risk_form=hardness.3
cut_aim=proven
drawing_revision=C1
article=assembly
report_identifier=FA-0031
organisation=Invented Shop
supplier_code=S-77
manufacturing_record=traveller 12\n(two sheets)
drawing_changes=note 4 struck out
language=de
second_language=en
report_extra="r": 1
',X'6B71B021AD711D8B2CD84E5699A07C52434A26DC1F564C3153A1726889689901');
INSERT INTO "journal" VALUES(61,1,'drawing','key=sheet 2
rank=2097152
removed=1
changed_by=RW
changed_at=2026-05-05T07:00:00Z
',X'CB2FA628CB89049733ABD567C76B2312CEFFE5A49CF203FFB74836C66AFC7757');
INSERT INTO "journal" VALUES(62,1,'balloon','key=2
rank=2097152
removed=1
changed_by=RW
changed_at=2026-05-05T07:00:00Z
',X'0ED20000F6F7A34B5A5EA1AD71B6C5B092C93FC68714883F9F895B3DB8DE0470');
INSERT INTO "journal" VALUES(63,1,'nonconformance','key=1
rank=1048576
removed=0
changed_by=RW
changed_at=2026-05-05T07:00:00Z
piece=003
feature=1
number=NC-14
note=edge not broken
disposition=rework
extra="q": "ü"
place=1
raised_by=RW
raised_at=2026-05-04T09:30:00Z
rework_by=RW
rework_at=2026-05-04T10:30:00Z
rework_after=none
',X'595354084046F56DFAF30869C1F2844AE599824E8815EA6C0C8C04C1E1305226');
INSERT INTO "journal" VALUES(64,1,'reading','id=10
piece=003
feature=1
place=1
station=mouth/12
value_pm=984400000
value_form=mm.4
typed=0.9844
taken_by=RW
taken_at=2026-05-04T09:12:33Z
',X'5C5342203A703DC41B883EE0E6B9B5E36C5D42D9E345A170822081608F212E10');
INSERT INTO "journal" VALUES(65,1,'content','digest=2d36548b5c72f50aa2f81e28127b3ecd6698a1f241d94cf928e123f40173e3eb
length=25
',X'A8F0C1DEB56F0FD495F39D81B37CB9CA6C4BE36CA98A6B2EE75B4227C4FA6976');
CREATE TABLE mate (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, feature TEXT NOT NULL, serial TEXT NOT NULL, smallest_pm INTEGER, smallest_form TEXT, largest_pm INTEGER, largest_form TEXT, uncertainty_pm INTEGER, uncertainty_form TEXT, piece TEXT NOT NULL, place_count INTEGER, place_form TEXT, measured_by TEXT NOT NULL, measured_at TEXT NOT NULL, note TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "mate" VALUES(24,1,'1',1048576,0,'','','10','B1',25024000000,'mm.4',25026000000,'mm.3',2000000,'mm.3','003',4,'count.0','RW','2026-05-04T09:30:00Z','at the collar','"mt": 1');
INSERT INTO "mate" VALUES(25,1,'2',2097152,0,'','','2','B1',25024000000,'mm.4',25026000000,'mm.3',2000000,'mm.3','003',4,'count.0','RW','2026-05-04T09:30:00Z','at the collar','"mt": 1');
CREATE TABLE material (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, name TEXT NOT NULL, modulus_count INTEGER, modulus_form TEXT, poisson_count INTEGER, poisson_form TEXT, yield_count INTEGER, yield_form TEXT, expansion_count INTEGER, expansion_form TEXT, cold_count INTEGER, cold_form TEXT, plastic INTEGER NOT NULL, source TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "material" VALUES(17,1,'bush bronze',1048576,0,'','','bush bronze',105000000,'hardness.0',340000,'hardness.2',150000000,'hardness.0',18000000,'hardness.1',16500000,'hardness.1',1,'invented','"b": 1');
CREATE TABLE method (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, name TEXT NOT NULL, gauges TEXT NOT NULL, repeatability_pm INTEGER, repeatability_form TEXT, repeatability_dof_count INTEGER, repeatability_dof_form TEXT, extra TEXT NOT NULL, repeatability_source TEXT NOT NULL DEFAULT '') STRICT;
INSERT INTO "method" VALUES(13,1,'transfer',1048576,0,'','','transfer','TG-1
M-25
',3000000,'mm.3',30,'count.0','"x": 1','study one');
CREATE TABLE nonconformance (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, piece TEXT NOT NULL, feature TEXT NOT NULL, number TEXT NOT NULL, note TEXT NOT NULL, disposition TEXT NOT NULL, extra TEXT NOT NULL, place INTEGER, raised_by TEXT NOT NULL DEFAULT '', raised_at TEXT NOT NULL DEFAULT '', rework_by TEXT NOT NULL DEFAULT '', rework_at TEXT NOT NULL DEFAULT '', rework_after TEXT NOT NULL DEFAULT '') STRICT;
INSERT INTO "nonconformance" VALUES(40,1,'1',1048576,0,'','','003','1','NC-14','edge not broken','rework','"q": "ü"',1,'RW','2026-05-04T09:30:00Z','MF','2026-05-04T10:30:00Z','none');
INSERT INTO "nonconformance" VALUES(41,1,'2',2097152,0,'','','','1','NC-14','','rework','"q": "ü"',NULL,'','','','','');
INSERT INTO "nonconformance" VALUES(63,1,'1',1048576,0,'RW','2026-05-05T07:00:00Z','003','1','NC-14','edge not broken','rework','"q": "ü"',1,'RW','2026-05-04T09:30:00Z','RW','2026-05-04T10:30:00Z','none');
CREATE TABLE person (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, initials TEXT NOT NULL, name TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "person" VALUES(3,1,'RW',1048576,0,'','','RW','R. Wren','"badge": 7');
CREATE TABLE piece (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, serial TEXT NOT NULL, first_article INTEGER NOT NULL, extra TEXT NOT NULL, disposition TEXT NOT NULL DEFAULT '', disposition_note TEXT NOT NULL DEFAULT '') STRICT;
INSERT INTO "piece" VALUES(21,1,'003',1048576,0,'','','003',0,'','scrap','');
INSERT INTO "piece" VALUES(22,1,'002',2097152,0,'','','002',1,'','hold','made after \ the shift');
INSERT INTO "piece" VALUES(23,1,'001',3145728,0,'','','001',0,'"melt": "77"','','');
CREATE TABLE pin_size (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, gauge TEXT NOT NULL, size_pm INTEGER, size_form TEXT, measured_pm INTEGER, measured_form TEXT, extra TEXT NOT NULL) STRICT;
INSERT INTO "pin_size" VALUES(11,1,'1',1048576,0,'','','PS-1',25000000000,'mm.2',25000300000,'mm.4','"p": 1');
INSERT INTO "pin_size" VALUES(12,1,'2',2097152,0,'','','PS-1',25010000000,'mm.2',25000300000,'mm.4','"p": 1');
CREATE TABLE pin_trial (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, id TEXT NOT NULL, piece TEXT NOT NULL, feature TEXT NOT NULL, size_pm INTEGER, size_form TEXT, pin_class TEXT NOT NULL, sign TEXT NOT NULL, went INTEGER NOT NULL, taken_by TEXT NOT NULL, taken_at TEXT NOT NULL, replaces TEXT NOT NULL, reason TEXT NOT NULL, extra TEXT NOT NULL, place INTEGER, gauge TEXT NOT NULL DEFAULT '', measured_pm INTEGER, measured_form TEXT, overdue_reason TEXT NOT NULL DEFAULT '', UNIQUE (job, id)) STRICT;
INSERT INTO "pin_trial" VALUES(53,1,'1','001','10',25000000000,'mm.3','Z','plus',1,'RW','2026-05-04T09:12:33Z','','','',NULL,'',NULL,NULL,'');
INSERT INTO "pin_trial" VALUES(54,1,'2','001','10',25010000000,'mm.2','X','minus',0,'RW','2026-05-04T09:12:33Z','','','',4,'PS-1',25010300000,'mm.4','no other set');
CREATE TABLE reading (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, id TEXT NOT NULL, piece TEXT NOT NULL, feature TEXT NOT NULL, place INTEGER NOT NULL, station TEXT NOT NULL, value_pm INTEGER, value_form TEXT, outcome TEXT NOT NULL, dx_pm INTEGER, dx_form TEXT, dy_pm INTEGER, dy_form TEXT, typed TEXT NOT NULL, method TEXT NOT NULL, part_temp_count INTEGER, part_temp_form TEXT, gauge_temp_count INTEGER, gauge_temp_form TEXT, taken_by TEXT NOT NULL, taken_at TEXT NOT NULL, replaces TEXT NOT NULL, reason TEXT NOT NULL, extra TEXT NOT NULL, overdue_reason TEXT NOT NULL DEFAULT '', UNIQUE (job, id)) STRICT;
INSERT INTO "reading" VALUES(48,1,'b-7','002','10',3,'mouth/12',25001220000,'in.4','',NULL,NULL,NULL,NULL,'.9843 in','M-25',22500000,'celsius.1',-500000,'celsius.2','RW','2026-05-04T09:12:33Z','','','"r": 1','');
INSERT INTO "reading" VALUES(49,1,'1','002','10',1,'',25012000000,'mm.4','',NULL,NULL,NULL,NULL,'','',NULL,NULL,NULL,NULL,'RW','2026-05-04T09:12:33Z','b-7','wrong place','','no other gauge that day');
INSERT INTO "reading" VALUES(50,1,'2','001','2',1,'',NULL,NULL,'',27940000,'in.4',-50800000,'in.3','','',NULL,NULL,NULL,NULL,'RW','2026-05-04T09:12:33Z','','','','');
INSERT INTO "reading" VALUES(51,1,'9','003','1',1,'',NULL,NULL,'fail',NULL,NULL,NULL,NULL,'','',NULL,NULL,NULL,NULL,'RW','2026-05-04T09:12:33Z','','','','');
INSERT INTO "reading" VALUES(64,1,'10','003','1',1,'mouth/12',984400000,'mm.4','',NULL,NULL,NULL,NULL,'0.9844','',NULL,NULL,NULL,NULL,'RW','2026-05-04T09:12:33Z','','','','');
CREATE TABLE report_field (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, name TEXT NOT NULL, value TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "report_field" VALUES(30,1,'1',1048576,0,'','','traceability','lot 5','"f": 1');
INSERT INTO "report_field" VALUES(31,1,'2',2097152,0,'','','traceability','','"f": 1');
CREATE TABLE seal (n INTEGER PRIMARY KEY AUTOINCREMENT, seq INTEGER NOT NULL REFERENCES journal (seq), hash BLOB NOT NULL CHECK (length (hash) = 32)) STRICT;
INSERT INTO "seal" VALUES(1,59,X'6B71B021AD711D8B2CD84E5699A07C52434A26DC1F564C3153A1726889689901');
INSERT INTO "seal" VALUES(2,63,X'5C5342203A703DC41B883EE0E6B9B5E36C5D42D9E345A170822081608F212E10');
INSERT INTO "seal" VALUES(3,64,X'A8F0C1DEB56F0FD495F39D81B37CB9CA6C4BE36CA98A6B2EE75B4227C4FA6976');
INSERT INTO "seal" VALUES(4,65,X'E663764CE1806AAAEE3BCF229DCBEF2DA2CC0FEE2CF2E2DE3F92B0FF083F19B0');
CREATE TABLE signature (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, signed_by TEXT NOT NULL, role TEXT NOT NULL, signed_at TEXT NOT NULL, digest TEXT NOT NULL, extra TEXT NOT NULL, report TEXT NOT NULL DEFAULT '', pages TEXT NOT NULL DEFAULT '', workbook TEXT NOT NULL DEFAULT '') STRICT;
INSERT INTO "signature" VALUES(46,1,'1',1048576,0,'','','R. Wren','inspector','2026-05-04T11:00:00Z','00ff','"s": []','','','');
INSERT INTO "signature" VALUES(47,1,'2',2097152,0,'','','M. Fell','customer','2026-05-04T12:00:00Z','22ff','','FA-0031','33ff','44ff');
CREATE TABLE study (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, name TEXT NOT NULL, feature TEXT NOT NULL, method TEXT NOT NULL, unit TEXT NOT NULL, pieces TEXT NOT NULL, people TEXT NOT NULL, repeats_count INTEGER, repeats_form TEXT, seed_count INTEGER, seed_form TEXT, band_pm INTEGER, band_form TEXT, begun_at TEXT NOT NULL, note TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "study" VALUES(42,1,'one',1048576,0,'','','one','10','transfer','in','a\nb
c
','RW
',3,'count.0',12345,'count.0',25400000,'in.4','2026-05-04T08:00:00Z','quiet room','"s": 1');
CREATE TABLE study_reading (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, study TEXT NOT NULL, piece TEXT NOT NULL, person TEXT NOT NULL, trial_count INTEGER, trial_form TEXT, value_pm INTEGER, value_form TEXT, typed TEXT NOT NULL, taken_at TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "study_reading" VALUES(43,1,'1',1048576,0,'','','one','c','RW',1,'count.0',25001220000,'in.5','.9843','2026-05-04T08:01:00Z','"v": 1');
INSERT INTO "study_reading" VALUES(44,1,'2',2097152,0,'','','one','c','RW',2,'count.0',25001220000,'in.5','.9843','2026-05-04T08:01:00Z','"v": 1');
INSERT INTO "study_reading" VALUES(45,1,'3',3145728,0,'','','one','c','RW',3,'count.0',25001220000,'in.5','.9843','2026-05-04T08:01:00Z','"v": 1');
CREATE TABLE sub_part (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, number TEXT NOT NULL, name TEXT NOT NULL, serial TEXT NOT NULL, report TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "sub_part" VALUES(28,1,'1',1048576,0,'','','INV-7','bush','B1','FA-0030','"a": 1');
INSERT INTO "sub_part" VALUES(29,1,'2',2097152,0,'','','INV-8','bush','B1','FA-0030','"a": 1');
CREATE TABLE supply (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, kind TEXT NOT NULL, name TEXT NOT NULL, specification TEXT NOT NULL, code TEXT NOT NULL, supplier TEXT NOT NULL, approval TEXT NOT NULL, certificate TEXT NOT NULL, note TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "supply" VALUES(26,1,'1',1048576,0,'','','process','anodise','invented 12','A2','Invented Plating','not asked','P-\9','clear','"u": 1');
INSERT INTO "supply" VALUES(27,1,'2',2097152,0,'','','process','anodise','invented 12','A2','Invented Plating','not asked','P-\9','clear','"u": 1');
CREATE TABLE tool (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, name TEXT NOT NULL, unit TEXT NOT NULL, reads TEXT NOT NULL, graduation_pm INTEGER, graduation_form TEXT, least_cut_pm INTEGER, least_cut_form TEXT, backlash_pm INTEGER, backlash_form TEXT, spring_passes_count INTEGER, spring_passes_form TEXT, note TEXT NOT NULL, extra TEXT NOT NULL, offset_step_pm INTEGER, offset_step_form TEXT) STRICT;
INSERT INTO "tool" VALUES(16,1,'boring bar 16',1048576,0,'','','boring bar 16','in','radius',25400000,'in.4',12700000,'in.4',127000000,'in.3',2,'count.0','lathe 2
keyed','"t": 1',1270000,'in.5');
CREATE TABLE withdrawal (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, target TEXT NOT NULL, id TEXT NOT NULL, done_by TEXT NOT NULL, done_at TEXT NOT NULL, reason TEXT NOT NULL, extra TEXT NOT NULL, UNIQUE (job, target, id)) STRICT;
INSERT INTO "withdrawal" VALUES(52,1,'reading','9','RW','2026-05-04T10:00:00Z','read the wrong piece','"w": {}');
INSERT INTO "withdrawal" VALUES(55,1,'pin_trial','1','','','dirty pin','');
INSERT INTO "withdrawal" VALUES(59,1,'cut','2','RW','2026-05-04T09:20:00Z','not made','');
CREATE TRIGGER journal_stays BEFORE UPDATE ON journal BEGIN SELECT raise (ABORT, 'the book only grows: no row of journal can be changed'); END;
CREATE TRIGGER journal_remains BEFORE DELETE ON journal BEGIN SELECT raise (ABORT, 'the book only grows: no row of journal can be deleted'); END;
CREATE TRIGGER journal_follows BEFORE INSERT ON journal WHEN new.seq <= (SELECT max (seq) FROM journal) BEGIN SELECT raise (FAIL, 'the book only grows: that row of journal is already there'); END;
CREATE TRIGGER seal_stays BEFORE UPDATE ON seal BEGIN SELECT raise (ABORT, 'the book only grows: no row of seal can be changed'); END;
CREATE TRIGGER seal_remains BEFORE DELETE ON seal BEGIN SELECT raise (ABORT, 'the book only grows: no row of seal can be deleted'); END;
CREATE TRIGGER seal_follows BEFORE INSERT ON seal WHEN new.n > 0 AND new.n <= (SELECT max (n) FROM seal) BEGIN SELECT raise (FAIL, 'the book only grows: that row of seal is already there'); END;
CREATE TRIGGER job_stays BEFORE UPDATE ON job BEGIN SELECT raise (ABORT, 'the book only grows: no row of job can be changed'); END;
CREATE TRIGGER job_remains BEFORE DELETE ON job BEGIN SELECT raise (ABORT, 'the book only grows: no row of job can be deleted'); END;
CREATE TRIGGER job_follows BEFORE INSERT ON job WHEN new.seq <= (SELECT max (seq) FROM job) OR EXISTS (SELECT 1 FROM job WHERE id = new.id) BEGIN SELECT raise (FAIL, 'the book only grows: that row of job is already there'); END;
CREATE INDEX facts_key ON facts (job, key);
CREATE VIEW current_facts AS SELECT * FROM facts AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM facts AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER facts_stays BEFORE UPDATE ON facts BEGIN SELECT raise (ABORT, 'the book only grows: no row of facts can be changed'); END;
CREATE TRIGGER facts_remains BEFORE DELETE ON facts BEGIN SELECT raise (ABORT, 'the book only grows: no row of facts can be deleted'); END;
CREATE TRIGGER facts_follows BEFORE INSERT ON facts WHEN new.seq <= (SELECT max (seq) FROM facts) BEGIN SELECT raise (FAIL, 'the book only grows: that row of facts is already there'); END;
CREATE INDEX person_key ON person (job, key);
CREATE VIEW current_person AS SELECT * FROM person AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM person AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER person_stays BEFORE UPDATE ON person BEGIN SELECT raise (ABORT, 'the book only grows: no row of person can be changed'); END;
CREATE TRIGGER person_remains BEFORE DELETE ON person BEGIN SELECT raise (ABORT, 'the book only grows: no row of person can be deleted'); END;
CREATE TRIGGER person_follows BEFORE INSERT ON person WHEN new.seq <= (SELECT max (seq) FROM person) BEGIN SELECT raise (FAIL, 'the book only grows: that row of person is already there'); END;
CREATE INDEX gauge_key ON gauge (job, key);
CREATE VIEW current_gauge AS SELECT * FROM gauge AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM gauge AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER gauge_stays BEFORE UPDATE ON gauge BEGIN SELECT raise (ABORT, 'the book only grows: no row of gauge can be changed'); END;
CREATE TRIGGER gauge_remains BEFORE DELETE ON gauge BEGIN SELECT raise (ABORT, 'the book only grows: no row of gauge can be deleted'); END;
CREATE TRIGGER gauge_follows BEFORE INSERT ON gauge WHEN new.seq <= (SELECT max (seq) FROM gauge) BEGIN SELECT raise (FAIL, 'the book only grows: that row of gauge is already there'); END;
CREATE INDEX method_key ON method (job, key);
CREATE VIEW current_method AS SELECT * FROM method AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM method AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER method_stays BEFORE UPDATE ON method BEGIN SELECT raise (ABORT, 'the book only grows: no row of method can be changed'); END;
CREATE TRIGGER method_remains BEFORE DELETE ON method BEGIN SELECT raise (ABORT, 'the book only grows: no row of method can be deleted'); END;
CREATE TRIGGER method_follows BEFORE INSERT ON method WHEN new.seq <= (SELECT max (seq) FROM method) BEGIN SELECT raise (FAIL, 'the book only grows: that row of method is already there'); END;
CREATE INDEX feature_key ON feature (job, key);
CREATE VIEW current_feature AS SELECT * FROM feature AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM feature AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER feature_stays BEFORE UPDATE ON feature BEGIN SELECT raise (ABORT, 'the book only grows: no row of feature can be changed'); END;
CREATE TRIGGER feature_remains BEFORE DELETE ON feature BEGIN SELECT raise (ABORT, 'the book only grows: no row of feature can be deleted'); END;
CREATE TRIGGER feature_follows BEFORE INSERT ON feature WHEN new.seq <= (SELECT max (seq) FROM feature) BEGIN SELECT raise (FAIL, 'the book only grows: that row of feature is already there'); END;
CREATE INDEX piece_key ON piece (job, key);
CREATE VIEW current_piece AS SELECT * FROM piece AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM piece AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER piece_stays BEFORE UPDATE ON piece BEGIN SELECT raise (ABORT, 'the book only grows: no row of piece can be changed'); END;
CREATE TRIGGER piece_remains BEFORE DELETE ON piece BEGIN SELECT raise (ABORT, 'the book only grows: no row of piece can be deleted'); END;
CREATE TRIGGER piece_follows BEFORE INSERT ON piece WHEN new.seq <= (SELECT max (seq) FROM piece) BEGIN SELECT raise (FAIL, 'the book only grows: that row of piece is already there'); END;
CREATE INDEX event_key ON event (job, key);
CREATE VIEW current_event AS SELECT * FROM event AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM event AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER event_stays BEFORE UPDATE ON event BEGIN SELECT raise (ABORT, 'the book only grows: no row of event can be changed'); END;
CREATE TRIGGER event_remains BEFORE DELETE ON event BEGIN SELECT raise (ABORT, 'the book only grows: no row of event can be deleted'); END;
CREATE TRIGGER event_follows BEFORE INSERT ON event WHEN new.seq <= (SELECT max (seq) FROM event) BEGIN SELECT raise (FAIL, 'the book only grows: that row of event is already there'); END;
CREATE INDEX nonconformance_key ON nonconformance (job, key);
CREATE VIEW current_nonconformance AS SELECT * FROM nonconformance AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM nonconformance AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER nonconformance_stays BEFORE UPDATE ON nonconformance BEGIN SELECT raise (ABORT, 'the book only grows: no row of nonconformance can be changed'); END;
CREATE TRIGGER nonconformance_remains BEFORE DELETE ON nonconformance BEGIN SELECT raise (ABORT, 'the book only grows: no row of nonconformance can be deleted'); END;
CREATE TRIGGER nonconformance_follows BEFORE INSERT ON nonconformance WHEN new.seq <= (SELECT max (seq) FROM nonconformance) BEGIN SELECT raise (FAIL, 'the book only grows: that row of nonconformance is already there'); END;
CREATE INDEX signature_key ON signature (job, key);
CREATE VIEW current_signature AS SELECT * FROM signature AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM signature AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER signature_stays BEFORE UPDATE ON signature BEGIN SELECT raise (ABORT, 'the book only grows: no row of signature can be changed'); END;
CREATE TRIGGER signature_remains BEFORE DELETE ON signature BEGIN SELECT raise (ABORT, 'the book only grows: no row of signature can be deleted'); END;
CREATE TRIGGER signature_follows BEFORE INSERT ON signature WHEN new.seq <= (SELECT max (seq) FROM signature) BEGIN SELECT raise (FAIL, 'the book only grows: that row of signature is already there'); END;
CREATE INDEX reading_job ON reading (job);
CREATE UNIQUE INDEX reading_correction ON reading (job, replaces) WHERE replaces <> '';
CREATE TRIGGER reading_stays BEFORE UPDATE ON reading BEGIN SELECT raise (ABORT, 'the book only grows: no row of reading can be changed'); END;
CREATE TRIGGER reading_remains BEFORE DELETE ON reading BEGIN SELECT raise (ABORT, 'the book only grows: no row of reading can be deleted'); END;
CREATE TRIGGER reading_follows BEFORE INSERT ON reading WHEN new.seq <= (SELECT max (seq) FROM reading) OR EXISTS (SELECT 1 FROM reading WHERE job = new.job AND id = new.id) BEGIN SELECT raise (FAIL, 'the book only grows: that row of reading is already there'); END;
CREATE INDEX pin_trial_job ON pin_trial (job);
CREATE UNIQUE INDEX pin_trial_correction ON pin_trial (job, replaces) WHERE replaces <> '';
CREATE TRIGGER pin_trial_stays BEFORE UPDATE ON pin_trial BEGIN SELECT raise (ABORT, 'the book only grows: no row of pin_trial can be changed'); END;
CREATE TRIGGER pin_trial_remains BEFORE DELETE ON pin_trial BEGIN SELECT raise (ABORT, 'the book only grows: no row of pin_trial can be deleted'); END;
CREATE TRIGGER pin_trial_follows BEFORE INSERT ON pin_trial WHEN new.seq <= (SELECT max (seq) FROM pin_trial) OR EXISTS (SELECT 1 FROM pin_trial WHERE job = new.job AND id = new.id) BEGIN SELECT raise (FAIL, 'the book only grows: that row of pin_trial is already there'); END;
CREATE INDEX cut_job ON cut (job);
CREATE UNIQUE INDEX cut_correction ON cut (job, replaces) WHERE replaces <> '';
CREATE TRIGGER cut_stays BEFORE UPDATE ON cut BEGIN SELECT raise (ABORT, 'the book only grows: no row of cut can be changed'); END;
CREATE TRIGGER cut_remains BEFORE DELETE ON cut BEGIN SELECT raise (ABORT, 'the book only grows: no row of cut can be deleted'); END;
CREATE TRIGGER cut_follows BEFORE INSERT ON cut WHEN new.seq <= (SELECT max (seq) FROM cut) OR EXISTS (SELECT 1 FROM cut WHERE job = new.job AND id = new.id) BEGIN SELECT raise (FAIL, 'the book only grows: that row of cut is already there'); END;
CREATE INDEX calibration_key ON calibration (job, key);
CREATE VIEW current_calibration AS SELECT * FROM calibration AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM calibration AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER calibration_stays BEFORE UPDATE ON calibration BEGIN SELECT raise (ABORT, 'the book only grows: no row of calibration can be changed'); END;
CREATE TRIGGER calibration_remains BEFORE DELETE ON calibration BEGIN SELECT raise (ABORT, 'the book only grows: no row of calibration can be deleted'); END;
CREATE TRIGGER calibration_follows BEFORE INSERT ON calibration WHEN new.seq <= (SELECT max (seq) FROM calibration) BEGIN SELECT raise (FAIL, 'the book only grows: that row of calibration is already there'); END;
CREATE INDEX gauge_check_key ON gauge_check (job, key);
CREATE VIEW current_gauge_check AS SELECT * FROM gauge_check AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM gauge_check AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER gauge_check_stays BEFORE UPDATE ON gauge_check BEGIN SELECT raise (ABORT, 'the book only grows: no row of gauge_check can be changed'); END;
CREATE TRIGGER gauge_check_remains BEFORE DELETE ON gauge_check BEGIN SELECT raise (ABORT, 'the book only grows: no row of gauge_check can be deleted'); END;
CREATE TRIGGER gauge_check_follows BEFORE INSERT ON gauge_check WHEN new.seq <= (SELECT max (seq) FROM gauge_check) BEGIN SELECT raise (FAIL, 'the book only grows: that row of gauge_check is already there'); END;
CREATE INDEX pin_size_key ON pin_size (job, key);
CREATE VIEW current_pin_size AS SELECT * FROM pin_size AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM pin_size AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER pin_size_stays BEFORE UPDATE ON pin_size BEGIN SELECT raise (ABORT, 'the book only grows: no row of pin_size can be changed'); END;
CREATE TRIGGER pin_size_remains BEFORE DELETE ON pin_size BEGIN SELECT raise (ABORT, 'the book only grows: no row of pin_size can be deleted'); END;
CREATE TRIGGER pin_size_follows BEFORE INSERT ON pin_size WHEN new.seq <= (SELECT max (seq) FROM pin_size) BEGIN SELECT raise (FAIL, 'the book only grows: that row of pin_size is already there'); END;
CREATE INDEX budget_line_key ON budget_line (job, key);
CREATE VIEW current_budget_line AS SELECT * FROM budget_line AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM budget_line AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER budget_line_stays BEFORE UPDATE ON budget_line BEGIN SELECT raise (ABORT, 'the book only grows: no row of budget_line can be changed'); END;
CREATE TRIGGER budget_line_remains BEFORE DELETE ON budget_line BEGIN SELECT raise (ABORT, 'the book only grows: no row of budget_line can be deleted'); END;
CREATE TRIGGER budget_line_follows BEFORE INSERT ON budget_line WHEN new.seq <= (SELECT max (seq) FROM budget_line) BEGIN SELECT raise (FAIL, 'the book only grows: that row of budget_line is already there'); END;
CREATE INDEX study_key ON study (job, key);
CREATE VIEW current_study AS SELECT * FROM study AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM study AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER study_stays BEFORE UPDATE ON study BEGIN SELECT raise (ABORT, 'the book only grows: no row of study can be changed'); END;
CREATE TRIGGER study_remains BEFORE DELETE ON study BEGIN SELECT raise (ABORT, 'the book only grows: no row of study can be deleted'); END;
CREATE TRIGGER study_follows BEFORE INSERT ON study WHEN new.seq <= (SELECT max (seq) FROM study) BEGIN SELECT raise (FAIL, 'the book only grows: that row of study is already there'); END;
CREATE INDEX study_reading_key ON study_reading (job, key);
CREATE VIEW current_study_reading AS SELECT * FROM study_reading AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM study_reading AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER study_reading_stays BEFORE UPDATE ON study_reading BEGIN SELECT raise (ABORT, 'the book only grows: no row of study_reading can be changed'); END;
CREATE TRIGGER study_reading_remains BEFORE DELETE ON study_reading BEGIN SELECT raise (ABORT, 'the book only grows: no row of study_reading can be deleted'); END;
CREATE TRIGGER study_reading_follows BEFORE INSERT ON study_reading WHEN new.seq <= (SELECT max (seq) FROM study_reading) BEGIN SELECT raise (FAIL, 'the book only grows: that row of study_reading is already there'); END;
CREATE INDEX tool_key ON tool (job, key);
CREATE VIEW current_tool AS SELECT * FROM tool AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM tool AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER tool_stays BEFORE UPDATE ON tool BEGIN SELECT raise (ABORT, 'the book only grows: no row of tool can be changed'); END;
CREATE TRIGGER tool_remains BEFORE DELETE ON tool BEGIN SELECT raise (ABORT, 'the book only grows: no row of tool can be deleted'); END;
CREATE TRIGGER tool_follows BEFORE INSERT ON tool WHEN new.seq <= (SELECT max (seq) FROM tool) BEGIN SELECT raise (FAIL, 'the book only grows: that row of tool is already there'); END;
CREATE INDEX material_key ON material (job, key);
CREATE VIEW current_material AS SELECT * FROM material AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM material AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER material_stays BEFORE UPDATE ON material BEGIN SELECT raise (ABORT, 'the book only grows: no row of material can be changed'); END;
CREATE TRIGGER material_remains BEFORE DELETE ON material BEGIN SELECT raise (ABORT, 'the book only grows: no row of material can be deleted'); END;
CREATE TRIGGER material_follows BEFORE INSERT ON material WHEN new.seq <= (SELECT max (seq) FROM material) BEGIN SELECT raise (FAIL, 'the book only grows: that row of material is already there'); END;
CREATE INDEX mate_key ON mate (job, key);
CREATE VIEW current_mate AS SELECT * FROM mate AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM mate AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER mate_stays BEFORE UPDATE ON mate BEGIN SELECT raise (ABORT, 'the book only grows: no row of mate can be changed'); END;
CREATE TRIGGER mate_remains BEFORE DELETE ON mate BEGIN SELECT raise (ABORT, 'the book only grows: no row of mate can be deleted'); END;
CREATE TRIGGER mate_follows BEFORE INSERT ON mate WHEN new.seq <= (SELECT max (seq) FROM mate) BEGIN SELECT raise (FAIL, 'the book only grows: that row of mate is already there'); END;
CREATE TRIGGER withdrawal_stays BEFORE UPDATE ON withdrawal BEGIN SELECT raise (ABORT, 'the book only grows: no row of withdrawal can be changed'); END;
CREATE TRIGGER withdrawal_remains BEFORE DELETE ON withdrawal BEGIN SELECT raise (ABORT, 'the book only grows: no row of withdrawal can be deleted'); END;
CREATE TRIGGER withdrawal_follows BEFORE INSERT ON withdrawal WHEN new.seq <= (SELECT max (seq) FROM withdrawal) OR EXISTS (SELECT 1 FROM withdrawal WHERE job = new.job AND target = new.target AND id = new.id) BEGIN SELECT raise (FAIL, 'the book only grows: that row of withdrawal is already there'); END;
CREATE INDEX supply_key ON supply (job, key);
CREATE VIEW current_supply AS SELECT * FROM supply AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM supply AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER supply_stays BEFORE UPDATE ON supply BEGIN SELECT raise (ABORT, 'the book only grows: no row of supply can be changed'); END;
CREATE TRIGGER supply_remains BEFORE DELETE ON supply BEGIN SELECT raise (ABORT, 'the book only grows: no row of supply can be deleted'); END;
CREATE TRIGGER supply_follows BEFORE INSERT ON supply WHEN new.seq <= (SELECT max (seq) FROM supply) BEGIN SELECT raise (FAIL, 'the book only grows: that row of supply is already there'); END;
CREATE INDEX sub_part_key ON sub_part (job, key);
CREATE VIEW current_sub_part AS SELECT * FROM sub_part AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM sub_part AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER sub_part_stays BEFORE UPDATE ON sub_part BEGIN SELECT raise (ABORT, 'the book only grows: no row of sub_part can be changed'); END;
CREATE TRIGGER sub_part_remains BEFORE DELETE ON sub_part BEGIN SELECT raise (ABORT, 'the book only grows: no row of sub_part can be deleted'); END;
CREATE TRIGGER sub_part_follows BEFORE INSERT ON sub_part WHEN new.seq <= (SELECT max (seq) FROM sub_part) BEGIN SELECT raise (FAIL, 'the book only grows: that row of sub_part is already there'); END;
CREATE INDEX report_field_key ON report_field (job, key);
CREATE VIEW current_report_field AS SELECT * FROM report_field AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM report_field AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER report_field_stays BEFORE UPDATE ON report_field BEGIN SELECT raise (ABORT, 'the book only grows: no row of report_field can be changed'); END;
CREATE TRIGGER report_field_remains BEFORE DELETE ON report_field BEGIN SELECT raise (ABORT, 'the book only grows: no row of report_field can be deleted'); END;
CREATE TRIGGER report_field_follows BEFORE INSERT ON report_field WHEN new.seq <= (SELECT max (seq) FROM report_field) BEGIN SELECT raise (FAIL, 'the book only grows: that row of report_field is already there'); END;
CREATE INDEX drawing_key ON drawing (job, key);
CREATE VIEW current_drawing AS SELECT * FROM drawing AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM drawing AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER drawing_stays BEFORE UPDATE ON drawing BEGIN SELECT raise (ABORT, 'the book only grows: no row of drawing can be changed'); END;
CREATE TRIGGER drawing_remains BEFORE DELETE ON drawing BEGIN SELECT raise (ABORT, 'the book only grows: no row of drawing can be deleted'); END;
CREATE TRIGGER drawing_follows BEFORE INSERT ON drawing WHEN new.seq <= (SELECT max (seq) FROM drawing) BEGIN SELECT raise (FAIL, 'the book only grows: that row of drawing is already there'); END;
CREATE INDEX balloon_key ON balloon (job, key);
CREATE VIEW current_balloon AS SELECT * FROM balloon AS v WHERE removed = 0 AND seq = (SELECT max (seq) FROM balloon AS w WHERE w.job = v.job AND w.key = v.key);
CREATE TRIGGER balloon_stays BEFORE UPDATE ON balloon BEGIN SELECT raise (ABORT, 'the book only grows: no row of balloon can be changed'); END;
CREATE TRIGGER balloon_remains BEFORE DELETE ON balloon BEGIN SELECT raise (ABORT, 'the book only grows: no row of balloon can be deleted'); END;
CREATE TRIGGER balloon_follows BEFORE INSERT ON balloon WHEN new.seq <= (SELECT max (seq) FROM balloon) BEGIN SELECT raise (FAIL, 'the book only grows: that row of balloon is already there'); END;
CREATE TRIGGER content_stays BEFORE UPDATE ON content BEGIN SELECT raise (ABORT, 'the book only grows: no row of content can be changed'); END;
CREATE TRIGGER content_remains BEFORE DELETE ON content BEGIN SELECT raise (ABORT, 'the book only grows: no row of content can be deleted'); END;
CREATE TRIGGER content_follows BEFORE INSERT ON content WHEN new.seq <= (SELECT max (seq) FROM content) OR EXISTS (SELECT 1 FROM content WHERE job = new.job AND digest = new.digest) BEGIN SELECT raise (FAIL, 'the book only grows: that row of content is already there'); END;
CREATE INDEX reading_method ON reading (method, taken_at);
CREATE INDEX reading_spot ON reading (job, piece, feature);
CREATE INDEX cut_tool ON cut (tool, job);
DELETE FROM "sqlite_sequence";
INSERT INTO "sqlite_sequence" VALUES('seal',4);
COMMIT;
