-- A book of version 2, written by the program as it was before version 3, as the statements that make it
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
INSERT INTO "calibration" VALUES(45,1,'2',2097152,0,'RW','2026-05-05T09:00:00Z','M-25','2026-03-01','2027-03-01','C-\1187','Invented Laboratory',762000,'in.5',2000000,'hardness.2',-1270000,'in.5','','read again','"c": 1');
CREATE TABLE cut (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, id TEXT NOT NULL, piece TEXT NOT NULL, feature TEXT NOT NULL, dialled_pm INTEGER, dialled_form TEXT, passes INTEGER NOT NULL, taken_by TEXT NOT NULL, taken_at TEXT NOT NULL, replaces TEXT NOT NULL, reason TEXT NOT NULL, extra TEXT NOT NULL, UNIQUE (job, id)) STRICT;
INSERT INTO "cut" VALUES(39,1,'1','003','10',150000000,'mm.3',4,'RW','2026-05-04T09:12:33Z','','','"spring": 2');
CREATE TABLE event (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, before_piece TEXT NOT NULL, kind TEXT NOT NULL, note TEXT NOT NULL, amount TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "event" VALUES(22,1,'1',1048576,0,'','','002','tool','new insert','0.0050','"e": 0.10');
INSERT INTO "event" VALUES(23,1,'2',2097152,0,'','','002','tool','new insert','0.0050','"e": 0.10');
CREATE TABLE facts (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, part_number TEXT NOT NULL, part_name TEXT NOT NULL, revision TEXT NOT NULL, drawing TEXT NOT NULL, customer TEXT NOT NULL, order_number TEXT NOT NULL, unit TEXT NOT NULL, material TEXT NOT NULL, standard TEXT NOT NULL, decision TEXT NOT NULL, simple_ratio_count INTEGER, simple_ratio_form TEXT, general_tolerance TEXT NOT NULL, first_article TEXT NOT NULL, first_article_reason TEXT NOT NULL, first_article_baseline TEXT NOT NULL, first_article_extra TEXT NOT NULL, extra TEXT NOT NULL, job_extra TEXT NOT NULL, part_temp_limit_count INTEGER, part_temp_limit_form TEXT, gauge_temp_limit_count INTEGER, gauge_temp_limit_form TEXT, thermometer_count INTEGER, thermometer_form TEXT, expansion_count INTEGER, expansion_form TEXT, entry_clearance_pm INTEGER, entry_clearance_form TEXT, drift_rule TEXT NOT NULL DEFAULT '', drift_limit_count INTEGER, drift_limit_form TEXT, check_hours_count INTEGER, check_hours_form TEXT) STRICT;
INSERT INTO "facts" VALUES(2,1,'',0,0,'','','INV-1001','Housing “A”','C','D-1001','Invented Works','PO 5','in','steel','ASME','simple',4000000,'hardness.1','.X .1, .XX .01','partial','new revision','B','"fa": 1','"top": {
  "deep": "\n"
}','"colour": "blue"',3000000,'celsius.0',2000000,'celsius.1',500000,'celsius.1',23600000,'hardness.1',1016000,'in.5','ask',500000,'hardness.1',8000000,'hardness.0');
INSERT INTO "facts" VALUES(43,1,'',0,0,'RW','2026-05-05T09:00:00Z','INV-1001','Housing “A”','C','D-1001','Other Works','PO 5','in','steel','ASME','simple',4000000,'hardness.1','.X .1, .XX .01','partial','new revision','B','"fa": 1','"top": {
  "deep": "\n"
}','"colour": "blue"',3000000,'celsius.0',2000000,'celsius.1',500000,'celsius.1',23600000,'hardness.1',1016000,'in.5','ask',500000,'hardness.1',8000000,'hardness.0');
CREATE TABLE feature (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, balloon TEXT NOT NULL, kind TEXT NOT NULL, name TEXT NOT NULL, requirement TEXT NOT NULL, unit TEXT NOT NULL, nominal_pm INTEGER, nominal_form TEXT, lower_pm INTEGER, lower_form TEXT, upper_pm INTEGER, upper_form TEXT, cut TEXT NOT NULL, envelope INTEGER NOT NULL, designator TEXT NOT NULL, places INTEGER NOT NULL, stations TEXT NOT NULL, size_feature TEXT NOT NULL, method TEXT NOT NULL, check_rule TEXT NOT NULL, group_size INTEGER NOT NULL, sheet TEXT NOT NULL, zone TEXT NOT NULL, mate_given INTEGER NOT NULL, mate_kind TEXT NOT NULL, mate_lower_pm INTEGER, mate_lower_form TEXT, mate_upper_pm INTEGER, mate_upper_form TEXT, mate_extra TEXT NOT NULL, zone_diameter INTEGER NOT NULL, modifier TEXT NOT NULL, datums TEXT NOT NULL, extra TEXT NOT NULL, counts TEXT NOT NULL DEFAULT '', form_unseen_pm INTEGER, form_unseen_form TEXT) STRICT;
INSERT INTO "feature" VALUES(16,1,'10',1048576,0,'','','10','bore','bearing bore','Ø25 H7','mm',25000000000,'mm.0',25000000000,'mm.3',25021000000,'mm.3','grows',1,'critical',4,'mouth/12
odd\nstation \\ here

','','transfer','every 5',5,'1','B4',1,'shaft',24980000000,'mm.3',24990000000,'mm.2','"m": null',0,'','','"f": true','combined',3000000,'mm.3');
INSERT INTO "feature" VALUES(17,1,'2',2097152,0,'','','2','position','','','in',NULL,NULL,NULL,NULL,203200000,'in.4','shrinks',0,'',1,'','10','','',0,'','',0,'',NULL,NULL,NULL,NULL,'',1,'mmc','A B C','','',NULL,NULL);
INSERT INTO "feature" VALUES(18,1,'1',3145728,0,'','','1','note','','break edges','none',NULL,NULL,NULL,NULL,NULL,NULL,'',0,'',1,'','','','',0,'','',0,'',NULL,NULL,NULL,NULL,'',0,'','','','',NULL,NULL);
CREATE TABLE gauge (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, tag TEXT NOT NULL, kind TEXT NOT NULL, unit TEXT NOT NULL, resolution_pm INTEGER, resolution_form TEXT, error_limit_pm INTEGER, error_limit_form TEXT, calibrated TEXT NOT NULL, due TEXT NOT NULL, certificate TEXT NOT NULL, extra TEXT NOT NULL, serial TEXT NOT NULL DEFAULT '', owner TEXT NOT NULL DEFAULT '', place TEXT NOT NULL DEFAULT '', range_from_pm INTEGER, range_from_form TEXT, range_to_pm INTEGER, range_to_form TEXT, feel_pm INTEGER, feel_form TEXT, expansion_count INTEGER, expansion_form TEXT, pin_step_pm INTEGER, pin_step_form TEXT, pin_class TEXT NOT NULL DEFAULT '', pin_sign TEXT NOT NULL DEFAULT '', source TEXT NOT NULL DEFAULT '') STRICT;
INSERT INTO "gauge" VALUES(4,1,'TG-1',1048576,0,'','','TG-1','telescoping gauge','mm',NULL,NULL,NULL,NULL,'','','','','','','',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'','','');
INSERT INTO "gauge" VALUES(5,1,'M-25',2097152,0,'','','M-25','micrometer','in',2540000,'in.4',2540000,'in.5','2026-03-01','2027-03-01','C-\1187
second line','"colour": "red",
"n": [1,2]','','','',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'','','');
INSERT INTO "gauge" VALUES(6,1,'PS-1',3145728,0,'','','PS-1','pin set','mm',NULL,NULL,NULL,NULL,'','','','','77-B','the shop','drawer 3',24000000000,'mm.2',26000000000,'mm.2',1000000,'mm.3',11500000,'hardness.1',10000000,'mm.2','X','plus','assumed');
INSERT INTO "gauge" VALUES(44,1,'TG-1',1048576,0,'RW','2026-05-05T09:00:00Z','TG-1','telescoping gauge','mm',NULL,NULL,NULL,NULL,'','','C-2','','','','',NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,NULL,'','','');
CREATE TABLE gauge_check (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, gauge TEXT NOT NULL, standard_pm INTEGER, standard_form TEXT, reading_pm INTEGER, reading_form TEXT, checked_by TEXT NOT NULL, checked_at TEXT NOT NULL, note TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "gauge_check" VALUES(9,1,'1',1048576,0,'','','M-25',25400000000,'in.4',25402540000,'in.4','RW','2026-05-04T09:00:00Z','warm','"k": 1');
INSERT INTO "gauge_check" VALUES(10,1,'2',2097152,0,'','','M-25',25400000000,'in.4',25402540000,'in.4','RW','2026-05-04T09:00:00Z','warm','"k": 1');
CREATE TABLE job (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL CHECK (job = seq), id TEXT NOT NULL UNIQUE) STRICT;
INSERT INTO "job" VALUES(1,1,'5f6c2f0e-0000-4000-8000-000000000002');
CREATE TABLE journal (seq INTEGER PRIMARY KEY CHECK (seq > 0), job INTEGER NOT NULL, kind TEXT NOT NULL, payload TEXT NOT NULL, prev BLOB NOT NULL CHECK (length (prev) = 32)) STRICT;
INSERT INTO "journal" VALUES(1,1,'job','id=5f6c2f0e-0000-4000-8000-000000000002
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
',X'39E246179074566EA8ADD79C638D8B1C8A554AA86E4C3844DD64986C4372D7E6');
INSERT INTO "journal" VALUES(3,1,'person','key=RW
rank=1048576
removed=0
initials=RW
name=R. Wren
extra="badge": 7
',X'8BFDAA8CAAB1F49E4CABCF61D6F7691AAF2417565F3ED0F2681D45A8C51CC270');
INSERT INTO "journal" VALUES(4,1,'gauge','key=TG-1
rank=1048576
removed=0
tag=TG-1
kind=telescoping gauge
unit=mm
',X'3A816E12265198E2A15128AAB4ED841F99F1724F0D0A2EC8596CBE9ED6756FF1');
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
',X'A74D755F7C66791A240A1BA1047AC379F750506BE3FBBFE7545397BA0CE693A1');
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
',X'29ADCD553B7DF99841944257F3CCA3E1057C69FAC1277E68E82F7464035CB0FF');
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
',X'FF89EAFA589299921773CAA88998CD4CB29272B67903E2563903396247DDD464');
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
',X'9B1DE6E2E7878D3070A2033ED2CD740C318088426A6A6120DFC01707A49AE30E');
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
',X'1A09A5723AE3889477631FA7426D72513EF964B842263F160152C07E103B861C');
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
',X'66ABE9E182C2607D99CF492538EF5849F4EC94440C288A7EEB8147E17BB85F90');
INSERT INTO "journal" VALUES(11,1,'pin_size','key=1
rank=1048576
removed=0
gauge=PS-1
size_pm=25000000000
size_form=mm.2
measured_pm=25000300000
measured_form=mm.4
extra="p": 1
',X'4C8DD41D2300263959E1654EB5E5369F6F64A70F2BF1FC8E302BFACD1AA13392');
INSERT INTO "journal" VALUES(12,1,'pin_size','key=2
rank=2097152
removed=0
gauge=PS-1
size_pm=25010000000
size_form=mm.2
measured_pm=25000300000
measured_form=mm.4
extra="p": 1
',X'67DB8614D064AD95105813550AE3A50683E08DFF490E35E0D770940AB623944C');
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
',X'920221A7074E504DCEBF3699BAE25B7A74679738669487904CBB1FCF39A6589B');
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
',X'26345BD0E469F1BA8DB612AE056CFDC68D7CA6AC9773A407EE76987C420C1320');
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
',X'AE28215EE697C1A911A18C8FB4B058D44E450FAC010F2869FCEE77FDA650B609');
INSERT INTO "journal" VALUES(16,1,'feature','key=10
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
',X'BE544ABD363A619B3165508AC46ABCA8256AD1A96C9BB8B31F18F1EBC04A96E6');
INSERT INTO "journal" VALUES(17,1,'feature','key=2
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
',X'0D2674DF055A88C49AADA1292DD85DCC80415F5B90EAF6875CE12E21D22C017E');
INSERT INTO "journal" VALUES(18,1,'feature','key=1
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
',X'D26F4CFD262CFE6746A1CFCF6FFC36BF54C91F0CBA9E4E6DE7EA2D47B24725E4');
INSERT INTO "journal" VALUES(19,1,'piece','key=003
rank=1048576
removed=0
serial=003
first_article=0
',X'A0F75CE042170E61F92045A9737D006BE54915754B8C19C5C5542353034E702D');
INSERT INTO "journal" VALUES(20,1,'piece','key=002
rank=2097152
removed=0
serial=002
first_article=1
',X'A6E5EF060291382EE0879252DB2FAD974C8B52C6B0FBB4DC22D78667BDF85E79');
INSERT INTO "journal" VALUES(21,1,'piece','key=001
rank=3145728
removed=0
serial=001
first_article=0
extra="melt": "77"
',X'B22115E9DA93F95A9FD502AAF5065E3FE9869B7892AA4B85EACF113680D57A92');
INSERT INTO "journal" VALUES(22,1,'event','key=1
rank=1048576
removed=0
before_piece=002
kind=tool
note=new insert
amount=0.0050
extra="e": 0.10
',X'6EAA0ED942D9F7A200B2DFABA4E77CFD865E008EB4F33B1B880AE1E2FD2BAECC');
INSERT INTO "journal" VALUES(23,1,'event','key=2
rank=2097152
removed=0
before_piece=002
kind=tool
note=new insert
amount=0.0050
extra="e": 0.10
',X'CDCD9437433AE184E4D037A861B440F02FE7597C94CC2762AD0E4714EF010F30');
INSERT INTO "journal" VALUES(24,1,'nonconformance','key=1
rank=1048576
removed=0
piece=003
feature=1
number=NC-14
note=edge not broken
disposition=rework
extra="q": "ü"
',X'731BAA5AF345C8E1448829A6B2A8B181994747FAF1F46EDACFCF5572E53D9720');
INSERT INTO "journal" VALUES(25,1,'nonconformance','key=2
rank=2097152
removed=0
feature=1
number=NC-14
disposition=rework
extra="q": "ü"
',X'5636949D13BF9C5D9F080BE554C71AE78D25CF3C211AB876D5E747C92F248402');
INSERT INTO "journal" VALUES(26,1,'study','key=one
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
',X'DF3B12D192110C1284D9E6993148C19CFEFF5C0A24C7CB6E5B234FDE052280F5');
INSERT INTO "journal" VALUES(27,1,'study_reading','key=1
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
',X'955E52A78ED6425A08961F2E278054A6655F1319A244848B62717CAE688E727F');
INSERT INTO "journal" VALUES(28,1,'study_reading','key=2
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
',X'E62001E6FB3A8118BFEBA2E0CA2A49A04CB2B3F0F591484395B374E9D2C7473A');
INSERT INTO "journal" VALUES(29,1,'study_reading','key=3
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
',X'BED4717685347B2AE0561773D5B7E241B85A181CAA6FE805804362C55530AAD6');
INSERT INTO "journal" VALUES(30,1,'signature','key=1
rank=1048576
removed=0
signed_by=R. Wren
role=inspector
signed_at=2026-05-04T11:00:00Z
digest=00ff
extra="s": []
',X'75251DEB2D4D4CEC16A593E9DF4B3D26873A9F7CD452676FDCB46436312A212D');
INSERT INTO "journal" VALUES(31,1,'reading','id=b-7
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
',X'041E322A4D56251777215445AEB177126A5AD4C909B5E0B0C1D22033747C5D25');
INSERT INTO "journal" VALUES(32,1,'reading','id=1
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
',X'D56B8935CC9FDF09C6D3D3680A7E3035FF7AF4C4B32EE3A3DE42FA76002C2A0A');
INSERT INTO "journal" VALUES(33,1,'reading','id=2
piece=001
feature=2
place=1
dx_pm=27940000
dx_form=in.4
dy_pm=-50800000
dy_form=in.3
taken_by=RW
taken_at=2026-05-04T09:12:33Z
',X'AED80AB36F5CA66DDB8CEEB05FAA8A6AE6442322585D2F15FF976058D9BE7D35');
INSERT INTO "journal" VALUES(34,1,'reading','id=9
piece=003
feature=1
place=1
outcome=fail
taken_by=RW
taken_at=2026-05-04T09:12:33Z
',X'A0BE84F9722A611EAB8F39AC45C08E93CD2FF2739B31FBC27EBAFF8CDE188D57');
INSERT INTO "journal" VALUES(35,1,'withdrawal','target=reading
id=9
done_by=RW
done_at=2026-05-04T10:00:00Z
reason=read the wrong piece
extra="w": {}
',X'F9768D7084173826CFF2783971A3BCE0F91DCE9C407BA4A680A0772FD922283B');
INSERT INTO "journal" VALUES(36,1,'pin_trial','id=1
piece=001
feature=10
size_pm=25000000000
size_form=mm.3
pin_class=Z
sign=plus
went=1
taken_by=RW
taken_at=2026-05-04T09:12:33Z
',X'CA6159B9368B9B0F728DB77ACE52096DA86D4E70AB498431A15E8A01CD8D1C27');
INSERT INTO "journal" VALUES(37,1,'pin_trial','id=2
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
',X'1E1C098F4E1B47952BBFEE3B90ADF243909BA0CE85A65454066F37471647E358');
INSERT INTO "journal" VALUES(38,1,'withdrawal','target=pin_trial
id=1
reason=dirty pin
',X'73BA521DE38B35AB2385C45A54F410397C072F617727A893571C3F73D2D5C17D');
INSERT INTO "journal" VALUES(39,1,'cut','id=1
piece=003
feature=10
dialled_pm=150000000
dialled_form=mm.3
passes=4
taken_by=RW
taken_at=2026-05-04T09:12:33Z
extra="spring": 2
',X'F4A58DBF16470EDB5F7CF5903223F6E2C3559980D7587D17CC14D3BE30142BF7');
INSERT INTO "journal" VALUES(40,1,'reading','id=10
piece=003
feature=1
place=1
station=mouth/12
value_pm=984400000
value_form=mm.4
typed=0.9844
taken_by=RW
taken_at=2026-05-04T09:12:33Z
',X'B1F8854930666C7AA43646D967A039B7DA908716F5B521242D57DF56C1E73D43');
INSERT INTO "journal" VALUES(41,1,'pin_trial','id=3
piece=003
feature=1
size_pm=25003000000
size_form=mm.3
pin_class=X
sign=minus
went=0
taken_by=RW
taken_at=2026-05-04T09:12:33Z
',X'1EC268B51F8A6327A5F46E876D2E5DF3D591532D8C5ECB5C14211B24125F767D');
INSERT INTO "journal" VALUES(42,1,'withdrawal','target=reading
id=2
done_by=RW
done_at=2026-05-05T08:00:00Z
reason=burr
',X'0A2F90E6FB8847D4CB4176B5FF35CBF90059FE5008F254FF7AD7A1403E832DDD');
INSERT INTO "journal" VALUES(43,1,'facts','rank=0
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
',X'47F98E978DFF5128EB0D963212C31D534A72CEACB4D372755A23E0787E9AF497');
INSERT INTO "journal" VALUES(44,1,'gauge','key=TG-1
rank=1048576
removed=0
changed_by=RW
changed_at=2026-05-05T09:00:00Z
tag=TG-1
kind=telescoping gauge
unit=mm
certificate=C-2
',X'156E63EA7674A196F98BF01356F91E3411FE7C1771B7B6970D9AB4912EBED332');
INSERT INTO "journal" VALUES(45,1,'calibration','key=2
rank=2097152
removed=0
changed_by=RW
changed_at=2026-05-05T09:00:00Z
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
note=read again
extra="c": 1
',X'B2EBE884B889609CF0D66E46D79120132AB4367A9F17B5556992FC5FB7A1252D');
CREATE TABLE method (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, name TEXT NOT NULL, gauges TEXT NOT NULL, repeatability_pm INTEGER, repeatability_form TEXT, repeatability_dof_count INTEGER, repeatability_dof_form TEXT, extra TEXT NOT NULL, repeatability_source TEXT NOT NULL DEFAULT '') STRICT;
INSERT INTO "method" VALUES(13,1,'transfer',1048576,0,'','','transfer','TG-1
M-25
',3000000,'mm.3',30,'count.0','"x": 1','study one');
CREATE TABLE nonconformance (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, piece TEXT NOT NULL, feature TEXT NOT NULL, number TEXT NOT NULL, note TEXT NOT NULL, disposition TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "nonconformance" VALUES(24,1,'1',1048576,0,'','','003','1','NC-14','edge not broken','rework','"q": "ü"');
INSERT INTO "nonconformance" VALUES(25,1,'2',2097152,0,'','','','1','NC-14','','rework','"q": "ü"');
CREATE TABLE person (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, initials TEXT NOT NULL, name TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "person" VALUES(3,1,'RW',1048576,0,'','','RW','R. Wren','"badge": 7');
CREATE TABLE piece (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, serial TEXT NOT NULL, first_article INTEGER NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "piece" VALUES(19,1,'003',1048576,0,'','','003',0,'');
INSERT INTO "piece" VALUES(20,1,'002',2097152,0,'','','002',1,'');
INSERT INTO "piece" VALUES(21,1,'001',3145728,0,'','','001',0,'"melt": "77"');
CREATE TABLE pin_size (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, gauge TEXT NOT NULL, size_pm INTEGER, size_form TEXT, measured_pm INTEGER, measured_form TEXT, extra TEXT NOT NULL) STRICT;
INSERT INTO "pin_size" VALUES(11,1,'1',1048576,0,'','','PS-1',25000000000,'mm.2',25000300000,'mm.4','"p": 1');
INSERT INTO "pin_size" VALUES(12,1,'2',2097152,0,'','','PS-1',25010000000,'mm.2',25000300000,'mm.4','"p": 1');
CREATE TABLE pin_trial (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, id TEXT NOT NULL, piece TEXT NOT NULL, feature TEXT NOT NULL, size_pm INTEGER, size_form TEXT, pin_class TEXT NOT NULL, sign TEXT NOT NULL, went INTEGER NOT NULL, taken_by TEXT NOT NULL, taken_at TEXT NOT NULL, replaces TEXT NOT NULL, reason TEXT NOT NULL, extra TEXT NOT NULL, place INTEGER, gauge TEXT NOT NULL DEFAULT '', measured_pm INTEGER, measured_form TEXT, overdue_reason TEXT NOT NULL DEFAULT '', UNIQUE (job, id)) STRICT;
INSERT INTO "pin_trial" VALUES(36,1,'1','001','10',25000000000,'mm.3','Z','plus',1,'RW','2026-05-04T09:12:33Z','','','',NULL,'',NULL,NULL,'');
INSERT INTO "pin_trial" VALUES(37,1,'2','001','10',25010000000,'mm.2','X','minus',0,'RW','2026-05-04T09:12:33Z','','','',4,'PS-1',25010300000,'mm.4','no other set');
INSERT INTO "pin_trial" VALUES(41,1,'3','003','1',25003000000,'mm.3','X','minus',0,'RW','2026-05-04T09:12:33Z','','','',NULL,'',NULL,NULL,'');
CREATE TABLE reading (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, id TEXT NOT NULL, piece TEXT NOT NULL, feature TEXT NOT NULL, place INTEGER NOT NULL, station TEXT NOT NULL, value_pm INTEGER, value_form TEXT, outcome TEXT NOT NULL, dx_pm INTEGER, dx_form TEXT, dy_pm INTEGER, dy_form TEXT, typed TEXT NOT NULL, method TEXT NOT NULL, part_temp_count INTEGER, part_temp_form TEXT, gauge_temp_count INTEGER, gauge_temp_form TEXT, taken_by TEXT NOT NULL, taken_at TEXT NOT NULL, replaces TEXT NOT NULL, reason TEXT NOT NULL, extra TEXT NOT NULL, overdue_reason TEXT NOT NULL DEFAULT '', UNIQUE (job, id)) STRICT;
INSERT INTO "reading" VALUES(31,1,'b-7','002','10',3,'mouth/12',25001220000,'in.4','',NULL,NULL,NULL,NULL,'.9843 in','M-25',22500000,'celsius.1',-500000,'celsius.2','RW','2026-05-04T09:12:33Z','','','"r": 1','');
INSERT INTO "reading" VALUES(32,1,'1','002','10',1,'',25012000000,'mm.4','',NULL,NULL,NULL,NULL,'','',NULL,NULL,NULL,NULL,'RW','2026-05-04T09:12:33Z','b-7','wrong place','','no other gauge that day');
INSERT INTO "reading" VALUES(33,1,'2','001','2',1,'',NULL,NULL,'',27940000,'in.4',-50800000,'in.3','','',NULL,NULL,NULL,NULL,'RW','2026-05-04T09:12:33Z','','','','');
INSERT INTO "reading" VALUES(34,1,'9','003','1',1,'',NULL,NULL,'fail',NULL,NULL,NULL,NULL,'','',NULL,NULL,NULL,NULL,'RW','2026-05-04T09:12:33Z','','','','');
INSERT INTO "reading" VALUES(40,1,'10','003','1',1,'mouth/12',984400000,'mm.4','',NULL,NULL,NULL,NULL,'0.9844','',NULL,NULL,NULL,NULL,'RW','2026-05-04T09:12:33Z','','','','');
CREATE TABLE seal (n INTEGER PRIMARY KEY AUTOINCREMENT, seq INTEGER NOT NULL REFERENCES journal (seq), hash BLOB NOT NULL CHECK (length (hash) = 32)) STRICT;
INSERT INTO "seal" VALUES(1,39,X'B1F8854930666C7AA43646D967A039B7DA908716F5B521242D57DF56C1E73D43');
INSERT INTO "seal" VALUES(2,40,X'1EC268B51F8A6327A5F46E876D2E5DF3D591532D8C5ECB5C14211B24125F767D');
INSERT INTO "seal" VALUES(3,41,X'0A2F90E6FB8847D4CB4176B5FF35CBF90059FE5008F254FF7AD7A1403E832DDD');
INSERT INTO "seal" VALUES(4,42,X'47F98E978DFF5128EB0D963212C31D534A72CEACB4D372755A23E0787E9AF497');
INSERT INTO "seal" VALUES(5,45,X'8D1966B28692B9A1BC309C07B8F442049C106EE93B50F107015B744F9A32F170');
CREATE TABLE signature (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, signed_by TEXT NOT NULL, role TEXT NOT NULL, signed_at TEXT NOT NULL, digest TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "signature" VALUES(30,1,'1',1048576,0,'','','R. Wren','inspector','2026-05-04T11:00:00Z','00ff','"s": []');
CREATE TABLE study (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, name TEXT NOT NULL, feature TEXT NOT NULL, method TEXT NOT NULL, unit TEXT NOT NULL, pieces TEXT NOT NULL, people TEXT NOT NULL, repeats_count INTEGER, repeats_form TEXT, seed_count INTEGER, seed_form TEXT, band_pm INTEGER, band_form TEXT, begun_at TEXT NOT NULL, note TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "study" VALUES(26,1,'one',1048576,0,'','','one','10','transfer','in','a\nb
c
','RW
',3,'count.0',12345,'count.0',25400000,'in.4','2026-05-04T08:00:00Z','quiet room','"s": 1');
CREATE TABLE study_reading (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, study TEXT NOT NULL, piece TEXT NOT NULL, person TEXT NOT NULL, trial_count INTEGER, trial_form TEXT, value_pm INTEGER, value_form TEXT, typed TEXT NOT NULL, taken_at TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "study_reading" VALUES(27,1,'1',1048576,0,'','','one','c','RW',1,'count.0',25001220000,'in.5','.9843','2026-05-04T08:01:00Z','"v": 1');
INSERT INTO "study_reading" VALUES(28,1,'2',2097152,0,'','','one','c','RW',2,'count.0',25001220000,'in.5','.9843','2026-05-04T08:01:00Z','"v": 1');
INSERT INTO "study_reading" VALUES(29,1,'3',3145728,0,'','','one','c','RW',3,'count.0',25001220000,'in.5','.9843','2026-05-04T08:01:00Z','"v": 1');
CREATE TABLE withdrawal (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, target TEXT NOT NULL, id TEXT NOT NULL, done_by TEXT NOT NULL, done_at TEXT NOT NULL, reason TEXT NOT NULL, extra TEXT NOT NULL, UNIQUE (job, target, id)) STRICT;
INSERT INTO "withdrawal" VALUES(35,1,'reading','9','RW','2026-05-04T10:00:00Z','read the wrong piece','"w": {}');
INSERT INTO "withdrawal" VALUES(38,1,'pin_trial','1','','','dirty pin','');
INSERT INTO "withdrawal" VALUES(42,1,'reading','2','RW','2026-05-05T08:00:00Z','burr','');
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
CREATE TRIGGER withdrawal_stays BEFORE UPDATE ON withdrawal BEGIN SELECT raise (ABORT, 'the book only grows: no row of withdrawal can be changed'); END;
CREATE TRIGGER withdrawal_remains BEFORE DELETE ON withdrawal BEGIN SELECT raise (ABORT, 'the book only grows: no row of withdrawal can be deleted'); END;
CREATE TRIGGER withdrawal_follows BEFORE INSERT ON withdrawal WHEN new.seq <= (SELECT max (seq) FROM withdrawal) OR EXISTS (SELECT 1 FROM withdrawal WHERE job = new.job AND target = new.target AND id = new.id) BEGIN SELECT raise (FAIL, 'the book only grows: that row of withdrawal is already there'); END;
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
CREATE INDEX reading_method ON reading (method, taken_at);
CREATE INDEX reading_spot ON reading (job, piece, feature);
DELETE FROM "sqlite_sequence";
INSERT INTO "sqlite_sequence" VALUES('seal',5);
COMMIT;
