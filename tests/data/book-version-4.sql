-- A book of version 4, written by the program as it was before version 5, as the statements that make it
-- again; invented contents.  application_id and user_version are set by the test.
BEGIN TRANSACTION;
CREATE TABLE budget_line (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, method TEXT NOT NULL, kind TEXT NOT NULL, name TEXT NOT NULL, value_pm INTEGER, value_form TEXT, distribution TEXT NOT NULL, divisor_count INTEGER, divisor_form TEXT, dof_count INTEGER, dof_form TEXT, source TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "budget_line" VALUES(14,1,'1',1048576,0,'','','transfer','people','between people',2000000,'mm.4','t',1500000,'hardness.1',12500000,'hardness.1','study one','"l": 1');
INSERT INTO "budget_line" VALUES(15,1,'2',2097152,0,'','','transfer','other','between people',2000000,'mm.4','normal',1500000,'hardness.1',12500000,'hardness.1','study one','"l": 1');
CREATE TABLE calibration (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, gauge TEXT NOT NULL, date TEXT NOT NULL, due TEXT NOT NULL, certificate TEXT NOT NULL, calibrated_by TEXT NOT NULL, uncertainty_pm INTEGER, uncertainty_form TEXT, coverage_count INTEGER, coverage_form TEXT, error_pm INTEGER, error_form TEXT, outcome TEXT NOT NULL, note TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "calibration" VALUES(7,1,'1',1048576,0,'','','M-25','2025-03-01','','C-\1187','Invented Laboratory',762000,'in.5',2000000,'hardness.2',-1270000,'in.5','bad','thimble
reset','"c": 1');
INSERT INTO "calibration" VALUES(8,1,'2',2097152,0,'','','M-25','2026-03-01','2027-03-01','C-\1187','Invented Laboratory',762000,'in.5',2000000,'hardness.2',-1270000,'in.5','','thimble
reset','"c": 1');
CREATE TABLE cut (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, id TEXT NOT NULL, piece TEXT NOT NULL, feature TEXT NOT NULL, dialled_pm INTEGER, dialled_form TEXT, passes INTEGER NOT NULL, taken_by TEXT NOT NULL, taken_at TEXT NOT NULL, replaces TEXT NOT NULL, reason TEXT NOT NULL, extra TEXT NOT NULL, reads TEXT NOT NULL DEFAULT '', place INTEGER, tool TEXT NOT NULL DEFAULT '', after_reading TEXT NOT NULL DEFAULT '', note TEXT NOT NULL DEFAULT '', UNIQUE (job, id)) STRICT;
INSERT INTO "cut" VALUES(44,1,'1','003','10',150000000,'mm.3',4,'RW','2026-05-04T09:12:33Z','','','"spring": 2','',NULL,'','','');
INSERT INTO "cut" VALUES(45,1,'2','002','10',50800000,'in.4',2,'RW','2026-05-04T09:12:33Z','','','','radius',3,'boring bar 16','none','after the roughing cut');
INSERT INTO "cut" VALUES(46,1,'3','002','10',38100000,'in.4',2,'RW','2026-05-04T09:12:33Z','','','','radius',3,'boring bar 16','b-7','after the roughing cut');
CREATE TABLE event (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, before_piece TEXT NOT NULL, kind TEXT NOT NULL, note TEXT NOT NULL, amount TEXT NOT NULL, extra TEXT NOT NULL, feature TEXT NOT NULL DEFAULT '', tool TEXT NOT NULL DEFAULT '', seen_by TEXT NOT NULL DEFAULT '', seen_at TEXT NOT NULL DEFAULT '') STRICT;
INSERT INTO "event" VALUES(26,1,'1',1048576,0,'','','002','tool','new insert','0.0050','"e": 0.10','','','','');
INSERT INTO "event" VALUES(27,1,'2',2097152,0,'','','002','tool','new insert','0.0050','"e": 0.10','','','','');
INSERT INTO "event" VALUES(28,1,'3',3145728,0,'','','','offset','recentred
after 002','-0.0004','','10','boring bar 16','RW','2026-05-04T11:12:33Z');
INSERT INTO "event" VALUES(50,1,'2',2097152,1,'RW','2026-05-05T09:00:00Z','','','','','','','','','');
CREATE TABLE facts (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, part_number TEXT NOT NULL, part_name TEXT NOT NULL, revision TEXT NOT NULL, drawing TEXT NOT NULL, customer TEXT NOT NULL, order_number TEXT NOT NULL, unit TEXT NOT NULL, material TEXT NOT NULL, standard TEXT NOT NULL, decision TEXT NOT NULL, simple_ratio_count INTEGER, simple_ratio_form TEXT, general_tolerance TEXT NOT NULL, first_article TEXT NOT NULL, first_article_reason TEXT NOT NULL, first_article_baseline TEXT NOT NULL, first_article_extra TEXT NOT NULL, extra TEXT NOT NULL, job_extra TEXT NOT NULL, part_temp_limit_count INTEGER, part_temp_limit_form TEXT, gauge_temp_limit_count INTEGER, gauge_temp_limit_form TEXT, thermometer_count INTEGER, thermometer_form TEXT, expansion_count INTEGER, expansion_form TEXT, entry_clearance_pm INTEGER, entry_clearance_form TEXT, drift_rule TEXT NOT NULL DEFAULT '', drift_limit_count INTEGER, drift_limit_form TEXT, check_hours_count INTEGER, check_hours_form TEXT, cut_risk_count INTEGER, cut_risk_form TEXT, cut_aim TEXT NOT NULL DEFAULT '') STRICT;
INSERT INTO "facts" VALUES(2,1,'',0,0,'','','INV-1001','Housing “A”','C','D-1001','Invented Works','PO 5','in','steel','ASME','simple',4000000,'hardness.1','.X .1, .XX .01','partial','new revision','B','"fa": 1','"top": {
  "deep": "\n"
}','"colour": "blue"',3000000,'celsius.0',2000000,'celsius.1',500000,'celsius.1',23600000,'hardness.1',1016000,'in.5','ask',500000,'hardness.1',8000000,'hardness.0',1000,'hardness.3','proven');
INSERT INTO "facts" VALUES(48,1,'',0,0,'RW','2026-05-05T09:00:00Z','INV-1001','Housing “A”','C','D-1001','Other Works','PO 5','in','steel','ASME','simple',4000000,'hardness.1','.X .1, .XX .01','partial','new revision','B','"fa": 1','"top": {
  "deep": "\n"
}','"colour": "blue"',3000000,'celsius.0',2000000,'celsius.1',500000,'celsius.1',23600000,'hardness.1',1016000,'in.5','ask',500000,'hardness.1',8000000,'hardness.0',1000,'hardness.3','proven');
CREATE TABLE feature (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, balloon TEXT NOT NULL, kind TEXT NOT NULL, name TEXT NOT NULL, requirement TEXT NOT NULL, unit TEXT NOT NULL, nominal_pm INTEGER, nominal_form TEXT, lower_pm INTEGER, lower_form TEXT, upper_pm INTEGER, upper_form TEXT, cut TEXT NOT NULL, envelope INTEGER NOT NULL, designator TEXT NOT NULL, places INTEGER NOT NULL, stations TEXT NOT NULL, size_feature TEXT NOT NULL, method TEXT NOT NULL, check_rule TEXT NOT NULL, group_size INTEGER NOT NULL, sheet TEXT NOT NULL, zone TEXT NOT NULL, mate_given INTEGER NOT NULL, mate_kind TEXT NOT NULL, mate_lower_pm INTEGER, mate_lower_form TEXT, mate_upper_pm INTEGER, mate_upper_form TEXT, mate_extra TEXT NOT NULL, zone_diameter INTEGER NOT NULL, modifier TEXT NOT NULL, datums TEXT NOT NULL, extra TEXT NOT NULL, counts TEXT NOT NULL DEFAULT '', form_unseen_pm INTEGER, form_unseen_form TEXT, tool TEXT NOT NULL DEFAULT '', wanted_least_pm INTEGER, wanted_least_form TEXT, wanted_most_pm INTEGER, wanted_most_form TEXT, press_length_pm INTEGER, press_length_form TEXT, hub_outside_pm INTEGER, hub_outside_form TEXT, shaft_inside_pm INTEGER, shaft_inside_form TEXT, hub_material TEXT NOT NULL DEFAULT '', shaft_material TEXT NOT NULL DEFAULT '', friction_least_count INTEGER, friction_least_form TEXT, friction_most_count INTEGER, friction_most_form TEXT, hub_roughness_pm INTEGER, hub_roughness_form TEXT, shaft_roughness_pm INTEGER, shaft_roughness_form TEXT, press_gap_pm INTEGER, press_gap_form TEXT, press_extra TEXT NOT NULL DEFAULT '', chart_rules TEXT NOT NULL DEFAULT '', chart_baseline INTEGER) STRICT;
INSERT INTO "feature" VALUES(18,1,'10',1048576,0,'','','10','bore','bearing bore','Ø25 H7','mm',25000000000,'mm.0',25000000000,'mm.3',25021000000,'mm.3','grows',1,'critical',4,'mouth/12
odd\nstation \\ here

','','transfer','every 5',5,'1','B4',1,'shaft',24980000000,'mm.3',24990000000,'mm.2','"m": null',0,'','','"f": true','combined',3000000,'mm.3','boring bar 16',-35000000,'mm.3',-10000000,'mm.4',20000000000,'mm.0',50000000000,'mm.1',12700000000,'in.1','steel','bush bronze',80000,'hardness.2',150000,'hardness.3',3200000,'um.1',1600000,'um.1',20000000,'mm.2','"pr": 1','beyond-3s 8-one-side',12);
INSERT INTO "feature" VALUES(19,1,'2',2097152,0,'','','2','position','','','in',NULL,NULL,NULL,NULL,203200000,'in.4','shrinks',0,'',1,'','10','','',0,'','',0,'',NULL,NULL,NULL,NULL,'',1,'mmc','A B C','','',NULL,NULL,'',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'','',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'','',NULL);
INSERT INTO "feature" VALUES(20,1,'1',3145728,0,'','','1','note','','break edges','none',NULL,NULL,NULL,NULL,NULL,NULL,'',0,'',1,'','','','',0,'','',0,'',NULL,NULL,NULL,NULL,'',0,'','','','',NULL,NULL,'',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'','',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'','',NULL);
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
INSERT INTO "job" VALUES(1,1,'5f6c2f0e-0000-4000-8000-000000000005');
CREATE TABLE journal (seq INTEGER PRIMARY KEY CHECK (seq > 0), job INTEGER NOT NULL, kind TEXT NOT NULL, payload TEXT NOT NULL, prev BLOB NOT NULL CHECK (length (prev) = 32)) STRICT;
INSERT INTO "journal" VALUES(1,1,'job','id=5f6c2f0e-0000-4000-8000-000000000005
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
',X'A8F78E940025F033B19523179BD5098D585198D27309B91B0284C32A688EAFE9');
INSERT INTO "journal" VALUES(3,1,'person','key=RW
rank=1048576
removed=0
initials=RW
name=R. Wren
extra="badge": 7
',X'B4B278D16D9E567A5BB7B5DD29CC51DD2043ECF49B9CB5B299704A53DA72EA4B');
INSERT INTO "journal" VALUES(4,1,'gauge','key=TG-1
rank=1048576
removed=0
tag=TG-1
kind=telescoping gauge
unit=mm
',X'CC06570F9437CE83864E8D12B9F6E465C719462297270FBAF0689B2B51F3995B');
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
',X'C2763225E826DADB20F97A1E2EF17EB1BBA31F7ABF97FA3B1D4A2B277EF424E9');
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
',X'6D7DE2E8766FD5A4B19A89FD01843852D30D5E6A61483585C2EB854EC19A5A53');
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
',X'4F69DB2D2F23BE9B9D5127D7FDF9BCEE626D19E538AE880BA1DEA801291FDB71');
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
',X'B4140753E69C17219CC0FC1EF3A9B4D81E0C486B11688695FCE0F37904BA0199');
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
',X'516324BD519DAB22B94D49D58D0111814EF94844EDC0BD1BBAC1A70DFE0F0E8E');
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
',X'D6EE94A922002225C2FEEA3A724D5EDCADC40CB4B8E61618124BF939E8038F97');
INSERT INTO "journal" VALUES(11,1,'pin_size','key=1
rank=1048576
removed=0
gauge=PS-1
size_pm=25000000000
size_form=mm.2
measured_pm=25000300000
measured_form=mm.4
extra="p": 1
',X'803F5BA72F1A8160D7E0EE6093AB712F1A5FE45E46266F2AE75269FAD65713DD');
INSERT INTO "journal" VALUES(12,1,'pin_size','key=2
rank=2097152
removed=0
gauge=PS-1
size_pm=25010000000
size_form=mm.2
measured_pm=25000300000
measured_form=mm.4
extra="p": 1
',X'0AA2B891436FD8D8F280C5B78460DF32C98AF63837CDAEC5D611365A4909CAC1');
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
',X'29459C30215F6FEEF24A2771D5BC3AF1FAB6A85A731AF227A55A30D302745297');
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
',X'11D6B6E2B57DA862EBB912E974541525B8CF5D5516F9784EB738F6E4B7C4D3A8');
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
',X'0A39508082FB92BFB1139C9D4EBF9E8A61A285B4962EFE40D2343B78D4030BE0');
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
',X'F782D905451D9612F920E75B58D256187E238390E14BEC0BDB6B9A45F73727EF');
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
',X'162A8D3EEFE5E203CEB2F29BBB6110075A181268366AD390D0B99E5AE3E7D054');
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
',X'E315AF94356E2EAA741CA43CDDB5518A6913BE65151766E8C3DA625E4E60F727');
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
',X'6CF1B748D70A41BB6580E6C575F3B72ECFD0C26D615A6FD5F03C82FB04D2EE1B');
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
',X'B75A65BAD8A6D83B8AF820C9B6D5900DFB3DE3CDAF490C166C13E1FD401DE3DB');
INSERT INTO "journal" VALUES(21,1,'piece','key=003
rank=1048576
removed=0
serial=003
first_article=0
disposition=scrap
',X'73C03839E8A1FFEBE2C40B879670DF1D2CD87EA20DB95B2140AA53035D63C22C');
INSERT INTO "journal" VALUES(22,1,'piece','key=002
rank=2097152
removed=0
serial=002
first_article=1
disposition=hold
disposition_note=made after \\ the shift
',X'C453817F13C9076DD300E03A2E6DC072AFDF289990AD9BE66804F4B520098203');
INSERT INTO "journal" VALUES(23,1,'piece','key=001
rank=3145728
removed=0
serial=001
first_article=0
extra="melt": "77"
',X'7B695FDCB4D5E274B3926DACD96394D28E411AB2EE9A836C32D66612CDD31E18');
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
',X'37D90A065EC15DF74945859EFBC470135CDB033BAD42D16226D16CBF36DFFCFC');
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
',X'FCC9FE60C083A214AD3ABC3482D4AE86CC93E6A3F5AAAFAE48F32D1675FA3DA4');
INSERT INTO "journal" VALUES(26,1,'event','key=1
rank=1048576
removed=0
before_piece=002
kind=tool
note=new insert
amount=0.0050
extra="e": 0.10
',X'F0C376D6F8FED16A092C77CBD61B63136924B26D12411784231BEE5BCC8C950D');
INSERT INTO "journal" VALUES(27,1,'event','key=2
rank=2097152
removed=0
before_piece=002
kind=tool
note=new insert
amount=0.0050
extra="e": 0.10
',X'676D12AE2322AB19AF505A9C55CE6F90CD644BB68A45A1300A38645D2127CA75');
INSERT INTO "journal" VALUES(28,1,'event','key=3
rank=3145728
removed=0
kind=offset
note=recentred\nafter 002
amount=-0.0004
feature=10
tool=boring bar 16
seen_by=RW
seen_at=2026-05-04T11:12:33Z
',X'D334BC1CF2721A8D844316A472B75445B3C8A303959CF0AEB99EBD29FD56F17B');
INSERT INTO "journal" VALUES(29,1,'nonconformance','key=1
rank=1048576
removed=0
piece=003
feature=1
number=NC-14
note=edge not broken
disposition=rework
extra="q": "ü"
',X'A255BF49C6FD589D605CD0F27EEB155279FC3CAE16C9C4BFA61BC537C1ACA85E');
INSERT INTO "journal" VALUES(30,1,'nonconformance','key=2
rank=2097152
removed=0
feature=1
number=NC-14
disposition=rework
extra="q": "ü"
',X'A5631E575B2F26928C729104B6130A4D5EB16DCC2D4DAEA1AF71922C302F97DF');
INSERT INTO "journal" VALUES(31,1,'study','key=one
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
',X'5E9826D4501D4E7913A0840C30EB53C025412FFD097030FCC46B5948659BBC54');
INSERT INTO "journal" VALUES(32,1,'study_reading','key=1
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
',X'D31206B81B6ACAFB80305C04008E39660E3409FEB05F5B1554BB58278EFC3DB0');
INSERT INTO "journal" VALUES(33,1,'study_reading','key=2
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
',X'60211E8897A2BE06546D7D0A16EBA276CFBC40EB58FD853DDBB9DD5D650CFFDD');
INSERT INTO "journal" VALUES(34,1,'study_reading','key=3
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
',X'2468EC07D6FBD77CBFB467BF04AE5489F9559D8CEB8448045F148551801D3548');
INSERT INTO "journal" VALUES(35,1,'signature','key=1
rank=1048576
removed=0
signed_by=R. Wren
role=inspector
signed_at=2026-05-04T11:00:00Z
digest=00ff
extra="s": []
',X'AEE9464A639CF1A12D1F89FF30F33E5690B5DC6A01F02B2A377C2CB2A177E2B8');
INSERT INTO "journal" VALUES(36,1,'reading','id=b-7
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
',X'A58272E64DEAECEABE3E270E548B745F8BF0409FBB9A8DC49ECA67826D790179');
INSERT INTO "journal" VALUES(37,1,'reading','id=1
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
',X'B3995D5E8845999F741F77C9052F60EDE68AB18EA74D5DB23EFFC788237D05A8');
INSERT INTO "journal" VALUES(38,1,'reading','id=2
piece=001
feature=2
place=1
dx_pm=27940000
dx_form=in.4
dy_pm=-50800000
dy_form=in.3
taken_by=RW
taken_at=2026-05-04T09:12:33Z
',X'1702517EE1587812AEDDD81B464338E6107E7A690C7B08B79440522155401B7B');
INSERT INTO "journal" VALUES(39,1,'reading','id=9
piece=003
feature=1
place=1
outcome=fail
taken_by=RW
taken_at=2026-05-04T09:12:33Z
',X'F1BBDCCA7D2D72734E2023D2329FB5A02F042CC389C0ED4B028F72BD1166E503');
INSERT INTO "journal" VALUES(40,1,'withdrawal','target=reading
id=9
done_by=RW
done_at=2026-05-04T10:00:00Z
reason=read the wrong piece
extra="w": {}
',X'9C8D8E233AF03AB069F5C654B7D2EFE33952D0858B5C2804A66A9EA892232AA9');
INSERT INTO "journal" VALUES(41,1,'pin_trial','id=1
piece=001
feature=10
size_pm=25000000000
size_form=mm.3
pin_class=Z
sign=plus
went=1
taken_by=RW
taken_at=2026-05-04T09:12:33Z
',X'E21AB3B5DE10E681775D891FAA6EA5A34D86B61747B391EB4B849933C95E707C');
INSERT INTO "journal" VALUES(42,1,'pin_trial','id=2
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
',X'6034E21F63041E9A8A35F0AE8F58571607F2E97CF063153ED3C702C30C1B0E25');
INSERT INTO "journal" VALUES(43,1,'withdrawal','target=pin_trial
id=1
reason=dirty pin
',X'7F9DEED6A07FDE440B702CABD0F72172BD9F5D573BAC3EFC7AF3D45F7C29E8A3');
INSERT INTO "journal" VALUES(44,1,'cut','id=1
piece=003
feature=10
dialled_pm=150000000
dialled_form=mm.3
passes=4
taken_by=RW
taken_at=2026-05-04T09:12:33Z
extra="spring": 2
',X'42358468EBE23557F3F129487B3A5013F6B7923C3083AE068D2EDEF702D2CDA4');
INSERT INTO "journal" VALUES(45,1,'cut','id=2
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
',X'BA4E24BBAE12C4ACF8F7A10611B6E5F830E151658A106122ACDAFAA37307D6BB');
INSERT INTO "journal" VALUES(46,1,'cut','id=3
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
',X'0C6B5DC8ACAF930C983DD8C29E0A7BE03E78099FB3D8753EAB87DA850AA1D22C');
INSERT INTO "journal" VALUES(47,1,'withdrawal','target=cut
id=2
done_by=RW
done_at=2026-05-04T09:20:00Z
reason=not made
',X'474A185558C1FAD230337A617D449CB0D9E16C04A5656B1D2628E3549FEC83B1');
INSERT INTO "journal" VALUES(48,1,'facts','rank=0
removed=0
changed_by=RW
changed_at=2026-05-05T09:00:00Z
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
',X'E4855A9452D8C04B40CF20840249279F8B377F2EC21BF001BB0009A2832C6A21');
INSERT INTO "journal" VALUES(49,1,'piece','key=003
rank=1048576
removed=0
changed_by=RW
changed_at=2026-05-05T09:00:00Z
serial=003
first_article=0
disposition=release
',X'FC4A8F1AEF9B921E70A1E481D2207828A9401A84C8092EFDB5BB1EE69361E09A');
INSERT INTO "journal" VALUES(50,1,'event','key=2
rank=2097152
removed=1
changed_by=RW
changed_at=2026-05-05T09:00:00Z
',X'29879370C88789AD4B9B9DE63168B7D778E3D08B7DB78CFD294D933DB59C954C');
INSERT INTO "journal" VALUES(51,1,'nonconformance','key=2
rank=2097152
removed=0
changed_by=RW
changed_at=2026-05-05T09:00:00Z
feature=1
number=NC-14
note=seen again
disposition=rework
extra="q": "ü"
',X'6EFB895EB5CDD1E28AB4D48977658D184EA32D0F35D6E4D28DBD9C040727C677');
INSERT INTO "journal" VALUES(52,1,'signature','key=2
rank=2097152
removed=0
changed_by=RW
changed_at=2026-05-05T09:00:00Z
signed_by=M. Fell
role=customer
signed_at=2026-05-05T11:00:00Z
digest=11ff
',X'01E874F275A431106E017EED508619096003EBE46C33596D26B559B1FB771A85');
INSERT INTO "journal" VALUES(53,1,'reading','id=10
piece=003
feature=1
place=1
station=mouth/12
value_pm=984400000
value_form=mm.4
typed=0.9844
taken_by=RW
taken_at=2026-05-04T09:12:33Z
',X'BCF8F3484987E2BE86046E49DE15260A3FEAD81A278657B874674D2264008BB4');
CREATE TABLE mate (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, feature TEXT NOT NULL, serial TEXT NOT NULL, smallest_pm INTEGER, smallest_form TEXT, largest_pm INTEGER, largest_form TEXT, uncertainty_pm INTEGER, uncertainty_form TEXT, piece TEXT NOT NULL, place_count INTEGER, place_form TEXT, measured_by TEXT NOT NULL, measured_at TEXT NOT NULL, note TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "mate" VALUES(24,1,'1',1048576,0,'','','10','B1',25024000000,'mm.4',25026000000,'mm.3',2000000,'mm.3','003',4,'count.0','RW','2026-05-04T09:30:00Z','at the collar','"mt": 1');
INSERT INTO "mate" VALUES(25,1,'2',2097152,0,'','','2','B1',25024000000,'mm.4',25026000000,'mm.3',2000000,'mm.3','003',4,'count.0','RW','2026-05-04T09:30:00Z','at the collar','"mt": 1');
CREATE TABLE material (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, name TEXT NOT NULL, modulus_count INTEGER, modulus_form TEXT, poisson_count INTEGER, poisson_form TEXT, yield_count INTEGER, yield_form TEXT, expansion_count INTEGER, expansion_form TEXT, cold_count INTEGER, cold_form TEXT, plastic INTEGER NOT NULL, source TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "material" VALUES(17,1,'bush bronze',1048576,0,'','','bush bronze',105000000,'hardness.0',340000,'hardness.2',150000000,'hardness.0',18000000,'hardness.1',16500000,'hardness.1',1,'invented','"b": 1');
CREATE TABLE method (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, name TEXT NOT NULL, gauges TEXT NOT NULL, repeatability_pm INTEGER, repeatability_form TEXT, repeatability_dof_count INTEGER, repeatability_dof_form TEXT, extra TEXT NOT NULL, repeatability_source TEXT NOT NULL DEFAULT '') STRICT;
INSERT INTO "method" VALUES(13,1,'transfer',1048576,0,'','','transfer','TG-1
M-25
',3000000,'mm.3',30,'count.0','"x": 1','study one');
CREATE TABLE nonconformance (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, piece TEXT NOT NULL, feature TEXT NOT NULL, number TEXT NOT NULL, note TEXT NOT NULL, disposition TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "nonconformance" VALUES(29,1,'1',1048576,0,'','','003','1','NC-14','edge not broken','rework','"q": "ü"');
INSERT INTO "nonconformance" VALUES(30,1,'2',2097152,0,'','','','1','NC-14','','rework','"q": "ü"');
INSERT INTO "nonconformance" VALUES(51,1,'2',2097152,0,'RW','2026-05-05T09:00:00Z','','1','NC-14','seen again','rework','"q": "ü"');
CREATE TABLE person (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, initials TEXT NOT NULL, name TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "person" VALUES(3,1,'RW',1048576,0,'','','RW','R. Wren','"badge": 7');
CREATE TABLE piece (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, serial TEXT NOT NULL, first_article INTEGER NOT NULL, extra TEXT NOT NULL, disposition TEXT NOT NULL DEFAULT '', disposition_note TEXT NOT NULL DEFAULT '') STRICT;
INSERT INTO "piece" VALUES(21,1,'003',1048576,0,'','','003',0,'','scrap','');
INSERT INTO "piece" VALUES(22,1,'002',2097152,0,'','','002',1,'','hold','made after \ the shift');
INSERT INTO "piece" VALUES(23,1,'001',3145728,0,'','','001',0,'"melt": "77"','','');
INSERT INTO "piece" VALUES(49,1,'003',1048576,0,'RW','2026-05-05T09:00:00Z','003',0,'','release','');
CREATE TABLE pin_size (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, gauge TEXT NOT NULL, size_pm INTEGER, size_form TEXT, measured_pm INTEGER, measured_form TEXT, extra TEXT NOT NULL) STRICT;
INSERT INTO "pin_size" VALUES(11,1,'1',1048576,0,'','','PS-1',25000000000,'mm.2',25000300000,'mm.4','"p": 1');
INSERT INTO "pin_size" VALUES(12,1,'2',2097152,0,'','','PS-1',25010000000,'mm.2',25000300000,'mm.4','"p": 1');
CREATE TABLE pin_trial (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, id TEXT NOT NULL, piece TEXT NOT NULL, feature TEXT NOT NULL, size_pm INTEGER, size_form TEXT, pin_class TEXT NOT NULL, sign TEXT NOT NULL, went INTEGER NOT NULL, taken_by TEXT NOT NULL, taken_at TEXT NOT NULL, replaces TEXT NOT NULL, reason TEXT NOT NULL, extra TEXT NOT NULL, place INTEGER, gauge TEXT NOT NULL DEFAULT '', measured_pm INTEGER, measured_form TEXT, overdue_reason TEXT NOT NULL DEFAULT '', UNIQUE (job, id)) STRICT;
INSERT INTO "pin_trial" VALUES(41,1,'1','001','10',25000000000,'mm.3','Z','plus',1,'RW','2026-05-04T09:12:33Z','','','',NULL,'',NULL,NULL,'');
INSERT INTO "pin_trial" VALUES(42,1,'2','001','10',25010000000,'mm.2','X','minus',0,'RW','2026-05-04T09:12:33Z','','','',4,'PS-1',25010300000,'mm.4','no other set');
CREATE TABLE reading (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, id TEXT NOT NULL, piece TEXT NOT NULL, feature TEXT NOT NULL, place INTEGER NOT NULL, station TEXT NOT NULL, value_pm INTEGER, value_form TEXT, outcome TEXT NOT NULL, dx_pm INTEGER, dx_form TEXT, dy_pm INTEGER, dy_form TEXT, typed TEXT NOT NULL, method TEXT NOT NULL, part_temp_count INTEGER, part_temp_form TEXT, gauge_temp_count INTEGER, gauge_temp_form TEXT, taken_by TEXT NOT NULL, taken_at TEXT NOT NULL, replaces TEXT NOT NULL, reason TEXT NOT NULL, extra TEXT NOT NULL, overdue_reason TEXT NOT NULL DEFAULT '', UNIQUE (job, id)) STRICT;
INSERT INTO "reading" VALUES(36,1,'b-7','002','10',3,'mouth/12',25001220000,'in.4','',NULL,NULL,NULL,NULL,'.9843 in','M-25',22500000,'celsius.1',-500000,'celsius.2','RW','2026-05-04T09:12:33Z','','','"r": 1','');
INSERT INTO "reading" VALUES(37,1,'1','002','10',1,'',25012000000,'mm.4','',NULL,NULL,NULL,NULL,'','',NULL,NULL,NULL,NULL,'RW','2026-05-04T09:12:33Z','b-7','wrong place','','no other gauge that day');
INSERT INTO "reading" VALUES(38,1,'2','001','2',1,'',NULL,NULL,'',27940000,'in.4',-50800000,'in.3','','',NULL,NULL,NULL,NULL,'RW','2026-05-04T09:12:33Z','','','','');
INSERT INTO "reading" VALUES(39,1,'9','003','1',1,'',NULL,NULL,'fail',NULL,NULL,NULL,NULL,'','',NULL,NULL,NULL,NULL,'RW','2026-05-04T09:12:33Z','','','','');
INSERT INTO "reading" VALUES(53,1,'10','003','1',1,'mouth/12',984400000,'mm.4','',NULL,NULL,NULL,NULL,'0.9844','',NULL,NULL,NULL,NULL,'RW','2026-05-04T09:12:33Z','','','','');
CREATE TABLE seal (n INTEGER PRIMARY KEY AUTOINCREMENT, seq INTEGER NOT NULL REFERENCES journal (seq), hash BLOB NOT NULL CHECK (length (hash) = 32)) STRICT;
INSERT INTO "seal" VALUES(1,47,X'E4855A9452D8C04B40CF20840249279F8B377F2EC21BF001BB0009A2832C6A21');
INSERT INTO "seal" VALUES(2,52,X'BCF8F3484987E2BE86046E49DE15260A3FEAD81A278657B874674D2264008BB4');
INSERT INTO "seal" VALUES(3,53,X'D964656D7B522F614E89DD79EE20E4D8B6F1A32F0B11DE9CE28D13D4C3E3BEDD');
CREATE TABLE signature (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, signed_by TEXT NOT NULL, role TEXT NOT NULL, signed_at TEXT NOT NULL, digest TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "signature" VALUES(35,1,'1',1048576,0,'','','R. Wren','inspector','2026-05-04T11:00:00Z','00ff','"s": []');
INSERT INTO "signature" VALUES(52,1,'2',2097152,0,'RW','2026-05-05T09:00:00Z','M. Fell','customer','2026-05-05T11:00:00Z','11ff','');
CREATE TABLE study (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, name TEXT NOT NULL, feature TEXT NOT NULL, method TEXT NOT NULL, unit TEXT NOT NULL, pieces TEXT NOT NULL, people TEXT NOT NULL, repeats_count INTEGER, repeats_form TEXT, seed_count INTEGER, seed_form TEXT, band_pm INTEGER, band_form TEXT, begun_at TEXT NOT NULL, note TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "study" VALUES(31,1,'one',1048576,0,'','','one','10','transfer','in','a\nb
c
','RW
',3,'count.0',12345,'count.0',25400000,'in.4','2026-05-04T08:00:00Z','quiet room','"s": 1');
CREATE TABLE study_reading (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, study TEXT NOT NULL, piece TEXT NOT NULL, person TEXT NOT NULL, trial_count INTEGER, trial_form TEXT, value_pm INTEGER, value_form TEXT, typed TEXT NOT NULL, taken_at TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "study_reading" VALUES(32,1,'1',1048576,0,'','','one','c','RW',1,'count.0',25001220000,'in.5','.9843','2026-05-04T08:01:00Z','"v": 1');
INSERT INTO "study_reading" VALUES(33,1,'2',2097152,0,'','','one','c','RW',2,'count.0',25001220000,'in.5','.9843','2026-05-04T08:01:00Z','"v": 1');
INSERT INTO "study_reading" VALUES(34,1,'3',3145728,0,'','','one','c','RW',3,'count.0',25001220000,'in.5','.9843','2026-05-04T08:01:00Z','"v": 1');
CREATE TABLE tool (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, name TEXT NOT NULL, unit TEXT NOT NULL, reads TEXT NOT NULL, graduation_pm INTEGER, graduation_form TEXT, least_cut_pm INTEGER, least_cut_form TEXT, backlash_pm INTEGER, backlash_form TEXT, spring_passes_count INTEGER, spring_passes_form TEXT, note TEXT NOT NULL, extra TEXT NOT NULL, offset_step_pm INTEGER, offset_step_form TEXT) STRICT;
INSERT INTO "tool" VALUES(16,1,'boring bar 16',1048576,0,'','','boring bar 16','in','radius',25400000,'in.4',12700000,'in.4',127000000,'in.3',2,'count.0','lathe 2
keyed','"t": 1',1270000,'in.5');
CREATE TABLE withdrawal (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, target TEXT NOT NULL, id TEXT NOT NULL, done_by TEXT NOT NULL, done_at TEXT NOT NULL, reason TEXT NOT NULL, extra TEXT NOT NULL, UNIQUE (job, target, id)) STRICT;
INSERT INTO "withdrawal" VALUES(40,1,'reading','9','RW','2026-05-04T10:00:00Z','read the wrong piece','"w": {}');
INSERT INTO "withdrawal" VALUES(43,1,'pin_trial','1','','','dirty pin','');
INSERT INTO "withdrawal" VALUES(47,1,'cut','2','RW','2026-05-04T09:20:00Z','not made','');
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
CREATE INDEX reading_method ON reading (method, taken_at);
CREATE INDEX reading_spot ON reading (job, piece, feature);
CREATE INDEX cut_tool ON cut (tool, job);
DELETE FROM "sqlite_sequence";
INSERT INTO "sqlite_sequence" VALUES('seal',3);
COMMIT;
