-- A book of version 1, written by the program as it was before version 2, as the statements that make it
-- again; invented contents.  application_id and user_version are set by the test.
BEGIN TRANSACTION;
CREATE TABLE cut (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, id TEXT NOT NULL, piece TEXT NOT NULL, feature TEXT NOT NULL, dialled_pm INTEGER, dialled_form TEXT, passes INTEGER NOT NULL, taken_by TEXT NOT NULL, taken_at TEXT NOT NULL, replaces TEXT NOT NULL, reason TEXT NOT NULL, extra TEXT NOT NULL, UNIQUE (job, id)) STRICT;
INSERT INTO "cut" VALUES(25,1,'1','003','10',150000000,'mm.3',4,'RW','2026-05-04T09:12:33Z','','','"spring": 2');
CREATE TABLE event (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, before_piece TEXT NOT NULL, kind TEXT NOT NULL, note TEXT NOT NULL, amount TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "event" VALUES(13,1,'1',1048576,0,'','','002','tool','new insert','0.0050','"e": 0.10');
INSERT INTO "event" VALUES(14,1,'2',2097152,0,'','','002','tool','new insert','0.0050','"e": 0.10');
CREATE TABLE facts (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, part_number TEXT NOT NULL, part_name TEXT NOT NULL, revision TEXT NOT NULL, drawing TEXT NOT NULL, customer TEXT NOT NULL, order_number TEXT NOT NULL, unit TEXT NOT NULL, material TEXT NOT NULL, standard TEXT NOT NULL, decision TEXT NOT NULL, simple_ratio_count INTEGER, simple_ratio_form TEXT, general_tolerance TEXT NOT NULL, first_article TEXT NOT NULL, first_article_reason TEXT NOT NULL, first_article_baseline TEXT NOT NULL, first_article_extra TEXT NOT NULL, extra TEXT NOT NULL, job_extra TEXT NOT NULL) STRICT;
INSERT INTO "facts" VALUES(2,1,'',0,0,'','','INV-1001','Housing “A”','C','D-1001','Invented Works','PO 5','in','steel','ASME','simple',4000000,'hardness.1','.X .1, .XX .01','partial','new revision','B','"fa": 1','"top": {
  "deep": "\n"
}','"colour": "blue"');
INSERT INTO "facts" VALUES(27,1,'',0,0,'RW','2026-05-05T09:00:00Z','INV-1001','Housing “A”','C','D-1001','Other Works','PO 5','in','steel','ASME','simple',4000000,'hardness.1','.X .1, .XX .01','partial','new revision','B','"fa": 1','"top": {
  "deep": "\n"
}','"colour": "blue"');
CREATE TABLE feature (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, balloon TEXT NOT NULL, kind TEXT NOT NULL, name TEXT NOT NULL, requirement TEXT NOT NULL, unit TEXT NOT NULL, nominal_pm INTEGER, nominal_form TEXT, lower_pm INTEGER, lower_form TEXT, upper_pm INTEGER, upper_form TEXT, cut TEXT NOT NULL, envelope INTEGER NOT NULL, designator TEXT NOT NULL, places INTEGER NOT NULL, stations TEXT NOT NULL, size_feature TEXT NOT NULL, method TEXT NOT NULL, check_rule TEXT NOT NULL, group_size INTEGER NOT NULL, sheet TEXT NOT NULL, zone TEXT NOT NULL, mate_given INTEGER NOT NULL, mate_kind TEXT NOT NULL, mate_lower_pm INTEGER, mate_lower_form TEXT, mate_upper_pm INTEGER, mate_upper_form TEXT, mate_extra TEXT NOT NULL, zone_diameter INTEGER NOT NULL, modifier TEXT NOT NULL, datums TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "feature" VALUES(7,1,'10',1048576,0,'','','10','bore','bearing bore','Ø25 H7','mm',25000000000,'mm.0',25000000000,'mm.3',25021000000,'mm.3','grows',1,'critical',4,'mouth/12
odd\nstation \\ here

','','transfer','every 5',5,'1','B4',1,'shaft',24980000000,'mm.3',24990000000,'mm.2','"m": null',0,'','','"f": true');
INSERT INTO "feature" VALUES(8,1,'2',2097152,0,'','','2','position','','','in',NULL,NULL,NULL,NULL,203200000,'in.4','shrinks',0,'',1,'','10','','',0,'','',0,'',NULL,NULL,NULL,NULL,'',1,'mmc','A B C','');
INSERT INTO "feature" VALUES(9,1,'1',3145728,0,'','','1','note','','break edges','none',NULL,NULL,NULL,NULL,NULL,NULL,'',0,'',1,'','','','',0,'','',0,'',NULL,NULL,NULL,NULL,'',0,'','','');
CREATE TABLE gauge (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, tag TEXT NOT NULL, kind TEXT NOT NULL, unit TEXT NOT NULL, resolution_pm INTEGER, resolution_form TEXT, error_limit_pm INTEGER, error_limit_form TEXT, calibrated TEXT NOT NULL, due TEXT NOT NULL, certificate TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "gauge" VALUES(4,1,'TG-1',1048576,0,'','','TG-1','telescoping gauge','mm',NULL,NULL,NULL,NULL,'','','','');
INSERT INTO "gauge" VALUES(5,1,'M-25',2097152,0,'','','M-25','micrometer','in',2540000,'in.4',2540000,'in.5','2026-03-01','2027-03-01','C-\1187
second line','"colour": "red",
"n": [1,2]');
INSERT INTO "gauge" VALUES(28,1,'TG-1',1048576,0,'RW','2026-05-05T09:00:00Z','TG-1','telescoping gauge','mm',NULL,NULL,NULL,NULL,'','','C-2','');
CREATE TABLE job (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL CHECK (job = seq), id TEXT NOT NULL UNIQUE) STRICT;
INSERT INTO "job" VALUES(1,1,'5f6c2f0e-0000-4000-8000-000000000001');
CREATE TABLE journal (seq INTEGER PRIMARY KEY CHECK (seq > 0), job INTEGER NOT NULL, kind TEXT NOT NULL, payload TEXT NOT NULL, prev BLOB NOT NULL CHECK (length (prev) = 32)) STRICT;
INSERT INTO "journal" VALUES(1,1,'job','id=5f6c2f0e-0000-4000-8000-000000000001
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
',X'FFFBC6E1DAF7951935569A2A0260C2A908186F16D0ED36B48A3E22183D5A7689');
INSERT INTO "journal" VALUES(3,1,'person','key=RW
rank=1048576
removed=0
initials=RW
name=R. Wren
extra="badge": 7
',X'97888F47F026D17DA0E935EDD1A92348A42901B77EE5AA71546C892E95FD0105');
INSERT INTO "journal" VALUES(4,1,'gauge','key=TG-1
rank=1048576
removed=0
tag=TG-1
kind=telescoping gauge
unit=mm
',X'EC1DC66F4E10FCEAF1CD09F43D9483F9DC6695852D076CF801BA97D173915E67');
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
',X'1951417C7644C5E4EDF2A5ACB45A6C667829ADA85D78EC5542EB4538733FDDE5');
INSERT INTO "journal" VALUES(6,1,'method','key=transfer
rank=1048576
removed=0
name=transfer
gauges=TG-1\nM-25\n
repeatability_pm=3000000
repeatability_form=mm.3
repeatability_dof_count=30
repeatability_dof_form=count.0
extra="x": 1
',X'D51C2E179173A4BF53B9B604ADBE8EBF73E7845D5F5748D00414087FE9DDC10C');
INSERT INTO "journal" VALUES(7,1,'feature','key=10
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
',X'5D111AFF7CDBFFDAB3B1B49851EDDF86AD523E597713FA7EC0109979CD4110B4');
INSERT INTO "journal" VALUES(8,1,'feature','key=2
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
',X'4FEB10A89D3CBFCC71ADD30D03D7CF68BD2830153C1F411D8A295098B10A11F4');
INSERT INTO "journal" VALUES(9,1,'feature','key=1
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
',X'DAE17AD7FD7E8BBED6EC63729030E9653CC7AA3C74D2DD4DE10069C53E62DAAF');
INSERT INTO "journal" VALUES(10,1,'piece','key=003
rank=1048576
removed=0
serial=003
first_article=0
',X'CD3D2EFD646E1E9383AF365FB09C50DE713529669C316D82E7E6F709836F412B');
INSERT INTO "journal" VALUES(11,1,'piece','key=002
rank=2097152
removed=0
serial=002
first_article=1
',X'2DDFA60C21294B472F1F4AC4EBF45149C0013021049F687290C26119F77B0D81');
INSERT INTO "journal" VALUES(12,1,'piece','key=001
rank=3145728
removed=0
serial=001
first_article=0
extra="melt": "77"
',X'18DD489D02C822F2C5A4A9F7BABDED7172A043F8A57CFEC0C2EF657DD8D1DD85');
INSERT INTO "journal" VALUES(13,1,'event','key=1
rank=1048576
removed=0
before_piece=002
kind=tool
note=new insert
amount=0.0050
extra="e": 0.10
',X'11A1775938D29DA1751BB94EE36198CA6CDEB6658639BE22D86204A28D3060CA');
INSERT INTO "journal" VALUES(14,1,'event','key=2
rank=2097152
removed=0
before_piece=002
kind=tool
note=new insert
amount=0.0050
extra="e": 0.10
',X'ED543BEA4B22F26990B7E46AFFDA39783E68BB7DD913CD26B25F101BD31EA8CB');
INSERT INTO "journal" VALUES(15,1,'nonconformance','key=1
rank=1048576
removed=0
piece=003
feature=1
number=NC-14
note=edge not broken
disposition=rework
extra="q": "ü"
',X'101EC7A92A376CAA4E177FC518C3D143B7F439C6B018D872A61B7AB0BD6CFC86');
INSERT INTO "journal" VALUES(16,1,'nonconformance','key=2
rank=2097152
removed=0
feature=1
number=NC-14
disposition=rework
extra="q": "ü"
',X'9B18FF7630512ACFE4F9A38C790503B9DAEA551148003813683E5200F741C0A0');
INSERT INTO "journal" VALUES(17,1,'signature','key=1
rank=1048576
removed=0
signed_by=R. Wren
role=inspector
signed_at=2026-05-04T11:00:00Z
digest=00ff
extra="s": []
',X'AD1672F609203D9AD17E28C0D7D1EB1B345BBFF0F96DB45A8E1C49C744DFEA97');
INSERT INTO "journal" VALUES(18,1,'reading','id=b-7
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
',X'F3A18E52407BDEAB15D5641E5C18271AC3B5C01F26892CBE84F6713E73C45809');
INSERT INTO "journal" VALUES(19,1,'reading','id=1
piece=002
feature=10
place=1
value_pm=25012000000
value_form=mm.4
taken_by=RW
taken_at=2026-05-04T09:12:33Z
replaces=b-7
reason=wrong place
',X'FF59B22362039B1EF68B7F251585F3EB73E05B241E4718DA1B619CC6BACC0906');
INSERT INTO "journal" VALUES(20,1,'reading','id=2
piece=001
feature=2
place=1
dx_pm=27940000
dx_form=in.4
dy_pm=-50800000
dy_form=in.3
taken_by=RW
taken_at=2026-05-04T09:12:33Z
',X'04CC8BBA0255539300E680E64E11CFDCBC3DE6767789E3824CA586E953CC2177');
INSERT INTO "journal" VALUES(21,1,'reading','id=9
piece=003
feature=1
place=1
outcome=fail
taken_by=RW
taken_at=2026-05-04T09:12:33Z
',X'69D7F72D72930DF7AD7F9400452C0125352E0EFABA8B0994ED6A9A9FC23339C2');
INSERT INTO "journal" VALUES(22,1,'withdrawal','target=reading
id=9
done_by=RW
done_at=2026-05-04T10:00:00Z
reason=read the wrong piece
extra="w": {}
',X'DF391D40E94FB89D863D4573AA7090D39CEE194C901E5A1805016F19C9AE2829');
INSERT INTO "journal" VALUES(23,1,'pin_trial','id=1
piece=001
feature=10
size_pm=25000000000
size_form=mm.3
pin_class=Z
sign=plus
went=1
taken_by=RW
taken_at=2026-05-04T09:12:33Z
',X'5FB96771B6D79526CAD185451B1326F4466C65E3F01B22332F670BC675C21DA7');
INSERT INTO "journal" VALUES(24,1,'withdrawal','target=pin_trial
id=1
reason=dirty pin
',X'708E0CCE14866FAC9A00F238440DDEA4070DB4D490F5889984C883B70B3D994A');
INSERT INTO "journal" VALUES(25,1,'cut','id=1
piece=003
feature=10
dialled_pm=150000000
dialled_form=mm.3
passes=4
taken_by=RW
taken_at=2026-05-04T09:12:33Z
extra="spring": 2
',X'657B9D215B93C1467083323E81690F6472BA2391381A7CE92D2D781DCE5776B9');
INSERT INTO "journal" VALUES(26,1,'reading','id=10
piece=003
feature=1
place=1
station=mouth/12
value_pm=984400000
value_form=mm.4
typed=0.9844
taken_by=RW
taken_at=2026-05-04T09:12:33Z
',X'07456F7ECA9B52CF5D3BC4877DF106F7D2F0288C5E951DDAA5FEFB25930AD2B9');
INSERT INTO "journal" VALUES(27,1,'facts','rank=0
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
',X'27194D2BB439B70EADDE312C577599893CC937897F17AF9D5A0276DA05923507');
INSERT INTO "journal" VALUES(28,1,'gauge','key=TG-1
rank=1048576
removed=0
changed_by=RW
changed_at=2026-05-05T09:00:00Z
tag=TG-1
kind=telescoping gauge
unit=mm
certificate=C-2
',X'B6FAFAECA998CBA75AFA4DB345875B9CA24D25C942CBC895A07391920EB5B408');
INSERT INTO "journal" VALUES(29,1,'withdrawal','target=reading
id=2
done_by=RW
done_at=2026-05-05T08:00:00Z
reason=burr
',X'8AFFBFB5E221A72822A8D54E18DA5B336D7C2F8E9EC677B96F1DF874CFAC957B');
CREATE TABLE method (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, name TEXT NOT NULL, gauges TEXT NOT NULL, repeatability_pm INTEGER, repeatability_form TEXT, repeatability_dof_count INTEGER, repeatability_dof_form TEXT, extra TEXT NOT NULL) STRICT;
INSERT INTO "method" VALUES(6,1,'transfer',1048576,0,'','','transfer','TG-1
M-25
',3000000,'mm.3',30,'count.0','"x": 1');
CREATE TABLE nonconformance (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, piece TEXT NOT NULL, feature TEXT NOT NULL, number TEXT NOT NULL, note TEXT NOT NULL, disposition TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "nonconformance" VALUES(15,1,'1',1048576,0,'','','003','1','NC-14','edge not broken','rework','"q": "ü"');
INSERT INTO "nonconformance" VALUES(16,1,'2',2097152,0,'','','','1','NC-14','','rework','"q": "ü"');
CREATE TABLE person (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, initials TEXT NOT NULL, name TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "person" VALUES(3,1,'RW',1048576,0,'','','RW','R. Wren','"badge": 7');
CREATE TABLE piece (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, serial TEXT NOT NULL, first_article INTEGER NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "piece" VALUES(10,1,'003',1048576,0,'','','003',0,'');
INSERT INTO "piece" VALUES(11,1,'002',2097152,0,'','','002',1,'');
INSERT INTO "piece" VALUES(12,1,'001',3145728,0,'','','001',0,'"melt": "77"');
CREATE TABLE pin_trial (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, id TEXT NOT NULL, piece TEXT NOT NULL, feature TEXT NOT NULL, size_pm INTEGER, size_form TEXT, pin_class TEXT NOT NULL, sign TEXT NOT NULL, went INTEGER NOT NULL, taken_by TEXT NOT NULL, taken_at TEXT NOT NULL, replaces TEXT NOT NULL, reason TEXT NOT NULL, extra TEXT NOT NULL, UNIQUE (job, id)) STRICT;
INSERT INTO "pin_trial" VALUES(23,1,'1','001','10',25000000000,'mm.3','Z','plus',1,'RW','2026-05-04T09:12:33Z','','','');
CREATE TABLE reading (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, id TEXT NOT NULL, piece TEXT NOT NULL, feature TEXT NOT NULL, place INTEGER NOT NULL, station TEXT NOT NULL, value_pm INTEGER, value_form TEXT, outcome TEXT NOT NULL, dx_pm INTEGER, dx_form TEXT, dy_pm INTEGER, dy_form TEXT, typed TEXT NOT NULL, method TEXT NOT NULL, part_temp_count INTEGER, part_temp_form TEXT, gauge_temp_count INTEGER, gauge_temp_form TEXT, taken_by TEXT NOT NULL, taken_at TEXT NOT NULL, replaces TEXT NOT NULL, reason TEXT NOT NULL, extra TEXT NOT NULL, UNIQUE (job, id)) STRICT;
INSERT INTO "reading" VALUES(18,1,'b-7','002','10',3,'mouth/12',25001220000,'in.4','',NULL,NULL,NULL,NULL,'.9843 in','M-25',22500000,'celsius.1',-500000,'celsius.2','RW','2026-05-04T09:12:33Z','','','"r": 1');
INSERT INTO "reading" VALUES(19,1,'1','002','10',1,'',25012000000,'mm.4','',NULL,NULL,NULL,NULL,'','',NULL,NULL,NULL,NULL,'RW','2026-05-04T09:12:33Z','b-7','wrong place','');
INSERT INTO "reading" VALUES(20,1,'2','001','2',1,'',NULL,NULL,'',27940000,'in.4',-50800000,'in.3','','',NULL,NULL,NULL,NULL,'RW','2026-05-04T09:12:33Z','','','');
INSERT INTO "reading" VALUES(21,1,'9','003','1',1,'',NULL,NULL,'fail',NULL,NULL,NULL,NULL,'','',NULL,NULL,NULL,NULL,'RW','2026-05-04T09:12:33Z','','','');
INSERT INTO "reading" VALUES(26,1,'10','003','1',1,'mouth/12',984400000,'mm.4','',NULL,NULL,NULL,NULL,'0.9844','',NULL,NULL,NULL,NULL,'RW','2026-05-04T09:12:33Z','','','');
CREATE TABLE seal (n INTEGER PRIMARY KEY AUTOINCREMENT, seq INTEGER NOT NULL REFERENCES journal (seq), hash BLOB NOT NULL CHECK (length (hash) = 32)) STRICT;
INSERT INTO "seal" VALUES(1,25,X'07456F7ECA9B52CF5D3BC4877DF106F7D2F0288C5E951DDAA5FEFB25930AD2B9');
INSERT INTO "seal" VALUES(2,26,X'27194D2BB439B70EADDE312C577599893CC937897F17AF9D5A0276DA05923507');
INSERT INTO "seal" VALUES(3,28,X'8AFFBFB5E221A72822A8D54E18DA5B336D7C2F8E9EC677B96F1DF874CFAC957B');
INSERT INTO "seal" VALUES(4,29,X'190C7D4B24BFBA2C1E9D17B00C51865E54ED46A4C6B78999A073FF663CD30138');
CREATE TABLE signature (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, key TEXT NOT NULL, rank INTEGER NOT NULL, removed INTEGER NOT NULL CHECK (removed IN (0, 1)), changed_by TEXT NOT NULL, changed_at TEXT NOT NULL, signed_by TEXT NOT NULL, role TEXT NOT NULL, signed_at TEXT NOT NULL, digest TEXT NOT NULL, extra TEXT NOT NULL) STRICT;
INSERT INTO "signature" VALUES(17,1,'1',1048576,0,'','','R. Wren','inspector','2026-05-04T11:00:00Z','00ff','"s": []');
CREATE TABLE withdrawal (seq INTEGER PRIMARY KEY REFERENCES journal (seq) DEFERRABLE INITIALLY DEFERRED, job INTEGER NOT NULL REFERENCES job (seq) DEFERRABLE INITIALLY DEFERRED, target TEXT NOT NULL, id TEXT NOT NULL, done_by TEXT NOT NULL, done_at TEXT NOT NULL, reason TEXT NOT NULL, extra TEXT NOT NULL, UNIQUE (job, target, id)) STRICT;
INSERT INTO "withdrawal" VALUES(22,1,'reading','9','RW','2026-05-04T10:00:00Z','read the wrong piece','"w": {}');
INSERT INTO "withdrawal" VALUES(24,1,'pin_trial','1','','','dirty pin','');
INSERT INTO "withdrawal" VALUES(29,1,'reading','2','RW','2026-05-05T08:00:00Z','burr','');
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
DELETE FROM "sqlite_sequence";
INSERT INTO "sqlite_sequence" VALUES('seal',4);
COMMIT;
